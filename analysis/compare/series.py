"""Recordings one after another: fills against a number, and the jobs of one axle in order of date.

Conventions: x in the unit of the tag it comes from, y in the quantity's unit.

Offers ``points_against`` (for a trend or a run-in), ``axle_of`` and ``axles_in_order`` (for a chart per axle).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from analysis.compare.comparability import along, check, mixed
from analysis.compare.runs import ExperimentalUnit, Quantity, Run, numbers_of, units_of
from logger.errors import InputError

PER_AXLE = ("vehicle", "axle", "side")
"""Tags that tell axles apart."""


@dataclass(frozen=True, slots=True)
class Points:
    """One point per fill."""

    tag: str  # tag that gives x
    # x, y: in order of x
    x: tuple[float, ...]
    y: tuple[float, ...]
    units: tuple[ExperimentalUnit, ...]  # the fills, in the same order
    # warnings, unknown, remarks: what may explain a change besides x; what was not recorded; what a reader must know
    warnings: tuple[str, ...]
    unknown: tuple[str, ...]
    remarks: tuple[str, ...]


def points_against(runs: Sequence[Run], quantity: Quantity, tag: str, *, unit: str = "fill") -> Points:
    """Set a quantity against a numeric tag.

    Raises:
        InputError: No recording holds both, a tag that is no number, or recordings that must not be compared.
    """
    units, remarks = units_of(runs, quantity, by=tag, unit=unit)
    if not units:
        raise InputError(f"no recording has the tag '{tag}' and a {quantity.value}")
    used = [run for run in runs if run.tags.get(tag) is not None and run.value(quantity) is not None]
    checked = check({"these fills": used}, known=(tag, unit))
    if checked.refusals:
        raise InputError(
            "these recordings cannot be set against each other: "
            + "; ".join(checked.refusals)
            + ". Exclude what is not alike."
        )
    pairs = sorted(zip(numbers_of(units, tag), units, strict=True), key=lambda pair: pair[0])
    return Points(
        tag,
        tuple(x for x, _ in pairs),
        tuple(of.value for _, of in pairs),
        tuple(of for _, of in pairs),
        (*checked.warnings, *along(_numbered(used, tag), tag), *mixed({"these fills": used}, known=(tag, unit))),
        checked.unknown,
        tuple(remarks),
    )


def _numbered(runs: Iterable[Run], tag: str) -> list[tuple[float, Run]]:
    """Give every recording with its number; those without one are refused elsewhere."""
    return [(float(run.tags[tag]), run) for run in runs]


def axle_of(run: Run, per: Iterable[str] = PER_AXLE) -> str:
    """Name the axle of a recording by its tags.

    >>> from analysis.compare.runs import Setting
    >>> axle_of(Run("a.csv", {"vehicle": "car 7", "side": "left"}, Setting(), {}, 0))
    'car 7, left'
    """
    return ", ".join(str(run.tags[tag]) for tag in per if tag in run.tags) or "axle"


def axles_in_order(
    runs: Iterable[Run], quantity: Quantity, per: Iterable[str] = PER_AXLE
) -> dict[str, list[tuple[Run, float]]]:
    """Give the jobs of every axle with their values, in order of date, then of name."""
    per = tuple(per)
    axles: dict[str, list[tuple[Run, float]]] = {}
    for run in runs:
        value = run.value(quantity)
        if value is not None:
            axles.setdefault(axle_of(run, per), []).append((run, value))
    for known in axles.values():
        known.sort(key=lambda pair: (str(pair[0].tags.get("date", "")), pair[0].file))
    return axles
