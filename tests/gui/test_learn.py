"""Learning an unknown transducer in the window, over a real serial port (pseudo-terminal) and from a captured file."""

import os
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtTest import QTest

from gui.models.learning import LearningState, Naming, complete, look_at, proposed
from gui.models.state import LinkState
from gui.pages.ask_dialog import AskDialog
from gui.pages.learn_dialog import LearnDialog
from logger.decoder.build import build_decoder
from logger.header import Lever
from logger.learn.hear import Heard
from logger.learn.learn import Wanted
from logger.samples import Chunk
from tests.gui.hand import Hand, check_named_and_large
from tests.logger.answering import AnsweringPort

posix = pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
RATE_HZ = 50.0


def levers(first: float = 1.0) -> np.ndarray:
    """Unloaded, loaded one way, let go, loaded the other way, let go."""
    up = np.concatenate((np.linspace(0, 30, 60), np.zeros(30)))
    rng = np.random.default_rng(4)
    torque = np.concatenate((np.zeros(60), first * up, -0.8 * first * up, np.zeros(40)))
    return torque + rng.normal(0, 0.02, len(torque))


def lines(torque: np.ndarray, unit: str = "", warm: bool = True) -> list[bytes]:
    """A counter, the torque, a temperature that hardly moves."""
    rng = np.random.default_rng(5)
    temperature = 21.5 + rng.normal(0, 0.05, len(torque))
    return [
        (f"{n:05d};{value:+.2f}{unit}" + (f";{t:.1f}" if warm else "") + "\r\n").encode()
        for n, (value, t) in enumerate(zip(torque, temperature, strict=True))
    ]


def chunks(pieces: list[bytes]) -> Heard:
    return Heard([Chunk(n / RATE_HZ, piece) for n, piece in enumerate(pieces)])


@pytest.fixture(scope="module")
def heard() -> LearningState:
    return look_at(chunks(lines(levers(-1.0))))


# ---------------------------------------------------------------------- what it amounts to
def test_what_may_be_the_torque_is_listed_with_what_moves_now(heard: LearningState) -> None:
    assert [one.number for one in heard.candidates] == [2, 3], "a counter is none"
    torque, _temperature = heard.candidates
    assert (torque.least, torque.greatest) == pytest.approx((-30.0, 24.0), abs=0.2)
    assert heard.chosen == torque.name, "the temperature hardly moved"
    assert heard.asked == ()
    assert 0.3 < torque.moving < 0.6, "at the end the lever is let go"
    assert heard.fits == pytest.approx(1.0, abs=0.01)
    assert heard.readings >= len(levers()) - 1
    assert not heard.unit_sent
    assert abs(heard.now) < 0.1


def test_the_first_load_tells_the_sign(heard: LearningState) -> None:
    assert proposed(heard).sign == "reversed"
    assert proposed(look_at(chunks(lines(levers(1.0))))).sign == "signed"
    without = [line.replace(b"-", b" ").replace(b"+", b" ") for line in lines(levers(1.0))]
    assert proposed(look_at(chunks(without))).sign == "none"


def test_a_unit_that_is_sent_is_taken_and_one_that_is_not_must_be_given(heard: LearningState) -> None:
    assert proposed(look_at(chunks(lines(levers(), " lbf·ft")))).unit == "lbf·ft"
    assert proposed(heard).unit == ""
    description, wrong = complete(heard, Naming(name="gauge"))
    assert description is None
    assert set(wrong) == {"unit"}
    description, wrong = complete(heard, Naming(name="gauge", unit="lbf·ft", sign="reversed", capacity="150"))
    assert not wrong
    assert description.transducer.capacity_nm == pytest.approx(150 * 1.355818, rel=1e-6)  # NIST SP 811, appendix B
    assert (description.unit, description.transducer.sign) == ("lbf·ft", "reversed")


@pytest.mark.parametrize(("key", "text"), [("capacity", "much"), ("capacity", "-3"), ("accuracy", "0"), ("name", " ")])
def test_what_cannot_be_used_is_named(heard: LearningState, key: str, text: str) -> None:
    given = {"name": "gauge", "unit": "N·m", key: text}
    description, wrong = complete(heard, Naming(**given))
    assert description is None
    assert key in wrong


def test_another_number_may_be_the_torque(heard: LearningState) -> None:
    """What the user has seen move is taken, whatever was recognised."""
    pieces = chunks(lines(levers(-1.0)))
    other = look_at(pieces, Wanted(field="3"))
    assert other.chosen == heard.candidates[1].name
    data = b"".join(chunk.data for chunk in pieces.chunks)
    before, after = build_decoder(heard.draft).feed(data), build_decoder(other.draft).feed(data)
    assert np.array_equal(before.columns["torque"], after.columns["value2"])
    assert np.array_equal(before.columns["value3"], after.columns["torque"])


