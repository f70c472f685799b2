"""One load on the lever, read: is it a pull, and what does it say."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.angle import find_slip
from analysis.trace.breakaway import Peak, find_peak
from analysis.trace.gates import (
    CUT_END,
    CUT_START,
    FADED,
    GRIPPED_AGAIN,
    GRIPPED_TOO_SOON,
    HELD,
    HELD_OR_SLIPPED,
    LET_GO,
    NO_REST,
    TOO_SMALL,
    ZERO_MOVED,
    clipped,
    fell_at_once,
    few_readings,
    near,
    peak_reasons,
    silences,
    slip_reasons,
    stuck,
    two_levels,
)
from analysis.trace.handoff import Handoff, find_handoff
from analysis.trace.loads import Load, Window, lands, lies_still, rings_out, stands_out, turned
from analysis.trace.plateau import CREEP, Plateau, find_plateau, together
from analysis.trace.ramp import fades
from analysis.trace.results import Code, Pull
from analysis.trace.slipping import cut_off, stays_up
from analysis.trace.smooth import crowded, last_where, quantile, thin
from analysis.trace.stated import (
    Part,
    breakaway_of,
    elastic_of,
    is_distinct,
    rotating_of,
    round_seen,
    seen_again,
    stick_slip_of,
    turning_of,
)
from analysis.trace.stickslip import Cycles, find_cycles

if TYPE_CHECKING:
    from analysis.trace.results import Reason
    from analysis.trace.traces import Floats, Sensor

LEAST_NOISES, NOISE_S = 8.0, 0.05
"""A load is at least so many deviations of a mean over this time (s) at rest; noise alone reaches 4 in a long rest."""

LEAST_OF_CAPACITY = 0.02
"""Loads below this share of the capacity are not read: no class of transducer is calibrated lower (ISO 376)."""

AFTER_U, AFTER_LEVEL_U = 0.03, 0.6
"""Relative standard uncertainty of a level that could only be read just after the pull: lever and wheel still swing;
and this share of that level, because the lever's weight, which makes most of it, hung at another angle before."""

RESTED_S, TURNED_S, REVERSED_S = 0.5, 0.3, 1.2
"""A lever that lay still for less than this (s) between two grips did not come to rest; between two strokes to and fro,
for less than the second, it may have: the interval reaches the level before. Straight out of one stroke into another
of its size it hung where it lay still for the third."""

NO_REST_U = 0.005
"""After no rest, as when a drive reverses, the level of the rest before it still counts; this much of the torque is
then the standard uncertainty of that."""

KNEE = 0.97
"""A ramp without a peak has run into its level at this share of it."""

BACK_S, BREAK_S, BREAK, BEYOND = 1.0, 0.15, 0.95, 1.05
"""A torque that, without stick-slip or a level, is at its peak again after this time (s) wanders, unless it broke: fell
below this share of the peak at once, and did not go on beyond it by the last share."""

SLIPS_S = 0.2
"""After a breakaway the torque stays near the slip level for longer than this (s): let go sooner, nothing slipped."""

BUMP_S = 0.5
"""A load that was above half its maximum for less (s) is a bump, not worth a word."""

REGRIP_S, LET_GO_S, HANGS_S = 1.2, 2.4, 0.75
"""A load that begins sooner than this (s) after the last pull, the same way, is the same pull after a re-grip; not if
the torque had left its level for longer than the second (a lever that hung, was taken off and put on again) or lay
still in between for the third: then it counts from there."""

OF_A_SIZE = 0.4
"""A re-grip takes hold of a pull of its size, of at least this share of it."""

NEAR_TOP = 0.85
"""The torque was last near its level where it was above this share of it; then it was released."""

COARSE = 0.001
"""Readings whose noise or step is more than this share of the torque may stand still without being stuck."""

CLIPPED_SHARE = 0.05
"""A slip of which more than this share was cut off at the transducer's limit has no level to state."""


