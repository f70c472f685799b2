r"""Record a transducer until it is stopped (Ctrl-C) or for a time, losing nothing.

    heldwheel-log record /dev/ttyUSB0 --transducer transducer.toml --out left-1.csv
    heldwheel-log record COM3 --transducer transducer.toml --seconds 60 --lever 450mm --stud-circle 5x114.3mm \
        --limit rear-axle.limit.toml --place car --held "other side" --side left --gear neutral
    heldwheel-log record --ble C4:12:00:00:00:07 --out left-1.csv
    heldwheel-log record COM3 --transducer transducer.toml --second encoder.toml --second-port COM4
    heldwheel-log record --virtual healthy --out practice.csv

Before the first pull: read the maker's manual; chock and support the car; stand out of the lever's way.
The transducer is described by a TOML file ('heldwheel-log learn' writes one): text lines, binary frames, Bluetooth
notifications or Modbus registers ([modbus]), of torque or of force (unit = "kg", "N", "lbf"). Recording only listens;
a command from the description is sent with --send NAME, and only after you have seen and confirmed it: 'start'
whenever the device is opened, also after a reconnect; 'stop' at the end; any other, such as 'zero', once at the
beginning. The file is saved four times a second: what the progress line calls saved survives the end of the
program, however it ends; a power cut may cost what was saved in the last second. An existing file is never overwritten.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import argparse

    from logger.doors.recording import Source
    from logger.header import Header
    from logger.stream.session import ConfirmedCommand

RESULT_IS_A_FILE = True  # a display that takes nothing is no failure of a recording


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    source = parser.add_argument_group("source")
    source.add_argument("port_given", nargs="?", default="", metavar="PORT", help="serial port: /dev/ttyUSB0, COM3")
    source.add_argument("--port", default="", help="the same, by name")
    source.add_argument("--ble", default="", metavar="ADDRESS", help="Bluetooth identity ('find --ble' shows them)")
    source.add_argument(
        "--virtual", nargs="?", const="healthy", default="", metavar="SCENARIO", help="the virtual transducer"
    )
    source.add_argument("--seed", type=int, default=0, help="of the virtual transducer (default 0)")
    source.add_argument("--speed", type=float, default=1.0, help="of the virtual transducer; inf: at once (default 1)")
    source.add_argument("--transducer", metavar="FILE", help="its description: a file, or the name of a shipped one")
    source.add_argument("--baud", type=int, help="speed of the port, instead of the described one")
    source.add_argument("--send", action="append", default=[], metavar="COMMAND", help="send a described command first")
    source.add_argument("--yes", action="store_true", help="confirm what is to be sent in advance")
    second = parser.add_argument_group("second source, recorded along and aligned in time")
    second.add_argument("--second", metavar="FILE", help="its description: angle, rate, temperature, held-end torque")
    second.add_argument("--second-port", default="", metavar="PORT", help="its serial port")
    second.add_argument("--second-ble", default="", metavar="ADDRESS", help="its Bluetooth identity")
    add_recording_arguments(parser)
    parser.add_argument("--reconnect", type=float, default=600.0, metavar="S", help="wait so long for a lost device")


def add_recording_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the arguments of every command that writes a recording."""
    from logger.doors.lever_limit import add_lever_options, add_typed_limit

    parser.add_argument(
        "--out", type=Path, metavar="FILE", help="the recording, a new file (default: named by the time)"
    )
    parser.add_argument("--seconds", type=float, metavar="S", help="stop after so long (default: Ctrl-C stops)")
    about = parser.add_argument_group("what is tested")
    about.add_argument(
        "--job", metavar="FILE", help="TOML with [job], [axle], [test], [conditions], [lever], [limit] ..."
    )
    about.add_argument("--place", choices=["car", "bench"])
    about.add_argument("--held", choices=["other side", "case", "none"])
    about.add_argument("--gear", choices=["neutral", "in gear"])
    about.add_argument("--side", choices=["left", "right"])
    about.add_argument("--direction", choices=["clockwise", "anticlockwise", "both"], help="seen from outside the car")
    about.add_argument("--note", default="", metavar="TEXT", help="goes into the job's notes")
    add_lever_options(parser)
    add_typed_limit(parser.add_argument_group("limit"))


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.doors.recording import header_from
    from logger.errors import InputError

    source, second = _source(args), _second(args)
    description = source.description
    if description.measures not in ("torque", "force"):
        raise InputError(f"{description.name}: measures {description.measures}; record it along, with --second")
    header = _checked(args, header_from(args, description.transducer, source.identity))
    commands = _confirmed(args, source)
    return _record(args, source, second, header, commands)


