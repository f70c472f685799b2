"""A reading as a row, a run and the material of a report."""

from __future__ import annotations

import dataclasses
import math
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
    ratio_of,
    recording_row,
    run_of,
)
from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS
from analysis.trace.results import Breakaway, Code, Pull, Reason, Rotating, StickSlip, Turning
from analysis.verdict.limits import Guard, Rule
from analysis.verdict.recorded import PullReading
from logger.errors import InputError
from logger.header import Header, JobFacts, Lever, Limit, Table, Test, TransducerFacts, Zero
from tests.analysis.rows.readings import budget, reading, value

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


def pulled(way: int = 1, breakaway: float | None = 40.0, rotating: float | None = 20.0, *, start_s=1.0, **more):
    """Give a pull put together by hand; what it is at the axle is twice that at the sensor, where ``axle`` says so."""
    said = {} if breakaway is None else {"breakaway": Breakaway(2.0, breakaway, 0.1, 0.2, True)}
    said |= {} if rotating is None else {"rotating": Rotating(3.0, 6.0, rotating, 0.1, 0.2, 21.0)}
    speed = more.pop("rpm", None)
    if speed is not None:
        said["turning"] = Turning(720.0, 2, speed, None, 0.5, 0.1, 0.0, None)
    said |= {key: more.pop(key) for key in ("reasons", "stick_slip") if key in more}
    at_axle = {"breakaway": breakaway, "rotating mean": rotating} if more.pop("axle", False) else {}
    axle = {q: budget(q, 2 * nm, 0.5) for q, nm in at_axle.items() if nm is not None}
    return PullReading(Pull(start_s, start_s + 6, way, 0.0, **said), axle, **more)


SPOILT = (Reason(Code.SHORT, "pull longer"),)


def test_the_direction_of_a_row_is_that_with_more_pulls_clockwise_first():
    two, other = (pulled(), pulled()), (pulled(-1, 60.0, 30.0), pulled(-1, 62.0, 31.0))
    assert recording_row(reading(pulls=(*two, *other)))["direction"] == "clockwise"
    assert recording_row(reading(pulls=(*two[1:], *other)))["direction"] == "anticlockwise"
    left_out = pulled(-1, left_out="jerked")
    row = recording_row(reading(pulls=(*two, other[0], left_out, pulled(-1, reasons=SPOILT))))
    assert (row["direction"], row["pulls"], row["pulls_used"]) == ("clockwise", 5, 2)
    row = recording_row(reading(pulls=(two[0], *other), problems=("a", "b")))
    assert (row["breakaway_sensor_nm"], row["rotating_sensor_nm"], row["pulls_used"]) == (61.0, 30.5, 2)
    assert row["problems"] == "a; b"
    assert (row["static_dynamic_ratio"], row["chatter_index"]) == (2.0, 0.0)
    assert [row[key] for key in ("place", "held", "gear", "side")] == 4 * [""]
    decided = value("breakaway", 80.0, 0.5, direction=1)
    row = recording_row(reading(decided, value("breakaway", 99.0, direction=-1), pulls=(two[0], *other)))
    assert (row["direction"], row["breakaway_axle_nm"], row["rotating_axle_nm"]) == ("clockwise", 80.0, None)
    assert row["breakaway_axle_u95_nm"] == pytest.approx(0.98, abs=1e-3)
    assert recording_row(reading())["direction"] == ""


def test_a_row_of_a_pull():
    """Ratio at the axle where it is known, else at the sensor; chatter only where it turned."""
    spoilt = pulled(-1, None, None, reasons=SPOILT, left_out="jerked", start_s=9.0)
    slips = pulled(1, 40.0, 25.0, axle=True, stick_slip=StickSlip(4.0, 6.0, 0.2))
    first, second, third = pull_rows(reading(pulls=(pulled(1, 40.0, 16.0), slips, spoilt)))
    assert [first[key] for key in ("pull", "start_s", "end_s", "direction", "valid", "used", "reasons")] == [
        *(1, 1.0, 7.0, "clockwise", True, True, "")
    ]
    assert (first["static_dynamic_ratio"], first["chatter_index"], first["breakaway_axle_nm"]) == (2.5, 0.0, None)
    assert (second["static_dynamic_ratio"], second["chatter_index"]) == (1.6, 0.2)
    assert (second["breakaway_axle_nm"], second["rotating_axle_nm"], second["rotating_sensor_nm"]) == (80.0, 50.0, 25.0)
    assert [third[key] for key in ("pull", "valid", "used", "static_dynamic_ratio", "chatter_index")] == [
        *(3, False, False, None, None)
    ]
    assert third["reasons"] == f"{Code.SHORT}: pull longer; jerked"
    assert ratio_of(pulled(1, 40.0, 0.0)) is None
    assert ratio_of(pulled(1, 0.0, 20.0)) == 0.0
    assert ratio_of(pulled(1, None, 20.0)) is None


