"""Tyres of unlike circumference on one axle: how fast the differential then turns, straight ahead.

A wheel of circumference C turns v / C times a second at a road speed v. The case turns at the mean of both, so each
pack slips at half their difference (kinematics of the differential; the virtual axle turns by the same rule).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from analysis.uncertainty.budget import NORMAL_95
from logger.errors import InputError

NOTICEABLE = 0.01
"""Share of the circumference from which a workshop has the tyres changed about (common practice, no source)."""

UNLIKE = "Unlike tyres keep the differential turning: its packs slip and heat."
MEASURE = "Measure both alike: same pressure, same load, rolled out over one turn or taped round the tread."
TOLD = {
    "yes": "Above 1 % of the circumference: put like tyres on this axle before its packs are judged or renewed.",
    "no": "Below 1 % of the circumference.",
    "not told": "Whether that is above 1 % of the circumference cannot be told: measure more exactly.",
}
SOURCE = "1 % is common practice, no source; the maker's manual comes first."

POSSIBLE_M = (0.3, 10.0)
"""Circumferences of tyres that roll on a road or a field."""


@dataclass(frozen=True, slots=True)
class Mismatch:
    """What two circumferences do."""

    # left_m, right_m: circumferences
    left_m: float
    right_m: float
    # share, share_u95: left less right over their mean, and its 95 % half-width
    share: float
    share_u95: float
    speed_m_s: float  # road speed that the following are for
    wheel_rpm: float  # by how many turns a minute the wheels differ; positive where the right one turns faster

    @property
    def pack_rpm(self) -> float:
        """At what each pack slips all the time, turns a minute."""
        return abs(self.wheel_rpm) / 2

    @property
    def pack_turns_per_km(self) -> float:
        """How many turns each pack slips on every kilometre, at any speed."""
        return abs(1000 / self.left_m - 1000 / self.right_m) / 2

    @property
    def told(self) -> str:
        """Whether the difference is noticeable: yes, no, or not told by such measuring."""
        if abs(self.share) - self.share_u95 > NOTICEABLE:
            return "yes"
        return "no" if abs(self.share) + self.share_u95 < NOTICEABLE else "not told"

    def to_json(self) -> dict[str, Any]:
        """Give the mismatch as JSON-ready values."""
        return {
            "schema": "heldwheel tyres 1",
            "left_m": self.left_m,
            "right_m": self.right_m,
            "difference_percent": self.share * 100,
            "u95_percent": self.share_u95 * 100,
            "speed_km_h": self.speed_m_s * 3.6,
            "wheel_rpm": self.wheel_rpm,
            "pack_rpm": self.pack_rpm,
            "pack_turns_per_km": self.pack_turns_per_km,
            "noticeable": self.told,
        }


def tyre_mismatch(left_m: float, right_m: float, u_m: float, speed_m_s: float) -> Mismatch:
    """Say what two circumferences do to the differential.

    Args:
        left_m, right_m: Rolled out or taped round, both alike, m.
        u_m: Standard uncertainty of each, m.
        speed_m_s: Road speed, m/s.

    Raises:
        InputError: No tyre has such a circumference.

    Two per cent of two metres at 100 km/h: 833 and 842 turns a minute.

    >>> found = tyre_mismatch(2.0, 1.98, 0.001, 100 / 3.6)
    >>> round(found.wheel_rpm, 2), round(found.pack_rpm, 2), found.told
    (8.42, 4.21, 'not told')
    """
    for name, value in (("left", left_m), ("right", right_m)):
        if not POSSIBLE_M[0] <= value <= POSSIBLE_M[1]:
            raise InputError(
                f"the {name} circumference is {value:g} m: it must lie between {POSSIBLE_M[0]:g} m and "
                f"{POSSIBLE_M[1]:g} m; give the circumference, not the diameter, with its unit"
            )
    if not u_m >= 0 or not speed_m_s >= 0 or not math.isfinite(u_m + speed_m_s):
        raise InputError("an uncertainty and a speed cannot be negative")
    mean = (left_m + right_m) / 2
    share = (left_m - right_m) / mean
    rpm = 60 * speed_m_s * (1 / right_m - 1 / left_m)
    return Mismatch(left_m, right_m, share, NORMAL_95 * math.sqrt(2) * u_m / mean, speed_m_s, rpm)


def lines_of(found: Mismatch) -> tuple[str, ...]:
    """Say what two circumferences do, sentence by sentence; command and window say it so."""
    by = f"{abs(found.share) * 100:.2f} ± {found.share_u95 * 100:.2f} % (95 %)"
    larger = "Both tyres are alike."
    if found.share > 0:
        larger = f"The left tyre is larger by {by}."
    elif found.share < 0:
        larger = f"The right tyre is larger by {by}."
    return (
        larger,
        f"At {found.speed_m_s * 3.6:g} km/h, straight ahead, the wheels differ by {abs(found.wheel_rpm):.1f} turns a "
        f"minute: each pack slips at {found.pack_rpm:.1f}, and {found.pack_turns_per_km:.1f} turns on every kilometre "
        "at any speed.",
        TOLD[found.told],
    )
