"""A fixture as one line of text, which a label carries as a QR code and a handheld scanner types into a field.

    HELDWHEEL FIXTURE KIND ONE STUD STUDS 5 CIRCLE 114.3 LENGTH 450 U 2 NAME LONG LEVER CHECK 43086

The line holds capitals without Y and Z, digits, blanks and the decimal point only: they are in the alphanumeric set of
QR codes (ISO/IEC 18004, table 5), and English, German and Spanish keyboards have them on the same keys, so that a
scanner set to another of them types the same line. So a minus is the word MINUS. Lengths in mm, angles in degrees,
mass in kg; U is the standard uncertainty of the value before it. Small letters of a name are written as capitals;
whatever else the set lacks stands as its code point in hexadecimal between two Q. The last number is a check of all
before it.
"""

from __future__ import annotations

import re
import sys
from decimal import Decimal
from typing import Any, Final, get_args

from logger.decoder.crc import check
from logger.errors import InputError
from logger.header import FixtureKind, Lever

BEGINS: Final = "HELDWHEEL FIXTURE "
BEGUN: Final = 4  # characters of it that may be a name as well
ENDS: Final = re.compile(r"(.+) CHECK ([0-9]{5})")
SET: Final = frozenset("ABCDEFGHIJKLMNOPQRSTUVWX0123456789 .")
NUMBER: Final = re.compile(r"[0-9]{1,20}(?:\.[0-9]{1,30})?")
CODE: Final = re.compile(r"[0-9A-F]{1,6}")
MOST: Final = 470  # characters of a line: a QR code of more is too fine for a label
KINDS: Final = {kind.upper().replace("-", " "): kind for kind in get_args(FixtureKind)}
FIELDS: Final = {
    "STUDS": "studs",
    "CIRCLE": "stud_circle_mm",
    "CHORD": "chord_mm",
    "APART": "chord_apart",
    "LENGTH": "length_mm",
    "ANGLE": "angle_deg",
    "PULL": "pull_angle_deg",
    "OFFSET": "offset_mm",
    "RADIUS": "radius_mm",
    "CORD": "cord_mm",
    "GRIP": "grip_mark_mm",
    "GAUGE": "gauge_mm",
    "MASS": "weight_kg",
    "CENTROID": "centroid_mm",
    "START": "start_angle_deg",
}
_COUNTS: Final = {"studs", "chord_apart"}
_UNCERTAIN: Final = {key.removesuffix("_u") for key in Lever.__struct_fields__ if key.endswith("_u")}


def line_of(lever: Lever) -> str:
    """Write a fixture as one line; ``lever_of_line`` gives the same fixture back, to the last digit.

    Raises:
        InputError: A value that is no finite number, or a name that is too long for a label.
    """
    words = [f"{BEGINS}KIND {lever.fixture.upper().replace('-', ' ')}"]
    for word, key in FIELDS.items():
        value, u = getattr(lever, key), getattr(lever, f"{key}_u", None)
        if value is not None:
            words.append(f"{word} {_written(word, value)}")
            if u is not None:
                words.append(f"U {_written(word, u)}")
        elif u is not None:
            raise InputError(f"{word}: has an uncertainty and no value")
    if lever.name:
        words.append(f"NAME {_name_written(lever.name)}")
    line = " ".join(words)
    if not lever.name.isprintable():
        raise InputError("name: holds a character that is not printed")
    if len(line) > MOST:
        raise InputError(f"name: is too long for a label; this fixture takes {len(line)} characters of {MOST}")
    return f"{line} CHECK {_check(line):05d}"


def line_in(text: str) -> str:
    """Give the line, or its beginning, that was scanned into a text; empty where there is none.

    >>> line_in("long leverHELDWHEEL FIXTURE KIND ON"), line_in("heldwheel f"), line_in("held side")
    ('HELDWHEEL FIXTURE KIND ON', 'heldwheel f', '')
    """
    start = text.upper().rfind(BEGINS)
    if start < 0 and len(text) > BEGUN and BEGINS.startswith(text.upper()):
        start = 0
    return text[start:] if start >= 0 else ""


