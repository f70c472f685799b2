"""A device's wrap-around counter: what was lost, sent twice, or came late.

Conventions
-----------
- A counter counts packets (or lines, or frames), or samples; it wraps at ``modulus``.
- A packet that is behind the newest one by at most ``LATE_PACKETS`` steps is a duplicate or late; anything else that
  is not the next one is ahead, and what lies between is lost. A loss that is a whole number of wraps cannot be seen
  from the counter alone; whoever knows how long nothing arrived says so with ``expect``.
- The unwrapped counter counts samples and begins at the device's own value: of a device that counts samples it is that
  value, carried on over every wrap; of one that counts packets of n samples, value x n + place in the packet.
- Packets that change places within one drain are put back in order; one that comes after a later drain began is
  dropped and counted: its samples have been counted as lost by then.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from logger.samples import Ints

# Radio and serial stacks deliver in order; a retransmission or a relay can hold back a few packets, not dozens.
LATE_PACKETS: Final = 16
# After a silence, how far the counter may be from where the clock expects it and still be taken as counting on:
# clocks of cheap devices keep time to far better than 2 %. How well its edges are known is said with ``expect``.
DRIFT: Final = 0.02


@dataclass(frozen=True, slots=True)
class Placed:
    """Where the packets of one drain belong.

    Attributes
    ----------
    keep : ndarray of int, shape (k,)
        Indices of the packets to use, in counter order.
    first : ndarray of int, shape (k,)
        Unwrapped counter of each kept packet's first sample, in samples.
    lost : ndarray of int, shape (k,), or None
        Samples lost just before each kept packet; None: everything came as due.
    duplicates, late, reordered : int
        Packets dropped as already seen, dropped as too late, and put back in order.
    anew_at : int or None
        The counter began anew, at this value, after a silence: what was lost is an estimate.
    """

    keep: Ints
    first: Ints
    lost: Ints | None = None
    duplicates: int = 0
    late: int = 0
    reordered: int = 0
    anew_at: int | None = None


class Unwrapper:
    """Follows one counter.

    Parameters
    ----------
    modulus : int
        Where it wraps: 65536 for 16 bits.
    counts_samples : bool
        It advances by the number of samples in a packet, not by one a packet.
    step : int
        What it advances by per packet or sample.
    """

    def __init__(self, modulus: int, *, counts_samples: bool = False, step: int = 1) -> None:
        self.modulus = modulus
        self._counts_samples = counts_samples
        self._step = step
        self._next: int | None = None  # the raw value due next
        self._sample = 0  # the unwrapped sample counter due next
        # Raw values seen lately: they tell a duplicate from a late packet.
        self._recent: deque[int] = deque(maxlen=4 * LATE_PACKETS)
        self._expected: float | None = None
        self._leeway = 0.0

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due while nothing arrived (a silence, a lost connection), give or take."""
        self._expected = (self._expected or 0.0) + samples
        self._leeway = max(self._leeway, leeway)

    def run_on(self, raw: Ints) -> Ints | None:
        """Take single samples whose counter runs on as due, in one step; None, and nothing taken, if it does not.

        Parameters
        ----------
        raw : ndarray of int, shape (n,)
            At least one.

        Returns
        -------
        ndarray of int, shape (n,), or None
            Unwrapped counter of each sample.
        """
        due, step, count = self._next, self._step, len(raw)
        first, last = int(raw[0]), int(raw[-1])
        if self._expected is not None or due != first or last - first != step * (count - 1):
            return None
        if (raw[1:] - raw[:-1] != step).any():
            return None
        unwrapped = np.arange(self._sample, self._sample + count)
        self._next = (last + step) % self.modulus
        self._sample += count
        self._recent.extend(raw[-4 * LATE_PACKETS :].tolist())
        return unwrapped

    def feed(self, raw: Ints, sizes: Ints) -> Placed:
        """Place the packets of one drain.

        Parameters
        ----------
        raw : ndarray of int, shape (n,)
            Counter of each packet as received.
        sizes : ndarray of int, shape (n,)
            Samples in each packet.
        """
        if not len(raw):
            none = np.empty(0, np.int64)
            return Placed(none, none)
        advance = (sizes if self._counts_samples else np.ones_like(sizes)) * self._step
        due = np.empty(len(raw), np.int64)
        if self._next is None:
            self._sample = int(raw[0]) * int(sizes[0]) // int(advance[0])
        due[0] = raw[0] if self._next is None else self._next
        due[1:] = (raw[:-1] + advance[:-1]) % self.modulus
        if self._expected is None and np.array_equal(due, raw):
            placed = self._in_order(sizes)
        else:
            placed = self._sorted(raw, sizes, advance)
        if len(placed.keep):
            self._remember(raw, sizes, advance, placed)
        return placed

    def _in_order(self, sizes: Ints) -> Placed:
        first = np.cumsum(sizes)
        first += self._sample - sizes
        return Placed(np.arange(len(sizes)), first)

    def _remember(self, raw: Ints, sizes: Ints, advance: Ints, placed: Placed) -> None:
        last = placed.keep[-1]
        self._next = int(raw[last] + advance[last]) % self.modulus
        self._sample = int(placed.first[-1] + sizes[last])
        self._recent.extend(raw[placed.keep[-4 * LATE_PACKETS :]].tolist())

    def _sorted(self, raw: Ints, sizes: Ints, advance: Ints) -> Placed:
        """Place packets one by one: for the rare drain in which something is missing, double or late."""
        due, estimate = self._after_silence(int(raw[0]), int(sizes[0]), int(advance[0]))
        origin = int(raw[0]) if self._next is None else self._next
        positions = np.empty(len(raw), np.int64)  # counter steps ahead of the value that was due, unwrapped
        for index, value in enumerate(raw.tolist()):
            step = int(advance[index])
            behind = (due - (value - origin)) % self.modulus
            if 0 < behind <= min(LATE_PACKETS * step, self.modulus // 4):
                positions[index] = due - behind
            else:
                positions[index] = due + (-behind) % self.modulus
                due = int(positions[index]) + step
        return self._order(positions, raw, sizes, advance, estimate)

    def _after_silence(self, value: int, size: int, advance: int) -> tuple[int, int | None]:
        """Give how far ahead the first packet after a silence lies; if the counter began anew, estimate the loss."""
        expected, self._expected = self._expected, None
        leeway, self._leeway = max(self._leeway, LATE_PACKETS * size), 0.0
        if expected is None or self._next is None:
            return 0, None
        steps = round(expected * advance / size)
        half = self.modulus // 2
        ahead = steps + (value - self._next - steps + half) % self.modulus - half
        if ahead >= 0 and abs(ahead - steps) <= DRIFT * steps + leeway * advance / size:
            return ahead, None
        paused = (value - self._next) % self.modulus
        if paused <= LATE_PACKETS * advance:  # the device only paused, and counts on where it was
            return paused, None
        self._next = value
        self._recent.clear()
        return 0, round(expected)

    def _order(self, positions: Ints, raw: Ints, sizes: Ints, advance: Ints, estimate: int | None) -> Placed:
        keep: list[int] = []
        lost: list[int] = []
        first: list[int] = []
        duplicates = late = due = 0
        sample, missing = self._sample, estimate or 0
        for index in np.argsort(positions, kind="stable").tolist():
            position, size = int(positions[index]), int(sizes[index])
            if position < due:
                seen = position >= 0 or int(raw[index]) in self._recent
                duplicates += seen
                late += not seen
                continue
            missing += (position - due) * size // int(advance[index])
            keep.append(index)
            lost.append(missing)
            first.append(sample + missing)
            sample += missing + size
            due = position + int(advance[index])
            missing = 0
        kept = np.array(keep, np.int64)
        return Placed(
            kept,
            np.array(first, np.int64),
            np.array(lost, np.int64),
            duplicates,
            late,
            int((np.diff(kept) < 0).sum()),
            anew_at=int(raw[0]) if estimate is not None else None,
        )
