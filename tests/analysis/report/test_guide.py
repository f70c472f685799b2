"""The guide: one sheet on either paper, every gate on it, sizes that the program's own formulas give."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from collections import defaultdict
from itertools import pairwise

import pypdf
import pytest
from fpdf import FPDF

from analysis.cautions import cautions_for
from analysis.language.translator import LANGUAGES, catalogue
from analysis.report import spoken
from analysis.report.drawing import Polyline, Text, to_svg
from analysis.report.guide import MISTAKES, SAID, STEPS, guide_html, guide_pdf, write_guide
from analysis.report.guide_drawing import guide_drawing
from analysis.report.material import PaperSize
from analysis.report.paper import ROOMY, Paper
from analysis.to_axle.fixtures import fixture_from
from logger.edges.units import torque_factor
from logger.errors import FileError, InputError
from logger.header import Lever
from tests.noting import Noting


def sizes(mistake: str) -> str:
    return next(what for name, what, _ in MISTAKES if name == mistake)


def low(factor: float) -> str:
    """Give by how much a reading is too low, or too high, for a factor reading to torque."""
    return f"{abs(1 / factor - 1) * 100:.0f} % {'low' if factor > 1 else 'high'}"


def factor(length: float, angle: float = 0.0) -> float:
    made = fixture_from(Lever(fixture="one stud", studs=5, stud_circle_mm=114.3, length_mm=length, angle_deg=angle))
    assert made.factor is not None
    return made.factor


@pytest.mark.parametrize("paper", PaperSize)
def test_it_is_one_sheet_with_every_gate_on_it(paper: PaperSize):
    reader = pypdf.PdfReader(io.BytesIO(guide_pdf(paper)))
    assert len(reader.pages) == 1
    text = " ".join(reader.pages[0].extract_text().split())
    for caution in cautions_for(gates_only=True):
        assert caution.text in text, caution.key
    for name, said in STEPS:
        assert name in text
        assert said in text


def test_html_says_the_same_and_runs_nothing():
    page = guide_html()
    assert "<script" not in page
    assert "http" not in page.replace("http://www.w3.org/2000/svg", "")
    assert all(name in page for name, _, _ in MISTAKES)
    assert not {caution.key for caution in cautions_for(gates_only=True)} & SAID


def test_sizes_of_the_lever_are_those_of_its_formula():
    assert low(factor(450.0)) in sizes("Lever on a stud, read as it is")
    assert low(factor(300.0)).removesuffix(" low") in sizes("Lever on a stud, read as it is")
    assert low(factor(450.0, 180.0)) in sizes("Lever on a stud pointing inward")
    moved = (factor(430.0) / factor(450.0) - 1) * 100
    assert f"{moved:.1f}" == "0.5"
    assert "0.5 %" in sizes("Hand 20 mm from where L was measured")


def test_sizes_of_inertia_weight_units_and_delay():
    # Moments of inertia of a wheel, 1.0 to 1.7 kg·m²: common practice, no source.
    assert f"{1.0 * 20:.0f} to {1.7 * 20:.0f} N·m" in sizes("Jerked, or still speeding up")
    assert f"{2.5 * 9.80665 * 0.25:.1f} N·m" in sizes("Zero taken with the lever held level")
    assert f"{50 * 0.3:.0f} N·m low" in sizes("Slow display, ten readings a second")
    # NIST SP 811, appendix B.8: lbf·ft, kgf·m.
    units = [torque_factor("lbf·ft") / torque_factor("lbf·in"), torque_factor("lbf·ft"), torque_factor("kgf·m")]
    assert sizes("lbf·ft, lbf·in, N·m, kgf·m mixed up") == f"× {units[0]:.0f}, × {units[1]:.2f}, × {units[2]:.1f}"


def test_drawings_lie_inside_and_are_well_formed():
    drawn = guide_drawing()
    ET.fromstring(to_svg(drawn))
    assert drawn.width <= PaperSize.A4.width
    for shape in drawn.shapes:
        points = shape.points if isinstance(shape, Polyline) else [(shape.x, shape.y)]
        assert all(-1 <= x <= drawn.width + 1 and -1 <= y <= drawn.height + 1 for x, y in points)


def test_where_it_cannot_be_written(tmp_path):
    with pytest.raises(InputError, match=r"\.html or \.pdf"):
        write_guide(tmp_path / "guide.txt")
    with pytest.raises(FileError, match="cannot be written"):
        write_guide(tmp_path / "nowhere" / "guide.html")


@pytest.mark.parametrize("language", ["de", "es"])
def test_in_another_language_it_is_one_sheet_and_nothing_stays_english(language: str, monkeypatch):
    for paper in PaperSize:
        assert len(pypdf.PdfReader(io.BytesIO(guide_pdf(paper, language))).pages) == 1
    noting = Noting(catalogue(language), lambda text: re.search(r"[a-z]{3}", text) is not None)
    monkeypatch.setattr(spoken, "translator", lambda _: noting)
    guide_html(language)
    assert noting.left == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_words_in_the_drawings_do_not_touch(language: str):
    sheet = Paper(FPDF(unit="pt"), ROOMY, PaperSize.A4)
    drawn, lines = guide_drawing(language), defaultdict(list)
    for text in (shape for shape in drawn.shapes if isinstance(shape, Text)):
        sheet.font(text.size, bold=text.bold)
        width = sheet.pdf.get_string_width(text.text)
        start = text.x - {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
        lines[text.y].append((start, start + width, text.text))
    sheet.drop()
    for row in lines.values():
        for (_, end, one), (start, _, other) in pairwise(sorted(row)):
            assert end + 2 < start, (one, other)
        assert max(end for _, end, _ in row) <= drawn.width + 1
