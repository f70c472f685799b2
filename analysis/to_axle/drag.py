"""What part of the number is drag: baseline, pack mean, held end, and what a left/right difference means.

Conventions:
- T: torque at the driven wheel with the other side held; T_both: both wheels free, one turned; T_hold: reaction at the
  held shaft. F: mean friction of the two packs; D_c: drag of carrier, pinion and driveline at the carrier; D_L, D_R:
  drag of the wheel ends.
- T = F + D_c/2 + D_driven,  T_hold = F - D_c/2,  T_both = D_L + D_R + D_c (the packs holding).
- Everything is a ``Budget``: what the tests share (certificate, lever) is propagated as shared.
- Raw torque and pack mean are both kept. A limit is compared with the quantity that it names: nearly always raw torque.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from analysis.to_axle.at_axle import CALIBRATION
from analysis.uncertainty.budget import Budget, Input, combine

NON_LINEARITY = "non-linearity"

# Two results of the same axle this near a factor of two were probably made with different members held.
FACTOR_TWO = (1.75, 2.25)
# The baseline is best made at half the wheel speed of the held test; within this band the viscous parts agree.
HALF_SPEED = (0.35, 0.70)


def pack_mean(right: Budget, left: Budget, both: Budget) -> Budget:
    """Give the mean of the two packs from both held tests and the baseline: (T_R + T_L - T_both) / 2.

    It needs no assumption about equal wheel ends. Shared inputs enter once (JCGM 100, 5.2).

    Args:
        right, left, both: Driving right, driving left, both wheels free; of one kind (breakaways, or rotating means).
    """
    _same_kind(right, left, both)
    named = [
        (0.5, _named(right, "right wheel turned")),
        (0.5, _named(left, "left wheel turned")),
        (-0.5, _named(both, "both free")),
    ]
    return replace(combine("pack mean", named), quantity=f"pack mean, {right.quantity}")


def pack_mean_one_side(held: Budget, both: Budget, *, wheel_ends_differ_nm: float = 0.0) -> Budget:
    """Give the mean of the packs from one held test: T - T_both / 2, if the wheel ends are alike.

    Args:
        held, both: Of one kind.
        wheel_ends_differ_nm: Half-width of what D_driven - D_other may be: half of it enters, as a rectangle.
    """
    _same_kind(held, both)
    budget = combine("pack mean", [(1.0, _named(held, "held")), (-0.5, _named(both, "both free"))])
    ends = Input(
        "wheel ends unlike", 0.0, wheel_ends_differ_nm / 2 / math.sqrt(3), note="turn both sides to be rid of it"
    )
    return replace(budget.plus(ends), quantity=f"pack mean, {held.quantity}")


def held_end(driven: Budget, held: Budget, wheel_end: Budget | None = None) -> tuple[Budget, Budget]:
    """Give pack mean and driveline drag from sensors at both ends: (T - D + T_hold) / 2 and T - D - T_hold.

    Args:
        driven, held: At the driven wheel and at the held shaft, at the same time.
        wheel_end: Drag D of the driven wheel end; without it both results contain it (half of it, and all of it).
    """
    terms = [(1.0, _named(driven, "driven")), (1.0, _named(held, "held"))]
    apart = [terms[0], (-1.0, terms[1][1])]
    if wheel_end is not None:
        end = (-1.0, _named(wheel_end, "wheel end"))
        terms, apart = [*terms, end], [*apart, end]
    mean = combine("pack mean", [(weight / 2, budget) for weight, budget in terms])
    return replace(mean, quantity=f"pack mean, {driven.quantity}"), combine("driveline drag", apart)


def _named(budget: Budget, name: str) -> Budget:
    """Name a budget after its test, so that its own inputs can be told from those of the others."""
    return replace(budget, quantity=name)


def _same_kind(*budgets: Budget) -> None:
    kinds = {b.quantity for b in budgets}
    if len(kinds) > 1:
        raise ValueError(f"these are different quantities, not to be combined: {', '.join(sorted(kinds))}")


@dataclass(frozen=True, slots=True)
class Drag:
    """A both-free baseline: what one turned wheel shows with neither held."""

    rotating: Budget | None = None  # steady torque
    breakaway: Budget | None = None  # torque to start it
    speed_rad_s: float | None = None  # wheel speed it was made at

    def correct(self, raw: Budget, *, wheel_ends_differ_nm: float = 0.0) -> tuple[Budget | None, str]:
        """Give the pack mean of one held test, or None and the reason why it is withheld.

        A breakaway is corrected by the baseline's breakaway only: the drag at rest is not the drag in rotation.
        """
        baseline = self.breakaway if raw.quantity == "breakaway" else self.rotating
        if baseline is None:
            missing = "breakaway" if raw.quantity == "breakaway" else "steady rotation"
            return None, (
                f"drag correction of the {raw.quantity} withheld: the baseline has no {missing}"
                + (" and its rotating drag is not the drag at rest" if missing == "breakaway" else "")
            )
        if baseline.value >= 2 * raw.value:
            return None, f"drag correction of the {raw.quantity} withheld: the baseline alone explains all of it"
        aligned = replace(baseline, quantity=raw.quantity)
        return pack_mean_one_side(raw, aligned, wheel_ends_differ_nm=wheel_ends_differ_nm), ""


def half_speed_note(held_rad_s: float | None, both_rad_s: float | None) -> str:
    """Say whether the baseline was turned at half the wheel speed of the held test, as it should be.

    With one wheel held the carrier turns at half the wheel's speed, with both free at all of it.
    """
    if not held_rad_s or not both_rad_s:
        return (
            "no speeds were recorded: turn the baseline at half the wheel speed of the held test, the carrier then "
            "turns as fast in both"
        )
    share = both_rad_s / held_rad_s
    if HALF_SPEED[0] <= share <= HALF_SPEED[1]:
        return ""
    return (
        f"the baseline turned at {share * 100:.0f} % of the held test's wheel speed; at half of it the carrier turns "
        "as fast in both, and the viscous part of the drag is the same"
    )


def factor_two(value_nm: float, other_nm: float) -> str:
    """Say whether two results of one axle look like different members held (case clamped, or in gear)."""
    if min(value_nm, other_nm) <= 0:
        return ""
    ratio = max(value_nm, other_nm) / min(value_nm, other_nm)
    if not FACTOR_TWO[0] <= ratio <= FACTOR_TWO[1]:
        return ""
    return (
        f"{value_nm:.4g} and {other_nm:.4g} N·m differ by a factor of {ratio:.2f}: with the case held or a gear "
        "engaged the packs add up, with the other side held they are averaged; check which was held, and neutral"
    )


def in_gear_ratio(in_gear: Budget, neutral: Budget) -> Budget:
    """Give torque in gear ÷ torque in neutral, both wheels free, with shared inputs propagated.

    A dimensionless test: gain and lever, shared by both, cancel to first order. What a transducer reads wrong at one
    torque it need not read wrong at another: as much of its relative error as the two torques lie apart stays.

    Raises:
        ValueError: Nothing to divide by.
    """
    if not neutral.value > 0:
        raise ValueError("the torque in neutral must be positive")
    ratio = in_gear.value / neutral.value
    calibration = [r.input.u for b in (in_gear, neutral) for r in b.rows if r.input.name == CALIBRATION]
    terms = [(1 / neutral.value, _named(in_gear, "in gear")), (-ratio / neutral.value, _named(neutral, "neutral"))]
    found = replace(combine("in gear ÷ neutral", terms, "1"), value=ratio)
    if not calibration:
        return found
    apart = abs(in_gear.value - neutral.value) / max(abs(in_gear.value), neutral.value)
    note = "the error at one torque need not be that at another"
    return found.plus(Input(NON_LINEARITY, 0.0, abs(ratio) * max(calibration) * apart, "1", note=note))


ROLLING = {"forwards": {"right": 1, "left": -1}, "backwards": {"right": -1, "left": 1}}


def rolling(side: str, direction: int) -> str:
    """Give the way a wheel would roll: clockwise seen from outside is forwards on the right, backwards on the left."""
    return "forwards" if ROLLING["forwards"][side] == direction else "backwards"


@dataclass(frozen=True, slots=True)
class Matrix:
    """Results of the four ways to pull: side driven x direction, of one quantity."""

    # mapping of (side, direction) to Budget; side "left" or "right"; direction +1 or -1, seen from outside
    cells: Mapping[tuple[str, int], Budget]

    def pair(self, way: str) -> tuple[Budget, Budget] | None:
        """Give right and left of one way of rolling, "forwards" or "backwards"; None where one is missing."""
        right, left = (self.cells.get((side, ROLLING[way][side])) for side in ("right", "left"))
        return None if right is None or left is None else (right, left)

    def difference(self, way: str) -> Budget | None:
        """Give right less left for one way of rolling, or None where one is missing."""
        both = self.pair(way)
        if both is None:
            return None
        return combine("right less left", [(1.0, _named(both[0], "right")), (-1.0, _named(both[1], "left"))])

    def words(self) -> tuple[str, ...]:
        """Say what the differences mean, and what they cannot mean."""
        said = []
        for way in ROLLING:
            difference = self.difference(way)
            if difference is None:
                continue
            size = f"right less left, {way}: {difference.value:+.3g} ± {difference.u95:.2g} N·m"
            if abs(difference.value) <= difference.u95:
                said.append(f"{size}: no difference shown")
            else:
                side = "right" if difference.value > 0 else "left"
                said.append(
                    f"{size}: the {side} wheel end drags more (brake, bearing, seal); not a weak pack: with one wheel "
                    "held the test shows the mean of both packs whichever side is turned"
                )
        return tuple(said)


@dataclass(frozen=True, slots=True)
class PackMean:
    """The pack mean of one quantity and way of rolling, or the reason why it is withheld."""

    quantity: str
    way: str
    budget: Budget | None
    how: str


@dataclass(frozen=True, slots=True)
class DragTest:
    """Held tests and baseline of one axle."""

    # mapping of quantity to Matrix; torque at the driven wheel, drag included: what nearly every printed limit is for
    raw: Mapping[str, Matrix]
    baseline: Mapping[tuple[str, str], Budget]  # mapping of (quantity, way) to Budget; both wheels free
    means: tuple[PackMean, ...]  # drag taken off
    notes: tuple[str, ...]  # what left and right say, and what to mind

    def to_json(self) -> dict[str, Any]:
        """Give it as JSON-ready values (schema ``heldwheel drag 1``)."""
        return {
            "schema": "heldwheel drag 1",
            "raw": [
                {"quantity": quantity, "side": side, "rolling": rolling(side, direction), **_value(budget)}
                for quantity, matrix in self.raw.items()
                for (side, direction), budget in matrix.cells.items()
            ],
            "both_free": [
                {"quantity": quantity, "rolling": way, **_value(budget)}
                for (quantity, way), budget in self.baseline.items()
            ],
            "pack_mean": [
                {"quantity": m.quantity, "rolling": m.way, "how": m.how, **(_value(m.budget) if m.budget else {})}
                for m in self.means
            ],
            "notes": list(self.notes),
        }


def _value(budget: Budget) -> dict[str, float]:
    return {"at_axle_nm": budget.value, "u95_axle_nm": budget.u95}
