"""A second sensor recorded along, chosen in the window; its angle reaches the live reading as it reaches the file's."""

import math
import os

import msgspec
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.to_axle.calibration import Calibration
from gui.models.flow import Step
from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
from gui.models.relay import Relay, ScreenSamples
from gui.models.state import LinkState
from gui.pages.ask_dialog import AskDialog
from logger.decoder.description import read_description
from logger.recordings.files import read_trace
from logger.recordings.second import Alongside, between
from logger.samples import Block, Ending, EndReason
from tests.gui.hand import Hand
from tests.gui.test_links import endless


def merged(torque_s, angle_s):
    """Rows of two sources in the order of time: a torque that rises, a wheel that turns at 36° a second."""
    time_s = np.concatenate((torque_s, angle_s))
    order = np.argsort(time_s, kind="stable")
    source = np.concatenate((np.ones(len(torque_s)), np.full(len(angle_s), 2.0)))[order]
    time_s = time_s[order]
    torque = np.where(source == 1, time_s * 3, np.nan)
    angle = np.where(source == 2, 36 * time_s + np.sin(time_s), np.nan)
    return time_s, source, torque, angle


@given(
    st.lists(st.floats(0.001, 0.4), min_size=0, max_size=40),
    st.lists(st.floats(0.001, 0.4), min_size=0, max_size=40),
    st.integers(1, 9),
)
def test_what_grows_is_what_the_whole_file_says(torque_steps, angle_steps, piece) -> None:
    rows = merged(np.cumsum(torque_steps), np.cumsum(angle_steps))
    time_s, source, torque, angle = rows
    along, found = Alongside(), []
    for at in range(0, len(time_s), piece):
        found.append(along.feed(*(part[at : at + piece] for part in rows)))
    found.append(along.rest())
    got = [np.concatenate(parts) for parts in zip(*found, strict=True)]
    mine, known = source == 1, np.isfinite(angle)
    assert np.array_equal(got[0], time_s[mine])
    assert np.array_equal(got[1], torque[mine])
    whole = between(time_s[mine], time_s[known], angle[known])
    assert np.allclose(got[2], whole, equal_nan=True, atol=1e-9)


def test_an_angle_that_goes_away_holds_nothing_up() -> None:
    torque_s, angle_s = np.arange(300) * 0.01, np.arange(50) * 0.02  # the angle ends after one second
    along = Alongside()
    time_s, _, angle = along.feed(*merged(torque_s, angle_s))
    assert time_s[-1] == torque_s[-2], "only the newest may still get its angle"
    assert np.isfinite(angle[time_s <= 0.98]).all()
    assert np.isnan(angle[time_s > 0.98]).all()


@pytest.mark.parametrize("measures", ["angle", "temperature"])
def test_the_screen_has_the_torques_rows_and_the_file_has_all(measures: str) -> None:
    time_s, source, torque, value = merged(np.arange(1, 200) * 0.01, np.arange(1, 100) * 0.02)
    written = []

    class Kept:
        def on_block(self, block) -> None:
            written.append(block)

        def on_end(self, _ending) -> None:
            pass

    relay = Relay(Calibration())
    relay.begin(Kept(), None)
    for at in range(0, len(time_s), 40):
        part = slice(at, at + 40)
        columns = {"torque": torque[part], "source": source[part], measures: value[part]}
        relay.on_block(Block(time_s[part], columns))
    relay.on_end(Ending(EndReason.STOPPED, ""))
    shown = [news for news in relay.news if isinstance(news, ScreenSamples)]
    assert np.concatenate([news.time_s for news in shown]) == pytest.approx(time_s[source == 1])
    assert all(np.isfinite(news.torque_nm).all() for news in shown)
    assert sum(len(block.time_s) for block in written) == len(time_s)
    if measures == "angle":
        angle = np.concatenate([news.angle_deg for news in shown])
        at = np.concatenate([news.time_s for news in shown])
        inside = np.isfinite(angle)
        assert inside.sum() > 190
        assert angle[inside] == pytest.approx(36 * at[inside] + np.sin(at[inside]), abs=1e-3)
    else:
        assert all(news.angle_deg is None for news in shown)


