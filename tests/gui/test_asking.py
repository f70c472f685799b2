"""A transducer that must be asked: the window shows what it would send and sends nothing before a yes."""

import asyncio
import contextlib
import os
import threading

import msgspec
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from gui.models.asking import Agreements, made_words, question_of
from gui.models.flow import Step
from gui.models.state import LinkState
from gui.pages.ask_dialog import AskDialog
from logger.decoder.description import Modbus, Poll, read_description
from logger.decoder.layouts import Register
from logger.errors import InputError
from logger.header import Lever
from logger.links.build import asked_bytes, build_link
from tests.gui.hand import Hand
from tests.logger.answering import AnsweringPort
from tests.logger.cable import Cable
from tests.logger.links.test_modbus import server

posix = pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
LEVER = Lever(fixture="hub centre", name="plate")


def dialog_of(hand: Hand) -> AskDialog:
    found = [part for part in hand.page.findChildren(AskDialog) if part.isVisible()]
    assert len(found) == 1
    return found[0]


def no_dialog(hand: Hand) -> bool:
    return not any(part.isVisible() for part in hand.page.findChildren(AskDialog))


def words_of(dialog: AskDialog) -> str:
    return "\n".join(part.text() for part in dialog.findChildren(QLabel))


def ready(hand: Hand, name: str, address: str, **changes) -> None:
    described = msgspec.structs.replace(read_description(name), **changes)
    hand.window.tester.card.put(description=described, address=address, lever=LEVER)
    hand.tick()
    hand.page.foot.main.setFocus()


@posix
def test_letters_go_out_after_a_yes_and_not_before(qtbot, home) -> None:
    hand = Hand(qtbot, fake=False)
    with AnsweringPort(lambda _request: b"+12.34\t+13.00\t-0.10\r", end=b"D") as port:
        ready(hand, "letters", port.path)
        hand.space()
        dialog = dialog_of(hand)
        said = words_of(dialog)
        for wanted in (port.path, "'D' every 0.05 s", "44", "as text: D", "invented example letters"):
            assert wanted in said
        # The first key is a no: whoever presses the space bar twice has sent nothing.
        hand.qtbot.keyClick(dialog.no, Qt.Key.Key_Space)
        assert no_dialog(hand)
        assert hand.run.link is LinkState.NONE
        assert hand.run.flow.now is None
        assert port.received == []
        hand.page.act()
        hand.qtbot.keyClick(dialog_of(hand), Qt.Key.Key_Escape)
        assert port.received == []
        hand.page.act()
        hand.press(dialog_of(hand).yes)
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        qtbot.waitUntil(lambda: hand.run.now_nm is not None, timeout=10_000)
        assert hand.run.now_nm == pytest.approx(12.34 * 0.112985, rel=1e-4)  # NIST SP 811: lbf·in
        assert set(port.received) == {b"D"}
        # The same description on the same port is not asked about again ...
        stream = hand.window.tester.bridge.stream
        hand.page.end()
        stream.wait()
        hand.page.act()
        assert no_dialog(hand)
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        hand.page.end()
        hand.window.tester.close()
    # ... a changed one, or another port, is.
    described = hand.window.tester.card.description
    changed = msgspec.structs.replace(described, poll=msgspec.structs.replace(described.poll, request="Z"))
    hand.window.tester.card.put(description=changed)
    hand.page.act()
    assert "5A" in words_of(dialog_of(hand))
    dialog_of(hand).reject()
    hand.window.tester.card.put(description=described, address="/dev/ttyS99")
    hand.page.act()
    assert "/dev/ttyS99" in words_of(dialog_of(hand))
    dialog_of(hand).reject()
    hand.close()


@contextlib.contextmanager
def modbus_device(port: str, torque=lambda: 27_000):
    """The Modbus library's own server, in a thread of its own."""
    loop, ready_, stop = asyncio.new_event_loop(), threading.Event(), asyncio.Event()

    async def serve() -> None:
        async with server(port, torque):
            ready_.set()
            await stop.wait()

    thread = threading.Thread(target=lambda: loop.run_until_complete(serve()))
    thread.start()
    assert ready_.wait(10)
    try:
        yield
    finally:
        loop.call_soon_threadsafe(stop.set)
        thread.join(10)
        loop.close()


