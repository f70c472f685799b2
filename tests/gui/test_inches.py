"""Inches, once they are chosen, everywhere that a length stands: fields, drawing, card, sheets, Review, the page.

The inch is 25.4 mm exactly (NIST SP 811, appendix B.8); 450 mm are 17.72 in and 114.3 mm are 4.5 in.
"""

import shutil
from datetime import timedelta
from pathlib import Path

import msgspec
import pytest

from analysis.pipeline import read_file
from analysis.report.gather import material_of
from analysis.report.verify import Holds, verify
from analysis.report.write import content_of, write_report
from gui.models.display import Display
from gui.models.fixture_entry import check, draft_of
from gui.models.issuing import issue_of
from gui.models.loading import load
from gui.models.practice import PracticeLink, fill_card, scenario_for_practice
from gui.models.settings import Choices
from gui.pages.editors.axle import BUILD
from gui.pages.hub_words import hub_view
from gui.pages.reading_panel import fact_lines
from gui.pages.settings_dialog import SettingsDialog
from gui.pages.weigh_steps import WhatStep
from logger.edges.lengths import length_words
from logger.edges.toml_file import write_toml
from logger.header import Lever
from logger.recordings.axles import AxleFile, Build, Pack, PackPart
from logger.recordings.stored import read_recording
from tests.gui.hand import Hand

RECORDING = Path(__file__).parents[2] / "recordings" / "02-build-shim-40.csv"


@pytest.fixture
def inches(hand: Hand) -> Hand:
    fill_card(hand.window.tester.card, PracticeLink(scenario_for_practice()))
    hand.window.tester.card.practice = False
    hand.window._shared.display.use(lengths="in")
    return hand


@pytest.mark.parametrize(("mm", "said"), [(25.4, "1 in"), (450.0, "17.72 in"), (114.3, "4.5 in"), (1.98, "0.078 in")])
def test_an_inch_is_25_4_mm(mm: float, said: str) -> None:
    assert length_words(mm, "in") == said
    assert Display(lengths="in", comma=True).length(mm) == said.replace(".", ",")


def test_inches_are_chosen_in_the_settings_and_remembered(hand: Hand) -> None:
    dialog = SettingsDialog(hand.window._shared, hand.window)
    dialog.lengths.set_key("in")
    dialog.keep()
    assert hand.window._shared.display.lengths == "in"
    assert 'lengths = "in"' in (hand.window._shared.settings.folder / "window.toml").read_text("utf-8")


def test_a_lever_in_inches_stays_what_it_was_to_the_last_bit() -> None:
    lever = Lever(fixture="one stud", studs=5, stud_circle_mm=100.0, length_mm=450.0)
    draft = draft_of(lever, Display(lengths="in"))
    assert draft.values == {"stud_circle_mm": "3.937 in", "length_mm": "17.72 in"}
    assert check(draft).lever == lever
    draft.values["length_mm"] = "17 1/2 in"
    assert check(draft).lever.length_mm == pytest.approx(444.5)
    assert check(draft).lever.stud_circle_mm == 100.0


def test_the_fixture_stands_in_inches_in_form_drawing_and_card(inches: Hand) -> None:
    inches.page.open_row("Fixture")
    form, card = inches.page.editor("Fixture"), inches.window.tester.card
    before = card.lever
    assert form.fields["length_mm"].text == "17.72 in"
    assert form.fields["stud_circle_mm"].text == "4.5 in"
    assert form.fields["offset_mm"].edit.placeholderText() == "0 in"
    view = hub_view(card.lever, None, inches.window._shared)
    assert (view.length, view.circle) == ("L 17.72 in", "Ø 4.5 in")
    form.name.edit.setText("long lever")
    form.name.changed.emit()
    assert msgspec.structs.replace(card.lever, name=before.name) == before, "a name is no change of length"
    inches.window._shared.display.use(lengths="mm")
    assert form.fields["length_mm"].text == "450 mm"
    assert card.lever.length_mm == 450.0


def test_shim_and_build_sheet_stand_in_inches(inches: Hand) -> None:
    card = inches.window.tester.card
    card.put(axle=msgspec.structs.replace(card.axle, tag="A-9", shim_mm=0.3))
    inches.page.open_row("Axle")
    axle = inches.page.editor("Axle")
    assert axle.known.fields["shim"].text == "0.0118 in"
    axle.entry.type_in("pack_build", "2 x 6 plates")
    assert card.axle.shim_mm == 0.3
    assert axle.known.fields["shim"].edit.placeholderText() == "0.0118 in"
    axle.show_part(BUILD)
    entry, form = axle.build.entry, axle.build
    entry.add("shim")
    entry.set_part("0.02 in", "")
    entry.type_in("left_play", "0.004 in")
    assert entry.draft.left[0].thickness_mm == pytest.approx(0.508)
    assert form.thickness.text == "0.02 in"
    assert "stack 0.02 in, end play 0.004 in" in form.adds_up.text()
    assert "mm" not in form.adds_up.text()
    inches.window._shared.display.use(lengths="mm")
    assert form.thickness.text == "0.508 mm"
    assert form.fields["left_play"].text == "0.1016 mm"
    inches.window._shared.display.use(lengths="in")
    assert entry.build.left.end_play_mm == pytest.approx(0.1016, abs=1e-12)


def test_weighing_and_review_speak_of_inches(inches: Hand, tmp_path: Path) -> None:
    display = inches.window._shared.display
    what = WhatStep("gauge", display)
    assert what.fields["arm"].edit.placeholderText() == "19.69 in"
    started = read_recording(RECORDING.read_bytes(), RECORDING.name).header.started
    pack = Pack(parts=(PackPart(kind="shim", thickness_mm=0.4),), end_play_mm=0.1)
    build = Build(built=started - timedelta(hours=1), left=pack, right=pack)
    write_toml(tmp_path / "43-11.axle.toml", AxleFile(tag="43/11", builds=(build,)))
    loaded = load(shutil.copy(RECORDING, tmp_path), str(tmp_path))
    assert any(" mm" in line for line in fact_lines(loaded, Display())), "its build sheet states thicknesses"
    said = fact_lines(loaded, display)
    assert not any(" mm" in line for line in said)
    assert any(" in" in line for line in said)


@pytest.mark.parametrize("form", ["html", "pdf"])
def test_the_page_states_lengths_in_inches_and_is_verified_so(tmp_path: Path, form: str) -> None:
    material = material_of(read_file(RECORDING))
    issue = issue_of(Choices(lengths="in"), "engineer", "lbf·ft")
    content = content_of(material, issue)
    page = write_report(content, tmp_path / f"page.{form}")
    said = str(content)
    assert "length 17.72 in, stud circle 4.5 in" in said
    assert "450 mm" not in said
    assert "114.3 mm" not in said
    assert verify(page, lambda _: material).holds is Holds.YES
    metric = write_report(content_of(material, issue_of(Choices(), "engineer", "N·m")), tmp_path / f"metric.{form}")
    assert "length 450 mm, stud circle 114.3 mm" in str(content_of(material, issue_of(Choices(), "engineer", "N·m")))
    assert verify(metric, lambda _: material).holds is Holds.YES
