"""The exact truth about each pull of a simulated run.

Conventions:
Torques are free of noise, at full bandwidth, at the sensor, relative to the hand-off level (lever fitted, hand off)
just before the pull, and positive in the pull's direction.

- *Onset*: both packs have slid more than three times their elastic deflection, and at least a degree of wheel rotation
  follows. Where drag outweighs the packs (an open or worn axle), wheel and case must have slid so against their drags
  too; with nothing held, they alone.
- *Breakaway*: the highest torque from 0.30 s before the onset until the torque has fallen 3 % below its running
  maximum (at least to 0.15 s after the onset, at most to 1.0 s).
- *Steady*: hand fully on, wheel speed (mean of 0.3 s) over 35 % of its median, inertia torque under 4 % of the torque,
  contacts renewed, no yank, hesitation or re-grip within 0.3 s. In stick-slip: from the first whole cycle to the last.
- *Plateau*: time average over the steady time, if that is 0.5 s or more.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise
from math import degrees, pi
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from logger.virtual.hand import HandPull, Phase

if TYPE_CHECKING:
    from logger.virtual.drivetrain import AxleModel
    from logger.virtual.pack import Friction
    from logger.virtual.sensor import Delivered, SensorModel

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]
PeakClass = Literal["distinct", "marginal", "none"]

ELASTIC_TIMES, ROTATION_RAD = 3.0, pi / 180
BEFORE_ONSET_S, DROP, AT_LEAST_S, AT_MOST_S = 0.30, 0.97, 0.15, 1.0
RESTED_S = 0.2  # sooner after a pull there is no level of rest
SPEED_MEAN_S, SPEED_SHARE, INERTIA_SHARE, CALM_S, PLATEAU_S = 0.3, 0.35, 0.04, 0.3, 0.5
# Slip under a tenth of its mean counts as stuck; three sticks in one pull make it stick-slip.
STUCK_SHARE, STICKS = 0.1, 3
# Packs that slip at half the wheel's speed or more make the resistance; under a tenth the wheel drags something along.
SLIPPING_SHARE = 0.1
# Overshoot over the plateau: none under 1 %, marginal under 5 % or under the plateau's own ripple. A pack without a
# static excess is "none" up to 5 %: what it shows is a hump of hand and inertia.
NO_PEAK, MARGINAL = 0.01, 0.05


@dataclass(frozen=True, slots=True)
class Mechanics:
    """Everything that happened, on a uniform grid of ``step_s``; arrays of shape (m,).

    ``sensor_nm`` is the torque in the transducer's shaft, ``axle_nm`` the torque on the wheel about the axle; pack and
    held torques are those of ``drivetrain.Log``.
    """

    step_s: float
    wheel_rad: Floats
    wheel_rad_s: Floats
    wheel_rad_s2: Floats
    elevation_rad: Floats
    driven_slip_rad: Floats
    other_slip_rad: Floats
    case_rad: Floats
    hand_nm: Floats
    driven_pack_nm: Floats
    other_pack_nm: Floats
    held_nm: Floats
    sensor_nm: Floats
    axle_nm: Floats
    phase: NDArray[np.int8]


@dataclass(frozen=True, slots=True)
class Segment:
    """Where a pull lies in the grid: hand on at ``first``, off before ``last``."""

    pull: HandPull
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class TrueStickSlip:
    """Stick-slip while turning."""

    frequency_hz: float
    peak_to_peak_nm: float


@dataclass(frozen=True, slots=True)
class TrueLevel:
    """One speed of a drive that turns at several: means over its second half, when the change has died out."""

    start_s: float
    end_s: float
    wheel_rad_s: float
    torque_nm: float
    axle_nm: float


@dataclass(frozen=True, slots=True)
class TruePull:
    """The truth about one pull; see the module for each word."""

    kind: Literal["pull", "aborted", "hold"]  # aborted and held loadings never slipped
    # start_s, end_s, direction: hand on, hand off; +1 clockwise
    start_s: float
    end_s: float
    direction: int
    # level before the pull at the sensor, signed: lever weight at the start angle, no zero offset. After no rest, as
    # where a drive reverses, the level before the pull before.
    handoff_nm: float
    # max_nm, turn_deg: highest torque and whole rotation of the pull
    max_nm: float
    turn_deg: float
    # onset_s, breakaway_s, breakaway_nm: None: it never slipped
    onset_s: float | None = None
    breakaway_s: float | None = None
    breakaway_nm: float | None = None
    plateau_nm: float | None = None  # None: no half second of steady turning
    steady: tuple[tuple[float, float], ...] = ()  # (start, end); steady intervals in seconds
    # overshoot, ripple: breakaway over plateau minus one; 95 % range of the steady torque over the plateau
    overshoot: float | None = None
    ripple: float | None = None
    peak_class: PeakClass = "none"  # ``distinct``, ``marginal`` (nobody can be blamed either way), ``none``
    stick_slip: TrueStickSlip | None = None
    # breakaway_axle_nm, plateau_axle_nm: on the wheel about the axle, from the true zero, in the pull's direction
    breakaway_axle_nm: float | None = None
    plateau_axle_nm: float | None = None
    # pack_mean_nm, held_nm: mean of both packs' friction and reaction at the held wheel, over the steady time
    pack_mean_nm: float | None = None
    held_nm: float | None = None
    regrip: bool = False
    levels: tuple[TrueLevel, ...] = ()  # where the pull turns at several speeds one after the other
    # what the recording spoils: ``clipped peak``, ``clipped plateau``, ``cut at start``, ``cut at end``, ``breakaway
    # not recorded``, ``lost samples``
    flags: tuple[str, ...] = ()

    @property
    def valid(self) -> bool:
        """Whether the wheel broke away and turned."""
        return self.onset_s is not None


def true_pulls(axle: AxleModel, lever_kgm2: float, run: Mechanics, segments: Iterable[Segment]) -> tuple[TruePull, ...]:
    """Work out the truth of every pull of a run."""
    pulls: list[TruePull] = []
    for segment in segments:
        rested = not pulls or segment.first * run.step_s - pulls[-1].end_s >= RESTED_S
        pulls.append(_true_pull(axle, lever_kgm2, run, segment, None if rested else pulls[-1].handoff_nm))
    return tuple(pulls)


def _true_pull(
    axle: AxleModel, lever_kgm2: float, run: Mechanics, segment: Segment, before_nm: float | None = None
) -> TruePull:
    at, step = slice(segment.first, segment.last), run.step_s
    sign = segment.pull.direction
    before = slice(max(0, segment.first - round(RESTED_S / step)), max(1, segment.first))
    handoff = float(run.sensor_nm[before].mean()) if before_nm is None else before_nm
    torque = sign * (run.sensor_nm[at] - handoff)
    wheel = sign * run.wheel_rad[at]
    kind: Literal["pull", "aborted", "hold"] = "pull"
    if segment.pull.stop_nm:
        kind = "hold" if segment.pull.hold_s > 0.3 else "aborted"
    bare = TruePull(
        kind,
        segment.first * step,
        segment.last * step,
        sign,
        handoff,
        max_nm=float(torque.max()),
        turn_deg=degrees(float(wheel[-1] - wheel[0])),
        regrip=bool(segment.pull.regrips),
    )
    onset = _onset(axle, run, at, wheel)
    if onset is None:
        return bare
    top = _breakaway(torque, onset, step)
    broken = replace(
        bare,
        onset_s=(segment.first + onset) * step,
        breakaway_s=(segment.first + top) * step,
        breakaway_nm=float(torque[top]),
        breakaway_axle_nm=float(sign * run.axle_nm[segment.first + top]),
        levels=_levels(run, segment, torque),
    )
    return _turned(axle, lever_kgm2, run, segment, onset, torque, broken)


def _turned(
    axle: AxleModel, lever_kgm2: float, run: Mechanics, segment: Segment, onset: int, torque: Floats, broken: TruePull
) -> TruePull:
    """Complete a pull that has broken away with what happened while it turned."""
    at, step, sign = slice(segment.first, segment.last), run.step_s, segment.pull.direction
    sticks = _sticks(run, at, onset)
    steady = _steady(axle, lever_kgm2, run, segment, onset, torque)
    stick_slip = None
    if sticks is not None:
        steady, stick_slip = _whole_cycles(run, at, sticks, torque, steady)
    has_peak = axle.held != "none" and any(_excess(pack) for pack in (axle.driven_pack, axle.other_pack))
    if steady.sum() * step < PLATEAU_S or broken.breakaway_nm is None:
        return replace(broken, stick_slip=stick_slip, peak_class="distinct" if has_peak else "marginal")
    plateau = float(torque[steady].mean())
    low, high = np.percentile(torque[steady], (2.5, 97.5))
    overshoot, ripple = broken.breakaway_nm / plateau - 1.0, float(high - low) / plateau
    packs = np.abs(run.driven_pack_nm[at]) + np.abs(run.other_pack_nm[at])
    return replace(
        broken,
        plateau_nm=plateau,
        plateau_axle_nm=float(sign * run.axle_nm[at][steady].mean()),
        pack_mean_nm=float(packs[steady].mean()) / 2,
        held_nm=float(np.abs(run.held_nm[at][steady]).mean()),
        steady=_intervals(steady, segment.first, step),
        overshoot=overshoot,
        ripple=ripple,
        stick_slip=stick_slip,
        peak_class=_classify(overshoot, ripple, has_peak=has_peak, stick_slip=stick_slip is not None),
    )


def _levels(run: Mechanics, segment: Segment, torque: Floats) -> tuple[TrueLevel, ...]:
    """Give what a drive at several speeds shows at each."""
    speeds, step, sign = segment.pull.turn_rad_s, run.step_s, segment.pull.direction
    turning = np.flatnonzero(run.phase[segment.first : segment.last] == Phase.TURN)
    if len(speeds) < 2 or not turning.size:
        return ()
    levels, start = [], float(turning[0])
    for _, duration in speeds:
        end = start + duration / step
        half = slice(round((start + end) / 2), round(end))
        at = slice(segment.first + half.start, segment.first + half.stop)
        speed = float(sign * run.wheel_rad_s[at].mean())
        axle = float(sign * run.axle_nm[at].mean())
        levels.append(TrueLevel(at.start * step, at.stop * step, speed, float(torque[half].mean()), axle))
        start = end
    return tuple(levels)


def _excess(pack: Friction) -> bool:
    """Whether a pack's static level stands over its level at hand speed (0.25 rad/s of slip)."""
    return pack.static_nm > 1.02 * pack.steady_nm(0.25)


