"""A message across the page that stays until it is answered: what happened, what is safe, what to do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent, QShortcut
from PySide6.QtWidgets import QFrame, QSizePolicy

from gui.translation import tr
from gui.widgets.parts import button, label, line, restyle, scrolled

if TYPE_CHECKING:
    from gui.models.state import Notice


MOST_OF_WINDOW = 0.25  # that a message may cover


class NoticeBar(QFrame):
    """Emits ``answered``, ``rescue_asked``, ``zero_asked`` and ``show_asked`` where that can be done."""

    answered = Signal()
    zero_asked = Signal()
    rescue_asked = Signal()
    show_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("notice")
        self._fitted = 0
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)  # no taller than its words
        self._mark = label("▲", "title")
        self.text = label("", "head", wrap=True)
        self.rescue = button("Save elsewhere", self.rescue_asked.emit, tip="Choose another folder")
        self.zero = button("Take a new zero", self.zero_asked.emit, keeps_focus=True)
        self.show_button = button("Show", self.show_asked.emit, keeps_focus=True)
        self.close_button = button("Understood", self.answered.emit, tip="Key X", keeps_focus=True)
        QShortcut("X", self, self.answered.emit)
        layout = line(self, margin=10, gap=12)
        layout.addWidget(self._mark)
        self._area = scrolled(self.text)
        layout.addWidget(self._area, 1)
        for part in (self.rescue, self.zero, self.show_button, self.close_button):
            layout.addWidget(part)
        self.hide()

    def show_notice(self, notice: Notice | None) -> None:
        """Show a message, or none."""
        self.setVisible(notice is not None)
        if notice is None:
            return
        self.text.setText(notice.text)
        self.setAccessibleName(tr(notice.text))
        self.rescue.setVisible(notice.can_rescue)
        self.zero.setVisible(notice.can_zero)
        self.show_button.setVisible(bool(notice.show))
        self._mark.setVisible(notice.serious)
        restyle(self._mark, "wrongmark")
        restyle(self.text, "wronghead" if notice.serious else "head")
        self._fit()

    def _fit(self) -> None:
        """Take the height that the words need, but no more than a part of the window: the rest scrolls."""
        needed = self.text.heightForWidth(max(80, self._area.room))
        self._area.setFixedHeight(max(44, min(needed + 4, round(MOST_OF_WINDOW * self.window().height()))))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Fit anew."""
        super().resizeEvent(event)
        if self._area.room != self._fitted:
            self._fitted = self._area.room
            self._fit()
