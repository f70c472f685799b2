"""Text lines: however the stream is cut the same samples come out, and the fast path says what the exact one says."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from logger.decoder import lines as lines_module
from logger.decoder.bulk import learn
from logger.decoder.lines import SLICE, LineDecoder
from logger.decoder.match import LineMatcher
from logger.decoder.template import MAX_LINE, LineFormat, NumberField, StatusWords, template_faults
from logger.samples import EventKind

STATUS = StatusWords(ok=("ST", "US"), overload=("OL",), error=("ER",), battery_low=("LB",))


def decoder(template: str, unit: str = "N·m", **more) -> LineDecoder:
    lines = LineFormat(template=template, **more)
    assert template_faults(lines) == []
    return LineDecoder(lines, unit, "SIM")


def whole(made: LineDecoder, data: bytes):
    return made.feed(data)


def byte_by_byte(made: LineDecoder, data: bytes):
    return made.feed(*[data[i : i + 1] for i in range(len(data))])


def one_feed_each(made: LineDecoder, data: bytes):
    from logger.decoder.packets import joined

    return joined([made.feed(data[i : i + 1]) for i in range(len(data))], made.columns)


def torques(decoded) -> list[float | None]:
    return [None if math.isnan(v) else v for v in decoded.columns["torque"].tolist()]


CASES = [
    ("{torque}", {}, b"12.34\r\n-.5\r\n+7\r\n", [12.34, -0.5, 7.0]),
    ("{torque}", {"terminator": "CR"}, b"1\r2\r\n3\r", [1.0, 2.0, 3.0]),
    ("{torque}", {"terminator": "LF"}, b"1\n2\r\n3\n", [1.0, 2.0, 3.0]),
    ("{torque}", {"terminator": "any"}, b"1\r\n2\r3\n\n4\n", [1.0, 2.0, 3.0, 4.0]),
    ("{counter},{torque}", {}, b"7,1.5\n8,2.5\n", [1.5, 2.5]),
    ("{torque};{angle}", {"decimal": ","}, b"12,5;3,25\n-1,0;4\n", [12.5, -1.0]),
    ("ST,{sign}{torque} {unit}", {}, b"ST,-  12.34 Nm\nST,+   0.50 Nm\nST,   1.25 Nm\n", [-12.34, 0.5, 1.25]),
    ("{status:2},{torque:7}{unit}", {"status": STATUS}, b"ST,+012.34N.m\nST,  -1.20N.m\n", [12.34, -1.2]),
    ("\x02{torque} Nm\x03", {}, b"\x02 12.5 Nm\x03\r\n\x02-3 Nm\x03\r\n", [12.5, -3.0]),
    ("CH1 {torque}", {}, b"CH1 12\nCH1    13.5\n", [12.0, 13.5]),
    ("{torque} {angle}", {}, b"1.5 30\n2.5   40\n", [1.5, 2.5]),
    ("{skip}T={torque},{skip}", {}, b"a=9,T=1.5,x\nb,T=2.5,\n", [1.5, 2.5]),
    ("${torque}", {"checksum": "xor"}, b"$12.5*%02X\n" % (ord("1") ^ ord("2") ^ ord(".") ^ ord("5")), [12.5]),
]


@pytest.mark.parametrize("feed", [whole, byte_by_byte, one_feed_each])
@pytest.mark.parametrize(("template", "more", "data", "values"), CASES)
def test_formats(feed, template, more, data, values):
    decoded = feed(decoder(template, **more), data)
    assert torques(decoded) == values
    assert decoded.events == ()


@pytest.mark.parametrize(("template", "more", "data", "values"), [c for c in CASES[:-1] if "counter" not in c[0]])
def test_trailing_bytes_wait_for_their_end(template, more, data, values):
    made = decoder(template, **more)
    end = b"\r" if more.get("terminator") == "CR" else b"\n"
    first = made.feed(data + data.rstrip(b"\r\n"))
    assert torques(first)[: len(values)] == values
    second = made.feed(end)
    assert torques(first) + torques(second) == values * 2


@pytest.mark.published("IEEE 488.2, 7.7.2.1, 8.7.2, 8.7.3", rows=("10.15",), status="READ-S")
def test_number_forms_of_the_standard():
    forms = (
        "273 0273 146 +146 -12345 273. .0273 12.3 +1.2345 -0.123 2.73E+2 273.0E-2 +1.23E+5 -456.789E+6 +200 -56 +9.9E36"
    )
    texts = forms.split()
    decoded = decoder("{torque}").feed("".join(f"{t}\r\n" for t in texts).encode())
    assert torques(decoded) == [float(t) for t in texts]
    assert decoded.events == ()


@pytest.mark.published("SCPI 1999, 7.2.1 (not a number, infinity)", rows=("10.16",), status="READ-S")
def test_special_values_of_the_standard():
    decoded = decoder("{torque}").feed(b"1.0\n9.91E37\n9.9E37\n-9.9E+37\n2.0\n")
    assert torques(decoded) == [1.0, None, None, None, 2.0]
    assert [(e.kind, e.index, e.count) for e in decoded.events] == [
        (EventKind.DEVICE_ERROR, 1, 1),
        (EventKind.OVERLOAD, 2, 2),
    ]


@pytest.mark.published("NMEA 0183 check sum, a printed sentence", rows=("10.13", "10.14"), status="READ-S")
def test_check_sum_of_a_printed_sentence():
    made = decoder("$GPGGA,{skip},N,{skip},E,1,08,0.9,{torque},M,46.9,M,,", checksum="xor", terminator="CRLF")
    good = b"$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\r\n"
    assert torques(made.feed(good)) == [545.4]
    # Row 10.14: the same sentence is about with 47.0 and the old check sum.
    other = decoder("$GPGGA,{skip},N,{skip},E,1,08,0.9,{torque},M,47.0,M,,", checksum="xor")
    decoded = other.feed(good.replace(b"46.9", b"47.0"))
    assert torques(decoded) == []
    assert [e.kind for e in decoded.events] == [EventKind.GARBAGE]


def test_marks_and_status():
    made = decoder("{status},{torque} {unit}", status=STATUS, error=("----",))
    data = b"ST,1.0 Nm\nOL,0.0 Nm\nOL,0.0 Nm\nST, OL Nm\nST,---- Nm\nLB,2.0 Nm\nXX,3.0 Nm\nST,4.0 Nm\n"
    decoded = made.feed(data)
    assert torques(decoded) == [1.0, None, None, None, None, 2.0, None, 4.0]
    assert [(e.kind, e.index) for e in decoded.events] == [
        (EventKind.OVERLOAD, 1),
        (EventKind.DEVICE_ERROR, 4),
        (EventKind.BATTERY, 5),
        (EventKind.DEVICE_ERROR, 6),  # the word is told,
        (EventKind.DEVICE_ERROR, 6),  # and that the reading is not valid
    ]
    assert "'XX' at {status} is not listed" in decoded.events[3].text
    # A mark that stands is told once, however the stream is cut.
    again = decoder("{torque}")
    events = [e for part in (b"1\n", b"OL\n", b"OL\n", b"2\n", b"OL\n") for e in again.feed(part).events]
    assert [e.kind for e in events] == [EventKind.OVERLOAD, EventKind.OVERLOAD]


@pytest.mark.parametrize(
    ("template", "line", "value"),
    [
        ("{torque:4}", b"1.50", 1.5),
        ("{torque:4}", b" 1.5", 1.5),
        ("{torque:4}", b"1.5 ", 1.5),
        ("{torque:4}", b"1.5", None),  # four characters are wanted
        ("{torque:4}", b"1.5x", None),
        ("{torque:4}", b"1.505", None),
        ("{torque:2}{unit}", b"15Nm", 15.0),
        ("{torque:2}{unit}", b"   5Nm", None),  # what comes behind its width is not its own
        ("{torque:3}", b"OLX", "OL"),
        ("{torque:4}", b"OLX ", "OL"),
        ("{torque:4}", b" OLX", "OL"),
        ("{torque:4}", b"OLX", None),
        ("{torque:4}", b"OLXx", None),
        ("{torque:2}{skip}", b"OLX", None),  # longer than it
        ("{torque:3}{skip}", b"OLX", "OL"),
        ("{torque:2}{skip}", b"--", "OL"),
        ("{torque:2}{skip}", b"---", None),
        ("{torque:4}{unit}", b"--  Nm", "OL"),
    ],
)
def test_a_number_or_a_mark_fills_its_width(template, line, value):
    found = LineMatcher(LineFormat(template=template, overload=("OLX",)), "N·m").match(line)
    if value is None:
        assert found is None
    elif value == "OL":
        assert math.isnan(found.values["torque"])
        assert found.flags == ({"overload"} if line.strip().startswith(b"OLX") else {"error"})
    else:
        assert found.values["torque"] == value


@pytest.mark.parametrize("before", [b"", b"1\n"])
def test_a_number_of_38_digits_may_stand_for_infinity(before):
    """9.9E37 is 99 and 36 zeros; one of 37 digits is far below."""
    made = decoder("{torque}")
    made.feed(before)
    assert torques(made.feed(b"98" + b"0" * 36 + b"\n")) == [9.8e37]
    assert torques(made.feed(b"99" + b"0" * 36 + b"\n")) == [None]
    assert torques(made.feed(b"9" * 37 + b"\n")) == [1e37]
    assert torques(made.feed(b"1\n-995" + b"0" * 35 + b"\n2\n")) == [1.0, None, 2.0]


def test_an_overload_value_is_a_mark_too():
    made = decoder("{torque}", overload=("9999.9",))
    assert torques(made.feed(b"1.0\n9999.9\n9999.8\n")) == [1.0, None, 9999.8]


def test_another_unit_is_converted_and_told():
    made = decoder("{torque} {unit}", unit="lbf·in")
    decoded = made.feed(b"12.0 lbf.in\n1.0 lbf.ft\n1.0 lbf.ft\n12.0 in-lb\n5 furlong\n")
    assert torques(decoded)[:4] == pytest.approx([12.0, 12.0, 12.0, 12.0])
    assert torques(decoded)[4] is None
    assert [(e.kind, e.index) for e in decoded.events if e.kind is EventKind.UNIT] == [
        (EventKind.UNIT, 1),
        (EventKind.UNIT, 3),
        (EventKind.UNIT, 4),
    ]


def test_scale_and_offset():
    made = decoder("{torque}", fields={"torque": NumberField(scale=0.01, offset=-1.0)})
    assert torques(made.feed(b"100\n250\n")) == [0.0, 1.5]


def test_counter_gaps_duplicates_and_wrap():
    made = decoder("{counter},{torque}", counter_modulus=1000)
    decoded = made.feed(b"997,1\n998,2\n999,3\n0,4\n1,5\n1,5\n5,6\n")
    assert torques(decoded) == [1, 2, 3, 4, 5, 6]
    assert decoded.counter is not None
    assert np.diff(decoded.counter).tolist() == [1, 1, 1, 1, 4]
    assert [(e.kind, e.index, e.count) for e in decoded.events] == [
        (EventKind.DUPLICATE, 0, 1),
        (EventKind.GAP, 5, 3),
    ]


def test_a_counter_that_begins_anew_is_told():
    made = decoder("{counter},{torque}")
    decoded = made.feed(b"5000,1\n5001,2\n0,3\n1,4\n")
    assert torques(decoded) == [1, 2, 3, 4]
    assert np.diff(decoded.counter).tolist() == [1, 1, 1]
    assert [(e.kind, e.index) for e in decoded.events] == [(EventKind.NOTE, 2)]


@pytest.mark.parametrize("step", [1, 3])
@pytest.mark.parametrize("one_drain", [True, False])
@pytest.mark.parametrize(
    ("sent", "kept", "notes", "late"),
    [
        ([20, 5, 21], [20, 21], [], 1),  # sixteen behind the 21 that is due: late
        ([20, 4, 5], [20, 21, 22], [(1, 4)], 0),  # more: it began anew
        ([18, 19, 20, 5, 21], [18, 19, 20, 21], [], 1),
        ([18, 19, 20, 4, 5], [18, 19, 20, 21, 22], [(3, 4)], 0),
        ([20, 10, 4, 5], [20, 21, 22], [(1, 4)], 1),  # behind the newest, not behind the last
        ([20, 10, 5, 21], [20, 21], [], 2),
        ([20, 0, 1, 30, 31], [20, 21, 22, 51, 52], [(1, 0)], 0),
        ([40, 3, 30, 2, 3], [40, 41, 68, 69, 70], [(1, 3), (3, 2)], 0),
    ],
)
def test_how_far_back_a_counter_that_never_wraps_begins_anew(step, one_drain, sent, kept, notes, late):
    made = decoder("{counter},{torque}", counter_step=step)
    chunks = [b"%d,%d\n" % (n * step, n) for n in sent]
    parts = [made.feed(*chunks)] if one_drain else [made.feed(chunk) for chunk in chunks]
    counter, events, at = [], [], 0
    for part in parts:
        events += [(at + e.index, e) for e in part.events]
        counter += part.counter.tolist()
        at += len(part)
    anew = [(place, e.text) for place, e in events if e.kind is EventKind.NOTE]
    assert anew == [(place, f"the device's counter began anew at {n * step}") for place, n in notes]
    assert counter == kept
    assert sum(e.count for _, e in events if e.kind is EventKind.REORDERED) == late


def test_garbage_is_counted_not_guessed():
    lines = [
        b"1.0",
        b"",
        b"\x00\x00",
        b"\xff\xfe\xf0",
        b"1.2.3",
        b"12a",
        b"nan",
        b"inf",
        b"1_0",
        b"0x10",
        b"--1",
        b"2.0",
    ]
    decoded = decoder("{torque}").feed(b"\n".join(lines) + b"\n")
    assert torques(decoded) == [1.0, 2.0]
    assert [(e.kind, e.index, e.count) for e in decoded.events] == [(EventKind.GARBAGE, 1, sum(map(len, lines[1:-1])))]


def test_banners_are_ignored_and_carry_the_simulated_mark():
    made = decoder("{torque}", ignore=("#",))
    assert torques(made.feed(b"# ready\n1\n")) == [1.0]
    assert not made.simulated
    assert made.feed(b"# SIM 1.0\n").events == ()
    assert made.simulated


def test_after_reset_the_rest_of_a_line_is_left_out():
    made = decoder("{torque}")
    made.feed(b"1.0\n12")
    assert [e.count for e in made.reset().events] == [2]
    decoded = made.feed(b"3.4\n56.7\n")
    assert torques(decoded) == [56.7]
    assert [(e.kind, e.count) for e in decoded.events] == [(EventKind.GARBAGE, 3)]


def test_a_line_without_end_takes_no_memory():
    made = decoder("{torque}")
    total = 0
    for _ in range(200):
        decoded = made.feed(b"7" * 10_000)
        total += sum(e.count for e in decoded.events)
        assert len(made._tail) <= MAX_LINE
        assert len(decoded) == 0
    decoded = made.feed(b"\n5.0\n")
    total += sum(e.count for e in decoded.events)
    assert torques(decoded) == [5.0]
    assert total == 2_000_000


def test_a_huge_chunk_is_decoded_in_slices():
    n = 60_000
    data = b"".join(b"%d,%d.25\r\n" % (i, i) for i in range(n))
    decoded = decoder("{counter},{torque}").feed(data)
    assert decoded.columns["torque"].tolist() == [i + 0.25 for i in range(n)]


@pytest.mark.parametrize(("terminator", "end"), [("LF", b"\n"), ("CR", b"\r"), ("CRLF", b"\r\n"), ("any", b"\r")])
@pytest.mark.parametrize("size", [7, 8, 9, 16, 30])
def test_a_long_drain_is_the_same_in_slices_of_any_size(monkeypatch, terminator, end, size):
    """Lines shorter than a slice, just as long, longer; slices are cut behind a line's end, whole lines in each."""
    data = b"".join(b"%0*d,%d" % (n % 23 + 1, n, -n) + end for n in range(60))
    chunks = [data[i : i + 11] for i in range(0, len(data), 11)]
    template, more = "{torque},{angle}", {"terminator": terminator}
    at_once = decoder(template, **more).feed(*chunks)
    assert torques(at_once) == [float(n) for n in range(60)]
    monkeypatch.setattr(lines_module, "SLICE", size)
    made = decoder(template, **more)
    slices = made._slices(data, 0, len(data))
    assert b"".join(data[a:b] for a, b in slices) == data
    assert all(data[a:b].endswith(end) for a, b in slices)
    assert all(b - a <= size or data[a:b].count(end) == 1 for a, b in slices)  # a line longer than a slice is alone
    behind = [data.find(end, b) + len(end) for _, b in slices[:-1]]
    assert all(more - a > size for (a, _), more in zip(slices, behind, strict=False))  # as many as fit
    sliced = made.feed(*chunks)
    assert sliced.chunk_of.tolist() == at_once.chunk_of.tolist()
    assert {n: v.tolist() for n, v in sliced.columns.items()} == {n: v.tolist() for n, v in at_once.columns.items()}
    assert sliced.events == at_once.events == ()


