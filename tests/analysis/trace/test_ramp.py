"""How the torque comes up: straight into a knee, by steps, or ever slower until the hand lets go."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.ramp import fades
from analysis.trace.reading import read_torque
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from tests.analysis.made import Shape, trace

SENSOR = Sensor(capacity_nm=200.0)
RATE = 200.0


def after_rest(load_nm, *, rate_hz=RATE, rest_s=3.0, tremor=0.004, noise_nm=0.02, seed=0):
    """Rest, a load given as a function of the time since its foot and its length, rest again; with a hand's tremor."""
    torque, length = load_nm
    rng = np.random.default_rng(seed)
    t = np.arange(round((length + 2 * rest_s) * rate_hz)) / rate_hz
    since = t - rest_s
    x = np.where((since > 0) & (since < length), torque(np.clip(since, 0, length)), 0.0)
    shake = 1 + tremor * np.sin(2 * np.pi * 9.3 * t)
    return t, 0.4 + x * shake + noise_nm * rng.standard_normal(len(t))


def released(torque, length, release_s=0.2):
    return (lambda s: torque(s) * np.clip((length - s) / release_s, 0, 1)), length


def approach(top_nm, ramp_s, held_s):
    """Straight to 60 % of the torque that is not to be passed, then towards it with one time constant."""
    bend_s = 0.6 * ramp_s

    def torque(s):
        return np.where(s < bend_s, top_nm * s / ramp_s, top_nm * (1 - 0.4 * np.exp(-(s - bend_s) / (0.4 * ramp_s))))

    return released(torque, held_s)


def quarter_sine(top_nm, rise_s, held_s):
    return released(lambda s: top_nm * np.sin(np.pi / 2 * np.clip(s / rise_s, 0, 1)), held_s)


def shoulder(top_nm, ramp_s, held_s):
    """The weaker pack gives way at 80 %, holds for half a second, then the torque comes up again."""
    times = np.array((0.0, 0.8 * ramp_s, 0.8 * ramp_s + 0.5, ramp_s + 0.5, 99.0))
    return released(lambda s: np.interp(s, times, top_nm * np.array((0, 0.8, 0.83, 1, 1))), held_s)


def stated(reading):
    return [pull for pull in reading.pulls if pull.breakaway or pull.rotating]


class TestFadingHand:
    @pytest.mark.parametrize("ramp_s", [0.8, 1.5, 3.0])
    @pytest.mark.parametrize("rate_hz", [20.0, 100.0, 1000.0])
    def test_approach_that_is_let_go_is_no_pull(self, ramp_s, rate_hz):
        t, y = after_rest(approach(45.0, ramp_s, 2.6 * ramp_s), rate_hz=rate_hz)
        reading = read_torque(t, y, sensor=SENSOR)
        assert not stated(reading)
        (pull,) = reading.pulls
        assert [reason.code for reason in pull.reasons] == [Code.NEVER_SLIPPED]

    @pytest.mark.parametrize("rise_s", [1.5, 2.5])
    def test_quarter_sine_that_is_let_go_is_no_pull(self, rise_s):
        t, y = after_rest(quarter_sine(45.0, rise_s, 1.6 * rise_s))
        assert not stated(read_torque(t, y, sensor=SENSOR))

    @pytest.mark.parametrize("ramp_s", [0.8, 1.5, 3.0])
    def test_straight_ramp_into_a_level_is_a_pull(self, ramp_s):
        """A pack without overshoot, turned for as little as the ramp took."""
        t, y = trace(Shape(breakaway_nm=40.0, ramp_s=ramp_s, turning_s=max(ramp_s, 1.2)))
        (pull,) = stated(read_torque(t, y, sensor=SENSOR))
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.003)

    def test_shoulder_of_the_weaker_pack_is_a_pull(self):
        t, y = after_rest(shoulder(45.0, 2.0, 4.0))
        (pull,) = stated(read_torque(t, y, sensor=SENSOR))
        assert pull.rotating.at_sensor_nm == pytest.approx(45.0, rel=0.01)

    def test_held_much_longer_than_the_ramp_is_a_pull(self):
        """Nobody holds on at the edge for ten seconds; the note says that only an angle would settle it."""
        t, y = after_rest(approach(45.0, 1.5, 12.0))
        (pull,) = stated(read_torque(t, y, sensor=SENSOR))
        assert "angle" in pull.notes[0]

    def test_formulas(self):
        s = np.linspace(0, 4, 801)
        assert fades(s, 10 * (1 - np.exp(-s / 0.8)), 9.9)
        assert not fades(s, np.minimum(5 * s, 10.0), 10.0)
        assert not fades(s, np.zeros(801), 0.0)


