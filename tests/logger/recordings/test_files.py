"""Reading recordings: closed, unclosed, cut anywhere, with flipped bits, edited; never a silently wrong row."""

from __future__ import annotations

import hashlib
import os

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.errors import DescriptionError, FileError
from logger.header import Correction, Header, JobFacts, Lever, TransducerFacts
from logger.recordings.files import Trace, read_trace
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import add_correction, sidecar_path
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from tests.faults.forged import forged

COLUMNS = (Column("torque", "lbf·in"), Column("counter", ""))
HEADER = Header(transducer=TransducerFacts(unit="lbf·in", sign="reversed"), job=JobFacts(customer="a club"))
BATCHES, ROWS = 6, 20


def write(path, *, close: bool = True) -> RecordingWriter:
    """Write a small recording of several batches."""
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer._halt()  # batches are cut here, not by the clock
    for k in range(BATCHES):
        i = np.arange(ROWS * k, ROWS * k + ROWS, dtype=float)
        events = (Event(EventKind.GAP, 5, 3, "3 samples lost", k * 0.02 + 0.005),) if k % 2 else ()
        writer.on_block(Block(i / 1000, {"torque": i * 1.25 + 1000, "counter": i}, events))
        writer._flush()
    if close:
        writer.on_end(Ending(EndReason.STOPPED))
    return writer


@pytest.fixture(scope="module")
def closed(tmp_path_factory) -> bytes:
    path = tmp_path_factory.mktemp("closed") / "a.csv"
    write(path)
    return path.read_bytes()


def truly(row: int) -> tuple[float, float, float]:
    return row / 1000, row * 1.25 + 1000, float(row)


def check(trace: Trace) -> None:
    """Fail on any row that is not as written, or out of order."""
    rows = trace.columns.get("counter", np.empty(0)).astype(int).tolist()
    assert rows == sorted(set(rows))
    for at, row in enumerate(rows):
        assert (trace.time_s[at], trace.torque[at], float(row)) == pytest.approx(truly(row), rel=1e-14)


def read(tmp_path, data: bytes) -> Trace | None:
    """Read bytes as a recording; None if they are refused with a clear error."""
    path = tmp_path / "x.csv"
    path.write_bytes(data)
    try:
        return read_trace(path)
    except FileError:
        return None


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("damaged")


def test_closed(folder, closed):
    trace = read(folder, closed)
    assert trace is not None
    check(trace)
    assert trace.state == "closed"
    assert trace.problems == ()
    assert len(trace.time_s) == BATCHES * ROWS
    assert trace.sha256 == hashlib.sha256(closed).hexdigest()
    assert trace.above_sha256 == hashlib.sha256(closed[: closed.index(b"# closed")]).hexdigest()
    assert [(e.index, e.count) for e in trace.events] == [(25, 3), (65, 3), (105, 3)]
    assert trace.torque_nm[0] == pytest.approx(-1000 * 0.1129848, rel=1e-6)  # reversed sign, NIST SP 811


@given(st.integers(0, 10_000))
def test_truncated_at_any_byte(folder, closed, at):
    data = closed[: at % len(closed)]
    trace = read(folder, data)
    whole = data.count(b"\n# batch rows=20 ")
    if trace is None:
        assert len(data) == 0
        return
    check(trace)
    assert trace.state == "recovered"
    assert trace.problems
    assert len(trace.time_s) in (whole * ROWS, (whole - 1) * ROWS)


@given(st.integers(0, 100_000), st.integers(0, 7))
def test_a_flipped_bit_is_never_a_silently_wrong_row(folder, closed, at, bit):
    data = bytearray(closed)
    data[at % len(data)] ^= 1 << bit
    trace = read(folder, bytes(data))
    if trace is None:
        return
    check(trace)
    assert trace.state != "closed"
    assert trace.problems
    assert len(trace.time_s) >= (BATCHES - 2) * ROWS


