"""What one recording says: the values that ``analysis.pipeline`` gives, and their JSON.

Conventions: see ``analysis.trace.results``; torques at the axle are ``Budget`` values by quantity. The JSON is the
contract ``heldwheel pulls 1``: other tools and benchmarks read it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field
from typing import TYPE_CHECKING, Any

from analysis.to_axle.axle_scale import AxleScale
from analysis.trace.results import DIRECTIONS

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from analysis.to_axle.drag import DragTest
    from analysis.trace.results import Pull, TraceReading
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.judge import AtAxle
    from analysis.verdict.limits import Bounds, Result
    from analysis.verdict.orders import Pattern
    from analysis.verdict.repeats import JobValue
    from logger.header import Correction, Header
    from logger.recordings.axles import Build
    from logger.recordings.dialled import DialReading

SCHEMA = "heldwheel pulls 1"
# Digits after the point in JSON: a millionth of a newton metre is far below any transducer's resolution.
DIGITS = 6


@dataclass(frozen=True, slots=True)
class PullReading:
    """One pull with what was made of it."""

    pull: Pull  # as read, corrections of its boundaries applied
    # torque at the axle by quantity; empty where the fixture is unknown
    axle: Mapping[str, Budget] = field(default_factory=dict)
    left_out: str = ""  # reason why a sidecar leaves it out of the job's value; empty where it counts
    corrected: tuple[str, ...] = ()  # corrections that were applied to it
    result: Result | None = None  # of this pull as one of many
    stiffness: Budget | None = None  # at the axle, N·m per degree, where an angle came along and the fixture is known
    patterns: tuple[Pattern, ...] = ()  # what repeats as the wheel turns, where an angle came along

    @property
    def counts(self) -> bool:
        """Whether it enters the job's value."""
        return self.pull.valid and not self.left_out


@dataclass(frozen=True, slots=True)
class Baseline:
    """A both-free recording that was taken along, and what the packs say with its drag taken off."""

    # file, sha256, sidecar_sha256: the baseline's recording, the hashes of its bytes and of its sidecar's (empty where
    # there is none)
    file: str
    sha256: str
    test: DragTest  # raw torque, baseline, and pack means or why they are withheld
    sidecar_sha256: str = ""
    problems: tuple[str, ...] = ()  # what is not in order with it
    state: str = "closed"  # ``closed`` or ``foreign``: one that is not as it was closed corrects nothing


