"""Options of every command that reads recordings: zero, repeatability, lever, limit, columns of foreign traces."""

from __future__ import annotations

import argparse
import glob
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from analysis.doors.options import add_limit_options, percent_from
from logger.doors.lever_limit import add_lever_options, lever_from, limit_from
from logger.edges.units import parse_number, parse_quantity
from logger.errors import HeldwheelError, InputError
from logger.foreign.choices import read_unit
from logger.foreign.headings import SECONDS
from logger.header import Table, Zero

if TYPE_CHECKING:
    from analysis.pipeline import Asked
    from analysis.verdict.recorded import RecordingReading


TRACES = (".csv", ".tsv", ".xlsx")
"""Endings of files that a folder is searched for."""


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
    group = parser.add_argument_group("tables of others (what is said here is kept in the sidecar)")
    group.add_argument("--time-column", metavar="NAME", help="its heading, or 'column 2'")
    group.add_argument("--time-unit", metavar="UNIT", help="s, ms, us, min, h, d; of times as 10:05 hh:mm or mm:ss")
    group.add_argument("--rate", metavar="HZ", help="of a table that numbers its samples: 500Hz")
    group.add_argument("--torque-column", metavar="NAME", help="torque or force: its heading, or 'column 3'")
    group.add_argument(
        "--torque-unit", metavar="UNIT", help="N·m, kgf ..., or what one count is: '0.0125 N·m', '250 N·m per mV/V'"
    )
    group.add_argument("--angle-column", metavar="NAME", help="its heading, where it is not angle_deg")
    group.add_argument("--decimal", choices=("point", "comma"), help="the decimal mark, where 1,209 may be either")
    group.add_argument("--sheet", metavar="NAME", help="of a workbook")


def _table_of(args: argparse.Namespace) -> Table | None:
    """Give what these options say of foreign tables."""
    rate = None
    if args.rate is not None:
        text = args.rate.strip()
        rate = parse_number(text[:-2] if text.lower().endswith("hz") else text)
        if not 0 < rate <= 1e6:
            raise InputError(f"--rate {args.rate}: write how many readings a second, such as 500Hz")
    if args.torque_unit is not None:
        read_unit(args.torque_unit)
    if args.time_unit is not None and args.time_unit.lower() not in (*SECONDS, "hh:mm", "mm:ss"):
        raise InputError(f"--time-unit {args.time_unit}: use s, ms, us, min, h, d, hh:mm or mm:ss")
    table = Table(
        sheet=args.sheet,
        time=args.time_column,
        time_unit=args.time_unit,
        rate_hz=rate,
        torque=args.torque_column,
        unit=args.torque_unit,
        angle=args.angle_column,
        decimal=args.decimal,
    )
    return None if table == Table() else table


def asked_of(args: argparse.Namespace) -> Asked:
    """Give what these options state."""
    from analysis.pipeline import Asked

    return Asked(
        lever=lever_from(args),
        limit=limit_from(args, held=args.held),
        zero=_zero(args),
        held=args.test_held,
        gear=args.test_gear,
        rule=args.rule,
        guard=args.guard,
        repeatability=percent_from(args.repeatability, "--repeatability"),
        drop_outliers=args.drop_outliers,
        table=_table_of(args),
    )


def keep_answers(readings: Iterable[RecordingReading], asked: Asked) -> None:
    """Keep beside each foreign table what was said about it, so that it need not be said again."""
    from logger.edges.console import note
    from logger.recordings.sidecar import keep_table

    if asked.table is None:
        return
    for reading in readings:
        if reading.ok and reading.state == "foreign" and reading.file != "-":
            try:
                kept = keep_table(reading.file, asked.table)
            except HeldwheelError as error:
                note(f"note: how {reading.file} is read could not be kept: {error}")
                continue
            if kept is not None:
                note(f"note: how {reading.file} is read is kept in {kept.name}")


def recordings_in(words: Sequence[str]) -> list[Path]:
    """Give the recordings that words name: files, folders (the traces in them) and patterns that the shell left alone.

    Raises:
        InputError: A folder or pattern without recordings. A file that is missing is left to its reader.
    """
    found: list[Path] = []
    for word in words:
        path = Path(word)
        if path.is_dir():
            inside = sorted(p for p in path.iterdir() if p.suffix.lower() in TRACES)
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
