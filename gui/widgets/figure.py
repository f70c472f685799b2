"""The large torque figure, readable from across the workshop, with the limit as a ruler below it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from gui.look import Look


LEAST_PX = 130  # of the figure's height at text scale 1; where the window is lower, the page scrolls


@dataclass(frozen=True, slots=True)
class FigureView:
    """What the figure shows; all numbers in the unit on screen."""

    # now, highest: the torque at the axle now and the highest so far, formatted; a dash where there is none
    now: str = "–"
    highest: str = "–"
    unit: str = "N·m"  # the unit's symbol
    # now_value, highest_value: the same as numbers, for the ruler
    now_value: float | None = None
    highest_value: float | None = None
    # lower, upper: the limit
    lower: float | None = None
    upper: float | None = None
    highest_caption: str = "Highest so far"  # what the highest is of
    # turned, turned_caption: how far the wheel turned in this pull, with its unit, empty where its angle is not known;
    # what stands over it
    turned: str = ""
    turned_caption: str = ""
    caption: str = "Torque at the axle"  # what the large figure is
    tone: str = "text"  # a colour of the palette for the figure
    template: str = "888.8"  # the widest figure to make room for, so that the digits stand still


class TorqueFigure(QWidget):
    """Torque at the axle now, very large; the highest so far and the wheel's turning beside it; a ruler with the limit.

    Args:
        look: Colours and fonts.
    """

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look, self._view = look, FigureView()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self._rescale()
        look.changed.connect(self._rescale)
        self.show_view(self._view)

    def _rescale(self) -> None:
        self.setMinimumHeight(round(LEAST_PX * self._look.scale))
        self.update()

    def _words(self, font: QFont, text: str, room: float) -> QFont:
        """Give the font with which a text fits: smaller rather than cut."""
        width = QFontMetricsF(font).horizontalAdvance(text) + 4
        return font if width <= room else self._look.font(font.pixelSize() * room / width, scaled=False)

    def show_view(self, view: FigureView) -> None:
        """Show other figures; the same ones cost nothing."""
        if view == self._view and self.accessibleName():
            return
        self._view = view
        wheel = f"; {tr(view.turned_caption)}: {view.turned}" if view.turned else ""
        self.setAccessibleName(
            f"{tr(view.caption)}: {view.now} {view.unit}; {tr(view.highest_caption)}: {view.highest} {view.unit}{wheel}"
        )
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give a size that reads well at an arm's length; a far view makes it larger."""
        return QSize(640, 170)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint figures and ruler."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ruler = max(34.0 * self._look.scale, self.height() * 0.2)
        top = QRectF(0, 0, self.width(), self.height() - ruler)
        self._figures(painter, top)
        self._ruler(painter, QRectF(6, top.bottom(), self.width() - 12, ruler))

    def _figures(self, painter: QPainter, box: QRectF) -> None:
        view, look = self._view, self._look
        caption = look.font(max(13.0, box.height() * 0.1), scaled=box.height() < 250)
        cap_height = QFontMetricsF(caption).height()
        body = box.adjusted(0, cap_height, 0, 0)
        main = self._fit(body.width() * 0.56, body.height() * 1.04, view.template)
        main_width = QFontMetricsF(main).horizontalAdvance(view.template)
        unit = look.font(main.pixelSize() * 0.3, scaled=False)
        baseline = body.bottom() - main.pixelSize() * 0.1
        painter.setPen(look.colour("muted"))
        unit_end = 4 + main_width + main.pixelSize() * 0.4 + QFontMetricsF(unit).horizontalAdvance("lbf·ft")
        words = tr(view.caption)
        painter.setFont(self._words(caption, words, min(unit_end, box.width() * 0.6)))
        painter.drawText(QRectF(4, 0, box.width() * 0.6, cap_height), Qt.AlignmentFlag.AlignVCenter, words)
        painter.setPen(look.colour(view.tone))
        painter.setFont(main)
        number = QFontMetricsF(main).horizontalAdvance(view.now)
        painter.drawText(QPointF(4 + main_width - number, baseline), view.now)
        painter.setFont(unit)
        painter.setPen(look.colour("muted"))
        painter.drawText(QPointF(4 + main_width + main.pixelSize() * 0.1, baseline), view.unit)
        unit_right = 4 + main_width + main.pixelSize() * 0.1 + QFontMetricsF(unit).horizontalAdvance("lbf·ft")
        self._beside(painter, box, unit_right + 26, baseline, caption)

    def _beside(self, painter: QPainter, box: QRectF, left: float, baseline: float, caption: QFont) -> None:
        """Paint the highest torque, and below it how far the wheel turned where that is known."""
        view, look = self._view, self._look
        room = box.right() - left - 6
        if room < 70:
            return
        painter.setPen(QPen(look.colour("line"), 1))
        painter.drawLine(QPointF(left - 14, 8), QPointF(left - 14, box.bottom() - 4))
        cell = QRectF(left, 0, room, box.height())
        if not view.turned:
            high = self._fit(room, box.height() * 0.6, view.template)
            self._cell(painter, cell, (view.highest_caption, view.highest), (caption, high), baseline)
            return
        cell.setHeight(box.height() / 2)
        head = QFontMetricsF(caption).height()
        high = self._fit(room, (cell.height() - head) * 0.9, view.template)
        drop = head + 0.6 * (cell.height() - head + QFontMetricsF(high).capHeight() * 0.7)
        self._cell(painter, cell, (view.highest_caption, view.highest), (caption, high), drop)
        cell.translate(0, cell.height())
        self._cell(painter, cell, (view.turned_caption, view.turned), (caption, high), cell.top() + drop)

    def _cell(
        self, painter: QPainter, box: QRectF, words: tuple[str, str], fonts: tuple[QFont, QFont], baseline: float
    ) -> None:
        """Paint one of the smaller figures and its caption over it."""
        caption, figure = tr(words[0]), words[1]
        painter.setPen(self._look.colour("muted"))
        painter.setFont(self._words(fonts[0], caption, box.width()))
        height = QFontMetricsF(fonts[0]).height()
        painter.drawText(QRectF(box.left(), box.top(), box.width(), height), Qt.AlignmentFlag.AlignVCenter, caption)
        painter.setFont(fonts[1])
        painter.setPen(self._look.colour("text"))
        painter.drawText(QPointF(box.left(), baseline), figure)

    def _fit(self, width: float, height: float, template: str) -> QFont:
        font = self._look.font(200, bold=True, scaled=False)
        metrics = QFontMetricsF(font)
        px = 200 * min(width / metrics.horizontalAdvance(template), height / (metrics.capHeight() * 1.28))
        return self._look.font(max(12.0, px), bold=True, scaled=False)

    def _ruler(self, painter: QPainter, box: QRectF) -> None:
        view, look = self._view, self._look
        top = ruler_top(view)
        bar = QRectF(box.left(), box.top() + 6, box.width(), max(9.0, box.height() * 0.26))
        painter.setPen(QPen(look.colour("line"), 1))
        painter.setBrush(look.colour("raised"))
        painter.drawRoundedRect(bar, 3, 3)

        def place(value: float) -> float:
            return bar.left() + bar.width() * min(1.0, max(0.0, abs(value) / top))

        painter.setPen(Qt.PenStyle.NoPen)
        if view.lower is not None or view.upper is not None:
            first = place(view.lower) if view.lower is not None else bar.left()
            last = place(view.upper) if view.upper is not None else bar.right()
            painter.setBrush(look.mixed("within", "raised", 0.35))
            painter.drawRect(QRectF(first, bar.top() + 1, last - first, bar.height() - 2))
            painter.setPen(QPen(look.colour("within"), 2))
            for value in (view.lower, view.upper):
                if value is not None:
                    painter.drawLine(QPointF(place(value), bar.top() - 4), QPointF(place(value), bar.bottom() + 4))
        self._scale(painter, bar, box, top)
        if view.highest_value is not None:
            _pointer(painter, place(view.highest_value), bar, look.colour("muted"), hollow=True)
        if view.now_value is not None:
            _pointer(painter, place(view.now_value), bar, look.colour(view.tone), hollow=False)

    def _scale(self, painter: QPainter, bar: QRectF, box: QRectF, top: float) -> None:
        look = self._look
        font = look.font(max(12.0, min(bar.height() * 0.9, 26)), scaled=self.height() < 300)
        painter.setFont(font)
        painter.setPen(look.colour("muted"))
        height = QFontMetricsF(font).height()
        step = tick_step(top, 5)
        for index in range(int(top / step + 1e-9) + 1):
            value = index * step
            x = bar.left() + bar.width() * value / top
            text = f"{value:g}"
            width = QFontMetricsF(font).horizontalAdvance(text)
            left = min(max(box.left(), x - width / 2), box.right() - width)
            painter.drawText(QRectF(left, bar.bottom() + 5, width + 2, height), text)


