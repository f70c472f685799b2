"""Which characteristic of a Bluetooth device delivers torque, and in which format: from the open standards alone.

A device is not believed: whatever it says about itself is read with bounds, and what does not fit is told.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.standard import (
    NEWTON,
    NEWTON_METRE,
    TORQUE,
    TORQUE_NOT_KNOWN,
    TORQUE_SCALE,
    PresentationFormat,
    presentation_format,
    uuid,
)
from logger.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

# Services that every device may have and that never hold a torque: access, attributes, alerts, power, time,
# information, battery, firmware update (the last from memory).
_HOUSEKEEPING: Final = {
    uuid(short) for short in (0x1800, 0x1801, 0x1802, 0x1803, 0x1804, 0x1805, 0x180A, 0x180F, 0xFE59)
}
# Characteristics below this prefix are assigned ones; what is not torque among them is something else for certain.
_ASSIGNED: Final = "-0000-1000-8000-00805f9b34fb"


@dataclass(frozen=True, slots=True)
class Offer:
    """A characteristic that a device offers."""

    # service, uuid: long form, lower case
    service: str
    uuid: str
    handle: int
    notifies: bool
    formats: tuple[bytes, ...] = ()  # values of its Presentation Format descriptors, as read


@dataclass(frozen=True, slots=True)
class Pick:
    """The characteristic to use and what its notifications hold (None: a description must say)."""

    uuid: str
    packet: Packet | None
    why: str


def listenable(offers: Sequence[Offer], characteristic: str = "", service: str = "") -> list[Offer]:
    """Give the characteristics that may deliver readings: those that notify, without housekeeping.

    Raises:
        InputError: The one that is named is not there or cannot notify, or there is none.
    """
    if characteristic:
        pick_described(offers, characteristic, service)
    found = [
        offer
        for offer in sorted(offers, key=lambda one: one.handle)
        if offer.notifies
        and offer.service not in _HOUSEKEEPING
        and (not characteristic or offer.uuid == characteristic.lower())
        and (not service or offer.service == service.lower())
    ]
    if not found:
        raise InputError("the device has no characteristic that notifies of readings")
    return found


def is_torque(offer: Offer) -> bool:
    """Tell whether it is the standard Torque characteristic."""
    return offer.uuid == uuid(TORQUE)


def torque_packet() -> Packet:
    """Give the layout of the standard Torque characteristic."""
    field = PlacedNumber(name="torque", type="s32", unit="N·m", scale=TORQUE_SCALE, missing=TORQUE_NOT_KNOWN)
    return Packet(fields=(field,))


def pick_standard(offers: Sequence[Offer], radius_mm: float | None = None) -> Pick:
    """Find the torque characteristic that needs no description.

    Args:
        radius_mm: Radius at which the device measures a force; only then is a force characteristic used.

    Raises:
        InputError: There is none, or more than one; the text lists what there is.
    """
    notifying = sorted((offer for offer in offers if offer.notifies), key=lambda offer: offer.handle)
    for picks in (
        [Pick(o.uuid, torque_packet(), "the standard Torque characteristic 0x2C0B") for o in notifying if is_torque(o)],
        _by_format(notifying, NEWTON_METRE, None),
        _by_format(notifying, NEWTON, radius_mm) if radius_mm else [],
    ):
        if len(picks) == 1:
            return picks[0]
        if picks:
            listed = ", ".join(pick.uuid for pick in picks)
            raise InputError(f"the device has several torque values ({listed}); name one with a description file")
    raise InputError(_none_found(notifying, radius_mm))


def pick_described(offers: Sequence[Offer], characteristic: str, service: str) -> Pick:
    """Find the characteristic that a description names; without a name, the only one that can be meant.

    Raises:
        InputError: It is not there, cannot notify, or it is not clear which is meant.
    """
    found = [o for o in offers if not service or o.service == service.lower()]
    if characteristic:
        found = [o for o in found if o.uuid == characteristic.lower()]
        if not found:
            raise InputError(f"the device has no characteristic {characteristic}; it has: {_listed(offers)}")
        found = [o for o in found if o.notifies]
        if not found:
            raise InputError(f"the characteristic {characteristic} of this device cannot notify")
    else:
        found = [o for o in found if o.notifies and not o.uuid.endswith(_ASSIGNED)]
    if len(found) != 1:
        raise InputError(
            "it is not clear which characteristic delivers the readings; 'heldwheel-log learn --ble ADDRESS' listens "
            "to all and writes a description that names it as ble.characteristic. Those that notify: "
            f"{_listed([o for o in offers if o.notifies and o.service not in _HOUSEKEEPING])}"
        )
    return Pick(found[0].uuid, None, "named by the description")


def _by_format(offers: Sequence[Offer], unit: int, radius_mm: float | None) -> list[Pick]:
    picks = []
    for offer in offers:
        formats = [form for data in offer.formats if (form := presentation_format(data)) is not None]
        if len(formats) == 1 and formats[0].unit == unit and formats[0].type is not None:
            told = f"its Presentation Format says {formats[0].unit_name}"
            picks.append(Pick(offer.uuid, _format_packet(formats[0], radius_mm), told))
    return picks


def _format_packet(form: PresentationFormat, radius_mm: float | None) -> Packet:
    if form.type is None:
        raise InputError(f"the number format 0x{form.format:02X} is no single number")
    unit = "N" if radius_mm else form.unit_name
    return Packet(
        fields=(PlacedNumber(name="torque", type=form.type, unit=unit, scale=form.scale, radius_mm=radius_mm),)
    )


def _none_found(notifying: Sequence[Offer], radius_mm: float | None) -> str:
    hints = []
    if not radius_mm and _by_format(notifying, NEWTON, 1.0):
        hints.append("it delivers a force: give the radius at which it measures (--radius)")
    able = [offer for offer in notifying if offer.service not in _HOUSEKEEPING]
    hints.append(
        "let 'heldwheel-log learn --ble ADDRESS' find it out and write its description. Characteristics that notify: "
        f"{_listed(able)}"
    )
    return "the device does not say by the standards what it measures; " + "; or ".join(hints)


def _listed(offers: Sequence[Offer]) -> str:
    return ", ".join(offer.uuid for offer in offers[:20]) or "none"
