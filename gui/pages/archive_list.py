"""The list of recordings: search, kind, order; each a row with when, what and its result as shape and figures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetricsF, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from gui.models.archive import COLUMNS, Archive, ArchiveEntry, ListedValues
from gui.models.display import grouped
from gui.translation import tr
from gui.widgets.badge import COLOUR_OF, paint_shape
from gui.widgets.parts import SMALLEST_WORDS, Choice, Field, card, column, label, line

if TYPE_CHECKING:
    from gui.shared import Shared

Index = QModelIndex | QPersistentModelIndex
PURPOSES = {
    "tests": "Tests",
    "": "All recordings",
    "pulls": "Pulls",
    "drag": "Drag",
    "zero": "Zero",
    "practice": "Practice",
    "dial": "Dial readings",
    "imported": "Imported",
    "recovered": "Recovered",
}
ROOT = QModelIndex()
NO_RECORDINGS = (
    "There is no recording here yet. Make a test, practise, or drop a recording, a table or a folder on this window."
)
NOTHING_FOUND = "Nothing is found. Take a word out of the search, or choose another kind."
NARROW_PX = 350  # at text scale 1: a narrower list has no column for the result


class ArchiveModel(QAbstractTableModel):
    """The archive as a table; its rows are painted by the delegate."""

    def __init__(self, archive: Archive) -> None:
        super().__init__()
        self.archive = archive

    def rowCount(self, parent: Index = ROOT) -> int:  # noqa: N802 - Qt's name
        """Give the number of rows shown."""
        return 0 if parent.isValid() else len(self.archive.shown)

    def columnCount(self, parent: Index = ROOT) -> int:  # noqa: N802 - Qt's name
        """Give the number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Give the words of a cell, for screen readers and tool tips."""
        entry = self.archive.shown[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            said = self.archive.said.get(entry.path, ListedValues())
            return (f"{entry.started:%Y-%m-%d %H:%M}", what_words(entry), said.state)[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            return entry.problem or entry.name
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:  # noqa: N802
        """Give the columns' names."""
        if role == Qt.ItemDataRole.DisplayRole and orientation == Qt.Orientation.Horizontal:
            return tr(COLUMNS[section])
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Order by a column."""
        self.layoutAboutToBeChanged.emit()
        self.archive.sort(COLUMNS[column], down=order == Qt.SortOrder.DescendingOrder)
        self.layoutChanged.emit()

    def renew(self) -> None:
        """Show what the archive shows now."""
        self.beginResetModel()
        self.endResetModel()


def what_words(entry: ArchiveEntry) -> str:
    """Give what a recording is of, in one line."""
    return " · ".join(part for part in (entry.vehicle or entry.name, entry.side) if part)


def counted(count: int, what: str) -> str:
    """Give a count with its noun.

    >>> counted(1, "correction"), counted(2, "correction")
    ('1 correction', '2 corrections')
    """
    return f"{grouped(count)} {what}{'s' * (count != 1)}"


def mark_words(entry: ArchiveEntry) -> str:
    """Give what is special about a recording."""
    marks = [tr(PURPOSES.get(entry.purpose, entry.purpose)).lower()] if entry.purpose else []
    marks += [word for word, on in (("simulated", entry.simulated), ("recovered", not entry.closed)) if on]
    marks += [f"signed, revision {entry.revision}" if entry.revision > 1 else "signed"] if entry.signed else []
    marks += [counted(entry.corrections, "correction")] if entry.corrections else []
    return entry.problem or " · ".join(tr(mark) for mark in marks)


class RowPainter(QStyledItemDelegate):
    """Paints two lines per cell, and the result's shape."""

    def __init__(self, shared: Shared, archive: Archive) -> None:
        super().__init__()
        self._shared, self._archive = shared, archive

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:  # noqa: N802 - Qt's name
        """Give room for two lines."""
        return QSize(120, round(50 * self._shared.look.scale))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint a cell."""
        look, entry = self._shared.look, self._archive.shown[index.row()]
        box = QRectF(option.rect)
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        back = look.mixed("accent", "surface", 0.2) if selected else look.colour("surface")
        painter.fillRect(box, back)
        painter.setPen(look.colour("line"))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        if index.column() == 0:
            self._lines(painter, box, f"{entry.started:%Y-%m-%d}", f"{entry.started:%H:%M}", "muted")
        elif index.column() == 1:
            tone = "outside" if entry.problem else "close" if entry.simulated or not entry.closed else "muted"
            self._lines(painter, box, what_words(entry), mark_words(entry), tone)
        else:
            self._result(painter, box, self._archive.said.get(entry.path))
        painter.restore()

    def _lines(self, painter: QPainter, box: QRectF, first: str, second: str, tone: str) -> None:
        look = self._shared.look
        top = box.top() + box.height() * 0.12
        for text, font, colour in ((tr(first), look.font(14.5), "text"), (tr(second), look.font(12.5), tone)):
            metrics = QFontMetricsF(font)
            painter.setFont(font)
            painter.setPen(look.colour(colour))
            share = min(1.0, (box.width() - 14) / max(1.0, metrics.horizontalAdvance(text)))
            if share < 1.0:  # smaller rather than cut; what is very long keeps its beginning, all of it is in the tip
                painter.setFont(look.font(font.pixelSize() * max(SMALLEST_WORDS, share), scaled=False))
            painter.drawText(QPointF(box.left() + 8, top + metrics.ascent()), text)
            top += metrics.height()

    def _result(self, painter: QPainter, box: QRectF, said: ListedValues | None) -> None:
        """Paint shape and figures; nothing where the recording has not been opened yet."""
        if said is None:
            return
        display, look = self._shared.display, self._shared.look
        words = f"B {display.figure(said.breakaway_nm)}", f"R {display.figure(said.rotating_nm)}"
        if said.breakaway_nm is None and said.rotating_nm is None:
            words = (tr("no value") if not said.state else "", "")
        height = box.height() * 0.42
        if said.state:
            shape = QRectF(box.left() + 2, box.center().y() - height / 2, height * 1.9, height)
            paint_shape(painter, shape, said.state, look.colour(COLOUR_OF[said.state]))
        self._lines(painter, box.adjusted(height * 1.9, 0, 0, 0), words[0], words[1], "muted")


class ArchiveList(QWidget):
    """Search, kind and table; emits ``picked`` with an entry, ``changed`` when more are selected."""

    picked = Signal(object)

    def __init__(self, shared: Shared, archive: Archive) -> None:
        super().__init__()
        self._shared, self._archive = shared, archive
        self.search = Field("Search", "vehicle, tag=value, 2026-05, simulated")
        self.purpose = Choice("Kind", PURPOSES.items())
        archive.filter("", self.purpose.key)
        self.count = label("", "caption")
        self.empty = label("", "", wrap=True)
        self._quiet = False
        self.model = ArchiveModel(archive)
        self.table = QTableView()
        self._painter = RowPainter(shared, archive)
        self._lay_out()
        self.search.changed.connect(self.refilter)
        self.purpose.changed.connect(self.refilter)
        self.table.selectionModel().selectionChanged.connect(lambda *_: self._selected())
        shared.display.changes.listen(self.table.viewport().update)

    def _lay_out(self) -> None:
        table = self.table
        table.setModel(self.model)
        table.setItemDelegate(self._painter)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        table.verticalHeader().hide()
        table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        table.verticalHeader().setDefaultSectionSize(round(50 * self._shared.look.scale))
        table.setShowGrid(False)
        table.setTabKeyNavigation(False)
        table.setSortingEnabled(True)
        table.horizontalHeader().setSortIndicator(0, Qt.SortOrder.DescendingOrder)
        table.horizontalHeader().setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        table.horizontalHeader().setMinimumSectionSize(60)
        table.setAccessibleName(tr("Recordings"))
        table.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        inside = column(frame, margin=10, gap=8)
        row = line(gap=8)
        row.addWidget(self.search, 3)
        row.addWidget(self.purpose, 2)
        inside.addLayout(row)
        inside.addWidget(self.empty)
        inside.addWidget(table, 1)
        inside.addWidget(self.count)
        self._shared.look.changed.connect(self._rescale)
        self._rescale()

    def _rescale(self) -> None:
        scale = self._shared.look.scale
        self.table.verticalHeader().setDefaultSectionSize(round(50 * scale))
        self.table.setColumnWidth(0, round(100 * scale))
        self.table.setColumnHidden(2, self.width() < NARROW_PX * scale)
        self.table.setColumnWidth(2, round(118 * scale))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Leave the result to the right side where the list is narrow."""
        super().resizeEvent(event)
        self.table.setColumnHidden(2, self.width() < NARROW_PX * self._shared.look.scale)

    def refilter(self) -> None:
        """Apply search and kind."""
        chosen = [entry.path for entry in self.selected()]
        self._archive.filter(self.search.text, self.purpose.key)
        self._renewed(chosen)
        self.recount()

    def take(self, entries: list[ArchiveEntry]) -> None:
        """Take more entries into the list; what is selected stays selected."""
        chosen = [entry.path for entry in self.selected()]
        self._archive.add(entries)
        self._renewed(chosen)

    def _renewed(self, chosen: list[str]) -> None:
        self._quiet = True  # a selection that only moves with its row is no choice
        self.model.renew()
        self.restore(chosen)
        self._quiet = False

    def recount(self, reading: str = "") -> None:
        """Say how many there are."""
        total, shown = len(self._archive.entries), len(self._archive.shown)
        words = f"{grouped(total)} recordings" if shown == total else f"{grouped(shown)} of {grouped(total)} recordings"
        self.count.setText(f"{words}{reading}")
        nothing = NO_RECORDINGS if not total else NOTHING_FOUND if not shown else ""
        self.empty.setText("" if reading else nothing)
        self.empty.setVisible(bool(nothing) and not reading)

    def restore(self, paths: list[str]) -> None:
        """Select these again, if they are shown."""
        rows = {entry.path: row for row, entry in enumerate(self._archive.shown)} if paths else {}
        how = QItemSelectionModel.SelectionFlag.Select | QItemSelectionModel.SelectionFlag.Rows
        for path in paths:
            if path in rows:
                self.table.selectionModel().select(self.model.index(rows[path], 0), how)

    def selected(self) -> list[ArchiveEntry]:
        """Give the selected entries, top to bottom."""
        rows = sorted({index.row() for index in self.table.selectionModel().selectedRows()})
        return [self._archive.shown[row] for row in rows if row < len(self._archive.shown)]

    def _selected(self) -> None:
        entries = self.selected()
        if entries and not self._quiet:
            self.picked.emit(entries)
