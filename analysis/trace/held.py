"""The held wheel while the other is turned: whether it stayed, gave, or turned with it; only its own angle tells.

Conventions:
The held wheel's angle in degrees, counting either way. The packs slip by half of what the turned wheel is ahead of the
held one. A tyre or a strap is a spring: what it gives while it is loaded is wind-up; what it goes on giving while the
torque keeps its level is slip. From one angle and the torque alone the two wheels turning together cannot be told from
one of them turning: a tyre at its limit of grip keeps a level, too.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.trace.results import Code, Reason

if TYPE_CHECKING:
    from collections.abc import Iterable

    from analysis.trace.results import Pull

GIVES_DEG = 2.0
"""While the wheel turns at a steady torque a wheel that is held turns less than this (degrees): what the torque's own
ripple winds a tyre or a strap by (common practice, no source)."""

SOFT_DEG = 5.0
"""What gives more than this (degrees) while it is loaded is softer than a tyre on the floor (common practice, no
source)."""

ALONG = 0.9
"""A held wheel that turns by this share of the turned one leaves the packs nothing but their wind-up to slip by."""


HELD_UNKNOWN = (
    "Whether the held wheel stayed cannot be told from one angle and the torque: mark tyre and floor with chalk, or "
    "record its angle, too (held_angle)"
)


def held_of(pull: Pull) -> Pull:
    """Give a pull with what the held wheel's angle says of it: notes, or why the pull is not valid.

    Where both wheels turn alike the packs did not slip: the torque is what the held wheel's tyre or strap bears, with
    the drag of the whole driveline, and the packs bear at least the former.
    """
    turned = pull.turned
    if turned is None or turned.held_rad is None or turned.whole_rad is None:
        return pull
    held, whole = math.degrees(turned.held_rad), math.degrees(turned.whole_rad)
    steady = None if turned.held_rotating_rad is None else math.degrees(turned.held_rotating_rad)
    if held >= GIVES_DEG and held >= ALONG * whole and (pull.breakaway or pull.rotating):
        text = (
            f"the held wheel turned with the other by {held:.0f}° of {whole:.0f}°: its tyre or strap slipped, "
            "not the packs; hold it so that it stays, and pull again"
        )
        return replace(pull, reasons=(*pull.reasons, Reason(Code.NEVER_SLIPPED, text)))
    if steady is not None and steady >= GIVES_DEG:
        text = f"the held wheel gave by {steady:.1f}° while the other turned by {_degrees(turned.rotating_rad)}°"
        text += ": its tyre or strap slips; hold it better, speed and angle of the packs are less than they seem"
        return replace(pull, notes=(*pull.notes, text))
    if held >= SOFT_DEG:
        text = f"the held wheel gave by {held:.1f}° under load: wind-up and stiffness are mostly of what holds it"
        return replace(pull, notes=(*pull.notes, text))
    return pull


def held_unknown(pulls: Iterable[Pull], held: str | None) -> str:
    """Say that an angle came along which cannot tell whether the held wheel stayed; empty where that is no question."""
    turned = [pull.turned for pull in pulls if pull.turned is not None]
    if held not in {None, "other side"} or not turned or any(t.held_rad is not None for t in turned):
        return ""
    return HELD_UNKNOWN


def _degrees(angle_rad: float | None) -> str:
    return "–" if angle_rad is None else f"{math.degrees(angle_rad):.0f}"
