"""A drawn pull that teaches what will be seen: load, breakaway, keep turning, ease off, with the limit beside it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from gui.look import Look

# The drawn pull, as shares of width and height: time, torque.
SHAPE = ((0.0, 0.05), (0.13, 0.05), (0.36, 0.86), (0.375, 0.80), (0.40, 0.70), (0.86, 0.68), (0.89, 0.08), (1.0, 0.05))
LIMIT = 0.5
# Where, share of the width; what; how.
WORDS = (
    (0.245, "Load smoothly", "two to three seconds"),
    (0.63, "Keep turning slowly", "two turns for a steady value"),
    (0.945, "Ease off", "keep hold"),
)

ABOUT = (
    "A pull: load smoothly over two to three seconds; the first peak is the breakaway torque B; keep turning slowly, "
    "the steady level is the rotating torque R; ease the load off and keep hold of the lever."
)


class PullSketch(QWidget):
    """The drawing."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumHeight(140)
        self.setMaximumHeight(460)
        self.setAccessibleName(tr(ABOUT))
        look.changed.connect(self.update)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for the drawing."""
        return QSize(640, 180)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint limit, trace and words."""
        look = self._look
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        small = look.font(13)
        foot = QFontMetricsF(small).height() * 2 + 8
        box = QRectF(6, 8, self.width() - 12, self.height() - foot - 12)

        def place(x: float, y: float) -> QPointF:
            return QPointF(box.left() + x * box.width(), box.bottom() - y * box.height())

        limit = place(0, LIMIT).y()
        painter.fillRect(QRectF(box.left(), box.top(), box.width(), limit - box.top()), look.colour("band"))
        painter.setPen(QPen(look.colour("within"), 1, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(box.left(), limit), QPointF(box.right(), limit))
        painter.setFont(small)
        painter.drawText(QPointF(box.left() + 8, limit - 6), tr("your limit: at least this"))
        painter.setPen(QPen(look.colour("line"), 1))
        painter.drawLine(box.bottomLeft(), box.bottomRight())
        path = QPainterPath(place(*SHAPE[0]))
        for x, y in SHAPE[1:]:
            path.lineTo(place(x, y))
        painter.setPen(QPen(look.colour("trace"), 2.2, j=Qt.PenJoinStyle.RoundJoin))
        painter.drawPath(path)
        self._marks(painter, place(0.36, 0.86), place(0.42, 0.69), place(0.85, 0.69))
        self._words(painter, box)

    def _marks(self, painter: QPainter, peak: QPointF, start: QPointF, end: QPointF) -> None:
        look, size = self._look, 7.0
        painter.setPen(QPen(look.colour("text"), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(peak, size, size)
        painter.setPen(QPen(look.colour("accent"), 5))
        painter.drawLine(start, end)
        painter.setFont(look.font(15, bold=True))
        painter.setPen(look.colour("accent"))
        painter.drawText(peak + QPointF(14, 2), tr("B  breakaway torque"))
        width = QFontMetricsF(painter.font()).horizontalAdvance(tr("R  rotating torque"))
        painter.drawText(QPointF(end.x() - width, start.y() - 10), tr("R  rotating torque"))

    def _words(self, painter: QPainter, box: QRectF) -> None:
        look = self._look
        for x, first, second in WORDS:
            top = box.bottom() + 4
            lines = ((tr(first), look.font(13, bold=True), "text"), (tr(second), look.font(13), "muted"))
            for text, font, colour in lines:
                metrics = QFontMetricsF(font)
                width = metrics.horizontalAdvance(text)
                left = min(max(box.left(), box.left() + x * box.width() - width / 2), box.right() - width)
                painter.setFont(font)
                painter.setPen(look.colour(colour))
                painter.drawText(QPointF(math.floor(left), top + metrics.ascent()), text)
                top += metrics.height()
