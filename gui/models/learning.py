"""Learning an unknown transducer in the window: what has been heard so far, what it amounts to, what it is called.

The recognising is ``logger.learn``'s; here its answer is made ready to be looked at and completed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import msgspec
import numpy as np

from logger.decoder.build import build_decoder
from logger.description import Description, Poll
from logger.errors import HeldwheelError
from logger.learn import Choice, Learned, Wanted
from logger.learn_lines import FRAMED, split_frames, split_lines
from logger.learn_radio import learn_heard
from logger.samples import EventKind
from logger.units import parse_number, torque_factor

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.description import BleSettings, SerialSettings
    from logger.samples import Chunk

SIGN_WORDS = {
    "signed": "+ is clockwise",
    "reversed": "− is clockwise",
    "none": "It shows no sign",
}
LOADED = 0.5  # of the greatest departure from where it began: by then the lever is being loaded
ANY_UNIT = "N·m"  # stands in while the unit is not known: figures can be shown, no description is made


@dataclass(frozen=True, slots=True)
class Candidate:
    """A number in the lines that may be the torque.

    Attributes
    ----------
    name : str
        As the description calls it.
    least, greatest : float
        Over all that was heard.
    share : float
        Of the movement of all numbers, each for its own size: 0 to 1.
    """

    name: str
    least: float
    greatest: float
    share: float


@dataclass(frozen=True, slots=True)
class Look:
    """What has been heard amounts to this.

    Attributes
    ----------
    learned : Learned
        What was recognised and what was not.
    draft : Description or None
        How the bytes become readings; its unit is only certain where ``unit_sent`` or it was given.
    unit_sent : bool
        The lines name their unit.
    candidates : tuple of Candidate
        The likeliest first.
    readings : int
        How many were decoded.
    fits : float
        Share of the bytes that the layout explains.
    now : float or None
        The last reading.
    raw : str
        The last whole line as it came.
    first_load : int
        Sign of the first load; 0 while none was seen.
    """

    learned: Learned
    draft: Description | None = None
    unit_sent: bool = False
    candidates: tuple[Candidate, ...] = ()
    readings: int = 0
    fits: float = 0.0
    now: float | None = None
    first_load: int = 0
    raw: str = ""


@dataclass(frozen=True, slots=True)
class Naming:
    """What the user adds, as typed."""

    name: str = ""
    torque: str = "torque"  # which candidate
    unit: str = ""
    sign: str = ""
    capacity: str = ""
    accuracy: str = ""
    serial: str = ""


def look_at(chunks: Sequence[Chunk], serial: SerialSettings | None = None, ble: BleSettings | None = None) -> Look:
    """Find out what was heard; runs in the worker."""
    learned = learn(chunks, serial=serial, ble=ble)
    sent = learned.description is not None
    whole = learned if sent or not learned.missing else learn(chunks, unit=ANY_UNIT, serial=serial, ble=ble)
    if whole.description is None:
        return Look(learned)
    data = b"".join(chunk.data for chunk in chunks)
    decoded = build_decoder(whole.description).feed(data)
    torque = decoded.columns["torque"]
    torque = torque[np.isfinite(torque)]
    garbage = sum(event.count for event in decoded.events if event.kind is EventKind.GARBAGE)
    return Look(
        whole,
        whole.description,
        sent,
        _candidates(decoded.columns),
        len(torque),
        max(0.0, 1 - garbage / max(1, len(data))),
        float(torque[-1]) if len(torque) else None,
        _first_load(torque),
        (split_lines(data) or [b""])[-1].decode("utf-8", "replace"),
    )


def _candidates(columns: dict[str, np.ndarray]) -> tuple[Candidate, ...]:
    """Rank the numbers as the recognising does: by how much each moves for its size."""
    moved: dict[str, tuple[float, float, float]] = {}
    for name, values in columns.items():
        known = values[np.isfinite(values)]
        if len(known) and not name.startswith("counter"):
            spread = float(np.ptp(known)) / (1.0 + float(np.abs(np.median(known))))
            moved[name] = float(known.min()), float(known.max()), spread
    total = sum(spread for *_, spread in moved.values()) or 1.0
    found = [Candidate(name, low, high, spread / total) for name, (low, high, spread) in moved.items()]
    return tuple(sorted(found, key=lambda one: (one.name != "torque", -one.share)))


def _first_load(torque: np.ndarray) -> int:
    if len(torque) < 2:
        return 0
    away = torque - np.median(torque[: max(1, len(torque) // 20)])
    most = float(np.abs(away).max())
    if most <= 0:
        return 0
    return int(np.sign(away[np.argmax(np.abs(away) > LOADED * most)]))


def proposed(look: Look) -> Naming:
    """Give what the bytes themselves say, for the user to complete: the first load was to be clockwise."""
    signed = look.draft is not None and look.draft.transducer.sign == "signed"
    sign = ("reversed" if look.first_load < 0 else "signed") if signed else "none"
    unit = look.draft.unit if look.draft is not None and look.unit_sent else ""
    return Naming(unit=unit, sign=sign)


def complete(
    look: Look, naming: Naming, *, request: str = "", interval_s: float = 0.1
) -> tuple[Description | None, dict[str, str]]:
    """Give the description with what the user has added, or per field why it cannot be used.

    Parameters
    ----------
    look : Look
        What was heard.
    naming : Naming
        What the user says.
    request, interval_s
        What was asked again and again, where the device answers only then.
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
    if wrong:
        return None, wrong
    facts = msgspec.structs.replace(
        look.draft.transducer,
        name=naming.name.strip(),
        serial=naming.serial.strip(),
        unit=naming.unit,
        sign=_sign(naming.sign),
        capacity_nm=None if capacity is None else capacity * torque_factor(naming.unit),
        accuracy_percent_of_reading=accuracy,
    )
    changes: dict[str, object] = {"name": naming.name.strip(), "transducer": facts}
    if request:
        changes["poll"] = Poll(request=request, interval_s=interval_s)
    try:
        return msgspec.structs.replace(with_torque(look.draft, naming.torque), **changes), {}
    except ValueError as error:
        return None, {"": str(error)}


def with_torque(description: Description, name: str) -> Description:
    """Give the same layout with another of its numbers as the torque."""
    lines = description.lines
    if name == "torque" or lines is None:
        return description
    swap = {"torque": name, name: "torque"}
    template = lines.template
    for old in swap:
        for end in ("}", ":"):
            template = template.replace(f"{{{old}{end}", f"{{\0{old}{end}")
    for old, new in swap.items():
        template = template.replace(f"{{\0{old}", f"{{{new}")
    fields = {swap.get(key, key): field for key, field in lines.fields.items()}
    return msgspec.structs.replace(description, lines=msgspec.structs.replace(lines, template=template, fields=fields))


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
