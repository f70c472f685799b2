"""Pictures of every page, state, theme and size, to be looked at: ``python -m tests.gui.shots [folder]``."""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from typing import TYPE_CHECKING

import shiboken6
from PySide6.QtWidgets import QApplication

from gui.__main__ import build
from gui.models.flow import Step
from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
from gui.pages.test_page import TestPage
from tests.gui.fakes import FakeStream

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.main_window import MainWindow

EXAMPLES = Path(__file__).parents[2] / "recordings"
SIZES = {"small": (1280, 720), "usual": (1920, 1080)}


class Studio:
    """A window with a fake stream, brought into any state."""

    def __init__(self, palette: str, size: tuple[int, int], scale: float = 1.0) -> None:
        os.environ["HELDWHEEL_HOME"] = tempfile.mkdtemp(prefix="heldwheel-shots-")
        self.window: MainWindow = build(palette)
        self.window.set_sounds(False)
        self.window.tester._opener = self._open
        if scale != 1.0:
            self.window.set_scale(scale)
        self.window.resize(*size)
        self.window.show()
        self.stream = FakeStream()
        self.app = QApplication.instance()
        self.settle()

    def _open(self, _card, _opened) -> FakeStream:
        return self.stream

    @property
    def page(self) -> TestPage:
        page = self.window.pages["Test"]
        assert isinstance(page, TestPage)
        return page

    @property
    def tester(self):
        return self.window.tester

    def settle(self) -> None:
        for _ in range(4):
            self.app.processEvents()

    def tick(self) -> None:
        self.tester.bridge.tick()
        for _ in range(13):
            self.page._tick()
        self.page.refresh()
        self.settle()

    def practise(self) -> None:
        self.page.practise()
        self.tester.bridge._timer.stop()
        self.tick()

    def to_pulls(self) -> None:
        self.practise()
        self.page.act()
        self.page.act()
        self.stream.idle(1.0)
        self.tick()
        self.page.act()
        self.stream.idle(2.5)
        self.tick()
        assert self.tester.run.flow.now is Step.PULLS
        self.tick()

    def close(self) -> None:
        self.window.close()
        shiboken6.delete(self.window)
        self.app.processEvents()


def empty(studio: Studio) -> None:
    pass


def checks(studio: Studio) -> None:
    studio.practise()


def real_checks(studio: Studio) -> None:
    studio.practise()
    studio.tester.card.practice = False
    for index in range(4):
        studio.tester.run.tick(index)
    studio.tick()


def zero(studio: Studio) -> None:
    studio.practise()
    studio.page.act()
    studio.stream.idle(1.0)
    studio.tick()
    studio.page.act()
    studio.stream.idle(0.9)
    studio.tick()


