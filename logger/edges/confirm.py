"""Nothing is sent to a device before the user has seen it and said yes."""

from __future__ import annotations

import sys

from logger.edges.console import clean
from logger.errors import InputError


def shown_bytes(data: bytes) -> str:
    r"""Give bytes as they are shown to the user.

    >>> shown_bytes(b"ZERO\r\x02")
    'ZERO\\x0D\\x02'
    """
    return "".join(chr(byte) if 32 <= byte < 127 else f"\\x{byte:02X}" for byte in data)


def confirm_sending(device: str, data: bytes, does: str = "", *, assume: bool = False) -> None:
    """Show what is to be sent and ask once.

    Args:
        device: Where it goes.
        data: What is sent.
        does: What it does, or how often it is sent.
        assume: The user has confirmed it already (``--yes``).

    Raises:
        InputError: The user did not agree, or nobody can be asked.
    """
    # What a description says it does is somebody else's text: on one line, without commands to the terminal.
    agree(f"This sends '{shown_bytes(data)}' to {clean(device)}" + (f": {clean(does)}" if does else ""), assume=assume)


def agree(told: str, *, assume: bool = False) -> None:
    """Show what would be done to a device and ask once.

    Raises:
        InputError: The user did not agree, or nobody can be asked.
    """
    sys.stderr.write(told + "\n")
    if assume:
        return
    if not sys.stdin.isatty():
        raise InputError(f"{told}. Nobody is here to confirm it; add --yes if you have read it and agree")
    sys.stderr.write("Send it? Type yes: ")
    sys.stderr.flush()
    if sys.stdin.readline().strip().lower() not in {"yes", "y"}:
        raise InputError("not confirmed; nothing was sent")
