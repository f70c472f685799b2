"""Noticing a device that sets its zero by itself while it is loaded: from then on every reading is wrong by the load.

Some transducers zero at power-up, so after a break; some while streaming, when a key is touched or a zero tracking
takes a steady load for drift. Neither is told by the device. What can be seen is told as a doubt, never corrected:

- after a break the reading is nothing where it was a steady load before;
- a steady load vanishes between two samples, faster than any hand lets go.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.samples import Decoded, Event, EventKind

if TYPE_CHECKING:
    from logger.samples import Column, Decoder, Floats

LOADED: Final = 0.05  # of the capacity; of the highest torque so far where the capacity is not known, four times that
NOTHING: Final = 0.02  # of the load before
STEADY: Final = 0.1  # range of the samples before, of the load
SAMPLES: Final = 5  # that make a level
KEPT: Final = 2 * SAMPLES
# A hand that lets go takes 20 ms at least; only a faster stream shows a step between two samples as what it is.
MIN_RATE_HZ: Final = 100.0

_ADVICE: Final = "take the load off and check the zero"


class AutoZeroWatch:
    """A decoder that watches another's torque.

    Args:
        capacity: In the unit of the torque column.
        rate_hz: Described rate; steps are looked for only where it is known and high enough.
        least: The smallest torque that is called a load, in the same unit.
    """

    def __init__(
        self, decoder: Decoder, capacity: float | None = None, rate_hz: float | None = None, *, least: float = 1.0
    ) -> None:
        self._decoder = decoder
        self._loaded = LOADED * capacity if capacity else None
        self._least = least
        self._fast = rate_hz is not None and rate_hz >= MIN_RATE_HZ
        self._peak = 0.0
        self._recent = np.empty(0)  # the last samples, enough to judge a step among them
        self._before: float | None = None  # the level before a break

    @property
    def columns(self) -> tuple[Column, ...]:
        """The other decoder's columns."""
        return self._decoder.columns

    @property
    def simulated(self) -> bool:
        """The device has said that it is a simulation."""
        return self._decoder.simulated

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Pass on how many samples were due during a silence."""
        self._decoder.expect(samples, leeway)

    def reset(self, *, midway: bool = True) -> Decoded:
        """Begin again after a break, remembering the level before it."""
        level = self._level()
        if level is not None:
            self._before = level
        self._recent = np.empty(0)
        return self._decoder.reset(midway=midway)

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode, and add what is noticed."""
        decoded = self._decoder.feed(*chunks)
        torque = decoded.columns["torque"]
        places = np.flatnonzero(np.isfinite(torque))
        known = torque[places]
        if not len(known):
            return decoded
        events = self._after_break(known) + (self._steps(known) if self._fast else [])
        self._peak = max(self._peak, float(np.abs(known).max()))
        self._recent = np.concatenate((self._recent, known[-KEPT:]))[-KEPT:]
        if not events:
            return decoded
        placed = [replace(event, index=int(places[event.index])) for event in events]
        together = sorted((*decoded.events, *placed), key=lambda event: event.index)
        return Decoded(decoded.columns, decoded.chunk_of, decoded.counter, tuple(together))

    def _threshold(self) -> float:
        return max(self._least, self._loaded if self._loaded is not None else 4 * LOADED * self._peak)

    def _level(self) -> float | None:
        """Give the steady load of the last samples; None if there is none."""
        recent = self._recent[-SAMPLES:]
        level = float(np.median(recent)) if len(recent) == SAMPLES else 0.0
        steady = abs(level) > self._threshold() and np.ptp(recent) <= STEADY * abs(level)
        return level if steady else None

    def _after_break(self, known: Floats) -> list[Event]:
        before = self._before
        if before is None:
            return []
        now = np.concatenate((self._recent, known[:SAMPLES]))[:SAMPLES]
        if len(now) < SAMPLES:
            return []
        self._before = None
        if float(np.abs(now).max()) > NOTHING * abs(before):
            return []
        told = (
            f"before the break it read {before:g}, now {now[-1]:g}: unless you eased the load off, it zeroed "
            f"itself; {_ADVICE}"
        )
        return [Event(EventKind.AUTO_ZERO, 0, 0, told)]

    def _steps(self, known: Floats) -> list[Event]:
        """Find steady loads that vanish between two samples and stay away; judged when enough has followed."""
        joined = np.concatenate((self._recent, known))
        offset = len(self._recent)
        size = np.abs(joined)
        places = np.flatnonzero((size[:-1] > self._threshold()) & (size[1:] < NOTHING * size[:-1])) + 1
        events = []
        for place in places.tolist():
            ahead, behind = joined[place : place + SAMPLES], joined[max(0, place - SAMPLES) : place]
            judged = place + SAMPLES <= offset  # in an earlier drain
            if judged or len(ahead) < SAMPLES or len(behind) < SAMPLES:
                continue
            load = float(joined[place - 1])
            if np.abs(ahead).max() < NOTHING * abs(load) and np.ptp(behind) <= STEADY * abs(load):
                told = f"a load of {load:g} vanished between two samples: it zeroed itself, or slipped off; {_ADVICE}"
                events.append(Event(EventKind.AUTO_ZERO, max(0, place - offset), 0, told))
        return events
