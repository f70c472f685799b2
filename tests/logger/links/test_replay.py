"""Replays and the virtual transducer: the same session, the same samples, the source's hash travels along."""

from __future__ import annotations

import asyncio
import time

import numpy as np
import pytest

from logger.decoder.rows import RowDecoder, event_line
from logger.errors import DeviceError, LinkError
from logger.header import Header, TransducerFacts
from logger.links.replay import ReplayLink, replay_columns, replay_header
from logger.links.virtual import VirtualLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from logger.stream.session import Session
from tests.logger.scripted import Kept


def original(path, *, simulated: bool = False):
    columns = (Column("torque", "lbf·in"), Column("angle", "°"), Column("counter", ""), Column("late", "ms"))
    writer = RecordingWriter(path, Header(transducer=TransducerFacts(unit="lbf·in"), simulated=simulated), columns)
    i = np.arange(5000, dtype=float)
    torque = np.round(np.sin(i / 100) * 40, 2)
    torque[100] = np.nan
    events = (Event(EventKind.OVERLOAD, 100, 1, "beyond", 0.1), Event(EventKind.NOTE, 5000, 0, "the end", 4.999))
    writer.on_block(Block(i / 1000, {"torque": torque, "angle": i / 10, "counter": i, "late": i * 0}, events))
    writer.on_end(Ending(EndReason.STOPPED))
    return read_trace(path)


def replayed(trace, path, speed: float = float("inf")) -> Kept:
    session = Session(ReplayLink(trace, speed), RowDecoder(replay_columns(trace)), None)
    session.subscribe(kept := Kept())
    writer = RecordingWriter(path, replay_header(trace), session.columns)
    session.subscribe(writer)
    assert asyncio.run(session.run()).reason is EndReason.FINISHED
    return kept


@pytest.mark.parametrize("simulated", [False, True])
def test_a_replay_is_recorded_as_its_source_was(tmp_path, simulated):
    first = original(tmp_path / "a.csv", simulated=simulated)
    kept = replayed(first, tmp_path / "b.csv")
    second = read_trace(tmp_path / "b.csv")
    assert second.state == "closed"
    assert np.array_equal(second.time_s, first.time_s)
    assert np.array_equal(second.torque, first.torque, equal_nan=True)
    for name, column in first.columns.items():
        assert np.array_equal(second.columns[name], column)
    told = [(e.kind, e.index, e.text) for e in second.events if e.kind is not EventKind.SIMULATED]
    assert told == [(e.kind, e.index, e.text) for e in first.events]
    assert second.header.source is not None
    assert second.header.source.file == "a.csv"
    assert second.header.source.sha256 == first.sha256
    assert second.header.simulated == simulated
    assert second.header.started == first.header.started
    assert kept.torque[:2] == first.torque[:2].tolist()


def test_at_its_own_speed(tmp_path):
    first = original(tmp_path / "a.csv")
    begun = time.monotonic()
    replayed(first, tmp_path / "b.csv", speed=10.0)
    assert 0.4 < time.monotonic() - begun < 3.0  # 5 s of recording
    with pytest.raises(LinkError, match="above zero"):
        ReplayLink(first, 0)


def test_a_replay_takes_no_commands(tmp_path):
    with pytest.raises(LinkError, match="no command"):
        asyncio.run(ReplayLink(original(tmp_path / "a.csv")).write(b"Z"))


def test_rows_however_they_are_cut():
    columns = (Column("torque", "N·m"), Column("angle", "°"))
    event = Event(EventKind.AUTO_ZERO, 0, 3, "it zeroed itself")
    data = b"0.0,1.5,2\n" + event_line(event) + b"0.1,,3\n0.2,-1,4\n"
    whole = RowDecoder(columns).feed(data)
    parts = [RowDecoder(columns)]
    pieces = [parts[0].feed(data[i : i + 1]) for i in range(len(data))]
    torque = np.concatenate([p.columns["torque"] for p in pieces])
    assert np.array_equal(whole.columns["torque"], [1.5, np.nan, -1.0], equal_nan=True)
    assert np.array_equal(torque, whole.columns["torque"], equal_nan=True)
    assert [(e.kind, e.index, e.count, e.text) for e in whole.events] == [
        (EventKind.AUTO_ZERO, 1, 3, "it zeroed itself")
    ]
    assert RowDecoder(columns).feed(b"0,1,2\n", b"1,2,3\n", b"2,3,4\n").chunk_of.tolist() == [0, 1, 2]
    with pytest.raises(DeviceError, match="a row of 2 values"):
        RowDecoder(columns).feed(b"0,1\n")


def test_the_virtual_transducer_plays_its_pieces():
    pieces = [(i * 0.01, b"%d\n" % i) for i in range(50)]

    async def play(link: VirtualLink) -> list:
        await link.open()
        got = []
        while chunks := await link.read():
            got += chunks
        await link.close()
        return got

    for speed in (float("inf"), 20.0):
        begun = time.monotonic()
        chunks = asyncio.run(play(VirtualLink(pieces, speed=speed)))
        assert [c.data for c in chunks] == [data for _, data in pieces]
        due = [c.arrival_s - chunks[0].arrival_s for c in chunks]
        assert due == pytest.approx([t for t, _ in pieces])
        assert time.monotonic() - begun < 2.0
    with pytest.raises(LinkError, match="takes no commands"):
        asyncio.run(VirtualLink(pieces).write(b"Z"))
    with pytest.raises(LinkError, match="above zero"):
        VirtualLink(pieces, speed=-1)
