"""The window judges nothing and scales nothing: what it shows comes from a job, by the same path as a file."""

from __future__ import annotations

import ast
from importlib import import_module
from pathlib import Path

import pytest

GUI = Path(__file__).parents[2] / "gui"
# What decides, sums up, or brings to the axle: for a job alone.
JUDGING = {
    "analysis.to_axle.at_axle": ("at_axle", "instrument_from", "level_from", "sensor_from"),
    "analysis.to_axle.dial": ("dial_reading",),
    "analysis.trace.live": ("LiveReader",),
    "analysis.verdict.judge": ("judge_pulls", "judge_budgets", "judge_pull", "judge_job", "values_of", "budgets_of"),
    "analysis.verdict.limits": ("decide", "not_valid"),
    "analysis.verdict.repeats": ("job_value", "single_pull"),
}
# What turns a number delivered into torque, or torque as read into torque at the axle.
SCALING = {"gain", "per_unit", "reading_factor", "sign"}


def of_a_job(source: str) -> list[str]:
    """Give what a module does that is a job's: what it imports, and arithmetic with a calibration."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and node.module in JUDGING:
            found += [alias.name for alias in node.names if alias.name in JUDGING[node.module]]
        elif isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult | ast.Div):
            found += [ast.unparse(node) for side in (node.left, node.right) if _name(side) in SCALING]
    return found


def _name(node: ast.expr) -> str:
    node = node.func if isinstance(node, ast.Call) else node
    if isinstance(node, ast.Attribute):
        return node.attr.lstrip("_")
    return node.id if isinstance(node, ast.Name) and node.id == "reading_factor" else ""


@pytest.mark.parametrize("path", sorted(GUI.rglob("*.py")), ids=lambda path: str(path.relative_to(GUI)))
def test_no_module_of_the_window_judges_or_scales(path: Path) -> None:
    assert of_a_job(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(("module", "names"), JUDGING.items())
def test_what_is_forbidden_is_there_and_is_seen(module: str, names: tuple[str, ...]) -> None:
    for name in names:
        assert hasattr(import_module(module), name)
        assert of_a_job(f"from {module} import {name}") == [name]


@pytest.mark.parametrize("line", ["read / self.calibration.gain", "raw * facts._sign", "x * reading_factor(unit)"])
def test_arithmetic_with_a_calibration_is_seen(line: str) -> None:
    assert of_a_job(line) == [line]
