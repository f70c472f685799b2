"""A device's wrap-around counter: what was lost, sent twice, or came late.

Conventions:
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
# ... and what is sent twice comes at the latest when so many packets more were due.
SENT_AGAIN: Final = 4
# After a silence, how far the counter may be from where the clock expects it and still be taken as counting on:
# clocks of cheap devices keep time to far better than 2 %. How well its edges are known is said with ``expect``.
# Samples that did not wait come later and later by no more than this, too.
DRIFT: Final = 0.02


@dataclass(frozen=True, slots=True)
class Placed:
    """Where the packets of one drain belong."""

    keep: Ints  # shape (k,); indices of the packets to use, in counter order
    first: Ints  # shape (k,); unwrapped counter of each kept packet's first sample, in samples
    lost: Ints | None = None  # shape (k,); samples lost just before each kept packet; None: everything came as due
    # duplicates, late, reordered: packets dropped as already seen, dropped as too late, and put back in order
    duplicates: int = 0
    late: int = 0
    reordered: int = 0
    anew_at: int | None = None  # the counter began anew, at this value, after a silence: what was lost is an estimate
    # which kept packet came after a loss that is an estimate: the counter began anew, or it stands where both a device
    # that counted on (which is taken for true) and one that began anew could be
    unsure_at: int | None = None


@dataclass(frozen=True, slots=True)
class _Doubt:
    """What is doubtful behind a silence: which packet of the drain, where the counter began anew, and whether."""

    index: int = -1
    anew_at: int | None = None
    unsure: bool = False


_NO_DOUBT: Final = _Doubt()


class Unwrapper:
    """Follows one counter.

    Args:
        modulus: Where it wraps: 65536 for 16 bits.
        counts_samples: It advances by the number of samples in a packet, not by one a packet.
        step: What it advances by per packet or sample.
    """

    def __init__(self, modulus: int, *, counts_samples: bool = False, step: int = 1) -> None:
        self.modulus = modulus
        self._counts_samples = counts_samples
        self._step = step
        self._next: int | None = None  # the raw value due next
        self._sample = 0  # the unwrapped sample counter due next
        # Raw values seen lately, no farther back than a packet may be late: they tell a duplicate from a late packet.
        self._recent: deque[int] = deque(maxlen=LATE_PACKETS)
        self._expected: float | None = None
        self._leeway = 0.0
        self._quiet = False  # nothing has come since samples were expected

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due while nothing arrived (a silence, a lost connection), give or take."""
        self._expected = (self._expected or 0.0) + samples
        self._leeway = max(self._leeway, leeway)
        self._quiet = True

    def forget(self) -> None:
        """Say that nothing that was received can come again: another connection begins."""
        self._recent.clear()

    def run_on(self, raw: Ints) -> Ints | None:
        """Take single samples whose counter runs on as due, in one step; None, and nothing taken, if it does not.

        Args:
            raw: shape (n,); At least one.

        Returns:
            shape (n,); Unwrapped counter of each sample.
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
        self._recent.extend(raw[-LATE_PACKETS:].tolist())
        return unwrapped

    def feed(self, raw: Ints, sizes: Ints) -> Placed:
        """Place the packets of one drain.

        Args:
            raw: shape (n,); Counter of each packet as received.
            sizes: shape (n,); Samples in each packet.
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
        self._quiet = False
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
        self._recent.extend(raw[placed.keep[-LATE_PACKETS:]].tolist())

    def _sorted(self, raw: Ints, sizes: Ints, advance: Ints) -> Placed:
        """Place packets one by one: for the rare drain in which something is missing, double or late.

        After a silence those come first that had waited somewhere; the first jump is what the silence cost.
        """
        origin = int(raw[0]) if self._next is None else self._next
        due, doubt, seen = 0, _NO_DOUBT, set(self._recent)
        positions = np.empty(len(raw), np.int64)  # counter steps ahead of the value that was due, unwrapped
        for index, value in enumerate(raw.tolist()):
            step, size = int(advance[index]), int(sizes[index])
            ahead = (value - origin - due) % self.modulus
            behind = -ahead % self.modulus
            late = 0 < behind <= min(LATE_PACKETS * step, self.modulus // 4)
            again = late and value in seen and not (index == 0 and self._may_be_anew(value, step, size))
            if ahead and self._expected is not None and self._next is not None and not again:
                ahead, doubt = self._after_silence(value, ahead, step, size, index)
                origin, late = value - due - ahead, False
            seen.add(value)
            positions[index] = due - behind if late else due + ahead
            if not late:
                due = int(positions[index]) + step
                self._waited(size)
        return self._order(positions, raw, sizes, advance, doubt)

    def _may_be_anew(self, value: int, step: int, size: int) -> bool:
        """Whether the first packet after a silence may count from a new beginning, though its value was seen before.

        What is sent twice comes within a few packets of its first; a device that began anew is no farther than due.
        """
        due = ((self._expected or 0.0) - self._leeway) / size
        return self._quiet and due > SENT_AGAIN and value <= due * step * (1 + DRIFT)

    def _waited(self, samples: int) -> None:
        """Count what comes of the samples that were due: once all have come, nothing is expected any more."""
        if self._expected is not None:
            self._expected -= samples
            if self._expected <= self._leeway:
                self._expected, self._leeway = None, 0.0

    def _after_silence(self, value: int, ahead: int, step: int, size: int, index: int) -> tuple[int, _Doubt]:
        """Give how far ahead the first packet lies that does not follow after a silence, and what is doubtful in it.

        A device that counts on is where the clock expects it, whole wraps included. One that counted only for a while
        (until it noticed that nobody listened) is not as far, one that paused is near; one that began anew is anywhere.
        """
        expected, self._expected = self._expected or 0.0, None
        told, self._leeway = self._leeway, 0.0
        leeway = max(told, LATE_PACKETS * size)
        steps = round(expected * step / size)
        near = round(DRIFT * steps + leeway * step / size)
        half = self.modulus // 2
        whole = steps + (ahead - steps + half) % self.modulus - half
        anew = value <= steps + near  # since it began anew it could have come as far
        if whole >= 0 and abs(whole - steps) <= near:
            return whole, _Doubt(index, None, 2 * near >= self.modulus or (anew and whole <= near))
        if ahead <= LATE_PACKETS * step or ahead <= steps < self.modulus:
            self.expect(expected, told)  # a jump that does not explain the silence leaves the rest to another
            self._waited(ahead * size // step)
            return ahead, _Doubt(index, None, anew)
        self._recent.clear()
        return steps, _Doubt(index, value, True)

    def _order(self, positions: Ints, raw: Ints, sizes: Ints, advance: Ints, doubt: _Doubt) -> Placed:
        keep: list[int] = []
        lost: list[int] = []
        first: list[int] = []
        duplicates = late = due = 0
        sample, missing = self._sample, 0
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
            anew_at=doubt.anew_at,
            unsure_at=keep.index(doubt.index) if doubt.unsure and doubt.index in keep else None,
        )
