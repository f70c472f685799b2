"""The end of a growing stream, as arrays: what a reader may still need, and no more."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.traces import Samples

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

LEAST_ROOM = 4096
"""Samples that a tail has room for at first."""


class Tail:
    """Samples ``first`` to ``end`` of a stream, counted from its beginning; appending costs no more as it grows.

    The angle is kept as long as every block that was appended had one.
    """

    def __init__(self) -> None:
        self.first = 0
        self.end = 0
        self._rows = np.empty((3, LEAST_ROOM))
        self._begin = 0  # column of sample ``first``
        self.has_angle = True

    def __len__(self) -> int:
        return self.end - self.first

    def append(self, samples: Samples) -> None:
        """Take the next samples."""
        n = len(samples)
        stop = self._begin + len(self)
        if stop + n > self._rows.shape[1]:
            rows = np.empty((3, max(2 * (len(self) + n), LEAST_ROOM)))
            rows[:, : len(self)] = self._rows[:, self._begin : stop]
            self._rows, self._begin, stop = rows, 0, len(self)
        self._rows[0, stop : stop + n] = samples.time_s
        self._rows[1, stop : stop + n] = samples.torque_nm
        if n and samples.angle_deg is None:
            self.has_angle = False
        elif samples.angle_deg is not None:
            self._rows[2, stop : stop + n] = samples.angle_deg
        self.end += n

    def forget(self, before: int) -> None:
        """Give up the samples before this number."""
        gone = min(max(before - self.first, 0), len(self))
        self.first += gone
        self._begin += gone

    def samples(self, start: int, stop: int) -> Samples:
        """Give samples by their numbers, as far as they are kept; views, not copies."""
        low = self._begin + min(max(start - self.first, 0), len(self))
        high = self._begin + min(max(stop - self.first, 0), len(self))
        t, y, a = self._rows[:, low : max(high, low)]
        return Samples(t, y, a if self.has_angle else None)

    def time_s(self) -> Floats:
        """Give the times of all samples kept."""
        return self.samples(self.first, self.end).time_s