@posix
def test_modbus_registers_are_read_after_a_yes_and_a_new_connection_needs_none(qtbot, home) -> None:
    hand = Hand(qtbot, fake=False)
    with Cable() as cable, modbus_device(cable.a):
        modbus = msgspec.structs.replace(read_description("modbus").modbus, device=3)
        ready(hand, "modbus", cable.b, modbus=modbus)
        hand.space()
        dialog = dialog_of(hand)
        assert "Modbus registers (holding 100 to 102) of device 3 every 0.02 s" in words_of(dialog)
        assert "Not in your list" in words_of(dialog)
        hand.press(dialog.yes)
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        qtbot.waitUntil(lambda: hand.run.now_nm is not None, timeout=10_000)
        assert hand.run.now_nm == pytest.approx(27.0)
        while hand.run.flow.now is Step.SAFETY:
            hand.page.act()
        # In the middle of a test: a new connection to the same device sends what was agreed to, and asks nobody.
        stream = hand.window.tester.bridge.stream
        stream.stop()
        stream.wait()
        qtbot.waitUntil(lambda: hand.run.link is LinkState.ENDED, timeout=10_000)
        assert hand.run.action().text == "Connect again"
        hand.page.act()
        assert no_dialog(hand)
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        hand.page.end()
        hand.window.tester.close()
    hand.close()


@posix
def test_the_bytes_shown_are_the_bytes_sent() -> None:
    """What the Modbus library writes to the port is what the dialog shows, byte by byte."""
    registers = (Register(name="torque", address=100, type="s32"), Register(name="rate", address=20, table="input"))
    described = msgspec.structs.replace(
        read_description("modbus"), modbus=Modbus(device=3, registers=registers, timeout_s=0.2)
    )
    wanted = asked_bytes(described)
    # Modbus application protocol 1.1b3, 6.3: function 3, address 0x0064, two registers.
    assert wanted[0][:6] == bytes((3, 3, 0x00, 0x64, 0x00, 0x02))
    assert wanted[1][:6] == bytes((3, 4, 0x00, 0x14, 0x00, 0x01))

    class Device:
        """Takes what comes and answers the first request, so that the second is sent."""

        def __init__(self, port: str) -> None:
            self.port, self.heard = port, b""

        def serve(self, stop: threading.Event) -> None:
            import serial

            from logger.decoder.crc import check

            with serial.Serial(self.port, 115200, timeout=0.05) as line:
                while not stop.is_set():
                    self.heard += line.read(64)
                    if self.heard.endswith(wanted[0]) and len(self.heard) == len(wanted[0]):
                        body = bytes((3, 3, 4, 0, 0, 0, 0))
                        line.write(body + check(body, "crc-16/modbus").to_bytes(2, "little"))

    async def poll(port: str, device: Device) -> None:
        link = build_link(described, port, confirmed=True)
        await link.open()
        reading = asyncio.ensure_future(link.read())
        for _ in range(100):
            await asyncio.sleep(0.02)
            if len(device.heard) >= 16:
                break
        reading.cancel()
        await link.close()

    with Cable() as cable:
        stop, device = threading.Event(), Device(cable.a)
        thread = threading.Thread(target=device.serve, args=(stop,))
        thread.start()
        asyncio.run(poll(cable.b, device))
        stop.set()
        thread.join(5)
    assert device.heard[:16] == wanted[0] + wanted[1]


def test_a_yes_is_for_what_was_shown() -> None:
    described, agreements = read_description("letters"), Agreements()
    question = question_of(described, "COM3")
    assert question is not None
    agreements.agree(question)
    assert agreements.cover(described, "COM3")
    assert not agreements.cover(described, "COM4")
    assert not agreements.cover(msgspec.structs.replace(described, poll=Poll(request="X")), "COM3")
    assert not agreements.cover(msgspec.structs.replace(described, notes="other words"), "COM3")
    assert question_of(read_description("plain-text"), "COM3") is None
    with pytest.raises(InputError, match="once you agree"):
        build_link(described, "COM3")


def test_who_made_it() -> None:
    described = read_description("letters")
    assert "comes with this program" in made_words(described).lower()
    mine = msgspec.structs.replace(described, name="mine")
    assert "your own list" in made_words(mine, [mine])
    assert "Nothing proves" in made_words(mine, [described])


def test_a_hostile_description_cannot_hide_its_bytes(hand: Hand) -> None:
    described = read_description("letters")
    text = "harmless\u202e\x1b[2J\n\n\nNothing is sent. <b>Press yes</b>" + "x" * 3000
    hostile = msgspec.structs.replace(described, name=text, notes=text, poll=Poll(request="hex: " + "1B 7F " * 100))
    hand.window.tester.card.put(description=hostile, address="COM3\nsafe", lever=LEVER)
    hand.page.act()
    dialog = dialog_of(hand)
    said = words_of(dialog)
    assert ("1B 7F " * 100).strip() in said
    assert "\u202e" not in said
    assert "\x1b" not in said
    assert dialog.yes.height() >= 44
    assert dialog.no.hasFocus() or dialog.focusWidget() is dialog.no
    assert all(part.textFormat() is Qt.TextFormat.PlainText for part in dialog.findChildren(QLabel))
    dialog.reject()
