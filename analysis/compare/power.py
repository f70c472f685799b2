"""How likely a comparison shows a difference that is there: the power of the tests that ``groups`` makes.

Conventions: ``effect`` is the true difference over the standard deviation of single units, ``n`` units per group; tests
are two-sided at ``alpha``.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

POINTS = 60
"""Points of the integrals over scatters: powers to better than 1e-4."""

SURE_OF_SIGN = 4.5
"""So many standard errors from zero a difference shows with the wrong sign less than once in ten million times; the
library's tail is not a number there."""


def _beyond(edge: float, df: float, shift: float) -> float:
    """Give the chance that a noncentral t lies beyond ± edge."""
    from scipy import stats

    wrong_way = stats.nct.cdf(-edge, df, shift) if shift < SURE_OF_SIGN else 0.0
    return float(stats.nct.sf(edge, df, shift) + wrong_way)


def _quantiles(points: int) -> tuple[Floats, Floats]:
    """Give Gauss-Legendre points and weights on 0 to 1: shares of a distribution to average over."""
    nodes, weights = np.polynomial.legendre.leggauss(points)
    return (nodes + 1) / 2, weights / 2


def paired_power(effect: float, n: int, alpha: float) -> float:
    """Give the power of the paired t test over ``n`` blocks, the scatter being that within a block."""
    from scipy import stats

    return _beyond(float(stats.t.ppf(1 - alpha / 2, n - 1)), n - 1, effect / math.sqrt(2 / n))


def welch_power(effect: float, n: int, alpha: float) -> float:
    """Give the power of Welch's test with ``n`` units in both groups that scatter alike.

    Of equal groups the statistic is that of the pooled test, with 2 n - 2 degrees of freedom, but Welch's degrees of
    freedom depend on how the two variances fall out: their ratio is beta distributed and independent of their sum.
    """
    from scipy import stats

    shares, weights = _quantiles(POINTS)
    part = stats.beta.ppf(shares, (n - 1) / 2, (n - 1) / 2)
    edges = stats.t.ppf(1 - alpha / 2, (n - 1) / (part**2 + (1 - part) ** 2))
    shift = effect / math.sqrt(2 / n)
    return float(sum(w * _beyond(float(edge), 2 * n - 2, shift) for w, edge in zip(weights, edges, strict=True)))


@lru_cache(maxsize=512)
def dunnett_edge(candidates: int, n: int, control: int, alpha: float) -> float:
    """Give the two-sided critical value of Dunnett's test: candidates of ``n`` units, one control.

    P(all |T| < d) = E over s of E over z of [Φ((d s + √ρ z)/√(1-ρ)) - Φ((-d s + √ρ z)/√(1-ρ))]^k with ρ = n/(n +
    control) and s² a χ² over its degrees of freedom (C. W. Dunnett, JASA 50 (1955) 1096).
    """
    from scipy import optimize, stats
    from scipy.special import ndtr

    df, rho = candidates * n + control - candidates - 1, n / (n + control)
    shares, weights = _quantiles(POINTS)
    s = np.sqrt(stats.chi2.ppf(shares, df) / df)
    z, wz = np.polynomial.hermite_e.hermegauss(POINTS)
    wz = wz / wz.sum()

    def within(d: float) -> float:
        up = (d * s[:, None] + math.sqrt(rho) * z[None, :]) / math.sqrt(1 - rho)
        down = (-d * s[:, None] + math.sqrt(rho) * z[None, :]) / math.sqrt(1 - rho)
        return float(weights @ ((ndtr(up) - ndtr(down)) ** candidates @ wz))

    return float(optimize.brentq(lambda d: within(d) - (1 - alpha), 0.5, 60.0))


def dunnett_power(effect: float, n: int, control: int, candidates: int, alpha: float) -> float:
    """Give the power to tell one candidate that differs from the control, by Dunnett's test."""
    df = candidates * n + control - candidates - 1
    return _beyond(dunnett_edge(candidates, n, control, alpha), df, effect / math.sqrt(1 / n + 1 / control))


def sameness_power(margin: float, n: int, alpha: float, *, blocked: bool) -> float:
    """Give the power of two one-sided tests to show that two groups without difference are the same.

    Args:
        margin: Over the standard deviation of single units.
        blocked: Whether paired within ``n`` blocks, or Welch's.
    """
    from scipy import stats
    from scipy.special import ndtr

    shares, weights = _quantiles(POINTS)
    if blocked:
        df, edges, we = n - 1, np.array([stats.t.ppf(1 - alpha, n - 1)]), np.array([1.0])
    else:
        part = stats.beta.ppf(shares, (n - 1) / 2, (n - 1) / 2)
        df, edges, we = 2 * n - 2, stats.t.ppf(1 - alpha, (n - 1) / (part**2 + (1 - part) ** 2)), weights
    s = np.sqrt(stats.chi2.ppf(shares, df) / df)
    room = margin / math.sqrt(2 / n) - edges[:, None] * s[None, :]
    return float(we @ (np.maximum(0.0, 2 * ndtr(room) - 1) @ weights))
