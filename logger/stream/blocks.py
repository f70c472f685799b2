"""From chunks to blocks: decoded, dated, counted, with the events that waited in between."""

from __future__ import annotations

import math
import time
from collections import deque
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from logger.decoder.counter import DRIFT
from logger.links.base import MidstreamLink, TellingLink
from logger.samples import Block, Column, Event, EventKind
from logger.stream.health import Meter, SessionState, Steps

if TYPE_CHECKING:
    from collections.abc import Iterable

    from logger.links.base import Link
    from logger.samples import Chunk, Decoded, Decoder, Floats
    from logger.stream.clock import Clock

LISTENED_S: Final = 0.5  # the most that counts between two looks: who was stopped did not listen
GAP_S: Final = 0.3  # without bytes, from which a counter may mislead: whole wraps lost, or begun anew meanwhile
EDGE_S: Final = 0.5  # how well the beginning and the end of a silence are known

COUNTER: Final = Column("counter", "")
LATE: Final = Column("late", "ms")


class BlockMaker:
    """Makes the blocks of one source; its meter counts what goes through.

    Args:
        link: Asked what it heard beside the readings, and whether it joins a stream midway; never read here.
        decoder: Bytes to samples.
        clock: Dates them. None: the decoder gives a column ``time`` in seconds itself (a replay).
        has_counter: The decoder gives the device's counter.
        nominal_hz: Described rate.
    """

    def __init__(
        self, link: Link, decoder: Decoder, clock: Clock | None, *, has_counter: bool, nominal_hz: float | None
    ) -> None:
        self._telling = link if isinstance(link, TellingLink) else None
        midstream = link if isinstance(link, MidstreamLink) and link.joins_midstream else None
        self._midstream = midstream is not None
        self._mid_line_s = midstream.mid_line_s if midstream is not None else 0.0
        self._decoder = decoder
        self._clock = clock
        self._has_counter = has_counter
        self._nominal_hz = nominal_hz
        self._waiting: deque[Event] = deque()  # for the next block
        self._opened_s = 0.0
        self._simulated = False
        self._steps = Steps()
        self.meter = Meter(nominal_hz)
        self.heard_s = 0.0  # when bytes came last, or the link was opened
        self.listened_s = 0.0  # how long it was listened to since, in vain
        self._looked_s = 0.0
        self._came_s = math.nan  # when bytes came last, on the time that goes on while the computer sleeps
        self._waited_s = 0.0  # how long the last sample had waited by then: the program was stopped, or the link
        self._usual_s = math.inf  # how late samples are that did not wait
        self._told_s = 0.0  # how much of the waiting the decoder has been told of
        self._returned = False  # a lost device is back, and nothing has come from it yet
        self.first = True  # nothing has come since the link was opened

    @property
    def columns(self) -> tuple[Column, ...]:
        """Columns of every block: the decoder's, then ``counter`` where there is one, then ``late`` (ms)."""
        own = tuple(c for c in self._decoder.columns if c.name != "time")
        if self._clock is None:
            return own
        return (*own, *((COUNTER,) if self._has_counter else ()), LATE)

    @property
    def time_from(self) -> Literal["device counter", "arrival", "file"]:
        """What the times of the samples rest on."""
        return "file" if self._clock is None else self._clock.time_from

    @property
    def zero_s(self) -> float:
        """The monotonic moment of time 0; NaN before the first sample, and for a replay."""
        known = self._clock is not None and self.meter.health.samples > 0
        return -self._clock.at(0.0) if known and self._clock is not None else float("nan")

    def begin(self) -> None:
        """Look at the computer's clocks from now on."""
        self._steps = Steps()

    def opened(self) -> None:
        """Note that the link was opened."""
        self._opened_s = self.heard_s = self._looked_s = time.monotonic()
        self.listened_s = 0.0
        self.first = True
        self._steps.awake()  # opening takes as long as it takes: nobody was stopped
        self._waiting.extend(self._steps.look())

    def back(self) -> None:
        """Note that a lost device is back."""
        self._returned = True
        if self._clock is not None:
            self._clock.restart()

    def forget_rest(self) -> None:
        """Forget a half-received reading; what was forgotten is told with the next block."""
        self._waiting.extend(self._decoder.reset(midway=False).events)

    def add(self, *events: Event) -> None:
        """Let events go with the next block; any thread may call it."""
        self._waiting.extend(events)

    def look(self) -> None:
        """Look for clock steps and a stream that does not fit its description."""
        now = time.monotonic()
        self.listened_s += min(now - self._looked_s, LISTENED_S)
        self._looked_s = now
        self._waiting.extend(self._steps.look())
        told = self.meter.judge()
        if told is not None:
            self._waiting.append(told)

    def take(self, chunks: list[Chunk]) -> Block:
        """Give the block of one drain."""
        self._waiting.extend(self._steps.look())  # first: bytes that came after a sleep must not be dated before it
        if self.first:
            self.first = False
            if self._midstream and chunks[0].arrival_s - self._opened_s < self._mid_line_s:
                self._decoder.reset()
        self._settle_gap(chunks[0].arrival_s + self._steps.slept_s)
        decoded = self._decoder.feed(*[chunk.data for chunk in chunks])
        self.heard_s = self._looked_s = time.monotonic()
        self.listened_s = 0.0
        arrivals = np.array([chunk.arrival_s for chunk in chunks]) + self._steps.slept_s
        passed_s, self._came_s = float(arrivals[-1]) - self._came_s, float(arrivals[-1])
        self._note_simulated()
        time_s, columns = self._dated(decoded, arrivals)
        if len(time_s) and self._clock is not None:
            self._note_late(float(columns[LATE.name][-1]) / 1e3, passed_s)
        block = self._block(time_s, columns, decoded.events, float(arrivals[-1]))
        size = sum(len(chunk.data) for chunk in chunks)
        slept_s = self._steps.slept_s
        self.meter.count(chunks[-1].arrival_s, size, len(block), block.events, self._simulated, slept_s)
        return block

    def rest(self) -> Block | None:
        """Give a block of the events that wait, without samples; None if none waits."""
        if not self._waiting:
            return None
        columns = {column.name: np.empty(0) for column in self.columns}
        return self._block(np.empty(0), columns, (), time.monotonic() + self._steps.slept_s)

    def _note_simulated(self) -> None:
        told = self._telling is not None and self._telling.simulated
        if not self._simulated and (told or self._decoder.simulated):
            self._simulated = True
            self._waiting.append(Event(EventKind.SIMULATED, text="the device says that it is simulated"))

    def _block(self, time_s: Floats, columns: dict[str, Floats], found: Iterable[Event], now_s: float) -> Block:
        """Date the events: those that waited come before the samples."""
        waiting = [self._waiting.popleft() for _ in range(len(self._waiting))]
        if self._telling is not None:
            waiting += self._telling.events()
        at = self._clock.at(now_s) if self._clock is not None else float(time_s[-1]) if len(time_s) else 0.0
        events = [event.at(float(time_s[0]) if len(time_s) else at) for event in waiting]
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

    def _note_late(self, late_s: float, passed_s: float) -> None:
        """Tell waiting from drift: a clock that runs slow makes samples later by little, a stopped program by all."""
        self._usual_s = late_s if math.isnan(passed_s) else min(late_s, self._usual_s + DRIFT * passed_s)
        self._waited_s = late_s - self._usual_s
        if self._waited_s < EDGE_S:
            self._told_s = 0.0

    def _settle_gap(self, arrived_s: float) -> None:
        """After a time without bytes, for whatever reason, tell the decoder how many samples were due meanwhile.

        They were due since the last sample was taken; while the program was stopped that is long before it was read.
        """
        away_s = arrived_s - self._came_s
        told, self._returned = self._returned or self.meter.health.state is SessionState.SILENT, False
        if not (told and away_s > 0) and not away_s > GAP_S:  # neither holds before anything has come
            return
        measured = self.meter.health.rate_hz
        rate_hz = self._nominal_hz or (measured if measured > 0 else 0.0)
        due_s = away_s + max(0.0, self._waited_s - self._told_s)
        self._told_s += due_s
        self._decoder.expect(due_s * rate_hz, EDGE_S * rate_hz)
