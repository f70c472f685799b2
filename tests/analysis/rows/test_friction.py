"""Friction figure and the pinion's part of a reading, from values put together by hand."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import msgspec
import pytest

from analysis.rows.friction import build_words, friction_of, friction_words, pinion_of
from analysis.rows.summary import run_of
from analysis.to_axle.drag import DragTest, PackMean
from analysis.verdict.recorded import Baseline
from logger.header import Axle, Header, Test
from logger.recordings.axles import Build, Pack
from tests.analysis.rows.readings import budget, reading, value

RADIUS_M = (0.04 + 0.0408333333) / 2
"""Of faces of 100 and 60 mm: worn evenly 160/4 mm; pressed evenly (100³ - 60³)/(100² - 60²)/3 = 40.83 mm."""

BUILD = Build(
    built=datetime(2026, 5, 1, tzinfo=UTC),
    left=Pack(surfaces=6),
    right=Pack(surfaces=8),
    spring_n=1000.0,
    face_outer_mm=100.0,
    face_inner_mm=60.0,
    pinion_nm=2.0,
)
FIGURE = 30 / (7 * 1000 * RADIUS_M)
"""μ = T/(n F r) of 30 N·m: 6 and 8 surfaces are 7 on average."""

VALUES = (value("rotating mean", 28.0), value("rotating mean", 30.0, direction=-1), value("breakaway", 70.0))


def header(held: str | None = "other side", ratio: float | None = 4.0) -> Header:
    return Header(test=Test(held=held), axle=Axle(ratio=ratio))


def drag(means: list[tuple[str, float | None]], free: dict[tuple[str, str], float] | None = None) -> Baseline:
    found = tuple(PackMean(q, "forwards", None if nm is None else budget(q, nm), "") for q, nm in means)
    baseline = {key: budget(key[0], nm) for key, nm in (free or {}).items()}
    return Baseline("free.csv", "", DragTest({}, baseline, found, ()))


@pytest.mark.parametrize(
    ("held", "times", "how"), [("other side", 1.0, "as read, drag included"), ("case", 0.5, "as read, drag included")]
)
def test_the_figure_of_the_larger_rotating_mean(held, times, how):
    """With the case held both packs slip at once: one has half of the torque."""
    figure, said = friction_of(reading(*VALUES, header=header(held), build=BUILD))
    assert figure.value == pytest.approx(times * FIGURE)
    assert said.startswith(how)
    note = figure.row("pack torque").input.note
    assert note == ("rotating mean" if held == "other side" else "half of the rotating mean")


def test_a_run_carries_the_figure():
    made = reading(*VALUES, header=header(), build=BUILD)
    figure, _ = friction_of(made)
    assert run_of(made).mu == (figure.value, figure.u95)
    assert run_of(reading(*VALUES, header=header())).mu is None


def test_the_figure_of_one_side_where_the_other_is_not_listed():
    figure, _ = friction_of(reading(*VALUES, header=header(), build=msgspec.structs.replace(BUILD, right=Pack())))
    assert figure.value == pytest.approx(7 / 6 * FIGURE)


def test_a_pack_mean_without_drag_is_better():
    means = [("breakaway", 90.0), ("rotating mean", None), ("rotating mean", 15.0), ("rotating mean", 12.0)]
    figure, said = friction_of(reading(*VALUES, header=header(), build=BUILD, drag=drag(means)))
    assert figure.value == pytest.approx(FIGURE / 2)
    assert said == "pack mean, drag taken off"
    withheld = reading(*VALUES, header=header(), build=BUILD, drag=drag(means[:2]))
    assert friction_of(withheld)[0].value == pytest.approx(FIGURE)


@pytest.mark.parametrize("missing", ["spring_n", "face_outer_mm", "face_inner_mm"])
def test_a_figure_needs_every_fact_of_the_build(missing):
    assert (
        friction_of(reading(*VALUES, header=header(), build=msgspec.structs.replace(BUILD, **{missing: None}))) is None
    )


@pytest.mark.parametrize(
    "changes",
    [
        {"build": None},
        {"build": msgspec.structs.replace(BUILD, left=Pack(), right=Pack())},
        {"build": msgspec.structs.replace(BUILD, face_inner_mm=100.0)},  # faces of no width
        *[{"header": header(held)} for held in ("none", None)],
        {"job": VALUES[2:]},
    ],
)
def test_no_figure_where_something_is_not_known(changes):
    job = changes.pop("job", VALUES)
    assert friction_of(reading(*job, **{"header": header(), "build": BUILD} | changes)) is None


def test_stated_uncertainties_enter_as_they_are():
    """T, F, diameters: each input has the standard uncertainty that the sheet states, in SI."""
    stated = msgspec.structs.replace(BUILD, spring_n_u=20.0, face_mm_u=0.2)
    figure, _ = friction_of(reading(*VALUES, header=header(), build=stated))
    assert figure.row("spring load").input.u == 20.0
    assert figure.row("outer diameter").input.value == pytest.approx(0.1)
    assert figure.row("inner diameter").input.value == pytest.approx(0.06)
    assert figure.row("outer diameter").input.u == figure.row("inner diameter").input.u == pytest.approx(0.0002)


def test_the_pinion_at_the_axle():
    """2 N·m at four times the speed; ± a tenth of it, rectangular, is assumed: 8 · 0.1/√3."""
    assumed = pinion_of(reading(header=header(), build=BUILD))
    assert (assumed.value, assumed.u) == (pytest.approx(8.0), pytest.approx(0.8 / math.sqrt(3)))
    stated = pinion_of(reading(header=header(), build=msgspec.structs.replace(BUILD, pinion_nm_u=0.25)))
    assert stated.u == pytest.approx(1.0)
    assert pinion_of(reading(header=header(ratio=1.0), build=BUILD)).value == 2.0


@pytest.mark.parametrize(
    ("ratio", "build"),
    [(4.0, None), (4.0, msgspec.structs.replace(BUILD, pinion_nm=None)), (None, BUILD), (0.0, BUILD), (-4.0, BUILD)],
)
def test_no_pinion_without_its_torque_or_the_ratio(ratio, build):
    assert pinion_of(reading(header=header(ratio=ratio), build=build)) is None


def test_the_pinion_is_a_part_of_the_drag_with_both_wheels_free():
    stated = msgspec.structs.replace(BUILD, pinion_nm_u=0.0)
    free = {("rotating mean", "forwards"): 9.0, ("rotating mean", "backwards"): 10.0, ("breakaway", "forwards"): 20.0}
    said = friction_words(reading(header=header(), build=stated, drag=drag([], free)), None)
    assert said[0].startswith("the pinion's preload is 8.0 ± 0.0 N·m at the axle; half of it")
    assert said[1].startswith("the pinion's preload is 8.0 ± 0.0 N·m of 10.0 ± 0.0 N·m of drag; 2.0 ± 0.0 N·m are left")
    only_breakaway = drag([], {("breakaway", "forwards"): 20.0})
    assert len(friction_words(reading(header=header(), build=stated, drag=only_breakaway), None)) == 1


def test_a_build_is_told_with_what_changed_and_its_figure():
    before = msgspec.structs.replace(BUILD, built=datetime(2026, 4, 1, tzinfo=UTC), spring_n=900.0)
    build = msgspec.structs.replace(BUILD, reason="chatter")
    said = build_words(reading(*VALUES, header=header(ratio=None), build=build, build_before=before))
    assert said[0].endswith(": chatter")
    assert any(text.endswith("spring load: 900 N → 1000 N (+100 N)") for text in said)
    assert said[-1].startswith(f"friction figure {FIGURE:.3f} ± ")
    assert build_words(reading(*VALUES, header=header())) == ()
