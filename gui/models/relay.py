"""Where a stream of samples forks: to the recording on disk, to the reading of pulls, to the screen.

``Relay`` is the session's subscriber and runs in the acquisition thread; it only hands on. ``Analyst`` reads pulls in
a thread of its own, so that neither the stream nor the window waits for it. A stage of a test (zero, drag, pulls)
begins and ends between two blocks, so that recording and reading see exactly the same samples.
"""

from __future__ import annotations

import math
import threading
from collections import deque
from dataclasses import dataclass, replace
from queue import SimpleQueue
from typing import TYPE_CHECKING, Protocol

import numpy as np

from logger.errors import HeldwheelError
from logger.recordings.second import SOURCE, Alongside
from logger.samples import Block, Ending, EndReason

if TYPE_CHECKING:
    from analysis.to_axle.calibration import Calibration
    from analysis.trace.results import Pull
    from analysis.verdict.job import Job
    from logger.samples import Event, Floats


DIGITS = 6  # of a time in a recording: what is read live must be what stands in the file


class Writer(Protocol):
    """A recording that is being written."""

    def on_block(self, block: Block) -> None:
        """Take samples."""
        ...

    def on_end(self, ending: Ending) -> None:
        """Close."""
        ...


@dataclass(slots=True)
class Stage:
    """One stretch of a test that is recorded as one file and read as one trace."""

    number: int
    writer: Writer | None = None
    job: Job | None = None
    start_s: float | None = None  # of the session's time


@dataclass(frozen=True, slots=True)
class ScreenSamples:
    """For the screen: samples in N·m as read, clockwise positive, on the session's time; and as they were delivered."""

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None
    events: tuple[Event, ...]
    delivered: Floats
    held_deg: Floats | None = None


@dataclass(frozen=True, slots=True)
class FoundPull:
    """For the screen: a pull of a stage, its times on the recording's axis; ``start_s`` is the stage's start."""

    stage: int
    start_s: float
    pull: Pull
    job: Job


@dataclass(frozen=True, slots=True)
class StageClosed:
    """For the screen: everything of a stage has been read and written."""

    stage: int


@dataclass(frozen=True, slots=True)
class Broken:
    """For the screen: reading pulls has failed; recording goes on."""

    text: str


News = ScreenSamples | FoundPull | StageClosed | Broken


