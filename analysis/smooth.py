"""Small filters on plain arrays, linear in length.

Offered: ``moving_mean``, ``block_means``, ``sample_noise``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from analysis.traces import Floats


STRETCH, STRETCHES = 8, 16
"""Least number of values in a stretch that noise is taken from, and greatest number of stretches."""


def moving_mean(values: Floats, width: int) -> Floats:
    """Mean over ``width`` neighbours (an even width is made odd), centred; at the ends over those that exist."""
    half = max(width, 1) // 2
    if half == 0 or len(values) < 2:
        return values
    total = np.concatenate([[0.0], np.cumsum(values)])
    at = np.arange(len(values))
    low, high = np.maximum(at - half, 0), np.minimum(at + half + 1, len(values))
    return np.asarray((total[high] - total[low]) / (high - low))


def block_means(values: Floats, width: int) -> Floats:
    """Means of whole blocks of ``width`` values; a shorter last block is left out."""
    whole = len(values) // width
    return np.asarray(values[: whole * width].reshape(whole, width).mean(axis=1))


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
    medians = np.median(second[: count * size].reshape(count, size), axis=1)
    return float(np.percentile(medians, 25) / 0.6745 / np.sqrt(6.0))
