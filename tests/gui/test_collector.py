"""Parts of the window that hang together in a circle end in the window's thread, never in one that happens to run."""

from __future__ import annotations

import gc
import threading
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QThread

if TYPE_CHECKING:
    from tests.gui.hand import Hand


class Part(QObject):
    ended_in: list[QThread]

    def __del__(self) -> None:
        self.ended_in.append(QThread.currentThread())


def circle(ended_in: list[QThread]) -> None:
    part = Part()
    part.ended_in, part.own = ended_in, part  # nobody else holds it


def allocate() -> None:
    kept = [[n] for n in range(200_000)]  # far beyond every threshold of the interpreter's own collection
    assert kept


def test_circles_end_in_the_windows_thread(hand: Hand) -> None:
    gc.collect()
    assert not gc.isenabled()
    ended_in: list[QThread] = []
    circle(ended_in)
    work = threading.Thread(target=allocate)
    work.start()
    work.join()
    assert not ended_in, "collected by a thread that only allocated"
    hand.qtbot.waitUntil(lambda: bool(ended_in), timeout=5_000)
    assert ended_in == [hand.window.thread()]
