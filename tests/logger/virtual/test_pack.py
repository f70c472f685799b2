"""The friction element against the papers it comes from.

Sources: [1] C. Canudas de Wit, H. Olsson, K. J. Åström, P. Lischinsky, "A new model for control of systems with
friction", IEEE Trans. Automatic Control 40 (1995) 419-425. [2] K. J. Åström, C. Canudas de Wit, "Revisiting the LuGre
friction model", IEEE Control Systems Magazine 28 (December 2008) 101-114.
"""

from dataclasses import replace
from math import sqrt

import numpy as np
import pytest

from logger.virtual.pack import Friction, bristles, wavy_path
from tests.analysis.draws import stable_sliding

# [1] table I, as quoted in a public repository; forces in N, distances in m: the equations are the same.
TABLE_1 = Friction(1.0, 1.5, 0.001, 2.0, 0.4, 1e5, sqrt(1e5))
# [2] caption of figure 4.
FIGURE_4 = Friction(2.94, 5.88, 0.001, 1.0, 0.0, 2940.0, 108.0)


def slide(friction, mass, step, force, start=(0.0, 0.0, 0.0)):
    """Move a mass on the element under ``force(time, position)``; give time, position, speed, friction force."""
    linear = bristles(friction, step)
    x, v, z = start
    rows = []
    for i in range(10**9):
        time = i * step
        push = force(time, x)
        if push is None:
            return np.array(rows).T
        guess = abs(v)
        for _ in range(8):
            a, b, d = linear(guess, z, 0.0, 0.0)
            new = (push + mass / step * v - a) / (mass / step + b)
            if abs(abs(new) - guess) <= 1e-9 + 1e-6 * guess:
                break
            guess = abs(new)
        z = (z + step * new) / d
        x, v = x + step * new, new
        rows.append((time + step, x, v, a + b * new))
    raise AssertionError


@pytest.mark.published("Canudas de Wit et al. 1995 (friction model), table I", rows=("8.1",), status="READ-S")
@pytest.mark.published("computed from the paper's steady curve", rows=("8.2",), status="CALC")
@pytest.mark.parametrize(
    ("speed", "force"), [(1e-9, 1.5), (0.0005, 1.38960), (0.001, 1.18434), (0.002, 1.00996), (0.005, 1.00200)]
)
def test_steady_curve(speed, force):
    assert TABLE_1.steady_nm(speed) == pytest.approx(force, abs=5e-6)
    assert TABLE_1.steady_nm(-speed) == pytest.approx(-force, abs=5e-6)


@pytest.mark.parametrize("speed", [0.0005, 0.001, 0.005])
def test_steady_sliding_reaches_the_steady_curve(speed):
    """At constant speed the element settles on the curve of the paper's formula."""
    heavy = 1e9  # nothing changes the speed of this mass
    _, _, v, force = slide(TABLE_1, heavy, 1e-4, lambda t, _x: None if t > 0.5 else 0.0, (0.0, speed, 0.0))
    assert v[-1] == pytest.approx(speed, rel=1e-3)
    assert force[-1] == pytest.approx(TABLE_1.steady_nm(v[-1]), rel=1e-5)


@pytest.mark.published("Canudas de Wit et al. 1995 (friction model), figure 2", rows=("8.3",), status="READ-S")
def test_presliding_is_no_gross_sliding():
    """Ramp of 0.1425 N/s to 95 % of the static level, hold, reverse: micrometres, and a loop that returns."""
    top, rate = 1.425, 0.1425

    def force(time, _x):
        if time > 45.0:
            return None
        if time < 10.0:
            return rate * time
        return top if time < 15.0 else max(-top, top - rate * (time - 15.0))

    time, x, v, _ = slide(TABLE_1, 1.0, 2e-4, force)
    elastic = TABLE_1.static_nm / TABLE_1.stiffness_nm_rad
    assert np.abs(x).max() < 5 * elastic
    assert np.abs(v[time > 0.1]).max() < 0.05 * TABLE_1.stribeck_rad_s
    assert abs(v[np.searchsorted(time, 14.9)]) < 0.5 * elastic
    assert x[-1] < 0 < x[np.searchsorted(time, 15.0)]


