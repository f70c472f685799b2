"""Torques and lengths as they stand on screen: one unit of each and one decimal mark for every figure at once."""

from __future__ import annotations

import math

from gui.models.changes import Changes
from logger.edges.lengths import LENGTH_UNITS, in_unit, length_words
from logger.edges.units import minus, torque_factor

# Unit -> decimals of a figure without an interval: about a tenth of a newton metre in each.
DECIMALS = {"N·m": 1, "lbf·ft": 1, "lbf·in": 0, "kgf·m": 2}
UNITS = tuple(DECIMALS)
NOTHING = "–"  # what stands where there is no figure


def grouped(count: int) -> str:
    """Give a count in groups of three with a small space between (ISO 80000-1, 7.3.1): no comma is read as decimal.

    >>> grouped(14499)
    '14\u202f499'
    """
    return f"{count:,}".replace(",", "\N{NARROW NO-BREAK SPACE}")


class Display:
    """The units and the decimal mark on screen; views listen to ``changes``.

    Args:
        unit: One of ``UNITS``.
        comma: Whether the decimal mark is a comma.
        lengths: One of ``LENGTH_UNITS``.
    """

    def __init__(self, unit: str = "N·m", *, comma: bool = False, lengths: str = "mm") -> None:
        self.unit = unit if unit in UNITS else UNITS[0]
        self.comma = comma
        self.lengths = lengths if lengths in LENGTH_UNITS else LENGTH_UNITS[0]
        self.changes = Changes()

    def use(self, *, unit: str | None = None, comma: bool | None = None, lengths: str | None = None) -> None:
        """Change units or decimal mark, and tell every view."""
        self.lengths = lengths if lengths in LENGTH_UNITS else self.lengths
        self.unit = unit if unit in UNITS else self.unit
        self.comma = self.comma if comma is None else comma
        self.changes.tell()

    @property
    def factor(self) -> float:
        """What one newton metre is in the unit on screen."""
        return 1.0 / torque_factor(self.unit)

    def value(self, nm: float) -> float:
        """Give a torque in the unit on screen."""
        return nm * self.factor

    def number(self, value: float | None, decimals: int = 1) -> str:
        """Give any number with the decimal mark on screen; a dash where there is none."""
        if value is None or not math.isfinite(value):
            return NOTHING
        text = f"{value:.{decimals}f}"
        text = text.removeprefix("-") if float(text) == 0 else minus(text)
        return text.replace(".", ",") if self.comma else text

    def figure(self, nm: float | None, u95_nm: float | None = None) -> str:
        """Give a torque without its unit: ``38.4`` or ``38.4 ± 1.2``.

        An interval is shown with two significant digits and decides the decimals (JCGM 100, 7.2.6), but no more than
        one beyond what the eye can use.
        """
        if nm is None or not math.isfinite(nm):
            return NOTHING
        most = DECIMALS[self.unit] + 1
        if u95_nm is None or not math.isfinite(u95_nm) or u95_nm <= 0:
            return self.number(self.value(nm), DECIMALS[self.unit])
        half = self.value(u95_nm)
        decimals = min(most, max(0, 1 - math.floor(math.log10(float(f"{half:.1e}")))))
        return f"{self.number(self.value(nm), decimals)} ± {self.number(half, decimals)}"

    def length(self, length_mm: float) -> str:
        """Give a length with its unit and the decimal mark on screen: ``450 mm`` or ``17.72 in``."""
        text = length_words(length_mm, self.lengths)
        return text.replace(".", ",") if self.comma else text

    def typed_length(self, length_mm: float | None) -> str:
        """Give a length as it stands in a field to be typed over; nothing where there is none."""
        return "" if length_mm is None else length_words(length_mm, self.lengths)

    def in_lengths(self, text: str) -> str:
        """Give a text with its lengths in the unit on screen."""
        return in_unit(text, self.lengths)

    def torque(self, nm: float | None, u95_nm: float | None = None) -> str:
        """Give a torque with its unit; a dash where there is none."""
        text = self.figure(nm, u95_nm)
        return text if text == NOTHING else f"{text} {self.unit}"
