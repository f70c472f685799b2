"""Every fixture's equation against its derivatives, its geometry by vectors, and the limits where it must be simple."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import g as standard_gravity
from uncertainties import ufloat, umath

from analysis.to_axle.fixtures import fixture_from
from analysis.to_axle.lever import FORMULAS, STANDARD_GRAVITY, Fixture, Weight
from analysis.uncertainty.budget import Input, propagate
from logger.header import Lever

TYPICAL = {
    "stud radius": 0.057,
    "lever length": 0.45,
    "lever angle": 0.3,
    "pull angle": -0.2,
    "drive offset": 0.018,
    "force radius": 0.35,
    "drum radius": 0.21,
    "cord diameter": 0.004,
    "slope of the arm": 0.2,
    "gravity": 9.81,
    "grip mark": 0.42,
    "gauge section": 0.05,
}


def _fixture(kind: str, *, gripped: bool = False, **values: float) -> Fixture:
    names = (*FORMULAS[kind].names, *(("lever length", "grip mark", "gauge section") if gripped else ()))
    at = {**TYPICAL, **values}
    return Fixture(kind, tuple(Input(n, at[n], 0.01 * abs(at[n]), shared=True) for n in dict.fromkeys(names)))


@pytest.mark.parametrize("kind", FORMULAS)
@pytest.mark.parametrize("gripped", [False, True])
def test_slopes_are_the_derivatives(kind, gripped):
    if gripped and FORMULAS[kind].reads != "torque":
        gripped = False
    fixture = _fixture(kind, gripped=gripped)
    at = fixture.values
    assert set(fixture.slopes) == set(at)
    for name, slope in fixture.slopes.items():
        h = 1e-6
        numeric = (fixture.factor_at({**at, name: at[name] + h}) - fixture.factor_at({**at, name: at[name] - h})) / (
            2 * h
        )
        assert slope == pytest.approx(numeric, rel=1e-6, abs=1e-8), name


@pytest.mark.parametrize(("kind", "distance"), [("one stud", "stud radius"), ("cross-bar", "drive offset")])
@given(theta=st.floats(-math.pi, math.pi), delta=st.floats(-1, 1), r=st.floats(0.02, 0.2), length=st.floats(0.25, 1.5))
def test_a_drive_off_the_axle_against_vectors(kind, distance, theta, delta, r, length):
    """Force at the hand as a vector, moments about stud and wheel centre as cross products: no formula shared."""
    stud = np.array([r, 0.0])
    along = np.array([math.cos(theta), math.sin(theta)])
    across = np.array([-math.sin(theta), math.cos(theta)])
    force = 80.0 * (math.cos(delta) * across + math.sin(delta) * along)
    hand = stud + length * along

    def moment(about):
        arm = hand - about
        return arm[0] * force[1] - arm[1] * force[0]

    fixture = _fixture(kind, **{distance: r, "lever length": length, "lever angle": theta, "pull angle": delta})
    # The wrench shows the part of the force square to it, times its length.
    assert moment(np.zeros(2)) == pytest.approx(fixture.factor * moment(stud), rel=1e-9, abs=1e-9)


def test_a_cross_bar_pulled_obliquely():
    """Turned by 60°, its square 17.7 mm off: 17.7/450 cos 60° = 1.97 %; pulled 10° outwards tan 10° sin 60° more."""
    lever = Lever(fixture="cross-bar", length_mm=450, offset_mm=17.7, angle_deg=60, pull_angle_deg=10)
    assert fixture_from(lever).factor - 1 == pytest.approx(0.02567, abs=5e-5)
    square = Lever(fixture="cross-bar", length_mm=450, offset_mm=17.7, angle_deg=60)
    assert fixture_from(square).factor - 1 == pytest.approx(0.01967, abs=5e-5)


def test_one_stud_in_line_is_immune_to_small_errors_of_angle():
    fixture = _fixture("one stud", **{"lever angle": 0.0, "pull angle": 0.0})
    assert fixture.slopes["lever angle"] == 0
    assert fixture.slopes["pull angle"] == 0


@pytest.mark.parametrize(
    ("theta_deg", "factor"),
    [(0, 1 + 57.15 / 450), (45, 1 + 57.15 / 450 * math.sqrt(0.5)), (90, 1.0), (180, 1 - 57.15 / 450)],
)
def test_one_stud_at_plain_angles(theta_deg, factor):
    """+12.7 %, +9.0 %, nothing, -12.7 % for a 5x114.3 hub and 450 mm."""
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=theta_deg)
    assert fixture_from(lever).factor == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize("delta_deg", [-10, 10])
def test_ninety_degrees_needs_a_square_pull(delta_deg):
    """A pull 10° off at 90° changes the result by 2.2 % (5x114.3, 450 mm); a square one by nothing."""
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=90, pull_angle_deg=delta_deg)
    assert fixture_from(lever).factor - 1 == pytest.approx(math.copysign(0.0224, delta_deg), abs=5e-5)


@pytest.mark.parametrize(
    ("circle_mm", "length_mm", "factor"),
    [
        (100, 300, 1.167),
        (108, 450, 1.120),
        (112, 600, 1.093),
        (114.3, 300, 1.191),
        (114.3, 450, 1.127),
        (114.3, 600, 1.095),
        (120, 1000, 1.060),
        (139.7, 450, 1.155),
        (165.1, 600, 1.138),
        (225, 300, 1.375),
        (335, 600, 1.279),
    ],
)
def test_table_of_factors(circle_mm, length_mm, factor):
    """A table for pick lists, worked out with a pocket calculator from 1 + r/L."""
    lever = Lever(fixture="one stud", length_mm=length_mm, stud_circle_mm=circle_mm, angle_deg=0)
    assert fixture_from(lever).factor == pytest.approx(factor, abs=6e-4)


@pytest.mark.parametrize("kind", ["hub centre", "couple", "in-line", "held side"])
def test_on_the_axis_torque_is_torque(kind):
    fixture = fixture_from(Lever(fixture=kind))
    assert fixture.factor == 1
    assert fixture.inputs == ()


def test_cross_bar_off_centre():
    """A bar on two studs, two apart, of a 5x114.3 hub: its square lands 17.7 mm off; up to 3.9 % at 450 mm."""
    offset_mm = 114.3 / 2 * math.cos(2 * math.pi / 5)
    assert offset_mm == pytest.approx(17.7, abs=0.05)
    fixture = fixture_from(Lever(fixture="cross-bar", length_mm=450, offset_mm=offset_mm, angle_deg=0))
    assert fixture.factor - 1 == pytest.approx(0.039, abs=5e-4)


@pytest.mark.parametrize(("off_deg", "change"), [(10, -0.015), (20, -0.060)])
def test_force_at_radius_by_an_oblique_pull(off_deg, change):
    square = fixture_from(Lever(fixture="force at radius", radius_mm=320))
    oblique = fixture_from(Lever(fixture="force at radius", radius_mm=320, pull_angle_deg=off_deg))
    assert square.factor == pytest.approx(0.32)
    assert oblique.factor / square.factor - 1 == pytest.approx(change, abs=5e-4)


def test_cord_pulls_at_its_middle():
    assert fixture_from(Lever(fixture="cord", radius_mm=300, cord_mm=6)).factor == pytest.approx(0.303)


def test_dead_weight_on_a_lever():
    """A trials rule's 15 kg at 44.25 in is 165.4 N·m, arithmetic with g = 9.81 (common practice, no source)."""
    fixture = fixture_from(Lever(fixture="dead weight", radius_mm=44.25 * 25.4))
    assert fixture.reads == "mass"
    assert 15 * fixture.factor * 9.81 / STANDARD_GRAVITY == pytest.approx(165.4, abs=0.05)
    assert standard_gravity == STANDARD_GRAVITY


