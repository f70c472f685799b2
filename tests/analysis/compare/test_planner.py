"""The planner: sample sizes by noncentral t, and randomised blocks."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from scipy import stats

from analysis.compare.comparisons import equivalence
from analysis.compare.planner import (
    equivalence_needed,
    fills_needed,
    reached,
    repeats_for_interval,
    run_order,
)
from analysis.compare.power import dunnett_edge, dunnett_power
from logger.errors import InputError


@pytest.mark.parametrize(
    ("sd_over_difference", "fills"), [(0.25, 3), (0.5, 6), (0.6, 7), (1.0, 17), (1.5, 37), (2.0, 64)]
)
def test_fills_without_blocks(sd_over_difference, fills):
    """Two-sided 5 %, power 80 %, by the noncentral t of the pooled test; Welch's needs as many."""
    assert fills_needed(sd_over_difference, 1.0, blocked=False).per_group == fills


@pytest.mark.parametrize("d", [0.4, 0.8, 1.5, 3.0])
@pytest.mark.parametrize("power", [0.8, 0.9])
def test_blocks_against_statsmodels(d, power):
    """A general-purpose library as a second opinion: the paired test is a one-sample test of differences."""
    from statsmodels.stats.power import TTestPower

    plan = fills_needed(1.0, d, power=power)
    exact = TTestPower().solve_power(effect_size=d / np.sqrt(2), alpha=0.05, power=power)
    assert plan.per_group == max(2, int(np.ceil(exact)))
    assert plan.power == pytest.approx(TTestPower().power(d / np.sqrt(2), plan.per_group, 0.05))
    assert plan.control == plan.per_group


@pytest.mark.parametrize("n", [3, 4, 6, 10])
@pytest.mark.parametrize("effect", [1.0, 2.0, 3.0])
def test_power_is_that_of_the_analysis(n, effect):
    """Against simulation, within two points: what is stated is what ``compare`` will find."""
    rng, many = np.random.default_rng(n), 6000
    x, y = rng.normal(effect, 1, (many, n)), rng.normal(0, 1, (many, n))
    day = rng.normal(0, 5, (many, n))
    paired = np.mean(stats.ttest_rel(x + day, y + day, axis=1).pvalue < 0.05)
    assert reached(1.0, effect, n) == pytest.approx(paired, abs=0.02)
    welch = np.mean(stats.ttest_ind(x, y, axis=1, equal_var=False).pvalue < 0.05)
    assert reached(1.0, effect, n, blocked=False) == pytest.approx(welch, abs=0.02)


@pytest.mark.parametrize("n", [3, 5, 10])
@pytest.mark.parametrize("blocked", [True, False])
def test_power_of_sameness(n, blocked):
    rng, many, margin = np.random.default_rng(n), 6000, 2.0
    x, y = rng.normal(0, 1, (many, n)), rng.normal(0, 1, (many, n))
    test = stats.ttest_rel if blocked else stats.ttest_ind
    how = {} if blocked else {"equal_var": False}
    above = test(x, y - margin, axis=1, alternative="greater", **how).pvalue
    below = test(x, y + margin, axis=1, alternative="less", **how).pvalue
    shown = np.mean(np.maximum(above, below) < 0.05)
    assert reached(1.0, margin, n, same=True, blocked=blocked) == pytest.approx(shown, abs=0.02)


def test_dunnett_edges_as_tabled():
    """Two-sided 5 %, equal groups: 2.44 for two candidates and 15 degrees of freedom, 2.54 for three and 20 (Dunnett
    1964, from memory)."""
    assert dunnett_edge(2, 6, 6, 0.05) == pytest.approx(2.44, abs=0.005)
    assert dunnett_edge(3, 6, 6, 0.05) == pytest.approx(2.54, abs=0.005)


def test_dunnett_power_by_simulation():
    rng, hits = np.random.default_rng(3), 0
    for _ in range(300):
        groups = [rng.normal(2.0 * (i == 0), 1, 4) for i in range(3)]
        hits += stats.dunnett(*groups, control=rng.normal(0, 1, 7), rng=rng).pvalue[0] < 0.05
    assert reached(1.0, 2.0, 4, candidates=3, blocked=False) == pytest.approx(hits / 300, abs=0.08)


