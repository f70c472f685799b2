"""Garbage is collected in the window's thread alone.

The interpreter collects cycles in whatever thread happens to allocate. Where that is not the window's, and the cycle
holds a part of the window, the part's end waits for the interpreter's lock with one of Qt's own locks in hand; the
window's thread, with the interpreter's lock, waits for Qt's: it never moves again. So automatic collection is switched
off, and the window collects by the clock.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

LOOK_MS = 100
EVERY = (1, 10, 600)  # looks: the youngest at every one, all once a minute (40 ms with three pages open)


class Collector(QObject):
    """Collects by the clock, whenever the window is idle; made in the window's thread.

    Args:
        parent: The window, which ends it.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._looks = 0
        self._timer = QTimer(self, interval=LOOK_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()

    def look(self) -> None:
        """Collect the oldest generation that is due."""
        self._looks += 1
        gc.collect(max(n for n, every in enumerate(EVERY) if self._looks % every == 0))
