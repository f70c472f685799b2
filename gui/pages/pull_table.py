"""The pulls of a recording as a table."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QAbstractItemView, QHeaderView

from gui.pages.pulls_panel import direction_words
from gui.widgets.badge import COLOUR_OF, paint_shape
from gui.widgets.table import TextTable

if TYPE_CHECKING:
    from analysis.verdict.recorded import PullReading, RecordingReading
    from gui.shared import Shared

HEADS = ("Pull", "Direction", "Breakaway", "Rotating", "Result")


class PullTable(TextTable):
    """One row per pull; emits ``chosen`` with its place."""

    chosen = Signal(int)

    def __init__(self, shared: Shared) -> None:
        super().__init__(HEADS, "Pulls of this recording", {0, 1, len(HEADS) - 1})
        self._shared = shared
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.horizontalHeader().setSectionResizeMode(len(HEADS) - 1, QHeaderView.ResizeMode.Stretch)
        self.itemSelectionChanged.connect(self._chosen)

    def current(self) -> int:
        """Give the place of the chosen pull, -1 if none."""
        rows = self.selectionModel().selectedRows()
        return rows[0].row() if rows else -1

    def _chosen(self) -> None:
        if self.current() >= 0:
            self.chosen.emit(self.current())

    def show_reading(self, reading: RecordingReading) -> None:
        """Show a recording's pulls."""
        chosen = self.current()
        self.blockSignals(True)
        self.verticalHeader().setDefaultSectionSize(round(44 * self._shared.look.scale))
        self.setRowCount(len(reading.pulls))
        for row, read in enumerate(reading.pulls):
            self._row(row, read)
        if 0 <= chosen < self.rowCount():
            self.selectRow(chosen)
        self.blockSignals(False)

    def _row(self, row: int, read: PullReading) -> None:
        display, pull = self._shared.display, read.pull
        values = []
        for quantity, part in (("breakaway", pull.breakaway), ("rotating mean", pull.rotating)):
            budget = read.axle.get(quantity)
            if budget is not None:
                values.append(display.figure(budget.value, budget.u95))
            elif part is not None:
                values.append(f"{display.figure(part.at_sensor_nm, part.u95_sensor_nm)} shown")
            else:
                values.append("–")
        state = "excluded" if read.left_out else str(read.result.state) if read.result is not None else ""
        why = (
            read.left_out
            or "; ".join(reason.text for reason in pull.reasons)
            or "; ".join((*read.corrected, *pull.notes))
        )
        cells = (
            str(row + 1),
            direction_words(pull.direction),
            *values,
            f"{state}: {why}" if state and why else state or why,
        )
        for place, text in enumerate(cells):
            item = self.put(row, place, text)
            if place == len(HEADS) - 1 and read.result is not None and not read.left_out:
                item.setData(Qt.ItemDataRole.DecorationRole, self._shape(str(read.result.state)))

    def _shape(self, state: str) -> QPixmap:
        ratio = self.devicePixelRatioF()
        picture = QPixmap(round(40 * ratio), round(20 * ratio))
        picture.setDevicePixelRatio(ratio)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        paint_shape(painter, QRectF(0, 1, 40, 18), state, self._shared.look.colour(COLOUR_OF[state]))
        painter.end()
        return picture
