"""The axle between the driven wheel and the held one, marched through time.

Conventions
-----------
- Clockwise seen from outside the driven wheel is positive; the held wheel's coordinate is mirrored, so that both turn
  the same way when the car would roll. Angles rad, speeds rad/s, torques N·m.
- Five turning parts: driven wheel ``w`` (with the lever), driven side gear ``r``, case ``c`` (ring gear, pinion and
  propeller shaft referred to it), other side gear ``s``, other wheel ``h``.
- Between them: two half shafts (springs), two packs (``r``-``c`` and ``s``-``c``), the pinions of the differential
  (``r + s - 2 c``: a spring behind a gap, the gear lash), and one friction element to the ground on each of ``w``,
  ``c`` and ``h``.

Equal torques of the pinions on both side gears and the two packs are all the mechanics there is; that one wheel held
shows the mean of the packs plus half the driveline's drag plus the driven wheel's own drag is a result (see tests).

Method: every torque is taken linear in the speeds at the end of the step (friction as in ``pack.bristles``, shafts by
the midpoint rule, the stiff pinions implicitly), and the five equations of motion are solved for those speeds. Stiff
parts cost no small steps; only the onset of slip repeats a step with a better guess of the slip speed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Literal

from logger.virtual.pack import Friction, bristles

Held = Literal["other side", "case", "none"]
Hand = Callable[[int, float, float], tuple[float, float]]
Load = Callable[[float], float]

# Nothing in a workshop moves a clamped case: the grip of a vice on the ring gear, or of a gear engaged.
CLAMP = Friction(coulomb_nm=1e5, static_nm=1e5, stiffness_nm_rad=2e5, damping_nms=60.0)
# A slip speed that changed by more than this share and amount in a step is guessed again.
RETRY_SHARE, RETRY_RAD_S, RETRIES = 0.1, 0.01, 3
# Speeds below which all parts count as at rest: what they still swing is under 0.02 N·m in the transducer.
REST_RAD_S = 3e-4


@dataclass(frozen=True, slots=True)
class Axle:
    """An axle on stands, as felt at one wheel.

    Attributes
    ----------
    driven_pack, other_pack : Friction
        Between each side gear and the case.
    driven_drag, other_drag, case_drag : Friction
        Wheel bearing, seal and brake; carrier, pinion and propeller shaft referred to the case.
    floor : Friction
        Grip of the other tyre on the floor (or of a strap): its level is the torque at which it slips.
    held : "other side", "case" or "none"
        What is held.
    wheel_kgm2, other_wheel_kgm2, gear_kgm2, case_kgm2 : float
        Moments of inertia; the case's with the square of the axle ratio.
    driven_shaft_nm_rad, other_shaft_nm_rad, shaft_nms : float
        Stiffness of the half shafts, damping of each.
    pinion_nm_rad, pinion_nms, lash_rad : float
        Tooth stiffness, damping, and whole play in ``r + s - 2 c``.
    """

    driven_pack: Friction
    other_pack: Friction
    driven_drag: Friction
    other_drag: Friction
    case_drag: Friction
    floor: Friction
    held: Held = "other side"
    wheel_kgm2: float = 1.0
    other_wheel_kgm2: float = 1.0
    gear_kgm2: float = 0.004
    case_kgm2: float = 0.3
    driven_shaft_nm_rad: float = 9e3
    other_shaft_nm_rad: float = 9e3
    shaft_nms: float = 4.0
    pinion_nm_rad: float = 1.5e5
    pinion_nms: float = 15.0
    lash_rad: float = 0.01

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
        packs = self.driven_pack.stiffness_nm_rad + self.other_pack.stiffness_nm_rad
        return 1.0 / (
            1.0 / self.driven_shaft_nm_rad
            + 1.0 / packs
            + 1.0 / self.other_shaft_nm_rad
            + 1.0 / self.floor.stiffness_nm_rad
        )


@dataclass(slots=True)
class State:
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

    def rested(self, time_s: float) -> State:
        """Give the same state after lying still for ``time_s``."""
        return replace(self, speed=(0.0,) * 5, age=tuple(age + time_s for age in self.age))  # type: ignore[arg-type]


@dataclass(slots=True)
class Log:
    """What the march writes at the end of every step; lists of equal length."""

    wheel_rad: list[float] = field(default_factory=list)
    wheel_rad_s: list[float] = field(default_factory=list)
    driven_slip_rad: list[float] = field(default_factory=list)
    other_slip_rad: list[float] = field(default_factory=list)
    case_rad: list[float] = field(default_factory=list)
    hand_nm: list[float] = field(default_factory=list)
    driven_pack_nm: list[float] = field(default_factory=list)
    other_pack_nm: list[float] = field(default_factory=list)
    held_nm: list[float] = field(default_factory=list)


def march(
    axle: Axle, state: State, steps: int, step_s: float, hand: Hand, load: Load, lever_kgm2: float
) -> tuple[State, Log]:
    """March the axle through ``steps`` steps.

    Parameters
    ----------
    axle : Axle
        The parameters.
    state : State
        At the start.
    steps : int
        How many.
    step_s : float
        Step length.
    hand : callable
        ``(step, angle, speed) -> (torque, damping)`` at the driven wheel: the hand gives ``torque - damping x speed``
        with the speed at the step's end.
    load : callable
        Torque of the lever's weight at the driven wheel's angle.
    lever_kgm2 : float
        Moment of inertia of lever and transducer about the axle.

    Returns
    -------
    State, Log
        At the end, and every step's end.
    """
    h = step_s
    log = Log()
    put = [getattr(log, name).append for name in Log.__dataclass_fields__]
    put_w, put_ww, put_sr, put_ss, put_c, put_hand, put_fr, put_fs, put_held = put
    pack_r, pack_s = bristles(axle.driven_pack, h), bristles(axle.other_pack, h)
    ground_w, ground_c, ground_h = (bristles(f, h) for f in axle.grounds)
    mem_r, mem_s = axle.driven_pack.memory_rad, axle.other_pack.memory_rad
    mem_w, mem_c, mem_h = (f.memory_rad for f in axle.grounds)
    jw, jg = (axle.wheel_kgm2 + lever_kgm2) / h, axle.gear_kgm2 / h
    jc, jh = axle.case_kgm2 / h, axle.other_wheel_kgm2 / h
    kr, ks, half = axle.driven_shaft_nm_rad, axle.other_shaft_nm_rad, axle.shaft_nms / 2
    br, bs = kr * h / 4 + half, ks * h / 4 + half
    ar_v, as_v = kr * h / 4 + half, ks * h / 4 + half
    km, cm, gap = axle.pinion_nm_rad, axle.pinion_nms, axle.lash_rad / 2
    w, r, c, s, o = state.speed
    tw, tr, tc, ts, to = state.angle
    twist_r, twist_s = state.twist
    mesh = state.mesh
    z1, z2, z3, z4, z5 = state.bristle
    a1, a2, a3, a4, a5 = state.age
    for step in range(steps):
        push, give = hand(step, tw, w)
        pull = push + load(tw) + jw * w
        shaft_r = kr * twist_r + ar_v * (w - r)
        shaft_s = ks * twist_s + as_v * (s - o)
        closing = r + s - 2 * c
        ahead = mesh + h * closing
        if ahead > gap:
            am, bm = km * (mesh - gap), km * h + cm
        elif ahead < -gap:
            am, bm = km * (mesh + gap), km * h + cm
        else:
            am = bm = 0.0
        speed_r, speed_s = abs(r - c), abs(s - c)
        f3, b3, d3 = ground_w(abs(w), z3, a3, tw)
        f4, b4, d4 = ground_c(abs(c), z4, a4, tc)
        f5, b5, d5 = ground_h(abs(o), z5, a5, to)
        dw, do = jw + give + br + b3, jh + bs + b5
        gw, go = br / dw, bs / do
        qw, qo = pull - shaft_r - f3, jh * o + shaft_s - f5
        for _ in range(RETRIES):
            f1, b1, d1 = pack_r(speed_r, z1, a1, tr - tc)
            f2, b2, d2 = pack_s(speed_s, z2, a2, ts - tc)
            # Case and side gears after the wheels at the shafts' ends are eliminated; the pinions couple all three.
            mr, ms = jg + br * (1 - gw) + b1 + bm, jg + bs * (1 - go) + b2 + bm
            nr, ns = b1 + 2 * bm, b2 + 2 * bm
            er = jg * r + shaft_r + gw * qw - f1 - am
            es = jg * s - shaft_s + go * qo - f2 - am
            ec = jc * c + f1 + f2 + 2 * am - f4
            t = bm / mr
            ms -= t * bm
            ns -= t * nr
            es -= t * er
            u = nr / mr
            p = ns / ms
            new_c = (ec + u * er + p * es) / (jc + b1 + b2 + 4 * bm + b4 - u * nr - p * ns)
            new_s = (es + ns * new_c) / ms
            new_r = (er + nr * new_c - bm * new_s) / mr
            slip_r, slip_s = abs(new_r - new_c), abs(new_s - new_c)
            if (
                abs(slip_r - speed_r) < RETRY_RAD_S + RETRY_SHARE * speed_r
                and abs(slip_s - speed_s) < RETRY_RAD_S + RETRY_SHARE * speed_s
            ):
                break
            speed_r, speed_s = slip_r, slip_s
        new_w = (qw + br * new_r) / dw
        new_o = (qo + bs * new_s) / do
        twist_r += h * (w - r + new_w - new_r) / 2
        twist_s += h * (s - o + new_s - new_o) / 2
        w, r, c, s, o = new_w, new_r, new_c, new_s, new_o
        mesh += h * (r + s - 2 * c)
        v1, v2 = r - c, s - c
        z1, z2 = (z1 + h * v1) / d1, (z2 + h * v2) / d2
        z3, z4, z5 = (z3 + h * w) / d3, (z4 + h * c) / d4, (z5 + h * o) / d5
        a1 = (a1 + h) / (1 + h * abs(v1) / mem_r)
        a2 = (a2 + h) / (1 + h * abs(v2) / mem_s)
        a3 = (a3 + h) / (1 + h * abs(w) / mem_w)
        a4 = (a4 + h) / (1 + h * abs(c) / mem_c)
        a5 = (a5 + h) / (1 + h * abs(o) / mem_h)
        tw += h * w
        tr += h * r
        tc += h * c
        ts += h * s
        to += h * o
        put_w(tw)
        put_ww(w)
        put_sr(tr - tc)
        put_ss(ts - tc)
        put_c(tc)
        put_hand(push - give * w)
        put_fr(f1 + b1 * v1)
        put_fs(f2 + b2 * v2)
        put_held(f5 + b5 * o)
    bristle, age = (z1, z2, z3, z4, z5), (a1, a2, a3, a4, a5)
    return State((w, r, c, s, o), (tw, tr, tc, ts, to), (twist_r, twist_s), mesh, bristle, age), log
