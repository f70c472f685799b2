"""From torque to friction: the figure of a pack whose faces and spring load are known; the pinion's preload as drag.

Conventions: SI; diameters in m; the torque is that of one pack (the pack mean).

A pack of n friction surfaces that a force F presses together slips at ``T = n μ F r``. The effective radius r is
``(R_o + R_i) / 2`` where the faces have worn evenly (uniform wear) and ``2/3 (R_o³ - R_i³) / (R_o² - R_i²)`` where the
pressure is even, as on new flat faces: J. E. Shigley, *Mechanical Engineering Design*, "Disk clutches" (from memory;
the chapter on clutches and brakes of any edition). Which of the two a pack is at nobody can see: r is taken between.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from analysis.uncertainty.budget import Budget, Input, Shape, half_width, propagate
from logger.errors import InputError

LOAD_ASSUMED = 0.15
"""Half-width of a spring load that nobody measured, relative: about what standard disc springs of 1.25 to 3 mm are made
to (DIN EN 16983, from memory)."""

FACE_ASSUMED_M = 0.5e-3
"""Half-width of the diameters of faces whose uncertainty is not stated: chamfers and grooves; common practice."""

DRAG_LEFT = "as read, drag included: the figure is too high by the drag's share"


def radius_even_wear(outer_m: Any, inner_m: Any) -> Any:
    """Give the effective radius of faces that have worn evenly, from their diameters.

    >>> radius_even_wear(0.1, 0.06)
    0.04
    """
    return (outer_m + inner_m) / 4


def radius_even_pressure(outer_m: Any, inner_m: Any) -> Any:
    """Give the effective radius under even pressure, from the diameters of the faces.

    >>> round(radius_even_pressure(0.1, 0.06), 6)
    0.040833
    """
    return (outer_m**3 - inner_m**3) / (outer_m**2 - inner_m**2) / 3


def friction_figure(
    torque: Budget,
    surfaces: float,
    load_n: float,
    outer_m: float,
    inner_m: float,
    *,
    load_u_n: float | None = None,
    face_u_m: float | None = None,
) -> Budget:
    """Give the friction figure μ of a pack with its budget.

    Args:
        torque: Of one pack, N·m.
        surfaces: Friction surfaces of one pack; the mean of both where they differ.
        load_n, load_u_n: What presses the pack together, and its standard uncertainty; without one ± 15 % are assumed.
        outer_m, inner_m, face_u_m: Diameters of the faces, and their standard uncertainty; without one ± 0.5 mm are
            assumed.

    Raises:
        InputError: Faces of no width, no surface, or a load that presses nothing together.
    """
    if not (outer_m > inner_m >= 0 and surfaces > 0 and load_n > 0):
        raise InputError("a friction figure needs surfaces, a load above 0 N, and an outer diameter beyond the inner")
    load = _stated_or("spring load", load_n, load_u_n, "N", LOAD_ASSUMED * load_n, "± 15 % assumed")
    diameters = (("outer diameter", outer_m), ("inner diameter", inner_m))
    faces = [_stated_or(name, size, face_u_m, "m", FACE_ASSUMED_M, "± 0.5 mm assumed") for name, size in diameters]
    spread = half_width(
        "pressure on the faces", 0.5, 0.5, "1", Shape.RECTANGULAR, note="0: worn evenly, 1: pressed evenly"
    )

    def model(at: Mapping[str, Any]) -> Any:
        outer, inner, even = at["outer diameter"], at["inner diameter"], at["pressure on the faces"]
        radius = (1 - even) * radius_even_wear(outer, inner) + even * radius_even_pressure(outer, inner)
        return at["pack torque"] / (surfaces * at["spring load"] * radius)

    pack = Input("pack torque", torque.value, torque.u, "N·m", torque.dof, note=torque.quantity)
    return propagate("friction figure", model, [pack, load, *faces, spread], "1")


def _stated_or(name: str, value: float, u: float | None, unit: str, assumed: float, note: str) -> Input:
    """Give an input with its stated standard uncertainty, or with the half-width that is assumed."""
    return (
        half_width(name, value, assumed, unit, note=note) if u is None else Input(name, value, u, unit, note="stated")
    )


def pinion_at_axle(preload_nm: float, u_nm: float, ratio: float) -> Budget:
    """Give what the pinion's preload torque is at the axle: T_pinion × i, the drag of a carrier that turns.

    The pinion turns i times as fast, so that the same power is i times the torque (losses of the mesh are left aside).

    Raises:
        InputError: A torque below 0, or a ratio not above 0.
    """
    if preload_nm < 0 or ratio <= 0:
        raise InputError("the preload torque at the pinion is 0 or more, and the ratio above 0")
    return propagate(
        "pinion preload at the axle",
        lambda at: at["preload torque at the pinion"] * ratio,
        [Input("preload torque at the pinion", preload_nm, u_nm)],
    )


def drag_check(pinion: Budget, both_free: Budget) -> tuple[bool, str]:
    """Check the pinion's part against the drag with both wheels free, of which it is one: D_c = i T_pinion ≤ T_both.

    Returns:
        agrees: False where the part is larger than the whole by more than both intervals.
        text: In one sentence.
    """
    over, u = pinion.value - both_free.value, (pinion.u95**2 + both_free.u95**2) ** 0.5
    figures = f"{pinion.value:.1f} ± {pinion.u95:.1f} N·m of {both_free.value:.1f} ± {both_free.u95:.1f} N·m"
    if over > u:
        return False, (
            f"the pinion's preload alone is more than all drag with both wheels free ({figures}): one of the two, or "
            "the ratio, is wrong, or the other wheel did not turn along"
        )
    rest = max(0.0, -over)
    return True, f"the pinion's preload is {figures} of drag; {rest:.1f} ± {u:.1f} N·m are left for seals and bearings"
