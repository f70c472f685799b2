"""Decisions made after a recording was closed, applied to its pulls: nothing is altered in silence.

A correction names its pull by the start that was read; a sidecar may leave the pull out, move its boundaries, its
breakaway or its stretch of rotation. The values at the new places are taken from the same trace.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import highest_of, level_uncertainty
from analysis.trace.plateau import MAXIMUM_S, SHORT_S
from analysis.trace.results import Breakaway, Code, Pull, Rotating
from analysis.trace.smooth import block_means
from analysis.trace.stated import BREAKAWAY_U, ROTATING_U
from analysis.uncertainty.budget import NORMAL_95

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.header import Correction

# A pull is known by its start to this much: the correction was written with the times on the screen.
SAME_PULL_S = 0.25


@dataclass(frozen=True, slots=True)
class Corrected:
    """A pull after its corrections: reason for leaving it out (or empty), and what was applied, in words."""

    pull: Pull
    left_out: str = ""
    applied: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CalibratedTrace:
    """The trace that corrected values are read from: N·m with the gain divided out, and the sensor's own u."""

    time_s: NDArray[np.float64]
    torque_nm: NDArray[np.float64]
    noise_nm: float
    relative_u: float
    full_scale_u_nm: float = 0.0


def apply_corrections(
    pulls: Sequence[Pull], corrections: Sequence[Correction], source: CalibratedTrace
) -> tuple[tuple[Corrected, ...], tuple[str, ...]]:
    """Apply corrections in the order they were made.

    Returns:
        pulls: In the given order.
        problems: Corrections that concern no pull, or cannot be applied.
    """
    current = [Corrected(pull) for pull in pulls]
    starts = [pull.start_s for pull in pulls]
    problems: list[str] = []
    for correction in corrections:
        if correction.pull_start_s is None:
            continue
        gaps = [abs(start - correction.pull_start_s) for start in starts]
        if not gaps or min(gaps) > SAME_PULL_S:
            problems.append(f"a correction concerns a pull at {correction.pull_start_s:.2f} s, but none starts there")
            continue
        place = gaps.index(min(gaps))
        if correction.as_found:
            current[place] = Corrected(pulls[place])
            continue
        try:
            current[place] = _apply(current[place], correction, source)
        except ValueError as error:
            problems.append(f"the correction of the pull at {starts[place]:.2f} s is not applied: {error}")
    return tuple(current), tuple(problems)


def _apply(before: Corrected, correction: Correction, source: CalibratedTrace) -> Corrected:
    """Apply one correction.

    Raises:
        ValueError: Times outside the trace, or no stretch at all.
    """
    pull, done = before.pull, []
    if correction.start_s is not None or correction.end_s is not None:
        start = pull.start_s if correction.start_s is None else correction.start_s
        end = pull.end_s if correction.end_s is None else correction.end_s
        _slice(source, start, end)
        pull = replace(pull, start_s=start, end_s=end)
        done.append(f"from {start:.2f} s to {end:.2f} s")
    if correction.breakaway_s is not None:
        pull = replace(pull, breakaway=_breakaway(pull, correction.breakaway_s, source))
        done.append(f"breakaway at {correction.breakaway_s:.2f} s")
    if correction.rotating_start_s is not None or correction.rotating_end_s is not None:
        rotating = _rotating(pull, correction, source)
        pull = replace(pull, rotating=rotating)
        done.append(f"rotating from {rotating.start_s:.2f} s to {rotating.end_s:.2f} s")
    who = f"{correction.by}, " if correction.by else ""
    why = f"{who}{correction.at:%Y-%m-%d %H:%M}: {correction.reason}"
    if correction.exclude:
        return replace(before, pull=pull, left_out=why, applied=(*before.applied, f"excluded ({why})"))
    # A measured value set by hand settles what kept the trace from settling it.
    settled = {Code.NEVER_SLIPPED, Code.NOT_RESOLVED} if correction.breakaway_s is not None else set()
    settled |= {Code.UNSTEADY, Code.SHORT} if correction.rotating_start_s is not None else set()
    pull = replace(pull, reasons=tuple(r for r in pull.reasons if r.code not in settled))
    applied = (*before.applied, f"{'; '.join(done)} ({why})") if done else before.applied
    return replace(before, pull=pull, left_out="", applied=applied)


