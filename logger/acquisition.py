"""One thread with one asyncio loop for all sources; and the lossless queue through which a window looks on.

::

    with Acquisition() as acquisition:
        running = acquisition.start(session)      # a concurrent Future of the Ending
        tap.take()                                # blocks since the last call, from any thread
        session.stop()
        ending = running.result(timeout=5)

Offered: ``Acquisition``, ``Tap``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from concurrent.futures import Future
    from types import TracebackType

    from logger.samples import Block, Ending
    from logger.session import Session


class Acquisition:
    """The acquisition thread; use it as a context manager. Leaving stops all sessions and waits for them."""

    def start(self, session: Session) -> Future[Ending]:
        """Run a session in the acquisition thread."""
        raise NotImplementedError

    def close(self) -> None:
        """Stop every session, wait for their endings and end the thread."""
        raise NotImplementedError

    def __enter__(self) -> Acquisition:
        raise NotImplementedError

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


class Tap:
    """A subscriber that keeps every block until somebody takes it: memory grows before anything is dropped."""

    @property
    def ending(self) -> Ending | None:
        """How the stream ended; None while it runs. It is set after the last block can be taken."""
        raise NotImplementedError

    def take(self) -> list[Block]:
        """Give all blocks since the last call; any one thread may ask."""
        raise NotImplementedError

    def on_block(self, block: Block) -> None:
        """Keep a block."""
        raise NotImplementedError

    def on_end(self, ending: Ending) -> None:
        """Keep the ending."""
        raise NotImplementedError
