"""Edit details: the forms of the job card for a recording that exists, written beside it with a reason."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING, cast

from PySide6.QtWidgets import QDialog, QStackedWidget, QWidget

from gui.models.details import card_of, keep_details
from gui.pages.editors.axle import AxleEditor
from gui.pages.editors.fixture import FixtureEditor
from gui.pages.editors.job import JobEditor
from gui.pages.editors.limit import LimitEditor
from gui.translation import tr
from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import Field, Switch, button, column, dialog_size, label
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from gui.pages.editors.base import Editor
    from gui.shared import Shared
    from gui.tester import Tester
    from gui.work import Worker
    from logger.header import Header

PARTS = ("Job", "Axle", "Fixture", "Limit")


class DetailsDialog(QDialog):
    """Four forms over one card, a reason, and a button that keeps it."""

    def __init__(self, shared: Shared, path: str, header: Header | None, worker: Worker, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Edit details"))
        self._shared, self._path = shared, path
        self._before, self.card = card_of(header), card_of(header)
        tester = cast("Tester", SimpleNamespace(card=self.card, settings=shared.settings, worker=worker))
        self.forms: dict[str, Editor] = {
            "Job": JobEditor(tester),
            "Axle": AxleEditor(shared, self.card),
            "Fixture": FixtureEditor(shared, self.card, lambda: worker),
            "Limit": LimitEditor(shared, self.card),
        }
        self._stack = QStackedWidget()
        self.switch = Switch(PARTS, "What is to be edited")
        self.reason = Field("Reason, kept with the change", "the lever was measured afterwards")
        self.keep = button("Save", self.save, role="main")
        self._lay_out()
        self.show_part(PARTS[2] if self.card.lever is None else PARTS[0])
        self.resize(dialog_size(parent, 1000 * shared.look.scale, 760 * shared.look.scale))

    def _lay_out(self) -> None:
        layout = column(self, margin=14, gap=10)
        layout.addWidget(label("Edit details: written beside the recording, which stays as it is", "head", wrap=True))
        layout.addWidget(self.switch)
        for form in self.forms.values():
            form.done.hide()
            self._stack.addWidget(form)
        layout.addWidget(self._stack, 1)
        layout.addWidget(self.reason)
        foot = FlowLayout(gap=10)
        foot.addWidget(self.keep)
        foot.addWidget(button("Cancel", self.reject, tip="Key Esc"))
        layout.addLayout(foot)
        self.switch.picked.connect(self.show_part)

    def show_part(self, name: str) -> None:
        """Show one of the forms."""
        self.switch.set_on(name)
        self._stack.setCurrentWidget(self.forms[name])
        self.forms[name].begin()

    def save(self) -> None:
        """Write it, or say what is missing."""
        if self.card.lever_faulty:
            self.reason.set_wrong("The fixture has faults: put them right first.")
            return
        try:
            keep_details(self._path, self._before, self.card, self.reason.text, self._shared.settings.choices.operator)
        except HeldwheelError as error:
            self.reason.set_wrong(str(error))
            return
        self.accept()
