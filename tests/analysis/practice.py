"""The simulated recordings with known truth under tests/data/practice and tests/data/practice2."""

from __future__ import annotations

import json
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from analysis.trace.traces import Sensor
from logger.edges.units import torque_factor

if TYPE_CHECKING:
    from numpy.typing import NDArray

FOLDER = Path(__file__).resolve().parents[1] / "data" / "practice"
OTHER_PHYSICS = FOLDER.parent / "practice2"
UNITS = {"torque_Nm": "N·m", "torque_lbf_ft": "lbf·ft", "torque_lbf_in": "lbf·in"}


@dataclass(frozen=True)
class Recording:
    """One simulated recording."""

    name: str
    family: str
    time_s: NDArray[np.float64]
    torque_nm: NDArray[np.float64]
    angle_deg: NDArray[np.float64] | None
    sensor: Sensor
    truth: dict[str, Any]


def load(name: str, folder: Path = FOLDER) -> Recording:
    """Read one recording with its truth."""
    path = folder / "traces" / f"{name}.csv"
    head = path.read_text(encoding="utf-8").split("\n", 1)[0].split(",")
    columns = np.genfromtxt(path, delimiter=",", skip_header=1, unpack=True)
    sidecar = tomllib.loads((folder / "traces" / f"{name}.sidecar.toml").read_text(encoding="utf-8"))
    truth = json.loads((folder / "truth" / f"{name}.json").read_text(encoding="utf-8"))
    torque = columns[1] * torque_factor(UNITS[head[1]])
    angle = columns[2] if "angle_deg" in head else None
    return Recording(name, truth["family"], columns[0], torque, angle, Sensor(**sidecar["transducer"]), truth)


def names(folder: Path = FOLDER) -> list[str]:
    """Give the names of all recordings."""
    return sorted(path.stem for path in (folder / "truth").glob("*.json"))
