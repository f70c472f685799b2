"""The rotating torque: the time average while the pack keeps slipping under a steady hand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.averaging import highest_of, level_uncertainty
from analysis.trace.levels import LEVEL_BAND, longest_level
from analysis.trace.smooth import block_means, moving_mean, quantile
from analysis.uncertainty.budget import NORMAL_95, t_factor

if TYPE_CHECKING:
    from analysis.trace.stickslip import Cycles
    from analysis.trace.traces import Bools, Floats

SETTLE_S = 0.2
"""The swing of wheel and shaft after the breakaway averages out after this time (s): one to two of its periods."""

RELEASE_S = 0.15
"""The hand begins to leave the lever about this time (s) before the torque has clearly fallen."""

SETTLE_MOST, RELEASE_MOST = 0.1, 0.25
"""... and both take at most these shares of a slip that is so short that little else would be left of it: what swings
averages out, what is let go does not."""

LEAST_S = 0.4
"""A steady stretch shorter than this is no plateau (s)."""

BAND = 0.045
"""Relative departure of the short-time mean from the level around it that a steady hand does not make."""

UNEVEN, UNEVEN_U, UNEVEN_LEAST = 2.0, 0.3, 0.3
"""Where no half second is within the band, this many times the band is allowed, and this share of the band is then the
relative standard uncertainty of the level. What keeps within it for less than the last share of the slip is no level:
a torque that swings."""

CYCLES_COVER = 0.7
"""Stick-slip over less than this share of the slip ended by itself: the steady slip after it counts as well."""

CYCLE_BAND = 0.12
"""The same for the mean over one cycle of stick-slip: cycles differ more than a steady slip does."""

SHORT_S = 0.25
"""Length of the short-time mean (s): longer than a period of the swing or the tremor (0.07-0.2 s)."""

AROUND_S = 1.25
"""The level around is the median over this time to both sides (s): a yank or a hesitation lasts under a second, a new
level (another speed, another drag) and the pack's waviness (two turns of the wheel) much longer."""

MARGIN_S = 0.15
"""What lies this close (s) to an excursion is excluded as well."""

OVER_BLOCK_S, OVER_MOST_S = 0.1, 2.5
"""The transient after a breakaway is looked for in blocks of this length (s), over at most this time (s)."""

OVER_GAIN = 0.6
"""It is cut off if that leaves this share of the squared standard error of the mean, or less."""

MAXIMUM_S = 0.02
"""The maximum over the stretch is one of means over this time (s)."""

CREEP, CLIMB, CLIMB_PARTS = 0.05, 0.25, 8
"""A torque that changes by more than the second share over the steady stretch, in a straight line through so many
parts of it, has no level: packs wave and settle by less. One that changes by more than the first pays for it: its
level is anywhere on the way ..."""

PARTED = 0.3
"""Of two levels that lasted as long and lie further apart than this share, none is the rotating torque."""

CLIMB_REST = 0.1
"""... straight if the parts lie off that line by less than this share of the change."""

FEW, SPARSE_S, FEW_U = 4, 0.1, 0.01
"""With fewer readings than this, of a display that gives one in this time (s) or longer, their plain mean is stated,
with at least this relative standard uncertainty."""

LEAST_DOF = 3
"""A stretch was chosen for keeping within a band: its scatter is known at least as well as from four readings."""

SWING_S = 0.12
"""The uncertainty of the mean is computed from means over this time (s), about a period of tremor or swing, or over
whole cycles of stick-slip: what swings within adds nothing to it."""


@dataclass(frozen=True, slots=True)
class Plateau:
    """Level over the steady time, its standard uncertainty, bounds, and the highest torque in it with its own.

    ``uneven``: no half second was steady; the level is that of the steadiest half second. ``other_nm``: another level
    that lasted as long (0: none).
    """

    start_s: float
    end_s: float
    torque_nm: float
    u_nm: float
    steady_s: float
    max_nm: float
    max_u_nm: float
    steady: Bools
    uneven: bool
    climb: float
    other_nm: float = 0.0

    @property
    def parted(self) -> bool:
        """Whether the torque kept to another level as long, so far off that neither can be stated."""
        return bool(self.other_nm) and abs(self.other_nm - self.torque_nm) > PARTED * self.torque_nm

    @property
    def climbs(self) -> bool:
        """Whether the torque went on in one direction instead of keeping a level."""
        return abs(self.climb) > CLIMB


