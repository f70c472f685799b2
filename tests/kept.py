"""Kept answers: whole answers of the program, held against files under ``tests/data/kept``.

A kept answer says that an answer *changed*, never that it was right: what is kept is what the program said on the day
it was written. Whether an answer is true is shown elsewhere, against simulated truth, published values and measured
traces. Kept answers are there because a program with thousands of numbers in it has more of them than anybody states
one by one: a sign, a share or a border that slips shows here as a changed answer, with its place, what it was and what
it is.

    kept("trace", "clean-005", reading)     in a test: compare, or write while renewing
    python -m tests.kept                    renew all; prints what changed and nothing else
    python -m tests.kept tests/analysis     renew those of some tests

Whoever renews reads what is printed: it is what the change of the program does to its answers. Records are kept as
their values in order, so that a field may change its name; floats to eight digits, equal where they differ by less than
a millionth (or by ``TINY``, since what remains of a difference of equals is chance of the machine).
"""

from __future__ import annotations

import argparse
import dataclasses
import hashlib
import json
import math
import os
import re
import subprocess
import sys
from collections.abc import Callable, Mapping
from datetime import date, datetime, time, timedelta
from enum import Enum
from functools import cache
from pathlib import Path, PurePath
from typing import Any

import msgspec
import numpy as np

from logger.errors import HeldwheelError

FOLDER = Path(__file__).with_name("data") / "kept"
RENEW = "HELDWHEEL_KEEP"
"""The environment's name for the file that changes are listed in; where it is set, answers are written."""

DEEP = 5
"""Records within records are taken apart so far."""

RELATIVE, TINY = 1e-6, 1e-9
SERIES = 40
"""A longer series of floats is kept as an array."""

WORDS = 80
"""A longer text is kept as its beginning and a hash."""

MOST = 1e6
"""Greater numbers of a long array count as this, so that one of them does not hide the others."""

LONG = 12
"""An array of more numbers than this is kept as how many they are, two sums, and its ends."""


def kept(room: str, name: str, value: object) -> None:
    """Hold an answer against the one that was kept under this name.

    Raises
    ------
    AssertionError
        It has changed, or was never kept; the first ten places stand in the text.
    """
    answer = plain(value)
    if os.environ.get(RENEW):
        _renew(room, name, answer, names_of(value))
        return
    kept_before = _room(room)
    if name not in kept_before:
        raise AssertionError(f"{room}: nothing is kept of {name}: python -m tests.kept")
    found = changes(kept_before[name], answer, names_of(value))
    if found:
        more = f"\n... and {len(found) - 10} more" if len(found) > 10 else ""
        raise AssertionError(f"{room}, {name}: the answer has changed\n" + "\n".join(found[:10]) + more)


def plain(value: object) -> Any:
    """Give a value as JSON has it: records and sequences as lists, floats to eight digits."""
    if value is None or isinstance(value, bool | np.bool_):
        return None if value is None else bool(value)
    if isinstance(value, Enum):
        return value.name
    if isinstance(value, str):
        return (
            value if len(value) <= WORDS else f"{value[: WORDS // 2]}… {hashlib.sha256(value.encode()).hexdigest()[:8]}"
        )
    if isinstance(value, int | np.integer):
        return int(value)
    if isinstance(value, float | np.floating):
        return _float(float(value))
    if isinstance(value, np.ndarray):
        return _array(value)
    if isinstance(value, bytes | bytearray | memoryview):
        return bytes(value).decode("latin-1")
    if isinstance(value, date | datetime | time | timedelta | PurePath | range):
        return str(value)
    if isinstance(value, slice):
        return [plain(value.start), plain(value.stop)]
    if isinstance(value, Mapping):
        return {str(plain(key)): plain(each) for key, each in value.items() if each is not None}
    if isinstance(value, set | frozenset):
        return sorted((plain(each) for each in value), key=str)
    if dataclasses.is_dataclass(value) or isinstance(value, msgspec.Struct):
        return _trimmed([plain(getattr(value, name)) for name in _fields(value)])
    if isinstance(value, BaseException):
        return [type(value).__name__, str(value)]
    if isinstance(value, tuple | list):
        long = len(value) > SERIES and all(isinstance(each, float) for each in value)
        return _array(np.array(value)) if long else [plain(each) for each in value]
    raise TypeError(f"{type(value).__name__} is not kept: give what it says")


