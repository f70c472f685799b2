"""A recording without fixture and limit is completed on Review: beside it, with time and reason; the file stays."""

import shutil
from pathlib import Path

import pytest
from PySide6.QtTest import QTest

from analysis.pipeline import read_file
from gui.models.details import card_of, keep_details
from gui.pages.details_dialog import DetailsDialog
from logger.errors import InputError
from logger.recordings.sidecar import read_sidecar
from tests.gui.hand import Hand

EXAMPLE = sorted((Path(__file__).parents[2] / "recordings").glob("0*.csv"))[0]


def test_nothing_is_written_without_a_change_or_a_reason(tmp_path: Path) -> None:
    path = Path(shutil.copy(EXAMPLE, tmp_path))
    before, after = card_of(read_file(path).header), card_of(read_file(path).header)
    with pytest.raises(InputError, match="Nothing"):
        keep_details(path, before, after, "why", "A")
    after.put(lever=None)
    with pytest.raises(InputError, match="why"):
        keep_details(path, before, after, " ", "A")
    assert read_sidecar(path) is None or not read_sidecar(path).corrections


def test_fixture_and_job_of_a_recording_are_put_right_in_the_window(hand: Hand, home: Path) -> None:
    folder = home / "recordings"
    folder.mkdir(parents=True)
    path = Path(shutil.copy(EXAMPLE, folder))
    raw = path.read_bytes()
    hand.window.open_page("Review")
    page = hand.window.pages["Review"]
    page.show_recordings([str(path)])
    hand.qtbot.waitUntil(lambda: page.reading.first is not None, timeout=60_000)
    page.reading.details.click()
    dialog = page.findChild(DetailsDialog)
    assert dialog.isVisible()
    dialog.show_part("Fixture")
    edit = dialog.forms["Fixture"].fields["length_mm"].edit
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, "500 mm")
    dialog.show_part("Job")
    edit = dialog.forms["Job"].texts["job", "vehicle"].edit
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, "another car")
    dialog.keep.click()
    assert dialog.isVisible(), "without a reason nothing is kept"
    assert "why" in dialog.reason._wrong.text()
    dialog.reason.set_text("the lever was measured afterwards")
    dialog.keep.click()
    hand.qtbot.waitUntil(
        lambda: page.reading.first is not None and page.reading.first.reading.header.job.vehicle == "another car",
        timeout=60_000,
    )
    assert path.read_bytes() == raw
    reading = read_file(path)
    assert reading.header.lever.length_mm == 500.0
    note = read_sidecar(path).corrections[-1]
    assert note.at is not None
    assert note.reason.startswith("job, fixture changed: the lever")
