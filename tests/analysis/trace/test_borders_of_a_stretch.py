"""Borders of small filters, of what a stretch says, of the rise, the top and the levels: by hand, from tables of
control charts, or with numpy.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats

from analysis.trace import levels, plateau, slipping, smooth
from analysis.trace.averaging import autocorrelation, expected_maximum, highest_of, level_uncertainty, mean_uncertainty
from analysis.trace.levels import longest_level
from analysis.trace.ramp import fades
from analysis.trace.stated import is_distinct


# ---------------------------------------------------------------------- small filters
@pytest.mark.parametrize("width", [1, 2, 3, 6, 7, 50])
def test_a_moving_mean_is_the_mean_of_what_exists(width):
    y = np.random.default_rng(1).normal(size=11)
    half = width // 2
    wanted = [y[max(i - half, 0) : i + half + 1].mean() for i in range(len(y))]
    assert smooth.moving_mean(y, width) == pytest.approx(wanted)
    assert smooth.moving_mean(y[:2], width) == pytest.approx(
        [y[:2][: 1 + half].mean(), y[:2][max(1 - half, 0) :].mean()]
    )


def test_a_parabola_is_numpys():
    rng = np.random.default_rng(2)
    x, y = np.sort(rng.uniform(2, 5, 12)), rng.normal(3, 1, 12)
    c, b, a = np.polyfit(x, y, 2)
    rest = y - (a + b * x + c * x * x)
    assert smooth.parabola(x, y) == pytest.approx((a, b, c, np.sqrt((rest**2).sum() / 9)))


def test_a_quantile_a_thinning_and_block_means():
    y = np.arange(10.0)[::-1]
    assert [smooth.quantile(y, share) for share in (0.0, 0.25, 0.5, 0.99, 1.0)] == [0, 2, 5, 9, 9]
    assert y[0] == 9, "the values stay as they are"
    assert smooth.block_means(np.arange(8.0), 3).tolist() == [1.0, 4.0]
    assert [len(smooth.thin(np.zeros(n))) for n in (10, 1999, 2000, 3500)] == [10, 1999, 1000, 1167]


def test_values_crowd_where_the_shortest_interval_holds_four_tenths_of_them():
    """The interval of four of ten; of two that are alike the higher one."""
    assert smooth.crowded(np.array([0.0, 5, 10, 15, 20, 20.1, 20.2, 20.3, 30, 40])) == pytest.approx(20.15)
    assert smooth.crowded(np.array([1.0, 1, 1, 1, 2, 3, 4, 4, 4, 4])) == 4
    assert smooth.crowded(np.array([7.0])) == 7


@pytest.mark.parametrize("estimate", [smooth.sample_noise, smooth.least_noise])
def test_noise_is_that_of_second_differences(estimate):
    """White noise of 0.5 on a slope: within what the estimate's own scatter leaves; none without noise."""
    rng = np.random.default_rng(3)
    found = [estimate(3.0 * np.arange(400) + rng.normal(0, 0.5, 400)) for _ in range(200)]
    lower_quartile = estimate is smooth.sample_noise  # of sixteen stretches: a tenth below
    assert np.mean(found) == pytest.approx(0.45 if lower_quartile else 0.5, rel=0.04)
    assert estimate(3.0 * np.arange(100)) == pytest.approx(0.0, abs=1e-9)
    assert estimate(np.array([1.0, 5.0, 2.0])) == 0.0
    assert estimate(np.array([1.0, 5.0, 2.0, 7.0])) > 0


def test_few_values_on_a_ramp_take_the_range_of_three():
    """1.693 deviations on average (d2 of three: Montgomery, from memory): three at 0.0 to 0.1 behind a bent ramp."""
    y = np.array([0.0, 0.05, 0.1, 2.0, 7.0, 9.0, 18.0, 30.0])
    assert smooth.least_noise(y) == pytest.approx(0.1 / 1.693)
    assert smooth.least_noise(np.r_[y, np.linspace(40, 900, 13) ** 1.5]) > 0.1  # more than twenty values


