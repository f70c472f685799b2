"""Beside the large figure: what the highest counts and which pull it is of, and how far the wheel turned."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from gui.models.flow import Step
from gui.models.state import Notice
from tests.gui.fakes import FakeStream
from tests.gui.hand import Hand


def test_the_highest_names_its_pull_and_forgets_an_excluded_one(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    live = hand.page.live
    hand.pull(stop_nm=30.0, hold_s=2.0)
    assert hand.run.flow.now is Step.PULLS
    low = live.view
    hand.pull()
    assert live.view.highest_caption == "Highest: pull 2"
    assert live.view.highest_value > 1.2 * low.highest_value
    hand.key(Qt.Key.Key_R)
    assert [bool(c.rejected) for c in hand.run.pulls.pulls] == [False, True]
    assert live.view.highest == low.highest
    assert live.view.highest_value == low.highest_value, "the pointer on the ruler, too"
    assert live.view.highest_caption == "Highest: pull 1"
    hand.key(Qt.Key.Key_U)
    assert live.view.highest_caption == "Highest: pull 2"
    assert live.view.highest_value > 1.2 * low.highest_value
    stream.half_a_pull(2.0)
    hand.tick()
    assert live.view.highest_caption == "Highest: pull 2", "a load that is lower takes nothing over"
    assert "excluded pulls do not count" in live.figure.toolTip()


def test_a_load_that_is_on_counts_before_it_is_a_pull(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    stream.half_a_pull(6.0)
    hand.tick()
    assert hand.page.live.view.highest_caption == "Highest so far"
    assert hand.page.live.view.highest_value == pytest.approx(57.5, abs=3.0)
    assert "Highest so far: " in hand.page.live.figure.accessibleName()


def test_the_wheels_angle_and_speed_stand_beside_the_torque(hand: Hand, stream: FakeStream) -> None:
    stream.with_angle = True
    hand.to_pulls()
    hand.pull()
    before = stream.angle_deg
    stream.half_a_pull(7.0)
    hand.tick()
    view, turned = hand.page.live.view, stream.angle_deg - before
    assert turned > 60, "the virtual wheel turned in this pull"
    assert float(view.turned.removesuffix("°")) == pytest.approx(turned, abs=3), "counted from when the lever is loaded"
    rpm = float(view.turned_caption.removeprefix("Wheel · ").removesuffix(" turns/min"))
    assert rpm == pytest.approx(hand.run.pace.rpm, abs=0.05)
    assert rpm > 1
    assert f"{view.turned}" in hand.page.live.figure.accessibleName()
    hand.set_comma(True)
    hand.tick()
    assert f"{rpm:.1f}".replace(".", ",") in hand.page.live.view.turned_caption
    assert f"{rpm:.1f}".replace(".", ",") in hand.page.live.coach.text()
    hand.set_comma(False)
    hand.key(Qt.Key.Key_F)
    assert hand.page.far.figure._view == hand.page.live.view
    hand.page.far.close()


def test_without_an_angle_the_readout_says_nothing_of_the_wheel(hand: Hand, stream: FakeStream) -> None:
    hand.to_pulls()
    hand.pull()
    assert hand.page.live.view.turned == ""
    assert "Wheel" not in hand.page.live.figure.accessibleName()


def test_an_angle_that_goes_away_is_not_shown_any_longer(hand: Hand, stream: FakeStream) -> None:
    stream.with_angle = True
    hand.to_pulls()
    hand.pull()
    assert hand.page.live.view.turned
    stream.push(np.zeros(1500), angle_deg=np.full(1500, np.nan))
    hand.tick()
    assert hand.page.live.view.turned == ""


def test_a_message_that_the_far_view_hides_is_not_answered_there(hand: Hand) -> None:
    hand.to_pulls()
    hand.run.notice = Notice("something to be read")
    hand.page.refresh()
    hand.key(Qt.Key.Key_F)
    QTest.keyClick(hand.page.far, Qt.Key.Key_X)
    assert hand.run.notice is not None
    hand.page.far.close()
    hand.press(hand.page.notice.close_button)
    assert hand.run.notice is None