@dataclass(frozen=True, slots=True)
class RecordingReading:
    """One recording, read."""

    file: str  # as the user named it
    ok: bool  # whether it could be read; if not, ``problems`` says why and nothing else is filled
    problems: tuple[str, ...] = ()  # what is not in order, or was assumed
    header: Header | None = None  # with the sidecar's and the command's values over it
    # time_s, torque_nm: shape (n,); the trace, clockwise positive, gain divided out, zero not taken away
    time_s: NDArray[np.float64] | None = None
    torque_nm: NDArray[np.float64] | None = None
    trace: TraceReading | None = None  # what the trace says by itself
    at: AtAxle | None = None  # fixture, transducer, true zero
    pulls: tuple[PullReading, ...] = ()  # all of them, in order
    job: tuple[JobValue, ...] = ()  # value of each quantity and direction
    # bounds, result: limit, and the job against it
    bounds: Bounds | None = None
    result: Result | None = None
    corrections: tuple[Correction, ...] = ()  # from the sidecar
    unit: str = "N·m"  # of the torque column
    state: str = ""  # ``closed``, ``recovered`` or ``foreign``
    # sha256, above_sha256, sidecar_sha256: see ``logger.recordings.files.Trace``
    sha256: str = ""
    above_sha256: str = ""
    sidecar_sha256: str = ""
    drag: Baseline | None = None  # with the drag of both wheels free taken off, where that was recorded
    dial: tuple[DialReading, ...] = ()  # what a dial showed, where the job has no trace; one per pull
    build: Build | None = None  # what was in the axle when it was recorded, where its sheet lies beside the recording
    build_before: Build | None = None  # the build before that one
    # build_file, build_sha256: the sheet, and the hash of its bytes
    build_file: str = ""
    build_sha256: str = ""

    @property
    def scale(self) -> AxleScale:
        """How its trace stands at the axle: from the true zero, or from the level that the trace itself rests at."""
        zero = self.trace.zero_nm if self.trace is not None else 0.0
        if self.at is None:
            return AxleScale(zero)
        return AxleScale(self.at.level.zero_nm if self.at.level.known else zero, self.at.fixture.factor, at_axle=True)

    @property
    def main(self) -> JobValue | None:
        """The value that the result was decided by; without one the first that the limit names, or the first of all."""
        if self.result is not None and self.result.decided is not None:
            return self.result.decided
        wanted = self.bounds.written.quantity if self.bounds is not None else ""
        return next((v for v in self.job if v.budget.quantity == wanted), self.job[0] if self.job else None)

    @property
    def half(self) -> bool:
        """Whether it is one half of what its limit compares: there is no result for it alone."""
        return self.bounds is not None and self.bounds.written.is_ratio

    @property
    def simulated(self) -> bool:
        """Whether it is marked simulated."""
        return self.header is not None and self.header.simulated

    def to_json(self, *, budgets: bool = False) -> dict[str, Any]:
        """Give one entry of ``recordings`` of the contract; ``budgets`` adds every row of every budget."""
        trace = self.trace
        return {
            "file": self.file,
            "ok": self.ok,
            "problems": list(self.problems),
            "simulated": self.simulated,
            "state": self.state,
            "sha256": self.sha256,
            "rate_hz": None if trace is None else _number(trace.rate_hz),
            "zero_nm": None if trace is None else _number(trace.zero_nm),
            "noise_nm": None if trace is None else _number(trace.noise_nm),
            "zero_from": None if self.at is None else self.at.level.words,
            "fixture": None
            if self.at is None
            else {"kind": self.at.fixture.kind, "factor": _number(self.at.fixture.factor)},
            "pulls": [_pull_json(p, budgets=budgets) for p in self.pulls],
            "job": [_job_json(v, budgets=budgets) for v in self.job],
            "result": None if self.result is None else self.result.to_json(),
            "drag": None if self.drag is None else _drag_json(self.drag),
        }


def _drag_json(drag: Baseline) -> dict[str, Any]:
    return {"file": drag.file, "sha256": drag.sha256, "problems": list(drag.problems)} | drag.test.to_json()


def to_json(readings: Iterable[RecordingReading], *, budgets: bool = False) -> dict[str, Any]:
    """Give the contract ``heldwheel pulls 1`` for several recordings."""
    return {"schema": SCHEMA, "recordings": [r.to_json(budgets=budgets) for r in readings]}


def _number(value: float) -> float | None:
    return round(value, DIGITS) if math.isfinite(value) else None


def _rounded(values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: _number(value) if isinstance(value, float) else value for name, value in values.items()}


def _axle(reading: PullReading, quantity: str) -> tuple[float | None, float | None]:
    budget = reading.axle.get(quantity)
    return (None, None) if budget is None else (_number(budget.value), _number(budget.u95))


def _pull_json(reading: PullReading, *, budgets: bool) -> dict[str, Any]:
    pull = reading.pull
    found: dict[str, Any] = {
        "start_s": _number(pull.start_s),
        "end_s": _number(pull.end_s),
        "direction": DIRECTIONS[pull.direction],
        "handoff_nm": _number(pull.handoff_nm),
        "breakaway": _breakaway_json(reading),
        "rotating": _rotating_json(reading),
        "stick_slip": None,
        "turning": _turning_json(reading),
        "held_wheel": _held_json(pull),
        "orders": [_rounded(pattern.to_json()) for pattern in reading.patterns],
        "elastic": _elastic_json(reading),
        "valid": pull.valid,
        "reasons": [{"code": str(r.code), "text": r.text} for r in pull.reasons],
        "notes": list(pull.notes),
        "spikes_left_out": pull.left_out,
        "left_out": reading.left_out or None,
        "corrected": list(reading.corrected),
        "result": None if reading.result is None else reading.result.to_json(),
    }
    if pull.stick_slip is not None:
        found["stick_slip"] = _rounded(asdict(pull.stick_slip))
    if budgets:
        found["budgets"] = [budget_json(b) for b in reading.axle.values()]
    return found


