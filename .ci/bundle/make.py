"""Build one self-contained folder, and an archive of it, for the system this runs on: ``make bundle``.

The folder holds window, commands, Python and all packages at the versions of ``.ci/constraints.txt``, and every licence
that comes with them. Nothing has to be installed where it runs but what a desktop has: a C library no older than that
of the system it was built on, and a screen.
"""

from __future__ import annotations

import os
import platform
import re
import shutil
import subprocess
import sys
import sysconfig
import tarfile
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

from packaging.requirements import Requirement

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
# Tests, what only they use, and parts of libraries that nothing here reaches.
NOT_IN_IT = ["bumble", "tests", "pytest", "hypothesis", "numba", "llvmlite", "aeon", "statsmodels",
             "matplotlib", "tkinter", "mypy", "IPython", "distributed", "dask", "OpenGL", "pyqtgraph.opengl",
             "pyarrow.flight", "pyarrow._flight", "pyarrow.substrait", "pyarrow._substrait", "pyarrow.tests",
             "PySide6.QtQml", "PySide6.QtQuick", "PySide6.QtPdf", "PySide6.QtVirtualKeyboard"]  # fmt: skip
# Of the plug-ins that come with Qt, those for phones and documents, and what only they need.
NOT_USED = re.compile(
    r"qgtk3|virtualkeyboard|libqpdf|libQt6(Pdf|Qml|Quick|VirtualKeyboard)|PySide6/Qt/(qml|translations)"
    r"|pyarrow/(tests|include|src)|libarrow_(flight|substrait|python_flight)"
)
# The C library belongs to the system it runs on; Qt brings its own parts.
NOT_OURS = re.compile(r"(ld-linux.*|lib(c|m|dl|rt|pthread|util|resolv|nsl|anl))\.so|libQt6|libicu")
LICENCE = re.compile(r"(^|/)(licen[cs]es?(/|[-._]|$)|copying|notice|authors)", re.IGNORECASE)


def version() -> str:
    """Give the program's version."""
    text = (ROOT / "logger" / "version.py").read_text("utf-8")
    return re.findall(r'VERSION = "([^"]+)"', text)[0]


def name() -> str:
    """Give the folder's name: program, version, system, processor."""
    system = {"darwin": "macos", "win32": "windows"}.get(sys.platform, sys.platform)
    return f"heldwheel-{version()}-{system}-{platform.machine().lower()}"


def runtime_packages() -> list[str]:
    """Give the installed packages that the program needs, with theirs: what the bundle holds, tests left out."""
    import tomllib

    wanted = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]
    found: dict[str, str] = {}
    waiting = [Requirement(text) for text in wanted]
    for one in waiting:
        key = re.sub(r"[-_.]+", "-", one.name).lower()
        if key in found or (one.marker and not one.marker.evaluate({"extra": ""})):
            continue
        try:
            package = distribution(one.name)
        except PackageNotFoundError:
            sys.exit(f"{one.name} is not installed here: run 'make setup' first")
        found[key] = package.name
        waiting += [Requirement(text) for text in package.requires or ()]
    return sorted(found.values())


def screen_libraries() -> list[str]:
    """Give the system's libraries that Qt's window and sound need, but the C library's own: a bare system has none.

    They speak protocols that do not change (X11, font files); graphics drivers are not among them, and not needed.
    """
    qt = Path(str(distribution("PySide6_Essentials").locate_file("PySide6"))) / "Qt"
    asked = [*(qt / "plugins").glob("platforms/libq*.so"), *(qt / "lib").glob("libQt6XcbQpa.so.6")]
    asked += [qt / "lib" / f"libQt6{part}.so.6" for part in ("Gui", "Widgets", "Multimedia", "DBus")]
    found = set()
    for one in asked:
        said = subprocess.run(["ldd", str(one)], capture_output=True, text=True, check=False).stdout
        found |= {words[2] for line in said.splitlines() if len(words := line.split()) > 3 and words[2][0] == "/"}
    return sorted(path for path in found if not NOT_OURS.match(Path(path).name))


def licences(into: Path) -> int:
    """Copy the licences of everything in the bundle; give the number of packages."""
    into.mkdir()
    shutil.copy(ROOT / "LICENSE", into / "heldwheel.txt")
    python = Path(sysconfig.get_path("stdlib")) / "LICENSE.txt"
    shutil.copy(python, into / "python.txt")
    for package in runtime_packages():
        _licence_of(distribution(package), into)
    _system_licences(into)
    return len(list(into.iterdir()))


def _system_licences(into: Path) -> None:
    """Copy those of the system's libraries that came along, where Debian keeps them."""
    if shutil.which("dpkg-query") is None:
        return
    libraries = [file.name for file in (into.parent / "_internal").glob("*.so*")]
    words = ["dpkg-query", "-S", *(f"*/{library}" for library in libraries)]
    said = subprocess.run(words, capture_output=True, text=True, check=False).stdout
    for package in {line.split(":")[0] for line in said.splitlines()}:
        text = Path("/usr/share/doc") / package / "copyright"
        if text.exists():
            shutil.copy(text, into / f"system-{package}.txt")


def _licence_of(package: Distribution, into: Path) -> None:
    meta = package.metadata
    lines = [f"{package.name} {package.version}", f"Licence: {meta.get('License-Expression') or meta.get('License')}"]
    lines += [line for line in meta.get_all("Classifier") or () if line.startswith("License")]
    lines += [line for line in meta.get_all("Project-URL") or () if line]
    texts = [file for file in package.files or () if LICENCE.search(str(file)) and file.suffix not in {".py", ".pyc"}]
    for file in texts:
        path = Path(str(file.locate()))
        if path.is_file():
            lines += ["", "-" * 100, str(file), "-" * 100, path.read_text("utf-8", "replace")]
    (into / f"{package.name}.txt").write_text("\n".join(lines) + "\n", "utf-8")


def archive(folder: Path) -> Path:
    """Pack the folder."""
    if sys.platform == "win32":
        return Path(shutil.make_archive(str(folder), "zip", root_dir=folder.parent, base_dir=folder.name))
    path = folder.with_name(f"{folder.name}.tar.gz")
    with tarfile.open(path, "w:gz", compresslevel=6) as packed:
        packed.add(folder, folder.name)
    return path


def main() -> int:
    """Build folder and archive under ``dist``."""
    folder = ROOT / "dist" / name()
    shutil.rmtree(folder, ignore_errors=True)
    words = [
        sys.executable,
        "-m",
        "PyInstaller",
        "--noconfirm",
        "--log-level",
        "WARN",
        "--distpath",
        str(ROOT / "dist"),
    ]
    subprocess.run(
        [*words, "--workpath", str(ROOT / "build" / "bundle"), str(HERE / "heldwheel.spec")],
        env={**os.environ, "HELDWHEEL_BUNDLE": name()}, cwd=ROOT, check=True,
    )  # fmt: skip
    licences(folder / "licences")
    shutil.copy(ROOT / "README.md", folder / "README.md")
    shutil.copytree(ROOT / "recordings", folder / "recordings", ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    packed = archive(folder)
    size = sum(file.stat().st_size for file in folder.rglob("*") if file.is_file() and not file.is_symlink())
    print(f"{folder}: {size / 1e6:.0f} MB\n{packed}: {packed.stat().st_size / 1e6:.0f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
