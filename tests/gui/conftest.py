"""Every window test has a folder of its own for choices, lists and recordings, and no sound."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
