"""Axes, words and the mark of simulated data: the ground that every picture of the Compare page is drawn on."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr
from gui.widgets.figure import tick_step
from gui.widgets.fitting import LEAST_PX, small_enough
from gui.widgets.menus import offer_picture

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from gui.shared import Shared

WIDE_CHARACTERS = "8888.8"  # room for figures beside the axis
DOT = 5.0  # half the size of a fill's mark
LEGEND_PX, MARK_PX = 40.0, 14.0  # what a word of the legend takes beside its letters; from its mark to the letters
REACH_PX = 14.0  # from the pointer to a point that it means


@dataclass(frozen=True, slots=True)
class Spot:
    """A point that can be pointed at and opened: where it is, what it is, which recordings it rests on."""

    at: QPointF
    words: str
    files: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Axes:
    """What is shown: ranges and words."""

    x: tuple[float, float]
    y: tuple[float, float]
    y_words: str
    x_words: str = ""
    x_names: tuple[tuple[float, str, str], ...] = ()  # stand below places instead of figures
    simulated: bool = False
    legend: tuple[str, ...] = ()  # the words of the marks, each drawn by ``mark``


@dataclass(frozen=True, slots=True)
class AxesFrame:
    """Where the axes lie on the screen."""

    box: QRectF
    axes: Axes

    def x(self, value: float) -> float:
        """Give the place of an x."""
        low, high = self.axes.x
        return self.box.left() + self.box.width() * (value - low) / (high - low)

    def y(self, value: float) -> float:
        """Give the place of a y."""
        low, high = self.axes.y
        return self.box.bottom() - self.box.height() * (value - low) / (high - low)

    def at(self, x: float, y: float) -> QPointF:
        """Give the place of a point."""
        return QPointF(self.x(x), self.y(y))


class Chart(QWidget):
    """A picture on axes; a subclass says which axes and draws on them.

    A point that was given with ``spot`` says what it is when the pointer or the arrow keys are on it, and a press or
    Return emits ``opened`` with its recordings.
    """

    opened = Signal(object)

    def __init__(self, shared: Shared, name: str) -> None:
        super().__init__()
        self._shared = shared
        self.setMinimumHeight(180)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr(name))
        self.spots: list[Spot] = []
        self._hot = -1
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        offer_picture(self)
        shared.look.changed.connect(self.update)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for a picture."""
        return QSize(600, 320)

    def axes(self) -> Axes | None:
        """Give what is shown; None for nothing."""
        raise NotImplementedError

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw on the axes."""
        raise NotImplementedError

    def mark(self, painter: QPainter, at: QPointF, place: int) -> None:
        """Draw the mark of a word of the legend."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint axes, picture and mark."""
        axes, look = self.axes(), self._shared.look
        if axes is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(look.font(13))
        metrics = QFontMetricsF(painter.font())
        left = metrics.horizontalAdvance(WIDE_CHARACTERS) + 14
        rows = self._legend_rows(axes, metrics)
        top, below = (
            (0.6 + len(rows)) * metrics.height(),
            (2.7 if axes.x_words or axes.x_names else 0.6) * metrics.height(),
        )
        frame = AxesFrame(QRectF(left, top, self.width() - left - 16, self.height() - top - below), axes)
        self._ground(painter, frame)
        self._legend(painter, frame, rows)
        self.spots = []
        self.draw(painter, frame)
        self._show_hot(painter, frame)
        if axes.simulated:
            box = frame.box
            painter.setFont(look.font(min(box.height() * 0.16, box.width() * 0.07), bold=True, scaled=False))
            painter.setPen(look.colour("close", 0.3))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, tr("SIMULATED"))

    # ------------------------------------------------------------------ points
    def spot(self, at: QPointF, words: str, files: Sequence[str] = ()) -> None:
        """Let a point be pointed at and opened."""
        self.spots.append(Spot(QPointF(at), words, tuple(files)))

    def _show_hot(self, painter: QPainter, frame: AxesFrame) -> None:
        if not 0 <= self._hot < len(self.spots):
            return
        hot = self.spots[self._hot]
        painter.setPen(QPen(self._shared.look.colour("text"), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(hot.at, DOT + 5, DOT + 5)
        self.note(painter, frame, hot.at + QPointF(14, -10), hot.words)

    def _point_at(self, hot: int) -> None:
        if hot != self._hot:
            self._hot = hot
            words = self.spots[hot].words if hot >= 0 else ""
            self.setToolTip("")
            self.setCursor(
                Qt.CursorShape.PointingHandCursor if words and self.spots[hot].files else Qt.CursorShape.ArrowCursor
            )
            self.update()

    def _near(self, at: QPointF) -> int:
        """Give the point that a place means; -1 for none."""
        away = [math.hypot(spot.at.x() - at.x(), spot.at.y() - at.y()) for spot in self.spots]
        nearest = min(range(len(away)), key=away.__getitem__, default=-1)
        return nearest if nearest >= 0 and away[nearest] <= REACH_PX else -1

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Say what the point under the pointer is."""
        self._point_at(self._near(event.position()))

    def leaveEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Say nothing any more."""
        super().leaveEvent(event)
        self._point_at(-1)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Open the recordings of the point that is pressed."""
        hot = self._near(event.position())
        if event.button() is Qt.MouseButton.LeftButton and hot >= 0:
            self._open(hot)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Go from point to point with the arrows, open one with Return."""
        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1}
        key = Qt.Key(event.key())
        if key in steps and self.spots:
            first = 0 if steps[key] > 0 else len(self.spots) - 1
            self._point_at((self._hot + steps[key]) % len(self.spots) if self._hot >= 0 else first)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and 0 <= self._hot < len(self.spots):
            self._open(self._hot)
        else:
            super().keyPressEvent(event)

    def _open(self, place: int) -> None:
        if self.spots[place].files:
            self.opened.emit(self.spots[place].files)

    # ------------------------------------------------------------------ axes
    def _ground(self, painter: QPainter, frame: AxesFrame) -> None:
        look, number, axes = self._shared.look, self._shared.display.number, frame.axes
        metrics = QFontMetricsF(painter.font())
        painter.setPen(look.colour("muted"))
        painter.drawText(QPointF(4, metrics.ascent()), tr(axes.y_words))
        for value, decimals in ticks(*axes.y, 6):
            y = frame.y(value)
            painter.setPen(QPen(look.colour("line"), 1))
            painter.drawLine(QPointF(frame.box.left(), y), QPointF(frame.box.right(), y))
            painter.setPen(look.colour("muted"))
            text = number(value, decimals)
            across = frame.box.left() - 8 - metrics.horizontalAdvance(text)
            painter.drawText(QPointF(across, y + metrics.ascent() / 2 - 2), text)
        if axes.x_names:
            self._names(painter, frame)
            return
        for value, decimals in ticks(*axes.x, 6):
            text = number(value, decimals)
            across = frame.x(value) - metrics.horizontalAdvance(text) / 2
            painter.drawText(QPointF(across, frame.box.bottom() + metrics.height() + 2), text)
        across = frame.box.center().x() - metrics.horizontalAdvance(tr(axes.x_words)) / 2
        painter.drawText(QPointF(across, frame.box.bottom() + 2.2 * metrics.height()), tr(axes.x_words))

    def _legend_rows(self, axes: Axes, metrics: QFontMetricsF) -> list[list[int]]:
        """Give which words of the legend stand in which line: beside the picture's title while there is room."""
        rows: list[list[int]] = [[]]
        whole = self.width() - 20 + LEGEND_PX - 2 * MARK_PX  # no gap before the first mark
        left = whole - LEGEND_PX - metrics.horizontalAdvance(tr(axes.y_words))
        wide = [metrics.horizontalAdvance(word) + LEGEND_PX for word in axes.legend]
        if sum(wide) > left and wide:
            rows, left = [[], []], whole
        for place, width in enumerate(wide):
            if width > left and rows[-1]:
                rows, left = [*rows, []], whole
            rows[-1].append(place)
            left -= width
        return rows

    def _legend(self, painter: QPainter, frame: AxesFrame, rows: list[list[int]]) -> None:
        """Say above the picture what its marks are."""
        metrics = QFontMetricsF(painter.font())
        for line, row in enumerate(rows):
            right, foot = frame.box.right(), metrics.ascent() + line * metrics.height()
            for place in reversed(row):
                word = frame.axes.legend[place]
                right -= metrics.horizontalAdvance(word)
                painter.setPen(self._shared.look.colour("text"))
                painter.drawText(QPointF(right, foot), word)
                self.mark(painter, QPointF(right - MARK_PX, foot - metrics.xHeight() / 2), place)
                right -= LEGEND_PX

    def _names(self, painter: QPainter, frame: AxesFrame) -> None:
        """Write names below their places; where all are too many for the width, every second, third ..."""
        look, names = self._shared.look, frame.axes.x_names
        each = frame.box.width() / len(names)
        smallest = QFontMetricsF(look.font(LEAST_PX / look.scale, bold=True))
        widest = max(smallest.horizontalAdvance(text) for _, name, about in names for text in (name, tr(about)))
        step = min(len(names), max(1, math.ceil((widest + 6) / each)))
        room = each * step - 6
        for at, name, about in names[::step]:
            top = frame.box.bottom() + 4
            for text, px, colour in ((name, 14, "text"), (tr(about), 12.5, "muted")):
                font = small_enough(look, px, text, room, bold=colour == "text")
                metrics = QFontMetricsF(font)
                painter.setFont(font)
                painter.setPen(look.colour(colour))
                short = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room + 1)
                painter.drawText(
                    QPointF(frame.x(at) - metrics.horizontalAdvance(short) / 2, top + metrics.ascent()), short
                )
                top += metrics.height()
        painter.setFont(look.font(13))

    # ------------------------------------------------------------------ marks
    def dot(self, painter: QPainter, at: QPointF, colour: str = "text", size: float = DOT) -> None:
        """Draw a disc with a rim that parts it from its neighbours."""
        painter.setPen(QPen(self._shared.look.colour("surface"), 1))
        painter.setBrush(self._shared.look.colour(colour))
        painter.drawEllipse(at, size, size)

    def square(self, painter: QPainter, at: QPointF, colour: str, size: float = DOT + 2) -> None:
        """Draw a square: a signal."""
        painter.setPen(QPen(self._shared.look.colour("surface"), 1))
        painter.setBrush(self._shared.look.colour(colour))
        painter.drawRect(QRectF(at.x() - size, at.y() - size, 2 * size, 2 * size))

    def curve(
        self, painter: QPainter, points: Iterable[QPointF], colour: str, width: float, *, dashed: bool = False
    ) -> None:
        """Draw a line through points."""
        style = Qt.PenStyle.DashLine if dashed else Qt.PenStyle.SolidLine
        painter.setPen(QPen(self._shared.look.colour(colour), width, style))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF(list(points)))

    def area(self, painter: QPainter, low: Sequence[QPointF], high: Sequence[QPointF], colour: QColor) -> None:
        """Fill the area between two lines."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour)
        painter.drawPolygon(QPolygonF([*low, *reversed(high)]))

    def upright(self, painter: QPainter, frame: AxesFrame, x: float, low: float, high: float, colour: str) -> None:
        """Draw an interval with feet, ``x`` on the screen."""
        painter.setPen(QPen(self._shared.look.colour(colour), 2))
        for y in (frame.y(low), frame.y(high)):
            painter.drawLine(QPointF(x - 5, y), QPointF(x + 5, y))
        painter.drawLine(QPointF(x, frame.y(low)), QPointF(x, frame.y(high)))

    def note(self, painter: QPainter, frame: AxesFrame, at: QPointF, text: str, colour: str = "text") -> None:
        """Write beside a point, inside the picture."""
        text = tr(text)
        painter.setFont(self._shared.look.font(13, bold=True))
        metrics = QFontMetricsF(painter.font())
        wide = metrics.horizontalAdvance(text)
        left = min(max(at.x(), frame.box.left() + 2), frame.box.right() - wide - 2)
        ground = self._shared.look.colour("surface", 0.85)
        foot = min(max(at.y(), frame.box.top() + metrics.ascent() + 2), frame.box.bottom() - metrics.descent() - 2)
        painter.fillRect(QRectF(left - 3, foot - metrics.ascent(), wide + 6, metrics.height()), ground)
        painter.setPen(self._shared.look.colour(colour))
        painter.drawText(QPointF(left, foot), text)


def ticks(low: float, high: float, about: int) -> list[tuple[float, int]]:
    """Give round values within a range, with the decimals that they need.

    >>> ticks(0.1, 0.52, 4)
    [(0.2, 1), (0.4, 1)]
    """
    step = tick_step(max(high - low, 1e-9), about)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [(round(index * step, 12), decimals) for index in range(first, last + 1)]


def rounded_range(values: Iterable[float], room: float = 0.08) -> tuple[float, float]:
    """Give a range of round ends that holds all values and some room."""
    finite = [value for value in values if math.isfinite(value)]
    least, greatest = (min(finite), max(finite)) if finite else (0.0, 1.0)
    wide = max(greatest - least, abs(greatest) * 0.02, 1e-9)
    step = tick_step((1 + 2 * room) * wide, 5)
    return math.floor((least - room * wide) / step) * step, math.ceil((greatest + room * wide) / step) * step
