"""Sounds and accelerations of drives made from known truth: pink noise with bursts of a known level."""

from __future__ import annotations

import numpy as np
from scipy.io import wavfile

from logger.header import Sidecar
from logger.recordings.sidecar import change_sidecar


def pink(n: int, seed: int) -> np.ndarray:
    """Give noise whose power falls with 1/f, of mean square 1."""
    spectrum = np.fft.rfft(np.random.default_rng(seed).standard_normal(n))
    spectrum[1:] /= np.sqrt(np.arange(1, len(spectrum)))
    spectrum[0] = 0
    noise = np.fft.irfft(spectrum, n)
    return noise / noise.std()


def drive(
    rate: int, length_s: float, bursts: tuple[tuple[float, float], ...], level: float, *, quiet: float = 0.003, seed=1
) -> np.ndarray:
    """Give pink noise of rms ``quiet`` with bursts of a sine of 200 Hz and amplitude ``level`` from, to (s)."""
    t = np.arange(round(rate * length_s)) / rate
    on = np.zeros(len(t))
    for start, end in bursts:
        on[(t >= start) & (t < end)] = level
    return quiet * pink(len(t), seed) + on * np.sin(2 * np.pi * 200 * t)


def write_wav(path, signal, rate: int, *, simulated: bool = True) -> str:
    """Write 16 bits, full scale where ``signal`` reaches 1, with the sidecar that marks it as simulated."""
    wavfile.write(path, rate, np.clip(np.round(signal * 32768), -32768, 32767).astype(np.int16))
    if simulated:
        change_sidecar(path, lambda _none: Sidecar(simulated=True))
    return str(path)
