"""What the wheel's angle adds: whether the pack slipped, when, and how fast it turned.

Conventions:
Arrays cover one pull; torque is positive in the pull's direction with the hand-off level subtracted. The angle may
count either way and from anywhere: only its changes along the pull are used.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import neighbours_alike
from analysis.trace.results import SpeedLevel, Turning

if TYPE_CHECKING:
    from analysis.trace.traces import Bools, Floats

SLIP_DEG = 1.0
"""Rotation beyond the elastic wind-up that counts as slip (degrees): half shafts and tyre alone give 0.6-1.8°."""

ONSET_DEG = 0.3
"""Slip began where the rotation was last this near to the wind-up line (degrees): about an encoder's step."""

ELASTIC_FROM, ELASTIC_TO = 0.3, 0.7
"""The wind-up line is fitted where the torque is between these shares of the slip level: lash is taken up below, a weak
pack or the knee comes above."""

NEAR_TOP = 0.85
"""Slip happens at the top of the torque; below this share of the level the wheel winds up or springs back."""

STEP_S = 0.25
"""Speed and acceleration are formed over steps of this length (s): longer than the wheel's swing."""

LEAST_STEPS = 6
"""Fewer steps do not tell speed or acceleration apart from chance."""

LEVEL_BAND, LEVEL_STEPS = 0.15, 5
"""A speed holds while it keeps within this share of its median, over so many steps at least."""

SPEED_SPREAD = 0.10
"""Relative spread of the speed below which torque against speed has no slope worth stating."""

POSSIBLE_DEG = 360.0 * 1000
"""Nobody turns a wheel further than this in one pull: a greater angle is no angle."""


@dataclass(frozen=True, slots=True)
class Slip:
    """How far the wheel turned at the top of the torque, and when it began to (None: it never slipped).

    ``wind_up_deg_per_nm`` is the slope of the wind-up line, None where the ramp is too short to tell.
    """

    turned_deg: float
    onset_s: float | None
    wind_up_deg_per_nm: float | None


def find_slip(time_s: Floats, torque_nm: Floats, angle_deg: Floats, slip_nm: float) -> Slip:
    """Tell slip from wind-up.

    Args:
        time_s, torque_nm, angle_deg: shape (n,); From the foot of the pull to its release.
        slip_nm: The level at which the pack slips, roughly.
    """
    high = np.flatnonzero(torque_nm > NEAR_TOP * slip_nm)
    if len(high) < 2:
        return Slip(0.0, None, None)
    turned = float(angle_deg[high[-1]] - angle_deg[high[0]])
    way = 1.0 if turned >= 0 else -1.0
    angle = way * angle_deg
    ramp = slice(0, int(high[0]) + 1)
    slope = _wind_up(torque_nm[ramp], angle[ramp], slip_nm)
    reference = angle[high[0]] if slope is None else angle[high[0]] - slope * torque_nm[high[0]]
    beyond = angle - reference - (0.0 if slope is None else slope) * np.maximum(torque_nm, 0.0)
    slipped = np.flatnonzero(beyond[high[0] :] > SLIP_DEG) + high[0]
    if abs(turned) < SLIP_DEG or not len(slipped):
        return Slip(abs(turned), None, slope)
    near = np.flatnonzero(beyond[: slipped[0]] < ONSET_DEG)
    onset = int(near[-1]) if len(near) else int(slipped[0])
    return Slip(abs(turned), float(time_s[onset]), slope)


def _wind_up(torque: Floats, angle: Floats, slip_nm: float) -> float | None:
    part = (torque > ELASTIC_FROM * slip_nm) & (torque < ELASTIC_TO * slip_nm)
    if part.sum() < 4:
        return None
    x = torque[part] - torque[part].mean()
    norm = float(x @ x)
    return max(float(x @ angle[part]) / norm, 0.0) if norm > 0 else None


def plausible_angle(angle_deg: Floats) -> bool:
    """Tell whether angles are usable: all there, moving, and no further than a hand turns a wheel in one pull."""
    return bool((np.abs(angle_deg) < POSSIBLE_DEG).all() and np.ptp(angle_deg) > 0)  # not so with NaN


