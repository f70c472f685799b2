"""One source of samples from opening to end: link, decoder, clock, subscribers, reconnect, and the only error path.

::

    session = Session(link, decoder, clock)
    session.subscribe(writer)           # a RecordingWriter, a live analysis, a Tap for a window
    ending = await session.run()        # always an Ending, never an exception

Rules
-----
1. Whatever fails ends up in one ``Ending``, which ``run`` gives and every subscriber receives.
2. A subscriber that fails ends the session with FAILED; all others still get every sample read and the ending.
3. No sample is dropped. What the device lost is counted from its counter and told as an event.
4. Nothing is written to the device unless ``send`` is called, and that only after the user has confirmed it.
5. When nothing arrives for ``silence_s`` an event says so: a radio stack that died reports nothing by itself.

Offered: ``Session``, ``Health``, ``State``.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from logger.clock import Clock
    from logger.links.base import Link
    from logger.samples import Column, Decoder, Ending, EventKind, Subscriber


class State(StrEnum):
    """What a session is doing."""

    OPENING = "opening"
    STREAMING = "streaming"
    SILENT = "silent"  # open, but nothing arrives
    RECONNECTING = "reconnecting"
    ENDED = "ended"


@dataclass(frozen=True, slots=True)
class Health:
    """How a session is doing: a value that any thread may read.

    Attributes
    ----------
    state : State
    rate_hz : float
        Samples per second over the last seconds; NaN before the first.
    samples : int
        Received.
    lost : int
        Counted from the device's counter.
    garbage : int
        Bytes (of a stream) or packets that were no reading.
    duplicates : int
        Dropped because they were received twice.
    last_arrival_s : float
        ``time.monotonic()`` of the last bytes; NaN before the first.
    simulated : bool
        The device has said that it is simulated.
    advice : str
        What to do, if something is wrong: a rate that does not fit, a silent device.
    """

    state: State = State.OPENING
    rate_hz: float = float("nan")
    samples: int = 0
    lost: int = 0
    garbage: int = 0
    duplicates: int = 0
    last_arrival_s: float = float("nan")
    simulated: bool = False
    advice: str = ""


class Session:
    """Reads one source until it ends.

    Parameters
    ----------
    link : Link
        Where bytes come from; opened and closed here.
    decoder : Decoder
        Bytes to samples.
    clock : Clock
        Dates them.
    silence_s : float
        The watchdog.
    reopen_after_silence : bool
        Close and open the link again after a silence (Bluetooth), instead of only waiting (serial).
    reconnect_s : float
        How long a lost device is waited for; 0: not at all.
    """

    def __init__(
        self,
        link: Link,
        decoder: Decoder,
        clock: Clock,
        *,
        silence_s: float = 3.0,
        reopen_after_silence: bool = False,
        reconnect_s: float = 600.0,
    ) -> None:
        raise NotImplementedError

    @property
    def columns(self) -> tuple[Column, ...]:
        """Columns of every block: the decoder's, then ``counter`` where there is one, then ``late`` (ms).

        ``late`` is by how much the bytes of a sample arrived after its time.
        """
        raise NotImplementedError

    @property
    def health(self) -> Health:
        """How it is doing now; any thread may ask."""
        raise NotImplementedError

    def subscribe(self, subscriber: Subscriber) -> None:
        """Let a subscriber have all blocks from now on; its ``on_block`` runs in the acquisition thread."""
        raise NotImplementedError

    async def run(self) -> Ending:
        """Open the link and read until the end."""
        raise NotImplementedError

    def stop(self) -> None:
        """End with STOPPED after what has arrived is read; any thread may call it."""
        raise NotImplementedError

    def mark(self, kind: EventKind, text: str) -> None:
        """Put an event of the user's (NOTE, ZERO) into the stream; any thread may call it."""
        raise NotImplementedError

    async def send(self, data: bytes, does: str) -> None:
        """Write a command that the user has confirmed; it becomes a SENT event."""
        raise NotImplementedError
