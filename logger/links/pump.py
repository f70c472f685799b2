"""Chunks that are produced by asking: at their own pace, however seldom somebody reads."""

from __future__ import annotations

import asyncio
from collections import deque
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from logger.samples import Chunk


class Pump:
    """Calls a producer again and again in a task of its own, and keeps what it gives until it is read.

    Args:
        produce: Gives the next chunks; an empty list is the end. What it raises is raised by ``read``, after all
            chunks.
    """

    def __init__(self, produce: Callable[[], Awaitable[list[Chunk]]]) -> None:
        self._produce = produce
        self._task: asyncio.Task[None] | None = None
        self._chunks: deque[Chunk] = deque()
        self._ready = asyncio.Event()
        self._error: Exception | None = None

    async def read(self) -> list[Chunk]:
        """Wait for chunks and give all there are; the first call starts the producer."""
        if self._task is None:
            self._ready = asyncio.Event()
            self._task = asyncio.ensure_future(self._run())
        while not self._chunks:
            if self._error is not None:
                raise self._error
            if self._task.done():
                return []
            self._ready.clear()
            await self._ready.wait()
        chunks = list(self._chunks)
        self._chunks.clear()
        return chunks

    async def stop(self) -> None:
        """End the producer and forget what was not read; it can be started again."""
        task, self._task = self._task, None
        self._chunks.clear()
        self._error = None
        if task is not None:
            task.cancel()
            await asyncio.gather(task, return_exceptions=True)

    async def _run(self) -> None:
        try:
            while chunks := await self._produce():
                self._chunks += chunks
                self._ready.set()
        except Exception as error:  # noqa: BLE001 - it is raised where the chunks are read
            self._error = error
        finally:  # once more when this task counts as done
            asyncio.get_running_loop().call_soon(self._ready.set)
