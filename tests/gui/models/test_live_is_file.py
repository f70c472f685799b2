"""A job judged while it is recorded says what its file says: every pull, row, note, value, interval and result."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import numpy as np
import pytest

from analysis.pipeline import read_file
from analysis.verdict.job import Job
from analysis.verdict.sides import with_drag
from gui.models.caught import PullList
from gui.models.job import JobCard
from gui.models.relay import Analyst, FoundPull, Relay, ScreenSamples
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.edges.small_file import hash_of
from logger.edges.units import reading_factor
from logger.header import Axle, Correction, Decision, Lever, Limit, RecordingSource, Test
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import add_correction, change_sidecar
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from logger.virtual.lever import LeverModel as VirtualLever
from logger.virtual.physics import SimulatedRun, simulate
from logger.virtual.scenarios import healthy
from tests.analysis.simulated import FACTS, HUB, ONE_STUD, TRUE_ZERO_NM, ZERO

if TYPE_CHECKING:
    from analysis.verdict.recorded import RecordingReading

BEGUN = datetime(2026, 1, 1, tzinfo=UTC)
HEAVY = msgspec.structs.replace(ONE_STUD, weight_kg=3.0)
LEVERS = {
    "one stud": ONE_STUD,
    "hub centre": HUB,
    "cross-bar": Lever(fixture="cross-bar", length_mm=450.0, stud_circle_mm=114.3, angle_deg=0.0),
    "couple": Lever(fixture="couple"),
    "held side": Lever(fixture="held side", weight_kg=2.5, centroid_mm=210.0),
    "in line": Lever(fixture="in-line"),
    "dead weight": Lever(fixture="dead weight", radius_mm=450.0),
    "force at radius": Lever(fixture="force at radius", radius_mm=400.0, radius_mm_u=1.0, pull_angle_deg=5.0),
    "cord": Lever(fixture="cord", radius_mm=200.0, cord_mm=4.0),
}
AT_LEAST = Limit(quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="invented")
BETWEEN = Limit(quantity="rotating mean", kind="band", unit="lbf·ft", lower=20.0, upper=60.0, source="invented")
AT_MOST = Limit(quantity="rotating maximum", kind="max", unit="N·m", upper=35.0, source="invented")
RATIO = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="invented")
FULL_SCALE = {"accuracy_percent_of_reading": None, "accuracy_percent_of_full_scale": 0.5}
CASES: dict[str, dict] = {name: {"lever": lever, "limit": AT_LEAST} for name, lever in LEVERS.items()}
CASES |= {
    "angle and a heavy lever": {"lever": HEAVY, "angle": True},
    "gain": {"lever": HEAVY, "angle": True, "gain": 1.10},
    "gain with its uncertainty": {"gain": 0.93, "facts": {"gain_u": 0.01}},
    "reversed": {"lever": HEAVY, "angle": True, "facts": {"sign": "reversed"}},
    "another unit": {"angle": True, "unit": "lbf·ft"},
    "kilograms on a lever": {"lever": LEVERS["force at radius"], "unit": "kgf", "limit": BETWEEN, "angle": True},
    "pounds on a cord, reversed": {"lever": LEVERS["cord"], "unit": "lbf", "facts": {"sign": "reversed"}},
    "no zero": {"lever": HEAVY, "angle": True, "zero": None},
    "a second zero in the header": {"lever": HEAVY, "zero": msgspec.structs.replace(ZERO, after_nm=0.55)},
    "noise": {"lever": HEAVY, "angle": True, "noise_nm": 0.8, "limit": AT_LEAST},
    "accuracy of full scale": {"facts": FULL_SCALE, "limit": AT_LEAST},
    "nothing stated of the transducer": {"facts": {"accuracy_percent_of_reading": None, "capacity_nm": None}},
    "between": {"lever": HEAVY, "angle": True, "gain": 1.1, "limit": BETWEEN},
    "at most": {"lever": HUB, "limit": AT_MOST, "rule": "guarded acceptance"},
    "simple": {"limit": AT_LEAST, "rule": "simple"},
    "ratio": {"limit": RATIO, "test": {"held": "none", "gear": "in gear"}},
    "case held against a limit for the other side": {
        "limit": msgspec.structs.replace(AT_LEAST, held="other side", place="bench"),
        "test": {"held": "case"},
    },
    "an axle without packs": {"limit": AT_LEAST, "axle": Axle(type="open")},
    "two sources": {"lever": HEAVY, "angle": True, "apart": True},
    "beyond the range": {"limit": AT_LEAST, "overload": True},
}


@cache
def run_of(*, one_stud: bool, angle: bool, gain: float, noise_nm: float, seed: int = 0) -> SimulatedRun:
    """Simulate five pulls on sound packs, the lever 20 degrees above the horizontal at hand-off."""
    scenario = healthy()
    lever = VirtualLever(stud_radius_m=0.05715 if one_stud else 0.0, mass_kg=2.5, centroid_m=0.21, start_deg=20.0)
    sensor = replace(scenario.sensor, rate_hz=250.0, zero_nm=TRUE_ZERO_NM, gain=gain, noise_nm=noise_nm)
    return simulate(replace(scenario, lever=lever, sensor=sensor, angle_step_deg=0.1 if angle else None), seed)


class Bench:
    """One card, its transducer, and what is recorded with it."""

    def __init__(self, folder: Path, case: dict, seed: int = 0) -> None:
        self.folder, self.case = folder, case
        unit, lever = case.get("unit", "N·m"), case.get("lever", ONE_STUD)
        force = lever.fixture in {"force at radius", "cord"}
        unit = "N" if force and unit == "N·m" else unit
        facts = {"unit": unit, "gain": case.get("gain"), **case.get("facts", {})}
        test = {"place": "bench", "held": "other side", "gear": "neutral", "side": "right"} | case.get("test", {})
        self.card = JobCard()
        self.card.put(
            description=Description(
                name="x",
                measures="force" if force else "torque",
                transducer=msgspec.structs.replace(FACTS, **facts),
                lines=LineFormat(template="{torque}"),
            ),
            lever=lever,
            limit=case.get("limit"),
            axle=case.get("axle", Axle(type="clutch pack")),
            test=Test(**test),
            decision=Decision(rule=case.get("rule", "three-way")),
        )
        self.run = run_of(
            one_stud=lever.fixture == "one stud",
            angle=case.get("angle", False),
            gain=case.get("gain") or 1.0,
            noise_nm=case.get("noise_nm", 0.03),
            seed=seed,
        )
        sign = -1.0 if facts.get("sign") == "reversed" else 1.0
        per_unit = sign * reading_factor(unit) * (0.3 if force else 1.0)
        self.delivered = np.round(self.run.torque_nm / per_unit, 4)
        self.angle = None if self.run.angle_deg is None else np.round(self.run.angle_deg, 1)

    def record(self, name: str = "pulls", purpose: str = "pulls", zero: object = "card") -> tuple[Path, PullList, Job]:
        """Record the run and read it while it is recorded."""
        zero = self.case.get("zero", ZERO) if zero == "card" else zero
        header = self.card.header(purpose, started=BEGUN, zero=zero, simulated=True)
        apart = self.case.get("apart", False)
        columns = [Column("torque", self.card.unit)]
        columns += [Column("angle", "deg")] if self.angle is not None else []
        columns += [Column("source", "")] if apart else []
        path, relay = self.folder / f"{name}.csv", Relay(self.card.calibration())
        job = Job(header, self.card.unit)
        relay.begin(RecordingWriter(path, header, columns), job)
        self._feed(relay, apart=apart)
        Analyst(relay).run()
        listed = PullList(self.card)
        for news in relay.news:
            if isinstance(news, FoundPull):
                listed.add(news.start_s, news.pull, news.job)
        return path, listed, job

    def _feed(self, relay: Relay, *, apart: bool) -> None:
        """Send the run in uneven pieces; ``apart``: the angle as a second source, half a sample later."""
        time_s, torque, angle = self.run.time_s + 5.0, self.delivered, self.angle
        if apart:
            order = np.argsort(np.concatenate((time_s, time_s + 0.002)), kind="stable")
            none = np.full(len(time_s), np.nan)
            source = np.repeat((1.0, 2.0), len(time_s))[order]
            torque, angle = np.concatenate((torque, none))[order], np.concatenate((none, angle))[order]
            time_s = np.sort(np.concatenate((time_s, time_s + 0.002)), kind="stable")
        begin, rng = 0, np.random.default_rng(3)
        over_s = time_s[0] + self.run.truth[0].breakaway_s if self.case.get("overload") else np.inf
        while begin < len(time_s):
            part = slice(begin, begin + int(rng.integers(1, 60)))
            columns = {"torque": torque[part]}
            if angle is not None:
                columns["angle"] = angle[part]
            if apart:
                columns["source"] = source[part]
            here = time_s[part][0] <= over_s <= time_s[part][-1]
            events = (Event(EventKind.OVERLOAD, 0, 3, "beyond", float(over_s)),) if here else ()
            relay.on_block(Block(time_s[part], columns, events))
            begin = part.stop
        relay.on_end(Ending(EndReason.STOPPED, ""))


def assert_same(live: RecordingReading, file: RecordingReading) -> None:
    """Everything that a job says, bit for bit; a file also knows its name, its hashes and its samples."""
    assert len(file.pulls) >= 4
    for one, other in zip(live.pulls, file.pulls, strict=True):
        assert one.pull == other.pull
        assert list(one.axle) == list(other.axle)
        for quantity, budget in one.axle.items():
            assert budget == other.axle[quantity]
            assert [(row.input, row.contribution) for row in budget.rows] == [
                (row.input, row.contribution) for row in other.axle[quantity].rows
            ]
        assert (one.result, one.counts, one.corrected) == (other.result, other.counts, other.corrected)
    assert live.trace == file.trace
    assert live.at == file.at
    assert live.job == file.job
    assert live.bounds == file.bounds
    assert live.result == file.result
    assert live.main == file.main
    assert live.problems == file.problems
    assert live.unit == file.unit
    assert live.header is not None
    assert file.header is not None
    assert live.header == msgspec.structs.replace(file.header, time_from=None)


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_live_is_the_file(case: dict, tmp_path: Path) -> None:
    bench = Bench(tmp_path, case)
    path, listed, job = bench.record()
    read = read_file(path)
    live = listed.reading
    assert live is not None
    assert listed.pulls[-1].job is job
    assert_same(live, read)
    assert (live.result is None) == (case.get("limit") is None)
    if case.get("angle"):
        assert all(pull.pull.turned is not None for pull in live.pulls)
    if case.get("lever", ONE_STUD).fixture == "dead weight":
        assert not live.job
        assert "takes a mass" in " ".join(listed.pulls[0].notes)
    else:
        assert live.job
    if case.get("overload"):
        assert any("beyond the transducer's range" in note for note in listed.pulls[0].notes)
    if case.get("limit") is RATIO:
        assert listed.value is not None
        assert (listed.value.state, listed.value.quantity) == ("", "rotating maximum")
        assert live.half


def test_a_force_is_read_as_the_torque_that_it_makes(tmp_path: Path) -> None:
    """A force transducer works in the window as from a file: F R cos delta with R 0.4 m, of a pull of about 0.3 m."""
    bench = Bench(tmp_path, CASES["kilograms on a lever"])
    _path, listed, _job = bench.record()
    couple = Bench(tmp_path, {"lever": LEVERS["couple"]})
    couple.delivered = bench.run.torque_nm
    _path, torque, _job = couple.record("torque")
    assert listed.value is not None
    assert torque.value is not None
    ratio = 0.4 * np.cos(np.radians(5.0)) / 0.3
    values = {v.budget.quantity: v.budget.value for v in torque.reading.job}
    assert listed.value.value.nm == pytest.approx(values[listed.value.quantity] * ratio, rel=2e-3)
    lever = bench.card.lever
    bench.card.put(lever=msgspec.structs.replace(lever, radius_mm=500.0))
    before = listed.value
    listed.again()
    assert listed.value == before, "the pulls were read with the first radius, and are judged with it"
    assert "its pulls keep the first" in " ".join(listed.reading.problems)


def test_pulls_that_are_left_out(tmp_path: Path) -> None:
    bench = Bench(tmp_path, {"limit": AT_LEAST, "angle": True})
    path, listed, _job = bench.record()
    listed.reject(2, "jerked")
    listed.reject(4, "slipped off")
    for number in (2, 4):
        start = listed.pulls[number - 1].pull.start_s
        add_correction(path, Correction(at=BEGUN, reason="x", pull_start_s=start, exclude=True))
    read = read_file(path)
    assert [p.counts for p in read.pulls] == [p.counts for p in listed.reading.pulls]
    assert sum(p.counts for p in read.pulls) == len(read.pulls) - 2
    assert listed.reading.job == read.job
    assert listed.reading.result == read.result
    assert [p.result for p in listed.reading.pulls] == [p.result for p in read.pulls]
    listed.undo()
    assert listed.reading.job != read.job


@pytest.mark.parametrize("gain", [None, 1.1])
def test_corrections(tmp_path: Path, gain: float | None) -> None:
    """Moved boundaries, breakaway and stretch: a live job that is corrected is its file with a sidecar."""
    bench = Bench(tmp_path, {"limit": BETWEEN, "angle": True, "gain": gain, "facts": FULL_SCALE})
    path, listed, job = bench.record()
    pulls = [caught.pull for caught in listed.pulls]
    made = {"at": BEGUN, "reason": "x", "by": "A"}
    corrections = [
        Correction(**made, pull_start_s=pulls[0].start_s, rotating_start_s=pulls[0].rotating.start_s + 0.4),
        Correction(**made, pull_start_s=pulls[1].start_s, breakaway_s=pulls[1].breakaway.time_s + 0.02),
        Correction(**made, pull_start_s=pulls[2].start_s, start_s=pulls[2].start_s - 0.1, end_s=pulls[2].end_s - 0.2),
        Correction(**made, pull_start_s=pulls[3].start_s, exclude=True),
        Correction(**made, pull_start_s=900.0, exclude=True),
    ]
    for correction in corrections:
        add_correction(path, correction)
    read = read_file(path)
    axis_s = np.round(bench.run.time_s + 5.0 - (bench.run.time_s[0] + 5.0), 6)
    live = job.judge(job.corrected(corrections, axis_s, bench.delivered))
    assert_same(live, read)
    assert [p.left_out for p in live.pulls] == [p.left_out for p in read.pulls]
    assert any("none starts there" in text for text in live.problems)
    assert live.pulls[0].pull != pulls[0]


def test_what_is_stated_after_the_recording_has_begun(tmp_path: Path) -> None:
    """Another lever, limit, rule, axle and kind of test, and a second zero: the sidecar says it to the file."""
    bench = Bench(tmp_path, {"angle": True, "gain": 1.05})
    path, listed, job = bench.record()
    assert listed.reading.result is None
    stated = {
        "lever": HEAVY,
        "limit": BETWEEN,
        "decision": Decision(rule="guarded rejection", guard="1.645 u"),
        "axle": Axle(type="cone clutch"),
        "test": Test(place="bench", held="other side", gear="neutral", side="left"),
    }
    bench.card.put(**stated)
    after = msgspec.structs.replace(ZERO, after_nm=0.7)
    job.take_zero(after)
    listed.again()
    test = msgspec.structs.replace(stated["test"], purpose="pulls", dwell_s=bench.card.dwell_s)
    change_sidecar(path, lambda found: msgspec.structs.replace(found, zero=after, **(stated | {"test": test})))
    read = read_file(path)
    remark = [text for text in read.problems if "was set after the recording had begun" in text]
    assert len(remark) == 1
    assert_same(listed.reading, replace(read, problems=tuple(t for t in read.problems if t not in remark)))
    assert listed.reading.result is not None
    assert listed.value.state == str(read.result.state)


def test_a_zero_taken_anew_in_mid_job(tmp_path: Path) -> None:
    """Each pull counts from the zero of its own recording; together they are judged as both files' pulls."""
    bench = Bench(tmp_path, {"limit": AT_LEAST, "angle": True, "lever": HEAVY})
    other = msgspec.structs.replace(ZERO, value_nm=0.9)
    first_path, first, _ = bench.record("first")
    second_path, second, _ = bench.record("second", zero=other)
    both = PullList(bench.card)
    for start_s, listed in ((0.0, first), (500.0, second)):
        for caught in listed.pulls:
            both.add(start_s, caught.pull, caught.job)
    files = read_file(first_path), read_file(second_path)
    assert files[0].pulls[0].axle != files[1].pulls[0].axle, "the zeros differ"
    each = [p for read in files for p in read.pulls]
    assert [p.axle for p in both.reading.pulls] == [p.axle for p in each]
    assert [p.pull for p in both.reading.pulls] == [p.pull for p in each]
    assert len(both.reading.job[0].values) == sum(len(read.job[0].values) for read in files)
    for caught in first.pulls:
        both.reject(caught.number, "made before the new zero")
    assert both.reading.job == files[1].job
    assert both.reading.result == files[1].result


