"""Borders of what comes in and of the gates: by hand, on either side of each."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.trace import gates
from analysis.trace.breakaway import Peak
from analysis.trace.plateau import Plateau
from analysis.trace.results import Code
from analysis.trace.tail import Tail
from analysis.trace.traces import Intake, Samples, Sensor, spikes
from logger.errors import InputError

NO_NOISE = Sensor()


# ---------------------------------------------------------------------- what comes in
@pytest.mark.parametrize("name", ["capacity_nm", "resolution_nm", "accuracy_percent_of_reading", "gain_u", "delay_s"])
def test_figures_of_a_transducer(name):
    for good in (0.0, 1e6):
        assert getattr(Sensor(**{name: good}), name) == good
    for bad in (-0.001, 1.05e6, math.nan):
        with pytest.raises(InputError, match=name):
            Sensor(**{name: bad})


def test_a_gain_lies_between_a_tenth_and_ten():
    assert [Sensor(gain=gain).gain for gain in (0.1, 10.0)] == [0.1, 10.0]
    for gain in (0.099, 10.1):
        with pytest.raises(InputError, match="gain"):
            Sensor(gain=gain)


@pytest.mark.parametrize(
    ("facts", "relative"),
    [
        ({"accuracy_percent_of_reading": 1.0}, 0.01 / 1.96),
        ({"gain": 1.25, "gain_u": 0.005, "accuracy_percent_of_reading": 1.0}, 0.004),
        ({"gain": 1.25, "accuracy_percent_of_reading": 1.0}, 0.01 / 1.96),
        ({"gain_u": 0.005, "accuracy_percent_of_reading": 1.0}, 0.01 / 1.96),
        ({}, 0.0),
    ],
)
def test_what_all_readings_share(facts, relative):
    assert Sensor(**facts).relative_u == pytest.approx(relative)


def taken(times, torques=None, **facts):
    intake = Intake(Sensor(**facts))
    parts = [intake.feed(times, np.arange(len(times), dtype=float) if torques is None else torques), intake.finish()]
    return intake, np.concatenate([p.time_s for p in parts]), np.concatenate([p.torque_nm for p in parts])


@pytest.mark.parametrize(
    ("times", "out", "shared", "late"),
    [
        ([0, 0.1, 0.2, 0.2, 0.3], [0, 0.1, 0.15, 0.2, 0.3], 1, 0),
        ([0, 0.1, 0.2, 0.2, 0.2, 0.3], [0, 0.1, 0.2 - 0.2 / 3, 0.2 - 0.1 / 3, 0.2, 0.3], 2, 0),
        ([0, 0.1, 1.0, 1.0, 1.1], [0, 0.1, 0.8, 1.0, 1.1], 1, 0),  # after a gap: twice the spacing before
        ([5.0, 5.0, 5.1], [5.0, 5.1], 0, 1),  # nothing says how far apart the very first are
        ([0, 0.1, 0.05, 0.2], [0, 0.1, 0.2], 0, 1),
        ([2.0, 2.1, 1.1, 2.2], [2.0, 2.1, 2.2], 0, 1),  # a second back: late
    ],
)
def test_stamps_that_are_shared_or_late(times, out, shared, late):
    intake, time_s, _ = taken(times)
    assert time_s == pytest.approx(out)
    assert (intake.counts.same_stamp, intake.counts.late, intake.counts.clock_back) == (shared, late, [])


def test_a_clock_that_is_set_back_is_counted_on_and_told_as_written():
    intake, time_s, _ = taken([10.0, 10.1, 9.0, 9.1, 9.2])
    assert time_s == pytest.approx([10.0, 10.1, 10.2, 10.3, 10.4])
    assert intake.counts.clock_back == [9.0]
    assert intake.clock_set
    assert [intake.as_written(t) for t in (10.05, 10.1, 10.3)] == pytest.approx([10.05, 10.1, 9.1])
    assert "set back 1 times (first at 9.000 s)" in intake.counts.problems()[0]


def test_what_is_no_time_and_no_torque_is_excluded_and_counted():
    intake, time_s, torque = taken([0, 1, 2e11, 2, 3], np.array([1.0, 2e6, 5.0, np.nan, 4.0]), gain=2.0)
    assert (time_s.tolist(), torque.tolist()) == ([0, 3], [0.5, 2.0])
    assert (intake.counts.samples, intake.counts.not_a_number, intake.counts.time_not_finite) == (5, 2, 1)
    _, _, whole = taken([0, 1], np.array([0.9e6, -0.9e6]))
    assert whole.tolist() == [0.9e6, -0.9e6]
    assert len(taken([0, 0.99e11])[1]) == 2
    with pytest.raises(InputError, match=r"time \(2,\), torque \(3,\)"):
        Intake(NO_NOISE).feed([0, 1], [1, 2, 3])


@pytest.mark.parametrize(
    ("slope", "height", "found"),
    [(0.0, 0.81, True), (0.0, 0.79, False), (0.5, 4.4, True), (0.5, 4.2, False), (0.0, -0.81, True)],
)
def test_a_spike_stands_out_from_its_neighbours_and_from_the_noise(slope, height, found):
    """More than three times the steps beside it, 2 · 0.5 across it, and eight deviations of 0.1 N·m on top."""
    y = slope * np.arange(12.0)
    y[6] += height
    assert spikes(y, 0.1).tolist() == ([6] if found else [])


@pytest.mark.parametrize(("at", "found"), [(1, False), (2, True), (9, True), (10, False)])
def test_no_spike_at_the_very_ends(at, found):
    y = np.zeros(12)
    y[at] = 5.0
    assert bool(len(spikes(y, 0.1))) is found


# ---------------------------------------------------------------------- gates
@pytest.mark.parametrize(("reading", "cut"), [(99.5, True), (99.4, False), (-99.5, True)])
def test_the_limit_begins_half_a_per_cent_below_the_capacity(reading, cut):
    assert gates.clipped(np.array([reading]), Sensor(capacity_nm=100.0), 0.1).tolist() == [cut]


@pytest.mark.parametrize(
    ("before", "count", "step", "cut"),
    [(66.9, 5, 1.0, True), (67.0, 5, 1.0, False), (66.9, 4, 1.0, False), (66.9, 5, 0.0, False)],
)
def test_five_equal_readings_behind_a_jump_of_three_steps_are_a_limit(before, count, step, cut):
    y = np.array([0.0, before, *[70.0] * count, 69.5])
    marked = gates.clipped(y, NO_NOISE, step)
    assert np.flatnonzero(marked).tolist() == (list(range(2, 2 + count)) if cut else [])
    assert gates.clipped(y[::-1], NO_NOISE, step).any() == cut
    assert gates.clipped(y[2:], NO_NOISE, step).any() == (cut and before > 69)  # what came before it is not known


def test_only_a_run_that_is_long_enough_is_marked():
    y = np.array([0.0, *[70.0] * 5, 0.0, *[70.0] * 2, 0.0])
    assert np.flatnonzero(gates.clipped(y, NO_NOISE, 1.0)).tolist() == [1, 2, 3, 4, 5]


@pytest.mark.parametrize(("step", "lost"), [(2.4, False), (2.7, True)])
def test_a_step_of_two_and_a_half_intervals_is_a_gap(step, lost):
    t = 0.01 * np.cumsum(np.r_[np.ones(500), step, np.ones(500)])
    assert gates.gaps(t).tolist() == ([500] if lost else [])


@pytest.mark.parametrize(("within", "lost"), [(20, False), (50, True)])
def test_late_but_complete_within_a_quarter_of_a_second_is_no_gap(within, lost):
    """Four intervals late; the samples behind come a fifth or a twelfth closer together until all is made up."""
    steps = np.ones(1000)
    steps[500] += 4
    steps[501 : 501 + within] -= 4 / within
    assert bool(len(gates.gaps(0.01 * np.cumsum(steps)))) is lost
    assert [gates.caught_up_in(s) for s in (0.01, 0.1, 0.3, 0.25)] == [25, 3, 1, 1]


@pytest.mark.parametrize(
    ("usual", "longest", "told"), [(0.02, 0.5, False), (0.02, 0.6, True), (0.3, 0.74, False), (0.3, 0.77, True)]
)
def test_a_silence_is_over_half_a_second_and_two_and_a_half_steps(usual, longest, told):
    t = np.cumsum(np.r_[np.full(20, usual), longest, np.full(20, usual)])
    assert bool(gates.silences(t)) is told
    assert not told or f"for {longest:.1f} s" in gates.silences(t)[0]


@pytest.mark.parametrize(("count", "every", "told"), [(101, 0.0101, True), (99, 0.0115, False), (101, 0.0099, False)])
def test_a_reading_that_stood_still_for_a_second_and_a_hundred_samples(count, every, told):
    y = np.r_[np.arange(30.0), np.full(count, 40.0), 50.0 + np.arange(20.0)]
    t = every * np.arange(len(y))
    found = gates.stuck(t, y)
    assert found.start == 30 * told
    assert found.stop == (30 + count) * told
    reasons = [r for r in gates.slip_reasons(t, found, None) if r.code is Code.LOST]
    assert bool(reasons) is told
    assert all(f"for {count * every:.1f} s" in r.text for r in reasons)


@pytest.mark.parametrize(
    ("every", "last", "gone"), [(0.0149, 0.29, True), (0.0151, 0.29, False), (0.0149, 0.3, False), (0.001, -5.0, True)]
)
def test_a_torque_that_is_gone_within_two_samples_was_not_let_go(every, last, gone):
    t = every * np.arange(6)
    x = np.array([1.0, 1.0, 1.0, 0.9, last, 0.0])
    assert bool(gates.fell_at_once(t, x, 2, 1.0)) is gone
    assert not gates.fell_at_once(t, x, 4, 1.0)


def rising(seconds, top=10.0):
    t = 0.01 * np.arange(400)
    return t, np.clip((t - 1.0) / seconds, 0, 1) * top


def a_peak(time_s, top=10.0, step_nm=0.1):
    return Peak(time_s, top, 0.1, round(time_s / 0.01), step_nm)


@pytest.mark.parametrize(("seconds", "told"), [(0.33, ""), (0.25, "in 0.23 s"), (0.1, "in 0.10 s")])
def test_a_ramp_is_timed_from_a_tenth_of_its_peak(seconds, told):
    """Quicker than a quarter of a second, a wheel's inertia is of the size of the torque."""
    said = gates.peak_reasons(*rising(seconds), a_peak(1.0 + seconds), np.zeros(400, bool))
    assert [r.code for r in said] == ([Code.RAMP] if told else [])
    assert all(told in r.text for r in said)


