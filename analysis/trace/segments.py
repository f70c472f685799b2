"""Where a load on the lever begins and ends.

The trace is cut into short blocks; the median of each block is compared with the level at rest by a small state
machine with hysteresis. Every decision looks back only, so a growing stream and a whole file give the same spans.
Whether a span is a pull, a bump or an aborted load is decided later, from its shape (``analysis.trace.pulls``).

Offered: ``Span``, ``Segmenter``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.trace.traces import Floats, Sensor

BLOCK_S = 0.05
"""Length of a block (s): short against the quickest hand-made ramp (0.3 s), long enough to rob a spike of its vote."""

LEVEL_S = 1.0
"""Time constant with which the level at rest is followed (s)."""

THRESHOLD_NOISES = 6.0
"""A load begins this many deviations of the block medians away from rest; normal noise does that once in 10^9."""

THRESHOLD_OF_CAPACITY = 0.003
"""... and this share of the capacity away: less is below what a transducer is good for (ISO 376 classes end at 2 %)."""

RELEASED = 0.3
"""A load has ended when the torque is below this share of its maximum ..."""

RELEASED_S = 0.15
"""... for this long (s): stick-slip and ringing come back sooner."""

RESTS = 0.6
"""A load has also ended when the torque lies still below this share of its maximum (the lever hangs differently) ..."""

RESTS_S = 1.0
"""... for this long (s)."""


GROWS = 2.5
"""A load that grows to so many times the level it had been still at for ``RESTS_S`` is a new one on top of that ..."""

BEGAN_STILL_S = 0.5
"""... and a stream that kept to its first level for this long (s) before growing so much began at rest after all."""

RINGS_S = 1.5
"""After a release the lever rings and falls into place for at most this long (s) ..."""

STILL_BLOCKS = 3
"""... or until this many blocks in a row did not move ..."""

AGAIN = 0.5
"""... unless the torque comes back to this share of the maximum before: that is the next load."""

LEARN_BLOCKS = 6
"""Blocks that only teach level and noise."""

NOISE_SHARE = 0.1
"""How much of each block's step goes into the running noise: about the last ten blocks count."""

MEAN_STEP = 1.128
"""Mean step between neighbours of white noise, in standard deviations (2/√π)."""


