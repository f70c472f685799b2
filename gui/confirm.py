"""Asking before something that cannot be taken back: two large buttons, and the harmless one has the focus."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMessageBox, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from PySide6.QtWidgets import QPushButton


@dataclass(slots=True)
class Confirm:
    """Asks a question; ``always`` answers instead of the user where nobody sits at the window."""

    always: bool | None = None  # the answer; None asks
    asked: list[str] | None = None  # what was asked so far

    def __call__(self, parent: QWidget, question: str, about: str, yes: str, no: str) -> bool:
        """Ask.

        Args:
            parent: Whose question it is.
            question, about: In one sentence, and what happens then.
            yes, no: The words on the buttons.
        """
        self.asked = [*(self.asked or []), question]
        if self.always is not None:
            return self.always
        dialog = QMessageBox(QMessageBox.Icon.NoIcon, "Heldwheel", tr(question), parent=parent)
        dialog.setInformativeText(tr(about))
        go: QPushButton = dialog.addButton(tr(yes), QMessageBox.ButtonRole.DestructiveRole)
        stay: QPushButton = dialog.addButton(tr(no), QMessageBox.ButtonRole.RejectRole)
        dialog.setDefaultButton(stay)
        dialog.setEscapeButton(stay)
        dialog.exec()
        return dialog.clickedButton() is go
