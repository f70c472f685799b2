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
from logger.edges.lengths import INCH_MM

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.runs import Run
    from analysis.compare.series import Points
    from analysis.compare.trend import FittedLine, Inverse, Prediction
    from gui.models.comparing import Common
    from gui.models.display import Display


STEPS = 60  # points along line and band
MOST_BEYOND = 0.5  # what is asked outside the data is drawn as far as half their range
MARGIN = 0.05  # of the range beside the outermost fills


@dataclass(frozen=True, slots=True)
class Along:
    """A number that fills are drawn against: its name, its unit on screen, and what one of its own is in that."""

    name: str
    unit: str
    factor: float
    display: Display

    @property
    def title(self) -> str:
        """Name and unit."""
        return ", ".join(part for part in (self.name, self.unit) if part)

    @property
    def one(self) -> str:
        """Say what a slope is per."""
        return f"1 {self.unit} of {self.name}" if self.unit else f"1 of {self.name}"

    def number(self, value: float) -> str:
        """Give a value without its unit."""
        return significant(self.display, value * self.factor, 3)

    def words(self, value: float) -> str:
        """Name a value: ``shim 0.267 mm``."""
        return f"{self.name} {self.number(value)} {self.unit}".strip()

    def span(self, low: float, high: float) -> str:
        """Give an interval with the unit."""
        return f"{self.number(low)} to {self.number(high)} {self.unit}".strip()


def along(tag: str, display: Display) -> Along:
    """Give a tag that is a number as it stands on screen; what is in millimetres follows the unit of lengths."""
    name, _, unit = tag_words(tag).partition(", ")
    inches = unit == "mm" and display.lengths == "in"
    return Along(name, "in" if inches else unit, 1 / INCH_MM if inches else 1.0, display)


@dataclass(frozen=True, slots=True)
class Trend:
    """Points, the straight line through them, and what was asked of it; SI."""

    points: Points  # the fills
    line: FittedLine  # through them
    slope: tuple[float, float]  # 95 % interval of the slope
    # fills, along: what the line says at every fill, and in even steps over all that is drawn
    fills: tuple[Prediction, ...]
    along: tuple[Prediction, ...]
    wanted: Inverse | None  # which x gives what is wanted
    expected: Prediction | None  # what to expect where it was asked
    simulated: bool  # whether any recording is

    def against(self, display: Display) -> Along:
        """Give what the fills are drawn against, as it stands on screen."""
        return along(self.points.tag, display)


def follow(
    runs: Sequence[Run], common: Common, tag: str, wanted: float | None = None, at: float | None = None
) -> Trend:
    """Fit a line, and ask it everything that is to be shown: the window only draws.

    Raises:
        InputError: Too few points, words for numbers, or recordings that must not stand together.
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

    of = trend.against(scale.display)
    lines = []
    if trend.wanted is not None:
        wanted = trend.wanted
        if math.isfinite(wanted.low):
            text = f"For {scale.asked(wanted.y)}: {of.words(wanted.x)} "
            lines.append(f"{text}(95 %: {of.span(wanted.low, wanted.high)}).{_beyond(wanted.extrapolated)}")
            lines.append(f"The interval {INVERSE_LEAVES_OUT}.")
        else:
            lines.append(f"For {scale.asked(wanted.y)}: cannot be determined, {wanted.text}.")
    if trend.expected is not None:
        at = trend.expected
        text = f"At {of.words(at.x)}: expect {scale.words(at.y)} "
        lines.append(
            f"{text}(the next single fill, 95 %: {scale.span(at.next_low, at.next_high)}).{_beyond(at.extrapolated)}"
        )
    return "\n".join(lines) or slope_words(trend, scale)


def _beyond(outside: object) -> str:
    return " Outside the range that was tested." if outside else ""


def slope_words(trend: Trend, scale: QuantityScale) -> str:
    """Give the slope in one sentence: its interval first, p second."""
    low, high, of = *trend.slope, trend.against(scale.display)
    shown = "a trend is shown" if not low <= 0 <= high else "no trend is shown"
    slope, least, most = (scale.rate(each / of.factor) for each in (trend.line.slope, low, high))
    return f"{f'Per {of.one}: {slope} {scale.unit}'.strip()} (95 %: {least} to {most}), {shown}."


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
    line, of = trend.line, trend.against(scale.display)
    slope, low, high = (scale.rate(each / of.factor) for each in (line.slope, *trend.slope))
    rows = [
        (
            f"Change per {of.one}",
            f"{slope} {scale.unit}".strip(),
            f"{low} to {high}",
            f"p {p_words(scale.display, line.p)}, {line.n} fills, least squares",
        ),
        ("Scatter about the line", scale.words(line.s), "–", f"R² {scale.display.number(line.r2, 3)}"),
    ]
    if trend.wanted is not None:
        wanted = trend.wanted
        bounded = math.isfinite(wanted.low)
        span = of.span(wanted.low, wanted.high) if bounded else "unbounded"
        x = f"{of.number(wanted.x)} {of.unit}".strip() if bounded else "–"
        rows.append((f"{of.name} for {scale.asked(wanted.y)}", x, span, wanted.text or "one further fill"))
    if trend.expected is not None:
        at = trend.expected
        where = f"At {of.words(at.x)}"
        rows.append((f"{where}, the line", scale.words(at.y), scale.span(at.line_low, at.line_high), "the mean there"))
        rows.append((f"{where}, next fill", scale.words(at.y), scale.span(at.next_low, at.next_high), "a single one"))
    return Sheet("Figures", ("Figure", "Value", "95 % interval", "From"), tuple(rows), frozenset({0, 3}))


def _fills(trend: Trend, scale: QuantityScale) -> Sheet:
    of = trend.against(scale.display)
    rows = [
        (unit.name, of.number(at.x), scale.number(y), scale.signed(y - at.y), str(unit.runs))
        for unit, at, y in zip(trend.points.units, trend.fills, trend.points.y, strict=True)
    ]
    return Sheet("Fills", ("Fill", of.title, scale.title, "Off the line", "Recordings"), tuple(rows))


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
