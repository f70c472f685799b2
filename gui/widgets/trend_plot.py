"""A quantity against a numeric tag: one disc per fill, the line, the band of one further fill, and what was asked."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen

from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from gui.models.sheets import QuantityScale
    from gui.models.trending import Trend
    from gui.shared import Shared


class TrendPlot(Chart):
    """The picture of a trend."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Trend")
        self._trend: Trend | None = None
        self._scale: QuantityScale | None = None

    def show_trend(self, trend: Trend, scale: QuantityScale) -> None:
        """Show a trend."""
        self._trend, self._scale = trend, scale
        self.setAccessibleDescription(
            tr(f"{scale.title} against {trend.against(scale.display).title}, {len(trend.points.x)} fills")
        )
        self.update()

    def axes(self) -> Axes | None:
        """Give room for fills and band, and for what was asked where it is not far away."""
        trend, scale = self._trend, self._scale
        if trend is None or scale is None:
            return None
        ends = (trend.along[0], trend.along[-1])
        values = [*trend.points.y, *(v for at in ends for v in (at.next_low, at.next_high))]
        y = rounded_range((v * scale.factor for v in values), 0.02)
        of = trend.against(scale.display)
        x = (ends[0].x * of.factor, ends[1].x * of.factor)
        return Axes(x, y, scale.title, of.title, (), trend.simulated)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw band, line, fills, and what was asked."""
        trend, scale = self._trend, self._scale
        if trend is None or scale is None:
            return
        of = trend.against(scale.display)
        low = [frame.at(p.x * of.factor, p.next_low * scale.factor) for p in trend.along]
        high = [frame.at(p.x * of.factor, p.next_high * scale.factor) for p in trend.along]
        self.area(painter, low, high, self._shared.look.colour("accent", 0.14))
        self.curve(painter, [frame.at(p.x * of.factor, p.y * scale.factor) for p in trend.along], "accent", 2.5)
        for x, y, unit in zip(trend.points.x, trend.points.y, trend.points.units, strict=True):
            at = frame.at(x * of.factor, y * scale.factor)
            self.dot(painter, at)
            self.spot(at, f"{unit.name}, {of.words(x)}: {scale.words(y)}", unit.files)
        painter.save()
        painter.setClipRect(frame.box.adjusted(-8, -8, 8, 8))
        self._wanted(painter, frame, trend, scale)
        self._expected(painter, frame, trend, scale)
        painter.restore()

    def _wanted(self, painter: QPainter, frame: AxesFrame, trend: Trend, scale: QuantityScale) -> None:
        wanted = trend.wanted
        if wanted is None or not math.isfinite(wanted.low):
            return
        of, y, foot = trend.against(scale.display), wanted.y * scale.factor, frame.box.bottom()
        across, down = frame.x(wanted.x * of.factor), frame.y(y)
        self.curve(painter, [QPointF(frame.box.left(), down), QPointF(across, down), QPointF(across, foot)], "close", 2)
        low, high = (frame.x(x * of.factor) for x in (wanted.low, wanted.high))
        painter.setPen(QPen(self._shared.look.colour("close"), 5))
        painter.drawLine(QPointF(low, foot), QPointF(high, foot))
        painter.setPen(QPen(self._shared.look.colour("close"), 2))
        for end in (low, high):
            painter.drawLine(QPointF(end, foot - 8), QPointF(end, foot + 4))
        self.note(painter, frame, QPointF(across + 10, foot - 14), of.words(wanted.x), "close")

    def _expected(self, painter: QPainter, frame: AxesFrame, trend: Trend, scale: QuantityScale) -> None:
        at = trend.expected
        if at is None:
            return
        x = frame.x(at.x * trend.against(scale.display).factor)
        self.upright(painter, frame, x, at.next_low * scale.factor, at.next_high * scale.factor, "within")
        self.square(painter, QPointF(x, frame.y(at.y * scale.factor)), "within", 4)
        self.note(painter, frame, QPointF(x + 12, frame.y(at.y * scale.factor) - 6), scale.words(at.y), "within")
