"""How right, how honest and how quick the reading is, beside plain methods in the same run.

Right and honest: on random draws of the virtual transducer and on recordings of another simulation, scored against
their truth (``tests/analysis/scoring.py``). Plain methods state no interval, which costs them up to 10 of 100.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TYPE_CHECKING, Any

import numpy as np

from analysis.trace.live import LiveReader
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor
from logger.foreign.stamps import put_in_order
from logger.virtual.physics import simulate
from tests.analysis import practice, scoring, unseen
from tests.analysis.draws import FAMILIES, draw
from tests.analysis.made import Shape, trace
from tests.analysis.trace import test_real_traces as real
from tests.bench.plain_methods import METHODS

if TYPE_CHECKING:
    from analysis.trace.results import Pull
    from logger.virtual.physics import SimulatedRun

SEEDS = range(1000, 1000 + int(os.environ.get("HELDWHEEL_BENCH_SEEDS", "30")))
"""Seeds per family; they were never looked at while the analysis was made."""

UNSEEN_SEEDS = range(31100, 31100 + int(os.environ.get("HELDWHEEL_BENCH_SEEDS", "15")))

OURS = "ours"


def run() -> list[dict[str, Any]]:
    """Give the rows for ``make bench``."""
    return [*_quick(), *_practice(), *_other_physics(), *_real(), *_draws(), *_unseen()]


def _practice() -> list[dict[str, Any]]:
    accounts = {name: scoring.families() for name in (OURS, *METHODS)}
    for name in practice.names():
        one = practice.load(name)
        reading = read_torque(one.time_s, one.torque_nm, angle_deg=one.angle_deg, sensor=one.sensor)
        scoring.add(accounts[OURS][one.family], one.truth, reading.pulls)
        for method, plain in METHODS.items():
            scoring.add(accounts[method][one.family], one.truth, _plainly(plain, one.time_s, one.torque_nm))
    return _compared("18 foreign simulated recordings", accounts, 90)


def _other_physics() -> list[dict[str, Any]]:
    """Recordings of other equations, hands and loggers; the reading's constants were chosen with them in sight."""
    accounts = {name: scoring.families() for name in (OURS, *METHODS)}
    for name in practice.names(practice.OTHER_PHYSICS):
        one = practice.load(name, practice.OTHER_PHYSICS)
        stamps = put_in_order(one.time_s, one.torque_nm)
        t, y = one.time_s[stamps.rows], one.torque_nm[stamps.rows]
        angle = None if one.angle_deg is None else one.angle_deg[stamps.rows]
        scoring.add(accounts[OURS][one.family], one.truth, read_torque(t, y, angle_deg=angle, sensor=one.sensor).pulls)
        for method, plain in METHODS.items():
            even = t if (np.diff(t) > 0).all() else np.linspace(t[0], t[0] + float(np.ptp(t)), len(t))
            scoring.add(accounts[method][one.family], one.truth, _plainly(plain, even, y))
    return [*_compared("89 recordings of other physics", accounts, 85), *_honest(accounts[OURS])]


def _honest(account: dict[str, scoring.Family]) -> list[dict[str, Any]]:
    """Give recall, coverage and width over all families, and each family's score."""
    every = [e for family in account.values() for e in (family.breakaway, family.rotating)]
    inside, stated = (sum(n) for n in zip(*(e.covered() for e in every), strict=True))
    wide = 100 * float(np.mean([u for e in every for _, u in e.stated()]))
    found, pulls = sum(f.found for f in account.values()), sum(f.pulls for f in account.values())
    return [
        *(_row(f"  {name}: score", family.score(), "", None, "") for name, family in account.items()),
        _row("  pulls found, %", 100 * found / pulls, "", 100 * found / pulls, ">= 97"),
        _row(
            "  errors inside the stated 95 % interval, %", 100 * inside / stated, "95", 100 * inside / stated, ">= 88"
        ),
        _row("  mean half-width of that interval, %", wide, "", wide, "<= 5"),
        _row("  false pulls", sum(f.false for f in account.values()), "0", None, ""),
    ]


