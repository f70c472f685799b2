"""A trace as it arrives: time made usable, bad values taken out and counted, nothing guessed silently.

Conventions:
- Times are seconds on any origin, torques N·m, signed: clockwise seen from outside the car is positive.
- A known gain (reading / true) is divided out here, once; everything behind this module sees true torque.
- ``Intake`` takes blocks of any size and gives the same samples however a stream is cut.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Ints = NDArray[np.intp]
Columns = tuple[Floats, Floats, Floats | None]

CLOCK_STEP_S = 1.0
"""A time that lies further back than this is a clock that was set back, less is a late or repeated sample (s)."""

POSSIBLE_NM = 1e6
"""No hand, no axle and no wrench comes near this torque (N·m): a value beyond it is no reading."""

POSSIBLE_S = 1e11
"""Times beyond this (s, three thousand years) are no times; seconds since 1970 lie far below."""

POSSIBLE_GAIN = (0.1, 10.0)
"""A gain outside is a slip of unit, which no calibration may hide."""

SPIKE_SLOPES = 3.0
"""A spike stands out this many times further than the steps beside it: a real peak, even at ten readings a second,
has flanks as steep as itself."""

SPIKE_NOISES = 8.0
"""... and this many noise deviations, so that plain noise is kept."""


@dataclass(frozen=True, slots=True)
class Sensor:
    """What is known of the transducer; None means not known."""

    capacity_nm: float | None = None  # rated capacity, as read (N·m)
    resolution_nm: float | None = None  # smallest step of the reading (N·m)
    accuracy_percent_of_reading: float | None = None  # stated accuracy (%), taken as a 95 % interval
    gain: float | None = None  # reading / true, from a calibration; divided out
    gain_u: float | None = None  # standard uncertainty of ``gain``
    # delay_s, delay_s_u: delay of the transducer's filter, and its standard uncertainty (s)
    delay_s: float | None = None
    delay_s_u: float | None = None

    def __post_init__(self) -> None:
        for name in ("capacity_nm", "resolution_nm", "accuracy_percent_of_reading", "gain_u", "delay_s", "delay_s_u"):
            value = getattr(self, name)
            if value is not None and not 0 <= value <= POSSIBLE_NM:
                raise InputError(f"The transducer's {name} is {value}: give a positive number, or leave it out.")
        if self.gain is not None and not POSSIBLE_GAIN[0] <= self.gain <= POSSIBLE_GAIN[1]:
            raise InputError(f"The transducer's gain (reading / true) is {self.gain}: give a number near 1.")

    @property
    def relative_u(self) -> float:
        """Relative standard uncertainty that all readings of this transducer share (0 where nothing is stated).

        A gain whose own uncertainty is stated replaces the accuracy; one without it does not.
        """
        if self.gain is not None and self.gain_u is not None:
            return self.gain_u / self.gain
        return (self.accuracy_percent_of_reading or 0.0) / 100 / 1.96


@dataclass(frozen=True, slots=True)
class Samples:
    """Usable samples: time increases strictly, torque is finite and true (gain divided out)."""

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None = None

    def __len__(self) -> int:
        return len(self.time_s)


@dataclass(slots=True)
class Repairs:
    """What was taken out or put right, and how often."""

    samples: int = 0
    not_a_number: int = 0
    time_not_finite: int = 0
    same_stamp: int = 0
    late: int = 0
    clock_back: list[float] = field(default_factory=list)

    def problems(self) -> list[str]:
        """Give one line per kind of fault found."""
        lines = []
        if self.not_a_number:
            lines.append(f"{self.not_a_number} of {self.samples} torque values are not numbers and were excluded")
        if self.time_not_finite:
            lines.append(f"{self.time_not_finite} samples have no usable time and were excluded")
        if self.same_stamp:
            lines.append(
                f"{self.same_stamp} samples share a time stamp with the one before; they were spread over the time "
                "since the stamp before: record the device's sample counter if it has one"
            )
        if self.late:
            lines.append(f"{self.late} samples came late or twice (their time had passed) and were excluded")
        if self.clock_back:
            lines.append(
                f"the clock was set back {len(self.clock_back)} times (first at {self.clock_back[0]:.3f} s); "
                "times after that are counted on from the sample before"
            )
        return lines


class Intake:
    """Turns raw blocks into ``Samples``; the same samples come out however a stream is cut into blocks."""

    def __init__(self, sensor: Sensor) -> None:
        self.counts = Repairs()
        self._gain = 1.0 if sensor.gain is None else sensor.gain
        self._shift_s = 0.0  # added to all times since the clock was set back
        self._shifts: list[tuple[float, float]] = []  # since when, and how much
        self._stamp_s = -np.inf  # the last stamp that is dealt with
        self._spacing_s = np.inf  # between the samples of the last group
        self._held: Columns = (np.empty(0), np.empty(0), None)

    def feed(self, time_s: ArrayLike, torque_nm: ArrayLike, angle_deg: ArrayLike | None = None) -> Samples:
        """Take the next block; its last group of equal stamps is held back, since the next block may continue it.

        Args:
            time_s, torque_nm: shape (n,)
            angle_deg: shape (n,)

        Raises:
            InputError: If the arrays are not columns of one length.
        """
        t, y, a = _as_columns(time_s, torque_nm, angle_deg)
        self.counts.samples += len(t)
        if not _within(t, POSSIBLE_S):
            usable = np.abs(t) < POSSIBLE_S  # not so for NaN and infinity
            self.counts.time_not_finite += int(len(t) - usable.sum())
            t, y, a = _take((t, y, a), usable)
        t, y, a = _join(self._held, (t, y, a))
        if not len(t):
            return Samples(t, y, a)
        whole = _last_group(t)
        self._held = _take((t, y, a), slice(whole, None))
        return self._usable(*_take((t, y, a), slice(whole)))

    def finish(self) -> Samples:
        """Give what is still held."""
        held, self._held = self._held, (np.empty(0), np.empty(0), None)
        return self._usable(*held)

    def as_written(self, time_s: float) -> float:
        """Give a time as the stamps said it: after a clock was set back, times are counted on from before."""
        shift = next((shift for since, shift in reversed(self._shifts) if time_s > since), 0.0)
        return time_s - shift

    @property
    def clock_set(self) -> bool:
        """Whether a clock was set back: only then do times differ from the stamps."""
        return bool(self._shifts)

    def _usable(self, t: Floats, y: Floats, a: Floats | None) -> Samples:
        if len(t) and not (t[0] + self._shift_s > self._stamp_s and bool((t[1:] > t[:-1]).all())):
            t, y, a = self._in_order(t, y, a)
        elif len(t):
            t = t + self._shift_s if self._shift_s else t
            before = self._stamp_s if len(t) == 1 else t[-2]
            self._stamp_s, self._spacing_s = float(t[-1]), float(t[-1] - before)
        if not _within(y, POSSIBLE_NM):
            good = np.abs(y) < POSSIBLE_NM
            self.counts.not_a_number += int(len(y) - good.sum())
            t, y, a = _take((t, y, a), good)
        return Samples(t, y if self._gain == 1.0 else y / self._gain, a)

    def _in_order(self, t: Floats, y: Floats, a: Floats | None) -> Columns:
        """Deal with equal stamps and steps back, one group of equal stamps after the other."""
        starts = np.concatenate([[0], np.flatnonzero(np.diff(t)) + 1, [len(t)]])
        out, keep = np.array(t), np.ones(len(t), bool)
        stamp, spacing = self._stamp_s, self._spacing_s
        for i, j in zip(starts[:-1].tolist(), starts[1:].tolist(), strict=True):
            now = t[i] + self._shift_s
            if stamp - now > CLOCK_STEP_S:
                self.counts.clock_back.append(float(t[i]))
                step = spacing if np.isfinite(spacing) else 0.0
                self._shift_s += stamp + step * (j - i) - now
                now = t[i] + self._shift_s
                self._shifts.append((float(stamp), self._shift_s))
            if now <= stamp:  # late or repeated
                keep[i:j] = False
                self.counts.late += j - i
                continue
            own = (now - stamp) / (j - i)
            apart = min(own, 2 * spacing)  # after a gap the samples belong together, not all over it
            if np.isinf(apart):  # the very first group: nothing says how far apart its samples are
                keep[i : j - 1] = False
                self.counts.late += j - 1 - i
            else:
                out[i:j] = now - apart * np.arange(j - i - 1, -1, -1)
                self.counts.same_stamp += j - i - 1
            out[j - 1], stamp, spacing = now, now, own
        self._stamp_s, self._spacing_s = stamp, spacing
        return _take((out, y, a), keep)


def _as_columns(time_s: ArrayLike, torque_nm: ArrayLike, angle_deg: ArrayLike | None) -> Columns:
    t = np.asarray(time_s, float)
    y = np.asarray(torque_nm, float)
    a = None if angle_deg is None else np.asarray(angle_deg, float)
    if t.ndim != 1 or t.shape != y.shape or (a is not None and a.shape != t.shape):
        shapes = f"time {t.shape}, torque {y.shape}" + ("" if a is None else f", angle {a.shape}")
        raise InputError(f"Time, torque and angle must be columns of one length; they are {shapes}.")
    return t, y, a


def _within(values: Floats, limit: float) -> bool:
    """Whether all values are numbers within a limit: without intermediate arrays."""
    return not len(values) or bool(-limit < values.min() and values.max() < limit)


def _last_group(stamps: Floats) -> int:
    """Give where the last group of equal stamps begins: mostly it is one stamp."""
    if len(stamps) > 1 and stamps[-2] != stamps[-1]:
        return len(stamps) - 1
    other = np.flatnonzero(stamps != stamps[-1])
    return int(other[-1]) + 1 if len(other) else 0


def _take(columns: Columns, which: slice | Bools) -> Columns:
    t, y, a = columns
    return t[which], y[which], None if a is None else a[which]


def _join(first: Columns, second: Columns) -> Columns:
    if not len(first[0]):
        return second
    a = None if first[2] is None or second[2] is None else np.concatenate([first[2], second[2]])
    return np.concatenate([first[0], second[0]]), np.concatenate([first[1], second[1]]), a


def spikes(torque_nm: Floats, noise_nm: float) -> Ints:
    """Find single samples that no torque can explain: far from both neighbours, which agree with each other.

    Args:
        torque_nm: shape (n,)
        noise_nm: Standard deviation of the reading at rest.

    Returns:
        ndarray of int: Their indices; the first and last two samples are never among them.
    """
    y = torque_nm
    steps = np.diff(y)
    sudden = np.abs(steps) > SPIKE_NOISES * noise_nm
    at = np.flatnonzero(sudden[1:-2] & sudden[2:-1]) + 2
    if not len(at):
        return at
    at = at[(steps[at - 1] > 0) != (steps[at] > 0)]
    stands_out = np.minimum(np.abs(steps[at - 1]), np.abs(steps[at]))
    beside = np.maximum.reduce([np.abs(steps[at - 2]), np.abs(steps[at + 1]), np.abs(y[at + 1] - y[at - 1])])
    return np.asarray(at[stands_out > SPIKE_SLOPES * beside + SPIKE_NOISES * noise_nm])
