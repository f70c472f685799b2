"""The Compare page: groups of recordings by any tag, each fill a point, with medians, intervals and differences."""

from __future__ import annotations

import math
import statistics
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QCheckBox,
    QFileDialog,
    QHeaderView,
    QSplitter,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from analysis.compare.runs import Quantity, Run
from gui.models.archive import find_tests
from gui.models.comparing import (
    Answer,
    Question,
    answer,
    effect_words,
    export,
    groups_in,
    read_runs,
    tags_to_group_by,
    trend_words,
)
from gui.models.run import Notice
from gui.widgets.group_plot import GroupPlot
from gui.widgets.notice import NoticeBar
from gui.widgets.parts import Choice, Field, Switch, button, card, column, label, line, scrolled
from gui.widgets.trend_plot import TrendPlot
from gui.work import Worker
from logger.errors import QuantityError
from logger.units import parse_quantity

if TYPE_CHECKING:
    from concurrent.futures import Future

    from PySide6.QtGui import QCloseEvent, QShowEvent

    from analysis.compare.groups import Comparison
    from gui.shared import Shared

PIECE = 8  # recordings read at a time
HEADS = ("Group", "Fills", "Recordings", "Pulls", "Median", "Mean", "95 % interval", "SD of fills")
QUANTITIES = {
    Quantity.BREAKAWAY.value: "Breakaway",
    Quantity.ROTATING.value: "Rotating",
    Quantity.RATIO.value: "Breakaway ÷ rotating",
    Quantity.CHATTER.value: "Chatter index",
}
EMPTY = (
    "Compare groups: before and after a rebuild, left and right, one oil against another.\n\n"
    "1. Give the recordings a tag in Review, such as  oil=B, fill=2, or use what the job card states: side, vehicle.\n"
    "2. Choose here which recordings, which tag makes the groups, and what is compared.\n\n"
    "A fill (drain, flush, fill, run in) is one point, however many pulls it has: pulls of one fill belong together."
)


