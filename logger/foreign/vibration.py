"""Reading a sound (WAV) or a table of acceleration: what a microphone or an accelerometer kept of a drive.

Conventions:
- A sound's samples stay as they lie in the file; ``unit`` and ``zero`` make them shares of full scale, -1 to 1.
- A table has a time with a unit and one to three columns whose headings name a unit of acceleration; times are put on
  an even grid, and what lay in a gap is told.
"""

from __future__ import annotations

import struct
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Literal

import numpy as np

from logger.edges.small_file import open_regular
from logger.errors import FileError
from logger.foreign.cells import decimal_mark, numbers
from logger.foreign.files import grid_of
from logger.foreign.headings import SECONDS, heading
from logger.foreign.times import clock_seconds, implied_unit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from logger.foreign.cells import Cell
    from logger.foreign.grid import Grid
    from logger.samples import Floats

SOUNDS: Final = (".wav", ".wave")
"""Endings of what is read as a sound."""

_RATES: Final = (20.0, 1e6)
_MOST_BYTES: Final = 1 << 28  # of a table
_GAP: Final = 4.0
"""Readings further apart than this many usual steps have a gap between them."""
_SAME: Final = 0.01
"""Readings closer together than this many usual steps are one."""

_JITTER: Final = 0.05
"""Times that stay so close to even ones, in steps, are taken as even."""

_MOST_M_S2: Final = 1e7
_MOST_TIME_S: Final = 1e10
_MOST_GAPS: Final = 20.0
"""Times that reach over so many times what the readings fill are faulty."""

_UNITS: Final = {
    **dict.fromkeys(("m/s²", "m/s^2", "m/s2", "m/s/s", "m·s⁻²", "ms^-2", "m s-2", "m/s**2"), 1.0),
    **dict.fromkeys(("mm/s²", "mm/s^2", "mm/s2"), 1e-3),
    **dict.fromkeys(("g", "gn", "g₀"), 9.80665),  # standard gravity, ISO 80000-3
    **dict.fromkeys(("mg",), 9.80665e-3),
}
_TOTALS: Final = ("abs", "total", "magnitude", "resultant", "norm", "sum")


@dataclass(frozen=True, slots=True)
class Vibration:
    """A sound or an acceleration."""

    kind: Literal["sound", "acceleration"]  # ``sound`` or ``acceleration``
    rate_hz: float
    # shape (n, channels); as kept; ``(samples - zero) * unit`` is in shares of full scale, or m/s²
    samples: NDArray[Any]
    zero: float = 0.0
    unit: float = 1.0
    # the lowest and highest sample that the file can hold, as kept; None where it has no such ends
    ends: tuple[float, float] | None = None
    gaps_s: tuple[tuple[float, float], ...] = ()  # (float, float); from where to where nothing was kept
    names: tuple[str, ...] = ()  # of the channels
    problems: tuple[str, ...] = ()  # for the user


def read_vibration(path: Path | str) -> Vibration:
    """Read a sound or a table of acceleration.

    Raises:
        FileError: It is neither, or cannot be read; the text says the fix.
    """
    try:
        with open_regular(path) as file:
            head = file.read(12)
            if head[:4] in (b"RIFF", b"RIFX", b"RF64"):
                return _sound(str(path))
            if str(path).lower().endswith(SOUNDS):
                raise FileError(f"{path}: is no WAV inside; save the recording as WAV (PCM)")
            if head[4:8] == b"ftyp" or head[:3] == b"ID3" or head[:4] in (b"OggS", b"fLaC", b"caff"):
                raise FileError(f"{path}: is a packed sound; save the recording as WAV (PCM)")
            data = head + file.read(_MOST_BYTES)
    except FileNotFoundError:
        raise FileError(f"{path}: there is no such file") from None
    if len(data) > _MOST_BYTES:
        raise FileError(f"{path}: is larger than 256 MB; export a shorter stretch")
    return _table(grid_of(data, str(path)), str(path))


def _sound(file: str) -> Vibration:
    from scipy.io import wavfile  # here, so that --help need not wait for it

    # NameError: what the library ends with where a chunk of sound never comes.
    broken = (ValueError, OSError, struct.error, ArithmeticError, MemoryError, TypeError, LookupError, NameError)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            try:
                rate, samples = wavfile.read(file, mmap=True)
            except ValueError:  # 24 bits, or cut off: only read whole
                rate, samples = wavfile.read(file)
        except broken as error:
            raise FileError(f"{file}: cannot be read as WAV: {error}; save the recording as WAV (PCM)") from error
    if not _RATES[0] <= rate <= _RATES[1] or samples.size == 0:
        raise FileError(f"{file}: holds no sound: {len(samples)} samples at {rate} Hz")
    samples = samples.reshape(len(samples), -1)
    zero, unit, ends = 0.0, 1.0, (-1.0, 1.0)
    if samples.dtype.kind in "iu":
        of = np.iinfo(samples.dtype)
        zero = 128.0 if samples.dtype == np.uint8 else 0.0
        unit = 1.0 / (128.0 if samples.dtype == np.uint8 else -float(of.min))
        ends = (float(of.min), float(of.max))
        if samples.dtype == np.int32 and not (samples[: 1 << 16] & 0xFF).any():  # 24 bits, in the upper three bytes
            ends = (ends[0], float(of.max - 0xFF))
    names = tuple(f"channel {at + 1}" for at in range(samples.shape[1]))
    return Vibration("sound", float(rate), samples, zero, unit, ends, (), names)


