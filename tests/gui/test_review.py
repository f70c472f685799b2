"""Review in the real window, on files; what takes long happens in the worker."""

import threading
import time
from pathlib import Path

import msgspec
import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest

from gui.models.archive import Archive, ArchiveEntry, first_look, list_files, read_entries, read_entry, with_tags
from gui.models.importing import bring_in, look
from gui.pages.import_dialog import ImportDialog
from logger.edges.toml_file import write_toml
from logger.errors import FileError
from logger.header import Axle, Table, Test
from logger.recordings.files import read_trace
from logger.recordings.sidecar import read_sidecar
from tests.bench.bench_window import write_large, write_many
from tests.gui.hand import Hand

EXAMPLES = Path(__file__).parents[2] / "recordings"


@pytest.fixture
def folder(home: Path) -> Path:
    made = home / "recordings"
    made.mkdir(parents=True)
    return made


@pytest.fixture
def shelf(folder: Path) -> Path:
    """A few of the example recordings, with their sidecars."""
    for path in sorted(EXAMPLES.glob("02-build-shim-[123]0*")):
        (folder / path.name).write_bytes(path.read_bytes())
    assert len(list(folder.glob("*.csv"))) == 3
    return folder


@pytest.fixture
def reviewing(hand: Hand, shelf: Path) -> Hand:
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    return hand


def review(hand: Hand):
    return hand.window.pages["Review"]


def choose(hand: Hand, *rows: int) -> None:
    page = review(hand)
    table = page.list.table
    table.clearSelection()
    for number, row in enumerate(rows):
        at = table.visualRect(page.list.model.index(row, 1)).center()
        keys = Qt.KeyboardModifier.ControlModifier if number else Qt.KeyboardModifier.NoModifier
        QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, keys, at)
    wanted = {entry.path for entry in page.list.selected()}
    assert len(wanted) == len(rows)
    hand.qtbot.waitUntil(lambda: wanted <= set(page.readings.loaded), timeout=40_000)


def test_a_recording_with_pulls_result_and_budget(reviewing: Hand) -> None:
    choose(reviewing, 0)
    panel = review(reviewing).reading
    assert panel.pulls.rowCount() == 3
    assert "±" in panel.pulls.item(0, 2).text()
    assert panel.result._value.text().endswith("N·m")
    reviewing.press(panel.switch._group.buttons()[1])
    assert panel.below.currentWidget().isAncestorOf(panel.budget)
    names = {panel.budget.table.item(row, 0).text() for row in range(panel.budget.table.rowCount())}
    assert {"repeats", "lever length", "stud radius"} <= names or "calibration" in names
    assert panel.plot.accessibleDescription() == "SIMULATED"


def test_unit_switch_reaches_review(reviewing: Hand) -> None:
    choose(reviewing, 0)
    panel = review(reviewing).reading
    before = float(panel.result._value.text().split()[0])
    reviewing.window.set_unit("lbf·in")
    after = float(panel.result._value.text().split()[0])
    assert after / before == pytest.approx(1 / 0.1129848, rel=0.01)  # NIST SP 811, appendix B
    assert "lbf·in" in panel.result._value.text()


def test_a_boundary_is_moved_with_a_reason_and_the_recording_stays(reviewing: Hand) -> None:
    choose(reviewing, 0)
    page = review(reviewing)
    panel, path = page.reading, Path(page.reading.path)
    original = path.read_bytes()
    panel.pulls.selectRow(1)
    reviewing.press(panel.edit)
    assert panel.correct.isVisible()
    before = page.readings.loaded[str(path)].reading.pulls[1]
    first = before.pull.rotating.start_s + 0.8
    panel.plot._stretch.setRegion((first, before.pull.rotating.end_s))
    reviewing.press(panel.correct.keep)
    assert "reason" in panel.correct.reason._wrong.text(), "no decision without a reason"
    QTest.keyClicks(panel.correct.reason.edit, "the lever slipped at first")
    reviewing.press(panel.correct.keep)
    reviewing.qtbot.waitUntil(lambda: str(path) in page.readings.loaded, timeout=20_000)
    after = page.readings.loaded[str(path)].reading.pulls[1]
    assert after.pull.rotating.start_s == pytest.approx(first, abs=1e-5)
    assert path.read_bytes() == original
    decision = read_sidecar(path).corrections[-1]
    assert decision.reason == "the lever slipped at first"
    assert decision.pull_start_s == pytest.approx(before.pull.start_s)
    panel.pulls.selectRow(1)
    reviewing.press(panel.edit)
    QTest.keyClicks(panel.correct.reason.edit, "it had not slipped")
    reviewing.press(panel.correct.as_found)
    reviewing.qtbot.waitUntil(lambda: str(path) in page.readings.loaded, timeout=20_000)
    assert page.readings.loaded[str(path)].reading.pulls[1].pull == before.pull
    assert len(read_sidecar(path).corrections) == 2, "what was decided stays on record"


