"""A job judged while it is recorded says what its file says: every budget row, note, value, interval and result."""

from __future__ import annotations

from pathlib import Path

import msgspec
import numpy as np
import pytest

from analysis.pipeline import read_file
from analysis.to_axle.at_axle import sensor_from
from analysis.trace.live import LiveReader
from gui.models.job import JobCard
from gui.models.judge import Judge
from gui.models.relay import Analyst, Found, Relay, Samples
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.edges.units import torque_factor
from logger.header import Axle, Decision, Lever, Limit, Test
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason
from tests.analysis.simulated import FACTS, HUB, ONE_STUD, ZERO, run_of

HEAVY = msgspec.structs.replace(ONE_STUD, weight_kg=3.0)
CROSS = Lever(fixture="cross-bar", length_mm=450.0, stud_circle_mm=114.3, angle_deg=0.0)
COUPLE = Lever(fixture="couple")
HELD = Lever(fixture="held side", weight_kg=2.5, centroid_mm=210.0)
IN_LINE = Lever(fixture="in-line")
AT_LEAST = Limit(quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="invented")
BETWEEN = Limit(quantity="rotating mean", kind="band", unit="lbf·ft", lower=20.0, upper=60.0, source="invented")
AT_MOST = Limit(quantity="rotating maximum", kind="max", unit="N·m", upper=35.0, source="invented")
CASES = {
    "angle and a heavy lever": {"lever": HEAVY, "angle": True},
    "no angle": {"lever": ONE_STUD},
    "gain": {"lever": HEAVY, "angle": True, "gain": 1.10},
    "gain with its uncertainty": {"lever": ONE_STUD, "gain": 0.93, "gain_u": 0.01},
    "reversed": {"lever": HEAVY, "angle": True, "sign": "reversed"},
    "another unit": {"lever": ONE_STUD, "angle": True, "unit": "lbf·ft"},
    "no zero": {"lever": HEAVY, "angle": True, "zero": None},
    "a second zero": {"lever": HEAVY, "zero": msgspec.structs.replace(ZERO, after_nm=0.55)},
    "hub centre": {"lever": HUB, "angle": True},
    "cross-bar": {"lever": CROSS, "angle": True},
    "couple": {"lever": COUPLE},
    "held side": {"lever": HELD},
    "in line": {"lever": IN_LINE},
    "at least": {"lever": ONE_STUD, "limit": AT_LEAST},
    "between": {"lever": HEAVY, "angle": True, "gain": 1.1, "limit": BETWEEN},
    "at most": {"lever": HUB, "limit": AT_MOST, "rule": "guarded acceptance"},
    "two sources": {"lever": HEAVY, "angle": True, "apart": True},
}


def feed(relay: Relay, time_s, torque, angle, *, apart: bool) -> None:
    """Send the run in uneven pieces; ``apart``: the angle as a second source, half a sample later."""
    if apart:
        order = np.argsort(np.concatenate((time_s, time_s + 0.002)), kind="stable")
        none = np.full(len(time_s), np.nan)
        source = np.repeat((1.0, 2.0), len(time_s))[order]
        torque, angle = np.concatenate((torque, none))[order], np.concatenate((none, angle))[order]
        time_s = np.sort(np.concatenate((time_s, time_s + 0.002)), kind="stable")
    begin, rng = 0, np.random.default_rng(3)
    while begin < len(time_s):
        part = slice(begin, begin + int(rng.integers(1, 60)))
        columns = {"torque": torque[part]}
        if angle is not None:
            columns["angle"] = angle[part]
        if apart:
            columns["source"] = source[part]
        relay.on_block(Block(time_s[part], columns))
        begin = part.stop
    relay.on_end(Ending(EndReason.STOPPED, ""))


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_live_is_the_file(case: dict, tmp_path: Path) -> None:
    gain, unit, apart = case.get("gain", 1.0), case.get("unit", "N·m"), case.get("apart", False)
    run = run_of(one_stud=case["lever"].fixture == "one stud", angle=case.get("angle", False), gain=gain)
    known = {"gain": case.get("gain"), "gain_u": case.get("gain_u"), "sign": case.get("sign", "as shown"), "unit": unit}
    known = {name: value for name, value in known.items() if value is not None and value != "as shown"}
    card = JobCard()
    card.put(
        description=Description(
            name="x", transducer=msgspec.structs.replace(FACTS, **known), lines=LineFormat(template="{torque}")
        ),
        lever=case["lever"],
        limit=case.get("limit"),
        axle=Axle(type="clutch pack"),
        test=Test(place="bench", held="other side", gear="neutral", side="right"),
        decision=Decision(rule=case.get("rule", "three-way")),
    )
    judge = Judge(card, case.get("zero", ZERO))
    columns = [Column("torque", card.unit)]
    columns += [Column("angle", "deg")] if run.angle_deg is not None else []
    columns += [Column("source", "")] if apart else []
    path = tmp_path / "live.csv"
    relay = Relay(card.unit, card.sign)
    header = card.header("pulls", started=None, zero=judge.zero, simulated=True)
    relay.begin(RecordingWriter(path, header, columns), LiveReader(sensor_from(card.facts)))
    delivered = np.round(run.torque_nm * card.sign / torque_factor(card.unit), 4)
    angle = None if run.angle_deg is None else np.round(run.angle_deg, 1)
    feed(relay, run.time_s + 5.0, delivered, angle, apart=apart)
    Analyst(relay).run()
    pulls = [news.pull for news in relay.news if isinstance(news, Found)]
    said, reading = judge.judgement(pulls, [True] * len(pulls)), read_file(path)

    assert len(pulls) >= 4
    assert said.job
    assert pulls == [read.pull for read in reading.pulls]
    for live, read in zip(said.budgets, reading.pulls, strict=True):
        assert live == read.axle
    assert said.results == tuple(read.result for read in reading.pulls)
    assert said.job == reading.job
    assert said.result == reading.result
    assert (said.result is None) == (case.get("limit") is None)
    assert set(said.notes) <= set(reading.problems)
    if case.get("angle"):
        assert all(pull.turned is not None for pull in pulls)


def test_the_large_figure_has_the_gain_divided_out() -> None:
    """The highest torque that the window shows is about the highest of its pulls, not that times the gain."""
    from gui.models.run import TestRun

    card = JobCard()
    facts = msgspec.structs.replace(FACTS, gain=1.1)
    card.put(description=Description(name="x", transducer=facts, lines=LineFormat(template="{torque}")), lever=HUB)
    run = TestRun(card, Judge(card))
    run.samples(Samples(np.arange(20) * 0.01, np.full(20, 55.0), None, ()))
    assert run.axle_now() == pytest.approx(50.0)
    assert card.scale == pytest.approx(card.factor / 1.1)