def _real() -> list[dict[str, Any]]:
    """Measured traces of piston seals, which nobody simulated (tests/data/real): strokes stated and covered."""
    labels = [(name, label) for name, one in real.LABELS.items() for label in one["pulls"]]
    stated = [(real.at(name, label), label) for name, label in labels]
    right = [
        real.covers(pull.rotating.at_sensor_nm, pull.rotating.u95_sensor_nm, label, "plateau")
        for pull, label in stated
        if pull.rotating is not None
    ]
    valid = sum(pull.valid for pull, _ in stated)
    return [
        _row(
            "37 measured strokes: rotating torque stated", len(right), len(labels), len(right) / len(labels), ">= 0.9"
        ),
        _row(
            "  of them inside the interval and the label's tolerance",
            sum(right),
            len(right),
            sum(right) / len(right),
            "1",
        ),
        _row("  called valid", valid, len(labels), None, ""),
    ]


def _unseen() -> list[dict[str, Any]]:
    """Families of other kinds than those that constants were chosen on: these judge."""
    jobs = [(family, seed) for family in unseen.UNSEEN for seed in UNSEEN_SEEDS]
    accounts = {name: scoring.families() for name in (OURS, *METHODS)}
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        for (family, _), (truth, read) in zip(jobs, pool.map(_one_unseen, jobs, chunksize=2), strict=True):
            for name, pulls in read.items():
                scoring.add(accounts[name][family], truth, pulls)
    return [*_compared(f"{len(jobs)} draws of kinds not tuned on", accounts, 80), *_honest(accounts[OURS])]


def _draws() -> list[dict[str, Any]]:
    jobs = [(family, seed) for family in FAMILIES for seed in SEEDS]
    accounts = {name: scoring.families() for name in (OURS, *METHODS)}
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        for (family, _), (truth, read) in zip(jobs, pool.map(_one, jobs, chunksize=4), strict=True):
            for name, pulls in read.items():
                scoring.add(accounts[name][family], truth, pulls)
    rows = _compared(f"{len(jobs)} virtual draws", accounts, 88)
    for family, account in accounts[OURS].items():
        rows.append(_row(f"  {family}: score", account.score(), "", None, ""))
    every = [e for account in accounts[OURS].values() for e in (account.breakaway, account.rotating)]
    inside, stated = (sum(n) for n in zip(*(e.covered() for e in every), strict=True))
    widths = [u for e in every for _, u in e.stated()]
    share, wide = 100 * inside / stated, 100 * float(np.mean(widths))
    return [
        *rows,
        _row("  errors inside the stated 95 % interval, %", share, "95", share, ">= 92"),
        _row("  mean half-width of that interval, %", wide, "", wide, "<= 2.5"),
        _row("  false pulls in recordings without one", accounts[OURS]["adversarial"].false, "0", None, ""),
    ]


def _compared(what: str, accounts: dict[str, dict[str, scoring.Family]], floor: float) -> list[dict[str, Any]]:
    ours = scoring.overall(accounts[OURS])
    rows = [_row(f"{what}: score of 100", ours, "", ours, f">= {floor}")]
    for method in METHODS:
        plain = scoring.overall(accounts[method])
        rows.append(_row(f"  beside {method}", ours, plain, ours / plain, ">= 1.1"))
    return rows


def _one(job: tuple[str, int]) -> tuple[dict[str, Any], dict[str, tuple[Pull, ...]]]:
    return _read(simulate(draw(*job), job[1]))


def _one_unseen(job: tuple[str, int]) -> tuple[dict[str, Any], dict[str, tuple[Pull, ...]]]:
    return _read(simulate(unseen.draw(*job), job[1]))


