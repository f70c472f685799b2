"""What the analysis says, as frozen values; nothing is computed here.

Conventions
-----------
- Torques are magnitudes in N·m, a known gain divided out; ``direction`` (+1 clockwise, -1 counter-clockwise, seen
  from outside the car) carries the sign.
- ``*_sensor`` is relative to the hand-off level just before that pull; ``*_axle`` starts from the true zero and has
  been through the lever.
- ``u_trace_nm`` is a standard uncertainty of what this one trace cannot settle (noise, sampling, boundaries): it
  differs from pull to pull. What all pulls of a job share (gain, lever, zero, drag) is kept apart.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum


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


@dataclass(frozen=True, slots=True)
class Rotating:
    """The steady torque while the pack keeps slipping (in stick-slip: time average over whole cycles)."""

    start_s: float
    end_s: float
    at_sensor_nm: float
    u_trace_nm: float
    u95_sensor_nm: float
    max_nm: float


@dataclass(frozen=True, slots=True)
class StickSlip:
    """Stick-slip during rotation."""

    frequency_hz: float
    peak_to_peak_nm: float
    chatter_index: float


@dataclass(frozen=True, slots=True)
class Pull:
    """One loading of the lever, from rest through slip to release."""

    start_s: float
    end_s: float
    direction: int
    handoff_nm: float
    breakaway: Breakaway | None = None
    rotating: Rotating | None = None
    stick_slip: StickSlip | None = None
    reasons: tuple[Reason, ...] = ()

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
