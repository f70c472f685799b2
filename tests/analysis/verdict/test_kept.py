"""From pulls to a result: rules over their range, and the whole contract of recordings, held against what was kept."""

from __future__ import annotations

import math
from datetime import UTC, date, datetime
from pathlib import Path

import msgspec
import numpy as np
import pytest

from analysis.pipeline import Asked, read_file, reading_of
from analysis.to_axle.at_axle import Level
from analysis.trace.results import Breakaway, Code, Elastic, Pull, Reason, Rotating, Round
from analysis.uncertainty.budget import Input, propagate
from analysis.verdict import (
    adequacy,
    confirm,
    corrected,
    elastic,
    judge,
    limits,
    orders,
    overloads,
    repeats,
    risk,
    scatter,
    sides,
)
from analysis.verdict.dialled import judge_dialled
from analysis.verdict.limits import Guard, Rule
from analysis.verdict.setup import setup_of
from logger.header import Axle, Correction, Decision, Header, Lever, Limit, Test, TransducerFacts, Zero
from logger.recordings.dialled import DialReading
from logger.recordings.files import Trace
from logger.samples import Event, EventKind
from tests.analysis.made import Shape, trace
from tests.kept import everything, kept, tried
from tests.steps import steps

ROOM = "analysis.verdict"
SEASON = Path(__file__).parents[3] / "recordings"
AT = datetime(2026, 5, 16, 10, 0, tzinfo=UTC)
HUB = Lever(fixture="hub centre", weight_kg=0.8, centroid_mm=180.0, start_angle_deg=-10.0)
STUD = Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, weight_kg=2.0, centroid_mm=200)
ZERO = Zero(value_nm=0.4, value_nm_u=0.02, how="lever off", after_nm=0.5)
FACTS = TransducerFacts(serial="T-1", capacity_nm=100.0, accuracy_percent_of_reading=0.5, resolution_nm=0.01)
MINIMUM = Limit(
    quantity="breakaway", kind="min", unit="N·m", lower=45.0, source="invented", held="other side", gear="neutral"
)
BAND = Limit(quantity="rotating mean", kind="band", unit="lbf·ft", lower=25.0, upper=32.0, source="invented", page="3")
MOST = Limit(quantity="rotating maximum", kind="max", unit="kgf·m", upper=4.3, source="invented", condition="new")
RATIO = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="invented")
LIMITS = (MINIMUM, BAND, MOST, RATIO)


def made(name: str) -> Trace:
    """Give a trace by formula, rounded so that no machine's last bits are in it."""
    kinds = {
        "plain": (Shape(), Shape(breakaway_nm=47.0), Shape(breakaway_nm=45.2)),
        "outlier": (Shape(), Shape(), Shape(), Shape(breakaway_nm=60.0, rotating_nm=52.0), Shape()),
        "warming": tuple(Shape(breakaway_nm=52.0 - k, rotating_nm=44.0 - k) for k in range(6)),
        "both ways": (Shape(), Shape(breakaway_nm=50.0), Shape(), Shape(breakaway_nm=50.0)),
        "one": (Shape(),),
        "none": (),
        "free": (Shape(breakaway_nm=9.0, rotating_nm=8.0),) * 3,
        "double": (Shape(breakaway_nm=92.0, rotating_nm=80.0),) * 2,
    }
    time_s, torque = trace(
        *kinds[name], rate_hz=100.0, noise_nm=0.03, signs=(1, -1, 1, -1) if name == "both ways" else (), seed=len(name)
    )
    angle = np.cumsum(np.where(np.abs(torque) > 20, 0.35, 0.0)) if name in {"plain", "warming"} else None
    columns = {} if angle is None else {"angle_deg": np.round(angle + torque / 50, 1)}
    if name == "warming":
        columns["held_angle_deg"] = np.round(torque / 12, 1)
    events = (
        (Event(EventKind.OVERLOAD, 500, 2, "", 5.0), Event(EventKind.GAP, 900, 2, "", 9.0)) if name == "outlier" else ()
    )
    return Trace(
        f"{name}.csv", Header(), time_s, np.round(torque, 4), "N·m", columns, events, "closed", "0" * 64, None, ()
    )


