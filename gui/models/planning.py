"""How many fills a comparison needs, and in which order to test them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.compare.runs import Quantity
from gui.models.sheets import QuantityScale, Sheet, Written
from logger.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.planner import Plan
    from analysis.compare.runs import Run
    from gui.models.comparing import Common

PURPOSES = {
    "difference": "Show a difference",
    "margin": "Show that nothing changed",
    "half width": "Know a mean",
}
POWERS = {"0.8": "80 %", "0.9": "90 %", "0.95": "95 %"}
SEEDS = 1_000_000
CURVE_BEYOND = 1.6  # the picture goes so far beyond the answer, to show what more fills would bring


@dataclass(frozen=True, slots=True)
class Wish:
    """What is to be planned; ``sd`` and ``amount`` in SI."""

    purpose: str  # one of ``PURPOSES``
    amount: float  # difference, margin or half width
    sd: float | None  # scatter from fill to fill; None to take it from the recordings, grouped by ``by``
    by: str  # tag that makes the groups
    power: float  # chance of showing it
    groups: tuple[str, ...]  # names in the order of tests, the control first
    seed: int  # makes the order repeatable


@dataclass(frozen=True, slots=True)
class Planned:
    """A plan: fills, their order, and what fewer or more fills would reach.

    ``plan`` and ``order`` are None and empty where only a mean is to be known. ``curve`` holds fills per group with
    the power reached, or the half width. ``simulated``: the scatter comes from simulated recordings.
    """

    wish: Wish
    sd: float
    per_group: int
    plan: Plan | None
    order: tuple[tuple[str, ...], ...]
    curve: tuple[tuple[float, float], ...]
    simulated: bool = False


def scatter_in(runs: Sequence[Run], common: Common, by: str) -> float:
    """Give the scatter from fill to fill of these recordings.

    Raises:
        InputError: They do not tell it.
    """
    from analysis.compare.groups import compare

    found = compare(runs, Quantity(common.quantity), by=by, unit=common.unit)
    if math.isnan(found.between_sd):
        raise InputError(
            f"these recordings, grouped by {by}, do not tell the scatter from fill to fill: a group needs two fills "
            "or more. Test three or four fills of one group first, or type the scatter."
        )
    return found.between_sd


def plan(runs: Sequence[Run], common: Common, wish: Wish) -> Planned:
    """Plan.

    Raises:
        InputError: A scatter, an amount or groups that cannot be planned with; the text says why.
    """
    from analysis.compare import planner

    sd = scatter_in(runs, common, wish.by) if wish.sd is None else wish.sd
    simulated = wish.sd is None and any(run.simulated for run in runs)
    if wish.purpose == "half width":
        n = planner.repeats_for_interval(sd, wish.amount)
        return Planned(wish, sd, n, None, (), _widths(sd, n), simulated)
    candidates = max(1, len(wish.groups) - 1)
    if wish.purpose == "margin":
        made = planner.equivalence_needed(sd, wish.amount, power=wish.power)
    else:
        made = planner.fills_needed(sd, wish.amount, candidates=candidates, power=wish.power)
    order: tuple[tuple[str, ...], ...] = ()
    if len(wish.groups) > 1:
        blocks = planner.run_order(wish.groups, made.per_group, seed=wish.seed)
        order = tuple(tuple(block) for block in blocks)
    return Planned(wish, sd, made.per_group, made, order, _powers(wish, sd, made.per_group, candidates), simulated)


def _powers(wish: Wish, sd: float, n: int, candidates: int) -> tuple[tuple[float, float], ...]:
    from analysis.compare.planner import reached

    return tuple(
        (float(fills), reached(sd, wish.amount, fills, candidates=candidates, same=wish.purpose == "margin"))
        for fills in _fills(n)
    )


def _widths(sd: float, n: int) -> tuple[tuple[float, float], ...]:
    from analysis.compare.planner import half_width_of

    return tuple((float(fills), half_width_of(sd, fills)) for fills in _fills(n))


def _fills(n: int) -> list[int]:
    last = max(6, math.ceil(CURVE_BEYOND * n))
    step = max(1, last // 40)
    return sorted({*range(2, last + 1, step), n})


# ---------------------------------------------------------------------- in words


def headline(planned: Planned, scale: QuantityScale) -> str:
    """Give the plan in one sentence, and what it rests on in another."""
    wish, made = planned.wish, planned.plan
    amount, sd = scale.asked(wish.amount), scale.words(planned.sd)
    if made is None:
        return f"{planned.per_group} fills. Their mean is then known within ± {amount} (95 %), at a scatter of {sd}."
    sure = f"with {scale.display.number(100 * made.power, 0)} % probability"
    same = wish.purpose == "margin"
    what = f"no change beyond {amount} would be shown" if same else f"a difference of {amount} would be detected"
    if made.control == made.per_group:
        count = f"{made.per_group} fills of each group, {made.total} in all"
        if same and len(wish.groups) > 2:
            count = f"{made.per_group} fills of each group"
    else:
        count = f"{made.per_group} fills of each candidate and {made.control} of the control, {made.total} in all"
    return f"{count}.\nAt a scatter of {sd} from fill to fill {what}, compared within blocks, {sure}."


def order_sheet(planned: Planned) -> Sheet | None:
    """Give the order of tests: one row per fill; None where there are no groups to order."""
    if not planned.order:
        return None
    rows: list[tuple[str, ...]] = []
    for block, names in enumerate(planned.order, 1):
        rows += [(str(len(rows) + place), str(block), name) for place, name in enumerate(names, 1)]
    return Sheet("Order of tests", ("Test", "Block (a day)", "Fill to test"), tuple(rows), frozenset({2}))


def written(planned: Planned, scale: QuantityScale) -> Written:
    """Give a plan as it is written: the order as a table; plan, order and seed as JSON."""
    sheet = order_sheet(planned)
    rows: list[tuple[str | float | None, ...]] = [("test", "block", "fill")]
    rows += [(float(test), float(block), name) for test, block, name in (sheet.rows if sheet else ())]
    plain: dict[str, object] = {"schema": "heldwheel plan 1", "values": planned.per_group, "sd": planned.sd}
    if planned.plan is not None:
        made = planned.plan
        plain = {
            "schema": "heldwheel plan 1",
            "per_group": made.per_group,
            "control": made.control,
            "total": made.total,
            "power": made.power,
            "text": made.text,
        }
        plain["order"] = {"schema": "heldwheel order 1", "seed": planned.wish.seed, "blocks": list(planned.order)}
    more = {"quantity": scale.quantity.value, "unit": scale.quantity.unit, "simulated": planned.simulated}
    return Written(tuple(rows), plain | more, planned.simulated)