def test_the_editor_offers_what_measures_something_else(hand: Hand) -> None:
    hand.page.open_row("Transducer")
    part = hand.page.editor("Transducer").second
    keys = {part.which.box.itemData(n) for n in range(part.which.box.count())}
    assert {"", "shipped:encoder", "shipped:gyro"} <= keys
    assert "shipped:plain-text" not in keys
    assert not part.address.isVisible()
    part.which.set_key("shipped:encoder")
    part.which.changed.emit()
    card = hand.window.tester.card
    assert card.second.measures == "angle"
    assert part.address.isVisible()
    assert "the wheel's angle" in part.words.text()
    card.put(second_address="/dev/ttyUSB1")
    header = card.header("pulls", started=None, zero=None, simulated=False)
    assert (header.second.identity, header.second.unit) == ("/dev/ttyUSB1", "°")
    part.which.set_key("")
    part.which.changed.emit()
    assert card.second is None
    assert card.header("pulls", started=None, zero=None, simulated=False).second is None


def test_a_second_device_that_must_be_asked_is_asked_about_too(hand: Hand) -> None:
    tester = hand.window.tester
    fill_card(tester.card, PracticeLink(scenario_for_practice()))
    asked = msgspec.structs.replace(read_description("letters"), name="held end")
    tester.card.put(practice=False, address="/dev/ttyS8", second=asked, second_address="/dev/ttyS9")
    hand.page.act()
    dialog = next(part for part in hand.page.findChildren(AskDialog) if part.isVisible())
    assert dialog.question.to == "/dev/ttyS9"
    hand.press(dialog.no)
    assert hand.run.flow.now is None
    hand.page.act()
    hand.press(next(part for part in hand.page.findChildren(AskDialog) if part.isVisible()).yes)
    assert hand.run.flow.now is Step.SAFETY


def test_what_is_wrong_with_the_stream_stands_beside_the_button(hand: Hand, monkeypatch) -> None:
    """The session's advice: a second source that is silent, a stream that does not fit its description."""
    from logger.stream.health import Health, SessionState
    from tests.gui.fakes import FakeStream

    hand.to_pulls()
    foot = hand.page.foot
    assert "just pull" in foot.why.text()
    hand.pull()
    assert foot.why.text() == hand.run.action().why_not
    said = Health(state=SessionState.STREAMING, rate_hz=1000.0, simulated=True, advice="second source silent")
    monkeypatch.setattr(FakeStream, "health", property(lambda _self: said))
    hand.page._refresh_stream()
    assert foot.why.text() == "second source silent"
    assert foot.why.property("role") == "warn"
    assert hand.run.flow.now is Step.PULLS, "the test goes on"


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
def test_two_ports_one_recording(qtbot, home) -> None:
    from logger.virtual.port import VirtualPort

    def turning():
        for n in range(10_000):
            yield n / 100, f"A={math.fmod(n * 0.36, 360):.2f}\n".encode()

    hand = Hand(qtbot, fake=False)
    device = PracticeLink(scenario_for_practice())
    with VirtualPort(endless(device)) as torque, VirtualPort(turning()) as angle:
        fill_card(hand.window.tester.card, device)
        along, port = read_description("encoder"), angle.path
        hand.window.tester.card.put(practice=False, address=torque.path, second=along, second_address=port, dwell_s=1.0)
        hand.page.act()
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        while hand.run.flow.now is Step.SAFETY:
            hand.page.act()
        hand.page.act()
        qtbot.waitUntil(lambda: hand.run.flow.now is Step.PULLS, timeout=30_000)
        path = hand.window.tester.bridge.recordings[0]
        assert np.isfinite(hand.run.trace.torque_nm).all(), "the second source's rows are no torque"
        hand.page.end()
        hand.window.tester.close()
    trace = read_trace(path)
    assert trace.header.test.purpose == "zero"
    assert trace.header.second.identity == port
    assert trace.header.simulated
    assert np.isfinite(trace.angle_deg).mean() > 0.9
    known = np.isfinite(trace.angle_deg)
    rate = np.polyfit(trace.time_s[known], trace.angle_deg[known], 1)[0]
    assert rate == pytest.approx(36.0, rel=0.1)  # degrees a second, as it was sent
    hand.close()


def test_two_angles_grow_alongside_as_the_whole_file_has_them() -> None:
    time_s, source, torque, angle = merged(np.arange(1, 200) * 0.01, np.arange(1, 100) * 0.02)
    held = 0.25 * angle + 3.0
    along, found = Alongside(), []
    for at in range(0, len(time_s), 7):
        found.append(along.feed(*(part[at : at + 7] for part in (time_s, source, torque, angle, held))))
    found.append(along.rest())
    got = [np.concatenate(parts) for parts in zip(*found, strict=True)]
    mine, known = source == 1, np.isfinite(angle)
    for place, values in ((2, angle), (3, held)):
        whole = between(time_s[mine], time_s[known], values[known])
        assert np.array_equal(got[place], whole, equal_nan=True)
