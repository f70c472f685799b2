"""The right of the Review page: a recording's trace with its pulls, its result, its budget, and decisions about it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QSizePolicy, QSplitter, QStackedWidget, QWidget

from analysis.rows.friction import build_words
from analysis.trace.held import held_unknown
from analysis.verdict.elastic import elastic_words
from analysis.verdict.orders import pattern_lines
from gui.models.archive import read_entry, tags_of, with_tags
from gui.models.display import grouped
from gui.models.marks import marks_of
from gui.pages.budget_table import BudgetTable
from gui.pages.correct_bar import CorrectBar
from gui.pages.pull_table import PullTable
from gui.pages.result_card import ResultCard
from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import Field, Switch, button, card, column, label, line, scrolled
from gui.widgets.review_plot import ReviewPlot, Shown
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from analysis.to_axle.axle_scale import AxleScale
    from gui.models.archive import ArchiveEntry
    from gui.models.display import Display
    from gui.models.loading import Loaded
    from gui.shared import Shared
    from logger.samples import Floats

EMPTY = (
    "Choose a recording on the left.\n\nChoose several, with Ctrl or Shift, to lay them over each other. Everything "
    "you decide here is written beside the recording, with your reason; the recording itself is never changed."
)
REPEATS = "What repeats per turn of the wheel stands under Details."
PLOT_PX = 170  # where the window is lower, the page scrolls
BELOW = ("Pulls", "Budget", "Details")


class Below(QStackedWidget):
    """Takes the height it is given: words that wrap below must not squeeze the trace above."""

    def hasHeightForWidth(self) -> bool:  # noqa: N802 - Qt's name
        """Say no."""
        return False

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for little."""
        return QSize(300, 120)

    def minimumSizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        """Ask for little."""
        return QSize(200, 120)


