"""A window with a fake stream, brought into any state, and what the pictures share."""

from __future__ import annotations

import os
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from typing import TYPE_CHECKING

import shiboken6
from PySide6.QtWidgets import QApplication

from gui.__main__ import build
from gui.models.flow import Step
from gui.pages.test_page import TestPage
from tests.gui.fakes import FakeStream

if TYPE_CHECKING:
    from gui.main_window import MainWindow

EXAMPLES = Path(__file__).parents[3] / "recordings"


class Studio:
    """A window with a fake stream, brought into any state."""

    def __init__(self, palette: str, size: tuple[int, int], scale: float = 1.0) -> None:
        os.environ["HELDWHEEL_HOME"] = tempfile.mkdtemp(prefix="heldwheel-shots-")
        self.window: MainWindow = build(palette)
        self.window._shared.sounds.on = False
        self.window._shared.confirm.always = True
        self.window.tester._opener = self._open
        if scale != 1.0:
            self.window.set_scale(scale)
        self.window.resize(*size)
        self.window.show()
        self.stream = FakeStream()
        self.app = QApplication.instance()
        self.settle()

    def _open(self, _card, _opened) -> FakeStream:
        return self.stream

    @property
    def page(self) -> TestPage:
        page = self.window.pages["Test"]
        assert isinstance(page, TestPage)
        return page

    @property
    def tester(self):
        return self.window.tester

    def settle(self) -> None:
        for _ in range(4):
            self.app.processEvents()

    def tick(self) -> None:
        self.tester.bridge.tick()
        for _ in range(13):
            self.page._tick()
        self.page.refresh()
        self.settle()

    def practise(self) -> None:
        self.page.practise()
        self.tester.bridge._timer.stop()
        self.tick()

    def to_pulls(self) -> None:
        self.practise()
        self.page.act()
        self.take_zero(1.0)
        assert self.tester.run.flow.now is Step.PULLS
        self.tick()

    def take_zero(self, rest_s: float = 0.5) -> None:
        self.page.act()
        self.stream.idle(rest_s)
        self.tick()
        self.page.act()
        self.stream.idle(2.5)
        self.tick()

    def three_pulls(self) -> None:
        for _ in range(3):
            self.stream.pull()
        self.tick()

    def close(self) -> None:
        self.window.close()
        shiboken6.delete(self.window)
        self.app.processEvents()


def wait(studio: Studio, until: Callable[[], bool], limit_s: float = 60.0, say: Callable[[], str] = str) -> None:
    start = time.monotonic()
    while not until() and time.monotonic() - start < limit_s:
        studio.app.processEvents()
        time.sleep(0.01)
    assert until(), say()
    studio.settle()


def with_recordings() -> None:
    home = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    home.mkdir()
    for path in sorted(EXAMPLES.glob("0*.*")):
        (home / path.name).write_bytes(path.read_bytes())
