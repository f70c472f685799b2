"""From a recording file to its reading: the only module of the analysis that knows what a recording is.

It feeds a ``Job`` once with the whole trace. Everything that was assumed, missing or put right is among the problems.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

import msgspec

from analysis.verdict.dialled import judge_dialled
from analysis.verdict.job import Job
from analysis.verdict.recorded import RecordingReading
from analysis.verdict.sides import with_drag
from logger.edges.small_file import beside, hash_of
from logger.edges.toml_file import read_toml
from logger.errors import FileError, HeldwheelError, InputError
from logger.recordings.axles import AxleFile, axle_file, builds_until, same_tag
from logger.recordings.dialled import is_dialled, read_dialled
from logger.recordings.files import STANDARD_INPUT, read_trace
from logger.recordings.sidecar import merged, read_sidecar, sidecar_path

if TYPE_CHECKING:
    from analysis.verdict.limits import Guard, Rule
    from logger.header import Header, Lever, Limit, Table, Zero
    from logger.recordings.files import Trace
    from logger.samples import Floats


@dataclass(frozen=True, slots=True)
class Asked:
    """What the caller states; it wins over what the file and its sidecar say."""

    # lever, limit, zero: instead of the recording's; zero "start" means that the recording begins with nothing on the
    # transducer (lever off or hanging), so that its first still level is the true zero
    lever: Lever | None = None
    limit: Limit | None = None
    zero: Zero | Literal["start"] | None = None
    # held, gear: which part was held in this test, and whether a gear was engaged
    held: Literal["other side", "case", "none"] | None = None
    gear: Literal["neutral", "in gear"] | None = None
    # rule, guard: how uncertainty decides, instead of the recording's own rule
    rule: Rule | None = None
    guard: Guard | None = None
    repeatability: float | None = None  # relative pull-to-pull scatter, used under three pulls
    drop_outliers: bool = False  # whether outliers are excluded from the job's value
    table: Table | None = None  # what a foreign table does not say of itself
    both_free: Path | None = None  # recording of the drag baseline, instead of the one that the recording names
    build_sheet: Path | None = None  # the axle's sheet, instead of the one that its tag finds beside the recording


def read_files(
    paths: Sequence[Path | str], asked: Asked | None = None, *, before: Callable[[int, Path | str], None] | None = None
) -> Iterator[RecordingReading]:
    """Read several recordings; one that cannot be read gives a reading that says why, and the others go on.

    Args:
        paths: The files.
        asked: For all of them.
        before: Called with number and path before each file: for progress.
    """
    for i, path in enumerate(paths):
        if before is not None:
            before(i, path)
        try:
            yield read_file(path, asked)
        except HeldwheelError as error:
            yield RecordingReading(str(path), ok=False, problems=tuple(str(error).splitlines()))


def read_file(path: Path | str, asked: Asked | None = None) -> RecordingReading:
    """Read one recording.

    Args:
        path: Our recording, closed or not, or a foreign CSV trace.
        asked: What the caller states.

    Raises:
        HeldwheelError: The file, its sidecar, its lever or its limit cannot be used; the text names what and the fix.
    """
    asked = asked or Asked()
    reading = _with_build(_read(path, asked), asked.build_sheet)
    baseline, why_not = _baseline(reading, asked)
    if why_not:
        return replace(reading, problems=(*reading.problems, f"drag correction withheld: {why_not}"))
    return reading if baseline is None else with_drag(reading, baseline)


def _with_build(reading: RecordingReading, sheet: Path | None = None) -> RecordingReading:
    """Add what was in the axle when it was recorded; a sheet that cannot be read is told and costs nothing else."""
    header = reading.header
    tag = "" if header is None else header.axle.tag.strip()
    if header is None or header.started is None or reading.file == STANDARD_INPUT or not (tag or sheet):
        return reading
    path: Path | None = sheet
    axle: AxleFile | None
    try:
        if sheet is None:
            path, axle = axle_file(Path(reading.file).parent, tag)
        else:
            axle = read_toml(sheet, AxleFile)
    except HeldwheelError as error:
        if sheet is not None:
            raise
        return replace(reading, problems=(*reading.problems, f"build sheet not used: {error}"))
    builds = () if axle is None else builds_until(axle, header.started)
    if sheet is not None and axle is not None and tag and not same_tag(axle.tag, tag):
        raise InputError(f"{sheet}: is the sheet of axle {axle.tag}; the recording is of {tag}")
    if sheet is not None and not builds:
        raise InputError(f"{sheet}: holds no build from before the recording")
    if not builds or path is None:
        return reading
    return replace(
        reading,
        build=builds[-1],
        build_before=builds[-2] if len(builds) > 1 else None,
        build_file=str(path),
        build_sha256=hash_of(path),
    )


def hashes_of(path: Path | str, asked: Asked | None = None) -> tuple[str, str]:
    """Give the SHA-256 hashes by which reports name a recording: of its bytes, and (the first ones) above its closing.

    Raises:
        HeldwheelError: It cannot be read.
    """
    if is_dialled(path):
        return read_dialled(path)[1:3]
    trace = read_trace(path, asked.table if asked is not None else None)
    return trace.sha256, trace.above_sha256


def _read(path: Path | str, asked: Asked) -> RecordingReading:
    if is_dialled(path):
        return _read_dialled(path, asked)
    return reading_of(read_trace(path, asked.table), asked)


def _read_dialled(path: Path | str, asked: Asked) -> RecordingReading:
    """Read a job whose torques were read from a dial."""
    kept, sha256, above, problems = read_dialled(path)
    sidecar, beside_it = read_sidecar(path), sidecar_path(path)
    reading = judge_dialled(
        str(path),
        _header(merged(kept.header, sidecar), asked),
        kept.readings,
        corrections=sidecar.corrections if sidecar is not None else (),
        rule=asked.rule,
        guard=asked.guard,
        repeatability=asked.repeatability,
    )
    return replace(
        reading,
        problems=(*problems, *reading.problems),
        state="recovered" if problems else "closed",
        sha256=sha256,
        above_sha256=above,
        sidecar_sha256=hash_of(beside_it) if sidecar is not None else "",
    )


def _baseline(reading: RecordingReading, asked: Asked) -> tuple[RecordingReading | None, str]:
    """Read the both-free recording that was asked for or that the recording names, or say why that cannot be used."""
    alone = replace(asked, both_free=None, limit=None, held=None)
    if asked.both_free is not None:
        free = _read(asked.both_free, alone)
        if free.sha256 == reading.sha256:
            raise InputError(
                f"{asked.both_free} is the recording itself: the drag baseline is one with both wheels free"
            )
        return free, ""
    named = reading.header.both_free if reading.header is not None else None
    if named is None:
        return None, ""
    path = beside(reading.file, named.file)
    if path is None or not os.path.isfile(path):  # a name too long is no file
        return None, f"its baseline {path.name if path else ''} does not lie beside the recording"
    try:
        found = _read(path, alone)
    except HeldwheelError as error:
        return None, f"its baseline cannot be read: {error}"
    if named.sha256.lower() not in (found.sha256, found.above_sha256):
        return None, f"its baseline {path.name} has changed since: its SHA-256 differs"
    return found, ""


def wheel_angle(path: Path | str) -> tuple[Floats, Floats, bool]:
    """Give times (s) and the wheel's angle (degrees) of a recording, shape (n,) each, and whether it is simulated.

    Raises:
        FileError: It cannot be read, or has no angle.
    """
    trace = read_trace(path)
    if trace.angle_deg is None:
        raise FileError(f"{path}: has no angle of the wheel: record one along, or name its column angle_deg")
    return trace.time_s, trace.angle_deg, trace.header.simulated


def reading_of(trace: Trace, asked: Asked) -> RecordingReading:
    """Read a trace that has been loaded; see ``read_file``."""
    time_s, delivered = trace.time_s, trace.torque
    job = Job(
        _header(trace.header, asked),
        trace.unit,
        file=trace.file,
        rule=asked.rule,
        guard=asked.guard,
        repeatability=asked.repeatability,
        drop_outliers=asked.drop_outliers,
        remarks=_rule_advice(trace, asked),
    )
    job.feed(time_s, delivered, trace.angle_deg, trace.events, trace.held_deg)
    job.finish()
    if asked.zero == "start":
        job.zero_from_start(time_s, delivered)
    corrections = trace.sidecar.corrections if trace.sidecar is not None else ()
    said = job.judge(job.corrected(corrections, time_s, delivered))
    return replace(
        said,
        problems=tuple(dict.fromkeys((*trace.problems, *said.problems))),
        time_s=time_s,
        torque_nm=job.calibration.true(delivered),
        corrections=tuple(corrections),
        state=trace.state,
        sha256=trace.sha256,
        above_sha256=trace.above_sha256,
        sidecar_sha256=trace.sidecar_sha256,
    )


def _rule_advice(trace: Trace, asked: Asked) -> tuple[str, ...]:
    """Say that the rule was set when the readings were there: whoever knows the values could choose it by them."""
    later = trace.sidecar.decision if trace.sidecar is not None else None
    if later is None or trace.state == "foreign" or asked.rule is not None:
        return ()
    return (f"the decision rule ({later.rule}) was set after the recording had begun; it should be agreed beforehand",)


def _header(header: Header, asked: Asked) -> Header:
    """Lay what was asked over what the file says."""
    stated: dict[str, Any] = {n: value for n in ("lever", "limit") if (value := getattr(asked, n)) is not None}
    kind = {name: value for name in ("held", "gear") if (value := getattr(asked, name)) is not None}
    if kind:
        stated["test"] = msgspec.structs.replace(header.test, **kind)
    if asked.zero is not None and asked.zero != "start":
        stated["zero"] = asked.zero
    return msgspec.structs.replace(header, **stated) if stated else header
