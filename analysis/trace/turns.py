"""How far the wheel had turned when a pull was read: kept with the pull, so that a file and the live window agree.

Offered: ``Turns``.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.results import Turned

if TYPE_CHECKING:
    from analysis.trace.results import Pull
    from logger.samples import Floats


class Turns:
    """The wheel's angle along one recording, fed as it grows; a file feeds it once."""

    def __init__(self) -> None:
        self._times: list[Floats] = []
        self._angles: list[Floats] = []

    def feed(self, time_s: Floats, angle_deg: Floats | None) -> None:
        """Take the next samples, shape (n,) each: seconds, degrees; NaN where the angle is not known."""
        if angle_deg is None:
            return
        good = np.isfinite(angle_deg)
        if good.any():
            self._times.append(np.asarray(time_s)[good])
            self._angles.append(np.radians(np.asarray(angle_deg)[good]))

    def of(self, pull: Pull) -> Pull:
        """Give a pull with how far the wheel turned; as it is where there is no angle."""
        if not self._times:
            return replace(pull, turned=None)
        if len(self._times) > 1:
            self._times, self._angles = [np.concatenate(self._times)], [np.concatenate(self._angles)]

        def between(start_s: float, end_s: float) -> float:
            first, last = np.interp([start_s, end_s], self._times[0], self._angles[0])
            return abs(float(last - first))

        slip, level = pull.breakaway, pull.rotating
        turned = Turned(
            to_breakaway_rad=between(pull.start_s, slip.time_s) if slip else None,
            rotating_rad=between(level.start_s, level.end_s) if level else None,
            to_rotating_rad=between(pull.start_s, (level.start_s + level.end_s) / 2) if level else None,
        )
        return replace(pull, turned=turned)
