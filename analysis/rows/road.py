"""A drive's sound or acceleration as a test of chatter, beside what the bench says of the same axle; its words.

Command, Python and window say what is made here. It is no torque, and there is no limit for it.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from analysis.pipeline import read_file
from analysis.road.against import against
from analysis.road.levels import band_for, band_levels, find_events, flat_tops
from analysis.rows.summary import recording_row
from logger.edges.units import minus, parse_number
from logger.errors import HeldwheelError, InputError
from logger.foreign.vibration import read_vibration
from logger.header import Sidecar
from logger.recordings.axles import moment, same_tag
from logger.recordings.heads import tests_in
from logger.recordings.sidecar import read_sidecar

if TYPE_CHECKING:
    from analysis.road.against import Against
    from analysis.road.levels import Event, Found, Levels

MOST_BENCH = 3  # recordings of the axle that stand beside, the newest ones
GAIN_DB = 3.0  # backgrounds further apart than this are told (common practice, no source)
KINDS = {"sound": "dB re full-scale sine", "acceleration": "dB re 1 µm/s²"}

HOW = (
    "Record ten figure-eights and a stretch without turning, 20 s and more, as WAV or as a table of acceleration. To "
    "compare: same microphone, place, gain, ground and speed, warm oil."
)
NO_TORQUE = "Chatter by its level in a frequency band: no torque, no limit, no result."
CANNOT_TELL = (
    "It cannot tell chatter from gear whine, tyre squeal, road noise or anything else at these frequencies: listen to "
    "each event.",
    "A change of speed, surface or window counts as an event if it is louder; chatter that never pauses is background.",
    "A telephone that sets its own gain moves every level: switch that off, or compare shares of time alone.",
)
NOT_ONE_SCALE = (
    "The bench's chatter index is the swing of a torque turned by hand: another speed, another load, no common scale."
)
ONLY_SCATTER = (
    "The interval is the scatter within the two drives alone: speed, road, oil temperature and where the microphone "
    "lies add to it."
)


@dataclass(frozen=True, slots=True)
class Bench:
    """A recording of the axle: its file, when it was made, its chatter index."""

    file: str
    day: str
    index: float
    simulated: bool


@dataclass(frozen=True, slots=True)
class RoadTest:
    """What a drive's recording says."""

    # file, before_file: the latter is empty where nothing is compared
    file: str
    # levels, found: of ``file``
    levels: Levels
    found: Found
    before_file: str
    difference: Against | None  # ``file`` less ``before_file``
    tag: str  # of the axle; ``bench`` are its newest recordings with a chatter index
    bench: tuple[Bench, ...]
    simulated: bool  # whether a sidecar marks one of the drives as simulated
    problems: tuple[str, ...]

    @property
    def any_simulated(self) -> bool:
        """Whether anything that stands here is simulated."""
        return self.simulated or any(one.simulated for one in self.bench)


def parse_band(text: str) -> tuple[float, float] | None:
    """Read a band, ``50-800Hz``; None where nothing is said.

    Raises:
        InputError: It is none.

    >>> parse_band("50-800 Hz"), parse_band("20 – 400")
    ((50.0, 800.0), (20.0, 400.0))
    """
    plain = text.strip().lower().removesuffix("hz").replace("–", "-").replace(" to ", "-")
    if not plain:
        return None
    low, _, high = plain.partition("-")
    try:
        return parse_number(low.strip().removesuffix("hz")), parse_number(high.strip())
    except HeldwheelError:
        raise InputError(f"'{text}' is no frequency band; write it as 50-800Hz") from None


def road_test(
    path: str, before: str = "", band: tuple[float, float] | None = None, tag: str = "", folder: str = ""
) -> RoadTest:
    """Read a drive's recording, another one to compare it with, and what the bench says of the axle.

    Args:
        path, before: WAV, or a table of acceleration; the latter empty: nothing is compared.
        band: Hz; the usual one of its kind otherwise, which both carry.
        tag: Of the axle; empty: the one that the sidecar of ``path`` states, if any.
        folder: Where the axle's recordings lie; empty: where ``path`` does.

    Raises:
        HeldwheelError: One cannot be read, or the two cannot be compared.
    """
    files = [path, before] if before else [path]
    read = [read_vibration(file) for file in files]
    sidecars = [read_sidecar(file) or Sidecar() for file in files]
    least = min(one.rate_hz for one in read)
    problems, told = [], []
    for head, one in zip(("", "Recording before: "), read, strict=False):
        levels = band_levels(
            one.kind, one.samples, one.rate_hz, band_for(one.kind, least, band),
            zero=one.zero, unit=one.unit, ends=one.ends, gaps_s=one.gaps_s,
        )  # fmt: skip
        told.append((levels, find_events(levels)))
        problems += [head + text for text in one.problems]
        problems += [head + text for text in _cut(levels, flat=one.kind == "acceleration" and flat_tops(one.samples))]
    difference = against(told[0], told[1]) if before else None
    if difference is not None and abs(difference.background_db) > GAIN_DB:
        problems.append(
            f"the quiet backgrounds differ by {_db(difference.background_db, '+')} dB: gain, place, speed or road were "
            "not the same"
        )
    tag = tag.strip() or (sidecars[0].axle.tag.strip() if sidecars[0].axle is not None else "")
    bench = bench_of(folder or os.path.dirname(path) or ".", tag) if tag else ()
    simulated = any(sidecar.simulated for sidecar in sidecars)
    return RoadTest(path, *told[0], before, difference, tag, bench, simulated, tuple(problems))


def _cut(levels: Levels, *, flat: bool) -> list[str]:
    if flat:
        return ["the largest acceleration stands several times in a row: it may be cut, and levels there are too low"]
    if not levels.clipped.any():
        return []
    return [f"clipped for {levels.clipped_s:.1f} s: levels there are too low; record with less gain"]


