"""What repeats as the wheel turns: the steady torque against the wheel's angle, and its orders.

Conventions:
- The angle counts along the pull, in rad, from where the pull began.
- Order k repeats k times per turn of the wheel: ``cos_nm cos(k angle) + sin_nm sin(k angle)``.
- Torque is averaged over equal steps of angle, so that a slow part of the turn counts no more than a quick one; what
  a step takes off an order, sin(x)/x with x half the step, is put back.

Two orders run apart by one whole wave over ``1 / abs(k1 - k2)`` turns (Rayleigh's limit); half of that does where both
are known beforehand, because what they then take from each other is in their intervals.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import neighbours_alike
from analysis.trace.results import Round

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.trace.traces import Bools, Floats

STEP_RAD = math.radians(5)
"""Torque is averaged over this angle: eight of them per wave of the quickest order of a steep axle (9 per turn)."""

LEAST_TURNS = 2.0
"""Steady turns below which nothing is told: a pack slips half a turn for each of a wheel turned alone, so its own turn
takes two."""

MOST_STEPS = 72 * 200
"""Nobody turns a wheel more than 200 times in a pull: a longer way is not kept."""

LEVEL = 0.95
NEIGHBOURS, MOST_TAKEN = 0.95, 0.5
"""Neighbouring steps depend on each other at most so much, and a fit takes at most this share of what varies."""


@dataclass(frozen=True, slots=True)
class Wave:
    """One order of a round."""

    per_turn: float  # the order
    # cos_nm, sin_nm: its two parts
    cos_nm: float
    sin_nm: float
    # radius of the circle about them that holds the true two with 95 %: so far the amplitude may be off, and a pattern
    # smaller than it may be none
    circle_nm: float
    dof: float  # degrees of freedom of that circle
    seen: bool  # whether it stands out of the rest, at 5 % for all orders of the round together

    @property
    def amplitude_nm(self) -> float:
        """Half of what it makes the torque vary by."""
        return math.hypot(self.cos_nm, self.sin_nm)


def round_of(torque_nm: Floats, angle_deg: Floats, steady: Bools) -> Round | None:
    """Give the steady torque of one pull against the angle; None where there is no angle to speak of.

    Args:
        torque_nm, angle_deg: shape (n,); From the start of the pull on.
        steady: shape (n,); Where the rotating torque was averaged.
    """
    kept = np.flatnonzero(steady & np.isfinite(angle_deg) & np.isfinite(torque_nm))
    if len(kept) < 2 or not math.isfinite(angle_deg[0]):
        return None
    way = 1.0 if angle_deg[kept[-1]] >= angle_deg[kept[0]] else -1.0
    turn = np.radians(way * (angle_deg[kept] - angle_deg[0]))
    step = np.floor(turn / STEP_RAD).astype(np.int64)
    step -= step.min()
    if not 1 < step.max() < MOST_STEPS:
        return None
    number = np.bincount(step)
    there = number > 0
    mean_turn, mean = (np.bincount(step, v)[there] / number[there] for v in (turn, torque_nm[kept]))
    return Round(tuple(mean_turn.tolist()), tuple(mean.tolist()), STEP_RAD)


def turns_needed(order: float, others: Sequence[float]) -> float:
    """Give the turns of the wheel over which an order can be told, also from each of the others.

    >>> turns_needed(1.0, (0.5, 2.0)), round(turns_needed(1.865, (0.5, 1.0, 2.0)), 1)
    (2.0, 3.7)
    """
    apart = min((abs(order - other) for other in others), default=order)
    return max(LEAST_TURNS, 1 / order, 1 / (2 * apart) if apart else math.inf)


def find_waves(seen: Round, orders: Sequence[float]) -> tuple[Wave, ...]:
    """Fit all orders at once, by least squares on the angle.

    Args:
        seen: Over as many turns as each of them needs (``turns_needed``).
        orders: Per turn of the wheel.

    Returns:
        tuple of Wave: One for each order; none where the rest varies so much that nothing is left to tell their
            scatter.

    A mean and a straight line (settling, warming) are fitted along. What is left is taken for a first-order
    autoregression, whose share at an order's own pace stretches that order's variance. The circle is the joint region
    of both parts (Fisher's F for two, the ellipse's longer axis).
    """
    from scipy.special import fdtri

    turn, x, half = np.array(seen.turn_rad), np.array(seen.torque_nm), seen.step_rad / 2
    shrunk = [math.sin(half * k) / (half * k) for k in orders]
    waves = [s * part(k * turn) for k, s in zip(orders, shrunk, strict=True) for part in (np.cos, np.sin)]
    columns = np.column_stack([np.ones_like(turn), turn - turn.mean(), *waves])
    n, p = columns.shape
    if n <= p + 2 or np.linalg.matrix_rank(columns) < p:
        return ()
    found = np.linalg.lstsq(columns, x, rcond=None)[0]
    rest = x - columns @ found
    pace = np.repeat([0.0, *orders], 2) * seen.step_rad  # of every column, rad per step
    r, variance_nm2 = _neighbours(rest, pace)
    dof = n * (1 - r * r) / (1 + r * r) - p
    if dof < 1:
        return ()
    plain = variance_nm2 * np.linalg.inv(columns.T @ columns)
    usual, strict = fdtri(2, dof, LEVEL), fdtri(2, dof, 1 - (1 - LEVEL) / len(orders))
    told = []
    for place, order in enumerate(orders):
        both = slice(2 + 2 * place, 4 + 2 * place)
        widest = 2 * float(np.linalg.eigvalsh(plain[both, both])[-1]) * float(_share(r, pace[both.start]))
        a, b = (float(v) for v in found[both])
        seems = math.hypot(a, b) > math.sqrt(widest * strict)
        told.append(Wave(order, a, b, math.sqrt(widest * usual), dof, seems))
    return tuple(told)


def _share(r: float, pace: Floats) -> Floats:
    """Give the spectrum of a first-order autoregression over its mean, at so many rad per step."""
    return (1 - r * r) / (1 - 2 * r * np.cos(pace) + r * r)


def _neighbours(rest: Floats, pace: Floats) -> tuple[float, float]:
    """Give how neighbours depend on each other, and the variance; what the fit took out of both is put back once."""
    n, power = len(rest), float(rest @ rest)
    r = neighbours_alike(rest, NEIGHBOURS)
    shares = _share(r, pace) / n
    taken = min(float(shares.sum()), MOST_TAKEN)
    r = min(max(r * (1 - taken) + float(shares @ np.cos(pace)), 0.0), NEIGHBOURS)
    taken = min(float(_share(r, pace).sum()) / n, MOST_TAKEN)
    return r, power / (n * (1 - taken))
