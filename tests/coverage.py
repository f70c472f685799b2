"""How often stated intervals hold the truth and rules err: promises simulated beside their bounds (``make coverage``).

Each row is what the program does, on drawn pulls, traces, fills or jobs with a known truth. A row outside of its bound
ends the run with exit code 1. It takes some minutes.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator

import numpy as np
from scipy.signal import lfilter

from analysis.compare.control import ChartState, verdict, watch
from analysis.compare.repeatability import study
from analysis.compare.trend import RunInState, fit_line, run_in_along
from analysis.to_axle.at_axle import METHOD, Instrument, Level, TracedTorque, at_axle, waves_left
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.averaging import level_uncertainty
from analysis.trace.plateau import find_plateau
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.limits import bounds_from, decide
from analysis.verdict.repeats import further_pulls, job_value
from analysis.verdict.scatter import outliers
from logger.header import Lever, Limit
from logger.instruments.weigh import DeadWeight, check_point

Found = tuple[str, float, float, float]  # what, share found, bounds
LEVEL = 60.0
RUNS = 1500
Draw = Callable[[np.random.Generator, int], np.ndarray]

SHAPES: dict[str, Draw] = {
    "normal": lambda rng, n: rng.standard_normal(n),
    "lognormal": lambda rng, n: (np.exp(0.3 * rng.standard_normal(n)) - 1) / 0.3,
    "t, 3 dof": lambda rng, n: rng.standard_t(3, n) / np.sqrt(3),
}


def pull(value: float, quantity: str, method: float = 0.0) -> Budget:
    """Give one pull's budget with nothing shared but its way of reading."""
    rows = [BudgetRow(Input("trace", value, 0.0), 1.0), BudgetRow(Input(METHOD, 0.0, method, shared=True), 1.0)]
    return Budget(quantity, value, "N·m", tuple(rows))


def job(rng: np.random.Generator, n: int, scatter: float, quantity: str = "breakaway", shape: str = "normal") -> float:
    hits = 0
    for _ in range(RUNS):
        values = LEVEL * (1 + scatter * SHAPES[shape](rng, n))
        found = job_value([pull(float(v), quantity) for v in values]).budget
        hits += abs(found.value - LEVEL) <= found.u95
    return hits / RUNS


def jobs(rng: np.random.Generator) -> Iterator[Found]:
    """Values of jobs: from the scatter that is assumed to one twice as wide."""
    least = {0.03: 0.93, 0.04: 0.93, 0.05: 0.93, 0.06: 0.90, 0.08: 0.85}
    for n in (1, 2):
        for scatter, bound in least.items():
            yield f"job of {n}, breakaway scatter {scatter:.0%}", job(rng, n, scatter), bound, 1.0
        for scatter, bound in ((0.014, 0.93), (0.02, 0.93), (0.03, 0.85)):
            yield f"job of {n}, rotating scatter {scatter:.1%}", job(rng, n, scatter, "rotating mean"), bound, 1.0
    for n in (3, 4, 5, 8):
        for scatter in (0.01, 0.03, 0.04):
            yield f"job of {n}, normal scatter {scatter:.0%}", job(rng, n, scatter), 0.93, 0.975
        yield f"job of {n}, normal scatter 6%", job(rng, n, 0.06), 0.90, 0.97
    for n in (3, 5, 8):
        for shape in ("lognormal", "t, 3 dof"):
            yield f"job of {n}, {shape}, 3%", job(rng, n, 0.03, shape=shape), 0.92, 0.99


def systematic(rng: np.random.Generator) -> Iterator[Found]:
    """A filter that reads every pull of a job alike: it must not shrink with their number."""
    for n in (5, 8):
        hits = 0
        for _ in range(RUNS):
            late = 0.9 * rng.standard_normal()
            values = LEVEL * (1 + 0.01 * rng.standard_normal(n)) + late
            found = job_value([pull(float(v), "breakaway", 0.9) for v in values]).budget
            hits += abs(found.value - LEVEL) <= found.u95
        yield f"job of {n}, filter delay, 1 % scatter", hits / RUNS, 0.93, 0.97


