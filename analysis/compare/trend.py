"""Torque against a number: shim thickness, distance, cycles, temperature; and whether a pack has run in.

Conventions: x in the unit of the tag it comes from, y in N·m, one value per unit; intervals are 95 %.

Offers ``fit_line`` (with ``predict`` and ``inverse`` on its result), ``run_in``, ``run_in_along`` and
``settled_since``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

Floats = NDArray[np.float64]

SETTLED_PER_TEN = 0.01
"""A pack has settled when it changes by less than this fraction of its level in ten cycles."""

SETTLED_LEVEL = 0.997
"""Coverage of the slope's interval by which that is judged. Looked at after every one of sixty cycles, a pack that goes
on changing by just so much is called settled at any time in 5 % of runs at most (``make coverage``): with 95 % it would
be in a third of them."""

SETTLED_LEAST = 10
"""Cycles over which that is judged at least."""

SETTLED_SHARE = 0.5
"""The interval over them is to be no wider than this share of what counts as settled: so many cycles are taken as the
scatter needs, and a pack that has settled is found to have in 95 % of runs of so many."""


FEW_FILLS, WIDE = 5, 0.1
"""From fewer fills than these, whose slope is known no better than to a third, an inverse interval covers less."""

INVERSE_LEAVES_OUT = "holds the scatter from fill to fill; what all fills share (transducer, lever, zero) is not in it"
"""What to say beside the interval of an inverse prediction."""


def _t(df: float, level: float = 0.95) -> float:
    from scipy.special import stdtrit

    return float(stdtrit(df, (1 + level) / 2))


@dataclass(frozen=True, slots=True)
class Prediction:
    """What the line says at one x: its value, the interval of the line, and the interval of the next single unit."""

    x: float
    y: float
    u_line: float
    line_low: float
    line_high: float
    next_low: float
    next_high: float
    extrapolated: bool


@dataclass(frozen=True, slots=True)
class Inverse:
    """Which x gives a wanted y; ``low`` and ``high`` are infinite where the data do not bound it."""

    y: float
    x: float
    low: float
    high: float
    extrapolated: bool
    text: str


@dataclass(frozen=True, slots=True)
class FittedLine:
    """A straight line by least squares, and what is known of it."""

    # intercept, u_intercept, slope, u_slope: coefficients and standard uncertainties
    intercept: float
    u_intercept: float
    slope: float
    u_slope: float
    s: float  # residual standard deviation
    r2: float  # coefficient of determination
    n: int  # points; n - 2 degrees of freedom
    p: float  # two-sided p value of "no slope"
    correlation: float  # of intercept and slope
    # x_mean, x_ss, x_min, x_max: mean, sum of squared deviations and range of x
    x_mean: float
    x_ss: float
    x_min: float
    x_max: float

    @property
    def df(self) -> int:
        """Degrees of freedom."""
        return self.n - 2

    @property
    def slope_low(self) -> float:
        """Lower end of the slope's interval."""
        return self.slope - _t(self.df) * self.u_slope

    @property
    def slope_high(self) -> float:
        """Upper end of the slope's interval."""
        return self.slope + _t(self.df) * self.u_slope

    def predict(self, x: float) -> Prediction:
        """Give the line at x with the interval of the line and of one further unit."""
        y = self.intercept + self.slope * x
        u = self.s * math.sqrt(1 / self.n + (x - self.x_mean) ** 2 / self.x_ss)
        t = _t(self.df)
        wide = t * math.hypot(self.s, u)
        return Prediction(x, y, u, y - t * u, y + t * u, y - wide, y + wide, not self.x_min <= x <= self.x_max)

    def inverse(self, y: float) -> Inverse:
        """Give the x at which the next single unit is expected to show y ("which shim for 60 N·m").

        The interval holds every x whose 95 % prediction interval contains y (E. C. Fieller, from memory). Where the
        slope cannot be told from zero it is unbounded, and the text says so: 95 % is the coverage of all, bounded or
        not. Of three or four fills that scatter widely those that happen to be bounded cover less (78 and 90 %), which
        the text says. ``INVERSE_LEAVES_OUT`` belongs beside every one.
        """
        if self.slope == 0:
            return Inverse(y, math.nan, -math.inf, math.inf, True, "there is no slope: no x gives this value")
        x = (y - self.intercept) / self.slope
        t = _t(self.df)
        g = (t * self.u_slope / self.slope) ** 2
        if g >= 1:
            text = (
                "the slope cannot be distinguished from zero: the data do not bound it; test more units, further apart"
            )
            return Inverse(y, x, -math.inf, math.inf, True, text)
        d = x - self.x_mean
        root = (t * self.s / abs(self.slope)) * math.sqrt((1 - g) * (1 + 1 / self.n) + d * d / self.x_ss)
        low, high = (self.x_mean + (d - root) / (1 - g), self.x_mean + (d + root) / (1 - g))
        outside = not self.x_min <= x <= self.x_max
        said = ["outside the range tested: an extrapolation"] if outside else []
        if self.n < FEW_FILLS and g > WIDE:
            said.append(f"from {self.n} fills so far off their line this interval covers less than 95 %: test more")
        text = "; ".join(said)
        return Inverse(y, x, low, high, outside, text)