def test_two_numbers_that_move_are_asked_about() -> None:
    torque = levers(1.0)
    pieces = [f"{t:.2f};{7 * np.sin(n / 30):.2f}\r\n".encode() for n, t in enumerate(torque)]
    look = look_at(chunks(pieces))
    assert look.asked == ("field",)
    assert complete(look, Naming(name="x", unit="N·m"))[0] is None
    assert "which number" in complete(look, Naming(name="x", unit="N·m"))[1][""]
    chosen = look_at(chunks(pieces), Wanted(field="1"))
    assert chosen.asked == ()
    assert complete(chosen, Naming(name="x", unit="N·m"))[0] is not None


def test_noise_and_nothing_are_said_not_guessed() -> None:
    for data in (Heard(), chunks([bytes(range(256)) * 8])):
        look = look_at(data)
        assert look.draft is None
        assert look.learned.unknown
        assert complete(look, Naming(name="x", unit="N·m"))[0] is None


# ---------------------------------------------------------------------- in the window
def dialog_of(hand: Hand) -> LearnDialog:
    hand.page.open_row("Transducer")
    editor = hand.page.editor("Transducer")
    editor.learn()
    return next(part for part in editor.findChildren(LearnDialog) if part.isVisible())


def replaying(torque: np.ndarray):
    """A gauge that sends the same loads again and again, faster than a hand."""
    pieces, n = lines(torque), 0
    while True:
        yield n / 400.0, f"{n % 100000:05d}".encode() + pieces[n % len(pieces)][5:]
        n += 1


@posix
def test_from_an_unknown_port_to_a_test_with_it(qtbot, home) -> None:
    from logger.virtual.port import VirtualPort

    hand = Hand(qtbot, fake=False)
    with VirtualPort(replaying(levers(-1.0)), held=True) as port:
        dialog = dialog_of(hand)
        QTest.keyClicks(dialog.where.address.edit, port.path)
        dialog.where.speed.set_key("115200")
        hand.press(dialog.next)
        qtbot.waitUntil(lambda: dialog.listen.progress.text() == "Nothing came yet.", timeout=20_000)
        port.go()
        qtbot.waitUntil(lambda: dialog.look is not None and dialog.look.readings > 400, timeout=30_000)
        qtbot.waitUntil(lambda: dialog.next.isEnabled(), timeout=10_000)
        assert "Its unit is not sent" in dialog.listen.progress.text()
        assert "understood" in dialog.listen.progress.text()
        hand.press(dialog.next)
        qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=20_000)
        assert dialog.name.torque.box.currentText().startswith("number 2: −")
        assert not dialog.next.isEnabled()
        assert "N·m" not in dialog.name.rows.text(), "nobody has said the unit yet"
        assert "Read the unit off the device" in dialog.message.text()
        QTest.keyClicks(dialog.name.fields["name"].edit, "long gauge")
        QTest.keyClicks(dialog.name.fields["capacity"].edit, "200")
        dialog.name.unit.set_key("N·m")
        dialog.name.unit.changed.emit()
        assert dialog.name.sign.key == "reversed"
        hand.press(dialog.next)
        card = hand.window.tester.card
        qtbot.waitUntil(lambda: card.description is not None, timeout=5_000)
        assert not port.received, "nothing was sent"
        assert (card.description.name, card.address) == ("long gauge", port.path)
        assert card.facts.capacity_nm == 200.0
        assert list(hand.window._shared.library.transducers.entries()) == ["long gauge"]
        card.put(lever=Lever(fixture="hub centre", name="plate"))
        hand.page.act()
        qtbot.waitUntil(lambda: hand.run.link is LinkState.LIVE, timeout=20_000)
        qtbot.waitUntil(lambda: len(hand.run.trace.time_s) > 300, timeout=20_000)
        highest = float(np.nanmax(hand.run.trace.torque_nm))
        assert highest == pytest.approx(30.0, abs=0.5), "the reversed sign is put right"
        hand.page.end()
        hand.window.tester.close()
    hand.close()


def test_the_number_is_chosen_by_pushing_the_lever(hand: Hand, qtbot) -> None:
    dialog = dialog_of(hand)
    torque = levers(1.0)
    pieces = [f"{7 * np.sin(n / 30):.2f};{t:.2f}\r\n".encode() for n, t in enumerate(torque[:150])]
    dialog.heard = chunks(pieces)
    look = look_at(dialog.heard)
    dialog._listening = object()  # as while it listens
    dialog.show_step(1)
    dialog._show_so_far(look)
    hand.tick()
    rows = dialog.listen.fields
    assert [row.isVisible() for row in rows.rows] == [True, True] + [False] * 4
    assert "moves now" in rows.rows[1].text()
    assert not any(row.isChecked() for row in rows.rows), "nobody has chosen yet"
    assert "which one follows the lever" in dialog.listen.progress.text()
    assert not dialog.listen.figure.isVisible(), "no number is shown large before it is chosen"
    hand.press(rows.rows[1])
    assert dialog.wanted.field == "2"
    dialog._listening = None
    dialog._enough()
    qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=30_000)
    assert dialog.look.asked == ()
    assert dialog.name.torque.key == "2"
    dialog.name.torque.set_key("1")
    dialog.name.torque.changed.emit()
    qtbot.waitUntil(lambda: dialog.look.chosen == "value1", timeout=30_000)
    dialog.reject()


