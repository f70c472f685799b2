"""Devices that answer only when asked: single letters, over a real serial port."""

import asyncio

import numpy as np
import pytest

from logger.decoder.description import SerialSettings
from logger.decoder.lines import LineDecoder
from logger.decoder.template import LineFormat
from logger.errors import LinkError
from logger.links.polled import PolledLink
from logger.links.serial_port import SerialLink
from tests.logger.answering import AnsweringPort


class Gauge:
    """Letters: D current value, M extremes with a TAB between them, Z zero; CR only; ``?`` for anything else."""

    def __init__(self):
        self.count = 0
        self.zero = 0.0

    def __call__(self, request):
        if request == b"D":
            self.count += 1
            return f"{self.count / 10 - self.zero:+.1f}\r".encode()
        if request == b"M":
            return b"+12.3\t-4.5\r"
        if request == b"Z":
            self.zero = self.count / 10
            return b""
        return b"?\r"


def run(gauge, scenario, request=b"D\r", interval_s=0.01, timeout_s=0.2):
    async def inside(port):
        link = PolledLink(SerialLink(port.path, SerialSettings()), request, interval_s, timeout_s)
        await link.open()
        try:
            await asyncio.wait_for(scenario(link, port), 20)
        finally:
            await link.close()
            await link.close()

    with AnsweringPort(gauge) as port:
        asyncio.run(inside(port))


async def values(link, decoder, count):
    got = []
    while len(got) < count:
        got += decoder.feed(*[chunk.data for chunk in await link.read()]).columns["torque"].tolist()
    return got


def test_one_answer_per_question_at_the_asked_pace():
    async def scenario(link, port):
        decoder = LineDecoder(LineFormat(template="{torque}", terminator="CR"), "N·m")
        begin = asyncio.get_running_loop().time()
        got = await values(link, decoder, 50)
        took = asyncio.get_running_loop().time() - begin
        assert np.allclose(got, np.arange(1, len(got) + 1) / 10)
        assert 0.4 < took < 5
        assert len(port.received) - len(got) in (0, 1)
        assert set(port.received) == {b"D\r"}

    run(Gauge(), scenario)


def test_opening_asks_nothing():
    async def scenario(_link, port):
        await asyncio.sleep(0.1)
        assert not port.received

    run(Gauge(), scenario)


def test_columns_between_tabs():
    async def scenario(link, _port):
        decoder = LineDecoder(LineFormat(template="{torque}\t{least}", terminator="CR"), "N·m")
        assert await values(link, decoder, 3) == [12.3, 12.3, 12.3]

    run(Gauge(), scenario, request=b"M\r")


def test_a_device_that_does_not_answer_is_asked_again():
    async def scenario(link, port):
        decoder = LineDecoder(LineFormat(template="{torque}", terminator="CR"), "N·m")
        await values(link, decoder, 2)
        port.silent.set()
        with pytest.raises(TimeoutError):
            await asyncio.wait_for(values(link, decoder, 1), 0.5)
        asked = len(port.received)
        assert asked >= 4
        port.silent.clear()
        assert await values(link, decoder, 1)

    run(Gauge(), scenario, timeout_s=0.1)


def test_a_command_in_between():
    async def scenario(link, _port):
        decoder = LineDecoder(LineFormat(template="{torque}", terminator="CR"), "N·m")
        assert (await values(link, decoder, 5))[-1] >= 0.5
        await link.write(b"Z\r")
        after = await values(link, decoder, 5)
        assert min(after) == pytest.approx(0.1, abs=0.11)

    run(Gauge(), scenario)


def test_a_port_that_is_not_there():
    link = PolledLink(SerialLink("/dev/nowhere", SerialSettings()), b"D\r", 0.1, 0.1)
    with pytest.raises(LinkError):
        asyncio.run(link.open())
