"""Recognise the type of a differential by what its wheels do, and stop where the torque would mean nothing.

A low held-wheel torque on the wrong type says nothing about its condition: gear, viscous, locking and open units are
not judged by this number. What each type does is common practice, no source; the rule "the other wheel follows while
the mean pack friction exceeds its own drag plus half the driveline drag" follows from the torque balance.

Offers ``QUESTIONS`` (what to try and what may be seen) and ``recognise``; ``named`` and ``types_of`` write a finding on
the job card and read it back, and ``type_conflict`` says where a torque means nothing for what stands there.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from analysis.identify.slips import Conflict
from logger.errors import InputError

if TYPE_CHECKING:
    from logger.header import Axle, Conditions, Limit


class Type(StrEnum):
    """Types of differential that behave differently."""

    OPEN = "open"
    PLATE = "clutch plate"
    CONE = "cone"
    RAMP = "ramp plate"
    GEAR = "helical or worm gear"
    VISCOUS = "viscous or fluid coupling"
    LOCKER = "automatic locker"
    GOVERNOR = "governor-locking with light plates"
    SOLID = "welded or spool"


JUDGED = frozenset({Type.PLATE, Type.CONE, Type.RAMP})
"""The types whose packs the held-wheel torque measures."""


@dataclass(frozen=True, slots=True)
class WheelQuestion:
    """One thing to try, in short and in full, and what may be seen: the answer's word and its description."""

    key: str
    short: str
    text: str
    answers: Mapping[str, str]


QUESTIONS = (
    WheelQuestion(
        "brakes",
        "Brakes",
        "Turn each wheel with its brake fully released, drums and cables looked at. What holds?",
        {"free": "both brakes are free", "drag": "a brake or a cable drags", "unknown": "not checked"},
    ),
    WheelQuestion(
        "both-up",
        "Both wheels up",
        "Both driven wheels raised, neutral: turn one by hand. What does the other one do?",
        {
            "same": "it turns the same way",
            "opposite": "it turns the other way",
            "still": "it stands still",
            "locked": "neither can be turned apart: they always move together",
        },
    ),
    WheelQuestion(
        "one-held",
        "One wheel held",
        "One wheel held, neutral: turn the other slowly through a full turn. What does it feel like?",
        {
            "free": "hardly any resistance, drag only",
            "even": "a firm, even drag once it has broken away",
            "low": "a light, even drag",
            "speed": "it gets stiffer with speed, or with time; no breakaway",
            "one-way": "free one way, locks when moved back",
            "locked": "it cannot be turned",
        },
    ),
    WheelQuestion(
        "in-gear",
        "In gear",
        "Both wheels raised, gear engaged (propshaft held), engine off: turn one wheel. What happens?",
        {
            "free": "the other turns the opposite way, easily",
            "firm": "about twice as hard as with one wheel held",
            "much": "very much harder than in neutral",
            "locked": "it cannot be turned by hand",
            "untried": "not tried",
        },
    ),
    WheelQuestion(
        "slack",
        "Slack",
        "How far does the wheel move before it bites?",
        {"little": "a few degrees", "much": "a quarter of a turn or more", "untried": "not tried"},
    ),
)

_FITS: Mapping[str, Mapping[Type, frozenset[str]]] = {
    # What each type may show; "still" with both wheels up happens to any pack weaker than the driveline's drag.
    "both-up": {
        Type.OPEN: frozenset({"opposite", "still"}),
        Type.PLATE: frozenset({"same", "still"}),
        Type.CONE: frozenset({"same", "still"}),
        Type.RAMP: frozenset({"same", "still"}),
        Type.GEAR: frozenset({"same", "opposite", "still"}),
        Type.VISCOUS: frozenset({"same", "opposite", "still"}),
        Type.LOCKER: frozenset({"same", "locked"}),
        Type.GOVERNOR: frozenset({"same", "opposite", "still"}),
        Type.SOLID: frozenset({"same", "locked"}),
    },
    "one-held": {
        Type.OPEN: frozenset({"free"}),
        Type.PLATE: frozenset({"even", "low"}),
        Type.CONE: frozenset({"even", "low"}),
        Type.RAMP: frozenset({"even", "low"}),
        Type.GEAR: frozenset({"free", "low"}),
        Type.VISCOUS: frozenset({"speed"}),
        Type.LOCKER: frozenset({"one-way", "locked"}),
        Type.GOVERNOR: frozenset({"low", "free"}),
        Type.SOLID: frozenset({"locked"}),
    },
    "in-gear": {
        Type.OPEN: frozenset({"free"}),
        Type.PLATE: frozenset({"firm", "much", "locked"}),
        Type.CONE: frozenset({"firm", "much", "locked"}),
        Type.RAMP: frozenset({"firm", "much", "locked"}),
        Type.GEAR: frozenset({"much", "firm"}),
        Type.VISCOUS: frozenset({"firm", "free"}),
        Type.LOCKER: frozenset({"locked", "free"}),
        Type.GOVERNOR: frozenset({"free", "firm"}),
        Type.SOLID: frozenset({"locked"}),
    },
}

