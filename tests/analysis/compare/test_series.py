"""Recordings one after another, and what a group mixes."""

from __future__ import annotations

import pickle

import numpy as np
import pytest

from analysis.compare.comparability import NotComparableError, mixed
from analysis.compare.groups import compare
from analysis.compare.planner import run_order
from analysis.compare.runs import Quantity, Run, Setting
from analysis.compare.series import axles_in_order, points_against
from analysis.compare.trend import RunInState, run_in, run_in_along, settled_since
from logger.errors import InputError


def run(name, value, *, test="car, other side held", **tags):
    return Run(name, tags, Setting(test), {Quantity.BREAKAWAY: (value,)}, 1)


def test_points_are_in_order_of_x_and_one_per_fill():
    runs = [run("c", 60.0, shim=0.3, fill="3"), run("a", 40.0, shim=0.1, fill="1"), run("b", 44.0, shim=0.1, fill="1")]
    found = points_against([*runs, run("d", 1.0)], Quantity.BREAKAWAY, "shim")
    assert found.x == (0.1, 0.3)
    assert found.y == (42.0, 60.0)
    assert [unit.runs for unit in found.units] == [2, 1]
    assert any("d: excluded, it has no tag 'shim'" in line for line in found.remarks)


def test_points_that_must_not_stand_together():
    runs = [run("a", 1.0, shim=0.1), run("b", 2.0, shim=0.2, test="bench, case held")]
    with pytest.raises(InputError, match="different test kinds"):
        points_against(runs, Quantity.BREAKAWAY, "shim")
    with pytest.raises(InputError, match="no recording has the tag 'colour'"):
        points_against(runs, Quantity.BREAKAWAY, "colour")
    # A recording without the tag is no part of it and cannot forbid it.
    assert points_against([runs[0], run("b", 2.0, test="bench, case held")], Quantity.BREAKAWAY, "shim").x == (0.1,)


def test_axles_in_order_of_date():
    runs = [
        run("b", 2.0, vehicle="car 7", date="2026-07-01"),
        run("a", 1.0, vehicle="car 7", date="2026-08-01"),
        run("c", 3.0, vehicle="car 8", date="2026-06-01"),
    ]
    found = axles_in_order(runs, Quantity.BREAKAWAY)
    assert {name: [value for _, value in known] for name, known in found.items()} == {
        "car 7": [2.0, 1.0],
        "car 8": [3.0],
    }
    assert list(axles_in_order(runs, Quantity.BREAKAWAY, ["colour"])) == ["axle"]


def test_a_group_that_mixes_builds_is_named():
    groups = {"B": [run("a", 1.0, shim_mm=0.3), run("b", 2.0, shim_mm=0.4)], "C": [run("c", 1.0, shim_mm=0.3)]}
    assert mixed(groups, known=()) == ("different shims (mm) within B: 0.3, 0.4",)
    assert mixed(groups, known=("shim_mm",)) == ()
    runs = [
        run("a", 50.0, fluid="B", shim_mm=0.3, fill="1"),
        run("b", 60.0, fluid="B", shim_mm=0.4, fill="2"),
        run("c", 55.0, fluid="C", shim_mm=0.3, fill="3"),
        run("d", 56.0, fluid="C", shim_mm=0.3, fill="4"),
    ]
    assert "within B: 0.3, 0.4" in compare(runs, Quantity.BREAKAWAY, by="fluid").comparability.warnings[0]
    assert compare(runs, Quantity.BREAKAWAY, by="fluid", unit="shim_mm").comparability.warnings == ()


def test_a_refusal_travels_between_processes():
    refused = NotComparableError(["different test kinds: a; b"])
    again = pickle.loads(pickle.dumps(refused))
    assert again.refusals == refused.refusals
    assert str(again) == str(refused)


def test_settled_since_is_the_first_judgement_that_holds():
    cycles = np.arange(0.0, 40.0, 2.0)
    values = 46.0 * (1 + 0.2 * np.exp(-cycles / 5.0)) + 0.02 * np.cos(37 * cycles)
    along = run_in_along(cycles, values)
    since = settled_since(along)
    assert along[:3] == [None, None, None]
    assert since is not None
    for place in range(3, len(cycles)):  # a second way: each judged alone
        state = run_in(cycles[: place + 1], values[: place + 1]).state
        assert along[place].state is state
        assert (state is RunInState.SETTLED) >= (place >= since)
    assert along[since - 1].state is not RunInState.SETTLED
    assert settled_since(along[:since]) is None
    assert settled_since([]) is None


def test_the_control_is_tested_again_in_some_blocks():
    order = run_order(["reference", "B", "C"], 6, seed=3, again=2)
    assert sorted(block.count("reference") for block in order) == [1, 1, 1, 1, 2, 2]
    assert all(block.count("B") == block.count("C") == 1 for block in order)
    assert order == run_order(["reference", "B", "C"], 6, seed=3, again=2)
    with pytest.raises(InputError, match="0 to 6"):
        run_order(["a", "b"], 6, seed=1, again=7)
