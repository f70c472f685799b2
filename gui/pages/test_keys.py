"""The single keys of the Test page, and what a handheld scanner types there while no form is open.

A scanner types as a keyboard does, only quicker than any hand. So a key waits a moment before it counts: what follows
it at once is a scanned code, and no letter of that is a command.
"""

from __future__ import annotations

import time
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QWindow
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from gui.pages.card_panel import ROWS

if TYPE_CHECKING:
    from gui.pages.test_page import TestPage
    from gui.tester import Tester

NEXT_MS, LAST_MS = 40, 200  # a scanner's next key comes before, and after so long it has ended; no source
SHORTEST = 4  # letters of a code; fewer are keys of a quick hand
KINDS = {QEvent.Type.KeyPress, QEvent.Type.KeyRelease, QEvent.Type.ShortcutOverride}
ALONE = Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier  # a letter with these is still a letter
ENDS = {Qt.Key.Key_Return, Qt.Key.Key_Enter}
BESIDE = {Qt.Key.Key_Shift, Qt.Key.Key_CapsLock, Qt.Key.Key_NumLock, Qt.Key.Key_AltGr}  # a scanner presses them, too


class TestKeys(QObject):
    """Listens to the keys of a window before its parts do; emits ``scanned`` with what a scanner typed.

    Args:
        page: Whose keys they are.
        tester: Whose test they serve.
    """

    __test__ = False  # it is no test case
    scanned = Signal(str)

    def __init__(self, page: TestPage, tester: Tester) -> None:
        super().__init__(page)
        self._page, self._tester = page, tester
        self._held: list[tuple[QWindow, QKeyEvent]] = []
        self._text, self._at_ms, self._passing = "", 0.0, False
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self._settle)

    def press(self, key: int) -> bool:
        """Do what a key stands for; give whether it stands for anything now."""
        page, run = self._page, self._tester.run
        if page.open_form and key != Qt.Key.Key_Escape:
            return False  # a form is open: a letter that no field takes is no command
        keys = {
            Qt.Key.Key_Space: page.act,
            Qt.Key.Key_R: lambda: run.reject_last(),
            Qt.Key.Key_U: run.undo,
            Qt.Key.Key_F: page.show_far,
            Qt.Key.Key_D: lambda: page.open_row("Dial"),
            Qt.Key.Key_S: run.skip,
            Qt.Key.Key_E: page.end if run.flow.running else lambda: None,
            Qt.Key.Key_P: page.practise if run.flow.now is None else lambda: None,
            Qt.Key.Key_X: page.answered if run.notice is not None else lambda: None,
            Qt.Key.Key_Escape: page.close_editor,
        }
        for number, name in enumerate(ROWS):
            keys[Qt.Key(Qt.Key.Key_1 + number)] = partial(page.open_row, name)
        act = keys.get(Qt.Key(key))
        if act is None:
            return False
        act()
        return True

    # ------------------------------------------------------------------ a scanner
    def watch(self, window: QWindow | None) -> None:
        """Listen to the keys of a window; once is enough."""
        if window is not None:
            window.removeEventFilter(self)
            window.installEventFilter(self)

    def eventFilter(self, window: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        """Hold letters back until it is clear who types them."""
        if self._passing or event.type() not in KINDS or not isinstance(event, QKeyEvent) or not self._commands():
            return False
        if event.key() in BESIDE:
            return False
        letter = len(event.text()) == 1 and event.text().isprintable() and not event.modifiers() & ~ALONE
        if event.type() is QEvent.Type.ShortcutOverride:
            if letter:
                event.accept()
            return letter
        if event.type() is QEvent.Type.KeyRelease:
            return self._hold(window, event) if letter and self._held else False
        if event.isAutoRepeat():
            return bool(self._held)
        if letter:
            return self._typed(window, event)
        scanned = event.key() in ENDS and len(self._text) >= SHORTEST
        self._settle()
        return scanned

    def _commands(self) -> bool:
        """Whether a letter would be a command, or press what has the focus."""
        typing = isinstance(QApplication.focusWidget(), QLineEdit | QPlainTextEdit)
        return self._page.isVisible() and not self._page.open_form and not typing

    def _typed(self, window: QObject, event: QKeyEvent) -> bool:
        now_ms = event.timestamp() or time.monotonic() * 1e3
        if self._held and now_ms - self._at_ms > (NEXT_MS if len(self._text) == 1 else LAST_MS):
            self._settle()  # the program was busy: both had waited
        self._at_ms = now_ms
        self._text += event.text()
        self._timer.start(NEXT_MS if len(self._text) == 1 else LAST_MS)
        return self._hold(window, event)

    def _hold(self, window: QObject, event: QKeyEvent) -> bool:
        if isinstance(window, QWindow):
            self._held.append((window, event.clone()))
        return True

    def _settle(self) -> None:
        """Let a few keys through to where they were pressed, or tell what was scanned."""
        held, text = self._held, self._text
        self._held, self._text = [], ""
        self._timer.stop()
        if len(text) >= SHORTEST:
            self.scanned.emit(text)
            return
        self._passing = True
        try:
            for window, event in held:
                QCoreApplication.sendEvent(window, event)
        finally:
            self._passing = False
