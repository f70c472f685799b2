"""Cautions of the held-wheel test: shown before the first pull of a job, in reports and in help.

They warn; they never replace the vehicle maker's manual, local rules, and qualified people. Common practice, no source,
unless one is named.

Offered: ``Caution``, ``Moment``, ``CAUTIONS``, ``cautions_for``, ``cautions_of``.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Moment(StrEnum):
    """When a caution matters."""

    ALWAYS = "always"
    LIFTING = "before lifting"
    SETTING_UP = "before pulling"
    PULLING = "while pulling"
    READING = "reading it"


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution.

    Attributes
    ----------
    key : str
        Stable name, for records of who confirmed what.
    moment : Moment
        When it matters.
    text : str
        For the user.
    gate : bool
        Whether it must be confirmed before the first pull of a job: people can be hurt.
    """

    key: str
    moment: Moment
    text: str
    gate: bool = False


_ALWAYS, _LIFT, _SET, _PULL, _READ = Moment
_GATE = True

CAUTIONS: tuple[Caution, ...] = tuple(
    Caution(*entry)
    for entry in (
        (
            "measures-only",
            _ALWAYS,
            "This program measures; it does not declare a car safe or legal. The maker's manual, local rules and "
            "qualified or licensed people decide.",
            _GATE,
        ),
        (
            "engine-off",
            _LIFT,
            "Engine off. Never drive the axle with one wheel raised: the other wheel drives too.",
            _GATE,
        ),
        (
            "chocks",
            _LIFT,
            "Chock both ways: on this test the parking brake may be off and the box in neutral, so chocks are all that "
            "hold the car.",
            _GATE,
        ),
        (
            "stands",
            _LIFT,
            "Stands on a hard level floor at approved points; a jack is no support. Air suspension off.",
            _GATE,
        ),
        ("high-voltage", _LIFT, "Hybrid or electric: make the high-voltage system safe; follow the maker.", _GATE),
        ("hot", _LIFT, "Hot axle and oil burn. Let it cool, or state the temperature.", _GATE),
        (
            "type",
            _SET,
            "Check the type: gear, viscous, locking and open units are not judged by this number.",
        ),
        ("brakes-free", _SET, "Brakes fully free on both tested wheels: look, then turn by hand.", _GATE),
        (
            "neutral",
            _SET,
            "Neutral, transfer case neutral; the other axle of a four-wheel drive able to turn, or its shaft off.",
            _GATE,
        ),
        (
            "snug",
            _SET,
            "Wheel and disc nuts snug, adapter centred, nothing loose; do not pull in the loosening direction on a hub "
            "nut.",
            _GATE,
        ),
        (
            "held",
            _SET,
            "The held wheel really held, by floor or strap: not by fingers in the spokes or by a clamped brake hose.",
            _GATE,
        ),
        (
            "case-held",
            _SET,
            "The case really held, in a fixture made for it: not in a vice by its flange, not by hand.",
            _GATE,
        ),
        (
            "both-free",
            _SET,
            "Both wheels off the floor and free to turn: nobody and nothing in reach of the other wheel.",
            _GATE,
        ),
        (
            "in-gear",
            _SET,
            "In gear: engine off, key out and away. Never use the starter, nobody in the car.",
            _GATE,
        ),
        ("clear", _SET, "The lever's swing clear; stand outside its plane: wound shafts spring back.", _GATE),
        (
            "rating",
            _SET,
            "Do not exceed the transducer's or the stud's rating; stop if torque climbs without motion.",
            _GATE,
        ),
        ("zero", _SET, "Zero with the lever hanging or off, after warm-up, unloaded; repeat at the end."),
        (
            "smooth",
            _PULL,
            "Smooth ramp, two to three seconds to the first slip; 2-10 turns a minute; a jerk can double the reading.",
        ),
        ("enough", _PULL, "At least two turns for a steady value, five repeats for a peak, both directions if safe."),
        ("stop", _PULL, "Stop at binding, knocking or steps: that is a fault, not a torque.", _GATE),
        ("peak-normal", _READ, "The first peak may exceed the turning torque: normal for plate types."),
        ("stud-reads-low", _READ, "A stud-mounted wrench reads low by about 10-20 %: enter radius, lever and angle."),
        ("drag", _READ, "Part of the number is gearbox, seals, bearings and pads. Small limits may be mostly drag."),
        (
            "mean-of-packs",
            _READ,
            "The test shows the mean of both packs; left and right readings differ because of wheel drag, not a weak "
            "side.",
        ),
        ("case-clamped", _READ, "On a bench with the case clamped it reads about double the car."),
        (
            "units",
            _READ,
            "lbf·ft, lbf·in, N·m and kgf·m are different torques; the limit must be in its own words and condition.",
        ),
        (
            "printed-limits",
            _READ,
            "Printed limits differ by axle and contain misprints; yours comes from your manual or rule book.",
        ),
        ("cannot-tell", _READ, "Near the limit the honest answer may be that it cannot be told."),
        (
            "alike",
            _READ,
            "Compare before and after only at the same temperature, speed, rest, side, fixture and fluid.",
        ),
        (
            "not-traction",
            _READ,
            "Passing this test is no proof of traction under power: ramps and gear separation act only with drive "
            "torque.",
        ),
        ("low-good-plates", _READ, "A low reading with good plates: check order, springs, too much additive, hot oil."),
        ("chatter", _READ, "Chatter: fluid and additive first; more additive also lowers holding torque."),
        ("wear-in", _READ, "New packs lose preload as they wear in: test again."),
        (
            "max-min",
            _READ,
            "A rule with a maximum (racing) and one with a minimum (service) fail in opposite directions.",
        ),
        ("simulated", _ALWAYS, "Demonstration or simulated data must never be filed as a test."),
    )
)


def cautions_for(*moments: Moment, gates_only: bool = False) -> tuple[Caution, ...]:
    """Give the cautions of these moments (all of them if none is named), in the order they are shown."""
    wanted = moments or tuple(Moment)
    return tuple(c for c in CAUTIONS if c.moment in wanted and (c.gate or not gates_only))


def cautions_of(*keys: str) -> tuple[str, ...]:
    """Give the texts of the cautions with these keys, in this order."""
    texts = {c.key: c.text for c in CAUTIONS}
    return tuple(texts[key] for key in keys)
