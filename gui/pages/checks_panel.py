"""The safety checks that gate the first pull: one at a time with the space bar, or each by itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QWidget

from gui.widgets.parts import card, column, label, scrolled

if TYPE_CHECKING:
    from gui.models.run import TestRun


class ChecksPanel(QWidget):
    """The list of checks; emits ``ticked`` with an index and whether it is on."""

    ticked = Signal(int, bool)

    def __init__(self) -> None:
        super().__init__()
        self._boxes: list[QCheckBox] = []
        self._about = label("", "caption", wrap=True)
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        inside = column(frame, margin=16, gap=8)
        inside.addWidget(label("Before anyone pulls", "title"))
        inside.addWidget(self._about)
        body = QWidget()
        self._lines = column(body, gap=2)
        self._area = scrolled(body)
        inside.addWidget(self._area, 1)

    def refresh(self, run: TestRun) -> None:
        """Show the run's checks."""
        if len(self._boxes) != len(run.checks):
            for box in self._boxes:
                box.deleteLater()
            self._boxes = []
            for index, check in enumerate(run.checks):
                box = QCheckBox(check.text)
                box.clicked.connect(lambda on, index=index: self.ticked.emit(index, on))
                self._boxes.append(box)
                self._lines.addWidget(box)
            self._lines.addStretch(1)
        for box, check in zip(self._boxes, run.checks, strict=True):
            box.setChecked(check.ticked)
        left = [box for box in self._boxes if not box.isChecked()]
        if left:
            self._area.ensureWidgetVisible(left[0])
        self._about.setText(
            "This is practice on a simulated axle, nothing can move. On a real car each of these is checked by hand."
            if run.card.practice
            else "Do each, then tick it: the space bar ticks the next one. The maker's manual always comes first."
        )
