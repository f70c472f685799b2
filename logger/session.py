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
4. Nothing is written to the device but what ``send`` or ``arrange`` was given, and only after the user confirmed it.
5. When nothing arrives for ``silence_s`` an event says so: a radio stack that died reports nothing by itself.

Offered: ``Session``, ``Command``, ``build_session``.
"""

from __future__ import annotations

import asyncio
import contextlib
import time
from collections import deque
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from logger.clock import build_clock
from logger.decoder.build import build_decoder
from logger.errors import HeldwheelError, LinkError, LinkLost
from logger.health import Health, Meter, State, Steps
from logger.links.base import TellingLink
from logger.samples import Block, Column, Decoded, Ending, EndReason, Event, EventKind

if TYPE_CHECKING:
    from logger.clock import Clock
    from logger.description import Description
    from logger.links.base import Link
    from logger.samples import Chunk, Decoder, Floats, Subscriber

TICK_S: Final = 0.1  # how often the watchdogs look
DRAIN_S: Final = 0.1  # bytes gather so long: waking is what costs; a window that draws them asks for less
BUSY_BYTES: Final = 4096  # a drain of this size: more is waiting, read on at once
EDGE_S: Final = 0.5  # how well the beginning and the end of a silence are known
MID_LINE_S: Final = 0.1  # bytes sooner than this after opening may be the rest of a line: no device pauses within one
BACK_OFF_S: Final = (0.2, 0.5, 1.0, 2.0, 3.0)  # then every 3 s

COUNTER: Final = Column("counter", "")
LATE: Final = Column("late", "ms")


@dataclass(frozen=True, slots=True)
class Command:
    """A confirmed command and when it is sent.

    Attributes
    ----------
    data : bytes
    does : str
        One line for the user.
    when : str
        ``each``: after every opening, also after a reconnect (start); ``once``: after the first (zero: never again
        under load); ``end``: before the link is closed (stop).
    """

    data: bytes
    does: str
    when: Literal["each", "once", "end"] = "once"


class SubscriberFailedError(Exception):
    """A subscriber raised; carries what."""

    def __init__(self, error: Exception) -> None:
        super().__init__(str(error))
        self.error = error


class Session:
    """Reads one source until it ends.

    Parameters
    ----------
    link : Link
        Where bytes come from; opened and closed here.
    decoder : Decoder
        Bytes to samples.
    clock : Clock or None
        Dates them. None: the decoder gives a column ``time`` in seconds itself (a replay).
    has_counter : bool
        The decoder gives the device's counter.
    nominal_hz : float or None
        Described rate.
    silence_s : float
        The watchdog.
    reopen_after_silence : bool
        Close and open the link again after a silence (Bluetooth), instead of only waiting (serial).
    reconnect_s : float
        How long a lost device is waited for; 0: not at all.
    drain_s : float
        How long bytes gather before they are decoded and delivered: the delay of what is shown.
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
        self._telling = link if isinstance(link, TellingLink) else None
        self._decoder = decoder
        self._clock = clock
        self._has_counter = has_counter
        self._nominal_hz = nominal_hz
        self._silence_s = silence_s
        self._reopen_after_silence = reopen_after_silence
        self._reconnect_s = reconnect_s
        self._drain_s = drain_s
        self._subscribers: list[Subscriber] = []
        self._failed: list[Subscriber] = []
        self._commands: list[Command] = []
        self._pending: deque[Event] = deque()  # events that wait for the next block
        self._meter = Meter(nominal_hz)
        self._steps = Steps()
        self._stop_wanted = False
        self._stopping: asyncio.Event | None = None
        self._loop: asyncio.AbstractEventLoop | None = None
        self._reading: asyncio.Task[list[Chunk]] | None = None
        self._opened_s = 0.0
        self._heard_s = 0.0  # when bytes came last, or the link was opened
        self._first = True  # nothing has come since the link was opened
        self._simulated = False

    @property
    def name(self) -> str:
        """The link's name."""
        return self._link.name

    @property
    def columns(self) -> tuple[Column, ...]:
        """Columns of every block: the decoder's, then ``counter`` where there is one, then ``late`` (ms).

        ``late`` is by how much the bytes of a sample arrived after its time.
        """
        own = tuple(c for c in self._decoder.columns if c.name != "time")
        if self._clock is None:
            return own
        return (*own, *((COUNTER,) if self._has_counter else ()), LATE)

    @property
    def time_from(self) -> Literal["device counter", "arrival", "file"]:
        """What the times of the samples rest on; goes into the recording's header."""
        return "file" if self._clock is None else self._clock.time_from

    @property
    def zero_s(self) -> float:
        """The monotonic moment of time 0; NaN before the first sample, and for a replay."""
        known = self._clock is not None and self._meter.health.samples > 0
        return -self._clock.at(0.0) if known and self._clock is not None else float("nan")

    @property
    def health(self) -> Health:
        """How it is doing now; any thread may ask."""
        return self._meter.health

    def subscribe(self, subscriber: Subscriber) -> None:
        """Let a subscriber have all blocks from now on; its ``on_block`` runs in the acquisition thread."""
        self._subscribers.append(subscriber)

    def stop(self) -> None:
        """End with STOPPED after what has arrived is read; any thread may call it."""
        self._stop_wanted = True
        loop, stopping = self._loop, self._stopping
        if loop is not None and stopping is not None and not loop.is_closed():
            loop.call_soon_threadsafe(stopping.set)

    def mark(self, kind: EventKind, text: str) -> None:
        """Put an event of the user's (NOTE, ZERO) into the stream; any thread may call it."""
        self._pending.append(Event(kind, text=text))

    def arrange(self, command: Command) -> None:
        """Have a command sent that the user has confirmed: after the link is opened, or at the end."""
        self._commands.append(command)

    async def send(self, data: bytes, does: str) -> None:
        """Write a command that the user has confirmed; it becomes a SENT event.

        Raises
        ------
        LinkError
            It could not be sent.
        """
        await self._link.write(data)
        shown = "".join(chr(b) if 32 <= b < 127 else f"\\x{b:02X}" for b in data)
        self._pending.append(Event(EventKind.SENT, count=len(data), text=f"{does}: {shown}" if does else shown))

    async def run(self) -> Ending:
        """Open the link and read until the end."""
        self._loop = asyncio.get_running_loop()
        self._stopping = asyncio.Event()
        self._steps = Steps()
        if self._stop_wanted:
            self._stopping.set()
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
            return Ending(EndReason.FAILED, str(failure.error), failure.error)
        except HeldwheelError as error:
            return Ending(EndReason.FAILED, str(error), error)
        except Exception as error:  # noqa: BLE001 - the one error path: our own bugs too end the stream with a value
            return Ending(EndReason.FAILED, f"internal error: {type(error).__name__}: {error}", error)
        finally:
            await self._drop_reading()
            await self._link.close()

    def _finish(self, ending: Ending) -> Ending:
        """Tell every subscriber; one that fails now makes the ending FAILED for those after it."""
        if self._pending:
            try:
                self._deliver(self._block(None, []))
            except SubscriberFailedError as failure:
                ending = Ending(EndReason.FAILED, str(failure.error), failure.error)
        for subscriber in (*self._failed, *self._subscribers):
            try:
                subscriber.on_end(ending)
            except Exception as error:  # noqa: BLE001 - as above
                if ending.reason is not EndReason.FAILED:
                    ending = Ending(EndReason.FAILED, str(error), error)
        self._meter.state(State.ENDED, ending.text if ending.reason is EndReason.FAILED else "")
        return ending

    # --- reading ------------------------------------------------------------------------------------------------------

    async def _live(self) -> Ending:
        await self._open()
        while True:
            try:
                return await self._stream()
            except LinkLost as lost:
                ending = await self._reconnect(lost)
                if ending is not None:
                    return ending

    async def _open(self) -> None:
        await self._link.open()
        for command in self._commands:
            if command.when != "end":
                await self.send(command.data, command.does)
        self._commands = [command for command in self._commands if command.when != "once"]
        self._opened_s = self._heard_s = time.monotonic()
        self._first = True
        self._reading = None

    async def _stream(self) -> Ending:
        """Read until the source ends or the user stops.

        Raises
        ------
        LinkLost
            The device is gone; all that came before is delivered.
        """
        while not self._wanted_stop():
            chunks = await self._next(TICK_S)
            if chunks is not None and not chunks:
                return Ending(EndReason.FINISHED, f"{self.name}: the source has ended")
            if chunks:
                self._take(chunks)
                if sum(len(chunk.data) for chunk in chunks) < BUSY_BYTES:
                    await asyncio.sleep(self._drain_s)
            await self._watch()
        stopped_s = time.monotonic()
        with contextlib.suppress(LinkError):  # the recording ends in any case
            for command in self._commands:
                if command.when == "end":
                    await self.send(command.data, command.does)
        while chunks := await self._next(0):  # what has arrived already
            self._take(chunks)
            if chunks[-1].arrival_s > stopped_s:
                break
        return Ending(EndReason.STOPPED, "stopped")

    async def _next(self, wait_s: float) -> list[Chunk] | None:
        """Give the next chunks; None if none come in time."""
        if self._reading is None:
            self._reading = asyncio.ensure_future(self._link.read())
            await asyncio.sleep(0)
        if not self._reading.done() and wait_s > 0:
            await asyncio.wait({self._reading}, timeout=wait_s)
        if not self._reading.done():
            return None
        reading, self._reading = self._reading, None
        return reading.result()

    async def _drop_reading(self) -> None:
        reading, self._reading = self._reading, None
        if reading is not None:
            reading.cancel()
            await asyncio.gather(reading, return_exceptions=True)

    def _wanted_stop(self) -> bool:
        return self._stopping is not None and self._stopping.is_set()

    def _take(self, chunks: list[Chunk]) -> None:
        """Decode one drain and deliver it."""
        if self._first:
            self._first = False
            midstream = getattr(self._link, "joins_midstream", False)
            if midstream and chunks[0].arrival_s - self._opened_s < MID_LINE_S:
                self._decoder.reset()
        elif self._meter.health.state is State.SILENT:
            self._expect(chunks[0].arrival_s - self._heard_s)
        decoded = self._decoder.feed(*[chunk.data for chunk in chunks])
        self._heard_s = time.monotonic()
        arrivals = np.array([chunk.arrival_s for chunk in chunks]) + self._steps.slept_s
        self._note_simulated()
        block = self._block(decoded, chunks, arrivals)
        size = sum(len(chunk.data) for chunk in chunks)
        self._meter.count(chunks[-1].arrival_s, size, len(block), block.events, self._simulated)
        if len(block) or block.events:
            self._deliver(block)

    def _note_simulated(self) -> None:
        told = self._telling is not None and self._telling.simulated
        if not self._simulated and (told or self._decoder.simulated):
            self._simulated = True
            self._pending.append(Event(EventKind.SIMULATED, text="the device says that it is simulated"))

    def _block(self, decoded: Decoded | None, chunks: list[Chunk], arrivals: Floats | None = None) -> Block:
        """Date samples and events; with nothing decoded a block of waiting events."""
        waiting = [self._pending.popleft() for _ in range(len(self._pending))]
        if self._telling is not None:
            waiting += self._telling.events()
        now = time.monotonic() + self._steps.slept_s
        if decoded is None or arrivals is None:
            time_s = np.empty(0)
            columns = {column.name: np.empty(0) for column in self.columns}
            found: tuple[Event, ...] = ()
        else:
            time_s, columns = self._dated(decoded, arrivals)
            found = decoded.events
            now = float(arrivals[-1])
        at = self._clock.at(now) if self._clock is not None else float(time_s[-1]) if len(time_s) else 0.0
        events = [event.at(at if len(time_s) == 0 else float(time_s[0])) for event in waiting]
        events += [event.at(float(time_s[event.index]) if event.index < len(time_s) else at) for event in found]
        return Block(time_s, columns, tuple(events))

    def _dated(self, decoded: Decoded, arrivals: Floats) -> tuple[Floats, dict[str, Floats]]:
        columns = dict(decoded.columns)
        if self._clock is None:
            return columns.pop("time"), columns
        arrived = arrivals[decoded.chunk_of]
        time_s = self._clock.date(arrived, decoded.counter)
        if self._has_counter:
            columns["counter"] = np.empty(0) if decoded.counter is None else decoded.counter.astype(np.float64)
        late_ms = (arrived + self._clock.at(0.0) - time_s) * 1e3
        columns["late"] = late_ms.round(2) + 0.0  # 0.01 ms is finer than any system's time stamps; no -0
        return time_s, columns

    def _deliver(self, block: Block) -> None:
        """Give a block to everyone; those who fail are left out from now on, and the session ends."""
        failure: Exception | None = None
        for subscriber in tuple(self._subscribers):
            try:
                subscriber.on_block(block)
            except Exception as error:  # noqa: BLE001 - rule 2
                self._subscribers.remove(subscriber)
                self._failed.append(subscriber)
                failure = failure or error
        if failure is not None:
            raise SubscriberFailedError(failure)

    # --- watching -----------------------------------------------------------------------------------------------------

    def _expect(self, silent_s: float) -> None:
        """Tell the decoder how many samples were due meanwhile."""
        self._decoder.expect(silent_s * self._rate(), EDGE_S * self._rate())

    def _rate(self) -> float:
        measured = self._meter.health.rate_hz
        return self._nominal_hz or (measured if measured > 0 else 0.0)

    async def _watch(self) -> None:
        """Look for silence, clock steps and a stream that does not fit; tell it."""
        self._pending.extend(self._steps.look())
        told = self._meter.judge()
        if told is not None:
            self._pending.append(told)
        quiet_s = time.monotonic() - self._heard_s
        if quiet_s > self._silence_s and self._meter.health.state is not State.SILENT:
            never = " yet: is it switched on, and set to send by itself?" if self._first else ""
            text = f"nothing has arrived for {quiet_s:.0f} s{never}"
            self._meter.state(State.SILENT, text)
            self._pending.append(Event(EventKind.SILENCE, text=text))
            if self._reopen_after_silence:
                raise LinkLost(f"{self.name}: {text}")
        if self._pending:
            self._deliver(self._block(None, []))

    async def _reconnect(self, lost: LinkLost) -> Ending | None:
        """Wait for a lost device; None when it is back."""
        gone_s, heard_s = time.monotonic(), self._heard_s
        await self._drop_reading()
        await self._link.close()
        self._pending.append(Event(EventKind.DISCONNECT, text=str(lost)))
        self._pending.extend(self._decoder.reset().events)
        self._meter.state(State.RECONNECTING, str(lost))
        self._deliver(self._block(None, []))
        attempt = 0
        while not await self._stops_within(BACK_OFF_S[min(attempt, len(BACK_OFF_S) - 1)]):
            attempt += 1
            if time.monotonic() - gone_s >= self._reconnect_s:
                return Ending(EndReason.LOST, str(lost), lost)
            try:
                await self._open()
            except LinkError:
                continue
            self._expect(time.monotonic() - heard_s)
            if self._clock is not None:
                self._clock.restart()
            self._meter.reconnected()
            self._meter.state(State.STREAMING)
            away_s = time.monotonic() - gone_s
            self._pending.append(Event(EventKind.RECONNECT, text=f"{self.name} is back after {away_s:.1f} s"))
            return None
        return Ending(EndReason.STOPPED, "stopped while the device was away")

    async def _stops_within(self, wait_s: float) -> bool:
        """Wait; tell whether the user stops meanwhile."""
        if self._stopping is None:
            return False
        try:
            async with asyncio.timeout(wait_s):
                await self._stopping.wait()
        except TimeoutError:
            return False
        return True


def build_session(
    link: Link,
    description: Description,
    decoder: Decoder | None = None,
    *,
    reconnect_s: float = 600.0,
    drain_s: float = DRAIN_S,
) -> Session:
    """Build the session of a described transducer.

    Parameters
    ----------
    link : Link
    description : Description
    decoder : Decoder, optional
        Instead of the described one: for a Bluetooth device that follows the open standards.
    reconnect_s : float
        How long a lost device is waited for.
    drain_s : float
        How long bytes gather before they are delivered.
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
