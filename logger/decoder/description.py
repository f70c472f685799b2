"""A transducer's description: the TOML file that says how its bytes become readings.

::

    name = "gauge with text output"
    link = "serial"                        # where its bytes come from

    [transducer]                           # what its numbers are worth: goes into every recording's header
    unit = "N·m"
    sign = "signed"                        # signed | reversed (clockwise shows negative) | none (shows magnitudes)
    capacity_nm = 200

    [serial]
    baud = 115200

    [lines]                                # exactly one of lines, frame, notification, poll, modbus
    template = "{counter},{torque} {unit},{status}"
    terminator = "CRLF"

A file from somebody else is hostile until checked: no regular expression is taken from it, texts and numbers are
bounded, commands it carries are shown and confirmed once before any is sent.

Offered: ``Description`` and its parts, ``read_description``, ``shipped``.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any, Literal

import msgspec

from logger.decoder.layouts import Frame, Packet, Register, frame_faults, layout_faults, register_faults
from logger.decoder.template import LineFormat, compile_template, template_faults
from logger.edges.toml_file import read_toml
from logger.edges.units import is_force, reading_unit
from logger.errors import InputError, QuantityError
from logger.header import Record, TransducerFacts

Seconds = Annotated[float, msgspec.Meta(gt=0, le=3600)]


class SerialSettings(Record, frozen=True, kw_only=True):
    """How the port is set."""

    baud: Annotated[int, msgspec.Meta(ge=50, le=4_000_000)] = 9600  # speed
    bits: Literal[7, 8] = 8  # data bits
    parity: Literal["none", "even", "odd"] = "none"  # as the device's manual says
    stop_bits: Literal[1, 2] = 1  # as the device's manual says
    flow: Literal["none", "xon/xoff", "rts/cts"] = "none"  # who may stop the stream
    dtr: bool | None = None  # None: as the system sets it
    rts: bool | None = None  # null: as the system sets it


class BleSettings(Record, frozen=True, kw_only=True):
    """Where on a Bluetooth device its readings are. Without a description the open standards are looked for."""

    service: str = ""  # UUID; empty: any
    characteristic: str = ""  # UUID of the notifying characteristic
    command: str = ""  # UUID of the characteristic that commands are written to
    command_with_response: bool = True  # whether the device confirms what is written
    radius_mm: Annotated[float, msgspec.Meta(gt=0)] | None = None  # a force characteristic at this radius


class Poll(Record, frozen=True, kw_only=True):
    """A device that answers only when asked; its answers are decoded as ``lines`` or ``frame``."""

    request: str  # what is sent: text with \\r, \\n, \\xHH escapes, or "hex: 01 04 00 00"
    interval_s: Seconds = 0.1  # from one question to the next
    timeout_s: Seconds = 1.0  # so long an answer is waited for


class Modbus(Record, frozen=True, kw_only=True):
    """Registers polled over Modbus RTU."""

    device: Annotated[int, msgspec.Meta(ge=1, le=247)] = 1  # its number on the line
    registers: tuple[Register, ...] = ()  # what is read, torque first
    interval_s: Seconds = 0.05  # from one question to the next
    timeout_s: Seconds = 0.5  # so long an answer is waited for


class Command(Record, frozen=True, kw_only=True):
    """Bytes that make the device do something. None is ever sent before the user has seen and confirmed it."""

    send: str  # text with \\r, \\n, \\xHH escapes, or "hex: 02 53 03"
    does: str = ""  # one line for the user

    def data(self) -> bytes:
        """Give the bytes to send."""
        return command_bytes(self.send)


class Description(Record, frozen=True, kw_only=True):
    """A transducer: its link, how its bytes are laid out, what it can be told, what its numbers are worth.

    Attributes:
        lines, frame, notification, modbus: How readings are laid out: exactly one.
        poll: The device must be asked for each reading.
        commands: ``start``, ``stop``, ``zero``, ``rate`` and whatever else the device understands.
        measures: What the main reading is. A second source (``record --second``) may measure ``angle``, ``rate``,
            ``temperature``; its layout then has a field of that name where a torque transducer has ``torque``.
        simulated_mark: Text that appears in the bytes of a simulated device only.
        silence_s: So long without a byte is told as silence.
    """

    name: str  # what it is called
    schema: Literal["heldwheel transducer 1"] = "heldwheel transducer 1"  # which program wrote it
    link: Literal["serial", "ble", "modbus", "replay", "virtual"] = "serial"  # where its bytes come from
    notes: str = ""  # for whoever reads the file
    measures: Literal["torque", "angle", "rate", "temperature", "force"] = "torque"
    transducer: TransducerFacts = msgspec.field(default_factory=TransducerFacts)  # what its numbers are worth
    serial: SerialSettings | None = None  # how the port is set
    ble: BleSettings | None = None  # where on the device its readings are
    lines: LineFormat | None = None
    frame: Frame | None = None
    notification: Packet | None = None
    poll: Poll | None = None
    modbus: Modbus | None = None
    commands: dict[str, Command] = msgspec.field(default_factory=dict)
    simulated_mark: Annotated[str, msgspec.Meta(max_length=40)] = ""
    silence_s: Seconds = 3.0

    @property
    def unit(self) -> str:
        """The main column's unit."""
        if self.measures not in ("torque", "force"):
            return self.transducer.unit
        return reading_unit(self.transducer.unit or "N·m")

    @property
    def has_counter(self) -> bool:
        """Whether samples come with the device's own counter."""
        if self.lines is not None:
            return any(part.kind == "counter" for part in compile_template(self.lines.template))
        packet = self.frame.packet if self.frame is not None else self.notification
        return packet is not None and packet.counter is not None

    def __post_init__(self) -> None:
        faults = description_faults(self)
        if faults:
            raise ValueError("; ".join(faults))


