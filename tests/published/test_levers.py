"""Torque wrenches with extensions, off-centre nuts, string and scale: printed examples against our fixtures.

All use one relation, true = shown x (L + E cos a) / L, which is a wrench on one stud with r = E.
"""

from __future__ import annotations

import math

import pytest

from analysis.to_axle.dial import Dial, dial_reading
from analysis.to_axle.fixtures import fixture_from
from logger.edges.units import torque_factor
from logger.header import Lever

INCH_MM = 25.4
FOOT_MM = 304.8


def _factor(length_mm: float, extension_mm: float, angle_deg: float = 0.0) -> float:
    lever = Lever(fixture="one stud", length_mm=length_mm, stud_circle_mm=2 * extension_mm, angle_deg=angle_deg)
    return fixture_from(lever).factor


@pytest.mark.parametrize(
    ("true", "length_mm", "extension_mm", "shown", "half_digit"),
    [
        pytest.param(
            100, 12 * INCH_MM, 6 * INCH_MM, 66.7, 0.05,
            marks=pytest.mark.published("NAVEDTRA aviation course, fig. 3-45", rows=("1.1",), status="READ-P"),
        ),
        pytest.param(
            300, 10 * INCH_MM, 4 * INCH_MM, 214, 0.5,
            marks=pytest.mark.published("TM 1-1500-204-23-9, fig. 8-16", rows=("1.2",), status="READ-P"),
        ),
        pytest.param(
            40, 12 * INCH_MM, 4 * INCH_MM, 30, 1e-9,
            marks=pytest.mark.published("TM 9-2350-261-20-1, p. 2-29", rows=("1.3",), status="READ-P"),
        ),
        pytest.param(
            19, 22 * INCH_MM, 3 * INCH_MM, 17, 0.5,
            marks=pytest.mark.published("TM 5-3805-274-13&P, WP 0051", rows=("1.4",), status="READ-P"),
        ),
        pytest.param(
            135, 10 * INCH_MM, -1.5 * INCH_MM, 158.82, 0.005,
            marks=pytest.mark.published("Rotorcraft manual, ch. 20 (2010)", rows=("1.14",), status="READ-P"),
        ),
        pytest.param(
            135, 10 * INCH_MM, 1.5 * INCH_MM, 117.39, 0.005,
            marks=pytest.mark.published("Rotorcraft manual, ch. 20 (2010)", rows=("1.15",), status="READ-P"),
        ),
        pytest.param(
            30, FOOT_MM, 0.25 * FOOT_MM, 24, 1e-9,
            marks=pytest.mark.published("Light-aircraft manual, para 2-90 (1989)", rows=("1.16",), status="READ-P"),
        ),
        pytest.param(
            30, 12 * INCH_MM, 6 * INCH_MM, 20, 1e-9,
            marks=pytest.mark.published("Tool-service web page", rows=("1.17",), status="READ-S"),
        ),
    ],
)  # fmt: skip
def test_reading_for_a_true_torque(true, length_mm, extension_mm, shown, half_digit):
    """What the wrench must show; an extension pointing back (negative) is the lever turned round by 180 degrees."""
    factor = _factor(length_mm, abs(extension_mm), 180.0 if extension_mm < 0 else 0.0)
    assert true / factor == pytest.approx(shown, abs=half_digit)


@pytest.mark.published("TM 5-3805-274-13&P, WP 0051", rows=("1.4m",), status="READ-P")
def test_metric_copy_of_a_rounded_example_is_a_trap():
    """The metric result there (23.0 N·m) converts the rounded 17 lbf·ft; the inputs themselves give 22.7 N·m."""
    assert 25.8 / _factor(559, 76) == pytest.approx(22.71, abs=0.005)
    assert 17 * torque_factor("lbf·ft") == pytest.approx(23.0, abs=0.06)


OFF_CENTRE_NUT = "TM 5-3805-260-24 (wheel turned by a wrench on an off-centre wheel nut)"


@pytest.mark.published(OFF_CENTRE_NUT, rows=("1.5", "1.6"), status="READ-P")
@pytest.mark.parametrize(
    ("wrench_in", "shown", "spread", "half_digit"), [(8, 75, 25, 1.6), (7, 70, 22, 0.5)], ids=["8 in", "7 in"]
)
def test_off_centre_wheel_nut(wrench_in, shown, spread, half_digit):
    """C = A T / (A + B) with T = 160 ± 50 lbf·in and the stud 9 in off the wheel's centre.

    The band shrinks alike; for the longer wrench it is printed as ± 25 where the formula gives ± 23.5.
    """
    factor = _factor(wrench_in * INCH_MM, 9 * INCH_MM)
    assert 160 / factor == pytest.approx(shown, abs=0.5)
    assert 50 / factor == pytest.approx(spread, abs=half_digit)


