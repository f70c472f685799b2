"""The right of the Test page: the job's value so far, and each pull as it is caught."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from analysis.trace.results import DIRECTION_WORDS
from gui.models.caught import pack_means
from gui.models.job import QUANTITY_WORDS
from gui.models.ratio import unjudged_words
from gui.translation import sentence, tr
from gui.widgets.badge import COLOUR_OF, Badge, paint_shape
from gui.widgets.fitting import WRAP, FlowLayout, wrapped_height
from gui.widgets.parts import button, card, column, label, line, scrolled

if TYPE_CHECKING:
    from gui.look import Look
    from gui.models.caught import CaughtPull, ValueSoFar
    from gui.models.display import Display
    from gui.models.run import TestRun
    from gui.shared import Shared

LIST_PX = 56  # of pulls and value that must be seen above the buttons, at text scale 1


class PullRow(QWidget):
    """One caught pull: number, direction, breakaway and rotating torque, result shape; struck through if excluded."""

    pressed = Signal(int)

    def __init__(self, look: Look, display: Display, caught: CaughtPull) -> None:
        super().__init__()
        self._look, self._display, self._caught = look, display, caught
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.show_pull(caught)

    @property
    def number(self) -> int:
        """The pull's number."""
        return self._caught.number

    def show_pull(self, caught: CaughtPull) -> None:
        """Show the pull as it stands."""
        self._caught = caught
        words = [tr(f"Pull {caught.number}"), tr(direction_words(caught.pull.direction))]
        for name, value in (("breakaway", caught.breakaway), ("rotating", caught.rotating)):
            said = self._display.torque(value.nm, value.u95_nm) if value else tr("not found")
            words.append(f"{tr(name)} {said}")
        words.append(tr(f"excluded: {caught.rejected}" if caught.rejected else caught.state))
        self.setAccessibleName(", ".join(word for word in words if word))
        self.setToolTip(
            "\n".join(tr(n) for n in (*caught.notes, f"Excluded: {caught.rejected}" if caught.rejected else "")).strip()
        )
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Give room for two lines, and a third for a note."""
        return QSize(220, self.heightForWidth(max(160, self.width())))

    def hasHeightForWidth(self) -> bool:  # noqa: N802 - Qt's name
        """Say that a note may need more lines."""
        return True

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """Give room for two lines, and for the note as it wraps."""
        note, scale = self._note(), self._look.scale
        below = wrapped_height(note, self._look.font(12.5), width - 66 * scale) + 5 * scale if note else 0.0
        return round(58 * scale + below)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Ask for another height where the width has changed."""
        super().resizeEvent(event)
        self.updateGeometry()

    def _note(self) -> str:
        if self._caught.rejected:
            return tr(f"Excluded: {self._caught.rejected}")
        return sentence(self._caught.notes[0]) if self._caught.notes else ""

    def mousePressEvent(self, _event: QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Tell which pull was pressed."""
        self.pressed.emit(self._caught.number)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint the row."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, caught, scale = self._look, self._caught, self._look.scale
        faded = bool(caught.rejected) or not caught.valid
        painter.setPen(QPen(look.colour("line"), 1))
        painter.drawLine(QPointF(0, self.height() - 0.5), QPointF(self.width(), self.height() - 0.5))
        painter.setFont(look.font(22, bold=True))
        painter.setPen(look.colour("muted" if faded else "text"))
        number = QRectF(0, 0, 32 * scale, 56 * scale)
        painter.drawText(number, Qt.AlignmentFlag.AlignCenter, str(caught.number))
        self._arrow(painter, QPointF(45 * scale, 28 * scale))
        left, width = 62 * scale, self.width() - 62 * scale - 46 * scale
        self._value(painter, QRectF(left, 5 * scale, width, 24 * scale), "B", caught.breakaway, faded)
        self._value(painter, QRectF(left, 29 * scale, width, 24 * scale), "R", caught.rotating, faded)
        state = "" if caught.rejected else caught.state
        if state:
            box = QRectF(self.width() - 44 * scale, 17 * scale, 44 * scale, 22 * scale)
            paint_shape(painter, box, state, look.colour(COLOUR_OF[state]))
        note = self._note()
        if note:
            painter.setFont(look.font(12.5))
            painter.setPen(look.colour("muted" if caught.valid else "invalid"))
            painter.drawText(QRectF(left, 54 * scale, self.width() - 66 * scale, self.height()), WRAP, note)

    def _value(self, painter: QPainter, box: QRectF, letter: str, value: object, faded: bool) -> None:
        from gui.models.caught import Value

        look = self._look
        painter.setFont(look.font(13))
        painter.setPen(look.colour("muted"))
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter, letter)
        text = self._display.figure(value.nm, value.u95_nm) if isinstance(value, Value) else "–"
        box = box.adjusted(20 * look.scale, 0, 0, 0)
        width = QFontMetricsF(look.font(17, bold=True)).horizontalAdvance(text)
        font = look.font(17 * min(1.0, box.width() / max(1.0, width)), bold=True)
        font.setStrikeOut(bool(self._caught.rejected))
        painter.setFont(font)
        painter.setPen(look.colour("muted" if faded else "text"))
        painter.drawText(box.adjusted(0, 0, 9, 0), Qt.AlignmentFlag.AlignVCenter, text)

    def _arrow(self, painter: QPainter, at: QPointF) -> None:
        """Show the direction as a bent arrow: clockwise turns right, anticlockwise left."""
        look, scale = self._look, self._look.scale
        painter.setPen(QPen(look.colour("muted"), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        radius = 7 * scale
        sense = -1 if self._caught.pull.direction > 0 else 1
        box = QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)
        painter.drawArc(box, 90 * 16, sense * 270 * 16)
        tip = at + QPointF(sense * radius, 0)  # the arc ends at three o'clock or at nine, going up
        arm = 4.5 * scale
        painter.drawLine(tip, tip + QPointF(-arm, arm * 0.9))
        painter.drawLine(tip, tip + QPointF(arm, arm * 0.9))


def direction_words(direction: int) -> str:
    """Name a direction, seen from outside the car."""
    return DIRECTION_WORDS[direction]


class PullsPanel(QWidget):
    """The job's value over the list of pulls; emits ``reject`` and ``undo``."""

    reject = Signal(int)
    undo = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._rows: list[PullRow] = []
        self._expired = label("", "wronghead", wrap=True)
        self._value = label("–", "title", wrap=True)
        self._quantity = label("Value of this job", "caption", wrap=True)
        self._badge = Badge(shared.look)
        self._rule = label("", "caption", wrap=True)
        self._notes = label("", "caption", wrap=True)
        self._others = label("", "", wrap=True)
        self._empty = label(
            "No pull yet. Each pull is caught by itself: load the lever smoothly over two to three seconds, keep "
            "turning slowly while the wheel moves, ease the load off.\n\nB is the breakaway torque, R the rotating "
            "torque, both at the axle.",
            "caption",
            wrap=True,
        )
        self._list = QWidget()
        self._lines = column(self._list, gap=0)
        self._lines.addWidget(self._empty)
        self._lines.addStretch(1)
        self._lay_out()

    def _lay_out(self) -> None:
        whole = QWidget()
        stack = column(whole, gap=8)
        top = card()
        inside = column(top, margin=12, gap=6)
        for part in (self._expired, self._quantity, self._value, self._badge, self._others, self._rule, self._notes):
            inside.addWidget(part)
        below = card()
        listed = column(below, margin=12, gap=6)
        head = line(gap=6)
        self._count = label("Pulls", "head")
        head.addWidget(self._count, 1)
        listed.addLayout(head)
        listed.addWidget(self._list, 1)
        self._buttons = QWidget()
        buttons = FlowLayout(self._buttons, gap=8)
        self._reject = button("Exclude last pull", lambda: self.reject.emit(0), tip="Key R", keeps_focus=True)
        self._undo = button("Undo", self.undo.emit, tip="Key U", keeps_focus=True)
        buttons.addWidget(self._reject)
        buttons.addWidget(self._undo)
        stack.addWidget(top)
        stack.addWidget(below, 1)
        layout = column(self, gap=8)
        layout.addWidget(scrolled(whole), 1)
        layout.addWidget(self._buttons)
        self._stack, self._layout, self._low = stack, layout, False

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Let the buttons scroll along where there is hardly room for more than them."""
        super().resizeEvent(event)
        needed = self._buttons.heightForWidth(self.width()) + LIST_PX * self._shared.look.scale
        if (self.height() < needed) is not self._low:
            self._low = not self._low
            if self._low:
                self._stack.insertWidget(1, self._buttons)
            else:
                self._layout.addWidget(self._buttons)

    def refresh(self, run: TestRun) -> None:
        """Show the run's pulls and value."""
        _put(self._expired, _alarm(run.card.expired()))
        self._show_value(run.value, run)
        pulls = run.pulls.pulls
        self._count.setText(f"Pulls: {len(run.pulls.counting)} of {run.card.pulls_wanted}")
        self._reject.setEnabled(bool(run.pulls.counting) and not run.flow.finished)
        self._undo.setEnabled(run.pulls.can_undo and not run.flow.finished)
        if len(pulls) < len(self._rows):
            for row in self._rows:
                row.deleteLater()
            self._rows = []
        for caught in pulls[len(self._rows) :]:
            row = PullRow(self._shared.look, self._shared.display, caught)
            row.pressed.connect(self.reject.emit)
            self._rows.append(row)
            self._lines.insertWidget(0, row)
        for row, caught in zip(self._rows, pulls, strict=True):
            row.show_pull(caught)
        self._empty.setVisible(not pulls)

    def _show_value(self, value: ValueSoFar | None, run: TestRun) -> None:
        display = self._shared.display
        if value is None:
            self._quantity.setText("Value of this job")
            self._value.setText("–")
            self._badge.show_state("", "No result yet" if run.card.limit is not None else "No limit to compare with")
            for part in (self._rule, self._notes, self._others):
                part.hide()
            return
        pulls = "1 pull" if value.count == 1 else f"median of {value.count} pulls"
        self._quantity.setText(f"{QUANTITY_WORDS[value.quantity]}, {pulls}")
        self._value.setText(display.torque(value.value.nm, value.value.u95_nm))
        self._badge.show_state(value.state, None if value.state else unjudged_words(run.card.limit))
        others = [f"{QUANTITY_WORDS[name]}: {display.torque(v.nm, v.u95_nm)}" for name, v, _n, _d in value.other]
        others += [
            f"Pack mean, {name}: {display.torque(v.nm, v.u95_nm)}"
            for name, v, _why in pack_means(run.pulls, run.drag)
            if v
        ]
        _put(self._others, "\n".join(others))
        _put(self._rule, f"Rule: {value.rule}" if value.rule else "")
        _put(self._notes, "\n".join(value.notes))


def _alarm(text: str) -> str:
    return f"▲ {text}" if text else ""


def _put(target: object, text: str) -> None:
    from PySide6.QtWidgets import QLabel

    if isinstance(target, QLabel):
        target.setText(text)
        target.setVisible(bool(text))
