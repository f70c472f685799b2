"""Removing recordings: which are still being written, and under which name they are put away."""

from __future__ import annotations

import os
import time
from typing import TYPE_CHECKING

import pytest

from gui.models import undoing
from logger.errors import FileError
from logger.recordings.heads import OURS

if TYPE_CHECKING:
    from pathlib import Path

ROWS = b"0.0,1.0\n" * 100


def recording(path: Path, *, closed: bool, age_s: float = 0.0, ours: bool = True) -> Path:
    head = OURS + b" 1\n" if ours else b"time_s,torque_nm\n"
    path.write_bytes(head + ROWS + (b"\n# closed samples=100\n" if closed else b""))
    os.utime(path, (time.time() - age_s,) * 2)
    return path


@pytest.mark.parametrize(
    ("facts", "goes"),
    [
        ({"closed": False}, False),
        ({"closed": False, "age_s": 9.0}, False),
        ({"closed": False, "age_s": 10.5}, True),
        ({"closed": True}, True),
        ({"closed": False, "ours": False}, True),
    ],
)
def test_what_was_written_a_moment_ago_and_is_not_closed_stays(
    tmp_path: Path, facts: dict[str, object], *, goes: bool
) -> None:
    path = recording(tmp_path / "a.csv", **facts)
    if goes:
        assert undoing.to_bin(str(path)).back() == str(path)
    else:
        with pytest.raises(FileError, match="is being recorded"):
            undoing.to_bin(str(path))
    assert path.exists()


@pytest.mark.parametrize("name", ["a.csv", "left.1.csv", "a.dial.toml"])
def test_two_of_one_name_keep_their_ending(tmp_path: Path, name: str) -> None:
    for _ in range(2):
        undoing.to_bin(str(recording(tmp_path / name, closed=True)))
    ending = ".dial.toml" if name.endswith(".toml") else ".csv"
    kept = sorted(path.name for path in (tmp_path / undoing.BIN).iterdir())
    assert len(kept) == 2
    assert name in kept
    assert all(one.endswith(ending) and one.count(ending) == 1 for one in kept)
