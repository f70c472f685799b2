"""The list of recordings: what is a trace, what belongs to a kind, what a search finds, in which order."""

from __future__ import annotations

import os
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import pytest

from gui.models.archive import Archive, ArchiveEntry, ListedValues, list_files, read_entry
from logger.recordings.sidecar import change_sidecar

if TYPE_CHECKING:
    from pathlib import Path

AT = datetime(2026, 5, 14, tzinfo=UTC)


def entry(name: str, **facts: object) -> ArchiveEntry:
    return ArchiveEntry(f"/x/{name}.csv", AT, **facts)


def test_traces_are_listed_the_newest_first(tmp_path: Path) -> None:
    for n, name in enumerate(("a.csv", "b.CSV", ".c.csv", "d.toml", "e.dial.toml", "f.png", ".g")):
        (tmp_path / name).write_text("x", "utf-8")
        os.utime(tmp_path / name, (n, n))
    assert [os.path.basename(path) for path in list_files(tmp_path)] == ["e.dial.toml", "b.CSV", "a.csv"]
    assert list_files(tmp_path / "none") == []


ALL = (
    entry("pulls", purpose="pulls"),
    entry("drag", purpose="drag"),
    entry("zero", purpose="zero"),
    entry("cut pulls", purpose="pulls", closed=False),
    entry("cut zero", purpose="zero", closed=False),
    entry("bad zero", purpose="zero", problem="cannot be read"),
)


@pytest.mark.parametrize(
    ("kind", "shown"),
    [
        ("", {"pulls", "drag", "zero", "cut pulls", "cut zero", "bad zero"}),
        ("tests", {"pulls", "cut pulls", "cut zero", "bad zero"}),
        ("zero", {"zero", "cut zero", "bad zero"}),
        ("drag", {"drag"}),
        ("recovered", {"cut pulls", "cut zero"}),
    ],
)
def test_zeros_and_drags_belong_to_their_test_unless_something_is_wrong_with_them(kind: str, shown: set[str]) -> None:
    archive = Archive()
    archive.add(ALL)
    archive.filter("", kind)
    assert {one.name.removesuffix(".csv") for one in archive.shown} == shown
    assert [one.name for one in archive.unclosed] == ["cut pulls.csv", "cut zero.csv"]


def test_a_fact_is_found_by_its_tag_or_its_name_and_in_quotation_marks_as_a_whole() -> None:
    of = entry("a", facts={"shim_mm": "0.25", "tag": "A 12"})
    for word, found in (
        ("shim_mm=0.25", True), ("shim=0.25", True), ("shim=0.2", True), (",=0.25", False), ("shim=0.3", False),
        ('tag="a 12"', True), ('tag="a 1"', False), ("tag=a", True), ('shim="0.25"', True), ('shim="0.2"', False),
    ):  # fmt: skip
        assert of.holds(word) is found, word


def test_the_list_is_ordered_by_day_or_result() -> None:
    """One that was not read yet has none; within a result by breakaway, nothing counting as nought."""
    archive = Archive()
    days = {"a": 3, "b": 1, "c": 2, "d": 4}
    archive.add(ArchiveEntry(f"{name}.csv", AT.replace(day=day)) for name, day in days.items())
    assert [one.name[0] for one in archive.shown] == ["d", "a", "c", "b"]
    for name, nm in (("a", 0.5), ("b", None), ("c", 40.0)):
        archive.said[f"{name}.csv"] = ListedValues("within", nm)
    archive.sort("Result", down=False)
    assert [one.name[0] for one in archive.shown] == ["d", "b", "a", "c"]
    archive.sort("Result", down=True)
    assert [one.name[0] for one in archive.shown] == ["c", "a", "b", "d"]


def test_what_cannot_be_read_says_why_and_claims_nothing_else(tmp_path: Path) -> None:
    of = read_entry(str(tmp_path / "none.csv"))
    assert of.problem.startswith("cannot be read")
    assert (of.size, of.simulated, of.closed, of.ours, of.corrections, of.signed, of.revision) == (
        0, False, True, True, 0, False, 1,
    )  # fmt: skip


def test_what_stands_beside_a_recording_is_listed_with_it(tmp_path: Path) -> None:
    path = tmp_path / "a.csv"
    path.write_text("time_s,torque_nm\n0,1\n", "utf-8")
    of = read_entry(str(path))
    assert (of.corrections, of.signed, of.ours, of.purpose) == (0, False, False, "imported")
    change_sidecar(str(path), lambda found: type(found)(tags={"oil": "x"}))
    of = read_entry(str(path))
    assert (of.corrections, of.signed, of.tags) == (0, False, {"oil": "x"})
    change_sidecar(str(path), lambda found: type(found)(signed=AT))
    assert read_entry(str(path)).signed is True
