"""Group comparisons against published worked examples and by simulation."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from analysis.compare.comparisons import (
    Effect,
    Interval,
    bootstrap,
    dunnett,
    equivalence,
    paired,
    paired_equivalence,
    tukey,
    welch,
)
from logger.errors import InputError


def exactly(n, mean, sd, rng):
    """Give n values whose mean and standard deviation are exactly these."""
    x = rng.normal(size=n)
    return mean + sd * (x - x.mean()) / x.std(ddof=1)


@pytest.mark.published(
    "NIST/SEMATECH e-Handbook 1.3.5.3 (two samples, via an open-source library)", rows=("7.21",), status="READ-S"
)
def test_welch_handbook():
    rng = np.random.default_rng(1)
    effect = welch(exactly(249, 20.14458, 6.41470, rng), exactly(79, 30.48101, 6.10771, rng))
    assert effect.df == pytest.approx(136.87499, abs=2e-3)
    assert effect.p == pytest.approx(1.571e-25, rel=2e-3)
    assert effect.difference.value == pytest.approx(20.14458 - 30.48101)
    standard_error = (effect.difference.high - effect.difference.low) / 2 / 1.97751  # t(0.975; 136.875)
    assert effect.difference.value / standard_error == pytest.approx(-12.94627, abs=1e-3)


@pytest.mark.published("Dunnett 1955, blood counts (via an open-source test suite)", rows=("7.27",), status="READ-S")
def test_dunnett_blood_counts():
    control = [7.40, 8.50, 7.20, 8.24, 9.84, 8.32]
    drugs = {"A": [9.76, 8.80, 7.68, 9.36], "B": [12.80, 9.68, 12.16, 9.20, 10.55]}
    a, b = dunnett(drugs, control)
    assert (a.p, b.p) == pytest.approx((0.6201, 0.0058), abs=2e-4)
    assert (a.difference.low, a.difference.high) == pytest.approx((-1.2564, 2.5564), abs=2e-3)
    assert (b.difference.low, b.difference.high) == pytest.approx((0.8396, 4.4164), abs=2e-3)
    assert a.df == 12


@pytest.mark.published("Dunnett, three treatments (via an open-source test suite)", rows=("7.28",), status="READ-S")
def test_dunnett_three():
    effects = dunnett({"1": [55, 64, 64], "2": [55, 49, 52], "3": [50, 44, 41]}, [55, 47, 48])
    assert [e.p for e in effects] == pytest.approx([0.0364, 0.8966, 0.4091], abs=5e-4)


SAME = {"1": [24.5, 23.5, 26.4, 27.1, 29.9], "2": [28.4, 34.2, 29.5, 32.2, 30.1], "3": [26.1, 28.3, 24.3, 26.2, 27.8]}


@pytest.mark.published("Tukey HSD, pain relief (two statistics packages agree)", rows=("7.24",), status="READ-S")
def test_tukey_equal_sizes():
    found = {(e.treated, e.control): e for e in tukey(SAME)}
    two_one, three_two, three_one = found["2", "1"], found["3", "2"], found["3", "1"]
    assert two_one.difference.value == pytest.approx(4.6)
    assert two_one.difference.low == pytest.approx(0.9508, abs=2e-4)
    assert two_one.difference.high == pytest.approx(8.2491, abs=2e-4)
    assert two_one.p == pytest.approx(0.0144483269098, abs=1e-6)
    assert three_two.difference.low == pytest.approx(-7.98916, abs=2e-4)
    assert three_two.p == pytest.approx(0.0203311368795, abs=1e-6)
    assert three_one.difference.value == pytest.approx(0.26)
    assert three_one.p == pytest.approx(0.98031072409, abs=1e-6)


@pytest.mark.published("Tukey-Kramer, unequal sizes (statistics package)", rows=("7.26",), status="READ-S")
def test_tukey_unequal_sizes():
    groups = {**SAME, "1": [24.5, 23.5, 26.28, 26.4, 27.1, 29.9, 30.1, 30.1]}
    effect = next(e for e in tukey(groups) if (e.treated, e.control) == ("2", "1"))
    assert (effect.difference.value, effect.difference.low, effect.difference.high) == pytest.approx(
        (3.645, 0.26792930, 7.02207070), abs=1e-4
    )
    assert effect.p == pytest.approx(0.0337149844, abs=1e-6)


@pytest.mark.published("R help page of TukeyHSD, warpbreaks by tension", rows=("7.25",), status="READ-S")
def test_tukey_warpbreaks():
    low = [26, 30, 54, 25, 70, 52, 51, 26, 67, 27, 14, 29, 19, 29, 31, 41, 20, 44]
    medium = [18, 21, 29, 17, 12, 18, 35, 30, 36, 42, 26, 19, 16, 39, 28, 21, 39, 29]
    high = [36, 21, 24, 18, 10, 43, 28, 15, 26, 20, 21, 24, 17, 13, 15, 15, 16, 28]
    found = {(e.treated, e.control): e for e in tukey({"H": high, "M": medium, "L": low})}
    for pair, expected in {
        ("L", "M"): (10.0, 0.4401756, 19.55982, 0.0384598),
        ("L", "H"): (14.722222, 5.1623978, 24.28205, 0.0014315),
        ("M", "H"): (4.722222, -4.8376022, 14.28205, 0.4630831),
    }.items():
        e = found[pair]
        assert (e.difference.value, e.difference.low, e.difference.high, e.p) == pytest.approx(expected, abs=2e-4)


def test_ratio_is_the_log_scale_difference():
    x, y = np.array([30.0, 33.0, 31.5, 29.0]), np.array([24.0, 25.5, 23.0])
    effect = welch(x, y)
    logs = welch(np.log(x), np.log(y))
    assert effect.ratio is not None
    assert np.log(effect.ratio.value) == pytest.approx(logs.difference.value)
    assert np.log(effect.ratio.low) == pytest.approx(logs.difference.low)
    assert welch(x - 30, y).ratio is None


def test_dunnett_holds_jointly():
    # Three groups that do not differ from their control: all three intervals must hold zero in about 95 % of studies.
    rng = np.random.default_rng(7)
    studies = 80
    held = 0
    for _ in range(studies):
        y, *groups = rng.normal(0, 2, size=(4, 5))  # around zero: no ratios, half the time
        effects = dunnett({str(i): g for i, g in enumerate(groups)}, y)
        held += all(e.difference.low <= 0 <= e.difference.high for e in effects)
    assert 0.87 <= held / studies < 1  # three standard deviations of a binomial share of 80


def test_paired_takes_the_block_away():
    days = {"mon": 0.0, "tue": 8.0, "wed": -6.0, "thu": 3.0}
    control = {day: 50 + shift for day, shift in days.items()}
    treated = {
        day: 53 + shift + extra for (day, shift), extra in zip(days.items(), (0.2, -0.2, 0.1, -0.1), strict=True)
    }
    effect = paired(treated, control)
    assert effect.difference.value == pytest.approx(3.0)
    assert effect.difference.low > 2.5
    assert welch(list(treated.values()), list(control.values())).difference.low < 0
    with pytest.raises(InputError, match="share 1 block"):
        paired({"mon": 1.0, "fri": 2.0}, control)


def test_equivalence_needs_evidence():
    rng = np.random.default_rng(3)
    near = equivalence(exactly(12, 50.2, 1.0, rng), exactly(12, 50.0, 1.0, rng), margin=1.5)
    assert near.equivalent
    assert -1.5 < near.difference.low < near.difference.high < 1.5
    few = equivalence([50.0, 51.0], [50.1, 51.2], margin=1.5)
    assert not few.equivalent  # no difference seen, and no sameness shown
    with pytest.raises(InputError, match="margin"):
        equivalence([1, 2], [1, 2], 0)


def test_equivalence_agrees_with_its_interval():
    rng = np.random.default_rng(5)
    for _ in range(50):
        x, y = rng.normal(0, 1, size=(2, 8))
        result = equivalence(x, y, margin=1.0)
        assert result.equivalent is (result.difference.low > -1 and result.difference.high < 1)


def test_bootstrap_is_like_welch_on_normal_data():
    rng = np.random.default_rng(11)
    x, y = exactly(20, 31, 2, rng), exactly(20, 28, 2, rng)
    boot, t = bootstrap(x, y), welch(x, y).difference
    assert boot.value == t.value
    assert boot.high - boot.low == pytest.approx(t.high - t.low, rel=0.12)
    with pytest.raises(InputError, match="needs 5"):
        bootstrap([1, 2, 3], y)


@pytest.mark.parametrize("bad", [[1.0], [1.0, float("nan")], [[1.0, 2.0]]])
def test_raises(bad):
    with pytest.raises(InputError):
        welch(bad, [1.0, 2.0])


def test_no_scatter():
    with pytest.raises(InputError, match="no scatter"):
        welch([1.0, 1.0], [2.0, 2.0])


def test_against_statsmodels():
    # A general-purpose library as a second opinion.
    from statsmodels.stats.weightstats import CompareMeans, DescrStatsW

    rng = np.random.default_rng(2)
    x, y = rng.normal(30, 2, 7), rng.normal(27, 4, 5)
    means = CompareMeans(DescrStatsW(x), DescrStatsW(y))
    low, high = means.tconfint_diff(usevar="unequal")
    effect = welch(x, y)
    assert (effect.difference.low, effect.difference.high) == pytest.approx((low, high))
    assert effect.p == pytest.approx(means.ttest_ind(usevar="unequal")[1])


X, Y = [30.0, 33.0, 31.5, 29.0], [24.0, 25.5, 23.0]


def test_two_one_sided_tests_by_hand():
    """t = (d ± margin)/se with Welch's degrees of freedom; the larger of both p decides (Schuirmann 1987)."""
    x, y, margin = np.array(X), np.array(Y), 10.0
    per = x.var(ddof=1) / len(x), y.var(ddof=1) / len(y)
    se, d = sum(per) ** 0.5, x.mean() - y.mean()
    df = sum(per) ** 2 / (per[0] ** 2 / (len(x) - 1) + per[1] ** 2 / (len(y) - 1))
    found = equivalence(X, Y, margin)
    p = max(stats.t.sf((d + margin) / se, df), stats.t.cdf((d - margin) / se, df))
    assert found.p == pytest.approx(p)
    assert found.difference.value == pytest.approx(d)
    assert found.difference.low == pytest.approx(d + stats.t.ppf(0.05, df) * se)
    assert found.difference.high == pytest.approx(d + stats.t.ppf(0.95, df) * se)
    other = equivalence(Y, X, margin)
    assert other.p == pytest.approx(p)
    assert other.difference.value == pytest.approx(-d)


