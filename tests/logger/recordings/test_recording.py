"""Writing recordings: the format, what counts as saved, full disks and removed folders, nothing overwritten."""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import threading
import time
import zlib

import msgspec
import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.edges.toml_file import parse_toml
from logger.errors import FileError
from logger.header import Header, JobFacts, TransducerFacts
from logger.recordings import recording
from logger.recordings.appended import AppendedFile
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.recordings.recording_text import column_names, format_event, format_header, format_rows
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind

COLUMNS = (Column("torque", "lbf·in"), Column("angle", "°"), Column("counter", ""), Column("late", "ms"))
HEADER = Header(transducer=TransducerFacts(unit="lbf·in"), job=JobFacts(customer="a club"))
STOPPED = Ending(EndReason.STOPPED, "stopped")


def block(first: int, count: int, *events: Event) -> Block:
    i = np.arange(first, first + count, dtype=float)
    columns = {"torque": i * 0.25, "angle": i * 0.1, "counter": i, "late": np.zeros(count)}
    return Block(i / 1000, columns, events)


def recorded(path, *blocks: Block, columns=COLUMNS, header=HEADER) -> RecordingWriter:
    writer = RecordingWriter(path, header, columns)
    for one in blocks:
        writer.on_block(one)
    writer.on_end(STOPPED)
    return writer


def test_the_format(tmp_path):
    path = tmp_path / "a.csv"
    gap = Event(EventKind.GAP, 2, 20, "20 samples\nlost\x07", 0.002)
    recorded(path, block(0, 4, gap))
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines()
    assert lines[0] == "# heldwheel recording 1"
    assert lines[1] == '# schema = "heldwheel recording 1"'
    assert '# customer = "a club"' in lines
    names = lines.index("time_s,torque_lbf_in,angle_deg,counter,late_ms")
    assert all(line.startswith("#") for line in lines[:names])
    head = text[: text.index("# batch")]
    assert lines[names + 1] == f"# batch rows=0 crc32={zlib.crc32(head.encode()):08X}"
    assert lines[names + 2] == "0.0,0.0,0.0,0,0.0"
    assert lines[names + 4] == "# event time_s=0.002000 kind=gap count=20 text=20 samples lost"
    body = "\n".join(lines[names + 2 : names + 7]) + "\n"
    assert lines[names + 7] == f"# batch rows=4 crc32={zlib.crc32(body.encode()):08X}"
    above = text[: text.index("# closed")]
    assert lines[-1] == f"# closed samples=4 sha256={hashlib.sha256(above.encode()).hexdigest()}"
    assert text.endswith("\n")
    assert "\r" not in text


def test_pandas_reads_it(tmp_path):
    path = tmp_path / "a.csv"
    recorded(path, block(0, 500, Event(EventKind.NOTE, 7, 0, 'a, "note"', 0.0)))
    table = pd.read_csv(path, comment="#")
    assert list(table.columns) == ["time_s", "torque_lbf_in", "angle_deg", "counter", "late_ms"]
    assert table["torque_lbf_in"].tolist() == [i * 0.25 for i in range(500)]


def test_a_trace_comes_back(tmp_path):
    path = tmp_path / "a.csv"
    note = Event(EventKind.NOTE, 3, 0, "lever changed", 0.103)
    recorded(path, block(0, 100), block(100, 5, note))
    trace = read_trace(path)
    assert trace.state == "closed"
    assert trace.problems == ()
    assert trace.unit == "lbf·in"
    assert trace.torque.tolist() == [i * 0.25 for i in range(105)]
    assert trace.torque_nm[4] == pytest.approx(0.11298482902761668, rel=1e-14)
    assert trace.angle_deg is not None
    assert list(trace.columns) == ["angle_deg", "counter", "late_ms"]
    assert [(e.kind, e.index, e.text, e.time_s) for e in trace.events] == [
        (EventKind.NOTE, 103, "lever changed", 0.103)
    ]
    assert trace.header.job.customer == "a club"
    assert trace.header.started is not None
    assert trace.header.started.tzinfo is not None
    assert trace.header.program.startswith("heldwheel")
    assert not trace.header.simulated


