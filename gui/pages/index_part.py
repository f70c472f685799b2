"""The index of a folder's reports, asked for on the Review page: its title, how far it is, where it went."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QInputDialog, QLineEdit

from analysis.report.index import TITLE
from gui.models.indexing import how_far, write_index
from gui.translation import tr

if TYPE_CHECKING:
    from concurrent.futures import Future
    from pathlib import Path

    from gui.pages.pages_part import Making

PATIENCE_MS, LOOK_MS = 1_000, 250  # until it says how far it is, and between two looks


class IndexPart(QObject):
    """Makes an index in the worker."""

    def __init__(self, making: Making) -> None:
        super().__init__(making.over)
        self._making = making
        self._going: Future[tuple[str, str]] | None = None
        self._timer = QTimer(self, interval=LOOK_MS)
        self._timer.timeout.connect(self._look)

    def ask(self, folder: Path) -> None:
        """Ask for the title, and make the index."""
        title, sure = QInputDialog.getText(
            self._making.over,
            tr("Index of reports"),
            tr("What stands above the list"),
            QLineEdit.EchoMode.Normal,
            TITLE,
        )
        if sure:
            self.make(folder, title.strip() or TITLE)

    def make(self, folder: Path, title: str) -> None:
        """Make the index of a folder beside its reports."""
        if self._going is not None:
            return
        self._making.written.say("")
        self._going = self._making.worker.ask(
            write_index, str(folder), title, self._making.worker.room, then=self._done, failed=self._end
        )
        QTimer.singleShot(PATIENCE_MS, self, self._look)

    def _look(self) -> None:
        """Say how far it is, again and again until it is done."""
        if self._going is not None:
            self._making.say(how_far(self._making.worker.room) or "An index is being made")
            self._timer.start()

    def _done(self, made: tuple[str, str]) -> None:
        self._end("")
        self._making.tell(*made)

    def _end(self, text: str) -> None:
        self._going = None
        self._timer.stop()
        if text:
            self._making.failed(text)
