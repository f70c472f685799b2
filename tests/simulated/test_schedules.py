"""What simulated time found, kept as schedules of their own; and that the judge of schedules is not blind."""

from __future__ import annotations

import asyncio
from dataclasses import replace

import numpy as np
import pytest

from logger.samples import Block, EndReason, Event, EventKind
from tests.simulated.clocks import Clocks, NothingLeftError, simulated
from tests.simulated.gauge import Kind
from tests.simulated.schedules import Played, Schedule, Step, faults, play, play_it

GAUGE = Kind(packet_hz=10.0, samples=4, counts="packets", bits=16, always=True, fast_ppm=50.0)
SHY = replace(GAUGE, always=False)
WIRE = replace(GAUGE, counts="samples", samples=20, wire=True)


def schedule(*steps: Step, kind: Kind = GAUGE, stop_s: float = 40.0) -> Schedule:
    return Schedule(1, kind, steps, stop_s)


FOUND = {
    "what waited while the program was stopped is read before silence is judged": schedule(Step(10.0, "hold", 5.0)),
    "opening for long, and every return, is no stop of the program": schedule(
        Step(9.0, "refuse", 3.0), Step(10.0, "lose", 0.0)
    ),
    "a gauge that counts only while somebody listens": schedule(Step(25.0, "away", 10.0), kind=SHY, stop_s=60.0),
    "asleep for longer than the counter takes to wrap": schedule(
        Step(10.0, "sleep", 1700.0), kind=replace(GAUGE, counts="samples", samples=20), stop_s=1800.0
    ),
    "two short sleeps between two looks": schedule(Step(10.0, "sleep", 0.4), Step(10.01, "sleep", 0.4)),
    "backlog behind a stop is no wrong rate": schedule(Step(20.0, "hold", 19.0), stop_s=70.0),
    "sent twice behind a silence": schedule(
        Step(10.0, "quiet", 9.0), Step(10.1, "twice", 2.0), Step(21.0, "hold", 7.0)
    ),
    "stopped while a search runs": schedule(Step(10.0, "away", 200.0), stop_s=20.0),
    "the stack dies under an open connection": schedule(Step(10.0, "deaf", 0.0)),
    "a subscription that is never answered": schedule(
        Step(9.0, "no answer", 1.0), Step(10.0, "lose", 0.0), stop_s=90.0
    ),
    "a port that overflows while the program is stopped": schedule(Step(10.0, "hold", 18.0), kind=WIRE, stop_s=50.0),
    "the first line after a pause that followed a loose plug": schedule(
        Step(9.95, "quiet", 2.0), Step(10.0, "lose", 0.0), kind=WIRE
    ),
    "begun anew": schedule(Step(20.0, "off", 8.0), stop_s=60.0),
    "the wall clock is set while the device is away": schedule(Step(10.0, "away", 8.0), Step(14.0, "set", 3600.0)),
}  # fmt: skip


# The first seeds that showed each fault of a session before it was mended, as ``draw`` draws them.
SEEDS = {
    "false: 'the program was stopped'": 0,
    "dropped what had come before a stop": 4,
    "began anew, where it had counted on": 19,
    "swallowed why it does not come back": 35,
    "a rate taken while a backlog comes": 43,
    "dated before the sleep it came after": 51,
    "a rate taken over bursts of half a second": 176,
    "a rate taken over a sleep": 3038,
    "a rate taken over what was lost before the first whole line": 3248,
    "a second loss behind one silence": 5543,
    "taken for duplicates of an earlier connection": 6264,
    "silent since the middle of a stop of the program": 2368,
    "the same, counted in packets": 8518,
    "begun anew twice, taken for duplicates": 22031,
}


@pytest.mark.parametrize("name", SEEDS)
def test_found_by_a_seed(name: str) -> None:
    assert faults(play(SEEDS[name])) == []


@pytest.mark.parametrize("name", FOUND)
def test_found_in_simulated_time(name: str) -> None:
    played = play_it(FOUND[name])
    assert faults(played) == []
    assert played.kept.numbers


def test_why_a_device_does_not_come_back_stands_in_the_ending() -> None:
    played = play_it(schedule(Step(10.0, "away", 500.0), stop_s=300.0))
    assert faults(played) == []
    assert played.kept.ending is not None
    assert played.kept.ending.reason is EndReason.LOST
    assert "not heard within 6 s" in played.kept.ending.text
    told = [event.text for _, _, event in played.kept.events if event.kind is EventKind.NOTE]
    assert len(told) == 1  # once, not with every attempt


