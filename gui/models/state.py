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
    """A message that stays until it is answered: what happened, what is safe, what to do.

    Attributes
    ----------
    text : str
        For the user.
    serious : bool
        Whether something is lost or wrong.
    can_rescue, can_zero : bool
        Whether the recording can be saved elsewhere, or the zero taken anew.
    show : tuple of str
        Recordings that it is about.
    """

    text: str
    serious: bool = False
    can_rescue: bool = False
    can_zero: bool = False
    show: tuple[str, ...] = ()
