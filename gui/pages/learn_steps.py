"""The three steps of learning a transducer, as they are seen; the dialog says what happens between them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontDatabase
from PySide6.QtWidgets import QFileDialog, QGridLayout, QWidget

from analysis.cautions import BEFORE_TURNING
from gui.models.display import grouped
from gui.models.learning import ANY_UNIT, SIGN_WORDS, Naming, plainly, proposed, without_options
from gui.pages.editors.limit import LIMIT_UNITS
from gui.pages.learn_fields import Answers, FieldRows
from gui.translation import tr
from gui.widgets.parts import Choice, Field, button, card, column, label
from logger.decoder.description import command_bytes
from logger.edges.console import clean
from logger.learn.hear import SPEEDS, Place

if TYPE_CHECKING:
    from gui.models.display import Display
    from gui.models.learning import LearningState
    from gui.shared import Shared
    from logger.learn.learn import Wanted

INTERVAL_S = 0.1  # between questions to a device that must be asked
ROWS = 3  # lines shown as they came
KINDS = {"port": "Serial port", "ble": "Bluetooth", "file": "A captured file"}
TASKS = (
    "1   Leave it unloaded for two seconds.",
    "2   Load it clockwise, seen from outside the car, as far as usual. Ease it off.",
    "3   Load it the other way. Ease it off.",
)


class WhereStep(QWidget):
    """A port, a Bluetooth address or a file; emits ``changed`` with the kind."""

    changed = Signal(str)

    def __init__(self, address: str) -> None:
        super().__init__()
        self.path: Path | None = None
        self.kind = Choice("Connected by", KINDS.items())
        self.kind.set_key("ble" if address.count(":") == 5 or address.count("-") == 4 else "port")
        self.ports = Choice("Found on this computer", _ports())
        self.address = Field("Port or Bluetooth address", "/dev/ttyUSB0, COM3, or an address", address)
        speeds = [("", "Find it out"), *((str(speed), f"{speed} baud") for speed in SPEEDS)]
        self.speed = Choice("Speed", speeds)
        self.request = Field("Question, only for one that answers when asked", "leave empty: nothing is sent")
        self.file = button("Choose the file", self._ask_file, tip="Bytes as they came, captured by a terminal program")
        self.file_name = label("", "caption", wrap=True)
        inside = column(self, gap=10)
        about = (
            "Text, frames and Bluetooth packets are understood. Nothing is sent unless you type a question and agree."
        )
        inside.addWidget(label(about, "caption", wrap=True))
        for part in (self.kind, self.ports, self.address, self.speed, self.request, self.file, self.file_name):
            inside.addWidget(part)
        inside.addStretch(1)
        self.kind.changed.connect(self._kind_changed)
        self.ports.changed.connect(lambda: self.address.set_text(self.ports.key))
        self._kind_changed()

    def _kind_changed(self) -> None:
        file, port = self.kind.key == "file", self.kind.key == "port"
        self.file.setVisible(file)
        self.file_name.setVisible(file)
        for part in (self.ports, self.speed, self.request):
            part.setVisible(port)
        self.address.setVisible(not file)
        self.changed.emit(self.kind.key)

    def _ask_file(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, tr("Bytes as they came"), "", f"{tr('All files')} (*)")
        if path:
            self.choose_file(Path(path))

    def choose_file(self, path: Path) -> None:
        """Take a file of bytes that somebody captured."""
        self.path = path
        self.file_name.setText(path.name)

    @property
    def question(self) -> str:
        """What the device is asked, as typed; empty: nothing."""
        return self.request.text.strip() if self.kind.key == "port" else ""

    def place(self) -> Place:
        """Give where to listen.

        Raises:
            InputError: It is no local port, no Bluetooth identity, or no question.
        """
        from logger.links.ports import local_port

        address = self.address.text.strip()
        if self.kind.key == "ble":
            from logger.links.ble import check_identity

            return Place(ble=check_identity(address))
        request = command_bytes(self.question) if self.question else b""
        baud = int(self.speed.key) if self.speed.key else None
        return Place(local_port(address), baud=baud, request=request, interval_s=INTERVAL_S)


def _ports() -> list[tuple[str, str]]:
    from logger.links.serial_port import serial_ports

    found = [(port.device, f"{port.device}  {port.text}".strip()) for port in serial_ports()]
    return [("", "Choose a port" if found else "No serial port is plugged in"), *found]


class ListenStep(QWidget):
    """What to do with the lever, and what comes of it; emits ``chosen`` with the number that is to be the torque."""

    chosen = Signal(str)

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._display = shared.display
        self.figure = label("–", "title")
        self.figure.setStyleSheet(f"font-size: {round(64 * shared.look.scale)}px; font-weight: 600;")
        self.progress, self.raw = label("", wrap=True), label("", "caption", wrap=True)
        self.fields = FieldRows(shared.display)
        self.fields.chosen.connect(self.chosen.emit)
        inside = column(self, gap=10)
        inside.addWidget(label(f"On a wheel: {BEFORE_TURNING[0].lower()}{BEFORE_TURNING[1:]}", "warn", wrap=True))
        for task in TASKS:
            inside.addWidget(label(task, "head", wrap=True))
        frame = card()
        shown = column(frame, margin=14, gap=6)
        for part in (self.figure, self.progress, self.raw):
            shown.addWidget(part)
        inside.addWidget(frame)
        inside.addWidget(self.fields)
        inside.addStretch(1)

    def begin(self, text: str) -> None:
        """Show that nothing has come yet."""
        self.figure.setText("–")
        self.progress.setText(text)
        self.raw.setText("")
        self.fields.show_candidates((), "")

    def show_look(self, look: LearningState, came: int, chosen: str = "") -> None:
        """Show the last reading, how much is understood of so many bytes, and what may be the torque."""
        self.fields.show_candidates(look.candidates, chosen or ("" if "field" in look.asked else look.chosen))
        self.figure.setText(self._display.number(look.now, 2))
        self.figure.setVisible("field" not in look.asked)  # nobody knows yet which number it would be
        self.raw.setText(f"As it came: {clean(look.raw, 80)}" if look.raw else "")
        if look.draft is not None:
            unit = f"In {look.draft.unit}, as sent" if look.unit_sent else "Its unit is not sent"
            unit = (
                unit
                if "field" not in look.asked
                else "Several numbers move; which one follows the lever is asked below"
            )
            understood = f"{percent(look.fits)} of what came is understood"
            self.progress.setText(f"{unit}. {grouped(look.readings)} readings; {understood}")
        elif came:
            unknown = clean("; ".join(look.learned.unknown))
            self.progress.setText(f"{grouped(came)} bytes so far. Not clear yet: {unknown}")
        else:
            self.progress.setText("Nothing came yet.")


class NameStep(QWidget):
    """What was found, and what only the user knows; emits ``changed``."""

    changed = Signal()
    said = Signal()

    def __init__(self, display: Display) -> None:
        super().__init__()
        self._display = display
        self.torque = Choice("Its torque is")
        self.answers = Answers()
        self.found, self.unknown = label("", wrap=True), label("", "warn", wrap=True)
        self.rows = label("", "caption", wrap=True)
        fixed = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
        self.rows.setStyleSheet(f"font-family: '{fixed.family()}';")
        self.unit = Choice("Unit it shows", [("", "Read it off the device"), *((u, u) for u in LIMIT_UNITS)])
        self.sign = Choice("Sign, by the first load", SIGN_WORDS.items())
        self.fields = {
            "name": Field("Name, to find it again", "long transducer, bench 2"),
            "capacity": Field("Capacity, in its unit", "200"),
            "accuracy": Field("Accuracy, % of reading (95 %)", "1"),
            "serial": Field("Serial number", "as on its label"),
        }
        self._lay_out()
        for field in self.fields.values():
            field.changed.connect(self.changed.emit)
        for choice in (self.unit, self.sign):
            choice.changed.connect(self.changed.emit)
        self.torque.changed.connect(self.said.emit)
        self.answers.said.connect(self.said.emit)

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        name, *others = self.fields.values()
        parts: list[QWidget] = [name, self.unit, self.sign, *others]
        for index, part in enumerate(parts):
            grid.addWidget(part, index // 3, index % 3)
            grid.setColumnStretch(index % 3, 1)
        inside = column(self, gap=10)
        for widget in (self.torque, self.answers, self.found, self.unknown):
            inside.addWidget(widget)
        inside.addLayout(grid)
        inside.addWidget(self.rows)
        inside.addStretch(1)

    def show_look(self, look: LearningState) -> None:
        """Show what was found, and what the bytes say of unit and sign."""
        number = self._display.number
        options = [("", "Choose the number that moved with the lever")] if "field" in look.asked else []
        for one in look.candidates:
            span = f"{number(one.least, 2)} to {number(one.greatest, 2)} {one.unit}".strip()
            place, name = f"number {one.number}", plainly(one.name).replace("_", " ")
            options.append((str(one.number), f"{place}: {span}" if name == place else f"{place}, {name}: {span}"))
        self.torque.set_options(options)
        self.torque.set_key(next((str(c.number) for c in look.candidates if c.name == look.chosen), ""))
        if "field" in look.asked:
            self.torque.set_key("")
        self.torque.box.setEnabled(len(options) > 1)
        self.answers.ask(look.asked)
        self.found.setText(
            clean(
                " · ".join((f"{percent(look.fits)} of what came is understood", *map(plainly, look.learned.found))), 700
            )
        )
        self.unknown.setText(
            "\n".join(f"Not clear: {clean(plainly(without_options(text)))}" for text in look.learned.unknown)
        )
        self.unknown.setVisible(bool(look.learned.unknown))
        stand_in = "" if look.unit_sent else f" {ANY_UNIT}"  # a unit that nobody has said is not shown
        shown = [(clean(raw, 60), clean(value, 80).replace(stand_in, "")) for raw, value in look.learned.shown[:ROWS]]
        self.rows.setText("\n".join(f"{raw}  →  {_value_words(value)}" for raw, value in shown))
        start = proposed(look)
        if look.unit_sent or not self.unit.key:
            self.unit.set_key(start.unit)
        self.unit.box.setEnabled(not look.unit_sent)
        self.sign.set_key(start.sign)

    def naming(self) -> Naming:
        """Give what the user says."""
        typed = {key: field.text for key, field in self.fields.items()}
        return Naming(unit=self.unit.key, sign=self.sign.key, **typed)

    def wanted(self, before: Wanted) -> Wanted:
        """Give what the user has said about the bytes so far."""
        return replace(self.answers.added(before), field=self.torque.key or before.field)

    def mark(self, wrong: dict[str, str]) -> None:
        """Mark what is typed and cannot be used."""
        for key, field in self.fields.items():
            field.set_wrong(wrong.get(key, "") if field.text.strip() else "")


def percent(share: float) -> str:
    """Give a share in words.

    >>> percent(0.993)
    '99 %'
    """
    return f"{share * 100:.0f} %"


def _value_words(value: str) -> str:
    """Name the numbers in words and in the user's language: ``torque 0.03, number 3 21.5``.

    >>> _value_words("torque -0, value3 21.5, status ok")
    'torque 0, number 3 21.5, status ok'
    """
    parts = (part.partition(" ") for part in value.split(", "))
    return ", ".join(f"{tr(plainly(name))}{gap}{'0' if figure == '-0' else figure}" for name, gap, figure in parts)