@pytest.mark.parametrize("place", [0, 1, 2])
def test_a_line_longer_than_a_slice_is_left_out_alone(place):
    sound = [b"1\n", b"2\n"]
    sound.insert(place, b"7" * (SLICE + 100) + b"\n")
    decoded = decoder("{torque}").feed(b"".join(sound))
    assert torques(decoded) == [1.0, 2.0]
    (event,) = decoded.events
    assert (event.kind, event.index, event.count) == (EventKind.GARBAGE, place, SLICE + 100)
    assert "too long" in event.text


def test_a_drain_that_begins_with_a_lines_end_after_a_reset():
    """What is left of the line that was joined in its middle is nothing but its end."""
    made = decoder("{torque}")
    made.reset()
    decoded = made.feed(b"\n5\n")
    assert torques(decoded) == [5.0]
    assert decoded.events == ()
    assert torques(made.feed(b"6\n7\n")) == [6.0, 7.0]
    made.reset()
    assert torques(made.feed(b"8")) == []
    assert torques(made.feed(b"9\n10\n")) == [10.0]
    made.reset(midway=False)
    assert torques(made.feed(b"11\n")) == [11.0]


@pytest.mark.parametrize("data", [b"3\r5\n7\n", b"3\n5\r7\r", b"3\r\n5\n7\r\n"])
def test_after_a_reset_the_first_of_any_ends_is_the_lines(data):
    made = decoder("{torque}", terminator="any")
    made.reset()
    decoded = made.feed(data)
    assert torques(decoded) == [5.0, 7.0]
    assert [(e.kind, e.index, e.count) for e in decoded.events] == [(EventKind.GARBAGE, 0, 1)]


