"""Run the bundle where no Python is: in a bare Debian root, under a virtual screen, from a port to a PDF.

``make bundle-check`` (as root: it makes a root with debootstrap, mounts /proc and /dev/pts into it, and takes them out
again). The virtual transducer plays outside on a pseudo-terminal; screen and port are all that the root is given.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parents[1])]
SCREEN = ":97"
WINDOW_S = 600  # a machine that others keep busy reads half a gigabyte of libraries slowly


@contextlib.contextmanager
def bare_root(folder: Path, bundle: Path) -> Iterator[Path]:
    """Give a bare Debian with nothing but the bundle under /opt."""
    if not (folder / "bin" / "sh").exists():
        words = ["debootstrap", "--variant=minbase", "bookworm", str(folder), "http://deb.debian.org/debian"]
        subprocess.run(words, check=True, stdout=subprocess.DEVNULL)
    held = folder / "opt" / bundle.name
    shutil.rmtree(held, ignore_errors=True)
    shutil.copytree(bundle, held, symlinks=True, copy_function=os.link)
    mounts = [("proc", "/proc"), ("bind", "/dev/pts"), ("bind", "/sys")]
    for kind, place in mounts:
        words = ["-t", "proc", "proc"] if kind == "proc" else ["--bind", place]
        subprocess.run(["mount", *words, f"{folder}{place}"], check=True)
    try:
        yield folder
    finally:
        for _, place in reversed(mounts):
            subprocess.run(["umount", "-l", f"{folder}{place}"], check=False)


def inside(root: Path, bundle: Path, *words: str, **more: object) -> subprocess.Popen[str]:
    """Start something in the root, as a user there would: with nothing of ours in its environment."""
    env = {"PATH": f"/opt/{bundle.name}:/usr/bin:/bin", "HOME": "/root", "DISPLAY": SCREEN, "LANG": "C.UTF-8"}
    return subprocess.Popen(["/usr/sbin/chroot", str(root), *words], env=env, text=True, **more)  # type: ignore[call-overload]


def told(root: Path, bundle: Path, *words: str) -> str:
    """Run something in the root and give what it says."""
    begun_s = time.perf_counter()
    running = inside(root, bundle, *words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    text, _ = running.communicate(timeout=600)
    took_s = time.perf_counter() - begun_s
    print(f"$ {' '.join(words)}\n{text.rstrip()}\n(exit code {running.returncode}, {took_s:.2f} s)\n")
    if running.returncode == 2:
        sys.exit(f"{words[0]} failed")
    return text


def recorded(root: Path, bundle: Path) -> None:
    """Record the virtual transducer from a port, and read it into a PDF."""
    from logger.virtual.device import VirtualDevice
    from logger.virtual.physics import simulate
    from logger.virtual.port import VirtualPort
    from logger.virtual.scenarios import scenario
    from tests.demo import JOB, LIMIT

    device = VirtualDevice(simulate(scenario("healthy"), seed=7))
    work = root / "root"
    for old in work.glob("left-1.*"):
        old.unlink()
    write_description(work / "transducer.toml", device)
    (work / "job.toml").write_text(JOB, "utf-8")
    (work / "limit.toml").write_text(LIMIT, "utf-8")
    with VirtualPort(device, speed=4.0, held=True) as port:
        words = ["heldwheel-log", "record", os.path.realpath(port.path), "--transducer", "/root/transducer.toml"]
        words += [
            "--job",
            "/root/job.toml",
            "--limit",
            "/root/limit.toml",
            "--seconds",
            "20",
            "--out",
            "/root/left-1.csv",
        ]
        recorder = inside(root, bundle, *words)
        time.sleep(8)
        port.go()
        if recorder.wait(600):
            sys.exit("recording failed")
    told(root, bundle, "heldwheel-read", "pulls", "/root/left-1.csv", "--zero", "start")
    told(root, bundle, "heldwheel-read", "report", "/root/left-1.csv", "--zero", "start", "--out", "/root/left-1.pdf")
    page = (work / "left-1.pdf").read_bytes()
    if not page.startswith(b"%PDF-"):
        sys.exit("no PDF")
    print(f"left-1.pdf: {len(page):,} bytes")


def write_description(path: Path, device: object) -> None:
    """Write the description of the virtual transducer."""
    from logger.edges.toml_file import write_toml

    write_toml(path, device.description)  # type: ignore[attr-defined]


def seen(root: Path, bundle: Path, picture: Path) -> None:
    """Open the window on a virtual screen; tell how long until something is on it, and keep a picture."""
    frames = root / "tmp"
    screen = subprocess.Popen(["Xvfb", SCREEN, "-screen", "0", "1280x800x24", "-fbdir", str(frames)])
    try:
        time.sleep(2)
        for name in ("first", "second"):
            begun_s = time.perf_counter()
            window = inside(root, bundle, "heldwheel", "--practise")
            while (shot := pixels(frames / "Xvfb_screen0")).std() < 5:
                if window.poll() is not None or time.perf_counter() - begun_s > WINDOW_S:
                    sys.exit(f"no window: exit code {window.returncode}")
                time.sleep(0.02)
            print(f"{name} start: something on the screen after {time.perf_counter() - begun_s:.2f} s")
            time.sleep(15)
            shot = pixels(frames / "Xvfb_screen0")
            window.terminate()
            window.wait(30)
            time.sleep(1)
        from PIL import Image

        Image.fromarray(shot).save(picture)
    finally:
        screen.terminate()
        screen.wait()


def pixels(path: Path) -> np.ndarray:
    """Give the screen as an array of bytes; its file is an X window dump (X11/XWDFile.h)."""
    data = path.read_bytes()
    head = np.frombuffer(data[:100], ">u4")
    size, width, height, stride, colours = int(head[0]), int(head[4]), int(head[5]), int(head[12]), int(head[19])
    rows = np.frombuffer(data, np.uint8, stride * height, size + 12 * colours).reshape(height, stride)
    return rows[:, : 4 * width].reshape(height, width, 4)[:, :, 2::-1]


def main() -> int:
    """Show that the bundle runs."""
    from make import ROOT, name

    bundle = ROOT / "dist" / name()
    folder = Path(sys.argv[1] if len(sys.argv) > 1 else "/var/tmp/heldwheel-bare-root")
    with bare_root(folder, bundle) as root:
        if subprocess.run(["chroot", str(root), "sh", "-c", "command -v python3 python"], check=False).returncode == 0:
            sys.exit("there is a Python in this root: it shows nothing")
        told(root, bundle, "heldwheel-log", "--help")
        told(root, bundle, "heldwheel-read", "--version")
        recorded(root, bundle)
        seen(root, bundle, ROOT / "dist" / "bare.png")
    return 0


if __name__ == "__main__":
    sys.exit(main())
