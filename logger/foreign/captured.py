"""Lines of words and figures, as a terminal or a program's log keeps them: ``[09:15:02.123] torque=62.1 Nm angle=3.2``.

Such a text has no columns, but its lines are alike: the same words between other figures. Times and figures become
cells; the word before a figure its heading, the word behind it its unit.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING, Final

from logger.foreign.headings import unit_kind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.foreign.cells import Cell

ALIKE: Final = 0.9
"""Share of the lines that must have the same words; what else stands between them is excluded, and said."""

_PART: Final = re.compile(
    r"(?P<time>(?:\d{4}-\d\d-\d\d[T_ ])?\d{1,2}:\d\d:\d\d(?:[.,]\d+)?Z?)"
    r"|\b(?P<mark>OL|OVL|[Oo]ver(?:load|range)|OVER(?:LOAD|RANGE)?|[Nn]a[Nn])\b"
    r"|(?<![^\W\d_])(?P<figure>[+-]?\s?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?)"
)
_KEY: Final = re.compile(r"(?:^|.*[\s,;|\[({<>])(?P<key>[^\W\d_][^\s,;|=:]*)\s*[=:]?\s*", re.DOTALL)
_UNIT: Final = re.compile(r"\s*(?P<unit>[^\s\d,;|=:>\])}]+(?:\s?[·.*-]\s?[^\W\d_]+)?)")


def captured(lines: Sequence[str]) -> tuple[list[Sequence[Cell]], list[int]] | None:
    """Make rows of lines that are alike.

    Args:
        lines: The whole text.

    Returns:
        rows, places: list of rows, list of int; Headings, units, and the readings; of each reading its line, counted
            from 0. None where the lines are not alike, or hold no figure.

    >>> rows, places = captured(["t=0.01;M=-0.06Nm", "t=0.02;M=12.5Nm"])
    >>> rows
    [['t', 'M'], ['', 'Nm'], ['0.01', '-0.06'], ['0.02', '12.5']]
    """
    found = [(at, *_parted(line)) for at, line in enumerate(lines) if line.strip()]
    if not found:
        return None
    (words, often) = Counter(between for _, _, between in found).most_common(1)[0]
    cells = [row for _, row, between in found if between == words]
    if len(cells) < 2 or often < ALIKE * len(found) or not _figures(words):
        return None
    names, units = _headings(cells[0], words)
    return [names, units, *cells], [at for at, _, between in found if between == words]


def _parted(line: str) -> tuple[list[Cell], tuple[str, ...]]:
    """Part a line into its times and figures, and the words between them."""
    cells: list[Cell] = []
    words = []
    end = 0
    for part in _PART.finditer(line):
        cells.append(part[0].replace(" ", "") if part["figure"] else part[0])
        words.append(" ".join(line[end : part.start()].split()))
        end = part.end()
    return cells, (*words, " ".join(line[end:].split()))


def _figures(words: tuple[str, ...]) -> bool:
    """Whether there is a figure, and a word that says what it is."""
    return len(words) > 1 and any(any(c.isalpha() for c in text) for text in words)


def _headings(cells: list[Cell], words: tuple[str, ...]) -> tuple[list[Cell], list[Cell]]:
    names: list[Cell] = []
    units: list[Cell] = []
    for at, cell in enumerate(cells):
        behind = _UNIT.match(words[at + 1])
        unit = (
            behind["unit"] if behind and unit_kind(behind["unit"]) and not _is_key(words[at + 1], behind.end()) else ""
        )
        before = words[at]
        key = _KEY.fullmatch(before)
        name = key["key"] if key and not (at and unit_kind(key["key"]) and _ends(before, key["key"])) else ""
        names.append("time" if ":" in str(cell) else name or f"column {at + 1}")
        units.append(unit)
    return names, units


def _is_key(text: str, end: int) -> bool:
    """Whether a word names what follows rather than the unit of what it stands behind: ``M=``."""
    return text[end:].lstrip()[:1] in ("=", ":") and bool(text[end:].strip())


def _ends(text: str, key: str) -> bool:
    """Whether a word is the last of a text: the unit of the figure before, with nothing that names the next."""
    return text.rstrip().endswith(key)
