"""The page of a ratio limit: the half in gear, the half in neutral, and in gear ÷ neutral."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from analysis.report import words
from analysis.report.content import APART, Headline, PageTable, Section, in_a_row
from analysis.report.drawing import beside
from analysis.report.material import PageKind
from analysis.report.page import Page
from analysis.rows.gear import GEARS, ratio_words

if TYPE_CHECKING:
    from analysis.report.drawing import Drawing
    from analysis.report.material import Material

HEIGHTS = {PageKind.ENGINEER: 84.0, PageKind.CUSTOMER: 140.0}
"""Of the two traces, points."""

GAP = 16.0
"""Between them."""

Pairs = tuple[tuple[str, str], ...]


class RatioPage(Page):
    """Turns the material of a ratio into text. What both halves have alike is said once."""

    __slots__ = ()

    @property
    def neutral(self) -> Page:
        """The half in neutral as a page of its own."""
        return Page(self.material.halves[-1], self.issue, self.unit)

    def alerts(self) -> tuple[str, ...]:
        """Give what must be read before the result."""
        return tuple(dict.fromkeys((*super().alerts(), *self.neutral.alerts())))

    def headlines(self) -> tuple[Headline, ...]:
        """Give the ratio, then the torques that were divided."""
        remark = "rotating maxima, both free, interval 95 %"
        ratio = (Headline(b.quantity, ratio_words(b), remark) for b in (self.material.budget,) if b is not None)
        return *ratio, *map(self.headline, self.material.job)

    def facts(self) -> Pairs:
        """Give who, what, when and where."""
        return (*super().facts(), *_others(super().facts(), self.neutral.facts()))

    def conditions(self, *, full: bool) -> Pairs:
        """Give what a comparison depends on."""
        own = super().conditions(full=full)
        return (*own, *_others(own, self.neutral.conditions(full=full)))

    def instrument(self) -> Pairs:
        """Give the transducer and how it sampled."""
        return (*super().instrument(), *_others(super().instrument(), self.neutral.instrument()))

    def drawing(self) -> Drawing:
        """Draw both traces, side by side on one scale of torque."""
        size = ((self.issue.paper.width - GAP) / 2, HEIGHTS[self.issue.kind])
        reach = [nm for half in self.material.halves for nm in _reach(half)]
        also = (min(reach), max(reach)) if reach else ()
        left, right = self.trace(size, "in gear", also), self.neutral.trace(size, "neutral", also)
        return beside(left, right, GAP, f"In gear: {APART}{left.about}{APART}. {APART}Neutral: {APART}{right.about}")

    def pulls(self) -> Iterator[Section]:
        """List the pulls of both halves."""
        first, second = self.pull_table(greatest=True), self.neutral.pull_table(greatest=True)
        rows = [(gear, *row) for gear, half in zip(GEARS, (first, second), strict=True) for row in half.rows]
        right = tuple(column + 1 for column in first.right)
        dim = (*first.dim, *(row + len(first.rows) for row in second.dim))
        yield Section(f"Pulls ({self.unit})", table=PageTable(("half", *first.headings), tuple(rows), right, dim))

    def method(self) -> str:
        """Say how the test was made and what was not tested."""
        first, second = (
            words.method(msgspec.structs.replace(half.header.test, gear=gear), half.header.conditions)
            for gear, half in zip(GEARS, self.material.halves, strict=True)
        )
        alike = second.replace("gearbox in neutral", "gear engaged") == first
        again = "The same again with the gearbox in neutral." if alike else f"In neutral: {APART}{second}"
        tested = () if self.issue.kind is PageKind.ENGINEER else (words.NOT_TESTED,)
        return in_a_row(first, again, *tested)

    def corrections(self) -> Iterator[str]:
        """Say what lies between the sensor's reading and the torque at the axle."""
        yield from _both(super().corrections(), self.neutral.corrections())

    def left_out(self) -> Iterator[str]:
        """List what was not used and what is not in order."""
        yield from _both(super().left_out(), self.neutral.left_out())

    def recording(self, half: Material) -> str:
        """Say what a recording is."""
        return (
            super().recording(half).replace("recording", "neutral" if half is self.material.neutral else "in gear", 1)
        )


def _reach(half: Material) -> tuple[float, ...]:
    seen = half.torque_nm[np.isfinite(half.torque_nm)] * (half.factor or 1.0)
    return (float(seen.min()), float(seen.max())) if len(seen) else ()


def _others(own: Pairs, other: Pairs) -> Pairs:
    """Give what the half in neutral has otherwise."""
    return tuple((f"{label}, neutral", value) for label, value in other if (label, value) not in own)


def _both(own: Iterable[str], other: Iterable[str]) -> Iterator[str]:
    """Give the lines of the half in gear, then those that the half in neutral has otherwise."""
    said = tuple(own)
    yield from said
    yield from (f"In neutral: {APART}{line}" for line in other if line not in said)