# ---------------------------------------------------------------------- what a stretch says
def test_autocorrelation_by_hand():
    """Of 1, 2, 3: deviations -1, 0, 1; lag 1 is 0, lag 2 is -1/2."""
    assert autocorrelation(np.array([1.0, 2.0, 3.0])).tolist() == pytest.approx([1, 0, -0.5])
    assert len(autocorrelation(np.ones(5))) == 0


def test_the_mean_of_independent_and_of_dependent_readings():
    """Of an autoregressive series of r the variance of the mean is (1 + r)/(1 - r) of the independent one's."""
    rng = np.random.default_rng(4)
    for r in (0.0, 0.5):
        ratios = []
        for _ in range(60):
            x = rng.normal(0, 1, 300)
            for i in range(1, 300):
                x[i] += r * x[i - 1]
            ratios.append(mean_uncertainty(x)[0] ** 2 / (np.var(x) / 300))
        assert np.mean(ratios) == pytest.approx((1 + r) / (1 - r), rel=0.16)
    assert mean_uncertainty(np.array([1.0])) == mean_uncertainty(np.ones(9)) == (0.0, np.inf)
    u, dof = mean_uncertainty(np.array([1.0, 2.0]))  # two that differ say that it is not sure
    assert u > 0.3
    assert dof < 2


def test_the_mean_of_a_short_row_by_hand():
    """1, 3, 2, 2, 1, 3 about 2: ρ = 1, 0, 0, -1/2, ...: pairs 1 and -1/2, so that one pair, two lags, are summed."""
    y = np.array([1.0, 3, 2, 2, 1, 3])
    rho = autocorrelation(y)
    pairs = rho[0] + rho[1], rho[2] + rho[3]
    assert pairs[0] > 0 >= pairs[1]
    factor = (2 * pairs[0] - 1) * (1 + 3 / 6)
    u = math.sqrt(np.var(y) * max(factor, 1.0) / 6)
    assert mean_uncertainty(y)[0] == pytest.approx(u)
    dof = 6 / (2 * 1 + 1)
    assert level_uncertainty(y) == pytest.approx(u * stats.t.ppf(0.975, int(dof)) / 1.96, rel=1e-4)
    assert level_uncertainty(y, 5) == pytest.approx(u * stats.t.ppf(0.975, 5) / 1.96, rel=1e-4)


@pytest.mark.parametrize(
    ("n", "mean", "deviation"), [(1, 0.0, 1.0), (2, 0.56419, 0.8256), (5, 1.16296, 0.6690), (200, 2.74604, 0.3970)]
)
def test_the_greatest_of_normal_values(n, mean, deviation):
    """Expected greatest of n standard normals (tabled: H. L. Harter, from memory); its deviation by integration."""
    z = np.linspace(-8, 8, 4001)
    density = n * stats.norm.pdf(z) * stats.norm.cdf(z) ** (n - 1)
    exact = np.trapezoid(z * density, z)
    assert exact == pytest.approx(mean, abs=2e-4)
    got, spread = expected_maximum(np.full(n, 30.0), 0.5)
    assert got == pytest.approx(30 + 0.5 * exact, abs=1e-3)
    assert spread == pytest.approx(0.5 * math.sqrt(np.trapezoid((z - exact) ** 2 * density, z)), abs=2e-3)
    far = expected_maximum(np.r_[np.full(n, 30.0), np.full(50, 20.0)], 0.5)  # what lies far below does not compete
    assert far == pytest.approx((got, spread), abs=1e-3)


def test_the_highest_torque_is_without_what_noise_adds():
    rng = np.random.default_rng(5)
    found = [highest_of(40 + rng.normal(0, 0.5, 200), 9)[0] for _ in range(60)]
    assert np.mean(found) == pytest.approx(40, abs=0.1)
    assert highest_of(np.linspace(1, 3, 20), 5) == (pytest.approx(3.0), pytest.approx(0.0, abs=1e-6))
    few = np.array([1.0, 4, 2, 2, 3, 1, 2])
    assert highest_of(few, 3) == (4.0, pytest.approx(few.std()))


