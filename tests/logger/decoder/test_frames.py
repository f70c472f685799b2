"""Frames in a stream: however it is cut, whatever lies between them."""

import struct

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.crc import check
from logger.decoder.frames import FrameDecoder
from logger.decoder.layouts import (
    MAX_PACKET,
    CheckSum,
    CounterField,
    Frame,
    LengthField,
    Packet,
    PlacedNumber,
    frame_faults,
)
from logger.samples import EventKind

TORQUE = PlacedNumber(name="torque", type="s24", unit="N·m", scale=0.001)
CHECKED = Frame(
    sync="AA 55",
    length=LengthField(at=2, adds=5),
    packet=Packet(
        fields=(TORQUE, PlacedNumber(name="angle", type="s16", at=3, unit="°", scale=0.1)),
        samples=0,
        samples_at=4,
        tail_bytes=2,
        counter=CounterField(at=3, type="u8"),
        check=CheckSum(name="crc-16/modbus", covers_from=2),
    ),
)
PLAIN = Frame(
    sync="7E",
    packet=Packet(fields=(PlacedNumber(name="torque", type="s16", unit="N·m"),), samples=1, samples_at=2,
                  counter=CounterField(at=1, type="u8")),
)  # fmt: skip


def checked(counter, torques, angles=None):
    angles = angles or [0] * len(torques)
    samples = b"".join(
        (t & 0xFFFFFF).to_bytes(3, "little") + struct.pack("<h", a) for t, a in zip(torques, angles, strict=True)
    )
    body = bytes([len(samples) + 1, counter % 256]) + samples
    return b"\xaa\x55" + body + struct.pack("<H", check(body, "crc-16/modbus"))


def plain(counter, torque):
    return struct.pack("<BBh", 0x7E, counter % 256, torque)


def decode(frame, data, cuts=()):
    decoder = FrameDecoder(frame)
    parts = [data[a:b] for a, b in zip([0, *cuts], [*cuts, len(data)], strict=True)]
    decoded = [decoder.feed(part) for part in parts]
    torque = np.concatenate([d.columns["torque"] for d in decoded])
    counter = np.concatenate([d.counter for d in decoded if d.counter is not None and len(d)] or [[]])
    events = [e for d in decoded for e in d.events]
    return torque, counter, events


def test_layouts_are_sound():
    assert not frame_faults(CHECKED)
    assert not frame_faults(PLAIN)
    assert len(frame_faults(Frame(sync="XY", packet=Packet(fields=())))) == 2
    assert "varies" in frame_faults(Frame(sync="AA", packet=Packet(fields=(TORQUE,), samples=0)))[0]


@pytest.mark.parametrize("every", [1, 2, 3, 7, 1000])
def test_whole_byte_by_byte_and_between(every):
    data = b"".join(checked(i, [1000 * i - 5000, 17], [i, -i]) for i in range(40))
    torque, counter, events = decode(CHECKED, data, range(every, len(data), every))
    assert np.allclose(torque[::2], np.arange(40) - 5.0)
    assert counter.tolist() == list(range(80))
    assert not events


def test_frames_of_different_lengths():
    data = checked(0, [1000]) + checked(1, [2000, 3000, 4000]) + checked(2, [5000]) + checked(3, [6000])
    torque, _, events = decode(CHECKED, data)
    assert torque.tolist() == [1, 2, 3, 4, 5, 6]
    assert not events


def test_garbage_between_and_a_broken_check_are_counted():
    bad = bytearray(checked(1, [9000]))
    bad[6] ^= 1
    data = b"\x00\xaa\x00" + checked(0, [1000]) + bytes(bad) + checked(2, [2000])
    torque, _, events = decode(CHECKED, data)
    assert torque.tolist() == [1, 2]
    assert [(e.kind, e.count) for e in events] == [
        (EventKind.GARBAGE, 3),
        (EventKind.GARBAGE, len(bad)),
        (EventKind.GAP, 1),
    ]


