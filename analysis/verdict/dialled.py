"""Readings of a dial judged as a job: the same lever, interval, repeats and limit as a recording's pulls."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from analysis.to_axle.at_axle import Instrument, Level
from analysis.to_axle.dial import Dial, dial_reading
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.results import Pull
from analysis.verdict.judge import AtAxle, judge_budgets
from analysis.verdict.limits import bounds_from, decided_by
from analysis.verdict.recorded import PullReading, RecordingReading
from logger.edges.units import torque_factor
from logger.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.to_axle.lever import Fixture
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Guard, Rule
    from logger.header import Correction, Header
    from logger.recordings.dialled import DialReading


def dial_of(reading: DialReading) -> tuple[float, Dial]:
    """Give what was shown, and the dial; SI."""
    factor = 1.0 if reading.unit in {"N", "kg"} else torque_factor(reading.unit)

    def si(value: float | None) -> float | None:
        return None if value is None else value * factor

    error = None if reading.error_percent is None else reading.error_percent / 100
    return reading.shown * factor, Dial(si(reading.division), error, si(reading.full_scale))


def judge_dialled(
    file: str,
    header: Header,
    readings: Sequence[DialReading],
    *,
    corrections: Sequence[Correction] = (),
    rule: Rule | None = None,
    guard: Guard | None = None,
    repeatability: float | None = None,
) -> RecordingReading:
    """Judge the readings of one job.

    Args:
        file: As the user named it.
        header: What was tested, with the sidecar's values over it.
        readings: In the order they were made. A reading has no time: its place stands for its start.
        corrections: Decisions made later; one that excludes a reading names its place.
        rule, guard, repeatability: See ``analysis.verdict.judge.judge_pulls``.

    Raises:
        HeldwheelError: A reading, the lever or the limit cannot be used.
    """
    if header.lever is None:
        text = "the fixture is not known: torque at the axle is not stated; give it in Edit details, or with --lever"
        return RecordingReading(file, ok=True, problems=(text,), header=header, dial=tuple(readings))
    fixture = fixture_from(header.lever)
    direction = -1 if header.test.direction == "counter-clockwise" else 1
    out = _excluded(corrections)
    budgets = [at_axle_of(reading, fixture) for reading in readings]
    at = AtAxle(fixture, Instrument(0.0, note="each dial's own"), Level(0.0, 0.0, True, "zero as set on the dial"))
    bounds = bounds_from(header.limit, file=file) if header.limit is not None else None
    ruled, guarded = decided_by(header.decision, rule, guard)
    listed = [(direction, own, place not in out) for place, own in enumerate(budgets)]
    said = judge_budgets(listed, header, at, bounds, rule=ruled, guard=guarded, repeatability=repeatability)
    pulls = [
        PullReading(Pull(float(place), float(place), direction, 0.0), own, out.get(place, ""), (), result)
        for place, (own, result) in enumerate(zip(budgets, said.results, strict=True))
    ]
    return RecordingReading(
        file,
        ok=True,
        problems=tuple(dict.fromkeys((*fixture.notes, *_doubts(readings), *said.notes))),
        header=header,
        at=at,
        pulls=tuple(pulls),
        job=said.job,
        bounds=bounds,
        result=said.result,
        corrections=tuple(corrections),
        state="closed",
        dial=tuple(readings),
    )


def _doubts(readings: Sequence[DialReading]) -> Iterator[str]:
    """Give what each dial leaves in doubt about its reading."""
    for place, reading in enumerate(readings, 1):
        shown, dial = dial_of(reading)
        yield from (f"reading {place}: {text}" for text in dial.doubts(shown))


def at_axle_of(reading: DialReading, fixture: Fixture) -> dict[str, Budget]:
    """Give a reading's torque at the axle, by the quantity that it was read as.

    Raises:
        InputError: The fixture takes something else than the dial showed.
    """
    shown, dial = dial_of(reading)
    kind = {"N": "force", "kg": "mass"}.get(reading.unit, "torque")
    if kind != fixture.reads:
        raise InputError(f"the fixture reads a {fixture.reads}, but the dial showed {reading.unit}")
    return {reading.quantity: dial_reading(shown, dial, fixture, quantity=reading.quantity)}


def _excluded(corrections: Sequence[Correction]) -> dict[int, str]:
    """Give the places of readings that were excluded, with the reason; a later decision wins."""
    out: dict[int, str] = {}
    for correction in corrections:
        if correction.pull_start_s is None:
            continue
        place = round(correction.pull_start_s)
        if correction.exclude:
            out[place] = correction.reason
        elif correction.as_found:
            out.pop(place, None)
    return out
