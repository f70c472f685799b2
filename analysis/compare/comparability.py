"""Whether recordings may be compared at all: same test kind, and alike in temperature, speed, dwell and fixture.

What differs by definition refuses (another test kind reads about twice as much; a torque at the sensor is not one at
the axle). What may explain a difference warns. What was not recorded is said. Bounds are common practice, no source.
"""

from __future__ import annotations

import statistics
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from analysis.compare.runs import text_of
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.compare.runs import Run

TEMPERATURE_WARN_C = 10.0
TEMPERATURE_REFUSE_C = 30.0
"""Oil thins by about half every 15 to 20 °C when cold: ten degrees show, thirty compare two different oils."""

SPEED_WARN = 1.5
"""Rotating torque follows speed; a hand keeps a slow turn within a factor of 1.5."""

DWELL_WARN = 2.0
"""Static friction grows with the logarithm of rest: twice the dwell shows."""


RATED = (
    ("speed", "speed_rad_s", SPEED_WARN, "rad/s"),
    ("rest before the pull", "dwell_s", DWELL_WARN, "s"),
)

ALONG, LEAST_ALONG = 0.7, 4
"""A condition that follows the number of a trend this closely, half of its scatter and more, explains it as well; fewer
recordings agree so by chance (common practice, no source)."""

BUILD_TAGS = {
    "vehicle": "vehicles",
    "axle": "axles",
    "pack_build": "pack builds",
    "shim_mm": "shims (mm)",
    "condition": "conditions",
}
"""What tells one build from another: fills of one build scatter less than builds do."""


class NotComparableError(InputError):
    """A refused comparison; ``refusals`` say why."""

    def __init__(self, refusals: Sequence[str]) -> None:
        self.refusals = tuple(refusals)
        super().__init__(
            "these groups cannot be compared: "
            + "; ".join(self.refusals)
            + ". Compare like with like, or give a reason with --anyway."
        )

    def __reduce__(self) -> tuple[type[NotComparableError], tuple[tuple[str, ...]]]:
        """Travel between processes by the refusals."""
        return NotComparableError, (self.refusals,)


@dataclass(frozen=True, slots=True)
class Comparability:
    """What speaks against a comparison."""

    refusals: tuple[str, ...] = ()  # why the groups cannot be compared; empty where they can
    warnings: tuple[str, ...] = ()  # what may explain a difference
    unknown: tuple[str, ...] = ()  # what was not recorded, so that it could not be checked

    @property
    def allowed(self) -> bool:
        """Whether nothing forbids the comparison."""
        return not self.refusals


def check(groups: Mapping[str, Sequence[Run]], *, known: Iterable[str] = ()) -> Comparability:
    """Check the recordings of a comparison, by group; what is ``known`` to the question (operator) does not count."""
    known = set(known)
    runs = [run for members in groups.values() for run in members]
    refusals, warnings, unknown = [], [], []
    for key, text in (("test", "test kinds"), ("at", "places of the torque (axle, sensor)")):
        seen = _distinct(runs, key)
        if len(seen) > 1:
            refusals.append(f"different {text}: {'; '.join(seen)}")
    for key, text in (
        ("fixture", "fixtures"),
        ("side", "sides"),
        ("direction", "directions"),
        ("wheel_fitted", "wheel on and off"),
        ("transducer", "transducers"),
        ("operator", "operators"),
    ):
        if key not in known and len(seen := _distinct(runs, key)) > 1:
            warnings.append(f"different {text}: {'; '.join(seen)}{_confounded(groups, key)}")
    spread = _spread(groups, lambda run: run.setting.temperature_c)
    if spread and spread[1] - spread[0] > TEMPERATURE_REFUSE_C:
        refusals.append(f"oil between {spread[0]:g} and {spread[1]:g} °C on average: two different oils")
    elif spread and spread[1] - spread[0] > TEMPERATURE_WARN_C:
        warnings.append(f"oil between {spread[0]:g} and {spread[1]:g} °C on average from group to group")
    for name, key, factor, unit in RATED:
        spread = _spread(groups, lambda run, key=key: getattr(run.setting, key))  # type: ignore[misc]
        if spread and spread[1] > factor * max(spread[0], 1e-9):
            warnings.append(f"{name} between {spread[0]:.3g} and {spread[1]:.3g} {unit} on average from group to group")
    warnings += [f"{text} within {name}" for name, members in groups.items() for text in ranges(members)]
    for key, text in (
        ("test", "test kind"),
        ("temperature_c", "oil temperature"),
        ("speed_rad_s", "speed"),
        ("dwell_s", "rest"),
        ("fixture", "fixture"),
        ("transducer", "transducer"),
        ("operator", "operator"),
    ):
        missing = sum(getattr(run.setting, key) is None for run in runs)
        if missing:
            unknown.append(f"{text} not recorded in {missing} of {len(runs)} recordings")
    return Comparability(tuple(refusals), tuple(warnings), tuple(unknown))


