"""The transducer's imperfections are what their parameters say."""

from dataclasses import replace

import numpy as np
import pytest
from scipy import signal

from logger.virtual.sensor import SensorFault, SensorModel, Status, deliver, low_pass, play

STEP = 5e-4
IDEAL = SensorModel(rate_hz=1000.0, resolution_nm=0.0, noise_nm=0.0, bandwidth_hz=None, capacity_nm=1e9)


def sent(sensor, torque, seed=1):
    return deliver(sensor, np.asarray(torque, float), STEP, np.random.default_rng(seed))


def ramp(seconds=4.0, rate=10.0):
    return np.arange(round(seconds / STEP)) * STEP * rate


def test_ideal_sensor_delivers_the_torque_at_its_instants():
    got = sent(IDEAL, ramp())
    np.testing.assert_allclose(got.torque_nm, 10.0 * got.time_s, atol=1e-9)
    np.testing.assert_array_equal(got.counter, np.arange(got.counter.size))
    assert np.diff(got.time_s) == pytest.approx(1e-3, abs=1e-12)


def test_zero_drift_and_gain():
    got = sent(replace(IDEAL, gain=1.01, zero_nm=0.5, drift_nm_min=6.0), np.full(40000, 100.0))
    assert got.torque_nm[0] == pytest.approx(101.5, abs=0.01)
    assert got.torque_nm[-1] - got.torque_nm[0] == pytest.approx(6.0 * got.time_s[-1] / 60, abs=0.01)
    np.testing.assert_allclose(got.torque_nm - got.zero_nm, 101.0)


@pytest.mark.parametrize("order", [1, 2, 4])
def test_filter_is_3_db_down_at_its_bandwidth_and_as_late_as_it_says(order):
    time = np.arange(20000) * STEP
    sensor = replace(IDEAL, bandwidth_hz=20.0, order=order)
    wave = low_pass(sensor, np.sin(2 * np.pi * 20.0 * time), STEP)[4000:-200]
    assert np.abs(wave).max() == pytest.approx(10 ** (-3.0103 / 20), rel=2e-3)
    late = low_pass(sensor, 10.0 * time, STEP)
    assert time[10000] - late[10000] / 10.0 == pytest.approx(sensor.group_delay_s, rel=1e-3)


def test_filter_against_scipy():
    """One first-order stage against scipy.signal's bilinear filter, on a step."""
    step = np.r_[np.zeros(2000), np.ones(6000)]
    ours = low_pass(replace(IDEAL, bandwidth_hz=10.0, order=1), step, STEP)
    b, a = signal.butter(1, 10.0, fs=1 / STEP)
    theirs = signal.lfilter(b, a, step)
    assert np.abs(ours - theirs)[100:].max() < 0.02
    assert ours[-1] == pytest.approx(1.0, abs=1e-4)
    assert np.abs(ours[:1900]).max() < 0.02


def test_averaging_delays_by_half_its_length():
    sensor = replace(IDEAL, average_s=0.4)
    late = low_pass(sensor, ramp(), STEP)
    assert 10.0 * 4000 * STEP - late[4000] == pytest.approx(10.0 * 0.2, rel=1e-3)
    assert sensor.group_delay_s == pytest.approx(0.2)


def test_noise_and_resolution():
    got = sent(replace(IDEAL, noise_nm=0.2, resolution_nm=0.05), np.full(40000, 7.03))
    steps = got.torque_nm / 0.05
    np.testing.assert_allclose(steps, np.round(steps), atol=1e-6)
    assert got.torque_nm.std() == pytest.approx(0.2, rel=0.03)
    assert got.torque_nm.mean() == pytest.approx(7.03, abs=0.01)


def test_hysteresis_loop_has_its_width():
    up_down = np.r_[np.linspace(0, 50, 3000), np.linspace(50, 0, 3000)]
    got = play(up_down, 0.4)
    gap = got[5999 - 1500] - got[1500]
    assert 0.15 < gap < 0.45
    assert play(up_down, 0.0) is up_down


@pytest.mark.parametrize(("overload", "shown"), [("limit", 50.0), ("mark", None), ("zeros", 0.0)])
def test_beyond_capacity(overload, shown):
    got = sent(replace(IDEAL, capacity_nm=50.0, overload=overload), ramp(8.0))
    over = got.time_s > 5.001
    if shown is None:
        assert np.isnan(got.torque_nm[over]).all()
    else:
        assert got.torque_nm[over] == pytest.approx(shown)
    assert got.over[over].all()
    assert not got.over[~over].all()
    told = (got.status & Status.OVERLOAD) > 0
    assert told[over].all() == (overload != "zeros")  # scales that send zeros do not tell


def test_signless_gauge_leaves_out_the_sign():
    got = sent(replace(IDEAL, signless=True), -ramp())
    assert got.torque_nm.min() >= 0
    assert got.torque_nm[-1] == pytest.approx(40.0, abs=0.03)


def test_clock_and_jitter():
    got = sent(replace(IDEAL, clock_ppm=1000.0), np.zeros(200000))
    assert (got.time_s[-1] - got.time_s[0]) / (got.counter[-1] - got.counter[0]) == pytest.approx(1e-3 / 1.001)
    shaken = sent(replace(IDEAL, jitter_s=1e-4), np.zeros(40000))
    assert np.diff(shaken.time_s).std() == pytest.approx(1e-4 * 2**0.5, rel=0.05)
    assert np.all(np.diff(shaken.time_s) >= 0)


def test_faults():
    faults = (
        SensorFault("spike", 0.5, size_nm=60.0),
        SensorFault("gap", 1.0, 0.1),
        SensorFault("stuck", 1.5, 0.2),
        SensorFault("error", 2.0, 0.05),
        SensorFault("step", 2.5, size_nm=3.0),
        SensorFault("re-zero", 3.0),
    )
    got = sent(replace(IDEAL, faults=faults), ramp())
    near = lambda t: int(np.searchsorted(got.time_s, t))  # noqa: E731
    assert got.torque_nm[near(0.5)] == pytest.approx(65.0, abs=0.1)
    assert got.torque_nm[near(0.5) + 1] == pytest.approx(5.0, abs=0.1)
    assert np.diff(got.counter).max() == pytest.approx(101, abs=1)
    assert np.ptp(got.torque_nm[near(1.501) : near(1.699)]) == 0
    assert np.isnan(got.torque_nm[near(2.02)])
    assert got.status[near(2.02)] == Status.ERROR
    assert got.torque_nm[near(2.6)] == pytest.approx(29.0, abs=0.1)
    assert got.torque_nm[near(3.001)] == pytest.approx(0.0, abs=0.1)
    assert got.zero_nm[near(3.5)] == pytest.approx(-30.0, abs=0.1)


def test_between_keeps_a_part():
    got = sent(IDEAL, ramp()).between(1.0, 2.0)
    assert 1.0 <= got.time_s[0] < got.time_s[-1] < 2.0
    assert got.torque_nm.size == got.over.size == got.counter.size
