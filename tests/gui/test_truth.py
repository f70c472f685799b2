"""What the window must never do: a practice limit for a real car, the past as the present, a signed result changed."""

import dataclasses
import time
from pathlib import Path

import msgspec
import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.models.flow import Stand, Step
from gui.models.trace import joined
from gui.pages.checks_panel import CheckRow
from logger.decoder.description import read_description
from logger.header import Lever, Limit
from logger.samples import Event, EventKind
from logger.stream.health import Health, SessionState
from tests.gui.fakes import FakeStream
from tests.gui.hand import Hand

LEVER = Lever(fixture="one stud", name="long", length_mm=500.0, stud_circle_mm=100.0, studs=4, angle_deg=0.0)
LIMIT = Limit(quantity="breakaway", kind="min", lower=20.0, unit="N·m", source="club rules", held="other side")


def real_card(hand: Hand) -> None:
    """A transducer, a fixture and a limit of one's own."""
    gauge = read_description("plain-text")
    hand.window.tester.card.put(description=gauge, address="/dev/ttyUSB7", lever=LEVER, limit=LIMIT)
    hand.tick()


def start_real(hand: Hand) -> None:
    """As far as the pulls of a real test."""
    real_card(hand)
    hand.stream.simulated = False
    hand.space()
    while hand.run.flow.now is Step.SAFETY:
        hand.space()
    hand.stream.idle(0.5)
    hand.tick()
    hand.space()
    hand.stream.idle(2.5)
    hand.tick()
    hand.tick()
    assert hand.run.flow.now is Step.PULLS


# ---------------------------------------------------------------------- practice
@pytest.mark.parametrize("leave", ["end", "next"])
def test_nothing_of_a_practice_stays_on_the_job_card(hand: Hand, leave: str) -> None:
    real_card(hand)
    card = hand.window.tester.card
    before = card.parts()
    hand.practise()
    assert card.practice
    assert card.limit.source == "invented for practice, no manual"
    assert "Practice card" in hand.page.card_panel._head.text()
    if leave == "next":
        hand.run.flow.finished, hand.run.flow.now = True, None
        hand.space()
    else:
        hand.press(hand.page.foot.stop)
    assert card.parts() == before
    assert hand.page.card_panel._head.text() == "Job card"


def test_choosing_a_transducer_ends_the_practice(hand: Hand) -> None:
    hand.practise()
    hand.page.open_row("Transducer")
    hand.page.editor("Transducer").take(read_description("plain-text"))
    hand.tick()
    card = hand.window.tester.card
    assert not card.practice
    assert (card.limit, card.lever, card.axle.type, card.job.vehicle) == (None, None, "", "")
    assert hand.run.action().text == "Start the test"
    assert not hand.run.action().enabled


def test_forms_show_the_card_that_is_there(hand: Hand) -> None:
    hand.page.open_row("Fixture")
    assert hand.page.editor("Fixture").fields["length_mm"].text == ""
    hand.page.close_editor()
    real_card(hand)
    hand.practise()
    hand.page.open_row("Fixture")
    assert hand.page.editor("Fixture").fields["length_mm"].text == "450 mm"
    hand.page.close_editor()
    hand.press(hand.page.foot.stop)
    hand.page.open_row("Fixture")
    assert hand.page.editor("Fixture").fields["length_mm"].text == "500 mm"


# ---------------------------------------------------------------------- units, ports
@pytest.mark.parametrize(("typed", "accepted"), [("17.5", False), ("17.5 in", True), ("444.5 mm", True)])
def test_a_length_without_its_unit_is_asked_for(hand: Hand, typed: str, accepted: bool) -> None:
    real_card(hand)
    hand.page.open_row("Fixture")
    editor = hand.page.editor("Fixture")
    edit = editor.fields["length_mm"].edit
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, typed)
    card = hand.window.tester.card
    assert (card.lever is not None) == accepted
    assert ("a fixture without faults" in card.missing()) == (not accepted)
    if accepted:
        assert card.lever.length_mm == pytest.approx(444.5)
    else:
        assert "In which unit?" in editor.fields["length_mm"]._wrong.text()
        assert "17.5 in" in editor.fields["length_mm"]._wrong.text()


def test_the_port_comes_back_with_its_transducer(hand: Hand, qtbot) -> None:
    tester = hand.window.tester
    gauge = read_description("plain-text")
    hand.window._shared.library.transducers.save(gauge)
    tester.card.put(lever=LEVER, description=gauge)
    assert tester.card.missing() == ("the port or address of the transducer",)
    tester.card.put(address="/dev/ttyUSB7")
    assert tester.card.missing() == ()
    hand.window.close()
    again = Hand(qtbot)
    card = again.window.tester.card
    assert (card.description.name, card.address) == (gauge.name, "/dev/ttyUSB7")
    again.page.open_row("Transducer")
    card.put(address="")
    again.page.editor("Transducer").take(gauge)
    assert card.address == "/dev/ttyUSB7"
    again.close()


