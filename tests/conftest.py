"""Set up for all tests: one hypothesis profile, and small helpers that several packages share."""

from __future__ import annotations

import signal
from collections.abc import Generator

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "house",
    deadline=None,
    derandomize=True,
    max_examples=60,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("house")

SIGNALS = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call() -> Generator[None]:
    """A command run within a test ends deaf to signals, as a program may: what later tests start would inherit that."""
    before = {number: signal.getsignal(number) for number in SIGNALS}
    try:
        return (yield)
    finally:
        for number, handler in before.items():
            if signal.getsignal(number) is not handler:
                signal.signal(number, handler)
