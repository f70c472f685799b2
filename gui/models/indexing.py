"""An index of the reports in a folder, made in the worker as the command makes it, with a word of how far it is."""

from __future__ import annotations

import contextlib
import time
from pathlib import Path

from gui.models.display import grouped

TELL_EVERY_S = 0.2


def write_index(folder: str, title: str, room: str) -> tuple[str, str]:
    """Write the index of a folder's reports, in the worker; give its path and what to say of it.

    Raises:
        HeldwheelError: There is no report in it, or it cannot be read or written.
    """
    from analysis.report.index import make_index

    said, last = Path(room, "index"), 0.0

    def tell(done: int, total: int) -> None:
        nonlocal last
        if time.monotonic() - last >= TELL_EVERY_S:
            last = time.monotonic()
            with contextlib.suppress(OSError):
                said.write_text(f"{done} {total}", encoding="utf-8", newline="")

    try:
        path, count, other = make_index(folder, title, tell=tell)
    finally:
        with contextlib.suppress(OSError):
            said.unlink(missing_ok=True)
    text = "Index of one report" if count == 1 else f"Index of {grouped(count)} reports"
    return str(path), "\n".join([f"{text} written to {path}", *(f"Not listed: {one}" for one in other[:3])])


def how_far(room: str) -> str:
    """Say how far the index in this room is; empty before its first word."""
    try:
        done, total = Path(room, "index").read_text("utf-8").split()
        return f"{grouped(int(done))} of {grouped(int(total))} reports read for the index"
    except (OSError, ValueError):
        return ""