def as_torque(description: Description) -> Description:
    """Give the same layouts with the main field named ``torque``, which is what every decoder calls it."""
    if description.measures == "torque":
        return description
    main = description.measures
    replace = msgspec.structs.replace
    lines, packet, modbus = description.lines, description.notification, description.modbus
    changed: dict[str, object] = {}
    if lines is not None:
        template = lines.template.replace(f"{{{main}}}", "{torque}").replace(f"{{{main}:", "{torque:")
        fields = {("torque" if name == main else name): field for name, field in lines.fields.items()}
        # A force names its unit as a torque does; an angle or a temperature does not.
        template = template if main == "force" else template.replace("{unit}", "{skip}")
        changed["lines"] = replace(lines, template=template, fields=fields)
    if packet is not None:
        changed["notification"] = _main_field(packet, main)
    if description.frame is not None:
        changed["frame"] = replace(description.frame, packet=_main_field(description.frame.packet, main))
    if modbus is not None:
        named = [replace(r, name="torque") if r.name == main else r for r in modbus.registers]
        changed["modbus"] = replace(modbus, registers=tuple(named))
    facts = description.transducer if main == "force" else replace(description.transducer, unit="")
    return replace(description, measures="torque", transducer=facts, **changed)


def _main_field(packet: Packet, main: str) -> Packet:
    fields = [msgspec.structs.replace(f, name="torque") if f.name == main else f for f in packet.fields]
    return msgspec.structs.replace(packet, fields=tuple(fields))


def description_faults(description: Description) -> list[str]:
    """Give what contradicts itself between the keys of a description; one line for the user each."""
    faults: list[str] = []
    if description.measures != "torque":
        if not description.transducer.unit:
            faults.append("transducer.unit: name the unit of what it measures")
        elif description.measures == "force" and not is_force(description.transducer.unit):
            faults.append(
                f"transducer.unit: '{description.transducer.unit[:40]}' is no unit of force; use N, kgf or lbf"
            )
        try:
            as_torque(description)
        except ValueError as error:
            faults.append(str(error).replace("torque", description.measures))
        return faults
    given = [kind for kind in LAYOUTS if getattr(description, kind) is not None]
    if len(given) > 1 or (not given and description.link not in ("ble", "replay")):
        faults.append(f"exactly one of {', '.join(LAYOUTS)} must be given, not {' and '.join(given) or 'none'}")
    if description.transducer.unit:
        try:
            reading_unit(description.transducer.unit)
        except QuantityError as error:
            faults.append(f"transducer.unit: {error}")
    for kind in given:
        faults += [f"{kind}.{fault}" for fault in LAYOUTS[kind](getattr(description, kind))]
    texts = {f"commands.{name}.send": command.send for name, command in description.commands.items()}
    if description.poll is not None:
        texts["poll.request"] = description.poll.request
    for key, text in texts.items():
        try:
            command_bytes(text)
        except InputError as error:
            faults.append(f"{key}: {error}")
    return faults


def _modbus_faults(modbus: Modbus) -> list[str]:
    return [f"registers: {fault}" for fault in register_faults(modbus.registers)]


# The tables that say how readings are laid out, one of which a description has, and what finds their faults.
LAYOUTS: dict[str, Callable[[Any], list[str]]] = {
    "lines": template_faults, "frame": frame_faults, "notification": layout_faults, "modbus": _modbus_faults,
}  # fmt: skip

MAX_COMMAND = 256  # bytes; longer is no command to a gauge


def command_bytes(text: str) -> bytes:
    r"""Give the bytes that a command's text stands for.

    Raises:
        InputError: It is empty, too long, or has an escape that we do not know.

    >>> command_bytes(r"ZERO\r\n"), command_bytes("hex: 02 53 03")
    (b'ZERO\r\n', b'\x02S\x03')
    """
    try:
        data = bytes.fromhex(text[4:]) if text.startswith("hex:") else _unescaped(text)
    except ValueError:
        what = "must be ASCII text with the escapes \\r \\n \\t \\\\ \\xHH, or 'hex:' and pairs of hexadecimal digits"
        raise InputError(f"{text[:40]!r} {what}") from None
    if not 0 < len(data) <= MAX_COMMAND:
        raise InputError(f"must be 1 to {MAX_COMMAND} bytes, not {len(data)}")
    return data


_ESCAPES = {"r": 13, "n": 10, "t": 9, "\\": 92}


def _unescaped(text: str) -> bytes:
    data = bytearray()
    i = 0
    while i < len(text):
        if text[i] != "\\":
            data += text[i].encode("ascii")
            i += 1
        elif text[i + 1 : i + 2] == "x":
            byte = bytes.fromhex(text[i + 2 : i + 4])
            if len(byte) != 1:  # cut off, or blanks
                raise ValueError(text)
            data += byte
            i += 4
        elif text[i + 1 : i + 2] in _ESCAPES:
            data.append(_ESCAPES[text[i + 1]])
            i += 2
        else:
            raise ValueError(text)
    return bytes(data)


def read_description(path: Path | str) -> Description:
    """Read a description; a bare name such as ``text-gauge`` means one that comes with the program.

    Raises:
        FileError, DescriptionError: It cannot be read, or has faults: all of them at once.
    """
    path = Path(path)
    if path.suffix != ".toml" and not path.exists():
        here = shipped()
        if path.name not in here:
            raise InputError(
                f"{path}: there is no such file, and no description of that name; there are: {', '.join(here)}"
            )
        path = here[path.name]
    return read_toml(path, Description)


def shipped() -> dict[str, Path]:
    """Give the example descriptions that come with the program, by name."""
    return {p.stem: p for p in sorted((Path(__file__).parents[1] / "transducers").glob("*.toml"))}
