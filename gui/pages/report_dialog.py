"""Asks what stands on every report: the shop, its address, who authorises, the paper. It is remembered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QWidget

from gui.models.issuing import PAPERS
from gui.widgets.parts import Choice, Field, button, column, dialog_size, label, line, scrolled

if TYPE_CHECKING:
    from gui.shared import Shared

ABOUT = (
    "For reports written from now on. Without a name here, a report shows the workshop that its recording names; "
    "without "
    "someone who authorises it, the line to sign on stays empty."
)


class ReportDialog(QDialog):
    """Fields for what the shop puts on its reports."""

    def __init__(self, shared: Shared, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("On every report")
        self._shared = shared
        choices = shared.settings.choices
        self.shop = Field("Workshop", "name at the head of the page", choices.shop)
        self.address = Field("Address", "a stroke / begins a new line", choices.address)
        self.authorised = Field("Authorised by", "printed under the line to sign on", choices.authorised)
        self.paper = Choice("Paper", PAPERS)
        self.paper.set_key(choices.paper)
        self._lay_out()
        self.resize(dialog_size(parent, 560 * shared.look.scale, 300 + 220 * shared.look.scale))
        self.shop.edit.setFocus()

    def _lay_out(self) -> None:
        layout = column(self, margin=18, gap=12)
        layout.addWidget(label("On every report", "title"))
        body = QWidget()
        inside = column(body, gap=12)
        inside.addWidget(label(ABOUT, "caption", wrap=True))
        for part in (self.shop, self.address, self.authorised, self.paper):
            inside.addWidget(part)
        inside.addStretch(1)
        layout.addWidget(scrolled(body), 1)
        foot = line(gap=10)
        foot.addStretch(1)
        foot.addWidget(button("Cancel", self.reject, tip="Key Esc"))
        keep = button("Keep", self.keep, role="main", tip="Key Enter")
        keep.setDefault(True)
        foot.addWidget(keep)
        layout.addLayout(foot)

    def keep(self) -> None:
        """Remember what was filled in."""
        self._shared.settings.remember(
            shop=self.shop.text.strip(),
            address=self.address.text.strip(),
            authorised=self.authorised.text.strip(),
            paper=self.paper.key,
        )
        self.accept()
