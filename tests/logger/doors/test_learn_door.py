"""``heldwheel-log learn`` on real pseudo-terminals."""

import sys

import pytest

from logger.__main__ import main
from logger.decoder.description import read_description
from logger.edges.confirm import confirm_sending
from logger.errors import InputError
from logger.virtual.port import VirtualPort
from tests.logger.answering import AnsweringPort


@pytest.fixture
def learn(monkeypatch, capsys):
    def run(*words):
        monkeypatch.setattr(sys, "argv", ["heldwheel-log", "learn", *words])
        code = main()
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


def gauge(count=4000, unit=" Nm"):
    for i in range(count):
        yield i / 200, f"{10 * (i % 50) / 50 - 3:+.2f}{unit}\r\n".encode()


def test_listens_sends_nothing_and_writes(learn, tmp_path):
    out = tmp_path / "learned.toml"
    with VirtualPort(gauge()) as port:
        code, shown, _ = learn(port.path, "--seconds", "3", "--out", str(out), "--baud", "115200")
        assert not port.received
        assert learn(port.path, "--out", str(out))[0] == 2  # never overwritten
    assert code == 0
    assert "N·m" in shown
    assert "readings a second" in shown
    description = read_description(out)
    assert (description.unit, description.lines.template) == ("N·m", "{torque} {unit}")
    assert description.serial.baud == 115200
    assert description.transducer.rate_hz == pytest.approx(200, rel=0.05)  # on a busy machine


def test_tries_the_usual_speeds(learn):
    with VirtualPort(gauge()) as port:
        code, shown, _ = learn(port.path, "--seconds", "1")
    assert code == 0
    assert "baud = 9600" in shown


def test_asks_for_a_unit_that_is_not_sent(learn):
    with VirtualPort(gauge(unit="")) as port:
        code, shown, errors = learn(port.path, "--seconds", "1", "--baud", "9600")
        assert code == 4
        assert "--unit" in shown
        assert "No description" in errors
    with VirtualPort(gauge(unit="")) as port:
        code, shown, _ = learn(port.path, "--seconds", "1", "--baud", "9600", "--unit", "lbf·in")
        assert code == 0
        assert "lbf·in" in shown


def test_polls_only_after_a_yes(learn, monkeypatch):
    count = iter(range(10_000))
    with AnsweringPort(lambda _request: f"{next(count) / 10:.1f} Nm\r\n".encode()) as port:
        poll = (port.path, "--poll", r"D\r", "--baud", "9600", "--interval", "0.02")
        code, _, errors = learn(*poll, "--seconds", "1")
        assert code == 2
        assert "Nobody is here to confirm" in errors
        assert not port.received
        code, shown, errors = learn(*poll, "--seconds", "1", "--yes")
        assert code == 0
        assert r"sends 'D\x0D'" in errors
        assert "[poll]" in shown


@pytest.mark.parametrize("answer", ["no\n", "\n", "yes\n"])
def test_the_question(monkeypatch, answer):
    class Terminal:
        def isatty(self):
            return True

        def readline(self):
            return answer

    monkeypatch.setattr(sys, "stdin", Terminal())
    if answer == "yes\n":
        confirm_sending("port", b"Z\r", "zero")
    else:
        with pytest.raises(InputError, match="nothing was sent"):
            confirm_sending("port", b"Z\r", "zero")


@pytest.mark.parametrize(
    "words",
    [[], ["/dev/x", "--ble", "F0:00:00:00:00:01"], ["socket://x"], ["--ble", "name"], ["/dev/x", "--seconds", "0"],
     ["/dev/x", "--unit", "furlong"]],
)  # fmt: skip
def test_bad_input(learn, words):
    assert learn(*words)[0] == 2
