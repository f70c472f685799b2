"""Checking a transducer with known weights in the window: what is typed, steps that are noticed, a real serial port."""

import contextlib
import os

import msgspec
import numpy as np
import pytest

from analysis.language.translator import unbroken
from gui.models.calibrating import Calibrating
from gui.models.stream import Open, SessionStream
from gui.models.weighing import Doing, Hanging, Weighing, cautions, plan_of
from gui.pages.ask_dialog import AskDialog
from gui.pages.weigh_dialog import WeighDialog
from gui.sound import Sound
from logger.decoder.build import build_decoder
from logger.decoder.description import BleSettings, Description, Poll, read_description
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.template import LineFormat
from logger.header import TransducerFacts
from logger.instruments.register import read_register
from logger.instruments.weigh import Compliance
from logger.links.ble import BleLink
from tests.gui.hand import Hand, check_named_and_large
from tests.gui.test_asking import modbus_device
from tests.logger.answering import AnsweringPort
from tests.logger.cable import Cable

posix = pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
FACTS = TransducerFacts(name="workshop transducer", serial="G-7", accuracy_percent_of_reading=1.0, capacity_nm=200.0)
TYPED = Hanging(masses=("5 kg", "10 kg", ""), arm="500 mm", latitude="47.2", height="410 m", mass_error="5 g")
G = 9.80692  # there, by the legal-metrology formula
RATE_HZ = 100.0
ONE = "F0:00:00:00:00:01"


class Rig:
    """An arm with weights: gives a weighing what its transducer would show."""

    def __init__(self, weighing: Weighing, gain: float = 1.0, zero_nm: float = 0.4) -> None:
        self.weighing, self.gain, self.zero_nm = weighing, gain, zero_nm
        self.time_s, self.rng = 0.0, np.random.default_rng(3)

    def hold(self, torque_nm: float, seconds: float = 2.5, swing_nm: float = 0.0) -> int:
        """Let a torque act; how many steps were completed."""
        done = 0
        for _ in range(round(seconds * 10)):
            time_s = self.time_s + np.arange(1, 11) / RATE_HZ
            self.time_s = float(time_s[-1])
            swing = swing_nm * np.sin(2 * np.pi * 0.9 * time_s)
            noise = self.rng.normal(0, 0.02, len(time_s))
            done += self.weighing.feed(time_s, self.zero_nm + self.gain * torque_nm + swing + noise)
        return done

    def go_through(self) -> None:
        plan = self.weighing.plan
        for step in range(len(plan.steps)):
            assert self.hold(plan.torque_nm(step)) == 1, step


def weighing_of(typed: Hanging = TYPED, facts: TransducerFacts = FACTS) -> Weighing:
    plan, wrong = plan_of(typed, facts)
    assert not wrong
    return Weighing(plan)


# ---------------------------------------------------------------------- what is typed
def test_the_plan_goes_up_and_down_from_nothing_to_nothing() -> None:
    plan = weighing_of().plan
    assert [load.words if load else None for load in plan.steps] == [None, "5 kg", "10 kg", "5 kg", None]
    assert plan.torque_nm(2) == pytest.approx(10 * 0.5 * G, rel=1e-5)
    up, _ = plan_of(Hanging(masses=("10 kg", "5 kg"), arm="0.5 m", down=False), FACTS)
    assert [load.words if load else None for load in up.steps] == [None, "5 kg", "10 kg", None]
    assert not up.place_known


@pytest.mark.published("TB 9-6695-301-50 table 3", rows=("5.1c",), status="READ-P")
def test_the_torque_testers_weights_as_they_would_be_typed() -> None:
    """24 to 120 lb on 10 in are 240 to 1200 lbf·in under standard gravity."""
    typed = Hanging(masses=("24 lb", "72 lb", "120 lb"), arm="10 in", gravity="9.80665", down=False)
    plan, wrong = plan_of(typed, TransducerFacts())
    assert not wrong
    lbf_in = 4.4482216152605 * 0.0254  # NIST SP 811, appendix B
    assert [plan.torque_nm(n) / lbf_in for n in (1, 2, 3)] == pytest.approx([240, 720, 1200], rel=1e-9)


