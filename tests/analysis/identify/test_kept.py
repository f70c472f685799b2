"""Ratios, types, stud circles, tyres and slips of what was typed, over their range, held against what was kept."""

from __future__ import annotations

from itertools import product

import pytest

from analysis.identify.axle_type import QUESTIONS, Type, named, recognise, seen_words, type_conflict, types_of
from analysis.identify.functions import functions_of
from analysis.identify.ratio import CANDIDATES, candidate, candidates_from, read_ratio
from analysis.identify.slips import direction_conflict, kind_conflict, slip_against, unit_guard
from analysis.identify.stud_circle import chord_factor, circle_from_chords
from analysis.identify.tyres import tyre_mismatch
from logger.header import Axle, Conditions, Limit, Test
from tests.kept import everything, kept, tried
from tests.steps import steps

ROOM = "analysis.identify"
TURNS = [
    (3.9, 1.0, 1.0),
    (39.0, 10.0, 10.0),
    (19.5, 10.0, 0.0),
    (39.1, 0.0, 20.0),
    (4.1, 1.0, 1.0),
    (0.0, 1.0, 1.0),
    (3.9, 0.0, 0.0),
    (39.0, 10.0, -10.0),
    (-39.0, 10.0, 10.0),
    (12.3, 3.0, 3.0),
    (30.75, 7.5, 7.5),
    (100.0, 10.0, 10.0),
    (3.7, 2.0, 0.0),
    (37.3, 10.0, 10.0),
    (74.0, 20.0, 20.0),
    (7.4, 1.0, 2.0),
    (1e9, 1.0, 1.0),
    (5.0, 10.0, 10.0),
]


@pytest.mark.parametrize("turns", TURNS, ids=str)
def test_kept_ratios(turns):
    with steps(ROOM) as said:
        answers = [tried(read_ratio, *turns)]
        for shaft, wheel in ((0.02, 0.0), (0.1, 0.02), (0.5, 0.05), (0.0, 0.0), (-1.0, 0.0)):
            found = tried(read_ratio, *turns, propshaft_error_turns=shaft, wheel_error_turns=wheel)
            answers.append(found[:5] if isinstance(found, list) else found)
        few = candidates_from((3.9, "41/11", 4.1, "37/9"))
        answers.append(tried(lambda: read_ratio(*turns, candidates=few).to_json()))
    kept("identify", f"ratio {turns}", [answers, said])


def test_kept_candidates():
    given = (3.9, "41/11", "41:11", "41 / 11", "x", 0, -1, "11/41", "0/5", "5/0", 41, "3.73", "1e9", 0.5, 12.0)
    kept(
        "identify",
        "candidates",
        [[tried(candidate, one) for one in given], len(CANDIDATES), everything(CANDIDATES[::9])],
    )


def answers_to(place: int) -> dict[str, str]:
    """Give the place-th choice of answers: each question has its turn, some are left open."""
    seen = {}
    for question in QUESTIONS:
        choices = [*question.answers, None]
        place, which = divmod(place * 7 + 3, len(choices))
        if choices[which] is not None:
            seen[question.key] = choices[which]
    return seen


def test_kept_types():
    with steps(ROOM) as said:
        singles = [{question.key: answer} for question in QUESTIONS for answer in question.answers]
        pairs = [one | other for one, other in product(singles, singles) if list(one) < list(other)]
        answers = [tried(recognise, seen) for seen in ({}, {"no": "no"}, *singles)]
        answers += [
            [kind.name for kind in recognise(seen).candidates] for seen in (*pairs, *map(answers_to, range(60)))
        ]
        answers += [seen_words(seen) for seen in map(answers_to, range(9))]
        answers += [named(kinds) for kinds in ((), list(Type)[:1], list(Type)[:2], list(Type))]
        answers += [
            functions_of(kinds)
            for kinds in ((), *((kind,) for kind in Type), list(Type), *(list(Type)[:n] for n in (2, 3, 4, 5)))
        ]
        texts = (
            "",
            "open",
            "clutch plate",
            "a cone or plate unit",
            "locker",
            "viscous",
            "torsen",
            "gear",
            "spool",
            "no idea",
            "Plate, open",
        )
        answers += [sorted(kind.name for kind in types_of(text)) for text in texts]
    kept("identify", "types", [answers, said])


