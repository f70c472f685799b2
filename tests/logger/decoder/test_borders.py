"""Where a rule of a decoder begins and ends, to the byte: from standards, and from what each rule says of itself."""

from __future__ import annotations

import struct

import numpy as np
import pytest

from logger.decoder import bulk
from logger.decoder.autozero import AutoZeroWatch
from logger.decoder.bulk import learn
from logger.decoder.column_faults import scale_faults
from logger.decoder.counter import Unwrapper
from logger.decoder.crc import check
from logger.decoder.description_keys import tables
from logger.decoder.floats import WIDTH
from logger.decoder.framed_text import FramedTextDecoder
from logger.decoder.frames import FrameDecoder
from logger.decoder.layouts import (
    CounterField,
    Frame,
    LengthField,
    Packet,
    PlacedNumber,
    Register,
    layout_faults,
)
from logger.decoder.lines import LineDecoder
from logger.decoder.match import LineMatcher, _longest_first, scan_number
from logger.decoder.notifications import NotificationDecoder
from logger.decoder.packets import PacketDecoder, check_holds
from logger.decoder.registers import RegisterBlock, RegisterDecoder, plan
from logger.decoder.rows import RowDecoder, event_line
from logger.decoder.template import LineCheck, LineFormat, NumberField, StatusWords
from logger.errors import DeviceError
from logger.samples import Column, Event, EventKind

STX, ETX = b"\x02", b"\x03"


def registers(*places: tuple[int, str], table: str = "holding") -> list[Register]:
    names = ["torque", *(f"r{n}" for n in range(1, len(places)))]
    return [Register(name=n, address=a, type=t, table=table) for n, (a, t) in zip(names, places, strict=True)]


def test_a_gap_is_read_along_up_to_eight_registers():
    """A request and its answer cost 8 + 5 bytes and two pauses (Modbus over serial line 1.02, 2.5.1.1)."""
    assert plan(registers((0, "u16"), (9, "u16"))) == (RegisterBlock("holding", 0, 10),)
    assert plan(registers((0, "u16"), (10, "u16"))) == (RegisterBlock("holding", 0, 1), RegisterBlock("holding", 10, 1))
    assert plan(registers((0, "s32"), (10, "u16"))) == (RegisterBlock("holding", 0, 11),)


def test_a_request_reaches_125_registers_and_no_further():
    """Modbus application protocol 1.1b3, 6.3: quantity 1 to 125 (0x7D)."""
    near = [(8 * n, "u16") for n in range(16)]  # the last at 120
    assert plan(registers(*near, (123, "s32"))) == (RegisterBlock("holding", 0, 125),)
    assert plan(registers(*near, (124, "s32"))) == (RegisterBlock("holding", 0, 121), RegisterBlock("holding", 124, 2))
    shifted = [(address + 50, kind) for address, kind in (*near, (123, "s32"))]
    assert plan(registers(*shifted)) == (RegisterBlock("holding", 50, 125),)


def test_registers_of_both_tables_at_one_address_are_not_mixed_up():
    maps = [Register(name="torque", address=3, table="input"), Register(name="angle", address=3, table="holding")]
    found = RegisterDecoder(maps, "N·m").feed(struct.pack(">hh", 11, 22))  # blocks by table: holding, then input
    assert found.columns["torque"].tolist() == [22]
    assert found.columns["angle"].tolist() == [11]


def test_answers_that_are_none_are_counted():
    decoder = RegisterDecoder(registers((0, "s16")), "N·m")
    assert not decoder.simulated
    (event,) = decoder.feed(b"\x00\x01", b"\x00", b"\x00\x02", b"\x00\x02\x03").events
    assert (event.kind, event.count) == (EventKind.GARBAGE, 2)
    assert event.text.startswith("2 answers")


def test_a_second_register_has_its_own_unit_or_none():
    maps = [Register(name="torque", address=0), Register(name="x", address=1), Register(name="y", address=2, unit="°C")]
    assert [c.unit for c in RegisterDecoder(maps, "lbf·ft").columns] == ["lbf·ft", "", "°C"]


