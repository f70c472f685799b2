"""The Compare page: which recordings, what of them, and one of several answers: groups, trend, run-in …, plan."""

from __future__ import annotations

import os
from functools import partial
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QFileDialog, QMenu, QSplitter, QStackedWidget, QWidget

from analysis.compare.tags import tag_words
from gui.models.batching import ROWS
from gui.models.comparing import Common, Tags, find_recordings, read_runs, tags_of
from gui.models.display import grouped
from gui.models.sheets import QUANTITY_NAMES, write
from gui.models.state import Notice
from gui.pages.answers import NAMES, build_answer
from gui.pages.batch_bar import BatchBar
from gui.translation import tr
from gui.widgets.fitting import FlowLayout
from gui.widgets.notice import NoticeBar
from gui.widgets.parts import Choice, Field, Switch, button, card, column, label, rule, scrolled
from gui.widgets.table import tip
from gui.work import Worker

if TYPE_CHECKING:
    from concurrent.futures import Future

    from PySide6.QtGui import QCloseEvent, QShowEvent

    from analysis.compare.runs import Run
    from analysis.rows.batch import By
    from gui.pages.answers.base import AnswerPanel, Ask
    from gui.shared import Shared

PIECE = 8  # recordings read at a time
TYPING_MS = 500  # after the last key the recordings are looked for: an old answer never stands under a new search
QUESTION_PX = 292  # width of the question at text scale 1
QUESTION_MARGIN = 12
USUAL_FILL = "fill"


