"""Names of serial ports: local devices only.

Serial libraries also accept network addresses (``socket://``, ``rfc2217://``) and debugging schemes; a description
from somebody else must not be able to open any of them.
"""

from __future__ import annotations

import os
import re
from typing import Final

from logger.errors import InputError

_WINDOWS_PORT: Final = re.compile(r"(\\\\\.\\)?COM[1-9][0-9]{0,3}", re.IGNORECASE)
MAX_NAME: Final = 255


def local_port(name: str, *, system: str = os.name) -> str:
    """Give the name of a local serial port.

    Raises:
        InputError: It is a network address or no device name.

    >>> local_port("ttyUSB0", system="posix")
    '/dev/ttyUSB0'
    """
    shown = "".join(c for c in name if c.isprintable())[:60]
    if "://" in name or not name or len(name) > MAX_NAME or not name.isprintable():
        raise InputError(f"'{shown}' is no local serial port; 'heldwheel-log find' lists them")
    if system == "nt":
        if not _WINDOWS_PORT.fullmatch(name):
            raise InputError(f"'{shown}' is no serial port; ports are named COM1, COM2 ...")
        return name
    return name if name.startswith("/") else f"/dev/{name}"
