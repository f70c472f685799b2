"""What has been written, with a way to it: open it, print it, or show it in its folder."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget

from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import button, column, label, restyle


class WrittenBar(QWidget):
    """Says where a file went; its buttons hand it to the desktop."""

    def __init__(self) -> None:
        super().__init__()
        self.path: Path | None = None
        self.text = label("", "", wrap=True)
        self._presses = QWidget()
        presses = FlowLayout(self._presses, gap=10)
        self.open_button = button("Open the file", self.open, tip="With the program that this kind of file opens with")
        self.show_button = button("Show in folder", self.show_folder)
        self.print_button = button("Print", self.print, tip="On paper, sheet by sheet")
        for press in (self.open_button, self.print_button, self.show_button):
            presses.addWidget(press)
        inside = column(self, gap=8)
        inside.addWidget(self.text)
        inside.addWidget(self._presses)
        self.say("")

    def say(self, text: str, *, wrong: bool = False) -> None:
        """Say something without a file; nothing hides it all."""
        self.path = None
        self.text.setText(text)
        restyle(self.text, "wrong" if wrong else "")
        self._presses.hide()
        self.setVisible(bool(text))

    def show_file(self, path: str) -> None:
        """Say where a file went."""
        self.say(f"Written: {path}")
        self.path = Path(path)
        self.print_button.setVisible(self.path.suffix == ".pdf")
        self._presses.show()

    def print(self) -> None:
        """Ask for a printer and print the page."""
        from gui.printing import ask_and_print

        if self.path is not None:
            ask_and_print(self.path, self)

    def open(self) -> None:
        """Open the file with the desktop's program."""
        if self.path is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.path)))

    def show_folder(self) -> None:
        """Open its folder."""
        if self.path is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.path.parent)))