def test_what_is_typed_next_is_in_the_unit_on_screen(hand: Hand) -> None:
    hand.window.set_unit("lbf·ft")
    assert hand.page.editor("Limit").draft().unit == "lbf·ft"
    assert hand.page.editor("Dial").unit.key == "lbf·ft"


# ---------------------------------------------------------------------- a stream that has stopped
class Stale(FakeStream):
    """A stream whose last reading came some time ago."""

    ago_s = 0.0

    @property
    def health(self) -> Health:
        return dataclasses.replace(super().health, last_arrival_s=time.monotonic() - self.ago_s)


def test_a_reading_of_the_past_is_not_shown_as_the_present(hand: Hand) -> None:
    hand.stream = stream = Stale()
    hand.to_pulls()
    stream.half_a_pull()
    hand.tick()
    assert hand.page.live.coach.text()
    assert hand.page.live.view.tone == "text"
    stream.ago_s = 0.7
    hand.tick()
    assert hand.run.silent
    assert hand.page.live.view.tone == "muted"
    assert "No signal" in hand.page.live.view.caption
    assert hand.page.live.coach.text() == "No signal: wait, do not pull"
    assert "No signal" in hand.page.foot.device.text()
    assert "readings/s" not in hand.page.foot.device.text()
    hand.key(Qt.Key.Key_F)
    hand.tick()
    assert hand.page.far.coach.text() == "No signal: wait, do not pull"
    hand.page.far.close()
    stream.ago_s = 0.0
    hand.tick()
    assert not hand.run.silent
    assert hand.page.live.view.tone == "text"


@pytest.mark.parametrize("state", [SessionState.SILENT, SessionState.RECONNECTING])
def test_a_lost_cable_stops_the_coach_and_counts_nothing_as_complete(
    hand: Hand, stream: FakeStream, state: SessionState
) -> None:
    hand.to_pulls()
    stream.half_a_pull()
    hand.tick()
    stream.state = state
    hand.tick()
    assert str(hand.run.hint) == ""
    assert "none lost" not in hand.page.foot.device.text()
    assert "readings/s" not in hand.page.foot.device.text()
    assert hand.run.dwell_left_s is None


def test_no_line_is_drawn_where_nothing_was_sent() -> None:
    fast = np.arange(0, 2, 0.001)
    assert joined(fast) is None
    assert joined(np.arange(0, 60, 2.0)) is None, "a slow gauge has no break between its readings"
    gap = np.concatenate((fast, fast + 5.0))
    parts = joined(gap)
    assert np.flatnonzero(~parts).tolist() == [len(fast) - 1]