# ---------------------------------------------------------------------- the rise, the top, the levels
def pace(k):
    """Give a rise along t^(1/k): straight for 1, ever slower for more."""
    t = np.arange(0, 4.0, 0.005)
    return t, 40 * (t / 4) ** (1 / k)


@pytest.mark.parametrize(("k", "fading"), [(1.0, False), (1.3, False), (3.0, False), (3.5, True)])
def test_a_hand_that_fades_takes_ever_longer(k, fading):
    """Along t^(1/k) a share is reached after its k-th power: the last part takes 1.45 (3) or 1.59 (3.5) of the bend."""
    assert fades(*pace(k), 40.0) is fading


@pytest.mark.parametrize(("held", "fading"), [(0.5, True), (4.5, True), (5.5, False)])
def test_whoever_turns_on_did_not_fade(held, fading):
    """An approach with a time constant of a second; held on for longer than it took to come up, it turned."""
    t = np.arange(0, 3.5 + held, 0.005)
    x = 40 * (1 - np.exp(-t)) / (1 - math.exp(-3.5))
    assert fades(t, np.minimum(x, 40.0), 40.0) is fading


@pytest.mark.parametrize(
    ("bend", "last", "end", "fading"),
    [
        (15.0, 20.0, 179.0, True),
        (15.0, 20.0, 180.0, False),  # held for twice its rise: it turned on
        (9.5, 6.7, 100.0, True),  # paces of 50, 63.3 and 95.7 s: 1.27 and 1.51 times
        (9.3, 8.0, 100.0, False),  # 1.24 times
        (9.5, 6.6, 100.0, False),  # 1.49 times
    ],
)
def test_paces_and_turning_on_at_their_borders(bend, last, end, fading):
    """Readings too far apart to be smoothed: 50 % after 10 s, 70 % after 20 s, 85 % after the bend, then 90, 97 %."""
    t = 100 + np.array([0, 10, 20, 20 + bend, 25 + bend, 25 + bend + last, end])
    assert fades(t, np.array([0, 0.5, 0.7, 0.85, 0.9, 0.97, 0.98]), 1.0) is fading


def release(stay, fall, up=1.0):
    t = np.arange(0, 1 + up + stay + fall + 0.5, 0.002)
    x = np.interp(t, [0.5, 0.5 + up, 0.5 + up + stay, 0.5 + up + stay + fall], [0, 40, 30, 0])
    return t, x, int(np.argmax(x))


@pytest.mark.parametrize(
    ("stay", "fall", "up", "stays"),
    [(0.6, 0.2, 1.0, True), (0.12, 0.05, 1.0, False), (0.6, 2.0, 1.0, False), (0.6, 0.2, 0.2, False)],
)
def test_a_slip_stays_up_longer_than_its_release_takes(stay, fall, up, stays):
    """From 95 to 50 % against the way from 50 to 30 %: twice as long, 0.2 s at least, and no knock of 0.2 s."""
    t, x, at = release(stay, fall, up)
    assert slipping.stays_up(t, x, at) is stays


@pytest.mark.parametrize(("held", "cut"), [(0.15, False), (0.25, True)])
def test_a_straight_ramp_that_is_cut_off_holds(held, cut):
    t = np.arange(0, 1.0 + held, 0.005)
    x = np.minimum(40 * t, 40.0)
    assert slipping.cut_off(t, x, 40.0) is cut
    assert not slipping.cut_off(t, x, 50.0)


def test_one_level_or_several():
    steady = np.ones(1000, bool)
    one = np.linspace(40, 44, 1000)  # 9 % from the 5th to the 95th in a hundred
    assert longest_level(one, steady, 20)[0].all()
    assert longest_level(one, steady, 20)[1] == 0
    two = np.r_[np.full(600, 40.0), np.full(400, 50.0)]
    held, other = longest_level(two, steady, 20)
    assert held[:580].all()
    assert not held[630:].any()
    assert other == pytest.approx(50, abs=2.5)  # the middle of a band of twelve per cent
    short, none = longest_level(np.r_[np.full(750, 40.0), np.full(250, 50.0)], steady, 20)
    assert short[:730].all()
    assert none == 0
    passing = 40 + 10 * np.sign(np.sin(np.arange(1000) / 4))
    assert not longest_level(passing, steady, 3)[0].any()


