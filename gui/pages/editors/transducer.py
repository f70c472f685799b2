"""Which transducer: from the saved list, from a description file, or found on this computer."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import Qt

from gui.pages.editors.base import Editor, ShelfBar
from gui.pages.editors.second import SecondPart
from gui.widgets.parts import Choice, Field, button, label, line, open_once

if TYPE_CHECKING:
    from gui.shared import Shared
    from gui.tester import Tester
    from logger.decoder.description import Description


class TransducerEditor(Editor):
    """Picks the card's transducer and its port or address."""

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__("Transducer", "How its bytes become readings, and what its numbers are worth.")
        self._shared, self._card, self._tester = shared, tester.card, tester
        from logger.decoder.description import shipped

        examples = [("", "Choose one"), *((name, name.replace("-", " ")) for name in shipped())]
        self.examples = Choice("Descriptions that come with the program", examples)
        self.address = Field("Port or Bluetooth address", "/dev/ttyUSB0, COM3, or as found below")
        self.facts = label("", wrap=True)
        self.found = Choice("Found on this computer", [("", "Look for ports or Bluetooth")])
        self.message = label("", "warn", wrap=True)
        self.shelf: ShelfBar[Description] = ShelfBar(
            shared.library.transducers, "transducer", self.take, lambda: self._card.description
        )
        self.second = SecondPart(shared, tester.card)
        self._lay_out()
        self.examples.changed.connect(self._example)
        self.found.changed.connect(self._take_found)
        self.address.changed.connect(lambda: self._at(self.address.text.strip()))
        self.load()

    def _lay_out(self) -> None:
        self.body.addWidget(self.shelf)
        known = line(gap=10)
        known.addWidget(self.examples, 1)
        tip = "For one without a description: listen while it is loaded and unloaded"
        known.addWidget(button("Learn an unknown one", self.learn, tip=tip), 0, Qt.AlignmentFlag.AlignBottom)
        self.body.addLayout(known)
        self.body.addWidget(self.address)
        row = line(gap=10)
        row.addWidget(self.found, 1)
        for text, press, tip in (
            ("Ports", self._look, "Lists serial ports; opens none and sends nothing"),
            ("Bluetooth", self._listen, "Listens a few seconds; connects to nothing"),
            ("Ask it", self._ask, "Connects once to the Bluetooth device to learn what it sends"),
        ):
            row.addWidget(button(text, press, tip=tip), 0, Qt.AlignmentFlag.AlignBottom)
        self.body.addLayout(row)
        self.body.addWidget(self.message)
        worth = line(gap=10)
        worth.addWidget(label("What its numbers are worth", "head"), 1)
        worth.addWidget(button("Check with weights", self.weigh, tip="Hang known weights on an arm of known length"))
        self.body.addLayout(worth)
        self.body.addWidget(self.facts)
        self.body.addWidget(self.second)
        self.body.addStretch(1)

    def load(self) -> None:
        """Show the card's transducer."""
        self.address.set_text(self._card.address)
        self.second.load()
        self.refresh()

    def take(self, description: Description) -> None:
        """Use a transducer that was picked, where it was last used; a practice ends with that."""
        if self._card.practice:
            self._tester.fresh()
        address = self._tester.last_port(description) or self._card.address
        self._card.put(description=description, address=address)
        self.message.setText("")
        self.load()

    def learn(self) -> None:
        """Listen to a transducer that has no description."""
        from gui.pages.learn_dialog import LearnDialog

        dialog = LearnDialog(self._shared, self._tester, self.address.text.strip(), self)
        dialog.learned.connect(self._take_learned)
        open_once(dialog)

    def _take_learned(self, description: Description, address: str) -> None:
        self._card.put(description=description, address=address or self._card.address)
        self.shelf.reload()
        self.shelf.list.set_key(description.name)
        self._say("Check it against the transducer's own display, and with a push by hand, before you rely on it.")
        self.load()

    def weigh(self) -> None:
        """Check it with known weights, or try that on the virtual one."""
        from gui.pages.weigh_dialog import WeighDialog

        dialog = WeighDialog(self._shared, self._tester, self)
        dialog.kept.connect(lambda: self._card.put(description=self._card.description))
        dialog.kept.connect(self.refresh)
        dialog.calibrated.connect(lambda description: self._take_learned(description, ""))
        open_once(dialog)

    def _example(self) -> None:
        from logger.decoder.description import read_description
        from logger.errors import HeldwheelError

        if not self.examples.key:
            return
        try:
            self.take(read_description(self.examples.key))
        except HeldwheelError as error:
            self.message.setText(str(error))

    def _look(self) -> None:
        from logger.links.serial_port import serial_ports

        options = [(port.device, f"{port.device}  {port.text}".strip()) for port in serial_ports()]
        self._offer(options, "No serial port on this computer")

    def _listen(self) -> None:
        from gui.models.radio import heard

        self.message.setText("Listening for Bluetooth devices …")
        self._tester.ask_later(heard(), lambda found: self._offer(found, "No Bluetooth device was heard"), self._say)

    def _offer(self, options: list[tuple[str, str]], none: str) -> None:
        self.message.setText("" if options else f"{none}. Is the transducer switched on and near?")
        self.found.set_options(options or [("", none)])
        self._take_found()

    def _ask(self) -> None:
        from gui.models.radio import introduced

        if not self._card.address:
            self._say("Choose a Bluetooth device first.")
            return
        known = self._card.description
        known = known if known is not None and known.link == "ble" else None
        self.message.setText("Asking the device what it sends …")
        self._tester.ask_later(introduced(self._card.address, known), self.take, self._say)

    def _say(self, text: str) -> None:
        self.message.setText(text)

    def _take_found(self) -> None:
        if self.found.key:
            self.address.set_text(self.found.key)
            self._at(self.found.key)

    def _at(self, address: str) -> None:
        """Take a port or an address; the virtual transducer of a practice has none."""
        if self._card.practice:
            self._tester.fresh()
        self._card.put(address=address)

    def refresh(self) -> None:
        """Show what is known of it."""
        description = self._card.description
        if description is None:
            self.facts.setText("No transducer chosen.")
            return
        from logger.links.build import asks

        facts, display = self._card.facts, self._shared.display
        lines = [f"Name: {facts.name or description.name}"]
        if asks(description):
            lines.append(f"It must be asked: {asks(description)}. You see the bytes and agree before any is sent.")
        if facts.serial:
            lines.append(f"Serial number: {facts.serial}")
        if facts.capacity_nm:
            lines.append(f"Capacity: {display.torque(facts.capacity_nm)}")
        if facts.accuracy_percent_of_reading is not None:
            lines.append(f"Accuracy: ± {display.number(facts.accuracy_percent_of_reading, 2)} % of reading, 95 %")
        else:
            lines.append("Accuracy: not stated, so the interval leaves it out")
        if facts.certificate:
            due = f", due {facts.certificate_due}" if facts.certificate_due else ""
            lines.append(f"Certificate: {facts.certificate}{due}")
        if facts.weight_check:
            lines.append(f"Checked with weights: {facts.weight_check}")
        if self._card.expired():
            lines.append(f"▲ {self._card.expired()}")
        extra = msgspec.structs.asdict(facts)
        if extra.get("sign") == "none":
            lines.append("It shows no sign: the direction of a pull cannot be determined")
        self.facts.setText("\n".join(lines))
