"""The level just before a pull: hands off, lever fitted. All torques of the pull count from it.

The foot of a slow ramp is easily taken for the level, a bump may have come a moment before, and the lever may have
been moved. So the level is the mean of the *latest quiet stretch* before the ramp: a rest is still to within noise,
a hand is not. Where nothing is still, the stillest stretch is taken and its unrest enters the uncertainty.

Offered: ``Handoff``, ``find_handoff``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import block_means

if TYPE_CHECKING:
    from analysis.trace.traces import Floats, Ints

RAMP_FROM = 0.45
"""The ramp is certainly under way at this share of the pull's level; the rest lies before. A heavy lever, put on a
moment before, may take a worn pack's reading a third of the way up."""

FOOT_BELOW = 0.2
"""Where nothing is still, the rest is looked for below this share only."""

BLOCK_S = 0.05
"""Length of the blocks whose means are compared (s) ..."""

BLOCK_NOISE = 0.006
"""... or longer, so that their noise is below this share of the pull's level: a ramp must show through it ..."""

BLOCK_MOST_S = 0.25
"""... but no longer than this (s): five of them are about as long as a rest may be."""

STILL_S = 0.25
"""Shortest stretch that shows whether the lever is still (s): two periods of a hand's tremor (7-12 Hz)."""

STILL_BLOCKS = 4
"""... and least number of blocks in it."""

STILL_SHARE = 0.002
"""A stretch is still if its blocks keep within this share of the pull's level ..."""

STILL_NOISES = 4.5
"""... or within this many deviations of their noise (a range of five normal values is 2.3 on average)."""

RINGS, RINGS_SHARE = 2.0, 0.10
"""A lever that rings keeps its short-time mean within so many times the limit, and its swing below this share of the
pull's level."""

PAUSE_SHARE, PAUSE_S, PAUSE_QUICK = 0.10, 1.2, 0.6
"""A hand that hesitates on the way up is still as well: further above an earlier still stretch than this share of the
pull's level, for less than this time (s), and come to as a hand comes up, not with this share of the way within three
blocks as a lever that is put on."""

HUM = 2.0
"""Readings that shake this many times more than white noise and than their short means do carry a hum."""

DRIFT_PARTS = 6
"""A zero that drifts goes one way through so many parts of the rest; by chance that happens once in 360."""

LEVEL_S = 1.0
"""At most this much of the still stretch is averaged (s): the level just before the pull counts."""

FOOT_SHARE = 0.01
"""The pull begins where the torque last was this share of its level above the hand-off level (or within noise)."""


@dataclass(frozen=True, slots=True)
class Handoff:
    """Level before the pull (N·m), its standard uncertainty, and the sample at which the ramp leaves it.

    ``hum_nm`` is the deviation of the readings about a still level where it is far more than noise: a mains hum.
    ``drift_nm_s`` is the slope of a rest that went one way all the time.
    """

    level_nm: float
    u_nm: float
    foot: int
    hum_nm: float = 0.0
    drift_nm_s: float = 0.0


