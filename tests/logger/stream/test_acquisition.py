"""One thread for all sources; what they bring reaches a subscriber whole."""

from __future__ import annotations

import asyncio
import threading
import time
from collections import deque

import pytest

from logger.decoder.lines import LineDecoder
from logger.decoder.template import LineFormat
from logger.samples import Block, Ending, EndReason
from logger.stream.acquisition import Acquisition
from logger.stream.clock import ArrivalClock
from logger.stream.session import Session
from tests.logger.scripted import ScriptedLink


def session(*script, hold: bool = False) -> Session:
    decoder = LineDecoder(LineFormat(template="{torque}"), "N·m")
    return Session(ScriptedLink(list(script), hold=hold), decoder, ArrivalClock())


class Tap:
    """A subscriber that keeps every block until somebody takes it: memory grows before anything is dropped."""

    def __init__(self) -> None:
        self._blocks: deque[Block] = deque()
        self._ending: Ending | None = None

    @property
    def ending(self) -> Ending | None:
        """How the stream ended; None while it runs. It is set after the last block can be taken."""
        return self._ending

    def take(self) -> list[Block]:
        """Give all blocks since the last call; any one thread may ask."""
        taken = []
        while self._blocks:
            taken.append(self._blocks.popleft())
        return taken

    def on_block(self, block: Block) -> None:
        """Keep a block."""
        self._blocks.append(block)

    def on_end(self, ending: Ending) -> None:
        """Keep the ending."""
        self._ending = ending


def test_a_subscriber_of_another_thread_gets_every_block_once():
    tap = Tap()
    source = session(*[b"%d\n" % i for i in range(50)])
    source.subscribe(tap)
    with Acquisition() as acquisition:
        running = acquisition.start(source)
        seen = []
        while tap.ending is None:
            time.sleep(0.005)
            seen += [v for block in tap.take() for v in block.columns["torque"].tolist()]
        seen += [v for block in tap.take() for v in block.columns["torque"].tolist()]
        assert running.result(timeout=5).reason is EndReason.FINISHED
    assert seen == list(range(50))
    assert tap.take() == []


def test_leaving_stops_everything_and_leaves_no_thread():
    before = threading.active_count()
    with Acquisition() as acquisition:
        futures = [acquisition.start(session(b"1\n", hold=True)) for _ in range(3)]
    assert [future.result(timeout=0).reason for future in futures] == [EndReason.STOPPED] * 3
    assert threading.active_count() == before


def test_other_work_runs_in_the_same_loop():
    async def loop_of():
        return asyncio.get_running_loop()

    with Acquisition() as acquisition:
        first = acquisition.call(loop_of()).result(timeout=5)
        assert acquisition.call(loop_of()).result(timeout=5) is first

        async def broken():
            raise ValueError("no")

        with pytest.raises(ValueError, match="no"):
            acquisition.call(broken()).result(timeout=5)


def test_closing_without_having_started():
    Acquisition().close()