def tried(call: Callable[..., Any], *args: Any, **more: Any) -> Any:
    """Give what a call gives with all its properties, or the error that it ends in; of Python's own only its name."""
    try:
        return everything(call(*args, **more))
    except (HeldwheelError, ValueError) as error:
        return error
    except (ArithmeticError, LookupError, TypeError, RuntimeWarning) as error:
        return type(error).__name__


def everything(value: Any, deep: int = 0) -> Any:
    """Give a record as its fields and then its properties, and records in it likewise."""
    if deep > DEEP:
        return value
    if isinstance(value, Mapping):
        return {key: everything(each, deep + 1) for key, each in value.items()}
    if isinstance(value, tuple | list):
        return [everything(each, deep + 1) for each in value]
    if not isinstance(value, type) and (dataclasses.is_dataclass(value) or isinstance(value, msgspec.Struct)):
        shown = [name for name, one in vars(type(value)).items() if isinstance(one, property)]
        fields = [everything(getattr(value, name), deep + 1) for name in _fields(value)]
        return fields + [tried(getattr, value, name) if deep < DEEP else None for name in shown]
    kinds = (
        str,
        bytes,
        int,
        float,
        np.generic,
        np.ndarray,
        Enum,
        date,
        time,
        timedelta,
        PurePath,
        BaseException,
        type(None),
    )
    return (
        value if isinstance(value, (*kinds, set, frozenset, slice)) else type(value).__name__
    )  # of others what they are


def changes(was: Any, now: Any, names: Any = None, path: str = "") -> list[str]:
    """Give a line per place at which two plain answers differ: path, was, is."""
    if isinstance(was, dict) and isinstance(now, dict):
        found = [f"{path}.{key}: was not there" for key in now if key not in was]
        found += [f"{path}.{key}: is not there any more" for key in was if key not in now]
        both = [key for key in was if key in now]
        deeper = names if isinstance(names, dict) else {}
        return found + [line for key in both for line in changes(was[key], now[key], deeper.get(key), f"{path}.{key}")]
    if isinstance(was, list) and isinstance(now, list):
        longer = max(len(was), len(now))
        was, now = was + [None] * (longer - len(was)), now + [None] * (longer - len(now))
        each, named = names if isinstance(names, tuple) else ((), False)
        found = []
        for i, (a, b) in enumerate(zip(was, now, strict=True)):
            label, deeper = each[i] if i < len(each) else (str(i), None)
            found += changes(a, b, deeper, f"{path}.{label}" if named else f"{path}[{label}]")
        return found
    return [] if _alike(was, now) else [f"{path or 'it'}: was {_short(was)}, is {_short(now)}"]


def names_of(value: object) -> Any:
    """Give the names of what ``plain`` makes a list of, for the paths of ``changes``."""
    if isinstance(value, Mapping):
        return {str(plain(key)): names_of(each) for key, each in value.items()}
    if (dataclasses.is_dataclass(value) and not isinstance(value, type)) or isinstance(value, msgspec.Struct):
        return [(name, names_of(getattr(value, name))) for name in _fields(value)], True
    if isinstance(value, tuple | list):
        return [(str(i), names_of(each)) for i, each in enumerate(value)], False
    return None


def _fields(value: Any) -> tuple[str, ...]:
    if isinstance(value, msgspec.Struct):
        return value.__struct_fields__
    return tuple(field.name for field in dataclasses.fields(value))