@given(st.integers(0, 100_000), st.integers(0, 7))
def test_a_flipped_bit_in_an_unclosed_recording(folder, closed, at, bit):
    data = bytearray(closed[: closed.index(b"# closed")])
    data[at % len(data)] ^= 1 << bit
    trace = read(folder, bytes(data))
    if trace is not None:
        check(trace)
        assert trace.state == "recovered"


def test_unclosed_says_so(tmp_path):
    writer = write(tmp_path / "a.csv", close=False)
    trace = read_trace(tmp_path / "a.csv")
    check(trace)
    assert trace.state == "recovered"
    assert len(trace.time_s) == writer.saved == BATCHES * ROWS
    assert "was never closed" in trace.problems[0]
    writer.on_end(Ending(EndReason.STOPPED))
    assert read_trace(tmp_path / "a.csv").state == "closed"


def test_a_torn_row_is_left_out(folder, closed):
    cut = closed.index(b"# closed")
    trace = read(folder, closed[:cut] + b"9.999000,12")
    assert trace is not None
    check(trace)
    assert len(trace.time_s) == BATCHES * ROWS
    assert any("its last 11 bytes are no whole batch" in p for p in trace.problems)


def test_an_edited_value_is_left_out_and_told(folder, closed):
    trace = read(folder, closed.replace(b"0.03,1037.5", b"0.03,1937.5"))
    assert trace is not None
    check(trace)
    assert trace.state == "recovered"
    assert len(trace.time_s) == (BATCHES - 1) * ROWS
    assert any("its hash does not match" in p for p in trace.problems)
    assert any("20 rows do not match their check" in p for p in trace.problems)


def test_a_wrong_hash_is_told(folder, closed):
    data = closed[:-65] + b"0" * 64 + b"\n"
    trace = read(folder, data)
    assert trace is not None
    assert trace.state == "recovered"
    assert any("its hash does not match" in p for p in trace.problems)
    assert len(trace.time_s) == BATCHES * ROWS


def test_an_edited_header_is_told(folder, closed):
    trace = read(folder, closed.replace(b"a club", b"a clan"))
    assert trace is not None
    assert any("its header was changed or damaged" in p for p in trace.problems)
    broken = read(folder, closed.replace(b"[job]", b"[jab]"))
    assert broken is not None
    assert any("its header cannot be read" in p for p in broken.problems)
    check(broken)


def test_a_damaged_unit_is_refused_or_told(folder, closed):
    (folder / "x.csv").write_bytes(closed.replace(b"torque_lbf_in", b"torque_lbf_im"))
    with pytest.raises(FileError, match=r"x\.csv: its line of column names"):
        read_trace(folder / "x.csv")
    other = read(folder, closed.replace(b"torque_lbf_in", b"torque_lbf_ft"))
    assert other is not None
    assert any("its header says lbf·in, its torque column lbf·ft" in p for p in other.problems)


def test_a_wrong_count_in_the_closing_line_is_told(folder, closed):
    trace = read(folder, closed.replace(b"samples=120", b"samples=121"))
    assert trace is not None
    assert trace.state == "recovered"
    assert any("counts other samples" in p for p in trace.problems)


def test_many_damaged_batches_stay_readable(tmp_path):
    path = tmp_path / "a.csv"
    writer = RecordingWriter(path, HEADER, COLUMNS)
    writer._halt()  # batches are cut here, not by the clock
    for k in range(60):
        i = np.arange(2 * k, 2 * k + 2, dtype=float)
        writer.on_block(Block(i / 1000, {"torque": i * 1.25 + 1000, "counter": i}))
        writer._flush()
    writer.on_end(Ending(EndReason.STOPPED))
    data = path.read_bytes()
    head, _, body = data.partition(b"# batch rows=0")
    path.write_bytes(head + b"# batch rows=0" + body.replace(b"crc32=", b"crc32=0").replace(b"crc32=0", b"crc32=", 1))
    trace = read_trace(path)
    assert len(trace.time_s) == 0
    path.write_bytes(head + b"# batch rows=0" + body.replace(b",1", b",2"))
    trace = read_trace(path)
    assert len(trace.problems) < 25
    assert any("more batches do not match" in p for p in trace.problems)


