"""Practice: dial in an axle and one's own mistakes, and see the error that each makes in a plain reading.

A plain reading is what someone notes by eye: the highest value of a pull as its breakaway, the middle value of the
second half of the turning as its rotating torque, both from the zero they took and times the lever factor they believe
in. The error is that reading minus the truth of the same axle without the mistake: torque on the wheel about the axle.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from statistics import median
from typing import TYPE_CHECKING, Literal

import numpy as np

from logger.errors import InputError
from logger.header import Lever as LeverFacts
from logger.virtual.hand import HandPull
from logger.virtual.lever import LeverModel
from logger.virtual.pack import Friction
from logger.virtual.physics import LeverOff, Reseat, Rest, Scenario
from logger.virtual.scenarios import TYRE_NM_RAD, axle, drag, pack
from logger.virtual.sensor import SensorModel

if TYPE_CHECKING:
    from logger.virtual.physics import Action, SimulatedRun

Fluid = Literal["sound", "smooth", "wrong"]
ZeroTaken = Literal["lever off", "lever fitted", "its own"]
FIRST_REST_S = 2.0  # lever off, then lever fitted: so long each, before the first pull


@dataclass(frozen=True, slots=True)
class Dials:
    """The axle and the way of pulling that a person dials in."""

    # rotating_nm, breakaway_nm: mean of both packs: sliding, and fresh static level (None: a fifth more)
    rotating_nm: float = 45.0
    breakaway_nm: float | None = None
    # "sound", "smooth" or "wrong"; smooth leaves no breakaway; wrong falls with speed and chatters
    fluid: Fluid = "sound"
    uneven: float = 1.0  # one pack over the other; the wheel feels their mean
    # wheel_drag_nm, driveline_drag_nm: of the driven wheel, and of the driveline at the case (half of it reaches the
    # wheel)
    wheel_drag_nm: float = 3.0
    driveline_drag_nm: float = 8.0
    pulls: int = 3  # how many

    def scenario(self) -> Scenario:
        """Give the axle, pulled by a careful hand on a lever on one stud, with a good transducer.

        Raises:
            InputError: A dial stands where no axle is.
        """
        top = 1.2 * self.rotating_nm if self.breakaway_nm is None else self.breakaway_nm
        for name, value, low, high in (
            ("rotating torque", self.rotating_nm, 1.0, 2000.0),
            ("breakaway torque", top, 0.3 * self.rotating_nm, 3.0 * self.rotating_nm),
            ("uneven", self.uneven, 0.1, 10.0),
            ("wheel drag", self.wheel_drag_nm, 0.0, 200.0),
            ("driveline drag", self.driveline_drag_nm, 0.0, 400.0),
            ("number of pulls", self.pulls, 1, 50),
        ):
            if not low <= value <= high:
                raise InputError(f"The {name} must lie between {low:g} and {high:g}, not {value:g}.")
        shares = (2 * self.uneven / (1 + self.uneven), 2 / (1 + self.uneven))
        driven, other = (self._pack(share * self.rotating_nm, top / self.rotating_nm) for share in shares)
        tested = axle(driven, other, driven_nm=self.wheel_drag_nm, case_nm=self.driveline_drag_nm)
        total = max(top, self.rotating_nm) + self.wheel_drag_nm + self.driveline_drag_nm / 2
        pulling = HandPull(ramp_nm_s=total / 2.2)
        if self.fluid == "wrong":
            pulling = replace(pulling, turn_rad_s=((0.18, 6.0),), stiffness_nm_rad=450.0, damping_nms=3.0)
        actions: list[Action] = [LeverOff(FIRST_REST_S), Rest(FIRST_REST_S)]
        for index in range(self.pulls):
            actions += [Reseat(LEVER.start_deg), Rest(1.0)] if index else []
            actions.append(pulling)
        full = next(r for r in (50.0, 100.0, 200.0, 500.0, 1000.0, 5000.0) if r > 1.6 * total)
        sensor = SensorModel(capacity_nm=full, resolution_nm=full * 5e-5, noise_nm=full * 1e-4)
        return Scenario("practice", "dialled in", tested, (*actions, LeverOff(FIRST_REST_S)), LEVER, sensor)

    def _pack(self, level: float, ratio: float) -> Friction:
        if self.fluid == "smooth":
            return pack(level, min(ratio, 0.9), stribeck_rad_s=0.08, ageing_nm=0.0, viscous_nms=0.04 * level)
        if self.fluid == "wrong":
            return pack(level, max(ratio, 1.4), stribeck_rad_s=0.15, viscous_nms=0.0)
        return pack(level, ratio)


LEVER = LeverModel(length_m=0.45, mass_kg=1.2, centroid_m=0.2, stud_radius_m=0.05715, start_deg=20.0)


def lever_facts(lever: LeverModel) -> LeverFacts:
    """Give a lever as its owner would write it down: in line with the stud, whatever he does."""
    on_stud, weighs = lever.stud_radius_m > 0, lever.mass_kg > 0
    return LeverFacts(
        fixture="one stud" if on_stud else "hub centre",
        name="practice lever",
        length_mm=lever.length_m * 1000,
        stud_circle_mm=lever.stud_radius_m * 2000 if on_stud else None,
        angle_deg=0.0 if on_stud else None,
        weight_kg=lever.mass_kg if weighs else None,
        centroid_mm=lever.centroid_m * 1000 if weighs else None,
        start_angle_deg=lever.start_deg,
    )


@dataclass(frozen=True, slots=True)
class Attempt:
    """A test as somebody does it."""

    scenario: Scenario  # what happens
    factor: float  # the lever factor the person believes in
    # "lever off", "lever fitted" or "its own"; when the zero was taken, or that the transducer's own zero was trusted
    zero: ZeroTaken = "lever off"


@dataclass(frozen=True, slots=True)
class Mistake:
    """One way to spoil a reading."""

    about: str  # what was done; ``{}`` is the size
    cure: str  # what to do instead
    size: float  # usual size
    make: Callable[[Attempt, float], Attempt]  # spoils an attempt


def _pulled(attempt: Attempt, change: Callable[[HandPull], HandPull]) -> Attempt:
    actions = tuple(change(a) if isinstance(a, HandPull) else a for a in attempt.scenario.actions)
    return replace(attempt, scenario=replace(attempt.scenario, actions=actions))


def _axled(attempt: Attempt, **changes: object) -> Attempt:
    changed = replace(attempt.scenario.axle, **changes)  # type: ignore[arg-type]
    return replace(attempt, scenario=replace(attempt.scenario, axle=changed))


def _levered(attempt: Attempt, **changes: float) -> Attempt:
    return replace(attempt, scenario=replace(attempt.scenario, lever=replace(attempt.scenario.lever, **changes)))


def _sensed(attempt: Attempt, **changes: object) -> Attempt:
    changed = replace(attempt.scenario.sensor, **changes)  # type: ignore[arg-type]
    return replace(attempt, scenario=replace(attempt.scenario, sensor=changed))


def _jerk(attempt: Attempt, rate: float) -> Attempt:
    return _pulled(attempt, lambda pull: replace(pull, ramp_nm_s=rate, yanks=((1.2, 0.25 * rate, 0.25),)))


def _brake(attempt: Attempt, torque: float) -> Attempt:
    now = attempt.scenario.axle.driven_drag.coulomb_nm
    return _axled(attempt, driven_drag=drag(now + torque, rising=0.5, ripple=0.15))


def _tyre(attempt: Attempt, grip: float) -> Attempt:
    return _axled(attempt, floor=Friction(grip, 1.1 * grip, 0.1, stiffness_nm_rad=TYRE_NM_RAD, damping_nms=60.0))


def _case(attempt: Attempt, _size: float) -> Attempt:
    held = _axled(attempt, held="case")
    wide = _sensed(held, capacity_nm=3 * attempt.scenario.sensor.capacity_nm)
    return _pulled(wide, lambda pull: replace(pull, ramp_nm_s=2 * pull.ramp_nm_s, strength_nm=5000.0))


MISTAKES: Mapping[str, Mistake] = {
    "off-line": Mistake(
        "lever {:g}° off the line centre to stud",
        "line up wheel centre, stud and lever, or enter the angle",
        60.0,
        lambda a, size: _levered(a, angle_deg=size),
    ),
    "oblique": Mistake(
        "lever square to the line, pulled {:g}° off square",
        "put the lever in line: then the direction of the pull does not matter",
        15.0,
        lambda a, size: replace(_levered(a, angle_deg=90.0, pull_angle_deg=size), factor=1.0),
    ),
    "as-read": Mistake(
        "lever on a stud, read as it is",
        "enter lever and stud circle",
        0.0,
        lambda a, _size: replace(a, factor=1.0),
    ),
    "length": Mistake(
        "lever {:g} mm shorter than believed",
        "measure from the drive axis to the middle of the hand",
        30.0,
        lambda a, size: _levered(a, length_m=a.scenario.lever.length_m - size / 1000),
    ),
    "jerk": Mistake(
        "pulled up at {:g} N·m/s, then yanked",
        "take two seconds to the slip, then turn on evenly",
        300.0,
        _jerk,
    ),
    "brake": Mistake(
        "brake dragging with {:g} N·m",
        "free the brakes; take the drag baseline",
        6.0,
        _brake,
    ),
    "wrong-zero": Mistake(
        "zero taken with the lever fitted",
        "zero with the lever off or hanging: its weight is real torque",
        0.0,
        lambda a, _size: replace(a, zero="lever fitted"),
    ),
    "self-zero": Mistake(
        "transducer switched on under {:g} N·m",
        "switch it on unloaded; check the zero before and after",
        10.0,
        lambda a, size: replace(_sensed(a, zero_nm=a.scenario.sensor.zero_nm - size), zero="its own"),
    ),
    "slow-converter": Mistake(
        "{:g} values a second, averaged over 0.4 s",
        "100 values a second or more",
        10.0,
        lambda a, size: _sensed(a, rate_hz=size, average_s=0.4, bandwidth_hz=None),
    ),
    "large-range": Mistake(
        "read in steps of {:g} N·m on a tool with a large range",
        "choose the range so that the limit lies at 20-80 % of it",
        6.8,
        lambda a, size: _sensed(a, resolution_nm=size, capacity_nm=max(340.0, a.scenario.sensor.capacity_nm)),
    ),
    "case-held": Mistake(
        "case held (or in gear) instead of the other side",
        "neutral, other wheel held; say which it was",
        0.0,
        _case,
    ),
    "tyre-slips": Mistake(
        "held tyre slips at {:g} N·m",
        "hold the wheel by a strap or put weight on it; mark it and watch",
        25.0,
        _tyre,
    ),
}


def attempt(dials: Dials, mistakes: Mapping[str, float | None]) -> Attempt:
    """Give the test with these mistakes in it (None: usual size).

    Raises:
        InputError: A mistake that we do not know, or a dial out of range.
    """
    scenario = dials.scenario()
    made = Attempt(scenario, scenario.lever.factor)
    for name, size in mistakes.items():
        if name not in MISTAKES:
            raise InputError(f"There is no mistake '{name}'. There are: {', '.join(MISTAKES)}.")
        if size is not None and not (np.isfinite(size) and 0 <= size <= 1e4):
            raise InputError(f"The size of '{name}' must lie between 0 and 10000, not {size:g}.")
        made = MISTAKES[name].make(made, MISTAKES[name].size if size is None else size)
    return made


@dataclass(frozen=True, slots=True)
class PracticeResult:
    """Breakaway and rotating torque at the axle, in N·m; None where there is none."""

    breakaway_nm: float | None
    rotating_nm: float | None


def zero_of(run: SimulatedRun, zero: ZeroTaken = "lever off") -> float:
    """Give the zero that is taken before the first pull, in N·m: the middle reading of a second's rest."""
    until = FIRST_REST_S if zero == "lever off" else 2 * FIRST_REST_S
    rest = (run.time_s > until - 1.0) & (run.time_s < until)
    return float(np.nanmedian(run.torque_nm[rest])) if zero != "its own" and rest.any() else 0.0


def plain_reading(run: SimulatedRun, made: Attempt) -> PracticeResult:
    """Read a run as someone would by eye; see the module."""
    time, torque, zero = run.time_s, run.torque_nm, zero_of(run, made.zero)
    peaks, levels = [], []
    for pull in run.truth:
        during = (time >= pull.start_s) & (time <= pull.end_s)
        values = pull.direction * (torque[during] - zero)
        if values.size < 4:
            continue
        peaks.append(float(np.nanmax(values)) * made.factor)
        turning = values[values > 0.5 * np.nanmax(values)]
        levels.append(float(np.nanmedian(turning[turning.size // 2 :])) * made.factor)
    return PracticeResult(median(peaks), median(levels)) if peaks else PracticeResult(None, None)


def truth_of(run: SimulatedRun) -> PracticeResult:
    """Give the middle of the true values of a run's pulls, on the wheel about the axle."""
    peaks = [p.breakaway_axle_nm for p in run.truth if p.breakaway_axle_nm is not None]
    levels = [p.plateau_axle_nm for p in run.truth if p.plateau_axle_nm is not None]
    return PracticeResult(median(peaks) if peaks else None, median(levels) if levels else None)