def _classify(overshoot: float, ripple: float, *, has_peak: bool, stick_slip: bool) -> PeakClass:
    if not has_peak:
        return "none" if overshoot <= MARGINAL else "marginal"
    if overshoot < NO_PEAK:
        return "none"
    return "marginal" if overshoot < MARGINAL or (overshoot < ripple and not stick_slip) else "distinct"


def _onset(axle: AxleModel, run: Mechanics, at: slice, wheel: Floats) -> int | None:
    """First index of sustained slip, or None."""

    def slid(angle: Floats, friction: Friction) -> Mask:
        far: Mask = np.abs(angle[at] - angle[at.start]) > ELASTIC_TIMES * friction.elastic_rad
        return far

    both = slid(run.driven_slip_rad, axle.driven_pack) & slid(run.other_slip_rad, axle.other_pack)
    along = slid(run.wheel_rad, axle.driven_drag) & slid(run.case_rad, axle.case_drag)
    if axle.held == "none":
        both = both | along
    elif axle.held == "other side" and _drag_outweighs(axle):
        both = both & along
    if not both.any():
        return None
    onset = int(np.argmax(both))
    return onset if wheel[onset:].max() - wheel[onset] >= ROTATION_RAD else None


def _drag_outweighs(axle: AxleModel) -> bool:
    """Whether half the driveline's drag and the wheel's own exceed the mean of the packs."""
    drags = axle.driven_drag.coulomb_nm + axle.case_drag.coulomb_nm / 2
    return drags > (axle.driven_pack.coulomb_nm + axle.other_pack.coulomb_nm) / 2