@pytest.mark.parametrize("cut", [1, MAX_LINE, MAX_LINE + 1])
@pytest.mark.parametrize(("length", "fits"), [(MAX_LINE, True), (MAX_LINE + 1, False)])
def test_a_line_may_be_as_long_as_is_said(length, fits, cut):
    line = b"5".rjust(length, b"0") + b"\n"
    for known in (b"", b"1\n"):  # matched exactly, and all at once
        made = decoder("{torque}")
        parts = [made.feed(part) for part in (known, line[:cut], line[cut:] + b"6\n")]
        assert [v for part in parts for v in torques(part)] == [1.0] * bool(known) + [5.0] * fits + [6.0]
        events = [event for part in parts for event in part.events]
        assert sum(e.count for e in events if e.kind is EventKind.GARBAGE) == (0 if fits else length)


def test_a_counter_that_never_wraps_knows_better_than_the_clock():
    made = decoder("{counter},{torque}")
    made.feed(b"5,1\n6,1\n")
    made.expect(100.0, 5.0)
    decoded = made.feed(b"47,1\n")
    assert [(e.kind, e.count, e.text) for e in decoded.events] == [(EventKind.GAP, 40, "40 samples lost")]
    made = decoder("{torque}", counter_modulus=1000)
    made.expect(100.0, 5.0)  # there is none: nothing to be told
    assert torques(made.feed(b"1\n")) == [1.0]


