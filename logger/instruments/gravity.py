"""Local gravity for dead weights: by latitude and height.

Conventions:
- Latitude in degrees (north or south), height above sea level in metres, gravity in m/s².
- Formulas give *normal* gravity; the ground below makes it differ by up to about 0.0005 m/s² (50 mGal), which is far
  less than a dead-weight check of a torque transducer can see, and enters as an uncertainty.

Reference: Somigliana's closed formula for the ellipsoids GRS 80 and WGS 84; Moritz, "Geodetic Reference System 1980".
Height by Gill, "Atmosphere-Ocean Dynamics" (1982). The legal-metrology formula is the one used for weighing
instruments.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final, Literal

from logger.errors import InputError

STANDARD_GRAVITY: Final = 9.80665  # m/s², exactly, by definition
GRAVITY_U: Final = 0.0003  # m/s², standard uncertainty of a formula: half of 50 mGal, rounded up
EARTH_RADIUS_M: Final = 6_371_000.0
MAX_HEIGHT_M: Final = 9000.0
MIN_HEIGHT_M: Final = -500.0


@dataclass(frozen=True, slots=True)
class Ellipsoid:
    """Constants of Somigliana's formula: gravity at the equator, its constant k, first eccentricity squared."""

    equator: float
    k: float
    e2: float


ELLIPSOIDS: Final[dict[str, Ellipsoid]] = {
    "GRS 80": Ellipsoid(9.7803267715, 0.001931851353, 0.0066943800229),
    "WGS 84": Ellipsoid(9.7803253359, 0.00193185265241, 0.00669437999013),
    "WGS 84 (1987)": Ellipsoid(9.7803267714, 0.00193185138639, 0.00669437999013),
}


def normal_gravity(latitude_deg: float, ellipsoid: str = "WGS 84") -> float:
    """Give normal gravity on the ellipsoid (Somigliana).

    >>> round(normal_gravity(45.0, "GRS 80"), 10)
    9.8061992025
    """
    shape = ELLIPSOIDS[ellipsoid]
    s2 = math.sin(math.radians(latitude_deg)) ** 2
    return shape.equator * (1.0 + shape.k * s2) / math.sqrt(1.0 - shape.e2 * s2)


def height_factor(height_m: float) -> float:
    """Give the factor by which gravity changes with height: (1 + z/a)^-2."""
    return float((1.0 + height_m / EARTH_RADIUS_M) ** -2)


def legal_gravity(latitude_deg: float, height_m: float = 0.0) -> float:
    """Give gravity by the formula used in legal metrology for weighing instruments."""
    phi = math.radians(latitude_deg)
    sea_level = 9.780318 * (1.0 + 0.0053024 * math.sin(phi) ** 2 - 0.0000058 * math.sin(2.0 * phi) ** 2)
    return sea_level - 0.000003085 * height_m


def local_gravity(
    latitude_deg: float, height_m: float = 0.0, formula: Literal["ellipsoid", "legal"] = "ellipsoid"
) -> float:
    """Give local gravity.

    Args:
        latitude_deg: Between -90 and 90.
        height_m: Above sea level.
        formula: WGS 84 with height, or the one of legal metrology.

    Raises:
        InputError: A latitude or height that is not on Earth.

    >>> round(local_gravity(52.3, 500.0, "legal"), 6)
    9.811188
    """
    if not -90.0 <= latitude_deg <= 90.0:
        raise InputError(f"latitude {latitude_deg:g}°: must lie between -90° and 90°")
    if not MIN_HEIGHT_M <= height_m <= MAX_HEIGHT_M:
        raise InputError(f"height {height_m:g} m: must lie between {MIN_HEIGHT_M:g} m and {MAX_HEIGHT_M:g} m")
    if formula == "legal":
        return legal_gravity(latitude_deg, height_m)
    return normal_gravity(latitude_deg) * height_factor(height_m)
