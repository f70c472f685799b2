"""One token of the program changed at a time: do the nearest tests notice (``make mutants``)?

A mutation turns an operator, a comparison, a sign, a constant or a ``min`` into another. Type hints, imports,
decorators, texts (docstrings, messages, ``__all__``) and signs of arguments are no mutations here. The sample is drawn
by a seed from all modules of the rooms below, none left out. Which tests run the changed line was recorded once
(``tests.touched``); of a constant, which tests run a line that uses it. Of those the quickest run first, up to a budget
of seconds, until one fails; the module's own tests come before tests of what uses it.

Packages are imported once; every mutation is a fork of this process in which an import hook hands out the changed
module. So nothing is written to the tree, and a test that starts a process of its own sees the unchanged program. A
mutation counts as noticed only where the failing test passes, run alike, on the unchanged program; so does one whose
tests no longer end. What survives is printed, to be read: either a test is missing, or it changes nothing that anybody
could see; then ``mutants_alike.toml`` says why, and it is counted apart.

    python -m tests.mutants --most 300 --seed 1        a random choice
    python -m tests.mutants --only analysis/verdict/scatter.py every mutation of one module
"""

from __future__ import annotations

import argparse
import ast
import contextlib
import importlib
import importlib.abc
import importlib.machinery
import importlib.util
import io
import json
import os
import random
import re
import resource
import signal
import subprocess
import sys
import tempfile
import time
import tokenize
import tomllib
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass
from functools import cache
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parents[1]
ROOMS = (
    *(
        f"analysis/{room}"
        for room in ("to_axle", "verdict", "uncertainty", "compare", "trace", "road", "identify", "rows")
    ),
    "logger/decoder",
    "logger/recordings",
    "gui/models",
)
SINGLE = ("logger/stream/clock.py",)
RECORDED = (
    *(f"tests/{room}" for room in ROOMS),
    "tests/published",
    "tests/analysis/test_borders.py",
    "tests/analysis/test_pipeline.py",
    "tests/analysis/doors",
    "tests/logger/stream",
    "tests/logger/doors/test_describe.py",
    *ROOMS,  # the examples in their docstrings
)
ALIKE = Path(__file__).with_name("mutants_alike.toml")
SWAPS = {
    "+": "-", "-": "+", "*": "/", "/": "*", "<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==",
    "and": "or", "or": "and", "min": "max", "max": "min", "True": "False", "False": "True", "not": "",
}  # fmt: skip
BUDGET_S = 8.0
"""Recorded seconds of the processor that the tests of one mutation take, at most; the recorder itself doubles them."""

HANG_S, HANG_TIMES, IDLE_TIMES = 30, 5.0, 20
"""Tests that compute for longer than this (s) and so many times their recorded seconds hang: noticed as well. The limit
is one of processor time, so that a busy machine makes no hang; what only waits is given so many times as long."""


@dataclass(frozen=True, slots=True)
class Mutation:
    """One token to change: where, from what, to what."""

    file: str
    line: int
    column: int
    before: str
    after: str


def mutations(path: Path) -> list[Mutation]:
    """Give every one-token mutation of a module; texts, annotations and imports are left alone."""
    found, shown = [], str(path.relative_to(ROOT))
    tokens = list(tokenize.generate_tokens(io.StringIO(path.read_text(encoding="utf-8")).readline))
    for before, token in zip([None, *tokens], tokens, strict=False):
        skip = token.line.lstrip().startswith(("import ", "from ", "@", "def ", "class ", ">>>")) or "->" in token.line
        after = SWAPS.get(token.string)
        bare = token.string in "*/" and token.line[token.end[1] :].lstrip().startswith((",", ")"))  # of a signature
        bare = bare or (token.string == "*" and before is not None and not before.string.strip())  # begins a line
        if token.type == tokenize.NUMBER:
            after = _other_number(token.string)
        elif token.string in "*+-/" and before is not None and before.string in "(,=[{:*return":
            after = None  # a star of arguments, a sign that is its own
        if after is not None and not skip and not bare and token.type in (tokenize.OP, tokenize.NAME, tokenize.NUMBER):
            found.append(Mutation(shown, token.start[0], token.start[1], token.string, after))
    return found


