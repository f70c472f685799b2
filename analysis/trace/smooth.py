"""Small filters on plain arrays, linear in length."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.trace.traces import Bools, Floats

STRETCH, STRETCHES = 8, 16
"""Least number of values in a stretch that noise is taken from, and greatest number of stretches."""

FEW, RANGE = 20, 7.5
"""So few values of white noise keep within this many deviations (all but one set in 10^5)."""

CROWD = 0.4
"""Share of the values that must crowd: a pull spends that much of its time above half its torque at its level."""

ENOUGH = 1000
"""Values that are enough for a percentile: its own deviation is then a few hundredths of theirs."""


def moving_mean(values: Floats, width: int) -> Floats:
    """Mean over ``width`` neighbours (an even width is made odd), centred; at the ends over those that exist."""
    n, half = len(values), max(width, 1) // 2
    if half == 0 or n < 2:
        return values
    total = np.zeros(n + 2 * half + 1)  # sums up to here, flat beyond the ends
    np.cumsum(values, out=total[half + 1 : half + 1 + n])
    total[half + 1 + n :] = total[half + n]
    count, ends = np.full(n, 2.0 * half + 1), min(half, n)
    missing = np.arange(half, half - ends, -1)
    count[:ends] -= missing
    count[n - ends :] -= missing[::-1]
    return np.asarray((total[2 * half + 1 :] - total[:n]) / count)


def last_where(marked: Bools) -> int:
    """Give the index of the last marked value; -1 if none is.

    >>> last_where(np.array([True, False])), last_where(np.array([False])), last_where(np.array([], bool))
    (0, -1, -1)
    """
    back = int(np.argmax(marked[::-1])) if len(marked) else 0
    at = len(marked) - 1 - back
    return at if at >= 0 and marked[at] else -1


def thin(values: Floats) -> Floats:
    """Give about every n-th value, ``ENOUGH`` in all: for medians and percentiles of a long stretch."""
    return values[:: max(1, len(values) // ENOUGH)]


def quantile(values: Floats, share: float) -> float:
    """Give the value below which this share of the values lies (no interpolation; NumPy's takes ten times longer)."""
    at = min(int(share * len(values)), len(values) - 1)
    ordered = values.copy()
    ordered.partition(at)
    return float(ordered[at])


def crowded(values: Floats) -> float:
    """Give the value about which most values crowd: the mean of the shortest interval that holds ``CROWD`` of them."""
    ordered = np.sort(values)
    count = max(1, int(CROWD * len(ordered)))
    widths = ordered[count - 1 :] - ordered[: len(ordered) - count + 1]
    at = len(widths) - 1 - int(np.argmin(widths[::-1]))  # the highest of equal ones
    return float(ordered[at : at + count].mean())


def parabola(x: Floats, y: Floats) -> tuple[float, float, float, float]:
    """Fit ``a + b x + c x²`` by least squares; give a, b, c and the deviation of the rest (for n > 3 values)."""
    n, mean = len(x), float(x.sum()) / len(x)
    u = x - mean  # linear and square term made orthogonal: no system of equations to solve
    square = u * u
    s2, s3 = float(square.sum()), float(square @ u)
    bent = square - s2 / n - s3 / s2 * u
    c = float(bent @ y) / float(bent @ bent)
    b = float(u @ y) / s2 - c * s3 / s2
    a = float(y.sum()) / n - c * s2 / n
    rest = y - (a + u * (b + c * u))
    a, b = a - mean * (b - c * mean), b - 2 * c * mean
    return a, b, c, float(np.sqrt(rest @ rest / (n - 3)))


def block_means(values: Floats, width: int) -> Floats:
    """Means of whole blocks of ``width`` values; a shorter last block is excluded."""
    whole = len(values) // width
    return np.asarray(np.add.reduce(values[: whole * width].reshape(whole, width), axis=1) / width)


def sample_noise(values: Floats) -> float:
    """Estimate the deviation of white noise on top of something smooth, from second differences of quiet stretches.

    For white noise the second difference has the variance 6 σ², and the median of its magnitude is 0.6745 of its
    deviation. The lower quartile over stretches is taken, so that bumps and ringing do not count as noise.
    """
    if len(values) < 4:
        return 0.0
    second = np.abs(values[2:] - 2 * values[1:-1] + values[:-2])
    count = max(1, min(len(second) // STRETCH, STRETCHES))
    size = len(second) // count
    medians = np.partition(second[: count * size].reshape(count, size), size // 2, axis=1)[:, size // 2]
    return quantile(medians, 0.25) / 0.6745 / float(np.sqrt(6.0))


def least_noise(values: Floats) -> float:
    """Estimate the deviation of white noise from few values, of which up to two thirds may belong to a ramp.

    A quarter of the second differences of white noise are smaller than 0.3186 of their deviation. Where so few values
    range further than noise does, a ramp is most of them: then the three in a row that lie closest tell, whose range is
    1.693 deviations on average (``d2`` of three, as on control charts).
    """
    if len(values) < 4:
        return 0.0
    noise = quantile(np.abs(values[2:] - 2 * values[1:-1] + values[:-2]), 0.25) / 0.3186 / float(np.sqrt(6.0))
    if len(values) > FEW or float(np.ptp(values)) < RANGE * noise:
        return noise
    return min(noise, float(np.ptp(np.lib.stride_tricks.sliding_window_view(values, 3), axis=1).min()) / 1.693)