def test_what_the_comma_means_is_asked_once(hand: Hand, qtbot, tmp_path: Path) -> None:
    captured = tmp_path / "comma.txt"
    captured.write_bytes(b"".join(f"{1000 * (n % 7) + 40 * n},{n % 5}\r\n".encode() for n in range(200)))
    dialog = dialog_of(hand)
    dialog.where.kind.set_key("file")
    dialog.where.kind.changed.emit()
    dialog.where.choose_file(captured)
    hand.press(dialog.next)
    qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=30_000)
    assert "decimal" in dialog.look.asked
    assert dialog.name.answers.decimal.isVisible()
    assert not dialog.next.isEnabled()
    dialog.name.answers.decimal.set_key(".")
    dialog.name.answers.decimal.changed.emit()
    qtbot.waitUntil(lambda: "decimal" not in dialog.look.asked, timeout=30_000)
    assert dialog.wanted.decimal == "."
    dialog.reject()


def test_from_a_captured_file(hand: Hand, qtbot, tmp_path: Path) -> None:
    captured = tmp_path / "capture.txt"
    captured.write_bytes(b"".join(lines(levers(), " lbf·ft", warm=False)))
    dialog = dialog_of(hand)
    dialog.where.kind.set_key("file")
    dialog.where.kind.changed.emit()
    hand.press(dialog.next)
    assert "Choose the file first" in dialog.message.text()
    dialog.where.choose_file(captured)
    hand.press(dialog.next)
    qtbot.waitUntil(lambda: dialog.pages.currentIndex() == 2, timeout=30_000)
    assert dialog.name.unit.key == "lbf·ft"
    assert not dialog.name.unit.box.isEnabled(), "the lines say it"
    assert "sent as 'lbf·ft'" in dialog.name.found.text()
    QTest.keyClicks(dialog.name.fields["name"].edit, "captured gauge")
    hand.press(dialog.next)
    assert hand.window.tester.card.description.name == "captured gauge"
    assert hand.window.tester.card.description.unit == "lbf·ft"


@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_the_dialog_fits_the_window_with_large_named_parts(hand: Hand, heard: LearningState, scale: float) -> None:
    hand.window.set_scale(scale)
    dialog = dialog_of(hand)
    assert dialog.height() <= hand.window.height() == 720
    for step in range(3):
        if step == 2:
            dialog.show_found(heard)
        else:
            dialog.show_step(step)
        hand.tick()
        check_named_and_large(dialog, step)
    dialog.reject()


def test_a_file_of_noise_is_told(hand: Hand, qtbot, tmp_path: Path) -> None:
    captured = tmp_path / "noise.bin"
    captured.write_bytes(np.random.default_rng(1).bytes(4000))
    dialog = dialog_of(hand)
    dialog.where.kind.set_key("file")
    dialog.where.kind.changed.emit()
    dialog.where.choose_file(captured)
    hand.press(dialog.next)
    qtbot.waitUntil(lambda: "No readings were recognised" in dialog.message.text(), timeout=30_000)
    assert dialog.pages.currentIndex() == 0
    dialog.reject()


def test_a_port_that_is_not_there_and_an_address_that_is_none(hand: Hand, qtbot) -> None:
    dialog = dialog_of(hand)
    dialog.where.address.set_text("socket://somewhere")
    hand.press(dialog.next)
    assert "no local serial port" in dialog.message.text()
    dialog.where.address.set_text("/dev/nowhere")
    dialog.where.speed.set_key("9600")
    hand.press(dialog.next)
    qtbot.waitUntil(lambda: "/dev/nowhere" in dialog.message.text(), timeout=20_000)
    assert dialog.pages.currentIndex() == 0
    dialog.where.kind.set_key("ble")
    dialog.where.kind.changed.emit()
    dialog.where.address.set_text("gauge")
    hand.press(dialog.next)
    assert "no Bluetooth identity" in dialog.message.text()
    dialog.reject()


@posix
def test_a_question_is_shown_and_agreed_to_before_it_is_sent(qtbot, home) -> None:
    hand = Hand(qtbot, fake=False)
    values = iter(np.tile(levers(), 40))
    with AnsweringPort(lambda _request: f"{next(values):+.1f} Nm\r\n".encode()) as port:
        dialog = dialog_of(hand)
        dialog.where.address.set_text(port.path)
        dialog.where.speed.set_key("9600")
        dialog.where.request.set_text(r"D\r")
        hand.press(dialog.next)
        asked = next(part for part in dialog.findChildren(AskDialog) if part.isVisible())
        hand.press(asked.no)
        assert dialog.pages.currentIndex() == 0
        assert port.received == []
        hand.press(dialog.next)
        asked = next(part for part in dialog.findChildren(AskDialog) if part.isVisible())
        hand.press(asked.yes)
        qtbot.waitUntil(lambda: dialog.look is not None and dialog.look.readings > 25, timeout=30_000)
        assert set(port.received) == {b"D\r"}
        hand.press(dialog.back)
        assert dialog.pages.currentIndex() == 0
        dialog.reject()
        hand.window.tester.close()
    hand.close()