@dataclass(frozen=True, slots=True)
class Read:
    """A pull, and its plateau as found: a re-grip goes on from there.

    ``height_nm`` is about the level at which it slips; ``still``: it lies as still as a lever that hangs; ``rang``: it
    came quickly and rang until it was still; ``again``: it is the pull before as a whole; ``told``: the wheel's angle,
    or the pull before, says that it slipped; ``handled``: it was there at once, so a lever was put on, moved or taken
    off; ``let_go_s``: when the torque was last near its level.
    """

    pull: Pull
    plateau: Plateau | None = None
    height_nm: float = 0.0
    still: bool = False
    rang: bool = False
    again: bool = False
    told: bool = False
    handled: bool = False
    let_go_s: float = -np.inf

    @property
    def states(self) -> bool:
        """Whether it states a torque."""
        return self.pull.breakaway is not None or self.pull.rotating is not None

    @property
    def jerked(self) -> bool:
        """Whether it came up too quickly for a pull."""
        return any(reason.code is Code.RAMP for reason in self.pull.reasons)


def read_pull(window: Window, before: Read | None, sensor: Sensor) -> Read | None:
    """Read one span; None where it is no pull at all (a bump, a step, noise).

    Args:
        before: The last pull that stated a torque.
    """
    load = turned(window)
    if load is None or len(load.half) < 3 or load.held_s < BUMP_S:
        return None
    before = _gripped_again(before, load)
    hand = _handoff(load, window)
    if before is not None and hand.hung_s < HANGS_S:
        hand = Handoff(load.sign * before.pull.handoff_nm, load.noise_nm, load.first)
    else:
        before = None
    hand = replace(hand, u_nm=float(np.hypot(hand.u_nm, load.step_nm / np.sqrt(12))))
    x, height = load.torque_nm - hand.level_nm, load.top_nm - hand.level_nm
    if height < LEAST_NOISES * load.noise_nm / np.sqrt(max(NOISE_S / load.interval_s, 1.0)):
        return None
    small = height < LEAST_OF_CAPACITY * (sensor.capacity_nm or 0.0)
    frame = Pull(float(load.time_s[hand.foot]), load.end_s, load.sign, load.sign * hand.level_nm, left_out=load.spikes)
    if small:
        return Read(replace(frame, reasons=(TOO_SMALL,)), height_nm=height)
    part = _part(load, x, hand.foot, window, sensor)
    if len(part.time_s) < 3 or part.slip_nm < height / 4:
        return None  # no level at all in it
    read = _read(frame, part, load, hand, window, before, sensor)
    if read is None or not read.states:
        return None if read is None else replace(read, height_nm=height)
    still = not read.told and lies_still(load, x, height, sensor)
    rings = not (read.told or window.reversed) and rings_out(load, x)
    handled = before is None and lands(load, x, height)
    still = ((still or rings) and handled) or (still and not stands_out(load, x))
    rang, again = rings and read.jerked, before is not None
    return replace(read, height_nm=part.slip_nm, still=still, rang=rang, again=again, handled=handled)


def _gripped_again(before: Read | None, load: Load) -> Read | None:
    """Give the pull before if this load goes on with it."""
    if before is None or before.pull.direction != load.sign:
        return None
    if before.height_nm < OF_A_SIZE * (load.top_nm - load.level_nm):  # a lever that was put on
        return None
    begun_s = load.under_way_s()
    return before if begun_s - before.pull.end_s <= REGRIP_S and begun_s - before.let_go_s <= LET_GO_S else None


def _handoff(load: Load, window: Window) -> Handoff:
    if window.from_start:
        u_nm = np.hypot(AFTER_U * (load.top_nm - load.level_nm), AFTER_LEVEL_U * load.level_nm)
        return Handoff(load.level_nm, float(u_nm), 0)
    height = load.top_nm - load.level_nm
    ramp = slice(load.half[0] + 1)
    t, x = load.time_s[ramp], load.torque_nm[ramp]
    earlier = None if window.earlier_nm is None else load.sign * window.earlier_nm
    hand = find_handoff(t, x, load.level_nm, load.top_nm, load.noise_nm, load.reading_s, earlier)
    if window.reversed and hand.rested_s < REVERSED_S:  # the level before the first stroke still counts
        return Handoff(load.level_nm, NO_REST_U * abs(height), max(last_where(x < load.level_nm), 0))
    if window.gripped_nm is not None and max(hand.rested_s, hand.hung_s) < RESTED_S:
        return hand.gripped_again(load.sign * window.gripped_nm)
    if window.turned_nm is not None and hand.rested_s < TURNED_S:
        before_nm = load.sign * window.turned_nm
        return hand.gripped_again(before_nm) if hand.unrested else hand.reaching(before_nm)
    if hand.unrested and window.of_stream and not window.to_end:  # the recording may have begun on the ramp
        after_nm = max(load.sign * window.level_after(), 0.0)  # beyond zero it is the next load
        return replace(hand.reaching(min(after_nm, hand.level_nm)), other_nm=None)
    return hand


