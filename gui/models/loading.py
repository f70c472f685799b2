"""What a worker process does for the window: read a recording, export it, write its report. No Qt, no window.

Large arrays travel as files that the window maps into memory, so that handing them over costs it nothing.
"""

from __future__ import annotations

import os
import tempfile
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from gui.models.archive import ListedValues
from gui.models.trace import GrowingTrace
from logger.recordings.sidecar import read_sidecar, revision_of

if TYPE_CHECKING:
    from analysis.report.material import Issue
    from analysis.to_axle.axle_scale import AxleScale
    from analysis.verdict.recorded import RecordingReading
    from logger.samples import Floats


@dataclass(frozen=True, slots=True)
class Loaded:
    """A recording as read in the worker."""

    reading: RecordingReading  # without its arrays
    scale: AxleScale  # how its trace stands at the axle
    folder: str  # where its arrays are
    samples: int  # how many

    def trace(self) -> GrowingTrace:
        """Map the samples and their pyramid into memory."""
        return GrowingTrace.over(*_arrays(self.folder))


def load(path: str, room: str) -> Loaded:
    """Read a recording.

    Args:
        path: The file.
        room: Folder for its arrays.

    Raises:
        HeldwheelError: It cannot be read.
    """
    from analysis.pipeline import read_file

    reading = read_file(path)
    folder = tempfile.mkdtemp(dir=room)
    time_s = reading.time_s if reading.time_s is not None else np.empty(0)
    torque = reading.torque_nm if reading.torque_nm is not None else np.empty(0)
    trace = GrowingTrace(time_s, torque)
    np.save(os.path.join(folder, "time.npy"), time_s)
    np.save(os.path.join(folder, "torque.npy"), torque)
    for number, (least, greatest) in enumerate(trace.levels()):
        np.save(os.path.join(folder, f"least-{number}.npy"), least)
        np.save(os.path.join(folder, f"greatest-{number}.npy"), greatest)
    light = replace(reading, time_s=None, torque_nm=None, at=None)
    return Loaded(light, reading.scale, folder, len(time_s))


def _arrays(folder: str) -> tuple[Floats, Floats, list[tuple[Floats, Floats]]]:
    def mapped(name: str) -> Floats:
        path = os.path.join(folder, name)
        array: Floats = np.load(path, mmap_mode="r") if os.path.getsize(path) > 200 else np.load(path)
        return array

    levels: list[tuple[Floats, Floats]] = []
    while os.path.exists(os.path.join(folder, f"least-{len(levels)}.npy")):
        levels.append((mapped(f"least-{len(levels)}.npy"), mapped(f"greatest-{len(levels)}.npy")))
    return mapped("time.npy"), mapped("torque.npy"), levels


def angle_of(path: str) -> tuple[Floats, Floats, Floats] | None:
    """Give angle (degrees), torque (N·m) and time (s) of a recording; None without an angle.

    At most 20,000 points each; a known gain is divided out, as it is of the zero that the picture counts from.
    """
    from logger.recordings.files import read_trace

    trace = read_trace(path)
    angle = trace.angle_deg
    if angle is None or not np.isfinite(angle).any():
        return None
    step = max(1, len(angle) // 20_000)
    torque_nm = trace.torque_nm[::step] / (trace.header.transducer.gain or 1.0)
    return (
        np.ascontiguousarray(angle[::step]),
        np.ascontiguousarray(torque_nm),
        np.ascontiguousarray(trace.time_s[::step]),
    )


def said_of(reading: RecordingReading) -> ListedValues:
    """Give what the list shows of a reading."""
    values = {v.budget.quantity: v.budget.value for v in reversed(reading.job)}
    state = str(reading.result.state) if reading.result is not None and not reading.half else ""
    return ListedValues(state, values.get("breakaway"), values.get("rotating mean"))


def export(path: str, target: str, issue: Issue, neutral: str = "", second: str = "") -> str:
    """Write a recording's reading: JSON (the contract of the command line), CSV table, HTML or PDF page.

    Args:
        path, target: The recording, and where to; its ending says what.
        issue: For whom a page is, its unit, what the shop puts on it.
        neutral: Where ``path`` is the half in gear of a ratio, the half in neutral: the page is of both.
        second: A signed test by another operator or transducer that confirms ``path`` on an engineer's page.

    Raises:
        HeldwheelError: It cannot be read or written.
    """
    from analysis.pipeline import Asked, read_file

    ending = Path(target).suffix.lower()
    if ending in {".html", ".pdf"}:
        issue = replace(issue, revision=max(revision_of(read_sidecar(half)) for half in (path, neutral) if half))
        from analysis.report.gather import read_material
        from analysis.report.write import content_of, write_report

        material, _ = read_material(path, Asked(), neutral or None, second or None)
        return str(write_report(content_of(material, issue), target))
    reading = read_file(path)
    if ending != ".json":
        from analysis.rows.summary import pull_rows
        from analysis.rows.tables import PULL_COLUMNS, write_table

        return str(write_table(target, PULL_COLUMNS, pull_rows(reading)))
    import json

    from analysis.verdict.recorded import to_json
    from logger.edges.small_file import write_whole

    write_whole(target, json.dumps(to_json([reading]), ensure_ascii=False).encode("utf-8", "replace"))
    return target


def page_beside(recording: Path, reader: str, form: str = "pdf") -> Path:
    """Give where a page goes: beside its recording, named for its reader; an earlier page is never replaced."""
    from logger.edges.small_file import free_name

    return free_name(recording.parent, f"{recording.stem}-{reader}", f".{form}")
