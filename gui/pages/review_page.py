"""The Review page: recordings, one or several on a trace, what they say, and decisions about them."""

from __future__ import annotations

import time
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, QUrl
from PySide6.QtGui import QDesktopServices, QKeySequence, QShortcut
from PySide6.QtWidgets import QFileDialog, QInputDialog, QLineEdit, QSplitter, QWidget

from gui.models.archive import FIRST_SCREEN, PIECE, Archive, ArchiveEntry, first_look, read_entries
from gui.models.display import grouped
from gui.models.loading import angle_of, said_of
from gui.models.state import Notice
from gui.models.undoing import BIN, Undo, ending_of, rename, to_bin
from gui.pages.archive_list import ArchiveList
from gui.pages.index_part import IndexPart
from gui.pages.pages_part import Making, PagesPart
from gui.pages.reading_panel import ReadingPanel
from gui.pages.readings_part import MOST_OVERLAID, ReadingsPart
from gui.translation import tr
from gui.widgets.fitting import FlowLayout
from gui.widgets.menus import menu_of, offer_menu
from gui.widgets.notice import NoticeBar
from gui.widgets.parts import button, column, open_once
from gui.widgets.written import WrittenBar
from gui.work import Errand, Worker
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent, QResizeEvent, QShowEvent

    from gui.pages.import_dialog import ImportDialog
    from gui.shared import Shared
    from gui.widgets.menus import Item

PATIENCE_S = 0.25  # a folder that answers within this looks instant; a slower one must not hold the window


