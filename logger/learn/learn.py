"""Learning an unknown transducer: from what it sends to a description, and what could not be told.

Nothing is sent and nothing is guessed silently: whatever the bytes leave open is said in ``unknown``; what a reading
would depend on is asked for (``missing``), and without it no description is made.

Steps:
1. Text, binary frames, or packets of a radio; what ends a line; check sum; decimal mark and thousands.
2. The build that most lines share; words in a number's place are marks.
3. Each number over all lines: what counts, rises, stood still, holds the peak of another or has a unit of something
   else is no torque. If one is left, it is taken; if several are, the user chooses.
4. Whatever stood still between the numbers is a number or a listed word of the description, never a part of the frame.
5. The description is applied to the same bytes: what it does not decode is told, and one that decodes too little is not
   offered.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal

import msgspec
import numpy as np

from logger.decoder.build import build_decoder
from logger.decoder.description import BleSettings, Description, SerialSettings
from logger.edges.units import is_force, reading_unit
from logger.errors import InputError
from logger.header import TransducerFacts
from logger.learn.binary import BinaryLayout, binary_layout
from logger.learn.lines import FRAMED, Notes, split_frames, split_lines
from logger.learn.text import TextLayout, looks_like_text, parity_of, text_layout, without_parity
from logger.samples import Chunk, EventKind

if TYPE_CHECKING:
    from logger.learn.columns import NumberColumn
    from logger.links.ble_pick import Offer

NOMINAL_RATES: Final = (
    1, 2, 4, 5, 8, 10, 12.5, 16, 20, 25, 30, 40, 50, 60, 80, 100, 120, 125, 160, 200, 240, 250, 320, 400, 500, 600,
    640, 800, 1000, 1200, 1250, 1600, 2000, 2400, 2500, 3200, 4000, 4800, 5000,
)  # fmt: skip
RATE_SNAP: Final = (
    0.018  # of a nominal rate: device clocks, a busy computer and a short listen are worse than we would like
)
SHOWN: Final = 8  # lines shown raw beside decoded
COUNTS: Final = 10_000.0  # integers of this size without a unit are raw counts of a converter
FITS: Final = 0.8  # of what came must be understood before a description is offered


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the user knows and the bytes do not say; empty or None: it is found out."""

    unit: str = ""
    scale: float | None = None  # reading = number sent x scale
    field: str = ""  # which number is the torque: its name, its label, or its number in a line
    # decimal, thousands: marks within numbers
    decimal: str = ""
    thousands: str | None = None
    lines: str = ""  # how the lines begin that hold the torque
    template: str = ""  # the layout of a line as a whole


@dataclass(frozen=True, slots=True)
class TorqueCandidate:
    """A number that may be the torque."""

    name: str  # what it is chosen by
    number: int  # its place among the numbers of a line or sample, from 1
    unit: str  # beside it; empty: none
    values: np.ndarray  # shape (n,); all that was heard, unscaled


@dataclass(frozen=True, slots=True)
class Learned:
    """What was found out."""

    description: Description | None  # None when the bytes do not suffice; ``missing`` says what the user must add
    # found, unknown: one line each for the user
    found: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()
    # what must be given before the description can be used: ``unit``, ``scale``, ``field``, ``decimal``, ``thousands``,
    # ``lines``, ``template``
    missing: tuple[str, ...] = ()
    shown: tuple[tuple[str, str], ...] = ()  # (str, str); raw line, what it decodes to
    choices: tuple[TorqueCandidate, ...] = ()  # the numbers that may be the torque, also where one was taken
    chosen: str = ""  # the one that was taken; empty: none yet
    unit_sent: bool = False  # the unit stands in what is sent
    fits: float = 0.0  # share of the bytes that the description explains


