"""Stick-slip: told from ripple and from a clumsy hand."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace import stickslip
from analysis.trace.reading import read_torque
from analysis.trace.stickslip import find_cycles
from analysis.trace.traces import Sensor

T = np.arange(4000) / 500


def saw(frequency=2.0, low=30.0, high=50.0):
    return low + (high - low) * ((T * frequency) % 1)


def test_sawtooth():
    cycles = find_cycles(T, saw())
    assert cycles.frequency_hz == pytest.approx(2.0, rel=0.01)
    assert cycles.peak_to_peak_nm == pytest.approx(20.0, rel=0.12)
    assert np.diff(cycles.falls_s) == pytest.approx(0.5, abs=0.02)


@pytest.mark.parametrize(
    "torque",
    [
        40 + 0.5 * np.sin(2 * np.pi * 2 * T),  # too little
        40 + 6 * np.sin(2 * np.pi * 10 * T),  # tremor or the wheel's swing
        40 + 8 * np.sin(2 * np.pi * T / 7),  # waves of the pack
        np.full(len(T), 40.0),
        np.zeros(len(T)),
    ],
)
def test_other_unevenness(torque):
    assert find_cycles(T, torque) is None


def test_irregular_hand():
    rng = np.random.default_rng(4)
    yanks = np.cumsum(rng.exponential(1.0, 12))
    x = 40 + sum(12 * np.exp(-(((T - at) / 0.08) ** 2)) for at in yanks)
    assert find_cycles(T, x) is None


def test_too_few_samples():
    assert find_cycles(T[:5], saw()[:5]) is None


def test_pull_reports_it():
    """First break, time average over whole cycles, frequency, peak to peak and chatter index of one pull."""
    t = np.arange(0, 14, 0.004)
    since = t - 4.0
    x = np.where(since < 0, 50 * (t - 2) / 2, 34 + 16 * ((since * 1.5) % 1))
    y = 0.5 + np.where((t > 2) & (t < 11), x, 0.0) + 0.02 * np.random.default_rng(1).standard_normal(len(t))
    (pull,) = read_torque(t, y, sensor=Sensor(capacity_nm=200.0)).pulls
    assert pull.breakaway.at_sensor_nm == pytest.approx(50.0, rel=0.01)
    assert pull.breakaway.time_s == pytest.approx(4.0, abs=0.02)
    assert pull.rotating.at_sensor_nm == pytest.approx(42.0, rel=0.01)
    assert pull.stick_slip.frequency_hz == pytest.approx(1.5, rel=0.02)
    assert pull.stick_slip.peak_to_peak_nm == pytest.approx(16.0, rel=0.1)
    assert pull.stick_slip.chatter_index == pytest.approx(16 / 42, rel=0.1)


@pytest.mark.parametrize(
    ("times", "breaks"),
    [
        ((0, 10, 16, 26), False),  # down in six tenths of the time that it takes up
        ((0, 10, 15.9, 25.9), True),
        ((-0.2, 0, 0.15, 0.35), False),  # ... or in 0.15 s
        ((-0.2, 0, 0.14, 0.34), True),
    ],
)
def test_what_sticks_breaks_quicker_than_it_rises(times, breaks):
    """Up through both bounds, down and up again."""
    t, x = np.array(times, float), np.array([0.0, 10.0, 0.0, 10.0])
    assert stickslip._breaks(t, x, 3.0, 7.0) is breaks
    assert stickslip._breaks(t[:2], x[:2], 3.0, 7.0) is False  # it never fell
    assert stickslip._breaks(t[1:3], x[1:3], 3.0, 7.0) is False  # it never rose
    assert stickslip._falls(t, x, 3.0, 7.0).tolist() == [t[2]]
