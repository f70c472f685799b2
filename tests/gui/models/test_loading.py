"""What a worker hands over of a recording: arrays, none where there are none, what the list shows."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from types import SimpleNamespace
from typing import TYPE_CHECKING

import numpy as np
import pytest

from gui.models import loading
from logger.header import Header
from logger.recordings.dialled import DialFile, DialReading, write_dialled

if TYPE_CHECKING:
    from pathlib import Path


def test_readings_of_a_dial_have_no_trace(tmp_path: Path) -> None:
    path = tmp_path / "a.dial.toml"
    at = datetime(2026, 5, 14, tzinfo=UTC)
    write_dialled(path, DialFile(header=Header(started=at), readings=(DialReading(shown=46.0),), signed=at))
    loaded = loading.load(str(path), str(tmp_path))
    assert (loaded.samples, len(loaded.trace())) == (0, 0)


@pytest.mark.parametrize("samples", [5, 9, 10, 5000])
def test_a_trace_comes_as_it_was_read(tmp_path: Path, samples: int) -> None:
    path = tmp_path / "a.csv"
    rows = "".join(f"{n / 100:.2f},{n % 7}\n" for n in range(samples))
    path.write_text(f"time_s,torque_nm\n{rows}", "utf-8")
    loaded = loading.load(str(path), str(tmp_path))
    trace = loaded.trace()
    assert loaded.samples == len(trace) == samples
    assert trace.torque_nm.tolist() == [float(n % 7) for n in range(samples)]
    assert trace.time_s == pytest.approx(np.arange(samples) / 100)


def test_the_list_shows_a_result_of_a_whole_test_alone() -> None:
    def value(quantity: str, nm: float) -> SimpleNamespace:
        return SimpleNamespace(budget=SimpleNamespace(quantity=quantity, value=nm))

    job = (value("breakaway", 40.0), value("rotating mean", 35.0), value("breakaway", 99.0))
    within = SimpleNamespace(state="within")
    for result, half, state in ((within, False, "within"), (within, True, ""), (None, False, ""), (None, True, "")):
        said = loading.said_of(SimpleNamespace(job=job, result=result, half=half))
        assert (said.state, said.breakaway_nm, said.rotating_nm) == (state, 40.0, 35.0)


def test_json_holds_letters_as_they_are(tmp_path: Path) -> None:
    path = tmp_path / "größe.csv"
    path.write_text("time_s,torque_nm\n0,1\n0.01,2\n", "utf-8")
    text = (tmp_path / "b.json").read_text("utf-8") if loading.export(str(path), str(tmp_path / "b.json"), None) else ""
    assert json.loads(text)
    assert "größe.csv" in text


def test_a_page_of_two_halves_is_of_the_later_revision(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Both are gathered; a second test that confirms goes along."""
    import analysis.report.gather as gather
    import analysis.report.write as write
    from analysis.report.material import Issue

    asked: list[object] = []
    monkeypatch.setattr(loading, "read_sidecar", lambda path: path)
    monkeypatch.setattr(loading, "revision_of", lambda path: {"gear.csv": 2, "neutral.csv": 3}[path])
    monkeypatch.setattr(gather, "read_material", lambda *of: (asked.append(of), (None, None))[1])
    monkeypatch.setattr(write, "content_of", lambda _, issue: asked.append(issue.revision))
    monkeypatch.setattr(write, "write_report", lambda _, target: target)
    for neutral, second, revision in (("neutral.csv", "other.csv", 3), ("", "", 2)):
        asked.clear()
        assert (
            loading.export("gear.csv", "page.pdf", Issue(issued=datetime(2026, 5, 14, tzinfo=UTC)), neutral, second)
            == "page.pdf"
        )
        assert asked[0][2:] == (neutral or None, second or None)
        assert asked[1] == revision
