"""A picture as plain shapes: drawn once, written as SVG for the page and by the PDF renderer alike.

Conventions: lengths in points (1/72 in), origin top left, y downwards. Colours are ``#rrggbb``; a shape's meaning
never rests on its colour alone.

Offers ``trace_drawing`` (torque against time with pulls, breakaways, steady stretches and the limit), ``beside`` and
``to_svg``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from html import escape
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from logger.edges.units import minus

Floats = NDArray[np.float64]

INK, MUTED, RULE, ACCENT = "#1b2124", "#50585d", "#d5d1c7", "#0b625d"
BAND, LIMIT, STEADY, WRONG = "#d3e1f3", "#1450a5", "#0b625d", "#a11d2a"

TICKS_EVERY = 40.0
"""Points between two numbers of the axis of time at least: a narrow drawing has fewer."""

GAP_S, GAP_STEPS = 0.5, 5.0
"""A longer time between two samples, and than so many usual ones, is a break: no line is drawn across it."""

POINTS_PER_COLUMN = 2
"""Lowest and highest sample of every column one point wide: nothing that could be seen is lost."""


@dataclass(frozen=True, slots=True)
class Polyline:
    """A polyline; ``dashed`` for limits and boundaries."""

    points: tuple[tuple[float, float], ...]
    colour: str = INK
    width: float = 0.8
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Box:
    """A filled rectangle."""

    x: float
    y: float
    width: float
    height: float
    colour: str


@dataclass(frozen=True, slots=True)
class Ring:
    """An open ring round a point: where the pack broke away (with a B beside it), or began to slip without a peak."""

    x: float
    y: float
    colour: str = INK


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; ``x`` is its start, middle or end."""

    x: float
    y: float
    text: str
    size: float = 7.5
    colour: str = MUTED
    anchor: Literal["start", "middle", "end"] = "start"
    bold: bool = False


Shape = Polyline | Box | Ring | Text


