"""A ratio limit (in gear ÷ neutral): entered, honest about what is compared with what, judged from two recordings."""

from pathlib import Path

import msgspec
import pytest
from PySide6.QtTest import QTest

from analysis.identify.slips import kind_conflict
from analysis.pipeline import read_file
from analysis.report.verify import read_record
from gui.models.limit_entry import LimitDraft, check, draft_of
from gui.models.ratio import half_words, ratio_of
from logger.header import Decision, JobFacts, Limit
from tests.analysis.halves import FREE, RATIO, recording
from tests.gui.hand import Hand
from tests.gui.test_review import choose, review

TORQUE = Limit(quantity="breakaway", kind="min", unit="N·m", lower=20.0, source="manual")


# ---------------------------------------------------------------------- entry
def test_entry_needs_no_unit_and_no_held_part() -> None:
    checked = check(LimitDraft(kind="ratio min", lower="2,5", source="manual", page="3-7", held="case", gear="neutral"))
    assert checked.limit == RATIO
    assert checked.warnings == ()
    assert check(draft_of(RATIO)).limit == RATIO
    assert "lower" in check(LimitDraft(kind="ratio min", source="manual")).wrong


def test_which_half_a_recording_is() -> None:
    assert "half in neutral" in half_words(RATIO, "neutral")
    assert "Record the half in gear, too" in half_words(RATIO, "neutral")
    assert "say under" in half_words(RATIO, None)
    assert half_words(None, "neutral") == half_words(TORQUE, "neutral") == ""
    assert kind_conflict(RATIO, FREE) is None
    held = kind_conflict(RATIO, msgspec.structs.replace(FREE, held="other side"))
    assert "both wheels free" in held.text
    assert not held.refused


def test_the_editor_shows_what_a_ratio_needs(hand: Hand) -> None:
    hand.page.open_row("Limit")
    editor = hand.page.editor("Limit")
    editor.chosen["kind"].set_key("ratio min")
    editor.chosen["kind"].changed.emit()
    hand.tick()
    assert not editor.chosen["quantity"].box.isEnabled()
    assert editor.chosen["quantity"].key == "rotating maximum"
    for key in ("unit", "held", "gear", "beside_unit"):
        assert not editor.chosen[key].isVisible(), key
    QTest.keyClicks(editor.typed["lower"].edit, "2.5")
    QTest.keyClicks(editor.typed["source"].edit, "manual")
    assert hand.window.tester.card.limit.kind == "ratio min"
    row = hand.page.card_panel.rows["Limit"].accessibleName()
    assert "in gear ÷ neutral" in row
    assert "At least 2.5" in row
    assert "both wheels free" in row, "the card's test holds the other wheel"
    assert "half in neutral" in editor.warnings.text()


# ---------------------------------------------------------------------- judged
def test_two_recordings_give_the_ratio_of_their_levels(tmp_path: Path) -> None:
    """40 N·m over 12 N·m by construction: 3.33, as 0.8 over 0.24 kgf·m would be."""
    readings = [read_file(recording(tmp_path, gear, nm)) for gear, nm in (("neutral", 12.0), ("in gear", 40.0))]
    found = ratio_of(readings)
    value, half = (float(part) for part in found.text.split(" ± "))
    assert value == pytest.approx(40 / 12, rel=0.02)
    assert 0 < half < 0.2
    assert found.state == "within"
    assert "three-way" in found.rule
    assert found.parts == ("In gear: in-gear.csv", "In neutral: neutral.csv")
    assert ratio_of(readings[::-1]) == found, "the order in which they are chosen does not matter"
    assert any("simulated" in note for note in found.notes)


def test_what_is_no_pair_gives_none_and_what_does_not_belong_together_is_said(tmp_path: Path) -> None:
    neutral = read_file(recording(tmp_path, "neutral", 12.0))
    assert ratio_of([neutral]) is None
    assert ratio_of([neutral, neutral]) is None
    held = msgspec.structs.replace(FREE, gear="in gear", held="other side", side="left")
    other = read_file(recording(tmp_path, "in gear", 29.9, test=held, job=JobFacts(vehicle="red car")))
    found = ratio_of([other, neutral])
    said = " ".join(found.notes)
    for doubt in ("both wheels free", "another vehicle", "another side"):
        assert doubt in said


