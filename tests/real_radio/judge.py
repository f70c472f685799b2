"""Tell from what the machine wrote whether each test ended as it must: every sample compared, every failure in words.

python judge.py FOLDER TEST...
"""

import json
import re
import sys
from pathlib import Path

WHOLE = ("wrong values", "out of order", "twice", "recorded but never sent")  # none of these, ever
# What the user must have read, and how many sent samples may be missing (None: no recording is compared).
EXPECTED = {
    "find": ([r"F0:00:00:00:00:01", r"exit code 0"], None),
    "rec100": ([r"exit code 0", r" 0 lost"], 0),
    "rec500": ([r"exit code 0", r" 0 lost"], 0),
    "kill": ([r"exit code 0", r"is back after"], "counted"),
    "power": ([r"exit code 0", r"is back after"], "counted"),
    "drop": ([r"exit code 0", r"is back after"], "counted"),
    "lock": ([r"exit code 2", r"may have to be paired first"], None),
    "lock3": ([r"exit code 0"], 0),
    "stale": ([r"connected", r"second.csv: \d+ samples", r"third.csv: \d+ samples"], None),
}


def sections(log):
    """Give what each test wrote."""
    parts = re.split(r"^\[[\d.]+\] ===== (\w+)$", log, flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def faults(name, text):
    """Give what is not as it must be."""
    words, missing = EXPECTED.get(name, ([], None))
    found = [f"nothing like '{pattern}' was said" for pattern in words if not re.search(pattern, text)]
    compared = [json.loads(line) for line in text.splitlines() if line.startswith('{"recorded"')]
    for one in compared:
        found += [f"{one[key]} {key}" for key in WHOLE if one[key]]
        if missing == 0 and one["sent but missing"]:
            found.append(f"{one['sent but missing']} samples that were sent are missing")
        if missing == "counted" and one["sent but missing"]:
            told = [int(n) for n in re.findall(r"(\d+) lost", text)]
            if not told or max(told) < one["sent but missing"]:
                found.append(f"{one['sent but missing']} samples are missing, {max(told, default=0)} were counted")
    if missing is not None and not compared:
        found.append("no recording was compared")
    if "Traceback" in text:
        found.append("a traceback")
    return found


def main(folder, wanted):
    """Print one line a test; give how many failed."""
    log = Path(folder, "log.txt")
    said = sections(log.read_text(encoding="utf-8", errors="replace")) if log.exists() else {}
    failed = 0
    for name in wanted:
        wrong = faults(name, said[name]) if name in said else ["it did not run"]
        failed += bool(wrong)
        print(f"{name:10} {'FAILED: ' + '; '.join(wrong) if wrong else 'as it must be'}")
    return failed


if __name__ == "__main__":
    sys.exit(min(1, main(sys.argv[1], sys.argv[2:])))
