"""What a stretch of readings says: how well its mean is known, and its highest torque without that of the noise."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import block_means, moving_mean, quantile
from analysis.uncertainty.budget import NORMAL_95, t_factor

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

MEAN_BLOCKS = 200
"""The uncertainty of a mean is computed from at most about this many means of neighbours."""

GRID = 120
"""Points of the integral over a maximum's distribution: its mean to 1e-4 of a standard deviation."""


def autocorrelation(values: Floats) -> Floats:
    """Give the autocorrelation at lags 0 to n - 1 (divided by n at every lag); empty for constant values."""
    d = values - values.mean()
    covariance = np.correlate(d, d, "full")[len(d) - 1 :]
    return np.asarray(covariance / covariance[0]) if len(d) and covariance[0] > 0 else np.empty(0)


def neighbours_alike(rest: Floats, most: float) -> float:
    """Give how far neighbours in what a fit left depend on each other: autocorrelation at lag 1, from 0 to ``most``."""
    power = float(rest @ rest)
    return min(max(float(rest[1:] @ rest[:-1]) / power, 0.0), most) if power > 0 else 0.0


def mean_uncertainty(values: Floats) -> tuple[float, float]:
    """Give the standard uncertainty of the mean of dependent readings, and its degrees of freedom.

    The variance of the mean is (σ²/n) [1 + 2 Σ ρ_k] with the autocorrelation ρ_k summed as long as pairs of neighbours
    in lag add something positive, and no more than the pair before (initial monotone sequence, C. J. Geyer, Statistical
    Science 7 (1992) 473, from memory): that has no threshold, follows a slow decay to its end, and is wide rather
    than narrow where readings swing. Counting from the mean of the same readings takes the n-th part of the whole sum
    from every lag, which is given back for the lags summed (U. Wolff, Comput. Phys. Commun. 156 (2004) 143, from
    memory). Right within some per cent from about ten independent readings on.

    Args:
        values: shape (n,); Readings at equal intervals.

    Returns:
        u, dof: In the unit of the values; 0 and infinity for fewer than two, or values that are all alike.
    """
    n = len(values)
    if n < 2:
        return 0.0, np.inf
    if n > 2 * MEAN_BLOCKS:
        return mean_uncertainty(block_means(values, n // MEAN_BLOCKS))
    rho = autocorrelation(values)
    if not len(rho):
        return 0.0, np.inf
    pairs = rho[: n // 2 * 2].reshape(-1, 2).sum(axis=1)
    ends = np.flatnonzero(pairs <= 0)
    pairs = np.minimum.accumulate(pairs[: ends[0]] if len(ends) else pairs)
    factor = (2 * float(pairs.sum()) - 1) * (1 + min((4 * len(pairs) - 1) / n, 1.0))
    last_lag = 2 * len(pairs) - 1
    return float(np.sqrt(np.var(values) * max(factor, 1.0) / n)), n / (2 * last_lag + 1)


def level_uncertainty(values: Floats, least_dof: float = 1.0) -> float:
    """Give a standard uncertainty of the mean of which 1.96 make a 95 % interval, however few readings it rests on.

    ``mean_uncertainty`` is itself an estimate. Summed over lags up to W its relative variance is 2 (2 W + 1)/n (N.
    Madras, A. D. Sokal, J. Stat. Phys. 50 (1988) 109, from memory), as that of a variance with n/(2 W + 1) degrees of
    freedom has; the t factor of those, over 1.96, widens it. A stretch shorter than a few of its own correlation times
    pays for it, as far as ``least_dof`` lets it: the interval covers 95 % from ten independent readings on, 88 % of
    five (``make coverage``).
    """
    u, dof = mean_uncertainty(values)
    return u * t_factor(max(dof, least_dof)) / NORMAL_95


def expected_maximum(levels: Floats, noise: float) -> tuple[float, float]:
    """Give mean and standard deviation of the maximum of readings at given levels with independent normal noise.

    Args:
        levels: shape (n,); True values.
        noise: Standard deviation of the noise on each.

    Its distribution is the product of the normal distributions about the levels; mean and deviation by the trapezoid
    rule. With equal levels the mean is the tabled expected maximum of n normal values.
    """
    from scipy.special import log_ndtr

    highest = float(levels.max())
    near = levels[levels > highest - 6 * noise]
    counts = np.ones(len(near))
    if len(near) > GRID // 2:  # many levels: counted in bins of a tenth of the noise
        bins, found = np.unique(np.round((near - highest) / noise * 10), return_counts=True)
        near, counts = highest + bins * noise / 10, found.astype(float)
    z = np.linspace(highest - 4 * noise, highest + 7 * noise, GRID)
    step = float(z[1] - z[0])
    above = 1 - np.exp(log_ndtr((z[:, None] - near[None, :]) / noise) @ counts)
    mean = float(z[0] + step * (above.sum() - above[0] / 2))
    second = float(2 * step * ((z - z[0]) * above).sum())
    return mean, float(np.sqrt(max(second - (mean - z[0]) ** 2, 0.0)))


def highest_of(values: Floats, smooth: int) -> tuple[float, float]:
    """Give the highest torque of a stretch, less what its noise is expected to add, and the standard uncertainty.

    The highest of many noisy values lies above the highest torque: of 200 with equal torque by 2.7 deviations. How
    many compete depends on how the torque itself varies: that is estimated by a longer mean, drawn towards the level
    of the whole by as much as its scatter is no more than the noise left in it (James and Stein's estimator, from
    memory). The noise is taken from second differences, which a torque that bends slowly does not enter.

    Args:
        values: shape (n,); Means over equal times, next to each other, not overlapping.
        smooth: How many of them the longer mean runs over.
    """
    highest = float(values.max())
    n = len(values)
    if n < 8:
        return highest, float(np.std(values))
    second = values[2:] - 2 * values[1:-1] + values[:-2]
    noise = quantile(np.abs(second), 0.5) / 0.6745 / float(np.sqrt(6.0))
    if noise <= 0:
        return highest, 0.0
    longer = moving_mean(values, max(smooth, 3))
    count = 2 * (max(smooth, 3) // 2) + 1
    left, scatter = noise**2 / count, float(np.var(longer))
    kept = max(0.0, 1 - left / scatter * max(1.0, 1 - 2 * count / n)) if scatter > 0 else 0.0
    levels = longer.mean() + kept * (longer - longer.mean())
    mean, spread = expected_maximum(levels, noise)
    return highest - (mean - float(levels.max())), float(np.hypot(spread, np.sqrt(left)))