LIMITS = [
    Limit(quantity=q, kind=kind, unit=unit, source="invented", lower=low, upper=high, held=held, gear=gear, place=place)
    for q, kind, unit, low, high, held, gear, place in (
        ("breakaway", "min", "N·m", 50.0, None, None, None, None),
        ("rotating mean", "max", "lbf·ft", None, 40.0, "case", None, "car"),
        ("rotating maximum", "band", "N·m", 40.0, 60.0, "other side", "neutral", "bench"),
        ("breakaway", "min", "kgf·m", 5.0, None, "none", "in gear", None),
    )
]


def test_kept_slips():
    values = (-1.0, 0.0, 0.4, 3.0, 5.1, 36.9, 40.0, 50.0, 55.0, 67.8, 300.0, 442.0, 500.0, 1000.0, 5000.0)
    kept(
        "identify",
        "units",
        {
            f"{v} {u} {m}": tried(unit_guard, v, u, m)
            for v in values
            for u in ("N·m", "lbf·ft", "kgf·cm")
            for m in (None, 50.0)
        },
    )
    kept("identify", "slips", [tried(slip_against, limit, limit.quantity, v) for limit in LIMITS for v in values])
    tests = [
        Test(held=h, gear=g, place=p)
        for h in (None, "case", "other side", "none")
        for g in (None, "neutral", "in gear")
        for p in (None, "car")
    ]
    kept("identify", "kinds", [tried(kind_conflict, limit, test) for limit in LIMITS for test in tests])
    directions = ((), (1, 1, 1), (1, -1), (-1, -1), (1, 1, -1))
    ways = [Test(direction=d, side=s) for d in (None, "clockwise", "counter-clockwise", "both") for s in (None, "left")]
    kept("identify", "directions", [tried(direction_conflict, way, seen) for way in ways for seen in directions])
    axles = [
        Axle(type=text, preload_nm=None) if hasattr(Axle(), "preload_nm") else Axle(type=text)
        for text in ("", "open", "clutch plate", "viscous", "locker", "gear")
    ]
    conditions = [Conditions(), Conditions(fluid="x", modifier="y", modifier_percent=5.0)]
    kept(
        "identify",
        "type conflicts",
        [tried(type_conflict, a, c, m) for a in axles for c in conditions for m in (None, LIMITS[0])],
    )


def test_kept_stud_circles_and_tyres():
    factors = [tried(chord_factor, studs, apart) for studs in (2, 3, 4, 5, 6, 8, 20, 41) for apart in (0, 1, 2, 3)]
    chords = [
        (5, [(0.0672, 1)]),
        (5, [(0.0672, 1), (0.0675, 1), (0.1087, 2)]),
        (4, [(0.0707, 1), (0.1, 2)]),
        (6, [(0.057, 1), (0.0995, 2), (0.114, 3)]),
        (5, []),
        (5, [(0.5, 1)]),
        (5, [(0.067, 1), (0.09, 1)]),
        (5, [(0.0588, 1)]),
        (3, [(-1.0, 1)]),
    ]
    circles = [[tried(circle_from_chords, n, c), tried(circle_from_chords, n, c, u_chord_m=0.001)] for n, c in chords]
    shown = [tried(lambda n=n, c=c: circle_from_chords(n, c).to_json()) for n, c in chords]
    near = [tried(circle_from_chords, 2, [(mm / 1000, 1)], u_chord_m=0.002) for mm in range(90, 340, 4)]
    kept("identify", "circles", [factors, circles, shown, [one[-1] if isinstance(one, list) else one for one in near]])
    tyres = [
        (2.0, 2.0, 0.005, 20.0),
        (2.0, 1.98, 0.002, 30.0),
        (1.9, 2.0, 0.01, 0.0),
        (2.0, 1.9, 0.0, 13.9),
        (0.0, 2.0, 0.01, 1.0),
        (2.0, 1.99, 0.02, 25.0),
    ]
    kept(
        "identify",
        "tyres",
        [[tried(tyre_mismatch, *one), tried(lambda one=one: tyre_mismatch(*one).to_json())] for one in tyres],
    )
