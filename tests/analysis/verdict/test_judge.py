"""Pulls and jobs against a limit: directions, quantities, and what would settle a close call."""

from __future__ import annotations

from dataclasses import replace

import pytest

from analysis.to_axle.at_axle import Instrument, Level
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.results import Breakaway, Pull, Rotating, Turned
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.judge import AtAxle, budgets_of, disagreements, judge_job, judge_pull, judge_pulls, values_of
from analysis.verdict.limits import State, bounds_from
from logger.header import Axle, Header, Lever, Limit, Test

MIN_30 = bounds_from(Limit(quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="manual"))
AT = AtAxle(fixture_from(Lever(fixture="couple")), Instrument(0.005), Level(0.0, 0.01, True, "lever off"))


def _pull(direction=1, breakaway=40.0, rotating=35.0):
    b = None if breakaway is None else Breakaway(2.0, breakaway, 0.1, 0.3, True)
    r = None if rotating is None else Rotating(3.0, 6.0, rotating, 0.05, 0.2, rotating + 1.5, max_u_nm=0.4)
    return Pull(1.0, 7.0, direction, 0.0, b, r)


def _budget(value, shared=0.05):
    rows = (
        BudgetRow(Input("trace", value, 0.05), 1.0),
        BudgetRow(Input("calibration", 1.0, shared, "1", shared=True), 1.0),
    )
    return {"breakaway": Budget("breakaway", value, "N·m", rows)}


def test_each_quantity_that_a_pull_has():
    assert set(budgets_of(_pull(), AT)) == {"breakaway", "rotating mean", "rotating maximum"}
    assert set(budgets_of(_pull(rotating=None), AT)) == {"breakaway"}
    assert set(budgets_of(_pull(breakaway=None), AT)) == {"rotating mean", "rotating maximum"}
    assert budgets_of(_pull(breakaway=None, rotating=None), AT) == {}


def test_maximum_has_its_own_uncertainty():
    budgets = budgets_of(_pull(), AT)
    assert budgets["rotating maximum"].value == pytest.approx(36.5)
    assert budgets["rotating maximum"].row("trace").input.u == pytest.approx((0.05**2 + 0.4**2) ** 0.5)
    assert budgets["rotating mean"].row("trace").input.u == 0.05


def test_turn_of_the_wheel_reaches_the_weight_of_the_lever():
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0, weight_kg=2.5, centroid_mm=200)
    full = Turned(0.0, 6.283185307, 6.283185307)
    turned = replace(_pull(), turned=full)
    at = AtAxle(fixture_from(lever), Instrument(), Level(0.0, 0.0, True))
    name = "lever's weight, not sensed"
    assert budgets_of(turned, at)["rotating mean"].row(name).contribution == pytest.approx(0.0, abs=1e-6)
    assert budgets_of(_pull(), at)["rotating mean"].row(name).contribution > 0.3
    # Where on the turn the maximum was, nobody knows.
    assert budgets_of(turned, at)["rotating maximum"].row(name).contribution > 0.3


def test_directions_have_their_own_values_and_the_less_favourable_one_is_judged():
    pulls = [(d, _budget(v)) for d, v in ((1, 40.0), (1, 40.2), (1, 39.8), (-1, 28.0), (-1, 28.1), (-1, 27.9))]
    job = values_of(pulls)
    assert {(v.direction, v.budget.value) for v in job} == {(1, 40.0), (-1, 28.0)}
    result = judge_job(job, MIN_30)
    assert result.state is State.OUTSIDE
    assert result.value == 28.0
    assert any("less favourable" in note for note in result.notes)


def test_one_direction_needs_no_word_about_it():
    result = judge_job(values_of([(1, _budget(v)) for v in (40.0, 40.2, 39.8)]), MIN_30)
    assert result.state is State.WITHIN
    assert result.notes == ()


def test_limit_is_compared_with_the_quantity_that_it_names():
    rotating = bounds_from(Limit(quantity="rotating mean", kind="min", unit="N·m", lower=37.0, source="manual"))
    pulls = [(1, budgets_of(_pull(breakaway=40.0 + d, rotating=35.0 + d / 10), AT)) for d in (-0.1, 0.0, 0.1)]
    job = values_of(pulls)
    assert judge_job(job, MIN_30).state is State.WITHIN
    assert judge_job(job, rotating).state is State.OUTSIDE
    assert judge_pull(pulls[0][1], job, 1, rotating).state is State.OUTSIDE
    assert judge_pull(_budget(40.0), job, 1, rotating) is None


