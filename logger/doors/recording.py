"""One recording made at the command line: its source, its header, its progress line, its end."""

from __future__ import annotations

import asyncio
import contextlib
import math
import signal
import tempfile
import time
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import msgspec
import numpy as np

from logger.decoder.build import build_decoder
from logger.decoder.description import BleSettings, Description, SerialSettings, read_description
from logger.decoder.lines import UNLISTED
from logger.doors.lever_limit import lever_from, limit_from
from logger.edges.confirm import agree
from logger.edges.console import UNSHOWN, Progress, clean, note, say
from logger.edges.door import Exit
from logger.edges.toml_file import read_toml
from logger.edges.units import parse_quantity
from logger.errors import FileError, HeldwheelError, InputError
from logger.header import DIRECTION_CODES, Header, Sidecar
from logger.links.build import asks, build_link
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import merged
from logger.samples import EndReason, EventKind
from logger.stream.health import JUDGE_BYTES, MOSTLY, SessionState

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable, Iterator

    from logger.header import TransducerFacts
    from logger.links.base import Link
    from logger.samples import Block, Decoder, Ending
    from logger.stream.merge import PairedSession
    from logger.stream.session import Session

SHOW_S: Final = 0.2


@dataclass(frozen=True, slots=True)
class Source:
    """What is recorded: a link, its decoder, and what is known about the transducer."""

    link: Link
    decoder: Decoder
    description: Description
    identity: str


def described_source(file: str, address: str, baud: int | None = None, *, agreed: bool = False) -> Source:
    """Give a transducer with a description; one that must be asked is asked only if the user agrees."""
    description = _described(file, baud)
    _may_ask(description, address, agreed=agreed)
    return Source(build_link(description, address, confirmed=True), build_decoder(description), description, address)


def _may_ask(description: Description, address: str, *, agreed: bool) -> None:
    if asks(description):
        who = f"{clean(description.name)} on {clean(address)}"
        agree(f"{who} sends nothing by itself; this sends {asks(description)}", assume=agreed)


def _described(file: str, baud: int | None = None) -> Description:
    description = read_description(file)
    if baud is not None:
        if not 50 <= baud <= 4_000_000:
            raise InputError(f"--baud {baud}: must lie between 50 and 4000000")
        serial = msgspec.structs.replace(description.serial or SerialSettings(), baud=baud)
        description = msgspec.structs.replace(description, serial=serial)
    facts = msgspec.structs.replace(
        description.transducer,
        name=description.transducer.name or description.name,
        description=Path(file).name,
        unit=description.unit,
    )
    return msgspec.structs.replace(description, transducer=facts)


def ble_source(identity: str, file: str | None, radius: str, *, agreed: bool = False) -> Source:
    """Give a Bluetooth transducer: by its description, or by what the device says in the standards' words."""
    from logger.links.ble import meet

    radius_mm = parse_quantity(radius, "length") * 1000 if radius else None
    description = None
    if file:
        description = _described(file)
        if description.link != "ble":
            raise InputError(f"{file}: describes a transducer on '{description.link}', not on Bluetooth (ble)")
        _may_ask(description, identity, agreed=agreed)
    note(f"Looking for {identity} ...")
    settings = (description.ble or BleSettings()) if description is not None else None
    facts, pick = asyncio.run(meet(identity, settings, radius_mm=radius_mm))
    note(f"{facts.name or identity}: torque by the characteristic {pick.uuid}, {pick.why}")
    if description is None:
        unit = Header().transducer
        unit = msgspec.structs.replace(unit, name=facts.name, unit="N·m", sign="signed")
        description = Description(name=facts.name or identity, link="ble", notification=pick.packet, transducer=unit)
    length = description.notification.length if description.notification is not None else None
    if length is not None and length > facts.packet_bytes:
        note(
            f"CAUTION: packets of {length} bytes do not fit this connection ({facts.packet_bytes} bytes): they arrive "
            "cut and are rejected; set the device to fewer samples a packet, or use another Bluetooth adapter"
        )
    own = description.transducer
    transducer = msgspec.structs.replace(
        own,
        serial=own.serial or facts.texts.get("serial", ""),
        firmware=own.firmware or facts.texts.get("firmware", ""),
    )
    ble = msgspec.structs.replace(description.ble or BleSettings(), characteristic=pick.uuid)
    description = msgspec.structs.replace(description, transducer=transducer, ble=ble)
    return Source(build_link(description, identity, confirmed=True), build_decoder(description), description, identity)


