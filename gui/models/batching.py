"""All recordings that a search finds, in one table; run in a process of its own, which can be told to stop.

Conventions:
- The process says how far it is in a small file, and looks for another that tells it to stop: it has no other ear
  while every core is reading.
- What is done stands in a journal beside the table until the table is written, so a later run goes on from there.
"""

from __future__ import annotations

import contextlib
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from gui.models.display import grouped

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.rows.batch import By, Summary

ROWS: dict[By, str] = {"recording": "one row per recording", "pull": "one row per pull"}


@dataclass(frozen=True, slots=True)
class Far:
    """How far a batch is."""

    done: int
    total: int
    bad: int


class _Stopped(Exception):  # noqa: N818 - no error: the user said so
    """The user stopped it."""


def write_table(paths: Sequence[str], target: str, by: By, room: str) -> Summary | None:
    """Write the table, in the worker; None if it was stopped.

    Raises:
        HeldwheelError: The table cannot be written.
    """
    from analysis.rows.batch import batch

    said, stop = Path(room, "far"), Path(room, "stop")

    def progress(done: int, total: int, bad: int) -> None:
        with contextlib.suppress(OSError):
            said.write_text(f"{done} {total} {bad}", encoding="utf-8", newline="")
        if stop.exists():
            raise _Stopped

    try:
        return batch(paths, target, by=by, progress=progress)
    except _Stopped:
        return None


def how_far(room: str) -> Far | None:
    """Give how far the batch in this room is; None before its first word."""
    try:
        done, total, bad = Path(room, "far").read_text("utf-8").split()
        return Far(int(done), int(total), int(bad))
    except (OSError, ValueError):
        return None


def tell_to_stop(room: str) -> None:
    """Have the batch in this room stop after the files it is reading."""
    with contextlib.suppress(OSError):
        Path(room, "stop").touch()


def clear(room: str) -> None:
    """Forget what an earlier batch in this room said."""
    for name in ("far", "stop"):
        with contextlib.suppress(OSError):
            Path(room, name).unlink(missing_ok=True)


def done_words(summary: Summary) -> str:
    """Say what was written, and what was excluded."""
    rows = "1 row" if summary.rows == 1 else f"{grouped(summary.rows)} rows"
    text = f"{rows} from {grouped(summary.files - len(summary.bad))} recordings written to {summary.table}."
    if summary.resumed:
        text += f" {grouped(summary.resumed)} were read before."
    if summary.bad:
        reasons = [bad.error.splitlines()[0].removeprefix(f"{bad.file}: ") for bad in summary.bad[:3]]
        listed = "; ".join(f"{Path(bad.file).name}: {why}" for bad, why in zip(summary.bad[:3], reasons, strict=True))
        more = f" and {len(summary.bad) - 3} more" if len(summary.bad) > 3 else ""
        text += f" Excluded: {listed}{more}."
    return text
