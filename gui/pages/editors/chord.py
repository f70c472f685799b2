"""The stud circle from the stud-to-stud distance, where it cannot be measured across."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtWidgets import QFrame

from gui.models.fixture_entry import FIELDS, apart_options, circle_of
from gui.translation import tr
from gui.widgets.parts import Choice, Field, button, column, label, line
from logger.edges.units import INCH_M

if TYPE_CHECKING:
    from gui.models.fixture_entry import FixtureDraft
    from gui.shared import Shared

NEAR_MOST = 2  # common circles that get a button
TEACH = "Where a stud circle cannot be measured across: measure from one stud's edge to the same edge of another."


class ChordPart(QFrame):
    """A distance and how two studs lie; emits ``changed``, ``widened``, and ``taken`` with a key of the lever."""

    changed = Signal()
    taken = Signal(str, str)
    widened = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self.setObjectName("notice")
        self._shared = shared
        caption, hint, _ = FIELDS["chord_mm"]
        self.field = Field(caption, hint)
        self.apart = Choice("The two studs are", apart_options(5))
        self.found = label(TEACH, wrap=True)
        self.takes = [button("") for _ in range(NEAR_MOST + 1)]
        self._takes: list[tuple[str, str]] = []
        layout = column(self, margin=12, gap=8)
        row = line(gap=10)
        row.addWidget(self.field, 1)
        row.addWidget(self.apart, 1)
        layout.addLayout(row)
        layout.addWidget(self.found)
        foot = line(gap=8)
        for take in self.takes:
            foot.addWidget(take)
        foot.addStretch(1)
        layout.addLayout(foot)
        self.field.changed.connect(self.changed)
        self.apart.changed.connect(self.changed)
        for place, take in enumerate(self.takes):
            take.clicked.connect(lambda _on=False, n=place: self.taken.emit(*self._takes[n]))

    def event(self, event: QEvent) -> bool:
        """Tell when what it holds needs another width."""
        done = super().event(event)
        if event.type() is QEvent.Type.LayoutRequest:
            self.widened.emit()
        return done

    def show_draft(self, draft: FixtureDraft) -> None:
        """Show the circle that the distance means, and what may be taken over."""
        self.apart.set_options(apart_options(int(draft.studs or 5)))
        self.apart.set_key(draft.apart)
        circle, wrong = circle_of(draft)
        self.field.set_wrong(wrong)
        self._takes, texts = [], []
        self.found.setText(TEACH)
        if circle is not None:
            number, length = self._shared.display.number, self._shared.display.length
            mm, u_mm = circle.diameter_m * 1e3, circle.u_m * 1e3
            inches = number(circle.diameter_m / INCH_M, 2)
            text = f"Stud circle {number(mm)} mm = {inches} in, standard uncertainty {length(round(u_mm, 1))}."
            if draft.kind == "cross-bar":
                off_mm = circle.midpoint_m * 1e3
                off = length(round(off_mm, 1))
                text += f"\nA bar on these two has its middle {off} off the wheel's centre."
                self._takes, texts = [("offset_mm", f"{off_mm:.1f} mm")], [f"Offset {off}"]
            else:
                common = circle.near_mm[:NEAR_MOST]
                self._takes = [("stud_circle_mm", f"{near:g} mm") for near in common]
                texts = [length(near) for near in common]
                stated = draft.values.get("stud_circle_mm", "").strip()
                if stated:
                    text += f"\nIn use: {stated}, as typed."
                    self._takes.append(("stud_circle_mm", ""))
                    texts.append("As measured")
                else:
                    text += "\nIn use as measured" + ("; common circles near it:" if common else ".")
            self.found.setText(with_unit(text))
        for place, take in enumerate(self.takes):
            take.setVisible(place < len(texts))
            if place < len(texts):
                take.setText(texts[place])
                take.setAccessibleName(tr(f"Stud circle: take {texts[place]}"))


def with_unit(text: str) -> str:
    """Keep figures on one line with their units."""
    return text.replace(" mm", "\u00a0mm").replace(" in,", "\u00a0in,").replace(" in.", "\u00a0in.")
