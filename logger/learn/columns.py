"""The numbers of an unknown device's lines: which one can be the torque, which counts, which is something else.

What cannot be told apart from the bytes is asked for, never chosen in silence.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.edges.units import canonical_unit, is_force
from logger.errors import QuantityError
from logger.learn.lines import MIN_LINES, NUMBERS, Family, Notes, Style, Token, significant

if TYPE_CHECKING:
    from numpy.typing import NDArray

ABSURD: Final = 1e100  # no reading; keeps the arithmetic finite
HARDLY: Final = 0.05  # of its size: a number that moves less, in few steps or as noise, was not loaded
FEW_LEVELS: Final = 20
NOISE: Final = 0.7  # of its spread, from sample to sample: it wanders without a course
SIDE_UNITS: Final = {
    "°": "angle", "deg": "angle", "°C": "temperature", "C": "temperature", "degC": "temperature", "°F": "temperature",
    "F": "temperature", "K": "temperature", "%": "battery", "V": "voltage", "mV": "voltage", "rpm": "rate",
    "/min": "rate", "°/s": "rate", "ms": "device_ms", "s": "device_s", "us": "device_us", "Hz": "frequency",
}  # fmt: skip
_LABELS: Final = {
    "torque": "torque tq trq torq moment drehmoment couple",
    "force": "force load weight kraft gross net",
    "angle": "angle ang deg winkel phi",
    "temperature": "temp temperature tmp",
    "battery": "bat batt battery vbat",
    "rate": "rpm speed drehzahl",
    "peak": "peak pk max hold maximum spitze",
    "lowest": "min lowest minimum",
}
_MEANING: Final = {word: name for name, words in _LABELS.items() for word in words.split()}
NEVER_TORQUE: Final = ("angle", "temperature", "battery", "rate", "peak", "lowest")


@dataclass(slots=True)
class NumberColumn:
    """One number's place over all lines."""

    place: int  # among the pieces of a line that count
    texts: list[str]  # as written
    values: NDArray[np.float64]  # shape (n,)
    label: str = ""  # the word that names it: before ``=`` or ``:``, or touching it
    unit: str = ""  # the text behind it, if it is a unit
    form: str = "decimal"  # as in ``NumberField``
    name: str = ""  # of the column; empty until it is known
    why: str = ""  # why it cannot be the torque; empty: it can

    @property
    def integer(self) -> bool:
        """Whether every number is written without a decimal mark."""
        return self.form != "decimal" or all(text.lstrip("+-").isdigit() for text in self.texts)

    @property
    def moves(self) -> bool:
        """Whether it is not always the same."""
        return len(set(self.texts)) > 1

    @property
    def measured(self) -> bool:
        """Whether a unit of torque or force stands behind it."""
        return bool(self.unit) and self.unit not in SIDE_UNITS

    @property
    def torque_unit(self) -> bool:
        """Whether a unit of torque stands behind it."""
        return is_torque_unit(self.unit)


def number_columns(family: Family, style: Style) -> list[NumberColumn]:
    """Give the numbers of a family of lines, column by column."""
    rows = [significant(line) for line in family.lines]
    columns = []
    for place, kind in enumerate(family.shape):
        if kind not in NUMBERS:
            continue
        texts = [row[place].text for row in rows]
        form = "decimal"
        if kind == "hex" and any(c.isalpha() for text in texts for c in text):
            values, form = _hex_values(texts)
        else:
            values = np.clip([_value(text, style) for text in texts], -ABSURD, ABSURD)
        label = label_of(family.lines[0], place)
        columns.append(NumberColumn(place, texts, values, label, _unit_behind(rows, place), form))
    return columns


def _value(text: str, style: Style) -> float:
    plain = text.replace(style.thousands, "") if style.thousands else text
    return float(plain.replace(style.decimal, "."))


def _hex_values(texts: Sequence[str]) -> tuple[NDArray[np.float64], str]:
    """Give hexadecimal numbers; as two's complement where they run over the end of their digits."""
    raw = np.array([float(int(text, 16)) for text in texts])
    full = 16.0 ** len(texts[0])
    runs_over = np.abs(np.diff(raw)).max(initial=0.0) > full / 2
    all_low = raw.max(initial=0.0) < full / 2
    if runs_over or all_low:
        return np.where(raw >= full / 2, raw - full, raw), "signed hex"
    return raw, "hex"


