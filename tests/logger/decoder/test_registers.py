"""Register maps: planned requests, word orders, marks."""

import struct

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.layouts import Register, register_faults, words_of
from logger.decoder.registers import RegisterBlock, RegisterDecoder, plan
from logger.samples import EventKind


def test_neighbours_are_read_together_and_tables_apart():
    registers = (
        Register(name="torque", address=10, type="s32"),
        Register(name="temperature", address=14),
        Register(name="angle", address=200, type="float32"),
        Register(name="status", address=3, type="u16", table="input"),
    )
    assert plan(registers) == (
        RegisterBlock("holding", 10, 5),
        RegisterBlock("holding", 200, 2),
        RegisterBlock("input", 3, 1),
    )


def test_no_request_asks_for_more_than_the_protocol_gives():
    registers = [Register(name=f"r{i}", address=4 * i, type="s32") for i in range(100)]
    assert all(block.count <= 125 for block in plan(registers))
    covered = {(b.table, a) for b in plan(registers) for a in range(b.address, b.address + b.count)}
    assert all(("holding", r.address) in covered for r in registers)


@pytest.mark.parametrize("kind", ["s16", "u16", "s32", "u32", "float32", "float64"])
@pytest.mark.parametrize("word_order", ["big", "little"])
@pytest.mark.parametrize("byte_order", ["big", "little"])
def test_orders(kind, word_order, byte_order):
    code = {"s16": "h", "u16": "H", "s32": "i", "u32": "I", "float32": "f", "float64": "d"}[kind]
    value = {"u16": 40_000, "u32": 3_000_000_000, "float32": -27.5, "float64": -27.123456789}.get(kind, -1234)
    wire = struct.pack(">" + code, value)
    pairs = [wire[i : i + 2] for i in range(0, len(wire), 2)]
    if word_order == "little":
        pairs.reverse()
    if byte_order == "little":
        pairs = [pair[::-1] for pair in pairs]
    register = Register(name="torque", address=7, type=kind, word_order=word_order, byte_order=byte_order)
    decoded = RegisterDecoder([register], "N·m").feed(b"".join(pairs))
    assert decoded.columns["torque"].tolist() == [value]


def test_every_register_reads_what_stands_at_its_address():
    """Each word is its own address; blocks end at 125 registers, in the midst of two that overlap."""
    places = [
        *((8 * n, "u16") for n in range(16)),
        (123, "u32"),
        (124, "u32"),
        (125, "u16"),
        (126, "u32"),
        (900, "u16"),
    ]
    maps = [Register(name="torque" if not n else f"r{n}", address=a, type=t) for n, (a, t) in enumerate(places)]
    blocks = plan(maps)
    assert [(block.address, block.count) for block in blocks] == [(0, 125), (124, 4), (900, 1)]
    words = [address for block in blocks for address in range(block.address, block.address + block.count)]
    found = RegisterDecoder(maps, "N·m").feed(struct.pack(f">{len(words)}H", *words)).columns
    assert [found[one.name][0] for one in maps] == [a if t == "u16" else (a << 16) + a + 1 for a, t in places]


def test_scale_marks_and_wrong_lengths():
    registers = [
        Register(name="torque", address=0, type="s32", scale=0.01, missing=-2147483648, overload=1_000_000),
        Register(name="temperature", address=2, type="s16", scale=0.1, unit="°C"),
    ]
    decoder = RegisterDecoder(registers, "lbf·in")
    assert [(c.name, c.unit) for c in decoder.columns] == [("torque", "lbf·in"), ("temperature", "°C")]
    polls = [struct.pack(">ih", t, 215) for t in (2700, -2700, -2147483648, 1_000_000, 5)]
    decoded = decoder.feed(polls[0], b"short", *polls[1:])
    assert np.array_equal(decoded.columns["torque"], [27.0, -27.0, np.nan, np.nan, 0.05], equal_nan=True)
    assert decoded.columns["temperature"].tolist() == [21.5] * 5
    assert decoded.chunk_of.tolist() == [0, 2, 3, 4, 5]
    kinds = sorted((e.kind, e.index) for e in decoded.events)
    # the "not known" value lies beyond the overload code too; it is not known
    assert kinds == sorted([(EventKind.GARBAGE, 0), (EventKind.DEVICE_ERROR, 2), (EventKind.OVERLOAD, 3)])


def test_faults():
    assert register_faults([]) == ["the first register must be named torque"]
    torque = Register(name="torque", address=65535, type="s32", scale=0.0)
    assert len(register_faults([torque, torque])) == 5
    assert not register_faults([Register(name="torque", address=65534, type="s32")])


@given(st.lists(st.binary(max_size=12), max_size=10))
def test_any_bytes_are_survived(chunks):
    registers = [Register(name="torque", address=0, type="float32"), Register(name="x", address=5)]
    decoded = RegisterDecoder(registers).feed(*chunks)
    assert len(decoded) == sum(len(chunk) == 12 for chunk in chunks)
    assert words_of(registers[0]) == 2
