"""The page of a ratio limit: both halves and the ratio, in both forms, and its verification from both files."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from analysis.__main__ import COMMANDS
from analysis.pipeline import Asked
from analysis.report import words
from analysis.report.gather import ratio_material
from analysis.report.html import RECORD_CLOSES, RECORD_OPENS
from analysis.report.material import PageKind, PaperSize
from analysis.report.verify import Holds, read_record, verify
from analysis.report.write import content_of, render, write_report
from analysis.rows.gear import judged_ratio, ratio_words, read_halves
from logger.edges.door import Exit, run_door
from logger.errors import InputError
from logger.header import Conditions, JobFacts
from tests.analysis.halves import FREE, recording
from tests.analysis.report.reading import read_html, text_of, texts_of_pdf, words_of_pdf
from tests.analysis.report.test_write import HOSTILE
from tests.analysis.sample import filled, issue

LEVELS = {"in gear": 40.0, "neutral": 12.0}


@pytest.fixture
def halves(tmp_path):
    """Write both halves; give their paths, in gear first."""
    return tuple(recording(tmp_path, gear, level) for gear, level in LEVELS.items())


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Give the material of a ratio, and the readings that it is made from."""
    folder = tmp_path_factory.mktemp("halves")
    readings = read_halves(*(recording(folder, gear, level) for gear, level in LEVELS.items()), Asked())
    return ratio_material(*readings), readings


@pytest.fixture
def door(capsys):
    def run(*said):
        code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", [str(word) for word in said])
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


# ---------------------------------------------------------------------- the page
@pytest.mark.parametrize("kind", PageKind)
def test_the_page_shows_both_halves_and_their_ratio(made, kind, monkeypatch):
    material, readings = made
    content = content_of(material, issue(kind, authorised="operator C"))
    budget = judged_ratio(*readings).budget
    assert budget.value == pytest.approx(LEVELS["in gear"] / LEVELS["neutral"], rel=0.02)
    greatest = [line.value_nm for line in material.job]
    assert budget.value == pytest.approx(greatest[0] / greatest[1])
    html, pdf = text_of(content), words_of_pdf(content, monkeypatch)
    for shown in (html, pdf):
        for text in (
            words.TITLE_RATIO,
            ratio_words(budget),
            "40.0 ±",
            "12.01 ±",
            "in gear ÷ neutral at least 2.5 (manual, p. 3-7)",
            "The measured ratio lies within the limit",
            "three-way",
            "in gear: torque at the axle",
            "neutral: torque at the axle",
            "The same again with the gearbox in neutral.",
            "in gear, a trace from elsewhere",
            "neutral, a trace from elsewhere",
            *(half.sha256 for half in material.halves),
            "SIMULATED DATA",
            "authorised by operator C",
            f"end of {content.identity}",
        ):
            assert text in shown, text
        assert ("Uncertainty of in gear ÷ neutral" in shown) == (kind is PageKind.ENGINEER)
        assert "shaded" not in shown, "a ratio is no torque on the drawing"
        assert words.RAW_IS_COMPARED not in shown


def test_an_engineer_sees_every_pull_of_both_halves(made):
    material, _ = made
    section = next(s for s in content_of(material, issue(PageKind.ENGINEER)).sections if s.heading.startswith("Pulls"))
    assert [row[0] for row in section.table.rows] == ["in gear"] * 3 + ["neutral"] * 3
    column = section.table.headings.index("maximum")
    shown = [float(row[column].split()[0]) for row in section.table.rows]
    greatest = [pull.greatest[0] for half in material.halves for pull in half.pulls]
    assert shown == pytest.approx(greatest, rel=2e-3)


def test_the_budget_of_a_ratio_has_no_unit(made):
    content = content_of(made[0], issue(PageKind.ENGINEER, unit="lbf·ft"))
    section = next(s for s in content.sections if s.heading.startswith("Uncertainty"))
    u95 = made[0].budget.u95
    assert f"U\u00a0(95\u00a0%) = {u95:.3g} (JCGM 100)" in section.lines[0]
    assert "part" in section.table.headings
    assert content.headlines[0].value == ratio_words(made[0].budget), "a ratio is the same in every unit"
    assert content.headlines[1].value.endswith("lbf·ft")


@pytest.mark.parametrize("paper", PaperSize)
@pytest.mark.parametrize("kind", PageKind)
def test_a_usual_page_is_one_legible_sheet(made, kind, paper, monkeypatch):
    texts, sheets = texts_of_pdf(content_of(made[0], issue(kind, authorised="operator C", paper=paper)), monkeypatch)
    assert sheets == 1
    assert min(size for _, size in texts) >= 7
    assert min(size for text, size in texts if text in {"true zero", "blue hill-climb car"}) >= 7.5


