"""A stream read as it grows: the same code that reads a file, fed in blocks of any size.

Every pull is stated as soon as its release is certain, from samples up to that moment only; what is stated does not
change. However the stream is cut into blocks, the pulls are the same to the last bit.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.gates import CATCH_UP_S, GAP_STEPS, caught_up_in
from analysis.trace.loads import COARSEST, LEVER, Window
from analysis.trace.neighbours import Neighbours
from analysis.trace.pulls import Read, read_pull
from analysis.trace.results import Code, Pull, TraceReading
from analysis.trace.segments import BLOCK_S, Segmenter, Span
from analysis.trace.smooth import block_means, least_noise, sample_noise
from analysis.trace.tail import Tail
from analysis.trace.traces import Intake, Sensor

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

    from analysis.trace.traces import Floats

FASTEST_S = 1e-6
"""Sample intervals below this (s) come from broken times, not from a transducer."""

HEAD_S, HEAD_LEAST, HEAD_MOST = 1.0, 8, 2000
"""Rate and beginning are judged by the first second, by so many samples at least and so many at most."""

LOADED_OF_CAPACITY = 0.04
"""A stream that begins nearer to zero than this share of the capacity begins at rest: a lever's weight is there."""

LOADED_UNREST = 0.01
"""... whose block means range over more than this share of its level: a pack that slips does, a lever does not ..."""

LOADED_SURELY = 0.15
"""... and one that begins beyond this share is under load, however still: at its limit a transducer is very still."""

WHOLE = 0.05
"""Readings lie whole steps apart within this share of a step."""

STILL_NOISES = 8.0
"""Range of block means, in deviations, that a lever at rest keeps within: 20 normal values range over 3.7."""

FOOT_S = 0.5
"""A soft ramp may have begun this long (s) before it is seen to be one."""

OF_ITS_SIZE = 0.3
"""A load of this share of another one's height is none of the rest before it."""

REST_S = 4.0
"""How much of the rest before a load is kept for the hand-off level (s)."""