def header(**changes: object) -> Header:
    whole = {
        "started": AT,
        "lever": HUB,
        "zero": ZERO,
        "transducer": FACTS,
        "limit": MINIMUM,
        "axle": Axle(tag="1", ratio=3.9, type="clutch plate"),
        "test": Test(place="car", held="other side", gear="neutral", side="left", direction="clockwise"),
    }
    return Header(**(whole | changes))


HEADERS = {
    "whole": header(),
    "bare": Header(),
    "band": header(limit=BAND, decision=Decision(rule="simple")),
    "most": header(limit=MOST, lever=STUD, zero=None),
    "ratio": header(limit=RATIO),
    "case": header(test=Test(held="case", side="right", direction="counter-clockwise")),
    "guarded": header(
        limit=MINIMUM, decision=Decision(rule="guarded acceptance", guard="1.645 u"), zero=Zero(value_nm=0.3)
    ),
    "coarse": header(
        transducer=msgspec.structs.replace(
            FACTS, resolution_nm=2.0, certificate_due=date(2026, 1, 1), sign="none", certificate="C"
        )
    ),
    "free": header(test=Test(held="none", gear="in gear"), limit=None),
    "small": header(transducer=TransducerFacts(capacity_nm=900.0, accuracy_percent_of_full_scale=1.0)),
    "open": header(axle=Axle(type="open"), zero=Zero(value_nm=0.4, how="lever hanging")),
}
BUDGETS = {("plain", "whole"), ("plain", "most"), ("warming", "whole")}
CASES = [(t, h) for t in ("plain", "outlier", "both ways") for h in HEADERS] + [
    (t, "whole") for t in ("warming", "one", "none", "free", "double")
]


@pytest.mark.parametrize(("name", "head"), CASES)
def test_kept_contract_of_a_made_recording(name, head):
    found = made(name)
    found = (
        msgspec.structs.replace(found, header=HEADERS[head])
        if isinstance(found, msgspec.Struct)
        else _with(found, HEADERS[head])
    )
    with steps(ROOM, "analysis.to_axle") as said:
        reading = tried(lambda: reading_of(found, Asked()).to_json(budgets=(name, head) in BUDGETS))
        more = []
        if head == "whole":
            for asked in (
                Asked(repeatability=0.02),
                Asked(drop_outliers=True),
                Asked(zero="start"),
                Asked(rule=Rule.SIMPLE, guard=Guard.U95),
                Asked(held="case"),
            ):
                again = tried(lambda asked=asked: reading_of(found, asked).to_json())
                more.append([again[key] for key in ("job", "result", "problems")] if isinstance(again, dict) else again)
    kept("verdict", f"{name} {head}", [reading, more, said if head == "whole" else 0])


def _with(found: Trace, head: Header) -> Trace:
    from dataclasses import replace

    return replace(found, header=head)


def test_kept_contract_of_corrected_recordings():
    found = _with(made("plain"), header())
    plain = reading_of(found, Asked())
    first, second = (p.pull for p in plain.pulls[:2])
    changes = [
        {"pull_start_s": first.start_s, "exclude": True},
        {"pull_start_s": first.start_s + 0.3, "start_s": first.start_s + 0.1},
        {
            "pull_start_s": second.start_s,
            "rotating_start_s": second.rotating.start_s + 1,
            "rotating_end_s": second.rotating.end_s - 0.5,
        },
        {"pull_start_s": second.start_s, "breakaway_s": second.breakaway.time_s + 0.2},
        {"pull_start_s": 900.0, "exclude": True},
        {"exclude": True},
        {"pull_start_s": second.start_s, "end_s": second.end_s - 1.0},
        {"pull_start_s": second.start_s, "rotating_start_s": 9.0, "rotating_end_s": 8.0},
        {"pull_start_s": second.start_s, "start_s": 99.0},
        {"pull_start_s": first.start_s, "as_found": True},
    ]
    single = [Correction(at=AT, reason="seen", by="b", **one) for one in changes]
    source = corrected.CalibratedTrace(found.time_s, found.torque, 0.03, 0.0025, 0.05)
    with steps(ROOM) as said:
        pulls = [p.pull for p in plain.pulls]
        answers = [tried(corrected.apply_corrections, pulls, [one], source) for one in single]
        answers += [tried(corrected.apply_corrections, pulls, single, source), tried(corrected.widened, first, 0.3)]
    kept("verdict", "corrected", [answers, said])


