"""Whether the instrument suits the test: range, resolution, certificate. Advice, never a verdict."""

from __future__ import annotations

import math
from datetime import date
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.to_axle.at_axle import Level
    from analysis.verdict.limits import Bounds
    from analysis.verdict.repeats import JobValue
    from logger.header import TransducerFacts

# A limit or reading belongs between a fifth and four fifths of a transducer's range: below, errors stated for full
# scale and resolution weigh; above, the peak of a jerk overloads it (common practice, no source).
BEST_SHARE = (0.20, 0.80)
# The step of the reading should not make up more than this of the interval.
STEP_SHARE = 0.30
# A zero that moves by more than this part of the torque is said (common practice, no source).
ZERO_MOVED = 0.01


def range_advice(capacity_nm: float | None, bounds: Bounds | None, highest_nm: float | None) -> tuple[str, ...]:
    """Compare a transducer's capacity with the limit, or with the highest reading where there is no limit."""
    if not capacity_nm:
        return ()
    limits = [v for v in (bounds.torques if bounds is not None else ()) if v is not None]
    values = limits or ([highest_nm] if highest_nm else [])
    what = "the limit" if limits else "the highest reading"
    said = []
    if values and max(values) < BEST_SHARE[0] * capacity_nm:
        said.append(
            f"{what} is {max(values) / capacity_nm * 100:.0f} % of the transducer's capacity (below 20 %): a smaller "
            "transducer would give a narrower interval"
        )
    if values and max(values) > BEST_SHARE[1] * capacity_nm:
        said.append(
            f"{what} is {max(values) / capacity_nm * 100:.0f} % of the transducer's capacity (above 80 %): a jerk may "
            "overload it; use a larger one"
        )
    return tuple(said)


def resolution_advice(resolution_nm: float | None, job: Sequence[JobValue]) -> tuple[str, ...]:
    """Say where the step of the reading is a large part of the interval."""
    if not resolution_nm:
        return ()
    coarse = [v for v in job if v.budget.u > 0 and resolution_nm / math.sqrt(12) > STEP_SHARE * v.budget.u]
    if not coarse:
        return ()
    return (
        f"the reading's step of {resolution_nm:g} N·m is a large part of the interval: a finer one would narrow it",
    )


def zero_advice(level: Level, job: Sequence[JobValue]) -> tuple[str, ...]:
    """Say where the true zero was not taken again, or moved by a part of the torque that matters."""
    if not level.known or not job:
        return ()
    if level.moved_nm is None:
        return ("the true zero was not taken again after the pulls: what it may have moved by is not in the interval",)
    least = min(abs(v.budget.value) for v in job)
    if abs(level.moved_nm) <= ZERO_MOVED * least:
        return ()
    return (
        f"the true zero moved by {level.moved_nm:+.2g} N·m from before to after the pulls: let the transducer warm up, "
        "and repeat",
    )


def certificate_advice(facts: TransducerFacts, tested: date | None) -> tuple[str, ...]:
    """Say where a certificate was out of date on the day of the test; whether to judge by it is the user's affair."""
    due = facts.certificate_due
    if due is None or tested is None or tested <= due:
        return ()
    late = (tested - due).days
    days = "one day" if late == 1 else f"{late} days"
    return (f"CERTIFICATE EXPIRED on {due.isoformat()}, {days} before this test: have the transducer calibrated",)


def sign_advice(facts: TransducerFacts) -> tuple[str, ...]:
    """Say that a gauge without sign cannot tell directions apart."""
    if facts.sign != "none":
        return ()
    return ("the transducer gives no sign: every pull counts as clockwise, its true direction is not known",)
