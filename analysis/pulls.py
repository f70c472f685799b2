"""One load on the lever, read: is it a pull, and what does it say.

Offered: ``Window``, ``read_pull``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from analysis.angle import Slip, describe_turning, find_slip, plausible_angle
from analysis.breakaway import FALL, Peak, find_peak
from analysis.gates import CUT_END, CUT_START, GRIPPED_AGAIN, HELD, LET_GO, clipped, reasons_for
from analysis.handoff import Handoff, find_handoff
from analysis.plateau import Plateau, find_plateau, together
from analysis.results import Breakaway, Pull, Rotating, StickSlip, Turning
from analysis.smooth import block_means, crowded, quantile, sample_noise, thin
from analysis.stickslip import Cycles, find_cycles
from analysis.traces import Floats, Ints, Samples, Sensor, spikes

DISTINCT = 0.045
"""Relative height of a peak above the plateau from which it is called distinct: hand and inertia alone make a hump of
2.6 % (median) on packs without a static peak."""

DISTINCT_PER_S = 0.25
"""... less this per second of sample interval: sparse readings flatten a peak, and the hump of a hand as well."""

BREAKAWAY_U = 0.0045
"""Relative standard uncertainty of what a breakaway is taken to be: which ripple of the top counts, what filter and
sampling keep of it. From simulations of two kinds, where the reading missed the truth by so much in good data."""

ROTATING_U = 0.003
"""The same for the rotating torque: where its steady time begins and ends, and what drifted since the hand-off."""

LEAST_NOISES = 8.0
"""A load is at least so many deviations of a reading at rest; noise alone reaches 4 in a long rest."""

LEAST_OF_CAPACITY = 0.02
"""Loads below this share of the capacity are not read: no class of transducer is calibrated lower (ISO 376)."""

HELD_S = 1.2
"""A load held above half its maximum for this long (s) is a pull; aborted loads and bumps are over sooner."""

AFTER_U = 0.03
"""Relative standard uncertainty of a level that could only be read just after the pull: lever and wheel still swing."""

KNEE = 0.97
"""A ramp without a peak has run into its level at this share of it."""

DROPS_S = 0.25
"""After a breakaway the torque falls clearly within this time (s)."""

QUARTER = 0.25
"""A ramp is under way at this share of the pull's level, however the lever hung before."""

SLIPS_S = 0.2
"""After a breakaway the torque stays near the slip level for longer than this (s): let go sooner, nothing slipped."""

BUMP_S = 0.5
"""A load that was above half its maximum for less (s) is a bump, not worth a word."""

REGRIP_S = 1.2
"""A load that begins sooner than this (s) after the last pull, the same way, is the same pull after a re-grip."""

STILL_NOISES = 3.0
"""A load as still as this many times the noise at rest is the lever's weight: no hand and no pack is so still ..."""

STILL_SHAKE = 0.001
"""... nor as still as this share of the load, where the noise allows to see that; tremor is three times as much ..."""

STILL_SPREAD = 0.02
"""... and over its middle it keeps within this share of the load, where packs wander and levers do not ..."""

STILL_BLOCK_S = 0.025
"""... seen in blocks of this length (s): a quarter period of the tremor."""

PLACED_S = 0.5
"""A lever is put on or turned over within this time (s), a pull takes longer to its slip."""

STILL_SHARE = 0.10
"""Below this share of the capacity a lever's weight is likelier than a pull so still, whatever the noise."""

NEAR_TOP = 0.85
"""The torque was last near its level where it was above this share of it; then it was released."""


@dataclass(frozen=True, slots=True)
class Window:
    """A span with the rest before it: ``first`` and ``last`` are the span's samples within the window."""

    samples: Samples
    first: int
    last: int
    level_nm: float
    from_start: bool
    to_end: bool
    resolution_nm: float
    before: Read | None


@dataclass(frozen=True, slots=True)
class Read:
    """A pull, and its plateau as found: a re-grip goes on from there."""

    pull: Pull
    plateau: Plateau | None = None


@dataclass(frozen=True, slots=True)
class Load:
    """A window turned so that the pull is positive, spikes taken out; ``first`` to ``last`` is the span."""

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None
    first: int
    last: int
    sign: int
    level_nm: float
    noise_nm: float
    spikes: int


def read_pull(window: Window, sensor: Sensor) -> Read | None:
    """Read one span; None where it is no pull at all (a bump, a step, noise)."""
    load = _turned(window)
    if load is None:
        return None
    t, y = load.time_s, load.torque_nm
    top = quantile(thin(y[load.first : load.last]), 0.95)
    half = np.flatnonzero(y[load.first : load.last] - load.level_nm > 0.5 * (top - load.level_nm)) + load.first
    if len(half) < 3 or t[half[-1]] - t[half[0]] < BUMP_S:
        return None
    before = _gripped_again(window.before, load, _under_way(load, top, int(half[0])))
    if window.from_start:
        hand = Handoff(load.level_nm, AFTER_U * abs(top - load.level_nm), 0)
    elif before is not None:
        hand = Handoff(load.sign * before.pull.handoff_nm, load.noise_nm, load.first)
    else:
        hand = find_handoff(t[: half[0] + 1], y[: half[0] + 1], load.level_nm, top, load.noise_nm)
    x = y - hand.level_nm
    height = top - hand.level_nm
    if height < max(LEAST_NOISES * load.noise_nm, LEAST_OF_CAPACITY * (sensor.capacity_nm or 0.0)):
        return None
    if _is_still(load, x, half, height, sensor):
        return None
    start_s, end_s = float(t[hand.foot]), _end_s(load)
    if t[half[-1]] - t[half[0]] < HELD_S:
        return Read(Pull(start_s, end_s, load.sign, load.sign * hand.level_nm, reasons=(LET_GO,)))
    return _read(load, x, hand, half, window, before, sensor)