def learn(
    chunks: Sequence[Chunk],
    *,
    name: str = "learned transducer",
    wanted: Wanted | None = None,
    serial: SerialSettings | None = None,
    ble: BleSettings | None = None,
    offer: Offer | None = None,
) -> Learned:
    """Find out how a device's readings are laid out.

    Args:
        chunks: What was heard; of Bluetooth, one notification each.
        name: For the description.
        wanted: What the user knows and the bytes do not say.
        serial, ble: Settings it was heard with.
        offer: The Bluetooth characteristic, with what it says about its format.

    Raises:
        InputError: What the user says contradicts what is sent.
    """
    wanted = wanted or Wanted()
    data = b"".join(chunk.data for chunk in chunks)
    notes = Notes()
    if not data:
        notes.unknown.append("nothing came: it may be off, at another speed, or answer only when asked (--poll)")
        return _learned(notes)
    layout: TextLayout | BinaryLayout | None
    parity = parity_of(data) if serial is not None and not looks_like_text(data) else ""
    if serial is not None and parity:
        serial, chunks = _without_parity(serial, chunks, parity, notes)
        data = without_parity(data)
    if looks_like_text(data):
        layout = text_layout(data, wanted, notes)
    else:
        layout = binary_layout([c.data for c in chunks] if ble is not None else data, wanted, notes, offer)
    if layout is None:
        return _learned(notes)
    choices = tuple(TorqueCandidate(c.name, number, c.unit, c.values) for number, c in layout.able)
    learned = replace(_learned(notes), choices=choices)
    if layout.torque is None:
        if "field" in notes.missing and not wanted.unit and not any(choice.unit for choice in choices):
            notes.missing.append("unit")
            notes.unknown.append("the unit is not sent: read it off the device and give it with --unit")
        return _with(learned, notes)
    unit = _unit(layout.torque, layout.sent_unit, wanted, notes)
    learned = replace(learned, chosen=layout.torque.name, unit_sent=bool(layout.sent_unit))
    rate = _rate(chunks, layout.samples, notes)
    if _unsaid(layout, unit, wanted, notes):
        return _with(learned, notes)
    facts = TransducerFacts(unit=unit, sign=_sign(layout.torque, notes), rate_hz=rate)
    return _described(learned, layout, facts, name, (serial, ble), data, chunks, wanted, notes)


def _without_parity(
    serial: SerialSettings, chunks: Sequence[Chunk], parity: str, notes: Notes
) -> tuple[SerialSettings, list[Chunk]]:
    """Say that the eighth bit is parity, and take it off."""
    notes.found.append(f"7 data bits and {parity} parity")
    serial = msgspec.structs.replace(serial, bits=7, parity=parity)
    return serial, [Chunk(chunk.arrival_s, without_parity(chunk.data)) for chunk in chunks]


def _unsaid(layout: TextLayout | BinaryLayout, unit: str, wanted: Wanted, notes: Notes) -> bool:
    """Ask for the unit and scale that nobody said; tell whether no description can be made yet."""
    if isinstance(layout, BinaryLayout) and layout.needs_scale and wanted.scale is None:
        notes.missing.append("scale")
        notes.unknown.append(
            "what one count is worth: --scale 0.01 if the display shows 12.34 where 1234 is read below"
        )
    if not unit:
        notes.missing.append("unit")
    return bool(notes.missing) and not (set(notes.missing) <= {"unit", "scale"} and unit and wanted.scale is not None)


def _learned(notes: Notes) -> Learned:
    return Learned(None, tuple(notes.found), tuple(notes.unknown), tuple(notes.missing))


def _with(learned: Learned, notes: Notes) -> Learned:
    return replace(learned, found=tuple(notes.found), unknown=tuple(notes.unknown), missing=tuple(notes.missing))


def _described(
    learned: Learned,
    layout: TextLayout | BinaryLayout,
    facts: TransducerFacts,
    name: str,
    heard: tuple[SerialSettings | None, BleSettings | None],
    data: bytes,
    chunks: Sequence[Chunk],
    wanted: Wanted,
    notes: Notes,
) -> Learned:
    """Make the description, apply it to what was heard, and offer it if it fits."""
    serial, ble = heard
    force = is_force(facts.unit)
    try:
        description = Description(
            name=name,
            link="ble" if ble is not None else "serial",
            measures="force" if force else "torque",
            notes=_remark(layout.torque, wanted),
            serial=serial,
            ble=ble,
            transducer=facts,
            **layout.tables(wanted, "force" if force else "torque"),
        )
    except ValueError as error:
        notes.missing.append("template")
        notes.unknown.append(f"a template cannot tell these lines' numbers apart ({error}); give it with --template")
        return _with(learned, notes)
    fits, shown = _apply(description, data, chunks, notes)
    if fits < FITS:
        notes.unknown.append(
            f"only {100 * fits:.0f} % of what came fits what was recognised: too little for a description"
        )
        return replace(_with(learned, notes), shown=shown, fits=fits)
    return replace(_with(learned, notes), description=description, shown=shown, fits=fits)


def _remark(torque: NumberColumn | None, wanted: Wanted) -> str:
    """Say in the description itself what its readings are not yet."""
    if torque is not None and _is_counts(torque) and wanted.scale is None:
        return "RAW COUNTS, not calibrated: calibrate it with two loads (heldwheel-log weigh --two-point) before use"
    return ""


def _is_counts(torque: NumberColumn) -> bool:
    return not torque.unit and torque.integer and float(np.abs(torque.values).max()) >= COUNTS


