"""Effective inertia from a free spin-down: what turns slows down under its own drag, I = T / α (Newton).

The drag is that of the same parts, turned at about the same speed, with a transducer: a drag test. With both wheels
free it is the inertia of everything that turns with the wheel, referred to it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import neighbours_alike
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

CAUTION = (
    "Both driven wheels raised, neutral, engine off. Lever off, push the wheel by hand, stand clear: hands and clothes "
    "off what turns."
)
HOW = (
    "Its drag first, with the transducer, at about that speed; then the wheel's angle is recorded from the push until "
    "it stands."
)
CHANGES_NOTHING = "The inertia is that of everything that turned, referred to the wheel; it changes no reading."
USUAL_RPM = 5.0
"""A usual speed of turning by hand (common practice, no source)."""

ASSUMED_SHARE = 0.05
"""Standard uncertainty of a drag whose own is not stated."""

LEAST_READINGS = 20
LEAST_TURN_RAD = math.pi
"""Less than half a turn, or fewer readings, does not show a curve in the angle."""

SLOWEST = 0.2
"""The part in which the speed is above this share of its highest counts: at the end drag rises (Stribeck), and nobody
sees when it stands."""

STEPS = 60
"""The spin-down is fitted over so many means."""

NEIGHBOURS = 0.9
"""Neighbouring means depend on each other at most so much."""


@dataclass(frozen=True, slots=True)
class Inertia:
    """The inertia and what it comes from."""

    budget: Budget  # kg·m², with rows for the drag and the slowing
    slowing_rad_s2: float  # deceleration
    # start_s, end_s: of the part that was fitted
    start_s: float
    end_s: float
    fastest_rad_s: float  # speed at its beginning

    def quickest_rad_s2(self, torque_nm: float, share: float = 0.02) -> float:
        """Give the acceleration whose torque is this share of a torque: a hand that stays below it adds no more."""
        return share * torque_nm / self.budget.value


def inertia_of(time_s: Floats, angle_deg: Floats, drag_nm: float, drag_u_nm: float) -> Inertia:
    """Give the inertia of what spins down freely.

    Args:
        time_s, angle_deg: shape (n,); The wheel's angle, counting either way; the spin-down is where it is fastest and
            slows down from there.
        drag_nm, drag_u_nm: Drag of the same parts at such speeds, N·m, and its standard uncertainty.

    Raises:
        InputError: The drag is none, or nothing spins down.

    The slowing is the second-order term of a parabola through the angle (least squares), its uncertainty from the
    scatter about it, whose neighbours depend on each other. A drag that changes with speed bends the curve: half the
    difference of the slowing between the two halves enters as a rectangle.
    """
    if not (drag_nm > 0 and drag_u_nm >= 0 and math.isfinite(drag_nm + drag_u_nm)):
        raise InputError("the drag must be above zero: turn the same parts with the transducer first (a drag test)")
    t, turn = _part(time_s, angle_deg)
    slowing, u, dof = _slowing(t, turn)
    half = len(t) // 2
    bend = abs(_slowing(t[:half], turn[:half])[0] - _slowing(t[half:], turn[half:])[0]) / 2
    u = math.hypot(u, bend / math.sqrt(3))
    if slowing <= 0 or slowing < 2 * u:
        raise InputError("nothing slows down in this recording: spin the wheel, let it run, and record until it stands")
    value = drag_nm / slowing
    rows = (
        BudgetRow(Input("drag", drag_nm, drag_u_nm, note="as stated"), 1 / slowing),
        BudgetRow(Input("slowing", slowing, u, "rad/s²", dof=dof, note="parabola through the angle"), -value / slowing),
    )
    fastest = float((turn[1] - turn[0]) / (t[1] - t[0]))
    return Inertia(Budget("inertia", value, "kg·m²", rows), slowing, float(t[0]), float(t[-1]), fastest)


def lines_of(found: Inertia, *, u_stated: bool, torque_nm: float | None = None, torque: str = "") -> tuple[str, ...]:
    """Say what a spin-down gave, sentence by sentence; command and window say it so.

    Args:
        u_stated: Whether the drag's uncertainty is somebody's, not assumed.
        torque_nm, torque: The torque that will be measured, and how it was written.
    """
    said = [
        f"Inertia {found.budget.value:.3g} ± {found.budget.u95:.2g} kg·m² (95 %): slows by {found.slowing_rad_s2:.3g} "
        f"rad/s² from {found.start_s:.1f} to {found.end_s:.1f} s, from {found.fastest_rad_s * 30 / math.pi:.0f} turns "
        "a minute on."
    ]
    if not u_stated:
        said.append("The drag's uncertainty is assumed: 5 % of it.")
    if torque_nm is not None:
        quickest = found.quickest_rad_s2(torque_nm)
        said.append(
            f"For less than 2 % of {torque}: accelerate by less than {quickest:.2g} rad/s², {USUAL_RPM:g} turns a "
            f"minute in {USUAL_RPM * math.pi / 30 / quickest:.1f} s or more."
        )
    return (*said, CHANGES_NOTHING)


def _part(time_s: Floats, angle_deg: Floats) -> tuple[Floats, Floats]:
    """Give times and angles (rad, rising) of the spin-down, in means."""
    good = np.isfinite(angle_deg)
    t, turn = np.asarray(time_s)[good], np.radians(np.asarray(angle_deg)[good])
    if len(t) < LEAST_READINGS or not np.ptp(turn) > LEAST_TURN_RAD:
        raise InputError("there is no spin-down: the angle must be recorded while the wheel turns half a turn and more")
    width = max(1, len(t) // (4 * STEPS))
    whole = len(t) // width * width
    mean_t, mean = (v[:whole].reshape(-1, width).mean(axis=1) for v in (t, turn))
    speed = np.gradient(mean, mean_t)
    way = 1.0 if abs(speed.max()) >= abs(speed.min()) else -1.0
    speed = way * speed
    top = int(np.argmax(speed))
    slow = np.flatnonzero(speed[top:] < SLOWEST * speed[top])
    end = top + int(slow[0]) if len(slow) else len(speed)
    part = (t > mean_t[min(top + 1, len(mean_t) - 1)]) & (t < mean_t[end - 1])
    t, turn = t[part], way * turn[part]
    width = max(1, len(t) // STEPS)
    whole = len(t) // width * width
    if whole // width < LEAST_READINGS or turn[-1] - turn[0] < LEAST_TURN_RAD:
        raise InputError("the spin-down is too short: give the wheel a good push and record until it stands")
    first, second = (v[:whole].reshape(-1, width).mean(axis=1) for v in (t, turn))
    return first, second


def _slowing(t: Floats, turn: Floats) -> tuple[float, float, float]:
    """Fit a parabola: deceleration, its standard uncertainty, degrees of freedom."""
    x = (t - t.mean()) / np.ptp(t)
    columns = np.column_stack([np.ones_like(x), x, x * x])
    found = np.linalg.lstsq(columns, turn, rcond=None)[0]
    rest = turn - columns @ found
    power = float(rest @ rest)
    r = neighbours_alike(rest, NEIGHBOURS)
    dof = max(len(x) * (1 - r) / (1 + r) - 3, 1.0)
    u = math.sqrt(power / dof * float(np.linalg.inv(columns.T @ columns)[2, 2]))
    per = 2 / float(np.ptp(t)) ** 2
    return -float(found[2]) * per, u * per, dof