_WHY_NOT: Mapping[Type, str] = {
    Type.OPEN: "it has no pack: what you would measure is the drag of bearings, seals and gears",
    Type.GEAR: "it has no pack: its locking comes from gear thrust under load, and its maker may state a ratio of "
    "in-gear to neutral torque instead",
    Type.VISCOUS: "its torque depends on speed and heat, without a breakaway: compare only at a fixed speed and "
    "temperature, as its maker says",
    Type.LOCKER: "it locks by teeth: use its maker's function check, both directions and both sides",
    Type.GOVERNOR: "its light plates idle until the governor trips, so a low torque is healthy",
    Type.SOLID: "nothing can slip",
}

NOT_CHECKED = frozenset({"unknown", "untried"})

_BETWEEN = " / "
"""Between the types that fit, where one line names several; some names hold the word "or"."""


@dataclass(frozen=True, slots=True)
class TypeReading:
    """What the behaviour fits."""

    candidates: tuple[Type, ...]  # every type that contradicts nothing seen
    excluded: dict[Type, str]  # the others, each with the first observation that speaks against it
    # whether a held-wheel torque may be judged: only if every candidate is a type with packs and the brakes are known
    # to be free
    judged: bool
    text: str  # what that means, in one sentence
    cautions: tuple[str, ...]  # what to look at before trusting it

    def to_json(self) -> dict[str, object]:
        """Give the reading as plain values (schema ``heldwheel type 1``)."""
        return {
            "schema": "heldwheel type 1",
            "candidates": [t.value for t in self.candidates],
            "excluded": {t.value: why for t, why in self.excluded.items()},
            "judged": self.judged,
            "text": self.text,
            "cautions": list(self.cautions),
        }


def recognise(seen: Mapping[str, str]) -> TypeReading:
    """Give the types that fit what was seen.

    Args:
        seen: Answers by ``WheelQuestion.key``; what was not tried may be excluded.

    Raises:
        InputError: A question or answer that does not exist.

    1. An answer excludes every type that cannot show it; nothing is scored or guessed.
    2. If any remaining type is not judged by the held-wheel torque, the reading says so and which trial would tell.
    3. A dragging brake imitates a tight pack: without free brakes nothing is judged.
    """
    answers = _checked(seen)
    excluded: dict[Type, str] = {}
    for key, fits in _FITS.items():
        answer = answers.get(key)
        if answer is None or answer in NOT_CHECKED:
            continue
        question = next(q for q in QUESTIONS if q.key == key)
        for kind in Type:
            if answer not in fits[kind]:
                excluded.setdefault(kind, f"{question.key}: {question.answers[answer]}")
    candidates = tuple(kind for kind in Type if kind not in excluded)
    brakes_free = answers.get("brakes") == "free"
    judged = bool(candidates) and set(candidates) <= JUDGED and brakes_free
    return TypeReading(
        candidates, excluded, judged, _text(candidates, brakes_free, answers), _cautions(candidates, answers)
    )


def named(candidates: Iterable[Type]) -> str:
    """Give types as one line for a job card.

    >>> named([Type.PLATE, Type.CONE])
    'clutch plate / cone'
    """
    return _BETWEEN.join(kind.value for kind in candidates)


def types_of(text: str) -> frozenset[Type]:
    """Read such a line back; empty where it holds words of somebody's own.

    >>> sorted(types_of("Clutch plate / cone"))
    [<Type.PLATE: 'clutch plate'>, <Type.CONE: 'cone'>]
    >>> types_of("clutch plate, rebuilt")
    frozenset()
    """
    known = {kind.value: kind for kind in Type}
    words = [word.strip().lower() for word in text.split(_BETWEEN.strip())]
    return frozenset(known[word] for word in words) if all(word in known for word in words) else frozenset()


