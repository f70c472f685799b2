"""A dial reading typed in instead of streamed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGridLayout

from gui.models.dial_entry import DialDraft, check, sum_up
from gui.models.job import QUANTITY_WORDS
from gui.pages.editors.base import Editor
from gui.pages.editors.limit import LIMIT_UNITS
from gui.widgets.badge import Badge
from gui.widgets.parts import Choice, Field, button, label, line

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Budget
    from gui.models.job import JobCard
    from gui.shared import Shared


class DialEditor(Editor):
    """Takes readings one after the other and shows what they say at the axle."""

    def __init__(self, shared: Shared, card: JobCard) -> None:
        super().__init__(
            "Dial reading", "Type what the dial showed: lever, interval and limit apply as to a recording."
        )
        self._shared, self._card = shared, card
        self.reading = Field("Reading", "38.5")
        self.unit = Choice("Unit of the dial", [(u, u) for u in LIMIT_UNITS])
        self.quantity = Choice("What was read", QUANTITY_WORDS.items())
        self.marks = Field("Scale division", "1")
        self.error = Field("Accuracy class (max. error)", "4 %")
        self.scale = Field("Full scale", "100")
        self.at_axle = label("–", "title")
        self.badge = Badge(shared.look)
        self.doubts = label("", "warn", wrap=True)
        self.list = label("", "", wrap=True)
        self.keep = button("Keep this reading", self._keep, tip="Return key")
        self.unit.set_key(shared.display.unit)
        self._lay_out()
        for field in (self.reading, self.marks, self.error, self.scale):
            field.changed.connect(self.refresh)
            field.edit.returnPressed.connect(self._keep)
        self.unit.changed.connect(self.refresh)
        self.quantity.changed.connect(self.refresh)
        card.changes.listen(self.refresh)
        shared.display.changes.listen(self.refresh)
        self.refresh()

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        parts = (self.reading, self.unit, self.quantity, self.marks, self.error, self.scale)
        for index, part in enumerate(parts):
            grid.addWidget(part, index // 3, index % 3)
        self.body.addLayout(grid)
        row = line(gap=12)
        row.addWidget(self.at_axle, 1)
        row.addWidget(self.badge)
        self.body.addLayout(row)
        self.body.addWidget(self.doubts)
        foot = line(gap=12)
        foot.addWidget(self.keep)
        foot.addWidget(button("Forget the last one", self._forget))
        foot.addStretch(1)
        self.body.addLayout(foot)
        self.body.addWidget(self.list)
        self.body.addStretch(1)

    def _draft(self) -> DialDraft:
        typed = (self.marks.text, self.error.text, self.scale.text)
        return DialDraft(self.reading.text, self.unit.key, self.quantity.key, *typed)

    def _keep(self) -> None:
        checked = check(self._draft(), self._card)
        if checked.budget is not None:
            self._card.put(dial=(*self._card.dial, self._draft()))
            self.reading.set_text("")
            self.reading.edit.setFocus()
            self.refresh()

    def _forget(self) -> None:
        own = [place for place, draft in enumerate(self._card.dial) if draft.quantity == self.quantity.key]
        if own:
            self._card.put(dial=tuple(draft for place, draft in enumerate(self._card.dial) if place != own[-1]))

    @property
    def kept(self) -> list[Budget]:
        """The kept readings of this quantity at the axle, with the fixture as it is now."""
        own = [draft for draft in self._card.dial if draft.quantity == self.quantity.key]
        return [budget for draft in own if (budget := check(draft, self._card).budget) is not None]

    def refresh(self) -> None:
        """Show what the readings say."""
        checked = check(self._draft(), self._card)
        display = self._shared.display
        self.reading.set_wrong(checked.wrong if self.reading.text.strip() else "")
        self.keep.setEnabled(checked.budget is not None)
        budgets = [*self.kept, *([checked.budget] if checked.budget is not None else [])]
        value = sum_up(budgets, self._card.bounds(), self._card.decision)
        if value is None:
            self.at_axle.setText(checked.wrong or "Type a reading")
            self.badge.show_state("")
        else:
            count = "one reading" if value.count == 1 else f"median of {value.count} readings"
            self.at_axle.setText(f"{display.torque(value.value.nm, value.value.u95_nm)} at the axle, {count}")
            self.badge.show_state(value.state, None if value.state else "No limit for this quantity")
        ruled = (f"Rule: {value.rule}",) if value is not None and value.rule else ()
        self.doubts.setText("\n".join((*checked.doubts, *(value.notes if value else ()), *ruled)))
        kept = [f"{n}.  {display.torque(b.value, b.u95)}" for n, b in enumerate(self.kept, 1)]
        self.list.setText("\n".join(kept))

    def begin(self) -> None:
        """Begin with the reading."""
        self.reading.edit.setFocus()
