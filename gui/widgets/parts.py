"""Small parts that every page is put together from, each with its role in the style sheet and its accessible name."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionComboBox,
    QStylePainter,
    QVBoxLayout,
    QWidget,
)

from gui.translation import tr
from gui.widgets.fitting import FlowLayout

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence


class Said(QLabel):
    """A text in the user's language."""

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Show a text."""
        super().setText(tr(text))


class Press(QPushButton):
    """A button whose text is in the user's language; ``source`` is what it was given."""

    def __init__(self, text: str) -> None:
        self.source = text
        super().__init__(tr(text))

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Show a text."""
        self.source = text
        super().setText(tr(text))


def label(text: str, role: str = "", *, wrap: bool = False) -> QLabel:
    """Give a text; roles are caption, head, title, warn and wrong."""
    made = Said()
    made.setText(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    if role:
        made.setProperty("role", role)
    made.setWordWrap(wrap)
    return made


def button(
    text: str, on_press: Callable[[], object] | None = None, *, role: str = "", tip: str = "", keeps_focus: bool = False
) -> Press:
    """Give a button; with ``keeps_focus`` a press of the mouse leaves the keyboard's focus where it is."""
    made = Press(text)
    made.setAutoDefault(False)
    if role:
        made.setProperty("role", role)
    if tip:
        made.setToolTip(tr(tip))
    if keeps_focus:
        made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    made.setAccessibleName(tr(text).replace("&", "") + (f". {tr(tip)}" if tip else ""))
    if on_press is not None:
        made.clicked.connect(lambda _checked=False: on_press())
    return made


def leads(within: QWidget) -> bool:
    """Say whether a button to be pressed next stands there: one that carries the accent, shown and enabled."""
    return any(
        press.property("role") == "main" and press.isEnabled() and press.isVisibleTo(within)
        for press in within.findChildren(QPushButton)
    )


def restyle(widget: QWidget, role: str) -> None:
    """Give a widget another role."""
    if widget.property("role") != role:
        widget.setProperty("role", role)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


def mark_wrong(widget: QWidget, *, wrong: bool) -> None:
    """Outline a field whose content cannot be used."""
    if bool(widget.property("wrong")) != wrong:
        widget.setProperty("wrong", wrong)
        widget.style().unpolish(widget)
        widget.style().polish(widget)


def rule() -> QFrame:
    """Give a thin line."""
    made = QFrame()
    made.setObjectName("rule")
    return made


def card() -> QFrame:
    """Give a card: a surface with a thin border."""
    made = QFrame()
    made.setObjectName("card")
    return made


def column(parent: QWidget | None = None, *, margin: int = 0, gap: int = 8) -> QVBoxLayout:
    """Give a layout from top to bottom."""
    made = QVBoxLayout(parent) if parent is not None else QVBoxLayout()
    made.setContentsMargins(margin, margin, margin, margin)
    made.setSpacing(gap)
    return made


def line(parent: QWidget | None = None, *, margin: int = 0, gap: int = 8) -> QHBoxLayout:
    """Give a layout from left to right."""
    made = QHBoxLayout(parent) if parent is not None else QHBoxLayout()
    made.setContentsMargins(margin, margin, margin, margin)
    made.setSpacing(gap)
    return made


def open_once(dialog: QDialog) -> None:
    """Open a dialog over the window; closed, it is gone."""
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.open()


def dialog_size(parent: QWidget | None, width: float, height: float) -> QSize:
    """Give a dialog the size it would like, but no more than the window it belongs to."""
    wanted = QSize(round(width), round(height))
    return wanted if parent is None else wanted.boundedTo(parent.window().size() - QSize(40, 40))


SCROLLED_PX = 260  # an area that scrolls is no narrower


