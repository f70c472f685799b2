"""From a lever as the user writes it down (``logger.header.Lever``) to a checked ``Fixture`` in SI."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from analysis.identify.stud_circle import chord_factor
from analysis.to_axle.lever import (
    ASSUMED_HALF_WIDTH,
    BALANCED,
    FORMULAS,
    GRAVITY_HALF_WIDTH,
    GRIP,
    STANDARD_GRAVITY,
    Fixture,
    Weight,
    assumed_weight,
)
from analysis.uncertainty.budget import Input, half_width
from logger.errors import DescriptionError, Fault, InputError

if TYPE_CHECKING:
    from logger.header import Lever

# Input of the equations -> (key of the record, SI units per unit of the key, unit, value if not stated).
_KEYS: dict[str, tuple[str, float, str, float | None]] = {
    "lever length": ("length_mm", 1e-3, "m", None),
    "lever angle": ("angle_deg", math.pi / 180, "rad", 0.0),
    "pull angle": ("pull_angle_deg", math.pi / 180, "rad", 0.0),
    "drive offset": ("offset_mm", 1e-3, "m", 0.0),
    "force radius": ("radius_mm", 1e-3, "m", None),
    "drum radius": ("radius_mm", 1e-3, "m", None),
    "cord diameter": ("cord_mm", 1e-3, "m", 0.0),
    "slope of the arm": ("start_angle_deg", math.pi / 180, "rad", 0.0),
    "grip mark": ("grip_mark_mm", 1e-3, "m", None),
    "gauge section": ("gauge_mm", 1e-3, "m", None),
}

# Beyond these a length was probably typed in another unit: no hand lever is shorter than 5 cm or longer than 3 m.
LENGTH_LIKELY_M = (0.05, 3.0)
# No length, angle or mass of this job is beyond these, and arithmetic cannot overflow within them.
LENGTH_POSSIBLE_M = (1e-3, 100.0)
MASS_POSSIBLE_KG = 1000.0
# Off the line by more than this, the obliqueness of the pull changes the result: at 90° a pull 10° off changes a
# 5×114.3 reading at 450 mm by 2.2 %.
LINED_UP_RAD = math.radians(20)
# A pull this far from square to the lever is a slip of the pen.
PULL_ANGLE_MOST_RAD = math.radians(60)
# A stud circle and a chord that disagree by more than this are not of the same hub.
CIRCLE_AGREES_M = 0.002


@dataclass(slots=True)
class _Reader:
    """Collects inputs, faults and notes while the record is read."""

    lever: Lever
    faults: list[Fault] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    def fault(self, key: str, what: str) -> None:
        self.faults.append(Fault(f"lever.{key}", what))

    def quantity(self, name: str) -> Input:
        """Give an input of the equations from its key, or what is assumed for it."""
        key, si, unit, default = _KEYS[name]
        value = getattr(self.lever, key)
        if value is None:
            if default is None:
                self.fault(key, f"a '{self.lever.fixture}' fixture needs it")
                return Input(name, 1.0, 0.0, unit)
            if name == "lever angle":
                self.notes.append("lever angle not stated: taken as 0°, in line with the wheel centre and the stud")
            value = default / si
        self._check(name, key, value * si)
        return self.uncertain(name, key, value * si, si, unit)

    def uncertain(self, name: str, key: str, value: float, si: float, unit: str) -> Input:
        """Give the input with its stated standard uncertainty, or an assumed half-width."""
        u = getattr(self.lever, f"{key}_u", None)
        if u is not None:
            if not 0 <= u * si <= LENGTH_POSSIBLE_M[1]:
                self.fault(f"{key}_u", "a standard uncertainty cannot be negative, nor so large")
            return Input(name, value, abs(u) * si, unit, shared=True, note="stated")
        half = ASSUMED_HALF_WIDTH[name]
        shown = f"{math.degrees(half):.3g}°" if unit == "rad" else f"{half * 1e3:.3g} mm"
        return half_width(name, value, half, unit, shared=True, note=f"assumed ± {shown}" if half else "stated")

    def _check(self, name: str, key: str, value: float) -> None:
        if not abs(value) <= LENGTH_POSSIBLE_M[1]:
            self.fault(key, "must be a number, and no larger than 100 m or 100 rad")
        elif name in ("lever length", "force radius", "drum radius", "grip mark", "gauge section"):
            self._check_length(key, value)
        elif name == "cord diameter" and value < 0:
            self.fault(key, "a diameter cannot be negative")
        elif name == "pull angle" and abs(value) > PULL_ANGLE_MOST_RAD:
            self.fault(key, "must be within ±60°: 0 means square to the lever")
        elif abs(value) > 2 * math.pi and "angle" in key:
            self.fault(key, "must be within ±360°")

    def _check_length(self, key: str, value: float) -> None:
        if value < LENGTH_POSSIBLE_M[0]:
            self.fault(key, "must be positive, in millimetres: measure from the drive axis to the middle of the hand")
        elif key in ("length_mm", "radius_mm") and not LENGTH_LIKELY_M[0] <= value <= LENGTH_LIKELY_M[1]:
            self.notes.append(f"{key} = {value * 1e3:g} mm is unusual for a lever: is the unit right?")

    def stud_radius(self) -> Input:
        """Give the radius of the stud circle, from its diameter or from a chord."""
        name, unit, lever = "stud radius", "m", self.lever
        if lever.stud_circle_mm is not None:
            if not 1 <= lever.stud_circle_mm <= 1e5:
                self.fault(
                    "stud_circle_mm", "must be positive, in millimetres: the diameter through the centres of the studs"
                )
                return Input(name, 1.0, 0.0, unit)
            radius = self.uncertain(name, "stud_circle_mm", lever.stud_circle_mm / 2e3, 0.5e-3, unit)
            self._compare_chord(radius.value)
            return radius
        if lever.chord_mm is None:
            self.fault("stud_circle_mm", "one stud needs it, or chord_mm with studs: the stud-to-stud distance")
            return Input(name, 1.0, 0.0, unit)
        return self._radius_of_chord() or Input(name, 1.0, 0.0, unit)

    def _radius_of_chord(self) -> Input | None:
        lever = self.lever
        if lever.chord_mm is None or lever.studs is None:
            self.fault("studs", "a chord needs the number of studs")
            return None
        if not 1 <= lever.chord_mm <= 1e5:
            self.fault(
                "chord_mm", "must be positive, in millimetres: from the centre of one stud to the centre of the other"
            )
            return None
        try:
            per_chord = chord_factor(lever.studs, lever.chord_apart or 1) / 2
        except InputError as error:
            self.fault("studs", str(error))
            return None
        half = ASSUMED_HALF_WIDTH["stud radius"] * per_chord
        radius = lever.chord_mm / 1e3 * per_chord
        return half_width("stud radius", radius, half, "m", shared=True, note="from a chord ± 1 mm")

    def _compare_chord(self, radius: float) -> None:
        if self.lever.chord_mm is None:
            return
        other = self._radius_of_chord()
        if other is not None and abs(other.value - radius) > CIRCLE_AGREES_M / 2:
            circles = f"{radius * 2e3:.1f} mm and, from the chord, {other.value * 2e3:.1f} mm"
            self.notes.append(f"stud circles of {circles} disagree: count the studs")

    def weight(self) -> Weight | None:
        """Give the lever's own weight, as stated or assumed; None where nothing hangs on one side."""
        lever = self.lever
        if lever.weight_kg is None:
            if lever.fixture in BALANCED:
                return None
            length = lever.radius_mm if FORMULAS[lever.fixture].reads != "torque" else lever.length_mm
            usable = length is not None and LENGTH_POSSIBLE_M[0] <= length / 1e3 <= LENGTH_LIKELY_M[1]
            return assumed_weight(length / 1e3 if usable and length is not None else None)
        if not 0 < lever.weight_kg <= MASS_POSSIBLE_KG:
            self.fault("weight_kg", f"must be positive and at most {MASS_POSSIBLE_KG:g} kg")
        if lever.centroid_mm is None or not 0 < lever.centroid_mm <= 1e5:
            self.fault("centroid_mm", "a lever's weight needs its centre of mass: balance it on an edge")
            return None
        start = None if lever.start_angle_deg is None else math.radians(lever.start_angle_deg)
        if start is not None and not abs(start) <= 2 * math.pi:
            self.fault("start_angle_deg", "must be within ±360°")
        return Weight(lever.weight_kg * STANDARD_GRAVITY, lever.centroid_mm / 1e3, start)


