"""The level just before a pull: hands off, lever fitted. All torques of the pull count from it.

The foot of a slow ramp is easily taken for the level, a bump may have come a moment before, and the lever may have
been moved. So the trace is walked back from the ramp, and every stretch that keeps still *beside that ramp* is a
candidate: what is a tenth as steep as the ramp is not the ramp. The latest candidate counts, unless it was so short
that a hand may merely have hesitated there on its way up; then the one before counts, and the interval reaches both.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.loads import LANDS_SLOWEST_S, LEVER
from analysis.trace.smooth import block_means, last_where
from analysis.uncertainty.budget import NORMAL_95

if TYPE_CHECKING:
    from analysis.trace.traces import Bools, Floats

RAMP_FROM, RAMP_LOW = 0.45, (0.15, 0.3)
"""The ramp is certainly under way at the upper share of the pull's level: the rest lies before. A heavy lever, put on a
moment before, may take a worn pack's reading a third of the way up. Its steepness is taken from the lower shares on,
whichever part is steeper: a zero that wanders may have come up to the first."""

BLOCK_S = 0.05
"""Length of the blocks whose means are compared (s) ..."""

BLOCK_NOISE = 0.006
"""... or longer, so that their noise is below this share of the pull's level: a ramp must show through it ..."""

BLOCK_MOST_S = 0.25
"""... but no longer than this (s): four of them are about as long as a rest may be."""

STILL_S, STILL_BLOCKS = 0.25, 4
"""Shortest stretch that shows whether the lever is still (s): two periods of a hand's tremor (7-12 Hz); and the least
number of blocks in it."""

STILL_SHARE, STILL_NOISES = 0.002, 4.5
"""A stretch is still if its blocks keep within this share of the pull's level, or within this many deviations of their
noise (a range of five normal values is 2.3 on average) ..."""

FLAT, FLAT_MOST = 0.085, 0.03
"""... or if it is so much less steep than the ramp, and keeps within this share of the level: a zero that drifts, a
lever that swings, a hand that lies on it."""

HESITATES_S, HESITATES_READINGS = 0.5, 4
"""A stretch shorter than this (s), or of fewer readings, may be a hand that hesitates on its way up ..."""

APART = 0.01
"""... if it lies further above the stretch before than this share of the pull's level."""

JOINED = 0.005
"""Stretches that overlap within this share of the pull's level are one: a hand's tremor or a spike parts them."""

PAUSE_SHARE, PAUSE_S, PAUSE_QUICK = 0.10, 1.2, 0.6
"""So may a longer one, up to this time (s), that lies further up than this share and was come to as a hand comes up:
not with this share of the way within three blocks, as a lever that is put on."""

SWING_MOST, SWING_FLAT = 0.30, 0.25
"""A lever that was put on or moved may still swing when the pull begins: about a level, within the first share of the
pull's, and on the whole less steep than the second share of the ramp."""

LANDS, LANDS_BLOCKS, SWING_BLOCKS = 2.5, 5, 8
"""It came straight from where the trace lay still, within the number of blocks, with a step of more than
``PAUSE_SHARE`` one block of which is so many times as steep as the ramp; and it is seen to swing about a level after
the second number of blocks at most."""

HUM = 2.0
"""Readings that shake this many times more than white noise and than their short means do carry a hum."""

DRIFT_PARTS, DRIFT_R = 6, 0.95
"""A zero that drifts lies along a straight line through so many parts of the rest, with this correlation; by chance
that happens once in 270 (Student's t of four degrees of freedom)."""

LEVEL_S = 0.6
"""At most this much of the still stretch is averaged (s): the level just before the pull counts."""

WANDER_S, WANDER_MOST = 1.5, 0.08
"""Of a rest that was still for less than this time (s), what moved within it counts: it goes on moving until the ramp.
A change of more than this share of the pull's level is another lever or another load."""

FOOT_SHARE = 0.01
"""The pull begins where the torque last was this share of its level above the hand-off level (or within noise)."""