@pytest.mark.parametrize(("rule", "state"), [("three-way", "too close to call"), ("guarded rejection", "within")])
def test_the_rule_decides_a_ratio_too(tmp_path: Path, rule: str, state: str) -> None:
    decision = Decision(rule=rule)
    paths = [
        recording(tmp_path, "neutral", 16.0, decision=decision),
        recording(tmp_path, "in gear", 40.0, decision=decision),
    ]
    found = ratio_of([read_file(path) for path in paths])
    assert float(found.text.split()[0]) == pytest.approx(2.5, rel=0.01)
    assert (found.state, found.rule.split(",")[0]) == (state, rule)


def test_review_judges_the_pair_and_calls_one_a_half(hand: Hand, home: Path) -> None:
    for gear, nm in (("neutral", 12.0), ("in gear", 40.0)):
        recording(home / "recordings", gear, nm)
    hand.window.open_page("Review")
    hand.qtbot.waitUntil(lambda: review(hand).all_s > 0, timeout=20_000)
    choose(hand, 0)
    card = review(hand).reading.result
    assert "Half of a ratio" in card._badge.accessibleName()
    assert "choose both" in card._notes.text()
    choose(hand, 0, 1)
    assert card._value.text().startswith("3.3")
    assert "Within" in card._badge.accessibleName()
    assert "at least 2.5" in card._limit.text()
    assert "three-way" in card._limit.text()
    hand.set_comma(True)
    assert card._value.text().startswith("3,3")


def test_a_test_of_one_half_says_so_and_review_opens_with_both(hand: Hand, home: Path) -> None:
    tester = hand.window.tester
    hand.to_pulls()
    tester.card.put(limit=RATIO, test=msgspec.structs.replace(FREE, gear="neutral"))
    hand.pull()
    assert hand.run.value.quantity == "rotating maximum"
    assert hand.run.value.state == ""
    assert "Half of a ratio" in hand.page.pulls._badge.accessibleName()
    assert "half in neutral" in hand.page.pulls._notes.text()
    first, second = (recording(home / "recordings", gear, 12.0) for gear in ("neutral", "in gear"))
    tester.bridge.recording = first
    tester.sign()
    assert tester.to_review() == (first,)
    tester.card.put(test=msgspec.structs.replace(FREE, gear="in gear"))
    tester.bridge.recording = second
    tester.sign()
    assert set(tester.to_review()) == {first, second}
    hand.window.show_recordings(tester.to_review())
    chosen = {entry.path for entry in review(hand).list.selected()}
    assert chosen == {str(first), str(second)}


@pytest.mark.parametrize("ending", ["html", "pdf"])
def test_review_writes_one_page_of_both_halves(
    hand: Hand, home: Path, ending: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    paths = [recording(home / "recordings", gear, nm) for gear, nm in (("neutral", 12.0), ("in gear", 40.0))]
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    target = home / f"ratio.{ending}"
    offered = []

    def chosen(_parent: object, _title: str, start: str, kinds: str) -> tuple[str, str]:
        offered.append(start)
        return str(target), kinds.split(";;")[0]

    monkeypatch.setattr("gui.pages.pages_part.QFileDialog.getSaveFileName", chosen)
    choose(hand, 0, 1)
    page.readings.loading[str(paths[0])] = None
    page.pages.ask_page()
    assert "still being read" in page.notice.text.text()
    assert not offered, "a page of one half by haste would be no page of the ratio"
    del page.readings.loading[str(paths[0])]
    page.pages.ask_page()
    hand.qtbot.waitUntil(lambda: "Written to" in page.notice.text.text(), timeout=60_000)
    assert offered == [str(paths[1].with_suffix("")) + "-report.pdf"], "named after the half in gear"
    record = read_record(target)
    assert record["recording"]["file"] == "in-gear.csv"
    assert record["neutral"]["file"] == "neutral.csv"
    assert record["claims"]["state"] == "within"
