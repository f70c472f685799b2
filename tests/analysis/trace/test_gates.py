"""What speaks against a pull: found where it is, not where it is not, and said with what to do next."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace import gates
from analysis.trace.breakaway import Peak
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from tests.analysis.made import Shape

T = np.arange(0, 5.65, 0.005)
X = Shape().torque_nm(T)
NONE = np.zeros(len(T), bool)


def peak(time_s=1.5, step_nm=0.1):
    return Peak(time_s, 46.0, 0.1, int(time_s / 0.005), step_nm)


def codes(reasons):
    return [reason.code for reason in reasons]


class TestClipped:
    def test_at_capacity(self):
        marked = gates.clipped(np.array([0.0, 99.0, 99.6, 100.0, 100.0, 50.0]), Sensor(capacity_nm=100.0), 0.1)
        np.testing.assert_array_equal(marked, [False, False, True, True, True, False])

    def test_capacity_is_read_with_the_gain(self):
        assert gates.clipped(np.array([98.1]), Sensor(capacity_nm=100.0, gain=1.02), 0.1).all()

    def test_flat_top_without_known_capacity(self):
        y = np.concatenate([np.linspace(0, 70, 50), np.full(20, 71.3), np.linspace(66, 0, 50)])
        assert gates.clipped(y, Sensor(), 0.1).sum() == 20

    def test_coarse_reading_that_repeats_is_not_clipped(self):
        y = np.array([0, 10, 20, 30, 40, 40.5, 40.5, 40.5, 40.5, 40.5, 40.5, 40, 40, 20, 0])
        assert not gates.clipped(y, Sensor(), 0.5).any()

    def test_empty(self):
        assert len(gates.clipped(np.empty(0), Sensor(), 0.1)) == 0


class TestGaps:
    def test_none(self):
        assert len(gates.gaps(T)) == 0
        assert len(gates.gaps(T[:1])) == 0

    def test_where(self):
        keep = np.ones(len(T), bool)
        keep[300:310] = False
        np.testing.assert_array_equal(gates.gaps(T[keep]), [300])

    def test_jitter_is_no_gap(self):
        rng = np.random.default_rng(1)
        assert len(gates.gaps(T + rng.uniform(0, 0.004, len(T)))) == 0


def test_what_stood_still():
    """The very same reading for over a second, a hundred times and more; a coarse gauge may repeat itself for less."""
    y = np.concatenate([np.arange(50.0), np.full(200, 50.0), np.arange(50.0)])
    assert gates.stuck(np.arange(300) / 150, y) == slice(50, 250)
    assert gates.stuck(np.arange(300) / 250, y).stop == 0
    assert gates.stuck(np.empty(0), np.empty(0)).stop == 0


def test_fell_at_once():
    x = np.array([40.0, 40, 40, 1, 0, 0])
    assert gates.fell_at_once(np.arange(6) / 500, x, 2, 40.0)
    assert not gates.fell_at_once(np.arange(6) / 10, x, 2, 40.0)  # ten readings a second cannot tell
    assert not gates.fell_at_once(np.arange(6) / 500, np.array([40.0, 40, 40, 38, 35, 30]), 2, 40.0)


class TestPeakReasons:
    def test_nothing(self):
        assert gates.peak_reasons(T, X, peak(), NONE) == []
        assert gates.peak_reasons(T, X, None, NONE) == []

    def test_jerk(self):
        quick = Shape(ramp_s=0.1).torque_nm(T)
        (reason,) = gates.peak_reasons(T, quick, Peak(0.1, 46.0, 0.1, 20, 0.1), NONE)
        assert reason.code is Code.RAMP
        assert "two seconds" in reason.text

    def test_not_resolved(self):
        assert gates.peak_reasons(T, X, peak(step_nm=4.6), NONE) == []
        assert "between two readings" in gates.few_readings(peak(step_nm=4.6))
        assert gates.few_readings(peak(step_nm=0.1)) == ""
        assert "2.0 times slower" in gates.few_readings(peak(step_nm=4.6))
        (reason,) = gates.peak_reasons(T, X, peak(step_nm=26.0), NONE)
        assert reason.code is Code.NOT_RESOLVED

    @pytest.mark.parametrize(("at", "said"), [(1.4, True), (1.55, True), (0.5, False), (3.0, False)])
    def test_lost_samples_count_near_the_peak_only(self, at, said):
        keep = np.abs(T - at) > 0.02
        index = int(np.searchsorted(T[keep], 1.5))
        reasons = gates.peak_reasons(T[keep], X[keep], Peak(1.5, 46.0, 0.1, index, 0.1), NONE[keep])
        assert (Code.LOST in codes(reasons)) is said

    @pytest.mark.parametrize(("first", "last", "said"), [(1.2, 3.0, True), (0.2, 0.6, False)])
    def test_breakaway_that_may_lie_in_an_earlier_gap(self, first, last, said):
        """A peak found in what came after: the true one may be among what is missing."""
        keep = (first > T) | (last < T)
        index = int(np.searchsorted(T[keep], 3.5))
        reasons = gates.peak_reasons(T[keep], X[keep], Peak(3.5, 40.0, 0.1, index, 0.1), NONE[keep])
        assert (Code.LOST in codes(reasons)) is said

    def test_clipped(self):
        cut = NONE.copy()
        cut[298:303] = True
        (reason,) = gates.peak_reasons(T, X, peak(), cut)
        assert reason.code is Code.CLIPPED
        assert "5 readings" in reason.text


def test_every_reason_says_what_to_do():
    known = [value for value in vars(gates).values() if isinstance(value, gates.Reason)]
    assert len(known) >= 6
    for reason in known:
        assert ":" in reason.text
        assert len(reason.text) > 40


def test_readings_that_are_all_alike_show_no_limit():
    """Without a jump before or after them."""
    assert not gates.clipped(np.full(9, 70.0), Sensor(), 0.01).any()
