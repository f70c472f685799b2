"""The numbers of an unknown device's lines: which one is the torque, which counts, which is something else."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.errors import QuantityError
from logger.learn_lines import MIN_LINES, Family, Notes, Token, significant
from logger.units import canonical_unit

ABSURD: Final = 1e100  # no reading; keeps the arithmetic finite
if TYPE_CHECKING:
    from numpy.typing import NDArray

_SIDE_UNITS: Final = {
    "°": "angle", "deg": "angle", "°C": "temperature", "C": "temperature", "degC": "temperature", "%": "battery",
    "V": "voltage", "rpm": "rate", "1/min": "rate", "ms": "device_ms", "s": "device_s",
}  # fmt: skip


@dataclass(slots=True)
class NumberColumn:
    """One number's place over all lines."""

    place: int
    texts: list[str]
    values: NDArray[np.float64]
    before: str  # the text that touches it, if it is always the same
    unit: str = ""  # the text behind it
    name: str = ""

    @property
    def integer(self) -> bool:
        """Whether every number is written without a decimal mark."""
        return all(text.lstrip("+-").isdigit() for text in self.texts)


def number_columns(family: Family, decimal: str) -> list[NumberColumn]:
    """Give the numbers of a family of lines, column by column."""
    rows = [significant(line) for line in family.lines]
    columns = []
    for place, kind in enumerate(family.shape):
        if kind != "number":
            continue
        texts = [row[place].text for row in rows]
        values = np.clip([float(text.replace(decimal, ".")) for text in texts], -ABSURD, ABSURD)
        touching = {_touching(line, place) for line in family.lines}
        before = touching.pop() if len(touching) == 1 else ""
        columns.append(NumberColumn(place, texts, values, before, _unit_behind(rows, place)))
    return columns


def _touching(line: Sequence[Token], place: int) -> str:
    """Give the text that stands directly before a number."""
    seen = -1
    for before, token in zip((None, *line), line, strict=False):
        if token.kind not in ("blank", "sign"):
            seen += 1
        if seen == place and token.kind == "number":
            return before.text if before is not None and before.kind == "text" else ""
    return ""


def _unit_behind(rows: Sequence[Sequence[Token]], place: int) -> str:
    """Give the unit behind a number, also behind a separator, when most lines have it there."""
    behind: Counter[str] = Counter()
    for row in rows:
        next_two = row[place + 1 : place + 3]
        if next_two and next_two[0].kind == "separator":
            next_two = next_two[1:]
        if next_two and next_two[0].kind == "text":
            behind[next_two[0].text] += 1
    if not behind:
        return ""
    text = behind.most_common(1)[0][0]
    return text if text in _SIDE_UNITS or _is_torque_unit(text) else ""


def _is_torque_unit(text: str) -> bool:
    try:
        canonical_unit(text)
    except QuantityError:
        return False
    return True


def name_columns(columns: list[NumberColumn], notes: Notes) -> list[NumberColumn]:
    """Name the columns: ``torque``, ``counter``, by their unit, ``literal`` for a number that is part of the frame."""
    for column in columns:
        if len(set(column.texts)) == 1 and column.integer and column.before and not column.unit:
            column.name = "literal"  # "CH1" and the like
        elif column.unit in _SIDE_UNITS:
            column.name = _SIDE_UNITS[column.unit]
        elif column.integer and counter_step(column.values)[0]:
            column.name = "counter"
    if sum(column.name == "counter" for column in columns) > 1:
        for column in [c for c in columns if c.name == "counter"][1:]:
            column.name = "counter2"
    _pick_torque(columns, notes)
    _make_unique(columns)
    return columns


def _pick_torque(columns: list[NumberColumn], notes: Notes) -> None:
    """Name the torque column: the one with a torque unit, else the one that moves most for its size."""
    candidates = [c for c in columns if not c.name]
    with_unit = [c for c in candidates if c.unit]
    moving = [c for c in with_unit or candidates if len(set(c.texts)) > 1]
    if not moving:
        return
    best = max(moving, key=lambda c: float(np.ptp(c.values)) / (1.0 + float(np.abs(np.median(c.values)))))
    best.name = "torque"
    if len(moving) > 1:
        taken = 1 + next(index for index, column in enumerate(columns) if column is best)
        notes.unknown.append(f"which of {len(moving)} moving numbers is the torque: number {taken} of a line is taken")


def _make_unique(columns: list[NumberColumn]) -> None:
    seen: Counter[str] = Counter()
    for index, column in enumerate(columns, 1):
        if column.name in ("literal", "torque"):
            continue
        base = column.name or f"value{index}"
        seen[base] += 1
        column.name = base if seen[base] == 1 else f"{base}_{seen[base]}"


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
