"""Situations that people have and demonstrations do not: each is read rightly, or refused with a reason."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.reading import read_torque
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from logger.virtual.physics import simulate
from logger.virtual.scenarios import scenario
from tests.analysis.made import Shape, trace

SENSOR = Sensor(capacity_nm=200.0)


def read(t, y, **more):
    return read_torque(t, y, sensor=more.pop("sensor", SENSOR), **more)


def codes(pull):
    return {reason.code for reason in pull.reasons}


def torques(reading):
    return [round(p.rotating.at_sensor_nm, 1) for p in reading.pulls if p.rotating]


def simulated(name, seed=0):
    run = simulate(scenario(name), seed)
    known = run.scenario.sensor
    gain = known.gain if known.gain_known else None
    sensor = Sensor(capacity_nm=known.capacity_nm, accuracy_percent_of_reading=known.accuracy_percent, gain=gain)
    return run, read_torque(run.time_s, run.torque_nm, angle_deg=run.angle_deg, sensor=sensor)


class TestDrivenByAMotor:
    def test_several_speeds_in_one_stroke(self):
        """Six constant speeds: the torque at each, and that the whole has no one level."""
        run, reading = simulated("motor")
        (pull,) = [p for p in reading.pulls if p.rotating]
        (true,) = run.truth
        assert pull.breakaway.at_sensor_nm == pytest.approx(true.breakaway_nm, rel=0.01)
        assert pull.rotating.u95_sensor_nm > 0.015 * pull.rotating.at_sensor_nm
        even = [level for level in true.levels if level.wheel_rad_s > 0.15]  # slower it sticks and slips
        for level in even:
            nearest = min(pull.turning.levels, key=lambda found: abs(found.speed_rad_s - level.wheel_rad_s))
            assert nearest.speed_rad_s == pytest.approx(level.wheel_rad_s, rel=0.05)
            assert nearest.torque_nm == pytest.approx(level.torque_nm, rel=0.02)

    def test_reversals_without_release(self):
        """Forth, back and forth: three pulls, each with its sign; no hand-off between, so the first level counts."""
        t = np.arange(0, 24, 0.002)
        way = np.interp(t, [3, 5, 9, 9.6, 14, 14.6, 20, 20.2], [0, 1, 1, -1, -1, 1, 1, 0])
        y = (
            0.3
            + 40 * way * (1 + 0.004 * np.sin(2 * np.pi * 7 * t))
            + 0.02 * np.random.default_rng(1).standard_normal(len(t))
        )
        reading = read(t, y)
        assert [p.direction for p in reading.pulls] == [1, -1, 1]
        assert torques(reading) == pytest.approx([40, 40, 40], rel=0.01)


def test_torque_far_below_the_range_is_refused_with_a_reason():
    t, y = trace(Shape(3.2, 2.8), noise_nm=0.005)
    (pull,) = read(t, y).pulls
    assert codes(pull) == {Code.NOT_RESOLVED}
    assert "smaller transducer" in pull.reasons[0].text
    assert (pull.breakaway, pull.rotating) == (None, None)


class TestBench:
    def test_tiny_inertia_and_short_sweep(self):
        run, reading = simulated("bench")
        for true, pull in zip(run.truth, reading.pulls, strict=True):
            assert pull.breakaway.at_sensor_nm == pytest.approx(true.breakaway_nm, rel=0.01)
            assert pull.rotating.at_sensor_nm == pytest.approx(true.plateau_nm, rel=0.01)

    def test_many_short_pulls_while_running_in(self):
        levels = 40 * (0.8 + 0.2 * np.exp(-np.arange(30) / 8))
        shapes = [Shape(1.12 * level, level, ramp_s=0.6, turning_s=1.2) for level in levels]
        reading = read(*trace(*shapes, rest_s=2.0))
        assert len(reading.pulls) == 30
        assert torques(reading) == pytest.approx(levels, rel=0.01)

    def test_running_in_of_the_virtual_axle(self):
        run, reading = simulated("run-in")
        stated = [p.rotating.at_sensor_nm for p in reading.pulls]
        assert stated == pytest.approx([true.plateau_nm for true in run.truth], rel=0.012)
        assert stated[0] > 1.05 * stated[-1]


class TestPolledGauge:
    @pytest.mark.parametrize("rate_hz", [2.0, 5.0, 10.0])
    def test_coarse_and_without_sign(self, rate_hz):
        """Steps of 0.5 N·m, no sign, a few readings a second: both within their intervals, the peak's a wide one."""
        t, y = trace(Shape(turning_s=6.0), rate_hz=rate_hz, rest_s=6.0)
        (pull,) = read(t, np.abs(np.round(2 * y) / 2)).pulls
        assert pull.direction == 1
        assert abs(pull.rotating.at_sensor_nm - 40.0) <= pull.rotating.u95_sensor_nm
        assert pull.rotating.u95_sensor_nm < 2.0
        assert abs(pull.breakaway.at_sensor_nm - 46.0) <= pull.breakaway.u95_sensor_nm
        assert pull.breakaway.u95_sensor_nm > 1.5
        assert any("between two readings" in note for note in pull.notes) or Code.NOT_RESOLVED in codes(pull)


