"""What people expect of a window: drop, cursor, points to open, pictures, rename, bin, undo, what was cut off."""

import shutil
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.models.dropped import cut_off, sorted_out
from gui.models.undoing import BIN, rename
from gui.translation import by_locale
from gui.widgets.menus import copy_picture
from logger.errors import FileError, InputError
from logger.header import Correction, Sidecar
from logger.recordings.sidecar import add_correction, change_sidecar, read_sidecar, revision_of, sidecar_path
from tests.gui.hand import Hand

EXAMPLES = Path(__file__).parents[2] / "recordings"
SHIMS = "02-build-shim-[123]0*"


@pytest.fixture
def folder(home: Path) -> Path:
    made = home / "recordings"
    made.mkdir(parents=True)
    return made


@pytest.fixture
def shelf(folder: Path) -> Path:
    for path in sorted(EXAMPLES.glob(SHIMS)):
        shutil.copy(path, folder)
    return folder


@pytest.fixture
def reviewing(hand: Hand, shelf: Path) -> Hand:
    assert len(list(shelf.glob("*.csv"))) == 3
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    hand.qtbot.waitUntil(lambda: page.all_s > 0, timeout=60_000)
    return hand


def opened(hand: Hand, row: int = 0):
    """Choose a recording and wait until it is shown."""
    page = hand.window.pages["Review"]
    page.list.table.selectRow(row)
    path = page.archive.shown[row].path
    hand.qtbot.waitUntil(lambda: page.reading.path == path, timeout=60_000)
    hand.tick()
    return page


# ---------------------------------------------------------------------- drop


def drop(hand: Hand, *paths: Path) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    event = QDropEvent(
        QPointF(200, 200), Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    )
    hand.window.dropEvent(event)
    hand.qtbot.wait(20)


