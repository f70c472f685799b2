"""The index of a folder's reports from Review: the page that the command writes, offered to be opened."""

import re
import shutil
import time
from concurrent.futures import Future
from pathlib import Path

import pytest
from PySide6.QtWidgets import QInputDialog

from analysis.__main__ import COMMANDS
from gui.models import indexing
from gui.translation import install, tr
from logger.edges.door import run_door
from tests.gui.hand import Hand

SEASON = Path(__file__).parents[2] / "recordings"


def door(*words: object) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", [str(word) for word in words])


@pytest.fixture
def reports(home: Path) -> Path:
    folder = home / "recordings"
    folder.mkdir(parents=True)
    recording = shutil.copy(SEASON / "01-arrival-left.csv", folder)
    door("report", recording, "--out", folder / "left.html")
    shutil.copy(folder / "left.html", folder / "again.html")
    return folder


def without_times(page: Path) -> str:
    return re.sub(r"\d{4}-\d\d-\d\dT[\d:]+(\+[\d:]+|Z)?", "TIME", page.read_text("utf-8"))


def test_the_window_writes_the_page_that_the_command_writes(
    hand: Hand, reports: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert door("index", reports, "--title", "Season 2026") == 0
    by_command = without_times(reports / "index.html")
    (reports / "index.html").unlink()
    monkeypatch.setattr(QInputDialog, "getText", lambda *_words: ("Season 2026", True))
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    next(action for action in page.report.menu().actions() if action.text() == "Index of these reports …").trigger()
    hand.qtbot.waitUntil(lambda: page.written.path is not None, timeout=20_000)
    assert page.written.path == reports / "index.html"
    assert page.written.show_button.isVisible()
    assert "Index of 2 reports written to" in page.notice.text.text()
    assert without_times(reports / "index.html") == by_command
    page.list.table.selectRow(0)
    assert ("Index of these reports …", page.ask_index) in page.items(), "on the right button of a recording as well"
    assert door("index", "--verify", reports / "index.html") == 0


def test_a_folder_without_reports_is_told(hand: Hand, home: Path) -> None:
    (home / "recordings").mkdir(parents=True)
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    page.index.make(home / "recordings", "Reports")
    hand.qtbot.waitUntil(lambda: "holds no report" in page.notice.text.text(), timeout=20_000)
    assert page.written.path is None


def test_it_says_how_far_it_is(reports: Path, hand: Hand, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From the second report on: a slow disk is put in place of the index' own reading."""
    import analysis.report.index as index

    told, own = [], index._entry

    def slow(path: Path) -> index.IndexEntry:
        told.append(indexing.how_far(str(tmp_path)))
        time.sleep(indexing.TELL_EVERY_S)
        return own(path)

    monkeypatch.setattr(index, "_entry", slow)
    indexing.write_index(str(reports), "Reports", str(tmp_path))
    assert told == ["", "1 of 2 reports read for the index"]
    assert indexing.how_far(str(tmp_path)) == ""
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    (Path(page.worker.room) / "index").write_text("120 400", "utf-8")
    page.index._going = Future()
    page.index._look()
    assert "120 of 400 reports read" in page.notice.text.text()
    page.index._end("")
    install("de")
    try:
        assert tr("120 of 400 reports read for the index") == "120 von 400 Berichten für das Verzeichnis gelesen"
    finally:
        install("en")
