"""When each sample was taken: from the device's counter where it has one, else from the arrival of its bytes.

Conventions:
- Arrivals are ``time.monotonic()`` seconds; times are seconds since the recording's first sample.
- Bytes can only ever be late. So the earliest arrival seen, relative to the counter, dates all samples.
- The rate is never learnt from a short record: over the first minutes a fit finds the connection's clock, not the
  device's. The nominal period holds; counter and arrival are recorded, so a fit can be made when reading.
- Times never go back: a better anchor is approached by at most half a period per drain.
"""

from __future__ import annotations

import math
from collections import deque
from typing import TYPE_CHECKING, Final, Literal, Protocol

import numpy as np

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.samples import Floats, Ints

WINDOW_S: Final = 5.0  # over which an undescribed rate is taken
FIRST_PERIOD_S: Final = 1e-3  # spread of a first burst, when nothing is known yet
LEAST_STEP_S: Final = 1e-6  # the recording's resolution of time


class Clock(Protocol):
    """Dates samples."""

    @property
    def time_from(self) -> Literal["device counter", "arrival"]:
        """What the times rest on; goes into the recording's header."""
        ...

    def date(self, arrival_s: Floats, counter: Ints | None) -> Floats:
        """Give the time of each sample of one drain.

        Args:
            arrival_s: shape (n,); Monotonic arrival of the chunk that completed each sample; never decreasing.
            counter: shape (n,); Unwrapped sample counter.
        """
        ...

    def at(self, arrival_s: float) -> float:
        """Give the time of something that was seen to happen at this monotonic moment; 0 before the first sample."""
        ...

    def restart(self) -> None:
        """Anchor anew: the device was away, and its counter may have begun again."""
        ...


class CounterClock:
    """Time = counter x nominal period, anchored at the earliest arrival.

    Args:
        period_s: Nominal, from the description.
    """

    time_from: Final = "device counter"

    def __init__(self, period_s: float) -> None:
        self._period_s = period_s
        self._first: int | None = None  # counter of the first sample: a device may count in billions
        self._anchor_s: float | None = None  # earliest arrival - counter x period
        self._used_s = 0.0  # the anchor in use
        self._zero_s: float | None = None
        self._last_s = -math.inf

    def date(self, arrival_s: Floats, counter: Ints | None) -> Floats:
        """Give the time of each sample of one drain."""
        if not len(arrival_s):
            return np.empty(0)
        if counter is None:
            raise ValueError("a counter clock needs a counter")
        if self._first is None:
            self._first = int(counter[0])
        ticks = (counter - self._first) * self._period_s
        earliest = float((arrival_s - ticks).min())
        if self._anchor_s is None:
            self._anchor_s = self._used_s = earliest
        self._anchor_s = min(self._anchor_s, earliest)
        self._used_s = max(self._anchor_s, self._used_s - self._period_s / 2)
        if self._zero_s is None:
            self._zero_s = float(ticks[0]) + self._used_s
        if ticks[0] + self._used_s - self._zero_s <= self._last_s:  # after a restart
            self._used_s = self._last_s + self._zero_s - float(ticks[0]) + self._period_s
        time_s: Floats = np.add(ticks, self._used_s - self._zero_s, dtype=np.float64)
        self._last_s = float(time_s[-1])
        return time_s

    def at(self, arrival_s: float) -> float:
        """Give the time of a monotonic moment."""
        return 0.0 if self._zero_s is None else arrival_s - self._zero_s

    def restart(self) -> None:
        """Anchor anew."""
        self._anchor_s = None


class ArrivalClock:
    """Time = arrival; samples that arrive together are spread over the time since the chunk before them.

    Args:
        period_s: Nominal: samples of one chunk lie no farther apart. Without it the rate of the last seconds serves.
    """

    time_from: Final = "arrival"

    def __init__(self, period_s: float | None = None) -> None:
        self._nominal_s = period_s
        self._seen: deque[tuple[float, int]] = deque()  # (arrival, samples until then)
        self._count = 0
        self._zero_s: float | None = None
        self._last_s: float | None = None  # arrival scale

    def date(self, arrival_s: Floats, counter: Ints | None = None) -> Floats:
        """Give the time of each sample of one drain."""
        if not len(arrival_s):
            return np.empty(0)
        period = self._period(float(arrival_s[-1]), len(arrival_s))
        ends = _bursts(arrival_s, period)
        last_s = self._last_s
        if last_s is None:
            last_s = float(arrival_s[0]) - ends[0] * period
        at, when = [-1.0], [last_s]  # known points between which samples are spread
        begin = 0
        for end in ends:
            arrival, size = float(arrival_s[end - 1]), end - begin
            if arrival - size * period > last_s:  # not over a pause before the burst
                at.append(begin - 0.999999)
                when.append(arrival - size * period)
            last_s = max(arrival, last_s + size * LEAST_STEP_S)
            at.append(end - 1.0)
            when.append(last_s)
            begin = end
        times = np.interp(np.arange(len(arrival_s)), at, when)
        self._last_s = last_s
        if self._zero_s is None:
            self._zero_s = float(times[0])
        time_s: Floats = times - self._zero_s
        return time_s

    def _period(self, arrival_s: float, count: int) -> float:
        """Give the nominal period, or that of the last seconds."""
        self._count += count
        self._seen.append((arrival_s, self._count))
        while len(self._seen) > 2 and arrival_s - self._seen[1][0] > WINDOW_S:
            self._seen.popleft()
        if self._nominal_s is not None:
            return self._nominal_s
        (first_s, first), (last_s, last) = self._seen[0], self._seen[-1]
        return (last_s - first_s) / (last - first) if last_s > first_s else FIRST_PERIOD_S

    def at(self, arrival_s: float) -> float:
        """Give the time of a monotonic moment."""
        return 0.0 if self._zero_s is None else arrival_s - self._zero_s

    def restart(self) -> None:
        """Forget the rate seen so far."""
        self._seen.clear()


def _bursts(arrival_s: Floats, period_s: float) -> list[int]:
    """Give the ends of bursts: a chunk that those behind it show to be late belongs to the burst that ends with them.

    A sample is taken no later than it arrives, and a period before the next one. Where the arrivals of a drain cannot
    all have been in time, the latest of them dates the others.
    """
    ends = np.append(np.flatnonzero(arrival_s[1:] != arrival_s[:-1]) + 1, len(arrival_s))
    start_s = arrival_s[ends - 1] - ends * period_s  # when the drain began, were this chunk in time
    earliest = np.minimum.accumulate(start_s[::-1])[::-1]
    in_time: list[int] = ends[start_s <= earliest + period_s / 2].tolist()
    return in_time


def build_clock(description: Description) -> Clock:
    """Build the clock that a description allows: by counter only if its nominal rate is known too."""
    rate = description.transducer.rate_hz
    period = 1.0 / rate if rate else None
    if description.has_counter and period is not None:
        return CounterClock(period)
    return ArrivalClock(period)