@given(
    st.lists(
        st.tuples(
            st.one_of(st.floats(-1e6, 1e6), st.just(float("nan")), st.floats(-1e3, 1e3, width=32)),
            st.integers(-(10**9), 10**9).map(lambda n: n / 1000),
        ),
        max_size=40,
    )
)
def test_values_come_back_with_all_digits_a_device_delivers(rows):
    time_s = np.arange(len(rows)) / 1000
    values = np.array(rows, float).reshape(-1, 2)
    text = format_rows(time_s, [values[:, 0], values[:, 1]]).decode()
    lines = [line.split(",") for line in text.splitlines()]
    largest = np.nanmax(np.abs(values[:, 0]), initial=0.0)
    for (first, second), cells in zip(rows, lines, strict=True):
        assert (cells[1] == "") == (first != first)
        if cells[1]:
            assert float(cells[1]) == pytest.approx(first, rel=1e-14, abs=largest * 1e-11)
        assert float(cells[2]) == second


def test_digits():
    def cells(*values: float) -> list[str]:
        text = format_rows(np.zeros(len(values)), [np.array(values)]).decode()
        return [line.split(",")[1] for line in text.splitlines()]

    assert cells(1234 * 0.01, 60.0, 3 * 0.1) == ["12.34", "60.0", "0.3"]
    assert cells(100.5859375, 0.5) == ["100.5859375", "0.5"]
    assert cells(float(np.float32(0.1)), 60.5) == ["0.1000000015", "60.5"]
    assert cells(4294967295.0, -7.0) == ["4294967295", "-7"]
    assert cells(1e-9, 0.0) == ["1e-9", "0.0"]
    assert cells(123456789.123456, 1.0) == ["123456789.123456", "1.0"]
    assert format_rows(np.empty(0), [np.empty(0)]) == b""
    # Noise of computing is in the sixteenth digit; beside 10^-6 and 10^15 a power of ten would not be exact.
    assert cells(87 * 0.1, 0.0) == ["8.7", "0.0"]
    assert cells(30 * 0.35e-7, 0.0) == ["1.05e-6", "0.0"]
    assert cells(1e-6, 3.0000000000000004e-7) == ["1e-6", "3.0000000000000004e-7"]
    assert cells(1.23456789012e-8) == ["1.23456789012e-8"]
    assert cells(1050000000000003.5) == ["1050000000000003.5"]
    assert cells(1e15, 0.1 + 0.2) == ["1000000000000000.0", "0.30000000000000004"]
    # Twelve digits for floats of 32 bits that have more than nine decimals, fifteen for all others.
    assert cells(1 / 3, 0.0) == ["0.333333333333333", "0.0"]
    assert cells(123456.5, 2**-9) == ["123456.5", "0.001953125"]
    assert cells(123456.5, 2**-10) == ["123456.5", "0.000977"]


def test_column_names():
    columns = (Column("torque", "N·m"), Column("rate", "°/s"), Column("temperature", "°C"), Column("counter", ""))
    assert column_names(columns) == ("torque_Nm", "rate_deg_s", "temperature_degC", "counter")


@given(st.sampled_from(EventKind), st.text(max_size=400), st.integers(0, 10**12), st.floats(-1e6, 1e6))
def test_an_event_is_one_safe_line(kind, text, count, time_s):
    line = format_event(Event(kind, 0, count, text, time_s))
    assert line.count("\n") == 1
    assert line.endswith("\n")
    assert line.isprintable() or line[:-1].isprintable()
    assert len(line) < 420


def test_never_overwritten(tmp_path):
    path = tmp_path / "a.csv"
    path.write_text("precious", encoding="utf-8")
    with pytest.raises(FileError, match="exists already and is never overwritten"):
        RecordingWriter(path, HEADER, COLUMNS)
    assert path.read_text(encoding="utf-8") == "precious"


