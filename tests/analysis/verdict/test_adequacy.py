"""Advice on range, resolution and certificate."""

from __future__ import annotations

import math
from datetime import date
from types import SimpleNamespace

import pytest

from analysis.to_axle.at_axle import Level
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.adequacy import certificate_advice, range_advice, resolution_advice, sign_advice, zero_advice
from analysis.verdict.limits import bounds_from
from analysis.verdict.repeats import job_value
from logger.header import Limit, TransducerFacts


def _bounds(lower):
    return bounds_from(Limit(quantity="breakaway", kind="min", unit="N·m", lower=lower, source="manual"))


@pytest.mark.parametrize(
    ("capacity", "limit", "highest", "words"),
    [
        (339.0, 27.0, 30.0, "8 % of the transducer's capacity (below 20 %)"),
        (30.0, 27.0, 28.0, "90 % of the transducer's capacity (above 80 %)"),
        (100.0, None, 95.0, "the highest reading is 95 %"),
    ],
)
def test_range(capacity, limit, highest, words):
    said = range_advice(capacity, None if limit is None else _bounds(limit), highest)
    assert len(said) == 1
    assert words in said[0]


@pytest.mark.parametrize(
    ("capacity", "limit", "highest"), [(None, 27.0, 30.0), (100.0, 27.0, 95.0), (100.0, None, None)]
)
def test_range_that_suits(capacity, limit, highest):
    """The limit decides where there is one; nothing known, nothing said."""
    assert range_advice(capacity, None if limit is None else _bounds(limit), highest) == ()


def test_ratio_says_nothing_about_the_range():
    ratio = bounds_from(Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="manual"))
    assert range_advice(200.0, ratio, None) == ()


@pytest.mark.parametrize(("step", "said"), [(None, 0), (0.01, 0), (1.0, 1)])
def test_resolution(step, said):
    pulls = [Budget("breakaway", v, "N·m", (BudgetRow(Input("trace", v, 0.3), 1.0),)) for v in (29.9, 30.0, 30.1)]
    assert len(resolution_advice(step, [job_value(pulls)])) == said


@pytest.mark.parametrize(
    ("due", "tested", "said"),
    [
        (None, date(2026, 5, 1), 0),
        (date(2026, 5, 1), None, 0),
        (date(2026, 5, 1), date(2026, 5, 1), 0),
        (date(2026, 4, 30), date(2026, 5, 1), 1),
    ],
)
def test_certificate(due, tested, said):
    assert len(certificate_advice(TransducerFacts(certificate_due=due), tested)) == said


@pytest.mark.parametrize(("sign", "said"), [(None, 0), ("signed", 0), ("reversed", 0), ("none", 1)])
def test_gauge_without_sign(sign, said):
    assert len(sign_advice(TransducerFacts(sign=sign))) == said


@pytest.mark.parametrize(
    ("level", "words"),
    [
        (Level(), None),
        (Level(0.2, 0.01, True, "lever off"), "not taken again"),
        (Level(0.2, 0.01, True, "lever off", 0.2), None),
        (Level(0.2, 0.01, True, "lever off", -0.5), "moved by -0.5 N·m"),
    ],
)
def test_zero_before_and_after(level, words):
    job = [job_value([Budget("breakaway", 30.0, "N·m", (BudgetRow(Input("trace", 30.0, 0.3), 1.0),))])]
    said = zero_advice(level, job)
    assert (words is None and said == ()) or words in said[0]
    assert zero_advice(level, []) == ()


def test_of_two_bounds_the_higher_tells_the_range():
    limit = Limit(quantity="breakaway", kind="band", unit="N·m", lower=10.0, upper=50.0, source="manual")
    assert range_advice(100.0, bounds_from(limit), None) == ()


def value_with(u):
    return SimpleNamespace(budget=SimpleNamespace(u=u))


def test_a_step_is_large_from_three_tenths_of_the_uncertainty_on():
    """A step s is a rectangle of s/√12; of √12 N·m it is 1."""
    step = math.sqrt(12)
    assert resolution_advice(step, [value_with(1 / 0.3)]) == ()
    assert resolution_advice(1.01 * step, [value_with(1 / 0.3)])
    assert resolution_advice(step, [value_with(0.0)]) == ()


@pytest.mark.parametrize(("moved", "said"), [(0.3, 0), (-0.3, 0), (0.31, 1), (-0.5, 1)])
def test_a_zero_may_move_by_a_hundredth_of_the_smallest_value(moved, said):
    job = [SimpleNamespace(budget=SimpleNamespace(value=value)) for value in (60.0, -30.0)]
    assert len(zero_advice(Level(0.2, 0.01, True, "lever off", moved), job)) == said
