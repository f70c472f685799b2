"""The safety checks that gate a pull: the cautions of this trade that can hurt people, chosen by the kind of test.

A check that is false for this test teaches people to tick without reading: nobody is asked for chocks on a bench, or
for neutral where the limit is printed for a gear. What the card does not state is asked.

Offered: ``Check``, ``checks_for``, ``HOLDING``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.cautions import CAUTIONS

if TYPE_CHECKING:
    from logger.header import Test

HOLDING = ("held", "case-held", "lever-on")
"""Checks about what is held: asked when it is held, so after a drag that is taken with both wheels free."""

# Key of a caution -> what the kind of test must be, where the card states it; one that is not named is always asked.
_ONLY: dict[str, dict[str, tuple[str, ...]]] = {
    **{
        key: {"place": ("car",)}
        for key in (
            "engine-off", "chocks", "stands", "high-voltage", "brakes-free", "reaction", "ignition",
            "parking-brake", "propshaft",
        )
    },
    "neutral": {"place": ("car",), "gear": ("neutral",)},
    "in-gear": {"place": ("car",), "gear": ("in gear",)},
    "held": {"held": ("other side",)},
    "case-held": {"held": ("case",)},
    "both-free": {"held": ("none",)},
}  # fmt: skip


@dataclass(slots=True)
class Check:
    """One safety check: the caution's key and text, and whether it has been ticked."""

    key: str
    text: str
    ticked: bool = False


def checks_for(test: Test, *, drag_first: bool = False) -> list[Check]:
    """Give the checks of a kind of test, none ticked.

    Parameters
    ----------
    test : Test
        Place, what is held, gear.
    drag_first : bool
        The drag of both wheels free comes first: what is to be held is asked after it, not before.
    """
    asked = [caution for caution in CAUTIONS if caution.gate and _applies(caution.key, test, drag_first=drag_first)]
    return [Check(caution.key, caution.text) for caution in asked]


def holding_checks(test: Test) -> list[Check]:
    """Give the checks about what is held: asked again once a drag with both wheels free has been taken."""
    return [check for check in checks_for(test) if check.key in HOLDING]


def _applies(key: str, test: Test, *, drag_first: bool) -> bool:
    if drag_first and (key in HOLDING or key == "both-free"):
        return key == "both-free"
    stated = {name: getattr(test, name) for name in _ONLY.get(key, {})}
    return all(value is None or value in _ONLY[key][name] for name, value in stated.items())