@pytest.mark.parametrize("gain", [None, 1.1])
def test_the_both_free_baseline(tmp_path: Path, gain: float | None) -> None:
    case = {"lever": HUB, "angle": True, "gain": gain, "limit": AT_LEAST}
    free_path, free, _ = Bench(tmp_path, case, seed=4).record("drag", "drag")
    path, held, _ = Bench(tmp_path, case).record()
    source = RecordingSource(file=free_path.name, sha256=hash_of(free_path))
    change_sidecar(path, lambda found: msgspec.structs.replace(found, both_free=source))
    read = read_file(path)
    assert free.reading.header.test.held == "none"
    live = with_drag(held.reading, free.reading)
    assert live.drag is not None
    assert read.drag is not None
    assert live.drag.test == read.drag.test
    assert any(mean.budget is not None for mean in live.drag.test.means)
    assert (live.job, live.result) == (read.job, read.result)


def test_the_large_figure_has_the_gain_divided_out() -> None:
    """The highest torque that the window shows is about the highest of its pulls, not that times the gain."""
    from gui.models.run import TestRun

    card = JobCard()
    facts = msgspec.structs.replace(FACTS, gain=1.1)
    card.put(description=Description(name="x", transducer=facts, lines=LineFormat(template="{torque}")), lever=HUB)
    run, shown = TestRun(card), np.full(20, 55.0)
    run.samples(ScreenSamples(np.arange(20) * 0.01, shown, None, (), shown))
    assert run.axle_now() == pytest.approx(50.0)
    assert card.scale().torque(1.0) == pytest.approx(card.lever_factor / 1.1)
    assert card.as_read(card.scale().torque(7.0)) == pytest.approx(7.0)