@pytest.mark.parametrize("data", [b"", b"\n\n"])
def test_empty(folder, data):
    (folder / "x.csv").write_bytes(data)
    with pytest.raises(FileError, match="is empty"):
        read_trace(folder / "x.csv")


def test_no_such_file_and_a_folder(tmp_path):
    with pytest.raises(FileError, match="there is no such file"):
        read_trace(tmp_path / "no.csv")
    with pytest.raises(FileError, match="is a folder"):
        read_trace(tmp_path)


def test_a_sidecar_wins_over_the_header(tmp_path):
    path = tmp_path / "a.csv"
    write(path)
    before = path.read_bytes()
    sidecar_path(path).write_text(
        'tags = {fill = "B"}\n[job]\nnumber = "17"\n[transducer]\ngain = 1.01\n'
        '[lever]\nfixture = "one stud"\nlength_mm = 450\n',
        encoding="utf-8",
    )
    trace = read_trace(path)
    assert trace.header.job == JobFacts(number="17", customer="a club", tags={"fill": "B"})
    assert trace.header.transducer.gain == 1.01
    assert trace.header.transducer.sign == "reversed"
    assert trace.header.lever == Lever(fixture="one stud", length_mm=450)
    assert trace.sidecar is not None
    assert path.read_bytes() == before
    sidecar_path(path).write_text("gian = 1", encoding="utf-8")
    with pytest.raises(DescriptionError, match=r"a\.sidecar\.toml: line 1, gian"):
        read_trace(path)


def test_corrections_are_appended_and_the_recording_stays_as_it_is(tmp_path):
    from datetime import UTC, datetime

    path = tmp_path / "a.csv"
    write(path)
    before = path.read_bytes()
    first = Correction(at=datetime(2026, 5, 1, 10, tzinfo=UTC), reason="socket slipped", pull_start_s=1.5, exclude=True)
    second = Correction(at=datetime(2026, 5, 2, 10, tzinfo=UTC), reason="plateau ends earlier", rotating_end_s=4.0)
    add_correction(path, first)
    add_correction(path, second)
    trace = read_trace(path)
    assert trace.sidecar is not None
    assert trace.sidecar.corrections == (first, second)
    assert path.read_bytes() == before
    from logger.errors import InputError

    with pytest.raises(InputError, match="needs a reason"):
        add_correction(path, Correction(at=datetime(2026, 5, 1, tzinfo=UTC), reason=" "))


def test_every_hash_is_computed_and_none_is_taken_from_the_file(tmp_path):
    """Rows changed, their checks put right, the closing line kept: what it states is not what is given."""
    path = tmp_path / "a.csv"
    write(path)
    stated = read_trace(path).above_sha256
    path.write_bytes(forged(path.read_bytes(), 3.0))
    trace = read_trace(path)
    assert trace.state == "recovered"
    assert len(trace.time_s) == BATCHES * ROWS, "every check of a batch holds"
    assert stated in path.read_text("utf-8")
    assert stated not in (trace.sha256, trace.above_sha256)
    assert trace.sha256 == hashlib.sha256(path.read_bytes()).hexdigest(), "what sha256sum prints"
    assert "its hash does not match" in trace.problems[0]


@pytest.mark.skipif(os.name == "nt", reason="pipes have names on POSIX only")
@pytest.mark.parametrize("which", ["a.csv", "a.sidecar.toml"])
def test_a_pipe_in_a_files_place_is_refused_and_not_waited_for(tmp_path, which):
    write(tmp_path / "a.csv")
    (tmp_path / which).unlink(missing_ok=True)
    os.mkfifo(tmp_path / which)
    with pytest.raises(FileError, match="no regular file"):
        read_trace(tmp_path / "a.csv")
