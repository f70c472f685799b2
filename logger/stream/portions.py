"""Chunks handed on in portions that are worked off in a moment, so that a flood never keeps a session from stopping."""

from __future__ import annotations

from collections import deque
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from logger.samples import Chunk

PORTION_S: Final = 0.25
LEAST_BYTES: Final = 512
FIRST_BYTES: Final = 65_536


class Portions:
    """What was read and is still to be decoded; how much is given at once follows from how fast it went before."""

    def __init__(self) -> None:
        self._chunks: deque[Chunk] = deque()
        self._most: float = FIRST_BYTES  # bytes at once; an ordinary drain is never divided

    def __bool__(self) -> bool:
        return bool(self._chunks)

    def add(self, chunks: list[Chunk]) -> None:
        """Keep chunks behind those that wait."""
        self._chunks.extend(chunks)

    def take(self) -> list[Chunk]:
        """Give the next portion: at least a chunk, if there is one."""
        taken: list[Chunk] = []
        size = 0
        while self._chunks and (not taken or size + len(self._chunks[0].data) <= self._most):
            taken.append(self._chunks.popleft())
            size += len(taken[-1].data)
        return taken

    def worked(self, size: int, lasted_s: float) -> None:
        """Note how long so many bytes have taken; few that took a moment tell as much as many."""
        self._most = max(LEAST_BYTES, size * PORTION_S / lasted_s) if lasted_s > 0 else float("inf")
