"""``make bench``: every figure beside its reference, taken in one run on one machine.

Each ``bench_*.py`` here has ``run() -> list[dict]``; a row holds ``name``, ``ours``, ``reference`` (both text or
numbers), ``ratio`` (a number, or None where only a count is meant) and ``target`` (``"<= 2"``, ``">= 4.5"`` or "").
Each module runs in a process of its own: memory that one has used makes the next one's large arrays cheaper.
Absolute figures drift on shared machines: read the ratios.
"""

from __future__ import annotations

import argparse
import json
import os
import platform
import re
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from datetime import UTC, datetime
from multiprocessing import get_context
from pathlib import Path

from tests.bench.alone import rows_of

HERE = Path(__file__).resolve().parent
_TARGET = re.compile(r"(<=|>=|=)\s*([-+0-9.eE]+)")


def machine() -> dict[str, str]:
    """Describe the machine, without naming it."""
    model = ""
    cpuinfo = Path("/proc/cpuinfo")
    if cpuinfo.exists():
        flags = re.search(r"^cpu MHz\s*:\s*(.+)$", cpuinfo.read_text(encoding="utf-8"), re.MULTILINE)
        model = f"{float(flags[1]):.0f} MHz" if flags else ""
    return {
        "processors": f"{os.cpu_count()} x {platform.machine()} {model}".strip(),
        "system": f"{platform.system()} {platform.release().split('-')[0]}",
        "python": platform.python_version(),
        "when": datetime.now(UTC).isoformat(timespec="seconds"),
    }


def met(row: dict[str, object]) -> str:
    """Say whether a row meets its target: yes, no, or nothing where it has none."""
    found = _TARGET.match(str(row.get("target") or ""))
    value = row.get("ratio")
    if not found or not isinstance(value, int | float):
        return ""
    bound = float(found[2])
    good = {"<=": value <= bound, ">=": value >= bound, "=": value == bound}[found[1]]
    return "met" if good else "MISSED"


def _text(value: object) -> str:
    return f"{value:.4g}" if isinstance(value, float) else "" if value is None else str(value)


def main() -> int:
    """Run the benchmarks and write the results."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("only", nargs="*", help="names of benchmarks, such as 'logger' (all without)")
    parser.add_argument("--out", type=Path, default=Path("bench-output"))
    args = parser.parse_args()
    modules = sorted(p.stem for p in HERE.glob("bench_*.py"))
    wanted = [m for m in modules if not args.only or m.removeprefix("bench_") in args.only]
    if not wanted:
        sys.stderr.write(f"no such benchmark; there are: {', '.join(m.removeprefix('bench_') for m in modules)}\n")
        return 2
    about = machine()
    print(", ".join(f"{k}: {v}" for k, v in about.items()))
    rows: list[dict[str, object]] = []
    head = f"{'what':<64}{'ours':>14}{'reference':>14}{'ratio':>9}  {'target':<10}"
    print(head, "-" * len(head), sep="\n")
    pool = ProcessPoolExecutor(1, mp_context=get_context("spawn"), max_tasks_per_child=1)
    for name in wanted:
        begun = time.perf_counter()
        for row in pool.submit(rows_of, name).result():
            row["met"] = met(row)
            rows.append(row)
            cells = [_text(row.get(k)) for k in ("ours", "reference", "ratio")]
            figures = f"{cells[0]:>14}{cells[1]:>14}{cells[2]:>9}"
            print(f"{row['name']!s:<64}{figures}  {row.get('target') or '':<10}{row['met']}")
        print(f"({name}: {time.perf_counter() - begun:.0f} s)", flush=True)
    pool.shutdown()
    args.out.mkdir(parents=True, exist_ok=True)
    target = args.out / "bench.json"
    target.write_text(json.dumps({"machine": about, "rows": rows}, indent=1), encoding="utf-8")
    print(f"written: {target}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
