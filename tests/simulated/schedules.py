"""A schedule: a gauge, an hour at most, and what goes wrong in it; all drawn from one seed.

``play(seed)`` gives what a session made of it, ``faults(played)`` everything that is not as it must be:

1. no sample that came is dropped, doubled or dated backwards;
2. every loss is counted exactly once, at its place;
3. every event that is written is true;
4. the session ends, and soon after it is told to.
"""

from __future__ import annotations

import itertools
import random
import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.decoder.description import BleSettings
from logger.decoder.layouts import CounterField, Packet, PlacedNumber
from logger.decoder.lines import LineDecoder
from logger.decoder.notifications import NotificationDecoder
from logger.decoder.template import LineFormat
from logger.links.ble import BleLink
from logger.samples import Block, Decoder, Ending, EndReason, Event, EventKind
from logger.stream.clock import CounterClock
from logger.stream.session import Session
from tests.simulated.clocks import Clocks, NothingLeftError, simulated
from tests.simulated.gauge import IDENTITY, STREAM, Gauge, Kind
from tests.simulated.wire import TEMPLATE, Wire

if TYPE_CHECKING:
    from logger.links.base import Link

SILENCE_S: Final = 3.0
RECONNECT_S: Final = 60.0
OPEN_S: Final = 60.0  # what one attempt to open may take at the most, all questions included
STOP_S: Final = 2.0  # from stop to the end, a farewell that nobody answers excluded
WRONG_S: Final = 0.7  # a time may be off by the radio's delay and by what an interval in which a step fell leaves open
MOST: Final = {"wait": 30.0, "hold": 20.0, "sleep": 1800.0}


@dataclass(frozen=True, slots=True)
class Step:
    """Something that happens at a moment, for so long."""

    true_s: float
    what: str
    amount: float


@dataclass(frozen=True, slots=True)
class Schedule:
    """What is played."""

    seed: int
    kind: Kind
    steps: tuple[Step, ...]
    stop_s: float


class Kept:
    """A subscriber that keeps blocks, and when each came."""

    def __init__(self, clocks: Clocks) -> None:
        self._clocks = clocks
        self.blocks: list[tuple[float, Block]] = []
        self.ending: Ending | None = None

    def on_block(self, block: Block) -> None:
        self.blocks.append((self._clocks.monotonic(), block))

    def on_end(self, ending: Ending) -> None:
        self.ending = ending

    @property
    def numbers(self) -> list[int]:
        return [int(v) for _, block in self.blocks for v in block.columns["torque"].tolist()]

    @property
    def time_s(self) -> np.ndarray:
        return np.concatenate([block.time_s for _, block in self.blocks] or [np.empty(0)])

    @property
    def events(self) -> list[tuple[float, int, Event]]:
        """Give every event with the moment it came and the place among all samples that it stands before."""
        found, before = [], 0
        for moment_s, block in self.blocks:
            found += [(moment_s, before + event.index, event) for event in block.events]
            before += len(block)
        return found


@dataclass(frozen=True, slots=True)
class Played:
    """What became of a schedule."""

    schedule: Schedule
    gauge: Gauge | Wire
    kept: Kept
    ended_s: float | None  # monotonic
    error: str


# --- drawing --------------------------------------------------------------------------------------------------------


_ODDS: Final = {
    "hold": 5, "sleep": 2, "away": 4, "lose": 3, "off": 2, "quiet": 3, "back": 4, "drop": 5, "twice": 2,
    "deaf": 2, "set": 3, "no answer": 1, "refuse": 1,
}  # fmt: skip


def draw(seed: int) -> Schedule:
    """Draw a schedule."""
    rng = random.Random(f"schedule {seed}")
    kind = Kind(
        packet_hz=rng.choice((2.0, 4.0, 10.0, 20.0)),
        samples=rng.choice((1, 4, 20)),
        counts=rng.choice(("packets", "samples")),
        bits=rng.choice((16, 16, 32)),
        always=rng.random() < 0.7,
        fast_ppm=rng.uniform(-100, 100),
    )
    if seed % 3 == 2:
        kind = replace(kind, wire=True, counts="samples", bits=16, always=True)
    lasts_s = rng.choice((12.0, 30.0, 60.0, 150.0))
    steps = []
    for _ in range(rng.choice((0, 1, 1, 2, 3, 5))):
        what = rng.choices(list(_ODDS), list(_ODDS.values()))[0]
        steps.append(Step(rng.uniform(1.0, lasts_s), what, _amount(rng, what)))
    return Schedule(seed, kind, tuple(sorted(steps, key=lambda step: step.true_s)), lasts_s)


