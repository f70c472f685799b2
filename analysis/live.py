"""A stream read as it grows: the same code that reads a file, fed in blocks of any size.

Offered: ``LiveReader``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from analysis.pulls import Read, Window, read_pull
from analysis.results import Pull, TraceReading
from analysis.segments import BLOCK_S, Segmenter, Span
from analysis.traces import Floats, Intake, Samples, Sensor

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

FASTEST_S = 1e-6
"""Sample intervals below this (s) come from broken times, not from a transducer."""

RATE_SAMPLES = 64
"""Samples from which the rate is taken that the blocks are cut by."""

REST_S = 4.0
"""How much of the rest before a load is kept for the hand-off level (s)."""


class LiveReader:
    """Reads pulls from a stream; every pull stated is final.

    Parameters
    ----------
    sensor : Sensor
    """

    def __init__(self, sensor: Sensor | None = None) -> None:
        self._sensor = sensor or Sensor()
        self._intake = Intake(self._sensor)
        self._t = self._y = np.empty(0)
        self._a: Floats | None = None
        self._offset = 0  # stream number of the first sample kept
        self._cut = 0  # samples already in blocks
        self._block = 0
        self._resolution_nm = 0.0
        self._segments: Segmenter | None = None
        self._pulls: list[Pull] = []
        self._before: Read | None = None
        self._rested = 0  # stream number of the sample where the last pull ended

    def feed(self, time_s: ArrayLike, torque_nm: ArrayLike, angle_deg: ArrayLike | None = None) -> tuple[Pull, ...]:
        """Take the next block of samples; give the pulls that it completes."""
        self._keep(self._intake.feed(time_s, torque_nm, angle_deg))
        return self._read(last=False)

    def finish(self) -> tuple[Pull, ...]:
        """End the stream; give the pulls that its end completes."""
        self._keep(self._intake.finish())
        return self._read(last=True)

    def reading(self) -> TraceReading:
        """Sum up."""
        return TraceReading(
            rate_hz=self._rate_hz,
            zero_nm=0.0,
            noise_nm=0.0,
            pulls=tuple(self._pulls),
            problems=tuple(self._intake.counts.problems()),
        )

    def _keep(self, new: Samples) -> None:
        if not len(self._t):
            self._t, self._y, self._a = new.time_s, new.torque_nm, new.angle_deg
            return
        self._t = np.concatenate([self._t, new.time_s])
        self._y = np.concatenate([self._y, new.torque_nm])
        self._a = None if self._a is None or new.angle_deg is None else np.concatenate([self._a, new.angle_deg])

    def _read(self, *, last: bool) -> tuple[Pull, ...]:
        if self._segments is None:
            if len(self._t) < (2 if last else RATE_SAMPLES):
                self._rate_hz = float("nan")
                return ()
            step = np.diff(self._t[:RATE_SAMPLES])
            self._rate_hz = 1 / max(float(np.median(step)), FASTEST_S)
            self._block = max(1, round(BLOCK_S * self._rate_hz))
            levels = np.unique(self._y[:RATE_SAMPLES])
            seen = float(np.diff(levels).min()) if len(levels) > 1 else 0.0
            self._resolution_nm = self._sensor.resolution_nm or seen
            self._segments = Segmenter(self._sensor, self._resolution_nm)
        begin = self._cut - self._offset
        whole = (len(self._t) - begin) // self._block
        stop = begin + whole * self._block
        y = self._y[begin:stop].reshape(whole, self._block)
        t = self._t[begin:stop].reshape(whole, self._block)
        self._cut += whole * self._block
        spans = self._segments.push(t[:, -1], np.median(y, axis=1))
        if last:
            spans += self._segments.finish()
        new = []
        for span in spans:
            read = read_pull(self._window(span), self._sensor)
            if read is not None:
                if read.pull.breakaway or read.pull.rotating:
                    self._before = read
                    self._rested = span.end * self._block
                new.append(read.pull)
        self._pulls += new
        return tuple(new)

    def _window(self, span: Span) -> Window:
        start, end = span.start * self._block - self._offset, span.end * self._block - self._offset
        low = max(int(np.searchsorted(self._t, self._t[start] - REST_S)), self._rested - self._offset)
        high = min(end + 2 * self._block, len(self._t))
        a = None if self._a is None else self._a[low:high]
        samples = Samples(self._t[low:high], self._y[low:high], a)
        return Window(
            samples,
            start - low,
            min(end, len(self._t)) - low,
            span.level_nm,
            span.from_start,
            span.to_end,
            self._resolution_nm,
            self._before,
        )
