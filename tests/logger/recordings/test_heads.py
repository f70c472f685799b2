"""A header by itself says what the whole recording says, for every recording of the example."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from logger.header import Axle, Header
from logger.recordings.dialled import DialFile, DialReading, write_dialled
from logger.recordings.files import read_trace
from logger.recordings.heads import axle_tests, read_header
from logger.recordings.recording_text import format_header

DAY = datetime(2026, 5, 14, tzinfo=UTC)
SEASON = Path(__file__).parents[3] / "recordings"
NAMES = ("01-arrival-left", "02-build-shim-30", "05-event-1", "06-unclosed", "07-study-1a1")


@pytest.mark.parametrize("name", NAMES)
def test_the_head_is_the_whole_header(name: str):
    """``05-event-1`` has a tag called event: no line of the recording's events may be taken for it, nor it for one."""
    path = SEASON / f"{name}.csv"
    assert read_header(path) == read_trace(path).header


def test_axles_and_their_tests():
    found = axle_tests(SEASON)
    assert set(found) == {"43/11"}
    assert len(found["43/11"]) > 40


def test_a_job_read_from_a_dial_has_its_header(tmp_path: Path):
    header = Header(started=DAY, axle=Axle(tag="7"))
    path = tmp_path / "a.dial.toml"
    write_dialled(path, DialFile(header=header, readings=(DialReading(shown=50.0),), signed=DAY))
    assert read_header(path) == header
    assert axle_tests(tmp_path) == {"7": [DAY]}


def test_hidden_files_and_other_endings_are_no_tests(tmp_path: Path):
    text = format_header(Header(started=DAY, axle=Axle(tag="7"))) + "time_s,torque_Nm\n"
    for name in (".a.csv", "a.txt", "a.csv.part"):
        (tmp_path / name).write_text(text, "utf-8")
    assert axle_tests(tmp_path) == {}
    (tmp_path / "a.csv").write_text(text, "utf-8")
    assert axle_tests(tmp_path) == {"7": [DAY]}
