"""Torque against a number: shim thickness, distance, cycles, temperature; run-in; a chart per axle over time.

    heldwheel-read trend builds/ --against shim_mm --for 60N·m          which shim for 60 N·m
    heldwheel-read trend season/ --against distance_km --at 1500        what to expect at 1500 km
    heldwheel-read trend run-in/ --against cycles --run-in              has it settled
    heldwheel-read trend season/ --chart --baseline 6                   a chart over time, one axle

Tags are the recordings' own, and the facts of their headers: shim_mm, distance_km, oil_temperature_c ...
"""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING, Any

from analysis.doors.asking import add_reading_options
from analysis.doors.groups import add_quantity, read_runs
from logger.edges.door import Exit

if TYPE_CHECKING:
    from analysis.compare.runs import Quantity, Run


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="recordings, folders, or patterns in quotes")
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("--against", metavar="TAG", help="numeric tag: shim_mm, distance_km, cycles ...")
    what.add_argument("--chart", action="store_true", help="a weighted average over time with limits")
    add_quantity(parser, "what is followed (breakaway)")
    parser.add_argument("--fill", default="fill", metavar="TAG", help="tag that names the fill or build (fill)")
    parser.add_argument("--at", type=float, metavar="X", help="predict at this value of the tag")
    parser.add_argument("--for", dest="wanted", metavar="TORQUE", help="which value of the tag gives this: 60N·m")
    parser.add_argument("--run-in", action="store_true", help="judge whether the pack has settled")
    parser.add_argument("--baseline", type=int, default=6, help="good jobs at the start, for --chart (default 6)")
    parser.add_argument(
        "--per",
        nargs="+",
        default=["vehicle", "axle", "side"],
        metavar="TAG",
        help="tags that tell axles apart (--chart)",
    )
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel trend 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.compare.runs import Quantity
    from logger.edges import console

    runs, bad = read_runs(args)
    quantity = Quantity(args.quantity)
    said, lines = _chart(args, runs, quantity) if args.chart else _trend(args, runs, quantity)
    for line in bad:
        console.note(f"skipped: {line}")
    if args.json:
        simulated = any(run.simulated for run in runs)
        body = {
            "schema": "heldwheel trend 1",
            "quantity": quantity.value,
            "unit": quantity.unit,
            "simulated": simulated,
        }
        body |= said
        console.say(json.dumps(body, ensure_ascii=False))
    else:
        if any(run.simulated for run in runs):
            console.say("SIMULATED DATA")
        for line in lines:
            console.say(line)
    return Exit.BAD_INPUT if bad else Exit.OK


def _trend(args: argparse.Namespace, runs: list[Run], quantity: Quantity) -> tuple[dict[str, Any], list[str]]:
    from analysis.compare.series import points_against
    from analysis.compare.trend import fit_line, one_of, run_in, run_in_along, settled_since

    found = points_against(runs, quantity, args.against, unit=args.fill)
    x, y = found.x, found.y
    u = "" if quantity.unit == "1" else f" {quantity.unit}"
    said: dict[str, Any] = {"against": args.against, "points": [list(pair) for pair in zip(x, y, strict=True)]}
    lines = [f"{len(x)} fills, {quantity.value} against {args.against}"]
    if args.run_in:
        settled, since = run_in(x, y), settled_since(run_in_along(x, y))
        said["run_in"] = {
            "state": settled.state.value,
            "percent_per_ten": [settled.percent_per_ten, settled.low, settled.high],
            "since": None if since is None else x[since],
        }
        when = "" if since is None else f" since {one_of(args.against)} {x[since]:g}"
        lines.append(f"{settled.state.value}{when}: {settled.text}")
        if settled.decay is not None:
            d = settled.decay
            said["run_in"]["final"] = d.final
            lines.append(f"towards {d.final:.3g}{u}, {d.drop:+.3g}{u} to go from the start, scale {d.scale:.3g} cycles")
        return said, [*lines, *found.warnings, *found.remarks]
    line = fit_line(x, y)
    said |= {
        "slope": [line.slope, line.slope_low, line.slope_high],
        "intercept": line.intercept,
        "s": line.s,
        "p": line.p,
    }
    lines.append("a trend is shown" if not line.slope_low <= 0 <= line.slope_high else "no trend is shown")
    lines.append(
        f"{line.slope:+.4g}{u} per unit, 95 % {line.slope_low:+.4g} to {line.slope_high:+.4g}; p {line.p:.2g}; "
        f"scatter about the line {line.s:.2g}{u}"
    )
    _predict(args, line, said, lines, u)
    return said, [*lines, *found.warnings, *found.remarks]


