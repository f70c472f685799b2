"""What a report is made from, gathered from the reading of a recording."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.pipeline import Asked, read_file
from analysis.report.build_part import build_part
from analysis.report.confirm_part import confirm_part
from analysis.report.drawing import GAP_S, GAP_STEPS
from analysis.report.material import DialLine, DragPart, Figure, JobLine, Material, PackLine, PullLine
from analysis.rows.gear import GEARS, judged_ratio, read_halves
from analysis.rows.second import check_signed, read_second
from analysis.rows.summary import ROTATING, asked_plain, chatter_of, factor_of, header_of, sensor_median
from analysis.to_axle.drag import rolling
from analysis.trace.gates import SILENT
from analysis.verdict.limits import bounds_from
from analysis.verdict.sides import GREATEST
from logger.errors import InputError

if TYPE_CHECKING:
    from pathlib import Path

    from analysis.uncertainty.budget import Budget
    from analysis.verdict.recorded import PullReading, RecordingReading
    from analysis.verdict.repeats import JobValue
    from logger.header import Lever


def material_of(reading: RecordingReading, asked: Asked | None = None) -> Material:
    """Give what a report is made from.

    Args:
        reading: The recording, read with ``asked``.
        asked: What was stated, so that a verifier can read it the same way.
    """
    header, trace = header_of(reading), reading.trace
    level = reading.at.level if reading.at is not None and reading.at.level.known else None
    zero = level.zero_nm if level is not None else trace.zero_nm if trace is not None else 0.0
    judged = reading.main
    none = np.empty(0)
    return Material(
        file=reading.file,
        sha256=reading.sha256,
        above_sha256=reading.above_sha256,
        sidecar_sha256=reading.sidecar_sha256,
        state=reading.state,
        header=header,
        asked=asked_plain(asked or Asked()),
        time_s=none if reading.time_s is None else reading.time_s,
        torque_nm=none if reading.torque_nm is None else reading.torque_nm - zero,
        factor=factor_of(reading),
        fixture=fixture_words(header.lever),
        rate_hz=_rate_hz(reading),
        zero_nm=zero,
        noise_nm=trace.noise_nm if trace else float("nan"),
        zero_from=reading.at.level.words if reading.at is not None else "the trace's unloaded level",
        pulls=tuple(_pull_line(number, p) for number, p in enumerate(reading.pulls, 1)),
        job=tuple(_job_lines(reading)),
        result=reading.result,
        budget=None if judged is None else judged.budget,
        corrections=reading.corrections,
        problems=reading.problems,
        drag=_drag_part(reading),
        dial=tuple(_dial_lines(reading)),
        build=build_part(reading),
    )


def _rate_hz(reading: RecordingReading) -> float:
    """Give how often was read on average, losses aside: the usual step of a jittering stream is another figure."""
    time_s = reading.time_s
    if time_s is None or len(time_s) < 2:
        return reading.trace.rate_hz if reading.trace else float("nan")
    steps = np.diff(time_s)
    return float(1 / np.mean(steps[steps <= max(GAP_S, GAP_STEPS * np.median(steps))]))


def _dial_lines(reading: RecordingReading) -> Iterator[DialLine]:
    """Give what was read from a dial; nothing where the fixture is not known."""
    for number, (dial, pull) in enumerate(zip(reading.dial, reading.pulls, strict=False), 1):
        scale = (
            f"division {dial.division:g} {dial.unit}" if dial.division is not None else "",
            f"class {dial.error_percent:g} %" if dial.error_percent is not None else "",
            f"to {dial.full_scale:g} {dial.unit}" if dial.full_scale is not None else "",
        )
        about = ", ".join(part for part in scale if part) or "not stated"
        for quantity, budget in pull.axle.items():
            shown = f"{dial.shown:g} {dial.unit}"
            yield DialLine(number, quantity, shown, about, budget.value, budget.u95, pull.left_out)


def read_material(
    recording: Path | str, asked: Asked, neutral: Path | str | None = None, second: Path | str | None = None
) -> tuple[Material, RecordingReading]:
    """Read what a report is made from, for commands and window alike.

    Args:
        recording: The recording, of a ratio the half in gear.
        asked: What is stated.
        neutral: The half in neutral: the report is of the ratio.
        second: A signed test of the same thing by another operator or transducer.

    Raises:
        HeldwheelError: One cannot be read or used; the second is not signed.
    """
    if neutral is not None:
        if second is not None:
            raise InputError("a second test confirms one recording, not a ratio of two")
        halves = read_halves(recording, neutral, asked)
        return ratio_material(*halves, asked), halves[0]
    if second is not None:
        check_signed(second)
    reading = read_file(recording, asked)
    material = material_of(reading, asked)
    if second is not None:
        material = replace(material, confirmed=confirm_part(reading, *read_second(reading, second, asked)))
    return material, reading


def ratio_material(in_gear: RecordingReading, neutral: RecordingReading, asked: Asked | None = None) -> Material:
    """Give what a report of in gear ÷ neutral is made from.

    Args:
        in_gear, neutral: The two halves, as ``analysis.rows.gear.read_halves`` reads them with ``asked``.
        asked: What was stated: its limit is the ratio's; without it the one that a recording names.

    Raises:
        InputError: They give no ratio.
    """
    asked = asked or Asked()
    bounds = None if asked.limit is None else bounds_from(asked.limit)
    found = judged_ratio(in_gear, neutral, bounds, rule=asked.rule, guard=asked.guard)
    first, second = (
        replace(material_of(reading, asked), drag=None, result=None, budget=None, job=(_job_line(value, gear),))
        for gear, reading, value in zip(GEARS, (in_gear, neutral), (found.in_gear, found.neutral), strict=True)
    )
    return replace(
        first,
        job=(*first.job, *second.job),
        result=found.result,
        budget=found.budget,
        neutral=second,
        problems=(*first.problems, *found.doubts),
    )


def _drag_part(reading: RecordingReading) -> DragPart | None:
    if reading.drag is None:
        return None
    test = reading.drag.test
    lines = []
    for m in test.means:
        cells = test.raw[m.quantity].cells.items()
        raw = next((b for (side, direction), b in cells if rolling(side, direction) == m.way), None)
        both = test.baseline.get((m.quantity, m.way))
        lines.append(PackLine(m.quantity, m.way, _torque95(raw), _torque95(both), _torque95(m.budget), m.how))
    drag = reading.drag
    return DragPart(drag.file, drag.sha256, tuple(lines), test.notes, drag.sidecar_sha256, drag.state)


def _torque95(budget: Budget | None) -> tuple[float, float] | None:
    return None if budget is None else (budget.value, budget.u95)


def _pull_line(number: int, p: PullReading) -> PullLine:
    b, r = p.pull.breakaway, p.pull.rotating
    axle = {quantity: (budget.value, budget.u95) for quantity, budget in p.axle.items()}
    none = (None, None)
    return PullLine(
        number,
        p.pull.start_s,
        p.pull.end_s,
        p.pull.direction,
        Figure(b.time_s, b.time_s, b.at_sensor_nm, b.u95_sensor_nm, *axle.get("breakaway", none)) if b else None,
        Figure(r.start_s, r.end_s, r.at_sensor_nm, r.u95_sensor_nm, *axle.get(ROTATING, none)) if r else None,
        distinct=b is None or b.distinct_peak,
        chatter=chatter_of(p),
        reasons=tuple(f"{reason.code}: {reason.text}" for reason in p.pull.reasons),
        left_out=p.left_out,
        silences=tuple(note for note in p.pull.notes if note.startswith(SILENT)),
        greatest=_torque95(p.axle.get(GREATEST)),
    )


def _job_lines(reading: RecordingReading) -> Iterator[JobLine]:
    shown = {"breakaway", ROTATING} | ({reading.bounds.quantity} if reading.bounds is not None else set())
    for value in reading.job:
        if value.budget.quantity in shown:
            yield _job_line(value)
    if reading.at is not None:
        return
    for direction in (1, -1):
        used = [p for p in reading.pulls if p.counts and p.pull.direction == direction]
        for name, quantity in (("breakaway", "breakaway"), ("rotating", ROTATING)):
            middle = sensor_median(used, name)
            if middle is not None:
                yield JobLine(quantity, direction, middle, None, len(used), "sensor")


def _job_line(value: JobValue, which: str = "") -> JobLine:
    count, budget, name = len(value.values), value.budget, which or value.budget.quantity
    spread = (min(value.values), max(value.values), value.cv) if count > 1 else ()
    return JobLine(name, value.direction, budget.value, budget.u95, count, "axle", value.notes, *spread)


_LEVER_WORDS = (
    ("length_mm", "length {:g} mm"),
    ("stud_circle_mm", "stud circle {:g} mm"),
    ("studs", "{:g} studs"),
    ("chord_mm", "chord {:g} mm"),
    ("angle_deg", "lever angle {:g}°"),
    ("pull_angle_deg", "pull angle {:g}°"),
    ("offset_mm", "drive offset {:g} mm"),
    ("radius_mm", "radius {:g} mm"),
    ("cord_mm", "cord {:g} mm"),
    ("weight_kg", "lever mass {:g} kg"),
    ("centroid_mm", "its centre {:g} mm from the drive"),
)


def fixture_words(lever: Lever | None) -> str:
    """Describe a fixture with every number that was stated."""
    if lever is None:
        return "not known; torque at the axle is not stated"
    said = [text.format(value) for key, text in _LEVER_WORDS if (value := getattr(lever, key)) is not None]
    return ", ".join([lever.fixture, *said])
