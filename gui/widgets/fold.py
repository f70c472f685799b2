"""A part of a form that is folded until it is wanted: a line that says what is in it, and opens it."""

from __future__ import annotations

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gui.translation import tr
from gui.widgets.parts import column

MARK = 22  # pixels: room for the arrowhead


class _Head(QPushButton):
    """The line, with an arrowhead that points right while it is folded and down while it is open."""

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint the button and its arrowhead."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(self.foregroundRole()), 2))
        at = QPointF(self.width() - MARK, self.height() / 2)
        tips = ((-5, -3), (0, 3), (5, -3)) if self.isChecked() else ((-3, -5), (3, 0), (-3, 5))
        painter.drawPolyline([at + QPointF(x, y) for x, y in tips])


class Fold(QWidget):
    """A head that opens and closes a body.

    Args:
        title: What is in it.
        inside: The body; hidden at first.
    """

    def __init__(self, title: str, inside: QWidget) -> None:
        super().__init__()
        self._title, self._summary, self.inside = title, "", inside
        self.head = _Head()
        self.head.setProperty("role", "fold")
        self.head.setCheckable(True)
        self.head.setAutoDefault(False)
        self.head.toggled.connect(self._toggled)
        layout: QVBoxLayout = column(self, gap=8)
        layout.addWidget(self.head)
        layout.addWidget(inside)
        inside.hide()
        self.say("")

    def say(self, summary: str) -> None:
        """Say beside the title what is in it."""
        self._summary = summary
        text = f"{tr(self._title)}  ·  {tr(summary)}" if summary else tr(self._title)
        self.head.setText(text.replace("&", "&&"))
        self.head.setAccessibleName(f"{text}, {tr('open' if self.head.isChecked() else 'folded')}")

    def open(self, *, on: bool = True) -> None:
        """Open or fold it."""
        self.head.setChecked(on)

    def _toggled(self, on: bool) -> None:
        self.inside.setVisible(on)
        self.say(self._summary)