def _table(grid: Grid, file: str) -> Vibration:
    heads = [heading(name, unit) for name, unit in zip(grid.names, grid.units or [""] * len(grid.names), strict=True)]
    units = [head.unit.lower().replace(" ", "") for head in heads]
    places = [at for at, unit in enumerate(units) if unit in _UNITS]
    if len(places) > 1:
        places = [at for at in places if not any(word in heads[at].name.lower() for word in _TOTALS)] or places[:1]
    times = [at for at, head in enumerate(heads) if head.kind == "time"]
    if not places or not times:
        what = "acceleration: a heading with its unit, like 'x [m/s²]' or 'x [g]'" if not places else "time, in seconds"
        raise FileError(f"{file}: has no column of {what}; a sound is read from WAV")
    if len(places) > 3:
        raise FileError(f"{file}: has {len(places)} columns of acceleration; leave at most three, x, y and z")
    raw = dict(zip((times[0], *places), grid.load([times[0], *places]), strict=True))
    mark = decimal_mark([c for c in raw.values() if not isinstance(c, np.ndarray)]) or "point"
    notes = list(grid.problems)
    time_s = _times(raw[times[0]], heads[times[0]].unit, mark, file, notes)
    values = np.column_stack([numbers(raw[at], mark).values * _UNITS[units[at]] for at in places])
    good = (np.abs(time_s) < _MOST_TIME_S) & (np.abs(values) < _MOST_M_S2).all(axis=1)
    if not good.all():
        notes.append(f"{int((~good).sum())} rows without a time or an acceleration are passed over")
    return _even(file, time_s[good], values[good], tuple(heads[at].name for at in places), notes)


def _times(
    column: Sequence[Cell] | NDArray[Any], unit: str, mark: Literal["point", "comma"], file: str, notes: list[str]
) -> Floats:
    found = numbers(column, mark)
    if found.bad.all():
        return clock_seconds(column)[0]
    why = ""
    if unit.lower() not in SECONDS:
        unit, why = implied_unit(found.values)
    if unit.lower() not in SECONDS:
        raise FileError(f"{file}: its times: {why}; name their unit in the heading, like 'time [s]'")
    if why:
        notes.append(f"its times: {why}")
    return np.asarray((found.values - found.values[np.isfinite(found.values)][:1].sum()) * SECONDS[unit.lower()])


def _even(file: str, time_s: Floats, values: Floats, names: tuple[str, ...], notes: list[str]) -> Vibration:
    """Put the readings on an even grid at their usual rate (straight lines would lose upper frequencies)."""
    from scipy.interpolate import CubicSpline

    order = np.argsort(time_s, kind="stable")
    time_s, values = time_s[order], values[order]
    steps = np.diff(time_s)
    least = _SAME * float(np.median(steps[steps > 0])) if (steps > 0).any() else 0.0
    once = np.concatenate([[True], steps > least]) if len(time_s) else np.zeros(0, bool)
    time_s, values = time_s[once], values[once]
    if len(time_s) < 2:
        raise FileError(f"{file}: has {len(time_s)} readings of acceleration; export the recording anew")
    steps = np.diff(time_s)
    step = float(np.mean(steps[steps <= _GAP * np.median(steps)]))
    if not 1 / _RATES[1] <= step <= 1 / _RATES[0]:
        raise FileError(f"{file}: has a reading every {step:.3g} s: too few for a band of frequencies")
    wide = np.flatnonzero(steps > _GAP * step)
    gaps = tuple((float(time_s[at] - time_s[0]), float(time_s[at + 1] - time_s[0])) for at in wide)
    if gaps:
        notes.append(f"gaps of {sum(b - a for a, b in gaps):.1f} s in all have no level")
    if time_s[-1] - time_s[0] > _MOST_GAPS * step * len(time_s):
        raise FileError(
            f"{file}: its times reach over {time_s[-1] - time_s[0]:.3g} s but hold {len(time_s) * step:.3g} s; export "
            "one stretch"
        )
    even = np.arange(time_s[0], time_s[-1], step)
    kept = values
    if gaps or np.abs(time_s[0] + step * np.arange(len(time_s)) - time_s).max() > _JITTER * step:
        kept = CubicSpline(time_s, values)(even)
        for start, end in gaps:  # where nothing is known a cubic would swing out
            within = (even - time_s[0] > start) & (even - time_s[0] < end)
            kept[within] = values[np.searchsorted(time_s, time_s[0] + start)]
    return Vibration("acceleration", 1 / step, kept, gaps_s=gaps, names=names, problems=tuple(notes))
