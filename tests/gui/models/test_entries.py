"""What is typed in: limits with their source and the unit guard, fixtures, dial readings, tags."""

import math
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from analysis.pipeline import read_file
from gui.models import dial_entry, fixture_entry, limit_entry
from gui.models.archive import tags_of
from gui.models.job import JobCard
from gui.models.limit_entry import LimitDraft
from logger.header import Axle, Lever, Limit, Test, TransducerFacts

SOURCED = {"source": "club rules, 3rd edition", "unit": "lbf·ft", "lower": "20"}


def test_a_limit_without_a_source_is_none() -> None:
    checked = limit_entry.check(LimitDraft(lower="20", unit="lbf·ft"))
    assert checked.limit is None
    assert "source" in checked.wrong


@pytest.mark.parametrize(
    ("keys", "wrong"),
    [
        ({"lower": ""}, "lower"),
        ({"lower": "twenty"}, "lower"),
        ({"lower": "-3"}, "lower"),
        ({"lower": "0"}, "lower"),
        ({"unit": "furlong"}, "unit"),
        ({"kind": "max", "upper": ""}, "upper"),
        ({"kind": "band", "upper": "10"}, "upper"),
    ],
)
def test_what_cannot_be_used_is_named(keys: dict[str, str], wrong: str) -> None:
    checked = limit_entry.check(LimitDraft(**{**SOURCED, **keys}))
    assert checked.limit is None
    assert wrong in checked.wrong


def test_a_limit_keeps_the_unit_of_its_source() -> None:
    limit = limit_entry.check(LimitDraft(**{**SOURCED, "lower": "20,5"})).limit
    assert limit == Limit(quantity="breakaway", kind="min", unit="lbf·ft", source=SOURCED["source"], lower=20.5)
    assert limit_entry.check(limit_entry.draft_of(limit)).limit == limit


def test_what_no_field_shows_of_a_fixture_stays_until_its_value_is_typed_anew() -> None:
    lever = Lever(fixture="one stud", stud_circle_mm=114.3, length_mm=450.0, length_mm_u=2.0, grip_mark_mm=400.0)
    lever = msgspec.structs.replace(lever, gauge_mm=120.0, gauge_mm_u=1.0, studs=5)
    draft = fixture_entry.draft_of(lever)
    assert fixture_entry.check(draft).lever == lever
    longer = fixture_entry.check(replace(draft, values={**draft.values, "length_mm": "480 mm"})).lever
    assert longer == msgspec.structs.replace(lever, length_mm=480.0, length_mm_u=None)


@pytest.mark.parametrize(
    ("first", "unit", "beside", "beside_unit", "slip"),
    [
        ("240", "lbf·ft", "27", "N·m", "lbf·in against lbf·ft"),  # x 12: 20 lbf·ft printed as 240
        ("27", "lbf·ft", "27", "N·m", "N·m against lbf·ft"),  # x 1.36
        ("27", "kgf·m", "27", "N·m", "N·m against kgf·m"),  # x 9.8
        ("0.8", "kgf·cm", "7.8", "N·m", "kgf·cm against kgf·m"),  # x 100, as a manual prints it
    ],
)
def test_the_usual_slips_of_the_unit(first: str, unit: str, beside: str, beside_unit: str, slip: str) -> None:
    draft = LimitDraft(lower=first, unit=unit, beside=beside, beside_unit=beside_unit, source="a manual")
    assert any(slip in text for text in limit_entry.check(draft).warnings)


def test_two_figures_that_agree_are_left_alone() -> None:
    # 20 lbf·ft is 27.1 N·m (NIST SP 811), printed as 27.
    draft = LimitDraft(lower="20", unit="lbf·ft", beside="27", beside_unit="N·m", source="a manual")
    assert limit_entry.check(draft).warnings == ()


def test_an_unlikely_limit_is_asked_about() -> None:
    warnings = limit_entry.check(LimitDraft(lower="2400", unit="N·m", source="x")).warnings
    assert "lbf·in" in " ".join(warnings)


@pytest.mark.parametrize(
    ("values", "factor"),
    [
        # Common practice, no source: 17.5 in lever, one stud of a 4.25 in stud circle, in line.
        ({"stud_circle_mm": "4.25 in", "length_mm": "17.5 in"}, (17.5 + 2.125) / 17.5),
        ({"stud_circle_mm": "5x114.3 mm", "length_mm": "450 mm"}, 1 + 57.15 / 450),
        ({"stud_circle_mm": "114,3 mm", "length_mm": "45 cm", "angle_deg": "90°"}, 1.0),
        ({"stud_circle_mm": "114.3 mm", "length_mm": "450 mm", "angle_deg": "180"}, 1 - 57.15 / 450),
        (
            {"stud_circle_mm": "114.3 mm", "length_mm": "450 mm", "angle_deg": "45"},
            1 + 57.15 / 450 * math.cos(math.pi / 4),
        ),
    ],
)
def test_fixture_with_any_unit(values: dict[str, str], factor: float) -> None:
    checked = fixture_entry.check(fixture_entry.FixtureDraft("one stud", "x", "5", values))
    assert checked.wrong == {}
    assert checked.lever_factor == pytest.approx(factor, rel=1e-9)
    assert fixture_entry.check(fixture_entry.draft_of(checked.lever)).lever == checked.lever