@pytest.mark.parametrize(("covers_mark", "check_byte"), [(True, 0x31 ^ 0x03), (False, 0x31)])
def test_block_check_with_and_without_its_mark(covers_mark, check_byte):
    """ISO 1155: exclusive or of all characters behind STX, the closing mark included; some devices leave it out."""
    form = LineCheck(name="xor-8", form="bytes", mark="\x03", covers_from=1, covers_mark=covers_mark)
    decoder = FramedTextDecoder(LineFormat(template="{torque}", terminator="ETX", check=form), "N·m")
    good = STX + b"1" + ETX + bytes([check_byte])
    bad = STX + b"1" + ETX + bytes([check_byte ^ 0x03])
    assert decoder.feed(good).columns["torque"].tolist() == [1.0]
    assert not len(decoder.feed(bad))


def test_widths_are_those_of_the_types():
    """IEEE 754 and IEEE 11073-20601 (SFLOAT 16 bits, FLOAT 32 bits)."""
    codes = {"u8": "B", "s8": "b", "u16": "H", "s16": "h", "u32": "I", "s32": "i", "float32": "f", "float64": "d"}
    assert {name: WIDTH[name] for name in codes} == {name: struct.calcsize("<" + code) for name, code in codes.items()}
    assert (WIDTH["u24"], WIDTH["s24"], WIDTH["sfloat"], WIDTH["float"]) == (3, 3, 2, 4)


@pytest.mark.parametrize(("kind", "most"), [("u8", 256), ("u16", 65_536)])
def test_a_counter_wraps_within_its_width(kind, most):
    def faults(wraps_at: int, step: int = 1) -> list[str]:
        counter = CounterField(at=0, type=kind, step=step, modulus=wraps_at)
        torque = PlacedNumber(name="torque", type="s16")
        return layout_faults(Packet(fields=(torque,), samples=1, samples_at=WIDTH[kind], counter=counter))

    assert not faults(most)
    assert "cannot advance" in faults(most + 1)[0]
    assert not faults(2)
    assert "cannot advance" in faults(2, step=2)[0]


@pytest.mark.parametrize("value", [1e12, 1e-12, -1e12])
def test_scales_up_to_the_border_are_taken(value):
    assert not scale_faults("torque", value, 0.0)
    assert not scale_faults("torque", 1.0, 1e12)
    assert scale_faults("torque", value * (2 if abs(value) > 1 else 0.5), 0.0)
    assert scale_faults("torque", 1.0, 2e12)


def test_a_check_alone_covers_nothing_and_less_is_an_error():
    nothing = check(b"", "crc-16/modbus").to_bytes(2, "little")
    assert nothing == b"\xff\xff"  # its initial value (Modbus over serial line 1.02, 6.2.2)
    assert check_holds(np.frombuffer(b"\x01" + nothing, np.uint8)[None], "crc-16/modbus", big=False, covers_from=1)[0]
    with pytest.raises(DeviceError, match="no room"):
        check_holds(np.frombuffer(nothing, np.uint8)[None], "crc-16/modbus", big=False, covers_from=1)


def test_texts_about_tables_are_one_line():
    for table in tables():
        assert table.about
        assert "\n" not in table.about
        assert "----" not in table.about


@pytest.mark.parametrize(
    ("line", "ends"),
    [
        (b"1,234,567.5", 11),
        (b"12,345", 6),
        (b"123,456", 7),
        (b"1,2345x", 1),
        (b"123,45", 3),  # no group of three: a decimal comma, or the next column
        (b"123,4567", 3),
        (b"1234,567", 4),  # four digits before the first group
        (b"-1,234", 6),
        (b"1.5e", 3),
        (b"1.5e-3x", 6),
        (b".5", 2),
        (b"-", 0),
    ],
)
def test_where_a_number_ends(line, ends):
    """NR1 to NR3 of IEEE 488.2, 8.7.2 to 8.7.4; groups of three as ISO 80000-1, 7.3.1 describes them."""
    assert scan_number(line, 0, b".", b",") == ends


def test_a_frame_that_was_half_received_is_counted_and_forgotten():
    """Without a check sum the first frame after a break waits for the next one's sync bytes again."""
    frame = Frame(sync="7E", packet=Packet(fields=(PlacedNumber(name="torque", type="s16"),), samples=1, samples_at=1))
    decoder = FrameDecoder(frame, "N·m")
    sent = [struct.pack("<Bh", 0x7E, n) for n in range(4)]
    assert decoder.feed(*sent).columns["torque"].tolist() == [0.0, 1.0, 2.0, 3.0]
    decoder.feed(sent[0][:2])
    (event,) = decoder.reset().events
    assert (event.kind, event.count) == (EventKind.GARBAGE, 2)
    assert not decoder.reset().events
    assert not len(decoder.feed(b"\x7e\x01\x02"))  # may stand in the midst of a frame
    assert decoder.feed(b"\x7e\x05\x00\x7e").columns["torque"].tolist() == [513.0, 5.0]


