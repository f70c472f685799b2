"""A stream without threads: simulated seconds on demand, pulls read at once, so that a whole job takes a moment."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.verdict.job import Job
from gui.models.practice import scenario_for_practice
from gui.models.relay import FoundPull, News, ScreenSamples
from gui.models.stream import recording_stem
from logger.samples import Ending, EndReason, Event
from logger.stream.health import Health, SessionState
from logger.virtual.hand import HandPull
from logger.virtual.physics import LeverOff, Rest, simulate

if TYPE_CHECKING:
    from pathlib import Path


_SIMULATED: dict[tuple[str, int], tuple[np.ndarray, np.ndarray | None]] = {}


def simulated(scenario, seed: int) -> tuple[np.ndarray, np.ndarray | None]:
    """Simulate once per session: many tests need the same few pulls. Torque, and angle where the scenario has one."""
    key = (repr(scenario), seed)
    if key not in _SIMULATED:
        run = simulate(scenario, seed)
        _SIMULATED[key] = run.torque_nm, run.angle_deg
    return _SIMULATED[key]


class FakeStream:
    """What the bridge needs of a stream; a test pushes the time. With ``with_angle`` the wheel's angle comes along."""

    def __init__(self, scenario=None, seed: int = 5, *, with_angle: bool = False) -> None:
        self.with_angle, self.angle_deg = with_angle, 0.0
        self.practice = None
        self.scenario = scenario or scenario_for_practice()
        self.seed, self.made, self.end_s = seed, 0, 0.0
        self.state, self.ended = SessionState.STREAMING, None
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
    def push(
        self,
        torque_nm: np.ndarray,
        events: tuple[Event, ...] = (),
        rate_hz: float = 1000.0,
        angle_deg: np.ndarray | None = None,
    ) -> None:
        time_s = self.end_s + (np.arange(len(torque_nm)) + 1) / rate_hz
        self.end_s = float(time_s[-1])
        self.kept += len(time_s)
        torque_nm = np.asarray(torque_nm, float)
        self._news.append(ScreenSamples(time_s, torque_nm, angle_deg, events, torque_nm))
        if self._job is not None:
            for pull in self._job.feed(time_s - self._start_s, torque_nm, angle_deg):
                self._news.append(FoundPull(self._stage, self._start_s, pull, self._job))

    def idle(self, seconds: float = 2.0) -> None:
        """The lever is off."""
        self._play((LeverOff(seconds),))

    def pull(self, **changes) -> None:
        """Somebody pulls."""
        self._play((Rest(1.5), replace(HandPull(), dwell_s=2.0, **changes), LeverOff(1.0)))

    def half_a_pull(self, seconds: float = 4.0) -> None:
        """Somebody pulls and has not let go yet."""
        self._play((Rest(1.5), HandPull()), int(seconds * 1000))

    def _play(self, actions, count: int | None = None) -> None:
        self.made += 1
        scenario = replace(self.scenario, actions=actions)
        if self.with_angle:
            scenario = replace(scenario, angle_step_deg=0.1)
        torque, angle = simulated(scenario, self.seed * 100 + self.made % 3)
        if angle is None:
            self.push(torque[:count])
            return
        torque, angle = torque[:count], self.angle_deg + angle[:count]  # the wheel goes on from where it was
        self.angle_deg = float(angle[-1])
        for at in range(0, len(torque), 50):  # as a stream brings it: how far it turned is counted from the load on
            self.push(torque[at : at + 50], angle_deg=angle[at : at + 50])

    def lose(self, text: str = "The transducer went away: unplugged or out of range.") -> None:
        self.ended = Ending(EndReason.LOST, text)
        self.state = SessionState.ENDED

    def fail_disk(self) -> None:
        error = OSError(28, "No space left on device")
        self.ended = Ending(EndReason.FAILED, "The disk is full: the recording could not be written further.", error)
        self.state = SessionState.ENDED
