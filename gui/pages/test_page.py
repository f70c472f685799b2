"""The Test page: job card, steps, live figure and trace, pulls; from safety checks to signature."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QSplitter, QStackedWidget, QWidget

from gui.models.flow import Step
from gui.models.step_words import step_detail
from gui.pages.card_panel import CardPanel
from gui.pages.foot import Foot
from gui.pages.pulls_panel import PullsPanel
from gui.pages.test_keys import press
from gui.pages.test_sounds import TestSounds
from gui.pages.welcome import Welcome
from gui.widgets.notice import NoticeBar
from gui.widgets.parts import column, leads, restyle
from gui.widgets.step_strip import StepStrip

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QKeyEvent, QResizeEvent

    from gui.pages.checks_panel import ChecksPanel
    from gui.pages.editors.base import Editor
    from gui.pages.far_view import FarView
    from gui.pages.live_panel import LivePanel
    from gui.pages.sign_panel import SignPanel
    from gui.shared import Shared
    from gui.tester import Tester

NARROW_PX = 900  # at text scale 1: in less, the job card makes way while a test runs; keys and Job card open it
STREAM_EVERY = 12  # ticks: the stream's figures change five times a second, the torque at every one


class TestPage(QWidget):
    """Everything of a test on one page; emits ``review`` with the recordings of a finished one."""

    __test__ = False  # it is no test case
    review = Signal(object)
    chart = Signal(str)

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__()
        self.setObjectName("page")
        self._shared, self._tester, self._ticks, self._loaded = shared, tester, 0, False
        self.sounds = TestSounds(shared.sounds)
        self._press = partial(press, self, tester)
        self.card_panel = CardPanel(shared, tester)
        self.strip = StepStrip(shared.look)
        self.notice = NoticeBar()
        self.pulls, self.foot, self.welcome = PullsPanel(shared), Foot(shared), Welcome(shared)
        self._made: dict[str, QWidget] = {}
        self.middle = QStackedWidget()
        self.far: FarView | None = None
        self.open_form = ""
        self._shared_for: tuple[str, bool] = ("", False)
        self._lay_out()
        self._connect()
        self.refresh()

    def _lay_out(self) -> None:
        strip_frame = QFrame()
        strip_frame.setObjectName("bar")
        column(strip_frame, gap=0).addWidget(self.strip)
        self.middle.addWidget(self.welcome)
        body = QSplitter(Qt.Orientation.Horizontal)
        body.setChildrenCollapsible(False)
        body.setHandleWidth(8)
        for part, stretch in ((self.card_panel, 0), (self.middle, 1), (self.pulls, 0)):
            body.addWidget(part)
            body.setStretchFactor(body.count() - 1, stretch)
        self._body = body
        self._shared.look.changed.connect(self._share_width)
        layout = column(self, gap=0)
        layout.addWidget(strip_frame)
        inner = column(margin=8, gap=8)
        inner.addWidget(self.notice)
        inner.addWidget(body)
        layout.addLayout(inner, 1)
        layout.addWidget(self.foot)

    def _share_width(self) -> None:
        """Give the sides what their text needs, and a fifth of a wide window."""
        scale = self._shared.look.scale
        side = max(270 * scale, min(0.2 * self.width(), 380 * scale))
        narrow = self.width() < NARROW_PX * scale
        busy = not self.pulls.isHidden()
        self.card_panel.setHidden(narrow and busy and not self.open_form)
        self.foot.card.setVisible(self.card_panel.isHidden())
        self.pulls.setMinimumWidth(round(min(side, (0.4 if narrow else 0.45) * self.width())))
        self.card_panel.setMinimumWidth(round(min(side * 0.85, 0.4 * self.width())))
        right = min(side * 1.1, (0.4 if narrow else 0.45) * self.width())
        left = 0.0 if self.card_panel.isHidden() else min(side, 0.4 * self.width())
        self._body.setSizes([round(left), round(self.width() - left - right), round(right)])

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Share the width anew."""
        super().resizeEvent(event)
        self._share_width()

    def _connect(self) -> None:
        tester = self._tester
        self.card_panel.opened.connect(self.open_row)
        self.welcome.practise.connect(self.practise)
        self.welcome.connect_asked.connect(lambda: self.open_row("Transducer"))
        self.welcome.dial.connect(lambda: self.open_row("Dial"))
        self.foot.acted.connect(self.act)
        self.foot.skipped.connect(lambda: tester.run.skip())
        self.foot.back_asked.connect(lambda: tester.run.go_back())
        self.foot.stopped.connect(self.end)
        self.foot.card_asked.connect(lambda: self.open_row("Job"))
        self.foot.far.connect(self.show_far)
        self.foot.dial.connect(lambda: self.open_row("Dial"))
        self.pulls.reject.connect(self._reject)
        self.pulls.undo.connect(lambda: tester.run.undo())
        self.notice.answered.connect(self._answered)
        self.notice.zero_asked.connect(lambda: tester.run.zero_anew())
        self.notice.rescue_asked.connect(tester.rescue)
        tester.bridge.ticked.connect(self._tick)
        tester.bridge.caught.connect(self.sounds.caught)
        tester.changes.listen(self.refresh)
        self._shared.display.changes.listen(self.refresh)

    # ------------------------------------------------------------------ parts, built when first needed
    def _part(self, name: str, make: Callable[[], QWidget]) -> QWidget:
        if name not in self._made:
            self._made[name] = make()
            self.middle.addWidget(self._made[name])
        return self._made[name]

    @property
    def live(self) -> LivePanel:
        """Figure, coach and trace."""
        from gui.pages import live_panel

        return cast("LivePanel", self._part("live", lambda: live_panel.LivePanel(self._shared)))

    @property
    def checks(self) -> ChecksPanel:
        """The safety checks."""
        from gui.pages import checks_panel

        def make() -> ChecksPanel:
            panel = checks_panel.ChecksPanel()
            panel.ticked.connect(lambda index, on: self._tester.run.tick(index, on=on))
            return panel

        return cast("ChecksPanel", self._part("checks", make))

    @property
    def sign(self) -> SignPanel:
        """The end of a test."""
        from gui.pages import sign_panel

        def make() -> SignPanel:
            panel = sign_panel.SignPanel(self._shared)
            panel.named.connect(self._named)
            panel.report_asked.connect(self._make_report)
            panel.review_asked.connect(lambda: self.review.emit(self._tester.to_review()))
            return panel

        return cast("SignPanel", self._part("sign", make))

    def editor(self, name: str) -> Editor:
        """Give the editor behind a row of the job card."""
        from gui.pages.editors import axle, build_editor, dial

        name = "Job" if name == "Kind of test" else name

        def make() -> Editor:
            editor = build_editor(name, self._shared, self._tester)
            editor.closed.connect(self.close_editor)
            editor.settled.connect(self._refresh_stream)
            if isinstance(editor, axle.AxleEditor):
                editor.build.chart_asked.connect(self.chart.emit)
            if isinstance(editor, dial.DialEditor):
                editor.review_asked.connect(self.review.emit)
                editor.fixture_asked.connect(lambda: self.open_row("Fixture"))
            return editor

        return cast("Editor", self._part(f"editor {name}", make))

    def warm_up(self) -> None:
        """Load what the first test needs, once the window is there."""
        _ = self.live

    # ------------------------------------------------------------------ doing
    def practise(self) -> None:
        """Begin a practice run on the virtual transducer."""
        self.open_form = ""
        self._tester.practise()
        self.foot.main.setFocus()

    def act(self) -> None:
        """Do what the large button says."""
        run = self._tester.run
        if run.flow.finished:
            self._tester.fresh()
        elif run.flow.now is None:
            if not run.card.missing():
                self._ask_first(self._start)
        elif run.can_reconnect:
            self._ask_first(self._tester.reconnect)
        else:
            self.open_form = ""
            run.act()
            if run.flow.finished:
                self._tester.sign()
        self.refresh()

    def _start(self) -> None:
        self.open_form = ""
        self._tester.start()
        self.refresh()

    def _ask_first(self, go: Callable[[], object]) -> None:
        from gui.pages.ask_dialog import ask_first

        tester, shared = self._tester, self._shared
        ask_first(lambda: tester.question(shared.library), tester.agreements, shared.look, self, go)

    def end(self) -> None:
        """End the test early; what is recorded stays. Pulls that nobody has signed are asked about."""
        run = self._tester.run
        count = len(run.pulls.pulls)
        unsigned = run.flow.running and count and not run.card.practice
        if unsigned and not self._shared.confirm(
            self,
            f"End the test without signing {'its pull' if count == 1 else f'its {count} pulls'}?",
            "They stay in the recording and can be reviewed, but nobody has signed for them.",
            "End the test",
            "Go on testing",
        ):
            return
        self._tester.fresh()

    def open_row(self, name: str) -> None:
        """Open an editor in the middle."""
        self.open_form = "" if self.open_form == name else name
        self.refresh()
        if self.open_form:
            self.editor(self.open_form).begin()

    def close_editor(self) -> None:
        """Go back to the test."""
        self.open_form = ""
        self.refresh()
        self.foot.main.setFocus()

    def show_far(self) -> None:
        """Fill the screen with the figure."""
        from gui.pages import far_view

        if self.far is None:
            self.far = far_view.FarView(self._shared)
            self.far.left.connect(self._far_left)
            self.far.acted.connect(self.act)
            self.far.key.connect(self._press)
        self.far.showFullScreen()
        self._tick()

    def _far_left(self) -> None:
        if self.far is not None:
            self.far.deleteLater()
            self.far = None

    def _reject(self, number: int) -> None:
        run = self._tester.run
        if number == 0:
            run.reject_last()
        else:
            run.leave_out(number)

    def _make_report(self, reader: str) -> None:
        """Write the page of the signed test beside its recording, in the worker."""
        from gui.pages.pages_part import write_page

        paths = self._tester.to_review()
        if paths:
            write_page(self._shared, self._tester.worker, self.sign.written, paths[0], reader)
        else:
            self.sign.written.say("There is no recording to write a page of.", wrong=True)

    def _answered(self) -> None:
        """Put the message away; the space bar is the large button's again."""
        self._tester.run.answer_notice()
        if not self.open_form:
            self.foot.main.setFocus()

    def _named(self, name: str) -> None:
        self._tester.run.signed_by = name
        self.refresh()

    # ------------------------------------------------------------------ showing
    def _tick(self) -> None:
        """Draw what moves."""
        run = self._tester.run
        self._ticks += 1
        if "live" in self._made and self.middle.currentWidget() is self.live:
            self.live.refresh(run)
        if self.far is not None:
            self.live.refresh(run)
            self.far.refresh(run, self.live.view)
        self.sounds.follow(run)
        if self._ticks % STREAM_EVERY == 0 or self._loaded is not run.coach.loaded:
            self._loaded = run.coach.loaded
            self._refresh_stream()

    def _refresh_stream(self) -> None:
        stream, run = self._tester.bridge.stream, self._tester.run
        ready = run.action().enabled
        restyle(self.welcome.first, "" if ready else "main")
        elsewhere = bool(self.open_form) and leads(self.editor(self.open_form))
        health = stream.health if stream is not None else None
        self.foot.refresh(run, health, self._tester.recording_words(), elsewhere=elsewhere)

    @property
    def simulated(self) -> bool:
        """Whether what is on screen comes from the virtual transducer."""
        return self._tester.run.simulated or self._tester.run.card.practice

    def refresh(self) -> None:
        """Show everything that changes with a step, a pull or the card."""
        run = self._tester.run
        display = self._shared.display
        self.strip.show_steps([(str(s), run.flow.stands[s], *step_detail(run, s, display)) for s in run.flow.steps])
        self._choose_middle()
        self.card_panel.mark_open(self.open_form)
        self.pulls.refresh(run)
        self._refresh_stream()
        self.notice.show_notice(run.notice)

    def _choose_middle(self) -> None:
        run = self._tester.run
        if self.open_form:
            editor = self.editor(self.open_form)
            editor.follow(self._tester.card.generation)
            widget: QWidget = editor
        elif run.flow.now is None and not run.flow.finished:
            widget = self.welcome
        elif run.flow.now in {Step.SAFETY, Step.HOLD}:
            self.checks.refresh(run)
            widget = self.checks
        elif run.flow.now is Step.SIGN or run.flow.finished:
            self.sign.refresh(run)
            widget = self.sign
        else:
            self.live.refresh(run)
            widget = self.live
        if self.middle.currentWidget() is not widget:
            self.middle.setCurrentWidget(widget)
        busy = run.flow.now is not None or run.flow.finished
        narrow = self.width() < NARROW_PX * self._shared.look.scale
        shown = busy and not (narrow and self.open_form)
        if shown is self.pulls.isHidden() or self._shared_for != (self.open_form, busy):
            self._shared_for = (self.open_form, busy)
            self.pulls.setVisible(shown)
            self._share_width()

    # ------------------------------------------------------------------ keys
    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Serve the space bar and the single keys."""
        held = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
        if held or not self._press(event.key()):
            super().keyPressEvent(event)
