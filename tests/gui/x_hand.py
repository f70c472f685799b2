"""A hand at a real X server: moves its pointer and presses its keys through XTEST, as mouse and keyboard do."""

from __future__ import annotations

import ctypes
import time
from collections.abc import Callable

from PySide6.QtCore import QPoint
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractScrollArea, QApplication, QWidget

LEFT, WHEEL_UP, WHEEL_DOWN = 1, 4, 5
SHIFT = 0xFFE1
KEYS = {" ": 0x20, "\n": 0xFF0D, "\t": 0xFF09, "down": 0xFF54, "end": 0xFF57, "home": 0xFF50}


class XHand:
    """Clicks and types; ``wait`` lets the window work meanwhile."""

    def __init__(self) -> None:
        self._x = ctypes.CDLL("libX11.so.6")
        self._test = ctypes.CDLL("libXtst.so.6")
        self._x.XOpenDisplay.restype = ctypes.c_void_p
        self._x.XkbKeycodeToKeysym.restype = ctypes.c_ulong
        self._display = ctypes.c_void_p(self._x.XOpenDisplay(None))
        assert self._display, "no X server"
        self.clicks = self.presses = 0

    # ------------------------------------------------------------------ waiting
    def settle(self, seconds: float = 0.08) -> None:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            QApplication.processEvents()
            time.sleep(0.004)

    def until(self, condition: Callable[[], object], what: str, limit_s: float = 90.0) -> None:
        end = time.monotonic() + limit_s
        while not condition():
            self.settle(0.02)
            assert time.monotonic() < end, f"waited in vain: {what}"

    # ------------------------------------------------------------------ mouse
    def click(self, part: QWidget) -> None:
        """Press a part of the window where it is seen; it must be seen whole, and nothing may lie over it."""
        self._scroll_to(part)
        at = None
        while at != (at := part.mapToGlobal(QPoint(0, 0))):  # a list that still moves is not pressed
            self.settle(0.15)
        middle = part.mapToGlobal(part.rect().center())
        screen = QGuiApplication.primaryScreen().geometry()
        corners = [part.mapToGlobal(part.rect().topLeft()), part.mapToGlobal(part.rect().bottomRight())]
        assert all(screen.contains(corner) for corner in corners), f"{part.accessibleName()}: off the screen"
        over = QApplication.widgetAt(middle)
        assert over is part or (over is not None and part.isAncestorOf(over)), f"{part.accessibleName()}: covered"
        self._move(middle)
        self._button(LEFT)
        self.clicks += 1
        self.settle()

    def _move(self, at: QPoint) -> None:
        self._test.XTestFakeMotionEvent(self._display, -1, at.x(), at.y(), 0)
        self._x.XSync(self._display, 0)
        self.settle(0.03)

    def _button(self, number: int) -> None:
        for down in (1, 0):
            self._test.XTestFakeButtonEvent(self._display, number, down, 0)
            self._x.XSync(self._display, 0)
            self.settle(0.02)

    def _scroll_to(self, part: QWidget) -> None:
        """Turn the wheel over the area that the part lies in until it is seen."""
        area = part.parentWidget()
        while area is not None and not isinstance(area, QAbstractScrollArea):
            area = area.parentWidget()
        if area is None or not area.isAncestorOf(part):
            return
        port = area.viewport()
        for _ in range(80):
            top = part.mapTo(port, QPoint(0, 0)).y()
            if top >= 0 and top + part.height() <= port.height():
                return
            self._move(port.mapToGlobal(QPoint(port.width() - 3, port.height() // 2)))
            self._button(WHEEL_UP if top < 0 else WHEEL_DOWN)
        raise AssertionError(f"{part.accessibleName()}: cannot be scrolled to")

    # ------------------------------------------------------------------ keys
    def key(self, name: str) -> None:
        self._press(KEYS[name])

    def type(self, text: str) -> None:
        for letter in text:
            self._press(KEYS.get(letter, ord(letter)))

    def _press(self, symbol: int) -> None:
        code = self._x.XKeysymToKeycode(self._display, ctypes.c_ulong(symbol))
        assert code, f"no key for {symbol:#x}"
        shifted = self._x.XkbKeycodeToKeysym(self._display, code, 0, 0) != symbol
        shift = self._x.XKeysymToKeycode(self._display, ctypes.c_ulong(SHIFT))
        steps = [(shift, 1)] * shifted + [(code, 1), (code, 0)] + [(shift, 0)] * shifted
        for which, down in steps:
            self._test.XTestFakeKeyEvent(self._display, which, down, 0)
        self._x.XSync(self._display, 0)
        self.presses += 1
        self.settle(0.03)
