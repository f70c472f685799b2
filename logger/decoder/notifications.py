"""Bluetooth notifications with a described binary payload: one chunk is one packet.

A radio stack cuts a payload that does not fit its packet size: such a packet has the wrong length and is rejected, and
its samples are counted as lost by the next counter.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from logger.decoder.packets import PacketDecoder
from logger.samples import Column, Decoded, empty

if TYPE_CHECKING:
    from logger.decoder.layouts import Packet


class NotificationDecoder:
    """A packet decoder: takes each chunk as one whole packet.

    Args:
        layout: What each notification holds.
        unit: Unit of the torque where its field names none.
    """

    def __init__(self, layout: Packet, unit: str = "") -> None:
        self._packets = PacketDecoder(layout, unit)

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns, torque first."""
        return self._packets.columns

    @property
    def simulated(self) -> bool:
        """The device has said that it is a simulation."""
        return self._packets.simulated

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the notifications of one drain."""
        return self._packets.decode(chunks, np.arange(len(chunks)))

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence, give or take."""
        self._packets.expect(samples, leeway)

    def reset(self, *, midway: bool = True) -> Decoded:
        """Begin again after a reconnect; nothing is ever half-received here."""
        self._packets.forget()
        return empty(self.columns)
