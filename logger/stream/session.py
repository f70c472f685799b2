"""One source of samples from opening to end: link, decoder, clock, subscribers, reconnect, and the only error path.

::

    session = Session(link, decoder, clock)
    session.subscribe(writer)           # a RecordingWriter, a live analysis
    ending = await session.run()        # always an Ending, never an exception

Rules:
1. Whatever fails ends up in one ``Ending``, which ``run`` gives and every subscriber receives.
2. A subscriber that fails ends the session with FAILED; all others still get every sample read and the ending.
3. No sample is dropped. What the device lost is counted from its counter and told as an event.
4. Nothing is written to the device but what ``send`` or ``arrange`` was given, and only after the user confirmed it.
5. When nothing arrives for ``silence_s`` an event says so: a radio stack that died reports nothing by itself.
"""

from __future__ import annotations

import asyncio
import contextlib
import math
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

from logger.decoder.build import build_decoder
from logger.errors import HeldwheelError, LinkError, LinkLost
from logger.samples import Block, Ending, EndReason, Event, EventKind
from logger.stream.audience import Audience, SubscriberFailedError
from logger.stream.blocks import BlockMaker
from logger.stream.clock import build_clock
from logger.stream.health import SessionState
from logger.stream.read_ahead import ReadAhead
from logger.stream.stopping import StopWish

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.links.base import Link
    from logger.samples import Chunk, Column, Decoder, Subscriber
    from logger.stream.clock import Clock
    from logger.stream.health import Health

TICK_S: Final = 0.1  # how often the watchdogs look
DRAIN_S: Final = 0.1  # bytes gather so long: waking is what costs; a window that draws them asks for less
BUSY_BYTES: Final = 4096  # a drain of this size: more is waiting, read on at once
REST_S: Final = 0.7  # how long a stopped session works off what had arrived; with a portion before and behind it: 1.2 s
BACK_OFF_S: Final = (0.2, 0.5, 1.0, 2.0, 3.0)  # then every 3 s


@dataclass(frozen=True, slots=True)
class ConfirmedCommand:
    """A confirmed command and when it is sent."""

    data: bytes
    does: str  # one line for the user
    # ``each``: after every opening, also after a reconnect (start); ``once``: after the first (zero: never again under
    # load); ``end``: before the link is closed (stop)
    when: Literal["each", "once", "end"] = "once"


