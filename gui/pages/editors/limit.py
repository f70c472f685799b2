"""The limit as its source prints it: nothing is shipped, and no limit is kept without its source."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from PySide6.QtWidgets import QGridLayout

from analysis.report.words import RULES, risk_words
from analysis.verdict.limits import Guard, Rule, decided_by
from gui.models.display import UNITS
from gui.models.job import HELD_WORDS, QUANTITY_WORDS
from gui.models.limit_entry import LimitDraft, check, draft_of
from gui.models.ratio import half_words
from gui.pages.editors.base import Editor, ShelfBar
from gui.widgets.parts import Choice, Field, button, label, line
from logger.header import Decision

if TYPE_CHECKING:
    from gui.models.job import JobCard
    from gui.shared import Shared
    from logger.header import Limit

KIND_WORDS = {
    "min": "At least",
    "max": "At most",
    "band": "From … to …",
    "ratio min": "In gear ÷ neutral, at least",
}
TORQUE_ONLY = ("unit", "beside", "beside_unit", "held", "gear")  # a ratio has none of these
LIMIT_UNITS = (*UNITS, "kgf·cm")
PLACE_WORDS = {"": "Not stated", "car": "In the car", "bench": "On the bench"}
RULE_WORDS = {
    Rule.THREE_WAY: "Three-way (usual)",
    Rule.SIMPLE: "Simple acceptance",
    Rule.ACCEPTANCE: "Guarded acceptance",
    Rule.REJECTION: "Guarded rejection",
}
GUARD_WORDS = {Guard.U95: "U, the 95 % interval", Guard.ONE_SIDED: "1.645 u, one-sided 95 %"}
GEAR_WORDS = {"": "Not stated", "neutral": "Neutral", "in gear": "In gear"}


class LimitEditor(Editor):
    """Fills in the card's limit."""

    def __init__(self, shared: Shared, card: JobCard) -> None:
        super().__init__("Limit", "From your own manual or rule book, as printed there. Its source is kept with it.")
        self._card, self._shared = card, shared
        units = [(u, u) for u in LIMIT_UNITS]
        self.chosen = {
            "quantity": Choice("What it limits", QUANTITY_WORDS.items()),
            "kind": Choice("Kind", KIND_WORDS.items()),
            "unit": Choice("Unit as printed", units),
            "beside_unit": Choice("Second unit", [("", "None"), *units]),
            "place": Choice("Test place", PLACE_WORDS.items()),
            "held": Choice("Held", [("", "Not stated"), *HELD_WORDS.items()]),
            "gear": Choice("Gear", GEAR_WORDS.items()),
        }
        self.typed = {
            "lower": Field("Not less than", "20"),
            "upper": Field("Not more than", "40"),
            "beside": Field("The same in a second unit, if printed", "27"),
            "source": Field("Source: manual or rule, and edition", "workshop manual, 2nd edition"),
            "page": Field("Page or section", "p. 12"),
            "condition": Field("Condition", "used plates, oil at 40 °C"),
            "name": Field("Name, to find it again", "rear axle, used plates"),
        }
        self.warnings = label("", "warn", wrap=True)
        self.rule = Choice("Rule, agreed before the test", [(str(key), words) for key, words in RULE_WORDS.items()])
        self.guard = Choice("Guard band", [(str(key), words) for key, words in GUARD_WORDS.items()])
        self.risk = label("", "caption", wrap=True)
        self.shelf: ShelfBar[Limit] = ShelfBar(shared.library.limits, "limit", self.take, self._limit)
        self._touched = False
        self._lay_out()
        for choice in self.chosen.values():
            choice.changed.connect(self._edited)
        for field in self.typed.values():
            field.changed.connect(self._edited)
        for choice in (self.rule, self.guard):
            choice.changed.connect(self._ruled)
        self.load()

    def _lay_out(self) -> None:
        self.body.addWidget(self.shelf)
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        rows = (
            (("quantity", 2), ("kind", 2), ("lower", 1), ("upper", 1)),
            (("unit", 2), ("beside", 2), ("beside_unit", 2)),
            (("source", 4), ("page", 2)),
            (("place", 2), ("held", 2), ("gear", 2)),
            (("condition", 3), ("name", 3)),
        )
        parts: dict[str, Field | Choice] = {**self.chosen, **self.typed}
        for number, row in enumerate(rows):
            at = 0
            for key, span in row:
                grid.addWidget(parts[key], number, at, 1, span)
                at += span
        for at in range(6):
            grid.setColumnStretch(at, 1)
        self.body.addLayout(grid)
        self.body.addWidget(self.warnings)
        self.body.addWidget(label("Near the limit", "head"))
        decides = line(gap=10)
        decides.addWidget(self.rule, 1)
        decides.addWidget(self.guard, 1)
        self.body.addLayout(decides)
        self.body.addWidget(self.risk)
        foot = line()
        foot.addWidget(button("No limit for this job", self._clear))
        foot.addStretch(1)
        self.body.addLayout(foot)
        self.body.addStretch(1)

    def load(self) -> None:
        """Show the card's limit."""
        self._touched = False
        limit = self._card.limit
        self._show(draft_of(limit) if limit is not None else LimitDraft(unit=self._shared.display.unit))
        self.refresh()

    def take(self, limit: Limit) -> None:
        """Use a limit that was picked."""
        self._show(draft_of(limit))
        self._edited()

    def _show(self, draft: LimitDraft) -> None:
        for key, choice in self.chosen.items():
            choice.set_key(getattr(draft, key))
        for key, field in self.typed.items():
            field.set_text(getattr(draft, key))

    def draft(self) -> LimitDraft:
        """Give what stands in the fields."""
        chosen = {key: choice.key for key, choice in self.chosen.items()}
        return LimitDraft(**chosen, **{key: field.text for key, field in self.typed.items()})

    def _limit(self) -> Limit | None:
        return check(self.draft()).limit

    def _edited(self) -> None:
        self._touched = True
        checked = check(self.draft())
        self._card.put(limit=checked.limit)
        self.refresh()

    def _ruled(self) -> None:
        """Decide by another rule; it belongs to the job, not to the limit, which may be somebody else's."""
        self._card.put(decision=msgspec.convert({"rule": self.rule.key, "guard": self.guard.key}, Decision))
        self.refresh()

    def _show_rule(self) -> None:
        rule, guard = decided_by(self._card.decision)
        self.rule.set_key(str(rule))
        self.guard.set_key(str(guard))
        self.guard.setVisible(rule is not Rule.SIMPLE)
        words = f"{RULES[rule]}; {risk_words(rule, guard)}."
        self.risk.setText(words[0].upper() + words[1:])

    def _clear(self) -> None:
        self._show(LimitDraft(unit=self._shared.display.unit))
        self._touched = False
        self._card.put(limit=None)
        self.refresh()

    def refresh(self) -> None:
        """Show faults, what looks like a slip, and what the rule risks."""
        self._show_rule()
        draft = self.draft()
        checked = check(draft)
        ratio = draft.is_ratio
        if ratio:
            self.chosen["quantity"].set_key("rotating maximum")
        self.chosen["quantity"].box.setEnabled(not ratio)
        for key in TORQUE_ONLY:
            (self.chosen.get(key) or self.typed[key]).setVisible(not ratio)
        for key in ("lower", "upper"):
            self.typed[key].setVisible(key in draft.bounds)
        for key, field in self.typed.items():
            field.set_wrong(checked.wrong.get(key, "") if self._touched else "")
        conflict = self._card.conflict()
        half = half_words(checked.limit, self._card.test.gear)
        advice = (half, *checked.warnings, conflict.text if conflict else "", self._card.range_advice())
        self.warnings.setText("\n".join(text for text in advice if text))
        self.warnings.setVisible(any(advice))