@pytest.mark.parametrize(
    "name",
    [
        "01-arrival-left",
        "01-arrival-right",
        "02-build-shim-30",
        "03-run-in-060",
        "05-event-5",
        "06-chatter",
        "06-clumsy-hand",
        "06-unclosed",
    ],
)
def test_kept_contract_of_the_season(name, monkeypatch):
    monkeypatch.chdir(SEASON)
    kept("verdict", name, read_file(f"{name}.csv").to_json())


def test_kept_sides():
    def read(name: str, **test: str):
        return reading_of(
            _with(made(name), header(limit=None, test=Test(place="car", gear="neutral", **test))), Asked()
        )

    left, right = read("plain", held="other side", side="left"), read("warming", held="other side", side="right")
    free, double, ways = (
        read("free", held="none"),
        read("double", held="case", side="right"),
        read("both ways", held="other side", side="left"),
    )
    with steps(ROOM, "analysis.to_axle") as said:
        answers = []
        for held in (
            {"left": left, "right": right},
            {"left": left},
            {"right": right, "left": ways},
            {"right": double, "left": left},
            {},
        ):
            for both in (free, None, left):
                answers.append(tried(lambda h=held, b=both: sides.drag_test(h, b).to_json()))
        answers += [tried(lambda a=a: sides.with_drag(a, free).to_json()["drag"]) for a in (left, ways, double, free)]
        answers += [sides.unfit(one) for one in (left, right, free, double)]
        answers += [tried(sides.both_ends, a, b) for a, b in ((left, right), (left, free))]
        answers += [
            tried(sides.greatest_pair, double, free),
            tried(sides.gear_ratio, double, free),
            tried(sides.gear_ratio, free, ways),
        ]
        answers += [tried(confirm.confirmation, a, b) for a, b in ((left, left), (left, ways), (left, free))]
    kept("verdict", "sides", [answers, said])


# ---------------------------------------------------------------------- the rules
def budget(value: float, u: float = 0.5, dof: float = math.inf):
    inputs = (Input("trace", 0.0, u, dof=dof), Input("calibration", 1.0, 0.004, "1", shared=True))
    return propagate("breakaway", lambda x: x["trace"] + x["calibration"] * value, inputs)


VALUES = (
    [50.0],
    [50.0, 51.0],
    [50, 51, 50.5],
    [50, 50, 50],
    [50, 51, 50.5, 58],
    [60, 57, 55, 54, 53.5, 53.2],
    [50, 52, 50, 52, 50, 52, 50],
    list(range(40, 60)),
    [],
    [50, 50.1, 49.9, 50.2, 50, 70],
    [50, 50.1, 49.9, 30, 50, 70, 50.05, 50.2],
)


def test_kept_scatter():
    with steps(ROOM) as said:
        answers = [tried(call, v) for call in (scatter.outliers, scatter.persistence, scatter.warm_up) for v in VALUES]
        answers += [tried(scatter.outliers, v, least) for v in VALUES for least in (0.5, 5.0)]
        near = [[50.0, 50.1, 49.9, 50.2, 50.0, 50.15, 49.95, round(50.3 + 0.05 * n, 2)] for n in range(20)]
        answers += [tried(scatter.outliers, v[-k:]) for v in near for k in (4, 6, 8)]
        answers += [tried(scatter.median_factor, n) for n in range(1, 14)]
        priors = [scatter.Prior(*one) for one in ((0.02, 10.0, True), (0.05, 3.0, False), (0.0, math.inf, True))]
        answers += [tried(scatter.Prior.of, one) for one in (None, 0.0, 0.02, -1.0, 2.0)]
        answers += [
            tried(scatter.scatter_of, sd, n, 50.0, p)
            for sd in (0.0, 0.4, 3.0)
            for n in (1, 2, 3, 10, 40)
            for p in priors
        ]
    kept("verdict", "scatter", [answers, said])


def test_kept_values_of_a_job():
    with steps(ROOM) as said:
        answers = []
        for values in VALUES:
            for more in ({}, {"repeatability": 0.03}, {"drop_outliers": True}, {"direction": -1}):
                job = tried(lambda v=values, m=more: repeats.job_value([budget(float(one)) for one in v], **m))
                answers.append(job)
                if isinstance(job, list) and not more:
                    made_ = repeats.job_value([budget(float(one)) for one in values])
                    answers += [tried(repeats.further_pulls, made_, wanted) for wanted in (0.1, 0.5, 1.0, 5.0)]
                    answers += [tried(repeats.single_pull, budget(50.0), made_)]
    kept("verdict", "job values", [answers, said])


