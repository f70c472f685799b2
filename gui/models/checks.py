"""The safety checks that gate a pull: the cautions of this trade that can hurt people, chosen by the kind of test.

A check that is false for this test teaches people to tick without reading, so ``analysis.cautions`` knows which test
needs which.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import msgspec

from analysis.cautions import gates_for

if TYPE_CHECKING:
    from logger.header import Conditions, Test


@dataclass(slots=True)
class Check:
    """One safety check: the caution's key and text, and whether it has been ticked."""

    key: str
    text: str
    ticked: bool = False


def checks_for(test: Test, conditions: Conditions | None = None, *, drag_first: bool = False) -> list[Check]:
    """Give the checks of a kind of test, none ticked.

    Args:
        test: Place, what is held, gear.
        conditions: Whether the propshaft is off.
        drag_first: The drag of both wheels free comes first: what is to be held is asked after it, not before.
    """
    first = msgspec.structs.replace(test, held="none") if drag_first else test
    return [Check(caution.key, caution.text) for caution in gates_for(first, conditions)]


def holding_checks(test: Test, conditions: Conditions | None = None) -> list[Check]:
    """Give what is to be checked after a drag with both wheels free: what is true only now that one is held."""
    before = {check.key for check in checks_for(test, conditions, drag_first=True)}
    return [check for check in checks_for(test, conditions) if check.key not in before]
