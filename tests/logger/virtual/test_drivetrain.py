"""The mechanics: what the torque balance, energy, kinematics and convergence say.

The balances are derived in ``analysis.to_axle.drag``'s sense: pinions press equally on both side gears, packs act
between side gears and case; nothing of them is put into the simulation."""

from dataclasses import replace
from math import pi, sqrt

import numpy as np
import pytest

from logger.virtual.drivetrain import Motion, march
from logger.virtual.hand import HandPull
from logger.virtual.lever import GRAVITY, LeverModel
from logger.virtual.pack import Friction
from logger.virtual.physics import Rest, Scenario, simulate
from logger.virtual.scenarios import axle, drag, pack, scenario
from tests.analysis.draws import draw

NO_LEVER = LeverModel(mass_kg=0.0, centroid_m=0.0)
STEADY = {"tremor": 0.0, "wander": 0.0}


def first_pull(name):
    """A scenario up to its first pull: enough for what a single pull shows."""
    case = scenario(name)
    return replace(case, actions=case.actions[:3])


def plain(level, stiffness=6e4):
    """A friction element that has one level only: the balances are exact then."""
    return Friction(level, level, stiffness_nm_rad=stiffness, damping_nms=20.0)


def plain_axle(driven, other, *, d_driven=3.0, d_other=3.0, d_case=14.0, **changes):
    return replace(
        axle(plain(driven), plain(other)),
        driven_drag=plain(d_driven, 2e3),
        other_drag=plain(d_other, 2e3),
        case_drag=plain(d_case, 6e3),
        **changes,
    )


def plateau(the_axle, **pull):
    """The truth of one calm pull."""
    calm = HandPull(**STEADY, turn_rad_s=((0.5, 3.0),), **pull)
    run = simulate(Scenario("test", "", the_axle, (Rest(0.5), calm), NO_LEVER))
    assert run.truth[0].plateau_nm is not None
    return run.truth[0]


@pytest.mark.parametrize(("driven", "other"), [(40.0, 40.0), (20.0, 60.0), (60.0, 20.0)])
def test_held_wheel_shows_mean_of_packs_and_half_the_driveline_drag(driven, other):
    """T = (F_L + F_R)/2 + D_c/2 + D_R and T_hold = (F_L + F_R)/2 - D_c/2; their mean without D_R is the pack mean."""
    truth = plateau(plain_axle(driven, other, d_driven=9.0))
    assert truth.plateau_nm == pytest.approx(40.0 + 7.0 + 9.0, abs=0.06)
    assert truth.held_nm == pytest.approx(40.0 - 7.0, abs=0.06)
    assert (truth.plateau_nm - 9.0 + truth.held_nm) / 2 == pytest.approx(40.0, abs=0.06)


def test_left_minus_right_is_the_difference_of_wheel_drags_not_of_packs():
    """T - T' = D_R - D_L, with packs of 20 and 60."""
    right = plateau(plain_axle(20.0, 60.0, d_driven=9.0, d_other=3.0))
    left = plateau(plain_axle(60.0, 20.0, d_driven=3.0, d_other=9.0))
    assert right.plateau_nm - left.plateau_nm == pytest.approx(9.0 - 3.0, abs=0.06)


def test_drag_baseline_gives_the_pack_mean():
    """F = (T_R + T_L - T_both)/2; packs 20/60, D_c 14, D_L 3, D_R 9 give 56, 50, 26 and 40."""
    right = plateau(plain_axle(20.0, 60.0, d_driven=9.0, d_other=3.0)).plateau_nm
    left = plateau(plain_axle(60.0, 20.0, d_driven=3.0, d_other=9.0)).plateau_nm
    both = plateau(plain_axle(20.0, 60.0, d_driven=9.0, d_other=3.0, held="none"), ramp_nm_s=15.0).plateau_nm
    assert (right, left, both) == pytest.approx((56.0, 50.0, 26.0), abs=0.06)
    assert (right + left - both) / 2 == pytest.approx(40.0, abs=0.06)


