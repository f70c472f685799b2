"""The small rules of reading a trace at their edges: worked by hand, from tables of control charts, or with numpy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from analysis.to_axle.at_axle import CALIBRATION, Instrument, Level
from analysis.to_axle.fixtures import fixture_from
from analysis.trace import gates, levels, plateau, slipping, smooth
from analysis.trace.averaging import autocorrelation, expected_maximum, highest_of, level_uncertainty, mean_uncertainty
from analysis.trace.breakaway import Peak
from analysis.trace.elastic import _line, find_elastic
from analysis.trace.levels import longest_level
from analysis.trace.plateau import Plateau
from analysis.trace.ramp import fades
from analysis.trace.results import Breakaway, Code, Elastic, Pull, Rotating
from analysis.trace.stated import is_distinct
from analysis.trace.stickslip import find_cycles
from analysis.trace.tail import Tail
from analysis.trace.traces import Intake, Samples, Sensor, spikes
from analysis.trace.turns import Turns
from analysis.verdict.elastic import stiffness_of
from analysis.verdict.judge import AtAxle
from logger.errors import InputError
from logger.header import Lever

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


# ---------------------------------------------------------------------- small filters
@pytest.mark.parametrize("width", [1, 2, 3, 6, 7, 50])
def test_a_moving_mean_is_the_mean_of_what_exists(width):
    y = np.random.default_rng(1).normal(size=11)
    half = width // 2
    wanted = [y[max(i - half, 0) : i + half + 1].mean() for i in range(len(y))]
    assert smooth.moving_mean(y, width) == pytest.approx(wanted)
    assert smooth.moving_mean(y[:2], width) == pytest.approx(
        [y[:2][: 1 + half].mean(), y[:2][max(1 - half, 0) :].mean()]
    )


def test_a_parabola_is_numpys():
    rng = np.random.default_rng(2)
    x, y = np.sort(rng.uniform(2, 5, 12)), rng.normal(3, 1, 12)
    c, b, a = np.polyfit(x, y, 2)
    rest = y - (a + b * x + c * x * x)
    assert smooth.parabola(x, y) == pytest.approx((a, b, c, np.sqrt((rest**2).sum() / 9)))


def test_a_quantile_a_thinning_and_block_means():
    y = np.arange(10.0)[::-1]
    assert [smooth.quantile(y, share) for share in (0.0, 0.25, 0.5, 0.99, 1.0)] == [0, 2, 5, 9, 9]
    assert y[0] == 9, "the values stay as they are"
    assert smooth.block_means(np.arange(8.0), 3).tolist() == [1.0, 4.0]
    assert [len(smooth.thin(np.zeros(n))) for n in (10, 1999, 2000, 3500)] == [10, 1999, 1000, 1167]


def test_values_crowd_where_the_shortest_interval_holds_four_tenths_of_them():
    """The interval of four of ten; of two that are alike the higher one."""
    assert smooth.crowded(np.array([0.0, 5, 10, 15, 20, 20.1, 20.2, 20.3, 30, 40])) == pytest.approx(20.15)
    assert smooth.crowded(np.array([1.0, 1, 1, 1, 2, 3, 4, 4, 4, 4])) == 4
    assert smooth.crowded(np.array([7.0])) == 7


@pytest.mark.parametrize("estimate", [smooth.sample_noise, smooth.least_noise])
def test_noise_is_that_of_second_differences(estimate):
    """White noise of 0.5 on a slope: within what the estimate's own scatter leaves; none without noise."""
    rng = np.random.default_rng(3)
    found = [estimate(3.0 * np.arange(400) + rng.normal(0, 0.5, 400)) for _ in range(200)]
    lower_quartile = estimate is smooth.sample_noise  # of sixteen stretches: a tenth below
    assert np.mean(found) == pytest.approx(0.45 if lower_quartile else 0.5, rel=0.04)
    assert estimate(3.0 * np.arange(100)) == pytest.approx(0.0, abs=1e-9)
    assert estimate(np.array([1.0, 5.0, 2.0])) == 0.0
    assert estimate(np.array([1.0, 5.0, 2.0, 7.0])) > 0


def test_few_values_on_a_ramp_take_the_range_of_three():
    """1.693 deviations on average (d2 of three: Montgomery, from memory): three at 0.0 to 0.1 behind a bent ramp."""
    y = np.array([0.0, 0.05, 0.1, 2.0, 7.0, 9.0, 18.0, 30.0])
    assert smooth.least_noise(y) == pytest.approx(0.1 / 1.693)
    assert smooth.least_noise(np.r_[y, np.linspace(40, 900, 13) ** 1.5]) > 0.1  # more than twenty values


