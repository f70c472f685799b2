"""What a session tells about itself: rate, losses, and advice when a stream does not fit its description."""

from __future__ import annotations

import math

from logger.samples import Event, EventKind
from logger.stream.health import Meter, SessionState, Steps

NOTHING: tuple[Event, ...] = ()


def stream(
    meter: Meter, rate: float, seconds: float, *, start: float = 100.0, each: int = 1, lost: int = 0
) -> list[Event]:
    """Let samples arrive evenly; give what was told."""
    told = []
    for k in range(int(seconds * rate / each)):
        gap = (Event(EventKind.GAP, 0, lost),) if lost else ()
        meter.count(start + k * each / rate, 12 * each, each, gap, False)
        event = meter.judge()
        if event is not None:
            told.append(event)
    return told


def test_rate_and_counts():
    meter = Meter(None)
    assert math.isnan(meter.health.rate_hz)
    stream(meter, 50.0, 4.0)
    events = (
        Event(EventKind.GAP, 0, 7),
        Event(EventKind.GARBAGE, 0, 5),
        Event(EventKind.DUPLICATE, 0, 2),
        Event(EventKind.NOTE, 0, 9),
    )
    meter.count(104.0, 30, 0, events, True)
    health = meter.health
    assert health.state is SessionState.STREAMING
    assert abs(health.rate_hz - 50) < 0.5
    assert (health.samples, health.lost, health.garbage, health.duplicates) == (200, 7, 5, 2)
    assert health.simulated
    assert health.last_arrival_s == 104.0


def test_a_described_rate_that_fits_is_not_spoken_of():
    assert stream(Meter(1000.0), 1005.0, 20.0, each=20) == []
    assert stream(Meter(10.0), 10.1, 30.0) == []
    assert stream(Meter(100.0), 50.0, 20.0, lost=1) == []  # every second one is lost: the device keeps its rate


def test_a_wrong_rate_is_told_once_with_its_figure():
    meter = Meter(1000.0)
    told = stream(meter, 500.0, 15.0)
    assert [event.kind for event in told] == [EventKind.NOTE]
    assert "about 500 samples a second arrive, the description says 1000" in told[0].text
    assert "correct rate_hz" in meter.health.advice


def test_mostly_garbage_is_told_once():
    meter = Meter(None)
    meter.count(0.0, 300, 0, (Event(EventKind.GARBAGE, 0, 300),), False)
    assert meter.judge() is None  # too little to judge
    meter.count(1.0, 300, 0, (Event(EventKind.GARBAGE, 0, 300),), False)
    told = meter.judge()
    assert told is not None
    assert "check the baud rate" in told.text
    meter.count(2.0, 300, 0, (Event(EventKind.GARBAGE, 0, 300),), False)
    assert meter.judge() is None
    assert meter.health.advice


def test_a_break_begins_the_rate_anew():
    meter = Meter(None)
    stream(meter, 100.0, 3.0)
    meter.state(SessionState.SILENT, "nothing arrives")
    assert meter.health.advice == "nothing arrives"
    assert meter.judge() is None
    stream(meter, 10.0, 3.0, start=500.0)
    assert abs(meter.health.rate_hz - 10) < 0.5
    assert meter.health.advice == ""
    meter.reconnected()
    assert meter.health.reconnects == 1


def test_a_steady_clock_tells_nothing():
    steps = Steps()
    assert [steps.look() for _ in range(5)] == [[]] * 5
    assert steps.slept_s == 0.0