def test_case_held_shows_the_sum_of_the_packs():
    """T = F_L + F_R + D_other (+ the driven wheel's own drag): about twice, the factor-of-two trap."""
    truth = plateau(plain_axle(20.0, 60.0, held="case"), ramp_nm_s=40.0)
    assert truth.plateau_nm == pytest.approx(20.0 + 60.0 + 3.0 + 3.0, abs=0.06)


@pytest.mark.parametrize(
    ("level", "other_turns"),
    [
        (12.0, 1),  # F > D_L + D_c/2 = 10: the other wheel follows
        (6.0, 0),  # below: it stands still
        (1.0, -1),  # D_c/2 > F + D_L: it turns backwards, as in an open axle
    ],
)
def test_other_wheel_follows_stands_or_turns_backwards(level, other_turns):
    """The spin test compares pack friction with half the driveline's drag."""
    free = plain_axle(level, level, d_driven=3.0, d_other=3.0 if level > 2 else 1.0, held="none")
    pull = HandPull(**STEADY, ramp_nm_s=10.0, stiffness_nm_rad=500.0, turn_rad_s=((0.5, 4.0),))
    run = simulate(Scenario("test", "", free, (Rest(0.5), pull), NO_LEVER)).mechanics
    at = slice(-9000, -5000)
    other = run.other_slip_rad + run.case_rad
    speed = np.ptp(other[at]) * np.sign(other[at][-1] - other[at][0]) / np.ptp(run.wheel_rad[at])
    if other_turns >= 0:
        assert speed == pytest.approx(other_turns, abs=0.02)
    else:
        assert speed < -0.1


def test_slip_is_half_the_wheel_speed_with_the_other_wheel_held():
    run = simulate(first_pull("healthy"), 2)
    first = run.truth[0].steady[0]
    at = slice(*(round(t / run.mechanics.step_s) for t in first))
    wheel = np.ptp(run.mechanics.wheel_rad[at])
    assert np.ptp(run.mechanics.driven_slip_rad[at]) == pytest.approx(wheel / 2, rel=1e-3)
    assert np.ptp(run.mechanics.other_slip_rad[at]) == pytest.approx(wheel / 2, rel=1e-3)
    assert np.ptp(run.mechanics.case_rad[at]) == pytest.approx(wheel / 2, rel=1e-3)


def test_pack_waves_repeat_every_second_turn_and_drag_waves_every_turn():
    """Order 1/2 of the wheel for the packs, order 1 for the wheel's drag."""
    turn = 2 * pi
    wave = 1 + 0.05 * np.cos(2 * pi * np.arange(1024) / 1024)
    level = replace(plain(40.0), path=wave)
    waving = replace(
        plain_axle(40.0, 40.0, d_driven=10.0), driven_pack=level, driven_drag=replace(plain(10.0, 3e3), path=wave)
    )
    pull = HandPull(**STEADY, turn_rad_s=((1.2, 23.0),))
    run = simulate(Scenario("test", "", waving, (Rest(0.5), pull), NO_LEVER)).mechanics
    wheel, torque = run.wheel_rad, run.axle_nm
    use = (wheel > 0.6) & (wheel < 0.6 + 4 * turn)
    steady = np.interp(np.linspace(0.6, 0.6 + 4 * turn, 4096, endpoint=False), wheel[use], torque[use])
    orders = 2 * np.abs(np.fft.rfft(steady)) / steady.size
    assert orders[2] == pytest.approx(0.05 * 40.0 / 2, rel=0.05)  # half-order; the mean takes half of one pack
    assert orders[4] == pytest.approx(0.05 * 10.0, rel=0.05)