def lever_of_line(text: str) -> Lever:
    """Read a fixture from its line, as a scanner or a person typed it; small letters are read as capitals.

    Raises:
        InputError: It is no such line, a field cannot be read, or the check number does not fit; the field is named.
    """
    line = text.strip().upper()
    if not line.startswith(BEGINS):
        raise InputError(f"no label of a fixture: its line begins with {BEGINS.strip()}")
    foreign = sorted(set(line) - SET)
    if foreign:
        raise InputError(
            f"'{foreign[0]}' is in no label: it holds A to X, 0 to 9, blanks and points; "
            "is the scanner set to this keyboard?"
        )
    ended = ENDS.fullmatch(line)
    if ended is None or len(line) > MOST + 12:
        raise InputError("the line does not end with CHECK and five digits: scan or copy the whole of it")
    lever = _lever(ended[1].removeprefix(BEGINS))
    if int(ended[2]) != _check(ended[1]):
        raise InputError("CHECK: the check number does not fit the line: a character is mistyped, missing or too many")
    return lever


def _check(line: str) -> int:
    return check(line.encode("ascii"), "crc-16/xmodem")


def _written(word: str, value: float) -> str:
    """Write a number in full: no exponent, no sign but the word."""
    shown = format(Decimal(repr(value)), "f").removesuffix(".0")
    if not NUMBER.fullmatch(shown.removeprefix("-")):
        raise InputError(f"{word}: {value!r} is no number for a label")
    return shown.replace("-", "MINUS ")


def _name_written(name: str) -> str:
    """Write a name with the set's characters alone."""
    plain = {c for c in SET if not c.isalpha()} | {c.lower() for c in SET if c.isalpha() and c != "Q"}
    blanks = re.compile(r"(?<! ) (?=[^ ])(?!$)")
    kept = {found.start() for found in blanks.finditer(name) if found.start()}
    return "".join(
        c.upper() if c in plain and (c != " " or place in kept) else f"Q{ord(c):X}Q" for place, c in enumerate(name)
    )


def _name_read(text: str) -> str:
    parts = text.split("Q")
    if len(parts) % 2 == 0:
        raise InputError("NAME: a Q stands alone in it; codes stand between two")
    return "".join(_character(part) if place % 2 else part.lower() for place, part in enumerate(parts))


def _character(code: str) -> str:
    found = chr(int(code, 16)) if CODE.fullmatch(code) and int(code, 16) <= sys.maxunicode else "\n"
    if not found.isprintable():
        raise InputError(f"NAME: '{code[:8]}' is the code of no character")
    return found


def _lever(fields: str) -> Lever:
    """Read kind, fields and name, the frame of the line taken off."""
    fields, named, name = fields.partition(" NAME ")
    kind = max((words for words in KINDS if f"{fields} ".startswith(f"KIND {words} ")), key=len, default=None)
    if kind is None:
        raise InputError(f"KIND: is none of a fixture; there are: {', '.join(KINDS)}")
    keys: dict[str, Any] = {"fixture": KINDS[kind]}
    words, last = fields.removeprefix(f"KIND {kind}").split(), ""
    while words:
        word = words.pop(0)
        key = f"{FIELDS[last]}_u" if word == "U" and last else FIELDS.get(word, "")
        if not key or (word == "U" and key.removesuffix("_u") not in _UNCERTAIN):
            raise InputError(f"'{word[:20]}' is no field of a fixture{f' after {last}' if last else ''}")
        if key in keys:
            raise InputError(f"{word}: stands twice")
        last = last if word == "U" else word
        keys[key] = _number(last, key, words)
    return Lever(**keys, name=_name_read(name) if named else "")


def _number(word: str, key: str, words: list[str]) -> float | int:
    """Take a field's number off the words."""
    minus = bool(words) and words[0] == "MINUS" and bool(words.pop(0))
    text = words.pop(0) if words else ""
    if not NUMBER.fullmatch(text) or (key in _COUNTS and ("." in text or minus)):
        raise InputError(f"{word}: '{text[:20]}' is no {'count' if key in _COUNTS else 'number'}")
    value = int(text) if key in _COUNTS else float(text)
    return -value if minus else value