def _held_json(pull: Pull) -> dict[str, Any] | None:
    """Give how far the held wheel went, degrees, where its angle came along."""
    turned = pull.turned
    if turned is None or turned.held_rad is None:
        return None
    steady = turned.held_rotating_rad
    return {
        "under_load_deg": _number(math.degrees(turned.held_rad)),
        "while_turning_deg": None if steady is None else _number(math.degrees(steady)),
    }


def _turning_json(reading: PullReading) -> dict[str, Any] | None:
    """Give how it turned; the amplitudes per turn, promised here, are those of ``orders``."""
    if reading.pull.turning is None:
        return None
    waves = {pattern.per_turn: pattern.wave for pattern in reading.patterns if pattern.wave is not None}
    once, half = waves.get(1.0), waves.get(0.5)
    return _rounded(asdict(reading.pull.turning)) | {
        "once_per_turn_nm": None if once is None else _number(once.amplitude_nm),
        "half_per_turn_nm": None if half is None else _number(half.amplitude_nm),
    }


def _elastic_json(reading: PullReading) -> dict[str, Any] | None:
    found, at_axle = reading.pull.elastic, reading.stiffness
    if found is None:
        return None
    return _rounded(asdict(found)) | {
        "stiffness_at_axle_nm_deg": None if at_axle is None else _number(at_axle.value),
        "stiffness_u95_axle_nm_deg": None if at_axle is None else _number(at_axle.u95),
    }


def _breakaway_json(reading: PullReading) -> dict[str, Any] | None:
    found = reading.pull.breakaway
    if found is None:
        return None
    value, u95 = _axle(reading, "breakaway")
    return {
        "time_s": _number(found.time_s),
        "at_sensor_nm": _number(found.at_sensor_nm),
        "at_axle_nm": value,
        "u95_sensor_nm": _number(found.u95_sensor_nm),
        "u95_axle_nm": u95,
        "distinct_peak": found.distinct_peak,
    }


def _rotating_json(reading: PullReading) -> dict[str, Any] | None:
    found = reading.pull.rotating
    if found is None:
        return None
    value, u95 = _axle(reading, "rotating mean")
    greatest, greatest_u95 = _axle(reading, "rotating maximum")
    return {
        "start_s": _number(found.start_s),
        "end_s": _number(found.end_s),
        "at_sensor_nm": _number(found.at_sensor_nm),
        "at_axle_nm": value,
        "u95_sensor_nm": _number(found.u95_sensor_nm),
        "u95_axle_nm": u95,
        "steady_s": _number(found.steady_s),
        "max_nm": _number(found.max_nm),
        "max_at_axle_nm": greatest,
        "u95_max_axle_nm": greatest_u95,
    }


def _job_json(value: JobValue, *, budgets: bool) -> dict[str, Any]:
    found: dict[str, Any] = {
        "quantity": value.budget.quantity,
        "direction": DIRECTIONS[value.direction],
        "at_axle_nm": _number(value.budget.value),
        "u95_axle_nm": _number(value.budget.u95),
        "pulls": len(value.values),
        "lowest_nm": _number(min(value.values)),
        "highest_nm": _number(max(value.values)),
        "cv": _number(value.cv),
        "left_out": [_number(v) for v in value.left_out],
        "notes": list(value.notes),
    }
    if budgets:
        found["budget"] = budget_json(value.budget)
    return found


def budget_json(budget: Budget) -> dict[str, Any]:
    """Give a budget with its rows as JSON-ready values."""
    return {
        "quantity": budget.quantity,
        "value": budget.value,
        "unit": budget.unit,
        "u": budget.u,
        "dof": budget.dof if math.isfinite(budget.dof) else None,
        "u95": budget.u95,
        "rows": [
            {
                "name": row.input.name,
                "value": row.input.value,
                "unit": row.input.unit,
                "u": row.input.u,
                "dof": row.input.dof if math.isfinite(row.input.dof) else None,
                "shape": str(row.input.shape),
                "sensitivity": row.sensitivity,
                "contribution": row.contribution,
                "shared": row.input.shared,
                "from": row.input.note,
            }
            for row in budget.rows
        ],
    }
