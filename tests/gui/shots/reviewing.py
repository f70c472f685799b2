"""The Review page."""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
from PySide6.QtTest import QTest

from gui.pages.before_dialogs import InertiaDialog, TyresDialog
from gui.pages.road_dialog import RoadDialog
from logger.header import Axle, Sidecar
from logger.recordings.sidecar import change_sidecar
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
    wait(studio, lambda: len(page.readings.loaded) == 2)


def review(studio: Studio) -> None:
    with_recordings()
    studio.window.open_page("Review")
    page = studio.window.pages["Review"]
    wait(studio, lambda: page.all_s > 0)
    page.list.search.edit.setText("shim")
    page.list.refilter()
    page.list.table.selectRow(1)
    wait(studio, lambda: bool(page.readings.loaded), say=lambda: page.reading._empty.text())
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


def spin_down(folder: Path) -> Path:
    """Write a wheel that runs out from 12 rad/s at 3.75 rad/s², its angle to a tenth of a degree, simulated."""
    folder.mkdir(parents=True, exist_ok=True)
    t = np.arange(0.0, 5.0, 0.01)
    on = np.minimum(np.maximum(t - 0.5, 0.0), 12 / 3.75)
    angle = np.round(np.degrees(12 * on - 3.75 * on**2 / 2), 1)
    path = folder / "spin-down.csv"
    rows = np.column_stack((t, np.zeros(len(t)), angle))
    np.savetxt(path, rows, "%.2f", ",", header="time_s,torque_Nm,angle_deg", comments="", encoding="utf-8")
    change_sidecar(path, lambda _none: Sidecar(simulated=True))
    return path


def inertia(studio: Studio) -> None:
    """A spin-down with its drag and the torque that will be measured."""
    path = spin_down(Path(os.environ["HELDWHEEL_HOME"]) / "recordings")
    studio.window.show_recordings((str(path),))
    page = studio.window.pages["Review"]
    wait(studio, lambda: bool(page.list.selected()))
    page.show_inertia()
    dialog = page.findChild(InertiaDialog)
    for key, text in (("drag", "9 N·m"), ("torque", "27 N·m")):
        QTest.keyClicks(dialog.fields[key].edit, text)
    wait(studio, lambda: dialog.told is not None, say=dialog.said.text)


def tyres(studio: Studio) -> None:
    """Tyres that are not alike, on the Axle card."""
    studio.page.open_row("Axle")
    editor = studio.page.editor("Axle")
    editor.compare_tyres()
    dialog = editor.findChild(TyresDialog)
    for key, text in (("left", "1985 mm"), ("right", "1940 mm")):
        QTest.keyClicks(dialog.fields[key].edit, text)
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
    wait(studio, lambda: len(page.readings.loaded) >= 4)


STATES: dict[str, Callable[[Studio], None]] = {
    "review-ratio": ratio_judged,
    "review": review,
    "road": road,
    "inertia": inertia,
    "tyres": tyres,
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
