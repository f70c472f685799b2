"""Whole jobs in the real window, by keys alone, on a simulated stream; faults in the middle of them."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton

from gui.models.caught import pack_means
from gui.models.coach import Hint
from gui.models.flow import Stand, Step
from gui.models.state import LinkState
from gui.sound import Sound
from logger.samples import Event, EventKind
from logger.stream.health import SessionState
from tests.gui.fakes import FakeStream
from tests.gui.hand import Hand


def test_from_first_start_to_a_result_in_six_actions(hand: Hand, stream: FakeStream) -> None:
    assert hand.page.middle.currentWidget() is hand.page.welcome
    hand.actions = 0
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    assert hand.run.value is not None
    assert hand.run.value.state in {"within", "outside", "too close to call"}
    assert hand.actions <= 6


def test_a_whole_job_by_the_space_bar(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    assert [h.test.purpose for h in stream.begun] == ["zero", "pulls"]
    assert stream.begun[1].zero.value_nm == pytest.approx(0.0, abs=0.05)
    for _ in range(3):
        hand.pull()
    assert len(hand.run.pulls.counting) == 3
    hand.space()
    assert hand.run.flow.now is Step.ZERO_AGAIN
    assert len(stream.begun) == 2, "the second zero belongs to the recording of the pulls"
    hand.space()
    stream.idle(2.5)
    hand.tick()
    assert hand.run.flow.now is Step.SIGN
    assert abs(hand.run.zeros.moved_nm) < 0.05
    hand.space()
    assert hand.run.flow.finished
    assert set(hand.run.flow.stands.values()) <= {Stand.DONE, Stand.TO_COME}
    hand.space()
    assert hand.run.flow.now is None


def test_no_pull_before_the_checks(hand: Hand, stream: FakeStream) -> None:
    hand.practise()
    hand.window.tester.card.practice = False
    hand.tick()
    stream.pull()
    hand.tick()
    assert hand.run.pulls.pulls == []
    assert stream.begun == []
    for ticked in range(len(hand.run.checks)):
        assert hand.run.flow.now is Step.SAFETY
        assert sum(check.ticked for check in hand.run.checks) == ticked
        hand.space()
    hand.space()
    assert hand.run.flow.now is Step.ZERO


def test_a_pull_says_at_the_axle_what_the_simulation_knows(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    for _ in range(5):
        hand.pull()
    values = [c.rotating for c in hand.run.pulls.pulls]
    # Truth: mean of the packs, 45 N·m at the sliding level, with the drag of carrier and wheel end (see the scenario).
    assert 44 < np.median([v.nm for v in values]) < 60
    assert all(0 < v.u95_nm < 4 for v in values)
    spread = np.ptp([v.nm for v in values])
    assert spread < 4


def test_reject_undo_and_press_by_mouse(hand: Hand) -> None:
    hand.to_pulls()
    hand.pull()
    hand.pull()
    before = hand.run.value
    hand.key(Qt.Key.Key_R)
    assert [bool(c.rejected) for c in hand.run.pulls.pulls] == [False, True]
    assert hand.run.value.count == 1
    hand.key(Qt.Key.Key_U)
    assert hand.run.value == before
    focus = QApplication.focusWidget()
    hand.press(hand.page.pulls._reject)
    assert QApplication.focusWidget() is focus, "the mouse must not take the space bar from the large button"
    assert len(hand.run.pulls.counting) == 1


def test_the_highest_is_no_less_than_a_breakaway_that_was_read(hand: Hand) -> None:
    """A peak between two readings lies above both: the two figures stand side by side and are one truth."""
    hand.to_pulls()
    hand.pull()
    (caught,) = hand.run.pulls.counting
    most, number = hand.run.axle_highest()
    assert number == caught.number
    assert caught.breakaway.nm <= abs(most) < 1.05 * caught.breakaway.nm
    hand.run._highest._nm = [0.98 * nm for nm in hand.run._highest._nm]
    hand.tick()
    assert hand.page.live.view.highest == hand.page.live._shared.display.figure(caught.breakaway.nm)


def test_unit_switch_changes_every_figure(hand: Hand) -> None:
    hand.to_pulls()
    hand.pull()
    shown = hand.page.live.view.highest, hand.page.pulls._value.text()
    hand.window.set_unit("lbf·ft")
    hand.tick()
    assert hand.page.live.view.unit == "lbf·ft"
    assert "lbf·ft" in hand.page.pulls._value.text()
    nm, lbf_ft = (float(text.split()[0].replace("−", "-")) for text in (shown[0], hand.page.live.view.highest))
    assert nm / lbf_ft == pytest.approx(1.355818, rel=0.005)  # NIST SP 811, appendix B
    words = (
        [part.accessibleName() for part in hand.page.findChildren(type(hand.page.figure))]
        if hasattr(hand.page, "figure")
        else []
    )
    rows = [row.accessibleName() for row in hand.page.pulls._rows] + words
    assert all("N·m" not in text for text in rows)
    assert all("lbf·ft" in text for text in rows)
    assert "N·m" not in hand.page.card_panel.rows["Limit"].accessibleName()


def test_decimal_comma_everywhere(hand: Hand) -> None:
    hand.to_pulls()
    hand.pull()
    hand.set_comma(True)
    hand.tick()
    for text in (hand.page.live.view.highest, hand.page.pulls._value.text(), hand.page.pulls._rows[0].accessibleName()):
        assert "," in text
        assert "." not in text.split(",")[0][-4:]
    hand.set_comma(False)


def test_simulated_is_written_across_trace_and_end(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    assert hand.page.live.plot.accessibleDescription() == "SIMULATED"
    assert stream.begun[1].simulated


@pytest.mark.parametrize("kind", ["lost", "disk"])
def test_a_fault_in_the_middle_of_a_pull(hand: Hand, stream: FakeStream, kind: str) -> None:
    hand.to_pulls()
    hand.pull()
    stream.half_a_pull()
    hand.tick()
    stream.lose() if kind == "lost" else stream.fail_disk()
    hand.tick()
    assert hand.run.link is LinkState.ENDED
    assert hand.run.notice.serious
    assert "safe on disk" in hand.run.notice.text
    assert hand.page.notice.isVisible()
    assert hand.page.notice.rescue.isVisible() == (kind == "disk")
    assert len(hand.run.pulls.counting) == 1
    assert hand.run.action().text == "Connect again"
    # Connected again, the same test goes on in a new recording.
    fresh = FakeStream(seed=9)
    hand.stream = fresh
    hand.key(Qt.Key.Key_X)
    hand.space()
    fresh.idle(1.0)
    hand.tick()
    hand.tick()
    assert hand.run.flow.now is Step.PULLS
    assert fresh.begun[-1].test.purpose == "pulls"


def test_without_its_transducer_a_test_can_be_signed_as_it_is(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    hand.pull()
    stream.lose()
    hand.tick()
    hand.key(Qt.Key.Key_S)
    assert hand.run.flow.now is Step.SIGN
    assert hand.run.flow.stands[Step.ZERO_AGAIN] is Stand.SKIPPED


def test_silence_and_return(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    stream.state = SessionState.SILENT
    hand.tick()
    assert hand.run.link is LinkState.SILENT
    assert not hand.run.action().enabled
    hand.space()
    assert hand.run.flow.now is Step.PULLS
    stream.state = SessionState.STREAMING
    hand.pull()
    assert len(hand.run.pulls.pulls) == 1


def test_auto_zero_and_battery_are_told(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    stream.push(np.zeros(100), (Event(EventKind.AUTO_ZERO), Event(EventKind.BATTERY, text="7 %")))
    hand.tick()
    assert "zeroed itself" in hand.page.notice.text.text()
    assert "7 %" in hand.page.foot.device.text() or hand.run.battery == "7 %"


def test_a_moved_zero_is_wrong_and_said(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    for _ in range(3):
        hand.pull()
    hand.space()
    hand.space()
    rng = np.random.default_rng(3)
    stream.push(3.0 + rng.normal(0, 0.02, 3000))
    hand.tick()
    assert hand.run.flow.stands[Step.ZERO_AGAIN] is Stand.WRONG
    assert "zero has moved" in hand.run.notice.text
    assert hand.run.zeros.moved_nm == pytest.approx(3.0, abs=0.1)


def test_zero_waits_while_the_lever_moves(hand: Hand, stream: FakeStream) -> None:
    hand.practise()
    hand.space()
    hand.space()
    hand.space()
    wobble = 2.0 * np.sin(np.arange(3000) / 80)
    stream.push(wobble)
    hand.tick()
    assert hand.run.zeros.first is None
    assert "moves" in hand.page.live.coach.text()
    stream.idle(3.0)
    hand.tick()
    hand.tick()
    assert hand.run.zeros.first is not None
    assert abs(hand.run.zeros.in_use_nm) < 0.1


def test_overload_stops_loudly(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    for level in np.linspace(0, 199, 200):
        stream.push(np.full(15, level))
        hand.tick()
    assert hand.run.hint in {Hint.CAPACITY, Hint.STOP}
    stream.push(np.full(400, 201.0))
    hand.tick()
    assert hand.run.hint is Hint.STOP
    assert hand.page.live.coach.property("role") == "wrong"
    assert hand.page.live.view.tone == "outside"


def test_drag_step_and_pack_mean(hand: Hand, stream: FakeStream) -> None:
    hand.window.tester.card.with_drag = True
    hand.practise()
    assert Step.DRAG in hand.run.flow.steps
    hand.space()
    hand.space()
    hand.space()
    stream.idle(2.5)
    hand.tick()
    assert hand.run.flow.now is Step.DRAG
    hand.tick()
    assert stream.begun[-1].test.purpose == "drag"
    assert stream.begun[-1].test.held == "none"
    from gui.models.practice import free_of

    held = stream.scenario
    stream.scenario = free_of(held)
    hand.pull(ramp_nm_s=12.0, turn_rad_s=((0.6, 6.0),))
    assert len(hand.run.drag.pulls) == 1
    hand.space()
    assert hand.run.flow.now is Step.HOLD, "with both wheels free for the drag, one is to be held again now"
    assert hand.run.checks[0].key == "held"
    assert not hand.run.checks[0].ticked
    hand.space()
    assert hand.run.flow.now is Step.PULLS
    hand.tick()
    stream.scenario = held
    for _ in range(3):
        hand.pull()
    means = {name: value for name, value, _why in pack_means(hand.run.pulls, hand.run.drag)}
    raw = {name: v for name, v, *_ in hand.run.value.other} | {hand.run.value.quantity: hand.run.value.value}
    assert means["rotating mean"].nm < raw["rotating mean"].nm
    # The scenario's packs slide at about 45 N·m: drag taken away, the mean comes near it.
    assert means["rotating mean"].nm == pytest.approx(45.0, rel=0.06)


def test_a_pull_too_fast_is_kept_with_its_reason(hand: Hand, stream: FakeStream) -> None:
    hand.window._shared.sounds.on = True
    hand.to_pulls()
    hand.pull(ramp_nm_s=400.0)
    assert len(hand.run.pulls.pulls) == 1
    caught = hand.run.pulls.pulls[0]
    played = hand.window._shared.sounds.played
    assert played[-1] is (Sound.CAUGHT if caught.valid else Sound.NOT_VALID)
    if not caught.valid:
        assert caught.notes
        assert hand.run.value is None


def test_coach_and_dwell(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    stream.idle(1.5)
    hand.tick()
    assert hand.run.hint is Hint.READY
    hand.pull()
    assert hand.run.dwell_left_s is not None
    assert hand.page.live.coach.text().startswith("Let it rest")


def test_far_view_by_key_and_back(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    hand.pull()
    hand.key(Qt.Key.Key_F)
    far = hand.page.far
    assert far is not None
    assert far.isVisible()
    stream.half_a_pull()
    hand.tick()
    assert float(far.figure.accessibleName().split()[4].replace("−", "-")) > 10
    hand.qtbot.keyClick(far, Qt.Key.Key_F)
    hand.tick()
    assert hand.page.far is None


def test_every_button_is_large_named_and_reached_by_tab(hand: Hand) -> None:
    hand.to_pulls()
    hand.pull()
    buttons = [b for b in hand.window.findChildren(QPushButton) if b.isVisible()]
    assert buttons
    for button in buttons:
        assert button.height() >= 44, button.text()
        assert button.width() >= 44, button.text()
        assert button.accessibleName(), button.text()
        assert button.focusPolicy() & Qt.FocusPolicy.TabFocus, button.text()


@pytest.mark.parametrize("scale", [1.0, 1.5])
@pytest.mark.parametrize("size", [(1280, 720), (3840, 2160)])
def test_no_button_is_clipped(hand: Hand, scale: float, size: tuple[int, int]) -> None:
    hand.window.set_scale(scale)
    hand.window.resize(*size)
    hand.to_pulls()
    hand.pull()
    hand.tick()
    for button in hand.window.findChildren(QPushButton):
        if button.isVisible() and button.property("role") != "row":
            needed = button.fontMetrics().horizontalAdvance(button.text())
            assert button.width() >= needed, (button.text(), button.width(), needed)
