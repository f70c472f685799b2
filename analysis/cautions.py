"""Cautions of the held-wheel test: chosen by kind of test, shown before the first pull, in reports and in help.

They warn; they never replace the vehicle maker's manual, local rules, and qualified people. Common practice, no source,
unless one is named.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from logger.header import Conditions, Test


class Moment(StrEnum):
    """When a caution matters."""

    ALWAYS = "always"
    LIFTING = "before lifting"
    SETTING_UP = "before pulling"
    PULLING = "while pulling"
    AFTER = "after the test"
    READING = "reading it"


class Fact(StrEnum):
    """What is true of a test and decides which cautions it needs."""

    CAR = "car"
    BENCH = "bench"
    HELD = "other wheel held"
    CASE = "case held"
    FREE = "both wheels free"
    NEUTRAL = "neutral"
    IN_GEAR = "in gear"
    SHAFT_ON = "propshaft fitted"
    SHAFT_OFF = "propshaft off"


# Of each group exactly one fact is true of a test.
_GROUPS = (
    frozenset({Fact.CAR, Fact.BENCH}),
    frozenset({Fact.HELD, Fact.CASE, Fact.FREE}),
    frozenset({Fact.NEUTRAL, Fact.IN_GEAR}),
    frozenset({Fact.SHAFT_ON, Fact.SHAFT_OFF}),
)


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution."""

    key: str  # stable name, for records of who confirmed what
    moment: Moment  # when it matters
    text: str  # for the user
    gate: bool = False  # whether it must be confirmed before the first pull of a job: people can be hurt
    # the tests it is for: of every group of facts that is named here, one must be true of the test. Empty: all.
    only: frozenset[Fact] = frozenset()

    def fits(self, facts: frozenset[Fact]) -> bool:
        """Tell whether a test with these facts needs it."""
        return all(not self.only & group or bool(self.only & group & facts) for group in _GROUPS)


BEFORE_TURNING = "Engine off and key away, car on stands, wheels on the floor chocked, brakes released."
"""In short, for whatever turns a wheel outside a test: counting turns, finding the type, learning a transducer."""

ROAD = (
    "Drive figure-eights only on closed ground, slowly, with nobody near; a second person records, the driver drives.",
    "Local law and the maker's manual come first; stop at knocking, binding or a wheel that locks.",
    "Microphone or accelerometer fixed so that it can neither fall nor reach the pedals, belts or wheels.",
)
"""Before a recording is made while driving."""

