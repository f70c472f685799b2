"""A recording as a source: it plays through the same session, recorder and screen as a device."""

from __future__ import annotations

import asyncio
import time
from pathlib import Path
from typing import TYPE_CHECKING, Final

import msgspec

from logger.decoder.rows import event_line
from logger.errors import LinkError
from logger.header import RecordingSource
from logger.recordings.recording_text import format_rows
from logger.samples import Chunk, Column, EventKind

if TYPE_CHECKING:
    from logger.header import Header
    from logger.recordings.files import Trace
    from logger.samples import Event

STEP_S: Final = 0.02  # at its own speed, rows come so often
ROWS: Final = 2000  # and at most so many at once
_UNITS: Final = {"angle_deg": ("angle", "°"), "late_ms": ("late", "ms")}


def replay_columns(trace: Trace) -> tuple[Column, ...]:
    """Give a trace's columns, torque first, as a session names them."""
    others = (Column(*_UNITS.get(name, (name, ""))) for name in trace.columns)
    return (Column("torque", trace.unit), *others)


def replay_header(trace: Trace) -> Header:
    """Give the header of a replay's recording: the source's, with the source's file and hash."""
    transducer = msgspec.structs.replace(trace.header.transducer, unit=trace.unit)
    source = RecordingSource(file=Path(trace.file).name, sha256=trace.sha256)
    return msgspec.structs.replace(trace.header, program="", transducer=transducer, source=source)


class ReplayLink:
    """A link that plays a trace.

    Args:
        trace: As read, with whatever was recovered of it.
        speed: Times real time; infinity: as fast as it is taken.
    """

    def __init__(self, trace: Trace, speed: float = 1.0) -> None:
        if not speed > 0:
            raise LinkError(f"a replay's speed must be above zero, not {speed:g}")
        self._trace = trace
        self._speed = speed
        self._row = 0
        self._began_s = 0.0
        self._events = [event for event in trace.events if event.kind is not EventKind.SIMULATED]
        self._values = [trace.torque, *trace.columns.values()]

    @property
    def name(self) -> str:
        """The file."""
        return self._trace.file

    @property
    def simulated(self) -> bool:
        """The recording says that its device was simulated."""
        return self._trace.header.simulated

    def events(self) -> list[Event]:
        """Give nothing: events come at their places between the rows."""
        return []

    async def open(self) -> None:
        """Go to the beginning."""
        self._row = 0
        self._began_s = time.monotonic()

    async def read(self) -> list[Chunk]:
        """Give the rows that are due; nothing at the end."""
        time_s = self._trace.time_s
        if self._row >= len(time_s):
            return []
        first = self._row
        if self._speed == float("inf"):
            last = first + ROWS
            await asyncio.sleep(0)
        else:
            due_s = self._began_s + (float(time_s[first]) - float(time_s[0])) / self._speed
            await asyncio.sleep(max(STEP_S, due_s - time.monotonic()))
            until_s = (time.monotonic() - self._began_s) * self._speed + float(time_s[0])
            last = max(first + 1, min(first + ROWS, int(time_s.searchsorted(until_s, "right"))))
        self._row = min(last, len(time_s))
        return [Chunk(time.monotonic(), self._rows(first, self._row))]

    def _rows(self, first: int, last: int) -> bytes:
        """Give rows as text with the events before and (at the end) behind them."""
        until = last + 1 if last == len(self._trace.time_s) else last
        parts = []
        for event in self._events:
            if first <= event.index < until:
                parts.append(self._format(first, event.index))
                parts.append(event_line(event))
                first = event.index
        return b"".join((*parts, self._format(first, last)))

    def _format(self, first: int, last: int) -> bytes:
        return format_rows(self._trace.time_s[first:last], [v[first:last] for v in self._values])

    async def write(self, data: bytes) -> None:
        """Refuse: a recording takes no commands."""
        raise LinkError(f"{self.name}: is a recording; no command of {len(data)} bytes can be sent to it")

    async def close(self) -> None:
        """Do nothing."""
