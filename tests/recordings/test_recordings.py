"""The example recordings are simulated, say so, and give the expected answers."""

from __future__ import annotations

import importlib.util
import json
import math
import sys
from functools import cache
from pathlib import Path

import pytest

from analysis.compare.groups import compare
from analysis.compare.repeatability import cells, study
from analysis.compare.runs import Quantity, numbers_of, units_of
from analysis.compare.trend import RunInState, fit_line, run_in
from analysis.pipeline import Asked, read_file
from analysis.rows.summary import run_of
from logger.instruments.saved import read_lever, read_limit

FOLDER = Path(__file__).resolve().parents[2] / "recordings"
EXPECTED = json.loads((FOLDER / "expected.json").read_text("utf-8"))
FILES = sorted(path.name for path in FOLDER.glob("*.csv"))

_spec = importlib.util.spec_from_file_location("make_recordings", FOLDER / "make.py")
make = importlib.util.module_from_spec(_spec)
sys.modules[_spec.name] = make
_spec.loader.exec_module(make)


@cache
def reading(name):
    return read_file(FOLDER / name)


def runs(start):
    found = [run_of(reading(name)) for name in FILES if name.startswith(start)]
    assert found
    return found


def test_the_folder_is_whole():
    made = {f"{take.name}.csv" for take in make.takes()} | {"06-unclosed.csv", "06-foreign-table.csv"}
    assert set(FILES) == made
    assert set(EXPECTED["recordings"]) == made - {"06-unclosed.csv", "06-foreign-table.csv"}
    assert sum(path.stat().st_size for path in FOLDER.rglob("*") if path.is_file()) < 4_000_000


@pytest.mark.parametrize("name", FILES)
def test_every_recording_is_marked_simulated(name):
    assert reading(name).ok
    assert reading(name).simulated
    assert "simulated" in (FOLDER / "README.md").read_text("utf-8")


@pytest.mark.parametrize("name", sorted(EXPECTED["recordings"]))
def test_every_true_pull_is_found_and_none_besides(name):
    truth = [t for t in EXPECTED["recordings"][name] if t["kind"] == "pull"]
    found = [p.pull for p in reading(name).pulls if p.pull.breakaway is not None or p.pull.rotating is not None]
    if name == "06-clumsy-hand.csv":  # the aborted loading may be shown, not valid
        found = [pull for pull in found if pull.valid]
        truth = [t for t in truth if t["rotating_axle_nm"] is not None]
    assert len(found) == len(truth)
    for pull, true in zip(found, truth, strict=True):
        assert abs(pull.start_s - true["start_s"]) < 1.0


def errors(quantity, key):
    """Give (error / stated uncertainty) of every valid pull that has a true value."""
    for name, pulls in EXPECTED["recordings"].items():
        true_pulls = [t for t in pulls if t["kind"] == "pull"]
        for read in reading(name).pulls:
            near = [t for t in true_pulls if abs(t["start_s"] - read.pull.start_s) < 1.0]
            if read.counts and near and near[0][key] is not None and quantity in read.axle:
                budget = read.axle[quantity]
                yield (budget.value - near[0][key]) / budget.u95, budget.value / near[0][key] - 1, name


@pytest.mark.parametrize(
    ("quantity", "key"), [("breakaway", "breakaway_axle_nm"), ("rotating mean", "rotating_axle_nm")]
)
def test_intervals_hold_the_truth(quantity, key):
    found = list(errors(quantity, key))
    assert len(found) > 100
    inside = sum(abs(ratio) <= 1 for ratio, _, _ in found) / len(found)
    assert inside >= 0.90, sorted(found, key=lambda f: -abs(f[0]))[:8]
    assert sum(abs(relative) for _, relative, _ in found) / len(found) < 0.015


@pytest.mark.parametrize(
    ("name", "state"),
    [
        ("01-arrival-left.csv", "outside"),
        ("01-arrival-right.csv", "outside"),
        ("05-event-1.csv", "within"),
        ("05-event-5.csv", "too close to call"),
        ("05-event-6.csv", "outside"),
        ("06-clumsy-hand.csv", "within"),
        ("06-unclosed.csv", "within"),
    ],
)
def test_results(name, state):
    assert str(reading(name).result.state) == state


def test_unclosed_is_recovered():
    assert reading("06-unclosed.csv").state == "recovered"
    whole, rest = reading("05-event-2.csv"), reading("06-unclosed.csv")
    assert [p.pull for p in rest.pulls] == [p.pull for p in whole.pulls]


