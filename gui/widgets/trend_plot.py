"""A quantity against a numeric tag: one disc per fill, the line, and the band that holds one further fill."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.widgets.figure import tick_step

if TYPE_CHECKING:
    from gui.models.comparing import Trend
    from gui.shared import Shared

STEPS = 60  # points along line and band


class TrendPlot(QWidget):
    """The picture of a trend; ``factor`` brings its values to the unit shown."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._trend: Trend | None = None
        self._factor, self._words = 1.0, ""
        self.setMinimumHeight(200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Trend")
        shared.look.changed.connect(self.update)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for a picture."""
        return QSize(600, 320)

    def show_trend(self, trend: Trend | None, factor: float, words: str) -> None:
        """Show another trend; ``words`` name the vertical axis."""
        self._trend, self._factor, self._words = trend, factor, words
        if trend is not None:
            self.setAccessibleDescription(f"{words} against {trend.tag}, {len(trend.x)} fills")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint axes, band, line and fills."""
        trend, look = self._trend, self._shared.look
        if trend is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(look.font(13))
        metrics = QFontMetricsF(painter.font())
        room = 0.05 * (max(trend.x) - min(trend.x))
        along = np.linspace(min(trend.x) - room, max(trend.x) + room, STEPS)
        said = [trend.line.predict(float(x)) for x in along]
        low = [p.next_low * self._factor for p in said]
        high = [p.next_high * self._factor for p in said]
        values = [y * self._factor for y in trend.y]
        bottom, top, step = _range(min(*low, *values), max(*high, *values))
        left = metrics.horizontalAdvance("8888.8") + 14
        box = QRectF(left, 1.6 * metrics.height(), self.width() - left - 16, self.height() - 4.2 * metrics.height())

        def place(x: float, y: float) -> QPointF:
            across = (x - along[0]) / (along[-1] - along[0])
            return QPointF(
                box.left() + across * box.width(), box.bottom() - box.height() * (y - bottom) / (top - bottom)
            )

        self._axes(painter, box, (bottom, top, step), (float(along[0]), float(along[-1])))
        band = [place(float(x), y) for x, y in zip(along, low, strict=True)]
        band += [place(float(x), y) for x, y in zip(along[::-1], high[::-1], strict=True)]
        painter.setPen(QPen(look.colour("accent", 0.0), 0))
        painter.setBrush(look.colour("accent", 0.14))
        painter.drawPolygon(QPolygonF(band))
        painter.setPen(QPen(look.colour("accent"), 2.5))
        line = [place(float(x), p.y * self._factor) for x, p in zip(along, said, strict=True)]
        painter.drawPolyline(QPolygonF(line))
        painter.setPen(QPen(look.colour("surface"), 1))
        painter.setBrush(look.colour("text"))
        for x, y in zip(trend.x, values, strict=True):
            painter.drawEllipse(place(x, y), 5, 5)

    def _axes(
        self,
        painter: QPainter,
        box: QRectF,
        vertical: tuple[float, float, float],
        across: tuple[float, float],
    ) -> None:
        look, number, trend = self._shared.look, self._shared.display.number, self._trend
        metrics = QFontMetricsF(painter.font())
        painter.setPen(look.colour("muted"))
        painter.drawText(QPointF(4, metrics.ascent()), self._words)
        bottom, top, step = vertical
        for index in range(round((top - bottom) / step) + 1):
            value = bottom + index * step
            y = box.bottom() - box.height() * (value - bottom) / (top - bottom)
            painter.setPen(QPen(look.colour("line"), 1))
            painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            painter.setPen(look.colour("muted"))
            text = number(value, _decimals(step))
            painter.drawText(
                QPointF(box.left() - 8 - metrics.horizontalAdvance(text), y + metrics.ascent() / 2 - 2), text
            )
        first, last = across
        wide = tick_step(last - first, 6)
        for index in range(math.ceil(first / wide), math.floor(last / wide) + 1):
            x = box.left() + box.width() * (index * wide - first) / (last - first)
            text = number(index * wide, _decimals(wide))
            painter.drawText(
                QPointF(x - metrics.horizontalAdvance(text) / 2, box.bottom() + metrics.height() + 2), text
            )
        name = trend.tag if trend is not None else ""
        painter.drawText(
            QPointF(box.center().x() - metrics.horizontalAdvance(name) / 2, box.bottom() + 2.2 * metrics.height()), name
        )


def _range(least: float, greatest: float) -> tuple[float, float, float]:
    step = tick_step(max(greatest - least, 1e-9), 5)
    return math.floor(least / step) * step, math.ceil(greatest / step) * step, step


def _decimals(step: float) -> int:
    return max(0, -math.floor(math.log10(step) + 1e-9))
