"""The level just before a pull: where most large errors of a reading come from."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace import handoff
from analysis.trace.handoff import find_handoff

RATE = 500.0
NOISE = 0.02


def rest(seconds, level, seed=0):
    rng = np.random.default_rng(seed)
    return level + NOISE * rng.standard_normal(round(seconds * RATE))


def ramp(level, power=1.0, seconds=1.5, top=46.0):
    t = np.arange(round(seconds * RATE)) / RATE
    return level + top * (t / seconds) ** power


def found(*parts, level=0.0):
    y = np.concatenate(parts)
    t = np.arange(len(y)) / RATE
    return find_handoff(t, y, level, 46.0, NOISE), t


def test_plain():
    hand, t = found(rest(3, 0.4), ramp(0.4))
    assert hand.level_nm == pytest.approx(0.4, abs=0.01)
    assert t[hand.foot] == pytest.approx(3.0, abs=0.03)
    assert hand.u_nm < 0.05


@pytest.mark.parametrize("power", [1.5, 2.0, 3.0])
def test_foot_of_a_soft_ramp_is_not_the_level(power):
    hand, _ = found(rest(3, 0.4), ramp(0.4, power, seconds=3.0))
    assert hand.level_nm == pytest.approx(0.4, abs=0.12)  # 0.3 % of the pull


def test_lever_moved_a_second_before():
    hand, _ = found(rest(3, 0.4), rest(1.0, -4.0), ramp(-4.0), level=0.4)
    assert hand.level_nm == pytest.approx(-4.0, abs=0.02)


def test_lever_put_on_just_before():
    """A heavy lever on a worn pack: its weight is a third of the torque."""
    hand, _ = found(rest(3, 0.0), rest(1.0, 12.0), ramp(12.0, top=34.0))
    assert hand.level_nm == pytest.approx(12.0, abs=0.05)


def test_bump_just_before():
    t = np.arange(round(0.3 * RATE)) / RATE
    bump = 0.4 + 20 * np.sin(np.pi * t / 0.3) ** 2
    hand, _ = found(rest(2, 0.4), bump, rest(0.3, 0.4), ramp(0.4))
    assert hand.level_nm == pytest.approx(0.4, abs=0.02)


def test_lever_that_rings_about_another_level():
    t = np.arange(round(1.5 * RATE)) / RATE
    ringing = -3.0 + 1.5 * np.exp(-t) * np.sin(2 * np.pi * 6 * t)
    hand, _ = found(rest(2, 0.4), ringing, ramp(-3.0), level=0.4)
    assert hand.level_nm == pytest.approx(-3.0, abs=0.2)


def swinging(level, seconds, hz, before=0.0):
    """A lever let go where it weighs nothing: it swings up to its level twice, and less each time."""
    t = np.arange(round(seconds * RATE)) / RATE
    return before + (level - before) * (1 - np.exp(-t / 0.5) * np.cos(2 * np.pi * hz * t))


@pytest.mark.parametrize("hz", [6.3, 9.1])
@pytest.mark.parametrize("level", [6.7, -6.7])
def test_lever_that_still_swings_when_the_pull_begins(level, hz):
    """It was put on 0.7 s before: its level is that about which it swings, not the one from before."""
    hand, _ = found(rest(2, 0.0), swinging(level, 0.7, hz), ramp(level, top=27.0 - level), level=0.0)
    assert hand.level_nm == pytest.approx(level, abs=1.96 * hand.u_nm)
    assert 0.1 < hand.u_nm < 3.6


def test_a_knock_on_the_way_up_is_no_lever():
    t = np.arange(round(0.3 * RATE)) / RATE
    knock = 11.0 + 6 * np.exp(-t / 0.2) * np.sin(2 * np.pi * 8 * t)
    up = ramp(0.0, seconds=1.5)
    hand, _ = found(rest(2, 0.0), up[up < 11.0], knock, up[up >= 11.0])
    assert hand.level_nm == pytest.approx(0.0, abs=0.02)


def test_a_lever_rocked_both_ways_keeps_its_level():
    """Rocked by hand from a rest, as one finds the lash."""
    t = np.arange(round(0.8 * RATE)) / RATE
    hand, _ = found(rest(2, 3.0), 3.0 - 9 * np.exp(-t / 0.4) * np.sin(2 * np.pi * 5 * t), ramp(3.0), level=3.0)
    assert abs(hand.level_nm - 3.0) < 1.96 * hand.u_nm + 0.1


def test_nothing_still_is_uncertain():
    t = np.arange(round(2 * RATE)) / RATE
    hand, _ = found(2.0 * np.sin(2 * np.pi * 1.3 * t), ramp(0.0))
    assert hand.u_nm > 0.1


def test_straight_out_of_another_load():
    y = np.array([0.5, 20.0, 30.0, 40.0])
    hand = find_handoff(np.arange(4) / 10, y, 0.4, 46.0, NOISE)
    assert hand.level_nm == 0.4
    assert hand.u_nm > 1.0


class TestPauseOnTheWayUp:
    """A hand that hesitates is still as well: what counts is the level from which it came up."""

    @pytest.mark.parametrize("pause_s", [0.4, 0.7, 1.0])
    def test_still_pause(self, pause_s):
        up = 0.4 + 16 * np.arange(round(0.8 * RATE)) / RATE / 0.8
        hand, t = found(rest(3, 0.4), up, rest(pause_s, 16.4), ramp(16.4, top=30.0), level=0.4)
        assert hand.level_nm == pytest.approx(0.4, abs=0.05)
        assert t[hand.foot] == pytest.approx(3.0, abs=0.05)

    def test_trembling_pause(self):
        up = 0.4 + 16 * np.arange(round(0.8 * RATE)) / RATE / 0.8
        tremor = 0.3 * np.sin(2 * np.pi * 9 * np.arange(round(0.8 * RATE)) / RATE)
        hand, _ = found(rest(3, 0.4), up, rest(0.8, 16.4) + tremor, ramp(16.4, top=30.0), level=0.4)
        assert hand.level_nm == pytest.approx(0.4, abs=0.05)

    def test_heavy_lever_put_on_for_as_long_is_none(self):
        hand, _ = found(rest(3, 0.4), rest(0.8, 12.4), ramp(12.4, top=34.0), level=0.4)
        assert hand.level_nm == pytest.approx(12.4, abs=0.05)

    def test_slow_drift_is_none(self):
        drift = rest(3.5, 0.4) + np.linspace(0, 1, round(3.5 * RATE))
        hand, _ = found(drift, ramp(1.4), level=0.4)
        assert hand.level_nm == pytest.approx(1.4, abs=0.25)


@pytest.mark.parametrize("seed", range(5))
def test_ramp_in_heavy_noise_is_not_the_level(seed):
    """Noise of 4 % of the pull: blocks grow until a ramp shows through."""
    noise = 1.8 * np.random.default_rng(seed).standard_normal(round(6.5 * RATE))
    y = np.concatenate([np.full(round(3 * RATE), 0.4), ramp(0.4, seconds=3.5)]) + noise
    hand = find_handoff(np.arange(len(y)) / RATE, y, 0.4, 46.0, 1.8)
    assert hand.level_nm == pytest.approx(0.4, abs=1.0)
    assert abs(hand.level_nm - 0.4) < 3 * hand.u_nm


def test_mains_hum_is_told_from_noise():
    hum = 0.6 * np.sin(2 * np.pi * 50 * np.arange(round(4.5 * RATE)) / RATE)
    hand, _ = found(np.concatenate([rest(3, 0.4), ramp(0.4)]) + hum)
    assert hand.hum_nm == pytest.approx(0.6 / np.sqrt(2), rel=0.1)
    assert found(rest(3, 0.4), ramp(0.4))[0].hum_nm == 0.0


def test_drift_is_told_where_the_rest_goes_one_way():
    drift = rest(3.5, 0.4) + np.linspace(0, 0.7, round(3.5 * RATE))
    hand, _ = found(drift, ramp(1.1), level=0.4)
    assert hand.drift_nm_s == pytest.approx(0.2, rel=0.15)
    told = [found(rest(3, 0.4, seed), ramp(0.4), level=0.4)[0].drift_nm_s for seed in range(40)]
    assert sum(slope != 0 for slope in told) <= 2  # once in 360 by chance


# ---------------------------------------------------------------------- its parts, in blocks
def test_the_ramps_steepness_counts_from_where_it_was_last_below():
    """From 15 to 45 % of 10 N·m, over the three blocks from the first at 15 % on; over one at least."""
    assert handoff._steepness(np.array([0, 0, 1.5, 3, 4]), 0.0, 10.0, 0.15) == pytest.approx(3.0 / 3)
    assert handoff._steepness(np.array([2.0, 2, 3.5, 5, 6]), 2.0, 10.0, 0.15) == pytest.approx(3.0 / 3)
    assert handoff._steepness(np.zeros(5), 0.0, 10.0, 0.3) == pytest.approx(1.5)
    assert handoff._runs(np.array([False, True, True, False, True])) == [(1, 3), (4, 5)]


@pytest.mark.parametrize(
    ("first", "last", "block_s", "end", "level", "unrest"),
    [
        (2, 20, 0.1, 23, 17.5, 5.0),  # six blocks of 0.1 s, without the two of the soft foot
        (2, 4, 0.1, 7, 4.0, 4.0),  # too short for a foot
        (2, 5, 0.1, 8, 3.5, 3.0),
        (0, 20, 0.2, 23, 18.5, 3.0),  # four blocks at least
        (10, 12, 0.1, 15, 12.0, 4.0),
    ],
)
def test_what_a_still_stretch_came_to(first, last, block_s, end, level, unrest):
    """Blocks that rise by 1 each; windows of four from ``first`` to before ``last`` lay still."""
    assert handoff._stretch(np.arange(30.0), first, last, 4, block_s) == handoff._Stretch(first, end, level, unrest)


def stretch(blocks, level, first=20):
    return handoff._Stretch(first, first + blocks, level, 0.0)


LOW = stretch(10, 0.0, 0)


@pytest.mark.parametrize(
    ("blocks", "level", "reading_s", "chosen", "other"),
    [
        (6, 2.0, 0.1, 2.0, None),
        (5, 2.0, 0.1, 2.0, None),  # half a second is a rest
        (4, 2.0, 0.1, 0.0, 2.0),  # less may be a hand that hesitates
        (4, 1.0, 0.1, 0.0, None),  # by a hundredth of the pull: it does not matter
        (4, 0.5, 0.1, 0.5, None),
        (4, -1.0, 0.1, -1.0, None),
        (4, -2.0, 0.1, -2.0, 0.0),
        (5, -2.0, 0.1, -2.0, None),
        (8, 2.0, 0.2, 2.0, None),  # four readings of 0.2 s
        (7, 2.0, 0.2, 0.0, 2.0),
    ],
)
def test_which_of_two_stretches_shows_the_level(blocks, level, reading_s, chosen, other):
    """Of a pull of 100 N·m, in blocks of 0.1 s; wherever zero is."""
    for zero in (0.0, 64.0, -64.0):
        both = [stretch(blocks, zero + level), stretch(10, zero, 0)]
        found, doubted = handoff._choose(np.full(40, zero), both, 100.0, 0.1, reading_s)
        assert (found.level - zero, doubted and doubted.level - zero) == (chosen, other)


def test_of_what_was_passed_over_the_farthest_is_named():
    far, near = stretch(4, 52.0, 36), stretch(4, 48.5, 30)
    assert handoff._doubted([near, far], stretch(6, 50.0), 100.0) == far
    assert handoff._doubted([near, stretch(4, 51.4)], stretch(6, 50.0), 100.0) == near
    passed = [stretch(4, 6.0, 36), stretch(4, 3.0, 30)]
    rest = stretch(6, 1.0, 20)
    assert handoff._choose(np.zeros(50), [*passed, rest, LOW], 100.0, 0.1, 0.1) == (rest, passed[0])
    assert handoff._choose(np.zeros(50), [*passed, LOW], 100.0, 0.1, 0.1) == (LOW, passed[0])
    assert handoff._choose(np.zeros(50), [LOW], 100.0, 0.1, 0.1) == (LOW, None)


@pytest.mark.parametrize(
    ("steps", "rise", "blocks", "paused"),
    [
        (5, 10.0, 4, False),  # three of five steps: three fifths of the way
        (6, 10.0, 4, True),
        (6, 9.9, 4, False),  # less than a tenth of the pull up
        (6, 10.0, 5, False),  # longer than 1.2 s
        (0, 10.0, 4, False),
    ],
)
def test_a_hand_that_pauses_came_up_slowly(steps, rise, blocks, paused):
    """Blocks of 0.3 s, the way up in equal steps."""
    means = np.r_[np.zeros(5), np.linspace(0, rise, steps + 1)[1:], np.full(10, rise)]
    here = stretch(blocks, rise, 4 + steps)
    assert handoff._paused(means, handoff._Stretch(0, 5, 0.0, 0.0), here, rise, 100.0, 0.3) is paused


@pytest.mark.parametrize(
    ("way", "paused"),
    [
        ((0, 4, 1, 1, 1, 1, 2, 0), False),  # the first and the last step are of the way
        ((0, 3, 1, 1, 1, 2, 2, 0), False),
        ((9, 1.7, 1.7, 1.6, 1.7, 1.7, 1.6, 9), True),  # what comes before and after is not
    ],
)
def test_the_way_up_is_from_the_end_of_one_stretch_to_the_next(way, paused):
    """Up by 10 of 100 N·m; the three greatest steps within it against 6."""
    means = np.cumsum((0, 0, 0, 0, *way, 0))
    here = stretch(4, 10.0, 10)
    assert handoff._paused(means, handoff._Stretch(0, 5, 0.0, 0.0), here, 10.0, 100.0, 0.3) is paused


@pytest.mark.parametrize(
    ("first", "last", "height", "moved"),
    [(8, 10, 26.0, 2.0), (8, 10, 25.0, 0.0), (7, 10, 26.0, 0.0), (0, 2, 26.0, 1.0)],
)
def test_a_short_rest_wanders_as_far_as_in_a_second_and_a_half(first, last, height, moved):
    """Three blocks of 0.5 s that rise by 1 each; eight hundredths of the pull are another load."""
    assert handoff._wander(np.arange(12.0), handoff._Stretch(first, last, 0.0, 0.0), height, 0.5) == moved
    assert handoff._wander(np.arange(12.0), handoff._Stretch(9, 10, 0.0, 0.0), 100.0, 2.0) == 0.0  # one block


@pytest.mark.parametrize(("off", "slope"), [(0.0, 0.5), (0.68, 0.5), (0.70, 0.0)])
@pytest.mark.parametrize("way", [1, -1])
def test_a_rest_drifts_along_a_straight_line(way, off, slope):
    """Six parts of two blocks, 1 more each, off the line by ± c: r² = 17.5/(17.5 + 4 c²), 0.95² at c = 0.6876."""
    parts = np.arange(6.0) + off * np.array([1, -1, 0, 0, -1, 1])
    assert handoff._drift(way * np.repeat(parts, 2)) == pytest.approx(way * slope)
    assert handoff._drift(np.arange(11.0)) == 0.0


def test_the_foot_is_where_the_window_comes_nearest_to_its_level():
    """Off by as much as four blocks from there range."""
    means = np.array([0.0, 5, 1, 2, 3, 7, 20])
    assert handoff._foot(means, 1, 0.5) == handoff._Stretch(2, 3, 1.0, 6.0)
    assert handoff._foot(means, 1, 3.2) == handoff._Stretch(4, 5, 3.0, 17.0)


@pytest.mark.parametrize(
    ("still", "step", "noise", "found"),
    [
        ([0, 0.2] * 4, 0.1, 0.0, True),  # two thousandths of 100 N·m
        ([0, 0.21] * 4, 0.1, 0.0, False),
        ([0, 0.45] * 4, 0.1, 0.1, True),  # four and a half deviations of the blocks' noise
        ([0, 0.46] * 4, 0.1, 0.1, False),
        (0.080 * np.arange(8), 1.0, 0.0, True),  # 0.085 of the ramp's 0.97 N·m a block
        (0.0895 * np.arange(8), 1.0, 0.0, False),
        (0.98 * np.arange(8), 19.0, 0.0, True),  # ... within three hundredths of 100 N·m
        (1.00 * np.arange(8), 19.0, 0.0, False),
    ],
)
def test_what_lies_still_before_a_ramp(still, step, noise, found):
    """Eight blocks of 0.1 s, seen four at a time, and a ramp to 45 % of 100 N·m."""
    means = np.r_[still, np.arange(still[-1] + step, 45.0 + step / 2, step)]
    assert bool([s for s in handoff._stretches(means, 0.0, 100.0, noise, 0.1) if s.first == 0]) is found
    assert handoff._stretches(means[:3], 0.0, 100.0, noise, 0.1) == []


@pytest.mark.parametrize(("blocks", "found"), [(24, False), (25, True)])
def test_a_quarter_of_a_second_shows_whether_it_lies_still(blocks, found):
    means = np.r_[np.zeros(blocks), np.arange(5.0, 46.0, 5.0)]
    assert bool(handoff._stretches(means, 0.0, 100.0, 0.0, 0.01)) is found
    assert handoff._stretches(np.zeros(4), 0.0, 100.0, 0.0, 0.1) == [handoff._Stretch(0, 4, 0.0, 0.0)]


@pytest.mark.parametrize(("torque", "foot"), [([2, 20, 40], 0), ([2, 2, 3, 30, 40], 2), ([2, 2, 20.0, 40], 1)])
def test_fewer_than_four_readings_are_straight_out_of_another_load(torque, foot):
    """From 2 to 42 N·m: 20 N·m are 45 % of the way."""
    x = np.array(torque, float)
    hand = find_handoff(np.arange(len(x)) / 10, x, 2.0, 42.0, 0.1)
    assert (hand.level_nm, hand.foot) == (2.0, foot)
    assert hand.u_nm == pytest.approx(0.1 + 0.45 * 40 / np.sqrt(12))
    four = find_handoff(np.arange(6) / 10, np.array([2.0, 2, 2, 3, 30, 40]), 2.0, 42.0, 0.1)
    assert four.u_nm < 1.0


def still_then_up(rest_s, every_s, noise_nm, begins_s=0.0):
    t = np.arange(0, rest_s + 2, every_s)
    return find_handoff(begins_s + t, 1 + 20 * np.clip(t - rest_s, 0, None), 1.0, 40.0, noise_nm)


@pytest.mark.parametrize(
    ("rest_s", "every_s", "noise_nm", "block_s"),
    [(2.0, 0.001, 0.01, 0.05), (2.3, 0.001, 2.34, 0.1), (6.0, 0.001, 50.0, 0.25), (8.0, 0.5, 0.01, 0.5)],
)
@pytest.mark.parametrize("begins_s", [0.0, 100.0])
def test_how_long_it_rested_is_counted_in_blocks(rest_s, every_s, noise_nm, block_s, begins_s):
    """0.05 s; so long that their noise is 0.006 of 39 N·m; at most 0.25 s; a reading each where those are slower."""
    blocks = still_then_up(rest_s, every_s, noise_nm, begins_s).rested_s / block_s
    assert blocks == pytest.approx(round(blocks), abs=1e-6)
    assert abs(round(blocks) * block_s - rest_s) <= 3 * block_s


@pytest.mark.parametrize(("noise_nm", "foot"), [(0.01, 201), (0.21, 203)])
def test_the_foot_is_a_hundredth_of_the_pull_up_or_three_deviations(noise_nm, foot):
    """At 20 N·m/s from 1 N·m on: below 1.39 N·m of 40 N·m, or below 1.63 N·m."""
    assert still_then_up(2.0, 0.01, noise_nm).foot == foot


def test_a_second_grip_ends_what_never_rested():
    hand = handoff.Handoff(1.0, 0.1, 5, unrested=True)
    assert hand.gripped_again(0.5).unrested is False
