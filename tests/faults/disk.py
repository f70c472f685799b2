"""What stops a disk from taking a recording: full, write-protected, its folder gone. A program of its own::

    python -m tests.faults.disk FAULT FOLDER

It runs one fault and prints what happened as JSON, because limits, mounts and users belong to a whole process. Where a
small disk cannot be mounted, the system's limit on the size of a file takes its place.
"""

from __future__ import annotations

import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

import numpy as np

from logger.errors import FileError
from logger.header import Header
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import EndReason
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, lines, recorded, session_of
from tests.faults.tally import Campaign, Tally

STEP = 200  # samples that arrive together
NOBODY = 65534


def script(steps: int, pause_s: float = 0.01) -> list[bytes | float]:
    """Give a device that sends for a while."""
    return [part for n in range(steps) for part in (lines(n * STEP, STEP), pause_s)]


def mounted(folder: Path, kilobytes: int) -> bool:
    """Mount a disk of this size there; False where that is not allowed."""
    command = ["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs", str(folder)]
    return bool(shutil.which("mount")) and subprocess.run(command, capture_output=True, check=False).returncode == 0


def fails_while_recording(
    path: Path, rescue: Path, steps: int, harm: threading.Thread | None = None
) -> dict[str, object]:
    """Record until something stops it; then read what was acknowledged, and rescue all."""
    session, kept = session_of(script(steps))
    if harm is not None:
        harm.start()
    writer, ending = recorded(session, str(path))
    saved = writer.saved
    numbers = kept.column("number")
    found: dict[str, object] = {
        "ending": str(ending.reason),
        "text": ending.text,
        "saved": saved,
        "received": len(numbers),
        "others_got_all": bool(np.array_equal(numbers, np.arange(len(numbers)))) and kept.ending is not None,
    }
    if path.exists():
        trace = read_trace(path)
        found |= {"readable": len(trace.time_s), "wrong": wrong(trace.torque, trace.columns.get("number", np.empty(0)))}
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    rescued = read_trace(writer.rescue(rescue))
    return found | {
        "rescued": len(rescued.time_s),
        "rescued_state": rescued.state,
        "rescued_wrong": wrong(rescued.torque, rescued.columns["number"]),
    }


def wrong(torque: np.ndarray, numbers: np.ndarray) -> int:
    """Count rows that are not what the device sent, in its order."""
    return int((torque != torque_of(numbers)).sum() + (numbers != np.arange(len(numbers))).sum())


def full_disk(folder: Path) -> dict[str, object]:
    """A disk of 200 kB, or a file limited to as much."""
    small, rescue = folder / "small", folder / "rescue"
    small.mkdir()
    rescue.mkdir()
    is_disk = mounted(small, 200)
    if not is_disk:
        resource.setrlimit(resource.RLIMIT_FSIZE, (200_000, resource.RLIM_INFINITY))
    try:
        return fails_while_recording(small / "a.csv", rescue, 400) | {
            "how": "disk of 200 kB" if is_disk else "limit of 200 kB"
        }
    finally:
        if is_disk:
            subprocess.run(["umount", "-l", str(small)], check=False)


def file_limit(folder: Path) -> dict[str, object]:
    """A file that may not grow beyond 120 kB: also without any right to mount."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (120_000, resource.RLIM_INFINITY))
    return fails_while_recording(folder / "a.csv", folder, 300) | {"how": "limit of 120 kB"}


def folder_removed(folder: Path) -> dict[str, object]:
    """The folder is deleted while recording."""
    there = folder / "gone"
    there.mkdir()
    harm = threading.Thread(target=lambda: (time.sleep(0.6), shutil.rmtree(there)))
    return fails_while_recording(there / "a.csv", folder, 400, harm) | {"how": "folder removed"}


def replaced(folder: Path) -> dict[str, object]:
    """Another file takes the recording's place."""
    other, path = folder / "other.csv", folder / "a.csv"
    other.write_text("time_s,torque_Nm\n0,1\n1,2\n", encoding="utf-8")
    harm = threading.Thread(
        target=lambda: (time.sleep(0.6), os.rename(path, folder / "moved.csv"), os.rename(other, path))
    )
    session, kept = session_of(script(400))
    harm.start()
    writer, ending = recorded(session, str(path))
    rescued = read_trace(writer.rescue(folder))
    return {
        "how": "another file in its place",
        "ending": str(ending.reason),
        "text": ending.text,
        "saved": writer.saved,
        "received": len(kept.column("number")),
        "others_got_all": True,
        "rescued": len(rescued.time_s),
        "rescued_state": rescued.state,
        "rescued_wrong": wrong(rescued.torque, rescued.columns["number"]),
    }


