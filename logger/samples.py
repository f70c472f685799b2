"""What travels from a decoder to the recorder and the screen: blocks of samples, and events between them.

Conventions:
- A block holds arrays of equal length n, one per column; values are as the device delivered them, in its unit.
- A value the device marked as overload or error, or excluded, is NaN; an event beside it says why.
- An event stands *before* sample ``index`` of its block (``index == n``: after the last one).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


class EventKind(StrEnum):
    """What happened between two samples."""

    GAP = "gap"  # samples lost, counted from the device's counter
    SILENCE = "silence"  # nothing arrived for longer than the watchdog allows
    DISCONNECT = "disconnect"
    RECONNECT = "reconnect"
    OVERLOAD = "overload"  # the device says the torque is beyond its range
    DEVICE_ERROR = "device error"  # the device says its value is not valid
    GARBAGE = "garbage"  # bytes that are no reading
    DUPLICATE = "duplicate"  # packets or lines received twice and dropped
    REORDERED = "reordered"  # packets that came late and were dropped or put back
    UNIT = "unit"  # the device changed its unit
    ZERO = "zero"  # zero taken, by the device or the user
    AUTO_ZERO = "auto-zero"  # the device seems to have zeroed itself under load
    BATTERY = "battery low"
    CLOCK = "clock"  # the computer's clock was stepped
    NOTE = "note"  # written by the user
    SENT = "sent"  # bytes written to the device
    SIMULATED = "simulated"  # the device says in its bytes that it is simulated


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened between samples."""

    kind: EventKind  # what it is
    index: int = 0  # sample of the accompanying block that it stands before
    count: int = 0  # samples lost, bytes or packets rejected; 0 where nothing is counted
    text: str = ""  # one line for the user; no control characters
    time_s: float = float("nan")  # on the recording's time axis; NaN until a session has set it

    def at(self, time_s: float) -> Event:
        """Give the same event with its time set."""
        return replace(self, time_s=time_s)


@dataclass(frozen=True, slots=True)
class Chunk:
    """Bytes as a link received them: for Bluetooth one notification, for a port whatever one read gave."""

    arrival_s: float  # ``time.monotonic()`` in the first line of the callback that received it
    data: bytes  # the bytes


@dataclass(frozen=True, slots=True)
class Decoded:
    """What a decoder made of one drain of chunks."""

    columns: dict[str, Floats]  # shape (n,); values per column name, in the device's unit; "torque" is always there
    chunk_of: Ints  # shape (n,); which chunk of the drain completed each sample (its arrival time dates the sample)
    counter: Ints | None = None  # shape (n,); the device's sample counter, unwrapped; None where it has none
    events: tuple[Event, ...] = ()  # gaps, garbage, overloads ... at their places.

    def __len__(self) -> int:
        return len(self.chunk_of)


@dataclass(frozen=True, slots=True)
class Block:
    """Decoded samples with their times, ready to be recorded and drawn."""

    time_s: Floats  # shape (n,); seconds since the recording's start
    columns: dict[str, Floats]  # shape (n,); values per column name, in the unit of the recording's column
    events: tuple[Event, ...] = field(default=())  # with their times set

    def __len__(self) -> int:
        return len(self.time_s)


@dataclass(frozen=True, slots=True)
class Column:
    """A column of samples: its name and the unit it arrives in (``torque``, ``lbf·in``)."""

    name: str
    unit: str


class Decoder(Protocol):
    """Bytes to samples, without any IO: it knows no port, radio, clock or thread.

    A stream decoder (lines, frames) ignores the borders between chunks; a packet decoder (notifications, answers to
    polls) takes each chunk as one whole packet. However a stream is cut, the samples are the same.
    """

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns of every block, torque first."""
        ...

    @property
    def simulated(self) -> bool:
        """Whether the bytes so far carried the mark of a simulated device."""
        ...

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence, give or take: it settles whole wraps of a counter."""
        ...

    def feed(self, *chunks: bytes) -> Decoded:
        """Take the chunks of one drain in arrival order, and give what they complete."""
        ...

    def reset(self, *, midway: bool = True) -> Decoded:
        """Forget a half-received reading; what was forgotten is an event.

        ``midway``: what comes next may be the rest of another one. Only a decoder that cannot tell where a reading
        begins needs to know.
        """
        ...


class Subscriber(Protocol):
    """Receives what a session reads: a recorder, a live analysis, a window."""

    def on_block(self, block: Block) -> None:
        """Take the next samples and events, in time order."""
        ...

    def on_end(self, ending: Ending) -> None:
        """Learn that the stream has ended, and why; nothing comes after it."""
        ...


class EndReason(StrEnum):
    """Why a stream ended."""

    STOPPED = "stopped"  # by the user
    FINISHED = "finished"  # the source had no more (replay, virtual)
    LOST = "lost"  # the device went away and did not come back
    FAILED = "failed"  # an error in reading, decoding or recording


@dataclass(frozen=True, slots=True)
class Ending:
    """How a stream ended: the one value in which every failure of a reader arrives."""

    reason: EndReason  # why
    text: str = ""  # one line for the user
    error: Exception | None = None  # what was raised, for LOST and FAILED


def empty(columns: Sequence[Column], *, events: tuple[Event, ...] = ()) -> Decoded:
    """Give a ``Decoded`` of no samples with these columns."""
    none = np.empty(0)
    return Decoded({c.name: none for c in columns}, np.empty(0, np.int64), None, events)
