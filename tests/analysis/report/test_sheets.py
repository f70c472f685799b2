"""On how many sheets of which paper a page stands, and how legibly."""

from __future__ import annotations

import json
import re
from datetime import date

import msgspec
import pytest
from fpdf import FPDF

from analysis.report.material import PageKind, PaperSize
from analysis.report.write import content_of, render
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from tests.analysis.report.reading import text_of, texts_of_pdf
from tests.analysis.report.test_write import FILLED
from tests.analysis.sample import header, issue, material


def _full_budget():
    names = ("lever's weight", "zero", "lever length", "stud radius", "lever angle", "pull angle", "resolution")
    rows = [BudgetRow(Input("calibration", 1.0, 0.005, "1", shared=True, note="certificate"), 55.0)]
    rows += [BudgetRow(Input(name, 0.45, 0.3, "N·m", note="stated ± 10 mm at the hand"), 1.0) for name in names]
    return Budget(
        "breakaway", 55.3, "N·m", (*rows, BudgetRow(Input("repeats", 0.0, 0.55, "N·m", 3, note="median"), 1.0))
    )


def test_customer_page_is_one_sheet(monkeypatch):
    _, sheets = texts_of_pdf(content_of(material(pulls=6), issue()), monkeypatch)
    assert sheets == 1


def test_many_pulls_flow_over_sheets_that_all_carry_the_identity(monkeypatch):
    content = content_of(material(pulls=80), issue(PageKind.ENGINEER))
    texts, sheets = texts_of_pdf(content, monkeypatch)
    pdf = " ".join(text for text, _ in texts)
    assert sheets >= 3
    assert pdf.count(content.footer) == sheets
    assert len(re.findall(r"page \d+ of", pdf)) == sheets


@pytest.mark.parametrize("paper", PaperSize)
@pytest.mark.parametrize("pulls", [3, 4, 5])
def test_engineers_page_of_a_usual_job_is_one_legible_sheet(pulls, paper, monkeypatch):
    gauge = msgspec.structs.replace(header().transducer, certificate_due=date(2027, 1, 1))  # an expired one has a frame
    head = header(transducer=gauge)
    content = content_of(material(pulls=pulls, budget=_full_budget(), head=head), issue(PageKind.ENGINEER, paper=paper))
    texts, sheets = texts_of_pdf(content, monkeypatch)
    assert sheets == 1
    assert min(size for _, size in texts) >= 7  # legend, remarks and foot
    body = [size for text, size in texts if text in {"calibration", "lever length", "48.90 ± 0.50", "the club"}]
    assert len(body) == 4
    assert min(body) >= 7.5


@pytest.mark.parametrize("paper", PaperSize)
def test_engineers_page_with_every_field_filled_in_is_one_sheet_too(paper, monkeypatch):
    _, sheets = texts_of_pdf(
        content_of(material(head=FILLED), issue(PageKind.ENGINEER, authorised="operator C", paper=paper)), monkeypatch
    )
    assert sheets == 1


@pytest.mark.parametrize(("paper", "box"), [(PaperSize.A4, (595.28, 841.89)), (PaperSize.LETTER, (612.0, 792.0))])
@pytest.mark.parametrize("kind", PageKind)
def test_the_page_has_the_size_of_its_paper(kind, paper, box, monkeypatch):
    """ISO 216: 210 x 297 mm; letter: 8.5 x 11 inches; 72 points to an inch, 25.4 mm."""
    content = content_of(material(), issue(kind, paper=paper))
    sizes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", render(content, "pdf"))
    assert {tuple(float(side) for side in size) for size in sizes} == {box}
    assert f"@page {{ size: {paper}; " in render(content, "html").decode("utf-8")
    drawn = content.drawing
    assert drawn.width == paper.width == box[0] - 72
    right = []
    cell = FPDF.multi_cell
    monkeypatch.setattr(
        FPDF, "multi_cell", lambda self, w, *a, **k: (right.append(self.x + w), cell(self, w, *a, **k))[1]
    )
    render(content, "pdf")
    assert max(right) == pytest.approx(box[0] - 36, abs=0.1), "nothing is set beyond the margin"


def test_the_default_is_a4_and_the_paper_is_in_the_record():
    assert content_of(material(), issue()).paper is PaperSize.A4
    on_letter = content_of(material(), issue(paper=PaperSize.LETTER))
    assert json.loads(on_letter.record)["issue"]["paper"] == "letter"
    assert on_letter.identity != content_of(material(), issue()).identity


def test_small_inputs_keep_their_value_and_uncertainty():
    rows = (*_full_budget().rows, BudgetRow(Input("lever turned", 0.2, 0.01, "rad", note="stated"), 1.0))
    text = text_of(content_of(material(budget=Budget("breakaway", 55.3, "N·m", rows)), issue(PageKind.ENGINEER)))
    assert "Below 1 % each: lever turned 0.2 rad (u 0.01)." in text
