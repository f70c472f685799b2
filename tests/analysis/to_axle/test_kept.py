"""Fixtures, zeros, dials and drag brought to the axle over their whole range, held against what was kept."""

from __future__ import annotations

import math
from itertools import product

import msgspec
import numpy as np
import pytest

from analysis.to_axle.at_axle import (
    Level,
    TracedTorque,
    at_axle,
    instrument_from,
    level_from,
    sensor_from,
    trials_model,
    unstated,
    waves_left,
)
from analysis.to_axle.calibration import calibration_of, unlevered
from analysis.to_axle.dial import Dial, dial_reading
from analysis.to_axle.drag import (
    Drag,
    Matrix,
    factor_two,
    half_speed_note,
    held_end,
    in_gear_ratio,
    pack_mean,
    pack_mean_one_side,
    rolling,
)
from analysis.to_axle.fixtures import fixture_from
from analysis.to_axle.friction import (
    drag_check,
    friction_figure,
    pinion_at_axle,
    radius_even_pressure,
    radius_even_wear,
)
from analysis.to_axle.lever import assumed_weight, grip_factor, grip_slopes
from analysis.to_axle.true_zero import zero_at_start
from analysis.uncertainty.budget import Input, propagate
from logger.header import Lever, TransducerFacts, Zero
from tests.kept import everything, kept, tried
from tests.steps import steps

ROOM = "analysis.to_axle"
WEIGHED = {"weight_kg": 2.5, "centroid_mm": 210.0, "start_angle_deg": -20.0}
LEVERS = {
    "one stud": Lever(
        fixture="one stud", length_mm=450, length_mm_u=1, stud_circle_mm=114.3, angle_deg=0, pull_angle_deg=0, **WEIGHED
    ),
    "stud by chord": Lever(
        fixture="one stud", length_mm=450, studs=5, chord_mm=67.2, chord_apart=1, angle_deg=10, angle_deg_u=2
    ),
    "both stud and chord": Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, studs=5, chord_mm=67.2),
    "chords that disagree": Lever(
        fixture="one stud", length_mm=450, stud_circle_mm=114.3, studs=5, chord_mm=60.0, chord_apart=2
    ),
    "cross-bar": Lever(fixture="cross-bar", length_mm=600, offset_mm=3, offset_mm_u=1, **WEIGHED),
    "hub": Lever(fixture="hub centre", **WEIGHED),
    "hub, weight not stated": Lever(fixture="hub centre"),
    "hub, half a weight": Lever(fixture="hub centre", weight_kg=1.0),
    "couple": Lever(fixture="couple", length_mm=500, length_mm_u=2),
    "force": Lever(fixture="force at radius", radius_mm=450, radius_mm_u=2, pull_angle_deg=5, pull_angle_deg_u=3),
    "cord": Lever(fixture="cord", radius_mm=300, cord_mm=4, radius_mm_u=1),
    "in-line": Lever(fixture="in-line"),
    "dead weight": Lever(fixture="dead weight", radius_mm=500, angle_deg=15, angle_deg_u=2),
    "held side": Lever(fixture="held side", length_mm=400),
    "grip": Lever(
        fixture="one stud",
        length_mm=500,
        stud_circle_mm=100,
        grip_mark_mm=480,
        gauge_mm=60,
        gauge_mm_u=3,
        pull_angle_deg=4,
    ),
    "grip at hub": Lever(fixture="hub centre", length_mm=500, grip_mark_mm=450, gauge_mm=60),
    "nothing": Lever(fixture="one stud"),
    "absurd": Lever(
        fixture="one stud", length_mm=-5, stud_circle_mm=1e9, angle_deg=400, pull_angle_deg=95, weight_kg=-1
    ),
    "short": Lever(fixture="one stud", length_mm=40, stud_circle_mm=114.3, angle_deg=180),
    "uncertain": Lever(
        fixture="force at radius", radius_mm=450, radius_mm_u=-2, pull_angle_deg=5, pull_angle_deg_u=200
    ),
}
READINGS = [
    TracedTorque("breakaway", 46.0, 0.3),
    TracedTorque("breakaway", 46.0, 0.3, -1, 1.5, None, None, 0.4, 0.2, 0.05),
    TracedTorque("rotating mean", 40.0, 0.1, 1, -2.5, 0.6, 1.2, 0.0, 0.1, 0.02),
    TracedTorque("rotating mean", 40.0, 0.0, -1, 4.0, -2.0, 0.5),
]
FACTS = [
    TransducerFacts(),
    TransducerFacts(capacity_nm=200.0, accuracy_percent_of_reading=0.5, resolution_nm=0.01),
    TransducerFacts(capacity_nm=100.0, accuracy_percent_of_full_scale=0.2, gain=1.02, gain_u=0.003),
    TransducerFacts(gain=0.98, resolution_nm=0.5, filter_delay_s=0.05, filter_delay_s_u=0.01, rate_hz=100),
    TransducerFacts(capacity_n=500.0, resolution_n=0.1, accuracy_percent_of_reading=1.0),
    TransducerFacts(accuracy_percent_of_full_scale=1.0),
    TransducerFacts(gain=1e-7),
    TransducerFacts(capacity_nm=-1.0),
    TransducerFacts(gain=1.0, gain_u=2e6),
]
LEVELS = [Level(), Level(0.4, 0.02, True, "true zero"), Level(-1.0, 0.1, True, "true zero", 0.3)]


