"""Builds beside each other: sums, what changed, the torques of each."""

from __future__ import annotations

import json
import shutil
from datetime import datetime, timedelta, timezone
from pathlib import Path

import msgspec
import pytest

from analysis.__main__ import COMMANDS
from analysis.compare.builds import (
    build_tags,
    changes,
    modifier_l,
    percent_of_fill,
    shims_mm,
    stack_mm,
    steps,
    surfaces,
)
from analysis.compare.runs import Quantity
from analysis.pipeline import read_file
from analysis.rows.friction import build_words
from analysis.rows.summary import run_of
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.edges.units import parse_quantity
from logger.recordings.axles import AxleFile, Build, Pack, PackPart
from logger.recordings.stored import read_recording

SEASON = Path(__file__).parents[3] / "recordings"


def read_door(*words: str) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", words)


ZONE = timezone(timedelta(hours=1))


def pack(shim: float, discs: int = 3) -> Pack:
    layers = [part for _ in range(discs) for part in (disc(), PackPart(kind="steel plate", thickness_mm=2.0))]
    return Pack(parts=(*layers, PackPart(kind="shim", thickness_mm=shim)))


def disc(thickness: float = 1.9) -> PackPart:
    return PackPart(kind="friction disc", thickness_mm=thickness)


def at(day: int, hour: int = 8) -> datetime:
    return datetime(2026, 5, day, hour, tzinfo=ZONE)


def test_surfaces_are_neighbours_of_a_disc_and_a_plate():
    assert surfaces(pack(0.3)) == 5  # disc-plate-disc-plate-disc-plate, the last plate on the shim
    wrong = Pack(parts=(disc(), disc(), PackPart(kind="steel plate"), PackPart(kind="steel plate")))
    assert surfaces(wrong) == 1  # a wrong order costs surfaces
    assert surfaces(Pack()) is None
    assert surfaces(Pack(parts=(disc(),), surfaces=7)) == 7


def test_sums_need_every_part():
    assert stack_mm(pack(0.3)) == pytest.approx(3 * 3.9 + 0.3)
    assert stack_mm(Pack(parts=(disc(), PackPart(kind="shim")))) is None
    assert shims_mm(Pack(parts=(disc(),))) == 0
    assert shims_mm(Pack(parts=(disc(), PackPart(kind="shim")))) is None
    assert shims_mm(Pack()) is None


def test_percent_of_fill_is_of_the_whole_fill_and_back():
    assert percent_of_fill(0.96, 0.04) == pytest.approx(4)
    assert modifier_l(0.96, 4) == pytest.approx(0.04)
    assert percent_of_fill(None, 0.04) is None
    # 4 US fluid ounces are 118.294 ml (NIST SP 811, appendix B.8: 2.957 353 E-05 m3 each)
    assert parse_quantity("4 US fl oz", "volume") == pytest.approx(118.2941e-6)


def test_what_changed_is_named_with_its_place():
    before = Build(built=at(1), left=pack(0.3), right=pack(0.3), oil="A", oil_l=1.0)
    left = msgspec.structs.replace(before.left, parts=(disc(1.8), *before.left.parts[1:-1], *pack(0.4).parts[-1:]))
    after = msgspec.structs.replace(before, built=at(2), left=left, modifier="B", modifier_l=0.05)
    said = changes(before, after)
    assert "left: friction disc at 1: 1.9 mm → 1.8 mm" in said
    assert "left: shim at 7: 0.3 mm → 0.4 mm" in said
    assert "left: shims: 0.3 mm → 0.4 mm (+0.1 mm)" in said
    assert "modifier: not stated → B" in said
    assert not any(line.startswith("right") for line in said)
    assert changes(before, msgspec.structs.replace(before, built=at(3))) == ()


def test_a_part_put_in_is_one_part_put_in():
    before = Build(built=at(1), left=pack(0.3))
    more = msgspec.structs.replace(before.left, parts=(*before.left.parts, PackPart(kind="shim", thickness_mm=0.1)))
    said = changes(before, msgspec.structs.replace(before, left=more))
    assert [line for line in said if "put in" in line or "taken out" in line] == ["left: shim at 8 put in (0.1 mm)"]


def test_a_sheet_gives_one_shim_only_where_both_sides_are_alike():
    alike = build_tags(Build(built=at(1), left=pack(0.3), right=pack(0.3), oil="A", oil_l=0.96, modifier_l=0.04))
    assert (alike["shim_mm"], alike["fluid"]) == (pytest.approx(0.3), "A")
    assert alike["modifier_percent"] == pytest.approx(4)
    unlike = build_tags(Build(built=at(1), left=pack(0.3), right=pack(0.4)))
    assert "shim_mm" not in unlike
    assert unlike["shims_right_mm"] == pytest.approx(0.4)


