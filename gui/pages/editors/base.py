"""What all editors share: a title, a list of what is saved, a way to import and export files, a way back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Generic, TypeVar

import msgspec
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QPushButton, QVBoxLayout, QWidget

from gui.models.job import problem_of
from gui.translation import tr
from gui.widgets.fitting import Beside
from gui.widgets.parts import Choice, button, card, column, label, line, restyle, scrolled
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.models.library import Shelf

R = TypeVar("R", bound=msgspec.Struct)
TOML = "TOML files (*.toml)"


class ShelfBar(QWidget, Generic[R]):
    """Pick a saved entry, save the present one, bring one in from a file, send one out.

    Args:
        shelf: The list.
        what: One of them, in words.
        take: Given the entry that was picked or brought in.
        give: Gives the entry to save; None while it cannot be saved.
    """

    def __init__(self, shelf: Shelf[R], what: str, take: Callable[[R], object], give: Callable[[], R | None]) -> None:
        super().__init__()
        self._shelf, self._what, self._take, self._give = shelf, what, take, give
        self.list = Choice(f"Saved {what}s")
        self._buttons: dict[str, QPushButton] = {}
        self.message = label("", "caption", wrap=True)
        self.message.hide()
        self.list.changed.connect(self._picked)
        layout = column(self, gap=4)
        side = QWidget()
        buttons = line(gap=8)
        for text, press, tip in (
            ("Save", self.save, "Keep it in the list under its name"),
            ("Import", self._ask_in, "Read it from a TOML file"),
            ("Export", self._ask_out, "Write it to a TOML file for somebody else"),
            ("Remove", self.remove, "Remove the picked one from the list"),
            ("Undo", self.undo, "Take the last saving or removing back"),
        ):
            self._buttons[text] = button(text, press, tip=tip)
            buttons.addWidget(self._buttons[text])
        inside = column(side, gap=3)
        inside.addWidget(label("", "caption"))
        inside.addLayout(buttons)
        layout.addWidget(Beside([(self.list, 1), (side, 0)], gap=8))
        layout.addWidget(self.message)
        self.reload()

    def reload(self) -> None:
        """Read the list again."""
        names = list(self._shelf.entries())
        first = f"Pick one of {len(names)}" if names else "Nothing saved yet"
        self.list.set_options([("", first), *((name, name) for name in names)])
        self._buttons["Undo"].setVisible(self._shelf.can_undo)
        self.say("\n".join(self._shelf.problems), wrong=True)

    def say(self, text: str, *, wrong: bool = False) -> None:
        """Show what came of the last action."""
        self.message.setText(text)
        self.message.setVisible(bool(text))
        restyle(self.message, "wrong" if wrong else "caption")

    def _picked(self) -> None:
        entry = self._shelf.entries().get(self.list.key)
        if entry is not None:
            self._take(entry)

    def save(self) -> None:
        """Save what the editor holds."""
        entry = self._give()
        if entry is None:
            self.say(f"This {self._what} has faults; put them right first.", wrong=True)
            return
        replaces = self._shelf.entries().get(str(getattr(entry, "name", "")), entry) != entry
        try:
            path = self._shelf.save(entry)
        except HeldwheelError as error:
            self.say(str(error), wrong=True)
            return
        self.reload()
        self.list.set_key(self._shelf.name_of(path))
        self.say(f"Saved as {path.name}" + (", instead of the one of this name; Undo brings it back" * replaces))

    def remove(self) -> None:
        """Take the picked entry off the list; its file is kept under another name."""
        name = self.list.key
        if not name:
            self.say(f"Pick a saved {self._what} first.")
            return
        self._change(lambda: self._shelf.remove(name), f"{name} is removed from the list; Undo brings it back")

    def undo(self) -> None:
        """Take the last saving or removing back."""
        self._change(self._shelf.undo, "The list is as it was before")

    def _change(self, change: Callable[[], object], said: str) -> None:
        try:
            change()
        except HeldwheelError as error:
            self.say(str(error), wrong=True)
            return
        self.reload()
        self.say(said)

    def bring_in(self, path: Path) -> None:
        """Read an entry from a file."""
        try:
            entry = self._shelf.bring_in(path)
        except (HeldwheelError, OSError) as error:
            self.say(problem_of(error), wrong=True)
            return
        self.reload()
        name = str(getattr(entry, "name", ""))
        self.list.set_key(name)
        self._take(entry)
        self.say(f"Imported from {path.name} as {name}")

    def send_out(self, path: Path) -> None:
        """Save, and write the entry to a file."""
        self.save()
        try:
            self._shelf.send_out(self.list.key, path)
        except HeldwheelError as error:
            self.say(str(error), wrong=True)
            return
        self.say(f"Written to {path}")

    def _ask_in(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, tr(f"Import a {self._what}"), "", TOML)
        if path:
            self.bring_in(Path(path))

    def _ask_out(self) -> None:
        path, _ = QFileDialog.getSaveFileName(self, tr(f"Export this {self._what}"), f"{self._what}.toml", TOML)
        if path:
            self.send_out(Path(path))


class Editor(QWidget):
    """A card with a title, a body and a button back; in ``head`` stands what must stay in sight."""

    closed = Signal()
    settled = Signal()  # what can be pressed may be otherwise now

    def __init__(self, title: str, about: str = "") -> None:
        super().__init__()
        self._generation = -1  # of the card that the form shows
        outer = column(self)
        frame = card()
        outer.addWidget(frame)
        inside = column(frame, margin=16, gap=10)
        head = self.head = line(gap=10)
        words = column(gap=2)
        words.addWidget(label(title, "title", wrap=True))
        if about:
            words.addWidget(label(about, "caption", wrap=True))
        head.addLayout(words, 1)
        self.done = button("Done", self.closed.emit, tip="Key Esc")
        head.addWidget(self.done)
        inside.addLayout(head)
        body = QWidget()
        self.body: QVBoxLayout = column(body, gap=10)
        self.area = scrolled(body)
        inside.addWidget(self.area, 1)

    def load(self) -> None:
        """Show the card."""

    def follow(self, generation: int) -> None:
        """Show the card anew where it has become another one; what is half typed on the same card stays."""
        if generation != self._generation:
            self._generation = generation
            self.load()

    def begin(self) -> None:
        """Put the keyboard's focus where filling in begins."""
        self.setFocus()
