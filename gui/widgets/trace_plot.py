"""Torque against time, live or still: the trace at two points per pixel column, the limit's band, the pulls.

What costs time in the plotting library is excluded: its grid, its automatic range, its own thinning and wide pens. The
view stays fixed while the samples stream: the newest stands at 0 and the past at negative times.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QMouseEvent, QPainter, QPen, QResizeEvent
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from gui.models.trace import joined
from gui.translation import tr
from gui.widgets.badge import COLOUR_OF
from gui.widgets.figure import tick_step
from gui.widgets.menus import offer_picture

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from gui.look import Look
    from gui.models.marks import PullMark
    from gui.models.trace import GrowingTrace
    from logger.samples import Floats


CURSOR_PX = 6  # from the pointer to the sample that is read off: farther away nothing was sent


class _Backdrop(pg.GraphicsObject):  # type: ignore[misc]
    """Rules and the limit's band: a handful of straight lines instead of the library's grid."""

    def __init__(self, plot: TracePlot) -> None:
        super().__init__()
        self._plot = plot
        self.setZValue(-100)
        self.limits: tuple[float | None, float | None] = (None, None)

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        return QRectF(self._plot.box())

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        look, box = self._plot.look, self._plot.box()
        lower, upper = self.limits
        if lower is not None or upper is not None:
            for sign in (1, -1):
                first = sign * (lower if lower is not None else 0.0)
                last = sign * (upper if upper is not None else 1e9)
                low, high = max(box.top(), min(first, last)), min(box.bottom(), max(first, last))
                if high > low:
                    painter.fillRect(QRectF(box.left(), low, box.width(), high - low), look.colour("band"))
        pen = QPen(look.colour("line"), 1)
        pen.setCosmetic(True)
        painter.setPen(pen)
        step = tick_step(max(box.height(), 1e-6), 6)
        for index in range(int(np.ceil(box.top() / step)), int(np.floor(box.bottom() / step)) + 1):
            painter.drawLine(QPointF(box.left(), index * step), QPointF(box.right(), index * step))
        pen = QPen(look.colour("within"), 1)  # solid: a dashed line costs a tenth of a frame
        pen.setCosmetic(True)
        painter.setPen(pen)
        for value in (lower, upper):
            for sign in (1, -1):
                if value is not None and box.top() <= sign * value <= box.bottom():
                    painter.drawLine(QPointF(box.left(), sign * value), QPointF(box.right(), sign * value))


class _Marks(pg.GraphicsObject):  # type: ignore[misc]
    """The pulls: an open ring with a B at the breakaway, a bar along the rotating stretch, uprights for intervals."""

    def __init__(self, plot: TracePlot) -> None:
        super().__init__()
        self._plot = plot
        self.setZValue(50)
        self.marks: Sequence[PullMark] = ()
        self.shift_s = 0.0

    def boundingRect(self) -> QRectF:  # noqa: N802 - Qt's name
        return QRectF(self._plot.box())

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        box = self._plot.box()
        if not self.marks or box.width() <= 0 or box.height() <= 0:
            return
        transform = painter.transform()
        painter.resetTransform()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for mark in self.marks:
            self._one(painter, mark, lambda x, y: transform.map(QPointF(x - self.shift_s, y)))
        painter.setTransform(transform)

    def _one(self, painter: QPainter, mark: PullMark, place: object) -> None:
        assert callable(place)  # noqa: S101 - narrows the type
        look = self._plot.look
        colour = look.colour("muted" if mark.rejected else COLOUR_OF.get(mark.state, "accent"))
        ratio = painter.device().devicePixelRatioF()
        if mark.rotating is not None:
            start, end, level, half = mark.rotating
            left, right = place(start, level), place(end, level)
            painter.setPen(QPen(colour, 4 * ratio, Qt.PenStyle.DotLine if mark.rejected else Qt.PenStyle.SolidLine))
            painter.drawLine(left, right)
            painter.setPen(Qt.PenStyle.NoPen)
            fill = look.colour("muted" if mark.rejected else COLOUR_OF.get(mark.state, "accent"), 0.22)
            top, bottom = place(start, level + half), place(end, level - half)
            painter.fillRect(QRectF(top, bottom).normalized(), fill)
        if mark.breakaway is not None:
            time_s, level, half = mark.breakaway
            at, top, bottom = place(time_s, level), place(time_s, level + half), place(time_s, level - half)
            ring = look.colour("muted" if mark.rejected else "text")
            painter.setPen(QPen(ring, 2 * ratio))
            painter.drawLine(top, bottom)
            size = 6 * ratio
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(at, size, size)
            font, words = look.font(14 * ratio, bold=True), f"B{mark.label}"
            painter.setFont(font)
            width = QFontMetricsF(font).horizontalAdvance(words)
            painter.drawText(at + QPointF(-width / 2, -size * 1.9 if level >= 0 else size * 3.4), words)


class TracePlot(pg.PlotWidget):  # type: ignore[misc]
    """The plot; ``draw`` shows a stretch of a trace, ``show_marks`` the pulls on it."""

    resized = Signal()
    pointed = Signal()  # the pointer moves over it

    def __init__(self, look: Look, x_label: str = "Time (s)", *, mouse: bool = False) -> None:
        super().__init__(enableMenu=False)
        self.look = look
        self._unit, self._x_label, self._y_words, self._watermark = "N·m", x_label, "Torque", ""
        self.number: Callable[[float, int], str] = lambda value, decimals: f"{value:.{decimals}f}"
        self._cursor: QPointF | None = None
        self.readout = ""
        item = self.getPlotItem()
        item.setMouseEnabled(x=mouse, y=False)
        item.hideButtons()
        item.setContentsMargins(0, 6, 10, 0)
        self._view = item.getViewBox()
        self._view.disableAutoRange()
        self._view.setDefaultPadding(0.0)
        self._backdrop, self._marks = _Backdrop(self), _Marks(self)
        self.curve = pg.PlotCurveItem(connect="finite")
        for part in (self._backdrop, self.curve, self._marks):
            part.setFlag(QGraphicsItem.GraphicsItemFlag.ItemHasNoContents, enabled=False)
            self._view.addItem(part, ignoreBounds=True)
        self.setAccessibleName(tr("Torque against time"))
        offer_picture(self)
        self.viewport().setMouseTracking(True)
        self._view.sigRangeChanged.connect(self._range_changed)
        look.changed.connect(self._restyle)
        self._restyle()
        self.set_view(-20.0, 0.0, 0.0, 40.0)

    # ------------------------------------------------------------------ what is seen
    def box(self) -> QRectF:
        """Give the stretch of time and torque that is seen (top is the least torque)."""
        (left, right), (low, high) = self._view.viewRange()
        return QRectF(left, low, right - left, high - low)

    def columns(self) -> int:
        """Give the pixel columns of the plot."""
        return max(1, int(self._view.width() * self.devicePixelRatioF()))

    def set_view(self, left: float, right: float, low: float, high: float) -> None:
        """Show another stretch of time and torque; the same one costs nothing."""
        now = self.box()
        if (now.left(), now.right(), now.top(), now.bottom()) != (left, right, low, high):
            self._view.setRange(xRange=(left, right), yRange=(low, high), padding=0, disableAutoRange=True)

    def set_unit(self, unit: str) -> None:
        """Name the unit of the torque axis."""
        if unit != self._unit:
            self._unit = unit
            self._restyle()

    def set_x_label(self, label: str) -> None:
        """Name the horizontal axis; empty for none."""
        if label != self._x_label:
            self._x_label = label
            self._restyle()

    def set_y_words(self, words: str) -> None:
        """Name the torque axis; its unit is added."""
        if words != self._y_words:
            self._y_words = words
            self._restyle()

    def set_limits(self, lower: float | None, upper: float | None) -> None:
        """Show the limit's band, in the unit drawn; both signs of torque get it."""
        if self._backdrop.limits != (lower, upper):
            self._backdrop.limits = (lower, upper)
            self._backdrop.update()

    def set_watermark(self, text: str) -> None:
        """Write a word across the plot: what is simulated must never be taken for a test."""
        if text != self._watermark:
            self._watermark = text
            self.setAccessibleDescription(tr(text))
            self.viewport().update()

    def draw(self, trace: GrowingTrace, drawn: Callable[[Floats], Floats], *, newest_at_zero: bool = False) -> None:
        """Draw the seen stretch of a trace.

        Args:
            trace: Samples at the transducer, N·m.
            drawn: From samples to what is drawn: at the axle, in the unit on screen.
            newest_at_zero: Whether the time axis ends at the newest sample.
        """
        box = self.box()
        shift = trace.end_s if newest_at_zero else 0.0
        times, torques = trace.stretch(box.left() + shift, box.right() + shift, self.columns())
        self._draw_line(times - shift if shift else times, drawn(torques))
        if self._marks.shift_s != shift:
            self._marks.shift_s = shift
            if self._marks.marks:
                self._marks.update()

    def _draw_line(self, x: Floats, y: Floats) -> None:
        self._join(self.curve, x, y)

    @staticmethod
    def _join(curve: pg.PlotCurveItem, x: Floats, y: Floats) -> None:
        """Put a line on a curve, broken where nothing was sent and where a sample is missing."""
        parts = joined(x)
        if parts is not None:
            finite = np.isfinite(y)
            curve.setData(x, np.where(finite, y, 0.0), connect=parts & finite & np.append(finite[1:], True))
        else:
            curve.setData(x, y, connect="all" if np.isfinite(y).all() else "finite", skipFiniteCheck=True)

    def show_marks(self, marks: Sequence[PullMark]) -> None:
        """Show pulls; their times are the trace's."""
        self._marks.marks = tuple(marks)
        self._marks.update()

    # ------------------------------------------------------------------ looks
    def _restyle(self) -> None:
        look = self.look
        self.setBackground(look.colour("surface"))
        self.curve.setPen(pg.mkPen(look.colour("trace"), width=1))
        for name, label in (("left", f"{tr(self._y_words)} ({self._unit})"), ("bottom", tr(self._x_label))):
            axis = self.getPlotItem().getAxis(name)
            axis.setPen(pg.mkPen(look.colour("edge")))
            axis.setTextPen(pg.mkPen(look.colour("muted")))
            axis.setStyle(tickFont=look.font(13), tickLength=4, autoExpandTextSpace=False)
            axis.showLabel(bool(label))
            axis.setLabel(label, **{"color": look.palette.muted, "font-size": f"{round(13 * look.scale)}px"})
            axis.enableAutoSIPrefix(False)
        self.getPlotItem().getAxis("left").setWidth(round(64 * look.scale))
        self.getPlotItem().getAxis("bottom").setHeight(round((44 if self._x_label else 26) * look.scale))
        self.viewport().update()

    def _range_changed(self, *_: object) -> None:
        self._backdrop.prepareGeometryChange()
        self._marks.prepareGeometryChange()

    def resizeEvent(self, event: QResizeEvent | None) -> None:  # noqa: N802 - Qt's name
        """Tell that there are other pixel columns now."""
        super().resizeEvent(event)
        if event is not None:
            self.resized.emit()

    # ------------------------------------------------------------------ cursor
    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Read the trace off under the pointer."""
        super().mouseMoveEvent(event)
        self._cursor = event.position()
        self.pointed.emit()
        self.viewport().update()

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Read nothing off any more."""
        super().leaveEvent(event)
        self._cursor, self.readout = None, ""
        self.viewport().update()

    def beside(self, x: float) -> str:
        """Give what else is known at a place of the trace; a subclass may know the angle."""
        return "" if np.isfinite(x) else "–"

    def _read_off(self) -> QPointF | None:
        """Put what stands under the pointer into ``readout``; gives the place of the sample, None for none."""
        self.readout = ""
        x, y = self.curve.getData()
        frame = self._view.sceneBoundingRect()
        if self._cursor is None or x is None or not len(x) or not frame.contains(self._cursor):
            return None
        at = self._view.mapSceneToView(self._cursor).x()
        near = int(np.argmin(np.abs(x - at)))
        reach = CURSOR_PX * self.box().width() / max(1.0, frame.width())
        if not np.isfinite(y[near]) or abs(x[near] - at) > reach:
            return None  # nothing was sent there: between two samples no torque is made up
        decimals = max(0, min(3, 2 - int(np.floor(np.log10(max(self.box().width(), 1e-3) / 10)))))
        axis = "°" if self._x_label.endswith("(°)") else " s"
        place = f"{self.number(float(x[near]), 1 if axis == '°' else decimals)}{axis}"
        torque = f"{self.number(float(y[near]), 2)} {self._unit}"
        self.readout = "   ".join(part for part in (place, torque, self.beside(float(x[near]))) if part)
        found: QPointF = self._view.mapViewToScene(QPointF(float(x[near]), float(y[near])))
        return found

    def _draw_cursor(self, painter: QPainter) -> None:
        at = self._read_off()
        if at is None:
            return
        frame = self._view.sceneBoundingRect()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.look.colour("muted"), 1))
        painter.drawLine(QPointF(at.x(), frame.top()), QPointF(at.x(), frame.bottom()))
        painter.setPen(QPen(self.look.colour("text"), 1.5))
        painter.drawEllipse(at, 4, 4)
        painter.setFont(self.look.font(14, bold=True))
        metrics = QFontMetricsF(painter.font())
        wide, high = metrics.horizontalAdvance(self.readout) + 16, metrics.height() + 8
        left = at.x() + 12 if at.x() + 12 + wide < frame.right() else at.x() - 12 - wide
        place = QRectF(max(frame.left(), left), frame.top() + 6, wide, high)
        painter.setPen(QPen(self.look.colour("edge"), 1))
        painter.setBrush(self.look.colour("surface"))
        painter.drawRoundedRect(place, 4, 4)
        painter.setPen(self.look.colour("text"))
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, self.readout)

    def drawForeground(self, painter: QPainter, _rect: QRectF) -> None:  # noqa: N802 - Qt's name
        """Write the watermark over everything, and what stands under the pointer."""
        painter.save()
        painter.resetTransform()
        self._draw_cursor(painter)
        painter.restore()
        if not self._watermark:
            return
        painter.save()
        painter.resetTransform()
        frame = self._view.sceneBoundingRect()
        font = self.look.font(min(frame.height() * 0.2, frame.width() * 0.1), bold=True, scaled=False)
        painter.setFont(font)
        painter.setPen(self.look.colour("close", 0.3))
        painter.drawText(frame, Qt.AlignmentFlag.AlignCenter, tr(self._watermark))
        painter.restore()
