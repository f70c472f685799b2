"""A small planner: how many fills, what more would bring, and the order of tests drawn by lot."""

from __future__ import annotations

import secrets
from typing import TYPE_CHECKING

from analysis.compare.tags import tag_words
from gui.models.comparing import Tags, groups_in
from gui.models.planning import POWERS, PURPOSES, SEEDS, Planned, Wish, headline, order_sheet, plan, written
from gui.models.sheets import notes_sheet, sheets, whole_number
from gui.pages.answers.base import AnswerPanel, Ask
from gui.widgets.parts import Choice, Field, button
from gui.widgets.plan_plot import PlanPlot

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.runs import Run
    from gui.models.sheets import Written
    from gui.shared import Shared

EMPTY = (
    "Plan before you test: how many fills does a comparison need?\n\n"
    "1. The scatter from fill to fill: typed, or taken from recordings of three or four fills of one kind.\n"
    "2. The difference that must not be missed, and how surely.\n"
    "3. The groups, the control first: their order of tests is drawn by lot within blocks, so that a warm day or a "
    "tired arm does not fall on one group.\n\n"
    "More pulls of one fill do not replace another fill."
)
SEED_NOTE = "Order drawn with seed {}: put it on the record; the same seed gives the same order."
UNIT_NOTE = "A fill (drain, flush, fill, run in) is the unit; take its pulls together first."

AMOUNTS = {
    "difference": ("Difference that must not be missed", "3"),
    "margin": ("No-change margin ±", "2"),
    "half width": ("Mean known within ±", "1"),
}
"""What is wanted, by purpose: caption, hint."""


class PlanPanel(AnswerPanel):
    """A plan."""

    picture: PlanPlot

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, PlanPlot(shared), EMPTY)
        self.purpose = Choice("What for", PURPOSES.items())
        self.amounts = {key: Field(caption, hint) for key, (caption, hint) in AMOUNTS.items()}
        self.source = Choice("Scatter from fill to fill", [("", "typed below")])
        self.scatter = Field("Standard deviation", "1.5")
        self.power = Choice("Chance of showing it (power)", POWERS.items())
        self.groups = Field("Groups, the control first", "reference, oil B")
        self.seed = Field("Seed of the order", "chosen for you")
        self.again = button("Draw another order", self._draw)
        self.source.changed.connect(self._suggest)  # before anybody asks
        self.add(self.purpose, *self.amounts.values(), self.source, self.scatter, self.power, self.groups, self.seed)
        self._fields.addWidget(self.again)
        self._runs: Sequence[Run] = ()
        self._suggested = ""
        self._drawn = secrets.randbelow(SEEDS)

    @property
    def amount(self) -> Field:
        """The field of what is wanted."""
        return self.amounts[self.purpose.key]

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Offer these recordings' scatter, by every tag that makes groups."""
        self._runs = runs
        by = [(tag, f"these recordings, by {tag_words(tag)}") for tag in tags.groups]
        self.source.set_options([("", "typed below"), *by])
        self._suggest()

    def _suggest(self) -> None:
        """Suggest these recordings' groups, until others are typed."""
        if self.source.key and self.groups.text in {"", self._suggested}:
            self._suggested = ", ".join(groups_in(self._runs, self.source.key))
            self.groups.set_text(self._suggested)

    def _draw(self) -> None:
        self.seed.set_text("")
        self._drawn = secrets.randbelow(SEEDS)
        self.asked.emit()

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        self.scatter.setVisible(not self.source.key)
        self.power.setVisible(self.purpose.key != "half width")
        for purpose, field in self.amounts.items():
            field.setVisible(purpose == self.purpose.key)
        amount, sd = self.typed(self.amount), self.typed(self.scatter)
        seed = self._read(self.seed, whole_number)
        if amount is None:
            return f"{AMOUNTS[self.purpose.key][0]}: type it on the left."
        if sd is None and not self.source.key:
            return "Type the scatter from fill to fill, or choose recordings that tell it."
        groups = tuple(dict.fromkeys(part.strip() for part in self.groups.text.split(",") if part.strip()))
        wish = Wish(
            self.purpose.key,
            amount,
            None if self.source.key else sd,
            self.source.key,
            float(self.power.key),
            groups,
            self._drawn if seed is None else int(seed),
        )
        return Ask(plan, (wish,))

    def redraw(self) -> None:
        """Show fills, curve and order."""
        if isinstance(self.answer, Planned):
            planned, scale = self.answer, self.scale
            self.picture.show_plan(planned, scale)
            notes = [SEED_NOTE.format(planned.wish.seed)] if planned.order else []
            parts = sheets(order_sheet(planned), notes_sheet([*notes, UNIT_NOTE]))
            self.show_parts(headline(planned, scale), [], parts)

    def written(self) -> Written | None:
        """Give plan and order as they are written."""
        return written(self.answer, self.scale) if isinstance(self.answer, Planned) else None
