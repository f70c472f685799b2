"""Dead-weight check of a torque transducer, and the two-point calibration of a bare amplifier.

A known mass m hangs on an arm of length L, the arm at an angle α from level: the torque at the drive is
``T = m g L cos α``. The arm's own weight does not count when the zero is taken with the arm fitted and level.

Conventions:
- SI throughout; an uncertainty ``_u`` is a standard uncertainty.
- A deviation is reading minus torque, in per cent of the torque (common practice; ISO 6789-2 defines it so, from
  memory).
- A result is stated three ways: within, outside, or too close to call (the interval straddles what is allowed).

The buoyancy of air lifts a steel weight by 0.015 % of itself (1.2 kg/m³ against 7900 kg/m³) and water by 0.12 %. It is
corrected when the weight's density is given, and is otherwise far below what this check can see.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Final

from logger.errors import InputError
from logger.instruments.gravity import GRAVITY_U, STANDARD_GRAVITY, local_gravity

if TYPE_CHECKING:
    from logger.header import TransducerFacts

AIR_DENSITY: Final = 1.2  # kg/m³, the conventional value in weighing
# Hangings of one weight scatter by so much of the torque, by seat of the drive and swing of the arm; known as well as
# from so many degrees of freedom (JCGM 100, G.4.2: to a quarter; common practice, no source). It stands in for one
# reading, is pooled with what two show, and gives way to the scatter of three and more.
ASSUMED_SCATTER: Final = 0.002
ASSUMED_DOF: Final = 8.0
FEW_READINGS: Final = 3
ANYWHERE_LIMIT: Final = 0.026  # m/s²: standard gravity may be 0.3 % off, at the equator or a pole
ARM_ERROR_M: Final = 0.0005  # a steel rule is read to half a millimetre: common practice, no source
ANGLE_ERROR_DEG: Final = 2.0  # an arm that looks level: common practice, no source
MAX_ANGLE_DEG: Final = 30.0  # beyond, an error of one degree in the angle costs more than one per cent


@dataclass(frozen=True, slots=True)
class DeadWeight:
    """A mass on an arm."""

    # mass_kg, arm_m, angle_deg: mass with its hanger, centre of the drive to the point of hanging, arm from level
    # (either way)
    mass_kg: float
    arm_m: float
    angle_deg: float = 0.0
    gravity: float = STANDARD_GRAVITY  # local, in m/s²
    mass_kg_u: float = 0.0
    arm_m_u: float = 0.0
    angle_deg_u: float = 0.0
    gravity_u: float = GRAVITY_U
    density: float | None = None  # of the weight in kg/m³, to correct for the buoyancy of air

    def __post_init__(self) -> None:
        """Refuse what cannot hang.

        Raises:
            InputError: A quantity out of range.
        """
        if not 0 < self.mass_kg <= 1000:
            raise InputError(f"mass {self.mass_kg:g} kg: must lie above 0 and up to 1000 kg")
        if not 0 < self.arm_m <= 10:
            raise InputError(f"arm {self.arm_m:g} m: must lie above 0 and up to 10 m")
        if not abs(self.angle_deg) <= MAX_ANGLE_DEG:
            raise InputError(
                f"angle {self.angle_deg:g}°: hang the weight with the arm within {MAX_ANGLE_DEG:g}° of level; "
                "the torque then depends little on the angle"
            )
        if self.density is not None and not 500 <= self.density <= 25_000:
            raise InputError(f"density {self.density:g} kg/m³: no weight has it")

    @property
    def torque_nm(self) -> float:
        """Torque at the drive."""
        lift = 1.0 - AIR_DENSITY / self.density if self.density else 1.0
        return self.mass_kg * self.gravity * self.arm_m * math.cos(math.radians(self.angle_deg)) * lift

    @property
    def torque_nm_u(self) -> float:
        """Its standard uncertainty (JCGM 100, 5.1.2); the angle to second order, for at level its slope is zero."""
        alpha, u = math.radians(self.angle_deg), math.radians(self.angle_deg_u)
        relative = (
            self.mass_kg_u / self.mass_kg,
            self.arm_m_u / self.arm_m,
            self.gravity_u / self.gravity,
            math.tan(alpha) * u,
            u * u / math.sqrt(2.0),
        )
        return self.torque_nm * math.hypot(*relative)


def dead_weight(
    mass_kg: float,
    arm_m: float,
    *,
    angle_deg: float = 0.0,
    latitude_deg: float | None = None,
    height_m: float = 0.0,
    gravity: float | None = None,
    mass_error_kg: float = 0.0,
    arm_error_m: float = ARM_ERROR_M,
    angle_error_deg: float = ANGLE_ERROR_DEG,
    density: float | None = None,
) -> DeadWeight:
    """Give a load whose uncertainties are stated as limits of error: rectangular distributions (JCGM 100, 4.3.7).

    Gravity is the one given, else that of the latitude and height, else standard gravity with what it may be off
    anywhere on Earth.

    Raises:
        InputError: A quantity out of range.
    """
    if gravity is not None and abs(gravity - STANDARD_GRAVITY) > 2 * ANYWHERE_LIMIT:
        raise InputError(f"gravity {gravity:g} m/s²: lies between 9.76 and 9.84 m/s² everywhere people work")
    known = gravity is not None or latitude_deg is not None
    if gravity is None:
        gravity = STANDARD_GRAVITY if latitude_deg is None else local_gravity(latitude_deg, height_m)
    third = math.sqrt(3.0)
    return DeadWeight(
        mass_kg=mass_kg,
        arm_m=arm_m,
        angle_deg=angle_deg,
        gravity=gravity,
        mass_kg_u=mass_error_kg / third,
        arm_m_u=arm_error_m / third,
        angle_deg_u=angle_error_deg / third,
        gravity_u=GRAVITY_U if known else ANYWHERE_LIMIT / third,
        density=density,
    )


class Compliance(StrEnum):
    """How a check came out."""

    WITHIN = "within"
    OUTSIDE = "outside"
    TOO_CLOSE = "too close to call"
    NOT_JUDGED = "not judged"  # nothing is known that it could be judged by


@dataclass(frozen=True, slots=True)
class Point:
    """One load of a check."""

    # torque_nm, reading_nm: applied, and the mean of what the transducer showed, zero subtracted
    torque_nm: float
    reading_nm: float
    # deviation_percent, u95_percent: deviation and its expanded uncertainty, in per cent of the torque
    deviation_percent: float
    u95_percent: float
    allowed_percent: float | None  # by the certificate
    agreement: Compliance


def allowed_percent(
    torque_nm: float,
    *,
    of_reading: float | None = None,
    of_full_scale: float | None = None,
    capacity_nm: float | None = None,
) -> float | None:
    """Give the deviation that a certificate or data sheet allows at a torque, in per cent of it; None: it says nothing.

    Raises:
        InputError: A share of full scale without the full scale.
    """
    parts = []
    if of_reading is not None:
        parts.append(of_reading)
    if of_full_scale is not None:
        if capacity_nm is None:
            raise InputError("an accuracy in per cent of full scale needs the capacity")
        parts.append(of_full_scale * capacity_nm / torque_nm)
    return max(parts) if parts else None


def allowed_by(facts: TransducerFacts, torque_nm: float, own_percent: float | None = None) -> float | None:
    """Give the deviation that is allowed at a torque: the user's own, else by what is known of the transducer."""
    return own_percent or allowed_percent(
        torque_nm,
        of_reading=facts.accuracy_percent_of_reading,
        of_full_scale=facts.accuracy_percent_of_full_scale,
        capacity_nm=facts.capacity_nm,
    )


