"""The virtual transducer in-process: its bytes, at their times or faster, on every system."""

from __future__ import annotations

import asyncio
import math
import time
from itertools import takewhile
from typing import TYPE_CHECKING, Final

from logger.errors import LinkError
from logger.samples import Chunk

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

PIECES: Final = 2000  # given at once, when time does not matter
STEP_S: Final = 0.01  # at its own speed, pieces come this often


class VirtualLink:
    """A link that plays pieces ``(due time in seconds, bytes)``.

    Arrivals are the due times: however fast it plays, samples are dated as the device would have sent them.

    Args:
        pieces: (float, bytes); A ``VirtualDevice``; iterated anew with each ``open``.
        name: What the user calls it.
        speed: Times real time; infinity: as fast as it is taken.
        lasts_s: Of its own time: what would come later does not come, however fast it plays.
    """

    def __init__(
        self,
        pieces: Iterable[tuple[float, bytes]],
        name: str = "virtual transducer",
        speed: float = 1.0,
        lasts_s: float = math.inf,
    ) -> None:
        if not speed > 0:
            raise LinkError(f"a virtual transducer's speed must be above zero, not {speed:g}")
        self._pieces = pieces
        self._name = name
        self._speed = speed
        self._lasts_s = lasts_s
        self._iterator: Iterator[tuple[float, bytes]] = iter(())
        self._next: tuple[float, bytes] | None = None
        self._began_s = 0.0

    @property
    def name(self) -> str:
        """What the user calls it."""
        return self._name

    async def open(self) -> None:
        """Begin from the start."""
        self._iterator = takewhile(lambda piece: piece[0] < self._lasts_s, self._pieces)
        self._next = next(self._iterator, None)
        self._began_s = time.monotonic()

    async def read(self) -> list[Chunk]:
        """Give the pieces that are due; nothing at the end."""
        if self._next is None:
            return []
        if self._speed == float("inf"):
            await asyncio.sleep(0)
            return self._due(float("inf"))
        wait_s = self._began_s + self._next[0] / self._speed - time.monotonic()
        await asyncio.sleep(max(STEP_S, wait_s))
        return self._due((time.monotonic() - self._began_s) * self._speed)

    def _due(self, until_s: float) -> list[Chunk]:
        chunks: list[Chunk] = []
        while self._next is not None and len(chunks) < PIECES and (self._next[0] <= until_s or not chunks):
            chunks.append(Chunk(self._began_s + self._next[0], self._next[1]))
            self._next = next(self._iterator, None)
        return chunks

    async def write(self, data: bytes) -> None:
        """Refuse: the virtual transducer takes no commands."""
        raise LinkError(f"{self.name}: takes no commands ({len(data)} bytes)")

    async def close(self) -> None:
        """Do nothing."""