def bench_of(folder: str, tag: str) -> tuple[Bench, ...]:
    """Give the newest recordings of an axle in a folder that have a chatter index, newest first."""
    mine = [one for one in tests_in(folder) if same_tag(one[1].axle.tag, tag) and one[0].suffix == ".csv"]
    found: list[Bench] = []
    for path, header, started in sorted(mine, key=lambda one: -moment(one[2])):
        try:
            index = recording_row(read_file(path))["chatter_index"]
        except HeldwheelError:
            continue
        if isinstance(index, float):
            found.append(Bench(path.name, f"{started:%Y-%m-%d}", index, header.simulated))
        if len(found) == MOST_BENCH:
            break
    return tuple(found)


def lines_of(test: RoadTest) -> tuple[str, ...]:
    """Give what a test says, sentence by sentence; what to mind is ``test.problems`` and ``CANNOT_TELL``."""
    levels, found = test.levels, test.found
    low, high = levels.band_hz
    count = len(found.events)
    said = [
        f"Events that stand out: {count}, {found.total_s:.1f} s in all, {found.share * 100:.1f} % of "
        f"{levels.heard_s:.0f} s.",
        f"Frequency band {low:.0f} to {high:.0f} Hz; levels in {KINDS[levels.kind]}.",
        f"Level of the whole {_db(levels.mean_db)} dB; quiet background {_db(found.background_db)} dB; an event begins "
        f"at {_db(found.threshold_db)} dB.",
    ]
    if levels.kind == "acceleration":
        said.append(f"In this frequency band {10 ** (levels.mean_db / 20 - 6):.3g} m/s² rms, the axes together.")
    if test.difference is not None:
        d = test.difference
        said.append(
            f"Against {os.path.basename(test.before_file)}: level {_db(d.db, '+')} ± {d.u95_db:.1f} dB (95 %); share "
            f"of time {_db(d.share * 100, '+')} points."
        )
        said.append(ONLY_SCATTER)
    if test.tag:
        said += [f"Bench, axle {test.tag}, {one.day}: chatter index {one.index:.2f}." for one in test.bench]
        said.append(
            NOT_ONE_SCALE if test.bench else f"No recording of axle {test.tag} with a chatter index lies there."
        )
    return tuple(said)


def event_words(number: int, event: Event) -> str:
    """Give an event in words."""
    words = f"Event {number}: {event.start_s:.1f} to {event.end_s:.1f} s, {_db(event.level_db)} dB"
    return f"{words}, clipped" if event.clipped else words


def _db(value: float, sign: str = "-") -> str:
    return minus(f"{value:{sign}.1f}")


def to_json(test: RoadTest, *, course: bool = False) -> dict[str, Any]:
    """Give a test as JSON-ready values (schema 'heldwheel chatter 1'), with its levels against time if wished."""
    levels, found, d = test.levels, test.found, test.difference
    said: dict[str, Any] = {
        "schema": "heldwheel chatter 1",
        "file": test.file,
        "simulated": test.any_simulated,
        "kind": levels.kind,
        "unit": KINDS[levels.kind],
        "band_hz": list(levels.band_hz),
        "heard_s": levels.heard_s,
        "level_db": levels.mean_db,
        "background_db": found.background_db,
        "spread_db": found.spread_db,
        "threshold_db": found.threshold_db,
        "events": [
            {"start_s": e.start_s, "end_s": e.end_s, "level_db": e.level_db, "clipped": e.clipped} for e in found.events
        ],
        "total_s": found.total_s,
        "share": found.share,
        "clipped_s": levels.clipped_s,
        "against": None
        if d is None
        else {
            "file": test.before_file,
            "difference_db": d.db,
            "u95_db": d.u95_db,
            "background_db": d.background_db,
            "share": d.share,
        },
        "axle": test.tag,
        "bench": [
            {"file": b.file, "day": b.day, "chatter_index": b.index, "simulated": b.simulated} for b in test.bench
        ],
        "problems": list(test.problems),
        "remarks": [NO_TORQUE, *CANNOT_TELL],
    }
    if course:
        db = levels.db
        said["time_s"] = levels.time_s.tolist()
        said["course_db"] = [value if np.isfinite(value) else None for value in db.tolist()]
    return said


def to_csv(test: RoadTest) -> str:
    """Give the level against time as CSV: time_s, level_db, event (0: none, else its number), clipped."""
    number = np.zeros(len(test.levels.time_s), int)
    for at, event in enumerate(test.found.events, 1):
        number[(test.levels.time_s > event.start_s) & (test.levels.time_s < event.end_s)] = at
    low, high = test.levels.band_hz
    head = f"# chatter by level in a frequency band, {low:.0f}-{high:.0f} Hz, {KINDS[test.levels.kind]}; no torque"
    lines = [head + ("; SIMULATED DATA" if test.any_simulated else ""), "time_s,level_db,event,clipped"]
    for t, db, event, cut in zip(
        test.levels.time_s.tolist(), test.levels.db.tolist(), number.tolist(), test.levels.clipped.tolist(), strict=True
    ):
        lines.append(f"{t:.3f},{'' if db != db else f'{db:.2f}'},{event},{int(cut)}")
    return "\n".join(lines) + "\n"


def write_road(test: RoadTest, target: str) -> str:
    """Write a test: ``.json`` whole, anything else its level against time as CSV; gives the file.

    Raises:
        FileError: It cannot be written.
    """
    import json

    from logger.edges.small_file import write_whole

    text = json.dumps(to_json(test, course=True), ensure_ascii=False) if target.lower().endswith(".json") else ""
    write_whole(target, (text or to_csv(test)).encode())
    return target
