"""The truth about a pull is what its definitions say, checked on the full-bandwidth torque itself."""

from dataclasses import replace

import numpy as np
import pytest

from logger.virtual.hand import Phase
from logger.virtual.physics import simulate
from logger.virtual.scenarios import SCENARIOS, scenario
from logger.virtual.truth import DROP
from tests.analysis.draws import FAMILIES, draw

pytestmark = pytest.mark.xdist_group("truth")  # one worker, so that what they share is made once


@pytest.fixture(scope="module")
def runs():
    """One drawn run per family and two scenarios."""
    drawn = {family: simulate(draw(family, 11), 11) for family in FAMILIES}
    return drawn | {name: simulate(scenario(name), 1) for name in ("healthy", "clumsy-hand")}


def pulls(runs):
    found = [(run, pull) for run in runs.values() for pull in run.truth if pull.valid]
    assert len(found) > 15
    return found


def torque_of(run, pull, start, end):
    step = run.mechanics.step_s
    part = slice(round(start / step), round(end / step))
    return pull.direction * (run.mechanics.sensor_nm[part] - pull.handoff_nm)


def test_breakaway_is_the_highest_of_its_window(runs):
    for run, pull in pulls(runs):
        window = torque_of(run, pull, max(pull.start_s, pull.onset_s - 0.3), pull.onset_s + 0.15)
        assert pull.breakaway_nm >= window.max() - 1e-9
        assert pull.onset_s - 0.3 - 1e-6 <= pull.breakaway_s <= pull.onset_s + 1.0 + 1e-6
        before = torque_of(run, pull, max(pull.start_s, pull.onset_s - 0.3), pull.breakaway_s)
        after = torque_of(run, pull, pull.onset_s + 0.15, pull.breakaway_s)
        if after.size > 1:  # found late: until then it had not fallen three percent below its maximum
            running = np.maximum.accumulate(np.r_[before[: before.size - after.size], after])[-after.size :]
            assert np.all(after >= DROP * running - 1e-6)


def test_plateau_is_the_time_average_of_the_steady_stretches(runs):
    steady_pulls = 0
    for run, pull in pulls(runs):
        if pull.plateau_nm is None:
            assert pull.steady == ()
            continue
        steady_pulls += 1
        torque = np.concatenate([torque_of(run, pull, a, b) for a, b in pull.steady])
        assert torque.size * run.mechanics.step_s >= 0.5 - 1e-6
        assert pull.plateau_nm == pytest.approx(torque.mean(), rel=1e-9)
        step = run.mechanics.step_s
        for a, b in pull.steady:
            assert a >= pull.onset_s
            assert np.all(run.mechanics.phase[round(a / step) : round(b / step)] == Phase.TURN)
    assert steady_pulls > 12


def test_onset_is_followed_by_a_degree_of_rotation(runs):
    for run, pull in pulls(runs):
        step = run.mechanics.step_s
        wheel = pull.direction * run.mechanics.wheel_rad[round(pull.onset_s / step) : round(pull.end_s / step)]
        assert np.degrees(wheel.max() - wheel[0]) >= 1.0
        assert pull.turn_deg > 1.0


def test_axle_torque_includes_the_levers_weight(runs):
    """Relative to the hand-off level the transducer misses the lever's weight; the axle does not."""
    run = runs["healthy"]
    for pull in run.truth:
        assert pull.plateau_axle_nm - pull.plateau_nm == pytest.approx(pull.handoff_nm, abs=0.3)


def test_steady_pull_has_the_balance_of_its_parts(runs):
    """Axle torque = pack mean + half the driveline's drag + the wheel's own drag, also in a drawn pull."""
    for name in ("clean", "realistic", "healthy"):
        run = runs[name]
        axle = run.scenario.axle
        for pull in run.truth:
            if pull.plateau_axle_nm is None or pull.stick_slip is not None:
                continue
            speed = 0.6
            drags = axle.driven_drag.steady_nm(speed) + axle.case_drag.steady_nm(speed / 2) / 2
            assert pull.plateau_axle_nm == pytest.approx(pull.pack_mean_nm + drags, rel=0.03)


def test_aborted_and_held_loads_never_slip():
    clumsy = simulate(scenario("clumsy-hand"), 2)
    aborted = [pull for pull in clumsy.truth if pull.kind == "aborted"]
    assert len(aborted) == 1
    assert not aborted[0].valid
    assert aborted[0].max_nm == pytest.approx(30.0, rel=0.08)
    assert aborted[0].breakaway_nm is None
    assert aborted[0].plateau_nm is None
    held = replace(scenario("healthy").actions[2], stop_nm=25.0, hold_s=1.5)
    run = simulate(replace(scenario("healthy"), actions=(held,)), 1)
    assert run.truth[0].kind == "hold"
    assert not run.truth[0].valid


