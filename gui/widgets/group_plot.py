"""Groups side by side: each fill a disc, its recordings rings, the median a bar, the mean's interval an upright."""

from __future__ import annotations

import math
import statistics
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPen

from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from collections.abc import Callable

    from analysis.compare.groups import Comparison, Group
    from gui.models.sheets import QuantityScale
    from gui.shared import Shared

RING = 3.0  # half the size of a recording's mark
WIDEST_SPREAD = 60.0  # a few fills stay together on a wide screen


class GroupPlot(Chart):
    """The picture of a comparison."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Groups")
        self._found: Comparison | None = None
        self._factor, self._title = 1.0, ""
        self._words: Callable[[float], str] = str

    def show_comparison(self, found: Comparison, scale: QuantityScale) -> None:
        """Show a comparison."""
        self._found, self._factor, self._title = found, scale.factor, scale.title
        self._words = scale.words
        words = [f"{g.name}: {tr(f'mean {scale.words(g.mean)} of {len(g.units)}')}" for g in found.groups]
        self.setAccessibleDescription("; ".join(words))
        self.update()

    def axes(self) -> Axes | None:
        """Give room for every fill, recording and interval."""
        found = self._found
        if found is None:
            return None
        values = [v for g in found.groups for v in (*g.values, *(r for u in g.units for r in u.of_runs), g.low, g.high)]
        names = []
        for place, group in enumerate(found.groups):
            fills = "1 fill" if len(group.units) == 1 else f"{len(group.units)} fills"
            names.append((place + 0.5, group.name, f"{fills}, {group.pulls} pulls"))
        span = rounded_range(v * self._factor for v in values)
        return Axes((0.0, float(len(names))), span, self._title, "", tuple(names), found.simulated)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw the groups."""
        found = self._found
        if found is None:
            return
        width = frame.box.width() / len(found.groups)
        for place, group in enumerate(found.groups):
            self._group(painter, frame, group, frame.x(place + 0.5), width)

    def _group(self, painter: QPainter, frame: AxesFrame, group: Group, x: float, width: float) -> None:
        look, factor = self._shared.look, self._factor
        spread = min(width * 0.28, WIDEST_SPREAD)
        for place, unit in enumerate(group.units):
            at = x - spread + 2 * spread * (place + 0.5) / len(group.units)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(look.colour("muted"), 1.2))
            for value in unit.of_runs if len(unit.of_runs) > 1 else ():
                painter.drawEllipse(QPointF(at, frame.y(value * factor)), RING, RING)
            place_of = QPointF(at, frame.y(unit.value * factor))
            self.dot(painter, place_of)
            self.spot(place_of, f"{unit.name}: {self._words(unit.value)}", unit.files)
        bar = spread + 10
        middle = frame.y(statistics.median(group.values) * factor)
        painter.setPen(QPen(look.colour("accent"), 3))
        painter.drawLine(QPointF(x - bar, middle), QPointF(x + bar, middle))
        if not math.isnan(group.low):
            self.upright(painter, frame, x + bar + 8, group.low * factor, group.high * factor, "accent")
            painter.setBrush(look.colour("surface"))
            painter.drawEllipse(QPointF(x + bar + 8, frame.y(group.mean * factor)), 3.5, 3.5)
