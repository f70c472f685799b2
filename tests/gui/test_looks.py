"""What a glance must find: one accent at a time, the button of a sheet in sight, drawings in the window's colours."""

from dataclasses import replace
from datetime import UTC, datetime

import msgspec
import numpy as np
import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QImage
from PySide6.QtSvgWidgets import QSvgWidget
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QWidget

from analysis.pipeline import read_file
from analysis.verdict.limits import percent
from gui.models.archive import ArchiveEntry, searched
from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
from gui.pages.card_panel import CardRow
from gui.pages.editors.axle import BUILD, KNOWN, TYPE
from gui.pages.guide_dialog import GuideDialog
from gui.pages.result_card import ResultCard
from gui.translation import sentence
from gui.widgets.hub import LOWEST_PX, HubDrawing
from tests.gui.contrast import contrast
from tests.gui.hand import Hand
from tests.gui.shots.studio import EXAMPLES


def accents(hand: Hand) -> list[str]:
    """Give the buttons in sight that carry the accent and can be pressed."""
    return [
        press.text()
        for press in hand.page.findChildren(QPushButton)
        if press.property("role") == "main" and press.isVisible() and press.isEnabled()
    ]


@pytest.fixture
def ready(hand: Hand) -> Hand:
    """A job card that a test can be started with."""
    hand.window.resize(1366, 768)
    card = hand.window.tester.card
    fill_card(card, PracticeLink(scenario_for_practice()))
    card.practice = False
    card.put(address="/dev/ttyS9", axle=msgspec.structs.replace(card.axle, tag="A-9"))
    hand.tick()
    return hand


def test_one_accent_at_a_time(ready: Hand) -> None:
    page = ready.page
    assert accents(ready) == ["Start the test"], "not the practice as well, once the card is filled in"
    ready.key(Qt.Key.Key_D)
    form = page.editor("Dial")
    ready.check_all(form)
    QTest.keyClicks(form.reading.edit, "48")
    QTest.keyClick(form.reading.edit, Qt.Key.Key_Return)
    form.name.edit.clear()
    QTest.keyClicks(form.name.edit, "jo")
    ready.tick()
    assert accents(ready) == ["Sign and file"]
    assert page.foot.main.property("role") == "second"
    form.name.edit.clear()
    QTest.keyClicks(form.name.edit, " ")
    ready.tick()
    assert accents(ready) == ["Start the test"], "nothing can be filed without a name"
    page.open_row("Axle")
    axle = page.editor("Axle")
    for part, wanted in ((BUILD, ["Keep this build"]), (KNOWN, ["Start the test"]), (TYPE, None), (BUILD, None)):
        axle.show_part(part)
        ready.tick()
        assert len(accents(ready)) == 1
        assert wanted is None or accents(ready) == wanted
    axle.done.click()
    ready.tick()
    assert accents(ready) == ["Start the test"]


def test_a_start_with_an_empty_card_leads_to_the_practice(hand: Hand) -> None:
    assert accents(hand) == ["Practise now"]


def test_a_build_is_kept_without_scrolling(ready: Hand) -> None:
    ready.page.open_row("Axle")
    axle = ready.page.editor("Axle")
    axle.show_part(BUILD)
    axle.build.entry.add("shim")
    ready.tick()
    keep = axle.build.keep
    assert keep.isVisible()
    at = QRect(keep.mapTo(ready.window, QPoint(0, 0)), keep.size())
    assert ready.window.rect().contains(at)
    assert not axle.area.isAncestorOf(keep), "scrolling the sheet does not move it"
    ready.press(keep)
    assert axle.build.message.isVisible()
    said = QRect(axle.build.message.mapTo(axle.area, QPoint(0, 0)), axle.build.message.size())
    assert axle.area.rect().contains(said), "what came of it is in sight, too"
    axle.show_part(KNOWN)
    assert not keep.isVisible()


@pytest.mark.parametrize("tag", ["Front axle 43/11", "A-117"])
def test_the_chart_of_an_axle_is_of_its_whole_tag(ready: Hand, tag: str) -> None:
    ready.window.show_chart(tag)
    search = ready.window.pages["Compare"].search.text

    def found(facts: dict[str, str | float]) -> bool:
        return all(ArchiveEntry("a.csv", datetime.now(UTC), 1, facts=facts).holds(word) for word in searched(search))

    assert found({"tag": tag})
    assert not found({"tag": f"{tag}7"}), "another axle whose tag begins alike"
    assert not found({"tag": tag.split()[0] + " x"})
    assert not found({"vehicle": tag})