def _unit(torque: NumberColumn, sent: str, wanted: Wanted, notes: Notes) -> str:
    """Give the unit: as sent, or as the user says; empty if nobody says it.

    Raises:
        InputError: The user says another unit than the device.
    """
    if sent:
        shown = reading_unit(sent)
        if wanted.unit and reading_unit(wanted.unit) != shown:
            raise InputError(
                f"the device sends '{sent}' itself: --unit {wanted.unit} contradicts it; leave --unit away"
            )
        kind = "a force" if is_force(shown) else "torque"
        notes.found.append(f"{kind} in {shown} (sent as '{sent}')")
        return shown
    if _is_counts(torque) and wanted.scale is None:
        notes.unknown.append(
            "the values are raw counts of a converter, no torque yet: write the description with --unit 'N·m', then "
            "calibrate it with two loads (heldwheel-log weigh --two-point)"
        )
    elif not wanted.unit:
        notes.unknown.append("the unit is not sent: read it off the device and give it with --unit")
    if torque.integer and wanted.scale is None and not _is_counts(torque):
        notes.unknown.append(
            "only whole numbers are sent: if the display shows 45.67 where 4567 is sent, give --scale 0.01"
        )
    return reading_unit(wanted.unit) if wanted.unit else ""


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


def _rate(chunks: Sequence[Chunk], samples: int, notes: Notes) -> float | None:
    """Give the rate of readings: the slope of bytes against arrival, first chunk left out (it may hold a backlog)."""
    elapsed = chunks[-1].arrival_s - chunks[0].arrival_s
    if len(chunks) < 3 or elapsed <= 0:
        notes.unknown.append("the rate: everything came at once")
        return None
    size = sum(len(chunk.data) for chunk in chunks)
    arrival = np.array([chunk.arrival_s for chunk in chunks])
    came = np.cumsum([len(chunk.data) for chunk in chunks])
    ends = (came[-1] - came[0]) / elapsed
    slope = float(np.polyfit(arrival - arrival[0], came, 1)[0]) if len(chunks) >= 20 else ends
    rates = [samples / size * one for one in (slope, ends)]
    pairs = ((rate, float(nominal)) for rate in rates for nominal in NOMINAL_RATES)
    rate, nominal = min(pairs, key=lambda pair: abs(math.log(pair[0] / pair[1])))
    if abs(rate / nominal - 1) <= max(RATE_SNAP, 2.0 / samples):
        notes.found.append(f"{rate:.4g} readings a second: taken as {nominal:g}")
        return float(nominal)
    notes.found.append(f"{rate:.4g} readings a second, which is no usual rate")
    return float(f"{rate:.3g}")


def _apply(
    description: Description, data: bytes, chunks: Sequence[Chunk], notes: Notes
) -> tuple[float, tuple[tuple[str, str], ...]]:
    """Decode what was heard with the new description, and show both."""
    decoder = build_decoder(description)
    decoder.reset()
    packets = description.notification is not None
    decoded = decoder.feed(*[chunk.data for chunk in chunks]) if packets else decoder.feed(data)
    whole = len(chunks) if packets else len(data)
    garbage = sum(event.count for event in decoded.events if event.kind is EventKind.GARBAGE)
    known = float(np.isfinite(decoded.columns["torque"]).mean()) if len(decoded) else 0.0
    if garbage > 0.02 * whole:
        notes.unknown.append(f"{garbage} of {whole} {'packets' if packets else 'bytes'} do not fit the description")
    shown = []
    for raw in _pieces(description, data, chunks)[:SHOWN]:
        one = build_decoder(description).feed(raw)
        values = ", ".join(f"{c.name} {one.columns[c.name][0]:g} {c.unit}".strip() for c in decoder.columns if len(one))
        shown.append((_readable(raw), values or "not a reading"))
    return max(0.0, 1 - garbage / max(1, whole)) * (known if known > 0 else float(len(decoded) > 0)), tuple(shown)


def _pieces(description: Description, data: bytes, chunks: Sequence[Chunk]) -> list[bytes]:
    """Give what was heard one reading or packet at a time."""
    if description.notification is not None:
        return [chunk.data for chunk in chunks[:SHOWN]]
    if description.frame is not None:
        sync, length = description.frame.sync_bytes, description.frame.packet.length or 0
        start = data.find(sync)
        return (
            [data[at : at + length + len(sync)] for at in range(start, start + SHOWN * length, length)]
            if length
            else []
        )
    if description.lines is not None and description.lines.terminator == FRAMED:
        return split_frames(data)[0][:SHOWN]
    return [line + b"\r\n" for line in split_lines(data)[:SHOWN]]


def _readable(raw: bytes) -> str:
    text = raw.strip(b"\r\n")
    if all(32 <= byte < 127 or byte >= 0x80 for byte in text.strip(b"\x02\x03")):
        return text.decode("utf-8", "replace")
    return text[:32].hex(" ").upper() + (" …" if len(text) > 32 else "")


def usable(learned: Learned) -> Description:
    """Give the description, if it can be used.

    Raises:
        InputError: Something must be added first; the text says what.
    """
    if learned.description is None:
        why = "; ".join(learned.unknown) or "nothing was recognised"
        raise InputError(f"no description can be written yet: {why}")
    return learned.description
