"""The level just before a pull: where most large errors of a reading come from."""

from __future__ import annotations

import numpy as np
import pytest

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
