"""Recordings of one axle taken together: both sides, the both-free baseline, in gear and neutral.

Conventions:
- A held test gives a value per quantity and direction; sides are compared, and packs averaged, for the same way of
  rolling.
- What two recordings share (one transducer, one lever) is told by their headers: the same serial or name, the same
  lengths. Otherwise their calibrations and levers are independent.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from analysis.to_axle.at_axle import AT_HANDOFF, CALIBRATION, METHOD, NOT_SENSED, PART_OF_TURN
from analysis.to_axle.drag import (
    ROLLING,
    Drag,
    DragTest,
    Matrix,
    PackMean,
    factor_two,
    half_speed_note,
    held_end,
    in_gear_ratio,
    pack_mean,
    rolling,
)
from analysis.uncertainty.budget import Budget, BudgetRow
from analysis.verdict.recorded import Baseline
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.verdict.recorded import RecordingReading
    from analysis.verdict.repeats import JobValue

QUANTITIES = ("breakaway", "rotating mean")
GREATEST = "rotating maximum"
SIDES = ("right", "left")


def drag_test(held: Mapping[str, RecordingReading], both: RecordingReading | None) -> DragTest:
    """Take drag off; where the recordings hold the wheel's angle, the speeds of both kinds of test are compared.

    Args:
        held: mapping of side to RecordingReading; Tests with the other side held, driving "right", "left" or both.
        both: The baseline: both wheels free, one turned.

    Raises:
        InputError: A recording without torque at the axle, or a baseline that is not as it was closed.
    """
    readings = {**held, **({"both free": both} if both is not None else {})}
    for name, reading in readings.items():
        if not reading.job:
            raise InputError(f"{reading.file} ({name}): gives no torque at the axle; {'; '.join(reading.problems)}")
    _check_cards(held, both)
    flaw = unfit(both) if both is not None else ""
    if flaw:
        raise InputError(flaw)
    values = {name: _values(name, reading, tuple(readings.values())) for name, reading in readings.items()}
    raw = {
        quantity: Matrix(
            {
                (side, direction): budget
                for side in held
                for (name, direction), budget in values[side].items()
                if name == quantity
            }
        )
        for quantity in QUANTITIES
    }
    tested = {rolling(side, direction) for matrix in raw.values() for side, direction in matrix.cells}
    baseline, notes = _baseline(values.get("both free", {}), both, tested)
    means = tuple(m for q in QUANTITIES for m in _means(raw[q], baseline, q))
    notes += tuple(text for q in QUANTITIES for text in raw[q].words())
    if both is not None:
        note = half_speed_note(_speed_rad_s(*held.values()), _speed_rad_s(both))
        notes += (note,) if note else ()
    return DragTest(raw, baseline, means, (*notes, *_doubled(raw)))


def with_drag(reading: RecordingReading, baseline: RecordingReading) -> RecordingReading:
    """Take the drag of both wheels free off what the pulls say, or say among the problems why that is withheld.

    The limit goes on naming the torque as it was read.
    """
    header = reading.header
    if header is None or not reading.job:
        return reading
    if baseline.header is not None and baseline.header.test.held in ("other side", "case"):
        text = f"drag correction withheld: in {Path(baseline.file).name} the {baseline.header.test.held} was held"
        return replace(reading, problems=(*reading.problems, text))
    flaw = unfit(baseline)
    if flaw:
        return replace(reading, problems=(*reading.problems, f"drag correction withheld: {flaw}"))
    if not baseline.job:
        text = f"drag correction withheld: {Path(baseline.file).name} gives no torque at the axle"
        return replace(reading, problems=(*reading.problems, text))
    test = drag_test({header.test.side or "right": reading}, baseline)
    # A page that rests on simulated data is marked, whichever of its recordings they are in.
    header = msgspec.structs.replace(header, simulated=header.simulated or baseline.simulated)
    told = tuple(text for text in baseline.problems if text not in reading.problems)
    drag = Baseline(baseline.file, baseline.sha256, test, baseline.sidecar_sha256, told, baseline.state)
    carried = (f"baseline {Path(baseline.file).name}: {text}" for text in told)
    return replace(reading, header=header, drag=drag, problems=(*reading.problems, *carried))


def _check_cards(held: Mapping[str, RecordingReading], both: RecordingReading | None) -> None:
    """Refuse recordings whose own cards say that they are another test than they are given as."""
    for side, reading in held.items():
        said = reading.header.test if reading.header is not None else None
        if said is not None and said.side is not None and said.side != side:
            raise InputError(f"{reading.file}: its card says {said.side} side, but it is given as the {side} one")
        if said is not None and said.held == "none":
            raise InputError(f"{reading.file}: its card says that nothing was held, but it is given as a held test")
    said = both.header.test if both is not None and both.header is not None else None
    if both is not None and said is not None and said.held in ("other side", "case"):
        raise InputError(
            f"{both.file}: its card says that the {said.held} was held, but it is given as the baseline with both free"
        )


def unfit(baseline: RecordingReading) -> str:
    """Say why a both-free recording must not correct another one: its own checks do not hold; empty if they do.

    Of a foreign trace there is nothing to check.
    """
    if baseline.state != "recovered":
        return ""
    name = Path(baseline.file).name
    return f"{name} is not as it was closed: {baseline.problems[0] if baseline.problems else 'its checks do not hold'}"


def _speed_rad_s(*readings: RecordingReading) -> float | None:
    """Give the usual wheel speed of the pulls that count, where the recordings hold an angle."""
    speeds = [p.pull.turning.speed_rpm for r in readings for p in r.pulls if p.counts and p.pull.turning is not None]
    return statistics.median(abs(speed) for speed in speeds) * math.pi / 30 if speeds else None


def _doubled(raw: Mapping[str, Matrix]) -> tuple[str, ...]:
    """Look for a side that was tested with another member held."""
    found = []
    for matrix in raw.values():
        for way in ROLLING:
            pair = matrix.pair(way)
            text = factor_two(pair[0].value, pair[1].value) if pair is not None else ""
            found += [text] if text else []
    return tuple(found)


def _values(
    name: str, reading: RecordingReading, all_of_them: tuple[RecordingReading, ...]
) -> dict[tuple[str, int], Budget]:
    """Give the values of a recording; what it does not share with every other one gets a name of its own."""
    unshared = _unshared(reading, all_of_them)
    found = {}
    for value in reading.job:
        if value.budget.quantity in QUANTITIES:
            found[value.budget.quantity, value.direction] = _own(value.budget, name, unshared)
    return found


def _own(budget: Budget, name: str, unshared: set[str]) -> Budget:
    """Give a budget whose inputs of these names belong to this recording alone."""
    rows = tuple(
        BudgetRow(replace(row.input, name=f"{row.input.name} ({name})"), row.sensitivity)
        if row.input.shared and row.input.name in unshared
        else row
        for row in budget.rows
    )
    return replace(budget, rows=rows)


def _unshared(reading: RecordingReading, others: tuple[RecordingReading, ...]) -> set[str]:
    names: set[str] = {NOT_SENSED, AT_HANDOFF, METHOD, PART_OF_TURN}
    levels = {r.at.level for r in others if r.at is not None}
    fixtures = {r.at.fixture.inputs for r in others if r.at is not None}
    transducers = {(r.header.transducer.serial, r.header.transducer.name) for r in others if r.header is not None}
    if len(levels) > 1:
        names.add("true zero")
    if len(transducers) > 1:
        names |= {CALIBRATION, "full-scale accuracy"}
    if len(fixtures) > 1 and reading.at is not None:
        names |= {i.name for i in reading.at.fixture.inputs} | {"lever, second order"}
    return names


def _baseline(
    values: Mapping[tuple[str, int], Budget], both: RecordingReading | None, tested: set[str]
) -> tuple[dict[tuple[str, str], Budget], tuple[str, ...]]:
    """Give the baseline by quantity and way of rolling; one direction stands for both, said where both are tested."""
    if both is None:
        return {}, ("no both-free baseline: the pack mean cannot be separated from drag",)
    side = both.header.test.side if both.header is not None else None
    found: dict[tuple[str, str], Budget] = {}
    notes: tuple[str, ...] = ()
    for quantity in QUANTITIES:
        own = {direction: budget for (name, direction), budget in values.items() if name == quantity}
        for direction, budget in own.items():
            found[quantity, rolling(side or "right", direction)] = budget
        missing = [way for way in ROLLING if own and (quantity, way) not in found]
        for way in missing:
            found[quantity, way] = next(iter(own.values()))
            note = f"the baseline was turned one way only: it stands for {way} too"
            notes = notes if note in notes or way not in tested else (*notes, note)
    return found, notes


def _means(matrix: Matrix, baseline: Mapping[tuple[str, str], Budget], quantity: str) -> list[PackMean]:
    """Give the pack means of one quantity; sides that were rolled opposite ways only are put together, and named."""
    sides = {side: budget for (side, _), budget in matrix.cells.items()}
    base = next((b for (name, _), b in baseline.items() if name == quantity), None)
    if len(sides) == 2 and base is not None and not any(matrix.pair(way) for way in ROLLING):
        how = "(T_R + T_L - T_both) / 2; the sides were rolled opposite ways"
        return [PackMean(quantity, "both ways", pack_mean(sides["right"], sides["left"], base), how)]
    return [m for way in ROLLING for m in _mean(matrix, baseline, quantity, way)]


def _mean(matrix: Matrix, baseline: Mapping[tuple[str, str], Budget], quantity: str, way: str) -> list[PackMean]:
    """Give the pack mean from both sides, or from the one there is."""
    pair = matrix.pair(way)
    base = baseline.get((quantity, way))
    if pair is not None and base is not None:
        return [PackMean(quantity, way, pack_mean(*pair, base), "(T_R + T_L - T_both) / 2")]
    found = []
    for side in SIDES:
        raw = matrix.cells.get((side, ROLLING[way][side]))
        if raw is None:
            continue
        drag = Drag(rotating=baseline.get(("rotating mean", way)), breakaway=baseline.get(("breakaway", way)))
        budget, reason = drag.correct(raw)
        how = reason or f"T - T_both / 2, {side} wheel turned: wheel ends taken as alike; turn the other side too"
        found.append(PackMean(quantity, way, budget, how))
    return found


@dataclass(frozen=True, slots=True)
class BothEnds:
    """What two transducers at once say of one quantity: the pack mean, and the drag of the driveline."""

    quantity: str
    mean: Budget
    driveline: Budget


def both_ends(driven: RecordingReading, held: RecordingReading) -> tuple[BothEnds, ...]:
    """Give pack mean and driveline drag from a sensor at the driven wheel and one at the held shaft.

    No baseline is needed: (T - D + T_hold) / 2 is the mean exactly. The driven wheel end's own drag D stays in both
    results, by half and whole.

    Raises:
        InputError: A recording without torque at the axle.
    """
    for name, reading in (("driven", driven), ("held end", held)):
        if not reading.job:
            raise InputError(f"{reading.file} ({name}): gives no torque at the axle; {'; '.join(reading.problems)}")
    first, second = (_values(name, r, (driven, held)) for name, r in (("driven", driven), ("held", held)))
    found = []
    for quantity in QUANTITIES:
        ends = [next((b for (name, _), b in values.items() if name == quantity), None) for values in (first, second)]
        if ends[0] is not None and ends[1] is not None:
            found.append(BothEnds(quantity, *held_end(ends[0], ends[1])))
    return tuple(found)


def greatest_pair(in_gear: RecordingReading, neutral: RecordingReading) -> tuple[JobValue, JobValue]:
    """Give the rotating maxima in gear and in neutral, of the same direction where both were turned so.

    Raises:
        InputError: A recording without it.
    """
    found = []
    for name, reading in (("in gear", in_gear), ("neutral", neutral)):
        values = [v for v in reading.job if v.budget.quantity == GREATEST]
        if not values or min(v.budget.value for v in values) <= 0:
            raise InputError(f"{reading.file} ({name}): gives no rotating torque at the axle")
        found.append(values)
    pairs = [(first, second) for first in found[0] for second in found[1]]
    return next((pair for pair in pairs if pair[0].direction == pair[1].direction), pairs[0])


def gear_ratio(in_gear: RecordingReading, neutral: RecordingReading) -> Budget:
    """Give the rotating maximum in gear ÷ that in neutral, both wheels free.

    Raises:
        InputError: A recording without it.
    """
    both = (in_gear, neutral)
    first, second = (
        _own(value.budget, name, _unshared(reading, both))
        for value, name, reading in zip(greatest_pair(*both), ("in gear", "neutral"), both, strict=True)
    )
    return in_gear_ratio(first, second)
