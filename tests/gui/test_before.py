"""Tyres on the Axle card, inertia on Review: at the real window, said as the commands say it."""

from collections.abc import Callable

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton

from analysis.__main__ import COMMANDS
from gui.pages.before_dialogs import InertiaDialog, TyresDialog
from logger.edges.door import run_door
from tests.gui.hand import Hand
from tests.gui.shots.reviewing import spin_down

NO_BREAK = "\N{NO-BREAK SPACE}"


@pytest.fixture
def told(capsys) -> Callable[..., str]:
    def run(*words: str) -> str:
        run_door("heldwheel-read", "", COMMANDS, "analysis.doors", list(words))
        return capsys.readouterr().out

    return run


def type_in(dialog, **texts: str) -> None:
    for key, text in texts.items():
        edit = dialog.fields[key].edit
        edit.setFocus()
        edit.selectAll()
        QTest.keyClicks(edit, text)


def shown(dialog) -> list[str]:
    return dialog.said.text().replace(NO_BREAK, " ").splitlines()


def test_tyres_are_compared_from_the_axle_card_as_by_the_command(hand: Hand, told) -> None:
    hand.page.open_row("Axle")
    editor = hand.page.editor("Axle")
    hand.press(next(b for b in editor.findChildren(QPushButton) if b.text() == "Compare the tyres"))
    dialog = editor.findChild(TyresDialog)
    type_in(dialog, left="1985 mm", right="1940 mm")
    said = told("tyres", "--left", "1985mm", "--right", "1940mm").splitlines()
    assert shown(dialog)[:-1] == said
    assert "1 % is common practice, no source" in shown(dialog)[-1]
    assert "put like tyres on this axle" in said[-1]
    type_in(dialog, right="78 1/2 in", u="1 mm", speed="50")
    assert (
        shown(dialog)[:-1]
        == told("tyres", "--left", "1985mm", "--right", "78.5in", "--uncertainty", "1mm", "--speed", "50").splitlines()
    )
    type_in(dialog, right="620")
    assert "In which unit?" in dialog.fields["right"]._wrong.text()
    assert shown(dialog) == []
    type_in(dialog, right="20 m")
    assert "give the circumference, not the diameter" in shown(dialog)[0]


def test_inertia_is_told_of_the_recording_that_is_chosen_as_by_the_command(hand: Hand, qtbot, home, told) -> None:
    path = spin_down(home / "recordings")
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    page.open_folder(path.parent)
    qtbot.waitUntil(lambda: page.list.table.model().rowCount() == 1, timeout=10_000)
    page.list.table.selectRow(0)
    dict(item for item in page.items() if item)["Inertia from a spin-down …"]()
    dialog = page.findChild(InertiaDialog)
    type_in(dialog, drag="9 N·m", torque="27 N·m")
    qtbot.waitUntil(lambda: dialog.told is not None, timeout=20_000)
    said = told("inertia", str(path), "--drag", "9 N·m", "--torque", "27 N·m").splitlines()
    assert dialog.simulated.isVisible()
    assert said[0] == "SIMULATED DATA"
    assert len(shown(dialog)) == 4
    assert [text for text in shown(dialog) if text not in said] == []
    assert "it changes no reading" in shown(dialog)[-1]
    type_in(dialog, drag="0 N·m")
    qtbot.waitUntil(lambda: "above zero" in dialog.said.text(), timeout=20_000)
