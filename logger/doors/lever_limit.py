"""Options that state a lever or a limit: one grammar for every command, of both packages."""

from __future__ import annotations

import argparse
import math
import re
from pathlib import Path
from typing import Any, get_args

from logger.edges.units import canonical_unit, parse_number, parse_quantity, parse_stud_circle
from logger.errors import InputError, QuantityError
from logger.header import FixtureKind, Lever, Limit
from logger.instruments.saved import read_lever, read_limit

FIXTURES = get_args(FixtureKind)
QUANTITIES = ("breakaway", "rotating mean", "rotating maximum")

LEVER_HELP = """\
lever (what is not stated is assumed with a wide interval, and named in the budget):
  --lever 450mm --stud-circle 5x114.3mm            one stud, lever in line with wheel centre and stud
  --lever 450mm±3mm --chord 67.2mm --studs 5       stud circle from the stud-to-stud distance of neighbours
  --fixture couple | "hub centre" | in-line        on the axle line: torque is torque
  --fixture cord --radius 8.3125in                 string and spring scale
  --fixture-file lever-450.toml                     saved once, picked later"""

LIMIT_HELP = """\
limit (from your manual or rule; its source is mandatory):
  --limit rear-axle.limit.toml
  --limit "breakaway >= 20 lbf·ft" --source "workshop manual" --page 4-12
  --limit "rotating mean 15..20 lbf·ft" ...  or  "rotating maximum <= 88 N·m" ..."""


def add_lever_options(parser: argparse.ArgumentParser) -> None:
    """Add the options that describe a lever."""
    group = parser.add_argument_group("lever")
    group.add_argument("--lever", metavar="LENGTH", help="drive axis to the middle of the hand: 450mm, 17.5in±5mm")
    group.add_argument("--fixture-file", metavar="FILE", help="a saved fixture (TOML)")
    group.add_argument("--fixture", choices=FIXTURES, help="how torque gets to the axle; with --lever: one stud")
    group.add_argument("--stud-circle", metavar="CIRCLE", help="5x114.3mm, 4x4.25in, or the diameter alone")
    group.add_argument("--chord", metavar="LENGTH", help="instead: centre to centre of two studs, with --studs")
    group.add_argument("--studs", type=int, metavar="N", help="number of studs")
    group.add_argument("--apart", type=int, metavar="K", help="the two studs are K apart (1: neighbours)")
    group.add_argument(
        "--angle", metavar="ANGLE", help="lever against the line centre-stud; 0deg: pointing straight out"
    )
    group.add_argument("--pull-angle", metavar="ANGLE", help="pull against square to the lever; 0deg: square")
    group.add_argument("--offset", metavar="LENGTH", help="cross-bar: drive square off the wheel's centre")
    group.add_argument(
        "--radius", metavar="LENGTH", help="force at radius (of a Bluetooth device, too), cord drum, weight"
    )
    group.add_argument("--cord", metavar="LENGTH", help="diameter of the cord")
    group.add_argument("--lever-weight", metavar="MASS", help="the lever's own mass, with --centroid")
    group.add_argument("--centroid", metavar="LENGTH", help="its centre of mass from the drive axis")
    group.add_argument(
        "--start-angle", metavar="ANGLE", help="lever at hand-off: 0deg = 3 o'clock from outside, clockwise"
    )


_LEVER_KEYS = {
    "lever": ("length_mm", "length", 1e3),
    "chord": ("chord_mm", "length", 1e3),
    "angle": ("angle_deg", "angle", 180 / math.pi),
    "pull_angle": ("pull_angle_deg", "angle", 180 / math.pi),
    "offset": ("offset_mm", "length", 1e3),
    "radius": ("radius_mm", "length", 1e3),
    "cord": ("cord_mm", "length", 1e3),
    "lever_weight": ("weight_kg", "mass", 1.0),
    "centroid": ("centroid_mm", "length", 1e3),
    "start_angle": ("start_angle_deg", "angle", 180 / math.pi),
}
_WITH_U = {"length_mm", "angle_deg", "pull_angle_deg", "offset_mm", "radius_mm"}


def lever_from(args: argparse.Namespace) -> Lever | None:
    """Give the lever that the options describe, or None where they describe none.

    Raises:
        HeldwheelError: A quantity that cannot be read, a file with faults, options that contradict each other.
    """
    given = {
        name for name in (*_LEVER_KEYS, "stud_circle", "studs", "apart", "fixture") if getattr(args, name) is not None
    }
    if args.fixture_file is not None:
        if given:
            listed = ", ".join(f"--{name.replace('_', '-')}" for name in sorted(given))
            raise InputError(f"--fixture-file and {listed}: give one or the other")
        return read_lever(args.fixture_file)
    if not given:
        return None
    keys: dict[str, Any] = {"fixture": args.fixture or _likely_fixture(given)}
    for name, (key, kind, scale) in _LEVER_KEYS.items():
        text = getattr(args, name)
        if text is not None:
            value, u = _with_uncertainty(text, kind, f"--{name.replace('_', '-')}")
            keys[key] = round(value * scale, 9)
            if u is not None:
                if key not in _WITH_U:
                    raise InputError(f"--{name.replace('_', '-')} takes no uncertainty")
                keys[f"{key}_u"] = u * scale
    if args.stud_circle is not None:
        studs, diameter_m = parse_stud_circle(args.stud_circle)
        keys["stud_circle_mm"] = round(diameter_m * 1e3, 9)
        keys["studs"] = studs
    if args.studs is not None:
        keys["studs"] = args.studs
    keys["chord_apart"] = args.apart
    return Lever(**keys)