def full_from_the_start(folder: Path) -> dict[str, object]:
    """Room for the first line, but not for the header: nothing is saved, nothing is lost."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (60, resource.RLIM_INFINITY))
    return fails_while_recording(folder / "a.csv", folder, 30) | {"how": "limit of 60 bytes"}


def always_full(folder: Path) -> dict[str, object]:
    """A device that refuses every byte."""
    from logger.recordings import appended

    appended.created = lambda path: os.open("/dev/full", os.O_RDWR)
    told = {}
    try:
        RecordingWriter(folder / "a.csv", Header(), ())
    except FileError as error:
        told["a.csv"] = str(error)
    return {"how": "/dev/full", "told": told or "NOT REFUSED", "precious": "full" in str(told)}


def refused_at_once(folder: Path) -> dict[str, object]:
    """Places where no recording can begin: each is refused in words that name the file and the fix."""
    shut = folder / "shut"
    shut.mkdir()
    (folder / "there.csv").write_text("precious", encoding="utf-8")
    os.chmod(shut, 0o555)
    os.chmod(folder, 0o755)
    if os.geteuid() == 0:
        os.setegid(NOBODY)
        os.seteuid(NOBODY)  # to whom rights apply
    told = {}
    for name in ("shut/a.csv", "missing/a.csv", "there.csv", "there.csv/a.csv", "x" * 300 + ".csv", "a\x00b.csv", "."):
        try:
            RecordingWriter(folder / name, Header(), ())
        except FileError as error:
            told[name[:20]] = str(error).replace(str(folder), "…")
        else:
            told[name[:20]] = "NOT REFUSED"
    return {
        "how": "refused at once",
        "told": told,
        "precious": (folder / "there.csv").read_text(encoding="utf-8") == "precious",
    }


FAULTS = {
    f.__name__: f
    for f in (full_disk, file_limit, folder_removed, replaced, full_from_the_start, always_full, refused_at_once)
}


def run(cases: int) -> Tally:
    """Run every fault so often, each in a process of its own, and count."""
    tally = Tally("disks that take no more", cases * len(FAULTS))
    for _ in range(cases):
        with tempfile.TemporaryDirectory() as folder:
            running = {name: _started(name, Path(folder)) for name in FAULTS}
            for name, program in running.items():
                out, problem = program.communicate()
                if program.returncode:
                    tally.fail(f"{name}: {problem[-400:]}")
                else:
                    _judge(tally, name, json.loads(out))
    tally.outcome = (
        f"none of {tally.counts['samples acknowledged']:,} samples acknowledged, none of "
        f"{tally.counts['samples rescued']:,} received: the rest is rescued elsewhere"
    )
    return tally


def _started(name: str, folder: Path) -> subprocess.Popen[str]:
    own = folder / name
    own.mkdir()
    os.chmod(folder, 0o755)  # one of them gives up its rights
    command = [sys.executable, "-m", "tests.faults.disk", name, str(own)]
    here = Path(__file__).parents[2]
    return subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=here)


def _judge(tally: Tally, name: str, found: dict[str, object]) -> None:
    tally.counts[str(found["how"])] += 1
    if "told" in found:
        tally.require("NOT REFUSED" not in str(found["told"]) and bool(found["precious"]), f"{found}")
        return
    tally.require(found["ending"] == EndReason.FAILED, f"{name}: the session does not end as failed: {found}")
    tally.require("a.csv" in str(found["text"]) and ";" in str(found["text"]), f"{name}: no fix is named: {found}")
    tally.require(bool(found["others_got_all"]), f"{name}: other subscribers lost samples: {found}")
    tally.require(
        found.get("readable", found["saved"]) == found["saved"], f"{name}: acknowledged samples are lost: {found}"
    )
    tally.require(not found.get("wrong") and not found["rescued_wrong"], f"{name}: wrong rows: {found}")
    tally.require(
        found["rescued"] == found["received"], f"{name}: the rescue has other samples than were received: {found}"
    )
    tally.require(found["rescued_state"] == "closed", f"{name}: the rescued recording is not closed: {found}")
    tally.counts["samples acknowledged"] += int(str(found["saved"]))
    tally.counts["samples rescued"] += int(str(found["rescued"]))


CAMPAIGN = Campaign("disks", run, 1, 10, long_s=110)

if __name__ == "__main__":
    assert DESCRIPTION.lines is not None
    sys.stdout.write(json.dumps(FAULTS[sys.argv[1]](Path(sys.argv[2]))))