class ComparePage(QWidget):
    """The question on the left, the answer on the right, the kinds of answer above; emits ``review`` with paths."""

    review = Signal(object)

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self.setObjectName("page")
        self._shared = shared
        self.worker = Worker(self)
        self.paths: list[str] = []  # what the search finds
        self.runs: list[Run] = []
        self._tags = Tags()
        self._states: dict[str, str] = {}  # what changes when a recording does, by its path
        self._known: dict[str, Run | str] = {}  # what has been read, by that state
        self._left: list[str] = []
        self._looking: Future[Any] | None = None
        self._answering: Future[Any] | None = None
        self._asked: tuple[object, ...] = ()
        self._generation = 0  # counts what the answers rest on
        self.answers = Switch(NAMES, "Answer")
        self.export_button = button("Export", tip="This answer, or a table of all recordings found")
        self.search = Field("Which recordings", "vehicle, shim, 2026-05 …")
        self.state = label("", "caption", wrap=True)
        self.quantity = Choice("What is compared", QUANTITY_NAMES.items())
        self.unit = Choice("Tag that identifies a fill or build", [(USUAL_FILL, USUAL_FILL)])
        self._fields = column(gap=8)
        self._stack = QStackedWidget()
        self.panels: dict[str, AnswerPanel] = {}
        self.panel = self._open(NAMES[0])
        self.notice = NoticeBar()
        self.batch = BatchBar(shared)
        self._lay_out()
        self._connect()

    # ------------------------------------------------------------------ laying out
    def _lay_out(self) -> None:
        layout = column(self, margin=8, gap=8)
        layout.addWidget(self.notice)
        head = FlowLayout(gap=8)
        head.addWidget(self.answers)
        head.addWidget(self.export_button)
        layout.addLayout(head)
        self._body = QSplitter(Qt.Orientation.Horizontal)
        self._body.setChildrenCollapsible(False)
        self._body.setHandleWidth(8)
        self._body.addWidget(self._question())
        answer = card()
        column(answer, margin=12).addWidget(scrolled(self._stack))
        self._body.addWidget(answer)
        self._body.setStretchFactor(1, 1)
        layout.addWidget(self._body, 1)
        layout.addWidget(self.batch)
        self._share_width()
        self.answers.set_on(NAMES[0])
        self.export_button.setMenu(self._menu())

    def _question(self) -> QWidget:
        frame = card()
        outer = column(frame, margin=QUESTION_MARGIN, gap=8)
        inner = QWidget()
        inside = column(inner, gap=8)
        for part in (self.search, self.state, self.quantity, self.unit, rule()):
            inside.addWidget(part)
        inside.addLayout(self._fields)
        inside.addStretch(1)
        self._scroll = scrolled(inner)
        outer.addWidget(self._scroll, 1)
        return frame

    def _menu(self) -> QMenu:
        menu = QMenu(self)
        self._write = menu.addAction(tr("This answer (CSV, JSON)"), self._ask_export)
        menu.addSeparator()
        for by, words in ROWS.items():
            menu.addAction(tr(f"All recordings found: {words}"), partial(self._ask_batch, by))
        menu.aboutToShow.connect(self._enable)
        return menu

    def _enable(self) -> None:
        self._write.setEnabled(self.panel.written() is not None)

    def _share_width(self) -> None:
        needed = self._scroll.sizeHint().width() + 2 * QUESTION_MARGIN
        width = max(round(QUESTION_PX * self._shared.look.scale), min(needed, round(0.4 * self.width())))
        self._body.setSizes([width, max(1, self.width() - width)])

    def _connect(self) -> None:
        self._typing = QTimer(self)
        self._typing.setSingleShot(True)
        self._typing.setInterval(TYPING_MS)
        self._typing.timeout.connect(self.look)
        self.search.changed.connect(self._typing.start)
        self.search.edit.editingFinished.connect(self.look)
        self.quantity.changed.connect(self.ask)
        self.unit.changed.connect(self.ask)
        self.answers.picked.connect(self.open_answer)
        self._shared.display.changes.listen(self._redraw)
        self._shared.look.changed.connect(self._share_width)
        self.notice.answered.connect(self.notice.hide)

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Look through the folder when the page is opened: there may be new recordings, or tags."""
        super().showEvent(event)
        self.look()

    def _open(self, name: str) -> AnswerPanel:
        if name not in self.panels:
            panel = build_answer(name, self._shared)
            panel.offer(self.runs, self._tags)
            panel.asked.connect(self.ask)
            panel.picture.opened.connect(self._open_point)
            self.panels[name] = panel
            self._fields.addWidget(panel.fields)
            self._stack.addWidget(panel)
        return self.panels[name]

    def _open_point(self, files: tuple[str, ...]) -> None:
        """Show the recordings that a point of the picture rests on."""
        by_name = {os.path.basename(path): path for path in self.paths}
        paths = tuple(by_name[os.path.basename(file)] for file in files if os.path.basename(file) in by_name)
        if paths:
            self.review.emit(paths)

    def open_answer(self, name: str) -> None:
        """Show another kind of answer."""
        self.panel = self._open(name)
        self.answers.set_on(name)
        QTimer.singleShot(0, self, self._share_width)  # once its fields have their sizes
        self._stack.setCurrentWidget(self.panel)
        self.unit.setVisible(self.panel.by_fill)
        for panel in self.panels.values():
            panel.fields.setVisible(panel is self.panel)
        self.ask()

    # ------------------------------------------------------------------ reading
    @property
    def settled(self) -> bool:
        """Whether everything that was asked has come back."""
        return self._looking is None and self._answering is None

    def look(self) -> None:
        """Find the recordings, and read those that are new or changed, piece by piece, in the worker."""
        self._typing.stop()
        if self._looking is not None:
            self.worker.forget(self._looking)
        folder = self._shared.settings.looked_at
        self._looking = self.worker.ask(
            find_recordings, folder, self.search.text, then=self._found, failed=self._not_read
        )

    def _found(self, found: list[tuple[str, str]]) -> None:
        self.paths = [path for path, _ in found]
        self._states = dict(found)
        self._left = [path for path, state in found if state not in self._known]
        self._next_piece()

    def _next_piece(self) -> None:
        piece, self._left = self._left[:PIECE], self._left[PIECE:]
        if not piece:
            self._looking = None
            self._all_read()
            return
        there = len(self.paths) - len(self._left) - len(piece)
        self.state.setText(f"{grouped(there)} of {grouped(len(self.paths))} recordings read")
        self._looking = self.worker.ask(read_runs, piece, then=partial(self._take, piece), failed=self._not_read)

    def _take(self, piece: list[str], read: list[Run | str]) -> None:
        self._known |= {self._states[path]: what for path, what in zip(piece, read, strict=True)}
        self._next_piece()

    def _not_read(self, text: str) -> None:
        self._looking = None
        self.panel.show_problem(text)

    def _all_read(self) -> None:
        read = [self._known[self._states[path]] for path in self.paths]
        runs = [what for what in read if not isinstance(what, str)]
        bad = [what for what in read if isinstance(what, str)]
        count = "1 recording" if len(runs) == 1 else f"{grouped(len(runs))} recordings"
        self.state.setText(f"{count}, {len(bad)} could not be read" if bad else count)
        self.state.setToolTip(tip("\n".join(bad)))
        if runs == self.runs and bad == self.panel.files and self._asked:
            return
        self.runs = runs
        self._generation += 1
        self._tags = tags_of(runs)
        self.unit.set_options([(tag, tag_words(tag)) for tag in dict.fromkeys((USUAL_FILL, *self._tags.all))])
        for panel in self.panels.values():
            panel.files = bad
            panel.offer(runs, self._tags)
        self.ask()

    # ------------------------------------------------------------------ answering
    def ask(self) -> None:
        """Ask the worker what the panel wants to know, if that is anything new."""
        panel = self.panel
        common = Common(self.quantity.key, self.unit.key)
        panel.common = common
        question = panel.ask(self.runs)
        if isinstance(question, str) and self._looking is not None and not self.runs:
            question = "Looking through the folder …"
        if isinstance(question, str):
            self._forget()
            panel.show_nothing(question)
            return
        asked = (panel, common, self._generation, question)
        if asked == self._asked:
            return
        self._forget()
        self._asked = asked
        panel.show_waiting()
        self._answering = self._put(panel, question)

    def _put(self, panel: AnswerPanel, question: Ask) -> Future[Any]:
        return self.worker.ask(
            question.function,
            self.runs,
            panel.common,
            *question.arguments,
            then=partial(self._answered, panel),
            failed=partial(self._refused, panel),
        )

    def _forget(self) -> None:
        if self._answering is not None:
            self.worker.forget(self._answering)
        self._answering, self._asked = None, ()

    def _answered(self, panel: AnswerPanel, answer: object) -> None:
        self._answering = None
        panel.take(answer)

    def _refused(self, panel: AnswerPanel, text: str) -> None:
        self._answering = None
        panel.show_problem(text)

    @property
    def simulated(self) -> bool:
        """Whether the answer in view rests on simulated recordings."""
        return self.panel.simulated

    def _redraw(self) -> None:
        for panel in self.panels.values():
            panel.redraw()
        self.ask()  # what is typed without a unit is meant in the one on screen

    # ------------------------------------------------------------------ writing
    def _ask_export(self) -> None:
        name = f"{self.panel.picture.accessibleName().lower().replace(' ', '-')}.csv"
        target, _ = QFileDialog.getSaveFileName(self, tr("Export to"), name, "CSV (*.csv);;JSON (*.json)")
        if target:
            self.export(target)

    def export(self, target: str) -> None:
        """Write the answer to a file, in the worker."""
        written = self.panel.written()
        if written is not None:
            self.worker.ask(write, written, target, then=self._written, failed=self.say)

    def _written(self, target: str) -> None:
        self.say(f"Written to {target}")

    def _ask_batch(self, by: By) -> None:
        if not self.paths:
            self.say("No recordings are found: there is nothing to write.")
            return
        kinds = "CSV (*.csv);;JSON (*.json)"
        target, _ = QFileDialog.getSaveFileName(self, tr("Export to"), f"all-{by}s.csv", kinds)
        if target:
            self.batch.write(self.paths, target, by)

    def say(self, text: str) -> None:
        """Show a message."""
        self.notice.show_notice(Notice(text))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """End the workers."""
        self.worker.close()
        self.batch.close()
        super().closeEvent(event)