class TestNotAPack:
    def test_fluid_coupling(self):
        """Torque rises with speed and heat: there is nothing steady to state."""
        t = np.arange(0, 16, 0.004)
        y = np.interp(t, [3, 5, 12, 12.3], [0, 20, 48, 0]) + 0.02 * np.random.default_rng(1).standard_normal(len(t))
        for pull in read(t, y).pulls:
            assert pull.rotating is None
            assert not (pull.breakaway and pull.breakaway.distinct_peak)
            assert pull.reasons

    def test_locking_unit(self):
        """Climbs, steps and clips."""
        t = np.arange(0, 14, 0.004)
        y = np.interp(t, [3, 4, 4.4, 4.5, 5.2, 5.3, 6.5, 9, 9.2], [0, 60, 60, 95, 95, 140, 200, 200, 0])
        y += 0.02 * np.random.default_rng(1).standard_normal(len(t))
        (pull,) = read(t, np.minimum(y, 200.0)).pulls
        assert (pull.breakaway, pull.rotating) == (None, None)
        assert Code.CLIPPED in codes(pull)

    def test_spool(self):
        _, reading = simulated("locked")
        assert len(reading.pulls) == 3
        assert all(codes(p) == {Code.NEVER_SLIPPED} and not p.rotating and not p.breakaway for p in reading.pulls)

    def test_held_tyre_that_slips_cannot_be_told(self):
        """What slips is the tyre; torque and wheel angle look the same. The reading states what was measured."""
        _, reading = simulated("tyre-slips")
        assert len(reading.pulls) == 3
        assert all(p.rotating for p in reading.pulls)


class TestStreamFaults:
    def test_gap_in_the_slip_costs_nothing(self):
        t, y = trace(Shape(), rate_hz=200.0)
        keep = (t < 6.0) | (t > 6.6)
        reading = read(t[keep], y[keep])
        assert torques(reading) == pytest.approx([40.0], rel=0.003)
        assert reading.pulls[0].valid
        assert "1 gaps" in " ".join(reading.problems)

    def test_gap_in_the_peak_is_said(self):
        t, y = trace(Shape(), rate_hz=200.0)
        keep = (t < 4.40) | (t > 4.52)
        (pull,) = read(t[keep], y[keep]).pulls
        assert Code.LOST in codes(pull)

    def test_packets_with_one_stamp(self):
        t, y = trace(Shape(), rate_hz=200.0)
        stamps = t[np.minimum(np.arange(len(t)) // 10 * 10 + 9, len(t) - 1)]
        reading = read(stamps, y)
        assert torques(reading) == pytest.approx([40.0], rel=0.003)
        assert reading.pulls[0].breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.01)
        assert "time stamp" in reading.problems[0]

    def test_clock_set_back_between_pulls(self):
        t, y = trace(Shape(), Shape(), rate_hz=200.0)
        t = np.where(t > 10.0, t - 3600.0, t)
        reading = read(t, y)
        assert torques(reading) == pytest.approx([40.0, 40.0], rel=0.003)
        assert "set back" in " ".join(reading.problems)

    def test_reading_that_stands_still(self):
        t, y = trace(Shape(), rate_hz=200.0)
        y[(t > 5.0) & (t < 6.5)] = 40.4
        (pull,) = read(t, y).pulls
        assert Code.LOST in codes(pull)

    def test_spikes_are_left_out_and_counted(self):
        t, y = trace(Shape(), rate_hz=200.0)
        y[[700, 950, 1100]] += 90.0
        reading = read(t, y)
        assert torques(reading) == pytest.approx([40.0], rel=0.003)
        assert reading.pulls[0].left_out == 3
        assert "3 single values" in " ".join(reading.problems)


class TestZeroAndLever:
    def test_zero_taken_again_between_pulls(self):
        t, y = trace(Shape(), Shape())
        y = np.where(t > 10.0, y - 6.5, y)
        reading = read(t, y)
        assert torques(reading) == pytest.approx([40.0, 40.0], rel=0.003)
        assert reading.pulls[1].handoff_nm == pytest.approx(-6.1, abs=0.05)

    def test_zero_set_under_load(self):
        """The reading falls to zero in one sample; after the release it hangs below. No second pull is made of that."""
        t, y = trace(Shape())
        y = np.where(t > 6.5, y - 40.4, y)
        reading = read(t, y)
        (pull,) = [p for p in reading.pulls if p.rotating]
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.005)
        assert Code.ZERO_MOVED in codes(pull)
        assert not any(p.breakaway or p.rotating for p in reading.pulls if p is not pull)

    def test_unit_changed_between_pulls(self):
        """Nobody can know it from numbers: each pull is read in its own scale, and none is invented."""
        t, y = trace(Shape(), Shape())
        reading = read(t, np.where(t > 10.0, 0.7375621 * y, y))
        assert torques(reading) == pytest.approx([40.0, 29.5], rel=0.005)

    @pytest.mark.parametrize("moved_nm", [-8.0, 5.0, 12.0])
    def test_lever_moved_between_pulls(self, moved_nm):
        t, y = trace(Shape(), Shape(), rest_s=4.0)
        y += np.interp(t, [11.0, 11.3], [0.0, moved_nm])
        reading = read(t, y)
        assert torques(reading) == pytest.approx([40.0, 40.0], rel=0.003)
        assert reading.pulls[1].breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.005)

    def test_lever_put_on_and_taken_off_is_no_pull(self):
        t = np.arange(0, 30, 0.002)
        y = np.interp(t, [4, 4.3, 15, 15.2], [0, 9, 9, 0]) + 0.02 * np.random.default_rng(1).standard_normal(len(t))
        assert not any(p.breakaway or p.rotating for p in read(t, y).pulls)

    def test_long_rest_with_the_lever_on_before_a_pull(self):
        t, y = trace(Shape(), rest_s=60.0, rate_hz=100.0)
        y += np.interp(t, [5.0, 5.3], [0.0, 7.0])
        assert torques(read(t, y)) == pytest.approx([40.0], rel=0.003)

    def test_begins_in_the_middle_of_a_pull(self):
        t, y = trace(Shape(), Shape())
        late = t > 5.5
        first, second = read(t[late], y[late]).pulls
        assert Code.CUT_START in codes(first)
        assert first.breakaway is None
        assert first.rotating.at_sensor_nm == pytest.approx(40.0, abs=first.rotating.u95_sensor_nm)
        assert second.valid

    def test_ends_in_the_middle_of_a_pull(self):
        t, y = trace(Shape())
        early = t < 7.0
        (pull,) = read(t[early], y[early]).pulls
        assert Code.CUT_END in codes(pull)
        assert pull.breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.005)


