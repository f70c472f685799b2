"""Bluetooth through the real bleak API, on both tiers: the same tests, the same virtual peripheral."""

import asyncio
import struct
from itertools import pairwise

import pytest

from logger.decoder.description import BleSettings
from logger.decoder.layouts import Packet
from logger.decoder.notifications import NotificationDecoder
from logger.errors import InputError, LinkError, LinkLost
from logger.links.ble import BleLink, clean, meet, scan
from logger.samples import EventKind
from tests.radio.air import Characteristic, Peripheral, Service
from tests.radio.central import Peer
from tests.radio.gauges import (
    OWN_COMMAND,
    OWN_STREAM,
    TORQUE_UUID,
    about,
    format_gauge,
    play,
    standard_gauge,
    standard_torque,
    stream_gauge,
)

ONE, TWO = "F0:00:00:00:00:01", "F0:00:00:00:00:02"


async def collect(link, count):
    chunks = []
    async with asyncio.timeout(10):
        while len(chunks) < count:
            chunks += await link.read()
    return chunks


def test_scan_shows_names_identities_signal_services_and_opens_nothing(live):
    async def scenario(w):
        gauge = standard_gauge(w.air, ONE)
        rude = Peripheral(w.air, "evil\x1b[2J\nname", TWO, [])
        await w.add(gauge, rude)
        found = {one.identity: one for one in await scan(0.4, w.backends)}
        assert found[ONE].name == "bench transducer"
        assert found[ONE].rssi_dbm == -50
        assert found[ONE].services == ("0000185a-0000-1000-8000-00805f9b34fb",)
        assert found[TWO].name == "evil[2Jname"
        assert not gauge.device.connections
        assert not rude.device.connections

    live(scenario)


def test_the_standard_torque_characteristic_needs_no_description(live):
    async def scenario(w):
        gauge = standard_gauge(w.air, ONE)
        await w.add(gauge)
        facts, pick = await meet(ONE, backends=w.backends)
        assert facts.texts == {
            "maker": "nobody",
            "model": "simulated transducer",
            "serial": "S-0001",
            "firmware": "1.0",
        }
        assert (facts.battery_percent, facts.packet_bytes, facts.simulated) == (80, 244, True)
        assert pick.uuid == TORQUE_UUID
        link = BleLink(ONE, BleSettings(characteristic=pick.uuid), name=facts.name, backends=w.backends)
        await link.open()
        assert link.name == f"bench transducer ({ONE})"
        await play(gauge, TORQUE_UUID, [standard_torque(n / 10) for n in range(30)], 0.002)
        chunks = await collect(link, 30)
        decoded = NotificationDecoder(pick.packet).feed(*(chunk.data for chunk in chunks))
        assert decoded.columns["torque"].tolist() == [n / 10 for n in range(30)]
        assert all(a.arrival_s <= b.arrival_s for a, b in pairwise(chunks))
        await link.close()
        await link.close()
        await asyncio.sleep(0.1)
        assert not gauge.device.connections

    live(scenario)


@pytest.mark.parametrize(
    ("form", "radius", "data", "torque"),
    [
        (bytes([0x0E, 0xFE, 0x41, 0x27, 1, 0, 0]), None, struct.pack("<h", -1234), -12.34),
        (bytes([0x14, 0x00, 0x41, 0x27, 1, 0, 0]), None, struct.pack("<f", 27.5), 27.5),
        (bytes([0x16, 0x00, 0x41, 0x27, 1, 0, 0]), None, bytes.fromhex("6CF1"), 36.4),
        (bytes([0x10, 0xFF, 0x23, 0x27, 1, 0, 0]), 450.0, struct.pack("<i", 600), 27.0),
    ],
)
def test_a_presentation_format_explains_itself(live, form, radius, data, torque):
    async def scenario(w):
        gauge = format_gauge(w.air, ONE, form)
        await w.add(gauge)
        _, pick = await meet(ONE, radius_mm=radius, backends=w.backends)
        link = BleLink(ONE, BleSettings(characteristic=pick.uuid), backends=w.backends)
        await link.open()
        await gauge.notify(OWN_STREAM, data)
        decoder = NotificationDecoder(pick.packet)
        assert decoder.feed(*(c.data for c in await collect(link, 1))).columns["torque"].tolist() == [torque]
        assert decoder.columns[0].unit == "N·m"
        await link.close()

    live(scenario)


@pytest.mark.parametrize(
    ("form", "words"),
    [
        (bytes([0x10, 0xFF, 0x23, 0x27, 1, 0, 0]), "radius"),
        (bytes([0x19, 0x00, 0x41, 0x27, 1, 0, 0]), "let 'heldwheel-log learn"),
        (b"\x10\xff", "let 'heldwheel-log learn"),
        (b"", "let 'heldwheel-log learn"),
    ],
)
def test_a_device_that_does_not_say_or_lies_is_told(live, form, words):
    async def scenario(w):
        await w.add(format_gauge(w.air, ONE, form))
        with pytest.raises(InputError, match=words):
            await meet(ONE, backends=w.backends)

    live(scenario)


