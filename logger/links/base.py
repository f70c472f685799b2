"""The interface every link implements; safe to use as the reference for a new one."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Protocol, runtime_checkable

if TYPE_CHECKING:
    from logger.samples import Chunk, Event

MID_LINE_S: Final = 0.1  # bytes sooner than this after opening may be the rest of a line: no device pauses within one
MOST_QUEUED: Final = 4_000_000  # bytes that a link keeps for a session that has fallen behind


class Link(Protocol):
    """A source of bytes. All methods run in the acquisition thread's event loop; none blocks it."""

    @property
    def name(self) -> str:
        """What the user calls it: ``/dev/ttyUSB0``, a device's name and identity, a file."""
        ...

    async def open(self) -> None:
        """Open it, within a bounded time.

        Raises:
            LinkError: It cannot be opened; the text says why and what to do.
        """
        ...

    async def read(self) -> list[Chunk]:
        """Wait for bytes and give all that have arrived since the last call; an empty list at the source's end.

        Raises:
            LinkLost: The device is gone. Whatever arrived before was given by earlier calls.
        """
        ...

    async def write(self, data: bytes) -> None:
        """Send bytes to the device. A session calls this only for commands that the user confirmed.

        Raises:
            LinkLost: The device is gone.
        """
        ...

    async def close(self) -> None:
        """Close it; never raises, may be called twice, and may be followed by ``open``.

        What had arrived may still be read until then.
        """
        ...


@runtime_checkable
class TellingLink(Link, Protocol):
    """A link that also hears what is no reading (Bluetooth: battery level, Device Information)."""

    @property
    def simulated(self) -> bool:
        """The device has said, beside its readings, that it is simulated."""
        ...

    def events(self) -> list[Event]:
        """Give what was told since the last call; a session asks after each read."""
        ...


@runtime_checkable
class MidstreamLink(Link, Protocol):
    """A link that may find its device in the middle of a line."""

    @property
    def joins_midstream(self) -> bool:
        """Whether the first bytes after opening may be the rest of a line."""
        ...

    @property
    def mid_line_s(self) -> float:
        """How long after opening such a rest may come."""
        ...
