"""One load on the lever, read: is it a pull, and what does it say.

Offered: ``Window``, ``read_pull``.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from analysis.breakaway import Peak, find_peak
from analysis.handoff import find_handoff
from analysis.plateau import Plateau, find_plateau
from analysis.results import Breakaway, Code, Pull, Reason, Rotating
from analysis.smooth import sample_noise
from analysis.traces import Samples, Sensor, spikes

DISTINCT = 0.045
"""Relative height of a peak above the plateau from which it is called distinct: hand and inertia alone make a hump of
2.6 % (median) on packs without a static peak."""


@dataclass(frozen=True, slots=True)
class Window:
    """A span with the rest before it: ``first`` and ``last`` are the span's samples within the window."""

    samples: Samples
    first: int
    last: int
    level_nm: float
    noise_nm: float
    from_start: bool
    to_end: bool


def read_pull(window: Window, sensor: Sensor) -> Pull | None:
    """Read one span; None where it is no pull at all (a bump, a step, noise)."""
    t, y = window.samples.time_s, window.samples.torque_nm
    inner = y[window.first : window.last] - window.level_nm
    if len(inner) < 4:
        return None
    sign = 1 if inner.max() > -inner.min() else -1
    y = sign * y
    noise = sample_noise(y)
    good = ~spikes(y, noise)
    t, y = t[good], y[good]
    first = int(np.searchsorted(t, window.samples.time_s[window.first]))
    last = int(np.searchsorted(t, window.samples.time_s[min(window.last, len(window.samples)) - 1], "right"))
    level = sign * window.level_nm
    top = float(np.percentile(y[first:last], 90))
    half = np.flatnonzero(y[first:last] - level > 0.5 * (top - level)) + first
    if not len(half) or t[half[-1]] - t[half[0]] < 0.7:
        return None
    up = int(half[0])
    if not window.from_start:
        hand = find_handoff(t[: up + 1], y[: up + 1], level, top, noise)
        level, foot, u_level = hand.level_nm, float(t[hand.foot]), hand.u_nm
    else:
        level, foot, u_level = float(np.median(y[last:])) if last < len(y) else level, float(t[0]), noise
    x = y - level
    slip = float(np.median(x[half[0] : half[-1] + 1]))
    end = float(t[half[-1]])
    held = np.flatnonzero(x[: half[-1] + 1] > 0.85 * slip)
    release = float(t[held[-1]])
    begin = int(np.searchsorted(t, foot))
    peak = None if window.from_start else find_peak(t[begin : half[-1] + 1], x[begin : half[-1] + 1], slip, noise)
    after = float(t[0]) if peak is None else peak.time_s
    plateau = find_plateau(t, x, after, release)
    if plateau is None and (peak is None or release - after < 0.5):
        return None
    return Pull(
        start_s=foot,
        end_s=end,
        direction=sign,
        handoff_nm=sign * level,
        breakaway=_breakaway(peak, plateau, u_level, sensor),
        rotating=_rotating(plateau, u_level, sensor),
        reasons=(Reason(Code.CUT_START, "start the recording before the pull"),) if window.from_start else (),
    )


def _breakaway(peak: Peak | None, plateau: Plateau | None, u_level: float, sensor: Sensor) -> Breakaway | None:
    if peak is None:
        return None
    u = float(np.hypot(np.hypot(peak.u_nm, u_level), 0.006 * peak.torque_nm))
    u95 = 1.96 * float(np.hypot(u, sensor.relative_u * peak.torque_nm))
    distinct = plateau is None or peak.torque_nm > (1 + DISTINCT) * plateau.torque_nm
    return Breakaway(peak.time_s, peak.torque_nm, u, u95, distinct)


def _rotating(plateau: Plateau | None, u_level: float, sensor: Sensor) -> Rotating | None:
    if plateau is None:
        return None
    u = float(np.hypot(np.hypot(plateau.u_nm, u_level), 0.004 * plateau.torque_nm))
    u95 = 1.96 * float(np.hypot(u, sensor.relative_u * plateau.torque_nm))
    return Rotating(plateau.start_s, plateau.end_s, plateau.torque_nm, u, u95, plateau.max_nm)