def correlated(rng: np.random.Generator) -> Iterator[Found]:
    """Pulls that follow each other: so few seldom show it; no 95 % is promised, and it would be 0.70 without."""
    for n in (5, 8):
        hits = 0
        for _ in range(RUNS):
            x = lfilter([1.0], [1.0, -0.7], rng.standard_normal(n + 60) * np.sqrt(1 - 0.49))[60:]
            found = job_value([pull(float(v), "breakaway") for v in LEVEL * (1 + 0.03 * x)]).budget
            hits += abs(found.value - LEVEL) <= found.u95
        yield f"correlated pulls (0.7), {n}", hits / RUNS, 0.76, 0.97


def dropped(rng: np.random.Generator) -> Iterator[Found]:
    for n in (5, 8):
        alarms = hits = 0
        for _ in range(RUNS):
            values = [float(v) for v in LEVEL * (1 + 0.03 * rng.standard_normal(n))]
            alarms += bool(outliers(values))
            found = job_value([pull(v, "breakaway") for v in values], drop_outliers=True).budget
            hits += abs(found.value - LEVEL) <= found.u95
        yield f"an outlier in clean jobs of {n}", alarms / RUNS, 0.035, 0.065
        yield f"job of {n}, outliers dropped", hits / RUNS, 0.92, 0.97


