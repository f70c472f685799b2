"""Bringing in a trace from elsewhere: what its columns look like, which is which, and a copy that says so.

The original is never changed: a copy with our column names is written beside the recordings, its figures as they stand.
"""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from logger.errors import FileError, HeldwheelError
from logger.small_file import open_regular
from logger.units import canonical_unit, column_unit, parse_number

if TYPE_CHECKING:
    from collections.abc import Sequence

PREVIEW_BYTES = 20_000
PREVIEW_ROWS = 12
DELIMITERS = ",;\t|"


@dataclass(frozen=True, slots=True)
class Preview:
    """The beginning of a table.

    Attributes
    ----------
    names : tuple of str
        Its columns; numbered where it has no names.
    rows : tuple of tuple of str
        The first lines.
    delimiter : str
        What separates columns.
    skip : int
        Lines before the first row of figures.
    guess : dict of str to int
        Which column seems to be time, torque, angle.
    unit : str
        The torque unit that its name states; empty if none.
    """

    names: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    delimiter: str
    skip: int
    guess: dict[str, int]
    unit: str = ""


def preview(path: Path) -> Preview:
    """Look at the beginning of a table.

    Raises
    ------
    FileError
        It cannot be read, or holds no figures in columns.
    """
    try:
        with open_regular(path) as file:
            text = file.read(PREVIEW_BYTES).decode("utf-8-sig", "replace")
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{path}: cannot be read: {error.strerror or error}") from error
    lines = text.splitlines()
    tables = {d: [tuple(c.strip() for c in row) for row in csv.reader(lines, delimiter=d)] for d in DELIMITERS}
    # A decimal comma splits figures into columns too: the right delimiter leaves the most lines of figures only.
    whole = {d: sum(len(row) > 1 and _figures(row) == len(row) for row in rows) for d, rows in tables.items()}
    delimiter = max(DELIMITERS, key=lambda d: (whole[d], text.count(d)))
    split = tables[delimiter]
    first = next((n for n, row in enumerate(split) if len(row) > 1 and _figures(row) > 1), None)
    if first is not None:
        return _preview(split, first, delimiter)
    raise FileError(f"{path}: no figures in columns are found; a trace needs a time and a torque column")


def _preview(split: Sequence[tuple[str, ...]], first: int, delimiter: str) -> Preview:
    width = len(split[first])
    heads = split[first - 1] if first and len(split[first - 1]) == width and not _figures(split[first - 1]) else ()
    names = tuple(heads) or tuple(f"column {n + 1}" for n in range(width))
    rows = tuple(row for row in split[first : first + PREVIEW_ROWS] if len(row) == width)
    guess: dict[str, int] = {}
    for kind, words in (
        ("time", ("time", "zeit", "t")),
        ("torque", ("torque", "moment", "nm")),
        ("angle", ("angle", "deg")),
    ):
        free = [n for n in range(width) if n not in guess.values()]
        at = next((n for n in free if _like(names[n], words)), None)
        if at is None and kind != "angle":
            at = free[0]
        if at is not None:
            guess[kind] = at
    return Preview(names, rows, delimiter, first, guess, _unit_in(names[guess["torque"]]))


def _like(name: str, words: Sequence[str]) -> bool:
    plain = name.lower().replace("(", " ").replace("_", " ").split()
    return any(word in plain or (len(word) > 2 and word in name.lower()) for word in words)


def _figures(row: Sequence[str]) -> int:
    count = 0
    for cell in row:
        try:
            parse_number(cell)
            count += 1
        except HeldwheelError:
            continue
    return count


def _unit_in(name: str) -> str:
    for part in (name.split("(")[-1].rstrip(") "), name.split("[")[-1].rstrip("] "), name.split("_", 1)[-1]):
        try:
            return canonical_unit(part.replace("_", "·"))
        except HeldwheelError:
            continue
    return ""


@dataclass(frozen=True, slots=True)
class Columns:
    """Which column is which (places from 0), the torque's unit, and what one of the time's units is in seconds."""

    time: int
    torque: int
    unit: str
    angle: int | None = None
    time_scale_s: float = 1.0


def bring_in(path: str, target: str, seen: Preview, columns: Columns) -> int:
    """Write a copy with our column names and give its number of rows; runs in the worker.

    Raises
    ------
    FileError
        It cannot be read or written, or a line is no figures.
    """
    heads = ["time_s", f"torque_{column_unit(columns.unit)}"] + (["angle_deg"] if columns.angle is not None else [])
    places = [columns.torque] + ([columns.angle] if columns.angle is not None else [])
    count = 0
    try:
        with (
            io.TextIOWrapper(open_regular(path), encoding="utf-8-sig", errors="replace", newline="") as source,
            open(target, "x", encoding="utf-8", newline="") as copy,
        ):
            copy.write(",".join(heads) + "\n")
            for number, row in enumerate(csv.reader(source, delimiter=seen.delimiter)):
                if number < seen.skip or len(row) <= max(columns.time, *places):
                    continue
                when = repr(round(parse_number(row[columns.time]) * columns.time_scale_s, 9))
                copy.write(",".join([when, *(_figure(row[place]) for place in places)]) + "\n")
                count += 1
    except FileExistsError:
        raise FileError(f"{target}: is there already; it may have been imported before") from None
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror or error}") from error
    except HeldwheelError as error:
        Path(target).unlink(missing_ok=True)
        raise FileError(f"{path}: line {count + seen.skip + 1}: {error}") from error
    return count


def _figure(text: str) -> str:
    return text.strip().replace(",", ".") if text.strip() else ""
