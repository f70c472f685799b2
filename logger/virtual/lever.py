"""The lever on the wheel: where the hand's force goes, and what its weight and inertia add.

Conventions:
- Seen from outside the driven wheel, clockwise positive. The lever's *elevation* is its angle above the horizontal,
  pointing to the right; turning clockwise lowers it. A weight on a lever pointing right therefore turns clockwise.
- The transducer sits on the lever's drive axis: the wheel's centre, or one stud at radius r, with an angle θ between
  lever and the line from centre to stud.

``T = M [1 + (r/L)(cos θ + tan δ sin θ)]`` for a force at L pulled δ off square (statics; TM 5-3805-260-24 prints the
case θ = 0).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin, tan

import numpy as np
from numpy.typing import NDArray
from scipy.constants import g as GRAVITY  # noqa: N812 - m/s², the symbol is g

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class LeverModel:
    """A lever with its transducer."""

    # length_m, mass_kg, centroid_m: from the drive axis to the hand, mass, and centre of mass
    length_m: float = 0.45
    mass_kg: float = 1.2
    centroid_m: float = 0.2
    stud_radius_m: float = 0.0  # of the drive axis from the wheel's centre; 0: on the axle line
    # angle_deg, pull_angle_deg: θ and δ
    angle_deg: float = 0.0
    pull_angle_deg: float = 0.0
    start_deg: float = 20.0  # elevation when the hand first takes hold

    @property
    def factor(self) -> float:
        """Torque at the axle per torque in the transducer, for the hand's force."""
        turn = radians(self.angle_deg)
        return 1.0 + self.stud_radius_m / self.length_m * (cos(turn) + tan(radians(self.pull_angle_deg)) * sin(turn))

    @property
    def axle_kgm2(self) -> float:
        """Moment of inertia about the axle (a uniform bar about its own centre)."""
        r, d = self.stud_radius_m, self.centroid_m
        return self.mass_kg * (d * d + r * r + 2 * d * r * cos(radians(self.angle_deg))) + self._own_kgm2

    @property
    def sensor_kgm2(self) -> float:
        """Torque in the transducer per angular acceleration of the wheel."""
        d = self.centroid_m
        return self.mass_kg * d * (d + self.stud_radius_m * cos(radians(self.angle_deg))) + self._own_kgm2

    @property
    def _own_kgm2(self) -> float:
        return self.mass_kg * self.length_m**2 / 12

    def weight_axle_nm(self, elevation_rad: float) -> float:
        """Torque of the lever's weight about the axle."""
        stud = elevation_rad - radians(self.angle_deg)
        return float(self.mass_kg * GRAVITY * (self.centroid_m * cos(elevation_rad) + self.stud_radius_m * cos(stud)))

    def weight_sensor_nm(self, elevation_rad: Floats) -> Floats:
        """Torque of the lever's weight in the transducer, shape as given."""
        return np.asarray(self.mass_kg * GRAVITY * self.centroid_m * np.cos(elevation_rad))

    def weights_axle_nm(self, elevation_rad: Floats) -> Floats:
        """As ``weight_axle_nm`` for an array, shape as given."""
        stud = elevation_rad - radians(self.angle_deg)
        moment = self.centroid_m * np.cos(elevation_rad) + self.stud_radius_m * np.cos(stud)
        return np.asarray(self.mass_kg * GRAVITY * moment)
