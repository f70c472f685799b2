"""The window itself: what it remembers, its keys, its looks, its editors, an error that nobody expected."""

import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.__main__ import main, tell
from gui.models.settings import Settings
from gui.sound import RATE_HZ, TONES, Sound, Sounds, wave
from gui.theme import SCALES
from logger.edges.toml_file import write_toml
from logger.header import Lever
from tests.gui.hand import Hand, check_named_and_large


def test_choices_and_lists_are_there_again_after_a_restart(qtbot, home) -> None:
    first = Hand(qtbot)
    first.window.set_unit("kgf·m")
    first.set_comma(True)
    first.window.swap_palette()
    first.window.set_scale(1.25)
    first.window.resize(1400, 900)
    lever = Lever(fixture="one stud", name="club lever", length_mm=500.0, stud_circle_mm=100.0, studs=4, angle_deg=0.0)
    editor = first.page.editor("Fixture")
    editor.take(lever)
    editor.shelf.save()
    first.window.tester._remember()
    first.close()
    again = Hand(qtbot)
    shared = again.window._shared
    assert (shared.display.unit, shared.display.comma) == ("kgf·m", True)
    assert (Settings().choices.palette, shared.look.scale) == ("light", 1.25)
    assert again.window.tester.card.lever == lever
    # A hand resizes the window after it is built; the remembered size is what it was built with.
    assert Settings().choices.window[2:] == (1400, 900)
    again.close()


def test_pages_by_key(hand: Hand) -> None:
    for key, page in ((Qt.Key.Key_2, "Review"), (Qt.Key.Key_3, "Compare"), (Qt.Key.Key_1, "Test")):
        QTest.keyClick(hand.window, key, Qt.KeyboardModifier.ControlModifier)
        QApplication.processEvents()
        assert hand.window._stack.currentWidget() is hand.window.pages[page]
    before = hand.window._shared.display.unit
    QTest.keyClick(hand.window, Qt.Key.Key_U, Qt.KeyboardModifier.ControlModifier)
    assert hand.window._shared.display.unit != before


@pytest.mark.parametrize("palette", ["dark", "light"])
def test_every_editor_in_every_size_is_named_and_large(hand: Hand, palette: str) -> None:
    if hand.window._shared.look.palette.name != palette:
        hand.window.swap_palette()
    for scale in SCALES:
        hand.window.set_scale(scale)
        for name in ("Job", "Axle", "Fixture", "Limit", "Transducer", "Dial"):
            hand.page.open_row(name)
            hand.tick()
            check_named_and_large(hand.page.editor(name), name)


def test_fixture_editor_draws_and_works_the_factor_out(hand: Hand) -> None:
    hand.page.open_row("Fixture")
    editor = hand.page.editor("Fixture")
    for key, text in (("stud_circle_mm", "5x114.3 mm"), ("length_mm", "450 mm"), ("angle_deg", "0")):
        QTest.keyClicks(editor.fields[key].edit, text)
    assert "1.1270" in editor.factor.text()
    assert hand.window.tester.card.lever_factor == pytest.approx(1 + 57.15 / 450)
    editor.drawing.setFocus()
    for _ in range(18):
        QTest.keyClick(editor.drawing, Qt.Key.Key_Up)
    assert editor.fields["angle_deg"].text == "90"
    assert hand.window.tester.card.lever_factor == pytest.approx(1.0)
    QTest.keyClick(editor.drawing, Qt.Key.Key_Minus)
    assert editor.studs.key == "4"
    assert "4 studs" in editor.drawing.accessibleName()


def test_limit_editor_wants_a_source(hand: Hand) -> None:
    hand.page.open_row("Limit")
    editor = hand.page.editor("Limit")
    QTest.keyClicks(editor.typed["lower"].edit, "20")
    assert hand.window.tester.card.limit is None
    assert "source" in editor.typed["source"]._wrong.text()
    QTest.keyClicks(editor.typed["source"].edit, "club rules")
    assert hand.window.tester.card.limit.source == "club rules"
    QTest.keyClicks(editor.typed["beside"].edit, "27")
    editor.chosen["beside_unit"].set_key("lbf·ft")
    editor._edited()
    assert "N·m against lbf·ft" in editor.warnings.text() or "disagree" in editor.warnings.text()


