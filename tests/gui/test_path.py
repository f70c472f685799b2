"""From the first start to a signed page on a real X server, by pointer and keyboard, on a common laptop's screen."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from analysis.pipeline import read_file

pytestmark = pytest.mark.xvfb
ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def laptop() -> Iterator[str]:
    """A screen of 1366 x 768, the smallest that laptops are sold with."""
    server = shutil.which("Xvfb")
    assert server, "Xvfb is needed: make setup installs it"
    read, write = os.pipe()
    running = subprocess.Popen(
        [server, "-displayfd", str(write), "-screen", "0", "1366x768x24", "-nolisten", "tcp"],
        pass_fds=(write,),
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as told:
        number = told.readline().strip()
    yield f":{number}"
    running.terminate()
    running.wait(10)


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are POSIX")
@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_from_first_start_to_a_signed_page(laptop: str, tmp_path: Path, scale: float) -> None:
    environment = {**os.environ, "DISPLAY": laptop, "QT_QPA_PLATFORM": "xcb", "HELDWHEEL_HOME": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-m", "tests.gui.on_path", str(scale)],
        cwd=ROOT, env=environment, capture_output=True, text=True, check=False, timeout=280,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-3000:]
    said = json.loads(done.stdout.splitlines()[-1])
    assert said["platform"] == "xcb"
    assert said["size"][0] <= 1366
    assert said["size"][1] <= 768
    assert said["clicks"] >= 15
    assert said["by"] == "Robin"
    reading = read_file(said["recording"])
    assert reading.state == "closed"
    assert reading.header.job.vehicle == "club car 7"
    assert reading.header.job.operator == "Robin"
    assert reading.header.limit.source == "club rules"
    assert reading.header.lever.length_mm == 450.0
    assert sum(read.counts for read in reading.pulls) == said["pulls"] == 3
    assert str(reading.result.state) == said["state"]
    assert Path(said["page"]).read_bytes().startswith(b"%PDF-")
