"""From files to readings: against the truth of simulated tests, and everything that a file may lack or get wrong."""

from __future__ import annotations

import json
import math
from datetime import UTC, datetime

import numpy as np
import pytest

from analysis.pipeline import Asked, read_file, read_files
from analysis.verdict.limits import State
from analysis.verdict.recorded import SCHEMA, to_json
from logger import header
from logger.errors import DescriptionError, FileError, HeldwheelError
from logger.header import Correction, Lever, Limit, TransducerFacts, Zero
from tests.analysis.simulated import FACTS, HUB, ONE_STUD, TRUE_ZERO_NM, ZERO, run_of, write_trace

LIMIT = Limit(
    quantity="breakaway",
    kind="min",
    unit="lbf·ft",
    lower=20.0,
    source="workshop manual",
    held="other side",
    gear="neutral",
)
HELD = header.Test(place="car", held="other side", gear="neutral")


@pytest.fixture(scope="module")
def stud_run():
    return run_of(one_stud=True, seed=3, angle=True)


@pytest.fixture(scope="module")
def hub_run():
    return run_of(one_stud=False, seed=2)


@pytest.fixture
def on_stud(tmp_path, stud_run):
    return write_trace(tmp_path / "stud.csv", stud_run, lever=ONE_STUD, zero=ZERO, test=HELD, limit=LIMIT)


@pytest.fixture
def on_hub(tmp_path, hub_run):
    return write_trace(tmp_path / "hub.csv", hub_run, lever=HUB, zero=ZERO, test=HELD)


def test_torque_at_the_axle_is_the_truth(on_stud, stud_run):
    """One stud, 2.5 kg lever 20° above the horizontal, zero offset: the wheel's own torque in the simulation."""
    reading = read_file(on_stud)
    assert reading.ok
    assert reading.simulated
    assert len(reading.pulls) == len(stud_run.truth) == 5
    for read, true in zip(reading.pulls, stud_run.truth, strict=True):
        assert read.pull.direction == true.direction
        breakaway, rotating = read.axle["breakaway"], read.axle["rotating mean"]
        assert breakaway.value == pytest.approx(true.breakaway_axle_nm, abs=breakaway.u95)
        assert rotating.value == pytest.approx(true.plateau_axle_nm, abs=rotating.u95)
        assert breakaway.u95 < 0.02 * breakaway.value
        # Without the lever's weight and the factor it would be nowhere near.
        assert abs(read.pull.breakaway.at_sensor_nm - true.breakaway_axle_nm) > 5 * breakaway.u95


def test_on_the_axle_line_the_truth_again(on_hub, hub_run):
    reading = read_file(on_hub)
    for read, true in zip(reading.pulls, hub_run.truth, strict=True):
        for quantity, value in (("breakaway", true.breakaway_axle_nm), ("rotating mean", true.plateau_axle_nm)):
            assert read.axle[quantity].value == pytest.approx(value, abs=read.axle[quantity].u95)


def test_job_and_result(on_stud):
    reading = read_file(on_stud)
    value = next(v for v in reading.job if v.budget.quantity == "breakaway")
    assert len(value.values) == 5
    assert reading.result is not None
    assert reading.result.state is State.WITHIN
    assert reading.result.value == value.budget.value
    assert all(p.result is not None and p.result.u > p.axle["breakaway"].u for p in reading.pulls)


def test_contract(on_stud):
    """Every key that other tools read, with its type; numbers are finite or null."""
    text = json.dumps(to_json([read_file(on_stud)], budgets=True), allow_nan=False)
    whole = json.loads(text)
    assert whole["schema"] == SCHEMA == "heldwheel pulls 1"
    (recording,) = whole["recordings"]
    assert recording["file"] == str(on_stud)
    assert recording["ok"] is True
    assert recording["simulated"] is True
    assert isinstance(recording["problems"], list)
    for key in ("rate_hz", "zero_nm", "noise_nm"):
        assert isinstance(recording[key], float)
    assert recording["zero_from"] == "true zero (lever off)"
    assert len(recording["sha256"]) == 64
    pull = recording["pulls"][0]
    assert pull["direction"] in ("clockwise", "counter-clockwise")
    assert set(pull["breakaway"]) == {
        "time_s", "at_sensor_nm", "at_axle_nm", "u95_sensor_nm", "u95_axle_nm", "distinct_peak"
    }  # fmt: skip
    assert {"start_s", "end_s", "at_sensor_nm", "at_axle_nm", "u95_sensor_nm", "u95_axle_nm", "max_nm"} <= set(
        pull["rotating"]
    )
    assert pull["stick_slip"] is None
    assert (pull["valid"], pull["reasons"]) == (True, [])
    assert set(pull["result"]) >= {"state", "quantity", "value", "limit", "rule", "probability"}
    assert {row["name"] for row in pull["budgets"][0]["rows"]} >= {"trace", "calibration", "true zero", "lever length"}
    assert recording["result"]["state"] == "within"


