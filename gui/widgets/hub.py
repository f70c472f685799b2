"""The hub as a drawing: studs on their circle, the lever on one of them, the angle between lever and radius.

Drawn like a workshop drawing: not to scale, lengths broken where they do not fit, dimensions written beside. A stud is
chosen by pressing it; the lever's angle by dragging its end or with the arrow keys.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from gui.look import Look

LOWEST_PX = 80  # below this the dimensions would stand on the hub
STEP_DEG = 5.0  # of the angle, by key or drag: as well as anyone sets a lever by eye


@dataclass(frozen=True, slots=True)
class HubView:
    """What the drawing shows."""

    fixture: str = ""  # the kind of fixture, as in a lever's record; empty before one is chosen
    studs: int = 5  # how many studs
    angle_deg: float = 0.0  # between the lever and the line from centre to stud, 0 = pointing straight out
    # length, circle, factor: written beside; empty where not known
    length: str = ""
    circle: str = ""
    factor: str = ""
    chord: str = ""  # the stud-to-stud distance, where that was measured
    apart: int = 1  # how many studs apart these two are


class HubDrawing(QWidget):
    """Hub and lever; emits ``angle_picked`` in degrees and ``studs_picked``."""

    angle_picked = Signal(float)
    studs_picked = Signal(int)

    def __init__(self, look: Look, *, editable: bool = False) -> None:
        super().__init__()
        self._look, self._view, self._editable, self._drag, self._stud = look, HubView(), editable, False, 0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 96)
        if editable:
            self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.update)
        self.show_view(self._view)

    def show_view(self, view: HubView) -> None:
        """Show another fixture."""
        self._view = view
        self._stud = min(self._stud, max(0, view.studs - 1))
        words = [f"{tr('Hub drawing')}: {tr(view.fixture or 'no fixture yet')}"]
        if view.fixture in {"one stud", "cross-bar"}:
            words.append(tr(f"{view.studs} studs, lever {view.angle_deg:g}° off the radius"))
        words += [f"{tr('stud circle')} {view.circle}"] if view.circle else []
        self.setAccessibleName(", ".join(words + ([f"{tr('factor')} {view.factor}"] if view.factor else [])))
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for hub and lever; on a card it takes what the rows leave."""
        return QSize(320, 200 if self._editable else 0)

    # Geometry: the hub's centre and its circles, in pixels.
    def _frame(self) -> tuple[QPointF, float]:
        radius = min(self.height() * 0.36, self.width() * 0.24)
        # On a low drawing the circle's diameter is written across the bottom, so the hub moves up.
        aside = 1.9 if self._measured else 1.45  # room for a distance written beside the hub
        return QPointF(radius * aside, self.height() * (0.53 if self.height() > 150 else 0.45)), radius

    @property
    def _measured(self) -> bool:
        """Whether the stud-to-stud distance is shown: where it is typed in, not on the job card."""
        return self._editable and bool(self._view.chord) and self._view.fixture in {"one stud", "cross-bar"}

    def _turn(self) -> float:
        return -2 * math.pi * self._stud / max(1, self._view.studs)

    def _stud_at(self, index: int) -> QPointF:
        centre, radius = self._frame()
        angle = 2 * math.pi * index / max(1, self._view.studs) + self._turn()
        return centre + QPointF(math.cos(angle), -math.sin(angle)) * radius * 0.62

    def _lever(self) -> tuple[QPointF, QPointF]:
        centre, radius = self._frame()
        view = self._view
        start = self._stud_at(self._stud) if view.fixture == "one stud" else centre
        angle = math.radians(view.angle_deg) if view.fixture in {"one stud", "cross-bar"} else 0.0
        wanted = self.width() - start.x() - 16
        reach = max(radius * 1.1, min(wanted, self.width() * 0.62))
        direction = QPointF(math.cos(angle), -math.sin(angle))
        if direction.y() < 0:
            reach = min(reach, (start.y() - 14) / -direction.y())
        elif direction.y() > 0:
            reach = min(reach, (self.height() - 14 - start.y()) / direction.y())
        if direction.x() < 0:
            reach = min(reach, (start.x() - 10) / -direction.x())
        return start, start + direction * max(24.0, reach)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint hub, lever and dimensions, where they can be read."""
        if self.height() < LOWEST_PX:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        centre, radius = self._frame()
        self._hub(painter, centre, radius)
        if self._measured:
            self._chord(painter, centre, radius)
        if self._view.fixture:
            start, end = self._lever()
            if self._view.fixture == "couple":
                start = centre - (end - centre) * (radius * 1.3 / max(1.0, (end - centre).manhattanLength()))
            self._bar(painter, start, end)
            self._dimensions(painter, start, end)
        if self.hasFocus():
            painter.setPen(QPen(self._look.colour("accent"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)

    def _hub(self, painter: QPainter, centre: QPointF, radius: float) -> None:
        look, view = self._look, self._view
        painter.setPen(QPen(look.colour("edge"), 1.5))
        painter.setBrush(look.colour("raised"))
        painter.drawEllipse(centre, radius, radius)
        painter.setBrush(look.colour("surface"))
        painter.drawEllipse(centre, radius * 0.26, radius * 0.26)
        chain = QPen(look.colour("edge"), 1, Qt.PenStyle.DashDotLine)
        painter.setPen(chain)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(centre, radius * 0.62, radius * 0.62)
        for dx, dy in ((1.16, 0.0), (0.0, 1.16)):
            painter.drawLine(centre - QPointF(dx, dy) * radius, centre + QPointF(dx, dy) * radius)
        size = max(4.0, radius * min(0.13, 0.9 / max(3, view.studs)))
        for index in range(view.studs):
            used = view.fixture == "one stud" and index == self._stud
            painter.setPen(QPen(look.colour("accent" if used else "edge"), 2))
            painter.setBrush(look.colour("accent" if used else "surface"))
            painter.drawEllipse(self._stud_at(index), size, size)

    def _chord(self, painter: QPainter, centre: QPointF, radius: float) -> None:
        """Draw the measured stud-to-stud distance of studs that carry no lever, its figure outside."""
        view, look = self._view, self._look
        first = self._stud + max(1, (view.studs - view.apart) // 2)
        start, end = self._stud_at(first), self._stud_at(first + view.apart)
        painter.setPen(QPen(look.colour("text"), 2))
        painter.drawLine(start, end)
        painter.setBrush(look.colour("text"))
        for at in (start, end):
            painter.drawEllipse(at, 3, 3)
        middle, along = (start + end) / 2, end - start
        away = middle - centre if view.apart * 2 != view.studs else QPointF(along.y(), -along.x())
        metrics = QFontMetricsF(look.font(13))
        painter.setFont(look.font(13))
        out = away / max(1.0, math.hypot(away.x(), away.y())) * radius
        self._label(painter, metrics, centre + out + QPointF(0, metrics.ascent() / 2), view.chord)

    def _bar(self, painter: QPainter, start: QPointF, end: QPointF) -> None:
        """Draw the lever: an outline with a break near its middle and a grip at its end."""
        look = self._look
        along = end - start
        length = math.hypot(along.x(), along.y()) or 1.0
        unit = along / length
        across = QPointF(-unit.y(), unit.x())
        width = 5.0
        painter.setPen(QPen(look.colour("accent"), 2))
        mid = length * 0.6
        for first, last in ((0.0, mid - 5), (mid + 5, length)):
            for side in (-width, width):
                painter.drawLine(start + unit * first + across * side, start + unit * last + across * side)
        for at in (mid - 5, mid + 5):
            painter.drawLine(start + unit * (at - 4) + across * 9, start + unit * (at + 4) - across * 9)
        painter.drawLine(end + across * width, end - across * width)
        tip = end - across * 0
        painter.setBrush(look.colour("accent"))
        arrow = tip - across * 12
        painter.drawLine(tip, tip - across * 30)
        _head(painter, tip - across * 34, -across, look.colour("accent"))
        del arrow

    def _dimensions(self, painter: QPainter, start: QPointF, end: QPointF) -> None:
        look, view = self._look, self._view
        font = look.font(13)
        painter.setFont(font)
        metrics = QFontMetricsF(font)
        painter.setPen(look.colour("text"))
        middle = start + (end - start) * 0.36
        if view.length:
            lower = 20 if view.angle_deg >= 0 else -12
            at = QPointF(middle.x(), middle.y() + lower)
            self._label(painter, metrics, at, view.length)
        if self._editable and view.fixture in {"one stud", "cross-bar"}:
            self._ends(painter, start, end)
        centre, radius = self._frame()
        below = min(self.height() - 6.0, centre.y() + 1.42 * radius)
        if view.circle and view.fixture in {"one stud", "cross-bar"}:
            self._label(painter, metrics, QPointF(centre.x(), below), view.circle)
        if view.fixture == "one stud":
            self._angle(painter, metrics, start, radius)
        if view.factor:
            painter.setFont(look.font(15, bold=True))
            metrics = QFontMetricsF(painter.font())
            left = self.width() - metrics.horizontalAdvance(view.factor) - 8
            painter.setPen(look.colour("accent"))
            painter.drawText(QPointF(left, below), view.factor)

    def _ends(self, painter: QPainter, start: QPointF, end: QPointF) -> None:
        """Name the lever's two ends: between them its length is measured."""
        font = self._look.font(12)
        painter.setFont(font)
        away = QPointF(0, 26 if self._view.angle_deg >= 0 else -18)
        for at, words in ((start, "drive"), (end, "hand")):
            self._label(painter, QFontMetricsF(font), at + away, tr(words))
        painter.setFont(self._look.font(13))

    def _angle(self, painter: QPainter, metrics: QFontMetricsF, start: QPointF, radius: float) -> None:
        look, angle = self._look, self._view.angle_deg
        reach = radius * 0.9
        painter.setPen(QPen(look.colour("muted"), 1, Qt.PenStyle.DashLine))
        painter.drawLine(start, start + QPointF(reach * 1.25, 0))
        painter.setPen(QPen(look.colour("muted"), 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        box = QRectF(start.x() - reach, start.y() - reach, 2 * reach, 2 * reach)
        painter.drawArc(box, 0, round(angle * 16))
        painter.setPen(look.colour("text"))
        text = f"{angle:g}°"
        shift = QPointF(reach + 8, -18 if angle < 12 else 14)
        if angle >= 12 or angle < 0:
            self._label(painter, metrics, start + shift + QPointF(metrics.horizontalAdvance(text) / 2, 4), text)
        else:
            self._label(painter, metrics, start + shift + QPointF(metrics.horizontalAdvance(text) / 2, 2), text)

    def _label(self, painter: QPainter, metrics: QFontMetricsF, middle: QPointF, text: str) -> None:
        width = metrics.horizontalAdvance(text)
        left = min(max(4.0, middle.x() - width / 2), self.width() - width - 4)
        top = min(max(2.0, middle.y() - metrics.ascent()), self.height() - metrics.height() - 1)
        painter.fillRect(QRectF(left - 3, top, width + 6, metrics.height()), self._look.colour("surface"))
        painter.setPen(self._look.colour("text"))
        painter.drawText(QPointF(left, top + metrics.ascent()), text)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Pick a stud, or take hold of the lever."""
        if not self._editable:
            return
        at = event.position()
        distances = [math.hypot(*(at - self._stud_at(i)).toTuple()) for i in range(self._view.studs)]
        if distances and min(distances) < 22 and self._view.fixture == "one stud":
            self._stud = distances.index(min(distances))
            self.update()
            return
        self._drag = self._view.fixture == "one stud"

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Turn the lever."""
        if self._drag:
            away = event.position() - self._stud_at(self._stud)
            angle = math.degrees(math.atan2(-away.y(), away.x()))
            self.angle_picked.emit(round(angle / STEP_DEG) * STEP_DEG)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Let the lever go."""
        self._drag = False

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Turn the lever by keys, and change the studs by + and -."""
        turn = {Qt.Key.Key_Left: STEP_DEG, Qt.Key.Key_Up: STEP_DEG, Qt.Key.Key_Right: -STEP_DEG}
        turn[Qt.Key.Key_Down] = -STEP_DEG
        studs = {Qt.Key.Key_Plus: 1, Qt.Key.Key_Minus: -1}
        key = Qt.Key(event.key())
        if self._editable and key in turn and self._view.fixture == "one stud":
            angle = self._view.angle_deg + turn[key]
            self.angle_picked.emit((angle + 180) % 360 - 180)
        elif self._editable and key in studs:
            self.studs_picked.emit(min(10, max(3, self._view.studs + studs[key])))
        else:
            super().keyPressEvent(event)


def _head(painter: QPainter, tip: QPointF, direction: QPointF, colour: QColor) -> None:
    """Paint an arrowhead."""
    from PySide6.QtGui import QPolygonF

    across = QPointF(-direction.y(), direction.x())
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawPolygon(QPolygonF([tip, tip - direction * 11 + across * 5, tip - direction * 11 - across * 5]))
