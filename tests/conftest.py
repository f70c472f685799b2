"""Set up for all tests: one hypothesis profile, and small helpers that several packages share."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile(
    "house",
    deadline=None,
    derandomize=True,
    max_examples=60,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("house")
