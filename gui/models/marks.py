"""Pulls as marks on a trace: where, how much, how sure, with which result. Plain values in the unit drawn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from analysis.verdict.recorded import PullReading, RecordingReading
    from gui.models.caught import CaughtPull


@dataclass(frozen=True, slots=True)
class PullMark:
    """A pull on the trace, in the unit drawn."""

    label: str  # its number
    breakaway: tuple[float, float, float] | None = None  # time, torque and half-width of its interval
    rotating: tuple[float, float, float, float] | None = None  # start, end, torque and half-width of its interval
    state: str = ""  # its result, for the colour; empty without one
    rejected: bool = False  # whether it is excluded


def mark_of(caught: CaughtPull, unit_factor: float) -> PullMark:
    """Give a caught pull as a mark on the live trace."""
    pull, sign = caught.pull, caught.pull.direction
    breakaway = rotating = None
    if pull.breakaway is not None and caught.breakaway is not None:
        value = caught.breakaway
        half = (value.u95_nm or 0.0) * unit_factor
        breakaway = (pull.breakaway.time_s + caught.start_s, sign * value.nm * unit_factor, half)
    if pull.rotating is not None and caught.rotating is not None:
        value = caught.rotating
        half = (value.u95_nm or 0.0) * unit_factor
        start, end = pull.rotating.start_s + caught.start_s, pull.rotating.end_s + caught.start_s
        rotating = (start, end, sign * value.nm * unit_factor, half)
    return PullMark(str(caught.number), breakaway, rotating, caught.state, bool(caught.rejected))


def marks_of(reading: RecordingReading, unit_factor: float) -> list[PullMark]:
    """Give the pulls of a recording as marks; without a fixture they stand where the transducer read them."""
    return [_mark(number, pull, unit_factor) for number, pull in enumerate(reading.pulls, 1)]


def _mark(number: int, read: PullReading, unit_factor: float) -> PullMark:
    pull, breakaway, rotating = read.pull, None, None
    if pull.breakaway is not None:
        value, half = _torque(read, "breakaway", pull.breakaway.at_sensor_nm, pull.breakaway.u95_sensor_nm)
        breakaway = (pull.breakaway.time_s, pull.direction * value * unit_factor, half * unit_factor)
    if pull.rotating is not None:
        value, half = _torque(read, "rotating mean", pull.rotating.at_sensor_nm, pull.rotating.u95_sensor_nm)
        rotating = (
            pull.rotating.start_s,
            pull.rotating.end_s,
            pull.direction * value * unit_factor,
            half * unit_factor,
        )
    state = str(read.result.state) if read.result is not None else ""
    return PullMark(str(number), breakaway, rotating, state, bool(read.left_out))


def _torque(read: PullReading, quantity: str, at_sensor_nm: float, u95_sensor_nm: float) -> tuple[float, float]:
    budget = read.axle.get(quantity)
    return (budget.value, budget.u95) if budget is not None else (at_sensor_nm, u95_sensor_nm)
