"""Turns what was read from a recording into the text of a page, in one unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.axle import PROPSHAFT_ERROR_TURNS, read_ratio
from analysis.limits import State, percent
from analysis.report import words
from analysis.report.content import LONGEST_NOTE, Headline, Section, Table, Verdict, clean, listed, minus
from analysis.report.drawing import Drawing, PullMark, trace_drawing
from analysis.report.material import Figure, Issue, JobLine, Kind, Material, PullLine
from logger.errors import InputError
from logger.units import format_torque, torque_factor

if TYPE_CHECKING:
    from logger.header import Axle

_TURN = {1: "clockwise", -1: "counter-clockwise"}


def counted(axle: Axle) -> str:
    """Describe a ratio that was found by counting, with its limits of error; empty where turns were not recorded."""
    turns, left, right = axle.propshaft_turns, axle.left_turns, axle.right_turns
    if turns is None or left is None or right is None:
        return ""
    off = PROPSHAFT_ERROR_TURNS if axle.propshaft_error_turns is None else axle.propshaft_error_turns
    try:
        found = read_ratio(
            turns, left, right, propshaft_error_turns=off, wheel_error_turns=axle.wheel_error_turns or 0.0
        )
    except InputError:
        return ""
    return f"{found.formula}, between {found.low:.3f} and {found.high:.3f}"


@dataclass(frozen=True, slots=True)
class Page:
    """Turns material into text, in one unit."""

    material: Material
    issue: Issue
    unit: str

    def torque(self, nm: float | None, u95_nm: float | None = None) -> str:
        """Write a torque without its unit, for table cells."""
        return "–" if nm is None else format_torque(nm, self.unit, u95_nm).removesuffix(f" {self.unit}")

    def facts(self) -> Iterator[tuple[str, str]]:
        """Who, what, when: what identifies the item and the test."""
        header = self.material.header
        job, axle = header.job, header.axle
        when = f"{header.started:%Y-%m-%d %H:%M %z}" if header.started else "not recorded"
        what = listed(job.axle, axle.type, f"ratio {axle.ratio:g}" if axle.ratio else "", axle.tag)
        for label, value in (
            ("job", job.number),
            ("customer", job.customer),
            ("vehicle", job.vehicle),
            ("axle", what),
            ("ratio", counted(axle)),
            ("tested", when),
            ("operator", job.operator),
            ("witness", job.witness),
            ("pack", listed(axle.pack_build, "" if axle.shim_mm is None else f"shim {axle.shim_mm:g} mm")),
        ):
            if value.strip():
                yield label, clean(value)

    def verdict(self) -> Verdict | None:
        """Give the result against the limit; None where no limit was stated."""
        result = self.material.result
        if result is None:
            return None
        limit = result.bounds.written
        text = f"{result.bounds.quantity} {result.bounds.words}"
        text += f", {limit.condition}" if limit.condition else ""
        text += f" ({result.bounds.source})"
        if limit.text:
            text += f" “{limit.text}”"
        chance = "" if result.probability != result.probability else percent(result.probability)
        meaning = words.PLAIN_STATES[result.state]
        return Verdict(result.state, result.shape, meaning, clean(text, 300), words.rule_words(result), chance)

    def headlines(self) -> tuple[Headline, ...]:
        """Give the job's values, what is judged first."""
        result = self.material.result
        judged = None if result is None else result.bounds.quantity
        return tuple(self.headline(line) for line in sorted(self.material.job, key=lambda v: v.quantity != judged))

    def headline(self, line: JobLine) -> Headline:
        """Give one judged torque in large figures."""
        pulls = f"{'median of ' if line.pulls > 1 else ''}{line.pulls} pull{'s' * (line.pulls != 1)}"
        turn = _TURN[line.direction]
        at = "at the axle" if line.at == "axle" else "at the sensor, fixture not known"
        value = format_torque(line.value_nm, self.unit, line.u95_nm)
        interval = ", interval 95 %" if line.u95_nm is not None else ", no interval"
        return Headline(line.quantity, value, f"{turn}, {at}, {pulls}{interval}")

    def drawing(self) -> Drawing:
        """Draw the trace with its pulls and the limit."""
        m, per_unit = self.material, torque_factor(self.unit)
        scale = (m.factor or 1.0) / per_unit
        result = m.result
        limit: tuple[float | None, float | None] = (None, None)
        if result is not None and result.bounds.written.kind != "ratio min":
            lower, upper = result.bounds.lower, result.bounds.upper
            limit = (lower and lower / per_unit, upper and upper / per_unit)
        marks = [self._mark(pull, per_unit) for pull in m.pulls]
        axis = "torque at the axle" if m.factor is not None else "torque at the sensor"
        height = 118.0 if self.issue.kind is Kind.ENGINEER else 172.0
        return trace_drawing(
            m.time_s, m.torque_nm * scale, self.unit, pulls=marks, limit=limit, size=(523.0, height), axis=axis
        )

    def _mark(self, pull: PullLine, per_unit: float) -> PullMark:
        def level(figure: Figure) -> float:
            nm = figure.at_axle_nm if self.material.factor is not None else figure.at_sensor_nm
            return pull.direction * (figure.at_sensor_nm if nm is None else nm) / per_unit

        breakaway = (pull.breakaway.time_s, level(pull.breakaway)) if pull.breakaway else None
        rotating = (pull.rotating.time_s, pull.rotating.end_s, level(pull.rotating)) if pull.rotating else None
        return PullMark(pull.number, pull.start_s, pull.end_s, pull.used, breakaway, pull.distinct, rotating)

    def legend(self) -> str:
        """Explain the drawing's marks."""
        parts = ["triangle: breakaway", "thick line: steady rotation", "bar with number: pull, crossed if not used"]
        if any(p.breakaway and not p.distinct for p in self.material.pulls):
            parts.insert(1, "ring: slip began without a peak")
        if self.material.result is not None:
            parts.append("shaded: where the value conforms")
        return "; ".join(parts) + ". Clockwise, seen from outside the car, is positive."

    def sections(self, *, full: bool) -> Iterator[Section]:
        """Give the blocks below the drawing; ``full`` for the engineer."""
        if full:
            yield Section(f"Pulls ({self.unit})", table=self.pull_table())
            yield Section("Corrections", lines=tuple(self.corrections()), half=True)
        yield Section("Test and conditions", tuple(self.conditions(full=full)), (self.method(),), half=full)
        if full and self.material.budget is not None:
            yield self.budget()
        if full:
            yield Section("Instrument", tuple(self.instrument()), half=True)
        left_out = tuple(self.left_out())
        if left_out:
            yield Section("Left out, and what is not in order", lines=left_out, half=full)
        if self.issue.remarks.strip():
            yield Section("Remarks", lines=(clean(self.issue.remarks, LONGEST_NOTE),), half=full)
        yield Section("Evidence", lines=(self.evidence(),), half=full)

    def pull_table(self) -> Table:
        """List every pull, used or not."""
        rows, dim = [], []
        for i, pull in enumerate(self.material.pulls):
            b, r = pull.breakaway, pull.rotating
            ratio = b.at_sensor_nm / r.at_sensor_nm if b and r and r.at_sensor_nm else None
            # The reasons in full stand under "left out"; here their names do.
            named = "; ".join(reason.partition(":")[0] for reason in pull.reasons)
            note = named or pull.left_out or ("" if pull.distinct or not b else "no peak")
            if not pull.used:
                dim.append(i)
            rows.append(
                (
                    f"{pull.number}",
                    f"{pull.start_s:.1f}",
                    "cw" if pull.direction > 0 else "ccw",
                    *self._cells(b),
                    *self._cells(r),
                    "–" if ratio is None else f"{ratio:.2f}",
                    "–" if pull.chatter is None else f"{pull.chatter:.2f}",
                    clean(note, 150),
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
            "ratio",
            "chatter",
            "remark",
        )
        return Table(heads, tuple(rows), (0, 1, 3, 4, 5, 6, 7, 8), tuple(dim))

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
        yield clean(f"Fixture: {m.fixture}{factor}.", LONGEST_NOTE)
        zero = f"{m.zero_nm / torque_factor(self.unit) + 0.0:.2f}".replace("-0.00", "0.00")
        yield clean(
            f"Zero {minus(zero)} {self.unit}: {m.zero_from}. Each pull is read from its own hand-off level, and at the "
            "axle from the true zero.",
            LONGEST_NOTE,
        )
        if m.header.zero is not None and m.header.zero.after_nm is not None and m.header.zero.value_nm is not None:
            moved = (m.header.zero.after_nm - m.header.zero.value_nm) / torque_factor(self.unit)
            yield f"Zero taken again after the pulls: it had moved by {minus(f'{moved:+.2f}')} {self.unit}."
        if m.header.transducer.gain is not None:
            yield f"Known gain {m.header.transducer.gain:g} (reading / true) divided out."
        for correction in m.corrections:
            by = f", {clean(correction.by)}" if correction.by else ""
            yield clean(f"{correction.at:%Y-%m-%d %H:%M}{by}: {correction.reason}", LONGEST_NOTE)

    def budget(self) -> Section:
        """Give the uncertainty budget of the judged value, largest part first."""
        budget = self.material.budget
        if budget is None:  # the caller has asked already
            raise ValueError("no budget")
        scale = 1 / torque_factor(self.unit)
        total = budget.u
        rows = [
            (
                row.input.name,
                minus(f"{row.input.value:.5g}"),
                f"{row.input.u:.2g}",
                row.input.unit,
                "∞" if row.input.dof == float("inf") else f"{row.input.dof:.0f}",
                minus(f"{row.sensitivity:.4g}"),
                f"{row.contribution * scale:.2g}",
                f"{(row.contribution / total) ** 2 * 100:.0f} %" if total else "–",
                clean(row.input.note, 60),
            )
            for row in sorted(budget.rows, key=lambda r: -r.contribution)
        ]
        heads = ("input", "value", "u", "unit", "ν", "sensitivity", f"part, {self.unit}", "share", "from")
        dof = "∞" if budget.dof == float("inf") else f"{budget.dof:.1f}"
        line = (
            f"Combined u = {total * scale:.3g} {self.unit}, ν = {dof}, U (95 %) = {budget.u95 * scale:.3g} {self.unit} "
            "(JCGM 100)."
        )
        return Section(
            f"Uncertainty of the {budget.quantity}", lines=(line,), table=Table(heads, tuple(rows), (1, 2, 4, 5, 6, 7))
        )

    def conditions(self, *, full: bool) -> Iterator[tuple[str, str]]:
        """Give what a comparison depends on."""
        c = self.material.header.conditions
        modifier = listed(c.modifier, f"{c.modifier_percent:g} %" if c.modifier_percent else "")
        for label, value in (
            ("oil", f"{c.oil_temperature_c:g} °C" if c.oil_temperature_c is not None else "temperature not recorded"),
            ("fluid", c.fluid),
            ("modifier", modifier),
            ("condition", c.condition or ""),
            ("distance", f"{c.distance_km:g} km" if c.distance_km is not None else ""),
            ("notes", self.material.header.job.notes if full else ""),
        ):
            if value.strip():
                yield label, clean(value)

    def method(self) -> str:
        """Say how the test was made and what was not tested."""
        header = self.material.header
        return words.method(header.test, header.conditions) + (
            "" if self.issue.kind is Kind.ENGINEER else f" {words.NOT_TESTED}"
        )

    def instrument(self) -> Iterator[tuple[str, str]]:
        """Give the transducer and its certificate."""
        t = self.material.header.transducer
        accuracy = [
            f"± {value:g} % of {of} (95 %)"
            for value, of in (
                (t.accuracy_percent_of_reading, "reading"),
                (t.accuracy_percent_of_full_scale, "full scale"),
            )
            if value is not None
        ]
        due = f", due {t.certificate_due}" if t.certificate_due else ""
        started = self.material.header.started
        if t.certificate_due and started and started.date() > t.certificate_due:
            due += " (EXPIRED at the time of the test)"
        for label, value in (
            ("transducer", listed(t.name, t.serial)),
            ("capacity", format_torque(t.capacity_nm, self.unit) if t.capacity_nm else ""),
            ("accuracy", listed(*accuracy) or "not stated"),
            ("certificate", f"{t.certificate}{due}" if t.certificate else "none recorded"),
            (
                "rate",
                f"{self.material.rate_hz:.4g} samples/s, noise {format_torque(self.material.noise_nm, self.unit)}",
            ),
        ):
            if value:
                yield label, clean(value)

    def left_out(self) -> Iterator[str]:
        """List what was not used and what is not in order."""
        out = [pull for pull in self.material.pulls if not pull.used]
        total = len(self.material.pulls)
        if out:
            yield f"{len(out)} of {total} pull{'s' * (total != 1)} not used:"
        for pull in out:
            yield clean(f"pull {pull.number}: {'; '.join(pull.reasons) or pull.left_out}", LONGEST_NOTE)
        seen: dict[str, None] = {}
        for note in (*self.material.problems, *(note for line in self.material.job for note in line.notes)):
            seen.setdefault(clean(note, LONGEST_NOTE))
        if self.material.result is not None:
            for note in self.material.result.notes:
                seen.setdefault(clean(note, LONGEST_NOTE))
        yield from seen

    def cautions(self, *, full: bool) -> Iterator[str]:
        """Give the cautions that apply."""
        yield from words.ALWAYS
        result = self.material.result
        if result is not None and result.state is State.TOO_CLOSE:
            yield words.CLOSE
        if full:
            yield from words.FULL

    def evidence(self) -> str:
        """Say which file the page rests on and how it can be checked."""
        m = self.material
        state = {
            "closed": "closed and unchanged since",
            "recovered": "recovered, without its closing line",
            "foreign": "a trace from elsewhere",
        }.get(m.state, m.state)
        return (
            f"Recording {clean(Path(m.file).name)}, {state}. SHA-256 {m.sha256}. Whoever holds that file can do the "
            "work again: heldwheel-read report --verify. The hash shows that the file is unchanged, not who made it."
        )
