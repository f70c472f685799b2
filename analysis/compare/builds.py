"""Builds of an axle beside each other: what a build adds up to, what changed, what was measured with each.

Conventions: thicknesses in mm, torques in N·m with U (95 %).
"""

from __future__ import annotations

import difflib
import math
import statistics
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise
from typing import TYPE_CHECKING

from analysis.compare.agreement import Agreement, agreement
from logger.errors import InputError
from logger.recordings.axles import PART_KINDS, in_order, same_tag

if TYPE_CHECKING:
    from analysis.compare.runs import Quantity, Run, Tag
    from logger.recordings.axles import AxleFile, Build, Pack, PackPart

MATCHED_MM = 0.05  # printed in some workshop manuals; the axle's own manual decides
ALIKE_MM = 5e-4  # below half a micrometre two sums of thicknesses are the same


def surfaces(pack: Pack) -> int | None:
    """Give the friction surfaces of a pack: as stated, or its neighbours of which one is a disc and one a plate.

    Springs and shims turn with what they lie on, so a disc on one of them is not counted. None without parts.
    """
    if pack.surfaces is not None:
        return pack.surfaces
    kinds = [part.kind for part in pack.parts]
    return sum({a, b} == {"friction disc", "steel plate"} for a, b in pairwise(kinds)) or None


def stack_mm(pack: Pack) -> float | None:
    """Give the thickness of all parts of a pack; None where one is not known."""
    known = [part.thickness_mm for part in pack.parts if part.thickness_mm is not None]
    return sum(known) if known and len(known) == len(pack.parts) else None


def shims_mm(pack: Pack) -> float | None:
    """Give what the shims of a pack add up to: 0 for a pack without; None where one, or the pack, is not known."""
    shims = [part.thickness_mm for part in pack.parts if part.kind == "shim"]
    known = [thickness for thickness in shims if thickness is not None]
    return sum(known) if pack.parts and len(known) == len(shims) else None


def percent_of_fill(oil_l: float | None, modifier_l: float | None) -> float | None:
    """Give the modifier's share of the whole fill, oil and modifier together, in percent.

    >>> percent_of_fill(1.15, 0.05)
    4.166666666666667
    """
    if oil_l is None or modifier_l is None or oil_l + modifier_l <= 0:
        return None
    return 100 * modifier_l / (oil_l + modifier_l)


def modifier_l(oil_l: float, percent: float) -> float:
    """Give the litres of modifier that are this share of the whole fill, beside so much oil.

    Raises:
        InputError: No oil, or a share outside 0 to below 100 %.

    >>> modifier_l(1.15, 4.166666666666667)
    0.05
    """
    if not (oil_l > 0 and 0 <= percent < 100):
        raise InputError("the modifier is 0 to below 100 % of a fill that has oil in it")
    return round(oil_l * percent / (100 - percent), 9)


def build_name(build: Build) -> str:
    """Name a build by its time."""
    return f"{build.built:%Y-%m-%d %H:%M}"


def build_tags(build: Build) -> dict[str, Tag]:
    """Give what recordings made on a build can be grouped and followed by."""
    left, right = shims_mm(build.left), shims_mm(build.right)
    facts: dict[str, Tag | None] = {
        "build": build_name(build),
        "shims_left_mm": left,
        "shims_right_mm": right,
        "shim_mm": left if left is not None and right is not None and abs(left - right) < ALIKE_MM else None,
        "stack_left_mm": stack_mm(build.left),
        "stack_right_mm": stack_mm(build.right),
        "fluid": build.oil,
        "modifier": build.modifier,
        "modifier_percent": percent_of_fill(build.oil_l, build.modifier_l),
    }
    return {key: value for key, value in facts.items() if value not in (None, "")}


