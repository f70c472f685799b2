"""The shipped descriptions of binary, Bluetooth, polled and second sources read what their comments say they read."""

import struct

import pytest

from logger.decoder.build import build_decoder
from logger.decoder.crc import check
from logger.decoder.description import read_description, shipped
from logger.edges.door import run_door
from logger.samples import EventKind


def read(name, *chunks):
    decoded = build_decoder(read_description(name)).feed(*chunks)
    return {key: values.tolist() for key, values in decoded.columns.items()}, decoded


def test_binary_frame():
    def frame(counter, status, samples):
        rows = b"".join((t & 0xFFFFFF).to_bytes(3, "little") + struct.pack("<h", a) for t, a in samples)
        body = bytes([2 + len(rows), counter, status]) + rows
        return b"\xaa\x55" + body + struct.pack("<H", check(body, "crc-16/modbus"))

    columns, decoded = read("binary-frame", frame(255, 0, [(27_000, 15), (-27_000, -15)]) + frame(0, 1, [(1, 0)]))
    assert columns["torque"][:2] == [27.0, -27.0]
    assert columns["angle"] == [1.5, -1.5, 0.0]
    assert [event.kind for event in decoded.events] == [EventKind.OVERLOAD]


def test_ble_text_split_over_packets():
    columns, _ = read("ble-text", b"12.3", b"4 Nm\n-1.", b"5 Nm\n")
    assert columns["torque"] == [12.34, -1.5]


def test_ble_packets():
    columns, decoded = read("ble-packets", *(struct.pack("<HB20h", n, 0, *range(20)) for n in (0, 2)))
    assert columns["torque"][:3] == [0.0, 0.01, 0.02]
    assert [(event.kind, event.count) for event in decoded.events] == [(EventKind.GAP, 20)]


def test_letters():
    columns, _ = read("letters", b"+12.34\t+13.00\t-0.10\r")
    assert columns == {"torque": [12.34], "highest": [13.0], "lowest": [-0.1]}


def test_modbus():
    raw = -27_000 & 0xFFFFFFFF
    columns, _ = read("modbus", struct.pack(">HHh", raw & 0xFFFF, raw >> 16, 215))
    assert columns == {"torque": [-27.0], "temperature": [21.5]}


def test_second_sources():
    assert read("encoder", b"A=-12.50\n")[0]["torque"] == [-12.5]
    assert read("gyro", struct.pack("<H5f", 0, 1, 2, 3, 4, 5.5))[0]["torque"] == [1, 2, 3, 4, 5.5]


@pytest.mark.parametrize("name", ["encoder", "gyro"])
def test_a_second_source_is_not_recorded_as_torque(name, capsys):
    assert read_description(name).measures != "torque"
    words = ["record", "/dev/ttyUSB0", "--transducer", "encoder"]
    assert run_door("heldwheel-log", "about", {"record": "r"}, "logger.doors", words) == 2
    assert "--second" in capsys.readouterr().err


def test_no_command_is_sent_by_a_description_alone():
    """Commands stand in a description; only ``--send`` after a confirmation, or a poll, ever sends bytes."""
    for path in shipped().values():
        description = read_description(path)
        assert all(command.does for command in description.commands.values()), path