def test_foreign_table_says_the_same():
    ours, foreign = reading("01-arrival-left.csv"), reading("06-foreign-table.csv")
    assert foreign.state == "foreign"
    assert foreign.unit == "lbf·ft"
    for a, b in zip(ours.job, foreign.job, strict=True):
        assert b.budget.value == pytest.approx(a.budget.value, abs=0.08)


def test_chatter_is_named():
    assert all(p.pull.stick_slip is not None for p in reading("06-chatter.csv").pulls)


def test_saved_lever_and_limits():
    lever = read_lever(FOLDER / "club.lever.toml")
    assert lever == make.LEVER
    limit = read_limit(FOLDER / "club-breakaway.limit.toml")
    judged = read_file(FOLDER / "04-fluid-reference-fill-1.csv", Asked(lever=lever, limit=limit))
    assert str(judged.result.state) == "within"
    assert "invented" in limit.source


def true_values(name, key):
    values = [t[key] for t in EXPECTED["recordings"][name] if t[key] is not None]
    return sum(values) / len(values)


def test_fluids():
    found = compare(runs("04-"), Quantity.BREAKAWAY, by="fluid", control="reference")
    assert {g.name: len(g.units) for g in found.groups} == {"reference": 4, "additive B": 4, "smooth C": 4}
    assert found.simulated
    assert found.comparability.allowed
    names = {g.name: [u.tags["file"] for u in g.units] for g in found.groups}
    true = {g: sum(true_values(n, "breakaway_axle_nm") for n in files) / 4 for g, files in names.items()}
    for effect in found.effects:
        assert effect.difference.high < 0  # both additives lower the breakaway
        assert effect.difference.low < true[effect.treated] - true["reference"] < effect.difference.high


def test_fluids_by_ratio():
    found = compare(runs("04-"), Quantity.RATIO, by="fluid", control="reference", block="day")
    means = {g.name: g.mean for g in found.groups}
    assert means["reference"] > means["additive B"] > means["smooth C"] > 0.98
    assert means["smooth C"] < 1.03


def test_fluids_by_slope():
    # Friction that rises with speed is smooth, falling friction promotes stick-slip (common practice, no source).
    found = compare(runs("04-"), Quantity.SLOPE, by="fluid", control="reference")
    slopes = {effect.treated: effect.difference for effect in found.effects}
    assert slopes["smooth C"].low > 0
    assert abs(slopes["additive B"].value) < slopes["smooth C"].value / 3


def test_shims():
    units, _ = units_of(runs("02-"), Quantity.ROTATING, by="shim_mm")
    line = fit_line(numbers_of(units, "shim_mm"), [u.value for u in units])
    # Drag does not grow with the shim, so the slope at the wheel is that of the packs, and a little for speed.
    assert line.slope_low < EXPECTED["shim"]["nm_per_mm"] * 1.02 < line.slope_high * 1.02
    wanted = line.inverse(58.0)
    assert wanted.low < wanted.x < wanted.high
    assert 0.1 < wanted.x < 0.5


def test_run_in_settles():
    units, _ = units_of(runs("03-"), Quantity.ROTATING, by="cycles")
    x, y = numbers_of(units, "cycles"), [u.value for u in units]
    early, late = run_in(x[:6], y[:6]), run_in(x, y)
    assert early.state is RunInState.MOVING
    assert late.state is RunInState.SETTLED
    assert late.decay is not None
    assert late.decay.scale == pytest.approx(make.RUN_IN_CYCLES, rel=0.15)
    assert late.decay.drop / late.decay.final == pytest.approx(make.RUN_IN_SHARE, rel=0.15)


def test_study():
    found = study(cells(runs("07-"), Quantity.ROTATING, axle="axle", operator="operator"))
    assert found.measuring < 1.0
    assert found.axles > 10
    assert found.percent < 10


def test_make_makes_the_same_again(tmp_path):
    take = next(take for take in make.takes() if take.name == "01-arrival-left")
    run = make.make_run(take)
    make.record(take, run, tmp_path / "again.csv")
    again, kept = read_file(tmp_path / "again.csv"), reading("01-arrival-left.csv")
    assert [t["start_s"] for t in make.truth_of(run)] == [
        t["start_s"] for t in EXPECTED["recordings"]["01-arrival-left.csv"]
    ]
    for a, b in zip(again.job, kept.job, strict=True):
        assert math.isclose(a.budget.value, b.budget.value, rel_tol=0.01)
