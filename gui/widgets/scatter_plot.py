"""Our repeatability: readings of each axle around its mean, a stroke mark per operator; or two ways axle by axle."""

from __future__ import annotations

import math
import statistics
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPen

from gui.models.own_scatter import PairsAnswer, StudyAnswer
from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from gui.models.sheets import QuantityScale
    from gui.shared import Shared

COLOURS = ("text", "accent", "muted")  # the colours of results mean results
SIZE = 7.0
STROKES = ((0, 90, 180, 270), (45, 135, 225, 315), (30, 150, 270), (90, 270))  # degrees, from the middle outwards


class ScatterPlot(Chart):
    """The picture of a study, or of two ways side by side."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Our repeatability")
        self._answer: StudyAnswer | PairsAnswer | None = None
        self._scale: QuantityScale | None = None

    def show_scatter(self, answer: StudyAnswer | PairsAnswer, scale: QuantityScale) -> None:
        """Show a study or pairs."""
        self._answer, self._scale = answer, scale
        half = answer.study.half_width if isinstance(answer, StudyAnswer) else 1.96 * answer.agreement.sd
        self.setAccessibleDescription(tr(f"95 % lie within ± {scale.words(half)}"))
        self.update()

    def axes(self) -> Axes | None:
        """Give room for every reading."""
        answer, scale = self._answer, self._scale
        if answer is None or scale is None:
            return None
        unit = f" ({scale.unit})" if scale.unit else ""
        if isinstance(answer, StudyAnswer):
            offs = [off for row in self._off(answer) for cell in row for off in cell]
            reach = answer.study.half_width * scale.factor
            names = tuple(
                (place + 0.5, axle, f"mean {scale.number(_mean(row))}")
                for place, (axle, row) in enumerate(zip(answer.axles, answer.values, strict=True))
            )
            span = rounded_range([*offs, reach, -reach])
            words = f"Off the axle's mean{unit}"
            return Axes((0.0, float(len(names))), span, words, "", names, answer.simulated, answer.operators)
        found = answer.agreement
        offs = [(a - b) * scale.factor for a, b in zip(answer.a, answer.b, strict=True)]
        means = [(a + b) / 2 * scale.factor for a, b in zip(answer.a, answer.b, strict=True)]
        room = 0.06 * max(max(means) - min(means), 1e-9)
        y = rounded_range([*offs, found.limit_low * scale.factor, found.limit_high * scale.factor, 0.0])
        words = f"{answer.ways[0]} − {answer.ways[1]}{unit}"
        return Axes(
            (min(means) - room, max(means) + room), y, words, f"Mean of both, {scale.title}", (), answer.simulated
        )

    def _off(self, answer: StudyAnswer) -> list[list[list[float]]]:
        factor = self._scale.factor if self._scale is not None else 1.0
        return [[[(value - _mean(row)) * factor for value in cell] for cell in row] for row in answer.values]

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw readings, and the interval that holds 95 % of them."""
        answer, scale = self._answer, self._scale
        if isinstance(answer, StudyAnswer) and scale is not None:
            self._study(painter, frame, answer, scale)
        elif isinstance(answer, PairsAnswer) and scale is not None:
            self._pairs(painter, frame, answer, scale)

    def _study(self, painter: QPainter, frame: AxesFrame, answer: StudyAnswer, scale: QuantityScale) -> None:
        reach = answer.study.half_width * scale.factor
        self._stripe(painter, frame, -reach, reach)
        width = 1.0 / (len(answer.operators) + 1)
        for axle, row in enumerate(self._off(answer)):
            for operator, cell in enumerate(row):
                at = axle + (operator + 1) * width
                mean = statistics.fmean(cell)
                middle = frame.at(at, mean)
                painter.setPen(QPen(self._shared.look.colour(COLOURS[operator % len(COLOURS)]), 3))
                painter.drawLine(middle - QPointF(18, 0), middle + QPointF(18, 0))
                for place, off in enumerate(cell):
                    shift = (place - (len(cell) - 1) / 2) * 11
                    point = frame.at(at, off) + QPointF(shift, 0)
                    self.mark(painter, point, operator)
                    value = scale.words(answer.values[axle][operator][place])
                    self.spot(point, f"{answer.operators[operator]}, {answer.axles[axle]}: {value}")

    def _pairs(self, painter: QPainter, frame: AxesFrame, answer: PairsAnswer, scale: QuantityScale) -> None:
        found, f = answer.agreement, scale.factor
        self._stripe(painter, frame, found.limit_low * f, found.limit_high * f)
        bias = frame.y(found.bias * f)
        self.curve(painter, [QPointF(frame.box.left(), bias), QPointF(frame.box.right(), bias)], "accent", 2.5)
        for a, b in zip(answer.a, answer.b, strict=True):
            point = frame.at((a + b) / 2 * f, (a - b) * f)
            self.dot(painter, point)
            self.spot(point, f"{answer.ways[0]} {scale.words(a)}, {answer.ways[1]} {scale.words(b)}")

    def _stripe(self, painter: QPainter, frame: AxesFrame, low: float, high: float) -> None:
        top, foot = frame.y(high), frame.y(low)
        look = self._shared.look
        painter.fillRect(QRectF(frame.box.left(), top, frame.box.width(), foot - top), look.colour("accent", 0.10))
        for y in (top, foot):
            ends = [QPointF(frame.box.left(), y), QPointF(frame.box.right(), y)]
            self.curve(painter, ends, "accent", 1.5, dashed=True)

    def mark(self, painter: QPainter, at: QPointF, place: int) -> None:
        """Draw one operator's mark of strokes, as no result has: +, ×, Y, a stroke; then again in another colour."""
        painter.setPen(QPen(self._shared.look.colour(COLOURS[place % len(COLOURS)]), 2.5))
        for degrees in STROKES[place % len(STROKES)]:
            turned = math.radians(degrees)
            painter.drawLine(at, at + QPointF(math.cos(turned), -math.sin(turned)) * SIZE)


def _mean(row: tuple[tuple[float, ...], ...]) -> float:
    return statistics.fmean(value for cell in row for value in cell)