def test_a_check_sum_is_looked_at_in_every_line():
    """Also in one that looks like the line before it but for its number: 1 ^ 2 is 3, of 2 ^ 2 it is 0."""
    made = decoder("${torque}", checksum="xor")
    assert torques(made.feed(b"$12*03\n")) == [12.0]
    decoded = made.feed(b"$12*03\n$22*03\n$21*03\n$22*00\n")
    assert torques(decoded) == [12.0, 21.0, 22.0]
    assert [(e.kind, e.index, e.count) for e in decoded.events] == [(EventKind.GARBAGE, 1, 6)]


@pytest.mark.parametrize(
    ("template", "more", "lines", "values"),
    [
        ("{torque}", {"fields": {"torque": NumberField(form="hex")}}, (b"10", b"11", b"A"), [16, 17, 10]),
        ("{torque} {angle}", {"fields": {"angle": NumberField(form="hex")}}, (b"1 10", b"2 11"), [1, 2]),
        ("{sign} {torque}", {}, (b"+ 1", b"- 2", b"+ 3"), [1, -2, 3]),
        ("{torque:3};{angle}", {}, (b"1.5;2", b"15;3", b"2.5;4"), [1.5, 2.5]),
        ("{torque}", {"overload": ("999",)}, (b"1", b"999", b"2"), [1, None, 2]),
        ("{torque}", {"error": ("-1",)}, (b"1", b"-1", b"2"), [1, None, 2]),
        ("{torque}", {"thousands": "'"}, (b"1", b"1'234", b"2"), [1, 1234, 2]),
        (" {torque}", {}, (b"1", b"  2"), [1, 2]),
        ("{torque} ", {}, (b"1", b"2  "), [1, 2]),
    ],
)
def test_what_the_fast_path_does_not_know_it_leaves_alone(template, more, lines, values):
    made = decoder(template, **more)
    made.feed(lines[0] + b"\n")
    decoded = made.feed(b"".join(line + b"\n" for line in lines))
    assert torques(decoded) == values
    if "angle" in template and "fields" in more:
        assert decoded.columns["angle"].tolist() == [16, 17]


