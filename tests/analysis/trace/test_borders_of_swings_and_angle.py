"""Borders of stick-slip and of the wheel's angle: by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.to_axle.at_axle import CALIBRATION, Instrument, Level
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.elastic import _line, find_elastic
from analysis.trace.results import Breakaway, Elastic, Pull, Rotating
from analysis.trace.stickslip import find_cycles
from analysis.trace.turns import Turns
from analysis.verdict.elastic import stiffness_of
from analysis.verdict.judge import AtAxle
from logger.header import Lever


# ---------------------------------------------------------------------- stick-slip
def saw(period, swing, level=40.0, cycles=6, fall=0.1):
    t = np.arange(0, cycles * period, 0.002)
    phase = (t / period) % 1
    return t, level - swing / 2 + swing * np.where(phase < 1 - fall, phase / (1 - fall), (1 - phase) / fall)


@pytest.mark.parametrize(
    ("period", "swing", "cycles", "found"),
    [
        (0.5, 4.0, 6, True),
        (0.5, 1.5, 6, False),
        (0.5, 4.0, 3, False),
        (0.1, 4.0, 12, False),
        (3.5, 4.0, 6, True),
        (4.5, 4.0, 6, False),
    ],
)
def test_stick_slip_swings_and_repeats(period, swing, cycles, found):
    """A saw-tooth of 10 % of the level; 4 % is ripple; two cycles show nothing; faster or slower is none."""
    of = find_cycles(*saw(period, swing, cycles=cycles))
    assert (of is not None) is found
    if of is not None:
        assert of.frequency_hz == pytest.approx(1 / period, rel=0.03)
        assert of.period_s == pytest.approx(period, rel=0.03)
        assert of.peak_to_peak_nm == pytest.approx(swing, rel=0.12)
        assert np.diff(of.falls_s) == pytest.approx(np.full(len(of.falls_s) - 1, period), rel=0.05)
        assert (of.start_s, of.end_s) == (of.falls_s[0], of.falls_s[-1])


@pytest.mark.parametrize(("fall", "found"), [(0.2, True), (0.5, False), (0.8, False)])
def test_slow_cycles_break_quicker_than_they_stick(fall, found):
    assert (find_cycles(*saw(2.0, 4.0, fall=fall)) is not None) is found


def test_periods_that_differ_are_a_clumsy_hand():
    parts, at = [], 0.0
    for period in (0.3, 0.4, 0.4, 1.2, 0.5, 1.2, 0.8, 1.2):
        t, x = saw(period, 4.0, cycles=1)
        parts.append((t + at, x))
        at += period
    assert find_cycles(np.concatenate([p[0] for p in parts]), np.concatenate([p[1] for p in parts])) is None


# ---------------------------------------------------------------------- the wheel's angle
def wound(stiffness, play, step=0.0, bend=0.0):
    """Give a ramp to 50 N·m whose wheel takes up its play and then winds up along a line."""
    torque = np.linspace(0, 50, 201)
    angle = play + torque / stiffness + bend * torque**2
    return torque, np.round(angle / step) * step if step else np.r_[0.0, angle[1:]]


@pytest.mark.parametrize("way", [1, -1])
def test_the_elastic_line_by_hand(way):
    """10 N·m a degree, 2° of play, slipping at 50 N·m: 5° of wind-up; drag of 10 N·m hides 1° (rectangular)."""
    torque, angle = wound(10.0, 2.0)
    found = find_elastic(torque, way * angle, 50.0, 45.0, 0.02, 0.01)
    assert found.stiffness_nm_deg == pytest.approx(10)
    assert found.wind_up_deg == pytest.approx(4.5)
    assert found.play_deg == pytest.approx(2.0)
    assert found.meets_deg == pytest.approx(way * 2.0)
    assert found.way == way
    step = 0.25 / 10  # of the angle, between two readings
    moved = step / 0.01 * 0.03
    wanted = math.hypot(1 / math.sqrt(3), moved / math.sqrt(3), step / math.sqrt(6))
    assert found.play_u95_deg == pytest.approx(1.96 * wanted, rel=1e-3)
    over = torque[(torque > 0.3 * 50 - 0.1) & (torque < 0.7 * 50 + 0.1)]
    assert found.stiffness_u95_nm_deg == pytest.approx(1.96 * step / math.sqrt(6) / np.ptp(over) * 100, rel=0.02)
    slip = find_elastic(torque, way * angle, 50.0, None, 0.02, 0.01)
    assert slip.wind_up_deg == pytest.approx(5.0)
    unsure = find_elastic(torque, way * angle, 50.0, 45.0, 0.02, 0.01, 3.0)
    assert unsure.wind_up_u95_deg**2 - found.wind_up_u95_deg**2 == pytest.approx((1.96 * 0.3) ** 2, rel=1e-3)


def test_a_bent_line_pays_half_of_what_its_halves_differ():
    """Slope 0.1 + 2 b T°/N·m: lower and upper half lie 10 N·m apart about 25 N·m."""
    b = 0.0005
    found = find_elastic(*wound(10.0, 2.0, bend=b), 50.0, None, 0.0, 0.01)
    slope = 0.1 + 2 * b * 25
    assert 1 / found.stiffness_nm_deg == pytest.approx(slope, rel=0.01)
    u = found.stiffness_u95_nm_deg / 1.96 * slope**2
    assert u >= 2 * b * 10 / 2 / math.sqrt(3) * 0.97


def test_no_elastic_line():
    torque, angle = wound(10.0, 2.0)
    assert find_elastic(torque, np.zeros(201), 50.0, None, 0.0, 0.01) is None  # it did not turn
    assert find_elastic(torque, np.where(torque > 20, np.nan, angle), 50.0, None, 0.0, 0.01) is None
    assert find_elastic(torque[torque < 34], angle[torque < 34], 50.0, None, 0.0, 0.01) is None  # not so far up
    assert find_elastic(*wound(10.0, 2.0, step=1.5), 50.0, None, 0.0, 0.01) is None  # too coarse an angle
    for every, readings in ((14, False), (9, True)):
        found = find_elastic(torque[::every], angle[::every], 50.0, None, 0.0, 0.01)
        assert (found is not None) is readings


def test_stiffness_at_the_axle():
    """A cross-bar that makes 1.127 of what is read: 10 N·m a degree become 11.27, calibration ± 0.5 % of it."""
    fixture = fixture_from(Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0))
    at = AtAxle(fixture, Instrument(0.005, 1.0), Level())
    pull = Pull(0.0, 5.0, 1, 0.0, None, None, elastic=Elastic(10.0, 0.4, 4.0, 0.1, 1.0, 0.5, 1.0, 1))
    found = stiffness_of(pull, at)
    factor = 1 + 57.15 / 450
    assert found.value == pytest.approx(10 * factor)
    assert found.row("elastic line").contribution == pytest.approx(factor * 0.4 / 1.96, rel=1e-4)
    assert found.row(CALIBRATION).contribution == pytest.approx(0.005 * 10 * factor)
    assert found.row("stud radius").sensitivity == pytest.approx(10 / 0.45)
    assert stiffness_of(pull, None) is None
    assert stiffness_of(Pull(0.0, 5.0, 1, 0.0, None, None), at) is None


def test_how_far_the_wheel_had_turned():
    """Half a turn a second from 1 s on; breakaway at 2 s, rotating from 3 to 5 s."""
    t = np.arange(0, 8, 0.1)
    slip, level = Breakaway(2.0, 40.0, 0.1, 0.2, True, 0.1), Rotating(3.0, 5.0, 35.0, 0.1, 0.2, 36.0, 2.0, 0.1, 0.1)
    for sign in (1, -1):
        turns = Turns()
        turns.feed(t[:30], sign * 180 * np.clip(t[:30] - 1, 0, None))
        turns.feed(t[30:], None)
        turns.feed(t[30:], np.where(t[30:] == t[40], np.nan, sign * 180 * (t[30:] - 1)))
        turned = turns.of(Pull(0.5, 6.0, 1, 0.0, slip, level)).turned
        assert turned.to_breakaway_rad == pytest.approx(math.pi)
        assert turned.rotating_rad == pytest.approx(2 * math.pi)
        assert turned.to_rotating_rad == pytest.approx(3 * math.pi)
    bare = turns.of(Pull(0.5, 6.0, 1, 0.0, None, None)).turned
    assert (bare.to_breakaway_rad, bare.rotating_rad, bare.to_rotating_rad) == (None, None, None)
    assert Turns().of(Pull(0.5, 6.0, 1, 0.0, slip, level)).turned is None


def test_a_ripple_on_the_way_is_no_cycle():
    """A saw-tooth a second, on it a ripple of three tenths of its swing from end to end: one cycle a second."""
    t, x = saw(1.0, 4.0, cycles=8)
    found = find_cycles(t, x + 0.6 * np.sin(2 * np.pi * 5.3 * t))
    assert found.frequency_hz == pytest.approx(1.0, rel=0.05)


def test_what_the_bend_of_an_elastic_line_adds_by_hand():
    torque, angle = wound(10.0, 2.0, bend=0.0005)
    found = find_elastic(torque, angle, 50.0, None, 0.0, 0.01)
    part = (torque > 15 - 1e-9) & (torque < 35.2)
    x, y = torque[part], angle[part]
    lower = x < np.median(x)
    bend = abs(np.polyfit(x[~lower], y[~lower], 1)[0] - np.polyfit(x[lower], y[lower], 1)[0]) / 2
    step = np.abs(np.diff(y)).min() / math.sqrt(6) / np.ptp(x)
    slope, _, scatter, _ = _line(x, y)
    wanted = math.hypot(scatter, bend / math.sqrt(3), step)
    assert found.stiffness_nm_deg == pytest.approx(1 / slope, rel=1e-3)
    assert found.stiffness_u95_nm_deg == pytest.approx(1.96 * wanted / slope**2, rel=5e-3)


def test_cycles_are_counted_from_fall_to_fall():
    t, x = saw(1.0, 4.0)
    assert np.asarray(find_cycles(t, x).falls_s) % 1 == pytest.approx(0.95, abs=0.05)
