"""Lines of an unknown device in pieces: numbers, texts, separators; and which lines are built alike.

Every pattern here is ours and runs on lines of bounded length.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final, Literal

Kind = Literal["number", "sign", "text", "separator", "control", "blank"]

MIN_LINES: Final = 8  # fewer show no pattern
_SEPARATORS: Final = ",;|"


@dataclass(slots=True)
class Notes:
    """What was found, and what could not be told; one line each for the user."""

    found: list[str] = field(default_factory=list)
    unknown: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Token:
    """A piece of a line."""

    kind: Kind
    text: str


def _pattern(decimal: str) -> re.Pattern[str]:
    mark = re.escape(decimal)
    number = rf"[+-]?(?:\d+(?:{mark}\d*)?|{mark}\d+)(?:[eE][+-]?\d+)?"
    separators = re.escape(_SEPARATORS.replace(decimal, ""))
    return re.compile(
        rf"(?P<number>{number})|(?P<sign>[+-](?=[ \t]+\d))|(?P<blank>[ \t]+)|(?P<separator>[{separators}])"
        rf"|(?P<control>[\x00-\x1f\x7f]+)|(?P<text>(?:(?![+-][ \t]*\d)[^\d{separators}\s\x00-\x1f\x7f])+|.)",
        re.DOTALL,
    )


_PATTERNS: Final = {decimal: _pattern(decimal) for decimal in ".,"}


def tokens(line: str, decimal: str) -> tuple[Token, ...]:
    """Cut a line into pieces.

    Examples
    --------
    >>> [t.text for t in tokens("ST,-  12.3 lbf.in", ".")]
    ['ST', ',', '-', '  ', '12.3', ' ', 'lbf.in']
    """
    found = []
    for match in _PATTERNS[decimal].finditer(line):
        kind = match.lastgroup
        found.append(Token(kind, match.group()))  # type: ignore[arg-type]
    return tuple(found)


def shape(line: Sequence[Token]) -> tuple[str, ...]:
    """Give what a line shares with its sisters: kinds in order, separators as they are, no blanks, no sign."""
    return tuple(
        t.text if t.kind in ("separator", "control") else t.kind for t in line if t.kind not in ("blank", "sign")
    )


def find_terminator(data: bytes) -> str:
    """Tell what ends a line: CRLF, LF, CR, or empty when nothing does.

    A stray half of a line's end is noise; what occurs in most cases counts.
    """
    both = data.count(b"\r\n")
    lone = {"CR": data.count(b"\r") - both, "LF": data.count(b"\n") - both}
    name, count = max(lone.items(), key=lambda item: item[1])
    if both and both >= count:
        return "CRLF"
    return name if count else ""


def split_lines(data: bytes) -> list[bytes]:
    """Split into lines; the first may have been joined in its middle, the last is not complete: both are excluded."""
    return [line for line in re.split(rb"[\r\n]+", data)[1:-1] if line]


def find_decimal(lines: Sequence[str]) -> tuple[str, str]:
    """Tell the decimal mark, and what could not be told about it.

    A comma between digits separates columns or marks decimals. It marks decimals when a point never does, at most one
    comma stands in each number, and either other separators stand beside it or what follows it is always as long.
    """
    text = "\n".join(lines)
    if re.search(r"\d\.\d", text) or not re.search(r"\d,\d", text):
        return ".", ""
    if re.search(r"\d,\d+,\d", text) or re.search(r",[+-]|, ", text):
        return ".", ""
    if re.search(r"[;\t|]", text):
        return ",", ""
    after = {len(digits) for digits in re.findall(r"\d,(\d+)", text)}
    before = [int(digits[-15:]) for digits in re.findall(r"(\d+),\d", text)]
    steps = Counter(b - a for a, b in pairwise(before))
    counts = steps.most_common(1)[0] if steps else (0, 0)
    if counts[0] > 0 and counts[1] > 0.8 * max(1, len(before) - 1):
        return ".", ""  # the digits before the comma count: it separates
    if len(after) == 1:
        return ",", "the comma is taken as the decimal mark; if it separates two columns, correct the description"
    return ".", "the comma is taken as a separator"


@dataclass(frozen=True, slots=True)
class Family:
    """Lines of one build, and the lines that differ from it only by a word where a number stands."""

    shape: tuple[str, ...]
    lines: tuple[tuple[Token, ...], ...]
    marked: tuple[tuple[tuple[Token, ...], int], ...]  # the line, and which piece holds the word
    others: tuple[str, ...]


def find_family(lines: Sequence[str], decimal: str) -> Family:
    """Find the build that most lines share."""
    cut = [tokens(line, decimal) for line in lines]
    shapes = [shape(line) for line in cut]
    common = Counter(s for s in shapes if "number" in s).most_common(1)
    if not common:
        return Family((), (), (), tuple(lines))
    main = common[0][0]
    kept, marked, others = [], [], []
    for raw, line, own in zip(lines, cut, shapes, strict=True):
        place = _odd_word(own, main)
        if own == main:
            kept.append(line)
        elif place is not None:
            marked.append((line, place))
        else:
            others.append(raw)
    return Family(main, tuple(kept), tuple(marked), tuple(others))


def _odd_word(own: tuple[str, ...], main: tuple[str, ...]) -> int | None:
    """Give the place of the only number of the build that is a word here; None if the lines differ otherwise."""
    if len(own) != len(main):
        # a word that touches its neighbour's text ("OLNm") makes the line shorter by one piece
        for place, kind in enumerate(main):
            if kind == "number" and (*main[:place], "text", *main[place + 1 :]) == _doubled(own, place):
                return place
        return None
    odd = [i for i, (a, b) in enumerate(zip(own, main, strict=True)) if a != b]
    if len(odd) == 1 and main[odd[0]] == "number" and own[odd[0]] == "text":
        return odd[0]
    return None


def _doubled(own: tuple[str, ...], place: int) -> tuple[str, ...]:
    return own[: place + 1] + own[place:] if place < len(own) and own[place] == "text" else own


def significant(line: Sequence[Token]) -> list[Token]:
    """Give the pieces that ``shape`` counts, with a sign joined to its number."""
    found: list[Token] = []
    sign = ""
    for token in line:
        if token.kind == "sign":
            sign = token.text
        elif token.kind != "blank":
            found.append(Token(token.kind, sign + token.text) if token.kind == "number" and sign else token)
            sign = ""
    return found


def without_star(line: str) -> str:
    """Give a line without the ``*hh`` of a check sum."""
    body, star, digits = line.rpartition("*")
    return body if star and len(digits) == 2 and all(c in "0123456789ABCDEFabcdef" for c in digits) else line