def test_a_missing_folder(tmp_path):
    with pytest.raises(FileError, match="its folder is not there"):
        RecordingWriter(tmp_path / "no" / "a.csv", HEADER, COLUMNS)


def test_a_read_only_folder_or_disk(tmp_path, monkeypatch):
    for number, told in ((errno.EACCES, "not permitted"), (errno.EROFS, "write-protected")):

        def refused(*_args, number=number):
            raise OSError(number, os.strerror(number))

        monkeypatch.setattr("logger.recordings.appended.os.open", refused)
        with pytest.raises(FileError, match=told):
            RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)


def test_saved_within_a_quarter_of_a_second(tmp_path):
    writer = RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)
    writer.on_block(block(0, 10))
    deadline = time.monotonic() + 5
    while writer.saved < 10 and time.monotonic() < deadline:
        time.sleep(0.01)
    data = (tmp_path / "a.csv").read_bytes()
    assert b"# batch rows=10 " in data
    assert writer.unsaved == 0
    writer.on_end(STOPPED)


def test_a_simulated_device_marks_the_header(tmp_path):
    recorded(tmp_path / "a.csv", block(0, 3, Event(EventKind.SIMULATED, 0)))
    assert "# simulated = true" in (tmp_path / "a.csv").read_text(encoding="utf-8")
    late = tmp_path / "b.csv"
    writer = RecordingWriter(late, HEADER, COLUMNS)
    writer.on_block(block(0, 3))
    while not writer.saved:
        time.sleep(0.01)
    writer.on_block(block(3, 3, Event(EventKind.SIMULATED, 0)))
    writer.on_end(STOPPED)
    assert "simulated = true" not in late.read_text(encoding="utf-8")
    assert read_trace(late).header.simulated  # the event tells it


def test_what_comes_while_the_header_is_made_does_no_harm(tmp_path):
    """Blocks come from another thread than the one that writes: here one comes at every step of it, for a moment."""
    writers: list[RecordingWriter] = []
    come: list[int] = []

    def between(frame, what, value):
        looks = frame.f_code.co_name in {"_begin", "<genexpr>", "<listcomp>"}
        if frame.f_code.co_filename == recording.__file__ and looks and writers and len(come) < 50:
            come.append(0)
            writers[0].on_block(block(0, 0, Event(EventKind.NOTE, 0, 0, "battery", 0.0)))
        return between

    before = threading.gettrace()
    threading.settrace(between)
    try:
        writers.append(RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS))
        for first in range(0, 40, 4):
            writers[0].on_block(block(first, 4))
        while not writers[0].saved and writers[0].failure is None:
            time.sleep(0.01)
    finally:
        threading.settrace(before)
    writers[0].on_end(STOPPED)
    assert come
    assert writers[0].failure is None
    assert len(read_trace(tmp_path / "a.csv").time_s) == 40


def test_nothing_received(tmp_path):
    recorded(tmp_path / "a.csv")
    trace = read_trace(tmp_path / "a.csv")
    assert trace.state == "closed"
    assert len(trace.time_s) == 0


class Disk:
    """Lets so many bytes through and is full then."""

    def __init__(self, monkeypatch, room: int) -> None:
        self.room = room
        self._write = os.write
        monkeypatch.setattr("logger.recordings.appended.os.write", self.write)

    def write(self, handle: int, data: bytes) -> int:
        if self.room <= 0:
            raise OSError(errno.ENOSPC, "No space left on device")
        count = self._write(handle, data[: self.room])
        self.room -= count
        return count


def wait_for(true) -> None:
    deadline = time.monotonic() + 5
    while not true():
        assert time.monotonic() < deadline
        time.sleep(0.01)


