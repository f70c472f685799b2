"""What the models of the window say of figures, answers and typed texts, held against what was kept of them."""

from __future__ import annotations

import math
import os
import shutil
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import numpy as np
import pytest

from analysis.compare.runs import Quantity
from gui.models import (
    archive,
    comparing,
    importing,
    learning,
    ordering,
    own_scatter,
    pace,
    planning,
    ratio,
    sheets,
    stream,
    trending,
    typed,
)
from gui.models.coach import Coach, Hint
from gui.models.display import Display
from gui.models.importing import look
from gui.models.trace import GrowingTrace, joined
from gui.models.zeroing import Zeroing
from logger.errors import HeldwheelError
from logger.header import Header, JobFacts, Limit, Table, Test
from logger.learn.hear import Heard
from logger.learn.learn import Wanted
from logger.recordings.dialled import DialFile, DialReading, write_dialled
from logger.samples import Chunk
from tests.gui.models.test_answers import COMMON, ComparisonAsked, run, scale
from tests.gui.models.test_kept_typed import NM, TEXTS
from tests.kept import kept, tried
from tests.steps import steps

ROOM = "gui.models"
SEASON = Path(__file__).parents[3] / "recordings"


def test_kept_figures():
    answers = []
    with steps(ROOM) as said:
        for unit, comma, lengths in (
            ("N·m", False, "mm"),
            ("lbf·ft", True, "in"),
            ("lbf·in", False, "mm"),
            ("kgf·m", True, "in"),
        ):
            shown = Display(unit, comma=comma, lengths=lengths)
            answers.append(
                [[shown.figure(v, u), shown.torque(v, u)] for v in NM for u in (None, 0.0, 0.0996, 1.2, 12.3, 123.0)]
            )
            answers.append([[shown.number(v, n) for n in (0, 1, 3)] for v in NM])
            answers.append(
                [
                    [tried(shown.length, v), tried(shown.typed_length, v)]
                    for v in (0.0, 25.4, 0.3, 450.0, 1234.567, 3.175)
                ]
                + [shown.in_lengths("12 mm")]
            )
            answers.append([tried(typed.length_mm, t, shown, now) for t in TEXTS for now in (None, 450.0)])
            for quantity in Quantity:
                one = sheets.QuantityScale(quantity, shown)
                answers.append(
                    [[one.number(v), one.words(v), one.signed(v or 0), one.rate(v or 0), one.asked(v or 0)] for v in NM]
                )
                answers.append(
                    [
                        one.unit,
                        one.title,
                        one.factor,
                        one.span(-1, 2),
                        one.span(-1, 2, signed=True),
                        one.span(-math.inf, 2),
                    ]
                )
                answers.append([tried(one.typed, text) for text in TEXTS])
            answers.append(
                [
                    [sheets.significant(shown, v or 0, n) for n in (1, 3, 5)] + [sheets.p_words(shown, abs(v or 0))]
                    for v in NM
                ]
            )
        answers += [
            [tried(call, text) for text in TEXTS] for call in (sheets.plain_number, sheets.whole_number, typed.decimal)
        ]
        answers += [typed.in_eighths(v) for v in (0.0, 0.125, 0.5, 1.25, 17.75, 3.999999, 0.1, -0.5)]
        answers += [
            tried(typed.quantity, text, kind)
            for text in TEXTS
            for kind in ("length", "torque", "mass", "angle", "time", "force")
        ]
    kept("models", "figures", [[repr(one) for one in answers], said])


def test_kept_sheets(tmp_path):
    lines = ["a.csv: excluded, no tag", "two of them", "b.csv, pull at 3.0 s: excluded, short", ""]
    table = sheets.Sheet("s", ("a", "b"), (("=1", "−2.5"), ("x", "+1.0"), ("−", "1,5"), ("@y", "− 3")))
    answers = [
        sheets.left_out_sheet(lines, ["p: short", "q"], ["f: bad"]),
        sheets.left_out_sheet([]),
        sheets.notes_sheet(lines),
        sheets.notes_sheet([]),
    ]
    answers += [sheets.sheets(table, None, table), [sheets.copied(table, simulated=one) for one in (True, False)]]
    written = sheets.Written(
        (("name", "value"), ("=1+1", -2.5), ("none", math.nan), ("x", None)), {"schema": "x", "a": 1.5}, True
    )
    for name in ("a.csv", "a.json", "b.CSV", "c.txt"):
        for one in (written, replace(written, simulated=False)):
            said = tried(sheets.write, one, str(tmp_path / name))
            answers.append(Path(said).read_text("utf-8") if isinstance(said, str) else type(said).__name__)
    kept("models", "sheets", answers)


