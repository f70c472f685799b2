"""Bringing in a table from elsewhere: what it says of itself, what it leaves open, and a copy that keeps the answers.

The choices are those of the command line (``logger.foreign``). The original is never changed: its copy lies among the
recordings byte by byte, and a sidecar beside it says how it is read.
"""

from __future__ import annotations

import shutil
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from logger.edges.small_file import file_stem, open_regular
from logger.edges.units import is_force, parse_number, parse_quantity
from logger.errors import FileError, HeldwheelError
from logger.foreign.choices import TableQuestion, TableQuestionsError, laid_over
from logger.foreign.files import grid_of
from logger.foreign.reading import read_foreign
from logger.header import Lever, Sidecar, Table
from logger.recordings.heads import OURS
from logger.recordings.sidecar import change_sidecar, read_sidecar

if TYPE_CHECKING:
    from logger.samples import Floats

PREVIEW_ROWS = 12
WIDEST = 24  # columns that are shown
POINTS = 2000  # of the trace that is shown


@dataclass(frozen=True, slots=True)
class TablePreview:
    """A table as it would be read."""

    names: tuple[str, ...] = ()  # headings of its columns; ``column 2`` where a heading is missing or stands twice
    rows: tuple[tuple[str, ...], ...] = ()  # its first rows
    questions: tuple[TableQuestion, ...] = ()  # what it leaves open
    problem: str = ""  # why it cannot be read
    used: Table = field(default_factory=Table)  # how it was read
    notes: tuple[str, ...] = ()  # what was assumed or left out
    # time_s, torque: shape (m,); the trace, thinned; empty where it cannot be read yet
    time_s: Floats | None = None
    torque: Floats | None = None
    samples: int = 0  # of the whole trace

    @property
    def ready(self) -> bool:
        """Whether it can be taken over."""
        return self.torque is not None

    @property
    def is_force(self) -> bool:
        """Whether what it holds is a force."""
        return bool(self.used.unit) and is_force(self.used.unit or "")


def look(path: str, table: Table) -> TablePreview:
    """Read a table with what was said of it so far; runs in the worker.

    Raises:
        FileError: It cannot be opened.
    """
    try:
        with open_regular(path) as file:
            data = file.read()
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{path}: cannot be read: {error.strerror or error}") from error
    if data.startswith(OURS):
        return TablePreview(problem="This is a recording of Heldwheel: open its folder with Folder instead.")
    seen = _seen(data, path, table)
    try:
        found = read_foreign(data, path, table, _stated_unit(path))
    except TableQuestionsError as asked:
        return _with(seen, asked.questions)
    except HeldwheelError as error:
        return _with(seen, problem=str(error).removeprefix(f"{path}: "))
    step = max(1, len(found.torque) // POINTS)
    return TablePreview(
        seen.names,
        seen.rows,
        used=found.table,
        notes=found.problems,
        time_s=np.ascontiguousarray(found.time_s[::step]),
        torque=np.ascontiguousarray(found.torque[::step]),
        samples=len(found.torque),
    )


def _with(seen: TablePreview, questions: tuple[TableQuestion, ...] = (), problem: str = "") -> TablePreview:
    return TablePreview(seen.names, seen.rows, questions, problem)


def _seen(data: bytes, path: str, table: Table) -> TablePreview:
    """Give the headings and the first rows; nothing where not even they can be made out."""
    try:
        grid = grid_of(data, path, table.sheet)
    except HeldwheelError:
        return TablePreview()
    names = tuple(
        name if name and grid.names.count(name) == 1 else f"column {at + 1}" for at, name in enumerate(grid.names)
    )
    rows = tuple(tuple("" if c is None else str(c) for c in row[:WIDEST]) for row in grid.head[:PREVIEW_ROWS])
    return TablePreview(names[:WIDEST], rows)


def _stated_unit(path: str) -> str:
    sidecar = read_sidecar(path)
    return sidecar.transducer.unit if sidecar is not None and sidecar.transducer is not None else ""


def rate_of(text: str) -> float | None:
    """Read a typed rate: ``500``, ``500 Hz``; None where nothing is typed.

    Raises:
        HeldwheelError: It is none.
    """
    plain = text.strip().lower().removesuffix("hz").strip()
    return parse_number(plain) if plain else None


def copy_name(path: Path) -> str:
    """Give the name of a table's copy, under which the list of recordings finds it."""
    ending = {".json": ".jsonl", "": ".csv"}.get(path.suffix.lower(), path.suffix.lower())
    return f"imported-{file_stem(path.stem)}{ending}"


def bring_in(path: str, target: str, table: Table, radius: str = "") -> str:
    """Copy a table among the recordings, with a sidecar that says how it is read; runs in the worker.

    Args:
        path, target: The original and its copy.
        table: What was said of it.
        radius: Of a force: from the axle to where it pulls, with its unit.

    Returns:
        str: The copy.

    Raises:
        FileError: It cannot be read or written, or was imported before.
    """
    lever = None
    if radius.strip():
        lever = Lever(fixture="force at radius", radius_mm=round(parse_quantity(radius, "length") * 1e3, 6))
    before = read_sidecar(path) or Sidecar()
    if Path(target).exists():
        raise FileError(f"{target}: is there already; it may have been imported before")
    try:
        with open_regular(path) as source, open(target, "xb") as copy:
            shutil.copyfileobj(source, copy)
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror or error}") from error
    kept = msgspec.structs.replace(before, table=laid_over(before.table or Table(), table), lever=lever or before.lever)
    change_sidecar(target, lambda _none: kept)
    return target
