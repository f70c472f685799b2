"""The single keys of the Test page."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from gui.pages.card_panel import ROWS

if TYPE_CHECKING:
    from gui.pages.test_page import TestPage
    from gui.tester import Tester


def press(page: TestPage, tester: Tester, key: int) -> bool:
    """Do what a key stands for on the page; give whether it stands for anything now."""
    run = tester.run
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
        Qt.Key.Key_Escape: page.close_editor,
    }
    for number, name in enumerate(ROWS):
        keys[Qt.Key(Qt.Key.Key_1 + number)] = partial(page.open_row, name)
    act = keys.get(Qt.Key(key))
    if act is None:
        return False
    act()
    return True
