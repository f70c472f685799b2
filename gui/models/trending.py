"""A quantity against a number: the line, what it expects, and which value of the number gives a wanted torque."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.compare.runs import LEFT_OUT, Quantity
from analysis.compare.tags import tag_words
from gui.models.sheets import (
    QuantityScale,
    Sheet,
    Written,
    left_out_sheet,
    notes_sheet,
    p_words,
    sheets,
    significant,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from analysis.compare.runs import Run
    from analysis.compare.series import Points
    from analysis.compare.trend import FittedLine, Inverse, Prediction
    from gui.models.comparing import Common


STEPS = 60  # points along line and band
MOST_BEYOND = 0.5  # what is asked outside the data is drawn as far as half their range
MARGIN = 0.05  # of the range beside the outermost fills


@dataclass(frozen=True, slots=True)
class Trend:
    """Points, the straight line through them, and what was asked of it; SI.

    Attributes
    ----------
    points : Points
        The fills.
    line : FittedLine
        Through them.
    slope : tuple of float
        95 % interval of the slope.
    fills, along : tuple of Prediction
        What the line says at every fill, and in even steps over all that is drawn.
    wanted : Inverse or None
        Which x gives what is wanted.
    expected : Prediction or None
        What to expect where it was asked.
    simulated : bool
        Whether any recording is.
    """

    points: Points
    line: FittedLine
    slope: tuple[float, float]
    fills: tuple[Prediction, ...]
    along: tuple[Prediction, ...]
    wanted: Inverse | None
    expected: Prediction | None
    simulated: bool

    @property
    def against(self) -> str:
        """What the fills are drawn against, in words."""
        return tag_words(self.points.tag)


def follow(
    runs: Sequence[Run], common: Common, tag: str, wanted: float | None = None, at: float | None = None
) -> Trend:
    """Fit a line, and ask it everything that is to be shown: the window only draws.

    Raises
    ------
    InputError
        Too few points, words for numbers, or recordings that must not stand together.
    """
    from analysis.compare.series import points_against
    from analysis.compare.trend import fit_line

    points = points_against(runs, Quantity(common.quantity), tag, unit=common.unit)
    line = fit_line(points.x, points.y)
    inverse = None if wanted is None else line.inverse(wanted)
    asked = [at, *([inverse.x, inverse.low, inverse.high] if inverse is not None else [])]
    first, last = _drawn(points.x, [x for x in asked if x is not None])
    return Trend(
        points,
        line,
        (line.slope_low, line.slope_high),
        tuple(line.predict(x) for x in points.x),
        tuple(line.predict(first + (last - first) * step / STEPS) for step in range(STEPS + 1)),
        inverse,
        None if at is None else line.predict(at),
        any(run.simulated for run in runs),
    )


def _drawn(x: Sequence[float], asked: Sequence[float]) -> tuple[float, float]:
    """Give the range that is drawn: all fills, and what was asked where it is not far away."""
    least, greatest = min(x), max(x)
    wide = greatest - least
    near = [at for at in asked if least - MOST_BEYOND * wide <= at <= greatest + MOST_BEYOND * wide]
    return min(least, *near, least) - MARGIN * wide, max(greatest, *near, greatest) + MARGIN * wide


def headline(trend: Trend, scale: QuantityScale) -> str:
    """Give the answer: what was asked for first, the trend itself otherwise."""
    from analysis.compare.trend import INVERSE_LEAVES_OUT

    tag, number = trend.against, _plain(scale)
    lines = []
    if trend.wanted is not None:
        wanted = trend.wanted
        if math.isfinite(wanted.low):
            text = f"For {scale.asked(wanted.y)}: {tag} {number(wanted.x)} "
            lines.append(f"{text}(95 %: {number(wanted.low)} to {number(wanted.high)}).{_beyond(wanted.extrapolated)}")
            lines.append(f"The interval {INVERSE_LEAVES_OUT}.")
        else:
            lines.append(f"For {scale.asked(wanted.y)}: cannot be determined, {wanted.text}.")
    if trend.expected is not None:
        at = trend.expected
        text = f"At {tag} {number(at.x)}: expect {scale.words(at.y)} "
        lines.append(
            f"{text}(the next single fill, 95 %: {scale.span(at.next_low, at.next_high)}).{_beyond(at.extrapolated)}"
        )
    return "\n".join(lines) or slope_words(trend, scale)


def _beyond(outside: object) -> str:
    return " Outside the range that was tested." if outside else ""


def _plain(scale: QuantityScale) -> Callable[[float], str]:
    return lambda value: significant(scale.display, value, 3)


def slope_words(trend: Trend, scale: QuantityScale) -> str:
    """Give the slope in one sentence: its interval first, p second."""
    low, high = trend.slope
    shown = "a trend is shown" if not low <= 0 <= high else "no trend is shown"
    per = f"Per 1 of {trend.against}: {scale.rate(trend.line.slope)} {scale.unit}".strip()
    return f"{per} (95 %: {scale.rate(low)} to {scale.rate(high)}), {shown}."


def warnings_of(trend: Trend) -> list[str]:
    """Give what may explain the trend besides the number."""
    return [*(line for line in trend.points.remarks if LEFT_OUT not in line), *trend.points.warnings]


def trend_sheets(trend: Trend, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give everything beneath the picture: the line's figures, its fills, what is excluded."""
    notes = [f"Not recorded, so not checked: {line}" for line in trend.points.unknown]
    return sheets(
        _figures(trend, scale),
        _fills(trend, scale),
        notes_sheet(notes),
        left_out_sheet(trend.points.remarks, (), files),
    )