def promised(rng: np.random.Generator) -> Iterator[Found]:
    """So many more pulls give the interval that was wanted: in half of jobs at least, for their scatter may grow."""
    kept = asked = 0
    for _ in range(RUNS // 5):
        values = list(LEVEL * (1 + 0.03 * rng.standard_normal(3)))
        more = further_pulls(job_value([pull(v, "breakaway") for v in values]), 1.6)
        if more:
            values += list(LEVEL * (1 + 0.03 * rng.standard_normal(more)))
            asked += 1
            kept += job_value([pull(v, "breakaway") for v in values]).budget.u95 <= 1.6 * 1.15
    yield "further pulls keep their promise within 15 %", kept / max(asked, 1), 0.5, 1.0


def traces(rng: np.random.Generator) -> Iterator[Found]:
    """Means of autocorrelated stretches, and the highest torque in noise."""
    for phi, n, least in ((0.0, 500, 0.93), (0.5, 500, 0.93), (0.9, 500, 0.93), (0.98, 500, 0.86), (0.98, 200, 0.80)):
        rows = lfilter([1.0], [1.0, -phi], rng.standard_normal((600, n + 800)), axis=1)[:, 800:]
        yield (
            f"mean of {n}, AR(1) {phi}",
            float(np.mean([abs(r.mean()) <= 1.96 * level_uncertainty(r) for r in rows])),
            least,
            0.985,
        )
    for rate in (100, 1000):
        t, hits = np.arange(8 * rate) / rate, 0
        for _ in range(100):
            found = find_plateau(t, 40.0 + 0.6 * rng.standard_normal(len(t)), 0.0, 8.0)
            hits += found is not None and abs(found.max_nm - 40.0) <= 1.96 * found.max_u_nm
        yield f"rotating maximum at {rate} Hz, white noise 0.6 N·m", hits / 100, 0.86, 1.0


def slants(rng: np.random.Generator) -> Iterator[Found]:
    """A pull at an angle that nobody measured, within ± 10° of square: its cosine is never above one."""
    arm = Lever(fixture="force at radius", radius_mm=400.0, radius_mm_u=0.01, weight_kg=0.001, centroid_mm=1.0)
    found = at_axle(TracedTorque("breakaway", 150.0, 0.01), fixture_from(arm), Instrument(0.0), Level(0.0, 0.0, True))
    truth = 150.0 * 0.4 * np.cos(np.radians(rng.uniform(-10, 10, 20 * RUNS)))
    yield "force at a radius, pull judged by eye", float(np.mean(abs(truth - found.value) <= found.u95)), 0.93, 1.0


def waves(rng: np.random.Generator) -> Iterator[Found]:
    """A pack that waves by 2 % every 30 s, read over a part of that: with and without the wheel's angle."""
    fixture, instrument, level = fixture_from(Lever(fixture="couple")), Instrument(0.0), Level(0.0, 0.0, True)
    for seconds in (8.0, 15.0):
        for known in (True, False):
            hits = 0
            for _ in range(RUNS):
                turned, phase = 4 * np.pi * seconds / 30, rng.uniform(0, 2 * np.pi)
                mean = 40 * (1 + 0.02 * (np.cos(phase) - np.cos(phase + turned / 2)) / (turned / 2))
                part = waves_left(turned if known else None, seconds)
                found = at_axle(TracedTorque("rotating mean", mean, 0.02, waves=part), fixture, instrument, level)
                hits += abs(found.value - 40) <= found.u95
            yield f"waves of 2 %, {seconds:g} of 30 s, angle {'known' if known else 'unknown'}", hits / RUNS, 0.93, 1.0


def decisions(rng: np.random.Generator) -> Iterator[Found]:
    """A true value at its limit: called within, and outside, by no more than 2.5 %."""
    limit = bounds_from(Limit(quantity="breakaway", kind="min", unit="N·m", lower=LEVEL, source="bench"))
    states = [str(decide(LEVEL + rng.standard_normal(), 1.0, limit).state) for _ in range(8000)]
    for state in ("within", "outside"):
        yield f"at the limit, called {state}", states.count(state) / 8000, 0.019, 0.031


def trends(rng: np.random.Generator) -> Iterator[Found]:
    for n, scatter in ((3, 0.5), (4, 2.0), (6, 2.0)):
        x, hits = np.linspace(0, 10, n), 0
        for _ in range(RUNS):
            line = fit_line(x, 20 + 2 * x + scatter * rng.standard_normal(n))
            found = line.inverse(30 + scatter * rng.standard_normal())
            hits += found.low <= 5.0 <= found.high
        yield f"inverse trend, {n} fills, scatter {scatter:g}, bounded or not", hits / RUNS, 0.93, 0.99


def charts(rng: np.random.Generator) -> Iterator[Found]:
    for baseline in (4, 6, 10):
        drawn = 50 + rng.standard_normal((8 * RUNS, baseline + 20))
        shows = [verdict(watch(one, baseline=baseline))[0] for one in drawn]
        share = np.mean([s in (ChartState.SIGNAL, ChartState.DRIFTS) for s in shows])
        yield f"chart, a false alarm in 20 jobs after {baseline}", float(share), 0.04, 0.054
    for scatter in (0.004, 0.008):
        once, settled, cycles = 0, 0, np.arange(60)
        for _ in range(100):
            noise = 1 + scatter * rng.standard_normal(60)
            moving = run_in_along(cycles, 50 * np.exp(0.001 * cycles) * noise)
            once += any(j is not None and j.state is RunInState.SETTLED for j in moving)
            along = run_in_along(cycles, 50 * noise)
            settled += along[-1] is not None and along[-1].state is RunInState.SETTLED
        yield f"run-in, moving by the bound, ever called settled, scatter {scatter:.1%}", once / 100, 0.0, 0.10
        yield f"run-in, settled, found so in 60 cycles, scatter {scatter:.1%}", settled / 100, 0.90, 1.0


ONE_READING = 0.93, 0.985


def one_reading(rng: np.random.Generator, between: float, runs: int) -> float:
    """Give how often a further reading lies within what a study says that one is good to."""
    hits = 0
    for _ in range(runs):
        cells = 50 + rng.normal(0, 5, (3, 1, 1)) + rng.normal(0, between, (1, 3, 1))
        found = study(cells + rng.normal(0, 1.0, (3, 3, 3)))
        hits += abs(rng.normal(0, np.hypot(1.0, between))) <= found.half_width
    return hits / runs


def instruments(rng: np.random.Generator) -> Iterator[Found]:
    load = DeadWeight(10.0, 0.5, gravity=9.81, gravity_u=1e-6)
    for n in (1, 2, 3, 5):
        hits = 0
        for _ in range(RUNS):
            readings = load.torque_nm * (1 + 0.002 * rng.standard_normal(n))
            point = check_point(load, [float(r) for r in readings])
            hits += abs(point.deviation_percent) <= point.u95_percent
        yield f"weigh check, scatter dominant, {n}", hits / RUNS, 0.93, 0.985
    for between in (0.0, 1.0):
        yield f"one reading is good to, operators {between:g}", one_reading(rng, between, 2 * RUNS), *ONE_READING


ROWS = (jobs, systematic, correlated, dropped, promised, traces, slants, waves, decisions, trends, charts, instruments)


def main() -> int:
    """Print every row; 1 where one lies outside of its bound."""
    bad = 0
    for seed, rows in enumerate(ROWS):
        for what, share, low, high in rows(np.random.default_rng(100 + seed)):
            held = low <= share <= high
            bad += not held
            print(f"{'' if held else 'OUT ':4}{share:.3f}  {low:.3f}-{high:.3f}  {what}", flush=True)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
