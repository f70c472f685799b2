"""Drag taken off on a simulated axle whose packs and drags are known, through real files."""

from __future__ import annotations

import json
import math
from dataclasses import replace

import pytest

from analysis.pipeline import read_file
from analysis.sides import drag_test, gear_ratio
from logger import header
from logger.errors import InputError
from logger.header import TransducerFacts
from logger.virtual import scenarios
from logger.virtual.physics import simulate
from tests.analysis.simulated import HUB, TRUE_ZERO_NM, ZERO, write_trace

WEAK, STRONG = scenarios.pack(20.0, 1.25), scenarios.pack(60.0, 1.25, seed=2)
DRIVING_RIGHT = scenarios.axle(STRONG, WEAK, driven_nm=9.0, other_nm=3.0, case_nm=14.0)
DRIVING_LEFT = scenarios.axle(WEAK, STRONG, driven_nm=3.0, other_nm=9.0, case_nm=14.0)
FREE = replace(DRIVING_RIGHT, held="none")
FACTS = TransducerFacts(serial="T-1", capacity_nm=100.0, accuracy_percent_of_reading=0.5)


def _run(axle, **pulls):
    scenario = scenarios.healthy()
    sensor = replace(scenario.sensor, zero_nm=TRUE_ZERO_NM, capacity_nm=100.0)
    lever = replace(scenario.lever, mass_kg=2.5, centroid_m=0.21)
    return simulate(replace(scenario, axle=axle, sensor=sensor, lever=lever, actions=scenarios.pulls(4, **pulls)), 3)


@pytest.fixture(scope="module")
def runs():
    return {
        "right": _run(DRIVING_RIGHT),
        "left": _run(DRIVING_LEFT, direction=-1),
        "free": _run(FREE, turn_rad_s=((0.3, 4.0),), ramp_nm_s=10.0),
    }


@pytest.fixture
def readings(tmp_path, runs):
    def read(name, **keys):
        return read_file(
            write_trace(
                tmp_path / f"{name}.csv", runs[name], **{"lever": HUB, "zero": ZERO, "transducer": FACTS} | keys
            )
        )

    return read


def test_mean_of_unequal_packs_without_drag(readings, runs):
    """Packs of 20 and 60 N·m, driveline 14, wheel ends 9 and 3: raw torques are far off, combined they are not."""
    test = drag_test({"right": readings("right"), "left": readings("left")}, readings("free"))
    rotating = [m for m in test.means if m.quantity == "rotating mean" and m.way == "forwards"]
    assert len(rotating) == 1
    mean = rotating[0].budget
    assert mean is not None
    true = sum(p.pack_mean_nm for p in runs["right"].truth) / len(runs["right"].truth)
    assert mean.value == pytest.approx(true, abs=mean.u95)
    assert mean.u95 < 2.0
    raw = test.raw["rotating mean"].cells["right", 1]
    assert raw.value - true > 5 * mean.u95
    assert mean.row("calibration").sensitivity == pytest.approx(mean.value, rel=0.2)
    assert any("right wheel end drags more" in note for note in test.notes)
    json.dumps(test.to_json(), allow_nan=False)


def test_one_side_alone_is_told_apart(readings):
    test = drag_test({"right": readings("right")}, readings("free"))
    (mean,) = (m for m in test.means if m.quantity == "rotating mean")
    assert "wheel ends taken as alike" in mean.how
    assert mean.budget is not None
    assert mean.budget.value == pytest.approx(43.3, abs=1.5)  # 3 N·m too much: half of what the wheel ends differ by


def test_no_baseline_no_pack_mean(readings):
    test = drag_test({"right": readings("right"), "left": readings("left")}, None)
    assert all(m.budget is None for m in test.means)
    assert all("withheld" in m.how for m in test.means)
    assert test.notes[0].startswith("no both-free baseline")


def test_sides_rolled_opposite_ways_are_named(tmp_path, readings):
    both_clockwise = {"right": readings("right"), "left": readings("free")}
    test = drag_test(both_clockwise, readings("free"))
    (mean,) = (m for m in test.means if m.quantity == "rotating mean")
    assert mean.way == "both ways"
    assert "opposite ways" in mean.how


def test_two_transducers_share_no_calibration(readings):
    other = TransducerFacts(serial="T-2", capacity_nm=100.0, accuracy_percent_of_reading=0.5)
    held = {"right": readings("right"), "left": readings("left", transducer=other)}
    test = drag_test(held, None)
    names = {row.input.name for row in test.raw["breakaway"].cells["left", -1].rows}
    assert "calibration (left)" in names
    difference = test.raw["rotating mean"].difference("forwards")
    assert difference is not None
    apart = [row.contribution for row in difference.rows if row.input.name.startswith("calibration")]
    assert len(apart) == 2
    assert math.hypot(*apart) > 0.1


def test_half_speed_and_factor_of_two_are_said(readings):
    held = {"right": readings("right"), "left": readings("free")}  # 57 against 26.6 N·m
    test = drag_test(held, readings("free"), speeds_rad_s=(0.5, 0.5))
    assert any("100 % of the held test's wheel speed" in note for note in test.notes)


def test_nothing_at_the_axle_is_refused(readings):
    with pytest.raises(InputError, match="gives no torque at the axle"):
        drag_test({"right": readings("right", lever=None)}, None)


def test_in_gear_over_neutral(readings):
    """One transducer for both: its calibration cancels."""
    ratio = gear_ratio(readings("right", test=header.Test(gear="in gear")), readings("free"))
    assert ratio.value == pytest.approx(57.5 / 27.5, rel=0.08)
    assert abs(ratio.row("calibration").sensitivity) < 0.05
    with pytest.raises(InputError, match="neutral"):
        gear_ratio(readings("right"), readings("free", lever=None))
