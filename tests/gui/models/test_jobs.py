"""Jobs that are kept: when one is written, which are offered again and how they are called, what is taken over."""

from __future__ import annotations

import os
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import pytest

from gui.models.job import JobCard
from gui.models.jobs import AS_LAST_TIME, RECENT, JobFile, Jobs
from logger.edges.toml_file import write_toml
from logger.header import Axle, JobFacts, Lever, Test

if TYPE_CHECKING:
    from pathlib import Path

AT = datetime(2026, 5, 14, 16, 30, tzinfo=UTC)


def kept(folder: Path, name: str, changed: float, **parts: object) -> Path:
    path = folder / f"{name}.toml"
    write_toml(path, JobFile(saved=AT, **parts))
    os.utime(path, (changed, changed))
    return path


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({}, "no vehicle"),
        ({"axle": Axle(tag="A1")}, "A1"),
        ({"axle": Axle(tag="A1"), "job": JobFacts(number="7")}, "7"),
        ({"job": JobFacts(number="7", vehicle="blue car"), "test": Test(side="left")}, "blue car, left"),
    ],
)
def test_a_job_is_called_by_the_first_that_it_has(tmp_path: Path, parts: dict[str, object], words: str) -> None:
    kept(tmp_path, "a", 1.0, **parts)
    (known,) = Jobs(tmp_path).recent()
    assert known.words == f"{words} · 2026-05-14 16:30"


def test_the_last_dozen_is_offered_the_newest_first(tmp_path: Path) -> None:
    """One that cannot be read is left out."""
    for n in range(RECENT + 3):
        kept(tmp_path, f"{n:02}", 100.0 + n)
    (tmp_path / "bad.toml").write_text("x = ", "utf-8")
    assert [known.path.stem for known in Jobs(tmp_path).recent()] == [f"{n:02}" for n in range(14, 2, -1)]
    assert Jobs(tmp_path / "none").recent() == []


def test_a_job_takes_over_how_the_one_before_it_was_tested(tmp_path: Path) -> None:
    jobs = Jobs(tmp_path)
    assert jobs.last() == {}
    hub = Lever(fixture="hub centre")
    kept(tmp_path, "before", 1.0, lever=hub, dwell_s=4.0, job=JobFacts(vehicle="blue car"))
    now = kept(tmp_path, "now", 2.0, lever=None)
    assert jobs.last()["lever"] is None
    jobs.open(now)
    last = jobs.last()
    assert (last["lever"], last["dwell_s"], set(last)) == (hub, 4.0, set(AS_LAST_TIME))
    jobs.begin()
    assert jobs.last()["lever"] is None


def test_a_card_is_written_once_something_stands_on_it_and_when_that_changes(tmp_path: Path) -> None:
    jobs, card = Jobs(tmp_path / "jobs"), JobCard()
    jobs.save(card)
    assert (jobs.path, jobs.problem, jobs.folder.exists()) == (None, "", False)
    card.put(dwell_s=4.0)
    jobs.save(card)
    first = jobs.path
    assert jobs.open(first)["dwell_s"] == 4.0
    first.unlink()
    jobs.save(card)
    assert not first.exists(), "nothing has changed"
    card.put(dwell_s=5.0)
    jobs.save(card)
    assert jobs.path == first
    assert jobs.open(first)["dwell_s"] == 5.0
    card.put(**JobCard().parts())
    jobs.save(card)  # emptied again: that is kept as well
    assert jobs.open(first)["dwell_s"] == JobCard().dwell_s
    jobs.begin()
    card.put(with_drag=True)
    jobs.save(card)
    assert jobs.path != first
    assert len(list(jobs.folder.iterdir())) == 2