# ---------------------------------------------------------------------- what a stretch says
def test_autocorrelation_by_hand():
    """Of 1, 2, 3: deviations -1, 0, 1; lag 1 is 0, lag 2 is -1/2."""
    assert autocorrelation(np.array([1.0, 2.0, 3.0])).tolist() == pytest.approx([1, 0, -0.5])
    assert len(autocorrelation(np.ones(5))) == 0


def test_the_mean_of_independent_and_of_dependent_readings():
    """Of an autoregressive series of r the variance of the mean is (1 + r)/(1 - r) of the independent one's."""
    rng = np.random.default_rng(4)
    for r in (0.0, 0.5):
        ratios = []
        for _ in range(60):
            x = rng.normal(0, 1, 300)
            for i in range(1, 300):
                x[i] += r * x[i - 1]
            ratios.append(mean_uncertainty(x)[0] ** 2 / (np.var(x) / 300))
        assert np.mean(ratios) == pytest.approx((1 + r) / (1 - r), rel=0.16)
    assert mean_uncertainty(np.array([1.0])) == mean_uncertainty(np.ones(9)) == (0.0, np.inf)
    u, dof = mean_uncertainty(np.array([1.0, 2.0]))  # two that differ say that it is not sure
    assert u > 0.3
    assert dof < 2


def test_the_mean_of_a_short_row_by_hand():
    """1, 3, 2, 2, 1, 3 about 2: ρ = 1, 0, 0, -1/2, ...: pairs 1 and -1/2, so that one pair, two lags, are summed."""
    y = np.array([1.0, 3, 2, 2, 1, 3])
    rho = autocorrelation(y)
    pairs = rho[0] + rho[1], rho[2] + rho[3]
    assert pairs[0] > 0 >= pairs[1]
    factor = (2 * pairs[0] - 1) * (1 + 3 / 6)
    u = math.sqrt(np.var(y) * max(factor, 1.0) / 6)
    assert mean_uncertainty(y)[0] == pytest.approx(u)
    dof = 6 / (2 * 1 + 1)
    assert level_uncertainty(y) == pytest.approx(u * stats.t.ppf(0.975, int(dof)) / 1.96, rel=1e-4)
    assert level_uncertainty(y, 5) == pytest.approx(u * stats.t.ppf(0.975, 5) / 1.96, rel=1e-4)


@pytest.mark.parametrize(
    ("n", "mean", "deviation"), [(1, 0.0, 1.0), (2, 0.56419, 0.8256), (5, 1.16296, 0.6690), (200, 2.74604, 0.3970)]
)
def test_the_greatest_of_normal_values(n, mean, deviation):
    """Expected greatest of n standard normals (tabled: H. L. Harter, from memory); its deviation by integration."""
    z = np.linspace(-8, 8, 4001)
    density = n * stats.norm.pdf(z) * stats.norm.cdf(z) ** (n - 1)
    exact = np.trapezoid(z * density, z)
    assert exact == pytest.approx(mean, abs=2e-4)
    got, spread = expected_maximum(np.full(n, 30.0), 0.5)
    assert got == pytest.approx(30 + 0.5 * exact, abs=1e-3)
    assert spread == pytest.approx(0.5 * math.sqrt(np.trapezoid((z - exact) ** 2 * density, z)), abs=2e-3)
    far = expected_maximum(np.r_[np.full(n, 30.0), np.full(50, 20.0)], 0.5)  # what lies far below does not compete
    assert far == pytest.approx((got, spread), abs=1e-3)


def test_the_highest_torque_is_without_what_noise_adds():
    rng = np.random.default_rng(5)
    found = [highest_of(40 + rng.normal(0, 0.5, 200), 9)[0] for _ in range(60)]
    assert np.mean(found) == pytest.approx(40, abs=0.1)
    assert highest_of(np.linspace(1, 3, 20), 5) == (pytest.approx(3.0), pytest.approx(0.0, abs=1e-6))
    few = np.array([1.0, 4, 2, 2, 3, 1, 2])
    assert highest_of(few, 3) == (4.0, pytest.approx(few.std()))


# ---------------------------------------------------------------------- the rise, the top, the levels
def pace(k):
    """Give a rise along t^(1/k): straight for 1, ever slower for more."""
    t = np.arange(0, 4.0, 0.005)
    return t, 40 * (t / 4) ** (1 / k)