class ComparePage(QWidget):
    """Question on the left, picture and table on the right."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self.setObjectName("page")
        self._shared = shared
        self.worker = Worker(self)
        self._runs: list[Run] = []
        self._left: list[str] = []
        self._asked: list[Future[Any]] = []  # what the worker is doing for the present search
        self._searched: str | None = None
        self.found: Comparison | None = None
        self._answer_found: Answer | None = None
        self.search = Field("Which recordings", "fluid, shim, 2026-05 …")
        self.quantity = Choice("What is compared", QUANTITIES.items())
        self.by = Choice("Groups by")
        self.control = Choice("Compared with")
        self.unit = Field("Tag that names the fill or build", "fill", "fill")
        self.block = Field("Within blocks of (day, car)", "none")
        self.margin = Field("Counts as no change within", "2 N·m")
        self.difference = Field("Difference that must not be missed", "3 N·m")
        self.pairs = QCheckBox("Every group against every other")
        self.anyway = Field("Reason for comparing unlike tests", "only if needed")
        self.state = label("", "caption", wrap=True)
        self.plot = GroupPlot(shared)
        self.line = TrendPlot(shared)
        self.picture = Switch(("Groups", "Trend"), "Picture")
        self.table = QTableWidget(0, len(HEADS))
        self.words = label(EMPTY, "", wrap=True)
        self.words.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.notice = NoticeBar()
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        layout = column(self, margin=8, gap=8)
        layout.addWidget(self.notice)
        body = QSplitter(Qt.Orientation.Horizontal)
        body.setChildrenCollapsible(False)
        body.setHandleWidth(8)
        body.addWidget(self._question())
        body.addWidget(self._answer())
        body.setSizes([320, 940])
        body.setStretchFactor(1, 1)
        layout.addWidget(body, 1)

    def _question(self) -> QWidget:
        frame = card()
        outer = column(frame, margin=12, gap=8)
        inner = QWidget()
        inside = column(inner, gap=8)
        for part in (self.search, self.quantity, self.by, self.control, self.pairs):
            inside.addWidget(part)
        for part in (self.unit, self.block, self.margin, self.difference, self.anyway):
            inside.addWidget(part)
        inside.addStretch(1)
        area = scrolled(inner)
        outer.addWidget(area, 1)
        outer.addWidget(self.state)
        self.go = button("Compare", self.compare, role="main")
        outer.addWidget(self.go)
        return frame

    def _answer(self) -> QWidget:
        frame = card()
        inside = column(frame, margin=12, gap=8)
        head = line()
        head.addWidget(self.picture)
        head.addStretch(1)
        inside.addLayout(head)
        inside.addWidget(self.plot, 5)
        inside.addWidget(self.line, 5)
        self.picture.set_on("Groups")
        self._trending = False
        self.table.setHorizontalHeaderLabels(HEADS)
        self.table.setAccessibleName("Groups as a table")
        self.table.verticalHeader().hide()
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        inside.addWidget(self.table, 3)
        inside.addWidget(scrolled(self.words), 3)
        foot = line(gap=10)
        foot.addStretch(1)
        self.export_button = button("Export", self._ask_export, tip="CSV, or JSON")
        foot.addWidget(self.export_button)
        inside.addLayout(foot)
        self._show(None)
        return frame

    def _connect(self) -> None:
        self.search.edit.returnPressed.connect(self.refresh)
        self.search.edit.editingFinished.connect(self.refresh)
        self.by.changed.connect(self._by_changed)
        for choice in (self.quantity, self.control):
            choice.changed.connect(self.compare)
        self.pairs.toggled.connect(lambda _on: self.compare())
        self.picture.picked.connect(self._pick_picture)
        self._shared.display.changes.listen(lambda: self._show(self._answer_found))
        self.notice.answered.connect(self.notice.hide)

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Read the recordings when the page is opened."""
        super().showEvent(event)
        self.refresh()

    # ------------------------------------------------------------------ reading
    def refresh(self) -> None:
        """Read the recordings that the search finds, piece by piece, in the worker."""
        if self.search.text == self._searched:
            return
        self._searched = self.search.text
        self._runs, self._left = [], []
        for asked in self._asked:
            self.worker.forget(asked)
        self.state.setText("Looking through the folder")
        asked = self.worker.ask(
            find_tests, self._shared.settings.recordings, self.search.text, then=self._found, failed=self._failed
        )
        self._asked = [asked]

    def _found(self, paths: list[str]) -> None:
        self._left = paths
        self._next_piece()

    def _next_piece(self) -> None:
        piece, self._left = self._left[:PIECE], self._left[PIECE:]
        if not piece:
            self._all_read()
            return
        self.state.setText(f"{len(self._runs)} recordings read, {len(self._left) + len(piece)} to look at")
        self._asked = [self.worker.ask(read_runs, piece, then=self._take, failed=self._failed)]

    def _take(self, answer_: tuple[list[Run], list[str]]) -> None:
        runs, bad = answer_
        self._runs += runs
        if bad:
            self.notice.show_notice(Notice("Left out: " + "; ".join(bad[:3])))
        self._next_piece()

    def _all_read(self) -> None:
        count = len(self._runs)
        self.state.setText(f"{count} recordings" if count != 1 else "1 recording")
        before = self.by.key
        tags = tags_to_group_by(self._runs)
        self.by.set_options([("", "Choose a tag"), *((tag, tag) for tag in tags)])
        self.by.set_key(before if before in tags else "")
        self._by_changed()

    def _by_changed(self) -> None:
        groups = groups_in(self._runs, self.by.key)
        self.control.set_options([("", "the first one"), *((name, name) for name in groups)])
        if self.by.key:
            self.compare()

    # ------------------------------------------------------------------ comparing
    def question(self) -> Question:
        """Give what is asked; a margin that cannot be read is left out and said."""
        margin, difference = (self._torque(field) for field in (self.margin, self.difference))
        return Question(
            self.quantity.key,
            self.by.key,
            self.control.key,
            self.unit.text.strip() or "fill",
            self.block.text.strip(),
            self.pairs.isChecked(),
            margin,
            difference,
            self.anyway.text.strip(),
        )

    def _torque(self, field: Field) -> float | None:
        field.set_wrong("")
        if not field.text.strip():
            return None
        try:
            return parse_quantity(field.text, "torque", self._shared.display.unit)
        except QuantityError as error:
            field.set_wrong(str(error))
            return None

    def _pick_picture(self, name: str) -> None:
        self._trending = name == "Trend"
        self._show(self._answer_found)

    def compare(self) -> None:
        """Compare, in the worker."""
        if not self.by.key:
            self.words.setText(EMPTY)
            return
        self.worker.ask(answer, self._runs, self.question(), then=self._show, failed=self._failed)

    def _failed(self, text: str) -> None:
        self._show(None)
        self.words.setText(text[0].upper() + text[1:])

    def _show(self, given: Answer | None) -> None:
        found = given.comparison if given is not None else None
        trend = given.trend if given is not None else None
        self._answer_found, self.found = given, found
        self.plot.show_comparison(found)
        self.picture.setVisible(trend is not None)
        self.plot.setVisible(found is not None and (trend is None or not self._trending))
        self.line.setVisible(trend is not None and self._trending)
        self.table.setVisible(found is not None)
        self.export_button.setEnabled(found is not None)
        if given is None or found is None:
            return
        torque = found.quantity.unit == "N·m"
        display = self._shared.display
        factor, unit = (display.factor, f" {display.unit}") if torque else (1.0, "")
        self.table.setRowCount(len(found.groups))
        for row, group in enumerate(found.groups):
            figures = (statistics.median(group.values), group.mean)
            cells = [group.name, str(len(group.units)), str(group.runs), str(group.pulls)]
            cells += [display.number(v * factor, 2) for v in figures]
            none = math.isnan(group.low)
            bounds = [display.number(v * factor, 2) for v in (group.low, group.high)]
            cells += ["one fill only" if none else " to ".join(bounds)]
            cells += [display.number(group.sd * factor, 2)]
            for place, text in enumerate(cells):
                item = QTableWidgetItem(text)
                if place:
                    item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
                self.table.setItem(row, place, item)
        name = QUANTITIES.get(found.quantity.value, found.quantity.value)
        self.line.show_trend(trend, factor, f"{name} ({display.unit})" if torque else name)
        lines = [effect_words(effect, unit, factor) for effect in found.effects]
        if trend is not None:
            lines.insert(0, trend_words(trend, factor, unit, display.number))
        if given.plan:
            lines.append(given.plan)
        for name, same in found.equivalences.items():
            what = "no change" if same.equivalent else "sameness is not shown"
            lines.append(f"{name}: {what} within ± {display.number(same.margin * factor, 2)}{unit}")
        lines += [f"Beware: {text}" for text in found.comparability.warnings]
        lines += [f"Not recorded, so not checked: {text}" for text in found.comparability.unknown]
        lines += list(found.remarks)
        if found.excluded:
            lines.append(f"{len(found.excluded)} pulls left out by rules stated beforehand")
        self.words.setText("\n".join(lines))

    def _ask_export(self) -> None:
        target, _ = QFileDialog.getSaveFileName(self, "Write to", "comparison.csv", "CSV (*.csv);;JSON (*.json)")
        if target and self.found is not None:
            self.worker.ask(export, self.found, target, then=self._written, failed=self._failed)

    def _written(self, target: str) -> None:
        self.notice.show_notice(Notice(f"Written to {target}"))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """End the worker."""
        self.worker.close()
        super().closeEvent(event)
