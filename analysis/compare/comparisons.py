"""Differences between groups: the effect and its interval first, the p value second.

Conventions:
- A sample is a 1-D array of one value per *experimental unit* (a fill, a build), never per pull.
- A difference is treated minus control, a ratio treated over control; intervals are 95 % unless a level is given.
- Ratios are compared on the log scale: values must be positive.

Offers ``welch`` (two groups), ``paired`` (two groups within blocks), ``dunnett`` (many against a control), ``tukey``
(all pairs), ``equivalence`` (two one-sided tests) and ``bootstrap``. scipy.stats does the statistics.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

Floats = NDArray[np.float64]

LEVEL = 0.95

BOOTSTRAP_MIN = 5
"""With fewer units per group the bootstrap has too few distinct resamples to mean its level."""

RESAMPLES = 9999


@dataclass(frozen=True, slots=True)
class Interval:
    """A value with its interval."""

    value: float
    low: float
    high: float

    def exp(self) -> Interval:
        """Give the interval back from the log scale."""
        return Interval(math.exp(self.value), math.exp(self.low), math.exp(self.high))


@dataclass(frozen=True, slots=True)
class Effect:
    """One group against another."""

    # treated, control: the groups' names
    treated: str
    control: str
    difference: Interval  # treated minus control
    ratio: Interval | None  # treated over control; None where a value is not positive or the method gives none
    p: float  # two-sided p value of "no difference", adjusted where the method adjusts
    df: float  # degrees of freedom
    # n_treated, n_control: units in each group
    n_treated: int
    n_control: int
    method: str  # what was computed

    @property
    def shown(self) -> bool:
        """Whether a difference is shown: its interval, which decides everywhere, does not hold zero."""
        return not self.difference.low <= 0 <= self.difference.high


def sample(values: ArrayLike, name: str, *, at_least: int = 2) -> Floats:
    """Check one sample.

    Raises:
        InputError: Values that are not finite, or too few of them.
    """
    x = np.asarray(values, dtype=float)
    if x.ndim != 1 or not np.isfinite(x).all():
        raise InputError(f"group '{name}': every unit needs one finite value")
    if len(x) < at_least:
        raise InputError(
            f"group '{name}' has {len(x)} unit{'s' * (len(x) != 1)} and needs {at_least} or more: the scatter from "
            "fill to fill cannot be known from pulls of one fill. Repeat the fill, or plan with heldwheel-read plan."
        )
    return x


def welch(treated: ArrayLike, control: ArrayLike, *, names: tuple[str, str] = ("treated", "control")) -> Effect:
    """Compare two groups without assuming that they scatter alike (Welch).

    >>> e = welch([30.1, 31.0, 29.4], [26.0, 27.1, 25.2])
    >>> round(e.difference.value, 2), round(e.difference.low, 2), round(e.difference.high, 2)
    (4.07, 2.05, 6.09)
    """
    x, y = sample(treated, names[0]), sample(control, names[1])
    difference, p, df = _welch(x, y)
    ratio = _welch(np.log(x), np.log(y))[0].exp() if min(x.min(), y.min()) > 0 else None
    return Effect(*names, difference, ratio, p, df, len(x), len(y), "Welch t")


def _welch(x: Floats, y: Floats) -> tuple[Interval, float, float]:
    from scipy import stats

    if np.ptp(x) + np.ptp(y) == 0:
        raise InputError("all values within both groups are equal: there is no scatter to compare with")
    test = stats.ttest_ind(x, y, equal_var=False)
    bounds = test.confidence_interval(LEVEL)
    interval = Interval(float(x.mean() - y.mean()), float(bounds.low), float(bounds.high))
    return interval, float(test.pvalue), float(test.df)


def paired(
    treated: Mapping[str, float],
    control: Mapping[str, float],
    *,
    names: tuple[str, str] = ("treated", "control"),
    family: int = 1,
) -> Effect:
    """Compare two groups within blocks (day, operator): the differences of blocks that hold both.

    Args:
        treated, control: One value per block.
        family: Comparisons that are to hold together; interval and p are widened for it (Bonferroni, slightly safe).

    Raises:
        InputError: Fewer than two blocks hold both groups, or all differ alike.
    """
    x, y = _in_blocks(treated, control, names)
    difference, p, df = _within(x, y, family)
    ratio = _within(np.log(x), np.log(y), family)[0].exp() if min(x.min(), y.min()) > 0 else None
    method = f"paired t within {len(x)} blocks" + (", jointly 95 %" if family > 1 else "")
    return Effect(*names, difference, ratio, p, df, len(x), len(y), method)


def _in_blocks(
    treated: Mapping[str, float], control: Mapping[str, float], names: tuple[str, str]
) -> tuple[Floats, Floats]:
    """Give the values of the blocks that hold both, in one order."""
    blocks = [block for block in treated if block in control]
    if len(blocks) < 2:
        raise InputError(
            f"'{names[0]}' and '{names[1]}' share {len(blocks)} block{'s' * (len(blocks) != 1)}; "
            "two or more are needed to compare within blocks"
        )
    x, y = (np.array([group[block] for block in blocks], dtype=float) for group in (treated, control))
    if np.ptp(x - y) == 0:
        raise InputError("all blocks differ by exactly the same amount: there is no scatter to compare with")
    return x, y


def _within(x: Floats, y: Floats, family: int) -> tuple[Interval, float, float]:
    from scipy import stats

    test = stats.ttest_rel(x, y)
    bounds = test.confidence_interval(1 - (1 - LEVEL) / family)
    interval = Interval(float((x - y).mean()), float(bounds.low), float(bounds.high))
    return interval, min(1.0, float(test.pvalue) * family), float(test.df)


def dunnett(treated: Mapping[str, ArrayLike], control: ArrayLike, *, control_name: str = "control") -> list[Effect]:
    """Compare several groups with one control, all statements holding together (Dunnett 1955).

    The groups are taken to scatter alike; the intervals hold jointly at 95 %.
    """
    y = sample(control, control_name)
    groups = {name: sample(values, name) for name, values in treated.items()}
    if not groups:
        raise InputError("there is no group besides the control")
    differences, p = _dunnett(list(groups.values()), y)
    ratios: list[Interval | None] = [None] * len(groups)
    if min(x.min() for x in (y, *groups.values())) > 0:
        logs, _ = _dunnett([np.log(x) for x in groups.values()], np.log(y))
        ratios = [interval.exp() for interval in logs]
    df = float(sum(map(len, groups.values())) + len(y) - len(groups) - 1)
    return [
        Effect(name, control_name, differences[i], ratios[i], p[i], df, len(x), len(y), "Dunnett, jointly 95 %")
        for i, (name, x) in enumerate(groups.items())
    ]


def _dunnett(groups: list[Floats], y: Floats) -> tuple[list[Interval], list[float]]:
    from scipy import stats

    # A fixed seed: the multivariate t integral is sampled, and a reading must be the same each time.
    result = stats.dunnett(*groups, control=y, rng=np.random.default_rng(1955))
    bounds = result.confidence_interval(LEVEL)
    middles = [float(x.mean() - y.mean()) for x in groups]
    return [
        Interval(m, float(low), float(high)) for m, low, high in zip(middles, bounds.low, bounds.high, strict=True)
    ], [float(p) for p in result.pvalue]


def tukey(groups: Mapping[str, ArrayLike]) -> list[Effect]:
    """Compare every pair of groups, all statements holding together (Tukey, Kramer's form for unequal sizes)."""
    from scipy import stats

    named = {name: sample(values, name) for name, values in groups.items()}
    if len(named) < 2:
        raise InputError("two or more groups are needed to compare pairs")
    result = stats.tukey_hsd(*named.values())
    interval = result.confidence_interval(LEVEL)
    names, values = list(named), list(named.values())
    df = float(sum(map(len, values)) - len(values))
    return [
        Effect(
            names[j],
            names[i],
            Interval(float(values[j].mean() - values[i].mean()), float(interval.low[j, i]), float(interval.high[j, i])),
            None,
            float(result.pvalue[j, i]),
            df,
            len(values[j]),
            len(values[i]),
            "Tukey, jointly 95 %",
        )
        for i in range(len(names))
        for j in range(i + 1, len(names))
    ]


@dataclass(frozen=True, slots=True)
class Equivalence:
    """Whether two groups are the same within a margin stated beforehand.

    ``difference`` carries the 90 % interval that two one-sided tests at 5 % correspond to.
    """

    difference: Interval
    margin: float
    p: float
    equivalent: bool


def equivalence(treated: ArrayLike, control: ArrayLike, margin: float) -> Equivalence:
    """Test "no change beyond the margin" by two one-sided Welch tests at 5 % (TOST).

    A large p of a difference test is no evidence of sameness; this is.

    Raises:
        InputError: A margin that is not positive.
    """
    from scipy import stats

    _stated(margin)
    x, y = sample(treated, "treated"), sample(control, "control")
    _welch(x, y)  # refuses samples without scatter
    above = stats.ttest_ind(x, y - margin, equal_var=False, alternative="greater").pvalue
    below = stats.ttest_ind(x, y + margin, equal_var=False, alternative="less").pvalue
    bounds = stats.ttest_ind(x, y, equal_var=False).confidence_interval(0.90)
    p = float(max(above, below))
    difference = Interval(float(x.mean() - y.mean()), float(bounds.low), float(bounds.high))
    return Equivalence(difference, margin, p, p < 0.05)


def _stated(margin: float) -> None:
    if not margin > 0:
        raise InputError("state the margin that counts as no change, larger than zero, before looking at the data")


def paired_equivalence(
    treated: Mapping[str, float],
    control: Mapping[str, float],
    margin: float,
    *,
    names: tuple[str, str] = ("treated", "control"),
) -> Equivalence:
    """Test "no change beyond the margin" within blocks, by two one-sided paired tests at 5 %.

    Raises:
        InputError: A margin that is not positive, fewer than two blocks with both groups, or no scatter.
    """
    from scipy import stats

    _stated(margin)
    x, y = _in_blocks(treated, control, names)
    above = stats.ttest_rel(x, y - margin, alternative="greater").pvalue
    below = stats.ttest_rel(x, y + margin, alternative="less").pvalue
    bounds = stats.ttest_rel(x, y).confidence_interval(0.90)
    p = float(max(above, below))
    return Equivalence(Interval(float((x - y).mean()), float(bounds.low), float(bounds.high)), margin, p, p < 0.05)


def bootstrap(treated: ArrayLike, control: ArrayLike, *, seed: int = 0) -> Interval:
    """Give the bootstrap interval of the difference of means (bias-corrected and accelerated, vectorised).

    Raises:
        InputError: Fewer than ``BOOTSTRAP_MIN`` units in a group.
    """
    from scipy import stats

    x = sample(treated, "treated", at_least=BOOTSTRAP_MIN)
    y = sample(control, "control", at_least=BOOTSTRAP_MIN)

    def difference(a: Floats, b: Floats, axis: int = -1) -> Floats:
        return np.asarray(a.mean(axis=axis) - b.mean(axis=axis))

    result = stats.bootstrap(
        (x, y), difference, vectorized=True, n_resamples=RESAMPLES, method="BCa", rng=np.random.default_rng(seed)
    )
    bounds = result.confidence_interval
    return Interval(float(x.mean() - y.mean()), float(bounds.low), float(bounds.high))
