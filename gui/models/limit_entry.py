"""A limit as it is typed in: checked while typing, with the analysis' guard against the usual slips of the unit.

Nobody can know that a printed figure is wrong; the guard says what would explain an unlikely one, or two figures beside
each other that do not agree.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import msgspec

from analysis.identify.slips import unit_guard
from logger.edges.units import canonical_unit, parse_number, torque_factor
from logger.errors import QuantityError
from logger.header import LIMIT_KINDS, RATIO_KINDS, Limit

AGREE = 0.04  # two figures of one printed limit are rounded; beyond 4 % they are different torques


@dataclass(frozen=True, slots=True)
class LimitDraft:
    """What stands in the fields, as typed."""

    name: str = ""
    quantity: str = "breakaway"
    kind: str = "min"
    lower: str = ""
    upper: str = ""
    unit: str = "N·m"
    beside: str = ""  # the same limit in a second unit, where the manual prints one
    beside_unit: str = ""
    source: str = ""
    page: str = ""
    condition: str = ""
    place: str = ""
    held: str = ""
    gear: str = ""

    @property
    def bounds(self) -> tuple[str, ...]:
        """Which bounds a limit of its kind has."""
        return LIMIT_KINDS[self.kind]

    @property
    def is_ratio(self) -> bool:
        """Whether it compares two recordings, and has no unit."""
        return self.kind in RATIO_KINDS


@dataclass(frozen=True, slots=True)
class Checked:
    """What a draft amounts to."""

    limit: Limit | None  # the record, once nothing is wrong
    wrong: dict[str, str]  # per field: why it cannot be used
    warnings: tuple[str, ...]  # what looks like a slip; the user may be right


def check(draft: LimitDraft) -> Checked:
    """Check a draft: numbers, unit, source, and the usual slips of the unit."""
    wrong: dict[str, str] = {}
    unit = "1" if draft.is_ratio else _unit(draft.unit, wrong, "unit")
    lower = _number(draft.lower, wrong, "lower") if "lower" in draft.bounds else None
    upper = _number(draft.upper, wrong, "upper") if "upper" in draft.bounds else None
    if lower is not None and upper is not None and lower >= upper:
        wrong["upper"] = "The upper end must lie above the lower one."
    if not draft.source.strip():
        wrong["source"] = "A limit needs its source: which manual or rule, and its page."
    warnings = () if draft.is_ratio or unit is None else _guard(lower, upper, unit, draft)
    if wrong or unit is None:
        return Checked(None, wrong, warnings)
    return Checked(_limit(draft, unit, lower, upper), {}, warnings)


def _limit(draft: LimitDraft, unit: str, lower: float | None, upper: float | None) -> Limit:
    keys = {"name": draft.name, "quantity": draft.quantity, "kind": draft.kind, "unit": unit, "source": draft.source}
    keys = {key: value.strip() for key, value in keys.items()}
    if draft.is_ratio:  # of the rotating maxima, both wheels free: which part is held says nothing
        keys["quantity"], draft = "rotating maximum", replace(draft, held="", gear="")
    extra = {"page": draft.page, "condition": draft.condition, "place": draft.place, "held": draft.held}
    extra["gear"] = draft.gear
    values: dict[str, object] = {**keys, **{key: value.strip() for key, value in extra.items() if value.strip()}}
    return msgspec.convert({**values, "lower": lower, "upper": upper}, Limit)


def draft_of(limit: Limit) -> LimitDraft:
    """Give a saved limit as fields to edit."""

    def text(value: float | None) -> str:
        return "" if value is None else f"{value:g}"

    return LimitDraft(
        name=limit.name,
        quantity=limit.quantity,
        kind=limit.kind,
        lower=text(limit.lower),
        upper=text(limit.upper),
        unit="N·m" if limit.is_ratio else limit.unit,
        source=limit.source,
        page=limit.page,
        condition=limit.condition,
        place=limit.place or "",
        held=limit.held or "",
        gear=limit.gear or "",
    )


def _unit(text: str, wrong: dict[str, str], key: str) -> str | None:
    try:
        return canonical_unit(text)
    except QuantityError as error:
        wrong[key] = str(error)
        return None


def _number(text: str, wrong: dict[str, str], key: str) -> float | None:
    if not text.strip():
        wrong[key] = "A figure is missing here."
        return None
    try:
        value = parse_number(text)
    except QuantityError as error:
        wrong[key] = str(error)
        return None
    if value <= 0:
        wrong[key] = "Must be above zero: a limit is a magnitude, its direction belongs to the test."
        return None
    return value


def _guard(lower: float | None, upper: float | None, unit: str, draft: LimitDraft) -> tuple[str, ...]:
    found = [text for value in (lower, upper) if value is not None for text in unit_guard(value, unit)]
    first = lower if lower is not None else upper
    if first is not None and draft.beside.strip() and draft.beside_unit.strip():
        found += _disagree(first, unit, draft)
    return tuple(dict.fromkeys(found))


def _disagree(first: float, unit: str, draft: LimitDraft) -> tuple[str, ...]:
    """Compare the limit with the same limit in a second unit."""
    try:
        other = parse_number(draft.beside) * torque_factor(draft.beside_unit)
    except QuantityError as error:
        return (str(error),)
    mine = first * torque_factor(unit)
    if other <= 0 or abs(other / mine - 1) <= AGREE:
        return ()
    return unit_guard(first, unit, other) or (
        f"The two figures disagree: {mine:.4g} N·m and {other:.4g} N·m. One of them is misprinted or mistyped.",
    )
