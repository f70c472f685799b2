"""Peak, level before, level after and turning of made traces whose answers follow by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.trace.angle import Slip, describe_turning, find_slip, plausible_angle
from analysis.trace.breakaway import find_peak
from analysis.trace.handoff import find_handoff
from analysis.trace.loads import Load, lands
from analysis.trace.plateau import Plateau, find_plateau, together


# ---------------------------------------------------------------------- the peak
def sparse(ramp: float = 1.0, after: float = 45.0, rise: float = 1.0):
    """Give ten readings a second that rise by ``ramp`` each, the last of them by ``rise``, to 46 N·m, and stay."""
    up = 46 - rise - ramp * np.arange(40)[::-1]
    x = np.r_[up[up > 0], 46.0, np.full(20, after)]
    return 0.1 * np.arange(len(x)), x


@pytest.mark.parametrize(
    ("ramp", "after", "missed", "u"),
    [
        (1.0, 45.0, 0.5, 0.25),  # half a step; a quarter of the drop beside it, (1 + 1)/2
        (1.0, 41.0, 0.75, 0.75),  # the drop of (1 + 5)/2 weighs more than the step
        (8.0, 41.0, 46 * 0.04, 0.75),  # no more than half a per cent and 35 % a second: 4 %
    ],
)
def test_a_peak_between_sparse_readings_is_under_read(ramp, after, missed, u):
    t, x = sparse(ramp, after)
    found = find_peak(t, x, 45.0, 0.0)
    assert found.torque_nm == pytest.approx(46 + missed)
    assert found.index == int(np.argmax(x))
    assert found.time_s == pytest.approx(t[found.index])
    assert found.u_nm == pytest.approx(u)


def test_a_round_peak_is_read_through_its_parabola():
    """46 - 80 (t - 2)² between samples of 0.01 s: the top lies between two of them."""
    t = np.arange(0, 4, 0.01) + 0.004
    x = np.where(t < 2, np.maximum(46 - 80 * (t - 2) ** 2, 20 * t), np.maximum(46 - 80 * (t - 2) ** 2, 40.0))
    x = np.minimum(x, 46 - 80 * (t - 2) ** 2 * (np.abs(t - 2) < 0.2))
    found = find_peak(t, x, 40.0, 0.01)
    assert found.torque_nm == pytest.approx(46.0, abs=0.02)
    assert found.time_s == pytest.approx(2.0, abs=0.011)


def test_a_filter_that_is_late_is_put_right():
    """Up by 10 N·m/s to 46 N·m, 0.1 s late: a tip reads low by 0.6 of rate times delay, known to a quarter of it."""
    t = np.arange(0, 8, 0.01)
    x = np.interp(t, [0, 4.6, 4.8, 8], [0, 46, 40, 40])
    plain, late = find_peak(t, x, 40.0, 0.01), find_peak(t, x, 40.0, 0.01, delay_s=0.1, delay_s_u=0.02)
    assert late.torque_nm - plain.torque_nm == pytest.approx(0.6 * 10 * 0.1, rel=0.02)
    assert plain.time_s - late.time_s == pytest.approx(0.1)
    u = math.hypot(0.25 * 10 * 0.1, 0.6 * 10 * 0.02)
    assert math.sqrt(late.u_method_nm**2 - plain.u_method_nm**2) == pytest.approx(u, rel=0.02)


@pytest.mark.parametrize(("again_s", "at"), [(0.1, 1), (0.6, 0)])
def test_a_peak_that_is_soon_exceeded_was_a_tremor_on_the_ramp(again_s, at):
    t = np.arange(0, 8, 0.005)
    tops = (3.0, 3.0 + again_s)
    x = np.interp(t, [0, tops[0], tops[0] + again_s / 2, tops[1], tops[1] + 0.3, 8], [0, 44, 42, 46, 40, 40])
    found = find_peak(t, x, 40.0, 0.01)
    assert found.time_s == pytest.approx(tops[at], abs=0.03)
    assert found.torque_nm == pytest.approx((44, 46)[at], abs=0.4)


def test_nothing_reached_is_no_peak():
    t = np.arange(0, 4, 0.01)
    assert find_peak(t, 10 * t / 4, 40.0, 0.01) is None
    assert find_peak(t, 10 * t, 0.0, 0.01) is None
    assert find_peak(t, np.minimum(10 * t, 30), 30.0, 0.01, onset_s=9.0) is None


# ---------------------------------------------------------------------- the wheel's angle
def turning(speed, torque_of, seconds=12.0):
    t = np.arange(0, seconds, 0.01)
    angle = np.cumsum(speed(t)) * 0.01
    return t, torque_of(angle, speed(t)), np.degrees(angle)


@pytest.mark.parametrize("way", [1, -1])
def test_waves_of_the_wheel_and_of_the_slip(way):
    """30 N·m, 2 N·m once a turn of the wheel, 1 N·m every second turn, 1.5 rad/s."""
    t, x, angle = turning(lambda t: np.full(len(t), 1.5), lambda a, _: 30 + 2 * np.cos(a) + np.sin(a / 2))
    found = describe_turning(t, x, way * angle, np.ones(len(t), bool), 0.1)
    assert found.speed_rpm == pytest.approx(1.5 * 30 / math.pi, rel=1e-3)
    assert found.turned_deg == pytest.approx(math.degrees(1.5 * 11.75), rel=1e-3)
    assert found.whole_turns == 2
    assert found.mean_over_turns_nm == pytest.approx(30, abs=0.01)
    assert found.stiffness_nm_rad == pytest.approx(1 / math.radians(0.1))
    assert (found.slope_nms, found.levels) == (None, ())
    assert found.acceleration_nm == pytest.approx(0.0, abs=1e-3)


@pytest.mark.parametrize(("seconds", "turns"), [(3.9, 0), (4.6, 1), (8.9, 2)])
def test_whole_turns_are_needed_for_a_mean_over_them(seconds, turns):
    """At 1.5 rad/s a turn takes 4.19 s, less the quarter of a second that the means cost."""
    t, x, angle = turning(lambda t: np.full(len(t), 1.5), lambda a, _: 30 + 2 * np.cos(a), seconds)
    found = describe_turning(t, x, angle, np.ones(len(t), bool), None)
    assert found.whole_turns == turns
    assert (found.mean_over_turns_nm is not None) is (turns > 0)
    assert found.stiffness_nm_rad is None
    few = np.arange(len(t)) < 170  # six steps of 0.25 s and a part
    assert describe_turning(t, x, angle, few, None) is not None
    assert describe_turning(t, x, angle, np.arange(len(t)) < 149, None) is None


def test_two_speeds_are_two_levels_and_a_slope():
    """20 N·m and 5 N·m per rad/s, at 1 and at 2 rad/s."""
    t, x, angle = turning(lambda t: np.where(t < 6, 1.0, 2.0), lambda _, w: 20 + 5 * w)
    found = describe_turning(t, x, angle, np.ones(len(t), bool), None)
    assert found.slope_nms == pytest.approx(5, rel=0.02)
    assert found.slope_u95_nms < 1
    assert [(level.speed_rad_s, level.torque_nm) for level in found.levels] == [
        (pytest.approx(1, rel=1e-3), pytest.approx(25)), (pytest.approx(2, rel=1e-3), pytest.approx(30)),
    ]  # fmt: skip
    one, two = found.levels
    assert one.start_s < 0.3
    assert one.end_s < 6 < two.start_s < 6.8
    assert two.end_s > 11.5
    near = turning(lambda t: np.where(t < 6, 1.0, 1.14), lambda _, w: 20 + 5 * w)
    assert describe_turning(*near, np.ones(len(t), bool), None).levels == ()
    apart = turning(lambda t: np.where(t < 6, 1.0, 1.17), lambda _, w: 20 + 5 * w)
    assert len(describe_turning(*apart, np.ones(len(t), bool), None).levels) == 2


@pytest.mark.parametrize("way", [1, -1])
@pytest.mark.parametrize(("turned", "slips"), [(20.0, True), (0.5, False)])
def test_slip_is_what_goes_beyond_the_wind_up(way, turned, slips):
    """Up to 40 N·m in two seconds while the wheel winds up by 0.1° per N·m; then it turns on for two seconds."""
    t = np.arange(0, 4, 0.01)
    x = np.minimum(20 * t, 40.0)
    angle = 0.1 * x + turned * np.clip(t - 2, 0, None) / 2
    found = find_slip(t, x, way * angle, 40.0)
    assert found.wind_up_deg_per_nm == pytest.approx(0.1)
    assert found.turned_deg == pytest.approx(turned * 1.99 / 2 + 0.1 * (40 - 34.2), abs=0.11)
    assert (found.onset_s is not None) is slips
    if slips:
        assert found.onset_s == pytest.approx(2 + 0.3 / (turned / 2), abs=0.011)  # 0.3° beyond the line
    assert find_slip(t, np.zeros(400), angle, 40.0) == Slip(0.0, None, None)
    assert find_slip(t[::30], x[::30], angle[::30], 40.0).wind_up_deg_per_nm is None  # three readings on the line


@pytest.mark.parametrize(
    ("angle", "usable"),
    [([0, 1], True), ([0, 359_999], True), ([0, 360_001], False), ([1, 1], False), ([0, np.nan], False)],
)
def test_angles_that_a_hand_can_turn(angle, usable):
    assert plausible_angle(np.array(angle, float)) is usable


# ---------------------------------------------------------------------- before the ramp
def rest(before=2.0, level=1.0, drift=0.0, ramp=20.0):
    t = np.arange(0, before + 2, 0.01)
    return t, level + drift * np.minimum(t, before) + ramp * np.clip(t - before, 0, None)


@pytest.mark.parametrize("level", [-3.0, 0.0, 4.0])
def test_the_level_before_a_ramp_is_where_it_lay_still(level):
    t, x = rest(level=level)
    found = find_handoff(t, x, 0.0, 40.0, 0.01)
    assert found.level_nm == pytest.approx(level, abs=0.02)
    assert found.u_nm < 0.05
    assert t[found.foot] == pytest.approx(2.0 + 0.4 / 20, abs=0.03)  # a hundredth of the pull above it
    assert not found.unrested
    assert found.other_nm is None
    assert found.rested_s == pytest.approx(2.0, abs=0.15)
    assert found.drift_nm_s == pytest.approx(0.0, abs=1e-9)


def test_a_zero_that_drifts_counts_as_it_was_last_and_says_how_fast():
    """0.1 N·m a second on the way up from 1 N·m; the last 0.6 s are averaged."""
    t, x = rest(before=4.0, drift=0.1)
    found = find_handoff(t, x, 1.0, 40.0, 0.005)
    assert found.drift_nm_s == pytest.approx(0.1, rel=0.02)
    assert found.level_nm == pytest.approx(1.4 - 0.1 * 0.35, abs=0.03)
    assert found.u_nm == pytest.approx(0.06 / math.sqrt(12), rel=0.35)


def test_straight_out_of_another_load():
    found = find_handoff(np.array([0.0, 0.1, 0.2]), np.array([2.0, 20.0, 40.0]), 2.0, 40.0, 0.1)
    assert found.level_nm == 2.0
    assert found.u_nm == pytest.approx(0.1 + 0.45 * 38 / math.sqrt(12))
    assert found.foot == 0


def test_a_second_grip_counts_from_the_first_and_reaches_both():
    t, x = rest()
    found = find_handoff(t, x, 1.0, 40.0, 0.01)
    again = found.gripped_again(0.2)
    assert (again.level_nm, again.other_nm) == (0.2, found.level_nm)
    assert again.u_nm == pytest.approx(math.hypot(found.u_nm, (found.level_nm - 0.2) / 1.96), rel=1e-3)


def test_a_mains_hum_is_told():
    t = np.arange(0, 5, 0.001)
    x = 1 + 20 * np.clip(t - 3, 0, None)
    found = find_handoff(t, x + 0.2 * np.sin(2 * np.pi * 50 * t), 1.0, 40.0, 0.01)
    assert 0.2 / math.sqrt(2) * 0.95 < found.hum_nm < 0.25  # with the ramp's soft foot
    assert found.level_nm == pytest.approx(1.0, abs=0.1)
    white = np.random.default_rng(10).normal(0, 0.2, len(t))
    assert find_handoff(t, x + white, 1.0, 40.0, 0.2).hum_nm == 0.0


# ---------------------------------------------------------------------- the level after
def slip(level=30.0, seconds=6.0, slope=0.0, noise=0.05):
    t = np.arange(0, seconds, 0.005)
    rng = np.random.default_rng(8)
    return t, level + slope * (t - seconds / 2) + rng.normal(0, noise, len(t))


def test_a_steady_slip_is_averaged_between_its_ends():
    """0.2 s after the breakaway and 0.15 s before the release are left out."""
    t, x = slip()
    found = find_plateau(t, x, 0.0, 5.995)
    assert (found.start_s, found.end_s) == (pytest.approx(0.2, abs=0.01), pytest.approx(5.845, abs=0.01))
    assert found.torque_nm == pytest.approx(30.0, abs=0.01)
    assert found.steady_s == pytest.approx(5.645, abs=0.02)
    assert found.u_nm < 0.02
    assert found.max_nm == pytest.approx(30.0, abs=0.1)
    assert (found.uneven, found.climbs, found.parted, found.other_nm) == (False, False, False, 0.0)
    assert found.steady.sum() == pytest.approx(found.steady_s / 0.005, abs=1)


@pytest.mark.parametrize(("change", "climbs"), [(0.04, False), (-0.28, False), (0.3, True), (-0.3, True)])
def test_a_torque_that_goes_one_way_has_no_level_from_a_quarter_on(change, climbs):
    """Of the straight change over the steady stretch, which it pays at least (rectangular)."""
    t, x = slip(seconds=20.0, slope=30 * change / 20, noise=0.01)
    found = find_plateau(t, x, 0.0, 19.995)
    seen = change * 19.645 / 20 * 7 / 8  # between the middles of the first and last of eight parts
    assert found.climb == pytest.approx(seen, rel=0.01)
    assert found.climbs is climbs
    assert found.u_nm >= abs(seen) * 30 / math.sqrt(12) * 0.99


@pytest.mark.parametrize(("high", "parted"), [(36.0, False), (45.0, True)])
def test_two_levels_that_lasted_as_long(high, parted):
    t = np.arange(0, 12, 0.005)
    x = np.where(t < 6.2, 30.0, high) + np.random.default_rng(9).normal(0, 0.02, len(t))
    found = find_plateau(t, x, 0.0, 11.995)
    assert found.torque_nm == pytest.approx(30.0, abs=0.3)
    assert found.other_nm == pytest.approx(high, rel=0.07)
    assert found.parted is parted
    assert found.u_nm == pytest.approx((found.other_nm - found.torque_nm + 0.06 * found.torque_nm) / 1.96, rel=1e-3)


def test_few_readings_of_a_slow_display():
    """30, 31 and 29 N·m, two a second: mean 30, t(2)/1.96 s/√3."""
    t = 0.5 * np.arange(7)
    x = np.array([10.0, 32.0, 30.0, 31.0, 29.0, 5.0, 0.0])
    found = find_plateau(t, x, 0.5, 2.3)
    assert found.torque_nm == pytest.approx(30.0)
    assert found.u_nm == pytest.approx(4.3027 / 1.96 / math.sqrt(3), rel=1e-3)
    assert (found.max_nm, found.steady_s, found.uneven) == (31.0, 1.5, True)
    assert np.flatnonzero(found.steady).tolist() == [2, 3, 4]
    assert find_plateau(t, np.array([10.0, 32, 30, 34, 29, 5, 0]), 0.5, 2.3) is None  # further apart than the band


def test_two_stretches_of_one_pull_are_averaged_by_their_times():
    none = np.zeros(3, bool)
    one = Plateau(1.0, 3.0, 30.0, 0.3, 1.0, 33.0, 0.1, none, uneven=True, climb=0.1)
    two = Plateau(4.0, 9.0, 34.0, 0.1, 3.0, 32.0, 0.2, none, uneven=False, climb=0.1)
    found = together(one, two)
    assert (found.start_s, found.end_s, found.steady_s) == (1.0, 9.0, 4.0)
    assert found.torque_nm == pytest.approx(33.0)
    assert found.u_nm == pytest.approx(math.hypot(0.25 * 0.3, 0.75 * 0.1))
    assert (found.max_nm, found.max_u_nm, found.uneven, found.climb) == (33.0, 0.1, False, 0.0)


def test_a_hand_that_hesitates_is_passed_over_and_may_be_the_level():
    """At 1 N·m, then at nothing for two seconds, 0.4 s at 3 N·m, then up: from nothing; the 3 N·m are named."""
    t = np.arange(0, 7, 0.01)
    x = np.interp(t, [0, 2, 2.2, 4.2, 4.3, 4.7, 6.7], [1, 1, 0, 0, 3, 3, 40])
    found = find_handoff(t, x, 0.0, 40.0, 0.01)
    assert found.level_nm == pytest.approx(0.0, abs=0.05)
    assert found.other_nm == pytest.approx(3.0, abs=0.1)
    assert found.u_nm == pytest.approx(3.0 / 1.96, rel=0.05)


def test_the_search_for_a_peak_begins_at_four_fifths_of_the_slip():
    """A first break at 84 % of the level, exceeded only after a second, is the breakaway; one at 76 % is a bump."""
    t = np.arange(0, 8, 0.005)
    for share, found_at in ((0.84, 2.0), (0.76, 4.5)):
        x = np.interp(t, [0, 2, 2.2, 3.5, 4.5, 4.8, 8], [0, 40 * share, 28, 28, 42, 40, 40])
        assert find_peak(t, x, 40.0, 0.01).time_s == pytest.approx(found_at, abs=0.03)


def test_a_lever_that_lay_still_in_the_load_before_gives_the_level():
    """A second at 2 N·m before the window, in which the torque only rises from 3 N·m."""
    t = np.arange(0, 2, 0.01)
    x = 3 + 18.5 * t
    before = np.r_[np.full(100, 2.0), np.linspace(2.0, 3.0, 20)]
    found = find_handoff(t, x, 3.0, 40.0, 0.01, earlier_nm=before)
    assert found.level_nm == pytest.approx(2.0, abs=0.1)
    assert not found.unrested
    alone = find_handoff(t, x, 3.0, 40.0, 0.01)
    assert alone.unrested
    assert alone.rested_s == 0.0


@pytest.mark.parametrize(
    ("every", "x", "height", "at_once"),
    [
        (0.001, np.r_[np.zeros(50), np.linspace(0, 10, 20), np.full(99, 10.0)], 10.0, True),
        (0.001, np.r_[np.zeros(50), np.linspace(0, 10, 81), np.full(99, 10.0)], 10.0, False),
        (0.03, np.r_[np.zeros(20), np.full(20, 10.0)], 10.0, True),
        (0.03, np.r_[np.zeros(20), 4.0, np.full(20, 10.0)], 10.0, False),
        (0.06, np.r_[np.zeros(20), np.full(20, 10.0)], 10.0, False),
    ],
)
def test_a_lever_that_is_put_on_lands_within_two_hundredths_of_a_second(every, x, height, at_once):
    """From a fifth to a half of its height, or from one reading to the next; slower readings do not tell."""
    t = every * np.arange(len(x))
    half = np.flatnonzero(x > height / 2)
    load = Load(t, x, None, 0, len(x), 1, 0.0, 0.01, 0.01, height, half, 0)
    assert bool(lands(load, x, height)) is at_once


def test_what_a_load_says_of_itself():
    """Ten readings a second, each given twice on the way up; the lowest quarter of 40 N·m is left at 10."""
    x = np.r_[np.zeros(6), np.repeat(np.arange(4.0, 44.0, 4.0), 2), np.full(20, 40.0), np.zeros(4)]
    t = 0.1 * np.arange(len(x))
    load = Load(t, x, None, 4, 46, 1, 0.0, 0.01, 0.01, 40.0, np.flatnonzero(x > 20), 0)
    assert load.interval_s == pytest.approx(0.1)
    assert load.reading_s == pytest.approx(0.2)
    assert load.under_way_s() == pytest.approx(t[np.flatnonzero(x == 8.0)[-1]])
    assert load.held_s == pytest.approx(t[45] - t[np.flatnonzero(x > 20)[0]])
    assert load.end_s == pytest.approx(4.6)


@pytest.mark.parametrize(("apart", "stated"), [(2.6, True), (2.8, False)])
def test_few_readings_keep_within_the_band_to_both_sides(apart, stated):
    """Twice 4.5 % of 30 N·m from the least to the greatest: 2.7 N·m."""
    t = 0.5 * np.arange(7)
    x = np.array([10.0, 32.0, 30.0, 30.0 + apart / 2, 30.0 - apart / 2, 5.0, 0.0])
    assert (find_plateau(t, x, 0.5, 2.3) is not None) is stated
    quick = find_plateau(t * 0.18, x, 0.5 * 0.18, 2.3 * 0.18)
    assert quick is None  # more than ten readings a second, and still so few