@pytest.mark.parametrize(
    ("change", "key"),
    [
        ({"arm": ""}, "arm"),
        ({"arm": "long"}, "arm"),
        ({"arm": "12 m"}, "arm"),
        ({"masses": ("", "", "")}, "mass1"),
        ({"masses": ("5 kg", "heavy", "")}, "mass2"),
        ({"masses": ("0 kg", "", "")}, "mass1"),
        ({"masses": ("90 kg", "", "")}, "mass1"),
        ({"latitude": "95"}, "latitude"),
        ({"gravity": "98"}, "gravity"),
        ({"height": "20 km"}, "height"),
        ({"allowed": "0"}, "allowed"),
        ({"mass_error": "much"}, "mass_error"),
    ],
)
def test_what_cannot_be_used_is_named_at_its_field(change: dict, key: str) -> None:
    import dataclasses

    plan, wrong = plan_of(dataclasses.replace(TYPED, **change), FACTS)
    assert plan is None
    assert list(wrong) == [key]


# ---------------------------------------------------------------------- while it is hung
@pytest.mark.parametrize(
    ("gain", "result"), [(1.0, Compliance.WITHIN), (1.03, Compliance.OUTSIDE), (1.0093, Compliance.TOO_CLOSE)]
)
def test_steps_are_noticed_and_judged_as_the_command_judges_them(gain: float, result: Compliance) -> None:
    weighing = weighing_of()
    Rig(weighing, gain).go_through()
    assert weighing.done
    assert weighing.result is result
    assert len(weighing.points) == 3
    for row in weighing.rows:
        expected = row.load.weight.torque_nm * gain if row.load else 0.0
        assert row.shown_nm == pytest.approx(expected, abs=0.02), "the zero is taken off"
    assert cautions(weighing, str) == ()


def test_a_swinging_weight_and_a_leaning_hand_are_waited_for() -> None:
    weighing = weighing_of()
    rig = Rig(weighing)
    rig.hold(0.0)
    assert rig.hold(2.0, 3.0) == 0, "a hand that leans on the arm"
    assert weighing.doing is Doing.HANG
    assert rig.hold(5 * 0.5 * G, 3.0, swing_nm=2.0) == 0
    assert weighing.doing is Doing.SETTLE
    assert weighing.moving
    assert rig.hold(5 * 0.5 * G) == 1


def test_a_reading_in_another_unit_is_noticed_and_far_outside() -> None:
    """A gauge that shows lbf·ft while its description says N·m: 0.738 of the torque."""
    weighing = weighing_of()
    Rig(weighing, 1 / 1.3558179483).go_through()  # NIST SP 811, appendix B
    assert weighing.result is Compliance.OUTSIDE
    assert [point.deviation_percent for point in weighing.points] == pytest.approx([-26.2] * 3, abs=0.2)


def test_a_reversed_reading_and_a_moved_zero_are_told() -> None:
    weighing = weighing_of()
    rig = Rig(weighing, -1.0)
    for torque in (0.0, 2.5 * G, 5 * G, 2.5 * G, -0.6):
        assert rig.hold(torque) == 1
    told = " ".join(cautions(weighing, "{:.1f}".format))
    assert "the other way round" in told
    assert "0.6" in told
    assert weighing.result is Compliance.OUTSIDE


def test_anticlockwise_counts_as_it_is_shown() -> None:
    import dataclasses

    weighing = weighing_of(dataclasses.replace(TYPED, way="anticlockwise"))
    assert weighing.plan.torque_nm(1) < 0
    Rig(weighing).go_through()
    assert weighing.result is Compliance.WITHIN
    without = plan_of(dataclasses.replace(TYPED, way="anticlockwise"), TransducerFacts(sign="none"))[0]
    assert without.torque_nm(1) > 0, "one that shows no sign"


def test_a_step_is_taken_back_and_insisted_on() -> None:
    weighing = weighing_of()
    rig = Rig(weighing)
    rig.hold(0.0)
    rig.hold(2.5 * G)
    weighing.again()
    assert weighing.step == 1
    assert rig.hold(2.5 * G * 1.001) == 1
    assert rig.hold(2.6 * G, 3.0) == 0, "hardly moved"
    weighing.insist()
    assert rig.hold(2.6 * G) == 1


def test_a_mark_instead_of_a_reading_begins_the_quiet_time_anew() -> None:
    weighing = weighing_of()
    rig = Rig(weighing)
    assert rig.hold(0.0, 1.3) == 0
    assert not weighing.feed(np.array([rig.time_s + 0.01, rig.time_s + 0.02]), np.array([0.4, np.nan]))
    assert weighing.now_nm is None
    assert rig.hold(0.0, 1.3) == 0
    assert rig.hold(0.0, 1.0) == 1


