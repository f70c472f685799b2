"""``heldwheel-log weigh``: typed and measured checks, calibration, the register."""

import sys

import pytest

from logger.decoder.build import build_decoder
from logger.decoder.description import Description, Modbus, read_description
from logger.decoder.layouts import Packet, PlacedNumber, Register
from logger.decoder.template import LineFormat
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.header import TransducerFacts
from logger.instruments.measure import calibrated
from logger.instruments.register import Instruments, RegisteredTransducer, change_register, read_register
from logger.instruments.weigh import TwoPoint
from logger.virtual.port import VirtualPort

HERE = ("--latitude", "47.2", "--height", "410m")
G = 9.80692  # there, by the legal-metrology formula


@pytest.fixture
def weigh(monkeypatch, capsys, tmp_path):
    monkeypatch.setenv("HELDWHEEL_HOME", str(tmp_path))

    def run(*words):
        code = run_door("heldwheel-log", "about", {"weigh": "w"}, "logger.doors", ["weigh", *words])
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


@pytest.mark.parametrize(
    ("factor", "code", "word"), [(1.0, 0, "within"), (1.03, 1, "outside"), (1.0095, 3, "too close to call")]
)
def test_typed_readings(weigh, factor, code, word):
    load = 5 * 0.5 * G * factor
    got, out, err = weigh("--arm", "500mm", "--load", "5kg", f"{load:.4f}Nm", "--accuracy", "1", *HERE)
    assert got == code
    assert f"Result: {word}" in out
    assert f"{5 * 0.5 * G:.3f}" in out
    assert "buoyancy" in err


def test_without_a_place_gravity_is_a_doubt(weigh):
    code, out, err = weigh("--arm", "500mm", "--load", "5kg", "24.5166Nm", "18.083lbf·ft")
    assert code == 0
    assert "not judged" in out
    assert "0.3 % off" in err


def gauge(torque, seconds=60):
    for i in range(seconds * 100):
        yield i / 100, f"{torque():.3f}\n".encode()


def test_measured_and_kept_in_the_register(weigh, tmp_path, monkeypatch):
    description = tmp_path / "transducer.toml"
    write_toml(description, Description(name="gauge", lines=LineFormat(template="{torque}"),
                                        transducer=TransducerFacts(unit="N·m", rate_hz=100.0)))  # fmt: skip
    facts = TransducerFacts(serial="G-1", name="gauge", accuracy_percent_of_reading=2.0)
    change_register(lambda _: Instruments(instruments=(RegisteredTransducer(facts=facts),)))
    hung = [0.4]

    class Hands:
        asked = 0

        def readline(self):
            hung[0] = 0.4 + 2.5 * G * Hands.asked
            Hands.asked += 1
            return "\n"

        def isatty(self):
            return False

    monkeypatch.setattr(sys, "stdin", Hands())
    with VirtualPort(gauge(lambda: hung[0])) as port:
        measured = ("--port", port.path, "--transducer", str(description), "--seconds", "0.8", "--serial", "G-1")
        code, out, err = weigh("--arm", "500mm", "--load", "5kg", "--load", "10kg", *measured, *HERE)
    assert code == 0, out + err
    assert "hang nothing" in err
    assert "Hang 10kg" in err
    (kept,) = read_register().instruments[0].weighings
    assert (kept.agreement, kept.loads) == ("within", 2)
    assert abs(kept.worst_percent) < 0.5


