"""Stud circles from chords."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.stud_circle import COMMON_CIRCLES_MM, chord_factor, circle_from_chords
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


def test_common_circles_as_printed():
    """Whole millimetres, or eighths of an inch (from memory)."""
    inches = [4.5, 4.75, 5, 5.5, 6.5, 8.75, 11.25]
    whole = [98, 100, 108, 110, 112, 115, 118, 120, 130, 135, 150, 170, 180, 200, 205, 225, 275, 335]
    assert list(COMMON_CIRCLES_MM) == pytest.approx(sorted([*whole, *(25.4 * i for i in inches)]), abs=1e-9)


@pytest.mark.parametrize(("studs", "apart"), [(3, 1), (12, 1), (12, 6), (5, 2)])
def test_hubs_that_exist(studs, apart):
    assert chord_factor(studs, apart) == pytest.approx(1 / math.sin(math.pi * apart / studs))


@pytest.mark.parametrize(
    ("studs", "apart", "words"),
    [(13, 1, "3 to 12"), (5, 0, "1 to 2 apart, not 0; with an odd"), (4, 3, "1 to 2 apart, not 3$"), (12, 7, "not 7$")],
)
def test_hubs_that_do_not(studs, apart, words):
    with pytest.raises(InputError, match=words):
        chord_factor(studs, apart)


@pytest.mark.parametrize("length", [0.01, 1.0])
def test_the_shortest_and_the_longest_chord(length):
    assert circle_from_chords(4, [(length, 2)]).diameter_m == pytest.approx(length)
    with pytest.raises(InputError, match="10 to 1000 mm"):
        circle_from_chords(4, [(length * (1.01 if length == 1 else 0.99), 2)])


def test_chords_count_by_their_uncertainty():
    """By hand: w = 1/(f u)², mean and u of two chords on four studs, one opposite (f = 1), one adjacent (f = √2)."""
    circle = circle_from_chords(4, [(0.1140, 2), (0.1150 / math.sqrt(2), 1)])
    assert circle.diameter_m == pytest.approx((1 * 0.1140 + 0.5 * 0.1150) / 1.5)
    assert circle.u_m == pytest.approx(0.5e-3 / math.sqrt(1.5))
    assert circle.spread_m == pytest.approx(1e-3)
    assert circle.midpoint_m == pytest.approx(0, abs=1e-12)  # opposite studs: over the centre
    other = circle_from_chords(4, [(0.1150 / math.sqrt(2), 1), (0.1140, 2)])
    assert other.midpoint_m == pytest.approx(other.diameter_m / 2 / math.sqrt(2))
    for unusable in (0.0, math.inf, math.nan):
        with pytest.raises(InputError, match="more than zero"):
            circle_from_chords(4, [(0.1140, 2)], u_chord_m=unusable)


def test_common_circles_within_three_standard_uncertainties():
    """Opposite studs, ± 0.5 mm: 1.5 mm on either side, the nearest first."""
    assert circle_from_chords(4, [(0.1144, 2)]).near_mm == (114.3, 115.0)
    assert circle_from_chords(4, [(0.1148, 2)]).near_mm == (115.0, 114.3)
    assert circle_from_chords(4, [(0.1134, 2)]).near_mm == (114.3, 112.0)
    assert circle_from_chords(4, [(0.1166, 2)]).near_mm == (118.0,)
    assert circle_from_chords(4, [(0.1134, 2)], u_chord_m=0.25e-3).near_mm == ()
    assert circle_from_chords(4, [(0.150 - 3 / 512, 2)], u_chord_m=1 / 512).near_mm[-1] == 150.0  # just three


def test_two_chords_contradict_from_four_standard_deviations_on():
    """Alike in weight, each lies half of their difference from the mean: 3.9 and 4.1 times 0.5 mm."""
    assert circle_from_chords(4, [(0.1000, 2), (0.1039, 2)]).spread_m == pytest.approx(3.9e-3)
    with pytest.raises(InputError, match=r"circles of 100\.0, 104\.1 mm"):
        circle_from_chords(4, [(0.1000, 2), (0.1041, 2)])
    assert (
        circle_from_chords(4, [(1 / 8, 2), (1 / 8 + 1 / 256, 2)], u_chord_m=1 / 2048).spread_m == 1 / 256
    )  # just four
    with pytest.raises(InputError, match=r"circles of 100\.0, 100\.0, 104\.0 mm"):  # the third lies 5.3 times off
        circle_from_chords(4, [(0.1000, 2), (0.1000, 2), (0.1040, 2)])


def test_plain_values_of_a_circle():
    said = circle_from_chords(5, [(0.0672, 1), (0.1087, 2)]).to_json()
    assert said["diameter_mm"] == 114.303
    assert said["u_mm"] == 0.447
    assert said["spread_mm"] == 0.034
    assert said["chord_midpoint_off_centre_mm"] == 46.237
    assert said["common_circles_near_mm"] == [114.3, 115.0]
