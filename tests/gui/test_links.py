"""Whole jobs over real bytes: a serial port (pseudo-terminal) and a virtual radio, with the plug pulled in between."""

import contextlib
import os

import numpy as np
import pytest
from PySide6.QtCore import Qt

from gui.models.flow import Step
from gui.models.practice import FRAME, HandWish, PracticeLink, fill_card, scenario_for_practice
from gui.models.state import LinkState
from gui.models.stream import Open, SessionStream
from logger.links.ble import BleLink
from logger.recordings.files import read_trace
from tests.gui.hand import Hand

FAST = 8.0  # seconds of test per second
ONE = "F0:00:00:00:00:01"


def endless(link: PracticeLink):
    """What a device sends for as long as somebody listens."""
    while True:
        if not link._pieces:
            link.busy.clear()
            link._prepare(link._end_s)
        yield link._pieces.popleft()


def a_job(hand: Hand, device: PracticeLink, fault) -> None:
    """Checks, zero, two pulls with a fault between them, zero again, signature; all by keys."""
    until = hand.qtbot.waitUntil
    card, run = hand.window.tester.card, lambda: hand.run
    card.put(practice=False, pulls_wanted=2, dwell_s=1.0)
    hand.space()
    until(lambda: run().link is LinkState.LIVE, timeout=20_000)
    while run().flow.now is Step.SAFETY:
        hand.space()
    hand.space()
    until(lambda: run().flow.now is Step.PULLS, timeout=20_000)
    device.ask(HandWish())
    until(lambda: len(run().pulls.counting) == 1, timeout=30_000)
    fault()
    until(lambda: run().link is not LinkState.LIVE, timeout=20_000)
    until(lambda: run().link is LinkState.LIVE, timeout=30_000)
    device.ask(HandWish())
    until(lambda: len(run().pulls.counting) == 2, timeout=30_000)
    hand.space()
    hand.space()
    until(lambda: run().flow.now is Step.SIGN, timeout=20_000)
    hand.page.sign.name.edit.setFocus()
    hand.qtbot.keyClicks(hand.page.sign.name.edit, "Robin")
    assert run().signed_by == "Robin"
    until(lambda: hand.window.tester.recording_words() == "Not recording", timeout=10_000)
    hand.press(hand.page.foot.main)
    assert run().flow.finished
    hand.window.tester.close()
    trace = read_trace(hand.window.tester.bridge.recording)
    kinds = [str(event.kind) for event in trace.events]
    assert trace.state == "closed"
    assert trace.header.simulated
    assert trace.header.job.operator == "Robin"
    assert "disconnect" in kinds
    assert "reconnect" in kinds


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
def test_a_job_over_a_serial_port_that_is_unplugged(qtbot, home, tmp_path) -> None:
    from logger.virtual.port import VirtualPort

    hand = Hand(qtbot, fake=False)
    device = PracticeLink(scenario_for_practice())
    with VirtualPort(endless(device), link=tmp_path / "port", speed=FAST) as port:
        fill_card(hand.window.tester.card, device)
        hand.window.tester.card.put(address=port.path)
        hand.tick()

        def fault() -> None:
            port.unplug()
            qtbot.waitUntil(lambda: hand.run.link is LinkState.RETRYING, timeout=20_000)
            port.plug()

        a_job(hand, device, fault)
        hand.close()


def test_a_job_over_a_virtual_radio_that_goes_out_of_range(qtbot, home, monkeypatch) -> None:
    import asyncio

    from logger.stream.acquisition import Acquisition
    from logger.virtual.device import STREAM, VirtualDevice
    from tests.radio.gauges import device_gauge
    from tests.radio.world import world

    hand = Hand(qtbot, fake=False)
    device = PracticeLink(scenario_for_practice())
    fill_card(hand.window.tester.card, device)
    as_packets = VirtualDevice(device._idle_run(), "packet", samples=FRAME).description
    hand.window.tester.card.put(description=as_packets, address=ONE)
    acquisition = Acquisition()
    hand.window.tester._acquisition = acquisition
    stack = contextlib.AsyncExitStack()

    async def switch_on():
        made = await stack.enter_async_context(world("radio", monkeypatch))
        gauge = device_gauge(made.air, ONE)
        await made.add(gauge)
        playing = asyncio.ensure_future(speak(gauge))
        stack.callback(playing.cancel)
        return made, gauge

    async def speak(gauge) -> None:
        pieces, begin = endless_packets(device), None
        loop = asyncio.get_running_loop()
        while True:
            if not gauge.subscribers(STREAM):
                await asyncio.sleep(0.02)
                begin = None
                continue
            due, data = next(pieces)
            begin = loop.time() - due / FAST if begin is None else begin
            wait = begin + due / FAST - loop.time()
            if wait > 0.002:
                await asyncio.sleep(wait)
            with contextlib.suppress(Exception):  # the connection may end in the middle of a notification
                await gauge.notify(STREAM, data)

    made, gauge = acquisition.call(switch_on()).result(30)
    settings = as_packets.ble

    def opener(card, _opened):
        return SessionStream(acquisition, card, Open(BleLink(ONE, settings, backends=made.backends), reconnect_s=60.0))

    hand.window.tester._opener = opener
    hand.tick()
    a_job(hand, device, lambda: acquisition.call(gauge.disconnect()).result(10))
    hand.close()


def endless_packets(link: PracticeLink):
    """The same device as Bluetooth packets."""
    for due, frame in endless(link):
        yield due, packet_of(frame)


def packet_of(frame: bytes) -> bytes:
    """A packet is a frame without its sync, and with its own check."""
    from logger.decoder.crc import checks
    from logger.virtual.device import CHECK, SYNC

    body = np.frombuffer(frame[len(SYNC) : -2], np.uint8)
    return body.tobytes() + int(checks(body[None, :], CHECK)[0]).to_bytes(2, "little")


def test_keys_do_not_reach_the_test_while_somebody_types(hand: Hand, qtbot) -> None:
    hand.to_pulls()
    hand.page.open_row("Job")
    field = hand.page.editor("Job").texts["job", "vehicle"].edit
    field.setFocus()
    field.end(False)
    before = hand.run.flow.now
    qtbot.keyClicks(field, "red car 5 srfup")
    hand.tick()
    assert hand.run.flow.now is before
    assert field.text().endswith("red car 5 srfup")
    assert hand.page.far is None
    qtbot.keyClick(field, Qt.Key.Key_Escape)
    hand.tick()
    assert hand.page.middle.currentWidget() is hand.page.live
