"""Units at the edges: text to SI floats and back. Inside the program every quantity is SI with its unit in the name.

Conventions:
- A torque unit is a force unit and a length unit in either order, in any of the spellings people write:
  ``N·m``, ``Nm``, ``lbf·ft``, ``ft-lb``, ``lbf_in``, ``kgf cm``, ``oz·in``.
- ``lb``, ``kg``, ``oz`` and ``g`` in a torque unit mean the force (lbf, kgf ...): nobody writes a torque as mass x
  length.
- Factors are exact by definition: 1 lb = 0.453 592 37 kg, 1 in = 0.0254 m, standard gravity 9.806 65 m/s² (NIST SP 811,
  appendix B).
- Temperatures are given in degrees Celsius, which the SI allows and every record uses.
"""

from __future__ import annotations

import math
from typing import Literal

from logger.errors import QuantityError

Kind = Literal["torque", "length", "angle", "mass", "force", "time", "volume", "temperature"]

POUND_KG = 0.45359237  # international avoirdupois pound, exact
GRAVITY_M_S2 = 9.80665  # standard gravity, exact
INCH_M = 0.0254  # exact
FOOT_M = 0.3048  # exact

_FORCES_N = {
    "N": 1.0,
    "daN": 10.0,
    "mN": 1e-3,
    "cN": 1e-2,
    "kN": 1e3,
    "lbf": POUND_KG * GRAVITY_M_S2,
    "ozf": POUND_KG * GRAVITY_M_S2 / 16,
    "kgf": GRAVITY_M_S2,
    "gf": GRAVITY_M_S2 / 1000,
    "dyn": 1e-5,
}
_FORCE_SPELLINGS = {
    "N": ("n", "newton", "newtons"),
    "daN": ("dan",),
    "mN": ("mn",),
    "cN": ("cn",),
    "kN": ("kn",),
    "lbf": ("lbf", "lb", "lbs", "pound", "pounds"),
    "ozf": ("ozf", "oz", "ounce", "ounces"),
    "kgf": ("kgf", "kg", "kp"),
    "gf": ("gf", "g"),
    "dyn": ("dyn", "dyne"),
}
_LENGTHS_M = {"m": 1.0, "cm": 1e-2, "mm": 1e-3, "ft": FOOT_M, "in": INCH_M}
_LENGTH_SPELLINGS = {
    "m": ("m", "metre", "metres", "meter", "meters"),
    "cm": ("cm",),
    "mm": ("mm",),
    "ft": ("ft", "foot", "feet"),
    "in": ("in", "inch", "inches"),
}
_JOINERS = str.maketrans("", "", " \t\u00a0.·•⋅∙*×-_‐‑–")  # between the two halves of a torque unit

_OTHER_UNITS: dict[str, dict[str, float]] = {
    "length": {"m": 1.0, "mm": 1e-3, "cm": 1e-2, "in": INCH_M, '"': INCH_M, "ft": FOOT_M, "'": FOOT_M},
    "angle": {
        "deg": math.pi / 180,
        "°": math.pi / 180,
        "rad": 1.0,
        "mrad": 1e-3,
        "turn": 2 * math.pi,
        "turns": 2 * math.pi,
        "rev": 2 * math.pi,
    },
    "mass": {"kg": 1.0, "g": 1e-3, "lb": POUND_KG, "lbs": POUND_KG, "oz": POUND_KG / 16},
    "force": {name: _FORCES_N[unit] for unit, names in _FORCE_SPELLINGS.items() for name in (unit, *names)},
    # NIST SP 811, appendix B; the imperial fluid ounce by the Weights and Measures Act 1985.
    "volume": {"l": 1e-3, "ml": 1e-6, "cl": 1e-5, "dl": 1e-4, "US fl oz": 2.95735295625e-5, "UK fl oz": 2.84130625e-5},
    "time": {"s": 1.0, "ms": 1e-3, "min": 60.0, "h": 3600.0},
}
_TEMPERATURE_UNITS = ("°C", "C", "degC", "°F", "F", "degF", "K")


def _torque_spellings() -> dict[str, tuple[str, float]]:
    """Give every accepted spelling (joiners removed, lower case) with its canonical unit and factor."""
    table: dict[str, tuple[str, float]] = {}
    for force, force_n in _FORCES_N.items():
        for length, length_m in _LENGTHS_M.items():
            meaning = (f"{force}·{length}", force_n * length_m)
            for force_name in _FORCE_SPELLINGS[force]:
                for length_name in _LENGTH_SPELLINGS[length]:
                    table[force_name + length_name] = meaning
                    if force[-1] != "N":  # "m·N" would read as millinewton
                        table.setdefault(length_name + force_name, meaning)
    return table


_TORQUES = _torque_spellings()


