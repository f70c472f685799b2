"""The end of a test: what it says, who made it, where it lies."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from analysis.cautions import Moment, cautions_for, facts_of
from gui.models.caught import pack_means
from gui.models.job import QUANTITY_WORDS
from gui.models.ratio import unjudged_words
from gui.widgets.badge import Badge
from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import Field, button, card, column, label, scrolled
from gui.widgets.written import WrittenBar

if TYPE_CHECKING:
    from gui.models.run import TestRun
    from gui.shared import Shared


class SignPanel(QWidget):
    """Result in words, and the name; emits ``named`` while it is typed."""

    named = Signal(str)
    review_asked = Signal()
    report_asked = Signal(str)

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        body = QWidget()
        inside = column(body, margin=12, gap=14)
        column(frame, margin=8).addWidget(scrolled(body))
        self._title = label("Sign the test", "title")
        self._expired = label("", "wronghead", wrap=True)
        self._value = label("", "title", wrap=True)
        self._badge = Badge(shared.look, 26)
        self._words = label("", wrap=True)
        self.name = Field("Tested by", "first name, or initials")
        self._warn = label("", "warn", wrap=True)
        for part in (self._title, self._expired, self._value, self._badge, self._words, self.name, self._warn):
            inside.addWidget(part)
        self._after = label("", "caption", wrap=True)
        inside.addWidget(self._after)
        self._open = button("Open in Review", self.review_asked.emit, tip="Trace, budget, report")
        self.report = button("Make report", lambda: self.report_asked.emit("engineer"), tip="The engineer's page, PDF")
        self.customer = button("Customer's page", lambda: self.report_asked.emit("customer"), tip="One page, PDF")
        self._presses = QWidget()
        presses = FlowLayout(self._presses, gap=10)
        for press in (self.report, self.customer, self._open):
            presses.addWidget(press)
        inside.addWidget(self._presses)
        self.written = WrittenBar()
        inside.addWidget(self.written)
        inside.addStretch(1)
        self.name.changed.connect(lambda: self.named.emit(self.name.text))

    def refresh(self, run: TestRun) -> None:
        """Show what the test says."""
        display, value = self._shared.display, run.value
        self._title.setText("The test is finished" if run.flow.finished else "Sign the test")
        after = cautions_for(Moment.AFTER, facts=facts_of(run.card.test, run.card.conditions))
        self._after.setText("\n".join(("Afterwards:", *(f"•  {caution.text}" for caution in after))))
        self._after.setVisible(not run.card.practice)
        self.name.set_text(run.signed_by)
        self.name.edit.setEnabled(not run.flow.finished)
        self._presses.setVisible(run.flow.finished)
        if not run.flow.finished:
            self.written.say("")
        self._warn.setText("Simulated: this must never be filed as a test." if run.simulated else "")
        expired = run.card.expired()
        self._expired.setText(f"▲ {expired}")
        self._expired.setVisible(bool(expired))
        if value is None:
            self._value.setText("No pull counts, so there is no value.")
            self._badge.show_state("")
            self._words.setText("")
            return
        self._value.setText(
            f"{QUANTITY_WORDS[value.quantity]}: {display.torque(value.value.nm, value.value.u95_nm)} at the axle"
        )
        self._badge.show_state(value.state, None if value.state else unjudged_words(run.card.limit))
        left_out = sum(1 for caught in run.pulls.pulls if caught.rejected)
        lines = [f"{value.count} pulls count, {left_out} excluded, 95 % interval."]
        lines += [f"{QUANTITY_WORDS[name]}: {display.torque(v.nm, v.u95_nm)}" for name, v, _n, _d in value.other]
        for name, mean, why in pack_means(run.pulls, run.drag):
            packs = display.torque(mean.nm, mean.u95_nm) if mean is not None else why
            lines.append(f"Pack mean, drag taken off, {name}: {packs}")
        if run.zeros.moved_nm is not None:
            lines.append(f"The zero moved by {display.torque(run.zeros.moved_nm)} from start to end.")
        photos = [photo.caption or photo.file for photo in run.card.photos]
        lines += [f"Photographs that go with it: {', '.join(photos)}."] if photos else []
        lines += [f"Rule: {value.rule}"] if value.rule else []
        lines += list(value.notes)
        self._words.setText("\n".join(lines))