class ReadingPanel(QWidget):
    """Shows what was read; emits ``corrected`` with a path, ``angle_asked`` with a path."""

    corrected = Signal(str)
    angle_asked = Signal(str)
    details_asked = Signal(str)
    angle_wanted = Signal(str)  # for the cursor

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._readings: dict[str, Loaded] = {}
        self._asked_angle = ""  # of which recording the cursor's angle has been asked for
        self.title = label("", "head", wrap=True)
        self.state = label("", "caption", wrap=True)
        self.plot = ReviewPlot(shared)
        self.pulls = PullTable(shared)
        self.budget = BudgetTable(shared)
        self.facts = label("", "", wrap=True)
        self.tags = Field("Tags, to find and compare it by", "fill=2, shim=0.2")
        self.result = ResultCard(shared)
        self.correct = CorrectBar(shared)
        self.below = Below()
        self.switch = Switch(BELOW, "Below the trace")
        self._empty = label(EMPTY, "caption", wrap=True)
        self._body = QWidget()
        self._lay_out()
        self._connect()
        shared.display.changes.listen(self.refresh)

    def _lay_out(self) -> None:
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        inside = column(frame, margin=12, gap=8)
        self._taught = scrolled(self._empty)
        inside.addWidget(self._taught, 1)
        self._whole = scrolled(self._body)
        inside.addWidget(self._whole, 1)
        self.plot.setMinimumHeight(PLOT_PX)
        self.plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        body = column(self._body, gap=8)
        head = FlowLayout(gap=10)
        words = column(gap=0)
        words.addWidget(self.title)
        words.addWidget(self.state)
        body.addLayout(words)
        self.whole = button("Whole trace", self.plot.show_all, tip="Key 0")
        self.angle = button("Against angle", self._ask_angle, tip="Torque against the wheel's angle")
        self.edit = button("Correct", self._begin_correcting, tip="Move the marks of the chosen pull, with a reason")
        tip = "Fixture, limit, job: written beside the recording, with a reason"
        self.details = button("Edit details", lambda: self.details_asked.emit(self.path), tip=tip)
        for press in (self.whole, self.angle, self.edit, self.details):
            head.addWidget(press)
        body.addLayout(head)
        self._split = QSplitter(Qt.Orientation.Vertical)
        self._split.setChildrenCollapsible(False)
        self._split.setHandleWidth(8)
        self._split.addWidget(self.plot)
        self._split.addWidget(self._figures())
        body.addWidget(self.correct)  # above the trace: it stays in sight on a low screen
        self.correct.hide()
        body.addWidget(self._split, 1)
        self._show_below(BELOW[0])
        self._whole.hide()

    def _figures(self) -> QWidget:
        """Lay out what stands below the trace: a table on the left, the result on the right."""
        self._lower = QWidget()
        row = line(self._lower, gap=10)
        left = column(gap=6)
        choose = line()
        choose.addWidget(self.switch)
        choose.addStretch(1)
        left.addLayout(choose)
        facts = QWidget()
        about = column(facts, gap=6)
        about.addWidget(self.tags)
        about.addWidget(scrolled(self.facts), 1)
        for part in (self.pulls, scrolled(self.budget), facts):
            self.below.addWidget(part)
        left.addWidget(self.below, 1)
        row.addLayout(left, 3)
        row.addWidget(self.result, 2)
        self.switch.set_on(BELOW[0])
        return self._lower

    def _show_below(self, name: str) -> None:
        """Show pulls, budget or facts; a budget is wide and tall, and says its own value."""
        self.below.setCurrentIndex(BELOW.index(name))
        self.result.setVisible(name != "Budget")
        height = self._split.height()
        upper = 0.35 if name == "Budget" else 0.6
        self._split.setSizes([round(upper * height), round((1 - upper) * height)])

    def _connect(self) -> None:
        self.switch.picked.connect(self._show_below)
        self.pulls.chosen.connect(self._look_at)
        self.tags.edit.editingFinished.connect(self._tag)
        self.correct.done.connect(self._corrected)
        self.correct.cancelled.connect(self._end_correcting)
        self.plot.moved.connect(self.correct.show_times)
        self.plot.pointed.connect(self._want_angle)

    # ------------------------------------------------------------------ showing
    def show_waiting(self, entry: ArchiveEntry) -> None:
        """Say that a recording is being read."""
        self._empty.setText(f"Reading {entry.name} ({entry.size / 1e6:,.1f} MB) …")
        self._taught.show()

    def show_problem(self, entry: ArchiveEntry, text: str) -> None:
        """Say why a recording cannot be read."""
        self._empty.setText(f"{entry.name} cannot be read.\n\n{text}")
        self._taught.show()
        self._whole.hide()

    def show_readings(self, readings: Mapping[str, Loaded]) -> None:
        """Show one recording, or several over each other."""
        self._end_correcting()
        self._readings, self._asked_angle = dict(readings), ""
        self._taught.hide()
        self._whole.show()
        self.refresh()
        self.plot.show_all()

    def clear(self) -> None:
        """Show nothing."""
        self._end_correcting()
        self._readings = {}
        self._empty.setText(EMPTY)
        self._taught.show()
        self._whole.hide()

    @property
    def first(self) -> Loaded | None:
        """The recording that figures and decisions are about."""
        return next(iter(self._readings.values()), None)

    @property
    def path(self) -> str:
        """Its file."""
        return next(iter(self._readings), "")

    @property
    def simulated(self) -> bool:
        """Whether one of the recordings shown is simulated."""
        return any(loaded.reading.simulated for loaded in self._readings.values())

    def refresh(self) -> None:
        """Show figures in the unit on screen."""
        first = self.first
        if first is None:
            return
        reading, factor = first.reading, self._shared.display.factor
        header = reading.header
        vehicle = header.job.vehicle if header is not None else ""
        name = reading.file.replace("\\", "/").rsplit("/", 1)[-1]
        several = len(self._readings) > 1
        self.title.setText(f"{len(self._readings)} recordings overlaid" if several else vehicle or name)
        self.state.setText(f"{name}{self._signed()}" if not several else "aligned at the first pull of each")
        dial = bool(reading.dial) and not several
        for part in (self.plot, self.whole, self.angle, self.edit):
            part.setVisible(not dial)
        shown = []
        for loaded in self._readings.values():
            marks = [] if several else marks_of(loaded.reading, factor)
            shift = loaded.reading.pulls[0].pull.start_s if several and loaded.reading.pulls else 0.0
            label_of = Path(loaded.reading.file).stem
            shown.append(Shown(loaded.trace(), self._drawn(loaded.scale), shift, marks, label_of))
        bounds = reading.bounds
        limits = (None, None) if bounds is None else bounds.torques
        self.plot.show_traces(shown, tuple(None if v is None else v * factor for v in limits), reading.simulated)
        self.plot.set_axle(first.scale.at_axle)
        self.pulls.show_reading(reading)
        self.budget.show_reading(reading)
        self.result.show_readings([loaded.reading for loaded in self._readings.values()])
        self.facts.setText("\n".join(fact_lines(first, self._shared.display)))
        if not self.tags.edit.hasFocus():
            self.tags.set_text(self._tag_text())
        self.edit.setEnabled(not several and bool(reading.pulls))

    def _drawn(self, scale: AxleScale) -> Callable[[Floats], Floats]:
        """Give what brings samples to the unit on screen."""
        unit_factor = self._shared.display.factor
        return lambda read: scale.torque(read) * unit_factor

    def _signed(self) -> str:
        """Say who has signed, and how many decisions were made after that."""
        entry, header = read_entry(self.path), self.first.reading.header if self.first is not None else None
        if not entry.signed:
            return ""
        by = f" by {header.job.operator}" if header is not None and header.job.operator else ""
        return f" · signed{by}" + (f" · revision {entry.revision}" if entry.revision > 1 else "")

    def _want_angle(self) -> None:
        """Ask once for the wheel's angle where somebody reads the trace off."""
        if len(self._readings) == 1 and self._asked_angle != self.path and not self.plot.isHidden():
            self._asked_angle = self.path
            self.angle_wanted.emit(self.path)

    def know_angle(self, path: str, found: tuple[Floats, Floats, Floats] | None) -> None:
        """Let the cursor read off the angle of the recording that is shown."""
        if found is not None and path == self.path:
            self.plot.know_angle(found[2], found[0])

    def show_angle(self, found: tuple[Floats, Floats, Floats] | None) -> None:
        """Show torque against angle, or say that there is none."""
        first = self.first
        if first is None:
            return
        if found is None:
            self.state.setText("This recording has no angle of the wheel.")
            return
        angle, torque, _ = found
        self.plot.show_against_angle(angle, self._drawn(first.scale)(torque))
        self.state.setText("Torque against the wheel's angle; “Whole trace” goes back to time")
        turned = [n for n, read in enumerate(first.reading.pulls) if read.pull.elastic is not None or read.pull.round]
        if turned:
            chosen = self.pulls.current()
            self._show_turned(chosen if chosen in turned else turned[0])

    def _show_turned(self, place: int) -> None:
        """Show the elastic line of one pull on the trace against angle; its figures above."""
        first, display = self.first, self._shared.display
        if first is None:
            return
        read = first.reading.pulls[place]
        elastic = read.pull.elastic
        lines = [REPEATS] if any(p.wave is not None for p in read.patterns) else []
        if elastic is not None:
            lines.insert(0, elastic_words(place + 1, elastic, read.stiffness, display.torque, display.number))
        if lines:
            self.state.setText("\n".join(lines))
        if elastic is None:
            self.plot.show_elastic(None)
            return
        wound_nm = read.pull.direction * np.array([0.0, elastic.wind_up_deg * elastic.stiffness_nm_deg])
        angle = elastic.meets_deg + elastic.way * np.array([0.0, elastic.wind_up_deg])
        self.plot.show_elastic((angle, self._drawn(first.scale)(wound_nm + read.pull.handoff_nm)))

    def _ask_angle(self) -> None:
        if self.path:
            self.angle_asked.emit(self.path)

    def _look_at(self, number: int) -> None:
        first = self.first
        if self.plot.against_angle:
            self._show_turned(number)
        elif first is not None and number < len(first.reading.pulls):
            pull = first.reading.pulls[number].pull
            room = 0.3 * (pull.end_s - pull.start_s)
            self.plot.show_stretch(pull.start_s - room, pull.end_s + room)

    def _tag_text(self) -> str:
        tags = read_entry(self.path).tags
        return ", ".join(
            f"{key}={value:g}" if isinstance(value, float) else f"{key}={value}" for key, value in tags.items()
        )

    def _tag(self) -> None:
        if self.path and self.tags.text != self._tag_text():
            try:
                with_tags(self.path, tags_of(self.tags.text))
            except HeldwheelError as error:
                self.tags.set_wrong(str(error))
                return
            self.tags.set_wrong("")
            self.corrected.emit(self.path)

    # ------------------------------------------------------------------ deciding
    def _begin_correcting(self) -> None:
        first = self.first
        if first is None or not first.reading.pulls:
            return
        number = max(0, self.pulls.current())
        self.plot.show_all()  # marks are moved in time: not on an axis of degrees
        self._look_at(number)
        read = first.reading.pulls[number]
        self.correct.begin(self.path, number, read)
        self.correct.show()
        self._lower.hide()  # marks are moved by eye: the trace gets the room
        rotating = read.pull.rotating
        stretch = (rotating.start_s, rotating.end_s) if rotating is not None else None
        self.plot.offer_handles(read.pull.breakaway.time_s if read.pull.breakaway else None, stretch)

    def _end_correcting(self) -> None:
        self.correct.hide()
        self._lower.show()
        self.plot.drop_handles()

    def _corrected(self) -> None:
        path = self.path
        self._end_correcting()
        self.corrected.emit(path)


