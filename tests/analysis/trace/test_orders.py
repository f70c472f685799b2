"""Orders of the turning part: against the virtual axle's own ripples, a general library, and drawn noise."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from analysis.to_axle.at_axle import Level, unstated
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.orders import STEP_RAD, find_waves, round_of, turns_needed
from analysis.trace.reading import read_torque
from analysis.trace.results import Pull, Round
from analysis.verdict.judge import AtAxle
from analysis.verdict.orders import pattern_lines, patterns_of
from logger.header import Axle, Header, Lever, Test
from logger.virtual.lever import LeverModel
from logger.virtual.physics import Scenario, simulate
from logger.virtual.scenarios import axle, drag, pack, pulls

RATIO = 3.73
WHEEL_NM = 0.3 * 6.0  # ripple of the wheel's drag: highest where the wheel's angle is -1 rad (``scenarios.drag``)
PINION_NM = 0.2 * 8.0 / 2  # of the case's drag, felt by half at a wheel turned alone
LEVER = LeverModel(length_m=0.5, mass_kg=3.0, centroid_m=0.2, stud_radius_m=0.06, start_deg=40.0)
FIXTURE = Lever(
    fixture="one stud", length_mm=500.0, length_mm_u=1.0, stud_circle_mm=120.0, stud_circle_mm_u=0.1,
    weight_kg=3.0, centroid_mm=200.0, start_angle_deg=-40.0,
)  # fmt: skip


@cache
def turned(turns: float, direction: int = 1):
    """Turn even packs against drags that ripple once per turn of the wheel and of the pinion, by hand, on a stud."""
    even = axle(pack(45.0, seed=None), pack(45.0, seed=None))
    pinion = drag(8.0, rising=2.0, ripple=0.2, period_rad=2 * math.pi / RATIO)
    even = replace(even, driven_drag=drag(6.0, ripple=0.3), case_drag=pinion)
    actions = pulls(1, direction=direction, turn_rad_s=((0.8, turns * 2 * math.pi / 0.8),))
    return simulate(Scenario("orders", "", even, actions, LEVER, angle_step_deg=0.1), 4)


def read(turns: float, direction: int = 1):
    run = turned(turns, direction)
    pull = read_torque(run.time_s, run.torque_nm, angle_deg=run.angle_deg).pulls[-1]  # before it the lever is fitted
    header = Header(axle=Axle(ratio=RATIO), test=Test(held="other side"))
    start = FIXTURE if direction > 0 else replace_angle(FIXTURE, -40.0)
    at = AtAxle(fixture_from(start), unstated(), Level())
    return run, pull, {p.name: p for p in patterns_of(pull, header, at)}


def replace_angle(lever: Lever, angle_deg: float) -> Lever:
    import msgspec

    return msgspec.structs.replace(lever, start_angle_deg=angle_deg)


def off(angle_deg: float, true_deg: float) -> float:
    return abs((angle_deg - true_deg + 180) % 360 - 180)


@pytest.mark.parametrize("direction", [1, -1])
def test_amplitude_and_phase_are_those_of_the_virtual_axle(direction: int) -> None:
    run, pull, found = read(4.5, direction)
    once, pinion = found["once per turn of the wheel"], found["once per turn of the pinion"]
    assert once.seen
    assert pinion.seen
    # Once per turn as read is drag and lever; with the lever's weight taken off the drag alone is left.
    assert abs(once.lever_off.value - WHEEL_NM) < once.lever_off.u95 < 0.3 * WHEEL_NM
    assert abs(once.at_axle.value - WHEEL_NM) > once.at_axle.u95
    grid = np.arange(run.mechanics.wheel_rad.size) * run.mechanics.step_s
    begun = math.degrees(np.interp(pull.start_s, grid, run.mechanics.wheel_rad))
    assert off(once.lever_off_peak_deg, direction * (math.degrees(-1.0) - begun)) < 12
    assert abs(pinion.at_axle.value - PINION_NM) < pinion.at_axle.u95 < 0.4 * PINION_NM
    assert not found["twice per turn of the pinion"].seen
    assert not found["every second turn of the wheel"].seen  # its packs are even
    rows = {row.input.name for row in once.lever_off.rows}
    assert "lever's weight, not sensed" in rows
    assert "lever's weight, not sensed" not in {row.input.name for row in once.at_axle.rows}


def test_a_pack_that_waves_shows_with_every_second_turn() -> None:
    run = simulate(
        Scenario(
            "wave", "", axle(pack(60.0, seed=3), pack(60.0, seed=None)),
            pulls(1, turn_rad_s=((0.8, 24.0),)), angle_step_deg=0.1,
        ),
        2,
    )  # fmt: skip
    pull = read_torque(run.time_s, run.torque_nm, angle_deg=run.angle_deg).pulls[0]
    half = patterns_of(pull, Header(test=Test(held="other side")), None)[0]
    true_nm = 0.008 * 60.0 / 2  # first order of ``scenarios.pack``, felt as the mean of both packs
    assert half.seen
    assert abs(half.wave.amplitude_nm - true_nm) < half.wave.circle_nm


def test_too_few_turns_say_how_many_it_takes() -> None:
    _, _, found = read(2.5)
    assert found["once per turn of the wheel"].wave is not None
    assert found["once per turn of the pinion"].wave is None
    assert found["once per turn of the pinion"].needs_turns == pytest.approx(1 / (2 * (2 - RATIO / 2)))
    said = "\n".join(said_of(found.values()))
    assert "cannot be told in 2.4 steady turns: once per turn of the pinion takes 3.7" in said
    assert "or the pinion's turn, which takes 3.7 turns to tell from it" in found["twice per turn of the wheel"].hint
    _, _, short = read(0.5)
    assert all(p.wave is None for p in short.values())
    assert said_of(short.values()) == [
        "What repeats per turn cannot be told: the longest pull has 0.4 steady turns, 2 would do"
    ]
    assert pattern_lines([(), ()], str, str) == []  # without an angle there is nothing to say


def said_of(patterns):
    return pattern_lines([tuple(patterns)], lambda v, u: f"{v:.2f} N·m", lambda v, d: f"{v:.{d}f}")


def test_a_pattern_is_called_a_hint_and_never_a_finding() -> None:
    _, _, found = read(4.5)
    for line in said_of(found.values()):
        assert "may be" in line or "taken off" in line or "not seen" in line or "cannot be told" in line


def made(turns: float, orders=(), noise=0.3, r1=0.0, seed=0) -> Round:
    """Make a round: waves (order, cosine, sine), noise whose neighbours depend on each other."""
    rng = np.random.default_rng(seed)
    turn = (np.arange(round(turns * 72)) + 0.5) * STEP_RAD
    rest = np.zeros(len(turn))
    for n, drawn in enumerate(rng.normal(0, noise, len(turn))):
        rest[n] = r1 * rest[n - 1] + math.sqrt(1 - r1**2) * drawn if n else drawn
    shrink = [math.sin(k * STEP_RAD / 2) / (k * STEP_RAD / 2) for k, _, _ in orders]
    waves = sum(s * (a * np.cos(k * turn) + b * np.sin(k * turn)) for s, (k, a, b) in zip(shrink, orders, strict=True))
    return Round(tuple(turn), tuple(40 + 0.1 * turn + rest + waves), STEP_RAD)


@pytest.mark.parametrize("r1", [0.0, 0.5, 0.7])
def test_the_circle_holds_both_parts_and_few_orders_are_seen_that_are_not_there(r1: float) -> None:
    """95 % and 5 % by construction; bounds are those of 300 draws with an error of four deviations."""
    orders, held, false = (0.5, 1.0, 2.0, RATIO / 2), 0, 0
    true = {0.5: (0.0, 0.0), 1.0: (0.3, -0.2), 2.0: (0.0, 0.0), RATIO / 2: (-0.2, 0.1)}
    draws = 300
    for seed in range(draws):
        waves = find_waves(made(3.8, [(k, *ab) for k, ab in true.items()], r1=r1, seed=seed), orders)
        held += sum(
            math.hypot(w.cos_nm - true[w.per_turn][0], w.sin_nm - true[w.per_turn][1]) < w.circle_nm for w in waves
        )
        false += any(w.seen for w in waves if w.per_turn in (0.5, 2.0))
    assert held > 0.92 * 4 * draws
    assert false < 0.10 * draws  # of two such orders, at 5 % for all four together


def test_the_fit_is_that_of_a_general_library() -> None:
    """statsmodels' ordinary least squares and its F test, on rounds whose steps do not depend on each other."""
    from statsmodels.api import OLS

    orders, seen = (0.5, 1.0, 2.0), made(5.0, [(1.0, 0.1, 0.05)], seed=11)
    turn = np.array(seen.turn_rad)
    shrink = [math.sin(k * STEP_RAD / 2) / (k * STEP_RAD / 2) for k in orders]
    columns = [np.ones_like(turn), turn - turn.mean()]
    columns += [s * f(k * turn) for k, s in zip(orders, shrink, strict=True) for f in (np.cos, np.sin)]
    model = OLS(np.array(seen.torque_nm), np.column_stack(columns)).fit()
    waves = find_waves(seen, orders)
    assert [v for w in waves for v in (w.cos_nm, w.sin_nm)] == pytest.approx(model.params[2:])
    if waves[0].dof == pytest.approx(model.df_resid):
        for place, wave in enumerate(waves):
            rows = np.eye(8)[2 + 2 * place : 4 + 2 * place]
            assert wave.seen == (float(model.f_test(rows).pvalue) < 0.05 / 3)