def _breakaway(torque: Floats, onset: int, step: float) -> int:
    """Index of the breakaway."""
    first = max(0, onset - round(BEFORE_ONSET_S / step))
    least, most = onset + round(AT_LEAST_S / step), onset + round(AT_MOST_S / step)
    window = torque[first : most + 1]
    fallen = window < DROP * np.maximum.accumulate(window)
    fallen[: least - first] = False
    last = int(np.argmax(fallen)) if fallen.any() else window.size
    return first + int(np.argmax(window[: max(last, 1)]))


def _steady(axle: AxleModel, lever_kgm2: float, run: Mechanics, segment: Segment, onset: int, torque: Floats) -> Mask:
    at, step = slice(segment.first, segment.last), run.step_s
    phase = run.phase[at]
    on: Mask = (phase == Phase.TURN) & ~_spread(phase != Phase.TURN, round(CALM_S / step))
    speed = _moving_mean(np.abs(run.wheel_rad_s[at]), round(SPEED_MEAN_S / step))
    if not on.any():
        return on
    on &= speed > SPEED_SHARE * float(np.median(speed[on]))
    inertia = (axle.wheel_kgm2 + lever_kgm2) * np.abs(run.wheel_rad_s2[at])
    on &= inertia < INERTIA_SHARE * np.abs(torque)
    renewed = max(5 * (pack.memory_rad + pack.elastic_rad) for pack in (axle.driven_pack, axle.other_pack))
    slid = np.abs(run.driven_slip_rad[at] - run.driven_slip_rad[segment.first + onset])
    on &= (slid > renewed) | (np.arange(on.size) > onset + round(1.0 / step))
    on[: onset + round(AT_LEAST_S / step)] = False
    return on