def test_nothing_to_judge_is_not_valid():
    result = judge_job((), MIN_30, notes=("jerked",))
    assert result.state is State.NOT_VALID
    assert result.notes == ("no valid pull gives the breakaway that the limit names", "jerked")


def test_a_single_pull_is_judged_with_the_scatter():
    pulls = [(1, _budget(v)) for v in (31.0, 33.0, 35.0)]
    result = judge_pull(pulls[0][1], values_of(pulls), 1, MIN_30)
    assert result is not None
    assert result.state is State.TOO_CLOSE
    assert result.u > 1.5, "a scatter of 6 %, pooled with the 4 % that is assumed"


@pytest.mark.parametrize(
    ("values", "shared", "words"),
    [
        ((30.5, 31.5), 0.05, "too few pulls"),
        ((29.8, 30.8, 31.8), 0.05, "more pulls like these would settle it"),
        ((30.3, 30.4, 30.5), 0.6, "what they share (transducer, lever, zero) is ± 1.2 N·m"),
        ((27.0, 30.02, 33.0), 0.0, "scatter too much"),
    ],
)
def test_what_would_settle_a_close_call(values, shared, words):
    result = judge_job(values_of([(1, _budget(v, shared)) for v in values]), MIN_30)
    assert result.state is State.TOO_CLOSE
    assert any(words in note for note in result.notes), result.notes


def test_monte_carlo_checks_a_pull():
    assert disagreements(_pull(), AT) == ()
    heavy = Lever(fixture="hub centre", weight_kg=5, centroid_mm=400)
    arcsine = AtAxle(fixture_from(heavy), Instrument(), Level())
    assert all("use Monte Carlo's" in text for text in disagreements(_pull(), arcsine))
    assert len(disagreements(_pull(), arcsine)) == 3


HELD = Header(test=Test(place="car", held="other side", gear="neutral"), axle=Axle(type="clutch pack"))


def test_all_pulls_at_once_are_the_same_as_one_by_one():
    pulls = [_pull(breakaway=value) for value in (40.0, 40.4, 39.7, 90.0)]
    counting = [True, True, True, False]
    said = judge_pulls(list(zip(pulls, counting, strict=True)), HELD, AT, MIN_30)
    job = values_of([(1, budgets_of(pull, AT)) for pull in pulls[:3]])
    assert said.job == job
    assert said.result.value == judge_job(job, MIN_30).value == pytest.approx(40.0)
    assert said.results[3] is None, "one that is excluded has no result"
    assert said.results[0] == judge_pull(said.budgets[0], job, 1, MIN_30)


def test_what_the_comparison_rests_on_is_said():
    flat = replace(_pull(), breakaway=Breakaway(2.0, 40.0, 0.1, 0.3, distinct_peak=False))
    said = judge_pulls([(flat, True)], HELD, AT, MIN_30)
    assert any("torque at which slip began" in note for note in said.result.notes)
    slip = bounds_from(Limit(quantity="breakaway", kind="min", unit="N·m", lower=480.0, source="manual"))
    assert any("lbf·in against lbf·ft" in note for note in judge_pulls([(_pull(), True)], HELD, AT, slip).notes)


def test_without_limit_fixture_or_comparable_test_nothing_is_judged():
    pulls = [(_pull(), True), (_pull(), True)]
    free = judge_pulls(pulls, HELD, AT, None)
    assert (free.result, free.results) == (None, (None, None))
    assert free.job
    unknown = judge_pulls(pulls, HELD, None, MIN_30)
    assert unknown.result.state is State.NOT_VALID
    assert "lever is not known" in unknown.result.notes[0]
    case = bounds_from(
        Limit(quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="manual", held="case", place="bench")
    )
    refused = judge_pulls(pulls, HELD, AT, case)
    assert refused.result.state is State.NOT_VALID
    assert "factor of two" in refused.result.notes[0]
    assert refused.results == (None, None)
