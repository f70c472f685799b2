"""A foreign table before anything is made of it: headings, units, columns of cells, what stood above."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

from logger.errors import FileError
from logger.foreign.cells import is_mark, is_number, plain
from logger.foreign.headings import heading, unit_kind
from logger.foreign.times import is_time

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.foreign.cells import Cell

HEAD_ROWS: Final = 400
"""Rows from which the make-up of a table is told."""
_PAIR: Final = re.compile(r"\s*([^:=\t;,]{1,60}?)\s*[:=\t;,]\s*(.{1,200}?)[\s;,\t]*")


@dataclass(slots=True)
class Grid:
    """A table."""

    # names, units: headings, and what a row of units below them says; ``column 1`` ... where it has none.
    names: tuple[str, ...]
    units: tuple[str, ...]
    head: list[Sequence[Cell]]  # list of rows; the first rows, from which kinds of columns are told
    # gives whole columns by their places: sequences of cells, or arrays of numbers or times; all of one length
    load: Callable[[Sequence[int]], list[Sequence[Cell] | NDArray[Any]]]
    place: Callable[[int], str]  # gives the words for a row: ``line 12``
    meta: dict[str, str] = field(default_factory=dict)  # what stood above the table, by lower-case names
    problems: list[str] = field(default_factory=list)  # what was excluded, for the user
    headed: bool = True  # whether it has headings
    at: str = "line 1"  # where its headings stand: ``line 1``


def looks_like(cell: Cell) -> str:
    """Tell what a cell looks like: ``number``, ``time``, ``mark`` (a value that is not there) or ``text``."""
    if is_time(cell):
        return "time"
    if is_number(cell):
        return "number"
    return "mark" if cell is None or is_mark(plain(cell)) else "text"


def is_data(row: Sequence[Cell], width: int) -> bool:
    """Whether a row holds readings: two figures or times, or all of its cells, and few words."""
    kinds = [looks_like(cell) for cell in row]
    firm = sum(kind in ("number", "time") for kind in kinds)
    words = sum(kind == "text" for kind in kinds)
    marks = len(kinds) - firm - words
    return firm > 0 and firm + marks >= min(2, width) and words <= firm + 1 and (kinds[0] != "text" or firm > 1)


@dataclass(frozen=True, slots=True)
class Begin:
    """Where a table begins: rows of headings and units (-1: none) and of the first readings."""

    names: int
    units: int
    first: int
    width: int


def begin_of(rows: Sequence[Sequence[Cell]]) -> Begin | None:
    """Find where the table begins among the first rows; None where there is none."""
    widths = [len(row) for row in rows if is_data(row, len(row))]
    if not widths:
        return None
    width = max(set(widths), key=lambda w: (widths.count(w), w))
    first = _first(rows, width)
    above = [at for at in range(first - 1, -1, -1) if any(plain(c) for c in rows[at])]
    units = above[0] if above and _all_units(rows[above[0]]) and len(above) > 1 else -1
    names = next((at for at in above if at != units), -1)
    if names >= 0 and not _heads(rows[names], width):
        names = -1
    if units < 0 and names > 0 and _all_units(rows[names]) and not _worded(rows[names]):
        units, names = names, -1
    return Begin(names, units, first, width)


def _first(rows: Sequence[Sequence[Cell]], width: int) -> int:
    """Find the first row of readings: one of the table's width that is not alone among what stands above."""
    full = [at for at, row in enumerate(rows) if any(plain(c) for c in row)]
    fits = [len(rows[at]) == width and is_data(rows[at], width) for at in full]
    alone = 0
    for n, at in enumerate(full):
        if fits[n]:
            headed = n > 0 and _heads(rows[full[n - 1]], width) and _worded(rows[full[n - 1]])
            if headed or sum(fits[n + 1 : n + 4]) >= min(2, len(full) - n - 1):
                return at
            alone = alone or at
    return alone


