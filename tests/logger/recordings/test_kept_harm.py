"""Recordings that are cut, taken away or have no room while they are written, and what is rescued of them.

Everything is done in turn, by one thread, so that what is saved and what waits is the same each time.
"""

from __future__ import annotations

import errno
import os
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from logger.errors import FileError
from logger.header import Header, JobFacts, Table
from logger.recordings import recording
from logger.recordings.appended import MOST_RECENT, AppendedFile, created, failed
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import keep_table, read_sidecar
from logger.samples import Block, Ending, EndReason, Event, EventKind
from tests.kept import kept, tried
from tests.logger.recordings.test_kept import COLUMNS, HEADER, said_of

DONE = Ending(EndReason.STOPPED)


def block(first: int, count: int = 5) -> Block:
    i = np.arange(first, first + count, dtype=float)
    events = (Event(EventKind.NOTE, 1, 0, "seen", 0.1 * first),)
    return Block(i / 10, {"torque": i / 4, "angle": i, "counter": i}, events)


def quiet_writer(path: Path) -> RecordingWriter:
    """Give a writer whose threads have ended: what is written is written by the test."""
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer._halt()
    return writer


def told(writer: RecordingWriter) -> list[object]:
    counts = [writer.saved, writer.on_disk, writer.unsaved, writer.lost, writer.full, writer.behind_s]
    return [*counts, writer.failure, writer.path.name]


def rescued(writer: RecordingWriter, folder: Path) -> list[object]:
    """Rescue, and read what was rescued."""
    try:
        path = writer.rescue(folder)
    except FileError as error:
        return [error, told(writer), sorted(one.name for one in folder.iterdir())]
    return [path.name, told(writer), said_of(path.read_bytes())]


