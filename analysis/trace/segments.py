"""Where a load on the lever begins and ends.

The trace is cut into short blocks; the median of each block is compared with the level at rest by a small state
machine with hysteresis. A load is measured by its own height: what is small beside it is rest, whatever it was taken
for while it lasted. Every decision looks back only, so a growing stream and a whole file give the same spans. Whether a
span is a pull, a bump or an aborted load is decided later, from its shape (``analysis.trace.pulls``).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.loads import LEVER

if TYPE_CHECKING:
    from analysis.trace.traces import Floats, Sensor

BLOCK_S = 0.05
"""Length of a block (s): short against the quickest hand-made ramp (0.2 s), long enough to rob a spike of its vote."""

LEVEL_S = 1.0
"""Time constant with which the level at rest is followed (s)."""

THRESHOLD_NOISES = 6.0
"""A load begins this many deviations of the block medians away from rest; normal noise does that once in 10^9."""

THRESHOLD_OF_CAPACITY = 0.003
"""... and this share of the capacity away: less is below what a transducer is good for (ISO 376 classes end at 2 %)."""

RELEASED = 0.25
"""A load has ended when the torque is below this share of its maximum ..."""

RELEASED_S = 0.15
"""... for this long (s): stick-slip and ringing come back sooner."""

RESTS, RESTS_S = 0.5, 1.0
"""A load has also ended when the torque lies still below this share of its maximum for this long (s): the lever hangs
differently ..."""

SLIPPED_S = 0.4
"""... if it had kept above that share for this long (s) after its maximum. After a sharper peak, what lies still is the
plateau."""

RESTLESS = 1.5
"""A stream that begins under load is at rest when it is so much quieter, and nearer to the transducer's zero."""

SEEN_S = 0.25
"""So much of the time between two blocks counts (s): what was in a gap nobody saw."""

GROWS = 2.9
"""A load that grows to so many times a level at which it had lain still is a new one, from that level on ..."""

STILL_SHARE = 0.1
"""What changes by more than this share of the load's maximum does not lie still, however noisy the readings are."""

LIES_S = 0.3
"""... for this long (s): the lever was put in place."""

HIGH = 0.8
"""A load that lay still above this share of its maximum may have been a lever, if a far greater one follows at once."""

TURNED = 0.4
"""A load that came straight out of one the other way counts from the level before both if that was so large beside it:
less was no stroke."""

SETTLES = 0.7
"""What lies still on the other side after a release, at less than this share of what was released, is the lever that
hangs there now."""

RINGS = 0.05
"""It is seen to hang while it still rings, within this share of how far it swung over, if it swung back by more."""

BEGAN_STILL_S = 0.5
"""A stream that kept to its first level for this long (s) before growing so much began at rest after all."""

RINGS_S = 1.5
"""After a release the lever rings and falls into place for at most this long (s) ..."""

STILL_BLOCKS = 3
"""... or until this many blocks in a row did not move (fewer show nothing: a gap is long as well) ..."""

AGAIN = 0.5
"""... unless the torque comes back to this share of the maximum before: that is the next load."""

NOISE_SHARE = 0.1
"""How much of each block's step goes into the running noise: about the last ten blocks count."""

MEAN_STEP = 1.128
"""Mean step between neighbours of white noise, in standard deviations (2/√π)."""


@dataclass(frozen=True, slots=True)
class Span:
    """One load: blocks [start, end), counted from the beginning of the stream.

    ``level_nm`` is the level at rest before it. ``from_start``: no rest came before; ``to_end``: the stream ended
    before the release; ``reversed``: it came straight out of a load of its size the other way. ``seen``: blocks seen
    when the span was closed; nothing later is used. ``height_nm`` is about its highest torque from that level,
    ``upwards`` its sign.
    """

    start: int
    end: int
    level_nm: float
    from_start: bool = False
    to_end: bool = False
    reversed: bool = False
    seen: int = 0
    height_nm: float = 0.0
    upwards: bool = True


