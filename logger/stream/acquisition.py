"""One thread with one asyncio loop for all sources; and the lossless queue through which a window looks on.

::

    with Acquisition() as acquisition:
        running = acquisition.start(session)      # a concurrent Future of the Ending
        tap.take()                                # blocks since the last call, from any thread
        session.stop()
        ending = running.result(timeout=5)
"""

from __future__ import annotations

import asyncio
import threading
from typing import TYPE_CHECKING, Any, Final, TypeVar

if TYPE_CHECKING:
    from collections.abc import Coroutine
    from concurrent.futures import Future
    from types import TracebackType

    from logger.samples import Ending
    from logger.stream.merge import PairedSession
    from logger.stream.session import Session

T = TypeVar("T")

CLOSE_S: Final = 10.0  # a radio stack may take seconds to disconnect


class Acquisition:
    """The acquisition thread; use it as a context manager. Leaving stops all sessions and waits for them."""

    def __init__(self) -> None:
        self._loop: asyncio.AbstractEventLoop | None = None
        self._thread: threading.Thread | None = None
        self._running: dict[Session | PairedSession, Future[Ending]] = {}

    def start(self, session: Session | PairedSession) -> Future[Ending]:
        """Run a session in the acquisition thread."""
        future = self.call(session.run())
        self._running[session] = future
        future.add_done_callback(lambda _: self._running.pop(session, None))
        return future

    def call(self, coroutine: Coroutine[Any, Any, T]) -> Future[T]:
        """Run anything else in the acquisition thread: a command, a scan."""
        return asyncio.run_coroutine_threadsafe(coroutine, self._started())

    def _started(self) -> asyncio.AbstractEventLoop:
        if self._loop is None:
            self._loop = asyncio.new_event_loop()
            self._thread = threading.Thread(target=self._loop.run_forever, name="acquisition", daemon=True)
            self._thread.start()
        return self._loop

    def close(self) -> None:
        """Stop every session, wait for their endings and end the thread."""
        running = dict(self._running)
        for session in running:
            session.stop()
        for future in running.values():
            try:
                future.result(timeout=CLOSE_S)
            except TimeoutError:
                future.cancel()
        loop, thread = self._loop, self._thread
        self._loop = self._thread = None
        if loop is not None and thread is not None:
            asyncio.run_coroutine_threadsafe(_cancel_rest(), loop).result(timeout=CLOSE_S)
            loop.call_soon_threadsafe(loop.stop)
            thread.join(timeout=CLOSE_S)
            loop.run_until_complete(loop.shutdown_default_executor())
            loop.close()

    def __enter__(self) -> Acquisition:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


async def _cancel_rest() -> None:
    """Cancel what is still running in this loop, and wait for it."""
    rest = [task for task in asyncio.all_tasks() if task is not asyncio.current_task()]
    for task in rest:
        task.cancel()
    await asyncio.gather(*rest, return_exceptions=True)
