"""What was dropped on the window: a folder, recordings, tables, sounds; and what was cut off last time."""

from __future__ import annotations

import os
from dataclasses import dataclass
from typing import TYPE_CHECKING

from gui.models.archive import TRACES, list_files, read_entries
from logger.foreign.vibration import SOUNDS
from logger.recordings.dialled import ENDING

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence
    from pathlib import Path

LOOKED_AT = 40  # recordings, newest first: what was cut off last time is among them


@dataclass(frozen=True, slots=True)
class Dropped:
    """Paths by what is done with them; ``other`` are of no use here."""

    folders: tuple[str, ...] = ()
    recordings: tuple[str, ...] = ()
    tables: tuple[str, ...] = ()
    sounds: tuple[str, ...] = ()
    other: tuple[str, ...] = ()


def sorted_out(paths: Sequence[str]) -> Dropped:
    """Tell folders, recordings of ours, tables from elsewhere, sounds of drives and the rest apart."""
    folders = tuple(path for path in paths if os.path.isdir(path))
    sounds = tuple(path for path in paths if path not in folders and path.lower().endswith(SOUNDS))
    files = [path for path in paths if path not in (*folders, *sounds)]
    usable = [path for path in files if path.lower().endswith((*TRACES, ".json", ENDING))]
    ours = {entry.path for entry in read_entries(usable) if entry.ours}
    return Dropped(
        folders,
        tuple(path for path in usable if path in ours),
        tuple(path for path in usable if path not in ours),
        sounds,
        tuple(path for path in files if path not in usable),
    )


def cut_off(folder: Path, seen: Collection[str]) -> list[str]:
    """Give the newest recordings of a folder that were never closed and that nobody has been told of."""
    entries = read_entries(list_files(folder)[:LOOKED_AT])
    return [entry.path for entry in entries if not entry.closed and not entry.problem and entry.path not in seen]
