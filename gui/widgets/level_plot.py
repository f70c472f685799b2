"""Band level of a drive against time: thin where it is quiet, heavy and numbered where an event stands out."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QPointF

from analysis.rows.road import KINDS, event_words
from gui.translation import tr
from gui.widgets.chart import Axes, AxesFrame, Chart, rounded_range

if TYPE_CHECKING:
    from PySide6.QtGui import QPainter

    from analysis.rows.road import RoadTest
    from gui.shared import Shared


class LevelPlot(Chart):
    """The picture of a road test."""

    def __init__(self, shared: Shared) -> None:
        super().__init__(shared, "Level against time")
        self._test: RoadTest | None = None

    def show_test(self, test: RoadTest) -> None:
        """Show a road test."""
        self._test = test
        self.setAccessibleDescription(tr(f"Events that stand out: {len(test.found.events)}"))
        self.update()

    def axes(self) -> Axes | None:
        """Give room for the levels and the threshold."""
        test = self._test
        if test is None:
            return None
        db = test.levels.db
        y = rounded_range([*db[np.isfinite(db)].tolist(), test.found.threshold_db], 0.1)
        end = float(test.levels.time_s[-1]) + test.levels.block_s / 2
        return Axes((0.0, end), y, f"Level, {KINDS[test.levels.kind]}", "Time, s", (), test.any_simulated)

    def draw(self, painter: QPainter, frame: AxesFrame) -> None:
        """Draw threshold, levels, events."""
        test = self._test
        if test is None:
            return
        t, db = test.levels.time_s, test.levels.db
        box, threshold = frame.box, frame.y(test.found.threshold_db)
        ends = [QPointF(box.left(), threshold), QPointF(box.right(), threshold)]
        self.curve(painter, ends, "muted", 1.5, dashed=True)
        there = np.isfinite(db)
        for part in np.split(np.arange(len(db)), np.flatnonzero(np.diff(there.astype(int))) + 1):
            if there[part[0]]:
                self.curve(painter, (frame.at(float(t[i]), float(db[i])) for i in part.tolist()), "muted", 1.2)
        for at, event in enumerate(test.found.events, 1):
            within = np.flatnonzero((t > event.start_s) & (t < event.end_s) & there)
            self.curve(painter, (frame.at(float(t[i]), float(db[i])) for i in within.tolist()), "text", 3)
            top = within[int(np.argmax(db[within]))]
            place = frame.at(float(t[top]), float(db[top]))
            self.spot(place, event_words(at, event))
            self.note(painter, frame, place + QPointF(-4, -6), str(at))
        self.note(painter, frame, QPointF(box.left() + 8, threshold - 6), "an event begins", "muted")
