"""A virtual transducer as its bytes: a run in a described format, due at its times.

Three forms, each with its description, so that the ordinary decoders read them:

- ``text``: one line per sample, ``SIM,000123,+0027.13 Nm,OK,+0012.35`` and CRLF; the first word is the mark.
- ``frame``: binary frames of several samples for a serial stream, with sync, counter, status and CRC-16.
- ``packet``: the same without sync, for one Bluetooth notification each.

The simulated mark travels in every line and in a status bit of every frame and packet.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from logger.decoder.crc import crc
from logger.description import read_description
from logger.virtual.sensor import Status

if TYPE_CHECKING:
    from logger.description import Description
    from logger.virtual.physics import Run

Form = Literal["text", "frame", "packet"]
MARK = "SIM"
# Marks that stand where a torque would, as many gauges show them.
OVERLOAD, NOTHING = "OL", "---"
