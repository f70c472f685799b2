"""Modbus RTU over a serial line, against pymodbus' own server."""

import asyncio
import contextlib
import os
import select
import threading
import time
import tty

import numpy as np
import pytest
from pymodbus.server import ModbusSerialServer
from pymodbus.simulator import DataType, SimData, SimDevice

from logger.decoder.crc import check
from logger.decoder.description import Modbus, SerialSettings
from logger.decoder.layouts import Register
from logger.decoder.registers import RegisterDecoder
from logger.errors import LinkError, LinkLost
from logger.links.modbus import GARBLED, ModbusLink
from tests.logger.cable import Cable

SERIAL = SerialSettings(baud=115200)
REGISTERS = (
    Register(name="torque", address=100, type="s32", word_order="little", unit="N·m", scale=0.001),
    Register(name="temperature", address=102, type="s16", unit="°C", scale=0.1),
    Register(name="rate", address=20, type="float32", table="input", unit="1/min"),
)


@contextlib.asynccontextmanager
async def server(port, torque=lambda: 0):
    """Device 3; ``torque`` gives thousandths of a newton metre."""

    async def answer(_code, start, _address, _count, registers, _written):
        if start == 100:
            raw = torque() & 0xFFFFFFFF
            registers[:2] = [raw & 0xFFFF, raw >> 16]

    nothing = [SimData(0, values=False, datatype=DataType.BITS)]
    holding = [SimData(100, values=[0, 0, 215], datatype=DataType.REGISTERS)]
    inputs = [SimData(20, values=[0x40A0, 0x0000], datatype=DataType.REGISTERS)]
    device = SimDevice(3, (nothing, nothing, holding, inputs), action=answer)
    served = ModbusSerialServer(device, port=port, baudrate=SERIAL.baud)
    task = asyncio.create_task(served.serve_forever())
    await asyncio.sleep(0.05)
    try:
        yield
    finally:
        await served.shutdown()
        task.cancel()
        with contextlib.suppress(asyncio.CancelledError):
            await task


async def read_on(link):
    while True:
        await link.read()


def run(scenario):
    with Cable() as cable:
        asyncio.run(asyncio.wait_for(scenario(cable), 30))


def test_polls_decode():
    async def scenario(cable):
        modbus = Modbus(device=3, registers=REGISTERS, interval_s=0.01, timeout_s=0.5)
        decoder = RegisterDecoder(REGISTERS)
        link = ModbusLink(cable.b, SERIAL, modbus)
        given = [0]
        async with server(cable.a, lambda: given[0]):
            await link.open()
            arrivals = []
            for given[0], expected in ((27_000, 27.0), (-27_000, -27.0), (70_000_123, 70_000.123)):
                torque = None
                while torque != expected:  # an answer asked for before the value changed may come first
                    chunks = await asyncio.wait_for(link.read(), 5)
                    arrivals += [chunk.arrival_s for chunk in chunks]
                    decoded = decoder.feed(*[chunk.data for chunk in chunks])
                    torque = decoded.columns["torque"][-1]
                    assert set(decoded.columns["temperature"].tolist()) == {21.5}
                    assert set(decoded.columns["rate"].tolist()) == {5.0}
            assert np.all(np.diff(arrivals) > 0)
            await link.close()

    run(scenario)


def test_nobody_at_the_other_end_is_silence_and_a_wrong_register_is_told():
    async def scenario(cable):
        nobody = ModbusLink(cable.b, SERIAL, Modbus(device=9, registers=REGISTERS, timeout_s=0.05))
        await nobody.open()
        with pytest.raises(TimeoutError):
            await asyncio.wait_for(nobody.read(), 0.3)
        await nobody.close()
        async with server(cable.a):
            wrong = (Register(name="torque", address=4000),)
            link = ModbusLink(cable.b, SERIAL, Modbus(device=3, registers=wrong))
            await link.open()
            with pytest.raises(LinkError, match="registers 4000 to 4000: it has no such register"):
                await link.read()
            await link.close()

    run(scenario)


def test_a_stalled_device_answers_again_later():
    async def scenario(cable):
        link = ModbusLink(cable.b, SERIAL, Modbus(device=3, registers=REGISTERS, interval_s=0.01, timeout_s=0.1))
        async with server(cable.a):
            await link.open()
            await link.read()
            cable.silent.set()
            with pytest.raises(TimeoutError):
                await asyncio.wait_for(link.read(), 0.4)
            cable.silent.clear()
            await link.read()
            await link.close()

    run(scenario)


