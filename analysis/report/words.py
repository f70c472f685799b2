"""The fixed sentences of a report: method, statements; which cautions it shows.

A report measures and compares; it never declares a car safe or legal. Facts of the trade are common practice, no
source, unless a limit's own source says otherwise.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from analysis.report.content import APART, in_a_row
from analysis.verdict.limits import Guard, Rule, State

if TYPE_CHECKING:
    from analysis.verdict.limits import Result
    from logger.header import Conditions, Test

TITLE = "Held-wheel torque test of a limited-slip differential"

TITLE_RATIO = "Limited-slip differential: torque in gear against neutral"

STATEMENTS = (
    "The results are those of the item described here, in the state and at the time of the test, and of nothing else.",
    "This page is valid only as a whole and is not to be copied in part.",
)

ALWAYS = ("measures-only", "not-traction")
"""Cautions of every page, by their keys in ``analysis.cautions``; then of a close result, for the engineer, and for the
engineer where there is a limit."""

CLOSE = ("cannot-tell",)
FULL = ("peak-normal", "drag", "mean-of-packs", "alike", "wear-in")
LIMITS = ("printed-limits",)

NOT_TESTED = "Not tested: behaviour under drive torque, wear of plates and gears, condition of the oil."

RAW_IS_COMPARED = "A limit is compared with the torque as read: drag is in it, as in nearly every printed limit."

COMPUTED = "Torques and result: computed, and again by heldwheel-read report --verify."
STATED = "Limit and all else: the issuer's word."

SIMULATED = "SIMULATED DATA · nothing here was measured on an axle"

RULES = {
    Rule.THREE_WAY: "within or outside only if the whole guarded interval lies on one side of the limit; otherwise too "
    "close to call",
    Rule.SIMPLE: "the value alone is compared with the limit, its uncertainty is ignored",
    Rule.ACCEPTANCE: "within only if the whole guarded interval conforms: the uncertainty counts against within",
    Rule.REJECTION: "outside only if the whole guarded interval lies outside: the uncertainty counts against outside",
}

# What each rule risks (ILAC-G8:09/2019, JCGM 106); {} is the greatest risk that the guard band leaves.
RISKS = {
    Rule.THREE_WAY: "risk of a wrong within or outside below {}",
    Rule.SIMPLE: "at the limit up to half of all decisions are wrong (shared risk)",
    Rule.ACCEPTANCE: "risk of a wrong within below {}; but what conforms by less than the guard band is called outside",
    Rule.REJECTION: "risk of a wrong outside below {}; but what fails by less than the guard band is called within",
}
GREATEST_RISK = {Guard.U95: "2.5 %", Guard.ONE_SIDED: "5 %"}

PLAIN_STATES = {
    State.WITHIN: "The measured torque lies within the limit, its uncertainty taken into account.",
    State.OUTSIDE: "The measured torque lies outside the limit, its uncertainty taken into account.",
    State.TOO_CLOSE: "The measured torque is too close to the limit to call: its interval covers the limit.",
    State.NOT_VALID: "The test did not give a value that may be judged. The reasons stand below.",
}
# Where a rule ignores the uncertainty, or counts it for one side, a state says less than that.
PLAIN_BY_RULE = {
    (Rule.SIMPLE, State.WITHIN): "The measured torque lies within the limit; its uncertainty was not considered.",
    (Rule.SIMPLE, State.OUTSIDE): "The measured torque lies outside the limit; its uncertainty was not considered.",
    (Rule.ACCEPTANCE, State.OUTSIDE): "The measured torque was not shown to lie within the limit: by the rule agreed "
    "on, the uncertainty counts against it.",
    (Rule.REJECTION, State.WITHIN): "The measured torque was not shown to lie outside the limit: by the rule agreed "
    "on, the uncertainty counts for it.",
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
    if conditions.pads_fitted is not None:
        parts.append("pads fitted" if conditions.pads_fitted else "pads out")
    if conditions.parking_brake is not None:
        parts.append("parking brake off" if conditions.parking_brake == "off" else "PARKING BRAKE ON")
    if conditions.propshaft_fitted is not None:
        parts.append("propshaft fitted" if conditions.propshaft_fitted else "propshaft off")
    return in_a_row(f"Functional test: {', '.join(parts)}; turned slowly by lever.", *_aims(test))


def _aims(test: Test) -> Iterator[str]:
    """Say what was aimed at in turning."""
    if test.speed_rpm is not None:
        yield f"Speed aimed at {test.speed_rpm:g} turns a minute."
    if test.conditioning_turns is not None:
        yield f"Turned {test.conditioning_turns:g} times before the first pull."
    if test.dwell_s is not None:
        yield f"Rest before each pull {test.dwell_s:g} s."


def rule_words(result: Result) -> str:
    """Describe the decision rule and its level of risk."""
    words, risk = f"{result.rule}{APART}: {APART}{RULES[result.rule]}{APART}", risk_words(result.rule, result.guard)
    if result.rule is Rule.SIMPLE:
        return f"{words}; {APART}{risk}{APART}."
    return f"{words}. {APART}Guard band w = {result.guard}{APART}; {APART}{risk}{APART}."


def risk_words(rule: Rule, guard: Guard) -> str:
    """Say in one sentence what a rule risks."""
    return RISKS[rule].format(GREATEST_RISK[guard])


def plain_state(result: Result) -> str:
    """Say a result in plain words, and no more than its rule allows."""
    said = PLAIN_BY_RULE.get((result.rule, result.state), PLAIN_STATES[result.state])
    return said.replace("measured torque", "measured ratio") if result.bounds.written.is_ratio else said