HARMS = {
    "none": lambda path: None,
    "removed": lambda path: path.unlink(),
    "replaced": lambda path: (Path("b").write_text("x", "utf-8"), Path("b").replace(path)),
    "emptied": lambda path: os.truncate(path, 0),
    "cut": lambda path: os.truncate(path, path.stat().st_size // 2),
    "cut in its header": lambda path: os.truncate(path, 60),
    "cut by its closing": lambda path: os.truncate(path, path.stat().st_size - 3),
    "written into": lambda path: path.write_bytes(path.read_bytes() + b"x"),
    "changed": lambda path: path.write_bytes(path.read_bytes().replace(b"\n0.5,", b"\n0.6,")),
    "header changed": lambda path: path.write_bytes(path.read_bytes().replace(b"club", b"clud")),
}


@pytest.mark.skipif(os.name == "nt", reason="an open file can be taken away on POSIX only")
@pytest.mark.parametrize("harm", HARMS)
def test_kept_rescues_of_a_harmed_file(tmp_path, monkeypatch, harm):
    monkeypatch.chdir(tmp_path)
    answers = []
    for name, seen, closed in (("a", False, False), ("b", True, False), ("c", True, True), ("d", False, True)):
        path, elsewhere = Path(f"{name}.csv"), Path(f"at-{name}")
        elsewhere.mkdir()
        (elsewhere / f"{name}.rescued.csv").write_text("taken", "utf-8")
        writer = quiet_writer(path)
        for first in (0, 5, 10):
            writer.on_block(block(first))
            writer._flush()
            if seen and first == 5:
                writer._file.look()
        writer.on_block(block(15))
        if closed:
            HARMS[harm](path)
            answers.append(tried(writer.on_end, DONE))
        else:
            HARMS[harm](path)
            writer._guarded(writer._file.look)
            answers += [told(writer), tried(writer.on_block, block(20))]
        answers += [len(writer._file.recent), rescued(writer, elsewhere), rescued(writer, elsewhere)]
    kept("recordings-harm", harm, answers)


@pytest.mark.parametrize("room", [0, 10, 300, 700, 900, 1000, 1200])
def test_kept_recordings_on_a_full_disk(tmp_path, monkeypatch, room):
    monkeypatch.chdir(tmp_path)
    write, left, answers = os.write, [room], []

    def into(handle: int, data: bytes) -> int:
        if left[0] <= 0:
            raise OSError(errno.ENOSPC, "full")
        count = write(handle, data[: min(left[0], 64)])
        left[0] -= count
        return count

    monkeypatch.setattr("logger.recordings.appended.os.write", into)
    try:
        writer = quiet_writer(Path("a.csv"))
    except FileError as error:
        kept("recordings-harm", f"full at {room}", [error, Path("a.csv").exists()])
        return
    for first in (0, 5, 10):
        answers.append(tried(writer.on_block, block(first)))
        writer._flush()
        answers.append(told(writer))
    answers += [tried(writer.on_end, DONE), told(writer), said_of(Path("a.csv").read_bytes())]
    Path("at").mkdir()
    for more in (0, 40, 500, 10_000):
        left[0] = more
        answers.append(rescued(writer, Path("at")))
    kept("recordings-harm", f"full at {room}", answers)


def test_kept_counts_of_a_writer(tmp_path, monkeypatch):
    """How long a sample waits before it is told, and how many wait before no more are read, to the sample."""
    monkeypatch.chdir(tmp_path)
    now = [10.0]
    writer = quiet_writer(Path("a.csv"))
    monkeypatch.setattr(recording, "time", SimpleNamespace(monotonic=lambda: now[0]))
    answers = [told(writer)]
    for count in (1, 499_999, 1):
        zeros = np.zeros(count)
        writer.on_block(Block(zeros, {"torque": zeros, "angle": zeros, "counter": zeros}, ()))
        answers.append(told(writer))
        now[0] += 0.25
    for at in (11.9, 12.0, 12.1, 13.0):
        now[0] = at
        answers.append(writer.behind_s)
    writer._failure = FileError("x")
    answers.append(told(writer))
    large = quiet_writer(Path("b.csv"))
    for count in (1, 49_998, 1, 1):
        zeros = np.zeros(count)
        large.on_block(Block(zeros, {"torque": zeros, "angle": zeros, "counter": zeros}, ()))
    large._flush()
    lines = Path("b.csv").read_bytes().splitlines()
    answers += [[line for line in lines if line.startswith(b"# batch")][1:], large.saved]
    early = quiet_writer(Path("c.csv"))
    early.on_block(Block(np.empty(0), {one.name: np.empty(0) for one in COLUMNS}, ()))
    early._flush()
    answers += [told(early), Path("c.csv").read_bytes()]
    early.on_end(DONE)
    early.on_end(DONE)
    answers += [told(early), said_of(Path("c.csv").read_bytes())]
    odd = "a" * 60 + "\udcff" + "b" * 60
    answers.append(tried(RecordingWriter, Path("d.csv"), Header(job=JobFacts(notes=odd)), COLUMNS))
    kept("recordings-harm", "counts", answers)


def test_kept_words_of_what_stops_writing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    names = ("ENOSPC", "EDQUOT", "EROFS", "EACCES", "EPERM", "ENOENT", "ENOTDIR", "EIO", "ENAMETOOLONG", "EBUSY")
    path = Path("a.csv")
    answers = [failed(path, OSError(getattr(errno, name), "own words")) for name in names if hasattr(errno, name)]
    answers += [failed(path, OSError(errno.ENOENT, os.strerror(errno.ENOENT)))]
    answers += [failed(path, one) for one in (OSError(0, "cut"), OSError("plain"), OSError(), ValueError("v"))]
    path.write_bytes(b"")
    answers += [tried(created, one) for one in (path, Path("no/a.csv"), Path("a\0b"))]
    file = AppendedFile(Path("b.csv"))
    for size in (8_000_000, 8_000_000, 1, 15_999_999):
        file.append(bytes(size))
        answers.append([file.length, [len(one) for one in file.recent], file.sha256])
    file.look()
    answers.append([[len(one) for one in file.recent], len(file.read_back()), MOST_RECENT])
    file.append(b"x")
    answers.append([file.recent, file.read_back()[-2:]])
    os.truncate("b.csv", 10)
    answers.append(str(_error(file.look)))
    file.close()
    kept("recordings-harm", "words", answers)


def _error(call: object) -> object:
    try:
        return call()
    except OSError as error:
        return error.strerror


def test_kept_tables_beside_a_recording(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path, answers = Path("t.csv"), []
    path.write_text("a,b\n1,2\n", "utf-8")
    for table in (
        Table(),
        Table(time="a"),
        Table(time="a"),
        Table(torque="b", unit="N·m"),
        Table(time="b"),
        Table(unit="N·m", time_unit="ms"),
    ):
        answers.append([keep_table(path, table), read_sidecar(path)])
    kept("recordings-harm", "tables", answers)