def test_chunk_of_says_where_each_line_ended():
    chunks = [b"1\r", b"\n2\r\n3", b"\r\n", b"", b"4\n"]
    decoded = decoder("{torque}", terminator="CRLF").feed(*chunks)
    assert torques(decoded) == [1, 2, 3, 4]
    assert decoded.chunk_of.tolist() == [1, 1, 2, 4]
    fast = decoder("{torque}", terminator="LF")
    fast.feed(b"0\n")
    assert fast.feed(b"1\n2\n", b"3", b"\n4\n").chunk_of.tolist() == [0, 0, 2, 2]


@pytest.mark.parametrize("known", [b"", b"0\r\n"])  # matched exactly, and all at once
def test_of_two_ends_where_any_will_do_the_first_one_counts(known):
    made = decoder("{torque}", terminator="any")
    made.feed(known)
    assert made.feed(b"1\r", b"\n2\r\n3", b"\r", b"\n4\r\n").chunk_of.tolist() == [0, 1, 2, 3]
    exact = decoder("{torque}", terminator="CRLF")
    exact.feed(known)
    assert exact.feed(b"1\r", b"\n2\r\n3", b"\r", b"\n4\r\n").chunk_of.tolist() == [1, 1, 3, 3]


NUMBERS = st.one_of(
    st.integers(-(10**6), 10**6).map(str),
    st.floats(-1e6, 1e6).map(lambda v: f"{v:.4f}"),
    st.floats(-1e6, 1e6).map(lambda v: f"{v:+09.2f}"),
    st.floats(-1e3, 1e3).map(repr),
    st.sampled_from(["OL", "9.91E37", "+.5", "5.", "-0", "00012.5", "", " 1 ", "1 2", "1e5", "nan", "--", "1,5"]),
)
FORMATS = [
    ("{torque}", "{}"),
    ("ST,{torque} Nm", "ST,{} Nm"),
    ("{counter},{torque}", "7,{}"),
    ("{torque},{angle},{rate}", "{},{},1"),
    ("[{torque};{angle}]", "[{};{}]"),
    ("{sign}{torque}", "-{}"),
]