def test_unplugged():
    async def scenario(cable):
        link = ModbusLink(cable.b, SERIAL, Modbus(device=3, registers=REGISTERS, timeout_s=0.1))
        async with server(cable.a):
            await link.open()
            await link.read()
            cable.cut()
            with pytest.raises(LinkLost, match="unplugged"):
                await read_on(link)
            await link.close()
            with pytest.raises(LinkError, match="cannot be opened"):
                await link.open()

    run(scenario)


def test_raw_commands_are_refused():
    link = ModbusLink("/dev/ttyUSB0", SERIAL, Modbus(registers=REGISTERS))
    with pytest.raises(LinkError, match="cannot be sent"):
        asyncio.run(link.write(b"\x01"))


class Slave:
    """A device that answers as a test says: ``answer(number of the question, question)`` gives (delay, bytes)."""

    def __init__(self, answer):
        self._answer = answer
        self.asked = []

    def __enter__(self):
        self._near, self._far = os.openpty()
        tty.setraw(self._far)
        self.path = os.ttyname(self._far)
        self._stop = threading.Event()
        self._thread = threading.Thread(target=self._serve, daemon=True)
        self._thread.start()
        return self

    def __exit__(self, *_error):
        self._stop.set()
        self._thread.join(5)
        os.close(self._near)
        os.close(self._far)

    def _serve(self):
        waiting = b""
        while not self._stop.is_set():
            if select.select([self._near], [], [], 0.02)[0]:
                waiting += os.read(self._near, 64)
            while len(waiting) >= 8:
                question, waiting = waiting[:8], waiting[8:]
                self.asked.append(time.monotonic())
                delay, body = self._answer(len(self.asked) - 1, question)
                time.sleep(delay)
                if body:
                    os.write(self._near, body + check(body, "crc-16/modbus").to_bytes(2, "little"))


def registers(device, function, *values):
    return bytes((device, function, 2 * len(values))) + b"".join(v.to_bytes(2, "big") for v in values)


ONE_REGISTER = (Register(name="torque", address=7),)


def polled(answer, count, timeout_s=0.2):
    """Poll a slave until so many chunks have come; gives torques and events."""

    async def scenario(port):
        modbus = Modbus(device=3, registers=ONE_REGISTER, interval_s=0.01, timeout_s=timeout_s)
        link = ModbusLink(port, SERIAL, modbus)
        await link.open()
        chunks = []
        try:
            async with asyncio.timeout(20):
                while len(chunks) < count:
                    chunks += await link.read()
        finally:
            await link.close()
        return chunks[:count]

    with Slave(answer) as slave:
        chunks = asyncio.run(scenario(slave.path))
    decoded = RegisterDecoder(ONE_REGISTER).feed(*(chunk.data for chunk in chunks))
    return decoded.columns["torque"].tolist(), [(e.kind.value, e.count) for e in decoded.events], slave.asked


def test_an_answer_of_another_function_is_no_torque():
    """Modbus application protocol 1.1b3, 4.1: the answer carries the function code of the question."""
    torque, events, _ = polled(lambda n, _q: (0.0, registers(3, 4 if n in (1, 2) else 3, 100 + n)), 5)
    assert torque == [100.0, 103.0, 104.0]
    assert events == [("garbage", 2)]


def test_an_exception_that_nobody_knows_ends_nothing():
    torque, events, _ = polled(lambda n, _q: (0.0, bytes((3, 0x83, 99)) if n == 1 else registers(3, 3, n)), 4)
    assert torque == [0.0, 2.0, 3.0]
    assert events == [("garbage", 1)]


def test_a_late_answer_is_not_taken_for_the_next_one():
    """Question 1 is answered after 1.4 time-outs: that answer is nobody's."""
    late = 0.28
    torque, _, asked = polled(lambda n, _q: (late if n == 1 else 0.0, registers(3, 3, 1000 + n)), 4)
    assert torque == [1000.0, 1002.0, 1003.0, 1004.0]
    assert asked[2] - asked[1] > late


def test_garbled_is_never_of_the_right_length():
    decoded = RegisterDecoder(ONE_REGISTER).feed(GARBLED)
    assert not len(decoded)
