"""A recording as a comparison sees it: tags, what must be alike, and one value per valid pull.

Conventions:
- Fill > run > pull: a *fill* (drain, flush, fill, run-in; or a build) is the unit of experiment, a *run* is one
  recording, pulls are subsamples of a run.
- Torques are at the axle in N·m; where the fixture is unknown, at the sensor, and ``at`` says so.
"""

from __future__ import annotations

import statistics
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from logger.errors import InputError

Tag = str | float

LEFT_OUT = ": excluded, "
"""What stands between a recording's name and the reason in a remark about one that is not used."""


class Quantity(StrEnum):
    """What can be compared."""

    BREAKAWAY = "breakaway"
    ROTATING = "rotating"
    RATIO = "breakaway ÷ rotating"
    CHATTER = "chatter index"
    SLOPE = "torque-speed slope"

    @property
    def unit(self) -> str:
        """Its unit."""
        return {"breakaway": "N·m", "rotating": "N·m", "torque-speed slope": "N·m per rad/s"}.get(self.value, "1")


@dataclass(frozen=True, slots=True)
class Setting:
    """What must be alike in all recordings of a comparison; None where it was not recorded.

    ``test`` is place, held and gear in words; ``at`` is "axle" or "sensor".
    """

    test: str | None = None
    at: str = "axle"
    fixture: str | None = None
    side: str | None = None
    direction: str | None = None
    temperature_c: float | None = None
    speed_rad_s: float | None = None
    dwell_s: float | None = None
    wheel_fitted: bool | None = None
    transducer: str | None = None
    operator: str | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """One recording."""

    file: str  # its name
    tags: Mapping[str, Tag]  # everything it can be grouped by: the user's tags, and the header's facts by their key
    setting: Setting  # what must be alike
    values: Mapping[Quantity, tuple[float, ...]]  # one value per pull that is used
    pulls: int  # pulls used
    excluded: tuple[str, ...] = ()  # one line per pull excluded, with its reason
    simulated: bool = False  # whether it is simulated
    started: datetime | None = None  # when it was made
    # mapping of (Quantity, direction) to (value, U); at the axle in N·m with 95 %: what the job says, by direction
    stated: Mapping[tuple[Quantity, str], tuple[float, float]] = field(default_factory=dict)
    # what follows from the torque and the build's faces, spring and pinion; a sentence each
    friction: tuple[str, ...] = ()
    mu: tuple[float, float] | None = None  # (float, float) or None; the friction figure and its U

    def value(self, quantity: Quantity) -> float | None:
        """Give the run's value, the median over its pulls; None where it has none."""
        found = self.values.get(quantity, ())
        return statistics.median(found) if found else None


@dataclass(frozen=True, slots=True)
class ExperimentalUnit:
    """One unit of experiment: the mean over its runs' values."""

    # group, name, block: group, the unit's own name, and its block (empty where there is none)
    group: str
    name: str
    block: str
    value: float  # in the quantity's unit
    # runs, pulls: what it rests on
    runs: int
    pulls: int
    of_runs: tuple[float, ...] = field(default=())  # the runs' values
    tags: Mapping[str, Tag] = field(default_factory=dict)  # of its first run
    files: tuple[str, ...] = ()  # the runs' recordings


def text_of(tag: Tag | None) -> str:
    """Write a tag: numbers without needless digits, nothing as an empty text."""
    if tag is None:
        return ""
    return f"{tag:g}" if isinstance(tag, float) else str(tag)


def units_of(
    runs: Iterable[Run], quantity: Quantity, *, by: str, unit: str = "fill", block: str = ""
) -> tuple[list[ExperimentalUnit], list[str]]:
    """Take runs together to units of experiment.

    Args:
        runs: The recordings.
        quantity: What is compared.
        by, unit, block: Tags that hold the group, the unit within it, and the block.

    Returns:
        units: In the order in which they first appear.
        remarks: What a reader must know: recordings excluded, recordings standing in for fills.
    """
    members: dict[tuple[str, str], list[tuple[Run, float]]] = {}
    remarks: list[str] = []
    lonely = 0
    for run in runs:
        group, value = text_of(run.tags.get(by)), run.value(quantity)
        if not group:
            remarks.append(f"{run.file}{LEFT_OUT}it has no tag '{by}'")
        elif value is None:
            remarks.append(f"{run.file}{LEFT_OUT}it has no {quantity.value}")
        else:
            name = text_of(run.tags.get(unit))
            lonely += not name
            members.setdefault((group, name or run.file), []).append((run, value))
    if lonely:
        remarks.append(
            f"{lonely} recording{'s' * (lonely != 1)} without a tag '{unit}', each counted as a fill of its own: "
            "if several come from one fill, the evidence is overstated"
        )
    return [_unit(group, name, block, found) for (group, name), found in members.items()], remarks


def _unit(group: str, name: str, block: str, found: Sequence[tuple[Run, float]]) -> ExperimentalUnit:
    values = tuple(value for _, value in found)
    first = found[0][0]
    return ExperimentalUnit(
        group,
        name,
        text_of(first.tags.get(block)) if block else "",
        sum(values) / len(values),
        len(found),
        sum(run.pulls for run, _ in found),
        values,
        first.tags,
        tuple(run.file for run, _ in found),
    )


def numbers_of(units: Sequence[ExperimentalUnit], tag: str) -> list[float]:
    """Give a numeric tag of every unit.

    Raises:
        InputError: A unit without it, or whose tag is no number.
    """
    found = []
    for unit in units:
        value = unit.tags.get(tag)
        try:
            found.append(float(value if value is not None else ""))
        except ValueError:
            said = f"'{value}'" if value is not None else "missing"
            raise InputError(f"{unit.name}: tag '{tag}' is {said}; a trend needs a number in every recording") from None
    return found
