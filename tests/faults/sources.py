"""A device made of a script, for sessions under faults: chunks, pauses, losses."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Iterable

import msgspec
import numpy as np

from logger.decoder.description import Description
from logger.edges.toml_file import parse_toml
from logger.header import Header
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Chunk, Ending
from logger.stream.session import Session, build_session
from tests.faults.recordings import torque_of

DESCRIPTION = parse_toml(
    'name = "fault test"\nsimulated_mark = "SIM"\n[transducer]\nunit = "lbf·in"\nrate_hz = 1000\n'
    '[lines]\ntemplate = "SIM{counter},{torque},{number}"\nterminator = "CRLF"\n[serial]\nbaud = 115200\n',
    Description,
    "fault test",
)


def lines(first: int, count: int) -> bytes:
    """Give so many lines; the torque follows from the number, so that any row can be checked."""
    if count < 1:
        return b""
    numbers = np.arange(first, first + count)
    plain = numbers.tolist()
    rows = list(zip(plain, torque_of(numbers.astype(float)).tolist(), plain, strict=True))
    return b"SIM" + msgspec.json.encode(rows)[2:-2].replace(b"],[", b"\r\nSIM") + b"\r\n"  # a day has 86 million


class Scripted:
    """A link that gives what its script says.

    Parameters
    ----------
    script : iterable of bytes, float or Exception
        Bytes arrive, a number is a pause (s), an exception is raised; the end of the script is the source's end.
    """

    name = "script"

    def __init__(self, script: Iterable[bytes | float | Exception]) -> None:
        self._script = iter(script)
        self.opened = self.closed = 0

    async def open(self) -> None:
        """Count an opening."""
        self.opened += 1

    async def read(self) -> list[Chunk]:
        """Give the next bytes."""
        for step in self._script:
            if isinstance(step, Exception):
                raise step
            if isinstance(step, bytes):
                return [Chunk(time.monotonic(), step)]
            await asyncio.sleep(step)
        return []

    async def write(self, data: bytes) -> None:
        """Take nothing."""

    async def close(self) -> None:
        """Count a closing."""
        self.closed += 1


class Kept:
    """A subscriber that keeps everything it is given."""

    def __init__(self) -> None:
        self.blocks: list[Block] = []
        self.ending: Ending | None = None

    def on_block(self, block: Block) -> None:
        """Keep a block."""
        self.blocks.append(block)

    def on_end(self, ending: Ending) -> None:
        """Keep the ending."""
        self.ending = ending

    def column(self, name: str) -> np.ndarray:
        """Give a column of everything."""
        return np.concatenate([block.columns[name] for block in self.blocks] or [np.empty(0)])

    def told(self, kind: str) -> list[str]:
        """Give the texts of all events of one kind."""
        return [event.text for block in self.blocks for event in block.events if event.kind == kind]


def session_of(script: Iterable[bytes | float | Exception], **options: float) -> tuple[Session, Kept]:
    """Give a session over a script, and a subscriber that keeps all."""
    session = build_session(Scripted(script), DESCRIPTION, **options)
    kept = Kept()
    session.subscribe(kept)
    return session, kept


def recorded(session: Session, path: str) -> tuple[RecordingWriter, Ending]:
    """Run a session with a recording."""
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(writer)
    return writer, asyncio.run(session.run())
