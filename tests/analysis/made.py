"""Traces made by formula, so that every level and time in them is known exactly."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray


@dataclass(frozen=True)
class Shape:
    """One pull: a straight ramp to the breakaway, a quick fall to the rotating level, and a release."""

    breakaway_nm: float = 46.0
    rotating_nm: float = 40.0
    ramp_s: float = 1.5
    fall_s: float = 0.05
    turning_s: float = 4.0
    release_s: float = 0.15

    @property
    def length_s(self) -> float:
        return self.ramp_s + self.turning_s + self.release_s

    def torque_nm(self, since_s: NDArray[np.float64]) -> NDArray[np.float64]:
        """Torque against the time since the foot of the ramp."""
        t = since_s
        up = self.breakaway_nm * t / self.ramp_s
        slip = self.rotating_nm + (self.breakaway_nm - self.rotating_nm) * np.exp(
            -np.maximum(t - self.ramp_s, 0.0) / self.fall_s
        )
        down = self.rotating_nm * (1 - (t - self.ramp_s - self.turning_s) / self.release_s)
        x = np.where(t < self.ramp_s, up, np.where(t < self.ramp_s + self.turning_s, slip, down))
        return np.where((t < 0) | (t > self.length_s), 0.0, x)


def trace(
    *shapes: Shape,
    rate_hz: float = 500.0,
    rest_s: float = 3.0,
    signs: tuple[int, ...] = (),
    level_nm: float = 0.4,
    noise_nm: float = 0.02,
    ripple: float = 0.004,
    seed: int = 0,
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Make a trace of pulls with rests between; ``ripple`` is the relative unevenness of the slip."""
    rng = np.random.default_rng(seed)
    length = rest_s + sum(shape.length_s + rest_s for shape in shapes)
    t = np.arange(round(length * rate_hz)) / rate_hz
    y = np.full(len(t), level_nm)
    start = rest_s
    for i, shape in enumerate(shapes):
        x = shape.torque_nm(t - start)
        shake = 1 + ripple * np.sin(2 * np.pi * 9.3 * t + i) * (x > 0)
        y += (signs[i] if signs else 1) * x * shake
        start += shape.length_s + rest_s
    return t, y + noise_nm * rng.standard_normal(len(t))