def label_of(line: Sequence[Token], place: int) -> str:
    """Give the word that names the number at a place: before ``=`` or ``:``, or touching it; empty if there is none.

    >>> from logger.learn.lines import Style, tokens
    >>> label_of(tokens('{"tq": 1.5}', Style()), 5), label_of(tokens("OK 1.5", Style()), 1)
    ('tq', '')
    """
    places = [at for at, token in enumerate(line) if token.kind not in ("blank", "sign")]
    index = places[place]
    named = False
    for token in reversed(line[:index]):
        if token.kind == "word":
            return token.text if named or token is line[index - 1] else ""
        if token.kind in ("blank", "sign") or (token.kind == "text" and token.text in "\"'=:"):
            named |= token.text in "=:"
            continue
        return ""
    return ""


def _unit_behind(rows: Sequence[Sequence[Token]], place: int) -> str:
    """Give the unit behind a number, also behind a separator or a bracket, when most lines have it there."""
    behind: Counter[str] = Counter()
    for row in rows:
        next_two = row[place + 1 : place + 3]
        if next_two and (next_two[0].kind == "separator" or next_two[0].text in "[("):
            next_two = next_two[1:]
        if next_two and next_two[0].kind == "word":
            behind[next_two[0].text] += 1
    text = behind.most_common(1)[0][0] if behind else ""
    return text if is_unit(text) else ""


def is_torque_unit(text: str) -> bool:
    """Tell whether a text is a unit of torque."""
    try:
        canonical_unit(text)
    except QuantityError:
        return False
    return True


def is_reading_unit(text: str) -> bool:
    """Tell whether a text is a unit of torque or of force."""
    return is_force(text) or is_torque_unit(text)


def is_unit(text: str) -> bool:
    """Tell whether a text is a unit of anything that such devices send."""
    return text in SIDE_UNITS or is_reading_unit(text)


# --- what each number is ----------------------------------------------------------------------------------------------


def name_columns(columns: list[NumberColumn], notes: Notes) -> None:
    """Name what is no torque, and say why; the rest may be it."""
    for column in columns:
        meaning = _MEANING.get(column.label.lower().strip("_."), "")
        if column.unit in SIDE_UNITS:
            column.name, column.why = SIDE_UNITS[column.unit], f"its unit is {column.unit}"
        elif meaning in NEVER_TORQUE and not column.torque_unit:
            column.name, column.why = meaning, f"it is called '{column.label}'"
        elif not column.moves:
            column.why = "it stood still"
        elif column.form != "decimal" and jumps(column.values):
            column.why = "it jumps at random"
            notes.unknown.append(
                f"'{column.texts[-1]}' jumps at random: perhaps a check sum, none of those known; it is not checked"
            )
        elif column.measured:
            continue  # its own unit says what it is
        elif column.form == "decimal" and column.integer and counter_step(column.values)[0]:
            column.name, column.why = "counter", "it counts"
        elif rises(column.values):
            column.why = "it only rises: a time, a count or an angle"
    for column in columns[:]:
        if not column.why:
            _note_extremes(column, columns, notes)
    _make_unique(columns)


def _note_extremes(column: NumberColumn, columns: list[NumberColumn], notes: Notes) -> None:
    """Find a number that holds the highest or lowest of another one."""
    for other in columns:
        if other is column or other.why:
            continue
        for name, sign in (("peak", 1.0), ("lowest", -1.0)):
            if holds_peak(column.values * sign, other.values * sign):
                column.name = name
                column.why = f"it holds the {'highest' if sign > 0 else 'lowest'} value of another number"
                notes.found.append(f"number {columns.index(column) + 1} of a line holds the {name} of number "
                                   f"{columns.index(other) + 1}")  # fmt: skip
                return


def holds_peak(peak: NDArray[np.float64], live: NDArray[np.float64]) -> bool:
    """Tell whether one series is the running maximum of another, reset now and then, or of its magnitude."""
    spread = float(np.ptp(live))
    if spread <= 0:
        return False
    slack = 0.02 * spread
    for course in (live, np.abs(live)):
        grows = np.flatnonzero(np.diff(peak) > 0) + 1
        above = np.mean(peak >= course - slack)
        still = np.mean(np.diff(peak) == 0)
        if above < 0.98 or still < 0.2 or not len(grows) >= 3:
            continue
        if (
            np.mean(np.abs(peak[grows] - course[grows]) <= 5 * slack) > 0.8
            and np.mean(course[grows] >= course[grows - 1]) > 0.8
        ):
            return True
    return False