def describe_turning(
    time_s: Floats, torque_nm: Floats, angle_deg: Floats, steady: Bools, wind_up_deg_per_nm: float | None
) -> Turning | None:
    """Describe the steady turning of one pull.

    Args:
        time_s, torque_nm, angle_deg: shape (n,)
        steady: shape (n,); Where the rotating torque was averaged.

    Returns:
        None where too little is left to tell a speed.
    """
    t, x, angle = (_means(v, time_s, steady) for v in (time_s, torque_nm, angle_deg))
    if len(t) < LEAST_STEPS:
        return None
    way = 1.0 if angle[-1] >= angle[0] else -1.0
    turn = np.radians(way * angle)
    speed = np.gradient(turn, t)
    slope, slope_u = _slope(speed, x, SPEED_SPREAD * float(np.abs(speed).mean()))
    inertia, _ = _slope(np.gradient(speed, t), x, 0.0)
    turned = float(turn[-1] - turn[0])
    slowing, _ = _slope(t, speed, 0.0)
    gain = max(inertia or 0.0, 0.0) * abs(slowing or 0.0)
    return Turning(
        turned_deg=float(np.degrees(turned)),
        whole_turns=int(turned / (2 * np.pi)),
        speed_rpm=float(turned / (t[-1] - t[0]) * 30 / np.pi),
        mean_over_turns_nm=_over_whole_turns(turn, x),
        slope_nms=slope,
        slope_u95_nms=slope_u,
        acceleration_nm=gain,
        levels=_levels(t, speed, x),
        stiffness_nm_rad=None if not wind_up_deg_per_nm else float(1 / np.radians(wind_up_deg_per_nm)),
    )


def _means(values: Floats, time_s: Floats, steady: Bools) -> Floats:
    """Give means over steps of ``STEP_S`` that lie in the steady time altogether."""
    kept = np.flatnonzero(steady)
    if len(kept) < 2:
        return np.empty(0)
    step = (time_s[kept[-1]] - time_s[kept[0]]) / max(kept[-1] - kept[0], 1)
    width = max(1, round(STEP_S / step))
    whole = (kept[-1] + 1 - kept[0]) // width
    span = slice(kept[0], kept[0] + whole * width)
    full = steady[span].reshape(whole, width).all(axis=1)
    return np.asarray(values[span].reshape(whole, width).mean(axis=1)[full])


def _levels(t: Floats, speed: Floats, x: Floats) -> tuple[SpeedLevel, ...]:
    """Give the stretches in which the speed held, without the steps beside a change; none if there is only one."""
    found, first = [], 0
    for i in range(1, len(speed) + 1):
        level = float(np.median(speed[first:i]))
        if i < len(speed) and abs(speed[i] - level) <= LEVEL_BAND * abs(level):
            continue
        held = slice(first + 1 if first else 0, i - 1 if i < len(speed) else i)
        if held.stop - held.start >= LEVEL_STEPS:
            span = float(t[held.start]), float(t[held.stop - 1])
            found.append(SpeedLevel(*span, float(speed[held].mean()), float(x[held].mean())))
        first = i
    return tuple(found) if len(found) > 1 else ()


def _slope(x: Floats, y: Floats, least_spread: float) -> tuple[float | None, float | None]:
    """Least squares slope of y over x with its 95 % half-width; neighbours' dependence stretches it."""
    from scipy.special import stdtrit

    n = len(x)
    dx = x - x.mean()
    norm = float(dx @ dx)
    if n < LEAST_STEPS or norm <= 0 or np.sqrt(norm / n) < least_spread:
        return None, None
    slope = float(dx @ y) / norm
    rest = y - y.mean() - slope * dx
    power = float(rest @ rest)
    r1 = neighbours_alike(rest, 0.9)
    free = max((n * (1 - r1) / (1 + r1)) - 2, 1.0)
    u = np.sqrt(power / free / norm)
    return slope, float(stdtrit(free, 0.975) * u)


def _over_whole_turns(turn: Floats, x: Floats) -> float | None:
    """Mean per angle over pairs of turns where there are two, else over whole turns; None under one turn."""
    turns = (turn[-1] - turn[0]) / (2 * np.pi)
    whole = 2 * (int(turns) // 2) or int(turns)
    if whole < 1:
        return None
    at = turn[0] + np.linspace(0, whole * 2 * np.pi, 360 * whole, endpoint=False)
    return float(np.interp(at, turn, x).mean())
