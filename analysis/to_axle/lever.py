"""How the torque that a wrench shows, or a force at a radius, becomes the torque about the wheel's axle.

Conventions:
- theta: angle from the line (wheel centre to stud), pointing outwards, to the lever (drive axis to hand); 0 = in line.
- delta: obliqueness of the pull, 0 = square to the lever; positive where the hand also pulls outwards along the lever,
  away from the drive. theta counts in the direction of the pull: with both positive it adds torque about the axle.
- phi: angle of the lever from horizontal, 0 = pointing to 3 o'clock seen from outside the car, counted like theta;
  180 degrees = 9 o'clock. A lever's weight then adds clockwise torque W d cos(phi).
- One stud: T = M [1 + (r/L)(cos theta + tan delta sin theta)]: the nut does not turn, so theta stays what it is.
  At theta = 0 it is the rule printed for a wrench on an off-centre wheel nut, reading C = A T / (A + B)
  (TM 5-3805-260-24); at 90 degrees and a square pull nothing changes; pointing back L - r replaces L + r.
- What the user did not state is assumed with a wide, named half-width, and its budget row says "assumed".

Offered: ``Fixture``, ``Weight``; ``analysis.to_axle.fixtures`` makes a ``Fixture`` of what the user wrote.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Input, Value

STANDARD_GRAVITY = 9.80665  # m/s², exact (NIST SP 811)
# Local gravity runs from 9.780 (equator) to 9.832 m/s² (poles): half the span, around standard gravity.
GRAVITY_HALF_WIDTH = 0.026

# Half-widths assumed where the user states no uncertainty (common practice, no source): a hand covers about four
# centimetres of the lever, a stud circle or offset is measured with a rule, an angle is judged by eye.
ASSUMED_HALF_WIDTH = {
    "lever length": 0.020,  # m
    "stud radius": 0.001,  # m
    "drive offset": 0.002,  # m
    "force radius": 0.005,  # m
    "drum radius": 0.002,  # m
    "cord diameter": 0.0005,  # m
    "lever angle": math.radians(10),
    "pull angle": math.radians(10),
    "slope of the arm": math.radians(5),
    "grip mark": 0.0,  # m; printed on the wrench
    "gauge section": 0.005,  # m
}

# A lever of which nobody states the weight: so heavy per metre (a breaker bar or a torque wrench with its head; a steel
# tube of 34 x 3.2 mm) with its centre of mass half-way, and so long where its length is not needed (common practice, no
# source).
LEVER_KG_PER_M = 2.5
LEVER_LENGTH_M = 0.6
# Fixtures whose bar is balanced about the drive, or that hang nothing on it.
BALANCED = frozenset({"couple", "cord", "dead weight"})

Slopes = dict[str, float]


def assumed_weight(length_m: float | None) -> Weight:
    """Give the weight of a lever of which only the length is known, or not even that."""
    length = LEVER_LENGTH_M if length_m is None else length_m
    return Weight(LEVER_KG_PER_M * length * STANDARD_GRAVITY, length / 2, assumed=True)


@dataclass(frozen=True, slots=True)
class _Formula:
    """One fixture's equation: torque at the axle per unit of what is read, and its partial derivatives."""

    names: tuple[str, ...]
    factor: Callable[[Mapping[str, Value]], Value]
    slopes: Callable[[Mapping[str, float]], Slopes]
    reads: str = "torque"  # or "force" (factor in m), "mass" (factor in m²/s²)


def _stud_factor(x: Mapping[str, Value]) -> Value:
    aim = np.cos(x["lever angle"]) + np.tan(x["pull angle"]) * np.sin(x["lever angle"])
    return 1 + x["stud radius"] / x["lever length"] * aim