def test_two_one_sided_tests_within_blocks_by_hand():
    days, margin = ["a", "b", "c", "d"], 2.0
    x, y = np.array([50.2, 51.9, 49.0, 53.0]), np.array([49.7, 51.0, 48.9, 52.1])
    d = x - y
    se = d.std(ddof=1) / 2
    p = max(stats.t.sf((d.mean() + margin) / se, 3), stats.t.cdf((d.mean() - margin) / se, 3))
    for sign, (one, other) in ((1, (x, y)), (-1, (y, x))):
        groups = dict(zip(days, one, strict=True)), dict(zip(days, other, strict=True))
        found = paired_equivalence(*groups, margin)
        assert found.p == pytest.approx(p)
        assert found.equivalent
        assert found.difference.value == pytest.approx(sign * d.mean())
        assert found.difference.low == pytest.approx(sign * d.mean() - stats.t.ppf(0.95, 3) * se)
        assert found.difference.high == pytest.approx(sign * d.mean() + stats.t.ppf(0.95, 3) * se)
    with pytest.raises(InputError, match="margin"):
        paired_equivalence(*groups, 0.0)


def test_paired_by_hand_and_for_a_family():
    """Bonferroni: the interval of two comparisons at 97.5 % each, p twice as large and at most 1."""
    days = ["a", "b", "c", "d"]
    x, y = np.array([50.2, 51.9, 49.0, 53.0]), np.array([49.7, 51.0, 48.9, 52.1])
    groups = dict(zip(days, x, strict=True)), dict(zip(days, y, strict=True))
    d = x - y
    se = d.std(ddof=1) / 2
    p = 2 * stats.t.sf(d.mean() / se, 3)
    for family, level in ((1, 0.975), (2, 0.9875)):
        effect = paired(*groups, family=family)
        assert effect.p == pytest.approx(family * p)
        assert effect.difference.low == pytest.approx(d.mean() - stats.t.ppf(level, 3) * se)
        assert effect.df == 3
        assert effect.ratio.value == pytest.approx(np.exp(np.mean(np.log(x) - np.log(y))))
        assert ("jointly" in effect.method) is (family > 1)
    assert paired(*groups, family=100).p == 1.0


