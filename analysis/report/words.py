"""The fixed sentences of a report: method, statements, cautions.

A report measures and compares; it never declares a car safe or legal. Facts of the trade are common practice, no
source, unless a limit's own source says otherwise.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.limits import Guard, Rule, State

if TYPE_CHECKING:
    from analysis.limits import Result
    from logger.header import Conditions, Test

TITLE = "Held-wheel torque test of a limited-slip differential"

STATEMENTS = (
    "The results are those of the item described here, in the state and at the time of the test, and of nothing else.",
    "This page is valid only as a whole and is not to be copied in part.",
)

ALWAYS = (
    "This page measures; it does not declare a car safe or legal. The maker's manual, local rules and qualified people "
    "decide.",
    "Passing is no proof of traction under power: ramps and gear separation act only with drive torque.",
)

FULL = (
    "The first peak may exceed the torque that keeps the pack rotating: normal for packs of plates.",
    "Part of the torque is drag of gearbox, seals, bearings and pads; small limits may be mostly drag.",
    "The test shows the mean of both packs; left and right differ by wheel drag, not by a weak side.",
    "Compare only at the same temperature, speed, rest, side, fixture and fluid.",
    "New packs lose preload as they wear in: test again.",
    "Printed limits differ from axle to axle and contain misprints; check the limit's own words and condition.",
)

NOT_TESTED = "Not tested: behaviour under drive torque, wear of plates and gears, condition of the fluid."

CLOSE = (
    "Near a limit the honest answer may be that it cannot be told; more pulls or a finer sensor narrow the interval."
)

SIMULATED = "SIMULATED DATA · nothing here was measured on an axle"

RULES = {
    Rule.THREE_WAY: "within or outside only if the whole guarded interval lies on one side of the limit; otherwise too "
    "close to call",
    Rule.SIMPLE: "the value alone is compared with the limit, its uncertainty is ignored; at the limit up to half of "
    "all decisions are wrong (shared risk)",
    Rule.ACCEPTANCE: "within only if the whole guarded interval conforms: the uncertainty counts against within",
    Rule.REJECTION: "outside only if the whole guarded interval lies outside: the uncertainty counts against outside",
}

RISKS = {
    Guard.U95: "risk of a wrong within or outside below 2.5 %",
    Guard.ONE_SIDED: "risk of a wrong within or outside below 5 %",
}

PLAIN_STATES = {
    State.WITHIN: "The measured torque lies within the limit, measuring uncertainty included.",
    State.OUTSIDE: "The measured torque lies outside the limit, measuring uncertainty included.",
    State.TOO_CLOSE: "The measured torque is too close to the limit to call: its interval covers the limit.",
    State.NOT_VALID: "The test did not give a value that may be judged. The reasons stand below.",
}


def method(test: Test, conditions: Conditions) -> str:
    """Describe how the test was made, in one or two sentences, from what was recorded."""
    held = {"other side": "the other side held", "case": "the case held", "none": "nothing held (drag)"}
    parts = [
        f"in the {test.place}" if test.place == "car" else "on the bench" if test.place else "place not recorded",
        held[test.held] if test.held else "held member not recorded",
        {"neutral": "gearbox in neutral", "in gear": "gear engaged"}.get(test.gear or "", "gear not recorded"),
    ]
    if test.side:
        parts.append(f"{test.side} side turned")
    if conditions.wheel_fitted is not None:
        parts.append("wheel fitted" if conditions.wheel_fitted else "wheel off")
    if conditions.brakes_free is not None:
        parts.append("brakes free" if conditions.brakes_free else "BRAKES NOT FREE")
    rest = f" Rest before each pull {test.dwell_s:g} s." if test.dwell_s is not None else ""
    return f"Functional test in place: {', '.join(parts)}; turned slowly by lever.{rest}"


def rule_words(result: Result) -> str:
    """Describe the decision rule and its level of risk."""
    words = f"{result.rule}: {RULES[result.rule]}"
    if result.rule is Rule.SIMPLE:
        return f"{words}."
    return f"{words}. Guard band w = {result.guard}; {RISKS[result.guard]}."
