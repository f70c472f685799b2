"""Finds words that are cut: shortened with dots, wider or taller than their place, or outside of the window."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QFontMetrics, QFontMetricsF
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractScrollArea,
    QCheckBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from gui.widgets.parts import SMALLEST_WORDS

SLACK_PX = 2
PRESSED = (QPushButton, QComboBox, QLineEdit, QCheckBox)


@contextmanager
def shortened() -> Iterator[list[str]]:
    """Note every text that a widget of ours shortens while it paints itself."""
    found: list[str] = []
    plain = QFontMetricsF.elidedText

    def noting(metrics: QFontMetricsF, text: str, mode: Qt.TextElideMode, width: float, flags: int = 0) -> str:
        short = plain(metrics, text, mode, width, flags)
        if short != text:
            found.append(text)
        return short

    QFontMetricsF.elidedText = noting
    try:
        yield found
    finally:
        QFontMetricsF.elidedText = plain


def cut_words(window: QWidget) -> list[str]:
    """Give what is cut in a window as it stands, one line each."""
    found = []
    for part in window.findChildren(QWidget):
        if part.isVisible() and not in_a_table(part):
            found += [f"{type(part).__name__} '{words_of(part)[:60]}': {why}" for why in faults(part, window)]
    return found


def words_of(part: QWidget) -> str:
    for name in ("text", "currentText", "accessibleName"):
        if hasattr(part, name) and getattr(part, name)():
            return str(getattr(part, name)())
    return ""


def in_a_table(part: QWidget) -> bool:
    """Cells of a table scroll in it and carry their words as a tip."""
    above = part.parentWidget()
    while above is not None:
        if isinstance(above, QAbstractItemView):
            return True
        above = above.parentWidget()
    return isinstance(part, QAbstractItemView)


def scrolls(part: QWidget, window: QWidget) -> bool:
    """Say whether a part lies in an area that can be scrolled to it."""
    above = part.parentWidget()
    while above is not None and above is not window:
        if isinstance(above, QAbstractScrollArea):
            return True
        above = above.parentWidget()
    return False


def faults(part: QWidget, window: QWidget) -> Iterator[str]:
    if isinstance(part, QLabel) and part.text():
        yield from label_faults(part)
    elif isinstance(part, QPushButton) and part.text():
        words = read_of(part.text()).splitlines()
        needed = max(QFontMetrics(part.font()).horizontalAdvance(row) for row in words)
        if needed > part.width() + SLACK_PX:
            yield f"{needed} wide in {part.width()}"
        if QFontMetrics(part.font()).height() > part.height() + SLACK_PX:
            yield f"letters are taller than its {part.height()}"
    elif isinstance(part, QComboBox):
        small = getattr(part, "words_px", part.font().pixelSize)() / part.font().pixelSize()
        if small < SMALLEST_WORDS - 0.02:
            yield f"letters are {small:.0%} of their size"
    if isinstance(part, (QLabel, *PRESSED)) and not scrolls(part, window):
        at = QRect(part.mapTo(window, QPoint(0, 0)), part.size())
        if not window.rect().adjusted(-SLACK_PX, -SLACK_PX, SLACK_PX, SLACK_PX).contains(at):
            yield f"outside of the window: {at.getRect()} in {window.width()} x {window.height()}"
        above = part.parentWidget()
        if above is not None and above is not window:
            inner = QRect(part.pos(), part.size())
            if not above.rect().adjusted(-SLACK_PX, -SLACK_PX, SLACK_PX, SLACK_PX).contains(inner):
                yield f"cut by what it lies in: {inner.getRect()} in {above.width()} x {above.height()}"
    if isinstance(part, PRESSED) and part.isEnabled() and part.height() < 44 - SLACK_PX:
        yield f"only {part.height()} high to press"


def read_of(text: str) -> str:
    """Give a text as it is painted: the mark of its key is not."""
    return text.replace("&&", "\0").replace("&", "").replace("\0", "&")


def label_faults(part: QLabel) -> Iterator[str]:
    metrics, room = QFontMetrics(part.font()), part.contentsRect()
    text = read_of(part.text()) if part.buddy() is not None else part.text()
    if not part.wordWrap():
        needed = max(metrics.horizontalAdvance(row) for row in text.splitlines())
        if needed > room.width() + SLACK_PX:
            yield f"{needed} wide in {room.width()}"
        high = metrics.height() * len(text.splitlines())
    else:
        box = metrics.boundingRect(QRect(0, 0, max(1, room.width()), 100_000), int(Qt.TextFlag.TextWordWrap), text)
        if box.width() > room.width() + SLACK_PX:
            yield f"a word is {box.width()} wide in {room.width()}"
        high = box.height()
    if high > room.height() + SLACK_PX:
        yield f"{high} high in {room.height()}"
