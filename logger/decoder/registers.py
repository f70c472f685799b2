"""Modbus registers to samples: one chunk is one poll of the whole register map.

Conventions:
- A chunk is the contents of the blocks that ``plan`` gives, one behind another, each register as two bytes, high byte
  first as it comes off the wire.
- A value of several registers is put together by its ``word_order``; ``byte_order`` swaps the bytes within each one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from logger.decoder.floats import Bytes, numbers, scaled
from logger.decoder.layouts import Register, words_of
from logger.decoder.marks import Marks
from logger.samples import Column, Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.samples import Floats

Table = Literal["holding", "input"]

# Modbus application protocol 1.1b3, 6.3 and 6.4: at most 125 registers in one request.
MAX_REGISTERS: Final = 125
# Registers in between are read along rather than asked for separately: an extra request costs ten of them and more.
MAX_SKIPPED: Final = 8


@dataclass(frozen=True, slots=True)
class RegisterBlock:
    """Registers read in one request."""

    table: Table
    address: int
    count: int


def plan(registers: Sequence[Register]) -> tuple[RegisterBlock, ...]:
    """Give the requests that read a register map, as few as possible."""
    blocks: list[RegisterBlock] = []
    for register in sorted(registers, key=lambda r: (r.table, r.address)):
        end = register.address + words_of(register)
        last = blocks[-1] if blocks else None
        if (
            last is not None
            and last.table == register.table
            and register.address <= last.address + last.count + MAX_SKIPPED
            and end - last.address <= MAX_REGISTERS
        ):
            blocks[-1] = RegisterBlock(last.table, last.address, max(last.count, end - last.address))
        else:
            blocks.append(RegisterBlock(register.table, register.address, words_of(register)))
    return tuple(blocks)


class RegisterDecoder:
    """A packet decoder for polled registers.

    Args:
        registers: The map, torque first.
        unit: Unit of the torque where its register names none.
    """

    def __init__(self, registers: Sequence[Register], unit: str = "") -> None:
        self.columns = tuple(Column(r.name, r.unit or (unit if r.name == "torque" else "")) for r in registers)
        blocks = plan(registers)
        starts = np.cumsum([0, *(2 * block.count for block in blocks)]).tolist()
        self._length = starts[-1]
        self._placed = [(register, _offset(register, blocks, starts)) for register in registers]
        self._marks = Marks()
        self.simulated = False  # registers carry no such mark

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Take no notice: registers carry no counter."""

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the polls of one drain."""
        good = [index for index, chunk in enumerate(chunks) if len(chunk) == self._length]
        events = []
        if len(good) != len(chunks):
            bad = len(chunks) - len(good)
            events.append(Event(EventKind.GARBAGE, 0, bad, f"{bad} answers that are none to what was asked"))
        if not good:
            return empty(self.columns, events=tuple(events))
        rows = np.frombuffer(b"".join(chunks[i] for i in good), np.uint8).reshape(len(good), self._length)
        columns = {}
        for register, at in self._placed:
            raw = numbers(_ordered(rows[:, at : at + 2 * words_of(register)], register), register.type, "big")
            columns[register.name] = self._value(register, raw)
            if register.name == "torque":
                events += self._void(register, raw, columns)
        events.sort(key=lambda event: event.index)
        return Decoded(columns, np.array(good, np.int64), None, tuple(events))

    def reset(self, *, midway: bool = True) -> Decoded:
        """Begin again after a reconnect; nothing is ever half-received here."""
        return empty(self.columns)

    def _value(self, register: Register, raw: Floats) -> Floats:
        value = scaled(raw, register.scale, register.offset)
        return value if register.missing is None else np.where(raw == register.missing, np.nan, value)

    def _void(self, register: Register, raw: Floats, columns: dict[str, Floats]) -> list[Event]:
        unknown = ~np.isfinite(columns["torque"])
        over = np.zeros(len(raw), bool)
        if register.overload is not None:
            over = (np.abs(raw) >= register.overload) & ~unknown
        columns["torque"] = np.where(over | unknown, np.nan, columns["torque"])
        return self._marks.events({"overload": over, "error": unknown})


def _offset(register: Register, blocks: Sequence[RegisterBlock], starts: Sequence[int]) -> int:
    for n, block in enumerate(blocks):
        first = register.address - block.address
        if block.table == register.table and 0 <= first <= block.count - words_of(register):
            return starts[n] + 2 * first
    raise AssertionError(register.name)  # ``plan`` covers every register


def _ordered(rows: Bytes, register: Register) -> Bytes:
    """Bring the bytes of a value into big-endian order."""
    pairs = rows.reshape(len(rows), -1, 2)
    if register.word_order == "little":
        pairs = pairs[:, ::-1, :]
    if register.byte_order == "little":
        pairs = pairs[:, :, ::-1]
    return np.ascontiguousarray(pairs).reshape(len(rows), -1)
