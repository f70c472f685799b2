"""How a trace stands at the axle, for whoever draws it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Torque = TypeVar("Torque", float, NDArray[np.float64])


@dataclass(frozen=True, slots=True)
class AxleScale:
    """From torque as a trace holds it to torque at the axle."""

    zero_nm: float = 0.0  # what counts as nothing, at the transducer
    axle_per_read: float = 1.0  # torque at the axle per torque of the trace; 1 where the lever is not known
    at_axle: bool = False  # whether the lever is known

    def torque(self, read_nm: Torque) -> Torque:
        """Give torque at the axle, or as shown where the lever is not known; N·m."""
        return (read_nm - self.zero_nm) * self.axle_per_read