# ---------------------------------------------------------------------- answers on Compare
def runs_of(kind: str):
    oils = {"two": "ab", "three": "abc", "one": "a"}
    if kind in oils:
        return [
            run(f"{oil}{n}", 40.0 + n + 3.0 * k, oil=oil, fill=f"{oil}{n // 2}", day=f"d{n}", cycles=float(n))
            for k, oil in enumerate(oils[kind])
            for n in range(4)
        ]
    if kind == "axles":
        return [
            run(f"{a}{o}{n}", 40.0 + 5 * a + o + 0.3 * ((n * 2 + a) % 3), axle=f"x{a}", operator=f"o{o}")
            for a in range(4)
            for o in range(2)
            for n in range(2)
        ]
    settling = [50 + 8 * math.exp(-n / 3) + 0.1 * ((n * 7) % 5) for n in range(18)]
    return [
        run(
            f"{n:02}",
            round(v, 4),
            vehicle="car",
            cycles=float(2 * n),
            date=f"2026-05-{n + 1:02}",
            shim=0.1 * n,
            fill=f"f{n}",
        )
        for n, v in enumerate(settling)
    ]


@pytest.mark.parametrize("kind", ["two", "three", "one", "axles", "settling"])
@pytest.mark.parametrize("unit", ["N·m", "lbf·ft"])
def test_kept_answers_on_compare(kind, unit):
    found, shown = runs_of(kind), scale(unit=unit, comma=unit != "N·m")
    rate = scale(Quantity.RATIO, unit)
    with steps(ROOM) as said:
        answers = [comparing.tags_of(found), comparing.groups_in(found, "oil")]
        for asked in (
            ComparisonAsked("oil"),
            ComparisonAsked("oil", margin=2.0),
            ComparisonAsked("oil", block="day"),
            ComparisonAsked("no"),
        ):
            if kind == "three" and asked.block:
                continue
            groups = tried(lambda a=asked: comparing.compare_groups(found, COMMON, a).comparison)
            if isinstance(groups, list):
                made = comparing.compare_groups(found, COMMON, asked).comparison
                answers += [
                    comparing.headline(made, shown),
                    [
                        [s.name, s.heads if hasattr(s, "heads") else 0, s.rows]
                        for s in comparing.group_sheets(made, shown, ["x: bad"])
                    ],
                    comparing.warnings_of(made),
                    comparing.written(made).rows,
                ]
            else:
                answers.append(groups)
        for tag in ("cycles", "shim", "no"):
            try:
                trend = trending.follow(found, COMMON, tag)
                answers += [
                    trending.headline(trend, shown),
                    trending.slope_words(trend, shown),
                    trending.warnings_of(trend),
                    trending.trend_sheets(trend, shown),
                    trending.written(trend, rate).rows,
                    [(p.x, p.y, p.line_low, p.next_high) for p in trend.along[::5]],
                ]
            except HeldwheelError as error:
                answers.append(error)
            try:
                settled = ordering.settle(found, COMMON, tag)
                for of in settled.axles:
                    answers += [
                        ordering.run_in_headline(of, shown),
                        ordering.run_in_sheets(of, settled, shown),
                        ordering.run_in_warnings(of, settled),
                    ]
                    answers += [
                        ordering.run_in_written(of, shown, simulated=True).rows,
                        ordering.decay_curve(of, [0.0, 3.0, 40.0]),
                    ]
            except HeldwheelError as error:
                answers.append(error)
        for baseline in (3, 5, 8):
            try:
                watched = ordering.watch_axles(found, COMMON, baseline)
                answers += [
                    [ordering.watch_headline(of, shown), ordering.watch_sheets(of, shown)] for of in watched.axles
                ] + [ordering.watch_written(watched, shown).rows]
            except HeldwheelError as error:
                answers.append(error)
        for operator, axle in (("operator", "axle"), ("oil", "day"), ("no", "axle")):
            try:
                study = own_scatter.study_of(found, COMMON, operator, axle)
                answers += [
                    own_scatter.study_headline(study, shown),
                    own_scatter.study_sheets(study, shown),
                    own_scatter.study_written(study, shown).rows,
                ]
            except HeldwheelError as error:
                answers.append(error)
            try:
                pairs = own_scatter.pairs_of(found, COMMON, operator, axle)
                answers += [
                    own_scatter.pairs_headline(pairs, shown),
                    own_scatter.pairs_sheets(pairs, shown),
                    own_scatter.pairs_written(pairs, shown).rows,
                ]
            except HeldwheelError as error:
                answers.append(error)
        answers.append(tried(planning.scatter_in, found, COMMON, "oil"))
    kept("models", f"compare {kind} {unit}", [answers, said if kind != "three" else 0])