@dataclass(frozen=True, slots=True)
class _Shelf:
    """A level at which the load lay still, and the blocks of that."""

    level_nm: float
    first: int
    last: int


class Segmenter:
    """Finds spans in a stream of block medians.

    Args:
        resolution_nm: Smallest step of the reading.
        noise_nm: Deviation of a block's median, as far as the stream's beginning tells.
        begins_loaded: Whether the stream seems to begin in the middle of a pull.
    """

    def __init__(
        self, sensor: Sensor, resolution_nm: float, *, noise_nm: float = 0.0, begins_loaded: bool = False
    ) -> None:
        self._least_nm = max(THRESHOLD_OF_CAPACITY * (sensor.capacity_nm or 0.0), 2 * resolution_nm)
        self._begins_loaded = begins_loaded
        self._last_s, self._last_nm = -np.inf, 0.0  # the block before
        self.level_nm, self._noise_nm = 0.0, noise_nm  # at rest
        self._first_s = 0.0  # time of the first block
        self._began_still = False  # the load now open did not begin right with the stream
        self._first = True  # no load has been seen
        self._loaded = False
        self._turned_nm = 0.0  # height of the load the other way that it came straight out of
        self._settled_s = -np.inf  # the release before has rung down by then
        self._still = 0  # blocks in a row that were still after it
        self._before_nm = self._again_nm = 0.0  # further than this from the level before, it is a new load
        self._start = 0  # of the load now open: block, and what was highest and lowest in it, against rest
        self._high_nm = self._low_nm = 0.0
        self._top_nm, self._slipped_s = 0.0, 0.0  # the maximum when it last clearly grew; time near it since
        self._low_since: int | None = None
        self._low_since_s, self._low_cut = 0.0, False
        self._still_since_s = 0.0  # the torque has kept to still_nm since
        self._still_since = 0
        self._still_nm = 0.0
        self._steps_nm = 0.0  # deviation of the blocks while it lies still
        self._opened_s = self._hangs_since_s = 0.0  # the load began; the torque has rung about hangs_nm since
        self._hangs_nm = self._back_nm = 0.0  # ... and came back so low after its maximum
        self._shelf: _Shelf | None = None  # the last still stretch in the load
        self._aside: tuple[Span, _Shelf] | None = None  # a load or a lever: the next load shows
        self._blocks = 0

    @property
    def open_since(self) -> int | None:
        """Block in which the load now open began; None at rest."""
        return (self._aside[0].start if self._aside else self._start) if self._loaded else None

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
            if self._loaded:
                spans += self._step(t, b)
            else:
                self._rest(t, b)
            self._last_s, self._last_nm = t, b
            self._blocks += 1
            at += 1
        return spans

    def _run_rest(self, times: list[float], blocks: list[float], at: int) -> int:
        """Follow level and noise as long as nothing happens; this and the next are the loops that cost time."""
        if times[at] < self._settled_s:
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
        if self._first or self._aside is not None:
            return at
        high, low = self.level_nm + self._high_nm, self.level_nm + self._low_nm
        if not low <= blocks[at] <= high:
            return at
        sign, most = self._sign_and_most()
        if most < SETTLES * self._turned_nm:  # no load yet, but a lever that may come to rest
            return at
        floor, begin = self.level_nm + sign * RESTS * most, at
        still, limit = self._still_nm, self._still_limit()
        for at in range(begin, len(blocks)):
            b = blocks[at]
            if b > high or b < low or (b - floor) * sign < 0 or abs(b - still) > limit:
                break
        else:
            at = len(blocks)
        if at > begin:
            self._low_since = None
            self._slipped_s += min(times[at - 1] - self._last_s, (at - begin) * SEEN_S)
            self._last_s, self._last_nm = times[at - 1], blocks[at - 1]
            self._blocks += at - begin
        return at

    def _sign_and_most(self) -> tuple[float, float]:
        return (1.0, self._high_nm) if self._high_nm >= -self._low_nm else (-1.0, -self._low_nm)

    def _still_limit(self) -> float:
        most = max(self._high_nm, -self._low_nm)
        return max(self._least_nm, min(2 * THRESHOLD_NOISES * self._noise_nm, STILL_SHARE * most))

    def finish(self) -> list[Span]:
        """Close the load that is still open."""
        if not self._loaded:
            return []
        self._loaded = False
        last = self._span(self._blocks, self._blocks, from_start=self.may_be_cut)
        if self._low_since is None:
            last = replace(last, to_end=True)
        else:  # let go just before
            last = replace(last, end=self._low_since, from_start=self._low_cut)
        return [*self._put_aside(self._blocks), last]

    def _span(self, end: int, seen: int, *, from_start: bool = False) -> Span:
        sign, most = self._sign_and_most()
        turned, up = self._turned_nm > TURNED * most, sign > 0
        return Span(self._start, end, self.level_nm, from_start, False, turned, seen, most, up)

    def _put_aside(self, seen: int) -> list[Span]:
        """Give back what was put aside."""
        aside, self._aside = self._aside, None
        return [] if aside is None else [replace(aside[0], seen=seen)]

    def _rest(self, t: float, b: float) -> None:
        if t < self._settled_s and abs(b - self._before_nm) <= self._again_nm:  # rings, or the lever swings
            still = abs(b - self._last_nm) < max(self._least_nm, THRESHOLD_NOISES * self._noise_nm)
            self.level_nm, self._still = b, self._still + 1 if still else 0
            if self._still >= STILL_BLOCKS:
                self._settled_s = t
            return
        if t < self._settled_s:
            self.level_nm, self._settled_s = self._before_nm, -np.inf  # a valley between two grips is no rest
        if abs(b - self.level_nm) > max(self._least_nm, THRESHOLD_NOISES * self._noise_nm):
            self._open(t, b)

    def _open(self, t: float, b: float, *, turned_nm: float = 0.0) -> None:
        self._loaded, self._start, self._turned_nm = True, self._blocks, turned_nm
        self._low_since, self._shelf = None, None
        self._began_still = t - self._first_s > BEGAN_STILL_S
        self._high_nm = self._low_nm = 0.0
        self._top_nm, self._slipped_s = 0.0, 0.0
        self._reach(b)
        self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks
        self._opened_s = self._hangs_since_s = t
        self._hangs_nm = self._back_nm = max(self._high_nm, -self._low_nm)

    def _reach(self, b: float) -> None:
        away = b - self.level_nm
        self._high_nm, self._low_nm = max(self._high_nm, away), min(self._low_nm, away)

    def _step(self, t: float, b: float) -> list[Span]:
        self._reach(b)
        away = b - self.level_nm
        sign, most = self._sign_and_most()
        if self.may_be_cut:
            return self._step_cut(t, b)
        if sign * away < -RELEASED * most:  # straight into a load the other way
            return self._turn(t, b)
        if sign * away < RELEASED * most:
            return self._low(t, b)
        self._low_since = None
        self._steps_nm += NOISE_SHARE * (abs(b - self._last_nm) / MEAN_STEP - self._steps_nm)
        if most > 1.03 * self._top_nm:
            self._top_nm, self._slipped_s = most, 0.0
        elif sign * away > RESTS * most:
            self._slipped_s += min(t - self._last_s, SEEN_S)
        if abs(b - self._still_nm) > self._still_limit():
            self._leave_shelf(t)
            self._still_nm, self._still_since_s, self._still_since = b, t, self._blocks
            self._steps_nm = self._noise_nm
        elif sign * away < RESTS * most and t - self._still_since_s > RESTS_S:
            if self._slipped_s > SLIPPED_S:
                return self._close(self._still_since, t, b)
            if self._first and abs(b) < RELEASED * abs(self.level_nm) and self._noise_nm > RESTLESS * self._steps_nm:
                # what came before was the load
                self._start = 0
                return self._close(self._still_since, t, b, from_start=True)
        elif most < SETTLES * self._turned_nm and self._hangs(t, b):
            self._loaded, self._low_since = False, None
            self._rings(t, b, b, most)
            return self._put_aside(self._blocks + 1)
        self._lever_put_on(t, b)
        return []

    def _hangs(self, t: float, b: float) -> bool:
        """Whether a lever lies still at a small share of what was released, or swung over and back and rings by now.

        A stroke does not come back so far.
        """
        sign, most = self._sign_and_most()
        height = sign * (b - self.level_nm)
        self._back_nm = height if height >= most else min(self._back_nm, height)
        if abs(height - self._hangs_nm) > max(self._least_nm, RINGS * most):
            self._hangs_nm, self._hangs_since_s = height, t
        if t - self._still_since_s > LIES_S and most < LEVER * self._turned_nm:
            return True
        soon = self._hangs_since_s - self._opened_s < 2 * RINGS_S
        return soon and self._hangs_nm - self._back_nm > RINGS * most and t - self._hangs_since_s > LIES_S

    def _step_cut(self, t: float, b: float) -> list[Span]:
        if abs(b) < RELEASED * abs(self.level_nm):
            return self._low(t, b, from_start=True)
        self._low_since = None
        if self._began_still and abs(b) > GROWS * abs(self.level_nm):
            self._begins_loaded = False
        return []

    def _leave_shelf(self, t: float) -> None:
        if t - self._still_since_s > LIES_S and self._blocks - self._still_since >= STILL_BLOCKS:
            self._shelf = _Shelf(self._still_nm, self._still_since, self._blocks)

    def _lever_put_on(self, t: float, b: float) -> None:
        """Begin anew from where the load lay still, if that is little beside what it has become."""
        shelf = self._shelf if self._aside is None else self._aside[1]
        if shelf is None or abs(b - shelf.level_nm) < GROWS * abs(shelf.level_nm - self.level_nm):
            return
        self.level_nm, self._first, self._aside = shelf.level_nm, False, None
        self._open(t, b)
        self._start = shelf.last

    def _low(self, t: float, b: float, *, from_start: bool = False) -> list[Span]:
        if self._low_since is None:
            self._low_since, self._low_since_s, self._low_cut = self._blocks, t, from_start
        if t - self._low_since_s < RELEASED_S:
            return []
        if from_start:
            self._start = 0
        return self._close(self._low_since, t, b, from_start=from_start)

    def _turn(self, t: float, b: float) -> list[Span]:
        """Go straight into a load the other way; what lay still before may have been a lever: the next load shows."""
        self._leave_shelf(t)
        seen = self._blocks + 1
        shelf, before = self._shelf, self._put_aside(seen)
        span = self._span(self._blocks, seen)
        _, most = self._sign_and_most()
        if shelf is not None and abs(shelf.level_nm - self.level_nm) > HIGH * most:
            self._aside = span, shelf
            now = before
        else:
            now = [*before, span]
        self._first = False
        self._open(t, b, turned_nm=most)
        return now

    def _close(self, end: int, t: float, b: float, *, from_start: bool = False) -> list[Span]:
        seen = self._blocks + 1
        span = self._span(end, seen, from_start=from_start)
        self._first = False
        self._loaded, self._low_since = False, None
        _, most = self._sign_and_most()
        self._rings(t, b, b if from_start else self.level_nm, AGAIN * most)
        return [*self._put_aside(seen), span]

    def _rings(self, t: float, b: float, before_nm: float, again_nm: float) -> None:
        """Wait until the lever has rung down, unless the torque goes further than this from the level before."""
        self._before_nm, self._again_nm = before_nm, again_nm
        self.level_nm, self._settled_s, self._still = b, t + RINGS_S, 0