def _figures(trend: Trend, scale: QuantityScale) -> Sheet:
    line, number = trend.line, _plain(scale)
    rows = [
        (
            f"Change per 1 of {trend.against}",
            f"{scale.rate(line.slope)} {scale.unit}".strip(),
            f"{scale.rate(trend.slope[0])} to {scale.rate(trend.slope[1])}",
            f"p {p_words(scale.display, line.p)}, {line.n} fills, least squares",
        ),
        ("Scatter about the line", scale.words(line.s), "–", f"R² {scale.display.number(line.r2, 3)}"),
    ]
    if trend.wanted is not None:
        wanted = trend.wanted
        bounded = math.isfinite(wanted.low)
        span = f"{number(wanted.low)} to {number(wanted.high)}" if bounded else "unbounded"
        x = number(wanted.x) if bounded else "–"
        rows.append((f"{trend.against} for {scale.asked(wanted.y)}", x, span, wanted.text or "one further fill"))
    if trend.expected is not None:
        at = trend.expected
        where = f"At {trend.against} {number(at.x)}"
        rows.append((f"{where}, the line", scale.words(at.y), scale.span(at.line_low, at.line_high), "the mean there"))
        rows.append((f"{where}, next fill", scale.words(at.y), scale.span(at.next_low, at.next_high), "a single one"))
    return Sheet("Figures", ("Figure", "Value", "95 % interval", "From"), tuple(rows), frozenset({0, 3}))


def _fills(trend: Trend, scale: QuantityScale) -> Sheet:
    number = _plain(scale)
    rows = [
        (unit.name, number(at.x), scale.number(y), scale.signed(y - at.y), str(unit.runs))
        for unit, at, y in zip(trend.points.units, trend.fills, trend.points.y, strict=True)
    ]
    return Sheet("Fills", ("Fill", trend.against, scale.title, "Off the line", "Recordings"), tuple(rows))


def written(trend: Trend, scale: QuantityScale) -> Written:
    """Give a trend as it is written: fills as a table, and JSON as the command prints it."""
    points, line = trend.points, trend.line
    plain: dict[str, object] = {
        "schema": "heldwheel trend 1",
        "quantity": scale.quantity.value,
        "unit": scale.quantity.unit,
        "simulated": trend.simulated,
        "against": points.tag,
        "points": [list(pair) for pair in zip(points.x, points.y, strict=True)],
        "slope": [line.slope, *trend.slope],
        "intercept": line.intercept,
        "s": line.s,
        "p": line.p,
    }
    if trend.expected is not None:
        at = trend.expected
        plain["prediction"] = {
            "x": at.x,
            "y": at.y,
            "line": [at.line_low, at.line_high],
            "next": [at.next_low, at.next_high],
        }
    if trend.wanted is not None:
        wanted = trend.wanted
        bounded = math.isfinite(wanted.low)
        plain["inverse"] = {
            "y": wanted.y,
            "x": wanted.x if bounded else None,
            "interval": [wanted.low, wanted.high] if bounded else None,
        }
    rows: list[tuple[str | float | None, ...]] = [
        ("fill", points.tag, scale.quantity.value, "line", "low_95", "high_95")
    ]
    for unit, at, y in zip(points.units, trend.fills, points.y, strict=True):
        rows.append((unit.name, at.x, y, at.y, at.next_low, at.next_high))
    return Written(tuple(rows), plain, trend.simulated)