def build_lines(build: Build) -> list[str]:
    """Say what a build holds, a line per pack and one for each thing beside them; what is not stated is left out."""
    said = []
    for side, pack in (("left", build.left), ("right", build.right)):
        if pack.parts or pack.surfaces:
            facts = [_count(pack, kind) for kind in PART_KINDS]
            n, stack = surfaces(pack), stack_mm(pack)
            facts += [f"{n} friction surface{'s' * (n != 1)}"] if n else []
            facts += [f"stack {stack:.4g} mm"] if stack is not None else []
            facts += [f"end play {pack.end_play_mm:g} mm"] if pack.end_play_mm is not None else []
            said.append(f"{side}: {', '.join(fact for fact in facts if fact)}")
    left, right = stack_mm(build.left), stack_mm(build.right)
    if left is not None and right is not None and abs(left - right) > MATCHED_MM + ALIKE_MM:
        said.append(
            f"left and right stack differ by {abs(left - right):.2g} mm; some manuals match within {MATCHED_MM:g}"
        )
    percent = percent_of_fill(build.oil_l, build.modifier_l)
    fill = [f"{build.oil} {build.oil_l or 0:.3g} l".strip()] if build.oil_l else [build.oil]
    fill += [f"{build.modifier or 'modifier'} {build.modifier_l:.3g} l"] if build.modifier_l else [build.modifier]
    fill += [f"{percent:.2g} % of the fill"] if percent else []
    if any(fill):
        said.append(", ".join(part for part in fill if part))
    if build.soak_min is not None:
        said.append(f"soaked {build.soak_min:g} min in {build.soak_in or 'oil'}")
    return said


def _count(pack: Pack, kind: str) -> str:
    n = sum(part.kind == kind for part in pack.parts)
    return f"{n} {kind}{'s' * (n != 1)}" if n else ""


def measured_words(measured: Measured) -> str:
    """Say what was measured in one way."""
    n = len(measured.values)
    return f"{measured.way}: {measured.value:.3g} ± {measured.u95:.2g} N·m ({n} recording{'s' * (n != 1)})"


# ---------------------------------------------------------------------- what changed
_FIGURES = (
    ("spring_n", "spring load", "N"),
    ("face_outer_mm", "outer diameter of the faces", "mm"),
    ("face_inner_mm", "inner diameter of the faces", "mm"),
    ("pinion_nm", "preload torque at the pinion", "N·m"),
    ("soak_min", "soak", "min"),
    ("oil_l", "amount of oil", "l"),
    ("modifier_l", "amount of modifier", "l"),
)
_WORDS = (("spring", "spring"), ("soak_in", "soaked in"), ("oil", "oil"), ("modifier", "modifier"))


def changes(before: Build, after: Build) -> tuple[str, ...]:
    """Say what is otherwise in the later of two builds, one line each; empty where the sheets are alike."""
    said: list[str] = []
    for side in ("left", "right"):
        said += [f"{side}: {text}" for text in _pack_changes(getattr(before, side), getattr(after, side))]
    for key, what in _WORDS:
        a, b = getattr(before, key), getattr(after, key)
        if a != b:
            said.append(f"{what}: {a or 'not stated'} → {b or 'not stated'}")
    for key, what, unit in _FIGURES:
        said += _figure(what, getattr(before, key), getattr(after, key), unit)
    old, new = (percent_of_fill(b.oil_l, b.modifier_l) for b in (before, after))
    said += _figure("modifier, share of the fill", old, new, "%")
    return tuple(said)


def _pack_changes(before: Pack, after: Pack) -> list[str]:
    said = _parts_changes(before.parts, after.parts)
    for what, of in (("stack", stack_mm), ("shims", shims_mm)):
        said += _figure(what, of(before), of(after), "mm")
    a, b = surfaces(before), surfaces(after)
    if a != b:
        said.append(f"friction surfaces: {a or 'not known'} → {b or 'not known'}")
    return said + _figure("end play", before.end_play_mm, after.end_play_mm, "mm")