def _sticks(run: Mechanics, at: slice, onset: int) -> NDArray[np.int64] | None:
    """Find where the driven pack sticks again and again while the hand turns; None without stick-slip.

    A stick begins where the slip speed falls under a tenth of its mean after having been over the mean.
    """
    slip = _moving_mean(np.abs(np.gradient(run.driven_slip_rad[at], run.step_s)), 5)
    turning = run.phase[at] == Phase.TURN
    turning[:onset] = False
    if turning.sum() * run.step_s < PLATEAU_S:
        return None
    mean = float(slip[turning].mean())
    if mean < SLIPPING_SHARE * float(np.abs(run.wheel_rad_s[at][turning]).mean()):
        return None  # the wheel turns, but not by slip of the packs
    state = np.where(slip > mean, 1, np.where(turning & (slip < STUCK_SHARE * mean), -1, 0))
    last = np.maximum.accumulate(np.where(state != 0, np.arange(state.size), 0))
    state = state[last]
    starts = np.flatnonzero((state[1:] == -1) & (state[:-1] == 1)) + 1
    return starts if starts.size >= STICKS else None


def _whole_cycles(
    run: Mechanics, at: slice, sticks: NDArray[np.int64], torque: Floats, steady: Mask
) -> tuple[Mask, TrueStickSlip]:
    """Steady time in stick-slip: whole cycles while the hand is fully on."""
    cycles = [torque[a:b] for a, b in pairwise(sticks)]
    period = float(np.median(np.diff(sticks))) * run.step_s
    swing = float(np.median([cycle.max() - cycle.min() for cycle in cycles]))
    whole = np.zeros_like(steady)
    whole[sticks[0] : sticks[-1]] = True
    whole &= run.phase[at] == Phase.TURN
    return whole, TrueStickSlip(1 / period, swing)


def _moving_mean(values: Floats, width: int) -> Floats:
    """Centred moving mean; shorter windows at the ends."""
    total = np.concatenate(([0.0], np.cumsum(values)))
    index = np.arange(values.size)
    low, high = np.maximum(0, index - width // 2), np.minimum(values.size, index + width // 2 + 1)
    return np.asarray((total[high] - total[low]) / (high - low))


def _spread(mask: Mask, width: int) -> Mask:
    """Extend every true stretch by ``width`` samples to later times."""
    last = np.maximum.accumulate(np.where(mask, np.arange(mask.size), -(10**9)))
    near: Mask = np.arange(mask.size) - last <= width
    return near


def _intervals(mask: Mask, first: int, step: float) -> tuple[tuple[float, float], ...]:
    edges = np.flatnonzero(np.diff(np.concatenate(([0], mask.astype(np.int8), [0]))))
    starts, ends = (first + edges[::2]) * step, (first + edges[1::2]) * step
    return tuple(zip(starts.tolist(), ends.tolist(), strict=True))


def spoilt(pull: TruePull, sent: Delivered, sensor: SensorModel) -> tuple[str, ...]:
    """Say what the recording does not show of a pull."""
    flags = []
    time, period = sent.time_s, 1.0 / sensor.rate_hz
    first, last = (float(time[0]), float(time[-1])) if time.size else (np.inf, -np.inf)
    if pull.start_s < first < pull.end_s:
        flags.append("cut at start")
    if pull.start_s < last < pull.end_s - period:
        flags.append("cut at end")
    if pull.breakaway_s is None:
        return tuple(flags)
    near = (time > pull.breakaway_s - 0.1 - period) & (time < pull.breakaway_s + 0.1 + period)
    if not first + period <= pull.breakaway_s <= last - period:
        flags.append("breakaway not recorded")
    elif near.sum() < 0.9 * (0.2 + 2 * period) * sensor.rate_hz - 2 or np.isnan(sent.torque_nm[near]).any():
        flags.append("lost samples")
    if sent.over[near].any():
        flags.append("clipped peak")
    if any(sent.over[(time > a) & (time < b)].any() for a, b in pull.steady):
        flags.append("clipped plateau")
    return tuple(flags)
