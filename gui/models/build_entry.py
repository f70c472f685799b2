"""The build of an axle as it is filled in: its packs part by part, its figures as typed, its history.

What is kept lies in ``<tag>.axle.toml`` beside the recordings; nothing is written before ``keep``.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from analysis.compare.builds import build_lines, build_name, changes, modifier_l
from analysis.compare.due import EVERY, USED, amounts, schedule_words
from gui.models.changes import Changes, History
from gui.models.display import Display
from gui.models.typed import length_mm
from logger.edges.units import parse_number, parse_quantity
from logger.errors import HeldwheelError, InputError
from logger.recordings.axles import (
    MOST_PARTS,
    AxleFile,
    Build,
    PackPart,
    Retest,
    Use,
    change_axle,
    moment,
    put_build,
    read_axle,
)

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from gui.models.job import JobCard
    from logger.edges.units import Kind
    from logger.recordings.axles import PartKind

SIDES = ("left", "right")
FORM = "%Y-%m-%d %H:%M"
SHEET = "sheet of "  # begins what the card says of a build that has a sheet

# Key -> kind of quantity, its unit on the sheet, and that in SI.
FIGURES: dict[str, tuple[Kind, str, float]] = {
    "spring_n": ("force", "N", 1.0),
    "face_outer_mm": ("length", "mm", 1e-3),
    "face_inner_mm": ("length", "mm", 1e-3),
    "pinion_nm": ("torque", "N·m", 1.0),
    "soak_min": ("time", "min", 60.0),
    "oil_l": ("volume", "l", 1e-3),
    "modifier_l": ("volume", "l", 1e-3),
}
PLAYS = {f"{side}_play": side for side in SIDES}  # end play, mm
WORDS = ("reason", "by", "spring", "soak_in", "oil", "modifier", "notes")


@dataclass(frozen=True, slots=True)
class BuildDraft:
    """What stands in the form: parts as records, everything else as typed."""

    left: tuple[PackPart, ...] = ()
    right: tuple[PackPart, ...] = ()
    texts: dict[str, str] = field(default_factory=dict)
    lengths: dict[str, float] = field(default_factory=dict)  # what fields were filled from, mm
    unit: str = "mm"  # that lengths are shown in


def draft_of(build: Build, display: Display | None = None) -> BuildDraft:
    """Give a build as a form to edit, its lengths in the unit on screen."""
    display, lengths = display or Display(), {}
    texts = {"built": build.built.strftime(FORM)} | {key: getattr(build, key) for key in WORDS}
    for key, (kind, unit, _) in FIGURES.items():
        value = getattr(build, key)
        texts[key] = "" if value is None else display.in_lengths(f"{value:g} {unit}")
        if kind == "length" and value is not None:
            lengths[key] = value
    for key, side in PLAYS.items():
        play = getattr(build, side).end_play_mm
        texts[key] = display.typed_length(play)
        if play is not None:
            lengths[key] = play
    return BuildDraft(build.left.parts, build.right.parts, texts, lengths, display.lengths)


def check_build(draft: BuildDraft, before: Build) -> tuple[Build, dict[str, str]]:
    """Give the build of a form, and per field why it cannot be used; what is not asked stays as it was."""
    wrong: dict[str, str] = {}
    typed = draft.texts
    facts: dict[str, object] = {key: typed.get(key, "").strip() for key in WORDS}
    for key in FIGURES:
        facts[key] = _figure(key, draft, wrong)
    for side in SIDES:
        pack = msgspec.structs.replace(
            getattr(before, side), parts=getattr(draft, side), end_play_mm=_mm(f"{side}_play", draft, wrong)
        )
        facts[side] = pack
    outer, inner = facts["face_outer_mm"], facts["face_inner_mm"]
    if isinstance(outer, float) and isinstance(inner, float) and inner >= outer:
        wrong["face_inner_mm"] = "The inner diameter is less than the outer one"
    try:
        built = datetime.strptime(typed.get("built", "").strip(), FORM).astimezone()
    except (ValueError, OverflowError, OSError):
        wrong["built"] = "Write it as 2026-05-14 16:30"
        built = before.built
    if built.strftime(FORM) == before.built.strftime(FORM):
        built = before.built  # its seconds and its zone stand
    return msgspec.structs.replace(before, built=built, **facts), wrong


def _figure(key: str, draft: BuildDraft, wrong: dict[str, str]) -> float | None:
    typed, (kind, unit, factor) = draft.texts, FIGURES[key]
    text, display = typed.get(key, "").strip(), Display(lengths=draft.unit)
    if not text:
        return None
    if key in draft.lengths and text == display.typed_length(draft.lengths[key]):
        return draft.lengths[key]
    try:
        if key == "modifier_l" and text.endswith("%"):
            return _share(text, typed)
        value = parse_quantity(text, kind, "N·m" if kind == "torque" else None)
    except HeldwheelError as error:
        wrong[key] = str(error)
        return None
    value = round(value / factor, 9)
    if not 0 <= value <= 1e6 or (value == 0 and key in {"spring_n", "face_outer_mm", "face_inner_mm"}):
        wrong[key] = display.in_lengths(f"Must be above 0 {unit}")
        return None
    return value


def _share(text: str, typed: dict[str, str]) -> float:
    """Give the litres of a modifier that was typed as its share of the whole fill."""
    oil = typed.get("oil_l", "").strip()
    if not oil:
        raise InputError("A share needs the amount of oil: fill it in first")
    return modifier_l(parse_quantity(oil, "volume") * 1e3, parse_number(text[:-1]))


def _mm(key: str, draft: BuildDraft, wrong: dict[str, str]) -> float | None:
    text, display = draft.texts.get(key, "").strip(), Display(lengths=draft.unit)
    if not text:
        return None
    try:
        value = length_mm(text, display, draft.lengths.get(key))
    except HeldwheelError as error:
        wrong[key] = str(error)
        return None
    if not 0 <= value <= 100:
        wrong[key] = display.in_lengths("Must be 0 to 100 mm")
        return None
    return value


def _is_length(key: str) -> bool:
    return key in PLAYS or (key in FIGURES and FIGURES[key][0] == "length")


class BuildEntry:
    """The form of one axle's builds, with undo.

    Args:
        card: Whose axle it is, found by its tag.
        folder: Gives the folder of recordings, where the sheet lies.
        display: In which unit lengths are shown.
    """

    def __init__(self, card: JobCard, folder: Callable[[], Path], display: Display) -> None:
        self._card, self._folder, self._display = card, folder, display
        self.changes = Changes()
        self._history = History[BuildDraft]()
        self._base = self._new()
        self._editing: datetime | None = None
        self.axle: AxleFile | None = None
        self.problem = ""
        self.draft, self.wrong = draft_of(self._base, display), dict[str, str]()
        self.side, self.place = "left", -1
        display.changes.listen(self._unit_changed)

    def _unit_changed(self) -> None:
        """Show lengths in the unit on screen; what cannot be used stays as it is typed."""
        if self.draft.unit == self._display.lengths:
            return
        fresh, typed = draft_of(self.build, self._display), self.draft.texts
        kept = {key: typed[key] for key in typed if key in self.wrong or not _is_length(key)}
        self.draft = replace(self.draft, texts=fresh.texts | kept, lengths=fresh.lengths, unit=fresh.unit)
        self._history.clear()
        self.changes.tell()

    # ------------------------------------------------------------------ which build
    @staticmethod
    def _new() -> Build:
        return Build(built=datetime.now().astimezone().replace(second=0, microsecond=0))

    @property
    def _builds(self) -> tuple[Build, ...]:
        return self.axle.builds if self.axle is not None else ()

    @property
    def tag(self) -> str:
        """The axle's tag."""
        return self._card.axle.tag.strip()

    def load(self) -> None:
        """Read what is kept of the axle, and open its last build, or a new one."""
        self.axle, self.problem = None, ""
        if self.tag:
            try:
                self.axle = read_axle(self._folder(), self.tag)
            except HeldwheelError as error:
                self.problem = str(error)
        self.open(len(self._builds) - 1)

    def open(self, number: int) -> None:
        """Open a build that is kept, to be put right; -1: a new one, with the parts of the last."""
        builds = self._builds
        if 0 <= number < len(builds):
            self._base, self._editing = builds[number], builds[number].built
        else:
            new = self._new()
            last = msgspec.structs.replace(builds[-1], built=new.built, reason="", notes="") if builds else new
            self._base, self._editing = last, None
        self._history.clear()
        self.side, self.place = "left", -1
        self._use(draft_of(self._base, self._display))

    @property
    def number(self) -> int:
        """Which kept build is open; -1 for a new one."""
        return next((i for i, b in enumerate(self._builds) if b.built == self._editing), -1)

    @property
    def names(self) -> list[str]:
        """The builds that are kept."""
        return [build_name(b) for b in self._builds]

    # ------------------------------------------------------------------ editing
    @property
    def build(self) -> Build:
        """The build as it stands in the form."""
        return check_build(self.draft, self._base)[0]

    @property
    def lines(self) -> list[str]:
        """What it adds up to."""
        return [self._display.in_lengths(said) for said in build_lines(self.build)]

    @property
    def since(self) -> tuple[str, tuple[str, ...]]:
        """The build before this one, and what changed since; empty without one."""
        now = self.build
        earlier = [b for b in self._builds if b.built != self._editing and moment(b.built) < moment(now.built)]
        if not earlier:
            return "", ()
        return build_name(earlier[-1]), tuple(self._display.in_lengths(said) for said in changes(earlier[-1], now))

    @property
    def parts(self) -> tuple[PackPart, ...]:
        """The parts of the side that is picked."""
        return self.draft.left if self.side == "left" else self.draft.right

    @property
    def picked(self) -> PackPart | None:
        """The part that is picked."""
        return self.parts[self.place] if 0 <= self.place < len(self.parts) else None

    def pick(self, side: str, place: int) -> None:
        """Pick a part, or a side where there is none."""
        self.side = side
        self.place = min(place, len(self.parts) - 1)
        self._history.pause()
        self.changes.tell()

    def add(self, kind: PartKind) -> None:
        """Put a part in behind the picked one, or at the end; it is as thick as the last of its kind."""
        if len(self.parts) >= MOST_PARTS:
            return
        alike = [p for p in (*self.parts, *self.draft.left, *self.draft.right) if p.kind == kind]
        at = self.place + 1 if self.picked is not None else len(self.parts)
        thickness = alike[-1].thickness_mm if alike else None
        parts = (*self.parts[:at], PackPart(kind=kind, thickness_mm=thickness), *self.parts[at:])
        self.place = at
        self._put_parts(parts)

    def remove(self) -> None:
        """Take the picked part out."""
        if self.picked is not None:
            parts = (*self.parts[: self.place], *self.parts[self.place + 1 :])
            self.place = min(self.place, len(parts) - 1)
            self._put_parts(parts)

    def move(self, by: int) -> None:
        """Change places with the neighbour: -1 towards the side gear, +1 outwards."""
        to = self.place + by
        if self.picked is not None and 0 <= to < len(self.parts):
            parts = list(self.parts)
            parts[self.place], parts[to] = parts[to], parts[self.place]
            self.place = to
            self._put_parts(tuple(parts))

    def same_on_both(self) -> None:
        """Build the other side like this one."""
        self._history.remember(self.draft)
        self._use(replace(self.draft, left=self.parts, right=self.parts))

    def _put_parts(self, parts: tuple[PackPart, ...], typing: str = "") -> None:
        self._history.remember(self.draft, typing)
        self._use(replace(self.draft, **{self.side: parts}))  # type: ignore[arg-type]

    def set_part(self, thickness: str, note: str) -> None:
        """Take what is typed of the picked part."""
        part = self.picked
        if part is None:
            return
        wrong: dict[str, str] = {}
        was = {} if part.thickness_mm is None else {"thickness": part.thickness_mm}
        typed = BuildDraft(texts={"thickness": thickness}, lengths=was, unit=self._display.lengths)
        mm = _mm("thickness", typed, wrong)
        if mm == 0:
            wrong["thickness"] = self._display.in_lengths("A part is thicker than 0 mm")
        self.wrong = {k: v for k, v in self.wrong.items() if k != "thickness"} | wrong
        if wrong:
            self.changes.tell()
            return
        changed = msgspec.structs.replace(part, thickness_mm=mm, note=note.strip())
        parts = (*self.parts[: self.place], changed, *self.parts[self.place + 1 :])
        self._put_parts(parts, f"{self.side} {self.place}")

    def type_in(self, key: str, text: str) -> None:
        """Take what stands in a field."""
        self._history.remember(self.draft, key)
        self._use(replace(self.draft, texts={**self.draft.texts, key: text}))

    @property
    def can_undo(self) -> bool:
        """Whether there is a change to take back."""
        return bool(self._history)

    def undo(self) -> None:
        """Take the last change back."""
        if self._history:
            self._use(self._history.back())
            self.place = min(self.place, len(self.parts) - 1)

    def _use(self, draft: BuildDraft) -> None:
        self.draft, self.wrong = draft, check_build(draft, self._base)[1]
        self.changes.tell()

    # ------------------------------------------------------------------ its life
    @property
    def schedule(self) -> str:
        """When the axle is to be tested again, as it is typed."""
        return schedule_words(self.axle.retest) if self.axle is not None else ""

    def put_schedule(self, text: str) -> None:
        """Keep another schedule; an empty one takes it away.

        Raises:
            HeldwheelError: It is not understood, or cannot be written.
        """
        plan = Retest(**amounts(text, EVERY)) if text.strip() else None
        self._change(lambda axle: msgspec.structs.replace(axle, retest=plan))

    def put_use(self, text: str) -> None:
        """Note what the axle has run until today.

        Raises:
            HeldwheelError: It is not understood, or cannot be written.
        """
        use = Use(day=datetime.now().astimezone().date(), **amounts(text, USED))
        self._change(lambda axle: msgspec.structs.replace(axle, uses=(*axle.uses, use)))

    def _change(self, change: Callable[[AxleFile], AxleFile]) -> None:
        folder = self._folder()
        folder.mkdir(parents=True, exist_ok=True)
        self.axle = change_axle(folder, self.tag, change)
        self.changes.tell()

    # ------------------------------------------------------------------ keeping
    def keep(self) -> str:
        """Write the build beside the recordings, and say so; what it was before is kept, too.

        Raises:
            HeldwheelError: The axle has no tag, a field cannot be used, another build has its time, or the folder
                cannot be written.
        """
        if self.wrong:
            raise InputError("This build has faults; put them right first.")
        build, editing = self.build, self._editing
        self._change(lambda axle: put_build(axle, build, instead_of=editing))
        self._base, self._editing = build, build.built
        self._history.clear()
        axle = self._card.axle
        if not axle.pack_build or axle.pack_build.startswith(SHEET):
            self._card.put(axle=msgspec.structs.replace(axle, pack_build=f"{SHEET}{build_name(build)}"))
        self.changes.tell()
        return f"Kept as the build of {build_name(build)} of axle {self.tag}."