def test_unknown_lever_gives_no_torque_at_the_axle(tmp_path, hub_run):
    reading = read_file(write_trace(tmp_path / "bare.csv", hub_run, limit=LIMIT))
    assert reading.pulls
    entry = reading.to_json()["pulls"][0]
    assert entry["breakaway"]["at_axle_nm"] is None
    assert entry["breakaway"]["at_sensor_nm"] > 0
    assert any("lever is not known" in text for text in reading.problems)
    assert reading.result is not None
    assert reading.result.state is State.NOT_VALID


def test_what_is_asked_wins_over_the_file(on_hub):
    reading = read_file(on_hub, Asked(lever=ONE_STUD, limit=LIMIT))
    assert reading.at is not None
    assert reading.at.fixture.kind == "one stud"
    assert reading.result is not None


def test_without_true_zero_it_is_said_and_in_the_interval(tmp_path, hub_run):
    path = write_trace(tmp_path / "hub.csv", hub_run, lever=HUB)
    reading = read_file(path)
    assert any("no true zero" in text and "weight is in the interval" in text for text in reading.problems)
    for read, true in zip(reading.pulls, hub_run.truth, strict=True):
        budget = read.axle["breakaway"]
        assert abs(budget.value - true.breakaway_axle_nm) > 3.0  # the lever's 4.8 N·m at hand-off
        assert budget.value == pytest.approx(true.breakaway_axle_nm, abs=budget.u95)


def test_start_of_the_recording_as_true_zero(on_hub, hub_run):
    reading = read_file(on_hub, Asked(zero="start"))
    assert reading.at is not None
    assert reading.trace is not None
    assert reading.at.level.known
    assert reading.at.level.zero_nm == pytest.approx(float(np.median(hub_run.torque_nm[:500])), abs=0.02)
    for read, true in zip(reading.pulls, hub_run.truth, strict=True):
        assert read.axle["breakaway"].value == pytest.approx(true.breakaway_axle_nm, rel=0.02)


def test_known_gain_is_divided_out_of_reading_and_zero(tmp_path):
    run = run_of(one_stud=False, seed=2, gain=1.05)
    facts = TransducerFacts(capacity_nm=200.0, gain=1.05, gain_u=0.001)
    zero = Zero(value_nm=TRUE_ZERO_NM, value_nm_u=0.02, how="lever off")
    reading = read_file(write_trace(tmp_path / "gain.csv", run, lever=HUB, zero=zero, transducer=facts))
    for read, true in zip(reading.pulls, run.truth, strict=True):
        assert read.axle["breakaway"].value == pytest.approx(true.breakaway_axle_nm, rel=0.005)


def test_accuracy_of_full_scale_widens_the_interval_at_the_sensor(tmp_path, hub_run):
    plain = read_file(write_trace(tmp_path / "a.csv", hub_run))
    facts = TransducerFacts(capacity_nm=200.0, accuracy_percent_of_reading=0.5, accuracy_percent_of_full_scale=0.5)
    wide = read_file(write_trace(tmp_path / "b.csv", hub_run, transducer=facts))
    before, after = (r.pulls[0].pull.breakaway.u95_sensor_nm for r in (plain, wide))
    assert after == pytest.approx(math.hypot(before, 1.0), rel=0.01)


@pytest.mark.parametrize(
    ("test", "words"),
    [
        (header.Test(held="case"), "factor of two"),
        (header.Test(held="other side", gear="in gear"), "factor of two"),
        (header.Test(held="none"), "neither held"),
        (header.Test(held="other side", purpose="drag"), "recording for 'drag'"),
    ],
)
def test_another_kind_of_test_is_not_compared(tmp_path, hub_run, test, words):
    reading = read_file(write_trace(tmp_path / "t.csv", hub_run, lever=HUB, zero=ZERO, limit=LIMIT, test=test))
    assert reading.result is not None
    assert reading.result.state is State.NOT_VALID
    assert any(words in note for note in reading.result.notes)
    assert reading.job  # the values are stated all the same


