"""Learning an unknown transducer in the window: what has been heard so far, what it amounts to, what it is called.

The recognising is ``logger.learn.learn``'s; here its answer is made ready to be looked at and completed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Literal

import msgspec
import numpy as np

from logger.decoder.build import build_decoder
from logger.decoder.description import Description, Poll
from logger.edges.units import parse_number, torque_factor
from logger.errors import HeldwheelError
from logger.learn.learn import Learned, TorqueCandidate, Wanted
from logger.learn.lines import FRAMED, split_frames, split_lines
from logger.learn.radio import learn_heard

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.learn.hear import Heard
    from logger.samples import Chunk

SIGN_WORDS = {
    "signed": "+ is clockwise",
    "reversed": "− is clockwise",
    "none": "It shows no sign",
}
LOADED = 0.5  # of the greatest departure from where it began: by then the lever is being loaded
LAST_S = 2.0  # the last moments: a lever is pushed and let go in them
ASKED = {
    "field": "which number is the torque",
    "scale": "what one count is worth",
    "decimal": "what the comma means",
    "thousands": "what sets thousands apart",
    "lines": "how the lines of the torque begin",
    "template": "the layout of a line",
    "characteristic": "which characteristic it is",
    "both ways": "nothing, but load it the other way as well",
}
ANY_UNIT = "N·m"  # stands in while the unit is not known: figures can be shown, no description is made


@dataclass(frozen=True, slots=True)
class ShownCandidate:
    """A number that may be the torque."""

    name: str  # what it is chosen by
    number: int  # its place among the numbers of a line or sample, from 1
    unit: str  # beside it; empty: none
    # least, greatest, now: over all that was heard; the last one
    least: float
    greatest: float
    now: float
    # how much of its whole movement fell into the last moments: 0 to 1. It shows which number follows the lever.
    moving: float


@dataclass(frozen=True, slots=True)
class LearningState:
    """What has been heard amounts to this."""

    learned: Learned  # what was recognised and what was not
    # how the bytes become readings; its unit is only certain where ``unit_sent`` or it was given
    draft: Description | None = None
    unit_sent: bool = False  # the device names its unit
    candidates: tuple[ShownCandidate, ...] = ()  # in the order of the line
    chosen: str = ""  # the candidate that the draft takes
    # what the user must say before a description can be made, the unit apart: ``field``, ``scale``, ``decimal`` ...
    asked: tuple[str, ...] = ()
    readings: int = 0  # how many were decoded
    fits: float = 0.0  # share of the bytes that the layout explains
    now: float | None = None  # the last reading
    first_load: int = 0  # sign of the first load; 0 while none was seen
    raw: str = ""  # the last whole line as it came


@dataclass(frozen=True, slots=True)
class Naming:
    """What the user adds, as typed."""

    name: str = ""
    unit: str = ""
    sign: str = ""
    capacity: str = ""
    accuracy: str = ""
    serial: str = ""


def look_at(heard: Heard, wanted: Wanted | None = None) -> LearningState:
    """Find out what was heard; runs in the worker.

    Args:
        wanted: What the user has said so far.
    """
    wanted = wanted or Wanted()
    learned = learn_heard(heard, wanted=wanted)
    asked = tuple(one for one in dict.fromkeys(learned.missing) if one != "unit")
    candidates = tuple(_candidate(choice, heard) for choice in learned.choices)
    whole = learned if learned.description is not None else _provisional(heard, learned, wanted)
    if whole.description is None:
        return LearningState(learned, candidates=candidates, asked=asked)
    chunks = _chunks(heard, whole.description)
    decoded = build_decoder(whole.description).feed(*(chunk.data for chunk in chunks))
    torque = decoded.columns["torque"]
    torque = torque[np.isfinite(torque)]
    return LearningState(
        replace(whole, missing=learned.missing, unknown=learned.unknown),
        whole.description,
        learned.unit_sent,
        candidates,
        whole.chosen,
        asked,
        len(torque),
        whole.fits,
        float(torque[-1]) if len(torque) else None,
        _first_load(torque),
        _last_raw(whole.description, chunks),
    )


def _provisional(heard: Heard, learned: Learned, wanted: Wanted) -> Learned:
    """Recognise as if what is still to be said were said, so that figures can be shown: no description comes of it."""
    changes: dict[str, Any] = {}
    if not learned.unit_sent and not wanted.unit:
        changes["unit"] = ANY_UNIT
    if "field" in learned.missing and learned.choices:
        moved = max(
            learned.choices, key=lambda one: float(np.ptp(one.values)) / (1.0 + abs(float(np.median(one.values))))
        )
        changes["field"] = str(moved.number)
        if moved.unit:
            changes.pop("unit", None)
    if "scale" in learned.missing:
        changes["scale"] = 1.0
    return learn_heard(heard, wanted=replace(wanted, **changes)) if changes else learned


def _chunks(heard: Heard, description: Description) -> list[Chunk]:
    """Give what came of the source that a description reads."""
    if heard.radio and description.ble is not None:
        return list(heard.radio[description.ble.characteristic][1])
    return list(heard.chunks)


def _candidate(choice: TorqueCandidate, heard: Heard) -> ShownCandidate:
    """Give a number with how much it moves just now."""
    values = choice.values[np.isfinite(choice.values)]
    chunks = max([heard.chunks, *(chunks for _, chunks in heard.radio.values())], key=len)
    elapsed_s = chunks[-1].arrival_s - chunks[0].arrival_s
    last = values[-max(5, int(len(values) * (LAST_S / max(LAST_S, elapsed_s)))) :]
    spread = float(np.ptp(values))
    return ShownCandidate(
        choice.name, choice.number, choice.unit, float(values.min()), float(values.max()), float(values[-1]),
        float(np.ptp(last)) / spread if spread else 0.0,
    )  # fmt: skip


def _last_raw(description: Description, chunks: Sequence[Chunk]) -> str:
    """Give the last whole reading as it came: a line, or bytes in hexadecimal digits."""
    if description.lines is None:
        return chunks[-1].data[:32].hex(" ").upper() if chunks else ""
    data = b"".join(chunk.data for chunk in chunks[-50:])
    pieces = split_frames(data)[0] if description.lines.terminator == FRAMED else split_lines(data)
    return (pieces or [b""])[-1].decode("utf-8", "replace")


def _first_load(torque: np.ndarray) -> int:
    if len(torque) < 2:
        return 0
    away = torque - np.median(torque[: max(1, len(torque) // 20)])
    most = float(np.abs(away).max())
    return int(np.sign(away[np.argmax(np.abs(away) > LOADED * most)]))


def proposed(look: LearningState) -> Naming:
    """Give what the bytes themselves say, for the user to complete: the first load was to be clockwise."""
    signed = look.draft is not None and look.draft.transducer.sign == "signed"
    sign = ("reversed" if look.first_load < 0 else "signed") if signed else "none"
    unit = look.draft.unit if look.draft is not None and look.unit_sent else ""
    return Naming(unit=unit, sign=sign)


def complete(
    look: LearningState, naming: Naming, *, request: str = "", interval_s: float = 0.1
) -> tuple[Description | None, dict[str, str]]:
    """Give the description with what the user has added, or per field why it cannot be used.

    Args:
        look: What was heard.
        naming: What the user says.
        request, interval_s: What was asked again and again, where the device answers only then.
    """
    if look.draft is None:
        return None, {"": "; ".join(look.learned.unknown) or "Nothing was recognised yet."}
    wrong = {
        key: text
        for key, text in (("name", "Give it a name, to find it again."), ("unit", "Read the unit off the device."))
        if not getattr(naming, key).strip()
    }
    capacity = _number(naming.capacity, "capacity", wrong)
    accuracy = _number(naming.accuracy.replace("%", "").replace("±", ""), "accuracy", wrong)
    if look.asked:
        wrong[""] = "Say first: " + ", ".join(ASKED.get(one, one) for one in look.asked) + "."
    if wrong:
        return None, wrong
    facts = msgspec.structs.replace(
        look.draft.transducer,
        name=naming.name.strip(),
        serial=naming.serial.strip(),
        unit=naming.unit,
        sign=_sign(naming.sign),
        capacity_nm=None
        if capacity is None or look.draft.measures != "torque"
        else capacity * torque_factor(naming.unit),
        accuracy_percent_of_reading=accuracy,
    )
    changes: dict[str, object] = {"name": naming.name.strip(), "transducer": facts}
    if request:
        changes["poll"] = Poll(request=request, interval_s=interval_s)
    try:
        return msgspec.structs.replace(look.draft, **changes), {}
    except ValueError as error:
        return None, {"": str(error)}


def without_options(text: str) -> str:
    """Give a doubt without the command line's option that would answer it.

    >>> without_options("the unit is not sent: read it off the device and give it with --unit")
    'the unit is not sent'
    """
    return re.split(r"[;:,] [^;:,]*--", text)[0]


def plainly(text: str) -> str:
    """Call a number that has no name in the bytes by its place, wherever it stands in a text.

    >>> plainly("stood still: value3, temperature")
    'stood still: number 3, temperature'
    """
    return re.sub(r"\bvalue(\d+)\b", r"number \1", text)


def _sign(text: str) -> Literal["signed", "reversed", "none"]:
    return "reversed" if text == "reversed" else "none" if text == "none" else "signed"


def _number(text: str, key: str, wrong: dict[str, str]) -> float | None:
    if not text.strip():
        return None
    try:
        value = parse_number(text)
    except HeldwheelError as error:
        wrong[key] = str(error)
        return None
    if value <= 0:
        wrong[key] = "Must be above zero."
        return None
    return value
