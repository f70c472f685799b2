"""A recording's reading as other parts need it: a row of a table, a run of a comparison; what was asked.

Offers ``recording_row``, ``pull_rows``, ``run_of``, ``asked_plain`` and ``asked_from``; for reports ``header_of``,
``factor_of``, ``sensor_median``, ``chatter_of``.
"""

from __future__ import annotations

import statistics
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, Literal

import msgspec
import numpy as np

from analysis.compare.builds import build_tags
from analysis.compare.runs import Quantity, Run, Setting
from analysis.compare.tags import tags_of_header
from analysis.pipeline import Asked
from analysis.rows.friction import friction_of, friction_words
from analysis.trace.results import DIRECTION_WORDS, DIRECTIONS
from analysis.verdict.limits import Guard, Rule
from logger.errors import InputError
from logger.header import Header, Lever, Limit, Table, Test, Zero

if TYPE_CHECKING:
    from analysis.rows.tables import Cell
    from analysis.verdict.recorded import PullReading, RecordingReading

ROTATING = "rotating mean"


def header_of(reading: RecordingReading) -> Header:
    """Give the header of a reading.

    Raises:
        InputError: The recording could not be read; the text says why.
    """
    if not reading.ok or reading.header is None:
        raise InputError("; ".join(reading.problems) or f"{reading.file}: cannot be read")
    return reading.header


# Tables


def recording_row(reading: RecordingReading) -> dict[str, Cell]:
    """Give the row of a recording (``analysis.rows.tables.RECORDING_COLUMNS``).

    Where both directions were pulled, the row holds the one that the result was decided by, or else the one with more
    pulls, clockwise first.
    """
    direction = _direction(reading)
    row = _item(reading)
    used = [p for p in reading.pulls if p.counts and p.pull.direction == direction]
    breakaway, rotating = (sensor_median(used, name) for name in ("breakaway", "rotating"))
    values = {v.budget.quantity: v.budget for v in reading.job if v.direction == direction}
    row |= {
        "rate_hz": reading.trace.rate_hz if reading.trace else None,
        "noise_nm": reading.trace.noise_nm if reading.trace else None,
        "pulls": len(reading.pulls),
        "pulls_used": len(used),
        "direction": DIRECTION_WORDS[direction] if used else "",
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
    """Give the rows of a recording's pulls (``analysis.rows.tables.PULL_COLUMNS``)."""
    rows = []
    for number, p in enumerate(reading.pulls, 1):
        row = _item(reading)
        row |= {
            "pull": number,
            "start_s": p.pull.start_s,
            "end_s": p.pull.end_s,
            "direction": DIRECTION_WORDS[p.pull.direction],
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


def _item(reading: RecordingReading) -> dict[str, Cell]:
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
        "lever_factor": factor_of(reading),
    }


def factor_of(reading: RecordingReading) -> float | None:
    """Give torque at the axle over torque shown; None where the fixture is not known or reads no torque."""
    return reading.at.fixture.factor if reading.at is not None and reading.at.fixture.reads == "torque" else None


def _direction(reading: RecordingReading) -> int:
    if reading.main is not None:
        return reading.main.direction
    counts = [sum(p.counts and p.pull.direction == d for p in reading.pulls) for d in (1, -1)]
    return 1 if counts[0] >= counts[1] else -1


def _median(values: Iterable[float]) -> float | None:
    found = list(values)
    return statistics.median(found) if found else None


def sensor_median(pulls: Sequence[PullReading], name: str) -> float | None:
    """Give the median at the sensor of the pulls' ``breakaway`` or ``rotating``; None where none has it."""
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
    """Give a recording as a comparison sees it; what it does not say of its build comes from the axle's sheet."""
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
    mu = friction_of(reading)
    of_build = {} if reading.build is None else build_tags(reading.build)
    stated = {
        (quantity, DIRECTION_WORDS[value.direction]): (value.budget.value, value.budget.u95)
        for value in reading.job
        for quantity, key in ((Quantity.BREAKAWAY, "breakaway"), (Quantity.ROTATING, ROTATING))
        if value.budget.quantity == key
    }
    excluded = tuple(
        f"{name}, pull at {p.pull.start_s:.1f} s: " + ("; ".join(str(r.code) for r in p.pull.reasons) or p.left_out)
        for p in reading.pulls
        if not p.counts
    )
    values = {q: tuple(v for p in used if (v := get(p)) is not None) for q, get in of_pull.items()}
    return Run(
        name,
        of_build | tags_of_header(header, name),
        _setting(reading, header, used),
        values,
        len(used),
        excluded,
        header.simulated,
        header.started,
        stated,
        friction_words(reading, mu),
        None if mu is None else (mu[0].value, mu[0].u95),
    )


def _stated_way(test: Test) -> str | None:
    """Name the direction that the card states."""
    return next((DIRECTION_WORDS[sign] for sign, code in DIRECTIONS.items() if code == test.direction), test.direction)


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
        "both" if len(turns) > 1 else DIRECTION_WORDS[turns.pop()] if turns else _stated_way(test),
        header.conditions.oil_temperature_c,
        float(statistics.median(speeds)) if speeds else None,
        test.dwell_s,
        header.conditions.wheel_fitted,
        header.transducer.serial or header.transducer.name or None,
        header.job.operator or None,
    )


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
    "table": Table | None,
}
_BEFORE_0_3 = {"time_column": "time", "torque_column": "torque", "angle_column": "angle", "torque_unit": "unit"}


def asked_plain(asked: Asked) -> dict[str, Any]:
    """Give what the caller stated as JSON-ready values."""
    return {name: msgspec.to_builtins(getattr(asked, name)) for name in _ASKED}


def asked_from(plain: Any) -> Asked:
    """Give what the caller stated back from plain values.

    Raises:
        InputError: They are damaged.
    """
    try:
        if isinstance(plain, Mapping) and set(_BEFORE_0_3) <= set(plain):  # a report of an earlier version
            table = {key: plain[name] for name, key in _BEFORE_0_3.items() if plain[name] is not None}
            plain = {"table": table or None} | {name: v for name, v in plain.items() if name not in _BEFORE_0_3}
        if not isinstance(plain, Mapping) or set(plain) != set(_ASKED):
            raise ValueError("other settings than this program has")
        return Asked(**{name: msgspec.convert(plain[name], kind) for name, kind in _ASKED.items()})
    except (TypeError, ValueError) as error:
        raise InputError(f"the settings that the report was made with are damaged: {error}") from None
