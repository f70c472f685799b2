"""The recipe of the bundle: what goes in is pinned, licensed, and started under the names of the package."""

from __future__ import annotations

import importlib.util
import re
import tomllib
from importlib.metadata import distribution
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
BUNDLE = ROOT / ".ci" / "bundle"


@pytest.fixture(scope="module")
def make():
    spec = importlib.util.spec_from_file_location("bundle_make", BUNDLE / "make.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_every_package_in_it_is_pinned(make):
    locked = (ROOT / ".ci" / "constraints.txt").read_text("utf-8")
    pinned = {
        re.sub(r"[-_.]+", "-", name).lower() for name in re.findall(r"^([A-Za-z0-9_.-]+)==", locked, re.MULTILINE)
    }
    packages = {re.sub(r"[-_.]+", "-", name).lower() for name in make.runtime_packages()}
    assert {"numpy", "scipy", "pandas", "bleak", "pyserial", "pyside6-essentials", "fpdf2"} <= packages
    assert packages <= pinned
    assert "bumble" not in packages
    assert "pytest" not in packages


def test_every_package_in_it_brings_a_licence(make, tmp_path):
    for name in make.runtime_packages():
        make._licence_of(distribution(name), tmp_path)
        text = (tmp_path / f"{distribution(name).name}.txt").read_text("utf-8")
        assert "\nLicence: " in text
        assert "Licence: None\n" not in text or "License ::" in text or "-" * 100 in text, f"{name} states no licence"


def test_it_starts_what_the_package_starts():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    spec = (BUNDLE / "heldwheel.spec").read_text("utf-8")
    start = (BUNDLE / "start.py").read_text("utf-8")
    for name, place in {**project["scripts"], **project["gui-scripts"]}.items():
        assert f'("{name}"' in spec
        assert f"from {place.split(':')[0]} import main" in start


def test_the_freezing_tool_is_pinned_by_hash():
    text = (BUNDLE / "packages.txt").read_text("utf-8")
    assert re.search(r"^pyinstaller==[\d.]+", text, re.MULTILINE)
    assert text.count("--hash=sha256:") >= text.count("==")
