"""What a table does not say of itself, asked by name: all of it at once."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import msgspec

from logger.edges.units import canonical_force, canonical_unit, is_force, parse_number
from logger.errors import FileError, QuantityError

if TYPE_CHECKING:
    from logger.header import Table

OPTIONS: Final = {
    "sheet": "--sheet",
    "time": "--time-column",
    "time_unit": "--time-unit",
    "rate_hz": "--rate",
    "torque": "--torque-column",
    "unit": "--torque-unit",
    "angle": "--angle-column",
    "decimal": "--decimal",
}
"""A command's option for each key of ``Table``."""


@dataclass(frozen=True, slots=True)
class TableQuestion:
    """One thing that a table leaves open: the key of ``Table`` that answers it, and the question."""

    key: str
    text: str


class TableQuestionsError(FileError):
    """A table that leaves something open; ``questions`` has all of it."""

    def __init__(self, file: str, questions: Sequence[TableQuestion]) -> None:
        self.questions = tuple(questions)
        self.file = file
        lines = "".join(f"\n  {OPTIONS[q.key]}: {q.text}" for q in self.questions)
        super().__init__(f"{file}: the table leaves this open; say it once, it is kept beside the file:{lines}")

    def __reduce__(self) -> tuple[type[TableQuestionsError], tuple[str, tuple[TableQuestion, ...]]]:
        """Travel whole between processes."""
        return type(self), (self.file, self.questions)


@dataclass(frozen=True, slots=True)
class ColumnUnit:
    """What one of a column's numbers is."""

    kind: Literal["torque", "force"]  # ``torque`` or ``force``
    name: str  # canonical: ``N·m``, ``kgf``
    scale: float = 1.0  # how much of it one of the column's numbers is


_SCALED: Final = re.compile(
    r"\s*(?P<number>[-+]?[\d.,]+(?:[eE][-+]?\d+)?)\s*(?P<unit>[^\d\s].*?)\s*"
    r"(?:(?:per|/)\s*(?:count|digit|lsb|bit|mv/v|mv|v|ma))?\s*",
    re.IGNORECASE,
)


def read_unit(text: str) -> ColumnUnit:
    """Read the unit of a torque or force column, or what one count of it is.

    Raises:
        QuantityError: It is neither.

    >>> read_unit("lb-ft"), read_unit("250 N·m per mV/V").scale
    (ColumnUnit(kind='torque', name='lbf·ft', scale=1.0), 250.0)
    """
    found = _SCALED.fullmatch(text)
    scale, unit = (parse_number(found["number"]), found["unit"]) if found else (1.0, text)
    if scale == 0:
        raise QuantityError(f"'{text[:60]}': nothing can be read in steps of zero")
    if is_force(unit):
        return ColumnUnit("force", canonical_force(unit), scale)
    return ColumnUnit("torque", canonical_unit(unit), scale)


def laid_over(table: Table, over: Table | None) -> Table:
    """Give what was said of a table with newer answers over it."""
    if over is None:
        return table
    given = {name: value for name in OPTIONS if (value := getattr(over, name)) is not None}
    return msgspec.structs.replace(table, **given)
