"""Parts of the reading that whole traces seldom reach: waves round the turn, spin-downs, small filters, borders."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.trace import averaging, gates, held, live, orders, results, smooth, spin_down, traces
from analysis.trace.results import Breakaway, Pull, Rotating, Round, Turned
from tests.kept import kept, tried
from tests.steps import steps

STEP_DEG = 5


def seen(turns: float, waves: dict[float, tuple[float, float]], *, drift: float = 0.0, rough: float = 0.0) -> Round:
    turn = np.radians(STEP_DEG) * np.arange(round(turns * 360 / STEP_DEG))
    x = 40 + drift * turn + rough * (((np.arange(len(turn)) * 0.618034) % 1) - 0.5)
    for order, (a, b) in waves.items():
        x = x + a * np.cos(order * turn) + b * np.sin(order * turn)
    return Round(tuple(turn.tolist()), tuple(np.round(x, 6).tolist()), math.radians(STEP_DEG))


ROUNDS = {
    "once": (seen(3, {1.0: (1.0, 0.5)}, rough=0.4), (1.0,)),
    "thrice": (seen(4.2, {0.5: (0.4, 0.2), 1.0: (1, 0), 2.0: (0.0, 0.3)}, drift=0.02, rough=0.6), (0.5, 1.0, 2.0)),
    "pinion": (seen(6, {1.95: (0.5, 0.5), 1.0: (0.2, 0.1)}, rough=1.0), (0.5, 1.0, 2.0, 1.95, 3.9)),
    "nothing": (seen(3, {}, rough=2.0), (1.0, 2.0)),
    "few": (seen(0.1, {1.0: (1, 1)}), (1.0, 2.0)),
    "twice the same": (seen(3, {1.0: (1, 1)}, rough=0.3), (1.0, 1.0)),
    "smooth": (seen(3, {0.9: (1, 1)}), (1.0,)),
    "short": (seen(0.4, {1.0: (0.5, 0)}, rough=0.1), (1.0, 2.0)),
}


@pytest.mark.parametrize("name", ROUNDS)
def test_kept_waves(name):
    of, wanted = ROUNDS[name]
    with steps("analysis.trace.orders", "analysis.trace.averaging") as said:
        answers = [
            of.turns,
            tried(orders.find_waves, of, wanted),
            [orders.turns_needed(k, wanted[:n]) for n, k in enumerate(wanted)],
        ]
        angle = np.degrees(of.turn_rad)
        for way in (1.0, -1.0):
            for steady in (np.ones(len(angle), bool), np.arange(len(angle)) > 5, np.zeros(len(angle), bool)):
                answers.append(tried(orders.round_of, np.array(of.torque_nm), way * angle + 3.0, steady))
        for n in (1, 2, 3):
            few = np.arange(n) * 11.0
            answers.append(tried(orders.round_of, 40 + few, few, np.ones(n, bool)))
    kept("trace-parts", f"waves {name}", [answers, said])


SPINS = {
    "good": (6.0, 0.8, 0.0, 200),
    "curved": (6.0, 0.8, 0.05, 100),
    "slow": (1.0, 0.2, 0.0, 50),
    "short": (0.6, 0.9, 0.0, 100),
    "rough": (8.0, 1.0, 0.0, 20),
    "long": (20.0, 0.5, 0.0, 100),
    "none": (0.0, 0.0, 0.0, 100),
}


@pytest.mark.parametrize("name", SPINS)
@pytest.mark.parametrize("way", [1, -1])
def test_kept_spin_downs(name, way):
    """Pushed for a second, then slowing by a known rate."""
    speed, slowing, curve, rate = SPINS[name]
    t = np.arange(0, 1.0 + (speed / slowing if slowing else 3.0) + 1.0, 1 / rate)
    since = np.clip(t - 1, 0, None)
    v = np.where(t < 1, speed * t, np.clip(speed - slowing * since - curve * since**2 / 2, 0, None))
    angle = np.round(np.degrees(np.cumsum(v) / rate) * way, 1 if name != "rough" else 0)
    gap = np.where(np.arange(len(t)) % 17 == 3, np.nan, angle)
    answers = []
    with steps("analysis.trace.spin_down") as said:
        for drag, u in ((3.0, 0.1), (3.0, 0.0), (0.0, 0.1), (3.0, -1.0), (math.inf, 0.1)):
            answers.append(tried(spin_down.inertia_of, t, angle, drag, u))
        answers.append(tried(spin_down.inertia_of, t, gap, 3.0, 0.1))
        answers.append(tried(lambda: spin_down.inertia_of(t, angle, 3.0, 0.1).quickest_rad_s2(40.0)))
        answers += [tried(spin_down.inertia_of, t[:n], angle[:n], 3.0, 0.1) for n in (0, 3, rate, 2 * rate)]
    kept("trace-parts", f"spin-down {name} {way}", [answers, said])


ROWS = {
    "whole": np.arange(1.0, 13.0),
    "steps": np.array([0, 0, 1, 1, 2, 2, 2, 5, 5, 0, 0, 0.0]),
    "noise": (np.arange(90) * 0.618034) % 1,
    "one": np.array([3.0]),
    "two": np.array([3.0, 4.0]),
    "wave": np.sin(np.arange(200) / 9),
    "same": np.full(9, 4.0),
    "empty": np.empty(0),
    "four": np.array([1.0, 2.0, 4.0, 8.0]),
    "ramp": np.r_[np.zeros(9), np.arange(0, 60, 6.0)],
}


@pytest.mark.parametrize("name", ROWS)
def test_kept_filters(name):
    x = ROWS[name]
    answers = [tried(smooth.moving_mean, x, n) for n in (0, 1, 2, 3, 5, 40)] + [
        tried(smooth.block_means, x, n) for n in (1, 2, 5)
    ]
    answers += [tried(smooth.quantile, x, share) for share in (0.0, 0.25, 0.5, 0.95, 1.0)]
    answers += [tried(call, x) for call in (smooth.crowded, smooth.thin, smooth.sample_noise, smooth.least_noise)]
    answers += [
        tried(smooth.thin, np.tile(x, 700)),
        tried(smooth.parabola, np.arange(len(x)) / 3, x) if len(x) > 3 else 0,
    ]
    answers += [
        tried(call, x) for call in (averaging.autocorrelation, averaging.mean_uncertainty, averaging.level_uncertainty)
    ]
    answers += [tried(averaging.level_uncertainty, x, least) for least in (2.0, 9.0)] + [
        tried(averaging.neighbours_alike, x, 0.9)
    ]
    answers += [tried(averaging.expected_maximum, x, noise) for noise in (0.0, 0.1, 2.0)] + [
        tried(averaging.highest_of, x, n) for n in (1, 3)
    ]
    answers += [tried(traces.spikes, x, noise) for noise in (0.0, 0.1, 1.0)]
    t = np.arange(len(x)) / 10
    answers += [
        tried(gates.stuck, t, x),
        tried(gates.gaps, np.cumsum(np.abs(x) + 0.1)),
        tried(gates.silences, np.cumsum(np.abs(x) + 0.1)),
    ]
    answers += [tried(gates.fell_at_once, t, x, at, 2.0) for at in (0, 4, 8)] + [
        tried(gates.near, x > 2, at) for at in (0, 3, 9)
    ]
    answers += [tried(gates.clipped, x, traces.Sensor(capacity_nm=c), r) for c in (None, 5.0, 12.0) for r in (0.0, 1.0)]
    kept("trace-parts", f"filters {name}", answers)


def test_kept_sensors_and_intake():
    sizes = (None, 0.0, -1.0, 1e6, 1.1e6, math.nan)
    names = ("capacity_nm", "resolution_nm", "accuracy_percent_of_reading", "gain_u", "delay_s", "delay_s_u")
    answers = [tried(traces.Sensor, **{name: size}) for name in names for size in sizes]
    answers += [tried(traces.Sensor, gain=gain) for gain in (0.1, 0.09, 10.0, 10.1, 1.0)]
    stamps = {
        "even": np.arange(20) / 10,
        "seconds": np.floor(np.arange(20) / 4),
        "back": np.r_[np.arange(9), np.arange(9)] * 1.0,
        "late": np.array([0, 1, 2, 1.5, 3, 2.5, 4, 5, 4.5]),
        "set back": np.r_[100.0, 101, 102, 50, 51, 52, 53],
        "broken": np.array([0, 1, np.nan, 2, np.inf, 3, -1e12, 4]),
        "same": np.zeros(9),
        "border": np.array([0, 1.0, 2.0, 1.0, 2.0, 3.0]),
        "far": np.array([0, 1e11, 2e11, 3.0, 4.0]),
    }
    for name, t in stamps.items():
        y = np.where(np.arange(len(t)) % 6 == 5, np.nan, np.arange(len(t)) * 1e5 * (name == "far") + np.arange(len(t)))
        for size in (1, 4, 99):
            intake = traces.Intake(traces.Sensor(gain=2.0 if name == "even" else None))
            given = [
                intake.feed(t[at : at + size], y[at : at + size], y[at : at + size]) for at in range(0, len(t), size)
            ]
            answers.append(
                [
                    given,
                    intake.finish(),
                    intake.counts,
                    intake.counts.problems(),
                    [intake.as_written(s) for s in (0.0, 5.0, 104.0)],
                ]
            )
    answers += [tried(traces.Intake(traces.Sensor()).feed, [0.0, 1.0], y) for y in ([1.0], [[1.0, 2.0]], [1.0, 2.0])]
    for steps_s in (
        (0.1,) * 30,
        (0.1, 0.1, 0.9) + (0.1,) * 20,
        (0.1,) * 9 + (0.5,) + (0.01,) * 12 + (0.1,) * 9,
        (0.1,) * 5 + (0.25,) + (0.1,) * 9,
        (0.1,) * 8 + (2.0,),
    ):
        found = live._Gaps()
        times = np.cumsum(steps_s)
        for at in range(0, len(times), 4):
            found.look(times[at : at + 4], 0.1)
        answers.append(found.problems())
    kept("trace-parts", "intake", answers)


def test_kept_held_wheels():
    slip, level = Breakaway(2.0, 46.0, 0.1, 0.5, True), Rotating(2.5, 4.5, 40.0, 0.1, 0.4, 41.0)
    answers = []
    for whole in (0.0, 10.0, 60.0):
        for share in (0.0, 0.05, 0.5, 0.89, 0.9, 1.0):
            for steady in (None, 1.99, 2.0, 2.1, 9.0):
                turned = Turned(
                    0.1,
                    0.5,
                    0.3,
                    math.radians(whole),
                    math.radians(whole * share),
                    None if steady is None else math.radians(steady),
                )
                answers += [
                    held.held_of(Pull(1.0, 5.0, 1, 0.2, slip, level, turned=turned)),
                    held.held_of(Pull(1.0, 5.0, 1, 0.2, turned=turned)),
                ]
    answers = [[one.reasons, one.notes] for one in answers]
    own = Pull(1.0, 5.0, 1, 0.2, slip, level, turned=Turned(0.1, 0.5))
    answers += [
        held.held_unknown(pulls, way)
        for pulls in ((), (own,), (Pull(1.0, 5.0, 1, 0.2),))
        for way in (None, "other side", "case")
    ]
    answers.append([own.valid, list(results.Code)])
    kept("trace-parts", "held wheels", answers)