def test_two_torques_are_not_chosen_between(live):
    async def scenario(w):
        form = {0x2904: bytes([0x0E, 0xFE, 0x41, 0x27, 1, 0, 0])}
        other = OWN_STREAM.replace("7d1c0002", "7d1c0009")
        pair = [Characteristic(u, notify=True, descriptors=form) for u in (OWN_STREAM, other)]
        await w.add(Peripheral(w.air, "two", ONE, [Service(OWN_COMMAND, pair), *about()]))
        with pytest.raises(InputError, match="several torque values"):
            await meet(ONE, backends=w.backends)
        _, pick = await meet(ONE, BleSettings(characteristic=other.upper()), backends=w.backends)
        assert pick.uuid == other

    live(scenario)


def test_the_picked_identity_is_connected_not_its_namesake(live, monkeypatch):
    monkeypatch.setattr("logger.links.ble.SCAN_S", 0.5)

    async def scenario(w):
        wanted, namesake = (stream_gauge(w.air, address, name="gauge") for address in (ONE, TWO))
        await w.add(namesake, wanted)
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        await link.open()
        assert wanted.device.connections
        assert not namesake.device.connections
        await link.close()
        await wanted.advertise(on=False)
        with pytest.raises(LinkError, match="not heard"):
            await link.open()
        assert not namesake.device.connections

    live(scenario)


@pytest.mark.parametrize(("mtu", "carried"), [(23, 20), (100, 97), (247, 244)])
def test_packet_sizes(live, mtu, carried):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE, max_mtu=mtu)
        await w.add(gauge)
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        await link.open()
        assert link.facts.packet_bytes == carried
        await gauge.notify(OWN_STREAM, bytes(300))
        assert len((await collect(link, 1))[0].data) == carried
        await link.close()

    live(scenario)


def test_commands_are_written_where_the_description_says(live):
    async def scenario(w):
        received = []
        gauge = stream_gauge(w.air, ONE, on_command=received.append)
        await w.add(gauge)
        for response in (True, False):
            link = BleLink(ONE, BleSettings(command=OWN_COMMAND, command_with_response=response), backends=w.backends)
            await link.open()
            assert not received  # opening sends nothing
            await link.write(b"ZERO\r")
            await asyncio.sleep(0.05)
            assert received.pop() == b"ZERO\r"
            await link.close()
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        with pytest.raises(LinkLost, match="not connected"):
            await link.write(b"ZERO\r")
        await link.open()
        with pytest.raises(LinkError, match=r"names no ble\.command"):
            await link.write(b"ZERO\r")
        await link.close()

    live(scenario)


def test_a_device_that_wants_pairing_is_told_as_that(live):
    async def scenario(w):
        await w.add(stream_gauge(w.air, ONE, error=0x05))
        link = BleLink(ONE, BleSettings(command=OWN_COMMAND), backends=w.backends)
        await link.open()
        with pytest.raises(LinkError, match="refuses without pairing"):
            await link.write(b"ZERO\r")
        await link.close()

    live(scenario)


@pytest.mark.parametrize("how", ["peripheral", "range"])
def test_a_lost_connection_is_an_error_after_what_came_before(live, how):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        for _ in range(2):  # and it can be opened again
            await link.open()
            await gauge.notify(OWN_STREAM, b"last words")
            await asyncio.sleep(0.1)
            if how == "peripheral":
                await gauge.disconnect()
            else:
                w.air.out_of_range(ONE)
                w.air.time_out(ONE)
            await asyncio.sleep(0.1)
            assert (await link.read())[0].data == b"last words"
            with pytest.raises(LinkLost, match="connection ended"):
                await link.read()
            w.air.out_of_range(ONE, away=False)
        await link.close()

    live(scenario)


def test_adapter_off_while_streaming_and_before_opening(live):
    async def scenario(w):
        await w.add(stream_gauge(w.air, ONE))
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        await link.open()
        await w.adapter(on=False)
        async with asyncio.timeout(5):
            with pytest.raises(LinkLost):
                await link.read()
        await link.close()
        with pytest.raises(LinkError, match="switched off"):
            await link.open()
        with pytest.raises(LinkError, match="switched off"):
            await scan(0.1, w.backends)
        await w.adapter(on=True)
        await link.open()
        await link.close()

    live(scenario)


def test_a_radio_stack_that_dies_is_silent_and_can_still_be_closed(live):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        await link.open()
        w.strike_dumb()
        await gauge.notify(OWN_STREAM, b"unheard")
        with pytest.raises(TimeoutError):
            async with asyncio.timeout(0.5):
                await link.read()
        async with asyncio.timeout(10):
            await link.close()

    live(scenario)


