"""Modbus RTU over a serial line, against pymodbus' own server."""

import asyncio
import contextlib

import numpy as np
import pytest
from pymodbus.server import ModbusSerialServer
from pymodbus.simulator import DataType, SimData, SimDevice

from logger.decoder.layouts import Register
from logger.decoder.registers import RegisterDecoder
from logger.description import Modbus, SerialSettings
from logger.errors import LinkError, LinkLost
from logger.links.modbus import ModbusLink
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