@pytest.mark.parametrize(("k", "fading"), [(1.0, False), (1.3, False), (3.0, False), (3.5, True)])
def test_a_hand_that_fades_takes_ever_longer(k, fading):
    """Along t^(1/k) a share is reached after its k-th power: the last part takes 1.45 (3) or 1.59 (3.5) of the bend."""
    assert fades(*pace(k), 40.0) is fading


@pytest.mark.parametrize(("held", "fading"), [(0.5, True), (4.5, True), (5.5, False)])
def test_whoever_turns_on_did_not_fade(held, fading):
    """An approach with a time constant of a second; held on for longer than it took to come up, it turned."""
    t = np.arange(0, 3.5 + held, 0.005)
    x = 40 * (1 - np.exp(-t)) / (1 - math.exp(-3.5))
    assert fades(t, np.minimum(x, 40.0), 40.0) is fading


@pytest.mark.parametrize(
    ("bend", "last", "end", "fading"),
    [
        (15.0, 20.0, 179.0, True),
        (15.0, 20.0, 180.0, False),  # held for twice its rise: it turned on
        (9.5, 6.7, 100.0, True),  # paces of 50, 63.3 and 95.7 s: 1.27 and 1.51 times
        (9.3, 8.0, 100.0, False),  # 1.24 times
        (9.5, 6.6, 100.0, False),  # 1.49 times
    ],
)
def test_paces_and_turning_on_at_their_borders(bend, last, end, fading):
    """Readings too far apart to be smoothed: 50 % after 10 s, 70 % after 20 s, 85 % after the bend, then 90, 97 %."""
    t = 100 + np.array([0, 10, 20, 20 + bend, 25 + bend, 25 + bend + last, end])
    assert fades(t, np.array([0, 0.5, 0.7, 0.85, 0.9, 0.97, 0.98]), 1.0) is fading


def release(stay, fall, up=1.0):
    t = np.arange(0, 1 + up + stay + fall + 0.5, 0.002)
    x = np.interp(t, [0.5, 0.5 + up, 0.5 + up + stay, 0.5 + up + stay + fall], [0, 40, 30, 0])
    return t, x, int(np.argmax(x))


@pytest.mark.parametrize(
    ("stay", "fall", "up", "stays"),
    [(0.6, 0.2, 1.0, True), (0.12, 0.05, 1.0, False), (0.6, 2.0, 1.0, False), (0.6, 0.2, 0.2, False)],
)
def test_a_slip_stays_up_longer_than_its_release_takes(stay, fall, up, stays):
    """From 95 to 50 % against the way from 50 to 30 %: twice as long, 0.2 s at least, and no knock of 0.2 s."""
    t, x, at = release(stay, fall, up)
    assert slipping.stays_up(t, x, at) is stays


@pytest.mark.parametrize(("held", "cut"), [(0.15, False), (0.25, True)])
def test_a_straight_ramp_that_is_cut_off_holds(held, cut):
    t = np.arange(0, 1.0 + held, 0.005)
    x = np.minimum(40 * t, 40.0)
    assert slipping.cut_off(t, x, 40.0) is cut
    assert not slipping.cut_off(t, x, 50.0)


def test_one_level_or_several():
    steady = np.ones(1000, bool)
    one = np.linspace(40, 44, 1000)  # 9 % from the 5th to the 95th in a hundred
    assert longest_level(one, steady, 20)[0].all()
    assert longest_level(one, steady, 20)[1] == 0
    two = np.r_[np.full(600, 40.0), np.full(400, 50.0)]
    held, other = longest_level(two, steady, 20)
    assert held[:580].all()
    assert not held[630:].any()
    assert other == pytest.approx(50, abs=2.5)  # the middle of a band of twelve per cent
    short, none = longest_level(np.r_[np.full(750, 40.0), np.full(250, 50.0)], steady, 20)
    assert short[:730].all()
    assert none == 0
    passing = 40 + 10 * np.sign(np.sin(np.arange(1000) / 4))
    assert not longest_level(passing, steady, 3)[0].any()


def rows(*stretches):
    """Give ``count`` readings of each level, one after the other, all of them steady."""
    x = np.concatenate([np.full(count, level) for level, count in stretches])
    return x, np.ones(len(x), bool)