def test_a_full_disk_loses_nothing_acknowledged(tmp_path, monkeypatch):
    path = tmp_path / "a.csv"
    disk = Disk(monkeypatch, 60_000)
    writer = RecordingWriter(path, HEADER, COLUMNS)
    sent = 0
    while writer.failure is None:
        sent += 100
        writer.on_block(block(sent - 100, 100))
        time.sleep(0.02)
    sent += 100
    with pytest.raises(FileError, match=r"the disk is full.*; \d+ samples had been saved, .*; \d+ received since"):
        writer.on_block(block(sent - 100, 100))
    saved = writer.saved
    assert 0 < saved < sent
    with pytest.raises(FileError, match="the disk is full"):
        writer.on_end(STOPPED)
    trace = read_trace(path)
    assert trace.state == "recovered"
    assert len(trace.time_s) == saved
    assert writer.unsaved == sent - saved
    # What was kept in memory is written elsewhere, with all that was saved.
    disk.room = 10**9
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    rescued = read_trace(writer.rescue(elsewhere))
    assert rescued.state == "closed"
    assert rescued.torque.tolist() == [i * 0.25 for i in range(sent)]


def test_a_removed_folder_is_noticed_and_everything_rescued(tmp_path, monkeypatch):
    monkeypatch.setattr("logger.recordings.recording.SYNC_S", 0.05)
    folder = tmp_path / "stick"
    folder.mkdir()
    path = folder / "a.csv"
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer.on_block(block(0, 50))
    wait_for(lambda: writer.saved == 50)
    path.unlink()
    folder.rmdir()
    writer.on_block(block(50, 50))
    wait_for(lambda: writer.failure is not None)
    with pytest.raises(FileError, match="is not there"):
        writer.on_block(block(100, 50))
    with pytest.raises(FileError):
        writer.on_end(STOPPED)
    rescued = read_trace(writer.rescue(tmp_path))
    assert rescued.state == "closed"
    assert len(rescued.time_s) == 150


def test_a_failing_sync_is_told(tmp_path, monkeypatch):
    monkeypatch.setattr("logger.recordings.recording.SYNC_S", 0.02)
    writer = RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)

    def broken(_handle):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr("logger.recordings.appended.os.fsync", broken)
    writer.on_block(block(0, 5))
    wait_for(lambda: writer.failure is not None)
    with pytest.raises(FileError, match=r"the disk reports an error.*5 samples had been saved, 0 of them are known"):
        writer.on_end(STOPPED)


def test_the_folder_is_brought_onto_the_disk_once(tmp_path, monkeypatch):
    """A file whose name is not on the disk is lost with it; once it is there, it stays there."""
    synced = []
    monkeypatch.setattr("logger.recordings.appended.sync_folder", synced.append)
    file = AppendedFile(tmp_path / "a.csv")
    for _ in range(3):
        file.append(b"1,2\n")
        file.sync()
    file.close()
    assert synced == [tmp_path]


HARMS = {
    "removed": lambda path: path.unlink(),
    "moved": lambda path: path.rename(path.with_name("moved.csv")),
    "replaced": lambda path: (path.with_name("b").write_text("x"), path.with_name("b").replace(path)),
    "emptied": lambda path: os.truncate(path, 0),
    "cut": lambda path: os.truncate(path, path.stat().st_size // 2),
}


@pytest.mark.parametrize("harm", HARMS)
@pytest.mark.parametrize("when", ["while recording", "in the last moment"])
def test_a_file_taken_away_is_noticed_and_what_there_is_rescued(tmp_path, monkeypatch, harm, when):
    """At every sync and at the end: an end that looks well on a file that nobody finds would be a lost recording."""
    monkeypatch.setattr("logger.recordings.recording.SYNC_S", 0.05 if when == "while recording" else 60)
    path = tmp_path / "a.csv"
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer.on_block(block(0, 50))
    wait_for(lambda: writer.saved == 50 and (writer.on_disk == 50 or when != "while recording"))
    HARMS[harm](path)
    if when == "while recording":
        wait_for(lambda: writer.failure is not None)
    with contextlib.suppress(FileError):
        writer.on_block(block(50, 50))
    with pytest.raises(FileError, match=r"a\.csv.*samples had been saved"):
        writer.on_end(STOPPED)
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    rescued = read_trace(writer.rescue(elsewhere))
    assert rescued.state == "closed"
    assert len(rescued.time_s) + writer.lost == 100
    # What was seen on the disk and is not there any more is gone; what came since is still in memory.
    assert writer.lost == (50 if harm in ("emptied", "cut") and when == "while recording" else 0)
    assert [event.count for event in rescued.events] == ([50] if writer.lost else [])


@pytest.mark.parametrize("thread", ["_keep_writing", "_keep_syncing"])
def test_a_thread_that_fails_ends_the_recording_in_words(tmp_path, monkeypatch, thread):
    def broken(_self):
        raise RuntimeError("a bug")

    monkeypatch.setattr(RecordingWriter, thread, broken)
    writer = RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)
    wait_for(lambda: writer.failure is not None)
    with pytest.raises(FileError, match=r"a\.csv: cannot be written: internal error: RuntimeError: a bug"):
        writer.on_block(block(0, 50))
    assert len(read_trace(writer.rescue(tmp_path)).time_s) == 50