def watch(capacity: float | None) -> AutoZeroWatch:
    layout = Packet(fields=(PlacedNumber(name="torque", type="float64", unit="N·m"),), samples=0)
    return AutoZeroWatch(NotificationDecoder(layout), capacity, 1000.0)


def vanished(decoder: AutoZeroWatch, *levels: float) -> bool:
    values = np.repeat(levels, 50).astype(float)
    return any(event.kind is EventKind.AUTO_ZERO for event in decoder.feed(values.tobytes()).events)


@pytest.mark.parametrize(
    ("capacity", "levels", "told"),
    [
        (100.0, (5.2, 0.0), True),  # a twentieth of the capacity is a load
        (100.0, (4.8, 0.0), False),
        (100.0, (50.0, 0.9), True),  # nothing: under a fiftieth of the load before
        (100.0, (50.0, 1.1), False),
        (None, (1.05, 0.0), True),  # before any load was seen: one newton metre
        (None, (0.95, 0.0), False),
    ],
)
def test_what_is_a_load_and_what_is_nothing(capacity, levels, told):
    assert vanished(watch(capacity), *levels) is told


@pytest.mark.parametrize(("load", "told"), [(20.5, True), (19.5, False)])
def test_without_a_capacity_a_load_is_a_fifth_of_the_highest(load, told):
    decoder = watch(None)
    slow = np.concatenate((np.linspace(0, 100, 200), np.linspace(100, load, 200)))
    assert not decoder.feed(slow.tobytes()).events
    assert vanished(decoder, load, 0.0) is told


@pytest.mark.parametrize(("swing", "told"), [(0.09, True), (0.11, False)])
def test_a_load_is_steady_within_a_tenth(swing, told):
    load = 50.0 + 50.0 * swing / 2 * np.where(np.arange(60) % 2, 1, -1)
    found = watch(100.0).feed(np.concatenate((load, np.zeros(50))).tobytes())
    assert bool(found.events) is told


@pytest.mark.parametrize("before", [4, 5])
def test_five_samples_make_a_level(before):
    values = np.concatenate((np.full(before, 50.0), np.zeros(50)))
    assert bool(watch(100.0).feed(values.tobytes()).events) is (before == 5)


# ---------------------------------------------------------------------- text lines
@pytest.mark.parametrize(
    ("template", "more", "lines", "values"),
    [
        ("{torque}", {}, (b"12.5", b"-3.25", b"1e2"), [[12.5], [-3.25], [100.0]]),
        ("{torque}", {}, (b"+1.5", b"007.5", b".5"), [[1.5], [7.5], [0.5]]),
        ("{torque};{angle}", {}, (b"1.5;30", b"-2;0.25"), [[1.5, 30], [-2, 0.25]]),
        ("{torque};{angle}", {}, (b"1.5e1;30", b"-2;2.5E-1"), [[15, 30], [-2, 0.25]]),
        ("{torque} {angle}", {}, (b"1.5 30", b"-2 0.25"), [[1.5, 30], [-2, 0.25]]),
        ("{torque}; {angle}", {}, (b"1.5; 30", b"-2;0.25"), [[1.5, 30], [-2, 0.25]]),
        ("{counter},{torque}", {}, (b"7,1.5", b"999999999999999,+2"), [[7, 1.5], [999999999999999, 2]]),
        ("{torque},{angle}", {}, (b"+1.5,30", b"-2,0.25"), [[1.5, 30], [-2, 0.25]]),
        ("{counter},{torque}", {}, (b"7,1.5", b"8,+2"), [[7, 1.5], [8, 2]]),
        ("ST {torque} Nm", {}, (b"ST 1.5 Nm", b"ST -2.5 Nm"), [[1.5], [-2.5]]),
        ("{torque};{angle}", {"decimal": ","}, (b"1,5;30", b"-2,25;4"), [[1.5, 30], [-2.25, 4]]),
        ("{torque}", {"decimal": ","}, (b"1,5", b"-2,25"), [[1.5], [-2.25]]),
    ],
)
@pytest.mark.parametrize("end", [b"\n", b"\r\n"])
def test_usual_lines_are_read_all_at_once(monkeypatch, template, more, lines, values, end):
    """The fast path itself: that it gives up is no fault, but ten times as slow."""
    monkeypatch.setattr(bulk, "_READERS", {})
    form = LineFormat(template=template, **more)
    found = LineMatcher(form, "N·m").match(lines[0])
    look = learn(
        lines[0], found.spans, ["counter" in template and i == 0 for i in range(len(found.spans))], "decimal" in more
    )
    assert look is not None
    text = end.join(lines) + end
    assert look.read(text, end, len(lines), max(map(len, lines))).tolist() == values
    assert look.read(text, end, len(lines) + 1, 20) is None
    assert look.read(text[:-1] + b"x", end, len(lines), 20) is None