def _stud_slopes(x: Mapping[str, float]) -> Slopes:
    r, length, theta, delta = x["stud radius"], x["lever length"], x["lever angle"], x["pull angle"]
    aim = math.cos(theta) + math.tan(delta) * math.sin(theta)
    return {
        "stud radius": aim / length,
        "lever length": -r * aim / length**2,
        "lever angle": r / length * (math.tan(delta) * math.cos(theta) - math.sin(theta)),
        "pull angle": r / length * math.sin(theta) / math.cos(delta) ** 2,
    }


def _offset_factor(x: Mapping[str, Value]) -> Value:
    return _stud_factor({**x, "stud radius": x["drive offset"]})


def _offset_slopes(x: Mapping[str, float]) -> Slopes:
    slopes = _stud_slopes({**x, "stud radius": x["drive offset"]})
    return {"drive offset": slopes.pop("stud radius"), **slopes}


def _arm_factor(x: Mapping[str, Value]) -> Value:
    return x["force radius"] * np.cos(x["pull angle"])


def _arm_slopes(x: Mapping[str, float]) -> Slopes:
    return {
        "force radius": math.cos(x["pull angle"]),
        "pull angle": -x["force radius"] * math.sin(x["pull angle"]),
    }


def _cord_factor(x: Mapping[str, Value]) -> Value:
    return x["drum radius"] + x["cord diameter"] / 2


def _weight_factor(x: Mapping[str, Value]) -> Value:
    return x["gravity"] * x["force radius"] * np.cos(x["slope of the arm"])


def _weight_slopes(x: Mapping[str, float]) -> Slopes:
    g, radius, phi = x["gravity"], x["force radius"], x["slope of the arm"]
    return {
        "gravity": radius * math.cos(phi),
        "force radius": g * math.cos(phi),
        "slope of the arm": -g * radius * math.sin(phi),
    }


_ON_AXIS = _Formula((), lambda _x: 1.0, lambda _x: {})

FORMULAS: dict[str, _Formula] = {
    "one stud": _Formula(("stud radius", "lever length", "lever angle", "pull angle"), _stud_factor, _stud_slopes),
    "cross-bar": _Formula(
        ("drive offset", "lever length", "lever angle", "pull angle"), _offset_factor, _offset_slopes
    ),
    "hub centre": _ON_AXIS,
    "couple": _ON_AXIS,  # a pure couple is the same about every axis
    "in-line": _ON_AXIS,
    "held side": _ON_AXIS,
    "force at radius": _Formula(("force radius", "pull angle"), _arm_factor, _arm_slopes, reads="force"),
    "cord": _Formula(
        ("drum radius", "cord diameter"),
        _cord_factor,
        lambda _x: {"drum radius": 1.0, "cord diameter": 0.5},
        reads="force",
    ),
    "dead weight": _Formula(
        ("force radius", "slope of the arm", "gravity"), _weight_factor, _weight_slopes, reads="mass"
    ),
}

GRIP = ("lever length", "grip mark", "gauge section")


def grip_factor(x: Mapping[str, Value]) -> Value:
    """Give true / shown for a bending-type wrench held off its mark.

    With the gauge section s from the drive axis, calibrated for a hand at the mark L and held at L':
    [L' / (L' - s)] [(L - s) / L].
    """
    hand, mark, gauge = (x[name] for name in GRIP)
    return hand / (hand - gauge) * (mark - gauge) / mark


def grip_slopes(x: Mapping[str, float]) -> Slopes:
    """Give the partial derivatives of ``grip_factor``."""
    hand, mark, gauge = (x[name] for name in GRIP)
    held, marked = hand / (hand - gauge), (mark - gauge) / mark
    return {
        "lever length": -gauge / (hand - gauge) ** 2 * marked,
        "grip mark": held * gauge / mark**2,
        "gauge section": hand / (hand - gauge) ** 2 * marked - held / mark,
    }