def test_wind_up_before_slip():
    """θ = T (1/k_L + 1/k_R) + lash, here taken up from the middle of the gap, plus the packs' and the tyre's give."""
    stopped = HandPull(**STEADY, stop_nm=80.0)
    run = simulate(
        Scenario("test", "", plain_axle(900.0, 900.0, d_case=0.01, d_driven=0.01), (Rest(0.5), stopped), NO_LEVER)
    ).mechanics
    a = run.hand_nm
    at = [int(np.argmax(a > level)) for level in (20.0, 50.0)]
    slope = (a[at[1]] - a[at[0]]) / (run.wheel_rad[at[1]] - run.wheel_rad[at[0]])
    parts = plain_axle(900.0, 900.0)
    assert slope == pytest.approx(parts.stiffness_nm_rad, rel=0.03)
    assert parts.stiffness_nm_rad < 1 / (1 / parts.driven_shaft_nm_rad + 1 / parts.other_shaft_nm_rad)


def test_energy_of_a_whole_pull_is_what_friction_takes():
    """Work of the hand = work taken by both packs and the drags, from rest to rest (nothing else dissipates)."""
    ideal = replace(plain_axle(40.0, 55.0, d_driven=6.0, d_case=10.0), shaft_nms=0.0, pinion_nms=0.0)
    pull = HandPull(**STEADY, turn_rad_s=((0.5, 3.0),))
    run = simulate(Scenario("test", "", ideal, (Rest(0.5), pull, Rest(2.0)), NO_LEVER)).mechanics

    def work(torque, angle):
        return float(np.sum(torque[1:] * np.diff(angle)))

    given = work(run.hand_nm, run.wheel_rad)
    packs = work(run.driven_pack_nm, run.driven_slip_rad) + work(run.other_pack_nm, run.other_slip_rad)
    turned, case = np.abs(np.diff(run.wheel_rad)).sum(), np.abs(np.diff(run.case_rad)).sum()
    assert given == pytest.approx(packs + 6.0 * turned + 10.0 * case, rel=0.01)


def test_truth_has_converged_in_the_step():
    """Half the step changes breakaway and plateau by less than 0.3 %."""
    for name in ("healthy", "stick-slip"):
        case = first_pull(name)
        values = []
        for step in (5e-4, 2.5e-4, 1.25e-4):
            truth = simulate(calm(case), 4, step_s=step).truth[0]
            values.append((truth.breakaway_nm, truth.plateau_nm))
        coarse, half, fine = np.array(values)
        # The time average of a few stick-slip cycles depends on where the last one ends.
        allowed = 1e-2 if name == "stick-slip" else 3e-3
        assert coarse == pytest.approx(half, rel=allowed), name
        assert half == pytest.approx(fine, rel=allowed), name


def calm(case):
    """Without tremor: its noise is drawn per step and would differ between steps."""
    return replace(case, actions=tuple(replace(a, **STEADY) if isinstance(a, HandPull) else a for a in case.actions))


def test_same_seed_same_run_another_seed_another():
    case = scenario("clumsy-hand")
    case = replace(case, actions=case.actions[:4])
    one, two, three = simulate(case, 5), simulate(case, 5), simulate(case, 6)
    np.testing.assert_array_equal(one.torque_nm, two.torque_nm)
    assert one.truth == two.truth
    assert not np.array_equal(one.torque_nm[:5000], three.torque_nm[:5000])
    assert one.simulated


def test_stick_slip_frequency_is_of_the_order_of_hand_and_wheel():
    """√(k/J)/2π is the frequency of the slips; with sticks between them the cycle is longer, never shorter."""
    run = simulate(first_pull("stick-slip"), 3)
    pull = next(a for a in run.scenario.actions if isinstance(a, HandPull))
    inertia = run.scenario.axle.wheel_kgm2 + run.scenario.lever.axle_kgm2
    natural = sqrt(pull.stiffness_nm_rad / inertia) / (2 * pi)
    for truth in run.truth:
        assert truth.stick_slip is not None
        assert 0.2 * natural < truth.stick_slip.frequency_hz < natural


