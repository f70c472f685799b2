"""What every page is given: look, unit on screen, remembered choices, saved lists, sounds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from gui.confirm import Confirm
    from gui.look import Look
    from gui.models.display import Display
    from gui.models.library import Library
    from gui.models.settings import Settings
    from gui.sound import Sounds


@dataclass(frozen=True, slots=True)
class Shared:
    """One of each for the whole window."""

    look: Look
    display: Display
    settings: Settings
    library: Library
    sounds: Sounds
    confirm: Confirm