def test_bending_wrench_held_at_its_mark_reads_true():
    at_mark = _fixture("hub centre", gripped=True, **{"lever length": 0.42})
    assert at_mark.factor == pytest.approx(1.0)
    longer = _fixture("hub centre", gripped=True, **{"lever length": 0.47})
    # By statics: the gauge at s sees F (L' - s); the wheel gets F L'.
    force, s, mark, hand = 50.0, 0.05, 0.42, 0.47
    shown = force * (hand - s) * mark / (mark - s)
    assert longer.factor * shown == pytest.approx(force * hand)


@given(
    phi=st.floats(-math.pi, math.pi),
    theta=st.floats(-math.pi, math.pi),
    centroid=st.floats(0.05, 0.4),
    push=st.floats(0, 90),
)
def test_levers_weight_on_one_stud_against_vectors(phi, theta, centroid, push):
    """True torque about the wheel = shown x factor + what the sensor does not see of the weight, by cross products."""
    r, length, weight = 0.06, 0.5, 24.5
    along = np.array([math.cos(phi), -math.sin(phi)])  # phi clockwise, y upwards
    toward = np.array([math.cos(phi - theta), -math.sin(phi - theta)])  # from the wheel centre to the stud
    stud = r * toward
    hand, middle = stud + length * along, stud + centroid * along
    square = push * np.array([-math.sin(phi), -math.cos(phi)])  # clockwise push
    down = np.array([0.0, -weight])

    def clockwise(about):
        total = 0.0
        for point, force in ((hand, square), (middle, down)):
            arm = point - about
            total -= arm[0] * force[1] - arm[1] * force[0]
        return total

    inputs = {"stud radius": r, "lever length": length, "lever angle": theta, "pull angle": 0.0}
    fixture = Fixture("one stud", _fixture("one stud", **inputs).inputs, Weight(weight, centroid, phi))
    expected = fixture.factor * clockwise(stud) + fixture.unsensed_nm(phi)
    assert clockwise(np.zeros(2)) == pytest.approx(expected, rel=1e-9, abs=1e-9)
    assert abs(fixture.unsensed_nm(phi)) <= fixture.unsensed_most_nm + 1e-12


