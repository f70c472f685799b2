r"""How a text line is laid out: the template of a transducer's description, checked and compiled by us.

A template is the line as the device sends it, with a name in braces where a value stands::

    "{torque}"                              12.34
    "{counter},{torque},{angle}"            000123,+0012.34,15.0
    "ST,{sign}{torque} {unit}"              ST,-  12.34 lbf.in
    "{status:2},{torque:7}{unit}"           OL,+000.00N.m

Conventions:
- ``{torque}`` and any other name that is not listed here is a number and becomes a column. Blanks around it are
  passed over; ``{name:7}`` takes exactly seven characters.
- ``{counter}`` counts lines, ``{unit}`` and ``{status}`` are text, ``{sign}`` is ``+``, ``-`` or blank before a
  separate magnitude, ``{skip}`` is anything up to what follows. Further words that change are ``{status2}`` ...
  ``{status9}``.
- A blank in a template stands for any number of blanks, also none; between two numbers at least one, or a sign: glued
  digits are no reading.
- Frame marks are written as escapes: ``"\u0002{torque}\u0003"``. Where frames from STX to ETX have no line ends,
  ``terminator = "ETX"`` cuts them, and the template holds what stands between the two.

No regular expression is taken from a file: a hostile one could hang the reader.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated, Final, Literal

import msgspec

from logger.decoder.column_faults import name_faults, scale_faults
from logger.decoder.crc import CHECK_BYTES, CheckName
from logger.decoder.floats import Order  # noqa: TC001 - msgspec reads it when the type is used
from logger.header import Record

MAX_LINE: Final = 512  # bytes; a longer line is garbage
MAX_TEMPLATE: Final = 200
COUNTER_MOST: Final = 10**15  # a counter of more digits is no whole number any more once it is a float
MAX_WIDTH: Final = 100

_Mark = Annotated[str, msgspec.Meta(min_length=1, max_length=40)]


class NumberField(Record, frozen=True, kw_only=True):
    """What a numeric field of the template means: value = number x scale + offset.

    Attributes:
        unit: Unit of the column; the torque's unit is ``transducer.unit``.
        scale, offset: The value is number x scale + offset.
        form: How the number is written; ``signed hex`` is two's complement of as many digits as are sent.
    """

    unit: Annotated[str, msgspec.Meta(max_length=20)] = ""
    scale: float = 1.0
    offset: float = 0.0
    form: Literal["decimal", "hex", "signed hex"] = "decimal"


class StatusWords(Record, frozen=True, kw_only=True):
    """What the texts of ``{status}`` mean. One that is not listed makes its reading not valid, and is told.

    Attributes:
        ok: The reading is good.
        negative: The reading is good and counts negative: a direction sent as a word, such as ``CCW``.
        overload, error: The device is beyond its range; its value is not valid.
        stale: The device has not renewed its value.
        battery_low: The battery is low; the reading is good.
    """

    ok: tuple[str, ...] = ("",)
    negative: tuple[_Mark, ...] = ()
    overload: tuple[_Mark, ...] = ()
    error: tuple[_Mark, ...] = ()
    stale: tuple[_Mark, ...] = ()
    battery_low: tuple[_Mark, ...] = ()


class LineCheck(Record, frozen=True, kw_only=True):
    """A check sum at the end of a line: what is covered, then ``mark``, then the check itself.

    Attributes:
        name: Which check.
        form: ``hex``: hexadecimal digits; ``bytes``: the bytes themselves.
        mark: What stands before it: ``*``, a separator, nothing; the character ETX where it follows the ETX of a frame.
        covers_from: Characters at the line's beginning that it leaves out: 1 for a leading ``$`` or STX.
        covers_mark: Whether it covers the mark.
        order: Order of its bytes.
    """

    name: CheckName
    form: Literal["hex", "bytes"] = "hex"
    mark: Annotated[str, msgspec.Meta(max_length=4)] = "*"
    covers_from: Annotated[int, msgspec.Meta(ge=0, le=8)] = 0
    covers_mark: bool = False
    order: Order = "big"

    @property
    def size(self) -> int:
        """Bytes that the check takes in the line."""
        return CHECK_BYTES[self.name] * (2 if self.form == "hex" else 1)


class LineFormat(Record, frozen=True, kw_only=True):
    """A text line.

    Attributes:
        template: The line, with names in braces; see the module.
        terminator: What ends a line; ``any`` takes CR, LF and CRLF, ``ETX`` cuts frames from STX to ETX.
        decimal: Decimal mark.
        thousands: Mark between groups of three digits, if the device writes one.
        fields: Unit and scale per numeric field of the template.
        overload, error: Marks that stand where the torque would: ``OL``, ``----``.
        status: Meaning of the ``{status}`` field.
        words: Meaning of ``{status2}`` ... ``{status9}``.
        ignore: Lines that begin with one of these are no readings and no garbage: banners, comments.
        counter_modulus: Where ``{counter}`` wraps to 0; None: never.
        counter_step: By how much it advances from line to line.
        checksum: ``xor``: the line ends in ``*`` and two hexadecimal digits: the XOR of all between its first character
            and ``*``. Short for the usual one; any other is described by ``check``.
        check: Another check sum at the line's end.
    """

    template: Annotated[str, msgspec.Meta(min_length=1, max_length=MAX_TEMPLATE)]
    terminator: Literal["CR", "LF", "CRLF", "any", "ETX"] = "any"
    decimal: Literal[".", ","] = "."
    thousands: Literal["", ",", ".", "'", " "] = ""
    fields: dict[str, NumberField] = msgspec.field(default_factory=dict)
    overload: tuple[_Mark, ...] = ("OL", "+OL", "-OL")
    error: tuple[_Mark, ...] = ()
    status: StatusWords = msgspec.field(default_factory=StatusWords)
    words: dict[str, StatusWords] = msgspec.field(default_factory=dict)
    ignore: tuple[_Mark, ...] = ()
    counter_modulus: Annotated[int, msgspec.Meta(ge=2)] | None = None
    counter_step: Annotated[int, msgspec.Meta(ge=1)] = 1
    checksum: Literal["none", "xor"] = "none"
    check: LineCheck | None = None

    @property
    def line_check(self) -> LineCheck | None:
        """The check sum in force."""
        return LineCheck(name="xor-8", covers_from=1) if self.checksum == "xor" else self.check


Kind = Literal["text", "blank", "number", "counter", "unit", "status", "sign", "skip"]
MORE_STATUS: Final = tuple(f"status{n}" for n in range(2, 10))
_WORDS: Final[dict[str, Kind]] = {
    **{k: k for k in ("counter", "unit", "status", "sign", "skip")},
    **dict.fromkeys(MORE_STATUS, "status"),
}
_NAME: Final = re.compile(r"[a-z][a-z0-9_]{0,29}")  # our own pattern, on a template of bounded length


@dataclass(frozen=True, slots=True)
class TemplatePart:
    """One part of a compiled template: a text that must stand there, blanks, or a field."""

    kind: Kind
    name: str = ""
    text: bytes = b""
    width: int | None = None


def compile_template(template: str) -> tuple[TemplatePart, ...]:
    """Turn a template into its parts.

    Raises:
        ValueError: It cannot be read; the text says what is wrong.
    """
    parts: list[TemplatePart] = []
    text = ""
    i = 0
    while i < len(template):
        c = template[i]
        if c in "{}" and template[i + 1 : i + 2] == c:
            text += c
            i += 2
        elif c == "{":
            end = template.find("}", i)
            if end < 0:
                raise ValueError("a brace '{' is not closed; write {{ for the character itself")
            parts += _text_parts(text)
            parts.append(_field(template[i + 1 : end]))
            text = ""
            i = end + 1
        elif c == "}":
            raise ValueError("a brace '}' closes nothing; write }} for the character itself")
        else:
            text += c
            i += 1
    return (*parts, *_text_parts(text))


def _text_parts(text: str) -> list[TemplatePart]:
    """Split text into what must stand there and blanks."""
    parts: list[TemplatePart] = []
    for piece in re.split(r"([ \t]+)", text):
        if piece.strip(" \t"):
            parts.append(TemplatePart("text", text=piece.encode()))
        elif piece:
            parts.append(TemplatePart("blank"))
    return parts


def _field(inner: str) -> TemplatePart:
    name, colon, width = inner.partition(":")
    if not _NAME.fullmatch(name):
        raise ValueError(f"{name[:40]!r} is no field name; use small letters, digits and _, such as {{torque}}")
    if colon and not (width.isascii() and width.isdigit() and 1 <= int(width[:4]) <= MAX_WIDTH):
        raise ValueError(f"{inner[:40]!r}: the width must be 1 to {MAX_WIDTH}")
    return TemplatePart(_WORDS.get(name, "number"), name, width=int(width) if colon else None)


def number_names(lines: LineFormat) -> tuple[str, ...]:
    """Give the numeric columns of a line, torque first."""
    names = [part.name for part in compile_template(lines.template) if part.kind == "number"]
    return tuple(sorted(names, key=lambda name: name != "torque"))


def template_faults(lines: LineFormat) -> list[str]:
    """Give everything that is wrong with a template; one line for the user each."""
    try:
        parts = compile_template(lines.template)
    except ValueError as error:
        return [f"template: {error}"]
    faults = []
    names = [part.name for part in parts if part.name and part.kind != "skip"]
    numbers = [part.name for part in parts if part.kind == "number"]
    if "torque" not in numbers:
        faults.append("template: it must have the field {torque}")
    faults += [f"template: {{{name}}} is there twice" for name in sorted({n for n in names if names.count(n) > 1})]
    faults += [f"fields.{name}: the template has no such number" for name in lines.fields if name not in numbers]
    faults += [f"template: {fault}" for fault in name_faults(numbers)]
    wraps_at = lines.counter_modulus or COUNTER_MOST
    if not lines.counter_step < wraps_at <= COUNTER_MOST:
        faults.append(f"counter_modulus: a counter cannot advance by {lines.counter_step} and wrap at {wraps_at}")
    faults += [
        f"fields: {fault}" for name, f in lines.fields.items() for fault in scale_faults(name, f.scale, f.offset)
    ]
    if any(c in lines.template for c in "\r\n"):
        faults.append("template: the end of the line is told by terminator, not here")
    faults += _word_faults(lines, names)
    if lines.thousands and lines.thousands == lines.decimal:
        faults.append(f"thousands: '{lines.thousands}' is the decimal mark already")
    if lines.check is not None and lines.checksum != "none":
        faults.append("check: give either checksum or check")
    faults += [f"template: {fault}" for fault in _border_faults(parts, lines)]
    return faults


def _word_faults(lines: LineFormat, names: list[str]) -> list[str]:
    """Find words whose good meaning is not said, and meanings of words that the template has not."""
    meanings = {"status": lines.status, **lines.words}
    faults = [
        f"{_key(name)}.ok: name the texts of {{{name}}} under which a reading is good"
        for name in ("status", *MORE_STATUS)
        if name in names and (name not in meanings or not any(meanings[name].ok))
    ]
    return faults + [f"words.{name}: the template has no such word" for name in lines.words if name not in names]


def _key(name: str) -> str:
    return name if name == "status" else f"words.{name}"


def _border_faults(parts: tuple[TemplatePart, ...], lines: LineFormat) -> list[str]:
    """Find fields whose end could not be seen."""
    faults = []
    for part, after in pairwise(parts):
        if part.kind in ("text", "blank", "sign") or part.width is not None:
            continue
        shown = f"{{{part.name}}}"
        if after.kind == "text":
            first = after.text[:1].decode("ascii", "replace")
            field = lines.fields.get(part.name, NumberField())
            digits = "0123456789" + ("" if field.form == "decimal" else "abcdefABCDEF")
            if part.kind == "number" and (first in digits or first == lines.decimal):
                faults.append(f"{shown} is followed by '{first}', which could be part of it; give its width")
        elif after.kind != "blank":
            text_then_number = part.kind != "number" and after.kind in ("number", "counter", "sign")
            number_then_text = part.kind in ("number", "counter") and after.kind in ("unit", "status", "skip", "sign")
            if part.kind == "skip" or not (text_then_number or number_then_text):
                faults.append(
                    f"between {shown} and {{{after.name}}} nothing tells where the first ends; give its width"
                )
    return faults
