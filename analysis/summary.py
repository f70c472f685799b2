"""A recording's reading as other parts need it: a row of a table, a run of a comparison, the material of a report.

Offers ``recording_row``, ``pull_rows``, ``run_of``, ``material_of``, ``asked_plain`` and ``asked_from``.
"""

from __future__ import annotations

import statistics
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

import msgspec
import numpy as np

from analysis.compare.runs import Quantity, Run, Setting
from analysis.drag import rolling
from analysis.limits import Guard, Rule
from analysis.pipeline import Asked
from analysis.recorded import DIRECTIONS
from analysis.report.material import DragPart, Figure, JobLine, Material, PackLine, PullLine
from logger.errors import InputError
from logger.header import Header, Lever, Limit, Zero

if TYPE_CHECKING:
    from analysis.budget import Budget
    from analysis.compare.runs import Tag
    from analysis.recorded import PullReading, RecordingReading
    from analysis.repeats import JobValue
    from analysis.tables import Cell

ROTATING = "rotating mean"


def header_of(reading: RecordingReading) -> Header:
    """Give the header of a reading.

    Raises
    ------
    InputError
        The recording could not be read; the text says why.
    """
    if not reading.ok or reading.header is None:
        raise InputError("; ".join(reading.problems) or f"{reading.file}: cannot be read")
    return reading.header


# Tables


def recording_row(reading: RecordingReading) -> dict[str, Cell]:
    """Give the row of a recording (``analysis.tables.RECORDING_COLUMNS``).

    Where both directions were pulled, the row holds the one that the result was decided by, or else the one with more
    pulls, clockwise first.
    """
    direction = _direction(reading)
    row = _item(reading, direction)
    used = [p for p in reading.pulls if p.counts and p.pull.direction == direction]
    breakaway, rotating = (_sensor_median(used, name) for name in ("breakaway", "rotating"))
    values = {v.budget.quantity: v.budget for v in reading.job if v.direction == direction}
    row |= {
        "rate_hz": reading.trace.rate_hz if reading.trace else None,
        "noise_nm": reading.trace.noise_nm if reading.trace else None,
        "pulls": len(reading.pulls),
        "pulls_used": len(used),
        "direction": DIRECTIONS[direction] if used else "",
        "breakaway_sensor_nm": breakaway,
        "rotating_sensor_nm": rotating,
        "static_dynamic_ratio": _median(r for p in used if (r := ratio_of(p)) is not None),
        "chatter_index": _median(c for p in used if (c := chatter_of(p)) is not None),
        "problems": "; ".join(reading.problems),
    }
    for name, quantity in (("breakaway", "breakaway"), ("rotating", ROTATING)):
        budget = values.get(quantity)
        row[f"{name}_axle_nm"] = None if budget is None else budget.value
        row[f"{name}_axle_u95_nm"] = None if budget is None else budget.u95
    result = reading.result
    row |= {
        "result": "" if result is None else str(result.state),
        "limit": "" if result is None else f"{result.bounds.quantity} {result.bounds.words}",
        "limit_source": "" if result is None else result.bounds.source,
        "rule": "" if result is None else str(result.rule),
        "probability": None if result is None else result.probability,
    }
    return row


def pull_rows(reading: RecordingReading) -> list[dict[str, Cell]]:
    """Give the rows of a recording's pulls (``analysis.tables.PULL_COLUMNS``)."""
    rows = []
    for number, p in enumerate(reading.pulls, 1):
        row = _item(reading, p.pull.direction)
        row |= {
            "pull": number,
            "start_s": p.pull.start_s,
            "end_s": p.pull.end_s,
            "direction": DIRECTIONS[p.pull.direction],
            "valid": p.pull.valid,
            "used": p.counts,
            "breakaway_sensor_nm": p.pull.breakaway.at_sensor_nm if p.pull.breakaway else None,
            "rotating_sensor_nm": p.pull.rotating.at_sensor_nm if p.pull.rotating else None,
            "static_dynamic_ratio": ratio_of(p),
            "chatter_index": chatter_of(p),
            "reasons": "; ".join(
                [*(f"{r.code}: {r.text}" for r in p.pull.reasons), *([p.left_out] if p.left_out else [])]
            ),
        }
        for name, quantity in (("breakaway", "breakaway"), ("rotating", ROTATING)):
            budget = p.axle.get(quantity)
            row[f"{name}_axle_nm"] = None if budget is None else budget.value
            row[f"{name}_axle_u95_nm"] = None if budget is None else budget.u95
        rows.append(row)
    return rows


