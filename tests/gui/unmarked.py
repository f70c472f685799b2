"""Finds texts that the window shows without having asked for their translation.

A language is installed that puts every text between ⟦ and ⟧. What a window then shows outside of these marks was not
marked. ``Spoken`` also keeps every text that was asked for, so that it can be looked up in the real catalogues.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QPainter
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QGroupBox,
    QLabel,
    QLineEdit,
    QTableWidget,
    QTextEdit,
    QWidget,
)

import gui.translation as translation
from analysis.language.translator import Translator, catalogue, read_catalogue
from logger.decoder.description import shipped
from tests.noting import Noting

if TYPE_CHECKING:
    import pytest

CATALOGUES = Path(translation.__file__).parent / "translations"
MARKED = re.compile(r"⟦[^⟦⟧]*⟧")


class Spoken:
    """A language in which every text stands between marks, and the texts that were asked for in it."""

    def __init__(self) -> None:
        self.asked: set[str] = set()

    def translate(self, text: str) -> str:
        """Give a text between marks."""
        self.asked.add(str.__str__(text))
        return f"⟦{text}⟧"


def speak(monkeypatch: pytest.MonkeyPatch) -> Spoken:
    """Let the window speak that language until the test ends."""
    spoken = Spoken()
    monkeypatch.setattr(translation, "_translator", Translator(spoken.translate))
    monkeypatch.setattr(translation, "install", lambda _language: True)
    return spoken


def left_bare(text: str) -> str:
    """Give what of a text stands outside of all marks.

    Examples
    --------
    >>> left_bare("⟦Pull⟧ 2 of 5, ⟦not ⟦valid⟧⟧")
    ' 2 of 5, '
    """
    before = ""
    while before != text:
        before, text = text, MARKED.sub("", text)
    return text


def shown_by(part: QWidget) -> Iterator[str]:
    """Give the texts of a widget that are read, pointed at or spoken."""
    yield from (part.toolTip(), part.accessibleName(), part.accessibleDescription(), part.statusTip())
    if part.isWindow():
        yield part.windowTitle()
    if isinstance(part, (QLabel, QAbstractButton)):
        yield part.text()
    elif isinstance(part, QLineEdit):
        yield part.placeholderText()
    elif isinstance(part, QComboBox):
        yield from (part.itemText(index) for index in range(part.count()))
    elif isinstance(part, QGroupBox):
        yield part.title()
    elif isinstance(part, QTextEdit):
        yield from part.toPlainText().split("\n")
    elif isinstance(part, QTableWidget):
        for across in range(part.columnCount()):
            for item in (
                part.horizontalHeaderItem(across),
                *(part.item(row, across) for row in range(part.rowCount())),
            ):
                if item is not None:
                    yield from (item.text(), item.toolTip())


@contextmanager
def painted() -> Iterator[list[str]]:
    """Note every text that widgets of ours paint themselves."""
    found: list[str] = []
    plain = QPainter.drawText

    def noting(painter: QPainter, *args: object) -> object:
        found.extend(arg for arg in args if isinstance(arg, str))
        return plain(painter, *args)

    QPainter.drawText = noting  # type: ignore[method-assign]
    try:
        yield found
    finally:
        QPainter.drawText = plain  # type: ignore[method-assign]


def all_shown() -> Iterator[tuple[str, str]]:
    """Give every text on the screen with the widget that shows it, painted ones included."""
    for window in [top for top in QApplication.topLevelWidgets() if top.isVisible()]:
        for part in (window, *window.findChildren(QWidget)):
            if part is window or part.isVisibleTo(window):
                yield from ((type(part).__name__, text) for text in shown_by(part))
        for action in (one for one in window.findChildren(QAction) if one.associatedObjects()):
            yield from (("action", text) for text in (action.text(), action.toolTip()))
        with painted() as texts:
            window.grab()
        yield from (("painted", text) for text in texts)


def bare_texts() -> set[tuple[str, str]]:
    """Give what stands unmarked on the screen: the widget, and the text with the marks around what is marked."""
    return {(kind, text) for kind, text in all_shown() if says_something(left_bare(plain(text)))}


def plain(text: str) -> str:
    """Give a text without the marks of rich text."""
    return html.unescape(re.sub(r"<[^>]+>", " ", text)) if text.startswith("<") else text


# ---------------------------------------------------------------------- what may stay
DATA = (
    "Hill-climb club", "SIM-1", "blue hill-climb car", "club car 7", "additive B", "additive C", "smooth C",
    "reference",
    "operator A", "operator B", "axle 1", "axle 2", "axle 3", "rear", "invented club rule", "manual, p. 3-7",
    "manual, 3-7", "Hillfoot Workshop", "Old Quarry Road 3 / Hillfoot", "operator C", "A-117", "43-11", "modifier B",
    "75W-90", "jo", "worn", "low breakaway", "workshop transducer", "tag", "hold", "G-7", "new",
    "answers letters: value, extremes", "operator A − operator B", *(name.replace("-", " ") for name in shipped()),
    "club car 7, rear, left", "Modbus RTU: torque, temperature",
    "Word order and scale vary from sensor to sensor: compare with a known load.", "An invented example.",
    "An invented example: D is answered by +12.34 TAB +13.00 TAB -0.10 CR. A '?' means a bad request.",
)  # fmt: skip
"""What the states of the tour call their cars, oils, people: a user's words."""
ALIKE = (
    "Heldwheel", "Bluetooth", "English", "Deutsch", "Español", "Modbus", "PySide6", "Python", "Qt", "SHA", "CSV", "PDF",
    "JSON", "HTML", "Welch", "Dunnett", "R²", "Ctrl+1", "Ctrl+2", "Ctrl+3",
)  # fmt: skip
"""Names, of which a language has no word of its own."""
VERSION = r"\w+ \d+\.\d+(?:\.\d+)?|Linux-\S+"
FILE = r"(?:/[\w.-]+)+|\b[\w.-]+\.(?:csv|wav|toml|pdf|html|jpg|dial)\b|\*\.\w+|\b[0-9a-f]{8,}…?"
KEYS = r"\b\w+=[\w.]+|\{\w+:?\d*\}|\b\w+_(?:mm|c|percent|s)\b"
UNIT = (
    r"(?<![A-Za-z])(?:N·m|lbf·ft|lbf·in|kgf·m|kgf·cm|rad|mm|in|kg|g|m|km|min|ms|s|h|N|l|Hz|MB|°C|kgf|lbf)"
    r"(?![A-Za-z])"
)
OWN = (rf"(?<!\w){re.escape(word)}(?!\w)" for word in sorted((*DATA, *ALIKE), key=len, reverse=True))
STAYS = re.compile("|".join([VERSION, FILE, KEYS, UNIT, *OWN]))


def says_something(text: str) -> bool:
    """Say whether a text has words besides figures, units, names, files, and what is the user's own."""
    return re.search(r"[^\W\d_]{2}", STAYS.sub(" ", text)) is not None


def english_left(asked: set[str], language: str) -> list[str]:
    """Give what of these texts is in no catalogue: parts, and words put into places, by themselves."""
    ours = read_catalogue((CATALOGUES / f"heldwheel_{language}.ts").read_text("utf-8"))
    noting = Noting({**catalogue(language), **ours}, says_something)
    for text in sorted(asked):
        if "⟦" not in text:
            noting.tr(text)
        elif says_something(left_bare(text)):
            noting.left.append(text)
    parts = {part for text in noting.left for part in re.split(r"\n| · ", text) if part != text}
    return sorted(text for text in set(noting.left) if not re.search(r"\n| · ", text) or not parts)
