"""The elastic line of a pull: how far the wheel turns while it only winds up, how stiffly, and after how much play.

Conventions:
Torque from the hand-off level, positive in the pull's direction; angle in degrees, counting either way. Between
``FROM`` and ``TO`` of the level at which the pack slips, angle against torque is a line: below, play is taken up and
the wheel's own drag is overcome; above, the pack begins to creep.

- *Stiffness*: torque per degree on that line.
- *Wind-up*: what the breakaway torque alone winds up at that stiffness.
- *Play*: rotation from the hand-off to where the line, drawn down, meets the hand-off torque. Only what lay open
  before this pull: after a pull the other way that is all of it, after one the same way hardly any.

Two springs in series twist by ``T (1/k1 + 1/k2)`` (statics of shafts; the virtual axle solves the same equation).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import neighbours_alike
from analysis.trace.results import Elastic
from analysis.uncertainty.budget import NORMAL_95

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

FROM, TO = 0.3, 0.7
"""The line lies between these shares of the torque at which the pack slips."""

LEAST_READINGS = 8
"""Fewer readings on the line tell nothing about how straight it is."""

WIDEST = 0.5
"""A stiffness that is not known to this share of it (95 %) is not stated."""

DRAG_NM = 10.0
"""Drag of the turned wheel and half that of the driveline (N·m): the line begins above it, which hides as much of the
play as it would wind up. Free brakes, gear in neutral: common practice, no source."""

NEIGHBOURS = 0.98
"""Neighbouring readings depend on each other at most so much: a hand's tremor outlasts many of them."""


def find_elastic(
    torque_nm: Floats,
    angle_deg: Floats,
    slip_nm: float,
    breakaway_nm: float | None,
    lag_s: float,
    interval_s: float,
    breakaway_u_nm: float = 0.0,
) -> Elastic | None:
    """Fit the elastic line of one pull.

    Args:
        torque_nm, angle_deg: shape (n,); From the foot of the ramp on.
        slip_nm: The level at which the pack slips, N·m.
        breakaway_nm: Torque at which it broke away; None: the wind-up is that of ``slip_nm``.
        lag_s: By how much torque and angle may lie apart in time (s).
        interval_s: Between two readings (s).
        breakaway_u_nm: Standard uncertainty of the breakaway torque without the transducer's gain, which cancels in the
            wind-up.

    Returns:
        None where the ramp is too short, the angle too coarse, or the wheel did not wind up.

    The standard uncertainty of the slope joins the scatter about the line (neighbours' dependence stretches it), the
    step of the angle (rectangular, at both ends of the line) and the bend: half the difference between the slopes of
    the line's lower and upper half, rectangular. That of the play adds what the angle moved within ``lag_s``
    and what drag hides (both rectangular).
    """
    if not np.isfinite(angle_deg).all():
        return None
    line = _middle(torque_nm, slip_nm)
    if line is None:
        return None
    x = torque_nm[line]
    way = 1.0 if angle_deg[line.stop - 1] >= angle_deg[line.start] else -1.0
    angle = way * angle_deg
    y = angle[line]
    slope, meets, u_slope, u_meets = _line(x, y)
    low, high = _slope(x, y, x < np.median(x)), _slope(x, y, x >= np.median(x))
    step = _step(y)
    bend = abs(high - low) / 2 / math.sqrt(3)
    u_slope = math.hypot(u_slope, bend, step / math.sqrt(6) / float(np.ptp(x)))
    if slope <= 0 or NORMAL_95 * u_slope > WIDEST * slope:
        return None
    stiffness = 1 / slope
    wound_nm = slip_nm if breakaway_nm is None else breakaway_nm
    moved = abs(float(y[-1] - y[0])) / ((len(y) - 1) * interval_s) * (lag_s + interval_s)
    hidden = DRAG_NM * slope / math.sqrt(3)
    u_play = math.hypot(u_meets, bend * float(x.mean()), step / math.sqrt(6), moved / math.sqrt(3), hidden)
    return Elastic(
        stiffness_nm_deg=stiffness,
        stiffness_u95_nm_deg=NORMAL_95 * u_slope * stiffness**2,
        wind_up_deg=wound_nm * slope,
        wind_up_u95_deg=NORMAL_95 * math.hypot(wound_nm * u_slope, breakaway_u_nm * slope),
        play_deg=max(meets - float(angle[0]), 0.0),
        play_u95_deg=NORMAL_95 * u_play,
        meets_deg=way * meets,
        way=int(way),
    )


def _middle(torque_nm: Floats, slip_nm: float) -> slice | None:
    """Where the ramp is neither play nor creep; None where that is too short."""
    reached = np.flatnonzero(torque_nm >= TO * slip_nm)
    below = np.flatnonzero(torque_nm[: reached[0]] < FROM * slip_nm) if len(reached) else reached
    if not len(below) or reached[0] - below[-1] < LEAST_READINGS:
        return None
    return slice(int(below[-1]) + 1, int(reached[0]) + 1)


def _line(x: Floats, y: Floats) -> tuple[float, float, float, float]:
    """Fit y over x: slope, y at zero, and the standard uncertainty of both from the scatter."""
    middle, dx = float(x.mean()), x - x.mean()
    norm = float(dx @ dx)
    slope = float(dx @ y) / norm
    meets = float(y.mean()) - slope * middle
    rest = y - meets - slope * x
    power = float(rest @ rest)
    r1 = neighbours_alike(rest, NEIGHBOURS)
    free = max(len(x) * (1 - r1) / (1 + r1) - 2, 1.0)
    u = math.sqrt(power / free / norm)
    return slope, meets, u, math.hypot(u * middle, math.sqrt(power / free / len(x)))


def _slope(x: Floats, y: Floats, part: np.ndarray[tuple[int], np.dtype[np.bool_]]) -> float:
    if not part.any():
        return 0.0
    dx = x[part] - x[part].mean()
    norm = float(dx @ dx)
    return float(dx @ y[part]) / norm if norm > 0 else 0.0


def _step(angle: Floats) -> float:
    """Give the smallest step between two angles that differ."""
    steps = np.abs(np.diff(angle))
    moved = steps[steps > 0]
    return float(moved.min()) if len(moved) else 0.0
