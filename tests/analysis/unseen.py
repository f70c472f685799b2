"""Draws of kinds that no constant of the reading was chosen on: other hands, other rigs, other displays.

The families of ``tests.analysis.draws`` chose constants. These judge: a family here is another kind of test, not
another seed. Nobody tunes to them; a constant that is changed because of one of them moves that family over there.

- ``impatient``: a hand that lets go as soon as it feels the slip, and takes hold again.
- ``light``: a unit in a vice, ramps of 0.1-0.3 s, sweeps of 10-25 degrees, many pulls.
- ``drive``: a constant-speed drive, strokes to and fro with and without a rest between them.
- ``steep``: packs whose steady torque is 35-60 % of their breakaway.
- ``handled``: the lever put on, moved or taken off 0.3-5 s before each pull.
- ``display``: a gauge read 2-10 times a second, coarse.
- ``fluid``: a fluid coupling: torque follows speed, no breakaway at all.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import radians
from typing import TYPE_CHECKING

from logger.virtual.physics import Action, LeverOff, Reseat, Rest, Scenario
from tests.analysis import draws
from tests.analysis.draws import Dice, Plan

if TYPE_CHECKING:
    from logger.virtual.hand import HandPull


def draw(family: str, seed: int) -> Scenario:
    """Draw a scenario of one of ``UNSEEN``."""
    return replace(UNSEEN[family](Dice(family, seed)), name=f"{family}-{seed:03d}")


def _pulls(plan: Plan, least: int, most: int, make: Callable[[], HandPull]) -> tuple[Action, ...]:
    dice = plan.dice
    pulls = [make() for _ in range(int(dice.rng.integers(least, most + 1)))]
    return (Rest(dice.between(1.0, 3.0)), *pulls, Rest(dice.between(0.5, 2.0)))


def _impatient(dice: Dice) -> Scenario:
    plan = draws._plan(dice)

    def make() -> HandPull:
        speed = dice.ratio(0.2, 0.8)
        turned_s = dice.between(0.25, 0.9)
        again = ((dice.between(0.3, 0.6) * turned_s, dice.between(0.3, 0.7)),) if dice.chance(0.3) else ()
        return draws._pull(plan, turn_rad_s=((speed, turned_s),), release_s=dice.between(0.15, 0.3), regrips=again)

    return draws._scenario(plan, _pulls(plan, 2, 4, make), angle=None)


def _light(dice: Dice) -> Scenario:
    plan = draws._plan(dice)
    unit = replace(
        plan.axle,
        wheel_kgm2=dice.ratio(0.003, 0.02),
        other_kgm2=0.01,
        case_kgm2=dice.ratio(0.005, 0.03),
        driven_shaft_nm_rad=dice.ratio(2e4, 8e4),
        other_shaft_nm_rad=dice.ratio(2e4, 8e4),
        lash_rad=radians(dice.between(0.1, 0.4)),
    )
    plan = replace(plan, axle=unit, sensor=replace(plan.sensor, rate_hz=float(dice.one_of(100.0, 250.0, 500.0))))

    def make() -> HandPull:
        speed = dice.ratio(0.15, 0.4)
        sweep = radians(dice.between(10.0, 25.0))
        return draws._pull(
            plan,
            ramp_nm_s=plan.peak_nm / dice.ratio(0.1, 0.3),
            turn_rad_s=((speed, sweep / speed),),
            dwell_s=dice.between(0.6, 4.0),
            release_s=dice.between(0.1, 0.25),
        )

    return draws._scenario(plan, _pulls(plan, 6, 10, make))


def _drive(dice: Dice) -> Scenario:
    plan = draws._plan(dice, level_nm=dice.ratio(20.0, 150.0))
    speed, way = dice.ratio(0.1, 0.5), dice.one_of(1, -1)
    strokes: list[Action] = [Rest(dice.between(1.5, 3.0))]
    for _ in range(int(dice.rng.integers(2, 5))):
        rest = dice.one_of(0.0, dice.between(1.0, 3.0))
        strokes.append(
            draws._pull(
                plan,
                direction=way,
                ramp_nm_s=plan.peak_nm / dice.between(0.3, 1.5),
                turn_rad_s=((speed, dice.between(3.0, 12.0)),),
                stiffness_nm_rad=dice.ratio(2000.0, 6000.0),
                tremor=0.0005,
                wander=0.005,
                release_s=dice.between(0.1, 0.2),
                dwell_s=rest,
            )
        )
        way = -way
    return draws._scenario(plan, (*strokes, Rest(2.0)))


def _steep(dice: Dice) -> Scenario:
    plan = draws._plan(dice, ratio=1 / dice.between(0.35, 0.6), stribeck_rad_s=dice.ratio(0.01, 0.04))
    return draws._scenario(plan, _pulls(plan, 2, 4, lambda: draws._pull(plan)))


def _handled(dice: Dice) -> Scenario:
    plan = draws._plan(dice, hazards=frozenset({"heavy lever"} if dice.chance(0.4) else ()))
    actions: list[Action] = [LeverOff(dice.between(1.0, 3.0))]
    for _ in range(int(dice.rng.integers(2, 5))):
        if dice.chance(0.6):
            actions.append(Reseat(plan.lever.start_deg + dice.between(-60.0, 60.0), dice.between(1.0, 3.0)))
        actions += [Rest(dice.ratio(0.3, 5.0)), draws._pull(plan, dwell_s=dice.between(0.5, 3.0))]
        if dice.chance(0.5):
            actions.append(LeverOff(dice.between(0.5, 3.0)))
    return draws._scenario(plan, (*actions, Rest(1.0)), angle=None)


def _display(dice: Dice) -> Scenario:
    plan = draws._plan(dice)
    rate = float(dice.one_of(2.0, 3.0, 5.0, 10.0))
    sensor = replace(
        plan.sensor,
        rate_hz=rate,
        jitter_s=dice.between(0.0, 0.1) / rate,
        bandwidth_hz=None,
        average_s=dice.one_of(0.5, 1.0) / rate,
        resolution_nm=plan.sensor.capacity_nm / dice.one_of(500.0, 1000.0, 2000.0),
    )
    plan = replace(plan, sensor=sensor)

    def make() -> HandPull:
        speed = dice.ratio(0.15, 0.5)
        return draws._pull(
            plan,
            ramp_nm_s=plan.peak_nm / dice.between(2.0, 5.0),
            turn_rad_s=((speed, dice.between(2.5, 8.0)),),
            dwell_s=dice.between(3.0, 8.0),
        )

    return draws._scenario(plan, _pulls(plan, 2, 4, make), angle=None)


def _fluid(dice: Dice) -> Scenario:
    level = dice.ratio(20.0, 120.0)
    plan = draws._plan(dice, level_nm=level, ratio=0.15, rising=dice.between(1.0, 3.0), ageing_nm=0.0)
    speed = dice.ratio(0.2, 0.8)
    pulls = _pulls(plan, 1, 3, lambda: draws._pull(plan, turn_rad_s=((speed, dice.between(4.0, 10.0)),), wander=0.02))
    return draws._scenario(plan, pulls)


UNSEEN: dict[str, Callable[[Dice], Scenario]] = {
    "impatient": _impatient,
    "light": _light,
    "drive": _drive,
    "steep": _steep,
    "handled": _handled,
    "display": _display,
    "fluid": _fluid,
}
