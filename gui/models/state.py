"""How the transducer of a test stands, and a message to its user: plain values."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class LinkState(StrEnum):
    """How the transducer stands."""

    NONE = "not connected"
    OPENING = "connecting"
    LIVE = "live"
    SILENT = "silent"
    RETRYING = "reconnecting"
    ENDED = "disconnected"


@dataclass(frozen=True, slots=True)
class Notice:
    """A message that stays until it is answered: what happened, what is safe, what to do."""

    text: str  # for the user
    serious: bool = False  # whether something is lost or wrong
    # can_rescue, can_zero: whether the recording can be saved elsewhere, or the zero taken anew
    can_rescue: bool = False
    can_zero: bool = False
    show: tuple[str, ...] = ()  # recordings that it is about
