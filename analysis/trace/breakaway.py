"""The breakaway torque: the first peak after which sustained slip follows."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.smooth import last_where, moving_mean, parabola

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

REACHED = 0.8
"""The search begins where the torque reaches this share of the slip level: bumps and lash lie below."""

BEFORE_ONSET_S = 0.3
"""The breakaway may lie this long before the wheel is seen to turn (s)."""

FALL = 0.03
"""Share by which the torque must fall below its running maximum for a peak to be over."""

EXCEEDED_S = 0.15
"""A peak that is exceeded by ``FALL`` within this time (s) was a tremor (7-12 Hz) on the ramp, not the breakaway."""

CLEARLY_S = 0.3
"""Exceeded by ``FALL`` within this time (s), it was passed over on the way up: a gear flank or a part gave way."""

TAKEN_UP, TAKEN_UP_S = 0.97, 0.8
"""A peak below this share of the slip level cannot have begun the slip: the weaker pack gave way, or lash was taken up.
It is passed over if the torque goes higher within this time (s)."""

RIVAL, RIVAL_S, RIVAL_U = 1.05, 1.0, 0.55
"""A passed peak above this share of the slip level, where breakaways lie, or a higher one within this time (s) after it
may be the true one (one in five is): so much of the difference is a standard uncertainty, so that 95 % reach it, the
levelling of the search included."""

WEAK, BROKE = 1.01, 0.9
"""So may a passed peak above the first share only, which no breakaway lies below, if the torque then fell below the
second share of it: it broke, and lever and wheel rang; a tremor falls less."""

SHELF_S = 0.3
"""So may a top that the torque did not exceed for this long (s) before it rose by more than ``FALL``: a hand hesitates
below the slip level, as a rule."""

KNEE_S, KNEE_FROM, KNEE_FLAT, KNEE_BENT, KNEE_RAMP = 0.3, 0.9, 0.2, 0.6, 0.3
"""So may a knee from which the torque rose on by more than ``FALL``: the first level above the second share of the slip
level from which it rose, for the first time (s), at less than the third share of the ramp's rate from the last share
of the level on, after it had bent over to below the fourth: a pack without a peak, jerked on when it slipped. A hand
that hesitates stops at once."""

FLAT_S = 1.0
"""Without any fall the search for a peak ends when the torque has not risen for this long (s) ..."""

RAISED = 1.02
"""... by more than this factor."""

SEARCH_S = 0.01
"""Smoothing before the search (s): short against half a period of the quickest real swing (15 Hz: 33 ms)."""

SHARP_S = 0.004
"""No peak is sharper than this half-width (s): a parabola is fitted over it whatever shakes on top."""

WIDTHS_S = (0.002, 0.004, 0.008, 0.016, 0.032, 0.048)
"""Half-widths of the parabola through the top that are tried (s)."""

FITS = 1.3
"""A parabola fits if its residual deviation is below this many times the noise."""

ROUND = 0.001
"""... plus this share of the torque: what the parabola then misses at the top is of the same size."""

UNDER_READ = 0.5
"""Share of one step of the ramp by which the highest reading lies below the true peak when too few readings fall on
it: sampling alone loses half a step on average ..."""

UNDER_READ_MOST, UNDER_READ_MOST_PER_S = 0.005, 0.35
"""... but not more than this share of the torque, and this more per second of sample interval: the quicker a ramp, the
rounder its top, because the hand's force gives way and the wheel swings through (a quick peak is 0.05-0.1 s wide)."""

SPARSE = 0.25
"""... and at least this share of the drop to the readings beside it: a parabola through three readings whose top lies
anywhere between them is under-read by a sixth of its drop on average, a sharper top by more."""

UNDER_READ_U = 0.6
"""Standard uncertainty of that correction, relative: the peak may lie anywhere within the step."""


LATE, LATE_U = 0.6, 0.25
"""Share of rate times delay that a peak is under-read by, and its standard uncertainty."""


@dataclass(frozen=True, slots=True)
class Peak:
    """Where the peak is, what it reads, how well, and the step of the ramp per sample.

    Of its standard uncertainties ``u_nm`` differs from pull to pull; ``u_method_nm`` is the same for all that are read
    with this rate and filter.
    """

    time_s: float
    torque_nm: float
    u_nm: float
    index: int
    step_nm: float
    u_method_nm: float = 0.0