@pytest.mark.parametrize("palette", ["dark", "light"])
def test_the_guides_drawings_are_in_the_windows_colours(hand: Hand, palette: str) -> None:
    look = hand.window._shared.look
    look.use(palette=palette)
    guide = GuideDialog(hand.window._shared, hand.window)
    guide.show()
    hand.tick()
    picture = guide.findChild(QSvgWidget)
    place = QRect(picture.mapTo(guide, QPoint(0, 0)), picture.size())
    shown = guide.grab(place).toImage().convertToFormat(QImage.Format.Format_RGB32)
    pixels = np.frombuffer(shown.constBits(), np.uint8).reshape(shown.height(), shown.bytesPerLine() // 4, 4)
    values, counts = np.unique(pixels[:, : shown.width(), 2::-1].reshape(-1, 3), axis=0, return_counts=True)
    ground = "#" + "".join(f"{v:02x}" for v in values[np.argmax(counts)])
    assert ground == look.palette.surface
    drawn = {"#" + "".join(f"{v:02x}" for v in value) for value in values}
    assert look.palette.text in drawn
    assert max(contrast(colour, ground) for colour in drawn) > 7
    assert picture.mapTo(guide, QPoint(0, 0)).x() > guide.findChild(QPushButton).x(), "inset from the text's edge"
    guide.accept()


def test_a_dial_without_a_fixture_leads_to_it(hand: Hand) -> None:
    hand.key(Qt.Key.Key_D)
    form = hand.page.editor("Dial")
    hand.check_all(form)
    QTest.keyClicks(form.reading.edit, "48")
    hand.tick()
    assert "No fixture yet" in form.at_axle.text()
    hand.press(form.fixture)
    assert hand.page.middle.currentWidget() is hand.page.editor("Fixture")
    fill_card(hand.window.tester.card, PracticeLink(scenario_for_practice()))
    assert form.fixture.isHidden()


def test_the_levers_ends_are_named_where_it_is_filled_in(ready: Hand, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []
    plain = HubDrawing._label
    monkeypatch.setattr(HubDrawing, "_label", lambda own, *rest: (said.append(rest[-1]), plain(own, *rest)))
    ready.page.open_row("Fixture")
    ready.page.editor("Fixture").drawing.grab()
    assert {"drive", "hand", "L 450 mm"} <= set(said)


def test_a_probability_is_never_rounded_to_certainty(ready: Hand) -> None:
    card = ResultCard(ready.window._shared)
    reading = read_file(EXAMPLES / "01-arrival-left.csv")
    assert reading.result is not None
    for chance in (0.99987, 0.5, 0.00001):
        card.show_reading(replace(reading, result=replace(reading.result, probability=chance)))
        assert f"probability of conformity {percent(chance)}" in card._limit.text()
        assert "100" not in card._limit.text().partition("conformity")[2]


def within(part: QWidget, room: QWidget) -> bool:
    """Say whether a part lies wholly inside of another."""
    return room.rect().contains(QRect(part.mapTo(room, QPoint(0, 0)), part.size()))


def test_the_cards_drawing_takes_what_the_rows_leave(ready: Hand) -> None:
    """At 1366 x 768 the hub is drawn whole or not at all, and the rows need no scrolling for its sake."""
    card = ready.page.card_panel
    area = card.drawing.parentWidget().parentWidget().parentWidget()
    assert within(card.drawing, area)
    assert area.verticalScrollBar().maximum() == 0
    assert card.drawing.height() >= LOWEST_PX


def test_the_foots_buttons_keep_their_place(ready: Hand) -> None:
    ready.to_pulls()
    foot = ready.page.foot
    before = [(part.mapTo(foot, QPoint(0, 0)).x(), part.width()) for part in (foot.dial_button, foot.stop)]
    assert before[1][0] + before[1][1] >= foot.width() - 14, "at the right edge"
    ready.pull()
    assert foot.skip.isVisible()
    ready.tick()
    after = [(part.mapTo(foot, QPoint(0, 0)).x(), part.width()) for part in (foot.dial_button, foot.stop)]
    assert after == before


def test_the_question_of_compare_is_not_cut_at_its_side(ready: Hand, qtbot) -> None:
    ready.window.open_page("Compare")
    page = ready.window.pages["Compare"]
    for name in page.panels:
        page.open_answer(name)
        qtbot.waitUntil(lambda: page._scroll.horizontalScrollBar().maximum() == 0, timeout=20_000)


def test_what_came_of_a_dial_job_stands_first(ready: Hand) -> None:
    ready.key(Qt.Key.Key_D)
    form = ready.page.editor("Dial")
    ready.check_all(form)
    QTest.keyClicks(form.reading.edit, "48")
    QTest.keyClick(form.reading.edit, Qt.Key.Key_Return)
    form.name.edit.setText("jo")
    form.refresh()
    ready.press(form.sign)
    assert form.filed is not None
    for part in (form.written, form.report, form.review):
        assert part.isVisible()
        assert within(part, form.area)
    assert not any(row.box.isChecked() for row in form._rows), "another job, another look"


def test_a_remark_begins_with_a_capital(ready: Hand) -> None:
    assert sentence("one pull: scatter not known") == "One pull: scatter not known"
    row = CardRow(ready.window._shared.look, "Limit", "Key 5")
    row.show_lines("At least 2.5", there=True, warn="a ratio in gear ÷ neutral is for both wheels free")
    assert "A ratio" in row.accessibleName()
