"""Parts that never cut what they say: words that get smaller, rows that wrap, columns that become fewer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QLabel, QLayout, QLayoutItem, QWidget

from gui.translation import tr

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from PySide6.QtGui import QFont, QResizeEvent

    from gui.look import Look

LEAST_PX = 9.0  # the smallest letters that are still read
WRAP = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignLeft)


def wrapped_height(text: str, font: QFont, width: float) -> float:
    """Give the height that a text takes in a width, words wrapped."""
    return QFontMetricsF(font).boundingRect(QRectF(0, 0, max(1.0, width), 1e5), WRAP, text).height()


def small_enough(look: Look, px: float, text: str, room: float, *, bold: bool = False) -> QFont:
    """Give a font in which a text fits a width: smaller letters where it must be, down to what is still read."""
    font = look.font(px, bold=bold)
    while px * look.scale > LEAST_PX and QFontMetricsF(font).horizontalAdvance(text) > room:
        px -= 1 / look.scale
        font = look.font(px, bold=bold)
    return font


class FittedText(QLabel):
    """One or two lines as large as they fit, in a height that stays: nothing below moves when the words change.

    Args:
        look: Fonts.
        px, least_px: Usual and smallest height of the letters at text scale 1.
    """

    LINES = 2

    def __init__(self, look: Look, px: float = 26, least_px: float = 15) -> None:
        super().__init__("")
        self._look, self._px, self._least_px = look, px, least_px
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        look.changed.connect(self.fit)

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Say something else."""
        text = tr(text)
        if text != self.text():
            super().setText(text)
            self.fit()

    def fit(self) -> None:
        """Take the largest letters with which the words fit."""
        px, width = self._px, max(60, self.width() - 8)
        room = self.LINES * QFontMetricsF(self._look.font(px, bold=True)).lineSpacing()
        while px > self._least_px and not self._fits(px, width, room):
            px -= 1
        self.setFont(self._look.font(px, bold=True))
        needed = wrapped_height(self.text() or " ", self._look.font(px, bold=True), width)
        self.setFixedHeight(round(max(room, needed)) + 2)

    def _fits(self, px: float, width: float, room: float) -> bool:
        font = self._look.font(px, bold=True)
        longest = max((QFontMetricsF(font).horizontalAdvance(word) for word in self.text().split()), default=0.0)
        return longest <= width and wrapped_height(self.text(), font, width) <= room

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for little width."""
        return QSize(80, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Fit anew."""
        super().resizeEvent(event)
        self.fit()


