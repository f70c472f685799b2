"""The commands that need no recording: ratio, stud-circle, type, plan."""

from __future__ import annotations

import json

import pytest

from analysis.__main__ import COMMANDS
from logger.edges.door import Exit, run_door


@pytest.fixture
def door(capsys):
    def run(*words):
        code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", list(words))
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


def test_ratio_json(door):
    code, out, _ = door("ratio", "--propshaft", "18", "--left", "10", "--right", "0", "--json")
    reading = json.loads(out)
    assert code == Exit.OK
    assert '"ratio": 3.6,' in out
    assert reading["case"] == "one wheel held"
    assert reading["interval"] == [3.575, 3.625]
    assert reading["neighbours"][0]["ratio"] == 3.6


def test_ratio_text(door):
    code, out, _ = door(
        *["ratio", "--propshaft", "3.1", "--left", "1", "--right", "1", "--among", "3.08", "3.27", "3.50"]
    )
    assert code == Exit.OK
    assert "3.080" in out
    assert "Settled" in out
    assert "2 whole wheel turns" in out


def test_ratio_own_list(door, tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text('ratios = ["44/12", 3.70]\n', encoding="utf-8")
    code, out, _ = door("ratio", "--propshaft", "18.3", "--left", "10", "--right", "0", "--list", str(path))
    assert code == Exit.OK
    assert "44/12" in out


@pytest.mark.parametrize("words", [["--propshaft", "5", "--left", "3", "--right", "-3"], ["--among", "x"]])
def test_ratio_bad_input(door, words):
    full = {"--propshaft": "18", "--left": "10", "--right": "0"}
    full.update(zip(words[::2], words[1::2], strict=True))
    code, _, err = door("ratio", *[w for pair in full.items() for w in pair])
    assert code == Exit.BAD_INPUT
    assert "heldwheel-read ratio:" in err


def test_stud_circle(door):
    code, out, _ = door("stud-circle", "--studs", "5", "--chord", "67.184mm", "--json")
    assert code == Exit.OK
    assert json.loads(out)["diameter_mm"] == pytest.approx(114.3, abs=1e-3)
    code, out, _ = door("stud-circle", "--studs", "5", "--chord", "67.2mm", "1", "--chord", "108.7mm", "2")
    assert "114.3 mm" in out
    code, _, err = door("stud-circle", "--studs", "5", "--chord", "67.2mm", "one")
    assert code == Exit.BAD_INPUT
    assert "how many studs apart" in err


def test_type(door):
    code, out, _ = door("type")
    assert code == Exit.OK
    assert "--one-held" in out
    code, out, _ = door("type", "--brakes", "free", "--both-up", "same", "--one-held", "even")
    assert code == Exit.OK
    assert "clutch plate" in out
    code, out, _ = door("type", "--brakes", "free", "--one-held", "speed", "--json")
    assert code == Exit.NOT_VALID
    assert json.loads(out)["judged"] is False


def test_plan(door):
    code, out, _ = door("plan", "--sd", "1", "--difference", "1")
    assert code == Exit.OK
    assert "18 fills" in out
    _, out, _ = door("plan", "--sd", "1", "--difference", "1", "--no-blocks")
    assert "17 fills" in out
    _, out, _ = door("plan", "--sd", "1", "--difference", "1", "--json")
    assert json.loads(out)["per_group"] == 18
    _, out, _ = door("plan", "--sd", "1.5", "--margin", "2")
    assert "no change beyond 2" in out
    _, out, _ = door("plan", "--sd", "1.5", "--half-width", "0.8")
    assert out.startswith("16 values")


def test_plan_order(door):
    _, first, _ = door("plan", "--order", "a", "b", "--blocks", "4", "--seed", "3", "--json")
    _, again, _ = door("plan", "--order", "a", "b", "--blocks", "4", "--seed", "3")
    assert json.loads(first)["seed"] == 3
    assert again.count("block") == 4
    assert "seed 3" in again
    code, _, err = door("plan", "--difference", "1")
    assert code == Exit.BAD_INPUT
    assert "pilot" in err
