"""A virtual transducer with a hand that pulls when asked: for a first look, for practice, for tests.

Everything it sends is simulated and says so in its bytes. While nobody pulls, the lever is off and the transducer shows
its zero; a pull puts the lever on, loads it, turns, lets go and takes it off again.
"""

from __future__ import annotations

import threading
import time
from collections import deque
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from logger.header import Axle, JobFacts, Lever, Limit, Test
from logger.samples import Chunk

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from gui.models.job import JobCard
    from logger.decoder.description import Description
    from logger.samples import Floats
    from logger.virtual.physics import Action, Scenario, SimulatedRun

FRAME = 20  # samples per frame: 20 ms at 1 kHz
AHEAD_S = 0.3  # how far idle time is prepared
PRACTICE = "Virtual transducer"
SWING_HZ = 0.9  # a weight on a short strap
PULLS, DWELL_S = 3, 4.0  # a short practice: three pulls, a short rest


@dataclass(frozen=True, slots=True)
class HandWish:
    """What the practice hand does next: a pull with the other side held, or a slow turn with both wheels free."""

    drag: bool = False


class PracticeLink:
    """A link whose device is simulated as it goes.

    Args:
        scenario: Axle, lever and transducer; its actions are not used.
        seed: Of everything random.
        speed: How many seconds of test per second.
    """

    def __init__(self, scenario: Scenario, seed: int = 1, speed: float = 1.0) -> None:
        self._scenario, self._seed, self._speed = scenario, seed, speed
        self._pieces: deque[tuple[float, bytes]] = deque()
        self._ready: deque[SimulatedRun] = deque()
        self._end_s, self._count, self._made = 0.0, 0, 0
        self._open_at: float | None = None
        self._pull_ends_s: float | None = None
        self._idle: SimulatedRun | None = None
        self._hung = 0.0, 0.0, 0  # N·m before, N·m now, since which sample
        self.lost = False  # a test, or the user, pulls the plug
        self.busy = threading.Event()  # a pull is asked for or under way

    @property
    def name(self) -> str:
        """What the user calls it."""
        return f"{PRACTICE} (simulated)"

    @property
    def description(self) -> Description:
        """How its bytes are laid out."""
        from logger.virtual.device import VirtualDevice

        return VirtualDevice(self._idle_run(), "frame", samples=FRAME).description

    def ask(self, wish: HandWish) -> None:
        """Let the hand pull; it is simulated in a thread of its own and begins as soon as it is ready."""
        if self.busy.is_set():
            return
        self.busy.set()
        threading.Thread(target=self._simulate, args=(wish,), name="practice hand", daemon=True).start()

    def hang(self, torque_nm: float) -> None:
        """Hang another weight on the arm, or none: it swings a little and comes to rest."""
        if torque_nm != self._hung[1]:
            self._hung = self._hung[1], torque_nm, self._count

    def _weight(self, count: NDArray[np.int_]) -> Floats:
        """Give the torque of what hangs, shape (n,), at these samples."""
        before, now, since = self._hung
        time_s = np.maximum(0.0, (count - since) / self._scenario.sensor.rate_hz)
        swing: Floats = (
            1.0 - np.exp(-time_s / 0.15) + 0.1 * np.exp(-time_s / 0.6) * np.sin(2 * np.pi * SWING_HZ * time_s)
        )
        level: Floats = before + (now - before) * swing
        return level

    def _simulate(self, wish: HandWish) -> None:
        from logger.virtual.hand import HandPull
        from logger.virtual.physics import LeverOff, Rest

        self._made += 1
        hand: tuple[Action, ...] = (Rest(1.2), replace(HandPull(), dwell_s=0.8), LeverOff(0.3))
        scenario = self._scenario
        if wish.drag:
            scenario = free_of(scenario)
            slow = replace(HandPull(), ramp_nm_s=12.0, turn_rad_s=((0.6, 6.0),), dwell_s=0.8)
            hand = (Rest(1.2), slow, LeverOff(0.3))
        self._ready.append(self._run(scenario, hand, self._made))

    def _run(self, scenario: Scenario, actions: tuple[Action, ...], number: int) -> SimulatedRun:
        from logger.virtual.physics import simulate

        return simulate(replace(scenario, actions=actions), self._seed * 1000 + number)

    def _idle_run(self) -> SimulatedRun:
        if self._idle is None:
            from logger.virtual.physics import LeverOff

            self._idle = self._run(self._scenario, (LeverOff(4.0),), 0)
        return self._idle

    # ------------------------------------------------------------------ link
    async def open(self) -> None:
        """Start the device's time."""
        from logger.errors import LinkError

        if self.lost:
            raise LinkError(f"{self.name}: does not answer; is it switched on?")
        if self._open_at is None:
            self._open_at = time.monotonic()

    async def read(self) -> list[Chunk]:
        """Give what is due."""
        import asyncio

        from logger.errors import LinkLost

        while True:
            if self.lost:
                raise LinkLost(f"{self.name}: has gone away")
            now = (time.monotonic() - (self._open_at or 0.0)) * self._speed
            self._prepare(now)
            if self._pull_ends_s is not None and now > self._pull_ends_s:
                self._pull_ends_s = None
                self.busy.clear()
            due = []
            while self._pieces and self._pieces[0][0] <= now:
                due.append(self._pieces.popleft()[1])
            if due:
                arrival = time.monotonic()
                return [Chunk(arrival, data) for data in due]
            await asyncio.sleep(0.01)

    async def write(self, data: bytes) -> None:
        """Take nothing: it has no commands."""

    async def close(self) -> None:
        """Stay ready to be opened again."""

    def _prepare(self, now: float) -> None:
        while self._end_s < now + AHEAD_S * max(1.0, self._speed / 4):
            if self._ready:
                self._queue(self._ready.popleft(), None)
                self._pull_ends_s = self._end_s
            else:
                self._queue(self._idle_run(), 0.2)

    def _queue(self, run: SimulatedRun, length_s: float | None) -> None:
        """Send a run (its first ``length_s``) after everything that is queued, counter and time going on."""
        from logger.virtual.device import VirtualDevice

        rate = run.scenario.sensor.rate_hz
        samples = len(run.time_s) if length_s is None else round(length_s * rate)
        samples -= samples % FRAME
        first = (
            0 if length_s is None else int(np.random.default_rng(self._count).integers(0, len(run.time_s) - samples))
        )
        part = slice(first, first + samples)
        count = np.arange(samples) + self._count
        sent = replace(
            run,
            time_s=(count + 1) / rate,
            torque_nm=run.torque_nm[part] + self._weight(count),
            angle_deg=None if run.angle_deg is None else run.angle_deg[part],
            counter=count,
            status=run.status[part],
            zero_nm=run.zero_nm[part],
        )
        self._pieces.extend(VirtualDevice(sent, "frame", samples=FRAME))
        self._count += samples
        self._end_s = self._count / rate