def test_kept_comparisons_asked_in_full():
    """Every pair, another control, a margin, runs enough for resampling."""
    found = [
        run(
            f"{oil}{n:02}",
            40.0 + 2.5 * k + (0.37, 1.9, 0.61, 2.3, 1.13, 0.08, 1.42)[(n * 3 + k) % 7],
            oil=oil,
            fill=f"{oil}{n}",
            day=f"d{n % 4}",
        )
        for k, oil in enumerate("abc")
        for n in range(6)
    ]
    answers = []
    shown = scale(unit="lbf·ft")
    for more in (
        {"control": "b", "margin": 1.5},
        {"all_pairs": True, "block": "day"},
        {"control": "no"},
    ):
        try:
            made = comparing.compare_groups(found, COMMON, ComparisonAsked("oil", **more))
        except HeldwheelError as error:
            answers.append(error)
            continue
        if made.comparison is None:
            answers.append(made.refusals)
            continue
        sheets_ = comparing.group_sheets(made.comparison, shown, [])
        answers.append([[one.name, one.heads, one.rows] for one in sheets_])
        answers += [comparing.headline(made.comparison, shown), comparing.written(made.comparison).rows]
    kept("models", "compare in full", answers)


def test_kept_trends_asked_in_full():
    """Asked beside the data, at half their range beyond and just past that; what value is reached where."""
    found = runs_of("settling")
    answers = []
    for tag in ("cycles", "shim"):
        for quantity in (Quantity.BREAKAWAY, Quantity.RATIO):
            common, shown = comparing.Common(quantity), scale(quantity)
            for wanted, at in (
                (None, -17.0),
                (None, 51.0),
                (None, 51.5),
                (None, 10.0),
                (54.0, None),
                (1.3, -17.5),
                (60.0, 20.0),
                (-1e3, 0.0),
            ):
                trend = trending.follow(found, common, tag, wanted, at)
                answers += [
                    [trending.headline(trend, shown), trending.slope_words(trend, shown), trending.warnings_of(trend)],
                    [[one.name, one.heads, one.rows] for one in trending.trend_sheets(trend, shown)][-1:],
                    [
                        trending.written(trend, shown).rows[-3:],
                        trend.wanted,
                        trend.expected,
                        len(trend.along),
                        trend.along[0].x,
                    ],
                    [trend.along[-1].x, trend.along[7].x],
                ]
    inch = Display(lengths="in")
    for tag in ("shim_mm", "cycles", "temperature_c"):
        one = trending.along(tag, inch)
        answers.append(
            [
                one.name,
                one.unit,
                one.factor,
                one.title,
                one.one,
                one.number(12.345),
                one.words(25.4),
                one.span(0.1, 2.0),
            ]
        )
    kept("models", "trends in full", answers)


