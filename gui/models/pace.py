"""How fast the wheel turns right now, against the zone in which it should, where an angle or a gyro comes along.

It never takes the coach's place: words are added to "Keep turning" alone, and a sound only tells when the zone is left.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np

from gui.models.coach import Hint

if TYPE_CHECKING:
    from collections.abc import Callable

    from logger.samples import Floats

LAST_S = 1.0
"""What is said of right now rests on the readings of this time (s)."""

USUAL_RPM = (2.0, 10.0)
"""Turns a minute at which a wheel is turned by hand: common practice, no source."""

AROUND_AIM = (0.5, 1.5)
"""A job that states its own speed is kept within these shares of it; our choice, no source."""

LEAST_S = 0.4
"""A speed is not told from less of the angle than this (s)."""

TELL_S = 1.5
"""Outside its zone the speed is told again after this time (s)."""


class Zone(StrEnum):
    """How the speed lies in its zone."""

    IN = "good"
    SLOW = "too slow"
    FAST = "too fast"


@dataclass(frozen=True, slots=True)
class Pace:
    """Speed of the wheel (turns a minute, without sign) and the zone for it."""

    rpm: float
    zone_rpm: tuple[float, float] = USUAL_RPM

    @property
    def zone(self) -> Zone:
        """Where it lies."""
        low, high = self.zone_rpm
        return Zone.SLOW if self.rpm < low else Zone.FAST if self.rpm > high else Zone.IN

    def words(self, number: Callable[[float], str]) -> str:
        """For the person at the wheel; ``number`` writes the speed with the decimal mark on screen."""
        low, high = self.zone_rpm
        return f"{number(self.rpm)} turns a minute, {self.zone} ({low:g} to {high:g})"


def zone_for(aim_rpm: float | None) -> tuple[float, float]:
    """Give the zone (turns a minute): around the job's own speed, or the usual one."""
    return USUAL_RPM if not aim_rpm else (AROUND_AIM[0] * aim_rpm, AROUND_AIM[1] * aim_rpm)


def pace_of(time_s: Floats, angle_deg: Floats, aim_rpm: float | None = None) -> Pace | None:
    """Give the mean speed over the last moments; None where they are too short.

    Args:
        time_s, angle_deg: shape (n,); The last second or so of the wheel's angle.
        aim_rpm: Speed that the job asks for.
    """
    if len(time_s) < 2 or time_s[-1] - time_s[0] < LEAST_S:
        return None
    turned = abs(float(angle_deg[-1] - angle_deg[0]))
    return Pace(turned / 6 / float(time_s[-1] - time_s[0]), zone_for(aim_rpm))


class Wheel:
    """The wheel's angle over the last second of a stream that brings one along, and how far it turned since a mark."""

    def __init__(self) -> None:
        self._marked_deg: float | None = None
        self._latest_deg = 0.0
        self._time_s, self._angle_deg = np.empty(0), np.empty(0)

    def feed(self, time_s: Floats, angle_deg: Floats) -> float | None:
        """Take the next readings, shape (n,); give how far the wheel turned in the last second (degrees, with sign)."""
        time_s = np.concatenate((self._time_s, time_s))
        angle_deg = np.concatenate((self._angle_deg, angle_deg))
        kept = (time_s > time_s[-1] - LAST_S) & np.isfinite(angle_deg)
        self._time_s, self._angle_deg = time_s[kept], angle_deg[kept]
        if kept.any():
            self._latest_deg = float(self._angle_deg[-1])
            self._marked_deg = self._latest_deg if self._marked_deg is None else self._marked_deg
        return float(self._angle_deg[-1] - self._angle_deg[0]) if kept.any() else None

    def mark(self) -> None:
        """Count how far it turns from here."""
        self._marked_deg = None if self._marked_deg is None else self._latest_deg

    @property
    def turned_deg(self) -> float | None:
        """How far it has turned since the mark, or since its first angle (degrees, with sign); None without one."""
        return None if self._marked_deg is None else self._latest_deg - self._marked_deg

    def pace(self, aim_rpm: float | None = None) -> Pace | None:
        """Give how fast it turns, against the zone for a job's own speed; None where that is not told yet."""
        return pace_of(self._time_s, self._angle_deg, aim_rpm)


@dataclass(slots=True)
class Pacer:
    """Decides when the zone is told by a sound: on leaving it, and again while it stays left."""

    _told: Zone = Zone.IN
    _at_s: float = float("-inf")

    def due(self, pace: Pace | None, hint: Hint, now_s: float) -> Zone | None:
        """Give what is to be told now, if anything; only while the wheel is to be kept turning."""
        zone = pace.zone if pace is not None and hint is Hint.KEEP_TURNING else Zone.IN
        again = zone is not self._told or now_s - self._at_s >= TELL_S
        if zone is Zone.IN or not again:
            self._told = zone
            return None
        self._told, self._at_s = zone, now_s
        return zone