def _torque_unit(text: str) -> tuple[str, float]:
    found = _TORQUES.get(text.strip().translate(_JOINERS).lower())
    if found is None or "MN" in text:  # mega is never meant, and milli would be a factor of 1e9
        raise QuantityError(
            f"'{_shown(text)}' is no torque unit; use N·m (Nm), lbf·ft (ft-lb), lbf·in (in-lb), kgf·m, kgf·cm or ozf·in"
        )
    return found


def torque_factor(unit: str) -> float:
    """Give the newton metres in one ``unit``.

    Raises:
        QuantityError: The unit is not known.

    >>> round(torque_factor("ft-lb"), 6)
    1.355818
    """
    return _torque_unit(unit)[1]


def canonical_unit(text: str) -> str:
    """Give the one spelling that we write for a torque unit.

    Raises:
        QuantityError: The unit is not known.

    >>> canonical_unit("lb_ft"), canonical_unit("Nm"), canonical_unit("in-oz")
    ('lbf·ft', 'N·m', 'ozf·in')
    """
    return _torque_unit(text)[0]


def force_factor(unit: str) -> float:
    """Give the newtons in one ``unit`` of force; kilograms and pounds on a scale are forces, as they are in a torque.

    Raises:
        QuantityError: The unit is not known.

    >>> force_factor("kg"), round(force_factor("lbf"), 6)
    (9.80665, 4.448222)
    """
    return _FORCES_N[canonical_force(unit)]


def canonical_force(text: str) -> str:
    """Give the one spelling that we write for a unit of force: ``N``, ``kN``, ``kgf``, ``lbf``.

    Raises:
        QuantityError: The unit is not known.
    """
    plain = text.strip().rstrip(".").strip()
    low = plain.lower()
    if "MN" not in plain:
        for force, spellings in _FORCE_SPELLINGS.items():
            if plain == force or low in spellings:
                return force
    raise QuantityError(f"'{_shown(text)}' is no unit of force; use N, kN, daN, kgf (kg), gf (g), lbf (lb) or ozf (oz)")


def is_force(unit: str) -> bool:
    """Whether this is a unit of force: a transducer that reads in it needs a lever before it says a torque."""
    try:
        canonical_force(unit)
    except QuantityError:
        return False
    return True


def reading_unit(text: str) -> str:
    """Give the one spelling of a transducer's unit, which is one of torque or of force.

    Raises:
        QuantityError: It is neither.

    >>> reading_unit("Nm"), reading_unit("kg")
    ('N·m', 'kgf')
    """
    return canonical_force(text) if is_force(text) else canonical_unit(text)


def reading_factor(unit: str) -> float:
    """Give what one of a transducer's unit is in SI: N·m, or N where it reads a force.

    Raises:
        QuantityError: It is neither.
    """
    return force_factor(unit) if is_force(unit) else torque_factor(unit)


def column_unit(unit: str) -> str:
    """Give a unit as it stands in a column's name, in plain ASCII: ``lbf_in``, ``Nm``, ``deg``, ``deg_s``."""
    plain = unit.replace("N·m", "Nm").replace("°", "deg").replace("%", "percent").replace("²", "2")
    return "".join(c if c.isascii() and c.isalnum() else "_" for c in plain).strip("_")


def _shown(text: str) -> str:
    """Give user text for a message: one short line without control characters."""
    return "".join(c if c.isprintable() else "?" for c in text)[:60]


def _scan_number(text: str) -> int:
    """Give the length of the number that ``text`` begins with; 0 if it begins with none."""
    i = 1 if text[:1] in ("+", "-") else 0
    digits = 0
    mark = False
    while i < len(text) and ((text[i].isascii() and text[i].isdigit()) or (text[i] in ".," and not mark)):
        mark = mark or text[i] in ".,"
        digits += text[i] not in ".,"
        i += 1
    if digits == 0:
        return 0
    j = i + 1
    if text[i : i + 1] in ("e", "E"):
        j += text[j : j + 1] in ("+", "-")
        if text[j : j + 1].isdigit():
            while j < len(text) and text[j].isascii() and text[j].isdigit():
                j += 1
            return j
    return i


def parse_number(text: str) -> float:
    """Read a number that a person or a device wrote: ``12``, ``-.5``, ``2.73E+2``, ``3,25``.

    Args:
        text: The forms NR1, NR2 and NR3 of IEEE 488.2, with a point or a decimal comma.

    Raises:
        QuantityError: It is no finite number, or may be read in two ways: ``1,234`` could be 1.234 or 1234.

    >>> parse_number("3,25"), parse_number("-456.789E+6")
    (3.25, -456789000.0)
    """
    plain = text.strip().replace("\u2212", "-")
    if not plain or _scan_number(plain) != len(plain):
        hint = "; write it without thousands separators" if plain.count(",") + plain.count(".") > 1 else ""
        raise QuantityError(f"'{_shown(text)}' is no number{hint}")
    whole, comma, fraction = plain.lstrip("+-").partition(",")
    if comma and len(fraction) == 3 and fraction.isdigit() and 0 < len(whole) <= 3 and whole[0] != "0":
        raise QuantityError(f"'{_shown(text)}' may mean {whole}.{fraction} or {whole}{fraction}: write one of these")
    value = float(plain.replace(",", "."))
    if not math.isfinite(value):
        raise QuantityError(f"'{_shown(text)}' is too large")
    return value


