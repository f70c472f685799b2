"""A link read ahead: what came is given in portions, and is not lost when reading ends."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

from logger.stream.portions import Portions

if TYPE_CHECKING:
    from logger.links.base import Link
    from logger.samples import Chunk


class ReadAhead:
    """Reads a link; true while something that was read has not been taken.

    Args:
        link: Opened and closed by whoever made this.
    """

    def __init__(self, link: Link) -> None:
        self._link = link
        self._portions = Portions()
        self._reading: asyncio.Task[list[Chunk]] | None = None

    def __bool__(self) -> bool:
        return bool(self._portions)

    def begin(self) -> None:
        """Read anew: the link has been opened."""
        self._reading = None

    async def next(self, wait_s: float) -> list[Chunk] | None:
        """Give the next chunks, in portions; None if none come in time, none at all at the source's end."""
        if self._portions:
            await asyncio.sleep(0)  # whoever wants to stop is heard between two portions
            return self._portions.take()
        if self._reading is None:
            self._reading = asyncio.ensure_future(self._link.read())
            await asyncio.sleep(0)
        if not self._reading.done() and wait_s > 0:
            await asyncio.wait({self._reading}, timeout=wait_s)
        if not self._reading.done():
            return None
        reading, self._reading = self._reading, None
        self._portions.add(reading.result())
        return self._portions.take()

    async def end(self) -> None:
        """Read no longer; what was read meanwhile waits behind the rest."""
        reading, self._reading = self._reading, None
        if reading is None:
            return
        reading.cancel()
        (read,) = await asyncio.gather(reading, return_exceptions=True)
        if isinstance(read, list):
            self._portions.add(read)

    def worked(self, size: int, lasted_s: float) -> None:
        """Note how long so many bytes have taken: the next portion follows from it."""
        self._portions.worked(size, lasted_s)
