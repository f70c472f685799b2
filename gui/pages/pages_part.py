"""Pages and tables of recordings: asked for, written in the worker."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from gui.models.issuing import issue_of
from gui.models.loading import export, page_beside
from gui.models.ratio import halves_of
from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from gui.models.archive import ArchiveEntry
    from gui.models.loading import Loaded
    from gui.shared import Shared
    from gui.widgets.written import WrittenBar
    from gui.work import Worker

PAGES = ";;".join(
    f"{who} page, {form.upper()} (*.{form})" for who in ("Engineer's", "Customer's") for form in ("pdf", "html")
)


def write_page(shared: Shared, worker: Worker, written: WrittenBar, recording: Path, reader: str) -> None:
    """Write the page of a signed test beside its recording, named for its reader; the bar says how it goes."""
    written.say("Writing the page …")
    issue = issue_of(shared.settings.choices, reader, shared.display.unit)
    worker.ask(
        export, str(recording), str(page_beside(recording, reader)), issue,
        then=written.show_file,
        failed=partial(written.say, wrong=True),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Making:
    """Where something is made of recordings, and who is told of it."""

    worker: Worker
    written: WrittenBar  # offers to open what was written, or to show it in its folder
    say: Callable[[str], object]
    failed: Callable[[str], object]
    over: QWidget  # over which is asked

    def tell(self, path: str, text: str) -> None:
        """Say where it went."""
        self.written.show_file(path)
        self.say(text)


class PagesPart(QObject):
    """Writes pages and tables of the recordings that are chosen.

    Args:
        making: Where they are written.
        shared: The window's settings and units.
        chosen: Gives the recordings that are chosen.
        loaded, loading: What is read, and what is being read, by path.
    """

    def __init__(
        self,
        making: Making,
        shared: Shared,
        chosen: Callable[[], list[ArchiveEntry]],
        loaded: Mapping[str, Loaded],
        loading: Mapping[str, object],
    ) -> None:
        super().__init__(making.over)
        self._making, self._shared, self._chosen, self._loaded, self._loading = making, shared, chosen, loaded, loading

    def make(self, reader: str) -> None:
        """Write a page beside the recording that is chosen, named for its reader."""
        halves = self._halves()
        if halves is not None:
            self.export(halves[0], str(page_beside(Path(halves[0]), reader)), reader, halves[1])

    def ask_page(self) -> None:
        """Ask under which name a page is written."""
        halves = self._halves()
        if halves is not None:
            self._ask(halves[0], "report.pdf", PAGES, halves[1])

    def ask_table(self) -> None:
        """Ask under which name a table of the pulls is written."""
        chosen = self._chosen()
        if chosen:
            self._ask(chosen[0].path, "pulls.csv", "CSV (*.csv);;JSON (*.json)", "")
        else:
            self._making.say("Choose a recording first.")

    def ask_second(self) -> None:
        """Ask for the signed test that confirms the recording that is chosen, and write the page of both beside it."""
        chosen = self._chosen()
        if len(chosen) != 1:
            self._making.say("Choose one recording: the test that is confirmed.")
            return
        path = Path(chosen[0].path)
        kinds = f"{tr('Recordings')} (*.csv *.toml);;{tr('All files')} (*)"
        second, _ = QFileDialog.getOpenFileName(
            self._making.over, tr("Choose the signed second test"), str(path.parent), kinds
        )
        if second:
            self.export(str(path), str(page_beside(path, "engineer")), "engineer", second=second)

    def _ask(self, path: str, name: str, kinds: str, neutral: str) -> None:
        start = str(Path(path).with_suffix("")) + f"-{name}"
        target, kind = QFileDialog.getSaveFileName(self._making.over, tr("Save the report as"), start, kinds)
        if target:
            self.export(path, target, "customer" if kind.startswith("Customer") else "engineer", neutral)

    def _halves(self) -> tuple[str, str] | None:
        """Give the recording that a page is of, and its other half in neutral or nothing; None: none to write of."""
        chosen = [entry.path for entry in self._chosen()]
        if not chosen:
            self._making.say("Choose a recording first.")
            return None
        if len(chosen) == 2 and any(path in self._loading for path in chosen):
            self._making.say("The two recordings are still being read. Press Report again when both are shown.")
            return None
        pair = halves_of([self._loaded[path].reading for path in chosen if path in self._loaded])
        return (chosen[0], "") if pair is None or len(chosen) != 2 else (pair[0].file, pair[1].file)

    def export(self, path: str, target: str, reader: str = "engineer", neutral: str = "", *, second: str = "") -> None:
        """Write a page, for an engineer or a customer, of a recording or of two halves, or a table."""
        issue = issue_of(self._shared.settings.choices, reader, self._shared.display.unit)
        self._making.worker.ask(
            export, path, target, issue, neutral, second,
            then=lambda written: self._making.tell(written, f"Written to {written}"),
            failed=self._making.failed,
        )  # fmt: skip