@pytest.mark.parametrize(("digits", "fits"), [(15, True), (16, False)])
def test_a_counter_has_up_to_fifteen_digits(digits, fits):
    """Exact as a float, 2^53 being of sixteen."""
    word = b"9" * digits
    for first in (b"1,2.5\n", b""):
        decoder = LineDecoder(LineFormat(template="{counter},{torque}"), "N·m")
        found = decoder.feed(first + word + b",1.5\n")
        assert (found.columns["torque"].tolist()[-1:] == [1.5]) is fits
        assert not fits or found.counter.tolist()[-1] == int(word)


def test_a_counter_of_a_width_fills_it():
    decoder = LineDecoder(LineFormat(template="{counter:3}{torque}"), "N·m")
    found = decoder.feed(b"007 1.5\n08 2.5\n009-3\n")
    assert found.columns["torque"].tolist() == [1.5, -3.0]
    assert found.counter.tolist()[0] == 7


@pytest.mark.parametrize(
    ("terminator", "data", "values"),
    [
        ("CR", b"1\r2\n\r3\r", [1.0, 2.0, 3.0]),
        ("LF", b"1\n \r\n2\n", [1.0, 2.0]),
        ("any", b"1\r2\n3\r\n\r\n4\r", [1.0, 2.0, 3.0, 4.0]),
    ],
)
def test_lines_end_where_they_are_said_to(terminator, data, values):
    decoder = LineDecoder(LineFormat(template="{torque}", terminator=terminator, error=("E1",)), "N·m")
    found = decoder.feed(data)
    assert found.columns["torque"].tolist() == values
    assert not [event for event in found.events if event.kind is EventKind.GARBAGE]


@pytest.mark.parametrize(("mark", "kind"), [(b"--", EventKind.DEVICE_ERROR), (b"OL", EventKind.OVERLOAD)])
def test_a_mark_in_a_numbers_place(mark, kind):
    decoder = LineDecoder(LineFormat(template="{torque}"), "N·m")
    found = decoder.feed(b"1\n" + mark + b"\n2\n-\n3\n")
    torque = found.columns["torque"]
    assert np.isnan(torque[1])
    assert torque[[0, 2, 3]].tolist() == [1.0, 2.0, 3.0]
    assert [event.kind for event in found.events] == [kind, EventKind.GARBAGE]  # one dash is no mark
    assert [event.index for event in found.events] == [1, 3]


@pytest.mark.parametrize(
    ("text", "value"),
    [(b"9.91e37", None), (b"9.9e37", None), (b"-9.9e37", None), (b"9.8e37", 9.8e37), (b"-9.8e37", -9.8e37)],
)
def test_numbers_that_stand_for_none(text, value):
    """SCPI 1999.0, 7.2.1.4 and 7.2.1.5: not a number is 9.91E37, infinity 9.9E37 (from memory)."""
    for first in (b"", b"1\n"):
        found = LineDecoder(LineFormat(template="{torque}"), "N·m").feed(first + text + b"\n").columns["torque"][-1]
        assert np.isnan(found) if value is None else found == value


@pytest.mark.parametrize(
    ("form", "text", "value"),
    [("hex", b"00FF", 255.0), ("signed hex", b"00FF", 255.0), ("signed hex", b"8000", -32768.0),
     ("signed hex", b"FF", -1.0), ("signed hex", b"7F", 127.0), ("hex", b"ffffffffffff", 2.0**48 - 1)],
)  # fmt: skip
def test_numbers_in_hexadecimal(form, text, value):
    fields = {"torque": NumberField(form=form)}
    found = LineDecoder(LineFormat(template="{torque}", fields=fields), "N·m").feed(text + b"\n")
    assert found.columns["torque"].tolist() == [value]


