r"""Check a transducer against a known weight on a known arm, or calibrate a bare amplifier with two loads.

    heldwheel-log weigh --arm 500mm --load 5kg 24.5Nm 24.6Nm 24.5Nm --load 10kg 49.1Nm --latitude 47.2 --height 410m
    heldwheel-log weigh --arm 500mm --load 5kg --load 10kg --port COM3 --transducer transducer.toml --serial G-1042
    heldwheel-log weigh --two-point --arm 500mm --load 0kg 8388112 --load 10kg 8486190 \
        --transducer raw.toml --out calibrated.toml

Fit the arm level, take the zero with the arm on, then hang the weight: the arm's own weight does not count then.
Readings are typed after the mass (zero already subtracted), or measured: with --port you are asked to hang each weight.
Stand clear of the hanging weight. Gravity is taken from latitude and height, or as standard gravity.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.header import TransducerFacts
    from logger.instruments.weigh import DeadWeight, Point


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument(
        "--load", action="append", nargs="+", default=[], metavar=("MASS", "READING"), help="a mass and its readings"
    )
    parser.add_argument(
        "--arm", required=True, metavar="LENGTH", help="centre of the drive to the hanging point: 500mm"
    )
    parser.add_argument("--angle", type=float, default=0.0, metavar="DEG", help="of the arm from level (default 0)")
    parser.add_argument("--latitude", type=float, metavar="DEG", help="where you are, for the local gravity")
    parser.add_argument("--height", default="0m", metavar="LENGTH", help="above the sea (default 0 m)")
    parser.add_argument("--mass-error", default="0g", metavar="MASS", help="limit of error of each mass: 5g")
    parser.add_argument("--arm-error", default="0.5mm", metavar="LENGTH", help="limit of error of the arm (0.5 mm)")
    parser.add_argument("--angle-error", type=float, default=2.0, metavar="DEG", help="limit of error of the angle (2)")
    parser.add_argument("--density", type=float, metavar="KG/M3", help="of the weights, to correct the buoyancy of air")
    parser.add_argument("--resolution", default="", metavar="TORQUE", help="step of the display: 0.1Nm")
    parser.add_argument("--accuracy", type=float, metavar="PERCENT", help="allowed deviation, of reading")
    parser.add_argument(
        "--serial", default="", help="transducer in the register: its accuracy is used, the result kept"
    )
    parser.add_argument("--register", type=Path, metavar="FILE", help="another register than the usual one")
    parser.add_argument("--port", default="", help="measure on this port (or Bluetooth identity) instead of typing")
    parser.add_argument("--transducer", default="", metavar="FILE", help="its description")
    parser.add_argument("--seconds", type=float, default=3.0, help="mean over so long for each load (default 3)")
    parser.add_argument("--yes", action="store_true", help="agree in advance that the transducer is asked")
    parser.add_argument("--two-point", action="store_true", help="calibrate: two loads, readings are raw numbers")
    parser.add_argument("--out", type=Path, metavar="FILE", help="write the calibrated description here")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.edges.units import parse_quantity
    from logger.errors import InputError

    parse_quantity(args.arm, "length")
    if not args.load:
        raise InputError("hang at least one load: --load 5kg 24.5Nm")
    description = _description(args)
    loads = [(_dead_weight(args, words[0]), words[0], words[1:]) for words in args.load]
    if args.two_point:
        return _calibrate(args, description, loads)
    return _check(args, description, loads)


def _description(args: argparse.Namespace) -> Description | None:
    from logger.decoder.description import read_description
    from logger.edges.confirm import agree
    from logger.edges.console import clean
    from logger.errors import InputError
    from logger.links.build import asks

    if args.port and not args.transducer:
        raise InputError("measuring on a port needs --transducer FILE, its description")
    description = read_description(args.transducer) if args.transducer else None
    if args.port and description is not None and asks(description):
        agree(f"{clean(args.port)}: this sends {asks(description)}", assume=args.yes)
    return description


def _dead_weight(args: argparse.Namespace, mass: str) -> DeadWeight | None:
    """Give the load; None for nothing hung (0 kg)."""
    from logger.edges.units import parse_quantity
    from logger.instruments.weigh import dead_weight

    mass_kg = parse_quantity(mass, "mass")
    if mass_kg == 0 and args.two_point:
        return None
    return dead_weight(
        mass_kg,
        parse_quantity(args.arm, "length"),
        angle_deg=args.angle,
        latitude_deg=args.latitude,
        height_m=parse_quantity(args.height, "length"),
        mass_error_kg=parse_quantity(args.mass_error, "mass"),
        arm_error_m=parse_quantity(args.arm_error, "length"),
        angle_error_deg=args.angle_error,
        density=args.density,
    )


def _check(
    args: argparse.Namespace, description: Description | None, loads: list[tuple[DeadWeight | None, str, list[str]]]
) -> int:
    from logger.edges.console import note, say, table
    from logger.edges.units import parse_quantity
    from logger.instruments.register import keep_weighing
    from logger.instruments.weigh import Compliance, allowed_by, check_point, overall

    facts = _facts(args, description)
    resolution_nm = parse_quantity(args.resolution, "torque") if args.resolution else facts.resolution_nm or 0.0
    points = []
    zero_nm = _zero(args, description)
    for load, mass, words in loads:
        if load is None:
            continue
        readings = [parse_quantity(word, "torque") for word in words] or _measured(args, description, mass, zero_nm)
        allowed = allowed_by(facts, load.torque_nm, args.accuracy)
        points.append(check_point(load, readings, resolution_nm=resolution_nm, allowed=allowed))
    table(
        ("torque", "reading", "deviation", "± at 95 %", "allowed", "result"),
        [_row(point) for point in points],
        title="Dead-weight check",
        right=(0, 1, 2, 3, 4),
    )
    result = overall(points)
    say(f"Result: {result}")
    if args.latitude is None:
        note("Standard gravity was used; it can be 0.3 % off where you are. Give --latitude and --height.")
    if args.density is None:
        note("The buoyancy of air is not corrected: it lifts steel by 0.015 %, which this check cannot see.")
    if args.serial:
        note(f"Kept for {facts.serial} in {keep_weighing(points, facts, args.register)}")
    return {Compliance.OUTSIDE: Exit.OUTSIDE, Compliance.TOO_CLOSE: Exit.TOO_CLOSE}.get(result, Exit.OK)


def _row(point: Point) -> tuple[str, ...]:
    allowed = f"{point.allowed_percent:.2f} %" if point.allowed_percent is not None else "not known"
    return (
        f"{point.torque_nm:.3f} N·m",
        f"{point.reading_nm:.3f} N·m",
        f"{point.deviation_percent:+.2f} %",
        f"{point.u95_percent:.2f} %",
        allowed,
        str(point.agreement),
    )


def _facts(args: argparse.Namespace, description: Description | None) -> TransducerFacts:
    """Give what is known about the transducer: from the register, else from its description."""
    from logger.errors import InputError
    from logger.header import TransducerFacts
    from logger.instruments.register import find, read_register

    if args.serial:
        instrument = find(read_register(args.register), args.serial)
        if instrument is None:
            raise InputError(f"no transducer '{args.serial}' is in the register; 'heldwheel-log register add' adds it")
        return instrument.facts
    return description.transducer if description is not None else TransducerFacts()


def _zero(args: argparse.Namespace, description: Description | None) -> float:
    """Measure the zero with the arm fitted; typed readings have it subtracted already."""
    if not args.port or description is None:
        return 0.0
    return _mean(args, description, "Fit the arm level, hang nothing")


def _measured(args: argparse.Namespace, description: Description | None, mass: str, zero_nm: float) -> list[float]:
    from logger.errors import InputError

    if not args.port or description is None:
        raise InputError(f"--load {mass}: type its readings behind it, or measure with --port")
    return [_mean(args, description, f"Hang {mass} and let it come to rest") - zero_nm]


def _mean(args: argparse.Namespace, description: Description, ask: str) -> float:
    """Ask for a load, and give the mean reading in N·m; a simulated device's is never kept for a real one."""
    import sys

    from logger.edges.console import note
    from logger.edges.units import torque_factor
    from logger.errors import InputError
    from logger.instruments.measure import mean_reading

    sys.stderr.write(f"{ask}, then press Enter: ")
    sys.stderr.flush()
    sys.stdin.readline()
    mean = mean_reading(description, args.port, args.seconds, confirmed=True)
    if mean.simulated and args.serial:
        raise InputError("the device says that it is simulated: nothing is kept for a real transducer; omit --serial")
    if mean.simulated:
        note("SIMULATED: the device says so itself")
    return mean.value * torque_factor(description.unit)


