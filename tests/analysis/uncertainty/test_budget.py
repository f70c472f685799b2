"""Propagation against the ``uncertainties`` library, degrees of freedom, shared and correlated inputs."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm
from uncertainties import correlated_values, ufloat

from analysis.uncertainty.budget import (
    NORMAL_95,
    Budget,
    BudgetRow,
    Input,
    Shape,
    combine,
    half_width,
    propagate,
    second_order,
    t_factor,
    welch_satterthwaite,
)

finite = st.floats(0.5, 50)
small = st.floats(1e-4, 0.2)


@given(a=finite, b=finite, ua=small, ub=small)
def test_product_and_quotient_against_uncertainties(a, b, ua, ub):
    x, y = ufloat(a, ua), ufloat(b, ub)
    inputs = (Input("a", a, ua), Input("b", b, ub))
    for model, other in ((lambda v: v["a"] * v["b"] ** 2, x * y**2), (lambda v: v["a"] / v["b"], x / y)):
        budget = propagate("y", model, inputs)
        assert budget.value == pytest.approx(other.nominal_value, rel=1e-12)
        assert budget.u == pytest.approx(other.std_dev, rel=1e-6)


@pytest.mark.parametrize("r", [-0.9, -0.3, 0.5, 1.0])
def test_correlated_inputs_against_uncertainties(r):
    ua, ub = 0.3, 0.2
    x, y = correlated_values([4.0, 7.0], [[ua**2, r * ua * ub], [r * ua * ub, ub**2]])
    inputs = (Input("a", 4.0, ua, dof=4), Input("b", 7.0, ub, dof=9))
    budget = propagate("y", lambda v: v["a"] * v["b"], inputs, correlations=(("a", "b", r),))
    assert budget.u == pytest.approx((x * y).std_dev, rel=1e-6)
    assert budget.dof == pytest.approx(4)  # the fewest of the correlated ones


def test_shared_inputs_against_uncertainties():
    """Two pulls of one transducer and lever: their difference hardly knows of either, their sum counts both twice."""
    gain, lever = ufloat(1.0, 0.005), ufloat(1.127, 0.003)
    own = [ufloat(30.0, 0.2), ufloat(26.0, 0.3)]
    results = [o * gain * lever for o in own]
    budgets = [
        propagate(
            f"pull {k}",
            lambda v: v["trace"] * v["calibration"] * v["lever"],
            (
                Input("trace", o.nominal_value, o.std_dev),
                Input("calibration", 1.0, 0.005, "1", shared=True),
                Input("lever", 1.127, 0.003, "1", shared=True),
            ),
        )
        for k, o in enumerate(own)
    ]
    for signs in ((1, 1), (1, -1), (0.5, 0.5)):
        together = combine("both", list(zip(signs, budgets, strict=True)))
        other = signs[0] * results[0] + signs[1] * results[1]
        assert together.value == pytest.approx(other.nominal_value)
        assert together.u == pytest.approx(other.std_dev, rel=1e-6)
        assert sum(row.input.name == "calibration" for row in together.rows) == 1
        assert sum("trace" in row.input.name for row in together.rows) == 2


def test_correlation_between_shared_inputs_counts_once():
    inputs = (Input("a", 1.0, 0.1, shared=True), Input("b", 1.0, 0.1, shared=True))
    one = propagate("y", lambda v: v["a"] + v["b"], inputs, correlations=(("a", "b", 0.5),))
    assert combine("twice", [(1, one), (1, one)]).u == pytest.approx(2 * one.u)


@given(st.lists(st.tuples(small, st.floats(1, 100)), min_size=1, max_size=6))
def test_effective_degrees_of_freedom_lie_between_least_and_sum(parts):
    dof = welch_satterthwaite(parts)
    assert min(d for _, d in parts) <= dof * (1 + 1e-9)
    assert dof <= sum(d for _, d in parts) * (1 + 1e-9)


def test_all_inputs_exact():
    budget = Budget("y", 3.0, "N·m", (BudgetRow(Input("a", 3.0, 0.0), 1.0),))
    assert (budget.u, budget.u95) == (0.0, 0.0)
    assert math.isinf(budget.dof)


def test_fewer_than_one_degree_of_freedom_counts_as_one():
    assert t_factor(0.4) == t_factor(1) == pytest.approx(12.706, abs=5e-4)


@pytest.mark.parametrize(
    ("shape", "u"),
    [(Shape.RECTANGULAR, 1 / math.sqrt(3)), (Shape.TRIANGULAR, 1 / math.sqrt(6)), (Shape.ARCSINE, 1 / math.sqrt(2))],
)
def test_half_widths(shape, u):
    """Standard deviations by integrating the densities on -1 ... 1 (JCGM 100, 4.3.7 to 4.3.9; JCGM 101, 6.4)."""
    assert half_width("x", 0.0, 1.0, shape=shape).u == pytest.approx(u)


def test_second_order_of_a_turning_point():
    """y = cos x at 0: no first order; the standard deviation of -x²/2 for normal x is u²/√2."""
    inputs = (Input("x", 0.0, 0.1, "rad"),)

    def model(v):
        return math.cos(v["x"])

    assert propagate("y", model, inputs).u == pytest.approx(0.0, abs=1e-9)
    assert second_order(model, inputs) == pytest.approx(0.1**2 / math.sqrt(2), rel=0.01)


def test_second_order_of_a_product_of_zeros():
    inputs = (Input("x", 0.0, 0.2), Input("y", 0.0, 0.3))
    assert second_order(lambda v: v["x"] * v["y"], inputs) == pytest.approx(0.06)


def test_second_order_of_a_line_is_nothing():
    inputs = (Input("x", 1.0, 0.2), Input("y", 2.0, 0.3))
    assert second_order(lambda v: 3 * v["x"] - v["y"], inputs) == pytest.approx(0.0, abs=1e-6)


def test_rows_can_be_found_added_and_left_out():
    budget = Budget("y", 1.0, "N·m", (BudgetRow(Input("a", 1.0, 3.0), 1.0),)).plus(Input("b", 0.0, 4.0))
    assert budget.u == pytest.approx(5.0)
    assert budget.row("b").contribution == 4.0
    assert budget.without("a").u == pytest.approx(4.0)
    with pytest.raises(KeyError):
        budget.row("c")


@pytest.mark.parametrize("x", [0.0, 0.5, 1000.0, -1000.0])
def test_slopes_of_an_input_that_is_known_exactly(x):
    """d(x³ + x)/dx = 3 x² + 1, by differences that rounding leaves alone."""
    found = propagate("y", lambda at: at["x"] ** 3 + at["x"], [Input("x", x, 0.0)])
    assert found.rows[0].sensitivity == pytest.approx(3 * x * x + 1, rel=1e-9)
    assert found.u == 0


def test_the_factor_of_certificates_is_that_of_the_normal_distribution():
    """scipy's quantile, to the digits that are written."""
    assert pytest.approx(norm.ppf(0.975), abs=5e-7) == NORMAL_95


def test_second_order_by_hand():
    """JCGM 100, 5.1.2, note. x³ at 2 ± 0.1: (6x)²/2 u⁴ + 3x² · 6 u⁴, its slope over one u 3x² + u²; of x z: u_x u_z."""
    x, u = 2.0, 0.1
    expected = (6 * x) ** 2 / 2 * u**4 + (3 * x * x + u * u) * 6 * u**4
    assert second_order(lambda at: at["x"] ** 3, [Input("x", x, u)]) == pytest.approx(math.sqrt(expected))
    both = [Input("x", 3.0, 0.2), Input("z", 5.0, 0.3)]
    assert second_order(lambda at: at["x"] * at["z"], both) == pytest.approx(0.06)


def test_degrees_of_freedom_by_hand():
    """(4 + 1)²/(16/3 + 1/7), JCGM 100, eq. G.2b."""
    assert welch_satterthwaite([(2.0, 3), (1.0, 7)]) == pytest.approx(25 / (16 / 3 + 1 / 7))
    assert welch_satterthwaite([(1e-200, 3), (1e-200, 3)]) == pytest.approx(6)
    assert welch_satterthwaite([(1e200, 3), (1e-200, 3)]) == pytest.approx(3)
