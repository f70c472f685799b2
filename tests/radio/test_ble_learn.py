"""An unknown Bluetooth gauge: listened to as a whole, learned, described, and recorded by that description."""

import asyncio
import struct

import numpy as np
import pytest

from logger.decoder.build import build_decoder
from logger.decoder.crc import check
from logger.decoder.description import BleSettings
from logger.errors import InputError
from logger.learn.learn import Wanted
from logger.learn.radio import learn_radio
from logger.links.ble_listen import Say, Streams, listen
from tests.radio.air import Characteristic, Peripheral, Service
from tests.radio.gauges import OWN_COMMAND, OWN_SERVICE, OWN_STREAM, about, play, standard_gauge, standard_torque

ONE = "F0:00:00:00:00:01"
OTHER = OWN_STREAM.replace("7d1c0002", "7d1c0009")
FORM = bytes([0x0E, 0xFE, 0x41, 0x27, 1, 0, 0])  # sint16, 10^-2, N·m (assigned numbers, 0x2904)
BATCH = 20


def course(count):
    """A pull each way, as raw hundredths of a newton metre."""
    t = np.linspace(0, 2, count)
    rng = np.random.default_rng(2)
    noise = rng.normal(0, 3, count)
    return np.round(np.where(t < 1, 1, -0.7) * 4100 * np.sin(np.pi * t) ** 2 + noise).astype(int)


VALUES = course(60 * BATCH)