class Relay:
    """The session's subscriber.

    Args:
        calibration: From what is delivered to N·m.
        offset_s: Added to the session's time for the screen: where an earlier session of the same test ended.
    """

    def __init__(self, calibration: Calibration, offset_s: float = 0.0) -> None:
        self._offset_s = offset_s
        self._calibration = calibration
        self._along = Alongside()
        self._lock = threading.Lock()
        self._stage = Stage(0)
        self._next: Stage | None = None
        self.ending: Ending | None = None
        self.news: deque[News] = deque()
        self.work: SimpleQueue[tuple[Stage, ScreenSamples | Ending] | None] = SimpleQueue()

    @property
    def full(self) -> bool:
        """Whether so much waits to be saved that no more should be read for the moment."""
        return bool(getattr(self._stage.writer, "full", False))

    def begin(self, writer: Writer | None, job: Job | None) -> int:
        """Begin another stage with the next block; the one before is closed first. Gives its number."""
        with self._lock:
            number = max(self._stage.number, self._next.number if self._next else 0) + 1
            self._next = Stage(number, writer, job)
            return number

    def on_block(self, block: Block) -> None:
        """Hand a block on. An error of the recording is not caught: it ends the session with its reason."""
        self._change()
        stage = self._stage
        if stage.start_s is None:  # an event that comes before all samples begins it as well
            known_s = block.time_s if len(block) else [one.time_s for one in block.events if math.isfinite(one.time_s)]
            stage.start_s = float(known_s[0]) + self._offset_s if len(known_s) else None
        self._show(stage, self._samples(block))
        if stage.writer is not None:
            stage.writer.on_block(_shifted(block, (stage.start_s or 0.0) - self._offset_s))

    def _samples(self, block: Block) -> ScreenSamples:
        """Give the torque's rows; an angle that is recorded along is brought to their times."""
        time_s, columns = block.time_s + self._offset_s, block.columns
        torque, angle, source = columns["torque"], columns.get("angle"), columns.get(SOURCE)
        held = columns.get("held_angle")
        if source is not None and angle is not None:
            # On the recording's axis, as in its file: an angle between two samples is the same to the last bit.
            start_s = self._stage.start_s or 0.0
            axis_s = np.round(time_s - start_s, DIGITS)
            angles = (angle,) if held is None else (angle, held)
            axis_s, torque, angle, *more = self._along.feed(axis_s, source, torque, *angles)
            time_s, held = axis_s + start_s, more[0] if more else None
        elif source is not None:
            time_s, torque, held = time_s[source == 1], torque[source == 1], None
        events = tuple(replace(event, time_s=event.time_s + self._offset_s) for event in block.events)
        return ScreenSamples(time_s, self._calibration.as_read(torque), angle, events, torque, held)

    def _show(self, stage: Stage, samples: ScreenSamples) -> None:
        self.news.append(samples)
        if stage.job is not None:
            self.work.put((stage, samples))

    def _forget_along(self) -> None:
        """Give a stage what of it still waits for an angle."""
        time_s, torque, *angles = self._along.rest()
        self._along = Alongside()
        if len(time_s):
            time_s = time_s + (self._stage.start_s or 0.0)
            held = angles[1] if len(angles) > 1 else None
            self._show(
                self._stage, ScreenSamples(time_s, self._calibration.as_read(torque), angles[0], (), torque, held)
            )

    def on_end(self, ending: Ending) -> None:
        """Close what is open and keep the ending."""
        if self.ending is not None:
            return
        self.ending = ending
        self._change()
        self._forget_along()
        self._close(self._stage, ending)
        self.work.put(None)

    def _change(self) -> None:
        with self._lock:
            coming, self._next = self._next, None
        if coming is not None:
            self._forget_along()
            old, self._stage = self._stage, coming
            self._close(old, None)

    def _close(self, stage: Stage, ending: Ending | None) -> None:
        """Let the analyst's thread finish a stage: closing a file waits for the disk, this thread must not."""
        if stage.job is not None or stage.writer is not None:
            self.work.put((stage, ending or Ending(EndReason.STOPPED, "stage ended")))


class Analyst(threading.Thread):
    """Reads pulls behind the stream; ends when the relay's stream has ended."""

    def __init__(self, relay: Relay) -> None:
        super().__init__(name="pull reader", daemon=True)
        self._relay = relay

    def run(self) -> None:
        """Work until the end."""
        while (item := self._relay.work.get()) is not None:
            stage, what = item
            self._read(stage, what)
            if isinstance(what, Ending):
                self._close(stage, what)

    def _read(self, stage: Stage, what: ScreenSamples | Ending) -> None:
        job = stage.job
        if job is None:
            return
        start = stage.start_s or 0.0
        try:
            if isinstance(what, Ending):
                pulls = job.finish()
            else:
                time_s = np.round(what.time_s - start, DIGITS)
                events = [replace(event, time_s=event.time_s - start) for event in what.events]
                pulls = job.feed(time_s, what.delivered, what.angle_deg, events, what.held_deg)
        except Exception as error:  # noqa: BLE001 - reading pulls must never end a recording
            stage.job = None
            text = f"Reading pulls has failed ({type(error).__name__}: {error}). The recording goes on."
            self._relay.news.append(Broken(text))
            return
        self._relay.news.extend(FoundPull(stage.number, start, pull, job) for pull in pulls)

    def _close(self, stage: Stage, ending: Ending) -> None:
        if stage.writer is not None:
            try:
                stage.writer.on_end(ending)
            except HeldwheelError as error:
                self._relay.news.append(Broken(str(error)))
        self._relay.news.append(StageClosed(stage.number))


def _shifted(block: Block, start_s: float) -> Block:
    """Give a block on a recording's own time axis."""
    events = tuple(replace(event, time_s=event.time_s - start_s) for event in block.events)
    return Block(np.round(block.time_s - start_s, DIGITS), block.columns, events)
