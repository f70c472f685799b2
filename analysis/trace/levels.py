"""A torque that keeps to several levels one after the other: a drive at several speeds, a held side that slips."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import moving_mean, quantile, thin

if TYPE_CHECKING:
    from analysis.trace.traces import Bools, Floats

LEVELS, LEVEL_BAND = 0.15, 0.06
"""Where the steady time spreads over more than this share of its level it holds several levels (another speed, a side
that slips): the level that lasted longest counts, with what lies within this share of it ..."""

STAYED, RIVAL = 0.5, 0.5
"""... if it stayed there for this share of that time on end. One that lasted as long by this share may be the one as
well: the interval reaches it."""


def longest_level(torque_nm: Floats, steady: Bools, short: int) -> tuple[Bools, float]:
    """Mark what belongs to the level that lasted longest, and give the farthest other one (0: there is none).

    Nothing is marked where the torque only came by that level again and again. Judged by means over ``short`` samples.
    """
    if _keeps_one(np.sort(thin(torque_nm[steady]))):  # with its noise, so without it the more
        return np.ones(len(steady), bool), 0.0
    x = moving_mean(torque_nm, short)
    kept = np.sort(thin(x[steady]))
    if _keeps_one(kept):
        return np.ones(len(steady), bool), 0.0
    level = quantile(kept, 0.5)
    width = 2 * LEVEL_BAND * abs(level)
    lowest, longest = _densest(kept, width)
    held = (x >= lowest) & (x <= lowest + width)
    edges = np.flatnonzero(np.diff(np.concatenate([[False], held & steady, [False]]).astype(np.int8)))
    if not len(edges) or np.diff(edges)[::2].max() < STAYED * (held & steady).sum():
        return np.zeros(len(x), bool), 0.0
    others, rest = [], kept
    low, count = lowest, longest
    while True:
        rest = rest[(rest < low) | (rest > low + width)]
        low, count = _densest(rest, width)
        if count < RIVAL * longest:
            break
        others.append(low + width / 2)
    return held, max(others, key=lambda o: abs(o - lowest - width / 2), default=0.0)


def _keeps_one(ordered: Floats) -> bool:
    """Whether ordered values spread no further than one level does."""
    n = len(ordered)
    return not n or ordered[int(0.95 * n)] - ordered[int(0.05 * n)] < LEVELS * abs(ordered[n // 2])


def _densest(ordered: Floats, width: float) -> tuple[float, int]:
    """Give the lower end of the band that holds most of the ordered values, and how many."""
    count = np.searchsorted(ordered, ordered + width, "right") - np.arange(len(ordered))
    if not len(count):
        return 0.0, 0
    at = int(np.argmax(count))
    return float(ordered[at]), int(count[at])
