"""Start the program that the bundle's executable is named after."""

import multiprocessing
import os
import sys
from pathlib import Path


def main() -> int:
    """Run window or command by the executable's name."""
    multiprocessing.freeze_support()  # a worker process is this executable once more
    if sys.platform == "linux" and not Path("/etc/fonts/fonts.conf").exists():  # a bare system has no fonts
        os.environ.setdefault("FONTCONFIG_FILE", str(Path(__file__).with_name("fonts.conf")))
    name = Path(sys.executable).stem
    if name == "heldwheel-log":
        from logger.__main__ import main as door
    elif name == "heldwheel-read":
        from analysis.__main__ import main as door
    else:
        from gui.__main__ import main as door
    return door()


if __name__ == "__main__":
    sys.exit(main())
