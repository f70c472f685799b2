"""A lever as the hub drawing shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.models.fixture_entry import circle_mm
from gui.widgets.hub import HubView

if TYPE_CHECKING:
    from gui.shared import Shared
    from logger.header import Lever


def hub_view(lever: Lever | None, factor: float | None, shared: Shared) -> HubView:
    """Give a lever as the drawing shows it."""
    if lever is None:
        return HubView()
    number = shared.display.number

    def length_of(sign: str, mm: float | None) -> str:
        return f"{sign}{shared.display.length(round(mm, 1))}" if mm else ""

    return HubView(
        fixture=lever.fixture,
        studs=lever.studs or 5,
        angle_deg=lever.angle_deg or 0.0,
        length=length_of("L ", lever.length_mm),
        circle=length_of("Ø ", circle_mm(lever)),
        chord=length_of("", lever.chord_mm),
        apart=lever.chord_apart or 1,
        factor="" if factor is None else f"× {number(factor, 3)}",
    )