# Row 8.5: computed with a stiff Radau solver at a relative tolerance of 1e-9 (printed nowhere).
BREAK_AWAY = {1.0: 1.4324, 2.0: 1.3944, 5.0: 1.3132, 10.0: 1.2200, 20.0: 1.0986, 30.0: 1.0245}


def break_away(rate, step):
    _, _, _, force = slide(TABLE_1, 1.0, step, lambda t, _x: None if t > 1.6 / rate + 0.05 else rate * t)
    falling = np.flatnonzero(np.diff(force) < 0)
    return float(force[falling[0]])


@pytest.mark.published("Canudas de Wit et al. 1995 (friction model), figure 4", rows=("8.4",), status="READ-S")
def test_break_away_falls_as_the_force_rises_faster():
    forces = [break_away(rate, 1e-4) for rate in (1.0, 2.0, 5.0, 10.0, 20.0, 30.0)]
    assert np.all(np.diff(forces) < 0)
    assert 0.9 < min(forces) < max(forces) < 1.5


@pytest.mark.published("computed with a stiff solver", rows=("8.5",), status="CALC")
@pytest.mark.parametrize(("rate", "expected"), BREAK_AWAY.items())
def test_break_away_against_a_stiff_solver(rate, expected):
    """At a step of 10 µs within 0.2 %."""
    assert break_away(rate, 1e-5) == pytest.approx(expected, rel=2e-3)


def drawn(speed, stiffness, until, friction=FIGURE_4, step=1e-4, mass=1.0):
    """Draw a mass through a spring at constant speed."""
    return slide(friction, mass, step, lambda t, x: None if t > until else stiffness * (speed * t - x))


@pytest.mark.parametrize("friction", [FIGURE_4, replace(FIGURE_4, stiffness_nm_rad=1.47e6, damping_nms=2.42e3)])
def test_stick_slip_against_a_stiff_solver(friction):
    """The paper's equations by scipy's Radau method, with the parameters of figure 4 and with its stiffer bristles."""
    from scipy.integrate import solve_ivp

    def derivatives(t, y):
        x, v, z = y
        level = friction.coulomb_nm + (friction.static_nm - friction.coulomb_nm) * np.exp(
            -abs(v) / friction.stribeck_rad_s
        )
        rate = v - friction.stiffness_nm_rad * abs(v) / level * z
        force = friction.stiffness_nm_rad * z + friction.damping_nms * rate
        return [v, 2.0 * (2.0 * t - x) - force, rate]

    exact = solve_ivp(derivatives, (0, 5), (0, 0, 0), method="Radau", rtol=1e-8, atol=1e-11, max_step=0.01)
    time, x, v, _ = drawn(2.0, 2.0, 5.0, friction, step=2e-5)
    assert v.max() == pytest.approx(exact.y[1].max(), rel=1e-3)
    assert (2.0 * time - x).max() == pytest.approx((2.0 * exact.t - exact.y[0]).max(), rel=1e-3)


@pytest.mark.published(
    "Åström, Canudas de Wit 2008 (stick-slip), figure 4 and p. 106", rows=("8.6", "8.7"), status="READ-P"
)
def test_stick_slip_follows_the_hybrid_model():
    """From where it lets go (l = ls) ``m (v - vp)^2 + k (l - lc)^2`` is constant; it sticks again at ``2 lc - ls``."""
    speed, stiffness = 2.0, 2.0
    time, x, v, _ = drawn(speed, stiffness, 16.0)
    stretch = speed * time - x
    starts = np.flatnonzero((v[1:] > 0.1) & (v[:-1] <= 0.1))
    ends = np.flatnonzero((v[1:] < 0.1) & (v[:-1] >= 0.1))
    assert len(ends) >= 3
    lc = 2.94 / stiffness
    assert stretch[ends] == pytest.approx(2 * lc - stretch[starts[: len(ends)]], rel=0.01)
    for start, end in zip(starts, ends, strict=False):
        slip = slice(start + 1000, end - 100)
        circle = (v[slip] - speed) ** 2 + stiffness * (stretch[slip] - lc) ** 2
        assert np.ptp(circle) < 0.01 * circle.mean()