def test_a_pull_is_left_out_and_counts_again(reviewing: Hand) -> None:
    choose(reviewing, 0)
    page = review(reviewing)
    panel, path = page.reading, page.reading.path
    for reason, counted in (("wrong wheel", 2), ("it was the right one", 3)):
        panel.pulls.selectRow(0)
        reviewing.press(panel.edit)
        QTest.keyClicks(panel.correct.reason.edit, reason)
        reviewing.press(panel.correct.leave)
        reviewing.qtbot.waitUntil(lambda: path in page.readings.loaded, timeout=20_000)
        assert len(page.readings.loaded[path].reading.job[0].values) == counted


def test_a_message_is_answered_with_a_key_but_not_while_typing(reviewing: Hand) -> None:
    page = review(reviewing)
    page.say("Written.")
    page.list.search.edit.setFocus()
    reviewing.key(Qt.Key.Key_X)
    assert page.notice.isVisible()
    page.list.search.set_text("")
    page.list.table.setFocus()
    reviewing.key(Qt.Key.Key_X)
    assert not page.notice.isVisible()


def test_several_over_each_other(reviewing: Hand) -> None:
    choose(reviewing, 0, 1, 2)
    panel = review(reviewing).reading
    assert "3 recordings" in panel.title.text()
    assert len(panel.plot._more) == 2
    assert all(len(curve.getData()[0]) > 100 for curve in (panel.plot.curve, *panel.plot._more))
    assert not panel.edit.isEnabled()


def test_torque_against_angle_or_that_there_is_none(reviewing: Hand, shelf: Path) -> None:
    time_s = np.arange(0, 20, 0.01)
    turned = np.clip((time_s - 3) * 20, 0, 240)
    torque = np.interp(time_s, [0, 3, 4, 18, 19], [0, 0, 40, 40, 0])
    rows = [f"{t:.2f},{m:.3f},{a:.2f}" for t, m, a in zip(time_s, torque, turned, strict=True)]
    (shelf / "turned.csv").write_text("\n".join(["time_s,torque_Nm,angle_deg", *rows]) + "\n", encoding="utf-8")
    page = review(reviewing)
    page.refresh()
    reviewing.qtbot.waitUntil(lambda: any(e.name == "turned.csv" for e in page.archive.shown), timeout=20_000)
    row = next(n for n, e in enumerate(page.archive.shown) if e.name == "turned.csv")
    choose(reviewing, row)
    reviewing.press(page.reading.angle)
    reviewing.qtbot.waitUntil(lambda: page.reading.plot._angle is not None, timeout=20_000)
    assert page.reading.plot.curve.getData()[0].max() == pytest.approx(240, abs=1)
    choose(reviewing, next(n for n, e in enumerate(page.archive.shown) if e.name != "turned.csv" and e.closed))
    reviewing.press(page.reading.angle)
    reviewing.qtbot.waitUntil(
        lambda: "no angle" in page.reading.state.text() or page.reading.plot._angle, timeout=20_000
    )


def test_what_is_selected_stays_selected_while_others_come(reviewing: Hand, shelf: Path) -> None:
    page = review(reviewing)
    choose(reviewing, 0, 2)
    before = {entry.path for entry in page.list.selected()}
    shown = page.reading.title.text()
    newest = (shelf / "02-build-shim-10.csv").read_text(encoding="utf-8").replace("2026-05-0", "2026-06-0")
    (shelf / "newest.csv").write_text(newest, encoding="utf-8", newline="")
    page.refresh()
    reviewing.qtbot.waitUntil(lambda: len(page.archive.shown) == 4, timeout=20_000)
    assert {entry.path for entry in page.list.selected()} == before
    assert page.reading.title.text() == shown


