"""The doors find, record and replay, as a user runs them."""

from __future__ import annotations

import asyncio
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from logger.__main__ import COMMANDS
from logger.edges.door import Exit, run_door
from logger.edges.toml_file import write_toml
from logger.header import Lever, Limit
from logger.recordings.files import read_trace
from logger.samples import EventKind
from logger.virtual.port import VirtualPort

GAUGE = """\
name = "bench gauge"
[transducer]
unit = "lbf·in"
rate_hz = 500
[serial]
baud = 115200
[lines]
template = "{counter},{torque}"
[commands.zero]
send = 'Z\\r\\n'
does = "zeroes the display"
"""


def log(*words: str) -> int:
    return run_door("heldwheel-log", "about", COMMANDS, "logger.doors", list(words))


@pytest.fixture
def gauge(tmp_path) -> str:
    path = tmp_path / "transducer.toml"
    path.write_text(GAUGE, encoding="utf-8")
    return str(path)


def pieces(count: int):
    return [(1.0 + i / 500, b"%d,%d.25\n" % (i, i)) for i in range(count)]


def test_seconds_are_seconds_of_data(tmp_path, capsys):
    """Finding and connecting take what they take: the clock runs from the first bytes; no figure is shown before."""
    from logger.doors.recording import record
    from logger.header import Header
    from tests.logger.scripted import Pause, ScriptedLink
    from tests.logger.stream.test_session import counted, lines

    class Slow(ScriptedLink):
        async def open(self):
            await asyncio.sleep(0.8)
            await super().open()

    script = [part for n in range(100) for part in (lines(n * 10, 10), Pause(0.01))]
    out = tmp_path / "a.csv"
    assert record(counted(Slow(script)), Header(), out, seconds=0.4) == Exit.OK
    assert len(read_trace(out).time_s) > 10
    shown = capsys.readouterr().err
    assert "– N·m  highest –" in shown
    assert "nan" not in shown


def test_record_from_a_port(tmp_path, gauge, capsys):
    out = tmp_path / "a.csv"
    limit = tmp_path / "limit.toml"
    write_toml(limit, Limit(quantity="breakaway", kind="min", unit="lbf·ft", source="the shop's own rule", lower=20.0))
    job = tmp_path / "job.toml"
    job.write_text('[job]\ncustomer = "a club"\nnotes = "cold"\n[test]\nplace = "bench"\n', encoding="utf-8")
    with VirtualPort(pieces(400)) as port:
        path = port.path
        words = [path, "--transducer", gauge, "--out", str(out), "--seconds", "2.6", "--lever", "450mm±3mm"]
        words += ["--stud-circle", "5x114.3mm", "--limit", str(limit), "--job", str(job), "--note", "second try"]
        assert log("record", *words, "--place", "car", "--held", "other side", "--side", "left") == Exit.OK
    trace = read_trace(out)
    assert trace.state == "closed"
    assert trace.torque.tolist() == [i + 0.25 for i in range(400)]
    header = trace.header
    assert header.lever == Lever(
        fixture="one stud", length_mm=450.0, length_mm_u=pytest.approx(3 / 1.96), stud_circle_mm=114.3, studs=5
    )
    assert header.limit is not None
    assert header.limit.source == "the shop's own rule"
    assert (header.test.place, header.test.held, header.test.side) == ("car", "other side", "left")
    assert header.job.customer == "a club"
    assert header.job.notes == "cold; second try"
    assert header.transducer.identity == path
    assert header.transducer.description == "transducer.toml"
    assert header.transducer.unit == "lbf·in"
    assert header.time_from == "device counter"
    shown = capsys.readouterr()
    assert f"{out}: 400 samples" in shown.out
    assert "0 lost, closed" in shown.out


