"""Binary frames over a serial line at both ends of the speeds in use: losses exact, unplugged and plugged in again."""

import asyncio
import struct

import numpy as np
import pytest

from logger.decoder.build import build_decoder
from logger.decoder.crc import check
from logger.decoder.description import Description, SerialSettings
from logger.decoder.layouts import CheckSum, CounterField, Frame, Packet, PlacedNumber
from logger.header import Header, TransducerFacts
from logger.links.serial_port import SerialLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import EndReason, EventKind
from logger.stream.session import build_session
from logger.virtual.port import VirtualPort


def described(baud, rate):
    return Description(
        name="frames",
        serial=SerialSettings(baud=baud),
        frame=Frame(
            sync="AA 55",
            packet=Packet(
                fields=(PlacedNumber(name="torque", type="s16", unit="N·m", scale=0.01),),
                samples_at=4,
                tail_bytes=2,
                counter=CounterField(at=2),
                check=CheckSum(name="crc-16/ccitt-false", order="big", covers_from=2),
            ),
        ),
        transducer=TransducerFacts(rate_hz=rate),
        silence_s=0.5,
    )


def frame(n):
    body = struct.pack("<Hh", n % 65536, n % 5000)
    return b"\xaa\x55" + body + struct.pack(">H", check(body, "crc-16/ccitt-false"))


async def record(path, port, baud, rate, act):
    description = described(baud, rate)
    session = build_session(SerialLink(port.path, description.serial), description, build_decoder(description))
    session.subscribe(RecordingWriter(path, Header(transducer=description.transducer), session.columns))
    running = asyncio.ensure_future(session.run())
    await asyncio.sleep(0.3)
    port.go()
    await act(session)
    session.stop()
    ending = await asyncio.wait_for(running, 20)
    return ending, read_trace(path)


def assert_exact(trace):
    counter = trace.columns["counter"].astype(int)
    assert np.array_equal((trace.torque * 100).round().astype(int), (counter + counter_offset(trace)) % 5000)
    lost = sum(event.count for event in trace.events if event.kind is EventKind.GAP)
    assert counter[-1] - counter[0] + 1 - len(counter) == lost


def counter_offset(trace):
    return round(trace.torque[0] * 100) - int(trace.columns["counter"][0])


@pytest.mark.parametrize(("baud", "rate"), [(9600, 50), (115_200, 1000), (1_000_000, 4000)])
def test_lost_and_spoiled_frames_are_counted_at_any_speed(tmp_path, baud, rate):
    count = int(1.5 * rate)
    frames = [frame(n) for n in range(count)]
    lost = set(range(count // 4, count // 4 + 3))
    spoiled = count // 2
    frames[spoiled] = frames[spoiled][:5] + bytes([frames[spoiled][5] ^ 0x10]) + frames[spoiled][6:]
    frames[count // 3] = b"\x00\xaa" + frames[count // 3]
    pieces = [(n / rate, data) for n, data in enumerate(frames) if n not in lost]

    async def act(_session):
        await asyncio.to_thread(port.finished.wait, 30)
        await asyncio.sleep(0.3)

    with VirtualPort(pieces, baud=baud, held=True) as port:
        ending, trace = asyncio.run(record(tmp_path / "a.csv", port, baud, float(rate), act))
    assert ending.reason is EndReason.STOPPED
    assert len(trace.time_s) == count - 4
    assert_exact(trace)
    assert sum(e.count for e in trace.events if e.kind is EventKind.GARBAGE) == 2 + len(frames[spoiled])


def test_unplugged_and_plugged_in_again(tmp_path):
    pieces = [(n / 1000, frame(60_000 + n)) for n in range(12_000)]

    async def act(session):
        await asyncio.sleep(1.0)
        port.unplug()
        await asyncio.sleep(1.0)
        port.plug()
        async with asyncio.timeout(15):
            while session.health.state != "streaming":  # noqa: ASYNC110 - a health value has no event to wait for
                await asyncio.sleep(0.05)
        await asyncio.sleep(1.0)

    with VirtualPort(pieces, link=tmp_path / "ttyGauge", held=True) as port:
        ending, trace = asyncio.run(record(tmp_path / "a.csv", port, 115_200, 1000.0, act))
    assert ending.reason is EndReason.STOPPED
    assert_exact(trace)
    kinds = [event.kind for event in trace.events]
    assert kinds.index(EventKind.DISCONNECT) < kinds.index(EventKind.RECONNECT)
    assert 700 < sum(e.count for e in trace.events if e.kind is EventKind.GAP) < 5000
