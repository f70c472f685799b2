"""What production code must not know, and must not do."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
VIRTUAL_RADIO = {"radio.py", "central.py", "bleak_backend.py", "gauges.py"}


@pytest.mark.parametrize(
    "module", ["logger.links.ble", "logger.doors.record", "logger.doors.find", "logger.links.build"]
)
def test_production_code_does_not_load_the_virtual_radio(module):
    code = f"import sys, {module}; sys.exit(any(name.split('.')[0] == 'bumble' for name in sys.modules))"
    assert subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=False).returncode == 0


def imports(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module


def test_only_the_virtual_radio_imports_its_library():
    found = {
        path.name
        for path in (ROOT / "logger").rglob("*.py")
        if any(name.split(".")[0] == "bumble" for name in imports(path))
    }
    assert found
    assert found <= VIRTUAL_RADIO


def test_no_part_of_bleak_but_its_public_names_is_used():
    for path in (ROOT / "logger" / "links").glob("*.py"):
        for name in imports(path):
            if name.split(".")[0] == "bleak":
                assert not any(part.startswith("_") for part in name.split(".")), (path, name)
                assert "bluezdbus" not in name, (path, name)
