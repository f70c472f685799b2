"""How good a workshop's own measuring is: operators x axles x repeats, and two instruments side by side.

Conventions: ``values[axle, operator, repeat]`` in N·m, every cell filled. Standard deviations in N·m.

Offers ``cells`` (recordings sorted by operator and axle), ``study`` (two-way analysis of variance),
``pairs`` and ``agreement`` (differences of paired readings).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

from logger.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from analysis.compare.runs import Quantity, Run

Floats = NDArray[np.float64]

POOL_ABOVE_P = 0.25
"""An operator x axle interaction with a larger p is pooled with the repeats: usual in such studies (from memory)."""

NDC_FACTOR = 1.41
"""Number of distinct categories = 1.41 PV/GRR, the factor as the handbook method rounds √2."""

AGREE = 1.96


@dataclass(frozen=True, slots=True)
class VarianceRow:
    """One line of the analysis of variance."""

    source: str
    ss: float
    df: int
    ms: float
    f: float | None
    p: float | None


@dataclass(frozen=True, slots=True)
class Study:
    """What a repeatability study says."""

    # repeatability, reproducibility: standard deviations: same operator again (EV); from operator to operator (AV)
    repeatability: float
    reproducibility: float
    measuring: float  # both together (GRR)
    # axles, total: from axle to axle (PV), and everything (TV)
    axles: float
    total: float
    percent: float  # measuring as a share of the total, in percent
    categories: float  # distinct levels of torque that this measuring can tell apart among these axles
    table: tuple[VarianceRow, ...]  # the analysis of variance; empty for average and range
    pooled: bool  # whether the interaction was pooled with the repeats
    text: str  # what a shop can do with it
    # dof, repeat_dof: effective degrees of freedom of measuring (F. E. Satterthwaite, Biometrics Bulletin 2 (1946) 110:
    # of a sum of mean squares, from memory) and of repeatability.
    dof: float
    repeat_dof: float

    @property
    def half_width(self) -> float:
        """Half width of the 95 % interval of one reading, whoever takes it: the t factor of what the study rests on."""
        return _t95(self.dof) * self.measuring

    @property
    def repeat_limit(self) -> float:
        """What two readings of one axle by the same operator exceed only once in twenty, the t factor included."""
        return _t95(self.repeat_dof) * math.sqrt(2) * self.repeatability

    @property
    def levels(self) -> int:
        """Levels told apart, at least one."""
        return max(1, int(self.categories))


def _t95(dof: float) -> float:
    from scipy.special import stdtrit

    return float(stdtrit(max(dof, 1.0), 0.975))


def _checked(values: ArrayLike) -> Floats:
    y = np.asarray(values, dtype=float)
    if y.ndim != 3 or min(y.shape) < 2:
        raise InputError("a repeatability study needs two or more axles, operators and repeats, every cell filled")
    if not np.isfinite(y).all():
        raise InputError("a repeatability study needs a finite value in every cell")
    return y


def study(values: ArrayLike, *, unit: str = "N·m") -> Study:
    """Analyse a study by two-way analysis of variance with interaction; ``unit`` is for its text.

    1. Sums of squares of operator, axle, operator x axle and repeats.
    2. The interaction is pooled with the repeats when its p exceeds 0.25; operator and axle are tested against the
       interaction, or against the pooled error.
    3. Variance components from the expected mean squares; a negative one is zero.
    """
    y = _checked(values)
    n_axles, n_operators, repeats = y.shape
    operator, axle, cross, within, total = _sums(y)
    if within.ss <= 0:
        raise InputError("all repeats are equal: the resolution hides the scatter; use a finer reading")
    cross = _against(cross, within)
    pooled = cross.p is not None and cross.p > POOL_ABOVE_P
    error = _row("error", cross.ss + within.ss, cross.df + within.df) if pooled else within
    main = error if pooled else cross
    operator, axle = _against(operator, main), _against(axle, main)
    v_cross = 0.0 if pooled else max(0.0, (cross.ms - error.ms) / repeats)
    v_operator = max(0.0, (operator.ms - main.ms) / (n_axles * repeats))
    v_axle = max(0.0, (axle.ms - main.ms) / (n_operators * repeats))
    table = (operator, axle, cross, within, total)
    # The measuring variance as a sum of mean squares: error, interaction and operator by how often each enters.
    shares: dict[str, tuple[float, VarianceRow]] = {"error": (1.0, error)}
    if v_cross:
        shares["error"] = (1 - 1 / repeats, error)
        shares["cross"] = (1 / repeats, cross)
    if v_operator:
        each, name = 1 / (n_axles * repeats), "error" if pooled else "cross"
        shares[name] = (shares.get(name, (0.0, main))[0] - each, main)
        shares["operator"] = (each, operator)
    below = sum((share * row.ms) ** 2 / row.df for share, row in shares.values())
    dofs = ((error.ms + v_operator + v_cross) ** 2 / below, float(error.df))
    parts = (math.sqrt(error.ms), math.sqrt(v_operator + v_cross), math.sqrt(v_axle))
    return _study(parts, table, dofs, pooled=pooled, unit=unit)


def _row(source: str, ss: float, df: int) -> VarianceRow:
    return VarianceRow(source, ss, df, ss / df, None, None)


def _against(row: VarianceRow, error: VarianceRow) -> VarianceRow:
    """Give the row with its F ratio against an error."""
    from scipy.special import fdtrc

    if error.ms <= 0:
        return row
    f = row.ms / error.ms
    return replace(row, f=f, p=float(fdtrc(row.df, error.df, f)))


def _sums(y: Floats) -> tuple[VarianceRow, VarianceRow, VarianceRow, VarianceRow, VarianceRow]:
    n_axles, n_operators, repeats = y.shape
    mean = y.mean()
    operator = n_axles * repeats * float(np.sum((y.mean(axis=(0, 2)) - mean) ** 2))
    axle = n_operators * repeats * float(np.sum((y.mean(axis=(1, 2)) - mean) ** 2))
    cells = repeats * float(np.sum((y.mean(axis=2) - mean) ** 2))
    total = float(np.sum((y - mean) ** 2))
    return (
        _row("operator", operator, n_operators - 1),
        _row("axle", axle, n_axles - 1),
        _row("operator x axle", max(0.0, cells - operator - axle), (n_operators - 1) * (n_axles - 1)),
        _row("repeats", float(np.sum((y - y.mean(axis=2, keepdims=True)) ** 2)), n_axles * n_operators * (repeats - 1)),
        _row("total", total, y.size - 1),
    )


def _study(
    parts: tuple[float, float, float],
    table: tuple[VarianceRow, ...],
    dofs: tuple[float, float],
    *,
    pooled: bool,
    unit: str = "N·m",
) -> Study:
    ev, av, pv = parts
    grr = math.hypot(ev, av)
    total = math.hypot(grr, pv)
    percent = 100 * grr / total
    categories = NDC_FACTOR * pv / grr
    found = Study(ev, av, grr, pv, total, percent, categories, table, pooled, "", *dofs)
    who = "the operators differ more than their repeats do" if av > ev else "repeats scatter more than operators differ"
    u = "" if unit == "1" else f" {unit}"
    text = (
        f"One reading is good to about ±{found.half_width:.2g}{u} (95 %) whoever takes it; {who}. "
        f"Two readings of one axle by the same operator differ by more than {found.repeat_limit:.2g}{u} only once in "
        "twenty."
    )
    return replace(found, text=text)


def cells(runs: Iterable[Run], quantity: Quantity, *, axle: str, operator: str) -> Floats:
    """Sort recordings into the cells of a study.

    Returns:
        shape (axles, operators, repeats); The recordings' values.

    Raises:
        InputError: A recording without a tag or value, or cells that do not hold the same number.
    """
    found: dict[tuple[str, str], list[float]] = {}
    for run in runs:
        value, names = run.value(quantity), (str(run.tags.get(axle, "")), str(run.tags.get(operator, "")))
        if value is None or not all(names):
            raise InputError(
                f"{run.file}: a study needs a {quantity.value}, '{axle}' and '{operator}' in every recording"
            )
        found.setdefault(names, []).append(value)
    axles, operators = (sorted({names[i] for names in found}) for i in (0, 1))
    counts = {f"{a}, {o}": len(found.get((a, o), [])) for a in axles for o in operators}
    if len(set(counts.values())) != 1:
        listed = "; ".join(f"{cell}: {count}" for cell, count in counts.items())
        raise InputError(f"every operator must repeat every axle equally often. Recordings found: {listed or 'none'}")
    return np.array([[found[a, o] for o in operators] for a in axles])


def pairs(runs: Iterable[Run], quantity: Quantity, *, axle: str, way: str) -> tuple[tuple[str, str], Floats, Floats]:
    """Pair two ways of measuring (instruments, operators) on the same axles, by the mean of each axle's recordings.

    Returns:
        names: (str, str); The two ways, as the tag ``way`` names them.
        a, b: shape (axles,); Means per axle that both have measured.

    Raises:
        InputError: Not exactly two ways.
    """
    found: dict[str, dict[str, list[float]]] = {}
    for run in runs:
        value, name = run.value(quantity), str(run.tags.get(way, ""))
        if value is not None and name:
            found.setdefault(name, {}).setdefault(str(run.tags.get(axle, run.file)), []).append(value)
    if len(found) != 2:
        raise InputError(f"tag '{way}' must name two ways of measuring; it names: {', '.join(found) or 'none'}")
    (name_a, a), (name_b, b) = sorted(found.items())
    shared = [axle_name for axle_name in a if axle_name in b]
    means = [np.array([np.mean(group[axle_name]) for axle_name in shared]) for group in (a, b)]
    return (name_a, name_b), means[0], means[1]


@dataclass(frozen=True, slots=True)
class LimitsOfAgreement:
    """How two ways of measuring agree: limits that hold 95 % of single differences."""

    # bias, low, high: mean of a - b with its 95 % interval
    bias: float
    low: float
    high: float
    sd: float  # standard deviation of the differences
    # limit_low, limit_high: limits of agreement, bias ∓ 1.96 sd, as their authors define them: estimates, not bounds
    # that few pairs guarantee
    limit_low: float
    limit_high: float
    n: int  # pairs


def agreement(a: ArrayLike, b: ArrayLike) -> LimitsOfAgreement:
    """Compare two instruments (or operators) on the same axles by their differences (Bland and Altman 1986).

    Raises:
        InputError: Readings that are not paired, or fewer than three pairs.
    """
    from scipy.special import stdtrit

    x, y = np.asarray(a, dtype=float), np.asarray(b, dtype=float)
    if x.shape != y.shape or x.ndim != 1 or len(x) < 3 or not np.isfinite(x - y).all():
        raise InputError("agreement needs three or more pairs of finite readings of the same axles")
    difference = x - y
    bias, sd = float(difference.mean()), float(difference.std(ddof=1))
    half = float(stdtrit(len(x) - 1, 0.975)) * sd / math.sqrt(len(x))
    return LimitsOfAgreement(bias, bias - half, bias + half, sd, bias - AGREE * sd, bias + AGREE * sd, len(x))