def test_values_that_reach_zero_have_no_ratio():
    for low in (0.0, -0.1):
        assert welch([*X, low], Y).ratio is None
        assert welch(X, [*Y, low]).ratio is None
        assert dunnett({"x": [*X, low]}, Y)[0].ratio is None
        assert paired({"a": 3.0, "b": low}, {"a": 1.0, "b": 1.0}).ratio is None
    assert welch(X, [*Y, 0.1]).ratio is not None
    assert dunnett({"x": X}, [*Y, 0.1])[0].ratio is not None


def test_one_group_against_a_control_is_students_test():
    """With one group Dunnett's distribution is Student's with the pooled variance."""
    (effect,) = dunnett({"x": X}, Y)
    known = stats.ttest_ind(X, Y)
    bounds = known.confidence_interval(0.95)
    assert effect.p == pytest.approx(known.pvalue, abs=1e-4)
    assert (effect.difference.low, effect.difference.high) == pytest.approx(tuple(bounds), abs=0.02)
    assert effect.difference.value == pytest.approx(np.mean(X) - np.mean(Y))
    logs = stats.ttest_ind(np.log(X), np.log(Y)).confidence_interval(0.95)
    assert (effect.ratio.low, effect.ratio.high) == pytest.approx(tuple(np.exp(logs)), rel=2e-3)
    assert (effect.df, effect.n_treated, effect.n_control) == (5, 4, 3)
    with pytest.raises(InputError, match="no group besides"):
        dunnett({}, Y)


