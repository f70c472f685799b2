"""Learning an unknown transducer: from what it sends to a description, and what could not be told.

Nothing is sent and nothing is guessed silently: whatever the bytes leave open is said in ``unknown``, and without a
unit no usable description is made.

Steps
-----
1. Text or binary; what ends a line; the decimal mark.
2. The build that most lines share; words in a number's place are marks.
3. Each column over all lines: a counter steps evenly, torque has the unit beside it or moves most, the rest is named
   by its unit or numbered.
4. Status words, frame marks and check sum; sign and rate as seen.
5. The description is applied to the same bytes: what it does not decode is told.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from logger.decoder.build import build_decoder
from logger.description import BleSettings, Description, SerialSettings
from logger.errors import InputError
from logger.header import TransducerFacts
from logger.learn_columns import NumberColumn, name_columns, number_columns
from logger.learn_lines import MIN_LINES, Notes, find_decimal, find_family, find_terminator, split_lines, without_star
from logger.learn_template import line_format
from logger.samples import Chunk, EventKind
from logger.units import canonical_unit

if TYPE_CHECKING:
    from logger.decoder.template import LineFormat

NOMINAL_RATES: Final = (
    1, 2, 4, 5, 8, 10, 12.5, 16, 20, 25, 30, 40, 50, 60, 80, 100, 120, 125, 160, 200, 240, 250, 320, 400, 500, 600,
    640, 800, 1000, 1200, 1250, 1600, 2000, 2400, 2500, 3200, 4000, 4800, 5000,
)  # fmt: skip
RATE_SNAP: Final = 0.01  # of a nominal rate: device clocks and a short listen are worse than we would like
SHOWN: Final = 8  # lines shown raw beside decoded
COUNTS: Final = 10_000.0  # integers of this size without a unit are raw counts of a converter


@dataclass(frozen=True, slots=True)
class Learned:
    """What was found out.

    Attributes
    ----------
    description : Description or None
        None when the bytes do not suffice; ``missing`` says what the user must add.
    found, unknown : tuple of str
        One line each for the user.
    missing : tuple of str
        ``unit``: what must be given before the description can be used.
    shown : tuple of (str, str)
        Raw line, what it decodes to.
    """

    description: Description | None
    found: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    shown: tuple[tuple[str, str], ...] = ()


def learn(
    chunks: Sequence[Chunk],
    *,
    name: str = "learned transducer",
    unit: str = "",
    scale: float = 1.0,
    serial: SerialSettings | None = None,
    ble: BleSettings | None = None,
) -> Learned:
    """Find out how a device's readings are laid out.

    Parameters
    ----------
    chunks : sequence of Chunk
        What was heard.
    name : str
        For the description.
    unit, scale : str, float
        What the user knows and the bytes do not say.
    serial, ble : optional
        Settings it was heard with.
    """
    data = b"".join(chunk.data for chunk in chunks)
    notes = Notes()
    layout = _layout(data, scale, notes)
    if layout is None:
        return Learned(None, tuple(notes.found), tuple(notes.unknown))
    torque, format_, count = layout
    known_unit = unit or torque.unit
    _note_values(torque, known_unit, notes)
    rate = _rate(chunks, count, notes)
    if not known_unit:
        return Learned(None, tuple(notes.found), tuple(notes.unknown), ("unit",))
    try:
        description = Description(
            name=name,
            link="ble" if ble is not None else "serial",
            serial=serial,
            ble=ble,
            lines=format_,
            transducer=TransducerFacts(unit=canonical_unit(known_unit), sign=_sign(torque, notes), rate_hz=rate),
        )
    except ValueError as error:
        notes.unknown.append(f"a template cannot tell these lines' numbers apart ({error}); describe them by hand")
        return Learned(None, tuple(notes.found), tuple(notes.unknown))
    shown = _apply(description, data, notes)
    return Learned(description, tuple(notes.found), tuple(notes.unknown), (), shown)


def _layout(data: bytes, scale: float, notes: Notes) -> tuple[NumberColumn, LineFormat, int] | None:
    """Give the torque's column, the layout and the number of lines; None if the bytes do not show them."""
    lines = _text_lines(data, notes)
    if lines is None:
        return None
    decimal, doubt = find_decimal(lines)
    if doubt:
        notes.unknown.append(doubt)
    family = find_family([without_star(line) for line in lines], decimal)
    if len(family.lines) < MIN_LINES:
        notes.unknown.append(
            f"only {len(family.lines)} lines are built alike; listen longer, or it is no text transducer"
        )
        return None
    columns = name_columns(number_columns(family, decimal), notes)
    torque = next((column for column in columns if column.name == "torque"), None)
    if torque is None:
        notes.unknown.append("no number moves: load the transducer while it is listened to")
        return None
    return torque, line_format(family, columns, lines, data, decimal, scale, notes), len(lines)