class LiveReader:
    """Reads pulls from a stream; every pull stated is final.

    Args:
        sensor: What is known of the transducer.
    """

    def __init__(self, sensor: Sensor | None = None) -> None:
        self._sensor = sensor or Sensor()
        self._intake = Intake(self._sensor)
        self._tail = Tail()
        self._rate_hz = float("nan")
        self._block = 0  # samples in a block; 0: the rate is not yet known
        self._cut = 0  # number of the first sample not yet in a block
        self._resolution_nm = 0.0
        self._segments = Segmenter(self._sensor, 0.0)
        self._said = Neighbours(self._sensor)
        self._last: tuple[Read, Span] | None = None  # whatever the last load was
        self._before: Read | None = None  # the last pull that states a torque
        self._ends: list[Span] = []  # loads that ended lately: none of them is rest for one of their size
        self._zero_nm, self._noise_nm = 0.0, float("nan")
        self._gaps = _Gaps()

    def feed(self, time_s: ArrayLike, torque_nm: ArrayLike, angle_deg: ArrayLike | None = None) -> tuple[Pull, ...]:
        """Take the next block of samples; give the pulls that it completes.

        Raises:
            InputError: If the arrays are not columns of one length.
        """
        self._tail.append(self._intake.feed(time_s, torque_nm, angle_deg))
        return self._read(last=False)

    def finish(self) -> tuple[Pull, ...]:
        """End the stream; give the pulls that its end completes."""
        self._tail.append(self._intake.finish())
        return self._read(last=True)

    def reading(self) -> TraceReading:
        """Sum up what was read so far."""
        return TraceReading(
            rate_hz=self._rate_hz,
            zero_nm=self._zero_nm,
            noise_nm=self._noise_nm,
            pulls=tuple(self._said.pulls),
            problems=(*self._intake.counts.problems(), *self._gaps.problems(), *self._found()),
        )

    def _found(self) -> tuple[str, ...]:
        if self._intake.counts.samples == 0:
            return ("there are no samples",)
        if self._tail.end == 0:
            return ("no sample can be used",)
        lines = []
        if not any(pull.breakaway or pull.rotating for pull in self._said.pulls):
            lines.append("no pull with a torque to state was found")
        left_out = sum(pull.left_out for pull in self._said.pulls)
        if left_out:
            lines.append(f"{left_out} single values stood out like no torque can and were excluded from the pulls")
        if any(reason.code is Code.CLIPPED for pull in self._said.pulls for reason in pull.reasons):
            lines.append("the torque reached the transducer's limit")
        return tuple(lines)

    def _read(self, *, last: bool) -> tuple[Pull, ...]:
        if not self._block and not self._know_rate(last=last):
            return ()
        whole = (self._tail.end - self._cut) // self._block
        part = self._tail.samples(self._cut, self._cut + whole * self._block)
        self._gaps.look(part.time_s, 1 / self._rate_hz)
        half = self._block // 2
        medians = np.partition(part.torque_nm.reshape(whole, self._block), half, axis=1)[:, half]
        spans = self._segments.push(part.time_s[self._block - 1 :: self._block], medians)
        self._cut += whole * self._block
        if last:
            spans += self._segments.finish()
        pulls = tuple(pull for span in spans for pull in self._pulls_of(span))
        if last:
            pulls += self._said.finish()
        if last and np.isnan(self._noise_nm):
            self._learn_rest(self._cut, self._segments.level_nm)
        self._forget()
        return pulls

    def _know_rate(self, *, last: bool) -> bool:
        """Take rate, block length and step of the reading from the first samples, once there are enough."""
        head = self._tail.samples(0, HEAD_MOST)
        enough = np.flatnonzero(head.time_s - head.time_s[:1] >= HEAD_S)
        if len(enough):
            head = self._tail.samples(0, max(int(enough[0]) + 1, HEAD_LEAST))
        if len(head) < (2 if last else HEAD_LEAST if len(enough) else HEAD_MOST):
            return False
        self._rate_hz = 1 / max(float(np.median(np.diff(head.time_s))), FASTEST_S)
        self._block = max(1, round(BLOCK_S * self._rate_hz))
        least, likely = _steps(head.torque_nm)
        self._resolution_nm = self._sensor.resolution_nm or least
        loaded = self._begins_loaded(head.torque_nm)
        noise = 1.25 * least_noise(head.torque_nm) / float(np.sqrt(self._block))  # of a median
        self._segments = Segmenter(
            self._sensor, self._sensor.resolution_nm or likely, noise_nm=noise, begins_loaded=loaded
        )
        return True

    def _begins_loaded(self, head: Floats) -> bool:
        """Whether the stream begins under load: far from zero, and not as still as a lever that hangs."""
        level = float(np.median(head))
        if abs(float(np.median(head[: self._block]))) < abs(level) / 2:
            return False
        if abs(level) > LOADED_SURELY * (self._sensor.capacity_nm or np.inf):
            return True
        if len(head) < 2 * self._block or abs(level) < LOADED_OF_CAPACITY * (self._sensor.capacity_nm or 0.0):
            return False
        means = block_means(head, self._block)
        noise = max(sample_noise(head), self._resolution_nm / np.sqrt(12)) / np.sqrt(self._block)
        wide = float(np.ptp(means))
        return bool(max(STILL_NOISES * noise, LOADED_UNREST * abs(level)) < wide < abs(level) / 2)

    def _pulls_of(self, span: Span) -> tuple[Pull, ...]:
        if np.isnan(self._noise_nm):
            self._learn_rest(span.start * self._block, span.level_nm)
        read = read_pull(self._window(span), self._before, self._sensor)
        if read is None or not read.handled:
            self._ends.append(span)
        if read is None:
            return ()
        self._last = read, span
        if read.states:
            self._before = read
        if self._intake.clock_set:
            read = replace(read, pull=self._as_written(read.pull))
        return self._said.take(read)

    def _as_written(self, pull: Pull) -> Pull:
        """Give the pull with times as they stand in the file."""
        shift = pull.start_s - self._intake.as_written(pull.start_s)
        b, r = pull.breakaway, pull.rotating
        return replace(
            pull,
            start_s=pull.start_s - shift,
            end_s=pull.end_s - shift,
            breakaway=None if b is None else replace(b, time_s=b.time_s - shift),
            rotating=None if r is None else replace(r, start_s=r.start_s - shift, end_s=r.end_s - shift),
        )

    def _learn_rest(self, stop: int, level_nm: float) -> None:
        """Take zero and noise from the first rest, as far as the first load leaves it alone."""
        rest = self._tail.samples(stop - round(REST_S * self._rate_hz), stop - round(FOOT_S * self._rate_hz)).torque_nm
        self._zero_nm = float(np.median(rest)) if len(rest) else level_nm
        self._noise_nm = sample_noise(rest)

    def _window(self, span: Span) -> Window:
        start, end = span.start * self._block, span.end * self._block
        least = max(start - round(REST_S * self._rate_hz), self._tail.first)
        self._ends = [s for s in self._ends if s.end * self._block > least]
        low = max([least, *(s.end * self._block for s in self._ends if s.height_nm > OF_ITS_SIZE * span.height_nm)])
        return Window(
            samples=self._tail.samples(low, span.seen * self._block),
            first=start - low,
            last=end - low,
            level_nm=span.level_nm,
            from_start=span.from_start,
            to_end=span.to_end,
            reversed=span.reversed,
            resolution_nm=self._resolution_nm,
            gripped_nm=self._gripped(span, upwards=span.upwards),
            turned_nm=self._gripped(span, upwards=not span.upwards),
            earlier_nm=self._tail.samples(least, low).torque_nm if low > least else None,
            of_stream=low == 0,
        )

    def _gripped(self, span: Span, *, upwards: bool) -> float | None:
        """Give the hand-off level of a load of this size that ended just before and went this way."""
        if self._last is None or self._last[1].height_nm < OF_ITS_SIZE * span.height_nm:
            return None
        read, last = self._last
        if (span.start - last.end) * self._block / self._rate_hz >= REST_S:
            return None
        if last.from_start and read.height_nm < LEVER * span.height_nm:  # or was it a lever that swung?
            return last.level_nm if upwards == span.upwards else None
        if (read.handled or read.jerked) and last.upwards != span.upwards:  # a lever that was put on or taken off
            return None
        return read.pull.handoff_nm if last.upwards == upwards else None

    def _forget(self) -> None:
        """Give up what no later span can need."""
        needed = self._segments.open_since
        start = self._cut if needed is None else needed * self._block
        if not self._segments.may_be_cut:
            self._tail.forget(start - round(REST_S * self._rate_hz) - self._block)