def test_many_against_one_control():
    one, three = (fills_needed(1.0, 1.5, candidates=k, blocked=False) for k in (1, 3))
    assert three.per_group >= one.per_group - 1
    assert three.control == int(np.ceil(three.per_group * np.sqrt(3)))
    assert three.total == 3 * three.per_group + three.control
    assert "3 candidates" in three.text
    assert "2 candidates" in fills_needed(1.0, 1.5, candidates=2).text
    assert "candidates" not in one.text
    blocks = fills_needed(1.0, 1.5, candidates=3)
    assert blocks.control == blocks.per_group > three.per_group
    assert "within blocks" in blocks.text


def test_equivalence_plan_by_simulation():
    plan = equivalence_needed(1.0, 1.2, blocked=False)
    rng = np.random.default_rng(2)
    shown = [
        equivalence(rng.normal(0, 1, plan.per_group), rng.normal(0, 1, plan.per_group), 1.2).equivalent
        for _ in range(250)
    ]
    assert np.mean(shown) >= 0.72  # 80 % less three standard deviations


def test_repeats_for_interval():
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
    for blocks, shown in ((0, "0"), (10_001, "10,001")):
        with pytest.raises(InputError, match=f"a plan has 1 to 10,000 blocks, not {shown}$"):
            run_order(["reference", "oil B"], blocks, seed=4)


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
        # Two or three units now and then scatter so little that sameness seems shown: a little more than with four.
        assert all(b >= a - (0.02 if same else 1e-9) for a, b in pairwise(powers)), ratio
        assert 0 <= powers[0] <= powers[-1] <= 1 + 1e-9


@pytest.mark.parametrize(("candidates", "n", "control"), [(2, 4, 6), (3, 5, 9), (4, 3, 3)])
def test_dunnett_against_the_multivariate_t(candidates, n, control):
    """All candidates within ± d with 95 %: scipy's multivariate t; correlation n/(n + control) of each pair."""
    df = candidates * (n - 1) + control - 1
    corr = np.full((candidates, candidates), n / (n + control)) + np.eye(candidates) * control / (n + control)
    edge = dunnett_edge(candidates, n, control, 0.05)
    top = np.full(candidates, edge)
    within = stats.multivariate_t(shape=corr, df=df, seed=1).cdf(top, lower_limit=-top, maxpts=20_000)
    assert within == pytest.approx(0.95, abs=5e-4)
    t = stats.nct(df, 1.5 / np.sqrt(1 / n + 1 / control))
    assert dunnett_power(1.5, n, control, candidates, 0.05) == pytest.approx(t.sf(edge) + t.cdf(-edge), rel=1e-9)


def test_candidates_in_blocks_share_the_chance_of_a_false_one():
    """Bonferroni: each at a third of 5 %, by the noncentral t of the differences."""
    edge, t = stats.t.ppf(1 - 0.05 / 6, 9), stats.nct(9, 1.5 / np.sqrt(2 / 10))
    assert reached(1.0, 1.5, 10, candidates=3) == pytest.approx(t.sf(edge) + t.cdf(-edge))
    assert reached(2.0, -3.0, 10, candidates=3) == pytest.approx(t.sf(edge) + t.cdf(-edge))


def test_orders_at_their_borders():
    assert [len(block) for block in run_order(["a", "b"], 1, seed=1, again=1)] == [3]
    assert len(run_order(["a", "b"], 10_000, seed=1)) == 10_000
    for groups, blocks, again in ((["a"], 1, 0), (["a", "b"], 10_001, 0), (["a", "b"], 3, -1), (["a", "b"], 3, 4)):
        with pytest.raises(InputError):
            run_order(groups, blocks, seed=1, again=again)


@pytest.mark.parametrize(
    "asked",
    [
        {"power": 0.0},
        {"power": 1.0},
        {"alpha": 0.0},
        {"alpha": 1.0},
        {"sd": np.inf},
        {"sd": -1.0},
        {"difference": np.nan},
    ],
)
def test_what_cannot_be_planned(asked):
    assert fills_needed(sd=0.5, difference=0.5).per_group == 18
    with pytest.raises(InputError):
        fills_needed(**({"sd": 0.5, "difference": 0.5} | asked))


def test_no_more_units_than_anyone_tests():
    with pytest.raises(InputError, match="more than 10000 units"):
        fills_needed(1.0, 1e-3)
