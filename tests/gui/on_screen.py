"""Run by ``test_pixels`` on a real X server: a practice job, and what the pixels say. Prints one line of JSON."""

from __future__ import annotations

import json
import sys
import time
from typing import TYPE_CHECKING

from PySide6.QtCore import QRect
from PySide6.QtWidgets import QApplication

from gui.__main__ import build
from gui.models.flow import Step
from tests.gui.contrast import contrast

if TYPE_CHECKING:
    from PySide6.QtGui import QImage


def colours(image: QImage, box: QRect) -> dict[str, int]:
    found: dict[str, int] = {}
    for x in range(box.left(), box.right(), 2):
        for y in range(box.top(), box.bottom(), 2):
            name = image.pixelColor(x, y).name()
            found[name] = found.get(name, 0) + 1
    return found


def main(palette: str) -> None:
    app = QApplication([])
    window = build(palette)
    window._shared.sounds.on = False
    window._shared.confirm.always = True
    window.tester.practice_speed = 12.0
    window.show()

    def until(condition) -> None:
        begun = time.monotonic()
        while not condition():
            app.processEvents()
            time.sleep(0.002)
            if time.monotonic() - begun > 40:
                raise TimeoutError(str(condition))

    page, run = window.pages["Test"], lambda: window.tester.run
    page.practise()
    until(lambda: str(run().link) == "live")
    for _ in range(3):
        page.act()
    until(lambda: run().flow.now is Step.PULLS)
    until(lambda: len(run().pulls.counting) >= 1)
    until(lambda: run().coach.loaded)
    ratio = window.devicePixelRatioF()
    image = window.grab().toImage()

    def box(widget) -> QRect:
        at = widget.mapTo(window, widget.rect().topLeft())
        return QRect(
            int(at.x() * ratio), int(at.y() * ratio), int(widget.width() * ratio), int(widget.height() * ratio)
        )

    figure, trace = colours(image, box(page.live.figure)), colours(image, box(page.live.plot))
    ground = max(figure, key=lambda name: figure[name])
    strongest = max(contrast(name, ground) for name in figure)
    said = {
        "platform": app.platformName(),
        "ratio": ratio,
        "figure": page.live.view.now,
        "figure_contrast": strongest,
        "trace_points": trace.get(window._shared.look.palette.trace, 0),
        "band_points": trace.get(window._shared.look.palette.band, 0),
        "size": [image.width(), image.height()],
    }
    window.close()
    print(json.dumps(said))


if __name__ == "__main__":
    main(sys.argv[1])
