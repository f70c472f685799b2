"""From a reading at the sensor to the torque at the axle, with its budget.

Conventions:
- Magnitudes in the pull's direction; ``direction`` is +1 clockwise, -1 anticlockwise seen from outside the car.
- A reading relative to the hand-off level is not the torque at the axle: the lever hung on the sensor at hand-off,
  and its weight is real torque on the wheel. At the axle start from the true zero (lever hanging or off):
  T = F [m + direction (hand-off - zero)] + what the sensor does not see of the lever's weight.
- Without a true zero the hand-off level stands in for it, and the lever's weight enters the interval.
- What nobody states widens: accuracy, lever weight, and how a pack waves over a part of a turn have assumed
  half-widths, named in the budget.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.trace.traces import Sensor
from analysis.uncertainty.budget import (
    NORMAL_95,
    PER_HALF_WIDTH,
    Budget,
    BudgetRow,
    Input,
    Model,
    Shape,
    Value,
    half_width,
    second_order,
)
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.to_axle.lever import Fixture
    from logger.header import TransducerFacts, Zero

# How well the lever's angle at the moment of a reading is known when its start angle is stated: the operator judges
# it by eye and the lever has swung while the shafts wound up (common practice, no source).
ANGLE_HALF_WIDTH_RAD = math.radians(15)

# Greatest error of a torque tool whose accuracy nobody states: the widest class allowed for hand torque tools (± 4 % of
# reading, TM 1-1500-204-23-9, table 8-1), taken as a rectangle.
ASSUMED_ACCURACY = 0.04

# A pack's torque waves with every second turn of the wheel (it slips at half the wheel's speed) by about this part of
# its level: warped plates, runout (common practice, no source). Less than two turns show a part of the wave.
WAVES = 0.02
WAVE_RAD = 4 * math.pi
# Slowest turning by hand (2 to 10 rpm are usual: common practice, no source): what a trace without an angle turned.
SLOWEST_RAD_S = 2 * math.pi / 30

CALIBRATION = "calibration"
SECOND_ORDER = "lever, second order"
AT_HANDOFF = "lever's weight at hand-off"
NOT_SENSED = "lever's weight, not sensed"
ACCELERATION = "acceleration"
METHOD = "way of reading"
PART_OF_TURN = "part of a turn"
_EQUATION = {
    "trace",
    CALIBRATION,
    "full-scale accuracy",
    "true zero",
    AT_HANDOFF,
    NOT_SENSED,
    ACCELERATION,
    METHOD,
    PART_OF_TURN,
}


# No torque of a wheel, nor anything else that is stated about one, is beyond this (N·m, or a plain number).
MOST = 1e6

# No transducer reads so small a share of the true torque.
LEAST_GAIN = 1e-6


def _check(table: str, record: TransducerFacts | Zero, *keys: str, least: float = -MOST, most: float = MOST) -> None:
    """Refuse a stated figure that is no number, or absurd."""
    for key in keys:
        value = getattr(record, key)
        if value is not None and not least <= value <= most:
            raise InputError(f"{table}.{key} is {value:g}: it must lie between {least:g} and {most:g}")


@dataclass(frozen=True, slots=True)
class Instrument:
    """What all readings of one transducer share."""

    relative_u: float = 0.0  # relative standard uncertainty of calibration
    full_scale_u_nm: float = 0.0  # standard uncertainty that does not depend on the reading
    resolution_nm: float = 0.0  # step of the reading
    capacity_nm: float | None = None  # rated capacity
    note: str = ""  # where the calibration's uncertainty comes from
    assumed: bool = False  # whether nobody stated it

    @property
    def inputs(self) -> tuple[Input, ...]:
        """Relative and absolute error of the calibration, as inputs around 1 and 0."""
        shape = Shape.RECTANGULAR if self.assumed else Shape.NORMAL
        found = [Input(CALIBRATION, 1.0, self.relative_u, "1", shape=shape, shared=True, note=self.note)]
        if self.full_scale_u_nm:
            found.append(Input("full-scale accuracy", 0.0, self.full_scale_u_nm, shared=True, note="certificate"))
        return tuple(found)


def sensor_from(facts: TransducerFacts) -> Sensor:
    """Give what the reading of a trace needs to know of a transducer: one way for files and for the live window."""
    return Sensor(
        capacity_nm=facts.capacity_nm,
        resolution_nm=facts.resolution_nm,
        accuracy_percent_of_reading=facts.accuracy_percent_of_reading,
        gain=facts.gain,
        gain_u=facts.gain_u,
        delay_s=facts.filter_delay_s,
        delay_s_u=facts.filter_delay_s_u,
    )


def instrument_from(facts: TransducerFacts) -> Instrument:
    """Give what a certificate or data sheet states, as standard uncertainties.

    Stated accuracies are 95 % intervals: so the key of a description, a header or a sidecar defines them. A known gain
    (reading / true) is divided out of the readings; its own uncertainty, where stated, then replaces the accuracy of
    the reading, which otherwise stays. Where nothing is stated ``ASSUMED_ACCURACY`` stands in.

    Raises:
        InputError: A figure that no transducer has.
    """
    _check("transducer", facts, "capacity_nm", "resolution_nm", "gain_u", least=0.0)
    _check("transducer", facts, "gain", least=LEAST_GAIN)
    _check("transducer", facts, "accuracy_percent_of_reading", "accuracy_percent_of_full_scale", least=0.0, most=100.0)
    full_scale = 0.0
    if facts.accuracy_percent_of_full_scale and facts.capacity_nm:
        full_scale = facts.accuracy_percent_of_full_scale / 100 * facts.capacity_nm / NORMAL_95
    if facts.gain is not None and facts.gain_u is not None:
        relative, note = facts.gain_u / facts.gain, f"gain {facts.gain:g} divided out; its uncertainty as stated"
    elif facts.accuracy_percent_of_reading is not None:
        percent = facts.accuracy_percent_of_reading
        relative, note = percent / 100 / NORMAL_95, f"stated ± {percent:g} % of reading (95 %)"
    else:
        relative, note = 0.0, "stated for full scale only"
    if relative or full_scale:
        return Instrument(relative, full_scale, facts.resolution_nm or 0.0, facts.capacity_nm, note)
    return unstated(facts.resolution_nm or 0.0, facts.capacity_nm)


def unstated(resolution_nm: float = 0.0, capacity_nm: float | None = None) -> Instrument:
    """Give an instrument of which nobody states how accurate it is."""
    relative = ASSUMED_ACCURACY * PER_HALF_WIDTH[Shape.RECTANGULAR]
    note = f"accuracy not stated: assumed within ± {ASSUMED_ACCURACY * 100:g} % of reading"
    return Instrument(relative, 0.0, resolution_nm, capacity_nm, note, assumed=True)


@dataclass(frozen=True, slots=True)
class Level:
    """The true zero, or what stands in for it."""

    # zero_nm, u_nm: signed reading of the unloaded sensor, gain divided out, and its standard uncertainty
    zero_nm: float = 0.0
    u_nm: float = 0.0
    known: bool = False  # whether it is a true zero; otherwise each pull's own hand-off level stands in
    words: str = "hand-off level (no true zero)"  # where it comes from
    moved_nm: float | None = None  # from before to after the pulls; None if it was not taken again


def level_from(zero: Zero | None, *, gain: float = 1.0, resolution_nm: float = 0.0) -> Level:
    """Give the true zero of a header, if it has one.

    Args:
        zero: As written; its value is a reading, so that a known gain is divided out here as it is of every reading.
        gain: Reading / true.
        resolution_nm: Stands in for an uncertainty that is not stated: a reading is not known better than its step.

    Where it was taken again after the pulls, its middle counts, and it lay anywhere between the two.

    Raises:
        InputError: A figure that is no torque.
    """
    if zero is None or zero.value_nm is None or zero.how == "unknown":
        return Level()
    _check("zero", zero, "value_nm", "after_nm")
    _check("zero", zero, "value_nm_u", least=0.0)
    u = zero.value_nm_u if zero.value_nm_u is not None else resolution_nm / math.sqrt(12)
    if zero.after_nm is None:
        return Level(zero.value_nm / gain, u / gain, True, f"true zero ({zero.how})")
    moved = zero.after_nm - zero.value_nm
    u = math.hypot(u, abs(moved) / 2 * PER_HALF_WIDTH[Shape.RECTANGULAR])
    words = f"true zero ({zero.how}), before and after"
    return Level((zero.value_nm + moved / 2) / gain, u / gain, True, words, moved / gain)


@dataclass(frozen=True, slots=True)
class TracedTorque:
    """One torque as the trace gives it."""

    quantity: str  # what it is: breakaway, rotating mean, rotating maximum
    # at_sensor_nm, u_trace_nm: relative to the hand-off level, and what this trace cannot settle
    at_sensor_nm: float
    u_trace_nm: float
    direction: int = 1  # +1 or -1
    handoff_nm: float = 0.0  # signed level before the pull
    turn_rad: float | None = 0.0  # how far the wheel turned while it was read; 0 for a breakaway; None if unknown
    # how far the wheel had turned from hand-off to the middle of it; None if unknown
    since_handoff_rad: float | None = 0.0
    acceleration_nm: float = 0.0  # what a change of the wheel's speed may have added or taken: half-width
    u_method_nm: float = 0.0  # what every trace that is read the same way leaves open alike: standard uncertainty
    # part of the level, half-width, by which a torque that waves may lie off its mean over two turns
    waves: float = 0.0


def waves_left(turned_rad: float | None, steady_s: float = 0.0) -> float:
    """Give the half-width, part of the level, by which the mean over a stretch may lie off that over two turns.

    Args:
        turned_rad: How far the wheel turned; None if unknown: then at least as far as the slowest usual hand turns it
            ...
        steady_s: ... in this time, and it is not known where whole turns ended.

    The mean of a wave of amplitude A and period P over a stretch w is A sin(π w/P)/(π w/P) at most.

    >>> round(waves_left(0.0), 4), round(waves_left(2 * math.pi), 4), round(waves_left(4 * math.pi), 4)
    (0.02, 0.0127, 0.0)
    """
    x = math.pi * (SLOWEST_RAD_S * steady_s if turned_rad is None else turned_rad) / WAVE_RAD
    if x == 0:
        return WAVES
    left = math.sin(x) if turned_rad is not None or x < math.pi / 2 else 1.0
    return WAVES * abs(left) / x


def at_axle(reading: TracedTorque, fixture: Fixture, instrument: Instrument, level: Level) -> Budget:
    """Give the torque at the axle with its budget.

    Args:
        reading: From the trace (or a dial).
        fixture: How the torque gets to the axle.
        instrument: Shared errors of the transducer.
        level: True zero, or what stands in for it.

    Rows: trace; way of reading; calibration; full-scale accuracy; zero or hand-off level; each length and angle of the
    fixture, and their second order; the lever's weight that the sensor does not see. Everything but the
    trace and a change of speed is shared by all pulls of a job.
    """
    offset = reading.direction * (reading.handoff_nm - level.zero_nm) if level.known else 0.0
    shown = reading.at_sensor_nm + offset
    factor, slopes = fixture.factor, fixture.slopes
    rows = [
        BudgetRow(Input("trace", reading.at_sensor_nm, reading.u_trace_nm, note="noise, sampling, boundaries"), factor)
    ]
    if reading.u_method_nm:
        note = "filter, sample rate, what counts as the level: alike in every pull"
        rows.append(BudgetRow(Input(METHOD, 0.0, reading.u_method_nm, shared=True, note=note), factor))
    if reading.waves:
        note = f"waves of about ± {WAVES * 100:g} % assumed: turn two whole turns and record the angle"
        u = reading.waves * PER_HALF_WIDTH[Shape.ARCSINE]  # of an amplitude that is itself a guess: about normal
        rows.append(BudgetRow(Input(PART_OF_TURN, 1.0, u, "1", shared=True, note=note), factor * reading.at_sensor_nm))
    if reading.acceleration_nm:
        speed = half_width(ACCELERATION, 0.0, reading.acceleration_nm, note="the wheel's speed changed while it turned")
        rows.append(BudgetRow(speed, factor))
    for i in instrument.inputs:
        rows.append(BudgetRow(i, factor * shown if i.name == CALIBRATION else reading.direction * factor))
    rows.append(_level_row(reading, fixture, level))
    rows += [BudgetRow(i, shown * slopes[i.name]) for i in fixture.inputs]
    bend = second_order(fixture.factor_at, fixture.inputs)
    if bend:
        rows.append(BudgetRow(Input(SECOND_ORDER, 0.0, bend, "1", shared=True, note="JCGM 100, 5.1.2 note"), shown))
    unseen = _unseen(reading, fixture)
    if unseen is not None:
        rows.append(BudgetRow(unseen, float(reading.direction)))
    value = factor * shown + (reading.direction * unseen.value if unseen is not None else 0.0)
    return Budget(reading.quantity, value, "N·m", tuple(rows))


def _level_row(reading: TracedTorque, fixture: Fixture, level: Level) -> BudgetRow:
    factor = fixture.factor
    if level.known:
        zero = Input("true zero", level.zero_nm, level.u_nm, shared=True, note=level.words)
        return BudgetRow(zero, -reading.direction * factor)
    lever = fixture.weight
    moment = lever.moment_nm if lever is not None and fixture.reads == "torque" else 0.0
    note = "no true zero: lever's weight at an unknown angle"
    if fixture.reads == "torque" and (lever is None or lever.assumed):
        moment = max(moment, abs(reading.handoff_nm))  # all of it may be the lever's
        note = f"no true zero, lever's weight not stated: assumed within ± {moment:.2g} N·m"
    weight = half_width(AT_HANDOFF, 0.0, moment, shape=Shape.ARCSINE, shared=True, note=note)
    return BudgetRow(weight, reading.direction * factor)


def _unseen(reading: TracedTorque, fixture: Fixture) -> Input | None:
    """Give the clockwise torque of the lever's weight that the sensor misses, averaged over the turn that was read."""
    most = fixture.unsensed_most_nm
    if most == 0:
        return None
    name, note = NOT_SENSED, "over whole turns it averages to zero"
    turn = reading.turn_rad
    left = 1.0 if turn is None else abs(math.sin(turn / 2) / (turn / 2)) if turn else 1.0
    start = fixture.weight.start_angle_rad if fixture.weight is not None else None
    if start is None or reading.since_handoff_rad is None or turn is None:
        return half_width(name, 0.0, most * left, shape=Shape.ARCSINE, shared=True, note=f"angle not known; {note}")
    angle = start + reading.direction * reading.since_handoff_rad
    value = fixture.unsensed_nm(angle) * (math.sin(turn / 2) / (turn / 2) if turn else 1.0)
    half = ANGLE_HALF_WIDTH_RAD
    spread = max(abs(fixture.unsensed_nm(angle + side * half) - fixture.unsensed_nm(angle)) for side in (-1, 1)) * left
    return half_width(name, value, spread, shared=True, note=f"lever at {math.degrees(angle):.0f}° ± 15°; {note}")


def trials_model(reading: TracedTorque, fixture: Fixture, budget: Budget) -> tuple[tuple[Input, ...], Model]:
    """Give the inputs and the equation behind a budget of ``at_axle``, for Monte Carlo.

    Inputs that were added to the budget later (repeatability) act on the result directly.
    """
    inputs = tuple(row.input for row in budget.rows if row.input.name != SECOND_ORDER)
    added = {i.name for i in inputs} - _EQUATION - {i.name for i in fixture.inputs}

    def torque(x: Mapping[str, Value]) -> Value:
        shown = x["trace"] * x.get(PART_OF_TURN, 1.0) + x.get(ACCELERATION, 0.0) + x.get(METHOD, 0.0)
        shown = shown + reading.direction * (x.get("full-scale accuracy", 0.0) + x.get(AT_HANDOFF, 0.0))
        if "true zero" in x:
            shown = shown + reading.direction * (reading.handoff_nm - x["true zero"])
        whole = fixture.factor_at(x) * x[CALIBRATION] * shown + reading.direction * x.get(NOT_SENSED, 0.0)
        return whole + sum(x[name] for name in added)

    return inputs, torque
