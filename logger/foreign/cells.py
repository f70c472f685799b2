"""Cells of a foreign table to numbers: decimal marks, thousands, missing values and overloads.

Conventions:
- A cell is text, or a number where the file holds numbers (a spreadsheet, Parquet, JSON).
- What a mark means is settled over all columns of numbers together: ``1,209`` alone may be 1.209 or 1209.
- A word for "beyond the range" (``OL``) is no dirt: the value is missing and the row is told as an overload.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from logger.foreign.headings import unit_kind

if TYPE_CHECKING:
    from logger.samples import Floats

Bools = NDArray[np.bool_]
Ints = NDArray[np.intp]

Cell = Any
"""Text, a number, a ``datetime``, ``date``, ``time`` or ``timedelta``, or None."""

Decimal = Literal["point", "comma"]

MISSING: Final = frozenset(
    {"", "nan", "n/a", "#n/a", "na", "null", "none", "nil", "err", "error", "k.a.", ".", "?", "*"}
    | {"#value!", "#num!", "#div/0!", "#ref!", "#name?", "#null!"}
)
_OVERLOAD: Final = frozenset(
    {
        "ol",
        "o.l",
        "o.l.",
        "0l",
        "ovl",
        "ovr",
        "ovld",
        "over",
        "ovrld",
        "overload",
        "over load",
        "overrange",
        "over range",
    }
    | {"overrun", "overflow", "ovf", "of", "sat", "saturated", "clip", "clipped", "inf", "infinity", "1.#inf", "hi"}
    | {"hihi", "out of range", "überlast", "ueberlast", "überlauf"}
)
_DASHES: Final = re.compile(r"[-‐‑‒–—_*#?.\s]*")
_BEYOND: Final = re.compile(r"[+-]?\s*[>^]+\s*[\d.,]*\s*|[+-]?\s*<\s*-\s*[\d.,]+")
_MARKED: Final = re.compile(r"[+-]?\d*(?:([.,])\d*)(?:[.,]\d*)*(?:[eE][+-]?\d+)?")
_GROUPS: Final = {  # groups of three behind the first; a group is no group without its neighbours
    "point": re.compile(r"[+-]?\d{1,3}(?:([,'’ \u00a0\u202f])\d{3})(?:\1\d{3})*(?:\.\d*)?"),
    "comma": re.compile(r"[+-]?\d{1,3}(?:([.'’ \u00a0\u202f])\d{3})(?:\1\d{3})*(?:,\d*)?"),
}
_PLAIN: Final = {
    "point": re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?"),
    "comma": re.compile(r"[+-]?(?:\d+(?:,\d*)?|,\d+)(?:[eE][+-]?\d+)?"),
}
_NUMBER_LIKE: Final = re.compile(
    r"[+-]?\s?(?:\d{1,3}(?:[.,'’ \u00a0\u202f]\d{3})+(?:[.,]\d*)?|\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?"
)
_WITH_UNIT: Final = re.compile(
    r"(?P<number>[+-]?\s?[.,]*\d(?:[\d.,]|['’\u00a0\u202f](?=\d))*(?:[eE][+-]?\d+)?)"
    r"\s*(?P<unit>[^\W\d_][^\d:]*|°|%|\"|')"
)
SCPI_INFINITY: Final = 9.9e37  # SCPI-1999, volume 1, 7.2.1.4 and .5: +/- infinity 9.9E37, not a number 9.91E37
SCPI_NAN: Final = 9.91e37


@dataclass(frozen=True, slots=True)
class Numbers:
    """A column as numbers."""

    values: Floats  # shape (n,); NaN where there is none
    # missing, overload, bad: shape (n,); nothing stands there; the device said that it was beyond its range; it is no
    # number
    missing: Bools
    overload: Bools
    bad: Bools
    units: tuple[str, ...]  # units that stand behind the numbers, in the order in which they come
    unit_at: Ints  # shape (n,); which of them; -1 where there is none


def plain(cell: Cell) -> str:
    """Give a cell's text: stripped of blanks and quotes, with a plain minus."""
    text = cell if isinstance(cell, str) else "" if cell is None else str(cell)
    return text.strip().strip('"').strip().replace("\u2212", "-").replace("\x00", "")


def is_mark(text: str) -> bool:
    """Whether this stands for a value that is not there: ``---``, ``#N/A``, ``OL``; an empty cell, too."""
    return _marked(text.lower()) != ""


def _marked(low: str) -> Literal["", "missing", "overload"]:
    if low in MISSING or _DASHES.fullmatch(low):
        return "missing"
    if low.lstrip("+-").strip() in _OVERLOAD or _BEYOND.fullmatch(low):
        return "overload"
    return "missing" if low.lstrip("+-").startswith(("nan", "1.#qnan", "1.#ind")) else ""


def is_number(cell: Cell) -> bool:
    """Whether a cell is a number in any way of writing, a unit behind it or not."""
    if isinstance(cell, (int, float)) and not isinstance(cell, bool):
        return True
    text = plain(cell)
    return bool(_NUMBER_LIKE.fullmatch(text)) or (len(text) < 40 and bool(_WITH_UNIT.fullmatch(text)))


@dataclass(slots=True)
class _Votes:
    """What the numbers of a column say about points and commas."""

    sure: dict[str, int]
    three: dict[str, int]  # three digits behind the only mark: 1.209 or 1209
    short: bool = False  # there are whole numbers of up to three digits
    ungrouped: bool = False  # ... and longer ones without any mark

    @property
    def open(self) -> bool:
        """Whether both meanings are possible: marks that may be thousands beside short numbers without any."""
        return any(self.three.values()) and not self.ungrouped and (self.short or self.three[","] > self.three["."])