@pytest.mark.parametrize(
    ("stretches", "held", "other"),
    [
        (((100.0, 60), (150.0, 30)), 60, 156.0),  # a band is 12 wide; half as long is a rival
        (((100.0, 60), (150.0, 29)), 60, 0.0),
        (((100.0, 50), (112.0, 10), (150.0, 29)), 60, 0.0),  # both ends of the band are of it
        (((100.0, 50), (112.1, 10), (150.0, 25)), 50, 156.0),
        (((100.0, 60), (130.0, 35), (50.0, 35)), 60, 56.0),  # the farther of two
        (((100.0, 30), (150.0, 5), (100.0, 30)), 60, 0.0),  # half of it on end
        (((100.0, 10), (150.0, 5), (100.0, 50)), 60, 0.0),
        (((100.0, 29), (150.0, 5), (100.0, 29), (150.0, 5), (100.0, 2)), 0, 0.0),
        (((-100.0, 60), (-150.0, 30)), 60, -144.0),
        (((100.0, 40), (115.0, 14), (150.0, 46)), 46, 106.9),  # the median, 115, says how wide a band is
    ],
)
def test_the_level_that_lasted_longest_by_count(stretches, held, other):
    marked, far = longest_level(*rows(*stretches), 1)
    assert marked.sum() == held
    assert far == pytest.approx(other)


@pytest.mark.parametrize(("low", "high", "one"), [(92.5, 107.5, False), (92.6, 107.5, True), (92.5, 107.4, True)])
def test_one_level_spreads_by_less_than_fifteen_hundredths(low, high, one):
    """Of 200 values the 11th and the 191st, against the 101st."""
    ordered = np.r_[np.zeros(10), low, np.full(179, 100.0), high, np.full(9, 200.0)]
    assert levels._keeps_one(ordered) == one
    assert levels._keeps_one(np.empty(0))


def test_what_only_shakes_is_one_level():
    """To and fro by 20 N·m; the mean of three lies 6.7 N·m off."""
    marked, other = longest_level(100 + 20 * np.resize([1.0, -1.0], 99), np.ones(99, bool), 3)
    assert marked.all()
    assert other == 0.0


@pytest.mark.parametrize(("share", "told"), [(1.047, False), (1.049, True)])
def test_a_peak_is_distinct_from_five_per_cent_on(share, told):
    assert is_distinct(40 * share, 40.0) is told


# ---------------------------------------------------------------------- stick-slip
def saw(period, swing, level=40.0, cycles=6, fall=0.1):
    t = np.arange(0, cycles * period, 0.002)
    phase = (t / period) % 1
    return t, level - swing / 2 + swing * np.where(phase < 1 - fall, phase / (1 - fall), (1 - phase) / fall)


@pytest.mark.parametrize(
    ("period", "swing", "cycles", "found"),
    [
        (0.5, 4.0, 6, True),
        (0.5, 1.5, 6, False),
        (0.5, 4.0, 3, False),
        (0.1, 4.0, 12, False),
        (3.5, 4.0, 6, True),
        (4.5, 4.0, 6, False),
    ],
)
def test_stick_slip_swings_and_repeats(period, swing, cycles, found):
    """A saw-tooth of 10 % of the level; 4 % is ripple; two cycles show nothing; faster or slower is none."""
    of = find_cycles(*saw(period, swing, cycles=cycles))
    assert (of is not None) is found
    if of is not None:
        assert of.frequency_hz == pytest.approx(1 / period, rel=0.03)
        assert of.period_s == pytest.approx(period, rel=0.03)
        assert of.peak_to_peak_nm == pytest.approx(swing, rel=0.12)
        assert np.diff(of.falls_s) == pytest.approx(np.full(len(of.falls_s) - 1, period), rel=0.05)
        assert (of.start_s, of.end_s) == (of.falls_s[0], of.falls_s[-1])


@pytest.mark.parametrize(("fall", "found"), [(0.2, True), (0.5, False), (0.8, False)])
def test_slow_cycles_break_quicker_than_they_stick(fall, found):
    assert (find_cycles(*saw(2.0, 4.0, fall=fall)) is not None) is found


def test_periods_that_differ_are_a_clumsy_hand():
    parts, at = [], 0.0
    for period in (0.3, 0.4, 0.4, 1.2, 0.5, 1.2, 0.8, 1.2):
        t, x = saw(period, 4.0, cycles=1)
        parts.append((t + at, x))
        at += period
    assert find_cycles(np.concatenate([p[0] for p in parts]), np.concatenate([p[1] for p in parts])) is None


