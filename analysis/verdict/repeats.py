"""Several pulls, one value: what is judged, and how many more are needed.

Conventions:
- The job's value is the median of its valid pulls. Its random uncertainty is the standard error of a median, from the
  pulls' own scatter or pooled with what is known of such pulls beforehand (``analysis.verdict.scatter``): one rule from
  one pull to many. The way of reading, calibration, lever, zero and drag are shared by the pulls: they enter once and
  do not shrink with n.
- A single pull is judged as one pull of many: its own uncertainty and the pull-to-pull scatter.
- The two directions are separate: wind-up, gears and drag differ. Each direction has its value; where both were pulled
  the less favourable one is the job's.
- Outliers are named by a rule stated beforehand; they are excluded only where that was asked for, and counted.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass, replace

from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.scatter import (
    LEAST_PULLS,
    OUTLIER_RULE,
    Prior,
    median_factor,
    outliers,
    persistence,
    scatter_of,
    warm_up,
)

# Coefficient of variation above which pulls are not repeats of one thing: more than twice the usual scatter of a
# breakaway (common practice, no source).
CV_GATE = 0.10

RANDOM_ROWS = ("repeats", "reading", "repeatability")  # names of the rows that more pulls make smaller

MOST_PULLS = 200  # beyond, nobody goes on pulling

DIRECTION_POLICY = "each direction has its own value; where both were pulled the less favourable one is judged"


@dataclass(frozen=True, slots=True)
class JobValue:
    """The value of several pulls in one direction."""

    budget: Budget  # its value (the median) and uncertainty
    values: tuple[float, ...]  # of the pulls used, in order, N·m
    prior: Prior  # what is known of the scatter beforehand
    own_u_nm: float  # what each reading leaves open by itself: standard uncertainty, N·m
    left_out: tuple[float, ...] = ()  # outliers excluded, because that was asked for
    notes: tuple[str, ...] = ()  # gate, trend, outliers, what was assumed
    direction: int = 1  # +1, -1

    @property
    def sd(self) -> float:
        """Standard deviation of the pulls; NaN for one."""
        return statistics.stdev(self.values) if len(self.values) > 1 else math.nan

    @property
    def cv(self) -> float:
        """Coefficient of variation of the pulls; NaN for fewer than three."""
        return self.sd / abs(self.budget.value) if len(self.values) >= LEAST_PULLS and self.budget.value else math.nan

    @property
    def repeatable(self) -> bool:
        """Whether the scatter passes the gate, or is unknown."""
        return not self.cv > CV_GATE


def job_value(
    budgets: Sequence[Budget],
    *,
    repeatability: float | None = None,
    drop_outliers: bool = False,
    direction: int = 1,
) -> JobValue:
    """Give the value of several pulls of one quantity and direction.

    Args:
        budgets: One per valid pull, in the order they were made; not empty.
        repeatability: Relative standard deviation that the user states, instead of the one assumed.
        drop_outliers: Whether outliers are excluded from the median.
        direction: Carried along.

    Raises:
        ValueError: No pull.
    """
    if not budgets:
        raise ValueError("no pull to take a value from")
    odd = outliers([b.value for b in budgets], _own(budgets))
    notes = _outlier_notes([b.value for b in budgets], odd, drop_outliers)
    used = [b for i, b in enumerate(budgets) if not (drop_outliers and i in odd)]
    values, prior, own = tuple(b.value for b in used), Prior.of(used[0].quantity, repeatability), _own(used)
    budget = Budget(used[0].quantity, statistics.median(values), used[0].unit, _shared_rows(used))
    left_out = tuple(budgets[i].value for i in odd) if drop_outliers else ()
    job = JobValue(budget, values, prior, own, left_out, (), direction)
    random = _random_inputs(job, len(values), persistence(values))
    if not job.repeatable:
        gate = (
            f"the pulls scatter by {job.cv * 100:.0f} % (gate {CV_GATE * 100:.0f} %): repeat with the same rest before "
            "each pull, a smooth ramp and the lever in the same place"
        )
        notes = (*notes, gate)
    drift = warm_up(values)
    if drift:
        notes = (*notes, drift)
    if len(values) < LEAST_PULLS:
        notes = (*notes, random[-1].note)
    return replace(job, budget=budget.plus(*random), notes=notes)


def _own(budgets: Sequence[Budget]) -> float:
    """Give what each reading leaves open by itself: the root mean square over the pulls."""
    return math.sqrt(statistics.fmean(sum(r.contribution**2 for r in b.rows if not r.input.shared) for b in budgets))


def _outlier_notes(values: Sequence[float], odd: tuple[int, ...], drop: bool) -> tuple[str, ...]:
    if not odd:
        return ()
    shown = ", ".join(f"{values[i]:.4g}" for i in odd)
    what = "excluded by the rule stated beforehand" if drop else "kept: exclude a pull only with a reason"
    return (f"{len(odd)} of {len(values)} pulls stood out ({shown} N·m); {what}; {OUTLIER_RULE}",)


def _random_inputs(job: JobValue, n: int, follow: float = 1.0) -> tuple[Input, ...]:
    """Give the random part of the median of ``n`` pulls that scatter as those of a job do.

    From three pulls on their scatter holds what each trace leaves open, and is taken no smaller than that; under
    three the two stand side by side.
    """
    unit, shown = job.budget.unit, 0.0 if math.isnan(job.sd) else job.sd
    per = median_factor(n) * follow / math.sqrt(n)
    scatter = scatter_of(shown, n, job.budget.value, job.prior)
    if n < LEAST_PULLS:
        pulls = "one pull" if n == 1 else f"{n} pulls"
        note = f"{pulls}: scatter not known from so few, {job.prior.words}"
        reading = Input("reading", 0.0, job.own_u_nm * per, unit, note="what each reading leaves open")
        return reading, Input("repeatability", 0.0, scatter.sd * per, unit, scatter.dof, note=note)
    note = f"median of {n} pulls, {median_factor(n):.3f} s/√n"
    if not scatter.from_pulls:
        note += f"; pooled: {job.prior.words}"
    if follow > 1:
        note += f"; × {follow:.2g}: each pull is like the one before"
    if job.own_u_nm > scatter.sd:
        return (
            Input("repeats", 0.0, job.own_u_nm * per, unit, note=f"{note}; s no less than one reading leaves open"),
        )
    return (Input("repeats", 0.0, scatter.sd * per, unit, scatter.dof, note=note),)


def _shared_rows(used: Sequence[Budget]) -> tuple[BudgetRow, ...]:
    """Give each shared input once, with its mean sensitivity over the pulls."""
    slopes: dict[str, list[float]] = {}
    inputs: dict[str, Input] = {}
    for budget in used:
        for row in budget.rows:
            if row.input.shared:
                slopes.setdefault(row.input.name, []).append(row.sensitivity)
                known = inputs.setdefault(row.input.name, row.input)
                if row.input.u > known.u:
                    inputs[row.input.name] = row.input
    return tuple(BudgetRow(inputs[name], sum(s) / len(used)) for name, s in slopes.items())


def single_pull(budget: Budget, job: JobValue) -> Budget:
    """Give one pull's budget as one pull of many: pull-to-pull scatter included."""
    n = len(job.values)
    scatter = scatter_of(0.0 if math.isnan(job.sd) else job.sd, n, job.budget.value, job.prior)
    note = f"s of {n} pulls" if scatter.from_pulls else f"{n} pull{'s' * (n > 1)}, pooled: {job.prior.words}"
    return budget.plus(Input("pull-to-pull scatter", 0.0, scatter.sd, budget.unit, scatter.dof, note=note))


def further_pulls(job: JobValue, wanted_u95_nm: float) -> int | None:
    """Give how many more pulls bring the interval to ± ``wanted_u95_nm``, if they scatter as those seen so far.

    The interval is computed as ``job_value`` will: what each reading leaves open, pooling and the factor of the median
    included.

    Returns:
        int or None: 0 if it is there already; None if no number can: the shared part alone is larger, or more than 200
            pulls.
    """
    if job.budget.u95 <= wanted_u95_nm:
        return 0
    shared, follow = job.budget.without(*RANDOM_ROWS), persistence(job.values)
    for n in range(max(len(job.values) + 1, LEAST_PULLS), MOST_PULLS + 1):
        if shared.plus(*_random_inputs(job, n, follow)).u95 <= wanted_u95_nm:
            return n - len(job.values)
    return None