def virtual_source(name: str, seed: int, speed: float, seconds: float | None = None) -> Source:
    """Give the virtual transducer, playing a scenario, or so many seconds of it."""
    from logger.links.virtual import VirtualLink
    from logger.virtual.device import VirtualDevice
    from logger.virtual.physics import simulate
    from logger.virtual.scenarios import scenario

    device = VirtualDevice(simulate(scenario(name), seed))
    identity = f"virtual:{name}:{seed}"
    link = VirtualLink(device, identity, speed, math.inf if seconds is None else seconds)
    return Source(link, build_decoder(device.description), device.description, identity)


def header_from(args: argparse.Namespace, transducer: TransducerFacts, identity: str) -> Header:
    """Give a recording's header from the options of a command (see ``doors.record``)."""
    header = Header(transducer=msgspec.structs.replace(transducer, identity=identity))
    if args.job:
        header = merged(header, read_toml(args.job, Sidecar))
    test = {name: getattr(args, name) for name in ("place", "held", "gear", "side") if getattr(args, name)}
    if args.direction:
        test["direction"] = DIRECTION_CODES[args.direction]
    changes: dict[str, Any] = {"test": msgspec.structs.replace(header.test, **test)}
    if args.note:
        notes = "; ".join(text for text in (header.job.notes, args.note) if text)
        changes["job"] = msgspec.structs.replace(header.job, notes=notes)
    limit = limit_from(args) or header.limit
    if limit is not None and not limit.source.strip():
        raise InputError(f"limit {args.limit}: say where it comes from with --source: manual or rule, with its edition")
    lever = lever_from(args) or header.lever
    if lever is not None and lever.length_mm is not None and lever.length_mm <= 0:
        raise InputError(f"--lever {args.lever}: the length must be above zero")
    changes |= {"lever": lever, "limit": limit}
    return msgspec.structs.replace(header, **changes)


def started_name() -> Path:
    """Give a new recording's name by the time."""
    return Path(f"recording-{datetime.now().astimezone():%Y%m%d-%H%M%S}.csv")


# --- recording --------------------------------------------------------------------------------------------------------


class _Shown:
    """A subscriber that keeps what the progress line shows."""

    def __init__(self) -> None:
        self.now = math.nan
        self.highest = math.nan
        self.time_s = 0.0
        self.first_s = math.nan  # the moment of the first sample
        self.void = 0  # samples without a value
        self.unlisted = ""  # what a description does not list, and makes readings not valid
        self.misfit = 0  # bytes or packets that were no reading since the last sample

    def on_block(self, block: Block) -> None:
        torque = block.columns["torque"]
        behind = [event for event in block.events if event.index >= len(torque)]
        self.misfit = 0 if len(torque) else self.misfit
        self.misfit += sum(event.count for event in behind if event.kind is EventKind.GARBAGE)
        self.unlisted = next((event.text for event in block.events if UNLISTED in event.text), self.unlisted)
        if len(torque):
            if math.isnan(self.first_s):
                self.first_s = time.monotonic()
            self.void += int(np.isnan(torque).sum())
            self.now, self.time_s = float(torque[-1]), float(block.time_s[-1])
            largest = float(torque[abs(torque).argmax()]) if not math.isnan(self.now) else math.nan
            if not abs(largest) <= abs(self.highest):
                self.highest = largest

    def on_end(self, ending: Ending) -> None:
        """Keep what was shown last."""