def _text_lines(data: bytes, notes: Notes) -> list[str] | None:
    if not data:
        notes.unknown.append("nothing came: it may be off, at another speed, or answer only when asked (--poll)")
        return None
    odd = sum(byte in range(0x80, 0x100) or byte in b"\x00" for byte in data) / len(data)
    terminator = find_terminator(data)
    if not terminator or odd > 0.2:
        notes.unknown.append(_about_binary(data, odd))
        return None
    notes.found.append(f"lines end with {terminator}")
    return [line.decode("utf-8", "replace") for line in split_lines(data)]


def _about_binary(data: bytes, odd: float) -> str:
    """Say what can be seen in bytes that are no lines."""
    if odd <= 0.2:
        return "nothing ends a line (no CR, no LF); describe it by hand"
    array = np.frombuffer(data[:8192], np.uint8)
    lengths = range(2, min(130, len(array) // 4))
    same = {n: float(np.mean(array[n:] == array[:-n])) for n in lengths}
    best = max(same, key=lambda n: (round(same[n], 2), -n), default=0)
    if best and same[best] > 0.3:
        return (
            f"this is no text: bytes repeat every {best}, so it sends frames of {best} bytes (or the speed is "
            "wrong); describe them as a [frame]"
        )
    return "this is no text and repeats nothing: most likely the speed (baud) is wrong"


def _note_values(torque: NumberColumn, unit: str, notes: Notes) -> None:
    if not unit:
        counts = torque.integer and float(np.abs(torque.values).max()) >= COUNTS
        notes.unknown.append(
            "the values are raw counts of a converter: write the description with --unit 'N·m', then calibrate it "
            "with two loads (heldwheel-log weigh --two-point)"
            if counts
            else "the unit is not sent: read it off the device and give it with --unit"
        )
    elif torque.unit:
        notes.found.append(f"torque in {canonical_unit(torque.unit)} (sent as '{torque.unit}')")


def _sign(torque: NumberColumn, notes: Notes) -> Literal["signed"] | None:
    if (torque.values < 0).any():
        notes.found.append("readings have a sign")
        return "signed"
    if any(text.startswith("+") for text in torque.texts):
        notes.found.append("readings have a sign (only + was seen)")
        return "signed"
    notes.unknown.append(
        "no sign was seen: load it the other way once; a transducer that shows no sign has no direction"
    )
    return None


def _rate(chunks: Sequence[Chunk], lines: int, notes: Notes) -> float | None:
    """Give the rate of lines, by the bytes that came after the first chunk: that one may hold a backlog."""
    elapsed = chunks[-1].arrival_s - chunks[0].arrival_s
    later, size = sum(len(chunk.data) for chunk in chunks[1:]), sum(len(chunk.data) for chunk in chunks)
    if len(chunks) < 3 or elapsed <= 0:
        notes.unknown.append("the rate: everything came at once")
        return None
    rate = lines * later / size / elapsed
    nearest = min(NOMINAL_RATES, key=lambda nominal: abs(math.log(nominal / rate)))
    if abs(rate / nearest - 1) <= max(RATE_SNAP, 2.0 / lines):
        notes.found.append(f"{rate:.4g} readings a second: taken as {nearest:g}")
        return float(nearest)
    notes.found.append(f"{rate:.4g} readings a second, which is no usual rate")
    return float(f"{rate:.3g}")


def _apply(description: Description, data: bytes, notes: Notes) -> tuple[tuple[str, str], ...]:
    """Decode what was heard with the new description, and show both."""
    decoder = build_decoder(description)
    decoded = decoder.feed(data)
    garbage = sum(event.count for event in decoded.events if event.kind is EventKind.GARBAGE)
    if garbage > 0.02 * len(data):
        notes.unknown.append(f"{garbage} of {len(data)} bytes do not fit the description")
    shown = []
    for line in split_lines(data)[:SHOWN]:
        one = build_decoder(description).feed(line + b"\r\n")
        values = ", ".join(f"{c.name} {one.columns[c.name][0]:g} {c.unit}".strip() for c in decoder.columns if len(one))
        shown.append((line.decode("utf-8", "replace"), values or "not a reading"))
    return tuple(shown)


def usable(learned: Learned) -> Description:
    """Give the description, if it can be used.

    Raises
    ------
    InputError
        Something must be added first; the text says what.
    """
    if learned.description is None:
        why = "; ".join(learned.unknown) or "nothing was recognised"
        raise InputError(f"no description can be written yet: {why}")
    return learned.description
