"""A stud circle from distances between studs: what a rule or caliper gives when the circle itself cannot be measured.

Conventions: lengths in metres; a chord runs centre to centre of two studs that are ``apart`` steps apart round the
hub (1 = adjacent); uncertainties are standard uncertainties.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from logger.errors import InputError

STUDS_MIN, STUDS_MAX = 3, 12
"""Fewer do not make a circle; more are not made for road vehicles."""

COMMON_CIRCLES_MM = (
    # Common practice, no source: stud circles of road wheels.
    *(98.0, 100.0, 108.0, 110.0, 112.0, 114.3, 115.0, 118.0, 120.0, 120.65, 127.0, 130.0, 135.0, 139.7, 150.0),
    *(165.1, 170.0, 180.0, 200.0, 205.0, 222.25, 225.0, 275.0, 285.75, 335.0),
)


@dataclass(frozen=True, slots=True)
class StudCircle:
    """A stud circle found from chords."""

    studs: int  # number of studs on the hub
    # diameter_m, u_m: the circle's diameter and its standard uncertainty
    diameter_m: float
    u_m: float
    spread_m: float  # largest disagreement between the chords, as diameters; 0 for one chord
    # how far the middle of the (first) chord lies from the wheel's centre: where the square of a bar bolted to these
    # two studs would sit
    midpoint_m: float
    near_mm: tuple[float, ...]  # common circles within three standard uncertainties, nearest first

    def to_json(self) -> dict[str, object]:
        """Give the circle as plain values (schema ``heldwheel stud circle 1``)."""
        return {
            "schema": "heldwheel stud circle 1",
            "studs": self.studs,
            "diameter_mm": round(self.diameter_m * 1e3, 3),
            "u_mm": round(self.u_m * 1e3, 3),
            "spread_mm": round(self.spread_m * 1e3, 3),
            "chord_midpoint_off_centre_mm": round(self.midpoint_m * 1e3, 3),
            "common_circles_near_mm": list(self.near_mm),
        }


def chord_factor(studs: int, apart: int) -> float:
    """Give diameter / chord: ``1 / sin(π k / n)`` for studs k apart of n.

    Raises:
        InputError: A hub that does not exist; on an odd number of studs none lies opposite.

    >>> round(chord_factor(5, 1), 4), round(chord_factor(5, 2), 4)
    (1.7013, 1.0515)
    """
    if not STUDS_MIN <= studs <= STUDS_MAX:
        raise InputError(f"a hub with {studs} studs: give {STUDS_MIN} to {STUDS_MAX}")
    if not 1 <= apart <= studs // 2:
        raise InputError(
            f"two of {studs} studs are 1 to {studs // 2} apart, not {apart}"
            + ("; with an odd number none is opposite" if studs % 2 else "")
        )
    return 1 / math.sin(math.pi * apart / studs)


def circle_from_chords(studs: int, chords: Sequence[tuple[float, int]], *, u_chord_m: float = 0.5e-3) -> StudCircle:
    """Give the stud circle from one or several chords.

    Args:
        studs: Number of studs.
        chords: (length_m, apart); Distances centre to centre, and how many steps apart the two studs are.
        u_chord_m: Standard uncertainty of each distance; half a millimetre for a rule across two studs (common
            practice, no source).

    Raises:
        InputError: No chord, a chord that is no length, or chords that contradict each other by more than their
            uncertainty.

    Each chord gives a diameter c / sin(πk/n) with uncertainty in the same proportion; several are averaged with
    weights 1/u².
    """
    if not chords:
        raise InputError("give at least one stud-to-stud distance")
    if not 0 < u_chord_m < math.inf:
        raise InputError("the uncertainty of a distance must be more than zero")
    weighted: list[tuple[float, float]] = []  # each diameter with its weight
    for length, apart in chords:
        factor = chord_factor(studs, apart)
        if not 0.01 <= length <= 1.0:
            raise InputError(f"{length * 1e3:g} mm between studs: a distance of 10 to 1000 mm is meant")
        weighted.append((factor * length, 1 / (factor * u_chord_m) ** 2))
    weight = sum(w for _, w in weighted)
    diameter = sum(w * d for d, w in weighted) / weight
    _check_agreement(studs, weighted, diameter)
    u = 1 / math.sqrt(weight)
    near = sorted(
        (mm for mm in COMMON_CIRCLES_MM if abs(mm * 1e-3 - diameter) <= 3 * u),
        key=lambda mm: abs(mm * 1e-3 - diameter),
    )
    midpoint = diameter / 2 * math.cos(math.pi * chords[0][1] / studs)
    spread = max(weighted)[0] - min(weighted)[0]
    return StudCircle(studs, diameter, u, spread, midpoint, tuple(near))


def _check_agreement(studs: int, weighted: Sequence[tuple[float, float]], mean: float) -> None:
    """Refuse chords whose diameters differ by more than four standard deviations of one of them: a wrong count."""
    if any(abs(d - mean) * math.sqrt(w) > 4 for d, w in weighted):
        listed = ", ".join(f"{d * 1e3:.1f}" for d, _ in weighted)
        raise InputError(
            f"with {studs} studs these distances mean circles of {listed} mm, which contradict each other: "
            "check how many studs there are and how many steps apart each pair is"
        )