def one_of(tag: str) -> str:
    """Name one of what a tag counts.

    >>> one_of("cycles"), one_of("distance_km")
    ('cycle', 'distance_km')
    """
    return tag[:-1] if tag.endswith("s") and not tag.endswith("ss") else tag


def fit_line(x: ArrayLike, y: ArrayLike) -> FittedLine:
    """Fit a straight line by least squares.

    Raises:
        InputError: Fewer than three points, values that are not finite, or all at one x.
    """
    xs, ys = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    if xs.shape != ys.shape or xs.ndim != 1 or not (np.isfinite(xs).all() and np.isfinite(ys).all()):
        raise InputError("a trend needs one finite value of each for every unit")
    if len(xs) < 3:
        raise InputError(f"{len(xs)} units are too few for a trend with an interval: three or more")
    x_mean, y_mean = float(xs.mean()), float(ys.mean())
    dx, dy = xs - x_mean, ys - y_mean
    x_ss = float(dx @ dx)
    if x_ss <= 1e-18 * max(1.0, x_mean * x_mean) * len(xs):
        raise InputError("all units have the same x: there is no trend to see")
    slope = float(dx @ dy) / x_ss
    residual = dy - slope * dx
    df = len(xs) - 2
    s = math.sqrt(float(residual @ residual) / df)
    total = float(dy @ dy)
    u_slope = s / math.sqrt(x_ss)
    u_intercept = s * math.sqrt(1 / len(xs) + x_mean**2 / x_ss)
    return FittedLine(
        y_mean - slope * x_mean,
        u_intercept,
        slope,
        u_slope,
        s,
        1 - float(residual @ residual) / total if total > 0 else 1.0,
        len(xs),
        _p_of(slope, u_slope, df),
        -x_mean * s * s / x_ss / (u_slope * u_intercept) if s > 0 else math.nan,
        x_mean,
        x_ss,
        float(xs.min()),
        float(xs.max()),
    )


def _p_of(slope: float, u: float, df: int) -> float:
    from scipy.special import stdtr

    if u == 0:
        return 1.0 if slope == 0 else 0.0
    return float(2 * stdtr(df, -abs(slope / u)))


class RunInState(StrEnum):
    """Whether a pack has run in."""

    SETTLED = "settled"
    MOVING = "still moving"
    UNKNOWN = "cannot be shown yet"


@dataclass(frozen=True, slots=True)
class Decay:
    """``final + drop·exp(-(x - x_first)/scale)``."""

    final: float
    drop: float
    scale: float


@dataclass(frozen=True, slots=True)
class RunIn:
    """A run-in trend."""

    # by the rule: the 99.7 % interval of the slope over the last cycles lies wholly within ±1 % of the level per ten
    # cycles (settled), wholly outside (still moving), or neither, or these are too few for their scatter
    state: RunInState
    level: float  # mean over the last cycles
    # percent_per_ten, low, high: slope over the last cycles in percent of the level per ten cycles, with its interval
    percent_per_ten: float
    low: float
    high: float
    over: int  # cycles over which it is judged
    needed: int  # cycles that this scatter needs to be judged by, about; 0 where there are enough
    decay: Decay | None  # the curve through all cycles; None where they do not determine it
    text: str  # the rule with the figures put in


def run_in(cycles: ArrayLike, values: ArrayLike) -> RunIn:
    """Judge whether a pack has run in, from one value per cycle (or per amount of accumulated slip).

    Raises:
        InputError: Fewer than four cycles, or a level that is not positive.
    """
    x, y = _in_order(cycles, values)
    return replace(_judged(x, y), decay=_decay(x, y))


