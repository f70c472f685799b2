"""Bytes of a recording put together by hand: what is one, and where rows, batches and events are."""

from __future__ import annotations

import zlib

import pytest

from logger.errors import FileError
from logger.recordings.stored import is_recording, read_recording

HEAD = b"# heldwheel recording 1\ntime_s,torque_Nm\n"
ROWS = b"0.0,1.0\n0.1,2.0\n"
EVENT = b"# event time_s=0.050000 kind=gap count=3 text=3 lost\n"


def batch(data: bytes, rows: int = 0, crc: int | None = None) -> bytes:
    """Close bytes as a batch."""
    return data + b"# batch rows=%d crc32=%08X\n" % (rows, zlib.crc32(data) if crc is None else crc)


def test_what_is_a_recording():
    for data in (
        b"# heldwheel recording 1\nx",
        b"# heldwh",
        b"#",
        b"x\n# batch rows=0",
        b'x = "heldwheel recording 1"',
    ):
        assert is_recording(data)
    for data in (b"", b"\n", b"# batch rows=0", b"# held in", b"time,torque\n"):
        assert not is_recording(data)


def test_rows_and_events_by_hand():
    data = batch(HEAD) + batch(EVENT + ROWS, 2) + batch(b"0.2,3.0\n" + EVENT + b"0.3,4.0\n" + EVENT, 2)
    found = read_recording(data, "a.csv")
    assert found.columns["torque_Nm"].tolist() == [1.0, 2.0, 3.0, 4.0]
    assert [(event.index, event.count, event.text) for event in found.events] == [(n, 3, "3 lost") for n in (0, 3, 4)]
    assert found.problems == ["was never closed (the program or the computer stopped); what checks was recovered"]


def test_events_where_the_header_is_damaged():
    data = batch(HEAD, crc=0) + batch(b"0.0,1.0\n" + EVENT, 1) + batch(ROWS, 2, crc=0) + batch(b"0.2,3.0\n" + EVENT, 1)
    found = read_recording(data, "a.csv")
    assert found.columns["torque_Nm"].tolist() == [1.0, 3.0]
    assert [event.index for event in found.events] == [1, 2]
    # Lines: two of the header, its batch line, a row, an event, a batch line; the damaged rows begin on the seventh.
    assert "line 7: 2 rows do not match their check and are excluded" in found.problems


def test_a_count_that_is_wrong_costs_its_own_batch_alone():
    data = batch(HEAD) + batch(EVENT + ROWS, 2) + batch(b"0.2,3.0\n", 5) + batch(b"0.3,4.0\n", 1)
    found = read_recording(data, "a.csv")
    assert found.columns["torque_Nm"].tolist() == [1.0, 2.0, 4.0]
    assert any("5 rows do not match" in text for text in found.problems)


def test_batch_lines_in_a_row_and_a_torn_one():
    """A batch of nothing, and a line that begins as a batch line does: part of the batch that follows."""
    empty = read_recording(batch(HEAD) + batch(ROWS, 2) + batch(b""), "a.csv")
    assert len(empty.problems) == 1
    torn = read_recording(batch(HEAD + b"# batch \n") + batch(ROWS, 2), "a.csv")
    assert torn.columns["torque_Nm"].tolist() == [1.0, 2.0]
    assert not any("excluded" in text for text in torn.problems)
    with pytest.raises(FileError, match="its line of column names '' is damaged"):
        read_recording(batch(b"\n"), "a.csv")


def test_bytes_behind_the_last_batch_are_counted():
    data = batch(HEAD) + batch(ROWS, 2)
    assert read_recording(data + b"x", "a.csv").problems[1] == "its last 1 bytes are no whole batch and are excluded"
    assert read_recording(HEAD, "a.csv").problems[1:] == ["not one of its batches is whole: nothing in it can be used"]


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        (b"0.0,1.0,2.0\n", "its rows have 3 values where 2 columns are named"),
        (b"0.0\n", "its rows have 1 values where 2 columns are named"),
        (b"0.0,x\n", "holds rows that are no numbers"),
        (b"0.1,1.0\n0.0,1.0\n", "its times go back or are missing"),
        (b",1.0\n0.0,1.0\n", "its times go back or are missing"),
    ],
)
def test_rows_that_this_program_would_not_write(rows, says):
    with pytest.raises(FileError, match=says):
        read_recording(batch(HEAD) + batch(rows, rows.count(b"\n")), "a.csv")


def test_two_rows_of_one_time():
    assert read_recording(batch(HEAD) + batch(b"0.0,1.0\n0.0,2.0\n", 2), "a.csv").columns["time_s"].tolist() == [0, 0]