@dataclass(frozen=True, slots=True)
class Drawing:
    """Shapes, back to front, in an area; ``about`` describes it to a screen reader."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    about: str


@dataclass(frozen=True, slots=True)
class DrawnPull:
    """What is drawn of one pull, in seconds and in the unit of the axis (signed)."""

    number: int
    start_s: float
    end_s: float
    valid: bool
    breakaway: tuple[float, float] | None = None
    distinct: bool = True
    rotating: tuple[float, float, float] | None = None


def decimate(time_s: Floats, value: Floats, columns: int) -> tuple[Floats, Floats]:
    """Keep the lowest and highest sample of each of ``columns`` equal stretches of time, in their order.

    Returns:
        time_s, value: shape (<= 2 columns,); NaN values are excluded.
    """
    kept = np.isfinite(value)
    time_s, value = time_s[kept], value[kept]
    if len(value) <= POINTS_PER_COLUMN * columns:
        return time_s, value
    edges = np.searchsorted(time_s, np.linspace(time_s[0], time_s[-1], columns + 1)[:-1])
    starts = np.unique(edges)
    bounds = [*starts[1:], len(value)]
    keep: list[int] = []
    for start, stop in zip(starts, bounds, strict=True):
        part = value[start:stop]
        keep += sorted({int(start + part.argmin()), int(start + part.argmax())})
    return time_s[keep], value[keep]


def breaks(time_s: Floats, drawn_s: Floats) -> NDArray[np.int_]:
    """Give where a line through ``drawn_s``, a part of the samples' times, is broken: nothing was sent there.

    >>> breaks(np.array([0.0, 0.1, 0.2, 3.0, 3.1]), np.array([0.0, 0.2, 3.0, 3.1])).tolist()
    [2]
    """
    steps = np.diff(time_s)
    if not len(steps):
        return np.empty(0, np.int_)
    wide = np.flatnonzero(steps > max(GAP_S, GAP_STEPS * float(np.median(steps))))
    return np.searchsorted(drawn_s, time_s[wide], side="right")


def ticks(low: float, high: float, about: int) -> list[float]:
    """Give round numbers between two values, about as many as wanted.

    >>> ticks(0.0, 52.0, 5)
    [0.0, 10.0, 20.0, 30.0, 40.0, 50.0]
    """
    span = high - low
    if not (math.isfinite(span) and span > 0):
        return [low]
    raw = span / max(1, about)
    power = 10.0 ** math.floor(math.log10(raw))
    step = min((s * power for s in (1, 2, 2.5, 5, 10)), key=lambda s: abs(math.log(s / raw)))
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return [round(i * step, 12) for i in range(first, last + 1)]


def trace_drawing(
    time_s: Floats,
    torque: Floats,
    unit: str,
    *,
    pulls: Sequence[DrawnPull] = (),
    limit: tuple[float | None, float | None] = (None, None),
    size: tuple[float, float] = (523.0, 178.0),
    axis: str = "torque at the axle",
    also: Sequence[float] = (),
) -> Drawing:
    """Draw torque against time.

    Args:
        time_s, torque: shape (n,); The trace, in the unit of the axis, signed (clockwise positive).
        unit: Of the axis.
        pulls: Pulls with what was read from them.
        limit: (lower, upper); Magnitudes in the unit of the axis; drawn on the side(s) to which pulls go.
        size: (width, height); In points.
        axis: What the axis shows.
        also: Torques that the axis holds in any case, so that two drawings have one scale.
    """
    width, height = size
    left, right, top, bottom = 38.0, 6.0, 15.0, 15.0
    plot = _Plot(left, top, width - left - right, height - top - bottom, *_range(time_s, torque, pulls, limit, also))
    sides = _sides(torque, pulls)
    shapes: list[Shape] = [*_band(plot, limit, sides), *_grid(plot, unit, axis)]
    for pull in pulls:
        shapes += _span(plot, pull, at_top=sides == (-1,))
    t, y = decimate(time_s, torque, max(2, int(plot.width)))
    for part in np.split(np.arange(len(t)), breaks(time_s, t)):
        if len(part):
            shapes.append(Polyline(tuple((plot.x(t[i]), plot.y(y[i])) for i in part), INK, 0.6))
    for pull in pulls:
        shapes += _read(plot, pull)
    shapes += _limit_lines(plot, limit, sides, unit)
    about = f"Torque against time, {len(pulls)} pull{'s' * (len(pulls) != 1)} marked"
    return Drawing(width, height, tuple(shapes), about)


@dataclass(frozen=True, slots=True)
class _Plot:
    left: float
    top: float
    width: float
    height: float
    t_low: float
    t_high: float
    low: float
    high: float

    def x(self, time_s: float) -> float:
        return round(self.left + self.width * (time_s - self.t_low) / (self.t_high - self.t_low), 2)

    def y(self, value: float) -> float:
        clipped = min(max(value, self.low), self.high)
        return round(self.top + self.height * (self.high - clipped) / (self.high - self.low), 2)


def _range(
    time_s: Floats,
    torque: Floats,
    pulls: Sequence[DrawnPull],
    limit: tuple[float | None, float | None],
    also: Sequence[float],
) -> tuple[float, float, float, float]:
    finite = torque[np.isfinite(torque)]
    low, high = (float(finite.min()), float(finite.max())) if len(finite) else (0.0, 1.0)
    for side in _sides(torque, pulls):
        for bound in limit:
            if bound is not None:
                low, high = min(low, side * bound), max(high, side * bound)
    low, high = min(low, 0.0, *also), max(high, 0.0, *also)
    if high - low <= 0:
        high = low + 1.0
    t_low, t_high = (float(time_s[0]), float(time_s[-1])) if len(time_s) else (0.0, 1.0)
    pad = 0.08 * (high - low)
    return t_low, t_high if t_high > t_low else t_low + 1.0, low - pad, high + pad


def _sides(torque: Floats, pulls: Sequence[DrawnPull]) -> tuple[int, ...]:
    """Give the signs to which pulls go; without pulls that of the larger excursion."""
    signs = {1 if p.breakaway[1] >= 0 else -1 for p in pulls if p.breakaway} | {
        1 if p.rotating[2] >= 0 else -1 for p in pulls if p.rotating
    }
    if signs:
        return tuple(sorted(signs))
    finite = torque[np.isfinite(torque)]
    return (-1,) if len(finite) and -finite.min() > finite.max() else (1,)


def _band(plot: _Plot, limit: tuple[float | None, float | None], sides: tuple[int, ...]) -> list[Shape]:
    """Shade where a value conforms."""
    lower, upper = limit
    if lower is None and upper is None:
        return []
    shapes: list[Shape] = []
    for side in sides:
        near = side * (lower if lower is not None else 0.0)
        far = side * upper if upper is not None else (plot.high if side > 0 else plot.low)
        a, b = plot.y(max(near, far)), plot.y(min(near, far))
        shapes.append(Box(plot.left, a, plot.width, round(b - a, 2), BAND))
    return shapes


def _limit_lines(
    plot: _Plot, limit: tuple[float | None, float | None], sides: tuple[int, ...], unit: str
) -> list[Shape]:
    """Draw the limit, and say in the line above the plot, clear of the trace, what it is."""
    bounds = [(bound, word) for bound, word in zip(limit, ("at least", "at most"), strict=True) if bound is not None]
    shapes: list[Shape] = []
    for side in sides:
        for bound, _ in bounds:
            y = plot.y(side * bound)
            shapes.append(Polyline(((plot.left, y), (plot.left + plot.width, y)), LIMIT, 0.8, dashed=True))
    if bounds:
        said = ", ".join(f"{word} {bound:.4g} {unit}" for bound, word in bounds)
        shapes.append(Text(plot.left + plot.width, plot.top - 6, f"dashed: {said}", 7.5, LIMIT, "end"))
    return shapes


def _grid(plot: _Plot, unit: str, axis: str) -> list[Shape]:
    shapes: list[Shape] = []
    bottom = plot.top + plot.height
    for value in ticks(plot.low, plot.high, 5):
        y = plot.y(value)
        shapes.append(Polyline(((plot.left, y), (plot.left + plot.width, y)), RULE, 0.8 if value == 0 else 0.4))
        shapes.append(Text(plot.left - 4, y + 2.5, minus(f"{value:g}"), anchor="end"))
    for value in ticks(plot.t_low, plot.t_high, min(8, int(plot.width / TICKS_EVERY))):
        x = plot.x(value)
        shapes.append(Polyline(((x, bottom), (x, bottom + 3)), MUTED, 0.5))
        shapes.append(Text(x, bottom + 11, f"{value:g}", anchor="middle"))
    shapes.append(Polyline(((plot.left, bottom), (plot.left + plot.width, bottom)), MUTED, 0.5))
    shapes.append(Text(plot.left, plot.top - 6, f"{axis}, {unit}", 7.5, INK, bold=True))
    shapes.append(Text(plot.left - 8, bottom + 11, "time, s", 7.5, INK, "end", bold=True))
    return shapes


def _span(plot: _Plot, pull: DrawnPull, *, at_top: bool) -> list[Shape]:
    """Draw a bar along the edge that the pulls do not reach, with the pull's number, crossed where it is not used."""
    a, b = plot.x(pull.start_s), plot.x(pull.end_s)
    bottom = plot.top + plot.height
    y, base = (plot.top - 1.2, plot.top + 9) if at_top else (bottom + 1.2, bottom - 3)
    label = f"{pull.number}" if pull.valid else f"{pull.number} ✗"
    colour = ACCENT if pull.valid else WRONG
    bar = Polyline(((a, y), (max(b, a + 1), y)), colour, 2.2)
    return [bar, Text((a + b) / 2, base, label, 7, colour, "middle", bold=True)]


