"""Chatter on the road: the band level of a drive's sound or acceleration, its events, the bench's index beside it."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from analysis.cautions import ROAD
from analysis.rows.road import CANNOT_TELL, HOW, NO_TORQUE, RoadTest, lines_of, parse_band, road_test, write_road
from gui.translation import tr
from gui.widgets.fitting import FlowLayout
from gui.widgets.level_plot import LevelPlot
from gui.widgets.parts import Field, button, column, dialog_size, label, line, scrolled
from gui.work import Worker
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from concurrent.futures import Future

    from gui.shared import Shared

DRIVES = "*.wav *.csv *.txt *.tsv *.xlsx *.ods *.parquet *.json"


def ask_drive(parent: QWidget, title: str) -> str:
    """Ask for a drive's recording; empty for none."""
    path, _ = QFileDialog.getOpenFileName(
        parent, tr(title), "", f"{tr('Sound or acceleration')} ({DRIVES});;{tr('All files')} (*)"
    )
    return path


class RoadDialog(QDialog):
    """Shows what a drive's recording says, with another band, another drive, an axle; without one, how it is made."""

    def __init__(self, shared: Shared, path: str = "", tag: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Chatter on the road"))
        self._shared, self._path, self._before = shared, path, ""
        self._worker = Worker(self)
        self._asking: Future[RoadTest] | None = None
        self.test: RoadTest | None = None
        self.band = Field("Frequency band", "50-800 Hz")
        self.axle = Field("Axle tag, for its chatter index", "as stamped", tag)
        self.plot = LevelPlot(shared)
        self.name = label("", "caption", wrap=True)
        self.wrong = label("", "wrong", wrap=True)
        self.said, self.mind = label("", wrap=True), label("", "warn", wrap=True)
        self.cannot = label("\n".join(f"•  {tr(text)}" for text in CANNOT_TELL), wrap=True)
        self.choose = button("Open a recording", self.ask_file, tip="WAV, or a table with an acceleration")
        self.compare = button("Compare with …", self.ask_before, tip="The drive before, same microphone and place")
        self.export = button("Export", self.ask_target, tip="CSV, or JSON")
        self._lay_out()
        for field in (self.band, self.axle):
            field.changed.connect(self.look)
        self.resize(dialog_size(parent, 980 * shared.look.scale, 760 * shared.look.scale))
        self.look()

    def _lay_out(self) -> None:
        layout = column(self, margin=16, gap=10)
        layout.addWidget(label(NO_TORQUE, "head", wrap=True))
        layout.addWidget(self.name)
        row = line(gap=10)
        row.addWidget(self.band, 1)
        row.addWidget(self.axle, 1)
        layout.addLayout(row)
        layout.addWidget(self.wrong)
        layout.addWidget(self.plot, 3)
        body = QWidget()
        inside = column(body, gap=6)
        inside.addWidget(self.said)
        inside.addWidget(self.mind)
        inside.addWidget(self.cannot)
        inside.addWidget(label("Before driving", "head"))
        inside.addWidget(label("\n".join(f"•  {tr(text)}" for text in (*ROAD, HOW)), wrap=True))
        inside.addStretch(1)
        layout.addWidget(scrolled(body), 2)
        foot = FlowLayout(gap=10)
        for press in (self.choose, self.compare, self.export, button("Close", self.accept, role="main", tip="Key Esc")):
            foot.addWidget(press)
        layout.addLayout(foot)

    def look(self) -> None:
        """Read it anew with what is said; the answer to an older question is no longer wanted."""
        if self._asking is not None:
            self._worker.forget(self._asking)
        self.export.setEnabled(False)
        self.compare.setEnabled(bool(self._path))
        for part in (self.plot, self.said, self.mind, self.cannot):
            part.setVisible(self.test is not None)
        self.name.setText(os.path.basename(self._path))
        if not self._path:
            return
        try:
            band = parse_band(self.band.text)
        except HeldwheelError as error:
            self.band.set_wrong(str(error))
            return
        self.band.set_wrong("")
        folder = str(self._shared.settings.looked_at)
        self._asking = self._worker.ask(
            road_test, self._path, self._before, band, self.axle.text, folder, then=self._show, failed=self._not_read
        )

    def _show(self, test: RoadTest) -> None:
        self.test = test
        self._not_read("")
        for part in (self.plot, self.said, self.cannot):
            part.show()
        self.plot.show_test(test)
        self.said.setText("\n".join(lines_of(test)))
        self.mind.setText("\n".join(f"▲ {tr(text)}" for text in test.problems))
        self.mind.setVisible(bool(test.problems))
        self.export.setEnabled(True)

    def _not_read(self, text: str) -> None:
        self._asking = None
        self.wrong.setText(text)
        self.wrong.setVisible(bool(text))

    def ask_file(self) -> None:
        """Ask for a drive."""
        path = ask_drive(self, "Open a recording")
        if path:
            self._path, self._before, self.test = path, "", None
            self.look()

    def ask_before(self) -> None:
        """Ask for the drive to compare with."""
        self.compare_with(ask_drive(self, "Compare with …") or self._before)

    def compare_with(self, before: str) -> None:
        """Compare with another drive; empty for none."""
        self._before = before
        self.look()

    def ask_target(self) -> None:
        """Ask for a file name, and write the level against time there."""
        target, _ = QFileDialog.getSaveFileName(self, tr("Export"), "chatter.csv", "CSV (*.csv);;JSON (*.json)")
        if not target or self.test is None:
            return
        try:
            write_road(self.test, target)
        except HeldwheelError as error:
            self._not_read(str(error))

    def done(self, result: int) -> None:
        """Close, and end the worker."""
        self._worker.close()
        super().done(result)