@pytest.mark.published(OFF_CENTRE_NUT + ", distance solved from both", rows=("1.7",), status="CALC")
def test_both_wrenches_mean_one_stud():
    for wrench_in, shown in ((8, 75), (7, 70)):
        off_in = wrench_in * (160 / shown - 1)
        assert off_in == pytest.approx(9.0, abs=0.1)
        assert 160 / _factor(wrench_in * INCH_MM, off_in * INCH_MM) == pytest.approx(shown)


@pytest.mark.published(OFF_CENTRE_NUT, rows=("1.8",), status="READ-P")
def test_nut_wrench_and_centre_in_one_line():
    """The manual demands one line: there the factor is greatest and does not change with small errors of angle."""
    lever = Lever(fixture="one stud", length_mm=8 * INCH_MM, stud_circle_mm=18 * INCH_MM, angle_deg=0)
    fixture = fixture_from(lever)
    assert fixture.slopes["lever angle"] == 0
    assert fixture.factor > _factor(8 * INCH_MM, 9 * INCH_MM, 10) > _factor(8 * INCH_MM, 9 * INCH_MM, 20)


@pytest.mark.published("TM 9-254, fig. 4-6", rows=("1.9",), status="READ-P")
@pytest.mark.parametrize("angle_deg", [0, 30, 45, 60, 90, 120])
def test_angled_extension(angle_deg):
    """L_eff = I_T + I_A cos a;  T_A = T_T L_eff / I_T."""
    length_mm, adapter_mm = 300.0, 80.0
    effective = length_mm + adapter_mm * math.cos(math.radians(angle_deg))
    assert _factor(length_mm, adapter_mm, angle_deg) == pytest.approx(effective / length_mm, rel=1e-12)


@pytest.mark.published("TM 9-254, para 4-1 b(3)", rows=("1.10",), status="READ-P")
@pytest.mark.parametrize(("arm_in", "pull_lbf"), [(10, 6), (12, 5), (6, 10)])
def test_force_times_length(arm_in, pull_lbf):
    fixture = fixture_from(Lever(fixture="force at radius", radius_mm=arm_in * INCH_MM))
    pound_n = torque_factor("lbf·in") / 0.0254
    assert fixture.factor * pull_lbf * pound_n == pytest.approx(60 * torque_factor("lbf·in"), rel=1e-12)


@pytest.mark.published("TM 9-2350-277-20-2, p. 0155 00-5 (also NAVEDTRA 14008)", rows=("1.11",), status="READ-P")
def test_right_angle_changes_nothing():
    assert _factor(300, 80, 90) == pytest.approx(1.0, abs=1e-12)


def test_pointing_back_is_subtracted():
    """DT LT / (LT - AL): as TM 55-1945-205-24-2, WP 0353 prints it. The formula again, so not counted as a row."""
    assert 1 / _factor(300, 80, 180) == pytest.approx(300 / (300 - 80), rel=1e-12)


@pytest.mark.published("NAVEDTRA 14008, micrometers and torque wrenches", rows=("1.13",), status="READ-P")
def test_shorter_handle_means_more_true_torque():
    """With the same indication the true torque is higher when the handle's extension is taken off."""
    assert _factor(300, 80) > _factor(500, 80)


@pytest.mark.parametrize(
    ("pull_lbf", "torque_lbf_ft"),
    [(21, 15), (28, 20), (9, 6), (17, 12)],
    ids=["new", "new, most", "used", "used, most"],
)
def test_string_and_spring_scale(pull_lbf, torque_lbf_ft):
    """Radius 8-5/16 in (TM 5-3805-257-14&P, p. 52): printed to the whole lbf·ft, some rounded up, so not counted."""
    fixture = fixture_from(Lever(fixture="cord", radius_mm=8.3125 * INCH_MM))
    budget = dial_reading(pull_lbf * 4.4482216, Dial(marks=4.448, limit_of_error=0.03), fixture)
    assert budget.value / torque_factor("lbf·ft") == pytest.approx(torque_lbf_ft, abs=0.65)


@pytest.mark.published("TM 5-3805-257-14&P, p. 52, example whose result is cut off", rows=("1.21",), status="CALC")
def test_string_example():
    fixture = fixture_from(Lever(fixture="cord", radius_mm=8.3125 * INCH_MM))
    assert fixture.factor * 24 * 4.4482216 / torque_factor("lbf·ft") == pytest.approx(16.625, abs=1e-4)


def test_one_stud_of_a_four_stud_hub():
    """Common practice, no source: 17.5 in lever, one stud of a 4.25 in circle, in line: 18 lbf·ft shown is 20.2."""
    factor = _factor(17.5 * INCH_MM, 4.25 / 2 * INCH_MM)
    assert factor == pytest.approx((17.5 + 2.125) / 17.5, rel=1e-12)
    assert factor == pytest.approx(1.121, abs=5e-4)
    assert 18 * factor == pytest.approx(20.2, abs=0.05)