@dataclass(frozen=True, slots=True)
class Span:
    """One load: blocks [start, end), counted from the beginning of the stream.

    ``level_nm`` is the level at rest before it. ``from_start``: no rest came before; ``to_end``: the stream ended
    before the release. ``seen``: blocks seen when the span was closed; nothing later is used.
    """

    start: int
    end: int
    level_nm: float
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
    begins_loaded : bool
        Whether the stream seems to begin in the middle of a pull.
    """

    def __init__(self, sensor: Sensor, resolution_nm: float, *, begins_loaded: bool = False) -> None:
        self._least_nm = max(THRESHOLD_OF_CAPACITY * (sensor.capacity_nm or 0.0), 2 * resolution_nm)
        self._begins_loaded = begins_loaded
        self._last_s, self._last_nm = -np.inf, 0.0  # the block before
        self.level_nm = self._noise_nm = 0.0  # at rest
        self._first_s = 0.0  # time of the first block
        self._began_still = False  # the load now open did not begin right with the stream
        self._first = True  # no load has been seen
        self._loaded = False
        self._settled_s = -np.inf  # the release before has rung down by then
        self._still = 0  # blocks in a row that were still after it
        self._before_nm = self._again_nm = 0.0  # further than this from the level before, it is a new load
        self._start = 0  # of the load now open: block, and what was highest and lowest in it, against rest
        self._high_nm = self._low_nm = 0.0
        self._low_since: int | None = None
        self._low_since_s = 0.0
        self._still_since_s = 0.0  # the torque has kept to still_nm since
        self._still_since = 0
        self._still_nm = 0.0
        self._shelf: tuple[float, int, int] | None = None  # level, begin and end of the last still stretch in the load
        self._blocks = 0

    @property
    def open_since(self) -> int | None:
        """Block in which the load now open began; None at rest."""
        return self._start if self._loaded else None

    @property
    def may_be_cut(self) -> bool:
        """Whether the stream so far may all belong to a pull that began before it."""
        return self._first and self._begins_loaded

    def push(self, time_s: Floats, torque_nm: Floats) -> list[Span]:
        """Take the next blocks (times and medians) and give the spans that they complete; in block numbers."""
        spans: list[Span] = []
        times, blocks = time_s.tolist(), torque_nm.tolist()
        at = 0
        if blocks and self._blocks == 0:
            self.level_nm = self._last_nm = blocks[0]
            self._last_s = self._first_s = times[0]
        while at < len(blocks):
            at = self._run_loaded(times, blocks, at) if self._loaded else self._run_rest(times, blocks, at)
            if at == len(blocks):
                break
            t, b = times[at], blocks[at]
            span = self._step(t, b) if self._loaded else self._rest(t, b)
            if span is not None:
                spans.append(span)
            self._last_s, self._last_nm = t, b
            self._blocks += 1
            at += 1
        return spans

    def _run_rest(self, times: list[float], blocks: list[float], at: int) -> int:
        """Follow level and noise as long as nothing happens; this and the next are the loops that cost time."""
        if self._blocks < LEARN_BLOCKS or times[at] < self._settled_s:
            return at
        level, noise, last_s, last = self.level_nm, self._noise_nm, self._last_s, self._last_nm
        least, begin = self._least_nm, at
        for at in range(begin, len(blocks)):
            t, b = times[at], blocks[at]
            away = b - level
            limit = THRESHOLD_NOISES * noise
            if abs(away) > (limit if limit > least else least):
                break
            follow = (t - last_s) / LEVEL_S
            if follow > 1.0:
                follow = 1.0
            level += follow * away
            noise += (follow if follow < NOISE_SHARE else NOISE_SHARE) * (abs(b - last) / MEAN_STEP - noise)
            last_s, last = t, b
        else:
            at = len(blocks)
        self.level_nm, self._noise_nm, self._last_s, self._last_nm = level, noise, last_s, last
        self._blocks += at - begin
        return at

    def _run_loaded(self, times: list[float], blocks: list[float], at: int) -> int:
        """Go on as long as the torque stays within what the load has seen, and not far below its maximum."""
        if self.may_be_cut:
            return at
        sign, most = self._sign_and_most()
        floor, begin = self.level_nm + sign * RESTS * most, at
        high, low = self.level_nm + self._high_nm, self.level_nm + self._low_nm
        still, limit = self._still_nm, self._still_limit()
        for at in range(begin, len(blocks)):
            b = blocks[at]
            if b > high or b < low or (b - floor) * sign < 0 or abs(b - still) > limit:
                break
        else:
            at = len(blocks)
        if at > begin:
            self._low_since = None
            self._last_s, self._last_nm = times[at - 1], blocks[at - 1]
            self._blocks += at - begin
        return at

    def _sign_and_most(self) -> tuple[float, float]:
        return (1.0, self._high_nm) if self._high_nm >= -self._low_nm else (-1.0, -self._low_nm)

    def _still_limit(self) -> float:
        return max(self._least_nm, 2 * THRESHOLD_NOISES * self._noise_nm)

    def finish(self) -> list[Span]:
        """Close the load that is still open."""
        if not self._loaded:
            return []
        self._loaded = False
        seen = self._blocks
        return [Span(self._start, seen, self.level_nm, self.may_be_cut, to_end=True, seen=seen)]

    def _rest(self, t: float, b: float) -> Span | None:
        if t < self._settled_s and abs(b - self._before_nm) <= self._again_nm:  # rings, or the lever swings
            still = abs(b - self._last_nm) < max(self._least_nm, THRESHOLD_NOISES * self._noise_nm)
            self.level_nm, self._still = b, self._still + 1 if still else 0
            if self._still >= STILL_BLOCKS:
                self._settled_s = t
            return None
        if t < self._settled_s:
            self.level_nm, self._settled_s = self._before_nm, -np.inf  # a valley between two grips is no rest
        away = b - self.level_nm
        if abs(away) > max(self._least_nm, THRESHOLD_NOISES * self._noise_nm) and self._blocks >= LEARN_BLOCKS:
            self._open(t, b)
        elif self._blocks < LEARN_BLOCKS:
            self.level_nm += 0.5 * away
            share = 1 / max(self._blocks, 1)  # a plain mean of the steps so far
            self._noise_nm += share * (abs(b - self._last_nm) / MEAN_STEP - self._noise_nm)
        return None

    def _open(self, t: float, b: float) -> None:
        away = b - self.level_nm
        self._loaded, self._start, self._low_since, self._shelf = True, self._blocks, None, None
        self._began_still = t - self._first_s > BEGAN_STILL_S
        self._high_nm, self._low_nm = max(away, 0.0), min(away, 0.0)
        self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks

    def _step(self, t: float, b: float) -> Span | None:
        away = b - self.level_nm
        self._high_nm, self._low_nm = max(self._high_nm, away), min(self._low_nm, away)
        sign, most = self._sign_and_most()
        if self.may_be_cut:
            if abs(b) < RELEASED * abs(self.level_nm):
                return self._low(t, b, from_start=True)
            self._low_since = None
            if self._began_still and abs(b) > GROWS * abs(self.level_nm):
                self._begins_loaded = False
            return None
        if sign * away < -RELEASED * most:  # straight into a load the other way
            return self._close(self._blocks, t, b, again=True)
        if sign * away < RELEASED * most:
            return self._low(t, b)
        self._low_since = None
        if abs(b - self._still_nm) > self._still_limit():
            if t - self._still_since_s > RESTS_S:
                self._shelf = self._still_nm, self._still_since, self._blocks
            self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks
        elif sign * away < RESTS * most and t - self._still_since_s > RESTS_S:
            return self._close(self._still_since, t, b)
        if self._shelf is not None and abs(away) > GROWS * abs(self._shelf[0] - self.level_nm):
            # what came before was the lever put in place; the load begins only now
            self.level_nm, self._first = self._shelf[0], False
            start = self._shelf[2]
            self._open(t, b)
            self._start = start
        return None

    def _low(self, t: float, b: float, *, from_start: bool = False) -> Span | None:
        if self._low_since is None:
            self._low_since, self._low_since_s = self._blocks, t
        if t - self._low_since_s < RELEASED_S:
            return None
        if from_start:
            self._start = 0
        return self._close(self._low_since, t, b, from_start=from_start)

    def _close(self, end: int, t: float, b: float, *, again: bool = False, from_start: bool = False) -> Span:
        span = Span(self._start, end, self.level_nm, from_start, seen=self._blocks + 1)
        self._first = False
        if again:
            self._open(t, b)
        else:
            self._loaded, self._low_since = False, None
            self._before_nm = b if from_start else self.level_nm
            self._again_nm = AGAIN * max(self._high_nm, -self._low_nm)
            self.level_nm, self._settled_s, self._still = b, t + RINGS_S, 0
        return span