def test_two_points_make_a_locked_description(weigh, tmp_path):
    raw, out = tmp_path / "raw.toml", tmp_path / "calibrated.toml"
    write_toml(raw, Description(name="bare amplifier", lines=LineFormat(template="{torque}")))
    loads = ("--load", "0kg", "8388000", "8388224", "--load", "10kg", "8486112")
    words = ("--two-point", "--arm", "500mm", *loads, *HERE)
    code, shown, _ = weigh(*words, "--transducer", str(raw), "--out", str(out))
    assert code == 0
    assert "locked" in shown
    assert out.stat().st_mode & 0o222 == 0
    description = read_description(out)
    assert description.transducer.certificate.startswith("two-point calibration")
    decoded = build_decoder(description).feed(b"8388112\n8486112\n8437112\n")
    assert decoded.columns["torque"].tolist() == pytest.approx([0.0, 5 * G, 2.5 * G], abs=0.01)
    assert weigh(*words, "--transducer", str(raw), "--out", str(out))[0] == 2


@pytest.mark.parametrize(
    "description",
    [
        Description(
            name="n", link="ble", notification=Packet(fields=(PlacedNumber(name="torque", type="s32", scale=2.0),))
        ),
        Description(name="m", modbus=Modbus(registers=(Register(name="torque", address=0, type="s32", scale=2.0),))),
    ],
)
def test_every_layout_can_be_calibrated(description):
    made = calibrated(description, TwoPoint(0.5, -3.0, 0.001), "0kg and 10kg")
    wire = (10).to_bytes(4, "little" if description.modbus is None else "big")
    assert build_decoder(made).feed(wire).columns["torque"].tolist() == [7.0]
    assert made.unit == "N·m"
    assert made.transducer.gain_u == 0.002


@pytest.mark.parametrize(
    "words",
    [
        [],
        ["--load", "5kg"],
        ["--load", "5kg", "24.5"],
        ["--load", "5furlong", "24.5Nm"],
        ["--load", "5kg", "24.5Nm", "--angle", "60"],
        ["--load", "5kg", "24.5Nm", "--latitude", "95"],
        ["--load", "5kg", "24.5Nm", "--serial", "unknown"],
        ["--load", "5kg", "--port", "/dev/nowhere"],
        ["--two-point", "--load", "5kg", "1"],
        ["--two-point", "--load", "0kg", "1", "--load", "5kg", "1"],
        ["--two-point", "--load", "0kg", "1", "--load", "5kg", "2", "--out", "x.toml"],
    ],
)
def test_bad_input(weigh, words):
    assert weigh("--arm", "500mm", *words)[0] == 2


def test_a_silent_port_is_told(weigh, tmp_path, monkeypatch):
    description = tmp_path / "transducer.toml"
    write_toml(description, Description(name="gauge", lines=LineFormat(template="{torque}")))
    monkeypatch.setattr("sys.stdin.readline", lambda: "\n", raising=False)
    with VirtualPort([]) as port:
        code, _, err = weigh("--arm", "500mm", "--load", "5kg", "--port", port.path, "--transducer", str(description),
                             "--seconds", "0.6")  # fmt: skip
    assert code == 2
    assert "gave no reading" in err


def test_a_simulated_device_is_said_and_never_kept_for_a_real_one(weigh, tmp_path, monkeypatch):
    description = tmp_path / "transducer.toml"
    facts, lines = TransducerFacts(unit="N·m", rate_hz=100.0), LineFormat(template="{torque};SIM")
    write_toml(description, Description(name="gauge", lines=lines, simulated_mark="SIM", transducer=facts))
    change_register(lambda _: Instruments(instruments=(RegisteredTransducer(facts=TransducerFacts(serial="G-1")),)))
    monkeypatch.setattr("sys.stdin.readline", lambda: "\n", raising=False)
    with VirtualPort((at, line.replace(b"\n", b";SIM\n")) for at, line in gauge(lambda: 1.0)) as port:
        words = ("--arm", "500mm", "--load", "5kg", "--port", port.path, "--transducer", str(description),
                 "--seconds", "0.6")  # fmt: skip
        code, _, err = weigh(*words)
        assert "SIMULATED" in err
        assert code == 0
        code, _, err = weigh(*words, "--serial", "G-1")
        assert code == 2
        assert "simulated" in err
    assert read_register().instruments[0].weighings == ()