def free_of(scenario: Scenario) -> Scenario:
    """Give the same axle with nothing held: the drag of both wheels."""
    return replace(scenario, axle=replace(scenario.axle, held="none"))


def scenario_for_practice() -> Scenario:
    """Give a sound axle with a lever on one stud."""
    from logger.virtual.lever import LeverModel as VirtualLever
    from logger.virtual.scenarios import scenario

    lever = VirtualLever(length_m=0.45, mass_kg=1.2, centroid_m=0.2, stud_radius_m=0.05715, start_deg=20.0)
    return replace(scenario("healthy"), lever=lever)


def fill_card(card: JobCard, link: PracticeLink) -> None:
    """Fill a job card for practice: an invented car of the club's workshop, an invented limit that says so."""
    card.put(
        job=JobFacts(vehicle="Practice car", customer="Hill-climb club", number="practice"),
        axle=Axle(type="clutch plate"),
        photos=(),
        test=Test(place="car", held="other side", gear="neutral", side="right"),
        lever=Lever(
            fixture="one stud",
            name="practice lever",
            length_mm=450.0,
            stud_circle_mm=114.3,
            studs=5,
            angle_deg=0.0,
            weight_kg=1.2,
            centroid_mm=200.0,
            start_angle_deg=20.0,
        ),
        limit=Limit(
            quantity="breakaway",
            kind="min",
            lower=46.0,
            unit="N·m",
            source="invented for practice, no manual",
            name="practice limit",
            place="car",
            held="other side",
            gear="neutral",
        ),
        description=link.description,
        address="",
        pulls_wanted=PULLS,
        dwell_s=DWELL_S,
        practice=True,
    )
