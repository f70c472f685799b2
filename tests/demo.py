"""The main job from end to end without hardware: ``make demo``.

A virtual transducer (simulated, and it says so in its bytes) streams on a serial port of its own; the same commands
that a workshop uses record it, find the pulls and judge them. Then a recording is killed on purpose and recovered,
and a Bluetooth transducer is recorded over a virtual radio. Everything lands in one folder.
"""

from __future__ import annotations

import argparse
import os
import shutil
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import IO

from logger.edges.console import say
from logger.edges.toml_file import write_toml
from logger.virtual.device import VirtualDevice
from logger.virtual.lever import LeverModel
from logger.virtual.physics import SimulatedRun, simulate
from logger.virtual.port import VirtualPort
from logger.virtual.scenarios import scenario

# Several times real time, so that five pulls do not take a minute; samples are dated by the transducer's counter.
SPEED = 10.0
# The recorder of the second part is killed so long after its first byte.
KILL_AFTER_S = 3.3
# A command needs so long to start and open the port before bytes begin.
START_S = 1.2
SOURCE = Path(__file__).resolve().parents[1]
# The first pull of the Bluetooth gauge, in real time: a radio cannot be hurried.
BLUETOOTH_S = 14
LIMIT = """\
name = "demonstration limit"
quantity = "breakaway"
kind = "min"
lower = 35
unit = "lbf·ft"
source = "invented for this demonstration; yours comes from your manual or rule"
place = "car"
held = "other side"
gear = "neutral"
"""
JOB = """\
[job]
number = "D-1"
vehicle = "hill-climb car (simulated)"
shop = "Copper Lane club workshop (invented)"
axle = "rear"

[test]
place = "car"
held = "other side"
gear = "neutral"
side = "left"

[lever]
fixture = "one stud"
length_mm = 450
length_mm_u = 3
stud_circle_mm = 114.3
studs = 5
angle_deg = 0
angle_deg_u = 3
weight_kg = 1.2
centroid_mm = 200
start_angle_deg = 20
"""


def main() -> int:
    """Run the demonstration."""
    parser = argparse.ArgumentParser(prog="make demo", description=__doc__)
    parser.add_argument("--out", type=Path, default=Path("demo-output"), help="folder for everything it makes")
    args = parser.parse_args()
    folder: Path = args.out.resolve()
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    (folder / "limit.toml").write_text(LIMIT, encoding="utf-8")
    (folder / "job.toml").write_text(JOB, encoding="utf-8")
    begun = time.monotonic()
    say("Heldwheel demonstration. Everything below is SIMULATED: no wheel was turned.")
    say("This program measures; it does not declare a car safe or legal. The maker's manual decides.")
    on_stud = replace(scenario("healthy"), lever=LeverModel(length_m=0.45, stud_radius_m=0.1143 / 2))
    run = simulate(on_stud, seed=7)
    say("\nA Bluetooth transducer is recorded in the background; its result is part 3.")
    radio = _begin_bluetooth(folder)
    codes = [_record_and_read(run, folder), _kill_and_recover(run, folder), _end_bluetooth(radio, folder)]
    say(f"\nDone in {time.monotonic() - begun:.0f} s. Everything is in {folder}")
    for path in sorted(folder.glob("*.csv")):
        say(f"  {path}  {path.stat().st_size / 1e3:,.0f} kB")
    return max(codes)


def _shown(words: list[str], folder: Path) -> None:
    """Print a command as a user would type it."""
    said = " ".join(f'"{w}"' if " " in w else w.replace(f"{folder}/", "") for w in words)
    say(f"\n$ {said}")


def _command(
    door: str, words: list[str], folder: Path, env: dict[str, str] | None = None, into: IO[bytes] | None = None
) -> subprocess.Popen[bytes]:
    """Start one of the two doors as a process of its own, in the demonstration's folder."""
    module = {"heldwheel-log": "logger", "heldwheel-read": "analysis"}[door]
    _shown([door, *words], folder)
    paths = os.pathsep.join(p for p in (str(SOURCE), os.environ.get("PYTHONPATH", "")) if p)
    whole = {**os.environ, "PYTHONPATH": paths, **(env or {})}
    return subprocess.Popen([sys.executable, "-m", module, *words], cwd=folder, env=whole, stdout=into, stderr=into)


