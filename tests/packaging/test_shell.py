"""The shell of the project: versions agree, names are ours, the wheel holds what it should, doors start without Qt."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tomllib
import zipfile
from importlib.util import find_spec
from pathlib import Path

import pytest

from logger.version import VERSION

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def test_version_is_written_once() -> None:
    assert PROJECT["project"]["version"] == VERSION


@pytest.mark.parametrize("package", ["logger", "analysis", "gui"])
def test_package_names_are_ours(package: str) -> None:
    spec = find_spec(package)
    assert spec is not None
    assert spec.origin is not None
    assert Path(spec.origin).resolve().is_relative_to(ROOT), f"another distribution's {package} shadows ours"


def test_no_script_is_called_like_a_system_command() -> None:
    scripts = {**PROJECT["project"]["scripts"], **PROJECT["project"]["gui-scripts"]}
    assert set(scripts) == {"heldwheel-log", "heldwheel-read", "heldwheel"}


def test_never_uploaded_by_accident() -> None:
    assert "Private :: Do Not Upload" in PROJECT["project"]["classifiers"]


def test_constraints_are_hashed_and_name_no_index() -> None:
    text = (ROOT / ".ci" / "constraints.txt").read_text(encoding="utf-8")
    pins = [line for line in text.splitlines() if "==" in line]
    assert len(pins) > 50
    assert text.count("--hash=sha256:") >= len(pins)
    assert "://" not in text
    assert "--index" not in text


def test_wheel_holds_our_packages_and_their_data(tmp_path: Path) -> None:
    source = tmp_path / "source"
    for name in ("logger", "analysis", "gui", "heldwheel"):
        shutil.copytree(ROOT / name, source / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, source)
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(source)]
    done = subprocess.run(build, capture_output=True, text=True, check=False, timeout=110)
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]
    (wheel,) = tmp_path.glob("heldwheel-*.whl")
    check = [sys.executable, "-m", "check_wheel_contents", "--toplevel", "logger,analysis,gui,heldwheel", str(wheel)]
    checked = subprocess.run(check, capture_output=True, text=True, check=False, timeout=60)
    assert checked.returncode == 0, checked.stdout
    held = set(zipfile.ZipFile(wheel).namelist())
    for path in [
        *ROOT.glob("logger/transducers/*.toml"),
        *ROOT.glob("analysis/report/templates/*"),
        *ROOT.glob("*/py.typed"),
    ]:
        assert path.relative_to(ROOT).as_posix() in held


@pytest.mark.parametrize("door", ["logger", "analysis"])
def test_doors_start_without_the_window(door: str) -> None:
    program = (
        f"import runpy, sys\nsys.argv = ['x', '--help']\n"
        f"try:\n    runpy.run_module('{door}', run_name='__main__')\nexcept SystemExit:\n    pass\n"
        "slow = {'PySide6', 'pyqtgraph', 'pandas', 'scipy', 'numpy', 'rich', 'bleak'} & set(sys.modules)\n"
        "print('SLOW', sorted(slow))\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT)
    assert "commands:" in done.stdout
    assert done.stdout.rstrip().endswith("SLOW []")


def test_unknown_command_is_a_clear_error() -> None:
    words = [sys.executable, "-m", "logger", "fnid"]
    done = subprocess.run(words, capture_output=True, text=True, check=False, cwd=ROOT)
    assert done.returncode == 2
    assert "there is no command 'fnid'" in done.stderr
    assert "Traceback" not in done.stderr


def test_python_and_readme_agree_on_the_two_commands() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert "make demo" in readme
    assert "make test" in readme
    assert readme.splitlines()[0].startswith("# Heldwheel")