def _predict(args: argparse.Namespace, line: Any, said: dict[str, Any], lines: list[str], u: str) -> None:
    from analysis.compare.trend import INVERSE_LEAVES_OUT
    from logger.edges.units import parse_quantity

    if args.at is not None:
        at = line.predict(args.at)
        said["prediction"] = {
            "x": at.x,
            "y": at.y,
            "line": [at.line_low, at.line_high],
            "next": [at.next_low, at.next_high],
        }
        beyond = "; OUTSIDE the range tested" if at.extrapolated else ""
        lines.append(
            f"at {args.at:g}: {at.y:.4g}{u}; the line {at.line_low:.4g} to {at.line_high:.4g}, "
            f"the next single one {at.next_low:.4g} to {at.next_high:.4g} (95 %){beyond}"
        )
    if args.wanted is not None:
        wanted = parse_quantity(args.wanted, "torque", "N·m") if u == " N·m" else float(args.wanted)
        found = line.inverse(wanted)
        bounded = abs(found.low) != float("inf")
        said["inverse"] = {
            "y": wanted,
            "x": found.x if bounded else None,
            "interval": [found.low, found.high] if bounded else None,
        }
        shown = f"{found.x:.3g}, 95 % {found.low:.3g} to {found.high:.3g}" if bounded else "cannot be determined"
        lines.append(f"for {wanted:g}{u}: {args.against} {shown}" + (f"; {found.text}" if found.text else ""))
        if bounded:
            lines.append(f"the interval {INVERSE_LEAVES_OUT}")


def _chart(args: argparse.Namespace, runs: list[Run], quantity: Quantity) -> tuple[dict[str, Any], list[str]]:
    """Chart each axle by itself, in order of date."""
    from analysis.compare.series import axles_in_order

    said: dict[str, Any] = {"charts": []}
    lines: list[str] = []
    for name, known in axles_in_order(runs, quantity, args.per).items():
        chart, shown = _one_chart(name, known, args.baseline, quantity)
        said["charts"].append(chart)
        lines += shown
    return said, lines


def _one_chart(
    name: str, known: list[tuple[Run, float]], baseline: int, quantity: Quantity
) -> tuple[dict[str, Any], list[str]]:
    from analysis.compare.control import verdict, watch

    chart = watch([value for _, value in known], baseline=baseline)
    u = "" if quantity.unit == "1" else f" {quantity.unit}"
    shows, text = verdict(chart)
    lines = [
        f"{name}: {text}",
        f"{name}: reference level {chart.target:.4g}{u}, scatter {chart.sd:.2g}{u}, from the first {baseline} jobs",
    ]
    for i, (run, value) in enumerate(known):
        mark = "  OUT OF BAND" if i in chart.alarms else ""
        when = run.tags.get("date", "")
        lines.append(
            f"{when} {run.file}: {value:.4g}{u}, average {chart.average[i]:.4g}, "
            f"band {chart.low[i]:.4g} to {chart.high[i]:.4g}{mark}"
        )
    said = {
        "axle": name,
        "files": [run.file for run, _ in known],
        "values": [value for _, value in known],
        "average": chart.average.tolist(),
        "low": chart.low.tolist(),
        "high": chart.high.tolist(),
        "alarms": list(chart.alarms),
        "shows": shows.value,
    }
    return said, lines