def _all_units(row: Sequence[Cell]) -> bool:
    """Whether a row names units only."""
    cells = [plain(c) for c in row if plain(c)]
    known = [unit_kind(c.strip("[](){}<>")) for c in cells]
    return (
        bool(cells)
        and any(k in ("torque", "force", "time", "angle") for k in known)
        and all(k or c[0] in "[(<{" for k, c in zip(known, cells, strict=True))
    )


def _worded(row: Sequence[Cell]) -> bool:
    return any(heading(plain(c)).worded for c in row if plain(c))


def _heads(row: Sequence[Cell], width: int) -> bool:
    """Whether a row can be headings: words, more than one where the table has more than one column."""
    cells = [plain(c) for c in row]
    words = [c for c in cells if c and looks_like(c) == "text"]
    if any(looks_like(c) in ("number", "time") for c in row) or not words:
        return False
    if len(words) >= min(2, width):
        return True
    return heading(words[0]).worded and len(words[0]) < 40 and ":" not in words[0] and "=" not in words[0]


def pairs_in(lines: Sequence[str]) -> dict[str, str]:
    """Give what lines above a table say: ``Sample rate: 500 Hz``."""
    found = {}
    for line in lines:
        pair = _PAIR.fullmatch(line.lstrip("#%!/;* ").rstrip())
        if pair:
            found[pair[1].strip().strip('"').lower()] = pair[2].strip().strip('"')
    return found


def named(cells: Sequence[Cell], width: int) -> tuple[str, ...]:
    """Give headings for all columns."""
    texts = [plain(c) for c in cells][:width]
    return tuple(texts) + ("",) * (width - len(texts))


def numbered(width: int) -> tuple[str, ...]:
    """Give the headings of a table that has none."""
    return tuple(f"column {n + 1}" for n in range(width))


def grid_of_rows(rows: list[Sequence[Cell]], file: str, where: Callable[[int], str]) -> Grid:
    """Make a grid of rows of cells that are all in memory: a sheet, an odd text.

    Raises:
        FileError: There are no readings in it.
    """
    turned = _turned(rows)
    if turned is not None:
        return grid_of_rows(turned, file, where)
    begin = begin_of(rows[:HEAD_ROWS])
    if begin is None:
        raise FileError(f"{file}: no rows of figures are found; a trace needs a time and a torque column")
    width = begin.width
    body = rows[begin.first :]
    above = [r for at, r in enumerate(rows[: begin.first]) if at not in (begin.names, begin.units)]
    kept = [at for at, row in enumerate(body) if any(plain(c) for c in row)]

    def load(places: Sequence[int]) -> list[Sequence[Cell] | NDArray[Any]]:
        return [[body[at][p] if p < len(body[at]) else None for at in kept] for p in places]

    head = rows[begin.names] if begin.names >= 0 else ()
    return Grid(
        names=named(head, width) if head else numbered(width),
        units=named(rows[begin.units], width) if begin.units >= 0 else ("",) * width,
        head=[body[at] for at in kept[:HEAD_ROWS]],
        load=load,
        place=lambda row: where(begin.first + kept[min(row, len(kept) - 1)]),
        meta=pairs_in(["\t".join(plain(c) for c in row if plain(c)) for row in above]),
        headed=bool(head),
        at=where(max(begin.names, 0)),
    )


def _turned(rows: list[Sequence[Cell]]) -> list[Sequence[Cell]] | None:
    """Turn a table round whose rows are its columns: few, long, each with a name before its figures."""
    long = [row for row in rows if len(row) > 20]
    if not 2 <= len(long) <= 20 or len({len(r) for r in long}) > 2:
        return None
    if len(rows) > 60 or not all(looks_like(r[0]) == "text" and looks_like(r[1]) == "number" for r in long):
        return None
    return [list(row) for row in zip(*(r[: min(map(len, long))] for r in long), strict=True)]
