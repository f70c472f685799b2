"""What speaks against a pull, in words that say what to do next.

Offered: ``clipped``, ``gaps``, ``stuck``, ``fell_at_once``, ``near``, ``peak_reasons``, ``slip_reasons``, and the
reasons known beforehand.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from analysis.trace.results import Code, Reason
from analysis.trace.smooth import last_where, quantile, thin

if TYPE_CHECKING:
    from analysis.trace.breakaway import Peak
    from analysis.trace.plateau import Plateau
    from analysis.trace.traces import Bools, Floats, Ints, Sensor

AT_CAPACITY = 0.995
"""A reading from this share of the capacity on may have been cut off there."""

CLIPPED_RUN = 5
"""So many equal readings at the very top, entered or left by a jump, are a limit even if the capacity is not known."""

CLIPPED_JUMP = 3.0
"""... a jump of at least this many steps of the reading."""

GAP_STEPS = 2.5
"""Sample intervals: a longer step between two samples means that some were lost."""

CATCH_UP_S = 0.25
"""Within so long a stream that was held up is up to date again: a few drains of the reader."""

PEAK_BEFORE_S, PEAK_AFTER_S = 0.3, 0.15
"""Around the breakaway no sample may be missing: its window, as far as it can have begun and ended (s)."""

MAY_BE_IT = 0.8
"""A torque that is above this share of the breakaway after a gap before it may have broken away in the gap."""

STUCK_S, STUCK_SAMPLES = 1.0, 100
"""The very same reading for this long (s) under load, so many times, is no reading; a coarse gauge that is asked a few
times a second may well repeat itself."""

QUICKEST_RAMP_S = 0.25
"""From a tenth of the breakaway to the breakaway: quicker, inertia is of the size of the torque (a wheel of 1 kg·m²
brought to 5 turns a minute in that time takes 2 N·m)."""

QUICKEST_RELEASE_S, GONE = 0.03, 0.3
"""A hand that lets go takes longer than this (s) to bring the torque below this share."""

RESOLVED, MISSED = 0.05, 0.5
"""A ramp that rises by more than this share of the breakaway between two readings hardly resolves its peak, and by more
than the second not at all."""

SHORTEST_S = 0.5
"""A slip that was steady for less than this (s) is called short, though its level is stated."""

KEPT = 0.4
"""A slip of which less than this share was steady is called unsteady."""

CUT_START = Reason(
    Code.CUT_START, "the recording begins in the middle of this pull: start it before touching the lever"
)
CUT_END = Reason(
    Code.CUT_END, "the recording ends under load: ease the load off first, and stop the recording a second later"
)
GRIPPED_AGAIN = Reason(
    Code.UNSTEADY, "gripped again on the way: this is the pull stated before, as a whole; it counts once"
)
GRIPPED_TOO_SOON = Reason(
    Code.UNSTEADY,
    "gripped again a moment after the pull before, and one of the two shows no steady turning: not counted; rest two "
    "seconds before you pull again",
)
LET_GO = Reason(
    Code.NEVER_SLIPPED,
    "eased off before anything showed that the pack slipped: pull again, slowly, until the wheel turns and keeps "
    "turning",
)
FADED = Reason(
    Code.NEVER_SLIPPED,
    "the load rose ever more slowly and was released: without the wheel's angle it cannot be distinguished from a load "
    "below the slip; pull straight on through the knee, and keep turning",
)
HELD = Reason(
    Code.NEVER_SLIPPED, "the torque was held but the wheel did not turn: pull on until it turns and keeps turning"
)
LAY_STILL = Reason(
    Code.NEVER_SLIPPED,
    "came at once or lay still, as a lever does that is put on, and no other pull shows what is usual: pull by hand "
    "until the pack breaks away, or record the wheel's angle",
)
TOO_SMALL = Reason(
    Code.NOT_RESOLVED, "under 2 % of the transducer's capacity, where no class is calibrated: use a smaller transducer"
)
HELD_OR_SLIPPED = (
    "no peak shows where the slip began: without the wheel's angle, a torque held below the slip would look the same"
)
NO_REST = (
    "nothing lay still before the ramp, so the torque counts from its foot and the interval is wide: rest a second "
    "before you pull"
)
ZERO_MOVED = Reason(
    Code.ZERO_MOVED,
    "the reading jumped and then stood as still as at rest: the transducer has set its zero by itself; "
    "take the zero again with the lever hanging",
)


def clipped(torque_nm: Floats, sensor: Sensor, resolution_nm: float) -> Bools:
    """Mark samples at the transducer's limit; torque counts from the transducer's own zero."""
    if sensor.capacity_nm:
        return np.asarray(np.abs(torque_nm) * (sensor.gain or 1.0) >= AT_CAPACITY * sensor.capacity_nm)
    marked = np.zeros(len(torque_nm), bool)
    top = np.flatnonzero(torque_nm == torque_nm.max(initial=-np.inf))
    if len(top) < CLIPPED_RUN:
        return marked
    runs = np.split(top, np.flatnonzero(np.diff(top) > 1) + 1)
    for run in runs:
        beside = [torque_nm[i] for i in (run[0] - 1, run[-1] + 1) if 0 <= i < len(torque_nm)]
        jump = max((float(torque_nm[run[0]] - b) for b in beside), default=0.0)
        if len(run) >= CLIPPED_RUN and jump > CLIPPED_JUMP * resolution_nm > 0:
            marked[run] = True
    return marked


def gaps(time_s: Floats) -> Ints:
    """Give the indices of samples before which others were lost.

    Times that rest on arrival stretch where a machine is busy, and the samples behind come the closer together: what
    comes late but complete is no gap. So few lost samples as the arrivals are late cannot be told without a counter.
    """
    if len(time_s) < 2:
        return np.empty(0, np.intp)
    steps = time_s[1:] - time_s[:-1]
    interval_s = float((time_s[-1] - time_s[0]) / len(steps))
    if steps.max() <= GAP_STEPS * interval_s:
        return np.empty(0, np.intp)
    long = np.flatnonzero(steps > GAP_STEPS * quantile(thin(steps), 0.5)) + 1
    if not len(long):
        return long
    behind_s = np.append(time_s - interval_s * np.arange(len(time_s)), np.inf)  # an even stream stays at one value
    until = np.minimum(long + caught_up_in(interval_s), len(time_s))
    least_s = np.minimum.reduceat(behind_s, np.column_stack((long, until)).ravel())[::2]
    missing: Ints = long[least_s - behind_s[long - 1] > (GAP_STEPS - 1) * interval_s]
    return missing


SILENT = "nothing was received for"
SILENT_S = 0.5
"""A longer time without a reading within a pull is told with it, as no line is drawn across it."""


def silences(time_s: Floats) -> tuple[str, ...]:
    """Say of a pull that readings are missing within it, where that is more than its usual steps.

    >>> silences(np.append(np.arange(50) / 50, 3 + np.arange(50) / 50))
    ('nothing was received for 2.0 s within this pull: what the torque did then is not known',)
    """
    steps = np.diff(time_s)
    longest = float(steps.max(initial=0.0))
    if longest <= SILENT_S or longest <= GAP_STEPS * float(np.median(steps)):
        return ()
    return (f"nothing was received for {longest:.1f} s within this pull: what the torque did then is not known",)


def caught_up_in(interval_s: float) -> int:
    """Give the number of samples within which a stream that was only late is up to date again."""
    return max(1, math.ceil(CATCH_UP_S / interval_s))


def stuck(time_s: Floats, torque_nm: Floats) -> slice:
    """Give the readings of the longest stretch that stood still for too long to be readings; empty if none did."""
    edges = np.concatenate([[0], np.flatnonzero(torque_nm[1:] != torque_nm[:-1]) + 1, [len(torque_nm)]])
    longest = int(np.argmax(edges[1:] - edges[:-1]))
    still = slice(int(edges[longest]), int(edges[longest + 1]))
    enough = still.stop - still.start >= STUCK_SAMPLES and _lasted_s(time_s, still) > STUCK_S
    return still if enough else slice(0, 0)


def _lasted_s(time_s: Floats, still: slice) -> float:
    """Give how long a stretch lasted, until the next reading."""
    return float(time_s[min(still.stop, len(time_s) - 1)] - time_s[still.start])


def fell_at_once(time_s: Floats, torque_nm: Floats, release: int, level_nm: float) -> bool:
    """Whether the torque was gone within two samples, quicker than any hand lets go.

    Args:
        time_s, torque_nm: shape (n,); The pull and what came after it, from the hand-off level.
        release: Sample at which the torque was last near its level.
        level_nm: That level.
    """
    after = slice(release, release + 3)
    t, x = time_s[after], torque_nm[after]
    return len(t) == 3 and t[2] - t[0] < QUICKEST_RELEASE_S and bool(x[2] < GONE * level_nm)


def near(marked: Bools, index: int) -> bool:
    """Whether a sample or its neighbour is marked."""
    return bool(marked[max(index - 1, 0) : index + 2].any())


def peak_reasons(time_s: Floats, torque_nm: Floats, peak: Peak | None, cut: Bools) -> list[Reason]:
    """Collect what speaks against a breakaway; ``cut`` marks clipped samples.

    Args:
        time_s, torque_nm: shape (n,); From the foot of the ramp to the release, from the hand-off level.
    """
    found = []
    if cut.any():
        found.append(Reason(Code.CLIPPED, f"{int(cut.sum())} readings at the transducer's limit: use a larger one"))
    if peak is None:
        return found
    if lost_at(time_s, torque_nm, peak):
        found.append(Reason(Code.LOST, "samples are missing at the breakaway: bring the receiver nearer, pull again"))
    tenth = max(last_where(torque_nm[: peak.index + 1] < 0.1 * peak.torque_nm), 0)
    ramp_s = peak.time_s - float(time_s[tenth])
    if ramp_s < QUICKEST_RAMP_S:
        found.append(Reason(Code.RAMP, f"jerked to its peak in {ramp_s:.2f} s: take two seconds for the first slip"))
    if peak.step_nm > MISSED * peak.torque_nm:
        found.append(Reason(Code.NOT_RESOLVED, few_readings(peak)))
    return found


def few_readings(peak: Peak) -> str:
    """Say that the ramp rose so far between two readings that its peak is hardly resolved; empty if it is."""
    if peak.step_nm <= RESOLVED * peak.torque_nm:
        return ""
    slower = peak.step_nm / RESOLVED / peak.torque_nm
    return (
        f"rose {peak.step_nm:.3g} N·m between two readings, so the breakaway's interval is wide: "
        f"pull {slower:.1f} times slower, or measure faster"
    )


def two_levels(level_nm: float, other_nm: float) -> str:
    """Say that either of two levels may have been the one at hand-off."""
    return (
        f"the trace lay still at two levels before the ramp, {level_nm:.3g} and {other_nm:.3g} N·m: the torque counts "
        "from the first, the interval reaches the other; rest a second before you pull"
    )


def lost_at(time_s: Floats, torque_nm: Floats, peak: Peak) -> bool:
    """Whether samples are missing where the breakaway may have been."""
    lost = gaps(time_s)
    beside = (time_s[lost] > peak.time_s - PEAK_BEFORE_S) & (time_s[lost - 1] < peak.time_s + PEAK_AFTER_S)
    before = (lost <= peak.index) & (torque_nm[lost] > MAY_BE_IT * peak.torque_nm)
    return bool((beside | before).any())


def slip_reasons(time_s: Floats, frozen: slice, plateau: Plateau | None) -> list[Reason]:
    """Collect what speaks against a rotating torque; times as for ``peak_reasons``, and what stood still in them."""
    found = []
    if frozen.stop:
        lasted_s = _lasted_s(time_s, frozen)
        found.append(Reason(Code.LOST, f"the reading stood still for {lasted_s:.1f} s under load: check the link"))
    if plateau is None:
        found.append(Reason(Code.SHORT, "no half second of steady turning: keep turning evenly, two seconds or more"))
    elif plateau.climbs:
        text = f"the torque went on changing by {100 * plateau.climb:+.0f} % while turning: nothing steady to state; "
        found.append(Reason(Code.UNSTEADY, text + "a fluid coupling or a dragging brake does that"))
    elif plateau.parted:
        both = f"{plateau.torque_nm:.3g} and {plateau.other_nm:.3g} N·m"
        text = f"the torque kept to {both} for about as long: no one level to state; "
        found.append(Reason(Code.UNSTEADY, text + "turn at one speed, which a fluid coupling follows"))
    elif plateau.steady_s < SHORTEST_S:
        text = f"only {plateau.steady_s:.1f} s of steady turning: keep turning evenly, two seconds or more"
        found.append(Reason(Code.SHORT, text))
    elif plateau.uneven or plateau.steady_s < KEPT * (time_s[-1] - plateau.start_s):
        found.append(Reason(Code.UNSTEADY, "yanks or hesitations most of the way: turn more evenly"))
    return found