def with_cuts(data: bytes, cuts: list[int]) -> list[bytes]:
    edges = sorted({0, len(data), *(c % (len(data) + 1) for c in cuts)})
    return [data[a:b] for a, b in pairwise(edges)]


@given(
    st.sampled_from(FORMATS),
    st.lists(NUMBERS, max_size=30),
    st.lists(st.integers(0, 10_000), max_size=8),
    st.booleans(),
)
@settings(max_examples=300)
def test_cut_anywhere(form, numbers, cuts, crlf):
    template, line = form
    data = "".join(line.format(n, n) + ("\r\n" if crlf else "\n") for n in numbers).encode()
    kinds = {"counter_modulus": 8} if "counter" in template else {}
    at_once = decoder(template, **kinds).feed(data)
    made = decoder(template, **kinds)
    parts = [made.feed(chunk) for chunk in with_cuts(data, cuts)]
    for name in at_once.columns:
        assert np.array_equal(
            np.concatenate([np.empty(0), *(p.columns[name] for p in parts)]), at_once.columns[name], equal_nan=True
        )
    garbage = [e.count for p in parts for e in p.events if e.kind is EventKind.GARBAGE]
    assert sum(garbage) == sum(e.count for e in at_once.events if e.kind is EventKind.GARBAGE)


