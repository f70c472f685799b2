"""Drag taken off on a simulated axle whose packs and drags are known, through real files."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path

import msgspec
import numpy as np
import pytest

from analysis.pipeline import Asked, read_file
from analysis.verdict.sides import both_ends, drag_test, gear_ratio
from logger import header
from logger.errors import HeldwheelError, InputError
from logger.header import Lever, TransducerFacts, Zero
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason
from logger.virtual import scenarios
from logger.virtual.physics import simulate
from tests.analysis.simulated import TRUE_ZERO_NM, ZERO, write_trace
from tests.faults.forged import forged

WEAK, STRONG = scenarios.pack(20.0, 1.25), scenarios.pack(60.0, 1.25, seed=2)
DRIVING_RIGHT = scenarios.axle(STRONG, WEAK, driven_nm=9.0, other_nm=3.0, case_nm=14.0)
DRIVING_LEFT = scenarios.axle(WEAK, STRONG, driven_nm=3.0, other_nm=9.0, case_nm=14.0)
FREE = replace(DRIVING_RIGHT, held="none")
HUB = Lever(fixture="hub centre", weight_kg=0.8, centroid_mm=180.0)
FACTS = TransducerFacts(serial="T-1", capacity_nm=100.0, accuracy_percent_of_reading=0.5)

pytestmark = pytest.mark.xdist_group("sides")  # one worker, so that what they share is made once


def _run(axle, **pulls):
    scenario = scenarios.healthy()
    sensor = replace(scenario.sensor, rate_hz=250.0, zero_nm=TRUE_ZERO_NM, capacity_nm=100.0)
    lever = replace(scenario.lever, mass_kg=0.8, centroid_m=0.18)
    return simulate(replace(scenario, axle=axle, sensor=sensor, lever=lever, actions=scenarios.pulls(4, **pulls)), 3)


@pytest.fixture(scope="module")
def runs():
    return {
        "right": _run(DRIVING_RIGHT),
        "left": _run(DRIVING_LEFT, direction=-1),
        "free": _run(FREE, turn_rad_s=((0.3, 4.0),), ramp_nm_s=10.0),
    }


@pytest.fixture
def readings(tmp_path, runs):
    def read(name, **keys):
        return read_file(
            write_trace(
                tmp_path / f"{name}.csv", runs[name], **{"lever": HUB, "zero": ZERO, "transducer": FACTS} | keys
            )
        )

    return read


def test_mean_of_unequal_packs_without_drag(readings, runs):
    """Packs of 20 and 60 N·m, driveline 14, wheel ends 9 and 3: raw torques are far off, combined they are not."""
    test = drag_test({"right": readings("right"), "left": readings("left")}, readings("free"))
    rotating = [m for m in test.means if m.quantity == "rotating mean" and m.way == "forwards"]
    assert len(rotating) == 1
    mean = rotating[0].budget
    assert mean is not None
    true = sum(p.pack_mean_nm for p in runs["right"].truth) / len(runs["right"].truth)
    assert mean.value == pytest.approx(true, abs=mean.u95)
    assert mean.u95 < 2.0
    raw = test.raw["rotating mean"].cells["right", 1]
    assert raw.value - true > 5 * mean.u95
    assert mean.row("calibration").sensitivity == pytest.approx(mean.value, rel=0.2)
    assert any("right wheel end drags more" in note for note in test.notes)
    json.dumps(test.to_json(), allow_nan=False)


def test_one_side_alone_is_told_apart(readings):
    test = drag_test({"right": readings("right")}, readings("free"))
    (mean,) = (m for m in test.means if m.quantity == "rotating mean")
    assert "wheel ends taken as alike" in mean.how
    assert mean.budget is not None
    assert mean.budget.value == pytest.approx(43.3, abs=1.5)  # 3 N·m too much: half of what the wheel ends differ by


def test_no_baseline_no_pack_mean(readings):
    test = drag_test({"right": readings("right"), "left": readings("left")}, None)
    assert all(m.budget is None for m in test.means)
    assert all("withheld" in m.how for m in test.means)
    assert test.notes[0].startswith("no both-free baseline")


def test_sides_rolled_opposite_ways_are_named(tmp_path, readings):
    both_clockwise = {"right": readings("right"), "left": readings("free")}
    test = drag_test(both_clockwise, readings("free"))
    (mean,) = (m for m in test.means if m.quantity == "rotating mean")
    assert mean.way == "both ways"
    assert "opposite ways" in mean.how


def test_two_transducers_share_no_calibration(readings):
    other = TransducerFacts(serial="T-2", capacity_nm=100.0, accuracy_percent_of_reading=0.5)
    held = {"right": readings("right"), "left": readings("left", transducer=other)}
    test = drag_test(held, None)
    names = {row.input.name for row in test.raw["breakaway"].cells["left", -1].rows}
    assert "calibration (left)" in names
    difference = test.raw["rotating mean"].difference("forwards")
    assert difference is not None
    apart = [row.contribution for row in difference.rows if row.input.name.startswith("calibration")]
    assert len(apart) == 2
    assert math.hypot(*apart) > 0.1


def test_half_speed_is_judged_from_the_angle(tmp_path):
    """A baseline as fast as the held test is told; at half its speed nothing is; without an angle the rule is said."""
    free = tmp_path / "free.csv"

    def baseline(speed, *, angle):
        scenario = replace(scenarios.both_free(), actions=scenarios.pulls(3, ramp_nm_s=8.0, turn_rad_s=((speed, 4.0),)))
        run = simulate(replace(scenario, angle_step_deg=0.1 if angle else None), 1)
        return read_file(write_trace(free, run, lever=HUB, zero=Zero(value_nm=0.0, value_nm_u=0.01, how="lever off")))

    held = {"right": baseline(0.6, angle=True)}
    assert any("% of the held test's wheel speed" in note for note in drag_test(held, baseline(0.6, angle=True)).notes)
    assert not any("wheel speed" in note for note in drag_test(held, baseline(0.3, angle=True)).notes)
    unknown = drag_test(held, baseline(0.3, angle=False)).notes
    assert any("no speeds were recorded: turn the baseline at half" in note for note in unknown)


def test_a_side_tested_with_the_case_held_is_doubted(tmp_path):
    """Free-running ends, packs of 30 N·m: the mean of both on the right, their sum on the left."""
    ends = {"driven_nm": 1.0, "other_nm": 1.0, "case_nm": 2.0}
    axle = scenarios.axle(scenarios.pack(30.0), scenarios.pack(30.0, seed=2), **ends)
    held = {}
    for side, member, direction in (("right", "other side", 1), ("left", "case", -1)):
        run = _run(replace(axle, held=member), direction=direction)
        held[side] = read_file(write_trace(tmp_path / f"{side}.csv", run, lever=HUB, zero=ZERO, transducer=FACTS))
    assert any("differ by a factor of" in note for note in drag_test(held, None).notes)


def test_ordinary_sides_are_not_doubted(readings):
    held = {"right": readings("right"), "left": readings("left")}
    assert not any("differ by a factor" in note for note in drag_test(held, None).notes)


def test_nothing_at_the_axle_is_refused(readings):
    with pytest.raises(InputError, match="gives no torque at the axle"):
        drag_test({"right": readings("right", lever=None)}, None)


def test_in_gear_over_neutral(readings):
    """One transducer for both: its calibration cancels."""
    ratio = gear_ratio(readings("right", test=header.Test(gear="in gear")), readings("free"))
    assert ratio.value == pytest.approx(57.5 / 27.5, rel=0.08)
    assert abs(ratio.row("calibration").sensitivity) < 0.05
    with pytest.raises(InputError, match="neutral"):
        gear_ratio(readings("right"), readings("free", lever=None))


def test_sensors_at_both_ends_need_no_baseline(tmp_path, readings, runs):
    """The reaction at the held wheel, written as a second recording: the pack mean but for the driven end's drag."""
    run = runs["right"]
    grid = np.arange(run.mechanics.held_nm.size) * run.mechanics.step_s
    reaction = np.abs(np.interp(run.time_s, grid, run.mechanics.held_nm))
    noise = np.random.default_rng(2).normal(0.0, 0.03, reaction.size)
    held = replace(run, torque_nm=reaction + noise)
    facts = TransducerFacts(serial="T-2", capacity_nm=100.0, accuracy_percent_of_reading=0.5)
    zero = Zero(value_nm=0.0, value_nm_u=0.01, how="lever off")
    path = write_trace(tmp_path / "held.csv", held, lever=Lever(fixture="held side"), zero=zero, transducer=facts)
    found = {e.quantity: e for e in both_ends(readings("right"), read_file(path))}
    rotating = found["rotating mean"]
    true = sum(p.pack_mean_nm for p in run.truth) / len(run.truth)
    assert rotating.mean.value == pytest.approx(true + 9.5 / 2, abs=rotating.mean.u95 + 0.5)
    assert rotating.driveline.value == pytest.approx(14.5 + 9.5, abs=rotating.driveline.u95 + 1.5)
    assert {row.input.name for row in rotating.mean.rows} >= {"calibration (driven)", "calibration (held)"}
    with pytest.raises(InputError, match="held end"):
        both_ends(readings("right"), readings("left", lever=None))


