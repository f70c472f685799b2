"""What production code must not know, and must not do."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


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


def test_nothing_but_tests_imports_the_virtual_radio():
    def who(room):
        return {p.name for p in (ROOT / room).rglob("*.py") if any(n.split(".")[0] == "bumble" for n in imports(p))}

    assert who("tests/radio")
    assert not any(map(who, ("logger", "analysis", "gui", "heldwheel")))


def test_no_part_of_bleak_but_its_public_names_is_used():
    for path in (ROOT / "logger" / "links").glob("*.py"):
        for name in imports(path):
            if name.split(".")[0] == "bleak":
                assert not any(part.startswith("_") for part in name.split(".")), (path, name)
                assert "bluezdbus" not in name, (path, name)
