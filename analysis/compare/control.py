"""Watch one axle over time: an exponentially weighted moving average against the band of its own reference level.

Conventions:
- Values in time order, one per job, in N·m.
- Target and scatter of a few jobs are themselves uncertain: the limits of ``watch`` are so wide that a good axle shows
  a false alarm in at most 5 % of charts of 20 jobs and its good state.

Offers ``ewma`` (target and scatter known), ``watch`` (from the first jobs), ``verdict``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from analysis.compare.trend import fit_line
from logger.errors import InputError

Floats = NDArray[np.float64]

WEIGHT = 0.3
"""Weight of the newest value: a drift shows within a few jobs, one odd job does not alarm."""

WIDTH = 3.0
"""Limits at three standard deviations of the average, where target and scatter are known."""

JOBS = 20
"""Jobs after the good state for which the rate of false alarms is stated."""

FALSE_ALARM, FALSE_DRIFT = 0.04, 0.01
"""Share of charts of a good axle of which a job lies outside, and whose good state seems to drift: 5 % together."""

CHARTS = 20_000
"""Charts that are drawn to find the limits: their rate is then known within 0.3 %."""

BASELINE_MIN = 4
"""Jobs of the good state that give target and scatter; fewer make limits that mean little."""


@dataclass(frozen=True, slots=True)
class EwmaChart:
    """An EWMA chart."""

    average: Floats  # shape (n,); the weighted average after each job
    # low, high: shape (n,); limits at each job; they widen to their steady value
    low: Floats
    high: Floats
    # target, sd: level and scatter of the good state
    target: float
    sd: float
    alarms: tuple[int, ...]  # jobs (from 0) whose average lies outside
    # steady_low, steady_high: the limits after many jobs
    steady_low: float
    steady_high: float
    baseline: int = 0  # jobs that target and scatter come from; 0 where both are known
    drift: float = 0.0  # relative change over the good state, where it is shown to change; else 0


class ChartState(StrEnum):
    """What a chart shows."""

    SIGNAL = "signal"
    NONE = "no signal shown"
    DRIFTS = "no reference level"
    TOO_FEW = "cannot be shown yet"


def verdict(chart: EwmaChart) -> tuple[ChartState, str]:
    """Say what a chart shows, in one sentence without figures of single jobs."""
    jobs, good = len(chart.average), chart.baseline
    if chart.drift:
        how = "rise" if chart.drift > 0 else "fall"
        text = f"the first {good} jobs {how} by {abs(chart.drift) * 100:.0f} % themselves: no reference level"
        return ChartState.DRIFTS, text
    if chart.alarms:
        way = "below" if chart.average[chart.alarms[0]] < chart.target else "above"
        return ChartState.SIGNAL, f"a change is shown: {way} its band"
    if jobs <= good:
        return (
            ChartState.TOO_FEW,
            f"a change cannot be shown yet: all {jobs} jobs are the reference that later ones need",
        )
    return ChartState.NONE, f"no change is shown in {jobs - good} jobs after the first {good}"


def steady_width(weight: float) -> float:
    """Give the standard deviation of the average after many jobs, as a share of that of one: sqrt(λ/(2-λ))."""
    return float(np.sqrt(weight / (2 - weight)))


def ewma(values: ArrayLike, *, target: float, sd: float, weight: float = WEIGHT, width: float = WIDTH) -> EwmaChart:
    """Chart values against a known target and scatter.

    ``z_t = λ x_t + (1-λ) z_{t-1}``, ``z_0`` the target; limits ``target ± k·sd·sqrt(λ/(2-λ)·(1-(1-λ)^{2t}))``
    (NIST/SEMATECH e-Handbook 6.3.2.4 gives the steady form).

    Raises:
        InputError: A weight outside 0..1, a scatter that is not positive, or values that are not finite.
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
    return EwmaChart(
        average, target - half, target + half, target, sd, tuple(map(int, outside)), target - steady, target + steady
    )


@lru_cache(maxsize=64)
def limit_width(baseline: int, weight: float) -> float:
    """Give the width of limits, in standard deviations of the average, from so many good jobs.

    Of ``CHARTS`` charts of a good axle, normal, ``JOBS`` jobs after its good state, ``FALSE_ALARM`` have one outside:
    drawn with a fixed seed, so that a chart is the same each time.
    """
    x = np.random.default_rng(2024).standard_normal((CHARTS, baseline + JOBS))
    good = x[:, :baseline]
    target, sd = good.mean(axis=1), good.std(axis=1, ddof=1)
    last, worst = target, np.zeros(CHARTS)
    for step in range(1, x.shape[1] + 1):
        last = weight * x[:, step - 1] + (1 - weight) * last
        half = sd * steady_width(weight) * np.sqrt(1 - (1 - weight) ** (2 * step))
        worst = np.maximum(worst, np.abs(last - target) / half)
    return float(np.quantile(worst, 1 - FALSE_ALARM))


def watch(values: ArrayLike, *, baseline: int, weight: float = WEIGHT) -> EwmaChart:
    """Chart values against the mean and scatter of the first ``baseline`` jobs, known to be good.

    Raises:
        InputError: Too few jobs for a baseline, or no scatter in it.
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
    chart = ewma(x, target=float(good.mean()), sd=sd, weight=weight, width=limit_width(baseline, weight))
    return replace(chart, baseline=baseline, drift=_drift(good))


def _drift(good: Floats) -> float:
    """Give the relative change over the good state where a line through it is unlikely by chance; else 0."""
    line = fit_line(np.arange(len(good)), good)
    return line.slope * (len(good) - 1) / abs(float(good.mean())) if line.p < FALSE_DRIFT else 0.0
