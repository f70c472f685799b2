"""Two sources in one recording: torque, and beside it an angle, a rate, a temperature or a second torque.

Each source keeps its own samples at its own times; rows of both stand in the order of time, with empty cells where a
source has no value and a column ``source`` that says whose row it is. Nothing is interpolated here; whoever reads the
file decides (``logger.recordings.second``).

Conventions:
- Both clocks run on the computer's monotonic time, so rows are aligned to what both links' latency differs by (a few
  milliseconds for wires, one connection interval for Bluetooth); the ``late`` columns show it.
- A source is waited for by ``HOLD_S`` at most. Rows that come later still are dated when they are merged, and their
  ``late`` shrinks by as much: when they arrived stays what it was.
"""

from __future__ import annotations

import asyncio
import math
from dataclasses import replace
from typing import TYPE_CHECKING, Final, Literal

import msgspec
import numpy as np

from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from logger.stream.audience import Audience, SubscriberFailedError
from logger.stream.health import SessionState

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.header import Header
    from logger.samples import Floats, Subscriber
    from logger.stream.health import Health
    from logger.stream.session import ConfirmedCommand, Session

HOLD_S: Final = 1.0
SOURCE: Final = Column("source", "")
MAIN: Final = "torque"  # what every decoder calls the main reading


class PairedSession:
    """Two sessions that are used as one.

    Args:
        first: The torque.
        second: What is recorded with it.
        measures, unit: What the second's main reading is: ``angle`` in ``°``; ``torque`` becomes ``held_torque``.
    """

    def __init__(self, first: Session, second: Session, measures: str, unit: str) -> None:
        self._sessions = (first, second)
        names = _renamed(first.columns, second.columns, measures)
        own = tuple(
            Column(name, unit if column.name == MAIN else column.unit)
            for column, name in zip(second.columns, names, strict=True)
        )
        self.columns = (*first.columns, SOURCE, *own)
        self._sides = (
            _Side(self, 1, {c.name: c.name for c in first.columns}),
            _Side(self, 2, {c.name: n for c, n in zip(second.columns, names, strict=True)}),
        )
        for session, side in zip(self._sessions, self._sides, strict=True):
            session.subscribe(side)
        self._audience = Audience()
        self._failure: Ending | None = None
        self._written_s = -math.inf

    @property
    def name(self) -> str:
        """Both links' names."""
        return " + ".join(session.name for session in self._sessions)

    @property
    def time_from(self) -> Literal["device counter", "arrival", "file"]:
        """What the torque's times rest on."""
        return self._sessions[0].time_from

    @property
    def health(self) -> Health:
        """The torque's; what is wrong with the second source is its advice."""
        first, second = (session.health for session in self._sessions)
        told = [first.advice] if first.advice else []
        if second.state is not SessionState.STREAMING or second.advice:
            told.append(f"second source {second.state}: {second.advice}".rstrip(": "))
        return replace(first, simulated=first.simulated or second.simulated, advice="; ".join(told))

    @property
    def full(self) -> bool:
        """Whether a subscriber holds so much that no more should be read for the moment."""
        return self._audience.full

    def subscribe(self, subscriber: Subscriber) -> None:
        """Let a subscriber have all merged blocks."""
        self._audience.add(subscriber)

    def stop(self) -> None:
        """End both; any thread may call it."""
        for session in self._sessions:
            session.stop()

    def mark(self, kind: EventKind, text: str) -> None:
        """Put an event of the user's into the stream; any thread may call it."""
        self._sessions[0].mark(kind, text)

    def arrange(self, command: ConfirmedCommand) -> None:
        """Have a confirmed command sent to the torque transducer."""
        self._sessions[0].arrange(command)

    async def send(self, data: bytes, does: str) -> None:
        """Write a confirmed command to the torque transducer.

        Raises:
            LinkError: It could not be sent.
        """
        await self._sessions[0].send(data, does)

    async def run(self) -> Ending:
        """Read both until the torque ends; a second source that ends earlier is told and missed, no more."""
        second = asyncio.ensure_future(self._sessions[1].run())
        try:
            ending = await self._sessions[0].run()
        finally:
            self._sessions[1].stop()
            other = await second
        if other.reason in (EndReason.FAILED, EndReason.LOST) and self._failure is None:
            self._sides[1].told(f"the second source ended: {other.text}")
        self._merge(final=True)
        return self._audience.end(self._failure or ending)

    def take(self, number: int, block: Block) -> Block | None:
        """Give a block of one source on the common time; None while the torque has not begun."""
        zeros = [session.zero_s for session in self._sessions]
        if math.isnan(zeros[0]):
            return None
        shift = zeros[number - 1] - zeros[0] if not math.isnan(zeros[number - 1]) else 0.0
        events = tuple(event.at(event.time_s + shift) for event in block.events)
        return Block(block.time_s + shift, block.columns, events)

    def merge(self) -> None:
        """Deliver what no source can come before any more."""
        self._merge(final=False)

    def _merge(self, *, final: bool) -> None:
        for side in self._sides:
            side.place(final=final)
        until = math.inf if final else self._watermark()
        taken = [side.until(until) for side in self._sides]
        rows = [rows for rows, _ in taken]
        events = sorted((e for _, found in taken for e in found), key=lambda event: event.time_s)
        if sum(map(len, rows)) or events:
            self._deliver(self._joined(rows, events))

    def _watermark(self) -> float:
        latest = [side.latest_s for side in self._sides]
        return max(min(latest), max(latest) - HOLD_S)

    def _joined(self, rows: list[_Rows], events: list[Event]) -> Block:
        true_s = np.concatenate([part.time_s for part in rows])
        order = np.argsort(true_s, kind="stable")
        time_s = np.maximum(true_s[order], self._written_s)
        columns: dict[str, Floats] = {}
        for column in self.columns:
            columns[column.name] = np.concatenate([part.column(column.name) for part in rows])[order]
            if column.name.endswith("late"):
                columns[column.name] -= ((time_s - true_s[order]) * 1e3).round(2)
        if len(time_s):
            self._written_s = float(time_s[-1])
        placed = [replace(e, index=int(np.searchsorted(time_s, e.time_s, "left"))) for e in events]
        return Block(time_s, columns, tuple(placed))

    def _deliver(self, block: Block) -> None:
        try:
            self._audience.deliver(block)
        except SubscriberFailedError as failure:
            self._failure = self._failure or failure.ending
            self.stop()