def test_a_doubt_about_the_zero_is_told_as_one_and_can_be_settled(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    text = (
        "before the break it read 40, now 0: unless you let go, it zeroed itself; take the load off and check the zero"
    )
    stream.push(np.zeros(100), (Event(EventKind.AUTO_ZERO, text=text),))
    hand.tick()
    assert "unless you let go" in hand.page.notice.text.text()
    hand.key(Qt.Key.Key_F)
    hand.tick()
    assert "unless you let go" in hand.page.far.notice.text()
    hand.page.far.close()
    hand.tick()
    hand.press(hand.page.notice.zero)
    assert hand.run.flow.now is Step.ZERO
    hand.space()
    stream.idle(2.5)
    hand.tick()
    assert hand.run.flow.now is Step.PULLS


# ---------------------------------------------------------------------- checks, and the end of the pulls
@pytest.mark.parametrize("part", ["box", "words"])
def test_a_check_is_ticked_by_the_mouse(hand: Hand, part: str) -> None:
    real_card(hand)
    hand.space()
    row = hand.page.checks.findChildren(CheckRow)[2]
    target = getattr(row, part)
    QTest.mouseClick(target, Qt.MouseButton.LeftButton, pos=target.rect().center())
    hand.tick()
    assert [check.ticked for check in hand.run.checks].index(True) == 2
    QTest.mouseClick(row.words, Qt.MouseButton.LeftButton)
    hand.tick()
    assert not any(check.ticked for check in hand.run.checks)


def test_a_check_is_ticked_by_a_touch_and_by_its_own_key(hand: Hand) -> None:
    real_card(hand)
    hand.space()
    row = hand.page.checks.findChildren(CheckRow)[1]
    finger = QTest.createTouchDevice()
    at = row.words.mapTo(hand.window, row.words.rect().center())
    QTest.touchEvent(hand.window, finger).press(0, at).commit()
    QTest.touchEvent(hand.window, finger).release(0, at).commit()
    hand.tick()
    assert hand.run.checks[1].ticked
    row.box.setFocus()
    QTest.keyClick(row.box, Qt.Key.Key_Space)
    hand.tick()
    assert not hand.run.checks[1].ticked


def test_checks_are_asked_again_for_another_kind_of_test(hand: Hand) -> None:
    start_real(hand)
    hand.pull()
    card = hand.window.tester.card
    card.put(test=msgspec.structs.replace(card.test, gear="in gear"))
    hand.tick()
    assert hand.run.flow.now is Step.SAFETY
    assert [check.key for check in hand.run.checks if not check.ticked] == ["in-gear"]
    assert len(hand.run.pulls.pulls) == 1
    hand.space()
    hand.space()
    assert hand.run.flow.now is Step.PULLS


def test_the_space_bar_cannot_end_the_pulls_early(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    hand.pull()
    assert hand.page.foot.main.text() == "Pull 2 of 3"
    for _ in range(4):
        hand.space()
        hand.press(hand.page.foot.main)
    assert hand.run.flow.now is Step.PULLS
    stream.half_a_pull()
    hand.tick()
    assert not hand.page.foot.skip.isVisible(), "not while the lever is loaded"
    hand.key(Qt.Key.Key_S)
    assert hand.run.flow.now is Step.PULLS
    stream.idle(3.0)
    hand.tick()
    hand.press(hand.page.foot.skip)
    assert hand.run.flow.now is Step.ZERO_AGAIN
    hand.press(hand.page.foot.back)
    assert hand.run.flow.now is Step.PULLS
    assert hand.run.flow.stands[Step.ZERO_AGAIN] is Stand.TO_COME


def test_a_pull_after_the_last_one_leads_back_to_the_pulls(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    hand.space()
    assert hand.run.flow.now is Step.ZERO_AGAIN
    hand.pull()
    assert hand.run.flow.now is Step.PULLS
    assert len(hand.run.pulls.counting) == 4
    assert len(stream.begun) == 2, "it stands in the same recording"


def test_after_understood_the_space_bar_is_the_large_buttons(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    stream.push(np.zeros(50), (Event(EventKind.AUTO_ZERO),))
    hand.tick()
    hand.press(hand.page.notice.close_button)
    assert QApplication.focusWidget() is hand.page.foot.main
    hand.space()
    assert hand.page.open_form == ""


# ---------------------------------------------------------------------- signed is final
def test_what_was_signed_stays_as_it_was(hand: Hand) -> None:
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    hand.space()
    hand.space()
    hand.stream.idle(2.5)
    hand.tick()
    hand.space()
    assert hand.run.flow.finished
    said, words = hand.run.value, hand.page.sign._words.text()
    assert not hand.page.pulls._reject.isEnabled()
    hand.key(Qt.Key.Key_R)
    hand.key(Qt.Key.Key_U)
    hand.press(hand.page.pulls._rows[0])
    hand.window.tester.card.put(limit=msgspec.structs.replace(hand.window.tester.card.limit, lower=90.0), lever=None)
    hand.tick()
    assert hand.run.value == said
    assert hand.page.sign._words.text() == words
    assert not any(caught.rejected for caught in hand.run.pulls.pulls)


def test_typing_a_dial_reading_is_no_command(hand: Hand) -> None:
    hand.key(Qt.Key.Key_D)
    editor = hand.page.editor("Dial")
    assert QApplication.focusWidget() is editor._rows[0].box
    hand.check_all(editor)
    assert QApplication.focusWidget() is editor.reading.edit
    hand.page.foot.main.setFocus()
    for key in (Qt.Key.Key_F, Qt.Key.Key_P, Qt.Key.Key_1):
        hand.key(key)
    assert hand.page.far is None
    assert hand.page.open_form == "Dial"
    assert not hand.window.tester.card.practice


def test_the_recording_folder_is_not_the_one_that_is_looked_at(hand: Hand, home: Path, tmp_path: Path) -> None:
    hand.window.open_page("Review")
    review = hand.window.pages["Review"]
    review.open_folder(tmp_path)
    assert review.folder == tmp_path
    assert hand.window._shared.settings.recordings == home / "recordings"


def test_after_the_last_pull_the_headline_says_what_the_button_says(hand: Hand) -> None:
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    assert hand.page.live.coach.text() == "All pulls are made: take the zero again"
    assert hand.page.foot.main.text() == "Enough pulls: zero again"
