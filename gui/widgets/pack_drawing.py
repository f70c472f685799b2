"""The packs of an axle as a drawing to click: half a section, side gears in the middle, not to scale.

A friction disc reaches down to the side gear's hub, a steel plate up to the case, as they are keyed to them; a disc
spring stands oblique, a shim is thin. Keys: Left and Right pick the neighbour, Delete takes out.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.look import Look
    from logger.recordings.axles import PackPart

WIDTHS = {"friction disc": 1.0, "steel plate": 1.0, "disc spring": 1.3, "shim": 0.55}
WIDEST_PX = 34.0  # of a disc: few parts are not drawn as barrels
GEAR_PX = 40.0  # of a side gear
MARGIN_PX = 12.0


class PackDrawing(QWidget):
    """Both packs; emits ``picked`` with side and place (-1: the side alone) and ``removed``."""

    picked = Signal(str, int)
    removed = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._packs: dict[str, Sequence[PackPart]] = {"left": (), "right": ()}
        self._at: tuple[str, int] = ("left", -1)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.update)
        self.show_packs((), (), "left", -1)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for discs that can be hit with a glove."""
        return QSize(420, round(176 * self._look.scale))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Be no narrower than a side gear and some parts."""
        return QSize(260, self.sizeHint().height())

    def show_packs(self, left: Sequence[PackPart], right: Sequence[PackPart], side: str, place: int) -> None:
        """Show other packs, or another pick."""
        self._packs, self._at = {"left": left, "right": right}, (side, place)
        counts = ", ".join(tr(f"{name} {len(parts)} parts") for name, parts in self._packs.items())
        on = f"; {tr(f'chosen part: {side} {place + 1}, {self._packs[side][place].kind}')}" if place >= 0 else ""
        self.setAccessibleName(f"{tr('Packs')}: {counts}{on}")
        self.updateGeometry()
        self.update()

    # ------------------------------------------------------------------ geometry
    def boxes(self) -> list[tuple[str, int, QRectF]]:
        """Give side, place and box of every part, in pixels."""
        middle, top, height = self.width() / 2, MARGIN_PX + 18, self.height() - 2 * MARGIN_PX - 40
        room = middle - GEAR_PX - MARGIN_PX
        widest = max(sum(WIDTHS[p.kind] for p in parts) for parts in self._packs.values()) or 1.0
        unit = min(WIDEST_PX * self._look.scale, room / widest)
        found = []
        for side, sign in (("left", -1), ("right", 1)):
            x = middle + sign * GEAR_PX
            for place, part in enumerate(self._packs[side]):
                width = unit * WIDTHS[part.kind]
                found.append((side, place, QRectF(x if sign > 0 else x - width, top, width, height)))
                x += sign * width
        return found

    # ------------------------------------------------------------------ hand and keys
    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Pick the part that is pressed, or the side."""
        at = event.position()
        for side, place, box in self.boxes():
            if box.left() <= at.x() < box.right():
                self.picked.emit(side, place)
                return
        self.picked.emit("left" if at.x() < self.width() / 2 else "right", -1)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Pick the neighbour, or take the picked part out."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.removed.emit()
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            row = [("left", place) for place in reversed(range(len(self._packs["left"])))]
            row += [("right", place) for place in range(len(self._packs["right"]))]
            step = 1 if event.key() == Qt.Key.Key_Right else -1
            if row:
                now = row.index(self._at) if self._at in row else (-1 if step > 0 else len(row))
                self.picked.emit(*row[max(0, min(len(row) - 1, now + step))])
        else:
            super().keyPressEvent(event)

    # ------------------------------------------------------------------ painting
    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint case, shaft, side gears and all parts."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self._look
        frame = QRectF(MARGIN_PX, MARGIN_PX + 18, self.width() - 2 * MARGIN_PX, self.height() - 2 * MARGIN_PX - 40)
        middle = self.width() / 2
        painter.setFont(look.font(14, bold=True))
        for side, x, align in (
            ("left", frame.left(), Qt.AlignmentFlag.AlignLeft),
            ("right", middle, Qt.AlignmentFlag.AlignRight),
        ):
            painter.setPen(look.colour("accent" if self._at[0] == side else "muted"))
            box = QRectF(x, 2, frame.right() - middle, 26)
            painter.drawText(box, align | Qt.AlignmentFlag.AlignVCenter, tr(side.capitalize()))
        self._body(painter, frame, middle)
        for side, place, box in self.boxes():
            self._part(painter, self._packs[side][place], box.adjusted(1, 0, -1, 0), on=(side, place) == self._at)
        painter.setFont(look.font(13))
        painter.setPen(look.colour("muted"))
        foot = QRectF(frame.left(), frame.bottom() + 8, frame.width(), 24)
        painter.drawText(foot, Qt.AlignmentFlag.AlignCenter, tr("Case above, side gears below; not to scale"))
        if self.hasFocus():
            painter.setPen(QPen(look.colour("accent"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)

    def _body(self, painter: QPainter, frame: QRectF, middle: float) -> None:
        """Paint the case over the packs, the axis under them and both side gears between them."""
        look = self._look
        painter.setPen(QPen(look.colour("edge"), 3))
        painter.drawLine(frame.topLeft(), frame.topRight())
        painter.setPen(QPen(look.colour("edge"), 1, Qt.PenStyle.DashDotLine))
        painter.drawLine(frame.bottomLeft(), frame.bottomRight())
        painter.setPen(QPen(look.colour("edge"), 1.5))
        painter.setBrush(look.colour("raised"))
        height = frame.height()
        for sign in (-1, 1):
            near, far = middle + sign * 5, middle + sign * (GEAR_PX - 3)
            top = frame.top() + height * 0.3
            painter.drawPolygon(
                [
                    QPointF(far, frame.top() + height * 0.14),
                    QPointF(near, top),
                    QPointF(near, frame.bottom()),
                    QPointF(far, frame.bottom()),
                ]
            )

    def _part(self, painter: QPainter, part: PackPart, box: QRectF, *, on: bool) -> None:
        look, height = self._look, box.height()
        painter.setPen(QPen(look.colour("accent" if on else "text"), 2.5 if on else 1.2))
        painter.setBrush(look.colour("accent") if on else look.colour("raised"))
        if part.kind == "friction disc":
            painter.drawRect(box.adjusted(0, height * 0.2, 0, 0))
            if not on:
                painter.setBrush(Qt.BrushStyle.BDiagPattern)
                painter.drawRect(QRectF(box.left(), box.top() + height * 0.2, box.width(), height * 0.45))
        elif part.kind == "steel plate":
            painter.setBrush(look.colour("accent") if on else look.colour("surface"))
            painter.drawRect(box.adjusted(0, 0, 0, -height * 0.35))
        elif part.kind == "shim":
            painter.setBrush(look.colour("accent" if on else "muted"))
            painter.drawRect(box.adjusted(box.width() * 0.2, height * 0.08, -box.width() * 0.2, -height * 0.3))
        else:
            lean = box.width() * 0.55
            painter.drawPolygon(
                [
                    QPointF(box.left(), box.top() + height * 0.1),
                    QPointF(box.right() - lean, box.top() + height * 0.1),
                    QPointF(box.right(), box.top() + height * 0.65),
                    QPointF(box.left() + lean, box.top() + height * 0.65),
                ]
            )
