"""A fixture as one line: the same fixture comes back, and a line that was mistyped is refused with its field."""

import binascii
import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logger.errors import InputError
from logger.header import Lever
from logger.instruments.fixture_line import FIELDS, KINDS, lever_of_line, line_in, line_of

# ISO/IEC 18004:2015, table 5: the characters of the alphanumeric mode (from memory).
ALPHANUMERIC = set(string.digits + string.ascii_uppercase + " $%*+-./:")
LONG = Lever(
    fixture="one stud", name="long lever", length_mm=450, length_mm_u=2, stud_circle_mm=114.3, studs=5, angle_deg=-2.5
)
numbers = st.floats(-1e6, 1e6, allow_nan=False).map(lambda x: x if abs(x) > 1e-9 else 0.0)
names = st.text(st.characters(categories=["L", "N", "P", "S", "Zs"]), max_size=20).filter(str.isprintable)


def test_every_value_of_the_record_has_its_place():
    fields = {key for key in Lever.__struct_fields__ if not key.endswith("_u")}
    assert fields == {"fixture", "name", *FIELDS.values()}


@settings(max_examples=25, deadline=None)
@given(st.data(), st.sampled_from(sorted(KINDS.values())), names)
def test_every_kind_comes_back_to_the_last_digit_in_characters_alike_on_every_keyboard(data, kind, name):
    keys = data.draw(st.sets(st.sampled_from(sorted(FIELDS.values())), max_size=5))
    values = {k: data.draw(st.integers(1, 12) if k in {"studs", "chord_apart"} else numbers) for k in keys}
    uncertain = [k for k in keys if f"{k}_u" in Lever.__struct_fields__]
    lever = Lever(fixture=kind, name=name, **values, **{f"{k}_u": data.draw(numbers) for k in uncertain})
    line = line_of(lever)
    assert set(line) <= ALPHANUMERIC - set("YZ$%*+-/:")
    assert lever_of_line(line) == lever
    assert lever_of_line(f" {line.lower()}\r\n") == lever, "a scanner with capitals locked ends with a return"


def test_the_line_reads_as_it_is_written_here():
    line = line_of(LONG)
    body = "HELDWHEEL FIXTURE KIND ONE STUD STUDS 5 CIRCLE 114.3 LENGTH 450 U 2 ANGLE MINUS 2.5 NAME LONG LEVER"
    # The check is the CRC of the catalogue's crc-16/xmodem; the standard library reckons the same one.
    assert line == f"{body} CHECK {binascii.crc_hqx(body.encode(), 0):05d}"
    assert line_in(f"old name{line}") == line


def test_no_character_can_be_mistyped_missing_or_swapped_unnoticed():
    """A CRC of 16 bits sees every burst of up to 16 bits: any one character, any two neighbours."""
    line = line_of(LONG)
    for place in range(len(line)):
        others = [
            line[:place] + line[place + 1 :],
            line[:place] + ("7" if line[place] != "7" else "1") + line[place + 1 :],
        ]
        if place + 1 < len(line) and line[place] != line[place + 1]:
            others.append(line[:place] + line[place + 1] + line[place] + line[place + 2 :])
        for other in others:
            if other.strip() != line:
                with pytest.raises(InputError):
                    lever_of_line(other)


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("HELDWHEEL", "HELDWHEL", "begins with HELDWHEEL FIXTURE"),
        ("114.3", "114,3", "',' is in no label"),
        ("ONE STUD ", "TWO STUD ", "KIND: is none of a fixture"),
        ("CIRCLE", "CIRCEL", "'CIRCEL' is no field of a fixture after STUDS"),
        ("LENGTH 450 U", "LENGTH 4S0 U", "LENGTH: '4S0' is no number"),
        ("LENGTH 450 U 2", "LENGTH 450 U", "LENGTH: 'ANGLE' is no number"),
        ("STUDS 5", "STUDS 5.5", "STUDS: '5.5' is no count"),
        ("STUDS 5", "STUDS 5 U 1", "'U' is no field of a fixture after STUDS"),
        ("STUDS 5", "STUDS 5 STUDS 5", "STUDS: stands twice"),
        ("LONG LEVER", "LONQG LEVER", "NAME: a Q stands alone"),
        ("LONG LEVER", "QFFFFFFQ", "NAME: 'FFFFFF' is the code of no character"),
        ("450", "460", "CHECK: the check number does not fit"),
        (" CHECK", " CHEK", "does not end with CHECK and five digits"),
    ],
)
def test_a_mistyped_line_is_refused_with_the_reason(old, new, told):
    with pytest.raises(InputError) as refused:
        lever_of_line(line_of(LONG).replace(old, new))
    assert told in str(refused.value)


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"length_mm": float("nan")}, "LENGTH: nan is no number"),
        ({"length_mm": 1e30}, "LENGTH: 1e\\+30 is no number"),
        ({"name": "x" * 500}, "name: is too long for a label"),
        ({"name": "two\nlines"}, "not printed"),
    ],
)
def test_what_no_line_can_hold_is_refused(keys, told):
    with pytest.raises(InputError, match=told):
        line_of(Lever(fixture="couple", **keys))