def test_text_that_is_no_utf8_is_refused_before_anything_is_recorded(tmp_path):
    odd = msgspec.structs.replace(HEADER, job=JobFacts(notes="wheel \udcff"))
    with pytest.raises(FileError, match=r"no UTF-8, near .*wheel"):
        RecordingWriter(tmp_path / "a.csv", odd, COLUMNS)
    assert not list(tmp_path.iterdir())


def test_a_failed_rescue_can_be_tried_in_another_folder(tmp_path, monkeypatch):
    disk = Disk(monkeypatch, 20_000)
    writer = RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)
    sent = 0
    while writer.failure is None:
        writer.on_block(block(sent, 100))
        sent += 100
        time.sleep(0.02)
    disk.room = 10_000
    with pytest.raises(FileError, match="the disk is full"):
        writer.rescue(tmp_path)
    disk.room = 10**9
    path = writer.rescue(tmp_path)
    assert read_trace(path).torque.tolist() == [i * 0.25 for i in range(sent)]
    assert writer.rescue(tmp_path) == path, "what is whole needs no other file, least of all an empty one"


def test_a_failed_rescue_counts_what_the_first_file_had(tmp_path, monkeypatch):
    disk = Disk(monkeypatch, 10**9)
    writer = RecordingWriter(tmp_path / "a.csv", HEADER, COLUMNS)
    writer.on_block(block(0, 100))
    wait_for(lambda: writer.saved == 100)
    os.truncate(tmp_path / "a.csv", 0)
    with pytest.raises(FileError, match="cut it short; 100 samples had been saved"):
        writer.on_end(STOPPED)
    disk.room = 100
    with pytest.raises(FileError, match=r"the disk is full.*; 100 samples had been saved"):
        writer.rescue(tmp_path)


@given(st.text(alphabet="a,; =+-@'\"\\\t\u002cC0ä", max_size=12))
def test_no_text_of_a_recording_becomes_a_formula(note):
    """What a spreadsheet splits at commas, semicolons or tabs begins with no = + - @ (OWASP, CSV injection)."""
    header = msgspec.structs.replace(HEADER, job=JobFacts(notes=note))
    text = format_header(header) + format_event(Event(EventKind.NOTE, text=note, time_s=0.0))
    assert parse_toml("\n".join(line[2:] for line in format_header(header).split("\n")[1:]), Header, "x") == header
    for line in text.splitlines():
        for cell in [cell for separator in ",;\t" for cell in line.split(separator)[1:]]:
            assert not cell.strip(" '\"").startswith(("=", "+", "-", "@")), line


def test_events_are_read_as_they_were_told(tmp_path):
    event = Event(EventKind.NOTE, 0, 0, "stop,=1+1; @here", 0.0)
    recorded(tmp_path / "a.csv", Block(np.arange(2.0), {c.name: np.zeros(2) for c in COLUMNS}, (event,)))
    assert ",=" not in (tmp_path / "a.csv").read_text("utf-8")
    assert [e.text for e in read_trace(tmp_path / "a.csv").events] == [event.text]


def test_no_thread_is_left(tmp_path):
    before = threading.active_count()
    recorded(tmp_path / "a.csv", block(0, 5))
    assert threading.active_count() == before
