"""A fixture as it is typed in: lengths with or without their unit, checked by the analysis' own rules."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import msgspec

from analysis.fixtures import fixture_from
from logger.errors import DescriptionError, QuantityError
from logger.header import Lever
from logger.units import parse_quantity, parse_stud_circle

if TYPE_CHECKING:
    from logger.units import Kind

_TORQUE = ("one stud", "cross-bar", "hub centre", "couple", "in-line")
# Key of the record -> caption, hint, fixtures that have it.
FIELDS: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "stud_circle_mm": ("Stud circle", "114.3 mm or 5x114.3", ("one stud",)),
    "length_mm": ("Lever, drive to hand", "450 mm", ("one stud", "cross-bar")),
    "angle_deg": ("Lever to radius", "0° = in line", ("one stud", "cross-bar")),
    "offset_mm": ("Drive off the wheel's centre", "0 mm", ("cross-bar",)),
    "radius_mm": ("Radius of the force", "300 mm", ("force at radius", "cord", "dead weight")),
    "cord_mm": ("Cord diameter", "4 mm", ("cord",)),
    "pull_angle_deg": ("Off square to the lever", "0°", ("one stud", "force at radius")),
    "start_angle_deg": ("Lever above level at the start", "0°", (*_TORQUE, "dead weight")),
    "weight_kg": ("Weight of the lever", "1.2 kg, if known", _TORQUE),
    "centroid_mm": ("Its centre of mass from the drive", "200 mm", _TORQUE),
}
_KINDS: dict[str, tuple[Kind, str, float]] = {"mm": ("length", "mm", 1e3), "deg": ("angle", "°", 57.29577951308232)}
_KINDS["kg"] = ("mass", "kg", 1.0)


@dataclass(frozen=True, slots=True)
class FixtureDraft:
    """What stands in the fields, as typed."""

    kind: str = "one stud"
    name: str = ""
    studs: str = "5"
    values: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class CheckedFixture:
    """What a draft amounts to: the record and its factor once nothing is wrong, faults per field, notes."""

    lever: Lever | None
    factor: float | None
    wrong: dict[str, str]
    notes: tuple[str, ...] = ()


def check(draft: FixtureDraft) -> CheckedFixture:
    """Check a draft and work its factor out."""
    wrong: dict[str, str] = {}
    values: dict[str, object] = {"fixture": draft.kind, "name": draft.name.strip()}
    if draft.kind in {"one stud", "cross-bar"} and draft.studs:
        values["studs"] = int(draft.studs)
    for key, text in draft.values.items():
        if draft.kind in FIELDS[key][2] and text.strip():
            number = _number(key, text, wrong)
            if number is not None:
                values[key] = number
    lever = msgspec.convert(values, Lever)
    try:
        fixture = fixture_from(lever)
    except DescriptionError as error:
        missing = {fault.where.removeprefix("lever."): fault.what for fault in error.faults}
        return CheckedFixture(None, None, {**missing, **wrong})
    if wrong:
        return CheckedFixture(None, None, wrong)
    factor = fixture.factor if fixture.reads == "torque" else None
    return CheckedFixture(lever, factor, {}, fixture.notes)


def draft_of(lever: Lever) -> FixtureDraft:
    """Give a saved lever as fields to edit."""
    units = {"mm": " mm", "deg": "°", "kg": " kg"}
    values = {
        key: f"{getattr(lever, key):g}{units[key.rsplit('_', 1)[1]]}"
        for key in FIELDS
        if getattr(lever, key) is not None
    }
    return FixtureDraft(lever.fixture, lever.name, str(lever.studs or ""), values)


def _number(key: str, text: str, wrong: dict[str, str]) -> float | None:
    kind, unit, factor = _KINDS[key.rsplit("_", 1)[1]]
    try:
        if key == "stud_circle_mm" and "x" in text.lower():
            plain = text.strip()
            return round(parse_stud_circle(f"{plain} mm" if plain[-1].isdigit() else plain)[1] * factor, 9)
        return round(parse_quantity(text, kind, unit) * factor, 9)
    except QuantityError as error:
        wrong[key] = str(error)
        return None