def find_peak(
    time_s: Floats,
    torque_nm: Floats,
    slip_nm: float,
    noise_nm: float,
    onset_s: float | None = None,
    delay_s: float | None = None,
    delay_s_u: float | None = None,
) -> Peak | None:
    """Find the first peak that counts.

    Args:
        time_s, torque_nm: shape (n,); The pull from its foot, hand-off level subtracted, positive in the pull's
            direction.
        slip_nm: The level at which the pack slips, roughly.
        noise_nm: Noise of one reading.
        onset_s: When slip began, if the wheel's angle told it.
        delay_s, delay_s_u: Delay of the transducer's filter, and its standard uncertainty.
    """
    step = (time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    width = 2 * (round(SEARCH_S / step) // 2) + 1
    high = torque_nm > REACHED * slip_nm
    if onset_s is not None:
        high &= time_s > onset_s - BEFORE_ONSET_S
    if not high.any() or slip_nm <= 0:
        return None
    up = int(np.argmax(high))
    first = max(up - width, 0)
    low = last_where(torque_nm[: up + 1] < KNEE_RAMP * slip_nm)
    ramp = (REACHED - KNEE_RAMP) * slip_nm / max(float(time_s[up] - time_s[max(low, 0)]), step)
    look_s = FLAT_S
    while True:  # most peaks come soon; a slow ramp or a hand that rises further takes a longer look
        look_s *= 4
        stop = int(np.searchsorted(time_s, time_s[first] + look_s))
        t, x = time_s[first:stop], moving_mean(torque_nm[first:stop], width)
        found = _first_peak(t, x, slip_nm, noise_nm / np.sqrt(width), ramp)
        if stop == len(time_s) or (found is not None and t[found[0]] < t[-1] - look_s / 2):
            break
    if found is None:
        return None
    peak = _read_peak(time_s, torque_nm, first + found[0], noise_nm)
    peak = replace(peak, u_nm=float(np.hypot(peak.u_nm, RIVAL_U * found[1])))
    if peak.torque_nm < REACHED * slip_nm / 2:
        return None  # a lone reading, nothing to be read between its neighbours
    return _in_time(peak, time_s, torque_nm, delay_s, delay_s_u or 0.0) if delay_s else peak


def _in_time(peak: Peak, t: Floats, x: Floats, delay_s: float, delay_s_u: float) -> Peak:
    """Correct for a filter that is late: on a ramp it reads low by rate times delay, at the tip by a part of that.

    An average over twice the delay reads a tip low by half of that if the torque stays up after it, by more if not.
    """
    ends = np.searchsorted(t, peak.time_s - np.array((3.0, 1.0)) * delay_s)
    before = slice(int(ends[0]), max(int(ends[1]), int(ends[0]) + 2))
    if before.stop > peak.index or peak.time_s - t[0] < delay_s:
        return peak  # no ramp to judge by
    rate = max(float(x[before.stop - 1] - x[before.start]) / float(t[before.stop - 1] - t[before.start]), 0.0)
    late = rate * delay_s
    u = float(np.hypot(np.hypot(peak.u_method_nm, LATE_U * late), LATE * rate * delay_s_u))
    return replace(peak, time_s=peak.time_s - delay_s, torque_nm=peak.torque_nm + LATE * late, u_method_nm=u)


def _first_peak(t: Floats, x: Floats, slip_nm: float, noise: float, ramp: float) -> tuple[int, float] | None:
    """Give the first running peak that is not clearly exceeded soon after, and how far a rival is from it (N·m).

    Each peak that is passed over gives way to the next one that exceeds it, not to the highest of all that come: that
    may be a swing long after the slip began. A rival is a passed peak above the slip level, a shelf or knee before, or
    a peak that is a little higher and came late: the wheel's swing after the break, or the break of a stronger part?
    The torque cannot tell. ``ramp`` is the rate at which the torque came up (N·m/s).
    """
    if not len(t):
        return None
    at, passed = _running_peak(t, x, 0, noise), np.inf
    while True:
        soon_s = TAKEN_UP_S if x[at] < TAKEN_UP * slip_nm else EXCEEDED_S
        soon, clear = (int(np.searchsorted(t, t[at] + s)) for s in (EXCEEDED_S, max(soon_s, CLEARLY_S)))
        exceeded = _clearly_above(x[at], noise)
        top = at + int(np.argmax(x[at : max(soon, at + 1)]))
        high = at + int(np.argmax(x[at : max(clear, at + 1)]))
        if high == at or not x[high] > exceeded:
            later = float(x[top : int(np.searchsorted(t, t[top] + RIVAL_S))].max())
            late = later if later > _clearly_above(x[top], noise) else x[high]
            up = slice(top + 1)
            rested = _shelf(t[up], x[up], TAKEN_UP * slip_nm, noise), _knee(t[up], x[up], slip_nm, noise, ramp)
            passed = min(passed, *rested)
            return top, float(max(x[top] - passed, late - x[top], 0.0))
        above = at + 1 + int(np.argmax(x[at + 1 :] > exceeded))
        broke = x[at] > WEAK * slip_nm and x[at:above].min() < BROKE * x[at]
        if broke or x[at] > RIVAL * slip_nm:
            passed = min(passed, x[at])
        at = _running_peak(t, x, above, noise)


def _clearly_above(torque_nm: Floats, noise: float) -> Floats:
    """Give what a torque must pass to exceed another beyond doubt."""
    return torque_nm * (1 + FALL) + 3 * noise


def _shelf(t: Floats, x: Floats, least_nm: float, noise: float) -> float:
    """Give the lowest top, above the least one, that the torque kept below before it rose to its end; else infinite."""
    tops = np.maximum.accumulate(x)
    raised = np.flatnonzero(np.diff(tops, prepend=-np.inf) > 0)
    at = raised[(x[raised] > least_nm) & (_clearly_above(x[raised], noise) < x[-1])]
    exceeded = np.searchsorted(tops, x[at] + 3 * noise, side="right")
    kept = at[t[exceeded - 1] - t[at] > SHELF_S]
    return float(x[kept[0]]) if len(kept) else np.inf


def _knee(t: Floats, x: Floats, slip_nm: float, noise: float, ramp: float) -> float:
    """Give the first level at which the ramp ran out before the torque rose on to its end; infinite if it did not."""
    ahead = np.interp(t + KNEE_S, t, x)
    flat = (ahead - x < KNEE_FLAT * ramp * KNEE_S) & (x > KNEE_FROM * slip_nm) & (t + KNEE_S <= t[-1])
    flat &= _clearly_above(ahead, noise) < x[-1]
    at = int(np.argmax(flat))
    begin = int(np.searchsorted(t, t[at] - KNEE_S))
    if not flat.any() or x[at] - x[begin] > KNEE_BENT * ramp * (t[at] - t[begin]):
        return np.inf
    return float(max(x[at], ahead[at]))


def _running_peak(t: Floats, x: Floats, start: int, noise: float) -> int:
    """First maximum from ``start`` below which the torque falls clearly, or that it does not leave for ``FLAT_S``."""
    part = x[start:]
    top = np.maximum.accumulate(part)
    fallen = np.flatnonzero(part < top * (1 - FALL) - 3 * noise)
    end = int(fallen[0]) + 1 if len(fallen) else len(part)
    # where the top was last raised by a clear step: FLAT_S later it counts as flat
    times = t[start : start + end]
    raised = top[:end] > RAISED * np.interp(times - FLAT_S, times, top[:end])
    flat = np.flatnonzero(~raised & (times > times[0] + FLAT_S))
    if len(flat):
        end = int(flat[0]) + 1
    return start + int(np.argmax(part[:end]))


def _read_peak(t: Floats, x: Floats, at: int, noise_nm: float) -> Peak:
    """Read the top through the widest parabola that noise allows; with few samples correct for under-reading."""
    at = _highest_near(t, x, at)
    step = _ramp_step(x, at)
    interval = float(t[-1] - t[0]) / max(len(t) - 1, 1)
    best: tuple[float, float] | None = None
    for half in WIDTHS_S:
        count = round(half / interval)
        near = slice(max(at - count, 0), at + count + 1)
        dt, y = (t[near] - t[at]) / half, x[near]
        if count < 2 or len(y) < 5:
            continue
        a, b, c, rest = parabola(dt, y)
        fits = rest <= FITS * noise_nm + ROUND * x[at]
        if not fits and (best is not None or half > SHARP_S):
            break
        if c < 0:
            top = min(max(-b / (2 * c), -1.0), 1.0)
            best = a + top * (b + c * top), noise_nm * 1.5 / np.sqrt(len(y))
    if best is None:
        beside = SPARSE * float(x[at] - (x[max(at - 1, 0)] + x[min(at + 1, len(x) - 1)]) / 2)
        most = (UNDER_READ_MOST + UNDER_READ_MOST_PER_S * interval) * float(x[at])
        missed = min(max(UNDER_READ * step, beside), most)
        u = float(np.hypot(noise_nm, min(beside, most)))
        again = float(x[at] - x[at - 1]) if at > 1 and x[at - 1] < x[at - 2] else 0.0  # gripped again after a dip
        unseen = min(UNDER_READ * max(step, _ramp_step(x, at - 1), again), most)  # between two that are as high
        return Peak(float(t[at]), float(x[at]) + missed, u, at, step, UNDER_READ_U * max(unseen, missed))
    return Peak(float(t[at]), best[0], best[1], at, step)


def _ramp_step(x: Floats, at: int) -> float:
    """Give the rise per sample with which the torque runs into its peak: a ramp that bends over runs on less far."""
    if at < 3:
        return 0.0
    last, before = float(x[at - 1] - x[at - 2]), float(x[at - 2] - x[at - 3])
    return max(min(last, 2 * last - before), 0.0)


def _highest_near(t: Floats, x: Floats, at: int) -> int:
    count = round(SEARCH_S * (len(t) - 1) / max(float(t[-1] - t[0]), SEARCH_S))
    low = max(at - count, 0)
    return low + int(np.argmax(x[low : at + count + 1]))