def exactly(template: str, data: bytes, comma: bool = False) -> list[list[float]]:
    """Match line by line, without any fast path."""
    lines = LineFormat(template=template, terminator="LF", decimal="," if comma else ".")
    matcher = LineMatcher(lines, "N·m")
    found = [matcher.match(line) for line in data.split(b"\n") if line.strip()]
    return [[v if v == v else -1e99 for v in one.values.values()] for one in found if one is not None]


@given(
    st.sampled_from(["{torque}", "A {torque} Nm", "{torque};{angle}", "{torque},{angle}"]),
    st.lists(st.text("0123456789+-.,;eE[]AN m\r\t\"'{}", max_size=14), max_size=12),
    st.booleans(),
)
@example("{torque};{angle}", ["1;2],[3;4"], False)
@example("{torque}", ["1,2"], False)
@example("{torque}", ["1],[2"], False)
@example("{torque};{angle}", ["1,5;2.5"], True)
@settings(max_examples=500)
def test_the_fast_path_reads_what_the_exact_one_reads(template, texts, comma):
    if comma and "," in template:
        template = template.replace(",", ";")
    model = template.format(torque="1", angle="2") + "\n"
    data = (model * 2 + "".join(f"{t}\n" for t in texts) + model).encode()
    made = decoder(template, terminator="LF", decimal="," if comma else ".")
    made.feed(model.encode())
    assert made._look is not None
    decoded = made.feed(data)
    rows = np.column_stack([decoded.columns[c.name] for c in made.columns]).tolist()
    got = [[v if v == v else -1e99 for v in row] for row in rows]
    assert got == exactly(template, data, comma)


