"""Modbus RTU: a register map polled over a serial port."""

from __future__ import annotations

import asyncio
import logging
import time
from typing import TYPE_CHECKING, Final

from pymodbus import FramerType, ModbusException
from pymodbus.client import AsyncModbusSerialClient

from logger.decoder.registers import RegisterBlock, plan
from logger.errors import LinkError, LinkLost
from logger.links.ports import local_port
from logger.links.pump import Pump
from logger.samples import Chunk

if TYPE_CHECKING:
    from pymodbus.pdu import ModbusPDU

    from logger.decoder.description import Modbus, SerialSettings

# Modbus application protocol 1.1b3, 7: what a device answers when it will not.
_REFUSALS: Final = {
    1: "it does not know this kind of request (holding or input registers)",
    2: "it has no such register",
    3: "it does not give so many registers at once",
    4: "it has failed",
}
_LATER: Final = {5, 6}  # acknowledged, busy: no refusal, only not now
# Modbus application protocol 1.1b3, 6.3 and 6.4: read holding registers, read input registers.
_FUNCTION: Final = {"holding": 3, "input": 4}
# An answer carries no number of its question: after one that did not come, so many time-outs without a byte must pass
# before the next question, or a late answer would be taken for that one's.
_QUIET: Final = 1.5
GARBLED: Final = b"\x00"  # stands for an answer that is none to the question: the decoder counts it as garbage


class ModbusLink:
    """A link whose chunks are polls of the whole register map (see ``logger.decoder.registers``).

    Args:
        port: A local serial port.
        modbus: Device number, register map, pace.
    """

    def __init__(self, port: str, serial: SerialSettings, modbus: Modbus) -> None:
        self._port = local_port(port)
        self._serial = serial
        self._modbus = modbus
        self._blocks = plan(modbus.registers)
        self._client: AsyncModbusSerialClient | None = None
        self._due_s = 0.0
        self._heard_s = -float("inf")  # the last byte that came
        self._asked_s = -float("inf")
        self._owing = False  # a question is without its answer
        self._pump = Pump(self._next)

    @property
    def name(self) -> str:
        """The port and the device's number on it."""
        return f"{self._port} device {self._modbus.device}"

    async def open(self) -> None:
        """Open the port; nothing is asked yet.

        Raises:
            LinkError: The port cannot be opened.
        """
        await self.close()
        logging.getLogger("pymodbus").setLevel(logging.CRITICAL)  # what fails is told by us
        client = AsyncModbusSerialClient(
            self._port,
            framer=FramerType.RTU,
            baudrate=self._serial.baud,
            bytesize=self._serial.bits,
            parity=self._serial.parity[0].upper(),
            stopbits=self._serial.stop_bits,
            timeout=self._modbus.timeout_s,
            retries=0,
            reconnect_delay=0,
            trace_packet=self._on_bytes,
        )
        if not await client.connect():
            client.close()
            raise LinkError(f"{self._port}: cannot be opened; is it plugged in, and used by no other program?")
        self._client = client
        self._due_s = time.monotonic()

    async def read(self) -> list[Chunk]:
        """Give the answers to the polls since the last call; the first call begins to poll.

        A poll without an answer gives nothing here; the session's watchdog tells a silent device.

        Raises:
            LinkLost: The port is gone.
            LinkError: The device refuses a register: the description does not fit it.
        """
        return await self._pump.read()

    async def _next(self) -> list[Chunk]:
        """Wait until the next poll is due, and give its answer."""
        while True:
            await asyncio.sleep(max(0.0, self._due_s - time.monotonic()))
            self._due_s = max(self._due_s + self._modbus.interval_s, time.monotonic())
            answer = await self._poll()
            if answer is not None:
                return [Chunk(time.monotonic(), answer)]

    async def write(self, data: bytes) -> None:
        """Refuse: a Modbus device is read, never written to."""
        raise LinkError(f"{self.name}: raw commands cannot be sent to a Modbus device ({len(data)} bytes)")

    async def close(self) -> None:
        """Close the port; never raises."""
        await self._pump.stop()
        client, self._client = self._client, None
        if client is not None:
            client.close()

    def _on_bytes(self, sending: bool, data: bytes) -> bytes:
        if not sending:
            self._heard_s = time.monotonic()
        return data

    async def _settle(self) -> None:
        """After a question without an answer, wait until none can come any more."""
        while self._owing:
            quiet_s = time.monotonic() - max(self._heard_s, self._asked_s)
            left_s = _QUIET * self._modbus.timeout_s - quiet_s
            self._owing = left_s > 0
            await asyncio.sleep(max(0.0, left_s))

    async def _poll(self) -> bytes | None:
        """Give the contents of all blocks; None without an answer, ``GARBLED`` for one to another question."""
        parts = []
        for block in self._blocks:
            answer = await self._ask(block)
            if answer is None:
                return None
            if answer.function_code & 0x7F != _FUNCTION[block.table]:
                return GARBLED
            if answer.isError():
                code = getattr(answer, "exception_code", 0)
                if code in _LATER:
                    return None
                if code not in _REFUSALS:
                    return GARBLED
                last = block.address + block.count - 1
                why = _REFUSALS[code]
                raise LinkError(f"{self.name}: refuses {block.table} registers {block.address} to {last}: {why}")
            values = answer.registers
            if len(values) != block.count:
                return GARBLED
            parts.append(b"".join(value.to_bytes(2, "big") for value in values))
        return b"".join(parts)

    async def _ask(self, block: RegisterBlock) -> ModbusPDU | None:
        client = self._client
        if client is None or not client.connected:
            raise LinkLost(f"{self.name}: the port is gone (unplugged?)")
        await self._settle()
        ask = client.read_holding_registers if block.table == "holding" else client.read_input_registers
        self._asked_s, self._owing = time.monotonic(), True
        try:
            answer = await ask(block.address, count=block.count, device_id=self._modbus.device)
            self._owing = False
            return answer
        except (ModbusException, OSError) as error:
            if not client.connected:
                raise LinkLost(f"{self.name}: the port is gone (unplugged?)") from error
            return None  # no answer in time, or one that is broken