def test_orders_that_coincide_take_no_number_of_turns() -> None:
    assert math.isinf(turns_needed(2.0, (0.5, 1.0, 2.0)))
    header = Header(axle=Axle(ratio=4.0), test=Test(held="other side"))
    pull = Pull(0.0, 1.0, 1, 0.0, round=made(6.0))
    found = {p.name: p for p in patterns_of(pull, header, None)}
    assert found["once per turn of the pinion"].wave is None
    assert found["once per turn of the pinion"].to_json()["needs_turns"] is None


def test_of_the_pinion_nothing_is_said_without_ratio_or_where_it_stands() -> None:
    pull = Pull(0.0, 1.0, 1, 0.0, round=made(6.0))

    def orders(held, ratio):
        header = Header(axle=Axle(ratio=ratio), test=Test(held=held))
        return [round(p.per_turn, 3) for p in patterns_of(pull, header, None)]

    assert orders("other side", 3.9) == [0.5, 1.0, 2.0, 1.95, 3.9]
    assert orders("none", 3.9) == [1.0, 2.0, 3.9, 7.8]
    assert orders("case", 3.9) == [1.0, 2.0]
    assert orders(None, 3.9) == [0.5, 1.0, 2.0]
    assert orders("other side", None) == [0.5, 1.0, 2.0]


def test_an_angle_that_is_not_known_or_does_not_turn_gives_no_round() -> None:
    steady = np.ones(500, bool)
    x = np.full(500, 40.0)
    assert round_of(x, np.full(500, np.nan), steady) is None
    assert round_of(x, np.zeros(500), steady) is None
    assert round_of(x, np.linspace(0, 400, 500), ~steady) is None
    back = round_of(x, np.linspace(0, -400, 500), steady)
    assert back.turns == pytest.approx(400 / 360, rel=0.02)
    assert min(back.turn_rad) >= 0
