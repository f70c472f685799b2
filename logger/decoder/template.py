r"""How a text line is laid out: the template of a transducer's description, checked and compiled by us.

A template is the line as the device sends it, with a name in braces where a value stands::

    "{torque}"                              12.34
    "{counter},{torque},{angle}"            000123,+0012.34,15.0
    "ST,{sign}{torque} {unit}"              ST,-  12.34 lbf.in
    "{status:2},{torque:7}{unit}"           OL,+000.00N.m

Conventions
-----------
- ``{torque}`` and any other name that is not listed here is a number and becomes a column. Blanks around it are
  passed over; ``{name:7}`` takes exactly seven characters.
- ``{counter}`` counts lines, ``{unit}`` and ``{status}`` are text, ``{sign}`` is ``+``, ``-`` or blank before a
  separate magnitude, ``{skip}`` is anything up to what follows.
- A blank in a template stands for any number of blanks, also none.
- Frame marks are written as escapes: ``"\u0002{torque}\u0003"``.

No regular expression is taken from a file: a hostile one could hang the reader.
"""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

from logger.header import Record

MAX_LINE = 512  # bytes; a longer line is garbage
MAX_TEMPLATE = 200

_Mark = Annotated[str, msgspec.Meta(min_length=1, max_length=40)]


class NumberField(Record, frozen=True, kw_only=True):
    """What a numeric field of the template means: value = number x scale + offset."""

    unit: Annotated[str, msgspec.Meta(max_length=20)] = ""
    scale: float = 1.0
    offset: float = 0.0


class StatusWords(Record, frozen=True, kw_only=True):
    """What the texts of ``{status}`` mean. One that is not listed makes its reading not valid, and is told."""

    ok: tuple[str, ...] = ("",)
    overload: tuple[_Mark, ...] = ()
    error: tuple[_Mark, ...] = ()
    stale: tuple[_Mark, ...] = ()
    battery_low: tuple[_Mark, ...] = ()


class LineFormat(Record, frozen=True, kw_only=True):
    """A text line.

    Attributes
    ----------
    template : str
        The line, with names in braces; see the module.
    terminator : str
        What ends a line; ``any`` takes CR, LF and CRLF.
    decimal : str
        Decimal mark.
    fields : dict of str to NumberField
        Unit and scale per numeric field of the template.
    overload, error : tuple of str
        Marks that stand where the torque would: ``OL``, ``----``.
    status : StatusWords
        Meaning of the ``{status}`` field.
    ignore : tuple of str
        Lines that begin with one of these are no readings and no garbage: banners, comments.
    counter_modulus : int or None
        Where ``{counter}`` wraps to 0; None: never.
    counter_step : int
        By how much it advances from line to line.
    checksum : str
        ``xor``: the line ends in ``*`` and two hexadecimal digits: the XOR of all between its first character and
        ``*``.
    """

    template: Annotated[str, msgspec.Meta(min_length=1, max_length=MAX_TEMPLATE)]
    terminator: Literal["CR", "LF", "CRLF", "any"] = "any"
    decimal: Literal[".", ","] = "."
    fields: dict[str, NumberField] = msgspec.field(default_factory=dict)
    overload: tuple[_Mark, ...] = ("OL", "+OL", "-OL")
    error: tuple[_Mark, ...] = ()
    status: StatusWords = msgspec.field(default_factory=StatusWords)
    ignore: tuple[_Mark, ...] = ()
    counter_modulus: Annotated[int, msgspec.Meta(ge=2)] | None = None
    counter_step: Annotated[int, msgspec.Meta(ge=1)] = 1
    checksum: Literal["none", "xor"] = "none"


def template_faults(lines: LineFormat) -> list[str]:
    """Give everything that is wrong with a template; one line for the user each."""
    raise NotImplementedError
