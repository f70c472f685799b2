"""The only place where acquisition meets Qt: a timer that asks the stream for news and hands them to the run.

Nothing here waits: the stream has its own thread, reading pulls another, and recordings are written there. What fails
arrives as a value and becomes a message.
"""

from __future__ import annotations

import math
import time
from datetime import datetime
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from gui.models.display import grouped
from gui.models.flow import Step
from gui.models.job import problem_of
from gui.models.practice import HandWish
from gui.models.relay import Broken, FoundPull, ScreenSamples
from gui.models.state import LinkState, Notice
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from pathlib import Path

    from gui.models.job import Purpose
    from gui.models.run import TestRun
    from gui.models.stream import Stream
    from logger.header import Header
    from logger.stream.health import Health

TICK_MS = 16  # 60 a second
STALE_S = 0.5  # without a reading: what is shown is the past; a slow gauge may take three of its intervals
_LINKS = {
    "opening": LinkState.OPENING,
    "streaming": LinkState.LIVE,
    "silent": LinkState.SILENT,
    "reconnecting": LinkState.RETRYING,
}


class Bridge(QObject):
    """Brings a stream's news to a run, and the run's wishes to the stream."""

    ticked = Signal()  # something may have moved: draw
    caught = Signal(object)  # a pull was caught (its ``CaughtPull``)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.run: TestRun | None = None
        self.stream: Stream | None = None
        self.folder: Path | None = None
        self.recording: Path | None = None
        self.header: Header | None = None
        self.baseline: Path | None = None  # the recording of this run's drag
        self.recordings: list[Path] = []
        self._purpose: Purpose | None = None
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(TICK_MS)
        self._timer.timeout.connect(self.tick)

    def attach(self, run: TestRun, stream: Stream | None, folder: Path) -> None:
        """Serve a run with a stream (None: a dial reading needs none)."""
        if run is not self.run:
            self.baseline = None
        self.run, self.stream, self.folder = run, stream, folder
        self._purpose, self.recording, self.header = None, None, None
        if stream is not None:
            self._timer.start()

    def detach(self) -> None:
        """Stop the stream; what it has is recorded and closed."""
        self._timer.stop()
        if self.stream is not None:
            self.stream.stop()
        self.stream = None
        self._purpose = None

    def tick(self) -> None:
        """Take the news, follow the run's step, and tell the views."""
        run, stream = self.run, self.stream
        if run is None or stream is None:
            return
        for news in stream.news():
            if isinstance(news, ScreenSamples):
                run.samples(news)
            elif isinstance(news, FoundPull):
                self.caught.emit(run.found(news))
            elif isinstance(news, Broken):
                run.notice = Notice(news.text, serious=True)
        self._follow(run, stream)
        self._health(run, stream)
        self._hand(run, stream)
        self.ticked.emit()

    def _follow(self, run: TestRun, stream: Stream) -> None:
        """Begin and end recordings with the steps of the test."""
        wanted = run.purpose
        if wanted == self._purpose or run.link is not LinkState.LIVE:
            return
        self._purpose = wanted
        if wanted is None or self.folder is None:
            stream.rest()
            return
        zero = run.zeros.written
        header = run.card.header(
            wanted, started=datetime.now().astimezone(), zero=zero, simulated=stream.health.simulated
        )
        try:
            self.recording, self.header = stream.begin(header, self.folder), header
            self.recordings.append(self.recording)
            if wanted == "drag":
                self.baseline = self.recording
        except HeldwheelError as error:
            run.notice = Notice(str(error), serious=True)
            stream.rest()

    def _health(self, run: TestRun, stream: Stream) -> None:
        health = stream.health
        run.simulated = run.simulated or health.simulated
        run.lost = health.lost
        stale = run.link is LinkState.LIVE and _stale(health)
        if stale is not run.stale:
            run.stale = stale
            run.changes.tell()
        before = run.link
        run.link = _LINKS.get(str(health.state), run.link)
        ending = stream.ending
        if ending is not None and before is not LinkState.ENDED:
            run.link = LinkState.ENDED
            safe, kept = stream.saved()
            more = f", {grouped(kept)} more are kept in memory" if kept else ""
            words = f"{grouped(safe)} samples are safe on disk{more}."
            run.ended(ending, safe=words if self.recording is not None else "")
            self._timer.stop()
        elif before is not run.link:
            run.changes.tell()

    def _hand(self, run: TestRun, stream: Stream) -> None:
        """Let the practice hand pull when it is its turn."""
        hand = stream.practice
        if hand is None or hand.busy.is_set() or run.coach.loaded or run.silent:
            return
        if run.flow.now is Step.DRAG and not run.drag.pulls:
            hand.ask(HandWish(drag=True))
            return
        enough = len(run.pulls.counting) >= run.card.pulls_wanted
        if run.flow.now is Step.PULLS and run.dwell_left_s is None and not enough:
            hand.ask(HandWish())

    def rescue(self, folder: Path) -> None:
        """Save a recording whose disk failed in another folder, and say how it went."""
        if self.run is None or self.stream is None:
            return
        try:
            path = self.stream.rescue(folder)
            self.recordings.append(path)
            self.run.notice = Notice(f"Everything is saved in {path}.")
        except (HeldwheelError, OSError) as error:
            self.run.notice = Notice(problem_of(error), serious=True, can_rescue=True)
        self.run.changes.tell()


def _stale(health: Health) -> bool:
    """Say whether a stream that is open has given nothing for a moment; nothing yet is not the past."""
    rate_hz = health.rate_hz if health.rate_hz > 0 else math.inf  # not known yet: NaN compares as False
    return time.monotonic() - health.last_arrival_s > max(STALE_S, 3.0 / rate_hz)
