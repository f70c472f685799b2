"""Groups side by side: each fill a disc, its recordings rings, the median a bar, the mean's interval an upright."""

from __future__ import annotations

import math
import statistics
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.widgets.figure import tick_step

if TYPE_CHECKING:
    from analysis.compare.groups import Comparison, Group
    from gui.shared import Shared


class GroupPlot(QWidget):
    """The picture of a comparison."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._found: Comparison | None = None
        self.setMinimumHeight(200)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Groups")
        shared.look.changed.connect(self.update)
        shared.display.changes.listen(self.update)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for a few groups."""
        return QSize(600, 320)

    def show_comparison(self, found: Comparison | None) -> None:
        """Show another comparison."""
        self._found = found
        if found is not None:
            words = [f"{g.name}: mean {self._factor * g.mean:.3g} of {len(g.units)}" for g in found.groups]
            self.setAccessibleDescription("; ".join(words))
        self.update()

    @property
    def _factor(self) -> float:
        torque = self._found is not None and self._found.quantity.unit == "N·m"
        return self._shared.display.factor if torque else 1.0

    @property
    def _unit(self) -> str:
        if self._found is None or self._found.quantity.unit == "1":
            return ""
        return self._shared.display.unit if self._found.quantity.unit == "N·m" else self._found.quantity.unit

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint scale, groups and names."""
        found, look = self._found, self._shared.look
        if found is None or not found.groups:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        font = look.font(13)
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        low, high, step = self._range(found)
        left = metrics.horizontalAdvance("8888.8") + 14
        top = 1.6 * metrics.height()
        box = QRectF(left, top, self.width() - left - 10, self.height() - top - 2.6 * metrics.height())

        def height(value: float) -> float:
            return box.bottom() - box.height() * (value - low) / (high - low)

        painter.setPen(look.colour("muted"))
        painter.drawText(QPointF(4, metrics.ascent()), self._axis_words(found))
        for index in range(round((high - low) / step) + 1):
            value = low + index * step
            painter.setPen(QPen(look.colour("line"), 1))
            painter.drawLine(QPointF(box.left(), height(value)), QPointF(box.right(), height(value)))
            painter.setPen(look.colour("muted"))
            text = self._shared.display.number(value, max(0, -math.floor(math.log10(step) + 1e-9)))
            painter.drawText(
                QPointF(left - 8 - metrics.horizontalAdvance(text), height(value) + metrics.ascent() / 2 - 2), text
            )
        width = box.width() / len(found.groups)
        for index, group in enumerate(found.groups):
            self._group(painter, group, box.left() + (index + 0.5) * width, width, height, box.bottom())
        if found.simulated:
            painter.setFont(look.font(min(box.height() * 0.16, box.width() * 0.07), bold=True, scaled=False))
            painter.setPen(look.colour("close", 0.3))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "SIMULATED")

    def _axis_words(self, found: Comparison) -> str:
        name = found.quantity.value[0].upper() + found.quantity.value[1:]
        return f"{name} ({self._unit})" if self._unit else name

    def _range(self, found: Comparison) -> tuple[float, float, float]:
        factor = self._factor
        values = [v * factor for g in found.groups for v in (*g.values, *(r for u in g.units for r in u.of_runs))]
        values += [v * factor for g in found.groups for v in (g.low, g.high) if not math.isnan(v)]
        least, greatest = min(values), max(values)
        room = max(greatest - least, abs(greatest) * 0.02, 1e-9)
        step = tick_step(1.2 * room, 5)
        return math.floor((least - 0.08 * room) / step) * step, math.ceil((greatest + 0.08 * room) / step) * step, step

    def _group(self, painter: QPainter, group: Group, x: float, width: float, height: object, bottom: float) -> None:
        if not callable(height):
            return
        look, factor = self._shared.look, self._factor
        spread = min(width * 0.28, 60.0)
        for place, unit in enumerate(group.units):
            at = x - spread + 2 * spread * (place + 0.5) / len(group.units)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(look.colour("muted"), 1.2))
            for value in unit.of_runs if len(unit.of_runs) > 1 else ():
                painter.drawEllipse(QPointF(at, height(value * factor)), 3, 3)
            painter.setPen(QPen(look.colour("surface"), 1))
            painter.setBrush(look.colour("text"))
            painter.drawEllipse(QPointF(at, height(unit.value * factor)), 5, 5)
        bar = spread + 10
        middle = height(statistics.median(group.values) * factor)
        painter.setPen(QPen(look.colour("accent"), 3))
        painter.drawLine(QPointF(x - bar, middle), QPointF(x + bar, middle))
        if not math.isnan(group.low):
            top, foot = height(group.high * factor), height(group.low * factor)
            painter.setPen(QPen(look.colour("accent"), 2))
            at = x + bar + 8
            painter.drawLine(QPointF(at, top), QPointF(at, foot))
            for y in (top, foot):
                painter.drawLine(QPointF(at - 5, y), QPointF(at + 5, y))
            painter.drawEllipse(QPointF(at, height(group.mean * factor)), 3.5, 3.5)
        self._names(painter, group, x, width, bottom)

    def _names(self, painter: QPainter, group: Group, x: float, width: float, bottom: float) -> None:
        look = self._shared.look
        fills = "1 fill" if len(group.units) == 1 else f"{len(group.units)} fills"
        lines = (
            (group.name, look.font(14, bold=True), "text"),
            (f"{fills}, {group.pulls} pulls", look.font(12.5), "muted"),
        )
        top = bottom + 4
        for text, font, colour in lines:
            metrics = QFontMetricsF(font)
            painter.setFont(font)
            painter.setPen(look.colour(colour))
            short = metrics.elidedText(text, Qt.TextElideMode.ElideRight, width - 6)
            painter.drawText(QPointF(x - metrics.horizontalAdvance(short) / 2, top + metrics.ascent()), short)
            top += metrics.height()