def _in_order(cycles: ArrayLike, values: ArrayLike) -> tuple[Floats, Floats]:
    x, y = np.asarray(cycles, dtype=float), np.asarray(values, dtype=float)
    order = np.argsort(x, kind="stable")
    return x[order], y[order]


def _enough(x: Floats, y: Floats) -> tuple[int, int]:
    """Give how many of the last cycles their scatter needs, and how many are still missing for it.

    The scatter is that of differences between neighbours, which a slow change hardly enters. The slope's interval over
    n cycles is t s/√Σ(x - x̄)² to both sides.
    """
    n = len(x)
    scatter = float(np.sqrt(np.mean(np.diff(y) ** 2) / 2)) / _level(y[-SETTLED_LEAST:])
    wanted = SETTLED_SHARE * SETTLED_PER_TEN
    for count in range(min(SETTLED_LEAST, n), n + 1):
        last = x[n - count :]
        spread = float(np.sqrt(((last - last.mean()) ** 2).sum()))
        if count >= SETTLED_LEAST and 10 * _t(count - 2, SETTLED_LEVEL) * scatter <= wanted * spread:
            return count, 0
    step = (x[-1] - x[0]) / (n - 1)
    count = n
    while step > 0 and 10 * _t(count - 2, SETTLED_LEVEL) * scatter > wanted * step * (count**3 / 12) ** 0.5:
        count += 1 + count // 50
    return n, max(count, SETTLED_LEAST)


def _level(y: Floats) -> float:
    level = float(y.mean())
    if level <= 0:
        raise InputError("run-in is judged as a share of the level, which must be positive")
    return level


def _judged(x: Floats, y: Floats) -> RunIn:
    """Judge by the last cycles, without the curve through all."""
    if len(x) < 4:
        raise InputError(f"{len(x)} cycles are too few to judge run-in: four or more")
    count, needed = _enough(x, y)
    line = fit_line(x[-count:], y[-count:])
    level = _level(y[-count:])
    half = _t(line.df, SETTLED_LEVEL) * line.u_slope
    middle, low, high = (1000 * v / level for v in (line.slope, line.slope - half, line.slope + half))
    bound = 100 * SETTLED_PER_TEN
    if low > bound or high < -bound:
        state = RunInState.MOVING
    elif not needed and -bound <= low and high <= bound:
        state = RunInState.SETTLED
    else:
        state = RunInState.UNKNOWN
    level_words = f"{100 * SETTLED_LEVEL:.3g} %"
    text = (
        f"{middle:+.2f} % per ten cycles over the last {line.n} ({level_words}: {low:+.2f} to {high:+.2f}), "
        f"rule: settled when wholly within ±{bound:g} %"
    )
    if needed and state is RunInState.UNKNOWN:
        text += f"; at this scatter about {needed} cycles are needed"
    return RunIn(state, level, middle, low, high, line.n, needed, None, text)


def run_in_along(cycles: ArrayLike, values: ArrayLike) -> list[RunIn | None]:
    """Judge run-in after every cycle, in order of cycles, by what was known then; None while there are too few.

    The curve is not fitted again each time: ``decay`` is None.
    """
    x, y = _in_order(cycles, values)
    found: list[RunIn | None] = []
    for end in range(1, len(x) + 1):
        try:
            found.append(_judged(x[:end], y[:end]))
        except InputError:
            found.append(None)
    return found


def settled_since(along: Sequence[RunIn | None]) -> int | None:
    """Give the place in ``run_in_along`` from which every judgement is "settled"; None where the last one is not."""
    first = len(along)
    while first and (judged := along[first - 1]) is not None and judged.state is RunInState.SETTLED:
        first -= 1
    return first if first < len(along) else None


def _decay(x: Floats, y: Floats) -> Decay | None:
    """Fit the curve: for each scale on a log grid the rest is linear least squares."""
    span = float(x[-1] - x[0])
    flat = float(np.sum((y - y.mean()) ** 2))
    if len(x) < 6:
        return None
    best, least = None, 0.7 * flat  # a constant that explains it nearly as well leaves the curve undetermined
    for scale in np.geomspace(span / 50, span, 60):
        design = np.column_stack([np.ones_like(x), np.exp(-(x - x[0]) / scale)])
        coefficients, *_ = np.linalg.lstsq(design, y, rcond=None)
        squares = float(np.sum((y - design @ coefficients) ** 2))
        if squares < least:
            best, least = Decay(float(coefficients[0]), float(coefficients[1]), float(scale)), squares
    if best is None or best.scale >= span * 0.999:
        return None  # its end is not in sight
    return best
