"""A gauge on the virtual radio, and a link to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from logger.decoder.description import BleSettings
from logger.links.ble import Backends, BleLink
from tests.faults.sources import DESCRIPTION
from tests.radio.air import Air
from tests.radio.bleak_backend import backends_on
from tests.radio.central import Central
from tests.radio.gauges import OWN_STREAM, stream_gauge

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from tests.radio.air import Peripheral

GAUGE = "F0:00:00:00:00:01"


async def gauge_on_the_air() -> tuple[Peripheral, BleLink, Description]:
    """Switch both on; the gauge, a link to it that is not yet open, and the description of its lines."""
    air = Air()
    central, gauge = Central(air), stream_gauge(air, GAUGE)
    await central.power_on()
    await gauge.power_on()
    seam = backends_on(central)
    ble = BleSettings(characteristic=OWN_STREAM)
    description = msgspec.structs.replace(DESCRIPTION, link="ble", ble=ble)
    return gauge, BleLink(GAUGE, ble, name="gauge", backends=Backends(seam.scanner, seam.client)), description
