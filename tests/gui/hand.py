"""A person at the window: presses keys, never calls the program's insides to make something happen."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from gui.__main__ import build
from gui.models.flow import Step
from tests.gui.fakes import FakeStream


class Hand:
    """A window with a fake stream; ``actions`` counts what the person did."""

    def __init__(self, qtbot, *, fake: bool = True, speed: float = 1.0) -> None:
        self.qtbot = qtbot
        self.window = build("dark")
        self.window._shared.confirm.always = True
        self.window._shared.sounds._silent = True  # no loudspeaker; what would be played is still noted
        self.stream = FakeStream()
        self.actions = 0
        if fake:
            self.window.tester._opener = lambda _card, _opened: self.stream
        self.window.tester.practice_speed = speed
        self.window.resize(1280, 720)
        self.window.show()
        qtbot.waitExposed(self.window)

    @property
    def page(self):
        return self.window.pages["Test"]

    @property
    def run(self):
        return self.window.tester.run

    def set_comma(self, on: bool) -> None:
        """Choose the decimal mark, as the settings do."""
        self.window._shared.display.use(comma=on)
        self.window._shared.settings.remember(comma=on)

    def key(self, key: Qt.Key) -> None:
        """Press a key where the focus is."""
        self.actions += 1
        QTest.keyClick(QApplication.focusWidget() or self.window, key)
        self.tick()

    def space(self) -> None:
        self.key(Qt.Key.Key_Space)

    def press(self, button) -> None:
        """Press a button with the mouse."""
        self.actions += 1
        QTest.mouseClick(button, Qt.MouseButton.LeftButton)
        self.tick()

    def check_all(self, editor) -> None:
        """Tick every safety check that a form asks for, with the mouse on its words."""
        for row in editor._rows:
            self.actions += 1
            QTest.mouseClick(row.words, Qt.MouseButton.LeftButton)
        self.tick()

    def tick(self) -> None:
        """Let the window take the news of the fake stream."""
        if isinstance(self.window.tester.bridge.stream, FakeStream):
            self.window.tester.bridge._timer.stop()
            self.window.tester.bridge.tick()
        for _ in range(3):
            QApplication.processEvents()

    def practise(self) -> None:
        self.key(Qt.Key.Key_P)

    def to_pulls(self) -> None:
        """From the start to the first pull."""
        self.practise()
        self.space()
        self.space()
        assert self.run.flow.now is Step.ZERO
        self.stream.idle(0.5)
        self.tick()
        self.space()
        self.stream.idle(2.5)
        self.tick()
        assert self.run.flow.now is Step.PULLS
        self.tick()

    def pull(self, **changes) -> None:
        self.stream.pull(**changes)
        self.tick()

    def close(self) -> None:
        self.window.close()
        shiboken6.delete(self.window)  # a window that lingers is styled again with every later one
        QApplication.processEvents()


def check_named_and_large(root: QWidget, where: object) -> None:
    """Everything that the keyboard reaches has a name for a screen reader, and is large enough for a glove."""
    for part in root.findChildren(QWidget):
        reached = part.isVisible() and bool(part.focusPolicy() & Qt.FocusPolicy.TabFocus)
        if reached and part.metaObject().className() in {"QLineEdit", "Picker", "QPushButton"}:
            assert part.accessibleName(), (where, part)
            assert part.height() >= 44, (where, part.accessibleName())