def test_levers_weight_in_line_and_over_a_turn():
    """At theta = 0: r W cos(phi)(1 - d/L), nothing over a whole turn."""
    lever = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0, weight_kg=2.5, centroid_mm=250)
    fixture = fixture_from(lever)
    weight = 2.5 * STANDARD_GRAVITY
    assert fixture.unsensed_nm(0.4) == pytest.approx(0.05715 * weight * math.cos(0.4) * (1 - 250 / 450))
    turn = np.linspace(0, 2 * math.pi, 360, endpoint=False)
    assert sum(fixture.unsensed_nm(phi) for phi in turn) == pytest.approx(0, abs=1e-9)
    assert fixture.weight is not None
    assert fixture.weight.moment_nm == pytest.approx(6.1, abs=0.05)  # the size of a zero taken with the lever level


@pytest.mark.parametrize("kind", ["hub centre", "couple", "in-line"])
def test_a_sensor_on_the_axis_sees_all_of_the_weight(kind):
    fixture = fixture_from(Lever(fixture=kind, weight_kg=2, centroid_mm=200))
    assert fixture.unsensed_most_nm == 0


def test_a_force_gauge_sees_nothing_of_the_bars_weight():
    fixture = fixture_from(Lever(fixture="force at radius", radius_mm=500, weight_kg=2, centroid_mm=200))
    assert fixture.unsensed_nm(0.0) == pytest.approx(2 * STANDARD_GRAVITY * 0.2)


def test_propagation_agrees_with_the_uncertainties_library():
    lever = Lever(
        fixture="one stud",
        length_mm=450,
        length_mm_u=8,
        stud_circle_mm=114.3,
        stud_circle_mm_u=0.4,
        angle_deg=35,
        angle_deg_u=4,
        pull_angle_deg=5,
        pull_angle_deg_u=3,
    )
    fixture = fixture_from(lever)
    shown = Input("reading", 24.0, 0.3)

    def model(x):
        return x["reading"] * fixture.factor_at(x)

    budget = propagate("torque", model, (shown, *fixture.inputs))
    m = ufloat(24.0, 0.3)
    length, r = ufloat(0.45, 0.008), ufloat(0.1143, 0.0004) / 2
    theta, delta = ufloat(math.radians(35), math.radians(4)), ufloat(math.radians(5), math.radians(3))
    other = m * (1 + r / length * (umath.cos(theta) + umath.tan(delta) * umath.sin(theta)))
    assert budget.value == pytest.approx(other.nominal_value, rel=1e-12)
    assert budget.u == pytest.approx(other.std_dev, rel=1e-6)
    for i in fixture.inputs:
        assert budget.row(i.name).sensitivity == pytest.approx(24.0 * fixture.slopes[i.name], rel=1e-6)