def _item(reading: RecordingReading, direction: int) -> dict[str, Cell]:
    """Give what identifies a recording."""
    header = header_of(reading)
    job, axle, test, conditions = header.job, header.axle, header.test, header.conditions
    return {
        "file": Path(reading.file).name,
        "state": reading.state,
        "sha256": reading.sha256,
        "simulated": header.simulated,
        "started": header.started.isoformat() if header.started else "",
        "job": job.number,
        "customer": job.customer,
        "vehicle": job.vehicle,
        "axle": job.axle,
        "operator": job.operator,
        "tags": "; ".join(f"{key}={value}" for key, value in sorted(job.tags.items())),
        "place": test.place or "",
        "held": test.held or "",
        "gear": test.gear or "",
        "side": test.side or "",
        "fluid": conditions.fluid,
        "modifier": conditions.modifier,
        "modifier_percent": conditions.modifier_percent,
        "oil_temperature_c": conditions.oil_temperature_c,
        "distance_km": conditions.distance_km,
        "shim_mm": axle.shim_mm,
        "dwell_s": test.dwell_s,
        "fixture": header.lever.fixture if header.lever else "",
        "lever_factor": _factor(reading),
    }


def _factor(reading: RecordingReading) -> float | None:
    return reading.at.fixture.factor if reading.at is not None and reading.at.fixture.reads == "torque" else None


def _direction(reading: RecordingReading) -> int:
    judged = _judged(reading)
    if judged is not None:
        return judged.direction
    counts = [sum(p.counts and p.pull.direction == d for p in reading.pulls) for d in (1, -1)]
    return 1 if counts[0] >= counts[1] else -1


def _judged(reading: RecordingReading) -> JobValue | None:
    """Give the value that the result was decided by; without a result the first breakaway, or whatever there is."""
    if reading.result is not None:
        for value in reading.job:
            if value.budget.quantity == reading.result.bounds.quantity and value.budget.value == reading.result.value:
                return value
    return next((v for v in reading.job if v.budget.quantity == "breakaway"), reading.job[0] if reading.job else None)


def _median(values: Iterable[float]) -> float | None:
    found = list(values)
    return statistics.median(found) if found else None


def _sensor_median(pulls: Sequence[PullReading], name: str) -> float | None:
    return _median(part.at_sensor_nm for p in pulls if (part := getattr(p.pull, name)) is not None)


def ratio_of(reading: PullReading) -> float | None:
    """Give breakaway over rotating torque of one pull, at the axle where it is known."""
    b, r = _torque(reading, "breakaway"), _torque(reading, ROTATING)
    return b / r if b is not None and r else None


def chatter_of(reading: PullReading) -> float | None:
    """Give the chatter index of one pull: 0 where it turned without stick-slip, None where it did not turn."""
    if reading.pull.stick_slip is not None:
        return reading.pull.stick_slip.chatter_index
    return 0.0 if reading.pull.rotating is not None else None


def _torque(reading: PullReading, quantity: str) -> float | None:
    budget = reading.axle.get(quantity)
    if budget is not None:
        return budget.value
    part = reading.pull.breakaway if quantity == "breakaway" else reading.pull.rotating
    return None if part is None else part.at_sensor_nm


# Comparisons


def run_of(reading: RecordingReading) -> Run:
    """Give a recording as a comparison sees it."""
    header = header_of(reading)
    used = [p for p in reading.pulls if p.counts]
    of_pull: dict[Quantity, Callable[[PullReading], float | None]] = {
        Quantity.BREAKAWAY: lambda p: _torque(p, "breakaway"),
        Quantity.ROTATING: lambda p: _torque(p, ROTATING),
        Quantity.RATIO: ratio_of,
        Quantity.CHATTER: chatter_of,
        Quantity.SLOPE: lambda p: p.pull.turning.slope_nms if p.pull.turning is not None else None,
    }
    name = Path(reading.file).name
    excluded = tuple(
        f"{name}, pull at {p.pull.start_s:.1f} s: " + ("; ".join(str(r.code) for r in p.pull.reasons) or p.left_out)
        for p in reading.pulls
        if not p.counts
    )
    values = {q: tuple(v for p in used if (v := get(p)) is not None) for q, get in of_pull.items()}
    return Run(
        name, _tags(header, name), _setting(reading, header, used), values, len(used), excluded, header.simulated
    )


