"""A dial reading is a job: checks first, readings, a signature, a file, a report, Review; read back by the command."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from analysis.pipeline import read_file
from gui.models.dial_entry import DialDraft, reading_of
from gui.pages.editors.dial import DialEditor
from logger.errors import FileError
from logger.header import Lever, Limit
from logger.recordings.dialled import read_dialled, write_dialled
from tests.gui.hand import Hand

LEVER = Lever(fixture="one stud", name="bar", length_mm=450.0, stud_circle_mm=114.3, studs=5, angle_deg=0.0)
LIMIT = Limit(quantity="breakaway", kind="min", lower=40.0, unit="N·m", source="invented club rule", held="other side")


@pytest.fixture
def editor(hand: Hand) -> DialEditor:
    hand.window.tester.card.put(lever=LEVER, limit=LIMIT)
    hand.key(Qt.Key.Key_D)
    return hand.page.editor("Dial")


def typed(hand: Hand, editor: DialEditor, *readings: str) -> None:
    for text in readings:
        QTest.keyClicks(editor.reading.edit, text)
        QTest.keyClick(editor.reading.edit, Qt.Key.Key_Return)
    hand.tick()


def test_nothing_is_read_before_the_checks(hand: Hand, editor: DialEditor) -> None:
    assert len(editor._rows) > 5
    assert not editor.reading.edit.isEnabled()
    hand.check_all(editor)
    assert editor.reading.edit.isEnabled()
    assert editor._gate.isHidden()
    test = hand.window.tester.card.test
    hand.window.tester.card.put(test=type(test)(place="car", held="case", gear="in gear", side="left"))
    assert not editor.checked, "another kind of test asks for its own checks"


def test_readings_are_signed_filed_reported_and_reviewed(hand: Hand, editor: DialEditor, qtbot, home: Path) -> None:
    hand.check_all(editor)
    editor.unit.set_key("lbf·ft")
    QTest.keyClicks(editor.error.edit, "4 %")
    typed(hand, editor, "35", "36.5", "34")
    assert not editor.sign.isEnabled(), "nobody has signed"
    QTest.keyClicks(editor.name.edit, "jo")
    shown = editor.at_axle.text()
    hand.press(editor.sign)
    path = editor.filed
    assert path is not None
    assert path.parent == home / "recordings"
    kept, *_, problems = read_dialled(path)
    assert not problems
    assert [(r.shown, r.unit, r.error_percent) for r in kept.readings] == [
        (35.0, "lbf·ft", 4.0), (36.5, "lbf·ft", 4.0), (34.0, "lbf·ft", 4.0),
    ]  # fmt: skip
    assert kept.header.job.operator == "jo"
    assert len(kept.checks) > 5
    reading = read_file(path)
    assert shown.startswith(hand.window._shared.display.torque(reading.job[0].budget.value, reading.job[0].budget.u95))
    assert str(reading.result.state) == "within"
    assert not hand.window.tester.card.dial
    assert not editor.checked, "the next job is looked at anew"
    hand.press(editor.report)
    qtbot.waitUntil(lambda: editor.written.path is not None and editor.written.path.suffix == ".pdf", timeout=60000)
    assert editor.written.path.read_bytes().startswith(b"%PDF")
    hand.press(editor.review)
    review = hand.window.pages["Review"]
    qtbot.waitUntil(lambda: review.reading.path == str(path), timeout=60000)
    assert review.reading.pulls.rowCount() == 3
    assert review.reading.plot.isHidden(), "there is no trace"
    entry = next(entry for entry in review.archive.entries if entry.path == str(path))
    assert (entry.purpose, entry.signed, entry.revision) == ("dial", True, 1)


def test_what_is_signed_is_not_replaced_and_a_change_is_seen(hand: Hand, editor: DialEditor) -> None:
    hand.check_all(editor)
    typed(hand, editor, "48")
    QTest.keyClicks(editor.name.edit, "jo")
    hand.press(editor.sign)
    path = editor.filed
    kept = read_dialled(path)[0]
    with pytest.raises(FileError, match="never replaced"):
        write_dialled(path, kept)
    path.write_text(path.read_text("utf-8").replace("shown = 48.0", "shown = 58.0"), encoding="utf-8")
    assert "changed since it was signed" in read_file(path).problems[0]
    assert read_file(path).state == "recovered"


def test_a_practice_is_not_filed(hand: Hand, editor: DialEditor) -> None:
    hand.window.tester.card.put(practice=True, dial=(DialDraft("40"),))
    editor.name.set_text("jo")
    editor.refresh()
    assert not editor.sign.isEnabled()


@pytest.mark.parametrize(("text", "unit", "shown"), [("18", "lbf·ft", 18.0), ("2 kgf m", "kgf·m", 2.0)])
def test_a_reading_is_kept_in_the_dials_own_unit(text: str, unit: str, shown: float) -> None:
    assert reading_of(DialDraft(text, unit), "torque").shown == pytest.approx(shown, abs=1e-9)
