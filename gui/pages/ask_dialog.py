"""Asks before anything is sent to a device: what, where to, how often, and who says so."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontDatabase
from PySide6.QtWidgets import QDialog, QWidget

from gui.translation import tr
from gui.widgets.parts import button, card, column, dialog_size, label, line, open_once, scrolled

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.look import Look
    from gui.models.asking import Agreements, Question

CAUTION = (
    "On another device the same bytes may switch, set or erase something. Agree only if this transducer, and nothing "
    "else, is at the other end."
)
HOLDS = (
    "Nothing else is sent. It begins when the test does and goes on until it ends, also after a cable comes back. "
    "Your consent covers only this description as it stands and this port, and is forgotten when the window closes."
)


class AskDialog(QDialog):
    """Shows a question; emits ``agreed`` with it after an explicit yes. The first key pressed says no."""

    agreed = Signal(object)

    def __init__(self, question: Question, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Ask this transducer?"))
        self.question, self._look = question, look
        self.no = button("Send nothing", self.reject, tip="Key Esc")
        self.yes = button("Yes, send this", self._agree, role="main", tip="Only if you know this device")
        self._lay_out()
        self.resize(dialog_size(parent, 640 * look.scale, 520 * look.scale))
        self.no.setFocus()

    def _lay_out(self) -> None:
        question = self.question
        layout = column(self, margin=18, gap=10)
        layout.addWidget(label("It sends nothing unless it is asked", "title", wrap=True))
        body = QWidget()
        inside = column(body, gap=10)
        inside.addWidget(
            label(f"{question.what[:1].upper()}{question.what[1:]} would be sent to {question.to}.", wrap=True)
        )
        inside.addWidget(self._bytes())
        inside.addWidget(label(HOLDS, "caption", wrap=True))
        inside.addWidget(label("Where this description comes from", "head"))
        inside.addWidget(label(question.made, wrap=True))
        if question.own_words:
            inside.addWidget(label(f"In its writer's own words: {question.own_words}", "caption", wrap=True))
        inside.addStretch(1)
        layout.addWidget(scrolled(body), 1)
        layout.addWidget(label(CAUTION, "warn", wrap=True))
        foot = line(gap=10)
        foot.addWidget(self.no)
        foot.addStretch(1)
        foot.addWidget(self.yes)
        layout.addLayout(foot)

    def _bytes(self) -> QWidget:
        """Give the bytes as they go over the wire, in figures of equal width."""
        frame = card()
        inside = column(frame, margin=12, gap=6)
        inside.addWidget(label("Byte by byte, in hexadecimal digits", "caption"))
        fixed = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
        for digits, text in self.question.requests:
            shown = label(digits, wrap=True)
            shown.setStyleSheet(f"font-family: '{fixed.family()}'; font-size: {round(18 * self._look.scale)}px;")
            shown.setAccessibleName(f"{tr('Bytes')} {digits}")
            inside.addWidget(shown)
            if text:
                inside.addWidget(label(f"as text: {text}", "caption", wrap=True))
        return frame

    def _agree(self) -> None:
        self.agreed.emit(self.question)
        self.accept()


def ask_first(
    question: Callable[[], Question | None],
    agreements: Agreements,
    look: Look,
    parent: QWidget,
    go: Callable[[], object],
) -> None:
    """Go on at once, or after a yes to every question: a second device may have to be asked, too."""
    asked = question()
    if asked is None:
        go()
        return

    def agreed(answered: Question) -> None:
        agreements.agree(answered)
        ask_first(question, agreements, look, parent, go)

    dialog = AskDialog(asked, look, parent)
    dialog.agreed.connect(agreed)
    open_once(dialog)
