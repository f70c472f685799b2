"""What "How to add" in DEVELOPERS.md names is there, and nothing that it names was forgotten for what exists."""

from __future__ import annotations

import importlib
import re
from datetime import date
from pathlib import Path
from typing import get_args, get_type_hints

import msgspec
import pytest

from analysis.compare.runs import Quantity
from analysis.identify.axle_type import NOT_CHECKED, QUESTIONS
from analysis.report import fields
from analysis.report.material import Issue
from analysis.report.words import plain_state
from analysis.verdict.limits import bounds_from, decide
from gui.models import limit_entry
from gui.models.display import UNITS, Display
from gui.models.sheets import QuantityScale
from gui.pages import answers
from gui.pages.editors.limit import KIND_WORDS, LIMIT_UNITS
from logger.doors.lever_limit import limit_in_words
from logger.edges.units import canonical_unit, torque_factor
from logger.header import LIMIT_KINDS, Axle, Conditions, Header, JobFacts, Limit, Test

ROOT = Path(__file__).parents[1]
KINDS = get_args(get_type_hints(Limit)["kind"])
# In words, as a command takes them.
WRITTEN = {
    "min": "breakaway >= 20 N·m",
    "max": "breakaway <= 90 N·m",
    "band": "rotating mean 20..90 N·m",
    "ratio min": "ratio >= 2.5",
}


def section() -> str:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    return text.split("## How to add\n")[1].split("\n## ")[0]


def test_every_place_that_is_named_is_there():
    named = re.findall(r"`([a-z_/]+/(?:[a-z_]+\.py)?)`", section())
    assert len(named) > 12
    assert [name for name in named if not (ROOT / name).exists()] == []


def test_six_things_can_be_added():
    assert len(re.findall(r"^\| an? ", section(), re.MULTILINE)) == 6


@pytest.mark.parametrize("unit", LIMIT_UNITS)
def test_a_unit(unit):
    assert canonical_unit(unit) == unit
    assert torque_factor(unit) > 0


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_on_screen(unit):
    display = Display(unit)
    assert display.torque(40.0).endswith(unit)
    for quantity in Quantity:  # Compare, too
        scale = QuantityScale(quantity, display)
        assert scale.number(40.0)
        assert scale.words(40.0).endswith(scale.unit)


def test_every_kind_of_limit_has_all_that_it_needs():
    assert set(LIMIT_KINDS) == set(KINDS) == set(KIND_WORDS) == set(WRITTEN)


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_of_limit(kind):
    limit = limit_in_words(WRITTEN[kind], source="invented")
    assert limit.kind == kind
    assert [key for key in ("lower", "upper") if getattr(limit, key) is not None] == list(limit.bounds)
    bounds = bounds_from(limit)
    result = decide(50.0, 1.0, bounds)
    assert plain_state(result)
    assert result.to_json()["limit"]["as_written"] == bounds.words
    typed = limit_entry.draft_of(limit)
    checked = limit_entry.check(typed)
    assert not checked.wrong
    assert (checked.limit.kind, checked.limit.lower, checked.limit.upper) == (kind, limit.lower, limit.upper)


ANSWER = next(key for key in QUESTIONS[0].answers if key not in NOT_CHECKED)
# On the page elsewhere than among the fields (analysis/report/page.py), or for the reading only.
ELSEWHERE = {
    "job": {"shop", "tags"},
    "axle": {
        "type_reason",
        "propshaft_error_turns",
        "wheel_error_turns",
        "propshaft_turns",
        "left_turns",
        "right_turns",
    },
    "test": {
        *("place", "held", "gear", "side", "direction", "purpose", "dwell_s", "start_angle_deg", "conditioning_turns"),
        *("speed_rpm", "deviations"),
    },
    "conditions": {"wheel_fitted", "brakes_free", "pads_fitted", "parking_brake", "propshaft_fitted"},
}


def shown(header: Header) -> str:
    issue = Issue(issued=date(2030, 1, 1))
    pairs = [*fields.facts(header, issue), *fields.conditions(header, full=True)]
    return " | ".join(f"{label}: {value}" for label, value in pairs)


@pytest.mark.parametrize(
    ("part", "name"),
    [
        (part, field.name)
        for part, record in (("job", JobFacts), ("axle", Axle), ("test", Test), ("conditions", Conditions))
        for field in msgspec.structs.fields(record)
        if field.name not in ELSEWHERE[part]
    ],
)
def test_a_key_of_the_job_card_is_on_the_page(part, name):
    record = getattr(Header(), part)
    known = {
        "seen": {QUESTIONS[0].key: ANSWER},
        "condition": "used",
        "received": date(2031, 2, 3),
        "ratio": 3.27,
        "shim_mm": 1.23,
    }
    known |= {"modifier_percent": 4.5, "oil_temperature_c": 41.5, "distance_km": 1234.0}
    value = known.get(name, f"mark of {name}")
    with_it = Header(**{part: msgspec.structs.replace(record, **{name: value})})
    assert shown(with_it) != shown(Header()), f"{part}.{name} does not appear: analysis/report/fields.py"


def test_every_answer_on_compare_has_its_panel():
    text = Path(answers.__file__).read_text(encoding="utf-8")
    panels = set(re.findall(r"from (gui\.pages\.answers\.\w+) import (\w+)", text))
    assert len(panels) >= len(answers.NAMES)
    for module, name in panels:
        if name != "AnswerPanel" and name != "Ask":
            assert hasattr(importlib.import_module(module), name)
