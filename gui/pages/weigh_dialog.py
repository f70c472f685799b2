"""Checking a transducer with known weights: what hangs, hang and take off while we listen, the result in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from gui.models.calibrating import Calibrating
from gui.models.job import problem_of
from gui.models.relay import ScreenSamples
from gui.models.weighing import Doing, Weighing, plan_of
from gui.pages.ask_dialog import ask_first
from gui.pages.stepped_dialog import SteppedDialog
from gui.pages.weigh_steps import HangStep, ResultStep, WhatStep
from gui.sound import Sound
from gui.widgets.parts import button
from logger.errors import HeldwheelError
from logger.header import TransducerFacts
from logger.instruments.register import keep_weighing
from logger.stream.health import SessionState

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent
    from PySide6.QtWidgets import QWidget

    from gui.models.asking import Question
    from gui.models.stream import Stream
    from gui.shared import Shared
    from gui.tester import Tester
    from logger.decoder.description import Description

LOOK_MS = 100
HAND_S = 1.2  # after which the practice hand hangs the next weight
TITLES = ("Check it with known weights", "Hang and take off", "Result")
WHAT, HANG, RESULT = range(3)
LOCKED = "Keep it as a description of its own in your list, read only, dated, and used from now on. Then check it."
NOT_KEPT = (
    "It cannot be kept: without a serial number in its description it cannot be told apart from others of its model."
)
SILENT = {
    SessionState.SILENT: "The transducer is silent.",
    SessionState.RECONNECTING: "The transducer is gone; waiting for it …",
}


class WeighDialog(SteppedDialog):
    """Three steps; emits ``kept`` when the register has the result, ``calibrated`` with a calibrated description."""

    kept = Signal()
    calibrated = Signal(object)

    def __init__(self, shared: Shared, tester: Tester, parent: QWidget | None = None) -> None:
        super().__init__(shared, "Dead-weight check", (900, 680), parent)
        self._tester = tester
        self.weighing: Weighing | None = None
        self._stream: Stream | None = None
        self._simulated = False
        self._facts = TransducerFacts()
        description = tester.card.description
        self.what = WhatStep(
            tester.card.facts.name or (description.name if description is not None else ""), shared.display
        )
        self.hang, self.outcome = HangStep(shared), ResultStep(shared)
        self.again = button("Measure it again", self._again, tip="Takes the last step back")
        self._lay_out((self.what, self.hang, self.outcome), self.again)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self.look)
        self.what.changed.connect(self._check)
        self.finished.connect(self._stop)
        self.show_step(WHAT)

    # ------------------------------------------------------------------ steps
    def show_step(self, step: int) -> None:
        """Go to a step."""
        self.pages.setCurrentIndex(step)
        self.title.setText(TITLES[step])
        last = "Save this check" if self._may_keep else "Close"
        self._name(("Cancel", "Back", "Weigh again")[step], ("Begin", "Measure now", last)[step])
        self.message.setText("")
        self.again.setVisible(step != WHAT)
        self.again.setEnabled(True)
        self._allow(True)
        if step == WHAT:
            self._check()

    def _go_on(self) -> None:
        (self._begin, self._insist, self._keep)[self.pages.currentIndex()]()

    # ------------------------------------------------------------------ what hangs
    def _known(self) -> TransducerFacts:
        return TransducerFacts() if self.what.practice else self._tester.card.facts

    def _check(self) -> None:
        plan, wrong = plan_of(self.what.typed(), self._known())
        self.what.mark(wrong)
        begun = any(field.text.strip() for field in self.what.fields.values())
        missing = [text for key, text in wrong.items() if not self.what.fields[key].text.strip()]
        self.message.setText(f"Still missing: {' '.join(missing)}" if begun and missing else "")
        self._allow(plan is not None)

    def _begin(self) -> None:
        def question() -> Question | None:
            return None if self.what.practice else self._tester.question(self._shared.library, second=False)

        ask_first(question, self._tester.agreements, self._shared.look, self, self._open)

    def _open(self) -> None:
        try:
            self._stream, self._facts = self._tester.listen(practice=self.what.practice)
        except (HeldwheelError, OSError) as error:
            self.message.setText(problem_of(error))
            return
        self.begin(self._stream, self._facts)

    def begin(self, stream: Stream, facts: TransducerFacts) -> None:
        """Watch a stream that was opened."""
        plan, wrong = plan_of(self.what.typed(), facts)
        self._stream, self._facts = stream, facts
        if plan is None:
            self._lost(" ".join(wrong.values()))
            return
        description = self._tester.card.description
        if self.what.calibrates and description is not None:
            self.weighing = Calibrating(plan, description)
        else:
            self.weighing = Weighing(plan)
        self._simulated = stream.practice is not None
        self.show_step(HANG)
        self._show()
        self._timer.start()

    # ------------------------------------------------------------------ hanging
    def look(self) -> None:
        """Take what has come since the last look."""
        stream, weighing = self._stream, self.weighing
        if stream is None or weighing is None:
            return
        self._simulated = self._simulated or stream.health.simulated
        for news in stream.news():
            if not isinstance(news, ScreenSamples):
                continue
            if weighing.feed(news.time_s, news.delivered if weighing.raw else news.torque_nm):
                self._shared.sounds.play(Sound.CAUGHT)
        if weighing.done:
            self._show_result()
            return
        ending = stream.ending
        if ending is not None:
            self._lost(ending.text or "The transducer is gone.")
            return
        self._practise(stream, weighing)
        self._show()

    def _practise(self, stream: Stream, weighing: Weighing) -> None:
        """Let the practice hand hang the next weight."""
        if stream.practice is not None and weighing.doing is Doing.HANG and weighing.waited_s > HAND_S:
            stream.practice.hang(weighing.plan.torque_nm(weighing.step))

    def _show(self) -> None:
        if self.weighing is None or self._stream is None:
            return
        link = SILENT.get(self._stream.health.state, "")
        self.hang.show_weighing(self.weighing, link, simulated=self._simulated)
        self._allow(self.weighing.doing is Doing.HANG)
        self.again.setEnabled(self.weighing.step > 0)

    def _insist(self) -> None:
        if self.weighing is not None:
            self.weighing.insist()
            self._show()

    def _again(self) -> None:
        """Take the last step back; from the result, go on weighing."""
        if self.weighing is not None and self._stream is not None:
            self._stream.news()  # from before: not what hangs now
            self.weighing.again()
            self.show_step(HANG)
            self._show()
            self._timer.start()

    def _stop(self) -> None:
        self._timer.stop()
        if self._stream is not None:
            self._stream.stop()
        self._stream = None

    # ------------------------------------------------------------------ the result
    @property
    def _may_keep(self) -> bool:
        bare = self.weighing is not None and self.weighing.raw
        return not self._simulated and (bare or bool(self._facts.serial.strip()))

    def _show_result(self) -> None:
        if self.weighing is None:
            return
        self._timer.stop()
        self.show_step(RESULT)
        if isinstance(self.weighing, Calibrating):
            self._show_calibration(self.weighing)
            return
        kept = NOT_KEPT
        if self._may_keep:
            kept = f"Keep it with serial number {self._facts.serial} in the register: later recordings name it."
        self.outcome.show_result(self.weighing, kept, simulated=self._simulated)

    def _show_calibration(self, weighing: Calibrating) -> None:
        try:
            self.outcome.show_calibration(weighing.made, LOCKED, simulated=self._simulated)
        except HeldwheelError as error:
            self._lost(problem_of(error))

    def _saved(self, weighing: Calibrating) -> Description:
        """Put the calibrated description in the list, locked against changes."""
        shelf = self._shared.library.transducers
        description = weighing.description(shelf.entries())
        shelf.save(description).chmod(0o444)
        return description

    def _keep(self) -> None:
        if self.weighing is None or not self._may_keep:
            self.reject()
            return
        try:
            if isinstance(self.weighing, Calibrating):
                self.calibrated.emit(self._saved(self.weighing))
            else:
                keep_weighing(self.weighing.points, self._facts)
                self.kept.emit()
        except (HeldwheelError, OSError) as error:
            self.message.setText(problem_of(error))
            return
        self.accept()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Close the transducer."""
        self._stop()
        super().closeEvent(event)