def mixed(groups: Mapping[str, Sequence[Run]], *, known: Iterable[str]) -> tuple[str, ...]:
    """Say which groups hold different builds, cars or axles; tags that are ``known`` to the question do not count."""
    tags = [tag for tag in BUILD_TAGS if tag not in set(known)]
    said = []
    for name, runs in groups.items():
        for tag in tags:
            seen = sorted({text for run in runs if (text := text_of(run.tags.get(tag)))})
            if len(seen) > 1:
                listed = ", ".join(seen[:4]) + (" …" if len(seen) > 4 else "")
                said.append(f"different {BUILD_TAGS[tag]} within {name}: {listed}")
    return tuple(said)


def _confounded(groups: Mapping[str, Sequence[Run]], key: str) -> str:
    """Say where a difference between groups may as well be one of instrument, person or fixture."""
    seen = [{getattr(run.setting, key) for run in members} for members in groups.values()]
    if all(len(values) == 1 for values in seen):
        return "; a difference between groups may be theirs as well"
    return ""


def ranges(runs: Sequence[Run]) -> list[str]:
    """Say what varies among recordings that are taken as alike: oil temperature, speed, dwell."""
    found = []
    oil = [run.setting.temperature_c for run in runs if run.setting.temperature_c is not None]
    if oil and max(oil) - min(oil) > TEMPERATURE_WARN_C:
        found.append(f"oil between {min(oil):g} and {max(oil):g} °C")
    for name, key, factor, unit in RATED:
        values = [value for run in runs if (value := getattr(run.setting, key)) is not None]
        if values and max(values) > factor * max(min(values), 1e-9):
            found.append(f"{name} between {min(values):.3g} and {max(values):.3g} {unit}")
    return found


def along(points: Sequence[tuple[float, Run]], tag: str) -> list[str]:
    """Say what changes along with the number that a trend follows, and may be what it shows.

    Args:
        points: (float, Run); The number and its recording.
        tag: What the number is.
    """
    found = []
    for name, key in (
        ("oil temperature", "temperature_c"),
        *((name, key) for name, key, _, _ in RATED),
    ):
        pairs = [(x, value) for x, run in points if (value := getattr(run.setting, key)) is not None]
        if len(pairs) < LEAST_ALONG or min(len(set(column)) for column in zip(*pairs, strict=True)) < 2:
            continue
        r = statistics.correlation(*zip(*pairs, strict=True))
        if abs(r) > ALONG and f"{key}".split("_")[0] not in tag:
            found.append(f"{name} goes along with {tag} (correlation {r:+.2f}): the trend may be its own")
    for name, key in (("transducers", "transducer"), ("operators", "operator"), ("fixtures", "fixture")):
        ordered = [value for _, run in sorted(points, key=lambda p: p[0]) if (value := getattr(run.setting, key))]
        changes = sum(a != b for a, b in pairwise(ordered))
        if changes and changes == len(set(ordered)) - 1:
            found.append(f"{name} change once along {tag}: the trend may be theirs")
    return found


def _distinct(runs: Iterable[Run], key: str) -> list[str]:
    values = (getattr(run.setting, key) for run in runs)
    return sorted({str(value) for value in values if value is not None})


def _spread(groups: Mapping[str, Sequence[Run]], value: Callable[[Run], float | None]) -> tuple[float, float] | None:
    """Give the lowest and highest group mean of what is known; None where nothing is."""
    means = []
    for members in groups.values():
        known = [v for run in members if (v := value(run)) is not None]
        if known:
            means.append(sum(known) / len(known))
    return (min(means), max(means)) if means else None