def _part(load: Load, x: Floats, foot: int, window: Window, sensor: Sensor) -> Part:
    up, down = int(load.half[0]), int(load.half[-1])
    slip_nm = crowded(thin(x[up : down + 1]))
    release = last_where(x[: down + 1] > NEAR_TOP * slip_nm)
    part = slice(foot, release + 1)
    at_once = fell_at_once(load.time_s, x, release, slip_nm)
    angle = None if load.angle_deg is None else load.angle_deg[part]
    cut = clipped(load.torque_nm[part], sensor, window.resolution_nm)
    return Part(load.time_s[part], x[part], angle, cut, slip_nm, load.noise_nm, at_once)


def _read(
    frame: Pull, part: Part, load: Load, hand: Handoff, window: Window, before: Read | None, sensor: Sensor
) -> Read | None:
    t, x = part.time_s, part.torque_nm
    slip = None if part.angle_deg is None else find_slip(t, x, part.angle_deg, part.slip_nm)
    if slip is not None and slip.onset_s is None:
        return Read(replace(frame, reasons=(HELD,)))
    peak = None
    if not window.from_start and before is None:
        onset_s = None if slip is None else slip.onset_s
        peak = find_peak(t, x, part.slip_nm, part.noise_nm, onset_s, sensor.delay_s, sensor.delay_s_u)
    after = _slips_from(part, peak)
    turning = slice(int(np.searchsorted(t, after)), None)
    cycles = find_cycles(t[turning], x[turning])
    plateau = find_plateau(t, x, after, part.release_s, cycles)
    if plateau is not None and plateau.torque_nm < part.slip_nm / 2:
        plateau = None  # the steadiest part is not at the level where it slips
    if peak is not None and not _slipped(part, load, hand, peak, after, plateau, cycles, to_end=window.to_end):
        return Read(replace(frame, reasons=_gave_up(window, zero_moved=part.zero_moved)))
    level_nm = part.slip_nm if plateau is None else plateau.torque_nm
    seen = slip is not None or cycles is not None or before is not None or window.from_start or window.to_end
    if not seen and peak is not None and not is_distinct(peak.torque_nm, level_nm) and fades(t, x, part.slip_nm):
        return Read(replace(frame, reasons=(FADED,)))
    if plateau is None and cycles is None and peak is not None and _comes_back(part, peak):
        peak = None
    coarse = part.noise_nm > COARSE * part.slip_nm  # a display of few steps may well repeat itself
    frozen = slice(0, 0) if coarse else stuck(part.time_s, part.torque_nm)
    reasons = _reasons(part, peak, plateau, window, frozen)
    peak, plateau = _stated(part, peak, plateau, frozen, to_end=window.to_end)
    breakaway = breakaway_of(peak, part, plateau, float(np.hypot(hand.u_nm, hand.hum_nm)), sensor)
    if before is not None:
        if plateau is None or before.plateau is None:
            return Read(replace(frame, reasons=(GRIPPED_TOO_SOON, *reasons)))
        plateau = together(before.plateau, plateau)
        breakaway = seen_again(before.pull.breakaway, plateau)
        frame = replace(frame, start_s=before.pull.start_s)
        reasons = (GRIPPED_AGAIN, *reasons)
    peakless = breakaway is not None and not breakaway.distinct_peak and slip is None
    pull = replace(
        frame,
        breakaway=breakaway,
        rotating=rotating_of(plateau, hand, frame.start_s, sensor),
        stick_slip=stick_slip_of(cycles, plateau),
        turning=turning_of(part, plateau, slip),
        elastic=None if before is not None or window.from_start else elastic_of(part, breakaway, sensor),
        round=None if before is not None else round_seen(part, plateau),
        reasons=reasons,
        notes=(*silences(t), *_notes(peak, plateau, hand, peakless=peakless)),
    )
    return Read(pull, plateau, told=slip is not None or before is not None, let_go_s=part.release_s)


