"""Where scatter comes from: between fills, or between the pulls of one fill.

Conventions: ``groups`` are 1-D arrays of single values, one array per fill (or per group); sums of squares are taken
about means, in two passes, so that a large common level costs no digits.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class OneWay:
    """A one-way analysis of variance and its variance components."""

    mean: float  # of the groups' means
    # ss_between, ss_within: sums of squares, with ``df_between`` and ``df_within`` degrees of freedom
    ss_between: float
    df_between: int
    ss_within: float
    df_within: int
    # f, p: F ratio and its p value
    f: float
    p: float
    r2: float  # share of the scatter that lies between the groups
    s_within: float  # standard deviation of single values within a group: from pull to pull
    # standard deviation of the groups' true levels: from fill to fill; zero where the pulls explain it all
    s_between: float


def one_way(groups: Sequence[ArrayLike]) -> OneWay:
    """Analyse values in groups by one-way analysis of variance.

    Raises:
        InputError: Fewer than two groups, a group without values, no repeats at all, or values that are not finite.

    With unequal group sizes n_i the between component uses n0 = (N - Σn_i²/N)/(k - 1).
    """
    arrays: list[Floats] = [np.asarray(group, dtype=float) for group in groups]
    sizes = np.array([len(a) for a in arrays])
    if len(arrays) < 2 or sizes.min(initial=1) < 1 or sizes.sum() <= len(arrays):
        raise InputError("two or more groups are needed, and more than one value in at least one of them")
    if not all(np.isfinite(a).all() for a in arrays):
        raise InputError("every value must be finite")
    # Take the common level away before anything is squared.
    level = float(arrays[0][0])
    arrays = [a - level for a in arrays]
    means = np.array([a.mean() for a in arrays])
    everything = float((means * sizes).sum() / sizes.sum())
    ss_between = float((sizes * (means - everything) ** 2).sum())
    ss_within = float(sum(((a - m) ** 2).sum() for a, m in zip(arrays, means, strict=True)))
    df_between, df_within = len(arrays) - 1, int(sizes.sum()) - len(arrays)
    ms_between, ms_within = ss_between / df_between, ss_within / df_within
    n0 = (sizes.sum() - (sizes**2).sum() / sizes.sum()) / df_between
    total = ss_between + ss_within
    return OneWay(
        level + float(means.mean()),
        ss_between,
        df_between,
        ss_within,
        df_within,
        *_f_and_p(ms_between, ms_within, df_between, df_within),
        ss_between / total if total > 0 else 0.0,
        math.sqrt(ms_within),
        math.sqrt(max(0.0, (ms_between - ms_within) / n0)),
    )


def _f_and_p(between: float, within: float, df_between: int, df_within: int) -> tuple[float, float]:
    from scipy.special import fdtrc

    if within == 0:
        return (math.inf, 0.0) if between > 0 else (0.0, 1.0)
    f = between / within
    return f, float(fdtrc(df_between, df_within, f))
