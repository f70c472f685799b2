"""What a user may write for a lever: refused with all faults named, or accepted with what was assumed named."""

from __future__ import annotations

import math

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