def test_kept_results():
    with steps(ROOM) as said:
        answers = []
        for limit in LIMITS:
            bounds = limits.bounds_from(limit)
            answers.append(everything(bounds))
            near = [b for b in (bounds.lower, bounds.upper) if b is not None]
            for value in [b * f for b in near for f in (0.9, 0.98, 0.995, 1.0, 1.005, 1.02, 1.1)]:
                for rule in Rule:
                    for guard in Guard:
                        found = limits.decide(value, 0.01 * value, bounds, dof=5, rule=rule, guard=guard)
                        answers.append(
                            [
                                found.state.name,
                                found.probability,
                                found.words if callable(found.words) else str(found.words)[:90],
                            ]
                        )
                answers.append(tried(lambda v=value, b=bounds: limits.decide(v, 0.01 * v, b).to_json()))
            answers.append(tried(limits.not_valid, bounds, "one", "two"))
        answers += [
            limits.percent(p)
            for p in (0.0, 1e-5, 0.004, 0.005, 0.05, 0.5, 0.949, 0.95, 0.995, 0.9951, 0.99999, 1.0, math.nan)
        ]
        answers += [limits.rule_words(rule, guard) for rule in Rule for guard in Guard] + [
            limits.guard_band(0.5, dof, g) for dof in (3, math.inf) for g in Guard
        ]
        answers += [
            tried(limits.decided_by, d, r, g)
            for d in (None, Decision(rule="simple"))
            for r in (None, Rule.THREE_WAY)
            for g in (None, *Guard)
        ]
        bad = (
            {"lower": None},
            {"lower": -1.0},
            {"unit": "furlong"},
            {"upper": 50.0},
            {"lower": 1.05e9},
            {"lower": 1e9},
            {"lower": 1e-6},
            {"lower": 0.95e-6},
            {"source": " "},
            {"kind": "band", "upper": 40.0},
        )
        answers += [tried(limits.bounds_from, msgspec.structs.replace(MINIMUM, **one)) for one in bad]
    kept("verdict", "results", [answers, said])


def test_kept_risks():
    with steps(ROOM) as said:
        answers = []
        for made_ in (risk.normal_population, risk.torque_population, risk.gamma_population):
            for a, b in ((50.0, 3.0), (2.0, 1.5), (50.0, 0.0), (-1.0, 1.0)):
                population = None
                try:
                    population = made_(a, b)
                except (ValueError, ZeroDivisionError) as error:
                    answers.append(type(error).__name__)
                if population is not None:
                    answers.append([population.low, population.high, population.density(np.array([1.0, 3.0, 50.0]))])
                    for lower, upper in ((45.0, None), (None, 55.0), (45.0, 55.0)):
                        for u, guard in ((0.5, 0.0), (2.0, 1.0)):
                            answers.append(tried(risk.risks, population, u, lower, upper, guard=guard))
    kept("verdict", "risks", [answers, said])


def test_kept_advice():
    bounds = [None, *(limits.bounds_from(one) for one in LIMITS)]
    jobs = [(), tuple(repeats.job_value([budget(v), budget(v + 1)]) for v in (2.0, 50.0))]
    levels = [Level(), Level(0.4, 0.02, True, "x"), Level(0.4, 0.02, True, "x", 0.1), Level(0.4, 0.5, True, "x", -3.0)]
    levels += [Level(0.4, 0.02, True, "x", share * 50.5) for share in (0.0099, 0.0104, -0.0104)]
    facts = [
        TransducerFacts(sign=s, certificate=c, certificate_date=d, certificate_due=e)
        for s in (None, "none", "reversed")
        for c in ("", "C")
        for d, e in (
            (None, None),
            (date(2025, 1, 1), None),
            (date(2024, 1, 1), date(2026, 5, 16)),
            (None, date(2026, 5, 15)),
            (date(2026, 6, 1), None),
        )
    ]
    with steps(ROOM) as said:
        answers = [
            tried(adequacy.range_advice, c, b, h)
            for c in (None, 50.0, 225.0, 226.0, 900.0, 3000.0)
            for b in bounds
            for h in (None, 9.0, 45.0, 60.0)
        ]
        answers += [tried(adequacy.resolution_advice, r, j) for r in (None, 0.001, 0.1, 0.5, 1.0, 5.0) for j in jobs]
        answers += [tried(adequacy.zero_advice, level, j) for level in levels for j in jobs]
        answers += [tried(adequacy.certificate_advice, f, d) for f in facts for d in (None, AT.date())] + [
            adequacy.sign_advice(f) for f in facts[::5]
        ]
        events = [Event(EventKind.OVERLOAD, 0, 2, "", t) for t in (0.9, 1.0, 2.0, 3.0, 5.0, 5.1)]
        pull = Pull(
            1.0,
            5.0,
            1,
            0.2,
            Breakaway(2.0, 46.0, 0.1, 0.5, True, 0.1),
            Rotating(2.5, 4.5, 40.0, 0.1, 0.4, 41.0, 2.0, 0.2, 0.1),
            reasons=(Reason(Code.RAMP, "x"),),
        )
        answers += [overloads.overloaded(pull, [one]) for one in events] + [overloads.overloaded(pull, events)]
        at = judge.AtAxle
        assert at is not None
        answers += [judge.readings_of(pull), orders.patterns_of(pull, header(), None)]
    kept("verdict", "advice", [answers, said])


