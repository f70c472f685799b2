"""The models run where no Qt is installed, and their examples are true."""

import doctest
import importlib
import pkgutil
import subprocess
import sys

import pytest

import gui.models

NAMES = [module.name for module in pkgutil.iter_modules(gui.models.__path__, "gui.models.")]

WITHOUT_QT = """
import sys
class Block:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in {"PySide6", "shiboken6", "pyqtgraph"}:
            raise ImportError(f"{name} is not there")
sys.meta_path.insert(0, Block())
import importlib
for name in sys.argv[1:]:
    importlib.import_module(name)
from gui.models.job import JobCard
from gui.models.run import TestRun
run = TestRun(JobCard())
run.start()
run.act()
assert run.checks[0].ticked
assert not [name for name in sys.modules if name.startswith(("PySide6", "pyqtgraph"))]
"""


def test_every_model_is_looked_at() -> None:
    assert len(NAMES) >= 20


def test_models_run_without_qt() -> None:
    done = subprocess.run([sys.executable, "-c", WITHOUT_QT, *NAMES], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("name", NAMES)
def test_examples(name: str) -> None:
    assert doctest.testmod(importlib.import_module(name)).failed == 0
