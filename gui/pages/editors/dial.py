"""Readings of a dial instead of a stream, as a job of their own: checks, readings, signature, file, report."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from gui.models.checks import Check, checks_for
from gui.models.dial_entry import DialDraft, check, file_job, sum_up
from gui.models.job import QUANTITY_WORDS, problem_of
from gui.pages.checks_panel import CheckRow
from gui.pages.editors.base import Editor
from gui.pages.editors.limit import LIMIT_UNITS
from gui.pages.pages_part import write_page
from gui.widgets.badge import Badge
from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import Choice, Field, button, column, label, line
from gui.widgets.written import WrittenBar
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from pathlib import Path

    from analysis.uncertainty.budget import Budget
    from gui.shared import Shared
    from gui.tester import Tester

ABOUT = "Type what the dial showed: lever, interval and limit apply as to a recording."


class DialEditor(Editor):
    """Asks for the checks, takes readings one after the other, and files the signed job; emits ``review_asked``."""

    review_asked = Signal(object)
    fixture_asked = Signal()

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__("Dial reading", ABOUT)
        self._shared, self._tester, self._card = shared, tester, tester.card
        self.filed: Path | None = None
        self._checks: list[Check] = []
        self._rows: list[CheckRow] = []
        self._gate, self._form = QWidget(), QWidget()
        self.reading = Field("Reading", "38.5")
        self.unit = Choice("Unit of the dial", [(u, u) for u in LIMIT_UNITS])
        self.quantity = Choice("What was read", QUANTITY_WORDS.items())
        self.marks = Field("Scale division", "1")
        self.error = Field("Accuracy class (max. error)", "4 %")
        self.scale = Field("Full scale", "100")
        self.at_axle = label("–", "title", wrap=True)
        self.fixture = button("Fixture", self.fixture_asked.emit, tip="How the lever meets the wheel. Key 3")
        self.badge = Badge(shared.look)
        self.rule = label("", "caption", wrap=True)
        self.doubts = label("", "warn", wrap=True)
        self.list = label("", "", wrap=True)
        self.keep = button("Keep this reading", self._keep, tip="Return key")
        self.name = Field("Tested by", "first name, or initials")
        self.sign = button("Sign and file", self.file, role="main", tip="Writes the job to the recordings")
        self.report = button("Make report", lambda: self.make_report("engineer"), tip="The engineer's page, PDF")
        self.customer = button("Customer's page", lambda: self.make_report("customer"), tip="One page, PDF")
        self.review = button("Open in Review", lambda: self.review_asked.emit((self.filed,)))
        self.written = WrittenBar()
        self.unit.set_key(shared.display.unit)
        self._lay_out()
        self._connect()
        self.refresh()

    def _connect(self) -> None:
        for field in (self.reading, self.marks, self.error, self.scale):
            field.changed.connect(self.refresh)
            field.edit.returnPressed.connect(self._keep)
        for part in (self.unit, self.quantity, self.name):
            part.changed.connect(self.refresh)
        self._card.changes.listen(self.refresh)
        self._shared.display.changes.listen(self.refresh)

    def _lay_out(self) -> None:
        gate = column(self._gate, gap=2)
        gate.addWidget(label("Before anyone pulls", "head", wrap=True))
        self._lines = column(gap=2)
        gate.addLayout(self._lines)
        self.body.addWidget(self._gate)
        inside = column(self._form, gap=10)
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        for index, part in enumerate((self.reading, self.unit, self.quantity, self.marks, self.error, self.scale)):
            grid.addWidget(part, index // 3, index % 3)
        inside.addLayout(grid)
        foot = FlowLayout(gap=12)  # above what comes and goes: it stays where it is
        foot.addWidget(self.keep)
        self.forget = button("Forget the last one", self._forget)
        foot.addWidget(self.forget)
        inside.addLayout(foot)
        row = line(gap=12)
        row.addWidget(self.at_axle, 1)
        row.addWidget(self.fixture)
        row.addWidget(self.badge)
        inside.addLayout(row)
        inside.addWidget(self.rule)
        inside.addWidget(self.doubts)
        inside.addWidget(self.list)
        self._end = QWidget()
        end = line(self._end, gap=12)
        end.addWidget(self.name, 1)
        end.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignBottom)
        inside.addWidget(self._end)
        self.body.addWidget(self._form)
        self._after = QWidget()
        after = FlowLayout(self._after, gap=10)
        for press in (self.report, self.customer, self.review):
            after.addWidget(press)
        self.body.insertWidget(0, self.written)
        self.body.insertWidget(1, self._after)
        self.body.addStretch(1)

    # ------------------------------------------------------------------ checks
    def _ask_checks(self) -> None:
        """Ask what must be checked for this kind of test; what is ticked stays ticked where it is asked again."""
        ticked = {check.key for check in self._checks if check.ticked}
        asked = checks_for(self._card.test, self._card.conditions)
        if [check.key for check in asked] == [check.key for check in self._checks]:
            return
        for found in asked:
            found.ticked = found.key in ticked
        self._checks = asked
        for row in self._rows:
            row.hide()
            row.deleteLater()
        self._rows = []
        for place, found in enumerate(asked):
            row = CheckRow(found.text)
            row.ticked.connect(lambda on, place=place: self._tick(place, on=on))
            self._rows.append(row)
            self._lines.addWidget(row)

    def _tick(self, place: int, *, on: bool) -> None:
        self._checks[place].ticked = on
        self.refresh()
        if self.checked:
            self.reading.edit.setFocus()

    @property
    def checked(self) -> bool:
        """Whether every check of this kind of test is ticked; in practice nothing can move."""
        return self._card.practice or all(check.ticked for check in self._checks)

    # ------------------------------------------------------------------ readings
    def _draft(self) -> DialDraft:
        typed = (self.marks.text, self.error.text, self.scale.text)
        return DialDraft(self.reading.text, self.unit.key, self.quantity.key, *typed)

    def _keep(self) -> None:
        draft = self._draft()
        if self.checked and check(draft, self._card).budget is not None:
            self.filed = None
            self.written.say("")
            now = datetime.now().astimezone().replace(microsecond=0)
            self.reading.set_text("")
            self._card.put(dial=(*self._card.dial, msgspec.structs.replace(draft, at=now)))
            self.reading.edit.setFocus()

    def _forget(self) -> None:
        own = [place for place, draft in enumerate(self._card.dial) if draft.quantity == self.quantity.key]
        if own:
            self._card.put(dial=tuple(draft for place, draft in enumerate(self._card.dial) if place != own[-1]))

    @property
    def kept(self) -> list[Budget]:
        """The kept readings of this quantity at the axle, with the fixture as it is now."""
        own = [draft for draft in self._card.dial if draft.quantity == self.quantity.key]
        return [budget for draft in own if (budget := check(draft, self._card).budget) is not None]

    # ------------------------------------------------------------------ signing
    def file(self) -> None:
        """Sign: write the job among the recordings; its readings leave the card, which goes on with the next."""
        try:
            checks = [found.text for found in self._checks]
            path = file_job(self._card, checks, self.name.text, self._shared.settings.recordings)
        except (HeldwheelError, OSError) as error:
            self.written.say(problem_of(error), wrong=True)
            return
        self._shared.settings.remember(operator=self.name.text.strip())
        self._checks = []  # another job, another look
        self._card.put(dial=())
        self.filed = path
        self.written.show_file(str(path))
        self.refresh()

    def make_report(self, reader: str) -> None:
        """Write a page of the job that was filed, in the worker."""
        if self.filed is not None:
            write_page(self._shared, self._tester.worker, self.written, self.filed, reader)

    # ------------------------------------------------------------------ showing
    def refresh(self) -> None:
        """Show the checks, what the readings say, and what can be done next."""
        self._ask_checks()
        ready = self.checked
        self._gate.setVisible(not ready)
        left = [place for place, found in enumerate(self._checks) if not found.ticked]
        for place, (row, found) in enumerate(zip(self._rows, self._checks, strict=True)):
            row.show_check(on=found.ticked, is_next=bool(left) and place == left[0])
        kept = len(self._card.dial)
        self._form.setEnabled(ready)
        self._end.setVisible(kept > 0)
        self.forget.setVisible(kept > 0)
        self.sign.setEnabled(ready and kept > 0 and bool(self.name.text.strip()) and not self._card.practice)
        self._after.setVisible(self.filed is not None)
        self._say()
        self.settled.emit()

    def _say(self) -> None:
        checked = check(self._draft(), self._card)
        self.fixture.setVisible(self._card.lever is None)
        display = self._shared.display
        self.reading.set_wrong(checked.wrong if self.reading.text.strip() else "")
        self.keep.setEnabled(checked.budget is not None)
        value = sum_up((*self._card.dial, self._draft()), self._card, self.quantity.key)
        if value is None:
            self.at_axle.setText(checked.wrong or ("Type a reading" if self.checked else "First the checks"))
            self.badge.show_state("")
        else:
            count = "one reading" if value.count == 1 else f"median of {value.count} readings"
            self.at_axle.setText(f"{display.torque(value.value.nm, value.value.u95_nm)} at the axle, {count}")
            self.badge.show_state(value.state, None if value.state else "No limit for this quantity")
        self.rule.setText(f"Rule: {value.rule}" if value is not None and value.rule else "")
        self.doubts.setText("\n".join(_sentence(text) for text in (*checked.doubts, *(value.notes if value else ()))))
        kept = [f"{n}.  {display.torque(b.value, b.u95)}" for n, b in enumerate(self.kept, 1)]
        self.list.setText("\n".join(kept))

    def begin(self) -> None:
        """Begin with the first check that is not ticked, or with the reading."""
        if not self.name.text:
            self.name.set_text(self._card.job.operator or self._shared.settings.choices.operator)
            self.refresh()
        waiting = next((row for row, found in zip(self._rows, self._checks, strict=True) if not found.ticked), None)
        (self.reading.edit if self.checked or waiting is None else waiting.box).setFocus()


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
