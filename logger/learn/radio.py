"""Learning a Bluetooth device: which of its characteristics delivers the torque, and how its packets are laid out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import msgspec

from logger.decoder.description import BleSettings, Description
from logger.header import TransducerFacts
from logger.learn.learn import Learned, Wanted, learn
from logger.links.ble_pick import Offer, is_torque, torque_packet

if TYPE_CHECKING:
    from collections.abc import Mapping

    from logger.learn.hear import Heard
    from logger.samples import Chunk

Stream = tuple[Offer, "list[Chunk]"]


def learn_radio(
    heard: Mapping[str, Stream],
    settings: BleSettings,
    *,
    name: str = "learned transducer",
    wanted: Wanted | None = None,
) -> Learned:
    """Find out which characteristic delivers the torque, and how.

    Args:
        heard: mapping of str to (Offer, list of Chunk); What came of each.
        wanted: What the user knows and the bytes do not say.
    """
    came = {key: (offer, chunks) for key, (offer, chunks) in heard.items() if chunks}
    if not came:
        silent = ", ".join(heard) or "none"
        return Learned(
            None, unknown=(f"nothing came of the characteristics that notify ({silent}): it may need --start",)
        )
    learned = {key: _one(offer, chunks, settings, name, wanted) for key, (offer, chunks) in came.items()}
    standard = [key for key, (offer, _) in came.items() if is_torque(offer)]
    able = standard or [key for key, one in learned.items() if one.choices or one.description is not None]
    if len(able) == 1:
        key = able[0]
        said = f"characteristic {key}: {_about(came[key])}"
        others = [other for other in came if other != key]
        more = (f"nothing in {', '.join(others)} moves as a torque",) if others and not standard else ()
        return replace(learned[key], found=(said, *more, *learned[key].found))
    if not able:
        shown = tuple(f"{key} ({_about(came[key])}): {'; '.join(one.unknown)}" for key, one in learned.items())
        return Learned(None, unknown=shown)
    listed = tuple(f"{key}: {_about(came[key])}, {_moved(learned[key])}" for key in able)
    asked = "numbers move in several characteristics: choose one with --characteristic"
    return Learned(None, found=listed, unknown=(asked,), missing=("characteristic",))


def learn_heard(heard: Heard, *, name: str = "learned transducer", wanted: Wanted | None = None) -> Learned:
    """Find out how what was heard is laid out, wherever it came from."""
    if heard.radio:
        streams = {key: (offer, list(chunks)) for key, (offer, chunks) in list(heard.radio.items())}
        return learn_radio(streams, heard.ble or BleSettings(), name=name, wanted=wanted)
    return learn(list(heard.chunks), name=name, wanted=wanted, serial=heard.serial, ble=heard.ble)


def _about(heard: Stream) -> str:
    chunks = heard[1]
    sizes = sorted({len(chunk.data) for chunk in chunks})
    elapsed = chunks[-1].arrival_s - chunks[0].arrival_s
    rate = f", {(len(chunks) - 1) / elapsed:.3g} a second" if elapsed > 0 else ""
    return f"{len(chunks)} packets of {' or '.join(map(str, sizes[:4]))} bytes{rate}"


def _moved(learned: Learned) -> str:
    return ", ".join(f"{c.name} from {c.values.min():g} to {c.values.max():g}" for c in learned.choices) or "understood"


def _one(offer: Offer, chunks: list[Chunk], settings: BleSettings, name: str, wanted: Wanted | None) -> Learned:
    ble = msgspec.structs.replace(settings, characteristic=offer.uuid)
    if is_torque(offer):
        facts = TransducerFacts(unit="N·m", sign="signed")
        described = Description(name=name, link="ble", ble=ble, notification=torque_packet(), transducer=facts)
        return Learned(
            described,
            ("the standard Torque characteristic 0x2C0B, in N·m, clockwise positive",),
            unit_sent=True,
            fits=1.0,
        )
    return learn(chunks, name=name, wanted=wanted, ble=ble, offer=offer)