@pytest.mark.parametrize("name", LEVERS)
def test_kept_torques_at_the_axle(name):
    with steps(ROOM, "analysis.uncertainty") as said:
        try:
            fixture = fixture_from(LEVERS[name])
        except ValueError as error:
            fixture, answers = None, [error]
        if fixture is not None:
            answers = [everything(fixture)]
            turns = (None, 0.0, 0.5, -2.0, 7.0)
            answers += [tried(fixture.unsensed_nm, turn) for turn in turns[1:]]
            for reading, facts, level in zip(READINGS, FACTS[:4], (*LEVELS, LEVELS[1]), strict=True):
                budget = at_axle(reading, fixture, instrument_from(facts), level)
                answers.append(everything(budget))
                inputs, model = trials_model(reading, fixture, budget)
                answers.append([model({one.name: one.value * 1.01 for one in inputs}), [one.name for one in inputs]])
            answers += [
                tried(dial_reading, shown, dial, fixture)
                for shown, dial in ((46.0, Dial(1.0)), (3.0, Dial(2.0, 0.04, 100.0)))
            ]
    kept("to-axle", name, [answers, said])


def test_kept_instruments():
    answers = [[tried(instrument_from, one), tried(sensor_from, one)] for one in FACTS]
    answers += [tried(instrument_from(one).inputs, 40.0) for one in FACTS[:4]]
    answers += [tried(unstated, step, most) for step, most in ((0.0, None), (0.5, 100.0))]
    zeros = [
        None,
        Zero(),
        Zero(value_nm=0.4),
        Zero(value_nm=0.4, value_nm_u=0.02, how="lever off"),
        Zero(value_nm=0.4, value_nm_u=0.02, after_nm=0.6, how="unloaded"),
        Zero(value_nm=1e7),
        Zero(value_nm=0.1, value_nm_u=-1.0),
        Zero(value_nm=-0.4, how="lever hanging", after_nm=-0.4),
    ]
    answers += [
        tried(level_from, zero, gain=gain, resolution_nm=step)
        for zero in zeros
        for gain, step in ((1.0, 0.0), (1.1, 0.5))
    ]
    answers += [
        waves_left(turn, steady)
        for turn in (None, 0.0, 1.0, 3.0, 6.3, 12.6, 13.0, 25.2, 40.0)
        for steady in (0.0, 0.5, 2.0, 10.0)
    ]
    answers += [tried(assumed_weight, length) for length in (None, 0.1, 0.45, 1.0)]
    kept("to-axle", "instruments", answers)


def test_kept_grips():
    values = [
        dict(zip(("length", "mark", "gauge", "pull"), v, strict=True))
        for v in product((0.4, 0.5), (0.38, 0.5), (0.05, 0.1), (0.0, 0.1))
    ]
    answers = []
    for one in values:
        for call in (grip_factor, grip_slopes):
            try:
                answers.append(call(one))
            except KeyError as error:
                answers.append(str(error))
    kept("to-axle", "grips", answers)


def test_kept_calibrations():
    answers = []
    for unit, name, facts in product(("N·m", "lbf·in", "N", "kgf"), ("hub", "force", "dead weight", None), FACTS[:5]):
        lever = LEVERS[name] if name else None
        found = tried(calibration_of, facts, unit, lever)
        answers.append(found)
        if not isinstance(found, Exception):
            made = calibration_of(facts, unit, lever)
            x = np.array([1.0, -2.5])
            answers.append(
                [tried(call, x) for call in (made.as_read, made.true)]
                + [tried(made.facts, facts) if callable(made.facts) else 0]
            )
    answers += [tried(unlevered, facts, unit) for facts in FACTS[:5] for unit in ("N", "lbf·in")]
    kept("to-axle", "calibrations", answers)


def budget(value: float, u: float = 0.5, name: str = "rotating mean"):
    inputs = (Input("trace", 0.0, u, dof=4), Input("calibration", 1.0, 0.005, "1", shared=True))
    return propagate(name, lambda x: x["trace"] + x["calibration"] * value, inputs)


