"""Bringing in a trace from elsewhere: its first lines, what it leaves open, and the trace before it is taken over."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QAbstractItemView, QDialog, QTableWidget, QTableWidgetItem, QWidget

from gui.models.display import grouped
from gui.models.importing import TablePreview, bring_in, copy_name, look, rate_of
from gui.pages.editors.limit import LIMIT_UNITS
from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range
from gui.widgets.parts import Choice, Field, button, column, label, line, mark_wrong
from gui.work import Worker
from logger.errors import HeldwheelError
from logger.header import Table

if TYPE_CHECKING:
    from concurrent.futures import Future
    from pathlib import Path

    from PySide6.QtGui import QPainter

    from gui.shared import Shared

AS_STATED = ("", "As stated")
TIMES = {"s": "Seconds", "ms": "Milliseconds", "us": "Microseconds", "min": "Minutes", "d": "Days", "hh:mm": "hh:mm",
         "mm:ss": "mm:ss"}  # fmt: skip
FORCES = ("N", "kN", "kgf", "lbf")
DECIMALS = {"point": "Point: 1234.5", "comma": "Comma: 1234,5"}


class TracePicture(Chart):
    """The trace as it would be read."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "The trace as it would be read")
        self.seen = TablePreview()

    def axes(self) -> Axes | None:
        """Give what is shown; None for nothing."""
        seen = self.seen
        if seen.time_s is None or seen.torque is None:
            return None
        good = seen.torque[np.isfinite(seen.torque)]
        times = seen.time_s[np.isfinite(seen.time_s)]
        if not len(good) or not times.max() > times.min():
            return None
        y = rounded_range([float(good.min()), float(good.max()), 0.0])
        what = "Force" if seen.is_force else "Torque"
        return Axes((float(times.min()), float(times.max())), y, f"{what}, {seen.used.unit}", "Time, s")

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw the trace; where a value is missing, nothing."""
        seen = self.seen
        if seen.time_s is None or seen.torque is None:
            return
        good = np.isfinite(seen.torque)
        for part in np.split(np.arange(len(good)), np.flatnonzero(np.diff(good.astype(int))) + 1):
            if len(part) > 1 and good[part[0]]:
                points = [QPointF(frame.x(seen.time_s[i]), frame.y(seen.torque[i])) for i in part.tolist()]
                self.curve(painter, points, "accent", 1.5)


class ImportDialog(QDialog):
    """Shows how a table would be read and asks what it leaves open; ``target`` is the copy once it is written."""

    def __init__(self, shared: Shared, path: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Import a trace"))
        self.setMinimumSize(900, 680)
        self._shared, self._path = shared, path
        self.target: Path | None = None
        self._worker = Worker(self)
        self._asking: Future[TablePreview] | None = None
        self.seen = TablePreview()
        self.time = Choice("Time", [AS_STATED])
        self.time_unit = Choice("Time is in", [AS_STATED, *TIMES.items()])
        self.rate = Field("Readings a second", "500 Hz")
        self.torque = Choice("Torque or force", [AS_STATED])
        self.unit = Choice("It is in", [AS_STATED, *((u, u) for u in (*LIMIT_UNITS, *FORCES))])
        self.count = Field("One count is", "0.0125 N·m")
        self.angle = Choice("Angle of the wheel", [AS_STATED])
        self.decimal = Choice("Decimal mark", [AS_STATED, *DECIMALS.items()])
        self.sheet = Field("Sheet", "of a workbook")
        self.radius = Field("Radius, axle to hook", "400 mm")
        self.radius.show_hint(shared.display.in_lengths(self.radius.hint))
        self.table = QTableWidget()
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setAccessibleName(tr("First lines of the file"))
        self.picture = TracePicture(shared)
        self.message = label("", "wrong", wrap=True)
        self.notes = label("", "caption", wrap=True)
        self.ok = button("Import", self.bring_in, role="main")
        self._answers: dict[str, Choice | Field] = {
            "time": self.time, "time_unit": self.time_unit, "rate_hz": self.rate, "torque": self.torque,
            "unit": self.unit, "angle": self.angle, "decimal": self.decimal, "sheet": self.sheet,
        }  # fmt: skip
        self._lay_out()
        for part in (*self._answers.values(), self.count, self.radius):
            part.changed.connect(self.look)
        self.look()

    def _lay_out(self) -> None:
        layout = column(self, margin=16, gap=10)
        layout.addWidget(label(self._path.name, "title"))
        about = (
            "The original is not changed. Its copy lies among the recordings, with a sidecar that keeps these answers."
        )
        layout.addWidget(label(about, "caption", wrap=True))
        for parts in (
            (self.time, self.time_unit, self.rate, self.decimal, self.sheet),
            (self.torque, self.unit, self.count, self.radius, self.angle),
        ):
            row = line(gap=10)
            for part in parts:
                row.addWidget(part, 1)
            layout.addLayout(row)
        layout.addWidget(self.message)
        layout.addWidget(self.picture, 3)
        layout.addWidget(self.notes)
        layout.addWidget(self.table, 2)
        foot = line(gap=10)
        foot.addStretch(1)
        foot.addWidget(button("Cancel", self.reject))
        foot.addWidget(self.ok)
        layout.addLayout(foot)

    @property
    def said(self) -> Table:
        """What the user says of the table."""
        return Table(
            sheet=self.sheet.text.strip() or None,
            time=self.time.key or None,
            time_unit=self.time_unit.key or None,
            rate_hz=rate_of(self.rate.text),
            torque=self.torque.key or None,
            unit=self.count.text.strip() or self.unit.key or None,
            angle=self.angle.key or None,
            decimal="point" if self.decimal.key == "point" else "comma" if self.decimal.key == "comma" else None,
        )

    def look(self) -> None:
        """Read it anew with what is said; the answer to an older question is no longer wanted."""
        self.ok.setEnabled(False)
        try:
            said = self.said
        except HeldwheelError as error:
            self.rate.set_wrong(str(error))
            return
        self.rate.set_wrong("")
        if self._asking is not None:
            self._worker.forget(self._asking)
        self._asking = self._worker.ask(look, str(self._path), said, then=self._show, failed=self._wrong)

    def _show(self, seen: TablePreview) -> None:
        self.seen = self.picture.seen = seen
        self._asking = None
        options = [AS_STATED, *((name, name) for name in seen.names)]
        for choice in (self.time, self.torque, self.angle):
            choice.set_options(options)
        asked = {question.key for question in seen.questions}
        for key, part in self._answers.items():
            mark_asked(part, asked=key in asked)
        lines = [f"{_CAPTIONS[q.key]}: {q.text}" for q in seen.questions]
        self.message.setText("\n".join([seen.problem] if seen.problem else lines))
        self.message.setVisible(bool(seen.problem or lines))
        told = [f"{grouped(seen.samples)} readings", _read_from(seen.used)] if seen.ready else []
        self.notes.setText(" · ".join([*told, *seen.notes]))
        self.radius.setVisible(seen.is_force)
        self.picture.setVisible(seen.ready)
        self.picture.update()
        self._fill(seen)
        self.ok.setEnabled(seen.ready)

    def _fill(self, seen: TablePreview) -> None:
        self.table.setColumnCount(len(seen.names))
        self.table.setHorizontalHeaderLabels(list(seen.names))
        self.table.setRowCount(len(seen.rows))
        for at, row in enumerate(seen.rows):
            for place, text in enumerate(row):
                self.table.setItem(at, place, QTableWidgetItem(text))

    def bring_in(self) -> None:
        """Write the copy, in the worker."""
        folder = self._shared.settings.recordings
        folder.mkdir(parents=True, exist_ok=True)
        target = folder / copy_name(self._path)
        self.ok.setEnabled(False)

        def done(_copy: str) -> None:
            self.target = target
            self._worker.close()
            self.accept()

        radius = self.radius.text if self.seen.is_force else ""
        self._worker.ask(bring_in, str(self._path), str(target), self.said, radius, then=done, failed=self._wrong)

    def _wrong(self, text: str) -> None:
        self.message.setText(text)
        self.message.setVisible(True)
        self.ok.setEnabled(self.seen.ready)

    def done(self, result: int) -> None:
        """Close, and end the worker."""
        self._worker.close()
        super().done(result)


_CAPTIONS = {
    "sheet": "Sheet",
    "time": "Time",
    "time_unit": "Time is in",
    "rate_hz": "Readings a second",
    "torque": "Torque or force",
    "unit": "It is in",
    "angle": "Angle of the wheel",
    "decimal": "Decimal mark",
}


def mark_asked(part: Choice | Field, *, asked: bool) -> None:
    """Frame a part that must be answered."""
    mark_wrong(part.box if isinstance(part, Choice) else part.edit, wrong=asked)


def _read_from(used: Table) -> str:
    """Say which columns were read."""
    where = f"time from '{used.time}'" if used.time else "times counted"
    rate = f" at {used.rate_hz:g} readings a second" if used.rate_hz else ""
    return f"{where}{rate}, '{used.torque}' in {used.unit}"
