"""From a recording file to its reading: the only module of the analysis that knows what a recording is.

Steps: trace and header -> pulls at the sensor -> corrections of the sidecar -> torque at the axle -> job values ->
result against the limit. Everything that was assumed, missing or put right is among the problems.

Offered: ``Asked``, ``hashes_of``, ``read_file``, ``read_files``, ``reading_of``.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

import msgspec
import numpy as np

from analysis.identify.axle_type import type_conflict
from analysis.identify.slips import direction_conflict
from analysis.to_axle.at_axle import Level, instrument_from, level_from, sensor_from
from analysis.to_axle.fixtures import fixture_from
from analysis.to_axle.force import force_lever
from analysis.to_axle.true_zero import zero_at_start
from analysis.trace.reading import read_torque
from analysis.trace.turns import Turns
from analysis.verdict.adequacy import certificate_advice, range_advice, resolution_advice, sign_advice, zero_advice
from analysis.verdict.corrected import Corrected, Source, apply_corrections
from analysis.verdict.dialled import judge_dialled
from analysis.verdict.judge import AtAxle, Judgement, judge_pulls
from analysis.verdict.limits import Bounds, Guard, Rule, bounds_from, decided_by
from analysis.verdict.overloads import overloaded
from analysis.verdict.recorded import Baseline, PullReading, RecordingReading
from analysis.verdict.sides import drag_test, unfit
from logger.edges.small_file import beside, hash_of
from logger.errors import HeldwheelError, InputError
from logger.header import Zero
from logger.recordings.dialled import is_dialled, read_dialled
from logger.recordings.files import read_trace
from logger.recordings.sidecar import merged, read_sidecar, sidecar_path

if TYPE_CHECKING:
    from analysis.to_axle.force import ForceLever
    from analysis.trace.results import TraceReading
    from analysis.verdict.repeats import JobValue
    from logger.header import Header, Lever, Limit, Table, TransducerFacts
    from logger.recordings.files import Trace
    from logger.samples import Floats


@dataclass(frozen=True, slots=True)
class Asked:
    """What the caller states; it wins over what the file and its sidecar say.

    Attributes
    ----------
    lever, limit, zero
        Instead of the recording's; zero "start" means that the recording begins with
        nothing on the transducer (lever off or hanging), so that its first still level is the true zero.
    held, gear
        Which part was held in this test, and whether a gear was engaged.
    rule, guard
        How uncertainty decides, instead of the recording's own rule.
    repeatability : float or None
        Relative pull-to-pull scatter, used under three pulls.
    drop_outliers : bool
        Whether outliers are excluded from the job's value.
    table : Table or None
        What a foreign table does not say of itself.
    both_free : Path or None
        Recording of the drag baseline, instead of the one that the recording names.
    """

    lever: Lever | None = None
    limit: Limit | None = None
    zero: Zero | Literal["start"] | None = None
    held: Literal["other side", "case", "none"] | None = None
    gear: Literal["neutral", "in gear"] | None = None
    rule: Rule | None = None
    guard: Guard | None = None
    repeatability: float | None = None
    drop_outliers: bool = False
    table: Table | None = None
    both_free: Path | None = None


def read_files(
    paths: Sequence[Path | str], asked: Asked | None = None, *, before: Callable[[int, Path | str], None] | None = None
) -> Iterator[RecordingReading]:
    """Read several recordings; one that cannot be read gives a reading that says why, and the others go on.

    Parameters
    ----------
    paths : sequence of Path or str
        The files.
    asked : Asked, optional
        For all of them.
    before : callable, optional
        Called with number and path before each file: for progress.
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

    Parameters
    ----------
    path : Path or str
        Our recording, closed or not, or a foreign CSV trace.
    asked : Asked, optional
        What the caller states.

    Raises
    ------
    HeldwheelError
        The file, its sidecar, its lever or its limit cannot be used; the text names what and the fix.
    """
    asked = asked or Asked()
    reading = _read(path, asked)
    baseline, why_not = _baseline(reading, asked)
    if why_not:
        return replace(reading, problems=(*reading.problems, f"drag correction withheld: {why_not}"))
    return reading if baseline is None else _with_drag(reading, baseline)


def hashes_of(path: Path | str, asked: Asked | None = None) -> tuple[str, str]:
    """Give the SHA-256 hashes by which reports name a recording: of its bytes, and (the first ones) above its closing.

    Raises
    ------
    HeldwheelError
        It cannot be read.
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