def test_both_traces_have_one_scale(made):
    drawing = content_of(made[0], issue()).drawing
    heights = {
        label: [shape.y for shape in drawing.shapes if getattr(shape, "text", "") == label] for label in ("0", "40")
    }
    assert len(heights["40"]) == 2
    assert heights["40"][0] == heights["40"][1]
    for shape in drawing.shapes:
        points = shape.points if hasattr(shape, "points") else [(shape.x, shape.y)]
        assert all(-1 <= x <= drawing.width + 1 and -1 <= y <= drawing.height + 1 for x, y in points)


@pytest.mark.parametrize("simulated", ["in gear", "neutral", "none"])
def test_one_simulated_half_marks_the_page(tmp_path, simulated):
    paths = [recording(tmp_path, gear, level, simulated=gear == simulated) for gear, level in LEVELS.items()]
    content = content_of(ratio_material(*read_halves(*paths, Asked())), issue())
    assert content.simulated == (simulated != "none")
    assert (b"SIMULATED" in render(content, "html")) == (simulated != "none")


def test_what_the_half_in_neutral_has_otherwise_is_said(tmp_path):
    warm, cold = Conditions(oil_temperature_c=60), Conditions(oil_temperature_c=21, brakes_free=True)
    first = recording(
        tmp_path, "in gear", 40.0, conditions=warm, job=JobFacts(vehicle="red car", operator="operator A")
    )
    second = recording(
        tmp_path, "neutral", 12.0, conditions=cold, job=JobFacts(vehicle="red car", operator="operator B")
    )
    text = text_of(content_of(ratio_material(*read_halves(first, second, Asked())), issue(PageKind.ENGINEER)))
    for said in ("oil 60 °C", "oil, neutral 21 °C", "operator, neutral operator B", "In neutral: Functional test"):
        assert said in text
    assert "vehicle, neutral" not in text


def test_what_may_not_belong_together_stands_on_the_page(tmp_path):
    held = msgspec.structs.replace(FREE, gear="in gear", held="other side")
    first = recording(tmp_path, "in gear", 40.0, test=held, job=JobFacts(vehicle="red car"))
    second = recording(tmp_path, "neutral", 12.0)
    text = text_of(content_of(ratio_material(*read_halves(first, second, Asked())), issue()))
    assert "both wheels free: here one was held" in text
    assert "another vehicle" in text


def test_without_a_limit_the_ratio_stands_alone(tmp_path):
    paths = [recording(tmp_path, gear, level, limit=None) for gear, level in LEVELS.items()]
    content = content_of(ratio_material(*read_halves(*paths, Asked())), issue())
    assert content.verdict is None
    assert content.headlines[0].label == "in gear ÷ neutral"


@pytest.mark.parametrize("kind", PageKind)
def test_hostile_text_in_both_halves_is_text(made, kind):
    material, _ = made
    neutral = replace(material.neutral, header=filled(HOSTILE), problems=(HOSTILE,), file=f"{HOSTILE}.csv")
    whole = replace(material, header=filled(HOSTILE), problems=(HOSTILE,), file=f"{HOSTILE}.csv", neutral=neutral)
    content = content_of(whole, issue(kind, shop=HOSTILE, address=HOSTILE, remarks=HOSTILE, authorised=HOSTILE))
    reader = read_html(content)
    assert reader.tags.count("script") == 1
    assert not [name for name, _ in reader.attributes if name.startswith("on")]
    shown = "".join(reader.texts)
    assert shown.count("<script>alert(1)</script>") > 20
    assert "\u202e" not in shown
    assert "\x00" not in render(content, "html").decode("utf-8")
    assert render(content, "pdf").startswith(b"%PDF")


def test_both_directions_are_compared_with_their_like(made):
    """In gear was turned both ways, in neutral the second way only: that is what is divided."""
    _, (in_gear, neutral) = made

    def turned(reading, direction, by=1.0):
        found = (
            replace(v, direction=direction, budget=replace(v.budget, value=v.budget.value * by)) for v in reading.job
        )
        return tuple(found)

    both = replace(in_gear, job=(*in_gear.job, *turned(in_gear, -1, 1.5)))
    back = replace(neutral, job=turned(neutral, -1))
    found = judged_ratio(both, back)
    assert (found.in_gear.direction, found.neutral.direction) == (-1, -1)
    assert found.budget.value == pytest.approx(1.5 * judged_ratio(in_gear, neutral).budget.value)
    assert not found.doubts
    assert any("one way in gear and the other way" in doubt for doubt in judged_ratio(in_gear, back).doubts)


# ---------------------------------------------------------------------- refused
def test_swapped_halves_are_refused(halves):
    with pytest.raises(InputError, match=r"neutral\.csv: is taken as the half 'in gear', but says of itself 'neutral'"):
        ratio_material(*read_halves(*halves[::-1], Asked()))


def test_another_kind_of_limit_is_refused(door, halves, tmp_path):
    asked = ("report", halves[0], "--neutral", halves[1], "--out", tmp_path / "x.pdf")
    code, _, err = door(*asked, "--limit", "breakaway >= 20 N·m", "--source", "manual")
    assert code == Exit.BAD_INPUT
    assert "ratio >= 2.5" in err
    assert not (tmp_path / "x.pdf").exists()


