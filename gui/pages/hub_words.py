"""A lever as the hub drawing shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.widgets.hub import HubView

if TYPE_CHECKING:
    from gui.shared import Shared
    from logger.header import Lever


def hub_view(lever: Lever | None, factor: float | None, shared: Shared) -> HubView:
    """Give a lever as the drawing shows it."""
    if lever is None:
        return HubView()
    number = shared.display.number
    decimal = "," if shared.display.comma else "."
    length = f"L {lever.length_mm:g} mm".replace(".", decimal) if lever.length_mm else ""
    circle = f"Ø {lever.stud_circle_mm:g} mm".replace(".", decimal) if lever.stud_circle_mm else ""
    return HubView(
        fixture=lever.fixture,
        studs=lever.studs or 5,
        angle_deg=lever.angle_deg or 0.0,
        length=length,
        circle=circle,
        factor="" if factor is None else f"× {number(factor, 3)}",
    )
