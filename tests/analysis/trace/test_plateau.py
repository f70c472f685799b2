"""The steady level: which time counts, and how well its mean is known."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import lfilter

from analysis.trace import plateau
from analysis.trace.averaging import autocorrelation, mean_uncertainty
from analysis.trace.plateau import find_plateau
from analysis.trace.stickslip import Cycles, find_cycles

RATE = 500.0


def slipping(seconds=4.0, level=40.0):
    t = np.arange(round(seconds * RATE)) / RATE
    return t, level * (1 + 0.004 * np.sin(2 * np.pi * 9.3 * t))


class TestSteadyTime:
    def test_all_of_it(self):
        t, x = slipping()
        plateau = find_plateau(t, x, 0.0, 4.0)
        assert plateau.torque_nm == pytest.approx(40.0, rel=1e-3)
        assert plateau.steady_s == pytest.approx(3.65, abs=0.02)
        assert not plateau.uneven

    def test_one_reading_is_no_stretch(self):
        t = np.arange(17) * 1e4  # one reading in three hours
        x = np.interp(t, [0, 11e4, 16e4], [0, 7.674, 5.284])
        found = find_plateau(t, x, 9e4, 16e4)
        assert found is None or found.start_s < found.end_s

    def test_yank_is_left_out(self):
        t, x = slipping()
        yank = 25 * np.exp(-(((t - 2.0) / 0.1) ** 2))
        plateau = find_plateau(t, x + yank, 0.0, 4.0)
        assert plateau.torque_nm == pytest.approx(40.0, rel=2e-3)
        assert plateau.max_nm < 45

    def test_hesitation_is_left_out(self):
        t, x = slipping()
        x = np.where((t > 1.5) & (t < 2.2), 0.8 * x, x)
        assert find_plateau(t, x, 0.0, 4.0).torque_nm == pytest.approx(40.0, rel=2e-3)

    def test_waves_of_the_pack_are_kept(self):
        """They repeat every two turns, 24 s at 5 rpm: a level that far away is no excursion."""
        t = np.arange(round(24 * RATE)) / RATE
        x = 40 * (1 + 0.05 * np.sin(2 * np.pi * t / 24))
        plateau = find_plateau(t, x, 0.0, 24.0)
        assert plateau.steady_s > 22
        assert plateau.torque_nm == pytest.approx(40.0, rel=3e-3)

    def test_transient_is_cut_off(self):
        t, x = slipping(6.0)
        x += 6 * np.exp(-t / 0.6)
        assert find_plateau(t, x, 0.0, 6.0).torque_nm == pytest.approx(40.0, rel=6e-3)

    def test_too_short(self):
        t, x = slipping(0.5)
        assert find_plateau(t, x, 0.0, 0.5) is None

    def test_torque_that_climbs_is_marked(self):
        t, x = slipping(5.0)
        assert find_plateau(t, x * (1 + 0.08 * t), 0.0, 5.0).climbs
        assert not find_plateau(t, x, 0.0, 5.0).climbs

    def test_stick_slip_is_averaged_over_whole_cycles(self):
        """A sawtooth from 30 to 50: the time average over whole cycles is 40 wherever it begins and ends."""
        for seconds in (4.0, 4.3, 4.55, 4.8):
            t = np.arange(round(seconds * RATE)) / RATE
            x = 30 + 20 * (t % 0.8) / 0.8
            cycles = find_cycles(t, x)
            assert cycles.frequency_hz == pytest.approx(1.25, rel=0.02)
            assert find_plateau(t, x, 0.0, seconds, cycles).torque_nm == pytest.approx(40.0, rel=0.012)


def process(order, n, runs=300, seed=7):
    """Draws of an autoregressive process with unit white steps, long after its beginning."""
    steps = np.random.default_rng(seed).standard_normal((runs, n + 500))
    return lfilter([1.0], [1.0, *(-a for a in order)], steps, axis=1)[:, 500:]


def root_mean_square(draws):
    return float(np.sqrt(np.mean([mean_uncertainty(row)[0] ** 2 for row in draws])))


def share_inside(draws):
    """Share of draws whose mean lies within 1.96 of its stated uncertainty of the true mean, 0."""
    return float(np.mean([abs(row.mean()) < 1.96 * mean_uncertainty(row)[0] for row in draws]))


class TestUncertaintyOfTheMean:
    def test_white_noise(self):
        rng = np.random.default_rng(1)
        u = [mean_uncertainty(rng.standard_normal(300))[0] for _ in range(200)]
        assert np.median(u) == pytest.approx(1 / np.sqrt(300), rel=0.06)

    def test_constant(self):
        assert mean_uncertainty(np.full(100, 3.0))[0] == 0.0
        assert mean_uncertainty(np.empty(0))[0] == 0.0

    @pytest.mark.published("Zwiers and von Storch 1995 (effective sample size)", rows=("7.45",), status="READ-S")
    @pytest.mark.parametrize("n", [200, 400, 2000])
    @pytest.mark.parametrize("r1", [0.3, 0.6, 0.8])
    def test_neighbours_that_depend_on_each_other(self, r1, n):
        """A first-order process: N_eff = N (1 - r1)/(1 + r1), so the mean is known that much worse."""
        x = process((r1,), n)
        x /= x.std()
        expected = 1 / np.sqrt(n * (1 - r1) / (1 + r1))
        assert x.mean(axis=1).std() == pytest.approx(expected, rel=0.1)  # the formula itself
        assert root_mean_square(x) == pytest.approx(expected, rel=0.08)
        assert share_inside(x) > 0.9

    @pytest.mark.parametrize("order", [(1.2, -0.32), (0.5, 0.2), (1.1, -0.5)])
    def test_second_order_processes(self, order):
        """The spectrum at zero gives σ²/n/(1 - a - b)² for white steps of σ (Box and Jenkins, from memory)."""
        n = 400
        x = process(order, n)
        expected = 1 / abs(1 - sum(order)) / np.sqrt(n)
        assert x.mean(axis=1).std() == pytest.approx(expected, rel=0.1)
        assert expected * 0.95 < root_mean_square(x) < expected * 1.25  # wide rather than narrow where it swings
        assert share_inside(x) > 0.9

    def test_few_independent_readings_are_no_fault_of_the_count(self):
        """A slow process of which a stretch holds five independent readings: narrow by a fifth at most."""
        r1, n = 0.8, 50
        x = process((r1,), n)
        x /= x.std()
        assert root_mean_square(x) > 0.8 / np.sqrt(n * (1 - r1) / (1 + r1))

    def test_blocks_keep_the_answer(self):
        """Beyond 400 values block means are used: the same series read at a finer grid gives the same."""
        rng = np.random.default_rng(3)
        slow = np.convolve(rng.standard_normal(430), np.ones(30) / 30, "valid")
        fine = np.repeat(slow, 10) + 0.01 * rng.standard_normal(4010)
        assert mean_uncertainty(fine)[0] == pytest.approx(mean_uncertainty(slow)[0], rel=0.1)

    def test_autocorrelation_of_a_wave(self):
        t = np.arange(1000)
        rho = autocorrelation(np.sin(2 * np.pi * t / 50))
        assert rho[0] == 1
        assert rho[25] == pytest.approx(-0.975, abs=0.01)
        assert rho[50] == pytest.approx(0.95, abs=0.01)


@pytest.mark.parametrize(
    ("start_s", "end_s", "by_cycles"),
    [(3.0, 9.0, True), (3.0, 8.8, True), (3.0, 8.7, False), (1.0, 6.8, True), (1.0, 6.7, False)],
)
def test_cycles_over_seven_tenths_of_a_slip_are_its_time(start_s, end_s, by_cycles):
    """Of 9.65 s: 6.755 s, in cycles of a second from the first fall to the last and one more."""
    t = np.arange(1001) / 100
    cycles = Cycles(start_s, end_s, 1.0, 4.0, ())
    times, x, first, short_s, band = plateau._slip(t, t + 1, 0.0, 10.0, cycles)
    assert (times[0], first) == ((start_s, round(100 * start_s)) if by_cycles else (0.2, 20))
    assert times[-1] == pytest.approx(end_s - 0.01 if by_cycles else 9.84)
    assert (short_s, band) == ((1.0, 0.12) if by_cycles else (0.25, 0.045))
    assert np.array_equal(x, times + 1)
    quick = plateau._slip(t, t, 0.0, 10.0, Cycles(1.0, 9.0, 5.0, 4.0, ()))
    assert quick[3:] == (0.25, 0.12)  # no shorter than the short time


@pytest.mark.parametrize(("long_s", "start_s", "end_s"), [(10.0, 0.2, 9.85), (1.0, 0.1, 0.85), (0.4, 0.04, 0.3)])
def test_what_swings_and_what_is_let_go_take_a_part_of_a_short_slip(long_s, start_s, end_s):
    """0.2 s and a tenth at most; 0.15 s and a quarter at most."""
    assert plateau._settled(5.0, 5.0 + long_s) == (pytest.approx(5 + start_s), pytest.approx(5 + end_s))