@pytest.fixture
def season(tmp_path: Path) -> Path:
    """Give the example's five shims, each as a build of the axle that is stamped 43/11."""
    builds = []
    for shim in (10, 20, 30, 40, 50):
        source = SEASON / f"02-build-shim-{shim}.csv"
        shutil.copy(source, tmp_path)
        started = read_recording(source.read_bytes(), str(source)).header.started
        assert started is not None
        side = pack(shim / 100)
        builds.append(
            Build(
                built=started - timedelta(hours=1),
                left=side,
                right=side,
                spring_n=1500.0,
                face_outer_mm=98.0,
                face_inner_mm=70.0,
                pinion_nm=1.2,
            )
        )
    write_toml(tmp_path / "43-11.axle.toml", AxleFile(tag="43/11", builds=tuple(builds)))
    return tmp_path


def test_torques_stand_beside_their_builds(season: Path):
    from logger.recordings.axles import read_axle

    axle = read_axle(season, "43/11")
    assert axle is not None
    runs = [run_of(read_file(path)) for path in sorted(season.glob("*.csv"))]
    found = steps(axle, runs, Quantity.BREAKAWAY)
    assert [len(step.measured) for step in found] == [1] * 5
    values = [step.measured[0].value for step in found]
    assert values == sorted(values)  # a thicker shim holds more, in this example
    way = found[4].measured[0].way
    total = values[4] - values[3]
    assert found[4].against[way].difference == pytest.approx(total)
    assert found[4].against[way].u95 == pytest.approx(
        (found[3].measured[0].u95 ** 2 + found[4].measured[0].u95 ** 2) ** 0.5
    )
    assert "left: shims: 0.4 mm → 0.5 mm (+0.1 mm)" in found[4].changed


def test_the_shim_log_reads_the_sheet(season: Path):
    """Recordings that do not state a shim have their sheet's; what they state themselves stands."""
    path = season / "02-build-shim-30.csv"
    own = run_of(read_file(path))
    assert own.tags["shim_mm"] == 0.3
    text = (season / "43-11.axle.toml").read_text("utf-8")
    (season / "43-11.axle.toml").write_text(text.replace("0.3", "0.35"), "utf-8")
    after = run_of(read_file(path))
    assert after.tags["shim_mm"] == 0.3
    assert after.tags["shims_left_mm"] == after.tags["shims_right_mm"] == 0.35


def test_a_sheet_with_a_fault_is_told_and_costs_no_reading(season: Path):
    (season / "43-11.axle.toml").write_text('schema = "heldwheel axle 1"\ntag = "43/11"\nbiulds = 1\n', "utf-8")
    reading = read_file(season / "02-build-shim-30.csv")
    assert reading.ok
    assert reading.build is None
    assert reading.pulls
    assert any("build sheet not used" in text and "did you mean 'builds'" in text for text in reading.problems)


def test_the_command_shows_builds_changes_torques_and_friction(season: Path, capsys):
    assert read_door("builds", str(season)) == 0
    out = capsys.readouterr().out
    assert "SIMULATED DATA" in out
    assert "changed: left: shims: 0.1 mm → 0.2 mm (+0.1 mm)" in out
    assert "against the build before: +" in out
    assert "friction figure" in out
    assert "the pinion's preload is 4.7 ±" in out  # 1.2 N·m × 43/11
    assert read_door("builds", str(season), "--json") == 0
    said = json.loads(capsys.readouterr().out)
    assert said["schema"] == "heldwheel builds 1"
    assert [len(step["measured"]) for step in said["axles"][0]["builds"]] == [1] * 5


def test_without_a_sheet_the_command_says_what_one_is(tmp_path: Path, capsys):
    shutil.copy(SEASON / "02-build-shim-30.csv", tmp_path)
    assert read_door("builds", str(tmp_path)) == 2
    assert "no axle's sheet (*.axle.toml) lies in" in capsys.readouterr().err


def test_a_recording_says_its_build_and_what_changed(season: Path):
    words = build_words(read_file(season / "02-build-shim-40.csv"))
    assert words[0] == "build of 2026-05-05 09:00"
    assert "changed since 2026-05-04 09:00: left: shims: 0.3 mm → 0.4 mm (+0.1 mm)" in words
    assert any(text.startswith("friction figure") for text in words)
