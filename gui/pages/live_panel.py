"""The middle of the Test page while a test runs: the large figure over the live trace, and the coach between them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.models.coach import URGENCY, Hint, HintUrgency
from gui.models.flow import Step
from gui.models.marks import mark_of
from gui.models.state import LinkState
from gui.translation import tr
from gui.widgets.figure import FigureView, TorqueFigure, tick_step
from gui.widgets.fitting import FittedText, FlowLayout
from gui.widgets.parts import Switch, card, column, label, restyle, scrolled
from gui.widgets.trace_plot import TracePlot

if TYPE_CHECKING:
    from gui.models.display import Display
    from gui.models.run import TestRun
    from gui.shared import Shared

READOUT = (
    "Highest: the highest torque at the axle since the pulls began, with the load that is on now; excluded pulls do "
    "not count. Wheel: how far it has turned since the lever was last loaded, clockwise positive, and how fast it "
    "turns now."
)
SPANS = {"20 s": 20.0, "60 s": 60.0, "5 min": 300.0, "All": 0.0}
PLOT_PX = 150  # where the window is lower, the page scrolls
SMALLEST_TOP_NM = 20.0  # the torque axis reaches at least here


class LivePanel(QWidget):
    """Figure, coach and trace of a test that runs."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._span_s = SPANS["20 s"]
        self._top = self._low = 0.0
        self._shown: tuple[object, ...] = ()
        self.view = FigureView()
        self._widest, self._widest_unit = "", ""
        self.figure = TorqueFigure(shared.look)
        self.figure.setToolTip(tr(READOUT))
        self.coach = FittedText(shared.look)
        self.coach.setAccessibleName(tr("Coach"))
        self.plot = TracePlot(shared.look, "")
        self.plot.number = shared.display.number
        self._spans = Switch(list(SPANS), "Stretch of time shown")
        self._spans.set_on("20 s")
        self._spans.picked.connect(self._set_span)
        self._state = label("Seconds ago", "caption")
        self._lay_out()

    def _lay_out(self) -> None:
        top = card()
        inside = column(top, margin=12, gap=4)
        inside.addWidget(self.figure)
        below = card()
        plot_side = column(below, margin=8, gap=4)
        plot_side.addWidget(self.plot, 1)
        foot = FlowLayout(gap=10)
        foot.addWidget(self._state)
        foot.addWidget(self._spans)
        plot_side.addLayout(foot)
        self.plot.setMinimumHeight(PLOT_PX)
        self.plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        body = QWidget()
        layout: QVBoxLayout = column(body, gap=8)
        column(self).addWidget(scrolled(body))
        layout.addWidget(top, 2)
        layout.addWidget(self.coach)
        layout.addWidget(below, 3)

    def _set_span(self, words: str) -> None:
        self._span_s = SPANS[words]
        self._top = 0.0

    def refresh(self, run: TestRun) -> None:
        """Show the run as it is now."""
        display = self._shared.display
        unit_factor = display.factor
        lower, upper = (None if v is None else v * unit_factor for v in run.card.limit_nm())
        now, (high, of_pull) = run.axle_now(), run.axle_highest() or (None, 0)
        now_value = None if now is None else now * unit_factor
        high_value = None if high is None else high * unit_factor
        self.view = FigureView(
            now=display.figure(now),
            highest=display.figure(None if high is None else abs(high)),
            unit=display.unit,
            now_value=now_value,
            highest_value=high_value,
            highest_caption=f"Highest: pull {of_pull}" if of_pull else "Highest so far",
            turned="" if run.turned_deg is None else f"{display.number(run.turned_deg, 0)}°",
            turned_caption=f"Wheel · {display.number(run.pace.rpm)} turns/min" if run.pace else "Wheel in this pull",
            lower=lower,
            upper=upper,
            caption=_caption(run),
            tone="outside" if run.hint is Hint.STOP else "muted" if run.silent else "text",
            template=self._template([v for v in (lower, upper) if v is not None], now_value, high_value),
        )
        self.figure.show_view(self.view)
        self._coach(run)
        self._draw(run, lower, upper, now_value, high_value)

    def _template(self, limits: list[float], now: float | None, high: float | None) -> str:
        """Give the widest figure that may come, as eights; it grows and never shrinks while the unit stays."""
        display = self._shared.display
        seen = [now or 0.0, high or 0.0]
        most = max(100 * display.factor, 1.7 * max(limits, default=0.0), *(abs(v) for v in seen))
        text = "".join("8" if c.isdigit() else c for c in display.figure(most / display.factor))
        negative = min(seen) < -0.05 * most or (self._widest.startswith("−") and self._widest_unit == display.unit)
        text = f"−{text}" if negative else text
        if self._widest_unit != display.unit or len(text) > len(self._widest):
            self._widest, self._widest_unit = text, display.unit
        return self._widest

    def _coach(self, run: TestRun) -> None:
        text = coach_words(run, self._shared.display)
        urgency = URGENCY.get(run.hint, HintUrgency.CALM)
        self.coach.setText(text)
        restyle(self.coach, {HintUrgency.STOP: "wrong", HintUrgency.ACT: "warn"}.get(urgency, ""))

    def _draw(
        self, run: TestRun, lower: float | None, upper: float | None, now: float | None, high: float | None
    ) -> None:
        plot, unit_factor, scale = self.plot, self._shared.display.factor, run.scale
        plot.set_unit(self._shared.display.unit)
        plot.set_limits(lower, upper)
        plot.set_watermark("SIMULATED" if run.simulated else "")
        self._fit(now, high, [v for v in (lower, upper) if v is not None])
        span = self._span_s or _round_up(max(20.0, run.trace.end_s - run.trace.start_s))
        plot.set_view(-span, 0.0, self._low, self._top)
        plot.draw(run.trace, lambda read: scale.torque(read) * unit_factor, newest_at_zero=True)
        shown = (len(run.pulls.pulls), self._shared.display.unit, scale, tuple(c.rejected for c in run.pulls.pulls))
        if shown != self._shown:
            self._shown = shown
            plot.show_marks([mark_of(c, unit_factor) for c in run.pulls.pulls])

    def _fit(self, now: float | None, high: float | None, limits: list[float]) -> None:
        """Grow the torque axis in round steps; it shrinks only with the unit or the limit."""
        unit = self._shared.display.factor
        wanted = max([SMALLEST_TOP_NM * unit] + [v * 1.35 for v in limits] + [abs(v or 0) * 1.1 for v in (now, high)])
        step = tick_step(wanted, 4)
        top = step * (int(wanted / step) + 1)
        negative = min(now or 0.0, high or 0.0) < -0.15 * wanted or self._low < -0.5 * top
        low = -top if negative else -0.12 * top
        if top > self._top or self._top > 2.5 * top or low < self._low:
            self._top, self._low = top, low


