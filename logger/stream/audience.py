"""Those who follow a stream: one that fails is excluded, all others still get every block and the ending."""

from __future__ import annotations

from typing import TYPE_CHECKING

from logger.samples import Ending, EndReason

if TYPE_CHECKING:
    from logger.samples import Block, Subscriber


class SubscriberFailedError(Exception):
    """A subscriber raised; carries what."""

    def __init__(self, error: Exception) -> None:
        super().__init__(str(error))
        self.error = error

    @property
    def ending(self) -> Ending:
        """What it means to the stream."""
        return Ending(EndReason.FAILED, str(self.error), self.error)


class Audience:
    """The subscribers of one stream."""

    def __init__(self) -> None:
        self._listening: list[Subscriber] = []
        self._failed: list[Subscriber] = []

    def add(self, subscriber: Subscriber) -> None:
        """Let a subscriber have all blocks from now on."""
        self._listening.append(subscriber)

    @property
    def full(self) -> bool:
        """Whether somebody holds so much that waits that no more should be read for the moment."""
        return any(getattr(subscriber, "full", False) for subscriber in tuple(self._listening))

    def deliver(self, block: Block) -> None:
        """Give a block to everyone; those who fail get no more.

        Raises:
            SubscriberFailedError: The first that failed; everyone else has the block.
        """
        failure: Exception | None = None
        for subscriber in tuple(self._listening):
            try:
                subscriber.on_block(block)
            except Exception as error:  # noqa: BLE001 - whatever it is, it ends the stream as a value
                self._listening.remove(subscriber)
                self._failed.append(subscriber)
                failure = failure or error
        if failure is not None:
            raise SubscriberFailedError(failure)

    def end(self, ending: Ending) -> Ending:
        """Tell everyone, also those that have failed; one that fails now makes the ending FAILED for those after it."""
        for subscriber in (*self._failed, *self._listening):
            try:
                subscriber.on_end(ending)
            except Exception as error:  # noqa: BLE001 - as above
                if ending.reason is not EndReason.FAILED:
                    ending = SubscriberFailedError(error).ending
        return ending
