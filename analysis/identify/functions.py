"""What a locking, viscous, geared or welded unit is tried for, because a held-wheel torque says nothing about it.

Common practice, no source, but for the automatic locker: the sequence of TM 5-3895-382-24 (both directions, both sides,
with an assistant). The maker's manual comes first; nothing here is a finding that a unit is sound.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.identify.axle_type import Type

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

FUNCTIONS: Mapping[Type, tuple[str, ...]] = {
    Type.LOCKER: (
        "Locker: both wheels up, in gear, engine off: turn one wheel forward to its stop: it must lock",
        "Locker: hold that wheel at its stop, turn the other backward: it must come free, with faint, even clicks",
        "Locker: move that one back to its own stop: it must lock again",
        "Locker: the same with the sides changed, and both in the other direction",
    ),
    Type.VISCOUS: (
        "Viscous: turn one wheel slowly, the other held: it must give evenly, without a breakaway",
        "Viscous: turn it twice as fast: it must resist more; no resistance, or a lock when cold, is a worn-out unit",
        "Viscous: look for leaks: a sealed unit is changed, not refilled",
    ),
    Type.GOVERNOR: (
        "Governor: both wheels up: its light plates may hardly hold; that is no fault",
        "Governor: whether it locks shows only at a difference of speed: as the maker's manual says, never by hand",
    ),
    Type.GEAR: (
        "Geared: turn each wheel through two turns, gear in and neutral: even, without knocks or tight places",
        "Geared: where the manual states a ratio in gear ÷ neutral, measure that",
    ),
    Type.OPEN: ("Open: turn each wheel through two turns: free and even, the other turns back as far",),
    Type.SOLID: ("Welded or spool: both wheels turn together, without slack between them",),
}
"""By type; those with packs are judged by their torque."""

FEW = 3
"""Of more types that fit, none is tried for yet: there are more questions to answer."""


def functions_of(kinds: Iterable[Type]) -> tuple[str, ...]:
    """Give what types are tried for, in order; nothing for those with packs, nor while more than three fit."""
    kinds = list(kinds)
    return tuple(text for kind in kinds for text in FUNCTIONS.get(kind, ())) if len(kinds) <= FEW else ()
