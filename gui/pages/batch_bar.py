"""All recordings that a search finds, written to one table: how far it is, a way to stop it, what came of it."""

from __future__ import annotations

from concurrent.futures import wait
from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFrame, QProgressBar

from gui.models import batching
from gui.models.display import grouped
from gui.translation import tr
from gui.widgets.parts import button, label, line
from gui.work import Worker

if TYPE_CHECKING:
    from collections.abc import Sequence
    from concurrent.futures import Future

    from PySide6.QtGui import QCloseEvent

    from analysis.rows.batch import By, Summary
    from gui.shared import Shared

LOOK_MS = 150  # between two looks at how far it is
CLOSING_S = 2.0  # the recordings that are being read take no longer, unless they are very large


class BatchBar(QFrame):
    """Across the foot of the page while a table is being written, and until its result is read."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self.setObjectName("notice")
        self._shared = shared
        self.worker = Worker(self)
        self._running: Future[Summary | None] | None = None
        self._job: tuple[list[str], str, By] | None = None
        self.text = label("", "", wrap=True)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Recordings read"))
        self.stop_button = button("Stop", self.stop, tip="What is read is kept")
        self.again = button("Go on", self._go_on)
        self.close_button = button("Close", self.hide)
        layout = line(self, margin=10, gap=12)
        layout.addWidget(self.text, 3)
        layout.addWidget(self.bar, 2)
        for part in (self.stop_button, self.again, self.close_button):
            layout.addWidget(part)
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self._look)
        self.hide()

    @property
    def running(self) -> bool:
        """Whether a table is being written."""
        return self._running is not None

    def write(self, paths: Sequence[str], target: str, by: By) -> None:
        """Write the table, with every core, in processes of their own."""
        if self.running:
            return
        self._job = (list(paths), target, by)
        batching.clear(self.worker.room)
        self.bar.setRange(0, 0)  # until the first is read: the processes are being started
        self._say(f"Reading {grouped(len(paths))} recordings for {target}", going=True)
        self._running = self.worker.ask(
            batching.write_table, list(paths), target, by, self.worker.room, then=self._done, failed=self._failed
        )
        self._timer.start()

    def stop(self) -> None:
        """Stop after the files that are being read; a later run goes on from there."""
        batching.tell_to_stop(self.worker.room)
        self.stop_button.setEnabled(False)
        self.text.setText("Stopping after the recordings that are being read …")

    def _go_on(self) -> None:
        if self._job is not None:
            self.write(*self._job)

    def _look(self) -> None:
        far = batching.how_far(self.worker.room)
        if far is None or not self.stop_button.isEnabled():
            return
        self.bar.setRange(0, far.total)
        self.bar.setValue(far.done)
        bad = f", {grouped(far.bad)} excluded" if far.bad else ""
        self.text.setText(f"{grouped(far.done)} of {grouped(far.total)} recordings read{bad}")

    def _done(self, summary: Summary | None) -> None:
        self._end()
        if summary is not None:
            self._say(batching.done_words(summary), going=False)
            return
        far = batching.how_far(self.worker.room)
        count = f" after {grouped(far.done)} of {grouped(far.total)} recordings" if far is not None else ""
        self._say(f"Stopped{count}. What was read is kept: the same table goes on from there.", going=False)
        self.again.show()

    def _failed(self, text: str) -> None:
        self._end()
        self._say(text[:1].upper() + text[1:], going=False)

    def _end(self) -> None:
        self._timer.stop()
        self._running = None

    def _say(self, text: str, *, going: bool) -> None:
        self.text.setText(text)
        self.setAccessibleName(tr(text))
        self.bar.setVisible(going)
        self.stop_button.setVisible(going)
        self.stop_button.setEnabled(True)
        self.again.hide()
        self.close_button.setVisible(not going)
        self.show()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Let the batch stop by itself if it does so soon, then end the processes."""
        self._timer.stop()
        if self._running is not None:
            batching.tell_to_stop(self.worker.room)
            wait([self._running], CLOSING_S)
        self.worker.close()
        super().closeEvent(event)
