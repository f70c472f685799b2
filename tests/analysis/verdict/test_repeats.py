"""The job's value: median and its interval, what is shared, gates, trends, outliers, how many more pulls."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from analysis.to_axle.at_axle import METHOD
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.repeats import CV_GATE, further_pulls, job_value, single_pull
from analysis.verdict.scatter import median_factor, outliers, persistence, warm_up


def _pull(value, *, trace=0.1, shared=0.3, quantity="breakaway"):
    rows = (
        BudgetRow(Input("trace", value, trace), 1.0),
        BudgetRow(Input("calibration", 1.0, shared, "1", shared=True), 1.0),
    )
    return Budget(quantity, value, "N·m", rows)


def test_median_with_its_degrees_of_freedom():
    values = [30.0, 31.0, 29.0, 32.0, 28.0]
    job = job_value([_pull(v) for v in values])
    assert job.budget.value == 30.0
    row = job.budget.row("repeats").input
    pooled = math.sqrt((3 * (0.04 * 30.0) ** 2 + 4 * np.var(values, ddof=1)) / 7)
    assert row.u == pytest.approx(1.198 * pooled / math.sqrt(5), rel=1e-4)
    assert row.dof == 7
    assert row.note == "median of 5 pulls, 1.198 s/√n; pooled: a repeatability of 4 % is assumed"
    assert job.cv == pytest.approx(np.std(values, ddof=1) / 30.0)
    assert job.notes == ()


def test_pulls_that_agree_count_alone():
    values = [30.0, 30.3, 29.7, 30.2, 29.8]
    row = job_value([_pull(v, trace=0.0) for v in values]).budget.row("repeats").input
    assert row.u == pytest.approx(1.198 * np.std(values, ddof=1) / math.sqrt(5), rel=1e-4)
    assert row.dof == 4


def test_shared_inputs_do_not_shrink_with_repeats():
    few, many = (job_value([_pull(30.0 + d) for d in deviations]) for deviations in ([-1, 0, 1], [-1, 0, 1] * 10))
    for job in (few, many):
        assert job.budget.row("calibration").contribution == pytest.approx(0.3)
    assert many.budget.row("repeats").contribution < few.budget.row("repeats").contribution
    assert many.budget.u > 0.3


@pytest.mark.parametrize("n", [1, 2])
def test_under_three_pulls_a_repeatability_is_assumed_and_named(n):
    job = job_value([_pull(30.0)] * n)
    row = job.budget.row("repeatability").input
    assert row.u == pytest.approx(0.04 * 30.0 * math.sqrt(3 / (2 + n)) / math.sqrt(n))
    assert row.dof == 2 + n
    assert job.budget.row("reading").contribution == pytest.approx(0.1 / math.sqrt(n))
    assert any("repeatability of 4 % is assumed" in note for note in job.notes)
    assert math.isnan(job.cv)


def test_two_pulls_that_differ_widen_what_is_assumed():
    alike, apart = (job_value([_pull(30.0 - d), _pull(30.0 + d)]) for d in (0.5, 3.0))
    assert apart.budget.u95 > 1.4 * alike.budget.u95


def test_stated_repeatability_is_used_and_named():
    job = job_value([_pull(30.0, quantity="rotating mean")], repeatability=0.02)
    assert job.budget.row("repeatability").contribution == pytest.approx(0.6)
    assert job.budget.row("repeatability").input.dof == 8
    assert any("repeatability of 2 % is stated" in note for note in job.notes)


@pytest.mark.parametrize("apart", [0.0, 0.6, 1.2, 2.4])
@pytest.mark.parametrize("quantity", ["breakaway", "rotating mean"])
def test_a_further_pull_never_widens(apart, quantity):
    """Pulls that go on scattering as the first two did: a third and a fourth narrow the interval."""
    d = apart / math.sqrt(2)
    values = [30.0 + d, 30.0 - d]
    widths = [job_value([_pull(v, quantity=quantity, shared=0.0) for v in values[:n]]).budget.u95 for n in (1, 2)]
    for n in range(3, 9):
        # n values with the standard deviation of the first two
        rest = np.array([(-1.0) ** i for i in range(n)])
        rest = 30.0 + (rest - rest.mean()) * (d / rest.std(ddof=1)) * math.sqrt(2)
        widths.append(job_value([_pull(v, quantity=quantity, shared=0.0) for v in rest]).budget.u95)
    assert all(after < before for before, after in pairwise(widths[1:4])), widths
    assert widths[-1] < widths[2]


def test_identical_pulls_are_not_known_exactly():
    """Three equal readings of a coarse gauge have no scatter; what each trace leaves open remains."""
    job = job_value([_pull(30.0, trace=0.5)] * 3)
    assert job.sd == 0
    assert job.budget.row("repeats").contribution == pytest.approx(1.160 * 0.5 / math.sqrt(3))
    assert math.isinf(job.budget.row("repeats").input.dof)


def test_median_interval_covers():
    """Normal pulls, nothing shared: about 95 % of the intervals hold the true value (``make coverage`` has it all)."""
    rng = np.random.default_rng(7)
    for n, sd in ((2, 1.8), (3, 1.2), (5, 0.3)):
        hits = 0
        for _ in range(1500):
            job = job_value([_pull(v, trace=0.0, shared=0.0) for v in rng.normal(30.0, sd, n)])
            hits += abs(job.budget.value - 30.0) <= job.budget.u95
        assert 0.92 <= hits / 1500 <= 0.985, (n, sd)


def test_what_the_way_of_reading_leaves_open_does_not_shrink():
    """A filter that reads 1 N·m low does so in every pull."""
    row = BudgetRow(Input(METHOD, 0.0, 0.5, shared=True), 1.0)
    pulls = [replace(_pull(v, shared=0.0), rows=(*_pull(v, shared=0.0).rows, row)) for v in (29.9, 30.0, 30.1) * 4]
    assert job_value(pulls).budget.row(METHOD).contribution == 0.5
    assert job_value(pulls).budget.u95 > 1.96 * 0.5


@pytest.mark.parametrize(
    ("n", "factor"), [(3, 1.160), (4, 1.092), (5, 1.198), (6, 1.135), (7, 1.214), (8, 1.160), (60, 1.253)]
)
def test_factor_of_the_median(n, factor):
    """By drawing: scatter of medians over that of means."""
    draws = np.random.default_rng(n).standard_normal((60_000, n))
    assert median_factor(n) == pytest.approx(factor, abs=5e-4)
    assert np.median(draws, axis=1).std() * math.sqrt(n) == pytest.approx(factor, rel=0.015)


def test_pulls_that_follow_each_other_pay():
    assert persistence([30.0, 31.0, 29.5, 30.5, 29.8]) == 1.0
    assert persistence([30.0, 30.0, 30.0, 30.0]) == 1.0
    falling = [31.0, 30.5, 30.0, 29.5, 29.0]
    assert persistence(falling) > 1.5
    one, other = (job_value([_pull(v) for v in values]) for values in (falling, [31.0, 29.0, 30.5, 29.5, 30.0]))
    assert one.budget.u95 > 1.4 * other.budget.u95
    assert "each pull is like the one before" in one.budget.row("repeats").input.note


def test_independent_pulls_seldom_pay():
    """One job in five by rule: the interval of all others stays as it is."""
    rng = np.random.default_rng(5)
    paying = np.mean([persistence(list(rng.standard_normal(6))) > 1 for _ in range(4000)])
    assert paying == pytest.approx(0.2, abs=0.03)


def test_one_pull_is_judged_with_the_scatter_of_the_pulls():
    pulls = [_pull(v) for v in (28.0, 30.0, 32.0)]
    job = job_value(pulls)
    alone = single_pull(pulls[0], job)
    pooled = (3 * 1.2**2 + 2 * 2.0**2) / 5
    assert alone.u == pytest.approx(math.sqrt(0.1**2 + 0.3**2 + pooled))
    assert alone.row("pull-to-pull scatter").input.dof == 5


def test_gate_of_scatter():
    good, bad = job_value([_pull(v) for v in (29, 30, 31)]), job_value([_pull(v) for v in (24, 30, 36)])
    assert good.repeatable
    assert not bad.repeatable
    assert bad.cv > CV_GATE
    assert any("scatter by 20 % (gate 10 %)" in note for note in bad.notes)


def test_outlier_is_named_and_kept_unless_asked():
    values = [30.0, 30.2, 29.9, 30.1, 42.0]
    assert outliers(values) == (4,)
    kept = job_value([_pull(v) for v in values])
    assert len(kept.values) == 5
    assert any("kept" in note and "42" in note for note in kept.notes)
    dropped = job_value([_pull(v) for v in values], drop_outliers=True)
    assert dropped.left_out == (42.0,)
    assert dropped.budget.value == pytest.approx(30.05)
    assert any("excluded by the rule stated beforehand" in note for note in dropped.notes)


@pytest.mark.parametrize("values", [[], [1.0], [30.0, 99.0, 30.0, 30.0], [30.0] * 5, [29.0, 30.0, 31.0, 30.5, 29.5]])
def test_no_outlier(values):
    """Too few values, no spread at all, or plain scatter."""
    assert outliers(values) == ()


def test_readings_that_happen_to_agree_make_no_outlier():
    assert outliers([30.0] * 4 + [31.0]) == (4,)
    assert outliers([30.0] * 4 + [31.0], least_sd=0.5) == ()


@pytest.mark.parametrize("n", [3, 4, 5, 6, 8, 12, 20])
def test_outliers_in_clean_jobs_are_as_rare_as_stated(n):
    rng = np.random.default_rng(n)
    share = np.mean([bool(outliers(list(rng.standard_normal(n)))) for _ in range(4000)])
    assert share == (0.0 if n < 5 else pytest.approx(0.05, abs=0.012))


def test_grubbs_as_tabled():
    """Critical values at 5 %, two-sided: 1.715 for 5, 2.290 for 10, 2.709 for 20 (Grubbs 1969, from memory)."""
    for n, critical in ((5, 1.715), (10, 2.290), (20, 2.709)):
        base = np.linspace(-1, 1, n - 1)

        def score(x, base=base):
            values = [*base, x]
            return (x - np.mean(values)) / np.std(values, ddof=1)

        x = brentq(lambda x, c=critical, f=score: f(x) - c, 1.0, 50.0)
        assert outliers([*base, x * 1.02]) == (n - 1,)
        assert outliers([*base, x * 0.98]) == ()


@given(st.lists(st.floats(10, 100), min_size=5, max_size=12), st.floats(0.5, 3), st.floats(-5, 50))
def test_outliers_do_not_depend_on_the_unit(values, scale, shift):
    rounded = [round(v, 3) for v in values]
    assert outliers(rounded) == outliers([v * 4.0 for v in rounded])


def test_warming_up_is_said():
    assert "falls by" in warm_up([30.0, 29.0, 28.2, 27.1, 26.0, 25.2])
    assert any("falls by" in note for note in job_value([_pull(v) for v in (30, 29, 28.2, 27.1, 26)]).notes)


@pytest.mark.parametrize(
    "values", [[], [30.0, 20.0, 10.0], [30.0, 30.1, 29.9, 30.0, 30.05], [30, 31, 29, 30.5, 30.2], [0.0] * 5]
)
def test_no_trend(values):
    """Too few, too small, or plain scatter."""
    assert warm_up(values) == ""


@pytest.mark.parametrize("wanted", [0.9, 1.3, 2.0])
@pytest.mark.parametrize("trace", [0.1, 1.5])
def test_how_many_more_pulls(wanted, trace):
    """The promise is kept: so many more pulls that scatter alike give that interval, and one fewer does not."""
    job = job_value([_pull(v, trace=trace) for v in (29.0, 30.0, 31.0)])
    more = further_pulls(job, wanted)
    assert more is not None

    def alike(n):
        x = np.array([(-1.0) ** i for i in range(n)])
        return job_value([_pull(v, trace=trace) for v in 30.0 + (x - x.mean()) / x.std(ddof=1)]).budget.u95

    assert alike(3 + more) <= wanted + 0.02
    assert more == 0 or all(alike(n) > wanted - 0.02 for n in range(4, 3 + more))
    assert further_pulls(job, 20.0) == 0


def test_no_number_of_pulls_beats_the_shared_part():
    job = job_value([_pull(v, shared=1.0) for v in (29.0, 30.0, 31.0)])
    assert further_pulls(job, 1.9) is None


def test_no_pull_no_value():
    with pytest.raises(ValueError, match="no pull"):
        job_value([])


@pytest.mark.parametrize(("scatter", "told"), [(0.73, True), (0.74, False)])
def test_a_trend_is_told_below_five_per_cent_by_chance(scatter, told):
    """Four pulls that rise by 2 each, off the line by ± c: t = 2/(c √0.4), Student's t of 2 is 4.303 at 5 %."""
    assert bool(warm_up([97 + scatter, 99 - scatter, 101 - scatter, 103 + scatter])) is told


@pytest.mark.parametrize(("step", "told"), [(0.74, False), (0.76, True), (-0.74, False), (-0.76, True)])
def test_a_trend_is_told_from_three_per_cent_on(step, told):
    """Five pulls on a straight line, four steps from first to last."""
    assert bool(warm_up([100 + step * i for i in range(-2, 3)])) is told
    assert warm_up([100 + step * i for i in range(-1, 2)]) == ""  # three are too few


def test_pulls_that_are_one_have_no_outlier():
    """The mean of nine times 0.9 is off by rounding; their deviation is nothing."""
    assert outliers([0.9] * 9) == ()


def test_three_alike_and_three_others_by_brute_force():
    """η = 5/4.5, so r = 0.444 and less its bias 0.599; the mean's variance from all pairs of eighteen, r^|i - j|."""
    n, r = 18, 1 - 5 / 4.5 / 2
    r += (1 + 4 * r) / n
    i = np.arange(n)
    g = (r ** np.abs(i[:, None] - i[None, :])).sum() / n
    assert persistence([30.0, 30.0, 30.0, 31.0, 31.0, 31.0] * 3) == pytest.approx(np.sqrt(g * (n - 1) / (n - g)))
