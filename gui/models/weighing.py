"""Checking a transducer with known weights: what hangs, the next thing to do, what was shown.

The arithmetic and the result are ``logger.instruments.weigh``'s, as on the command line; here a plan is made of what
is typed, and the stream is watched for a weight that has been hung and is still.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import partial
from typing import TYPE_CHECKING

import numpy as np

from gui.models.typed import decimal, quantity
from gui.models.zeroing import Zeroing, ZeroState
from logger.edges.units import parse_number
from logger.errors import HeldwheelError, InputError
from logger.instruments.weigh import ARM_ERROR_M, Compliance, allowed_by, check_point, dead_weight, overall

if TYPE_CHECKING:
    from collections.abc import Callable

    from logger.header import TransducerFacts
    from logger.instruments.weigh import DeadWeight, Point
    from logger.samples import Floats

MASSES = 3  # at most: more is an affair of a laboratory
CLOCKWISE, ANTICLOCKWISE = "clockwise", "anticlockwise"
WAYS = {CLOCKWISE: "Clockwise, seen from outside", ANTICLOCKWISE: "Anticlockwise"}
# By so much of the expected step the reading must move before a weight counts as hung or taken off: a gain that is
# wrong by a third (lbf·ft taken for N·m) still passes, a hand that leans on the lever for a moment does not.
MOVED_SHARE = 0.3
STEADY_SHARE = 0.002  # of the load: a weight that swings less than this hangs still; common practice, no source


@dataclass(frozen=True, slots=True)
class Hanging:
    """What stands in the fields, as typed."""

    masses: tuple[str, ...] = ()
    arm: str = ""
    way: str = CLOCKWISE
    down: bool = True
    latitude: str = ""
    height: str = ""
    gravity: str = ""
    mass_error: str = ""
    arm_error: str = ""
    allowed: str = ""


@dataclass(frozen=True, slots=True)
class PlannedWeight:
    """A weight of the plan: as it was typed, and as it counts."""

    words: str
    weight: DeadWeight


@dataclass(frozen=True, slots=True)
class WeighingPlan:
    """What is to be hung."""

    steps: tuple[PlannedWeight | None, ...]  # one after the other; None: nothing hangs
    sense: int  # sign of the reading that these loads should give
    facts: TransducerFacts  # what is known of the transducer
    own_percent: float | None  # what the user allows, instead of what is known
    place_known: bool  # gravity is that of the place

    def torque_nm(self, step: int) -> float:
        """Give the torque of a step, signed as the reading should be."""
        load = self.steps[step]
        return 0.0 if load is None else self.sense * load.weight.torque_nm


def plan_of(typed: Hanging, facts: TransducerFacts) -> tuple[WeighingPlan | None, dict[str, str]]:
    """Give the plan, or per field why it cannot be used."""
    wrong: dict[str, str] = {}

    def read(key: str, text: str, how: Callable[[str], float]) -> float | None:
        if not text.strip():
            return None
        try:
            return how(decimal(text))
        except HeldwheelError as error:
            wrong[key] = str(error)
            return None

    mass, length = partial(quantity, kind="mass"), partial(quantity, kind="length")
    arm_m = read("arm", typed.arm, length)
    if arm_m is None and "arm" not in wrong:
        wrong["arm"] = "From the centre of the drive to where the weight hangs."
    place = {key: read(key, getattr(typed, key), _plain) for key in ("latitude", "gravity")}
    height_m = read("height", typed.height, length)
    mass_error = read("mass_error", typed.mass_error, mass)
    arm_error = read("arm_error", typed.arm_error, length)
    allowed = read("allowed", typed.allowed.replace("%", "").replace("±", ""), _above_zero)
    masses = [(f"mass{n}", text, read(f"mass{n}", text, mass)) for n, text in enumerate(typed.masses, 1)]
    if not any(text.strip() for _, text, _ in masses):
        wrong["mass1"] = "Its mass with the hanger, such as 10 kg."
    loads = []
    for key, text, mass_kg in masses:
        if mass_kg is None or arm_m is None:
            continue
        try:
            weight = dead_weight(
                mass_kg,
                arm_m,
                latitude_deg=place["latitude"],
                height_m=height_m or 0.0,
                gravity=place["gravity"],
                mass_error_kg=mass_error or 0.0,
                arm_error_m=ARM_ERROR_M if arm_error is None else arm_error,
            )
            _within_capacity(weight, facts)
            loads.append(PlannedWeight(decimal(text).strip(), weight))
        except InputError as error:
            wrong[_blamed(str(error), key)] = str(error)
    if wrong or not loads:
        return None, wrong
    return WeighingPlan(_steps(loads, down=typed.down), _sense(typed, facts), facts, allowed, _known(place)), {}


def _steps(loads: list[PlannedWeight], *, down: bool) -> tuple[PlannedWeight | None, ...]:
    """Nothing, the loads from light to heavy, perhaps back again, nothing."""
    up = sorted(loads, key=lambda load: load.weight.mass_kg)
    back = up[-2::-1] if down else []
    return (None, *up, *back, None)


def _sense(typed: Hanging, facts: TransducerFacts) -> int:
    """Give the sign of the reading; one that shows none shows every load as positive."""
    return -1 if typed.way == ANTICLOCKWISE and facts.sign != "none" else 1


def _within_capacity(weight: DeadWeight, facts: TransducerFacts) -> None:
    if facts.capacity_nm is not None and weight.torque_nm > facts.capacity_nm:
        text = f"{weight.torque_nm:.0f} N·m is more than its capacity of {facts.capacity_nm:.0f} N·m; hang less"
        raise InputError(text)


def _known(place: dict[str, float | None]) -> bool:
    return any(value is not None for value in place.values())


def _blamed(text: str, key: str) -> str:
    """Give the field that a fault of a load belongs to; the one of its mass where no other is named."""
    first = text.partition(" ")[0]
    return first if first in {"arm", "latitude", "height", "gravity"} else key


def _plain(text: str) -> float:
    return parse_number(text.replace("°", "").replace("m/s²", "").strip())


def _above_zero(text: str) -> float:
    value = parse_number(text.strip())
    if value <= 0:
        raise InputError("Must be above zero.")
    return value


# ---------------------------------------------------------------------- while it is hung
class Doing(StrEnum):
    """What a step waits for."""

    HANG = "hang"  # the reading has not moved yet
    SETTLE = "settle"  # something has moved: until it is still
    DONE = "done"


@dataclass(frozen=True, slots=True)
class WeighedStep:
    """A step that was measured: the reading with the zero taken off and the sense put right; None: nothing hung."""

    load: PlannedWeight | None
    shown_nm: float
    point: Point | None


class Weighing:
    """Watches the readings and goes from step to step by itself.

    Args:
        plan: What is to be hung.
    """

    raw = False  # whether what is shown is no torque yet

    def __init__(self, plan: WeighingPlan) -> None:
        self.plan = plan
        self.now_nm: float | None = None  # as shown, zero and sense put right
        self.waited_s = 0.0  # since the step began
        self._levels: list[float] = []  # as read, one a step
        self._heavy = False  # something has been hung or taken off
        self._begin()

    def _begin(self) -> None:
        self._still = self._watch()
        self._heavy, self.waited_s = self.step == 0, 0.0
        self._begun_s: float | None = None

    def _watch(self) -> Zeroing:
        """Give what waits until this step's load is still."""
        least = self.plan.facts.resolution_nm or 0.0
        return Zeroing(least if self.done else max(STEADY_SHARE * abs(self.plan.torque_nm(self.step)), least))

    @property
    def step(self) -> int:
        """Which one is next."""
        return len(self._levels)

    @property
    def done(self) -> bool:
        """Whether all steps are measured."""
        return self.step >= len(self.plan.steps)

    @property
    def load(self) -> PlannedWeight | None:
        """What should hang now."""
        return None if self.done else self.plan.steps[self.step]

    @property
    def change_nm(self) -> float:
        """By how much the reading should move for this step."""
        if self.done or self.step == 0:
            return 0.0
        return self.plan.torque_nm(self.step) - self.plan.torque_nm(self.step - 1)

    @property
    def doing(self) -> Doing:
        """What is waited for."""
        if self.done:
            return Doing.DONE
        return Doing.SETTLE if self._heavy else Doing.HANG

    @property
    def moving(self) -> bool:
        """Whether it swings or is being handled."""
        return self._still.state is ZeroState.MOVING

    @property
    def share(self) -> float:
        """How much of the quiet time is there, 0 to 1."""
        return self._still.share if self.doing is Doing.SETTLE else 0.0

    def feed(self, time_s: Floats, torque_nm: Floats) -> bool:
        """Take the next samples, shape (n,) each; whether they complete a step."""
        if self.done or not len(time_s):
            return False
        self._begun_s = float(time_s[0]) if self._begun_s is None else self._begun_s
        self.waited_s = float(time_s[-1]) - self._begun_s
        if not np.isfinite(torque_nm).all():  # a mark instead of a reading: overload, or out of order
            self.now_nm = None
            self._still = self._watch()
            return False
        level = float(np.median(torque_nm))
        self.now_nm = self._shown(level)
        if not self._heavy:
            self._heavy = abs(level - self._levels[-1]) > MOVED_SHARE * abs(self.change_nm)
            return False
        taken = self._still.feed(time_s, torque_nm)
        if taken is None:
            return False
        self._levels.append(taken.value_nm)
        self._begin()
        return True

    def insist(self) -> None:
        """Measure as soon as it is still, though the reading has hardly moved."""
        self._heavy = True

    def again(self) -> None:
        """Take the last step back; it is measured once more."""
        if self._levels:
            self._levels.pop()
            self._begin()

    def _shown(self, level: float) -> float:
        return self.plan.sense * (level - (self._levels[0] if self._levels else 0.0))

    # ------------------------------------------------------------------ what came of it
    @property
    def rows(self) -> tuple[WeighedStep, ...]:
        """What was measured so far."""
        rows: list[WeighedStep] = []
        for load, level in zip(self.plan.steps, self._levels, strict=False):
            shown = self._shown(level) if load is not None or len(rows) else 0.0
            rows.append(WeighedStep(load, shown, self._point(load.weight, shown) if load is not None else None))
        return tuple(rows)

    def _point(self, weight: DeadWeight, shown_nm: float) -> Point:
        facts = self.plan.facts
        allowed = allowed_by(facts, weight.torque_nm, self.plan.own_percent)
        return check_point(weight, [shown_nm], resolution_nm=facts.resolution_nm or 0.0, allowed=allowed)

    @property
    def points(self) -> tuple[Point, ...]:
        """The loads that were measured so far."""
        return tuple(row.point for row in self.rows if row.point is not None)

    @property
    def result(self) -> Compliance:
        """All loads together: the worst of them."""
        return overall(self.points)

    @property
    def drift_nm(self) -> float | None:
        """What is shown with nothing hung at the end; None before."""
        return self.rows[-1].shown_nm if self.done else None


RESULT_WORDS = {
    Compliance.WITHIN: "It reads within what is allowed, at every load.",
    Compliance.OUTSIDE: "It reads further off than is allowed. Do not judge by it until it has been calibrated.",
    Compliance.TOO_CLOSE: "The interval straddles what is allowed: better known weights, arm or place may settle it.",
    Compliance.NOT_JUDGED: "Its accuracy is not known, so nothing says what is allowed. The differences stand.",
}


def cautions(weighing: Weighing, words: Callable[[float], str]) -> tuple[str, ...]:
    """Say what else should be known about a finished check; ``words`` writes a torque."""
    told = []
    points = weighing.points
    if points and all(point.reading_nm < 0 for point in points):
        told.append("It reads the other way round: hung on the other side, or its sign is reversed.")
    drift = weighing.drift_nm
    if drift is not None:
        steady = STEADY_SHARE * min(point.torque_nm for point in points)
        if abs(drift) > max(steady, weighing.plan.facts.resolution_nm or 0.0, 0.05):
            told.append(f"With nothing hung it came back to {words(drift)}: its zero has moved, or the lever has.")
    if not weighing.plan.place_known:
        told.append("Standard gravity was used; it can be 0.3 % off where you are. Give the latitude to know better.")
    return tuple(told)
