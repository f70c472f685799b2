"""The rotating torque: the time average while the pack keeps slipping under a steady hand.

Offered: ``Plateau``, ``find_plateau``, ``effective_count``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.smooth import moving_mean

if TYPE_CHECKING:
    from analysis.traces import Bools, Floats

SETTLE_S = 0.25
"""The swing of wheel and shaft after the breakaway has died away, or at least averages out, after this time (s)."""

RELEASE_S = 0.3
"""The hand leaves the lever over about this time (s) before the torque is gone."""

LEAST_S = 0.5
"""A steady stretch shorter than this is no plateau (s)."""

BAND = 0.06
"""Relative departure of the short-time mean from the level that a steady hand does not make."""

SHORT_MEAN_S = 0.3
"""Length of the short-time mean (s): longer than a period of the swing (0.07-0.2 s)."""


@dataclass(frozen=True, slots=True)
class Plateau:
    """Level over the steady time, its standard uncertainty, bounds, and the highest torque in it."""

    start_s: float
    end_s: float
    torque_nm: float
    u_nm: float
    steady_s: float
    max_nm: float
    steady: Bools


def find_plateau(time_s: Floats, torque_nm: Floats, start_s: float, end_s: float, wide: float = 0.0) -> Plateau | None:
    """Average over what is steady between the breakaway and the release."""
    inside = (time_s >= start_s + SETTLE_S) & (time_s <= end_s - RELEASE_S)
    if inside.sum() < 3:
        return None
    step = (time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    short = moving_mean(torque_nm, round(SHORT_MEAN_S / step))
    level = float(np.median(torque_nm[inside]))
    away = np.abs(short - level) > max(BAND, wide) * abs(level)
    steady = inside & ~away
    if steady.sum() * step < LEAST_S:
        return None
    x = torque_nm[steady]
    t = time_s[steady]
    value = float(x.mean())
    return Plateau(
        float(t[0]),
        float(t[-1]),
        value,
        float(x.std() / np.sqrt(effective_count(x))),
        float(steady.sum() * step),
        float(x.max()),
        steady,
    )


def effective_count(values: Floats) -> float:
    """Give the number of independent values that would determine the mean as well."""
    n = len(values)
    if n < 3:
        return float(n)
    d = values - values.mean()
    norm = float(d @ d)
    if norm <= 0:
        return float(n)
    r1 = float(d[1:] @ d[:-1]) / norm
    r1 = min(max(r1, 0.0), 0.999)
    return max(n * (1 - r1) / (1 + r1), 1.0)
