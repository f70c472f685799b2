"""Recordings with known contents, for damaging: every row follows from its counter."""

from __future__ import annotations

import random
from datetime import datetime, timedelta, timezone
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from logger.header import Header, JobFacts, Lever, Test, TransducerFacts
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind

if TYPE_CHECKING:
    from logger.recordings.files import Trace

COLUMNS = (Column("torque", "lbf·in"), Column("counter", ""), Column("late", "ms"))
HEADER = Header(
    started=datetime(2026, 5, 1, 10, 0, 0, tzinfo=timezone(timedelta(hours=2))),
    program="heldwheel (simulated)",
    simulated=True,
    time_from="device counter",
    job=JobFacts(number="A-17", vehicle="hill-climb saloon, yellow", notes='says "why" = #7, §'),
    test=Test(place="car", held="other side", gear="neutral", side="left"),
    lever=Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, studs=5),
    transducer=TransducerFacts(unit="lbf·in", sign="signed", capacity_nm=200),
)
RATE_HZ = 1000.0


def torque_of(counter: np.ndarray) -> np.ndarray:
    """Give the torque of a sample, in the device's unit with one decimal; every digit of it matters."""
    return np.round(120 + 1000 * np.sin(counter / 97.0), 1)


def late_of(counter: np.ndarray) -> np.ndarray:
    """Give by how much a sample was late, in ms."""
    return np.where(counter % 7 == 0, np.nan, np.round((counter * 37 % 1000) / 100, 2))


def block_of(first: int, count: int, events: tuple[Event, ...] = ()) -> Block:
    """Give a block of samples by their counters."""
    counter = np.arange(first, first + count, dtype=float)
    torque = np.where(counter % 211 == 0, np.nan, torque_of(counter))
    columns = {"torque": torque, "counter": counter, "late": late_of(counter)}
    return Block(counter / RATE_HZ, columns, events)


def write(path: Path, samples: int, *, block: int = 50, flush_every: int = 4) -> bytes:
    """Write a recording of so many samples in many batches, with events, and give its bytes."""
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer._halt()  # batches end where this function says, not when the clock does
    for number, first in enumerate(range(0, samples, block)):
        count = min(block, samples - first)
        events: tuple[Event, ...] = ()
        if number % 5 == 4:
            events = (Event(EventKind.GAP, count // 2, 20, "20 samples lost", first / RATE_HZ),)
        writer.on_block(block_of(first, count, events))
        if number % flush_every == flush_every - 1:
            writer._flush()
    writer.on_end(Ending(EndReason.STOPPED))
    return path.read_bytes()


def wrong_rows(trace: Trace) -> int:
    """Count rows that are not what was written."""
    counter, late = (*trace.columns.values(), np.empty(0), np.empty(0))[:2]  # by place: a damaged header is told
    if len(late) != len(trace.time_s):
        return len(trace.time_s)
    expected = block_of_counters(counter)
    right = trace.time_s == expected.time_s
    right &= _same(trace.torque, expected.columns["torque"])
    right &= _same(late, expected.columns["late"])
    right[1:] &= np.diff(counter) > 0
    return int((~right).sum())


def block_of_counters(counter: np.ndarray) -> Block:
    """Give the true samples for these counters."""
    torque = np.where(counter % 211 == 0, np.nan, torque_of(counter))
    return Block(counter / RATE_HZ, {"torque": torque, "counter": counter, "late": late_of(counter)})


def _same(a: np.ndarray, b: np.ndarray) -> np.ndarray:
    return (a == b) | (np.isnan(a) & np.isnan(b))


def flipped(data: bytes, rng: random.Random) -> bytes:
    """Flip one bit."""
    changed = bytearray(data)
    changed[rng.randrange(len(changed))] ^= 1 << rng.randrange(8)
    return bytes(changed)