def alike(path: Path = ALIKE) -> dict[Mutation, str]:
    """Give the mutations that are known to change nothing, and why.

    An entry names the file, the whole line without its indent, the token, which one of its kind in the line (from 0)
    and why. So it holds wherever the line moves, and not for a line that has become another.

    Raises
    ------
    ValueError
        An entry that is no mutation of the program any more.
    """
    found: dict[Mutation, str] = {}
    for entry in tomllib.loads(path.read_text(encoding="utf-8")).get("alike", []):
        lines = (ROOT / entry["file"]).read_text(encoding="utf-8").splitlines()
        same: dict[int, list[Mutation]] = {}
        for one in mutations(ROOT / entry["file"]):
            if lines[one.line - 1].strip() == entry["line"] and one.before == entry["token"]:
                same.setdefault(one.line, []).append(one)
        which = entry.get("which", 0)
        if not same or any(which >= len(tokens) for tokens in same.values()):
            raise ValueError(f"{path.name}: no such mutation any more: {entry['file']}: {entry['line']}")
        found |= {tokens[which]: entry["why"] for tokens in same.values()}
    return found


def _other_number(text: str) -> str | None:
    if text.isdigit():
        return str(int(text) + 1)
    try:
        return repr(float(text) * 1.1 or 1.0)
    except ValueError:
        return None


def mutated(mutation: Mutation) -> str:
    """Give the module's text with the one token changed."""
    lines = (ROOT / mutation.file).read_text(encoding="utf-8").splitlines(keepends=True)
    line, end = lines[mutation.line - 1], mutation.column + len(mutation.before)
    lines[mutation.line - 1] = line[: mutation.column] + mutation.after + line[end:]
    return "".join(lines)


@dataclass(frozen=True, slots=True)
class Touched:
    """Which tests run which line (``tests.touched``)."""

    tests: tuple[str, ...]
    seconds: tuple[float, ...]
    lines: dict[str, dict[str, list[int]]]

    def lasts(self, tests: Sequence[str]) -> float:
        """Give the recorded seconds of tests."""
        each = dict(zip(self.tests, self.seconds, strict=True))
        return sum(each[test] for test in tests)

    @classmethod
    def read(cls, *paths: Path) -> Touched:
        """Join maps."""
        seconds: dict[str, float] = {}
        lines: dict[str, dict[str, set[str]]] = {}
        for path in paths:
            said = json.loads(path.read_text(encoding="utf-8"))
            seconds |= said["seconds"]
            names = list(said["seconds"])
            for file, of in said["lines"].items():
                for line, tests in of.items():
                    lines.setdefault(file, {}).setdefault(line, set()).update(names[i] for i in tests)
        number = {test: i for i, test in enumerate(seconds)}
        numbered = {f: {n: sorted(number[t] for t in ts) for n, ts in of.items()} for f, of in lines.items()}
        return cls(tuple(seconds), tuple(seconds.values()), numbered)

    def nearest(self, file: str, line: int) -> list[str]:
        """Give the tests that run a line, the quickest first; of a constant those that run a line which uses it.

        A statement of several lines is recorded at its first, hence the look upwards. Where no test is known, those of
        the module are taken. Test files that name the module come first.
        """
        of = self.lines.get(file, {})
        uses = uses_of(file, line)
        if uses is None:
            found = next((set(of[str(n)]) for n in range(line, max(line - 6, 0), -1) if of.get(str(n))), None)
        else:
            found = {i for where, n in uses for i in self.lines.get(where, {}).get(str(n), ())}
            found |= {i for i, test in enumerate(self.tests) if names_constant(test, file, line)}
        counts = Counter(i for tests in of.values() for i in tests)
        chosen = found or set(counts)
        order = sorted(chosen, key=lambda i: (not names(self.tests[i], file), self.seconds[i] / (1 + counts.get(i, 0))))
        picked, spent = [], 0.0
        for i in order:
            if spent + self.seconds[i] <= BUDGET_S:
                picked.append(i)
                spent += self.seconds[i]
        return [self.tests[i] for i in sorted(picked, key=lambda i: self.seconds[i])]


