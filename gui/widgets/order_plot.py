"""Values in order: a pack that settles, and the jobs of an axle against the band of its own reference level."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from analysis.compare.trend import RunInState
from gui.models.ordering import decay_curve
from gui.models.sheets import significant
from gui.translation import tr
from gui.widgets.chart import DOT, Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from gui.models.ordering import Settling, Watched
    from gui.models.sheets import QuantityScale
    from gui.shared import Shared

STEPS = 80  # points along the curve
MOST_NAMES = 6  # dates below a chart: more would be cut short on a small screen


class RunInPlot(Chart):
    """A pack's values in order; filled where they were judged settled, hollow before."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Run-in")
        self._of: Settling | None = None
        self._scale: QuantityScale | None = None
        self._simulated = False

    def show_run_in(self, of: Settling, scale: QuantityScale, *, simulated: bool) -> None:
        """Show one axle's run-in."""
        self._of, self._scale, self._simulated = of, scale, simulated
        self.setAccessibleDescription(tr(f"{of.axle}: {len(of.points.x)} values in order, {of.now.state.value}"))
        self.update()

    def axes(self) -> Axes | None:
        """Give room for every value."""
        of, scale = self._of, self._scale
        if of is None or scale is None:
            return None
        least, greatest = min(of.points.x), max(of.points.x)
        room = 0.04 * max(greatest - least, 1e-9)
        y = rounded_range(v * scale.factor for v in of.points.y)
        return Axes((least - room, greatest + room), y, scale.title, of.points.tag, (), self._simulated)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw the stretch that is judged, the curve, the values, and since when it has settled."""
        of, scale = self._of, self._scale
        if of is None or scale is None:
            return
        look, points = self._shared.look, of.points
        last = points.x[-of.now.over :]
        left, level = frame.x(last[0]), frame.y(of.now.level * scale.factor)
        judged = QRectF(left, frame.box.top(), frame.x(last[-1]) - left, frame.box.height())
        painter.fillRect(judged, look.colour("accent", 0.10))
        self.curve(painter, [QPointF(judged.left(), level), QPointF(judged.right(), level)], "accent", 2, dashed=True)
        along = np.linspace(points.x[0], points.x[-1], STEPS).tolist()
        curve = [frame.at(x, y * scale.factor) for x, y in zip(along, decay_curve(of, along), strict=False)]
        if curve:
            self.curve(painter, curve, "muted", 1.5)
        for place, (x, y) in enumerate(zip(points.x, points.y, strict=True)):
            then = of.along[place]
            settled = then is not None and then.state is RunInState.SETTLED
            painter.setPen(QPen(look.colour("within" if settled else "text"), 2))
            painter.setBrush(look.colour("within" if settled else "surface"))
            painter.drawEllipse(frame.at(x, y * scale.factor), DOT, DOT)
            words = f"{points.tag} {significant(scale.display, x)}: {scale.words(y)}"
            self.spot(frame.at(x, y * scale.factor), words, points.units[place].files)
        self.note(painter, frame, QPointF(left + 6, frame.box.bottom() - 8), f"judged: last {len(last)}", "muted")
        if of.since is not None:
            x = frame.x(points.x[of.since])
            self.curve(painter, [QPointF(x, frame.box.top()), QPointF(x, frame.box.bottom())], "within", 2)
            text = f"settled since {significant(scale.display, points.x[of.since])}"
            self.note(painter, frame, QPointF(x + 8, frame.box.top() + 20), text, "within")


class WatchPlot(Chart):
    """The chart of an axle: jobs as small rings, their weighted average as a line, signals as dated uprights."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Over time")
        self._of: Watched | None = None
        self._scale: QuantityScale | None = None
        self._simulated = False

    def show_watched(self, of: Watched, scale: QuantityScale, *, simulated: bool) -> None:
        """Show one axle's chart."""
        self._of, self._scale, self._simulated = of, scale, simulated
        self.setAccessibleDescription(tr(f"{of.axle}: {len(of.values)} jobs, {len(of.chart.alarms)} out of band"))
        self.update()

    def axes(self) -> Axes | None:
        """Give room for values, average and band."""
        of, scale = self._of, self._scale
        if of is None or scale is None:
            return None
        chart = of.chart
        y = rounded_range(v * scale.factor for v in (*of.values, *chart.low, *chart.high))
        every = max(1, math.ceil(len(of.dates) / MOST_NAMES))
        names = tuple(
            (float(place + 1), of.dates[place] or str(place + 1), "reference level" if place < of.baseline else "")
            for place in range(0, len(of.dates), every)
        )
        legend = (tr("a job"), tr("weighted average"))
        return Axes((0.5, len(of.values) + 0.5), y, scale.title, "", names, self._simulated, legend)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw band, target, jobs, average and signals."""
        of, scale = self._of, self._scale
        if of is None or scale is None:
            return
        chart, f, look = of.chart, scale.factor, self._shared.look
        x = range(1, len(of.values) + 1)
        good = frame.x(of.baseline + 0.5)
        shaded = QRectF(frame.box.left(), frame.box.top(), good - frame.box.left(), frame.box.height())
        painter.fillRect(shaded, look.colour("muted", 0.10))
        low = [frame.at(at, float(v) * f) for at, v in zip(x, chart.low, strict=True)]
        high = [frame.at(at, float(v) * f) for at, v in zip(x, chart.high, strict=True)]
        self.area(painter, low, high, look.colour("accent", 0.10))
        for edge in (low, high):
            self.curve(painter, edge, "accent", 1.5)
        target = frame.y(chart.target * f)
        ends = [QPointF(frame.box.left(), target), QPointF(frame.box.right(), target)]
        self.curve(painter, ends, "muted", 1.5, dashed=True)
        for at, value in zip(x, of.values, strict=True):
            self.mark(painter, frame.at(at, value * f), 0)
            self.spot(
                frame.at(at, value * f), f"{of.dates[at - 1]}: {scale.words(value)}".strip(": "), (of.files[at - 1],)
            )
        self._words(painter, frame, (low, high))
        average = [frame.at(at, float(v) * f) for at, v in zip(x, chart.average, strict=True)]
        self.curve(painter, average, "text", 2)
        for place, point in enumerate(average):
            if place in chart.alarms:
                self._signal(painter, frame, point, of.dates[place] if place == chart.alarms[0] else "")
            self.dot(painter, point, size=4)

    def _signal(self, painter: QPainter, frame: AxesFrame, at: QPointF, date: str) -> None:
        """Draw an upright through a job whose average is out of band; the first one carries its date."""
        painter.setPen(QPen(self._shared.look.colour("text"), 2.5))
        painter.drawLine(QPointF(at.x(), frame.box.top()), QPointF(at.x(), frame.box.bottom()))
        if date:
            self.note(painter, frame, QPointF(at.x() + 6, frame.box.top() + 16), f"out of band, {date}")

    def mark(self, painter: QPainter, at: QPointF, place: int) -> None:
        """Draw a job's ring, or the dot of the average."""
        if place:
            self.dot(painter, at, size=4)
        else:
            painter.setPen(QPen(self._shared.look.colour("muted"), 1.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawEllipse(at, 4, 4)

    def _words(self, painter: QPainter, frame: AxesFrame, band: tuple[list[QPointF], list[QPointF]]) -> None:
        for points, words, shift in ((band[0], "band, lower edge", 18), (band[1], "band, upper edge", -8)):
            at = QPointF(frame.box.left() + 8, points[0].y() + shift)
            self.note(painter, frame, at, words, "accent")
