"""Chatter on the road at the window: a sound is dropped, another compared, and all is said as by the command."""

import json

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from analysis.__main__ import COMMANDS
from analysis.cautions import ROAD
from gui.models.dropped import sorted_out
from gui.pages.road_dialog import RoadDialog
from logger.edges.door import run_door
from tests.gui.hand import Hand
from tests.gui.shots.reviewing import drives

NO_BREAK = "\N{NO-BREAK SPACE}"


@pytest.fixture
def folder(tmp_path):
    drives(tmp_path)
    return tmp_path


def test_a_dropped_sound_is_read_compared_and_said_as_the_command_says_it(hand: Hand, qtbot, folder, capsys) -> None:
    hand.window.take([str(folder / "after.wav")])
    page = hand.window.pages["Review"]
    dialog = page.findChild(RoadDialog)
    qtbot.waitUntil(lambda: dialog.test is not None, timeout=20_000)
    assert len(dialog.test.found.events) == len(dialog.plot.grab() and dialog.plot.spots) == 1
    assert dialog.plot.axes().simulated
    dialog.compare_with(str(folder / "before.wav"))
    qtbot.waitUntil(lambda: dialog.test.difference is not None, timeout=20_000)
    words = [str(folder / "after.wav"), "--against", str(folder / "before.wav")]
    assert run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ["chatter", *words]) == 0
    told = capsys.readouterr().out
    shown = dialog.said.text().replace(NO_BREAK, " ").splitlines()
    assert len(shown) >= 5
    assert [line for line in shown if line not in told] == []
    assert run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ["chatter", *words, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["against"]["difference_db"] == dialog.test.difference.db
    QTest.keyClicks(dialog.band.edit, "800-50")
    qtbot.waitUntil(lambda: "does not fit" in dialog.wrong.text(), timeout=20_000)
    assert not dialog.export.isEnabled()
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog._worker.busy


def test_without_a_recording_it_says_how_to_make_one_and_what_to_mind(hand: Hand) -> None:
    """From the menu of the list, with nothing chosen: no control of its own stands on the page."""
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    dict(item for item in page.items() if item)["Chatter on the road …"]()
    dialog = page.findChild(RoadDialog)
    shown = "\n".join(part.text() for part in dialog.findChildren(type(dialog.name)) if part.isVisible())
    assert all(text in shown for text in ROAD)
    assert not dialog.plot.isVisible()
    assert not dialog.compare.isEnabled()


def test_a_sound_is_told_from_a_table(folder) -> None:
    (folder / "table.csv").write_text("time_s,torque_Nm\n0,1\n1,2\n")
    found = sorted_out([str(path) for path in sorted(folder.iterdir()) if path.suffix != ".toml"])
    assert [path[-9:] for path in found.sounds] == ["after.wav", "efore.wav"]
    assert len(found.tables) == 1