def test_rows_of_a_replay():
    decoder = RowDecoder([Column("torque", "N·m"), Column("angle", "°")])
    told = Event(EventKind.GAP, 0, 3, "3 samples lost")
    found = decoder.feed(b"0.1,1.5,", b"2\n0.2,,3\n" + event_line(told) + b"0.3,4", b",5\n")
    assert {name: values.tolist()[::2] for name, values in found.columns.items()} == {
        "time": [0.1, 0.3], "torque": [1.5, 4.0], "angle": [2.0, 5.0],
    }  # fmt: skip
    assert np.isnan(found.columns["torque"][1])
    assert found.chunk_of.tolist() == [1, 1, 2]
    assert [(e.kind, e.index, e.count, e.text) for e in found.events] == [(EventKind.GAP, 2, 3, "3 samples lost")]
    with pytest.raises(DeviceError, match="a row of 2 values where 3"):
        decoder.feed(b"1,2\n")
    decoder.feed(b"9,9")
    decoder.reset()
    assert decoder.feed(b"1,2,3\n").columns["torque"].tolist() == [2.0]


def test_a_row_came_with_the_chunk_that_ended_it():
    decoder = RowDecoder([Column("torque", "N·m")])
    assert decoder.feed(b"0.1,1.5\n0.2,2", b".5").chunk_of.tolist() == [0]
    assert decoder.feed(b"", b"\n", b"0.3,3.5\n0.4,4", b".5\n0.5").chunk_of.tolist() == [1, 2, 3]
    found = decoder.feed(b",5.5\n")
    assert (found.chunk_of.tolist(), found.columns["time"].tolist()) == ([0], [0.5])
    assert len(decoder.feed()) == 0


# ---------------------------------------------------------------------- counters
@pytest.mark.parametrize(
    ("counters", "kept", "gaps"),
    [
        ([5, 6, 7], [5, 6, 7], []),
        ([254, 255, 0, 1], [254, 255, 256, 257], []),
        ([5, 6, 9], [5, 6, 9], [2]),
        ([5, 6, 6, 7], [5, 6, 7], []),
        ([5, 7, 6, 8], [5, 6, 7, 8], []),
        ([100, 85, 101], [100, 101], []),  # sixteen behind what is due: late
        ([100, 84, 101], [100, 340, 357], [239, 16]),  # seventeen behind: ahead by a wrap
        ([200, 201, 10], [200, 201, 266], [64]),
    ],
)
def test_a_counter_of_eight_bits(counters, kept, gaps):
    placed = Unwrapper(256, counts_samples=True).feed(np.array(counters), np.ones(len(counters), np.int64))
    assert placed.first.tolist() == kept
    assert ([] if placed.lost is None else [n for n in placed.lost.tolist() if n]) == gaps


def test_packets_that_count_themselves_hold_their_samples():
    """Packets of four samples: packet 3 begins with sample 12; a lost one costs four."""
    placed = Unwrapper(256).feed(np.array([3, 4, 6]), np.full(3, 4))
    assert placed.first.tolist() == [12, 16, 24]
    assert placed.lost.tolist() == [0, 0, 4]
    by_samples = Unwrapper(65536, counts_samples=True, step=2).feed(np.array([24, 32, 48]), np.full(3, 4))
    assert by_samples.first.tolist() == [12, 16, 24]
    assert by_samples.lost.tolist() == [0, 0, 4]


@pytest.mark.parametrize(
    ("silent", "value", "first", "anew"),
    [
        (0, 10, 10, None),
        (256, 11, 267, None),  # one whole wrap
        (512, 12, 524, None),
        (250, 4, 260, None),
        (20, 30, 30, None),
    ],
)
def test_what_a_silence_cost_is_told_by_the_clock(silent, value, first, anew):
    unwrapper = Unwrapper(256, counts_samples=True)
    unwrapper.feed(np.array([8, 9]), np.ones(2, np.int64))
    unwrapper.expect(silent)
    placed = unwrapper.feed(np.array([value]), np.ones(1, np.int64))
    assert placed.first.tolist() == [first]
    assert placed.anew_at == anew


def test_single_samples_run_on_in_one_step():
    unwrapper = Unwrapper(1000, counts_samples=True, step=2)
    unwrapper.feed(np.array([10, 12]), np.ones(2, np.int64))
    assert unwrapper.run_on(np.array([14, 16, 18])).tolist() == [7, 8, 9]
    assert unwrapper.run_on(np.array([22, 24])) is None
    assert unwrapper.run_on(np.array([20, 22, 26])) is None
    assert unwrapper.run_on(np.array([20, 24, 24])) is None
    assert unwrapper.run_on(np.array([20])).tolist() == [10]
    unwrapper.expect(5)
    assert unwrapper.run_on(np.array([22])) is None