def test_a_file_with_faults_is_told_in_the_editor(hand: Hand, tmp_path) -> None:
    editor = hand.page.editor("Fixture")
    bad = tmp_path / "bad.toml"
    bad.write_text('fixture = "one stud"\nlenght_mm = 450\n', encoding="utf-8")
    editor.shelf.bring_in(bad)
    assert "lenght_mm" in editor.shelf.message.text()
    assert "length_mm" in editor.shelf.message.text()
    good = tmp_path / "good.toml"
    write_toml(good, Lever(fixture="hub centre", name="plate"))
    editor.shelf.bring_in(good)
    assert hand.window.tester.card.lever.name == "plate"
    editor.shelf.send_out(tmp_path / "out.toml")
    assert (tmp_path / "out.toml").read_text(encoding="utf-8") == good.read_text(encoding="utf-8")


def test_dial_editor_keeps_readings_and_judges_them(hand: Hand) -> None:
    card = hand.window.tester.card
    card.put(lever=Lever(fixture="hub centre", name="x"))
    hand.page.open_row("Dial")
    editor = hand.page.editor("Dial")
    hand.check_all(editor)
    for text in ("30", "31,5", "29"):
        QTest.keyClicks(editor.reading.edit, text)
        QTest.keyClick(editor.reading.edit, Qt.Key.Key_Return)
    assert len(editor.kept) == 3
    assert editor.at_axle.text().startswith("30.0 ±")
    assert "median of 3" in editor.at_axle.text()


def test_an_error_that_nobody_expected_is_shown_and_the_test_goes_on(hand: Hand, capsys) -> None:
    hand.to_pulls()
    tell(hand.window, ZeroDivisionError, ZeroDivisionError("x"), None)
    hand.tick()
    assert "unexpected" in hand.page.notice.text.text()
    hand.pull()
    assert len(hand.run.pulls.pulls) == 1
    assert "ZeroDivisionError" in capsys.readouterr().err


@pytest.mark.parametrize(("words", "said"), [(["--help"], "usage"), (["--version"], "heldwheel ")])
def test_help_and_version(capsys, words: list[str], said: str) -> None:
    assert main(words) == 0
    assert said in capsys.readouterr().out


@pytest.mark.parametrize("sound", list(Sound))
def test_sounds_are_short_tones_and_never_raise(sound: Sound) -> None:
    data = wave(sound)
    assert len(data) == 2 * sum(int(RATE_HZ * seconds) for _, seconds in TONES[sound])
    sounds = Sounds()

    def no_device() -> None:
        raise OSError("no audio device")

    sounds._play = lambda _sound: no_device()
    sounds.play(sound)
    sounds.play(sound)
    assert sounds.played == [sound, sound]
    assert sounds._silent
    assert Sounds(on=False).played == []


def test_limit_of_another_kind_of_test_is_warned_about(hand: Hand) -> None:
    hand.to_pulls()
    card = hand.window.tester.card
    card.put(limit=msgspec.structs.replace(card.limit, held="case"))
    hand.pull()
    assert hand.run.value.state == "not valid"
    assert "no comparison" in hand.page.card_panel.rows["Limit"].accessibleName()


def test_a_saved_entry_comes_back_by_its_undo_button(hand: Hand) -> None:
    hand.page.open_row("Fixture")
    editor = hand.page.editor("Fixture")
    bar, undo = editor.shelf, editor.shelf._buttons["Undo"]
    assert not undo.isVisible(), "nothing to take back yet"
    for length in (450.0, 500.0):
        editor.take(Lever(fixture="one stud", name="club lever", length_mm=length, stud_circle_mm=100.0))
        hand.press(bar._buttons["Save"])
    assert "Undo brings it back" in bar.message.text()
    hand.press(undo)
    assert bar._shelf.entries()["club lever"].length_mm == 450.0
    bar.list.set_key("club lever")
    hand.press(bar._buttons["Remove"])
    assert bar._shelf.entries() == {}
    hand.press(undo)
    assert list(bar._shelf.entries()) == ["club lever"]
