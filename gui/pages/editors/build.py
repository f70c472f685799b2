"""The build of the axle: its packs as a drawing to click, what it adds up to, what changed since the one before."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from gui.models.build_entry import BuildEntry
from gui.models.job import problem_of
from gui.translation import tr
from gui.widgets.fitting import Columns, FlowLayout
from gui.widgets.fold import Fold
from gui.widgets.pack_drawing import PackDrawing
from gui.widgets.parts import Choice, Field, button, column, label, line, restyle
from logger.errors import HeldwheelError
from logger.recordings.axles import PART_KINDS

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.models.job import JobCard
    from gui.shared import Shared

TEACH = (
    "What is in the axle: click a part, or add one behind it. Keep sides and order as they come out; never mix packs."
)
NO_TAG = "Give the axle a tag first (What is known): its builds are kept under it, beside the recordings."


def _fields() -> dict[str, Field]:
    return {
        "built": Field("Built", "2026-05-14 16:30"),
        "reason": Field("Why it was opened", "low breakaway"),
        "by": Field("Built by", "A"),
        "left_play": Field("End play left", "0.10 mm"),
        "right_play": Field("End play right", "0.10 mm"),
        "spring": Field("Preload spring", "two disc springs, face to face"),
        "spring_n": Field("Its load on each pack", "1500 N"),
        "face_outer_mm": Field("Friction faces, outer diameter", "98 mm"),
        "face_inner_mm": Field("Friction faces, inner diameter", "70 mm"),
        "pinion_nm": Field("Preload torque at the pinion", "1.2 N·m"),
        "oil": Field("Oil", "75W-90"),
        "oil_l": Field("Amount of oil", "1.15 l"),
        "modifier": Field("Friction modifier", "modifier B"),
        "modifier_l": Field("Its amount, or share of the fill", "50 ml or 4 %"),
        "soak_min": Field("Discs soaked for", "30 min"),
        "soak_in": Field("Soaked in", "the oil that goes in"),
        "notes": Field("Notes", "plate 3 turned round"),
    }


SPRINGS = ("spring", "spring_n", "face_outer_mm", "face_inner_mm", "pinion_nm", "left_play", "right_play")
OILS = ("oil", "oil_l", "modifier", "modifier_l", "soak_min", "soak_in")


class BuildPart(QWidget):
    """The build sheet of the axle on the card; emits ``chart_asked`` with its tag. Its ``keep`` stands in the head."""

    chart_asked = Signal(str)

    def __init__(self, shared: Shared, card: JobCard) -> None:
        super().__init__()
        self.entry = BuildEntry(card, lambda: shared.settings.recordings, shared.display)
        self._display = shared.display
        self._tag: str | None = None
        self._shown = ("", -1, False)  # the part whose thickness stands in the field
        self.which = Choice("Which build")
        self.drawing = PackDrawing(shared.look)
        self.fields = _fields()
        self.thickness, self.note = Field("Thickness of the picked part", "1.98 mm"), Field("Its state", "new, worn …")
        self.adds = {kind: button(f"+ {kind}", partial(self.entry.add, kind)) for kind in PART_KINDS}
        self.inwards = button("Inwards", lambda: self.entry.move(-1), tip="Change places, towards the side gear")
        self.outwards = button("Outwards", lambda: self.entry.move(1), tip="Change places, away from the side gear")
        self.take_out = button("Take out", self.entry.remove, tip="Takes the picked part out. Delete")
        self.both = button("Same on both sides", self.entry.same_on_both, tip="Builds the other side like this one")
        self.keep = button("Keep this build", self._keep, role="main")
        self.schedule = Field("Test it again every", "500 km, 4 weeks, 2 events, 10 figure-eights")
        self.use = Field("It has run (odometer, events, figure-eights)", "53214 km, 1 event")
        self.note_use = button("Note it", self._note_use, tip="Kept with today's day")
        self.chart = button("Chart over time", lambda: self.chart_asked.emit(self.entry.tag), tip="Opens Compare")
        self.teach, self.adds_up = label(TEACH, "caption", wrap=True), label("", wrap=True)
        self.changed, self.message = label("", wrap=True), label("", "caption", wrap=True)
        self._lay_out(shared)
        self._connect()

    def _lay_out(self, shared: Shared) -> None:
        layout = column(self, gap=8)
        layout.addWidget(self.teach)
        layout.addWidget(self.message)
        self.message.hide()
        layout.addWidget(Columns(shared.look, [self.which, self.fields["built"], self.fields["reason"]], 3))
        layout.addWidget(self.drawing)
        row = FlowLayout(gap=6)
        for press in (*self.adds.values(), self.inwards, self.outwards, self.take_out, self.both):
            row.addWidget(press)
        layout.addLayout(row)
        layout.addWidget(Columns(shared.look, [self.thickness, self.note], 2))
        layout.addWidget(self.adds_up)
        layout.addWidget(self.changed)
        self.folds = [
            Fold("Spring, faces, pinion", self._group(shared, SPRINGS)),
            Fold("Oil, modifier, soak", self._group(shared, OILS)),
            Fold("Who, notes", self._group(shared, ("by", "notes"))),
            Fold("When it is tested again", self._life()),
        ]
        for fold in self.folds:
            layout.addWidget(fold)

    def _group(self, shared: Shared, keys: tuple[str, ...]) -> QWidget:
        return Columns(shared.look, [self.fields[key] for key in keys], 2)

    def _life(self) -> QWidget:
        inside = QWidget()
        layout = column(inside, gap=8)
        layout.addWidget(self.schedule)
        row = line(gap=8)
        row.addWidget(self.use, 1)
        row.addWidget(self.note_use, 0, Qt.AlignmentFlag.AlignBottom)
        layout.addLayout(row)
        foot = FlowLayout(gap=10)
        foot.addWidget(self.chart)
        layout.addLayout(foot)
        return inside

    def _connect(self) -> None:
        self.schedule.edit.editingFinished.connect(self._put_schedule)
        entry = self.entry
        for key, field in self.fields.items():
            field.changed.connect(lambda key=key, f=field: entry.type_in(key, f.text))
        for field in (self.thickness, self.note):
            field.changed.connect(lambda: entry.set_part(self.thickness.text, self.note.text))
        self.which.changed.connect(lambda: entry.open(int(self.which.key)))
        self.drawing.picked.connect(entry.pick)
        self.drawing.removed.connect(entry.remove)
        entry.changes.listen(self.refresh)

    def look(self) -> None:
        """Read the sheet of the axle whose tag is on the card, where that is another one."""
        if self._tag != self.entry.tag:
            self._tag = self.entry.tag
            self._say("")
            self.entry.load()

    def refresh(self) -> None:
        """Show the form as it stands."""
        entry = self.entry
        self.which.set_options([("-1", "A new one"), *((str(i), name) for i, name in enumerate(entry.names))])
        self.which.set_key(str(entry.number))
        for key, field in self.fields.items():
            field.set_text(entry.draft.texts.get(key, ""))
            field.show_hint(self._display.in_lengths(tr(field.hint)))
            field.set_wrong(entry.wrong.get(key, ""))
        self.drawing.show_packs(entry.draft.left, entry.draft.right, entry.side, entry.place)
        part = entry.picked
        self.thickness.show_hint(self._display.in_lengths(tr(self.thickness.hint)))
        self.thickness.set_wrong(entry.wrong.get("thickness", ""))
        at = (entry.side, entry.place, part is not None)
        typing = at == self._shown and (self.thickness.edit.hasFocus() or self.note.edit.hasFocus())
        self._shown = at
        if not typing:
            self.thickness.set_text("" if part is None else self._display.typed_length(part.thickness_mm))
            self.note.set_text("" if part is None else part.note)
        for widget in (self.thickness, self.note, self.inwards, self.outwards, self.take_out):
            widget.setEnabled(part is not None)
        self.adds_up.setText("\n".join(line[:1].upper() + line[1:] for line in entry.lines))
        self.adds_up.setVisible(bool(entry.lines))
        before, lines = entry.since
        head = f"Changed since {before}:" if lines else f"Nothing is otherwise than in {before}."
        self.changed.setText("\n".join([head, *(f"•  {line}" for line in lines)]) if before else "")
        self.changed.setVisible(bool(before))
        for widget in (self.keep, self.schedule, self.use, self.note_use, self.chart):
            widget.setEnabled(bool(entry.tag) and not entry.problem)
        if not self.schedule.edit.hasFocus():
            self.schedule.set_text(entry.schedule)
        if entry.problem or not entry.tag:
            self._say(entry.problem or NO_TAG, wrong=bool(entry.problem))

    def _put_schedule(self) -> None:
        if self.schedule.text.strip() != self.entry.schedule:
            self._try(self.schedule, self.entry.put_schedule, "The schedule is kept.")

    def _note_use(self) -> None:
        if self._try(self.use, self.entry.put_use, "Noted with today's day."):
            self.use.set_text("")

    def _try(self, field: Field, put: Callable[[str], None], said: str) -> bool:
        """Keep what is typed in a field, or mark it and say why it cannot be used."""
        try:
            put(field.text)
        except (HeldwheelError, OSError) as error:
            field.set_wrong(problem_of(error))
            return False
        field.set_wrong("")
        self._say(said)
        return True

    def _keep(self) -> None:
        try:
            self._say(self.entry.keep())
        except (HeldwheelError, OSError) as error:
            self._say(problem_of(error), wrong=True)

    def _say(self, text: str, *, wrong: bool = False) -> None:
        self.message.setText(text)
        self.message.setVisible(bool(text))
        restyle(self.message, "wrong" if wrong else "caption")
