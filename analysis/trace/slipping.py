"""What in the torque alone shows that the pack slipped, where no steady turning followed.

A hand that gives up takes the torque straight back from the top. A pack that slipped holds the torque up for a while
after its peak, or cuts off a straight ramp at a knee.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.ramp import fades, smoothed
from analysis.trace.smooth import last_where

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

UPPER, MIDDLE, LOWER = 0.95, 0.5, 0.3
"""Shares of the peak between which the way down is timed: a slip keeps the torque above the middle, a release does not
stop there."""

STAYS_S = 0.2
"""After its peak the torque of a slip stays up for at least this long (s) ..."""

STAYS = 2.0
"""... and so many times longer than the release would have taken over the same way: the half sine of a hand that gives
up takes 1.5 times as long."""

KNOCK_FROM, KNOCK_S = 0.1, 0.25
"""What comes up from this share of its peak within this time (s) and does not turn on is a knock on the lever."""

CUT_FROM, CUT_TO = 0.8, 0.93
"""A straight ramp is timed between these shares of the top ..."""

CUT_S, CUT = 0.25, 1.6
"""... and is cut off if the torque stays above the upper one this long (s) and so many times longer than that took: a
ramp that turns back at once stays 1.1 times as long."""


def stays_up(time_s: Floats, torque_nm: Floats, peak: int) -> bool:
    """Whether the torque stayed up after its peak for longer than a release takes.

    Args:
        time_s, torque_nm: shape (n,); From the foot of the ramp until the release is over, from the hand-off level.
        peak: Index of the peak.
    """
    top = float(torque_nm[peak])
    low = max(last_where(torque_nm[:peak] < KNOCK_FROM * top), 0)
    if time_s[peak] - time_s[low] < KNOCK_S:
        return False
    t, x = time_s[peak:], torque_nm[peak:]
    above = np.flatnonzero(x > MIDDLE * top)
    if not len(above) or above[-1] + 1 >= len(x):
        return False
    half, gone = int(above[-1]), np.flatnonzero(x[above[-1] :] < LOWER * top)
    fallen = np.flatnonzero(x[: half + 1] < UPPER * top)
    if not len(fallen) or not len(gone):
        return False
    half_s = _passed(t, x, half + 1, MIDDLE * top)
    up_s = half_s - _passed(t, x, int(fallen[0]), UPPER * top)
    release_s = (_passed(t, x, half + int(gone[0]), LOWER * top) - half_s) * (UPPER - MIDDLE) / (MIDDLE - LOWER)
    return up_s > max(STAYS_S, STAYS * release_s)


def _passed(t: Floats, x: Floats, at: int, level: float) -> float:
    """Give the time at which a falling torque passes a level, between two samples."""
    before, after = float(x[at - 1]), float(x[at])
    return float(t[at]) - float(t[at] - t[at - 1]) * (level - after) / (before - after)


def cut_off(time_s: Floats, torque_nm: Floats, top_nm: float) -> bool:
    """Whether a straight ramp was cut off at a knee and the torque then held there for a moment.

    Args:
        time_s, torque_nm: shape (n,); From the foot of the ramp to the release, from the hand-off level.
        top_nm: Level at the top.
    """
    x = smoothed(time_s, torque_nm)
    upper = np.flatnonzero(x > CUT_TO * top_nm)
    lower = np.flatnonzero(x > CUT_FROM * top_nm)
    if not len(upper):
        return False
    way_s = float(time_s[upper[0]] - time_s[lower[0]])
    held_s = float(time_s[upper[-1]] - time_s[upper[0]])
    return held_s > max(CUT_S, CUT * way_s) and not fades(time_s, torque_nm, top_nm)
