"""A quantity against a number: the line, what to expect, and which value gives a wanted torque."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.models.sheets import plain_number
from gui.models.trending import Trend, along, follow, headline, trend_sheets, warnings_of, written
from gui.pages.answers.base import AnswerPanel, Ask
from gui.widgets.parts import Choice, Field
from gui.widgets.trend_plot import TrendPlot

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.runs import Run
    from gui.models.comparing import Tags
    from gui.models.sheets import Written
    from gui.shared import Shared

EMPTY = (
    "Follow a torque against a number: shim thickness, distance, temperature, share of modifier.\n\n"
    "1. Give the recordings a tag that is a number, such as  shim_mm=0.3, or use what the job card states.\n"
    "2. Choose it on the left. Then ask: which shim gives 60 N·m? What is to be expected at 1500 km?\n\n"
    "The band holds one further fill in 95 of 100 cases; three fills or more are needed."
)


class TrendPanel(AnswerPanel):
    """A trend."""

    picture: TrendPlot

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, TrendPlot(shared), EMPTY)
        self.against = Choice("Against")
        self.wanted = Field("Which value of it gives", "60")
        self._at_in: tuple[str, float] | None = None  # of what, and in which unit, the figure in the field is meant
        self.at = Field("What to expect at", "0.35")
        self.add(self.against, self.wanted, self.at)

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Offer the tags that are numbers; a single one is chosen."""
        none = "" if len(tags.numbers) == 1 else "Choose a number"
        titles = [(tag, along(tag, self._shared.display).title) for tag in tags.numbers]
        self.against.set_options([*([("", none)] if none else []), *titles])

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        wanted, at = self.typed(self.wanted), self._asked_at()
        if not runs:
            return "No recordings are found."
        if not self.against.key:
            return "Choose the number that the torque is set against."
        return Ask(follow, (self.against.key, wanted, at))

    def _asked_at(self) -> float | None:
        """Read where something is expected; a length follows a change of its unit on screen."""
        of = along(self.against.key, self._shared.display)
        if self._at_in is not None and self._at_in[0] == of.name and self._at_in[1] != of.factor:
            self._convert(self.at, of.factor / self._at_in[1])
        self._at_in = (of.name, of.factor)
        at = self._read(self.at, plain_number)
        return None if at is None else at / of.factor

    def redraw(self) -> None:
        """Show the trend."""
        if isinstance(self.answer, Trend):
            trend, scale = self.answer, self.scale
            self.picture.show_trend(trend, scale)
            self.show_parts(headline(trend, scale), warnings_of(trend), trend_sheets(trend, scale, self.files))

    def written(self) -> Written | None:
        """Give the trend as it is written."""
        return written(self.answer, self.scale) if isinstance(self.answer, Trend) else None
