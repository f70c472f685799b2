"""Practise without an axle: dial in the packs, the drag and your own mistakes, and see the error each one makes.

    heldwheel-log practise                                     every mistake alone, on a sound axle
    heldwheel-log practise --mistake brake=8 --mistake jerk    only these, alone and together
    heldwheel-log practise --rotating 20lbf·ft --oil smooth --unit lbf·ft
    heldwheel-log practise --mistake off-line=45 --out try.csv   write it as a recording, marked simulated
    heldwheel-log practise --scenario stick-slip --out chatter.csv
    heldwheel-log practise --port /tmp/gauge                   stream it on a virtual serial port (Linux, macOS)
    heldwheel-log practise --list                              scenarios and mistakes

Every error compares a plain reading (highest value of the pull; middle of the turning; your zero; your lever factor)
with the truth of the same axle without the mistake: the torque on the wheel about the axle, middle of all pulls.
All of it is a simulation, marked so in every line and file: never file it as a test.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from logger.virtual.lever import LeverModel
    from logger.virtual.physics import SimulatedRun
    from logger.virtual.practice import Dials, PracticeResult, ZeroTaken


GRACE_S = 2.0  # after the last line, for a reader that lags; without any reader nothing more will leave


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    axle = parser.add_argument_group("the axle")
    axle.add_argument("--rotating", metavar="TORQUE", default="45N·m", help="mean of both packs, slipping (45N·m)")
    axle.add_argument("--breakaway", metavar="TORQUE", help="mean of both packs, breaking away (a fifth more)")
    axle.add_argument(
        "--oil",
        choices=["sound", "smooth", "wrong"],
        default="sound",
        help="smooth: no breakaway; wrong: it chatters",
    )
    axle.add_argument("--uneven", type=float, default=1.0, metavar="RATIO", help="one pack over the other (1)")
    axle.add_argument("--wheel-drag", metavar="TORQUE", default="3N·m", help="bearing, seal, pads (3N·m)")
    axle.add_argument("--driveline-drag", metavar="TORQUE", default="8N·m", help="at the case (8N·m); half is felt")
    axle.add_argument("--pulls", type=int, default=3, help="how many (3)")
    axle.add_argument("--scenario", metavar="NAME", help="a ready-made one instead of all this, to record or stream")
    you = parser.add_argument_group("you")
    you.add_argument("--mistake", action="append", default=[], metavar="NAME[=SIZE]", help="may be given again")
    parser.add_argument("--unit", default="N·m", help="of the table and of the lines (N·m)")
    parser.add_argument("--seed", type=int, default=1, help="of tremor and noise (1)")
    parser.add_argument("--out", type=Path, metavar="FILE", help="write a recording, a new file")
    parser.add_argument(
        "--port", nargs="?", const="", metavar="LINK", help="stream on a virtual serial port, linked here"
    )
    parser.add_argument("--speed", type=float, default=1.0, help="of the stream, times real time (1)")
    parser.add_argument("--list", action="store_true", help="list scenarios and mistakes")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.edges.door import Exit
    from logger.edges.units import canonical_unit
    from logger.errors import InputError

    if args.list:
        _list()
        return Exit.OK
    unit = canonical_unit(args.unit)
    mistakes = _mistakes(args.mistake)
    if args.scenario and mistakes:
        raise InputError("--mistake belongs to the dialled axle; omit --scenario")
    if args.out is None and args.port is None:
        if args.scenario:
            raise InputError("say what to do with the scenario: --out FILE writes it, --port streams it")
        _table(_dials(args), mistakes, args.seed, unit)
        return Exit.OK
    from logger.virtual.physics import simulate
    from logger.virtual.practice import LEVER, attempt
    from logger.virtual.scenarios import scenario

    tried = attempt(_dials(args), mistakes)
    zero = tried.zero
    made = simulate(scenario(args.scenario) if args.scenario else tried.scenario, args.seed)
    if args.out is not None:
        identity = f"virtual:{args.scenario or 'practice'}:{args.seed}"
        return _write(made, args.out, identity, unit, None if args.scenario else LEVER, zero)
    return _stream(made, args.port, args.speed, unit)


def _dials(args: argparse.Namespace) -> Dials:
    from logger.edges.units import parse_quantity
    from logger.virtual.practice import Dials

    def torque(text: str) -> float:
        return parse_quantity(text, "torque", "N·m")

    return Dials(
        rotating_nm=torque(args.rotating),
        breakaway_nm=torque(args.breakaway) if args.breakaway else None,
        fluid=args.oil,
        uneven=args.uneven,
        wheel_drag_nm=torque(args.wheel_drag),
        driveline_drag_nm=torque(args.driveline_drag),
        pulls=args.pulls,
    )


def _mistakes(given: list[str]) -> dict[str, float | None]:
    from logger.edges.units import parse_number
    from logger.virtual.practice import MISTAKES

    mistakes: dict[str, float | None] = {}
    for text in given:
        name, _, size = text.partition("=")
        if name not in MISTAKES:
            from logger.errors import InputError

            raise InputError(f"There is no mistake '{name}'. There are: {', '.join(MISTAKES)}.")
        mistakes[name] = parse_number(size) if size else None
    return mistakes


def _list() -> None:
    from logger.edges.console import table
    from logger.virtual.practice import MISTAKES
    from logger.virtual.scenarios import SCENARIOS

    table(("scenario", "what it is"), [(name, make().about) for name, make in SCENARIOS.items()])
    rows = [(name, m.about.format(m.size), m.cure) for name, m in MISTAKES.items()]
    table(("mistake", "what you do", "what to do instead"), rows)


def _table(dials: Dials, mistakes: dict[str, float | None], seed: int, unit: str) -> None:
    """Draw the error of every mistake, or of the given ones alone and together."""
    from logger.edges.console import note, say, table
    from logger.edges.units import torque_factor
    from logger.virtual.physics import simulate
    from logger.virtual.practice import MISTAKES, attempt, plain_reading, truth_of

    factor = torque_factor(unit)
    careful = attempt(dials, {})
    note("Simulating; this takes a few seconds.")
    true_run = simulate(careful.scenario, seed)
    truth = truth_of(true_run)
    rows = [
        ("truth", *_cells(truth, None, factor), ""),
        ("no mistake", *_cells(plain_reading(true_run, careful), truth, factor), "read by eye"),
    ]
    one_each: list[dict[str, float | None]] = [
        {name: size} for name, size in (mistakes or dict.fromkeys(MISTAKES)).items()
    ]
    for chosen in [*one_each, mistakes] if len(mistakes) > 1 else one_each:
        made = attempt(dials, chosen)
        reading = plain_reading(simulate(made.scenario, seed), made)
        (name, size), *others = chosen.items()
        about = MISTAKES[name].about.format(MISTAKES[name].size if size is None else size)
        text = "all of these together" if others else f"{about}; {MISTAKES[name].cure}"
        rows.append(("together" if others else name, *_cells(reading, truth, factor), text))
    headings = (
        "mistake",
        f"breakaway {unit}",
        "error",
        f"rotating {unit}",
        "error",
        "what was done; what to do instead",
    )
    table(headings, rows, title="Torque at the axle, as read (simulated)", right=(1, 2, 3, 4))
    say("What is read is raw torque at the wheel: mean of both packs, half the driveline's drag, the wheel's own drag.")
    note("SIMULATED: never file any of this as a test.")


def _cells(reading: PracticeResult, truth: PracticeResult | None, factor: float) -> tuple[str, str, str, str]:
    cells: list[str] = []
    for name in ("breakaway_nm", "rotating_nm"):
        value = getattr(reading, name)
        right = None if truth is None else getattr(truth, name)
        cells.append("none" if value is None else f"{value / factor:.1f}")
        cells.append("" if value is None or not right else f"{100 * (value / right - 1):+.1f} %")
    return cells[0], cells[1], cells[2], cells[3]


def _write(
    made: SimulatedRun, out: Path, identity: str, unit: str, believed: LeverModel | None, zero: ZeroTaken
) -> int:
    """Play the run through the ordinary decoder and recorder into a file."""
    from logger.decoder.build import build_decoder
    from logger.doors.recording import record
    from logger.header import Header, JobFacts, Test, Zero
    from logger.links.virtual import VirtualLink
    from logger.stream.session import build_session
    from logger.virtual.device import VirtualDevice
    from logger.virtual.practice import FIRST_REST_S, lever_facts, zero_of

    device = VirtualDevice(made, unit=unit)
    description = device.description
    link = VirtualLink(device, identity, float("inf"))
    held, lever = made.scenario.axle.held, made.scenario.lever if believed is None else believed
    header = Header(
        job=JobFacts(notes="practice, simulated"),
        transducer=description.transducer,
        test=Test(place="car", held=held, gear="neutral", purpose="drag" if held == "none" else "practice"),
        lever=lever_facts(lever),
        zero=Zero(value_nm=zero_of(made, zero), how="lever off") if made.duration_s > 2 * FIRST_REST_S else None,
    )
    return record(build_session(link, description, build_decoder(description)), header, out)


def _stream(made: SimulatedRun, link: str, speed: float, unit: str) -> int:
    """Stream the run on a virtual port until it ends or Ctrl-C; its description is written beside the link."""
    import time
    from dataclasses import replace

    from logger.edges.console import note, say
    from logger.edges.door import Exit
    from logger.edges.toml_file import write_toml
    from logger.errors import InputError
    from logger.virtual.device import VirtualDevice
    from logger.virtual.port import VirtualPort

    path = Path(link) if link else None
    if path is not None and path.exists():  # a link that a killed program left behind points nowhere
        raise InputError(f"{path}: exists already; choose another name for the link")
    if not 0 < speed <= 1000:
        raise InputError("--speed must be above 0 and at most 1000")
    device = VirtualDevice(replace(made, angle_deg=None), unit=unit)
    described = "virtual-text"
    if path is not None:
        described = f"{path}.toml"
        write_toml(Path(described), device.description)
    with VirtualPort(device, link=path, speed=speed) as port:
        say(port.path)
        note(f"SIMULATED. Record it with: heldwheel-log record {port.path} --transducer {described}")
        note(f"It plays for {made.duration_s / speed:.0f} s; Ctrl-C stops it.")
        end_s = time.monotonic() + made.duration_s / speed + GRACE_S
        while not port.finished.wait(0.2) and time.monotonic() < end_s:
            pass
    return Exit.OK
