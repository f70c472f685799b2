"""Eight ways in which a trace was read wrongly once: each made by formula, so that the truth is known."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.live import LiveReader
from analysis.trace.reading import read_torque
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from tests.analysis.made import Shape, trace

SENSOR = Sensor(capacity_nm=100.0)


def stated(reading):
    return [p for p in reading.pulls if p.breakaway or p.rotating]


def smooth_step(t, at_s, long_s, size):
    return size * np.clip((t - at_s) / long_s, 0, 1) ** 2 * (3 - 2 * np.clip((t - at_s) / long_s, 0, 1))


@pytest.mark.parametrize("weight_nm", [-6.0, 2.0, 6.0])
@pytest.mark.parametrize("sign", [1, -1])
def test_lever_being_fitted_is_no_pull_and_its_foot_is_no_level(weight_nm, sign):
    t, y = trace(Shape(), Shape(), rest_s=6.0, signs=(sign, sign))
    reading = read_torque(t, y + smooth_step(t, 2.5, 0.8, weight_nm), sensor=SENSOR)
    assert [p.rotating.at_sensor_nm for p in stated(reading)] == pytest.approx([40.0, 40.0], rel=0.01)


@pytest.mark.parametrize("ramp_s", [0.1, 0.2, 0.3])
def test_quick_ramps_are_stated(ramp_s):
    t, y = trace(*[Shape(ramp_s=ramp_s, turning_s=1.2)] * 3)
    assert [p.rotating.at_sensor_nm for p in stated(read_torque(t, y, sensor=SENSOR))] == pytest.approx(
        [40.0] * 3, rel=0.01
    )


def test_peak_and_fall_before_a_short_turn_is_a_breakaway():
    t, y = trace(Shape(48.0, 38.0, turning_s=0.4), Shape(48.0, 38.0, turning_s=0.4))
    assert [p.breakaway.at_sensor_nm for p in stated(read_torque(t, y, sensor=SENSOR))] == pytest.approx(
        [48.0] * 2, rel=0.01
    )


@pytest.mark.parametrize("release_s", [0.15, 0.5, 1.0])
def test_level_is_not_taken_within_a_slow_release(release_s):
    t, y = trace(*[Shape(release_s=release_s)] * 3, rest_s=1.5)
    for pull in stated(read_torque(t, y, sensor=SENSOR)):
        assert pull.handoff_nm == pytest.approx(0.4, abs=0.25)


def test_rest_after_a_release_at_another_level_is_no_pull():
    t, y = trace(Shape(), Shape(), rest_s=5.0)
    after = 5.0 + Shape().length_s
    y = y - 3.0 * ((t > after) & (t < after + 5.0))
    assert len(stated(read_torque(t, y, sensor=SENSOR))) == 2


def test_slow_oscillation_has_no_level():
    t = np.arange(0, 14, 0.01)
    y = np.interp(t, [0, 2, 3, 12, 12.2, 14], [0, 0, 1, 1, 0, 0]) * (40 + 9 * np.sin(2 * np.pi * t / 2.1))
    y += 0.03 * np.random.default_rng(1).standard_normal(len(t))
    assert not any(p.valid for p in read_torque(t, y, sensor=SENSOR).pulls)


@pytest.mark.parametrize("at_s", [6.6, 8.5])
@pytest.mark.parametrize("weight_nm", [-4.0, 4.0])
def test_pulls_behind_a_lever_taken_off_at_once_are_stated(weight_nm, at_s):
    t, y = trace(*[Shape()] * 3, rest_s=3.0)
    between = (t > at_s) & (t < at_s + 1.0)  # in the first and in the second rest
    y = y + weight_nm * ~between
    assert len(stated(read_torque(t, y, sensor=SENSOR))) >= 2
    assert [p.rotating.at_sensor_nm for p in stated(read_torque(t, y, sensor=SENSOR))][-1] == pytest.approx(
        40, rel=0.02
    )


@pytest.mark.parametrize("other_nm", [-7.0, 6.0])
def test_pull_behind_a_lever_taken_off_and_put_on_elsewhere_counts_from_there(other_nm):
    """Off at once, on again 1.5 s later at another angle; the second pull begins while the lever still swings."""
    t, y = trace(*[Shape()] * 3, rest_s=3.0)
    begins_s = [p.start_s for p in stated(read_torque(t, y, sensor=SENSOR))][1]
    off_s, on_s = begins_s - 2.4, begins_s - 0.9
    since = np.clip(t - on_s, 0, None)
    swing = other_nm * (1 - 0.9 * np.exp(-since / 0.4) * np.cos(2 * np.pi * 8 * since))
    y = y + np.where(t < off_s, 11.0, np.where(t < on_s, 0.0, swing))
    found = stated(read_torque(t, y, sensor=SENSOR))
    assert [p.direction for p in found] == [1, 1, 1]
    assert all(p.valid for p in found)
    middle = found[1].rotating
    assert abs(middle.at_sensor_nm - 40.0) < middle.u95_sensor_nm < 3.0
    assert found[1].handoff_nm == pytest.approx(other_nm, abs=1.0)


@pytest.mark.parametrize("decay_s", [0.2, 0.6, 1.2])
@pytest.mark.parametrize("weight_nm", [-5.0, 6.0])
def test_lever_put_on_at_once_may_ring(weight_nm, decay_s):
    t = np.arange(0, 12, 0.002)
    since = np.clip(t - 3, 0, None)
    on = (t >= 3) & (t < 8)
    y = on * weight_nm * (1 - 0.9 * np.exp(-since / decay_s) * np.cos(2 * np.pi * 9 * since))
    y = y + 0.01 * np.random.default_rng(1).standard_normal(len(t))
    assert not stated(read_torque(t, y, sensor=SENSOR))


def test_a_swing_is_neither_a_level_nor_a_breakaway():
    t = np.arange(0, 15, 0.005)
    y = np.interp(t, [0, 2, 2.6, 13, 13.2, 15], [0, 0, 1, 1, 0, 0]) * (38 - 7 * np.cos(2 * np.pi * (t - 2) / 1.9))
    y = y + 0.05 * np.random.default_rng(2).standard_normal(len(t))
    assert not stated(read_torque(t, y, sensor=SENSOR))


def test_of_two_speeds_as_long_none_is_the_rotating_torque():
    t = np.arange(0, 16, 0.005)
    y = np.interp(t, [0, 2, 3, 6, 6.5, 9.5, 10, 13, 13.1, 16], [0, 0, 50, 50, 30, 30, 70, 70, 0, 0])
    y = y + 0.05 * np.random.default_rng(3).standard_normal(len(t))
    pulls = read_torque(t, y, sensor=SENSOR).pulls
    assert len(pulls) == 1
    assert not stated(read_torque(t, y, sensor=SENSOR))
    assert [reason.code for reason in pulls[0].reasons] == [Code.UNSTEADY]
    assert "no one level to state" in pulls[0].reasons[0].text


def test_level_that_wanders_widens():
    def u95(wander_nm):
        t, y = trace(Shape(), rest_s=2.0)
        y = y + wander_nm * np.sin(2 * np.pi * t / 0.9)
        return [p.breakaway.u95_sensor_nm for p in stated(read_torque(t, y, sensor=SENSOR))]

    (still,), (wandering,) = u95(0.0), u95(1.0)
    assert wandering > 2.5 * still
    assert wandering > 1.0


def test_step_of_a_slow_display_is_learnt_from_all_its_readings():
    t = np.arange(0, 30, 0.5)
    y = np.interp(t, [0, 1.5, 2, 2.5, 4, 5, 14, 14.5, 30], [0, 0, 6, 18, 36, 31, 31, 0, 0])
    (pull,) = stated(read_torque(t, np.round(y), sensor=Sensor(capacity_nm=50.0)))
    assert pull.rotating.u95_sensor_nm < 2.5, "six newton metres between the first readings are no step of the display"


class TestStamps:
    def read(self, t, y):
        return [p.rotating.at_sensor_nm for p in stated(read_torque(t, y, sensor=SENSOR))]

    def test_packets_of_one_stamp(self):
        t, y = trace(Shape(), Shape(), rate_hz=200.0)
        packets = t[np.minimum(np.arange(len(t)) // 28 * 28 + 27, len(t) - 1)]
        assert self.read(packets, y) == pytest.approx([40.0, 40.0], rel=0.005)

    def test_stamps_of_whole_seconds(self):
        t, y = trace(Shape(), Shape(), rate_hz=50.0)
        assert self.read(np.floor(t), y) == pytest.approx([40.0, 40.0], rel=0.01)

    def test_clock_set_back_keeps_the_times_of_the_file(self):
        t, y = trace(Shape(), Shape(), rate_hz=100.0)
        back = 3.0 + Shape().length_s + 1.5
        reading = read_torque(np.where(t > back, t - 500.0, t), y, sensor=SENSOR)
        first, second = stated(reading)
        assert first.start_s == pytest.approx(3.0, abs=0.1)
        assert second.start_s == pytest.approx(3.0 + Shape().length_s + 3.0 - 500.0, abs=0.1)


@pytest.mark.parametrize("turned_s", [0.0, 0.05])
def test_reversal_counts_from_the_level_before_both_strokes(turned_s):
    t = np.arange(0, 22, 0.002)
    knots = [0, 3, 4, 10, 10.3 + turned_s, 16, 16.3, 22]
    way = np.interp(t, knots, [0, 0, 1, 1, -1, -1, 0, 0])
    y = (
        0.3
        + 40 * way * (1 + 0.004 * np.sin(2 * np.pi * 7 * t))
        + 0.02 * np.random.default_rng(2).standard_normal(len(t))
    )
    found = stated(read_torque(t, y, sensor=SENSOR))
    assert [p.rotating.at_sensor_nm for p in found] == pytest.approx([40.0, 40.0], rel=0.01)
    assert [p.direction for p in found] == [1, -1]


class TestTwoLevels:
    """Where a hand may have hesitated on its way up, the interval reaches both levels and the note names both."""

    def test_short_shelf(self):
        t, y = trace(Shape(ramp_s=1.0), rest_s=4.0)
        ramp = np.interp(t, [0, 3.6, 3.66, 4.0], [0, 0, 3.0, 3.0]) * (t < 4.0) + 3.0 * (t >= 4.0) * (t < 4.0 + 6)
        (pull,) = stated(read_torque(t, y + ramp, sensor=SENSOR))
        low, high = pull.handoff_nm, pull.handoff_nm + pull.breakaway.u95_sensor_nm
        assert low == pytest.approx(0.4, abs=0.1)
        assert high > 3.3
        assert any("two levels" in note for note in pull.notes)


class TestNeighbours:
    def test_small_and_unsteady_is_taken_back_live(self):
        """A small hump that looked like a pull, before any other was known."""
        t, y = trace(Shape(7.0, 6.0), Shape(), Shape(), rest_s=3.0)
        reader = LiveReader(SENSOR)
        said = [p for i in range(0, len(t), 100) for p in reader.feed(t[i : i + 100], y[i : i + 100])]
        said += reader.finish()
        back = [p for p in said if p.taken_back]
        assert len(back) == 1
        assert back[0].reasons[0].code is Code.NEVER_SLIPPED
        assert "taken back" in back[0].reasons[0].text
        whole = read_torque(t, y, sensor=SENSOR)
        assert reader.reading().pulls == whole.pulls
        assert len(stated(whole)) == 2

    def test_what_follows_a_zero_under_load_is_not_valid(self):
        """The release hangs below the new zero, so that later pulls look like loads the other way."""
        t, y = trace(Shape(), Shape(), Shape(), rest_s=7.0)
        y = np.where(t > 11.0, y - 40.4, y)
        first, *later = stated(read_torque(t, y, sensor=SENSOR))
        assert Code.ZERO_MOVED in [r.code for r in first.reasons]
        assert all(Code.ZERO_MOVED in [r.code for r in pull.reasons] for pull in later if pull.direction < 0)


def test_strokes_to_and_fro_without_a_rest_count_from_one_level():
    """The load goes through its level and on, and waits nowhere: its foot is no level, the interval reaches it."""
    t = np.arange(0, 24, 0.005)
    at, nm = [0, 3, 5, 5.3, 11, 11.1, 11.5, 12.2, 12.5, 19, 19.2, 24], [4, 4, 44, 34, 34, 0, -3, -36, -26, -26, 4, 4]
    y = np.interp(t, at, nm) + np.random.default_rng(4).normal(0, 0.02, len(t))
    _, fro = stated(read_torque(t, y, sensor=SENSOR))
    assert fro.handoff_nm == pytest.approx(4.0, abs=0.05)
    assert fro.rotating.at_sensor_nm == pytest.approx(30.0, abs=0.3)


def test_a_stroke_back_counts_from_where_the_lever_hung_between_the_two():
    """Gone through its level at once, then still for 1.5 s on the other side: the lever hung there."""
    t = np.arange(0, 24, 0.005)
    at, nm = (
        [0, 2, 3, 3.3, 11, 11.15, 12.75, 14.2, 14.5, 21, 21.2, 24],
        [-8, -8, -36, -32, -32, 4, 4, 36, 32, 32, -6, -6],
    )
    y = np.interp(t, at, nm) + np.random.default_rng(4).normal(0, 0.02, len(t))
    to, fro = stated(read_torque(t, y, sensor=SENSOR))
    assert to.rotating.at_sensor_nm == pytest.approx(24.0, rel=0.01)
    assert fro.handoff_nm == pytest.approx(4.0, abs=0.05)
    assert fro.rotating.at_sensor_nm == pytest.approx(28.0, rel=0.01)
