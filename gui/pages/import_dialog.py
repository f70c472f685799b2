"""Bringing in a trace from elsewhere: its first lines, which column is which, and the unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QAbstractItemView, QDialog, QTableWidget, QTableWidgetItem, QWidget

from gui.models.importing import Columns, Preview, bring_in, preview
from gui.models.library import file_stem
from gui.pages.editors.limit import LIMIT_UNITS
from gui.widgets.parts import Choice, button, column, label, line
from gui.work import Worker
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from pathlib import Path

    from gui.shared import Shared

TIMES = {"1": "Seconds", "0.001": "Milliseconds", "60": "Minutes"}


class ImportDialog(QDialog):
    """Asks what a table's columns are; ``target`` is the copy once it is written."""

    def __init__(self, shared: Shared, path: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Import a trace")
        self.setMinimumSize(760, 560)
        self._shared, self._path = shared, path
        self.target: Path | None = None
        self._worker = Worker(self)
        self._seen: Preview | None = None
        self.time = Choice("Time")
        self.time_unit = Choice("Time is in", TIMES.items())
        self.torque = Choice("Torque")
        self.unit = Choice("Torque is in", [("", "Choose the unit"), *((u, u) for u in LIMIT_UNITS)])
        self.angle = Choice("Angle of the wheel")
        self.table = QTableWidget()
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setAccessibleName("First lines of the file")
        self.message = label("", "wrong", wrap=True)
        self.ok = button("Import", self.bring_in, role="main")
        self._lay_out()
        for choice in (self.time, self.torque, self.unit, self.angle):
            choice.changed.connect(self._check)
        self._look()

    def _lay_out(self) -> None:
        layout = column(self, margin=16, gap=10)
        layout.addWidget(label(self._path.name, "title"))
        about = (
            "Its figures are copied as they stand; the original is not changed. Fixture and limit come from a sidecar."
        )
        layout.addWidget(label(about, "caption", wrap=True))
        row = line(gap=10)
        for choice in (self.time, self.time_unit, self.torque, self.unit, self.angle):
            row.addWidget(choice, 1)
        layout.addLayout(row)
        layout.addWidget(self.table, 1)
        layout.addWidget(self.message)
        foot = line(gap=10)
        foot.addStretch(1)
        foot.addWidget(button("Cancel", self.reject))
        foot.addWidget(self.ok)
        layout.addLayout(foot)

    def _look(self) -> None:
        try:
            seen = preview(self._path)
        except HeldwheelError as error:
            self.message.setText(str(error))
            self.ok.setEnabled(False)
            return
        self._seen = seen
        names = [(str(n), name) for n, name in enumerate(seen.names)]
        for choice, kind in ((self.time, "time"), (self.torque, "torque")):
            choice.set_options(names)
            choice.set_key(str(seen.guess[kind]))
        self.angle.set_options([("", "None"), *names])
        self.angle.set_key(str(seen.guess.get("angle", "")))
        self.unit.set_key(seen.unit if seen.unit in LIMIT_UNITS else "")
        self.table.setColumnCount(len(seen.names))
        self.table.setHorizontalHeaderLabels(list(seen.names))
        self.table.setRowCount(len(seen.rows))
        for at, row in enumerate(seen.rows):
            for place, text in enumerate(row):
                self.table.setItem(at, place, QTableWidgetItem(text))
        self._check()

    def _check(self) -> None:
        same = self.time.key == self.torque.key or self.angle.key in {self.time.key, self.torque.key}
        if same:
            self.message.setText("Time, torque and angle must be different columns.")
        elif not self.unit.key:
            self.message.setText("Choose the torque's unit: the file does not state it, and it is never guessed.")
        else:
            self.message.setText("")
        self.ok.setEnabled(not same and bool(self.unit.key))

    def bring_in(self) -> None:
        """Write the copy, in the worker."""
        if self._seen is None:
            return
        angle = int(self.angle.key) if self.angle.key else None
        columns = Columns(int(self.time.key), int(self.torque.key), self.unit.key, angle, float(self.time_unit.key))
        folder = self._shared.settings.looked_at
        folder.mkdir(parents=True, exist_ok=True)
        target = folder / f"imported-{file_stem(self._path.stem)}.csv"
        self.ok.setEnabled(False)
        self.message.setText("Reading …")

        def done(_count: int) -> None:
            self.target = target
            self._worker.close()
            self.accept()

        self._worker.ask(bring_in, str(self._path), str(target), self._seen, columns, then=done, failed=self._wrong)

    def _wrong(self, text: str) -> None:
        self.message.setText(text)
        self.ok.setEnabled(True)
