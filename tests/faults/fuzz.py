"""Runs a target on hostile cases by the thousand: only documented errors, bounded time, bounded memory.

A target is a function of a ``random.Random`` that makes its own input, calls our code and checks what comes back. It
gives one word for what became of the case; a ``HeldwheelError`` counts as "refused". Any other exception, a warning, a
case that takes longer than ``SLOWEST_S`` of processor time (``HANG_S`` on the wall), or a campaign whose memory grows
by more than ``MOST_GROWTH`` is a failure.
Case ``n`` of a target under a seed is made again by ``replay(target, n, seed)``.
"""

from __future__ import annotations

import contextlib
import os
import random
import sys
import time
import traceback
import warnings
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from logger.errors import HeldwheelError
from tests.faults.tally import Campaign, Tally

SLOWEST_S = 10.0  # processor time for a case of at most 20 kB: some are a whole report, on a busy machine
HANG_S = 60.0  # on the wall: it waits for something that does not come
MOST_GROWTH = 150e6  # bytes; caches and imports settle below this

Case = Callable[[random.Random], str]


@dataclass(frozen=True, slots=True)
class Target:
    """Something that hostile input is given to."""

    name: str
    case: Case
    long: int = 100_000
    short: int = 2_000
    long_s: float = 100.0

    @property
    def campaign(self) -> Campaign:
        """The campaign that runs it."""
        run_it = partial(run, self)
        return Campaign(f"fuzz: {self.name}", run_it, self.short, self.long, seeded=True, long_s=self.long_s)


def rng_of(target: Target, number: int, seed: int = 0) -> random.Random:
    """Give the source of chance of one case."""
    return random.Random(f"{target.name}:{number}" + (f":{seed}" if seed else ""))


def replay(target: Target, number: int, seed: int = 0) -> str:
    """Run one case again, with whatever it raises."""
    return target.case(rng_of(target, number, seed))


def run(target: Target, cases: int, seed: int = 0) -> Tally:
    """Run so many cases and count."""
    tally = Tally(f"fuzz: {target.name}", cases)
    with contextlib.suppress(Exception):
        replay(target, 0)  # imports and caches
    before = memory()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for number in range(cases):
            begun_s, wall_s = time.process_time(), time.perf_counter()
            try:
                tally.counts[target.case(rng_of(target, number, seed))] += 1
            except HeldwheelError as error:
                tally.counts["refused"] += 1
                tally.require(bool(str(error).strip()), f"case {number}: an error without text")
            except Exception as error:  # noqa: BLE001 - whatever it is, it is a finding
                tally.fail(f"case {number}: {type(error).__name__}: {str(error)[:200]} at {_place(error)}")
            took_s, waited_s = time.process_time() - begun_s, time.perf_counter() - wall_s
            tally.most("slowest s", took_s)
            tally.require(took_s < SLOWEST_S, f"case {number}: took {took_s:.1f} s of processor time")
            tally.require(waited_s < HANG_S, f"case {number}: took {waited_s:.1f} s on the wall")
    growth = memory() - before
    tally.figures["grown MB"] = growth / 1e6
    tally.require(growth < MOST_GROWTH, f"memory grew by {growth / 1e6:.0f} MB")
    return tally


def _place(error: BaseException) -> str:
    frames = traceback.extract_tb(error.__traceback__)
    ours = [f for f in frames if "/tests/" not in f.filename and "site-packages" not in f.filename] or frames
    return f"{Path(ours[-1].filename).name}:{ours[-1].lineno}"


def memory() -> float:
    """Give the memory that this process holds now, in bytes."""
    if sys.platform != "linux":
        import resource

        return float(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return float(pages * os.sysconf("SC_PAGE_SIZE"))