def _with_drag(reading: RecordingReading, baseline: RecordingReading) -> RecordingReading:
    """Take the drag of both wheels free off what the pulls say. The limit goes on naming the torque as it was read."""
    header = reading.header
    if header is None or not reading.job:
        return reading
    if baseline.header is not None and baseline.header.test.held in ("other side", "case"):
        text = f"drag correction withheld: in {Path(baseline.file).name} the {baseline.header.test.held} was held"
        return replace(reading, problems=(*reading.problems, text))
    flaw = unfit(baseline)
    if flaw:
        return replace(reading, problems=(*reading.problems, f"drag correction withheld: {flaw}"))
    if not baseline.job:
        text = f"drag correction withheld: {Path(baseline.file).name} gives no torque at the axle"
        return replace(reading, problems=(*reading.problems, text))
    test = drag_test({header.test.side or "right": reading}, baseline)
    # A page that rests on simulated data is marked, whichever of its recordings they are in.
    header = msgspec.structs.replace(header, simulated=header.simulated or baseline.simulated)
    told = tuple(text for text in baseline.problems if text not in reading.problems)
    drag = Baseline(baseline.file, baseline.sha256, test, baseline.sidecar_sha256, told, baseline.state)
    carried = (f"baseline {Path(baseline.file).name}: {text}" for text in told)
    return replace(reading, header=header, drag=drag, problems=(*reading.problems, *carried))


def reading_of(trace: Trace, asked: Asked) -> RecordingReading:
    """Read a trace that has been loaded; see ``read_file``."""
    header = _header(trace.header, asked)
    force = force_lever(header, trace.unit, trace.file) if trace.is_force else None
    raw_nm = trace.torque_nm if force is None else trace.si * force.arm_m
    if force is not None:
        header = msgspec.structs.replace(header, transducer=force.facts(header.transducer))
    sensor = sensor_from(header.transducer)
    reading = overloaded(read_torque(trace.time_s, raw_nm, angle_deg=trace.angle_deg, sensor=sensor), trace.events)
    header = _with_zero(header, asked, trace.time_s, raw_nm, reading)
    torque_nm = raw_nm / (sensor.gain or 1.0)
    corrections = trace.sidecar.corrections if trace.sidecar is not None else ()
    source = Source(trace.time_s, torque_nm, reading.noise_nm, sensor.relative_u)
    pulls, unapplied = apply_corrections(reading.pulls, corrections, source)
    pulls = tuple(_with_full_scale(c, header.transducer) for c in pulls)
    turns = Turns()
    turns.feed(trace.time_s, trace.angle_deg)
    pulls = tuple(replace(c, pull=turns.of(c.pull)) for c in pulls)
    at, assumed = _at_axle(header, force)
    bounds = bounds_from(header.limit, file=trace.file) if header.limit is not None else None
    said = _judged(pulls, header, at, bounds, asked)
    each = zip(pulls, said.budgets, said.results, strict=True)
    done = tuple(f"pull at {c.pull.start_s:.2f} s: {text}" for c in pulls for text in c.applied)
    advice = (*_rule_advice(trace, asked), *_advice(header, reading, at, said.job, bounds))
    return RecordingReading(
        file=trace.file,
        ok=True,
        problems=_once((*trace.problems, *reading.problems, *unapplied, *done, *assumed, *said.notes, *advice)),
        header=header,
        time_s=trace.time_s,
        torque_nm=torque_nm,
        trace=reading,
        at=at,
        pulls=tuple(PullReading(c.pull, budgets, c.left_out, c.applied, result) for c, budgets, result in each),
        job=said.job,
        bounds=bounds,
        result=said.result,
        corrections=tuple(corrections),
        unit=trace.unit if force is None else "N·m",
        state=trace.state,
        sha256=trace.sha256,
        above_sha256=trace.above_sha256,
        sidecar_sha256=trace.sidecar_sha256,
    )


def _judged(
    pulls: Sequence[Corrected], header: Header, at: AtAxle | None, bounds: Bounds | None, asked: Asked
) -> Judgement:
    rule, guard = decided_by(header.decision, asked.rule, asked.guard)
    return judge_pulls(
        [(c.pull, not c.left_out) for c in pulls],
        header,
        at,
        bounds,
        rule=rule,
        guard=guard,
        repeatability=asked.repeatability,
        drop_outliers=asked.drop_outliers,
    )