def test_kept_plans():
    wishes = [
        planning.Wish(p, a, s, "", power, g, 3)
        for p in planning.PURPOSES
        for a, s in ((2.0, 1.0), (4.0, 2.5), (0.0, 1.0))
        for power, g in ((0.8, ()), (0.9, ("a", "b")))
    ]
    with steps(ROOM) as said:
        answers = []
        for wish in wishes:
            try:
                planned = planning.plan((), COMMON, wish)
                answers += [
                    planning.headline(planned, scale()),
                    planning.order_sheet(planned),
                    planning.written(planned, scale()).rows,
                    planned.curve,
                ]
            except HeldwheelError as error:
                answers.append(error)
    kept("models", "plans", [answers, said])


# ---------------------------------------------------------------------- while a test runs
SHAPES = {
    "good": (np.zeros(60), np.linspace(0, 40, 40), np.full(120, 36.0), np.linspace(36, 0, 8), np.zeros(60)),
    "jerk": (np.zeros(40), np.linspace(0, 60, 8), np.full(60, 58.0)),
    "long": (np.zeros(20), np.linspace(0, 30, 90), np.full(250, 31.0)),
    "limit": (np.zeros(10), np.linspace(0, 120, 90)),
    "light": (np.linspace(0, 2.9, 60), np.linspace(3, 0.5, 40)),
    "wavy": (20 + 15 * np.sin(np.arange(300) / 20),),
    "borders": (
        np.full(40, 1.5),
        np.full(40, 100.0),
        np.full(40, 97.0),
        np.full(40, 9.0),
        np.full(40, 0.9),
        np.zeros(9),
    ),
    "gaps": (np.full(30, np.nan), np.linspace(0, 30, 30), np.full(60, 30.0)),
}


@pytest.mark.parametrize("name", SHAPES)
def test_kept_words_of_the_coach(name):
    torque = np.concatenate(SHAPES[name])
    time_s = np.arange(len(torque)) / 20
    with steps("gui.models.coach", "gui.models.zeroing", "gui.models.pace", "gui.models.trace") as said:
        answers = []
        for keys in (
            {},
            {"capacity_nm": 100.0, "interest_nm": 20.0},
            {"interest_nm": 30.0, "turned_deg": 0.5},
            {"interest_nm": 100.0, "turned_deg": 1.0},
            {"interest_nm": 30.0, "turned_deg": 4.0},
        ):
            for rest, dwell in ((None, 0.0), (3.0, 15.0)):
                coach = Coach(**keys)
                answers.append(
                    [
                        coach.feed(time_s[max(0, n - 20) : n], sign * torque[max(0, n - 20) : n], rest, dwell).name[:4]
                        + str(coach.loaded)[:1]
                        for n in range(2, len(torque), 3)
                        for sign in (1 if rest is None else -1,)
                    ]
                )
        for steady in (0.2, 0.5, 5.0):
            zeroing = Zeroing(steady)
            answers.append(
                [
                    (zeroing.feed(time_s[n : n + 7], torque[n : n + 7] / 10), zeroing.state.name, zeroing.share)
                    for n in range(0, len(torque), 7)
                ]
            )
        wheel, pacer = pace.Wheel(), pace.Pacer()
        for n in range(0, len(torque), 5):
            now = wheel.feed(time_s[n : n + 5], np.cumsum(torque)[n : n + 5] / 5)
            seen = wheel.pace(4.0 if n > 90 else None)
            if n % 50 == 0:
                wheel.mark()
            answers.append(
                [now, wheel.turned_deg, seen, seen and seen.zone.name, pacer.due(seen, Hint.KEEP_TURNING, n / 20)]
            )
        trace = GrowingTrace()
        for n in range(0, len(torque), 31):
            trace.append(time_s[n : n + 31], torque[n : n + 31])
        long = np.tile(np.nan_to_num(torque), 40)
        grown = GrowingTrace(np.arange(len(long)) / 100, long)
        for one in (trace, grown):
            answers += [
                list(one.stretch(a, b, c))
                for a, b, c in ((0.0, 9.0, 7), (1.0, 60.0, 20), (-5.0, 1e3, 100), (3.0, 3.1, 50))
            ]
        answers += [joined(time_s[np.arange(len(time_s)) % 29 != 3]), joined(np.r_[time_s, time_s[-1:] + 9])]
    kept("models", f"running {name}", [answers, said])


# ---------------------------------------------------------------------- files, tables, unknown devices
NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)


