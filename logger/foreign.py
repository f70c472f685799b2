"""Reading traces that other programs wrote: CSV with a time and a torque column.

Conventions
-----------
- The first line that is no ``#`` comment names the columns. Separators: comma, semicolon, tab; with a semicolon or tab
  numbers may have a decimal comma.
- Columns are found by name (``time_s``, ``torque_Nm``, ``torque (lbf·ft)`` ...) or named by the caller. Nothing is
  assumed about a unit.
- A cell that is no number, or a time that does not increase, is an error that names line, column and fix. An empty or
  ``NaN`` torque or angle is a value that is missing: a problem is told, and it stays NaN.
- A last line without a line's end may be cut short, and a number cut short is still a number: it is left out.

Offered: ``read_foreign``, ``Foreign``, ``Names``.
"""

from __future__ import annotations

import csv
import io
import itertools
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.errors import FileError, QuantityError
from logger.stamps import put_in_order
from logger.units import canonical_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from logger.samples import Floats

_NAMED_UNIT: Final = re.compile(r"(?P<what>[a-z]+)[ _]*[\[(]?\s*(?P<unit>[^\])]*?)\s*[\])]?", re.IGNORECASE)
_SECONDS: Final = {"s": 1.0, "sec": 1.0, "seconds": 1.0, "ms": 1e-3, "us": 1e-6, "µs": 1e-6, "min": 60.0}
_DEGREES: Final = {"deg": 1.0, "°": 1.0, "degrees": 1.0, "rad": 180 / np.pi, "turns": 360.0, "rev": 360.0}
MAX_HEAD: Final = 20_000  # bytes of a line of column names


@dataclass(frozen=True, slots=True)
class Names:
    """Names of columns as the caller gives them; None: found by their usual names."""

    time: str | None = None
    torque: str | None = None
    angle: str | None = None
    unit: str | None = None


@dataclass(frozen=True, slots=True)
class Foreign:
    """What a foreign trace holds.

    Attributes
    ----------
    time_s : ndarray, shape (n,)
    torque : ndarray, shape (n,)
        In ``unit``.
    columns : dict of str to ndarray, shape (n,)
        ``angle_deg``, where there is one.
    """

    time_s: Floats
    torque: Floats
    unit: str
    columns: dict[str, Floats]
    problems: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Layout:
    names: tuple[str, ...]
    separator: str
    decimal: str
    line: int  # of the column names, from 1


def read_foreign(data: bytes, file: str, names: Names, sidecar_unit: str = "") -> Foreign:
    """Read a foreign trace's bytes.

    Parameters
    ----------
    data : bytes
        The file.
    file : str
        What messages call it.
    names : Names
        Columns and unit as the caller names them.
    sidecar_unit : str
        Unit from the trace's sidecar, for a column that does not name one.

    Raises
    ------
    FileError
        See the module.
    """
    text, problems = _whole_lines(_text(data, file))
    layout = _layout(text, file)
    time_at, time_scale = _time_column(layout, names, file)
    torque_at, unit = _torque_column(layout, names, sidecar_unit, file)
    angle = _angle_column(layout, names, file)
    wanted = [time_at, torque_at, *([angle[0]] if angle else [])]
    values = _numbers(text, layout, wanted, file)
    problems += _missing(text, layout, wanted, values)
    time_s = values[0] * time_scale
    stamps = put_in_order(time_s, *values[1:])
    if stamps.refused:
        raise FileError(
            f"{file}: column '{layout.names[time_at]}': {stamps.refused}; export the trace anew, with a time a row"
        )
    time_s, values = time_s[stamps.rows], [column[stamps.rows] for column in values]
    problems += stamps.notes
    columns = {"angle_deg": values[2] * angle[1]} if angle else {}
    return Foreign(time_s, values[1], unit, columns, tuple(problems))


