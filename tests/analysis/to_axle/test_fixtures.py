"""What a user may write for a lever: refused with all faults named, or accepted with what was assumed named."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from analysis.to_axle.fixtures import fixture_from
from logger.errors import DescriptionError
from logger.header import Lever


def _faults(**keys):
    with pytest.raises(DescriptionError) as caught:
        fixture_from(Lever(**keys), file="club.toml")
    return str(caught.value)


@pytest.mark.parametrize("length", [0, -450, math.nan, math.inf])
def test_length_that_is_none(length):
    text = _faults(fixture="one stud", length_mm=length, stud_circle_mm=114.3)
    assert text.startswith("club.toml: lever.length_mm: must be")


def test_all_faults_at_once():
    text = _faults(fixture="one stud", length_mm=-1, stud_circle_mm=0, pull_angle_deg=80, weight_kg=2)
    assert text.count("\n") == 3
    for key in ("length_mm", "stud_circle_mm", "pull_angle_deg", "centroid_mm"):
        assert f"lever.{key}: " in text


@pytest.mark.parametrize(
    ("keys", "key"),
    [
        ({"fixture": "one stud", "stud_circle_mm": 114.3}, "length_mm"),
        ({"fixture": "one stud", "length_mm": 450}, "stud_circle_mm"),
        ({"fixture": "one stud", "length_mm": 450, "chord_mm": 67}, "studs"),
        ({"fixture": "one stud", "length_mm": 450, "chord_mm": -67, "studs": 5}, "chord_mm"),
        ({"fixture": "one stud", "length_mm": 450, "chord_mm": 67, "studs": 5, "chord_apart": 3}, "studs"),
        ({"fixture": "one stud", "length_mm": 450, "stud_circle_mm": 114.3, "angle_deg": 400}, "angle_deg"),
        ({"fixture": "one stud", "length_mm": 450, "stud_circle_mm": 114.3, "length_mm_u": -1}, "length_mm_u"),
        ({"fixture": "one stud", "length_mm": 50, "stud_circle_mm": 114.3, "angle_deg": 180}, "length_mm"),
        ({"fixture": "cross-bar"}, "length_mm"),
        ({"fixture": "force at radius"}, "radius_mm"),
        ({"fixture": "cord", "radius_mm": 100, "cord_mm": -1}, "cord_mm"),
        ({"fixture": "hub centre", "gauge_mm": 50, "length_mm": 400}, "grip_mark_mm"),
        ({"fixture": "hub centre", "gauge_mm": 500, "grip_mark_mm": 420, "length_mm": 450}, "gauge_mm"),
        ({"fixture": "hub centre", "weight_kg": -1, "centroid_mm": 100}, "weight_kg"),
    ],
)
def test_faults_name_their_key(keys, key):
    assert f"lever.{key}: " in _faults(**keys)


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"length_mm": 450, "stud_circle_mm": 114.3}, "angle not stated"),
        ({"length_mm": 50, "stud_circle_mm": 114.3, "angle_deg": 0}, "check units"),
        ({"length_mm": 45, "stud_circle_mm": 60, "angle_deg": 0}, "is the unit right"),
        ({"length_mm": 450, "stud_circle_mm": 114.3, "angle_deg": 60}, "not in line"),
        ({"length_mm": 450, "stud_circle_mm": 114.3, "chord_mm": 63.5, "studs": 5, "angle_deg": 0}, "count the studs"),
    ],
)
def test_what_looks_suspicious_is_said(keys, words):
    fixture = fixture_from(Lever(fixture="one stud", **keys))
    assert any(words in note for note in fixture.notes)


def test_nothing_suspicious_says_nothing():
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0, chord_mm=67.2, studs=5)
    assert fixture_from(lever).notes == ()


def test_stated_uncertainty_is_used_and_an_assumed_one_is_named():
    lever = Lever(fixture="one stud", length_mm=450, length_mm_u=3, stud_circle_mm=114.3, angle_deg=0)
    inputs = {i.name: i for i in fixture_from(lever).inputs}
    assert inputs["lever length"].u == pytest.approx(0.003)
    assert inputs["lever length"].note == "stated"
    assert inputs["lever angle"].u == pytest.approx(math.radians(10) / math.sqrt(3))
    assert inputs["lever angle"].note == "assumed ± 10°"
    assert all(i.shared for i in inputs.values())


def test_stud_circle_from_a_chord():
    """Two apart on five studs: the circle is 1.0515 times the chord (common practice, no source)."""
    lever = Lever(fixture="one stud", length_mm=450, chord_mm=108.7, studs=5, chord_apart=2, angle_deg=0)
    fixture = fixture_from(lever)
    assert fixture.values["stud radius"] * 2e3 == pytest.approx(1.0515 * 108.7, abs=0.02)
    assert fixture.inputs[0].note == "from a chord ± 1 mm"


def test_radius_uncertainty_is_half_of_the_circles():
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, stud_circle_mm_u=1.0, angle_deg=0)
    assert fixture_from(lever).inputs[0].u == pytest.approx(0.0005)


ONE_STUD = {"fixture": "one stud", "length_mm": 450, "stud_circle_mm": 114.3, "angle_deg": 0}


def notes(**keys):
    return fixture_from(Lever(**(ONE_STUD | keys))).notes


@pytest.mark.parametrize(
    ("keys", "beyond", "key"),
    [
        ({"pull_angle_deg": 60}, 60.1, "pull_angle_deg"),
        ({"pull_angle_deg": -60}, -60.1, "pull_angle_deg"),
        ({"angle_deg": 360}, 360.1, "angle_deg"),
        ({"length_mm": 1e5}, 1.01e5, "length_mm"),
        ({"length_mm_u": 1e5}, 1.01e5, "length_mm_u"),
        ({"length_mm_u": 0}, -0.1, "length_mm_u"),
        ({"stud_circle_mm": 1}, 0.9, "stud_circle_mm"),
        ({"stud_circle_mm": 1e5}, 1.01e5, "stud_circle_mm"),
        ({"weight_kg": 1000, "centroid_mm": 200}, 1001, "weight_kg"),
        ({"centroid_mm": 1e5, "weight_kg": 2}, 1.01e5, "centroid_mm"),
        ({"start_angle_deg": 360, "weight_kg": 2, "centroid_mm": 200}, 360.1, "start_angle_deg"),
    ],
)
def test_the_last_figure_that_is_possible(keys, beyond, key):
    fixture_from(Lever(**(ONE_STUD | keys)))
    assert f"lever.{key}: " in _faults(**(ONE_STUD | keys | {key: beyond}))


def test_chords_and_cords_at_their_edges():
    chord = ONE_STUD | {"stud_circle_mm": None, "studs": 4, "chord_apart": 2}
    for good, bad in ((1, 0.9), (1e5, 1.01e5)):
        assert fixture_from(Lever(**chord, chord_mm=good)).values["stud radius"] == pytest.approx(good / 2e3)
        assert "lever.chord_mm: " in _faults(**chord, chord_mm=bad)
    cord = fixture_from(Lever(fixture="cord", radius_mm=100, cord_mm=0))
    assert cord.factor == 0.1
    # the nearest two studs where nothing else is said: 1/(2 sin 45°) of the chord
    near = fixture_from(Lever(**(chord | {"chord_apart": None}), chord_mm=80))
    assert near.values["stud radius"] == pytest.approx(0.08 / math.sqrt(2))
    assert near.inputs[0].u == pytest.approx(0.001 / math.sqrt(2) / math.sqrt(3))


@pytest.mark.parametrize(("length", "told"), [(50, False), (49, True), (3000, False), (3001, True)])
def test_levers_are_five_centimetres_to_three_metres_long(length, told):
    """Common practice, no source."""
    assert any("unusual for a lever" in note for note in notes(length_mm=length, stud_circle_mm=60)) is told
    assert any(f"length_mm = {length} mm" in note for note in notes(length_mm=length, stud_circle_mm=60)) is told


@pytest.mark.parametrize(("angle", "told"), [(20, False), (20.2, True), (-20.2, True), (170, False), (159, True)])
def test_a_lever_within_twenty_degrees_is_in_line(angle, told):
    assert any("not in line" in note for note in notes(angle_deg=angle)) is told


@pytest.mark.parametrize(("circle", "told"), [(114.3, True), (114.2, False)])
def test_a_stud_as_far_out_as_the_lever_is_long(circle, told):
    assert any("check units" in note for note in notes(length_mm=57.15, stud_circle_mm=circle)) is told


@pytest.mark.parametrize(("chord", "told"), [(112.4, False), (112.2, True), (116.2, False), (116.4, True)])
def test_a_chord_and_a_circle_that_disagree_by_two_millimetres(chord, told):
    """Opposite studs of four: the chord is the circle."""
    said = notes(chord_mm=chord, studs=4, chord_apart=2)
    assert any("count the studs" in note for note in said) is told
    assert not told or any(f"114.3 mm and, from the chord, {chord} mm" in note for note in said)


@pytest.mark.parametrize(("gauge", "wrong"), [(419, False), (420, True), (449, True)])
def test_the_gauge_section_lies_before_the_hand_and_its_mark(gauge, wrong):
    keys = {"fixture": "hub centre", "gauge_mm": gauge, "grip_mark_mm": 420, "length_mm": 450}
    if wrong:
        assert "lever.gauge_mm" in _faults(**keys)
    else:
        assert fixture_from(Lever(**keys)).factor == pytest.approx(450 / 31 * 1 / 420)


def test_the_weight_of_a_lever_that_nobody_weighed():
    """2.5 kg a metre with its middle half-way; 0.6 m where its length cannot be used; none on a balanced bar."""
    assert fixture_from(Lever(**ONE_STUD)).weight.force_n == pytest.approx(2.5 * 0.45 * 9.80665)
    assert fixture_from(Lever(**ONE_STUD)).weight.centroid_m == pytest.approx(0.225)
    long = fixture_from(Lever(**(ONE_STUD | {"length_mm": 3001}))).weight
    assert (long.force_n, long.centroid_m) == (pytest.approx(2.5 * 0.6 * 9.80665), 0.3)
    assert fixture_from(Lever(**(ONE_STUD | {"length_mm": 3000}))).weight.centroid_m == 1.5
    assert fixture_from(Lever(fixture="force at radius", radius_mm=800)).weight.centroid_m == 0.4
    assert fixture_from(Lever(fixture="cord", radius_mm=100)).weight is None
    known = fixture_from(Lever(**ONE_STUD, weight_kg=2, centroid_mm=200, start_angle_deg=90)).weight
    assert (known.moment_nm, known.start_angle_rad) == (pytest.approx(2 * 9.80665 * 0.2), pytest.approx(math.pi / 2))


@pytest.mark.parametrize(
    "keys",
    [
        ONE_STUD | {"angle_deg": 35, "pull_angle_deg": 12},
        ONE_STUD | {"grip_mark_mm": 420, "gauge_mm": 60, "angle_deg": 20},
        {"fixture": "cross-bar", "length_mm": 600, "offset_mm": 40, "angle_deg": -25, "pull_angle_deg": 5},
        {"fixture": "force at radius", "radius_mm": 700, "pull_angle_deg": 15},
        {"fixture": "cord", "radius_mm": 300, "cord_mm": 6},
        {"fixture": "dead weight", "radius_mm": 500, "start_angle_deg": 10},
        {"fixture": "hub centre", "length_mm": 450, "grip_mark_mm": 420, "gauge_mm": 60},
    ],
)
def test_slopes_are_those_of_the_factor(keys):
    """Every partial derivative against a central difference; with an arm of its own, as of a recorded force, too."""
    for arm in (None,) if "gauge_mm" in keys else (None, 0.7):
        fixture = replace(fixture_from(Lever(**keys)), arm_m=arm)
        assert set(fixture.slopes) == set(fixture.values)
        for name, slope in fixture.slopes.items():
            h = 1e-6
            up, down = (fixture.factor_at({**fixture.values, name: fixture.values[name] + d}) for d in (h, -h))
            assert slope == pytest.approx((up - down) / (2 * h), rel=1e-6, abs=1e-9)


def test_factors_by_hand():
    """L'/(L' - s) (L - s)/L of a wrench held 30 mm beyond its mark; r + d/2 of a cord; g r cos φ of a weight."""
    gripped = fixture_from(Lever(fixture="hub centre", length_mm=450, grip_mark_mm=420, gauge_mm=60))
    assert gripped.factor == pytest.approx(450 / 390 * 360 / 420)
    assert fixture_from(Lever(fixture="cord", radius_mm=300, cord_mm=6)).factor == pytest.approx(0.303)
    hung = fixture_from(Lever(fixture="dead weight", radius_mm=500, start_angle_deg=60))
    assert hung.factor == pytest.approx(9.80665 * 0.5 * 0.5)
    assert hung.inputs[-1].u == pytest.approx(0.026 / math.sqrt(3))


def test_what_is_not_stated_is_nothing():
    bar = fixture_from(Lever(fixture="cross-bar", length_mm=600))
    assert bar.factor == 1.0
    assert fixture_from(Lever(fixture="cord", radius_mm=100)).factor == 0.1
    assert fixture_from(Lever(fixture="force at radius", radius_mm=100)).factor == 0.1
    assert fixture_from(Lever(fixture="dead weight", radius_mm=100)).factor == pytest.approx(0.980665)


@pytest.mark.parametrize(("radius_mm", "fault"), [(1.0, False), (1.05, False), (0.99, True)])
def test_the_shortest_arm(radius_mm, fault):
    lever = Lever(fixture="force at radius", radius_mm=radius_mm)
    if fault:
        with pytest.raises(DescriptionError, match="must be positive, in millimetres"):
            fixture_from(lever)
    else:
        assert fixture_from(lever).values["force radius"] == pytest.approx(radius_mm / 1e3)


def test_a_weight_that_nobody_states_is_of_the_lever_as_long_as_it_is():
    """Half-way along it; a length that no lever has is left aside for 0.6 m."""
    for length_mm, middle_m in ((1.0, 0.0005), (0.9, 0.3), (3000.0, 1.5), (3001.0, 0.3), (None, 0.3)):
        weight = fixture_from(Lever(fixture="hub centre", length_mm=length_mm)).weight
        assert weight.centroid_m == pytest.approx(middle_m)


@pytest.mark.parametrize(
    ("weight_kg", "centroid_mm", "says"),
    [(0.0, 200.0, "weight_kg"), (1000.1, 200.0, "weight_kg"), (2.0, 0.0, "centroid_mm"), (2.0, None, "centroid_mm")],
)
def test_weights_that_are_none(weight_kg, centroid_mm, says):
    with pytest.raises(DescriptionError, match=says):
        fixture_from(Lever(fixture="hub centre", weight_kg=weight_kg, centroid_mm=centroid_mm))
    assert fixture_from(Lever(fixture="hub centre", weight_kg=1000.0, centroid_mm=0.5)).weight.centroid_m == 0.0005


def test_a_lever_that_ends_at_the_wheel_centre_gives_no_torque():
    """Pointing back from a stud as far off as it is long: 1 - r/L is nothing."""
    lever = Lever(fixture="one stud", length_mm=450.0, stud_circle_mm=900.0, angle_deg=180.0)
    with pytest.raises(DescriptionError, match="turn the torque round"):
        fixture_from(lever)
