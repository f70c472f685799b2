"""Band level against time, and the stretches in which it stands out of the recording's own quiet background.

The signal is filtered to a band (Butterworth, fourth order) and its mean square taken over blocks of 125 ms, the time
of the weighting "fast" of IEC 61672-1 (from memory). A sound's 0 dB is the mean square of a full-scale sine (AES17,
from memory); an acceleration's is 1 µm/s² (ISO 1683, from memory), the sum over its axes.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

import numpy as np

from logger.errors import InputError

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.samples import Floats

    Bools = NDArray[np.bool_]

BANDS = {"sound": (50.0, 800.0), "acceleration": (20.0, 800.0)}
"""Hz (common practice, no source): shudder and groan of a pack and what they shake lie there; below it are wind and the
car's own hop on its springs and tyres, above it tyre squeal and much of the gears' whine."""

BLOCK_S = 0.125
LEAST_S = 10.0
HIGHEST = 0.45
"""Of the rate: above it the recorder's own filter begins."""

RISE_DB = 6.0
"""An event stands out by so much at least: twice the amplitude (common practice, no source)."""

DEVIATIONS = 4.0
"""... and by so many standard deviations of the quiet blocks. With two blocks in a row, stationary noise has less than
one false event an hour."""

QUIET = (0.1, 0.3)
"""The background's mean and spread are those of a normal distribution through these shares of the levels, so that
chatter for up to half of the time hardly moves them."""

_NORMAL = (-1.2815515655, -0.5244005127)  # its quantiles at these shares

REFERENCE = {"sound": 0.5, "acceleration": 1e-12}
"""Mean square of 0 dB: of a sine that reaches full scale; (1 µm/s²)²."""

_CHUNK = 1 << 19


@dataclass(frozen=True, slots=True)
class Levels:
    """Band level against time."""

    kind: Literal["sound", "acceleration"]  # ``sound`` or ``acceleration``
    band_hz: tuple[float, float]
    time_s: Floats  # shape (m,); middles of the blocks
    block_s: float  # their length
    power: Floats  # shape (m,); mean square in the band over that of 0 dB; NaN where nothing was kept
    clipped: Bools  # shape (m,); blocks with samples that stand at an end of the scale

    @property
    def db(self) -> Floats:
        """Level in dB, shape (m,); NaN where nothing was kept."""
        return np.asarray(10 * np.log10(self.power))

    @property
    def mean_db(self) -> float:
        """Level of the mean square over the whole recording (equivalent level, ISO 1996-1, from memory)."""
        return float(10 * np.log10(np.nanmean(self.power)))

    @property
    def heard_s(self) -> float:
        """How long something was kept."""
        return float(np.isfinite(self.power).sum()) * self.block_s

    @property
    def clipped_s(self) -> float:
        """How long the blocks with clipped samples are."""
        return float(self.clipped.sum()) * self.block_s


@dataclass(frozen=True, slots=True)
class Event:
    """A stretch that stands out, and the level of its mean square."""

    start_s: float
    end_s: float
    level_db: float
    clipped: bool


@dataclass(frozen=True, slots=True)
class Found:
    """The events of a recording and what they stand out of."""

    # background_db, spread_db: of the quiet blocks: mean and standard deviation
    background_db: float
    spread_db: float
    threshold_db: float  # from which an event begins
    events: tuple[Event, ...]
    # total_s, share: their duration, and over how long something was kept
    total_s: float
    share: float


def band_for(kind: str, rate_hz: float, asked: tuple[float, float] | None = None) -> tuple[float, float]:
    """Give the band in Hz: what was asked, or the usual one as far as the rate carries it.

    Raises:
        InputError: The rate cannot carry it.
    """
    low, high = asked or BANDS[kind]
    most = HIGHEST * rate_hz
    if asked is None:
        high = min(high, most)
        if high < 1.2 * low:
            raise InputError(
                f"at {rate_hz:g} samples a second the usual frequency band from {low:g} Hz does not fit: choose one "
                f"below {most:g} Hz, or record faster"
            )
    if not (low > 0 and 1.2 * low <= high <= most):
        raise InputError(
            f"the frequency band {low:g} to {high:g} Hz does not fit: at {rate_hz:g} samples a second it must lie "
            f"between 0 and {most:g} Hz, its upper end a fifth above its lower end at least"
        )
    return low, high