@cache
def names(test: str, file: str) -> bool:
    """Tell whether a test's file is the module's own, imports it, or keeps the answers of its room."""
    path = ROOT / test.split("::")[0]
    module = file.removesuffix(".py").replace("/", ".")
    package, _, stem = module.rpartition(".")
    if path.name == f"test_{stem}.py" or path == ROOT / file:
        return True
    if path.name.startswith("test_kept") and path.parent == ROOT / "tests" / Path(file).parent:
        return True
    sought = rf"from {package} import [^\n]*\b{stem}\b|\b{module} import|import {module}\b"
    return re.search(sought, _text(path)) is not None


@cache
def names_constant(test: str, file: str, line: int) -> bool:
    """Tell whether a test's file imports the module and names what a line at import defines."""
    defined = _defined(_tree(ROOT / file), line)
    if defined is None or not names(test, file):
        return False
    text = _text(ROOT / test.split("::")[0])
    return any(re.search(rf"\b{name}\b", text) for name in _names_in(defined))


@cache
def uses_of(file: str, line: int) -> tuple[tuple[str, int], ...] | None:
    """Give the lines that use what a line at import defines, as (file, line); None for a line within a function.

    What defines another constant is followed to the uses of that one; a default of a parameter is used in the body.
    """
    tree = _tree(ROOT / file)
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef) and node.lineno <= line < node.body[0].lineno:
            return tuple((file, inner.lineno) for inner in node.body)
    defined = _defined(tree, line)
    if defined is None:
        return None
    wanted = _names_in(defined)
    found: list[tuple[str, int]] = []
    for path in (ROOT / file, *_importers(file)):
        for n in ast.walk(_tree(path)):
            name = n.id if isinstance(n, ast.Name) else n.attr if isinstance(n, ast.Attribute) else ""
            if name in wanted and isinstance(n, ast.expr) and isinstance(getattr(n, "ctx", None), ast.Load):
                where = str(path.relative_to(ROOT))
                own = where == file and defined.lineno <= n.lineno <= (defined.end_lineno or 0)
                found += [] if own else uses_of(where, n.lineno) or [(where, n.lineno)]
    return tuple(dict.fromkeys(found))


def _defined(tree: ast.Module, line: int) -> ast.stmt | None:
    """Give the assignment of a module or class that a line belongs to."""
    bodies = (tree.body, *(node.body for node in tree.body if isinstance(node, ast.ClassDef)))
    at_import = (n for body in bodies for n in body if isinstance(n, ast.Assign | ast.AnnAssign))
    return next((n for n in at_import if n.lineno <= line <= (n.end_lineno or 0)), None)


def _names_in(defined: ast.stmt) -> set[str]:
    return {n.id for n in ast.walk(defined) if isinstance(n, ast.Name) and isinstance(n.ctx, ast.Store)}


@cache
def _importers(file: str) -> tuple[Path, ...]:
    package, _, stem = file.removesuffix(".py").replace("/", ".").rpartition(".")
    paths = [path for room in ("analysis", "logger", "gui") for path in sorted((ROOT / room).rglob("*.py"))]
    sought = (f"from {package}.{stem} import", f"from {package} import {stem}")
    return tuple(path for path in paths if any(words in _text(path) for words in sought))


@cache
def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


@cache
def _tree(path: Path) -> ast.Module:
    return ast.parse(_text(path))


class _Hook(importlib.abc.MetaPathFinder, importlib.abc.SourceLoader):
    """Hands out one module with a changed text."""

    def __init__(self, file: str, text: str) -> None:
        self.name, self.file, self.text = file.removesuffix(".py").replace("/", "."), ROOT / file, text

    def find_spec(
        self, fullname: str, path: Sequence[str] | None, target: ModuleType | None = None
    ) -> importlib.machinery.ModuleSpec | None:
        """Find the one module."""
        if fullname != self.name.removesuffix(".__init__"):
            return None
        return importlib.util.spec_from_file_location(fullname, self.file, loader=self)

    def get_filename(self, fullname: str) -> str:
        """Give the file that it stands for."""
        return str(self.file)

    def get_data(self, path: str | bytes) -> bytes:
        """Give the changed text; no compiled file is read or written."""
        if str(path).endswith(".pyc"):
            raise OSError
        return self.text.encode()


