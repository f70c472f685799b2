"""The build that was in the axle, on the engineer's page and in a report's record.

A sheet goes on growing: the next build, kilometres, a date of retest. So a report rests on the entries it shows, the
build of the test and the one before, and names the hash of these beside that of the file.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import msgspec

from analysis.compare.builds import build_name, changes, percent_of_fill, stack_mm, surfaces
from analysis.report.content import APART, LONGEST_NOTE, Section, clean, listed, own
from analysis.report.material import BuildPart, PageKind
from analysis.rows.friction import friction_of
from logger.edges.lengths import in_unit, length_words
from logger.edges.units import format_torque
from logger.recordings.axles import PART_KINDS

if TYPE_CHECKING:
    from analysis.report.material import Issue, Material
    from analysis.verdict.recorded import RecordingReading
    from logger.recordings.axles import Build, Pack

PLACE = re.compile(rf"(.*(?:{'|'.join(PART_KINDS)})) at (\d+)(.*)")
NOT_STATED = "not stated →"
SIDES = ("left", "right")
MOST_CHANGES = 6
"""Changes listed on a page."""


def build_part(reading: RecordingReading) -> BuildPart | None:
    """Give what a report shows of the build; None where no sheet lies beside the recording."""
    build, before = reading.build, reading.build_before
    if build is None:
        return None
    entries = hashlib.sha256(msgspec.json.encode((build, before), order="sorted")).hexdigest()
    found = friction_of(reading)
    figure = None if found is None else (found[0].value, found[0].u95, found[1])
    return BuildPart(reading.build_file, reading.build_sha256, entries, build, before, figure)


def build_section(part: BuildPart, issue: Issue, unit: str) -> Section:
    """Set the build as one paragraph, which takes least of the sheet."""
    said = [f"{label}{APART}: {APART}{value}" for label, value in _fields(part, issue, unit) if value.strip()]
    return Section("Build in the axle", lines=(clean(f"{APART}. {APART}".join(said) + f"{APART}.", 2 * LONGEST_NOTE),))


def _fields(part: BuildPart, issue: Issue, unit: str) -> Iterator[tuple[str, str]]:
    build = part.build
    yield "Built", listed(build_name(build), own(build.by), own(build.reason))
    left, right = _pack(build.left, issue), _pack(build.right, issue)
    if left == right:
        yield "Each pack", left
    else:
        yield "Left pack", left
        yield "Right pack", right
    load = "" if build.spring_n is None else f"{build.spring_n:g} N on each pack"
    pinion = "" if build.pinion_nm is None else f"pinion {format_torque(build.pinion_nm, unit)}"
    yield "Preload", listed(own(build.spring), load, pinion)
    outer, inner = build.face_outer_mm, build.face_inner_mm
    known = outer is not None and inner is not None
    yield "Faces", in_unit(f"{outer:g} / {inner:g} mm", issue.lengths) if known else ""
    yield "Filled", _fill(build)
    yield "Soaked", "" if build.soak_min is None else listed(f"{build.soak_min:g} min", own(build.soak_in))
    if part.friction is not None:
        value, u95, how = part.friction
        yield "Friction", f"{value:.3f} ± {u95:.3f} (95 %), {APART}{how}"
    if part.before is not None:
        said = [_apart(_marked(text, part)) for text in _each_once(changes(part.before, build))]
        more = len(said) - MOST_CHANGES
        said = said[:MOST_CHANGES] + ([f"{more} more"] if more > 0 else [])
        yield (
            f"Changed since {build_name(part.before)}",
            f"{APART}; {APART}".join(said) or "nothing that is stated of both",
        )


def _each_once(said: tuple[str, ...]) -> list[str]:
    """Give what both packs have alike once, single parts last; what only one sheet states is no change."""
    said = tuple(text for text in said if NOT_STATED not in text)
    sides = [{text.removeprefix(f"{side}: ") for text in said if text.startswith(f"{side}: ")} for side in SIDES]
    both = sides[0] & sides[1]
    merged = [text if (rest := text.partition(": ")[2]) not in both else f"each pack: {rest}" for text in said]
    places: dict[tuple[str, str], list[str]] = {}
    others: list[str] = []
    for text in dict.fromkeys(merged):
        found = PLACE.fullmatch(text)
        if found is None:
            others.append(text)
        else:
            places.setdefault((found[1], found[3]), []).append(found[2])
    return others + [f"{part} at {', '.join(at)}{what}" for (part, what), at in places.items()]


def _apart(text: str) -> str:
    """Part the side from what changed there: each is translated by itself."""
    for side in ("each pack", *SIDES):
        if text.startswith(f"{side}: "):
            return f"{side}{APART}: {APART}{text.removeprefix(f'{side}: ')}"
    return text


def _marked(text: str, part: BuildPart) -> str:
    """Mark what somebody typed in a change: names of spring, oil, modifier, bath."""
    for build in (part.before, part.build):
        for typed in () if build is None else (build.spring, build.oil, build.modifier, build.soak_in):
            if typed and text.endswith((f": {typed}", f"→ {typed}")):
                text = f"{text.removesuffix(typed)}{own(typed)}"
            if typed and f": {typed} → " in text:
                text = text.replace(f": {typed} → ", f": {own(typed)} → ")
    return text


def _pack(pack: Pack, issue: Issue) -> str:
    counts = [(sum(part.kind == kind for part in pack.parts), kind) for kind in PART_KINDS]
    said = [f"{n} {kind}{'s' * (n != 1)}" for n, kind in counts if n]
    n, stack = surfaces(pack), stack_mm(pack)
    said += [f"{n} friction surface{'s' * (n != 1)}"] if n else []
    said += [f"stack {length_words(stack, issue.lengths)}"] if stack is not None else []
    said += [f"end play {length_words(pack.end_play_mm, issue.lengths)}"] if pack.end_play_mm is not None else []
    return listed(*said)


def _fill(build: Build) -> str:
    percent = percent_of_fill(build.oil_l, build.modifier_l)
    oil = f"{own(build.oil)} {build.oil_l:.3g} l" if build.oil_l else own(build.oil)
    extra = f"{own(build.modifier)} {build.modifier_l:.3g} l" if build.modifier_l else own(build.modifier)
    return listed(oil.strip(), extra.strip(), f"{percent:.2g} % of the fill" if percent else "")


def build_record(material: Material, issue: Issue) -> dict[str, str] | None:
    """Name the sheet in a report's record: file, hash of its bytes then, hash of the entries; None for a customer."""
    part = material.build
    if part is None or issue.kind is not PageKind.ENGINEER:
        return None
    return {"file": Path(part.file).name, "sha256": part.sha256, "entries_sha256": part.entries_sha256}


def compare_build(record: Mapping[str, Any], material: Material, issue: Issue) -> list[str]:
    """Say what is otherwise with the sheet than when the report was made."""
    said, found = record.get("build"), build_record(material, issue)
    if said is None:  # it shows none; a sheet that was begun later changes no figure
        return []
    if found is None:
        return ["the build sheet that the report was made with does not lie beside the recording any more"]
    if not isinstance(said, dict) or said.get("entries_sha256") != found["entries_sha256"]:
        return ["the build sheet's entries are not those that the report was made with: their SHA-256 differs"]
    return []


def build_told(record: Mapping[str, Any], material: Material, issue: Issue) -> list[str]:
    """Say that the entries are the same, and whether the file has grown since."""
    said, found = record.get("build"), build_record(material, issue)
    if found is None or not isinstance(said, dict):
        return []
    grown = "" if said.get("sha256") == found["sha256"] else "; other entries of the file have changed since"
    return [f"build sheet {clean(found['file'], 80)}: the entries that the report names{grown}"]
