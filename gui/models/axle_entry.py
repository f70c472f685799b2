"""The axle as it is filled in: what is known of it, turns as they are counted, and what its wheels do.

The draft holds texts and answers as they stand in the fields. Tag, type, build and ratio go to the job card as they are
typed; counted turns and a finding go there when they are taken over. Every change can be undone.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import msgspec

from analysis.identify.axle_type import NOT_CHECKED, QUESTIONS, Type, named, recognise
from analysis.identify.ratio import PROPSHAFT_ERROR_TURNS, candidate
from gui.models.changes import Changes, History
from gui.models.display import Display
from gui.models.job import PACKS, type_words
from gui.models.turn_count import TurnCounts, TypedTurns, check_count, reading_of, turns_of
from gui.models.typed import in_eighths, length_mm
from logger.errors import InputError, QuantityError

if TYPE_CHECKING:
    from collections.abc import Mapping

    from analysis.identify.axle_type import TypeReading
    from analysis.identify.ratio import RatioCandidate
    from gui.models.job import JobCard
    from logger.header import Axle

SHORT = {question.key: question.short for question in QUESTIONS}


@dataclass(frozen=True, slots=True)
class AxleDraft:
    """What stands in the fields, as typed; ``taken`` is what was counted and taken over.

    ``shim_mm`` is what the shim's field was filled from, in the unit ``lengths``.
    """

    tag: str = ""
    type: str = ""
    reason: str = ""
    pack_build: str = ""
    shim: str = ""
    ratio: str = ""
    turns: TypedTurns = field(default_factory=TypedTurns)
    seen: dict[str, str] = field(default_factory=dict)
    kept: dict[str, str] = field(default_factory=dict)  # the answers that stand behind the type on the card
    taken: TurnCounts | None = None
    brakes_free: bool | None = None
    shim_mm: float | None = None
    lengths: str = "mm"


# ---------------------------------------------------------------------- the axle's record
def check_axle(draft: AxleDraft, before: Axle) -> tuple[Axle, dict[str, str]]:
    """Give the record of a draft, and per field why it cannot be used; what is not asked here stays as it was."""
    wrong: dict[str, str] = {}
    taken = draft.taken
    axle = msgspec.structs.replace(
        before,
        tag=draft.tag.strip(),
        type=draft.type,
        seen=draft.kept,
        type_reason=draft.reason.strip(),
        pack_build=draft.pack_build.strip(),
        shim_mm=_shim_mm(draft, wrong),
        ratio=_ratio(draft.ratio, wrong),
        propshaft_turns=None if taken is None else taken.propshaft,
        left_turns=None if taken is None else taken.left,
        right_turns=None if taken is None else taken.right,
        propshaft_error_turns=None if taken is None else taken.propshaft_error,
        wheel_error_turns=None if taken is None else taken.wheel_error,
    )
    return axle, wrong


def draft_of(axle: Axle, display: Display | None = None) -> AxleDraft:
    """Give a record as fields to edit, its lengths in the unit on screen."""
    display = display or Display()
    turns, left, right = axle.propshaft_turns, axle.left_turns, axle.right_turns
    off = PROPSHAFT_ERROR_TURNS if axle.propshaft_error_turns is None else axle.propshaft_error_turns
    taken = None
    if turns is not None and left is not None and right is not None:
        taken = TurnCounts(turns, left, right, off, axle.wheel_error_turns or 0.0)
    return AxleDraft(
        turns=TypedTurns() if taken is None else _as_typed(taken),
        tag=axle.tag,
        type=axle.type,
        reason=axle.type_reason,
        pack_build=axle.pack_build,
        shim=display.typed_length(axle.shim_mm),
        shim_mm=axle.shim_mm,
        lengths=display.lengths,
        ratio="" if axle.ratio is None else f"{axle.ratio:g}",
        seen=dict(axle.seen),
        kept=dict(axle.seen),
        taken=taken,
    )


def _as_typed(counts: TurnCounts) -> TypedTurns:
    return TypedTurns(
        propshaft=in_eighths(counts.propshaft),
        left=in_eighths(counts.left),
        right=in_eighths(counts.right),
        propshaft_error=str(counts.propshaft_error),
        wheel_error=str(counts.wheel_error),
    )


def ratio_doubt(draft: AxleDraft) -> str:
    """Say where the ratio on the card does not agree with the turns that were taken over."""
    wrong: dict[str, str] = {}
    ratio = _ratio(draft.ratio, wrong)
    if ratio is None or draft.taken is None:
        return ""
    try:
        counted = reading_of(draft.taken)
    except InputError:
        return ""
    rounding = 5e-4  # a ratio is kept with four decimals, and printed with two or three
    if counted.low - rounding <= ratio <= counted.high + rounding:
        return ""
    return f"It was counted as {counted.low:.3f} to {counted.high:.3f}: one of the two is wrong."


def _ratio(text: str, wrong: dict[str, str]) -> float | None:
    if not text.strip():
        return None
    try:
        return round(candidate(text).ratio, 4)
    except InputError as error:
        wrong["ratio"] = str(error)
        return None


def _shim_mm(draft: AxleDraft, wrong: dict[str, str]) -> float | None:
    if not draft.shim.strip():
        return None
    display = Display(lengths=draft.lengths)
    try:
        value = length_mm(draft.shim, display, draft.shim_mm)
    except QuantityError as error:
        wrong["shim"] = str(error)
        return None
    if not 0 <= value <= 100:
        wrong["shim"] = f"A shim is 0 to {display.length(100)} thick"
        return None
    return value


# ---------------------------------------------------------------------- type
def type_options(now: str) -> list[tuple[str, str]]:
    """Give what the type may be on the card: each by itself, packs not told apart, and what stands there now."""
    keys = ("", PACKS, *(kind.value for kind in Type), now)
    return [(key, type_words(key)) for key in dict.fromkeys(keys)]


def finding(seen: Mapping[str, str]) -> TypeReading | None:
    """Give what answers fit; None before the first one and for answers that nobody knows."""
    try:
        return recognise(seen) if seen else None
    except InputError:
        return None


def answered(draft: AxleDraft, key: str) -> str:
    """Give an answer in words; empty before there is one."""
    question = next(question for question in QUESTIONS if question.key == key)
    return question.answers.get(draft.seen.get(key, ""), "")


def next_question(draft: AxleDraft, after: str) -> str:
    """Give the question that is asked next: the first open one after this, then from the start; empty when done."""
    keys = [question.key for question in QUESTIONS]
    place = keys.index(after) + 1
    return next((key for key in (*keys[place:], *keys[:place]) if key not in draft.seen), "")


def plain(text: str) -> str:
    """Name a question in a sentence as the window names it."""
    for key, short in SHORT.items():
        text = text.replace(f"'{key}'", f"'{short}'")
    return text


def ruled_out(found: TypeReading) -> list[str]:
    """Say what was seen, and which types it rules out."""
    types: dict[str, list[str]] = {}
    for kind, why in found.excluded.items():
        types.setdefault(why, []).append(kind.value)
    said = []
    for why, kinds in types.items():
        key, _, seen = why.partition(": ")
        said.append(f"{SHORT[key]}: {seen}. That rules out {', '.join(kinds)}.")
    return said


# ---------------------------------------------------------------------- with undo
class AxleEntry:
    """The draft of one job card's axle; every change is on the card at once, and can be undone.

    What something else puts on the card is shown, and what was to be undone is then forgotten.

    Args:
        card: Whose axle it is.
        display: In which unit lengths are shown.
    """

    def __init__(self, card: JobCard, display: Display | None = None) -> None:
        self._card, self._display = card, display or Display()
        self.changes = Changes()
        self._history = History[AxleDraft]()
        self._display.changes.listen(self._unit_changed)
        self.draft = self._fresh()
        self.wrong: dict[str, str] = {}
        card.changes.listen(self._card_changed)

    @property
    def can_undo(self) -> bool:
        """Whether there is a change to take back."""
        return bool(self._history)

    def _card_changed(self) -> None:
        self.draft = replace(self.draft, brakes_free=self._card.conditions.brakes_free)
        if check_axle(self.draft, self._card.axle)[0] != self._card.axle:
            self._history.clear()
            self.draft, self.wrong = self._fresh(), {}
            self.changes.tell()

    def _unit_changed(self) -> None:
        """Show the shim in the unit on screen; one that cannot be used stays as it is typed."""
        if self.draft.lengths != self._display.lengths:
            shim_mm = self._card.axle.shim_mm
            shim = self.draft.shim if "shim" in self.wrong else self._display.typed_length(shim_mm)
            self.draft = replace(self.draft, shim=shim, shim_mm=shim_mm, lengths=self._display.lengths)
            self.changes.tell()

    def _fresh(self) -> AxleDraft:
        return replace(draft_of(self._card.axle, self._display), brakes_free=self._card.conditions.brakes_free)

    def put(self, **changes: object) -> None:
        """Change some parts, in one step to undo."""
        self._history.remember(self.draft)
        self._use(replace(self.draft, **changes))  # type: ignore[arg-type]

    def type_in(self, key: str, text: str) -> None:
        """Take what stands in a field; letters typed into it one after the other are one step to undo."""
        self._history.remember(self.draft, key)
        if key in TypedTurns.__slots__:
            self._use(replace(self.draft, turns=replace(self.draft.turns, **{key: text})))
        else:
            self._use(replace(self.draft, **{key: text}))  # type: ignore[arg-type]

    def undo(self) -> None:
        """Take the last change back."""
        if self._history:
            self._use(self._history.back())

    def _use(self, draft: AxleDraft) -> None:
        self.draft = draft
        axle, self.wrong = check_axle(draft, self._card.axle)
        conditions = msgspec.structs.replace(self._card.conditions, brakes_free=draft.brakes_free)
        if (axle, conditions) != (self._card.axle, self._card.conditions):
            self._card.put(axle=axle, conditions=conditions)
        self.changes.tell()

    # ------------------------------------------------------------------ counting
    def count(self, **turns: str) -> None:
        """Change some counts, or how they are read, in one step to undo."""
        self.put(turns=replace(self.draft.turns, **turns))

    def add(self, key: str, turns: float) -> None:
        """Count on; a count that cannot be read stays as it is."""
        wrong: dict[str, str] = {}
        value = turns_of(key, getattr(self.draft.turns, key), wrong)
        if wrong:
            return
        counted = (value or 0.0) + turns
        self.count(**{key: in_eighths(max(0.0, counted) if key == "propshaft" else counted)})

    def take_counted(self, ratio: RatioCandidate | None = None) -> None:
        """Put the counted turns on the card with their ratio, or with one of those that lie inside."""
        checked = check_count(self.draft.turns)
        if checked.reading is None:
            return
        text = f"{checked.reading.ratio:.4g}" if ratio is None else ratio.teeth or f"{ratio.ratio:g}"
        self.put(ratio=text, taken=checked.counts)

    # ------------------------------------------------------------------ type
    def answer(self, key: str, word: str) -> None:
        """Note what was seen."""
        self.put(seen={**self.draft.seen, key: word})

    def take_type(self, kind: Type | None = None) -> None:
        """Put on the card what the answers fit, or the one of them that is known otherwise, and how the brakes are."""
        found = finding(self.draft.seen)
        if found is None or not found.candidates:
            return
        brakes = self.draft.seen.get("brakes", "unknown")
        self.put(
            type=named(found.candidates if kind is None else [kind]),
            kept=dict(self.draft.seen),
            brakes_free=self.draft.brakes_free if brakes in NOT_CHECKED else brakes == "free",
        )
