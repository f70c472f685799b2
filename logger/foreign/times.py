"""Columns of times to seconds: numbers, clock times, dates, both, spreadsheets' days, seconds since 1970.

Conventions:
- Times are given as they stand: equal, jittering and stepping ones are left for the reading of the trace. Only what the
  way of writing itself does is undone: a clock time that passes midnight goes on.
- The order of day and month matters only where the date changes: then the order is taken in which time goes on without
  a leap of days.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from logger.foreign.cells import plain

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.foreign.cells import Cell
    from logger.samples import Floats

DAY_S: Final = 86400.0
EPOCH: Final = datetime(1970, 1, 1)  # noqa: DTZ001 - differences only

_CLOCK: Final = (
    r"(?P<a>\d{1,4}):(?P<b>\d{2})(?::(?P<c>\d{2}))?(?P<f>[.,:]\d{1,9})?\s*(?P<half>[AaPp]\.?\s?[Mm]\.?)?"
    r"\s*(?P<zone>Z|UTC|GMT|[+-]\d{2}:?\d{2}|[+-]\d{2})?"
)
_DATES: Final = (
    r"(?P<y>\d{4})[-/.](?P<m>\d{1,2})[-/.](?P<d>\d{1,2})",
    r"(?P<y>\d{4})(?P<m>\d{2})(?P<d>\d{2})",
    r"(?P<p>\d{1,2})[-/.](?P<q>\d{1,2})[-/.](?P<y>\d{4}|\d{2})",
    r"(?P<d>\d{1,2})[-. /]*(?P<n>[^\W\d_]{3,9})\.?[-, /]*(?P<y>\d{4}|\d{2})",
    r"(?P<n>[^\W\d_]{3,9})\.?\s+(?P<d>\d{1,2}),?\s+(?P<y>\d{4})",
)
_MONTHS: Final = {
    name: number
    for number, names in enumerate(
        ("jan ene gen", "feb fev fév", "mar mär mrz", "apr avr abr", "may mai mag maj", "jun giu", "jul lug",
         "aug aou aoû ago", "sep set", "oct okt ott", "nov", "dec dez dic déc"), 1
    )
    for name in names.split()
}  # fmt: skip
_ONLY_CLOCK: Final = re.compile(_CLOCK)
_ONLY_DATE: Final = tuple(re.compile(p) for p in _DATES)
_BOTH: Final = (
    *(re.compile(rf"(?:[^\W\d_]{{2,9}},?\s+)?{p}(?:[T_,; ]|\s+-\s+)\s*{_CLOCK}") for p in _DATES),
    re.compile(r"(?P<y>\d{4})(?P<m>\d{2})(?P<d>\d{2})T?(?P<hms>\d{6})(?P<f>[.,]\d{1,9})?(?P<zone>Z|[+-]\d{2}:?\d{2})?"),
)


def is_time(cell: Cell) -> str:
    """Tell whether a cell is a time of the clock: ``clock``, ``date`` or ``both``; empty if it is none."""
    if isinstance(cell, datetime):
        return "both"
    if isinstance(cell, date):
        return "date"
    if isinstance(cell, (time, timedelta)):
        return "clock"
    text = plain(cell)
    if not (4 < len(text) < 50) or not any(c.isdigit() for c in text):
        return "clock" if 3 < len(text) < 5 and _ONLY_CLOCK.fullmatch(text) else ""
    if _ONLY_CLOCK.fullmatch(text):
        return "clock"
    if any(p.fullmatch(text) for p in _BOTH):
        return "both"
    return "date" if not text.isdigit() and any(p.fullmatch(text) for p in _ONLY_DATE) else ""


def clock_seconds(column: Sequence[Cell] | NDArray[Any], *, two_parts: str = "") -> tuple[Floats, str]:
    """Read a column of clock times or dates.

    Args:
        column: sequence of cells; All written in one way.
        two_parts: What ``10:05`` is: ``hh:mm`` or ``mm:ss``.

    Returns:
        seconds: shape (n,); Since midnight of the first day for clock times, since 1970 for dates; NaN where a cell is
            none.
        question: What cannot be told from the column; empty mostly.
    """
    if isinstance(column, np.ndarray) and column.dtype.kind == "M":
        return (column - np.datetime64("1970-01-01")) / np.timedelta64(1, "s"), ""
    first = next((kind for cell in column if (kind := is_time(cell))), "")
    if first in ("both", "date"):
        return _dated(column), ""
    if not two_parts and _two_parts(column):
        return np.full(len(column), np.nan), "whether its times are hours and minutes or minutes and seconds"
    found = np.array([_clock(cell, two_parts) for cell in column], float)
    half = np.flatnonzero(np.isfinite(found))
    if len(half) > 1 and not any(isinstance(cell, timedelta) for cell in column[:1]):
        back = np.diff(found[half]) < -DAY_S / 2
        found[half[1:]] += DAY_S * np.cumsum(back)
    return found, ""


def _two_parts(column: Sequence[Cell] | NDArray[Any]) -> bool:
    """Whether clock times have two parts and no fraction: ``10:05``."""
    for cell in column:
        found = _ONLY_CLOCK.fullmatch(plain(cell)) if isinstance(cell, str) else None
        if found:
            return found["c"] is None and found["f"] is None
    return False


def _clock(cell: Cell, two_parts: str = "") -> float:
    if isinstance(cell, timedelta):
        return cell.total_seconds()
    if isinstance(cell, time):
        return cell.hour * 3600 + cell.minute * 60 + cell.second + cell.microsecond / 1e6
    found = _ONLY_CLOCK.fullmatch(plain(cell))
    return _of_day(found) if found is None or found["c"] or found["f"] else _of_day(found, two_parts)


def _of_day(found: re.Match[str] | None, two_parts: str = "mm:ss") -> float:
    """Give the seconds of a clock time; two parts with a fraction are minutes and seconds."""
    if found is None:
        return float("nan")
    a, b = int(found["a"]), int(found["b"])
    fraction = float(f"0.{found['f'][1:]}") if found["f"] else 0.0
    if (found["f"] or ".")[0] == ":" and (found["c"] is None or len(found["f"]) != 4):  # milliseconds, no frames
        return float("nan")
    if found["c"] is not None:
        hours = _of_24(a, found["half"])
        return float(hours * 3600 + b * 60 + int(found["c"])) + fraction
    if two_parts == "hh:mm" or found["half"]:
        return _of_24(a, found["half"]) * 3600 + b * 60 + fraction
    return a * 60 + b + fraction


def _of_24(hour: int, half: str | None) -> int:
    if not half:
        return hour
    return hour % 12 + (12 if half[0] in "Pp" else 0)


def _dated(column: Sequence[Cell] | NDArray[Any]) -> Floats:
    """Read dates, with or without clock times."""
    pattern = next(
        (p for cell in column if isinstance(cell, str) for p in (*_BOTH, *_ONLY_DATE) if p.fullmatch(plain(cell))), None
    )
    found = [pattern.fullmatch(plain(c)) if pattern is not None and isinstance(c, str) else None for c in column]
    if pattern is not None and "p" in pattern.groupindex:
        ways = [_all(column, found, order) for order in (_day_first, _month_first)]
        return min(ways, key=_leaps)
    return _all(column, found, _as_named)


def _leaps(times: Floats) -> tuple[int, float]:
    """Say how badly times go on: how many are none, and how far they spread."""
    good = times[np.isfinite(times)]
    return int(np.isnan(times).sum()), float(np.abs(np.diff(good)).sum()) if len(good) else 0.0


def _day_first(found: re.Match[str]) -> tuple[int, int]:
    return int(found["q"]), int(found["p"])


def _month_first(found: re.Match[str]) -> tuple[int, int]:
    return int(found["p"]), int(found["q"])


def _as_named(found: re.Match[str]) -> tuple[int, int]:
    groups = found.groupdict()
    if groups.get("n"):
        return _MONTHS.get(groups["n"].lower()[:3], 0), int(groups["d"])
    return int(groups["m"]), int(groups["d"])


def _all(
    column: Sequence[Cell] | NDArray[Any],
    found: Sequence[re.Match[str] | None],
    order: Callable[[re.Match[str]], tuple[int, int]],
) -> Floats:
    days: dict[tuple[int, int, int], float] = {}
    out = np.full(len(found), np.nan)
    for i, match in enumerate(found):
        if match is not None:
            out[i] = _one(match, order, days)
        elif isinstance(column[i], (datetime, date)):
            out[i] = _typed(column[i])
    return out


def _one(
    match: re.Match[str],
    order: Callable[[re.Match[str]], tuple[int, int]],
    days: dict[tuple[int, int, int], float],
) -> float:
    year = int(match["y"]) + (2000 if len(match["y"]) == 2 else 0)
    key = (year, *order(match))
    if key not in days:
        try:
            days[key] = (datetime(*key) - EPOCH).total_seconds()  # noqa: DTZ001 - differences only
        except ValueError:
            days[key] = float("nan")
    groups = match.groupdict()
    if groups.get("hms"):
        text = groups["hms"]
        seconds = float(int(text[:2]) * 3600 + int(text[2:4]) * 60 + int(text[4:]))
        seconds += float(f"0.{groups['f'][1:]}") if groups["f"] else 0.0
    else:
        seconds = _of_day(match, "hh:mm" if not groups.get("f") else "mm:ss") if groups.get("a") else 0.0
    return days[key] + seconds - _offset(groups.get("zone"))


def _offset(zone: str | None) -> float:
    if not zone or zone[0] not in "+-":
        return 0.0
    digits = zone[1:].replace(":", "").ljust(4, "0")
    return (int(digits[:2]) * 3600 + int(digits[2:]) * 60) * (1 if zone[0] == "+" else -1)


def _typed(cell: date) -> float:
    if isinstance(cell, datetime):
        plain_time = cell.astimezone(UTC).replace(tzinfo=None) if cell.tzinfo is not None else cell
        return (plain_time - EPOCH).total_seconds()
    return (datetime(cell.year, cell.month, cell.day) - EPOCH).total_seconds()  # noqa: DTZ001 - differences only


QUICKEST_S: Final = 5e-5
"""No torque transducer sends readings closer together (20 kHz)."""
SLOWEST_S: Final = 0.5
"""Readings further apart than this (s) show no pull: whole numbers that far apart may count samples or milliseconds."""


def implied_unit(values: Floats) -> tuple[str, str]:
    """Tell what numbers are that name no unit.

    Returns:
        unit: ``s``, ``d``, ``ms``, ``us`` or ``ns`` where that is sure, else empty.
        why: How it shows, for the user; or what cannot be told.
    """
    good = values[np.isfinite(values)]
    steps = np.diff(good)
    steps = steps[steps > 0]
    if not len(steps):
        return "", "its times do not increase"
    step, lowest, highest = float(np.median(steps)), float(good.min()), float(good.max())
    for unit, factor, word in (("s", 1.0, ""), ("ms", 1e3, "milli"), ("us", 1e6, "micro"), ("ns", 1e9, "nano")):
        if 4e8 * factor < lowest and highest < 4.2e9 * factor:
            return unit, f"read as {word}seconds since 1970"
    if step < QUICKEST_S and lowest >= 20_000 and highest < 80_000:
        return "d", "read as days of a spreadsheet's calendar"
    if step < QUICKEST_S:
        return "", "its steps are too small for seconds"
    if step >= SLOWEST_S and bool((good == np.round(good)).all()):
        return "", "whole numbers: it may count samples, milliseconds or seconds"
    if step >= 1.0:
        return "", "its steps are too large for seconds"
    return "s", "names no unit: read as seconds"
