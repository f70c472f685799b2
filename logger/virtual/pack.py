"""Dry and lubricated friction as elastic bristles: packs, drags, a tyre on the floor.

Conventions:
- One element acts between two turning parts (or a part and the ground): torque N·m, slip rad, slip speed rad/s. The
  same equations hold for a force, a distance and a speed, which is how the published examples are written.
- ``z`` is the mean bristle deflection, ``age`` the time the contacts have been together.

Source: C. Canudas de Wit, H. Olsson, K. J. Åström, P. Lischinsky, IEEE Trans. Automatic Control 40 (1995) 419-425:
``dz/dt = v - s0 |v| z / g(v)``, ``F = s0 z + s1 dz/dt + s2 v``, ``g = Fc + (Fs - Fc) exp(-|v/vs|^a)``.
Contact ageing: static friction grows with the logarithm of the time at rest and is forgotten over a short slip
(the rate-and-state ageing law ``dA/dt = 1 - |v| A / d``, from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import exp, log1p, pi
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

# The time at rest from which contacts have gained one e-fold: shorter rests gain nothing worth counting.
AGEING_TIME_S = 1.0
# Points of a table that modulates friction along the slip path: one per 0.35° of a turn, finer than any plate feature.
PATH_POINTS = 1024
# Beyond this many Stribeck speeds the static excess is under 1e-15 (exponent 1): not worth an exponential.
STRIBECK_SPAN = 36.0

Linear = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Friction:
    """One friction element."""

    # coulomb_nm, static_nm: sliding level at high speed and level at speed zero (fresh contacts). ``static`` below
    # ``coulomb`` is a fluid whose friction rises with speed.
    coulomb_nm: float
    static_nm: float
    # stribeck_rad_s, exponent: how fast the static level gives way to the sliding level
    stribeck_rad_s: float = 0.02
    exponent: float = 1.0
    viscous_nms: float = 0.0  # N·m per rad/s
    # stiffness_nm_rad, damping_nms: of the bristles (s0, s1)
    stiffness_nm_rad: float = 3e4
    damping_nms: float = 20.0
    ageing_nm: float = 0.0  # torque gained per e-fold of time at rest
    memory_rad: float = 0.01  # slip over which contacts are renewed
    path: NDArray[np.float64] | None = None  # shape (PATH_POINTS,); factor on the friction along the slip path
    path_period_rad: float = 2 * pi  # length of the path
    # run_in, run_in_rad: a new element's level is higher by this share (lower if negative), fading over this slip
    run_in: float = 0.0
    run_in_rad: float = 30.0

    def after(self, travel_rad: float) -> Friction:
        """Give the same element after it has slipped ``travel_rad`` in all: running in changes its level."""
        if not self.run_in:
            return self
        level = 1.0 + self.run_in * exp(-travel_rad / self.run_in_rad)
        return replace(self, coulomb_nm=self.coulomb_nm * level, static_nm=self.static_nm * level)

    def steady_nm(self, speed_rad_s: float) -> float:
        """Torque at a steady slip speed (its sign is the speed's), contacts renewed, path factor 1."""
        if speed_rad_s == 0.0:
            return 0.0
        v = abs(speed_rad_s)
        excess = self.static_nm - self.coulomb_nm
        level = self.coulomb_nm + excess * exp(-((v / self.stribeck_rad_s) ** self.exponent))
        renewed = self.ageing_nm * log1p(self.memory_rad / v / AGEING_TIME_S)
        return (level + renewed + self.viscous_nms * v) * (1.0 if speed_rad_s > 0 else -1.0)

    @property
    def elastic_rad(self) -> float:
        """Deflection at which the bristles carry the greater of the two levels: the end of elastic motion."""
        return max(self.static_nm, self.coulomb_nm) / self.stiffness_nm_rad


def bristles(friction: Friction, step_s: float) -> Callable[[float, float, float, float], Linear]:
    """Compile one element for steps of fixed length.

    The deflection at the end of a step is taken implicitly in the slip speed at its end, with the contact strength at
    a guessed speed: ``z' = (z + h v') / D``, ``D = 1 + h s0 |v| / g(|v|)``. The torque is then linear in ``v'``, and
    stable for any step.

    Args:
        friction: The element.
        step_s: Step length h.

    Returns:
        ``(speed, z, age, position) -> (a, b, D)`` with the torque at the end of the step ``a + b v'``.
    """
    coulomb, excess = friction.coulomb_nm, friction.static_nm - friction.coulomb_nm
    stribeck, exponent, ageing = friction.stribeck_rad_s, friction.exponent, friction.ageing_nm
    span = stribeck * STRIBECK_SPAN ** (1.0 / exponent)
    viscous, s0_step = friction.viscous_nms, friction.stiffness_nm_rad * step_s
    s1_step = friction.damping_nms / step_s
    stiff = friction.stiffness_nm_rad + s1_step
    path = None if friction.path is None else friction.path.tolist()
    per_rad = PATH_POINTS / friction.path_period_rad

    def linear(speed: float, z: float, age: float, position: float) -> Linear:
        strength = coulomb
        if excess and speed < span:
            strength += excess * exp(-((speed / stribeck) ** exponent))
        if ageing:
            strength += ageing * log1p(age / AGEING_TIME_S)
        if path is not None:
            strength *= path[int(position * per_rad) % PATH_POINTS]
        d = 1.0 + s0_step * speed / strength
        gain = stiff / d
        return (gain - s1_step) * z, gain * step_s + viscous, d

    return linear


def wavy_path(
    amplitudes: tuple[float, ...], phases_rad: tuple[float, ...], roughness: float, rng: np.random.Generator
) -> NDArray[np.float64]:
    """Make a path factor of mean 1.

    Args:
        amplitudes, phases_rad: Of the first, second ... order of the path.
        roughness: Standard deviation of random unevenness, orders 3 to 60, falling with the order.
        rng: For the roughness.

    Returns:
        shape (PATH_POINTS,); The factor.
    """
    turn = 2 * pi * np.arange(PATH_POINTS) / PATH_POINTS
    factor = np.ones(PATH_POINTS)
    for order, (amplitude, phase) in enumerate(zip(amplitudes, phases_rad, strict=True), start=1):
        factor += amplitude * np.cos(order * turn + phase)
    if roughness > 0:
        orders = np.arange(3, 61)
        weight = rng.standard_normal(orders.size) / np.sqrt(orders)
        rough = (weight[:, None] * np.cos(orders[:, None] * turn + rng.uniform(0, 2 * pi, orders.size)[:, None])).sum(0)
        factor += roughness * rough / rough.std()
    return np.maximum(factor, 0.2)
