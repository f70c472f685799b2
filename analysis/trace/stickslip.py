"""Stick-slip: the pack sticks and breaks again and again while the lever moves on."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import block_means, moving_mean, quantile

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

LEAST_SWING = 0.05
"""Peak to peak, relative to the level: less than this is ripple."""

LEAST_CYCLES = 3
"""Fewer cycles cannot show that they repeat."""

HYSTERESIS = 0.2
"""The torque has to pass the middle of its swing by this share of it, both ways, to count as a cycle."""

IRREGULAR = 0.35
"""Median departure of the periods from their median, relative: stick-slip repeats, a clumsy hand does not."""

SLOWEST_S, QUICKEST_S = 4.0, 0.12
"""Periods of stick-slip (s): √(k/J)/2π is 3-16 Hz at the upper end, and a slow hand stretches the sticking."""


SLOW_S, BREAKS_S, BREAKS = 0.5, 0.15, 0.6
"""Cycles slower than this (s) stick and then break: the torque falls through the middle of its swing within this time
(s), or within this share of the time in which it rises. What rises and falls alike, slowly, is a speed or a hand that
wanders."""


@dataclass(frozen=True, slots=True)
class Cycles:
    """Stick-slip between the first and last fall through the middle: whole cycles."""

    start_s: float
    end_s: float
    frequency_hz: float
    peak_to_peak_nm: float
    falls_s: tuple[float, ...]

    @property
    def period_s(self) -> float:
        """Usual time from one fall to the next."""
        return 1 / self.frequency_hz


def find_cycles(time_s: Floats, torque_nm: Floats) -> Cycles | None:
    """Find stick-slip in the part of a pull between breakaway and release.

    Args:
        time_s, torque_nm: shape (n,); Hand-off level subtracted, positive in the pull's direction.

    Returns:
        None where the torque does not swing enough, often enough or regularly enough.
    """
    if len(time_s) < 8:  # far too few to show cycles
        return None
    step = (time_s[-1] - time_s[0]) / (len(time_s) - 1)
    width = max(1, min(round(QUICKEST_S / 8 / step), len(time_s) // 8))
    t, fine = block_means(time_s, width), block_means(torque_nm, width)
    x = moving_mean(fine, round(QUICKEST_S / 4 / step / width))
    level, low, high = (quantile(x, share) for share in (0.5, 0.04, 0.96))
    swing = high - low
    if not 0 < LEAST_SWING * level < swing:
        return None
    middle = (low + high) / 2
    falls = _falls(t, x, middle - HYSTERESIS * swing, middle + HYSTERESIS * swing)
    if len(falls) <= LEAST_CYCLES:
        return None
    periods = np.diff(falls)
    period = float(np.median(periods))
    if not QUICKEST_S < period < SLOWEST_S or np.median(np.abs(periods - period)) > IRREGULAR * period:
        return None
    if period > SLOW_S and not _breaks(t, x, middle - HYSTERESIS * swing, middle + HYSTERESIS * swing):
        return None
    at = np.searchsorted(t, falls)
    swings = [float(np.ptp(fine[a:b])) for a, b in pairwise(at.tolist())]
    return Cycles(float(falls[0]), float(falls[-1]), 1 / period, float(np.median(swings)), tuple(falls.tolist()))


def _breaks(t: Floats, x: Floats, low: float, high: float) -> bool:
    """Whether the torque falls through both bounds far quicker than it rises through them."""
    state = np.where(x > high, 1, np.where(x < low, -1, 0))
    known = np.flatnonzero(state)
    turns = np.flatnonzero(np.diff(state[known]))
    way_s = t[known[turns + 1]] - t[known[turns]]
    down = state[known[turns]] > 0
    if not down.any() or down.all():
        return False
    return float(np.median(way_s[down])) < max(BREAKS_S, BREAKS * float(np.median(way_s[~down])))


def _falls(t: Floats, x: Floats, low: float, high: float) -> Floats:
    """Give the times at which the torque falls through both bounds, one after the other."""
    state = np.where(x > high, 1, np.where(x < low, -1, 0))
    known = np.flatnonzero(state)
    changes = np.flatnonzero(np.diff(state[known]) < 0)
    return np.asarray(t[known[changes + 1]])
