"""Tables beneath a picture, one shown at a time: the others are folded into the row of their names."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QButtonGroup, QWidget

from gui.models.sheets import copied
from gui.translation import tr
from gui.widgets.parts import Press, button, column, line
from gui.widgets.table import TextTable

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.look import Look
    from gui.models.sheets import Sheet

COPIED_MS = 1500  # the button says that it has copied
ROW_PX = 32  # rows that are read, not pressed


class SheetTabs(QWidget):
    """Shows one of several sheets; the choice stays when an answer comes with the same sheets."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._sheets: list[Sheet] = []
        self._chosen = ""
        self.simulated = False
        self.tabs: list[Press] = []
        self._group = QButtonGroup(self)
        self._row = line(gap=0)
        self._row.addStretch(1)
        self.copy_button = button("Copy", self.copy, tip="Copy this table")
        self._copied = QTimer(self)
        self._copied.setSingleShot(True)
        self._copied.setInterval(COPIED_MS)
        self._copied.timeout.connect(lambda: self.copy_button.setText("Copy"))
        self._row.addWidget(self.copy_button)
        self.table = TextTable((), "Table")
        layout = column(self, gap=6)
        layout.addLayout(self._row)
        layout.addWidget(self.table, 1)
        look.changed.connect(self._rescale)
        self._rescale()

    def _rescale(self) -> None:
        self.table.verticalHeader().setDefaultSectionSize(round(ROW_PX * self._look.scale))
        self.table.setMinimumHeight(round(96 * self._look.scale))

    @property
    def shown(self) -> Sheet | None:
        """The sheet in view."""
        return next((sheet for sheet in self._sheets if _stem(sheet.name) == self._chosen), None)

    def show_sheets(self, sheets: Sequence[Sheet], *, simulated: bool = False) -> None:
        """Show other sheets, of simulated data or not."""
        self.simulated = simulated
        if [sheet.name for sheet in sheets] != [tab.source for tab in self.tabs]:
            self._rebuild([sheet.name for sheet in sheets])
        self._sheets = list(sheets)
        stems = [_stem(sheet.name) for sheet in sheets]
        self.choose(self._chosen if self._chosen in stems else stems[0] if stems else "")

    def _rebuild(self, names: Sequence[str]) -> None:
        for tab in self.tabs:
            self._group.removeButton(tab)
            self._row.removeWidget(tab)
            tab.deleteLater()
        self.tabs = []
        for place, name in enumerate(names):
            tab = button(name, partial(self.choose, _stem(name)), role="row")
            tab.setAccessibleName(f"{tr('Table')}: {tr(name)}")
            tab.setCheckable(True)
            self._group.addButton(tab)
            self._row.insertWidget(place, tab)
            self.tabs.append(tab)

    def copy(self) -> None:
        """Copy the table in view, for a spreadsheet or a letter."""
        if self.shown is not None:
            QGuiApplication.clipboard().setText(copied(self.shown, simulated=self.simulated))
            self.copy_button.setText("Copied")
            self._copied.start()

    def choose(self, stem: str) -> None:
        """Show the sheet of a name, counts in it aside."""
        self._chosen = stem
        sheet = self.shown
        for tab in self.tabs:
            tab.setChecked(_stem(tab.source) == stem)
        self.table.setVisible(sheet is not None)
        if sheet is not None:
            self.table.set_heads(sheet.heads, sheet.words)
            self.table.fill(sheet.rows)
            self.table.setAccessibleName(tr(sheet.name))


def _stem(name: str) -> str:
    return name.partition(" (")[0]