def _notes(peak: Peak | None, plateau: Plateau | None, hand: Handoff, *, peakless: bool) -> tuple[str, ...]:
    """Say what widened an interval, and what the torque alone cannot tell."""
    found = []
    if peakless:
        found.append(HELD_OR_SLIPPED)
    if peak is not None and few_readings(peak):
        found.append(few_readings(peak))
    if hand.unrested:
        found.append(NO_REST)
    if hand.other_nm is not None:
        found.append(two_levels(hand.level_nm, hand.other_nm))
    if plateau is not None and abs(plateau.climb) > CREEP:
        found.append(
            f"the torque changed by {100 * plateau.climb:+.0f} % while turning: the interval reaches both ends"
        )
    return tuple(found)


def _gave_up(window: Window, *, zero_moved: bool = False) -> tuple[Reason, ...]:
    """Give what is to be said where nothing shows that it slipped: more was not recorded, or it was let go."""
    known = (window.from_start, CUT_START), (zero_moved, ZERO_MOVED), (window.to_end, CUT_END)
    return tuple(reason for seen, reason in known if seen) or (LET_GO,)


def _slips_from(part: Part, peak: Peak | None) -> float:
    """Give the time from which the pack slips: its breakaway, or where a ramp without a peak runs into its level."""
    if peak is not None and is_distinct(peak.torque_nm, part.slip_nm):
        return peak.time_s
    return float(part.time_s[int(np.argmax(part.torque_nm > KNEE * part.slip_nm))])


def _slipped(
    part: Part,
    load: Load,
    hand: Handoff,
    peak: Peak,
    after: float,
    plateau: Plateau | None,
    cycles: Cycles | None,
    *,
    to_end: bool,
) -> bool:
    """Whether it slipped: a level was held for a while, or the torque stayed up after its peak."""
    if part.release_s - after < SLIPS_S and not to_end:
        return False
    if plateau is not None or cycles is not None:
        return True
    if to_end:  # it may go on rising: a slow pull, or a zero that drifts
        return bool(part.torque_nm[peak.index :].min() < KNEE * peak.torque_nm)
    t, x = load.time_s[hand.foot :], load.torque_nm[hand.foot :] - hand.level_nm
    return stays_up(t, x, peak.index) or cut_off(part.time_s, part.torque_nm, part.slip_nm)


def _comes_back(part: Part, peak: Peak) -> bool:
    """Whether the torque came to its peak again a while after it: what wanders has no breakaway."""
    t, x = part.time_s, part.torque_nm
    read_s = float(t[peak.index])  # as read: a filter that is late makes all of it late
    soon, later = np.searchsorted(t, (read_s + BREAK_S, read_s + BACK_S))
    if later >= len(t):
        return False
    broke = float(x[peak.index : soon + 1].min()) < BREAK * peak.torque_nm
    return quantile(thin(x[later:]), 0.95) > (BEYOND if broke else KNEE) * peak.torque_nm


def _reasons(
    part: Part, peak: Peak | None, plateau: Plateau | None, window: Window, frozen: slice
) -> tuple[Reason, ...]:
    return (
        *((CUT_START,) if window.from_start else ()),
        *peak_reasons(part.time_s, part.torque_nm, peak, part.clipped),
        *slip_reasons(part.time_s, frozen, plateau),
        *((ZERO_MOVED,) if part.zero_moved else ()),
        *((CUT_END,) if window.to_end else ()),
    )


def _stated(
    part: Part, peak: Peak | None, plateau: Plateau | None, frozen: slice, *, to_end: bool
) -> tuple[Peak | None, Plateau | None]:
    """Leave out what a limit of the transducer cut off, and what kept climbing."""
    if peak is not None and (near(part.clipped, peak.index) or frozen.start <= peak.index < frozen.stop):
        peak = None
    if plateau is not None and plateau.steady[frozen].sum() > CLIPPED_SHARE * plateau.steady.sum():
        plateau = None
    if plateau is not None and part.clipped[plateau.steady].mean() > CLIPPED_SHARE:
        plateau = None
    if plateau is not None and plateau.parted:
        return None, None
    if plateau is not None and (plateau.climbs or (to_end and abs(plateau.climb) > CREEP)):  # or a zero that drifts
        distinct = peak is not None and is_distinct(peak.torque_nm, part.slip_nm)
        return (peak if distinct else None), None
    return peak, plateau
