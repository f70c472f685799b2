"""Several pulls, one value: what is judged, how far the pulls scatter, and how many more are needed.

Conventions
-----------
- The job's value is the median of its valid pulls; its random uncertainty u_A = 1.253 s/√n has n - 1 degrees of
  freedom. Calibration, lever, zero and drag are shared by the pulls: they enter once and do not shrink with n.
- Under three pulls the scatter cannot be known: a stated repeatability is used and named.
- A single pull is judged as one pull of many: its own uncertainty and the pull-to-pull scatter.
- The two directions are separate: wind-up, gears and drag differ. Each direction has its value; where both were pulled
  the less favourable one is the job's.
- Outliers are named by a rule stated beforehand; they are excluded only where that was asked for, and counted.

Offered: ``job_value``, ``JobValue``, ``single_pull``, ``further_pulls``, ``outliers``,
``warm_up``.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass, replace

from analysis.budget import Budget, Input, Row, t_factor
from analysis.compare.trend import fit_line

MEDIAN_EFFICIENCY = math.sqrt(math.pi / 2)  # 1.253: standard error of a median over that of a mean, normal scatter
LEAST_PULLS = 3  # fewer give no scatter worth the name

# Pull-to-pull scatter (relative standard deviation) that stands in where there are too few pulls, unless the user
# states one: upper ends of what well-made pulls show, breakaway 2-4 %, rotating 0.8-1.4 % (common practice, no source).
STATED_REPEATABILITY = {"breakaway": 0.04, "rotating mean": 0.015, "rotating maximum": 0.03}

# Coefficient of variation above which pulls are not repeats of one thing: more than twice the usual scatter of a
# breakaway (common practice, no source).
CV_GATE = 0.10

# Modified z-score, 0.6745 (x - median) / MAD, above which a value is an outlier: Iglewicz and Hoaglin 1993 (from
# memory). With fewer than five values the MAD says nothing.
OUTLIER_SCORE = 3.5
OUTLIER_LEAST = 5
OUTLIER_RULE = "an outlier lies more than 3.5 scaled median absolute deviations from the median (five pulls or more)"

# A trend is reported when it is unlikely by chance and large enough to matter.
TREND_P = 0.05
TREND_LEAST = 0.03  # of the value, from first to last pull
TREND_LEAST_PULLS = 4  # a line through three points has one degree of freedom

RANDOM_ROWS = ("repeats", "reading", "repeatability")  # names of the rows that more pulls make smaller

MOST_PULLS = 200  # beyond, nobody goes on pulling

DIRECTION_POLICY = "each direction has its own value; where both were pulled the less favourable one is judged"


def warm_up(values: Sequence[float]) -> str:
    """Say whether values in the order they were made drift: warming up, running in. Empty where nothing is shown.

    >>> warm_up([30.0, 29.0, 28.1, 27.0, 26.1])[:30]
    'the value falls by 14.0 % from'
    """
    n = len(values)
    mean = statistics.fmean(values) if n else 0.0
    if n < TREND_LEAST_PULLS or mean == 0:
        return ""
    line = fit_line(range(n), values)
    total = line.slope * (n - 1) / mean
    if not (line.p < TREND_P and abs(total) > TREND_LEAST):
        return ""
    how = "rises" if total > 0 else "falls"
    return (
        f"the value {how} by {abs(total) * 100:.1f} % from first to last pull (p = {line.p:.2g}): warming up or "
        "running in; go on until it settles, or compare only at the same temperature"
    )


def outliers(values: Sequence[float]) -> tuple[int, ...]:
    """Give the places of outliers by ``OUTLIER_RULE``."""
    if len(values) < OUTLIER_LEAST:
        return ()
    middle = statistics.median(values)
    mad = statistics.median(abs(v - middle) for v in values)
    if mad == 0:
        return ()
    return tuple(i for i, v in enumerate(values) if 0.6745 * abs(v - middle) / mad > OUTLIER_SCORE)


@dataclass(frozen=True, slots=True)
class JobValue:
    """The value of several pulls in one direction.

    Attributes
    ----------
    budget : Budget
        Its value (the median) and uncertainty.
    values : tuple of float
        Of the pulls used, in order, N·m.
    sd : float
        Standard deviation of the pulls; of fewer than three, the stated repeatability.
    dof : float
        Of ``sd``.
    left_out : tuple of float
        Outliers excluded, because that was asked for.
    notes : tuple of str
        Gate, trend, outliers, what was assumed.
    direction : int
        +1, -1.
    """

    budget: Budget
    values: tuple[float, ...]
    sd: float
    dof: float
    left_out: tuple[float, ...] = ()
    notes: tuple[str, ...] = ()
    direction: int = 1

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

    Parameters
    ----------
    budgets : sequence of Budget
        One per valid pull, in the order they were made; not empty.
    repeatability : float, optional
        Relative standard deviation that the user states; used under three pulls.
    drop_outliers : bool
        Whether outliers are excluded of the median.
    direction : int
        Carried along.

    Raises
    ------
    ValueError
        No pull.
    """
    if not budgets:
        raise ValueError("no pull to take a value from")
    odd = outliers([b.value for b in budgets])
    notes = _outlier_notes([b.value for b in budgets], odd, drop_outliers)
    used = [b for i, b in enumerate(budgets) if not (drop_outliers and i in odd)]
    values = tuple(b.value for b in used)
    middle = statistics.median(values)
    sd, dof, note = _scatter(used[0].quantity, values, repeatability)
    budget = Budget(used[0].quantity, middle, used[0].unit, _shared_rows(used))
    budget = budget.plus(*_random_inputs(used, sd, dof, note))
    left_out = tuple(budgets[i].value for i in odd) if drop_outliers else ()
    job = JobValue(budget, values, sd, dof, left_out, (), direction)
    if not job.repeatable:
        gate = f"the pulls scatter by {job.cv * 100:.0f} % (gate {CV_GATE * 100:.0f} %): repeat with the same rest "
        notes = (*notes, gate + "before each pull, a smooth ramp and the lever in the same place")
    drift = warm_up(values)
    if drift:
        notes = (*notes, drift)
    if len(values) < LEAST_PULLS:
        notes = (*notes, note)
    return replace(job, notes=notes)


