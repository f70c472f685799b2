"""Record from a Bluetooth gauge that needs no description, with the real commands and no adapter.

    python -m tests.radio.demo --out demo-output

Starts ``python -m tests.radio`` (a virtual gauge behind a private system bus), then runs ``heldwheel-log find --ble``
and ``heldwheel-log record --ble ADDRESS`` as anybody would: all they are told is where the system bus is.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
from pathlib import Path

DOOR = [sys.executable, "-c", "import sys; from logger.__main__ import main; sys.exit(main())"]


def main() -> int:
    """Run it; gives the recorder's exit code."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--out", type=Path, default=Path("demo-output"))
    parser.add_argument("--seconds", type=float, default=12.0)
    args = parser.parse_args()
    args.out.mkdir(parents=True, exist_ok=True)
    recording = args.out / "bluetooth.csv"
    recording.unlink(missing_ok=True)
    served = subprocess.Popen(
        [sys.executable, "-m", "tests.radio", "--gauge", "standard"], stdout=subprocess.PIPE, text=True
    )
    try:
        told = dict(line.strip().split("=", 1) for line in (served.stdout.readline(), served.stdout.readline()))
        env = os.environ | {"DBUS_SYSTEM_BUS_ADDRESS": told["DBUS_SYSTEM_BUS_ADDRESS"]}
        subprocess.run([*DOOR, "find", "--ble", "--seconds", "1"], env=env, check=True)
        words = ["record", "--ble", told["ADDRESS"], "--seconds", str(args.seconds), "--out", str(recording)]
        return subprocess.run([*DOOR, *words], env=env, check=False).returncode
    finally:
        served.terminate()
        served.wait(10)
        served.stdout.close()


if __name__ == "__main__":
    sys.exit(main())
