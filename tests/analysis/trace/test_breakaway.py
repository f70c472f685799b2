"""The first peak that counts, and what it reads."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.breakaway import find_peak
from analysis.trace.reading import read_torque
from analysis.trace.smooth import parabola, quantile
from analysis.trace.traces import Sensor
from tests.analysis.made import Shape, trace

EXPECTED_MAXIMUM = {2: 0.56419, 5: 1.16296, 10: 1.53875, 20: 1.86748, 50: 2.24907, 100: 2.50759}
"""Expected largest of n standard normal values (published-value rows 9.4, from memory)."""


def pulled(shape=None, rate=500.0, noise=0.0, seed=0, phase=0.0):
    shape = shape or Shape()
    t = np.arange(0.0, shape.ramp_s + shape.turning_s, 1 / rate) + phase / rate
    rng = np.random.default_rng(seed)
    return t, shape.torque_nm(t) + noise * rng.standard_normal(len(t))


def read(t, x, noise=0.001, slip=40.0, onset=None):
    return find_peak(t, x, slip, noise, onset)


def test_sharp_peak():
    peak = read(*pulled())
    assert peak.torque_nm == pytest.approx(46.0, rel=0.002)
    assert peak.time_s == pytest.approx(1.5, abs=0.005)


def test_later_yank_is_not_the_breakaway():
    t, x = pulled()
    x += 20 * np.exp(-(((t - 3.5) / 0.05) ** 2))
    assert read(t, x).torque_nm == pytest.approx(46.0, rel=0.002)


def test_dips_of_tremor_on_the_ramp_are_not_the_breakaway():
    t, x = pulled()
    x += 2.5 * np.sin(2 * np.pi * 9 * t) * (t < 1.45)
    assert read(t, x).time_s == pytest.approx(1.5, abs=0.06)


def test_kink_where_a_weak_pack_gives_way():
    """At 85 % the weak pack slips through the lash; the ramp goes on after a tenth of a second."""
    t, x = pulled()
    x -= 3.0 * np.exp(-(((t - 1.3) / 0.03) ** 2))
    assert read(t, x).torque_nm == pytest.approx(46.0, rel=0.003)


class TestRivals:
    """Where the torque cannot tell which of two tops began the slip, the interval reaches both."""

    @staticmethod
    def two_tops(first, second, apart_s, between=39.0):
        t = np.arange(0, 5, 0.002)
        middle = 1.5 + apart_s / 2
        x = np.interp(t, [0, 1.5, middle, 1.5 + apart_s, 1.6 + apart_s, 5], [0, first, between, second, 40, 40])
        return read(t, x)

    def test_swing_that_passes_the_break_late(self):
        peak = self.two_tops(46.0, 50.0, 0.25)
        assert peak.torque_nm == pytest.approx(50.0, rel=0.003)
        assert 46.2 > peak.torque_nm - 1.96 * np.hypot(peak.u_nm, 0.0045 * 46) > 45.0

    def test_a_little_higher_and_late(self):
        peak = self.two_tops(46.0, 47.0, 0.25)
        assert peak.torque_nm == pytest.approx(46.0, rel=0.003)
        assert 0.4 < peak.u_nm < 0.6

    def test_soon_after_it_is_tremor_or_the_break(self):
        peak = self.two_tops(46.0, 50.0, 0.1)
        assert peak.torque_nm == pytest.approx(50.0, rel=0.003)
        assert 46.2 > peak.torque_nm - 1.96 * np.hypot(peak.u_nm, 0.0045 * 46) > 45.0

    def test_what_is_passed_over_gives_way_to_the_next_top_and_not_to_a_swing_long_after(self):
        t = np.arange(0, 5, 0.002)
        x = np.interp(t, [0, 1.5, 1.55, 1.75, 1.85, 2.15, 2.25, 5], [0, 37, 34, 46, 38, 47, 40, 40])
        assert read(t, x).time_s == pytest.approx(1.75, abs=0.005)

    def test_below_the_slip_level_it_cannot_be_the_break(self):
        assert self.two_tops(39.8, 50.0, 0.25).u_nm < 0.1

    def test_little_above_it_it_may_be(self):
        """A weak break that sets lever and wheel ringing, which then goes higher: seen at 1.027 of the slip level."""
        peak = self.two_tops(41.1, 48.0, 0.25, between=36.5)
        assert peak.torque_nm == pytest.approx(48.0, rel=0.003)
        assert 40.0 < peak.torque_nm - 1.96 * np.hypot(peak.u_nm, 0.0045 * 48) < 41.3
        tremor = self.two_tops(41.1, 48.0, 0.25, between=37.5)
        assert tremor.u_nm < 0.1


def test_first_break_of_stick_slip_counts():
    t = np.arange(0, 8, 0.002)
    saw = 30 + 14 * ((t - 2.0) % 0.8) / 0.8
    x = np.where(t < 2.0, 23 * t, saw)
    assert read(t, x, slip=37.0).time_s == pytest.approx(2.0, abs=0.01)


def test_angle_says_when_the_slip_began():
    """Held below the slip for a while: by torque alone a peak, by the angle not."""
    t = np.arange(0, 6, 0.002)
    x = np.interp(t, [0, 1, 1.05, 3, 4, 4.05, 6], [0, 41, 38, 38, 46, 40, 40])
    assert read(t, x).torque_nm == pytest.approx(41.0, rel=0.01)
    assert read(t, x, onset=4.0).torque_nm == pytest.approx(46.0, rel=0.003)


def test_never_near_the_slip_level():
    t = np.arange(0, 1, 0.01)
    assert read(t, 5 * t, slip=40.0) is None


def test_a_torque_that_jumps_up_from_below_its_level_has_its_peak_at_the_top():
    t = np.arange(0, 2, 0.002)
    assert read(t, np.where(t < 0.5, -0.01, 43.0)).torque_nm == pytest.approx(43.0)


def test_maximum_of_noise_is_not_believed():
    """The plain maximum reads 2 to 3 deviations high (rows 9.4); the fitted top does not."""
    noise = 0.4
    shape = Shape(breakaway_nm=46.0, rotating_nm=40.0, ramp_s=2.5, fall_s=0.3)
    plain, ours = [], []
    for seed in range(60):
        t, x = pulled(shape, rate=1000.0, noise=noise, seed=seed)
        plain.append(x.max() - 46.0)
        ours.append(read(t, x, noise=noise).torque_nm - 46.0)
    assert np.mean(plain) > 1.5 * noise
    assert abs(np.mean(ours)) < 0.6 * noise


@pytest.mark.published("expected maximum of n normal values", rows=("9.4",), status="MEM")
@pytest.mark.parametrize(("n", "expected"), EXPECTED_MAXIMUM.items())
def test_expected_maximum_of_noise(n, expected):
    """The size of that upward bias, from memory, beside simulation."""
    rng = np.random.default_rng(n)
    maxima = rng.standard_normal((200_000 // n, n)).max(axis=1)
    assert maxima.mean() == pytest.approx(expected, abs=4 * maxima.std() / np.sqrt(len(maxima)))


@pytest.mark.parametrize("rate", [10.0, 15.0, 20.0, 25.0, 50.0])
def test_sparse_readings_are_not_read_low(rate):
    """Few readings fall on the peak: the highest is low by half a step of the ramp on average, ours is not."""
    shape = Shape(ramp_s=2.0, fall_s=0.08)
    highest, ours, inside = [], [], []
    for phase in np.linspace(0, 1, 24, endpoint=False):
        t, x = pulled(shape, rate=rate, phase=phase)
        peak = read(t, x, noise=0.01)
        highest.append(x.max() / 46.0 - 1)
        ours.append(peak.torque_nm / 46.0 - 1)
        inside.append(abs(peak.torque_nm - 46.0) < 2 * np.hypot(peak.u_nm, 0.0045 * 46.0))
    assert np.mean(highest) < -0.3 * 46.0 / 2.0 / rate / 46.0 / 2
    assert abs(np.mean(ours)) < 0.65 * abs(np.mean(highest))
    assert np.mean(inside) >= 0.9


def test_after_a_dip_the_rise_from_there_is_what_may_be_missing():
    """Gripped again between two readings of a display: the ramp before the dip says nothing of the way to the top."""
    t = np.arange(0, 6, 0.2)
    x = np.interp(t, [0, 1.6, 1.8, 2.0, 2.2, 2.4, 6], [0, 40.0, 39.6, 39.3, 42.0, 38.5, 38.0])
    peak = read(t, x, slip=38.0)
    assert peak.time_s == pytest.approx(2.2)
    assert peak.u_method_nm == pytest.approx(0.6 * 0.5 * (42.0 - 39.3))
    x[9:11] = 40.5, 41.3  # no dip: the ramp runs out
    assert read(t, x, slip=38.0).u_method_nm < 0.5


def test_parabola_through_known_points():
    x = np.linspace(-1, 1, 9)
    a, b, c, rest = parabola(x, 3 - 2 * x - 5 * x**2)
    assert (a, b, c) == pytest.approx((3, -2, -5))
    assert rest == pytest.approx(0, abs=1e-12)


def test_quantile_beside_numpy():
    values = np.random.default_rng(2).standard_normal(1001)
    for share in (0.03, 0.5, 0.95):
        assert quantile(values, share) == pytest.approx(np.quantile(values, share), abs=0.02)


class TestKnownDelay:
    """An averaging converter: 0.4 s of averaging is late by 0.2 s and flattens the tip."""

    def averaged(self, rate=50.0):
        fine = np.arange(0, 5.5, 0.001)
        x = np.convolve(Shape(ramp_s=2.0, fall_s=0.1).torque_nm(fine), np.ones(400) / 400)[: len(fine)]
        every = round(1000 / rate)
        return fine[::every], x[::every]

    @pytest.mark.parametrize("rate", [10.0, 50.0, 200.0])
    def test_peak_is_put_right(self, rate):
        t, x = self.averaged(rate)
        late = find_peak(t, x, 40.0, 0.01)
        right = find_peak(t, x, 40.0, 0.01, delay_s=0.2)
        assert late.torque_nm < 0.96 * 46
        assert abs(right.torque_nm - 46) < 0.6 * abs(late.torque_nm - 46)
        assert abs(right.torque_nm - 46) < 2 * np.hypot(right.u_nm, 0.0045 * 46)
        assert abs(right.time_s - 2.0) < abs(late.time_s - 2.0)

    def test_short_delay_changes_nothing_to_speak_of(self):
        t, x = pulled()
        assert find_peak(t, x, 40.0, 0.001, delay_s=0.001).torque_nm == pytest.approx(read(t, x).torque_nm, rel=1e-3)

    def test_no_ramp_to_judge_by(self):
        t, x = pulled()
        part = t > 1.45
        assert find_peak(t[part], x[part], 40.0, 0.001, delay_s=0.2).torque_nm == pytest.approx(46.0, rel=0.005)


def test_a_filter_that_is_very_late_is_no_fault():
    """The time of a peak is put right by the delay; what came after it in the readings is looked for where they are."""
    t, y = trace(Shape(breakaway_nm=46.0, rotating_nm=30.0, turning_s=0.5), rate_hz=100.0, ripple=0.1)
    for delay_s in (0.1, 0.3, 1.0):
        (pull,) = read_torque(t, y, sensor=Sensor(delay_s=delay_s, delay_s_u=0.01)).pulls
        assert pull.breakaway is not None
