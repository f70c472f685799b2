"""What the window's forms make of typed texts, held against what was kept of it."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import numpy as np

from gui.models import (
    axle_entry,
    build_entry,
    dial_entry,
    fixture_entry,
    limit_entry,
    turn_count,
    weighing,
)
from gui.models.display import Display
from gui.models.job import JobCard
from logger.errors import HeldwheelError
from logger.header import Axle, Lever, TransducerFacts
from logger.recordings.axles import AxleFile, Build, PackPart
from tests.kept import everything, kept, plain, tried
from tests.steps import steps

ROOM = "gui.models"
SEASON = Path(__file__).parents[3] / "recordings"
TEXTS = (
    "",
    " ",
    "1",
    "0",
    "-1",
    "0,5",
    "1.5",
    "450 mm",
    "45 cm",
    "17 3/4 in",
    "2 ft",
    "50 N·m",
    "40 lbf·ft",
    "5 kg",
    "x",
    "1e9",
    "52°",
    "3 %",
    "1 ± 2",
    "41/11",
    "nan",
)
NM = (None, 0.0, -0.04, 0.051, 3.0449, -38.44, 386.0, 12345.678, math.nan, math.inf)


def swept(draft, check, texts=TEXTS):
    """Type every text into every field of a draft, and give what is said."""
    said = {"as it is": tried(check, draft)}
    for field in (
        fields(draft)
        if not isinstance(draft, msgspec.Struct)
        else [type("F", (), {"name": n}) for n in draft.__struct_fields__]
    ):
        if isinstance(getattr(draft, field.name), str):
            for text in texts:
                changed = {field.name: text}
                new = (
                    msgspec.structs.replace(draft, **changed)
                    if isinstance(draft, msgspec.Struct)
                    else replace(draft, **changed)
                )
                found = tried(check, new)
                said[f"{field.name} {text}"] = "the same" if plain(found) == plain(said["as it is"]) else found
    return said


def test_kept_limits_as_typed():
    with steps(ROOM) as said:
        answers = []
        for kind in ("min", "max", "band", "ratio min"):
            draft = limit_entry.LimitDraft(
                kind=kind, lower="40", upper="60", source="manual", beside="38", beside_unit="lbf·ft"
            )
            answers.append(swept(draft, limit_entry.check))
            answers.append(tried(lambda d=draft: limit_entry.draft_of(limit_entry.check(d).limit)))
    kept("models-typed", "limits", [answers, said])


def test_kept_fixtures_as_typed():
    with steps(ROOM) as said:
        answers = []
        for lever in (
            Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3),
            Lever(fixture="cross-bar", length_mm=600),
            Lever(fixture="force at radius", radius_mm=300),
            Lever(fixture="hub centre", weight_kg=1.0, centroid_mm=200),
            Lever(fixture="one stud", length_mm=450, studs=5, chord_mm=67.2, chord_apart=1),
        ):
            for lengths in ("mm", "in"):
                draft = fixture_entry.draft_of(lever, Display(lengths=lengths))
                answers.append(everything(draft))
                answers.append(
                    [
                        tried(fixture_entry.check, draft),
                        tried(fixture_entry.circle_of, draft),
                        tried(fixture_entry.circle_mm, lever),
                    ]
                )
                texts = draft.texts if hasattr(draft, "texts") else {}
                for key in texts:
                    for text in ("", "-1", "450", "17 3/4 in", "x"):
                        answers.append(tried(fixture_entry.check, replace(draft, texts=texts | {key: text})))
        answers += [fixture_entry.apart_options(n) for n in (2, 3, 4, 5, 6, 8)]
    kept("models-typed", "fixtures", [answers, said])


def test_kept_axles_as_typed():
    with steps(ROOM) as said:
        draft = axle_entry.draft_of(Axle(tag="1", ratio=3.9, type="clutch plate", shim_mm=0.3), Display())
        answers = [swept(draft, lambda d: [axle_entry.check_axle(d, Axle()), axle_entry.ratio_doubt(d)], TEXTS[::2])]
        answers += [axle_entry.type_options(now) for now in ("", "open", "own word")] + [
            axle_entry.plain(t) for t in ("a (b) c", "x")
        ]
        entry = axle_entry.AxleEntry(JobCard(), Display())
        for act in (
            lambda: entry.type_in("ratio", "41/11"),
            lambda: entry.count(propshaft="39", left="10", right="10"),
            lambda: entry.add("propshaft", 0.25),
            lambda: entry.take_counted(),
            entry.undo,
            lambda: entry.type_in("shim", "x"),
            lambda: entry.take_type(),
        ):
            try:
                act()
            except (HeldwheelError, TypeError, KeyError) as error:
                answers.append(type(error).__name__)
            answers.append([everything(entry.draft), entry.can_undo, getattr(entry, "wrong", 0)])
        counts = turn_count.TypedTurns()
        for field in fields(counts):
            for text in TEXTS:
                answers.append(tried(turn_count.check_count, replace(counts, **{field.name: text})))
        names = [field.name for field in fields(counts)][:3]
        for turns in (("39", "10", "10"), ("39", "10", "0"), ("3 3/4", "1", "1"), ("39.25", "10", "10")):
            answers.append(tried(turn_count.check_count, replace(counts, **dict(zip(names, turns, strict=True)))))
        seen = axle_entry.draft_of(Axle(), Display())
        keys = [question.key for question in axle_entry.QUESTIONS]
        for place, key in enumerate(keys):
            some = replace(seen, seen=dict.fromkeys(keys[: place + 1], "yes"))
            answers.append(
                [axle_entry.next_question(one, key) for one in (seen, some)] + [axle_entry.answered(some, key)]
            )
        counted = Axle(propshaft_turns=39.0, left_turns=10.0, right_turns=10.0, ratio=3.9)
        for one in (
            counted,
            msgspec.structs.replace(counted, right_turns=None),
            msgspec.structs.replace(counted, ratio=4.3),
        ):
            made = axle_entry.draft_of(one, Display())
            answers += [everything(made), axle_entry.check_axle(made, one), axle_entry.ratio_doubt(made)]
        for shim in ("100 mm", "100.5 mm", "0 mm", "99 mm"):
            answers.append(
                tried(
                    axle_entry.check_axle,
                    replace(seen, **{next(n for n in ("shim", "shim_mm") if hasattr(seen, n)): shim}),
                    Axle(),
                )
            )
    kept("models-typed", "axles", [answers, said])


def test_kept_dials_as_typed():
    card = JobCard()
    card.put(lever=Lever(fixture="hub centre", weight_kg=1.0, centroid_mm=200))
    with steps(ROOM) as said:
        draft = dial_entry.DialDraft(reading="46", marks="1", error_percent="4", full_scale="100")
        answers = [swept(draft, lambda d: dial_entry.check(d, card)), tried(dial_entry.check, draft, JobCard())]
        answers += [
            tried(dial_entry.sum_up, [msgspec.structs.replace(draft, reading=r) for r in readings], card, "breakaway")
            for readings in (("46", "47", "x"), (), ("40",))
        ]
    kept("models-typed", "dials", [answers, said])


def test_kept_builds(tmp_path):
    at = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)
    build = Build(built=at, oil="x", oil_l=1.0, spring_n=500.0, face_outer_mm=100.0, notes="n")
    card = JobCard()
    card.put(axle=Axle(tag="43/11"))
    entry = build_entry.BuildEntry(card, lambda: tmp_path, Display())  # begins with a build of now
    with steps("gui.models.build_entry") as said:
        answers = []
        for lengths in ("mm", "in"):
            draft = build_entry.draft_of(build, Display(lengths=lengths))
            answers.append(everything(draft))
            for key in draft.texts:
                if key != "built":
                    for text in (*TEXTS[::2], "30 min", "2 l", "600 N", "0 N", "0 mm", "0 min", "1e6 N", "2e6 N"):
                        checked = tried(build_entry.check_build, replace(draft, texts=draft.texts | {key: text}), build)
                        answers.append(checked)
        entry.axle = AxleFile(
            tag="43/11", builds=(build, msgspec.structs.replace(build, built=at.replace(day=5), oil="y"))
        )
        acts = [
            lambda: entry.open(0),
            lambda: entry.open(1),
            lambda: entry.add("friction disc"),
            lambda: entry.add("steel plate"),
            lambda: entry.set_part("1.6", "a"),
            lambda: entry.pick("left", 0),
            lambda: entry.move(1),
            lambda: entry.move(1),
            lambda: entry.move(-1),
            lambda: entry.set_part("x", ""),
            entry.same_on_both,
            lambda: entry.type_in("oil_l", "0.9"),
            entry.remove,
            entry.undo,
            lambda: entry.pick("right", 0),
            lambda: entry.add("shim"),
            entry.remove,
            entry.undo,
            entry.undo,
            lambda: entry.type_in("oil_l", "x"),
            entry.undo,
        ]
        for act in acts:
            act()
            answers.append(
                [
                    everything(entry.draft)[:2],
                    entry.side,
                    entry.place,
                    entry.can_undo,
                    entry.number,
                    len(entry.parts),
                    entry.picked,
                    entry.wrong,
                    entry.since[1],
                    entry.lines[:3],
                ]
            )
    assert isinstance(PackPart(kind="shim"), PackPart)
    kept("models-typed", "builds", [answers, said])


def test_kept_checks_with_weights():
    facts = TransducerFacts(unit="N·m", capacity_nm=200.0, resolution_nm=0.1)
    with steps("gui.models.weighing") as said:
        typed_ = weighing.Hanging(("10 kg", "20 kg"), arm="500 mm")
        answers = [swept(typed_, lambda h: weighing.plan_of(h, facts), TEXTS[::2])]
        answers += [
            tried(weighing.plan_of, weighing.Hanging(m, arm="500 mm"), f)
            for m in ((), ("10 kg",), ("1 kg", "45 kg"), ("x",))
            for f in (facts, TransducerFacts(sign="none"))
        ]
        for down in (True, False):
            plan, _ = weighing.plan_of(replace(typed_, down=down), facts)
            of = weighing.Weighing(plan)
            t = 0.0
            for level in (0.2, 0.3, 49.2, 98.3, 98.2, 49.3, 0.1, 0.1):
                for n in range(30):
                    time_s = t + np.arange(5) / 20
                    found = of.feed(
                        time_s, level + 0.02 * np.sin(9 * time_s) + (3.0 * np.exp(-n / 2) if n < 9 else 0.0)
                    )
                    t += 0.25
                    if n % 6 == 0 or found:
                        answers.append([of.step, of.doing.name, of.moving, of.share, of.change_nm, of.now_nm])
                    if found:
                        break
                else:
                    of.insist()
            answers += [
                of.rows,
                of.done,
                tried(lambda o=of: o.points),
                tried(lambda o=of: o.result),
                of.drift_nm,
                weighing.cautions(of, lambda v: f"{v:.3f}"),
            ]
            of.again()
            answers.append([of.step, of.rows])
    kept("models-typed", "weighing", [answers, said])
