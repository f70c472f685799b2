"""A link that plays a script: bytes, pauses and failures; and a subscriber that keeps all it is given."""

from __future__ import annotations

import asyncio
import time

from logger.errors import LinkError, LinkLost
from logger.samples import Block, Chunk, Ending


class Pause:
    """Nothing arrives for so long."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds


class ScriptedLink:
    """Plays one script per opening; a script is bytes, Pause or exceptions."""

    def __init__(self, *scripts: list, refusals: int = 0, hold: bool = False) -> None:
        self.name = "scripted"
        self._scripts = list(scripts)
        self._script: list = []
        self._refusals = refusals
        self._hold = hold
        self.opened = self.closed = 0
        self.sent: list[bytes] = []

    async def open(self) -> None:
        if self.opened and self._refusals:
            self._refusals -= 1
            raise LinkError("scripted: not there yet")
        self.opened += 1
        self._script = self._scripts.pop(0) if self._scripts else []

    async def read(self) -> list[Chunk]:
        while self._script:
            item = self._script.pop(0)
            if isinstance(item, Pause):
                await asyncio.sleep(item.seconds)
            elif isinstance(item, Exception):
                raise item
            else:
                await asyncio.sleep(0.001)
                return [Chunk(time.monotonic(), item)]
        if self._hold:
            await asyncio.sleep(3600)
        return []

    async def write(self, data: bytes) -> None:
        self.sent.append(data)

    async def close(self) -> None:
        self.closed += 1


class Kept:
    """Keeps blocks and the ending; fails at a block if told to."""

    def __init__(self, fail_at: int | None = None) -> None:
        self.blocks: list[Block] = []
        self.ending: Ending | None = None
        self._fail_at = fail_at

    def on_block(self, block: Block) -> None:
        if self._fail_at is not None and len(self.blocks) >= self._fail_at:
            raise ValueError("this subscriber has had enough")
        self.blocks.append(block)

    def on_end(self, ending: Ending) -> None:
        assert self.ending is None
        self.ending = ending

    @property
    def torque(self) -> list[float]:
        return [v for block in self.blocks for v in block.columns["torque"].tolist()]

    @property
    def time_s(self) -> list[float]:
        return [v for block in self.blocks for v in block.time_s.tolist()]

    @property
    def events(self) -> list:
        return [event for block in self.blocks for event in block.events]

    @property
    def kinds(self) -> list[str]:
        return [event.kind.value for event in self.events]


def lost() -> LinkLost:
    return LinkLost("scripted: the port is gone")