def _aged(folder):
    """Give a copy of the season, all files of one noon: those of a checkout are as old as the checkout."""
    season = Path(shutil.copytree(SEASON, folder / "season"))
    for file in season.iterdir():
        os.utime(file, (NOON.timestamp(),) * 2)
    return season


def test_kept_archive(tmp_path):
    season = _aged(tmp_path)
    with steps("gui.models.archive") as said:
        entries = [
            archive.read_entry(str(season / f"{name}.csv"))
            for name in ("01-arrival-left", "05-event-1", "06-unclosed", "06-foreign-table")
        ]
        dial, plain = tmp_path / "d.dial.toml", tmp_path / "e.dial.toml"
        told = Header(started=datetime(2026, 3, 4, tzinfo=UTC), job=JobFacts(vehicle="dial car"))
        write_dialled(dial, DialFile(header=told, readings=(DialReading(shown=46.0),), signed=told.started))
        plain.write_text("x", "utf-8")
        os.utime(plain, (NOON.timestamp(),) * 2)
        others = [archive.read_entry(str(one)) for one in (dial, plain, tmp_path / "none.csv")]
        answers = [
            [one.name, one.words, [one.holds(w) for w in ("event", "left", "2026", "x", "rear")]] for one in entries
        ]
        words = [one.words for one in others]
        words[2] = words[2].replace(f"{others[2].started:%Y-%m-%d}", "now")  # what is not there has no time of its own
        answers += [
            [one.name, shown_as[:30], one.ours, one.closed, one.purpose, one.size]
            for one, shown_as in zip(others, words, strict=True)
        ]
        answers += [
            [Path(p).name for p in archive.find_tests(season, text)]
            for text in ("event", "left shim", "unclosed", "zzz")
        ]
        answers += [archive.searched(t) for t in ("a b", ' "a b" c', "", "A,b")] + [
            tried(archive.tags_of, t) for t in ("a=1", "a=1, b=x", "a", "a=", "=1", "a=1.5;b=2")
        ]
        shown = archive.Archive()
        shown.add(entries)
        for column in archive.COLUMNS:
            for down in (True, False):
                shown.sort(column, down=down)
                answers.append([one.name for one in getattr(shown, "shown", getattr(shown, "entries", []))])
        for text, purpose in (("event", ""), ("", "pulls"), ("", "drag"), ("left", "pulls")):
            shown.filter(text, purpose)
            answers.append([one.name for one in getattr(shown, "shown", [])])
        answers.append([one.name for one in shown.unclosed])
    kept("models", "archive", [answers, sorted(said)])


