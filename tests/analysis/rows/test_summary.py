"""A reading as a row, a run and the material of a report."""

from __future__ import annotations

import dataclasses
from dataclasses import replace
from pathlib import Path

import pytest

from analysis.compare.runs import Quantity
from analysis.pipeline import Asked, read_file, read_files
from analysis.report.gather import fixture_words, material_of
from analysis.rows.summary import (
    asked_from,
    asked_plain,
    chatter_of,
    header_of,
    pull_rows,
    recording_row,
    run_of,
)
from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS
from analysis.trace.results import Pull, Rotating, StickSlip
from analysis.verdict.limits import Guard, Rule
from analysis.verdict.recorded import PullReading
from logger.errors import InputError
from logger.header import Lever, Limit, Zero

RECORDINGS = Path(__file__).resolve().parents[3] / "recordings"


@pytest.fixture(scope="module")
def clumsy():
    return read_file(RECORDINGS / "06-clumsy-hand.csv")


def test_rows_have_the_columns(clumsy):
    assert set(recording_row(clumsy)) == {column.name for column in RECORDING_COLUMNS}
    rows = pull_rows(clumsy)
    assert len(rows) == len(clumsy.pulls)
    for row in rows:
        assert set(row) == {column.name for column in PULL_COLUMNS}


def test_row_says_what_the_reading_says(clumsy):
    row = recording_row(clumsy)
    value = next(v for v in clumsy.job if v.budget.quantity == "breakaway")
    assert row["breakaway_axle_nm"] == value.budget.value
    assert row["breakaway_axle_u95_nm"] == value.budget.u95
    assert row["pulls_used"] == len(value.values) < row["pulls"] == len(clumsy.pulls)
    assert row["result"] == str(clumsy.result.state)
    assert [r["used"] for r in pull_rows(clumsy)] == [p.counts for p in clumsy.pulls]


def test_run_counts_what_is_left_out(clumsy):
    run = run_of(clumsy)
    assert run.pulls + len(run.excluded) == len(clumsy.pulls)
    assert all("06-clumsy-hand.csv, pull at" in line for line in run.excluded)
    assert run.simulated
    assert run.setting.test == "car, other side held, neutral"
    assert run.setting.direction == "clockwise"
    assert run.tags["fluid"] == "reference"
    assert run.tags["fill"] == "practice"
    assert len(run.values[Quantity.RATIO]) == run.pulls


def test_run_with_angle_has_speed_and_slope():
    run = run_of(read_file(RECORDINGS / "04-fluid-smooth-C-fill-1.csv"))
    assert 0.3 < run.setting.speed_rad_s < 0.7  # the two speeds of each pull
    assert len(run.values[Quantity.SLOPE]) == run.pulls
    assert min(run.values[Quantity.SLOPE]) > 0
    without = run_of(read_file(RECORDINGS / "05-event-1.csv"))
    assert without.setting.speed_rad_s is None


def test_material(clumsy):
    material = material_of(clumsy)
    assert [line.used for line in material.pulls] == [p.counts for p in clumsy.pulls]
    assert material.factor == pytest.approx(1.127)
    assert material.budget is not None
    assert material.budget.value == clumsy.result.value
    assert abs(float(material.torque_nm[:30].mean())) < 0.1  # zero taken away


def test_unknown_fixture_is_at_the_sensor(tmp_path):
    source = (RECORDINGS / "06-foreign-table.csv").read_text("utf-8")
    (tmp_path / "bare.csv").write_text(source, "utf-8")
    reading = read_file(tmp_path / "bare.csv")
    material = material_of(reading)
    assert material.factor is None
    assert {line.at for line in material.job} == {"sensor"}
    assert all(line.u95_nm is None for line in material.job)
    assert run_of(reading).setting.at == "sensor"
    row = recording_row(reading)
    assert row["breakaway_axle_nm"] is None
    assert row["breakaway_sensor_nm"] == pytest.approx(23.0, abs=1)


def test_unreadable_recording(tmp_path):
    (bad,) = read_files([tmp_path / "none.csv"])
    with pytest.raises(InputError, match="no such file"):
        header_of(bad)


def test_fixture_words():
    assert fixture_words(Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3)) == (
        "one stud, length 450 mm, stud circle 114.3 mm"
    )
    assert "not known" in fixture_words(None)


@pytest.mark.parametrize(
    "asked",
    [
        Asked(),
        Asked(zero="start"),
        Asked(
            lever=Lever(fixture="couple"),
            limit=Limit(quantity="breakaway", kind="min", unit="N·m", lower=5, source="x"),
            zero=Zero(value_nm=0.1, how="lever off"),
            held="case",
            gear="in gear",
            rule=Rule.SIMPLE,
            guard=Guard.ONE_SIDED,
            repeatability=0.03,
            drop_outliers=True,
        ),
    ],
)
def test_what_was_asked_comes_back(asked):
    assert asked_from(asked_plain(asked)) == asked


def test_everything_that_can_be_asked_is_kept():
    paths = {"both_free", "build_sheet"}  # a report keeps both by name and hash, never as a path
    assert set(asked_plain(Asked())) == {field.name for field in dataclasses.fields(Asked)} - paths


@pytest.mark.parametrize("plain", [{}, {"rule": "none"}, {**asked_plain(Asked()), "lever": {"fixture": "rocket"}}])
def test_damaged_settings(plain):
    with pytest.raises(InputError, match="damaged"):
        asked_from(plain)


def test_a_pull_that_did_not_turn_has_no_chatter():
    turning = Rotating(3.0, 6.0, 30.0, 0.1, 0.2, 31.0)
    frame = Pull(1.0, 7.0, 1, 0.0)
    assert chatter_of(PullReading(frame, {})) is None
    assert chatter_of(PullReading(replace(frame, rotating=turning), {})) == 0.0
    slips = replace(frame, rotating=turning, stick_slip=StickSlip(4.0, 6.0, 0.2))
    assert chatter_of(PullReading(slips, {})) == 0.2
