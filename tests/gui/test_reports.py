"""Settings in one place: how the window looks, what stands on every report; remembered, printed."""

import shutil
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from analysis.report.material import PaperSize
from analysis.report.verify import issue_of as issue_from
from analysis.report.verify import read_record
from gui.models.issuing import PAPERS, issue_of
from gui.models.settings import Choices, Settings
from gui.pages.settings_dialog import SettingsDialog
from tests.gui.hand import Hand
from tests.gui.test_review import choose, review

RECORDINGS = Path(__file__).resolve().parents[2] / "recordings"


def dialog_of(hand: Hand) -> SettingsDialog:
    """Open the settings."""
    hand.press(hand.window.settings_button)
    hand.tick()
    return next(part for part in hand.window.findChildren(SettingsDialog) if part.isVisible())


def fill(dialog: SettingsDialog) -> None:
    """Type what a shop would."""
    QTest.keyClicks(dialog.shop.edit, "Hillfoot Workshop")
    QTest.keyClicks(dialog.address.edit, "Old Quarry Road 3 / Hillfoot")
    QTest.keyClicks(dialog.authorised.edit, "operator C")
    dialog.paper.set_key("letter")


def test_it_is_kept_and_asked_for_again_with_what_was_kept(hand: Hand) -> None:
    dialog = dialog_of(hand)
    assert dialog.paper.key == "A4"
    fill(dialog)
    QTest.keyClick(dialog.authorised.edit, Qt.Key.Key_Return)
    hand.tick()
    settings = hand.window._shared.settings
    kept = Settings(settings.folder).choices
    assert (kept.shop, kept.address) == ("Hillfoot Workshop", "Old Quarry Road 3 / Hillfoot")
    assert (kept.authorised, kept.paper) == ("operator C", "letter")
    again = dialog_of(hand)
    assert (again.shop.text, again.paper.key) == ("Hillfoot Workshop", "letter")


def test_escape_changes_nothing(hand: Hand) -> None:
    before = hand.window._shared.settings.choices
    dialog = dialog_of(hand)
    fill(dialog)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    hand.tick()
    assert hand.window._shared.settings.choices == before


@pytest.mark.parametrize("ending", ["html", "pdf"])
def test_it_stands_on_the_report_of_the_window(hand: Hand, home: Path, ending: str) -> None:
    (home / "recordings").mkdir(parents=True, exist_ok=True)
    shutil.copy(RECORDINGS / "05-event-1.csv", home / "recordings")
    fill(dialog := dialog_of(hand))
    dialog.keep()
    hand.window.open_page("Review")
    page, target = review(hand), home / f"page.{ending}"
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    choose(hand, 0)
    page.pages.export(page.reading.path, str(target))
    hand.qtbot.waitUntil(lambda: "Written" in page.notice.text.text(), timeout=60_000)
    issue = issue_from(read_record(target))
    assert issue.shop == "Hillfoot Workshop"
    assert issue.address == "Old Quarry Road 3\nHillfoot"
    assert (issue.authorised, issue.paper) == ("operator C", PaperSize.LETTER)
    if ending == "html":
        text = target.read_text("utf-8")
        assert "size: letter" in text
        assert "authorised by operator C" in text


def test_every_paper_is_offered() -> None:
    assert {key for key, _ in PAPERS} == set(PaperSize)
    assert {issue_of(Choices(paper=key), "customer", "N·m").paper for key, _ in PAPERS} == set(PaperSize)


def test_a_paper_nobody_offers_is_told_and_a4_is_taken(tmp_path: Path) -> None:
    (tmp_path / "window.toml").write_text('paper = "papyrus"\n', "utf-8")
    settings = Settings(tmp_path)
    assert "paper" in settings.problem
    assert settings.choices.paper == "A4"


def test_every_choice_is_in_one_place_and_is_taken_over(hand: Hand, tmp_path: Path) -> None:
    dialog = dialog_of(hand)
    for choice, key in ((dialog.palette_choice, "light"), (dialog.scale, "1.5"), (dialog.unit, "lbf·ft")):
        choice.set_key(key)
    dialog.decimal.set_key("comma")
    dialog.language.set_key("es")
    QTest.mouseClick(dialog.sounds, Qt.MouseButton.LeftButton)
    dialog.folder.edit.selectAll()
    QTest.keyClicks(dialog.folder.edit, "not a path")
    dialog.keep()
    assert dialog.isVisible(), "half a path is asked about"
    dialog.folder.edit.selectAll()
    QTest.keyClicks(dialog.folder.edit, str(tmp_path / "elsewhere"))
    dialog.keep()
    hand.tick()
    shared, kept = hand.window._shared, Settings(hand.window._shared.settings.folder).choices
    assert (kept.palette, kept.scale, kept.unit, kept.comma, kept.language) == ("light", 1.5, "lbf·ft", True, "es")
    assert (shared.look.palette.name, shared.display.unit, shared.display.comma) == ("light", "lbf·ft", True)
    assert hand.window.one_unit.text() == "lbf·ft"
    assert shared.settings.recordings == tmp_path / "elsewhere"
    shared.look.use(palette="dark", scale=1.0)


def test_about_says_version_and_folders_and_copies_them(hand: Hand) -> None:
    from PySide6.QtWidgets import QApplication

    from gui.pages.about_dialog import AboutDialog
    from logger.version import VERSION

    hand.window.show_about()
    dialog = next(part for part in hand.window.findChildren(AboutDialog) if part.isVisible())
    dialog.copy()
    text = QApplication.clipboard().text()
    assert VERSION in text
    assert str(hand.window._shared.settings.recordings) in text
    dialog.accept()
