"""What in the torque alone shows that the pack slipped, where no steady turning followed.

A hand that gives up takes the torque straight back from the top. A pack that slipped holds the torque up for a while
after its peak, or cuts off a straight ramp at a knee.

Offered: ``stays_up``, ``cut_off``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.ramp import fades, smoothed

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

UPPER, MIDDLE, LOWER = 0.95, 0.5, 0.3
"""Shares of the peak between which the way down is timed: a slip keeps the torque above the middle, a release does not
stop there."""

STAYS_S = 0.2
"""After its peak the torque of a slip stays up for at least this long (s) ..."""

STAYS = 2.5
"""... and so many times longer than the release would have taken over the same way."""

CUT_FROM, CUT_TO = 0.8, 0.93
"""A straight ramp is timed between these shares of the top ..."""

CUT_S, CUT = 0.25, 3.0
"""... and is cut off if the torque stays above the upper one this long (s) and so many times longer than that took: a
half sine, the roundest hump of a hand that gives up, takes 2.1 times as long."""


def stays_up(time_s: Floats, torque_nm: Floats, peak: int) -> bool:
    """Whether the torque stayed up after its peak for longer than a release takes.

    Parameters
    ----------
    time_s, torque_nm : ndarray, shape (n,)
        From the foot of the ramp until the release is over, from the hand-off level.
    peak : int
        Index of the peak.
    """
    x, top = torque_nm[peak:], float(torque_nm[peak])
    above = np.flatnonzero(x > MIDDLE * top)
    if not len(above) or above[-1] + 1 >= len(x):
        return False
    half = int(above[-1])
    fallen = np.flatnonzero(x[: half + 1] < UPPER * top)
    gone = np.flatnonzero(x[half:] < LOWER * top)
    if not len(fallen) or not len(gone):
        return False
    t = time_s[peak:]
    step_s = float(t[-1] - t[0]) / (len(t) - 1)
    up_s = float(t[half] - t[fallen[0]]) + step_s
    release_s = float(t[half + gone[0]] - t[half]) * (UPPER - MIDDLE) / (MIDDLE - LOWER)
    return up_s > max(STAYS_S, STAYS * release_s)


def cut_off(time_s: Floats, torque_nm: Floats, top_nm: float) -> bool:
    """Whether a straight ramp was cut off at a knee and the torque then held there for a moment.

    Parameters
    ----------
    time_s, torque_nm : ndarray, shape (n,)
        From the foot of the ramp to the release, from the hand-off level.
    top_nm : float
        Level at the top.
    """
    x = smoothed(time_s, torque_nm)
    upper = np.flatnonzero(x > CUT_TO * top_nm)
    lower = np.flatnonzero(x > CUT_FROM * top_nm)
    if not len(upper):
        return False
    way_s = float(time_s[upper[0]] - time_s[lower[0]])
    held_s = float(time_s[upper[-1]] - time_s[upper[0]])
    return held_s > max(CUT_S, CUT * way_s) and not fades(time_s, torque_nm, top_nm)