def band_levels(
    kind: Literal["sound", "acceleration"],
    samples: NDArray[Any],
    rate_hz: float,
    band_hz: tuple[float, float],
    *,
    zero: float,
    unit: float,
    ends: tuple[float, float] | None = None,
    gaps_s: tuple[tuple[float, float], ...] = (),
) -> Levels:
    """Give the band level of a signal.

    Args:
        kind: A sound's channels are averaged, an acceleration's axes added, both as mean squares.
        samples: shape (n, channels); ``(samples - zero) * unit`` is in shares of full scale, or m/s².
        band_hz: See ``band_for``.
        ends: Lowest and highest sample that can be kept: one that stands there is clipped.
        gaps_s: (float, float); Where nothing was kept.

    Raises:
        InputError: Shorter than 10 s.
    """
    from scipy.signal import butter, sosfilt, sosfilt_zi

    block = max(1, round(BLOCK_S * rate_hz))
    count = len(samples) // block
    if count * block < LEAST_S * rate_hz:
        raise InputError(f"{len(samples) / rate_hz:.1f} s are too short: the background takes {LEAST_S:g} s at least")
    sos = butter(4, band_hz, "bandpass", fs=rate_hz, output="sos")
    state = sosfilt_zi(sos)[:, :, None] * ((samples[0].astype(float) - zero) * unit)
    power: Floats = np.empty(count)
    clipped = np.zeros(count, bool)
    step = max(1, _CHUNK // (block * samples.shape[1]))
    for at in range(0, count, step):
        upto = min(at + step, count)
        kept = samples[at * block : upto * block]
        if ends is not None:
            beyond = (kept <= ends[0]) | (kept >= ends[1])
            clipped[at:upto] = beyond.reshape(upto - at, -1).any(axis=1)
        y, state = sosfilt(sos, (kept.astype(float) - zero) * unit, axis=0, zi=state)
        squares = np.square(y).reshape(upto - at, block, -1).mean(axis=1)
        power[at:upto] = squares.mean(axis=1) if kind == "sound" else squares.sum(axis=1)
    # Where a microphone or a noise gate kept nothing at all there is no level: the filter only runs out.
    power[power < 1e-14 * REFERENCE[kind]] = np.nan
    time_s = np.asarray((np.arange(count) + 0.5) * block / rate_hz, np.float64)
    for start, end in gaps_s:
        half = block / rate_hz / 2
        power[(time_s + half > start) & (time_s - half < end)] = np.nan
    return Levels(kind, band_hz, time_s, block / rate_hz, power / REFERENCE[kind], clipped)


def flat_tops(samples: NDArray[Any]) -> bool:
    """Tell whether an acceleration was cut: an end of its range stands three times in a row, at three places or more.

    Args:
        samples: shape (n, axes)
    """
    for axis in samples.T:
        for end in (axis.min(), axis.max()):
            at = axis == end
            runs = at[2:] & at[1:-1] & at[:-2]
            if int(runs[:1].sum() + (runs[1:] & ~runs[:-1]).sum()) >= 3:
                return True
    return False


def find_events(levels: Levels) -> Found:
    """Find the stretches that stand out of the recording's own quiet background.

    Raises:
        InputError: Less than 10 s were kept.
    """
    db = levels.db
    there = np.isfinite(db)
    if levels.heard_s < LEAST_S * 0.99:
        raise InputError(f"{levels.heard_s:.1f} s with a level are too short: the background takes {LEAST_S:g} s")
    low, high = np.quantile(db[there], QUIET)
    spread = float(high - low) / (_NORMAL[1] - _NORMAL[0])
    background = float(high) - _NORMAL[1] * spread
    rise = max(RISE_DB, DEVIATIONS * spread)
    events = []
    for start, end in _stretches(db, background + rise, background + rise / 2):
        level = float(10 * np.log10(np.mean(levels.power[start:end])))
        half = levels.block_s / 2
        cut = bool(levels.clipped[start:end].any())
        events.append(Event(float(levels.time_s[start]) - half, float(levels.time_s[end - 1]) + half, level, cut))
    total = sum(event.end_s - event.start_s for event in events)
    return Found(background, spread, background + rise, tuple(events), total, total / levels.heard_s)


def _stretches(db: Floats, on_db: float, off_db: float) -> list[tuple[int, int]]:
    """Give the first block of each event and the one behind its last.

    It begins with two blocks above ``on_db``, and ends with two below ``off_db``, where nothing was kept, or with the
    recording.
    """
    level = np.append(np.where(np.isfinite(db), db, -np.inf), -np.inf)
    loud, low = level > on_db, level < off_db
    ends = np.append(np.flatnonzero((low[:-1] & low[1:]) | np.isneginf(level[:-1])), len(db))
    found: dict[int, int] = {}  # the first beginning before each end
    for start in np.flatnonzero(loud[:-1] & loud[1:]).tolist():
        found.setdefault(int(ends[np.searchsorted(ends, start)]), start)
    return [(start, end) for end, start in found.items()]