def test_battery_low_is_told_at_opening_and_later(live):
    async def scenario(w):
        level = [80]
        gauge = stream_gauge(w.air, ONE, battery=lambda: level[0])
        await w.add(gauge)
        link = BleLink(ONE, BleSettings(), backends=w.backends)
        await link.open()
        assert not link.events()
        await gauge.notify("00002a19-0000-1000-8000-00805f9b34fb", bytes([12]))
        await gauge.notify("00002a19-0000-1000-8000-00805f9b34fb", bytes([255]))  # a lie: ignored
        await asyncio.sleep(0.1)
        assert [(e.kind, e.count) for e in link.events()] == [(EventKind.BATTERY, 12)]
        await link.close()
        level[0] = 9
        await link.open()
        assert [(e.kind, e.count) for e in link.events()] == [(EventKind.BATTERY, 9)]
        await link.close()

    live(scenario)


def test_a_described_characteristic_that_is_not_there(live):
    async def scenario(w):
        await w.add(stream_gauge(w.air, ONE))
        missing = "00000000-5a3e-4b7f-9c21-6f0e8a41c5d2"
        with pytest.raises(InputError, match="has no characteristic"):
            await BleLink(ONE, BleSettings(characteristic=missing), backends=w.backends).open()
        with pytest.raises(InputError, match="cannot notify"):
            await BleLink(ONE, BleSettings(characteristic=OWN_COMMAND), backends=w.backends).open()
        with pytest.raises(LinkError, match="to write commands to"):
            await BleLink(ONE, BleSettings(command=missing), backends=w.backends).open()

    live(scenario)


def test_a_question_that_is_never_answered_holds_nothing_up(live, monkeypatch):
    monkeypatch.setattr("logger.links.ble_device.ASK_S", 0.2)
    monkeypatch.setattr("logger.links.ble.LOOK_S", 1.5)

    async def scenario(w):
        async def never():
            await asyncio.sleep(3600)

        model = Characteristic("00002a24-0000-1000-8000-00805f9b34fb", value=never)
        mute = Service("0000180a-0000-1000-8000-00805f9b34fb", [model])
        await w.add(standard_gauge(w.air, ONE, extra=[mute]))
        link = BleLink(ONE, BleSettings(characteristic=TORQUE_UUID), backends=w.backends)
        async with asyncio.timeout(10):
            # a stack that lets later questions pass goes on without the answer; one that does not gives up
            if w.tier == "bluez":
                with pytest.raises(LinkError, match="no answer in time"):
                    await link.open()
            else:
                await link.open()
                assert not link.facts.texts
            await link.close()

    live(scenario)


def test_bluetooth_absent(monkeypatch):
    monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", "unix:path=/nonexistent/socket")
    with pytest.raises(LinkError, match="is it installed and running"):
        asyncio.run(scan(0.1))


@pytest.mark.parametrize("identity", ["bench transducer", "", "F0:00", "F0:00:00:00:00:01\n"])
def test_a_name_is_no_identity(identity):
    with pytest.raises(InputError, match="no Bluetooth identity"):
        BleLink(identity, BleSettings())


def test_texts_of_a_device_are_bounded():
    assert clean("a" * 1000) == "a" * 60
    assert clean("\x00\x1b[31mred\u202e") == "[31mred"
    assert clean(None) == ""


def test_layouts_that_need_no_description_are_sound():
    from logger.decoder.layouts import layout_faults
    from logger.links.ble_pick import Offer, pick_standard

    pick = pick_standard([Offer("s", TORQUE_UUID, 3, notifies=True)])
    assert isinstance(pick.packet, Packet)
    assert not layout_faults(pick.packet)


def test_a_connection_that_a_killed_program_left_is_taken_over(live):
    async def scenario(w):
        gauge = standard_gauge(w.air, ONE)
        await w.add(gauge)
        killed = BleLink(ONE, BleSettings(characteristic=TORQUE_UUID), backends=w.backends)
        await killed.open()
        left = killed._stack.pop_all()  # as a killed program: nobody disconnects
        await gauge.device.stop_advertising()  # one that is connected to is silent
        if w.tier == "bluez":
            w._bluez._objects[w._bluez._device_path(ONE)]["org.bluez.Device1"].pop("RSSI", None)
        found = {one.identity: one for one in await scan(0.5, w.backends)}
        assert found[ONE].connected, "it does not advertise, and is found all the same"
        link = BleLink(ONE, BleSettings(characteristic=TORQUE_UUID), backends=w.backends)
        await link.open()
        await play(gauge, TORQUE_UUID, [standard_torque(n / 10) for n in range(10)], 0.01)
        chunks = await collect(link, 10)
        assert [chunk.data for chunk in chunks][-1] == standard_torque(0.9)
        await link.close()
        assert left is not None, "kept until here: what is forgotten would be closed"

    live(scenario)


def test_a_device_that_never_answers_a_subscription_may_want_pairing(live, monkeypatch):
    async def scenario(w):
        await w.add(standard_gauge(w.air, ONE))

        async def silent(*_args):
            await asyncio.sleep(3600)

        monkeypatch.setattr(Peer, "subscribe", silent)
        monkeypatch.setattr("logger.links.ble.ASK_S", 0.5)
        link = BleLink(ONE, BleSettings(characteristic=TORQUE_UUID), backends=w.backends)
        with pytest.raises(LinkError, match=f"paired first.*pair {ONE}"):
            await link.open()

    live(scenario)
