"""A result as word, shape and colour together, so that no one of them has to be seen.

The shape shows what the word says: two posts stand for the limit, and the mark for the value and its interval. A disc
between the posts is within; a square past a post is outside; a diamond on a post is too close to call; a triangle
without posts is not valid. The same four shapes stand in reports and tables.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from gui.look import Look

COLOUR_OF = {"within": "within", "outside": "outside", "too close to call": "close", "not valid": "invalid"}
WORD_OF = {"": "No result yet", "within": "Within", "outside": "Outside", "too close to call": "Too close to call"}
WORD_OF["not valid"] = "Not valid"


def paint_shape(painter: QPainter, box: QRectF, state: str, colour: QColor) -> None:
    """Paint the shape of a result into a box about twice as wide as high."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    stroke = max(2.0, box.height() * 0.11)
    painter.setPen(QPen(colour, stroke, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    middle, half = box.center(), box.height() / 2 - stroke / 2
    left, right = box.left() + box.width() * 0.1, box.left() + box.width() * 0.6
    if state != "not valid":
        for x in (left, right):
            painter.drawLine(QPointF(x, middle.y() - half), QPointF(x, middle.y() + half))
    painter.setBrush(colour)
    painter.setPen(Qt.PenStyle.NoPen)
    _mark(painter, state, QPointF((left + right) / 2, middle.y()), right, half * 0.62)
    painter.restore()


def _mark(painter: QPainter, state: str, middle: QPointF, post: float, size: float) -> None:
    if state == "within":
        painter.drawEllipse(middle, size, size)
    elif state == "outside":
        painter.drawRect(QRectF(post + size * 0.8, middle.y() - size * 0.9, size * 1.8, size * 1.8))
    elif state == "too close to call":
        tall = size * 1.25
        corners = [QPointF(0, -tall), QPointF(tall, 0), QPointF(0, tall), QPointF(-tall, 0)]
        painter.drawPolygon(QPolygonF([QPointF(post, middle.y()) + corner for corner in corners]))
    elif state == "not valid":
        tall = size * 1.5
        corners = [QPointF(0, -tall), QPointF(tall * 1.1, tall * 0.8), QPointF(-tall * 1.1, tall * 0.8)]
        painter.drawPolygon(QPolygonF([middle + corner for corner in corners]))


SMALLEST = 0.6  # of the usual size of a word, where a column is narrow


class Badge(QWidget):
    """A result with its word beside its shape.

    Args:
        look: Colours and fonts.
        px: Height of the word at text scale 1.
    """

    def __init__(self, look: Look, px: int = 17) -> None:
        super().__init__()
        self._look, self._px, self._state, self._word = look, px, "", WORD_OF[""]
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)
        self.show_state("")

    @property
    def state(self) -> str:
        """The result shown; empty before there is one."""
        return self._state

    def show_state(self, state: str, word: str | None = None) -> None:
        """Show a result, with another word than its own where that says more."""
        self._state = state
        self._word = tr(WORD_OF.get(state, state) if word is None else word)
        self.setAccessibleName(f"{tr('Result')}: {self._word}")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for shape and word."""
        font = self._look.font(self._px, bold=True)
        word = QFontMetricsF(font).horizontalAdvance(self._word)
        height = font.pixelSize() * 1.7
        return QSize(round(word + height * 2.6), round(height))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for a little less: the word gets smaller where there is no room, it is never clipped."""
        hint = self.sizeHint()
        return QSize(round(hint.width() * SMALLEST), hint.height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint plate, shape and word."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        name = COLOUR_OF.get(self._state, "muted")
        colour = self._look.colour(name)
        plate = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        painter.setPen(QPen(colour, 1.5 if self._state else 1.0))
        painter.setBrush(self._look.colour("raised"))
        painter.drawRoundedRect(plate, 7, 7)
        height = plate.height()
        if self._state:
            shape = QRectF(plate.left() + height * 0.2, plate.top() + height * 0.22, height * 1.3, height * 0.56)
            paint_shape(painter, shape, self._state, colour)
        painter.setPen(self._look.colour(name))
        left = height * 1.6 if self._state else height * 0.4
        where = plate.adjusted(left, 0, -height * 0.2, 0)
        px = self._px * self._look.scale
        width = QFontMetricsF(self._look.font(px, bold=True, scaled=False)).horizontalAdvance(self._word) + 2
        painter.setFont(self._look.font(px * min(1.0, where.width() / width), bold=True, scaled=False))
        painter.drawText(where, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self._word)