def _calibrate(
    args: argparse.Namespace, description: Description | None, loads: list[tuple[DeadWeight | None, str, list[str]]]
) -> int:
    from logger.edges.console import say
    from logger.edges.toml_file import write_toml
    from logger.edges.units import parse_number
    from logger.errors import InputError
    from logger.instruments.measure import calibrated
    from logger.instruments.weigh import two_point, two_point_words

    if len(loads) != 2:
        raise InputError("--two-point needs exactly two --load; the first may be 0kg")
    if args.out is not None and (description is None or args.out.exists()):
        raise InputError("--out needs --transducer, the description to calibrate, and a name that does not exist yet")
    ends = []
    for load, mass, words in loads:
        if words:
            raw = sum(parse_number(word) for word in words) / len(words)
        elif args.port and description is not None:
            raw = _raw(args, description, mass)
        else:
            raise InputError(f"--load {mass}: type its raw readings behind it, or measure with --port")
        ends.append((raw, load.torque_nm if load else 0.0, load.torque_nm_u if load else 0.0))
    (low, low_nm, low_u), (high, high_nm, high_u) = ends
    made = two_point((low, low_nm), (high, high_nm), low_nm_u=low_u, high_nm_u=high_u)
    for told in two_point_words(made):
        say(told)
    if args.out is not None and description is not None:
        write_toml(args.out, calibrated(description, made, f"{loads[0][1]} and {loads[1][1]} at {args.arm}"))
        args.out.chmod(0o444)
        say(f"{args.out} is written, and locked against changes (read only)")
    return Exit.OK


def _raw(args: argparse.Namespace, description: Description, mass: str) -> float:
    from logger.edges.units import torque_factor

    return _mean(args, description, f"Hang {mass} and let it come to rest") / torque_factor(description.unit)
