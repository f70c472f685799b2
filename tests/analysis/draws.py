"""Recordings drawn at random: every size from a distribution that the trade or physics gives, none from an analysis.

``draw(family, seed)`` gives a scenario; a family is a kind of difficulty:

- ``clean``: sound packs, a steady hand, a good transducer.
- ``realistic``: what a workshop delivers: tremor, unevenness, yanks, re-grips, bumps, moving hand-off level.
- ``hard``: two to four hazards at once.
- ``slow-sensor``: 10 to 50 values a second.
- ``no-peak``: fluids without a static excess.
- ``stick-slip``: friction falling with speed, unstable by the criterion of ``stable_sliding``.
- ``worn``: packs down to the drag.
- ``multi-turn``: near two turns, with waves and re-grips.
- ``adversarial``: recordings that hold no pull at all.
- ``bench``: a unit in a vice; hardly any inertia.

Distributions. Pack torque: log-uniform 15-250 N·m (printed limits run from 27 to 110 for cars, more for trucks). Fresh
static over sliding friction 1.12-1.65 (boundary-lubricated paper and sintered plates, common practice). Half shafts of
28-38 mm: 6.4-19 kN·m/rad. Wheel fitted 0.8-1.5 kg·m², bare hub 0.05-0.15. Hand: 0.8-3.5 s to the first slip, 2-10
turns a minute, tremor 0.3-1.5 % (2-4 % when shaky), arm 500-1500 N·m/rad. Transducer: range chosen so that the
breakaway lies at 20-80 % of it, class 0.2-2 %, 16 to 12 noise-free bits.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import exp, log, radians
from typing import TYPE_CHECKING, Any, Literal, cast

import numpy as np

from logger.errors import InputError
from logger.virtual.hand import HandPull
from logger.virtual.lever import LeverModel
from logger.virtual.pack import Friction, wavy_path
from logger.virtual.physics import Action, LeverOff, Reseat, Rest, Scenario
from logger.virtual.scenarios import axle, pack
from logger.virtual.sensor import SensorFault, SensorModel

if TYPE_CHECKING:
    from logger.virtual.drivetrain import AxleModel

RANGES_NM = (20.0, 50.0, 100.0, 135.0, 200.0, 340.0, 500.0, 750.0, 1000.0, 1500.0)
HAZARDS = (
    "noise", "coarse", "spikes", "gaps", "drift", "clip", "cut", "both", "yank", "hesitate", "regrip", "shaky",
    "bumps", "low ratio", "weak pack", "heavy lever", "short sweep", "fast ramp", "aborted", "errors",
)  # fmt: skip
NOTHING = ("noise", "bumps", "aborted", "drift", "stuck", "errors", "steps", "handling", "spikes", "hold")


class Dice:
    """Random numbers by the names that physics uses."""

    def __init__(self, family: str, seed: int) -> None:
        self.rng = np.random.default_rng([seed, *family.encode()])

    def between(self, low: float, high: float) -> float:
        """Draw uniformly."""
        return float(self.rng.uniform(low, high))

    def ratio(self, low: float, high: float) -> float:
        """Draw log-uniformly: sizes that spread over decades."""
        return exp(self.between(log(low), log(high)))

    def chance(self, probability: float) -> bool:
        """Throw a coin."""
        return bool(self.rng.random() < probability)

    def one_of(self, *choices: Any) -> Any:
        """Choose one."""
        return choices[int(self.rng.integers(len(choices)))]


@dataclass(frozen=True, slots=True)
class Plan:
    """What is being drawn, before it becomes a scenario."""

    dice: Dice
    hazards: frozenset[str]
    level_nm: float
    ratio: float
    axle: AxleModel
    lever: LeverModel
    sensor: SensorModel

    @property
    def peak_nm(self) -> float:
        """About the highest torque of a calm pull at the driven wheel."""
        drags = self.axle.driven_drag.coulomb_nm + self.axle.case_drag.coulomb_nm / 2
        return self.level_nm * max(self.ratio, 1.0) + drags


def draw(family: str, seed: int) -> Scenario:
    """Draw a scenario.

    Parameters
    ----------
    family : str
        One of ``FAMILIES``.
    seed : int
        Same family and seed, same scenario.

    Raises
    ------
    InputError
        There is no such family.
    """
    if family not in FAMILIES:
        raise InputError(f"There is no family '{family}'. There are: {', '.join(FAMILIES)}.")
    dice = Dice(family, seed)
    return replace(FAMILIES[family](dice), name=f"{family}-{seed:03d}")


def _clean(dice: Dice) -> Scenario:
    plan = _plan(dice)
    return _scenario(plan, _pulls(plan, 2, 4, tremor=dice.between(0.002, 0.006), wander=dice.between(0.02, 0.06)))


def _realistic(dice: Dice) -> Scenario:
    odds = {"yank": 0.35, "regrip": 0.15, "hesitate": 0.2, "bumps": 0.4, "both": 0.2, "drift": 0.2, "aborted": 0.15}
    plan = _plan(dice, hazards=frozenset(name for name, odd in odds.items() if dice.chance(odd)))
    return _scenario(plan, _pulls(plan, 2, 5))


def _hard(dice: Dice) -> Scenario:
    count = int(dice.rng.integers(2, 5))
    hazards = frozenset(dice.rng.choice(HAZARDS, count, replace=False).tolist())
    plan = _plan(dice, hazards=hazards)
    return _scenario(plan, _pulls(plan, 1, 4))


def _slow_sensor(dice: Dice) -> Scenario:
    plan = _plan(dice)
    rate = float(dice.one_of(10.0, 12.5, 20.0, 25.0, 50.0))
    average = dice.one_of(0.0, 1.0, 1.0, 4.0) / rate
    sensor = replace(plan.sensor, rate_hz=rate, bandwidth_hz=None if average else rate / 2, average_s=average)
    plan = replace(plan, sensor=replace(sensor, jitter_s=dice.between(0, 0.05) / rate))
    return _scenario(plan, _pulls(plan, 2, 4))


def _no_peak(dice: Dice) -> Scenario:
    rising: dict[str, Any] = {"stribeck_rad_s": dice.between(0.04, 0.2), "ageing_nm": 0.0}
    plan = _plan(dice, ratio=dice.between(0.78, 0.98), rising=dice.between(0.01, 0.06), **rising)
    return _scenario(plan, _pulls(plan, 2, 4))


def _stick_slip(dice: Dice) -> Scenario:
    for _ in range(50):
        falling: dict[str, Any] = {"stribeck_rad_s": dice.ratio(0.08, 0.4), "exponent": dice.between(0.8, 1.5)}
        plan = _plan(dice, ratio=dice.between(1.25, 1.6), rising=0.0, **falling)
        stiffness = dice.between(250.0, 900.0)
        speed = dice.ratio(0.1, 0.4)
        hand = dice.between(1.0, 4.0)
        # At the wheel: slip is half the wheel's speed, so inertia and stiffness of the hand count four times there.
        both = replace(plan.axle.driven_pack, viscous_nms=4 * hand, path=None)
        if not stable_sliding(both, 4 * plan.axle.wheel_kgm2, 4 * stiffness, speed / 2):
            break
    turns = ((speed, dice.between(4.0, 7.0)),)
    pulls = _pulls(plan, 2, 3, turn_rad_s=turns, stiffness_nm_rad=stiffness, damping_nms=hand)
    return _scenario(plan, pulls)


def _worn(dice: Dice) -> Scenario:
    plan = _plan(dice, level_nm=dice.ratio(2.5, 9.0), light=True)
    return _scenario(plan, _pulls(plan, 2, 4))


def _multi_turn(dice: Dice) -> Scenario:
    plan = _plan(dice, waves=dice.between(0.01, 0.04), level_nm=dice.ratio(20.0, 150.0))
    speed = dice.between(0.5, 1.0)
    turn_s = dice.between(1.6, 2.2) * 6.283 / speed
    grips = tuple((dice.between(0.3, 0.7) * turn_s, dice.between(0.4, 0.9)) for _ in range(int(dice.chance(0.6))))
    return _scenario(plan, _pulls(plan, 1, 2, turn_rad_s=((speed, turn_s),), regrips=grips))


def _bench(dice: Dice) -> Scenario:
    plan = _plan(dice)
    unit = replace(
        plan.axle,
        wheel_kgm2=dice.ratio(0.005, 0.03),
        other_kgm2=0.01,
        case_kgm2=dice.ratio(0.01, 0.05),
        driven_shaft_nm_rad=dice.ratio(2e4, 8e4),
        other_shaft_nm_rad=dice.ratio(2e4, 8e4),
    )
    plan = replace(plan, axle=unit)
    return _scenario(plan, _pulls(plan, 2, 4))


def _adversarial(dice: Dice) -> Scenario:
    what = dice.one_of(*NOTHING)
    plan = _plan(dice, hazards=frozenset({what} & {"noise", "bumps", "drift", "errors", "spikes"}))
    full, sensor = plan.sensor.capacity_nm, plan.sensor
    actions: tuple[Action, ...] = (Rest(dice.between(8.0, 16.0), bumps=_bumps(plan) if what == "bumps" else ()),)
    if what in ("aborted", "hold"):
        share = [dice.between(0.15, 0.75) for _ in range(int(dice.rng.integers(1, 4)))]
        hold = dice.between(1.5, 4.0) if what == "hold" else dice.between(0.0, 0.2)
        tries = [replace(_pull(plan), stop_nm=s * plan.peak_nm, hold_s=hold) for s in share]
        actions = (Rest(2.0), *tries)
    elif what == "handling":
        actions = (LeverOff(3.0), Rest(3.0), Reseat(dice.between(-60, 60)), Rest(4.0), LeverOff(3.0))
    elif what == "steps":
        faults = tuple(
            SensorFault("step", dice.between(1, 12), size_nm=dice.between(-0.1, 0.1) * full) for _ in range(3)
        )
        sensor = replace(sensor, faults=faults)
    elif what == "stuck":
        sensor = replace(sensor, faults=(SensorFault("stuck", dice.between(0.5, 3.0), 100.0),))
    elif what == "drift":
        sensor = replace(sensor, drift_nm_min=dice.between(-0.6, 0.6) * full)
    angle = 0.1 if what == "hold" else None
    return _scenario(replace(plan, sensor=sensor), actions, angle=angle)


FAMILIES: dict[str, Callable[[Dice], Scenario]] = {
    "clean": _clean,
    "realistic": _realistic,
    "hard": _hard,
    "slow-sensor": _slow_sensor,
    "no-peak": _no_peak,
    "stick-slip": _stick_slip,
    "worn": _worn,
    "multi-turn": _multi_turn,
    "adversarial": _adversarial,
    "bench": _bench,
}


def _plan(
    dice: Dice,
    *,
    hazards: frozenset[str] = frozenset(),
    level_nm: float | None = None,
    ratio: float | None = None,
    rising: float | None = None,
    waves: float = 0.006,
    light: bool = False,
    **changes: Any,
) -> Plan:
    """Draw axle, lever and transducer."""
    level = level_nm if level_nm is not None else dice.ratio(15.0, 250.0)
    ratio = ratio if ratio is not None else dice.between(1.12, 1.65)
    if "low ratio" in hazards:
        ratio = dice.between(1.02, 1.08)
    skew = dice.between(2.0, 4.0) if "weak pack" in hazards else exp(dice.rng.normal(0, 0.1))
    packs = [
        _pack(dice, level * 2 * share / (1 + skew), ratio, rising, waves, changes) for share in sorted((1.0, skew))
    ]
    if dice.chance(0.5):
        packs.reverse()
    fitted = dice.chance(0.7)
    drawn_axle = _axle(dice, packs, fitted=fitted, drag_nm=min(0.5 * level, 8.0))
    length = dice.between(0.3, 1.0)
    mass = dice.between(0.3, 0.8) if light else dice.between(0.6, 2.0) * (2.0 if "heavy lever" in hazards else 1.0)
    elevation = dice.between(-20.0, 60.0)
    lever = LeverModel(
        length_m=length,
        mass_kg=mass,
        centroid_m=length * dice.between(0.3, 0.5),
        stud_radius_m=dice.one_of(0.0, 0.0, 0.05, 0.05715, 0.0825),
        start_deg=dice.one_of(elevation, 180.0 - elevation),
    )
    peak = level * max(ratio, 1.0) + drawn_axle.driven_drag.coulomb_nm + drawn_axle.case_drag.coulomb_nm / 2
    sensor = _sensor(dice, hazards, peak / lever.factor, lever.mass_kg * 9.81 * lever.centroid_m)
    return Plan(dice, hazards, level, ratio, drawn_axle, lever, sensor)


def _pack(
    dice: Dice, level: float, ratio: float, rising: float | None, waves: float, changes: dict[str, Any]
) -> Friction:
    phases = (dice.between(0, 6.28), dice.between(0, 6.28))
    path = wavy_path((waves * dice.between(0.3, 1.5), waves * dice.between(0, 0.7)), phases, waves / 2, dice.rng)
    drawn: dict[str, Any] = {
        "stribeck_rad_s": dice.ratio(0.01, 0.05),
        "exponent": dice.between(0.7, 1.6),
        "viscous_nms": level * (rising if rising is not None else dice.between(-0.02, 0.06)),
        "stiffness_nm_rad": max(level, 5.0) / radians(dice.ratio(0.03, 0.1)),
        "ageing_nm": level * dice.between(0.003, 0.02),
        "memory_rad": radians(dice.ratio(0.2, 1.0)),
        "path": path,
    }
    return pack(level, ratio, seed=None, **(drawn | changes))


def _axle(dice: Dice, packs: list[Friction], *, fitted: bool, drag_nm: float) -> AxleModel:
    drawn = axle(
        packs[0],
        packs[1],
        driven_nm=drag_nm * dice.between(0.15, 0.8),
        other_nm=drag_nm * dice.between(0.15, 0.8),
        case_nm=drag_nm * dice.between(0.4, 1.8),
        ratio=dice.between(3.0, 4.9),
    )
    return replace(
        drawn,
        wheel_kgm2=dice.between(0.8, 1.5) if fitted else dice.ratio(0.05, 0.15),
        case_kgm2=4 * dice.ratio(0.03, 0.17),
        driven_shaft_nm_rad=dice.ratio(6.4e3, 19.3e3),
        other_shaft_nm_rad=dice.ratio(6.4e3, 19.3e3),
        shaft_nms=dice.between(1.0, 6.0),
        lash_rad=radians(dice.between(0.3, 2.0)),
    )


def _sensor(dice: Dice, hazards: frozenset[str], peak_nm: float, weight_nm: float) -> SensorModel:
    share = dice.between(0.2, 0.75)
    ideal = (peak_nm + weight_nm) / share
    full = min((r for r in RANGES_NM if r >= ideal * 0.8), default=RANGES_NM[-1])
    if "clip" in hazards:
        full = (peak_nm + weight_nm) * dice.between(0.8, 1.0)
    klass = float(dice.one_of(0.2, 0.5, 1.0, 2.0))
    rate = float(dice.one_of(100.0, 250.0, 500.0, 1000.0, 1000.0, 2000.0))
    noise = full * dice.ratio(1.5e-5, 2.5e-4) + ("noise" in hazards) * peak_nm * dice.between(0.008, 0.03)
    step = full * dice.ratio(2e-5, 5e-4)
    return SensorModel(
        rate_hz=rate,
        clock_ppm=dice.between(-50, 50),
        jitter_s=dice.one_of(0.0, 0.02, 0.1) / rate,
        capacity_nm=full,
        resolution_nm=peak_nm * dice.between(0.008, 0.02) if "coarse" in hazards else step,
        gain=1.0 + klass / 200 * float(np.clip(dice.rng.normal(), -2, 2)),
        zero_nm=full * dice.rng.normal() * 0.004,
        drift_nm_min=full * dice.rng.normal() * (0.02 if "drift" in hazards else 0.0004),
        noise_nm=noise,
        hysteresis=dice.between(0, 0.1) * klass / 100,
        bandwidth_hz=rate * dice.between(0.2, 0.5),
        order=int(dice.one_of(1, 2, 4)),
        accuracy_percent=klass,
        gain_known=dice.chance(0.4),
        overload=cast("Literal['limit', 'mark']", dice.one_of("limit", "limit", "mark")),
        faults=_faults(dice, hazards, full),
    )


def _faults(dice: Dice, hazards: frozenset[str], full_nm: float) -> tuple[SensorFault, ...]:
    faults = []
    for hazard, kind, longest in (("spikes", "spike", 0.0), ("gaps", "gap", 0.3), ("errors", "error", 0.2)):
        if hazard in hazards:
            for _ in range(int(dice.rng.integers(3, 12))):
                size = full_nm * dice.between(0.1, 0.6) * dice.one_of(-1, 1)
                what = cast("Literal['spike', 'gap', 'error']", kind)
                faults.append(SensorFault(what, dice.between(0.5, 50.0), dice.between(0.0, longest), size))
    return tuple(sorted(faults, key=lambda fault: fault.at_s))


def _pull(plan: Plan, **changes: Any) -> HandPull:
    dice, hazards, peak = plan.dice, plan.hazards, plan.peak_nm
    speed = dice.ratio(0.2, 1.0)
    sweep = radians(dice.between(15, 30) if "short sweep" in hazards else dice.between(35, 95))
    stiffness = dice.ratio(500.0, 1500.0)
    swing = 2 * (stiffness * (plan.axle.wheel_kgm2 + plan.lever.axle_kgm2)) ** 0.5
    to_slip_s = dice.ratio(0.15, 0.4) if "fast ramp" in hazards else dice.between(0.8, 3.5)
    drawn: dict[str, Any] = {
        "ramp_nm_s": peak / to_slip_s,
        "turn_rad_s": ((speed, sweep / speed),),
        "stiffness_nm_rad": stiffness,
        "damping_nms": swing * dice.between(0.1, 0.25),
        "react_s": dice.between(0.12, 0.3),
        "tremor": dice.between(0.02, 0.04) if "shaky" in hazards else dice.between(0.003, 0.015),
        "wander": dice.between(0.03, 0.15),
        "release_s": dice.between(0.15, 0.6),
        "dwell_s": dice.between(2.0, 7.0),
    }
    if "yank" in hazards and dice.chance(0.7):
        drawn["yanks"] = (
            (dice.between(0.3, 0.9) * sweep / speed, peak * dice.between(0.1, 0.5), dice.between(0.1, 0.4)),
        )
    if "hesitate" in hazards and dice.chance(0.7):
        drawn["hesitations"] = ((peak * dice.between(0.3, 0.8), dice.between(0.3, 1.0)),)
    if "regrip" in hazards and dice.chance(0.7):
        drawn["regrips"] = ((dice.between(0.3, 0.7) * sweep / speed, dice.between(0.3, 0.9)),)
    return HandPull(**(drawn | changes))


def _pulls(plan: Plan, least: int, most: int, **changes: Any) -> tuple[Action, ...]:
    """Draw a test: rests, bumps, pulls; the lever goes on from where it is, or is put back."""
    dice, hazards = plan.dice, plan.hazards
    actions: list[Action] = [LeverOff(dice.between(1.0, 3.0))] if dice.chance(0.3) else []
    actions.append(Rest(dice.between(1.0, 3.0), bumps=_bumps(plan) if "bumps" in hazards else ()))
    count = int(dice.rng.integers(least, most + 1))
    direction = dice.one_of(1, -1)
    put_back = dice.chance(0.4)
    for index in range(count):
        turned = -direction if "both" in hazards and index % 2 else direction
        if "aborted" in hazards and dice.chance(0.4):
            actions.append(replace(_pull(plan, direction=turned), stop_nm=plan.peak_nm * dice.between(0.2, 0.6)))
        actions.append(_pull(plan, direction=turned, **changes))
        if put_back and index < count - 1:
            actions += [Reseat(plan.lever.start_deg + dice.between(-10, 10)), Rest(dice.between(0.5, 2.0))]
    return (*actions, Rest(dice.between(0.5, 2.0)))


def _bumps(plan: Plan) -> tuple[tuple[float, float, float], ...]:
    """Draw knocks of a socket being seated: up to 60 % of the breakaway, 15-60 ms."""
    dice = plan.dice
    return tuple(
        (dice.between(0.2, 2.5), plan.peak_nm * dice.ratio(0.05, 0.6) * dice.one_of(-1, 1), dice.between(0.015, 0.06))
        for _ in range(int(dice.rng.integers(1, 5)))
    )


def _scenario(plan: Plan, actions: tuple[Action, ...], *, angle: float | None = None) -> Scenario:
    dice = plan.dice
    if angle is None and dice.chance(0.25):
        angle = float(dice.one_of(0.01, 0.1, 0.5))
    recorded = (dice.between(2.5, 6.0), 1e9) if "cut" in plan.hazards else None
    about = ", ".join(sorted(plan.hazards)) or "no hazard"
    return Scenario("", about, plan.axle, actions, plan.lever, plan.sensor, angle, recorded)


def stable_sliding(friction: Friction, inertia: float, stiffness: float, speed: float) -> bool:
    """Say whether steady sliding, drawn through a spring at this speed, is stable; else it is stick-slip.

    Parameters
    ----------
    friction : Friction
        The element (contact ageing is excluded).
    inertia, stiffness : float
        Of what slides, and of the spring that draws it.
    speed : float
        Of the spring's far end, not zero.

    Notes
    -----
    The linearised equations have the characteristic polynomial ``s^3 + a1 s^2 + a2 s + a3``; it is stable if all three
    are positive and ``a1 a2 > a3`` (K. J. Åström, C. Canudas de Wit, IEEE Control Systems Magazine, December 2008,
    pages 101-114, equation 27).
    """
    v = abs(speed)
    ratio = (v / friction.stribeck_rad_s) ** friction.exponent
    excess = (friction.static_nm - friction.coulomb_nm) * exp(-ratio)
    level, slope = friction.coulomb_nm + excess, -excess * ratio * friction.exponent / v
    rate = friction.stiffness_nm_rad * v / level
    a1 = rate + (friction.viscous_nms + friction.damping_nms * v * slope / level) / inertia
    a2 = rate * (slope + friction.viscous_nms) / inertia + stiffness / inertia
    a3 = rate * stiffness / inertia
    return bool(min(a1, a2, a3) > 0 and a1 * a2 > a3)
