"""Sampling against known distributions; the adaptive procedure; refusal of what cannot be drawn."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from analysis.uncertainty.budget import Input, Shape, half_width, propagate
from analysis.uncertainty.montecarlo import disagreement, monte_carlo, tolerance


def _same(x):
    return x["x"]


@pytest.mark.parametrize(
    ("known", "distribution"),
    [
        (Input("x", 2.0, 0.5), stats.norm(2.0, 0.5)),
        (Input("x", 2.0, 0.5, dof=5), stats.t(5, 2.0, 0.5)),
        (half_width("x", 2.0, 0.5), stats.uniform(1.5, 1.0)),
        (half_width("x", 2.0, 0.5, shape=Shape.TRIANGULAR), stats.triang(0.5, 1.5, 1.0)),
        (half_width("x", 2.0, 0.5, shape=Shape.ARCSINE), stats.arcsine(1.5, 1.0)),
    ],
)
def test_draws_have_their_distribution(known, distribution):
    drawn = monte_carlo(_same, (known,), trials=200_000)
    assert drawn.mean == pytest.approx(distribution.mean(), abs=5 * distribution.std() / math.sqrt(200_000))
    assert drawn.u == pytest.approx(distribution.std(), rel=0.02)
    low, high = distribution.ppf([0.025, 0.975])
    assert (drawn.low, drawn.high) == pytest.approx((low, high), abs=0.02)


def test_a_constant_stays_one():
    drawn = monte_carlo(lambda x: 3.0, (Input("x", 1.0, 0.0),), trials=1000)
    assert (drawn.mean, drawn.u, drawn.low, drawn.high) == (3.0, 0.0, 3.0, 3.0)


def test_same_seed_same_result_other_seed_another():
    inputs = (Input("x", 0.0, 1.0),)
    first, again = (monte_carlo(_same, inputs, trials=1000, seed=5) for _ in range(2))
    assert first == again
    assert monte_carlo(_same, inputs, trials=1000, seed=6) != first


def test_correlation_is_drawn():
    inputs = (Input("x", 0.0, 1.0), Input("y", 0.0, 2.0), half_width("z", 0.0, 1.0))
    drawn = monte_carlo(lambda v: v["x"] + v["y"], inputs, correlations=(("x", "y", -0.8),), trials=400_000)
    assert drawn.u == pytest.approx(math.sqrt(1 + 4 - 2 * 0.8 * 2), rel=0.01)


@pytest.mark.parametrize(
    ("inputs", "correlations", "words"),
    [
        ((Input("x", 0.0, 1.0), half_width("y", 0.0, 1.0)), (("x", "y", 0.5),), "only normal"),
        (
            tuple(Input(n, 0.0, 1.0) for n in "xyz"),
            (("x", "y", 0.9), ("y", "z", 0.9), ("x", "z", -0.9)),
            "contradict",
        ),
    ],
)
def test_what_cannot_be_drawn_is_refused(inputs, correlations, words):
    with pytest.raises(ValueError, match=words):
        monte_carlo(lambda v: v["x"], inputs, correlations=correlations, trials=100)


def test_adaptive_procedure_stops_when_its_digits_are_stable():
    drawn = monte_carlo(_same, (Input("x", 10.0, 0.5),), trials=None, digits=2)
    assert drawn.stable
    assert drawn.trials >= 20_000
    assert drawn.u == pytest.approx(0.5, abs=tolerance(0.5, 2))


def test_adaptive_procedure_says_when_it_did_not_get_there(monkeypatch):
    """A Cauchy quotient has no standard deviation: nothing can become stable."""
    monkeypatch.setattr("analysis.uncertainty.montecarlo.MOST_BLOCKS", 5)
    inputs = (Input("x", 0.0, 1.0), Input("y", 0.0, 1.0))
    assert not monte_carlo(lambda v: v["x"] / v["y"], inputs, trials=None, digits=3).stable


@pytest.mark.parametrize(("u", "digits", "delta"), [(0.35, 1, 0.05), (0.35, 2, 0.005), (9.96, 2, 0.5), (0.0, 2, 0.0)])
def test_tolerance(u, digits, delta):
    assert tolerance(u, digits) == pytest.approx(delta)


def test_budget_and_trials_agree_on_a_line_and_not_on_a_bend():
    inputs = (Input("x", 0.0, 1.0), Input("y", 1.0, 0.5))

    def line(v):
        return v["x"] + v["y"]

    def bend(v):
        return v["x"] ** 2 + v["y"]

    assert disagreement(propagate("line", line, inputs), monte_carlo(line, inputs, trials=200_000)) == ""
    said = disagreement(propagate("bend", bend, inputs), monte_carlo(bend, inputs, trials=200_000))
    assert said.startswith("bend: the budget's interval")


def test_shortest_interval_of_a_skewed_distribution_is_shorter():
    drawn = monte_carlo(lambda v: np.exp(v["x"]), (Input("x", 0.0, 1.0),), trials=200_000)
    assert drawn.shortest[1] - drawn.shortest[0] < drawn.high - drawn.low
