"""When an axle is to be tested again: by its own schedule, from its builds, its tests and what it has run.

Conventions: a schedule counts from the last test of the build that is in the axle; kilometres are differences of
odometer readings, so that a reading on or before the day of that test is needed.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum
from typing import TYPE_CHECKING, Any

from logger.edges.units import parse_number
from logger.errors import InputError
from logger.recordings.axles import in_order, moment, tag_key

if TYPE_CHECKING:
    from logger.recordings.axles import AxleFile, Build, Retest, Use

MOST = {"km": 1e6, "every_km": 1e6}  # of anything else, 10,000
SOON = timedelta(days=7)
SOON_SHARE = 0.9  # of the kilometres or events: common practice, no source


class Urgency(StrEnum):
    """How a retest stands."""

    DUE = "due"
    SOON = "soon"
    LATER = "later"
    UNKNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Due:
    """One line of an axle's schedule."""

    tag: str  # the axle's
    urgency: Urgency  # how it stands
    text: str  # why, in one sentence
    on: date | None = None  # the day it falls due, where the calendar says so


def due(axle: AxleFile, tests: Iterable[datetime], today: date) -> list[Due]:
    """Give how an axle's retests stand, the most urgent first; empty without a schedule.

    Args:
        axle: Its schedule, builds and uses.
        tests: When it was tested.
        today: The day that is asked about.
    """
    plan = axle.retest
    if plan is None:
        return []
    made = sorted(tests, key=moment)
    builds = in_order(axle)
    if builds and (not made or moment(made[-1]) < moment(builds[-1].built)):
        return [_after_build(axle, builds[-1], plan.figure_eights)]
    if not made:
        return [Due(axle.tag, Urgency.DUE, "it has a schedule and was never tested")]
    last = made[-1].date()
    found = []
    if plan.every_weeks is not None:
        found.append(_weeks(axle.tag, last, plan.every_weeks, today))
    if plan.every_km is not None:
        run = _km_since(axle.uses, last)
        if run is None:
            text = f"every {plan.every_km:g} km: no odometer reading is kept from on or before its last test, {last}"
            found.append(Due(axle.tag, Urgency.UNKNOWN, text))
        else:
            found.append(_count(axle.tag, last, run, plan.every_km, "km"))
    if plan.every_events is not None:
        events = sum(use.events for use in axle.uses if use.day > last)
        found.append(_count(axle.tag, last, events, plan.every_events, "events"))
    order = list(Urgency)
    return sorted(found, key=lambda line: order.index(line.urgency))


def due_of_all(axles: Iterable[AxleFile], tests: Mapping[str, Sequence[datetime]], today: date) -> list[Due]:
    """Give how the retests of several axles stand, axle by axle; ``tests`` by ``tag_key``."""
    return [line for axle in axles for line in due(axle, tests.get(tag_key(axle.tag), ()), today)]


def _after_build(axle: AxleFile, build: Build, wanted: int | None) -> Due:
    day = build.built.date()
    driven = sum(use.figure_eights for use in axle.uses if use.day >= day)
    if wanted is not None and driven < wanted:
        left = wanted - driven
        text = f"not tested since its build of {day}: first {left} of {wanted} figure-eights are to be driven"
        return Due(axle.tag, Urgency.SOON, text)
    return Due(axle.tag, Urgency.DUE, f"not tested since its build of {day}")


def _weeks(tag: str, last: date, weeks: float, today: date) -> Due:
    on = last + timedelta(days=round(7 * weeks))
    urgency = Urgency.DUE if today >= on else Urgency.SOON if today >= on - SOON else Urgency.LATER
    return Due(tag, urgency, f"every {weeks:g} weeks: last tested {last}, again on {on}", on)


def _count(tag: str, last: date, run: float, every: float, unit: str) -> Due:
    urgency = Urgency.DUE if run >= every else Urgency.SOON if run >= SOON_SHARE * every else Urgency.LATER
    return Due(tag, urgency, f"every {every:g} {unit}: {run:g} since its last test on {last}")


