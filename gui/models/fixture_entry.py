"""A fixture as it is typed in: lengths and weights with their unit, checked by the analysis' own rules.

A stud circle that cannot be measured across comes from the stud-to-stud distance: as it was measured, or as the
common circle that it is near.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import msgspec

from analysis.identify.stud_circle import chord_factor, circle_from_chords
from analysis.to_axle.fixtures import fixture_from
from gui.models.display import Display
from gui.models.typed import length_mm, quantity
from logger.edges.units import parse_stud_circle
from logger.errors import DescriptionError, InputError, QuantityError
from logger.header import Lever
from logger.instruments.fixture_line import lever_of_line, line_in

if TYPE_CHECKING:
    from analysis.identify.stud_circle import StudCircle
    from logger.edges.units import Kind

_TORQUE = ("one stud", "cross-bar", "hub centre", "couple", "in-line")
# Key of the record -> caption, hint, fixtures that have it.
FIELDS: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "stud_circle_mm": ("Stud circle", "5x114.3 mm", ("one stud",)),
    "chord_mm": ("Stud-to-stud distance", "67.2 mm or 2 5/8 in", ("one stud", "cross-bar")),
    "length_mm": ("Lever, drive to hand", "450 mm", ("one stud", "cross-bar")),
    "angle_deg": ("Lever angle from stud line", "0° = in line", ("one stud", "cross-bar")),
    "offset_mm": ("Drive off the wheel's centre", "0 mm", ("cross-bar",)),
    "radius_mm": ("Radius of the force", "300 mm", ("force at radius", "cord", "dead weight")),
    "cord_mm": ("Cord diameter", "4 mm", ("cord",)),
    "pull_angle_deg": ("Pull, degrees off square", "0°", ("one stud", "force at radius")),
    "start_angle_deg": ("Lever at the start, from 3 o'clock", "0° = 3 o'clock, clockwise", (*_TORQUE, "dead weight")),
    "weight_kg": ("Weight of the lever", "1.2 kg, if known", _TORQUE),
    "centroid_mm": ("Its centre of mass from the drive", "200 mm", _TORQUE),
}
UNSHOWN = ("grip_mark_mm", "gauge_mm")
"""Of a torque wrench that bends: they come from a file or a label, and no field shows them."""

_KINDS: dict[str, tuple[Kind, float]] = {
    "mm": ("length", 1e3),
    "deg": ("angle", 57.29577951308232),
    "kg": ("mass", 1.0),
}


@dataclass(frozen=True, slots=True)
class FixtureDraft:
    """What stands in the fields, as typed; ``before`` is the lever that they were filled from."""

    kind: str = "one stud"
    name: str = ""
    studs: str = "5"
    values: dict[str, str] = field(default_factory=dict)
    apart: str = "1"
    before: Lever | None = None
    display: Display = field(default_factory=Display)


@dataclass(frozen=True, slots=True)
class CheckedFixture:
    """What a draft amounts to: the record and its factor once nothing is wrong, faults per field, notes."""

    lever: Lever | None
    lever_factor: float | None
    wrong: dict[str, str]
    notes: tuple[str, ...] = ()


def check(draft: FixtureDraft) -> CheckedFixture:
    """Check a draft and work its factor out; a label's line in the place of its name is no fixture yet."""
    scanned, why = read_label(draft.name)
    if scanned is not None or why:
        return CheckedFixture(None, None, {"name": why})
    wrong: dict[str, str] = {}
    lever = lever_of(draft, wrong)
    try:
        fixture = fixture_from(lever)
    except DescriptionError as error:
        missing = {fault.where.removeprefix("lever."): fault.what for fault in error.faults}
        return CheckedFixture(None, None, {**missing, **wrong})
    if wrong:
        return CheckedFixture(None, None, wrong)
    factor = fixture.factor if fixture.reads == "torque" else None
    return CheckedFixture(lever, factor, {}, fixture.notes)


def read_label(text: str) -> tuple[Lever | None, str]:
    """Give the fixture whose label was scanned into a text, or why that line cannot be read; neither: it has none."""
    line = line_in(text)
    if not line:
        return None, ""
    try:
        return lever_of_line(line), ""
    except InputError as error:
        return None, f"This label: {error}"