@dataclass(frozen=True, slots=True)
class Weight:
    """A lever's own weight: real torque on the wheel, seen or not seen by the sensor."""

    force_n: float  # its weight
    centroid_m: float  # centre of mass from the drive axis (force fixtures: from the axle)
    start_angle_rad: float | None = None  # angle phi at hand-off; None if not stated
    assumed: bool = False  # whether nobody stated weight and centroid

    @property
    def moment_nm(self) -> float:
        """Greatest torque about the drive axis, lever horizontal."""
        return self.force_n * self.centroid_m


@dataclass(frozen=True, slots=True)
class Fixture:
    """How torque gets from hand to axle, in SI, with what is known about each length and angle."""

    kind: str  # as in ``logger.header.Lever.fixture``
    inputs: tuple[Input, ...] = ()  # all of the equation's inputs; shared by every pull
    weight: Weight | None = None  # the lever's own
    notes: tuple[str, ...] = field(default=())  # what was assumed or looks suspicious, for the user
    # where a force was recorded: the arm by which the readings are torques already, at the estimates of the inputs. The
    # factor is then 1, and what is not known of the arm is still in its slopes.
    arm_m: float | None = None

    @property
    def reads(self) -> str:
        """What the instrument reads: torque, force or mass."""
        return FORMULAS[self.kind].reads

    @property
    def values(self) -> dict[str, float]:
        """Estimates of the inputs."""
        return {i.name: i.value for i in self.inputs}

    @property
    def _gripped(self) -> bool:
        return "gauge section" in self.values

    def factor_at(self, values: Mapping[str, Value]) -> Value:
        """Give torque at the axle per unit read, for any values of the inputs (also arrays of trials)."""
        factor = FORMULAS[self.kind].factor(values)
        factor = factor * grip_factor(values) if self._gripped else factor
        return factor if self.arm_m is None else factor / self.arm_m

    @property
    def factor(self) -> float:
        """Torque at the axle per unit read: a ratio, N·m per N, or N·m per kg."""
        return float(self.factor_at(self.values))

    @property
    def slopes(self) -> Slopes:
        """Partial derivatives of the factor by each input."""
        values = self.values
        slopes = FORMULAS[self.kind].slopes(values)
        if self.arm_m is not None:
            return {name: slope / self.arm_m for name, slope in slopes.items()}
        if not self._gripped:
            return slopes
        factor, grip = float(FORMULAS[self.kind].factor(values)), float(grip_factor(values))
        slopes = {name: slope * grip for name, slope in slopes.items()}
        for name, slope in grip_slopes(values).items():
            slopes[name] = slopes.get(name, 0.0) + factor * slope
        return slopes

    def unsensed_nm(self, lever_angle_rad: float) -> float:
        """Give the clockwise torque of the lever's weight about the axle that the sensor does not see.

        A wrench at the drive axis feels W d cos(phi) and the fixture multiplies it like a push of the hand. What is
        left on one stud is r W [cos(phi - theta) - (d/L) cos(phi) cos(theta)], at theta = 0 r W cos(phi)(1 - d/L);
        over whole turns it averages to zero. A force gauge on a bar feels nothing of the bar's W d cos(phi).
        """
        cosine, sine = self._unsensed_parts()
        return cosine * math.cos(lever_angle_rad) + sine * math.sin(lever_angle_rad)

    @property
    def unsensed_most_nm(self) -> float:
        """Greatest value of ``unsensed_nm`` over a turn."""
        return math.hypot(*self._unsensed_parts())

    def _unsensed_parts(self) -> tuple[float, float]:
        if self.weight is None:
            return 0.0, 0.0
        values = self.values
        if self.reads != "torque":
            return (0.0 if self.kind == "cord" else self.weight.moment_nm), 0.0
        arm = values.get("stud radius", values.get("drive offset", 0.0))
        if not arm:
            return 0.0, 0.0
        theta, share = values["lever angle"], self.weight.centroid_m / values["lever length"]
        return arm * self.weight.force_n * math.cos(theta) * (1 - share), arm * self.weight.force_n * math.sin(theta)
