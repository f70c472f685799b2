"""Plan a comparison: how many fills it needs, and in which order to test them.

Conventions:
- ``sd`` is the standard deviation from fill to fill (from a pilot of three or four fills), ``difference`` what must not
  be missed, both in the same unit.
- The power is that of the analysis that ``groups`` will make of the plan: within blocks the paired t test (Bonferroni
  for several candidates), without them Welch's for two groups and Dunnett's for more (``analysis.compare.power``).
- In blocks every group is tested once in each, the control too; without blocks the control of several candidates has
  more fills.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from analysis.compare.power import dunnett_power, paired_power, sameness_power, welch_power
from logger.errors import InputError

POWER = 0.80
ALPHA = 0.05
MOST = 10_000
"""More units than anyone tests; beyond it the answer is "not by this experiment"."""


BLOCKS_WORDS = {True: ", tested and compared within blocks", False: ", tested in any order and compared without blocks"}


@dataclass(frozen=True, slots=True)
class Plan:
    """Units to test."""

    # per_group, control: units of each treated group, and of the control
    per_group: int
    control: int
    total: int  # units in all
    power: float  # reached with these numbers
    text: str  # what was asked, in one sentence


def fills_needed(
    sd: float,
    difference: float,
    *,
    candidates: int = 1,
    power: float = POWER,
    alpha: float = ALPHA,
    blocked: bool = True,
) -> Plan:
    """Give the units per group that show a difference with the wanted power.

    Args:
        sd, difference: Scatter from fill to fill, and the difference that must not be missed.
        candidates: Treated groups compared with the one control. Without blocks the control then has more fills, by the
            square root of their number.
        power, alpha: Chance of showing the difference if it is there; chance of showing one that is not.
        blocked: Whether the fills are tested and compared in blocks, as ``run_order`` draws them.

    >>> fills_needed(1.0, 1.0).per_group, fills_needed(1.0, 1.0, blocked=False).per_group
    (18, 17)
    """
    _check(sd, difference, power, alpha)
    if candidates < 1:
        raise InputError("at least one group is compared with the control")
    n = _smallest(lambda n: reached(sd, difference, n, candidates=candidates, alpha=alpha, blocked=blocked), power)
    control = n if blocked else _control_size(n, candidates)
    text = (
        f"to show a difference of {difference:g} against a scatter of {sd:g} from fill to fill, "
        f"power {power:.0%}, two-sided {alpha:.0%}"
    )
    if candidates > 1:
        text += f", {candidates} candidates against one control"
    text += BLOCKS_WORDS[blocked]
    power = reached(sd, difference, n, candidates=candidates, alpha=alpha, blocked=blocked)
    return Plan(n, control, n * candidates + control, power, text)


def reached(
    sd: float,
    amount: float,
    n: int,
    *,
    candidates: int = 1,
    same: bool = False,
    alpha: float = ALPHA,
    blocked: bool = True,
) -> float:
    """Give the power that ``n`` units per group reach, planned as ``fills_needed`` and ``equivalence_needed`` do.

    Args:
        sd, amount: Scatter from fill to fill, and the difference, or the margin of sameness.
        n: Units of each treated group.
        candidates: Treated groups compared with the one control.
        same: Whether sameness within the margin is to be shown, by two one-sided tests; true difference zero.
        blocked: Whether within blocks.
    """
    effect = abs(amount) / sd
    if same:
        return sameness_power(effect, n, alpha, blocked=blocked)
    if blocked:
        return paired_power(effect, n, alpha / candidates)
    if candidates == 1:
        return welch_power(effect, n, alpha)
    return dunnett_power(effect, n, _control_size(n, candidates), candidates, alpha)


def _control_size(n: int, candidates: int) -> int:
    return math.ceil(n * math.sqrt(candidates))


def equivalence_needed(
    sd: float, margin: float, *, power: float = POWER, alpha: float = ALPHA, blocked: bool = True
) -> Plan:
    """Give the units per group that show "no change beyond the margin" when there is none."""
    _check(sd, margin, power, alpha)
    n = _smallest(lambda n: reached(sd, margin, n, same=True, alpha=alpha, blocked=blocked), power)
    text = f"to show no change beyond {margin:g} against a scatter of {sd:g} from fill to fill, power {power:.0%}"
    text += BLOCKS_WORDS[blocked]
    return Plan(n, n, 2 * n, reached(sd, margin, n, same=True, alpha=alpha, blocked=blocked), text)


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

    >>> [sorted(block) for block in run_order(["reference", "oil B"], 2, seed=1)]
    [['oil B', 'reference'], ['oil B', 'reference']]
    """
    if len(set(groups)) != len(groups) or len(groups) < 2:
        raise InputError("name two or more groups, each once")
    if not 1 <= blocks <= MOST:
        raise InputError(f"a plan has 1 to {MOST:,} blocks, not {blocks:,}")
    if not 0 <= again <= blocks:
        raise InputError(f"the control can be tested again in 0 to {blocks} of the blocks, not in {again}")
    rng = np.random.default_rng(seed)
    twice = set(rng.permutation(blocks)[:again].tolist()) if again else set()
    order = []
    for block in range(blocks):
        names = [*groups, groups[0]] if block in twice else list(groups)
        order.append([names[i] for i in rng.permutation(len(names))])
    return order
