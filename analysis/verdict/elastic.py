"""The elastic line of a pull at the axle: stiffness through the fixture with its budget, and its words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.to_axle.at_axle import CALIBRATION
from analysis.uncertainty.budget import NORMAL_95, Budget, BudgetRow, Input

if TYPE_CHECKING:
    from collections.abc import Callable

    from analysis.trace.results import Elastic, Pull
    from analysis.verdict.judge import AtAxle


def stiffness_of(pull: Pull, at: AtAxle | None) -> Budget | None:
    """Give a pull's torsional stiffness at the axle, N·m per degree; None without an elastic line or a fixture.

    A slope needs no zero: only the line itself, calibration and fixture enter. Angles pass a fixture unchanged.
    """
    if pull.elastic is None or at is None:
        return None
    elastic, fixture = pull.elastic, at.fixture
    shown = elastic.stiffness_nm_deg
    line = Input("elastic line", shown, elastic.stiffness_u95_nm_deg / NORMAL_95, "N·m/°", note="scatter, angle's step")
    rows = [BudgetRow(line, fixture.factor)]
    rows += [BudgetRow(i, fixture.factor * shown) for i in at.instrument.inputs if i.name == CALIBRATION]
    rows += [BudgetRow(i, shown * fixture.slopes[i.name]) for i in fixture.inputs]
    return Budget("stiffness", fixture.factor * shown, "N·m/°", tuple(rows))


def elastic_words(
    number: int,
    elastic: Elastic,
    stiffness: Budget | None,
    torque: Callable[[float, float], str],
    figure: Callable[[float, int], str],
) -> str:
    """Say what the elastic line of a pull says.

    Args:
        number: Of the pull.
        elastic, stiffness: At the sensor, and at the axle where that is known.
        torque: ``(value, U95)`` of a torque in N·m to its text with unit.
        figure: ``(value, decimals)`` to its text.
    """
    value, u95 = elastic.stiffness_nm_deg, elastic.stiffness_u95_nm_deg
    if stiffness is not None:
        value, u95 = stiffness.value, stiffness.u95
    wound = f"{figure(elastic.wind_up_deg, 2)} ± {figure(elastic.wind_up_u95_deg, 2)}°"
    play = f"{figure(elastic.play_deg, 2)} ± {figure(elastic.play_u95_deg, 2)}°"
    if elastic.play_deg < elastic.play_u95_deg:
        play = f"not seen, below {figure(elastic.play_deg + elastic.play_u95_deg, 2)}°"
    where = "at the axle" if stiffness is not None else "at the sensor"
    return f"Pull {number}, elastic line {where}: {torque(value, u95)} per degree, wind-up {wound}, play {play}"