# ---------------------------------------------------------------------- the wheel's angle
def wound(stiffness, play, step=0.0, bend=0.0):
    """Give a ramp to 50 N·m whose wheel takes up its play and then winds up along a line."""
    torque = np.linspace(0, 50, 201)
    angle = play + torque / stiffness + bend * torque**2
    return torque, np.round(angle / step) * step if step else np.r_[0.0, angle[1:]]


@pytest.mark.parametrize("way", [1, -1])
def test_the_elastic_line_by_hand(way):
    """10 N·m a degree, 2° of play, slipping at 50 N·m: 5° of wind-up; drag of 10 N·m hides 1° (rectangular)."""
    torque, angle = wound(10.0, 2.0)
    found = find_elastic(torque, way * angle, 50.0, 45.0, 0.02, 0.01)
    assert found.stiffness_nm_deg == pytest.approx(10)
    assert found.wind_up_deg == pytest.approx(4.5)
    assert found.play_deg == pytest.approx(2.0)
    assert found.meets_deg == pytest.approx(way * 2.0)
    assert found.way == way
    step = 0.25 / 10  # of the angle, between two readings
    moved = step / 0.01 * 0.03
    wanted = math.hypot(1 / math.sqrt(3), moved / math.sqrt(3), step / math.sqrt(6))
    assert found.play_u95_deg == pytest.approx(1.96 * wanted, rel=1e-3)
    over = torque[(torque > 0.3 * 50 - 0.1) & (torque < 0.7 * 50 + 0.1)]
    assert found.stiffness_u95_nm_deg == pytest.approx(1.96 * step / math.sqrt(6) / np.ptp(over) * 100, rel=0.02)
    slip = find_elastic(torque, way * angle, 50.0, None, 0.02, 0.01)
    assert slip.wind_up_deg == pytest.approx(5.0)
    unsure = find_elastic(torque, way * angle, 50.0, 45.0, 0.02, 0.01, 3.0)
    assert unsure.wind_up_u95_deg**2 - found.wind_up_u95_deg**2 == pytest.approx((1.96 * 0.3) ** 2, rel=1e-3)


def test_a_bent_line_pays_half_of_what_its_halves_differ():
    """Slope 0.1 + 2 b T°/N·m: lower and upper half lie 10 N·m apart about 25 N·m."""
    b = 0.0005
    found = find_elastic(*wound(10.0, 2.0, bend=b), 50.0, None, 0.0, 0.01)
    slope = 0.1 + 2 * b * 25
    assert 1 / found.stiffness_nm_deg == pytest.approx(slope, rel=0.01)
    u = found.stiffness_u95_nm_deg / 1.96 * slope**2
    assert u >= 2 * b * 10 / 2 / math.sqrt(3) * 0.97


def test_no_elastic_line():
    torque, angle = wound(10.0, 2.0)
    assert find_elastic(torque, np.zeros(201), 50.0, None, 0.0, 0.01) is None  # it did not turn
    assert find_elastic(torque, np.where(torque > 20, np.nan, angle), 50.0, None, 0.0, 0.01) is None
    assert find_elastic(torque[torque < 34], angle[torque < 34], 50.0, None, 0.0, 0.01) is None  # not so far up
    assert find_elastic(*wound(10.0, 2.0, step=1.5), 50.0, None, 0.0, 0.01) is None  # too coarse an angle
    for every, readings in ((14, False), (9, True)):
        found = find_elastic(torque[::every], angle[::every], 50.0, None, 0.0, 0.01)
        assert (found is not None) is readings


def test_stiffness_at_the_axle():
    """A cross-bar that makes 1.127 of what is read: 10 N·m a degree become 11.27, calibration ± 0.5 % of it."""
    fixture = fixture_from(Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, angle_deg=0))
    at = AtAxle(fixture, Instrument(0.005, 1.0), Level())
    pull = Pull(0.0, 5.0, 1, 0.0, None, None, elastic=Elastic(10.0, 0.4, 4.0, 0.1, 1.0, 0.5, 1.0, 1))
    found = stiffness_of(pull, at)
    factor = 1 + 57.15 / 450
    assert found.value == pytest.approx(10 * factor)
    assert found.row("elastic line").contribution == pytest.approx(factor * 0.4 / 1.96, rel=1e-4)
    assert found.row(CALIBRATION).contribution == pytest.approx(0.005 * 10 * factor)
    assert found.row("stud radius").sensitivity == pytest.approx(10 / 0.45)
    assert stiffness_of(pull, None) is None
    assert stiffness_of(Pull(0.0, 5.0, 1, 0.0, None, None), at) is None