@dataclass(frozen=True, slots=True)
class Handoff:
    """Level before the pull (N·m), its standard uncertainty, and the sample at which the ramp leaves it.

    ``hum_nm`` is the deviation of the readings about a still level where it is far more than noise: a mains hum.
    ``drift_nm_s`` is the slope of a rest that went one way all the time. ``other_nm`` is a second level that may have
    been the one; the uncertainty reaches it. ``rested_s`` is how long the trace lay still there, ``hung_s`` the longest
    that it did since the load before; ``unrested``: nowhere before the ramp, so its foot has to do.
    """

    level_nm: float
    u_nm: float
    foot: int
    hum_nm: float = 0.0
    drift_nm_s: float = 0.0
    other_nm: float | None = None
    rested_s: float = 0.0
    hung_s: float = 0.0
    unrested: bool = False

    def gripped_again(self, before_nm: float) -> Handoff:
        """Give the level before the first grip instead, where the lever came to no rest between two; reach both."""
        return replace(self.reaching(before_nm), level_nm=before_nm, other_nm=self.level_nm, unrested=False)

    def reaching(self, other_nm: float) -> Handoff:
        """Give the same level, whose interval reaches another."""
        u_nm = float(np.hypot(self.u_nm, abs(self.level_nm - other_nm) / NORMAL_95))
        return replace(self, u_nm=u_nm, other_nm=other_nm)


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A still stretch: blocks [first, last), level at its end, and how much it moved there."""

    first: int
    last: int
    level: float
    unrest: float

    @property
    def blocks(self) -> int:
        return self.last - self.first


def find_handoff(
    time_s: Floats,
    torque_nm: Floats,
    level_nm: float,
    top_nm: float,
    noise_nm: float,
    reading_s: float = 0.0,
    earlier_nm: Floats | None = None,
) -> Handoff:
    """Find level and foot before a ramp; torque counts positive in the pull's direction.

    Args:
        time_s, torque_nm: shape (n,); From the rest before the pull to somewhere above ``RAMP_FROM`` of its level.
        level_nm, top_nm: Level at rest and the pull's level, roughly.
        noise_nm: Noise of one reading at rest.
        reading_s: Time between readings that differ, where a transducer gives each one several times over.
        earlier_nm: shape (m,); What came just before, within another load: a lever may have come to rest in it.
    """
    height = top_nm - level_nm
    stop = max(last_where(torque_nm < level_nm + RAMP_FROM * height), 0) + 1
    if stop < STILL_BLOCKS:  # straight out of another load
        return Handoff(level_nm, noise_nm + RAMP_FROM * abs(height) / np.sqrt(12), stop - 1)
    step = float(time_s[stop - 1] - time_s[0]) / (stop - 1)
    calm = (noise_nm / (BLOCK_NOISE * abs(height))) ** 2 * step
    width = max(1, min(round(min(max(BLOCK_S, calm), BLOCK_MOST_S) / step), stop // STILL_BLOCKS))
    x = torque_nm[:stop] if earlier_nm is None else np.concatenate([earlier_nm, torque_nm[:stop]])
    begin = len(x) % width  # blocks end where the ramp begins
    means = x[begin:].reshape(-1, width).mean(axis=1)
    own = max(0, -((begin - len(x) + stop) // width))  # first block of this window
    block_s = width * step
    found = _joined(_found(means, own, level_nm, height, noise_nm / np.sqrt(width), block_s), height)
    unrested = not found
    chosen, other = _choose(means, found or [_foot(means, own, level_nm)], height, block_s, max(reading_s, block_s))
    other_nm = None if other is None else other.level
    left = time_s[max(begin + (chosen.last - 1) * width - (len(x) - stop), 0) : stop]
    if other_nm is None and not unrested and np.diff(left).max(initial=0.0) < LANDS_SLOWEST_S:
        other_nm = _swing(means[chosen.last - 1 :], _ramp(means, level_nm, height), top_nm)
    apart = 0.0 if other_nm is None else abs(other_nm - chosen.level)
    first = max(chosen.first, chosen.last - max(STILL_BLOCKS, round(LEVEL_S / block_s)))
    part = x[begin + first * width : begin + chosen.last * width]
    wander = _wander(means, chosen, height, block_s)
    unrest = max(max(chosen.unrest, wander) / np.sqrt(12), noise_nm / np.sqrt(len(part)))
    u = float(np.hypot(unrest, apart / NORMAL_95))
    near = max(FOOT_SHARE * (top_nm - chosen.level), 3 * noise_nm)
    shake = float(part.std())
    return Handoff(
        chosen.level,
        u,
        max(last_where(torque_nm[:stop] < chosen.level + near), 0),
        shake if shake > HUM * max(noise_nm, chosen.unrest) else 0.0,
        _drift(means[chosen.first : chosen.last]) / block_s,
        other_nm,
        0.0 if unrested else chosen.blocks * block_s,
        max((stretch.blocks for stretch in found if stretch.first >= own), default=0) * block_s,
        unrested,
    )


def _found(means: Floats, own: int, level_nm: float, height: float, noise: float, block_s: float) -> list[_Stretch]:
    """Give the still stretches of the window, or else those before it from which the torque only rose: a lever's."""
    found = _stretches(means[own:], level_nm, height, noise, block_s)
    if found or not own:
        return [replace(s, first=s.first + own, last=s.last + own) for s in found]
    before = _stretches(means, level_nm, height, noise, block_s)
    top_nm = level_nm + height
    return [
        s
        for s in before
        if s.level < means[s.last - 1 :].min() + APART * height and level_nm - s.level < LEVER * (top_nm - s.level)
    ]


