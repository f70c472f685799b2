"""What the heading of a column says: what it is, and in which unit.

Conventions:
- Headings are read in the ways people and programs write them: ``torque_Nm``, ``Torque [lbf·ft]``, ``M / N·m`` (the
  quotient of ISO 80000-1, 7.1.3), ``Drehmoment in Nm``, ``Time, s``.
- The words of several languages are known; accents and case do not matter.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from logger.edges.units import canonical_force, canonical_unit
from logger.errors import QuantityError

Kind = Literal["time", "torque", "force", "angle", "sample", "direction", "unit", "other"]

SECONDS: Final = {
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds", "sek", "sekunden", "segundos", "secondi"), 1.0),
    **dict.fromkeys(("ms", "msec", "millisecond", "milliseconds", "millisekunden"), 1e-3),
    **dict.fromkeys(("us", "µs", "μs", "usec", "microseconds", "mikrosekunden"), 1e-6),
    **dict.fromkeys(("ns", "nsec", "nanoseconds"), 1e-9),
    **dict.fromkeys(("min", "mins", "minute", "minutes", "minuten"), 60.0),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours", "stunden"), 3600.0),
    **dict.fromkeys(("d", "day", "days", "tage"), 86400.0),
}
DEGREES: Final = {
    **dict.fromkeys(("deg", "°", "degree", "degrees", "grad"), 1.0),
    **dict.fromkeys(("rad", "radian", "radians"), 180 / np.pi),
    **dict.fromkeys(("turn", "turns", "rev", "revs", "revolutions", "umdrehungen"), 360.0),
}


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


_WORDS: Final[dict[Kind, frozenset[str]]] = {
    "time": _words(
        "time t zeit temps tiempo tempo tijd czas cas tid aika elapsed timestamp zeitstempel uhrzeit clock datetime "
        "date datum fecha seconds sekunden horodatage heure hora ora 時間 时间 時刻 시간 время"
    ),
    "torque": _words(
        "torque torq trq tq moment drehmoment couple par momento coppia koppel kroutici obrotowy vridmoment "
        "vaantomomentti 扭矩 转矩 トルク 토크 момент"
    ),
    "force": _words(
        "force load weight kraft last gewicht fuerza carga peso forza poids charge pull zugkraft masse mass "
        "kracht sila 力 荷重"
    ),
    "angle": _words("angle winkel drehwinkel angulo angolo hoek kat uhel vinkel kulma phi theta rotation 角度 угол"),
    "sample": _words(
        "sample samples index idx nr no number n point points row messpunkt messwertnr punkt probe counter seq "
        "sequence packet record reading # muestra echantillon campione lfd"
    ),
    "direction": _words("direction dir richtung drehrichtung sens senso sentido sense"),
    "unit": _words("unit units einheit unite unita unidad eenheid"),
}
_EXTREME: Final = _words(
    "peak max maximum min minimum spitze spitzenwert scheitelwert hold mean average avg mittelwert mittel target soll "
    "sollwert setpoint set limit grenze grenzwert upper lower tolerance tol tare tara offset error fehler std sigma "
    "u95 crete picco pico capacity nominal nennwert range"
)
_CAMEL: Final = re.compile(r"(?<=[a-z]{3})(?=[A-Z])")  # torqueNm
_BRACKETS: Final = re.compile(r"(?P<what>.*?)\s*[\[({<]\s*(?P<unit>[^\[\](){}<>]*?)\s*[\])}>]\s*(?P<more>.*)")
_BREAKS: Final = re.compile(r"\s+in\s+|\s*/\s*|\s*[,;:]\s*|[\s_]+")


@dataclass(frozen=True, slots=True)
class Heading:
    """What a column says of itself."""

    name: str  # as it stands
    kind: Kind  # what its words and its unit mean
    unit: str = ""  # as written; empty where there is none
    extreme: bool = False  # its words say peak, mean, target ...: no reading of the moment
    odd_unit: bool = False  # its unit is marked as one, but is none that is known
    worded: bool = False  # its words say its kind; otherwise only its unit does


def unit_kind(text: str) -> Literal["time", "torque", "force", "angle", "other", ""]:
    """Tell what a unit is one of; empty for what is no unit."""
    plain = text.strip().strip(".")
    if not plain or len(plain) > 40:
        return ""
    low = plain.lower()
    if _is_torque(plain):
        return "torque"
    if low in SECONDS:
        return "time"
    if low in DEGREES:
        return "angle"
    try:
        canonical_force(plain)
    except QuantityError:
        return "other" if low in _OTHER else ""
    return "force"


_OTHER: Final = _words(
    "°c degc c °f degf f k v mv a ma % hz khz rpm 1/min u/min min-1 deg/s °/s rad/s mm cm m in bar mbar pa kpa psi w "
    "kw mv/v counts count raw digits lsb adc bit bits - 1 # n/a text iso utc hh:mm:ss hh:mm:ss.fff hh:mm:ss.000"
)


def _is_torque(text: str) -> bool:
    try:
        canonical_unit(text)
    except QuantityError:
        return False
    return True


def heading(name: str, unit: str = "") -> Heading:
    """Read a heading.

    Args:
        name: As it stands.
        unit: From a row of units below it.
    """
    what, own, marked = _split(_CAMEL.sub(" ", name))
    written = unit.strip().strip("[](){}<>").strip() or own
    words = [w for w in re.split(r"[^\w#]+|_", _folded(what)) if w]
    if not words and not what.strip(" _-/") and own:
        words = []
    kind, worded = _kind(words, written)
    extreme = any(w in _EXTREME for w in words)
    odd = bool(written) and not unit_kind(written) and (marked or bool(unit.strip()))
    return Heading(name, kind, written, extreme, odd, worded)


def _kind(words: list[str], unit: str) -> tuple[Kind, bool]:
    of_unit = unit_kind(unit)
    said: set[Kind] = {
        kind for kind, known in _WORDS.items() for w in words if w in known or w.rstrip("0123456789") in known
    }
    if of_unit == "torque":
        return "torque", "torque" in said
    if of_unit == "angle":
        return "angle", "angle" in said
    if of_unit == "time":
        return ("other", False) if said & {"angle", "torque", "force"} else ("time", "time" in said)
    if of_unit == "force":
        return "force", "force" in said
    for kind in ("torque", "direction", "unit"):
        if kind in said and not (kind == "torque" and said & {"unit"}):
            return kind, True
    if "time" in said and "sample" not in said:
        return "time", True
    for kind in ("force", "angle"):
        if kind in said and of_unit != "other":
            return kind, True
    return ("sample", True) if "sample" in said and "time" not in said else ("other", False)


def _folded(text: str) -> str:
    low = unicodedata.normalize("NFKD", text.casefold())
    return "".join(c for c in low if not unicodedata.combining(c))


def _split(name: str) -> tuple[str, str, bool]:
    """Split a heading into what it is, its unit, and whether that is marked as a unit."""
    text = name.strip().strip('"').strip()
    found = _BRACKETS.fullmatch(text)
    if found:
        inside = found["unit"]
        what = f"{found['what']} {found['more']}".strip()
        if unit_kind(inside) or not found["more"]:
            return what, inside, True
    if unit_kind(text) and not _a_word(text):
        return "", text, False
    for at in _BREAKS.finditer(text):
        rest = text[at.end() :]
        if at.start() and unit_kind(rest) and unit_kind(rest) != "other":
            return text[: at.start()], rest, True
    for at in _BREAKS.finditer(text):
        rest = text[at.end() :]
        if at.start() and unit_kind(rest) == "other" and len(rest) > 1:
            return text[: at.start()], rest, True
    what, mark, rest = text.partition("_")
    if mark and _folded(what) in _WORDS["torque"] and rest.isalpha() and rest.lower() not in _ANY_WORD:
        return what, rest, True
    return text, "", False


def _a_word(text: str) -> bool:
    """Whether a heading such as ``t`` or ``N`` is rather a symbol than a unit."""
    return _folded(text) in _ANY_WORD


_ANY_WORD: Final = (
    frozenset(w for known in _WORDS.values() for w in known)
    | _EXTREME
    | _words("raw actual current live ist istwert wert value sensor channel ch a b left right cw ccw signal filtered")
)
