"""The job's value: median and its interval, what is shared, gates, trends, outliers, how many more pulls."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.budget import Budget, Input, Row, t_factor
from analysis.repeats import (
    CV_GATE,
    MEDIAN_EFFICIENCY,
    further_pulls,
    job_value,
    outliers,
    single_pull,
    warm_up,
)


def _pull(value, *, trace=0.1, shared=0.3, quantity="breakaway"):
    rows = (Row(Input("trace", value, trace), 1.0), Row(Input("calibration", 1.0, shared, "1", shared=True), 1.0))
    return Budget(quantity, value, "N·m", rows)


def test_median_with_its_degrees_of_freedom():
    values = [30.0, 31.0, 29.0, 32.0, 28.0]
    job = job_value([_pull(v) for v in values])
    assert job.budget.value == 30.0
    row = job.budget.row("repeats").input
    assert row.u == pytest.approx(1.2533 * np.std(values, ddof=1) / math.sqrt(5), rel=1e-4)
    assert row.dof == 4
    assert job.cv == pytest.approx(np.std(values, ddof=1) / 30.0)
    assert job.notes == ()


def test_shared_inputs_do_not_shrink_with_repeats():
    few, many = (job_value([_pull(30.0 + d) for d in deviations]) for deviations in ([-1, 0, 1], [-1, 0, 1] * 10))
    for job in (few, many):
        assert job.budget.row("calibration").contribution == pytest.approx(0.3)
    assert many.budget.row("repeats").contribution < few.budget.row("repeats").contribution
    assert many.budget.u > 0.3


@pytest.mark.parametrize(("n", "share"), [(1, 0.04), (2, 0.04 / math.sqrt(2))])
def test_under_three_pulls_a_repeatability_is_assumed_and_named(n, share):
    job = job_value([_pull(30.0)] * n)
    assert job.budget.row("repeatability").contribution == pytest.approx(share * 30.0)
    assert job.budget.row("reading").contribution == pytest.approx(0.1 / math.sqrt(n))
    assert any("repeatability of 4 % is assumed" in note for note in job.notes)
    assert math.isnan(job.cv)


def test_stated_repeatability_is_used_and_named():
    job = job_value([_pull(30.0, quantity="rotating mean")], repeatability=0.02)
    assert job.budget.row("repeatability").contribution == pytest.approx(0.6)
    assert any("repeatability of 2 % is stated" in note for note in job.notes)


def test_identical_pulls_are_not_known_exactly():
    """Three equal readings of a coarse gauge have no scatter; what each trace leaves open remains."""
    job = job_value([_pull(30.0, trace=0.5)] * 3)
    assert job.sd == 0
    assert job.budget.row("repeats").contribution == pytest.approx(MEDIAN_EFFICIENCY * 0.5 / math.sqrt(3))


def test_median_interval_covers():
    """Normal pulls, five to a job, nothing shared: about 95 % of the intervals hold the true value."""
    rng = np.random.default_rng(7)
    hits = 0
    for _ in range(4000):
        values = rng.normal(30.0, 1.0, 5)
        job = job_value([_pull(v, trace=0.0, shared=0.0) for v in values])
        hits += abs(job.budget.value - 30.0) <= job.budget.u95
    assert 0.94 <= hits / 4000 <= 0.975


def test_one_pull_is_judged_with_the_scatter_of_the_pulls():
    pulls = [_pull(v) for v in (28.0, 30.0, 32.0)]
    job = job_value(pulls)
    alone = single_pull(pulls[0], job)
    assert alone.u == pytest.approx(math.sqrt(0.1**2 + 0.3**2 + 2.0**2))
    assert alone.row("pull-to-pull scatter").input.dof == 2


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


@pytest.mark.parametrize(
    "values", [[], [1.0], [30.0, 99.0, 30.0, 30.0], [30.0] * 4 + [31.0], [29.0, 30.0, 31.0, 30.5, 29.5]]
)
def test_no_outlier(values):
    """Too few values, a spread of nothing, or plain scatter."""
    assert outliers(values) == ()


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


def test_how_many_more_pulls():
    job = job_value([_pull(v) for v in (29.0, 30.0, 31.0)])
    wanted = 0.9
    more = further_pulls(job, wanted)
    assert more is not None
    n = 3 + more
    random = MEDIAN_EFFICIENCY * 1.0 / math.sqrt(n)
    u = math.hypot(random, 0.3)
    dof = u**4 / (random**4 / (n - 1))
    assert t_factor(dof) * u <= wanted
    n -= 1
    random = MEDIAN_EFFICIENCY * 1.0 / math.sqrt(n)
    u = math.hypot(random, 0.3)
    assert t_factor(u**4 / (random**4 / (n - 1))) * u > wanted
    assert further_pulls(job, 10.0) == 0


def test_no_number_of_pulls_beats_the_shared_part():
    job = job_value([_pull(v, shared=1.0) for v in (29.0, 30.0, 31.0)])
    assert further_pulls(job, 1.9) is None


def test_no_pull_no_value():
    with pytest.raises(ValueError, match="no pull"):
        job_value([])
