"""How a session is doing, and what to do about it."""

from __future__ import annotations

import math
import sys
import time
from collections import deque
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Final

from logger.samples import Event, EventKind

if TYPE_CHECKING:
    from collections.abc import Iterable

RATE_S: Final = 3.0  # over which the true rate is taken
MOSTLY: Final = 0.5  # share of bytes that are no reading, from which the stream is not what was described
JUDGE_BYTES: Final = 400  # bytes before a stream is judged: some lines
RATE_OFF: Final = 0.03  # deviation of the true from the nominal rate that is told; buffers make it uneven by 1-2 %
BREAK_S: Final = 1.0  # nothing for so long: what waited meanwhile comes at once, and no rate can be taken from it
JUDGE_S: Final = 10.0  # before the rate is judged
CLOCK_STEP_S: Final = 0.5  # a clock disciplined by the network slews by less between two looks
STALL_S: Final = 2.0  # a loop that should look ten times a second was stopped


class SessionState(StrEnum):
    """What a session is doing."""

    OPENING = "opening"
    STREAMING = "streaming"
    SILENT = "silent"  # open, but nothing arrives
    RECONNECTING = "reconnecting"
    ENDED = "ended"


@dataclass(frozen=True, slots=True)
class Health:
    """How a session is doing: a value that any thread may read."""

    state: SessionState = SessionState.OPENING
    rate_hz: float = float("nan")  # samples per second over the last seconds; NaN before the first
    samples: int = 0  # received
    lost: int = 0  # counted from the device's counter
    garbage: int = 0  # bytes (of a stream) or packets that were no reading
    misfit: str = ""  # what was said about the last of them; empty: nothing
    received: int = 0  # bytes in all
    duplicates: int = 0  # dropped because they were received twice
    reconnects: int = 0  # how often the device was away and came back
    last_arrival_s: float = float("nan")  # ``time.monotonic()`` of the last bytes; NaN before the first
    simulated: bool = False  # the device has said that it is simulated
    advice: str = ""  # what to do, if something is wrong: a stream that does not fit its description, a silent device


_COUNTED: Final = {EventKind.GAP: "lost", EventKind.GARBAGE: "garbage", EventKind.DUPLICATE: "duplicates"}