def test_a_type_that_the_torque_does_not_judge_is_not_compared(tmp_path, hub_run):
    asked, geared = {"lever": HUB, "zero": ZERO, "test": HELD}, header.Axle(type="helical or worm gear")
    for limit in (LIMIT, None):
        reading = read_file(write_trace(tmp_path / "t.csv", hub_run, **asked, limit=limit, axle=geared))
        assert any("no pack" in text for text in reading.problems)
        assert reading.job  # the values are stated all the same
        assert (reading.result and reading.result.state) is (State.NOT_VALID if limit else None)
    lifted = header.Axle(type="helical or worm gear", type_reason="before and after, same axle")
    reading = read_file(write_trace(tmp_path / "t.csv", hub_run, **asked, limit=LIMIT, axle=lifted))
    assert reading.result.state is State.WITHIN
    assert any("before and after, same axle" in note for note in reading.result.notes)
    assert sum("same axle" in text for text in reading.problems) == 1


def test_unstated_kind_of_test_is_compared_with_a_warning(tmp_path, hub_run):
    reading = read_file(write_trace(tmp_path / "t.csv", hub_run, lever=HUB, zero=ZERO, limit=LIMIT))
    assert reading.result is not None
    assert reading.result.state is State.WITHIN
    assert any("does not say which part is held" in note for note in reading.result.notes)


def test_ratio_limit_needs_two_recordings(on_hub):
    ratio = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="manual")
    reading = read_file(on_hub, Asked(limit=ratio))
    assert reading.result is not None
    assert reading.result.state is State.NOT_VALID


@pytest.mark.parametrize(
    ("lever", "words"),
    [
        (Lever(fixture="cord", radius_mm=210), "takes a force"),
        (Lever(fixture="dead weight", radius_mm=900), "takes a mass"),
    ],
)
def test_fixture_that_takes_no_torque(tmp_path, hub_run, lever, words):
    reading = read_file(write_trace(tmp_path / "t.csv", hub_run, lever=lever, limit=LIMIT))
    assert reading.at is None
    assert any(words in text for text in reading.problems)


def test_sensor_on_the_held_side_is_not_compared(tmp_path, hub_run):
    reading = read_file(
        write_trace(tmp_path / "t.csv", hub_run, lever=Lever(fixture="held side"), limit=LIMIT, test=HELD)
    )
    assert reading.result is not None
    assert reading.result.state is State.NOT_VALID


def _correction(**keys):
    return Correction(at=datetime(2026, 5, 3, 10, 30, tzinfo=UTC), reason="looked at with the operator", by="R", **keys)


def test_pull_left_out_with_a_reason(tmp_path, hub_run):
    start = read_file(write_trace(tmp_path / "a.csv", hub_run, lever=HUB, zero=ZERO)).pulls[1].pull.start_s
    path = write_trace(
        tmp_path / "b.csv",
        hub_run,
        lever=HUB,
        zero=ZERO,
        limit=LIMIT,
        corrections=(_correction(pull_start_s=start, exclude=True),),
    )
    reading = read_file(path)
    assert [p.counts for p in reading.pulls] == [True, False, True, True, True]
    assert reading.pulls[1].left_out == "R, 2026-05-03 10:30: looked at with the operator"
    assert reading.pulls[1].result is None
    assert len(reading.job[0].values) == 4
    assert any("excluded (R, 2026-05-03" in text for text in reading.problems)


def test_moved_places_are_read_from_the_trace(tmp_path, hub_run):
    before = read_file(write_trace(tmp_path / "a.csv", hub_run, lever=HUB, zero=ZERO)).pulls[0].pull
    assert before.rotating is not None
    assert before.breakaway is not None
    start = before.rotating.start_s + 0.5
    moved = _correction(pull_start_s=before.start_s, rotating_start_s=start, breakaway_s=before.breakaway.time_s)
    after = read_file(write_trace(tmp_path / "b.csv", hub_run, lever=HUB, zero=ZERO, corrections=(moved,))).pulls[0]
    assert after.pull.rotating is not None
    assert (after.pull.rotating.start_s, after.pull.rotating.end_s) == (start, before.rotating.end_s)
    assert after.pull.rotating.at_sensor_nm == pytest.approx(before.rotating.at_sensor_nm, rel=0.02)
    assert after.pull.breakaway is not None
    assert after.pull.breakaway.at_sensor_nm == pytest.approx(before.breakaway.at_sensor_nm, rel=0.01)
    assert "breakaway at" in after.corrected[0]