def test_a_run_by_hand():
    """10 and 20 turns a minute are π/3 and 2π/3 rad/s."""
    header = Header(
        test=Test(held="other side", place="bench", direction="clockwise", dwell_s=3.0), job=JobFacts(operator="o")
    )
    pulls = (
        pulled(rpm=10.0),
        pulled(rpm=20.0),
        pulled(-1, 60.0, left_out="jerked"),
        pulled(reasons=SPOILT, start_s=30.25),
    )
    job = (value("breakaway", 80.0, 0.5), value("rotating mean", 40.0, direction=-1), value("rotating maximum", 45.0))
    run = run_of(reading(*job, header=header, pulls=pulls))
    assert (run.pulls, run.setting.test, run.setting.at) == (2, "bench, other side held", "sensor")
    assert (run.setting.direction, run.setting.operator, run.setting.dwell_s) == ("clockwise", "o", 3.0)
    assert run.setting.speed_rad_s == pytest.approx(math.pi / 2)
    assert run.excluded == ("made.csv, pull at 1.0 s: jerked", f"made.csv, pull at 30.2 s: {Code.SHORT}")
    assert run.values[Quantity.BREAKAWAY] == (40.0, 40.0)
    assert run.values[Quantity.ROTATING] == (20.0, 20.0)
    assert run.values[Quantity.RATIO] == (2.0, 2.0)
    assert run.values[Quantity.CHATTER] == (0.0, 0.0)
    assert run.values[Quantity.SLOPE] == (0.5, 0.5)
    assert {key: stated[0] for key, stated in run.stated.items()} == {
        (Quantity.BREAKAWAY, "clockwise"): 80.0,
        (Quantity.ROTATING, "anticlockwise"): 40.0,
    }
    for facts, told in (({"serial": "T-1", "name": "gauge"}, "T-1"), ({"name": "gauge"}, "gauge"), ({}, None)):
        named = Header(transducer=TransducerFacts(**facts))
        assert run_of(reading(header=named)).setting.transducer == told
    both = run_of(reading(pulls=(pulled(), pulled(-1))))
    assert (both.setting.direction, both.setting.test, both.setting.speed_rad_s) == ("both", None, None)
    assert run_of(reading(header=header)).setting.direction == "clockwise", "as the card says"
    assert run_of(reading(pulls=(pulled(-1),), header=header)).setting.direction == "anticlockwise", "as it was pulled"


def test_settings_of_an_earlier_report():
    now = asked_plain(Asked())
    before = {name: kept for name, kept in now.items() if name != "table"}
    before |= {"time_column": "t", "torque_column": None, "angle_column": None, "torque_unit": "lbf·ft"}
    assert asked_from(before) == Asked(table=Table(time="t", unit="lbf·ft"))
    assert asked_from({**before, "time_column": None, "torque_unit": None}) == Asked()
    for share, kept in ((0.0, True), (10.0, True), (-0.1, False), (10.1, False)):
        if kept:
            assert asked_from({**now, "repeatability": share}).repeatability == share
        else:
            with pytest.raises(InputError, match="damaged"):
                asked_from({**now, "repeatability": share})
    for other in ([], {**now, "more": 1}, {**before, "more": 1}):
        with pytest.raises(InputError, match="damaged"):
            asked_from(other)


def test_a_recording_that_could_not_be_read_has_no_header():
    assert header_of(reading()) == Header()
    for bad in (replace(reading(), header=None), replace(reading(), ok=False)):
        with pytest.raises(InputError, match=r"^made\.csv: cannot be read$"):
            header_of(bad)
        with pytest.raises(InputError, match=r"^torn; cut$"):
            header_of(replace(bad, problems=("torn", "cut")))