@pytest.fixture
def beside(tmp_path, runs):
    """Write the held test and the baseline into one folder."""

    def write(name, **keys):
        kept = {"lever": HUB, "zero": ZERO, "transducer": FACTS, "test": header.Test(side="right")} | keys
        return write_trace(tmp_path / f"{name}.csv", runs[name], **kept)

    return write


def test_a_reading_takes_its_baseline_along(beside):
    """T - T_both / 2 = F + (D_driven - D_other) / 2, whatever the carrier drags; trade derivation, section 3.3."""
    right, free = beside("right"), beside("free")
    reading = read_file(right, Asked(both_free=free))
    assert reading.drag is not None
    assert reading.drag.file == str(free)
    assert reading.drag.sha256 == read_file(free).sha256
    mean = next(m.budget for m in reading.drag.test.means if m.quantity == "rotating mean")
    assert mean.value == pytest.approx(40.0 + (9.0 - 3.0) / 2, abs=1.5)
    plain = read_file(right)
    assert plain.drag is None
    assert plain.job[0].budget.value == reading.job[0].budget.value, "the torque as read stays as it is"
    raw = next(v.budget for v in reading.job if v.budget.quantity == "rotating mean")
    assert mean.value < raw.value - 10
    shown = reading.to_json()["drag"]
    assert shown["file"] == str(free)
    json.dumps(shown, allow_nan=False)
    assert not [note for note in reading.drag.test.notes if "backwards" in note], "nobody rolled it backwards"


