"""Recordings that are still: zoomed with wheel and keys, laid over each other, with handles to move a pull's marks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal

from gui.widgets.figure import tick_step
from gui.widgets.trace_plot import TracePlot

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtGui import QKeyEvent

    from gui.models.marks import PullMark
    from gui.models.trace import GrowingTrace
    from gui.shared import Shared
    from logger.samples import Floats

TONES = ("trace", "accent", "muted")  # the colours of results mean results
STYLES = (Qt.PenStyle.SolidLine, Qt.PenStyle.DashLine, Qt.PenStyle.DotLine, Qt.PenStyle.DashDotLine)
LABEL_PIXELS = 44  # above the highest mark, for its number
NUDGE_PIXELS = 4  # of a handle per key


@dataclass(frozen=True, slots=True)
class Shown:
    """One trace on the plot."""

    trace: GrowingTrace  # its samples
    drawn: Callable[[Floats], Floats]  # from its samples to what is drawn: at the axle, in the unit on screen
    shift_s: float  # taken from its times
    marks: Sequence[PullMark]  # its pulls
    label: str  # its name, for the legend


class ReviewPlot(TracePlot):
    """One or several traces; emits ``moved`` with the times of the handles."""

    moved = Signal(object, object)

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared.look, "Time (s)", mouse=True)
        self._shared = shared
        self._shown: list[Shown] = []
        self._more: list[pg.PlotCurveItem] = []
        self._angle: tuple[Floats, Floats] | None = None
        self._elastic = pg.PlotCurveItem()
        self._view.addItem(self._elastic, ignoreBounds=True)
        self._turned: tuple[Floats, Floats] | None = None  # times, angle of the wheel: for the cursor
        self.number = shared.display.number
        self._breakaway: pg.InfiniteLine | None = None
        self._stretch: pg.LinearRegionItem | None = None
        self._legend = pg.LegendItem(offset=(-12, 12), verSpacing=2)
        self._legend.setParentItem(self.getPlotItem().getViewBox())
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.getPlotItem().getViewBox().sigXRangeChanged.connect(lambda *_: self._redraw())
        self.resized.connect(self._redraw)
        shared.look.changed.connect(self._retone)

    # ------------------------------------------------------------------ showing
    def show_traces(
        self,
        shown: Sequence[Shown],
        limits: tuple[float | None, ...],
        simulated: bool,
    ) -> None:
        """Show other traces."""
        self._shown, self._angle, self._turned = list(shown), None, None
        self.show_elastic(None)
        lower, upper = limits
        self.set_unit(self._shared.display.unit)
        self.set_limits(lower, upper)
        self.set_watermark("SIMULATED" if simulated else "")
        self.set_x_label("Time (s)" if len(shown) == 1 else "Time since the first pull (s)")
        for curve in self._more:
            self._view.removeItem(curve)
        self._more = [pg.PlotCurveItem(connect="finite") for _ in shown[1:]]
        for curve in self._more:
            self._view.addItem(curve, ignoreBounds=True)
        self._retone()
        self.show_marks(shown[0].marks if shown else [])
        self._fit_height()
        self._redraw()

    def set_axle(self, known: bool) -> None:
        """Say whether the torque is at the axle or as the transducer showed it."""
        self.set_y_words("At the axle" if known else "As shown")

    def show_all(self) -> None:
        """Show everything there is, against time."""
        if not self._shown:
            return
        self._angle = None
        self.show_elastic(None)
        self.set_x_label("Time (s)" if len(self._shown) == 1 else "Time since the first pull (s)")
        self.show_marks(self._shown[0].marks)
        start = min(s.trace.start_s - s.shift_s for s in self._shown)
        end = max(s.trace.end_s - s.shift_s for s in self._shown)
        self._fit_height()
        self.show_stretch(start, max(end, start + 0.1))

    def show_stretch(self, start_s: float, end_s: float) -> None:
        """Show a stretch of time."""
        self._view.setXRange(start_s, end_s, padding=0)
        self._redraw()

    def show_against_angle(self, angle_deg: Floats, torque: Floats) -> None:
        """Show torque against angle; both as they are to be drawn."""
        self._angle = (angle_deg, torque)
        self.show_marks([])
        self.set_x_label("Angle of the wheel (°)")
        self._view.setXRange(float(np.nanmin(angle_deg)), float(np.nanmax(angle_deg)), padding=0.02)
        self._redraw()

    @property
    def against_angle(self) -> bool:
        """Whether torque is shown against angle."""
        return self._angle is not None

    def show_elastic(self, ends: tuple[Floats, Floats] | None) -> None:
        """Draw an elastic line between its two ends (angles, torques), with room around it; None: none."""
        if ends is None:
            self._elastic.setData([], [])
            return
        self._elastic.setPen(pg.mkPen(self._shared.look.colour("accent"), width=3, style=Qt.PenStyle.DashLine))
        self._elastic.setData(*ends)
        wide = max(float(np.ptp(ends[0])), 0.1)
        self._view.setXRange(float(ends[0].min()) - 2 * wide, float(ends[0].max()) + 3 * wide, padding=0)

    def know_angle(self, time_s: Floats, angle_deg: Floats) -> None:
        """Take the wheel's angle along: the cursor reads it off, too."""
        self._turned = (time_s, angle_deg)
        self.viewport().update()

    def beside(self, x: float) -> str:
        """Give the wheel's angle at a time, where it is known."""
        if self._turned is None or self._angle is not None or len(self._shown) != 1:
            return ""
        return f"{self.number(float(np.interp(x, *self._turned)), 1)}°"

    def _redraw(self) -> None:
        if self._angle is not None:
            self.curve.setData(*self._angle, connect="finite")
            for curve in self._more:
                curve.setData([], [])
            return
        for index, shown in enumerate(self._shown):
            if index == 0 and not shown.shift_s:
                self.draw(shown.trace, shown.drawn)
                continue
            box = self.box()
            x, y = shown.trace.stretch(box.left() + shown.shift_s, box.right() + shown.shift_s, self.columns())
            curve = self.curve if index == 0 else self._more[index - 1]
            self._join(curve, x - shown.shift_s, shown.drawn(y))

    def _fit_height(self) -> None:
        least = greatest = 0.0
        for shown in self._shown:
            _, y = shown.trace.stretch(shown.trace.start_s, shown.trace.end_s, 200)
            y = shown.drawn(y[np.isfinite(y)])
            if len(y):
                least, greatest = min(least, float(y.min())), max(greatest, float(y.max()))
        limits = [v for v in self._backdrop.limits if v is not None]
        if greatest >= -least:
            greatest = max(greatest, *(1.15 * v for v in limits), 0.0) if limits else greatest
        span = max(greatest - least, 1e-3)
        step = tick_step(span, 5)
        low = np.floor((least - 0.03 * span) / step) * step
        room = max(0.12, LABEL_PIXELS / max(1.0, self._view.height()))
        high = np.ceil((greatest + room * span) / step) * step
        self._view.setYRange(float(low), float(high), padding=0)

    def _retone(self) -> None:
        look = self._shared.look
        self._legend.clear()
        for index, shown in enumerate(self._shown):
            curve = self.curve if index == 0 else self._more[index - 1]
            curve.setPen(pg.mkPen(look.colour(TONES[index % len(TONES)]), width=1, style=STYLES[index % len(STYLES)]))
            if len(self._shown) > 1:
                self._legend.addItem(curve, shown.label[:40])
        self._legend.setLabelTextColor(look.colour("text"))
        self._legend.setBrush(look.colour("surface", 0.85))  # names stand over the traces
        self._legend.setLabelTextSize(f"{round(13 * look.scale)}px")
        self._legend.setVisible(len(self._shown) > 1)

    # ------------------------------------------------------------------ handles
    def offer_handles(self, breakaway_s: float | None, stretch_s: tuple[float, float] | None) -> None:
        """Put handles on a pull's breakaway and rotating stretch."""
        self.drop_handles()
        look = self._shared.look
        pen, hover = pg.mkPen(look.colour("accent"), width=3), pg.mkPen(look.colour("text"), width=4)
        box = self.box()
        at = breakaway_s if breakaway_s is not None else box.left() + 0.3 * box.width()
        self._breakaway = pg.InfiniteLine(at, angle=90, movable=True, pen=pen, hoverPen=hover, label="B")
        first, last = stretch_s or (box.left() + 0.5 * box.width(), box.left() + 0.7 * box.width())
        self._stretch = pg.LinearRegionItem(
            (first, last), brush=look.colour("accent", 0.18), hoverBrush=look.colour("accent", 0.28), pen=pen
        )
        for item in (self._stretch, self._breakaway):
            item.setZValue(80)
            self._view.addItem(item, ignoreBounds=True)
        self._breakaway.sigPositionChanged.connect(lambda *_: self._tell())
        self._stretch.sigRegionChanged.connect(lambda *_: self._tell())
        self._tell()

    def drop_handles(self) -> None:
        """Take the handles away."""
        for item in (self._breakaway, self._stretch):
            if item is not None:
                self._view.removeItem(item)
        self._breakaway = self._stretch = None

    def _tell(self) -> None:
        if self._breakaway is not None and self._stretch is not None:
            first, last = self._stretch.getRegion()
            self.moved.emit(float(self._breakaway.value()), (float(first), float(last)))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Zoom with + and -, go with the arrows, show everything with 0; with handles, arrows move the breakaway."""
        box = self.box()
        step = NUDGE_PIXELS * box.width() / self.columns()
        if self._breakaway is not None and event.key() in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            self._breakaway.setValue(self._breakaway.value() + (step if event.key() == Qt.Key.Key_Right else -step))
            return
        moves = {Qt.Key.Key_Left: -0.2, Qt.Key.Key_Right: 0.2}
        zooms = {Qt.Key.Key_Plus: 0.6, Qt.Key.Key_Minus: 1 / 0.6}
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_0:
            self.show_all()
        elif key in moves:
            self.show_stretch(box.left() + moves[key] * box.width(), box.right() + moves[key] * box.width())
        elif key in zooms:
            middle, half = box.center().x(), zooms[key] * box.width() / 2
            self.show_stretch(middle - half, middle + half)
        else:
            super().keyPressEvent(event)
