"""The real thing: session, decoder, clock and recording in their threads, the window on top; live equals the file."""

import errno
import os
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import Qt

from analysis.pipeline import read_file
from gui.models.caught import pack_means
from gui.models.flow import Step
from gui.models.issuing import issue_of
from gui.models.loading import export
from gui.models.settings import Choices
from gui.models.state import LinkState
from logger.recordings.files import read_trace
from tests.gui.hand import Hand

FAST = 12.0  # seconds of test per second


@pytest.fixture
def live(qtbot, home: Path):
    person = Hand(qtbot, fake=False, speed=FAST)
    yield person
    person.close()


def until(live: Hand, condition, timeout: int = 40_000) -> None:
    live.qtbot.waitUntil(condition, timeout=timeout)


def to_pulls(live: Hand) -> None:
    live.practise()
    until(live, lambda: live.run.link is LinkState.LIVE)
    live.space()
    live.space()
    live.space()
    until(live, lambda: live.run.flow.now is Step.PULLS)


def recordings(home: Path) -> list[Path]:
    return sorted((home / "recordings").glob("*-pulls.csv"))


def test_a_practice_job_from_start_to_signature_equals_its_recording(live: Hand, home: Path) -> None:
    to_pulls(live)
    until(live, lambda: len(live.run.pulls.counting) >= 3)
    live.key(Qt.Key.Key_R)
    until(live, lambda: len(live.run.pulls.counting) >= 3)
    live.space()
    live.space()
    until(live, lambda: live.run.flow.now is Step.SIGN)
    said = [(c.pull, c, c.rejected) for c in live.run.pulls.pulls]
    value = live.run.value
    until(live, lambda: live.window.tester.recording_words() == "Not recording")
    live.space()
    assert live.run.flow.finished
    live.window.tester.close()
    file = recordings(home)[-1]
    assert read_trace(file).state == "closed"
    assert b"simulated = true" in file.read_bytes()[:4000]
    reading = read_file(file)
    assert len(reading.pulls) == len(said)
    for read, (pull, judged, rejected) in zip(reading.pulls, said, strict=True):
        assert read.pull.breakaway.at_sensor_nm == pytest.approx(pull.breakaway.at_sensor_nm, abs=1e-6)
        assert read.axle["breakaway"].value == pytest.approx(judged.breakaway.nm, abs=1e-6)
        assert read.axle["breakaway"].u95 == pytest.approx(judged.breakaway.u95_nm, abs=1e-6)
        assert read.axle["rotating mean"].value == pytest.approx(judged.rotating.nm, abs=1e-6)
        assert bool(read.left_out) == bool(rejected)
        assert (str(read.result.state) if read.result is not None else "") == judged.state
    assert reading.result.value == pytest.approx(value.value.nm, abs=1e-6)
    assert str(reading.result.state) == value.state
    assert reading.result.notes == value.notes
    assert reading.header.job.operator == "practice"


def test_the_drag_of_a_job_is_taken_along_by_its_recording(live: Hand, home: Path) -> None:
    live.window.tester.card.with_drag = True
    live.practise()
    until(live, lambda: live.run.link is LinkState.LIVE)
    for _ in range(3):
        live.space()
    until(live, lambda: live.run.flow.now is Step.DRAG)
    until(live, lambda: bool(live.run.drag.counting))
    live.space()
    assert live.run.flow.now is Step.HOLD
    live.space()
    until(live, lambda: len(live.run.pulls.counting) >= 3)
    live.space()
    live.space()
    until(live, lambda: live.run.flow.now is Step.SIGN)
    said = pack_means(live.run.pulls, live.run.drag)
    assert {name for name, value, _ in said if value is not None} >= {"rotating mean"}
    assert "Pack mean, drag taken off, rotating mean" in live.page.sign._words.text()
    until(live, lambda: live.window.tester.recording_words() == "Not recording")
    live.space()
    file = recordings(home)[-1]
    reading = read_file(file)
    assert reading.drag is not None, reading.problems
    assert Path(reading.drag.file).name.endswith("-drag.csv")
    means = {m.quantity: m.budget for m in reading.drag.test.means}
    for name, value, _ in said:
        assert (means[name] is None) == (value is None)
        if value is not None:
            assert means[name].value == pytest.approx(value.nm, abs=1e-6)
            assert means[name].u95 == pytest.approx(value.u95_nm, abs=1e-6)
    live.press(live.page.sign._open)
    review = live.window.pages["Review"]
    until(live, lambda: "Pack mean, drag taken off, rotating mean" in review.reading.result._others.text())
    page = export(str(file), str(home / "page.html"), issue_of(Choices(), "engineer", "N·m"))
    text = Path(page).read_text("utf-8")
    assert "Drag taken off" in text
    assert Path(reading.drag.file).name in text


def test_the_plug_is_pulled_in_the_middle_of_a_pull(live: Hand, home: Path) -> None:
    to_pulls(live)
    until(live, lambda: len(live.run.pulls.counting) >= 1)
    stream = live.window.tester.bridge.stream
    until(live, lambda: live.run.coach.loaded)
    stream.practice.lost = True
    until(live, lambda: live.run.link is LinkState.RETRYING)
    assert not live.run.action().enabled
    stream.practice.lost = False
    until(live, lambda: live.run.link is LinkState.LIVE)
    until(live, lambda: len(live.run.pulls.counting) >= 2)
    live.key(Qt.Key.Key_E)
    stream.wait()
    trace = read_trace(recordings(home)[-1])
    kinds = {str(event.kind) for event in trace.events}
    assert {"disconnect", "reconnect"} <= kinds
    assert trace.state == "closed"


def test_the_disk_fills_and_everything_is_saved_elsewhere(
    live: Hand, home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    to_pulls(live)
    until(live, lambda: len(live.run.pulls.counting) >= 1)
    real = os.write

    def full(handle: int, data: bytes) -> int:
        if b"batch rows" in data:
            raise OSError(errno.ENOSPC, "No space left on device")
        return real(handle, data)

    monkeypatch.setattr(os, "write", full)
    until(live, lambda: live.run.link is LinkState.ENDED)
    assert "disk is full" in live.run.notice.text
    assert live.page.notice.rescue.isVisible()
    monkeypatch.setattr(os, "write", real)
    before = live.window.tester.bridge.stream.saved()
    assert before[1] > 0
    elsewhere = tmp_path / "stick"
    elsewhere.mkdir()
    live.window.tester.bridge.rescue(elsewhere)
    assert "saved" in live.run.notice.text
    rescued = read_trace(next(elsewhere.glob("*.csv")))
    assert len(rescued.time_s) == sum(before)
    assert np.isfinite(rescued.torque).all()


def test_a_folder_that_cannot_be_made_is_told_and_the_stream_goes_on(live: Hand, home: Path) -> None:
    home.mkdir(exist_ok=True)
    (home / "recordings").write_text("a file is in the way", encoding="utf-8")
    live.practise()
    until(live, lambda: live.run.link is LinkState.LIVE)
    live.space()
    live.space()
    until(live, lambda: live.run.notice is not None)
    assert "cannot be made" in live.run.notice.text
    assert live.run.link is LinkState.LIVE


def test_the_window_is_closed_in_the_middle_of_a_pull(qtbot, home: Path) -> None:
    person = Hand(qtbot, fake=False, speed=FAST)
    to_pulls(person)
    qtbot.waitUntil(lambda: person.run.coach.loaded, timeout=20_000)
    person.close()
    assert read_trace(recordings(home)[-1]).state == "closed"