def test_search_kind_and_order(reviewing: Hand) -> None:
    page = review(reviewing)
    QTest.keyClicks(page.list.search.edit, "shim=0.1")
    few = len(page.archive.shown)
    page.list.search.edit.clear()
    page.list.refilter()
    assert few < len(page.archive.shown) == 3
    page.list.table.sortByColumn(0, Qt.SortOrder.AscendingOrder)
    times = [entry.started for entry in page.archive.shown]
    assert times == sorted(times)
    page.list.purpose.set_key("drag")
    page.list.refilter()
    assert page.archive.shown == []


def test_a_recording_that_was_cut_off_is_offered(hand: Hand, shelf: Path) -> None:
    path = sorted(shelf.glob("*.csv"))[0]
    path.write_bytes(path.read_bytes().split(b"# closed")[0] + b"39.29,0.05\n39.3")
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    assert "cut off" in page.notice.text.text()
    page.list.purpose.set_key("recovered")
    page.list.refilter()
    assert [entry.path for entry in page.archive.shown] == [str(path)]
    choose(hand, 0)
    assert page.readings.loaded[str(path)].reading.state == "recovered"
    assert page.reading.pulls.rowCount() >= 2


def test_a_file_that_cannot_be_read_is_told_and_the_others_stay(hand: Hand, shelf: Path) -> None:
    (shelf / "bad.csv").write_bytes(b"# heldwheel recording 1\n# started = nonsense\n\x00\xff\n")
    (shelf / "worse.csv").write_bytes(bytes(range(256)) * 40)
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    assert len(page.archive.shown) == 5
    row = next(n for n, e in enumerate(page.archive.shown) if e.name == "worse.csv")
    page.list.table.selectRow(row)
    hand.qtbot.waitUntil(lambda: "cannot be read" in page.reading._empty.text(), timeout=20_000)
    choose(hand, next(n for n, e in enumerate(page.archive.shown) if not e.problem and "shim" in e.name))


@pytest.mark.parametrize("ending", ["html", "pdf", "csv", "json"])
def test_report_and_export(reviewing: Hand, tmp_path: Path, ending: str) -> None:
    choose(reviewing, 0)
    page = review(reviewing)
    target = tmp_path / f"out.{ending}"
    page.pages.export(page.reading.path, str(target))
    reviewing.qtbot.waitUntil(lambda: "Written" in page.notice.text.text(), timeout=60_000)
    assert page.notice.isVisible()
    assert target.stat().st_size > 500
    if ending in {"html", "json"}:
        assert "imulated" in target.read_text(encoding="utf-8")


@pytest.mark.parametrize(("kind", "said"), [("Engineer's", "Engineer report"), ("Customer's", "Customer report")])
def test_a_page_for_the_engineer_or_the_customer(
    reviewing: Hand, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str, said: str
) -> None:
    from PySide6.QtWidgets import QFileDialog

    choose(reviewing, 0)
    page, target = review(reviewing), tmp_path / "page.html"
    offered = []

    def asked(_parent: object, _title: str, _start: str, kinds: str) -> tuple[str, str]:
        offered.extend(kinds.split(";;"))
        return str(target), next(k for k in offered if k.startswith(kind) and "html" in k)

    monkeypatch.setattr(QFileDialog, "getSaveFileName", asked)
    page.pages.ask_page()
    reviewing.qtbot.waitUntil(lambda: page.notice.isVisible(), timeout=60_000)
    assert said in target.read_text("utf-8")
    assert len(offered) == 4