_ALWAYS, _LIFT, _SET, _PULL, _AFTER, _READ = Moment
_GATE = True
_CAR, _BENCH = frozenset({Fact.CAR}), frozenset({Fact.BENCH})

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
            "Engine off, ignition key out and away from the car; automatic start-stop and remote start off. Never "
            "drive the axle with one wheel raised: the other wheel drives too.",
            _GATE,
            _CAR,
        ),
        (
            "high-voltage",
            _LIFT,
            "Hybrid or electric: trained people only, not READY, high-voltage system made safe. A permanent-magnet "
            "motor generates voltage when its wheel is turned, and there may be no mechanical neutral: follow the "
            "maker.",
            _GATE,
            _CAR,
        ),
        (
            "chocks",
            _LIFT,
            "Chock every wheel that stays on the floor, front and rear: with the parking brake off and the gearbox in "
            "neutral nothing else holds the car. With all wheels raised chocks hold nothing: four stands or a lift.",
            _GATE,
            _CAR,
        ),
        (
            "stands",
            _LIFT,
            "Stands on a hard level floor at approved points; a jack is no support. Air suspension off.",
            _GATE,
            _CAR,
        ),
        (
            "reaction",
            _LIFT,
            "The pull can roll the car or tip it off its stands: shake it on the stands first, pull downward where you "
            "can, nobody in or under the car.",
            _GATE,
            _CAR,
        ),
        (
            "propshaft-off",
            _LIFT,
            "Propshaft off: park no longer holds the car.",
            _GATE,
            frozenset({Fact.CAR, Fact.SHAFT_OFF}),
        ),
        ("hot", _LIFT, "Hot axle and oil can burn you: let them cool.", _GATE),
        (
            "clamped",
            _SET,
            "The unit is clamped so that it can neither tip nor turn, and nothing heavy can fall on hands or feet.",
            _GATE,
            _BENCH,
        ),
        (
            "type",
            _SET,
            "Check the type: gear, viscous, locking and open units are not judged by this torque.",
            _GATE,
        ),
        (
            "brakes-free",
            _SET,
            "Brakes fully free on both wheels of the axle: look, then turn by hand. An electric parking brake in its "
            "service mode, fingers clear of it: it can move by itself.",
            _GATE,
            _CAR,
        ),
        (
            "neutral",
            _SET,
            "Gearbox and transfer case in neutral; the other axle of a four-wheel drive able to turn, or its shaft "
            "off.",
            _GATE,
            frozenset({Fact.CAR, Fact.NEUTRAL}),
        ),
        (
            "in-gear",
            _SET,
            "A gear is engaged: never touch the starter, and let nobody else reach it.",
            _GATE,
            frozenset({Fact.CAR, Fact.IN_GEAR}),
        ),
        (
            "held",
            _SET,
            "The other wheel is really held, by floor or strap: not by fingers in the spokes or by a clamped brake "
            "hose. Two people agree on the word that means stop.",
            _GATE,
            frozenset({Fact.CAR, Fact.HELD}),
        ),
        (
            "shaft-held",
            _SET,
            "The other shaft is really held, by vice or bar: not by hand.",
            _GATE,
            frozenset({Fact.BENCH, Fact.HELD}),
        ),
        (
            "case-held",
            _SET,
            "The case is really held, by its flange or ring gear bolts: not by hand.",
            _GATE,
            frozenset({Fact.CASE}),
        ),
        (
            "both-free",
            _SET,
            "Both wheels (or shafts) clear of the floor and free to turn; hands, hoses and cables clear of the second "
            "one: it turns too.",
            _GATE,
            frozenset({Fact.FREE}),
        ),
        (
            "snug",
            _SET,
            "Wheel (or bare disc) bolted up tight, adapter centred, nothing loose; do not pull in the loosening "
            "direction on a hub nut.",
            _GATE,
            _CAR,
        ),
        (
            "rating",
            _SET,
            "Stay below the lowest rating of transducer, lever, adapter, socket and stud; no extension pipe, no power "
            "or impact tool.",
            _GATE,
        ),
        ("eyes", _SET, "Eye protection on; loose clothing, hair and hands away from spokes and lever.", _GATE),
        (
            "clear",
            _SET,
            "The lever's swing clear; stand outside its plane: wound shafts spring back. Ease the load off; never "
            "release the lever under load.",
            _GATE,
        ),
        ("zero", _SET, "Zero with the lever hanging or off, after warm-up, unloaded; repeat at the end."),
        (
            "smooth",
            _PULL,
            "Smooth ramp, two to three seconds to the first slip; 2-10 turns a minute; a jerk can double the reading.",
        ),
        ("enough", _PULL, "At least two turns for a steady value, five repeats for a peak, both directions if safe."),
        (
            "stop",
            _PULL,
            "Keep turning only if the wheel moves; stop if torque climbs without motion. Stop at binding, knocking or "
            "steps: that is a fault, not a torque.",
            _GATE,
        ),
        ("after-lever", _AFTER, "Lever, adapter and strap off first."),
        ("after-nuts", _AFTER, "Wheel nuts to the maker's torque.", False, _CAR),
        (
            "after-brakes",
            _AFTER,
            "Brake pedal pumped until it is firm; parking brake back in service.",
            False,
            _CAR,
        ),
        (
            "after-propshaft",
            _AFTER,
            "Propshaft refitted, by its marks and to the maker's torque.",
            False,
            frozenset({Fact.CAR, Fact.SHAFT_OFF}),
        ),
        ("after-chocks", _AFTER, "Chocks away last, when the car stands on its wheels and is held.", False, _CAR),
        ("peak-normal", _READ, "The first peak may exceed the rotating torque: normal for plate types."),
        (
            "stud-reads-low",
            _READ,
            "A lever on a stud that points outward reads low by about 10-20 %; one that points inward reads high: "
            "enter stud circle, lever length and angle.",
        ),
        ("drag", _READ, "Part of the number is gearbox, seals, bearings and pads. Small limits may be mostly drag."),
        (
            "mean-of-packs",
            _READ,
            "The test shows the mean of both packs; left and right readings differ because of wheel drag, not a weak "
            "side.",
        ),
        ("case-clamped", _READ, "On a bench with the case held it reads about double the car."),
        (
            "units",
            _READ,
            "lbf·ft, lbf·in, N·m and kgf·m are different torques; use the limit in the unit and for the condition "
            "it is printed "
            "for.",
        ),
        (
            "printed-limits",
            _READ,
            "Printed limits differ by axle and contain misprints; yours comes from your manual or rule book.",
        ),
        ("cannot-tell", _READ, "Near the limit the honest answer may be that it is too close to call."),
        (
            "alike",
            _READ,
            "Compare before and after only at the same temperature, speed, rest, side, fixture and oil.",
        ),
        (
            "not-traction",
            _READ,
            "Passing this test is no proof of traction under power: ramps and gear separation act only with drive "
            "torque.",
        ),
        (
            "low-good-plates",
            _READ,
            "A low reading with good plates: check plate order, springs, too much friction modifier, hot oil.",
        ),
        ("chatter", _READ, "Chatter: oil and friction modifier first; more modifier also lowers holding torque."),
        ("wear-in", _READ, "New packs lose preload as they run in: test again."),
        (
            "max-min",
            _READ,
            "Too high fails a maximum rule (racing), too low fails a minimum rule (service): know which applies.",
        ),
        ("simulated", _ALWAYS, "Demonstration or simulated data must never be filed as a test."),
    )
)


