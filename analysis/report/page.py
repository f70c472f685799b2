"""Turns what was read from a recording into the text of a page, in one unit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import isfinite
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.cautions import cautions_of
from analysis.report import fields, words
from analysis.report.build_part import build_section
from analysis.report.confirm_part import confirm_section
from analysis.report.content import (
    APART,
    LONGEST_NOTE,
    Headline,
    PageTable,
    Section,
    Verdict,
    clean,
    in_a_row,
    listed,
    own,
)
from analysis.report.drawing import Drawing, DrawnPull, trace_drawing
from analysis.report.material import DragPart, Figure, Issue, JobLine, Material, PageKind, PullLine, Torque
from analysis.trace.results import DIRECTION_WORDS
from analysis.verdict.adequacy import certificate_advice
from analysis.verdict.limits import State, percent
from logger.edges.lengths import in_unit, of_metres
from logger.edges.units import format_torque, minus, torque_factor

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Budget

MOST_PHOTOS = 12
"""Photographs listed on a page."""

SMALL_SHARE = 0.01
"""Inputs below this share of the variance stand together in one sentence, with their value and uncertainty."""

_STATES = {
    "closed": "closed",
    "recovered": "NOT as it was closed; what checks was used",
    "foreign": "a trace from elsewhere",
}


@dataclass(frozen=True, slots=True)
class Page:
    """Turns material into text, in one unit."""

    material: Material
    issue: Issue
    unit: str

    def torque(self, nm: float | None, u95_nm: float | None = None) -> str:
        """Write a torque without its unit, for table cells."""
        return "–" if nm is None else format_torque(nm, self.unit, u95_nm).removesuffix(f" {self.unit}")

    def verdict(self) -> Verdict | None:
        """Give the result against the limit; None where no limit was stated."""
        result = self.material.result
        if result is None:
            return None
        limit = result.bounds.written
        page = own(limit.page)
        page = f"p. {page}" if limit.page.strip()[:1].isdigit() else page
        text = f"{result.bounds.quantity} {APART}{result.bounds.words}{APART}"
        text += f", {own(limit.condition)}" if limit.condition else ""
        text += f" ({listed(own(limit.source), page)})"
        if limit.text:
            text += f" “{own(limit.text)}”"
        chance = "" if result.probability != result.probability else percent(result.probability)
        meaning = words.plain_state(result)
        return Verdict(result.state, result.shape, meaning, clean(text, 300), words.rule_words(result), chance)

    def alerts(self) -> tuple[str, ...]:
        """Give what must be read before the result."""
        header = self.material.header
        return certificate_advice(header.transducer, header.started.date() if header.started is not None else None)

    def headlines(self) -> tuple[Headline, ...]:
        """Give the job's values, what is judged first."""
        result = self.material.result
        judged = None if result is None else result.bounds.quantity
        return tuple(self.headline(line) for line in sorted(self.material.job, key=lambda v: v.quantity != judged))

    def headline(self, line: JobLine) -> Headline:
        """Give one judged torque in large figures."""
        pulls = f"{'median of ' if line.pulls > 1 else ''}{line.pulls} pull{'s' * (line.pulls != 1)}"
        turn = DIRECTION_WORDS[line.direction]
        at = "at the axle" if line.at == "axle" else "at the sensor, fixture not known"
        value = format_torque(line.value_nm, self.unit, line.u95_nm)
        interval = "interval 95 %" if line.u95_nm is not None else "no interval"
        spread = []
        if line.lowest_nm is not None and line.highest_nm is not None and line.cv is not None:
            spread = [f"{self.torque(line.lowest_nm)} to {self.torque(line.highest_nm)}"]
            spread += [f"scatter {line.cv * 100:.1f} %"] if isfinite(line.cv) else []  # of three pulls and more
        return Headline(line.quantity, value, listed(turn, at, pulls, *spread, interval))

    def facts(self) -> tuple[tuple[str, str], ...]:
        """Give who, what, when and where."""
        return tuple(fields.facts(self.material.header, self.issue))

    def drawing(self) -> Drawing:
        """Draw the trace with its pulls and the limit."""
        return self.trace((self.issue.paper.width, 86.0 if self.issue.kind is PageKind.ENGINEER else 172.0))

    def trace(self, size: tuple[float, float], which: str = "", also: tuple[float, ...] = ()) -> Drawing:
        """Draw the trace as wide and high as ``size``; ``which`` of several; ``also`` as in ``trace_drawing``, N·m."""
        m, per_unit = self.material, torque_factor(self.unit)
        scale = (m.factor or 1.0) / per_unit
        result = m.result
        limit: tuple[float | None, float | None] = (None, None)
        if result is not None:
            lower, upper = result.bounds.torques
            limit = (lower and lower / per_unit, upper and upper / per_unit)
        marks = [self._mark(pull, per_unit) for pull in m.pulls]
        axis = "torque at the axle" if m.factor is not None else "torque at the sensor"
        axis = f"{which}{APART}: {APART}{axis}{APART}" if which else f"{axis}{APART}"
        return trace_drawing(
            m.time_s,
            m.torque_nm * scale,
            self.unit,
            pulls=marks,
            limit=limit,
            size=size,
            axis=axis,
            also=[nm / per_unit for nm in also],
        )

    def _mark(self, pull: PullLine, per_unit: float) -> DrawnPull:
        def level(figure: Figure) -> float:
            nm = figure.at_axle_nm if self.material.factor is not None else figure.at_sensor_nm
            return pull.direction * (figure.at_sensor_nm if nm is None else nm) / per_unit

        breakaway = (pull.breakaway.time_s, level(pull.breakaway)) if pull.breakaway else None
        rotating = (pull.rotating.time_s, pull.rotating.end_s, level(pull.rotating)) if pull.rotating else None
        return DrawnPull(pull.number, pull.start_s, pull.end_s, pull.used, breakaway, pull.distinct, rotating)

    def legend(self) -> str:
        """Explain the drawing's marks."""
        parts = ["ring with B: breakaway", "thick: steady rotation", "numbered bar: pull, crossed if not used"]
        if any(p.breakaway and not p.distinct for p in self.material.pulls):
            parts.insert(1, "ring alone: slip began without a peak")
        if self.material.result is not None and not self.material.result.bounds.written.is_ratio:
            parts.append("shaded: conforms")
        return "; ".join([*parts, "positive: clockwise from outside"]) + "."

    def sections(self, *, full: bool) -> Iterator[Section]:
        """Give the blocks below the drawing; ``full`` for the engineer. Those of half width follow one another."""
        m = self.material
        if full:
            yield from self.pulls()
            if m.budget is not None:
                yield self.budget(m.budget)
        if m.drag is not None:
            yield self.drag(m.drag)
        if full and m.build is not None:
            yield build_section(m.build, self.issue, self.unit)
        if full and m.confirmed is not None:
            yield confirm_section(m.confirmed, self.unit)
        left_out = tuple(self.left_out())
        if left_out:
            yield Section("Excluded pulls and warnings", lines=left_out, half=full)
        cautions = Section("Cautions", lines=tuple(self.cautions(full=full)), half=full, bullets=True)
        if full:
            yield cautions
        yield Section("Test and conditions", self.conditions(full=full), (self.method(),), half=full)
        if full:
            yield Section("Corrections", lines=tuple(self.corrections()), half=True)
            yield Section("Transducer", self.instrument(), half=True)
        if self.issue.remarks.strip():
            yield Section("Remarks", lines=(own(self.issue.remarks, LONGEST_NOTE),), half=full)
        yield self.evidence()
        if not full:
            yield cautions

    def pulls(self) -> Iterator[Section]:
        """List the pulls."""
        yield Section(f"Pulls ({self.unit})", table=self.pull_table())

    def conditions(self, *, full: bool) -> tuple[tuple[str, str], ...]:
        """Give what a comparison depends on."""
        return tuple(fields.conditions(self.material.header, full=full))

    def instrument(self) -> tuple[tuple[str, str], ...]:
        """Give the transducer and how it sampled."""
        m = self.material
        return tuple(fields.instrument(m.header, self.unit, m.rate_hz, m.noise_nm))

    def pull_table(self, *, greatest: bool = False) -> PageTable:
        """List every pull, used or not; with its ``greatest`` rotating torque instead of breakaway over rotating."""
        rows, dim = [], []
        for i, pull in enumerate(self.material.pulls):
            b, r = pull.breakaway, pull.rotating
            ratio = b.at_sensor_nm / r.at_sensor_nm if b and r and r.at_sensor_nm else None
            # The reasons in full stand under "excluded"; here their names do.
            named = "; ".join(reason.partition(":")[0] for reason in pull.reasons)
            note = named or own(pull.left_out) or ("" if pull.distinct or not b else "no peak")
            if not pull.used:
                dim.append(i)
            rows.append(
                (
                    f"{pull.number}",
                    f"{pull.start_s:.1f}",
                    "cw" if pull.direction > 0 else "ccw",
                    *self._cells(b),
                    *self._cells(r),
                    self.torque(*(pull.greatest or (None,))) if greatest else "–" if ratio is None else f"{ratio:.2f}",
                    "–" if pull.chatter is None else f"{pull.chatter:.2f}",
                    clean(note, LONGEST_NOTE),
                )
            )
        heads = (
            "no.",
            "at, s",
            "turn",
            "breakaway",
            "at sensor",
            "rotating",
            "at sensor",
            "maximum" if greatest else "B÷R",
            "chatter",
            "remark",
        )
        return PageTable(heads, tuple(rows), (0, 1, 3, 4, 5, 6, 7, 8), tuple(dim), ((9, 150),))

    def _cells(self, figure: Figure | None) -> tuple[str, str]:
        if figure is None:
            return "–", "–"
        return self.torque(figure.at_axle_nm, figure.u95_axle_nm), self.torque(
            figure.at_sensor_nm, figure.u95_sensor_nm
        )

    def corrections(self) -> Iterator[str]:
        """Say what lies between the sensor's reading and the torque at the axle."""
        m = self.material
        factor = "" if m.factor is None else f"; torque at the axle = {m.factor:.4f} × torque at the sensor"
        yield clean(f"Fixture: {in_unit(m.fixture, self.issue.lengths)}{factor}.", LONGEST_NOTE)
        zero = f"{m.zero_nm / torque_factor(self.unit) + 0.0:.2f}".replace("-0.00", "0.00")
        yield clean(
            f"Zero {minus(zero)} {self.unit}: {APART}{m.zero_from}{APART}. {APART}Each pull is read from its own "
            "hand-off level, and at the axle from the true zero.",
            LONGEST_NOTE,
        )
        if m.header.zero is not None and m.header.zero.after_nm is not None and m.header.zero.value_nm is not None:
            moved = (m.header.zero.after_nm - m.header.zero.value_nm) / torque_factor(self.unit)
            yield f"Zero taken again after the pulls: it had moved by {minus(f'{moved:+.2f}')} {self.unit}."
        if m.header.transducer.gain is not None:
            yield f"Known gain {m.header.transducer.gain:g} (reading / true) divided out."
        for correction in m.corrections:
            by = f", {own(correction.by)}" if correction.by else ""
            yield clean(f"{correction.at:%Y-%m-%d %H:%M}{by}: {own(correction.reason, LONGEST_NOTE)}", LONGEST_NOTE)

    def budget(self, budget: Budget) -> Section:
        """Give the uncertainty budget of the judged value, largest part first."""
        torque = budget.unit == "N·m"  # a ratio has no unit
        scale, unit = (1 / torque_factor(self.unit), f" {self.unit}") if torque else (1.0, "")
        total = budget.u
        rows, small = [], []
        for row in sorted(budget.rows, key=lambda r: -r.contribution):
            share = (row.contribution / total) ** 2 if total else 1.0
            by, of = of_metres(row.input.unit, self.issue.lengths)
            by, of = (1 / torque_factor(self.unit), self.unit) if of == "N·m" else (by, of)
            value, u = minus(f"{row.input.value * by:.5g}"), f"{row.input.u * by:.2g}"
            if share < SMALL_SHARE:
                small.append(f"{row.input.name}{APART} {value} {'' if of == '1' else f'{of} '}(u {u})")
                continue
            rows.append(
                (
                    row.input.name,
                    f"{share * 100:.0f} %" if total else "–",
                    f"{row.contribution * scale:.2g}",
                    clean(in_unit(row.input.note, self.issue.lengths), LONGEST_NOTE),
                    value,
                    u,
                    of,
                    minus(f"{row.sensitivity * scale / by:.4g}"),
                    "∞" if row.input.dof == float("inf") else f"{row.input.dof:.0f}",
                )
            )
        heads = ("input", "share", f"part,{unit}" if unit else "part", "from", "value", "u", "unit", "sensitivity", "ν")
        dof = "∞" if budget.dof == float("inf") else f"{budget.dof:.1f}"
        line = (
            f"Combined u = {total * scale:.3g}{unit}, ν = {dof}, U (95 %) = {budget.u95 * scale:.3g}{unit} (JCGM 100)."
        )
        if small:
            line += f" {APART}Below {SMALL_SHARE * 100:g} % each: {APART}{f', {APART}'.join(small)}."
        return Section(
            f"Uncertainty of {'the ' * torque}{budget.quantity}",
            lines=(line,),
            table=PageTable(heads, tuple(rows), (1, 2, 4, 5, 7, 8), (), ((3, 60),)),
        )

    def method(self) -> str:
        """Say how the test was made and what was not tested."""
        header = self.material.header
        return words.method(header.test, header.conditions) + (
            "" if self.issue.kind is PageKind.ENGINEER else f" {APART}{words.NOT_TESTED}"
        )

    def drag(self, drag: DragPart) -> Section:
        """Give raw torque and pack mean side by side; neither takes the other's place."""

        def cell(torque: Torque | None, missing: str = "–") -> str:
            return missing if torque is None else self.torque(*torque)

        rows = tuple(
            (
                clean(line.quantity),
                clean(line.way),
                cell(line.raw),
                cell(line.both_free),
                cell(line.mean, "withheld"),
                *hows,
            )
            for line, hows in zip(drag.lines, _once_each(line.how for line in drag.lines), strict=True)
        )
        heads = ("quantity", "rolling", "as read", "both free", "pack mean", "how")
        said = in_a_row(words.RAW_IS_COMPARED, *(f"{note[0].upper()}{note[1:]}." for note in drag.notes if note))
        line = clean(said, 2 * LONGEST_NOTE)
        return Section(f"Drag taken off ({self.unit})", lines=(line,), table=PageTable(heads, rows, (2, 3, 4)))

    def left_out(self) -> Iterator[str]:
        """List what was not used and what is not in order."""
        if self.material.header.test.deviations.strip():
            yield clean(
                f"Deviations from the method: {own(self.material.header.test.deviations, LONGEST_NOTE)}", LONGEST_NOTE
            )
        out = [pull for pull in self.material.pulls if not pull.used]
        total = len(self.material.pulls)
        if out:
            yield f"{len(out)} of {total} pull{'s' * (total != 1)} not used:"
        for pull in out:
            yield clean(f"pull {pull.number}: {APART}{_reasons(pull) or own(pull.left_out)}", LONGEST_NOTE)
        for pull in self.material.pulls:
            yield from (
                clean(f"pull {pull.number}: {APART}{text}", LONGEST_NOTE) for text in pull.silences if pull.used
            )
        seen: dict[str, None] = {}
        for note in (*self.material.problems, *(note for line in self.material.job for note in line.notes)):
            seen.setdefault(clean(note, LONGEST_NOTE))
        if self.material.result is not None:
            for note in self.material.result.notes:
                seen.setdefault(clean(note, LONGEST_NOTE))
        yield from seen

    def cautions(self, *, full: bool) -> Iterator[str]:
        """Give the cautions that apply."""
        result = self.material.result
        close = words.CLOSE if result is not None and result.state is State.TOO_CLOSE else ()
        limit = words.LIMITS if result is not None else ()
        better = "drag" if self.material.drag is not None else "mean-of-packs" if self.material.neutral else ""
        said = [key for key in words.FULL if key != better]  # drag's numbers say it better; a ratio is of no held pack
        yield from cautions_of(*words.ALWAYS, *close, *((*said, *limit) if full else ()))

    def evidence(self) -> Section:
        """Say which files the page rests on and how it can be checked."""
        m = self.material
        rows = []
        halves = ((half, self.recording(half)) for half in m.halves)
        for part, what in (*halves, (m.drag, "both wheels free"), (m.confirmed, "second test")):
            if part is None:
                continue
            rows.append((own(Path(part.file).name, 60), own(part.sha256, 64), what))
            if part.sidecar_sha256:
                name = f"{Path(part.file).stem}.sidecar.toml"
                rows.append((own(name, 60), own(part.sidecar_sha256, 64), "stated and decided beside it"))
        if m.build is not None and self.issue.kind is PageKind.ENGINEER:
            rows.append(
                (
                    own(Path(m.build.file).name, 60),
                    own(m.build.entries_sha256),
                    "its two entries" if m.build.before else "its entry",
                )
            )
        photos = [photo for half in m.halves for photo in half.header.photos]
        for photo in photos[:MOST_PHOTOS]:
            rows.append((own(photo.file, 60), own(photo.sha256, 64), f"photo: {own(photo.caption) or 'no caption'}"))
        more = len(photos) - MOST_PHOTOS
        told = f"{more} more photos are named in the recording. {APART}{words.COMPUTED}" if more > 0 else words.COMPUTED
        lines = (in_a_row(told, words.STATED),)
        return Section("Evidence", lines=lines, table=PageTable(("file", "SHA-256", "what it is"), tuple(rows)))

    def recording(self, half: Material) -> str:
        """Say what a recording is."""
        return f"recording, {_STATES.get(half.state, half.state)}"


def _reasons(pull: PullLine) -> str:
    """Give the reasons why a pull is not valid: each a name, and a sentence that says it in full."""
    parts = (reason.partition(": ") for reason in pull.reasons)
    return f"{APART}; {APART}".join(f"{code}{APART}{colon}{APART}{text}" for code, colon, text in parts)


def _once_each(texts: Iterable[str]) -> Iterator[tuple[str]]:
    """Give each text where it stands for the first time, with true minus signs, and a ditto mark afterwards."""
    seen: set[str] = set()
    for text in texts:
        yield ("as above" if text in seen else clean(text.replace(" - ", " − "), LONGEST_NOTE),)
        seen.add(text)