# ---------------------------------------------------------------------- in the window
def dialog_of(hand: Hand) -> WeighDialog:
    hand.page.open_row("Transducer")
    editor = hand.page.editor("Transducer")
    editor.weigh()
    return next(part for part in editor.findChildren(WeighDialog) if part.isVisible())


def type_in(dialog: WeighDialog, **texts: str) -> None:
    for key, text in texts.items():
        dialog.what.fields[key].set_text(text)
        dialog.what.fields[key].changed.emit()


def gauge(**changes) -> Description:
    return Description(name="workshop transducer", lines=LineFormat(template="{torque}"), transducer=FACTS, **changes)


def hang_by_hand(qtbot, dialog: WeighDialog, put) -> None:
    """Follow the dialog's steps: ``put`` a torque on the gauge for each."""
    qtbot.waitUntil(lambda: dialog.weighing is not None, timeout=10_000)
    plan = dialog.weighing.plan
    for step in range(len(plan.steps)):
        put(plan.torque_nm(step))
        qtbot.waitUntil(lambda step=step: dialog.weighing.step > step, timeout=20_000)


@posix
def test_from_typed_weights_to_the_register_and_later_recordings(qtbot, home) -> None:
    from logger.virtual.port import VirtualPort

    hung = [0.0]

    def lines():
        n = 0
        while True:
            yield n / RATE_HZ, f"{0.3 + hung[0]:.3f}\r\n".encode()
            n += 1

    hand = Hand(qtbot, fake=False)
    card = hand.window.tester.card
    with VirtualPort(lines()) as port:
        card.put(description=gauge(), address=port.path)
        dialog = dialog_of(hand)
        assert not dialog.next.isEnabled()
        type_in(dialog, mass1="10 kg", arm="500 mm", latitude="47.2", height="410 m")
        hand.press(dialog.next)
        assert dialog.pages.currentIndex() == 1
        assert "Hang nothing" in dialog.hang.instruction.text()

        def put(torque: float) -> None:
            hung[0] = torque * 1.004

        hang_by_hand(qtbot, dialog, put)
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=5_000)
        assert dialog.outcome.result.state == "within"
        hand.press(dialog.again)
        assert dialog.pages.currentIndex() == 1
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=20_000)
        assert dialog.outcome.table.rowCount() == 3
        assert dialog.outcome.table.text(1, 0) == "10 kg"
        assert dialog.outcome.table.text(1, 3) == "+0.40 %"
        assert hand.window._shared.sounds.played.count(Sound.CAUGHT) == 4
        assert not read_register().instruments, "not before it is wanted"
        hand.press(dialog.next)
        (instrument,) = read_register().instruments
        assert instrument.facts.serial == "G-7"
        assert (instrument.weighings[0].agreement, instrument.weighings[0].loads) == ("within", 1)
        assert instrument.weighings[0].worst_percent == pytest.approx(0.4, abs=0.02)
        header = card.header("pulls", started=None, zero=None, simulated=False)
        assert "within, 1 load, at worst +0.40 %" in header.transducer.weight_check
        assert unbroken(header.transducer.weight_check) in hand.page.editor("Transducer").facts.text()
        hand.window.tester.close()
    hand.close()


@posix
def test_one_that_must_be_asked_is_asked_after_a_yes_only(qtbot, home) -> None:
    hung = [0.0]
    hand = Hand(qtbot, fake=False)
    with AnsweringPort(lambda _request: f"{hung[0]:.2f}\r\n".encode()) as port:
        description = gauge(poll=Poll(request=r"D\r", interval_s=0.05))
        hand.window.tester.card.put(description=description, address=port.path)
        dialog = dialog_of(hand)
        type_in(dialog, mass1="10 kg", arm="500 mm")
        hand.press(dialog.next)
        asked = next(part for part in dialog.findChildren(AskDialog) if part.isVisible())
        hand.press(asked.no)
        assert dialog.pages.currentIndex() == 0
        assert port.received == []
        hand.press(dialog.next)
        asked = next(part for part in dialog.findChildren(AskDialog) if part.isVisible())
        hand.press(asked.yes)
        hang_by_hand(qtbot, dialog, lambda torque: hung.__setitem__(0, torque))
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=5_000)
        assert set(port.received) == {b"D\r"}
        assert "Standard gravity" in dialog.outcome.notes.text()
        dialog.reject()
        hand.window.tester.close()
    hand.close()