def paired(
    first: Session, second: Session, description: Description, identity: str, header: Header
) -> tuple[PairedSession, Header]:
    """Pair two sessions, and note the second source in the header."""
    facts = msgspec.structs.replace(description.transducer, identity=identity)
    pair = PairedSession(first, second, description.measures, description.unit)
    return pair, msgspec.structs.replace(header, second=facts)


class _Rows:
    """Rows of one source."""

    def __init__(self, number: int, names: dict[str, str], time_s: Floats, columns: dict[str, Floats]) -> None:
        self.time_s = time_s
        self._number = number
        self._columns = {names[name]: values for name, values in columns.items()}

    def __len__(self) -> int:
        return len(self.time_s)

    def column(self, name: str) -> Floats:
        """Give a column of the recording; NaN where this source has none of that name."""
        if name == SOURCE.name:
            return np.full(len(self), float(self._number))
        return self._columns.get(name, np.full(len(self), np.nan))


class _Side:
    """The subscriber on one source: keeps its rows until they can be merged."""

    def __init__(self, pair: PairedSession, number: int, names: dict[str, str]) -> None:
        self._pair = pair
        self._number = number
        self._names = names
        self._waiting: list[Block] = []  # on the source's own time
        self._placed: list[Block] = []  # on the common time
        self.latest_s = -math.inf

    @property
    def full(self) -> bool:
        """Whether those who have the merged samples hold enough for the moment."""
        return self._pair.full

    def on_block(self, block: Block) -> None:
        """Take the next samples."""
        self._waiting.append(block)
        self._pair.merge()

    def on_end(self, ending: Ending) -> None:
        """From now on nobody waits for this source."""
        self.latest_s = math.inf

    def told(self, text: str) -> None:
        """Add an event at the end."""
        at = self._placed[-1].time_s[-1] if self._placed and len(self._placed[-1]) else 0.0
        self._placed.append(Block(np.empty(0), {}, (Event(EventKind.NOTE, text=text, time_s=float(at)),)))

    def place(self, *, final: bool) -> None:
        """Bring waiting blocks onto the common time."""
        while self._waiting:
            block = self._pair.take(self._number, self._waiting[0])
            if block is None:
                if not final:
                    return
                block = self._waiting[0]
            del self._waiting[0]
            self._placed.append(block)
            if len(block):
                self.latest_s = max(self.latest_s, float(block.time_s[-1]))

    def until(self, limit_s: float) -> tuple[_Rows, list[Event]]:
        """Give all rows and events up to a time; what comes later stays."""
        blocks, self._placed = self._placed, []
        rows: list[Block] = []
        events: list[Event] = []
        for block in blocks:
            cut = int(np.searchsorted(block.time_s, limit_s, "right"))
            rows.append(Block(block.time_s[:cut], {n: v[:cut] for n, v in block.columns.items()}))
            events += [event for event in block.events if event.time_s <= limit_s]
            left = tuple(event for event in block.events if event.time_s > limit_s)
            if cut < len(block) or left:
                self._placed.append(Block(block.time_s[cut:], {n: v[cut:] for n, v in block.columns.items()}, left))
        time_s = np.concatenate([b.time_s for b in rows]) if rows else np.empty(0)
        columns = {n: np.concatenate([b.columns[n] for b in rows if len(b)] or [np.empty(0)]) for n in self._names}
        return _Rows(self._number, self._names, time_s, columns), events


def _renamed(first: tuple[Column, ...], second: tuple[Column, ...], measures: str) -> list[str]:
    """Give the second source's columns names that the first does not use."""
    used = {column.name for column in first} | {SOURCE.name}
    names = []
    for column in second:
        name = column.name
        if name == MAIN:
            name = "held_torque" if measures == MAIN else measures
        names.append(f"second_{name}" if name in used else name)
        used.add(names[-1])
    return names