class TestHands:
    def test_every_mistake_of_a_clumsy_hand(self):
        run, reading = simulated("clumsy-hand")
        valid = [true for true in run.truth if true.onset_s is not None]
        for true in valid:
            (best,) = [p for p in reading.pulls if p.breakaway and abs(p.breakaway.time_s - true.breakaway_s) < 0.2][:1]
            assert best.breakaway.at_sensor_nm == pytest.approx(true.breakaway_nm, rel=0.01)

    def test_let_go_before_the_slip(self):
        t = np.arange(0, 10, 0.002)
        y = 30 * np.exp(-(((t - 5) / 0.35) ** 2)) + 0.02 * np.random.default_rng(1).standard_normal(len(t))
        (pull,) = read(t, y).pulls
        assert codes(pull) == {Code.NEVER_SLIPPED}
        assert not pull.valid

    def test_bump_is_not_worth_a_word(self):
        t = np.arange(0, 10, 0.002)
        y = 60 * np.exp(-(((t - 5) / 0.08) ** 2)) + 0.02 * np.random.default_rng(1).standard_normal(len(t))
        assert read(t, y).pulls == ()

    def test_jerk(self):
        (pull,) = read(*trace(Shape(ramp_s=0.15))).pulls
        assert Code.RAMP in codes(pull)

    def test_re_grip_is_stated_as_a_whole_once_more(self):
        """Let go for half a second and gripped again: the first part stands as stated, then the whole."""
        grip = Shape(turning_s=3.0)
        t, y = trace(grip, grip, rest_s=0.5)
        t, y = np.concatenate([np.arange(-1500, 0) / 500, t]), np.concatenate([np.full(1500, 0.4), y])
        first, whole = read(t, y).pulls
        assert first.valid
        assert whole.start_s == first.start_s
        assert whole.breakaway.at_sensor_nm == first.breakaway.at_sensor_nm
        assert whole.rotating.steady_s > 1.7 * first.rotating.steady_s
        assert "gripped again" in whole.reasons[0].text


def test_an_hour_with_two_hundred_pulls():
    """Every one of them, in order, each within its interval."""
    rng = np.random.default_rng(9)
    shapes = [Shape(level * 1.15, level, turning_s=3.0) for level in rng.uniform(20, 70, 200)]
    t, y = trace(*shapes, rate_hz=100.0, rest_s=13.3)
    reading = read(t, y)
    assert t[-1] > 3500
    assert len(reading.pulls) == 200
    assert all(p.valid for p in reading.pulls)
    for shape, pull in zip(shapes, reading.pulls, strict=True):
        assert abs(pull.rotating.at_sensor_nm - shape.rotating_nm) <= pull.rotating.u95_sensor_nm
        assert abs(pull.breakaway.at_sensor_nm - shape.breakaway_nm) <= 1.3 * pull.breakaway.u95_sensor_nm
