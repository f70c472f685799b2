"""A stream without threads: simulated seconds on demand, pulls read at once, so that a whole job takes a moment."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.verdict.job import Job
from gui.models.practice import scenario_for_practice
from gui.models.relay import Found, News, Samples
from gui.models.stream import recording_stem
from logger.samples import Ending, EndReason, Event
from logger.stream.health import Health, State
from logger.virtual.hand import Pull
from logger.virtual.physics import LeverOff, Rest, simulate

if TYPE_CHECKING:
    from pathlib import Path


_SIMULATED: dict[tuple[str, int], np.ndarray] = {}


def simulated(scenario, seed: int) -> np.ndarray:
    """Simulate once per session: many tests need the same few pulls."""
    key = (repr(scenario), seed)
    if key not in _SIMULATED:
        _SIMULATED[key] = simulate(scenario, seed).torque_nm
    return _SIMULATED[key]


class FakeStream:
    """What the bridge needs of a stream; a test pushes the time."""

    def __init__(self, scenario=None, seed: int = 5) -> None:
        self.practice = None
        self.scenario = scenario or scenario_for_practice()
        self.seed, self.made, self.end_s = seed, 0, 0.0
        self.state, self.ended = State.STREAMING, None
        self.simulated = True
        self.begun: list = []
        self.kept = 0
        self.stopped = False
        self._news: list[News] = []
        self._job: Job | None = None
        self._stage, self._start_s = 0, 0.0

    @property
    def health(self) -> Health:
        return Health(state=self.state, rate_hz=1000.0, simulated=self.simulated)

    @property
    def ending(self) -> Ending | None:
        return self.ended

    def news(self) -> list[News]:
        found, self._news = self._news, []
        return found

    def begin(self, header, folder: Path) -> Path:
        self.begun.append(header)
        self._job = Job(header)
        self._stage += 1
        self._start_s = self.end_s
        self.kept = 0
        return folder / f"{recording_stem(header)}.csv"

    def rest(self) -> None:
        self._job = None

    def saved(self) -> tuple[int, int]:
        return self.kept, 0

    def rescue(self, folder: Path) -> Path:
        return folder / "rescued.csv"

    def wait(self) -> None:
        pass

    def stop(self) -> None:
        self.stopped = True

    # ------------------------------------------------------------------ what a test does
    def push(self, torque_nm: np.ndarray, events: tuple[Event, ...] = (), rate_hz: float = 1000.0) -> None:
        time_s = self.end_s + (np.arange(len(torque_nm)) + 1) / rate_hz
        self.end_s = float(time_s[-1])
        self.kept += len(time_s)
        torque_nm = np.asarray(torque_nm, float)
        self._news.append(Samples(time_s, torque_nm, None, events, torque_nm))
        if self._job is not None:
            for pull in self._job.feed(time_s - self._start_s, torque_nm):
                self._news.append(Found(self._stage, self._start_s, pull, self._job))

    def idle(self, seconds: float = 2.0) -> None:
        """The lever is off."""
        self.push(self._simulated((LeverOff(seconds),)))

    def pull(self, **changes) -> None:
        """Somebody pulls."""
        self.push(self._simulated((Rest(1.5), replace(Pull(), dwell_s=2.0, **changes), LeverOff(1.0))))

    def half_a_pull(self, seconds: float = 4.0) -> None:
        """Somebody pulls and has not let go yet."""
        self.push(self._simulated((Rest(1.5), Pull()))[: int(seconds * 1000)])

    def _simulated(self, actions) -> np.ndarray:
        self.made += 1
        return simulated(replace(self.scenario, actions=actions), self.seed * 100 + self.made % 3)

    def lose(self, text: str = "The transducer went away: unplugged or out of range.") -> None:
        self.ended = Ending(EndReason.LOST, text)
        self.state = State.ENDED

    def fail_disk(self) -> None:
        error = OSError(28, "No space left on device")
        self.ended = Ending(EndReason.FAILED, "The disk is full: the recording could not be written further.", error)
        self.state = State.ENDED