def test_a_page_with_a_second_test_asks_for_it_and_keeps_blind(reviewing: Hand, tmp_path: Path, monkeypatch) -> None:
    """A second test that is not signed gives no page."""
    from PySide6.QtWidgets import QFileDialog

    choose(reviewing, 0)
    page, other = review(reviewing), tmp_path / "second.csv"
    other.write_text("time_s,torque_Nm\n0,1\n", "utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(other), ""))
    before = sorted(Path(page.reading.path).parent.iterdir())
    page.pages.ask_second()
    reviewing.qtbot.waitUntil(lambda: page.notice.isVisible(), timeout=60_000)
    assert "is not signed yet" in page.notice.text.text()
    assert sorted(Path(page.reading.path).parent.iterdir()) == before


def test_thousands_of_recordings_never_block(hand: Hand, home: Path) -> None:
    write_many(home / "recordings", 1_500)
    hand.window.open_page("Review")
    page = review(hand)
    assert len(page.archive.shown) >= 40, "the first screenful is there at once"
    beats = 0
    while not page.all_s:
        hand.qtbot.wait(5)
        beats += 1
    assert len(page.archive.shown) == 1_500
    assert beats > 5, "the window answered while the rest was read"
    assert page.archive.shown[0].started > page.archive.shown[-1].started


def test_the_window_answers_while_a_large_file_is_read(hand: Hand, folder: Path) -> None:
    write_large(folder / "large.csv", 25_000_000)
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    page.list.table.selectRow(0)
    assert "Reading large.csv" in page.reading._empty.text()
    beats = 0
    begun = time.monotonic()
    while not page.readings.loaded and time.monotonic() - begun < 60:
        hand.qtbot.wait(5)
        beats += 1
    assert page.readings.loaded
    assert beats > 10
    loaded = next(iter(page.readings.loaded.values()))
    assert loaded.samples > 1_000_000
    x, y = loaded.trace().stretch(0, 1e9, 1000)
    assert len(x) <= 2002
    assert np.nanmax(y) > 38


def test_entries_without_their_samples(shelf: Path) -> None:
    entries = read_entries(list_files(shelf))
    assert len(entries) == 3
    assert all(entry.simulated and entry.closed and entry.ours and not entry.problem for entry in entries)
    with_tags(entries[0].path, {"fill": "B", "shim": 0.25})
    assert read_entry(entries[0].path).tags == {"fill": "B", "shim": 0.25}
    archive = Archive()
    archive.add([read_entry(entry.path) for entry in entries])
    archive.filter("shim=0.25", "")
    assert len(archive.shown) == 1
    assert list_files(shelf / "nowhere") == []


@pytest.mark.parametrize(
    ("text", "torque", "unit"),
    [
        ("t (s);moment (lbf·ft)\n0,0;1,5\n0,1;2,5\n0,2;3,5\n", "moment (lbf·ft)", "lbf·ft"),
        ("time_ms,torque_Nm\n0,1\n1,2\n2,3\n", "torque_Nm", "N·m"),
        ("a foreign file\nmade somewhere\n\n0.0\t4\tx\n0.1\t5\tx\n0.2\t6\tx\n", "column 2", "N·m"),
    ],
)
def test_a_foreign_table_is_shown_and_taken_over_with_its_answers(
    tmp_path: Path, text: str, torque: str, unit: str
) -> None:
    path = tmp_path / "foreign.csv"
    path.write_text(text, encoding="utf-8")
    said = Table()
    seen = look(str(path), said)
    if seen.questions:
        assert [q.key for q in seen.questions] == ["unit"]
        said = Table(unit="Nm")
        seen = look(str(path), said)
    assert (seen.used.torque, seen.used.unit, seen.samples) == (torque, unit, 3)
    target = tmp_path / "copy.csv"
    bring_in(str(path), str(target), said)
    assert target.read_bytes() == path.read_bytes()
    trace = read_trace(target)
    assert trace.unit == unit
    assert len(trace.time_s) == 3
    with pytest.raises(FileError, match="already"):
        bring_in(str(path), str(target), said)


def test_no_table_and_a_recording_say_what_they_are(tmp_path: Path) -> None:
    path = tmp_path / "letter.txt"
    path.write_text("Dear club,\nthe car is blue.\n", encoding="utf-8")
    assert "no rows of figures" in look(str(path), Table()).problem
    path.write_text("# heldwheel recording 1\n", encoding="utf-8")
    assert "is a recording" in look(str(path), Table()).problem


def test_import_asks_for_the_unit_and_shows_the_trace(hand: Hand, folder: Path, tmp_path: Path) -> None:
    path = tmp_path / "foreign.csv"
    path.write_text("zeit;wert\n" + "\n".join(f"{n / 100:.2f};{n % 7}" for n in range(301)), encoding="utf-8")
    dialog = ImportDialog(hand.window._shared, path)
    hand.qtbot.addWidget(dialog)
    dialog.show()
    hand.qtbot.waitUntil(lambda: bool(dialog.message.text()), timeout=20_000)
    assert not dialog.ok.isEnabled()
    assert "It is in: its unit" in dialog.message.text()
    dialog.torque.set_key("wert")
    dialog.unit.set_key("lbf·in")
    dialog.look()
    hand.qtbot.waitUntil(lambda: dialog.seen.ready, timeout=20_000)
    assert dialog.picture.axes() is not None
    assert dialog.picture.grab().toImage().width() > 300
    QTest.mouseClick(dialog.ok, Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    hand.qtbot.waitUntil(lambda: dialog.target is not None, timeout=20_000)
    trace = read_trace(dialog.target)
    assert trace.unit == "lbf·in"
    assert len(trace.torque) == 300


def test_an_imported_force_gets_its_lever(hand: Hand, folder: Path, tmp_path: Path) -> None:
    path = tmp_path / "scale.csv"
    path.write_text("Time (s),Load (kg)\n" + "".join(f"{n / 100:.2f},{n % 7}\n" for n in range(300)), encoding="utf-8")
    dialog = ImportDialog(hand.window._shared, path)
    hand.qtbot.addWidget(dialog)
    dialog.show()
    hand.qtbot.waitUntil(lambda: dialog.seen.ready, timeout=20_000)
    assert dialog.radius.isVisible()
    dialog.radius.set_text("400 mm")
    QTest.mouseClick(dialog.ok, Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    hand.qtbot.waitUntil(lambda: dialog.target is not None, timeout=20_000)
    lever = read_trace(dialog.target).header.lever
    assert lever is not None
    assert (lever.fixture, lever.radius_mm) == ("force at radius", 400.0)


def test_closing_in_the_middle_of_a_long_read_does_not_wait(hand: Hand, folder: Path) -> None:
    write_large(folder / "large.csv", 60_000_000)
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    page.list.table.selectRow(0)
    hand.qtbot.wait(300)
    assert page.worker.busy
    room = Path(page.worker.room)
    page.worker.close()
    assert not page.worker.busy
    assert not room.exists()


def test_a_folder_that_hangs_does_not_hold_the_window(hand: Hand, shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    answers = threading.Event()

    def hanging(folder: Path) -> tuple[list[str], list[ArchiveEntry]]:
        answers.wait(20)
        return first_look(folder)

    monkeypatch.setattr("gui.pages.review_page.first_look", hanging)
    hand.window.open_page("Review")  # comes back while the folder still hangs
    page = review(hand)
    assert not answers.is_set()
    assert page.archive.shown == []
    assert "answers slowly" in page.notice.text.text()
    ticks: list[float] = []
    ticker = QTimer()
    ticker.timeout.connect(lambda: ticks.append(time.perf_counter()))
    ticker.start(10)
    hand.qtbot.wait(300)
    assert len(ticks) > 5  # the window goes on answering while the folder does not
    answers.set()
    hand.qtbot.waitUntil(lambda: len(page.archive.shown) == 3, timeout=20_000)


def test_what_repeats_per_turn_stands_over_the_trace_against_angle(hand: Hand, folder: Path) -> None:
    """A pull of four turns, its drag rippling once per turn: the words of the command stand over the trace."""
    from tests.analysis.trace.test_orders import FIXTURE, turned
    from tests.analysis.truths import write_run

    path = write_run(turned(4.5), folder, "turned")
    beside = read_sidecar(path)
    write_toml(
        path.with_suffix(".sidecar.toml"),
        msgspec.structs.replace(beside, lever=FIXTURE, axle=Axle(ratio=3.73), test=Test(held="other side")),
    )
    hand.window.open_page("Review")
    page = review(hand)
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=20_000)
    choose(hand, 0)
    hand.qtbot.waitUntil(lambda: page.reading.first is not None, timeout=40_000)
    hand.press(page.reading.angle)
    hand.qtbot.waitUntil(lambda: "elastic line" in page.reading.state.text(), timeout=20_000)
    assert page.reading.state.text().endswith("What repeats per turn of the wheel stands under Details.")
    said = page.reading.facts.text()
    assert "once per turn of the wheel, the lever's stated weight taken off: amplitude 1.8" in said
    assert "once per turn of the pinion: amplitude 0.8" in said
    assert "A hint only; it may be: gear mesh" in said
