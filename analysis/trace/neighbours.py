"""The pulls of one recording know of each other.

What lies as still as a hanging lever is one if it is small beside the pulls; what is far smaller than the usual pull is
none. The first loads of a stream cannot be compared: one that lies still waits for the first that shows a slip, unless
it is more than a lever weighs; one that was stated and then turns out to be small is taken back, with the reason.
"""

from __future__ import annotations

from bisect import insort
from dataclasses import replace
from heapq import heappop, heappush
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.gates import LAY_STILL, TOO_SMALL, ZERO_MOVED
from analysis.trace.loads import LEVER
from analysis.trace.results import Code, Pull, Reason

if TYPE_CHECKING:
    from analysis.trace.pulls import Read
    from analysis.trace.traces import Sensor

SMALL = 0.25
"""What is below this share of the usual pull is no pull, still or not: packs, sides and directions differ by less."""

SMALL_OF_LARGEST = 0.15
"""... nor is what is below this share of the largest load, whatever that was."""

HANDLED = 0.5
"""What was there at once, quicker than a hand, and is below this share of the usual pull is a lever that was put on,
moved or taken off, however it swung."""

LEVER_OF_CAPACITY, LEVER_MOST_NM = 0.15, 30.0
"""No lever weighs more than this share of the capacity of a transducer that suits it, or more than this (6 kg at half a
metre; 3 kg make 15 N·m)."""


RELEASED_AFTER_S, RELEASED_MOST = 10.0, 1.3
"""A transducer that sets its zero under load shows the release of that load as one the other way, within this time (s),
and no larger than this many times that load."""


class Neighbours:
    """Decides which reads of a recording are stated, in their order."""

    def __init__(self, sensor: Sensor) -> None:
        self.pulls: list[Pull] = []
        self._capacity_nm = sensor.capacity_nm or np.inf
        self._most_nm = min(LEVER_OF_CAPACITY * self._capacity_nm, LEVER_MOST_NM)
        self._usual_nm = self._largest_nm = 0.0
        self._zeroed: Read | None = None
        self._slips: list[float] = []  # heights of what shows a slip, in order of size
        # heights and places among the pulls of those that may yet be taken back, by the share that they must reach
        self._stated: dict[float, list[tuple[float, int]]] = {SMALL: [], LEVER: [], HANDLED: []}  # heaps, lowest first
        self._waiting: list[Read] = []

    def take(self, read: Read) -> tuple[Pull, ...]:
        """Take the next read; give the pulls that are stated now, and those that are taken back."""
        self._largest_nm = max(self._largest_nm, min(read.height_nm, self._capacity_nm))
        if self._is_small(read):
            return ()
        if ZERO_MOVED in read.pull.reasons and not self._may_be_a_lever(read):
            self._zeroed = read
        elif self._zeroed is not None and read.pull.direction != self._zeroed.pull.direction:
            # the load was let go below the new zero: what follows looks like loads the other way
            if self._is_its_release(read, self._zeroed):
                return ()
            read = replace(read, pull=replace(read.pull, reasons=(*read.pull.reasons, ZERO_MOVED)))
        if not self._slips and self._may_be_a_lever(read):
            self._waiting.append(read)
            return ()
        if not read.states:
            return (*self._take_back(), *self._state(read.pull))
        return (*self._know(read), *self._state(read.pull, read))

    @staticmethod
    def _is_its_release(read: Read, zeroed: Read) -> bool:
        soon = read.pull.start_s - zeroed.pull.end_s < RELEASED_AFTER_S
        return soon and read.height_nm < RELEASED_MOST * zeroed.height_nm

    def _may_be_a_lever(self, read: Read) -> bool:
        if TOO_SMALL in read.pull.reasons:
            return True
        return read.still and (read.handled or read.height_nm < self._most_nm)

    def finish(self) -> tuple[Pull, ...]:
        """State what waited in vain: nothing in the recording shows whether it was a lever."""
        waiting, self._waiting = self._waiting, []
        left = [read.pull for read in waiting if not self._is_small(read)]
        named = [_named(pull, LAY_STILL) if pull.breakaway or pull.rotating else pull for pull in left]
        return tuple(said for pull in named for said in self._state(pull))

    def _is_small(self, read: Read) -> bool:
        return read.height_nm < self._least(_share(read))

    def _least(self, share: float) -> float:
        return max(share * self._usual_nm, SMALL_OF_LARGEST * self._largest_nm)

    def _know(self, read: Read) -> tuple[Pull, ...]:
        """Take note of a pull's height, and of what that says of those before."""
        if read.still:
            return self._take_back()
        if not read.again or not self._slips:
            insort(self._slips, read.height_nm)
        self._usual_nm = self._slips[len(self._slips) // 2]
        waiting, self._waiting = self._waiting, []
        late = [pull for w in waiting if not self._is_small(w) for pull in self._state(w.pull, w)]
        return (*self._take_back(), *late)

    def _take_back(self) -> tuple[Pull, ...]:
        text = "taken back: small beside what came later, so it was no pull but a lever or a hand"
        back = []
        for share, stated in self._stated.items():
            least_nm = self._least(share)
            while stated and stated[0][0] < least_nm:
                back.append(heappop(stated)[1])
        back.sort()
        for at in back:
            self.pulls[at] = _named(self.pulls[at], Reason(Code.NEVER_SLIPPED, text), taken_back=True)
        return tuple(self.pulls[at] for at in back)

    def _state(self, pull: Pull, read: Read | None = None) -> tuple[Pull, ...]:
        if read is not None and (_share(read) > SMALL or read.height_nm <= self._usual_nm):
            heappush(self._stated[_share(read)], (read.height_nm, len(self.pulls)))
        self.pulls.append(pull)
        return (pull,)


def _share(read: Read) -> float:
    """Give the share of the usual pull that a load must reach to be one."""
    if read.handled:
        return HANDLED
    return LEVER if read.still or read.rang else SMALL


def _named(pull: Pull, reason: Reason, *, taken_back: bool = False) -> Pull:
    """Give the pull without its torques, and why."""
    return replace(
        pull,
        breakaway=None,
        rotating=None,
        stick_slip=None,
        turning=None,
        elastic=None,
        round=None,
        reasons=(reason,),
        notes=(),
        taken_back=taken_back,
    )
