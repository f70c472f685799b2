"""A dialog of a few steps: a title, the step, what is wrong, and buttons to go back and on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QDialog, QStackedWidget, QWidget

from gui.translation import tr
from gui.widgets.parts import button, column, dialog_size, label, line, restyle, scrolled

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtWidgets import QPushButton

    from gui.shared import Shared

FIRST = 0


class SteppedDialog(QDialog):
    """Its own dialogs say what happens on each step, with ``show_step`` and what ``_go_on`` calls.

    Args:
        title: Of the window.
        size: Width and height that it would like, for text of the usual size.
    """

    def __init__(self, shared: Shared, title: str, size: tuple[int, int], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr(title))
        self._shared = shared
        self.pages = QStackedWidget()
        self.title, self.message = label("", "title", wrap=True), label("", "wrong", wrap=True)
        self.back = button("Cancel", self._go_back, tip="Key Esc")
        self.next = button("", self._go_on, role="main")
        self._timer = QTimer(self)
        scale = shared.look.scale
        self.resize(dialog_size(parent, size[0] * scale, size[1] * scale))

    def _lay_out(self, steps: Sequence[QWidget], *beside_next: QPushButton) -> None:
        for step in steps:
            self.pages.addWidget(scrolled(step))
        layout = column(self, margin=18, gap=10)
        layout.addWidget(self.title)
        layout.addWidget(self.pages, 1)
        layout.addWidget(self.message)
        foot = line(gap=10)
        foot.addWidget(self.back)
        foot.addStretch(1)
        for part in (*beside_next, self.next):
            foot.addWidget(part)
        layout.addLayout(foot)

    def show_step(self, step: int) -> None:
        """Go to a step."""
        raise NotImplementedError

    def _go_on(self) -> None:
        raise NotImplementedError

    def _stop(self) -> None:
        raise NotImplementedError

    def _name(self, back: str, on: str) -> None:
        """Say what the two buttons do now; a screen reader says the same."""
        for part, text in ((self.back, back), (self.next, on)):
            part.setText(text)
            part.setAccessibleName(tr(text))

    def _allow(self, on: bool) -> None:
        self.next.setEnabled(on)
        restyle(self.next, "main" if on else "wait")

    def _go_back(self) -> None:
        if self.pages.currentIndex() == FIRST:
            self.reject()
            return
        self._stop()
        self.show_step(FIRST)

    def _lost(self, text: str) -> None:
        """Begin anew, saying why."""
        self._stop()
        self.show_step(FIRST)
        self.message.setText(text)
