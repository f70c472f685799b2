"""Borders of what is typed and how figures are shown: by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from gui.models import limit_entry, planning
from gui.models.calibrating import Calibrating
from gui.models.display import Display
from gui.models.weighing import Doing, Hanging, cautions, plan_of
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.header import TransducerFacts
from tests.gui.models.test_answers import COMMON
from tests.gui.models.test_borders import G, hang, weighing


# ---------------------------------------------------------------------- a check with weights
def test_what_is_typed_for_a_check_with_weights() -> None:
    facts = TransducerFacts(unit="N·m", capacity_nm=50.0)

    def wrong(**keys: object) -> set[str]:
        return set(plan_of(Hanging(**({"masses": ("10 kg",), "arm": "500 mm"} | keys)), facts)[1])

    assert wrong() == set()
    assert wrong(arm="") == {"arm"}
    assert wrong(masses=("", " ")) == {"mass1"}
    assert wrong(masses=("10 kg", "11 kg")) == {"mass2"}  # 53.9 N·m of 50
    assert wrong(masses=("10",)) == {"mass1"}  # in which unit?
    assert wrong(allowed="0 %") == {"allowed"}
    assert wrong(allowed="± 0.5 %") == set()
    plan, _ = plan_of(Hanging((" 10 kg ",), arm="500 mm", latitude="52°"), facts)
    assert plan.place_known
    assert plan.steps[1].words == "10 kg"
    # International gravity formula at 52° (WGS 84, from memory): 9.8126 m/s².
    assert plan.torque_nm(1) == pytest.approx(10 * 9.8126 * 0.5, rel=2e-4)


@pytest.mark.parametrize(("back", "told"), [(0.04, False), (0.09, False), (0.11, True), (-0.11, True)])
def test_a_zero_that_did_not_come_back_is_told(back: float, told: bool) -> None:
    """Beyond 0.2 % of the smallest load (49 N·m: 0.098), and 0.05 N·m."""
    of = weighing("10 kg")
    hang(of, 0.0, 49.0, back)
    said = cautions(of, lambda nm: f"{nm:.2f}")
    assert any(f"came back to {back:.2f}" in text for text in said) is told
    assert any("Standard gravity" in text for text in said)
    assert not any("other way round" in text for text in said)


def test_a_check_that_reads_the_other_way_round_is_told() -> None:
    of = weighing("10 kg")
    hang(of, 0.0, -49.0, 0.0)
    assert any("other way round" in text for text in cautions(of, str))


@pytest.mark.parametrize(("level", "heavy"), [(14.6, False), (14.8, True)])
def test_a_weight_counts_as_hung_when_three_tenths_of_it_are_there(level: float, heavy: bool) -> None:
    of = weighing("10 kg")
    hang(of, 0.0)
    of.feed(np.arange(20) / 100, np.full(20, level))
    assert of.doing is (Doing.SETTLE if heavy else Doing.HANG)
    of.feed(np.arange(20) / 100, np.full(20, np.nan))
    assert of.now_nm is None


def test_two_loads_make_a_calibration() -> None:
    """100 counts with nothing, 10 900 with 49.03 N·m: 0.00454 N·m a count, and 100 counts are nothing."""
    description = Description(name="raw", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    plan, _ = plan_of(Hanging(("10 kg", "5 kg"), arm="500 mm"), description.transducer)
    of = Calibrating(plan, description)
    for level in (100.0, 10_900.0):
        of.feed(np.array([0.0]), np.array([level]))
        assert of.share == 0.0
        of.insist()
        for at in np.arange(0, 20, 0.1):
            if of.feed(at + np.arange(10) / 100, np.full(10, level)):
                break
            assert of.share < 1.0
        assert of.share == 0.0
    assert of.done
    made = of.made
    assert 10_900 * made.scale + made.offset == pytest.approx(10 * G * 0.5)
    assert 100 * made.scale + made.offset == pytest.approx(0.0, abs=1e-9)
    name = of.description(()).name
    assert of.description((name,)).name == f"{name} (2)"
    assert of.description((name, f"{name} (2)")).name == f"{name} (3)"


# ---------------------------------------------------------------------- words and figures
@pytest.mark.parametrize(
    ("nm", "u95", "text"),
    [
        (38.44, None, "38.4"), (38.44, 1.2, "38.4 ± 1.2"), (38.44, 0.123, "38.44 ± 0.12"), (38.44, 12.3, "38 ± 12"),
        (38.44, 0.0996, "38.44 ± 0.10"), (38.44, 0.0, "38.4"), (38.44, -1.0, "38.4"), (38.44, math.inf, "38.4"),
        (386.0, 123.0, "386 ± 123"), (-3.04, None, "−3.0"),
    ],
)  # fmt: skip
def test_an_interval_decides_the_decimals(nm: float, u95: float | None, text: str) -> None:
    """Two significant digits (JCGM 100, 7.2.6), at most one beyond what is shown of a torque alone."""
    assert Display("N·m").figure(nm, u95) == text


@pytest.mark.parametrize(
    ("other", "unit", "said"),
    [
        ("41.59", "N·m", False),
        ("41.7", "N·m", True),
        ("38.41", "N·m", False),
        ("38.3", "N·m", True),
        ("0", "N·m", False),
    ],
)
def test_two_figures_of_a_limit_agree_within_four_per_cent(other: str, unit: str, said: bool) -> None:
    draft = limit_entry.LimitDraft(lower="40", source="x", beside=other, beside_unit=unit)
    assert bool(limit_entry.check(draft).warnings) is said


@pytest.mark.parametrize(
    ("keys", "wrong"),
    [
        ({"lower": "0"}, {"lower"}), ({"lower": "-3"}, {"lower"}), ({"lower": ""}, {"lower"}),
        ({"lower": "0.1"}, set()),
        ({"kind": "max", "upper": "50"}, set()), ({"kind": "band", "lower": "50", "upper": "50"}, {"upper"}),
        ({"kind": "band", "lower": "50", "upper": "50.1"}, set()), ({"unit": "parsec"}, {"unit"}),
    ],
)  # fmt: skip
def test_a_limit_is_a_figure_above_zero(keys: dict[str, str], wrong: set[str]) -> None:
    found = limit_entry.check(limit_entry.LimitDraft(**({"lower": "40", "source": "manual"} | keys)))
    assert set(found.wrong) == wrong
    assert (found.limit is None) is bool(wrong)
    if found.limit is not None:
        again = limit_entry.draft_of(found.limit)
        assert limit_entry.check(again).limit == found.limit


def test_a_plan_is_drawn_beyond_its_answer() -> None:
    """From two fills to 1.6 times as many as are needed, at least to six."""
    assert planning._fills(2) == [2, 3, 4, 5, 6]
    assert planning._fills(5) == [2, 3, 4, 5, 6, 7, 8]
    many = planning._fills(100)
    assert (many[0], many[-1] >= 157, 100 in many) == (2, True, True)
    assert len(many) <= 42
    wish = planning.Wish("half width", 1.0, 2.0, "", 0.8, (), 1)
    planned = planning.plan((), COMMON, wish)
    assert (planned.per_group, planned.plan, planned.order) == (18, None, ())  # t(17) 2/√18 = 0.995
    assert dict(planned.curve)[18.0] == pytest.approx(0.9946, abs=1e-3)
    groups = planning.plan((), COMMON, planning.Wish("difference", 4.0, 2.0, "", 0.8, ("a", "b", "c"), 1))
    assert [sorted(block) for block in groups.order] == [["a", "b", "c"]] * groups.per_group
    assert dict(groups.curve)[float(groups.per_group)] >= 0.8 > dict(groups.curve)[groups.per_group - 1.0]
    rows = planning.order_sheet(groups).rows
    assert [row[0] for row in rows] == [str(n + 1) for n in range(3 * groups.per_group)]
    assert [row[1] for row in rows[:4]] == ["1", "1", "1", "2"]
