"""Comparisons, trends, charts, plans and schedules over made values, held against what was kept of them."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import numpy as np
import pytest

from analysis.compare import agreement as agree
from analysis.compare import (
    builds,
    comparability,
    comparisons,
    control,
    due,
    groups,
    planner,
    power,
    repeatability,
    series,
    trend,
    variance,
)
from analysis.compare.runs import Quantity, Run, Setting, numbers_of, text_of, units_of
from logger.recordings.axles import AxleFile, Build, Pack, PackPart, Retest, Use
from tests.kept import kept, tried
from tests.steps import steps

ROOM = "analysis.compare"
AT = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)


def values(n: int, level: float = 50.0, spread: float = 1.0, slope: float = 0.0, phase: int = 0) -> np.ndarray:
    """Give n values about a level: an even scatter that nothing draws."""
    i = np.arange(n)
    return np.round(level + slope * i + spread * (((i + phase) * 0.618034) % 1 - 0.5) * 2, 4)


SERIES = {
    "flat": values(12),
    "rises": values(12, slope=0.4),
    "falls": values(20, slope=-0.3, phase=4),
    "three": values(3),
    "two": values(2),
    "same": np.full(6, 40.0),
    "one": values(1),
    "settles": 50 + 8 * np.exp(-np.arange(16) / 3) + values(16, 0, 0.3),
    "settles late": 50 + 9 * np.exp(-np.arange(14) / 9) + values(14, 0, 0.2),
    "jumps": np.r_[values(10), values(8, 54.0)],
    "whole": np.arange(1.0, 9.0),
    "outlier": np.r_[values(10), 70.0],
    "noisy": values(9, spread=20),
    "zero": np.zeros(5),
    "gap": np.array([1.0, np.nan, 2.0]),
}


@pytest.mark.parametrize("name", SERIES)
def test_kept_lines_and_charts(name):
    y = SERIES[name]
    answers = []
    with steps(ROOM) as said:
        for x in (np.arange(len(y)), 0.2 + 0.1 * np.arange(len(y)) ** 1.5, np.full(len(y), 3.0), np.arange(len(y)) % 3):
            line = tried(trend.fit_line, x, y)
            answers.append(line)
            if isinstance(line, list):
                fitted = trend.fit_line(x, y)
                answers.append([tried(fitted.predict, at) for at in (0.0, 2.0, -1.0, 30.0)])
                answers.append([tried(fitted.inverse, at) for at in (50.0, 52.0, 40.0, 0.0, 400.0)])
        for x in (np.arange(len(y)) * 4.0, np.arange(len(y)), np.cumsum(np.arange(len(y)) + 1)):
            answers.append(tried(trend.run_in, x, y))
            answers.append(tried(lambda x=x: trend.settled_since(trend.run_in_along(x, y))))
        for baseline in (4, 8):
            for weight in (0.2, 0.4):
                answers.append(tried(control.watch, y, baseline=baseline, weight=weight))
            answers.append(tried(lambda b=baseline: control.verdict(control.watch(y, baseline=b))))
        answers.append(tried(control.ewma, y, target=50.0, sd=1.0))
        answers.append(tried(control.ewma, y, target=50.0, sd=0.5, weight=1.0, width=3.0))
    kept("compare", f"line {name}", [answers, said])


PAIRS = [
    ("flat", "rises"),
    ("flat", "flat"),
    ("same", "zero"),
    ("three", "two"),
    ("one", "flat"),
    ("noisy", "jumps"),
    ("gap", "flat"),
    ("settles", "whole"),
    ("same", "same"),
    ("outlier", "falls"),
]


@pytest.mark.parametrize("pair", PAIRS, ids=" ".join)
def test_kept_effects(pair):
    a, b = (SERIES[name] for name in pair)
    n = min(len(a), len(b))
    with steps(ROOM) as said:
        answers = [
            tried(comparisons.welch, a, b),
            tried(comparisons.paired, a[:n], b[:n]),
            tried(comparisons.paired, a, b),
            tried(comparisons.bootstrap, a, b, seed=3),
            [tried(comparisons.equivalence, a, b, margin) for margin in (0.5, 2.0, 10.0, 0.0, -1.0)],
            [tried(comparisons.paired_equivalence, a[:n], b[:n], margin) for margin in (0.5, 2.0)],
            tried(comparisons.sample, a, "a", at_least=4),
            tried(variance.one_way, [a, b]),
            tried(variance.one_way, [a, b, SERIES["rises"][:4]]),
            tried(repeatability.agreement, a[:n], b[:n]),
            [tried(comparisons.Interval(*v).exp) for v in ((0.0, -1.0, 1.0), (0.1, 0.0, 0.2))],
        ]
    kept("compare", f"effects {' '.join(pair)}", [answers, said])


def test_kept_effects_of_several():
    many = {name: SERIES[name][:n] for name, n in (("flat", 6), ("rises", 5), ("jumps", 4))}
    with steps(ROOM) as said:
        answers = [tried(comparisons.dunnett, many, SERIES["falls"][:6]), tried(comparisons.tukey, many)]
        answers += [tried(comparisons.dunnett, {"a": [1.0]}, [1.0, 2.0]), tried(comparisons.tukey, {"a": [1.0, 2.0]})]
    answers = [
        [
            [round(v, 3) if isinstance(v, float) else v for v in (effect if isinstance(effect, list) else [effect])]
            for effect in one
        ]
        if isinstance(one, list)
        else one
        for one in answers
    ]
    kept("compare", "several", [answers, sorted(said)])


def run(number: int, fluid: str, level: float, **changes: object) -> Run:
    """Give a recording of three pulls."""
    pulls = tuple(values(3, level, 0.4, phase=number).tolist())
    tags = {
        "fluid": fluid,
        "fill": f"{fluid}-{number // 2}",
        "day": f"d{number % 3}",
        "number": float(number),
        "axle": f"a{number % 4}",
        "operator": "one" if number % 2 else "two",
        "tag": "43/11",
        "build": "b" + str(number % 2),
    } | changes.pop("tags", {})
    setting = Setting(
        **(
            {
                "test": "car, other side, neutral",
                "fixture": "one stud",
                "side": "left",
                "temperature_c": 20.0 + number,
                "speed_rad_s": 0.5,
                "dwell_s": 15.0,
                "wheel_fitted": True,
                "transducer": "T",
                "operator": "one",
            }
            | changes
        )
    )
    return Run(
        f"{fluid}-{number}.csv",
        tags,
        setting,
        {Quantity.BREAKAWAY: pulls, Quantity.ROTATING: tuple(v * 0.9 for v in pulls[: number % 4])},
        3,
        excluded=("pull 2: short",) if number == 3 else (),
        simulated=number == 5,
        started=AT + timedelta(days=number),
        stated={
            (Quantity.BREAKAWAY, "clockwise"): (level, 1.5),
            (Quantity.BREAKAWAY, "counter-clockwise"): (level + 1, 1.0 + number / 10),
        },
    )


SETS = {
    "two": [run(i, "a", 50.0 + i % 3) for i in range(6)] + [run(i, "b", 54.0 - i % 2) for i in range(6)],
    "three": [run(i, name, 50.0 + 2 * k + i % 3) for k, name in enumerate("abc") for i in range(6)],
    "few": [run(0, "a", 50.0), run(2, "a", 51.0), run(1, "b", 49.0)],
    "one": [run(i, "a", 50.0) for i in range(4)],
    "warm": [run(i, "a", 50.0) for i in range(4)]
    + [run(i, "b", 50.0, temperature_c=33.0 + i, dwell_s=40.0) for i in range(4)],
    "hot": [run(i, "a", 50.0) for i in range(4)]
    + [run(i, "b", 50.0, temperature_c=55.0 + i, speed_rad_s=0.8) for i in range(4)],
    "unlike": [run(i, "a", 50.0) for i in range(4)]
    + [run(i, "b", 50.0, test="car, case", fixture="hub centre", at="sensor", operator="two") for i in range(4)],
    "unknown": [
        run(i, "a", 50.0, temperature_c=None, speed_rad_s=None, dwell_s=None, side=None, wheel_fitted=None)
        for i in range(4)
    ]
    + [run(i, "b", 52.0, side="right", wheel_fitted=False, temperature_c=None) for i in range(4)],
    "five": [
        run(i, fluid, 50.0 + 3 * (fluid == "b") + (0.3, 1.7, 0.9, 2.2, 1.1)[i]) for fluid in "ab" for i in range(5)
    ],
    "builds": [run(i, "a", 50.0, tags={"shim_mm": 0.1 * i, "condition": "new"}) for i in range(4)]
    + [run(i, "b", 52.0, tags={"shim_mm": "x"}) for i in range(4)],
}


@pytest.mark.parametrize("name", SETS)
def test_kept_comparisons_of_recordings(name):
    runs = SETS[name]
    with steps(ROOM) as said:
        answers = []
        for more in (
            {},
            {"block": "day"},
            {"against": "all pairs"},
            {"margin": 2.0},
            {"control": "b"},
            {"control": "none"},
            {"anyway": "asked for"},
            {"unit": "no"},
        ):
            if name == "three" and more not in ({}, {"block": "day"}):
                continue  # the exact tables of several groups take long
            try:
                found = groups.compare(runs, Quantity.BREAKAWAY, by="fluid", **more)
                answers.append(
                    [found.to_json() if name != "three" else 0, tried(lambda found=found: found.groups), found.remarks]
                )
            except ValueError as error:
                answers.append(error)
        by = {fluid: [one for one in runs if one.tags["fluid"] == fluid] for fluid in "abc"}
        by = {fluid: members for fluid, members in by.items() if members}
        answers += [tried(comparability.check, by), tried(comparability.check, by, known=("operator", "temperature"))]
        answers += [tried(comparability.mixed, by, known=known) for known in ((), ("shim_mm",))]
        answers += [
            tried(comparability.ranges, runs),
            tried(comparability.along, [(float(i), one) for i, one in enumerate(runs)], "number"),
        ]
        for tag in ("number", "fluid", "nothing", "shim_mm"):
            answers.append(tried(series.points_against, runs, Quantity.BREAKAWAY, tag))
            answers.append(tried(lambda tag=tag: numbers_of(units_of(runs, Quantity.BREAKAWAY, by="fluid")[0], tag)))
        answers += [
            series.axle_of(runs[0]),
            series.axle_of(runs[0], ("tag", "fluid")),
            [text_of(t) for t in (None, 1.0, 1.25, "x", 1e9)],
        ]
        for axle, operator in (("axle", "operator"), ("day", "operator"), ("axle", "nothing")):
            answers.append(
                tried(lambda a=axle, o=operator: repeatability.cells(runs, Quantity.BREAKAWAY, axle=a, operator=o))
            )
            answers.append(tried(repeatability.pairs, runs, Quantity.BREAKAWAY, axle=axle, way=operator))
        answers += [[one.value(q) for q in Quantity] for one in runs[:4]]
    said = {label: total for label, total in said.items() if "dunnett" not in label and name != "three"}
    kept("compare", f"recordings {name}", [answers, said])


def test_kept_studies():
    whole = np.array(
        [
            [[50 + 3 * a + 0.5 * o + 0.3 * ((a + 2 * o + 3 * r) % 5 - 2) for r in range(3)] for o in range(2)]
            for a in range(5)
        ]
    )
    with steps(ROOM) as said:
        shapes = [
            whole,
            whole[:, :1],
            whole[:1],
            whole[:, :, :1],
            whole[:2],
            np.zeros((3, 2, 2)),
            whole[:, 0],
            whole * np.nan,
            whole + 100 * (whole > 60),
        ]
        answers = [tried(repeatability.study, one) for one in shapes]
        answers += [
            tried(agree.agreement, a, b)
            for a in ((50.0, 1.0), (50.0, 0.0))
            for b in ((51.0, 1.0), (51.4142136, 1.0), (50.0, 0.0), (40.0, 2.0))
        ]
        answers += [agree.agreement((50.0, 1.0), b).words("N·m") for b in ((51.0, 1.0), (60.0, 2.0), (50.0, 0.5))]
    kept("compare", "studies", [answers, said])


def test_kept_plans():
    with steps(ROOM) as said:
        answers = [
            [tried(power.paired_power, d, n, 0.05), tried(power.welch_power, d, n, 0.05)]
            for d in (0.0, 0.5, 2.0)
            for n in (2, 3, 10)
        ]
        answers += [
            tried(power.sameness_power, m, n, 0.05, blocked=b)
            for m in (0.5, 2.0)
            for n in (2, 8)
            for b in (True, False)
        ]
        for blocked in (True, False):
            for of in (1.0, 2.5):
                answers += [
                    tried(planner.fills_needed, 1.0, of, power=power, blocked=blocked) for power in (0.8, 0.9, 1.0)
                ]
                answers += [
                    tried(planner.equivalence_needed, 1.0, of, blocked=blocked),
                    tried(planner.reached, 1.0, of, 5, same=True, blocked=blocked),
                ]
                answers.append(tried(planner.reached, 1.0, of, 5, candidates=3, blocked=blocked))
        answers += [tried(planner.fills_needed, sd, of) for sd, of in ((0.0, 1.0), (1.0, 0.0), (1.0, -1.0))]
        answers += [round(power.dunnett_power(d, 5, 8, 2, 0.05), 5) for d in (0.5, 1.5)]
        in_blocks = {
            "treated": {f"d{k}": 50.0 + k % 3 for k in range(6)},
            "control": {f"d{k}": 50.4 + k % 2 for k in range(1, 7)},
        }
        answers += [
            tried(comparisons.paired_equivalence, in_blocks["treated"], in_blocks["control"], margin)
            for margin in (0.3, 1.5, 9.0)
        ]
        answers += [tried(comparisons.paired, in_blocks["treated"], in_blocks["control"])]
        answers += [tried(planner.half_width_of, 1.0, n, level=level) for n in (1, 2, 5, 30) for level in (0.9, 0.95)]
        answers += [tried(planner.repeats_for_interval, sd, w) for sd in (0.5, 1.0, 0.0) for w in (0.5, 2.0, 0.0)]
        answers += [
            tried(planner.run_order, names, blocks, seed=7, again=again)
            for names in ("ab", "abc", "a")
            for blocks in (1, 3, 0)
            for again in (0, 2)
        ]
        answers += [tried(control.steady_width, w) for w in (0.05, 0.2, 1.0)] + [
            tried(control.limit_width, n, w) for n in (3, 5, 20) for w in (0.2, 0.4)
        ]
    kept("compare", "plans", [answers, said])


def pack(*parts: tuple[str, float | None], **more: object) -> Pack:
    return Pack(parts=tuple(PackPart(kind=kind, thickness_mm=thickness) for kind, thickness in parts), **more)


PACKS = [
    Pack(),
    pack(("friction disc", 1.6), ("steel plate", 1.5), ("friction disc", 1.61), ("steel plate", None)),
    pack(("shim", 0.2), ("shim", 0.35), ("friction disc", 1.6)),
    pack(("shim", None), ("steel plate", 1.5), ("friction disc", 1.6), ("friction disc", 1.6), ("steel plate", 1.5)),
    pack(surfaces=8, end_play_mm=0.2),
    pack(("steel plate", 1.5)),
]


def test_kept_builds():
    made = [
        Build(
            built=AT + timedelta(days=2 * i),
            left=PACKS[i],
            right=PACKS[-1 - i],
            oil=("x", "y")[i % 2],
            oil_l=1.0 + i % 2,
            modifier_l=(None, 0.05, 0.1)[i % 3],
            spring_n=(None, 500.0)[i % 2],
            pinion_nm=i / 2,
            reason="r" * i,
            face_outer_mm=(None, 100.0)[i % 2],
            face_inner_mm=60.0,
        )
        for i in range(6)
    ]
    axle = AxleFile(tag=" 43/11", builds=tuple(made[::-1]))
    runs = [run(i, "a", 50.0 + i, tags={"build": builds.build_name(made[i % 3])}) for i in range(6)]
    with steps(ROOM) as said:
        answers = [[call(one) for call in (builds.surfaces, builds.stack_mm, builds.shims_mm)] for one in PACKS]
        answers += [[builds.build_name(one), builds.build_tags(one), builds.build_lines(one)] for one in made]
        answers += [builds.changes(a, b) for a in made for b in made[::2]]
        answers += [
            [tried(builds.percent_of_fill, a, b) for a in (None, 0.0, 1.0) for b in (None, 0.0, 0.05)],
            [tried(builds.modifier_l, 1.0, p) for p in (0.0, 4.0, 99.0, 100.0, -1.0)],
        ]
        found = builds.steps(axle, runs, Quantity.BREAKAWAY)
        answers += [
            tried(lambda: [[c.changed, c.measured, c.against] for c in found]),
            [builds.measured_words(m) for c in found for m in c.measured],
        ]
        answers += [[builds.of_axle(axle, one), builds.way_of(one, "clockwise")] for one in runs[:2]]
    kept("compare", "builds", [answers, said])


def test_kept_schedules():
    today, answers = date(2026, 6, 1), []
    plans = [
        None,
        Retest(),
        Retest(every_weeks=13, every_km=500.0, every_events=4),
        Retest(every_weeks=2.5, figure_eights=10),
        Retest(every_km=100.0),
    ]
    uses = [
        Use(day=date(2026, m, d), km=km, events=e, figure_eights=f)
        for m, d, km, e, f in ((2, 1, 900.0, 1, 0), (3, 5, 1000.0, 0, 6), (4, 1, None, 3, 5), (5, 30, 1450.0, 0, 0))
    ]
    with steps(ROOM) as said:
        for plan in plans:
            for built in ((), (AT - timedelta(days=9),), (AT + timedelta(days=9),)):
                for tests in ((), (AT,), (AT + timedelta(days=20), AT - timedelta(days=50))):
                    for used in ((), uses, uses[1:3]):
                        axle = AxleFile(
                            tag="t", retest=plan, uses=tuple(used), builds=tuple(Build(built=b) for b in built)
                        )
                        answers.append(
                            [[line.urgency.name, line.text, line.on] for line in due.due(axle, tests, today)]
                        )
        edges = AxleFile(
            tag="e",
            retest=Retest(every_weeks=4, every_km=100.0, every_events=10),
            uses=(Use(day=AT.date(), km=0.0), Use(day=date(2026, 3, 9), km=90.0, events=9)),
        )
        answers += [
            [line.urgency.name for line in due.due(edges, [AT], AT.date() + timedelta(days=d))] for d in range(10, 32)
        ]
        answers += [
            tried(due.amounts, text, keys)
            for keys in (due.EVERY, due.USED)
            for text in ("500 km, 4 weeks", "1 week", "2 events", "3.5 events", "x km", "5", "", "10 figure-eights")
        ]
        answers += [due.schedule_words(plan) for plan in plans]
        answers.append(due.calendar(due.due_of_all([edges], {"e": [AT]}, today), AT))
    kept("compare", "schedules", [answers, said])
