"""A table of texts to read: words on the left of their columns, figures on the right; the one set-up of such tables."""

from __future__ import annotations

import html
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence

MEASURED_ROWS = 40  # for the columns' widths: a long table has thousands of rows
LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


def tip(text: str) -> str:
    """Give a text as a tip: marks in it are shown, not obeyed."""
    return f"<p>{html.escape(text)}</p>".replace("\n", "<br>") if text else ""


class TextTable(QTableWidget):
    """A table that is read, not edited; columns are as wide as what they hold.

    Args:
        heads: Its columns.
        name: Accessible name.
        words: Columns that hold words; the others hold figures.
    """

    def __init__(self, heads: Sequence[str], name: str, words: Collection[int] = (0,)) -> None:
        super().__init__()
        self.setAccessibleName(tr(name))
        self.verticalHeader().hide()
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.horizontalHeader().setResizeContentsPrecision(MEASURED_ROWS)
        self.horizontalHeader().setHighlightSections(False)
        self.set_heads(heads, words)

    def set_heads(self, heads: Sequence[str], words: Collection[int] = (0,)) -> None:
        """Take other columns."""
        self._words = frozenset(words)
        self.setColumnCount(len(heads))
        for place, head in enumerate(heads):
            item = QTableWidgetItem(tr(head))
            item.setTextAlignment(self._side(place))
            self.setHorizontalHeaderItem(place, item)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.horizontalHeader().setStretchLastSection(len(heads) - 1 in self._words)

    def fill(self, rows: Iterable[Sequence[str]]) -> None:
        """Show other rows."""
        rows = list(rows)
        self.setRowCount(len(rows))
        for at, cells in enumerate(rows):
            for place, text in enumerate(cells):
                self.put(at, place, text)

    def put(self, row: int, place: int, text: str) -> QTableWidgetItem:
        """Show a text in a cell; where it does not fit, it can be read by pointing at it."""
        text = tr(text)
        item = QTableWidgetItem(text)
        item.setTextAlignment(self._side(place))
        item.setToolTip(tip(text))
        self.setItem(row, place, item)
        return item

    def text(self, row: int, place: int) -> str:
        """Give what a cell shows."""
        item = self.item(row, place)
        return "" if item is None else item.text()

    def _side(self, place: int) -> Qt.AlignmentFlag:
        return LEFT if place in self._words else RIGHT