def together(first: Plateau, second: Plateau) -> Plateau:
    """Give the time average over two stretches of one pull; the bounds and the highest of both."""
    share = first.steady_s / (first.steady_s + second.steady_s)
    return Plateau(
        first.start_s,
        second.end_s,
        share * first.torque_nm + (1 - share) * second.torque_nm,
        float(np.hypot(share * first.u_nm, (1 - share) * second.u_nm)),
        first.steady_s + second.steady_s,
        *max((first.max_nm, first.max_u_nm), (second.max_nm, second.max_u_nm)),
        second.steady,
        first.uneven and second.uneven,
        0.0,
    )


def find_plateau(
    time_s: Floats, torque_nm: Floats, start_s: float, end_s: float, cycles: Cycles | None = None
) -> Plateau | None:
    """Average over what is steady between the breakaway and the release.

    Args:
        time_s, torque_nm: shape (n,); The pull, hand-off level subtracted, positive in the pull's direction.
        start_s, end_s: Time of the breakaway, and when the torque was last near its level.
        cycles: Stick-slip: then the average runs over whole cycles.
    """
    t, x, first, short_s, band = _slip(time_s, torque_nm, start_s, end_s, cycles)
    if len(t) < FEW:
        return _few(time_s, torque_nm, _settled(start_s, end_s)[0], first + len(t))
    step = (t[-1] - t[0]) / (len(t) - 1)
    kept = _kept(t, x, step, short_s, band, cycles)
    if kept is None:
        return None
    values, times = x[kept.steady], t[kept.steady]
    level = float(values.mean())
    swing = max(1, min(round((SWING_S if short_s == SHORT_S else short_s) / step), len(values) // 4))
    inside = np.zeros(len(time_s), bool)
    inside[first : first + len(t)] = kept.steady
    width = max(1, round(MAXIMUM_S / step))
    whole = len(x) // width * width
    short = block_means(x, width)[kept.steady[:whole].reshape(-1, width).all(axis=1)]
    max_nm, max_u_nm = highest_of(short if len(short) else values, round(SHORT_S / step / width))
    return Plateau(
        start_s=float(times[0]),
        end_s=float(times[-1]),
        torque_nm=level,
        u_nm=max(
            level_uncertainty(block_means(values, swing), LEAST_DOF),
            UNEVEN_U * band * level if kept.uneven else 0.0,
            abs(kept.climb) * level / 12**0.5 if abs(kept.climb) > CREEP else 0.0,
            (abs(kept.other_nm - level) + LEVEL_BAND * level) / NORMAL_95 if kept.other_nm else 0.0,
        ),
        steady_s=float(len(values) * step),
        max_nm=max_nm,
        max_u_nm=max_u_nm,
        steady=inside,
        uneven=kept.uneven,
        climb=kept.climb,
        other_nm=kept.other_nm,
    )


def _settled(start_s: float, end_s: float) -> tuple[float, float]:
    """Give the times between which what swings after the breakaway is over and the hand is still on the lever."""
    long_s = end_s - start_s
    return start_s + min(SETTLE_S, SETTLE_MOST * long_s), end_s - min(RELEASE_S, RELEASE_MOST * long_s)


def _slip(
    time_s: Floats, torque_nm: Floats, start_s: float, end_s: float, cycles: Cycles | None
) -> tuple[Floats, Floats, int, float, float]:
    """Give the slip's samples, the first one's place, and over which short time and in which band it may be steady."""
    short_s, band = SHORT_S, BAND
    start_s, end_s = _settled(start_s, end_s)
    if cycles is not None and cycles.end_s - cycles.start_s + cycles.period_s > CYCLES_COVER * (end_s - start_s):
        start_s, end_s = cycles.start_s, cycles.end_s
        short_s, band = max(SHORT_S, cycles.period_s), CYCLE_BAND
    first, last = (int(i) for i in np.searchsorted(time_s, (start_s, end_s)))
    return time_s[first:last], torque_nm[first:last], first, short_s, band


@dataclass(frozen=True, slots=True)
class _Kept:
    """Which samples of a slip are steady, and what is to be said of them: see ``Plateau``."""

    steady: Bools
    climb: float
    other_nm: float
    uneven: bool


def _kept(t: Floats, x: Floats, step: float, short_s: float, band: float, cycles: Cycles | None) -> _Kept | None:
    """Choose what is steady; where that is too short, what is within a wider band, if it is much of the slip."""
    steady = _steady(t, x, step, short_s, band)
    climb, other_nm = _climb(x[steady]), 0.0
    if cycles is None:
        if abs(climb) <= CLIMB:
            level, other_nm = longest_level(x, steady, round(SHORT_S / step))
            steady &= level
        steady &= t >= _over(t, x, steady, step)
    if np.count_nonzero(steady) * step >= LEAST_S and np.count_nonzero(steady) > 1:
        return _Kept(steady, climb, other_nm, uneven=False)
    steady = _steady(t, x, step, short_s, UNEVEN * band)
    if np.count_nonzero(steady) * step < max(LEAST_S, UNEVEN_LEAST * float(t[-1] - t[0])):
        return None
    climb = _climb(x[steady])
    level, other_nm = longest_level(x, steady, round(SHORT_S / step))
    steady &= level
    return _Kept(steady, climb, other_nm, uneven=True) if np.count_nonzero(steady) > 1 else None


def _few(time_s: Floats, torque_nm: Floats, start_s: float, last: int) -> Plateau | None:
    """Average the few readings that a slow display gives while the pack slips: wide, by Student's t of so few."""
    step = float(time_s[-1] - time_s[0]) / max(len(time_s) - 1, 1)
    first = int(np.searchsorted(time_s, start_s + step / 2))
    x = torque_nm[first:last]
    n = len(x)
    if step < SPARSE_S or n < 2 or float(np.ptp(x)) > 2 * BAND * abs(float(x.mean())):
        return None
    u = t_factor(n - 1) / NORMAL_95 * float(x.std(ddof=1)) / float(np.sqrt(n))
    level = float(x.mean())
    inside = np.zeros(len(time_s), bool)
    inside[first:last] = True
    u = min(max(u, FEW_U * level), BAND * level)
    most = float(x.max())
    return Plateau(float(time_s[first]), float(time_s[last - 1]), level, u, n * step, most, u, inside, True, 0.0)


def _steady(t: Floats, x: Floats, step: float, short_s: float, band: float) -> Bools:
    """Mark what lies within the band and not beside an excursion; judged in blocks of a tenth of the short time."""
    width = max(1, round(SHORT_S / 10 / step))
    times, short = block_means(t, width), moving_mean(block_means(x, width), round(short_s / step / width))
    if len(short) < 2:
        return np.zeros(len(x), bool)
    level = _level_around(times, short)
    away = np.abs(short - level) > band * np.abs(level)
    beside = moving_mean(away.astype(float), round(2 * MARGIN_S / step / width) + 1) > 0.5 / len(short)
    return ~np.append(np.repeat(beside, width), np.full(len(x) - len(beside) * width, beside[-1]))


def _over(t: Floats, x: Floats, steady: Bools, step: float) -> float:
    """Give the time at which the transient after the breakaway is over, where there clearly is one.

    The truncation that makes the squared standard error of the mean of what is left smallest (marginal standard error
    rule, K. P. White, Simulation 69 (1997) 323, from memory).
    """
    width = max(1, round(OVER_BLOCK_S / step))
    kept = np.flatnonzero(steady)
    if len(kept) < 10 * width:
        return float(t[0])
    times, means = block_means(t[kept], width), block_means(x[kept], width)
    n = len(means)
    most = min(n // 2, int(np.searchsorted(times, times[0] + OVER_MOST_S)))
    left = n - np.arange(most + 1)
    total, squares = (np.cumsum(v[::-1])[::-1][: most + 1] for v in (means - means[-1], (means - means[-1]) ** 2))
    errors = (squares - total**2 / left) / left**2
    best = int(np.argmin(errors))
    return float(times[best]) if errors[best] < OVER_GAIN * errors[0] else float(t[0])


def _climb(x: Floats) -> float:
    """Give the relative change over the stretch if it is all one way, and 0 if it is not."""
    if len(x) < CLIMB_PARTS:
        return 0.0
    parts = block_means(x, len(x) // CLIMB_PARTS)[:CLIMB_PARTS]
    along = np.arange(CLIMB_PARTS) - (CLIMB_PARTS - 1) / 2
    slope = float(along @ parts) / float(along @ along)
    rest = parts - parts.mean() - slope * along
    change = slope * (CLIMB_PARTS - 1)
    one_way = float(np.sqrt(rest @ rest / CLIMB_PARTS)) < CLIMB_REST * abs(change)
    return change / abs(float(x.mean())) if one_way else 0.0


def _level_around(t: Floats, x: Floats) -> Floats:
    """Median over the time around, computed on a coarse grid and interpolated."""
    count = max(1, min(len(t), int((t[-1] - t[0]) / (AROUND_S / 2))))
    at = np.linspace(t[0], t[-1], count + 1)
    lows, highs = np.searchsorted(t, at - AROUND_S), np.searchsorted(t, at + AROUND_S, "right")
    filled = highs > lows  # not so in a gap
    levels = [quantile(x[low:high], 0.5) for low, high in zip(lows[filled], highs[filled], strict=True)]
    return np.asarray(np.interp(t, at[filled], levels))
