"""A label in the fixture's form: a scanner types its line, a mistyped one is refused, a label is printed and saved."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from gui.translation import install, tr
from logger.header import Lever
from logger.instruments.fixture_line import line_of
from tests.gui.hand import Hand

LONG = Lever(
    fixture="one stud",
    name="Long lever, bay 2",
    length_mm=450.0,
    length_mm_u=2 / 1.96,
    stud_circle_mm=114.3,
    studs=5,
    angle_deg=-2.5,
    weight_kg=3.1,
    centroid_mm=210.0,
)


@pytest.fixture
def form(hand: Hand):
    hand.page.open_row("Fixture")
    return hand.page.editor("Fixture")


def scan(hand: Hand, form, line: str) -> None:
    """As a handheld scanner does: from the menu to the field, key by key, a return at the end."""
    next(action for action in form.label.menu.actions() if action.text() == "Scan a label").trigger()
    hand.tick()
    field = hand.window.focusWidget()
    assert field is form.name.edit
    QTest.keyClicks(field, line)
    QTest.keyClick(field, Qt.Key.Key_Return)
    hand.tick()


@pytest.mark.parametrize("line", [line_of(LONG), line_of(LONG).lower()])
def test_a_scanner_types_the_line_and_the_form_is_filled(hand: Hand, form, line: str) -> None:
    QTest.keyClicks(form.name.edit, "old lever")
    scan(hand, form, line)
    assert hand.window.tester.card.lever == LONG, "to the last digit, with what no field shows"
    assert form.name.text == LONG.name
    assert form.fields["length_mm"].text == "450 mm"
    assert "Filled from the label of Long lever, bay 2" in form.shelf.message.text()
    assert hand.page.open_form == "Fixture", "the return at the end does nothing"
    assert hand.run.flow.now is None


def test_a_mistyped_line_is_refused_and_leaves_no_fixture_to_test_with(hand: Hand, form) -> None:
    form.take(LONG)
    scan(hand, form, line_of(LONG).replace("450", "540"))
    assert "CHECK: the check number does not fit" in form.name._wrong.text()
    assert hand.window.tester.card.lever is None
    assert hand.window.tester.card.lever_faulty
    scan(hand, form, line_of(LONG))
    assert hand.window.tester.card.lever == LONG
    assert not form.name._wrong.isVisible()


def test_the_reason_is_told_in_the_window_s_language(hand: Hand) -> None:
    install("de")
    try:
        told = tr("This label: LENGTH: '4S0' is no number")
    finally:
        install("en")
    assert told == "Dieses Etikett: LENGTH: „4S0“ ist keine Zahl"


def test_a_label_is_saved_and_printed(hand: Hand, form, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import gui.printing

    form.label.save(tmp_path / "none.pdf")
    assert "has faults" in form.shelf.message.text()
    form.take(LONG)
    asked = []
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *words: (asked.append(words), (str(tmp_path / "a.svg"), ""))[1]
    )
    form.label._ask_out()
    hand.qtbot.waitUntil(lambda: (tmp_path / "a.svg").is_file(), timeout=20_000)
    assert asked[0][2] == "long-lever-bay-2.pdf"
    printed = []
    monkeypatch.setattr(gui.printing, "ask_and_print", lambda path, _parent: printed.append(path.read_bytes()[:5]))
    form.label.print()
    hand.qtbot.waitUntil(lambda: bool(printed), timeout=20_000)
    assert printed == [b"%PDF-"]
    assert not (tmp_path / "none.pdf").exists()
