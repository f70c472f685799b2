"""How the torque comes up: by steps, straight into its knee, or ever slower until it is let go.

A hand that does not mean to go on fades: each part of the rise takes longer than the one before, right up to the
release. A pull runs straight into its knee, or, where one pack is weaker, comes up again after a shoulder.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import moving_mean

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

SMOOTH_S = 0.12
"""The rise is judged on a mean over this time (s): about a period of the tremor (7-12 Hz)."""

PARTS = (0.5, 0.7), (0.7, 0.85), (0.9, 0.97)
"""Shares of the level between which the rise is timed: its straight part, its bend, and the last of it."""

FADES = 1.25, 1.5
"""The same rise takes so many times longer from each part to the next where it fades: a quarter of a sine, the mildest
way to fade, gives 1.26 and 1.85, an approach with one time constant 1.7 and 2.5, a straight ramp 1 and 1."""

TURNED_ON = 2.0
"""Whoever feels the wheel give way turns on; a hand that only fades lets go before so many times its rise are over."""


def fades(time_s: Floats, torque_nm: Floats, slip_nm: float) -> bool:
    """Whether the torque came up ever slower and was then let go: without a peak or an angle, not told from a hold.

    Args:
        time_s, torque_nm: shape (n,); From the foot of the ramp to the release, from the hand-off level.
        slip_nm: Level at the top.
    """
    step = (time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    smooth = smoothed(time_s, torque_nm)
    paces = [
        (_reached(time_s, smooth, b * slip_nm) - _reached(time_s, smooth, a * slip_nm)) / (b - a) for a, b in PARTS
    ]
    if not all(later > times * max(pace, step) for pace, later, times in zip(paces, paces[1:], FADES, strict=False)):
        return False
    top_s = _reached(time_s, smooth, PARTS[-1][1] * slip_nm)
    return float(time_s[-1]) - top_s < TURNED_ON * (top_s - float(time_s[0]))


def smoothed(time_s: Floats, torque_nm: Floats) -> Floats:
    """Give the torque as a moving mean over about a period of the tremor."""
    step = (time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    return moving_mean(torque_nm, round(SMOOTH_S / step))


def _reached(t: Floats, x: Floats, level: float) -> float:
    """Give the time at which a level is first passed, between two samples."""
    at = int(np.argmax(x > level))
    if at == 0:
        return float(t[0])
    return float(t[at - 1] + (t[at] - t[at - 1]) * (level - x[at - 1]) / (x[at] - x[at - 1]))