class ReviewPage(QWidget):
    """List on the left, trace and figures on the right."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self.setObjectName("page")
        self._shared = shared
        self.archive = Archive()
        self.worker = Worker(self)
        self._errand = Errand(self._take_first_look, self)
        self.list = ArchiveList(shared, self.archive)
        self.reading = ReadingPanel(shared)
        self.notice = NoticeBar()
        self.undo = Undo()
        self.written = WrittenBar()
        self.readings = ReadingsPart(self.worker, self)
        making = Making(self.worker, self.written, self.say, self._failed, self)
        self.index = IndexPart(making)
        self.pages = PagesPart(making, shared, self.list.selected, self.readings.loaded, self.readings.loading)
        self._left: list[str] = []
        self.first_screen_s = self.all_s = 0.0
        self._began = 0.0
        self._lay_out()
        self.list.picked.connect(self._picked)
        self.readings.begun.connect(self.reading.show_waiting)
        self.readings.read.connect(self._take_reading)
        self.readings.failed.connect(self.reading.show_problem)
        self.reading.corrected.connect(self._reload)
        self.reading.details_asked.connect(self.edit_details)
        self.reading.angle_asked.connect(self._ask_angle)
        self.reading.angle_wanted.connect(self._want_angle)
        offer_menu(self.list.table, self.items)
        for keys, press in (("F2", self.ask_name), ("Delete", self.remove), ("Ctrl+Z", self.take_back)):
            QShortcut(QKeySequence(keys), self, press, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
        self.notice.answered.connect(self.notice.hide)

    def _lay_out(self) -> None:
        layout = column(self, margin=8, gap=8)
        layout.addWidget(self.notice)
        self._body = QSplitter(Qt.Orientation.Horizontal)
        self._body.setChildrenCollapsible(False)
        self._body.setHandleWidth(8)
        self._body.addWidget(self.list)
        self._body.addWidget(self.reading)
        self._body.setStretchFactor(1, 1)
        self._shared.look.changed.connect(self._share_width)
        self._share_width()
        layout.addWidget(self._body, 1)
        layout.addWidget(self.written)
        foot = FlowLayout(gap=10)
        for text, press, tip in (
            ("Import a trace", self._ask_import, "A CSV file from elsewhere: choose its columns and unit"),
            ("Other folder", self._ask_folder, "Look at recordings somewhere else"),
            ("Refresh", self.refresh, "Read the folder again"),
        ):
            foot.addWidget(button(text, press, tip=tip))
        self.report = button("Report", tip="A page to sign: for an engineer, or for a customer")
        self.report.setMenu(menu_of(self, self._page_items(), lasting=True))
        foot.addWidget(self.report)
        foot.addWidget(button("Export", self.pages.ask_table, tip="CSV, or JSON"))
        layout.addLayout(foot)

    def _share_width(self) -> None:
        width = round(min(420 * self._shared.look.scale, 0.45 * self.width()))
        self.list.setMinimumWidth(width)
        self._body.setSizes([width, self.width() - width])

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Share the width anew."""
        super().resizeEvent(event)
        self._share_width()

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Read the folder when the page is opened."""
        super().showEvent(event)
        self.refresh()

    # ------------------------------------------------------------------ list
    @property
    def folder(self) -> Path:
        """The folder that is shown."""
        return self._shared.settings.looked_at

    @property
    def simulated(self) -> bool:
        """Whether a recording on screen is simulated."""
        return self.reading.simulated

    def refresh(self) -> None:
        """Read the folder: the first screenful at once, the rest in the worker, piece by piece."""
        self._began = time.perf_counter()
        if not self._errand.run(first_look, self.folder, patience_s=PATIENCE_S):
            self.say("The folder answers slowly. Its recordings appear here as soon as it does.")

    def _take_first_look(self, seen: tuple[list[str], list[ArchiveEntry]]) -> None:
        paths, first = seen
        known = {entry.path for entry in self.archive.entries}
        if known - set(paths):
            self.archive.clear()
            known = set()
        self.list.take(first)
        self.list.refilter()
        self.first_screen_s = time.perf_counter() - self._began
        going = bool(self._left)
        self._left = [path for path in paths[FIRST_SCREEN:] if path not in known]
        if not going:
            self._next_piece()

    def show_recordings(self, paths: list[str]) -> None:
        """Show recordings of the folder."""
        self.list.search.set_text("")
        self.list.purpose.set_key("")
        self.list.take(read_entries(paths))
        self.list.refilter()
        self.list.table.clearSelection()
        self.list.restore(paths)

    def _next_piece(self) -> None:
        piece, self._left = self._left[:PIECE], self._left[PIECE:]
        if piece:
            self.worker.ask(read_entries, piece, then=self._take_piece, failed=self._failed)
            self.list.recount(f", {grouped(len(self._left) + len(piece))} more")
            return
        self.all_s = time.perf_counter() - self._began
        self.list.refilter()
        self._offer_recovered()

    def _take_piece(self, entries: list[ArchiveEntry]) -> None:
        self.list.take(entries)
        self._next_piece()

    def _offer_recovered(self) -> None:
        unseen = [entry for entry in self.archive.unclosed if entry.path not in self._shared.settings.choices.seen]
        if not unseen:
            return
        count = f"{len(unseen)} recordings were" if len(unseen) > 1 else "One recording was"
        self.say(
            f"{count} cut off before being closed. Everything saved until then is here: choose the kind “Recovered”."
        )
        seen = (*self._shared.settings.choices.seen, *(entry.path for entry in unseen))[-500:]
        self._shared.settings.remember(seen=seen)

    def say(self, text: str, *, serious: bool = False) -> None:
        """Show a message."""
        self.notice.show_notice(Notice(text, serious=serious))

    def _failed(self, text: str) -> None:
        self.say(text, serious=True)

    # ------------------------------------------------------------------ reading
    def _picked(self, entries: list[ArchiveEntry]) -> None:
        entries = entries[:MOST_OVERLAID]
        self.readings.want(entries)
        self._show([entry.path for entry in entries])

    def _take_reading(self, entry: ArchiveEntry) -> None:
        self.archive.said[entry.path] = said_of(self.readings.loaded[entry.path].reading)
        self.list.table.viewport().update()
        self._show([chosen.path for chosen in self.list.selected()[:MOST_OVERLAID]])

    def _show(self, paths: list[str]) -> None:
        there = {path: self.readings.loaded[path] for path in paths if path in self.readings.loaded}
        if there:
            self.reading.show_readings(there)

    def _reload(self, path: str) -> None:
        step = self.readings.decided(path)
        self.undo.steps += [step] if step is not None else []
        self.list.take(read_entries([path]))
        self._picked(self.list.selected())

    def edit_details(self, path: str) -> None:
        """Put right what a recording lacks or has wrong, beside it."""
        from gui.pages.details_dialog import DetailsDialog

        loaded = self.readings.loaded.get(path)
        if loaded is None:
            return
        dialog = DetailsDialog(self._shared, path, loaded.reading.header, self.worker, self)
        dialog.accepted.connect(partial(self._reload, path))
        open_once(dialog)

    def _ask_angle(self, path: str) -> None:
        self.worker.ask(angle_of, path, then=self.reading.show_angle, failed=self._failed)

    def _want_angle(self, path: str) -> None:
        self.worker.ask(angle_of, path, then=partial(self.reading.know_angle, path), failed=lambda _text: None)

    # ------------------------------------------------------------------ right button, keys
    def items(self) -> list[Item | None]:
        """Give what can be done with the recordings that are chosen."""
        found: list[Item | None] = []
        if len(self.list.selected()) == 1:
            found += [("Edit details", partial(self.edit_details, self.list.selected()[0].path)), *self._page_items()]
            found += [("Show in folder", self.show_folder), None, ("Rename  (F2)", self.ask_name)]
        if self.list.selected():
            found += [("Remove  (Delete)", self.remove)]
        found += [None] if found else []
        found += [("Inertia from a spin-down …", self.show_inertia)] if len(self.list.selected()) == 1 else []
        found += [("Chatter on the road …", self.show_drive)]
        if self.undo.words:
            found += [None, (f"Undo {self.undo.words}  (Ctrl+Z)", self.take_back)]
        return found if self.list.selected() else [("Refresh", self.refresh), *found]

    def _page_items(self) -> list[Item | None]:
        return [
            ("Engineer's page", partial(self.pages.make, "engineer")),
            ("Customer's page", partial(self.pages.make, "customer")),
            ("Page under another name …", self.pages.ask_page),
            ("Engineer's page with a second test …", self.pages.ask_second),
            ("Index of these reports …", self.ask_index),
        ]

    def show_drive(self, path: str = "") -> None:
        """Show what the recording of a drive says of chatter, beside the axle of the recording that is chosen."""
        from gui.pages.road_dialog import RoadDialog

        chosen = self.list.selected()
        loaded = self.readings.loaded.get(chosen[0].path) if chosen else None
        header = loaded.reading.header if loaded is not None else None
        dialog = RoadDialog(self._shared, path, header.axle.tag if header is not None else "", self)
        open_once(dialog)

    def show_inertia(self) -> None:
        """Show what the recording that is chosen says of inertia, where a wheel runs out in it."""
        from gui.pages.before_dialogs import InertiaDialog

        for entry in self.list.selected()[:1]:
            dialog = InertiaDialog(self._shared, entry.path, self.worker, self)
            open_once(dialog)

    def ask_index(self) -> None:
        """Make an index of the reports that lie beside the recording that is chosen, or in the folder on screen."""
        chosen = self.list.selected()
        self.index.ask(Path(chosen[0].path).parent if chosen else self.folder)

    def show_folder(self) -> None:
        """Open the folder of the recording that is chosen."""
        for entry in self.list.selected()[:1]:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(Path(entry.path).parent)))

    def ask_name(self) -> None:
        """Ask for another name of the recording that is chosen."""
        chosen = self.list.selected()
        if len(chosen) != 1:
            return
        old = Path(chosen[0].path)
        stem = old.name.removesuffix(ending_of(old))
        name, sure = QInputDialog.getText(
            self, tr("Rename"), tr("Name of the recording"), QLineEdit.EchoMode.Normal, stem
        )
        if sure and name.strip() != stem:
            self.rename(chosen[0], name)

    def rename(self, entry: ArchiveEntry, name: str) -> None:
        """Give a recording another name; what lies beside it goes along."""
        try:
            path, step = rename(entry.path, name, purpose=entry.purpose)
        except HeldwheelError as error:
            self._failed(str(error))
            return
        self.undo.steps.append(step)
        self._moved(path)

    def remove(self) -> None:
        """Move the recordings that are chosen to the folder of removed ones, once that is confirmed."""
        chosen = self.list.selected()
        signed = any(entry.signed for entry in chosen)
        what = f"{len(chosen)} recordings" if len(chosen) > 1 else chosen[0].name if chosen else ""
        about = f"They go to the folder {BIN} beside the others; Ctrl+Z brings them back."
        about = f"Signed tests are among them. {about}" if signed else about
        if not chosen or not self._shared.confirm(self, f"Remove {what}?", about, "Remove", "Keep"):
            return
        try:
            self.undo.steps += [to_bin(entry.path) for entry in chosen]
        except HeldwheelError as error:
            self._failed(str(error))
        self._moved("")

    def take_back(self) -> None:
        """Take the latest step back."""
        words = self.undo.words
        if not words:
            return
        try:
            path = self.undo.take_back()
        except HeldwheelError as error:
            self._failed(str(error))
            return
        self.readings.forget(path)
        self._moved(path)
        self.say(f"Undone: {words}.")

    def _moved(self, path: str) -> None:
        self.list.table.clearSelection()
        self.reading.clear()
        self.refresh()
        if path:
            self.show_recordings([path])

    # ------------------------------------------------------------------ files
    def _ask_folder(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, "Recordings in another folder", str(self.folder))
        if folder:
            self.open_folder(Path(folder))

    def open_folder(self, folder: Path) -> None:
        """Show the recordings of another folder; it is remembered."""
        self._shared.settings.remember(looked_at=str(folder))
        self.archive.clear()
        self.refresh()

    def _ask_import(self) -> None:
        path, _ = QFileDialog.getOpenFileName(
            self,
            tr("Import a trace"),
            "",
            f"{tr('Tables')} (*.csv *.txt *.tsv *.xlsx *.xls *.ods *.parquet *.json *.jsonl);;{tr('All files')} (*)",
        )
        if path:
            self.import_table(Path(path))

    def import_table(self, path: Path) -> None:
        """Ask what a table from elsewhere leaves open, and show its copy alone once it is imported."""
        from gui.pages.import_dialog import ImportDialog

        dialog = ImportDialog(self._shared, path, self)
        dialog.accepted.connect(partial(self._imported, dialog))
        open_once(dialog)

    def _imported(self, dialog: ImportDialog) -> None:
        if dialog.target is not None:
            self.refresh()
            QTimer.singleShot(0, partial(self.show_recordings, [str(dialog.target)]))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """End the worker."""
        self.worker.close()
        super().closeEvent(event)