def busy(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.stream.pull()
    studio.tick()
    studio.stream.half_a_pull()
    studio.tick()


def warning(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.stream.pull(stop_nm=30.0, hold_s=1.5)
    studio.stream.pull(turn_rad_s=((0.5, 0.25),))
    studio.tick()
    studio.tester.run.battery = "low"
    studio.tester.run.lost = 34
    studio.tick()
    studio.stream.half_a_pull(2.6)
    studio.tick()


def failed(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.tick()
    studio.stream.half_a_pull(3.0)
    studio.tick()
    studio.stream.fail_disk()
    studio.tick()


def lost(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.tick()
    studio.stream.lose()
    studio.tick()


def finished(studio: Studio) -> None:
    studio.to_pulls()
    for _ in range(3):
        studio.stream.pull()
    studio.tick()
    studio.page.act()
    studio.stream.idle(0.5)
    studio.tick()
    studio.page.act()
    studio.stream.idle(2.5)
    studio.tick()


def with_drag(studio: Studio) -> None:
    """The end of a test that measured the drag first: torque as read, and the packs alone."""
    from gui.models.practice import free_of

    studio.tester.card.with_drag = True
    studio.practise()
    studio.page.act()
    studio.page.act()
    studio.stream.idle(0.5)
    studio.tick()
    studio.page.act()
    studio.stream.idle(2.5)
    studio.tick()
    held = studio.stream.scenario
    studio.stream.scenario = free_of(held)
    studio.stream.pull(ramp_nm_s=12.0, turn_rad_s=((0.6, 6.0),))
    studio.tick()
    studio.page.act()
    studio.tick()
    studio.stream.scenario = held
    for _ in range(3):
        studio.stream.pull()
    studio.tick()
    studio.page.act()
    studio.stream.idle(0.5)
    studio.tick()
    studio.page.act()
    studio.stream.idle(2.5)
    studio.tick()


def outside(studio: Studio) -> None:
    import msgspec

    studio.to_pulls()
    card = studio.tester.card
    card.put(limit=msgspec.structs.replace(card.limit, lower=70.0))
    for _ in range(3):
        studio.stream.pull()
    studio.tick()


def editor(name: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        fill_card(studio.tester.card, PracticeLink(scenario_for_practice()))
        studio.tester.card.practice = False
        studio.page.open_row(name)
        part = studio.page.editor(name)
        if hasattr(part, "load"):
            part.load()
        studio.settle()

    return show


def job_open(studio: Studio) -> None:
    """The job's sheet with its folds open and two photographs."""
    from logger.header import Photo

    editor("Job")(studio)
    photos = tuple(Photo(file=f"photo-{name}-1a2b3c4d.jpg", sha256="ab" * 32) for name in ("tag", "hold"))
    studio.tester.card.put(photos=photos)
    part = studio.page.editor("Job")
    part.load()
    for fold in part.folds.values():
        fold.open()
    studio.settle()
    bar = part.area.verticalScrollBar()
    bar.setValue(bar.maximum())
    studio.settle()


def asked(name: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        from logger.description import read_description

        editor("Transducer")(studio)
        studio.tester.card.put(description=read_description(name), address="/dev/ttyUSB0")
        studio.page.act()
        studio.settle()

    return show


def learning(page: int) -> Callable[[Studio], None]:
    """The dialog that learns a transducer: where it is, loads as they come, what was found."""

    def show(studio: Studio) -> None:
        from concurrent.futures import Future

        from gui.models.learning import look_at
        from gui.pages.learn_dialog import LearnDialog
        from tests.gui.test_learn import chunks, levers, lines

        editor("Transducer")(studio)
        studio.page.editor("Transducer").learn()
        dialog = next(part for part in studio.page.findChildren(LearnDialog) if part.isVisible())
        heard = chunks(lines(levers(-1.0)))
        if page == 1:
            dialog.heard.chunks, dialog._listening = heard[:110], Future()
            dialog.show_step(1)
            dialog._show_so_far(look_at(heard[:110]))
        elif page == 2:
            dialog.show_found(look_at(heard))
        studio.settle()

    return show


AXLE_SEEN = {
    "found": {"brakes": "free", "both-up": "same", "one-held": "even", "in-gear": "much", "slack": "little"},
    "nothing": {"brakes": "free", "both-up": "opposite", "one-held": "free", "in-gear": "free", "slack": "untried"},
}


def axle_turns(studio: Studio) -> None:
    from gui.pages.editors.axle import TURNS

    editor("Axle")(studio)
    part = studio.page.editor("Axle")
    part.show_part(TURNS)
    part.entry.count(propshaft="18 5/8", left="10", right="0")
    studio.settle()


def axle_type(seen: str) -> Callable[[Studio], None]:
    def show(studio: Studio) -> None:
        from gui.pages.editors.axle import TYPE

        editor("Axle")(studio)
        part = studio.page.editor("Axle")
        part.show_part(TYPE)
        for key, word in AXLE_SEEN[seen].items():
            part.type.answers[key][word].click()
        studio.settle()

    return show


def axle_asked(studio: Studio) -> None:
    axle_type("found")(studio)
    studio.page.editor("Axle").type.go("one-held")
    studio.settle()


def axle_refused(studio: Studio) -> None:
    axle_type("nothing")(studio)
    studio.page.editor("Axle").type.take.click()
    studio.settle()


def axle_started(studio: Studio) -> None:
    import msgspec

    studio.practise()
    studio.tester.card.put(axle=msgspec.structs.replace(studio.tester.card.axle, type="helical or worm gear"))
    studio.tester.run.start()
    studio.tick()


def stud_circle(studio: Studio) -> None:
    editor("Fixture")(studio)
    part = studio.page.editor("Fixture")
    part.fields["stud_circle_mm"].set_text("")
    part.chord.field.set_text("67.2 mm")
    part.chord.changed.emit()
    studio.settle()


def second(studio: Studio) -> None:
    """A sensor recorded along that has gone quiet, and where it was chosen."""
    from logger.description import read_description

    editor("Transducer")(studio)
    part = studio.page.editor("Transducer")
    studio.tester.card.put(second=read_description("encoder"), second_address="/dev/ttyUSB1")
    part.second.which.set_key("shipped:encoder")
    part.second.load()
    studio.settle()


def expired(studio: Studio) -> None:
    """A certificate that ran out before today."""
    import datetime

    import msgspec

    studio.to_pulls()
    card = studio.tester.card
    own = msgspec.structs.replace(card.description.transducer, certificate_due=datetime.date(2026, 4, 30))
    card.put(description=msgspec.structs.replace(card.description, transducer=own))
    for _ in range(3):
        studio.stream.pull()
    studio.tick()


def ratio_limit(studio: Studio) -> None:
    from tests.gui.test_ratio import RATIO

    editor("Limit")(studio)
    studio.tester.card.put(limit=RATIO)
    studio.page.editor("Limit").load()
    studio.settle()


def ratio_judged(studio: Studio) -> None:
    from tests.gui.test_ratio import recording

    folder = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    for gear, nm in (("neutral", 12.0), ("in gear", 40.0)):
        recording(folder, gear, nm)
    studio.window.open_page("Review")
    page = studio.window.pages["Review"]
    wait(studio, lambda: page.all_s > 0)
    page.list.table.selectAll()
    wait(studio, lambda: len(page._loaded) == 2)


def wait(studio: Studio, until: Callable[[], bool], limit_s: float = 60.0, say: Callable[[], str] = str) -> None:
    import time

    start = time.monotonic()
    while not until() and time.monotonic() - start < limit_s:
        studio.app.processEvents()
        time.sleep(0.01)
    assert until(), say()
    studio.settle()


def with_recordings() -> None:
    home = Path(os.environ["HELDWHEEL_HOME"]) / "recordings"
    home.mkdir()
    for path in sorted(EXAMPLES.glob("0*.*")):
        (home / path.name).write_bytes(path.read_bytes())


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
    answered(studio, comparing(studio, "Own scatter", "07-study"))


def compare_pairs(studio: Studio) -> None:
    page = comparing(studio, "Own scatter", "07-study")
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


def far(studio: Studio) -> None:
    from gui.pages.far_view import FarView

    busy(studio)
    studio.page.far = FarView(studio.page._shared)
    studio.page.far.resize(studio.window.size())
    studio.page.far.show()
    studio.tick()
    studio.settle()


STATES: dict[str, Callable[[Studio], None]] = {
    "empty": empty,
    "checks": checks,
    "checks-real": real_checks,
    "zero": zero,
    "busy": busy,
    "warning": warning,
    "failed": failed,
    "lost": lost,
    "outside": outside,
    "finished": finished,
    "with-drag": with_drag,
    "job": editor("Job"),
    "job-open": job_open,
    "axle": editor("Axle"),
    "axle-turns": axle_turns,
    "axle-asked": axle_asked,
    "axle-type": axle_type("found"),
    "axle-nothing": axle_type("nothing"),
    "axle-refused": axle_refused,
    "axle-started": axle_started,
    "fixture": editor("Fixture"),
    "stud-circle": stud_circle,
    "limit": editor("Limit"),
    "transducer": editor("Transducer"),
    "expired": expired,
    "second": second,
    "limit-ratio": ratio_limit,
    "review-ratio": ratio_judged,
    "learn-where": learning(0),
    "learn-listen": learning(1),
    "learn-name": learning(2),
    "ask-modbus": asked("modbus"),
    "ask-letters": asked("letters"),
    "dial": editor("Dial"),
    "far": far,
    "review": review,
    "review-empty": review_empty,
    "review-correct": review_correct,
    "review-budget": review_budget,
    "review-overlay": review_overlay,
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


def shoot(folder: Path, name: str, palette: str, size: str, scale: float = 1.0) -> None:
    studio = Studio(palette, SIZES[size], scale)
    STATES[name](studio)
    studio.settle()
    large = f"-text{round(scale * 100)}" if scale != 1 else ""
    shown = studio.page.far if name == "far" else studio.app.activeModalWidget() or studio.window
    shown.grab().save(str(folder / f"{name}-{palette}-{size}{large}.png"))
    studio.close()


def main(words: list[str]) -> int:
    folder = Path(words[0] if words else "shots")
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication.instance() or QApplication([])
    names = words[1:] or list(STATES)
    for name in names:
        for palette, size, scale in (("dark", "small", 1.0), ("light", "usual", 1.0), ("dark", "usual", 1.5)):
            shoot(folder, name, palette, size, scale)
    app.processEvents()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
