"""Start the program that the bundle's executable is named after."""

import multiprocessing
import sys
from pathlib import Path


def main() -> int:
    """Run window or command by the executable's name."""
    multiprocessing.freeze_support()  # a worker process is this executable once more
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