def test_a_recording_that_names_its_baseline(beside):
    free = beside("free", test=header.Test(side="right", held="none", purpose="drag"))
    named = header.RecordingSource(file="free.csv", sha256=read_file(free).sha256)
    right = beside("right", both_free=named)
    assert read_file(right).drag is not None
    free.write_text(free.read_text("utf-8").replace("0.40", "0.41", 1), "utf-8")
    reading = read_file(right)
    assert reading.drag is None
    assert any("withheld: its baseline free.csv has changed since" in text for text in reading.problems)
    free.unlink()
    assert any("does not lie beside" in text for text in read_file(right).problems)
    assert read_file(right).job


@pytest.mark.parametrize("name", ["../free.csv", "sub/../../free.csv", "", "..", "n" * 4000, "..\\free.csv"])
def test_a_baseline_is_looked_for_beside_the_recording_only(tmp_path, beside, name):
    free = beside("free")
    inside = tmp_path / "inside"
    inside.mkdir()
    right = beside("right", both_free=header.RecordingSource(file=name, sha256=read_file(free).sha256))
    for path in (right, right.with_name("right.sidecar.toml")):
        path.rename(inside / path.name)
    reading = read_file(inside / "right.csv")
    assert reading.drag is None
    assert any("does not lie beside" in text for text in reading.problems)


def test_baselines_that_are_none(beside):
    right = beside("right")
    held = beside("free", test=header.Test(held="other side"))
    reading = read_file(right, Asked(both_free=held))
    assert reading.drag is None
    assert any("the other side was held" in text for text in reading.problems)
    with pytest.raises(HeldwheelError, match="no such file"):
        read_file(right, Asked(both_free=right.with_name("gone.csv")))
    flat = right.with_name("flat.csv")
    flat.write_text("time_s,torque_Nm\n" + "".join(f"{i / 100},0.0\n" for i in range(500)), "utf-8")
    reading = read_file(right, Asked(both_free=flat))
    assert any("gives no torque at the axle" in text for text in reading.problems)


def test_a_simulated_baseline_marks_the_whole(beside):
    right, free = beside("right", simulated=False), beside("free")
    assert not read_file(right).simulated
    assert read_file(right, Asked(both_free=free)).simulated


def recorded_baseline(folder: Path, runs) -> Path:
    """Write the both-free test as a recording of our own."""
    run = runs["free"]
    path = folder / "free.csv"
    head = header.Header(lever=HUB, zero=ZERO, transducer=msgspec.structs.replace(FACTS, unit="N·m"), simulated=True)
    writer = RecordingWriter(path, head, (Column("torque", "N·m"),))
    writer.on_block(Block(run.time_s, {"torque": run.torque_nm}))
    writer.on_end(Ending(EndReason.STOPPED))
    return path


@pytest.mark.parametrize("by", ["sha256", "above_sha256"])
def test_a_baseline_changed_behind_its_closing_line_corrects_nothing(tmp_path, beside, runs, by):
    """Three times the drag, every check put right, the closing line kept: neither named nor asked for is it used."""
    free = recorded_baseline(tmp_path, runs)
    right = beside("right", both_free=header.RecordingSource(file="free.csv", sha256=getattr(read_file(free), by)))
    assert read_file(right).drag is not None
    free.write_bytes(forged(free.read_bytes(), 3.0))
    named, asked = read_file(right), read_file(right, Asked(both_free=free))
    assert named.drag is asked.drag is None
    assert any("has changed since" in text for text in named.problems)
    assert any("withheld: free.csv is not as it was closed: was changed" in text for text in asked.problems)
    with pytest.raises(InputError, match="not as it was closed"):
        drag_test({"right": read_file(right)}, read_file(free))


def test_what_is_not_in_order_with_a_baseline_is_told_with_the_recording(beside):
    right = beside("right")
    free = beside("free", lever=None)
    reading = read_file(right, Asked(both_free=free))
    assert reading.drag is None
    free = beside("free", transducer=TransducerFacts(serial="T-1", unit="N·m"))
    reading = read_file(right, Asked(both_free=free))
    assert reading.drag is not None
    assert any(text.startswith("baseline free.csv: ") and "accuracy" in text for text in reading.problems)
