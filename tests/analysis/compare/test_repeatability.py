"""Repeatability studies and agreement of two instruments, against handbook examples."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from analysis.compare.repeatability import agreement, cells, pairs, study
from analysis.compare.runs import Quantity, Run, Setting
from logger.errors import InputError
from tests.coverage import ONE_READING, one_reading

# Ten parts (rows); three operators with three trials each (columns).
PARTS = np.array(
    [
        *[0.29, 0.41, 0.64, 0.08, 0.25, 0.07, 0.04, -0.11, -0.15],
        *[-0.56, -0.68, -0.58, -0.47, -1.22, -0.68, -1.38, -1.13, -0.96],
        *[1.34, 1.17, 1.27, 1.19, 0.94, 1.34, 0.88, 1.09, 0.67],
        *[0.47, 0.50, 0.64, 0.01, 1.03, 0.20, 0.14, 0.20, 0.11],
        *[-0.80, -0.92, -0.84, -0.56, -1.20, -1.28, -1.46, -1.07, -1.45],
        *[0.02, -0.11, -0.21, -0.20, 0.22, 0.06, -0.29, -0.67, -0.49],
        *[0.59, 0.75, 0.66, 0.47, 0.55, 0.83, 0.02, 0.01, 0.21],
        *[-0.31, -0.20, -0.17, -0.63, 0.08, -0.34, -0.46, -0.56, -0.49],
        *[2.26, 1.99, 2.01, 1.80, 2.12, 2.19, 1.77, 1.45, 1.87],
        *[-1.36, -1.25, -1.31, -1.68, -1.62, -1.50, -1.49, -1.77, -2.16],
    ]
).reshape(10, 3, 3)


@pytest.mark.published(
    "AIAG MSA 4th ed., gage R&R by ANOVA (via an open-source test suite)", rows=("5.9",), status="READ-S"
)
def test_anova():
    found = study(PARTS)
    rows = {row.source: row for row in found.table}
    assert rows["operator"].ss == pytest.approx(3.1673, abs=5e-5)
    assert rows["axle"].ss == pytest.approx(88.3619, abs=5e-5)
    assert rows["operator x axle"].ss == pytest.approx(0.3590, abs=5e-5)
    assert rows["repeats"].ss == pytest.approx(2.7589, abs=5e-5)
    assert rows["total"].ss == pytest.approx(94.6471, abs=5e-5)
    assert rows["operator x axle"].f == pytest.approx(0.434, abs=5e-4)
    assert rows["operator x axle"].p == pytest.approx(0.9741, abs=5e-5)
    assert found.pooled
    # The handbook's table divides by the repeats; ours tests against the pooled error.
    assert rows["operator"].ms / rows["repeats"].ms == pytest.approx(34.44, abs=5e-3)
    assert rows["axle"].ms / rows["repeats"].ms == pytest.approx(213.52, abs=5e-3)
    assert rows["operator"].f == pytest.approx(rows["operator"].ms / found.repeatability**2)
    assert found.repeatability == pytest.approx(0.199933, abs=5e-7)
    assert found.reproducibility == pytest.approx(0.226838, abs=5e-7)
    assert found.measuring == pytest.approx(0.302373, abs=2e-6)
    assert found.axles == pytest.approx(1.042327, abs=5e-7)
    assert found.total == pytest.approx(1.085, abs=5e-4)
    assert found.percent == pytest.approx(27.9, abs=0.05)
    assert found.categories == pytest.approx(4.861, abs=5e-4)
    shares = [(v / found.total) ** 2 * 100 for v in (found.repeatability, found.reproducibility, found.measuring)]
    assert shares == pytest.approx([3.4, 4.4, 7.8], abs=0.05)
    assert np.sqrt(rows["repeats"].ms) == pytest.approx(0.214435, abs=5e-7)  # unpooled


@pytest.mark.published(
    "gage R&R, five-part subset (from an open-source package's tests)", rows=("5.11",), status="READ-S"
)
def test_subset():
    data = np.array(
        [
            *[3.29, 3.41, 3.64, 2.44, 2.32, 2.42, 4.34, 4.17, 4.27, 3.47, 3.5, 3.64, 2.2, 2.08, 2.16],
            *[3.08, 3.25, 3.07, 2.53, 1.78, 2.32, 4.19, 3.94, 4.34, 3.01, 4.03, 3.2, 2.44, 1.8, 1.72],
            *[3.04, 2.89, 2.85, 1.62, 1.87, 2.04, 3.88, 4.09, 3.67, 3.14, 3.2, 3.11, 1.54, 1.93, 1.55],
        ]
    ).reshape(3, 5, 3)  # operator, part, trial
    found = study(data.transpose(1, 0, 2))
    total = found.table[-1]
    assert data.mean() == pytest.approx(2.9437, abs=1e-4)
    assert data.mean(axis=(1, 2)) == pytest.approx([3.1567, 2.9800, 2.6947], abs=1e-4)
    assert total.ss == pytest.approx(32.317, abs=5e-4)
    assert total.df == 44


@pytest.mark.published("AIAG MSA 4th ed., bias (via an open-source test suite)", rows=("5.8",), status="READ-S")
def test_bias_of_one_instrument():
    rng = np.random.default_rng(1)
    z = rng.normal(size=100)
    readings = 6.021 + 0.2048 * (z - z.mean()) / z.std(ddof=1)
    found = agreement(readings, np.full(100, 6.01))
    assert found.bias == pytest.approx(0.011, abs=5e-5)
    assert (found.low, found.high) == pytest.approx((-0.0299, 0.0519), abs=3e-4)
    assert found.bias / (found.sd / 10) == pytest.approx(0.5371, abs=1e-4)


@pytest.mark.published("Bland and Altman 1986, peak flow", rows=("7.31",), status="READ-S")
def test_bland_altman():
    large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
    mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
    found = agreement(large, mini)
    assert found.bias == pytest.approx(-2.1176, abs=5e-5)
    assert found.sd == pytest.approx(38.7651, abs=5e-5)
    assert (found.limit_low, found.limit_high) == pytest.approx((-78.096, 73.861), abs=2e-3)


def test_components_are_found_again():
    rng = np.random.default_rng(5)
    axles, operators = rng.normal(50, 8, 40), rng.normal(0, 2, 30)
    values = axles[:, None, None] + operators[None, :, None] + rng.normal(0, 1, (40, 30, 3))
    found = study(values)
    assert found.repeatability == pytest.approx(1, rel=0.05)
    assert found.reproducibility == pytest.approx(operators.std(ddof=1), rel=0.05)
    assert found.axles == pytest.approx(axles.std(ddof=1), rel=0.05)


def test_interaction_is_kept_when_it_is_there():
    rng = np.random.default_rng(6)
    values = rng.normal(50, 5, (8, 1, 1)) + rng.normal(0, 3, (8, 3, 1)) + rng.normal(0, 0.5, (8, 3, 3))
    found = study(values)
    assert not found.pooled
    assert found.reproducibility > 1.5


@pytest.mark.parametrize("bad", [np.ones((1, 3, 3)), np.ones((3, 3)), np.full((3, 3, 3), np.nan), np.ones((3, 3, 3))])
def test_raises(bad):
    with pytest.raises(InputError):
        study(bad)


def test_agreement_raises():
    with pytest.raises(InputError):
        agreement([1, 2, 3], [1, 2])


def test_what_one_reading_is_good_to():
    """Of the handbook's parts: t of Satterthwaite's degrees of freedom times GRR; two readings: t √2 EV with 78.

    Mean squares: operator 1.58363 (2 degrees of freedom) over 30 readings, pooled error 0.0399733 (78).
    """
    found = study(PARTS)
    error, operator = 0.199933**2, 3.1673 / 2
    variance = error * (1 - 1 / 30) + operator / 30
    dof = variance**2 / ((error * (1 - 1 / 30)) ** 2 / 78 + (operator / 30) ** 2 / 2)
    assert found.dof == pytest.approx(dof, rel=1e-3)
    assert found.measuring**2 == pytest.approx(variance, rel=1e-4)
    assert found.half_width == pytest.approx(stats.t.ppf(0.975, dof) * 0.302373, rel=1e-3)
    assert found.half_width > 1.96 * found.measuring * 1.1
    assert found.repeat_limit == pytest.approx(stats.t.ppf(0.975, 78) * np.sqrt(2) * 0.199933, rel=1e-5)


@pytest.mark.parametrize("between", [0.0, 1.0])
def test_a_further_reading_lies_within_what_is_said(between):
    """Within the bounds of ``make coverage``, on fewer draws."""
    least, most = ONE_READING
    assert least <= one_reading(np.random.default_rng(5), between, 1500) <= most


def runs_of(values: dict[tuple[str, str], list[float]]) -> list[Run]:
    setting = Setting("car, other side held, neutral")
    return [
        Run(f"{axle}{who}{i}", {"axle": axle, "by": who}, setting, {Quantity.BREAKAWAY: (value,)}, 1)
        for (axle, who), several in values.items()
        for i, value in enumerate(several)
    ]


def test_recordings_fall_into_their_cells():
    runs = runs_of({("1", "a"): [40, 41], ("1", "b"): [42, 43], ("2", "a"): [50, 51], ("2", "b"): [52, 53]})
    found = cells(runs, Quantity.BREAKAWAY, axle="axle", operator="by")
    assert found.tolist() == [[[40, 41], [42, 43]], [[50, 51], [52, 53]]]
    with pytest.raises(InputError, match="1, a: 1; 1, b: 2; 2, a: 2; 2, b: 2"):
        cells(runs[1:], Quantity.BREAKAWAY, axle="axle", operator="by")
    with pytest.raises(InputError, match="found: none"):
        cells([], Quantity.BREAKAWAY, axle="axle", operator="by")
    for key in ("axle", "by"):
        nameless = Run("x", {"axle": "1", "by": "a"} | {key: ""}, runs[0].setting, runs[0].values, 1)
        with pytest.raises(InputError, match="x: a study needs"):
            cells([*runs, nameless], Quantity.BREAKAWAY, axle="axle", operator="by")
    with pytest.raises(InputError, match="a study needs"):
        cells(runs, Quantity.ROTATING, axle="axle", operator="by")


def test_two_ways_are_paired_by_their_axles():
    runs = runs_of({("1", "b"): [42, 44], ("1", "a"): [40], ("2", "a"): [50], ("2", "b"): [51], ("3", "a"): [60]})
    names, a, b = pairs(runs, Quantity.BREAKAWAY, axle="axle", way="by")
    assert (names, a.tolist(), b.tolist()) == (("a", "b"), [40, 50], [43, 51])
    loose = Run("x", {"axle": "1"}, runs[0].setting, runs[0].values, 1)
    assert pairs([*runs, loose], Quantity.BREAKAWAY, axle="axle", way="by")[1].tolist() == [40, 50]
    for of in (runs[:2], runs_of({("1", who): [1.0] for who in "abc"})):
        with pytest.raises(InputError, match="must name two ways"):
            pairs(of, Quantity.BREAKAWAY, axle="axle", way="by")


def test_the_table_by_hand():
    """Two axles, two operators, two repeats: sums of squares and F as in any book of the analysis of variance.

    Cells (axle, operator): 10 12 | 13 15 // 20 22 | 27 29. Means: operators 16 and 21, axles 12.5 and 24.5.
    """
    y = np.array([[[10.0, 12], [13, 15]], [[20, 22], [27, 29]]])
    found = study(y)
    rows = {row.source: row for row in found.table}
    wanted = {"operator": 50, "axle": 288, "operator x axle": 8, "repeats": 8, "total": 354}
    assert {name: row.ss for name, row in rows.items()} == pytest.approx(wanted)
    assert {name: row.df for name, row in rows.items()} == dict(zip(wanted, (1, 1, 1, 4, 7), strict=True))
    assert not found.pooled  # F = 8/2 = 4 on 1 and 4: p = 0.116
    assert rows["operator x axle"].p == pytest.approx(stats.f.sf(4, 1, 4))
    assert rows["operator"].f == pytest.approx(50 / 8)
    assert rows["axle"].p == pytest.approx(stats.f.sf(36, 1, 1))
    cross, operator, axle = (8 - 2) / 2, (50 - 8) / 4, (288 - 8) / 4
    assert found.repeatability == pytest.approx(2**0.5)
    assert found.reproducibility == pytest.approx((cross + operator) ** 0.5)
    assert found.axles == pytest.approx(axle**0.5)
    measuring = 2 + cross + operator
    assert found.percent == pytest.approx(100 * (measuring / (measuring + axle)) ** 0.5)
    assert found.categories == pytest.approx(1.41 * (axle / measuring) ** 0.5)
    assert found.levels == 2
    below = (2 / 2) ** 2 / 4 + (8 / 2 - 8 / 4) ** 2 / 1 + (50 / 4) ** 2 / 1
    assert found.dof == pytest.approx(measuring**2 / below)
    assert found.repeat_dof == 4
    assert "the operators differ more" in found.text
