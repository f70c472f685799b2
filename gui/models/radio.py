"""Bluetooth transducers: what is heard, and what a device says about itself. Both run in the acquisition thread."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.links.ble import FoundDevice

LISTEN_S = 5.0


async def heard() -> list[tuple[str, str]]:
    """Listen for devices and connect to none; gives identity and words for each, the nearest first.

    Raises:
        LinkError: There is no Bluetooth, or it is off.
    """
    from logger.links.ble import scan

    return [(one.identity, f"{one.name or 'no name'}  {one.identity}  {_signal(one)}") for one in await scan(LISTEN_S)]


def _signal(one: FoundDevice) -> str:
    return "connected already" if one.connected else f"{one.rssi_dbm} dBm"


async def introduced(identity: str, known: Description | None) -> Description:
    """Connect once and ask: which characteristic delivers torque; the open standards decide without a description.

    Raises:
        LinkError: It cannot be reached.
        InputError: It does not say what it measures: a description is needed.
    """
    from logger.decoder.description import BleSettings, Description
    from logger.header import TransducerFacts
    from logger.links.ble import meet

    settings = known.ble or BleSettings() if known is not None else None
    facts, pick = await meet(identity, settings)
    if known is None:
        own = TransducerFacts(name=facts.name, unit="N·m", sign="signed")
        known = Description(name=facts.name or identity, link="ble", notification=pick.packet, transducer=own)
    own = known.transducer
    serial = own.serial or facts.texts.get("serial", "")
    ble = msgspec.structs.replace(known.ble or BleSettings(), characteristic=pick.uuid)
    return msgspec.structs.replace(known, ble=ble, transducer=msgspec.structs.replace(own, serial=serial))
