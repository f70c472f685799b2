"""A load on the lever as it is worked with: turned to positive, spikes out, and told from a lever that hangs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.angle import plausible_angle
from analysis.trace.smooth import block_means, last_where, quantile, sample_noise, thin
from analysis.trace.traces import Floats, Samples, Sensor, spikes

if TYPE_CHECKING:
    from analysis.trace.traces import Ints

STILL_NOISES = 3.0
"""A load as still as this many times the noise at rest may be the lever's own weight ..."""

STILL_SHAKE = 0.001
"""... or as still as this share of the load: a hand's tremor is three times as much ..."""

STILL_SPREAD = 0.02
"""... if over its second half it keeps within this share, where packs wander and levers do not ..."""

STILL_PEAK = 1.03
"""... and nothing stood out above it by this factor, as a breakaway does."""

STILL_BLOCK_S = 0.025
"""Stillness is seen in blocks of this length (s): a quarter period of the tremor."""

RUNG_OUT = 0.2
"""A lever that rings is quieter by this factor in the last quarter of its time than in the first."""

LANDS_S, LANDS_FROM, LANDS_TO, LANDS_SLOWEST_S = 0.02, 0.2, 0.5, 0.05
"""A lever that is put on, or a cable with a bad contact, is there at once: within this time (s), or from one reading
to the next, between these shares of its height. The quickest hand on the lightest unit takes longer (0.1 s from rest
to slip). Readings further apart than the last (s) do not tell."""

LEVER = 0.35
"""What lies still below this share of a pull is the lever: a heavy one on a worn pack has a third of it."""

QUARTER = 0.25
"""A ramp is under way at this share of the pull's level, however the lever hung before."""

COARSEST = 0.05
"""A gauge that is asked too seldom to show its step has at most this share of the torque for one."""

AT_LIMIT = 0.95
"""A transducer at its limit, this share of the capacity, is as still as one at rest."""

HELD_SHARE = 0.7
"""Where less than this share of the readings on the way up differ from the one before, each is given several times."""

RANG_S, RINGS_S, HUNG_S = 0.1, 0.5, 0.3
"""What was above half for less than the first (s) at a time, within the second, and then below it for longer than the
third, is no ramp: a lever that was put on rang."""

LEAST_SAMPLES = 4
"""Fewer samples are no load."""