def counted(counts, **keys):
    packet = Packet(
        fields=(PlacedNumber(name="torque", type="s16", at=0),), samples=2, samples_at=1,
        counter=CounterField(at=0, type="u8", counts=counts, **keys),
    )  # fmt: skip
    return PacketDecoder(packet, "N·m")


@pytest.mark.parametrize(
    ("counts", "sent", "counter"),
    [("packets", (3, 4, 6), [6, 7, 8, 9, 12, 13]), ("samples", (6, 8, 12), [6, 7, 8, 9, 12, 13])],
)
def test_a_packet_counter_dates_every_sample(counts, sent, counter):
    packets = [struct.pack("<Bhh", n, 10 * n, 10 * n + 1) for n in sent]
    found = counted(counts).decode(packets, np.arange(3))
    assert found.counter.tolist() == counter
    assert found.columns["torque"].tolist() == [v for n in sent for v in (10 * n, 10 * n + 1)]
    assert found.chunk_of.tolist() == [0, 0, 1, 1, 2, 2]
    (gap,) = found.events
    assert (gap.kind, gap.index, gap.count) == (EventKind.GAP, 4, 2)
    whole = counted(counts).decode(packets[:2], np.arange(2))
    assert whole.counter.tolist() == counter[:4]


@pytest.mark.parametrize(("radius", "fault"), [(0.0, True), (-1.0, True), (0.1, False), (1e5, False), (1.01e5, True)])
def test_the_radius_of_a_force(radius, fault):
    packet = Packet(fields=(PlacedNumber(name="torque", type="s16", radius_mm=radius),), samples=1, samples_at=0)
    assert any("radius" in text for text in layout_faults(packet)) is fault


@pytest.mark.parametrize("order", ["little", "big"])
def test_a_stated_length_of_two_bytes(order):
    """300 bytes are 0x012C; a frame whose length says something else is none."""
    frame = Frame(
        sync="7E",
        length=LengthField(at=1, type="u16", order=order, adds=3),
        packet=Packet(fields=(PlacedNumber(name="torque", type="u8"),), samples=0, samples_at=3),
    )
    body = bytes(range(150)) * 2
    good = b"\x7e" + len(body).to_bytes(2, order) + body
    found = FrameDecoder(frame, "N·m").feed(good, good)
    assert found.columns["torque"].tolist() == [float(v) for v in body * 2]
    assert not found.events


@pytest.mark.parametrize(
    ("modulus", "behind", "late"), [(64, 16, True), (64, 17, False), (40, 10, True), (40, 11, False)]
)
def test_late_is_at_most_sixteen_packets_and_a_quarter_of_the_counter(modulus, behind, late):
    unwrapper = Unwrapper(modulus, counts_samples=True)
    unwrapper.feed(np.array([30, 31]), np.ones(2, np.int64))
    placed = unwrapper.feed(np.array([(32 - behind) % modulus]), np.ones(1, np.int64))
    assert len(placed.keep) == (0 if late else 1)


@pytest.mark.parametrize(
    ("template", "line", "fits"),
    [
        ("{torque} {angle}", b"1.5 30", True),
        ("{torque} {angle}", b"1.5-30", True),
        ("{torque} {angle}", b"1.530", False),
        ("{torque:4} {angle}", b"1.5030", True),
        ("{counter} {torque}", b"7+2", True),
        ("{counter} {torque}", b"7.2", False),
        ("{torque} {unit}", b"1.5Nm", True),
        ("ST {torque}", b"ST1.5", True),
        ("{torque} {sign}{angle}", b"1.5-3", True),
        ("{torque} {sign}{angle}", b"1.53", False),
    ],
)
def test_two_numbers_are_kept_apart_by_a_blank_or_a_sign(template, line, fits):
    found = LineMatcher(LineFormat(template=template), "N·m").match(line)
    assert (found is not None) is fits


def test_the_longer_of_two_marks_is_meant():
    """E1 is a mark of its own, E10 another one: neither is E1 and a zero."""
    lines = LineFormat(template="{torque} {status}", overload=("E1", "E10"), status=StatusWords(ok=("", "0")))
    for text in (b"E1", b"E10"):
        found = LineMatcher(lines, "N·m").match(text)
        assert found.flags == {"overload"}
        assert not found.unlisted
    assert _longest_first((" E1 ", "", "E10", "OVER")) == (b"OVER", b"E10", b"E1")
