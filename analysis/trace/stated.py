"""What was found in a load as it is stated: torques with their uncertainties, turning, stick-slip, the elastic line."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.angle import describe_turning
from analysis.trace.elastic import find_elastic
from analysis.trace.orders import round_of
from analysis.trace.results import Breakaway, Rotating, StickSlip, Turning
from analysis.trace.smooth import ENOUGH, quantile
from analysis.uncertainty.budget import NORMAL_95

if TYPE_CHECKING:
    from analysis.trace.angle import Slip
    from analysis.trace.breakaway import Peak
    from analysis.trace.handoff import Handoff
    from analysis.trace.plateau import Plateau
    from analysis.trace.results import Elastic, Round
    from analysis.trace.stickslip import Cycles
    from analysis.trace.traces import Bools, Floats, Sensor

DISTINCT = 0.048
"""Relative height of a peak above the plateau from which it is called distinct: hand and inertia alone make a hump of
2.6 % (median) and of up to 4.7 % on packs without a static peak."""

BREAKAWAY_U = 0.0045
"""Relative standard uncertainty of what a breakaway is taken to be: which ripple of the top counts, what filter and
sampling keep of it. From simulations of two kinds, where the reading missed the truth by so much in good data."""

ROTATING_U = 0.002
"""The same for the rotating torque: where its steady time begins and ends, and what drifted since the hand-off."""

DRIFT_U = 0.29
"""A zero that drifted while at rest may stop, turn, or go on until the middle of the plateau: within half of what it
would then come to, evenly (1/√12 of the whole)."""


@dataclass(frozen=True, slots=True)
class Part:
    """The pull proper, from the foot of its ramp to its release; torque from the hand-off level."""

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None
    clipped: Bools
    slip_nm: float  # about the level at which it slips
    noise_nm: float
    zero_moved: bool  # it was gone at once

    @property
    def release_s(self) -> float:
        """When the torque was last near its level."""
        return float(self.time_s[-1])

    @property
    def interval_s(self) -> float:
        """Usual time between two samples."""
        every = max(1, (len(self.time_s) - 1) // ENOUGH)
        return quantile(self.time_s[1::every] - self.time_s[:-1:every], 0.5)


def turning_of(part: Part, plateau: Plateau | None, slip: Slip | None) -> Turning | None:
    """Say how the wheel turned, where an angle came along."""
    if slip is None or plateau is None or part.angle_deg is None:
        return None
    return describe_turning(part.time_s, part.torque_nm, part.angle_deg, plateau.steady, slip.wind_up_deg_per_nm)


def round_seen(part: Part, plateau: Plateau | None) -> Round | None:
    """Give the steady torque against the wheel's angle, where one came along."""
    if plateau is None or part.angle_deg is None:
        return None
    return round_of(part.torque_nm, part.angle_deg, plateau.steady)


def elastic_of(part: Part, breakaway: Breakaway | None, sensor: Sensor) -> Elastic | None:
    """Read the elastic line, where an angle came along."""
    if part.angle_deg is None:
        return None
    broke_nm = None if breakaway is None else breakaway.at_sensor_nm
    u_nm = 0.0 if breakaway is None else math.hypot(breakaway.u_trace_nm, breakaway.u_method_nm)
    lag_s = (sensor.delay_s or 0.0) + (sensor.delay_s_u or 0.0)
    return find_elastic(part.torque_nm, part.angle_deg, part.slip_nm, broke_nm, lag_s, part.interval_s, u_nm)


def seen_again(breakaway: Breakaway | None, plateau: Plateau) -> Breakaway | None:
    """Give a breakaway beside the plateau of the pull as a whole: its peak may be distinct no more."""
    if breakaway is None:
        return None
    return replace(breakaway, distinct_peak=is_distinct(breakaway.at_sensor_nm, plateau.torque_nm))


def is_distinct(peak_nm: float, slip_nm: float) -> bool:
    """Whether a peak stands out above the level at which the pack slips."""
    return peak_nm > (1 + DISTINCT) * slip_nm


def stick_slip_of(cycles: Cycles | None, plateau: Plateau | None) -> StickSlip | None:
    """Give frequency and size of stick-slip."""
    if cycles is None or plateau is None:
        return None
    return StickSlip(cycles.frequency_hz, cycles.peak_to_peak_nm, cycles.peak_to_peak_nm / plateau.torque_nm)


def breakaway_of(
    peak: Peak | None, part: Part, plateau: Plateau | None, level_u_nm: float, sensor: Sensor
) -> Breakaway | None:
    """Give the breakaway with its uncertainty: of the trace, of the method, of the transducer."""
    if peak is None:
        return None
    u = float(np.hypot(peak.u_nm, level_u_nm))
    method = float(np.hypot(peak.u_method_nm, BREAKAWAY_U * peak.torque_nm))
    u95 = NORMAL_95 * math.hypot(u, method, sensor.relative_u * peak.torque_nm)
    slip_nm = part.slip_nm if plateau is None else plateau.torque_nm
    return Breakaway(peak.time_s, peak.torque_nm, u, u95, is_distinct(peak.torque_nm, slip_nm), method)


def rotating_of(plateau: Plateau | None, hand: Handoff, start_s: float, sensor: Sensor) -> Rotating | None:
    """Give the rotating torque with its uncertainty; a zero that drifted pays until the middle of the plateau."""
    if plateau is None:
        return None
    drift_nm = DRIFT_U * hand.drift_nm_s * ((plateau.start_s + plateau.end_s) / 2 - start_s)
    u, method = math.hypot(plateau.u_nm, hand.u_nm, drift_nm), ROTATING_U * plateau.torque_nm
    u95 = NORMAL_95 * math.hypot(u, method, sensor.relative_u * plateau.torque_nm)
    level = (plateau.start_s, plateau.end_s, plateau.torque_nm, u, u95)
    return Rotating(*level, plateau.max_nm, plateau.steady_s, plateau.max_u_nm, method)