def _outlier_notes(values: Sequence[float], odd: tuple[int, ...], drop: bool) -> tuple[str, ...]:
    if not odd:
        return ()
    shown = ", ".join(f"{values[i]:.4g}" for i in odd)
    what = "excluded by the rule stated beforehand" if drop else "kept: exclude a pull only with a reason"
    return (f"{len(odd)} of {len(values)} pulls ({shown} N·m) stand out and were {what}; {OUTLIER_RULE}",)


def _scatter(quantity: str, values: tuple[float, ...], stated: float | None) -> tuple[float, float, str]:
    """Give standard deviation of one pull, its degrees of freedom, and where it comes from."""
    if len(values) >= LEAST_PULLS:
        return statistics.stdev(values), len(values) - 1, f"median of {len(values)} pulls, 1.253 s/√n"
    relative = STATED_REPEATABILITY.get(quantity, max(STATED_REPEATABILITY.values())) if stated is None else stated
    whose = "stated" if stated is not None else "assumed"
    pulls = "one pull" if len(values) == 1 else f"{len(values)} pulls"
    note = f"{pulls}: scatter unknown; a repeatability of {relative * 100:.2g} % is {whose}"
    return relative * abs(statistics.median(values)), math.inf, note


def _random_inputs(used: Sequence[Budget], sd: float, dof: float, note: str) -> tuple[Input, ...]:
    """Give the random part of the median.

    From three pulls on their scatter holds what each trace leaves open, and is taken no smaller than that; under
    three the two stand side by side.
    """
    n = len(used)
    own = math.sqrt(statistics.fmean(sum(r.contribution**2 for r in b.rows if not r.input.shared) for b in used))
    unit = used[0].unit
    if n >= LEAST_PULLS:
        return (Input("repeats", 0.0, MEDIAN_EFFICIENCY * max(sd, own) / math.sqrt(n), unit, dof, note=note),)
    return (
        Input("reading", 0.0, own / math.sqrt(n), unit, note="what each reading leaves open"),
        Input("repeatability", 0.0, sd / math.sqrt(n), unit, dof, note=note),
    )


def _shared_rows(used: Sequence[Budget]) -> tuple[Row, ...]:
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
    return tuple(Row(inputs[name], sum(s) / len(used)) for name, s in slopes.items())


def single_pull(budget: Budget, job: JobValue) -> Budget:
    """Give one pull's budget as one pull of many: pull-to-pull scatter included."""
    note = f"s of {len(job.values)} pulls" if math.isfinite(job.dof) else "repeatability, not from these pulls"
    return budget.plus(Input("pull-to-pull scatter", 0.0, job.sd, budget.unit, job.dof, note=note))


def further_pulls(job: JobValue, wanted_u95_nm: float) -> int | None:
    """Give how many more pulls bring the interval to ± ``wanted_u95_nm``, at the scatter seen so far.

    Returns
    -------
    int or None
        0 if it is there already; None if no number can: the shared part alone is larger, or more than 200 pulls.
    """
    if job.budget.u95 <= wanted_u95_nm:
        return 0
    shared = job.budget.without(*RANDOM_ROWS)
    for n in range(len(job.values) + 1, MOST_PULLS + 1):
        if n < LEAST_PULLS:
            continue
        random = Input("repeats", 0.0, MEDIAN_EFFICIENCY * job.sd / math.sqrt(n), dof=n - 1)
        planned = shared.plus(random)
        if t_factor(planned.dof) * planned.u <= wanted_u95_nm:
            return n - len(job.values)
    return None
