"""Rows and tables of recordings, held against what was kept of them."""

from __future__ import annotations

import io
import zipfile
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import numpy as np
import pytest

from analysis.pipeline import Asked, read_file
from analysis.rows import batch, export, friction, gear, journal, summary, tables
from analysis.verdict.limits import bounds_from
from logger.errors import HeldwheelError
from logger.header import Lever, Limit, Test
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


def test_kept_chatter_on_the_road(tmp_path, monkeypatch):
    """Tables of acceleration: stretches that shake at 120 Hz, louder and longer in the second."""
    from analysis.rows import road

    monkeypatch.chdir(tmp_path)
    t = np.arange(0, 24, 1 / 1000)
    for name, loud in (("a.csv", 4.0), ("b.csv", 2.0), ("flat.csv", 30.0)):
        shake = 0.2 * np.sin(2 * np.pi * 90 * t) + loud * np.sin(2 * np.pi * 120 * t) * (
            (t % 8 > 3) & (t % 8 < 3 + loud / 2)
        )
        shake = np.clip(shake, -6, 6)
        np.savetxt(
            name,
            np.column_stack((t, shake)),
            "%.4f",
            ",",
            header="time [s],x [m/s²]",
            comments="",
            encoding="utf-8",
        )
    with steps("analysis.rows.road", "analysis.road") as said:
        answers = [tried(road.parse_band, text) for text in ("", "50-800Hz", "20 – 400", "50 to 90", "x", "50", "-")]
        for one in (
            ("a.csv",),
            ("a.csv", "b.csv"),
            ("b.csv", "a.csv", (100.0, 140.0)),
            ("flat.csv", "a.csv"),
            ("a.csv", "", (10.0, 5.0)),
            ("none.csv",),
        ):
            try:
                found = road.road_test(*one, folder=str(SEASON), tag="43/11" if len(one) == 1 else "")
                answers += [
                    road.lines_of(found),
                    road.to_json(found, course=True),
                    road.to_csv(found)[:300],
                    len(road.to_csv(found)),
                    found.any_simulated,
                ]
                answers += [road.event_words(n, event) for n, event in enumerate(found.found.events, 1)]
            except HeldwheelError as error:
                answers.append(error)
    kept("rows", "road", [answers, said])


def test_kept_ratios_in_gear():
    names = ("01-arrival-left", "01-arrival-right", "05-event-1")
    pairs = [(reading(a), reading(b)) for a in names for b in names]
    answers = []
    for a, b in pairs:
        for lower in (None, 0.9, 2.5):
            bounds = (
                None
                if lower is None
                else bounds_from(
                    Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=lower, source="x")
                )
            )
            found = tried(
                gear.judged_ratio,
                replace(a, header=msgspec.structs.replace(a.header, test=Test(held="none", gear="in gear"))),
                b,
                bounds,
            )
            free = replace(b, header=msgspec.structs.replace(b.header, test=Test(gear="neutral")))
            more = tried(
                gear.judged_ratio,
                replace(a, header=msgspec.structs.replace(a.header, test=Test(gear="in gear"))),
                free,
                bounds,
            )
            answers += [
                one if isinstance(one, Exception) else [one[2][1], one[4], str(one[3])[:200]] for one in (found, more)
            ]
    kept("rows", "in gear", answers)