def test_a_dropped_recording_is_shown_whatever_its_folder(hand: Hand, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    for path in EXAMPLES.glob("02-build-shim-10*"):
        shutil.copy(path, elsewhere)
    path = next(elsewhere.glob("*.csv"))
    drop(hand, path)
    page = hand.window.pages["Review"]
    hand.qtbot.waitUntil(lambda: page.reading.path == str(path), timeout=60_000)
    assert hand.window._shared.settings.looked_at == elsewhere


def test_what_is_dropped_is_told_apart(shelf: Path, tmp_path: Path) -> None:
    ours, table, other = next(shelf.glob("*.csv")), tmp_path / "table.csv", tmp_path / "notes.md"
    table.write_text("time_s,torque_Nm\n0,0\n", encoding="utf-8")
    other.write_text("x", encoding="utf-8")
    found = sorted_out([str(path) for path in (shelf, ours, table, other)])
    assert (found.folders, found.recordings) == ((str(shelf),), (str(ours),))
    assert (found.tables, found.other) == ((str(table),), (str(other),))


# ---------------------------------------------------------------------- cursor, pictures


def test_the_cursor_reads_a_sample_off_the_trace(reviewing: Hand) -> None:
    page = opened(reviewing)
    plot = page.reading.plot
    for x in range(150, plot.width() - 40, 25):
        QTest.mouseMove(plot.viewport(), QPoint(x, plot.height() // 2))
        plot._cursor = QPointF(x, plot.height() / 2)  # the offscreen platform sends no move without a button
        plot.grab()
        if plot.readout:
            break
    time_text, torque_text, *_ = plot.readout.split("   ")
    assert time_text.endswith(" s")
    assert torque_text.endswith(" N·m")
    loaded = page.reading.first
    trace = loaded.trace()
    near = abs(trace.time_s - float(time_text.split()[0])) < 0.05
    drawn = loaded.scale.torque(trace.torque_nm[near])
    assert abs(drawn - float(torque_text.split()[0].replace("−", "-"))).min() < 0.006
    reviewing.window.set_unit("lbf·ft")
    plot.grab()
    assert plot.readout.endswith("lbf·ft")


def test_nothing_is_read_off_where_nothing_was_sent(reviewing: Hand) -> None:
    plot = opened(reviewing).reading.plot
    plot._cursor = QPointF(1, 1)
    plot.grab()
    assert not plot.readout


def test_a_picture_is_copied_with_its_mark(reviewing: Hand) -> None:
    plot = opened(reviewing).reading.plot
    assert plot._watermark == "SIMULATED"
    copy_picture(plot)
    copied = QApplication.clipboard().image()
    assert copied.size() == plot.grab().toImage().size()


# ---------------------------------------------------------------------- points of Compare


def test_a_point_of_compare_says_what_it_is_and_opens_its_recordings(hand: Hand, shelf: Path) -> None:
    hand.window.open_page("Compare")
    page = hand.window.pages["Compare"]
    hand.qtbot.waitUntil(lambda: page.settled and len(page.runs) == 3, timeout=90_000)
    page.open_answer("Trend")
    against = page.panel.against
    key = next(key for key in (against.box.itemData(n) for n in range(against.box.count())) if key)
    against.set_key(key)
    page.ask()
    hand.qtbot.waitUntil(lambda: page.settled and page.panel.answer is not None, timeout=90_000)
    picture = page.panel.picture
    picture.grab()
    assert len(picture.spots) == 3
    spot = picture.spots[1]
    QTest.mouseMove(picture, spot.at.toPoint())
    picture.setFocus()
    QTest.keyClick(picture, Qt.Key.Key_Right)
    assert picture._hot >= 0
    QTest.mouseClick(picture, Qt.MouseButton.LeftButton, pos=spot.at.toPoint())
    review = hand.window.pages["Review"]
    hand.qtbot.waitUntil(lambda: review.reading.path.endswith(spot.files[0]), timeout=90_000)
    assert Path(review.reading.path).parent == shelf


def test_a_typed_torque_follows_the_unit(hand: Hand, shelf: Path) -> None:
    assert shelf.exists()
    hand.window.open_page("Compare")
    page = hand.window.pages["Compare"]
    page.open_answer("Trend")
    page.panel.wanted.set_text("60")
    page.panel.typed(page.panel.wanted)
    hand.window.set_unit("lbf·ft")
    assert page.panel.typed(page.panel.wanted) == pytest.approx(60, abs=0.02)
    assert page.panel.wanted.text == "44.25"
    page.panel.wanted.set_text("60 N·m")
    hand.window.set_unit("N·m")
    assert page.panel.typed(page.panel.wanted) == pytest.approx(60)


# ---------------------------------------------------------------------- rename, bin, undo


def test_rename_takes_the_sidecar_along_and_is_taken_back(reviewing: Hand, shelf: Path) -> None:
    page = opened(reviewing)
    old = Path(page.reading.path)
    change_sidecar(old, lambda found: Sidecar(tags={"shim": 0.2}))
    page.rename(page.list.selected()[0], "left after rebuild")
    new = old.with_name("left after rebuild.csv")
    assert new.exists()
    assert read_sidecar(new).tags == {"shim": 0.2}
    assert not old.exists()
    QTest.keyClick(page.list.table, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert old.exists()
    assert sidecar_path(old).exists()
    assert len(list(shelf.glob("*.csv"))) == 3


@pytest.mark.parametrize("name", ["", ".hidden", "a/b", "con", "x" * 200, "a\\b", "q?"])
def test_no_name_for_a_file_is_refused(shelf: Path, name: str) -> None:
    path = next(shelf.glob("*.csv"))
    with pytest.raises(InputError):
        rename(str(path), name)
    assert path.exists()


def test_a_name_that_is_taken_and_a_baseline_are_refused(shelf: Path) -> None:
    first, second, _ = sorted(shelf.glob("*.csv"))
    with pytest.raises(InputError, match="already"):
        rename(str(first), second.stem)
    with pytest.raises(InputError, match="keep their names"):
        rename(str(first), "other", purpose="drag")


def test_removed_goes_to_the_bin_and_comes_back(reviewing: Hand, shelf: Path) -> None:
    page = opened(reviewing)
    old = Path(page.reading.path)
    confirm = reviewing.window._shared.confirm
    confirm.always = False
    QTest.keyClick(page.list.table, Qt.Key.Key_Delete)
    assert old.exists(), "asked, and answered no"
    confirm.always = True
    QTest.keyClick(page.list.table, Qt.Key.Key_Delete)
    assert not old.exists()
    assert (shelf / BIN / old.name).exists()
    reviewing.qtbot.waitUntil(lambda: len(page.archive.entries) == 2, timeout=60_000)
    QTest.keyClick(page.list.table, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert old.exists()
    assert not page.undo.steps


def test_a_decision_is_taken_back_until_the_test_is_signed(reviewing: Hand) -> None:
    page = opened(reviewing)
    path = page.reading.path
    before = read_sidecar(path)
    page.reading.tags.set_text("shim=0.9")
    page.reading._tag()
    assert read_sidecar(path).tags == {"shim": 0.9}
    page.take_back()
    assert read_sidecar(path) == before
    now = datetime.now().astimezone().replace(microsecond=0)
    reviewing.qtbot.waitUntil(lambda: page.reading.path == path, timeout=60_000)
    change_sidecar(path, lambda found: Sidecar(signed=now - timedelta(hours=1)))
    page._reload(path)
    reviewing.qtbot.waitUntil(lambda: path in page.readings.sidecars, timeout=60_000)
    page.reading.tags.set_text("shim=0.9")
    page.reading._tag()
    assert not page.undo.steps, "what is signed is not taken back"


def test_undo_refuses_where_somebody_else_has_written(reviewing: Hand) -> None:
    page = opened(reviewing)
    path = page.reading.path
    page.reading.tags.set_text("shim=0.9")
    page.reading._tag()
    change_sidecar(path, lambda found: Sidecar(tags={"shim": 0.5}))
    with pytest.raises(FileError, match="another window"):
        page.undo.take_back()
    assert read_sidecar(path).tags == {"shim": 0.5}


# ---------------------------------------------------------------------- revisions, cut off, locale


def test_each_decision_after_the_signature_makes_a_revision(shelf: Path) -> None:
    path = next(shelf.glob("*.csv"))
    signed = datetime.now().astimezone().replace(microsecond=0) - timedelta(hours=1)
    add_correction(path, Correction(at=signed, reason="excluded by hand", exclude=True, pull_start_s=1.0))
    assert revision_of(read_sidecar(path)) == 1
    change_sidecar(path, lambda found: Sidecar(signed=signed, corrections=found.corrections))
    assert revision_of(read_sidecar(path)) == 1, "what was excluded when it was signed belongs to it"
    for minutes in (10, 20):
        at = signed + timedelta(minutes=minutes)
        add_correction(path, Correction(at=at, reason="lever measured", exclude=True, pull_start_s=1.0))
    assert revision_of(read_sidecar(path)) == 3


def test_a_report_of_the_window_carries_the_revision(reviewing: Hand, tmp_path: Path) -> None:
    from analysis.report.verify import issue_of, read_record

    page = opened(reviewing)
    path = page.reading.path
    signed = datetime.now().astimezone().replace(microsecond=0) - timedelta(hours=1)
    change_sidecar(path, lambda found: Sidecar(signed=signed))
    add_correction(path, Correction(at=signed + timedelta(minutes=5), reason="x", exclude=True, pull_start_s=1.0))
    target = tmp_path / "page.html"
    page.pages.export(path, str(target))
    reviewing.qtbot.waitUntil(target.exists, timeout=60_000)
    assert issue_of(read_record(target)).revision == 2
    page._reload(path)
    reviewing.qtbot.waitUntil(lambda: "revision 2" in page.reading.state.text(), timeout=60_000)
    page.pages.make("customer")
    reviewing.qtbot.waitUntil(
        lambda: page.written.path is not None and page.written.path.suffix == ".pdf", timeout=60_000
    )
    assert page.written.path.name.endswith("-customer.pdf")
    assert not page.written.print_button.isHidden()


def test_what_was_cut_off_is_offered_at_the_start_and_shown(qtbot, shelf: Path) -> None:
    path = sorted(shelf.glob("*.csv"))[0]
    path.write_bytes(path.read_bytes().split(b"# closed")[0])
    assert cut_off(shelf, ()) == [str(path)]
    assert cut_off(shelf, (str(path),)) == []
    hand = Hand(qtbot)
    try:
        qtbot.waitUntil(lambda: hand.page.notice.isVisible(), timeout=30_000)
        assert "cut off" in hand.page.notice.text.text()
        hand.press(hand.page.notice.show_button)
        review = hand.window.pages["Review"]
        qtbot.waitUntil(lambda: review.reading.path == str(path), timeout=60_000)
    finally:
        hand.close()


@pytest.mark.parametrize(
    ("name", "said"),
    [("de_AT", ("de", True, "N·m", "mm")), ("es_MX", ("es", False, "N·m", "mm")),
     ("en_US", ("en", False, "lbf·ft", "in")), ("fr_FR", ("en", True, "N·m", "mm")),
     ("en_GB", ("en", False, "N·m", "mm"))],
)  # fmt: skip
def test_the_first_start_speaks_as_the_system_does(name: str, said: tuple[str, bool, str, str]) -> None:
    """Decimal marks and measuring systems are those of the Unicode locale data, as Qt ships them."""
    assert tuple(by_locale(QLocale(name)).values()) == said


def test_what_compare_offers_is_found_by_review(shelf: Path) -> None:
    from gui.models.archive import ArchiveEntry

    entry = ArchiveEntry("a.csv", datetime.now().astimezone(), facts={"fluid": "reference", "modifier_percent": 4.0})
    assert entry.holds("fluid=reference")
    assert entry.holds("oil=reference")
    assert entry.holds("modifier=4.0")
    assert not entry.holds("reference"), "a plain word is of names and tags"
    assert len(list(shelf.glob("*.csv"))) == 3
