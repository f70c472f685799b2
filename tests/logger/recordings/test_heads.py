"""A header by itself says what the whole recording says, for every recording of the example."""

from __future__ import annotations

from pathlib import Path

import pytest

from logger.recordings.files import read_trace
from logger.recordings.heads import axle_tests, read_header

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
