"""Rows of a recording to samples: what a replay plays through a session."""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.decoder.match import NAN
from logger.errors import DeviceError
from logger.samples import Column, Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from collections.abc import Sequence

TIME: Final = Column("time", "s")
EVENT: Final = b"# event "


class RowDecoder:
    """A stream decoder for lines ``time,torque,...`` with ``# event kind count text`` between them.

    Args:
        columns: The source's, torque first, without the time.
    """

    simulated: Final = False

    def __init__(self, columns: Sequence[Column]) -> None:
        self.columns = (*columns, TIME)
        self._tail = b""

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Do nothing: a replay has no counter to unwrap."""

    def reset(self, *, midway: bool = True) -> Decoded:
        """Begin again."""
        self._tail = b""
        return empty(self.columns)

    def feed(self, *chunks: bytes) -> Decoded:
        """Read the rows that end in these chunks.

        Raises:
            DeviceError: A row has other columns.
        """
        data = b"".join((self._tail, *chunks))
        ends = [end + len(self._tail) for end in accumulate(map(len, chunks))]
        *lines, self._tail = data.split(b"\n")
        rows: list[list[float]] = []
        chunk_of: list[int] = []
        events: list[Event] = []
        at = chunk = 0
        for line in lines:
            at += len(line) + 1
            while at > ends[chunk]:
                chunk += 1
            if line.startswith(EVENT):
                events.append(_event(line, len(rows)))
                continue
            row = [float(cell) if cell else NAN for cell in line.split(b",")]
            if len(row) != len(self.columns):
                raise DeviceError(f"a row of {len(row)} values where {len(self.columns)} columns are replayed")
            rows.append(row)
            chunk_of.append(chunk)
        table = np.array(rows, np.float64).reshape(-1, len(self.columns))
        names = [TIME.name, *(column.name for column in self.columns[:-1])]
        columns = {name: table[:, i] for i, name in enumerate(names)}
        return Decoded(columns, np.array(chunk_of, np.int64), None, tuple(events))


def event_line(event: Event) -> bytes:
    """Give the line that stands for an event."""
    return EVENT + f"{event.kind.name} {event.count} {event.text}\n".encode()


def _event(line: bytes, index: int) -> Event:
    kind, count, text = line.removeprefix(EVENT).split(b" ", 2)
    return Event(EventKind[kind.decode()], index, int(count), text.decode("utf-8", "replace"))
