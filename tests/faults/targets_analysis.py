"""Fuzz targets: traces that no transducer should deliver, and results that must stay numbers."""

from __future__ import annotations

import math
import random
from dataclasses import fields, is_dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.live import LiveReader
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor
from tests.faults.fuzz import Target

if TYPE_CHECKING:
    from analysis.trace.results import TraceReading

RATES_HZ = (10.0, 50.0, 100.0, 500.0)


def pull(rng: random.Random, rate_hz: float, level_nm: float) -> tuple[np.ndarray, np.ndarray]:
    """Make a plain pull: rest, ramp, peak, plateau, release; simulated."""
    noise = np.random.default_rng(rng.getrandbits(32))
    rest, hold = rng.uniform(0.6, 1.5), rng.uniform(1.2, 3.0)
    knots = np.cumsum([0, rest, rng.uniform(0.3, 1.0), 0.15, hold, 0.2, rest])
    levels = np.array([0, 0, 1.2, 1, 1, 0, 0]) * level_nm
    time_s = np.arange(0, knots[-1], 1 / rate_hz)
    return time_s, np.interp(time_s, knots, levels) + noise.normal(0, rng.choice((0.0, 0.02, 0.5)), len(time_s))


def _spoilt(rng: random.Random, time_s: np.ndarray, torque_nm: np.ndarray) -> None:
    """Spoil a trace in place."""
    if not len(time_s):
        return
    a = rng.randrange(len(time_s))
    b = min(len(time_s), a + int(rng.expovariate(0.02)) + 1)
    kind = rng.randrange(12)
    with np.errstate(all="ignore"):
        _spoil_by(rng, kind, a, b, time_s, torque_nm)


def _spoil_by(rng: random.Random, kind: int, a: int, b: int, time_s: np.ndarray, torque_nm: np.ndarray) -> None:
    if kind == 0:
        torque_nm[a:b] = rng.choice((math.nan, math.inf, -math.inf, 0.0, 1e300, -1e300, 1e-300, 2**31 / 100))
    elif kind == 1:
        time_s[a:b] = rng.choice((math.nan, math.inf, -math.inf, 0.0, 1e300, -1e9))
    elif kind == 2:
        time_s[a:] += rng.choice((-3600.0, 3600.0, -0.5, 1e12, 1e-9))
    elif kind == 3:
        time_s[a:b] = time_s[a]
    elif kind == 4:
        torque_nm[a:b] = torque_nm[a]
    elif kind == 5:
        time_s[a:b] = time_s[a:b][::-1].copy()
    elif kind == 6:
        torque_nm[:] = np.minimum(torque_nm, torque_nm[a])
    elif kind == 7:
        torque_nm *= rng.choice((-1.0, 1e-12, 1e12, 0.0, 1e200))
    elif kind == 8:
        time_s *= rng.choice((1e-6, 1e6, -1.0, 0.0))
    elif kind == 9:
        torque_nm[a:b] = np.random.default_rng(a).normal(0, 10, b - a)
    elif kind == 10:
        torque_nm[a:] += rng.choice((5.0, -5.0, 1e6))
    else:
        torque_nm[a] = 1e4


def _trace(rng: random.Random) -> tuple[np.ndarray, np.ndarray, np.ndarray | None]:
    rate_hz = rng.choice(RATES_HZ)
    parts = [pull(rng, rate_hz, rng.choice((27.0, -40.0, 3.0, 250.0))) for _ in range(rng.randrange(3))]
    if not parts:
        n = rng.randrange(200)
        parts = [(np.arange(n) / rate_hz, np.random.default_rng(n).normal(0, 1, n))]
    starts = np.cumsum([0.0, *(len(t) / rate_hz for t, _ in parts[:-1])])
    time_s = np.concatenate([t + s for (t, _), s in zip(parts, starts, strict=True)])
    torque_nm = np.concatenate([y for _, y in parts])
    keep = slice(rng.randrange(len(time_s) + 1) if rng.random() < 0.2 else 0, None)
    time_s, torque_nm = time_s[keep].copy(), torque_nm[keep].copy()
    for _ in range(rng.randrange(4)):
        _spoilt(rng, time_s, torque_nm)
    angle = np.cumsum(np.abs(torque_nm)) if rng.random() < 0.3 else None
    return time_s, torque_nm, angle


def _sensor(rng: random.Random) -> Sensor | None:
    if rng.random() < 0.5:
        return None
    return Sensor(
        capacity_nm=rng.choice((None, 0.0, 30.0, 200.0, 1e300)),
        resolution_nm=rng.choice((None, 0.0, 0.01, 5.0, 1e300)),
        accuracy_percent_of_reading=rng.choice((None, 0.5, 1e6)),
        gain=rng.choice((None, 1.0, 0.98, 1e-9, 1e9)),
        gain_u=rng.choice((None, 0.0, 0.002)),
        delay_s=rng.choice((None, 0.0, 0.02, 1e6)),
    )


def finite(value: object, where: str = "reading") -> None:
    """Check that every number in a result is finite; rate, zero and noise alone may be unknown."""
    if is_dataclass(value):
        for field in fields(value):
            finite(getattr(value, field.name), f"{where}.{field.name}")
    elif isinstance(value, tuple):
        for i, item in enumerate(value):
            finite(item, f"{where}[{i}]")
    elif isinstance(value, float) and where not in ("reading.rate_hz", "reading.zero_nm", "reading.noise_nm"):
        assert math.isfinite(value), f"{where} is {value}"


def _ordered(reading: TraceReading) -> None:
    for pull_ in reading.pulls:
        assert pull_.start_s <= pull_.end_s
        for figure in (pull_.breakaway, pull_.rotating):
            if figure is not None:
                assert figure.u95_sensor_nm >= 0
        if pull_.rotating is not None:
            assert pull_.start_s <= pull_.rotating.start_s < pull_.rotating.end_s <= pull_.end_s + 1e-9


def traces(rng: random.Random) -> str:
    """Any trace is read into finite figures, or refused; read in blocks of any size it says the same."""
    time_s, torque_nm, angle_deg = _trace(rng)
    sensor = _sensor(rng)
    with np.errstate(all="raise", under="ignore"):
        reading = read_torque(time_s, torque_nm, angle_deg=angle_deg, sensor=sensor)
        finite(reading)
        _ordered(reading)
        live = LiveReader(sensor)
        told = []
        i = 0
        while i < len(time_s):
            j = i + rng.choice((1, 7, 50, 400))
            told += live.feed(time_s[i:j], torque_nm[i:j], None if angle_deg is None else angle_deg[i:j])
            i = j
        told += live.finish()
    for back in [p for p in told if p.taken_back]:  # it stands in place of what had been stated
        told.remove(back)
        told[[(p.start_s, p.end_s) for p in told].index((back.start_s, back.end_s))] = back
    assert [p.start_s for p in told] == [p.start_s for p in reading.pulls], "live and file find other pulls"
    assert tuple(told) == reading.pulls, "live and file say other figures"
    return "pulls" if reading.pulls else "no pull"


TARGETS = [Target("traces", traces, long_s=270)]