def test_a_seed_plays_the_same_again() -> None:
    first, again = play(7), play(7)
    assert first.kept.numbers == again.kept.numbers
    assert np.array_equal(first.kept.time_s, again.kept.time_s)
    assert first.ended_s == again.ended_s


# --- the judge ------------------------------------------------------------------------------------------------------


def spoilt(played: Played, number: int, **changes: object) -> Played:
    """Change one block of what was kept."""
    moment_s, block = played.kept.blocks[number]
    played.kept.blocks[number] = (moment_s, replace(block, **changes))  # type: ignore[arg-type]
    return played


def gap(played: Played) -> int:
    return next(n for n, (_, b) in enumerate(played.kept.blocks) if any(e.kind is EventKind.GAP for e in b.events))


@pytest.fixture
def played() -> Played:
    found = play_it(schedule(Step(10.0, "drop", 3.0), stop_s=20.0))
    assert faults(found) == []
    return found


def test_it_sees_what_was_dropped(played: Played) -> None:
    del played.kept.blocks[30]
    assert any("dropped" in fault for fault in faults(played))


def test_it_sees_what_was_doubled(played: Played) -> None:
    played.kept.blocks.insert(30, played.kept.blocks[30])
    assert any("doubled" in fault for fault in faults(played))


def test_it_sees_time_run_back(played: Played) -> None:
    spoilt(played, 30, time_s=played.kept.blocks[30][1].time_s - 5.0)
    assert any("backwards" in fault for fault in faults(played))


def test_it_sees_a_wrong_date(played: Played) -> None:
    for number in range(30, len(played.kept.blocks)):
        spoilt(played, number, time_s=played.kept.blocks[number][1].time_s + 5.0)
    assert any("dated wrongly" in fault for fault in faults(played))


def test_it_sees_a_loss_that_is_not_counted(played: Played) -> None:
    assert any("lost: 12 before" in fault for fault in faults(spoilt(played, gap(played), events=())))


def test_it_sees_a_loss_that_is_counted_twice(played: Played) -> None:
    number = gap(played)
    events = played.kept.blocks[number][1].events
    assert any("lost" in fault for fault in faults(spoilt(played, number, events=events * 2)))


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        (EventKind.CLOCK, "the program was stopped for 4.0 s"),
        (EventKind.CLOCK, "the computer slept for 9.0 s; what was sent meanwhile may be lost"),
        (EventKind.CLOCK, "the computer's clock was set by +60.0 s; the times of this recording do not follow it"),
        (EventKind.SILENCE, "nothing has arrived for 3 s"),
        (EventKind.RECONNECT, "it is back after 3.0 s"),
        (EventKind.NOTE, "about 5 samples a second arrive, the description says 40"),
        (EventKind.GARBAGE, "1 packets of 3 bytes"),
    ],
)
def test_it_sees_an_event_that_is_not_true(played: Played, kind: EventKind, text: str) -> None:
    moment_s, block = played.kept.blocks[30]
    untrue = Block(np.empty(0), {"torque": np.empty(0)}, (Event(kind, text=text, time_s=float(block.time_s[0])),))
    played.kept.blocks.insert(30, (moment_s, untrue))
    assert any("false" in fault for fault in faults(played))


def test_it_sees_an_end_that_does_not_come(played: Played) -> None:
    assert any("does not end" in fault for fault in faults(replace(played, ended_s=None)))
    assert played.ended_s is not None
    assert any("s after it was told to" in fault for fault in faults(replace(played, ended_s=played.ended_s + 60)))


# --- the clocks -----------------------------------------------------------------------------------------------------


def test_an_hour_passes_and_a_stopped_program_is_late() -> None:
    clocks = Clocks()
    seen: list[float] = []

    async def waits() -> None:
        for _ in range(3600):
            await asyncio.sleep(1.0)
            seen.append(clocks.monotonic())

    clocks.at(100.5, lambda: clocks.hold(10.0))
    with simulated(clocks) as runner:
        runner.run(waits())
    steps = np.diff(seen)
    assert steps.max() == pytest.approx(10.5, abs=0.01)
    assert np.sum(steps > 1.01) == 1


def test_the_monotonic_clock_stands_while_the_computer_sleeps() -> None:
    clocks = Clocks()
    clocks.at(1.0, lambda: clocks.hold(500.0, asleep=True))
    with simulated(clocks) as runner:
        runner.run(asyncio.sleep(10.0))
    assert clocks.monotonic() - 1000.0 == pytest.approx(10.0)
    assert clocks.true_s == pytest.approx(510.0)


def test_what_waits_for_ever_is_told() -> None:
    with simulated(Clocks()) as runner, pytest.raises(NothingLeftError):
        runner.run(asyncio.Event().wait())
