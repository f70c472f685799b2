"""The planner: sample sizes by noncentral t, and randomised blocks."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from analysis.compare.comparisons import equivalence
from analysis.compare.planner import (
    equivalence_needed,
    fills_needed,
    power_of,
    reached,
    repeats_for_interval,
    run_order,
)
from logger.errors import InputError


@pytest.mark.parametrize(
    ("sd_over_difference", "fills"), [(0.25, 3), (0.5, 6), (0.6, 7), (1.0, 17), (1.5, 37), (2.0, 64)]
)
def test_fills(sd_over_difference, fills):
    # Two-sided 5 %, power 80 %, by noncentral t.
    assert fills_needed(sd_over_difference, 1.0).per_group == fills


@pytest.mark.parametrize("d", [0.4, 0.8, 1.5, 3.0])
@pytest.mark.parametrize("power", [0.8, 0.9])
def test_against_statsmodels(d, power):
    # A general-purpose library as a second opinion.
    from statsmodels.stats.power import TTestIndPower

    plan = fills_needed(1.0, d, power=power)
    exact = TTestIndPower().solve_power(effect_size=d, alpha=0.05, power=power)
    assert plan.per_group == max(2, int(np.ceil(exact)))
    assert plan.power == pytest.approx(TTestIndPower().power(d, plan.per_group, 0.05))
    assert plan.power >= power


def test_power_by_simulation():
    from scipy import stats

    rng = np.random.default_rng(1)
    x, y = rng.normal(1.2, 1, size=(4000, 8)), rng.normal(0, 1, size=(4000, 8))
    found = np.mean(stats.ttest_ind(x, y, axis=1).pvalue < 0.05)
    assert power_of(1.0, 1.2, 8, 8) == pytest.approx(found, abs=0.025)


def test_many_against_one_control():
    one, three = fills_needed(1.0, 1.5), fills_needed(1.0, 1.5, candidates=3)
    assert three.per_group > one.per_group * 0.9
    assert three.control == int(np.ceil(three.per_group * np.sqrt(3)))
    assert three.total == 3 * three.per_group + three.control
    assert "3 candidates" in three.text


def test_equivalence_plan_by_simulation():
    plan = equivalence_needed(1.0, 1.2)
    rng = np.random.default_rng(2)
    shown = [
        equivalence(rng.normal(0, 1, plan.per_group), rng.normal(0, 1, plan.per_group), 1.2).equivalent
        for _ in range(250)
    ]
    assert np.mean(shown) >= 0.72  # 80 % less three standard deviations


def test_repeats_for_interval():
    from scipy import stats

    n = repeats_for_interval(2.0, 1.0)
    assert stats.t.ppf(0.975, n - 1) * 2.0 / np.sqrt(n) <= 1.0
    assert stats.t.ppf(0.975, n - 2) * 2.0 / np.sqrt(n - 1) > 1.0


def test_run_order():
    order = run_order(["reference", "oil B", "oil C"], 6, seed=4)
    assert len(order) == 6
    assert all(sorted(block) == ["oil B", "oil C", "reference"] for block in order)
    assert order == run_order(["reference", "oil B", "oil C"], 6, seed=4)
    assert order != run_order(["reference", "oil B", "oil C"], 6, seed=5)
    assert len({tuple(block) for block in order}) > 1


@pytest.mark.parametrize(
    "call",
    [
        lambda: fills_needed(0, 1),
        lambda: fills_needed(1, 0),
        lambda: fills_needed(1, 1, power=1.2),
        lambda: fills_needed(1, 1, candidates=0),
        lambda: fills_needed(1000, 0.01),
        lambda: run_order(["a", "a"], 2, seed=1),
        lambda: run_order(["a", "b"], 0, seed=1),
    ],
)
def test_raises(call):
    with pytest.raises(InputError):
        call()


@pytest.mark.parametrize("candidates", [1, 2, 3])
@pytest.mark.parametrize("same", [False, True])
def test_power_grows_with_fills_however_large_the_difference(candidates, same):
    for ratio in (0.5, 1.0, 2.0, 4.2, 9.0):
        powers = [reached(1.0, ratio, n, candidates=candidates, same=same) for n in range(2, 40)]
        assert all(b >= a - 1e-9 for a, b in pairwise(powers)), ratio
        assert 0 <= powers[0] <= powers[-1] <= 1 + 1e-9
