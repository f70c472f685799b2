"""A load on the lever as it is worked with: turned to positive, spikes out, and told from a lever that hangs.

Offered: ``Window``, ``Load``, ``turned``, ``hangs_still``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.angle import plausible_angle
from analysis.trace.smooth import block_means, quantile, sample_noise, thin
from analysis.trace.traces import Floats, Samples, Sensor, spikes

if TYPE_CHECKING:
    from analysis.trace.traces import Ints

STILL_NOISES = 3.0
"""A load as still as this many times the noise at rest is the lever's weight: no hand and no pack is so still ..."""

STILL_SHAKE = 0.001
"""... nor as still as this share of the load, where the noise allows to see that; tremor is three times as much ..."""

STILL_SPREAD = 0.02
"""... and over its middle it keeps within this share of the load, where packs wander and levers do not ..."""

STILL_BLOCK_S = 0.025
"""... seen in blocks of this length (s): a quarter period of the tremor."""

PLACED_S = 0.5
"""A lever is put on or turned over within this time (s), a pull takes longer to its slip."""

LANDED_SHAKE, LANDED_PARTS = 0.002, 5
"""A lever that landed swings by less than this share of its weight, half of the least tremor of a hand, in one of so
many parts of the time that it hangs, the first excluded."""

LANDS_BLOCKS, LANDS_LEAST, LANDS_SHARE = 4, 3, 0.6
"""A lever that is put down lands at once: so many blocks (or as many readings as fall into their time, so many at
least) make more than this share of its rise. The quickest hand takes three times as long (0.3 s)."""

STILL_SHARE = 0.10
"""Below this share of the capacity a lever's weight is likelier than a pull so still, whatever the noise."""

QUARTER = 0.25
"""A ramp is under way at this share of the pull's level, however the lever hung before."""

COARSEST = 0.05
"""A gauge that is asked too seldom to show its step has at most this share of the torque for one."""

AT_LIMIT = 0.95
"""No lever weighs as much as this share of the capacity, and a transducer at its limit is as still as one at rest."""

LEAST_SAMPLES = 4
"""Fewer samples are no load."""


@dataclass(frozen=True, slots=True)
class Window:
    """A span with the rest before it: ``first`` and ``last`` are the span's samples within the window."""

    samples: Samples
    first: int
    last: int
    level_nm: float
    from_start: bool
    to_end: bool
    resolution_nm: float


@dataclass(frozen=True, slots=True)
class Load:
    """A window turned so that the pull is positive, spikes taken out; ``first`` to ``last`` is the span.

    ``top_nm`` is about its highest torque, ``half`` the samples of the span that are above half of it, ``step_nm`` the
    smallest step of the reading.
    """

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None
    first: int
    last: int
    sign: int
    level_nm: float
    noise_nm: float
    step_nm: float
    top_nm: float
    half: Ints
    spikes: int

    @property
    def end_s(self) -> float:
        """Time of the release: when the torque was first found to be gone."""
        return float(self.time_s[min(self.last, len(self.time_s) - 1)])

    @property
    def held_s(self) -> float:
        """How long the torque was above half its maximum, from the first time to the last."""
        return float(self.time_s[self.half[-1]] - self.time_s[self.half[0]]) if len(self.half) else 0.0

    def under_way_s(self) -> float:
        """Give the time at which the ramp left the lowest quarter."""
        limit = self.level_nm + QUARTER * (self.top_nm - self.level_nm)
        low = np.flatnonzero(self.torque_nm[: self.half[0] + 1] < limit)
        return float(self.time_s[low[-1]]) if len(low) else float(self.time_s[0])


