"""The decoder that a description asks for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from logger.edges.units import is_force, reading_factor
from logger.errors import InputError

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.samples import Decoder


def build_decoder(description: Description) -> Decoder:
    """Build the decoder of a described transducer; it also watches for zeros taken under load.

    Raises:
        InputError: The description has no layout: a Bluetooth device that follows the open standards tells it itself.
    """
    from logger.decoder.autozero import AutoZeroWatch
    from logger.decoder.description import as_torque

    if description.measures not in ("torque", "force"):
        return _build(as_torque(description))
    facts, si = description.transducer, reading_factor(description.unit)
    whole = facts.capacity_n if is_force(description.unit) else facts.capacity_nm
    capacity = whole / si if whole else None
    return AutoZeroWatch(_build(as_torque(description)), capacity, facts.rate_hz, least=1.0 / si)


def _build(description: Description) -> Decoder:
    unit = description.unit
    if description.lines is not None:
        if description.lines.terminator == "ETX":
            from logger.decoder.framed_text import FramedTextDecoder

            return FramedTextDecoder(description.lines, unit, description.simulated_mark)
        from logger.decoder.lines import LineDecoder

        return LineDecoder(description.lines, unit, description.simulated_mark)
    if description.frame is not None:
        from logger.decoder.frames import FrameDecoder

        return FrameDecoder(description.frame, unit)
    if description.notification is not None:
        from logger.decoder.notifications import NotificationDecoder

        return NotificationDecoder(description.notification, unit)
    if description.modbus is not None:
        from logger.decoder.registers import RegisterDecoder

        return RegisterDecoder(description.modbus.registers, unit)
    raise InputError(f"{description.name}: the description does not say how the readings are laid out")