def _km_since(uses: Sequence[Use], last: date) -> float | None:
    read = sorted((use.day, use.km) for use in uses if use.km is not None)
    before = [km for day, km in read if day <= last]
    return read[-1][1] - before[-1] if before else None


# ---------------------------------------------------------------------- as typed
EVERY = {"km": "every_km", "week": "every_weeks", "event": "every_events", "figure-eight": "figure_eights"}
USED = {"km": "km", "event": "events", "figure-eight": "figure_eights"}
WHOLE = ("every_events", "figure_eights", "events")


def amounts(text: str, keys: Mapping[str, str]) -> dict[str, Any]:
    """Read amounts with their words, such as ``500 km, 4 weeks``, by the keys of ``Retest`` or ``Use``.

    Raises:
        InputError: One is not understood, or is no amount.

    >>> amounts("500 km, 4 weeks, 1 event", EVERY)
    {'every_km': 500.0, 'every_weeks': 4.0, 'every_events': 1}
    """
    found: dict[str, Any] = {}
    for part in filter(None, (part.strip() for part in re.split(r",\s+|;", text))):
        number, _, word = part.rpartition(" ")
        key = keys.get(word if word in keys else word.removesuffix("s"))
        if key is None or not number:
            raise InputError(f"'{part}' is not understood; write 500 km, 1 event; of: {', '.join(keys)}")
        value = parse_number(number)
        if not 0 < value <= MOST.get(key, 1e4) or (key in WHOLE and value != int(value)):
            raise InputError(f"'{part}': the amount must be above 0, and whole where things are counted")
        found[key] = int(value) if key in WHOLE else value
    if not found:
        raise InputError("nothing is stated; write amounts such as 500 km, 1 event")
    return found


def schedule_words(plan: Retest | None) -> str:
    """Write a schedule as it is typed.

    >>> from logger.recordings.axles import Retest
    >>> schedule_words(Retest(every_km=500, every_weeks=4))
    '500 km, 4 weeks'
    """
    if plan is None:
        return ""
    said = [(getattr(plan, key), word) for word, key in EVERY.items()]
    return ", ".join(f"{n:g} {word}{'s' * (word != 'km')}" for n, word in said if n is not None)


# ---------------------------------------------------------------------- a calendar
def calendar(lines: Iterable[Due], now: datetime) -> str:
    """Write what has a day as a calendar that other programs read (RFC 5545), one event of a whole day each.

    Lines end with CR and LF and are folded at 75 octets (3.1), texts escaped (3.3.11). An event keeps its UID as long
    as axle, schedule and day are the same, so that a calendar taken in twice holds it once.
    """
    said = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Heldwheel//Retest schedule//EN"]
    for line in lines:
        if line.on is None:
            continue
        uid = hashlib.sha256(f"{line.tag}\n{line.text}".encode()).hexdigest()[:32]
        said += [
            "BEGIN:VEVENT",
            f"UID:{uid}@heldwheel",
            f"DTSTAMP:{now.astimezone(UTC):%Y%m%dT%H%M%SZ}",
            f"DTSTART;VALUE=DATE:{line.on:%Y%m%d}",
            f"DTEND;VALUE=DATE:{line.on + timedelta(days=1):%Y%m%d}",
            f"SUMMARY:{_escaped(f'Test axle {line.tag} again')}",
            f"DESCRIPTION:{_escaped(line.text)}",
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        ]
    return "".join(_folded(line) for line in (*said, "END:VCALENDAR"))


def _escaped(text: str) -> str:
    plain = "".join(c if c.isprintable() or c == "\n" else " " for c in text)
    return plain.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")


def _folded(line: str) -> str:
    """Fold at 75 octets without cutting a character; a further line begins with a blank that counts."""
    parts, room, part = [], 75, ""
    for character in line:
        size = len(character.encode())
        if room < size:
            parts.append(part)
            part, room = " ", 74
        part, room = part + character, room - size
    return "\r\n".join((*parts, part)) + "\r\n"
