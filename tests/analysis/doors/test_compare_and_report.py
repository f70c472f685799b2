"""The commands that read recordings: groups, trend, repeatability, batch, report."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from analysis.__main__ import COMMANDS
from logger import header
from logger.edges.door import Exit, run_door

pytestmark = pytest.mark.xdist_group("compare and report")  # one worker, so that what they share is made once

RECORDINGS = Path(__file__).resolve().parents[3] / "recordings"


@pytest.fixture
def door(capsys):
    def run(*words):
        code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", [str(word) for word in words])
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


def test_groups(door):
    code, out, _ = door("groups", RECORDINGS / "04-*", "--by", "fluid", "--control", "reference")
    assert code == Exit.OK
    lines = out.splitlines()
    assert lines[0] == "SIMULATED DATA"
    assert (
        lines[1] == "additive B against reference: less is shown"
    )  # the verdict comes first, then effect, interval, p
    assert lines[2].startswith("additive B against reference, breakaway: -")
    assert "95 %" in lines[2]
    assert lines[2].index("95 %") < lines[2].index("; p <")
    assert "4 and 4 fills, Dunnett" in lines[2]


def test_groups_json_pairs_and_margin(door):
    words = ["groups", RECORDINGS / "04-*", "--by", "fluid", "--control", "smooth C", "--quantity", "rotating"]
    _, out, _ = door(*words, "--margin", "4", "--json")
    found = json.loads(out)
    assert found["equivalence"]["additive B"]["equivalent"] is True
    assert found["simulated"] is True
    _, out, _ = door(*words, "--all-pairs")
    assert out.count(" against ") == 6, "a verdict and its figures for each of three pairs"
    _, out, _ = door(*words, "--block", "day", "--margin", "4")
    assert "paired t within 4 blocks" in out
    assert "no change within ± 4 N·m" in out


def test_groups_refuse_and_skip(door, tmp_path):
    code, _, err = door("groups", RECORDINGS / "04-*", "--by", "colour")
    assert code == Exit.BAD_INPUT
    assert "Tags found" in err
    for name in ("04-fluid-reference-fill-1", "04-fluid-smooth-C-fill-1"):
        shutil.copy(RECORDINGS / f"{name}.csv", tmp_path)
    (tmp_path / "04-fluid-smooth-C-fill-1.sidecar.toml").write_text('[test]\nheld = "case"\nplace = "bench"\n', "utf-8")
    (tmp_path / "bad.csv").write_text("x\n", "utf-8")
    code, _, err = door("groups", tmp_path, "--by", "fluid")
    assert code == Exit.BAD_INPUT
    assert "cannot be compared" in err
    code, out, err = door("groups", tmp_path, "--by", "fluid", "--anyway", "to see it")
    assert code == Exit.BAD_INPUT  # a file was skipped
    assert "skipped" in err
    assert "reason given: to see it" in out


def test_trend(door):
    code, out, _ = door("trend", RECORDINGS / "02-*", "--against", "shim_mm", "--for", "60N·m", "--at", "0.35")
    assert code == Exit.OK
    assert "for 60 N·m: shim_mm 0." in out
    assert "the next single one" in out
    _, out, _ = door("trend", RECORDINGS / "02-*", "--against", "shim_mm", "--for", "60", "--at", "0.9", "--json")
    found = json.loads(out)
    low, high = found["inverse"]["interval"]
    assert low < found["inverse"]["x"] < high
    assert len(found["points"]) == 5


def test_run_in_and_chart(door):
    _, out, _ = door("trend", RECORDINGS / "03-*", "--against", "cycles", "--run-in", "--quantity", "rotating")
    assert "settled since cycle 140: " in out
    assert "scale 1" in out
    _, out, _ = door("trend", RECORDINGS / "05-*", "--chart", "--baseline", "4", "--quantity", "rotating")
    assert "club car 7, rear, left: the first 4 jobs fall by" in out, "a pack that wears has no level to refer to"
    assert "club car 7, rear, left: reference level" in out
    _, out, _ = door("trend", RECORDINGS / "07-*", "--chart", "--baseline", "4", "--per", "axle", "--json")
    assert [chart["axle"] for chart in json.loads(out)["charts"]] == ["axle 1", "axle 2", "axle 3"]
    code, _, err = door("trend", RECORDINGS / "05-*", "--against", "colour")
    assert code == Exit.BAD_INPUT
    assert "colour" in err


def test_repeatability(door):
    code, out, _ = door("repeatability", RECORDINGS / "07-*")
    assert code == Exit.OK
    assert "One reading is good to about" in out
    _, out, _ = door("repeatability", RECORDINGS / "07-*", "--json", "--quantity", "rotating")
    assert json.loads(out)["categories"] > 5
    _, out, _ = door("repeatability", RECORDINGS / "07-*", "--ways", "operator")
    assert "operator A reads -" in out  # operator B's axles were made one part in eighty higher
    assert "limits of agreement" in out
    _, out, _ = door("repeatability", RECORDINGS / "07-*", "--ways", "operator", "--json")
    assert json.loads(out)["n"] == 3
    assert door("repeatability", RECORDINGS / "07-*", "--ways", "axle")[0] == Exit.BAD_INPUT
    code, _, err = door("repeatability", RECORDINGS / "07-study-1*", RECORDINGS / "07-study-2a1.csv")
    assert code == Exit.BAD_INPUT
    assert "equally often" in err


def test_batch(door, tmp_path):
    table = tmp_path / "t.csv"
    code, out, err = door("batch", RECORDINGS / "01-*", "--out", table, "--workers", "1")
    assert code == Exit.OK
    assert "2 rows from 2 recordings" in out
    code, out, err = door("batch", RECORDINGS / "01-*", tmp_path / "none.csv", "--out", table, "--workers", "1")
    assert code == Exit.BAD_INPUT
    assert "skipped" in err
    assert table.exists()
    code, out, _ = door("batch", "--columns")
    assert "breakaway_axle_nm" in out
    code, out, _ = door("batch", "--schema")
    assert json.loads(out)["$id"] == "urn:heldwheel:table:1"
    code, _, err = door("batch", RECORDINGS)
    assert code == Exit.BAD_INPUT
    code, _, err = door("batch", tmp_path / "*.xyz", "--out", table)
    assert "no recordings" in err


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_report_on_letter_paper(door, tmp_path, form):
    shutil.copy(RECORDINGS / "05-event-1.csv", tmp_path)
    page = tmp_path / f"page.{form}"
    assert door("report", tmp_path / "05-event-1.csv", "--paper", "letter", "--out", page)[0] == Exit.OK
    assert (b"size: letter" if form == "html" else b"/MediaBox [0 0 612.00 792.00]") in page.read_bytes()
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OK, out


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_report_and_verify(door, tmp_path, form):
    shutil.copy(RECORDINGS / "05-event-5.csv", tmp_path)
    page = tmp_path / f"page.{form}"
    recording = tmp_path / "05-event-5.csv"
    code, out, _ = door(
        "report", recording, "--out", page, "--address", "Old Quarry Road 3/Hillfoot", "--kind", "engineer"
    )
    assert code == Exit.TOO_CLOSE
    assert "too close to call" in out
    assert door("report", "--verify", page)[0] == Exit.OK
    (tmp_path / "05-event-5.sidecar.toml").write_text('[conditions]\nfluid = "another"\n', "utf-8")
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "header and sidecar" in out
    code, out, _ = door("report", "--verify", page, "--against", RECORDINGS / "05-event-5.csv")
    assert code == Exit.OK
    text = recording.read_text("utf-8")
    (tmp_path / "05-event-5.sidecar.toml").unlink()
    recording.write_text(text.replace(",42.", ",43.", 1), "utf-8")
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE


def test_report_with_what_was_stated(door, tmp_path):
    page = tmp_path / "page.html"
    words = ["report", RECORDINGS / "04-fluid-reference-fill-1.csv", "--out", page, "--unit", "lbf·ft"]
    limit = ["--limit", "breakaway >= 70 N·m", "--source", "invented manual", "--rule", "guarded-rejection"]
    code, _, _ = door(*words, *limit)
    assert code == Exit.OUTSIDE
    assert "guarded rejection" in page.read_text("utf-8")
    code, out, _ = door("report", "--verify", page, "--against", RECORDINGS / "04-fluid-reference-fill-1.csv")
    assert code == Exit.OK, out


def test_report_bad_input(door, tmp_path):
    assert door("report")[0] == Exit.BAD_INPUT
    assert door("report", RECORDINGS / "01-arrival-left.csv", "--issued", "yesterday")[0] == Exit.BAD_INPUT
    assert door("report", RECORDINGS / "01-arrival-left.csv", "--out", tmp_path / "x.docx")[0] == Exit.BAD_INPUT
    assert door("report", "--verify", RECORDINGS / "README.md")[0] == Exit.BAD_INPUT


@pytest.fixture(scope="module")
def axle_of_two(tmp_path_factory):
    """Write a held test and its baseline on a simulated axle."""
    from tests.analysis.simulated import ZERO, write_trace
    from tests.analysis.verdict.test_sides import DRIVING_RIGHT, FACTS, FREE, HUB, _run

    folder = tmp_path_factory.mktemp("axle")
    keys = {"lever": HUB, "zero": ZERO, "transducer": FACTS, "test": header.Test(side="right")}
    write_trace(folder / "right.csv", _run(DRIVING_RIGHT), **keys)
    write_trace(folder / "free.csv", _run(FREE, turn_rad_s=((0.3, 4.0),), ramp_nm_s=10.0), **keys)
    return folder


def test_pulls_with_a_baseline(door, axle_of_two):
    code, out, _ = door("pulls", axle_of_two / "right.csv", "--both-free", axle_of_two / "free.csv")
    assert code == Exit.OK
    assert "pack mean, rotating mean, forwards: 4" in out
    assert "rotating mean, clockwise: 5" in out
    _, out, _ = door("pulls", axle_of_two / "right.csv", "--both-free", axle_of_two / "free.csv", "--json")
    assert json.loads(out)["recordings"][0]["drag"]["pack_mean"]


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_report_with_a_baseline_and_its_verification(door, axle_of_two, tmp_path, form):
    for path in axle_of_two.iterdir():
        shutil.copy(path, tmp_path)
    page = tmp_path / f"page.{form}"
    words = ("--both-free", tmp_path / "free.csv", "--authorised", "operator C", "--kind", "engineer", "--out", page)
    assert door("report", tmp_path / "right.csv", *words)[0] == Exit.OK
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OK, out
    assert "both-free baseline free.csv: the bytes that the report names" in out
    free = tmp_path / "free.csv"
    text = free.read_text("utf-8")
    free.write_text(text.replace("0.40", "0.41", 1), "utf-8")
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "baseline is not the one" in out
    free.unlink()
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "no such file" in out
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "free.csv").write_text(text, "utf-8")
    shutil.copy(axle_of_two / "free.sidecar.toml", elsewhere)
    assert door("report", "--verify", page, "--both-free", elsewhere / "free.csv")[0] == Exit.OK


def test_report_takes_fields_and_photos_from_the_sidecar(door, tmp_path):
    shutil.copy(RECORDINGS / "05-event-1.csv", tmp_path)
    (tmp_path / "05-event-1.sidecar.toml").write_text(
        '[job]\nodometer = "53,214 miles"\nreceived = 2026-06-26\nsite = "the paddock"\n\n'
        '[[photos]]\nfile = "tag.jpg"\nsha256 = "' + "ab" * 32 + '"\ncaption = "the tag"\n',
        "utf-8",
    )
    page = tmp_path / "page.html"
    code, _, err = door("report", tmp_path / "05-event-1.csv", "--out", page)
    assert code == Exit.OK
    assert "photo tag.jpg: not beside the recording" in err
    text = page.read_text("utf-8")
    for shown in ("53,214 miles", "2026-06-26", "the paddock", "photo: the tag", "ab" * 32):
        assert shown in text
    (tmp_path / "tag.jpg").write_bytes(b"another")
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "photo tag.jpg: changed since" in out
