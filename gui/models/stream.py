"""One connected transducer: its session in the acquisition thread, its recordings on disk, its news for the screen."""

from __future__ import annotations

import contextlib
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Protocol

from gui.models.library import file_stem
from gui.models.relay import Analyst, News, Relay
from logger.errors import FileError

if TYPE_CHECKING:
    from collections.abc import Callable
    from concurrent.futures import Future
    from pathlib import Path

    from analysis.traces import Sensor
    from gui.models.job import JobCard
    from gui.models.practice import PracticeLink
    from logger.acquisition import Acquisition
    from logger.header import Header, TransducerFacts
    from logger.links.base import Link
    from logger.recording import RecordingWriter
    from logger.samples import Ending
    from logger.session import Health, Session


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


@dataclass(frozen=True, slots=True)
class Open:
    """What is needed to open a transducer."""

    link: Link
    practice: PracticeLink | None = None


def sensor_of(facts: TransducerFacts) -> Sensor:
    """Give what is known of a transducer as the analysis wants it."""
    from analysis.traces import Sensor

    return Sensor(
        capacity_nm=facts.capacity_nm,
        resolution_nm=facts.resolution_nm,
        accuracy_percent_of_reading=facts.accuracy_percent_of_reading,
        gain=facts.gain,
        gain_u=facts.gain_u,
        delay_s=facts.filter_delay_s,
    )


def recording_name(header: Header, taken: Callable[[str], bool]) -> str:
    """Give a recording's file name: when, what, which side, why; numbered where that is taken."""
    started = header.started or datetime.now().astimezone()
    parts = [started.strftime("%Y%m%d-%H%M%S"), file_stem(header.job.vehicle or header.job.number or "test")[:30]]
    parts += [header.test.side or "", header.test.purpose or ""]
    stem = "-".join(part for part in parts if part)
    name, number = f"{stem}.csv", 2
    while taken(name):
        name, number = f"{stem}-{number}.csv", number + 1
    return name


class SessionStream:
    """A stream over a real session.

    Parameters
    ----------
    acquisition : Acquisition
        The thread that all sessions share.
    card : JobCard
        Its description says how bytes become samples.
    opened : Open
        The link.
    """

    def __init__(self, acquisition: Acquisition, card: JobCard, opened: Open) -> None:
        from logger.clock import build_clock
        from logger.decoder.build import build_decoder
        from logger.session import Session

        description = card.description
        if description is None:
            raise FileError("There is no transducer to connect.")
        self.practice = opened.practice
        self._facts = card.facts
        self._session: Session = Session(
            opened.link,
            build_decoder(description),
            build_clock(description),
            silence_s=description.silence_s,
            reopen_after_silence=description.link == "ble",
        )
        self._relay = Relay(card.unit, card.sign)
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
        return self._running.result() if self._running.done() else None

    def news(self) -> list[News]:
        """Give what has happened since the last call."""
        found: list[News] = []
        with contextlib.suppress(IndexError):
            while True:
                found.append(self._relay.news.popleft())
        return found

    def begin(self, header: Header, folder: Path) -> Path:
        """Begin another recording.

        Raises
        ------
        FileError
            Its file cannot be made.
        """
        from analysis.live import LiveReader
        from logger.recording import RecordingWriter

        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise FileError(f"{folder}: cannot be made: {error.strerror or error}; choose another folder") from error
        path = folder / recording_name(header, lambda name: (folder / name).exists())
        writer = RecordingWriter(path, header, self._session.columns)
        self._writer = writer
        self._relay.begin(writer, LiveReader(sensor_of(self._facts)))
        return path

    def rest(self) -> None:
        """End the recording; the stream goes on."""
        self._relay.begin(None, None)

    def saved(self) -> tuple[int, int]:
        """Give how many samples of the recording are safe, and how many are not yet."""
        return (self._writer.saved, self._writer.unsaved) if self._writer is not None else (0, 0)

    def rescue(self, folder: Path) -> Path:
        """Write everything of the failed recording elsewhere.

        Raises
        ------
        FileError
            There is none, or it cannot be written there either.
        """
        if self._writer is None:
            raise FileError("There is no recording to save.")
        return self._writer.rescue(folder)

    def stop(self) -> None:
        """End it."""
        self._session.stop()


def open_link(card: JobCard) -> Open:
    """Give the link of the card's transducer; nothing is opened yet.

    Raises
    ------
    LinkError
        There is no such port or device.
    """
    from logger.links.build import build_link

    if card.description is None:
        raise FileError("There is no transducer to connect.")
    return Open(build_link(card.description, card.address or card.facts.identity))
