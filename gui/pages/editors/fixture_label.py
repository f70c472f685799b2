"""The label of a fixture in its form: one button to print it, keep it as a file, or scan one."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from analysis.report.fixture_label import write_label
from analysis.report.material import PaperSize
from gui.translation import tr
from gui.widgets.menus import menu_of
from gui.widgets.parts import button, column
from logger.edges.small_file import file_stem

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.shared import Shared
    from gui.work import Worker
    from logger.header import Lever

KINDS = "PDF (*.pdf);;SVG (*.svg)"


class Says(Protocol):
    """Shows what came of an action."""

    def __call__(self, text: str, *, wrong: bool = False) -> None:
        """Show a text."""


class LabelButton(QWidget):
    """Opens a menu; emits ``scan_asked`` where a label is to be scanned.

    Args:
        shared: Its settings name the paper.
        worker: Gives the process that writes labels.
        give: Gives the fixture in the form; None while it has faults.
        say: Shows what came of it.
    """

    scan_asked = Signal()

    def __init__(
        self, shared: Shared, worker: Callable[[], Worker], give: Callable[[], Lever | None], say: Says
    ) -> None:
        super().__init__()
        self._shared, self._worker, self._give, self._say = shared, worker, give, say
        self.button = button("Label", tip="A label with a QR code for the lever: print it, or scan one")
        items = (
            ("Print a label …", self.print),
            ("Save a label …", self._ask_out),
            None,
            ("Scan a label", self.scan_asked.emit),
        )
        self.menu = menu_of(self, items, lasting=True)
        self.button.setMenu(self.menu)
        column(self).addWidget(self.button)

    def print(self) -> None:
        """Write the label and ask for a printer."""
        self._write(Path(self._worker().room) / "label.pdf", self._print)

    def save(self, path: Path) -> None:
        """Write the label to a file, PDF or SVG."""
        self._write(path, lambda: self._say(f"Written to {path}"))

    def _write(self, path: Path, then: Callable[[], object]) -> None:
        lever = self._give()
        if lever is None:
            self._say("This fixture has faults; put them right first.", wrong=True)
            return
        paper = PaperSize(self._shared.settings.choices.paper)
        self._worker().ask(
            write_label, lever, path, paper, then=lambda _none: then(), failed=partial(self._say, wrong=True)
        )

    def _print(self) -> None:
        from gui.printing import ask_and_print

        ask_and_print(Path(self._worker().room) / "label.pdf", self)

    def _ask_out(self) -> None:
        lever = self._give()
        name = file_stem(lever.name) if lever is not None and lever.name else "label"
        path, _ = QFileDialog.getSaveFileName(self, tr("Save a label …"), f"{name}.pdf", KINDS)
        if path:
            self.save(Path(path))
