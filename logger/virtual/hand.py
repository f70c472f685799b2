"""The person at the lever: a springy arm that ramps, feels the slip, turns on, trembles, errs and lets go.

Conventions:
- Everything in the direction of the pull; ``direction`` +1 is clockwise. Torque N·m about the axle, angle rad, time s
  from the action's start.
- The hand is a spring and a damper between the lever and a point that the person moves: slowly while the torque rises,
  at turning speed once the lever has been felt to move. It pushes; it never pulls back.

Sizes: arm and lever 500-1500 N·m/rad (with a wheel fitted the whole swings at 3-6 Hz), physiological tremor 7-12 Hz,
reaction to a felt movement 0.15-0.3 s; common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from math import cos, pi
from typing import TYPE_CHECKING, Literal

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

# A lever that moves this fast, or has moved this far beyond its wind-up, is felt to have broken away.
FELT_RAD_S, FELT_RAD = 0.12, 0.06
# How long a hand that eases off takes, as a share of the pause it makes.
EASE_SHARE = 0.35
# While the torque is raised the hand follows a yielding lever with this lag: people push on, they do not stand still.
FOLLOW_S = 0.12
# The hand's point comes up to turning speed within this time: nobody starts at full speed.
PICK_UP_S = 0.2
# ... and stops within this: letting go is no brake.
STOP_S = 0.15
# Length of a noise that repeats: 16 s at the usual step of 0.5 ms, longer than most pulls.
NOISE_POINTS = 1 << 15


class Phase(IntEnum):
    """What the hand is doing; the truth of a pull depends on it."""

    OFF = 0
    RAMP = 1
    TURN = 2  # fully on
    UPSET = 3  # yank, hesitation, re-grip
    RELEASE = 4


@dataclass(frozen=True, slots=True)
class HandPull:
    """One loading of the lever."""

    direction: Literal[1, -1] = 1  # +1 or -1; clockwise or anticlockwise
    ramp_nm_s: float = 25.0  # rate of the torque before slip
    # (float, float); turning speeds one after the other, each with its duration in seconds; one for a hand, several for
    # a drive
    turn_rad_s: tuple[tuple[float, float], ...] = ((0.5, 4.0),)
    # stiffness_nm_rad, damping_nms: of arm and lever
    stiffness_nm_rad: float = 900.0
    damping_nms: float = 12.0
    react_s: float = 0.2  # from felt movement to turning on
    tremor: float = 0.006  # standard deviation of the tremor as a share of the torque
    wander: float = 0.06  # standard deviation of the turning speed as a share of it
    release_s: float = 0.3  # how long letting go takes
    dwell_s: float = 4.0  # rest after this pull
    strength_nm: float = 600.0  # torque at which the person gives up
    stop_nm: float = 0.0  # torque at which an aborted loading or a hold stops rising; 0: it goes on until slip
    hold_s: float = 0.0  # how long a torque below slip is held
    yanks: tuple[tuple[float, float, float], ...] = ()  # (time after slip, torque, duration); Jerks while turning
    hesitations: tuple[tuple[float, float], ...] = ()  # (torque, pause); stops on the way up
    regrips: tuple[tuple[float, float], ...] = ()  # (time after slip, pause); the hand eases off and takes hold again


def band_noise(step_s: float, low_hz: float, high_hz: float, rng: np.random.Generator) -> NDArray[np.float64]:
    """Give ``NOISE_POINTS`` points of noise of unit standard deviation in a frequency band; it repeats seamlessly."""
    frequency = np.fft.rfftfreq(NOISE_POINTS, step_s)
    spectrum = rng.standard_normal(frequency.size) + 1j * rng.standard_normal(frequency.size)
    spectrum[(frequency < low_hz) | (frequency > high_hz)] = 0
    noise = np.fft.irfft(spectrum, NOISE_POINTS)
    return np.asarray(noise / noise.std())


class Arm:
    """A ``HandPull`` in the making: gives the hand's torque step by step.

    Args:
        pull: What the person means to do.
        train_nm_rad: Stiffness of the axle as felt at the wheel; the person moves just fast enough for the meant ramp.
        step_s: Step length.
        angle_rad: Of the wheel when the hand takes hold.
        rng: Tremor and unevenness.
        play_rad: Play of the axle: the person does not take its going for slip.
    """

    def __init__(
        self,
        pull: HandPull,
        train_nm_rad: float,
        step_s: float,
        angle_rad: float,
        rng: np.random.Generator,
        play_rad: float = 0.0,
    ) -> None:
        self._pull, self._step = pull, step_s
        self._sign = float(pull.direction)
        self._compliance, self._play = 1 / train_nm_rad, play_rad
        self._creep = pull.ramp_nm_s / pull.stiffness_nm_rad
        self._lag = step_s / FOLLOW_S
        self._followed = 0.0
        self._tremor = (pull.tremor * band_noise(step_s, 7.0, 12.0, rng) + 1.0).tolist()
        self._wander = (pull.wander * band_noise(step_s, 0.15, 1.5, rng) + 1.0).tolist()
        self._point = self._start = self._sign * angle_rad
        self._speed = 0.0
        self._felt_s = self._held_s = self._eased_s = -1.0
        self._turn_start_s = -1.0
        self._release_s = -1.0
        self._last_nm = 0.0
        self._regrips = list(pull.regrips)
        self._hesitations = list(pull.hesitations)
        self._ease_pause, self._ease_to = 0.0, 1.0
        self._turns = list(pull.turn_rad_s)
        self._turning_s = sum(duration for _, duration in self._turns)
        self.phase = Phase.RAMP
        self.phases: list[int] = []

    @property
    def done(self) -> bool:
        """Whether the hand is off for good."""
        return self.phase == Phase.OFF

    def __call__(self, _step: int, angle_rad: float, speed_rad_s: float) -> tuple[float, float]:
        """Give ``(torque, damping)`` of the hand at the next step; signed in the wheel's coordinate."""
        phase, step = self.phase, len(self.phases)
        self.phases.append(phase)
        if phase == Phase.OFF:
            return 0.0, 0.0
        time_s = step * self._step
        moved, speed = self._sign * angle_rad, self._sign * speed_rad_s
        grip = self._intend(phase, time_s, moved, speed)
        self._point += self._step * self._speed
        pull = self._pull
        torque = pull.stiffness_nm_rad * (self._point - moved) + pull.damping_nms * self._speed
        push = torque - pull.damping_nms * speed
        self._last_nm = push
        if push <= 0.0:
            self._point = max(self._point, moved)
            return 0.0, 0.0
        grip *= self._tremor[step % NOISE_POINTS]
        jerk = self._jerk(time_s) if pull.yanks else 0.0
        if jerk:
            self.phases[-1] = Phase.UPSET
        return self._sign * (grip * torque + jerk), grip * pull.damping_nms

    def _intend(self, phase: int, time_s: float, moved: float, speed: float) -> float:
        """Decide what to do next; give the share of the grip that is on."""
        if phase == Phase.RAMP:
            self._ramp(time_s, moved, speed)
            return 1.0
        if phase == Phase.TURN:
            self._turn(time_s)
            return 1.0
        if phase == Phase.UPSET:
            return self._ease(time_s, moved)
        share = (time_s - self._release_s) / self._pull.release_s
        self._slow_down()
        if share >= 1.0:
            self.phase = Phase.OFF
            return 0.0
        return 0.5 + 0.5 * cos(pi * share)

    def _ramp(self, time_s: float, moved: float, speed: float) -> None:
        pull = self._pull
        self._followed += self._lag * (max(speed, 0.0) - self._followed)
        self._speed = self._creep + self._followed
        if self._felt_s >= 0.0:
            if time_s - self._felt_s >= pull.react_s:
                self.phase = Phase.TURN
                if self._turn_start_s < 0:
                    self._turn_start_s = time_s
            return
        if self._hesitations and self._last_nm >= self._hesitations[0][0]:
            self._begin_easing(time_s, self._hesitations.pop(0)[1], 1.0)
        elif pull.stop_nm and self._last_nm > 0.6 * pull.stop_nm:
            self._approach(time_s)
        elif self._last_nm > pull.strength_nm:
            self._let_go(time_s)
        elif self._slips(moved - self._start, speed):
            self._felt_s = time_s

    def _slips(self, moved: float, speed: float) -> bool:
        beyond = moved - self._play
        return beyond > FELT_RAD + self._last_nm * self._compliance or (speed > FELT_RAD_S and beyond >= 0.0)

    def _approach(self, time_s: float) -> None:
        """Near a torque that is not to be exceeded the rise fades, then holds, then lets go."""
        left = max(0.0, 1.0 - self._last_nm / self._pull.stop_nm)
        self._speed = self._creep * min(1.0, 2.5 * left)
        if left < 0.03 and self._held_s < 0:
            self._held_s = time_s
        if self._held_s >= 0 and time_s - self._held_s >= self._pull.hold_s:
            self._let_go(time_s)

    def _turn(self, time_s: float) -> None:
        since = time_s - self._turn_start_s
        if since >= self._turning_s:
            self._let_go(time_s)
            return
        wanted, end = 0.0, 0.0
        for speed, duration in self._turns:
            wanted, end = speed, end + duration
            if since < end:
                break
        wanted *= self._wander[int(time_s / self._step) % NOISE_POINTS]
        self._speed += (wanted - self._speed) * self._step / PICK_UP_S
        if self._regrips and since >= self._regrips[0][0]:
            self._begin_easing(time_s, self._regrips.pop(0)[1], 0.1)

    def _begin_easing(self, time_s: float, pause_s: float, to_share: float) -> None:
        self._eased_s, self._ease_pause, self._ease_to = time_s, pause_s, to_share
        self.phase = Phase.UPSET

    def _ease(self, time_s: float, moved: float) -> float:
        """Stand still on the way up, or ease off and take hold again from where the lever is."""
        self._slow_down()
        share = (time_s - self._eased_s) / self._ease_pause
        if share < 1.0:
            return 1.0 - (1.0 - self._ease_to) * min(1.0, share / EASE_SHARE)
        if self._ease_to < 1.0:
            self._point = moved + self._ease_to * max(self._point - moved, 0.0)
            self._start, self._felt_s, self._followed = moved, -1.0, 0.0
        self.phase = Phase.RAMP
        return 1.0

    def _slow_down(self) -> None:
        self._speed -= self._speed * self._step / STOP_S

    def _jerk(self, time_s: float) -> float:
        """Torque of the yanks now, in the direction of the pull."""
        if self._turn_start_s < 0:
            return 0.0
        since = time_s - self._turn_start_s
        total = 0.0
        for at, torque, duration in self._pull.yanks:
            if 0.0 <= since - at < duration:
                total += torque * 0.5 * (1.0 - cos(2 * pi * (since - at) / duration))
        return total

    def _let_go(self, time_s: float) -> None:
        self._release_s = time_s
        self.phase = Phase.RELEASE