def facts_of(test: Test, conditions: Conditions | None = None) -> frozenset[Fact]:
    """Give what is true of a test.

    What is not stated counts as the usual test: in the car, other wheel held, neutral, propshaft fitted.
    """
    held = {"case": Fact.CASE, "none": Fact.FREE}.get(test.held or "", Fact.HELD)
    off = conditions is not None and conditions.propshaft_fitted is False
    return frozenset(
        {
            Fact.BENCH if test.place == "bench" else Fact.CAR,
            held,
            Fact.IN_GEAR if test.gear == "in gear" else Fact.NEUTRAL,
            Fact.SHAFT_OFF if off else Fact.SHAFT_ON,
        }
    )


def cautions_for(
    *moments: Moment, gates_only: bool = False, facts: frozenset[Fact] | None = None
) -> tuple[Caution, ...]:
    """Give cautions in the order they are shown.

    Args:
        *moments: Those of these moments; all of them if none is named.
        gates_only: Only those to confirm before the first pull.
        facts: Only those that a test with these facts needs; None: whatever the test.
    """
    wanted = moments or tuple(Moment)
    return tuple(
        c for c in CAUTIONS if c.moment in wanted and (c.gate or not gates_only) and (facts is None or c.fits(facts))
    )


def gates_for(test: Test, conditions: Conditions | None = None) -> tuple[Caution, ...]:
    """Give what must be confirmed before the first pull of this kind of test.

    When the kind of test changes between two stages (both wheels free for the drag, one held for the pulls), those of
    the new kind that were not among the old ones are still to be confirmed.
    """
    return cautions_for(gates_only=True, facts=facts_of(test, conditions))


def cautions_of(*keys: str) -> tuple[str, ...]:
    """Give the texts of the cautions with these keys, in this order."""
    texts = {c.key: c.text for c in CAUTIONS}
    return tuple(texts[key] for key in keys)
