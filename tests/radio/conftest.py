"""Run a scenario on each tier."""

import asyncio

import pytest

from tests.radio.world import TIERS, world


@pytest.fixture(params=TIERS)
def live(request, monkeypatch):
    """Run a coroutine function in a world of each tier."""

    def run(scenario):
        async def inside():
            async with asyncio.timeout(60):
                async with world(request.param, monkeypatch) as made:
                    await scenario(made)

        asyncio.run(inside())

    return run
