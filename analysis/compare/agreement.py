"""Whether two measurements of one thing agree, judged by their combined interval.

Conventions: values in N·m (or whatever both are in) with their U, 95 %.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from logger.errors import InputError


@dataclass(frozen=True, slots=True)
class Agreement:
    """The second less the first, and the interval of that."""

    # difference, u95: in the unit of both; U is root of the sum of both squares
    difference: float
    u95: float

    @property
    def e_n(self) -> float:
        """The E_n number, (x₂ - x₁) / √(U₁² + U₂²): ISO 13528:2022, 9.7; ISO/IEC 17043:2023, annex B.

        From memory: the number as printed in both, with x₁ as the assigned value.
        """
        return self.difference / self.u95 if self.u95 > 0 else math.copysign(math.inf, self.difference)

    @property
    def agrees(self) -> bool:
        """Whether |E_n| is at most 1."""
        return abs(self.difference) <= self.u95

    def words(self, unit: str) -> str:
        """Say the difference, its interval and whether there is one."""
        shown = "no difference is shown" if self.agrees else "a difference is shown"
        return f"{self.difference:+.3g} ± {self.u95:.2g} {unit} (95 %), {shown}"


def agreement(first: tuple[float, float], second: tuple[float, float]) -> Agreement:
    """Compare two measurements that were made independently of each other.

    Args:
        first, second: (float, float); Value and U. Inputs that both share (one lever, one transducer) are counted in
            both, so that the interval is rather too wide: a difference that is called one is one, and agreement is the
            weaker statement.

    Raises:
        InputError: A value or U that is not finite, or both U are 0.
    """
    (a, ua), (b, ub) = first, second
    if not all(map(math.isfinite, (a, ua, b, ub))) or min(ua, ub) < 0:
        raise InputError("two measurements are compared by finite values, each with its U")
    if ua == ub == 0:
        raise InputError("neither measurement has an interval: whether they agree cannot be judged")
    return Agreement(b - a, math.hypot(ua, ub))
