"""Scenarios by name: what a small hill-climb workshop meets, one each.

All sizes are invented, but of the order that is printed or measured on such axles: wheel drag 3-7 N·m (pads and seals),
driveline drag at the case 8-18 N·m (pinion preload times ratio), half shafts 6-19 kN·m/rad, a fitted wheel 0.8-1.5
kg·m², a bare hub 0.05-0.15 kg·m², 2-10 turns a minute by hand. ``draws`` varies them at random.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import radians
from typing import Any

import numpy as np

from logger.errors import InputError
from logger.virtual.drivetrain import AxleModel
from logger.virtual.hand import HandPull
from logger.virtual.lever import LeverModel
from logger.virtual.pack import Friction, wavy_path
from logger.virtual.physics import Action, LeverOff, Reseat, Rest, Scenario
from logger.virtual.sensor import SensorFault, SensorModel

# Presliding of a lubricated pack with its tab play taken up: about a twentieth of a degree.
PACK_ELASTIC_RAD = radians(0.05)
# A drag's own presliding (seal lips and bearing balls): larger, a fifth of a degree.
DRAG_ELASTIC_RAD = radians(0.2)
# The held tyre: friction 0.8 on a dry floor, 3 kN of wheel load, 0.31 m radius.
TYRE_GRIP_NM = 0.8 * 3000.0 * 0.31
TYRE_NM_RAD = 2.5e4


Changes = dict[str, Any]


def pack(rotating_nm: float, breakaway_ratio: float = 1.2, *, seed: int | None = 1, **changes: Any) -> Friction:
    """Give a clutch pack.

    Args:
        rotating_nm: Friction torque when slipping fast.
        breakaway_ratio: Static over sliding torque for fresh contacts; below 1: a fluid whose friction rises with
            speed.
        seed: Of the unevenness along the slip path; None: perfectly even.
        **changes: Other attributes of ``Friction``.
    """
    path = None
    if seed is not None:
        rng = np.random.default_rng([seed, 1])
        path = wavy_path((0.008, 0.004), (rng.uniform(0, 6.28), rng.uniform(0, 6.28)), 0.004, rng)
    usual = Friction(
        coulomb_nm=rotating_nm,
        static_nm=rotating_nm * breakaway_ratio,
        stribeck_rad_s=0.03,
        viscous_nms=0.02 * rotating_nm,
        stiffness_nm_rad=max(rotating_nm, 5.0) / PACK_ELASTIC_RAD,
        damping_nms=0.25 * rotating_nm,
        ageing_nm=0.01 * rotating_nm,
        memory_rad=radians(0.5),
        path=path,
    )
    return replace(usual, **changes)


def drag(torque_nm: float, *, rising: float = 0.0, ripple: float = 0.0, period_rad: float = radians(360)) -> Friction:
    """Give a bearing, seal or brake drag.

    Args:
        torque_nm: At slow speed.
        rising: N·m per rad/s.
        ripple: Amplitude of its first order as a share (brake disc run-out once per turn, joints once per pinion turn).
        period_rad: One turn of what makes the ripple.
    """
    level = max(torque_nm, 0.02)
    path = wavy_path((ripple,), (1.0,), 0.0, np.random.default_rng(0)) if ripple else None
    return Friction(
        level,
        1.05 * level,
        0.05,
        1.0,
        rising,
        level / DRAG_ELASTIC_RAD,
        0.02 * level,
        path=path,
        path_period_rad=period_rad,
    )


def axle(
    driven: Friction,
    other: Friction,
    *,
    driven_nm: float = 3.0,
    other_nm: float = 3.0,
    case_nm: float = 8.0,
    ratio: float = 3.73,
    **changes: Any,
) -> AxleModel:
    """Give an axle with these packs and drags: wheels fitted, the other tyre on a dry floor."""
    usual = AxleModel(
        driven_pack=driven,
        other_pack=other,
        driven_drag=drag(driven_nm, rising=0.5, ripple=0.08),
        other_drag=drag(other_nm, rising=0.5, ripple=0.08),
        case_drag=drag(case_nm, rising=2.0, ripple=0.03, period_rad=radians(360) / ratio),
        floor=Friction(TYRE_GRIP_NM, TYRE_GRIP_NM, stiffness_nm_rad=TYRE_NM_RAD, damping_nms=60.0),
    )
    return replace(usual, **changes)


def pulls(count: int, *, start_deg: float = 20.0, reseat: bool = True, **changes: Any) -> tuple[Action, ...]:
    """Give a test: the lever off for the true zero, then pulls, the lever put back to its start each time."""
    actions: list[Action] = [LeverOff(2.0), Rest(1.5)]
    for index in range(count):
        if index and reseat:
            actions += [Reseat(start_deg), Rest(1.0)]
        actions.append(HandPull(**changes))
    return (*actions, LeverOff(2.0))


def healthy() -> Scenario:
    """Give sound packs."""
    sound = axle(pack(45.0), pack(45.0, seed=2))
    return Scenario("healthy", "sound packs, a distinct breakaway, a calm hand", sound, pulls(5))


def worn() -> Scenario:
    """Give worn packs: what is left is of the size of the drag, and of inertia times acceleration."""
    tired = axle(pack(6.0, 1.35), pack(5.0, 1.35, seed=2), driven_nm=2.0, other_nm=2.0, case_nm=5.0)
    sensor = SensorModel(capacity_nm=50.0, resolution_nm=0.005, noise_nm=0.01)
    return Scenario("worn", "packs worn down to the drag", tired, pulls(4, ramp_nm_s=8.0), sensor=sensor)


def no_overshoot() -> Scenario:
    """Give a well-modified fluid: friction rises with speed, so there is no separate breakaway."""
    fluid: Changes = {"stribeck_rad_s": 0.08, "ageing_nm": 0.0, "viscous_nms": 2.0}
    smooth = axle(pack(52.0, 0.9, **fluid), pack(52.0, 0.9, seed=2, **fluid))
    return Scenario("no-overshoot", "an oil that leaves no breakaway peak", smooth, pulls(4))


def stick_slip() -> Scenario:
    """Give the wrong oil: friction falls with speed over the whole range of a hand."""
    wrong: Changes = {"stribeck_rad_s": 0.15, "viscous_nms": 0.0, "ageing_nm": 1.0}
    chattering = axle(pack(60.0, 1.5, **wrong), pack(60.0, 1.5, seed=2, **wrong))
    slow = pulls(3, turn_rad_s=((0.18, 6.0),), stiffness_nm_rad=450.0, damping_nms=3.0)
    return Scenario("stick-slip", "the wrong oil: stick and slip while turning", chattering, slow)


def unequal() -> Scenario:
    """Give one weak pack: it slips first, through the gear lash, and leaves a kink below the breakaway."""
    uneven = axle(pack(22.0, 1.25), pack(66.0, 1.25, seed=2), lash_rad=0.035)
    return Scenario("unequal-packs", "one pack three times the other; the wheel feels their mean", uneven, pulls(4))


def slow_sensor() -> Scenario:
    """Give a weighing converter: ten values a second after 0.4 s of averaging."""
    sensor = SensorModel(
        rate_hz=10.0, bandwidth_hz=None, average_s=0.4, noise_nm=0.05, resolution_nm=0.05, jitter_s=0.002
    )
    test = pulls(4, ramp_nm_s=30.0)
    return Scenario("slow-sensor", "ten values a second: the peak is missed", healthy().axle, test, sensor=sensor)


def clumsy() -> Scenario:
    """Give every mistake of the hand, one after the other."""
    done: Changes = {"direction": 1, "tremor": 0.015, "wander": 0.15}
    actions: tuple[Action, ...] = (
        LeverOff(2.0),
        Rest(3.0, bumps=((0.5, 14.0, 0.05), (1.4, -9.0, 0.04))),
        HandPull(ramp_nm_s=25.0, hesitations=((28.0, 0.6),), **done),
        Reseat(20.0),
        Rest(1.0),
        HandPull(ramp_nm_s=90.0, **done),
        Reseat(20.0),
        HandPull(stop_nm=30.0, **done),
        HandPull(ramp_nm_s=30.0, yanks=((1.5, 25.0, 0.25),), **done),
        Reseat(20.0),
        HandPull(ramp_nm_s=30.0, regrips=((1.8, 0.6),), **done),
        LeverOff(2.0),
    )
    return Scenario(
        "clumsy-hand", "bumps, a hesitation, a jerk, an aborted pull, a yank, a re-grip", healthy().axle, actions
    )


def several_turns() -> Scenario:
    """Give two whole turns and more, with the waves that repeat every turn and every second turn."""
    rng = np.random.default_rng(5)
    wavy = wavy_path((0.03, 0.01), (0.4, 2.0), 0.005, rng)
    waves = axle(pack(60.0, 1.25, path=wavy), pack(60.0, 1.25, seed=2), driven_nm=6.0)
    turns = pulls(2, reseat=False, turn_rad_s=((0.8, 17.0),), regrips=((8.0, 0.7),), dwell_s=5.0)
    return Scenario("several-turns", "two whole turns and more, re-gripped once", waves, turns)


def both_free() -> Scenario:
    """Give the drag baseline: both wheels in the air, at half the speed so that the case turns as fast."""
    axle_free = replace(healthy().axle, held="none")
    slow = pulls(3, ramp_nm_s=8.0, turn_rad_s=((0.25, 6.0),), stiffness_nm_rad=400.0)
    sensor = SensorModel(capacity_nm=100.0, resolution_nm=0.005, noise_nm=0.015)
    light = LeverModel(mass_kg=0.8, centroid_m=0.18, start_deg=-70.0)
    return Scenario("both-free", "drag baseline: both wheels turn", axle_free, slow, light, sensor)


def case_held() -> Scenario:
    """Give the factor-of-two trap: the case clamped, the sum of both packs at the driven wheel."""
    clamped = replace(healthy().axle, held="case")
    return Scenario("case-held", "case held: about twice the torque", clamped, pulls(3, ramp_nm_s=50.0))


def open_differential() -> Scenario:
    """Give no clutch at all: only gear friction and drag."""
    plain = axle(pack(1.5, 1.1), pack(1.5, 1.1, seed=2), driven_nm=3.0, case_nm=8.0)
    light = LeverModel(mass_kg=0.6, centroid_m=0.15, start_deg=-80.0)
    sensor = SensorModel(capacity_nm=50.0, resolution_nm=0.005, noise_nm=0.01)
    weak = pulls(3, ramp_nm_s=4.0, stiffness_nm_rad=300.0, turn_rad_s=((0.4, 3.0),))
    return Scenario("open-differential", "no clutch: gear friction and drag alone", plain, weak, light, sensor)


def locked() -> Scenario:
    """Give a spool: the wheel winds up and never slips."""
    solid = Friction(1e5, 1e5, stiffness_nm_rad=2e5, damping_nms=20.0)
    spool = axle(solid, solid)
    return Scenario(
        "locked", "a spool: it winds up and never slips", spool, pulls(3, ramp_nm_s=40.0, strength_nm=150.0)
    )


def tyre_slips() -> Scenario:
    """Give a held tyre that is barely on the floor: what slips is the tyre."""
    grip = Friction(26.0, 29.0, 0.1, stiffness_nm_rad=TYRE_NM_RAD, damping_nms=60.0)
    return Scenario("tyre-slips", "the held tyre slips before the packs", replace(healthy().axle, floor=grip), pulls(3))


def motor() -> Scenario:
    """Give a drive at constant speeds, one after the other: friction against speed."""
    levels = tuple((speed, 4.0) for speed in (0.05, 0.1, 0.2, 0.4, 0.8, 1.6))
    drive: Changes = {"stiffness_nm_rad": 6000.0, "damping_nms": 60.0, "tremor": 0.0, "wander": 0.001, "react_s": 0.02}
    no_lever = LeverModel(mass_kg=0.0, centroid_m=0.0)
    test = pulls(1, turn_rad_s=levels, ramp_nm_s=30.0, **drive)
    return Scenario("motor", "a drive at six constant speeds", healthy().axle, test, no_lever, angle_step_deg=0.05)


def bench() -> Scenario:
    """Give a unit on the bench: stub shaft held in a vice, nothing heavy turns."""
    light: Changes = {"wheel_kgm2": 0.01, "other_kgm2": 0.01, "case_kgm2": 0.02, "driven_shaft_nm_rad": 4e4}
    unit = axle(pack(45.0), pack(45.0, seed=2), driven_nm=0.3, other_nm=0.3, case_nm=0.4, **light)
    return Scenario("bench", "a unit in the vice: hardly any inertia or drag", unit, pulls(4))


def run_in() -> Scenario:
    """Give new plates: the level falls from pull to pull."""
    new: Changes = {"run_in": 0.25, "run_in_rad": 6.0}
    fresh = axle(pack(45.0, **new), pack(45.0, seed=2, **new))
    return Scenario("run-in", "new plates running in", fresh, pulls(8, dwell_s=2.0))


def faulty() -> Scenario:
    """Give a transducer with every fault of its own, and a lever on one stud."""
    faults = (
        SensorFault("spike", 6.0, size_nm=60.0),
        SensorFault("gap", 15.0, 0.12),
        SensorFault("stuck", 19.0, 0.5),
        SensorFault("re-zero", 29.0),
        SensorFault("step", 40.0, size_nm=1.5),
        SensorFault("error", 44.0, 0.05),
    )
    sensor = SensorModel(zero_nm=0.8, drift_nm_min=0.3, hysteresis=0.001, clock_ppm=40.0, gain=1.004, faults=faults)
    stud = LeverModel(stud_radius_m=0.05715, mass_kg=1.5)
    return Scenario(
        "faulty-sensor", "spike, gap, stuck value, self-zeroing, cable step", healthy().axle, pulls(5), stud, sensor
    )


def self_zero() -> Scenario:
    """Give a transducer that zeroes itself while it is loaded, in the middle of the second pull."""
    sensor = SensorModel(zero_nm=0.2, faults=(SensorFault("re-zero", 22.0),))
    return Scenario("self-zero", "zeroes itself under load in the second pull", healthy().axle, pulls(3), sensor=sensor)


def overload() -> Scenario:
    """Give a range too small for the breakaway, and a converter that sends zeros beyond it."""
    sensor = SensorModel(capacity_nm=54.0, overload="zeros")
    return Scenario("overload", "beyond its range it sends zeros", healthy().axle, pulls(3), sensor=sensor)


SCENARIOS: dict[str, Callable[[], Scenario]] = {
    "healthy": healthy,
    "worn": worn,
    "no-overshoot": no_overshoot,
    "stick-slip": stick_slip,
    "unequal-packs": unequal,
    "slow-sensor": slow_sensor,
    "clumsy-hand": clumsy,
    "several-turns": several_turns,
    "both-free": both_free,
    "case-held": case_held,
    "open-differential": open_differential,
    "locked": locked,
    "tyre-slips": tyre_slips,
    "motor": motor,
    "bench": bench,
    "run-in": run_in,
    "faulty-sensor": faulty,
    "self-zero": self_zero,
    "overload": overload,
}


def scenario(name: str) -> Scenario:
    """Give a scenario by name.

    Raises:
        InputError: There is none of this name.
    """
    if name not in SCENARIOS:
        raise InputError(f"There is no scenario '{name}'. There are: {', '.join(SCENARIOS)}.")
    return SCENARIOS[name]()
