"""Simulated recordings on disk for tests of the pipeline and its doors; every one is marked simulated."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from logger.header import Lever, Sidecar, TransducerFacts, Zero
from logger.recordings.sidecar import change_sidecar
from logger.virtual.lever import LeverModel as VirtualLever
from logger.virtual.physics import SimulatedRun, simulate
from logger.virtual.scenarios import healthy

TRUE_ZERO_NM = 0.4
WEIGHED = {"weight_kg": 2.5, "centroid_mm": 210.0}

ONE_STUD = Lever(
    fixture="one stud",
    length_mm=450.0,
    length_mm_u=1.0,
    stud_circle_mm=114.3,
    stud_circle_mm_u=0.1,
    angle_deg=0.0,
    angle_deg_u=1.0,
    pull_angle_deg=0.0,
    pull_angle_deg_u=1.0,
    start_angle_deg=-20.0,
    **WEIGHED,
)
HUB = Lever(fixture="hub centre", **WEIGHED)
ZERO = Zero(value_nm=TRUE_ZERO_NM, value_nm_u=0.02, how="lever off")
FACTS = TransducerFacts(capacity_nm=200.0, accuracy_percent_of_reading=0.5, resolution_nm=0.01)


def run_of(*, one_stud: bool, seed: int = 0, angle: bool = False, gain: float = 1.0) -> SimulatedRun:
    """Simulate five pulls on sound packs, the lever 20 degrees above the horizontal at hand-off."""
    scenario = healthy()
    radius = 0.05715 if one_stud else 0.0
    lever = VirtualLever(stud_radius_m=radius, mass_kg=2.5, centroid_m=0.21, start_deg=20.0)
    sensor = replace(scenario.sensor, rate_hz=250.0, zero_nm=TRUE_ZERO_NM, gain=gain)
    return simulate(replace(scenario, lever=lever, sensor=sensor, angle_step_deg=0.1 if angle else None), seed)


def write_trace(path: Path, run: SimulatedRun, **sidecar: object) -> Path:
    """Write a run as a foreign CSV trace with a sidecar."""
    angle = run.angle_deg
    with path.open("w", encoding="utf-8", newline="") as file:
        file.write("time_s,torque_Nm" + (",angle_deg" if angle is not None else "") + "\n")
        for i, (t, y) in enumerate(zip(run.time_s, run.torque_nm, strict=True)):
            file.write(f"{t:.5f},{y:.2f}" + (f",{angle[i]:.1f}" if angle is not None else "") + "\n")
    change_sidecar(path, lambda _: Sidecar(**{"simulated": True, "transducer": FACTS} | sidecar))
    return path
