"""How far pulls scatter: what they show themselves, what is known beforehand, what stands out, what follows a course.

Conventions:
- Values are in the order in which the pulls were made, N·m.
- What is known beforehand is a relative standard deviation with the degrees of freedom that say how well it is known.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from analysis.compare.trend import fit_line
from analysis.uncertainty.budget import t_factor

LEAST_PULLS = 3  # fewer give no scatter worth the name

# Standard error of the median of n normal values over that of their mean: by integration of the middle value's
# density (and of the two middle ones'); sqrt(pi/2) = 1.253 for many (tables: T. Hojo, Biometrika 23 (1931) 315, from
# memory).
MEDIAN_FACTOR = {1: 1.0, 2: 1.0, 3: 1.160, 4: 1.092, 5: 1.198, 6: 1.135, 7: 1.214, 8: 1.160}
MANY_FACTOR = math.sqrt(math.pi / 2)

# Pull-to-pull scatter (relative standard deviation) that stands in where there are too few pulls, unless the user
# states one: upper ends of what well-made pulls show, breakaway 2-4 %, rotating 0.8-1.4 % (common practice, no source).
ASSUMED_SCATTER = {"breakaway": 0.04, "rotating mean": 0.015, "rotating maximum": 0.03}

# How well that is known, as degrees of freedom (JCGM 100, G.4.2: 3 are a relative uncertainty of 40 %): pulls that
# scatter half as much again are still covered by more than 90 % of the intervals. A scatter that the user states comes
# from a study of some twenty repeats: known to a quarter.
ASSUMED_DOF, STATED_DOF = 3.0, 8.0

# A value is an outlier by Grubbs' two-sided test at this level: so many clean jobs have one, whatever their number of
# pulls. With fewer than five values the test would fire on readings that happen to be equal.
OUTLIER_LEVEL = 0.05
OUTLIER_LEAST = 5
OUTLIER_RULE = (
    "an outlier is the pull furthest from the mean, if that is further than in 95 of 100 clean jobs "
    "(Grubbs, five pulls or more)"
)

# A trend is reported when it is unlikely by chance and large enough to matter.
TREND_P = 0.05
TREND_LEAST = 0.03  # of the value, from first to last pull
TREND_LEAST_PULLS = 4  # a line through three points has one degree of freedom

# Neighbouring pulls that are more alike than four of five jobs of independent pulls show make the interval wider;
# beyond this correlation so few pulls tell nothing about their level.
ALIKE_Z = 0.84
MOST_ALIKE = 0.7


@dataclass(frozen=True, slots=True)
class Prior:
    """A scatter known beforehand: relative standard deviation, its degrees of freedom, whether the user stated it."""

    relative: float
    dof: float
    stated: bool

    @classmethod
    def of(cls, quantity: str, stated: float | None = None) -> Prior:
        """Give what the user states, or what is assumed for a quantity."""
        if stated is not None:
            return cls(stated, STATED_DOF, True)
        return cls(ASSUMED_SCATTER.get(quantity, max(ASSUMED_SCATTER.values())), ASSUMED_DOF, False)

    @property
    def words(self) -> str:
        """Name it: ``a repeatability of 4 % is assumed``."""
        return f"a repeatability of {self.relative * 100:.2g} % is {'stated' if self.stated else 'assumed'}"


@dataclass(frozen=True, slots=True)
class Scatter:
    """Standard deviation of one pull, its degrees of freedom, and where it comes from."""

    sd: float
    dof: float
    from_pulls: bool


def scatter_of(own_sd: float, n: int, level: float, prior: Prior) -> Scatter:
    """Give the scatter of pulls: pooled with what is known beforehand, or from the pulls alone where that is narrower.

    Args:
        own_sd: Standard deviation of the pulls; of no account for one.
        n: Pulls.
        level: Their value, N·m.
        prior: Known beforehand.

    1. Pooled: s² = [ν₀ s₀² + (n - 1) s²]/(ν₀ + n - 1) with ν₀ + n - 1 degrees of freedom (the conjugate analysis of a
       normal variance, from memory).
    2. Two pulls that differ by more than is known beforehand are taken no better than three that scatter as far: so a
       third pull like the first two never widens the interval.
    3. From three pulls on their own scatter counts alone where t s is smaller: a workshop whose pulls agree well need
       not pay for those of others. Which of the two is taken costs little: with normal pulls 95-96 % of intervals
       cover at the assumed scatter and below, 92-95 % at half as much again (``make coverage``).
    """
    before, dof = prior.relative * abs(level), prior.dof + n - 1
    pooled = Scatter(math.sqrt((prior.dof * before**2 + (n - 1) * own_sd**2) / dof), dof, False)
    if n == LEAST_PULLS - 1:
        third = scatter_of(own_sd, LEAST_PULLS, level, prior)
        return replace(pooled, sd=pooled.sd * max(1.0, _width(third, LEAST_PULLS) / _width(pooled, n)))
    if n < LEAST_PULLS:
        return pooled
    own = Scatter(own_sd, n - 1, True)
    return own if _width(own, n) <= _width(pooled, n) else pooled


def _width(scatter: Scatter, n: int) -> float:
    """Give the half-width of the interval of the median of ``n`` pulls."""
    return t_factor(scatter.dof) * scatter.sd * median_factor(n) / math.sqrt(n)


def median_factor(n: int) -> float:
    """Give the standard error of the median of n normal values over that of their mean."""
    return MEDIAN_FACTOR.get(n, MANY_FACTOR)


def outliers(values: Sequence[float], least_sd: float = 0.0) -> tuple[int, ...]:
    """Give the place of an outlier by ``OUTLIER_RULE``, or nothing.

    Args:
        values: Pulls.
        least_sd: What a single reading leaves open: readings that happen to agree better do not make the next one stand
            out.

    Reference: F. E. Grubbs, Technometrics 11 (1969) 1; NIST/SEMATECH e-Handbook, 1.3.5.17.1.
    """
    n = len(values)
    if n < OUTLIER_LEAST:
        return ()
    from scipy.special import stdtrit  # here, so that --help need not wait for it

    mean, sd = statistics.fmean(values), max(statistics.stdev(values), least_sd)
    furthest = max(range(n), key=lambda i: abs(values[i] - mean))
    t2 = float(stdtrit(n - 2, 1 - OUTLIER_LEVEL / (2 * n))) ** 2
    critical = (n - 1) / math.sqrt(n) * math.sqrt(t2 / (n - 2 + t2))
    return (furthest,) if sd > 0 and abs(values[furthest] - mean) > critical * sd else ()


def persistence(values: Sequence[float]) -> float:
    """Give the factor by which pulls that follow each other make the uncertainty of their level larger, or 1.

    1. Successive differences: η = Σ (x_{i+1} - x_i)²/Σ (x_i - x̄)² is 2 for independent values, with variance
       4 (n - 2)/(n² - 1) (J. von Neumann, Ann. Math. Stat. 12 (1941) 367, from memory).
    2. Where it is lower than in four of five independent jobs, the correlation of neighbours is r = 1 - η/2, less its
       bias (1 + 4 r)/n (M. G. Kendall, Biometrika 41 (1954) 403, from memory), at most 0.7.
    3. With g = 1 + 2 Σ (1 - k/n) r^k the mean's variance is g times larger than of independent values, and s² smaller
       by (n - g)/(n - 1).

    So few pulls show a course only where it is strong: of first-order correlation 0.7 about 80 % of intervals cover,
    against 70 % without it.
    """
    n = len(values)
    if n < TREND_LEAST_PULLS:
        return 1.0
    mean = statistics.fmean(values)
    squares = sum((v - mean) ** 2 for v in values)
    if squares <= 0:
        return 1.0
    eta = sum((b - a) ** 2 for a, b in pairwise(values)) / squares
    if (2 - eta) / math.sqrt(4 * (n - 2) / (n * n - 1)) <= ALIKE_Z:
        return 1.0
    r = 1 - eta / 2
    r = min(max(r + (1 + 4 * r) / n, 0.0), MOST_ALIKE)
    g = 1 + 2 * sum((1 - k / n) * r**k for k in range(1, n))
    return math.sqrt(g * (n - 1) / (n - g))


def warm_up(values: Sequence[float]) -> str:
    """Say whether values in the order they were made drift: warming up, running in. Empty where nothing is shown.

    >>> warm_up([30.0, 29.0, 28.1, 27.0, 26.1])[:30]
    'the value falls by 14.0 % from'
    """
    n = len(values)
    if n < TREND_LEAST_PULLS or (mean := statistics.fmean(values)) == 0:
        return ""
    line = fit_line(range(n), values)
    total = line.slope * (n - 1) / mean
    if not (line.p < TREND_P and abs(total) > TREND_LEAST):
        return ""
    how = "rises" if total > 0 else "falls"
    return (
        f"the value {how} by {abs(total) * 100:.1f} % from first to last pull (p = {line.p:.2g}): warming up or "
        "running in; go on until it settles, or compare only at the same temperature"
    )
