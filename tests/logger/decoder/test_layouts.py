"""Layouts of packets and frames: what they have room for, and where what contradicts itself begins."""

from __future__ import annotations

import pytest

from logger.decoder.layouts import (
    CheckSum,
    CounterField,
    Frame,
    LengthField,
    Packet,
    PlacedNumber,
    StatusField,
    frame_faults,
    layout_faults,
)

TORQUE = PlacedNumber(name="torque", type="s16")


@pytest.mark.parametrize(
    ("packet", "told"),
    [
        # the number of samples is said before them
        ({"samples": 0, "samples_at": 1, "count_at": 0}, None),
        ({"samples": 0, "samples_at": 1, "count_at": 1}, "count_at: it must lie before the samples"),
        ({"samples": 0, "samples_at": 0, "count_at": 0}, "count_at: it must lie before the samples"),
        # two bytes of torque and one more are a sample
        ({"sample_bytes": 3, "status": StatusField(at=2, per="sample")}, None),
        ({"sample_bytes": 3, "status": StatusField(at=3, per="sample")}, "status: it ends outside a sample of 3 bytes"),
        ({"sample_bytes": 3, "status": StatusField(at=2, per="sample", type="u16")}, "status: it ends outside"),
        ({"samples_at": 2, "status": StatusField(at=1)}, None),
        ({"samples_at": 2, "status": StatusField(at=2)}, "status: it must lie before the samples"),
        ({"samples_at": 2, "counter": CounterField(at=0)}, None),
        ({"samples_at": 2, "counter": CounterField(at=1)}, "counter: it must lie before the samples"),
        ({"samples_at": 1, "tail_bytes": 1, "check": CheckSum(name="sum-8", covers_from=1)}, None),
        ({"samples_at": 1, "tail_bytes": 1, "check": CheckSum(name="sum-8", covers_from=2)}, "must cover the samples"),
        ({"samples_at": 1, "tail_bytes": 1, "check": CheckSum(name="sum-16")}, "sum-16 needs tail_bytes of at least 2"),
        ({"samples": 255, "samples_at": 2}, None),  # 512 bytes
        ({"samples": 255, "samples_at": 3}, "the packet has 513 bytes"),
    ],
)
def test_what_a_packet_has_room_for(packet, told):
    faults = layout_faults(Packet(fields=(TORQUE,), **packet))
    assert any(told in fault for fault in faults) if told else not faults


@pytest.mark.parametrize(("samples", "at", "fits"), [(1, 2, True), (1, 3, False), (0, 0, True), (0, 1, False)])
def test_a_number_of_the_packet_lies_in_what_every_packet_has(samples, at, fits):
    """Of a fixed length all of it, three bytes here; where that varies the byte before the samples."""
    lone = PlacedNumber(name="temperature", type="s8", at=at, per="packet")
    packet = Packet(fields=(TORQUE, lone), samples=samples, samples_at=1 - samples, tail_bytes=samples)
    assert packet.length == (3 if samples else None)
    assert any("temperature lies outside" in fault for fault in layout_faults(packet)) is not fits


def test_how_many_samples_a_length_holds():
    """Two bytes of head, three of each sample, one of tail."""
    packet = Packet(fields=(TORQUE,), samples=0, samples_at=2, sample_bytes=3, tail_bytes=1)
    assert [packet.samples_in(n) for n in range(11)] == [0, 0, 0, 0, 0, 0, 1, 0, 0, 2, 0]
    fixed = Packet(fields=(TORQUE,), samples=2, samples_at=2, sample_bytes=3, tail_bytes=1)
    assert [fixed.samples_in(n) for n in range(11)] == [0] * 9 + [2, 0]


@pytest.mark.parametrize(("count", "fits"), [(0, False), (1, True), (8, True), (9, False)])
def test_sync_bytes_are_one_to_eight(count, fits):
    frame = Frame(sync="7E" * count, packet=Packet(fields=(TORQUE,), samples=1, samples_at=count))
    assert any("sync" in fault for fault in frame_faults(frame)) is not fits


@pytest.mark.parametrize(("at", "kind", "fits"), [(1, "u8", False), (2, "u8", True), (4, "u8", True), (5, "u8", False),
                                                  (3, "u16", True), (4, "u16", False)])  # fmt: skip
def test_a_length_lies_between_the_sync_bytes_and_the_samples(at, kind, fits):
    packet = Packet(fields=(TORQUE,), samples=0, samples_at=5)
    faults = frame_faults(Frame(sync="AA 55", length=LengthField(at=at, type=kind), packet=packet))
    assert any("length" in fault for fault in faults) is not fits
