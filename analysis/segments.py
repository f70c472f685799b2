"""Where a load on the lever begins and ends.

The trace is cut into short blocks; the median of each block is compared with the level at rest by a small state
machine with hysteresis. Every decision looks back only, so a growing stream and a whole file give the same spans.
Whether a span is a pull, a bump or an aborted load is decided later, from its shape (``analysis.pulls``).

Offered: ``Span``, ``Segmenter``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.traces import Floats, Sensor

BLOCK_S = 0.05
"""Length of a block (s): short against the quickest hand-made ramp (0.3 s), long enough to rob a spike of its vote."""

LEVEL_S = 0.4
"""Time constant with which the level at rest is followed (s)."""

THRESHOLD_NOISES = 6.0
"""A load begins this many deviations of the block medians away from rest; normal noise does that once in 10^9."""

THRESHOLD_OF_CAPACITY = 0.005
"""... and this share of the capacity away: less is below what a transducer is good for (ISO 376 classes end at 2 %)."""

RELEASED = 0.3
"""A load has ended when the torque is below this share of its maximum ..."""

RELEASED_S = 0.15
"""... for this long (s): stick-slip and ringing come back sooner."""

RESTS = 0.6
"""A load has also ended when the torque lies still below this share of its maximum (the lever hangs differently) ..."""

RESTS_S = 1.0
"""... for this long (s)."""


RINGS_S = 1.5
"""After a release the lever rings and falls into place for at most this long (s) ..."""

STILL_BLOCKS = 3
"""... or until this many blocks in a row did not move ..."""

AGAIN = 0.5
"""... unless the torque comes back to this share of the maximum before: that is the next load."""

CUT_OF_CAPACITY = 0.04
"""A recording that begins further from zero than this share of the capacity may begin in the middle of a pull: zero
error and lever weight stay below it."""

LEARN_BLOCKS = 4
"""Blocks that only teach level and noise."""

NOISE_SHARE = 0.1
"""How much of each block's step goes into the running noise: about the last ten blocks count."""

MEAN_STEP = 1.128
"""Mean step between neighbours of white noise, in standard deviations (2/√π)."""


@dataclass(frozen=True, slots=True)
class Span:
    """One load: sample numbers [start, end), counted from the beginning of the stream.

    ``seen``: what had been seen when the span was closed; nothing later is used.
    ``level_nm`` and ``noise_nm`` are level and block noise at rest before it. ``from_start``: no rest came before;
    ``to_end``: the stream ended before the release.
    """

    start: int
    end: int
    level_nm: float
    noise_nm: float
    from_start: bool = False
    to_end: bool = False
    seen: int = 0


