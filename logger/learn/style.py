"""How an unknown device writes its numbers: decimal mark, thousands, hexadecimal digits."""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.learn.lines import NUMBERS, STAMP, Notes, Style, shape, tokens

if TYPE_CHECKING:
    from collections.abc import Sequence

_FIELDS: Final = re.compile(r"[,;|\s:=\"'{}\[\]()#*$!@\x00-\x1f]+")
_HEX: Final = re.compile(r"(?:0[xX])?([0-9A-Fa-f]{2,12})")
_LETTERS: Final = re.compile(r"[A-Fa-f]")
HEX_SHARE: Final = 0.05  # of the lines in which a hexadecimal number shows a letter: a slow one shows few
BEST_LINES: Final = 2000  # looked at: some minutes of a usual gauge
STEPS: Final = 8  # changes of the whole part by one that are needed to judge a comma by


def find_style(lines: Sequence[str], decimal: str, thousands: str | None, notes: Notes) -> Style:
    """Tell how numbers are written; what cannot be told is asked for (``missing``).

    Args:
        decimal, thousands: What the user says; empty and None: it is found out.
    """
    lines = [STAMP.sub("@", line) for line in lines[:BEST_LINES]]
    width = _hex_width(lines)
    mark = decimal or find_decimal(lines, notes)
    if thousands is None:
        thousands = _thousands(lines, mark, width, notes)
    if thousands:
        notes.found.append(f"thousands are set apart by '{thousands}'")
    if mark == ",":
        notes.found.append("the comma is the decimal mark")
    return Style(mark, thousands, width)


def find_decimal(lines: Sequence[str], notes: Notes) -> str:
    """Tell the decimal mark.

    A comma between digits separates columns, marks decimals, or sets thousands apart. It marks decimals when a point
    never does, at most one comma stands in each number, and other separators stand beside it; or when what stands
    before it moves by one only where what follows it runs over.
    """
    text = "\n".join(lines)
    if re.search(r"(?<![\d.,])\d{1,3}(?:\.\d{3})+,\d", text):
        return ","
    if re.search(r"\d\.\d", text) or not re.search(r"\d,\d", text):
        return "."
    if re.search(r"\d,\d+,\d|,[+-]", text) or re.search(r"\d, ", text):
        return "."
    if not all(re.search(r"\d,\d", line) for line in lines if re.search(r"\d", line)):
        return "."  # sometimes there is none: it sets thousands apart
    if re.search(r"[;\t|]", text):
        return ","
    return _by_continuity(lines, notes)


def _by_continuity(lines: Sequence[str], notes: Notes) -> str:
    """Judge the only comma of a number by whether both sides move as one number."""
    pairs = [match.groups() for line in lines if (match := re.search(r"([+-]?\d{1,15}),(\d{1,15})", line))]
    widths = {len(after) for _, after in pairs}
    if len(widths) != 1:
        return "."
    width = widths.pop()
    before = np.array([float(whole) for whole, _ in pairs])
    after = np.array([float(rest) for _, rest in pairs]) / 10.0**width
    negative = np.array([whole.startswith("-") for whole, _ in pairs])
    value = before + np.where(negative, -after, after)
    carried = np.abs(np.diff(before)) == 1
    if carried.sum() >= STEPS:
        jump = float(np.median(np.abs(np.diff(value))[carried]))
        if jump < 0.5:
            if width == 3:
                return _thousand_or_decimal(pairs, notes)
            return ","
        return "."
    if not (np.diff(before) == 0).all() and float(np.ptp(value)) > 0 and len(set(after)) > 2 and _one_number(lines):
        notes.missing.append("decimal")
        notes.unknown.append(
            "whether the comma marks decimals or separates two columns: say --decimal ',' or --decimal '.'"
        )
        return ","
    notes.missing.append("decimal")
    notes.unknown.append("what the comma means: say --decimal ',' (12,5 is twelve and a half) or '.' (two numbers)")
    return ","


def _one_number(lines: Sequence[str]) -> bool:
    return all(len(re.findall(r"\d[\d,]*", line)) == 1 for line in lines)


def _thousand_or_decimal(pairs: Sequence[tuple[str, ...]], notes: Notes) -> str:
    """Judge a comma before three digits: thousands never begin with a zero."""
    if any(whole.lstrip("+-").startswith("0") for whole, _ in pairs):
        return ","
    notes.missing.append("decimal")
    notes.unknown.append("whether 1,234 is 1.234 (--decimal ',') or 1234 (--decimal '.')")
    return ","


def _thousands(lines: Sequence[str], mark: str, width: int, notes: Notes) -> str:
    """Find the mark between groups of three: without it, some lines would have a number more than others."""
    plain = Style(mark, "", width)
    share, numbers = _alike(lines, plain)
    for candidate in (",", ".", "'", " "):
        if candidate == mark:
            continue
        group = re.escape(candidate)
        if not any(re.search(rf"(?<![\d.,])\d{{1,3}}{group}\d{{3}}(?!\d)", line) for line in lines):
            continue
        grouped_share, grouped = _alike(lines, Style(mark, candidate, width))
        if grouped_share > share and grouped < numbers + 1:
            return candidate
        if grouped_share == share and grouped == numbers - 1 and candidate == "," and _always_grouped(lines, mark):
            notes.missing.append("thousands")
            notes.unknown.append(
                "whether 1,234.5 is one number or two: say --thousands ',' or none, or listen below 1000 too"
            )
    return ""


def _alike(lines: Sequence[str], style: Style) -> tuple[float, int]:
    """Give the share of lines of the commonest build, and how many numbers it has."""
    shapes = Counter(shape(tokens(line, style)) for line in lines)
    common, count = shapes.most_common(1)[0] if shapes else ((), 0)
    return count / max(1, len(lines)), sum(kind in NUMBERS for kind in common)


def _always_grouped(lines: Sequence[str], mark: str) -> bool:
    return all(re.search(rf"(?<![\d.,])\d{{1,3}},\d{{3}}{re.escape(mark)}\d", line) for line in lines)


def _hex_width(lines: Sequence[str]) -> int:
    """Give the width of hexadecimal numbers; 0 if there are none.

    A field of digits and the letters A to F that always has the same length, and shows a letter now and then.
    """
    rows = [[piece for piece in _FIELDS.split(line) if piece] for line in lines]
    length = Counter(len(row) for row in rows).most_common(1)[0][0] if rows else 0
    rows = [row for row in rows if len(row) == length]
    for place in range(length):
        found = [_HEX.fullmatch(row[place]) for row in rows]
        digits = [match.group(1) for match in found if match is not None]
        if not rows or len(digits) < 0.95 * len(rows) or len({len(d) for d in digits}) != 1:
            continue
        letters = sum(_LETTERS.search(d) is not None for d in digits)
        if letters >= max(3, HEX_SHARE * len(digits)) and any(c.isdigit() for d in digits for c in d):
            return len(digits[0])
    return 0
