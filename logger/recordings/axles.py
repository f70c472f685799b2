"""``<tag>.axle.toml`` beside the recordings: what is built into an axle, when it is tested again, what it has run.

One file per axle, found by the tag that is stamped on it. Builds are entries with a time and are never lost: one that
is put right leaves what it was before among ``replaced``. A recording was made on the last build before it started.

Conventions: thicknesses in mm, parts from the side gear outwards, volumes in litres.
"""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Final, Literal, get_args

import msgspec

from logger.edges.small_file import file_stem, locked
from logger.edges.toml_file import read_toml, write_toml
from logger.errors import FileError, InputError
from logger.header import Record

if TYPE_CHECKING:
    from collections.abc import Callable

ENDING: Final = ".axle.toml"
MOST_PARTS: Final = 60  # of a pack
SAME_STEM: Final = 100  # tags that shorten to one file name: more are no axles

Above0 = Annotated[float, msgspec.Meta(gt=0, le=1e6)]
From0 = Annotated[float, msgspec.Meta(ge=0, le=1e6)]
Thick = Annotated[float, msgspec.Meta(gt=0, le=100)]

PartKind = Literal["friction disc", "steel plate", "disc spring", "shim"]
"""A friction disc turns with the side gear, a steel plate with the case."""
PART_KINDS: Final[tuple[PartKind, ...]] = get_args(PartKind)


class PackPart(Record, frozen=True, kw_only=True):
    """One part of a pack."""

    kind: PartKind
    thickness_mm: Thick | None = None
    note: str = ""  # worn, turned round, new ...


class Pack(Record, frozen=True, kw_only=True):
    """One side's pack, from the side gear outwards."""

    parts: Annotated[tuple[PackPart, ...], msgspec.Meta(max_length=MOST_PARTS)] = ()
    surfaces: Annotated[int, msgspec.Meta(ge=1, le=200)] | None = None  # friction surfaces, if not as counted
    end_play_mm: From0 | None = None


class Build(Record, frozen=True, kw_only=True):
    """One build of an axle: what went in, in which order."""

    built: datetime
    by: str = ""
    reason: str = ""  # why it was opened
    left: Pack = msgspec.field(default_factory=Pack)
    right: Pack = msgspec.field(default_factory=Pack)
    spring: str = ""  # which preload spring
    spring_n: Above0 | None = None  # its load on each pack as built
    spring_n_u: From0 | None = None  # standard uncertainty
    face_outer_mm: Above0 | None = None  # outer diameter of the friction faces
    face_inner_mm: Above0 | None = None  # inner diameter
    face_mm_u: From0 | None = None  # standard uncertainty of both
    pinion_nm: From0 | None = None  # preload torque at the pinion, alone, while turning
    pinion_nm_u: From0 | None = None  # standard uncertainty
    soak_min: From0 | None = None  # how long the discs lay in oil
    soak_in: str = ""
    oil: str = ""
    oil_l: From0 | None = None  # without the modifier
    modifier: str = ""
    modifier_l: From0 | None = None
    notes: str = ""


class Replaced(Record, frozen=True, kw_only=True):
    """What an entry was before it was put right."""

    at: datetime
    build: Build


class Retest(Record, frozen=True, kw_only=True):
    """When the axle is to be tested again, counted from its last test."""

    every_km: Above0 | None = None
    every_events: Annotated[int, msgspec.Meta(ge=1, le=10_000)] | None = None
    every_weeks: Above0 | None = None
    figure_eights: Annotated[int, msgspec.Meta(ge=1, le=10_000)] | None = None  # to drive after a build, then test


class Use(Record, frozen=True, kw_only=True):
    """What an axle has run: an event, a reading of the odometer."""

    day: date
    km: From0 | None = None  # as the odometer reads
    events: Annotated[int, msgspec.Meta(ge=0, le=10_000)] = 0
    figure_eights: Annotated[int, msgspec.Meta(ge=0, le=10_000)] = 0
    note: str = ""


