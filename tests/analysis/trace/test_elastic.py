"""The elastic line: stiffness, wind-up and play, against the virtual axle's own springs and noise-free torque."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from analysis.to_axle.at_axle import Level, unstated
from analysis.to_axle.fixtures import fixture_from
from analysis.trace import elastic
from analysis.trace.elastic import find_elastic
from analysis.trace.reading import read_torque
from analysis.trace.results import Pull
from analysis.verdict.elastic import elastic_words, stiffness_of
from analysis.verdict.judge import AtAxle
from logger.header import Lever
from logger.virtual.physics import Scenario, simulate
from logger.virtual.scenarios import axle, pack, pulls

PLAY_DEG = 2.0


@cache
def springy(seed: int):
    """Pull clockwise, anticlockwise, and clockwise twice, on shafts with play: the play opens with each change."""
    soft = axle(pack(45.0), pack(45.0, seed=2), driven_shaft_nm_rad=5e3, other_shaft_nm_rad=5e3)
    soft = replace(soft, shaft_lash_rad=np.radians(PLAY_DEG))
    actions = (*pulls(1, reseat=False), *pulls(1, direction=-1, reseat=False), *pulls(2, reseat=False))
    return simulate(Scenario("springs", "", soft, actions, angle_step_deg=0.0), seed)


def true_line(run, truth):
    """Line through what truly happened between 30 and 70 % of the breakaway: N·m per degree, degrees at no torque."""
    m = run.mechanics
    ramp = slice(round(truth.start_s / m.step_s), round(truth.breakaway_s / m.step_s))
    x = truth.direction * (m.sensor_nm[ramp] - truth.handoff_nm)
    y = truth.direction * np.degrees(m.wheel_rad[ramp])
    last = int(np.argmax(x >= 0.7 * truth.breakaway_nm))
    first = int(np.flatnonzero(x[:last] < 0.3 * truth.breakaway_nm)[-1])
    slope, meets = np.polyfit(x[first:last], y[first:last], 1)
    return 1 / slope, meets - y[0], truth.breakaway_nm * slope


@pytest.mark.parametrize("step_deg", [0.0, 0.05])
@pytest.mark.parametrize("seed", [3, 4])
def test_intervals_hold_the_truth_of_the_virtual_axle(step_deg: float, seed: int) -> None:
    run = springy(seed)
    angle_deg = np.round(run.angle_deg / step_deg) * step_deg if step_deg else run.angle_deg
    read = read_torque(run.time_s, run.torque_nm, angle_deg=angle_deg)
    assert len(read.pulls) == len(run.truth) == 4
    for pull, truth in zip(read.pulls, run.truth, strict=True):
        stiffness, play, wound = true_line(run, truth)
        found = pull.elastic
        assert abs(found.stiffness_nm_deg - stiffness) < found.stiffness_u95_nm_deg < 0.25 * stiffness
        assert abs(found.wind_up_deg - wound) < found.wind_up_u95_deg
        assert abs(found.play_deg - max(play, 0.0)) < found.play_u95_deg < 0.45
    # After a pull the other way all the play lies open: exactly what the shaft was made with.
    reversed_pull = read.pulls[1].elastic
    assert abs(reversed_pull.play_deg - PLAY_DEG) < reversed_pull.play_u95_deg
    # After a pull the same way hardly any.
    assert read.pulls[3].elastic.play_deg < 0.3


def test_stiffness_is_that_of_the_springs_in_series() -> None:
    """1/k = sum of 1/k_i (statics): packs creep a little before slip, so the measured line is a few per cent off."""
    run = springy(3)
    read = read_torque(run.time_s, run.torque_nm, angle_deg=run.angle_deg)
    expected = np.radians(run.scenario.axle.stiffness_nm_rad)
    found = [pull.elastic.stiffness_nm_deg for pull in read.pulls]
    assert np.median(found) == pytest.approx(expected, rel=0.05)


def ramp(stiffness: float = 40.0, play: float = 1.5, n: int = 400):
    """Play first, then a straight line up to 50 N·m."""
    x = np.concatenate([np.zeros(50), np.linspace(0, 50, n)])
    angle = np.concatenate([np.linspace(0, play, 50), play + np.linspace(0, 50, n) / stiffness])
    return x, angle


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_straight_line_is_found_exactly(way: float) -> None:
    x, angle = ramp()
    found = find_elastic(x, way * angle, 50.0, 48.0, 0.0, 0.005)
    assert found.stiffness_nm_deg == pytest.approx(40.0, rel=1e-9)
    assert found.wind_up_deg == pytest.approx(1.2)
    assert found.play_deg == pytest.approx(1.5)
    assert found.way == way


def test_an_angle_too_coarse_or_a_wheel_that_does_not_wind_states_nothing() -> None:
    x, angle = ramp()
    assert find_elastic(x, np.round(angle), 50.0, None, 0.0, 0.005) is None
    assert find_elastic(x, np.zeros(len(x)), 50.0, None, 0.0, 0.005) is None
    display = np.append(np.zeros(5), np.full(100, 20.0))  # one step of a coarse display is the whole lower half
    assert find_elastic(np.append(display, np.full(5, 60.0)), np.arange(110.0), 50.0, None, 0.0, 0.005) is None
    assert find_elastic(x, np.full(len(x), np.nan), 50.0, None, 0.0, 0.005) is None
    assert find_elastic(x[-20:], angle[-20:], 50.0, None, 0.0, 0.005) is None  # nothing of the ramp below the line


def test_through_a_lever_on_a_stud_the_stiffness_grows_and_its_interval_takes_the_lever_along() -> None:
    x, angle = ramp()
    pull = Pull(0.0, 1.0, 1, 0.0, elastic=find_elastic(x, angle, 50.0, 50.0, 0.0, 0.005))
    lever = Lever(fixture="one stud", length_mm=450.0, length_mm_u=2.0, stud_circle_mm=114.3, stud_circle_mm_u=0.2)
    at = AtAxle(fixture_from(lever), unstated(), Level())
    budget = stiffness_of(pull, at)
    assert budget.value == pytest.approx(40.0 * (1 + 57.15 / 450))  # T = M (1 + r/L), in line
    assert {row.input.name for row in budget.rows} >= {"elastic line", "calibration", "lever length"}
    assert stiffness_of(pull, None) is None


def test_play_that_is_not_seen_is_not_called_none() -> None:
    x, angle = ramp(play=0.0)
    found = find_elastic(x, angle, 50.0, 50.0, 0.0, 0.005)
    said = elastic_words(2, found, None, lambda value, u95: f"{value:.1f} ± {u95:.1f} N·m", lambda v, d: f"{v:.{d}f}")
    assert said.startswith("Pull 2, elastic line at the sensor: 40.0 ± ")
    assert said.endswith(f"play not seen, below {found.play_deg + found.play_u95_deg:.2f}°")


# ---------------------------------------------------------------------- its parts by hand
@pytest.mark.parametrize(("between", "line"), [(7, slice(2, 10)), (6, None)])
def test_the_line_lies_between_three_and_seven_tenths(between, line):
    """Of 100 N·m: from 30 to the first at 70 N·m, eight readings at least."""
    ramp = np.linspace(30.0, 69.9, between)
    assert elastic._middle(np.r_[0.0, 29.9, ramp, 70.0, 80.0, 29.0], 100.0) == line
    assert elastic._middle(np.r_[ramp, 70.0], 100.0) is None  # it did not begin below
    assert elastic._middle(np.r_[0.0, 29.9, ramp, ramp], 100.0) is None  # it did not come so far


def test_the_line_and_its_uncertainty_are_numpys():
    """Scatter to and fro depends on nothing: n - 2 degrees of freedom, as in ``numpy.polyfit``."""
    x = np.linspace(30.0, 70.0, 21)
    y = 0.1 * x + 2 + 0.05 * np.resize([1.0, -1.0], 21)
    fit, cov = np.polyfit(x, y, 1, cov=True)
    found = elastic._line(x, y)
    assert found[:2] == pytest.approx(tuple(fit))
    assert found[2:] == pytest.approx((np.sqrt(cov[0, 0]), np.sqrt(cov[1, 1])))
    lower = x < 50
    assert elastic._slope(x, y, lower) == pytest.approx(np.polyfit(x[lower], y[lower], 1)[0])
    assert elastic._slope(x, y, x > 99) == 0.0
    assert elastic._slope(np.full(21, 5.0), y, lower) == 0.0


def test_readings_that_hang_together_tell_less():
    """A slow wave about the line: neighbours count as alike by 0.98 at most, 800 · 0.02/1.98 - 2 degrees of freedom."""
    x = np.linspace(30.0, 70.0, 800)
    wave = np.cos(np.linspace(0, 2 * np.pi, 800))
    _, cov = np.polyfit(x, 0.1 * x + wave, 1, cov=True)
    found = elastic._line(x, 0.1 * x + wave)
    assert found[2] == pytest.approx(np.sqrt(cov[0, 0] * 798 / (800 * 0.02 / 1.98 - 2)))


def test_the_smallest_step_of_an_angle():
    assert elastic._step(np.array([0.0, 0.0, 1.0, 0.75, 0.75])) == 0.25
    assert elastic._step(np.full(4, 2.0)) == 0.0
