"""Dead weights: the tester's published table, sensitivities against numerical ones, judgement, two points."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from logger.errors import InputError
from logger.instruments.gravity import STANDARD_GRAVITY
from logger.instruments.weigh import (
    Compliance,
    DeadWeight,
    allowed_percent,
    check_point,
    dead_weight,
    overall,
    two_point,
)

INCH, POUND = constants.inch, constants.pound
LBF_IN = constants.pound_force * constants.inch


def hang(arm_in, pounds, **given_):
    return DeadWeight(pounds * POUND, arm_in * INCH, **given_)


@pytest.mark.published("TB 9-6695-301-50 table 3, dead-weight torque tester", rows=("5.1",), status="READ-P")
def test_torque_is_arm_times_weight_corrected_for_gravity():
    load = hang(10, 24, gravity=9.7803)
    assert load.torque_nm / LBF_IN == pytest.approx(240 * 9.7803 / 9.80665, rel=1e-12)
    # 0.268 % too little at the equator eats more than half of the tester's tolerance of 0.5 %
    point = check_point(load, [240 * LBF_IN], allowed=0.5)
    assert point.deviation_percent == pytest.approx(0.269, abs=0.001)


@pytest.mark.parametrize(
    ("arm", "weights", "full_scale"),
    [
        pytest.param(
            2.5,
            (5, 10, 15, 20, 24),
            60,
            marks=pytest.mark.published("TB 9-6695-301-50 table 3", rows=("5.1a",), status="READ-P"),
        ),
        pytest.param(
            10,
            (5, 10, 15, 20, 24),
            240,
            marks=pytest.mark.published("TB 9-6695-301-50 table 3", rows=("5.1b",), status="READ-P"),
        ),
        pytest.param(
            10,
            (24, 48, 72, 96, 120),
            1200,
            marks=pytest.mark.published("TB 9-6695-301-50 table 3", rows=("5.1c",), status="READ-P"),
        ),
        pytest.param(
            40,
            (30, 60, 90, 120, 150),
            6000,
            marks=pytest.mark.published("TB 9-6695-301-50 table 3", rows=("5.1d",), status="READ-P"),
        ),
    ],
)
def test_the_testers_ranges(arm, weights, full_scale):
    torques = [hang(arm, pounds).torque_nm / LBF_IN for pounds in weights]
    assert torques == pytest.approx([arm * pounds for pounds in weights], rel=1e-12)
    assert torques[-1] == pytest.approx(full_scale, rel=1e-12)


@pytest.mark.published("TB 9-6695-301-50 table 3, arm tolerances", rows=("5.1e",), status="READ-P")
@pytest.mark.parametrize(("arm", "tolerance", "percent"), [(40, 0.02, 0.05), (10, 0.005, 0.05), (2.5, 0.0015, 0.06)])
def test_arm_tolerances(arm, tolerance, percent):
    load = hang(arm, 10, arm_m_u=tolerance * INCH, gravity_u=0.0)
    assert 100 * load.torque_nm_u / load.torque_nm == pytest.approx(percent, abs=0.005)


@pytest.mark.published("ISO 6789-2 relative deviation, from memory", rows=("5.2",), status="MEM")
def test_deviation():
    load = DeadWeight(100 / STANDARD_GRAVITY, 1.0)
    assert check_point(load, [104.0]).deviation_percent == pytest.approx(4.0)
    assert check_point(load, [96.0]).deviation_percent == pytest.approx(-4.0)


@given(
    st.floats(0.5, 50), st.floats(0.1, 2), st.floats(-30, 30), st.floats(9.78, 9.83),
    st.floats(0, 0.01), st.floats(0, 0.01), st.floats(0, 2),
)  # fmt: skip
def test_uncertainty_against_numerical_derivatives(mass, arm, angle, gravity, mass_r, arm_r, angle_u):
    load = DeadWeight(mass, arm, angle, gravity, mass * mass_r, arm * arm_r, angle_u)

    def torque(m=mass, a=arm, d=angle, g=gravity):
        return m * g * a * math.cos(math.radians(d))

    steps = (
        (torque(m=mass * 1.000001) - torque(m=mass * 0.999999)) / (mass * 2e-6) * load.mass_kg_u,
        (torque(a=arm * 1.000001) - torque(a=arm * 0.999999)) / (arm * 2e-6) * load.arm_m_u,
        (torque(g=gravity + 1e-4) - torque(g=gravity - 1e-4)) / 2e-4 * load.gravity_u,
        (torque(d=angle + 1e-4) - torque(d=angle - 1e-4)) / 2e-4 * angle_u,
    )
    second_order = torque() * math.radians(angle_u) ** 2 / math.sqrt(2)
    assert load.torque_nm_u == pytest.approx(math.hypot(*steps, second_order), rel=1e-5, abs=1e-9)


def test_buoyancy_is_as_small_as_stated():
    steel = DeadWeight(10, 0.5, density=7900.0).torque_nm / DeadWeight(10, 0.5).torque_nm
    water = DeadWeight(10, 0.5, density=1000.0).torque_nm / DeadWeight(10, 0.5).torque_nm
    assert 100 * (1 - steel) == pytest.approx(0.015, abs=0.0005)
    assert 100 * (1 - water) == pytest.approx(0.12, abs=0.0005)


def test_limits_of_error_are_rectangular():
    """Of the half-width a, u is a/√3 (JCGM 100, 4.3.7, from memory); an unknown place is a wide one."""
    load = dead_weight(10, 0.5, mass_error_kg=0.03, arm_error_m=0.001, angle_error_deg=1.0, gravity=9.81)
    assert (load.mass_kg_u, load.arm_m_u, load.angle_deg_u) == pytest.approx((0.01732, 0.000577, 0.577), rel=1e-3)
    anywhere = dead_weight(10, 0.5)
    assert anywhere.gravity == STANDARD_GRAVITY
    assert abs(9.7803 - STANDARD_GRAVITY) <= anywhere.gravity_u * math.sqrt(3) + 4e-4
    here = dead_weight(10, 0.5, latitude_deg=47.2, height_m=410)
    assert here.gravity == pytest.approx(9.8069, abs=1e-4)
    assert here.gravity_u < anywhere.gravity_u / 10
    with pytest.raises(InputError, match="gravity"):
        dead_weight(10, 0.5, gravity=98.1)


def test_three_ways():
    load = DeadWeight(5.0, 0.5, arm_m_u=0.0005, gravity=9.81)
    torque = load.torque_nm

    def at(percent):
        return check_point(load, [torque * (1 + percent / 100)] * 4, allowed=1.0).agreement

    assert [at(p) for p in (0.0, 0.5, 0.9, -1.1, 1.5)] == [
        Compliance.WITHIN,
        Compliance.WITHIN,
        Compliance.TOO_CLOSE,
        Compliance.TOO_CLOSE,
        Compliance.OUTSIDE,
    ]
    judged = [check_point(load, [torque * f] * 4, allowed=1.0) for f in (1.0, 1.009, 1.015)]
    assert overall(judged[:1]) is Compliance.WITHIN
    assert overall(judged[:2]) is Compliance.TOO_CLOSE
    assert overall(judged) is Compliance.OUTSIDE
    assert check_point(load, [torque]).agreement is Compliance.NOT_JUDGED
    assert overall([]) is Compliance.NOT_JUDGED


def test_scatter_and_resolution_widen_the_interval():
    load = DeadWeight(5.0, 0.5)
    torque = load.torque_nm
    plain = check_point(load, [torque]).u95_percent
    assert check_point(load, [torque], resolution_nm=0.1).u95_percent > plain
    assert check_point(load, [torque - 0.1, torque + 0.1]).u95_percent > check_point(load, [torque] * 2).u95_percent
    assert check_point(load, [torque - 0.1, torque, torque + 0.1]).u95_percent > plain


def test_factor_of_the_interval_is_students():
    """Three hangings with 0.1 N·m of scatter and nothing else unknown: t = 4.303 with two degrees of freedom."""
    load = DeadWeight(10.0, 0.5, gravity=9.81, gravity_u=0.0)
    t = load.torque_nm
    assert check_point(load, [t - 0.1, t, t + 0.1]).u95_percent == pytest.approx(
        100 * 4.3027 * 0.1 / 3**0.5 / t, rel=1e-4
    )
    # One hanging: 0.2 % assumed with eight degrees of freedom, t = 2.306.
    assert check_point(load, [t]).u95_percent == pytest.approx(0.2 * 2.3060, rel=1e-4)
    # Two that agree: pooled, nine degrees of freedom.
    assert check_point(load, [t, t]).u95_percent == pytest.approx(2.2622 * 0.2 * (8 / 9 / 2) ** 0.5, rel=1e-4)


def test_what_a_certificate_allows():
    assert allowed_percent(20.0, of_reading=1.0) == 1.0
    assert allowed_percent(20.0, of_full_scale=0.5, capacity_nm=200.0) == 5.0
    assert allowed_percent(20.0, of_reading=1.0, of_full_scale=0.5, capacity_nm=200.0) == 5.0
    assert allowed_percent(20.0) is None
    with pytest.raises(InputError, match="needs the capacity"):
        allowed_percent(20.0, of_full_scale=0.5)


@pytest.mark.parametrize(
    "wrong",
    [{"mass_kg": 0}, {"mass_kg": -1}, {"arm_m": 0}, {"angle_deg": 45}, {"density": 1.0}, {"mass_kg": math.nan}],
)
def test_what_cannot_hang(wrong):
    with pytest.raises(InputError):
        DeadWeight(**{"mass_kg": 5.0, "arm_m": 0.5} | wrong)


def test_no_reading():
    with pytest.raises(InputError):
        check_point(DeadWeight(5.0, 0.5), [])
    with pytest.raises(InputError):
        check_point(DeadWeight(5.0, 0.5), [math.nan])


@given(st.floats(-1e7, 1e7), st.floats(1, 1e6), st.floats(-1e-2, 1e-2).filter(lambda s: abs(s) > 1e-6))
def test_two_points_go_through_both(zero, span, scale):
    made = two_point((zero, 0.0), (zero + span, scale * span))
    assert made.scale * zero + made.offset == pytest.approx(0.0, abs=1e-6)
    assert made.scale == pytest.approx(scale, rel=1e-6)


def test_two_points_must_differ():
    with pytest.raises(InputError):
        two_point((1.0, 0.0), (1.0, 5.0))
    with pytest.raises(InputError):
        two_point((1.0, 5.0), (2.0, 5.0))
    assert two_point((0.0, 0.0), (100.0, 50.0), high_nm_u=0.5).scale_u == 0.005
