"""A recording of a spin-down as command and window read it: its inertia, and what is said of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.pipeline import wheel_angle
from analysis.trace.spin_down import ASSUMED_SHARE, inertia_of, lines_of

if TYPE_CHECKING:
    from analysis.trace.spin_down import Inertia


@dataclass(frozen=True, slots=True)
class RunOut:
    """An inertia, its sentences, and whether it is simulated."""

    found: Inertia
    lines: tuple[str, ...]
    simulated: bool


def run_out(
    path: str, drag_nm: float, drag_u_nm: float | None = None, torque_nm: float | None = None, torque: str = ""
) -> RunOut:
    """Read a spin-down.

    Args:
        path: Recording or table with the wheel's angle.
        drag_nm, drag_u_nm: Drag of the same parts and its standard uncertainty; None: 5 % of it, assumed.
        torque_nm, torque: The torque that will be measured, and how it was written.

    Raises:
        HeldwheelError: It cannot be read, or nothing spins down in it.
    """
    u = ASSUMED_SHARE * drag_nm if drag_u_nm is None else drag_u_nm
    time_s, angle_deg, simulated = wheel_angle(path)
    found = inertia_of(time_s, angle_deg, drag_nm, u)
    lines = lines_of(found, u_stated=drag_u_nm is not None, torque_nm=torque_nm, torque=torque)
    return RunOut(found, lines, simulated)
