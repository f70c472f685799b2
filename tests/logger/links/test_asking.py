"""A transducer that must be asked is asked only after a yes: polled over a port, or Modbus."""

import asyncio
import sys

import pytest

from logger.decoder.description import read_description
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.errors import InputError
from logger.links.build import asks, build_link
from logger.recordings.files import read_trace
from tests.logger.answering import AnsweringPort
from tests.logger.cable import Cable
from tests.logger.links.test_modbus import server


def log(*words):
    return run_door("heldwheel-log", "about", {"record": "r"}, "logger.doors", ["record", *words])


@pytest.mark.parametrize(
    ("name", "words"),
    [("letters", "'D' every 0.05 s"), ("modbus", "holding 100 to 102"), ("plain-text", ""), ("ble-packets", "")],
)
def test_what_is_asked(name, words):
    description = read_description(name)
    assert (words in asks(description)) if words else not asks(description)
    if words:
        with pytest.raises(InputError, match="once you agree"):
            build_link(description, "/dev/ttyUSB0")
        build_link(description, "/dev/ttyUSB0", confirmed=True)


def test_letters_are_sent_after_a_yes(tmp_path, capsys):
    with AnsweringPort(lambda _request: b"+12.34\t+13.00\t-0.10\r", end=b"D") as port:
        words = (port.path, "--transducer", "letters", "--seconds", "1", "--out", str(tmp_path / "a.csv"))
        assert log(*words) == 2
        assert "Nobody is here to confirm" in capsys.readouterr().err
        assert not port.received
        assert log(*words, "--yes") == 0
        assert set(port.received) == {b"D"}
    trace = read_trace(tmp_path / "a.csv")
    assert set(trace.torque.tolist()) == {12.34}
    assert trace.unit == "lbf·in"
    assert set(trace.columns["highest_lbf_in"].tolist()) == {13.0}


def test_modbus_registers_are_read_after_a_yes(tmp_path, capsys):
    import msgspec

    described = read_description("modbus")
    modbus = msgspec.structs.replace(described.modbus, device=3)
    write_toml(tmp_path / "modbus.toml", msgspec.structs.replace(described, modbus=modbus))

    async def scenario(cable):
        words = (cable.b, "--transducer", str(tmp_path / "modbus.toml"), "--seconds", "1", "--out")
        async with server(cable.a, lambda: 27_000):
            assert await asyncio.to_thread(log, *words, str(tmp_path / "no.csv")) == 2
            code = """import sys; from logger.__main__ import main; sys.exit(main())"""
            recorder = await asyncio.create_subprocess_exec(
                sys.executable, "-c", code, "record", *words, str(tmp_path / "yes.csv"), "--yes"
            )
            assert await asyncio.wait_for(recorder.wait(), 30) == 0

    with Cable() as cable:
        asyncio.run(scenario(cable))
    assert "Modbus registers" in capsys.readouterr().err
    trace = read_trace(tmp_path / "yes.csv")
    assert set(trace.torque.tolist()) == {27.0}
    assert set(trace.columns["temperature_degC"].tolist()) == {21.5}
    assert len(trace.time_s) > 25  # 50 a second are asked for
