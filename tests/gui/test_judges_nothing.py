"""The window judges nothing and scales nothing: what it shows comes from a job, by the same path as a file."""

from __future__ import annotations

import ast
from collections.abc import Iterable, Iterator
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
LEVERED = {"lever_factor", "axle_per_read"}
PASSED_ON = {"float", "abs", "max", "min", "round"}  # what gives a factor back as it is, or nearly


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


class Levered:
    """Where in some modules a lever factor is kept, under whatever name, and what is multiplied by it.

    A name is one of its function; an attribute, a parameter and a field of a record are followed through all modules.
    """

    def __init__(self, sources: Iterable[str]) -> None:
        self.trees = [ast.parse(source) for source in sources]
        self.defined = {n.name: n for tree in self.trees for n in tree.body if isinstance(n, DEFINED)}
        self.attributes, self.calls = set(LEVERED), set()
        self.names: dict[ast.AST, set[str]] = {}
        before = -1
        while before != (before := self.size()):
            for tree in self.trees:
                self.follow(tree, tree)

    def size(self) -> int:
        return len(self.attributes) + len(self.calls) + sum(map(len, self.names.values()))

    def is_one(self, node: ast.expr | None, scope: ast.AST) -> bool:
        """Whether an expression is a lever factor."""
        match node:
            case ast.Name(id=name):
                return name in self.names.get(scope, ())
            case ast.Attribute(attr="factor", value=ast.Name(id="fixture") | ast.Attribute(attr="fixture")):
                return True
            case ast.Attribute(attr=name):
                return name in self.attributes
            case ast.Call(func=ast.Attribute(attr="torque" | "at_axle"), args=[ast.Constant()]):
                return True
            case ast.Call(func=ast.Name(id=name) | ast.Attribute(attr=name), args=args):
                return name in self.calls or (name in PASSED_ON and any(self.is_one(arg, scope) for arg in args))
            case ast.BoolOp(values=parts) | ast.Tuple(elts=parts):
                return any(self.is_one(part, scope) for part in parts)
            case ast.IfExp(body=one, orelse=other):
                return self.is_one(one, scope) or self.is_one(other, scope)
            case ast.BinOp(left=one, right=other) | ast.NamedExpr(target=other, value=one):
                return self.is_one(one, scope) or self.is_one(other, scope)
        return False

    def follow(self, node: ast.AST, scope: ast.AST) -> None:
        """Take the names that a factor is given to in a tree."""
        for child in ast.iter_child_nodes(node):
            inner = child if isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef) else scope
            match child:
                case ast.Assign(targets=targets, value=value) if self.is_one(value, scope):
                    for target in targets:
                        self.keep(target, value, scope)
                case ast.AnnAssign(target=target, value=value) | ast.NamedExpr(target=target, value=value):
                    if self.is_one(value, scope):
                        self.keep(target, value, scope)
                case ast.Return(value=value) if self.is_one(value, scope) and isinstance(scope, ast.FunctionDef):
                    given = self.attributes if scope.decorator_list else self.calls
                    given.add(scope.name)
                case ast.Call(func=ast.Name(id=name)) if name in self.defined:
                    self.hand_over(child, self.defined[name], scope)
            if inner is not scope:
                self.names.setdefault(inner, set()).update(self.names.get(scope, ()))
            self.follow(child, inner)

    def keep(self, target: ast.expr, value: ast.expr, scope: ast.AST) -> None:
        if isinstance(target, ast.Tuple):
            pairs = zip(target.elts, value.elts, strict=False) if isinstance(value, ast.Tuple) else ()
            for one, its in pairs:
                if self.is_one(its, scope):
                    self.keep(one, its, scope)
        elif isinstance(target, ast.Name):
            self.names.setdefault(scope, set()).add(target.id)
        elif isinstance(target, ast.Attribute):
            self.attributes.add(target.attr)

    def hand_over(self, call: ast.Call, to: ast.AST, scope: ast.AST) -> None:
        """A factor that is an argument has the parameter's name in there; in a record the field's."""
        fields = [n.target.id for n in to.body if isinstance(n, ast.AnnAssign)] if isinstance(to, ast.ClassDef) else []
        names = fields or [one.arg for one in getattr(to, "args", ast.arguments(args=[])).args]
        kept = self.attributes if fields else self.names.setdefault(to, set())
        given = [*zip(names, call.args, strict=False), *((k.arg or "", k.value) for k in call.keywords)]
        kept.update(name for name, value in given if self.is_one(value, scope))

    def multiplied(self) -> list[str]:
        """Give what is multiplied or divided by one."""
        return [text for tree in self.trees for text in self._multiplied(tree, tree)]

    def _multiplied(self, node: ast.AST, scope: ast.AST) -> Iterator[str]:
        for child in ast.iter_child_nodes(node):
            inner = child if isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef) else scope
            if isinstance(child, ast.BinOp | ast.AugAssign) and isinstance(child.op, ast.Mult | ast.Div):
                sides = (child.left, child.right) if isinstance(child, ast.BinOp) else (child.target, child.value)
                if any(self.is_one(side, scope) for side in sides):
                    yield ast.unparse(child)
            yield from self._multiplied(child, inner)


DEFINED = (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)


def test_a_lever_factor_is_shown_and_never_multiplied_by() -> None:
    found = Levered(path.read_text(encoding="utf-8") for path in sorted(GUI.rglob("*.py")))
    assert any(found.names.values())  # it is shown, and so kept somewhere
    assert found.multiplied() == []


@pytest.mark.parametrize(
    "source",
    [
        "def f(x, card):\n    return x * card.lever_factor",
        "def f(x, card):\n    k = (card.lever_factor or 1.0)\n    return x / k",
        "def f(x, run):\n    a, k = 3.0, run.scale.torque(1.0)\n    return k * x",
        "def f(x, fixture):\n    x *= fixture.factor",
        "class A:\n    def f(self, at):\n        self.k = at.fixture.factor\n"
        "    def g(self, x):\n        return self.k * x",
        "class Loaded:\n    name: str\n    ratio: float\ndef f(at):\n    return Loaded('', at.fixture.factor)\n"
        "def g(x, one):\n    return (one.ratio or 1.0) * x",
        "def g(x, k):\n    return x * k\ndef f(x, scale):\n    return g(x, scale.axle_per_read)",
        "def g(card):\n    return card.lever_factor if card else 1.0\ndef f(x, card):\n    return x * g(card)",
    ],
)
def test_a_lever_factor_is_followed_under_any_name(source: str) -> None:
    assert len(Levered([source]).multiplied()) == 1
    assert Levered([source.replace("lever_factor", "number").replace("fixture.factor", "factor")
                    .replace("axle_per_read", "unit").replace("torque(1.0)", "unit")]).multiplied() == []  # fmt: skip
