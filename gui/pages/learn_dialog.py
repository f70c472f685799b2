"""Learning an unknown transducer: where it is, load and unload it while we listen, then name what was found."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal

from gui.models.asking import Question
from gui.models.job import problem_of
from gui.models.learning import LearningState, complete, look_at
from gui.pages.learn_steps import INTERVAL_S, ListenStep, NameStep, WhereStep
from gui.pages.stepped_dialog import SteppedDialog
from gui.work import Worker
from logger.edges.confirm import shown_bytes
from logger.edges.console import clean
from logger.errors import HeldwheelError
from logger.learn.hear import Heard, Place, hear, heard_in
from logger.learn.learn import Wanted

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future

    from PySide6.QtGui import QCloseEvent
    from PySide6.QtWidgets import QWidget

    from gui.shared import Shared
    from gui.tester import Tester
    from logger.decoder.description import Description

LISTEN_S = 120.0  # nobody needs longer to load a lever both ways
LOOK_MS = 700  # how often what came is looked at while it comes
ENOUGH = 20  # readings before a description can be made of them
TITLES = ("Where is it?", "Load and unload it now", "Is this right? Then name it")
WHERE, LISTEN, NAME = range(3)


class LearnDialog(SteppedDialog):
    """Three steps; emits ``learned`` with the description and the address it was heard at."""

    learned = Signal(object, str)

    def __init__(self, shared: Shared, tester: Tester, address: str, parent: QWidget | None = None) -> None:
        super().__init__(shared, "Learn a transducer", (760, 600), parent)
        self._tester = tester
        self._worker = Worker(self)
        self.heard = Heard()
        self.wanted = Wanted()
        self.look: LearningState | None = None
        self._listening: Future[Heard] | None = None
        self.where, self.listen, self.name = WhereStep(address), ListenStep(shared), NameStep(shared.display)
        self._lay_out((self.where, self.listen, self.name))
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self._look)
        self.where.changed.connect(lambda _kind: self.show_step(WHERE))
        self.name.changed.connect(self._check)
        self.name.said.connect(self._again)
        self.listen.chosen.connect(self._choose)
        self.finished.connect(self._end)
        self.show_step(WHERE)

    # ------------------------------------------------------------------ steps
    def show_step(self, step: int) -> None:
        """Go to a step."""
        self.pages.setCurrentIndex(step)
        self.title.setText(TITLES[step])
        begin = "Read it" if self.where.kind.key == "file" else "Listen"
        self._name("Cancel" if step == WHERE else "Back", (begin, "Finished loading", "Save and use it")[step])
        self._allow(step == WHERE)
        self.message.setText("")

    def _go_on(self) -> None:
        (self._begin, self._enough, self._save)[self.pages.currentIndex()]()

    # ------------------------------------------------------------------ listening
    def _begin(self) -> None:
        self.message.setText("")
        try:
            if self.where.kind.key == "file":
                self._read_file()
                return
            place = self.where.place()
        except HeldwheelError as error:
            self.message.setText(problem_of(error))
            return
        self._confirm(place) if place.request else self._listen(place)

    def _confirm(self, place: Place) -> None:
        from gui.pages.ask_dialog import AskDialog

        text = shown_bytes(place.request)
        requests = ((place.request.hex(" ").upper(), text),)
        what = f"'{text}' every {INTERVAL_S:g} s"
        question = Question("", clean(place.port, 80), what, requests, "You typed it here.", "")
        dialog = AskDialog(question, self._shared.look, self)
        dialog.agreed.connect(lambda _question: self._listen(place))
        dialog.open()

    def _listen(self, place: Place) -> None:
        self.heard, self.look, self.wanted = Heard(), None, Wanted()
        self.listen.begin("Opening …" if place.baud or place.ble else "Finding its speed …")
        self.show_step(LISTEN)
        listening = hear(place, LISTEN_S, self.heard)
        self._listening = self._tester.ask_later(listening, lambda _heard: self._enough(), self._lost)
        self._timer.start()

    def _read_file(self) -> None:
        if self.where.path is None:
            self.message.setText("Choose the file first.")
            return
        self.heard, self.wanted = heard_in(self.where.path), Wanted()
        self._enough()

    def _stop(self) -> None:
        self._timer.stop()
        if self._listening is not None:
            self._listening.cancel()
        self._listening = None

    def _look(self) -> None:
        """Have what came so far recognised, in the worker."""
        if not self._worker.busy:
            self._recognise(self._show_so_far)

    def _recognise(self, then: Callable[[LearningState], object]) -> None:
        heard = replace(self.heard, chunks=list(self.heard.chunks), radio=dict(self.heard.radio))
        self._worker.ask(look_at, heard, self.wanted, then=then, failed=self._lost)

    def _choose(self, number: str) -> None:
        """Take the number that the user has seen move."""
        self.wanted = replace(self.wanted, field=number)

    def _again(self) -> None:
        """Recognise once more, with what the user has said."""
        self.wanted = self.name.wanted(self.wanted)
        self._allow(False)
        self._recognise(self.show_found)

    def _show_so_far(self, look: LearningState) -> None:
        if self._listening is None:
            return  # the user has gone on, or back
        self.look = look
        self.listen.show_look(look, self.heard.size, self.wanted.field)
        self._allow(look.readings >= ENOUGH or bool(look.asked))

    def _enough(self) -> None:
        """Stop listening and show what was found."""
        self._stop()
        self._allow(False)
        self.message.setText("Looking at what came …")
        self._recognise(self.show_found)

    # ------------------------------------------------------------------ naming
    def show_found(self, look: LearningState) -> None:
        """Show what came of it all."""
        self.look = look
        if look.draft is None and not look.asked:
            self._lost("No readings were recognised: " + clean("; ".join(look.learned.unknown), 400))
            return
        if self.pages.currentIndex() != NAME:
            self.name.answers.clear()
            self.name.unit.set_key("")
        self.show_step(NAME)
        self.name.show_look(look)
        self._check()

    def _completed(self) -> tuple[Description | None, dict[str, str]]:
        if self.look is None:
            return None, {}
        return complete(self.look, self.name.naming(), request=self.where.question, interval_s=INTERVAL_S)

    def _check(self) -> None:
        description, wrong = self._completed()
        self.name.mark(wrong)
        self.message.setText(" ".join(text for key, text in wrong.items() if key in {"name", "unit", ""}))
        self._allow(description is not None)

    def _save(self) -> None:
        description, _ = self._completed()
        if description is None:
            return
        try:
            self._shared.library.transducers.save(description)
        except HeldwheelError as error:
            self.message.setText(problem_of(error))
            return
        address = "" if self.where.kind.key == "file" else self.where.address.text.strip()
        self.learned.emit(description, address)
        self.accept()

    # ------------------------------------------------------------------ end
    def _end(self) -> None:
        self._stop()
        self._worker.close()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Stop listening and end the worker."""
        self._end()
        super().closeEvent(event)
