"""One token of the program changed at a time: do the nearest tests notice (``make mutants``)?

A mutation turns an operator, a comparison, a sign, a constant or a ``min`` into another; it is made in a copy of the
tree, and the tests that lie nearest to its module are run: the one of its name, and those that import it. What survives
is written down, to be read: either it changes nothing that anybody could see, or a test is missing.

    python -m tests.mutants --most 300 --seed 1        a random choice of the rooms that hold numbers
    python -m tests.mutants --only analysis/verdict/scatter.py every mutation of one module
"""

from __future__ import annotations

import argparse
import io
import json
import random
import shutil
import subprocess
import sys
import tempfile
import time
import tokenize
from concurrent.futures import ThreadPoolExecutor
from dataclasses import asdict, dataclass
from pathlib import Path
from queue import Queue

ROOT = Path(__file__).resolve().parents[1]
ROOMS = ("analysis", "logger/decoder", "gui/models")
SINGLE = ("logger/stream/clock.py", "logger/recordings/recording.py", "logger/instruments/weigh.py")
LEAVE = ("analysis/report", "analysis/doors")  # words and places on paper
SWAPS = {
    "+": "-", "-": "+", "*": "/", "/": "*", "<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==",
    "and": "or", "or": "and", "min": "max", "max": "min", "True": "False", "False": "True", "not": "bool",
}  # fmt: skip
TESTS = 5
"""Test modules that are run for one mutation, at most."""

TIMEOUT_S = 240
"""A mutation that makes its tests hang is noticed as well."""


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
        if token.type == tokenize.NUMBER:
            after = _other_number(token.string)
        elif token.string in "*+-/" and before is not None and before.string in "(,=[{:*return":
            after = None  # a star of arguments, a sign that is its own
        if after and not skip and token.type in (tokenize.OP, tokenize.NAME, tokenize.NUMBER):
            found.append(Mutation(shown, token.start[0], token.start[1], token.string, after))
    return found


def _other_number(text: str) -> str | None:
    if text.isdigit():
        return str(int(text) + 1)
    try:
        return repr(float(text) * 1.1)
    except ValueError:
        return None


def nearest_tests(file: str) -> list[str]:
    """Give the tests of a module: that of its name, then those that import it, the smallest first."""
    module, stem = file.removesuffix(".py").replace("/", "."), Path(file).stem
    tests = [p for p in (ROOT / "tests").rglob("test_*.py") if p.parts[-2] not in ("faults", "bench", "packaging")]
    named = [p for p in tests if p.stem == f"test_{stem}"]
    parent, _, name = module.rpartition(".")
    imports = [
        p
        for p in tests
        if p not in named
        and (f"{module} import" in (text := p.read_text(encoding="utf-8")) or f"from {parent} import {name}" in text)
    ]
    # A whole window is far away: its tests come last.
    far = ROOT / "tests" / "gui"
    chosen = sorted(named + imports, key=lambda p: (p.parent == far, p not in named, p.stat().st_size))[:TESTS]
    return [str(p.relative_to(ROOT)) for p in chosen]


def survives(mutation: Mutation, tree: Path) -> bool:
    """Whether the nearest tests pass in a tree with this mutation."""
    path = tree / mutation.file
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines(keepends=True)
    line, end = lines[mutation.line - 1], mutation.column + len(mutation.before)
    lines[mutation.line - 1] = line[: mutation.column] + mutation.after + line[end:]
    path.write_text("".join(lines), encoding="utf-8")
    tests = nearest_tests(mutation.file)
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-n0", "-p", "no:cacheprovider", *tests]
    try:
        done = subprocess.run(command, cwd=tree, capture_output=True, timeout=TIMEOUT_S, check=False)
        return not tests or done.returncode == 0
    except subprocess.TimeoutExpired:
        return False
    finally:
        path.write_text(text, encoding="utf-8")


def _tree(folder: Path) -> Path:
    left_out = shutil.ignore_patterns(".git", ".venv", "*-output", "shots", "__pycache__", ".mypy_cache", ".hypothesis")
    return Path(shutil.copytree(ROOT, folder, ignore=left_out))


def _wanted(args: argparse.Namespace) -> list[Mutation]:
    if args.only:
        return [m for file in args.only for m in mutations(ROOT / file)]
    paths = [p for room in ROOMS for p in sorted((ROOT / room).rglob("*.py"))]
    paths = [p for p in paths if not str(p.relative_to(ROOT)).startswith(LEAVE)] + [ROOT / file for file in SINGLE]
    every = [m for path in paths for m in mutations(path)]
    return random.Random(args.seed).sample(every, min(args.most, len(every)))


def main() -> int:
    """Run mutations, print the survivors, and write all to a file; 1 where fewer than nine of ten were noticed."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--most", type=int, default=300, help="mutations (default 300)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", nargs="+", metavar="MODULE", help="every mutation of these modules")
    parser.add_argument("--at-once", type=int, default=2, help="trees at a time (default 2)")
    parser.add_argument("--seconds", type=float, default=float("inf"), help="begin none after so long")
    parser.add_argument("--out", type=Path, default=ROOT / "mutants-output.json")
    args = parser.parse_args()
    begun, wanted = time.monotonic(), _wanted(args)
    said: list[dict[str, object]] = []
    with tempfile.TemporaryDirectory() as folder:
        trees: Queue[Path] = Queue()
        for i in range(args.at_once):
            trees.put(_tree(Path(folder) / str(i)))

        def one(mutation: Mutation) -> None:
            if time.monotonic() - begun > args.seconds:
                return
            tree = trees.get()
            try:
                alive = survives(mutation, tree)
            finally:
                trees.put(tree)
            said.append({**asdict(mutation), "survived": alive})
            if alive:
                place = f"{mutation.file}:{mutation.line}:{mutation.column}"
                print(f"survived {place}  {mutation.before} -> {mutation.after}", flush=True)
            args.out.write_text(json.dumps(said, indent=1), encoding="utf-8")

        with ThreadPoolExecutor(args.at_once) as pool:
            list(pool.map(one, wanted))
    killed = sum(not m["survived"] for m in said)
    print(f"{killed} of {len(said)} noticed ({killed / max(len(said), 1):.0%}), of {len(wanted)} wanted")
    return 0 if said and killed >= 0.9 * len(said) else 1


if __name__ == "__main__":
    sys.exit(main())
