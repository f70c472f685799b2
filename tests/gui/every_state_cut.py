"""No words are cut on any page, in any state and language, from a small laptop's screen up, at every size of text.

A word is cut where it is shortened with dots, wider or taller than its place, or outside of the window; what scrolls is
not cut. Cells of tables carry their words as a tip and are left out. ``test_cut.py`` measures some states at the
hardest sizes with every run of the tests.
"""

from collections.abc import Sequence

import pytest
from PySide6.QtWidgets import QApplication

from gui.translation import COMMA, LANGUAGES, install
from tests.gui.cut import cut_words, shortened
from tests.gui.shots.__main__ import STATES
from tests.gui.shots.studio import Studio

SIZES = [(1024, 728, 1.0), (1366, 728, 1.5), (1024, 728, 2.0), (3840, 2120, 2.0)]
"""Window and text scale: a screen of 1024 x 768 less a bar of the desktop, a common laptop, the worst case, 4K."""
UNITS = ("N·m", "lbf·ft")


def cut_in(
    state: str,
    language: str,
    monkeypatch: pytest.MonkeyPatch,
    sizes: Sequence[tuple[int, int, float]],
    units: Sequence[str] = UNITS,
) -> list[str]:
    """Bring a window into a state in a language; give what is cut at each size and in each unit, one line each."""
    monkeypatch.setenv("HELDWHEEL_HOME", "")  # the studio sets its own and it ends with the test
    as_there = {"language": language, "comma": language in COMMA}
    monkeypatch.setattr("gui.translation.by_locale", lambda _locale: as_there)
    studio = Studio("dark", (1366, 728))
    found = []
    try:
        STATES[state](studio)
        studio.settle()
        window = studio.page.far if state == "far" else QApplication.activeModalWidget() or studio.window
        for unit in units:
            studio.window.set_unit(unit)
            for width, height, scale in sizes:
                studio.window.set_scale(scale)
                studio.window.resize(width, height)
                if state == "far":
                    window.resize(width, height)
                studio.settle()
                studio.settle()
                with shortened() as short:
                    window.grab()
                words = [*cut_words(window), *(f"'{text}' is shortened" for text in short)]
                found += [f"{width} x {height}, text {scale:.0%}, {unit}: {why}" for why in words]
    finally:
        studio.close()
        install("en")
    return found


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("state", STATES)
def test_no_word_is_cut(qtbot, state: str, language: str, monkeypatch: pytest.MonkeyPatch) -> None:
    found = cut_in(state, language, monkeypatch, SIZES)
    assert not found, "\n".join(found[:20])
