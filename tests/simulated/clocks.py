"""An event loop whose time passes only when nothing is left to do, and the computer's clocks that belong to it.

A library that makes a loop's time run ahead would serve for timers alone; here a whole computer is held up, sleeps and
has its clock set while the device goes on, so the loop asks one ``Clocks`` for every time there is.
"""

from __future__ import annotations

import asyncio
import heapq
import itertools
import math
import time
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from unittest import mock

HANDED_AT_ONCE = 64  # what a loop takes from its sockets between two rounds of timers
HAND_S = 1e-4  # and what each costs
READ_TIME = ("stream.session", "stream.blocks", "stream.health", "links.ble")  # modules of logger that ask for the time


class NothingLeftError(Exception):
    """Everything waits, and nothing will ever happen: a session that never ends."""


class Clocks:
    """True time, what happens in the world at it, and what the computer's clocks show of it.

    The world (devices, the air, whoever closes the lid) goes on whether the program runs or not; what it has for the
    program waits in ``inbox`` until the loop looks.
    """

    CLOCK_BOOTTIME = time.CLOCK_BOOTTIME
    CLOCK_MONOTONIC = time.CLOCK_MONOTONIC

    def __init__(self) -> None:
        self.true_s = 0.0
        self.slept_s = 0.0
        self.set_by_s = 0.0
        self._held = self.asleep = False
        self.last_s = math.inf  # after this nobody should be waiting any more
        self.inbox: deque[Callable[[], None]] = deque()
        self._due: list[tuple[float, int, Callable[[], None]]] = []
        self._number = itertools.count()

    # --- what the program sees ----------------------------------------------------------------------------------------

    def monotonic(self) -> float:
        """Seconds that the computer was awake, from an arbitrary beginning."""
        return 1000.0 + self.true_s - self.slept_s

    def time(self) -> float:
        """The wall clock."""
        return 1.8e9 + self.true_s + self.set_by_s

    def clock_gettime(self, which: int) -> float:
        """The clock that goes on while the computer sleeps, or the one that does not."""
        return self.monotonic() + (self.slept_s if which == self.CLOCK_BOOTTIME else 0.0)

    # --- what happens -------------------------------------------------------------------------------------------------

    def at(self, true_s: float, what: Callable[[], None]) -> None:
        """Have something happen in the world."""
        heapq.heappush(self._due, (max(true_s, self.true_s), next(self._number), what))

    def wait(self, seconds: float) -> None:
        """Let time pass for a program that waits, until something arrives for it."""
        until_s = self.monotonic() + seconds
        while not self.inbox and self.monotonic() < until_s:
            step_s = until_s - self.monotonic()
            if self._due and self._due[0][0] - self.true_s <= step_s:
                self._next()
            else:
                self.true_s += step_s
                return

    def hold(self, seconds: float, *, asleep: bool = False) -> None:
        """Let time pass for the world while the program does not run; asleep, its monotonic clock stands too."""
        until_s = self.true_s + seconds
        self._held, self.asleep = True, asleep
        while self._due and self._due[0][0] <= until_s:
            if asleep:
                self.slept_s += max(0.0, self._due[0][0] - self.true_s)
            self._next()
        self._held = self.asleep = False
        if asleep:
            self.slept_s += until_s - self.true_s
        self.true_s = until_s

    def when_run(self, what: Callable[[], None]) -> None:
        """Have something happen that needs a running program: now, or when it runs again."""
        if self._held:
            self.at(self.true_s + 1.0, lambda: self.when_run(what))
        else:
            what()

    def _next(self) -> None:
        true_s, _, what = heapq.heappop(self._due)
        self.true_s = max(self.true_s, true_s)
        what()

    @property
    def idle(self) -> bool:
        """Nothing more will happen in the world."""
        return not self._due and not self.inbox


class SimulatedLoop(asyncio.BaseEventLoop):
    """An event loop without sockets: it waits by letting the clocks run."""

    def __init__(self, clocks: Clocks) -> None:
        super().__init__()
        self.clocks = clocks
        self._selector = self  # what BaseEventLoop waits with

    def time(self) -> float:
        return self.clocks.monotonic()

    def select(self, timeout: float | None) -> list[Callable[[], None]]:
        """Wait, and give what has arrived: a few at a time, as sockets do."""
        if timeout is None:
            if self.clocks.idle:
                raise NothingLeftError("everything waits, and nothing will happen any more")
            timeout = 3600.0
        if self.clocks.true_s > self.clocks.last_s:
            self.clocks.last_s = math.inf  # once: what is cancelled now needs time to end
            raise NothingLeftError("everything should have ended long ago")
        if timeout > 0:
            self.clocks.wait(timeout)
        arrived = []
        while self.clocks.inbox and len(arrived) < HANDED_AT_ONCE:
            arrived.append(self.clocks.inbox.popleft())
        return arrived

    def _process_events(self, arrived: list[Callable[[], None]]) -> None:
        for what in arrived:
            self.clocks.true_s += HAND_S
            what()

    def _write_to_self(self) -> None:
        """Nobody else's thread wakes this loop."""


@contextmanager
def simulated(clocks: Clocks) -> Iterator[asyncio.Runner]:
    """Give a runner under simulated time; every module of ours that asks for the time sees it."""
    with ExitStack() as stack:
        for module in READ_TIME:
            stack.enter_context(mock.patch(f"logger.{module}.time", clocks))
        yield stack.enter_context(asyncio.Runner(loop_factory=lambda: SimulatedLoop(clocks)))
