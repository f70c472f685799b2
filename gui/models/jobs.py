"""Jobs as documents: what stands on the job card, written as it is typed, one small TOML file per job.

A job is never deleted by the program. The file that is being filled in is remembered, so that the window opens with it;
earlier ones are offered by vehicle and day, and the last one's fixture, limit and transducer can be taken over.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Literal

import msgspec

from gui.models.dial_entry import DialDraft  # noqa: TC001 - msgspec reads it
from gui.models.job import DWELL_S, PULLS_WANTED, JobCard
from logger.decoder.description import Description  # noqa: TC001 - msgspec reads it
from logger.edges.small_file import free_name
from logger.edges.toml_file import read_toml, write_toml
from logger.errors import FileError, HeldwheelError
from logger.header import Axle, Conditions, Decision, JobFacts, Lever, Limit, Photo, Record, Test

if TYPE_CHECKING:
    from pathlib import Path

RECENT = 12  # jobs that are offered: more is a search, and Review has one
AS_LAST_TIME = (
    "test", "lever", "limit", "decision", "description", "address", "second", "second_address",
    "pulls_wanted", "dwell_s", "with_drag",
)  # fmt: skip
"""What one job takes over from the one before: how it is tested and with what, never what is tested."""


class JobFile(Record, frozen=True, kw_only=True):
    """One job card as it is kept."""

    schema: Literal["heldwheel job 1"] = "heldwheel job 1"
    saved: datetime
    job: JobFacts = msgspec.field(default_factory=JobFacts)
    axle: Axle = msgspec.field(default_factory=Axle)
    test: Test = msgspec.field(default_factory=Test)
    conditions: Conditions = msgspec.field(default_factory=Conditions)
    photos: tuple[Photo, ...] = ()
    dial: tuple[DialDraft, ...] = ()
    lever: Lever | None = None
    limit: Limit | None = None
    decision: Decision | None = None
    description: Description | None = None
    address: str = ""
    second: Description | None = None
    second_address: str = ""
    pulls_wanted: int = PULLS_WANTED
    dwell_s: float = DWELL_S
    with_drag: bool = False


KEPT = tuple(f.name for f in msgspec.structs.fields(JobFile) if f.name not in {"schema", "saved"})


@dataclass(frozen=True, slots=True)
class Known:
    """A job that can be opened again: its file, when it was last changed, and what to call it."""

    path: Path
    saved: datetime
    words: str


class Jobs:
    """The job files of a folder, one of them being filled in.

    Args:
        folder: Where they are; made when first needed.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.path: Path | None = None
        self._written: tuple[Path, dict[str, object]] | None = None
        self.problem = ""

    def begin(self) -> None:
        """Begin another job: the file so far stays as it is."""
        self.path = None

    def save(self, card: JobCard) -> None:
        """Write the card, if anything stands on it; a folder that cannot be written is a problem in words."""
        parts = {name: getattr(card, name) for name in KEPT}
        if self.path is None and parts == {name: getattr(JobCard(), name) for name in KEPT}:
            return
        now = datetime.now().astimezone().replace(microsecond=0)
        self.problem = ""
        if self.path is not None and (self.path, parts) == self._written:
            return
        try:
            if self.path is None:
                self.folder.mkdir(parents=True, exist_ok=True)
                self.path = free_name(self.folder, f"{now:%Y%m%d-%H%M%S}", ".toml")
            write_toml(self.path, JobFile(saved=now, **parts))
            self._written = (self.path, parts)
        except (HeldwheelError, OSError) as error:
            self.problem = f"The job card could not be saved: {error}"

    def open(self, path: Path) -> dict[str, object]:
        """Go on with a job; gives what stands on its card.

        Raises:
            FileError, DescriptionError: It cannot be read; the job so far goes on.
        """
        parts = _parts(read_toml(path, JobFile))
        self.path = path
        return parts

    def last(self) -> dict[str, object]:
        """Give what the job before this one was tested with; empty without one."""
        for known in self.recent():
            if known.path != self.path:
                parts = _parts(read_toml(known.path, JobFile))
                return {name: parts[name] for name in AS_LAST_TIME}
        return {}

    def recent(self) -> list[Known]:
        """Give the jobs that were changed last, newest first; a file that cannot be read is left out."""
        found = []
        for path in sorted(self.folder.glob("*.toml"), key=_changed, reverse=True)[: 2 * RECENT]:
            try:
                kept = read_toml(path, JobFile)
            except (FileError, HeldwheelError):
                continue
            what = kept.job.vehicle or kept.job.number or kept.axle.tag or "no vehicle"
            side = f", {kept.test.side}" if kept.test.side else ""
            found.append(Known(path, kept.saved, f"{what}{side} · {kept.saved:%Y-%m-%d %H:%M}"))
        return found[:RECENT]


def _parts(kept: JobFile) -> dict[str, object]:
    parts = {name: getattr(kept, name) for name in KEPT}
    return parts if parts["decision"] is not None else {**parts, "decision": Decision(rule="three-way")}


def _changed(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0