def _with_zero(header: Header, asked: Asked, time_s: Floats, torque_nm: Floats, reading: TraceReading) -> Header:
    """Take the true zero from the trace's start, where that was asked."""
    if asked.zero != "start":
        return header
    facts = header.transducer
    noise_nm = reading.noise_nm * (facts.gain or 1.0)
    level_nm, u_nm = zero_at_start(time_s, torque_nm, noise_nm, facts.resolution_nm or 0.0)
    return msgspec.structs.replace(header, zero=Zero(value_nm=level_nm, value_nm_u=u_nm, how="unloaded"))


def _rule_advice(trace: Trace, asked: Asked) -> tuple[str, ...]:
    """Say that the rule was set when the readings were there: whoever knows the values could choose it by them."""
    later = trace.sidecar.decision if trace.sidecar is not None else None
    if later is None or trace.state == "foreign" or asked.rule is not None:
        return ()
    return (f"the decision rule ({later.rule}) was set after the recording had begun; it should be agreed beforehand",)


def _advice(
    header: Header, reading: TraceReading, at: AtAxle | None, job: tuple[JobValue, ...], bounds: Bounds | None
) -> tuple[str, ...]:
    """Say what about the instrument does not suit the test."""
    facts = header.transducer
    highest = max((p.breakaway.at_sensor_nm for p in reading.pulls if p.breakaway is not None), default=None)
    conflict = type_conflict(header.axle, header.conditions, header.limit)
    return (
        *((conflict.text,) if conflict is not None else ()),
        *direction_conflict(header.test, [p.direction for p in reading.pulls if p.breakaway or p.rotating]),
        *range_advice(facts.capacity_nm, bounds, highest),
        *resolution_advice(facts.resolution_nm, job),
        *certificate_advice(facts, header.started.date() if header.started is not None else None),
        *sign_advice(facts),
        *(zero_advice(at.level, job) if at is not None else ()),
    )


def _once(lines: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(lines))


def _header(header: Header, asked: Asked) -> Header:
    """Lay what was asked over what the file says."""
    stated: dict[str, Any] = {n: value for n in ("lever", "limit") if (value := getattr(asked, n)) is not None}
    kind = {name: value for name in ("held", "gear") if (value := getattr(asked, name)) is not None}
    if kind:
        stated["test"] = msgspec.structs.replace(header.test, **kind)
    if asked.zero is not None and asked.zero != "start":
        stated["zero"] = asked.zero
    return msgspec.structs.replace(header, **stated) if stated else header


def _with_full_scale(corrected: Corrected, facts: TransducerFacts) -> Corrected:
    """Widen the intervals at the sensor by an accuracy that is stated for full scale."""
    u = instrument_from(facts).full_scale_u_nm
    if not u:
        return corrected
    pull = corrected.pull
    for name in ("breakaway", "rotating"):
        part = getattr(pull, name)
        if part is not None:
            wider = replace(part, u95_sensor_nm=float(np.hypot(part.u95_sensor_nm, 1.96 * u)))
            pull = replace(pull, **{name: wider})
    return replace(corrected, pull=pull)


def _at_axle(header: Header, force: ForceLever | None = None) -> tuple[AtAxle | None, tuple[str, ...]]:
    """Give what brings a pull to the axle, and what had to be assumed; None where the lever is not known."""
    if header.lever is None:
        return None, (
            "the lever is not known: torque at the axle is not stated; give --lever, or [lever] in a sidecar",
        )
    fixture = fixture_from(header.lever) if force is None else force.fixture
    notes = list(fixture.notes)
    if fixture.reads != "torque" and force is None:
        return None, (*notes, f"a '{fixture.kind}' fixture takes a {fixture.reads}, but the trace holds a torque")
    instrument = instrument_from(header.transducer)
    if instrument.assumed:
        notes.append(f"the transducer's {instrument.note}")
    level = _level(header)
    if not level.known:
        assumed = fixture.weight is None or fixture.weight.assumed
        notes.append(
            "no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the "
            + ("lever's weight, not stated, is assumed" if assumed else "lever's weight is")
            + " in the interval"
        )
    return AtAxle(fixture, instrument, level), tuple(notes)


def _level(header: Header) -> Level:
    facts = header.transducer
    return level_from(header.zero, gain=facts.gain or 1.0, resolution_nm=facts.resolution_nm or 0.0)
