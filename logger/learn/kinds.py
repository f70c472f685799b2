"""Lines of several kinds in one stream: two channels in turn, or a line for the torque and another for the temperature.

A description holds one kind; which one is the user's choice.
"""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.learn.columns import candidates, loaded, name_columns, number_columns
from logger.learn.lines import MIN_LINES, NUMBERS, Family, Notes, Style, find_family, significant, word_at

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

MOST_KINDS: Final = 6
SHARE: Final = 0.1  # of the lines, for a kind of its own
IN_TURN: Final = 0.9  # of the lines come in the same order again and again
SMOOTHER: Final = 3.0  # times less from line to line within a kind than between kinds


def kind_starts(lines: Sequence[str]) -> dict[str, int]:
    """Give the beginnings by which lines differ, with how many lines begin so: up to the first blank or separator."""
    found = Counter(_start(line) for line in lines)
    return {start: count for start, count in found.most_common(MOST_KINDS + 1) if count >= SHARE * len(lines)}


def _start(line: str) -> str:
    body = line.lstrip()
    for index, char in enumerate(body):
        if char in " \t,;|=:":
            return body[: index + 1]
    return body[:8]


def of_kind(lines: Sequence[str], start: str) -> tuple[list[str], tuple[str, ...]]:
    """Give the lines that begin so, and how the others begin: those are no readings and no garbage.

    Args:
        start: As the user says; blanks before it do not count.
    """
    mine = [line for line in lines if line.lstrip().startswith(start)]
    other = Counter(_start(line) for line in lines if not line.lstrip().startswith(start))
    ignore = tuple(
        head
        for head, count in other.most_common(MOST_KINDS)
        if head.strip() and not head.startswith(start) and count > 1
    )
    return mine, tuple(head for head in ignore if not start.startswith(head))


def ask_kind(lines: Sequence[str], family: Family, style: Style, notes: Notes) -> tuple[str, ...]:
    """Ask for the kind of line where several come; else give how lines that cannot hold a torque begin.

    Returns:
        tuple of str: Beginnings of lines to pass over.
    """
    told = _in_turn(family) or _by_course(family, style)
    others = [line for line in family.others if any(c.isdigit() for c in line)]
    ignore: tuple[str, ...] = ()
    if not told and len(others) >= SHARE * len(lines):
        rest = find_family(others, style)
        columns = number_columns(rest, style) if len(rest.lines) >= MIN_LINES else []
        name_columns(columns, Notes())
        mine = {_start(_text(line)) for line in family.lines}
        if any(loaded(column) for column in candidates(columns)):
            told = "lines of several kinds come, and a number moves in more than one of them"
        else:
            ignore = tuple(head for head in {_start(line) for line in others} if head.strip() and head not in mine)[
                :MOST_KINDS
            ]
            if ignore:
                notes.found.append("lines beginning with " + ", ".join(f"'{h}'" for h in ignore) + " are passed over")
    if told:
        starts = ", ".join(f"'{start.strip()}'" for start in kind_starts(lines))
        notes.missing.append("lines")
        notes.unknown.append(f"{told}: choose one kind with --lines; lines begin with {starts}")
    return ignore


def _text(line: Sequence[object]) -> str:
    return "".join(token.text for token in line)  # type: ignore[attr-defined]


def _keys(family: Family) -> list[tuple[int, list[str]]]:
    """Give the places whose text takes a few values that each come often: words, and short whole numbers."""
    rows = [significant(line) for line in family.lines]
    found = []
    for place, kind in enumerate(family.shape):
        texts = [word_at(row, place) for row in rows]
        counts = Counter(texts)
        few = 2 <= len(counts) <= MOST_KINDS and min(counts.values()) >= SHARE * len(texts)
        if few and (kind == "word" or (kind in NUMBERS and all(t.isdigit() and len(t) <= 2 for t in counts))):
            found.append((place, texts))
    return found


def _in_turn(family: Family) -> str:
    """Find a word that comes in a fixed turn."""
    for place, texts in _keys(family):
        if family.shape[place] != "word":
            continue
        count = len(set(texts))
        again = np.mean([a == b for a, b in zip(texts, texts[count:], strict=False)])
        change = np.mean([a != b for a, b in pairwise(texts)])
        if again > IN_TURN and change > IN_TURN:
            return "several channels come in turn (" + ", ".join(f"'{t}'" for t in sorted(set(texts))) + ")"
    return ""


def _by_course(family: Family, style: Style) -> str:
    """Find a word by which the lines fall into courses that are each much smoother than all together."""
    columns = number_columns(family, style)
    moving = [c for c in columns if c.moves and loaded(c)]
    for place, texts in _keys(family):
        key = np.array(texts)
        changed = key[1:] != key[:-1]
        for column in moving:
            if column.place == place or changed.sum() < MIN_LINES:
                continue
            across = float(np.median(np.abs(np.diff(column.values))[changed]))
            if across > SMOOTHER * _within(column.values, key) + 1e-9:
                return "several channels come mixed (" + ", ".join(f"'{t}'" for t in sorted(set(texts))) + ")"
    return ""


def _within(values: NDArray[np.float64], key: NDArray[np.str_]) -> float:
    steps = [np.abs(np.diff(values[key == one])) for one in np.unique(key)]
    return float(np.median(np.concatenate(steps)))
