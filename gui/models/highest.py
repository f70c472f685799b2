"""The highest torque since the pulls began, and in which pull it was; what was excluded does not count."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.to_axle.axle_scale import AxleScale
    from gui.models.caught import CaughtPull
    from logger.samples import Floats

SPIKE_SHARE = 3  # samples: the highest so far is a median of this many, so that one wild sample is no torque


def stretch(caught: CaughtPull) -> tuple[float, float]:
    """Give where a pull begins and ends on the session's time (s)."""
    return caught.start_s + caught.pull.start_s, caught.start_s + caught.pull.end_s


class Highest:
    """Keeps the greatest of every few samples, so that a pull can be excluded and counted again."""

    def __init__(self) -> None:
        self._time_s: list[float] = []
        self._nm: list[float] = []
        self._best: int | None = None
        self._excluded: list[tuple[float, float]] = []

    def feed(self, time_s: Floats, torque_nm: Floats) -> None:
        """Take the next samples, shape (n,): torque relative to the zero (N·m at the transducer)."""
        finite = np.isfinite(torque_nm)
        time_s, torque_nm = time_s[finite], torque_nm[finite]
        if not len(torque_nm):
            return
        if len(torque_nm) >= SPIKE_SHARE:
            three = np.lib.stride_tricks.sliding_window_view(torque_nm, SPIKE_SHARE)
            time_s, torque_nm = time_s[SPIKE_SHARE // 2 :], np.median(three, axis=1)
        at = int(np.argmax(np.abs(torque_nm)))
        self._time_s.append(float(time_s[at]))
        self._nm.append(float(torque_nm[at]))
        self._offer(len(self._nm) - 1)

    def _offer(self, place: int) -> None:
        at = self._time_s[place]
        out = any(first <= at <= last for first, last in self._excluded)
        if not out and (self._best is None or abs(self._nm[place]) > abs(self._nm[self._best])):
            self._best = place

    def find(self, pulls: Sequence[CaughtPull]) -> tuple[float, int] | None:
        """Give the highest outside of excluded pulls (N·m, with sign) and the number of its pull.

        The number is 0 where the torque belongs to none of them, as in one that is still being made.
        """
        excluded = [stretch(caught) for caught in pulls if caught.rejected]
        if excluded != self._excluded:
            self._excluded, self._best = excluded, None
            for place in range(len(self._nm)):
                self._offer(place)
        if self._best is None:
            return None
        at = self._time_s[self._best]
        spans = ((caught.number, *stretch(caught)) for caught in pulls)
        return self._nm[self._best], next((number for number, first, last in spans if first <= at <= last), 0)

    def at_axle(self, pulls: Sequence[CaughtPull], scale: AxleScale) -> tuple[float, int] | None:
        """Give the highest at the axle (N·m, with sign) and its pull: as seen, or read as a breakaway that counts."""
        found = self.find(pulls)
        if found is None:
            return None
        seen, number = scale.torque(found[0]), found[1]
        read = [(c.breakaway.nm, c.number) for c in pulls if c.counts and c.breakaway is not None]
        most, of_pull = max([(abs(seen), number), *read], key=lambda one: one[0])
        return math.copysign(most, seen), of_pull