def _round_up(seconds: float) -> float:
    step = tick_step(seconds, 4)
    return step * (int(seconds / step) + 1)


def _caption(run: TestRun) -> str:
    if run.silent:
        return "No signal: last reading"
    if not run.scale.at_axle:
        return "Torque shown by the transducer"
    return "Torque at the axle" if run.zeros.first is not None else "Torque at the axle, no zero yet"


def coach_words(run: TestRun, display: Display) -> str:
    """Give the one line for the person at the wheel."""
    if run.link is LinkState.ENDED:
        return "No transducer: connect again"
    if run.silent:
        return "No signal: wait, do not pull"
    if run.zeroing is not None:
        from gui.models.zeroing import ZeroState

        if run.zeroing.state is ZeroState.MOVING:
            return "The reading moves: let the lever hang still"
        return f"Hands off: taking the zero, {run.zeroing.share:.0%}"
    if run.flow.now is Step.ZERO:
        return "Let the lever hang free or take it off, then take the zero"
    if run.flow.now is Step.ZERO_AGAIN:
        return "Let the lever hang free once more, then take the zero again"
    if run.flow.now is Step.DRAG and run.hint is Hint.READY:
        return "Both wheels free: turn one slowly, two turns"
    enough = len(run.pulls.counting) >= run.card.pulls_wanted
    if run.flow.now is Step.PULLS and enough and not run.coach.loaded:
        return "All pulls are made: take the zero again"
    left = run.dwell_left_s
    if left is not None:
        return f"{Hint.LET_REST}: {left:.0f} s"
    if run.hint is Hint.KEEP_TURNING and run.pace is not None:
        return f"{run.hint} · {run.pace.words(display.number)}"
    return str(run.hint)
