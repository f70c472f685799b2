"""Described binary notifications: layouts, marks, losses, lies."""

import struct

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.layouts import CheckSum, CounterField, Packet, PlacedNumber, StatusField, layout_faults
from logger.decoder.notifications import NotificationDecoder
from logger.decoder.standard import TORQUE_NOT_KNOWN, TORQUE_SCALE
from logger.samples import EventKind

TORQUE = PlacedNumber(name="torque", type="s16", unit="N·m", scale=0.01)
STREAM = Packet(
    fields=(TORQUE,),
    samples=0,
    samples_at=3,
    counter=CounterField(at=0, type="u16"),
    status=StatusField(at=2, overload=1, error=2, stale=4, battery_low=8, simulated=128),
)


def packet(counter, torques, status=0):
    return struct.pack(f"<HB{len(torques)}h", counter % 65536, status, *torques)


def kinds(decoded):
    return [(e.kind, e.index, e.count) for e in decoded.events]


@pytest.mark.published("Bluetooth characteristic 0x2C0B Torque", rows=("10.5",), status="READ-P")
def test_the_standard_torque_characteristic():
    torque = PlacedNumber(name="torque", type="s32", unit="N·m", scale=TORQUE_SCALE, missing=TORQUE_NOT_KNOWN)
    decoder = NotificationDecoder(Packet(fields=(torque,)))
    decoded = decoder.feed(bytes.fromhex("10270000"), bytes.fromhex("8C0A0000"), bytes.fromhex("FFFFFF7F"))
    assert decoded.columns["torque"][:2].tolist() == [100.0, 27.0]
    assert np.isnan(decoded.columns["torque"][2])
    assert kinds(decoded) == [(EventKind.DEVICE_ERROR, 2, 1)]
    assert decoder.columns[0].unit == "N·m"


# Bluetooth: default ATT_MTU 23, notification payload 20: not counted as a row, for any value would pass.
def test_a_packet_cut_to_the_default_size_is_rejected_and_its_samples_counted():
    decoder = NotificationDecoder(Packet(fields=(TORQUE,), samples=20, samples_at=2, counter=CounterField(at=0)))
    whole = [struct.pack("<H20h", i, *range(20)) for i in range(3)]
    decoded = decoder.feed(whole[0], whole[1][: 23 - 3], whole[2])
    assert kinds(decoded) == [(EventKind.GARBAGE, 20, 1), (EventKind.GAP, 20, 20)]
    assert len(decoded) == 40


def test_any_number_of_samples():
    decoded = NotificationDecoder(STREAM).feed(packet(0, [100]), packet(1, [200, 300]), packet(2, []), packet(3, [1]))
    assert decoded.columns["torque"].tolist() == [1.0, 2.0, 3.0, 0.01]
    assert kinds(decoded) == [(EventKind.GARBAGE, 3, 1), (EventKind.GAP, 3, 1)]


def test_marks_void_and_stand_where_they_begin():
    decoder = NotificationDecoder(STREAM)
    decoded = decoder.feed(packet(0, [1, 2]), packet(1, [3, 4], 1), packet(2, [5, 6], 1), packet(3, [7, 8], 2 | 8))
    assert kinds(decoded) == [(EventKind.OVERLOAD, 2, 4), (EventKind.DEVICE_ERROR, 6, 2), (EventKind.BATTERY, 6, 2)]
    assert np.isnan(decoded.columns["torque"]).tolist() == [False] * 2 + [True] * 6
    assert not decoder.feed(packet(4, [9, 9], 2 | 8)).events  # they still stand
    assert not decoder.simulated
    decoder.feed(packet(5, [1], 128))
    assert decoder.simulated


@pytest.mark.parametrize(
    ("field", "codes"),
    [
        (PlacedNumber(name="torque", type="float32"), (struct.pack("<f", 1.0), struct.pack("<f", np.nan))),
        (PlacedNumber(name="torque", type="s16", missing=-1), (struct.pack("<h", 1), struct.pack("<h", -1))),
        (PlacedNumber(name="torque", type="sfloat"), (struct.pack("<H", 1), struct.pack("<H", 0x07FF))),
        (PlacedNumber(name="torque", type="s16", overload=99), (struct.pack("<h", 98), struct.pack("<h", -99))),
    ],
)
def test_what_is_no_value_is_told_each_time_it_begins(field, codes):
    decoder = NotificationDecoder(Packet(fields=(field,)))
    sent = (1, 1, 0, 1, 0, 0, 1)
    told = [kinds(decoder.feed(codes[n])) for n in sent]
    kind = EventKind.OVERLOAD if field.overload else EventKind.DEVICE_ERROR
    assert told == [[(kind, 0, 1)], [], [], [(kind, 0, 1)], [], [], [(kind, 0, 1)]]
    together = NotificationDecoder(Packet(fields=(field,))).feed(*[codes[n] for n in sent])
    assert kinds(together) == [(kind, 0, 2), (kind, 3, 1), (kind, 6, 1)]
    assert np.isnan(together.columns["torque"]).tolist() == [bool(n) for n in sent]


