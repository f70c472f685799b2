"""The hand: it ramps as meant, pauses, gives up, trembles in its band, and never pulls back."""

from dataclasses import replace

import numpy as np
import pytest

from logger.virtual.hand import Arm, HandPull, Phase, band_noise
from logger.virtual.physics import Rest, Scenario, simulate
from logger.virtual.scenarios import scenario

STEP = 5e-4
CALM = HandPull(tremor=0.0, wander=0.0)


def on_a_wall(pull, seconds=6.0):
    """Torque of a hand on a lever that does not move."""
    arm = Arm(pull, 5e3, STEP, 0.0, np.random.default_rng(1))
    torque = []
    for step in range(round(seconds / STEP)):
        push, _ = arm(step, 0.0, 0.0)
        torque.append(push)
    return np.array(torque), np.array(arm.phases)


def one_pull(**changes):
    base = scenario("healthy")
    pull = replace(CALM, **changes)
    run = simulate(Scenario("test", "", base.axle, (Rest(0.5), pull)), 1)
    return run, run.truth[0]


@pytest.mark.parametrize("rate", [5.0, 25.0, 120.0])
def test_torque_rises_at_the_meant_rate(rate):
    torque, phases = on_a_wall(replace(CALM, ramp_nm_s=rate), 2.0)
    assert np.gradient(torque, STEP)[100:-100] == pytest.approx(rate, rel=1e-3)
    assert set(phases) == {Phase.RAMP}


def test_it_gives_up_at_its_strength_and_lets_go():
    torque, phases = on_a_wall(replace(CALM, ramp_nm_s=50.0, strength_nm=80.0))
    assert torque.max() == pytest.approx(80.0, rel=0.02)
    assert phases[-1] == Phase.OFF
    assert torque[-1] == 0.0
    released = np.flatnonzero(phases == Phase.RELEASE)
    assert released.size * STEP == pytest.approx(CALM.release_s, abs=0.01)


def test_counter_clockwise_is_the_mirror_image():
    up, _ = on_a_wall(replace(CALM, strength_nm=60.0))
    down, _ = on_a_wall(replace(CALM, strength_nm=60.0, direction=-1))
    np.testing.assert_allclose(down, -up)


def test_it_pauses_at_a_torque_and_goes_on():
    torque, phases = on_a_wall(replace(CALM, hesitations=((30.0, 0.8),)), 4.0)
    pause = np.flatnonzero(phases == Phase.UPSET)
    assert pause.size * STEP == pytest.approx(0.8, abs=0.01)
    assert torque[pause].max() < 35.0
    assert torque[-1] > 60.0


def test_a_hold_stays_below_its_torque():
    torque, _ = on_a_wall(replace(CALM, stop_nm=40.0, hold_s=1.5), 8.0)
    assert 0.95 * 40.0 < torque.max() < 1.02 * 40.0
    assert np.sum(torque > 0.95 * 40.0) * STEP > 1.5


def test_tremor_lies_in_its_band():
    noise = band_noise(STEP, 7.0, 12.0, np.random.default_rng(3))
    assert noise.std() == pytest.approx(1.0)
    power = np.abs(np.fft.rfft(noise)) ** 2
    frequency = np.fft.rfftfreq(noise.size, STEP)
    assert power[(frequency >= 7) & (frequency <= 12)].sum() > 0.999 * power.sum()
    shaking, _ = on_a_wall(replace(CALM, tremor=0.05, ramp_nm_s=50.0, strength_nm=1e9), 4.0)
    steady, _ = on_a_wall(replace(CALM, ramp_nm_s=50.0, strength_nm=1e9), 4.0)
    assert np.std(shaking[4000:] / steady[4000:]) == pytest.approx(0.05, rel=0.3)


def test_it_turns_at_the_meant_speed_and_never_pulls_back():
    run, pull = one_pull(turn_rad_s=((0.6, 3.0),))
    step = run.mechanics.step_s
    at = slice(*(round(t / step) for t in pull.steady[0]))
    assert run.mechanics.wheel_rad_s[at].mean() == pytest.approx(0.6, rel=0.03)
    assert run.mechanics.hand_nm.min() >= -1e-9


def test_a_yank_is_felt_and_not_steady():
    _, calm = one_pull()
    run, pull = one_pull(yanks=((1.5, 60.0, 0.3),))
    assert pull.max_nm > calm.max_nm + 5
    assert pull.breakaway_nm == pytest.approx(calm.breakaway_nm, rel=1e-3)
    assert pull.plateau_nm == pytest.approx(calm.plateau_nm, rel=0.01)
    upset = np.flatnonzero(run.mechanics.phase == Phase.UPSET) * run.mechanics.step_s
    assert upset.size
    assert not any(a < t < b for a, b in pull.steady for t in upset)


def test_a_regrip_lets_off_and_takes_hold_again():
    run, pull = one_pull(regrips=((1.5, 0.6),), turn_rad_s=((0.5, 8.0),))
    assert pull.regrip
    step = run.mechanics.step_s
    inside = run.mechanics.hand_nm[round((pull.onset_s + 1.5) / step) : round((pull.end_s - 1.0) / step)]
    assert inside.min() < 0.3 * pull.plateau_nm
    assert len(pull.steady) >= 2
