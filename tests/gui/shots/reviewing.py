"""The Review page."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

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