def test_peak_classes_of_the_scenarios():
    expected = {"healthy": "distinct", "no-overshoot": "none", "stick-slip": "distinct", "bench": "distinct"}
    for name, peak in expected.items():
        case = scenario(name)
        run = simulate(replace(case, actions=case.actions[:3]), 1)
        assert run.truth[0].peak_class == peak, name


def test_every_scenario_runs_and_says_what_it_is():
    for name, make in SCENARIOS.items():
        case = make()
        assert case.name == name
        assert case.about
        assert any(hasattr(action, "ramp_nm_s") for action in case.actions)


def test_spoilt_recordings_are_flagged():
    base = scenario("healthy")
    base = replace(base, actions=base.actions[:3])
    clean = simulate(base, 1).truth[0]
    assert clean.flags == ()
    low = simulate(
        replace(base, sensor=replace(base.sensor, capacity_nm=clean.handoff_nm + 0.98 * clean.breakaway_nm)), 1
    ).truth[0]
    assert "clipped peak" in low.flags
    assert "clipped plateau" not in low.flags
    late = simulate(replace(base, recorded_s=(clean.breakaway_s + 0.3, 99.0)), 1)
    assert "cut at start" in late.truth[0].flags
    assert "breakaway not recorded" in late.truth[0].flags
    assert late.time_s[0] >= clean.breakaway_s + 0.3
    early = simulate(replace(base, recorded_s=(0.0, clean.breakaway_s + 1.0)), 1).truth[0]
    assert early.flags == ("cut at end",)


def test_truth_does_not_depend_on_the_transducer():
    base = scenario("healthy")
    base = replace(base, actions=base.actions[:3])
    other = replace(base, sensor=replace(base.sensor, rate_hz=10.0, noise_nm=2.0, gain=1.1, zero_nm=5.0))
    assert simulate(base, 1).truth == simulate(other, 1).truth


def test_drive_at_constant_speeds_finds_the_steady_curve_of_the_friction():
    """T(v) = pack mean at v/2 + half the driveline's drag at v/2 + the wheel's drag at v, at six speeds of a drive.

    The packs' steady curve is that of the published model (``test_pack``).
    """
    case = scenario("motor")
    even = replace(case.axle.driven_pack, path=None)
    case = replace(case, axle=replace(case.axle, driven_pack=even, other_pack=even))
    axle, pull = case.axle, simulate(case, 1).truth[0]
    assert len(pull.levels) == 6
    for level, wanted in zip(pull.levels, (0.05, 0.1, 0.2, 0.4, 0.8, 1.6), strict=True):
        v = level.wheel_rad_s
        assert v == pytest.approx(wanted, rel=0.02)
        steady = even.steady_nm(v / 2) + axle.case_drag.steady_nm(v / 2) / 2 + axle.driven_drag.steady_nm(v)
        assert level.axle_nm == pytest.approx(steady, rel=0.012)
    falling = [level.axle_nm for level in pull.levels[:3]]
    assert falling == sorted(falling, reverse=True)


def test_a_hand_has_no_levels(runs):
    assert all(pull.levels == () for run in runs.values() for pull in run.truth)


def test_self_zero_and_overload_spoil_the_reading_not_the_truth():
    zeroed = simulate(scenario("self-zero"), 1)
    first, second, third = zeroed.truth
    assert second.start_s < 22.0 < second.end_s
    assert third.plateau_nm == pytest.approx(first.plateau_nm, rel=0.02)
    after = (zeroed.time_s > 22.1) & (zeroed.time_s < second.end_s - 0.6)
    assert abs(np.median(zeroed.torque_nm[after])) < 2.0
    assert zeroed.zero_nm[-1] < -40
    beyond = simulate(scenario("overload"), 1)
    assert "clipped peak" in beyond.truth[0].flags
    at = np.searchsorted(beyond.time_s, beyond.truth[0].breakaway_s)
    assert beyond.torque_nm[at] == 0.0
    assert not beyond.status.any()


def test_where_drag_outweighs_the_packs_the_onset_waits_for_it():
    """Open axle: the packs creep while the drags still hold; breakaway is where the wheel gives way."""
    case = scenario("open-differential")
    for pull in simulate(case, 1).truth:
        assert 0.85 < pull.breakaway_nm / pull.plateau_nm < 1.3