def fact_lines(loaded: Loaded, display: Display) -> list[str]:
    """Give what is known of a recording besides its pulls."""
    reading = loaded.reading
    what = f"{len(reading.dial)} readings of a dial" if reading.dial else f"{grouped(loaded.samples)} readings"
    lines = [f"{what}, {reading.state or 'not read'}"]
    trace = reading.trace
    if trace is not None and np.isfinite(trace.rate_hz):
        lines[0] += f", {trace.rate_hz:.0f} a second"
    if reading.simulated:
        lines.append("Simulated: must never be filed as a test")
    lines += (
        [f"Hash: {reading.sha256[:16]}… (shows that it is unchanged, not that it is genuine)"] if reading.sha256 else []
    )
    lines += [f"{text[:1].upper()}{text[1:]}" for text in map(display.in_lengths, build_words(reading))]
    lines += pattern_lines([read.patterns for read in reading.pulls], display.torque, display.number)
    held = reading.header.test.held if reading.header is not None else None
    lines += [text for text in (held_unknown((read.pull for read in reading.pulls), held),) if text]
    lines += [f"• {display.in_lengths(problem)}" for problem in reading.problems]
    lines += [f"Decision {c.at:%Y-%m-%d %H:%M}: {c.reason}" for c in reading.corrections]
    return lines
