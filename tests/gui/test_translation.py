"""Every text of the parts that are translated has its German and its Spanish, and the window shows it."""

from __future__ import annotations

import ast
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path

import pytest

import gui.translation as translation
from analysis.cautions import CAUTIONS
from gui.models.coach import Hint
from gui.models.flow import Step
from gui.pages.settings_dialog import SettingsDialog
from gui.translation import install, tr
from tests.gui.hand import Hand

FOLDER = Path(translation.__file__).parent / "translations"
LANGUAGES = ("de", "es")
ACTION = Path(translation.__file__).parent / "models" / "action.py"


def catalogue(language: str) -> dict[str, str]:
    root = ET.parse(FOLDER / f"heldwheel_{language}.ts").getroot()
    return {m.findtext("source") or "": m.findtext("translation") or "" for m in root.iter("message")}


def action_texts() -> Iterator[str]:
    """Give what the large button says: the texts in calls of ``Action``, with places for what is inserted."""
    for call in ast.walk(ast.parse(ACTION.read_text("utf-8"))):
        if not (isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id == "Action"):
            continue
        for part in (*call.args, *(word.value for word in call.keywords)):
            for leaf in (part.body, part.orelse) if isinstance(part, ast.IfExp) else (part,):
                if isinstance(leaf, ast.JoinedStr):
                    places = iter(range(1, 9))
                    yield "".join(
                        str(p.value) if isinstance(p, ast.Constant) else f"%{next(places)}" for p in leaf.values
                    )
                elif isinstance(leaf, ast.Constant) and isinstance(leaf.value, str) and leaf.value:
                    yield leaf.value


WANTED = sorted({*(c.text for c in CAUTIONS), *(str(h) for h in Hint if h), *(str(s) for s in Step), *action_texts()})


WHOLE = (
    "main_window.py", "pages/test_page.py", "pages/foot.py", "pages/welcome.py", "pages/checks_panel.py",
    "pages/live_panel.py", "pages/pulls_panel.py", "pages/sign_panel.py", "pages/card_panel.py", "pages/review_page.py",
    "pages/archive_list.py", "pages/reading_panel.py", "pages/result_card.py", "pages/correct_bar.py",
    "pages/details_dialog.py", "pages/settings_dialog.py", "pages/about_dialog.py", "pages/editors/dial.py",
    "pages/editors/limit.py", "pages/editors/fixture.py", "pages/editors/job.py", "pages/editors/base.py",
    "pages/editors/build.py", "widgets/notice.py", "widgets/written.py", "widgets/menus.py",
    "pages/answers/groups.py", "pages/answers/order.py", "pages/answers/own_scatter.py", "pages/answers/plan.py",
    "pages/answers/trend.py", "pages/ask_dialog.py", "pages/batch_bar.py", "pages/budget_table.py",
    "pages/compare_page.py", "pages/editors/axle.py", "pages/editors/behaviour.py", "pages/editors/chord.py",
    "pages/editors/photos.py", "pages/editors/second.py", "pages/editors/transducer.py", "pages/editors/turns.py",
    "pages/far_view.py", "pages/guide_dialog.py", "pages/import_dialog.py", "pages/learn_dialog.py",
    "pages/learn_fields.py", "pages/learn_steps.py", "pages/stepped_dialog.py", "pages/weigh_dialog.py",
    "pages/weigh_steps.py", "widgets/chart.py", "widgets/fold.py", "widgets/order_plot.py", "widgets/sheet_tabs.py",
    "widgets/sketch.py",
)  # fmt: skip
"""Modules whose every text that is handed straight to what shows it is translated."""
SHOWS = {"label", "button", "Field", "Choice", "QCheckBox", "tr", "setText", "addAction"}
ROLES = re.compile(r"[^A-Za-z]*|/dev/.*|Heldwheel|N·m|[A-Z]{1,4}|[0-9.]+ (?:mm|N|N·m|l|min)|75W-90")


def shown_texts(path: Path) -> Iterator[str]:
    """Give the texts that a module hands to what shows them: first and tip of every such call."""
    for call in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(call, ast.Call):
            continue
        name = getattr(call.func, "id", getattr(call.func, "attr", ""))
        if name not in SHOWS:
            continue
        tips = [word.value for word in call.keywords if word.arg == "tip"]
        hints = call.args[1:2] if name == "Field" else []
        for part in (*call.args[:1], *hints, *tips):
            for leaf in (part.body, part.orelse) if isinstance(part, ast.IfExp) else (part,):
                if isinstance(leaf, ast.Constant) and isinstance(leaf.value, str):
                    yield from (line for line in leaf.value.split("\n") if not ROLES.fullmatch(line))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("module", WHOLE)
def test_what_the_pages_show_is_translated(language: str, module: str, qapp):
    """Nothing that the page shows stays English, but for what is alike in both languages."""
    texts = list(shown_texts(Path(translation.__file__).parent / module))
    known = catalogue(language)
    install(language)
    try:
        missing = [text for text in texts if text not in known and tr(text) == text]
    finally:
        install("en")
    assert not missing, "\n".join(missing)


def test_a_short_template_is_of_figures_alone(qapp):
    install("de")
    try:
        assert tr("3 of 5") == "3 von 5"
        assert tr("the best of both") == "the best of both"
    finally:
        install("en")


def test_there_is_something_to_translate():
    assert len(WANTED) > len(CAUTIONS) + len(Hint) + 15


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_text_is_missing(language: str):
    known = catalogue(language)
    missing = [text for text in WANTED if not known.get(text)]
    assert not missing, "\n".join(missing)


@pytest.mark.parametrize("language", LANGUAGES)
def test_places_for_figures_are_kept(language: str):
    wrong = [
        s for s, t in catalogue(language).items() if sorted(re.findall(r"%\d", s)) != sorted(re.findall(r"%\d", t))
    ]
    assert not wrong


@pytest.fixture
def german() -> Iterator[None]:
    assert install("de")
    yield
    install("en")


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_is_released_is_what_is_written(language: str, qapp):
    assert install(language)
    try:
        wrong = [s for s, t in catalogue(language).items() if "%1" not in s and "\n" not in s and tr(s) != t]
    finally:
        install("en")
    assert not wrong, "make translations: " + "; ".join(wrong[:5])


@pytest.mark.usefixtures("qapp", "german")
def test_figures_words_and_marks_are_carried_along():
    assert tr("Pull 2 of 5") == "Zug 2 von 5"
    assert tr("Transducer: not connected") == "Aufnehmer: nicht verbunden"
    assert tr("▲ Keep turning") == "▲ Weiterdrehen"
    assert tr("no such text 17") == "no such text 17"


def test_english_needs_no_catalogue_and_an_unknown_language_is_refused(qapp):
    assert install("en")
    assert tr("Keep turning") == "Keep turning"
    assert not install("xx")
    assert tr("Keep turning") == "Keep turning"


def test_the_window_in_german(qtbot, home: Path) -> None:
    """The language is chosen in one window and shown by the next, with its decimal mark."""
    assert not home.exists()
    first = Hand(qtbot)
    dialog = SettingsDialog(first.window._shared, first.window)
    dialog.language.set_key("de")
    dialog.decimal.set_key("comma")
    dialog.keep()
    first.close()
    second = Hand(qtbot)
    try:
        window = second.window
        assert window._tabs["Review"].text() == "Ansehen"
        assert window._shared.display.comma
        second.practise()
        assert window.simulated.text() == "SIMULIERT"
        window.unit.picked.emit("lbf·ft")
        assert window._shared.display.unit == "lbf·ft"
    finally:
        second.close()
        install("en")