def record(
    session: Session | PairedSession,
    header: Header,
    out: Path,
    *,
    seconds: float | None = None,
) -> int:
    """Run a session into a file, with a progress line; Ctrl-C ends it properly.

    Args:
        header: ``time_from`` is filled in here.
        out: A new file.
        seconds: Stop after so long; finding the device and connecting do not count.

    Returns:
        int: ``Exit.OK``, or ``Exit.BAD_INPUT`` when the stream failed, the device was lost, or what was received is not
            all in the file as it is read again: the file is kept, what can be is rescued, and what is missing is said.
    """
    if seconds is not None and not 0 < seconds <= 7 * 86400:
        raise InputError("--seconds must be above 0 and at most a week")
    if header.time_from is None:
        header = msgspec.structs.replace(header, time_from=session.time_from)
    with _stopped_by_signals(session.stop):  # from before the file is made until all is told
        writer = RecordingWriter(out, header, session.columns)
        shown = _Shown()
        session.subscribe(writer)
        session.subscribe(shown)
        with Progress() as progress:
            ending = asyncio.run(_run(session, writer, shown, progress, seconds))
        return _report(session, writer, shown, ending)


async def _run(
    session: Session | PairedSession,
    writer: RecordingWriter,
    shown: _Shown,
    progress: Progress,
    seconds: float | None,
) -> Ending:
    running = asyncio.ensure_future(session.run())
    began_s = time.monotonic()
    while not running.done():
        await asyncio.wait({running}, timeout=SHOW_S)
        if session.health.state is SessionState.OPENING:
            began_s = time.monotonic()
        elapsed_s = time.monotonic() - began_s
        progress.show(_line(session, writer, shown), elapsed_s)
        # Finding and connecting do not count: from the first sample on, or from the opening while none has come.
        lasted_s = elapsed_s if math.isnan(shown.first_s) else time.monotonic() - shown.first_s
        if seconds is not None and max(lasted_s, shown.time_s if session.health.samples else 0.0) >= seconds:
            session.stop()
    return running.result()


def _figure(value: float, form: str = ".6g") -> str:
    return "–" if math.isnan(value) else format(value, form)


def _line(session: Session | PairedSession, writer: RecordingWriter, shown: _Shown) -> str:
    health = session.health
    unit = session.columns[0].unit
    rate = _figure(health.rate_hz, ".1f")
    parts = [
        f"{shown.time_s:.1f} s",
        f"{rate} Hz",
        f"{health.samples} samples ({writer.saved} saved)",
        f"{health.lost} lost",
        f"{_figure(shown.now)} {unit}",
        f"highest {_figure(shown.highest)}",
    ]
    if health.state != "streaming":
        parts.insert(0, str(health.state))
    if health.simulated:
        parts.append("SIMULATED")
    if writer.behind_s:
        parts.append(f"SAVING FALLS BEHIND by {writer.behind_s:.0f} s: {writer.unsaved} samples wait")
    if health.advice:
        parts.append(health.advice)
    return "  ".join(parts)


def _report(session: Session | PairedSession, writer: RecordingWriter, shown: _Shown, ending: Ending) -> int:
    """Say how it ended; rescue what could not be saved."""
    health = session.health
    path = writer.path
    failed = ending.reason in (EndReason.FAILED, EndReason.LOST)
    wrong = "" if failed else _does_not_fit(session, shown)
    if writer.failure is not None:
        note(f"heldwheel-log: {ending.text}")
        path = _rescued(writer) or path
    elif failed:
        note(f"heldwheel-log: {ending.text}")
    if health.samples:
        failed |= not _read_again(path, writer, shown.time_s, health.lost)
    elif failed or wrong:
        path.unlink(missing_ok=True)  # it holds nothing, and the name is free for the next try
    if wrong:
        note(f"heldwheel-log: {path}: {wrong}")
    elif health.garbage:
        told = f"{health.garbage} bytes or packets were no reading and were excluded"
        note(f"{told}; the last: {health.misfit}. See the events in the file")
    if health.simulated:
        _said("SIMULATED: this device says that it is no real transducer; the recording is marked so.")
    return Exit.BAD_INPUT if failed or wrong else Exit.OK


