"""Every text of the parts that are translated has its German and its Spanish, and the window shows it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest

import analysis
import gui.translation as translation
from analysis.cautions import CAUTIONS
from analysis.language.translator import catalogue as analysis_catalogue
from analysis.language.translator import read_catalogue, unbroken
from gui.models.coach import Hint
from gui.models.flow import Step
from gui.pages.settings_dialog import SettingsDialog
from gui.translation import install, tr
from tests.gui.hand import Hand

FOLDER = Path(translation.__file__).parent / "translations"
LANGUAGES = ("de", "es")
ACTION = Path(translation.__file__).parent / "models" / "action.py"


def catalogue(language: str) -> dict[str, str]:
    """Give all that the window can say: its own texts, and those of the analysis."""
    return {**analysis_catalogue(language), **read_catalogue(window_catalogue(language))}


def window_catalogue(language: str) -> str:
    return (FOLDER / f"heldwheel_{language}.ts").read_text("utf-8")


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


GUI = Path(translation.__file__).parent
WHOLE = sorted(str(p.relative_to(GUI)) for part in ("pages", "widgets") for p in (GUI / part).rglob("*.py"))
WHOLE += ["main_window.py", "tester.py", "confirm.py"]
SHOWS = {"label", "button", "Field", "Choice", "QCheckBox", "tr", "setText", "addAction"}
ROLES = re.compile(r"[^A-Za-z]*|/dev/.*|Heldwheel|N·m|[A-Z]{1,4}|[0-9.]+ (?:mm|N|N·m|l|min)|75W-90")


def shown_texts(path: Path) -> Iterator[str]:
    """Give the texts that a module hands to what shows them: first, hint and tip of every such call."""
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
def test_a_text_stands_in_one_catalogue_once(language: str):
    """What the analysis says stands in its catalogue alone: its pages and the window find the same words there."""
    written = (files("analysis.language") / f"analysis_{language}.ts").read_text("utf-8") + window_catalogue(language)
    found = re.findall(r"<source>(.*?)</source>", written, re.DOTALL)
    assert len(found) == len(set(found)), sorted({text for text in found if found.count(text) > 1})
    entries = re.findall(r"<message>(.*?)</message>", written, re.DOTALL)
    assert [one for one in entries if (one.count("<source>"), one.count("<translation>")) != (1, 1)] == []


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
        wrong = [s for s, t in catalogue(language).items() if "%1" not in s and "\n" not in s and tr(s) != unbroken(t)]
    finally:
        install("en")
    assert not wrong, "make translations: " + "; ".join(wrong[:5])


@pytest.mark.usefixtures("qapp", "german")
def test_figures_words_and_marks_are_carried_along():
    assert tr("Pull 2 of 5") == "Zug 2 von 5"
    assert tr("Transducer: not connected") == "Aufnehmer: nicht verbunden"
    assert tr("▲ Keep turning") == "▲ Weiterdrehen"
    assert tr("no such text 17") == "no such text 17"


@pytest.mark.parametrize("language", ["en", "de"])
def test_an_interval_does_not_leave_its_number_at_the_end_of_a_line(language: str, qapp):
    install(language)
    try:
        assert tr("scale known to ± 0.5 % (95 %)").endswith("0.5 %\u00a0(95\u00a0%)")
    finally:
        install("en")


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


# ---------------------------------------------------------------------- what the analysis says
ANALYSIS = Path(analysis.__file__).parent
VOCABULARY = (ANALYSIS.parent / "VOCABULARY.md").read_text("utf-8")
MESSAGES = (
    "trace/gates.py", "trace/live.py", "trace/neighbours.py", "trace/pulls.py", "trace/results.py", "trace/traces.py",
    "verdict/adequacy.py", "verdict/corrected.py", "verdict/job.py", "verdict/judge.py", "verdict/overloads.py",
    "verdict/repeats.py", "verdict/scatter.py", "verdict/setup.py", "to_axle/at_axle.py", "to_axle/dial.py",
    "identify/axle_type.py", "pipeline.py", "rows/road.py", "road/levels.py", "road/against.py",
    "identify/tyres.py", "trace/spin_down.py",
)  # fmt: skip
"""Modules whose every sentence reaches the window: reasons of a pull, notes of a result, rows of a budget."""
NOT_SHOWN = re.compile(
    r"must be columns of one length|gain \(reading / true\)|transducer's 7 is 7|must lie between|must be positive"
    r"|4 %, not 400 %|is the recording itself|spread of a|there is no question|is no answer|direction is told apart"
    r"|^nothing was received for$|^# chatter by level"
)
"""Errors of a call or of a command line, which no button of the window can make."""


def sentences(path: Path) -> Iterator[str]:
    """Give what a module says in three words or more, with a figure in each place, each sentence whole."""
    tree = ast.parse(path.read_text("utf-8"))
    silent = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):  # what is put together stands as a whole, its parts do not
        if isinstance(node, ast.JoinedStr):
            silent |= {id(part) for part in node.values}
    for node in ast.walk(tree):
        if id(node) in silent:
            continue
        if isinstance(node, ast.JoinedStr):
            text = "".join(str(p.value) if isinstance(p, ast.Constant) else "7" for p in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        if len(re.findall(r"[A-Za-z]{2,}", text)) > 2 and " " in text.strip():
            yield text.strip(" ;")


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("module", MESSAGES)
def test_what_the_analysis_says_is_translated(language: str, module: str, qapp):
    """A sentence of the analysis is its own key: its template stands in both catalogues."""
    install(language)
    try:
        missing = [s for s in sentences(ANALYSIS / module) if tr(s) == s and not NOT_SHOWN.search(s)]
    finally:
        install("en")
    assert not missing, "\n".join(missing)


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_template_takes_the_place_of_another(language: str, qapp):
    """Filled with figures, every template of the catalogue is found as itself."""
    known = catalogue(language)
    install(language)
    try:
        wrong = []
        for source, wanted in known.items():
            if "%1" in source and "\n" not in source and " · " not in source:
                figures = {place: f"{11 * int(place[1])}.5" for place in set(re.findall(r"%\d", source))}
                filled = [re.sub(r"%\d", lambda m: figures[m[0]], text) for text in (source, wanted)]  # noqa: B023
                if tr(filled[0]) != unbroken(filled[1]):
                    wrong.append(f"{filled[0]!r}: {tr(filled[0])!r}, not {filled[1]!r}")
    finally:
        install("en")
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize(("language", "column"), [("de", 3), ("es", 5)])
def test_a_thing_has_one_name_in_each_language(language: str, column: int):
    """What VOCABULARY.md dropped of a language stands in none of its translations."""
    table = VOCABULARY.partition("in German and Spanish")[2].partition("## One code")[0]
    dropped = [
        word
        for row in table.splitlines()
        if row.startswith("|")
        for word in re.findall(r"`([^`]+)`", row.split("|")[column])
    ]
    assert len(dropped) >= 5
    wrong = [
        f"{word}: {source!r}: {said!r}"
        for source, said in catalogue(language).items()
        for word in dropped
        if re.search(rf"(?<!\w){word}(?!\w)", said)
    ]
    assert not wrong, "\n".join(wrong)
