"""Only local serial ports."""

import pytest

from logger.errors import InputError
from logger.links.ports import local_port


@pytest.mark.parametrize(
    "name",
    ["socket://10.0.0.1:5000", "rfc2217://host:1", "loop://", "spy:///dev/ttyUSB0", "hwgrep://x", "", "a" * 300,
     "/dev/tty\x1b[2J"],
)  # fmt: skip
@pytest.mark.parametrize("system", ["posix", "nt"])
def test_anything_else_is_refused(name, system):
    with pytest.raises(InputError):
        local_port(name, system=system)


def test_names():
    assert local_port("/dev/serial/by-id/usb-x", system="posix") == "/dev/serial/by-id/usb-x"
    assert local_port("COM12", system="nt") == "COM12"
    with pytest.raises(InputError, match="COM1"):
        local_port("/dev/ttyUSB0", system="nt")
