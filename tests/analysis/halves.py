"""Recordings of both wheels free, in gear and in neutral, whose levels are known."""

from __future__ import annotations

from pathlib import Path

import msgspec
import numpy as np

from logger.header import JobFacts, Lever, Limit, Sidecar, TransducerFacts, Zero
from logger.header import Test as Kind
from logger.recordings.sidecar import change_sidecar
from tests.analysis.made import Shape, trace

RATIO = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="manual", page="3-7")
FREE = Kind(place="car", held="none", side="right", purpose="pulls")
FACTS = TransducerFacts(name="gauge", serial="T-1", capacity_nm=100.0, accuracy_percent_of_reading=0.5)
ZERO = Zero(value_nm=0.4, value_nm_u=0.02, how="lever off")


def recording(folder: Path, gear: str, level_nm: float, **changes: object) -> Path:
    """Write three pulls that turn at a known level, both wheels free."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{gear.replace(' ', '-')}.csv"
    shape = Shape(breakaway_nm=1.15 * level_nm, rotating_nm=level_nm)
    time_s, torque_nm = trace(shape, shape, shape, rate_hz=250.0)
    rows = np.column_stack((time_s, torque_nm))
    np.savetxt(path, rows, "%.4f", ",", header="time_s,torque_Nm", comments="", encoding="utf-8")
    about: dict[str, object] = {
        "simulated": True,
        "job": JobFacts(vehicle="blue hill-climb car"),
        "test": msgspec.structs.replace(FREE, gear=gear),
        "lever": Lever(fixture="hub centre", weight_kg=0.5, centroid_mm=100.0),
        "limit": RATIO,
        "transducer": FACTS,
        "zero": ZERO,
    }
    change_sidecar(path, lambda _: Sidecar(**{**about, **changes}))
    return path
