"""Options of every command that reads recordings: zero, repeatability, lever, limit, columns of foreign traces."""

from __future__ import annotations

import argparse
import glob
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from analysis.doors.options import add_lever_options, add_limit_options, lever_from, limit_from, percent_from
from logger.errors import InputError
from logger.header import Zero
from logger.units import canonical_unit, parse_quantity

if TYPE_CHECKING:
    from analysis.pipeline import Asked


def add_reading_options(parser: argparse.ArgumentParser) -> None:
    """Add the options that say how recordings are read; they win over what the files say."""
    parser.add_argument(
        "--zero", metavar="TORQUE", help="reading with the lever hanging or off; 'start': the recording begins so"
    )
    parser.add_argument("--zero-u95", metavar="TORQUE", help="its expanded uncertainty, 95 %%")
    parser.add_argument(
        "--zero-after", metavar="TORQUE", help="the same again after the pulls: it shows how zero moved"
    )
    parser.add_argument("--repeatability", metavar="PERCENT", help="pull-to-pull scatter, used under three pulls")
    parser.add_argument(
        "--drop-outliers", action="store_true", help="exclude outliers from the job's value, by the rule stated"
    )
    group = parser.add_argument_group("kind of test, where the recording does not say")
    group.add_argument("--test-held", choices=("other side", "case", "none"), help="which part was held in this test")
    group.add_argument("--test-gear", choices=("neutral", "in gear"), help="whether a gear was engaged")
    add_lever_options(parser)
    add_limit_options(parser)
    group = parser.add_argument_group("CSV files of others")
    group.add_argument("--time-column", metavar="NAME", help="its name, where it is not time_s")
    group.add_argument("--torque-column", metavar="NAME", help="its name, where it is not torque_<unit>")
    group.add_argument("--torque-unit", metavar="UNIT", help="unit of the torque column, where its name has none")
    group.add_argument("--angle-column", metavar="NAME", help="its name, where it is not angle_deg")


def asked_of(args: argparse.Namespace) -> Asked:
    """Give what these options state."""
    from analysis.pipeline import Asked

    return Asked(
        lever=lever_from(args),
        limit=limit_from(args),
        zero=_zero(args),
        held=args.test_held,
        gear=args.test_gear,
        rule=args.rule,
        guard=args.guard,
        repeatability=percent_from(args.repeatability, "--repeatability"),
        drop_outliers=args.drop_outliers,
        time_column=args.time_column,
        torque_column=args.torque_column,
        angle_column=args.angle_column,
        torque_unit=canonical_unit(args.torque_unit) if args.torque_unit else None,
    )


def recordings_in(words: Sequence[str]) -> list[Path]:
    """Give the recordings that words name: files, folders (their CSV files) and patterns that the shell left alone.

    Raises
    ------
    InputError
        A folder or pattern without recordings. A file that is missing is left to its reader.
    """
    found: list[Path] = []
    for word in words:
        path = Path(word)
        if path.is_dir():
            inside = sorted(p for p in path.iterdir() if p.suffix.lower() == ".csv")
        elif any(c in word for c in "*?[") and not path.exists():
            inside = sorted(Path(name) for name in glob.glob(word, recursive=True))
        else:
            inside = [path]
        if not inside:
            raise InputError(f"{word}: no recordings there")
        found += inside
    return list(dict.fromkeys(found))


def _zero(args: argparse.Namespace) -> Zero | Literal["start"] | None:
    if args.zero is None:
        if args.zero_u95 is not None or args.zero_after is not None:
            raise InputError("--zero-u95 and --zero-after need --zero")
        return None
    if args.zero == "start":
        if args.zero_u95 is not None or args.zero_after is not None:
            raise InputError("--zero start reads the zero from the trace: leave --zero-u95 and --zero-after out")
        return "start"
    u = None if args.zero_u95 is None else parse_quantity(args.zero_u95, "torque") / 1.96
    if u is not None and u < 0:
        raise InputError("--zero-u95 cannot be negative")
    after = None if args.zero_after is None else parse_quantity(args.zero_after, "torque")
    return Zero(value_nm=parse_quantity(args.zero, "torque"), value_nm_u=u, after_nm=after, how="lever hanging")