def _text(data: bytes, file: str) -> str:
    if not data.strip():
        raise FileError(
            f"{file}: is empty: recording stopped before its first line, or its export failed; export it anew"
        )
    if data[:2] in (b"\xff\xfe", b"\xfe\xff") or b"\x00" in data[:1000]:
        raise FileError(f"{file}: is no UTF-8 text (UTF-16 or binary); export the trace as CSV in UTF-8")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        head = data[: error.start]
        if data.count(b"\n", error.start) == 0 or error.start > MAX_HEAD:
            line = head.count(b"\n") + 1
            raise FileError(f"{file}: line {line}: is no UTF-8 text; export the trace as CSV in UTF-8") from error
        return data.decode("latin-1")  # a degree sign or a dot in the column names, from an older program


def _whole_lines(text: str) -> tuple[str, list[str]]:
    """Leave out a last line without an end."""
    text = text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text
    if text.endswith("\n"):
        return text, []
    body, _, last = text.rpartition("\n")
    if not last.strip() or "\n" not in body + "\n":
        return text + "\n", []
    return body + "\n", ["its last line has no line's end and may be cut short: it is left out"]


def _layout(text: str, file: str) -> _Layout:
    begin = line = 0
    while True:
        end = text.find("\n", begin)
        head = text[begin : end if end >= 0 else len(text)]
        line += 1
        if end < 0 or (head.strip() and not head.startswith("#")):
            break
        begin = end + 1
    if len(head) > MAX_HEAD or not head.strip():
        raise FileError(f"{file}: line {line}: has no column names; the first line must be like time_s,torque_Nm")
    separator = max(";\t,", key=head.count) if any(c in head for c in ";\t,") else ","
    names = tuple(name.strip() for name in next(csv.reader([head], delimiter=separator)))
    first = text[end + 1 : text.find("\n", end + 1)] if end >= 0 else ""
    decimal = "," if separator != "," and "," in first else "."
    return _Layout(names, separator, decimal, line)


def _parts(name: str) -> tuple[str, str]:
    """Split ``torque (lbf·ft)`` or ``torque_lbf_ft`` into what it is and its unit."""
    found = _NAMED_UNIT.fullmatch(name.strip())
    return (found["what"].lower(), found["unit"]) if found else ("", "")


def _given(layout: _Layout, name: str, file: str) -> int:
    """Find a column that the caller named."""
    if name in layout.names:
        return layout.names.index(name)
    raise FileError(f"{file}: line {layout.line}: has no column '{name}'; there are: {_listed(layout)}")


def _listed(layout: _Layout) -> str:
    shown = ", ".join(f"'{name[:40]}'" for name in layout.names[:12])
    return "".join(c if c.isprintable() else "?" for c in shown)


def _time_column(layout: _Layout, names: Names, file: str) -> tuple[int, float]:
    if names.time is not None:
        at = _given(layout, names.time, file)
        return at, _SECONDS.get(_parts(names.time)[1].lower(), 1.0)
    for at, name in enumerate(layout.names):
        what, unit = _parts(name)
        if what in ("time", "t") and (not unit or unit.lower() in _SECONDS):
            return at, _SECONDS.get(unit.lower(), 1.0)
    raise FileError(
        f"{file}: line {layout.line}: has no time column; name it time_s, or say which it is. "
        f"There are: {_listed(layout)}"
    )


def _torque_column(layout: _Layout, names: Names, sidecar_unit: str, file: str) -> tuple[int, str]:
    found = [at for at, name in enumerate(layout.names) if _parts(name)[0] == "torque"]
    if names.torque is not None:
        at = _given(layout, names.torque, file)
    elif found:
        at = found[0]
    else:
        raise FileError(
            f"{file}: line {layout.line}: has no torque column; name it like torque_Nm or torque_lbf_ft, "
            f"or say which it is. There are: {_listed(layout)}"
        )
    what, written = _parts(layout.names[at])
    unit = names.unit or (written if what == "torque" else "") or sidecar_unit
    if not unit:
        raise FileError(
            f"{file}: line {layout.line}, column '{layout.names[at][:40]}': has no unit; rename it like torque_Nm, "
            "give the unit, or write it into the sidecar as transducer.unit"
        )
    try:
        return at, canonical_unit(unit)
    except QuantityError as error:
        raise FileError(f"{file}: line {layout.line}, column '{layout.names[at][:40]}': {error}") from error


