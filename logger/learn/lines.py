"""Lines of an unknown device in pieces: numbers, times, words, separators; and which lines are built alike.

Every pattern here is ours and runs on lines of bounded length.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final, Literal

from logger.decoder.template import MAX_LINE

Kind = Literal["number", "hex", "stamp", "sign", "word", "text", "separator", "control", "blank"]

MIN_LINES: Final = 8  # fewer show no pattern
NUMBERS: Final = ("number", "hex")
FRAMED: Final = "ETX"
_SEPARATORS: Final = ",;|"
_STX, _ETX = b"\x02", b"\x03"


@dataclass(slots=True)
class Notes:
    """What was found, and what could not be told; one line each for the user."""

    found: list[str] = field(default_factory=list)
    unknown: list[str] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)  # options that must be given first


@dataclass(frozen=True, slots=True)
class Style:
    """How numbers are written: decimal mark, mark between groups of three, width of hexadecimal numbers (0: none)."""

    decimal: str = "."
    thousands: str = ""
    hex_width: int = 0


@dataclass(frozen=True, slots=True)
class Token:
    """A piece of a line, and where it begins."""

    kind: Kind
    text: str
    at: int = 0


_DATE: Final = r"\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[./-]\d{1,2}[./-]\d{4}|\d{1,2}/\d{1,2}/\d{2}"
_FRACTION: Final = r"(?:\.\d+(?![\d.])|[,:]\d+(?![\d.,]))?"
_CLOCK: Final = rf"\d{{1,3}}:[0-5]\d:[0-5]\d{_FRACTION}(?:Z|[+-]\d\d:?\d\d)?|\d\d:[0-5]\d{_FRACTION}"
_STAMP: Final = rf"(?<![\w.:])(?:(?:{_DATE})(?:[T ](?:{_CLOCK}))?|{_CLOCK})(?![\d:])"
# A word may hold what units are written with; a hyphen before a digit is that number's sign.
_WORD: Final = r"(?:[^\W\d_]|[°%µ/])(?:[^\W\d_]|[°·•⋅∙.%_²³^/]|-(?=[^\W\d_]))*"
_RUN: Final = r"-{2,}|\*{2,}|_{2,}|#{2,}|\?{2,}|>{2,}|<{2,}"


STAMP: Final = re.compile(_STAMP)


@lru_cache(maxsize=64)
def _pattern(style: Style) -> re.Pattern[str]:
    mark = re.escape(style.decimal)
    grouped = rf"\d{{1,3}}(?:{re.escape(style.thousands)}\d{{3}})+(?!\d)(?:{mark}\d*)?|" if style.thousands else ""
    number = rf"[+-]?(?:{grouped}\d+(?:{mark}\d*)?|{mark}\d+)(?:[eE][+-]?\d+)?"
    digits = rf"[0-9A-Fa-f]{{{style.hex_width}}}(?![0-9A-Za-z.])"
    hexadecimal = (
        rf"(?P<prefix>0[xX](?={digits}))|(?P<hex>(?:(?<=0[xX])|(?<![0-9A-Za-z.+-])){digits})|"
        if style.hex_width
        else ""
    )
    separators = re.escape(_SEPARATORS.replace(style.decimal, ""))
    return re.compile(
        rf"(?P<stamp>{_STAMP})|{hexadecimal}(?P<number>{number})|(?P<sign>[+-](?=[ \t]+[\d.]))|(?P<blank>[ \t]+)"
        rf"|(?P<separator>[{separators}])|(?P<control>[\x00-\x1f\x7f])|(?P<word>{_RUN}|{_WORD})|(?P<text>.)",
        re.DOTALL,
    )


def tokens(line: str, style: Style) -> tuple[Token, ...]:
    """Cut a line into pieces.

    >>> [t.text for t in tokens("ST,-  12.3 lbf.in", Style())]
    ['ST', ',', '-', '  ', '12.3', ' ', 'lbf.in']
    >>> [t.kind for t in tokens("21:35:07.5 1,209.5", Style(thousands=","))]
    ['stamp', 'blank', 'number']
    """
    return tuple(
        Token("text" if match.lastgroup == "prefix" else match.lastgroup, match.group(), match.start())  # type: ignore[arg-type]
        for match in _pattern(style).finditer(line[:MAX_LINE])
    )


def shape(line: Sequence[Token]) -> tuple[str, ...]:
    """Give what a line shares with its sisters: kinds in order, punctuation as it is, no blanks, no sign apart."""
    return tuple(
        t.text if t.kind in ("separator", "control", "text") else t.kind
        for t in line
        if t.kind not in ("blank", "sign")
    )


def find_terminator(data: bytes) -> str:
    """Tell what ends a line: CRLF, LF, CR, ETX for frames without line ends, or empty when nothing does.

    A stray half of a line's end is noise; what occurs in most cases counts. Frames whose check sum follows the ETX
    count as such also where line ends stand between them: the check may look like a line's end.
    """
    both = data.count(b"\r\n")
    lone = {"CR": data.count(b"\r") - both, "LF": data.count(b"\n") - both}
    name, count = max(lone.items(), key=lambda item: item[1])
    ending = ("CRLF", both) if both and both >= count else (name, count)
    framed = min(data.count(_STX), data.count(_ETX))
    if framed >= MIN_LINES and 2 * framed > ending[1]:
        behind = re.findall(rb"\x03([^\x02]{0,8})\x02", data, re.DOTALL)
        if ending[1] < framed / 2 or any(rest.strip(b"\r\n ") for rest in behind):
            return FRAMED
    return ending[0] if ending[1] else ""


def split_lines(data: bytes) -> list[bytes]:
    """Split into lines; the first may have been joined in its middle, the last is not complete: both are excluded."""
    return [line for line in re.split(rb"[\r\n]+", data)[1:-1] if line]


def split_frames(data: bytes) -> tuple[list[bytes], int]:
    """Give what stands from STX to ETX, with the bytes behind the ETX that are no line end; and how many those are."""
    rests = [
        rest.strip(b"\r\n") for rest in re.findall(rb"\x03([^\x02]{0,8}?)(?:\r\n|\r|\n)?(?=\x02)", data, re.DOTALL)
    ]
    size = Counter(len(rest) for rest in rests).most_common(1)[0][0] if rests else 0
    found, begin = [], data.find(_STX)
    while begin >= 0 and (end := data.find(_ETX, begin)) >= 0 and end + 1 + size <= len(data):
        start = data.rfind(_STX, begin, end)
        found.append(data[start : end + 1 + size])
        begin = data.find(_STX, end + 1 + size)
    return found, size


@dataclass(frozen=True, slots=True)
class Family:
    """Lines of one build, and the lines that differ from it only by a word where a number stands."""

    shape: tuple[str, ...]
    lines: tuple[tuple[Token, ...], ...]
    marked: tuple[tuple[tuple[Token, ...], int], ...] = ()  # (tokens, place); the line, and which piece holds the word
    others: tuple[str, ...] = ()


def find_family(lines: Sequence[str], style: Style) -> Family:
    """Find the build that most lines share."""
    cut = [tokens(line, style) for line in lines]
    shapes = [shape(line) for line in cut]
    common = Counter(s for s in shapes if set(NUMBERS) & set(s)).most_common(1)
    if not common:
        return Family((), (), (), tuple(lines))
    main = common[0][0]
    short = main[:-1] if main[-1:] == ("word",) and main[:-1] in shapes and _ends_in_number(main) else None
    longer = (*main, "word") if (*main, "word") in shapes else None
    main = longer or main
    alike = {main, short if longer is None else main[:-1]}
    kept, marked, others = [], [], []
    for raw, line, own in zip(lines, cut, shapes, strict=True):
        place = _odd_word(own, main)
        if own in alike:
            kept.append(line)
        elif place is not None:
            marked.append((line, place))
        else:
            others.append(raw)
    return Family(main, tuple(kept), tuple(marked), tuple(others))


def _ends_in_number(main: tuple[str, ...]) -> bool:
    return any(kind in NUMBERS for kind in main[:-1])


def _odd_word(own: tuple[str, ...], main: tuple[str, ...]) -> int | None:
    """Give the place of the only number of the build that is a word here; None if the lines differ otherwise."""
    if len(own) != len(main):
        # a word that touches its neighbour's text ("OLNm") makes the line shorter by one piece
        for place, kind in enumerate(main):
            if kind in NUMBERS and (*main[:place], "word", *main[place + 1 :]) == _doubled(own, place):
                return place
        return None
    odd = [i for i, (a, b) in enumerate(zip(own, main, strict=True)) if a != b]
    if len(odd) == 1 and main[odd[0]] in NUMBERS and own[odd[0]] == "word":
        return odd[0]
    return None


def _doubled(own: tuple[str, ...], place: int) -> tuple[str, ...]:
    return own[: place + 1] + own[place:] if place < len(own) and own[place] == "word" else own


def significant(line: Sequence[Token]) -> list[Token]:
    """Give the pieces that ``shape`` counts, with a sign joined to its number."""
    found: list[Token] = []
    sign = ""
    for token in line:
        if token.kind == "sign":
            sign = token.text
        elif token.kind != "blank":
            joined = Token(token.kind, sign + token.text, token.at) if token.kind == "number" and sign else token
            found.append(joined)
            sign = ""
    return found


def word_at(row: Sequence[Token], place: int) -> str:
    """Give the text at a place; empty where a trailing word is missing."""
    return row[place].text if place < len(row) else ""
