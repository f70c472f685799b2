"""Decisions of conformity: JCGM 106, ILAC-G8, ISO 14253-1 and laboratory examples against our limits and risks."""

from __future__ import annotations

import math

import pytest

from analysis.to_axle.dial import CERTIFIED_FROM, WIDEST_MARKS, Dial
from analysis.verdict.limits import Bounds, Guard, Rule, State, decide, guard_band, probability_within
from analysis.verdict.risk import Population, gamma_population, normal_population, risks
from logger.header import Limit


def _bounds(lower: float | None, upper: float | None) -> Bounds:
    kind = "band" if None not in (lower, upper) else "min" if upper is None else "max"
    return Bounds(
        Limit(quantity="breakaway", kind=kind, unit="N·m", source="test", lower=lower, upper=upper), lower, upper
    )


BEARING = "JCGM 106, 9.5.4 (ball bearing)"


@pytest.mark.published(BEARING, rows=("4.1", "4.2"), status="READ-S")
def test_ball_bearing_risk():
    """Radial error, at most 2 µm, a gamma(4, 4) population: 4.2 % beyond; inspected with u = 0.25 µm: 0.8 % passed."""
    population = gamma_population(4, 4)
    beyond, _ = risks(population, 0.0, None, 2.0, guard=-math.inf)
    assert beyond == pytest.approx(0.04238, abs=5e-5)
    consumer, _ = risks(population, 0.25, None, 2.0)
    assert consumer == pytest.approx(0.00802, abs=5e-5)


@pytest.mark.published(BEARING + ", guard band for 0.1 % risk (library value)", rows=("4.3",), status="READ-S")
def test_ball_bearing_guard_band():
    narrow, wide = (risks(gamma_population(4, 4), 0.25, None, 2.0, guard=g)[0] for g in (0.327, 0.329))
    assert narrow > 0.001 > wide


SHEET = "Laboratory risk sheet (via an open-source test suite)"


@pytest.mark.parametrize(
    ("value", "u", "low", "high"),
    [
        pytest.param(10, 0.4, 0.00621, 0.00621, marks=pytest.mark.published(SHEET, rows=("4.4",), status="READ-S")),
        pytest.param(10.5, 0.4, 0.00009, 0.10565, marks=pytest.mark.published(SHEET, rows=("4.5",), status="READ-S")),
        pytest.param(12, 0.4, 0.0, 0.99379, marks=pytest.mark.published(SHEET, rows=("4.6",), status="READ-S")),
    ],
)
def test_specific_risk(value, u, low, high):
    assert 1 - probability_within(value, u, 9, None) == pytest.approx(low, abs=5e-6)
    assert 1 - probability_within(value, u, None, 11) == pytest.approx(high, abs=5e-6)
    assert 1 - probability_within(value, u, 9, 11) == pytest.approx(low + high, abs=1.1e-5)


API = "Open-source uncertainty package, manual (specific and global risk)"


@pytest.mark.published(API, rows=("4.7",), status="READ-S")
def test_measured_near_the_upper_limit():
    assert 1 - probability_within(9.8, 0.1, 9, 10) == pytest.approx(0.02275, abs=5e-6)


@pytest.mark.published(API, rows=("4.8",), status="READ-S")
def test_global_risk():
    population = normal_population(9.5, 0.3)
    beyond, _ = risks(population, 0.0, 9, 10, guard=-math.inf)
    assert beyond == pytest.approx(0.095, abs=6e-4)
    consumer, producer = risks(population, 0.1, 9, 10)
    assert consumer == pytest.approx(0.018942, abs=5e-6)
    assert producer == pytest.approx(0.037208, abs=5e-6)


@pytest.mark.published(API, rows=("4.9",), status="READ-S")
def test_guard_band_for_a_risk():
    narrow, wide = (risks(normal_population(9.5, 0.3), 0.1, 9, 10, guard=g)[0] for g in (0.09205, 0.09215))
    assert narrow > 0.005 > wide


RP_19 = "NCSLI RP-19 draft (via an open-source test suite)"
IN_TOLERANCE = {0.60: 0.8416212336, 0.70: 1.0364333895, 0.80: 1.2815515655, 0.90: 1.6448536270, 0.95: 1.9599639845,
                0.99: 2.5758293035}  # fmt: skip


