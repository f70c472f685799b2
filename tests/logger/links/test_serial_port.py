"""Serial ports, on pseudo-terminals with the real serial library: opening, errors, unplugging, plugging in again."""

from __future__ import annotations

import asyncio
import errno
import os
import threading
import time
from pathlib import Path

import pytest

from logger.decoder.description import Description, SerialSettings
from logger.decoder.template import LineFormat
from logger.errors import InputError, LinkError, LinkLost
from logger.header import Header, TransducerFacts
from logger.links.build import build_link
from logger.links.serial_port import SerialLink, open_failure, serial_ports
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import EndReason, EventKind
from logger.stream.session import build_session
from logger.virtual.port import VirtualPort
from tests.logger.scripted import Kept

SETTINGS = SerialSettings(baud=115200)
DESCRIPTION = Description(
    name="counted gauge",
    lines=LineFormat(template="{counter},{torque}", terminator="CRLF"),
    serial=SETTINGS,
    transducer=TransducerFacts(unit="N·m", rate_hz=500),
)


def pieces(count: int, rate_hz: float = 500.0, start_s: float = 0.2):
    return [(start_s + i / rate_hz, b"%d,%d.25\r\n" % (i, i)) for i in range(count)]


def test_bytes_arrive_in_order_with_their_moment():
    async def read_all(path: str) -> tuple[bytes, list[float]]:
        link = SerialLink(path, SETTINGS)
        await link.open()
        data, moments = b"", []
        while not data.endswith(b"199,199.25\r\n"):
            for chunk in await asyncio.wait_for(link.read(), 5):
                data += chunk.data
                moments.append(chunk.arrival_s)
        await link.close()
        await link.close()
        return data, moments

    sent = pieces(200)
    with VirtualPort(sent) as port:
        before = time.monotonic()
        data, moments = asyncio.run(read_all(port.path))
    assert data == b"".join(piece for _, piece in sent)
    assert moments == sorted(moments)
    assert before <= moments[0] <= moments[-1] <= time.monotonic()


def test_what_is_written_arrives():
    async def write(path: str) -> None:
        link = SerialLink(path, SETTINGS)
        await link.open()
        await link.write(b"Z\r\n")
        await link.close()

    with VirtualPort([]) as port:
        asyncio.run(write(port.path))
        deadline = time.monotonic() + 5
        while port.received != b"Z\r\n" and time.monotonic() < deadline:
            time.sleep(0.01)
        assert port.received == b"Z\r\n"


def opened(path: str):
    async def attempt() -> None:
        link = SerialLink(path, SETTINGS)
        try:
            await link.open()
        finally:
            await link.close()

    asyncio.run(attempt())


@pytest.mark.parametrize(
    "address",
    ["socket://10.0.0.1:5000", "rfc2217://host:1", "loop://", "spy:///dev/ttyS0", "tcp://x", "hwgrep://x", ""],
)
def test_network_addresses_are_refused(address):
    with pytest.raises(InputError, match="no local serial port"):
        build_link(DESCRIPTION, address)


def test_a_missing_port_lists_those_present(monkeypatch):
    from logger.links.serial_port import SerialPort

    monkeypatch.setattr("logger.links.serial_port.serial_ports", lambda: [SerialPort("/dev/ttyUSB7", "gauge")])
    with pytest.raises(LinkError, match=r"/dev/ttyNONE: there is no such port; present are: /dev/ttyUSB7"):
        opened("/dev/ttyNONE")


def test_a_file_is_no_port(tmp_path):
    (tmp_path / "x").write_text("precious", encoding="utf-8")
    with pytest.raises(LinkError, match="is no serial port"):
        opened(str(tmp_path / "x"))
    assert (tmp_path / "x").read_text(encoding="utf-8") == "precious"


def test_a_port_without_permission_names_the_group(monkeypatch):
    monkeypatch.setattr("logger.links.serial_port.Path.group", lambda _self: "dialout")
    text = open_failure("/dev/ttyUSB0", PermissionError(errno.EACCES, "Permission denied"))
    assert text == (
        "/dev/ttyUSB0: you are not permitted to use this port; it belongs to the group 'dialout': "
        "run 'sudo usermod -a -G dialout $USER' and log in again"
    )


def test_the_group_is_read_from_the_device_node(monkeypatch):
    import grp

    import serial

    def refused(_self):
        raise serial.SerialException(errno.EACCES, "could not open port: [Errno 13] Permission denied")

    monkeypatch.setattr("serial.Serial.open", refused)
    with VirtualPort([]) as port:
        group = grp.getgrgid(Path(port.path).stat().st_gid).gr_name
        with pytest.raises(LinkError, match=f"belongs to the group '{group}'"):
            opened(port.path)


