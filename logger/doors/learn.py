r"""Listen to an unknown transducer, show what it seems to send, and write its description.

    heldwheel-log learn /dev/ttyUSB0                           listen for ten seconds, show what is found
    heldwheel-log learn /dev/ttyUSB0 --out transducer.toml          ... and write the description
    heldwheel-log learn --ble C4:12:00:00:00:07                a Bluetooth device that sends text
    heldwheel-log learn COM3 --poll "D\r"                       a device that answers only when asked

Load the transducer both ways while it listens, best in a vice. On a wheel: engine off and key away, car on stands,
wheels on the floor chocked. Nothing is sent to it, unless you tell it to poll and confirm.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from logger.door import Exit

if TYPE_CHECKING:
    from logger.hear import Place
    from logger.learn import Learned


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("port", nargs="?", default="", help="serial port")
    parser.add_argument("--ble", default="", metavar="ADDRESS", help="Bluetooth identity instead of a port")
    parser.add_argument("--characteristic", default="", metavar="UUID", help="which one notifies, if there are several")
    parser.add_argument(
        "--command", default="", metavar="UUID", help="where a Bluetooth device takes questions (--poll)"
    )
    parser.add_argument("--baud", type=int, help="speed of the port; without it the usual ones are tried")
    parser.add_argument("--seconds", type=float, default=10.0, help="how long to listen (default 10)")
    parser.add_argument("--poll", default="", metavar="REQUEST", help=r"ask again and again: text with \r, \n, \xHH")
    parser.add_argument("--interval", type=float, default=0.1, metavar="S", help="between questions (default 0.1 s)")
    parser.add_argument("--unit", default="", help="unit of the readings, when they do not say it")
    parser.add_argument("--scale", type=float, default=1.0, help="reading = number sent x scale")
    parser.add_argument("--name", default="learned transducer", help="name of the transducer")
    parser.add_argument("--out", type=Path, metavar="FILE", help="write the description here")
    parser.add_argument("--yes", action="store_true", help="confirm what is to be sent in advance")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    import asyncio

    from logger.console import note
    from logger.errors import InputError
    from logger.hear import hear
    from logger.learn import learn
    from logger.units import canonical_unit

    if bool(args.port) == bool(args.ble):
        raise InputError("say what to listen to: a port, or --ble ADDRESS; 'heldwheel-log find' lists both")
    if args.out is not None and args.out.exists():
        raise InputError(f"{args.out}: exists already; choose another name")
    if not 0.5 <= args.seconds <= 600:
        raise InputError("--seconds must lie between 0.5 and 600")
    if args.unit:
        canonical_unit(args.unit)
    request = _request(args)
    note("Listening. Load the transducer now, both ways if you can.")
    heard = asyncio.run(hear(_place(args, request), args.seconds))
    known = {"name": args.name, "unit": args.unit, "scale": args.scale}
    learned = learn(heard.chunks, **known, serial=heard.serial, ble=heard.ble)
    _show(learned)
    return _write(args, learned)


def _request(args: argparse.Namespace) -> bytes:
    """Give the question to ask, if the user confirms it."""
    from logger.confirm import confirm_sending
    from logger.description import command_bytes

    if not args.poll:
        return b""
    request = command_bytes(args.poll)
    confirm_sending(args.ble or args.port, request, f"every {args.interval:g} s", assume=args.yes)
    return request


def _place(args: argparse.Namespace, request: bytes) -> Place:
    from logger.description import BleSettings
    from logger.hear import Place

    settings = BleSettings(characteristic=args.characteristic, command=args.command)
    return Place(args.port, args.ble, args.baud, settings, request, args.interval)


def _show(learned: Learned) -> None:
    from logger.console import clean, say, table

    for line in learned.found:
        say(f"  found      {clean(line)}")
    for line in learned.unknown:
        say(f"  not clear  {clean(line)}")
    if learned.shown:
        say()
        table(("as it came", "as it is read"), learned.shown)


def _write(args: argparse.Namespace, learned: Learned) -> int:
    import msgspec

    from logger.console import note, say
    from logger.description import Poll
    from logger.learn import usable
    from logger.toml_file import format_toml, write_toml

    if learned.description is None:
        note("No description can be written yet; see above.")
        return Exit.NOT_VALID
    description = usable(learned)
    if args.poll:
        description = msgspec.structs.replace(description, poll=Poll(request=args.poll, interval_s=args.interval))
    if args.out is None:
        say(format_toml(description))
        note("Write it with --out FILE, then record with: heldwheel-log record PORT --transducer FILE")
        return Exit.OK
    write_toml(args.out, description)
    say(f"{args.out} is written; check it against the transducer's own display before you rely on it.")
    return Exit.OK
