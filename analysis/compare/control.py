"""Watch one axle over time: an exponentially weighted moving average against limits from its own good state.

Conventions: values in time order, one per job, in N·m.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

Floats = NDArray[np.float64]

WEIGHT = 0.3
"""Weight of the newest value: a drift shows within a few jobs, one odd job does not alarm."""

WIDTH = 3.0
"""Limits at three standard deviations of the average."""

BASELINE_MIN = 4
"""Jobs of the good state that give target and scatter; fewer make limits that mean little."""


@dataclass(frozen=True, slots=True)
class Chart:
    """An EWMA chart.

    Attributes
    ----------
    average : ndarray, shape (n,)
        The weighted average after each job.
    low, high : ndarray, shape (n,)
        Limits at each job; they widen to their steady value.
    target, sd : float
        Level and scatter of the good state.
    alarms : tuple of int
        Jobs (from 0) whose average lies outside.
    steady_low, steady_high : float
        The limits after many jobs.
    """

    average: Floats
    low: Floats
    high: Floats
    target: float
    sd: float
    alarms: tuple[int, ...]
    steady_low: float
    steady_high: float


def steady_width(weight: float) -> float:
    """Give the standard deviation of the average after many jobs, as a share of that of one: sqrt(λ/(2-λ))."""
    return float(np.sqrt(weight / (2 - weight)))


def ewma(values: ArrayLike, *, target: float, sd: float, weight: float = WEIGHT, width: float = WIDTH) -> Chart:
    """Chart values against a known target and scatter.

    Notes
    -----
    ``z_t = λ x_t + (1-λ) z_{t-1}``, ``z_0`` the target; limits ``target ± k·sd·sqrt(λ/(2-λ)·(1-(1-λ)^{2t}))``
    (NIST/SEMATECH e-Handbook 6.3.2.4 gives the steady form).

    Raises
    ------
    InputError
        A weight outside 0..1, a scatter that is not positive, or values that are not finite.
    """
    x = np.asarray(values, dtype=float)
    if not (0 < weight <= 1 and sd > 0 and width > 0 and np.isfinite(target)):
        raise InputError("a chart needs a weight between 0 and 1, and a target and a scatter larger than zero")
    if x.ndim != 1 or not np.isfinite(x).all():
        raise InputError("a chart needs one finite value per job")
    average = np.empty(len(x))
    last = target
    for i, value in enumerate(x):
        last = average[i] = weight * value + (1 - weight) * last
    steps = np.arange(1, len(x) + 1)
    half = width * sd * steady_width(weight) * np.sqrt(1 - (1 - weight) ** (2 * steps))
    outside = np.flatnonzero(np.abs(average - target) > half)
    steady = width * sd * steady_width(weight)
    return Chart(
        average, target - half, target + half, target, sd, tuple(map(int, outside)), target - steady, target + steady
    )


def watch(values: ArrayLike, *, baseline: int, weight: float = WEIGHT, width: float = WIDTH) -> Chart:
    """Chart values against the mean and scatter of the first ``baseline`` jobs, known to be good.

    Raises
    ------
    InputError
        Too few jobs for a baseline, or no scatter in it.
    """
    x = np.asarray(values, dtype=float)
    if baseline < BASELINE_MIN or len(x) < baseline:
        raise InputError(
            f"a chart needs {BASELINE_MIN} or more good jobs as its baseline; there are {min(baseline, len(x))}"
        )
    good = x[:baseline]
    sd = float(good.std(ddof=1))
    if not sd > 0:
        raise InputError("the baseline jobs are all equal: no scatter to draw limits from")
    return ewma(x, target=float(good.mean()), sd=sd, weight=weight, width=width)
