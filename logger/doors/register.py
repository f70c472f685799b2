r"""Keep transducers with their certificates and due dates.

    heldwheel-log register                                     list them, and what stands against each
    heldwheel-log register add --serial G-1042 --name "workshop transducer" --certificate 2026/118 \
        --date 2026-02-01 --due 2027-02-01 --capacity 200Nm --accuracy 1.0
    heldwheel-log register lock G-1042 "dropped"               not to be used until checked again
    heldwheel-log register unlock G-1042
    heldwheel-log register remove G-1042

The register is instruments.toml in the user's configuration folder; --file names another one.
"""

from __future__ import annotations

import argparse
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    from logger.instruments.register import Instruments, RegisteredTransducer


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("action", nargs="?", default="list", choices=["list", "add", "lock", "unlock", "remove"])
    parser.add_argument("which", nargs="?", default="", metavar="SERIAL", help="which one, for lock, unlock, remove")
    parser.add_argument("why", nargs="?", default="", metavar="REASON", help="why it is locked")
    parser.add_argument("--serial", default="", help="serial number: identifies it")
    parser.add_argument("--name", default="", help="what you call it")
    parser.add_argument("--certificate", default="", metavar="NUMBER", help="number of its certificate")
    parser.add_argument("--date", type=_day, metavar="YYYY-MM-DD", help="date of the certificate")
    parser.add_argument("--due", type=_day, metavar="YYYY-MM-DD", help="when it expires")
    parser.add_argument("--capacity", metavar="TORQUE", help="full scale with its unit: 200Nm, 150lbf·ft")
    parser.add_argument("--accuracy", type=float, metavar="PERCENT", help="of reading, at 95 %%")
    parser.add_argument("--description", default="", metavar="FILE", help="its description file")
    parser.add_argument("--file", type=Path, help="another register than the usual one")


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"'{text}' is no date such as 2026-02-01") from None


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.edges.console import say
    from logger.errors import InputError
    from logger.instruments.register import change_register, put, read_register, remove

    if args.action == "list":
        return _show(read_register(args.file))
    if args.action != "add" and not args.which:
        raise InputError(f"say which one: heldwheel-log register {args.action} SERIAL")
    if args.action == "add":
        path = change_register(lambda found: put(found, _added(args, found)), args.file)
        told = f"{args.serial} is in the register"
    elif args.action == "remove":
        path = change_register(lambda found: remove(found, args.which), args.file)
        told = f"{args.which} is removed"
    else:
        path = change_register(lambda found: _locked(args, found), args.file)
        told = f"{args.which} is {args.action}ed"
    say(f"{told} ({path})")
    return Exit.OK


def _added(args: argparse.Namespace, instruments: Instruments) -> RegisteredTransducer:
    from logger.edges.units import parse_quantity
    from logger.header import TransducerFacts
    from logger.instruments.register import RegisteredTransducer, find

    facts = TransducerFacts(
        serial=args.serial,
        name=args.name,
        certificate=args.certificate,
        certificate_date=args.date,
        certificate_due=args.due,
        capacity_nm=parse_quantity(args.capacity, "torque") if args.capacity else None,
        accuracy_percent_of_reading=args.accuracy,
        description=args.description,
    )
    before = find(instruments, args.serial)
    return RegisteredTransducer(facts=facts, weighings=before.weighings if before else ())


def _locked(args: argparse.Namespace, instruments: Instruments) -> Instruments:
    import msgspec

    from logger.errors import InputError
    from logger.instruments.register import find, put

    instrument = find(instruments, args.which)
    if instrument is None:
        raise InputError(f"no transducer '{args.which}' is in the register")
    why = (args.why or "no reason given") if args.action == "lock" else ""
    return put(instruments, msgspec.structs.replace(instrument, locked=why))


def _show(instruments: Instruments) -> int:
    from logger.edges.console import say, table
    from logger.instruments.register import warnings

    if not instruments.instruments:
        say("The register is empty. 'heldwheel-log register add --serial ... --due ...' adds a transducer.")
        return Exit.OK
    today = date.today()  # noqa: DTZ011 - a certificate ends with the user's own day
    rows = [
        (
            one.facts.serial,
            one.facts.name,
            str(one.facts.certificate_due or "not known"),
            one.weighings[-1].agreement if one.weighings else "never",
            "; ".join(warnings(one, today)) or "none",
        )
        for one in instruments.instruments
    ]
    table(("serial", "name", "certificate ends", "dead weight", "against using it"), rows, title="Transducers")
    return Exit.OK
