"""Text files: from bytes to a grid, whatever separates the columns and whatever stands above them.

Conventions:
- UTF-8, UTF-16 with or without its mark, else Windows-1252 (a degree sign or a dot in the headings of older programs).
- Lines that begin with ``#``, ``%``, ``!`` or ``//`` are comments; one right above the readings may be their heading.
- A last line without a line's end may be cut short, and a number cut short is still a number: it is excluded.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from logger.errors import FileError
from logger.foreign.captured import captured
from logger.foreign.cells import decimal_mark, is_mark, plain, settled
from logger.foreign.grid import (
    HEAD_ROWS,
    Begin,
    Grid,
    begin_of,
    grid_of_rows,
    is_data,
    looks_like,
    named,
    numbered,
    pairs_in,
)

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.foreign.cells import Cell

MAX_HEAD: Final = 200_000  # bytes of a line of column names
SEPARATORS: Final = (";", "\t", ",", "|", " ")
COMMENTS: Final = ("#", "%", "!", "//")
_SEP: Final = re.compile(r'"?sep=(.)"?[;,\t ]*', re.IGNORECASE)
_BLANKS: Final = re.compile(r"[ \t]{2,}|[ \t](?![\[(])")
_CONTROLS: Final = re.compile(r"[\x00-\x08\x0e-\x1f]")


def decoded(data: bytes, file: str) -> str:
    """Give a file's text.

    Raises:
        FileError: It is empty, or no text.
    """
    if not data.strip(b"\x00 \t\r\n\x1a"):
        raise FileError(
            f"{file}: is empty: recording stopped before its first line, or its export failed; export it anew"
        )
    text = _decoded(data)
    head = text[:4000]
    if len(_CONTROLS.findall(head.rstrip("\x00\x1a"))) > len(head) // 50:
        raise FileError(f"{file}: is no text, but binary; export the trace as CSV, xlsx or Parquet")
    return text.rstrip("\x00\x1a").replace("\r\n", "\n").replace("\r", "\n")


def _decoded(data: bytes) -> str:
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return data.decode("utf-16", "replace")
    sample = data[:4000]
    for offset, name in ((1, "utf-16-le"), (0, "utf-16-be")):
        if len(sample) > 8 and sample[offset::2].count(0) > 0.7 * len(sample[offset::2]):
            return data.decode(name, "replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")


def _whole_lines(text: str) -> tuple[str, list[str]]:
    """Leave out a last line without an end."""
    if text.endswith("\n"):
        return text, []
    body, _, last = text.rpartition("\n")
    if not last.strip() or "\n" not in body + "\n" or not body:
        return text + "\n", []
    return body + "\n", ["its last line has no line's end and may be cut short: it is excluded"]


def split(line: str, separator: str) -> list[str]:
    """Split a line into cells."""
    if separator == " ":
        return _BLANKS.split(line.strip()) if '"' not in line else next(csv.reader([line.strip()], delimiter=" "))
    cells = next(csv.reader([line], delimiter=separator)) if '"' in line else line.split(separator)
    if separator == "|" and cells and not cells[0].strip() and not cells[-1].strip():
        cells = cells[1:-1]  # a table drawn with bars
    return [c.strip() for c in cells]


def _comment(line: str) -> bool:
    return line.lstrip().startswith(COMMENTS)


@dataclass(frozen=True, slots=True)
class _Make:
    """How a text is made: separator, where its table begins (lines from 0)."""

    separator: str
    begin: Begin
    lines: tuple[int, ...]  # line number of each row of the head


def text_grid(data: bytes, file: str) -> Grid:
    """Make a grid of a text file.

    Raises:
        FileError: It is no text, or holds no rows of figures.
    """
    text, problems = _whole_lines(decoded(data, file))
    lines = _head_lines(text, file)
    make = None if _sideways(lines) else _make(lines)
    if make is None:
        grid = _turned_or_fail(text, lines, file)
        grid.problems += problems
        return grid
    grid = _grid(text, lines, make, file)
    grid.problems += problems
    return grid


def _head_lines(text: str, file: str) -> list[str]:
    """Give the first lines, and refuse what is endless and no row of many cells."""
    lines: list[str] = []
    begin = 0
    while len(lines) < HEAD_ROWS and begin < len(text):
        end = text.find("\n", begin)
        end = len(text) if end < 0 else end
        if end - begin > MAX_HEAD and not all(map(_long_rows, (text[begin : begin + 1000], text[end - 1000 : end]))):
            wrong = f"is {end - begin} characters long and no row" if lines else "has no column names"
            raise FileError(f"{file}: line {len(lines) + 1}: {wrong}; it must be like time_s,torque_Nm")
        lines.append(text[begin:end])
        begin = end + 1
    return lines


def _long_rows(start: str) -> bool:
    """Whether a part of an endless line is of many cells."""
    return any(start.count(s) > 20 for s in ";\t,")


def _make(lines: Sequence[str]) -> _Make | None:
    """Find separator and beginning: the separator under which the longest table of the most figures appears."""
    stated = _SEP.fullmatch(lines[0].strip()) if lines else None
    rows_at = [at for at, line in enumerate(lines) if not (_comment(line) or _rule(line)) and not (stated and at == 0)]
    best: tuple[tuple[float, ...], _Make] | None = None
    for rank, separator in enumerate((stated[1],) if stated else SEPARATORS):
        rows = [split(lines[at], separator) for at in rows_at]
        begin = begin_of(rows)
        if begin is None:
            continue
        if separator == " " and begin.names >= 0 and len(rows[begin.names]) != begin.width:  # words, not headings
            begin = replace(begin, names=-1)
        body = [row for row in rows[begin.first :] if len(row) == begin.width]
        figures = sum(looks_like(c) in ("number", "time") for row in body[:40] for c in row)
        clean = sum(looks_like(c) != "text" for row in body[:40] for c in row) / max(1, sum(map(len, body[:40])))
        named_too = begin.names >= 0 and len([c for c in rows[begin.names] if c]) >= min(2, begin.width)
        score = (min(begin.width, 2), named_too, round(clean, 1), len(body), figures, -rank)
        if best is None or score > best[0]:
            best = score, _Make(separator, begin, tuple(rows_at))
    return best[1] if best else None


def _rule(line: str) -> bool:
    """Whether a line only draws a rule: ``|---|---|``, ``------ ------``."""
    return len(line.strip()) > 3 and not line.strip().strip("-=+|: \t") and "---" in line + "---"[: line.count("=")]


def _commented_names(lines: Sequence[str], make: _Make, first_line: int) -> list[str]:
    """Give headings that stand in a comment right above the readings."""
    for at in range(first_line - 1, -1, -1):
        if not lines[at].strip():
            continue
        if not _comment(lines[at]):
            return []
        cells = split(lines[at].lstrip("#%!/ \t"), make.separator)
        texts = [c for c in cells if looks_like(c) == "text"]
        return cells if len(cells) == make.begin.width and len(texts) >= min(2, len(cells)) else []
    return []


def _grid(text: str, lines: list[str], make: _Make, file: str) -> Grid:
    begin, separator = make.begin, make.separator
    first_line = make.lines[begin.first]
    rows = [split(lines[at], separator) for at in make.lines]
    names = rows[begin.names] if begin.names >= 0 else _commented_names(lines, make, first_line)
    names_line = make.lines[begin.names] if begin.names >= 0 else max(0, first_line - 1)
    while names and not names[-1] and len(names) > begin.width:
        names.pop()
    own = {make.lines[begin.names] if begin.names >= 0 else -1, make.lines[begin.units] if begin.units >= 0 else -1}
    width = max(begin.width, len(names))
    stated = max((n for n, name in enumerate(names, 1) if name), default=width)
    body = _Body(text, separator, first_line, width, file, names_given=stated)
    return Grid(
        names=named(names, width) if names else numbered(width),
        units=named(rows[begin.units], width) if begin.units >= 0 else ("",) * width,
        head=[row for row in rows[begin.first :] if any(row)],
        load=body.load,
        place=body.place,
        meta=pairs_in([line for at, line in enumerate(lines[:first_line]) if at not in own]),
        headed=bool(names),
        at=f"line {names_line + 1}",
        problems=body.problems,
    )


class _Body:
    """The readings of a text: read at once by a compiled reader where they are plain, else row by row."""

    def __init__(self, text: str, separator: str, first: int, width: int, file: str, *, names_given: int) -> None:
        self._text, self._separator, self._first, self._width = text, separator, first, width
        self._file, self._named = file, names_given
        self.problems: list[str] = []
        self._rows: list[list[str]] | None = None
        self._at: list[int] = []

    def load(self, places: Sequence[int]) -> list[Sequence[Cell] | NDArray[Any]]:
        """Give columns; arrays where every cell is a plain number."""
        fast = self._fast(places)
        if fast is not None:
            return fast
        rows = self._read(places)
        return [[row[p] if p < len(row) else "" for row in rows] for p in places]

    def place(self, row: int) -> str:
        """Give the words for a row."""
        if self._rows is None:
            self._read()
        return f"line {self._at[min(row, len(self._at) - 1)]}" if self._at else f"line {self._first + 1}"

    def _fast(self, places: Sequence[int]) -> list[Sequence[Cell] | NDArray[Any]] | None:
        import pandas as pd

        start = _nth_line(self._text, self._first)
        body = self._text[start:]
        if self._separator in " |" or not body.endswith("\n") or body.count("\n\n") or '"' in body[:4000]:
            return None
        sample = [split(line, self._separator) for line in body[:60_000].split("\n")[:-1][:HEAD_ROWS]]
        shown = [[row[p] for row in sample if p < len(row)] for p in places]
        mark = decimal_mark(shown)
        if mark is None or not (settled(shown) or body.isdigit()) or (mark == "comma" and self._separator == ","):
            return None
        if not all(_sure(row[p], mark) for row in sample for p in places if p < len(row) and row[p]):
            return None
        # A row with more cells would be read as a shorter one: the separators must add up.
        if body.count(self._separator) != (self._width - 1) * body.count("\n"):
            return None
        try:
            table = pd.read_csv(
                io.StringIO(body),
                sep=self._separator,
                decimal="," if mark == "comma" else ".",
                header=None,
                names=list(range(self._width)),
                index_col=False,
                usecols=sorted(set(places)),
                dtype=np.float64,
                engine="c",
                float_precision="round_trip",
                skipinitialspace=True,
                na_filter=False,
            )
        except (ValueError, OverflowError, pd.errors.ParserError):
            return None
        values = [table[p].to_numpy() for p in places]
        return list(values) if all(np.isfinite(v).all() for v in values) else None

    def _read(self, places: Sequence[int] = ()) -> list[list[str]]:
        if self._rows is None:
            self._rows = []
            total = self._text.count("\n")
            for number, line in enumerate(io.StringIO(self._text), 1):
                if number <= self._first or not line.strip() or line.lstrip()[:1] == "#" or _rule(line):
                    continue
                cells = split(line.rstrip("\n"), self._separator)
                cells[-1:] = [cells[-1].split("#")[0].strip() if cells[-1][:1] != "#" else cells[-1]]
                while len(cells) > self._width and not cells[-1]:
                    cells.pop()
                if any(cells) and self._whole(number, cells, places, last=number == total):
                    self._rows.append(cells)
                    self._at.append(number)
        return self._rows

    def _whole(self, number: int, cells: list[str], places: Sequence[int], *, last: bool) -> bool:
        """Whether a row has all its cells; raise for one that has too few or too many."""
        where = f"{self._file}: line {number}: has {len(cells)}"
        if len(cells) <= max(places, default=0) and looks_like(cells[0]) in ("number", "time"):
            if not last:
                raise FileError(f"{where} of {self._named} columns: complete or delete it")
            self.problems.append(f"line {number}, the last, is cut short: it is excluded")
            return False
        filled = max((n for n, c in enumerate(cells, 1) if c), default=0)
        if filled > self._named and is_data(cells, self._width):
            hint = "; a decimal comma? Then use a semicolon between columns" if self._separator == "," else ""
            raise FileError(f"{where} cells where {self._named} columns are named{hint}")
        return True


def _sure(cell: str, mark: str) -> bool:
    """Whether a plain reader understands a number as we do: thousands and marks are none of its business."""
    if mark == "point":
        return "," not in cell
    return "." not in cell


def _nth_line(text: str, line: int) -> int:
    at = 0
    for _ in range(line):
        at = text.find("\n", at) + 1
    return at


def _sideways(lines: Sequence[str]) -> bool:
    """Whether the rows of a text are its columns: few, long, each with a name before its figures."""
    long = [line for line in lines if len(line) > 200]
    if len(lines) >= HEAD_ROWS or not 2 <= len(long) <= 20:
        return False
    rows = [split(line, max(";\t,", key=line.count)) for line in long]
    return all(len(row) > 20 and looks_like(row[0]) == "text" and looks_like(row[1]) == "number" for row in rows)


def _turned_or_fail(text: str, lines: Sequence[str], file: str) -> Grid:
    """Read a text whose rows are its columns, or whose lines are alike, or say that there is no table."""
    for separator in SEPARATORS:
        rows: list[Sequence[Cell]] = [split(line, separator) for line in text.split("\n")[:HEAD_ROWS] if line.strip()]
        if len(rows) >= 2 and len(rows[-1]) > 20:
            return grid_of_rows(rows, file, lambda row: f"column {row + 1}")
    grid = _of_like_lines(text, lines, file)
    if grid is not None:
        return grid
    number = next((n for n, line in enumerate(lines, 1) if line.strip() and not _comment(line)), 1)
    words = [plain(c) for c in split(lines[number - 1], _likely(lines[number - 1]))]
    if words and not any(is_mark(w) for w in words) and len(words) > 1:
        raise FileError(f"{file}: has 0 samples below its column names (line {number}); export the trace anew")
    raise FileError(
        f"{file}: line {number}: has no column names and no rows of figures; a table must be like time_s,torque_Nm"
    )


def _of_like_lines(text: str, head: Sequence[str], file: str) -> Grid | None:
    """Read lines of words and figures; None where they are not alike. The head tells: no long text is searched."""
    whole = text.split("\n") if captured(head) is not None else []
    found = captured(whole)
    if found is None:
        return None
    rows, places = found
    grid = grid_of_rows(rows, file, lambda row: f"line {places[max(row - 2, 0)] + 1}")
    others = sum(bool(line.strip()) for line in whole) - len(places)
    if others:
        grid.problems.append(f"{others} lines that are not like the others are excluded")
    return grid


def _likely(line: str) -> str:
    return max(";\t,", key=line.count)
