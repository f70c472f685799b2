"""From torque to friction."""

from __future__ import annotations

import math

import numpy as np
import pytest
from uncertainties import ufloat

from analysis.to_axle.friction import (
    drag_check,
    friction_figure,
    pinion_at_axle,
    radius_even_pressure,
    radius_even_wear,
)
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from logger.errors import InputError


def torque(value: float, u: float) -> Budget:
    return Budget("rotating mean", value, "N·m", (BudgetRow(Input("reading", value, u), 1.0),))


def test_radii_are_the_integrals_that_they_stand_for():
    """Even pressure: ∫ r² dr / ∫ r dr; even wear (p r constant): ∫ r dr / ∫ dr, done numerically by numpy."""
    outer, inner = 0.098, 0.070
    r = np.linspace(inner / 2, outer / 2, 20_001)
    assert radius_even_pressure(outer, inner) == pytest.approx(np.trapezoid(r**2, r) / np.trapezoid(r, r), rel=1e-7)
    assert radius_even_wear(outer, inner) == pytest.approx(np.trapezoid(r, r) / (r[-1] - r[0]), rel=1e-9)
    assert radius_even_pressure(outer, 0.0) == pytest.approx(outer / 3)  # a full disc: 2/3 R
    assert radius_even_pressure(outer, inner) > radius_even_wear(outer, inner)


def test_the_figure_gives_the_torque_back():
    """T = n μ F r, with the radius between both kinds of wear (they lie 1 % apart here)."""
    mu, n, load, outer, inner = 0.11, 6, 1500.0, 0.098, 0.070
    radius = (radius_even_wear(outer, inner) + radius_even_pressure(outer, inner)) / 2
    found = friction_figure(torque(n * mu * load * radius, 0.5), n, load, outer, inner, load_u_n=20.0, face_u_m=1e-4)
    assert found.value == pytest.approx(mu)


def test_its_interval_is_that_of_an_independent_library():
    """Linear propagation by the `uncertainties` package."""
    t, f, o, i, w = ufloat(42, 0.6), ufloat(1500, 25), ufloat(0.098, 1e-4), ufloat(0.07, 1e-4), ufloat(0.5, 1 / 12**0.5)
    radius = (1 - w) * radius_even_wear(o, i) + w * radius_even_pressure(o, i)
    expected = t / (6 * f * radius)
    found = friction_figure(torque(42, 0.6), 6, 1500, 0.098, 0.07, load_u_n=25, face_u_m=1e-4)
    assert found.value == pytest.approx(expected.nominal_value)
    assert found.u == pytest.approx(expected.std_dev, rel=1e-4)


def test_what_is_not_stated_widens():
    stated = friction_figure(torque(42, 0.6), 6, 1500, 0.098, 0.07, load_u_n=25, face_u_m=1e-4)
    assumed = friction_figure(torque(42, 0.6), 6, 1500, 0.098, 0.07)
    assert assumed.value == stated.value
    assert assumed.u > 3 * stated.u
    assert {"± 15 % assumed", "± 0.5 mm assumed"} <= {row.input.note for row in assumed.rows}


@pytest.mark.parametrize("faces", [(0.07, 0.07), (0.06, 0.07), (0.07, -0.01)])
def test_faces_without_a_width_are_refused(faces):
    with pytest.raises(InputError):
        friction_figure(torque(42, 1), 6, 1500, *faces)
    with pytest.raises(InputError):
        friction_figure(torque(42, 1), 6, 0.0, 0.098, 0.07)


def test_the_pinion_has_the_power_of_the_carrier():
    """T_c ω = T_p i ω: one turn of the carrier is i turns of the pinion."""
    found = pinion_at_axle(1.2, 0.1, 43 / 11)
    work = 1.2 * 2 * math.pi * 43 / 11
    assert found.value * 2 * math.pi == pytest.approx(work)
    assert found.u == pytest.approx(0.1 * 43 / 11)
    with pytest.raises(InputError):
        pinion_at_axle(1.2, 0.1, 0.0)


def test_a_part_is_not_more_than_the_whole():
    pinion = pinion_at_axle(3.0, 0.1, 4.0)
    fits, text = drag_check(pinion, torque(15.0, 0.5))
    assert fits
    assert "3.0 ±" in text
    fits, text = drag_check(pinion, torque(6.0, 0.5))
    assert not fits
    assert "wrong" in text
    assert drag_check(pinion, torque(11.5, 0.5))[0]  # within both intervals: not told apart