@pytest.mark.parametrize(("step", "unresolved"), [(5.0, False), (5.1, True)])
def test_a_peak_that_is_not_resolved(step, unresolved):
    said = gates.peak_reasons(*rising(1.0), a_peak(2.0, step_nm=step), np.zeros(400, bool))
    assert [r.code for r in said] == ([Code.NOT_RESOLVED] if unresolved else [])


@pytest.mark.parametrize(("step", "words"), [(0.5, ""), (1.0, "pull 2.0 times slower"), (2.5, "pull 5.0 times slower")])
def test_how_much_slower(step, words):
    said = gates.few_readings(a_peak(2.0, step_nm=step))
    assert words in said
    assert bool(words) is bool(said)


@pytest.mark.parametrize(
    ("first", "lost"), [(1.60, False), (1.75, True), (1.97, True), (2.13, True), (2.17, False), (2.5, False)]
)
def test_samples_that_are_missing_at_a_breakaway(first, lost):
    """From 0.3 s before to 0.15 s after the peak at 2 s; ten samples are gone from ``first`` on."""
    t, x = rising(1.0)
    keep = (t < first - 0.005) | (t > first + 0.095)
    t, x = t[keep], x[keep]
    peak = Peak(2.0, 10.0, 0.1, int(np.searchsorted(t, 1.999)), 0.1)
    assert gates.lost_at(t, x, peak) is lost