def test_kept_drag():
    right, left, free = budget(46.0), budget(41.0, 0.3), budget(9.0, 0.2)
    other = budget(9.0, 0.2, "breakaway")
    cells = {("right", 1): right, ("right", -1): left, ("left", 1): budget(90.0), ("left", -1): budget(44.0)}
    answers = [
        tried(pack_mean, right, left, free),
        tried(pack_mean, right, left, other),
        tried(pack_mean_one_side, right, free),
        tried(pack_mean_one_side, right, free, wheel_ends_differ_nm=2.0),
        tried(held_end, right, budget(30.0)),
        tried(held_end, right, budget(30.0), budget(2.0)),
        [tried(in_gear_ratio, right, b) for b in (free, left, budget(0.0))],
        [half_speed_note(a, b) for a in (None, 0.0, 1.0, 2.0) for b in (None, 0.5, 0.7, 0.71, 0.34, 0.35)],
        [factor_two(40.0, b) for b in (0.0, -1.0, 40.0, 69.9, 70.0, 80.0, 90.0, 90.1, 20.0)],
        [rolling(side, way) for side in ("left", "right") for way in (1, -1)],
        [tried(call, right) for call in (Drag().correct, Drag(free, other).correct, Drag(None, other, 0.3).correct)],
        [
            [matrix.words(), matrix.pair("forwards"), tried(matrix.difference, "backwards")]
            for matrix in map(Matrix, (cells, {}))
        ],
    ]
    kept("to-axle", "drag", answers)


def test_kept_friction():
    answers = [
        [tried(call, a, b) for a, b in ((0.1, 0.06), (0.1, 0.1), (0.05, 0.0))]
        for call in (radius_even_wear, radius_even_pressure)
    ]
    for surfaces, load, outer, inner, load_u, face_u in (
        (8, 500.0, 0.1, 0.06, None, None),
        (2, 50.0, 0.1, 0.06, 5.0, 0.001),
        (8, 0.0, 0.1, 0.06, None, None),
        (8, 500.0, 0.06, 0.1, None, None),
        (0, 500.0, 0.1, 0.06, None, None),
        (1, 500.0, 0.1, 0.1, 0.0, 0.0),
    ):
        answers.append(
            tried(friction_figure, budget(60.0), surfaces, load, outer, inner, load_u_n=load_u, face_u_m=face_u)
        )
    pinions = [tried(pinion_at_axle, a, u, r) for a, u, r in ((2.0, 0.1, 3.9), (0.0, 0.1, 4.0), (2.0, 0.0, 1.0))]
    answers.append(pinions)
    pinion = pinion_at_axle(2.0, 0.1, 3.9)
    answers += [tried(drag_check, pinion, budget(value, 0.3)) for value in (2.0, 7.0, 7.8, 8.6, 9.0, 30.0)]
    kept("to-axle", "friction", answers)


def test_kept_zeros_at_the_start():
    t = np.arange(0, 3, 0.01)
    still = 0.4 + 0.01 * np.where(np.arange(300) % 2, 1, -1)
    shapes = {
        "still": still,
        "loaded": np.where(t > 1, 40 * (t - 1), still),
        "soon": np.where(t > 0.3, 40 * (t - 0.3), still),
        "swings": still + np.sin(9 * t),
        "drifts": still + 0.2 * t,
        "steps": still + (t > 1.5),
        "late": still + 5 * (t < 0.5),
    }
    noises = ((0.0, 0.0), (0.01, 0.0), (0.1, 0.05), (0.01, 0.5))
    answers = {name: [tried(zero_at_start, t, x, *noise) for noise in noises] for name, x in shapes.items()}
    answers |= {f"few {n}": tried(zero_at_start, t[:n], still[:n], 0.01) for n in (0, 1, 5, 30, 60)}
    answers |= {"slow": tried(zero_at_start, t[::25], still[::25], 0.01), "units": [math.pi]}
    kept("to-axle", "zeros", answers)


def test_kept_dials():
    dials = [
        (None, None, None),
        (1.0, None, None),
        (0.5, 0.04, None),
        (2.0, 0.04, 100.0),
        (-1.0, None, None),
        (1.0, 2.0, None),
        (1.0, None, 10.0),
    ]
    answers = []
    fixture = fixture_from(LEVERS["hub"])
    for marks, error, full in dials:
        made = tried(Dial, marks, error, full)
        answers.append(made)
        if not isinstance(made, Exception):
            dial = Dial(marks, error, full)
            for shown in (0.0, 3.0, 9.9, 19.9, 20.0, 46.0, 99.0, 120.0, -5.0):
                answers.append(
                    [
                        tried(dial.half_width, shown) if callable(dial.half_width) else dial.half_width,
                        tried(dial.doubts, shown) if callable(dial.doubts) else 0,
                        tried(dial_reading, shown, dial, fixture, quantity="rotating mean"),
                    ]
                )
    kept("to-axle", "dials", answers)
    assert msgspec.structs.fields(Lever)
