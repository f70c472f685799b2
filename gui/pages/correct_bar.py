"""Moving a pull's marks, or leaving it out: always with a reason, always beside the recording and never in it."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame

from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import Field, button, column, label
from logger.errors import HeldwheelError
from logger.header import Correction
from logger.recordings.sidecar import add_correction

if TYPE_CHECKING:
    from analysis.verdict.recorded import PullReading
    from gui.shared import Shared

MOVED_S = 1e-3  # less than a sample of most transducers is no decision


class CorrectBar(QFrame):
    """Reason and buttons; emits ``done`` once written, ``cancelled``."""

    done = Signal()
    cancelled = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self.setObjectName("notice")
        self._path = ""
        self._read: PullReading | None = None
        self._times: tuple[float, tuple[float, float]] = (0.0, (0.0, 0.0))
        self.title = label("", "head", wrap=True)
        self.times = label("", "caption", wrap=True)
        self.reason = Field("Reason, kept with the decision", "the lever knocked against the stand")
        self.keep = button("Save correction", self._keep, role="main")
        self.leave = button("Exclude this pull", self._leave)
        self.as_found = button("Restore automatic marks", self._take_back, tip="Undo what was decided about this pull")
        layout = column(self, margin=12, gap=8)
        layout.addWidget(self.title)
        layout.addWidget(self.times)
        layout.addWidget(self.reason)
        row = FlowLayout(gap=10)
        for part in (self.keep, self.leave, self.as_found, button("Cancel", self.cancelled.emit)):
            row.addWidget(part)
        layout.addLayout(row)

    def begin(self, path: str, number: int, read: PullReading) -> None:
        """Begin with a pull."""
        self._path, self._read = path, read
        self.title.setText(f"Pull {number + 1}: drag B and the stretch")
        self.reason.set_text("")
        self.reason.set_wrong("")
        self.leave.setText("Let it count again" if read.left_out else "Exclude this pull")
        self.as_found.setEnabled(bool(read.corrected))

    def show_times(self, breakaway_s: float, stretch_s: tuple[float, float]) -> None:
        """Show where the handles are."""
        self._times = (breakaway_s, stretch_s)
        number = self._shared.display.number
        first, last = stretch_s
        self.times.setText(f"B at {number(breakaway_s, 3)} s, R {number(first, 2)} to {number(last, 2)} s")

    def _keep(self) -> None:
        if self._read is None:
            return
        at, (first, last) = self._times
        pull, moved = self._read.pull, {}
        if pull.breakaway is None or abs(pull.breakaway.time_s - at) > MOVED_S:
            moved["breakaway_s"] = round(at, 6)
        rotating = pull.rotating
        if rotating is None or abs(rotating.start_s - first) > MOVED_S or abs(rotating.end_s - last) > MOVED_S:
            moved |= {"rotating_start_s": round(first, 6), "rotating_end_s": round(last, 6)}
        if not moved:
            self.reason.set_wrong("Nothing has been moved yet.")
            return
        self._write(**moved)

    def _leave(self) -> None:
        if self._read is not None:
            self._write(exclude=not self._read.left_out)

    def _take_back(self) -> None:
        self._write(as_found=True)

    def _who(self) -> str:
        return self._shared.settings.choices.operator

    def _write(self, **decided: float | bool) -> None:
        if self._read is None:
            return
        plain = Correction(at=_now(), reason=self.reason.text, by=self._who(), pull_start_s=self._read.pull.start_s)
        correction = msgspec.structs.replace(plain, **decided)
        try:
            add_correction(self._path, correction)
        except HeldwheelError as error:
            self.reason.set_wrong(str(error))
            return
        self.done.emit()


def _now() -> datetime:
    return datetime.now().astimezone().replace(microsecond=0)
