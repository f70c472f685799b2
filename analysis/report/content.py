"""The content of a report as plain text in the order of the page, and one drawing: what both renderers show."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from analysis.report.drawing import Drawing
    from analysis.report.material import PageKind, PaperSize
    from analysis.verdict.limits import State

LONGEST = 160
"""Characters of a field; a longer text is cut with an ellipsis, so that one field cannot push the others off."""

LONGEST_NOTE = 600


@dataclass(frozen=True, slots=True)
class PageTable:
    """Headings and rows of text; ``right`` lists the columns of numbers; ``dim`` the rows that do not count.

    ``cut``: columns whose texts are cut, and at how many characters.
    """

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    right: tuple[int, ...] = ()
    dim: tuple[int, ...] = ()
    cut: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A block of the page: a heading with fields (label, value), a table, lines.

    ``half``: half as wide as the page. ``bullets``: the lines are a list.
    """

    heading: str
    fields: tuple[tuple[str, str], ...] = ()
    lines: tuple[str, ...] = ()
    table: PageTable | None = None
    half: bool = False
    bullets: bool = False


@dataclass(frozen=True, slots=True)
class Headline:
    """One judged or stated torque, large: ``breakaway``, ``54.9 ± 0.8 N·m``, a remark below."""

    label: str
    value: str
    remark: str


@dataclass(frozen=True, slots=True)
class Verdict:
    """The result in words and shape: state, what it means, limit, rule."""

    state: State
    shape: str
    meaning: str
    limit: str
    rule: str
    chance: str


@dataclass(frozen=True, slots=True)
class Content:
    """A whole report, ready to be drawn.

    ``record`` is the machine-readable part: what ``analysis.report.verify`` needs to do the work again. ``alerts``
    stand in a frame above the result: nobody may read it without them. ``identity`` is the short form that stands on
    every sheet, ``whole_identity`` all of it, at the end of the page.
    """

    identity: str
    issued: datetime
    title: str
    kind: PageKind
    shop: str
    address: tuple[str, ...]
    simulated: bool
    facts: tuple[tuple[str, str], ...]
    verdict: Verdict | None
    headlines: tuple[Headline, ...]
    drawing: Drawing
    legend: str
    sections: tuple[Section, ...]
    statements: tuple[str, ...]
    signatures: tuple[str, ...]
    footer: str
    record: str
    alerts: tuple[str, ...]
    paper: PaperSize
    whole_identity: str
    language: str = "en"


def blocks(sections: Iterable[Section]) -> list[tuple[bool, tuple[Section, ...]]]:
    """Group what follows one another at the same width: whether half, and the sections."""
    return [(half, tuple(group)) for half, group in groupby(sections, key=lambda section: section.half)]


OPENS, CLOSES = "\ue000", "\ue001"
"""Round words that are not the program's: they stay as they are in every language. No text from a file keeps them."""

APART = "\ue002"
"""Between parts that are translated each by itself: sentences in a row, words in a list."""

_MARKS = frozenset((OPENS, CLOSES, APART))


def clean(text: str, longest: int = LONGEST) -> str:
    """Make a text from a file fit for a page: no control characters or direction marks, bounded length."""
    if OPENS in text or APART in text:
        return _clean_marked(text, longest)
    line = " ".join("".join(c if c.isprintable() else " " for c in text[: longest + 1]).split())
    return line if len(line) <= longest else line[: longest - 1] + "…"


def _clean_marked(text: str, longest: int) -> str:
    """Clean a text that holds marks, which take no room."""
    line = _first(text, longest + 1)
    line = " ".join("".join(c if c in _MARKS or c.isprintable() else " " for c in line).split())
    return line if _room(line) <= longest else _first(line, longest - 1) + "…"


def _room(text: str) -> int:
    return sum(c not in _MARKS for c in text)


def _first(text: str, most: int) -> str:
    """Give the first characters of a text; marks are not counted, and closed where they were opened."""
    kept, room = [], most
    for c in text:
        if c not in _MARKS:
            if not room:
                break
            room -= 1
        kept.append(c)
    start = "".join(kept)
    return start + CLOSES * (start.count(OPENS) - start.count(CLOSES))


def own(text: str, longest: int = LONGEST) -> str:
    """Mark words as somebody's own, cleaned; empty where there are none."""
    line = clean(text.translate(dict.fromkeys(map(ord, _MARKS), " ")), longest)
    return f"{OPENS}{line}{CLOSES}" if line else ""


def listed(*parts: str) -> str:
    """Write the parts that are there, with commas between."""
    return f", {APART}".join(part for part in parts if part.strip())


def in_a_row(*sentences: str) -> str:
    """Write sentences one behind another."""
    return f" {APART}".join(sentences)
