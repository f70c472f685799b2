"""Torque at the axle: the share of true torques inside the stated 95 %, on draws nobody tuned for.

The lever on the wheel differs from what is written down by as much as the budget assumes where nothing is stated:
± 20 mm of hand, ± 1 mm of stud circle, ± 10° of lever and pull. The reference takes the wrench's reading as it stands.
"""

from __future__ import annotations

import statistics
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace

import numpy as np

from analysis.to_axle.at_axle import instrument_from, level_from
from analysis.to_axle.fixtures import fixture_from
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor
from analysis.verdict.judge import AtAxle, budgets_of
from logger.header import Lever, TransducerFacts, Zero
from logger.virtual.lever import LeverModel as VirtualLever
from logger.virtual.physics import SimulatedRun, simulate
from tests.analysis.draws import draw

FAMILIES = ("clean", "realistic", "multi-turn")
DRAWS = 30
# Seeds from here on; nothing was ever adjusted to them.
FIRST_SEED = 70_000
STUD_CIRCLES_MM = (100.0, 108.0, 114.3, 139.7)  # common ones

Errors = dict[str, list[tuple[float, float, float]]]  # quantity -> (relative error, U95 / true, error of plain reading)


def _made(family: str, seed: int) -> tuple[SimulatedRun, Lever]:
    """Simulate a draw with a lever on one stud, and give what the operator wrote down about it."""
    rng = np.random.default_rng([seed, 7])
    scenario = draw(family, seed)
    true = scenario.lever
    circle = float(rng.choice(STUD_CIRCLES_MM))
    on_stud = VirtualLever(
        length_m=true.length_m,
        mass_kg=true.mass_kg,
        centroid_m=true.centroid_m,
        stud_radius_m=circle / 2e3 + float(rng.uniform(-0.001, 0.001)),
        angle_deg=float(rng.uniform(-10, 10)),
        pull_angle_deg=float(rng.uniform(-10, 10)),
        start_deg=true.start_deg,
    )
    written = Lever(
        fixture="one stud",
        length_mm=true.length_m * 1e3 + float(rng.uniform(-20, 20)),
        stud_circle_mm=circle,
        angle_deg=0.0,
        weight_kg=true.mass_kg,
        centroid_mm=true.centroid_m * 1e3,
    )
    return simulate(replace(scenario, lever=on_stud), seed), written


def _family(family: str) -> tuple[Errors, Errors]:
    """Give the errors of one family with and without true zero."""
    known: Errors = {"breakaway": [], "rotating mean": []}
    unknown: Errors = {"breakaway": [], "rotating mean": []}
    for seed in range(FIRST_SEED, FIRST_SEED + DRAWS):
        made, written = _made(family, seed)
        sensor = made.scenario.sensor
        facts = TransducerFacts(
            capacity_nm=sensor.capacity_nm,
            gain=sensor.gain if sensor.gain_known else None,
            accuracy_percent_of_reading=sensor.accuracy_percent,
        )
        papers = Sensor(facts.capacity_nm, None, facts.accuracy_percent_of_reading, facts.gain)
        reading = read_torque(made.time_s, made.torque_nm, angle_deg=made.angle_deg, sensor=papers)
        zero = Zero(value_nm=float(made.zero_nm[0]), value_nm_u=sensor.noise_nm, how="lever off")
        for found, level in ((known, level_from(zero, gain=facts.gain or 1.0)), (unknown, level_from(None))):
            at = AtAxle(fixture_from(written), instrument_from(facts), level)
            _add(found, made, reading.pulls, at)
    return known, unknown


def _add(found: Errors, made: SimulatedRun, pulls: tuple, at: AtAxle) -> None:
    for pull in pulls:
        true = next((t for t in made.truth if abs(t.start_s - pull.start_s) < 1.0 and t.valid and not t.flags), None)
        if true is None or not pull.valid or true.peak_class == "marginal":
            continue
        budgets = budgets_of(pull, at)
        for quantity, truth in (("breakaway", true.breakaway_axle_nm), ("rotating mean", true.plateau_axle_nm)):
            budget = budgets.get(quantity)
            if budget is not None and truth is not None:
                part = pull.breakaway if quantity == "breakaway" else pull.rotating
                plain = part.at_sensor_nm / truth - 1
                found[quantity].append((budget.value / truth - 1, budget.u95 / truth, plain))


def run() -> list[dict[str, object]]:
    """Give the rows of this benchmark."""
    with ProcessPoolExecutor(2) as pool:
        found = list(pool.map(_family, FAMILIES))
    rows: list[dict[str, object]] = []
    for k, zero in enumerate(("true zero known", "no true zero")):
        for quantity in ("breakaway", "rotating mean"):
            errors = [e for pair in found for e in pair[k][quantity]]
            inside = 100 * statistics.fmean(abs(e) <= u for e, u, _ in errors)
            plain = 100 * statistics.fmean(abs(p) <= u for _, u, p in errors)
            middle = 100 * statistics.median(abs(e) for e, _, _ in errors)
            wide = 100 * statistics.median(u for _, u, _ in errors)
            rows.append(
                {
                    "name": f"at the axle, {quantity}, {zero}: share of {len(errors)} inside the stated 95 % "
                    f"(median error {middle:.2f} %, median ± {wide:.1f} %)",
                    "ours": f"{inside:.1f} %",
                    "reference": f"{plain:.1f} % as shown",
                    "ratio": inside,
                    "target": ">= 90",
                }
            )
    return rows
