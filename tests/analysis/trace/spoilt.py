"""Short traces to keep answers of: the stored recordings, as they are and changed in ways that happen to recordings.

``CHANGES`` are the ways; each takes times (s), torques (N·m), an angle (degrees) or None, and a number from 0 to 1 that
says how much. None of them draws at random.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import numpy as np

from analysis.trace.traces import Floats, Ints, Sensor
from tests.analysis import practice

REAL = practice.FOLDER.parent / "real"
Change = Callable[[Floats, Floats, float], tuple[Floats, Floats]]


@dataclass(frozen=True)
class Taken:
    """What is fed to the reading."""

    time_s: Floats
    torque_nm: Floats
    angle_deg: Floats | None
    sensor: Sensor


def names() -> list[str]:
    """Give the names of the stored recordings that take no more than a moment to read."""
    stored = [*practice.names(), *practice.names(practice.OTHER_PHYSICS)]
    return [*stored, *sorted(path.stem for path in (REAL / "traces").glob("*.csv"))]


@cache
def stored(name: str) -> Taken:
    """Give a recording as it is stored."""
    for folder in (practice.FOLDER, practice.OTHER_PHYSICS):
        if (folder / "truth" / f"{name}.json").exists():
            found = practice.load(name, folder)
            return Taken(found.time_s, found.torque_nm, found.angle_deg, found.sensor)
    return Taken(*_columns(REAL / "traces" / f"{name}.csv"), None, Sensor())


def _columns(path: Path) -> tuple[Floats, Floats]:
    time_s, torque_nm = np.genfromtxt(path, delimiter=",", skip_header=1, unpack=True)[:2]
    return time_s, torque_nm


def taken(name: str, change: str = "", much: float = 0.0) -> Taken:
    """Give a recording with one change made to it."""
    found = stored(name)
    if not change:
        return found
    if change in AROUND:
        return AROUND[change](found, much)
    if change in ONLY:
        which = ONLY[change](found.time_s, found.torque_nm, much)
        angle = None if found.angle_deg is None else found.angle_deg[which]
        return Taken(found.time_s[which], found.torque_nm[which], angle, found.sensor)
    time_s, torque_nm = CHANGES[change](found.time_s.copy(), found.torque_nm.copy(), much)
    return replace(found, time_s=time_s, torque_nm=torque_nm)


def _top(y: Floats) -> float:
    good = y[np.isfinite(y)]
    return float(np.quantile(np.abs(good - np.median(good)), 0.98)) if len(good) else 1.0


def _step(t: Floats) -> float:
    steps = np.diff(t)
    return float(np.median(steps[steps > 0]))


def _coarse(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    step = _top(y) * (0.002 + 0.06 * much)
    return t, np.round(np.round(y / step) * step, 9)


def _drifts(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t, y + (much - 0.5) * 0.6 * _top(y) * (t - t[0]) / (t[-1] - t[0])


def _hums(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t, y + 0.02 * _top(y) * much * np.sin(2 * np.pi * (t - t[0]) * 50.0)


def _chatters(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    top = _top(y)
    saw = ((t - t[0]) * (1.5 + 8 * much)) % 1.0 - 0.5
    return t, np.where(np.abs(y - np.median(y)) > 0.75 * top, y + 0.35 * top * saw * np.sign(y), y)


def _yanks(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    slow = np.sin(2 * np.pi * (t - t[0]) * (0.3 + 1.5 * much))
    return t, np.where(np.abs(y - np.median(y)) > 0.6 * _top(y), y * (1 + 0.12 * slow), y)


def _quick(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t[0] + (t - t[0]) / (1.3 + 6 * much), y


def _slow(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t[0] + (t - t[0]) * (1.2 + 3 * much), y


def _seconds(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    step = 1.0 if much < 0.5 else 0.1
    return np.floor(t / step) * step, y


def _set_back(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    at = int((0.2 + 0.6 * much) * len(t))
    t[at:] -= 1.5 + 20 * much
    return t, y


def _late(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    step = _step(t)
    for at in range(20, len(t) - 20, max(25, len(t) // 9)):
        few = 2 + int(14 * much)
        t[at : at + few] = t[at + few - 1] + step * 0.01 * np.arange(few)
    return t, y


def _stuck(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    for i in range(3):
        from_s = t[0] + (t[-1] - t[0]) * ((i * 0.37 + much) % 1.0)
        held = np.flatnonzero((t >= from_s) & (t < from_s + 0.1 + 1.2 * much))
        if len(held):
            y[held] = y[held[0]]
    return t, y


def _spikes(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    top = _top(y)
    for i in range(9):
        at = int(len(t) * ((i * 0.618 + much) % 1.0))
        y[at] += top * (0.05 + 0.7 * much) * (1 if i % 2 else -1)
    return t, y


def _broken(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    y[int(much * len(y) * 0.7) :: 97] = np.nan
    y[int(much * len(y) * 0.5) :: 389] = 3e6
    t[int(much * len(t) * 0.6) :: 251] = np.inf
    t[7::313] = t[6::313][: len(t[7::313])]
    return t, y


def _let_go(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    """Drop to rest in the middle of every load for a moment: a second grip."""
    rest, top, high = float(np.median(y)), _top(y), 0
    since = np.full(len(t), np.inf)
    loaded = np.abs(y - rest) > 0.5 * top
    begun = t[0]
    for i in np.flatnonzero(loaded):
        if high == 0 or t[i] - t[high] > 0.3:
            begun = t[i]
        since[i], high = t[i] - begun, int(i)
    gone = (since > 1.2) & (since < 1.3 + 1.6 * much)
    return t, np.where(gone, rest + 0.02 * (y - rest), y)


def _lever_on(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    """Put a lever on a moment before the first load, take it off at the end."""
    rest, top = float(np.median(y)), _top(y)
    high = np.flatnonzero(np.abs(y - rest) > 0.3 * top)
    at = t[high[0]] - 0.3 - 2.5 * much if len(high) else t[0]
    hung = (0.05 + 0.4 * much) * top
    return t, y + hung * (t > at) * (1 + 0.5 * np.exp(-(np.maximum(t - at, 0)) / 0.2) * np.cos(30 * (t - at)))


def _bumps(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    top = _top(y)
    for i in range(4):
        at = t[0] + (t[-1] - t[0]) * ((i * 0.618 + much / 2) % 1.0)
        wide = 0.05 + 0.5 * much
        y = y + (0.15 + 0.5 * much) * top * np.clip(1 - np.abs(t - at) / wide, 0, None)
    return t, y


def _climbs(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    slope = 0.02 + 0.25 * much
    return t, y * (1 + slope * (((t - t[0]) * 0.2) % 1.0))


def _no_peak(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    most = (0.6 + 0.4 * much) * _top(y)
    return t, np.clip(y, np.median(y) - most, np.median(y) + most) + 0.002 * most * np.sin(37 * t)


def _fades(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    """Smooth all of it by a slow filter: knees become round, releases long."""
    width = max(1, round((0.1 + 0.8 * much) / _step(t)))
    return t, np.convolve(np.pad(y, (width // 2, width - 1 - width // 2), "edge"), np.ones(width) / width, "valid")


def _tremor(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t, y * (1 + (0.005 + 0.03 * much) * np.sin(2 * np.pi * 9.1 * (t - t[0])))


def _two_levels(t: Floats, y: Floats, much: float) -> tuple[Floats, Floats]:
    return t, np.where(((t - t[0]) * (0.2 + 0.4 * much)) % 1.0 < 0.5, y, y * (0.8 + 0.17 * much))


CHANGES: dict[str, Change] = {
    "coarse": _coarse, "drifts": _drifts, "hums": _hums, "chatters": _chatters, "yanks": _yanks,
    "quick": _quick, "slow": _slow,
    "seconds": _seconds, "set back": _set_back, "late": _late, "stuck": _stuck, "spikes": _spikes,
    "broken": _broken, "let go": _let_go, "lever on": _lever_on, "bumps": _bumps, "climbs": _climbs,
    "no peak": _no_peak, "fades": _fades, "tremor": _tremor, "two levels": _two_levels,
}  # fmt: skip


def _loaded(y: Floats) -> Ints:
    return np.flatnonzero(np.abs(y - np.median(y)) > 0.5 * _top(y))


def _under_load(t: Floats, y: Floats, much: float) -> Ints:
    high = _loaded(y)
    return np.arange(int(high[int(much * 0.6 * len(high))]) if len(high) else 0, len(t))


def _cut_off(t: Floats, y: Floats, much: float) -> Ints:
    high = _loaded(y)
    return np.arange(int(high[int((0.3 + 0.6 * much) * len(high))]) if len(high) else len(t))


def _few(t: Floats, y: Floats, much: float) -> Ints:
    return np.arange(0, len(t), max(1, round((0.1 + 0.4 * much) / _step(t))))


def _gaps(t: Floats, y: Floats, much: float) -> Ints:
    least, keep = 0.02 + 0.5 * much**2, np.ones(len(t), bool)
    for i in range(8):
        from_s = t[0] + (t[-1] - t[0]) * ((i * 0.618 + much) % 1.0)
        keep &= ~((t > from_s) & (t < from_s + least))
    return np.flatnonzero(keep)


ONLY: dict[str, Callable[[Floats, Floats, float], Ints]] = {
    "under load": _under_load, "cut off": _cut_off, "few": _few, "gaps": _gaps,
}  # fmt: skip
"""Changes that only leave samples out: which are left."""


def _other_way(found: Taken, much: float) -> Taken:
    return replace(found, torque_nm=-found.torque_nm, angle_deg=None if found.angle_deg is None else -found.angle_deg)


def _at_limit(found: Taken, much: float) -> Taken:
    most = float(np.nanmax(np.abs(found.torque_nm))) * (0.75 + 0.3 * much)
    return replace(
        found, torque_nm=np.clip(found.torque_nm, -most, most), sensor=replace(found.sensor, capacity_nm=most)
    )


def _small(found: Taken, much: float) -> Taken:
    return replace(found, torque_nm=found.torque_nm * (0.02 + 0.2 * much))


def _late_filter(found: Taken, much: float) -> Taken:
    sensor = replace(found.sensor, delay_s=0.01 + 0.2 * much, delay_s_u=0.02 * much, gain=1.02, gain_u=0.004)
    return replace(found, sensor=replace(sensor, resolution_nm=0.02 * much))


def _bare(found: Taken, much: float) -> Taken:
    return replace(found, sensor=Sensor())


def _turned(found: Taken, much: float) -> Taken:
    """An angle that fits: wind-up with the torque, and a speed of its own while the torque is up."""
    t, y = found.time_s, found.torque_nm
    rest, top = float(np.median(y)), _top(y)
    x = np.where(np.isfinite(y), y - rest, 0.0)
    speed = np.where(np.abs(x) > 0.8 * top, (10 + 80 * much) * (1 + 0.3 * (np.floor(t * 0.4) % 2)), 0.0) * np.sign(x)
    turned = np.concatenate(([0.0], np.cumsum(speed[1:] * np.clip(np.diff(t), 0, 1))))
    play = np.clip(x / top, -0.05, 0.05) * 20 * much
    return replace(found, angle_deg=np.round(turned + play + x / top * (1 + 3 * much), 1 + (much < 0.6)))


AROUND: dict[str, Callable[[Taken, float], Taken]] = {
    "other way": _other_way, "at limit": _at_limit, "small": _small, "late filter": _late_filter, "bare": _bare,
    "turned": _turned,
}  # fmt: skip