def rows(*stretches):
    """Give ``count`` readings of each level, one after the other, all of them steady."""
    x = np.concatenate([np.full(count, level) for level, count in stretches])
    return x, np.ones(len(x), bool)


@pytest.mark.parametrize(
    ("stretches", "held", "other"),
    [
        (((100.0, 60), (150.0, 30)), 60, 156.0),  # a band is 12 wide; half as long is a rival
        (((100.0, 60), (150.0, 29)), 60, 0.0),
        (((100.0, 50), (112.0, 10), (150.0, 29)), 60, 0.0),  # both ends of the band are of it
        (((100.0, 50), (112.1, 10), (150.0, 25)), 50, 156.0),
        (((100.0, 60), (130.0, 35), (50.0, 35)), 60, 56.0),  # the farther of two
        (((100.0, 30), (150.0, 5), (100.0, 30)), 60, 0.0),  # half of it on end
        (((100.0, 10), (150.0, 5), (100.0, 50)), 60, 0.0),
        (((100.0, 29), (150.0, 5), (100.0, 29), (150.0, 5), (100.0, 2)), 0, 0.0),
        (((-100.0, 60), (-150.0, 30)), 60, -144.0),
        (((100.0, 40), (115.0, 14), (150.0, 46)), 46, 106.9),  # the median, 115, says how wide a band is
    ],
)
def test_the_level_that_lasted_longest_by_count(stretches, held, other):
    marked, far = longest_level(*rows(*stretches), 1)
    assert marked.sum() == held
    assert far == pytest.approx(other)


@pytest.mark.parametrize(("low", "high", "one"), [(92.5, 107.5, False), (92.6, 107.5, True), (92.5, 107.4, True)])
def test_one_level_spreads_by_less_than_fifteen_hundredths(low, high, one):
    """Of 200 values the 11th and the 191st, against the 101st."""
    ordered = np.r_[np.zeros(10), low, np.full(179, 100.0), high, np.full(9, 200.0)]
    assert levels._keeps_one(ordered) == one
    assert levels._keeps_one(np.empty(0))


def test_what_only_shakes_is_one_level():
    """To and fro by 20 N·m; the mean of three lies 6.7 N·m off."""
    marked, other = longest_level(100 + 20 * np.resize([1.0, -1.0], 99), np.ones(99, bool), 3)
    assert marked.all()
    assert other == 0.0


@pytest.mark.parametrize(("share", "told"), [(1.047, False), (1.049, True)])
def test_a_peak_is_distinct_from_five_per_cent_on(share, told):
    assert is_distinct(40 * share, 40.0) is told


@pytest.mark.parametrize("count", [8, 16])
def test_a_climb_is_seen_from_eight_readings_on(count):
    """Of a straight line from 10 N·m up by 1 each: between the middles of the first and the last of eight parts."""
    x = 10.0 + np.arange(count)
    assert plateau._climb(x) == pytest.approx((x[-count // 8 :].mean() - x[: count // 8].mean()) / x.mean())
    assert plateau._climb(-x[::-1]) == pytest.approx(plateau._climb(x))
    assert plateau._climb(x[:7]) == 0.0


@pytest.mark.parametrize(("bent", "climbs"), [(0.09, True), (0.11, False)])
def test_a_climb_is_straight_within_a_tenth_of_it(bent, climbs):
    """Up by 7 N·m over eight parts, off the line by turns (root mean square, with what the turns add to the slope)."""
    turns = np.array([1.0, -1, -1, 1, 1, -1, -1, 1])  # neither a mean nor a slope
    assert (plateau._climb(100 + np.arange(8) + 7 * bent * turns) > 0) is climbs


def test_eight_values_tell_their_noise():
    """Second differences of ± 1: 4 in magnitude; of that the 0.6745-th part over √6 is their noise."""
    values = 30 + (-1.0) ** np.arange(8)
    assert highest_of(values[:7], 3) == (31.0, pytest.approx(values[:7].std()))
    assert highest_of(values, 3)[0] < 31.0 - 1.0
