"""One line against its template: where words, counters and numbers end, and what is told where one does not fit."""

from __future__ import annotations

import numpy as np
import pytest

from logger.decoder.crc import check
from logger.decoder.lines import LineDecoder
from logger.decoder.match import LineMatcher
from logger.decoder.template import LineCheck, LineFormat, StatusWords, compile_template, template_faults

MEANT = StatusWords(ok=("ST", "E1", "STX"))


@pytest.mark.parametrize(
    ("template", "line", "values"),
    [
        ("{counter:3}{torque:4}", b"0071.50", {"counter": 7, "torque": 1.5}),
        ("{counter:3}{torque:4}", b"00 1.50", None),
        ("{torque},{counter}", b"1.5,7", {"counter": 7, "torque": 1.5}),
        ("{torque},{counter}", b"123456.789,7", {"counter": 7, "torque": 123456.789}),
        ("{torque},{counter}", b"123456.789,", None),
        ("{torque},{counter:2}", b"1.5,07", {"counter": 7}),
        ("{torque},{counter:2}", b"1.5,7", None),
        ("{torque},{status:2}", b"1.5,ST", {"torque": 1.5}),
        ("{torque},{status:2}", b"1.5,S", None),
        ("{status:2}{torque}", b"S", None),
        ("{status} {torque}", b"E1 5", {"torque": 5.0}),  # up to the blank, digits and all
        ("{status} {torque}", b"ST  5", {"torque": 5.0}),
        ("{status} {torque}", b"STX 5", {"torque": 5.0}),
        ("{status} {torque}", b"  ST 5", {"torque": 5.0}),
        ("{status} {torque}", b"ST", None),
        ("{status}{torque}", b"ST5", {"torque": 5.0}),  # up to the number
        ("{status}{torque}", b"STX-.5", {"torque": -0.5}),
        ("{status}{torque}", b"ST", None),
        ("{torque}{unit}", b"1Nm", {"torque": 1.0}),
        ("{torque}{unit}", b"1;x", None),  # a number that goes on is no number with a unit
        ("{torque}{unit}", b"1,5", None),
        ("{torque}{unit}", b"1|Nm", None),
    ],
)
def test_where_words_and_counters_end(template, line, values):
    found = LineMatcher(LineFormat(template=template, status=MEANT), "N·m").match(line)
    if values is None:
        assert found is None
        return
    assert found.flags == set()
    assert not found.unlisted
    assert {name: found.counter if name == "counter" else found.values[name] for name in values} == values


def test_what_did_not_fit_is_told():
    matcher = LineMatcher(LineFormat(template="{torque},{status:2}"), "N·m")
    for line, told in (
        (b"x,ST", "where {torque} should be came 'x,ST'"),
        (b"1;ST", "where ',' should be came ';ST'"),
        (b"1,S", "where {status} should be came 'S'"),
        (b"1,STxyz", "where its end should be came 'xyz'"),
        (b"x\xff\x07" + b"y" * 40, "where {torque} should be came 'x\ufffd?" + "y" * 27 + "'"),
    ):
        assert matcher.match(line) is None
        assert matcher.misfit == told
    matcher = LineMatcher(LineFormat(template="{torque} {angle}"), "N·m")
    assert matcher.match(b"1") is None
    assert matcher.misfit == "where a blank between two numbers should be came ''"
    assert matcher.match(b"0" * 513) is None
    assert matcher.misfit == "it is too long"


def test_a_unit_that_is_not_there_and_a_word_that_is_not_listed():
    found = LineMatcher(LineFormat(template="{unit},{torque}"), "N·m").match(b",1.5")
    assert found.flags == {"error"}
    assert np.isnan(found.values["torque"])
    found = LineMatcher(LineFormat(template="{status},{torque}"), "N·m").match(b"a" * 25 + b",1.5")
    assert found.flags == {"error"}
    assert found.unlisted == f"'{'a' * 20}' at {{status}}"


@pytest.mark.parametrize(
    ("line", "value"), [(b"$12*03", 12.0), (b"$12*03  ", 12.0), (b"$12*03\t\r", 12.0), (b"*03", None)]
)
def test_blanks_behind_a_check_do_not_count(line, value):
    found = LineMatcher(LineFormat(template="${torque}", checksum="xor"), "N·m").match(line)
    assert (found.values["torque"] if found else None) == value


@pytest.mark.parametrize("end", [b"\n", b"\r\n"])
@pytest.mark.parametrize("name", ["crc-8/smbus", "crc-8/maxim"])
def test_a_check_sum_as_a_byte_may_be_a_carriage_return(name, end):
    """Of all texts from 0.00 to 9.99; one whose check is a line feed ends too soon."""
    texts = [f"{n / 100:.2f}".encode() for n in range(1000)]
    checks = [check(text, name) for text in texts]
    assert checks.count(0x0D) > 1
    form = LineCheck(name=name, form="bytes", mark="")
    decoder = LineDecoder(LineFormat(template="{torque}", terminator="LF", check=form), "N·m")
    for text, byte in zip(texts, checks, strict=True):
        if byte != 0x0A:
            assert decoder.feed(text + bytes([byte]) + end).columns["torque"].tolist() == [float(text)], (text, byte)


@pytest.mark.parametrize(
    ("width", "fits"), [("0", False), ("1", True), ("100", True), ("101", False), ("0007", True), ("00007", False)]
)
def test_widths_are_of_one_to_a_hundred(width, fits):
    faults = template_faults(LineFormat(template=f"{{torque:{width}}}"))
    assert any("the width must be 1 to 100" in fault for fault in faults) is not fits


def test_further_words_are_status2_to_status9():
    """Any other name is a number."""
    kinds = [part.kind for n in range(1, 11) for part in compile_template(f"{{status{n}}}")]
    assert kinds == ["number", *["status"] * 8, "number"]
