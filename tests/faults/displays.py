"""What happens to a recording whose display, terminal, locale or patience ends: programs of their own, started so.

The file must hold what the same transducer gives on a sound display, closed; a program that is told to stop stops, with
what it has; none ends with a traceback.
"""

from __future__ import annotations

import os
import pty
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from logger.errors import HeldwheelError
from logger.recordings.files import read_trace
from logger.virtual.physics import simulate
from logger.virtual.scenarios import scenario
from tests.faults.tally import Campaign, Tally

SPEED = 20.0  # times real time: the virtual transducer's minute is played in some seconds
WAIT_S = 900  # a machine that ten people share
ROOT = Path(__file__).parents[2]
TOGETHER = 3


@dataclass(slots=True)
class Case:
    """One way of starting the program, and of treating it.

    ``goes_on``: it must record to its end; otherwise it may be ended early, properly.
    """

    name: str
    goes_on: bool = True
    options: dict[str, object] = field(default_factory=dict)
    treat: Callable[[subprocess.Popen[bytes], Path, random.Random], None] | None = None
    terminal: bool = False


def _closed(*numbers: int) -> Callable[[], None]:
    return lambda: [os.close(number) for number in numbers] and None  # type: ignore[func-returns-value]


def _begun(program: subprocess.Popen[bytes], path: Path) -> None:
    while program.poll() is None and not path.exists():
        time.sleep(0.01)


def _reads_one_line(program: subprocess.Popen[bytes], _path: Path, _rng: random.Random) -> None:
    assert program.stdout is not None
    program.stdout.readline()
    program.stdout.close()


def _hang_up(program: subprocess.Popen[bytes], path: Path, rng: random.Random) -> None:
    _begun(program, path)
    time.sleep(rng.uniform(0.0, 1.0))
    program.send_signal(signal.SIGHUP)


def _interrupts(program: subprocess.Popen[bytes], path: Path, rng: random.Random) -> None:
    _begun(program, path)
    time.sleep(rng.uniform(0.0, 1.0))
    while program.poll() is None:
        program.send_signal(rng.choice([signal.SIGINT, signal.SIGTERM, signal.SIGINT]))
        time.sleep(rng.uniform(0.0, 0.02))


def _early_end(program: subprocess.Popen[bytes], _path: Path, rng: random.Random) -> None:
    time.sleep(rng.uniform(0.0, 1.2))
    program.send_signal(signal.SIGTERM)


ASCII = {"PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "LC_ALL": "C", "PYTHONIOENCODING": "ascii:strict"}
CASES = [
    Case("its reader takes one line", treat=_reads_one_line, options={"stderr": subprocess.STDOUT}),
    Case("standard error is full", options={"stderr": "/dev/full"}),
    Case("both outputs are full", options={"stdout": "/dev/full", "stderr": "/dev/full"}),
    Case("standard error is closed", options={"preexec_fn": _closed(2)}),
    Case("all three are closed", options={"preexec_fn": _closed(0, 1, 2)}),
    Case("the terminal is gone", terminal=True, options={"start_new_session": True}),
    Case(
        "a hang-up under nohup",
        treat=_hang_up,
        options={"preexec_fn": lambda: signal.signal(signal.SIGHUP, signal.SIG_IGN) and None},
    ),
    Case("a display of ASCII", options={"env": ASCII}),
    Case("a hang-up", goes_on=False, treat=_hang_up),
    Case("a burst of interrupts", goes_on=False, treat=_interrupts),
    Case("a termination at any moment", goes_on=False, treat=_early_end),
]


def _started(case: Case, path: Path) -> tuple[subprocess.Popen[bytes], int]:
    options = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, "stdin": subprocess.DEVNULL} | case.options
    handles = []
    for name in ("stdout", "stderr"):
        if options[name] == "/dev/full":
            handles.append(os.open("/dev/full", os.O_WRONLY))
            options[name] = handles[-1]
    master = -1
    if case.terminal:
        master, slave = pty.openpty()
        handles.append(slave)
        options |= {"stdout": slave, "stderr": slave, "stdin": slave}
    options["env"] = os.environ | dict(options.get("env", {}))  # type: ignore[call-overload]
    command = [sys.executable, "-m", "logger", "record", "--virtual", "healthy"]
    command += ["--speed", str(SPEED), "--out", str(path)]
    program = subprocess.Popen(command, cwd=ROOT, **options)  # type: ignore[call-overload]
    for handle in handles:
        os.close(handle)
    return program, master


def one(case: Case, number: int) -> tuple[str, int, list[str]]:
    """Run one case; give its name, how many samples are in the file, and what is wrong."""
    rng = random.Random(number)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "grüße, =1.csv"
        program, master = _started(case, path)
        if case.terminal:
            _begun(program, path)
            time.sleep(rng.uniform(0.1, 1.0))
            os.close(master)
        if case.treat is not None:
            case.treat(program, path, rng)
        told = b""
        if case.treat is _reads_one_line:
            program.wait()
        else:
            told = b"".join(part or b"" for part in program.communicate(timeout=WAIT_S))
        wrong, samples = judged(case, program.returncode, path, told)
        if b"Traceback" in told and not (case.treat is _early_end and not path.exists()):
            wrong.append(f"a traceback: {told[-300:]!r}")
        return case.name, samples, [f"{case.name}, {number}: {text}" for text in wrong]


@cache
def played() -> int:
    """Count the samples that the virtual transducer plays."""
    return len(simulate(scenario("healthy"), 0).time_s)


def judged(case: Case, code: int, path: Path, told: bytes) -> tuple[list[str], int]:
    """Look at the file that is left."""
    if not path.exists():
        # Ended before the first sample came: there is nothing to keep, and the program says so and exits with 2; one
        # that is killed before it has begun says nothing.
        said = code == 2 and b"no sample was received" in told
        return ([] if case.treat is _early_end or said else [f"no file, exit code {code}: {told[-200:]!r}"]), 0
    try:
        trace = read_trace(path)
    except HeldwheelError as error:
        return [f"cannot be read: {error}"], 0
    wrong = [] if code == 0 else [f"exit code {code}"]
    wrong += [] if trace.state == "closed" else [f"{trace.state}: {trace.problems}"]
    if case.goes_on and len(trace.time_s) != played():
        wrong.append(f"{len(trace.time_s)} samples of {played()}")
    return wrong, len(trace.time_s)


def run(cases: int) -> Tally:
    """Run so many programs, every way in its turn, and count."""
    tally = Tally("displays, terminals, locales and signals", cases)
    with ThreadPoolExecutor(TOGETHER) as pool:
        for name, samples, wrong in pool.map(lambda n: one(CASES[n % len(CASES)], n), range(cases)):
            tally.counts[name] += 1
            tally.counts["samples"] += samples
            if wrong:
                tally.fail("; ".join(wrong))
    tally.outcome = f"none: {tally.counts['samples']:,} samples in recordings that are closed; no traceback"
    return tally


CAMPAIGN = Campaign("displays", run, len(CASES), 5 * len(CASES), long_s=260)
