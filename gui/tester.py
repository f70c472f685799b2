"""One person testing: the job card, the test that runs, the transducer it runs with."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import msgspec
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFileDialog

from gui.bridge import Bridge
from gui.models.asking import Agreements, question_of
from gui.models.changes import Changes
from gui.models.display import grouped
from gui.models.job import JobCard, problem_of
from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
from gui.models.run import TestRun
from gui.models.signing import write_signature
from gui.models.state import LinkState, Notice
from gui.models.stream import Open, SessionStream, Stream, open_link
from gui.translation import tr
from logger.errors import HeldwheelError
from logger.header import JobFacts

if TYPE_CHECKING:
    from concurrent.futures import Future

    from gui.models.asking import Question
    from gui.models.jobs import Jobs
    from gui.models.library import Library
    from gui.models.settings import Settings
    from gui.work import Worker
    from logger.decoder.description import Description
    from logger.header import TransducerFacts
    from logger.stream.acquisition import Acquisition

SAVE_MS = 400  # after the last change: the job card is on disk
ASK_MS = 50  # how often an answer is looked for
T = TypeVar("T")
Opener = Callable[[JobCard, Open], Stream]


class Tester:
    """Owns the acquisition and what belongs to one test after the other.

    Args:
        settings: Where recordings go.
        opener: Opens a stream; a test puts its own here.
    """

    __test__ = False  # it is no test case

    def __init__(self, settings: Settings, opener: Opener | None = None) -> None:
        self.settings = settings
        self.card = JobCard()
        self.changes = Changes()
        self.bridge = Bridge()
        self.agreements = Agreements()
        self.practice_speed = 1.0
        self._own: dict[str, object] | None = None  # the job card, while a practice has one of its own
        self._jobs: Jobs | None = None
        self._saving = QTimer(self.bridge)
        self._saving.setSingleShot(True)
        self._saving.setInterval(SAVE_MS)
        self._saving.timeout.connect(self.save_job)
        self._halves: dict[str, Path] = {}  # of a ratio limit: the last signed recording in each gear
        self._opener = opener or self._open
        self._acquisition: Acquisition | None = None
        self._worker: Worker | None = None
        self._forget: Callable[[], None] = lambda: None
        self.run = self._new_run()
        self.card.changes.listen(self._card_changed)

    def _new_run(self) -> TestRun:
        self._forget()
        run = TestRun(self.card)
        self._forget = run.changes.listen(self.changes.tell)
        return run

    def _card_changed(self) -> None:
        self.run.judge_again()
        if not self.card.practice:
            self._saving.start()
        self.changes.tell()

    def _open(self, card: JobCard, opened: Open) -> Stream:
        return SessionStream(self._started(), card, opened)

    def _started(self) -> Acquisition:
        from logger.stream.acquisition import Acquisition

        if self._acquisition is None:
            self._acquisition = Acquisition()
        return self._acquisition

    # ------------------------------------------------------------------ doing
    def practise(self) -> None:
        """Begin a practice run on the virtual transducer, with a job card of its own."""
        self.bridge.detach()
        opened = self._practice_link()
        if not self.card.practice:
            self.save_job()
            self._own = self.card.parts()
        self.run = self._new_run()
        self.card.swap({"with_drag": self.card.with_drag})
        if opened.practice is not None:
            fill_card(self.card, opened.practice)
        self.run = self._new_run()
        self._connect(opened)
        self.run.start()
        self.run.signed_by = "practice"

    def start(self) -> None:
        """Begin a test with the card's transducer."""
        self.run = self._new_run()
        try:
            self._connect(self._opened())
        except HeldwheelError as error:
            self.run.notice = Notice(str(error), serious=True)
            self.changes.tell()
            return
        self.run.start()
        self.run.signed_by = self.card.job.operator
        if self.card.expired() and self.run.notice is None:
            self.run.notice = Notice(f"{self.card.expired()}. The test goes on; its result says so.", serious=True)
            self.changes.tell()
        self._remember()
        self.save_job()

    def question(self, library: Library, *, second: bool = True) -> Question | None:
        """Give what must be agreed to before the card's transducers are opened; None where nothing is sent."""
        card = self.card
        devices = [(card.description, card.device)] + ([(card.second, card.second_device)] if second else [])
        for description, device in devices:
            if description is not None and not card.practice and not self.agreements.cover(description, device):
                asked = question_of(description, device, library.transducers.entries().values())
                if asked is not None:
                    return asked
        return None

    def _opened(self) -> Open:
        card = self.card
        first = card.description is not None and self.agreements.cover(card.description, card.device)
        second = card.second is not None and self.agreements.cover(card.second, card.second_device)
        return open_link(card, confirmed=first, second_confirmed=second)

    def _connect(self, opened: Open) -> None:
        try:
            stream = self._opener(self.card, opened)
        except (HeldwheelError, OSError) as error:
            self.run.notice = Notice(problem_of(error), serious=True)
            self.changes.tell()
            return
        self.run.link = LinkState.OPENING
        self.bridge.attach(self.run, stream, self.settings.recordings)

    def listen(self, *, practice: bool = False) -> tuple[Stream, TransducerFacts]:
        """Open the card's transducer, or the virtual one, outside a test: nothing is recorded. Gives its facts too.

        Raises:
            HeldwheelError: It cannot be opened, or must be asked and nobody has agreed.
        """
        opened = self._practice_link() if practice else None
        card = JobCard()
        if opened is not None and opened.practice is not None:
            card.put(description=opened.practice.description, practice=True)
        else:
            card.put(description=self.card.description, address=self.card.device)
            agreed = card.description is not None and self.agreements.cover(card.description, card.device)
            opened = open_link(card, confirmed=agreed)
        return self._opener(card, opened), card.facts

    def reconnect(self) -> None:
        """Open the transducer again in the middle of a test; its pulls stay, a new recording begins."""
        offset = self.run.trace.end_s + 1.0
        self.bridge.detach()
        self.run.answer_notice()
        try:
            opened = self._opened() if not self.card.practice else self._practice_link()
        except HeldwheelError as error:
            self.run.notice = Notice(str(error), serious=True)
            self.changes.tell()
            return
        self._connect(replace(opened, offset_s=offset))

    def sign(self) -> None:
        """Write beside the last recording who made the test and which pulls were excluded, and why."""
        path = self.bridge.recording
        self.run.freeze()
        if path is None or not path.exists():
            return
        limit = self.card.limit
        if limit is not None and limit.is_ratio and self.card.test.gear is not None:
            self._halves[self.card.test.gear] = path
        try:
            write_signature(path, self.run, self.bridge.header, self.bridge.baseline)
        except (HeldwheelError, OSError) as error:
            self.run.notice = Notice(problem_of(error), serious=True)

    def to_review(self) -> tuple[Path, ...]:
        """Give the recording of the finished test; for a ratio limit the other half with it, once there is one."""
        path = self.bridge.recording
        if path is None:
            return ()
        halves = tuple(self._halves.values())
        return halves if path in halves else (path,)

    def _practice_link(self) -> Open:
        link = PracticeLink(scenario_for_practice(), speed=self.practice_speed)
        return Open(link, practice=link)

    def fresh(self) -> None:
        """Put the test away; card and transducer stay for the next, and what was made up for a practice goes."""
        self.bridge.detach()
        self.run = self._new_run()
        own, self._own = self._own, None
        if self.card.practice:
            self.card.swap(own or {})
        self.changes.tell()

    @property
    def worker(self) -> Worker:
        """A process for what the job card asks for; started with the first question."""
        from gui.work import Worker

        if self._worker is None:
            self._worker = Worker(self.bridge)
        return self._worker

    def rescue(self) -> None:
        """Ask for another folder and save a recording there whose disk failed."""
        folder = QFileDialog.getExistingDirectory(None, tr("Save the recording in another folder"))
        if folder:
            self.bridge.rescue(Path(folder))

    def ask_later(
        self, asked: Coroutine[Any, Any, T], then: Callable[[T], object], failed: Callable[[str], object]
    ) -> Future[T]:
        """Run something in the acquisition thread and bring its answer back here; one that is cancelled brings none."""
        future = self._started().call(asked)
        timer = QTimer(self.bridge)

        def look() -> None:
            if not future.done():
                return
            timer.stop()
            timer.deleteLater()
            if future.cancelled():
                return
            error = future.exception()
            if error is None:
                then(future.result())
            else:
                failed(problem_of(error) if isinstance(error, Exception) else str(error))

        timer.timeout.connect(look)
        timer.start(ASK_MS)
        return future

    # ------------------------------------------------------------------ jobs
    @property
    def jobs(self) -> Jobs:
        """The jobs on file; their records are loaded when they are first asked for."""
        from gui.models.jobs import Jobs

        if self._jobs is None:
            self._jobs = Jobs(self.settings.folder / "jobs")
        return self._jobs

    def save_job(self) -> None:
        """Write the job card to its file; a practice has none."""
        self._saving.stop()
        if self.card.practice:
            return
        before = self.jobs.path
        self.jobs.save(self.card)
        if self.jobs.path is not None and self.jobs.path != before:
            self.settings.remember(job=self.jobs.path.name)
        if self.jobs.problem and self.run.notice is None:
            self.run.notice = Notice(self.jobs.problem, serious=True)
            self.changes.tell()

    def new_job(self) -> None:
        """Begin an empty job card; transducer and who tests stay, the job so far stays on file."""
        self.save_job()
        self.jobs.begin()
        card = self.card
        kept = {name: getattr(card, name) for name in ("description", "address", "second", "second_address")}
        card.swap({**kept, "job": JobFacts(operator=card.job.operator, shop=card.job.shop)})
        self.settings.remember(job="")

    def as_last_time(self) -> None:
        """Take fixture, limit, transducer and kind of test from the job before."""
        self.card.swap({**self.card.parts(), **self.jobs.last()})

    def open_job(self, path: Path) -> None:
        """Go on with an earlier job."""
        self.save_job()
        try:
            self.card.swap(self.jobs.open(path))
        except HeldwheelError as error:
            self.run.notice = Notice(str(error), serious=True)
            self.changes.tell()
            return
        self.settings.remember(job=path.name)

    def restore(self, library: Library) -> None:
        """Put on the card what stood there last, or else what was used last."""
        choices = self.settings.choices
        if choices.job:
            path = self.jobs.folder / choices.job
            if path.exists():
                self.open_job(path)
                return
        if choices.fixture:
            self.card.put(lever=library.fixtures.entries().get(choices.fixture))
        if choices.limit:
            self.card.put(limit=library.limits.entries().get(choices.limit))
        if choices.transducer:
            description = library.transducers.entries().get(choices.transducer)
            self.card.put(description=description, address=self.last_port(description) if description else "")
        if choices.operator:
            self.card.put(job=msgspec.structs.replace(self.card.job, operator=choices.operator))

    def last_port(self, description: Description) -> str:
        """Give the port or address that a transducer was last used at, or its own identity."""
        return self.settings.choices.ports.get(description.name) or description.transducer.identity

    def _remember(self) -> None:
        card = self.card
        if card.practice:
            return
        ports = dict(self.settings.choices.ports)
        if card.description is not None and card.address:
            ports[card.description.name] = card.address
        self.settings.remember(
            fixture=card.lever.name if card.lever is not None else "",
            limit=card.limit.name if card.limit is not None else "",
            transducer=card.description.name if card.description is not None else "",
            operator=card.job.operator,
            ports=ports,
        )

    def recording_words(self) -> str:
        """Say in a few words what is being recorded; a second line names the file."""
        stream, path = self.bridge.stream, self.bridge.recording
        if stream is None or path is None or self.run.purpose is None:
            return "Not recording" if stream is not None else ""
        saved, waiting = stream.saved()
        return f"Recording: {grouped(saved + waiting)} readings\n{path}"

    def close(self) -> None:
        """End everything; recordings are closed, what the card rests on is remembered."""
        self._remember()
        self.save_job()
        if self._worker is not None:
            self._worker.close()
        stream = self.bridge.stream
        self.bridge.detach()
        if stream is not None:
            stream.wait()
        if self._acquisition is not None:
            self._acquisition.close()
            self._acquisition = None