def check_point(
    load: DeadWeight, readings_nm: Sequence[float], *, resolution_nm: float = 0.0, allowed: float | None = None
) -> Point:
    """Compare readings with the torque of one load.

    Args:
        readings_nm: Each one with its zero subtracted; several hangings show the repeatability, one or two rest on an
            assumed one.
        resolution_nm: Step of the display.
        allowed: From ``allowed_percent``.

    Raises:
        InputError: No reading, or none that is a number.
    """
    if not readings_nm or not all(math.isfinite(reading) for reading in readings_nm):
        raise InputError("a check needs at least one reading, and numbers only")
    reading = statistics.fmean(readings_nm)
    torque = load.torque_nm
    scatter, dof = _scatter(readings_nm, torque)
    u = math.hypot(load.torque_nm_u, scatter, resolution_nm / math.sqrt(12.0))
    deviation, u95 = 100.0 * (reading - torque) / torque, 100.0 * _t95(dof * (u / scatter) ** 4) * u / torque
    return Point(torque, reading, deviation, u95, allowed, _judge(deviation, u95, allowed))


def _scatter(readings_nm: Sequence[float], torque_nm: float) -> tuple[float, float]:
    """Give the standard uncertainty of the mean of readings by their scatter, and its degrees of freedom."""
    n = len(readings_nm)
    own = statistics.stdev(readings_nm) if n > 1 else 0.0
    if n >= FEW_READINGS and own > 0:
        return own / math.sqrt(n), n - 1.0
    dof = ASSUMED_DOF + n - 1
    pooled = math.sqrt((ASSUMED_DOF * (ASSUMED_SCATTER * torque_nm) ** 2 + (n - 1) * own**2) / dof)
    return pooled / math.sqrt(n), dof


