"""The axle between the driven wheel and the held one, marched through time.

Conventions:
- Clockwise seen from outside the driven wheel is positive; the held wheel's coordinate is mirrored, so that both turn
  the same way when the car would roll. Angles rad, speeds rad/s, torques N·m.
- Five turning parts: driven wheel ``w`` (with the lever), driven side gear ``r``, case ``c`` (ring gear, pinion and
  propeller shaft referred to it), other side gear ``s``, other wheel ``h``.
- Between them: two half shafts (springs), two packs (``r``-``c`` and ``s``-``c``), the pinions of the differential
  (``r + s - 2 c``: a spring behind a gap, the gear lash), and one friction element to the ground on each of ``w``,
  ``c`` and ``h``.

Equal torques of the pinions on both side gears and the two packs are all the mechanics there is; that one wheel held
shows the mean of the packs plus half the driveline's drag plus the driven wheel's own drag is a result (see tests).

Method: the implicit midpoint rule. Every torque in the middle of a step is linear in the speeds there (friction as in
``pack.bristles``), the five equations of motion are solved for those speeds, and the rest of the step goes on as the
part before it. What is too light or too stiff to matter at this step (side gears, teeth in contact) is taken at the
step's end instead, which damps it. Only the onset of slip solves again with a better guess of the slip speeds.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from logger.virtual.pack import Friction, bristles

Floats = NDArray[np.float64]
Held = Literal["other side", "case", "none"]
Hand = Callable[[int, float, float], tuple[float, float]]
Load = Callable[[float], float]

# Nothing in a workshop moves a clamped case: the grip of a vice on the ring gear, or of a gear engaged.
CLAMP = Friction(coulomb_nm=1e5, static_nm=1e5, stiffness_nm_rad=2e5, damping_nms=60.0)
# Where in a step its torques are taken: a little behind the middle, so that what rings from step to step dies out.
THETA = 0.52
# A slip speed that changed by more than this share and amount in a step is guessed again.
RETRY_SHARE, RETRY_RAD_S, RETRIES = 0.05, 0.002, 4
# Which teeth touch is guessed at most so often in a step.
TOUCHES = 3
# Speeds below which all parts count as at rest: what they still swing is under 0.02 N·m in the transducer.
REST_RAD_S = 3e-4


@dataclass(frozen=True, slots=True)
class AxleModel:
    """An axle on stands, as felt at one wheel."""

    # driven_pack, other_pack: between each side gear and the case
    driven_pack: Friction
    other_pack: Friction
    # driven_drag, other_drag, case_drag: wheel bearing, seal and brake; carrier, pinion and propeller shaft referred to
    # the case
    driven_drag: Friction
    other_drag: Friction
    case_drag: Friction
    floor: Friction  # grip of the other tyre on the floor (or of a strap): its level is the torque at which it slips
    held: Held = "other side"  # "other side", "case" or "none"; what is held
    # wheel_kgm2, other_kgm2, gear_kgm2, case_kgm2: moments of inertia of both wheels, a side gear and the case (what
    # turns faster with the square of its ratio)
    wheel_kgm2: float = 1.0
    other_kgm2: float = 1.0
    gear_kgm2: float = 0.004
    case_kgm2: float = 0.3
    # driven_shaft_nm_rad, other_shaft_nm_rad, shaft_nms: stiffness of the half shafts, damping of each
    driven_shaft_nm_rad: float = 9e3
    other_shaft_nm_rad: float = 9e3
    shaft_nms: float = 4.0
    # pinion_nm_rad, pinion_nms, lash_rad: tooth stiffness, damping, and whole play in ``r + s - 2 c``
    pinion_nm_rad: float = 1.5e5
    pinion_nms: float = 15.0
    lash_rad: float = 0.01
    # whole play of the driven half shaft (splines, joints): the only one that a held wheel shows, because equal packs
    # leave the pinions without torque
    shaft_lash_rad: float = 0.0

    @property
    def grounds(self) -> tuple[Friction, Friction, Friction]:
        """What holds the driven wheel, the case and the other wheel to the ground."""
        return (
            self.driven_drag,
            CLAMP if self.held == "case" else self.case_drag,
            self.floor if self.held == "other side" else self.other_drag,
        )

    @property
    def stiffness_nm_rad(self) -> float:
        """Of the whole train at the driven wheel before slip, the other side held and the lash taken up."""
        parts = (self.driven_pack, self.other_pack, self.floor)
        springs = (self.driven_shaft_nm_rad, self.other_shaft_nm_rad, *(part.stiffness_nm_rad for part in parts))
        return 1.0 / sum(1.0 / spring for spring in springs)


@dataclass(slots=True)
class Motion:
    """Everything that changes: speeds, angles, twists, bristles and contact ages."""

    speed: tuple[float, float, float, float, float] = (0.0,) * 5  # w r c s h
    angle: tuple[float, float, float, float, float] = (0.0,) * 5
    twist: tuple[float, float] = (0.0, 0.0)  # driven shaft, other shaft
    mesh: float = 0.0
    bristle: tuple[float, float, float, float, float] = (0.0,) * 5  # packs driven, other; grounds w, c, h
    age: tuple[float, float, float, float, float] = (10.0,) * 5

    @property
    def at_rest(self) -> bool:
        """Whether no part moves."""
        return max(map(abs, self.speed)) < REST_RAD_S

    def rested(self, time_s: float) -> Motion:
        """Give the same state after lying still for ``time_s``."""
        return replace(self, speed=(0.0,) * 5, age=tuple(age + time_s for age in self.age))  # type: ignore[arg-type]


@dataclass(frozen=True, slots=True)
class Log:
    """What happened in the middle of every step; arrays of shape (steps,)."""

    wheel_rad: Floats
    wheel_rad_s: Floats
    wheel_rad_s2: Floats
    driven_slip_rad: Floats
    other_slip_rad: Floats
    case_rad: Floats
    hand_nm: Floats
    driven_pack_nm: Floats
    other_pack_nm: Floats
    held_nm: Floats


def _slip_solver(axle: AxleModel, step_s: float) -> Callable[..., tuple[float, ...]]:
    """Compile the solution for side gears and case, which packs and pinions couple.

    Slip speeds for the contact strength are guessed, and guessed again where that was wrong: at the onset of slip.
    """
    pack_r, pack_s = bristles(axle.driven_pack, step_s), bristles(axle.other_pack, step_s)

    def solve(
        gear_r: float, gear_s: float, case: float, pull_r: float, pull_s: float, pull_c: float, bm: float,
        slip_r: float, slip_s: float, z1: float, z2: float, a1: float, a2: float, at_r: float, at_s: float,
    ) -> tuple[float, ...]:  # fmt: skip
        for _ in range(RETRIES):
            f1, b1, d1 = pack_r(slip_r, z1, a1, at_r)
            f2, b2, d2 = pack_s(slip_s, z2, a2, at_s)
            mr, nr, er = gear_r + b1, b1 + 2 * bm, pull_r - f1
            t = bm / mr
            ms, ns, es = gear_s + b2 - t * bm, b2 + 2 * bm - t * nr, pull_s - f2 - t * er
            u, p = nr / mr, ns / ms
            c = (pull_c + f1 + f2 + u * er + p * es) / (case + b1 + b2 - u * nr - p * ns)
            s = (es + ns * c) / ms
            r = (er + nr * c - bm * s) / mr
            v1, v2 = r - c, s - c
            miss_r, miss_s = abs(abs(v1) - slip_r), abs(abs(v2) - slip_s)
            if miss_r < RETRY_RAD_S + RETRY_SHARE * slip_r and miss_s < RETRY_RAD_S + RETRY_SHARE * slip_s:
                break
            slip_r, slip_s = abs(v1), abs(v2)
        return r, s, c, v1, v2, f1 + b1 * v1, f2 + b2 * v2, d1, d2

    return solve


def march(
    axle: AxleModel, state: Motion, steps: int, step_s: float, hand: Hand, load: Load, lever_kgm2: float
) -> tuple[Motion, Log]:
    """March the axle through ``steps`` steps.

    Args:
        axle: The parameters.
        state: At the start.
        steps: How many.
        step_s: Step length.
        hand: ``(step, angle, speed) -> (torque, damping)`` at the driven wheel: the hand gives ``torque - damping x
            speed`` with the speed in the middle of the step.
        load: Torque of the lever's weight at the driven wheel's angle.
        lever_kgm2: Moment of inertia of lever and transducer about the axle.

    Returns:
        At the end, and in the middle of every step.
    """
    h, g, more = step_s, step_s * THETA, 1 / THETA
    less = more - 1
    solve = _slip_solver(axle, g)
    ground_w, ground_c, ground_o = (bristles(f, g) for f in axle.grounds)
    frictions = (axle.driven_pack, axle.other_pack, *axle.grounds)
    m1, m2, m3, m4, m5 = (f.memory_rad for f in frictions)
    jw, jc, jo = ((j / g) for j in (axle.wheel_kgm2 + lever_kgm2, axle.case_kgm2, axle.other_kgm2))
    jg = axle.gear_kgm2 / h
    kr, ks, km, gap = axle.driven_shaft_nm_rad, axle.other_shaft_nm_rad, axle.pinion_nm_rad, axle.lash_rad / 2
    br_shut, bs, bm_shut = kr * g + axle.shaft_nms, ks * g + axle.shaft_nms, km * h + axle.pinion_nms
    play = axle.shaft_lash_rad / 2
    w, r, c, s, o = state.speed
    tw, tr, tc, ts, to = state.angle
    twist_r, twist_s, mesh = *state.twist, state.mesh
    z1, z2, z3, z4, z5 = state.bristle
    a1, a2, a3, a4, a5 = state.age
    v1, v2 = r - c, s - c  # in the middle of the last step, and before
    last_1, last_2 = v1, v2
    side = 1 if mesh > gap else -1 if mesh < -gap else 0
    rows: list[tuple[float, ...]] = []
    for step in range(steps):
        push, give = hand(step, tw + g * w, w)
        wound = twist_r - min(max(twist_r, -play), play)  # zero while the splines' play is open
        br = br_shut if wound or not play else 0.0
        shaft_r, shaft_s = kr * wound, ks * twist_s
        f3, b3, d3 = ground_w(abs(w), z3, a3, tw)
        f4, b4, d4 = ground_c(abs(c), z4, a4, tc)
        f5, b5, d5 = ground_o(abs(o), z5, a5, to)
        # The wheels at the shafts' outer ends are eliminated; side gears and case remain.
        dw, do = jw + give + br + b3, jo + bs + b5
        qw, qo = push + load(tw) + jw * w - shaft_r - f3, jo * o + shaft_s - f5
        # Teeth touch on one side, or on none: as in the last step, or as the solution then says.
        for _ in range(TOUCHES):
            bm, am = (bm_shut, km * (mesh - side * gap)) if side else (0.0, 0.0)
            mid_r, mid_s, mid_c, new_1, new_2, f1, f2, d1, d2 = solve(
                jg + br * (1 - br / dw) + bm, jg + bs * (1 - bs / do) + bm, jc + 4 * bm + b4,
                jg * r + shaft_r + br / dw * qw - am, jg * s - shaft_s + bs / do * qo - am, jc * c + 2 * am - f4, bm,
                abs(2 * v1 - last_1), abs(2 * v2 - last_2), z1, z2, a1, a2, tr - tc, ts - tc,
            )  # fmt: skip
            vm = mid_r + mid_s - 2 * mid_c
            ahead = mesh + h * vm
            touching = side if side * (am + bm * vm) > 0 else 1 if ahead > gap else -1 if ahead < -gap else 0
            if touching == side:
                break
            side = touching
        last_1, last_2, v1, v2 = v1, v2, new_1, new_2
        mid_w, mid_o = (qw + br * mid_r) / dw, (qo + bs * mid_s) / do
        rows.append((
            tw + g * mid_w, mid_w, (mid_w - w) / g, tr - tc + g * v1, ts - tc + g * v2, tc + g * mid_c,
            push - give * mid_w, f1, f2, f5 + b5 * mid_o,
        ))  # fmt: skip
        # The rest of the step goes on as the part before it.
        z1, z2 = more * (z1 + g * v1) / d1 - less * z1, more * (z2 + g * v2) / d2 - less * z2
        z3 = more * (z3 + g * mid_w) / d3 - less * z3
        z4, z5 = more * (z4 + g * mid_c) / d4 - less * z4, more * (z5 + g * mid_o) / d5 - less * z5
        a1, a2 = (a1 + h) / (1 + h * abs(v1) / m1), (a2 + h) / (1 + h * abs(v2) / m2)
        a3 = (a3 + h) / (1 + h * abs(mid_w) / m3)
        a4, a5 = (a4 + h) / (1 + h * abs(mid_c) / m4), (a5 + h) / (1 + h * abs(mid_o) / m5)
        twist_r, twist_s, mesh = twist_r + h * (mid_w - mid_r), twist_s + h * (mid_s - mid_o), mesh + h * vm
        tw, tr, tc, ts, to = tw + h * mid_w, tr + h * mid_r, tc + h * mid_c, ts + h * mid_s, to + h * mid_o
        w, c, o = more * mid_w - less * w, more * mid_c - less * c, more * mid_o - less * o
        r, s = mid_r, mid_s
    bristle, age = (z1, z2, z3, z4, z5), (a1, a2, a3, a4, a5)
    end = Motion((w, r, c, s, o), (tw, tr, tc, ts, to), (twist_r, twist_s), mesh, bristle, age)
    return end, Log(*np.array(rows).reshape(-1, len(Log.__dataclass_fields__)).T)