def packets(head, pack="<h", tail=None):
    """Packets of twenty: a head for packet k, then the samples."""
    for k in range(len(VALUES) // BATCH):
        body = head(k) + b"".join(struct.pack(pack, int(v)) for v in VALUES[k * BATCH : (k + 1) * BATCH])
        yield body + (tail(body) if tail else b"")


def gauge_of(air, streams, on_write=lambda _data: None):
    own = [Characteristic(u, notify=True, descriptors={0x2904: form} if form else {}) for u, form in streams.items()]
    services = [Service(OWN_SERVICE, [*own, Characteristic(OWN_COMMAND, on_write=on_write)]), *about()]
    return Peripheral(air, "unknown gauge", ONE, services)


def counted(k):
    return struct.pack("<H", (65530 + k) & 0xFFFF)


def counting_samples(k):
    return struct.pack(">I", 7 + k * BATCH) + b"\x00"


async def subscribed(w, gauge):
    """Begin to listen, and wait until the gauge has somebody to send to."""
    streams = Streams()
    listening = asyncio.ensure_future(listen(ONE, BleSettings(), 2.5, streams, backends=w.backends))
    async with asyncio.timeout(20):
        while not (streams.heard and gauge.device.connections):  # noqa: ASYNC110 - it is bleak that is waited for
            await asyncio.sleep(0.02)
    await asyncio.sleep(0.4)
    return streams, listening


LAYOUTS = {
    # head, how a sample is packed, tail, Presentation Format, what is asked and then said
    "counter of packets, format known": (counted, "<h", None, FORM, {}),
    "counter of samples, format known": (lambda k: struct.pack("<H", k * BATCH), "<h", None, FORM, {}),
    "nothing but samples, format known": (lambda _k: b"", "<h", None, FORM, {}),
    "counter, status, CRC, no format": (
        lambda k: counted(k) + b"\x00", "<h", lambda b: check(b, "crc-16/modbus").to_bytes(2, "little"), b"",
        {"unit": "N·m", "scale": 0.01}),
    "32 bits, high end first, no format": (counting_samples, ">i", None, b"", {"unit": "N·m", "scale": 0.01}),
    "float32, no format": (counted, "<f", None, b"", {"unit": "N·m", "scale": 0.01}),
}  # fmt: skip


@pytest.mark.parametrize("name", LAYOUTS)
def test_packed_notifications_are_learned(live, name):
    head, pack, tail, form, told = LAYOUTS[name]

    async def scenario(w):
        gauge = gauge_of(w.air, {OWN_STREAM: form})
        await w.add(gauge)
        streams, listening = await subscribed(w, gauge)
        await play(gauge, OWN_STREAM, packets(head, pack, tail), 0.01)
        await listening
        assert set(streams.heard) == {OWN_STREAM}, "no housekeeping"
        learned = learn_radio(streams.heard, BleSettings())
        if told:
            assert set(learned.missing) <= {"unit", "scale"}
            assert learned.description is None
            learned = learn_radio(streams.heard, BleSettings(), wanted=Wanted(**told))
        description = learned.description
        assert description is not None, learned.unknown
        assert description.ble.characteristic == OWN_STREAM
        assert description.notification.samples == BATCH
        decoded = build_decoder(description).feed(*(c.data for c in streams.heard[OWN_STREAM][1]))
        assert len(decoded) == len(VALUES)
        assert decoded.columns["torque"].tolist() == pytest.approx((VALUES / 100).tolist(), abs=1e-9)
        assert not decoded.events
        if head(0):
            assert description.has_counter
            lost = build_decoder(description)
            lost.feed(*list(packets(head, pack, tail))[:10])
            after = lost.feed(*list(packets(head, pack, tail))[13:20])
            assert [e.count for e in after.events] == [3 * BATCH]

    live(scenario)


def test_of_several_characteristics_the_one_that_moves_is_found(live):
    async def scenario(w):
        gauge = gauge_of(w.air, {OWN_STREAM: b"", OTHER: b""})
        await w.add(gauge)
        streams, listening = await subscribed(w, gauge)
        lines = [f"{v / 100:.2f} Nm\r\n".encode() for v in VALUES[::20]]
        still = [struct.pack("<H", 2150)] * 30
        await asyncio.gather(play(gauge, OWN_STREAM, still, 0.02), play(gauge, OTHER, lines, 0.01))
        await listening
        learned = learn_radio(streams.heard, BleSettings())
        assert learned.description is not None, learned
        assert learned.description.ble.characteristic == OTHER
        assert learned.description.lines.template == "{torque} {unit}"
        both = {OWN_STREAM: (streams.heard[OWN_STREAM][0], streams.heard[OTHER][1]), OTHER: streams.heard[OTHER]}
        asked = learn_radio(both, BleSettings())
        assert asked.missing == ("characteristic",)
        assert any(OWN_STREAM in line for line in asked.found)

    live(scenario)


def test_the_standard_characteristic_is_taken_as_it_is(live):
    async def scenario(w):
        gauge = standard_gauge(w.air, ONE)
        await w.add(gauge)
        streams, listening = await subscribed(w, gauge)
        (uuid,) = streams.heard
        await play(gauge, uuid, [standard_torque(n / 10) for n in range(30)], 0.01)
        await listening
        learned = learn_radio(streams.heard, BleSettings())
        decoded = build_decoder(learned.description).feed(*(c.data for c in streams.heard[uuid][1]))
        assert decoded.columns["torque"].tolist() == [n / 10 for n in range(30)]

    live(scenario)


def test_what_is_sent_goes_where_it_is_said_and_nothing_else_is_sent(live):
    async def scenario(w):
        written = []
        gauge = gauge_of(w.air, {OWN_STREAM: b""}, written.append)
        await w.add(gauge)
        with pytest.raises(InputError, match="--command"):
            await listen(ONE, BleSettings(), 0.3, Streams(), Say(start=b"\x03\x01"), w.backends)
        await listen(ONE, BleSettings(), 0.3, Streams(), backends=w.backends)
        assert not written
        settings = BleSettings(command=OWN_COMMAND)
        await listen(ONE, settings, 0.5, Streams(), Say(b"\x03\x01", b"D", 0.1), w.backends)
        assert bytes(written[0]) == b"\x03\x01"
        assert {bytes(data) for data in written[1:]} == {b"D"}
        silent = Streams()
        await listen(ONE, BleSettings(), 0.3, silent, backends=w.backends)
        learned = learn_radio(silent.heard, BleSettings())
        assert "--start" in learned.unknown[0]

    live(scenario)
