"""No words are cut where it is hardest: small screen, large text, longest labels. ``make cut`` measures all."""

import pytest
from PySide6.QtWidgets import QLabel, QWidget

from tests.gui.cut import cut_words
from tests.gui.every_state_cut import SIZES, cut_in

HARDEST = SIZES[1:3]
SOME = ("checks", "warning", "dial-readings", "learn-listen", "review", "settings", "compare")


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("state", SOME)
def test_no_word_is_cut_where_it_is_hardest(qtbot, state: str, language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    found = cut_in(state, language, monkeypatch, HARDEST, ("lbf·ft",))
    assert not found, "\n".join(found[:20])


def test_a_cut_word_is_noticed(qtbot) -> None:
    """The measure itself: a label too narrow for its word is found, one that has its room is not."""
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(400, 200)
    narrow, wide = QLabel("Torque at the axle", window), QLabel("Torque at the axle", window)
    narrow.setGeometry(0, 0, 40, 70)
    wide.setGeometry(0, 80, 390, 70)
    window.show()
    found = cut_words(window)
    assert len(found) == 1, found
    assert "wide in 40" in found[0]