class Session:
    """Reads one source until it ends.

    Args:
        link: Where bytes come from; opened and closed here.
        decoder: Bytes to samples.
        clock: Dates them. None: the decoder gives a column ``time`` in seconds itself (a replay).
        has_counter: The decoder gives the device's counter.
        nominal_hz: Described rate.
        silence_s: The watchdog.
        reopen_after_silence: Close and open the link again after a silence (Bluetooth), instead of only waiting
            (serial).
        reconnect_s: How long a lost device is waited for; 0: not at all.
        drain_s: How long bytes gather before they are decoded and delivered: the delay of what is shown.
    """

    def __init__(
        self,
        link: Link,
        decoder: Decoder,
        clock: Clock | None,
        *,
        has_counter: bool = False,
        nominal_hz: float | None = None,
        silence_s: float = 3.0,
        reopen_after_silence: bool = False,
        reconnect_s: float = 600.0,
        drain_s: float = DRAIN_S,
    ) -> None:
        self._link = link
        self._blocks = BlockMaker(link, decoder, clock, has_counter=has_counter, nominal_hz=nominal_hz)
        self._silence_s = silence_s
        self._reopen_after_silence = reopen_after_silence
        self._reconnect_s = reconnect_s
        self._drain_s = drain_s
        self._audience = Audience()
        self._ahead = ReadAhead(link)
        self._commands: list[ConfirmedCommand] = []
        self._stop = StopWish()

    @property
    def name(self) -> str:
        """The link's name."""
        return self._link.name

    @property
    def columns(self) -> tuple[Column, ...]:
        """Columns of every block: the decoder's, then ``counter`` where there is one, then ``late`` (ms).

        ``late`` is by how much the bytes of a sample arrived after its time.
        """
        return self._blocks.columns

    @property
    def time_from(self) -> Literal["device counter", "arrival", "file"]:
        """What the times of the samples rest on; goes into the recording's header."""
        return self._blocks.time_from

    @property
    def zero_s(self) -> float:
        """The monotonic moment of time 0; NaN before the first sample, and for a replay."""
        return self._blocks.zero_s

    @property
    def health(self) -> Health:
        """How it is doing now; any thread may ask."""
        return self._blocks.meter.health

    def subscribe(self, subscriber: Subscriber) -> None:
        """Let a subscriber have all blocks from now on; its ``on_block`` runs in the acquisition thread."""
        self._audience.add(subscriber)

    def stop(self) -> None:
        """End with STOPPED after what has arrived is read; any thread may call it."""
        self._stop.say()

    def mark(self, kind: EventKind, text: str) -> None:
        """Put an event of the user's (NOTE, ZERO) into the stream; any thread may call it."""
        self._blocks.add(Event(kind, text=text))

    def arrange(self, command: ConfirmedCommand) -> None:
        """Have a command sent that the user has confirmed: after the link is opened, or at the end."""
        self._commands.append(command)

    async def send(self, data: bytes, does: str) -> None:
        """Write a command that the user has confirmed; it becomes a SENT event.

        Raises:
            LinkError: It could not be sent.
        """
        await self._link.write(data)
        shown = "".join(chr(b) if 32 <= b < 127 else f"\\x{b:02X}" for b in data)
        self._blocks.add(Event(EventKind.SENT, count=len(data), text=f"{does}: {shown}" if does else shown))

    async def run(self) -> Ending:
        """Open the link and read until the end."""
        self._blocks.begin()
        self._stop.listen()
        try:
            ending = await self._guarded()
        except asyncio.CancelledError:
            self._finish(Ending(EndReason.STOPPED, "stopped"))
            raise
        return self._finish(ending)

    async def _guarded(self) -> Ending:
        """Read until the end, and give whatever happened as an ``Ending``."""
        try:
            return await self._live()
        except SubscriberFailedError as failure:
            return failure.ending
        except HeldwheelError as error:
            return Ending(EndReason.FAILED, str(error), error)
        except Exception as error:  # noqa: BLE001 - the one error path: our own bugs too end the stream with a value
            return Ending(EndReason.FAILED, f"internal error: {type(error).__name__}: {error}", error)
        finally:
            await self._ahead.end()
            await self._link.close()

    def _finish(self, ending: Ending) -> Ending:
        """Deliver what waits and tell every subscriber."""
        try:
            self._deliver(self._blocks.rest())
        except SubscriberFailedError as failure:
            ending = failure.ending
        ending = self._audience.end(ending)
        self._blocks.meter.state(SessionState.ENDED, ending.text if ending.reason is EndReason.FAILED else "")
        return ending

    # --- reading ------------------------------------------------------------------------------------------------------

    async def _live(self) -> Ending:
        if not await self._open():
            return Ending(EndReason.STOPPED, "stopped before it was open")
        while True:
            try:
                return await self._stream()
            except LinkLost as lost:
                ending = await self._reconnect(lost)
                if ending is not None:
                    return ending

    async def _open(self) -> bool:
        """Open the link, unless the user stops meanwhile: whoever stops does not wait for a radio's time-outs."""
        opening = asyncio.ensure_future(self._open_link())
        stopping = asyncio.ensure_future(self._stop.wait())
        try:
            await asyncio.wait({opening, stopping}, return_when=asyncio.FIRST_COMPLETED)
            if opening.done():
                await opening
                return True
            return False
        finally:
            for task in (opening, stopping):
                task.cancel()
            await asyncio.gather(opening, stopping, return_exceptions=True)

    async def _open_link(self) -> None:
        await self._link.open()
        for command in self._commands:
            if command.when != "end":
                await self.send(command.data, command.does)
        self._commands = [command for command in self._commands if command.when != "once"]
        self._blocks.opened()
        self._ahead.begin()

    async def _stream(self) -> Ending:
        """Read until the source ends or the user stops.

        Raises:
            LinkLost: The device is gone; all that came before is delivered.
        """
        while not self._stop.wanted:
            if self._audience.full:
                await self._wait_for_saving()
                continue
            chunks = await self._ahead.next(TICK_S)
            if chunks is not None and not chunks:
                return Ending(EndReason.FINISHED, f"{self.name}: the source has ended")
            if chunks:
                drained_s = time.monotonic()
                self._take(chunks)
                if sum(len(chunk.data) for chunk in chunks) < BUSY_BYTES:  # the next drain is due by the clock:
                    await asyncio.sleep(max(0.0, drained_s + self._drain_s - time.monotonic()))  # work adds nothing
            await self._watch()
        stopped_s = time.monotonic()
        with contextlib.suppress(LinkError):  # the recording ends in any case
            for command in self._commands:
                if command.when == "end":
                    await self.send(command.data, command.does)
        missed = await self._take_rest(stopped_s)
        if not missed:
            return Ending(EndReason.STOPPED, "stopped")
        text = (
            f"{missed} bytes that had arrived were not read any more: the program had fallen behind when it was stopped"
        )
        self._blocks.add(Event(EventKind.NOTE, count=missed, text=text))
        return Ending(EndReason.FAILED, f"{self.name}: {text}")

    async def _wait_for_saving(self) -> None:
        """Read nothing until less waits to be saved: the port, not the memory, is where a flood has to wait."""
        self._blocks.add(Event(EventKind.NOTE, text="saving has fallen behind: until it is back nothing is read"))
        while self._audience.full and not await self._stop.within(TICK_S):
            pass
        self._blocks.add(Event(EventKind.NOTE, text="saving is back: the device is read again"))

    async def _take_rest(self, until_s: float = math.inf) -> int:
        """Take what has arrived already; what arrives after a moment is not waited for.

        A session that is stopped works on it for ``REST_S`` at most; gives how many bytes were not read any more.
        """
        begun_s = time.monotonic()
        missed = 0
        with contextlib.suppress(LinkError):
            await self._ahead.end()
            while chunks := await self._ahead.next(0):
                if until_s < math.inf and time.monotonic() - begun_s > REST_S:
                    missed += sum(len(chunk.data) for chunk in chunks)
                else:
                    self._take(chunks)
                if chunks[-1].arrival_s > until_s and not self._ahead:
                    break
        return missed

    def _take(self, chunks: list[Chunk]) -> None:
        """Decode one drain and deliver it."""
        begun_s = time.monotonic()
        block = self._blocks.take(chunks)
        self._ahead.worked(sum(len(chunk.data) for chunk in chunks), time.monotonic() - begun_s)
        if len(block) or block.events:
            self._deliver(block)

    def _deliver(self, block: Block | None) -> None:
        if block is not None:
            self._audience.deliver(block)

    # --- watching -----------------------------------------------------------------------------------------------------

    async def _watch(self) -> None:
        """Look for silence, clock steps and a stream that does not fit; tell it."""
        self._blocks.look()
        if self._blocks.listened_s > self._silence_s and self.health.state is not SessionState.SILENT:
            quiet_s = time.monotonic() - self._blocks.heard_s
            never = " yet: is it switched on, and set to send by itself?" if self._blocks.first else ""
            text = f"nothing has arrived for {quiet_s:.0f} s{never}"
            self._blocks.meter.state(SessionState.SILENT, text)
            self._blocks.add(Event(EventKind.SILENCE, text=text))
            if self._reopen_after_silence:
                raise LinkLost(f"{self.name}: {text}")
        self._deliver(self._blocks.rest())

    async def _reconnect(self, lost: LinkLost) -> Ending | None:
        """Wait for a lost device; None when it is back."""
        gone_s = time.monotonic()
        await self._link.close()
        await self._take_rest()
        self._blocks.add(Event(EventKind.DISCONNECT, text=str(lost)))
        self._blocks.forget_rest()
        self._blocks.meter.state(SessionState.RECONNECTING, str(lost))
        self._deliver(self._blocks.rest())
        attempt, why = 0, ""
        while not await self._stop.within(BACK_OFF_S[min(attempt, len(BACK_OFF_S) - 1)]):
            attempt += 1
            if time.monotonic() - gone_s >= self._reconnect_s:
                return Ending(EndReason.LOST, f"{lost}{why}", lost)
            if self._audience.full:
                continue  # no more is fetched before what there is has been saved
            try:
                if not await self._open():
                    break
            except LinkError as error:
                why = self._not_back(error, lost, why)
                continue
            self._blocks.back()
            self._blocks.meter.reconnected()
            self._blocks.meter.state(SessionState.STREAMING)
            away_s = time.monotonic() - gone_s
            self._blocks.add(Event(EventKind.RECONNECT, text=f"{self.name} is back after {away_s:.1f} s"))
            return None
        return Ending(EndReason.STOPPED, f"stopped while the device was away{why}")

    def _not_back(self, error: LinkError, lost: LinkLost, before: str) -> str:
        """Keep why a device does not come back: shown at once, told once each, and part of the ending."""
        why = f"; it does not come back: {error}"
        self._blocks.meter.state(SessionState.RECONNECTING, f"{lost}{why}")
        if why != before:
            self._blocks.add(Event(EventKind.NOTE, text=why.removeprefix("; ")))
            self._deliver(self._blocks.rest())
        return why


def build_session(
    link: Link,
    description: Description,
    decoder: Decoder | None = None,
    *,
    reconnect_s: float = 600.0,
    drain_s: float = DRAIN_S,
) -> Session:
    """Build the session of a described transducer.

    Args:
        decoder: Instead of the described one: for a Bluetooth device that follows the open standards.
        reconnect_s: How long a lost device is waited for.
        drain_s: How long bytes gather before they are delivered.
    """
    return Session(
        link,
        decoder if decoder is not None else build_decoder(description),
        build_clock(description),
        has_counter=description.has_counter,
        nominal_hz=description.transducer.rate_hz,
        silence_s=description.silence_s,
        reopen_after_silence=description.link == "ble",
        reconnect_s=reconnect_s,
        drain_s=drain_s,
    )