def test_how_far_the_wheel_had_turned():
    """Half a turn a second from 1 s on; breakaway at 2 s, rotating from 3 to 5 s."""
    t = np.arange(0, 8, 0.1)
    slip, level = Breakaway(2.0, 40.0, 0.1, 0.2, True, 0.1), Rotating(3.0, 5.0, 35.0, 0.1, 0.2, 36.0, 2.0, 0.1, 0.1)
    for sign in (1, -1):
        turns = Turns()
        turns.feed(t[:30], sign * 180 * np.clip(t[:30] - 1, 0, None))
        turns.feed(t[30:], None)
        turns.feed(t[30:], np.where(t[30:] == t[40], np.nan, sign * 180 * (t[30:] - 1)))
        turned = turns.of(Pull(0.5, 6.0, 1, 0.0, slip, level)).turned
        assert turned.to_breakaway_rad == pytest.approx(math.pi)
        assert turned.rotating_rad == pytest.approx(2 * math.pi)
        assert turned.to_rotating_rad == pytest.approx(3 * math.pi)
    bare = turns.of(Pull(0.5, 6.0, 1, 0.0, None, None)).turned
    assert (bare.to_breakaway_rad, bare.rotating_rad, bare.to_rotating_rad) == (None, None, None)
    assert Turns().of(Pull(0.5, 6.0, 1, 0.0, slip, level)).turned is None


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


def test_a_ripple_on_the_way_is_no_cycle():
    """A saw-tooth a second, on it a ripple of three tenths of its swing from end to end: one cycle a second."""
    t, x = saw(1.0, 4.0, cycles=8)
    found = find_cycles(t, x + 0.6 * np.sin(2 * np.pi * 5.3 * t))
    assert found.frequency_hz == pytest.approx(1.0, rel=0.05)


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


@pytest.mark.parametrize("count", [8, 16])
def test_a_climb_is_seen_from_eight_readings_on(count):
    """Of a straight line from 10 N·m up by 1 each: between the middles of the first and the last of eight parts."""
    x = 10.0 + np.arange(count)
    assert plateau._climb(x) == pytest.approx((x[-count // 8 :].mean() - x[: count // 8].mean()) / x.mean())
    assert plateau._climb(-x[::-1]) == pytest.approx(plateau._climb(x))
    assert plateau._climb(x[:7]) == 0.0


@pytest.mark.parametrize(("bent", "climbs"), [(0.09, True), (0.11, False)])
def test_a_climb_is_straight_within_a_tenth_of_it(bent, climbs):
    """Up by 7 N·m over eight parts, off the line by turns (root mean square, with what the turns add to the slope)."""
    turns = np.array([1.0, -1, -1, 1, 1, -1, -1, 1])  # neither a mean nor a slope
    assert (plateau._climb(100 + np.arange(8) + 7 * bent * turns) > 0) is climbs


def test_eight_values_tell_their_noise():
    """Second differences of ± 1: 4 in magnitude; of that the 0.6745-th part over √6 is their noise."""
    values = 30 + (-1.0) ** np.arange(8)
    assert highest_of(values[:7], 3) == (31.0, pytest.approx(values[:7].std()))
    assert highest_of(values, 3)[0] < 31.0 - 1.0


def test_what_the_bend_of_an_elastic_line_adds_by_hand():
    torque, angle = wound(10.0, 2.0, bend=0.0005)
    found = find_elastic(torque, angle, 50.0, None, 0.0, 0.01)
    part = (torque > 15 - 1e-9) & (torque < 35.2)
    x, y = torque[part], angle[part]
    lower = x < np.median(x)
    bend = abs(np.polyfit(x[~lower], y[~lower], 1)[0] - np.polyfit(x[lower], y[lower], 1)[0]) / 2
    step = np.abs(np.diff(y)).min() / math.sqrt(6) / np.ptp(x)
    slope, _, scatter, _ = _line(x, y)
    wanted = math.hypot(scatter, bend / math.sqrt(3), step)
    assert found.stiffness_nm_deg == pytest.approx(1 / slope, rel=1e-3)
    assert found.stiffness_u95_nm_deg == pytest.approx(1.96 * wanted / slope**2, rel=5e-3)


def test_cycles_are_counted_from_fall_to_fall():
    t, x = saw(1.0, 4.0)
    assert np.asarray(find_cycles(t, x).falls_s) % 1 == pytest.approx(0.95, abs=0.05)