def _read(run_of: SimulatedRun) -> tuple[dict[str, Any], dict[str, tuple[Pull, ...]]]:
    known = run_of.scenario.sensor
    sensor = Sensor(
        capacity_nm=known.capacity_nm,
        accuracy_percent_of_reading=None if known.gain_known else known.accuracy_percent,
        gain=known.gain if known.gain_known else None,
        delay_s=known.group_delay_s,
    )
    reading = read_torque(run_of.time_s, run_of.torque_nm, angle_deg=run_of.angle_deg, sensor=sensor)
    read = {OURS: reading.pulls}
    for name, plain in METHODS.items():
        read[name] = _plainly(plain, run_of.time_s, run_of.torque_nm / (sensor.gain or 1.0))
    return _truth(run_of), read


def _plainly(plain: Any, time_s: np.ndarray, torque_nm: np.ndarray) -> tuple[Pull, ...]:
    good = np.isfinite(torque_nm)
    return plain(time_s[good], torque_nm[good]) if good.sum() > 10 else ()


def _truth(run_of: SimulatedRun) -> dict[str, Any]:
    pulls = []
    for true in run_of.truth:
        recorded = "breakaway not recorded" not in true.flags
        pulls.append(
            {
                "t_start": true.start_s,
                "t_end": true.end_s,
                "valid": true.kind == "pull" and true.onset_s is not None,
                "regrip": len(true.steady) > 1,
                "breakaway": true.breakaway_nm if recorded else None,
                "t_breakaway": true.breakaway_s if recorded else None,
                "peak_class": true.peak_class,
                "plateau": true.plateau_nm,
                "flags": [flag.replace(" ", "_") for flag in true.flags],
            }
        )
    return {"pulls": pulls}


def _quick() -> list[dict[str, Any]]:
    from scipy.signal import savgol_filter

    t, y = trace(*[Shape()] * 200, rate_hz=1000.0, rest_s=12.2, ripple=0.01)
    sensor = Sensor(capacity_nm=200.0)
    assert len(read_torque(t, y, sensor=sensor).pulls) == 200
    filtered, hour, half = _best_of_each(
        lambda: savgol_filter(y, 51, 2),
        lambda: read_torque(t, y, sensor=sensor),
        lambda: read_torque(t[: len(t) // 2], y[: len(y) // 2], sensor=sensor),
    )
    early, late = _live_cost(t, y, sensor)
    return [
        _row(
            f"{t[-1] / 60:.0f} min at 1 kHz, 200 pulls, beside a Savitzky-Golay pass",
            f"{hour * 1e3:.0f} ms",
            f"{filtered * 1e3:.0f} ms",
            hour / filtered,
            "<= 5",
        ),
        _row(
            "  beside half of it: linear in length",
            f"{hour * 1e3:.0f} ms",
            f"{half * 1e3:.0f} ms",
            hour / half,
            "<= 2.3",
        ),
        _row(
            "  live, a second of stream late beside early in it",
            f"{late * 1e6:.0f} us",
            f"{early * 1e6:.0f} us",
            late / early,
            "<= 1.3",
        ),
    ]


def _best_of_each(*works: Callable[[], object], times: int = 7) -> list[float]:
    """Processor time of each, the best of some rounds; in turn, so that all find machine and memory alike."""
    spent: list[list[float]] = []
    for _ in range(times):
        spent.append([])
        for work in works:
            begun = time.process_time()
            work()
            spent[-1].append(time.process_time() - begun)
    return [min(each) for each in zip(*spent, strict=True)]


def _live_cost(t: np.ndarray, y: np.ndarray, sensor: Sensor) -> tuple[float, float]:
    """Processor time per second of stream in the second and in the last of ten equal parts, fed in packets of 50 ms."""
    reader = LiveReader(sensor)
    parts = np.array_split(np.arange(len(t)), 10)
    spent = []
    for part in parts:
        begun = time.process_time()
        for at in range(int(part[0]), int(part[-1]) + 1, 50):
            stop = min(at + 50, int(part[-1]) + 1)
            reader.feed(t[at:stop], y[at:stop])
        spent.append((time.process_time() - begun) / (t[part[-1]] - t[part[0]]))
    return spent[1], spent[-1]


def _row(name: str, ours: object, reference: object, ratio: float | None, target: str) -> dict[str, Any]:
    return {"name": name, "ours": ours, "reference": reference, "ratio": ratio, "target": target}