class Meter:
    """Counts what a session reads, and notices a stream that does not fit its description.

    Args:
        nominal_hz: Described rate.
    """

    def __init__(self, nominal_hz: float | None) -> None:
        self.health = Health()
        self._nominal_hz = nominal_hz
        self._seen: deque[tuple[float, int]] = deque()  # (arrival, samples until then)
        self._bytes = 0
        self._advised: set[str] = set()
        self._steady: tuple[float, int] | None = None  # since when it streams without a break, samples until then
        self._burst = 0  # the most samples that came at once since then
        self._slept_s = 0.0
        self._settles_s = -math.inf  # when what had waited has come
        self._break_s = max(BREAK_S, 3 / nominal_hz if nominal_hz else 0.0)

    def state(self, state: SessionState, advice: str = "") -> None:
        """Note what the session is doing."""
        if state is not SessionState.STREAMING:
            self._seen.clear()
            self._steady = None
        self.health = replace(self.health, state=state, advice=advice)

    def count(
        self, arrival_s: float, size: int, samples: int, events: Iterable[Event], simulated: bool, slept_s: float = 0.0
    ) -> None:
        """Count one drain; what the computer has slept until then belongs to the time in which samples were lost."""
        self._bytes += size
        old = self.health
        counts = {"lost": old.lost, "garbage": old.garbage, "duplicates": old.duplicates}
        misfit = old.misfit
        for event in events:
            misfit = event.text if event.kind is EventKind.GARBAGE else misfit
            name = _COUNTED.get(event.kind)
            if name:
                counts[name] += event.count
        total = old.samples + samples
        slept, self._slept_s = slept_s > self._slept_s, slept_s
        if slept or arrival_s - old.last_arrival_s > self._break_s or old.state is SessionState.SILENT:
            self._steady, self._settles_s = None, arrival_s + RATE_S
        if samples and self._steady is None and arrival_s >= self._settles_s:  # losses before it are told with a sample
            self._steady, self._burst = (arrival_s, total + counts["lost"]), 0
        self._burst = max(self._burst, samples)
        self._seen.append((arrival_s, total))
        while len(self._seen) > 2 and arrival_s - self._seen[1][0] > RATE_S:
            self._seen.popleft()
        first_s, first = self._seen[0]
        rate = (total - first) / (arrival_s - first_s) if arrival_s > first_s else math.nan
        advice = "" if old.state is not SessionState.STREAMING else old.advice
        self.health = Health(
            SessionState.STREAMING, rate, total, **counts, reconnects=old.reconnects, last_arrival_s=arrival_s,
            simulated=simulated, advice=advice, misfit=misfit, received=self._bytes,
        )  # fmt: skip

    def reconnected(self) -> None:
        """Count a reconnect."""
        self.health = replace(self.health, reconnects=self.health.reconnects + 1)

    def judge(self) -> Event | None:
        """Tell once what does not fit; the advice stands until it fits again."""
        health = self.health
        if health.state is not SessionState.STREAMING:
            return None
        advice = ""
        if self._bytes >= JUDGE_BYTES and health.garbage > MOSTLY * self._bytes:
            advice = (
                "most of what arrives is no reading: check the baud rate, the template and the terminator "
                f"in the transducer's description; {health.misfit}"
            )
        elif self._nominal_hz and self._steady is not None:
            advice = self._rate_advice(self._nominal_hz, *self._steady)
        if advice != health.advice:
            self.health = replace(health, advice=advice)
        about = advice[:5]  # each kind of advice is told once; the figures in it change
        if not advice or about in self._advised:
            return None
        self._advised.add(about)
        return Event(EventKind.NOTE, text=advice)

    def _rate_advice(self, nominal_hz: float, since_s: float, before: int) -> str:
        """Compare the device's own rate, lost samples included, with the described one."""
        health = self.health
        lasted_s = health.last_arrival_s - since_s
        count = health.samples + health.lost - before
        due = lasted_s * nominal_hz
        if lasted_s < JUDGE_S or abs(count - due) <= RATE_OFF * due + 2 + self._burst:  # a burst comes late or has come
            return ""
        return (
            f"about {count / lasted_s:.4g} samples a second arrive, the description says {nominal_hz:g}: "
            "correct rate_hz, the time axis rests on it"
        )


class Steps:
    """Notices steps of the computer's clock, sleep, and a program that was stopped.

    Times of samples rest on the monotonic clock, which is never stepped. While a computer sleeps that clock stands
    still (Linux); the time slept is added to what comes after.
    """

    def __init__(self) -> None:
        self.slept_s = 0.0
        self._wall_s = time.time() - time.monotonic()
        self._asleep_s = self._told_s = _asleep()  # at the last look, and when a sleep was told last
        self._look_s = time.monotonic()

    def awake(self) -> None:
        """Count a stop of the program from now on: what went before was waiting for something else."""
        self._look_s = time.monotonic()

    def look(self) -> list[Event]:
        """Give what has happened since the last look; to be called several times a second."""
        now = time.monotonic()
        stalled = now - self._look_s
        self._look_s = now
        asleep = _asleep()
        slept = asleep - self._told_s
        wall = time.time() - now
        step = wall - self._wall_s - (asleep - self._asleep_s)
        self._asleep_s = asleep
        events = []
        if slept > CLOCK_STEP_S:
            self.slept_s += slept
            self._told_s = asleep
            text = f"the computer slept for {slept:.1f} s; what was sent meanwhile may be lost"
            events.append(Event(EventKind.CLOCK, text=text))
        if stalled > STALL_S:
            events.append(Event(EventKind.CLOCK, text=f"the program was stopped for {stalled:.1f} s"))
        if abs(step) > CLOCK_STEP_S:
            text = f"the computer's clock was set by {step:+.1f} s; the times of this recording do not follow it"
            events.append(Event(EventKind.CLOCK, text=text))
        self._wall_s = wall
        return events


def _asleep() -> float:
    """Give the seconds this computer has slept since it was started, where the system tells."""
    if sys.platform != "linux":
        return 0.0
    return time.clock_gettime(time.CLOCK_BOOTTIME) - time.clock_gettime(time.CLOCK_MONOTONIC)