@dataclass(frozen=True, slots=True)
class Window:
    """A span with the rest before it: ``first`` and ``last`` are the span's samples within the window.

    ``gripped_nm`` is the hand-off level of a load of its size that ended just before, the same way, if one did,
    ``turned_nm`` that of one the other way;
    ``earlier_nm`` is what came just before the samples, where they begin behind such a load. ``of_stream``: they begin
    with the stream.
    """

    samples: Samples
    first: int
    last: int
    level_nm: float
    from_start: bool
    to_end: bool
    reversed: bool
    resolution_nm: float
    gripped_nm: float | None = None
    turned_nm: float | None = None
    earlier_nm: Floats | None = None
    of_stream: bool = False

    def level_after(self) -> float:
        """Give the level that was seen after the release (N·m); 0 where nothing was."""
        s = self.samples
        return float(np.median(s.torque_nm[(self.last + len(s)) // 2 :])) if self.last < len(s) else 0.0


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
    def interval_s(self) -> float:
        """Mean time between two samples."""
        return float(self.time_s[-1] - self.time_s[0]) / (len(self.time_s) - 1)

    @property
    def end_s(self) -> float:
        """Time of the release: when the torque was first found to be gone."""
        return float(self.time_s[min(self.last, len(self.time_s) - 1)])

    @property
    def held_s(self) -> float:
        """How long the torque was above half its maximum, from the first time to the last."""
        return float(self.time_s[self.half[-1]] - self.time_s[self.half[0]]) if len(self.half) else 0.0

    @property
    def reading_s(self) -> float:
        """Time between readings that differ on the way up: a display is often read faster than it changes."""
        up = (
            self.torque_nm[self.first : max(int(self.half[0]), self.first) + 1]
            if len(self.half)
            else self.torque_nm[:0]
        )
        changes = np.flatnonzero(np.diff(up)) if len(up) > LEAST_SAMPLES else up[:0]
        return float(np.median(np.diff(self.time_s[changes]))) if 2 < len(changes) < HELD_SHARE * len(up) else 0.0

    def under_way_s(self) -> float:
        """Give the time at which the ramp left the lowest quarter."""
        limit = self.level_nm + QUARTER * (self.top_nm - self.level_nm)
        return float(self.time_s[max(last_where(self.torque_nm[: self.half[0] + 1] < limit), 0)])


def turned(window: Window) -> Load | None:
    """Turn a window to positive and take its spikes out; None if it holds next to nothing."""
    s = window.samples
    inner = s.torque_nm[window.first : window.last]
    if len(inner) < LEAST_SAMPLES:
        return None
    level = window.level_nm
    if window.from_start:
        level = window.level_after()
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
    half = half[_ringing(half, float(time_s[-1] - time_s[0]) / (len(time_s) - 1)) :]
    return Load(time_s, torque, angle, first, last, sign, sign * level, noise, step, top, half, len(out))


def _ringing(half: Ints, interval_s: float) -> int:
    """Give how many of the samples above half were a lever that rang before the ramp."""
    if interval_s > LANDS_SLOWEST_S or half[-1] - half[0] < len(half):  # or above it all the time
        return 0
    apart = np.flatnonzero(np.diff(half) > 1) + 1  # where it is above half once more
    rang, crest_s, last = 0, 0.0, 0
    for at in apart:
        crest_s = max(crest_s, float(half[at - 1] - half[last]) * interval_s)
        if crest_s > RANG_S or (half[at - 1] - half[rang]) * interval_s > RINGS_S:
            break
        last = at
        if (half[at] - half[at - 1]) * interval_s > HUNG_S:
            rang, crest_s = int(at), 0.0
    return rang


def _step(window: Window, inner: Floats) -> float:
    """Give the smallest step of the reading: few readings of a slow display may not have shown it yet."""
    steps, wide = np.abs(np.diff(window.samples.torque_nm)), float(np.ptp(inner))
    return float(np.min(steps, where=steps > 1e-9 * wide, initial=window.resolution_nm or COARSEST * wide))


def _noise(window: Window, step_nm: float) -> float:
    """Give the deviation of one reading at rest: at least what the reading's step makes of it."""
    torque = window.samples.torque_nm
    before = torque[: window.first]
    return max(sample_noise(before if len(before) >= 2 * LEAST_SAMPLES else torque), step_nm / float(np.sqrt(12)))


def lies_still(load: Load, x: Floats, height_nm: float, sensor: Sensor) -> bool:
    """Whether this lies as still as a lever that hangs, once it has rung down: no hand and no pack in it.

    Args:
        x: shape (n,); Its torque from the hand-off level.
        height_nm: About its highest value.
    """
    if sensor.capacity_nm is not None and abs(load.top_nm) > AT_LIMIT * sensor.capacity_nm:
        return False
    held = x[load.half[0] : load.half[-1] + 1]
    late = held[len(held) // 2 : max(len(held) * 9 // 10, len(held) // 2 + LEAST_SAMPLES)]
    width = max(1, min(round(STILL_BLOCK_S / load.interval_s), len(late) // 3))
    means, noise = block_means(late, width), load.noise_nm / float(np.sqrt(width))
    if len(means) < 3 or np.ptp(means) > max(STILL_SPREAD * height_nm, 2 * STILL_NOISES * noise):
        return False
    shake = quantile(np.abs(means[1:] - means[:-1]), 0.5) / 0.95
    return shake < max(STILL_NOISES * noise, STILL_SHAKE * height_nm)


def rings_out(load: Load, x: Floats) -> bool:
    """Whether what shook at first died away, as a lever rings that was put on; a hand never gets so quiet."""
    held = x[load.half[0] : load.half[-1] + 1]
    width = max(1, round(STILL_BLOCK_S / load.interval_s))
    steps = np.abs(np.diff(block_means(held[: len(held) * 9 // 10], width)))
    if load.interval_s > LANDS_S / 2 or len(steps) < 4 * LEAST_SAMPLES:
        return False
    early, *_, late = np.array_split(steps, 4)
    return quantile(late, 0.5) < RUNG_OUT * quantile(early, 0.5)


def stands_out(load: Load, x: Floats) -> bool:
    """Whether something in the first half stood out above the rest of it, as a breakaway does."""
    held = x[load.half[0] : load.half[-1] + 1]
    first, second = np.array_split(held, 2)
    return quantile(first, 0.98) > STILL_PEAK * quantile(second, 0.5)


def lands(load: Load, x: Floats, height_nm: float) -> bool:
    """Whether the load was there at once, quicker than a hand brings it up."""
    if load.interval_s > LANDS_SLOWEST_S:
        return False
    low = np.flatnonzero(x[: load.half[0] + 1] < LANDS_FROM * height_nm)
    high = np.flatnonzero(x[load.half[0] :] > LANDS_TO * height_nm)
    if not len(low) or not len(high):
        return False
    rise = slice(low[-1], load.half[0] + high[0] + 1)
    return rise.stop - rise.start <= 2 or float(load.time_s[rise.stop - 1] - load.time_s[rise.start]) < LANDS_S