def _end_s(load: Load) -> float:
    """Give the time of the release: when the torque was first found to be gone."""
    return float(load.time_s[min(load.last, len(load.time_s) - 1)])


def _under_way(load: Load, top_nm: float, up: int) -> float:
    """Give the time at which the ramp left the lowest quarter."""
    low = np.flatnonzero(load.torque_nm[: up + 1] < load.level_nm + QUARTER * (top_nm - load.level_nm))
    return float(load.time_s[low[-1]]) if len(low) else float(load.time_s[0])


def _gripped_again(before: Read | None, load: Load, start_s: float) -> Read | None:
    """Give the pull before if this load goes on with it."""
    if before is None or before.pull.direction != load.sign or start_s - before.pull.end_s > REGRIP_S:
        return None
    return before if before.pull.breakaway or before.pull.rotating else None


def _turned(window: Window) -> Load | None:
    s = window.samples
    inner = s.torque_nm[window.first : window.last]
    if len(inner) < 4:
        return None
    level = window.level_nm
    if window.from_start:
        level = float(np.median(s.torque_nm[(window.last + len(s)) // 2 :])) if window.last < len(s) else 0.0
    few = thin(inner)
    sign = 1 if quantile(few, 0.97) - level >= level - quantile(few, 0.03) else -1
    before = s.torque_nm[: window.first]
    steps = np.abs(np.diff(s.torque_nm))
    step_nm = window.resolution_nm or float(np.min(steps, where=steps > 1e-9 * np.ptp(inner), initial=np.ptp(inner)))
    noise = max(sample_noise(before if len(before) >= 8 else s.torque_nm), step_nm / float(np.sqrt(12)))
    angle = s.angle_deg if s.angle_deg is not None and plausible_angle(s.angle_deg) else None
    torque = sign * s.torque_nm
    out = spikes(s.torque_nm, noise)
    first, last = (at - int(np.searchsorted(out, at)) for at in (window.first, window.last))
    if not len(out):
        return Load(s.time_s, torque, angle, first, last, sign, sign * level, noise, 0)
    time_s, torque = np.delete(s.time_s, out), np.delete(torque, out)
    angle = None if angle is None else np.delete(angle, out)
    return Load(time_s, torque, angle, first, last, sign, sign * level, noise, len(out))


def _is_still(load: Load, x: Floats, half: Ints, height: float, sensor: Sensor) -> bool:
    """Whether this is the lever's own weight in another place: quickly there, then as still as at rest."""
    t = load.time_s
    low = np.flatnonzero(x[: half[0] + 1] < 0.1 * height)
    high = np.flatnonzero(x[half[0] :] > 0.9 * height)
    rise_s = t[half[0] + high[0]] - t[low[-1]] if len(low) and len(high) else 0.0
    small = sensor.capacity_nm is not None and height < STILL_SHARE * sensor.capacity_nm
    if rise_s > PLACED_S or (not small and load.noise_nm > STILL_SHAKE * height):
        return False
    held = x[half[0] : half[-1] + 1]
    middle = held[len(held) // 4 : max(len(held) * 3 // 4, len(held) // 4 + 4)]
    step = (t[half[-1]] - t[half[0]]) / max(len(held) - 1, 1)
    width = max(1, min(round(STILL_BLOCK_S / step), len(middle) // 3))
    means = block_means(middle, width)
    shake = float(np.median(np.abs(np.diff(means)))) / 0.95
    if quantile(means, 0.9) - quantile(means, 0.1) > max(STILL_SPREAD * height, STILL_NOISES * load.noise_nm):
        return False
    return shake < STILL_NOISES * load.noise_nm / np.sqrt(width) and (small or shake < STILL_SHAKE * height)


def _read(
    load: Load, x: Floats, hand: Handoff, half: Ints, window: Window, before: Read | None, sensor: Sensor
) -> Read | None:
    t, angle = load.time_s, load.angle_deg
    up, down = int(half[0]), int(half[-1])
    slip_nm = crowded(thin(x[up : down + 1]))
    release = int(np.flatnonzero(x[: down + 1] > NEAR_TOP * slip_nm)[-1])
    whole = slice(hand.foot, release + 1)
    start = float(t[hand.foot]), _end_s(load), load.sign, load.sign * hand.level_nm
    slip = None if angle is None else find_slip(t[whole], x[whole], angle[whole], slip_nm)
    if slip is not None and slip.onset_s is None:
        return Read(Pull(*start, reasons=(HELD,)))
    cut = clipped(load.torque_nm[whole], sensor, window.resolution_nm)
    peak = None
    if not window.from_start and before is None:
        onset_s = None if slip is None else slip.onset_s
        peak = find_peak(t[whole], x[whole], slip_nm, load.noise_nm, onset_s)
    after = _slips_from(t[whole], x[whole], peak, slip_nm)
    if peak is not None and not window.to_end and float(t[release]) - after < SLIPS_S:
        return Read(Pull(*start, reasons=(LET_GO,)))
    turning = slice(int(np.searchsorted(t, after)), release + 1)
    cycles = find_cycles(t[turning], x[turning])
    plateau = find_plateau(t, x, after, float(t[release]), cycles)
    if plateau is None and cycles is None and peak is not None and not _breaks(t[whole], x[whole], peak):
        return Read(Pull(*start, reasons=(LET_GO,)))
    reasons = reasons_for(t[whole], x[whole], peak, plateau, cut, float(t[release]))
    if cut.any() and peak is not None and cut[max(peak.index - 1, 0) : peak.index + 2].any():
        peak = None
    interval_s = quantile(thin(np.diff(t[whole])), 0.5)
    breakaway = _breakaway(peak, slip_nm if plateau is None else plateau.torque_nm, interval_s, hand.u_nm, sensor)
    if before is not None:
        if plateau is None or before.plateau is None:
            return None
        plateau = together(before.plateau, plateau)
        breakaway = _seen_again(before.pull.breakaway, plateau)
        start = before.pull.start_s, *start[1:]
    pull = Pull(
        *start,
        breakaway=breakaway,
        rotating=_rotating(plateau, hand.u_nm, sensor),
        stick_slip=_stick_slip(cycles, plateau),
        turning=_turning(load, x, plateau, slip),
        reasons=(
            *((CUT_START,) if window.from_start else ()),
            *((GRIPPED_AGAIN,) if before is not None else ()),
            *reasons,
            *((CUT_END,) if window.to_end else ()),
        ),
        left_out=load.spikes,
    )
    return Read(pull, plateau)


def _slips_from(t: Floats, x: Floats, peak: Peak | None, slip_nm: float) -> float:
    """Give the time from which the pack slips: its breakaway, or where a ramp without a peak runs into its level."""
    knee = float(t[int(np.argmax(x > KNEE * slip_nm))])
    return knee if peak is None or not _distinct(peak.torque_nm, slip_nm) else peak.time_s


def _breaks(t: Floats, x: Floats, peak: Peak) -> bool:
    """Whether the torque drops from its peak and then stays up: what holds it then is a pack that slips."""
    soon, later = np.searchsorted(t, (peak.time_s + DROPS_S, peak.time_s + 2 * DROPS_S))
    falls = bool((x[peak.index : soon] < (1 - FALL) * peak.torque_nm).any())
    return falls and later < len(t) and bool(x[peak.index : later].min() > 0.5 * peak.torque_nm)


def _turning(load: Load, x: Floats, plateau: Plateau | None, slip: Slip | None) -> Turning | None:
    if slip is None or plateau is None or load.angle_deg is None:
        return None
    return describe_turning(load.time_s, x, load.angle_deg, plateau.steady, slip.wind_up_deg_per_nm)


def _seen_again(breakaway: Breakaway | None, plateau: Plateau) -> Breakaway | None:
    if breakaway is None:
        return None
    return replace(breakaway, distinct_peak=_distinct(breakaway.at_sensor_nm, plateau.torque_nm))


def _distinct(peak_nm: float, slip_nm: float, interval_s: float = 0.0) -> bool:
    return peak_nm > (1 + max(DISTINCT - DISTINCT_PER_S * interval_s, DISTINCT / 2)) * slip_nm


def _stick_slip(cycles: Cycles | None, plateau: Plateau | None) -> StickSlip | None:
    if cycles is None or plateau is None:
        return None
    return StickSlip(cycles.frequency_hz, cycles.peak_to_peak_nm, cycles.peak_to_peak_nm / plateau.torque_nm)


def _breakaway(
    peak: Peak | None, slip_nm: float, interval_s: float, u_level: float, sensor: Sensor
) -> Breakaway | None:
    if peak is None:
        return None
    u = float(np.hypot(np.hypot(peak.u_nm, u_level), BREAKAWAY_U * peak.torque_nm))
    u95 = 1.96 * float(np.hypot(u, sensor.relative_u * peak.torque_nm))
    return Breakaway(peak.time_s, peak.torque_nm, u, u95, _distinct(peak.torque_nm, slip_nm, interval_s))


def _rotating(plateau: Plateau | None, u_level: float, sensor: Sensor) -> Rotating | None:
    if plateau is None:
        return None
    u = float(np.hypot(np.hypot(plateau.u_nm, u_level), ROTATING_U * plateau.torque_nm))
    u95 = 1.96 * float(np.hypot(u, sensor.relative_u * plateau.torque_nm))
    return Rotating(plateau.start_s, plateau.end_s, plateau.torque_nm, u, u95, plateau.max_nm, plateau.steady_s)