@posix
def test_modbus_registers_are_weighed(qtbot, home) -> None:
    """Also anticlockwise, on a device that shows that as negative."""
    hung = [0.0]
    hand = Hand(qtbot, fake=False)
    with Cable() as cable, modbus_device(cable.a, lambda: round(1000 * hung[0])):
        described = read_description("modbus")
        modbus = msgspec.structs.replace(described.modbus, device=3)
        hand.window.tester.card.put(
            description=msgspec.structs.replace(described, modbus=modbus, transducer=FACTS), address=cable.b
        )
        dialog = dialog_of(hand)
        dialog.what.way.set_key("anticlockwise")
        type_in(dialog, mass1="10 kg", arm="500 mm", latitude="47.2")
        hand.press(dialog.next)
        hand.press(next(part for part in dialog.findChildren(AskDialog) if part.isVisible()).yes)
        hang_by_hand(qtbot, dialog, lambda torque: hung.__setitem__(0, torque))
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=5_000)
        assert hung == [0.0]
        assert dialog.weighing.plan.torque_nm(1) < -49
        assert dialog.weighing.result is Compliance.WITHIN
        dialog.reject()
        hand.window.tester.close()
    hand.close()


def test_a_radio_gauge_is_weighed(qtbot, home, monkeypatch) -> None:
    import asyncio

    from logger.stream.acquisition import Acquisition
    from logger.virtual.device import STREAM
    from tests.radio.gauges import device_gauge
    from tests.radio.world import world

    hung = [0.0]
    hand = Hand(qtbot, fake=False)
    acquisition = Acquisition()
    hand.window.tester._acquisition = acquisition
    stack = contextlib.AsyncExitStack()

    async def switch_on():
        made = await stack.enter_async_context(world("radio", monkeypatch))
        peripheral = device_gauge(made.air, ONE)
        await made.add(peripheral)
        speaking = asyncio.ensure_future(speak(peripheral))
        stack.callback(speaking.cancel)
        return made

    async def speak(peripheral) -> None:
        while True:
            await asyncio.sleep(0.02)
            if peripheral.subscribers(STREAM):
                with contextlib.suppress(Exception):  # the connection may end in the middle of a notification
                    await peripheral.notify(STREAM, round(1000 * hung[0]).to_bytes(4, "little", signed=True))

    made = acquisition.call(switch_on()).result(30)
    settings = BleSettings(characteristic=STREAM)
    packet = Packet(fields=(PlacedNumber(name="torque", type="s32", unit="N·m", scale=0.001),))
    hand.window.tester._opener = lambda card, _opened: SessionStream(
        acquisition, card, Open(BleLink(ONE, settings, backends=made.backends))
    )
    hand.window.tester.card.put(
        description=Description(name="radio gauge", link="ble", notification=packet, ble=settings, transducer=FACTS),
        address=ONE,
    )
    dialog = dialog_of(hand)
    type_in(dialog, mass1="10 kg", arm="500 mm", latitude="47.2")
    hand.press(dialog.next)
    hang_by_hand(qtbot, dialog, lambda torque: hung.__setitem__(0, 1.03 * torque))
    qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=5_000)
    assert dialog.outcome.result.state == "outside"
    assert dialog.weighing.points[0].deviation_percent == pytest.approx(3.0, abs=0.05)
    assert dialog.outcome.simulated.isVisible(), "its device information says so"
    hand.press(dialog.next)
    assert not read_register().instruments
    hand.window.tester.close()
    hand.close()


def test_practice_hangs_by_itself_is_marked_and_never_kept(qtbot, home) -> None:
    hand = Hand(qtbot, fake=False)
    hand.window.tester.practice_speed = 4.0
    dialog = dialog_of(hand)
    assert dialog.what.practice, "there is nothing else to check"
    type_in(dialog, mass1="10 kg", mass2="20 kg", arm="500 mm", latitude="47.2")
    hand.press(dialog.next)
    assert dialog.hang.simulated.isVisible()
    qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=60_000)
    assert dialog.weighing.result is Compliance.WITHIN
    assert len(dialog.weighing.points) == 3
    assert "SIMULATED" in dialog.outcome.simulated.text()
    assert dialog.outcome.simulated.isVisible()
    assert dialog.next.text() == "Close"
    hand.press(dialog.next)
    assert not read_register().instruments
    hand.window.tester.close()
    hand.close()


