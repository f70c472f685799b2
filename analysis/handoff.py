"""The level just before a pull: hands off, lever fitted. All torques of the pull count from it.

The foot of a slow ramp is easily taken for the level, and the lever may have been moved a second earlier; so the foot
is found by fitting "level, then a rising power of time" and the level is averaged only over the quiet stretch that
ends there.

Offered: ``Handoff``, ``find_handoff``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.traces import Floats

FIT_TO = 0.25
"""The fit uses the ramp up to this share of the pull's level."""

POWERS = (1.0, 1.5, 2.0, 3.0)
"""Shapes of the foot that are tried: straight, and softer starts."""

LEVEL_WINDOW_S = 1.0
"""At most this much of the quiet stretch before the foot is averaged (s): the level just before the pull counts."""


@dataclass(frozen=True, slots=True)
class Handoff:
    """Level before the pull (N·m, signed as the window), its standard uncertainty and the time of the ramp's foot."""

    level_nm: float
    u_nm: float
    foot_s: float


def find_handoff(time_s: Floats, torque_nm: Floats, top_nm: float, noise_nm: float) -> Handoff:
    """Find level and foot in a window that ends in the ramp; torque counts positive in the pull's direction.

    Parameters
    ----------
    time_s, torque_nm : ndarray, shape (n,)
        From the rest before the pull to somewhere above ``FIT_TO`` of its level.
    top_nm : float
        The pull's level, roughly, on the same scale.
    noise_nm : float
        Noise of a reading at rest.
    """
    t, y = time_s, torque_nm
    if len(t) < 4:
        return Handoff(float(y[0]), noise_nm, float(t[0]))
    level = float(np.median(y[: max(len(y) // 2, 1)]))
    for _ in range(2):
        above = np.flatnonzero(y - level > FIT_TO * (top_nm - level))
        below = y[: int(above[0])] if len(above) else y
        stop = max(len(below), 3)
        level, foot, u = _fit(t[:stop], y[:stop], noise_nm)
    return Handoff(level, u, foot)


def _fit(t: Floats, y: Floats, noise_nm: float) -> tuple[float, float, float]:
    best = (np.inf, 0, 0.0)
    n = len(t)
    feet = np.unique(np.linspace(0, n - 1, min(n, 60)).astype(int))[:-1]
    for k in feet.tolist():
        since = np.maximum(t - t[k], 0.0)
        for power in POWERS:
            shape = since**power
            spread = shape - shape.mean()
            norm = float(spread @ spread)
            slope = max(float(spread @ y) / norm, 0.0) if norm > 0 else 0.0
            rest = y - y.mean() - slope * spread
            cost = float(rest @ rest)
            if cost < best[0]:
                best = (cost, k, power)
    k = max(best[1], 1)
    level = float(np.median(y[max(0, int(np.searchsorted(t, t[k] - LEVEL_WINDOW_S))) : k]))
    quiet = np.abs(y[:k] - level) < 4 * noise_nm + 1e-9
    rough = np.flatnonzero(~quiet)
    first = int(rough[-1]) + 1 if len(rough) and rough[-1] < k - 3 else 0
    first = max(first, int(np.searchsorted(t, t[k] - LEVEL_WINDOW_S)))
    part = y[first:k]
    return float(part.mean()), float(t[k]), float(max(part.std(), noise_nm) / np.sqrt(max(len(part), 1)))