@dataclass(slots=True)
class _LongStep:
    """A long step in time; the samples behind it show whether they were late or some are missing."""

    before_s: float
    after_s: float
    seen: int = 0
    least: float = float("inf")  # samples that are missing, at the least

    def look(self, time_s: Floats, interval_s: float, most: int) -> None:
        part = time_s[: most - self.seen]
        if len(part):
            missing = (part - self.before_s) / interval_s - np.arange(self.seen + 1, self.seen + 1 + len(part))
            self.least = min(self.least, float(missing.min()))
            self.seen += len(part)


def _steps(torque_nm: Floats) -> tuple[float, float]:
    """Give the least that lies between two of few readings, and what step that makes likely.

    It is the step, unless what lies between others is no multiple of it, as on a ramp: then the step is much finer.
    """
    apart = np.diff(np.unique(torque_nm))
    if not len(apart):
        return 0.0, 0.0
    least = float(apart.min())
    if least < COARSEST * apart.sum():  # so fine that it does not matter
        return least, least
    steps = apart / least
    whole = bool(np.abs(steps - steps.round()).max() < WHOLE)
    return least, least if whole else COARSEST * least


class _Gaps:
    """Counts steps in time that are longer than the rate explains; see ``gates.gaps``."""

    def __init__(self) -> None:
        self._last_s = float("inf")  # nothing is missing before the first sample
        self._open: list[_LongStep] = []
        self._lost: list[_LongStep] = []

    def look(self, time_s: Floats, interval_s: float) -> None:
        if not len(time_s):
            return
        most = caught_up_in(interval_s)
        for step in self._open:
            step.look(time_s, interval_s, most)
        limit = GAP_STEPS * interval_s
        steps = np.diff(time_s)
        if time_s[0] - self._last_s > limit:
            self._lose(self._last_s, time_s, interval_s, most)
        if steps.max(initial=0.0) > limit:
            for at in np.flatnonzero(steps > limit).tolist():
                self._lose(float(time_s[at]), time_s[at + 1 :], interval_s, most)
        self._lost += [step for step in self._open if step.seen >= most and _missing(step)]
        self._open = [step for step in self._open if step.seen < most]
        self._last_s = float(time_s[-1])

    def _lose(self, before_s: float, time_s: Floats, interval_s: float, most: int) -> None:
        step = _LongStep(before_s, float(time_s[0]))
        step.look(time_s, interval_s, most)
        self._open.append(step)

    def problems(self) -> tuple[str, ...]:
        # What came last may be late without anything behind it to show that; a longer step is no lateness.
        undecided = (step for step in self._open if step.after_s - step.before_s > CATCH_UP_S)
        lost = [*self._lost, *filter(_missing, undecided)]
        if not lost:
            return ()
        lost_s = sum(step.after_s - step.before_s for step in lost)
        return (f"{len(lost)} gaps in the stream, {lost_s:.3g} s in all, the first at {lost[0].before_s:.3f} s",)


def _missing(step: _LongStep) -> bool:
    return step.least > GAP_STEPS - 1
