"""Measured traces of a real rig, which nobody simulated (tests/data/real, CC0-1.0, source in its README)."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest

from analysis.trace.reading import read_torque

if TYPE_CHECKING:
    from analysis.trace.results import Pull

FOLDER = Path(__file__).resolve().parents[2] / "data" / "real"
LABELS: dict[str, Any] = json.loads((FOLDER / "labels.json").read_text("utf-8"))["traces"]
SEALS = sorted(name for name in LABELS if name.startswith("seal"))
STROKES = sorted(name for name in LABELS if name.startswith("reverse"))


@cache
def pulls(name: str) -> tuple[Pull, ...]:
    time_s, torque_nm = np.genfromtxt(FOLDER / "traces" / f"{name}.csv", delimiter=",", skip_header=1, unpack=True)
    return read_torque(time_s, torque_nm).pulls


def at(name: str, label: dict[str, Any]) -> Pull:
    """Give the one pull that holds the middle of what is labelled."""
    first, last = label["plateau_window_s"]
    (found,) = [p for p in pulls(name) if p.start_s <= (first + last) / 2 <= p.end_s]
    return found


def covers(stated: float, u95: float, label: dict[str, Any], kind: str) -> bool:
    choices = [label[kind], *label.get(f"{kind}_alternatives", [])]
    return min(abs(stated - abs(c)) for c in choices) <= u95 + label[f"{kind}_tol"]


@pytest.mark.parametrize("name", SEALS)
def test_every_stroke_of_a_seal_is_found_and_covered(name):
    (label,) = LABELS[name]["pulls"]
    pull = at(name, label)
    if label["breakaway"] is not None:
        assert pull.breakaway is not None
        assert covers(pull.breakaway.at_sensor_nm, pull.breakaway.u95_sensor_nm, label, "breakaway")
    if pull.rotating is not None:
        assert covers(pull.rotating.at_sensor_nm, pull.rotating.u95_sensor_nm, label, "plateau")
    assert pull.rotating is not None or pull.reasons  # what is not stated has its reason


def test_most_of_them_are_valid():
    assert sum(at(name, LABELS[name]["pulls"][0]).valid for name in SEALS) >= 8


@pytest.mark.parametrize("name", STROKES)
def test_strokes_to_and_fro_count_from_the_level_before_the_first(name):
    """A reversal that takes the opposite level for its hand-off level states twice the torque."""
    for label in LABELS[name]["pulls"]:
        pull = at(name, label)
        assert pull.rotating is not None
        assert covers(pull.rotating.at_sensor_nm, pull.rotating.u95_sensor_nm, label, "plateau")
        if pull.valid:
            assert pull.rotating.at_sensor_nm == pytest.approx(abs(label["plateau"]), rel=0.05)


@pytest.mark.parametrize("name", [*SEALS, *STROKES])
def test_nothing_else_is_stated(name):
    stated = [p for p in pulls(name) if p.breakaway or p.rotating]
    assert len(stated) <= len(LABELS[name]["pulls"])
