"""A trace that grows while it is drawn: samples in arrays, block minima and maxima beside them.

Conventions:
- Time in seconds, increasing; torque in N·m as the transducer read it. Lever, zero and unit are applied to the few
  points handed out, so that changing them costs nothing.
- Level 0 of the pyramid holds the least and greatest of every ``BLOCK`` samples, each further level of ``FAN`` blocks.
- A missing value is NaN; a block is NaN only if all its samples are.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from logger.samples import Floats

BLOCK = 64  # samples in a block of level 0: small against any screen's share of an hour at 1 kHz (about 2,000)
GAP_S, GAP_STEPS = 0.5, 5.0  # a longer time between two drawn points, and than so many usual ones, is a break
FAN = 8  # blocks per block of the next level
_START = 1 << 14  # first room, in samples


class _Growing:
    """An array with room to grow: appending costs a constant time per value on average."""

    def __init__(self, room: int = _START) -> None:
        self._room = np.empty(room)
        self.size = 0

    @classmethod
    def over(cls, values: Floats) -> _Growing:
        grown = cls(0)
        grown._room, grown.size = values, len(values)
        return grown

    @property
    def values(self) -> Floats:
        return self._room[: self.size]

    def append(self, values: Floats) -> None:
        end = self.size + len(values)
        if end > len(self._room):
            wider = np.empty(max(end, 2 * len(self._room)))
            wider[: self.size] = self.values
            self._room = wider
        self._room[self.size : end] = values
        self.size = end


class _Level:
    """Least and greatest per block of ``span`` entries of the level below."""

    def __init__(self, span: int) -> None:
        self.span = span
        self.least = _Growing(256)
        self.greatest = _Growing(256)

    @classmethod
    def over(cls, span: int, least: Floats, greatest: Floats) -> _Level:
        level = cls(span)
        level.least, level.greatest = _Growing.over(least), _Growing.over(greatest)
        return level

    def grow(self, least: Floats, greatest: Floats) -> None:
        done = self.least.size * self.span
        blocks = (len(least) - done) // self.span
        if blocks <= 0:
            return
        stop = done + blocks * self.span
        self.least.append(np.fmin.reduce(least[done:stop].reshape(blocks, self.span), axis=1))
        self.greatest.append(np.fmax.reduce(greatest[done:stop].reshape(blocks, self.span), axis=1))


def joined(time_s: Floats) -> NDArray[np.bool_] | None:
    """Say which points of a drawn line are joined to the next, shape (n,); None where all are.

    Nothing was sent in a break of more than half a second that is also far longer than the points are apart: a line
    across it would be torque that nobody measured.
    """
    steps = np.diff(time_s)
    longest = float(steps.max(initial=0.0))
    if longest <= GAP_S:
        return None
    usual = float(np.median(steps[steps > 0]))
    if longest <= GAP_STEPS * usual:
        return None
    return np.append(steps <= max(GAP_S, GAP_STEPS * usual), True)


class GrowingTrace:
    """Samples as they arrive, and any stretch of them at two points per pixel column."""

    def __init__(self, time_s: Floats | None = None, torque_nm: Floats | None = None) -> None:
        self._time = _Growing()
        self._torque = _Growing()
        self._levels: list[_Level] = [_Level(BLOCK)]
        if time_s is not None and torque_nm is not None:
            self.append(time_s, torque_nm)

    @classmethod
    def over(cls, time_s: Floats, torque_nm: Floats, levels: Sequence[tuple[Floats, Floats]]) -> GrowingTrace:
        """Lay a trace over arrays and a pyramid that exist already; nothing is copied."""
        trace = cls()
        trace._time, trace._torque = _Growing.over(time_s), _Growing.over(torque_nm)
        trace._levels = [
            _Level.over(FAN if number else BLOCK, least, greatest) for number, (least, greatest) in enumerate(levels)
        ]
        return trace

    def levels(self) -> list[tuple[Floats, Floats]]:
        """Give the pyramid: least and greatest values of each level."""
        return [(level.least.values, level.greatest.values) for level in self._levels]

    def __len__(self) -> int:
        return self._time.size

    @property
    def time_s(self) -> Floats:
        """All times so far, shape (n,)."""
        return self._time.values

    @property
    def torque_nm(self) -> Floats:
        """All torques so far, shape (n,)."""
        return self._torque.values

    @property
    def end_s(self) -> float:
        """Time of the last sample; 0 before the first."""
        return float(self._time.values[-1]) if len(self) else 0.0

    @property
    def start_s(self) -> float:
        """Time of the first sample; 0 before it."""
        return float(self._time.values[0]) if len(self) else 0.0

    def append(self, time_s: Floats, torque_nm: Floats) -> None:
        """Take the next samples, shape (n,) each."""
        self._time.append(time_s)
        self._torque.append(torque_nm)
        least = greatest = self._torque.values
        for level in self._levels:
            level.grow(least, greatest)
            least, greatest = level.least.values, level.greatest.values
        if len(least) >= FAN * FAN:
            level = _Level(FAN)
            level.grow(least, greatest)
            self._levels.append(level)

    def stretch(self, start_s: float, end_s: float, columns: int) -> tuple[Floats, Floats]:
        """Give what a line needs to show a stretch on so many pixel columns.

        Args:
            start_s, end_s: The stretch, both ends included.
            columns: Pixel columns to draw on.

        Returns:
            time_s, torque_nm: shape (m,); At most two points per column and one block's tail: the samples themselves
                where they are that few, else the least and the greatest of each column, so that no peak is ever
                missing.
        """
        first = int(np.searchsorted(self.time_s, start_s, side="left"))
        last = int(np.searchsorted(self.time_s, end_s, side="right"))
        first, last = max(0, first - 1), min(len(self), last + 1)
        count, columns = last - first, max(1, columns)
        if count <= 2 * columns:
            return self.time_s[first:last], self.torque_nm[first:last]
        return self._columns(first, last, columns)

    def _columns(self, first: int, last: int, columns: int) -> tuple[Floats, Floats]:
        span, least, greatest = self._level_for((last - first) // columns)
        begin, stop = first // span, last // span
        tail = self.torque_nm[stop * span : last]
        entries = stop - begin
        starts = begin + (np.arange(min(columns, entries)) * entries) // min(columns, entries)
        low = np.fmin.reduceat(least[:stop], starts)
        high = np.fmax.reduceat(greatest[:stop], starts)
        at = self.time_s[starts * span]
        times, torques = np.repeat(at, 2), np.empty(2 * len(at))
        torques[0::2], torques[1::2] = low, high
        if len(tail):
            end = self.time_s[last - 1]
            times = np.append(times, (end, end))
            torques = np.append(torques, (np.fmin.reduce(tail), np.fmax.reduce(tail)))
        return times, torques

    def _level_for(self, wanted: int) -> tuple[int, Floats, Floats]:
        span, least, greatest = 1, self.torque_nm, self.torque_nm
        width = 1
        for level in self._levels:
            width *= level.span
            if width > wanted or level.least.size == 0:
                break
            span, least, greatest = width, level.least.values, level.greatest.values
        return span, least, greatest
