"""One connected transducer: its session in the acquisition thread, its recordings on disk, its news for the screen."""

from __future__ import annotations

import contextlib
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Protocol

from gui.models.relay import Analyst, News, Relay
from logger.edges.small_file import file_stem, free_name
from logger.edges.units import is_force
from logger.errors import FileError, InputError

if TYPE_CHECKING:
    from concurrent.futures import Future
    from pathlib import Path

    from gui.models.job import JobCard
    from gui.models.practice import PracticeLink
    from logger.header import Header
    from logger.links.base import Link
    from logger.recordings.recording import RecordingWriter
    from logger.samples import Ending
    from logger.stream.acquisition import Acquisition
    from logger.stream.health import Health
    from logger.stream.merge import PairedSession
    from logger.stream.session import Session


class Stream(Protocol):
    """What the bridge needs of a connected transducer."""

    practice: PracticeLink | None

    @property
    def health(self) -> Health:
        """How it is doing."""
        ...

    @property
    def ending(self) -> Ending | None:
        """How it ended; None while it runs."""
        ...

    def news(self) -> list[News]:
        """Give what has happened since the last call."""
        ...

    def begin(self, header: Header, folder: Path) -> Path:
        """Begin another recording, and with it another reading of pulls."""
        ...

    def rest(self) -> None:
        """End the recording; the stream goes on."""
        ...

    def saved(self) -> tuple[int, int]:
        """Give how many samples of the recording are safe, and how many are not yet."""
        ...

    def rescue(self, folder: Path) -> Path:
        """After a failed disk: write everything elsewhere."""
        ...

    def stop(self) -> None:
        """End it."""
        ...

    def wait(self) -> None:
        """Wait until everything is written and closed."""
        ...


CLOSE_S = 10.0  # a slow disk
DRAIN_S = 1 / 30  # a frame or two of the screen
RECONNECT_S = 600.0  # how long a lost device is waited for: a flat battery is changed in ten minutes


@dataclass(frozen=True, slots=True)
class Open:
    """What is needed to open a transducer; ``offset_s`` is where an earlier stream of the same test ended."""

    link: Link
    second: Link | None = None  # of what is recorded along
    practice: PracticeLink | None = None
    offset_s: float = 0.0
    reconnect_s: float = RECONNECT_S


def recording_stem(header: Header) -> str:
    """Give a recording's file name without its ending: when, what, which side, why."""
    started = header.started or datetime.now().astimezone()
    parts = [started.strftime("%Y%m%d-%H%M%S"), file_stem(header.job.vehicle or header.job.number or "test")[:30]]
    parts += [header.test.side or "", header.test.purpose or ""]
    return "-".join(part for part in parts if part)


class SessionStream:
    """A stream over a real session.

    Args:
        acquisition: The thread that all sessions share.
        card: Its description says how bytes become samples.
        opened: The link.
    """

    def __init__(self, acquisition: Acquisition, card: JobCard, opened: Open) -> None:
        from logger.stream.session import build_session

        description = card.description
        if description is None:
            raise FileError("There is no transducer to connect.")
        self.practice = opened.practice
        self._unit, self._lever = card.unit, card.lever
        first = build_session(opened.link, description, reconnect_s=opened.reconnect_s, drain_s=DRAIN_S)
        self._session: Session | PairedSession = first
        if card.second is not None and opened.second is not None:
            from logger.stream.merge import PairedSession

            along = build_session(opened.second, card.second, reconnect_s=opened.reconnect_s, drain_s=DRAIN_S)
            self._session = PairedSession(first, along, card.second.measures, card.second.unit)
        self._relay = Relay(card.calibration(), opened.offset_s)
        self._session.subscribe(self._relay)
        self._writer: RecordingWriter | None = None
        self._analyst = Analyst(self._relay)
        self._analyst.start()
        self._running: Future[Ending] = acquisition.start(self._session)

    @property
    def health(self) -> Health:
        """How it is doing."""
        return self._session.health

    @property
    def ending(self) -> Ending | None:
        """How it ended; None while it runs."""
        if not self._running.done():
            return None
        ending = self._running.result()
        self._relay.on_end(ending)  # where the recording failed, the session has left the relay out
        return ending

    def news(self) -> list[News]:
        """Give what has happened since the last call."""
        found: list[News] = []
        with contextlib.suppress(IndexError):
            while True:
                found.append(self._relay.news.popleft())
        return found

    def begin(self, header: Header, folder: Path) -> Path:
        """Begin another recording.

        Raises:
            FileError: Its file cannot be made.
            InputError: Its lever, limit or transducer cannot be used.
        """
        from analysis.verdict.job import Job
        from logger.recordings.recording import RecordingWriter

        if is_force(self._unit) and header.lever != self._lever:
            raise InputError("The lever of a force was changed after the transducer was opened: begin the test anew.")
        job = Job(header, self._unit)
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise FileError(f"{folder}: cannot be made: {error.strerror or error}; choose another folder") from error
        while True:
            path = free_name(folder, recording_stem(header), ".csv")
            try:
                writer = RecordingWriter(path, header, self._session.columns)
                break
            except FileError:
                if not path.exists():  # else another window has taken the name in this moment
                    raise
        self._writer = writer
        self._relay.begin(writer, job)
        return path

    def rest(self) -> None:
        """End the recording; the stream goes on."""
        self._relay.begin(None, None)

    def saved(self) -> tuple[int, int]:
        """Give how many samples of the recording are safe, and how many are not yet."""
        return (self._writer.saved, self._writer.unsaved) if self._writer is not None else (0, 0)

    def rescue(self, folder: Path) -> Path:
        """Write everything of the failed recording elsewhere.

        Raises:
            FileError: There is none, or it cannot be written there either.
        """
        if self._writer is None:
            raise FileError("There is no recording to save.")
        return self._writer.rescue(folder)

    def stop(self) -> None:
        """End it."""
        self._session.stop()

    def wait(self) -> None:
        """Wait until everything is written and closed; for the end of the program only."""
        with contextlib.suppress(TimeoutError):
            self._running.result(timeout=CLOSE_S)
        if self.ending is not None:
            self._analyst.join(timeout=CLOSE_S)


def open_link(card: JobCard, *, confirmed: bool = False, second_confirmed: bool = False) -> Open:
    """Give the links of the card's transducer and of what is recorded along; nothing is opened yet.

    Args:
        card: Its description and address.
        confirmed, second_confirmed: The user has seen what a transducer that must be asked would be sent, and agreed.

    Raises:
        LinkError: There is no such port or device.
        InputError: It must be asked, and the user has not agreed.
    """
    from logger.links.build import build_link

    if card.description is None:
        raise FileError("There is no transducer to connect.")
    second = None
    if card.second is not None:
        second = build_link(card.second, card.second_device, confirmed=second_confirmed)
    return Open(build_link(card.description, card.device, confirmed=confirmed), second)
