"""A dead-weight torque tester's arms and weights, through the dead-weight fixture."""

from __future__ import annotations

import pytest

from analysis.to_axle.fixtures import fixture_from
from logger.edges.units import parse_quantity, torque_factor
from logger.header import Lever

TORQUE_TESTER = "TB 9-6695-301-50, table 3 (dead-weight torque tester)"


@pytest.mark.parametrize(
    ("arm_in", "weight_lb", "lbf_in", "lbf_ft"),
    [
        pytest.param(2.5, 24, 60, 5, marks=pytest.mark.published(TORQUE_TESTER, rows=("5.1a",), status="READ-P")),
        pytest.param(10, 24, 240, 20, marks=pytest.mark.published(TORQUE_TESTER, rows=("5.1b",), status="READ-P")),
        pytest.param(10, 120, 1200, 100, marks=pytest.mark.published(TORQUE_TESTER, rows=("5.1c",), status="READ-P")),
        pytest.param(40, 150, 6000, 500, marks=pytest.mark.published(TORQUE_TESTER, rows=("5.1d",), status="READ-P")),
    ],
)
def test_dead_weight_ranges(arm_in, weight_lb, lbf_in, lbf_ft):
    """Arm x weight, through our dead-weight fixture under standard gravity."""
    fixture = fixture_from(Lever(fixture="dead weight", radius_mm=arm_in * 25.4))
    torque = fixture.factor * parse_quantity(f"{weight_lb} lb", "mass")
    assert torque / torque_factor("lbf·in") == pytest.approx(lbf_in, rel=1e-9)
    assert torque / torque_factor("lbf·ft") == pytest.approx(lbf_ft, rel=1e-9)


@pytest.mark.published(TORQUE_TESTER, rows=("5.1e",), status="READ-P")
@pytest.mark.parametrize(("tolerance_in", "arm_in"), [(0.02, 40), (0.005, 10), (0.0015, 2.5)])
def test_arm_tolerance_in_the_budget(tolerance_in, arm_in):
    """The nominal length may be used within these tolerances: 0.05, 0.05 and 0.06 % of the torque."""
    lever = Lever(fixture="dead weight", radius_mm=arm_in * 25.4, radius_mm_u=tolerance_in * 25.4)
    fixture = fixture_from(lever)
    u = {i.name: i.u for i in fixture.inputs}["force radius"]
    share = fixture.slopes["force radius"] * u / fixture.factor
    assert share * 100 == pytest.approx({40: 0.05, 10: 0.05, 2.5: 0.06}[arm_in], abs=0.005)
