"""What more fills bring: the power, or the half width of a mean, against fills per group, the answer marked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF

from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

    from gui.models.planning import Planned
    from gui.models.sheets import QuantityScale
    from gui.shared import Shared


class PlanPlot(Chart):
    """The picture of a plan."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Plan")
        self._planned: Planned | None = None
        self._scale: QuantityScale | None = None

    def show_plan(self, planned: Planned, scale: QuantityScale) -> None:
        """Show a plan."""
        self._planned, self._scale = planned, scale
        self.setAccessibleDescription(tr(f"{planned.per_group} fills per group"))
        self.update()

    def _value(self, y: float) -> float:
        if self._planned is None or self._scale is None:
            return y
        return 100 * y if self._planned.plan is not None else y * self._scale.factor

    def axes(self) -> Axes | None:
        """Give room for the whole curve."""
        planned, scale = self._planned, self._scale
        if planned is None or scale is None:
            return None
        y = (0.0, 100.0)
        words = "Power (%)"
        if planned.plan is None:
            y, words = (
                rounded_range([0.0, *(self._value(v) for _, v in planned.curve)], 0.0),
                f"Half width, {scale.title}",
            )
        return Axes((1.5, planned.curve[-1][0] + 0.5), y, words, "Fills per group", (), planned.simulated)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw the curve, what is wanted, and the answer."""
        planned = self._planned
        if planned is None:
            return
        wanted = planned.wish.power if planned.plan is not None else planned.wish.amount
        level = frame.y(self._value(wanted))
        ends = [QPointF(frame.box.left(), level), QPointF(frame.box.right(), level)]
        self.curve(painter, ends, "muted", 1.5, dashed=True)
        points = [frame.at(n, self._value(v)) for n, v in planned.curve]
        self.curve(painter, points, "accent", 2.5)
        for (n, _), at in zip(planned.curve, points, strict=True):
            if n != planned.per_group:
                self.dot(painter, at, "accent", 3)
        chosen = next(at for (n, _), at in zip(planned.curve, points, strict=True) if n == planned.per_group)
        foot = QPointF(chosen.x(), frame.box.bottom())
        self.curve(painter, [chosen, foot], "text", 2)
        self.dot(painter, chosen, "text", 7)
        self.note(painter, frame, foot + QPointF(8, -10), f"{planned.per_group} fills")