def parse_quantity(text: str, kind: Kind, default_unit: str | None = None) -> float:
    """Read a number with its unit, such as ``450mm``, ``18 lbf·ft`` or ``17,5 in``.

    Args:
        text: Number, optional blanks, unit.
        kind: What is expected: torque, length, angle, mass, force, time, volume or temperature.
        default_unit: Unit of a bare number; without it the unit is mandatory.

    Returns:
        float: In SI: N·m, m, rad, kg, N, s, m³; temperatures in °C.

    Raises:
        QuantityError: No number, no unit, or a unit of another kind; the text lists what is allowed.

    >>> parse_quantity("450mm", "length"), round(parse_quantity("18 lbf·ft", "torque"), 3)
    (0.45, 24.405)
    """
    plain = text.strip().replace("\u2212", "-")
    length = _scan_number(plain)
    unit = plain[length:].strip() or default_unit
    allowed = _allowed_units(kind)
    if length == 0 or unit is None:
        what = "has no number" if length == 0 else "has no unit"
        raise QuantityError(f"{kind} '{_shown(text)}' {what}; write a number and one of: {allowed}")
    number = parse_number(plain[:length])
    if kind == "temperature" and unit in _TEMPERATURE_UNITS:
        value = _celsius(number, unit)
    else:
        factor = torque_factor(unit) if kind == "torque" else _OTHER_UNITS.get(kind, {}).get(unit)
        if factor is None:
            raise QuantityError(f"{kind} '{_shown(text)}': '{_shown(unit)}' is no {kind} unit; use one of: {allowed}")
        value = number * factor
    if not math.isfinite(value):
        raise QuantityError(f"{kind} '{_shown(text)}' is too large")
    return value


def _allowed_units(kind: Kind) -> str:
    if kind == "torque":
        return "N·m, lbf·ft, lbf·in, kgf·m, kgf·cm, ozf·in"
    return ", ".join(_TEMPERATURE_UNITS if kind == "temperature" else _OTHER_UNITS[kind])


def _celsius(number: float, unit: str) -> float:
    if unit == "K":
        return number - 273.15
    return (number - 32) * 5 / 9 if unit.endswith("F") else number


def parse_stud_circle(text: str) -> tuple[int | None, float]:
    """Read a stud circle: ``5x114.3mm``, ``4 x 4.25 in`` or only ``114.3mm``.

    Returns:
        studs: Number of studs, where it is written.
        diameter_m: Diameter of the circle through the studs' centres.

    Raises:
        QuantityError: It cannot be read, the unit is missing, or it is no wheel (3-10 studs, diameter above 0).

    >>> parse_stud_circle("5x114.3mm")
    (5, 0.1143)
    """
    plain = text.strip().replace("×", "x").replace("X", "x").replace("*", "x")
    before, cross, after = plain.partition("x")
    studs: int | None = None
    if cross:
        count = before.strip()
        if not (count.isascii() and count.isdigit() and 3 <= int(count[:3]) <= 10):
            raise QuantityError(f"stud circle '{_shown(text)}': the number of studs must be 3 to 10, as in 5x114.3mm")
        studs = int(count)
    diameter_m = round(parse_quantity(after if cross else plain, "length"), 9)
    if diameter_m <= 0:
        raise QuantityError(f"stud circle '{_shown(text)}': the diameter must be above zero")
    return studs, diameter_m


def minus(number: str) -> str:
    """Write a number with a true minus sign, so that it does not look like a range."""
    return number.replace("-", "−")


def format_torque(nm: float, unit: str, u95_nm: float | None = None) -> str:
    """Write a torque for people, with its 95 % interval if given.

    The uncertainty has two significant digits and the value is rounded to match (JCGM 100 7.2.6); without one the
    value has four.

    >>> format_torque(27.4, "lbf·ft", 1.2), format_torque(27.4, "N·m")
    ('20.21 ± 0.89 lbf·ft', '27.40 N·m')
    """
    name, factor = _torque_unit(unit)
    value = nm / factor
    if not math.isfinite(value):
        return f"– {name}"
    if u95_nm is None or not math.isfinite(u95_nm) or u95_nm <= 0:
        return f"{value:.{_decimals(value, 4)}f} {name}"
    expanded = u95_nm / factor
    decimals = _decimals(expanded, 2)
    return f"{value:.{decimals}f} ± {expanded:.{decimals}f} {name}"


def _decimals(value: float, significant: int) -> int:
    """Give the decimals that show ``value`` with so many significant digits."""
    if value == 0:
        return significant - 1
    return min(9, max(0, significant - 1 - math.floor(math.log10(abs(float(f"{value:.{significant - 1}e}"))))))
