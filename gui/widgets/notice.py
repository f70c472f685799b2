"""A message across the page that stays until it is answered: what happened, what is safe, what to do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QShortcut
from PySide6.QtWidgets import QFrame

from gui.widgets.parts import button, label, line, restyle

if TYPE_CHECKING:
    from gui.models.state import Notice


class NoticeBar(QFrame):
    """Emits ``answered``, where something can be saved elsewhere ``rescue_asked``, ``zero_asked`` for a new zero."""

    answered = Signal()
    zero_asked = Signal()
    rescue_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("notice")
        self._mark = label("▲", "title")
        self.text = label("", "head", wrap=True)
        self.rescue = button("Save elsewhere", self.rescue_asked.emit, tip="Choose another folder")
        self.zero = button("Take a new zero", self.zero_asked.emit, keeps_focus=True)
        self.close_button = button("Understood", self.answered.emit, tip="Key X", keeps_focus=True)
        QShortcut("X", self, self.answered.emit)
        layout = line(self, margin=10, gap=12)
        layout.addWidget(self._mark)
        layout.addWidget(self.text, 1)
        layout.addWidget(self.rescue)
        layout.addWidget(self.zero)
        layout.addWidget(self.close_button)
        self.hide()

    def show_notice(self, notice: Notice | None) -> None:
        """Show a message, or none."""
        self.setVisible(notice is not None)
        if notice is None:
            return
        self.text.setText(notice.text)
        self.setAccessibleName(notice.text)
        self.rescue.setVisible(notice.can_rescue)
        self.zero.setVisible(notice.can_zero)
        self._mark.setVisible(notice.serious)
        restyle(self._mark, "wrongmark")
        restyle(self.text, "wronghead" if notice.serious else "head")