class FlowLayout(QLayout):
    """Puts parts beside each other, and those that do not fit into further rows; ``right`` puts them to the right."""

    def __init__(self, parent: QWidget | None = None, gap: int = 8, *, right: bool = False) -> None:
        super().__init__(parent)
        self._right = right
        self._items: list[QLayoutItem] = []
        self.setContentsMargins(0, 0, 0, 0)
        self.setSpacing(gap)

    def addItem(self, item: QLayoutItem) -> None:  # noqa: N802 - Qt's name
        """Take a part."""
        self._items.append(item)

    def count(self) -> int:
        """Give how many parts there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:  # noqa: N802 - Qt's name
        """Give a part."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:  # noqa: N802 - Qt's name
        """Take a part out."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:  # noqa: N802 - Qt's name
        """Ask for no more than is needed."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:  # noqa: N802 - Qt's name
        """Say that fewer columns need more rows."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """Give the height of all rows."""
        return self._place(QRect(0, 0, width, 0), really=False)

    def setGeometry(self, box: QRect) -> None:  # noqa: N802 - Qt's name
        """Lay the parts out."""
        super().setGeometry(box)
        self._place(box, really=True)

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for one row."""
        shown = [item.sizeHint() for item in self._items if not item.isEmpty()]
        gaps = self.spacing() * max(0, len(shown) - 1)
        return QSize(sum(s.width() for s in shown) + gaps, max((s.height() for s in shown), default=0))

    def minimumSize(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for the widest part."""
        shown = [item.minimumSize() for item in self._items if not item.isEmpty()]
        return QSize(max((s.width() for s in shown), default=0), max((s.height() for s in shown), default=0))

    def _place(self, box: QRect, *, really: bool) -> int:
        y = box.y()
        for row in self._rows(box.width()):
            high = max(hint.height() for _, hint in row)
            wide = sum(hint.width() + self.spacing() for _, hint in row) - self.spacing()
            x = box.x() + (max(0, box.width() - wide) if self._right else 0)
            for item, hint in row if really else ():
                item.setGeometry(QRect(QPoint(x, y + (high - hint.height()) // 2), hint))
                x += hint.width() + self.spacing()
            y += high + self.spacing()
        return max(0, y - self.spacing() - box.y())

    def _rows(self, width: int) -> Iterator[list[tuple[QLayoutItem, QSize]]]:
        """Give the rows: their parts, each with its size."""
        row: list[tuple[QLayoutItem, QSize]] = []
        taken = 0
        for item in self._items:
            if item.isEmpty():
                continue
            hint = item.sizeHint().expandedTo(item.minimumSize())
            if hint.width() > width and item.hasHeightForWidth():
                hint = QSize(width, item.heightForWidth(width))
            if row and taken + hint.width() > width:
                yield row
                row, taken = [], 0
            row.append((item, hint))
            taken += hint.width() + self.spacing()
        if row:
            yield row


class Columns(QWidget):
    """Puts parts into as many columns as fit, at most so many; each keeps the width that it needs.

    Args:
        parts: In their order.
        most: Columns in a wide window.
        least_px: Narrowest column at text scale 1.
    """

    def __init__(self, look: Look, parts: Sequence[QWidget], most: int, least_px: int = 150, gap: int = 10) -> None:
        super().__init__()
        self._look, self._parts, self._most, self._least_px, self._now = look, list(parts), most, least_px, 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(gap)
        self._grid.setVerticalSpacing(gap)
        self._arrange()
        look.changed.connect(self._arrange)

    def _arrange(self) -> None:
        widest = max([self._least_px * self._look.scale, *(p.minimumSizeHint().width() for p in self._parts)])
        room = self.width() + self._grid.horizontalSpacing()
        columns = max(1, min(self._most, int(room / (widest + self._grid.horizontalSpacing()))))
        if columns == self._now:
            return
        self._now = columns
        for part in self._parts:
            self._grid.removeWidget(part)
        for place, part in enumerate(self._parts):
            self._grid.addWidget(part, place // columns, place % columns)
        for at in range(self._most):
            self._grid.setColumnStretch(at, 1 if at < columns else 0)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for one column."""
        return QSize(
            max((p.minimumSizeHint().width() for p in self._parts), default=0), super().minimumSizeHint().height()
        )

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Arrange anew."""
        super().resizeEvent(event)
        self._arrange()


class Beside(QWidget):
    """Puts parts beside each other where they fit, and below each other where they do not.

    Args:
        parts: (QWidget, int); In their order, each with its share of the width.
    """

    def __init__(self, parts: Sequence[tuple[QWidget, int]], gap: int = 16) -> None:
        super().__init__()
        self._parts = [part for part, _share in parts]
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(gap)
        for part, share in parts:
            self._row.addWidget(part, share)

    def _widths(self) -> list[int]:
        return [part.minimumSizeHint().width() for part in self._parts]

    def _arrange(self) -> None:
        fits = sum(self._widths()) + self._row.spacing() * (len(self._parts) - 1) <= self.width()
        way = QBoxLayout.Direction.LeftToRight if fits else QBoxLayout.Direction.TopToBottom
        if self._row.direction() != way:
            self._row.setDirection(way)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for the widest part."""
        return QSize(max(self._widths(), default=0), super().minimumSizeHint().height())

    def event(self, event: QEvent) -> bool:
        """Arrange anew where the room or what a part needs has changed."""
        if event.type() in (QEvent.Type.Resize, QEvent.Type.LayoutRequest):
            self._arrange()
        return super().event(event)