@contextmanager
def _streamed(run: SimulatedRun, folder: Path, name: str, out: str) -> Iterator[subprocess.Popen[bytes]]:
    """Put the virtual transducer on a port and start recording it; the stream begins when the recorder listens."""
    device = VirtualDevice(run)
    write_toml(folder / "transducer.toml", device.description)
    with VirtualPort(device, link=folder / name, speed=SPEED, held=True) as port:
        seconds = f"{run.duration_s - 2:.0f}"
        words = ["record", port.path, "--transducer", "transducer.toml", "--job", "job.toml", "--limit", "limit.toml"]
        recorder = _command("heldwheel-log", [*words, "--seconds", seconds, "--out", out], folder)
        time.sleep(START_S)
        port.go()
        yield recorder


def _record_and_read(run: SimulatedRun, folder: Path) -> int:
    say(f"\n1. Five pulls on a serial port, {SPEED:.0f} times as fast as life")
    with _streamed(run, folder, "serial-port", "left-1.csv") as recorder:
        recorder.wait()
    read = _command("heldwheel-read", ["pulls", "left-1.csv", "--zero", "start"], folder).wait()
    true = statistics.median(p.breakaway_axle_nm for p in run.truth if p.breakaway_axle_nm is not None)
    say(f"   (the simulation knows the truth: the median breakaway at the axle was {true:.2f} N·m)")
    # Outside the limit or too close to call are results as good as any other; only a failure is one.
    return recorder.returncode or (read if read == 2 else 0)


def _kill_and_recover(run: SimulatedRun, folder: Path) -> int:
    say("\n2. The recording program is killed in the middle of a test, and its file opened again")
    with _streamed(run, folder, "serial-port-2", "killed.csv") as recorder:
        time.sleep(KILL_AFTER_S)
        recorder.kill()
        recorder.wait()
    say("\n   killed with SIGKILL: no closing line was written")
    read = _command("heldwheel-read", ["pulls", "killed.csv", "--zero", "start"], folder).wait()
    return 2 if read == 2 else 0


@dataclass(frozen=True, slots=True)
class _Radio:
    """A virtual Bluetooth gauge in a process of its own, behind a private system bus, and what records it."""

    process: subprocess.Popen[str]
    recorder: subprocess.Popen[bytes]
    log: Path


def _begin_bluetooth(folder: Path) -> _Radio | None:
    """Start the gauge and its recorder, which take as long as life, beside the other parts."""
    if not (SOURCE / "tests" / "radio").is_dir() or shutil.which("dbus-daemon") is None:
        return None
    words = [sys.executable, "-m", "tests.radio", "--gauge", "standard"]
    radio = subprocess.Popen(words, cwd=SOURCE, stdout=subprocess.PIPE, text=True)
    told = dict(radio.stdout.readline().strip().split("=", 1) for _ in range(2)) if radio.stdout else {}
    address = told.pop("ADDRESS")  # what is left is where the recorder finds the system bus
    log = folder / "bluetooth.log"
    words = ["record", "--ble", address, "--job", "job.toml", "--seconds", str(BLUETOOTH_S), "--out", "bluetooth.csv"]
    with log.open("wb") as kept:
        recorder = _command("heldwheel-log", words, folder, told, into=kept)
    return _Radio(radio, recorder, log)


def _end_bluetooth(radio: _Radio | None, folder: Path) -> int:
    say("\n3. Meanwhile: a Bluetooth transducer with the standard Torque characteristic, without a description")
    if radio is None:
        say("   excluded: it needs the source tree and dbus-daemon (Linux)")
        return 0
    try:
        recorded = radio.recorder.wait()
        say(radio.log.read_text(encoding="utf-8").strip())
        read = _command("heldwheel-read", ["pulls", "bluetooth.csv"], folder).wait()
        return recorded or (read if read == 2 else 0)
    finally:
        radio.process.terminate()
        radio.process.communicate()


if __name__ == "__main__":
    sys.exit(main())