@pytest.mark.published("computed from the hybrid model's circle", rows=("8.8",), status="CALC")
def test_stick_slip_tends_to_the_hybrid_model_as_bristles_stiffen():
    """Peak Fs = 5.88, speed 4.885, stick time 1.47 s: the limit of stiff bristles."""
    peaks = []
    for stiffness in (2940.0, 1.47e6, 1.47e8):
        friction = replace(FIGURE_4, stiffness_nm_rad=stiffness, damping_nms=2 * sqrt(stiffness))
        time, _, v, force = drawn(2.0, 2.0, 16.0, friction)
        peaks.append(force.max())
    assert np.all(np.diff(peaks) > 0)
    assert peaks[-1] == pytest.approx(5.88, rel=0.01)
    assert v.max() == pytest.approx(4.885, rel=0.01)
    starts = time[:-1][(v[1:] > 0.01) & (v[:-1] <= 0.01)]
    ends = time[:-1][(v[1:] < 0.01) & (v[:-1] >= 0.01)]
    assert starts[1:] - ends[: len(starts) - 1] == pytest.approx(1.47, rel=0.02)


@pytest.mark.published("Åström, Canudas de Wit 2008 (stick-slip), equation 27", rows=("8.9",), status="READ-P")
@pytest.mark.parametrize(
    ("speed", "viscous", "stable"),
    [
        (0.0005, 0.0, False),
        (0.002, 1.0, False),
        (0.003, 0.02, False),
        (0.005, 60.0, True),
        (0.02, 1.0, True),
    ],
)
def test_criterion_says_what_the_element_does(speed, viscous, stable):
    """Drawn from steady sliding, slightly disturbed: the disturbance grows where the criterion says so."""
    friction = replace(FIGURE_4, viscous_nms=viscous)
    stiffness = 200.0
    assert stable_sliding(friction, 1.0, stiffness, speed) == stable
    level = friction.steady_nm(speed)
    steady = (0.0, 1.001 * speed, (level - viscous * speed) / friction.stiffness_nm_rad)
    _, _, v, _ = slide(
        friction, 1.0, 2e-5, lambda t, x: None if t > 1.0 else level + stiffness * (speed * t - x), steady
    )
    grown = np.abs(v - speed).max() / (0.001 * speed)
    assert grown < 1.5 if stable else grown > 10


def test_criterion_knows_both_answers():
    assert stable_sliding(replace(FIGURE_4, viscous_nms=1.0), 1.0, 200.0, 0.02)
    assert not stable_sliding(FIGURE_4, 1.0, 200.0, 0.0005)


def test_contacts_age_with_the_logarithm_of_the_rest():
    """Ten times the rest adds the same amount each time (logarithmic ageing, from memory)."""
    friction = Friction(10.0, 12.0, ageing_nm=0.5, stiffness_nm_rad=1e4)
    linear = bristles(friction, 1e-3)
    strengths = []
    for age in (10.0, 100.0, 1000.0):
        _, _, d = linear(1.0, 0.0, age, 0.0)
        strengths.append(1e4 * 1e-3 / (d - 1.0))
    steps = np.diff(strengths)
    assert steps[0] == pytest.approx(0.5 * np.log(101 / 11), rel=1e-6)
    assert steps[1] == pytest.approx(0.5 * np.log(10), rel=0.01)


def test_running_in_lowers_the_level_by_its_share():
    friction = Friction(40.0, 48.0, run_in=0.25, run_in_rad=10.0)
    assert friction.after(0.0).coulomb_nm == pytest.approx(50.0)
    assert friction.after(1e4).coulomb_nm == pytest.approx(40.0)
    assert friction.after(10.0).static_nm == pytest.approx(48.0 * (1 + 0.25 / np.e))


def test_path_has_mean_one_and_its_orders():
    path = wavy_path((0.03, 0.01), (0.2, 1.0), 0.0, np.random.default_rng(1))
    assert path.mean() == pytest.approx(1.0, abs=1e-12)
    orders = np.abs(np.fft.rfft(path))[:4] * 2 / path.size
    assert orders[1:] == pytest.approx([0.03, 0.01, 0.0], abs=1e-12)
    rough = wavy_path((), (), 0.02, np.random.default_rng(1))
    assert rough.std() == pytest.approx(0.02, rel=1e-6)