def test_fixture_faults_are_all_told() -> None:
    checked = fixture_entry.check(fixture_entry.FixtureDraft("one stud", "", "5", {"angle_deg": "steep"}))
    assert set(checked.wrong) >= {"stud_circle_mm", "length_mm", "angle_deg"}
    assert checked.lever is None


def card(**parts: object) -> JobCard:
    made = JobCard()
    made.put(lever=Lever(fixture="one stud", length_mm=444.5, stud_circle_mm=107.95, studs=5, angle_deg=0.0), **parts)
    return made


def test_dial_reading_through_lever_interval_and_limit() -> None:
    # 18 lbf·ft shown on that lever is 20.2 lbf·ft at the axle (common practice, no source; published-values row).
    job = card(limit=Limit(quantity="breakaway", kind="min", lower=20.0, unit="lbf·ft", source="a manual"))
    checked = dial_entry.check(dial_entry.DialDraft("18", "lbf·ft", "breakaway", "1", "4 %", "100"), job)
    assert checked.budget.value / 1.3558179483 == pytest.approx(20.2, abs=0.05)
    draft = dial_entry.DialDraft("18", "lbf·ft", "breakaway", "1", "4 %", "100")
    value = dial_entry.sum_up([draft], job, "breakaway")
    assert value.state == "too close to call"
    assert value.value.u95_nm > 0.5


def test_dial_readings_are_judged_on_screen_as_in_their_file(tmp_path: Path) -> None:
    drafts = tuple(dial_entry.DialDraft(f"{n}", "lbf·ft", "breakaway", "1", "4 %", "100") for n in (38, 40, 41))
    other = dial_entry.DialDraft("30", "lbf·ft", "rotating mean", "1", "4 %", "100")
    limit = Limit(quantity="breakaway", kind="min", lower=20.0, unit="lbf·ft", source="a manual")
    open_one = Axle(type="open")
    for axle, state in ((Axle(), "within"), (open_one, "not valid")):
        job = card(limit=limit, axle=axle, dial=(*drafts, other))
        shown = dial_entry.sum_up(job.dial, job, "breakaway")
        read = read_file(str(dial_entry.file_job(job, (), "A. B.", tmp_path)))
        assert (shown.state, shown.count) == (str(read.result.state), 3)
        assert shown.state == state
        assert (shown.value.nm, shown.value.u95_nm) == (read.main.budget.value, read.main.budget.u95)
        assert shown.notes == read.result.notes
        assert dial_entry.sum_up(job.dial, job, "rotating mean").state == ""


def test_dial_readings_that_cannot_be_used() -> None:
    assert "fixture" in dial_entry.check(dial_entry.DialDraft("18"), JobCard()).wrong
    assert dial_entry.check(dial_entry.DialDraft("many"), card()).wrong
    assert dial_entry.check(dial_entry.DialDraft("200", full_scale="100"), card()).wrong
    assert dial_entry.check(dial_entry.DialDraft(""), card()).budget is None


def test_job_card_says_what_is_missing_and_what_does_not_fit() -> None:
    assert JobCard().missing() == ("a transducer", "a fixture")
    limit = Limit(quantity="breakaway", kind="min", lower=40.0, unit="N·m", source="x", held="case")
    job = card(limit=limit, test=Test(place="bench", held="other side"))
    assert job.conflict().refused  # the trap of a factor of two


@pytest.mark.parametrize(("capacity", "words"), [(2000.0, "narrower interval"), (30.0, "80 %"), (100.0, "")])
def test_range_advice(capacity: float, words: str) -> None:
    # Common practice, no source: the limit at 20 to 80 % of the transducer's range.
    from logger.decoder.description import Description
    from logger.decoder.template import LineFormat

    facts = TransducerFacts(unit="N·m", capacity_nm=capacity)
    description = Description(name="x", transducer=facts, lines=LineFormat(template="{torque}"))
    limit = Limit(quantity="breakaway", kind="min", lower=40.0, unit="N·m", source="x")
    advice = card(limit=limit, description=description).range_advice()
    assert words in advice
    assert bool(advice) == bool(words)


def test_tags() -> None:
    assert tags_of("shim=0.2, fill = B ,, nonsense, x=") == {"shim": 0.2, "fill": "B", "x": ""}
