"""What the analysis says, as frozen values; nothing is computed here.

Conventions:
- Torques are magnitudes in N·m, a known gain divided out; ``direction`` (+1 clockwise, -1 anticlockwise, seen
  from outside the car) carries the sign.
- ``*_sensor`` is relative to the hand-off level just before that pull; ``*_axle`` starts from the true zero and has
  been through the lever.
- ``u_trace_nm`` is a standard uncertainty of what this one trace cannot settle (noise, sampling, boundaries): it
  differs from pull to pull. ``u_method_nm`` is one of what all pulls read the same way share: what a filter and a
  sample rate take off a peak, what the method takes for breakaway and steady time. What all pulls of a job share
  beyond the trace (gain, lever, zero, drag) is kept apart.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

DIRECTIONS = {1: "clockwise", -1: "counter-clockwise"}
"""How a direction stands in recordings and JSON, which promise these words."""
DIRECTION_WORDS = {1: "clockwise", -1: "anticlockwise"}
"""How a direction is named to a reader, seen from outside the car."""


class Code(StrEnum):
    """Why a pull is not valid."""

    CLIPPED = "clipped"
    LOST = "lost samples"
    CUT_START = "cut at start"
    CUT_END = "cut at end"
    RAMP = "ramp too fast"
    SHORT = "too short"
    UNSTEADY = "unsteady"
    ZERO_MOVED = "zero moved"
    NEVER_SLIPPED = "never slipped"
    NOT_RESOLVED = "not resolved"


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a pull is not valid, and in ``text`` what to do next."""

    code: Code
    text: str


@dataclass(frozen=True, slots=True)
class Breakaway:
    """The torque at which the pack changed from holding to sustained slip.

    ``distinct_peak`` is false for a pack without overshoot: then this is the torque at which slip began.
    """

    time_s: float
    at_sensor_nm: float
    u_trace_nm: float
    u95_sensor_nm: float
    distinct_peak: bool
    u_method_nm: float = 0.0


@dataclass(frozen=True, slots=True)
class Rotating:
    """The steady torque while the pack keeps slipping (in stick-slip: time average over whole cycles).

    ``max_nm`` is the highest torque in it, without what noise adds to a maximum; ``max_u_nm`` its standard uncertainty.
    """

    start_s: float
    end_s: float
    at_sensor_nm: float
    u_trace_nm: float
    u95_sensor_nm: float
    max_nm: float
    steady_s: float = 0.0
    max_u_nm: float = 0.0
    u_method_nm: float = 0.0


@dataclass(frozen=True, slots=True)
class StickSlip:
    """Stick-slip during rotation."""

    frequency_hz: float
    peak_to_peak_nm: float
    chatter_index: float


@dataclass(frozen=True, slots=True)
class SpeedLevel:
    """Torque at one of several speeds: means over a stretch in which the speed held."""

    start_s: float
    end_s: float
    speed_rad_s: float
    torque_nm: float


@dataclass(frozen=True, slots=True)
class Turning:
    """What the wheel's angle says about the steady turning of a pull; None where that much turning does not tell."""

    # turned_deg, whole_turns, speed_rpm: steady rotation of the wheel, its whole turns, its mean speed
    turned_deg: float
    whole_turns: int
    speed_rpm: float
    # mean per angle over an even number of turns (pack and drag repeat after two), or over one
    mean_over_turns_nm: float | None
    # slope_nms, slope_u95_nms: torque against wheel speed, N·m per rad/s, with its 95 % half-width: below zero the pack
    # tends to chatter
    slope_nms: float | None
    slope_u95_nms: float | None
    acceleration_nm: float  # inertia torque that the change of speed over the steady stretch may have added to its mean
    stiffness_nm_rad: float | None  # of the wind-up before slip
    # where a drive turned at several speeds one after the other; empty at one speed
    levels: tuple[SpeedLevel, ...] = ()


@dataclass(frozen=True, slots=True)
class Elastic:
    """The elastic line of a pull: see ``analysis.trace.elastic``; ``*_u95`` are 95 % half-widths."""

    # stiffness_nm_deg, stiffness_u95_nm_deg: torque at the sensor per degree of the wheel
    stiffness_nm_deg: float
    stiffness_u95_nm_deg: float
    # wind_up_deg, wind_up_u95_deg: what the torque of the slip winds up
    wind_up_deg: float
    wind_up_u95_deg: float
    # play_deg, play_u95_deg: rotation without torque before the line
    play_deg: float
    play_u95_deg: float
    # meets_deg, way: angle at which the line meets the hand-off torque; +1 if the angle counts up along the pull
    meets_deg: float
    way: int


@dataclass(frozen=True, slots=True)
class Round:
    """Steady torque (N·m from the hand-off level) against the wheel's angle, in means over steps of angle."""

    # turn_rad, torque_nm: angle from where the pull began, counted along the pull; torque
    turn_rad: tuple[float, ...]
    torque_nm: tuple[float, ...]
    step_rad: float  # width of a step

    @property
    def turns(self) -> float:
        """How many turns of the wheel it covers."""
        return (self.turn_rad[-1] - self.turn_rad[0] + self.step_rad) / (2 * math.pi)


@dataclass(frozen=True, slots=True)
class Turned:
    """How far the wheel had turned, rad: from hand-off to breakaway, over the steady turning, and to its middle.

    Where the held wheel's angle came along: how far the turned wheel and the held one went under load, and the held one
    over the steady turning.
    """

    to_breakaway_rad: float | None = None
    rotating_rad: float | None = None
    to_rotating_rad: float | None = None
    whole_rad: float | None = None
    held_rad: float | None = None
    held_rotating_rad: float | None = None


@dataclass(frozen=True, slots=True)
class Pull:
    """One loading of the lever, from rest through slip to release.

    ``notes`` say what should be known without making the pull invalid; ``left_out`` counts values that were excluded
    as spikes; ``taken_back``: it had been stated with a torque before later pulls showed that it was none.
    """

    start_s: float
    end_s: float
    direction: int
    handoff_nm: float
    breakaway: Breakaway | None = None
    rotating: Rotating | None = None
    stick_slip: StickSlip | None = None
    turning: Turning | None = None
    reasons: tuple[Reason, ...] = ()
    notes: tuple[str, ...] = ()
    left_out: int = 0
    taken_back: bool = False
    turned: Turned | None = None  # None without an angle
    elastic: Elastic | None = None
    round: Round | None = None  # None without an angle, or in two grips

    @property
    def valid(self) -> bool:
        """Whether nothing speaks against using this pull."""
        return not self.reasons


@dataclass(frozen=True, slots=True)
class TraceReading:
    """All that a trace of torque against time says by itself, before lever and limit."""

    rate_hz: float
    zero_nm: float
    noise_nm: float
    pulls: tuple[Pull, ...] = ()
    problems: tuple[str, ...] = field(default=())