@given(st.lists(st.floats(-1e12, 1e12), min_size=1, max_size=50), st.integers(0, 6))
def test_the_fast_path_gives_the_nearest_float(values, digits):
    made = decoder("{torque}")
    texts = [f"{v:.{digits}f}" for v in values]
    decoded = made.feed(("0\n" + "".join(f"{t}\n" for t in texts)).encode())
    assert decoded.columns["torque"][1:].tolist() == [float(t) for t in texts]


def test_a_look_that_could_be_mistaken_is_not_learnt():
    assert learn(b"1,2;3", [(0, 1), (2, 3), (4, 5)], (False,) * 3, False) is None
    assert learn(b"12", [(0, 1), (1, 2)], (False,) * 2, False) is None
    assert learn(b"1\t2", [(0, 1), (2, 3)], (False,) * 2, False) is None


@pytest.mark.parametrize(
    ("template", "lines"),
    [
        ("0,-{torque}", [b"0,-1", b",-2", b"0,-3"]),  # a prefix that lost its digit leaves JSON behind
        (",Nm{torque}", [b",Nm12", b",Nm12.5", b",.5"]),
        ("{torque},-{angle}", [b"5,-3", b"5,3", b"6,-4"]),  # a comma that is only part of what stands between
        ("{torque}; {angle}", [b"5; 3", b"5,3", b"6; 4"]),
    ],
)
@pytest.mark.parametrize("end", [b"\n", b"\r", b"\r\n"])
def test_what_stands_between_numbers_must_stand_there_in_every_line(template, lines, end):
    decoder = LineDecoder(LineFormat(template=template), "N·m")
    decoder.feed(lines[0] + end)
    together = decoder.feed(b"".join(line + end for line in lines))
    alone = [
        v
        for line in lines
        for v in LineDecoder(LineFormat(template=template), "N·m").feed(line + end).columns["torque"]
    ]
    assert together.columns["torque"].tolist() == alone
    assert len(alone) == 2
    assert together.events[0].kind is EventKind.GARBAGE


@pytest.mark.parametrize("line", [b"5\t3", b"5;\t3", b"5\n3", b"5;3;"])
def test_with_a_comma_for_a_decimal_mark_too(line):
    decoder = LineDecoder(LineFormat(template="{torque};{angle}", decimal=","), "N·m")
    decoder.feed(b"1,5;2,5\n")
    alone = LineDecoder(LineFormat(template="{torque};{angle}", decimal=","), "N·m").feed(line + b"\n")
    together = decoder.feed(b"1,5;2,5\n" + line + b"\n")
    assert together.columns["torque"].tolist() == [1.5, *alone.columns["torque"].tolist()]


def test_every_line_ends_with_the_same_bytes_or_they_do_not():
    made = LineDecoder(LineFormat(template="{torque}", terminator="any"), "N·m")
    for text, end, count, alike in (
        (b"1\r\n2\r\n", b"\r\n", 2, True),
        (b"1\n2\r\n", b"\r\n", 2, False),
        (b"1\n2\n", b"\n", 2, True),
        (b"1\r2\n", b"\n", 1, False),
        (b"1\r2\r", b"\r", 2, True),
        (b"1\n2\r", b"\r", 1, False),
    ):
        assert made._ends_alike(text, end, count) is alike
        assert LineDecoder(LineFormat(template="{torque}", terminator="LF"), "N·m")._ends_alike(text, end, count)
