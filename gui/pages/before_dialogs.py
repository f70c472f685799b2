"""Before the test: tyres of unlike circumference, and inertia from a spin-down; said as the commands say it."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QWidget

from analysis.identify.tyres import MEASURE, SOURCE, UNLIKE, lines_of, tyre_mismatch
from analysis.rows.run_out import RunOut, run_out
from analysis.trace.spin_down import CAUTION, HOW
from gui.models.typed import quantity
from gui.translation import tr
from gui.widgets.parts import Field, button, column, dialog_size, label, line, scrolled
from logger.edges.units import parse_number
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from concurrent.futures import Future

    from gui.shared import Shared
    from gui.work import Worker
    from logger.edges.units import Kind


class _Typed(QDialog):
    """Fields over what is said of them, anew with every change."""

    def __init__(self, shared: Shared, title: str, about: tuple[str, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr(title))
        self._shared = shared
        self.fields: dict[str, Field] = {}
        self.said = label("", wrap=True)
        self.said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._about = about
        self.resize(dialog_size(parent, 820 * shared.look.scale, 460 * shared.look.scale))

    def lay_out(self, title: str, rows: tuple[tuple[str, ...], ...]) -> None:
        """Put the fields in rows, and the rest above and below them."""
        body = QWidget()
        inside = self.inside = column(body, gap=10)
        inside.addWidget(label(title, "head", wrap=True))
        for text in self._about:
            inside.addWidget(label(text, wrap=True))
        for keys in rows:
            row = line(gap=10)
            for key in keys:
                self.fields[key].changed.connect(self.look)
                self.fields[key].show_hint(self._shared.display.in_lengths(tr(self.fields[key].hint)))
                row.addWidget(self.fields[key], 1)
            inside.addLayout(row)
        inside.addWidget(self.said)
        inside.addStretch(1)
        layout = column(self, margin=16, gap=10)
        layout.addWidget(scrolled(body), 1)
        foot = line(gap=10)
        foot.addStretch(1)
        foot.addWidget(button("Close", self.accept, role="main", tip="Key Esc"))
        layout.addLayout(foot)

    def look(self) -> None:
        """Say what follows from what is typed."""
        raise NotImplementedError

    def written(self, key: str, kind: Kind) -> str:
        """Give what is typed; a torque without a unit is in the one on screen."""
        text = self.fields[key].text.strip()
        try:
            parse_number(text)
        except HeldwheelError:
            return text
        return f"{text} {self._shared.display.unit}" if kind == "torque" else text

    def typed(self, key: str, kind: Kind, otherwise: float | None = None) -> float | None:
        """Read a field; None where it is empty or wrong, which it then says."""
        field = self.fields[key]
        try:
            value = quantity(self.written(key, kind), kind) if field.text.strip() else otherwise
        except HeldwheelError as error:
            field.set_wrong(str(error))
            return None
        field.set_wrong("")
        return value


class TyresDialog(_Typed):
    """What two circumferences do to the differential, straight ahead."""

    def __init__(self, shared: Shared, parent: QWidget) -> None:
        super().__init__(shared, "Tyres alike?", (MEASURE,), parent)
        self.fields = {
            "left": Field("Circumference, left", "1985 mm"),
            "right": Field("Circumference, right", "1985 mm"),
            "u": Field("Standard uncertainty of each", "3 mm"),
            "speed": Field("Road speed, km/h", "100"),
        }
        self.lay_out(UNLIKE, (("left", "right"), ("u", "speed")))

    def look(self) -> None:
        """Say it, as far as both are typed."""
        self.said.setText("")
        left, right = self.typed("left", "length"), self.typed("right", "length")
        u, speed = self.typed("u", "length", 3e-3), self.fields["speed"]
        try:
            km_h = parse_number(speed.text) if speed.text.strip() else 100.0
        except HeldwheelError as error:
            speed.set_wrong(str(error))
            return
        speed.set_wrong("")
        if left is None or right is None or u is None:
            return
        try:
            found = tyre_mismatch(left, right, u, km_h / 3.6)
        except HeldwheelError as error:
            self.said.setText(f"▲ {tr(str(error))}")
            return
        self.said.setText("\n".join(tr(text) for text in (*lines_of(found), SOURCE)))


class InertiaDialog(_Typed):
    """What a recording of a spin-down says of the inertia of what turned."""

    def __init__(self, shared: Shared, path: str, worker: Worker, parent: QWidget) -> None:
        super().__init__(shared, "Inertia from a spin-down", (f"▲ {tr(CAUTION)}", HOW), parent)
        self._path, self._worker = path, worker
        self._asking: Future[RunOut] | None = None
        self.told: RunOut | None = None
        self.simulated = label("SIMULATED", "simulated")
        self.simulated.hide()
        self.fields = {
            "drag": Field("Drag of the same parts", "14.2 N·m"),
            "u": Field("Its standard uncertainty; without: 5 %", "0.5 N·m"),
            "torque": Field("Torque that will be measured", "60 N·m"),
        }
        self.lay_out(os.path.basename(path), (("drag", "u", "torque"),))
        self.inside.insertWidget(1, self.simulated, 0, Qt.AlignmentFlag.AlignLeft)

    def look(self) -> None:
        """Ask the worker, as soon as the drag is typed; the answer to an older question is no longer wanted."""
        if self._asking is not None:
            self._worker.forget(self._asking)
        self._asking, self.told = None, None
        self.said.setText("")
        drag, u, torque = (self.typed(key, "torque") for key in ("drag", "u", "torque"))
        wrong = any(self.fields[key].text.strip() and value is None for key, value in (("u", u), ("torque", torque)))
        if drag is None or wrong:
            return
        written = self.written("torque", "torque") if torque is not None else ""
        self._asking = self._worker.ask(
            run_out, self._path, drag, u, torque, written, then=self._show, failed=self._not_told
        )

    def _show(self, told: RunOut) -> None:
        self._asking, self.told = None, told
        self.simulated.setVisible(told.simulated)
        self.said.setText("\n".join(tr(text) for text in told.lines))

    def _not_told(self, text: str) -> None:
        self._asking = None
        self.said.setText(f"▲ {tr(text)}")

    def done(self, result: int) -> None:
        """Close; an answer is no longer wanted."""
        if self._asking is not None:
            self._worker.forget(self._asking)
        super().done(result)
