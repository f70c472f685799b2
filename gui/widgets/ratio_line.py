"""A counted ratio as a band on a line, with the ratios that it may be as ticks: one filled tick inside settles it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.look import Look

GAP = 14.0  # pixels between two labels
AROUND = 0.12  # of the span, beside the outermost mark


@dataclass(frozen=True, slots=True)
class Tick:
    """One ratio: where it stands, what is written under it, and whether it lies inside the band."""

    ratio: float
    name: str
    figure: str
    inside: bool


@dataclass(frozen=True, slots=True)
class RatioView:
    """What the line shows; nothing without ticks."""

    low: float = 0.0
    high: float = 0.0
    ratio: float = 0.0
    ticks: tuple[Tick, ...] = ()


class RatioLine(QWidget):
    """Paints the band, its middle and the ticks; labels that would overlap are moved apart and led to their ticks."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look, self._view = look, RatioView()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)
        self.show_view(self._view)

    def show_view(self, view: RatioView) -> None:
        """Show another count."""
        self._view = view
        words = [f"{tr(t.name)} {t.figure}".strip() + f" {tr('inside' if t.inside else 'outside')}" for t in view.ticks]
        said = "; ".join(words) or tr("nothing counted yet")
        self.setAccessibleName(f"{tr('Counted ratio between its neighbours')}: {said}")
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for the line, leaders and two lines of labels."""
        return QSize(360, round(72 * self._look.scale))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give the same height."""
        return QSize(240, self.sizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint line, band, ticks and labels."""
        view, look = self._view, self._look
        if not view.ticks:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        y = 14 * look.scale
        painter.setPen(QPen(look.colour("edge"), 1.5))
        painter.drawLine(QPointF(0, y), QPointF(self.width(), y))
        half = 11 * look.scale
        left, right = self._x(view.low), self._x(view.high)
        painter.setPen(QPen(look.colour("accent"), 1.5))
        painter.setBrush(look.mixed("accent", "surface", 0.3))
        painter.drawRoundedRect(QRectF(left, y - half, max(3.0, right - left), 2 * half), 4, 4)
        painter.setPen(QPen(look.colour("accent"), 2.5))
        at = self._x(view.ratio)
        painter.drawLine(QPointF(at, y - half), QPointF(at, y + half))
        self._ticks(painter, y, half)

    def _ticks(self, painter: QPainter, y: float, half: float) -> None:
        look = self._look
        top = y + half + 12 * look.scale
        for tick, middle in zip(self._view.ticks, self._middles(), strict=True):
            at, colour = self._x(tick.ratio), look.colour("text" if tick.inside else "muted")
            painter.setPen(QPen(colour, 1.5))
            painter.drawPolyline([QPointF(at, y), QPointF(at, y + half + 4), QPointF(middle, top - 2)])
            painter.setPen(QPen(colour, 2))
            painter.setBrush(colour if tick.inside else look.colour("surface"))
            painter.drawEllipse(QPointF(at, y), 5, 5)
            below = top
            for text, font in self._lines(tick):
                metrics = QFontMetricsF(font)
                painter.setFont(font)
                painter.setPen(colour)
                painter.drawText(QPointF(middle - metrics.horizontalAdvance(text) / 2, below + metrics.ascent()), text)
                below += metrics.height()

    def _lines(self, tick: Tick) -> Sequence[tuple[str, QFont]]:
        look = self._look
        first = (tick.name or tick.figure, look.font(15, bold=tick.inside))
        return (first, (tick.figure, look.font(12.5))) if tick.name else (first,)

    def _x(self, ratio: float) -> float:
        marks = [t.ratio for t in self._view.ticks] + [self._view.low, self._view.high]
        span = max(max(marks) - min(marks), 1e-6)
        first = min(marks) - AROUND * span
        return self.width() * (ratio - first) / (span * (1 + 2 * AROUND))

    def _middles(self) -> list[float]:
        """Give the labels' middles in the ticks' order: each at its tick, or as near as the others let it be."""
        widths = [max(QFontMetricsF(f).horizontalAdvance(t) for t, f in self._lines(tick)) for tick in self._view.ticks]
        order = sorted(range(len(widths)), key=lambda n: self._view.ticks[n].ratio)
        placed = [0.0] * len(widths)
        edge = 0.0
        for n in order:
            placed[n] = max(self._x(self._view.ticks[n].ratio), edge + widths[n] / 2)
            edge = placed[n] + widths[n] / 2 + GAP
        edge = float(self.width())
        for n in reversed(order):
            placed[n] = min(placed[n], edge - widths[n] / 2)
            edge = placed[n] - widths[n] / 2 - GAP
        return placed
