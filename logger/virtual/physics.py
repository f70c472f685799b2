"""Simulate a held-wheel test: from a scenario and a seed to what the transducer delivers, with the exact truth.

``simulate(scenario, seed)`` runs the actions of a scenario one after the other (``hand.Pull``, ``Rest``, ``LeverOff``,
``Reseat``) through ``drivetrain.march``, works out the torque in the transducer (``lever``), what the transducer makes
of it (``sensor``) and the truth (``truth``). Same scenario, seed and step: the same run, bit for bit.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import cos, pi, radians

import numpy as np
from numpy.typing import NDArray

from logger.virtual.drivetrain import AxleModel, Log, Motion, march
from logger.virtual.hand import Arm, HandPull, Phase
from logger.virtual.lever import LeverModel
from logger.virtual.sensor import SensorModel, deliver
from logger.virtual.truth import Mechanics, Segment, TruePull, spoilt, true_pulls

Floats = NDArray[np.float64]

# Torque, energy and truth have converged at this step to a fraction of a percent (see the tests); half of it doubles
# the time.
STEP_S = 5e-4
# The march goes in stretches of this length, so that rest can be skipped soon after the last swing.
STRETCH_S = 0.25
# A lever that was fitted before the recording began has come to rest in this time.
HANG_S = 2.0
# A pull that has not ended by then is stopped: nobody pulls for five minutes.
LONGEST_PULL_S = 300.0


@dataclass(frozen=True, slots=True)
class Rest:
    """Nobody pulls; things may knock against the lever.

    ``bumps`` are (time from the rest's start, torque, duration) of half-sine knocks, signed.
    """

    duration_s: float = 2.0
    bumps: tuple[tuple[float, float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class LeverOff:
    """Lever and transducer are off the wheel: the transducer shows its true zero."""

    duration_s: float = 2.0


@dataclass(frozen=True, slots=True)
class Reseat:
    """The lever is taken off and put on again at another elevation."""

    start_deg: float
    duration_s: float = 2.0


Action = HandPull | Rest | LeverOff | Reseat


@dataclass(frozen=True, slots=True)
class Scenario:
    """A whole test in the making."""

    # name, about: for lists
    name: str
    about: str
    # axle, lever, sensor: what is tested, with what
    axle: AxleModel
    actions: tuple[Action, ...]  # in order
    lever: LeverModel = field(default_factory=LeverModel)
    sensor: SensorModel = field(default_factory=SensorModel)
    angle_step_deg: float | None = None  # resolution of an angle channel; None: the transducer has none
    recorded_s: tuple[float, float] | None = None  # (from, to) or None; what of it is recorded; None: all


@dataclass(frozen=True, slots=True)
class SimulatedRun:
    """A simulated recording with its truth."""

    # scenario, seed: what it was made from
    scenario: Scenario
    seed: int
    # time_s, torque_nm: shape (n,); as delivered: after filter, noise, clipping and resolution; NaN where the
    # transducer gives no value
    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None  # shape (n,); angle of the wheel as delivered, clockwise positive
    # counter, status: shape (n,); running number of the sample and ``sensor.Status`` bits (without the simulated bit)
    counter: NDArray[np.int64]
    status: NDArray[np.int64]
    zero_nm: Floats  # shape (n,); what the unloaded transducer would read
    mechanics: Mechanics  # everything that truly happened, at full bandwidth
    truth: tuple[TruePull, ...]  # one per loading of the lever, in order
    simulated: bool = True  # always true

    @property
    def duration_s(self) -> float:
        """Length of the run."""
        return self.mechanics.sensor_nm.size * self.mechanics.step_s


def simulate(scenario: Scenario, seed: int = 0, *, step_s: float = STEP_S) -> SimulatedRun:
    """Run a scenario.

    Args:
        scenario: What happens.
        seed: Of everything random: tremor, unevenness, noise.
        step_s: Step of the mechanics; sampling is independent of it.

    Returns:
        Recording and truth.
    """
    hands, noise = (np.random.default_rng(s) for s in np.random.SeedSequence(seed).spawn(2))
    stage = _Stage(scenario, step_s, hands)
    if scenario.actions and not isinstance(scenario.actions[0], LeverOff | Reseat):
        stage.hang()
    for action in scenario.actions:
        stage.perform(action)
    mechanics = stage.mechanics()
    sent = deliver(scenario.sensor, mechanics.sensor_nm, step_s, noise)
    if scenario.recorded_s is not None:
        sent = sent.between(*scenario.recorded_s)
    angle = None
    if scenario.angle_step_deg is not None:
        grid = np.arange(mechanics.wheel_rad.size) * step_s
        angle = np.degrees(np.interp(sent.time_s, grid, mechanics.wheel_rad))
        if scenario.angle_step_deg > 0:
            angle = np.round(angle / scenario.angle_step_deg) * scenario.angle_step_deg
    truth = true_pulls(scenario.axle, scenario.lever.axle_kgm2, mechanics, stage.segments)
    truth = tuple(replace(pull, flags=spoilt(pull, sent, scenario.sensor)) for pull in truth)
    return SimulatedRun(
        scenario, seed, sent.time_s, sent.torque_nm, angle, sent.counter, sent.status, sent.zero_nm, mechanics, truth
    )


class _Stage:
    """Performs actions one after the other and keeps what happened, in pieces."""

    def __init__(self, scenario: Scenario, step_s: float, rng: np.random.Generator) -> None:
        self._axle, self._lever, self._step, self._rng = scenario.axle, scenario.lever, step_s, rng
        self._state = Motion()
        self._seat_rad = radians(scenario.lever.start_deg)  # elevation of the lever at wheel angle zero
        self._pieces: list[tuple[Floats, ...]] = []
        self._count = 0
        self._fitted = False  # whether the lever hangs on the wheel and has come to rest there
        self._travel_rad = [0.0, 0.0]  # slip of each pack so far
        self.segments: list[Segment] = []

    def perform(self, action: Action) -> None:
        if isinstance(action, HandPull):
            self._pull(action)
        elif isinstance(action, Rest):
            self._rest(action)
        elif isinstance(action, LeverOff):
            self._still(action.duration_s, fitted=False)
        else:
            self._still(action.duration_s, fitted=False)
            self._seat_rad = radians(action.start_deg) + self._state.angle[0]
            self._settle(0.5)

    def hang(self) -> None:
        """Let the lever, fitted before the recording began, come to rest; nothing of it is kept."""
        steps = round(HANG_S / self._step)
        self._state, _ = march(
            self._axle, self._state, steps, self._step, lambda *_: (0.0, 0.0), self._load, self._lever.axle_kgm2
        )
        self._fitted = True

    def _worn(self) -> AxleModel:
        """Give the axle with its packs run in as far as they have slipped."""
        axle, travel = self._axle, self._travel_rad
        driven, other = axle.driven_pack.after(travel[0]), axle.other_pack.after(travel[1])
        return replace(axle, driven_pack=driven, other_pack=other)

    def _load(self, wheel_rad: float) -> float:
        return self._lever.weight_axle_nm(self._seat_rad - wheel_rad)

    def _pull(self, pull: HandPull) -> None:
        axle, step = self._worn(), self._step
        arm = Arm(pull, axle.stiffness_nm_rad, step, self._state.angle[0], self._rng, axle.shaft_lash_rad)
        first, done = self._count, 0
        stretch = round(STRETCH_S / step)
        while not arm.done and done * step < LONGEST_PULL_S:
            self._state, log = march(axle, self._state, stretch, step, arm, self._load, self._lever.axle_kgm2)
            self._keep(log, arm.phases[-stretch:])
            done += stretch
        phases = np.asarray(arm.phases, dtype=np.int8)
        off = np.flatnonzero(phases == Phase.OFF)
        self.segments.append(Segment(pull, first, first + (int(off[0]) if off.size else phases.size)))
        self._settle(pull.dwell_s)

    def _rest(self, rest: Rest) -> None:
        if not rest.bumps:
            self._settle(rest.duration_s)
            return
        step = self._step

        def knocks(index: int, _angle: float, _speed: float) -> tuple[float, float]:
            time, total = index * step, 0.0
            for at, torque, duration in rest.bumps:
                if at <= time < at + duration:
                    total += torque * (0.5 - 0.5 * cos(2 * pi * (time - at) / duration))
            return total, 0.0

        busy = round((max(at + duration for at, _, duration in rest.bumps) + STRETCH_S) / step)
        self._state, log = march(self._axle, self._state, busy, step, knocks, self._load, self._lever.axle_kgm2)
        self._keep(log, [Phase.OFF] * busy)
        self._settle(rest.duration_s - busy * step)

    def _settle(self, duration_s: float) -> None:
        """Let everything come to rest; the remaining time is only waited for."""
        left = round(duration_s / self._step)
        while left > 0 and not (self._fitted and self._state.at_rest):
            steps = min(left, round(STRETCH_S / self._step))
            self._state, log = march(
                self._axle, self._state, steps, self._step, lambda *_: (0.0, 0.0), self._load, self._lever.axle_kgm2
            )
            self._keep(log, [Phase.OFF] * steps)
            self._fitted = True
            left -= steps
        self._still(left * self._step, fitted=True)

    def _still(self, duration_s: float, *, fitted: bool) -> None:
        """Nothing moves."""
        steps = round(duration_s / self._step)
        if steps <= 0:
            return
        self._state = self._state.rested(duration_s)
        self._fitted = fitted
        tw, tr, tc, ts, _ = self._state.angle
        values = (tw, 0.0, 0.0, tr - tc, ts - tc, tc, 0.0, 0.0, 0.0, 0.0)
        self._append([np.full(steps, value) for value in values], np.full(steps, Phase.OFF), fitted=fitted)

    def _keep(self, log: Log, phases: Sequence[int]) -> None:
        columns = [getattr(log, name) for name in Log.__dataclass_fields__]
        for side, slip in enumerate((columns[3], columns[4])):
            self._travel_rad[side] += float(np.abs(np.diff(slip)).sum())
        self._append(columns, np.asarray(phases), fitted=True)

    def _append(self, columns: list[Floats], phases: NDArray[np.int_], *, fitted: bool) -> None:
        size = phases.size
        seat = np.full(size, self._seat_rad if fitted else np.nan)
        self._pieces.append((*columns, phases.astype(np.float64), seat))
        self._count += size

    def mechanics(self) -> Mechanics:
        """Join the pieces, and work out what the transducer feels."""
        wheel, speed, acceleration, driven, other, case, hand, driven_nm, other_nm, held, phase, seat = (
            np.concatenate(column) for column in zip(*self._pieces, strict=True)
        )
        lever, step = self._lever, self._step
        elevation = seat - wheel
        fitted = np.isfinite(seat)
        angle = np.where(fitted, elevation, 0.0)
        sensor = hand / lever.factor + lever.weight_sensor_nm(angle) - lever.sensor_kgm2 * acceleration
        axle = hand + lever.weights_axle_nm(angle) - lever.axle_kgm2 * acceleration
        return Mechanics(
            step, wheel, speed, acceleration, elevation, driven, other, case, hand, driven_nm, other_nm, held,
            np.where(fitted, sensor, 0.0), np.where(fitted, axle, 0.0), phase.astype(np.int8),
        )  # fmt: skip
