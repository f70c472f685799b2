"""The job card as a document: saved as it is typed, opened again, begun anew, asked about before it is left."""

from pathlib import Path

import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtTest import QTest

from gui.models.flow import Step
from gui.models.job import JobCard
from gui.models.jobs import KEPT, Jobs
from logger.decoder.description import read_description
from logger.header import JobFacts
from tests.gui.hand import Hand
from tests.gui.test_truth import LEVER, LIMIT, real_card, start_real


def saved(hand: Hand) -> None:
    """Wait until the card is on disk, as it is by itself a moment after the last key."""
    tester = hand.window.tester
    hand.qtbot.waitUntil(lambda: not tester._saving.isActive() and tester.jobs.path is not None, timeout=5000)


def type_vehicle(hand: Hand, text: str) -> None:
    hand.page.open_row("Job")
    edit = hand.page.editor("Job").texts["job", "vehicle"].edit
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, text)
    hand.page.close_editor()


def test_what_is_typed_is_there_after_a_crash(hand: Hand, qtbot) -> None:
    real_card(hand)
    type_vehicle(hand, "club car 7")
    saved(hand)
    parts = hand.window.tester.card.parts()
    again = Hand(qtbot)  # the first window was never closed
    assert again.window.tester.card.parts() == parts
    assert again.window.tester.card.job.vehicle == "club car 7"
    again.close()


def test_new_job_as_last_time_and_an_earlier_one(hand: Hand) -> None:
    tester = hand.window.tester
    real_card(hand)
    type_vehicle(hand, "club car 7")
    first = tester.card.parts()
    tester.new_job()
    assert (tester.card.job.vehicle, tester.card.lever, tester.card.limit) == ("", None, None)
    assert tester.card.description == first["description"], "the workshop's transducer stays"
    type_vehicle(hand, "club car 8")
    tester.as_last_time()
    assert (tester.card.lever, tester.card.limit, tester.card.job.vehicle) == (LEVER, LIMIT, "club car 8")
    saved(hand)
    hand.page.card_panel.menu.aboutToShow.emit()
    words = [action.text() for action in hand.page.card_panel.menu.actions()]
    assert words[0] == "New job"
    assert sum("club car 7" in text for text in words) == 1
    next(a for a in hand.page.card_panel.menu.actions() if "club car 7" in a.text()).trigger()
    assert tester.card.parts() == first
    hand.page.open_row("Job")
    assert hand.page.editor("Job").texts["job", "vehicle"].text == "club car 7"


def test_a_practice_is_no_job_on_file(hand: Hand, home: Path) -> None:
    real_card(hand)
    saved(hand)
    before = {path: path.read_bytes() for path in (home / "jobs").iterdir()}
    hand.practise()
    type_vehicle(hand, "made up")
    hand.window.tester.save_job()
    assert {path: path.read_bytes() for path in (home / "jobs").iterdir()} == before


def test_every_part_of_the_card_comes_back_from_its_file(tmp_path: Path) -> None:
    card = JobCard()
    card.put(
        description=read_description("plain-text"), lever=LEVER, limit=LIMIT, job=JobFacts(vehicle="x"), dwell_s=7.0
    )
    jobs = Jobs(tmp_path / "jobs")
    jobs.save(card)
    assert jobs.open(jobs.path) == {name: getattr(card, name) for name in KEPT}
    Jobs(tmp_path / "none").save(JobCard())
    assert not (tmp_path / "none").exists(), "an empty card is no job"


@pytest.mark.parametrize("answer", [True, False])
def test_closing_in_the_middle_of_a_test_is_asked_about(hand: Hand, answer: bool) -> None:
    start_real(hand)
    confirm = hand.window._shared.confirm
    confirm.always, confirm.asked = answer, []
    event = QCloseEvent()
    hand.window.closeEvent(event)
    assert confirm.asked == ["A test is under way. Close all the same?"]
    assert event.isAccepted() == answer
    assert hand.stream.stopped == answer
    confirm.always = True


@pytest.mark.parametrize("answer", [True, False])
def test_ending_with_unsigned_pulls_is_asked_about(hand: Hand, answer: bool) -> None:
    start_real(hand)
    hand.pull()
    confirm = hand.window._shared.confirm
    confirm.always, confirm.asked = answer, []
    hand.press(hand.page.foot.stop)
    assert confirm.asked == ["End the test without signing its pull?"]
    assert (hand.run.flow.now is Step.PULLS) == (not answer)
    confirm.always = True


def test_kept_dial_readings_survive_a_crash_and_follow_the_fixture(hand: Hand, qtbot) -> None:
    real_card(hand)
    hand.key(Qt.Key.Key_D)
    editor = hand.page.editor("Dial")
    assert not editor.reading.edit.isEnabled(), "first the checks"
    hand.check_all(editor)
    for text in ("40", "42", "41"):
        QTest.keyClicks(editor.reading.edit, text)
        QTest.keyClick(editor.reading.edit, Qt.Key.Key_Return)
    assert len(editor.kept) == 3
    saved(hand)
    again = Hand(qtbot)  # the first window was never closed
    again.key(Qt.Key.Key_D)
    there = again.page.editor("Dial")
    assert [budget.value for budget in there.kept] == [budget.value for budget in editor.kept]
    first = there.kept[0].value
    again.window.tester.card.put(lever=msgspec.structs.replace(LEVER, length_mm=1000.0))
    assert there.kept[0].value < first, "half the correction on twice the lever"
    again.close()