class AxleFile(Record, frozen=True, kw_only=True):
    """The file."""

    schema: Literal["heldwheel axle 1"] = "heldwheel axle 1"
    tag: str
    builds: tuple[Build, ...] = ()
    retest: Retest | None = None
    uses: tuple[Use, ...] = ()
    replaced: tuple[Replaced, ...] = ()


def axle_file(folder: Path | str, tag: str) -> tuple[Path, AxleFile | None]:
    """Give where the file of an axle is or would be, and what it holds; None where there is none yet.

    Raises:
        InputError: An empty tag.
        FileError, DescriptionError: A file of that name cannot be read.
    """
    wanted = tag.strip()
    if not wanted:
        raise InputError("an axle is found by its tag: give it one, as stamped or painted on it")
    stem = file_stem(wanted)
    for number in range(1, SAME_STEM):
        path = Path(folder) / f"{stem}{'' if number == 1 else f'-{number}'}{ENDING}"
        if not path.exists():
            return path, None
        found = read_toml(path, AxleFile)
        if same_tag(found.tag, wanted):
            return path, found
    raise FileError(f"{folder}: too many axles have a tag like '{wanted}'; give this one a tag of its own")


def tag_key(tag: str) -> str:
    """Give what a tag is found by: blanks around it and capitals make no other axle."""
    return tag.strip().casefold()


def same_tag(one: str, other: str) -> bool:
    """Whether two tags are of one axle."""
    return tag_key(one) == tag_key(other)


def sheets_of(folder: Path | str) -> list[Path]:
    """Give the axle files of a folder, in order of name."""
    return sorted(Path(folder).glob(f"*{ENDING}"))


def read_axle(folder: Path | str, tag: str) -> AxleFile | None:
    """Give what is kept of an axle; None where there is nothing.

    Raises:
        InputError, FileError, DescriptionError: See ``axle_file``.
    """
    return axle_file(folder, tag)[1]


def change_axle(folder: Path | str, tag: str, change: Callable[[AxleFile], AxleFile]) -> AxleFile:
    """Write the file of an axle anew from what stands there, and give it; other programs wait meanwhile.

    Raises:
        InputError, FileError, DescriptionError: See ``axle_file``, or it cannot be written; what was there is
            unchanged.
    """
    with locked(folder):
        path, found = axle_file(folder, tag)
        changed = change(found or AxleFile(tag=tag.strip()))
        write_toml(path, changed)
    return changed


def put_build(axle: AxleFile, build: Build, *, instead_of: datetime | None = None) -> AxleFile:
    """Give the file with a build added in order of time, or put in the place of the one of that time.

    Raises:
        InputError: There is another one of the same time, or none to be put right.
    """
    taken = moment(build.built)
    old = None
    if instead_of is not None:
        old = next((b for b in axle.builds if moment(b.built) == moment(instead_of)), None)
        if old is None:
            raise InputError(f"no build of {instead_of:%Y-%m-%d %H:%M} is kept of {axle.tag}")
    others = tuple(b for b in axle.builds if b is not old)
    if any(moment(b.built) == taken for b in others):
        raise InputError(f"there is a build of {build.built:%Y-%m-%d %H:%M} already: give this one its own time")
    if old == build:
        return axle
    kept = axle.replaced
    if old is not None:
        kept = (*kept, Replaced(at=datetime.now().astimezone().replace(microsecond=0), build=old))
    builds = tuple(sorted((*others, build), key=lambda b: moment(b.built)))
    return msgspec.structs.replace(axle, builds=builds, replaced=kept)


def builds_until(axle: AxleFile, at: datetime) -> tuple[Build, ...]:
    """Give the builds up to a time, in order: the last was in the axle, the one before it was taken out for it."""
    return tuple(build for build in in_order(axle) if moment(build.built) <= moment(at))


def in_order(axle: AxleFile) -> tuple[Build, ...]:
    """Give the builds in order of time, as whoever edits a file by hand may not have left them."""
    return tuple(sorted(axle.builds, key=lambda build: moment(build.built)))


def moment(at: datetime) -> float:
    """Give a time as seconds since 1970; one without a zone is of this computer's zone."""
    return at.timestamp()
