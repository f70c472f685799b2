"""The user's wish to stop: said in any thread, heard in the session's loop."""

from __future__ import annotations

import asyncio


class StopWish:
    """Whether the user wants to stop."""

    def __init__(self) -> None:
        self._wanted = False
        self._heard: asyncio.Event | None = None
        self._loop: asyncio.AbstractEventLoop | None = None

    @property
    def wanted(self) -> bool:
        """Whether it was said."""
        return self._wanted

    def say(self) -> None:
        """Want to stop; any thread may call it."""
        self._wanted = True
        loop, heard = self._loop, self._heard
        if loop is not None and heard is not None and not loop.is_closed():
            loop.call_soon_threadsafe(heard.set)

    def listen(self) -> None:
        """Hear it in the running loop from now on, also if it was said before."""
        self._loop = asyncio.get_running_loop()
        self._heard = asyncio.Event()
        if self._wanted:
            self._heard.set()

    async def wait(self) -> None:
        """Wait until it is said."""
        if self._heard is not None:
            await self._heard.wait()

    async def within(self, wait_s: float) -> bool:
        """Wait; tell whether it is said meanwhile."""
        if self._heard is None:
            return False
        try:
            async with asyncio.timeout(wait_s):
                await self._heard.wait()
        except TimeoutError:
            return False
        return True
