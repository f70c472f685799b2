"""Plan a comparison: how many fills it needs, and in which order to test them.

Conventions: ``sd`` is the standard deviation from fill to fill (from a pilot of three or four fills), ``difference``
what must not be missed, both in the same unit. Powers come from the noncentral t distribution.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from logger.errors import InputError

POWER = 0.80
ALPHA = 0.05
MOST = 10_000
"""More units than anyone tests; beyond it the answer is "not by this experiment"."""

SURE_OF_SIGN = 4.5
"""So many standard errors from zero a difference shows with the wrong sign less than once in ten million times; the
library's tail is not a number there."""


@dataclass(frozen=True, slots=True)
class Plan:
    """Units to test.

    Attributes
    ----------
    per_group, control : int
        Units of each treated group, and of the control.
    total : int
        Units in all.
    power : float
        Reached with these numbers.
    text : str
        What was asked, in one sentence.
    """

    per_group: int
    control: int
    total: int
    power: float
    text: str


def power_of(sd: float, difference: float, n_treated: int, n_control: int, *, alpha: float = ALPHA) -> float:
    """Give the power of the two-sided two-sample t test (noncentral t)."""
    from scipy import stats

    df = n_treated + n_control - 2
    shift = abs(difference) / (sd * math.sqrt(1 / n_treated + 1 / n_control))
    edge = stats.t.ppf(1 - alpha / 2, df)
    wrong_way = stats.nct.cdf(-edge, df, shift) if shift < SURE_OF_SIGN else 0.0
    return float(stats.nct.sf(edge, df, shift) + wrong_way)


def fills_needed(
    sd: float, difference: float, *, candidates: int = 1, power: float = POWER, alpha: float = ALPHA
) -> Plan:
    """Give the units per group that show a difference with the wanted power.

    Parameters
    ----------
    sd, difference : float
        Scatter from fill to fill, and the difference that must not be missed.
    candidates : int
        Treated groups compared with the one control. With several, alpha is shared (Bonferroni, slightly safe beside
        Dunnett's procedure) and the control is larger by the square root of their number.
    power, alpha : float
        Chance of showing the difference if it is there; chance of showing one that is not.

    Examples
    --------
    >>> fills_needed(1.0, 1.0).per_group
    17
    """
    _check(sd, difference, power, alpha)
    if candidates < 1:
        raise InputError("at least one group is compared with the control")
    n = _smallest(lambda n: reached(sd, difference, n, candidates=candidates, alpha=alpha), power)
    control = _control_size(n, candidates)
    text = (
        f"to show a difference of {difference:g} against a scatter of {sd:g} from fill to fill, "
        f"power {power:.0%}, two-sided {alpha:.0%}"
    )
    if candidates > 1:
        text += f", {candidates} candidates against one control"
    power = reached(sd, difference, n, candidates=candidates, alpha=alpha)
    return Plan(n, control, n * candidates + control, power, text)


def reached(
    sd: float, amount: float, n: int, *, candidates: int = 1, same: bool = False, alpha: float = ALPHA
) -> float:
    """Give the power that ``n`` units per group reach, planned as ``fills_needed`` and ``equivalence_needed`` do.

    Parameters
    ----------
    sd, amount : float
        Scatter from fill to fill, and the difference, or the margin of sameness.
    n : int
        Units of each treated group.
    candidates : int
        Treated groups compared with the one control.
    same : bool
        Whether sameness within the margin is to be shown: the power of the two one-sided tests is approximated by
        shifted central t distributions; true difference zero.
    """
    from scipy import stats

    if not same:
        return power_of(sd, amount, n, _control_size(n, candidates), alpha=alpha / candidates)
    df = 2 * n - 2
    shift = amount / (sd * math.sqrt(2 / n))
    return float(max(0.0, 2 * stats.t.cdf(shift - stats.t.ppf(1 - alpha, df), df) - 1))


def _control_size(n: int, candidates: int) -> int:
    return math.ceil(n * math.sqrt(candidates))


def equivalence_needed(sd: float, margin: float, *, power: float = POWER, alpha: float = ALPHA) -> Plan:
    """Give the units per group that show "no change beyond the margin" when there is none."""
    _check(sd, margin, power, alpha)
    n = _smallest(lambda n: reached(sd, margin, n, same=True, alpha=alpha), power)
    text = f"to show no change beyond {margin:g} against a scatter of {sd:g} from fill to fill, power {power:.0%}"
    return Plan(n, n, 2 * n, reached(sd, margin, n, same=True, alpha=alpha), text)


def repeats_for_interval(sd: float, half_width: float, *, level: float = 0.95) -> int:
    """Give how many values make the interval of their mean as narrow as wanted: t·s/√n <= half width."""
    _check(sd, half_width, 0.5, 1 - level)
    return _smallest(lambda n: -half_width_of(sd, n, level=level), -half_width)


def half_width_of(sd: float, n: int, *, level: float = 0.95) -> float:
    """Give the half width of the interval of the mean of ``n`` values, t·s/√n."""
    from scipy import stats

    return float(stats.t.ppf(0.5 + level / 2, n - 1)) * sd / math.sqrt(n)


def _smallest(reaches: Callable[[int], float], wanted: float) -> int:
    """Give the smallest n >= 2 for which an increasing function reaches what is wanted, by bisection."""
    high = 2
    while reaches(high) < wanted:
        high *= 2
        if high > MOST:
            raise InputError(
                f"more than {MOST} units would be needed: reduce the scatter (temperature, rest, run-in) or accept "
                "a larger difference"
            )
    low = max(2, high // 2)
    while low < high:
        middle = (low + high) // 2
        if reaches(middle) >= wanted:
            high = middle
        else:
            low = middle + 1
    return high


def _check(sd: float, difference: float, power: float, alpha: float) -> None:
    if not (math.isfinite(sd) and sd > 0):
        raise InputError("the scatter from fill to fill must be known and larger than zero; test three or four fills")
    if not (math.isfinite(difference) and difference != 0):
        raise InputError("state the difference that must not be missed; zero cannot be shown")
    if not (0 < power < 1 and 0 < alpha < 1):
        raise InputError("power and alpha are fractions between 0 and 1, such as 0.8 and 0.05")


def run_order(groups: Sequence[str], blocks: int, *, seed: int, again: int = 0) -> list[list[str]]:
    """Give the order of tests: every group once in each block, shuffled anew within each (randomised blocks).

    A block is what may shift everything at once: a day, an operator, a warm-up. The seed makes the order repeatable
    and belongs on the record. A control that needs more fills than the others, the first group, is tested a second
    time in ``again`` of the blocks, drawn at random.

    Examples
    --------
    >>> [sorted(block) for block in run_order(["reference", "oil B"], 2, seed=1)]
    [['oil B', 'reference'], ['oil B', 'reference']]
    """
    if len(set(groups)) != len(groups) or len(groups) < 2:
        raise InputError("name two or more groups, each once")
    if not 1 <= blocks <= MOST:
        raise InputError("at least one block is needed")
    if not 0 <= again <= blocks:
        raise InputError(f"the control can be tested again in 0 to {blocks} of the blocks, not in {again}")
    rng = np.random.default_rng(seed)
    twice = set(rng.permutation(blocks)[:again].tolist()) if again else set()
    order = []
    for block in range(blocks):
        names = [*groups, groups[0]] if block in twice else list(groups)
        order.append([names[i] for i in rng.permutation(len(names))])
    return order
