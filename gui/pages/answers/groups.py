"""Groups by any tag: each fill a point, differences with their intervals, sameness within a margin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QWidget

from gui.models.comparing import (
    ComparisonAsked,
    Groups,
    Tags,
    compare_groups,
    group_sheets,
    groups_in,
    headline,
    warnings_of,
    written,
)
from gui.pages.answers.base import AnswerPanel, Ask, tag_options
from gui.translation import tr
from gui.widgets.group_plot import GroupPlot
from gui.widgets.parts import Choice, Field, button, column, label, line

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.groups import Comparison
    from analysis.compare.runs import Run
    from gui.models.sheets import Written
    from gui.shared import Shared

EMPTY = (
    "Compare groups: before and after a rebuild, left and right, one oil against another.\n\n"
    "1. Give the recordings a tag in Review, such as  oil=B, fill=2, or use what the job card states: side, vehicle.\n"
    "2. Choose on the left which recordings, what is compared, and which tag makes the groups.\n\n"
    "A fill (drain, flush, fill, run in) is one point, however many pulls it has: pulls of one fill belong together."
)
REFUSED = (
    "Compare like with like: narrow the search until only such tests are left. If you know why these may stand side by "
    "side all the same, say so; the reason is kept with the answer."
)


class GroupsPanel(AnswerPanel):
    """Groups and their differences."""

    picture: GroupPlot

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, GroupPlot(shared), EMPTY)
        self.by = Choice("Groups by")
        self.control = Choice("Compared with")
        self.pairs = QCheckBox(tr("Every group with every other"))
        self.block = Choice("Within blocks of (day, car)")
        self.margin = Field("No-change margin ±", "2")
        self.by.changed.connect(self._by_changed)  # before anybody asks
        self.add(self.by, self.control, self.pairs, self.block, self.margin)
        self.pairs.toggled.connect(lambda _on: self.asked.emit())
        self.reason = Field("Reason for comparing unlike tests", "why this is sound")
        self._why = label("", "warn", wrap=True)
        self.refusal = self._refusal()
        self.inside.insertWidget(0, self.refusal)
        self._runs: Sequence[Run] = ()

    def _refusal(self) -> QWidget:
        made = QWidget()
        inside = column(made, gap=8)
        inside.addWidget(self._why)
        self._what_to_do = label(REFUSED, "", wrap=True)
        inside.addWidget(self._what_to_do)
        row = line(gap=8)
        row.addWidget(self.reason, 1)
        self.anyway = button("Compare anyway", self.asked.emit)
        row.addWidget(self.anyway, 0, Qt.AlignmentFlag.AlignBottom)
        inside.addLayout(row)
        self._room = QWidget()
        inside.addWidget(self._room, 1)
        made.hide()
        self.reason.edit.returnPressed.connect(self.asked.emit)
        return made

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Offer the tags that make groups."""
        self._runs = runs
        self.by.set_options(tag_options(tags.groups, "Choose a tag"))
        self.block.set_options(tag_options(tags.all, "no blocks"))
        self._offer_controls()

    def _by_changed(self) -> None:
        self.reason.set_text("")
        self._offer_controls()

    def _offer_controls(self) -> None:
        groups = groups_in(self._runs, self.by.key)
        first = f"the first ({groups[0]})" if groups else "the first"
        self.control.set_options(tag_options(groups, first))

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        self.control.setEnabled(not self.pairs.isChecked())
        margin = self.typed(self.margin)
        if not runs:
            return "No recordings are found."
        if not self.by.key:
            return "Choose the tag that makes the groups."
        reason = self.reason.text.strip() if not self.refusal.isHidden() else ""
        control = "" if self.pairs.isChecked() else self.control.key
        question = ComparisonAsked(self.by.key, control, self.block.key, self.pairs.isChecked(), margin, reason)
        return Ask(compare_groups, (question,))

    @property
    def found(self) -> Comparison | None:
        """The comparison that is shown."""
        return self.answer.comparison if isinstance(self.answer, Groups) else None

    def show_nothing(self, text: str = "") -> None:
        """Teach; a refusal is over."""
        if hasattr(self, "refusal"):
            self.refusal.hide()
        super().show_nothing(text)

    def redraw(self) -> None:
        """Show groups and differences, or the refusal with what to do."""
        if not isinstance(self.answer, Groups):
            return
        found, scale, refusals = self.found, self.scale, self.answer.refusals
        self._what_to_do.setVisible(bool(refusals))
        self._room.setVisible(bool(refusals))
        if found is None:
            self._why.setText("▲ These groups cannot be compared: " + "; ".join(refusals) + ".")
            self.refusal.setVisible(bool(refusals))
            self.headline.setText("")
            self._visible(answered=False)
            self._taught.setVisible(not refusals)
            return
        despite = next((text for text in found.remarks if text.startswith("compared although")), "")
        self.refusal.setVisible(bool(despite))
        self._why.setVisible(not despite)
        self.picture.show_comparison(found, scale)
        self.show_parts(headline(found, scale), warnings_of(found), group_sheets(found, scale, self.files))

    def written(self) -> Written | None:
        """Give the comparison as it is written."""
        return None if self.found is None else written(self.found)
