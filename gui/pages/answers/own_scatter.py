"""How good the shop's own measuring is: a study of operators, axles and repeats, or two ways side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.models import own_scatter
from gui.models.own_scatter import PairsAnswer, StudyAnswer
from gui.pages.answers.base import AnswerPanel, Ask, tag_options
from gui.widgets.parts import Choice
from gui.widgets.scatter_plot import ScatterPlot

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.runs import Run
    from gui.models.comparing import Tags
    from gui.models.sheets import Written
    from gui.shared import Shared

EMPTY = (
    "How good is your own measuring?\n\n"
    "1. Two operators or more test two axles or more, each of them twice or more, in mixed order. Nothing is changed "
    "between the tests.\n"
    "2. Search for just these recordings. Each is one repeat; its tags or its job card name operator and axle.\n\n"
    "The answer: how far one reading can be trusted, and whether operators differ more than their own repeats do. "
    "Two transducers, or two operators, can also be set side by side, axle by axle."
)
KINDS = {"study": "Operators, axles, repeats", "pairs": "Two ways side by side"}
USUAL_AXLE, USUAL_OPERATOR = "axle", "operator"


class ScatterPanel(AnswerPanel):
    """A repeatability study, or agreement."""

    picture: ScatterPlot
    by_fill = False

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, ScatterPlot(shared), EMPTY)
        self.kind = Choice("Study", KINDS.items())
        self.operator = Choice("Operators (or the two ways) by")
        self.axle = Choice("Axles by")
        self.add(self.kind, self.operator, self.axle)

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Offer every tag."""
        for choice, usual in ((self.operator, USUAL_OPERATOR), (self.axle, USUAL_AXLE)):
            before = choice.key
            choice.set_options(tag_options(tags.all))
            if before not in tags.all and usual in tags.all:
                choice.set_key(usual)

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        if not runs:
            return "No recordings are found."
        if not (self.operator.key and self.axle.key):
            return "Choose the tags that name operator and axle."
        function = own_scatter.study_of if self.kind.key == "study" else own_scatter.pairs_of
        return Ask(function, (self.operator.key, self.axle.key))

    def redraw(self) -> None:
        """Show the study, or the pairs."""
        answer, scale = self.answer, self.scale
        if isinstance(answer, StudyAnswer):
            parts = own_scatter.study_sheets(answer, scale, self.files)
            self.show_parts(own_scatter.study_headline(answer, scale), [], parts)
        elif isinstance(answer, PairsAnswer):
            parts = own_scatter.pairs_sheets(answer, scale, self.files)
            self.show_parts(own_scatter.pairs_headline(answer, scale), [], parts)
        if isinstance(answer, StudyAnswer | PairsAnswer):
            self.picture.show_scatter(answer, scale)

    def written(self) -> Written | None:
        """Give the study or the pairs as they are written."""
        if isinstance(self.answer, StudyAnswer):
            return own_scatter.study_written(self.answer, self.scale)
        return own_scatter.pairs_written(self.answer, self.scale) if isinstance(self.answer, PairsAnswer) else None