class _Chosen:
    """Runs the chosen tests in their order; writes down which failed."""

    def __init__(self, tests: list[str], failed: Path) -> None:
        self.order, self.failed = {test: i for i, test in enumerate(tests)}, failed

    def pytest_pycollect_makeitem(self, collector: pytest.Module, name: str, obj: object) -> list[pytest.Item] | None:
        """Take no function of the program for a test: a file that is named is searched for them, its name or not."""
        return None if collector.path.is_relative_to(ROOT / "tests") else []

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Leave the chosen ones."""
        items[:] = sorted((i for i in items if i.nodeid in self.order), key=lambda i: self.order[i.nodeid])

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Write down the first that failed."""
        if report.failed and not self.failed.exists():
            self.failed.write_text(report.nodeid, encoding="utf-8")

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """Write down that a test module does not even load."""
        if report.failed and not self.failed.exists():
            self.failed.write_text("import", encoding="utf-8")


def run(file: str, text: str, tests: list[str], hang_s: float) -> str | None:
    """Run tests in a fork in which a module has this text; give the one that failed, ``"hang"``, ``None``."""
    with tempfile.TemporaryDirectory(prefix="heldwheel-mutant-") as folder:
        failed = Path(folder) / "failed"
        child = os.fork()
        if child == 0:
            os.setsid()
            code = 3
            try:
                resource.setrlimit(resource.RLIMIT_CPU, (int(hang_s), int(hang_s)))
                _silence()
                sys.meta_path.insert(0, _Hook(file, text))
                files = list(dict.fromkeys(test.split("::")[0] for test in tests))
                plain = [
                    "-x",
                    "-q",
                    "-n0",
                    "--tb=no",
                    "--assert=plain",
                    "-p",
                    "no:cacheprovider",
                    f"--basetemp={folder}/t",
                    *files,
                ]
                code = int(pytest.main(plain, plugins=[_Chosen(tests, failed)]))
            finally:
                os._exit(code)
        ended = _wait(child, IDLE_TIMES * hang_s)
        if ended is None or (os.WIFSIGNALED(ended) and not failed.exists()):
            return "hang"
        if failed.exists():
            return failed.read_text(encoding="utf-8")
        return None if ended == 0 else "import"


def _wait(child: int, hang_s: float) -> int | None:
    until = time.monotonic() + hang_s
    while time.monotonic() < until:
        pid, status = os.waitpid(child, os.WNOHANG)
        if pid:
            return status
        time.sleep(0.02)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return None


def noticed(mutation: Mutation, touched: Touched, passes: dict[str, bool]) -> str | None:
    """Give the test that notices a mutation and passes without it; ``None`` where it survives."""
    tests = touched.nearest(mutation.file, mutation.line)
    text = mutated(mutation)
    while tests:
        hang_s = HANG_S + HANG_TIMES * touched.lasts(tests)
        failed = run(mutation.file, text, tests, hang_s)
        if failed is None:
            return None
        again = [failed] if failed in tests else tests  # "import" and "hang" are of all of them
        key = " ".join(again)
        if key not in passes:
            plain = (ROOT / mutation.file).read_text(encoding="utf-8")
            passes[key] = run(mutation.file, plain, again, hang_s) is None
        if passes[key]:
            return failed
        if failed not in tests:
            raise RuntimeError(
                f"{mutation.file}: its tests do not run on the unchanged program ({failed}): {tests[:3]}"
            )
        tests = [test for test in tests if test != failed]
    return None


