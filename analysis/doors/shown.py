"""How budgets and results are shown in a terminal."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from logger.edges.console import say, table
from logger.edges.door import Exit
from logger.edges.units import format_torque, torque_factor

if TYPE_CHECKING:
    from collections.abc import Iterable

    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Result

STYLES = {"within": "green", "outside": "red", "too close to call": "yellow", "not valid": "magenta"}
_EXITS = {
    "within": Exit.OK,
    "outside": Exit.OUTSIDE,
    "too close to call": Exit.TOO_CLOSE,
    "not valid": Exit.NOT_VALID,
}
# What a run of several results exits with: the gravest first.
_GRAVEST = (Exit.OUTSIDE, Exit.NOT_VALID, Exit.TOO_CLOSE, Exit.OK)


def exit_for(results: Iterable[Result]) -> Exit:
    """Give the exit code of several results: outside before not valid before too close to call before within."""
    codes = {_EXITS[str(result.state)] for result in results}
    return next((code for code in _GRAVEST if code in codes), Exit.OK)


def budget_table(budget: Budget, unit: str = "N·m", title: str = "") -> None:
    """Draw a budget: share, contribution and source of each input, then value, u, sensitivity, ν; largest first."""
    torque = budget.unit == "N·m"
    scale = 1 / torque_factor(unit) if torque else 1.0
    shown_unit = unit if torque else budget.unit
    rows = []
    total = budget.u
    for row in sorted(budget.rows, key=lambda r: -r.contribution):
        i = row.input
        part = row.contribution * scale
        share = (row.contribution / total) ** 2 * 100 if total else 0.0
        dof = "∞" if math.isinf(i.dof) else f"{i.dof:.0f}"
        rows.append(
            (
                i.name,
                f"{share:.0f} %",
                f"{part:.2g}",
                i.note,
                f"{i.value:.5g} {i.unit}",
                f"{i.u:.2g}",
                f"{row.sensitivity * scale:.4g}",
                dof,
            )
        )
    headings = ("input", "share", f"contribution ({shown_unit})", "from", "value", "u", "sensitivity", "ν")
    table(headings, rows, title=title or f"Budget: {budget.quantity}", right=(1, 2, 4, 5, 6, 7))
    dof = "∞" if math.isinf(budget.dof) else f"{budget.dof:.1f}"
    say(f"u = {total * scale:.3g} {shown_unit}, ν = {dof}, U (95 %) = {budget.u95 * scale:.3g} {shown_unit}")


def both_units(nm: float, u95_nm: float | None, unit: str) -> str:
    """Write a torque in the wanted unit, and in N·m beside it where that is another."""
    shown = format_torque(nm, unit, u95_nm)
    return shown if unit == "N·m" else f"{shown} = {format_torque(nm, 'N·m', u95_nm)}"