def _joined(found: list[_Stretch], height: float) -> list[_Stretch]:
    """Make one of stretches that overlap at one level: parts of one rest, or of one hesitation."""
    joined: list[_Stretch] = []
    for before in found:
        here = joined[-1] if joined else None
        if here and before.last >= here.first and abs(here.level - before.level) < JOINED * height:
            joined[-1] = replace(here, first=before.first)
        else:
            joined.append(before)
    return joined


def _foot(means: Floats, own: int, level_nm: float) -> _Stretch:
    """Give where a window in which nothing lay still comes nearest to its level: off by as much as it moves there."""
    at = own + int(np.argmin(np.abs(means[own:] - level_nm)))
    return _Stretch(at, at + 1, float(means[at]), float(np.ptp(means[at : at + STILL_BLOCKS])))


def _stretches(means: Floats, level_nm: float, height: float, noise: float, block_s: float) -> list[_Stretch]:
    """Give the still stretches, the latest first."""
    if len(means) < STILL_BLOCKS:
        return []
    still = min(max(STILL_BLOCKS, round(STILL_S / block_s)), len(means))
    windows = np.lib.stride_tricks.sliding_window_view(means, still)
    ranges = windows.max(axis=1) - windows.min(axis=1)
    along = np.arange(still) - (still - 1) / 2
    slopes = np.abs(windows @ along) / float(along @ along)  # per block
    ramp = _ramp(means, level_nm, height)
    limit = max(STILL_SHARE * height, STILL_NOISES * noise)
    quiet = (ranges <= limit) | ((slopes < FLAT * ramp) & (ranges < max(FLAT_MOST * height, STILL_NOISES * noise)))
    swings = (slopes < SWING_FLAT * ramp) & (ranges < SWING_MOST * height)
    for _, last in _runs(quiet):
        _mark_swings(quiet, swings, means[last + still - 2 :], last, ramp, level_nm + height, still)
    return [_stretch(means, a, b, still, block_s) for a, b in reversed(_runs(quiet))]


def _mark_swings(quiet: Bools, swings: Bools, means: Floats, last: int, ramp: float, top_nm: float, still: int) -> None:
    """Mark as quiet where a lever swings that came from the stretch whose last window ends before ``last``.

    Let go, it swings between where it was and twice as far as it then hangs, so to one side; a hand that rocks it goes
    both ways.

    Args:
        quiet, swings: shape (n,); Of each window; the former is marked.
        means: shape (m,); Blocks from the last of the stretch on.
    """
    far, rise = _jump(means, ramp, top_nm), top_nm - float(means[0])
    if not 0 < abs(far) < 2 * LEVER * rise:
        return
    back = np.flatnonzero((means[2:] - means[0]) * far <= 0)
    end = last + (int(back[0]) if len(back) else len(means))
    near = last + still
    for a, b in _runs(swings):
        if last < a <= near + SWING_BLOCKS and b <= end and not quiet[a:b].any():
            about = means[max(a - last - still + 2, 0) : b - last + 1]  # the blocks of these windows
            if abs(float(about.mean() - means[0])) < LEVER * rise:
                quiet[a:b] = True
                near = b + still


def _jump(means: Floats, ramp: float, top_nm: float) -> float:
    """Give how far the torque went straight from the first block, quicker than a hand; 0 where it did not."""
    away = means[:LANDS_BLOCKS] - means[0]
    far = float(away[np.argmax(np.abs(away))])
    clearly = abs(far) > PAUSE_SHARE * (top_nm - float(means[0]))
    return far if clearly and np.abs(np.diff(away)).max() > LANDS * ramp else 0.0