def record(folder: Path) -> list[Path]:
    """Record which tests run which line: one run of the tests of these rooms; say which do not pass under it."""
    out = folder / "touched.json"
    command = [sys.executable, "-m", "pytest", "-p", "tests.touched", "-q", "-n0", "-p", "no:cacheprovider", *RECORDED]
    done = subprocess.run(
        command,
        cwd=ROOT,
        env={**os.environ, "HELDWHEEL_TOUCHED": str(out)},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        print("these do not pass under the recorder and are left out:", done.stdout[-3000:], sep="\n")
    return [out]


def import_packages() -> None:
    """Import what the tests need of other people's packages, once for all forks; a fork finds out what that is."""
    with tempfile.TemporaryDirectory() as folder:
        names = Path(folder) / "names"
        child = os.fork()
        if child == 0:
            try:
                _silence()
                pytest.main(["--collect-only", "-q", "-n0", "--assert=plain", "-p", "no:cacheprovider", *RECORDED])
                others = [n for n, m in sys.modules.items() if "site-packages" in (getattr(m, "__file__", "") or "")]
                names.write_text("\n".join(others), encoding="utf-8")
            finally:
                os._exit(0)
        os.waitpid(child, 0)
        for name in names.read_text(encoding="utf-8").split():
            with contextlib.suppress(Exception):
                importlib.import_module(name)


def _silence() -> None:
    nothing = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(nothing, stream)


def _wanted(args: argparse.Namespace) -> list[Mutation]:
    if args.only:
        return [m for file in args.only for m in mutations(ROOT / file)]
    within = args.within or (*ROOMS, *SINGLE)
    paths = [p for room in ROOMS for p in sorted((ROOT / room).rglob("*.py"))] + [ROOT / file for file in SINGLE]
    paths = [p for p in paths if any(p.is_relative_to(ROOT / room) for room in within)]
    every = [m for path in paths for m in mutations(path)]
    return random.Random(args.seed).sample(every, min(args.most, len(every)))


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--most", type=int, default=300, help="mutations (default 300)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--within", nargs="+", metavar="ROOM", help="draw from these rooms only (default: all)")
    parser.add_argument("--only", nargs="+", metavar="MODULE", help="every mutation of these modules")
    parser.add_argument(
        "--part", type=int, nargs=2, default=(0, 1), metavar=("I", "N"), help="every N-th, from the I-th"
    )
    parser.add_argument("--touched", type=Path, nargs="+", help="maps recorded before (default: record now)")
    parser.add_argument("--out", type=Path, default=ROOT / "mutants-output.json")
    return parser.parse_args()


def each(wanted: list[Mutation], touched: Touched, write: Callable[[list[dict[str, object]]], None]) -> int:
    """Try mutations, print those that survive; give how many were noticed."""
    said: list[dict[str, object]] = []
    passes: dict[str, bool] = {}
    for mutation in wanted:
        begun = time.monotonic()
        by = noticed(mutation, touched, passes)
        said.append({**asdict(mutation), "by": by, "seconds": round(time.monotonic() - begun, 2)})
        if by is None:
            place = f"{mutation.file}:{mutation.line}:{mutation.column}"
            print(f"survived {place}  {mutation.before} -> {mutation.after}", flush=True)
        write(said)
    return sum(one["by"] is not None for one in said)


def main() -> int:
    """Run mutations, print the survivors, and write all to a file; 1 where fewer than nine of ten were noticed."""
    args = _arguments()
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    os.chdir(ROOT)
    os.nice(10)
    with tempfile.TemporaryDirectory() as folder:
        touched = Touched.read(*(args.touched or record(Path(folder))))
    drawn = _wanted(args)[args.part[0] :: args.part[1]]
    known = alike()
    wanted = [one for one in drawn if one not in known]
    import_packages()
    killed = each(wanted, touched, lambda said: _write(args.out, said))
    share = killed / max(len(wanted), 1)
    print(
        f"{killed} of {len(wanted)} noticed ({share:.1%}); {len(drawn) - len(wanted)} more are known to change nothing"
    )
    return 0 if wanted and share >= 0.9 else 1


def _write(out: Path, said: list[dict[str, object]]) -> None:
    out.write_text(json.dumps(said, indent=1), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
