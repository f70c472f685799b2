"""Every error that Heldwheel raises on purpose.

::

    HeldwheelError                    the base; its text is written for the user and names the fix
    ├── QuantityError (ValueError)    a number or unit that cannot be read: "450 furlong"
    ├── DescriptionError (ValueError) a TOML file (transducer, limit, lever, sidecar) with faults; carries all of them
    ├── FileError (OSError)           a recording or trace that cannot be read or written
    ├── LinkError (OSError)           a port or radio that cannot be opened, or a device that went away
    │   └── LinkLost                  it was open and is gone; a session may reconnect
    ├── DeviceError (ValueError)      a device answered, but with something that contradicts its description
    └── InputError (ValueError)       anything else a user typed or supplied that cannot be used

Anything else that reaches a user is our bug. A door turns a ``HeldwheelError`` into one message and exit code 2.
"""

from __future__ import annotations

from dataclasses import dataclass


class HeldwheelError(Exception):
    """Base of all errors whose text is written for the user."""


class QuantityError(HeldwheelError, ValueError):
    """A number, unit or quantity that cannot be read."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in a file: where (key path or line), what, and what is allowed."""

    where: str
    what: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}" if self.where else self.what


class DescriptionError(HeldwheelError, ValueError):
    """A TOML file with faults; all of them are reported at once.

    Args:
        file: The file as the user named it.
        faults: Every fault found.
    """

    def __init__(self, file: str, faults: list[Fault] | tuple[Fault, ...]) -> None:
        self.file = file
        self.faults = tuple(faults)
        super().__init__("\n".join(f"{file}: {fault}" for fault in self.faults))


class FileError(HeldwheelError, OSError):
    """A recording or trace that cannot be read or written."""


class LinkError(HeldwheelError, OSError):
    """A port or radio that cannot be opened, or fails."""


class LinkLost(LinkError):  # noqa: N818 - it reads as the event it is
    """An open link that is gone: unplugged, out of range, switched off."""


class DeviceError(HeldwheelError, ValueError):
    """A device whose answer contradicts its description."""


class InputError(HeldwheelError, ValueError):
    """Anything else supplied by the user that cannot be used."""
