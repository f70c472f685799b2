"""Builds of an axle: what each holds, what changed, and the torques measured with it.

    heldwheel-read builds season/                       every axle whose sheet lies there
    heldwheel-read builds season/ --tag 43-11 --json

A sheet is <tag>.axle.toml beside the recordings, one per axle tag; the window writes it (Job card, Axle, "The build"),
or a person:

    schema = "heldwheel axle 1"
    tag = "43-11"
    [[builds]]
    built = 2026-05-14T16:30:00+01:00
    reason = "low breakaway"
    spring_n = 1500.0               # load on each pack; spring_n_u: its standard uncertainty
    face_outer_mm = 98.0            # diameters of the friction faces
    face_inner_mm = 70.0
    pinion_nm = 1.2                 # preload torque at the pinion
    oil = "75W-90"
    oil_l = 1.15
    modifier = "modifier B"
    modifier_l = 0.05
    [builds.left]                   # and [builds.right]; from the side gear outwards
    parts = [
        {kind = "friction disc", thickness_mm = 1.98},
        {kind = "steel plate", thickness_mm = 2.0},
        {kind = "shim", thickness_mm = 0.3},
    ]

Kinds: friction disc (turns with the side gear), steel plate (turns with the case), disc spring, shim. A recording
belongs to the last build before it started, found by the axle's tag on its job card.
"""

from __future__ import annotations

import argparse
import json
import os
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.doors.asking import add_reading_options
from analysis.doors.groups import add_quantity, read_runs
from logger.edges.door import Exit
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.compare.builds import BuildChange
    from analysis.compare.runs import Run
    from logger.recordings.axles import AxleFile


ONE_BUILD = (
    "a difference between two builds holds everything that a rebuild changes, wanted or not: one build of each cannot "
    "say which of the changes did it"
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="recordings, folders, or patterns in quotes")
    parser.add_argument("--tag", default="", help="of this axle alone")
    add_quantity(parser, "what stands beside the builds (breakaway)")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel builds 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.compare.builds import of_axle, steps
    from analysis.compare.runs import Quantity
    from logger.edges import console

    quantity = Quantity(args.quantity)
    if quantity not in (Quantity.BREAKAWAY, Quantity.ROTATING):
        raise InputError(f"--quantity {quantity}: beside builds stands breakaway or rotating, which have an interval")
    axles = sheets_in(args.files, args.tag)
    runs, bad = read_runs(args)
    for line in bad:
        console.note(f"skipped: {line}")
    shown: list[dict[str, Any]] = []
    for axle in axles:
        own = [run for run in runs if of_axle(axle, run)]
        found = steps(axle, own, quantity)
        simulated = any(run.simulated for run in own)
        if args.json:
            shown.append({"tag": axle.tag, "simulated": simulated, "builds": [_plain(s, own) for s in found]})
        else:
            _say(axle, found, own, quantity.value, simulated=simulated)
    if args.json:
        body = {"schema": "heldwheel builds 1", "quantity": quantity.value, "axles": shown, "remark": ONE_BUILD}
        console.say(json.dumps(body, ensure_ascii=False))
    return Exit.BAD_INPUT if bad else Exit.OK


def sheets_in(files: list[str], tag: str = "") -> list[AxleFile]:
    """Read the axle sheets in the folders that are named, or in which the named recordings lie.

    Raises:
        InputError: There is none, or none of this tag.
        FileError, DescriptionError: One cannot be read.
    """
    from logger.edges.toml_file import read_toml
    from logger.recordings.axles import ENDING, AxleFile, same_tag, sheets_of

    folders = dict.fromkeys(Path(f) if os.path.isdir(f) else Path(f).parent for f in files)
    found = [read_toml(path, AxleFile) for folder in folders for path in sheets_of(folder)]
    wanted = [axle for axle in found if not tag or same_tag(axle.tag, tag)]
    if not wanted:
        there = ", ".join(axle.tag for axle in found)
        raise InputError(
            f"no sheet of the axle '{tag}' lies there; there are: {there}"
            if tag and there
            else f"no axle's sheet (*{ENDING}) lies in {', '.join(map(str, folders))}; see --help for how one looks"
        )
    return wanted


def _of_build(step: BuildChange, runs: list[Run]) -> list[Run]:
    from analysis.compare.builds import build_name

    return [run for run in runs if run.tags.get("build") == build_name(step.build)]


def _plain(step: BuildChange, runs: list[Run]) -> dict[str, Any]:
    import msgspec

    return {
        "build": msgspec.to_builtins(step.build),
        "changed": list(step.changed),
        "measured": [
            {
                "way": m.way,
                "value_nm": m.value,
                "u95_nm": m.u95,
                "recordings": [{"file": file, "value_nm": value, "u95_nm": u} for file, value, u in m.values],
            }
            for m in step.measured
        ],
        "against_before": [
            {"way": way, "difference_nm": a.difference, "u95_nm": a.u95, "e_n": a.e_n, "shown": not a.agrees}
            for way, a in step.against.items()
        ],
        "friction": [
            {"file": run.file, "figure": run.mu and run.mu[0], "u95": run.mu and run.mu[1], "text": list(run.friction)}
            for run in _of_build(step, runs)
            if run.friction
        ],
    }


def _say(axle: AxleFile, found: list[BuildChange], runs: list[Run], quantity: str, *, simulated: bool) -> None:
    from analysis.compare.builds import build_lines, build_name, measured_words
    from logger.edges.console import say

    say(f"Axle {axle.tag}" + ("  SIMULATED DATA" if simulated else ""))
    for step in found:
        say(f"{build_name(step.build)}  {step.build.reason}".rstrip())
        for line in build_lines(step.build):
            say(f"  {line}")
        for line in step.changed:
            say(f"  changed: {line}")
        for m in step.measured:
            say(f"  {quantity}, {measured_words(m)}")
            if m.way in step.against:
                say(f"    against the build before: {step.against[m.way].words('N·m')}")
        if not step.measured:
            say(f"  no recording of this build has a {quantity} at the axle")
        for run in _of_build(step, runs):
            for line in run.friction:
                say(f"  {run.file}: {line}")
    before = [run.file for run in runs if not run.tags.get("build")]
    if before:
        say(f"made before the first build: {', '.join(before)}")
    if any(step.against for step in found):
        say(ONE_BUILD)