@pytest.mark.published(RP_19, rows=("4.10", "4.11"), status="READ-S")
@pytest.mark.parametrize(
    ("in_tolerance", "share", "conditional"),
    [
        (0.60, 4.83860326, 8.26008199),
        (0.70, 3.92234109, 5.72322042),
        (0.80, 2.85583037, 3.63227145),
        (0.90, 1.59995312, 1.79880430),
        (0.95, 0.87100925, 0.92389664),
        (0.99, 0.19991684, 0.20243866),
    ],
)
def test_false_accept_by_in_tolerance_probability(in_tolerance, share, conditional):
    """Unit population, measured with a quarter of its spread; the conditional share is of those accepted."""
    limit = IN_TOLERANCE[in_tolerance]
    consumer, producer = risks(normal_population(0, 1), 0.25, -limit, limit)
    accepted = in_tolerance - producer + consumer
    assert consumer * 100 == pytest.approx(share, abs=1e-6)
    assert consumer / accepted * 100 == pytest.approx(conditional, abs=1e-5)


DEAVER = "Deaver, guard banding (via an open-source test suite)"


@pytest.mark.published(DEAVER, rows=("4.12",), status="READ-S")
def test_four_to_one():
    consumer, producer = risks(normal_population(0, 1), 0.25, -2, 2)
    assert (consumer, producer) == pytest.approx((0.008, 0.015), abs=6e-4)


@pytest.mark.published(DEAVER, rows=("4.13",), status="READ-S")
def test_two_to_one_with_guard():
    consumer, producer = risks(normal_population(0, 1), 0.5, -2, 2, guard=2 * (1 - 0.91))
    assert consumer == pytest.approx(0.008, abs=5e-4)
    assert producer == pytest.approx(0.066, abs=1e-3)


ILAC = "ILAC-G8:09/2019"


@pytest.mark.published(ILAC + ", binary statement, simple acceptance", rows=("4.15",), status="READ-P")
def test_simple_acceptance_shares_the_risk():
    """w = 0: the acceptance limit is the limit; right at it half of all decisions are wrong."""
    result = decide(11.0, 0.1, _bounds(9, 11), rule=Rule.SIMPLE)
    assert result.state is State.WITHIN
    assert result.probability == pytest.approx(0.5)
    assert decide(11.0 + 1e-9, 0.1, _bounds(9, 11), rule=Rule.SIMPLE).state is State.OUTSIDE


# ILAC-G8:09/2019, guard band: not counted as a row, for any value would pass.
def test_guard_band_moves_the_acceptance_limit():
    """w = TL - AL: within up to AL = TL - w, and not beyond."""
    w = guard_band(0.1)
    assert decide(11 - w - 1e-9, 0.1, _bounds(9, 11)).state is State.WITHIN
    assert decide(11 - w + 1e-9, 0.1, _bounds(9, 11)).state is State.TOO_CLOSE
    assert decide(11 + w + 1e-9, 0.1, _bounds(9, 11)).state is State.OUTSIDE


@pytest.mark.published("Laboratory decision-rule pages, w = U", rows=("4.17",), status="READ-S")
def test_guard_band_of_u_risks_less_than_two_and_a_half_percent():
    """With k = 2 the risk right at the acceptance limit is 2.275 %; with our k = 1.96 it is 2.5 % at most."""
    assert 1 - probability_within(11 - 2 * 0.1, 0.1, None, 11) == pytest.approx(0.02275, abs=5e-6)
    assert 1 - decide(11 - guard_band(0.1), 0.1, _bounds(None, 11)).probability == pytest.approx(0.025, abs=1e-6)


@pytest.mark.published("Laboratory decision-rule pages, w = 1.5 U and 3 U", rows=("4.18",), status="READ-S")
@pytest.mark.parametrize(("times", "risk", "tol"), [(1.5, 0.00135, 5e-6), (3, 9.9e-10, 1e-11)])
def test_wider_guard_bands(times, risk, tol):
    upper = 11.0
    assert 1 - probability_within(upper - times * 2 * 0.1, 0.1, None, upper) == pytest.approx(risk, abs=tol)


@pytest.mark.published("ISO 14253-1:2017, default guard band (laboratory pages)", rows=("4.19",), status="READ-S")
def test_one_sided_guard_band():
    """w = 1.65 u = 0.83 U (k = 2): risk below 5 %."""
    w = guard_band(0.1, guard=Guard.ONE_SIDED)
    assert w == pytest.approx(1.65 * 0.1, abs=5.5e-4)
    assert w / (2 * 0.1) == pytest.approx(0.83, abs=0.008)
    assert 1 - decide(11 - w, 0.1, _bounds(None, 11), guard=Guard.ONE_SIDED).probability == pytest.approx(
        0.05, abs=1e-4
    )


