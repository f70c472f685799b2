"""Start the window: ``heldwheel``."""

from __future__ import annotations

import gc
import sys
from functools import partial
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import TracebackType

    from gui.main_window import MainWindow

HELP = """heldwheel: the window of Heldwheel

usage: heldwheel [--practise] [--light | --dark]

  --practise   begin with a practice run on the virtual transducer
  --light, --dark   colours of the window
  --version    show the program's version and stop

Choices and lists are kept in the user's configuration folder, or in $HELDWHEEL_HOME.
"""


OPTIONS = ("--practise", "--light", "--dark", "--version", "--help", "-h")
WARM_UP_MS = 300  # after the first paint: the window is there, nobody has pressed anything yet


def build(palette: str = "") -> MainWindow:
    """Build the window from the remembered choices; an application must exist."""
    import msgspec
    from PySide6.QtCore import QLocale

    from gui.collector import Collector
    from gui.confirm import Confirm
    from gui.look import Look
    from gui.main_window import MainWindow
    from gui.models.display import Display
    from gui.models.library import Library
    from gui.models.settings import Settings
    from gui.shared import Shared
    from gui.sound import Sounds
    from gui.tester import Tester
    from gui.translation import by_locale, install

    settings = Settings()
    if settings.fresh:
        settings.choices = msgspec.structs.replace(settings.choices, **by_locale(QLocale.system()))
    choices = settings.choices
    install(choices.language)
    look = Look(palette or choices.palette, choices.scale)
    look.apply()
    display = Display(choices.unit, comma=choices.comma, lengths=choices.lengths)
    shared = Shared(look, display, settings, Library(settings.folder), Sounds(on=choices.sounds), Confirm())
    window = MainWindow(shared, Tester(settings))
    Collector(window)
    return window


def tell(window: MainWindow, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
    """Show an error that nobody expected in the window; a test and its recording go on."""
    from gui.models.job import problem_of
    from gui.models.state import Notice

    sys.__excepthook__(kind, error, trace)
    if isinstance(error, Exception):
        window.tester.run.notice = Notice(problem_of(error), serious=True)
        window.tester.changes.tell()


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program and give its exit code."""
    words = list(sys.argv[1:] if argv is None else argv)
    unknown = [word for word in words if word not in OPTIONS]
    if unknown:
        print(
            f"heldwheel: '{unknown[0]}' is not understood; it takes {', '.join(OPTIONS)}. "
            "Recordings are opened on its Review page, or read with: heldwheel-read pulls FILE",
            file=sys.stderr,
        )
        return 2
    if "--help" in words or "-h" in words:
        print(HELP)
        return 0
    if "--version" in words:
        from logger.version import VERSION

        print(f"heldwheel {VERSION}")
        return 0
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    from gui.pages.test_page import TestPage

    app = QApplication([sys.argv[0]])
    app.setApplicationName("Heldwheel")
    window = build("light" if "--light" in words else "dark" if "--dark" in words else "")
    sys.excepthook = partial(tell, window)
    window.show()
    gc.freeze()  # what has been made by now stays: no collection looks at it again
    page = window.pages.get("Test")
    if isinstance(page, TestPage):
        QTimer.singleShot(WARM_UP_MS, page.warm_up)
    if "--practise" in words:
        window.open_page("Test")
        practise = window.pages["Test"]
        if isinstance(practise, TestPage):
            QTimer.singleShot(0, practise.practise)
    return int(app.exec())


if __name__ == "__main__":
    sys.exit(main())
