"""Stud circles from chords."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.stud_circle import chord_factor, circle_from_chords
from logger.errors import InputError

INCH = 0.0254


@pytest.mark.published("trailer-parts guide, five-stud circles", rows=("11.9",), status="READ-S")
@pytest.mark.parametrize(("spacing_in", "circle_in"), [(2 + 5 / 8, 4.5), (2 + 3 / 4, 4.75), (3, 5.0), (3 + 1 / 4, 5.5)])
def test_adjacent_spacing_of_five(spacing_in, circle_in):
    # Printed to an eighth of an inch: within half of that of the exact spacing.
    circle = circle_from_chords(5, [(spacing_in * INCH, 1)])
    assert circle.diameter_m / INCH == pytest.approx(circle_in, abs=1 / 16 * chord_factor(5, 1))


@pytest.mark.published("computed, d = s / (2 sin 36°)", rows=("11.10",), status="CALC")
@pytest.mark.parametrize(
    ("circle_mm", "chord_mm"),
    [(100, 58.779), (108, 63.481), (112, 65.832), (114.3, 67.184), (120, 70.534), (127, 74.649)],
)
def test_five_stud_chords(circle_mm, chord_mm):
    circle = circle_from_chords(5, [(chord_mm * 1e-3, 1)])
    assert circle.diameter_m * 1e3 == pytest.approx(circle_mm, abs=1e-3)
    assert circle.near_mm[0] == circle_mm


@pytest.mark.published("public wheel pages", rows=("11.11",), status="READ-S")
def test_four_and_a_half_inches():
    circle = circle_from_chords(4, [(4.5 * INCH, 2)])  # opposite studs: the chord is the circle
    assert circle.diameter_m * 1e3 == pytest.approx(114.3)
    assert circle.near_mm[0] == 114.3


@pytest.mark.parametrize(
    ("studs", "apart", "factor"),
    [
        *[(3, 1, 1.1547), (4, 1, 1.4142), (4, 2, 1), (5, 1, 1.7013), (5, 2, 1.0515), (6, 1, 2.0), (6, 2, 1.1547)],
        *[(8, 1, 2.6131), (8, 2, 1.4142), (8, 3, 1.0824), (8, 4, 1), (10, 1, 3.2361), (10, 4, 1.0515)],
    ],
)
def test_multipliers(studs, apart, factor):
    assert chord_factor(studs, apart) == pytest.approx(factor, abs=5e-5)


def test_bar_on_two_of_five_sits_off_centre():
    # 0.309 r for studs two apart: 17.7 mm on a 114.3 mm circle.
    chord = 0.1143 / chord_factor(5, 2)
    assert circle_from_chords(5, [(chord, 2)]).midpoint_m * 1e3 == pytest.approx(17.7, abs=0.05)


@given(studs=st.integers(3, 12), diameter=st.floats(0.09, 0.3))
def test_chords_of_one_circle_agree(studs, diameter):
    chords = [(diameter / chord_factor(studs, k), k) for k in range(1, studs // 2 + 1)]
    circle = circle_from_chords(studs, chords)
    assert circle.diameter_m == pytest.approx(diameter)
    assert circle.spread_m == pytest.approx(0, abs=1e-12)


def test_more_chords_know_more():
    one = circle_from_chords(5, [(0.0672, 1)])
    assert one.u_m == pytest.approx(0.5e-3 * 1.7013, rel=1e-4)
    assert circle_from_chords(5, [(0.0672, 1), (0.1087, 2)]).u_m < one.u_m


@pytest.mark.parametrize(
    ("studs", "chords", "hint"),
    [
        (5, [], "at least one"),
        (5, [(0.07, 3)], "none is opposite"),
        (2, [(0.07, 1)], "3 to 12"),
        (5, [(67.2, 1)], "mm"),
        (5, [(0.0672, 2), (0.0672, 1)], "contradict"),
    ],
)
def test_raises(studs, chords, hint):
    with pytest.raises(InputError, match=hint):
        circle_from_chords(studs, chords)