class Segmenter:
    """Finds spans in a stream of block medians.

    Parameters
    ----------
    sensor : Sensor
    resolution_nm : float
        Smallest step of the reading.
    """

    def __init__(self, sensor: Sensor, resolution_nm: float) -> None:
        self._least_nm = max(THRESHOLD_OF_CAPACITY * (sensor.capacity_nm or 0.0), 2 * resolution_nm)
        self._cut_nm = CUT_OF_CAPACITY * (sensor.capacity_nm or 0.0)
        self._last_s, self._last_nm = -np.inf, 0.0  # the block before
        self.level_nm = self._noise_nm = 0.0  # at rest
        self._first = True  # no load has been seen
        self._loaded = False
        self._settled_s = -np.inf  # the release before has rung down by then
        self._still = 0  # blocks in a row that were still after it
        self._before_nm = self._again_nm = 0.0  # further than this from the level before, it is a new load
        self._nearest_nm = 0.0  # what came nearest to the level before
        self._start = 0  # of the load now open: block, and what was highest and lowest in it, against rest
        self._high_nm = self._low_nm = 0.0
        self._low_since: int | None = None
        self._low_since_s = 0.0
        self._still_since_s = 0.0  # the torque has kept to still_nm since
        self._still_since = 0
        self._still_nm = 0.0
        self._blocks = 0

    @property
    def open_since(self) -> int | None:
        """Block in which the load now open began; None at rest."""
        return self._start if self._loaded else None

    @property
    def may_be_cut(self) -> bool:
        """Whether the stream so far may all belong to a pull that began before it."""
        return self._first and abs(self.level_nm) > self._cut_nm > 0

    def push(self, time_s: Floats, torque_nm: Floats) -> list[Span]:
        """Take the next blocks (times and medians) and give the spans that they complete; in block numbers."""
        spans: list[Span] = []
        for t, b in zip(time_s.tolist(), torque_nm.tolist(), strict=True):
            if self._blocks == 0:
                self.level_nm = self._last_nm = b
                self._last_s = t
            span = self._step(t, b) if self._loaded else self._rest(t, b)
            if span is not None:
                spans.append(span)
            self._last_s, self._last_nm = t, b
            self._blocks += 1
        return spans

    def finish(self) -> list[Span]:
        """Close the load that is still open."""
        if not self._loaded:
            return []
        self._loaded = False
        seen = self._blocks
        return [Span(self._start, seen, self.level_nm, self._noise_nm, self._first, to_end=True, seen=seen)]

    def _rest(self, t: float, b: float) -> Span | None:
        away = b - self.level_nm
        if t < self._settled_s:  # rings, or the lever swings
            if abs(b - self._before_nm) > self._again_nm:
                self.level_nm, self._settled_s = self._nearest_nm, -np.inf
                return self._rest(t, b)
            if abs(b - self._before_nm) < abs(self._nearest_nm - self._before_nm):
                self._nearest_nm = b
            still = abs(b - self._last_nm) < max(self._least_nm, THRESHOLD_NOISES * self._noise_nm)
            self.level_nm, self._still = b, self._still + 1 if still else 0
            if self._still >= STILL_BLOCKS:
                self._settled_s = t
            return None
        if abs(away) > max(self._least_nm, THRESHOLD_NOISES * self._noise_nm) and self._blocks >= LEARN_BLOCKS:
            self._loaded, self._start, self._low_since = True, self._blocks, None
            self._high_nm, self._low_nm = max(away, 0.0), min(away, 0.0)
            self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks
            return None
        follow = min((t - self._last_s) / LEVEL_S, 1.0) if self._blocks >= LEARN_BLOCKS else 0.5
        self.level_nm += follow * away
        self._noise_nm += min(follow, NOISE_SHARE) * (abs(b - self._last_nm) / MEAN_STEP - self._noise_nm)
        return None

    def _step(self, t: float, b: float) -> Span | None:
        away = b - self.level_nm
        self._high_nm, self._low_nm = max(self._high_nm, away), min(self._low_nm, away)
        sign = 1.0 if self._high_nm >= -self._low_nm else -1.0
        most = max(self._high_nm, -self._low_nm)
        if self.may_be_cut:
            if abs(b) < RELEASED * abs(self.level_nm):
                return self._low(t, b, from_start=True)
            self._low_since = None
            return None
        if sign * away < -RELEASED * most:  # straight into a load the other way
            return self._close(self._blocks, b, again=True)
        if sign * away < RELEASED * most:
            return self._low(t, b)
        self._low_since = None
        if abs(b - self._still_nm) > max(self._least_nm, 2 * THRESHOLD_NOISES * self._noise_nm):
            self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks
        elif sign * away < RESTS * most and t - self._still_since_s > RESTS_S:
            return self._close(self._still_since, b)
        return None

    def _low(self, t: float, b: float, *, from_start: bool = False) -> Span | None:
        if self._low_since is None:
            self._low_since, self._low_since_s = self._blocks, t
        if t - self._low_since_s < RELEASED_S:
            return None
        if from_start:
            self._start = 0
        return self._close(self._low_since, b, from_start=from_start)

    def _close(self, end: int, b: float, *, again: bool = False, from_start: bool = False) -> Span:
        span = Span(self._start, end, self.level_nm, self._noise_nm, from_start, seen=self._blocks + 1)
        self._loaded, self._first, self._low_since = again, False, None
        if again:
            away = b - self.level_nm
            self._start, self._high_nm, self._low_nm = self._blocks, max(away, 0.0), min(away, 0.0)
        else:
            self._before_nm, self._again_nm = self.level_nm, AGAIN * max(self._high_nm, -self._low_nm)
            self.level_nm, self._settled_s, self._still, self._nearest_nm = b, self._last_s + RINGS_S, 0, b
        return span