def fixture_from(lever: Lever, *, file: str = "lever") -> Fixture:
    """Check a lever and give it in SI.

    Args:
        lever: As written in a recording's header, a sidecar or a file of its own.
        file: Named in the message.

    Raises:
        DescriptionError: Everything missing or impossible, at once: zero or negative lengths, a lever that turns the
            torque round.
    """
    reader = _Reader(lever)
    inputs = tuple(reader.stud_radius() if name == "stud radius" else reader.quantity(name) for name in _names(lever))
    if lever.fixture == "dead weight":
        inputs = (*inputs, _gravity())
    weight = reader.weight()
    if not reader.faults:
        _check_whole(reader, Fixture(lever.fixture, inputs))
    if reader.faults:
        raise DescriptionError(file, reader.faults)
    return Fixture(lever.fixture, inputs, weight, tuple(reader.notes))


def _names(lever: Lever) -> tuple[str, ...]:
    """Names of the inputs to read from the record, gravity apart."""
    names = tuple(name for name in FORMULAS[lever.fixture].names if name != "gravity")
    gripped = (lever.grip_mark_mm, lever.gauge_mm) != (None, None) and FORMULAS[lever.fixture].reads == "torque"
    return (*names, *(name for name in GRIP if name not in names)) if gripped else names


def _gravity() -> Input:
    return half_width(
        "gravity", STANDARD_GRAVITY, GRAVITY_HALF_WIDTH, "m/s²", shared=True, note="standard; equator to pole"
    )


def _check_whole(reader: _Reader, fixture: Fixture) -> None:
    """Check what only the lengths and angles together can show."""
    values = fixture.values
    length = values.get("lever length")
    if "gauge section" in values and length is not None and values["gauge section"] >= min(length, values["grip mark"]):
        reader.fault("gauge_mm", "the gauge section lies between the drive axis and the hand")
        return
    radius = values.get("stud radius", values.get("drive offset", 0.0))
    if length is not None and abs(radius) >= length:
        reader.notes.append(
            f"the stud lies {radius * 1e3:.0f} mm off the centre, the lever is {length * 1e3:.0f} mm long: check units"
        )
    if fixture.factor <= 0:
        reader.fault(
            "length_mm", "this fixture would turn the torque round: the lever points back past the wheel centre"
        )
    if fixture.kind == "one stud" and abs(math.sin(values["lever angle"])) > math.sin(LINED_UP_RAD):
        reader.notes.append(
            "the lever is not in line with the stud: the result depends on a square pull; line up centre, stud, lever"
        )
    if fixture.kind == "held side":
        reader.notes.append("transducer on the held side: it reads the pack mean less half the driveline drag")