def type_conflict(axle: Axle, conditions: Conditions, limit: Limit | None = None) -> Conflict | None:
    """Say where a held-wheel torque means nothing for the type on the job card, or may be a brake's.

    A type with packs, a type that nobody stated, and one in somebody's own words are not in conflict. A reason on the
    card lifts the refusal, and stays as a warning. What the wheels did is compared with the type where it is noted.
    A limit for the ratio in gear ÷ neutral is what makers of geared units state.
    """
    kinds = types_of(axle.type)
    judged = JUDGED | {Type.GEAR} if limit is not None and limit.is_ratio else JUDGED
    wrong = [kind for kind in Type if kind in kinds - judged]
    if wrong:
        if len(wrong) == len(kinds):
            text = f"this test says nothing about this type of axle, {_reasons(wrong)}"
        else:
            names = ", ".join(kind.value for kind in wrong)
            text = f"the axle's type is not settled: it could be {names}, and this test says nothing about that type"
        if axle.type_reason.strip():
            return Conflict(False, f"{text} (judged all the same: {axle.type_reason.strip()})")
        return Conflict(True, text)
    if conditions.brakes_free is False:
        return Conflict(False, "a brake was not free: it imitates a tight pack")
    against = _against(kinds, axle.seen)
    return Conflict(False, f"the axle's type is {axle.type}, but {against}") if against else None


def seen_words(seen: Mapping[str, str]) -> str:
    """Give what was seen as one line for a report; what was not tried, or is in somebody else's words, is excluded.

    >>> seen_words({"both-up": "same", "slack": "untried"})
    'both wheels up: it turns the same way'
    """
    said = []
    for question in QUESTIONS:
        answer = seen.get(question.key, "untried")
        if answer in question.answers and answer not in NOT_CHECKED:
            said.append(f"{question.short.lower()}: {question.answers[answer]}")
    return "; ".join(said)


def _against(kinds: frozenset[Type], seen: Mapping[str, str]) -> str:
    """Give what was seen that speaks against every one of the types on a card; empty where nothing does."""
    try:
        excluded = recognise(seen).excluded
    except InputError:  # somebody else's words in a file
        return ""
    if not kinds or not kinds <= set(excluded):
        return ""
    key = excluded[next(kind for kind in Type if kind in kinds)].partition(":")[0]
    return seen_words({key: seen[key]})


def _checked(seen: Mapping[str, str]) -> dict[str, str]:
    known = {question.key: question for question in QUESTIONS}
    for key, answer in seen.items():
        if key not in known:
            raise InputError(f"there is no question '{key}'; there are: {', '.join(known)}")
        if answer not in known[key].answers:
            raise InputError(f"{key}: '{answer}' is no answer; choose from: {', '.join(known[key].answers)}")
    return dict(seen)


def _text(candidates: tuple[Type, ...], brakes_free: bool, answers: Mapping[str, str]) -> str:
    if not candidates:
        return (
            "Nothing fits all of this: try again with the brakes free, both wheels raised and the gearbox in neutral."
        )
    if not brakes_free:
        return "Not judged: free both brakes first; a dragging brake or a seized shoe imitates a tight pack."
    wrong = [kind for kind in candidates if kind not in JUDGED]
    if not wrong:
        names = " or ".join(kind.value for kind in candidates)
        return f"A unit with packs ({names}): the held-wheel torque measures their mean friction."
    if len(wrong) == len(candidates):
        return f"Not judged: {_reasons(wrong)}."
    more = next((key for key in _FITS if answers.get(key, "untried") in NOT_CHECKED), None)
    names = ", ".join(kind.value for kind in wrong)
    way_out = f"next, try '{more}'" if more else "look at the tag, the oil's label or the parts list"
    return f"Not judged yet: it could also be {names}, and this test says nothing about that type; {way_out}."


def _reasons(wrong: Iterable[Type]) -> str:
    return "; ".join(f"{kind.value} ({_WHY_NOT[kind]})" for kind in wrong)


def _cautions(candidates: tuple[Type, ...], answers: Mapping[str, str]) -> tuple[str, ...]:
    said = []
    if answers.get("slack") == "much":
        said.append("A quarter of a turn of slack is lash or worn tabs, not preload: look inside before measuring.")
    if answers.get("both-up") == "still" and set(candidates) & JUDGED:
        said.append(
            "The other wheel stands still when the packs are weaker than its own drag plus half the driveline's: "
            "a stiff gearbox makes a weak unit look open."
        )
    if Type.RAMP in candidates:
        said.append("Ramps act only with drive torque: in neutral only the preload of a ramp unit is seen.")
    if Type.CONE in candidates:
        said.append("Worn cones bottom out and then behave like an open unit.")
    return tuple(said)
