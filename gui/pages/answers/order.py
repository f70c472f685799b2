"""Values in order, axle by axle: has a pack run in, and does an axle drift from its own reference level."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gui.models import ordering
from gui.models.ordering import PER, RunInAnswer, Settling, WatchAnswer, Watched
from gui.models.sheets import whole_number
from gui.pages.answers.base import AnswerPanel, Ask, tag_options
from gui.widgets.order_plot import RunInPlot, WatchPlot
from gui.widgets.parts import Choice, Field

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.runs import Run
    from gui.models.comparing import Tags
    from gui.models.sheets import Written
    from gui.shared import Shared
    from gui.widgets.chart import Chart

RUN_IN_EMPTY = (
    "Has a new pack run in?\n\n"
    "1. Test again every few cycles (figure-eights, both ways) and tag each recording with their number: cycles=12.\n"
    "2. Choose that tag on the left.\n\n"
    "It has settled when the change over the last ten values lies, with its whole interval, within ± 1 % per ten "
    "cycles. The table says what was known after each value."
)
WATCH_EMPTY = (
    "Watch an axle from job to job.\n\n"
    "The first jobs, known to be good, give level and scatter. After them a weighted average of the jobs is followed: "
    "a slow drift leaves its band within a few jobs, one odd job does not.\n\n"
    "Search for the axle's own recordings; four good jobs or more are needed."
)
USUAL_BASELINE = 6
USUAL_COUNT = "cycles"


class _PerAxle(AnswerPanel):
    """An answer with one part per axle, of which one is shown."""

    def __init__(self, shared: Shared, picture: Chart, empty: str) -> None:
        super().__init__(shared, picture, empty)
        self.axle = Choice("Axle")
        self.per = Field("Axles are told apart by", PER, PER)
        self.axle.changed.connect(self.redraw)

    def take(self, answer: Any) -> None:
        """Offer the axles, and show one."""
        self.axle.set_options([(of.axle, of.axle) for of in answer.axles])
        self.axle.setVisible(len(answer.axles) > 1)
        super().take(answer)

    def chosen(self) -> Any:
        """Give the part of the axle that is chosen."""
        axles = self.answer.axles if self.answer is not None else ()
        return next((of for of in axles if of.axle == self.axle.key), axles[0] if axles else None)


class RunInPanel(_PerAxle):
    """Run-in."""

    picture: RunInPlot

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, RunInPlot(shared), RUN_IN_EMPTY)
        self.count = Choice("Counted by")
        self.add(self.count, self.per)
        self._fields.insertWidget(1, self.axle)
        self.axle.hide()

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Offer the tags that are numbers; cycles are chosen where there are any."""
        before = self.count.key
        self.count.set_options(tag_options(tags.numbers, "" if len(tags.numbers) == 1 else "Choose a number"))
        if not before and USUAL_COUNT in tags.numbers:
            self.count.set_key(USUAL_COUNT)

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        if not runs:
            return "No recordings are found."
        if not self.count.key:
            return "Choose the tag that counts cycles."
        return Ask(ordering.settle, (self.count.key, self.per.text))

    def redraw(self) -> None:
        """Show the axle that is chosen."""
        of, answer, scale = self.chosen(), self.answer, self.scale
        if isinstance(of, Settling) and isinstance(answer, RunInAnswer):
            self.picture.show_run_in(of, scale, simulated=answer.simulated)
            sheets = ordering.run_in_sheets(of, answer, scale, self.files)
            self.show_parts(ordering.run_in_headline(of, scale), ordering.run_in_warnings(of, answer), sheets)

    def written(self) -> Written | None:
        """Give the run-in of the axle that is chosen, as it is written."""
        of = self.chosen()
        if not isinstance(of, Settling):
            return None
        return ordering.run_in_written(of, self.scale, simulated=self.answer.simulated)


class WatchPanel(_PerAxle):
    """The chart of an axle over time."""

    picture: WatchPlot
    by_fill = False

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, WatchPlot(shared), WATCH_EMPTY)
        self.baseline = Field("Good jobs at the start", str(USUAL_BASELINE), str(USUAL_BASELINE))
        self.add(self.baseline, self.per)
        self._fields.insertWidget(0, self.axle)
        self.axle.hide()

    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Nothing to choose: every recording has a date."""

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question, or what is missing."""
        baseline = self._read(self.baseline, whole_number, needed=True)
        if not runs:
            return "No recordings are found."
        if baseline is None:
            return "Say how many jobs at the start are known to be good."
        return Ask(ordering.watch_axles, (int(baseline), self.per.text))

    def redraw(self) -> None:
        """Show the axle that is chosen."""
        of, answer, scale = self.chosen(), self.answer, self.scale
        if isinstance(of, Watched) and isinstance(answer, WatchAnswer):
            self.picture.show_watched(of, scale, simulated=answer.simulated)
            others = [
                f"{axle.axle} has a signal as well" for axle in answer.axles if axle is not of and axle.chart.alarms
            ]
            warnings = [*of.warnings, *others, *answer.problems]
            self.show_parts(ordering.watch_headline(of, scale), warnings, ordering.watch_sheets(of, scale, self.files))

    def written(self) -> Written | None:
        """Give every axle's chart as it is written."""
        answer = self.answer
        return ordering.watch_written(answer, self.scale) if isinstance(answer, WatchAnswer) else None
