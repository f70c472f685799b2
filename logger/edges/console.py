"""What the command doors show: lines, tables and a live progress line.

Standard output carries results, standard error everything else (progress, notes). ``rich`` is imported only when a
table is drawn, so that ``--help`` answers at once. Text from files and devices is shown as it is, never as markup.
"""

from __future__ import annotations

import contextlib
import re
import sys
from collections.abc import Iterator, Sequence
from types import TracebackType
from typing import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from rich.console import Console

UNSHOWN = (OSError, ValueError, AttributeError)
"""What writing to a display raises that is full, gone, closed, of another encoding, or was never there."""

_COMMANDS = dict.fromkeys(
    {*range(32), *range(127, 160), 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A)} - {9, 10},
    "\N{REPLACEMENT CHARACTER}",
)


_NUMBER = re.compile(r"([-+]?[0-9]{1,15}(?:\.[0-9]{1,15})?(?:e[-+]?[0-9]{1,2})?)(?: ([^0-9]{1,20}))?")
_found: dict[str, list[Any]] | None = None


@contextlib.contextmanager
def collected() -> Iterator[dict[str, list[Any]]]:
    """Collect lines and tables instead of showing them: ``lines``, and ``tables`` with title and rows by heading."""
    global _found
    _found = {"lines": [], "tables": []}
    try:
        yield _found
    finally:
        _found = None


def say(text: str = "") -> None:
    """Write one line of result to standard output."""
    if _found is not None:
        _found["lines"] += [text] if text else []
        return
    sys.stdout.write(harmless(text) + "\n")


def note(text: str) -> None:
    """Write one line beside the results, to standard error; where that cannot be shown, nothing happens."""
    with contextlib.suppress(*UNSHOWN):
        sys.stdout.flush()
    with contextlib.suppress(*UNSHOWN):
        sys.stderr.write(harmless(text) + "\n")


def harmless(text: str) -> str:
    """Give text without commands to the terminal and marks that turn the direction of writing; lines and tabs stay."""
    return text.translate(_COMMANDS)


def clean(text: str, limit: int = 200) -> str:
    """Give text from a file or device as one safe line: no control characters, bounded length."""
    line = "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in text[: limit + 1])
    return line if len(line) <= limit else line[: limit - 1] + "…"


def console() -> Console:
    """Give a rich console on standard output, for anything beyond ``say`` and ``table``."""
    from rich.console import Console

    return Console(highlight=False, markup=False, emoji=False, soft_wrap=not sys.stdout.isatty())


def table(
    headings: Sequence[str],
    rows: Sequence[Sequence[str]],
    *,
    title: str = "",
    right: Sequence[int] = (),
    styles: Sequence[str] = (),
) -> None:
    """Draw a table on standard output.

    Args:
        headings: One per column.
        rows: Cells; control characters are replaced.
        title: Line above the table.
        right: Columns that are set right: numbers.
        styles: Rich style per row, or empty. A style never carries meaning alone: the words say it.
    """
    if _found is not None:
        plain = [_plain(headings, row, right) for row in rows]
        _found["tables"].append({"title": title, "rows": plain})
        return
    from rich.box import SIMPLE_HEAD
    from rich.table import Table
    from rich.text import Text

    drawn = Table(box=SIMPLE_HEAD, title=Text(clean(title)) if title else None, title_justify="left", pad_edge=False)
    for i, heading in enumerate(headings):
        drawn.add_column(Text(heading), justify="right" if i in right else "left")
    for i, row in enumerate(rows):
        drawn.add_row(*(Text(clean(cell)) for cell in row), style=styles[i] if i < len(styles) else "")
    shown = console()
    if not sys.stdout.isatty():
        shown.width = 200
    shown.print(drawn)


def _plain(headings: Sequence[str], row: Sequence[str], numbers: Sequence[int]) -> dict[str, str | float]:
    """Give a row for JSON: in columns of numbers a number is one, and its unit stands in a field of its own."""
    plain: dict[str, str | float] = {}
    for at, (heading, cell) in enumerate(zip(headings, row, strict=False)):
        plain[heading] = clean(cell)
        if at in numbers and (found := _NUMBER.fullmatch(cell)):
            plain[heading] = float(found[1]) if set(found[1]) & set(".e") else int(found[1])
            if found[2]:
                plain[f"{heading} unit"] = clean(found[2])
    return plain


class Progress:
    """One line on standard error that is rewritten in place; plain lines now and then where that is no terminal.

    A display that is closed, full or gone ends the showing, never what is shown.
    """

    def __init__(self, every_s: float = 5.0) -> None:
        self._terminal = sys.stderr is not None and sys.stderr.isatty()
        self._every_s = every_s
        self._next_s = 0.0
        self._width = 0

    def __enter__(self) -> Progress:
        return self

    def show(self, text: str, now_s: float) -> None:
        """Show the line; away from a terminal at most once in ``every_s`` of ``now_s``."""
        line = clean(text)
        with contextlib.suppress(*UNSHOWN):
            if self._terminal:
                sys.stderr.write("\r" + line.ljust(self._width))
                self._width = len(line)
            elif now_s >= self._next_s:
                self._next_s = now_s + self._every_s
                sys.stderr.write(line + "\n")
            sys.stderr.flush()

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> Literal[False]:
        if self._terminal and self._width:
            with contextlib.suppress(*UNSHOWN):
                sys.stderr.write("\n")
        return False
