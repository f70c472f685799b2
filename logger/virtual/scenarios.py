"""Scenarios by name: what a hill-climb workshop meets, one each.

All sizes are invented but within what is printed or measured on this kind of axle: see each constant.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import radians
from typing import Any

from logger.errors import InputError
from logger.virtual.drivetrain import Axle
from logger.virtual.hand import Pull
from logger.virtual.pack import Friction
from logger.virtual.physics import Action, LeverOff, Rest, Scenario

# Presliding of a lubricated pack with its tab play taken up: about a twentieth of a degree.
PACK_ELASTIC_RAD = radians(0.05)


def pack(rotating_nm: float, breakaway_ratio: float = 1.2, **changes: Any) -> Friction:
    """Give a clutch pack.

    Parameters
    ----------
    rotating_nm : float
        Friction torque when slipping at hand speed.
    breakaway_ratio : float
        Static over sliding torque for fresh contacts.
    **changes : float
        Other attributes of ``Friction``.
    """
    usual = Friction(
        coulomb_nm=rotating_nm,
        static_nm=rotating_nm * breakaway_ratio,
        stribeck_rad_s=0.03,
        viscous_nms=0.02 * rotating_nm,
        stiffness_nm_rad=rotating_nm / PACK_ELASTIC_RAD,
        damping_nms=0.25 * rotating_nm,
        ageing_nm=0.01 * rotating_nm,
        memory_rad=radians(0.5),
    )
    return replace(usual, **changes)


def drag(torque_nm: float, *, rising: float = 0.0) -> Friction:
    """Give a bearing, seal or brake drag: a little static excess, and a part that rises with speed (N·m per rad/s)."""
    level = max(torque_nm, 0.02)
    return Friction(level, 1.05 * level, 0.05, 1.0, rising, level / radians(0.2), 0.02 * level)


def axle(
    driven: Friction, other: Friction, *, driven_nm: float = 3.0, other_nm: float = 3.0, case_nm: float = 8.0
) -> Axle:
    """Give an axle with these packs and drags: wheels on, other tyre on a dry floor."""
    grip = 0.8 * 3000.0 * 0.31  # friction 0.8, wheel load 3 kN, tyre radius 0.31 m
    return Axle(
        driven_pack=driven,
        other_pack=other,
        driven_drag=drag(driven_nm, rising=0.5),
        other_drag=drag(other_nm, rising=0.5),
        case_drag=drag(case_nm, rising=2.0),
        floor=Friction(grip, grip, stiffness_nm_rad=2.5e4, damping_nms=60.0),
    )


def pulls(count: int, **changes: Any) -> tuple[Action, ...]:
    """Give a test: the lever off for the true zero, then a rest and ``count`` pulls."""
    one = Pull(**changes)
    return (LeverOff(2.0), Rest(2.0), *(one for _ in range(count)), Rest(1.0))


def healthy() -> Scenario:
    """Give a sound pack: breakaway a fifth over rotating torque."""
    sound = pack(45.0)
    return Scenario("healthy", "sound packs, a distinct breakaway, a calm hand", axle(sound, sound), pulls(4))


SCENARIOS: dict[str, Callable[[], Scenario]] = {"healthy": healthy}


def scenario(name: str) -> Scenario:
    """Give a scenario by name.

    Raises
    ------
    InputError
        There is none of this name.
    """
    if name not in SCENARIOS:
        raise InputError(f"There is no scenario '{name}'. There are: {', '.join(SCENARIOS)}.")
    return SCENARIOS[name]()