def _tags(header: Header, name: str) -> dict[str, Tag]:
    """Give everything a recording can be grouped by; the user's own tags win over the header's facts."""
    job, axle, test, conditions = header.job, header.axle, header.test, header.conditions
    facts: dict[str, Tag | None] = {
        "file": name,
        "date": f"{header.started:%Y-%m-%d}" if header.started else None,
        "job": job.number,
        "customer": job.customer,
        "vehicle": job.vehicle,
        "axle": job.axle,
        "operator": job.operator,
        "type": axle.type,
        "pack_build": axle.pack_build,
        "shim_mm": axle.shim_mm,
        "side": test.side,
        "direction": test.direction,
        "place": test.place,
        "fluid": conditions.fluid,
        "modifier": conditions.modifier,
        "modifier_percent": conditions.modifier_percent,
        "oil_temperature_c": conditions.oil_temperature_c,
        "distance_km": conditions.distance_km,
        "condition": conditions.condition,
    }
    return {key: value for key, value in facts.items() if value is not None and value != ""} | dict(job.tags)


def _setting(reading: RecordingReading, header: Header, used: Sequence[PullReading]) -> Setting:
    test = header.test
    known = [word for word in (test.place, test.held and f"{test.held} held", test.gear) if word]
    turns = {p.pull.direction for p in used}
    speeds = [p.pull.turning.speed_rpm * np.pi / 30 for p in used if p.pull.turning is not None]
    return Setting(
        ", ".join(known) or None,
        "axle" if reading.at is not None else "sensor",
        header.lever.fixture if header.lever else None,
        test.side,
        "both" if len(turns) > 1 else DIRECTIONS[turns.pop()] if turns else test.direction,
        header.conditions.oil_temperature_c,
        float(statistics.median(speeds)) if speeds else None,
        test.dwell_s,
        header.conditions.wheel_fitted,
    )


# Reports


def material_of(reading: RecordingReading, asked: Asked | None = None) -> Material:
    """Give what a report is made from.

    Parameters
    ----------
    reading : RecordingReading
        The recording, read with ``asked``.
    asked : Asked, optional
        What was stated, so that a verifier can read it the same way.
    """
    header, trace = header_of(reading), reading.trace
    level = reading.at.level if reading.at is not None and reading.at.level.known else None
    zero = level.zero_nm if level is not None else trace.zero_nm if trace is not None else 0.0
    judged = _judged(reading)
    none = np.empty(0)
    return Material(
        file=reading.file,
        sha256=reading.sha256,
        state=reading.state,
        header=header,
        asked=asked_plain(asked or Asked()),
        time_s=none if reading.time_s is None else reading.time_s,
        torque_nm=none if reading.torque_nm is None else reading.torque_nm - zero,
        factor=_factor(reading),
        fixture=fixture_words(header.lever),
        rate_hz=trace.rate_hz if trace else float("nan"),
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
    return DragPart(reading.drag.file, reading.drag.sha256, tuple(lines), test.notes)


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
    )


def _job_lines(reading: RecordingReading) -> Iterator[JobLine]:
    shown = {"breakaway", ROTATING} | ({reading.bounds.quantity} if reading.bounds is not None else set())
    for value in reading.job:
        if value.budget.quantity in shown:
            count, budget = len(value.values), value.budget
            spread = (min(value.values), max(value.values), value.cv) if count > 1 else ()
            yield JobLine(
                budget.quantity, value.direction, budget.value, budget.u95, count, "axle", value.notes, *spread
            )
    if reading.at is not None:
        return
    for direction in (1, -1):
        used = [p for p in reading.pulls if p.counts and p.pull.direction == direction]
        for name, quantity in (("breakaway", "breakaway"), ("rotating", ROTATING)):
            middle = _sensor_median(used, name)
            if middle is not None:
                yield JobLine(quantity, direction, middle, None, len(used), "sensor")


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


# What was stated, as plain values and back

_ASKED: dict[str, Any] = {
    "lever": Lever | None,
    "limit": Limit | None,
    "zero": Zero | Literal["start"] | None,
    "held": Literal["other side", "case", "none"] | None,
    "gear": Literal["neutral", "in gear"] | None,
    "rule": Rule | None,
    "guard": Guard | None,
    "repeatability": Annotated[float, msgspec.Meta(ge=0, le=10)] | None,
    "drop_outliers": bool,
    **dict.fromkeys(("time_column", "torque_column", "angle_column", "torque_unit"), str | None),
}


def asked_plain(asked: Asked) -> dict[str, Any]:
    """Give what the caller stated as JSON-ready values."""
    return {name: msgspec.to_builtins(getattr(asked, name)) for name in _ASKED}


def asked_from(plain: Any) -> Asked:
    """Give what the caller stated back from plain values.

    Raises
    ------
    InputError
        They are damaged.
    """
    try:
        if not isinstance(plain, Mapping) or set(plain) != set(_ASKED):
            raise ValueError("other settings than this program has")
        return Asked(**{name: msgspec.convert(plain[name], kind) for name, kind in _ASKED.items()})
    except (TypeError, ValueError) as error:
        raise InputError(f"the settings that the report was made with are damaged: {error}") from None