def turned(window: Window) -> Load | None:
    """Turn a window to positive and take its spikes out; None if it holds next to nothing."""
    s = window.samples
    inner = s.torque_nm[window.first : window.last]
    if len(inner) < LEAST_SAMPLES:
        return None
    level = window.level_nm
    if window.from_start:
        level = float(np.median(s.torque_nm[(window.last + len(s)) // 2 :])) if window.last < len(s) else 0.0
    few = thin(inner)
    sign = 1 if quantile(few, 0.97) - level >= level - quantile(few, 0.03) else -1
    step = _step(window, inner)
    noise = _noise(window, step)
    out = spikes(s.torque_nm, noise)
    first, last = (at - int(np.searchsorted(out, at)) for at in (window.first, window.last))
    angle = s.angle_deg if s.angle_deg is not None and plausible_angle(s.angle_deg) else None
    time_s, torque = s.time_s, sign * s.torque_nm
    if len(out):
        time_s, torque = np.delete(time_s, out), np.delete(torque, out)
        angle = None if angle is None else np.delete(angle, out)
    top = quantile(thin(torque[first:last]), 0.95)
    if not top > sign * level:
        return None
    half = np.flatnonzero(torque[first:last] - sign * level > 0.5 * (top - sign * level)) + first
    return Load(time_s, torque, angle, first, last, sign, sign * level, noise, step, top, half, len(out))


def _step(window: Window, inner: Floats) -> float:
    """Give the smallest step of the reading."""
    if window.resolution_nm:
        return window.resolution_nm
    steps, wide = np.abs(np.diff(window.samples.torque_nm)), float(np.ptp(inner))
    return float(np.min(steps, where=steps > 1e-9 * wide, initial=COARSEST * wide))


def _noise(window: Window, step_nm: float) -> float:
    """Give the deviation of one reading at rest: at least what the reading's step makes of it."""
    torque = window.samples.torque_nm
    before = torque[: window.first]
    return max(sample_noise(before if len(before) >= 2 * LEAST_SAMPLES else torque), step_nm / float(np.sqrt(12)))


def _lands(load: Load, x: Floats, height_nm: float) -> bool:
    """Whether the rise is made of steps: a lever put on, turned over, or let fall, a cable with a bad contact."""
    width, up = _block(load), int(load.half[0])
    low, high = np.flatnonzero(x[: up + 1] < 0.1 * height_nm), np.flatnonzero(x[up:] > 0.9 * height_nm)
    count = round(LANDS_BLOCKS * STILL_BLOCK_S / width * (len(load.half) - 1) / load.held_s)
    if count < LANDS_LEAST or not len(high):
        return False  # too few readings to tell
    if not len(low):
        return True  # there with the end of the load before
    around = slice(max(int(low[-1]) + 1 - width, 0), up + int(high[0]) + 2 * width)
    quickest = np.sort(np.diff(block_means(x[around], width)))[-min(count, LANDS_BLOCKS) :]
    return bool(quickest.sum() > LANDS_SHARE * height_nm)


def _block(load: Load) -> int:
    """Give the samples in a block of ``STILL_BLOCK_S``."""
    return max(1, round(STILL_BLOCK_S / load.held_s * int(load.half[-1] - load.half[0])))


def _shake(held: Floats, width: int) -> float:
    """Give the usual step between neighbouring blocks, as the deviation of a block if they do not depend."""
    return float(np.median(np.abs(np.diff(block_means(held, width))))) / 0.95


def hangs_still(load: Load, x: Floats, height_nm: float, sensor: Sensor) -> bool:
    """Whether this is the lever's own weight in another place: quickly there, then as still as at rest.

    Parameters
    ----------
    load : Load
    x : ndarray, shape (n,)
        Its torque from the hand-off level.
    height_nm : float
        About its highest value.
    sensor : Sensor
    """
    t, half = load.time_s, load.half
    capacity_nm = sensor.capacity_nm or np.inf
    small = sensor.capacity_nm is not None and height_nm < STILL_SHARE * capacity_nm
    if abs(load.top_nm) > AT_LIMIT * capacity_nm:
        return False
    held = x[half[0] : half[-1] + 1]
    n = len(held)
    if _lands(load, x, height_nm):  # it may ring for a while, and be knocked; a jerked pull shakes all the time
        parts = np.array_split(held[n // LANDED_PARTS :], LANDED_PARTS - 1)
        width = min(_block(load), max(n // LANDED_PARTS // 3, 1))
        least = min(_shake(part, width) for part in parts)
        return small or least < max(STILL_NOISES * load.noise_nm / float(np.sqrt(width)), LANDED_SHAKE * height_nm)
    low = np.flatnonzero(x[: half[0] + 1] < 0.1 * height_nm)
    high = np.flatnonzero(x[half[0] :] > 0.9 * height_nm)
    rise_s = float(t[half[0] + high[0]] - t[low[-1]]) if len(low) and len(high) else 0.0
    middle = held[n // 4 : max(n * 3 // 4, n // 4 + LEAST_SAMPLES)]
    width = min(_block(load), max(len(middle) // 3, 1))
    noise = load.noise_nm / float(np.sqrt(width))
    if rise_s > PLACED_S or (not small and noise > STILL_SHAKE * height_nm):
        return False
    means = block_means(middle, width)
    if quantile(means, 0.9) - quantile(means, 0.1) > max(STILL_SPREAD * height_nm, STILL_NOISES * load.noise_nm):
        return False
    shake = _shake(middle, width)
    return shake < STILL_NOISES * noise and (small or shake < STILL_SHAKE * height_nm)
