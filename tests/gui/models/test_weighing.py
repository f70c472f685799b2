"""A check with weights, at the borders of its rules: what is planned, when a step counts, what is told."""

from __future__ import annotations

import msgspec
import numpy as np
import pytest

from gui.models.calibrating import Calibrating
from gui.models.weighing import MOVED_SHARE, Doing, Hanging, Weighing, cautions, plan_of
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.header import TransducerFacts
from logger.instruments.measure import MEAN_S
from tests.gui.models.test_borders import TIME_S, hang, weighing

WIDE = TransducerFacts(unit="N·m", capacity_nm=1000.0)


def planned(*masses: str, facts: TransducerFacts = WIDE, **typed: object) -> Weighing:
    plan, wrong = plan_of(Hanging(masses, **({"arm": "500 mm"} | typed)), facts)
    assert plan is not None, wrong
    return Weighing(plan)


def test_loads_go_up_and_down_through_every_one() -> None:
    steps = planned("20 kg", "5 kg", "10 kg").plan.steps
    assert [load and load.words for load in steps] == [None, "5 kg", "10 kg", "20 kg", "10 kg", "5 kg", None]


def test_no_height_is_the_height_of_the_sea() -> None:
    flat, sea, high = (
        planned("10 kg", latitude="45", height=height).plan.torque_nm(1) for height in ("", "0 m", "1 m")
    )
    assert flat == sea > high


def test_the_whole_capacity_may_be_hung() -> None:
    most = planned("10 kg").plan.torque_nm(1)
    assert planned("10 kg", facts=msgspec.structs.replace(WIDE, capacity_nm=most)).plan.torque_nm(1) == most
    less = msgspec.structs.replace(WIDE, capacity_nm=most - 1e-6)
    assert set(plan_of(Hanging(("10 kg",), arm="500 mm"), less)[1]) == {"mass1"}


def test_a_fault_of_a_load_is_told_at_its_field() -> None:
    wrong = plan_of(Hanging(("10 kg",), arm="0 mm"), WIDE)[1]
    assert set(wrong) == {"arm"}
    assert set(plan_of(Hanging(("10 kg",), arm="500 mm", latitude="95"), WIDE)[1]) == {"latitude"}
    assert set(plan_of(Hanging(("5 kg", "0 kg"), arm="500 mm"), WIDE)[1]) == {"mass2"}


def test_what_is_weighed_is_a_torque_and_what_is_calibrated_is_none() -> None:
    assert Weighing.raw is False
    assert Calibrating.raw is True


def test_a_weight_that_has_moved_the_reading_by_its_share_exactly_is_not_hung_yet() -> None:
    of = planned("10 kg")
    hang(of, 0.0)
    border = MOVED_SHARE * of.change_nm
    for level, doing in ((border, Doing.HANG), (-border, Doing.HANG), (np.nextafter(border, 99.0), Doing.SETTLE)):
        assert of.feed(TIME_S[:20], np.full(20, level)) is False
        assert of.doing is doing


@pytest.mark.parametrize(("resolution", "moving"), [(None, True), (0.2, True), (1.0, False)])
def test_a_step_waits_for_what_its_reading_can_tell(resolution: float | None, *, moving: bool) -> None:
    """A reading that goes from 49.0 to 49.5 N·m is not still, unless its own step is wider."""
    of = planned("10 kg", facts=msgspec.structs.replace(WIDE, resolution_nm=resolution))
    hang(of, 0.0)
    of.insist()
    of.feed(TIME_S[:100], np.where(TIME_S[:100] < 0.5, 49.0, 49.5))
    assert of.moving is moving


def test_a_heavy_load_may_swing_by_a_five_hundredth_of_itself() -> None:
    """200 kg at half a metre: 981 N·m, of which 0.2 % are 1.96; common practice, no source."""
    for swing, moving in ((1.9, False), (2.0, True)):
        of = planned("200 kg")
        hang(of, 0.0)
        of.insist()
        of.feed(TIME_S[:100], np.where(TIME_S[:100] < 0.5, 980.0, 980.0 + swing))
        assert of.moving is moving


def test_a_mark_instead_of_a_reading_begins_a_step_anew() -> None:
    of = planned("10 kg")
    of.feed(TIME_S[:100], np.zeros(100))
    assert of.share > 0
    assert of.feed(TIME_S[100:102], np.array([0.0, np.nan])) is False
    assert (of.share, of.now_nm, of.step) == (0.0, None, 0)
    assert of.feed(TIME_S[:0], TIME_S[:0]) is False
    hang(of, 0.0, 49.0, 0.0)
    assert of.feed(TIME_S, np.zeros(len(TIME_S))) is False
    assert (of.done, of.step, of.change_nm) == (True, 3, 0.0)


@pytest.mark.parametrize(("reading", "told"), [(0.5, False), (0.0, False), (-0.5, True)])
def test_the_other_way_round_is_below_nought(reading: float, *, told: bool) -> None:
    of = planned("10 kg")
    hang(of, 0.0, reading, 0.0)
    assert any("other way round" in text for text in cautions(of, str)) is told


@pytest.mark.parametrize(
    ("masses", "resolution", "back", "told"),
    [
        (("2 kg",), None, 0.048, False), (("2 kg",), None, 0.052, True),  # never less than 0.05 N·m
        (("60 kg", "30 kg"), None, 0.29, False), (("60 kg", "30 kg"), None, 0.30, True),  # of 147 N·m, the smaller
        (("2 kg",), 0.5, 0.5, False), (("2 kg",), 0.5, 0.51, True),  # nor than a step of the reading
    ],
)  # fmt: skip
def test_a_zero_that_came_back_elsewhere(masses: tuple[str, ...], resolution: float | None, back: float, *, told: bool):
    of = planned(*masses, down=False, facts=msgspec.structs.replace(WIDE, resolution_nm=resolution))
    hang(of, 0.0, *(load.weight.torque_nm for load in of.plan.steps if load is not None), back)
    assert any("came back" in text for text in cautions(of, str)) is told


def test_nothing_is_told_of_a_zero_that_has_not_come_back_yet() -> None:
    of = weighing("10 kg")
    hang(of, 0.0, 49.0)
    assert of.drift_nm is None
    assert not any("came back" in text for text in cautions(of, str))


def test_a_mean_for_a_calibration_begins_anew_at_a_mark() -> None:
    description = Description(name="raw", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    of = Calibrating(planned("10 kg", "5 kg").plan, description)
    some, mark = np.full(10, 100.0), np.array([100.0] * 9 + [np.nan])
    assert of.feed(TIME_S[:10], some) is False
    assert (of.now_nm, of.share) == (100.0, 0.0)
    of.insist()
    assert of.feed(TIME_S[:0], TIME_S[:0]) is False
    told = []
    for at_s, delivered in ((0.0, some), (0.5, some), (1.0, mark), (1.5, some), (0.75 + MEAN_S, some)):
        assert of.feed(at_s + TIME_S[:10] - TIME_S[9], delivered) is False
        told.append(of.share * MEAN_S)
    assert told == pytest.approx([0.0, 0.5, 0.5, 0.5, MEAN_S - 0.25])
    assert of.step == 0
    assert of.feed(1.0 + MEAN_S + TIME_S[:10] - TIME_S[9], np.full(10, 400.0)) is True
    assert (of.step, of.share, of._levels) == (1, 0.0, [pytest.approx(200.0)])
    of.feed(TIME_S[:10], np.full(10, np.nan))
    assert of.now_nm is None