def find_handoff(time_s: Floats, torque_nm: Floats, level_nm: float, top_nm: float, noise_nm: float) -> Handoff:
    """Find level and foot before a ramp; torque counts positive in the pull's direction.

    Parameters
    ----------
    time_s, torque_nm : ndarray, shape (n,)
        From the rest before the pull to somewhere above ``RAMP_FROM`` of its level.
    level_nm, top_nm : float
        Level at rest and the pull's level, roughly.
    noise_nm : float
        Noise of one reading at rest.
    """
    low = np.flatnonzero(torque_nm < level_nm + RAMP_FROM * (top_nm - level_nm))
    stop = int(low[-1]) + 1 if len(low) else 1
    if stop < STILL_BLOCKS:  # straight out of another load
        return Handoff(level_nm, noise_nm + RAMP_FROM * abs(top_nm - level_nm) / np.sqrt(12), max(stop - 1, 0))
    step = (time_s[stop - 1] - time_s[0]) / (stop - 1)
    calm = (noise_nm / (BLOCK_NOISE * abs(top_nm - level_nm))) ** 2 * step
    width = max(1, min(round(min(max(BLOCK_S, calm), BLOCK_MOST_S) / step), stop // STILL_BLOCKS))
    begin = stop % width  # blocks end where the ramp begins
    means = torque_nm[begin:stop].reshape(-1, width).mean(axis=1)
    still = max(STILL_BLOCKS, round(STILL_S / (width * step)))
    low_blocks = int(np.searchsorted(np.maximum.accumulate(means), level_nm + FOOT_BELOW * (top_nm - level_nm)))
    most = round(PAUSE_S / (width * step))
    first, last, unrest = _still_stretch(means, still, most, noise_nm / np.sqrt(width), top_nm - level_nm, low_blocks)
    drift = _drift(means[first:last]) / (width * step)
    first = max(first, last - max(still, round(LEVEL_S / (width * step))))
    part = torque_nm[begin + first * width : begin + last * width]
    level = float(part.mean())
    u = max(unrest / np.sqrt(12), noise_nm / np.sqrt(len(part)))
    near = max(FOOT_SHARE * (top_nm - level), 3 * noise_nm)
    below = np.flatnonzero(torque_nm[:stop] < level + near)
    shake = float(part.std())
    hum = shake if shake > HUM * max(noise_nm, unrest) else 0.0
    return Handoff(level, u, int(below[-1]) if len(below) else 0, hum, drift)


def _drift(means: Floats) -> float:
    """Give the slope per block where the rest goes one way all the time; 0 where it does not."""
    parts = block_means(means, len(means) // DRIFT_PARTS) if len(means) >= 2 * DRIFT_PARTS else means[:0]
    steps = np.diff(parts)
    if not len(steps) or not (bool((steps > 0).all()) or bool((steps < 0).all())):
        return 0.0
    return float(parts[-1] - parts[0]) / (len(steps) * (len(means) // DRIFT_PARTS))


def _still_stretch(
    means: Floats, still: int, most: int, noise: float, height: float, low_blocks: int
) -> tuple[int, int, float]:
    """Give bounds (in blocks) of the stretch that shows the level, and its unrest.

    The latest stretch that is still; or a later one that rings about another level.
    """
    still = min(still, len(means))
    windows = np.lib.stride_tricks.sliding_window_view(means, still)
    ranges = windows.max(axis=1) - windows.min(axis=1)
    limit = max(STILL_SHARE * height, STILL_NOISES * noise)
    quiet = np.flatnonzero(ranges <= limit)
    if len(quiet):
        at = _before_pauses(means, windows.mean(axis=1), quiet, still, most, height)
    else:
        at = int(np.argmin(ranges[: max(low_blocks - still, 1)]))
    level = means[at : at + still].mean()
    later = len(windows) - 1 - at > still  # there is room for another stretch after it
    rings = _ringing(windows.mean(axis=1), ranges, 2 * still, limit, height) if later else None
    apart = 0.0 if rings is None else float(means[rings - 2 * still : rings].mean() - level)
    if (
        rings is not None
        and rings > at + still
        and abs(apart) > 2 * limit
        and not _as_a_hand(means[at + still - 1 : rings - still], apart, height)
    ):
        return rings - 2 * still, rings, float(ranges[rings - still]) / 2
    outside = np.flatnonzero(np.abs(means[:at] - level) > max(limit, float(ranges[at])))
    first = int(outside[-1]) + 1 if len(outside) else 0
    return first, at + still, float(ranges[at])


def _before_pauses(means: Floats, levels: Floats, quiet: Ints, still: int, most: int, height: float) -> int:
    """Give the latest quiet stretch at which a hand did not merely hesitate on its way up."""
    at = int(quiet[-1])
    while True:
        lower = quiet[(quiet < at) & (levels[quiet] < levels[at] - PAUSE_SHARE * height)]
        if not len(lower):
            return at
        before = int(lower[-1])
        here = quiet[(quiet > before) & (np.abs(levels[quiet] - levels[at]) < PAUSE_SHARE * height)]
        way = means[before + still - 1 : int(here[0]) + 1]
        if at + still - int(here[0]) > most or not _as_a_hand(way, levels[at] - levels[before], height):
            return at
        at = before


def _as_a_hand(way: Floats, rise: float, height: float) -> bool:
    """Whether a level was come to as a hand comes up, not by a lever that is put on or has moved a little."""
    if not len(way):  # no time to come up in
        return False
    most = PAUSE_QUICK * rise
    return rise > PAUSE_SHARE * height and bool(way[-1] - way[0] > most > np.sort(np.diff(way))[-3:].sum())


def _ringing(smooth: Floats, ranges: Floats, long: int, limit: float, height: float) -> int | None:
    """Give the end of the latest stretch whose short-time mean keeps still while the lever rings about it."""
    still = long // 2
    if len(smooth) <= still:
        return None
    windows = np.lib.stride_tricks.sliding_window_view(smooth, still + 1)
    calm = windows.max(axis=1) - windows.min(axis=1) <= RINGS * limit
    small = ranges[still:] < RINGS_SHARE * height
    found = np.flatnonzero(calm & small[: len(calm)])
    return int(found[-1]) + long if len(found) else None