# ---------------------------------------------------------------------- verified
@pytest.mark.parametrize("form", ["html", "pdf"])
def test_the_door_writes_and_verifies_from_both_files(door, halves, tmp_path, form):
    page = tmp_path / f"page.{form}"
    limit = ("--limit", "ratio >= 3.33", "--source", "club rules", "--rule", "guarded-acceptance")
    code, out, _ = door("report", halves[0], "--neutral", halves[1], "--kind", "engineer", *limit, "--out", page)
    assert code == Exit.OUTSIDE
    assert "in gear ÷ neutral at least 3.33 (club rules); rule: guarded acceptance" in out
    record = read_record(page)
    assert {record["recording"]["file"], record["neutral"]["file"]} == {"in-gear.csv", "neutral.csv"}
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OK, out
    assert "recording in-gear.csv: the bytes that the report names" in out
    assert "recording neutral.csv: the bytes that the report names" in out
    assert "6 pulls" in out
    text = halves[1].read_text("utf-8")
    halves[1].write_text(text.replace(",12.", ",13.", 1), "utf-8")
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "the half in neutral is not the one that the report was made from: its SHA-256 differs" in out
    halves[1].unlink()
    code, out, _ = door("report", "--verify", page)
    assert code == Exit.OUTSIDE
    assert "neutral.csv" in out
    assert "no such file" in out
    elsewhere = tmp_path / "elsewhere"
    (elsewhere / "x").mkdir(parents=True)
    kept = recording(elsewhere, "neutral", 12.0)
    assert door("report", "--verify", page, "--neutral", kept)[0] == Exit.OK
    halves[0].unlink()
    assert door("report", "--verify", page, "--neutral", kept)[0] == Exit.OUTSIDE


def test_a_changed_sidecar_of_either_half_does_not_hold(door, halves, tmp_path):
    page = tmp_path / "page.html"
    door("report", halves[0], "--neutral", halves[1], "--out", page)
    for path, said in ((halves[1], "in neutral (header and sidecar)"), (halves[0], "(header and sidecar)")):
        sidecar = path.with_suffix(".sidecar.toml")
        text = sidecar.read_text("utf-8")
        sidecar.write_text(text.replace("blue hill-climb car", "green hill-climb car"), "utf-8")
        code, out, _ = door("report", "--verify", page)
        assert code == Exit.OUTSIDE
        assert said in out
        sidecar.write_text(text, "utf-8")
    assert door("report", "--verify", page)[0] == Exit.OK


@pytest.mark.parametrize(
    ("key", "value", "said"),
    [
        ("ratio", [[9.9, 0.02]], "ratio 1"),
        ("ratio", [], "ratio: 0 then, 1 now"),
        ("neutral", [], "neutral: 0 then, 3 now"),
        ("state", "outside", "result: the report says outside"),
    ],
)
def test_a_changed_figure_does_not_hold(made, tmp_path, key, value, said):
    page = write_report(content_of(made[0], issue()), tmp_path / "r.html")
    text = page.read_text("utf-8")
    start = text.index(RECORD_OPENS) + len(RECORD_OPENS)
    end = text.index(RECORD_CLOSES, start)
    record = json.loads(text[start:end])
    record["claims"][key] = value
    page.write_text(text[:start] + json.dumps(record, sort_keys=True) + text[end:], "utf-8")
    found = verify(page, lambda _: made[0])
    assert found.holds is Holds.NO
    assert any(said in line for line in found.lines), found.lines


@pytest.mark.parametrize("neutral", [None, 5, [], {}, {"sha256": 1}, {"file": "../../x"}])
def test_a_damaged_name_of_the_half_is_told(made, tmp_path, neutral):
    page = write_report(content_of(made[0], issue()), tmp_path / "r.html")
    text = page.read_text("utf-8")
    found = re.search(r'"neutral": (\{"corrections.*?\})', text)
    page.write_text(text.replace(found[1], json.dumps(neutral)), "utf-8")
    assert verify(page, lambda _: made[0]).holds is Holds.NO


def test_one_recording_is_no_ratio(made, tmp_path):
    page = write_report(content_of(made[0], issue()), tmp_path / "r.html")
    alone = replace(made[0], neutral=None)
    assert "the half in neutral is missing" in verify(page, lambda _: alone).lines
    page = write_report(content_of(alone, issue()), tmp_path / "s.html")
    assert any("not of a ratio" in line for line in verify(page, lambda _: made[0]).lines)


def test_the_half_is_looked_for_beside_its_recording(door, halves, tmp_path):
    page = tmp_path / "page.html"
    door("report", halves[0], "--neutral", halves[1], "--out", page)
    hidden = tmp_path / "deeper"
    hidden.mkdir()
    moved = hidden / Path(page).name
    moved.write_bytes(page.read_bytes())
    code, out, _ = door("report", "--verify", moved, "--against", halves[0])
    assert code == Exit.OK, "the half in neutral lies beside the recording that is named"
    assert "neutral.csv: the bytes that the report names" in out
