"""The virtual transducer: how many times real time it runs, and how the analysis reads what it has never seen.

Scores are out of 100 (``tests.analysis.scoring``), over random draws whose distributions come from the trade and from
physics (``tests.analysis.draws``), beside a plain reading of the same traces: threshold, maximum, mean of the last
half.
"""

from __future__ import annotations

import statistics
import time
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace

import numpy as np

from analysis.trace.reading import read_torque
from analysis.trace.results import Breakaway, Pull, Rotating
from analysis.trace.traces import Sensor
from logger.virtual.device import VirtualDevice
from logger.virtual.physics import SimulatedRun, simulate
from logger.virtual.port import VirtualPort
from logger.virtual.scenarios import scenario
from tests.analysis.draws import FAMILIES, draw
from tests.analysis.scoring import Family, add
from tests.analysis.truths import truth_record

# Draws per family: ten families make 300 recordings.
DRAWS = 30
# Seeds from here on; nothing was ever adjusted to them.
FIRST_SEED = 50_000


def run() -> list[dict[str, object]]:
    """Give the rows."""
    return [*_speed(), _step_error(), _port(), *_scores()]


def _speed() -> list[dict[str, object]]:
    """A 1 kHz stream in-process: mechanics, transducer, truth and the bytes of every line; processor time."""
    rows = []
    for name in ("healthy", "stick-slip", "several-turns"):
        case = scenario(name)
        simulate(replace(case, actions=case.actions[:3]), 0)
        ratios = []
        for seed in range(3):
            begun = time.process_time()
            made = simulate(case, seed)
            count = sum(1 for _ in VirtualDevice(made))
            ratios.append(made.duration_s / (time.process_time() - begun))
        text = f"virtual transducer, {name}, 1 kHz text with truth ({count} lines)"
        ratio = statistics.median(ratios)
        rows.append({"name": text, "ours": f"{ratio:.0f} s/s", "reference": "1 s/s", "ratio": ratio, "target": ">= 50"})
    return rows


def _step_error() -> dict[str, object]:
    """What the usual step of 0.5 ms changes against one of an eighth."""
    case = scenario("healthy")
    case = replace(
        case, actions=tuple(replace(a, tremor=0.0, wander=0.0) if hasattr(a, "tremor") else a for a in case.actions[:3])
    )
    usual, fine = (simulate(case, 1, step_s=step).truth[0] for step in (5e-4, 6.25e-5))
    error = 100 * max(
        abs(usual.breakaway_nm / fine.breakaway_nm - 1), abs(usual.plateau_nm / fine.plateau_nm - 1)
    )  # fmt: skip
    name = "virtual transducer, error of the step in breakaway and rotating torque"
    return {"name": name, "ours": f"{error:.2f} %", "reference": "step / 8", "ratio": error, "target": "<= 0.5"}


def _port() -> dict[str, object]:
    """Lines through a pseudo-terminal and the real serial library."""
    import serial

    pieces = list(VirtualDevice(simulate(scenario("healthy"), 1)))
    wanted = sum(len(data) for _, data in pieces)
    with VirtualPort(pieces, speed=float("inf"), held=True) as port, serial.Serial(port.path, timeout=0.2) as device:
        port.go()
        begun, got = time.perf_counter(), 0
        while got < wanted and time.perf_counter() - begun < 30:
            got += len(device.read(device.in_waiting or 1))
        rate = len(pieces) * got / wanted / (time.perf_counter() - begun)
    name = f"virtual port, text lines through pyserial ({wanted - got} bytes lost)"
    return {
        "name": name,
        "ours": f"{rate / 1000:.0f} k/s",
        "reference": "1 k/s",
        "ratio": rate / 1000,
        "target": ">= 10",
    }


def plain(made: SimulatedRun) -> tuple[Pull, ...]:
    """Read as a spreadsheet would: over 20 % of the largest torque is a pull; maximum, mean of the last half."""
    ok = np.isfinite(made.torque_nm)
    time_s, torque = made.time_s[ok], made.torque_nm[ok]
    if torque.size < 10:
        return ()
    rest = float(np.median(torque[: max(5, torque.size // 50)]))
    size = np.abs(torque - rest)
    edges = np.flatnonzero(np.diff((size > 0.2 * size.max()).astype(int), prepend=0, append=0))
    pulls = []
    for first, last in zip(edges[::2], edges[1::2], strict=True):
        if time_s[last - 1] - time_s[first] < 0.3:
            continue
        part = size[first:last]
        top, level = float(part.max()), float(part[part.size // 2 :].mean())
        start, end = float(time_s[first]), float(time_s[last - 1])
        when = float(time_s[first + int(part.argmax())])
        direction = 1 if torque[first] > rest else -1
        peak = Breakaway(when, top, 0.01 * top, 0.02 * top, distinct_peak=True)
        turning = Rotating(start, end, level, 0.01 * level, 0.02 * level, top)
        pulls.append(Pull(start, end, direction, rest, breakaway=peak, rotating=turning))
    return tuple(pulls)


def _account(family: str) -> tuple[str, Family, Family]:
    """Simulate, read and score one family, ours and plain."""
    ours, theirs = Family(), Family()
    for seed in range(FIRST_SEED, FIRST_SEED + DRAWS):
        made = simulate(draw(family, seed), seed)
        truth = truth_record(made, f"{family}-{seed}")
        add(ours, truth, read_torque(made.time_s, made.torque_nm, angle_deg=made.angle_deg, sensor=_known(made)).pulls)
        add(theirs, truth, plain(made))
    return family, ours, theirs


def _known(made: SimulatedRun) -> Sensor:
    """What its papers say of the drawn transducer."""
    sensor = made.scenario.sensor
    return Sensor(
        capacity_nm=sensor.capacity_nm,
        gain=sensor.gain if sensor.gain_known else None,
        accuracy_percent_of_reading=None if sensor.gain_known else sensor.accuracy_percent,
    )


def _scores() -> list[dict[str, object]]:
    with ProcessPoolExecutor(2) as pool:
        accounts = list(pool.map(_account, FAMILIES))
    rows = []
    for family, ours, theirs in accounts:
        rows.append(
            _score_row(f"random draws, {family}: score of {DRAWS} recordings", ours.score(), theirs.score(), "")
        )
    mean, plain_mean = (statistics.fmean(account[i].score() for account in accounts) for i in (1, 2))
    rows.append(_score_row("random draws, all families: score", mean, plain_mean, ">= 80"))
    for quantity in ("breakaway", "rotating"):
        inside, of = (sum(n) for n in zip(*(getattr(a[1], quantity).covered() for a in accounts), strict=True))
        errors = [abs(e) for a in accounts for e, _ in getattr(a[1], quantity).stated()]
        name = f"random draws, {quantity}: median error of {of}, share inside the stated 95 %"
        share = 100 * inside / max(of, 1)
        text = f"{100 * statistics.median(errors):.2f} %"
        rows.append({"name": name, "ours": text, "reference": f"{share:.0f} %", "ratio": share, "target": ""})
    return rows


def _score_row(name: str, ours: float, reference: float, target: str) -> dict[str, object]:
    ratio = ours if target else ours / max(reference, 1e-9)
    return {"name": name, "ours": f"{ours:.1f}", "reference": f"{reference:.1f}", "ratio": ratio, "target": target}
