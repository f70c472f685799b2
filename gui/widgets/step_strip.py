"""The steps of a test as stops along a line: done, now, to come, excluded, wrong.

Each stop has a shape of its own besides its colour: a filled square with a tick is done, a large ring with its number
is now, a small ring is to come, a dash is excluded, and a cross is wrong.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.models.flow import Stand
from gui.translation import tr
from gui.widgets.fitting import small_enough

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.look import Look


MARGIN = 18.0


class StepStrip(QWidget):
    """Paints the steps; pressing is done with the one large button, so that nothing here is a target."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._steps: Sequence[tuple[str, Stand, str, bool]] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Steps of the test"))
        look.changed.connect(self.updateGeometry)

    def show_steps(self, steps: Sequence[tuple[str, Stand, str, bool]]) -> None:
        """Show name, stand, a few words of detail per step, and whether those words warn."""
        if steps == self._steps:
            return
        self._steps = steps
        self.setAccessibleDescription(
            "; ".join(f"{tr(name)}: {tr(stand)}{f', {tr(detail)}' * warns}" for name, stand, detail, warns in steps)
        )
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for a stop and two lines."""
        return QSize(600, round(62 * self._look.scale))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint line, stops and words."""
        if not self._steps:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        y, radius = self.height() / 2, 13 * self._look.scale
        painter.setPen(QPen(self._look.colour("line"), 2))
        painter.drawLine(QPointF(MARGIN, y), QPointF(self.width() - MARGIN, y))
        left = MARGIN
        for index, (width, worded) in enumerate(self._shares()):
            name, stand, detail, warns = self._steps[index]
            self._stop(painter, QPointF(left + radius, y), radius, index, stand)
            colour = "outside" if stand is Stand.WRONG else "close" if warns else "muted"
            if worded:
                box = QRectF(left + 2 * radius + 9, 0, width - 2 * radius - 15, self.height())
                self._words(painter, box, name, stand, (detail, colour))
            left += width

    def _shares(self) -> list[tuple[float, bool]]:
        """Give each step's width and whether its words are shown: where not all fit, those that matter now."""
        look, stop = self._look, 26 * self._look.scale + 15
        needs = []
        for name, stand, detail, _ in self._steps:
            bold = look.font(15, bold=stand is Stand.NOW)
            widest = max(
                QFontMetricsF(bold).horizontalAdvance(name), QFontMetricsF(look.font(12.5)).horizontalAdvance(detail)
            )
            needs.append(widest + stop + 6)
        room = self.width() - 2 * MARGIN
        matter = [stand in {Stand.NOW, Stand.WRONG} or warns for _, stand, _, warns in self._steps]
        for worded in ([True] * len(needs), matter, [stand is Stand.NOW for _, stand, _, _ in self._steps]):
            widths = [need if shown else stop for need, shown in zip(needs, worded, strict=True)]
            if sum(widths) <= room:
                break
        spare = max(0.0, room - sum(widths)) / len(widths)
        return [(width + spare, shown) for width, shown in zip(widths, worded, strict=True)]

    def _stop(self, painter: QPainter, at: QPointF, radius: float, index: int, stand: Stand) -> None:
        look = self._look
        colour = look.colour({Stand.NOW: "accent", Stand.DONE: "accent", Stand.WRONG: "outside"}.get(stand, "edge"))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.colour("surface"))
        painter.drawRect(QRectF(at.x() - radius - 5, at.y() - radius - 2, 2 * radius + 10, 2 * radius + 4))
        painter.setPen(QPen(colour, 2.5))
        if stand is Stand.DONE:
            painter.setBrush(colour)
            side = radius * 1.6
            painter.drawRoundedRect(QRectF(at.x() - side / 2, at.y() - side / 2, side, side), 4, 4)
            painter.setPen(QPen(look.colour("on_accent"), 2.5, c=Qt.PenCapStyle.RoundCap))
            painter.drawPolyline([at + QPointF(-radius * 0.4, 0), at + QPointF(-radius * 0.1, radius * 0.35)])
            painter.drawLine(at + QPointF(-radius * 0.1, radius * 0.35), at + QPointF(radius * 0.42, -radius * 0.35))
            return
        if stand is Stand.SKIPPED:
            painter.drawLine(at + QPointF(-radius * 0.6, 0), at + QPointF(radius * 0.6, 0))
            return
        painter.setBrush(look.colour("surface"))
        painter.drawEllipse(at, radius, radius)
        if stand is Stand.WRONG:
            arm = radius * 0.4
            painter.drawLine(at + QPointF(-arm, -arm), at + QPointF(arm, arm))
            painter.drawLine(at + QPointF(-arm, arm), at + QPointF(arm, -arm))
            return
        painter.setFont(look.font(14, bold=stand is Stand.NOW))
        painter.setPen(look.colour("accent" if stand is Stand.NOW else "muted"))
        box = QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(index + 1))

    def _words(self, painter: QPainter, box: QRectF, name: str, stand: Stand, detail: tuple[str, str]) -> None:
        look = self._look
        words, about, bold = tr(name), tr(detail[0]), stand is Stand.NOW
        font = small_enough(look, 15, words, box.width(), bold=bold)
        lines = [(font, words, "text" if stand in {Stand.NOW, Stand.DONE, Stand.WRONG} else "muted")]
        if about:
            lines.append((small_enough(look, 12.5, about, box.width()), about, detail[1]))
        heights = [QFontMetricsF(f).height() for f, _, _ in lines]
        widest = max(QFontMetricsF(f).horizontalAdvance(t) for f, t, _ in lines) + 8
        top = box.center().y() - sum(heights) / 2
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(look.colour("surface"))
        painter.drawRect(QRectF(box.left() - 4, top, min(widest, box.width() + 4), sum(heights)))
        for (line_font, text, colour), height in zip(lines, heights, strict=True):
            painter.setFont(line_font)
            painter.setPen(look.colour(colour))
            short = QFontMetricsF(line_font).elidedText(text, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(QRectF(box.left(), top, box.width() + 2, height), Qt.AlignmentFlag.AlignVCenter, short)
            top += height