def _trimmed(values: list[Any]) -> list[Any]:
    """Leave out what is empty at the end of a record: most fields that a record ends in are."""
    while values and values[-1] in (None, [], {}, ""):
        values.pop()
    return values


def _float(value: float) -> Any:
    return float(f"{value:.8g}") if math.isfinite(value) else str(value)


def _array(values: np.ndarray[Any, Any]) -> Any:
    flat = values.ravel()
    if len(flat) <= LONG or (not np.issubdtype(flat.dtype, np.number) and flat.dtype != bool):
        return [plain(each) for each in flat.tolist()]
    good = np.nan_to_num(flat.astype(float), nan=0.5, posinf=MOST, neginf=-MOST)
    good = np.minimum(np.abs(good), MOST)
    weight = 1 + np.arange(len(good)) % 97 / 97
    sums = float(good.sum()), float((good * weight).sum())
    return ["array", list(values.shape), *map(_float, sums), *(plain(flat[at].item()) for at in (0, 1, -1))]


def _alike(was: Any, now: Any) -> bool:
    if isinstance(was, bool) or isinstance(now, bool):
        return was is now
    if isinstance(was, int | float) and isinstance(now, int | float):
        return math.isclose(was, now, rel_tol=RELATIVE, abs_tol=TINY)
    return bool(was == now) or (_empty(was) and _empty(now))


def _empty(value: Any) -> bool:
    return value in (None, [], {}, "")


def _short(value: Any) -> str:
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) < 200 else text[:200] + "…"


def _path(room: str) -> Path:
    return FOLDER / f"{room}.json"


@cache
def _room(room: str) -> dict[str, Any]:
    path = _path(room)
    return json.loads(path.read_text(encoding="utf-8")) if path.exists() else {}


_renewed: dict[str, dict[str, Any]] = {}


def _renew(room: str, name: str, answer: Any, names: Any) -> None:
    """Write an answer; list what it changes. Names that no test asked for while all of the room ran are left out."""
    answers = _renewed.setdefault(room, {})
    if name in answers:
        raise AssertionError(f"{room}: {name} is kept twice")
    answers[name] = answer
    before = _room(room)
    with Path(os.environ[RENEW]).open("a", encoding="utf-8") as out:
        for line in changes(before[name], answer, names) if name in before else ["new"]:
            out.write(f"{room}, {name}{line if line.startswith(('.', '[')) else ': ' + line}\n")
    FOLDER.mkdir(exist_ok=True)
    rows = (f"{json.dumps(n)}:{json.dumps(a, ensure_ascii=False, separators=(',', ':'))}" for n, a in answers.items())
    _path(room).write_text("{\n" + ",\n".join(rows) + "\n}\n", encoding="utf-8")


def main(words: list[str]) -> int:
    """Run the tests that keep answers, write what they say, and print what changed."""
    parser = argparse.ArgumentParser(prog="python -m tests.kept", description=main.__doc__)
    parser.add_argument("path", nargs="*", help="tests, or folders of tests (default: all)")
    paths = parser.parse_args(words).path
    root = Path(__file__).resolve().parents[1]
    mine = re.compile(r"^from tests\.kept import|^from tests import .*\bkept\b", re.MULTILINE)
    tests = [p for p in sorted((root / "tests").rglob("test_*.py")) if mine.search(p.read_text(encoding="utf-8"))]
    tests = [p for p in tests if p.parent != root / "tests"]  # its own
    wanted = [p for p in tests if not paths or any(p.is_relative_to(Path(one).resolve()) for one in paths)]
    out = root / "kept-changes.txt"
    out.unlink(missing_ok=True)
    command = [sys.executable, "-m", "pytest", "-q", "-n0", "-k", "kept", *map(str, wanted)]
    done = subprocess.run(command, cwd=root, env={**os.environ, RENEW: str(out)}, check=False)
    print(out.read_text(encoding="utf-8") if out.exists() else "nothing was kept")
    out.unlink(missing_ok=True)
    return done.returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
