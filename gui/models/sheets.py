"""What an answer of the Compare page is made of, whatever was asked: figures in the unit on screen, tables of texts.

Conventions:
- Answers hold SI values; a ``QuantityScale`` brings them to the screen, and back what is typed.
- What is written to a file stays in SI with decimal points, whatever the screen shows.
"""

from __future__ import annotations

import csv
import io
import json
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.compare.runs import LEFT_OUT, Quantity
from analysis.report.words import SIMULATED
from analysis.rows.tables import neutral
from gui.models.display import DECIMALS, NOTHING
from logger.edges.small_file import write_whole
from logger.edges.units import minus, parse_quantity
from logger.errors import FileError, QuantityError

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from gui.models.display import Display

QUANTITY_NAMES = {
    Quantity.BREAKAWAY.value: "Breakaway",
    Quantity.ROTATING.value: "Rotating",
    Quantity.RATIO.value: "Breakaway ÷ rotating",
    Quantity.CHATTER.value: "Chatter index",
    Quantity.SLOPE.value: "Torque-speed slope",
}
PLAIN_FROM, PLAIN_TO = 1e-4, 1e7  # outside, a number is written with a power of ten


@dataclass(frozen=True, slots=True)
class Sheet:
    """A table of texts: heads, rows, and the columns that hold words; the others hold figures."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    words: frozenset[int] = frozenset({0})


@dataclass(frozen=True, slots=True)
class QuantityScale:
    """How a quantity stands on screen."""

    quantity: Quantity
    display: Display

    @property
    def factor(self) -> float:
        """From SI to the unit on screen."""
        return 1.0 if self.quantity.unit == "1" else self.display.factor

    @property
    def unit(self) -> str:
        """The unit on screen; empty for a plain number."""
        return "" if self.quantity.unit == "1" else self.quantity.unit.replace("N·m", self.display.unit)

    @property
    def title(self) -> str:
        """The quantity with its unit."""
        name = QUANTITY_NAMES[self.quantity.value]
        return f"{name} ({self.unit})" if self.unit else name

    def number(self, value: float | None) -> str:
        """Give a value without its unit."""
        if value is None or not math.isfinite(value):
            return NOTHING
        decimals = 3 if self.quantity.unit == "1" else DECIMALS[self.display.unit] + 1
        return self.display.number(value * self.factor, decimals)

    def words(self, value: float | None) -> str:
        """Give a value with its unit."""
        return f"{self.number(value)} {self.unit}".strip()

    def asked(self, value: float) -> str:
        """Give a value that somebody chose, with its unit and no more digits than it has."""
        return f"{significant(self.display, value * self.factor, 5)} {self.unit}".strip()

    def signed(self, value: float) -> str:
        """Give a difference with its sign."""
        return _with_sign(self.number(value), value)

    def rate(self, value: float) -> str:
        """Give a change per something, of any size, with its sign."""
        return _with_sign(significant(self.display, value * self.factor), value)

    def span(self, low: float, high: float, *, signed: bool = False) -> str:
        """Give an interval; a dash where there is none."""
        if not (math.isfinite(low) and math.isfinite(high)):
            return NOTHING
        write = self.signed if signed else self.number
        return f"{write(low)} to {write(high)}"

    def typed(self, text: str) -> float | None:
        """Read what was typed, in the unit on screen where none is given; None for nothing.

        Raises:
            QuantityError: It cannot be read.
        """
        if not text.strip():
            return None
        if self.quantity.unit == "N·m":
            return parse_quantity(text, "torque", self.display.unit)
        return plain_number(text) / self.factor


def _with_sign(text: str, value: float) -> str:
    return f"+{text}" if value > 0 and text.strip("0,.") and math.isfinite(value) else text


def plain_number(text: str) -> float:
    """Read a number with a point or a comma.

    Raises:
        QuantityError: It is none.
    """
    try:
        value = float(text.strip().replace(",", ".").replace("−", "-"))
    except ValueError:
        raise QuantityError(f"'{text.strip()}' is not a number") from None
    if not math.isfinite(value):
        raise QuantityError(f"'{text.strip()}' is not a finite number")
    return value


def whole_number(text: str) -> int:
    """Read a whole number, 0 or more.

    Raises:
        QuantityError: It is none.
    """
    value = plain_number(text)
    if value < 0 or value != int(value):
        raise QuantityError(f"'{text.strip()}' is not a whole number, 0 or more")
    return int(value)


def significant(display: Display, value: float, digits: int = 3) -> str:
    """Give a number of any size with so many significant digits, no digit before the decimal mark taken away.

    >>> from gui.models.display import Display
    >>> [significant(Display(), v) for v in (0.26712, 1234.4, 140.0, 3e-7)]
    ['0.267', '1234', '140', '3e−07']
    """
    if not math.isfinite(value):
        return NOTHING
    if value != 0 and not PLAIN_FROM <= abs(value) < PLAIN_TO:
        return minus(f"{value:.{digits}g}").replace(".", "," if display.comma else ".")
    rounded = f"{value:.{digits}g}" if abs(value) < 10**digits else f"{value:.0f}"
    return display.number(float(rounded), len(rounded.partition(".")[2]))


def p_words(display: Display, p: float) -> str:
    """Give a p value without digits that mean nothing."""
    return f"< {display.number(0.0001, 4)}" if p < 1e-4 else significant(display, p, 2)


def left_out_sheet(remarks: Iterable[str], pulls: Iterable[str] = (), files: Iterable[str] = ()) -> Sheet | None:
    """Give everything that is not used, with the reason: files, recordings, pulls; None where all is."""
    rows = [("File", *_parted(line, ": ")) for line in files]
    rows += [("Recording", *_parted(line, LEFT_OUT)) for line in remarks if LEFT_OUT in line]
    rows += [("Pull", *_parted(line, ": ")) for line in pulls]
    if not rows:
        return None
    return Sheet(f"Excluded ({len(rows)})", ("What", "Which", "Why"), tuple(rows), frozenset({0, 1, 2}))


def _parted(line: str, mark: str) -> tuple[str, str]:
    which, _, why = line.partition(mark)
    return which, why


def notes_sheet(lines: Iterable[str]) -> Sheet | None:
    """Give what a reader may want to know, one line each; None where there is nothing."""
    rows = tuple((line,) for line in lines)
    return Sheet(f"Notes ({len(rows)})", ("Note",), rows) if rows else None


def sheets(*parts: Sheet | None) -> list[Sheet]:
    """Give the sheets that there are."""
    return [part for part in parts if part is not None]


@dataclass(frozen=True, slots=True)
class Written:
    """An answer as it is written to a file: a table of plain values, and the same as JSON; both marked if simulated."""

    rows: tuple[tuple[str | float | None, ...], ...]
    plain: dict[str, object]
    simulated: bool


def write(written: Written, target: str) -> str:
    """Write an answer: JSON by the ending, CSV otherwise.

    Raises:
        FileError: It cannot be written.
    """
    text = io.StringIO(newline="")
    try:
        if target.lower().endswith(".json"):
            json.dump(written.plain, text, ensure_ascii=False, allow_nan=False)
        else:
            csv.writer(text).writerows([_cell(cell) for cell in row] for row in _marked(written))
    except ValueError as error:
        raise FileError(f"{target}: cannot be written: {error}") from error
    write_whole(target, text.getvalue().encode("utf-8", "replace"))
    return target


def _marked(written: Written) -> Iterator[tuple[str | float | None, ...]]:
    """Give the rows with a column that says whether they are simulated; the first row of a table holds its heads."""
    mark, head = "yes" if written.simulated else "no", True
    for row in written.rows:
        yield (*row, "simulated" if head else mark) if row else ()
        head = not row


def _cell(cell: str | float | None) -> str:
    if isinstance(cell, str):
        return neutral(cell)
    return "" if cell is None or not math.isfinite(cell) else f"{cell:.9g}"


def copied(sheet: Sheet, *, simulated: bool) -> str:
    """Give a table as text for the clipboard, as spreadsheets and letters take it: tabs, plain minus, no formulas.

    A table of simulated data says so in its first line: a clipboard has no watermark.
    """

    def plain(place: int, text: str) -> str:
        return neutral(text) if place in sheet.words else text.replace("−", "-")

    rows = ["\t".join(plain(place, text) for place, text in enumerate(cells)) for cells in sheet.rows]
    marked = [SIMULATED] if simulated else []
    return "\n".join([*marked, "\t".join(sheet.heads), *rows])