@pytest.mark.published("Public question: 10 ± 1, U 0.2 (acceptance limits computed)", rows=("4.20",), status="CALC")
@pytest.mark.parametrize(
    ("rule", "guard", "half"),
    [(Rule.SIMPLE, Guard.U95, 1.0), (Rule.ACCEPTANCE, Guard.ONE_SIDED, 0.8355), (Rule.ACCEPTANCE, Guard.U95, 0.804)],
)
def test_acceptance_limits(rule, guard, half):
    """U = 0.2 with k = 2, so u = 0.1; the printed ± 0.834 and ± 0.8 round 1.645 and use k = 2."""
    for sign in (-1, 1):
        assert decide(10 + sign * (half - 0.001), 0.1, _bounds(9, 11), rule=rule, guard=guard).state is State.WITHIN
        assert decide(10 + sign * (half + 0.001), 0.1, _bounds(9, 11), rule=rule, guard=guard).state is State.OUTSIDE


# Micrometer, MPE ± 0.003 mm, U 0.0010 mm (laboratory page): not counted as a row, for any value would pass.
@pytest.mark.parametrize(("deviation", "state"), [(0.0017, State.WITHIN), (0.0025, State.OUTSIDE)])
def test_micrometer(deviation, state):
    bounds = _bounds(-0.003, 0.003)
    assert decide(deviation, 0.0005, bounds, rule=Rule.ACCEPTANCE).state is state


def _p_c(row):
    return pytest.mark.published("JCGM 106, clause 7 (from memory)", rows=(row,), status="MEM")


@pytest.mark.parametrize(
    ("value", "u", "lower", "upper", "probability", "tol"),
    [
        pytest.param(-5.47, 0.05, None, -5.40, 0.92, 0.005, marks=_p_c("4.22")),
        pytest.param(509.7, 8.6, 490, None, 0.99, 0.005, marks=_p_c("4.23")),
        pytest.param(13.6, 1.8, 12.5, 16.3, 0.66, 0.005, marks=_p_c("4.24")),
    ],
)
def test_probability_of_conformity(value, u, lower, upper, probability, tol):
    assert probability_within(value, u, lower, upper) == pytest.approx(probability, abs=tol)


@pytest.mark.published("JCGM 106, table 1 (from memory)", rows=("4.25",), status="MEM")
@pytest.mark.parametrize(("z", "p"), [(0.84, 0.80), (1.28, 0.90), (1.64, 0.95), (2.33, 0.99), (3.09, 0.999)])
def test_probability_against_z(z, p):
    assert probability_within(z, 1.0, 0.0, None) == pytest.approx(p, abs=0.0016)


@pytest.mark.published("JCGM 106, resistors (outputs computed)", rows=("4.26",), status="CALC")
def test_resistors():
    """1500 ± 0.2 ohm, process u 0.12, inspection u 0.04, accepted within ± 0.18."""
    population = Population(normal_population(1500, 0.12).density, 1500 - 1.44, 1500 + 1.44)
    consumer, producer = risks(population, 0.04, 1499.8, 1500.2, guard=0.02)
    assert consumer == pytest.approx(0.0099, abs=5e-5)
    assert producer == pytest.approx(0.0690, abs=5e-5)
    beyond, _ = risks(population, 0.0, 1499.8, 1500.2, guard=-math.inf)
    assert 1 - beyond == pytest.approx(0.904, abs=5e-4)


@pytest.mark.published("TM 1-1500-204-23-9, table 8-1 (torque tools)", rows=("4.27",), status="READ-P")
def test_torque_tool_class():
    """± 4 % of reading from 20 % of full scale (1000 lbf·ft); best 30 to 80 %; marks at most a tenth of the reading."""
    tool = Dial(marks=5.0, limit_of_error=0.04, full_scale=1000.0)
    assert tool.half_width(500.0) == pytest.approx(20.0)
    assert tool.half_width(CERTIFIED_FROM * 1000) == tool.half_width(20.0) == pytest.approx(8.0)
    assert (CERTIFIED_FROM, WIDEST_MARKS) == (0.20, 0.10)
    assert tool.doubts(500.0) == ()
    assert any("below the certified part" in text for text in tool.doubts(199.0))
    assert any("marks are 11 % of the reading" in text for text in tool.doubts(45.0))
