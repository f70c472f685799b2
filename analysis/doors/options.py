"""Options that several commands share beside lever and limit (``logger.doors.lever_limit``): the rule, percentages."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from analysis.identify.slips import unit_guard
from analysis.verdict.limits import Guard, Rule
from logger.doors.lever_limit import LIMIT_HELP as TYPED_LIMIT_HELP
from logger.doors.lever_limit import add_typed_limit
from logger.edges.units import parse_number
from logger.errors import InputError, QuantityError

if TYPE_CHECKING:
    from logger.header import Limit

LIMIT_HELP = f"""{TYPED_LIMIT_HELP}

rules: three-way (default), simple, guarded-acceptance, guarded-rejection; guard band w = U (95 %), or 1.645u."""


def add_limit_options(parser: argparse.ArgumentParser, *, nothing_else: bool = False) -> None:
    """Add the options that state a limit and the rule that decides."""
    group = parser.add_argument_group("limit")
    add_typed_limit(group, required=nothing_else)
    group.add_argument("--held", choices=("other side", "case", "none"), help="what is held in the test that it is for")
    group.add_argument("--rule", type=_rule, metavar="RULE", help="how uncertainty decides, instead of the job's rule")
    group.add_argument("--guard", type=_guard, metavar="W", help="guard band: U (default) or 1.645u")


def _rule(text: str) -> Rule:
    plain = text.strip().lower().replace("-", " ")
    for rule in Rule:
        if plain == str(rule).replace("-", " "):
            return rule
    raise argparse.ArgumentTypeError(f"'{text}' is no rule; there are: {', '.join(r.replace(' ', '-') for r in Rule)}")


def _guard(text: str) -> Guard:
    plain = text.strip().lower().replace(" ", "")
    if plain in ("u", "u95", "u(95%)"):
        return Guard.U95
    if plain in ("1.645u", "1.645"):
        return Guard.ONE_SIDED
    raise argparse.ArgumentTypeError(f"'{text}' is no guard band; there are: U, 1.645u")


def limit_doubts(limit: Limit) -> tuple[str, ...]:
    """Say what about a limit looks like a slip of the unit."""
    if limit.is_ratio:
        return ()
    return tuple(t for v in (limit.lower, limit.upper) if v is not None for t in unit_guard(v, limit.unit))


def percent_from(text: str | None, option: str) -> float | None:
    """Read ``4%``, ``±4 %`` or ``4`` as 0.04.

    Raises:
        InputError: It is no percentage, or negative.
    """
    if text is None:
        return None
    try:
        value = parse_number(text.strip().removeprefix("±").removesuffix("%").strip())
    except QuantityError as error:
        raise InputError(f"{option}: {error}; write a percentage such as 4%") from None
    if value < 0:
        raise InputError(f"{option}: a percentage cannot be negative")
    return value / 100