def _amount(rng: random.Random, what: str) -> float:
    return {
        "hold": lambda: rng.choice((rng.uniform(0.3, 2.0), rng.uniform(2.5, 20.0))),
        "sleep": lambda: rng.choice((rng.uniform(1.0, 60.0), rng.uniform(60.0, 1800.0))),
        "away": lambda: rng.choice((rng.uniform(0.2, 1.8), rng.uniform(2.5, 30.0), 200.0)),
        "lose": lambda: 0.0,
        "off": lambda: rng.uniform(3.0, 40.0),
        "quiet": lambda: rng.choice((rng.uniform(0.5, 2.5), rng.uniform(3.5, 10.0))),
        "back": lambda: rng.uniform(0.3, 2.5),
        "drop": lambda: float(rng.choice((1, 1, 2, 5, 30))),
        "twice": lambda: float(rng.choice((1, 2, 5))),
        "deaf": lambda: 0.0,
        "set": lambda: rng.choice((-1, 1)) * rng.choice((2.0, 3600.0, rng.uniform(1.0, 100.0))),
        "no answer": lambda: 1.0,
        "refuse": lambda: float(rng.choice((1, 3))),
    }[what]()


# --- playing --------------------------------------------------------------------------------------------------------


def play(seed: int) -> Played:
    """Play the schedule of a seed."""
    return play_it(draw(seed))


def play_it(schedule: Schedule) -> Played:
    """Play a schedule through a real session, a real Bluetooth link and bleak's own client."""
    clocks, rng = Clocks(), random.Random(f"chance {schedule.seed}")
    kind = schedule.kind
    gauge = Wire(clocks, kind, rng) if kind.wire else Gauge(clocks, kind, rng)
    session = session_on(gauge)
    kept = Kept(clocks)
    session.subscribe(kept)

    def stop() -> None:
        gauge.truth.stopped_s = clocks.monotonic()
        session.stop()

    for step in schedule.steps:
        clocks.at(step.true_s, _doing(step, gauge))

    def ask() -> None:
        gauge.truth.stop_asked = True
        clocks.inbox.append(stop)

    clocks.at(schedule.stop_s, ask)
    clocks.last_s = schedule.stop_s + sum(abs(step.amount) for step in schedule.steps) + 3600.0
    ended_s, error = None, ""
    with simulated(clocks) as runner:
        try:
            runner.run(session.run())
            ended_s = clocks.monotonic()
        except NothingLeftError as stuck:
            error = str(stuck)
    return Played(schedule, gauge, kept, ended_s, error)


def session_on(gauge: Gauge | Wire) -> Session:
    """Build the session of a simulated gauge."""
    kind = gauge.kind
    link: Link
    decoder: Decoder
    if isinstance(gauge, Wire):
        lines = LineFormat(template=TEMPLATE, counter_modulus=2**kind.bits, checksum="xor")
        link, decoder = gauge, LineDecoder(lines, "N·m")
    else:
        counter = CounterField(at=0, type="u32", counts=kind.counts, modulus=2**kind.bits)  # type: ignore[arg-type]
        torque = PlacedNumber(name="torque", type="s32")
        layout = Packet(fields=(torque,), samples=kind.samples, samples_at=4, counter=counter)
        link = BleLink(IDENTITY, BleSettings(characteristic=STREAM), backends=gauge.backends)
        decoder = NotificationDecoder(layout, "N·m")
    return Session(
        link, decoder, CounterClock(1.0 / kind.rate_hz), has_counter=True, nominal_hz=kind.rate_hz,
        silence_s=SILENCE_S, reopen_after_silence=not kind.wire, reconnect_s=RECONNECT_S,
    )  # fmt: skip


def _doing(step: Step, gauge: Gauge | Wire) -> Callable[[], None]:
    clocks, truth = gauge.clocks, gauge.truth

    def hold() -> None:
        truth.held.append((clocks.monotonic() + step.amount, step.amount))
        clocks.hold(step.amount)

    def sleep() -> None:
        gauge.sleep()
        truth.slept.append(step.amount)
        clocks.hold(step.amount, asleep=True)

    def set_clock() -> None:
        truth.set_by.append(step.amount)
        clocks.set_by_s += step.amount

    of_the_computer: dict[str, Callable[[], None]] = {
        "hold": lambda: clocks.when_run(hold),
        "sleep": lambda: clocks.when_run(sleep),
        "set": set_clock,
    }
    own = gauge.doings().get(step.what, lambda _: None)
    return of_the_computer.get(step.what, lambda: own(step.amount))


# --- judging --------------------------------------------------------------------------------------------------------


def faults(played: Played) -> list[str]:
    """Give everything that is not as it must be."""
    return [*_kept_all(played), *_losses(played), *_true(played), *_ended(played)]


def _kept_all(played: Played) -> list[str]:
    numbers, time_s, truth = played.kept.numbers, played.kept.time_s, played.gauge.truth
    found = []
    if missing := truth.came - set(numbers):
        found.append(f"dropped: {len(missing)} samples that came, first number {min(missing)}")
    if len(set(numbers)) != len(numbers):
        found.append(f"doubled: {len(numbers) - len(set(numbers))} samples")
    if any(b < a for a, b in itertools.pairwise(numbers)):
        found.append("out of order")
    if len(time_s) and (np.diff(time_s) < 0).any():
        found.append("dated backwards")
    if len(numbers):
        true_s = np.array(truth.taken_s)[numbers]
        off_s = (time_s - time_s[0]) - (true_s - true_s[0])
        if not played.gauge.truth.restarts and played.gauge.kind.always and np.abs(off_s).max() > _leeway(played):
            found.append(f"dated wrongly by up to {off_s[np.abs(off_s).argmax()]:+.2f} s")
    return found


