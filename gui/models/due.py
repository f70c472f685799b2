"""Which axles are due for a test, in one quiet sentence when the window opens."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

SHOWN = 2  # axles named; more would be a wall


def due_words(folder: Path) -> str:
    """Give the sentence; empty where nothing is due or nothing can be read."""
    from analysis.compare.due import Urgency, due_of_all
    from logger.edges.toml_file import read_toml
    from logger.errors import HeldwheelError
    from logger.recordings.axles import AxleFile, sheets_of
    from logger.recordings.heads import axle_tests

    axles = []
    for path in sheets_of(folder):
        try:
            axles.append(read_toml(path, AxleFile))
        except HeldwheelError:
            continue  # the axle's card names what is wrong with it
    if not any(axle.retest for axle in axles):
        return ""
    first: dict[str, str] = {}
    for line in due_of_all(axles, axle_tests(folder), datetime.now().astimezone().date()):
        if line.urgency is Urgency.DUE:
            first.setdefault(line.tag, line.text)
    said = [f"Axle {tag} is due for a test: {text}." for tag, text in first.items()][:SHOWN]
    more = len(first) - len(said)
    return "\n".join([*said, *([f"{more} more: heldwheel-read due lists them."] if more else [])])