def _angle_column(layout: _Layout, names: Names, file: str) -> tuple[int, float] | None:
    if names.angle is not None:
        return _given(layout, names.angle, file), _DEGREES.get(_parts(names.angle)[1].lower(), 1.0)
    for at, name in enumerate(layout.names):
        what, unit = _parts(name)
        if what == "angle" and unit.lower() in _DEGREES:
            return at, _DEGREES[unit.lower()]
    return None


def _numbers(text: str, layout: _Layout, wanted: list[int], file: str) -> list[Floats]:
    """Read the wanted columns."""
    import pandas as pd

    try:
        table = pd.read_csv(
            io.StringIO(text),
            sep=layout.separator,
            decimal=layout.decimal,
            comment="#",
            header=0,
            names=list(range(len(layout.names))),
            index_col=False,
            usecols=sorted(set(wanted)),
            dtype=np.float64,
            engine="c",
            float_precision="round_trip",
            skipinitialspace=True,
        )
        values = [table[at].to_numpy() for at in wanted]
    except (ValueError, OverflowError, pd.errors.ParserError):
        values = []
    # A row with more cells would be read as a shorter one: the separators must add up, or every row is looked at.
    even = text.count(layout.separator) == (len(layout.names) - 1) * (text.count("\n") + 1 - layout.line)
    plain = even and values and all(np.isfinite(v).all() for v in values)
    fault = "" if plain else _first_fault(text, layout, wanted)
    if not values or fault:
        raise FileError(f"{file}: {fault or 'cannot be read as columns of numbers; export the trace anew'}")
    if len(values[0]) < 2:
        raise FileError(f"{file}: has {len(values[0])} samples below its column names; export the trace anew")
    return values


def _cells(line: str, layout: _Layout) -> list[str]:
    cells = next(csv.reader([line], delimiter=layout.separator))
    while len(cells) > len(layout.names) and not cells[-1].strip():
        cells.pop()
    return cells


def _rows(text: str, layout: _Layout) -> Iterator[tuple[int, str]]:
    """Give the data lines with their numbers."""
    for number, line in enumerate(io.StringIO(text), 1):
        if number > layout.line and line.strip() and not line.startswith("#"):
            yield number, line.rstrip("\n")


def _line_of(text: str, layout: _Layout, row: int) -> int:
    return next(itertools.islice(_rows(text, layout), row, None))[0]


def _missing(text: str, layout: _Layout, wanted: list[int], values: list[Floats]) -> list[str]:
    """Tell of values that are not there."""
    told = []
    for at, column in zip(wanted, values, strict=True):
        gone = np.flatnonzero(np.isnan(column))
        if len(gone):
            line = _line_of(text, layout, int(gone[0]))
            name = layout.names[at][:40]
            told.append(f"{len(gone)} of {len(column)} values of '{name}' are NaN or empty (first: line {line})")
    return told


def _first_fault(text: str, layout: _Layout, wanted: list[int]) -> str:
    """Find the first cell that cannot be used, and say what to do about it; empty if there is none."""
    for number, line in _rows(text, layout):
        cells = _cells(line, layout)
        if len(cells) > len(layout.names):
            hint = "; a decimal comma? Then use a semicolon between columns" if layout.separator == "," else ""
            return f"line {number}: has {len(cells)} cells where {len(layout.names)} columns are named{hint}"
        for place, at in enumerate(wanted):
            if at >= len(cells):
                last = text.count("\n") == number
                cut = "the trace is cut short; delete this line or export it anew" if last else "complete or delete it"
                return f"line {number}: has {len(cells)} of {len(layout.names)} columns: {cut}"
            fault = _cell_fault(cells[at].split("#")[0].strip(), layout.decimal, may_miss=place > 0)
            if fault:
                return f"line {number}, column '{layout.names[at][:40]}': {fault}"
    return ""


def _cell_fault(cell: str, decimal: str, may_miss: bool) -> str:
    shown = "".join(c if c.isprintable() else "?" for c in cell)[:40]
    if cell.lower() in ("", "nan"):
        return "" if may_miss else f"'{shown}' is no time; delete the line"
    try:
        value = float(cell.replace(decimal, "."))
    except ValueError:
        return f"'{shown}' is no number; delete the line or correct it"
    return "" if np.isfinite(value) else f"'{shown}' is not a finite number; delete the line"
