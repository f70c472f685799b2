"""The transducer: from the torque in its shaft to the numbers it delivers.

Conventions:
- In: the torque on a uniform fine grid. Out: samples at the transducer's own rate and clock, in N·m, NaN where it gives
  no value, with a status word per sample. Every imperfection is a parameter, so the truth stays known.
- Order: hysteresis, filter and delay, drift and zero, gain, noise, clipping, faults, resolution.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntFlag
from math import pi, sqrt
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# Play operators that share the hysteresis: three give a smooth loop.
PLAYS = (0.25, 0.5, 1.0)


class Status(IntFlag):
    """Status bits of a sample."""

    OK = 0
    OVERLOAD = 1
    ERROR = 2
    BATTERY = 4
    SIMULATED = 128


@dataclass(frozen=True, slots=True)
class SensorFault:
    """One thing that goes wrong at a time."""

    # ``gap`` (samples lost), ``spike``, ``stuck`` (value repeats), ``re-zero`` (the transducer zeroes itself at what it
    # feels now), ``step`` (a bad cable shifts the zero), ``error`` (marked invalid), ``battery`` (marked low)
    kind: Literal["gap", "spike", "stuck", "re-zero", "step", "error", "battery"]
    # at_s, duration_s: when, and how long for those that last
    at_s: float
    duration_s: float = 0.0
    size_nm: float = 0.0  # of spikes and steps


@dataclass(frozen=True, slots=True)
class SensorModel:
    """A torque transducer with its converter."""

    # rate_hz, clock_ppm, jitter_s: nominal rate, error of its clock, standard deviation of the sampling instant
    rate_hz: float = 1000.0
    clock_ppm: float = 0.0
    jitter_s: float = 0.0
    # capacity_nm, resolution_nm: full scale and step of the delivered number
    capacity_nm: float = 200.0
    resolution_nm: float = 0.01
    # gain, zero_nm, drift_nm_min: reading per true torque, zero offset at the start and its drift per minute
    gain: float = 1.0
    zero_nm: float = 0.0
    drift_nm_min: float = 0.0
    noise_nm: float = 0.03  # standard deviation
    hysteresis: float = 0.0  # width of the loop as a share of full scale
    # bandwidth_hz, order: cascade of equal first-order low-pass filters with this -3 dB frequency; None: no filter
    bandwidth_hz: float | None = 250.0
    order: int = 2
    average_s: float = 0.0  # moving average of a slow converter
    delay_s: float = 0.0  # pure delay
    # what it delivers beyond capacity: the ``limit``, a ``mark`` (no value) or ``zeros``
    overload: Literal["limit", "mark", "zeros"] = "limit"
    signless: bool = False  # whether the sign is excluded
    # accuracy_percent, gain_known: what its papers say: 95 % accuracy as a share of the reading, and whether its gain
    # stands on its certificate
    accuracy_percent: float = 0.5
    gain_known: bool = False
    faults: tuple[SensorFault, ...] = ()  # in order of time

    @property
    def group_delay_s(self) -> float:
        """How late a slow ramp appears: filter, averaging and pure delay."""
        filtered = 0.0
        if self.bandwidth_hz is not None:
            filtered = self.order * sqrt(2 ** (1 / self.order) - 1) / (2 * pi * self.bandwidth_hz)
        return filtered + self.average_s / 2 + self.delay_s


@dataclass(frozen=True, slots=True)
class Delivered:
    """What a transducer delivered."""

    # time_s, torque_nm: shape (n,); True instants of the samples and the values; NaN: no value
    time_s: Floats
    torque_nm: Floats
    # counter, status: shape (n,); running number (a lost sample leaves a gap) and ``Status`` bits
    counter: NDArray[np.int64]
    status: NDArray[np.int64]
    zero_nm: Floats  # shape (n,); the reading an unloaded transducer would give: the truth about its zero
    over: NDArray[np.bool_]  # shape (n,); whether the torque was beyond the range, however the transducer shows it

    def between(self, start_s: float, end_s: float) -> Delivered:
        """Give the part that a recording from ``start_s`` to ``end_s`` holds."""
        part = slice(*np.searchsorted(self.time_s, (start_s, end_s)).tolist())
        return self.only(part)

    def only(self, part: slice | NDArray[np.bool_]) -> Delivered:
        """Give a part of the samples."""
        return Delivered(*(getattr(self, name)[part] for name in Delivered.__dataclass_fields__))


def deliver(sensor: SensorModel, torque_nm: Floats, step_s: float, rng: np.random.Generator) -> Delivered:
    """Give what the sensor delivers for a torque on a grid of ``step_s``, shape (m,).

    Returns:
        Samples from the grid's start to its end.
    """
    felt = low_pass(sensor, play(torque_nm, sensor.hysteresis * sensor.capacity_nm), step_s)
    period = 1.0 / (sensor.rate_hz * (1 + sensor.clock_ppm * 1e-6))
    end_s = (torque_nm.size - 1) * step_s
    counter = np.arange(int(end_s / period), dtype=np.int64)
    time = np.asarray((counter + rng.uniform(0, 1)) * period)
    if sensor.jitter_s:
        time = np.sort(np.clip(time + sensor.jitter_s * rng.standard_normal(time.size), 0, end_s))
    zero = np.asarray(sensor.zero_nm + sensor.drift_nm_min * time / 60)
    reading = np.interp(time - sensor.delay_s, np.arange(torque_nm.size) * step_s, felt) * sensor.gain
    reading = np.asarray(reading + sensor.noise_nm * rng.standard_normal(time.size))
    zero, reading = _shift(sensor, time, zero, reading)
    over = np.abs(reading + zero) > sensor.capacity_nm
    reading, status = _limit(sensor, reading + zero, over)
    reading, status, keep = _fail(sensor, time, reading, status)
    if sensor.resolution_nm:
        reading = np.asarray(np.round(reading / sensor.resolution_nm) * sensor.resolution_nm + 0.0)  # no -0
    if sensor.signless:
        reading = np.abs(reading)
    return Delivered(time, reading, counter, status, zero, over).only(keep)


def low_pass(sensor: SensorModel, torque_nm: Floats, step_s: float) -> Floats:
    """Apply filter and averaging by their exact frequency responses (the end is held, so nothing wraps round)."""
    if sensor.bandwidth_hz is None and not sensor.average_s:
        return torque_nm
    settle = (8 * sensor.order / (2 * np.pi * sensor.bandwidth_hz) if sensor.bandwidth_hz else 0.0) + sensor.average_s
    pad = int(settle / step_s) + 8
    size = 1 << (torque_nm.size + 2 * pad - 1).bit_length()
    first = torque_nm[0]
    extended = np.zeros(size)
    extended[: torque_nm.size] = torque_nm - first
    extended[torque_nm.size : torque_nm.size + pad] = torque_nm[-1] - first
    frequency = np.fft.rfftfreq(size, step_s)
    response = np.ones(frequency.size, dtype=complex)
    if sensor.bandwidth_hz:
        # Each stage's corner lies higher, so that the cascade is 3 dB down at the stated bandwidth.
        corner = sensor.bandwidth_hz / np.sqrt(2 ** (1 / sensor.order) - 1)
        response /= (1 + 1j * frequency / corner) ** sensor.order
    if sensor.average_s:
        response *= np.sinc(frequency * sensor.average_s) * np.exp(-1j * np.pi * frequency * sensor.average_s)
    return np.asarray(np.fft.irfft(np.fft.rfft(extended) * response, size)[: torque_nm.size] + first)


def play(torque_nm: Floats, width_nm: float) -> Floats:
    """Apply a hysteresis loop of this whole width (mean of play operators, thinned to what moves them)."""
    if width_nm <= 0:
        return torque_nm
    total = np.zeros(torque_nm.size)
    for share in PLAYS:
        half = width_nm * share / 2
        out, last = [], 0.0
        for value in torque_nm.tolist():
            if value - last > half:
                last = value - half
            elif last - value > half:
                last = value + half
            out.append(last)
        total += out
    return total / len(PLAYS)


def _shift(sensor: SensorModel, time: Floats, zero: Floats, reading: Floats) -> tuple[Floats, Floats]:
    """Move the zero where the transducer zeroes itself or its cable fails."""
    for fault in sensor.faults:
        later = time >= fault.at_s
        if fault.kind == "step":
            zero = np.where(later, zero + fault.size_nm, zero)
        elif fault.kind == "re-zero" and later.any():
            now = int(np.argmax(later))
            zero = np.where(later, zero - (reading[now] + zero[now]), zero)
    return zero, reading


def _limit(sensor: SensorModel, reading: Floats, over: NDArray[np.bool_]) -> tuple[Floats, NDArray[np.int64]]:
    status = np.where(over, int(Status.OVERLOAD), 0).astype(np.int64)
    if sensor.overload == "mark":
        return np.where(over, np.nan, reading), status
    if sensor.overload == "zeros":
        return np.where(over, 0.0, reading), np.zeros_like(status)
    return np.clip(reading, -sensor.capacity_nm, sensor.capacity_nm), status


def _fail(
    sensor: SensorModel, time: Floats, reading: Floats, status: NDArray[np.int64]
) -> tuple[Floats, NDArray[np.int64], NDArray[np.bool_]]:
    """Lose, repeat, spoil samples as the faults say."""
    keep = np.ones(time.size, dtype=bool)
    for fault in sensor.faults:
        during = (time >= fault.at_s) & (time < fault.at_s + fault.duration_s)
        now = int(np.searchsorted(time, fault.at_s))
        if fault.kind == "gap":
            keep &= ~during
        elif fault.kind == "stuck" and during.any():
            reading = np.where(during, reading[now], reading)
        elif fault.kind == "error":
            reading = np.where(during, np.nan, reading)
            status = np.where(during, status | int(Status.ERROR), status)
        elif fault.kind == "battery":
            status = np.where(during, status | int(Status.BATTERY), status)
        elif fault.kind == "spike" and now < time.size:
            reading = reading.copy()
            reading[now] = np.clip(reading[now] + fault.size_nm, -sensor.capacity_nm, sensor.capacity_nm)
    return reading, status, keep
