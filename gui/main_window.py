"""The window: one bar with pages, unit and look; three pages below. Pages are built when they are first opened."""

from __future__ import annotations

import os
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QRect, QSize, Qt, QTimer
from PySide6.QtGui import (
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QResizeEvent,
    QShortcut,
)
from PySide6.QtWidgets import QButtonGroup, QMainWindow, QPushButton, QStackedWidget, QWidget

from gui.models.display import UNITS
from gui.models.dropped import cut_off
from gui.models.due import due_words
from gui.models.state import Notice
from gui.theme import SCALES
from gui.translation import tr
from gui.widgets.parts import Switch, button, column, label, line, open_once
from gui.work import Errand

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.shared import Shared
    from gui.tester import Tester

MARK_MS = 200  # how often it is looked whether the page in view shows simulated data
PAGES = ("Test", "Review", "Compare")
SMALLEST = QSize(800, 560)
USUAL = QSize(1280, 800)
FRAME = QSize(8, 40)  # what a desktop puts round a window
FARTHEST = 1 << 15  # pixels: what a screen's system can count


class MainWindow(QMainWindow):
    """The program's window.

    Args:
        shared: Look, unit, choices, lists, sounds.
        tester: The test in hand.
    """

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__()
        self._shared, self.tester = shared, tester
        self.setWindowTitle("Heldwheel")
        self.setAcceptDrops(True)
        self._errand = Errand(self._offer_cut_off, self)
        self._due = Errand(self._tell_due, self)
        self.pages: dict[str, QWidget] = {}
        self._stack = QStackedWidget()
        self._tabs: dict[str, QPushButton] = {}
        self.unit = Switch(UNITS, "Unit")
        self._lay_out()
        self._connect()
        tester.restore(shared.library)
        self._restore()
        self._errand.run(cut_off, shared.settings.recordings, shared.settings.choices.seen, patience_s=0.0)
        self._due.run(due_words, shared.settings.recordings, patience_s=0.0)

    def _lay_out(self) -> None:
        bar = QWidget()
        bar.setObjectName("bar")
        bar.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        row = line(bar, gap=6)
        row.setContentsMargins(14, 4, 10, 0)
        self._bar = bar
        self._name = label("Heldwheel", "head")
        row.addWidget(self._name)
        row.addSpacing(8)
        group = QButtonGroup(self)
        for number, page in enumerate(PAGES, 1):
            tab = button(page, partial(self.open_page, page), role="page", tip=f"Ctrl+{number}")
            tab.setCheckable(True)
            group.addButton(tab)
            self._tabs[page] = tab
            row.addWidget(tab)
        row.addSpacing(14)
        self.simulated = label("SIMULATED", "simulated")
        self.simulated.setToolTip(
            tr("What this page shows was made by the virtual transducer: never file it as a test")
        )
        row.addWidget(self.simulated)
        row.addStretch(1)
        row.addWidget(self.unit)
        self.one_unit = button("N·m", self.next_unit, tip="Next unit, Ctrl+U", keeps_focus=True)
        row.addWidget(self.one_unit)
        self.settings_button = button(
            "Settings", self.show_settings, tip="Colours, text size, units, language, folder, what appears on reports"
        )
        row.addSpacing(8)
        row.addWidget(self.settings_button)
        whole = QWidget()
        layout = column(whole, gap=0)
        layout.addWidget(bar)
        layout.addWidget(self._stack, 1)
        self.setCentralWidget(whole)

    def _connect(self) -> None:
        self._marking = QTimer(self)
        self._marking.timeout.connect(self._mark)
        self._marking.start(MARK_MS)
        self._mark()
        self.unit.picked.connect(self.set_unit)
        self._shared.look.changed.connect(self._share_bar)
        for number, page in enumerate(PAGES, 1):
            QShortcut(QKeySequence(f"Ctrl+{number}"), self, partial(self.open_page, page))
        QShortcut(QKeySequence("F1"), self, self.show_guide)
        QShortcut(QKeySequence("Ctrl+,"), self, self.show_settings)
        QShortcut(QKeySequence("Ctrl+U"), self, self.next_unit)
        QShortcut(QKeySequence("Ctrl+L"), self, self.swap_palette)
        QShortcut(QKeySequence.StandardKey.ZoomIn, self, lambda: self.step_scale(1))
        QShortcut(QKeySequence.StandardKey.ZoomOut, self, lambda: self.step_scale(-1))

    def _mark(self) -> None:
        """Say in the bar whether the page in view shows simulated data."""
        self.simulated.setVisible(bool(getattr(self._stack.currentWidget(), "simulated", False)))

    def _restore(self) -> None:
        choices = self._shared.settings.choices
        self.unit.set_on(self._shared.display.unit)
        self.one_unit.setText(self._shared.display.unit)
        room = QGuiApplication.primaryScreen().availableGeometry()
        self.setMinimumSize(SMALLEST.boundedTo(room.size()))
        self.resize(USUAL.boundedTo(room.size() - FRAME))
        if choices.window is not None and all(abs(number) <= FARTHEST for number in choices.window):
            left, top, width, height = choices.window
            self.setGeometry(
                on_screen(QRect(left, top, width, height), [s.availableGeometry() for s in QGuiApplication.screens()])
            )
        if choices.maximised:
            self.setWindowState(Qt.WindowState.WindowMaximized)
        self.open_page(choices.page if choices.page in PAGES else "Test")

    # ------------------------------------------------------------------ doing
    def open_page(self, name: str) -> None:
        """Show a page; it is built when it is first shown."""
        if name not in self.pages:
            self.pages[name] = self._build(name)
            self._stack.addWidget(self.pages[name])
        self._stack.setCurrentWidget(self.pages[name])
        self._tabs[name].setChecked(True)
        self.pages[name].setFocus()

    def show_guide(self) -> None:
        """Open the guide."""
        from gui.pages.guide_dialog import GuideDialog

        self.guide = GuideDialog(self._shared, self)
        self.guide.open()

    def _build(self, name: str) -> QWidget:
        if name == "Test":
            from gui.pages.test_page import TestPage

            page = TestPage(self._shared, self.tester)
            page.review.connect(self.show_recordings)
            page.chart.connect(self.show_chart)
            page.notice.show_asked.connect(self._show_cut_off)
            return page
        if name == "Review":
            from gui.pages.review_page import ReviewPage

            return ReviewPage(self._shared)
        from gui.pages.compare_page import ComparePage

        comparing = ComparePage(self._shared)
        comparing.review.connect(self.show_recordings)
        return comparing

    def _show_cut_off(self) -> None:
        notice = self.tester.run.notice
        self.tester.run.answer_notice()
        if notice is not None and notice.show:
            self.show_recordings(notice.show)

    def show_recordings(self, paths: object) -> None:
        """Open recordings on the Review page."""
        from gui.pages.review_page import ReviewPage

        self.open_page("Review")
        page = self.pages["Review"]
        if isinstance(page, ReviewPage) and isinstance(paths, tuple) and paths:
            page.show_recordings([str(path) for path in paths])

    def show_chart(self, tag: str) -> None:
        """Open the chart of an axle over time, found by its tag."""
        from gui.pages.compare_page import ComparePage

        self.open_page("Compare")
        page = self.pages["Compare"]
        if isinstance(page, ComparePage):
            page.search.set_text(f'tag="{tag.replace(chr(34), "")}"')
            page.open_answer("Over time")
            page.look()

    def set_unit(self, unit: str) -> None:
        """Show every torque in another unit."""
        self._shared.display.use(unit=unit)
        self.unit.set_on(unit)
        self.one_unit.setText(unit)
        self._shared.settings.remember(unit=unit)

    def next_unit(self) -> None:
        """Show every torque in the next unit of the row."""
        self.set_unit(UNITS[(UNITS.index(self._shared.display.unit) + 1) % len(UNITS)])

    def swap_palette(self) -> None:
        """Change between dark and light."""
        other = "light" if self._shared.look.palette.name == "dark" else "dark"
        self._shared.look.use(palette=other)
        self._shared.settings.remember(palette=other)

    def set_scale(self, scale: float) -> None:
        """Change the text size."""
        self._shared.look.use(scale=scale)
        self._shared.settings.remember(scale=scale)

    def step_scale(self, step: int) -> None:
        """Take the next larger or smaller text size."""
        place = SCALES.index(self._shared.look.scale) + step
        if 0 <= place < len(SCALES):
            self.set_scale(SCALES[place])

    def show_settings(self) -> None:
        """Open the settings."""
        from gui.pages.settings_dialog import SettingsDialog

        dialog = SettingsDialog(self._shared, self)
        dialog.guide.connect(self.show_guide)
        dialog.about.connect(self.show_about)
        dialog.accepted.connect(self._taken_over)
        open_once(dialog)

    def _taken_over(self) -> None:
        unit = self._shared.display.unit
        self.unit.set_on(unit)
        self.one_unit.setText(unit)

    def show_about(self) -> None:
        """Say which version this is and where everything lies."""
        from gui.pages.about_dialog import AboutDialog

        dialog = AboutDialog(self._shared, self)
        open_once(dialog)

    # ------------------------------------------------------------------ dropped, cut off
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 - Qt's name
        """Take files and folders."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 - Qt's name
        """Show what was dropped."""
        paths = [url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()]
        event.acceptProposedAction()
        QTimer.singleShot(0, partial(self.take, paths))  # a dialog must not hold the program that was dragged from

    def take(self, paths: Sequence[str]) -> None:
        """Show folders and recordings on Review, import tables from elsewhere, read sounds of drives."""
        from gui.models.dropped import sorted_out
        from gui.pages.review_page import ReviewPage

        found = sorted_out(paths)
        self.open_page("Review")
        page = self.pages["Review"]
        if not isinstance(page, ReviewPage):
            return
        for folder in (*found.folders, *dict.fromkeys(os.path.dirname(path) for path in found.recordings))[:1]:
            page.open_folder(Path(folder))
        if found.recordings:
            page.show_recordings(list(found.recordings))
        for path in found.tables:
            page.import_table(Path(path))
        for path in found.sounds[:1]:
            page.show_drive(path)
        if found.other:
            page.say(f"Not a recording, a table or a folder: {os.path.basename(found.other[0])}")

    def _offer_cut_off(self, paths: list[str]) -> None:
        """Offer what was cut off last time, in the first view."""
        run = self.tester.run
        if not paths or run.flow.running or run.notice is not None:
            return
        count = "A recording was" if len(paths) == 1 else f"{len(paths)} recordings were"
        text = f"{count} cut off before being closed. Everything saved until then is there."
        run.notice = Notice(text, show=tuple(paths))
        self.tester.changes.tell()

    def _tell_due(self, text: str) -> None:
        """Say which axles are due, where nothing else is to be said."""
        run = self.tester.run
        if text and not run.flow.running and run.notice is None:
            run.notice = Notice(text)
            self.tester.changes.tell()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Leave out of the bar what does not fit: the name, then all units but the one in use, then a button's word."""
        super().resizeEvent(event)
        self._share_bar()

    def _share_bar(self) -> None:
        self.settings_button.setText("Settings")
        tabs = (
            sum(tab.sizeHint().width() + 6 for tab in self._tabs.values())
            + self.settings_button.sizeHint().width()
            + 60
        )
        mark = self.simulated.sizeHint().width() + 14  # its place is kept: the bar stays as it is when it comes
        room = self.width() - tabs - mark - self.unit.sizeHint().width()
        self.unit.setVisible(room >= 0)
        self.one_unit.setVisible(room < 0)
        self._name.setVisible(room >= self._name.sizeHint().width())
        if self.width() < tabs + mark + self.one_unit.sizeHint().width():
            self.settings_button.setText("…")  # its tip and its accessible name still say what it is

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Hand a key that reached nobody to the page: the space bar works wherever the focus is, or is not."""
        page = self._stack.currentWidget()
        if page is not None:
            page.keyPressEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Remember the window, end the test, close recordings; a test that is not signed is asked about first."""
        run = self.tester.run
        if (
            run.flow.running
            and not run.card.practice
            and run.purpose is not None
            and not self._shared.confirm(
                self,
                "A test is under way. Close all the same?",
                "Its recording is closed properly and stands on Review, the job card is kept; the test stays unsigned.",
                "Close",
                "Go on testing",
            )
        ):
            event.ignore()
            return
        place = self.geometry()
        current = next((name for name, page in self.pages.items() if page is self._stack.currentWidget()), "Test")
        self._shared.settings.remember(
            window=(place.x(), place.y(), place.width(), place.height()), maximised=self.isMaximized(), page=current
        )
        for page in self.pages.values():
            page.close()
        self.tester.close()
        super().closeEvent(event)


def on_screen(wanted: QRect, screens: Sequence[QRect]) -> QRect:
    """Give a remembered place of a window, moved and made smaller so that all of it is on one of the screens.

    >>> on_screen(QRect(4000, 40, 1600, 1200), [QRect(0, 0, 1366, 768)]).size().toTuple()
    (1366, 768)
    """
    room = max(screens, key=lambda s: _area(s.intersected(wanted)))
    size = wanted.size().expandedTo(SMALLEST).boundedTo(room.size())
    left = min(max(wanted.left(), room.left()), room.right() + 1 - size.width())
    top = min(max(wanted.top(), room.top()), room.bottom() + 1 - size.height())
    return QRect(left, top, size.width(), size.height())


def _area(box: QRect) -> int:
    return max(0, box.width()) * max(0, box.height())
