"""Pictures of every page, state, theme and size, to be looked at."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from PySide6.QtWidgets import QApplication

from tests.gui.shots import comparing, editing, reviewing, testing
from tests.gui.shots.studio import Studio

SIZES = {"small": (1280, 720), "usual": (1920, 1080)}
STATES = testing.STATES | editing.STATES | reviewing.STATES | comparing.STATES


def shoot(folder: Path, name: str, palette: str, size: str, scale: float = 1.0) -> None:
    studio = Studio(palette, SIZES[size], scale)
    STATES[name](studio)
    studio.settle()
    large = f"-text{round(scale * 100)}" if scale != 1 else ""
    shown = studio.page.far if name == "far" else studio.app.activeModalWidget() or studio.window
    shown.grab().save(str(folder / f"{name}-{palette}-{size}{large}.png"))
    studio.close()


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.gui.shots", description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path, default=Path("shots"))
    parser.add_argument("names", nargs="*", metavar="name", help=f"of {', '.join(STATES)}; all without")
    args = parser.parse_args()
    unknown = [name for name in args.names if name not in STATES]
    if unknown:
        parser.error(f"no such state: {', '.join(unknown)}")
    args.folder.mkdir(parents=True, exist_ok=True)
    app = QApplication.instance() or QApplication([])
    for name in args.names or STATES:
        for palette, size, scale in (("dark", "small", 1.0), ("light", "usual", 1.0), ("dark", "usual", 1.5)):
            shoot(args.folder, name, palette, size, scale)
    app.processEvents()
    return 0


if __name__ == "__main__":
    sys.exit(main())
