"""The text of a recording: header, column names, rows and events, as ``recording`` writes them."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any, Final

import msgspec
import numpy as np

from logger.edges.toml_file import format_toml
from logger.edges.units import column_unit, is_force
from logger.header import SCHEMA

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.header import Header
    from logger.samples import Column, Event, Floats

FIRST_LINE: Final = f"# {SCHEMA}\n"
MAX_TEXT: Final = 300  # characters of an event's text
LEAST_PLAIN, MOST_PLAIN = 1e-6, 1e15  # largest value of a column that is rounded: all powers of ten used are exact
DOUBLE_DIGITS: Final = 15  # that every float holds exactly
SINGLE_DIGITS: Final = 12  # 9 hold a 32-bit float; three more for values far below the largest one beside them
_NUMBERS: Final = msgspec.json.Encoder()
_BEFORE_FORMULA: Final = re.compile(r"""[,;\t](?=[ "']*[-=+@])""")


def column_names(columns: Sequence[Column]) -> tuple[str, ...]:
    """Give the names in the file, unit included: ``torque_lbf_in``, ``angle_deg``, ``late_ms``."""
    named = ("force" if c.name == "torque" and is_force(c.unit) else c.name for c in columns)
    units = (column_unit(c.unit) for c in columns)
    return tuple(f"{name}_{unit}" if unit else name for name, unit in zip(named, units, strict=True))


def format_header(header: Header) -> str:
    """Give the header's lines."""
    toml = format_toml(header)
    if not toml.startswith("schema = "):  # left away where it is the record's default
        toml = f'schema = "{SCHEMA}"\n' + toml
    lines = (
        spreadsheet_safe(toml).removesuffix("\n").split("\n")
    )  # not splitlines: a text may hold other line separators
    return FIRST_LINE + "".join(f"# {line}".rstrip() + "\n" for line in lines)


def format_event(event: Event) -> str:
    """Give an event's line."""
    text = "".join(c if c.isprintable() else " " for c in event.text[:MAX_TEXT]).strip()
    kind = event.kind.value.replace(" ", "_")
    time_s = event.time_s if math.isfinite(event.time_s) else 0.0
    return f"# event time_s={time_s:.6f} kind={kind} count={event.count} text={spreadsheet_safe(text)}\n"


def spreadsheet_safe(text: str) -> str:
    r"""Write separators as escapes where a spreadsheet would split there and run what follows as a formula.

    Within a TOML string the escape reads as the same character; ``logger.recordings.stored`` reads those of events.

    >>> spreadsheet_safe('name = "Gauge,=1+1"')
    'name = "Gauge\\u002C=1+1"'
    """
    return _BEFORE_FORMULA.sub(lambda found: f"\\u{ord(found[0]):04X}", text)


def format_rows(time_s: Floats, values: Sequence[Floats]) -> bytes:
    """Give rows: time to the microsecond, values with as many digits as they have; NaN is an empty cell.

    A JSON encoder writes the numbers: the shortest text that gives the same float again, three times as fast as ``%``.
    """
    if not len(time_s):
        return b""
    rows = list(zip(time_s.round(6).tolist(), *map(_plain, values), strict=True))
    return _NUMBERS.encode(rows)[2:-2].replace(b"],[", b"\n").replace(b"null", b"") + b"\n"


def _plain(values: Floats) -> list[Any]:
    """Give the numbers that a device delivered, without the noise of computing with them.

    A number that a device wrote in at most 15 digits, or a raw integer times a decimal scale, is found again among
    numbers of 15 digits. A 32-bit float has fewer, and 15 would show the noise of its conversion.
    """
    known = values[np.isfinite(values)]
    largest = float(np.abs(known).max(initial=0.0))
    if LEAST_PLAIN < largest < MOST_PLAIN:
        whole = known.astype(np.int64)
        if len(known) == len(values) and np.array_equal(whole, known):
            return list(whole.tolist())
        single = np.array_equal(known, known.astype(np.float32)) and not np.array_equal(known, known.round(9))
        values = values.round((SINGLE_DIGITS if single else DOUBLE_DIGITS) - math.ceil(math.log10(largest)))
    return list(values.tolist())
