"""A mean reading from a transducer, and the description of a calibrated one: for dead weights."""

from __future__ import annotations

import asyncio
import math
from datetime import datetime
from typing import TYPE_CHECKING, NamedTuple, TypeVar

import msgspec
import numpy as np

from logger.decoder.layouts import PlacedNumber, Register
from logger.decoder.template import NumberField
from logger.errors import DeviceError, InputError
from logger.samples import Block, Ending, EndReason, EventKind

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.decoder.layouts import Packet
    from logger.instruments.weigh import TwoPoint
    from logger.links.base import Link
    from logger.samples import Floats

F = TypeVar("F", NumberField, PlacedNumber, Register)

# The first part of what is heard may be older than the load: buffers of converters and radio stacks.
SETTLE_SHARE = 0.2
MEAN_S = 3.0  # a weight on an arm swings about once a second: a mean over a few swings


class MeanReading(NamedTuple):
    """A mean in the transducer's unit, and whether the device said that it is simulated."""

    value: float
    simulated: bool


class _Collector:
    """A subscriber that keeps the torque, and a device's word that it is simulated."""

    def __init__(self) -> None:
        self.parts: list[Floats] = []
        self.simulated = False

    def on_block(self, block: Block) -> None:
        """Keep a block's torque."""
        self.parts.append(block.columns["torque"])
        self.simulated |= any(event.kind is EventKind.SIMULATED for event in block.events)

    def on_end(self, ending: Ending) -> None:
        """Keep nothing."""


def mean_reading(
    description: Description, address: str, seconds: float, *, link: Link | None = None, confirmed: bool = False
) -> MeanReading:
    """Measure for some seconds and give the mean; ``confirmed`` as in ``build_link``.

    Raises:
        InputError: The time is no sensible one.
        LinkError: The transducer cannot be reached.
        DeviceError: It gave no reading, or not only readings.
    """
    from logger.links.build import build_link
    from logger.stream.session import build_session

    if not 0.5 <= seconds <= 600:
        raise InputError("--seconds must lie between 0.5 and 600")
    session = build_session(link or build_link(description, address, confirmed=confirmed), description, reconnect_s=0.0)
    collector = _Collector()
    session.subscribe(collector)

    async def measure() -> Ending:
        running = asyncio.ensure_future(session.run())
        await asyncio.wait({running}, timeout=seconds)
        session.stop()
        return await running

    ending = asyncio.run(measure())
    if ending.reason is EndReason.FAILED and ending.error is not None:
        raise ending.error
    torque = np.concatenate(collector.parts) if collector.parts else np.empty(0)
    torque = torque[int(SETTLE_SHARE * len(torque)) :]
    if not len(torque):
        raise DeviceError(f"{address}: gave no reading in {seconds:g} s; is it switched on, and does the file fit it?")
    if not np.isfinite(torque).all():
        raise DeviceError(f"{address}: gave marks instead of readings (overload or error); see its display")
    return MeanReading(float(torque.mean()), collector.simulated)


def calibrated(description: Description, made: TwoPoint, loads: str) -> Description:
    """Give a description whose torque is calibrated by two loads, in N·m.

    Raises:
        InputError: It has no torque field that could be scaled.
    """
    replace = msgspec.structs.replace
    when = datetime.now().astimezone().date()
    relative = abs(made.scale_u / made.scale)
    facts = replace(
        description.transducer,
        unit="N·m",
        gain=1.0,
        gain_u=float(f"{relative:.3g}") if math.isfinite(relative) else None,
        certificate=f"two-point calibration {when}, {loads}",
        certificate_date=when,
    )
    changed: dict[str, object]
    if description.lines is not None:
        before = description.lines.fields.get("torque", NumberField())
        fields = {**description.lines.fields, "torque": _rescaled(before, made, unit="")}
        changed = {"lines": replace(description.lines, fields=fields)}
    elif description.frame is not None:
        changed = {"frame": replace(description.frame, packet=_calibrated_packet(description.frame.packet, made))}
    elif description.notification is not None:
        changed = {"notification": _calibrated_packet(description.notification, made)}
    elif description.modbus is not None:
        first, *others = description.modbus.registers
        registers = (_rescaled(first, made, unit="N·m"), *others)
        changed = {"modbus": replace(description.modbus, registers=registers)}
    else:
        raise InputError("the description has no torque field that could be calibrated")
    return replace(description, transducer=facts, **changed)


def _calibrated_packet(packet: Packet, made: TwoPoint) -> Packet:
    first, *others = packet.fields
    return msgspec.structs.replace(packet, fields=(_rescaled(first, made, unit="N·m"), *others))


def _rescaled(field: F, made: TwoPoint, unit: str) -> F:
    """Put a calibration behind the scale that a field has already."""
    scale, offset = field.scale * made.scale, field.offset * made.scale + made.offset
    return msgspec.structs.replace(field, unit=unit, scale=scale, offset=offset)
