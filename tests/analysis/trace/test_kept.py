"""Whole readings of short traces, held against what was kept of them (see ``tests.kept``: changed, not right or wrong).

Kept are all pulls with every value, interval, time, reason and note, what is said of the trace, how pulls came while
the trace was fed in packets, and of the shorter traces what the steps of the reading gave.
"""

from __future__ import annotations

import pytest

from analysis.trace.live import LiveReader
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor
from tests.analysis.trace import on_grid, spoilt
from tests.kept import kept
from tests.steps import steps

LONG = {"long-003"}
"""Twenty minutes."""

STEPS_OF = 1500
"""Of traces with fewer samples the steps are kept as well."""

NAMES = [name for name in spoilt.names() if name not in LONG]
WAYS = [*spoilt.CHANGES, *spoilt.ONLY, *spoilt.AROUND]
CHANGED = [
    (NAMES[(17 * i + 61 * j) % len(NAMES)], WAYS[i % len(WAYS)], round((0.618034 * i + 0.37 * j) % 1, 3))
    for j in range(2)
    for i in range(4 * len(WAYS))
]
CAPACITIES_NM = (None, 200.0, 500.0)


@pytest.mark.parametrize("name", NAMES)
def test_kept_reading_of_a_stored_trace(name):
    found = spoilt.stored(name)
    assert_kept(name, found, with_steps=len(found.time_s) < STEPS_OF)


@pytest.mark.parametrize(("name", "way", "much"), CHANGED)
def test_kept_reading_of_a_changed_trace(name, way, much):
    assert_kept(f"{name}, {way} {much}", spoilt.taken(name, way, much))


@pytest.mark.parametrize("number", range(200))
def test_kept_reading_on_a_grid(number):
    """Whole newton metres at even times lie on the borders of rules."""
    found = spoilt.Taken(*on_grid.made(number), None, Sensor(capacity_nm=CAPACITIES_NM[number % 3]))
    assert_kept(f"grid {number}", found, with_steps=number < 50)


@pytest.mark.parametrize(("name", "way", "much"), CHANGED[::9])
def test_kept_reading_fed_in_packets(name, way, much):
    """When which pull came: samples seen by then."""
    found = spoilt.taken(name, way, much)
    reader, came = LiveReader(found.sensor), []
    size = max(1, len(found.time_s) // 200)
    for at in range(0, len(found.time_s), size):
        part = slice(at, at + size)
        angle = None if found.angle_deg is None else found.angle_deg[part]
        came += [(at + size, pull) for pull in reader.feed(found.time_s[part], found.torque_nm[part], angle)]
    came += [("end", pull) for pull in reader.finish()]
    kept("trace-live", f"{name}, {way} {much}", [(when, p.start_s, p.valid, p.taken_back) for when, p in came])


def assert_kept(name: str, found: spoilt.Taken, *, with_steps: bool = False) -> None:
    """Read a trace, and hold what it says."""
    if not with_steps:
        kept("trace", name, read(found))
        return
    with steps("analysis.trace") as said:
        reading = read(found)
    kept("trace", name, reading)
    kept("trace-steps", name, said)


def read(found: spoilt.Taken):
    return read_torque(found.time_s, found.torque_nm, angle_deg=found.angle_deg, sensor=found.sensor)
