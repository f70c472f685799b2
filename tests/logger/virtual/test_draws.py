"""Random draws: repeatable, spread over the trade's range."""

import numpy as np
import pytest

from logger.errors import InputError
from logger.virtual.physics import simulate
from logger.virtual.scenarios import scenario
from tests.analysis.draws import FAMILIES, draw


def test_same_family_and_seed_give_the_same_scenario():
    one, two = draw("hard", 5), draw("hard", 5)
    assert one.name == "hard-005"
    assert repr(one.sensor) == repr(two.sensor)
    assert one.actions == two.actions
    assert draw("hard", 6).sensor != one.sensor
    assert draw("clean", 5).sensor != one.sensor


def test_unknown_names_say_what_there_is():
    with pytest.raises(InputError, match="realistic"):
        draw("easy", 1)
    with pytest.raises(InputError, match="healthy"):
        scenario("broken")


def test_draws_cover_the_trades_range():
    """Pack torques from weak to truck, both directions, levers on studs and on the axle line, many rates."""
    drawn = [draw("realistic", seed) for seed in range(60)]
    levels = [(s.axle.driven_pack.coulomb_nm + s.axle.other_pack.coulomb_nm) / 2 for s in drawn]
    assert min(levels) < 25
    assert max(levels) > 150
    assert {a.direction for s in drawn for a in s.actions if hasattr(a, "direction")} == {1, -1}
    assert len({s.sensor.rate_hz for s in drawn}) >= 4
    assert {s.lever.stud_radius_m > 0 for s in drawn} == {True, False}
    for s in drawn:
        peak = max(levels[0], 1.0)
        assert s.sensor.capacity_nm > 0.1 * peak


def test_families_are_what_they_say():
    assert all(draw("slow-sensor", seed).sensor.rate_hz <= 50 for seed in range(5))
    assert all(
        draw("no-peak", s).axle.driven_pack.static_nm < draw("no-peak", s).axle.driven_pack.coulomb_nm for s in (1, 2)
    )
    stuck = [pull.stick_slip for pull in simulate(draw("stick-slip", 1), 1).truth]
    assert stuck
    assert sum(s is not None for s in stuck) >= 0.8 * len(stuck)
    for seed in range(4):
        run = simulate(draw("adversarial", seed), seed)
        assert not any(pull.valid for pull in run.truth)


@pytest.mark.parametrize("family", FAMILIES)
def test_every_family_simulates(family):
    run = simulate(draw(family, 3), 3)
    assert run.torque_nm.size > 50
    if family == "multi-turn":
        assert 400 < abs(run.truth[0].turn_deg) < 900
    assert np.isfinite(run.mechanics.sensor_nm).all()
    shown = run.torque_nm[np.isfinite(run.torque_nm)]
    assert np.abs(shown).max() <= run.scenario.sensor.capacity_nm + run.scenario.sensor.resolution_nm