def test_a_command_is_sent_only_when_confirmed(tmp_path, gauge, capsys):
    with VirtualPort(pieces(100)) as port:
        words = ["record", port.path, "--transducer", gauge, "--seconds", "2.5", "--send", "zero", "--out"]
        assert log(*words, str(tmp_path / "no.csv")) == Exit.BAD_INPUT
        assert "add --yes" in capsys.readouterr().err
        assert port.received == b""
        assert not (tmp_path / "no.csv").exists()
        assert log(*words, str(tmp_path / "a.csv"), "--yes") == Exit.OK
        assert "This sends 'Z\\x0D\\x0A'" in capsys.readouterr().err
        assert port.received == b"Z\r\n"
    sent = [event for event in read_trace(tmp_path / "a.csv").events if event.kind is EventKind.SENT]
    assert [event.text for event in sent] == ["zeroes the display: Z\\x0D\\x0A"]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ([], "say what to record"),
        (["/dev/ttyNONE"], "needs --transducer FILE"),
        (["socket://10.0.0.1:99"], "is no local serial port"),
        (["/dev/ttyNONE", "--transducer", "GAUGE"], "there is no such port; present are:"),
        (["/dev/ttyNONE", "--transducer", "no.toml"], "no.toml: there is no such file"),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--baud", "1"], "--baud 1"),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--send", "fly"], "no such command; it has: zero"),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--seconds", "-1"], "--seconds must be above 0"),
        (
            ["/dev/ttyNONE", "--transducer", "GAUGE", "--lever", "-450mm", "--fixture", "one stud"],
            "the length must be above zero",
        ),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--lever", "450", "--fixture", "one stud"], "has no unit"),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--lever", "450mm"], "does not say how the torque gets to the axle"),
        (["/dev/ttyNONE", "--transducer", "GAUGE", "--limit", "breakaway 20"], "write a file name"),
        (["--virtual", "healthy", "--limit", "breakaway >= 20 lbf·ft"], "say where it comes from with --source"),
        (["--virtual", "nonesuch"], "no scenario"),
    ],
)
def test_bad_input_is_one_clear_message(tmp_path, gauge, capsys, monkeypatch, words, told):
    monkeypatch.chdir(tmp_path)
    words = [gauge if word == "GAUGE" else word for word in words]
    assert log("record", *words, "--out", "x.csv") == Exit.BAD_INPUT
    shown = capsys.readouterr().err
    assert told in shown
    assert "Traceback" not in shown


def test_record_the_virtual_transducer_and_replay_it(tmp_path, capsys):
    out, again = tmp_path / "v.csv", tmp_path / "r.csv"
    assert log("record", "--virtual", "healthy", "--speed", "inf", "--out", str(out)) == Exit.OK
    assert "SIMULATED" in capsys.readouterr().out
    first = read_trace(out)
    assert first.header.simulated
    assert len(first.time_s) > 10_000
    assert log("replay", str(out), "--speed", "inf", "--out", str(again)) == Exit.OK
    second = read_trace(again)
    assert second.header.simulated
    assert second.header.source is not None
    assert second.header.source.sha256 == first.sha256
    assert second.torque.tolist() == first.torque.tolist()
    assert log("replay", str(out), "--out", str(again)) == Exit.BAD_INPUT
    assert "never overwritten" in capsys.readouterr().err


@pytest.mark.parametrize("speed", ["inf", "200"])
def test_seconds_of_the_virtual_transducer_are_its_own_however_fast_it_plays(tmp_path, speed):
    out = tmp_path / "v.csv"
    assert log("record", "--virtual", "healthy", "--speed", speed, "--seconds", "3", "--out", str(out)) == Exit.OK
    trace = read_trace(out)
    assert trace.state == "closed"
    assert trace.time_s[-1] == pytest.approx(3.0, abs=0.1)


def hears_signals() -> None:
    """A program that is started in the background may inherit that hang-ups are ignored; the recorder keeps to that."""
    for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)


def started(*words: str) -> subprocess.Popen:
    return subprocess.Popen(
        [sys.executable, "-m", "logger", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[3],
        preexec_fn=hears_signals,
    )


def wait_for_rows(path: Path) -> None:
    deadline = time.monotonic() + 60
    while not (path.exists() and b"# batch rows=0" in path.read_bytes()):
        assert time.monotonic() < deadline
        time.sleep(0.05)
    time.sleep(0.6)


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_ctrl_c_and_polite_kills_close_the_file(tmp_path, gauge, number):
    out = tmp_path / "a.csv"
    with VirtualPort(pieces(100_000)) as port:
        process = started("record", port.path, "--transducer", gauge, "--out", str(out))
        wait_for_rows(out)
        process.send_signal(number)
        shown, errors = process.communicate(timeout=60)
    assert process.returncode == 0, errors
    assert "0 lost, closed" in shown
    assert "Traceback" not in errors
    assert read_trace(out).state == "closed"


def test_a_killed_recorder_loses_at_most_a_quarter_second(tmp_path, gauge):
    out = tmp_path / "a.csv"
    with VirtualPort(pieces(100_000)) as port:
        process = started("record", port.path, "--transducer", gauge, "--out", str(out))
        wait_for_rows(out)
        before = read_trace(out)
        os.kill(process.pid, signal.SIGKILL)
        process.communicate(timeout=60)
    trace = read_trace(out)
    assert trace.state == "recovered"
    assert len(trace.time_s) >= len(before.time_s)
    assert trace.torque.tolist() == [
        i + 0.25 for i in range(int(trace.torque[0]), int(trace.torque[0]) + len(trace.torque))
    ]


def test_find_lists_ports(capsys):
    assert log("find") == Exit.OK
    shown = capsys.readouterr()
    assert "erial port" in shown.out
    assert "heldwheel-log find --ble" in shown.err


@pytest.mark.parametrize("command", ["find", "record", "replay"])
def test_help_has_an_example(command, capsys):
    with pytest.raises(SystemExit) as stopped:
        log(command, "--help")
    assert stopped.value.code == 0
    assert f"heldwheel-log {command} " in capsys.readouterr().out