@pytest.mark.parametrize(
    ("low", "high", "shown"), [(0.0, 1.0, False), (-1.0, 0.0, False), (0.1, 1.0, True), (-1, -0.1, True)]
)
def test_a_difference_is_shown_by_an_interval_without_zero(low, high, shown):
    assert Effect("a", "b", Interval(0.5, low, high), None, 0.5, 3.0, 2, 2, "").shown is shown


def test_groups_that_are_too_small_or_say_nothing():
    with pytest.raises(InputError, match="has 1 unit and needs 2"):
        welch([1.0], Y)
    with pytest.raises(InputError, match="finite"):
        welch([1.0, np.inf], Y)
    with pytest.raises(InputError, match="equal"):
        welch([2.0, 2.0], [1.0, 1.0])
    assert welch([1.0, 2.0], [3.0, 4.0]).n_treated == 2
    with pytest.raises(InputError, match="two or more groups"):
        tukey({"x": X})
    assert [(e.df, e.n_treated, e.n_control) for e in tukey({"x": X, "y": Y})] == [(5, 3, 4)]
    with pytest.raises(InputError, match="has 4 units and needs 5"):
        bootstrap(X, [*Y, 22.0, 26.0])
    assert bootstrap([*X, 30.5], [*Y, 22.0, 26.0]).value == pytest.approx(30.8 - 24.1)


def test_the_group_at_fault_is_named():
    with pytest.raises(InputError, match="group 'new oil'"):
        welch([1.0], Y, names=("new oil", "old oil"))
    with pytest.raises(InputError, match="group 'old oil'"):
        welch(Y, [1.0], names=("new oil", "old oil"))
