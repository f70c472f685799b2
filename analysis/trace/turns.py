"""How far the wheels had turned when a pull was read: kept with the pull, so that a file and the live window agree."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.results import Turned

if TYPE_CHECKING:
    from analysis.trace.results import Pull
    from logger.samples import Floats


class Way:
    """One angle along one recording, fed as it grows."""

    def __init__(self) -> None:
        self._times: list[Floats] = []
        self._angles: list[Floats] = []

    def __bool__(self) -> bool:
        return bool(self._times)

    def feed(self, time_s: Floats, angle_deg: Floats | None) -> None:
        """Take the next samples, shape (n,) each: seconds, degrees; NaN where the angle is not known."""
        if angle_deg is None:
            return
        good = np.isfinite(angle_deg)
        if good.any():
            self._times.append(np.asarray(time_s)[good])
            self._angles.append(np.radians(np.asarray(angle_deg)[good]))

    def between(self, start_s: float, end_s: float) -> float:
        """Give how far it turned from one time to another, rad."""
        if len(self._times) > 1:
            self._times, self._angles = [np.concatenate(self._times)], [np.concatenate(self._angles)]
        first, last = np.interp([start_s, end_s], self._times[0], self._angles[0])
        return abs(float(last - first))


class Turns:
    """The wheel's angle along one recording, and that of the held wheel where it came along; a file feeds it once."""

    def __init__(self) -> None:
        self._wheel, self._held = Way(), Way()

    def feed(self, time_s: Floats, angle_deg: Floats | None, held_deg: Floats | None = None) -> None:
        """Take the next samples, shape (n,) each: seconds, degrees; NaN where an angle is not known."""
        self._wheel.feed(time_s, angle_deg)
        self._held.feed(time_s, held_deg)

    def of(self, pull: Pull) -> Pull:
        """Give a pull with how far the wheels turned; as it is where there is no angle."""
        if not self._wheel:
            return replace(pull, turned=None)
        between, held = self._wheel.between, self._held.between if self._held else None
        slip, level = pull.breakaway, pull.rotating
        # Of the whole pull what lies under load: its release lets springs go back.
        end_s = level.end_s if level else slip.time_s if slip else pull.end_s
        turned = Turned(
            to_breakaway_rad=between(pull.start_s, slip.time_s) if slip else None,
            rotating_rad=between(level.start_s, level.end_s) if level else None,
            to_rotating_rad=between(pull.start_s, (level.start_s + level.end_s) / 2) if level else None,
            whole_rad=between(pull.start_s, end_s) if held else None,
            held_rad=held(pull.start_s, end_s) if held else None,
            held_rotating_rad=held(level.start_s, level.end_s) if held and level else None,
        )
        return replace(pull, turned=turned)