def test_kept_tables_from_elsewhere(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    rows = "".join(f"{n / 10:.1f},{n % 40},{n}\n" for n in range(60))
    tables = {
        "plain.csv": "time_s,torque_Nm,angle_deg\n" + rows,
        "bare.csv": "a,b,c\n" + rows,
        "twice.csv": "time,torque,torque\n" + rows,
        "german.csv": "Zeit;Drehmoment\n" + "0,1;2,5\n" * 20,
        "text.csv": "nothing here\n",
        "ours.csv": "# heldwheel recording 1\n",
        "force.csv": "time_s,force_N\n" + "".join(f"{n / 10},{n}\n" for n in range(30)),
        "many.csv": "time_s,torque_Nm\n" + "".join(f"{n / 1000:.3f},{n % 90}\n" for n in range(4100)),
        "wide.csv": ",".join(f"c{n}" for n in range(30)) + "\n" + ",".join("1" * 30) + "\n",
    }
    with steps("gui.models.importing") as said:
        answers = []
        for name, text in tables.items():
            Path(name).write_text(text, "utf-8")
            for table in (Table(), Table(time="a", torque="b", unit="N·m", time_unit="s"), Table(unit="lbf·ft")):
                found = look(name, table)
                answers.append(
                    [
                        found.names,
                        found.rows[:3],
                        len(found.rows),
                        [type(q).__name__ for q in found.questions],
                        found.problem,
                        found.used,
                        found.notes,
                        found.time_s,
                        found.torque,
                        found.samples,
                        found.ready,
                        found.is_force,
                    ]
                )
        answers += [tried(importing.rate_of, text) for text in ("", "500", "500 Hz", "1,5 hz", "x", "0")]
        answers += [importing.copy_name(Path(one)) for one in ("a b.csv", "A.JSON", "x", "y.xlsx", "con.txt")]
        for radius in ("", "450 mm", "x"):
            answers.append(tried(importing.bring_in, "plain.csv", f"copy{radius}.csv", Table(unit="N·m"), radius))
            answers.append([Path(f"copy{radius}.csv").exists(), sorted(p.name for p in Path().glob("copy*.toml"))])
    kept("models", "importing", [answers, said])


HEARD = {
    "lines": [b"%.2f Nm\r\n" % (0.1 * (n % 30)) for n in range(80)],
    "columns": [b"%d,%.2f,%.1f\r\n" % (n, 5 * math.sin(n / 9), n / 3) for n in range(90)],
    "reversed": [b"%.1f\n" % (-abs(n - 40) + 40 if n < 40 else -40.0) for n in range(80)],
    "noise": [bytes((n * 37 + k * 11) % 256 for k in range(9)) for n in range(60)],
    "status": [b"ST,%s%6.2f lbf.in\r\n" % (b"-" if n % 2 else b"+", n / 7) for n in range(70)],
    "framed": [b"\x02%6.2f lbf.in\x03\r\n" % (n / 7 - 2) for n in range(70)],
    "loaded from the first": [b"%.1f;%d\n" % (-9.0 if n > 3 else 0.5 * n, 5 - n % 3) for n in range(60)],
    "few": [b"1.0\n"],
    "nothing": [],
}


@pytest.mark.parametrize("name", HEARD)
def test_kept_learning(name):
    chunks = [Chunk(0.05 * n, data) for n, data in enumerate(HEARD[name])]
    with steps("gui.models.learning") as said:
        answers = []
        for wanted in (None, Wanted(unit="N·m"), Wanted(field="2"), Wanted(field="1", unit="lbf·ft")):
            found = tried(lambda w=wanted: look_state(learning.look_at(Heard(list(chunks)), w)))
            answers.append(found)
            if not isinstance(found, list):
                continue
            state = learning.look_at(Heard(list(chunks)), wanted)
            naming = learning.proposed(state)
            answers.append(naming)
            for more in (
                {},
                {"name": "x"},
                {"name": "x", "unit": "N·m"},
                {"name": "x", "unit": "lbf·in", "capacity": "200", "accuracy": "± 0.5 %", "sign": "reversed"},
                {"name": "x", "unit": "N·m", "capacity": "-1"},
                {"name": "x", "unit": "N·m", "accuracy": "much"},
                {"name": " ", "unit": "N·m", "capacity": "1,5"},
            ):
                described, wrong = learning.complete(
                    state, replace(naming, **more), request="D" if more.get("sign") else ""
                )
                answers.append(
                    [described is not None and [described.name, described.transducer, described.poll], wrong]
                )
        answers += [
            learning.without_options(text)
            for text in ("the unit is not sent: give it with --unit", "plain", "a: b; use --x")
        ]
    kept("models", f"learning {name}", [answers, said])


def look_state(state: learning.LearningState) -> list[object]:
    names = ("unit_sent", "candidates", "chosen", "asked", "readings", "fits", "now", "first_load", "raw")
    return [*(getattr(state, one) for one in names), state.draft is not None and msgspec.to_builtins(state.draft)]


def test_kept_names_and_ratios():
    at = datetime(2026, 3, 4, 5, 6, 7).astimezone()
    heads = [
        Header(started=at, job=JobFacts(vehicle=v, number=n), test=Test(side=s, purpose=p))
        for v in ("", "blue car")
        for n in ("", "A 7")
        for s in (None, "left")
        for p in (None, "drag")
    ]
    limits = [
        None,
        Limit(quantity="breakaway", kind="min", unit="N·m", lower=1.0, source="x"),
        Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="x"),
    ]
    answers = [
        [stream.recording_stem(one) for one in heads],
        [ratio.half_words(one, gear) for one in limits for gear in (None, "neutral", "in gear")],
        [ratio.unjudged_words(one) for one in limits],
    ]
    kept("models", "names", answers)
