"""What a reading must do whatever the trace: be right where the truth is known by formula, follow shifts, scales and
signs, and never break."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from analysis.trace.reading import read_torque
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from logger.errors import InputError
from tests.analysis import practice
from tests.analysis.made import Shape, trace

SENSOR = Sensor(capacity_nm=200.0)


def figures(reading):
    return [
        (p.direction, p.breakaway and p.breakaway.at_sensor_nm, p.rotating and p.rotating.at_sensor_nm)
        for p in reading.pulls
    ]


class TestKnownByFormula:
    def test_one_pull(self):
        t, y = trace(Shape())
        (pull,) = read_torque(t, y, sensor=SENSOR).pulls
        assert pull.valid
        assert pull.direction == 1
        assert pull.handoff_nm == pytest.approx(0.4, abs=0.02)
        assert pull.start_s == pytest.approx(3.0, abs=0.05)
        assert pull.end_s == pytest.approx(3.0 + 5.65, abs=0.15)
        assert pull.breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.004)
        assert pull.breakaway.time_s == pytest.approx(4.5, abs=0.01)
        assert pull.breakaway.distinct_peak
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.002)
        assert pull.rotating.steady_s == pytest.approx(3.6, abs=0.2)

    @pytest.mark.parametrize("rate_hz", [10.0, 20.0, 50.0, 100.0, 250.0, 1000.0, 2000.0])
    def test_any_rate(self, rate_hz):
        t, y = trace(Shape(ramp_s=2.0, fall_s=0.08), rate_hz=rate_hz)
        (pull,) = read_torque(t, y, sensor=SENSOR).pulls
        assert abs(pull.breakaway.at_sensor_nm - 46.0) <= pull.breakaway.u95_sensor_nm
        assert abs(pull.rotating.at_sensor_nm - 40.0) <= pull.rotating.u95_sensor_nm
        assert pull.rotating.u95_sensor_nm < 0.03 * 40.0

    def test_no_overshoot(self):
        t, y = trace(Shape(breakaway_nm=40.0))
        (pull,) = read_torque(t, y, sensor=SENSOR).pulls
        assert not pull.breakaway.distinct_peak
        assert pull.breakaway.at_sensor_nm == pytest.approx(40.0, rel=0.01)
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.002)

    def test_both_directions(self):
        t, y = trace(Shape(), Shape(), signs=(1, -1), level_nm=-0.5)
        first, second = read_torque(t, y, sensor=SENSOR).pulls
        assert (first.direction, second.direction) == (1, -1)
        assert second.breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.004)
        assert second.handoff_nm == pytest.approx(-0.5, abs=0.02)

    def test_without_knowing_the_sensor(self):
        t, y = trace(Shape())
        (pull,) = read_torque(t, y).pulls
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.002)

    def test_known_gain_is_divided_out(self):
        t, y = trace(Shape())
        (pull,) = read_torque(t, 1.02 * y, sensor=Sensor(capacity_nm=200.0, gain=1.02)).pulls
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.002)

    def test_unknown_gain_widens_the_interval(self):
        t, y = trace(Shape())
        (plain,) = read_torque(t, y, sensor=SENSOR).pulls
        (stated,) = read_torque(t, y, sensor=Sensor(capacity_nm=200.0, accuracy_percent_of_reading=2.0)).pulls
        assert stated.rotating.u_trace_nm == plain.rotating.u_trace_nm
        assert stated.rotating.u95_sensor_nm == pytest.approx(np.hypot(plain.rotating.u95_sensor_nm, 0.8), rel=0.01)

    @pytest.mark.parametrize("phase", [0.0, 0.3, 0.6, 0.9])
    def test_coarse_steps_widen_the_interval(self, phase):
        """A level that rests within one step may lie anywhere in it (rectangle, JCGM 100, 4.3.7)."""
        t, y = trace(Shape(), noise_nm=0.001, level_nm=phase)
        (pull,) = read_torque(t, np.round(y), sensor=SENSOR).pulls
        assert pull.breakaway.u95_sensor_nm > 1.96 / np.sqrt(12)
        assert abs(pull.rotating.at_sensor_nm - 40.0) <= pull.rotating.u95_sensor_nm
        assert pull.rotating.u95_sensor_nm < 0.03 * 40.0

    def test_zero_and_noise(self):
        t, y = trace(Shape(), noise_nm=0.05)
        reading = read_torque(t, y, sensor=SENSOR)
        assert reading.rate_hz == pytest.approx(500.0)
        assert reading.zero_nm == pytest.approx(0.4, abs=0.03)
        assert reading.noise_nm == pytest.approx(0.05, rel=0.2)


class TestNothingVanishes:
    """A load that was there is told with its reason, even if it says nothing about the pack."""

    @pytest.mark.parametrize(
        ("until_s", "code"), [(4.0, Code.CUT_END), (4.3, Code.CUT_END), (6.0, Code.CUT_END), (99.0, None)]
    )
    def test_recording_that_ends_in_the_pull(self, until_s, code):
        t, y = trace(Shape())
        (pull,) = read_torque(t[t < until_s], y[t < until_s], sensor=SENSOR).pulls
        assert [reason.code for reason in pull.reasons] == ([] if code is None else [code])

    @pytest.mark.parametrize("turning_s", [0.2, 0.5, 0.7])
    def test_turned_too_shortly(self, turning_s):
        t, y = trace(Shape(ramp_s=0.6, turning_s=turning_s))
        (pull,) = read_torque(t, y, sensor=SENSOR).pulls
        assert [reason.code for reason in pull.reasons] == [Code.SHORT]
        assert pull.breakaway.at_sensor_nm == pytest.approx(46.0, rel=0.006)  # what can be stated is stated
        assert pull.rotating is None or pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.006)

    def test_transducer_that_zeroes_itself_early(self):
        t, y = trace(Shape())
        y[t > 5.0] -= 40.0
        assert Code.ZERO_MOVED in [r.code for pull in read_torque(t, y, sensor=SENSOR).pulls for r in pull.reasons]

    def test_gap_over_the_breakaway(self):
        t, y = trace(Shape())
        kept = (t < 4.0) | (t > 6.0)
        (pull,) = read_torque(t[kept], y[kept], sensor=SENSOR).pulls
        assert Code.LOST in [reason.code for reason in pull.reasons]
        assert pull.rotating.at_sensor_nm == pytest.approx(40.0, rel=0.003)


shape = st.builds(
    Shape,
    breakaway_nm=st.floats(43.0, 60.0),
    rotating_nm=st.just(40.0),
    ramp_s=st.floats(0.6, 3.0),
    turning_s=st.floats(2.0, 5.0),
)


class TestSymmetries:
    """Another zero, another unit, another sign or another clock changes nothing but that."""

    @given(shape, st.floats(-20.0, 20.0))
    def test_shift(self, one, shift):
        t, y = trace(one)
        plain, shifted = read_torque(t, y), read_torque(t, y + shift)
        for a, b in zip(figures(plain), figures(shifted), strict=True):
            assert b == pytest.approx(a, rel=1e-6)
        assert shifted.pulls[0].handoff_nm == pytest.approx(plain.pulls[0].handoff_nm + shift, abs=1e-6)

    @given(shape, st.floats(0.05, 20.0))
    def test_scale(self, one, scale):
        t, y = trace(one)
        plain, scaled = read_torque(t, y), read_torque(t, scale * y)
        for a, b in zip(figures(plain), figures(scaled), strict=True):
            assert b == pytest.approx((a[0], a[1] * scale, a[2] * scale), rel=1e-6)

    @given(shape)
    def test_sign(self, one):
        t, y = trace(one)
        for (sign, *a), (other, *b) in zip(figures(read_torque(t, y)), figures(read_torque(t, -y)), strict=True):
            assert other == -sign
            assert b == pytest.approx(a, rel=1e-6)

    @given(shape, st.floats(-1e6, 1e6))
    def test_time_offset(self, one, offset):
        t, y = trace(one)
        plain, later = read_torque(t, y), read_torque(t + offset, y)
        for a, b in zip(figures(plain), figures(later), strict=True):
            assert b == pytest.approx(a, rel=1e-3)
        assert later.pulls[0].start_s == pytest.approx(plain.pulls[0].start_s + offset, abs=0.05)

    def test_other_pulls_do_not_matter(self):
        """The answer for one pull never depends on samples outside it and the rest beside it."""
        small = Shape(breakaway_nm=23.0, rotating_nm=20.0)
        t, y = trace(Shape(), small)
        alone = t > 3.0 + Shape().length_s + 1.0
        _, second = read_torque(t, y, sensor=SENSOR).pulls
        (only,) = read_torque(t[alone], y[alone], sensor=SENSOR).pulls
        assert only.breakaway.at_sensor_nm == pytest.approx(second.breakaway.at_sensor_nm, rel=1e-3)
        assert only.rotating.at_sensor_nm == pytest.approx(second.rotating.at_sensor_nm, rel=1e-3)


class TestNothingThere:
    @pytest.mark.parametrize("n", [0, 1, 2, 3, 5, 50])
    def test_short(self, n):
        reading = read_torque(np.arange(n) / 100, np.zeros(n))
        assert reading.pulls == ()
        assert reading.problems

    def test_constant(self):
        assert read_torque(np.arange(1000) / 100, np.full(1000, 3.0)).pulls == ()

    def test_not_a_number(self):
        reading = read_torque(np.arange(1000) / 100, np.full(1000, np.nan))
        assert reading.pulls == ()
        assert "not numbers" in reading.problems[0]

    def test_noise(self):
        rng = np.random.default_rng(3)
        for _ in range(20):
            assert not any(p.rotating for p in read_torque(np.arange(5000) / 250, rng.normal(0, 3, 5000)).pulls)

    def test_slow_drift(self):
        t = np.arange(3000) / 50
        assert not any(p.rotating or p.breakaway for p in read_torque(t, 0.5 * t, sensor=SENSOR).pulls)

    def test_columns_of_different_length(self):
        with pytest.raises(InputError, match="one length"):
            read_torque([0.0, 1.0], [0.0])


@settings(max_examples=200)
@given(
    arrays(float, st.integers(0, 300), elements=st.floats(allow_nan=True, allow_infinity=True)),
    st.integers(0, 2**32 - 1),
    st.sampled_from([1.0, 10.0, 300.0]),
    st.booleans(),
)
def test_any_input_is_read_or_refused(values, seed, rate_hz, with_angle):
    """Whatever comes: a reading, with every figure finite and every half-width positive."""
    rng = np.random.default_rng(seed)
    t = np.cumsum(rng.choice([0.0, 1.0, 1.0, 1.0, 7.0, -3.0], len(values))) / rate_hz
    angle = rng.normal(0, 5, len(values)) if with_angle else None
    for pull in read_torque(t, values, angle_deg=angle).pulls:
        for stated in (pull.breakaway, pull.rotating):
            assert stated is None or np.isfinite(stated.at_sensor_nm)
            assert stated is None or stated.u95_sensor_nm >= 0


@settings(max_examples=60)
@given(st.data())
def test_disturbed_pull_is_read_or_refused(data):
    """A real pull with samples lost, repeated, spiked and made NaN."""
    t, y = trace(Shape(), rate_hz=100.0)
    n = len(t)
    keep = np.ones(n, bool)
    for start in data.draw(st.lists(st.integers(0, n - 1), max_size=4)):
        keep[start : start + data.draw(st.integers(1, 150))] = False
    for at in data.draw(st.lists(st.integers(0, n - 1), max_size=6)):
        y[at] = data.draw(st.sampled_from([np.nan, 500.0, -500.0]))
    for pull in read_torque(t[keep], y[keep], sensor=SENSOR).pulls:
        assert pull.breakaway is None or 0 < pull.breakaway.at_sensor_nm < 80
        assert all(isinstance(reason.code, Code) and len(reason.text) > 20 for reason in pull.reasons)


RECORDINGS = [practice.load(name) for name in practice.names()]
SPOIL = ("nan", "stuck", "clock", "scale", "one stamp", "step", "lost", "zeros", "no angle")


@settings(max_examples=150)
@given(st.sampled_from(RECORDINGS), st.lists(st.sampled_from(SPOIL), max_size=4), st.integers(0, 2**32 - 1))
def test_spoilt_recordings_are_read_or_refused(recording, spoils, seed):
    """Recordings of pulls, spoilt in every way at once: no torque below zero, no crash, no hanging."""
    rng = np.random.default_rng(seed)
    t, y = recording.time_s.copy(), recording.torque_nm.copy()
    a = None if recording.angle_deg is None else recording.angle_deg.copy()
    for spoil in spoils:
        i = int(rng.integers(len(t)))
        part = slice(i, i + 1 + int(rng.exponential(len(t) / 8)))
        if spoil == "nan":
            y[part] = np.nan
        elif spoil == "stuck":
            y[part] = y[i]
        elif spoil == "clock":
            t[i:] += rng.normal() * 100
        elif spoil == "scale":
            y[part] *= rng.normal() * 5
        elif spoil == "one stamp":
            t[part] = t[i]
        elif spoil == "step":
            y[i:] += rng.normal() * 50
        elif spoil == "zeros":
            y[part] = 0.0
        elif spoil == "no angle" and a is not None:
            a[part] = np.nan
        elif spoil == "lost" and len(t) > 20:
            keep = np.ones(len(t), bool)
            keep[part] = False
            keep[:2] = True
            t, y, a = t[keep], y[keep], None if a is None else a[keep]
    known = recording.sensor if rng.random() < 0.6 else Sensor(delay_s=0.1)
    for pull in read_torque(t, y, angle_deg=a, sensor=known).pulls:
        assert pull.end_s >= pull.start_s
        for stated in (pull.breakaway, pull.rotating):
            if stated is not None:
                assert stated.at_sensor_nm > 0
                assert 0 <= stated.u95_sensor_nm < np.inf