def test_a_decision_is_taken_back_and_stays_on_record(tmp_path, hub_run):
    plain = read_file(write_trace(tmp_path / "a.csv", hub_run, lever=HUB, zero=ZERO))
    start = plain.pulls[0].pull.start_s
    moved = _correction(pull_start_s=start, breakaway_s=start + 1.0)
    out = _correction(pull_start_s=start, exclude=True)
    back = _correction(pull_start_s=start, as_found=True)
    path = write_trace(tmp_path / "b.csv", hub_run, lever=HUB, zero=ZERO, corrections=(moved, out, back))
    reading = read_file(path)
    assert reading.pulls[0].pull == plain.pulls[0].pull
    assert reading.pulls[0].counts
    assert reading.pulls[0].corrected == ()
    assert reading.job[0].budget == plain.job[0].budget
    assert len(reading.corrections) == 3


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"pull_start_s": 1e4, "exclude": True}, "none starts there"),
        ({"breakaway_s": 1e4}, "lies outside the recording"),
        ({"rotating_start_s": 9e3, "rotating_end_s": 1e4}, "nothing between"),
        ({"rotating_start_s": 12.0, "rotating_end_s": 11.0}, "nothing between"),
        ({"start_s": 5.0, "end_s": 4.0}, "nothing between"),
    ],
)
def test_correction_that_cannot_be_applied_is_said(tmp_path, hub_run, keys, words):
    plain = read_file(write_trace(tmp_path / "a.csv", hub_run))
    keys = {"pull_start_s": plain.pulls[0].pull.start_s} | keys
    reading = read_file(write_trace(tmp_path / "b.csv", hub_run, corrections=(_correction(**keys),)))
    assert any(words in text for text in reading.problems)
    assert reading.pulls[0].pull == plain.pulls[0].pull


def test_files_that_cannot_be_read_do_not_stop_the_others(tmp_path, on_hub):
    (tmp_path / "empty.csv").write_text("", encoding="utf-8")
    (tmp_path / "words.csv").write_text("name,place\nx,y\n", encoding="utf-8")
    seen = []
    paths = [tmp_path / "missing.csv", tmp_path / "empty.csv", on_hub, tmp_path / "words.csv"]
    readings = list(read_files(paths, before=lambda i, path: seen.append((i, path))))
    assert [r.ok for r in readings] == [False, False, True, False]
    assert all(r.problems for r in readings if not r.ok)
    assert seen == list(enumerate(paths))
    whole = to_json(readings)
    assert whole["recordings"][0]["pulls"] == []
    assert whole["recordings"][0]["rate_hz"] is None
    json.dumps(whole, allow_nan=False)


def test_lever_or_limit_with_faults_names_them(tmp_path, hub_run):
    path = write_trace(
        tmp_path / "bad.csv", hub_run, lever=Lever(fixture="one stud", length_mm=-450, stud_circle_mm=114.3)
    )
    with pytest.raises(DescriptionError, match=r"lever\.length_mm"):
        read_file(path)
    path = write_trace(
        tmp_path / "bad.csv", hub_run, lever=HUB, limit=Limit(quantity="breakaway", kind="min", unit="N·m", source="")
    )
    with pytest.raises(DescriptionError, match=r"limit\.source"):
        read_file(path)


def test_missing_file():
    with pytest.raises((FileError, HeldwheelError), match="nowhere"):
        read_file("nowhere.csv")


def test_instrument_that_does_not_suit(tmp_path, hub_run):
    facts = TransducerFacts(capacity_nm=1000.0, accuracy_percent_of_reading=1.0)
    reading = read_file(write_trace(tmp_path / "t.csv", hub_run, lever=HUB, zero=ZERO, transducer=facts, limit=LIMIT))
    assert any("below 20 %" in text for text in reading.problems)
    reading = read_file(write_trace(tmp_path / "u.csv", hub_run, lever=HUB, zero=ZERO, transducer=FACTS))
    assert not any("capacity" in text for text in reading.problems)
