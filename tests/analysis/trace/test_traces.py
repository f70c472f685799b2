"""Samples as they arrive: times put in order, values excluded and counted, the same however a stream is cut."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.trace.traces import Intake, Sensor, spikes
from logger.errors import InputError


def taken(t, y, *, gain=None, cuts=()):
    intake = Intake(Sensor(gain=gain))
    edges = [0, *sorted(cuts), len(t)]
    parts = [intake.feed(t[a:b], y[a:b]) for a, b in itertools.pairwise(edges)] + [intake.finish()]
    return np.concatenate([p.time_s for p in parts]), np.concatenate([p.torque_nm for p in parts]), intake.counts


class TestIntake:
    def test_empty(self):
        t, y, counts = taken(np.empty(0), np.empty(0))
        assert len(t) == len(y) == 0
        assert counts.problems() == []

    def test_plain_samples_pass_unchanged(self):
        t, y = np.arange(50) / 10, np.arange(50.0)
        out_t, out_y, counts = taken(t, y)
        np.testing.assert_array_equal(out_t, t)
        np.testing.assert_array_equal(out_y, y)
        assert counts.problems() == []

    def test_gain_is_divided_out(self):
        _, y, _ = taken(np.arange(4.0), np.array([1.02, 2.04, 3.06, 4.08]), gain=1.02)
        np.testing.assert_allclose(y, [1, 2, 3, 4])

    def test_values_that_are_none_are_counted(self):
        t, _, counts = taken(np.arange(5.0), np.array([1, np.nan, 3, np.inf, 5]))
        np.testing.assert_array_equal(t, [0, 2, 4])
        assert counts.not_a_number == 2
        assert "2 of 5 torque values are not numbers" in counts.problems()[0]

    def test_times_that_are_none_are_counted(self):
        t, _, counts = taken(np.array([0, np.nan, 2, 3.0]), np.ones(4))
        np.testing.assert_array_equal(t, [0, 2, 3])
        assert counts.time_not_finite == 1

    def test_packets_with_one_stamp_are_spread(self):
        """Four samples per packet, stamped when the packet came: they belong evenly into the time before."""
        t = np.repeat(np.arange(1, 6) * 0.4, 4)
        out, _, counts = taken(t, np.arange(20.0))
        np.testing.assert_allclose(np.diff(out), 0.1)
        assert out[-1] == pytest.approx(2.0)
        assert counts.same_stamp == 12  # three of each packet after the first, of which only the last has a time
        assert "share a time stamp" in counts.problems()[0]

    def test_a_gap_does_not_stretch_the_packet_after_it(self):
        t = np.repeat([0.4, 0.8, 1.2, 11.2, 11.6], 4)
        out, _, _ = taken(t, np.arange(20.0))
        after = out[out > 5]
        assert after[0] > 10.0

    def test_late_and_repeated_samples_are_left_out(self):
        t, y, counts = taken(np.array([0, 1, 2, 1.5, 3.0]), np.arange(5.0))
        np.testing.assert_array_equal(t, [0, 1, 2, 3])
        np.testing.assert_array_equal(y, [0, 1, 2, 4])
        assert counts.late == 1

    def test_clock_set_back(self):
        t = np.concatenate([np.arange(100.0, 105.0), np.arange(40.0, 45.0)])
        out, _, counts = taken(t, np.ones(10))
        np.testing.assert_allclose(np.diff(out), 1.0)
        assert counts.clock_back == [40.0]
        assert "set back" in counts.problems()[0]

    def test_columns_must_match(self):
        with pytest.raises(InputError, match="one length"):
            Intake(Sensor()).feed([1.0, 2.0], [1.0])
        with pytest.raises(InputError, match="angle"):
            Intake(Sensor()).feed([1.0], [1.0], [1.0, 2.0])

    @given(
        st.lists(st.sampled_from([0.0, 0.1, 0.1, 0.1, 2.0, -0.05, -5.0]), min_size=1, max_size=60),
        st.lists(st.integers(0, 60), max_size=6),
    )
    def test_same_however_it_is_cut(self, steps, cuts):
        t = np.cumsum(steps)
        y = np.arange(len(t), dtype=float)
        whole_t, whole_y, whole = taken(t, y)
        cut_t, cut_y, cut = taken(t, y, cuts=[c for c in cuts if c <= len(t)])
        np.testing.assert_array_equal(cut_t, whole_t)
        np.testing.assert_array_equal(cut_y, whole_y)
        assert cut.problems() == whole.problems()
        assert (np.diff(whole_t) > 0).all()


class TestSpikes:
    def test_single_value_that_stands_out(self):
        y = 40 + 0.02 * np.random.default_rng(1).standard_normal(200)
        y[77] = 95.0
        np.testing.assert_array_equal(spikes(y, 0.02), [77])

    def test_sharp_peak_of_a_slow_reading_is_kept(self):
        """At ten readings a second a true breakaway is one sample wide, but its flanks are as steep as itself."""
        y = np.array([0, 0, 8, 16, 24, 32, 40, 46, 40.5, 40, 40.2, 39.9, 40, 40.1])
        assert len(spikes(y, 0.05)) == 0

    def test_step_is_kept(self):
        y = np.repeat([0.0, 30.0], 20)
        assert len(spikes(y, 0.01)) == 0

    def test_short(self):
        assert len(spikes(np.array([1.0, 50.0, 1.0]), 0.1)) == 0


class TestSensor:
    @pytest.mark.parametrize(
        "facts", [{"capacity_nm": -1.0}, {"gain": 0.0}, {"gain": float("nan")}, {"resolution_nm": float("inf")}]
    )
    def test_absurd_facts_are_refused(self, facts):
        with pytest.raises(InputError):
            Sensor(**facts)

    def test_accuracy_is_a_95_percent_interval(self):
        assert Sensor(accuracy_percent_of_reading=1.96).relative_u == pytest.approx(0.01)

    def test_a_known_gain_replaces_the_accuracy(self):
        assert Sensor(accuracy_percent_of_reading=2.0, gain=1.01, gain_u=0.00101).relative_u == pytest.approx(0.001)
