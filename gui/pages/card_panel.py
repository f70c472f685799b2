"""The left of the Test page: the job card in six rows, each a button to what it shows, and the hub below."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QMenu, QPushButton, QSizePolicy, QWidget

from gui.models.job import FIXTURE_WORDS, HELD_WORDS, QUANTITY_WORDS, lever_words, type_words
from gui.pages.hub_words import hub_view
from gui.theme import TARGET_PX
from gui.translation import sentence, tr
from gui.widgets.fitting import WRAP, wrapped_height
from gui.widgets.hub import HubDrawing
from gui.widgets.parts import button, card, column, label, line, restyle, scrolled

if TYPE_CHECKING:
    from gui.look import Look
    from gui.shared import Shared
    from gui.tester import Tester

ROWS = ("Job", "Kind of test", "Axle", "Fixture", "Limit", "Transducer")


class CardRow(QPushButton):
    """One row: a caption, a line that says it, a second line; a small square on the left, filled once it is there."""

    def __init__(self, look: Look, caption: str, tip: str) -> None:
        super().__init__()
        self._look, self._caption, self._lines, self._there = look, tr(caption), ("", ""), False
        self._warn, self._alarm = "", False
        self.setProperty("role", "row")
        self.setCheckable(True)
        self.setToolTip(tr(tip))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_lines(
        self, first: str, second: str = "", *, there: bool, warn: str = "", caption: str = "", alarm: bool = False
    ) -> None:
        """Show what is filled in; ``warn`` replaces the second line, ``alarm`` makes it the loudest of the card."""
        shown = (tr(caption or self._caption), (tr(first), tr(second)), there, sentence(warn), alarm)
        if shown != (self._caption, self._lines, self._there, self._warn, self._alarm):
            self._caption, self._lines, self._there, self._warn, self._alarm = shown
            self.setAccessibleName(f"{self._caption}: {self._lines[0]} {self._warn or self._lines[1]}".strip())
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for its lines."""
        return QSize(220, self.heightForWidth(max(160, self.width())))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give the same room, never less than a target."""
        return QSize(160, self.sizeHint().height())

    def hasHeightForWidth(self) -> bool:  # noqa: N802 - Qt's name
        """Say that a narrow card needs more lines."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """Give the height of the wrapped lines."""
        room = self._room(width)
        heights = (wrapped_height(text, font, room) + 1 for text, font, _ in self._texts())
        return max(TARGET_PX, round(12 * self._look.scale + sum(heights)))

    def _room(self, width: int) -> float:
        return width - 30 * self._look.scale - 10

    def _texts(self) -> list[tuple[str, QFont, str]]:
        look = self._look
        lines = [(self._caption, look.font(12.5), "muted"), (self._lines[0], look.font(15, bold=True), "text")]
        if self._alarm:
            lines.append((f"▲ {self._warn}", look.font(14, bold=True), "outside"))
        elif self._warn or self._lines[1]:
            lines.append((self._warn or self._lines[1], look.font(12.5), "close" if self._warn else "muted"))
        return lines

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for another height where the width has changed."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint frame, mark and lines."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, scale = self._look, self._look.scale
        side = 10 * scale
        mark = QRectF(10, 12 * scale, side, side)
        painter.setPen(QPen(look.colour("accent" if self._there else "edge"), 2))
        painter.setBrush(look.colour("accent") if self._there else Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(mark, 2, 2)
        left, room, y = 30 * scale, self._room(self.width()), 6 * scale
        for text, font, colour in self._texts():
            painter.setFont(font)
            painter.setPen(look.colour(colour))
            height = wrapped_height(text, font, room)
            painter.drawText(QRectF(left, y, room, height + 2), WRAP, text)
            y += height + 1


class CardPanel(QWidget):
    """The job card; emits ``opened`` with the name of the row that was pressed."""

    opened = Signal(str)

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__()
        self._shared, self._tester, self._job = shared, tester, tester.card
        self.rows = {name: CardRow(shared.look, name, f"Key {n + 1}") for n, name in enumerate(ROWS)}
        self.drawing = HubDrawing(shared.look)
        self.drawing.setMinimumHeight(0)  # the rows come first where a message takes the height
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        inside = column(frame, margin=10, gap=2)
        self._head = label("Job card", "head", wrap=True)
        top = line(gap=6)
        top.addWidget(self._head, 1)
        self.menu = QMenu(self)
        self.menu.aboutToShow.connect(self._offer_jobs)
        self.jobs = button("Jobs", tip="New job, as last time, earlier jobs", keeps_focus=True)
        self.jobs.setMenu(self.menu)
        top.addWidget(self.jobs)
        inside.addLayout(top)
        body = QWidget()
        listed = column(body, gap=2)
        for name, row in self.rows.items():
            row.clicked.connect(lambda _on=False, name=name: self.opened.emit(name))
            listed.addWidget(row)
        listed.addWidget(self.drawing, 1)
        inside.addWidget(scrolled(body), 1)
        self._job.changes.listen(self.refresh)
        shared.display.changes.listen(self.refresh)
        self.refresh()

    def _offer_jobs(self) -> None:
        """Fill the menu of jobs; while a test runs its card is not changed for another."""
        menu, tester = self.menu, self._tester
        menu.clear()
        if tester.run.flow.running or tester.card.practice:
            menu.addAction(tr("End the test first")).setEnabled(False)
            return
        menu.addAction(tr("New job"), tester.new_job)
        known = [job for job in tester.jobs.recent() if job.path != tester.jobs.path]
        last = tr("As last time: fixture, limit, transducer, kind of test")
        menu.addAction(last, tester.as_last_time).setEnabled(bool(known))
        menu.addSeparator()
        for job in known:
            menu.addAction(job.words, partial(tester.open_job, job.path))

    def mark_open(self, name: str) -> None:
        """Show which row is open."""
        for row_name, row in self.rows.items():
            row.setChecked(row_name == name)

    def refresh(self) -> None:
        """Show the card as it stands."""
        job, display = self._job, self._shared.display
        self._head.setText("Practice card: your job card comes back afterwards" if job.practice else "Job card")
        restyle(self._head, "practice" if job.practice else "head")
        vehicle = job.job.vehicle or "No vehicle yet"
        details = " · ".join(part for part in (job.job.number, job.job.customer) if part)
        self.rows["Job"].show_lines(vehicle, details, there=bool(job.job.vehicle))
        test = job.test
        place = {"car": "In the car", "bench": "On the bench"}.get(test.place or "", "")
        side = {"left": "left wheel", "right": "right wheel"}.get(test.side or "", "")
        kind = " · ".join(word for word in (place, side) if word)
        held = " · ".join(w for w in (HELD_WORDS.get(test.held or "", ""), test.gear or "") if w)
        self.rows["Kind of test"].show_lines(kind or "Not stated", held, there=test.held is not None)
        self._axle()
        factor = job.lever_factor
        if job.lever is None and job.lever_faulty:
            self.rows["Fixture"].show_lines("Not usable yet", "Open it to see what is missing", there=False)
        elif job.lever is None:
            self.rows["Fixture"].show_lines("No fixture yet", "How the lever meets the wheel", there=False)
        else:
            times = f"reading × {display.number(factor, 3)}" if factor is not None else ""
            words = FIXTURE_WORDS[job.lever.fixture]
            detail = lever_words(job.lever, display.length)
            second = times or (detail if detail != words else "")
            self.rows["Fixture"].show_lines(words, second, there=True)
        self._limit()
        self._transducer()
        self.drawing.show_view(hub_view(job.lever, factor, self._shared))

    def _axle(self) -> None:
        axle, conflict = self._job.axle, self._job.type_conflict()
        ratio = "" if axle.ratio is None else f"ratio {self._shared.display.number(axle.ratio, 2)}"
        second = " · ".join(part for part in (ratio, axle.tag, axle.pack_build) if part)
        warn = "" if conflict is None else f"{conflict.text[0].upper()}{conflict.text[1:]}"
        if conflict is not None and conflict.refused:
            warn = "This torque says nothing about it"
        elif conflict is not None and axle.type_reason:
            warn = f"Judged all the same: {axle.type_reason}"
        self.rows["Axle"].show_lines(
            type_words(axle.type),
            second or ("" if axle.type else "On the wrong type the number means nothing"),
            there=bool(axle.type),
            warn=warn,
        )

    def _limit(self) -> None:
        job, display = self._job, self._shared.display
        row = self.rows["Limit"]
        if job.limit is None:
            row.show_lines("No limit", "Values are shown, none is judged", there=False, caption="Limit")
            return
        low, high = job.limit_nm()
        quantity = QUANTITY_WORDS[job.limit.quantity].lower()
        if job.limit.is_ratio:
            quantity, words = "in gear ÷ neutral", f"at least {display.number(job.limit.lower, 1)}"
        elif low is not None and high is not None:
            words = f"{display.figure(low)} to {display.torque(high)}"
        elif low is not None:
            words = f"at least {display.torque(low)}"
        else:
            words = f"at most {display.torque(high)}"
        source = ", ".join(p for p in (job.limit.source, job.limit.page) if p)
        conflict = job.conflict()
        stands = conflict is not None and (conflict.refused or job.limit.is_ratio)
        warn = conflict.text if conflict is not None and stands else job.range_advice()
        row.show_lines(
            f"{words[0].upper()}{words[1:]}",
            source,
            there=True,
            warn=warn,
            caption=f"Limit, {quantity} · {job.decision.rule}",
        )

    def _transducer(self) -> None:
        job, display = self._job, self._shared.display
        row = self.rows["Transducer"]
        if job.description is None:
            row.show_lines("Not chosen", "Bluetooth, serial, virtual", there=False)
            return
        capacity = job.facts.capacity_nm
        second = " · ".join(
            p for p in (f"to {display.torque(capacity)}" if capacity else "", job.facts.serial, job.address) if p
        )
        name = job.facts.name or job.description.name
        if job.second is not None:
            second = f"{second} · with {job.second.measures}"
        row.show_lines(name, second, there=True, warn=job.device_advice(), alarm=bool(job.expired()))