@pytest.mark.parametrize(
    ("error", "told"),
    [
        (OSError(errno.EBUSY, "busy"), "is in use by another program"),
        (OSError("could not open port 'COM3': PermissionError(13, 'Access is denied.')"), "is in use by another"),
        (OSError("could not open port 'COM9': FileNotFoundError(2, 'cannot find')"), "there is no such port"),
        (ValueError("Invalid baud rate: 3"), "cannot be set as described"),
        (OSError(errno.EIO, "Input/output error"), "cannot be opened: Input/output error"),
    ],
)
def test_what_opening_says(error, told):
    assert told in open_failure("COM3", error)


def test_a_port_in_use():
    async def twice(path: str) -> None:
        first, second = SerialLink(path, SETTINGS), SerialLink(path, SETTINGS)
        await first.open()
        try:
            await second.open()
        finally:
            await second.close()
            await first.close()

    with VirtualPort([]) as port, pytest.raises(LinkError, match="is in use by another program"):
        asyncio.run(twice(port.path))


def test_unplugged_while_reading():
    received = bytearray()

    async def read_on(port: VirtualPort) -> None:
        link = SerialLink(port.path, SETTINGS)
        await link.open()
        threading.Timer(0.3, port.unplug).start()
        try:
            while True:
                received.extend(b"".join(chunk.data for chunk in await asyncio.wait_for(link.read(), 5)))
        finally:
            await link.close()

    with VirtualPort(pieces(1000, start_s=0.05)) as port, pytest.raises(LinkLost, match="the port is gone"):
        asyncio.run(read_on(port))
    assert received.startswith(b"0,0.25\r\n1,1.25\r\n")


def test_unplugged_and_plugged_in_again_while_recording(tmp_path):
    with VirtualPort(pieces(800), link=tmp_path / "gauge") as port:
        session = build_session(SerialLink(port.path, SETTINGS), DESCRIPTION)
        writer = RecordingWriter(tmp_path / "a.csv", Header(transducer=DESCRIPTION.transducer), session.columns)
        session.subscribe(writer)
        session.subscribe(kept := Kept())

        async def through() -> EndReason:
            running = asyncio.ensure_future(session.run())
            await asyncio.sleep(0.6)
            port.unplug()
            await asyncio.sleep(0.4)
            port.plug()
            await asyncio.to_thread(port.finished.wait, 10)
            await asyncio.sleep(0.1)
            session.stop()
            return (await running).reason

        assert asyncio.run(through()) is EndReason.STOPPED
    trace = read_trace(tmp_path / "a.csv")
    assert trace.state == "closed"
    assert trace.torque.tolist() == kept.torque
    counter = trace.columns["counter"]
    assert counter[0] == 0
    assert int(counter[-1]) == 799
    kinds = [event.kind for event in trace.events]
    assert EventKind.DISCONNECT in kinds
    assert EventKind.RECONNECT in kinds
    gap = next(event for event in trace.events if event.kind is EventKind.GAP)
    assert gap.count == 800 - len(trace.time_s)  # every lost line is counted
    assert (trace.time_s[1:] > trace.time_s[:-1]).all()
    # The time that the device was away is in the times.
    away_s = trace.time_s[gap.index] - trace.time_s[gap.index - 1]
    assert away_s == pytest.approx((gap.count + 1) / 500, abs=0.05)


def test_joining_in_the_middle_of_a_line_leaves_its_rest_out(tmp_path):
    plain = Description(name="x", lines=LineFormat(template="{torque}"), serial=SETTINGS)

    async def join(path: str, near: int) -> Kept:
        session = build_session(SerialLink(path, SETTINGS), plain)
        session.subscribe(kept := Kept())
        running = asyncio.ensure_future(session.run())
        while session.health.state == "opening" and not session._blocks.heard_s:  # noqa: ASYNC110
            await asyncio.sleep(0.001)
        os.write(near, b"3.45\r\n123.46\r\n")
        await asyncio.sleep(0.2)
        session.stop()
        await running
        return kept

    import tty

    near, far = os.openpty()
    tty.setraw(far)
    try:
        kept = asyncio.run(join(os.ttyname(far), near))
    finally:
        os.close(near)
        os.close(far)
    assert kept.torque == [123.46]
    assert kept.kinds == ["garbage"]


def test_listing_opens_nothing(monkeypatch):
    def never(*_args, **_more):
        raise AssertionError("a port was opened")

    monkeypatch.setattr("serial.Serial", never)
    assert isinstance(serial_ports(), list)
