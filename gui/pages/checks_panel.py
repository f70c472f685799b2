"""The safety checks that gate the first pull: one at a time with the space bar, or each by itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from gui.translation import tr
from gui.widgets.parts import card, column, label, line, restyle, scrolled

if TYPE_CHECKING:
    from PySide6.QtGui import QMouseEvent

    from gui.models.run import TestRun


class CheckRow(QWidget):
    """A box to tick and its words, wrapped; a press on the words ticks too."""

    ticked = Signal(bool)

    def __init__(self, text: str) -> None:
        super().__init__()
        self.box = QCheckBox()
        self.box.setAccessibleName(tr(text))
        self.words = label(text, wrap=True)
        layout = line(self, gap=8)
        layout.addWidget(self.box)
        layout.addWidget(self.words, 1)
        self.box.clicked.connect(self.ticked)

    def show_check(self, *, on: bool, is_next: bool) -> None:
        """Show whether it is done, and whether the space bar does it next."""
        self.box.setChecked(on)
        restyle(self.words, "caption" if on else "next" if is_next else "")

    def mousePressEvent(self, _event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Tick."""
        self.box.click()


class ChecksPanel(QWidget):
    """The list of checks; emits ``ticked`` with an index and whether it is on."""

    ticked = Signal(int, bool)

    def __init__(self) -> None:
        super().__init__()
        self._rows: list[CheckRow] = []
        self._next = -1
        self._about = label("", "caption", wrap=True)
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        inside = column(frame, margin=16, gap=8)
        body = QWidget()
        self._lines = column(body, gap=6)
        self._lines.addWidget(label("Before anyone pulls", "title", wrap=True))
        self._lines.addWidget(self._about)
        self._lines.addStretch(1)
        self._area = scrolled(body)
        inside.addWidget(self._area, 1)

    def refresh(self, run: TestRun) -> None:
        """Show the run's checks."""
        asked = [check.text for check in run.checks]
        if [row.words.text() for row in self._rows] != asked:
            for row in self._rows:
                row.deleteLater()
            self._rows = []
            for index, check in enumerate(run.checks):
                row = CheckRow(check.text)
                row.ticked.connect(lambda on, index=index: self.ticked.emit(index, on))
                self._rows.append(row)
                self._lines.insertWidget(self._lines.count() - 1, row)
        left = [place for place, check in enumerate(run.checks) if not check.ticked]
        for place, (row, check) in enumerate(zip(self._rows, run.checks, strict=True)):
            row.show_check(on=check.ticked, is_next=bool(left) and place == left[0] and not run.card.practice)
        if left and left[0] != self._next:  # only then: who has scrolled elsewhere stays there
            self._area.ensureWidgetVisible(self._rows[left[0]])
        self._next = left[0] if left else -1
        self._about.setText(
            "This is practice on a simulated axle, nothing can move. On a real car each of these is checked by hand."
            if run.card.practice
            else "Do each, then tick it: the space bar ticks the next one. The maker's manual always comes first."
        )