def _does_not_fit(session: Session | PairedSession, shown: _Shown) -> str:
    """Say what is wrong where nothing came, or most of what came is no reading of the described transducer."""
    health = session.health
    redo = "learn the transducer again (heldwheel-log learn), or correct its description"
    if not health.samples:
        why = health.misfit or health.advice or "nothing arrived: is it switched on, and set to send by itself?"
        return f"no sample was received. {why}" + (f"; {redo}" if health.misfit else "")
    if health.garbage > MOSTLY * health.received:
        return f"most of what came does not fit the description. {health.misfit}; {redo}"
    if shown.misfit >= JUDGE_BYTES:
        return f"from {shown.time_s:.1f} s on nothing fits the description any more. {health.misfit}; {redo}"
    if shown.unlisted and shown.void > MOSTLY * health.samples:
        return f"most readings are not valid. {shown.unlisted}; {redo}"
    return ""


def _read_again(path: Path, writer: RecordingWriter, lasted_s: float, lost: int) -> bool:
    """Read the finished file as anybody will, say what is in it, and tell whether that is all that was received."""
    try:
        trace = read_trace(path)
    except HeldwheelError as error:
        note(f"heldwheel-log: THE RECORDING CANNOT BE READ AGAIN: {error}")
        return False
    count = len(trace.time_s) + (0 if trace.second is None else len(trace.second.time_s))
    _said(f"{path}: {len(trace.time_s)} samples in {lasted_s:.1f} s, {lost} lost, {trace.state}")
    for problem in trace.problems:
        note(f"{path}: {problem}")
    missing = writer.saved + writer.unsaved + writer.lost - count
    if missing:
        note(f"heldwheel-log: {missing} SAMPLES THAT WERE RECEIVED ARE NOT IN {path}")
    return trace.state == "closed" and not missing


def _said(text: str) -> None:
    """Say a line of the result; a display that cannot show it is not the recording's failure."""
    with contextlib.suppress(*UNSHOWN):
        say(text)


def _rescued(writer: RecordingWriter) -> Path | None:
    """After a failed write, save everything elsewhere; if no place takes it, say so."""
    for folder in (Path.home(), Path(tempfile.gettempdir())):
        try:
            path = writer.rescue(folder)
        except (FileError, OSError, RuntimeError):
            continue
        note(f"Everything that could be kept, also what could not be saved before, was written to {path}")
        if writer.lost:
            note(f"{writer.lost} SAMPLES ARE LOST: they had been saved, and another program took them out of the file")
        return path
    note(f"NOTHING WAS RESCUED: no folder takes a file; {writer.unsaved} samples are lost with this program")
    return None


@contextlib.contextmanager
def _stopped_by_signals(stop: Callable[[], None]) -> Iterator[None]:
    """Let Ctrl-C, a polite kill and a closed terminal end the recording properly; what is ignored stays ignored."""
    names = ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK")
    numbers = [getattr(signal, name) for name in names if hasattr(signal, name)]
    before = {number: signal.getsignal(number) for number in numbers}
    taken = [number for number in numbers if before[number] is not signal.SIG_IGN]  # nohup: a hang-up is no stop
    came = []

    def stopped(number: int, _: object) -> None:
        came.append(number)
        stop()

    for number in taken:
        signal.signal(number, stopped)
    try:
        yield
    finally:
        for number in taken:
            if number not in came:  # more of a kind that has come may follow: what is to be ended is ended
                signal.signal(number, before[number])