def test_kept_dial_jobs():
    with steps(ROOM) as said:
        answers = []
        for shown in ([46.0, 47.0, 46.5], [46.0], [30.0, 46.0, 70.0], []):
            for more in (
                {},
                {"unit": "lbf·ft", "division": 1.0},
                {"division": 2.0, "error_percent": 4.0, "full_scale": 100.0, "quantity": "rotating mean"},
            ):
                readings = [DialReading(shown=v, at=AT, **more) for v in shown]
                exclude = [Correction(at=AT, reason="r", by="b", pull_start_s=1.0, exclude=True)]
                answers += [
                    tried(lambda r=readings, c=c: judge_dialled("a", header(), r, corrections=c).to_json())
                    for c in ((), exclude)
                ]
    kept("verdict", "dialled", [answers, said])


# ---------------------------------------------------------------------- what repeats per turn
@pytest.mark.parametrize("turns", [0.4, 1.2, 2.0, 3.0, 4.5, 12.0])
def test_kept_patterns(turns):
    turn = np.radians(5) * np.arange(round(turns * 72))
    x = (
        40
        + 1.5 * np.cos(turn)
        + 0.8 * np.sin(2 * turn)
        + 0.5 * np.sin(1.95 * turn)
        + 0.4 * ((np.arange(len(turn)) * 0.618034) % 1)
    )
    seen = Round(tuple(turn.tolist()), tuple(np.round(x, 6).tolist()), math.radians(5))
    with steps("analysis.verdict.orders", "analysis.verdict.elastic") as said:
        answers = []
        for direction in (1, -1):
            pull = Pull(1.0, 5.0, direction, 0.2, round=seen, elastic=Elastic(2.0, 0.3, 20.0, 2.0, 1.5, 0.5, 3.0, 1))
            for head in (
                header(lever=msgspec.structs.replace(STUD, start_angle_deg=-20.0)),
                header(),
                header(test=Test(held="none")),
                header(test=Test(held="case"), axle=Axle()),
                Header(),
            ):
                at = setup_of(head).at
                found = tried(
                    lambda p=pull, h=head, a=at: [
                        [one.to_json(), one.seen, one.size_nm, one.most_nm, one.peak_deg, one.peak_u95_deg]
                        for one in orders.patterns_of(p, h, a)
                    ]
                )
                answers.append(found)
                own = orders.patterns_of(pull, head, at)
                answers.append(
                    orders.pattern_lines(
                        [own, (), own[:1]], lambda v, u: f"{v:.2f} {u and round(u, 3)}", lambda v, n: f"{v:.{n}f}"
                    )
                )
                stiff = tried(elastic.stiffness_of, pull, at)
                answers.append(stiff)
                for of in (pull.elastic, Elastic(2.0, 3.0, 20.0, 2.0, 0.2, 0.5, 3.0, 1)):
                    answers.append(
                        elastic.elastic_words(
                            2,
                            of,
                            elastic.stiffness_of(pull, at),
                            lambda v, u: f"{v:.2f} {u:.2f}",
                            lambda v, n: f"{v:.{n}f}",
                        )
                    )
    kept("verdict", f"patterns {turns}", [answers, said])