def _parts_changes(before: Sequence[PackPart], after: Sequence[PackPart]) -> list[str]:
    """Name parts that were put in, taken out, changed; places count from the side gear, from 1."""
    kinds: list[list[str]] = [[part.kind for part in parts] for parts in (before, after)]
    said: list[str] = []
    for code, a, b, c, d in difflib.SequenceMatcher(None, kinds[0], kinds[1], autojunk=False).get_opcodes():
        if code == "equal":
            pairs = zip(range(c, d), before[a:b], after[c:d], strict=True)
            said += [f"{new.kind} at {at + 1}: {_part(old)} → {_part(new)}" for at, old, new in pairs if old != new]
            continue
        said += [f"{part.kind} at {a + i + 1} taken out ({_part(part)})" for i, part in enumerate(before[a:b])]
        said += [f"{part.kind} at {c + i + 1} put in ({_part(part)})" for i, part in enumerate(after[c:d])]
    return said


def _part(part: PackPart) -> str:
    thick = "thickness not stated" if part.thickness_mm is None else f"{part.thickness_mm:g} mm"
    return f"{thick}, {part.note}" if part.note else thick


def _figure(what: str, before: float | None, after: float | None, unit: str) -> list[str]:
    if before == after or (before is not None and after is not None and abs(after - before) < ALIKE_MM):
        return []
    old, new = ("not stated" if value is None else f"{value:.4g} {unit}" for value in (before, after))
    by = "" if before is None or after is None else f" ({after - before:+.3g} {unit})"
    return [f"{what}: {old} → {new}{by}"]


# ---------------------------------------------------------------------- what was measured
@dataclass(frozen=True, slots=True)
class Measured:
    """What was measured on one build, in one way of testing."""

    way: str  # side, direction, kind of test and fixture: only like stands beside like
    values: tuple[tuple[str, float, float], ...]  # (file, value, U); N·m, 95 %, in order of time

    @property
    def value(self) -> float:
        """Their mean, N·m."""
        return statistics.fmean(value for _, value, _ in self.values)

    @property
    def u95(self) -> float:
        """The root mean square of their U: transducer and lever are shared, so that it does not shrink with them."""
        return math.sqrt(statistics.fmean(u * u for _, _, u in self.values))


@dataclass(frozen=True, slots=True)
class BuildChange:
    """A build, what changed since the one before, and the torques measured with it."""

    build: Build  # its sheet
    changed: tuple[str, ...]  # against the build before; empty for the first
    measured: tuple[Measured, ...]  # by way of testing
    # mapping of way to Agreement; this build less the one before, where both were tested in that way
    against: dict[str, Agreement]


def steps(axle: AxleFile, runs: Iterable[Run], quantity: Quantity) -> list[BuildChange]:
    """Set the torques of an axle's recordings beside its builds, in order of time."""
    found: dict[str, dict[str, list[tuple[datetime, str, float, float]]]] = {}
    for run in runs:
        if run.started is None or not of_axle(axle, run):
            continue
        for (of, direction), stated in run.stated.items():
            if of == quantity:
                ways = found.setdefault(str(run.tags.get("build", "")), {})
                ways.setdefault(way_of(run, direction), []).append((run.started, run.file, *stated))
    made: list[BuildChange] = []
    builds = in_order(axle)
    for place, build in enumerate(builds):
        ways = found.get(build_name(build), {})
        measured = tuple(Measured(way, tuple(v[1:] for v in sorted(values))) for way, values in sorted(ways.items()))
        before = {m.way: m for m in made[-1].measured} if made else {}
        against = {
            m.way: agreement((before[m.way].value, before[m.way].u95), (m.value, m.u95))
            for m in measured
            if m.way in before
        }
        made.append(BuildChange(build, changes(builds[place - 1], build) if place else (), measured, against))
    return made


def of_axle(axle: AxleFile, run: Run) -> bool:
    """Tell whether a recording is of this axle."""
    return same_tag(str(run.tags.get("tag", "")), axle.tag)


def way_of(run: Run, direction: str) -> str:
    """Name how a recording was made: what must be alike for two torques to stand beside each other."""
    parts = (run.setting.side, direction, run.setting.test, run.setting.fixture)
    return ", ".join(part for part in parts if part) or "kind of test not stated"
