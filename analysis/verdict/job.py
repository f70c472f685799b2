"""One job, from a stream to a verdict: a file feeds it once, the window all the time.

Built from a header, fed with what the transducer delivers, corrected, judged. What is stated otherwise later (another
lever or limit, a second zero, a pull that is left out) judges it again.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

import msgspec

from analysis.identify.axle_type import type_conflict
from analysis.identify.slips import direction_conflict
from analysis.to_axle.at_axle import instrument_from, sensor_from
from analysis.to_axle.true_zero import zero_at_start
from analysis.trace.held import held_of
from analysis.trace.live import LiveReader
from analysis.trace.turns import Turns
from analysis.verdict.adequacy import certificate_advice, range_advice, resolution_advice, sign_advice, zero_advice
from analysis.verdict.corrected import CalibratedTrace, Corrected, apply_corrections, widened
from analysis.verdict.elastic import stiffness_of
from analysis.verdict.judge import judge_pulls
from analysis.verdict.orders import patterns_of
from analysis.verdict.overloads import overloaded
from analysis.verdict.recorded import PullReading, RecordingReading
from analysis.verdict.setup import JUDGED_BY, setup_of
from logger.header import Zero
from logger.samples import EventKind

if TYPE_CHECKING:
    from analysis.trace.results import Pull, TraceReading
    from analysis.verdict.limits import Guard, Rule
    from analysis.verdict.repeats import JobValue
    from analysis.verdict.setup import Setup
    from logger.header import Correction, Header
    from logger.samples import Event, Floats


class Job:
    """One recording on its way to a verdict.

    Args:
        header: What is written down, with everything that was stated later laid over it.
        unit: Of what the transducer delivers.
        file: Named in messages.
        rule, guard: Instead of the header's own.
        repeatability, drop_outliers: See ``analysis.verdict.repeats.job_value``.
        remarks: What else the reader must know of how it came about.

    Raises:
        HeldwheelError: Lever, limit or transducer cannot be used.

    ``feed`` and ``finish`` may run in another thread than ``restate`` and ``judge``.
    """

    def __init__(
        self,
        header: Header,
        unit: str = "N·m",
        *,
        file: str = "",
        rule: Rule | None = None,
        guard: Guard | None = None,
        repeatability: float | None = None,
        drop_outliers: bool = False,
        remarks: tuple[str, ...] = (),
    ) -> None:
        self.header, self.unit, self.file = header, unit, file
        self._rule, self._guard, self.remarks = rule, guard, remarks
        self.repeatability, self.drop_outliers = repeatability, drop_outliers
        self.setup = self._set_up(header)
        self.calibration = self.setup.calibration
        facts = self.setup.header.transducer
        self._full_scale_u_nm = instrument_from(facts).full_scale_u_nm
        self._sensor = sensor_from(facts)
        self._reader, self._turns = LiveReader(self._sensor), Turns()
        self.trace: TraceReading = self._reader.reading()  # as of the last pull
        self._beyond: list[Event] = []
        self._unapplied: tuple[str, ...] = ()
        self._kept: tuple[str, ...] = ()

    def _set_up(self, header: Header) -> Setup:
        return setup_of(header, self.unit, file=self.file, rule=self._rule, guard=self._guard)

    # ------------------------------------------------------------------ read
    def feed(
        self,
        time_s: Floats,
        delivered: Floats,
        angle_deg: Floats | None = None,
        events: Iterable[Event] = (),
        held_deg: Floats | None = None,
    ) -> tuple[Pull, ...]:
        """Take the next samples as they were delivered, and events with their times; give the pulls they complete.

        ``angle_deg`` is that of the turned wheel, ``held_deg`` that of the held one.
        """
        self._beyond += [event for event in events if event.kind is EventKind.OVERLOAD]
        self._turns.feed(time_s, angle_deg, held_deg)
        found = self._whole(self._reader.feed(time_s, self.calibration.as_read(delivered), angle_deg))
        if found:
            self._sum_up()
        return found

    def finish(self) -> tuple[Pull, ...]:
        """End the stream; give the pulls that its end completes."""
        found = self._whole(self._reader.finish())
        self._sum_up()
        return found

    def _sum_up(self) -> None:
        reading = self._reader.reading()
        self.trace = replace(reading, pulls=self._whole(reading.pulls))

    def _whole(self, pulls: Iterable[Pull]) -> tuple[Pull, ...]:
        """Add what lies beside the torque: the angle turned, readings beyond the range, a full-scale accuracy."""
        marked = (held_of(self._turns.of(overloaded(pull, self._beyond))) for pull in pulls)
        return tuple(widened(pull, self._full_scale_u_nm) for pull in marked)

    # ------------------------------------------------------------------ stated later
    def restate(self, header: Header) -> None:
        """Take over what a result depends on from another header: ``JUDGED_BY``.

        Raises:
            HeldwheelError: It cannot be used; the job stays as it was.
        """
        parts = {name: getattr(header, name) for name in JUDGED_BY}
        self._kept = ()
        if self.calibration.arm_m is not None and parts["lever"] != self.header.lever:
            parts["lever"] = self.header.lever  # what a force was multiplied with stays in its pulls
            self._kept = ("the lever of a force was changed after the recording had begun: its pulls keep the first",)
        self._put(msgspec.structs.replace(self.header, **parts))

    def take_zero(self, zero: Zero) -> None:
        """Take another true zero, or the second one."""
        self._put(msgspec.structs.replace(self.header, zero=zero))

    def zero_from_start(self, time_s: Floats, delivered: Floats) -> None:
        """Take the first still level of the samples as the true zero: nothing was on the transducer.

        Raises:
            InputError: There is no still level.
        """
        facts, read_nm = self.setup.header.transducer, self.calibration.as_read(delivered)
        noise_nm = self.trace.noise_nm * self.calibration.gain
        level_nm, u_nm = zero_at_start(time_s, read_nm, noise_nm, facts.resolution_nm or 0.0)
        self.take_zero(Zero(value_nm=level_nm, value_nm_u=u_nm, how="unloaded"))

    def _put(self, header: Header) -> None:
        if header != self.header:
            self.setup, self.header = self._set_up(header), header

    def corrected(self, corrections: Sequence[Correction], time_s: Floats, delivered: Floats) -> tuple[Corrected, ...]:
        """Give the pulls of the whole trace with decisions about them applied; see ``apply_corrections``."""
        trace, true_nm = self.trace, self.calibration.true(delivered)
        source = CalibratedTrace(time_s, true_nm, trace.noise_nm, self._sensor.relative_u, self._full_scale_u_nm)
        pulls, self._unapplied = apply_corrections(trace.pulls, corrections, source)
        return tuple(replace(c, pull=self._turns.of(c.pull)) if c.applied else c for c in pulls)

    # ------------------------------------------------------------------ judged
    def judge(self, pulls: Sequence[Corrected]) -> RecordingReading:
        """Give what pulls say, each and together; see ``judge``."""
        return judge([(self, pulls)])

    def notes(self, pulls: Sequence[Corrected]) -> tuple[str, ...]:
        """Say what about the trace is not in order, was put right or had to be assumed."""
        done = (f"pull at {c.pull.start_s:.2f} s: {text}" for c in pulls for text in c.applied)
        return (*self.trace.problems, *self._unapplied, *done, *self.setup.notes, *self._kept)


def judge(parts: Sequence[tuple[Job, Sequence[Corrected]]]) -> RecordingReading:
    """Judge the pulls of one test, whichever of its recordings they are in.

    Args:
        parts: (Job, pulls); At least one. Each pull is brought to the axle by its own recording's zero; the last
            recording names limit and rule.
    """
    job = parts[-1][0]
    setup = job.setup
    pulls = [c for _, own in parts for c in own]
    said = judge_pulls(
        [(c.pull, not c.left_out) for c in pulls],
        setup.header,
        [part.setup.at for part, own in parts for _ in own] if len(parts) > 1 else setup.at,
        setup.bounds,
        rule=setup.rule,
        guard=setup.guard,
        repeatability=job.repeatability,
        drop_outliers=job.drop_outliers,
    )
    each = zip(pulls, said.budgets, said.results, strict=True)
    notes = (text for part, own in parts for text in part.notes(own))
    return RecordingReading(
        job.file,
        ok=True,
        problems=tuple(dict.fromkeys((*notes, *said.notes, *job.remarks, *_advice(setup, pulls, said.job)))),
        header=setup.header,
        trace=job.trace,
        at=setup.at,
        pulls=tuple(
            PullReading(
                c.pull,
                budgets,
                c.left_out,
                c.applied,
                result,
                stiffness_of(c.pull, setup.at),
                patterns_of(c.pull, setup.header, setup.at),
            )
            for c, budgets, result in each
        ),
        job=said.job,
        bounds=setup.bounds,
        result=said.result,
        unit="N·m" if job.calibration.arm_m is not None else job.unit,
    )


def _advice(setup: Setup, pulls: Sequence[Corrected], job: Sequence[JobValue]) -> tuple[str, ...]:
    """Say what about the instrument does not suit the test."""
    header, found = setup.header, [c.pull for c in pulls]
    facts = header.transducer
    highest = max((p.breakaway.at_sensor_nm for p in found if p.breakaway is not None), default=None)
    conflict = type_conflict(header.axle, header.conditions, header.limit)
    return (
        *((conflict.text,) if conflict is not None else ()),
        *direction_conflict(header.test, [p.direction for p in found if p.breakaway or p.rotating]),
        *range_advice(facts.capacity_nm, setup.bounds, highest),
        *resolution_advice(facts.resolution_nm, job),
        *certificate_advice(facts, header.started.date() if header.started is not None else None),
        *sign_advice(facts),
        *(zero_advice(setup.at.level, job) if setup.at is not None else ()),
    )
