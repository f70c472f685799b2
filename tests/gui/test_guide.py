"""F1 opens the guide, and its page is written; the bar says where simulated data are shown."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QLabel

from analysis.report.guide import MISTAKES, STEPS
from gui.pages.guide_dialog import GuideDialog

if TYPE_CHECKING:
    from tests.gui.hand import Hand


def test_f1_opens_the_guide_and_writes_its_page(hand: Hand, monkeypatch, tmp_path: Path) -> None:
    hand.key(Qt.Key.Key_F1)
    guide = hand.window.guide
    assert isinstance(guide, GuideDialog)
    assert guide.isVisible()
    shown = "\n".join(text.text() for text in guide.findChildren(QLabel))
    assert all(name in shown and said in shown for name, said in STEPS)
    assert "nobody in or under the car" in shown
    assert guide.findChild(type(guide._mistakes())).rowCount() == len(MISTAKES)
    target = tmp_path / "guide.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    hand.press(guide.save)
    assert "How to make" in target.read_text("utf-8")
    assert str(target) in guide.said.text()
    guide.accept()


def test_the_bar_says_that_what_is_shown_is_simulated(hand: Hand) -> None:
    hand.window._mark()
    assert not hand.window.simulated.isVisible()
    hand.practise()
    hand.window._mark()
    assert hand.window.simulated.isVisible()
    assert hand.window.simulated.text() == "SIMULATED"
