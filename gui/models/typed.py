"""Numbers as a workshop writes them: a whole and a fraction, ``18 3/8`` turns or ``2 5/8 in``, and their unit."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from logger.edges.units import parse_number, parse_quantity
from logger.errors import QuantityError

if TYPE_CHECKING:
    from gui.models.display import Display
    from logger.edges.units import Kind

_ASKED: dict[str, tuple[str, ...]] = {"length": ("mm", "in"), "mass": ("kg", "lb"), "force": ("N", "lbf")}

_FRACTION = re.compile(r"\s*([-+\u2212]?)\s*(?:([0-9]{1,6})\s+)?([0-9]{1,4})/([0-9]{1,4})(?![0-9/])\s*(.*)", re.DOTALL)
_EIGHTHS = 8  # a chalk mark is read to an eighth of a turn: common practice, no source
_EXACT = 1e-9


def decimal(text: str) -> str:
    """Write a leading fraction as a decimal; anything else is given back as it is.

    >>> decimal("2 5/8 in"), decimal("-1/2"), decimal("17,5 mm")
    ('2.625 in', '-0.5', '17,5 mm')
    """
    found = _FRACTION.fullmatch(text)
    if found is None or int(found[4]) == 0:
        return text
    value = int(found[2] or 0) + int(found[3]) / int(found[4])
    sign = "-" if found[1] in ("-", "\u2212") else ""
    return f"{sign}{value:.9g} {found[5]}".strip()


def in_eighths(value: float) -> str:
    """Write a count of turns as it is read off a mark, in whole turns and eighths where it is that.

    >>> in_eighths(18.375), in_eighths(-0.5), in_eighths(10.0), in_eighths(3.1)
    ('18 3/8', '-1/2', '10', '3.1')
    """
    eighths = round(abs(value) * _EIGHTHS)
    if abs(abs(value) * _EIGHTHS - eighths) > _EXACT:
        return f"{value:g}"
    whole, part = divmod(eighths, _EIGHTHS)
    common = math.gcd(part, _EIGHTHS)
    words = [str(whole)] if whole or not part else []
    words += [f"{part // common}/{_EIGHTHS // common}"] if part else []
    return ("-" if value < 0 else "") + " ".join(words)


def quantity(text: str, kind: Kind) -> float:
    """Read a quantity in SI; one without its unit is asked for it, not guessed: 17.5 may be inches or millimetres.

    Raises:
        QuantityError: It has no unit, or cannot be read.

    >>> round(quantity("17 1/2 in", "length"), 5)
    0.4445
    """
    plain = decimal(text).strip()
    try:
        parse_number(plain)
    except QuantityError:
        return parse_quantity(plain, kind, "°" if kind == "angle" else None)
    if kind == "angle":
        return parse_quantity(plain, kind, "°")
    first, second = _ASKED.get(kind, ("", ""))
    raise QuantityError(f"In which unit? Write {text.strip()} {first} or {text.strip()} {second}")


def length_mm(text: str, display: Display, now_mm: float | None = None) -> float:
    """Read a length; what still stands there as it was shown is exactly what it was, however it was rounded.

    Raises:
        QuantityError: It has no unit, or cannot be read.
    """
    if now_mm is not None and text.strip() == display.typed_length(now_mm):
        return now_mm
    return round(quantity(text, "length") * 1e3, 9)