def lever_of(draft: FixtureDraft, wrong: dict[str, str]) -> Lever:
    """Give the record of what can be read so far; what cannot is told in ``wrong``."""
    values: dict[str, object] = {"fixture": draft.kind, "name": draft.name.strip()}
    if draft.kind in {"one stud", "cross-bar"} and draft.studs:
        values["studs"] = int(draft.studs)
    for key, text in draft.values.items():
        if draft.kind in FIELDS[key][2] and text.strip():
            number = _number(key, text, draft, wrong)
            if number is not None:
                values[key] = number
    if "chord_mm" in values:
        values["chord_apart"] = int(draft.apart)
    if draft.before is not None and draft.before.fixture == draft.kind:
        _keep_unshown(draft.before, values)
    return msgspec.convert(values, Lever)


def _keep_unshown(before: Lever, values: dict[str, object]) -> None:
    """Keep what no field shows of the lever that they were filled from: an uncertainty as long as its value stays."""
    for key in (key for key in Lever.__struct_fields__ if key.startswith(UNSHOWN) or key.endswith("_u")):
        value, known = key.removesuffix("_u"), getattr(before, key)
        if known is not None and (value not in FIELDS or values.get(value) == getattr(before, value)):
            values[key] = known


def circle_of(draft: FixtureDraft) -> tuple[StudCircle | None, str]:
    """Give the stud circle that the stud-to-stud distance means, or what is wrong with that distance."""
    wrong: dict[str, str] = {}
    text = draft.values.get("chord_mm", "")
    chord_mm = _number("chord_mm", text, draft, wrong) if text.strip() else None
    if chord_mm is None:
        return None, wrong.get("chord_mm", "")
    try:
        return circle_from_chords(int(draft.studs), [(chord_mm / 1e3, int(draft.apart))]), ""
    except InputError as error:
        return None, str(error)


def circle_mm(lever: Lever) -> float | None:
    """Give a lever's stud circle, as it is stated or from the distance of two studs; None where neither says it."""
    if lever.stud_circle_mm is not None or lever.chord_mm is None or lever.studs is None:
        return lever.stud_circle_mm
    try:
        return lever.chord_mm * chord_factor(lever.studs, lever.chord_apart or 1)
    except InputError:
        return None


def apart_options(studs: int) -> list[tuple[str, str]]:
    """Say how two of so many studs may lie: next to each other, with some between, opposite."""
    between = ("Next to each other", "One stud between", "Two studs between", "Three studs between")
    words = {n: between[n - 1] if n <= len(between) else f"{n - 1} studs between" for n in range(1, studs // 2 + 1)}
    if studs % 2 == 0:
        words[studs // 2] = "Opposite each other"
    return [(str(n), text) for n, text in words.items()]


def draft_of(lever: Lever, display: Display | None = None) -> FixtureDraft:
    """Give a saved lever as fields to edit, its lengths in the unit on screen."""
    display = display or Display()
    values = {}
    for key in FIELDS:
        value, unit = getattr(lever, key), key.rsplit("_", 1)[1]
        if value is not None:
            values[key] = display.typed_length(value) if unit == "mm" else f"{value:g}{' kg' if unit == 'kg' else '°'}"
    studs, apart = str(lever.studs or ""), str(lever.chord_apart or 1)
    return FixtureDraft(lever.fixture, lever.name, studs, values, apart, lever, display)


def _number(key: str, text: str, draft: FixtureDraft, wrong: dict[str, str]) -> float | None:
    kind, factor = _KINDS[key.rsplit("_", 1)[1]]
    try:
        if key == "stud_circle_mm" and "x" in text.lower():
            plain = text.strip()
            if plain[-1].isdigit():
                raise QuantityError(f"In which unit? Write {plain} mm or {plain} in")
            return round(parse_stud_circle(plain)[1] * factor, 9)
        if kind == "length":
            return length_mm(text, draft.display, getattr(draft.before, key, None))
        return round(quantity(text, kind) * factor, 9)
    except QuantityError as error:
        wrong[key] = str(error)
        return None
