"""Running one benchmark in a process of its own."""

from __future__ import annotations

import importlib


def rows_of(name: str) -> list[dict[str, object]]:
    """Run one benchmark, by its module's name."""
    return list(importlib.import_module(f"tests.bench.{name}").run())