class TestSteps:
    @pytest.mark.parametrize(
        "steps", [((1.0, 30.0),), ((1.0, 15.0), (2.0, 30.0)), ((1.0, 20.0), (4.0, 25.0), (6.0, 45.0))]
    )
    def test_bad_cable_is_no_pull(self, steps):
        rng = np.random.default_rng(2)
        t = np.arange(0, 12, 0.002)
        y = 0.5 + 0.03 * rng.standard_normal(len(t))
        for at, size in steps:
            y[(t > at + 1) & (t < 10)] = 0.5 + size + 0.03 * rng.standard_normal(int(((t > at + 1) & (t < 10)).sum()))
        assert not stated(read_torque(t, y, sensor=SENSOR))

    def test_lever_that_falls_past_its_place_after_a_pull_is_no_pull(self):
        """It is turned by the pull, so its weight may hang on the other side; it rings for a second."""
        t, y = trace(Shape(), rest_s=6.0)
        after = t - 6.0 - Shape().length_s
        ring = np.exp(-np.maximum(after, 0) / 0.4) * np.cos(2 * np.pi * 5 * after)
        y = np.where(after > 0, y - 9.0 * (1 - ring), y)
        (pull,) = read_torque(t, y, sensor=Sensor(capacity_nm=60.0)).pulls
        assert pull.direction == 1

    @pytest.mark.parametrize("ramp_s", [0.05, 0.1, 0.2])
    @pytest.mark.parametrize("rate_hz", [50.0, 500.0, 2000.0])
    def test_jerk_is_a_pull_that_is_not_valid(self, ramp_s, rate_hz):
        t, y = trace(Shape(ramp_s=ramp_s), rate_hz=rate_hz)
        (pull,) = read_torque(t, y, sensor=SENSOR).pulls
        assert Code.RAMP in [reason.code for reason in pull.reasons]
        assert not pull.valid
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.003)

    @pytest.mark.parametrize("rate_hz", [30.0, 40.0, 50.0, 100.0])
    def test_heavy_lever_put_on_before_a_slow_transducer_is_no_pull(self, rate_hz):
        """It rings at first, and weighs a quarter of the range."""
        t = np.arange(round(9 * rate_hz)) / rate_hz
        since = t - 3.0
        ring = np.exp(-np.maximum(since, 0) / 0.5) * np.cos(2 * np.pi * 4 * since)
        y = np.where((since > 0) & (t < 7.0), 12.0 * (1 - 0.4 * ring), 0.0)
        y += 0.02 * np.random.default_rng(4).standard_normal(len(t))
        assert not stated(read_torque(t, y, sensor=Sensor(capacity_nm=50.0)))


class TestBeginning:
    @pytest.mark.parametrize("sign", [1, -1])
    def test_lever_that_swings_at_first_is_at_rest(self, sign):
        """Not a recording that begins in a pull: the torque grows far beyond what it began with."""
        t, y = trace(Shape(), level_nm=4.5, rest_s=1.2)
        y = sign * (y + 0.09 * np.sin(2 * np.pi * 1.1 * t))
        (pull,) = read_torque(t, y, sensor=Sensor(capacity_nm=100.0)).pulls
        assert Code.CUT_START not in [reason.code for reason in pull.reasons]
        assert pull.breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.006)

    @pytest.mark.parametrize("begins_s", [0.5, 1.0, 3.0])
    def test_recording_that_begins_in_a_pull_says_so(self, begins_s):
        t, y = trace(Shape(), rest_s=3.0, level_nm=4.5, ripple=0.01)
        late = t > 3.0 + begins_s
        (pull,) = read_torque(t[late], y[late], sensor=Sensor(capacity_nm=100.0)).pulls
        assert Code.CUT_START in [reason.code for reason in pull.reasons]
        assert abs(pull.rotating.at_sensor_nm - 40.0) < pull.rotating.u95_sensor_nm
