"""Lengths in words, in millimetres or inches; numbers inside the program stay in SI or millimetres."""

from __future__ import annotations

import re
from math import floor, log10

from logger.edges.units import INCH_M

LENGTH_UNITS = ("mm", "in")
INCH_MM = INCH_M * 1e3
FIGURES, MOST_DECIMALS = 4, 4  # of a length in inches: four figures, no finer than a ten-thousandth

_WRITTEN = re.compile(r"((?:[+\u2212-]?\d+(?:\.\d+)?(?: to | ± ))?)([+\u2212-]?)(\d+(?:\.\d+)?)([ \u00a0])mm\b")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def length_words(length_mm: float, unit: str = "mm") -> str:
    """Write a length with its unit.

    >>> length_words(450.0), length_words(450.0, "in"), length_words(114.3, "in"), length_words(0.3, "in")
    ('450 mm', '17.72 in', '4.5 in', '0.0118 in')
    """
    return f"{length_mm:g} mm" if unit == "mm" else f"{_inches(length_mm)} in"


def _inches(length_mm: float) -> str:
    inches = length_mm / INCH_MM
    if inches == 0:
        return "0"
    decimals = min(MOST_DECIMALS, max(0, FIGURES - 1 - floor(log10(abs(inches)))))
    text = f"{inches:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def in_unit(text: str, unit: str) -> str:
    """Write every length that a text states in millimetres in another unit.

    >>> in_unit("stack 17.72 mm, end play 0.1 mm", "in")
    'stack 0.6976 in, end play 0.0039 in'
    >>> in_unit("5 × 114.3 mm, shafts of 38 to 28 mm", "in"), in_unit("450 mm", "mm")
    ('5 × 4.5 in, shafts of 1.496 to 1.102 in', '450 mm')
    """
    if unit == "mm":
        return text

    def written(found: re.Match[str]) -> str:
        before = _NUMBER.sub(lambda one: _inches(float(one[0])), found[1])
        return f"{before}{found[2]}{_inches(float(found[3]))}{found[4]}in"

    return _WRITTEN.sub(written, text)


def of_metres(unit: str, lengths: str) -> tuple[float, str]:
    """Give factor and unit for a quantity in ``unit``: what is in metres stands in inches where these are chosen.

    >>> of_metres("m", "mm"), of_metres("N·m", "in")
    ((1.0, 'm'), (1.0, 'N·m'))
    >>> round(0.4572 * of_metres("m", "in")[0], 9)
    18.0
    """
    return (1 / INCH_M, "in") if unit == "m" and lengths == "in" else (1.0, unit)
