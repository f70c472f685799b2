"""Borders of a lever that still swings before the ramp, and of what goes before a peak: by hand, on either side."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace import handoff
from analysis.trace.breakaway import _knee, _shelf
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor

STILL = 5
"""Blocks in a window."""


def marked(means, runs, *, last=4, ramp=1.0, top=100.0):
    """Mark swings behind a stretch whose last window ends before ``last``; ``means`` begin with its last block.

    The same from another level and in another unit.
    """
    count = last + len(means) - 1
    found = []
    for base, unit in ((0.0, 1.0), (7.0, 1.0), (-30.0, 0.001)):
        quiet, swings = np.zeros(count, bool), np.zeros(count, bool)
        quiet[:last] = True
        for a, b in runs:
            swings[a:b] = True
        blocks = (np.array(means, float) + base) * unit
        handoff._mark_swings(quiet, swings, blocks, last, ramp * unit, (top + base) * unit, STILL)
        found.append(np.flatnonzero(quiet[last:]).tolist())
    assert found[0] == found[1] == found[2]
    return found[0]


def swing(crest, level, blocks=16):
    """A jump to the crest, then at one level."""
    return [0.0, crest, *[level] * (blocks - 2)]


@pytest.mark.parametrize(
    ("crest", "found"),
    [(10.0, False), (10.1, True), (69.9, True), (70.1, False), (-10.1, True), (-69.9, True), (-70.1, False)],
)
def test_the_crest_lies_between_a_tenth_and_seven_tenths_of_the_pull(crest, found):
    assert bool(marked(swing(crest, 0.05 * crest), [(8, 10)])) is found


@pytest.mark.parametrize(("level", "found"), [(34.9, True), (35.1, False), (-34.9, True), (-35.1, False)])
def test_a_lever_weighs_less_than_35_hundredths_of_the_pull(level, found):
    assert bool(marked(swing(60.0 if level > 0 else -60.0, level), [(9, 11)])) is found


@pytest.mark.parametrize(("ramp", "found"), [(7.9, True), (8.0, False), (8.1, False)])
def test_it_jumps_more_than_two_and_a_half_times_as_steep_as_the_ramp(ramp, found):
    assert bool(marked(swing(20.0, 10.0), [(8, 10)], ramp=ramp)) is found


@pytest.mark.parametrize(("crest_at", "found"), [(1, True), (4, True), (5, False)])
def test_the_jump_comes_within_five_blocks(crest_at, found):
    means = [0.0, *[1.0] * (crest_at - 1), 20.0, *[10.0] * 14]
    assert bool(marked(means, [(8, 10)])) is found


def test_the_level_is_that_of_the_windows_blocks():
    """Windows 9 and 10 behind a stretch that ends with window 3 hold the blocks 9 to 14, here 2 to 7."""
    means = np.full(16, 90.0)
    means[0], means[1] = 0.0, 20.0
    means[2:8] = 34.0
    assert marked(means, [(9, 11)]) == [5, 6]
    for at in (2, 7):
        wide = means.copy()
        wide[at] = 41.0
        assert marked(wide, [(9, 11)]) == []
    assert marked(means, [(5, 7)]) == [1, 2]  # they begin before the jump: only what is known of them counts


@pytest.mark.parametrize(("begins", "found"), [(17, [13, 14]), (18, [])])
def test_a_swing_is_seen_within_eight_blocks_of_the_stretch(begins, found):
    assert marked(swing(20.0, 10.0, 24), [(begins, begins + 2)]) == found


def test_one_swing_leads_to_the_next():
    assert marked(swing(20.0, 10.0, 40), [(8, 10), (20, 22), (36, 38)]) == [4, 5, 16, 17]
    assert marked(swing(20.0, 10.0, 40), [(20, 22)]) == []


@pytest.mark.parametrize(("back_at", "found"), [(8, [4, 5]), (7, [])])
def test_a_swing_ends_where_the_torque_comes_back_to_where_it_was(back_at, found):
    means = swing(20.0, 10.0)
    means[back_at] = 0.0
    assert marked(means, [(8, 10)]) == found


class TestWhatItJumpedTo:
    def test_as_far_as_its_level_may_lie(self):
        means = np.array([0.0, 20.0, 8.0, 12.0, 8.0, 12.0])
        found = handoff._swing(means, 1.0, 100.0)
        assert found == pytest.approx(10.0 + 2 * 2.0 / np.sqrt(4))
        assert handoff._swing(-means, 1.0, 100.0) == pytest.approx(-12.0)

    def test_of_three_blocks_nothing_is_said(self):
        assert handoff._swing(np.array([0.0, 20.0, 8.0]), 1.0, 100.0) is None
        assert handoff._swing(np.array([0.0, 20.0, 8.0, 8.0]), 1.0, 100.0) == pytest.approx(8.0)

    def test_without_a_jump_nothing_is_said(self):
        assert handoff._swing(np.array([0.0, 9.0, 8.0, 8.0, 8.0]), 1.0, 100.0) is None


@pytest.mark.parametrize(
    ("x", "least", "noise", "level"),
    [
        ([0, 90, 90, 90, 90, 100], 85.0, 0.0, 90.0),  # kept for 0.375 s
        ([0, 90, 90, 90, 100, 100], 85.0, 0.0, np.inf),  # for 0.25 s
        ([0, 90, 88, 88, 88, 90, 100], 85.0, 0.0, 90.0),
        ([0, 90, 90, 90, 90, 100], 90.0, 0.0, np.inf),  # not above the least
        ([0, 97, 97, 97, 97, 100], 85.0, 0.0, 97.0),  # more than three hundredths higher
        ([0, 98, 98, 98, 98, 100], 85.0, 0.0, np.inf),
        ([0, 94, 94, 94, 94, 100], 85.0, 1.0, 94.0),  # ... and three deviations
        ([0, 95, 95, 95, 95, 100], 85.0, 1.0, np.inf),
        ([0, 90, 92, 91, 92, 91, 100], 85.0, 0.7, 90.0),  # what noise exceeds is not exceeded
        ([0, 90, 92, 91, 92, 91, 100], 85.0, 0.6, 92.0),
        ([0, 86, 86, 86, 86, 93, 93, 93, 93, 100], 85.0, 0.0, 86.0),  # the lowest of two
    ],
)
def test_a_top_that_was_kept_to_for_three_tenths_of_a_second(x, least, noise, level):
    t = 0.125 * np.arange(len(x))
    assert _shelf(t, np.array(x, float), least, noise) == level


def bent(knee_nm, slope, before, rise_s=0.4, top=100.0, from_nm=60.0):
    """A ramp of 100 N·m/s that bends to a share of that for 0.4 s, runs on at a smaller one, and jumps to its top.

    Times are in sixteenths of a second.
    """
    t = np.arange(0, 4, 1 / 16)
    begin = (knee_nm - 0.4 * 100 * before - from_nm) / 100
    times = np.array([0, begin, begin + 0.4, begin + 0.4 + rise_s, begin + 0.5 + rise_s])
    levels = np.array([from_nm, knee_nm - 40 * before, knee_nm, knee_nm + 100 * slope * rise_s, top])
    end = int(np.searchsorted(t, times[-1]))
    return t[: end + 1], np.interp(t[: end + 1], times, levels)


@pytest.mark.parametrize(
    ("parts", "slip", "found"),
    [
        ({"slope": 0.05, "before": 0.3}, 80.0, True),
        ({"slope": 0.05, "before": 0.9}, 80.0, False),  # a hand that stops at once
        ({"slope": 0.4, "before": 0.5}, 80.0, False),  # it never ran out
        ({"slope": 0.05, "before": 0.3, "rise_s": 0.05}, 80.0, False),  # for too short a time
        ({"slope": 0.05, "before": 0.3}, 92.0, False),  # below nine tenths of the slip level
        ({"slope": 0.05, "before": 0.3, "top": 82.5}, 80.0, False),  # it hardly rose on
    ],
)
def test_a_knee_from_which_the_torque_rose_on(parts, slip, found):
    t, x = bent(80.0, **{"rise_s": 0.6, **parts})
    level = _knee(t, x, slip, 0.0, 100.0)
    assert level == (pytest.approx(81.5, abs=1.5) if found else np.inf)
    assert (_knee(t, 0.01 * x, 0.01 * slip, 0.0, 1.0) < np.inf) is found


def test_a_jerk_behind_the_knee_of_a_pack_without_a_peak_is_no_sharp_breakaway():
    """It comes up to 23 N·m ever slower, slips, and is jerked on to 29 N·m."""
    t = np.arange(0, 12, 0.005)
    y = np.where(t > 2, 23 * (1 - np.exp(-np.clip(t - 2, 0, None) / 0.7)), 0)
    y = np.where(t > 5.5, 23 + 6 * np.exp(-np.clip(t - 5.56, 0, None) / 0.1) * np.clip((t - 5.5) / 0.06, 0, 1), y)
    y *= np.clip((10 - t) / 0.2, 0, 1)
    noise = 0.03 * np.random.default_rng(3).standard_normal(len(t))
    (pull,) = [p for p in read_torque(t, y + noise, sensor=Sensor(capacity_nm=100.0)).pulls if p.breakaway]
    assert abs(pull.breakaway.at_sensor_nm - 23.0) < pull.breakaway.u95_sensor_nm
    assert pull.rotating.at_sensor_nm == pytest.approx(23.0, rel=0.01)
    assert pull.rotating.u95_sensor_nm < 0.3
