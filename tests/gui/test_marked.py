"""Every text that the window shows asked for its translation, and both catalogues have it.

The real window walks through its states in a language that puts marks around every text (``unmarked``): what it then
shows without them was not marked. The states that are walked through are those with texts of their own.
"""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QLabel

from gui.translation import install
from gui.widgets.parts import label
from tests.gui.shots.__main__ import STATES
from tests.gui.shots.studio import Studio
from tests.gui.unmarked import bare_texts, english_left, left_bare, says_something, speak

SOME = (
    "checks", "zero", "busy", "warning", "failed", "job-open", "axle-turns", "axle-build", "axle-nothing",
    "fixture", "stud-circle", "limit", "second", "learn-name", "weigh-hang", "weigh-calibrated", "ask-modbus",
    "dial-filed", "review", "review-correct", "review-budget", "road", "inertia", "tyres", "axle", "reports",
    "about", "guide", "details", "compare", "compare-trend", "compare-run-in", "compare-over-time", "compare-plan",
    "compare-study", "compare-empty",
)  # fmt: skip

ASKED: set[str] = set()
"""What an earlier state has asked for already: it is not looked up twice."""


def walked(state: str, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Bring a window into a state; give what is not marked or not translated, one line each."""
    monkeypatch.setenv("HELDWHEEL_HOME", "")  # the studio sets its own and it ends with the test
    spoken = speak(monkeypatch)
    studio = Studio("dark", (1366, 728))
    try:
        STATES[state](studio)
        studio.settle()
        found = [f"{kind}: not marked: {text!r}" for kind, text in sorted(bare_texts())]
    finally:
        studio.close()
        monkeypatch.undo()
    new = spoken.asked - ASKED
    for language in ("de", "es") if new else ():
        assert install(language)
        try:
            found += [f"{language}: not translated: {text!r}" for text in english_left(new, language)]
        finally:
            install("en")
    ASKED.update(new)
    return found


@pytest.mark.parametrize("state", SOME)
def test_every_text_is_marked_and_translated(qtbot, state: str, monkeypatch: pytest.MonkeyPatch) -> None:
    found = walked(state, monkeypatch)
    assert not found, "\n".join(found)


def test_an_unmarked_text_is_noticed(qtbot, monkeypatch: pytest.MonkeyPatch) -> None:
    """The measure itself: a bare label is found, a marked one and a user's own words are not."""
    speak(monkeypatch)
    bare, marked, own = QLabel("Torque at the axle"), label("Torque at the axle"), QLabel("club car 7, 44.8 N·m")
    for part in (bare, marked, own):
        qtbot.addWidget(part)
        part.show()
    assert {text for _, text in bare_texts()} == {"Torque at the axle"}


def test_an_untranslated_text_is_noticed(qapp) -> None:
    """The measure itself: words without a translation are found, also where a template carries them along."""
    assert install("de")
    try:
        assert english_left({"Keep turning", "Transducer: not connected", "12.3 N·m"}, "de") == []
        assert english_left({"Transducer: gone fishing"}, "de") == ["gone fishing"]
    finally:
        install("en")


def test_what_stands_outside_of_the_marks() -> None:
    assert left_bare("⟦Pull⟧ 2 of 5, ⟦not ⟦valid⟧⟧") == " 2 of 5, "
    assert says_something("Pull 2")
    assert not says_something("left-1.csv, 44.8 ± 0.7 N·m")