def _confirmed(args: argparse.Namespace, source: Source) -> list[ConfirmedCommand]:
    """Show the commands that are asked for, and have each confirmed once."""
    from logger.edges.confirm import confirm_sending
    from logger.errors import InputError
    from logger.stream.session import ConfirmedCommand

    moments: dict[str, Literal["each", "once", "end"]] = {"start": "each", "stop": "end"}
    commands = []
    for name in args.send:
        described = source.description.commands.get(name)
        if described is None:
            known = ", ".join(source.description.commands) or "none"
            raise InputError(f"--send {name}: the description has no such command; it has: {known}")
        confirm_sending(source.identity, described.data(), described.does or name, assume=args.yes)
        commands.append(ConfirmedCommand(described.data(), described.does or name, moments.get(name, "once")))
    return commands


def _checked(args: argparse.Namespace, header: Header) -> Header:
    """Complete the transducer's facts from the register, and say what stands against using it."""
    import msgspec

    from logger.edges.console import note
    from logger.errors import HeldwheelError
    from logger.instruments.register import known_facts

    if args.virtual:
        return header
    try:
        facts, told = known_facts(header.transducer)
    except HeldwheelError as error:  # a damaged register is no reason not to record
        facts, told = header.transducer, [str(error)]
    for line in told:
        note(f"CAUTION: {line}")
    return msgspec.structs.replace(header, transducer=facts)


def _record(
    args: argparse.Namespace, source: Source, second: Source | None, header: Header, commands: list[ConfirmedCommand]
) -> int:
    from logger.doors.recording import record, started_name
    from logger.stream.session import build_session

    session = build_session(source.link, source.description, source.decoder, reconnect_s=args.reconnect)
    for command in commands:
        session.arrange(command)
    out = args.out or started_name()
    if second is None:
        return record(session, header, out, seconds=args.seconds)
    from logger.stream.merge import paired

    other = build_session(second.link, second.description, second.decoder, reconnect_s=args.reconnect)
    pair, header = paired(session, other, second.description, second.identity, header)
    return record(pair, header, out, seconds=args.seconds)


def _second(args: argparse.Namespace) -> Source | None:
    """Build what is recorded along."""
    from logger.doors.recording import described_source
    from logger.errors import InputError

    if not args.second and not args.second_port and not args.second_ble:
        return None
    if not args.second or bool(args.second_port) == bool(args.second_ble):
        raise InputError("a second source needs --second FILE, and --second-port PORT or --second-ble ADDRESS")
    return described_source(args.second, args.second_port or args.second_ble, agreed=args.yes)


def _source(args: argparse.Namespace) -> Source:
    """Build what is to be recorded."""
    from logger.doors.recording import ble_source, described_source, virtual_source
    from logger.errors import InputError
    from logger.links.ports import local_port

    port = args.port or args.port_given
    if bool(port) + bool(args.ble) + bool(args.virtual) != 1:
        raise InputError("say what to record: a PORT, --ble ADDRESS or --virtual; 'heldwheel-log find' lists ports")
    if args.virtual:
        return virtual_source(args.virtual, args.seed, args.speed, args.seconds)
    if args.ble:
        radius = "" if args.fixture else args.radius or ""  # of a device that measures a force: no lever's
        args.radius = None if radius else args.radius
        return ble_source(args.ble, args.transducer, radius, agreed=args.yes)
    local_port(port)
    if not args.transducer:
        raise InputError(
            "a serial transducer needs --transducer FILE, its description; 'heldwheel-log learn' writes one"
        )
    return described_source(args.transducer, port, args.baud, agreed=args.yes)
