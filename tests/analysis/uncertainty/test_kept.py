"""Budgets of many kinds with all their figures, held against what was kept of them."""

from __future__ import annotations

import math

import pytest

from analysis.uncertainty.budget import (
    Input,
    Shape,
    combine,
    half_width,
    propagate,
    second_order,
    t_factor,
    welch_satterthwaite,
)
from analysis.uncertainty.montecarlo import disagreement, monte_carlo, tolerance
from tests.kept import kept, tried
from tests.steps import steps

ROOM = "analysis.uncertainty"
A = Input("a", 40.0, 0.5, shared=True, note="one")
B = Input("b", 2.0, 0.1, "1", dof=4)
C = half_width("c", 10.0, 0.3, shape=Shape.RECTANGULAR)
D = half_width("d", 3.0, 0.2, shape=Shape.TRIANGULAR, shared=True)
MODELS = {
    "sum": (lambda x: x["a"] + x["b"] * 3, (A, B)),
    "product": (lambda x: x["a"] * x["b"] - x["c"], (A, B, C)),
    "quotient": (lambda x: x["a"] / x["d"], (A, D)),
    "square": (lambda x: (x["b"] - 2.0) ** 2 + x["c"], (B, C)),
    "one": (lambda x: 2 * x["a"], (A,)),
}
CORRELATED = {"product": (("a", "c", 0.5),), "sum": (("a", "b", -0.9),)}


@pytest.mark.parametrize("name", MODELS)
def test_kept_budgets(name):
    model, inputs = MODELS[name]
    with steps(ROOM) as said:
        plain = propagate(name, model, inputs)
        answers = [tried(lambda: plain), tried(plain.expanded, 0.99), tried(plain.plus, Input("e", 0.0, 0.4, dof=3))]
        answers += [tried(plain.without, "a"), tried(plain.row, "a"), second_order(model, inputs)]
        answers.append(tried(propagate, name, model, inputs, slopes={one.name: 1.5 for one in inputs}))
        for correlations in (CORRELATED.get(name, ()), (("a", "nobody", 0.5),), (("a", "b", 1.5),)):
            answers.append(tried(propagate, name, model, inputs, correlations=correlations))
        answers += [tried(combine, "c", terms) for terms in ([(1.0, plain), (-0.5, plain)], [(2.0, plain)], [])]
    kept("budgets", name, [answers, said])


@pytest.mark.parametrize("name", MODELS)
def test_kept_trials(name):
    model, inputs = MODELS[name]
    found = [
        monte_carlo(model, inputs, trials=trials, seed=5, level=level) for trials, level in ((2000, 0.95), (999, 0.9))
    ]
    plain = propagate(name, model, inputs)
    said = [disagreement(plain, found[0], digits=digits) for digits in (1, 2)]
    wrong = [disagreement(plain.plus(Input("e", 0.0, u)), found[0]) for u in (0.1, 1.0, 5.0, 50.0)]
    kept("budgets", f"{name} in trials", [tried(lambda: found), said, wrong])


def test_kept_factors():
    dofs = (0.5, 1, 1.9, 2, 2.5, 3, 4, 10, 99.5, 1e6, math.inf)
    answers = [
        [tried(t_factor, dof, level) for dof in dofs for level in (0.5, 0.95, 0.9973)],
        [
            tried(welch_satterthwaite, parts)
            for parts in ([(1.0, 4), (2.0, math.inf)], [(0.0, 3)], [], [(1, 2), (1, 2), (0, 9)])
        ],
        [tolerance(u, digits) for u in (0.0, 0.0094, 0.0095, 1.0, 9.95, 123.0) for digits in (1, 2, 3)],
        [tried(half_width, "x", 1.0, 0.5, shape=shape) for shape in Shape],
        [
            tried(Input, "x", value, u, dof=dof)
            for value, u, dof in ((1, -1, 3), (math.nan, 1, 3), (1, math.inf, 3), (1, 1, 0))
        ],
    ]
    kept("budgets", "factors", answers)