def test_a_gap_from_which_the_torque_comes_out_high_may_hold_the_breakaway():
    t = 0.01 * np.arange(400)
    for share, lost in ((0.79, False), (0.81, True)):
        x = np.where(t < 1.0, 0.0, 10.0 * (share + (1 - share) * np.clip(t - 1.3, 0, 1)))
        keep = (t < 1.0) | (t > 1.3)
        at = int(np.searchsorted(t[keep], 2.3))
        assert gates.lost_at(t[keep], x[keep], Peak(2.3, 10.0, 0.1, at, 0.1)) is lost


def test_a_tail_gives_samples_by_their_numbers():
    tail = Tail()
    every = np.arange(10_000.0)
    for at in range(0, 10_000, 700):
        part = every[at : at + 700]
        tail.append(Samples(part, -part, part / 2))
        tail.forget(at - 500)
    assert (tail.first, tail.end, len(tail)) == (9300, 10_000, 700)
    found = tail.samples(9400, 9404)
    assert found.time_s.tolist() == [9400, 9401, 9402, 9403]
    assert found.torque_nm.tolist() == [-9400, -9401, -9402, -9403]
    assert found.angle_deg.tolist() == [4700, 4700.5, 4701, 4701.5]
    assert tail.samples(0, 9302).time_s.tolist() == [9300, 9301]
    assert len(tail.samples(9500, 9400)) == 0
    assert tail.time_s().tolist() == every[9300:].tolist()
    tail.append(Samples(every[:0], every[:0], None))
    assert tail.has_angle
    tail.append(Samples(every[:1], every[:1], None))
    assert tail.samples(9999, 10_001).angle_deg is None
    tail.forget(20_000)
    assert (tail.first, len(tail)) == (10_001, 0)


