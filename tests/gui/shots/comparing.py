"""The Compare page: each answer."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from tests.gui.shots.studio import Studio, wait, with_recordings


def comparing(studio: Studio, answer: str, search: str, quantity: str = "breakaway"):
    """Open an answer of the Compare page on what a search finds."""
    if not (Path(os.environ["HELDWHEEL_HOME"]) / "recordings").exists():
        with_recordings()
    studio.window.open_page("Compare")
    page = studio.window.pages["Compare"]
    page.search.edit.setText(search)
    page.quantity.set_key(quantity)
    page.look()
    wait(studio, lambda: page.settled)
    page.open_answer(answer)
    wait(studio, lambda: page.settled)
    return page


def answered(studio: Studio, page) -> None:
    page.ask()
    wait(studio, lambda: page.settled)
    assert page.panel.answer is not None, page.panel.teaching.text()


def compare(studio: Studio) -> None:
    page = comparing(studio, "Groups", "04-fluid")
    page.panel.by.set_key("fluid")
    page.panel._by_changed()
    page.panel.control.set_key("reference")
    page.panel.margin.edit.setText("4")
    answered(studio, page)


def compare_mixed(studio: Studio) -> None:
    page = comparing(studio, "Groups", "")
    page.panel.by.set_key("modifier")
    page.panel._by_changed()
    answered(studio, page)
    page.panel.tabs.tabs[-1].click()


def compare_refused(studio: Studio) -> None:
    with_recordings()
    home = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    (home / "01-arrival-left.sidecar.toml").write_text('[test]\nheld = "case"\nplace = "bench"\n', "utf-8")
    page = comparing(studio, "Groups", "01-arrival")
    page.panel.by.set_key("side")
    page.panel._by_changed()
    answered(studio, page)


def compare_trend(studio: Studio) -> None:
    page = comparing(studio, "Trend", "02-build")
    page.panel.against.set_key("shim_mm")
    page.panel.wanted.edit.setText("60")
    page.panel.at.edit.setText("0.45")
    answered(studio, page)


def compare_run_in(studio: Studio) -> None:
    answered(studio, comparing(studio, "Run-in", "03-run-in", "rotating"))


def compare_over_time(studio: Studio) -> None:
    page = comparing(studio, "Over time", "05-event", "rotating")
    page.panel.baseline.edit.setText("4")
    answered(studio, page)


def compare_plan(studio: Studio) -> None:
    page = comparing(studio, "Plan", "04-fluid")
    page.panel.source.set_key("fluid")
    page.panel._suggest()
    page.panel.amount.edit.setText("2")
    page.panel.seed.edit.setText("7")
    answered(studio, page)


def compare_study(studio: Studio) -> None:
    answered(studio, comparing(studio, "Our repeatability", "07-study"))


def compare_pairs(studio: Studio) -> None:
    page = comparing(studio, "Our repeatability", "07-study")
    page.panel.kind.set_key("pairs")
    answered(studio, page)


def compare_batch(studio: Studio) -> None:
    compare(studio)
    page = studio.window.pages["Compare"]
    page.batch.write(page.paths, str(Path(os.environ["HELDWHEEL_HOME"]) / "season.csv"), "recording")
    from gui.models.batching import how_far

    wait(studio, lambda: how_far(page.batch.worker.room) is not None or not page.batch.running)
    page.batch._look()


def compare_empty(studio: Studio) -> None:
    comparing(studio, "Groups", "")


STATES: dict[str, Callable[[Studio], None]] = {
    "compare": compare,
    "compare-trend": compare_trend,
    "compare-mixed": compare_mixed,
    "compare-refused": compare_refused,
    "compare-run-in": compare_run_in,
    "compare-over-time": compare_over_time,
    "compare-plan": compare_plan,
    "compare-study": compare_study,
    "compare-pairs": compare_pairs,
    "compare-batch": compare_batch,
    "compare-empty": compare_empty,
}