def tick_step(top: float, about: int) -> float:
    """Give a round step (1, 2 or 5 of a decade) that divides ``top`` into about so many."""
    raw = max(top, 1e-9) / about
    decade = 10.0 ** math.floor(math.log10(raw))
    return next(decade * m for m in (1, 2, 5, 10) if decade * m >= raw * 0.999)


def ruler_top(view: FigureView) -> float:
    """Give the ruler's end: the limit in its middle third, and everything seen so far on it, in round steps."""
    seen = [abs(v) for v in (view.now_value, view.highest_value) if v is not None and math.isfinite(v)]
    limits = [v for v in (view.lower, view.upper) if v is not None]
    wanted = max([1.1 * s for s in seen] + [1.7 * v for v in limits] + [1e-3])
    step = tick_step(wanted, 5)
    return math.ceil(wanted / step - 1e-9) * step


def _pointer(painter: QPainter, x: float, bar: QRectF, colour: QColor, *, hollow: bool) -> None:
    half = max(6.0, bar.height() * 0.55)
    tip = bar.top() + 1
    shape = QPolygonF([QPointF(x, tip + half), QPointF(x - half * 0.7, tip - half * 0.5)])
    shape.append(QPointF(x + half * 0.7, tip - half * 0.5))
    painter.setPen(QPen(colour, 2))
    painter.setBrush(Qt.BrushStyle.NoBrush if hollow else colour)
    painter.drawPolygon(shape)
    painter.drawLine(QPointF(x, bar.top()), QPointF(x, bar.bottom()))
