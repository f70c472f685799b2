"""Rows and tables of recordings, held against what was kept of them."""

from __future__ import annotations

import io
import zipfile
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from analysis.pipeline import Asked, read_file
from analysis.rows import batch, export, friction, gear, journal, summary, tables
from logger.header import Lever
from logger.recordings.axles import Build
from tests.kept import kept, tried
from tests.steps import steps

if TYPE_CHECKING:
    from analysis.verdict.recorded import RecordingReading

SEASON = Path(__file__).parents[3] / "recordings"
NAMES = ("01-arrival-left", "02-build-shim-30", "05-event-1", "06-chatter", "06-clumsy-hand")


@cache
def reading(name: str) -> RecordingReading:
    return replace(read_file(SEASON / f"{name}.csv"), file=f"{name}.csv")


@pytest.mark.parametrize("name", NAMES)
def test_kept_rows_of_a_recording(name):
    found = reading(name)
    with steps("analysis.rows") as said:
        answers = [
            summary.recording_row(found),
            summary.pull_rows(found),
            tried(summary.run_of, found),
            summary.factor_of(found),
        ]
        answers += [[summary.ratio_of(one), summary.chatter_of(one)] for one in found.pulls]
        answers += [summary.sensor_median(found.pulls, which) for which in ("breakaway", "rotating")]
        built = replace(
            found,
            build=Build(
                built=found.header.started, spring_n=500.0, face_outer_mm=100.0, face_inner_mm=60.0, pinion_nm=2.0
            ),
        )
        for one in (found, built, replace(built, build=replace_build(built.build, spring_n_u=20.0, pinion_nm_u=0.2))):
            figure = tried(friction.friction_of, one)
            answers += [
                figure,
                tried(friction.pinion_of, one),
                tried(friction.build_words, one),
                tried(lambda o=one: friction.friction_words(o, friction.friction_of(o))),
            ]
    kept("rows", name, [answers, said])


def replace_build(build: Build, **changes: float) -> Build:
    import msgspec

    return msgspec.structs.replace(build, **changes)


def test_kept_tables(tmp_path):
    rows = [summary.recording_row(reading(name)) for name in NAMES[:3]]
    bad = [tables.BadFile("x.csv", "=1+1")]
    columns = [
        tables.TableColumn(name, "number" if isinstance(value, float) else "text", "", "about")
        for name, value in rows[0].items()
    ]
    answers = [
        tables.to_csv(columns, rows),
        tables.to_json(columns, rows, bad),
        [tables.neutral(t) for t in ("=a", "+a", "a", "", "\ta", "-1", "@")],
    ]
    with zipfile.ZipFile(io.BytesIO(export.to_workbook(columns, rows, bad))) as book:
        answers.append(sorted(name for name in book.namelist() if "worksheets" in name))
        answers.append(len(book.read("xl/worksheets/sheet1.xml")))
    answers += [
        tried(tables.check_ending, tmp_path / name) and type(tried(tables.check_ending, tmp_path / name)).__name__
        for name in ("a.csv", "a.xyz", "a.json", "a")
    ]
    asked = Asked(lever=Lever(fixture="hub centre"), repeatability=0.02)
    answers += [summary.asked_plain(asked), tried(lambda: summary.asked_from(summary.asked_plain(asked)))]
    kept("rows", "tables", [answers, tables.schema()])


def test_kept_batches(tmp_path, monkeypatch):
    monkeypatch.chdir(SEASON)
    for by in ("recording", "pull"):
        answers = [batch.read_one(i, f"{name}.csv", by, None) for i, name in enumerate((*NAMES[:2], "none"))]
        found = batch.batch([f"{NAMES[0]}.csv", "none.csv"], tmp_path / f"{by}.csv", by=by, workers=1)
        kept(
            "rows",
            f"batch {by}",
            [answers, [found.files, found.rows, found.resumed, found.bad], (tmp_path / f"{by}.csv").read_text("utf-8")],
        )
    lines = [journal.Outcome(0, "a", ({"x": 1.0},)), journal.Outcome(1, "b", (), "bad")]
    kept("rows", "outcomes", [lines, tried(gear.ratio_words, next(iter(reading(NAMES[0]).job)).budget)])
