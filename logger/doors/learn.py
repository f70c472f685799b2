r"""Listen to an unknown transducer, show what it seems to send, and write its description.

    heldwheel-log learn /dev/ttyUSB0                           listen for ten seconds, show what is found
    heldwheel-log learn /dev/ttyUSB0 --out transducer.toml     ... and write the description
    heldwheel-log learn /dev/ttyUSB0 --field 2                 two numbers could be the torque: the second is it
    heldwheel-log learn --ble C4:12:00:00:00:07                a Bluetooth device: all it notifies of is listened to
    heldwheel-log learn --ble C4:12:00:00:00:07 --start "hex: 03 01" --command UUID     one that must be started
    heldwheel-log learn COM3 --poll "D\r"                       a device that answers only when asked
    heldwheel-log learn --capture bytes.bin                    bytes that a terminal program has kept

Load the transducer both ways while it listens, best in a vice: the number that moves with the lever is the torque.
On a wheel: engine off and key away, car on stands, wheels on the floor chocked. Nothing is sent to it, unless you tell
it to and confirm. What the bytes leave open is asked for; until it is said nothing is written.
Exit codes: 0 a description was made, 2 bad input or no connection, 4 something must be said first (see what is asked).
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    from logger.learn.hear import Heard, Place
    from logger.learn.learn import Learned, Wanted

ANSWERS = {
    "unit": "--unit UNIT",
    "scale": "--scale FACTOR",
    "field": "--field NAME",
    "decimal": "--decimal ',' or '.'",
    "thousands": "--thousands ',' or none",
    "lines": "--lines BEGINNING",
    "template": "--template TEMPLATE",
    "characteristic": "--characteristic UUID",
    "both ways": "load it the other way too, and listen again",
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("port", nargs="?", default="", help="serial port")
    parser.add_argument("--ble", default="", metavar="ADDRESS", help="Bluetooth identity instead of a port")
    parser.add_argument("--capture", type=Path, metavar="FILE", help="bytes kept in a file, instead of a port")
    parser.add_argument("--baud", type=int, help="speed of the port; without it the usual ones are tried")
    parser.add_argument("--seconds", type=float, default=10.0, help="how long to listen (default 10)")
    sends = parser.add_argument_group("for a device that does not send by itself; shown and confirmed first")
    sends.add_argument("--poll", default="", metavar="REQUEST", help=r"ask again and again: text with \r, \n, \xHH")
    sends.add_argument("--interval", type=float, default=0.1, metavar="S", help="between questions (default 0.1 s)")
    sends.add_argument("--start", default="", metavar="COMMAND", help="send once to a Bluetooth device: it begins")
    sends.add_argument("--command", default="", metavar="UUID", help="the characteristic that takes what is sent")
    sends.add_argument("--yes", action="store_true", help="confirm what is to be sent in advance")
    known = parser.add_argument_group("what you know and the bytes do not say")
    known.add_argument("--field", default="", metavar="NAME", help="which number is the torque: its name, or 1, 2 ...")
    known.add_argument("--unit", default="", help="unit of the readings")
    known.add_argument("--scale", type=float, help="reading = number sent x scale")
    known.add_argument("--decimal", default="", choices=[",", "."], help="the decimal mark")
    known.add_argument("--thousands", choices=[",", ".", "'", " ", "none"], help="what sets thousands apart")
    known.add_argument("--lines", default="", metavar="BEGINNING", help="only lines that begin so hold the torque")
    known.add_argument("--template", default="", help="the layout of a line: '{torque:8}{temperature:6}'")
    known.add_argument("--characteristic", default="", metavar="UUID", help="the one that delivers the torque")
    parser.add_argument("--name", default="learned transducer", help="name of the transducer")
    parser.add_argument("--out", type=Path, metavar="FILE", help="write the description here")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.edges.console import note
    from logger.edges.units import reading_unit
    from logger.errors import InputError
    from logger.learn.radio import learn_heard

    if bool(args.port) + bool(args.ble) + (args.capture is not None) != 1:
        raise InputError(
            "say what to listen to: a port, --ble ADDRESS or --capture FILE; 'heldwheel-log find' lists them"
        )
    if args.out is not None and args.out.exists():
        raise InputError(f"{args.out}: exists already; choose another name")
    if not 0.5 <= args.seconds <= 600:
        raise InputError("--seconds must lie between 0.5 and 600")
    if args.unit:
        reading_unit(args.unit)
    heard = _heard(args)
    learned = learn_heard(heard, name=args.name, wanted=_wanted(args))
    _show(learned)
    if learned.description is None:
        note(_what_next(learned))
        return Exit.NOT_VALID
    return _write(args, learned)


def _wanted(args: argparse.Namespace) -> Wanted:
    from logger.learn.learn import Wanted

    return Wanted(args.unit, args.scale, args.field, args.decimal, args.thousands, args.lines, args.template)


def _heard(args: argparse.Namespace) -> Heard:
    import asyncio

    from logger.edges.console import note
    from logger.learn.hear import hear, heard_in

    if args.capture is not None:
        return heard_in(args.capture)
    place = _place(args)
    note("Listening. Load the transducer now, both ways if you can.")
    return asyncio.run(hear(place, args.seconds))


def _place(args: argparse.Namespace) -> Place:
    """Give where to listen, with what the user has confirmed is sent."""
    from logger.decoder.description import BleSettings, command_bytes
    from logger.edges.confirm import confirm_sending
    from logger.errors import InputError
    from logger.learn.hear import Place

    sent = {}
    for name, how in (("poll", f"every {args.interval:g} s"), ("start", "once")):
        text = getattr(args, name)
        sent[name] = command_bytes(text) if text else b""
        if text:
            confirm_sending(args.ble or args.port, sent[name], how, assume=args.yes)
    if sent["start"] and not args.ble:
        raise InputError("--start is for Bluetooth devices (--ble); a port is asked with --poll")
    settings = BleSettings(characteristic=args.characteristic, command=args.command)
    return Place(args.port, args.ble, args.baud, settings, sent["poll"], args.interval, sent["start"])


def _show(learned: Learned) -> None:
    from logger.edges.console import clean, say, table

    for line in learned.found:
        say(f"  found      {clean(line, 300)}")
    for line in learned.unknown:
        say(f"  not clear  {clean(line, 300)}")
    if learned.choices and len(learned.choices) > 1:
        rows = [
            (
                str(c.number),
                c.name,
                c.unit or "–",
                f"{c.values.min():g}",
                f"{c.values.max():g}",
                _taken(learned, c.name),
            )
            for c in learned.choices
        ]
        say()
        table(("number", "--field", "unit", "from", "to", ""), rows, title="Which is the torque?", right=(0, 3, 4))
    if learned.shown:
        say()
        table(("as it came", "as it is read"), learned.shown)


def _taken(learned: Learned, name: str) -> str:
    return "taken" if name == learned.chosen else ""


def _what_next(learned: Learned) -> str:
    needed = [ANSWERS.get(one, one) for one in dict.fromkeys(learned.missing)]
    return "No description can be written yet; " + (f"needed: {'; '.join(needed)}." if needed else "see above.")


def _write(args: argparse.Namespace, learned: Learned) -> int:
    import msgspec

    from logger.decoder.description import Command, Poll
    from logger.edges.console import note, say
    from logger.edges.toml_file import format_toml, write_toml
    from logger.learn.learn import usable

    description = usable(learned)
    if args.poll:
        description = msgspec.structs.replace(description, poll=Poll(request=args.poll, interval_s=args.interval))
    if args.start:
        start = Command(send=args.start, does="begins to send readings")
        description = msgspec.structs.replace(description, commands={"start": start})
    where = f"--ble {args.ble}" if args.ble else args.port or "PORT"
    send = " --send start" if args.start else ""
    if args.out is None:
        say(about(learned) + format_toml(description))
        note(f"Write it with --out FILE, then record with: heldwheel-log record {where} --transducer FILE{send}")
        return Exit.OK
    write_toml(args.out, description, about(learned))
    say(f"{args.out} is written; check it against the transducer's own display before you rely on it.")
    say(f"Record with: heldwheel-log record {where} --transducer {args.out}{send}")
    return Exit.OK


def about(learned: Learned) -> str:
    """Give comment lines for whoever reads the description: what was found and what was not, and an example."""
    from logger.edges.console import clean

    lines = [f"# Learned: {clean(line, 200)}" for line in learned.found]
    lines += [f"# Not clear: {clean(line, 200)}" for line in learned.unknown]
    if learned.shown:
        raw, read = learned.shown[len(learned.shown) // 2]
        lines.append(f"# Example: {clean(raw, 100)}  ->  {clean(read, 100)}")
    lines.append("# What each key means: heldwheel-log describe keys")
    return "\n".join(lines) + "\n\n"