def test_saturated_codes_are_overload():
    field = PlacedNumber(name="torque", type="s24", unit="N·m", overload=8_388_607)
    decoded = NotificationDecoder(Packet(fields=(field,))).feed(
        (8_388_606).to_bytes(3, "little"), (8_388_607).to_bytes(3, "little"), (0x800000).to_bytes(3, "little")
    )
    assert kinds(decoded) == [(EventKind.OVERLOAD, 1, 2)]


def test_force_at_a_radius_is_torque():
    force = PlacedNumber(name="torque", type="s16", unit="N", scale=0.1, radius_mm=450.0)
    decoder = NotificationDecoder(Packet(fields=(force,)))
    assert decoder.feed(struct.pack("<h", 600)).columns["torque"].tolist() == [27.0]
    assert decoder.columns[0].unit == "N·m"


def test_several_columns_and_a_status_per_sample():
    layout = Packet(
        fields=(
            PlacedNumber(name="torque", type="float32", order="big", unit="lbf·ft"),
            PlacedNumber(name="angle", type="u16", at=4, unit="°", scale=0.1, missing=0xFFFF),
            PlacedNumber(name="temperature", type="sfloat", at=2, per="packet", unit="°C"),
        ),
        samples=2,
        samples_at=4,
        count_at=0,
        status=StatusField(at=6, per="sample", overload=1),
        tail_bytes=4,
        check=CheckSum(name="crc-32", covers_from=0),
    )
    assert not layout_faults(layout)
    import zlib

    head = struct.pack("<BBH", 2, 0, 0xF0E7)
    body = head + struct.pack(">f", 20.5) + struct.pack("<HB", 450, 0) + struct.pack(">f", 1e9) + b"\xff\xff\x01"
    good = body + struct.pack("<I", zlib.crc32(body))
    wrong_count = b"\x03" + body[1:]
    decoded = NotificationDecoder(layout).feed(
        good, body + b"\0\0\0\0", wrong_count + struct.pack("<I", zlib.crc32(wrong_count))
    )
    assert decoded.columns["torque"][0] == 20.5
    assert np.isnan(decoded.columns["torque"][1])
    assert decoded.columns["angle"][0] == 45.0
    assert np.isnan(decoded.columns["angle"][1])
    assert decoded.columns["temperature"].tolist() == [23.1, 23.1]
    assert kinds(decoded) == [(EventKind.GARBAGE, 0, 2), (EventKind.OVERLOAD, 1, 1)]


def test_lost_duplicated_reordered_and_wrapped():
    decoder = NotificationDecoder(STREAM)
    decoded = decoder.feed(*[packet(65534 + i, [i]) for i in (0, 1, 1, 3, 2, 6)])
    assert (decoded.columns["torque"] * 100).round().tolist() == [0, 1, 2, 3, 6]
    assert (decoded.counter - 65534).tolist() == [0, 1, 2, 3, 6]
    assert np.all(np.diff(decoded.chunk_of) >= 0)
    assert sorted(kinds(decoded)) == sorted(
        [(EventKind.GAP, 4, 2), (EventKind.DUPLICATE, 0, 1), (EventKind.REORDERED, 0, 1)]
    )


def test_expect_settles_whole_wraps():
    decoder = NotificationDecoder(Packet(fields=(TORQUE,), samples_at=1, counter=CounterField(at=0, type="u8")))
    decoder.feed(struct.pack("<Bh", 0, 5))
    decoder.reset()
    decoder.expect(1004)
    assert kinds(decoder.feed(struct.pack("<Bh", 1001 % 256, 5))) == [(EventKind.GAP, 0, 1000)]


@pytest.mark.parametrize(
    ("layout", "words"),
    [
        (Packet(fields=()), "must be named torque"),
        (Packet(fields=(TORQUE, TORQUE)), "twice"),
        (Packet(fields=(TORQUE,), sample_bytes=1), "ends at byte 2"),
        (Packet(fields=(TORQUE,), counter=CounterField(at=0)), "before the samples"),
        (Packet(fields=(PlacedNumber(name="torque", type="u8", scale=0.0),)), "scale 0"),
        (Packet(fields=(PlacedNumber(name="torque", type="float64"),), samples=100), "800 bytes"),
    ],
)
def test_contradictions_are_named(layout, words):
    assert any(words in fault for fault in layout_faults(layout))


@given(st.lists(st.binary(max_size=40), max_size=30))
def test_any_bytes_are_survived(chunks):
    decoded = NotificationDecoder(STREAM).feed(*chunks)
    assert len(decoded.columns["torque"]) == len(decoded.counter) if decoded.counter is not None else True
    assert all(0 <= e.index <= len(decoded) for e in decoded.events)


@given(st.lists(st.lists(st.integers(-32768, 32767), min_size=1, max_size=8), min_size=1, max_size=30), st.data())
def test_drains_do_not_matter(values, data):
    wire = [packet(i, v) for i, v in enumerate(values)]
    cut = data.draw(st.integers(0, len(wire)))
    decoder = NotificationDecoder(STREAM)
    both = [decoder.feed(*wire[:cut]), decoder.feed(*wire[cut:])]
    torque = np.concatenate([d.columns["torque"] for d in both])
    assert np.array_equal(torque, np.array([x for v in values for x in v]) / 100)