@pytest.mark.published(
    "webinar abstract on friction against speed (rule of the slope)", rows=("8.16",), status="READ-S"
)
def test_friction_that_falls_with_speed_chatters_and_one_that_rises_does_not():
    """Same axle, same hand; only the fluid differs."""
    case = first_pull("stick-slip")
    for name, ratio in (("falling", 1.5), ("flat", 1.0), ("rising", 0.85)):
        fluid = {"stribeck_rad_s": 0.15, "viscous_nms": 0.0, "ageing_nm": 0.0}
        packs = [pack(60.0, ratio, seed=seed, **fluid) for seed in (1, 2)]
        run = simulate(replace(case, axle=replace(case.axle, driven_pack=packs[0], other_pack=packs[1])), 1)
        assert (run.truth[0].stick_slip is not None) == (name == "falling"), name


def test_unequal_packs_give_a_kink_where_the_weak_one_slips_through_the_lash():
    truth = simulate(first_pull("unequal-packs"), 1)
    run, pull = truth.mechanics, truth.truth[0]
    start = round(pull.start_s / run.step_s)
    weak = np.abs(run.driven_slip_rad - run.driven_slip_rad[start])
    first = int(np.argmax(weak[start:] > 3 * truth.scenario.axle.driven_pack.elastic_rad)) * run.step_s + pull.start_s
    assert first < pull.onset_s - 0.1
    assert run.sensor_nm[round(first / run.step_s)] < 0.8 * pull.breakaway_nm


def test_locked_axle_never_slips_and_a_slipping_tyre_is_no_breakaway():
    for name, turned in (("locked", 0.0), ("tyre-slips", 60.0)):
        truth = simulate(first_pull(name), 1).truth[0]
        assert not truth.valid
        assert truth.breakaway_nm is None
        assert truth.turn_deg >= turned - 1.0


def test_longer_rest_gives_a_higher_breakaway():
    base = scenario("healthy")
    old = replace(base.axle, driven_pack=pack(45.0, ageing_nm=2.0), other_pack=pack(45.0, ageing_nm=2.0))
    peaks = []
    for dwell in (2.0, 20.0, 200.0):
        pulls = (Rest(1.0), HandPull(**STEADY, dwell_s=0.5), Rest(dwell), HandPull(**STEADY))
        peaks.append(simulate(Scenario("test", "", old, pulls, NO_LEVER)).truth[1].breakaway_nm)
    assert np.all(np.diff(peaks) > 0.8)


def test_lever_weight_is_torque_on_the_wheel_and_in_the_sensor():
    """A lever of 2 kg at 0.25 m, level: 4.9 N·m, clockwise when it points right; on a stud the axle feels more."""
    lever = LeverModel(mass_kg=2.0, centroid_m=0.25, length_m=0.5, stud_radius_m=0.057, start_deg=0.0)
    run = simulate(Scenario("test", "", scenario("healthy").axle, (Rest(3.0),), lever)).mechanics
    assert run.sensor_nm[-1] == pytest.approx(2.0 * GRAVITY * 0.25, abs=0.01)
    assert run.axle_nm[-1] == pytest.approx(2.0 * GRAVITY * (0.25 + 0.057), abs=0.01)


@pytest.mark.published("TM 5-3805-260-24 p. 3-155 (off-centre wrench on a wheel)", rows=("1.5",), status="READ-P")
def test_lever_on_a_stud_reads_low_as_the_manual_says():
    """160 lbf·in about the wheel's centre reads 75 with an 8 in wrench; B = 9 in is solved from the manual's pair."""
    inch = 0.0254
    assert 160.0 / LeverModel(length_m=8 * inch, stud_radius_m=9.07 * inch).factor == pytest.approx(75.0, abs=0.1)


def test_sensor_under_a_stud_lever_while_turning():
    """M x factor is the torque on the axle for the hand's force (statics; the weight of the lever excluded)."""
    lever = LeverModel(mass_kg=0.0, centroid_m=0.0, stud_radius_m=0.057, angle_deg=30.0, pull_angle_deg=8.0)
    truth = simulate(Scenario("test", "", plain_axle(40.0, 40.0), (Rest(0.5), HandPull(**STEADY)), lever)).truth[0]
    assert truth.plateau_axle_nm == pytest.approx(truth.plateau_nm * lever.factor, rel=1e-6)
    assert truth.plateau_axle_nm == pytest.approx(40.0 + 7.0 + 3.0, abs=0.06)


