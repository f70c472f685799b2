"""A device that answers only when asked: the same question again and again over another link.

The question goes out by the clock, not after the answer, so that the readings come evenly; it waits for a slow
answer, and is asked again when one does not come.
"""

from __future__ import annotations

import asyncio
import contextlib
import time
from typing import TYPE_CHECKING, Final

from logger.links.base import MID_LINE_S, MidstreamLink, TellingLink
from logger.links.pump import Pump

if TYPE_CHECKING:
    from logger.links.base import Link
    from logger.samples import Chunk, Event

# After the last byte of an answer: its rest may follow in the next burst of a USB adapter or radio.
QUIET_S: Final = 0.003


class PolledLink:
    """A link that asks.

    Args:
        link: Where the device is: a serial port, or a Bluetooth device with a command characteristic.
        request: The question; the user has confirmed it.
        interval_s: From one question to the next.
        timeout_s: How long an answer is waited for before the question is asked again.
    """

    mid_line_s: Final = MID_LINE_S

    def __init__(self, link: Link, request: bytes, interval_s: float, timeout_s: float) -> None:
        self._link = link
        self._request = request
        self._interval_s = interval_s
        self._timeout_s = timeout_s
        self._reading: asyncio.Task[list[Chunk]] | None = None
        self._asked_s = -float("inf")
        self._due_s = 0.0
        self._answered = True
        self._pump = Pump(self._next)

    @property
    def name(self) -> str:
        """The other link's name."""
        return self._link.name

    @property
    def joins_midstream(self) -> bool:
        """Whether the rest of an earlier answer may come first: on a cable; a radio connection begins with us."""
        link = self._link
        return isinstance(link, MidstreamLink) and link.joins_midstream and not isinstance(link, TellingLink)

    @property
    def simulated(self) -> bool:
        """What the other link was told beside the readings."""
        return isinstance(self._link, TellingLink) and self._link.simulated

    def events(self) -> list[Event]:
        """Give what the other link was told beside the readings."""
        return self._link.events() if isinstance(self._link, TellingLink) else []

    async def open(self) -> None:
        """Open the other link; the first question goes out with the first ``read``.

        Raises:
            LinkError: It cannot be opened.
        """
        await self._forget()
        await self._link.open()
        self._answered = True
        self._due_s = time.monotonic()

    async def read(self) -> list[Chunk]:
        """Give what has come since the last call; the first call begins to ask.

        Raises:
            LinkLost: The device is gone.
        """
        return await self._pump.read()

    async def _next(self) -> list[Chunk]:
        """Ask when it is time to, and give what has come."""
        while True:
            await self._ask_if_due()
            if self._reading is None:
                self._reading = asyncio.ensure_future(self._link.read())
            until = self._due_s if self._answered else self._asked_s + self._timeout_s
            await asyncio.wait({self._reading}, timeout=max(0.0, until - time.monotonic()))
            if self._reading.done():
                reading, self._reading = self._reading, None
                chunks = reading.result()
                self._answered = True
                self._due_s = max(self._due_s, time.monotonic() + QUIET_S)
                return chunks

    async def write(self, data: bytes) -> None:
        """Send a confirmed command in between.

        Raises:
            LinkLost: The device is gone.
        """
        await self._link.write(data)

    async def close(self) -> None:
        """Close the other link; never raises."""
        await self._forget()
        await self._link.close()

    async def _ask_if_due(self) -> None:
        now = time.monotonic()
        if now < (self._due_s if self._answered else self._asked_s + self._timeout_s):
            return
        self._asked_s, self._answered = now, False
        self._due_s = max(self._due_s + self._interval_s, now)
        await self._link.write(self._request)

    async def _forget(self) -> None:
        await self._pump.stop()
        reading, self._reading = self._reading, None
        if reading is not None:
            reading.cancel()
            with contextlib.suppress(asyncio.CancelledError, OSError):
                await reading
