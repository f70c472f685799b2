"""A simulated gauge on a wire: lines through a port that holds 4096 bytes while nobody reads, and can be unplugged.

A port's own reader is a thread, which no simulated loop can hold up; so this stands in for it, chunk for chunk.
"""

from __future__ import annotations

import asyncio
import random
from collections import deque
from collections.abc import Callable
from typing import TYPE_CHECKING

from logger.errors import LinkError, LinkLost
from logger.links.base import MID_LINE_S
from logger.samples import Chunk
from tests.simulated.gauge import Kind, Truth

if TYPE_CHECKING:
    from tests.simulated.clocks import Clocks

HOLDS = 4096  # bytes, as a Linux terminal's input buffer
TEMPLATE = "C{counter},{torque}"


class Wire:
    """The gauge, the port, and the link on it."""

    joins_midstream = True
    mid_line_s = MID_LINE_S
    name = "/dev/simulated"

    def __init__(self, clocks: Clocks, kind: Kind, rng: random.Random) -> None:
        self.clocks, self.kind = clocks, kind
        self.truth = Truth()
        self.cut = 0  # lines that did not fit
        self._plugged = self._on = True
        self._quiet_until_s = self._held_until_s = self._away_until_s = self._off_until_s = 0.0
        self._drop = 0
        self._counted = rng.randrange(1000)
        self._port = bytearray()
        self._adapter: list[tuple[bytes, int]] = []  # lines, and their numbers, that an adapter holds back
        self._chunks: deque[Chunk] = deque()
        self._open = False
        self._half = False  # the port ends in half a line
        self._opened_s = 0.0
        self._ready = asyncio.Event()
        self._waits = False
        clocks.at(self._period(), self._tick)

    def _period(self) -> float:
        return 1.0 / self.kind.packet_hz / (1 + self.kind.fast_ppm * 1e-6)

    def _tick(self) -> None:
        clocks, truth = self.clocks, self.truth
        clocks.at(clocks.true_s + self._period(), self._tick)
        if not self._on:
            return
        for place in range(self.kind.samples):
            number = len(truth.taken_s)
            truth.taken_s.append(clocks.true_s - (self.kind.samples - 1 - place) / self.kind.rate_hz)
            line = b"C%d,%d" % (self._counted % 2**self.kind.bits, number)
            check = 0
            for byte in line[1:]:
                check ^= byte
            self._counted += 1
            if self._drop:
                self._drop -= 1
            elif self._open and not clocks.asleep and clocks.true_s >= self._quiet_until_s:
                self._adapter.append((b"%b*%02X\n" % (line, check), number))
        self._release()

    def _release(self) -> None:
        """Let what an adapter has held back into the port, which tells its reader."""
        if self.clocks.true_s < self._held_until_s or self.clocks.asleep:
            return
        for line, number in self._adapter:
            self._arrive(line, number)
        self._adapter.clear()
        if self._port and not self._waits:
            self._waits = True
            self.clocks.inbox.append(self._hand_over)

    def _arrive(self, line: bytes, number: int) -> None:
        room = HOLDS - len(self._port)
        whole, self._half = not self._half, len(line) > room and (room > 0 or self._half)
        self._port += line[:room]
        if len(line) > room:
            self.cut += 1
        elif self.clocks.monotonic() < self._opened_s + MID_LINE_S + 0.05:
            self.cut += 1  # so soon it may be the rest of a line: nobody can tell that it is whole
        elif not self.truth.stop_asked and whole:  # one that follows half a line is lost with it
            self.truth.came.add(number)
        self.truth.arrived_s.append(self.clocks.monotonic())

    def _hand_over(self) -> None:
        self._waits = False
        if self._port and self._open:
            self._chunks.append(Chunk(self.clocks.monotonic(), bytes(self._port)))
            self._port.clear()
            self._ready.set()

    # --- what may happen to it ----------------------------------------------------------------------------------------

    def away(self, seconds: float) -> None:
        """Unplugged for so long."""
        self._away_until_s = max(self._away_until_s, self.clocks.true_s + seconds)
        self.clocks.inbox.append(self._unplugged)

    def _unplugged(self) -> None:
        self._hand_over()
        self._adapter.clear()
        self._open = False
        self._ready.set()

    def lose(self) -> None:
        """A loose plug."""
        self.away(0.0)

    def off(self, seconds: float) -> None:
        """Switched off; when it is on again its counter begins anew."""
        self._on = False
        self._off_until_s = until_s = max(self._off_until_s, self.clocks.true_s + seconds)

        def again() -> None:
            if not self._on and until_s >= self._off_until_s:
                self._on, self._counted = True, 0
                self.truth.restarts.append(len(self.truth.taken_s))

        self.clocks.at(until_s, again)

    def fall_silent(self, seconds: float) -> None:
        """It goes on sampling, and sends nothing for a while."""
        self._quiet_until_s = self.clocks.true_s + seconds

    def hold_back(self, seconds: float) -> None:
        """An adapter holds its bytes back and gives them in one burst."""
        self._held_until_s = self.clocks.true_s + seconds
        self.clocks.at(self._held_until_s, self._release)

    def doings(self) -> dict[str, Callable[[float], None]]:
        """Give what may happen, by its name in a schedule."""
        return {
            "away": self.away,
            "lose": lambda _: self.lose(),
            "off": self.off,
            "quiet": self.fall_silent,
            "back": self.hold_back,
            "drop": lambda amount: setattr(self, "_drop", int(amount)),
        }

    def sleep(self) -> None:
        """The computer goes to sleep: what comes meanwhile is lost, the port stays."""

    # --- the link -----------------------------------------------------------------------------------------------------

    async def open(self) -> None:
        await asyncio.sleep(0.05)
        if self.clocks.true_s < self._away_until_s:
            raise LinkError(f"{self.name}: there is no such port")
        self._chunks.clear()
        self._port.clear()
        self._adapter.clear()
        self._half = False
        self._ready = asyncio.Event()
        self._open = True
        self._opened_s = self.clocks.monotonic()
        self.truth.connected += 1

    async def read(self) -> list[Chunk]:
        while not self._chunks:
            if not self._open:
                raise LinkLost(f"{self.name}: the port is gone")
            self._ready.clear()
            await self._ready.wait()
        chunks = list(self._chunks)
        self._chunks.clear()
        return chunks

    async def write(self, data: bytes) -> None: ...

    async def close(self) -> None:
        self._hand_over()
        self._open = False
