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
    Measured,
    build_lines,
    build_tags,
    changes,
    measured_words,
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
from logger.errors import InputError
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


FULL = Pack(parts=(disc(), PackPart(kind="steel plate", thickness_mm=2.0), PackPart(kind="shim", thickness_mm=0.3)))


def shimmed(shim: float) -> Pack:
    return Pack(parts=(*FULL.parts[:-1], PackPart(kind="shim", thickness_mm=shim)), end_play_mm=0.1)


def test_a_build_is_told_line_by_line():
    build = Build(
        built=at(1), left=FULL, right=shimmed(0.36), oil="A", oil_l=1.15, modifier="B", modifier_l=0.05, soak_min=20
    )
    assert build_lines(build) == [
        "left: 1 friction disc, 1 steel plate, 1 shim, 1 friction surface, stack 4.2 mm",
        "right: 1 friction disc, 1 steel plate, 1 shim, 1 friction surface, stack 4.26 mm, end play 0.1 mm",
        "left and right stack differ by 0.06 mm; some manuals match within 0.05",
        "A 1.15 l, B 0.05 l, 4.2 % of the fill",
        "soaked 20 min in oil",
    ]
    assert build_lines(Build(built=at(1), left=Pack(surfaces=7))) == ["left: 7 friction surfaces"]
    assert build_lines(Build(built=at(1), left=pack(0.3, 2)))[0].startswith("left: 2 friction discs, 2 steel plates, ")
    assert build_lines(Build(built=at(1))) == []


@pytest.mark.parametrize(
    ("keys", "line"),
    [
        ({"oil": "A"}, "A"),
        ({"oil_l": 1.0}, "1 l"),
        ({"modifier": "B"}, "B"),
        ({"oil": "A", "modifier_l": 0.05}, "A, modifier 0.05 l"),  # of how much oil is not stated
        ({"oil": "A", "oil_l": 1.0}, "A 1 l"),
    ],
)
def test_what_is_known_of_a_fill_is_told(keys, line):
    assert build_lines(Build(built=at(1), **keys)) == [line]


@pytest.mark.parametrize(
    ("shim", "told"), [(0.35, False), (0.3502, False), (0.351, True), (0.249, True), (0.25, False)]
)
def test_stacks_are_matched_within_a_twentieth_of_a_millimetre(shim, told):
    """Printed in some workshop manuals: common practice, no source."""
    lines = build_lines(Build(built=at(1), left=FULL, right=shimmed(shim)))
    assert any("differ by 0.051 mm" in line for line in lines) is told
    assert len(lines) == 2 + told


@pytest.mark.parametrize(
    ("oil", "modifier", "percent"), [(0.0, 0.0, None), (0.0, 0.1, 100), (0.9, 0.1, 10), (1, None, None)]
)
def test_share_of_a_fill(oil, modifier, percent):
    assert percent_of_fill(oil, modifier) == percent


def test_modifier_for_a_share():
    assert modifier_l(0.9, 10) == 0.1
    assert modifier_l(0.9, 0) == 0
    for oil, percent in ((0.0, 4), (-1, 4), (1, 100), (1, -1)):
        with pytest.raises(InputError, match="0 to below 100"):
            modifier_l(oil, percent)


def test_shims_that_differ_by_half_a_micrometre_are_two():
    for apart, alike in ((0.0004, True), (0.0006, False)):
        tags = build_tags(Build(built=at(1), left=FULL, right=shimmed(0.3 + apart)))
        assert ("shim_mm" in tags) is alike
    assert "shims_left_mm" not in build_tags(Build(built=at(1)))
    assert "shim_mm" not in build_tags(Build(built=at(1), left=FULL))


@pytest.mark.parametrize(
    ("before", "after", "line"),
    [
        ({"spring_n": 1500.0}, {"spring_n": 1400.0}, "spring load: 1500 N → 1400 N (-100 N)"),
        ({"oil_l": 1.0}, {}, "amount of oil: 1 l → not stated"),
        ({"oil_l": 1.0}, {"oil_l": 1.0004}, None),
        ({"oil_l": 1.0}, {"oil_l": 1.001}, "amount of oil: 1 l → 1.001 l (+0.001 l)"),
        ({"oil": "A"}, {"oil": "B"}, "oil: A → B"),
        ({"soak_in": "oil"}, {}, "soaked in: oil → not stated"),
    ],
)
def test_what_changed_in_figures_and_words(before, after, line):
    said = changes(Build(built=at(1), **before), Build(built=at(2), **after))
    assert said == (() if line is None else (line,))


def test_a_part_taken_out_takes_its_surface_along():
    left = msgspec.structs.replace(FULL, parts=(*FULL.parts[:1], *FULL.parts[2:]), end_play_mm=0.2)
    said = changes(Build(built=at(1), left=shimmed(0.3)), Build(built=at(2), left=left))
    assert said == (
        "left: steel plate at 2 taken out (2 mm)",
        "left: stack: 4.2 mm → 2.2 mm (-2 mm)",
        "left: friction surfaces: 1 → not known",
        "left: end play: 0.1 mm → 0.2 mm (+0.1 mm)",
    )
    assert changes(Build(built=at(2), left=left), Build(built=at(3), left=shimmed(0.3)))[0] == (
        "left: steel plate at 2 put in (2 mm)"
    )


def test_several_recordings_share_their_uncertainty():
    """The mean of the values, and the root mean square of their U: √((3² + 4² + 5²)/3) = 4.08."""
    measured = Measured("right", (("a", 40.0, 3.0), ("b", 42.0, 4.0), ("c", 47.0, 5.0)))
    assert (measured.value, measured.u95) == (43.0, pytest.approx((50 / 3) ** 0.5))
    assert measured_words(measured) == "right: 43 ± 4.1 N·m (3 recordings)"
    assert measured_words(Measured("left", (("a", 40.0, 3.0),))) == "left: 40 ± 3 N·m (1 recording)"