def _votes(column: Sequence[Cell]) -> _Votes:
    votes = _Votes({".": 0, ",": 0}, {".": 0, ",": 0})
    for cell in column:
        if not isinstance(cell, str):
            continue
        text = _bare(plain(cell))
        if text.isdigit() and text.strip("0"):
            votes.short = True
            votes.ungrouped = votes.ungrouped or len(text) > 3
        elif _MARKED.fullmatch(text):
            mark, sure = _meaning(text)
            (votes.sure if sure else votes.three)[mark] += 1
    return votes


def settled(columns: Iterable[Sequence[Cell]]) -> bool:
    """Whether some number of these columns shows for sure which mark is the decimal one."""
    return any(any(_votes(column).sure.values()) for column in columns)


def decimal_mark(columns: Iterable[Sequence[Cell]]) -> Decimal | None:
    """Settle over whole columns what points and commas mean.

    Returns:
        str or None: ``point`` or ``comma``; None where both are possible, so that it must be asked.
    """
    votes = [_votes(column) for column in columns]
    sure = {mark: sum(v.sure[mark] for v in votes) for mark in ".,"}
    if any(sure.values()):
        return "point" if sure["."] >= sure[","] else "comma"
    if any(v.open for v in votes):
        return None
    return "comma" if any(v.three[","] for v in votes) and not any(v.three["."] for v in votes) else "point"


def _bare(text: str) -> str:
    """Leave out a unit behind the number."""
    found = _WITH_UNIT.fullmatch(text)
    return found["number"].strip() if found else text


def _meaning(text: str) -> tuple[str, bool]:
    """Give the mark that is the decimal one in this number, and whether that is sure."""
    marks = [c for c in text if c in ".,"]
    last = marks[-1]
    other = "," if last == "." else "."
    if len(set(marks)) == 2:
        return last, True
    if len(marks) > 1:
        return other, True
    whole, _, fraction = text.lstrip("+-").partition(last)
    digits = fraction.lower().partition("e")[0]
    three = len(digits) == 3 and 1 <= len(whole) <= 3 and whole[0] != "0" and "e" not in fraction.lower()
    return last, not three


def numbers(column: Sequence[Cell] | NDArray[Any], decimal: Decimal) -> Numbers:
    """Read a column.

    Args:
        column: sequence of cells, or ndarray; One cell a row.
        decimal: What a mark in text means.
    """
    if isinstance(column, np.ndarray) and column.dtype.kind in "fiu":
        return _from_array(column)
    n = len(column)
    values = np.full(n, np.nan)
    flags = {name: np.zeros(n, bool) for name in ("missing", "overload", "bad")}
    unit_at = np.full(n, -1, np.intp)
    units: dict[str, int] = {}
    pattern, groups = _PLAIN[decimal], _GROUPS[decimal]
    for i, cell in enumerate(column):
        if isinstance(cell, (int, float)) and not isinstance(cell, bool):
            values[i] = _float(cell)
            continue
        text = plain(cell)
        if text and not pattern.fullmatch(text) and not groups.fullmatch(text):
            mark = _marked(text.lower())
            found = None if mark else _WITH_UNIT.fullmatch(text)
            if found is None or not unit_kind(found["unit"]):
                flags[mark or "bad"][i] = True
                continue
            unit_at[i] = units.setdefault(found["unit"].strip(), len(units))
            text = found["number"]
        if not text:
            flags["missing"][i] = True
            continue
        value = _value(text.replace(" ", "").lstrip("+"), decimal)
        if value is None:
            flags["bad"][i] = True
        else:
            values[i] = value
    return _checked(values, flags["missing"], flags["overload"], flags["bad"], tuple(units), unit_at)


def _float(number: float) -> float:
    try:
        return float(number)
    except OverflowError:  # a whole number of hundreds of digits
        return float("inf")


def _value(text: str, decimal: Decimal) -> float | None:
    """Read one number; thousands only in whole groups of three."""
    if not _PLAIN[decimal].fullmatch(text) and not _GROUPS[decimal].fullmatch(text):
        bare = text.replace("\u00a0", " ").replace("\u202f", " ")
        if not _GROUPS[decimal].fullmatch(bare):
            return None
    if decimal == "comma":
        text = text.replace(".", "").replace(",", ".")
    for mark in ",'’ \u00a0\u202f":
        text = text.replace(mark, "")
    return float(text)


def _from_array(column: NDArray[Any]) -> Numbers:
    values = column.astype(np.float64)
    n = len(values)
    none = np.zeros(n, bool)
    return _checked(values, np.isnan(values), none.copy(), none, (), np.full(n, -1, np.intp))


def _checked(
    values: Floats, missing: Bools, overload: Bools, bad: Bools, units: tuple[str, ...], unit_at: Ints
) -> Numbers:
    """Take out what stands for infinity or for no number."""
    beyond = np.abs(values) >= SCPI_INFINITY * (1 - 1e-9)
    if beyond.any():
        no_number = np.isclose(np.abs(values), SCPI_NAN, rtol=1e-6)
        missing = missing | no_number
        overload = overload | (beyond & ~no_number)
        values = np.where(beyond, np.nan, values)
    missing = missing | (np.isnan(values) & ~overload & ~bad)
    return Numbers(values, missing, overload, bad, units, unit_at)