@posix
def test_a_bare_amplifier_is_calibrated_by_two_loads(qtbot, home) -> None:
    """Counts of a 24-bit converter: 98 112 of them for 10 kg at 500 mm; the new description then gives N·m."""
    from logger.virtual.port import VirtualPort

    counts = [8_388_000]

    def lines():
        n = 0
        while True:
            yield n / RATE_HZ, f"{counts[0] + n % 3 - 1}\r\n".encode()
            n += 1

    hand = Hand(qtbot, fake=False)
    tester = hand.window.tester
    bare = Description(name="bare amplifier", lines=LineFormat(template="{torque}"))
    with VirtualPort(lines()) as port:
        tester.card.put(description=bare, address=port.path)
        dialog = dialog_of(hand)
        dialog.what.which.set_key("calibrate")
        dialog.what.which.changed.emit()
        assert not dialog.what.fields["mass2"].isVisible()
        type_in(dialog, mass1="10 kg", arm="500 mm", latitude="47.2", height="410 m")
        hand.press(dialog.next)
        for step, count in enumerate((8_388_000, 8_486_112)):
            counts[0] = count
            qtbot.waitUntil(lambda count=count: abs((dialog.weighing.now_nm or 0) - count) < 2, timeout=10_000)
            assert dialog.weighing.doing is Doing.HANG, "a bare number tells nothing by itself"
            hand.press(dialog.next)
            qtbot.waitUntil(lambda step=step: dialog.weighing.step > step, timeout=20_000)
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=5_000)
        assert "reading × 0.00049978" in dialog.outcome.words.text()
        hand.press(dialog.next)
        made = tester.card.description
        assert made.name.startswith("bare amplifier, calibrated 20")
        assert "0 kg and 10 kg at 500 mm" in made.transducer.certificate
        (path,) = (home / "transducers").glob("*.toml")
        assert path.stat().st_mode & 0o222 == 0
        decoded = build_decoder(made).feed(b"8388000\n8486112\n8437056\n")
        assert decoded.columns["torque"].tolist() == pytest.approx([0.0, 5 * G, 2.5 * G], abs=0.01)
        tester.close()
    hand.close()


def test_a_calibration_counts_the_sign_that_the_description_says() -> None:
    """The device's own number for a clockwise load: negative N·m where it shows clockwise as negative."""
    description = Description(
        name="x", lines=LineFormat(template="{torque}"), transducer=TransducerFacts(unit="lbf·ft", sign="reversed")
    )
    plan, _ = plan_of(TYPED, TransducerFacts(sign="reversed"))
    weighing = Calibrating(plan, description)
    for counts in (100.0, -900.0):
        time_s = np.arange(400) / RATE_HZ
        assert not weighing.feed(time_s[:50], np.full(50, counts))
        weighing.insist()
        assert not weighing.feed(time_s[:50], np.append(np.full(49, counts), np.nan)), "a mark"
        assert weighing.feed(time_s[50:], np.full(350, counts))
    made = weighing.made
    assert made.scale == pytest.approx(5 * G / 1000, rel=1e-4)
    assert -900 * made.scale + made.offset == pytest.approx(-5 * G, rel=1e-4)
    assert weighing.description(["x"]).transducer.sign == "reversed"


def test_a_simulated_device_on_a_port_is_never_kept(hand: Hand) -> None:
    """What says in its own bytes that it is simulated counts as that, whatever its serial number."""
    hand.stream.simulated = True
    dialog = dialog_of(hand)
    type_in(dialog, mass1="10 kg", arm="500 mm")
    dialog.begin(hand.stream, FACTS)
    for torque in (0.0, 5 * 9.80665, 0.0):
        for _ in range(2):
            hand.stream.push(np.full(300, torque), rate_hz=100.0)
            dialog.look()
    assert dialog.pages.currentIndex() == 2
    assert dialog.next.text() == "Close"
    hand.press(dialog.next)
    assert not read_register().instruments


def test_a_port_that_is_not_there_is_told(qtbot, home) -> None:
    hand = Hand(qtbot, fake=False)
    hand.window.tester.card.put(description=gauge(), address="/dev/nowhere")
    dialog = dialog_of(hand)
    type_in(dialog, mass1="10 kg", arm="500 mm")
    hand.press(dialog.next)
    qtbot.waitUntil(lambda: "/dev/nowhere" in dialog.message.text(), timeout=20_000)
    assert dialog.pages.currentIndex() == 0
    dialog.reject()
    hand.window.tester.close()
    hand.close()


@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_the_dialog_fits_the_window_with_large_named_parts(hand: Hand, scale: float) -> None:
    hand.window.set_scale(scale)
    dialog = dialog_of(hand)
    type_in(dialog, mass1="10 kg", arm="500 mm")
    assert dialog.height() <= hand.window.height() == 720
    for step in range(3):
        dialog.show_step(step)
        hand.tick()
        check_named_and_large(dialog, step)
    dialog.reject()
