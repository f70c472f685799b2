"""A simulated run as a table of another program, and its truth in the plain form that the scores compare with.

Torques are magnitudes in N·m at the sensor, relative to the hand-off level, times those of the trace, and ``direction``
is the sign of the torque.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from logger.edges.toml_file import write_toml
from logger.edges.units import column_unit, torque_factor
from logger.header import Sidecar, TransducerFacts

if TYPE_CHECKING:
    from pathlib import Path

    from logger.virtual.physics import SimulatedRun
    from logger.virtual.truth import TruePull


def write_run(run: SimulatedRun, folder: Path, stem: str, *, unit: str = "N·m") -> Path:
    """Write a run as a foreign trace with its sidecar; give the trace's path."""
    columns = {"time_s": run.time_s, f"torque_{column_unit(unit)}": run.torque_nm / torque_factor(unit)}
    digits = {"time_s": 6, "angle_deg": 3}
    if run.angle_deg is not None:
        columns["angle_deg"] = run.angle_deg
    texts = [[_cell(v, digits.get(name, 5)) for v in values.tolist()] for name, values in columns.items()]
    path = folder / f"{stem}.csv"
    with path.open("w", encoding="utf-8", newline="") as file:
        file.write(",".join(columns) + "\n")
        file.writelines(",".join(row) + "\n" for row in zip(*texts, strict=True))
    sensor = run.scenario.sensor
    facts = TransducerFacts(
        name="virtual transducer (simulated)",
        capacity_nm=sensor.capacity_nm,
        gain=sensor.gain if sensor.gain_known else None,
        accuracy_percent_of_reading=None if sensor.gain_known else sensor.accuracy_percent,
    )
    write_toml(folder / f"{stem}.sidecar.toml", Sidecar(simulated=True, transducer=facts))
    return path


def _cell(value: float, digits: int) -> str:
    return f"{value:.{digits}f}" if value == value else ""


def truth_record(run: SimulatedRun, name: str) -> dict[str, Any]:
    """Give the truth of a run in plain types; pulls outside the recording are excluded."""
    first, last = (float(run.time_s[0]), float(run.time_s[-1])) if run.time_s.size else (np.inf, -np.inf)
    seen = [pull for pull in run.truth if pull.end_s > first and pull.start_s < last]
    return {
        "recording": name,
        "about": run.scenario.about,
        "rate_hz": run.scenario.sensor.rate_hz,
        "capacity_nm": run.scenario.sensor.capacity_nm,
        "gain": run.scenario.sensor.gain,
        "gain_known": run.scenario.sensor.gain_known,
        "simulated": True,
        "pulls": [_pull_record(pull) for pull in seen],
    }


def _pull_record(pull: TruePull) -> dict[str, Any]:
    recorded = "breakaway not recorded" not in pull.flags
    slip = pull.stick_slip
    return {
        "kind": pull.kind,
        "t_start": pull.start_s,
        "t_end": pull.end_s,
        "direction": pull.direction,
        "valid": pull.valid,
        "t_onset": pull.onset_s,
        "breakaway": pull.breakaway_nm if recorded else None,
        "t_breakaway": pull.breakaway_s if recorded else None,
        "plateau": pull.plateau_nm,
        "steady": [list(stretch) for stretch in pull.steady],
        "peak_class": pull.peak_class if recorded else "unknown",
        "overshoot": pull.overshoot,
        "ripple": pull.ripple,
        "stick_slip": slip and {"frequency_hz": slip.frequency_hz, "peak_to_peak": slip.peak_to_peak_nm},
        "handoff": pull.handoff_nm,
        "breakaway_axle": pull.breakaway_axle_nm,
        "plateau_axle": pull.plateau_axle_nm,
        "pack_mean": pull.pack_mean_nm,
        "max_torque": pull.max_nm,
        "turn_deg": pull.turn_deg,
        "regrip": pull.regrip,
        "flags": [flag.replace(" ", "_") for flag in pull.flags],
    }
