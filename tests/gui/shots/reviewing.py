"""The Review page."""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtTest import QTest

from gui.pages.road_dialog import RoadDialog
from logger.header import Axle
from tests.gui.shots.studio import Studio, wait, with_recordings


def ratio_judged(studio: Studio) -> None:
    from tests.analysis.halves import recording

    folder = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    for gear, nm in (("neutral", 12.0), ("in gear", 40.0)):
        recording(folder, gear, nm)
    studio.window.open_page("Review")
    page = studio.window.pages["Review"]
    wait(studio, lambda: page.all_s > 0)
    page.list.table.selectAll()
    wait(studio, lambda: len(page._loaded) == 2)


def review(studio: Studio) -> None:
    with_recordings()
    studio.window.open_page("Review")
    page = studio.window.pages["Review"]
    wait(studio, lambda: page.all_s > 0)
    page.list.search.edit.setText("shim")
    page.list.refilter()
    page.list.table.selectRow(1)
    wait(studio, lambda: bool(page._loaded), say=lambda: page.reading._empty.text())
    page.reading.pulls.selectRow(0)
    page.reading.plot.show_all()


def drives(folder: Path) -> tuple[str, str]:
    """Write a drive before and one after, simulated."""
    from tests.analysis.drives import drive, write_wav

    loud, calm = ((6.0, 7.5), (13.0, 14.0), (21.0, 24.0), (31.0, 32.5)), ((13.0, 14.0),)
    before = write_wav(folder / "before.wav", drive(4000, 40.0, loud, 0.08), 4000)
    return before, write_wav(folder / "after.wav", drive(4000, 40.0, calm, 0.03, seed=2), 4000)


def road(studio: Studio) -> None:
    """A drive after the work, beside the one before it and the axle's test."""
    from tests.analysis.halves import recording

    folder = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    recording(folder, "neutral", 40.0, axle=Axle(tag="43-11"), started=datetime(2026, 5, 14, tzinfo=UTC))
    before, after = drives(folder)
    studio.window.take([after])
    dialog = studio.window.pages["Review"].findChild(RoadDialog)
    QTest.keyClicks(dialog.axle.edit, "43-11")
    dialog.compare_with(before)
    wait(studio, lambda: dialog.test is not None and dialog.test.difference is not None, say=dialog.wrong.text)
    studio.settle()


def about(studio: Studio) -> None:
    studio.window.show_about()
    studio.settle()


def guide(studio: Studio) -> None:
    studio.window.show_guide()
    studio.settle()


def settings(studio: Studio) -> None:
    """The settings as they are at first: nothing of the workshop is known."""
    studio.window.show_settings()
    studio.settle()


def details(studio: Studio) -> None:
    """What is put right of a recording afterwards."""
    review(studio)
    page = studio.window.pages["Review"]
    page.reading.details_asked.emit(page.reading.path)
    studio.settle()


def reports(studio: Studio) -> None:
    from PySide6.QtWidgets import QDialog

    from gui.models.issuing import PAPERS

    review(studio)
    studio.window._shared.settings.remember(
        shop="Hillfoot Workshop", address="Old Quarry Road 3 / Hillfoot", authorised="operator C", paper=PAPERS[1][0]
    )
    studio.window.show_settings()
    wait(studio, lambda: any(part.isVisible() for part in studio.window.findChildren(QDialog)))


def review_empty(studio: Studio) -> None:
    studio.window.open_page("Review")
    wait(studio, lambda: studio.window.pages["Review"].all_s > 0)


def review_correct(studio: Studio) -> None:
    review(studio)
    page = studio.window.pages["Review"]
    page.reading._begin_correcting()


def review_budget(studio: Studio) -> None:
    review(studio)
    page = studio.window.pages["Review"]
    page.reading.switch.set_on("Budget")
    page.reading._show_below("Budget")


def review_overlay(studio: Studio) -> None:
    review(studio)
    page = studio.window.pages["Review"]
    page.list.table.selectAll()
    wait(studio, lambda: len(page._loaded) >= 4)


STATES: dict[str, Callable[[Studio], None]] = {
    "review-ratio": ratio_judged,
    "review": review,
    "road": road,
    "review-empty": review_empty,
    "reports": reports,
    "settings": settings,
    "about": about,
    "guide": guide,
    "details": details,
    "review-correct": review_correct,
    "review-budget": review_budget,
    "review-overlay": review_overlay,
}
