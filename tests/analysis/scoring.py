"""Scores a reading of a trace against its known truth, out of 100 per family.

Half of a family's score is the torques (points fall from 1 at no error to 0 at 10 % for the breakaway, at 5 % for the
rotating torque), the rest that every pull and nothing else was found, that packs without a peak get none, and the
interval score of the stated 95 % intervals (proper: width, plus 20 times what an error exceeds it by).
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from scipy.optimize import linear_sum_assignment

from analysis.trace.results import Code, Pull

BREAKAWAY_TOLERANCE, ROTATING_TOLERANCE, INTERVAL_CAP = 0.10, 0.05, 0.30
NEAR_S, OVERLAP = 0.5, 0.3


@dataclass
class Errors:
    """Relative errors and stated relative half-widths of one quantity; None: not stated."""

    pairs: list[tuple[float | None, float]] = field(default_factory=list)

    def add(self, stated: float | None, u95: float | None, true: float) -> None:
        self.pairs.append((None, 0.0) if stated is None else (stated / true - 1, (u95 or 0.0) / true))

    def stated(self) -> list[tuple[float, float]]:
        return [(e, u) for e, u in self.pairs if e is not None]

    def points(self, tolerance: float) -> float:
        return float(np.mean([0.0 if e is None else max(1 - abs(e) / tolerance, 0.0) for e, _ in self.pairs]))

    def interval_score(self) -> float:
        scores = [
            INTERVAL_CAP if e is None else min(u + 20 * max(abs(e) - u, 0.0), INTERVAL_CAP) for e, u in self.pairs
        ]
        return float(np.mean(scores))

    def covered(self) -> tuple[int, int]:
        inside = sum(abs(e) <= u for e, u in self.stated())
        return inside, len(self.stated())


@dataclass
class Family:
    """What was found in the recordings of one family."""

    recordings: int = 0
    with_false: int = 0
    pulls: int = 0
    found: int = 0
    false: int = 0
    peakless: int = 0
    false_peaks: int = 0
    breakaway: Errors = field(default_factory=Errors)
    rotating: Errors = field(default_factory=Errors)

    def score(self) -> float:
        if not self.pulls:
            return 100 * (1 - self.with_false / max(self.recordings, 1))
        parts = [(20.0, 2 * self.found / (2 * self.found + self.false + self.pulls - self.found))]
        intervals = []
        for errors, tolerance in ((self.breakaway, BREAKAWAY_TOLERANCE), (self.rotating, ROTATING_TOLERANCE)):
            if len(errors.pairs) >= 3:
                parts.append((30.0, errors.points(tolerance)))
                intervals.append(errors.interval_score())
        if self.peakless >= 3:
            parts.append((10.0 if len(self.breakaway.pairs) >= 3 else 40.0, 1 - self.false_peaks / self.peakless))
        if intervals:
            parts.append((10.0, 1 - float(np.mean(intervals)) / INTERVAL_CAP))
        return 100 * sum(w * x for w, x in parts) / sum(w for w, _ in parts)


def claims(pulls: tuple[Pull, ...]) -> list[Pull]:
    """Give the pulls that state a torque, or say that it was clipped; the others claim nothing."""
    return [p for p in pulls if _breakaway(p) is not None or p.rotating is not None or _is_clipped(p)]


def add(family: Family, truth: dict[str, Any], pulls: tuple[Pull, ...]) -> None:
    """Add one recording to its family's account."""
    found, true = claims(pulls), truth["pulls"]
    partner = _match(true, found)
    false = 0
    for j, pull in enumerate(found):
        states = _breakaway(pull) is not None or pull.rotating is not None
        if j in partner.values():
            i = next(i for i, k in partner.items() if k == j)
            false += states and not true[i]["valid"]
        elif states:
            false += not any(t["regrip"] and t["valid"] and _overlap(t, pull) > 0.5 * _length(pull) for t in true)
    family.recordings += 1
    family.false += false
    family.with_false += false > 0
    for i, t in enumerate(true):
        if t["valid"]:
            _add_pull(family, t, found[partner[i]] if i in partner else None)


def _add_pull(family: Family, true: dict[str, Any], pull: Pull | None) -> None:
    family.pulls += 1
    family.found += pull is not None
    peak = None if pull is None else _breakaway(pull)
    level = None if pull is None else pull.rotating
    if true["breakaway"] is not None and true["peak_class"] == "distinct" and "clipped_peak" not in true["flags"]:
        family.breakaway.add(peak and peak.at_sensor_nm, peak and peak.u95_sensor_nm, true["breakaway"])
    if true["peak_class"] == "none" and pull is not None:
        family.peakless += 1
        family.false_peaks += peak is not None
    if true["plateau"] is not None and "clipped_plateau" not in true["flags"]:
        family.rotating.add(level and level.at_sensor_nm, level and level.u95_sensor_nm, true["plateau"])


def _match(true: list[dict[str, Any]], found: list[Pull]) -> dict[int, int]:
    if not true or not found:
        return {}
    weight = np.zeros((len(true), len(found)))
    for i, t in enumerate(true):
        for j, pull in enumerate(found):
            overlap = _overlap(t, pull)
            if overlap > OVERLAP * max(min(t["t_end"] - t["t_start"], _length(pull)), 1e-3):
                peak = _breakaway(pull)
                near = peak and t["t_breakaway"] is not None and abs(peak.time_s - t["t_breakaway"]) < NEAR_S
                weight[i, j] = overlap + (5.0 if near else 0.0)
    return {int(i): int(j) for i, j in zip(*linear_sum_assignment(-weight), strict=True) if weight[i, j] > 0}


def _breakaway(pull: Pull) -> Any:
    return pull.breakaway if pull.breakaway and pull.breakaway.distinct_peak else None


def _is_clipped(pull: Pull) -> bool:
    return any(reason.code is Code.CLIPPED for reason in pull.reasons)


def _overlap(true: dict[str, Any], pull: Pull) -> float:
    return float(min(true["t_end"], pull.end_s) - max(true["t_start"], pull.start_s))


def _length(pull: Pull) -> float:
    return max(pull.end_s - pull.start_s, 1e-3)


def families() -> dict[str, Family]:
    """Give an empty account."""
    return defaultdict(Family)


def overall(accounts: dict[str, Family]) -> float:
    """Give the mean over families."""
    return float(np.mean([family.score() for family in accounts.values()]))


def table(accounts: dict[str, Family]) -> str:
    """Give one line per family."""
    lines = []
    for name, f in accounts.items():
        ends = [f"{i}/{n} inside" for i, n in (f.breakaway.covered(), f.rotating.covered())]
        lines.append(f"{name:<12} {f.found}/{f.pulls} pulls, {f.false} false, {', '.join(ends)}, {f.score():.1f}")
    return "\n".join(lines)
