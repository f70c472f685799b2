"""The breakaway torque: the first peak after which sustained slip follows.

Offered: ``Peak``, ``find_peak``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.smooth import moving_mean

if TYPE_CHECKING:
    from analysis.traces import Floats

FALL = 0.03
"""Share by which the torque must fall below its running maximum for a peak to be over."""

EXCEEDED_S = 0.3
"""A peak that is exceeded by ``FALL`` within this time (s) was a tremor on the ramp, not the breakaway."""

FLAT_S = 1.0
"""Without any fall the search for a peak ends this long (s) after the torque reached its slip level."""

SMOOTH_S = 0.012
"""Smoothing before the search (s): short against the sharpest real peak (a 15 Hz half period is 33 ms)."""


@dataclass(frozen=True, slots=True)
class Peak:
    """Where the peak is, what it reads, and the standard uncertainty of that."""

    time_s: float
    torque_nm: float
    u_nm: float
    index: int


def find_peak(time_s: Floats, torque_nm: Floats, slip_nm: float, noise_nm: float) -> Peak | None:
    """Find the first peak that counts.

    Parameters
    ----------
    time_s, torque_nm : ndarray, shape (n,)
        The pull from its foot, hand-off level subtracted, positive in the pull's direction.
    slip_nm : float
        The level at which the pack slips, roughly.
    noise_nm : float
        Noise of one reading.
    """
    step = (time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    x = moving_mean(torque_nm, round(SMOOTH_S / step))
    noise = noise_nm / np.sqrt(max(1, round(SMOOTH_S / step)))
    reached = np.flatnonzero(x > 0.8 * slip_nm)
    if not len(reached):
        return None
    start = int(reached[0])
    at = start
    while True:
        at = _running_peak(time_s, x, at, noise)
        later = slice(at, int(np.searchsorted(time_s, time_s[at] + EXCEEDED_S)))
        high = at + int(np.argmax(x[later])) if later.stop > at else at
        if x[high] <= x[at] * (1 + FALL) + 3 * noise or high == at:
            break
        at = high
    return _read_peak(time_s, torque_nm, x, at, noise_nm)


def _running_peak(t: Floats, x: Floats, start: int, noise: float) -> int:
    """First local maximum from ``start`` below which the torque falls clearly, or the highest within ``FLAT_S``."""
    stop = max(int(np.searchsorted(t, t[start] + FLAT_S)), start + 2)
    part = x[start:stop]
    top = np.maximum.accumulate(part)
    fallen = np.flatnonzero(part < top * (1 - FALL) - 3 * noise)
    end = int(fallen[0]) + 1 if len(fallen) else len(part)
    return start + int(np.argmax(part[:end]))


def _read_peak(t: Floats, raw: Floats, x: Floats, at: int, noise_nm: float) -> Peak:
    """Fit a parabola through the top of the raw samples; with few samples take the highest as it is."""
    near = np.flatnonzero(np.abs(t - t[at]) <= 2 * SMOOTH_S)
    if len(near) >= 7:
        dt = t[near] - t[at]
        a, b, c = np.polyfit(dt / SMOOTH_S, raw[near], 2)
        if a < 0 and abs(b / (2 * a)) <= 2:
            return Peak(float(t[at]), float(c - b * b / (4 * a)), noise_nm / np.sqrt(len(near) / 2), at)
    return Peak(float(t[at]), float(x[at]), noise_nm, at)