def _likely_fixture(given: set[str]) -> str:
    if given & {"stud_circle", "chord"}:
        return "one stud"
    if "offset" in given:
        return "cross-bar"
    raise InputError(
        "the lever alone does not say how the torque gets to the axle: add --stud-circle 5x114.3mm (one stud), or "
        f"--fixture with one of: {', '.join(FIXTURES)}"
    )


def _with_uncertainty(text: str, kind: Any, option: str) -> tuple[float, float | None]:
    """Read ``450mm`` or ``450mm±3mm`` (95 %): value and standard uncertainty."""
    before, mark, after = text.replace("+/-", "±").partition("±")
    try:
        value = parse_quantity(before, kind)
        half = parse_quantity(after, kind) if mark else None
    except QuantityError as error:
        raise InputError(f"{option}: {error}") from None
    if half is not None and half < 0:
        raise InputError(f"{option} {text}: what stands behind ± is how far it may be off: write it without a sign")
    return value, None if half is None else half / 1.96


def add_typed_limit(group: argparse._ArgumentGroup, *, required: bool = False) -> None:
    """Add the options that state a limit."""
    group.add_argument("--limit", metavar="LIMIT", required=required, help='a TOML file, or "breakaway >= 20 lbf·ft"')
    group.add_argument(
        "--source", metavar="TEXT", default="", help="where the limit comes from (mandatory for a typed one)"
    )
    group.add_argument("--page", metavar="TEXT", default="", help="its page or paragraph")


_NUMBER = r"[-+]?[0-9][0-9.,]*"
_ONE = rf"(?P<sign>>=|≥|<=|≤)\s*(?P<bound>{_NUMBER})"
_BAND = rf"(?P<low>{_NUMBER})\s*(?:\.\.|to)\s*(?P<high>{_NUMBER})"
_WORDS = re.compile(rf"(?P<quantity>[a-z ]+?)\s*(?:{_ONE}|{_BAND})\s*(?P<unit>\S.*)?")


def limit_from(args: argparse.Namespace, *, held: Any = None) -> Limit | None:
    """Give the limit that the options state, or None; ``held`` is what is held in the test that a typed one is for.

    Raises:
        HeldwheelError: A file with faults, words that cannot be read.
    """
    if args.limit is None:
        return None
    if Path(args.limit).suffix == ".toml" or Path(args.limit).is_file():
        return read_limit(args.limit)
    return limit_in_words(args.limit, source=args.source, page=args.page, held=held)


def limit_in_words(text: str, *, source: str, page: str = "", held: Any = None) -> Limit:
    """Read a limit such as ``breakaway >= 20 lbf·ft`` or ``rotating mean 15..20 lbf·ft``.

    Raises:
        InputError: It cannot be read.
    """
    found = _WORDS.fullmatch(text.strip()) if len(text) <= 200 else None
    shown = f"limit '{text[:60]}'"
    if found is None:
        raise InputError(
            f'{shown}: write a file name, "breakaway >= 20 lbf·ft", "rotating maximum <= 88 N·m" or '
            '"rotating mean 15..20 lbf·ft"'
        )
    quantity, unit = found["quantity"].strip(), (found["unit"] or "").strip()
    if quantity not in (*QUANTITIES, "ratio"):
        raise InputError(f"{shown}: '{quantity}' is no quantity; there are: {', '.join(QUANTITIES)}, ratio")
    low, high = _ends(found)
    if quantity == "ratio":
        if low is None or high is not None or unit:
            raise InputError(f"{shown}: a ratio (in gear ÷ neutral) has a least value and no unit: ratio >= 2.5")
        return Limit(quantity="rotating maximum", kind="ratio min", unit="1", source=source, page=page, lower=low)
    if not unit:
        raise InputError(f"{shown}: has no unit; write N·m, lbf·ft, lbf·in, kgf·m")
    kind: Any = "band" if low is not None and high is not None else "min" if low is not None else "max"
    return Limit(
        quantity=quantity,  # type: ignore[arg-type]  # checked above
        kind=kind,
        unit=canonical_unit(unit),
        source=source,
        page=page,
        lower=low,
        upper=high,
        held=held,
    )


def _ends(found: re.Match[str]) -> tuple[float | None, float | None]:
    if found["bound"] is None:
        return parse_number(found["low"]), parse_number(found["high"])
    bound = parse_number(found["bound"])
    return (bound, None) if found["sign"] in (">=", "≥") else (None, bound)