def test_a_stated_length_that_lies_is_contained():
    data = b"\xaa\x55\xff\x00" + checked(0, [1000]) + checked(1, [2000])
    torque, _, events = decode(CHECKED, data)
    assert torque.tolist() == [1, 2]
    assert sum(e.count for e in events if e.kind is EventKind.GARBAGE) == 4


def test_without_a_check_a_frame_needs_its_successor_after_garbage():
    # 0x7E inside garbage and inside a value
    data = b"\x7e\x00\x01" + b"".join(plain(i, 0x7E7E if i == 3 else i) for i in range(10))
    torque, counter, events = decode(PLAIN, data)
    assert torque.tolist()[:4] == [0, 1, 2, 0x7E7E]
    assert len(torque) == 10
    assert counter.tolist() == list(range(10))
    assert [(e.kind, e.count) for e in events] == [(EventKind.GARBAGE, 3)]


def test_endless_garbage_is_told_and_not_kept():
    decoder = FrameDecoder(CHECKED)
    events = [e for _ in range(50) for e in decoder.feed(b"\x13" * 200).events]
    assert all(e.kind is EventKind.GARBAGE for e in events)
    assert 9000 < sum(e.count for e in events) <= 10_000


def test_reset_forgets_half_a_frame():
    decoder = FrameDecoder(CHECKED)
    decoder.feed(checked(0, [1000])[:-1])
    assert decoder.reset().events[0].count == len(checked(0, [1000])) - 1
    assert decoder.feed(checked(1, [2000])).columns["torque"].tolist() == [2.0]


@given(st.lists(st.integers(-(1 << 23), (1 << 23) - 1), min_size=1, max_size=30), st.data())
def test_cut_anywhere(values, data):
    wire = b"".join(checked(i, [v]) for i, v in enumerate(values))
    cuts = sorted(data.draw(st.lists(st.integers(0, len(wire)), max_size=12)))
    torque, _, events = decode(CHECKED, wire, cuts)
    assert np.array_equal(torque, np.array(values) / 1000)
    assert not events


@given(st.binary(max_size=2000))
def test_any_bytes_are_survived(wire):
    for frame in (CHECKED, PLAIN):
        torque, counter, _ = decode(frame, wire)
        assert len(torque) == len(counter)


@pytest.mark.parametrize(("length", "fits"), [(MAX_PACKET, True), (MAX_PACKET + 1, False)])
def test_a_frame_is_as_long_as_a_packet_may_be(length, fits):
    frame = Frame(
        sync="7E",
        length=LengthField(at=1, type="u16", order="big"),
        packet=Packet(fields=(PlacedNumber(name="torque", type="u8"),), samples=0, samples_at=3),
    )
    data = b"\x7e" + length.to_bytes(2, "big") + b"\x05" * (length - 3)
    decoder = FrameDecoder(frame)
    decoded = decoder.feed(data + b"\x7e\x00\x04\x09\x7e\x00\x04\x08")
    assert decoded.columns["torque"].tolist() == [5.0] * (fits * (length - 3)) + [9.0, 8.0]
    assert [(e.kind, e.count) for e in decoded.events] == ([] if fits else [(EventKind.GARBAGE, length)])


def test_a_layout_that_tells_no_length_finds_no_frame():
    """Its faults say so; a decoder made of it in spite of that takes nothing for a frame."""
    frame = Frame(sync="7E", packet=Packet(fields=(PlacedNumber(name="torque", type="u8"),), samples=0, samples_at=1))
    assert frame_faults(frame)
    decoder = FrameDecoder(frame)
    decoded = decoder.feed(b"\x7e\x7e\x05\x7e\x06")
    assert len(decoded) == 0
    assert not decoded.events
    assert [(e.kind, e.count) for e in decoder.reset().events] == [(EventKind.GARBAGE, 5)]