def test_inertia_of_the_lever_does_not_reach_the_sensor_twice():
    """Accelerated alone, sensor torque is hand minus the lever's own J α; the wheel's share passes through it."""
    lever = LeverModel(mass_kg=2.0, centroid_m=0.25, length_m=0.5)
    free = replace(plain_axle(1e-3, 1e-3, d_driven=1e-3, d_other=1e-3, d_case=1e-3, held="none"), wheel_kgm2=1.0)
    state, log = march(free, Motion(), 200, 5e-4, lambda *_: (10.0, 0.0), lambda _: 0.0, lever.axle_kgm2)
    alpha = np.diff(log.wheel_rad_s)[20:60].mean() / 5e-4
    assert alpha == pytest.approx(10.0 / (1.0 + lever.axle_kgm2), rel=0.02)
    assert 10.0 - lever.sensor_kgm2 * alpha == pytest.approx(1.0 * alpha, rel=0.03)
    assert not state.at_rest


def test_drag_helper_has_its_level_and_ripple():
    """A drag of 6 N·m with 10 % run-out."""
    element = drag(6.0, rising=0.5, ripple=0.1)
    assert element.steady_nm(1.0) == pytest.approx(6.5, abs=0.01)
    assert np.ptp(element.path) == pytest.approx(0.2, abs=1e-6)


def test_counter_clockwise_is_the_mirror_image():
    pulls = [HandPull(**STEADY, direction=direction) for direction in (1, -1)]
    one, two = (
        simulate(Scenario("test", "", plain_axle(30.0, 50.0), (Rest(0.5), pull), NO_LEVER)).mechanics for pull in pulls
    )
    np.testing.assert_allclose(one.sensor_nm, -two.sensor_nm, atol=1e-9)
    np.testing.assert_allclose(one.wheel_rad, -two.wheel_rad, atol=1e-12)


def test_everything_twice_as_strong_turns_the_same_way():
    """All torques, stiffnesses, dampings and inertias doubled: same motion, twice the torque."""

    def doubled(part, names):
        return replace(part, **{name: 2 * getattr(part, name) for name in names})

    friction = ("coulomb_nm", "static_nm", "viscous_nms", "stiffness_nm_rad", "damping_nms", "ageing_nm")
    single = plain_axle(30.0, 50.0)
    parts = ("driven_pack", "other_pack", "driven_drag", "other_drag", "case_drag", "floor")
    double = replace(single, **{name: doubled(getattr(single, name), friction) for name in parts})
    names = [n for n in single.__dataclass_fields__ if n.endswith(("kgm2", "nm_rad", "_nms"))]
    double = doubled(double, names)
    pull = HandPull(**STEADY)
    strong = doubled(pull, ("ramp_nm_s", "stiffness_nm_rad", "damping_nms"))
    one = simulate(Scenario("test", "", single, (Rest(0.5), pull), NO_LEVER)).mechanics
    two = simulate(Scenario("test", "", double, (Rest(0.5), strong), NO_LEVER)).mechanics
    np.testing.assert_allclose(two.sensor_nm, 2 * one.sensor_nm, atol=1e-6)
    np.testing.assert_allclose(two.wheel_rad, one.wheel_rad, atol=1e-9)


def test_teeth_that_just_touch_do_not_shake_the_friction_away():
    """A weak axle crept at a third of its friction when the teeth touched and parted in turn at every step."""
    case = draw("worn", 9)
    case = replace(case, actions=case.actions[:3])
    usual, fine = (simulate(case, 9, step_s=step).truth[1] for step in (5e-4, 1.25e-4))
    assert usual.breakaway_nm == pytest.approx(fine.breakaway_nm, rel=0.03)  # tremor differs between the two
    assert usual.breakaway_nm > 0.9 * usual.plateau_nm
