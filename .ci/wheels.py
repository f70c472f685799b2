"""Whether every pinned package can be installed from wheels on the systems that Heldwheel runs on.

Nothing is installed: uv looks the pinned versions up. Ends with 1 if one has no wheel somewhere.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

SYSTEMS = {
    "Windows, 64 bit": "x86_64-pc-windows-msvc",
    "macOS, Apple silicon": "aarch64-apple-darwin",
    "Linux, 64 bit": "x86_64-manylinux_2_34",
    "Linux, 64-bit ARM": "aarch64-manylinux_2_39",  # PySide6 has no wheel for an older C library there
}
PINS = Path(__file__).with_name("constraints.txt")


def main() -> int:
    """Look all systems up."""
    missing = False
    uv = [
        str(Path(sys.executable).with_name("uv")),
        "pip",
        "install",
        "--dry-run",
        "--no-deps",
        "--only-binary",
        ":all:",
    ]
    for name, system in SYSTEMS.items():
        with tempfile.TemporaryDirectory() as folder:
            where = ["--python-version", "3.11", "--python-platform", system, "--target", folder]
            done = subprocess.run([*uv, *where, "-r", str(PINS)], capture_output=True, text=True, check=False)
        said = [line for line in done.stderr.splitlines() if line.strip()]
        missing = missing or done.returncode != 0
        fine = next((line for line in said if line.startswith("Would install")), "wheels for all")
        print(f"{name}: {fine if done.returncode == 0 else ' '.join(said)}")
    return int(missing)


if __name__ == "__main__":
    sys.exit(main())
