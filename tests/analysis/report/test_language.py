"""A page in German and Spanish: nothing stays English, a user's own words and figures stay, and it verifies."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache

import pytest

from analysis.language.translator import catalogue
from analysis.pipeline import Asked
from analysis.report import spoken, words
from analysis.report.gather import ratio_material
from analysis.report.html import RECORD_CLOSES, RECORD_OPENS, to_html
from analysis.report.material import DialLine, DragPart, PackLine, PageKind
from analysis.report.spoken import said
from analysis.report.verify import Holds, verify
from analysis.report.visible import texts_of
from analysis.report.write import content_of, render, write_report
from analysis.rows.gear import read_halves
from analysis.verdict.limits import Guard, Rule, State, bounds_from, decide
from logger.errors import InputError
from logger.header import Conditions, Lever, Zero
from logger.header import Test as Kind
from tests.analysis.halves import recording
from tests.analysis.report.reading import texts_of_pdf
from tests.analysis.report.test_write import FILLED
from tests.analysis.sample import LIMIT, header, issue, material, pull
from tests.noting import Noting

LANGUAGES = ("de", "es")
ALIKE = re.compile(
    r"(?<![A-Za-z])(?:N·m|lbf·ft|mm|in|kg|km|ms|s|Hz|°C|SHA|JCGM|p\.|heldwheel-read report --verify)(?![a-z])"
)
"""Units and names, of which no language has a word of its own."""

INVENTED = "jerked"  # a reason of no gate


def says(text: str) -> bool:
    """Say whether a text has words besides units and names; somebody's own words wait in a private area."""
    text = ALIKE.sub(" ", text)
    return INVENTED not in text and re.search(r"[^\W\d_\ue000-\uf8ff]{2}", text) is not None


@cache
def materials(folder):
    """Give what pages are made from: all fields, none, drag and a close result, a dial, a ratio."""
    halves = read_halves(*(recording(folder, gear, nm) for gear, nm in (("in gear", 40.0), ("neutral", 12.0))), Asked())
    drag = DragPart("free.csv", "cd" * 32, (PackLine("breakaway", "forwards", (55.0, 1.0), None, None, "T1 - T2"),))
    dial = (DialLine(1, "breakaway", "40 lbf·ft", "division 1 lbf·ft, class 4 %", 54.2, 1.1),)
    bare = header(test=Kind(), conditions=Conditions(pads_fitted=True, parking_brake="off", propshaft_fitted=False))
    moved = header(zero=Zero(value_nm=0.1, after_nm=0.3), lever=Lever(fixture="one stud"))
    close = decide(50.0, 0.6, bounds_from(LIMIT))
    plain = material(problems=(), head=FILLED)
    return (
        plain,
        material(problems=(), head=bare, limit=None, budget=None, factor=None, pulls=0, job=()),
        material(problems=(), head=moved, drag=drag, result=close),
        replace(plain, dial=dial),
        ratio_material(*halves),
    )


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("halves")


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_text_of_a_page_stays_english(folder, language, monkeypatch):
    noting = Noting(catalogue(language), says)
    monkeypatch.setattr(spoken, "translator", lambda _: noting)
    for made in materials(folder):
        for kind in PageKind:
            to_html(content_of(made, issue(kind, language=language)))
    assert noting.left == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_reasons_of_a_pull_are_told_in_full(language):
    """The gates' own sentences, two of them in a row."""
    pulls = (pull(1, 40.0, reasons=("too short: only 0.4 s of steady turning: keep turning evenly, two seconds or more",
                                    "ramp too fast: jerked")),)  # fmt: skip
    lines = next(
        s.lines for s in content_of(replace(material(), pulls=pulls), issue(language=language)).sections if s.lines
    )
    assert any("0,4 s" in line and "only" not in line for line in lines)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_rule_and_state_has_its_sentence(language):
    for rule in Rule:
        risks = (words.risk_words(rule, guard) for guard in Guard)
        for text in (str(rule), words.RULES[rule], *risks):
            assert said(text, language) != text or text == "simple"
        for state in State:
            found = replace(decide(50.0, 0.6, bounds_from(LIMIT)), rule=rule, state=state)
            ratio = replace(found, bounds=bounds_from(LIMIT.__class__(
                quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="manual")))  # fmt: skip
            for text in (str(state), words.plain_state(found), words.plain_state(ratio)):
                assert said(text, language) != text


def test_own_words_and_versions_stay_and_figures_get_a_comma():
    """Decimal sign of German: DIN 1333; a user's oil "open 5.0 W" is a name, whatever its words mean elsewhere."""
    head = header(conditions=Conditions(fluid="clockwise 5.0", oil_temperature_c=21.5))
    content = content_of(material(head=head), issue(language="de", remarks="within 3.5 of neutral"))
    shown = " ".join(texts_of(render(content, "html")))
    assert "clockwise 5.0, 21,5 °C" in shown
    assert "within 3.5 of neutral" in shown
    assert "55,3 ± 1,7 N·m" in shown
    assert "Auftrag" in shown
    assert re.search(r"Heldwheel \d+\.\d+\.\d+", content.footer)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(("kind", "head"), [(PageKind.CUSTOMER, FILLED), (PageKind.ENGINEER, FILLED)])
def test_a_usual_page_is_one_sheet(language, kind, head, monkeypatch):
    _, sheets = texts_of_pdf(content_of(material(head=head), issue(kind, language=language)), monkeypatch)
    assert sheets == 1


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_a_german_page_verifies_and_its_words_are_compared(folder, tmp_path, form):
    made = materials(folder)[0]
    page = write_report(content_of(made, issue(language="de")), tmp_path / f"page.{form}")
    found = verify(page, lambda _: made)
    assert found.holds is Holds.YES
    assert dict(found.computed)["result"].startswith("within")  # what the verifier says is English
    assert ("customer", "the club") in found.stated
    if form == "html":
        page.write_bytes(page.read_bytes().replace(b"innerhalb</div>", "außerhalb</div>".encode()))
        assert verify(page, lambda _: made).holds is Holds.NO


def test_the_language_stands_in_the_record_and_english_needs_no_word():
    def record(language):
        page = render(content_of(material(), issue(language=language)), "html").decode()
        return json.loads(page.partition(RECORD_OPENS)[2].partition(RECORD_CLOSES)[0])

    german, english = record("de"), record("en")
    assert german["issue"].pop("language") == "de"
    for one in (german, english):
        del one["id"]
    assert german == english  # figures and states of the record are of no language


def test_an_unknown_language_is_refused():
    with pytest.raises(InputError, match="en, de, es"):
        content_of(material(), issue(language="fr"))
