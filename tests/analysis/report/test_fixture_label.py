"""A fixture's label: a decoder that shares nothing with its writer reads the code; the command writes and reads it."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pypdf
import pytest
import zxingcpp

from analysis.__main__ import COMMANDS
from analysis.cautions import CAUTIONS
from analysis.report.drawing import Box
from analysis.report.fixture_label import label_drawing, write_label
from logger.edges.door import run_door
from logger.errors import DescriptionError, InputError
from logger.header import Lever
from logger.instruments.fixture_line import KINDS, lever_of_line, line_of
from logger.instruments.saved import read_lever

# What each kind needs, and a name with characters that the code has to spell.
NEEDS = {
    "one stud": {"length_mm": 450.0, "length_mm_u": 2.0, "stud_circle_mm": 114.3, "studs": 5, "weight_kg": 3.1}
    | {"centroid_mm": 210.0},
    "cross-bar": {"length_mm": 450.0, "offset_mm": 17.7},
    "force at radius": {"radius_mm": 400.0, "radius_mm_u": 1.0, "pull_angle_deg": -5.0},
    "cord": {"radius_mm": 211.1, "cord_mm": 4.0},
    "dead weight": {"radius_mm": 300.0},
}
LONG = Lever(fixture="one stud", name="Lever Größe 2, bay Z", **NEEDS["one stud"])


def decoded(lever: Lever) -> str:
    """What a decoder that shares nothing with the writer reads from the label's boxes, 8 dots a point."""
    drawing = label_drawing(lever)
    page = np.full((round(drawing.height * 8), round(drawing.width * 8)), 255, np.uint8)
    for box in drawing.shapes:
        if isinstance(box, Box) and box.colour == "#000000":
            x, y = round(box.x * 8), round(box.y * 8)
            page[y : y + round(box.height * 8), x : x + round(box.width * 8)] = 0
    (found,) = zxingcpp.read_barcodes(page)
    return str(found.text)


@pytest.mark.parametrize("kind", sorted(KINDS.values()))
def test_every_kind_of_fixture_comes_back_from_its_code(kind: str):
    lever = Lever(fixture=kind, name=f"{kind}, Größe 2", **NEEDS.get(kind, {}))
    assert lever_of_line(decoded(lever)) == lever


def test_the_fullest_fixture_still_fits_its_label():
    keys = {"stud_circle_mm_u": 1 / 1.96, "angle_deg": 1.25, "pull_angle_deg": -2.5, "start_angle_deg": 180.0}
    full = Lever(
        **{f: getattr(LONG, f) for f in LONG.__struct_fields__}
        | keys
        | {"grip_mark_mm": 400.5, "gauge_mm": 120.25, "gauge_mm_u": 0.5}
    )
    assert lever_of_line(decoded(full)) == full


def test_paper_says_name_numbers_caution_and_line(tmp_path: Path):
    write_label(LONG, tmp_path / "label.pdf")
    (sheet,) = pypdf.PdfReader(io.BytesIO((tmp_path / "label.pdf").read_bytes())).pages
    text = " ".join(sheet.extract_text().split())
    rating = next(caution.text for caution in CAUTIONS if caution.key == "rating")
    for said in ("450 ± 3.92 mm", "114.3 mm", "3.1 kg", rating, line_of(LONG)):
        assert said in text
    assert "Lever Größe 2, bay Z" in text


def test_svg_is_the_label_in_its_size(tmp_path: Path):
    write_label(LONG, tmp_path / "label.svg")
    text = (tmp_path / "label.svg").read_text("utf-8")
    assert 'width="120.0mm"' in text
    assert "<script" not in text


def test_a_fixture_with_faults_gets_no_label(tmp_path: Path):
    with pytest.raises(DescriptionError, match="length_mm"):
        write_label(Lever(fixture="one stud", stud_circle_mm=114.3), tmp_path / "label.pdf")
    with pytest.raises(InputError, match=r"written as \.svg or \.pdf"):
        write_label(LONG, tmp_path / "label.png")
    assert not list(tmp_path.iterdir())


def door(*words: object) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ["fixture", *map(str, words)])


def test_the_command_writes_and_reads(tmp_path: Path, capsys):
    options = ("--lever", "450mm±4mm", "--stud-circle", "5x114.3mm", "--angle", "0deg")
    assert door(*options, "--name", "long lever", "--save", tmp_path / "one.toml") == 0
    line = capsys.readouterr().out.splitlines()[-1]
    assert door("--read", line, "--save", tmp_path / "two.toml") == 0
    assert "Lever, drive to hand: 450 ± 4 mm" in capsys.readouterr().out
    assert read_lever(tmp_path / "two.toml") == read_lever(tmp_path / "one.toml")
    assert door("--fixture-file", tmp_path / "two.toml", "--label", tmp_path / "label.svg") == 0
    assert (tmp_path / "label.svg").is_file()
    assert door("--read", line.replace("450", "540")) == 2
    assert "--read: CHECK: the check number does not fit" in capsys.readouterr().err
    assert door() == 2
    assert "describe a fixture" in capsys.readouterr().err