def _t95(dof: float) -> float:
    """Give Student's factor for 95 %."""
    from scipy.special import stdtrit  # here, so that --help need not wait for it

    return float(stdtrit(max(dof, 1.0), 0.975))


def _judge(deviation: float, u95: float, allowed: float | None) -> Compliance:
    if allowed is None:
        return Compliance.NOT_JUDGED
    if abs(deviation) + u95 <= allowed:
        return Compliance.WITHIN
    if abs(deviation) - u95 > allowed:
        return Compliance.OUTSIDE
    return Compliance.TOO_CLOSE


def overall(points: Sequence[Point]) -> Compliance:
    """Give the result of all loads together: the worst of them."""
    order = (Compliance.OUTSIDE, Compliance.TOO_CLOSE, Compliance.NOT_JUDGED, Compliance.WITHIN)
    return min((point.agreement for point in points), key=order.index, default=Compliance.NOT_JUDGED)


@dataclass(frozen=True, slots=True)
class TwoPoint:
    """Calibration of a bare amplifier: torque = raw × scale + offset."""

    scale: float
    offset: float
    scale_u: float


def two_point(
    low: tuple[float, float], high: tuple[float, float], *, low_nm_u: float = 0.0, high_nm_u: float = 0.0
) -> TwoPoint:
    """Calibrate by two loads, one of which may be none.

    Args:
        low, high: (float, float); Mean raw counts and torque in N·m of each load.
        low_nm_u, high_nm_u: Standard uncertainties of the torques.

    Raises:
        InputError: Loads or counts that do not differ.

    >>> two_point((8_388_000.0, 0.0), (8_488_000.0, 50.0)).scale
    0.0005
    """
    counts, torque = high[0] - low[0], high[1] - low[1]
    if not all(math.isfinite(x) for x in (*low, *high)):
        raise InputError("the calibration needs numbers")
    if counts == 0 or torque == 0:
        raise InputError("the two loads must differ, and the counts with them; is the transducer connected?")
    scale = torque / counts
    return TwoPoint(scale, low[1] - scale * low[0], math.hypot(low_nm_u, high_nm_u) / abs(counts))


def two_point_words(made: TwoPoint) -> tuple[str, str]:
    """Give a calibration as it is shown: the formula, and how well its scale is known."""
    formula = f"torque in N·m = reading × {made.scale:.9g} {'−' if made.offset < 0 else '+'} {abs(made.offset):.9g}"
    return formula, f"scale known to ± {200 * made.scale_u / abs(made.scale):.2g} % (95 %)"
