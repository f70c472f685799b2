"""A dial's class, marks and range: the worked example of a big wrench and a transducer on a small torque."""

from __future__ import annotations

import math

import pytest

from analysis.to_axle.dial import Dial, dial_reading
from analysis.to_axle.fixtures import fixture_from
from analysis.uncertainty.budget import Input
from logger.errors import InputError
from logger.header import Lever

ON_AXIS = fixture_from(Lever(fixture="hub centre"))


@pytest.mark.parametrize(
    ("dial", "expanded"),
    [
        (Dial(marks=5 * 1.3558, limit_of_error=0.04, full_scale=339.0), 5.2),
        (Dial(marks=0.1, limit_of_error=0.005 * 200 / 27, full_scale=None), 1.8),
        (Dial(marks=0.1, limit_of_error=0.005 * 100 / 27, full_scale=None), 1.5),
    ],
    ids=["dial wrench 339 N·m", "transducer 200 N·m", "transducer 100 N·m"],
)
def test_range_and_resolution_dominate(dial, expanded):
    """27 N·m, five repeats at 3 %, drag ± 1 N·m (worked out by hand): 5.2, 1.8 and 1.5 N·m expanded with k = 2."""
    budget = dial_reading(27.0, dial, ON_AXIS).plus(
        Input("repeats", 0.0, 0.03 * 27 / math.sqrt(5)), Input("drag", 0.0, 1 / math.sqrt(3))
    )
    assert 2 * budget.u == pytest.approx(expanded, abs=0.06)


def test_error_below_the_certified_range_is_that_of_its_lower_end():
    dial = Dial(limit_of_error=0.04, full_scale=100.0)
    assert dial.half_width(10.0) == dial.half_width(20.0) == pytest.approx(0.8)
    assert dial.half_width(50.0) == pytest.approx(2.0)
    assert Dial().half_width(50.0) == pytest.approx(2.0), "a class that nobody states is assumed"


def test_what_is_not_stated_is_doubted():
    doubts = Dial().doubts(20.0)
    assert any("class is not stated" in text for text in doubts)
    assert any("spacing of the marks is not stated" in text for text in doubts)
    assert Dial(marks=0.5, limit_of_error=0.04, full_scale=50.0).doubts(20.0) == ()


@pytest.mark.parametrize(
    "keys",
    [{"marks": 0.0}, {"marks": math.nan}, {"limit_of_error": -0.1}, {"limit_of_error": 4.0}, {"full_scale": 0.0}],
)
def test_impossible_instruments(keys):
    with pytest.raises(InputError):
        Dial(**keys)


@pytest.mark.parametrize("shown", [0.0, -5.0, math.nan, math.inf])
def test_impossible_readings(shown):
    with pytest.raises(InputError, match="positive"):
        dial_reading(shown, Dial(), ON_AXIS)


def test_beyond_full_scale():
    with pytest.raises(InputError, match="full scale"):
        dial_reading(60.0, Dial(full_scale=50.0), ON_AXIS)


def test_a_dial_at_its_ends():
    """A class of 100 % is none; the end of the scale can be read; less than one newton metre, too."""
    for wrong in (1.0, 1.5):
        with pytest.raises(InputError, match="4 %, not 400 %"):
            Dial(limit_of_error=wrong)
    assert Dial(limit_of_error=0.99).half_width(2.0) == pytest.approx(1.98)
    assert Dial(marks=1.0, limit_of_error=0.04, full_scale=100.0).doubts(100.0) == ()
    hub = fixture_from(Lever(fixture="hub centre", weight_kg=1.0, centroid_mm=1.0))
    assert dial_reading(0.5, Dial(), hub).value == pytest.approx(0.5)
