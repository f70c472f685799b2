"""On a real X server, at both system scales: the figure can be read, the trace and the band are there."""

import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

pytestmark = pytest.mark.xvfb
ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def display() -> Iterator[str]:
    server = shutil.which("Xvfb")
    assert server, "Xvfb is needed: make setup installs it"
    read, write = os.pipe()
    running = subprocess.Popen(
        [server, "-displayfd", str(write), "-screen", "0", "2560x1600x24", "-nolisten", "tcp"],
        pass_fds=(write,),
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as told:
        number = told.readline().strip()
    assert number, "Xvfb did not start"
    yield f":{number}"
    running.terminate()
    running.wait(10)


@pytest.mark.parametrize(("palette", "scale"), [("dark", "1"), ("light", "2")])
def test_a_job_on_a_screen(display: str, tmp_path: Path, palette: str, scale: str) -> None:
    environment = {
        **os.environ,
        "DISPLAY": display,
        "QT_QPA_PLATFORM": "xcb",
        "QT_SCALE_FACTOR": scale,
        "HELDWHEEL_HOME": str(tmp_path),
    }
    begun = time.monotonic()
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.on_screen", palette],
        cwd=ROOT, env=environment, capture_output=True, text=True, check=False, timeout=100,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-2000:]
    said = json.loads(done.stdout.splitlines()[-1])
    assert said["platform"] == "xcb"
    assert said["ratio"] == float(scale)
    assert said["figure_contrast"] >= 10, "the large figure stands out"
    assert said["trace_points"] > 100
    assert said["band_points"] > 1000
    assert time.monotonic() - begun < 100
