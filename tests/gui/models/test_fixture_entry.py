"""A fixture as it is typed in: labels, studs and their distance, what belongs to which kind."""

from __future__ import annotations

import math

import pytest

from gui.models.fixture_entry import FixtureDraft, apart_options, check, circle_mm, read_label
from logger.header import Lever
from logger.instruments.fixture_line import line_of


def test_a_label_in_the_place_of_a_name_is_no_fixture_yet() -> None:
    line = line_of(Lever(fixture="hub centre", name="LONG LEVER"))
    assert read_label(line)[0] == Lever(fixture="hub centre", name="LONG LEVER")
    for text, told in ((line, ""), (line[:-1], "This label:")):
        checked = check(FixtureDraft("hub centre", text))
        assert checked.lever is None
        assert checked.wrong["name"].startswith(told)
        assert bool(checked.wrong["name"]) is bool(told)
    assert check(FixtureDraft("hub centre", "long lever")).lever is not None


def test_a_fixture_takes_the_fields_of_its_kind_that_are_filled_in() -> None:
    values = {"length_mm": "450 mm", "weight_kg": "1.2 kg", "centroid_mm": "200 mm", "start_angle_deg": "  "}
    lever = check(FixtureDraft("hub centre", values=values)).lever
    assert (lever.length_mm, lever.weight_kg, lever.centroid_mm, lever.start_angle_deg) == (None, 1.2, 200.0, None)


@pytest.mark.parametrize(
    ("studs", "apart", "chord_mm"),
    [
        (5, None, 114.3 * math.sin(math.pi / 5)),
        (5, 1, 114.3 * math.sin(math.pi / 5)),
        (5, 2, 114.3 * math.sin(2 * math.pi / 5)),
        (4, 2, 114.3),
    ],
)
def test_a_circle_from_the_distance_of_two_studs(studs: int, apart: int | None, chord_mm: float) -> None:
    """The chord of a regular polygon: d sin(k π/n)."""
    lever = Lever(fixture="cross-bar", studs=studs, chord_mm=chord_mm, chord_apart=apart)
    assert circle_mm(lever) == pytest.approx(114.3)


def test_a_circle_that_is_stated_counts_and_too_little_gives_none() -> None:
    assert circle_mm(Lever(fixture="one stud", stud_circle_mm=100.0, chord_mm=50.0, studs=5)) == 100.0
    assert circle_mm(Lever(fixture="one stud", stud_circle_mm=100.0)) == 100.0
    assert circle_mm(Lever(fixture="one stud", chord_mm=50.0)) is None
    assert circle_mm(Lever(fixture="one stud", studs=5)) is None


def test_how_two_studs_may_lie() -> None:
    assert apart_options(5) == [("1", "Next to each other"), ("2", "One stud between")]
    assert [words for _, words in apart_options(10)] == [
        "Next to each other", "One stud between", "Two studs between", "Three studs between", "Opposite each other",
    ]  # fmt: skip
    assert apart_options(11)[-1] == ("5", "4 studs between")
    assert apart_options(4)[-1] == ("2", "Opposite each other")


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("5x4.5 in", 114.3),
        ("5x114.3", None),
        ("5x100", None),
        ("5xa mm", None),
    ],
)
def test_a_circle_as_it_is_printed_needs_its_unit(text: str, mm: float | None) -> None:
    checked = check(FixtureDraft("one stud", values={"stud_circle_mm": text, "length_mm": "450 mm"}))
    assert (checked.lever.stud_circle_mm if checked.lever else None) == mm
    if text[-1].isdigit():
        assert checked.wrong["stud_circle_mm"] == f"In which unit? Write {text} mm or {text} in"