def _read(plot: _Plot, pull: DrawnPull) -> list[Shape]:
    shapes: list[Shape] = []
    if pull.rotating is not None:
        start, end, level = pull.rotating
        y = plot.y(level)
        shapes.append(Polyline(((plot.x(start), y), (plot.x(end), y)), STEADY, 2.0))
    if pull.breakaway is not None:
        time_s, level = pull.breakaway
        x, y = plot.x(time_s), plot.y(level)
        shapes.append(Ring(x, y))
        if pull.distinct:
            shapes.append(Text(x, y - 5 if level >= 0 else y + 10, "B", 7.5, INK, "middle", bold=True))
    return shapes


def beside(left: Drawing, right: Drawing, gap: float, about: str) -> Drawing:
    """Put one drawing beside another, with a gap between."""
    by = left.width + gap

    def moved(shape: Shape) -> Shape:
        if isinstance(shape, Polyline):
            return replace(shape, points=tuple((round(x + by, 2), y) for x, y in shape.points))
        return replace(shape, x=round(shape.x + by, 2))

    shapes = (*left.shapes, *(moved(shape) for shape in right.shapes))
    return Drawing(by + right.width, max(left.height, right.height), shapes, about)


def to_svg(drawing: Drawing) -> str:
    """Write a drawing as one SVG element: no script, no outside reference."""
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {drawing.width:g} {drawing.height:g}" '
        f'role="img" aria-label="{escape(drawing.about)}">'
    ]
    parts += [_svg(shape) for shape in drawing.shapes]
    return "".join([*parts, "</svg>"])


def _svg(shape: Shape) -> str:
    match shape:
        case Polyline():
            points = " ".join(f"{x:g},{y:g}" for x, y in shape.points)
            dash = ' stroke-dasharray="4 2.5"' if shape.dashed else ""
            return (
                f'<polyline points="{points}" fill="none" stroke="{shape.colour}" stroke-width="{shape.width:g}" '
                f'stroke-linejoin="round"{dash}/>'
            )
        case Box():
            return (
                f'<rect x="{shape.x:g}" y="{shape.y:g}" width="{shape.width:g}" height="{shape.height:g}" '
                f'fill="{shape.colour}"/>'
            )
        case Ring():
            return f'<circle cx="{shape.x:g}" cy="{shape.y:g}" r="3" fill="none" stroke="{shape.colour}"/>'
        case Text():
            weight = ' font-weight="600"' if shape.bold else ""
            return (
                f'<text x="{shape.x:g}" y="{shape.y:g}" font-size="{shape.size:g}" fill="{shape.colour}" '
                f'text-anchor="{shape.anchor}"{weight}>{escape(shape.text)}</text>'
            )