def rises(values: NDArray[np.float64]) -> bool:
    """Tell whether a number never goes back and takes steps of much the same size, as times and counts do."""
    steps = np.diff(values)
    if len(steps) < MIN_LINES - 1 or (steps < 0).sum() > 1 or not (steps > 0).any():
        return False
    forward = steps[steps >= 0]
    return float(forward.std()) < float(forward.mean()) or bool((forward > 0).mean() > 0.98)


def jumps(values: NDArray[np.float64]) -> bool:
    """Tell whether a number has no course: from one to the next it moves by a third of its range, as chance does."""
    return float(np.mean(np.abs(np.diff(values)))) > 0.25 * float(np.ptp(values))


def loaded(column: NumberColumn) -> bool:
    """Tell whether a number moved as under a load: more than a few steps, more than noise, more than a little."""
    values = column.values
    spread = float(np.ptp(values))
    levels = len(set(column.texts))
    if spread <= HARDLY * float(np.abs(np.median(values))):
        step = float(np.std(np.diff(values)))
        return levels > FEW_LEVELS and step < NOISE * float(np.std(values))
    return levels > 5


def pick_torque(columns: list[NumberColumn], field: str, notes: Notes) -> NumberColumn | None:
    """Choose the torque, or say that it must be chosen; what is told stands in ``notes``.

    Args:
        field: What the user says: a column's name, its label, or its number in the line from 1; empty: nothing.
    """
    if field:
        return _named(columns, field, notes)
    able = candidates(columns)
    named = [c for c in able if _MEANING.get(c.label.lower()) == "torque"]
    strong = [c for c in able if loaded(c)]
    sure = len(named) == 1 and not any(c.torque_unit for c in able if c is not named[0])
    chosen = named if sure else strong or able
    if not chosen:
        notes.unknown.append("no number moves that could be a torque: load the transducer while it is listened to")
        return None
    if len(chosen) > 1:
        notes.missing.append("field")
        told = ", ".join(f"{c.name} (number {columns.index(c) + 1})" for c in chosen)
        notes.unknown.append(f"which number is the torque: {told} moved; choose one with --field")
        return None
    for index, other in enumerate(columns, 1):
        if other.why and other.moves and other.name != "counter":
            notes.found.append(f"number {index} of a line ({other.name}) is no torque: {other.why}")
    for other in (c for c in able if c is not chosen[0]):
        low, high = float(other.values.min()), float(other.values.max())
        notes.found.append(f"number {columns.index(other) + 1} of a line hardly moved ({low:g} to {high:g}): no torque")
    return chosen[0]


def candidates(columns: Sequence[NumberColumn]) -> list[NumberColumn]:
    """Give the numbers that may be the torque: those that moved, with a torque's or no unit, or a force's."""
    return [c for c in columns if not c.why]


def _named(columns: list[NumberColumn], field: str, notes: Notes) -> NumberColumn | None:
    wanted = field.strip().lower()
    for index, column in enumerate(columns, 1):
        if wanted in (column.name.lower(), column.label.lower(), str(index)):
            column.why = ""
            return column
    notes.missing.append("field")
    notes.unknown.append(f"there is no number '{field}': there are " + ", ".join(c.name for c in columns))
    return None


def _make_unique(columns: list[NumberColumn]) -> None:
    """Give every number a name of its own: what it is, else its label, else its place."""
    seen: Counter[str] = Counter()
    for index, column in enumerate(columns, 1):
        base = column.name or _as_name(column.label) or f"value{index}"
        seen[base] += 1
        column.name = base if seen[base] == 1 else f"{base}_{seen[base]}"


def _as_name(label: str) -> str:
    """Give a label as the name of a column; empty if it cannot be one."""
    name = "".join(c for c in label.lower().replace("-", "_") if c.isascii() and (c.isalnum() or c == "_"))[:20]
    taken = ("torque", "unit", "sign", "skip", "counter", "time_s", "late", "late_ms")
    return name if name[:1].isalpha() and name not in taken and not name.startswith("status") else ""


def counter_step(values: NDArray[np.float64]) -> tuple[int, int | None]:
    """Give a counter's step and where it wraps (None: not seen); a step of 0 for no counter."""
    steps = np.diff(values)
    if len(steps) < MIN_LINES - 1:
        return 0, None
    values_seen, counts = np.unique(steps, return_counts=True)
    step = int(values_seen[np.argmax(counts)])
    back = steps < 0
    if step <= 0 or counts.max() < 0.8 * len(steps) or back.mean() > 0.1:
        return 0, None
    wraps = [int(values[i] + step - values[i + 1]) for i in np.flatnonzero(back)]
    return step, Counter(wraps).most_common(1)[0][0] if wraps else None