def _leeway(played: Played) -> float:
    """A burst, a hold or a slow first packet may make a time late by as much as itself, never more."""
    amounts = [step.amount for step in played.schedule.steps if step.what in ("hold", "back")]
    return WRONG_S + sum(amounts) + 2 / played.gauge.kind.packet_hz


def _losses(played: Played) -> list[str]:
    numbers = played.kept.numbers
    told: dict[int, list[Event]] = {}
    for _, place, event in played.kept.events:
        if event.kind is EventKind.GAP:
            told.setdefault(place, []).append(event)
    found = []
    restarts = played.gauge.truth.restarts
    for place in range(1, len(numbers)):
        lost = numbers[place] - numbers[place - 1] - 1
        events = told.pop(place, [])
        counts = [event.count for event in events]
        anew = any(numbers[place - 1] < first <= numbers[place] for first in restarts)
        if anew:
            if len(events) > 1 or any("about" not in event.text for event in events if event.count != lost):
                found.append(f"after a restart {counts} lost are told as known, {lost} were")
        elif counts != ([lost] if lost else []):
            found.append(f"lost: {lost} before number {numbers[place]}, told {[e.text for e in events]}")
    found += [f"lost: told at place {place}, where nothing came" for place in told]
    return found


def _true(played: Played) -> list[str]:
    found, truth = [], played.gauge.truth
    slept = set_by = 0.0
    held = [amount for _, amount in truth.held]
    reconnects = losses = 0
    reasons: set[str] = set()
    for moment_s, _, event in played.kept.events:
        words = event.text
        if event.kind is EventKind.CLOCK and (told := re.search(r"was stopped for ([\d.]+) s", words)):
            near = [amount for amount in held if abs(amount - float(told[1])) < 0.5]
            if near:
                held.remove(near[0])
            else:
                found.append(f"false: {words!r}")
        elif event.kind is EventKind.CLOCK and (told := re.search(r"slept for ([\d.]+) s", words)):
            slept += float(told[1])
        elif event.kind is EventKind.CLOCK and (told := re.search(r"set by ([-+\d.]+) s", words)):
            set_by += float(told[1])
        elif event.kind is EventKind.SILENCE:
            quiet_s = float(re.findall(r"for (\d+) s", words)[0])
            if any(moment_s - quiet_s + 0.6 < arrived_s < moment_s for arrived_s in truth.arrived_s):
                found.append(f"false: {words!r}, something had")
        elif event.kind is EventKind.RECONNECT:
            reconnects += 1
        elif event.kind is EventKind.DISCONNECT:
            losses += 1
        elif event.kind is EventKind.NOTE and words.startswith("it does not come back: "):
            reasons.add(words)
        elif event.kind is EventKind.NOTE:
            found.append(f"false: {words!r}")
        elif event.kind is EventKind.GARBAGE and not (isinstance(played.gauge, Wire) and played.gauge.cut):
            found.append(f"false: {words!r}, there was none")
    if slept and min(abs(slept - total) for total in np.cumsum([0.0, *truth.slept])) > 0.2:
        found.append(f"false: slept for {slept:.1f} s in all, {truth.slept} were")
    if set_by and min(abs(set_by - total) for total in np.cumsum([0.0, *truth.set_by])) > 0.6:
        found.append(f"false: the clock was set by {set_by:+.1f} s in all, {truth.set_by} were")
    ending = played.kept.ending
    if ending is not None and ending.reason is EndReason.LOST and not any(why in ending.text for why in reasons):
        found.append(f"swallowed: why the device did not come back is not in {ending.text!r}")
    if reconnects > losses:
        found.append(f"false: {reconnects} times back, {losses} times away")
    return found


def _ended(played: Played) -> list[str]:
    truth, kept = played.gauge.truth, played.kept
    if played.ended_s is None or kept.ending is None:
        return [f"does not end: {played.error}"]
    ending = kept.ending
    if ending.reason is EndReason.FAILED:
        at_first = not kept.numbers and not truth.arrived_s  # it could not be opened at all
        return [] if at_first else [f"fails: {ending.text}"]
    if ending.reason is EndReason.STOPPED and truth.stopped_s is not None:
        held = sum(amount for end_s, amount in truth.held if end_s > truth.stopped_s)
        took_s = played.ended_s - truth.stopped_s - held
        farewell_s = 5.0 if any(step.what == "no answer" for step in played.schedule.steps) else 0.0
        return [f"ends {took_s:.1f} s after it was told to"] if took_s > STOP_S + farewell_s else []
    return []