def widened(pull: Pull, full_scale_u_nm: float) -> Pull:
    """Widen the intervals at the sensor by an accuracy that is stated for full scale: a standard uncertainty, N·m."""
    if not full_scale_u_nm:
        return pull
    b, r = pull.breakaway, pull.rotating
    return replace(
        pull,
        breakaway=None if b is None else replace(b, u95_sensor_nm=_wider(b.u95_sensor_nm, full_scale_u_nm)),
        rotating=None if r is None else replace(r, u95_sensor_nm=_wider(r.u95_sensor_nm, full_scale_u_nm)),
    )


def _wider(u95_nm: float, full_scale_u_nm: float) -> float:
    return math.hypot(u95_nm, NORMAL_95 * full_scale_u_nm) if full_scale_u_nm else u95_nm


def _slice(source: CalibratedTrace, start_s: float, end_s: float) -> slice:
    first, last = np.searchsorted(source.time_s, [start_s, end_s])
    if not end_s > start_s or last - first < 2:
        raise ValueError(f"there is nothing between {start_s:.2f} s and {end_s:.2f} s")
    return slice(int(first), int(last) + 1)


def _breakaway(pull: Pull, time_s: float, source: CalibratedTrace) -> Breakaway:
    """Read the torque at a time: the samples around it within the noise of one."""
    t = source.time_s
    if not (len(t) and t[0] <= time_s <= t[-1]):
        raise ValueError(f"{time_s:.2f} s lies outside the recording")
    at = float(np.interp(time_s, t, source.torque_nm))
    value = pull.direction * (at - pull.handoff_nm)
    if value <= 0:
        raise ValueError(f"the torque at {time_s:.2f} s is against the pull's direction")
    u, method = source.noise_nm, BREAKAWAY_U * value
    u95 = NORMAL_95 * math.hypot(u, method, source.relative_u * value)
    distinct = pull.breakaway.distinct_peak if pull.breakaway is not None else True
    return Breakaway(time_s, value, u, _wider(u95, source.full_scale_u_nm), distinct, method)


def _rotating(pull: Pull, correction: Correction, source: CalibratedTrace) -> Rotating:
    """Read the mean over a stretch; one end may stay as it was."""
    start, end = correction.rotating_start_s, correction.rotating_end_s
    if pull.rotating is not None:
        start = pull.rotating.start_s if start is None else start
        end = pull.rotating.end_s if end is None else end
    if start is None or end is None:
        raise ValueError("the pull has no stretch of rotation: give both ends")
    chosen = _slice(source, start, end)
    part = pull.direction * (source.torque_nm[chosen] - pull.handoff_nm)
    lasts_s = float(np.ptp(source.time_s[chosen]))
    part = part[np.isfinite(part)]
    if len(part) < 2 or part.mean() <= 0:
        raise ValueError(f"there is no rotating torque between {start:.2f} s and {end:.2f} s")
    value, u = float(part.mean()), level_uncertainty(part)
    method = ROTATING_U * value
    u95 = NORMAL_95 * math.hypot(u, method, source.relative_u * value)
    per_s = (len(part) - 1) / lasts_s
    width = max(1, round(MAXIMUM_S * per_s))
    short = block_means(part, width) if len(part) >= width else part
    max_nm, max_u_nm = highest_of(short, round(SHORT_S * per_s / width))
    u95 = _wider(u95, source.full_scale_u_nm)
    return Rotating(start, end, value, u, u95, max_nm, lasts_s, max_u_nm, method)