def _swing(means: Floats, ramp: float, top_nm: float) -> float | None:
    """Give what the torque jumped to where it did not stay for long enough to show a level: as far as that may lie."""
    far = _jump(means, ramp, top_nm)
    if len(means) < 4 or not far:
        return None
    swung = means[2:]
    off = 2 * float(swung.std()) / float(np.sqrt(len(swung)))
    return float(swung.mean() + np.sign(far) * off)


def _ramp(means: Floats, level_nm: float, height: float) -> float:
    """Give the steepness of the ramp, per block, of its steeper part."""
    return max(_steepness(means, level_nm, height, share) for share in RAMP_LOW)


def _steepness(means: Floats, level_nm: float, height: float, share: float) -> float:
    """Give the rise per block since the ramp last left this share of the pull's level."""
    low = last_where(means < level_nm + share * height)
    return (RAMP_FROM - share) * height / max(len(means) - (low + 1), 1)


def _runs(marked: Bools) -> list[tuple[int, int]]:
    """Give [first, last) of each run."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], marked, [False]]).astype(np.int8)))
    return [(int(a), int(b)) for a, b in edges.reshape(-1, 2)]


def _stretch(means: Floats, first: int, last: int, still: int, block_s: float) -> _Stretch:
    """Describe a run of still windows: what it came to at its end, before the ramp's soft foot."""
    end = last + still - 1
    foot = 2 if end - first > still + 1 else 0
    part = means[max(first, end - foot - max(still, round(LEVEL_S / block_s))) : end - foot]
    return _Stretch(first, end, float(part.mean()), float(np.ptp(part)))


def _choose(
    means: Floats, found: list[_Stretch], height: float, block_s: float, reading_s: float
) -> tuple[_Stretch, _Stretch | None]:
    """Give the stretch that shows the level, and one that may be it as well."""
    shortest = max(HESITATES_S, HESITATES_READINGS * reading_s)
    for at, here in enumerate(found[:-1]):
        before = found[at + 1]
        rise = here.level - before.level
        if here.blocks * block_s >= shortest and not _paused(means, before, here, rise, height, block_s):
            return here, None if at == 0 else _doubted(found[:at], here, height)
        if rise < APART * height:
            return here, before if rise < -APART * height else None
    return found[-1], _doubted(found[:-1], found[-1], height)


def _doubted(passed: list[_Stretch], chosen: _Stretch, height: float) -> _Stretch | None:
    """Give what was passed over if it lies so far off that it matters: the farthest."""
    far = [s for s in passed if abs(s.level - chosen.level) > APART * height]
    return max(far, key=lambda s: abs(s.level - chosen.level), default=None)


def _paused(means: Floats, before: _Stretch, here: _Stretch, rise: float, height: float, block_s: float) -> bool:
    """Whether a hand may have come up to here and hesitated: a lever that is put on lands at once."""
    if rise < PAUSE_SHARE * height or here.blocks * block_s > PAUSE_S:
        return False
    way = means[max(before.last - 1, 0) : here.first + 1]
    return len(way) > 1 and bool(PAUSE_QUICK * rise > np.sort(np.diff(way))[-3:].sum())


def _wander(means: Floats, chosen: _Stretch, height: float, block_s: float) -> float:
    """Give how far the level moved about a stretch that lay still for a moment only; 0 where that was a load."""
    back = chosen.last - max(1, round(WANDER_S / block_s))
    moved = float(np.ptp(means[max(back, 0) : chosen.last])) if chosen.first > back else 0.0
    return moved if moved < WANDER_MOST * height else 0.0


def _drift(means: Floats) -> float:
    """Give the slope per block where the rest goes one way all the time; 0 where it does not."""
    width = len(means) // DRIFT_PARTS
    if width < 2:
        return 0.0
    parts = block_means(means, width)[-DRIFT_PARTS:]
    parts = parts - parts.sum() / DRIFT_PARTS
    along = np.arange(DRIFT_PARTS) - (DRIFT_PARTS - 1) / 2
    common, lengths = float(along @ parts), float(along @ along)
    straight = common * common > DRIFT_R**2 * lengths * float(parts @ parts)
    return common / lengths / width if straight else 0.0
