"""What a recording's torque says about the pack that its build sheet describes: friction figure, the pinion's drag."""

from __future__ import annotations

import statistics
from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.compare.builds import build_lines, build_name, changes, surfaces
from analysis.to_axle.friction import DRAG_LEFT, drag_check, friction_figure, pinion_at_axle
from analysis.uncertainty.budget import PER_HALF_WIDTH, Budget, Shape, combine
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.verdict.recorded import RecordingReading

ROTATING = "rotating mean"
PINION_ASSUMED = 0.1
"""Half-width of a preload torque whose uncertainty is not stated, relative: a dial torque wrench at the low end of its
scale; common practice, no source."""


def friction_of(reading: RecordingReading) -> tuple[Budget, str] | None:
    """Give the friction figure at rotation and what torque it rests on; None where something is not known."""
    build = reading.build
    if build is None or build.spring_n is None or build.face_outer_mm is None or build.face_inner_mm is None:
        return None
    counted = [n for n in (surfaces(build.left), surfaces(build.right)) if n]
    torque, how = _pack_torque(reading)
    if not counted or torque is None:
        return None
    try:
        figure = friction_figure(
            torque,
            statistics.fmean(counted),
            build.spring_n,
            build.face_outer_mm / 1e3,
            build.face_inner_mm / 1e3,
            load_u_n=build.spring_n_u,
            face_u_m=None if build.face_mm_u is None else build.face_mm_u / 1e3,
        )
    except InputError:
        return None
    return figure, how


def _pack_torque(reading: RecordingReading) -> tuple[Budget | None, str]:
    """Give the torque of one pack while it turns, and what it holds besides."""
    if reading.drag is not None:
        means = [m.budget for m in reading.drag.test.means if m.quantity == ROTATING and m.budget is not None]
        if means:
            return max(means, key=lambda b: b.value), "pack mean, drag taken off"
    held = reading.header.test.held if reading.header is not None else None
    found = [value.budget for value in reading.job if value.budget.quantity == ROTATING]
    if not found or held not in ("other side", "case"):
        return None, ""
    torque = max(found, key=lambda b: b.value)
    if held == "case":  # both packs slip at once
        torque = replace(combine("half of it", [(0.5, torque)]), quantity=f"half of the {ROTATING}")
    return torque, DRAG_LEFT


def pinion_of(reading: RecordingReading) -> Budget | None:
    """Give the pinion's preload torque referred to the axle; None without it or without the ratio."""
    build, ratio = reading.build, reading.header.axle.ratio if reading.header is not None else None
    if build is None or build.pinion_nm is None or ratio is None or ratio <= 0:
        return None
    u = build.pinion_nm_u
    if u is None:
        u = PINION_ASSUMED * build.pinion_nm * PER_HALF_WIDTH[Shape.RECTANGULAR]
    return pinion_at_axle(build.pinion_nm, u, ratio)


def build_words(reading: RecordingReading) -> tuple[str, ...]:
    """Say on which build a recording was made, what changed since the one before, and what follows for friction."""
    build, before = reading.build, reading.build_before
    if build is None:
        return ()
    said = [f"build of {build_name(build)}" + (f": {build.reason}" if build.reason else ""), *build_lines(build)]
    if before is not None:
        said += [f"changed since {build_name(before)}: {text}" for text in changes(before, build)]
    return (*said, *friction_words(reading, friction_of(reading)))


def friction_words(reading: RecordingReading, figure: tuple[Budget, str] | None) -> tuple[str, ...]:
    """Say what follows from the friction figure (of ``friction_of``) and the pinion, a sentence each."""
    said: list[str] = []
    if figure is not None:
        mu, how = figure
        said.append(f"friction figure {mu.value:.3f} ± {mu.u95:.3f} (95 %), from the rotating torque, {how}")
    pinion = pinion_of(reading)
    if pinion is None:
        return tuple(said)
    said.append(
        f"the pinion's preload is {pinion.value:.1f} ± {pinion.u95:.1f} N·m at the axle; half of it is in a torque "
        "with the other wheel held"
    )
    if reading.drag is not None:
        free = [b for (quantity, _), b in reading.drag.test.baseline.items() if quantity == ROTATING]
        if free:
            said.append(drag_check(pinion, max(free, key=lambda b: b.value))[1])
    return tuple(said)
