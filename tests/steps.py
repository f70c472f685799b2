"""What the steps behind an answer give, in sums, so that a kept answer also shows what changed on the way to it.

Every function and method of some packages is listened to while they work: how often it was called, and the sum of what
it gave; of a method also the plain numbers that its object holds afterwards. As with all that is kept, a difference
says that something changed, not that it was right before. The answers are kept beside the steps: where a step was
taken apart or put elsewhere, these stay as they are, and only the steps are renewed.
"""

from __future__ import annotations

import functools
import importlib
import inspect
import math
import pkgutil
import threading
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import fields, is_dataclass
from enum import Enum
from types import ModuleType
from typing import Any

import msgspec
import numpy as np

MOST = 1e9
"""Greater numbers count as this."""

CHANCE = 1e-9
"""What is left of a difference of equals may have either sign, as the machine has it."""

OFTEN = 50
"""After so many calls of a function only every so-manieth is summed up; all are counted."""

DEEP = 6
"""Records within records are summed up to so many."""


@contextmanager
def steps(*packages: str) -> Iterator[dict[str, float]]:
    """Listen to packages; give a sum by function, which also counts its calls, when they have worked."""
    said: dict[str, float] = {}
    sums: dict[str, list[float]] = {}
    heard: dict[Any, Callable[..., Any]] = {}
    before: list[tuple[Any, str, Any]] = []
    others = set(threading.enumerate()) - {threading.current_thread()}  # they are at something else
    for module in [module for package in packages for module in _modules(package)]:
        for one in vars(module).values():
            if hasattr(one, "cache_clear"):  # what was worked out before must not count as less work
                one.cache_clear()
        for owner, name, one, label in _functions(module, packages):
            before.append((owner, name, vars(owner)[name]))
            setattr(
                owner, name, heard.setdefault(one, _listen(one, label, sums, others, method=inspect.isclass(owner)))
            )
    try:
        yield said
    finally:
        for owner, name, one in before:
            setattr(owner, name, one)
        said |= {label: float(f"{calls + total:.7g}") for label, (calls, total) in sorted(sums.items())}


def _modules(package: str) -> Iterator[ModuleType]:
    found = importlib.import_module(package)
    if not hasattr(found, "__path__"):
        yield found
        return
    for one in sorted(pkgutil.iter_modules(found.__path__), key=lambda one: one.name):
        if not one.ispkg:
            yield importlib.import_module(f"{package}.{one.name}")


def _functions(module: ModuleType, packages: tuple[str, ...]) -> Iterator[tuple[Any, str, Any, str]]:
    for name, one in list(vars(module).items()):
        if inspect.isfunction(one) and one.__module__.startswith(packages):
            yield module, name, one, f"{one.__module__.rpartition('.')[2]}.{one.__name__}"
        elif inspect.isclass(one) and one.__module__ == module.__name__ and not issubclass(one, Enum):
            for method, body in list(vars(one).items()):
                plain = inspect.isfunction(body) and body.__code__.co_filename == module.__file__
                if plain and not inspect.isgeneratorfunction(body) and not method.startswith("__"):
                    yield one, method, body, f"{module.__name__.rpartition('.')[2]}.{one.__name__}.{method}"


def _listen(
    one: Callable[..., Any], label: str, sums: dict[str, list[float]], others: set[threading.Thread], *, method: bool
) -> Callable[..., Any]:
    @functools.wraps(one)
    def heard(*args: Any, **more: Any) -> Any:
        given = one(*args, **more)
        if threading.current_thread() in others:
            return given
        total = sums.setdefault(label, [0, 0.0])
        total[0] += 1
        heard_now = total[0] < OFTEN or total[0] % OFTEN == 0
        if heard_now:
            sum_ = total_of(given)
            if method and args and (held := getattr(args[0], "__dict__", None)):
                sum_ += sum(_number(value) * (1 + i % 31 / 31) for i, value in enumerate(held.values()))
            total[1] += sum_ * (1 + total[0] % 7 / 7)
        return given

    return heard


def _number(value: Any) -> float:
    """Give a plain number as it counts; 0 for anything else."""
    if isinstance(value, bool | np.bool_):
        return 0.5 + bool(value)
    if isinstance(value, int | float | np.integer | np.floating):
        number = float(value)
        return min(abs(number), MOST) + (number < -CHANCE) * 0.125 if math.isfinite(number) else 7.0
    return 0.0


def total_of(value: Any, deep: int = 0) -> float:
    """Give one number that changes with nearly every number in a value; whatever is no value counts nothing."""
    if value is None:
        return 0.25
    if isinstance(value, bool | int | float | np.number | np.bool_):
        return _number(value)
    if isinstance(value, str | bytes):
        return sum(value.encode() if isinstance(value, str) else value) / 64
    if deep > DEEP:
        return 0.0
    if isinstance(value, Enum):
        return total_of(value.name)
    if isinstance(value, np.ndarray):
        if not len(value) or not (np.issubdtype(value.dtype, np.number) or value.dtype == bool):
            return 0.375
        good = np.minimum(np.abs(np.nan_to_num(value.astype(float), nan=0.5)), MOST).ravel()
        return float((good * (1 + np.arange(len(good)) % 97 / 97)).sum() / len(good)) + len(good) / 64
    if isinstance(value, slice):
        return total_of((value.start, value.stop))
    if is_dataclass(value) or isinstance(value, msgspec.Struct):
        names = value.__struct_fields__ if isinstance(value, msgspec.Struct) else [one.name for one in fields(value)]
        return sum(total_of(getattr(value, name), deep + 1) * (1 + i / 16) for i, name in enumerate(names))
    if isinstance(value, Mapping):
        return total_of(tuple(value.values()), deep + 1)
    if isinstance(value, tuple | list):
        return sum(total_of(one, deep + 1) * (1 + i % 13 / 13) for i, one in enumerate(value)) + len(value) / 8
    return 0.0
