"""Corrections by hand, on traces of a few readings."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import numpy as np
import pytest

from analysis.trace.results import Breakaway, Pull, Rotating
from analysis.trace.stated import BREAKAWAY_U, ROTATING_U
from analysis.verdict.corrected import CalibratedTrace, apply_corrections, widened
from logger.header import Correction

NAN = math.nan


def corrected(values, every_s=1.0, pull=None, *, noise=0.0, relative=0.0, more=(), start=1.0, **keys):
    """Correct a pull that begins after a second, on readings ``every_s`` apart; give it and what was not in order."""
    pull = pull or Pull(1.0, 9.0, 1, 0.0, None, None)
    correction = Correction(pull_start_s=start, at=datetime(2026, 3, 4, tzinfo=UTC), reason="x", **keys)
    source = CalibratedTrace(every_s * np.arange(len(values)), np.asarray(values, float), noise, relative, *more)
    (found,), problems = apply_corrections([pull], [correction], source)
    return found, problems


RISING = [0.0, 10.0, 20.0, 30.0, 40.0]


@pytest.mark.parametrize(("start", "known"), [(0.75, True), (1.25, True), (0.74, False), (1.26, False)])
def test_a_pull_is_known_by_its_start_to_a_quarter_of_a_second(start, known):
    found, problems = corrected(RISING, start=start, exclude=True)
    assert bool(found.left_out) is known
    assert bool(problems) is not known


@pytest.mark.parametrize(("at", "torque"), [(0.01, 0.1), (0.5, 5.0), (3.5, 35.0), (4.0, 40.0)])
def test_a_breakaway_set_by_hand_is_what_the_trace_shows_there(at, torque):
    """Between two readings on the straight line; noise, method and sensor in quadrature, 95 %."""
    found, _ = corrected(RISING, noise=0.3, relative=0.01, breakaway_s=at)
    peak = found.pull.breakaway
    assert (peak.time_s, peak.at_sensor_nm, peak.distinct_peak) == (at, pytest.approx(torque), True)
    assert peak.u95_sensor_nm == pytest.approx(1.96 * math.hypot(0.3, BREAKAWAY_U * torque, 0.01 * torque), rel=1e-4)
    wider, _ = corrected(RISING, noise=0.3, relative=0.01, more=(0.5,), breakaway_s=at)
    widened = wider.pull.breakaway.u95_sensor_nm**2 - peak.u95_sensor_nm**2
    assert widened == pytest.approx((1.96 * 0.5) ** 2, rel=1e-4)


@pytest.mark.parametrize(
    ("at", "words"),
    [(-0.01, "lies outside"), (4.01, "lies outside"), (0.0, "against the pull's direction")],
)
def test_no_breakaway_outside_or_without_torque(at, words):
    found, (problem,) = corrected(RISING, breakaway_s=at)
    assert found.pull.breakaway is None
    assert words in problem
    level = Pull(1.0, 9.0, 1, -1.0, None, None)
    assert at != 0 or corrected(RISING, pull=level, breakaway_s=at)[0].pull.breakaway.at_sensor_nm == 1.0


@pytest.mark.parametrize("values", [[], [7.0], [7.0, 7.0]])
def test_a_breakaway_in_a_trace_of_hardly_a_reading(values):
    found, problems = corrected(values, breakaway_s=0.0)
    assert (found.pull.breakaway is not None) is bool(values)
    assert len(problems) == (not values)


@pytest.mark.parametrize("distinct", [True, False])
def test_whether_the_peak_is_distinct_stays_as_it_was(distinct):
    pull = Pull(1.0, 9.0, 1, 0.0, Breakaway(2.0, 20.0, 0.1, 0.2, distinct, 0.1), None)
    assert corrected(RISING, pull=pull, breakaway_s=3.0)[0].pull.breakaway.distinct_peak is distinct


@pytest.mark.parametrize(
    ("start", "end", "mean"), [(2.0, 4.0, 30.0), (1.0, 4.0, 25.0), (2.0, 3.0, None), (3.0, 3.0, None), (4.0, 2.0, None)]
)
def test_a_stretch_holds_three_readings_at_least(start, end, mean):
    """Both ends are of it."""
    found, problems = corrected(RISING, rotating_start_s=start, rotating_end_s=end)
    if mean is None:
        assert found.pull.rotating is None
        assert "there is nothing between" in problems[0]
        return
    assert found.pull.rotating.at_sensor_nm == pytest.approx(mean)
    assert found.pull.rotating.steady_s == pytest.approx(end - start)


@pytest.mark.parametrize(
    ("values", "mean"),
    [([NAN, 10.0, 30.0], 20.0), ([NAN, NAN, 30.0], None), ([0.5, 0.5, 0.5], 0.5), ([1.0, -2.0, 1.0], None)],
)
def test_a_stretch_of_two_readings_that_are_there(values, mean):
    found, problems = corrected(values, rotating_start_s=0.0, rotating_end_s=2.0)
    assert (found.pull.rotating and found.pull.rotating.at_sensor_nm) == (None if mean is None else pytest.approx(mean))
    assert len(problems) == (mean is None)


@pytest.mark.parametrize(
    ("values", "every_s", "highest"),
    [
        ([10.0, 30.0, 20.0], 1.0, 30.0),  # slower than its means: the readings themselves
        ([10.0, 30.0, 20.0], 0.01, 20.0),  # 0.02 s are two readings, (10 + 30)/2
        ([10.0, 30.0, NAN], 0.005, 20.0),  # two readings in 0.01 s: as many as a mean takes
        ([10.0, 30.0, 20.0, 40.0, 45.0], 0.01, 30.0),
    ],
)
def test_the_highest_is_one_of_means_over_two_hundredths_of_a_second(values, every_s, highest):
    found, _ = corrected(values, every_s, rotating_start_s=0.0, rotating_end_s=every_s * (len(values) - 1))
    assert found.pull.rotating.max_nm == pytest.approx(highest)


def test_one_end_of_a_stretch_stays_as_it_was():
    pull = Pull(1.0, 9.0, 1, 0.0, None, Rotating(1.0, 3.0, 20.0, 0.1, 0.2, 30.0, 2.0, 0.1, 0.1))
    later = corrected(RISING, pull=pull, rotating_end_s=4.0)[0].pull.rotating
    assert (later.start_s, later.end_s, later.at_sensor_nm) == (1.0, 4.0, pytest.approx(25.0))
    sooner = corrected(RISING, pull=pull, rotating_start_s=0.0)[0].pull.rotating
    assert (sooner.start_s, sooner.end_s, sooner.at_sensor_nm) == (0.0, 3.0, pytest.approx(15.0))


def test_the_nearest_of_several_pulls_is_meant():
    pulls = [Pull(start, start + 3, 1, 0.0, None, None) for start in (1.0, 1.2, 20.0)]
    for at, place in ((1.0, 0), (1.09, 0), (1.15, 1), (19.9, 2)):
        correction = Correction(pull_start_s=at, at=datetime(2026, 3, 4, tzinfo=UTC), reason="x", exclude=True)
        found, problems = apply_corrections(pulls, [correction], CalibratedTrace(np.arange(3.0), np.zeros(3), 0.0, 0.0))
        assert not problems
        assert [i for i, one in enumerate(found) if one.left_out] == [place]


@pytest.mark.parametrize(("keys", "span"), [({"start_s": 0.5}, (0.5, 4.0)), ({"end_s": 3.5}, (1.0, 3.5))])
def test_one_end_of_a_pull_stays_as_it_was(keys, span):
    found, problems = corrected(RISING, 0.5, Pull(1.0, 4.0, 1, 0.0, None, None), **keys)
    assert not problems
    assert (found.pull.start_s, found.pull.end_s) == span


def test_an_accuracy_of_full_scale_widens_both():
    """0.3 N·m of each, with 1.96 · 0.5 N·m."""
    pull = Pull(
        1.0, 9.0, 1, 0.0, Breakaway(2.0, 20.0, 0.1, 0.3, True, 0.1), Rotating(3.0, 4.0, 20.0, 0.1, 0.3, 21.0, 1.0)
    )
    wide = widened(pull, 0.5)
    for found in (wide.breakaway, wide.rotating):
        assert found.u95_sensor_nm == pytest.approx(math.hypot(0.3, 1.96 * 0.5), rel=1e-4)
    assert widened(pull, 0.0) == pull
    bare = Pull(1.0, 9.0, 1, 0.0, None, None)
    assert widened(bare, 0.5) == bare


def test_a_stretch_counts_from_the_hand_off_level_in_the_pulls_direction():
    """-25 N·m on average, from -5 N·m: 20 N·m counter-clockwise."""
    pull = Pull(1.0, 9.0, -1, -5.0, None, None)
    found, _ = corrected([-value for value in RISING], pull=pull, rotating_start_s=1.0, rotating_end_s=4.0)
    assert found.pull.rotating.at_sensor_nm == pytest.approx(20.0)
    assert found.pull.rotating.u_method_nm == pytest.approx(ROTATING_U * 20.0)
    peak, _ = corrected([-value for value in RISING], pull=pull, breakaway_s=3.0)
    assert peak.pull.breakaway.at_sensor_nm == pytest.approx(25.0)
    assert peak.pull.breakaway.u_method_nm == pytest.approx(BREAKAWAY_U * 25.0)