def test_a_limit_at_the_very_end_of_a_pull():
    """What follows is not known; the jump before it tells."""
    assert np.flatnonzero(gates.clipped(np.array([0.0, 60.0, *[70.0] * 5]), NO_NOISE, 1.0)).tolist() == [2, 3, 4, 5, 6]


def a_plateau(**keys):
    none = np.zeros(3, bool)
    return Plateau(**({"start_s": 1.0, "end_s": 5.0, "torque_nm": 30.0, "u_nm": 0.1, "steady_s": 3.0, "max_nm": 31.0,
                       "max_u_nm": 0.1, "steady": none, "uneven": False, "climb": 0.0} | keys))  # fmt: skip


@pytest.mark.parametrize(
    ("keys", "code", "words"),
    [
        ({}, None, ""),
        ({"steady_s": 1.7}, None, ""),  # of 4 s: more than four tenths
        ({"steady_s": 1.5}, Code.UNSTEADY, "yanks or hesitations"),
        ({"uneven": True}, Code.UNSTEADY, "yanks or hesitations"),
        ({"steady_s": 0.45, "start_s": 4.5}, Code.SHORT, "only 0.5 s of steady"),
        ({"steady_s": 0.5, "start_s": 4.5}, None, ""),
        ({"climb": 0.26}, Code.UNSTEADY, "by +26 % while turning"),
        ({"climb": 0.24}, None, ""),
        ({"other_nm": 39.5}, Code.UNSTEADY, "kept to 30 and 39.5"),
        ({"other_nm": 38.5}, None, ""),
    ],
)
def test_what_speaks_against_a_rotating_torque(keys, code, words):
    t = np.linspace(0, 5, 501)
    found = gates.slip_reasons(t, slice(0, 0), a_plateau(**keys))
    assert [reason.code for reason in found] == ([] if code is None else [code])
    assert all(words in reason.text for reason in found)
    (none,) = gates.slip_reasons(t, slice(0, 0), None)
    assert none.code is Code.SHORT