class Scrolled(QScrollArea):
    """Scrolls up and down, and sideways where nothing else helps; emits ``resized``."""

    resized = Signal()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Tell who shares the width out."""
        super().resizeEvent(event)
        self.resized.emit()

    @property
    def room(self) -> int:
        """The width for what it holds, with its bar."""
        return self.width() - self.verticalScrollBar().sizeHint().width()

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for the width of what it holds, and a bar's."""
        inner = self.widget()
        width = inner.minimumSizeHint().width() if inner is not None else 0
        return QSize(width + self.verticalScrollBar().sizeHint().width() + 4, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for little: where even the narrowest column does not fit, it scrolls sideways rather than cut."""
        return QSize(min(self.sizeHint().width(), SCROLLED_PX), 60)


def scrolled(inner: QWidget) -> Scrolled:
    """Give a widget room to scroll up and down."""
    made = Scrolled()
    inner.setObjectName("scrolled")
    made.setWidget(inner)
    made.setWidgetResizable(True)
    made.setFrameShape(QFrame.Shape.NoFrame)
    return made


class Field(QWidget):
    """A caption over a line to type in, with what is wrong below it."""

    changed = Signal()

    def __init__(self, caption: str, hint: str = "", text: str = "") -> None:
        super().__init__()
        self.hint = hint
        self.edit = QLineEdit(text)
        self.edit.setPlaceholderText(tr(hint))
        self.edit.setAccessibleName(tr(caption).replace("&", ""))
        self._wrong = label("", "wrong", wrap=True)
        self._wrong.hide()
        layout = column(self, gap=3)
        title = label(caption, "caption")
        title.setBuddy(self.edit)
        for part in (title, self.edit, self._wrong):
            layout.addWidget(part)
        self.edit.textEdited.connect(lambda _text: self.changed.emit())

    def show_hint(self, text: str) -> None:
        """Show another example of what is typed, as it is."""
        self.edit.setPlaceholderText(text)

    @property
    def text(self) -> str:
        """What is typed."""
        return self.edit.text()

    def set_text(self, text: str) -> None:
        """Put a text in without telling anybody."""
        if text != self.edit.text():
            self.edit.setText(text)
            if not self.edit.hasFocus():
                self.edit.setCursorPosition(0)  # a long text shows its beginning

    def set_wrong(self, why: str) -> None:
        """Say what is wrong; empty when it is not."""
        mark_wrong(self.edit, wrong=bool(why))
        self._wrong.setText(why)
        self._wrong.setVisible(bool(why))
        self.edit.setAccessibleDescription(tr(why))


ARROW_PX = 40  # of a list's button: its arrowhead and edges
SMALLEST_WORDS = 0.75  # of their usual size, where a list is narrow


class Picker(QComboBox):
    """A list to choose from, with an arrowhead of our own: a style sheet cannot paint one."""

    def words_px(self) -> float:
        """Give the height of the chosen words' letters: smaller where the list is narrow, so that they are not cut."""
        usual = self.font().pixelSize()
        width = self.fontMetrics().horizontalAdvance(self.currentText())
        return usual * min(1.0, (self.width() - ARROW_PX) / max(1, width))

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for room for the chosen words at the smallest size that is still read."""
        least = SMALLEST_WORDS * self.fontMetrics().horizontalAdvance(self.currentText()) + ARROW_PX
        return QSize(max(super().minimumSizeHint().width(), round(least)), super().minimumSizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Paint the list's button, the chosen words and the arrowhead."""
        painter = QStylePainter(self)
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        font = QFont(self.font())
        font.setPixelSize(max(8, int(self.words_px())))
        painter.setFont(font)
        painter.setPen(self.palette().color(self.foregroundRole()))
        where = self.rect().adjusted(11, 0, -28, 0)
        painter.drawText(where, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.currentText())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(self.foregroundRole()), 2))
        at = QPointF(self.width() - 19, self.height() / 2)
        painter.drawPolyline([at + QPointF(-5, -3), at + QPointF(0, 3), at + QPointF(5, -3)])


class Choice(QWidget):
    """A caption over a list to choose from; keys are what records hold, words are what is read."""

    changed = Signal()

    def __init__(self, caption: str, options: Iterable[tuple[str, str]] = ()) -> None:
        super().__init__()
        self.box = Picker()
        self.box.setAccessibleName(tr(caption).replace("&", ""))
        self.box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.box.setMinimumContentsLength(6)
        self.box.setItemDelegate(QStyledItemDelegate(self.box))  # the platform's own ignores the height of a target
        layout = column(self, gap=3)
        title = label(caption, "caption")
        title.setBuddy(self.box)
        layout.addWidget(title)
        layout.addWidget(self.box)
        self.set_options(options)
        self.box.activated.connect(lambda _index: self.changed.emit())

    def set_options(self, options: Iterable[tuple[str, str]]) -> None:
        """Offer other options; the choice stays if it is still there."""
        before = self.key
        self.box.clear()
        for key, words in options:
            self.box.addItem(tr(words), key)
        self.set_key(before)

    @property
    def key(self) -> str:
        """What is chosen."""
        return str(self.box.currentData() or "")

    def set_key(self, key: str) -> None:
        """Choose without telling anybody."""
        index = self.box.findData(key)
        if index >= 0:
            self.box.setCurrentIndex(index)


class Switch(QWidget):
    """A row of joined buttons of which one is on."""

    picked = Signal(str)

    def __init__(self, options: Sequence[str], name: str) -> None:
        super().__init__()
        self.setAccessibleName(tr(name))
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        layout = FlowLayout(self, gap=0)
        for index, option in enumerate(options):
            place = "left" if index == 0 else "right" if index == len(options) - 1 else "middle"
            made = button(option, role=place)
            made.setCheckable(True)
            made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            made.setAccessibleName(f"{tr(name)}: {tr(option).replace('&', '')}")
            self._group.addButton(made)
            layout.addWidget(made)
        self._group.buttonClicked.connect(lambda pressed: self.picked.emit(pressed.source))

    def set_on(self, option: str) -> None:
        """Switch without telling anybody."""
        for made in self._group.buttons():
            if isinstance(made, Press) and made.source == option:
                made.setChecked(True)
