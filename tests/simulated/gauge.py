"""A simulated gauge and the radio stack between it and the program, behind bleak's public ``backend=`` parameter.

Every sample's value is its own number, so that each can be followed from the gauge to the recording.
"""

from __future__ import annotations

import asyncio
import random
import struct
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from bleak.backends.characteristic import BleakGATTCharacteristic
from bleak.backends.client import BaseBleakClient
from bleak.backends.scanner import AdvertisementData, BaseBleakScanner
from bleak.backends.service import BleakGATTService, BleakGATTServiceCollection
from bleak.exc import BleakError

from logger.links.ble import Backends

if TYPE_CHECKING:
    from tests.simulated.clocks import Clocks

IDENTITY = "F0:00:00:00:00:01"
SERVICE = "6e400001-0000-4000-8000-000000000000"
STREAM = "6e400002-0000-4000-8000-000000000000"
SUPERVISION_S = 2.0  # after so long without a packet both ends give a connection up


@dataclass(frozen=True, slots=True)
class Kind:
    """What kind of gauge.

    Attributes
    ----------
    counts : str
        ``packets`` or ``samples``.
    always : bool
        It samples and counts also while nobody has subscribed.
    fast_ppm : float
        Its clock against true time.
    wire : bool
        On a port, a line a sample, instead of on the radio.
    """

    packet_hz: float
    samples: int
    counts: str
    bits: int
    always: bool
    fast_ppm: float
    wire: bool = False

    @property
    def rate_hz(self) -> float:
        return self.packet_hz * self.samples


@dataclass(slots=True)
class Connection:
    """One connection, as the host sees it."""

    number: int
    client: Any
    deliver: Any = None
    open: bool = True  # the host believes in it
    carries: bool = True  # the gauge believes in it
    deaf: bool = False  # the stack between them has died: nothing arrives, nothing is told
    closing: bool = False


@dataclass(slots=True)
class Truth:
    """What really happened."""

    taken_s: list[float] = field(default_factory=list)  # true time of each sample, by its number
    awake_s: list[float] = field(default_factory=list)
    restarts: list[int] = field(default_factory=list)  # numbers of samples before which the counter began anew
    came: set[int] = field(default_factory=set)
    arrived_s: list[float] = field(default_factory=list)  # monotonic, of everything that reached the host
    held: list[tuple[float, float]] = field(default_factory=list)  # (monotonic end, seconds) the program was stopped
    slept: list[float] = field(default_factory=list)
    set_by: list[float] = field(default_factory=list)
    lost_connections: int = 0
    connected: int = 0
    twice: int = 0
    stop_asked: bool = False
    stopped_s: float | None = None  # when the program heard of it


class Gauge:
    """The gauge, the air, and the host's radio stack."""

    def __init__(self, clocks: Clocks, kind: Kind, rng: random.Random) -> None:
        self.clocks, self.kind, self.rng = clocks, kind, rng
        self.truth = Truth()
        self.in_range = self.on = True
        self.quiet = False  # it samples, and does not send
        self.drop = 0  # so many packets are lost on the way
        self.twice = 0  # so many are sent twice
        self.held_until_s = self._off_until_s = 0.0
        self.no_answer = 0  # so many subscriptions are never answered
        self.refusals = 0  # so many connections fail at once
        self.connection: Connection | None = None
        self._counted = rng.randrange(1000)
        self._held: list[tuple[Connection, bytes, range]] = []
        self.backends = Backends(_scanner(self), _client(self))
        clocks.at(self._period(), self._tick)

    def _period(self) -> float:
        return 1.0 / self.kind.packet_hz / (1 + self.kind.fast_ppm * 1e-6)

    @property
    def heard(self) -> bool:
        """It advertises, and the host can hear it."""
        held = self.connection is not None and self.connection.carries
        return self.on and self.in_range and not held

    def _tick(self) -> None:
        clocks, truth = self.clocks, self.truth
        clocks.at(clocks.true_s + self._period(), self._tick)
        to = self.connection
        listening = to is not None and to.carries and to.deliver is not None
        if not self.on or not (self.kind.always or listening):
            return
        first = len(truth.taken_s)
        numbers = range(first, first + self.kind.samples)
        truth.taken_s += [clocks.true_s - (numbers[-1] - n) / self.kind.rate_hz for n in numbers]
        step = self.kind.samples if self.kind.counts == "samples" else 1
        data = struct.pack("<I", self._counted % 2**self.kind.bits) + struct.pack(f"<{len(numbers)}i", *numbers)
        self._counted += step
        if to is None or not listening or not self.in_range or self.quiet or to.deaf:
            return
        if self.drop:
            self.drop -= 1
            return
        self._held.append((to, data, numbers))
        if self.twice:
            self.twice -= 1
            truth.twice += 1
            self._held.append((to, data, range(0)))
        if clocks.true_s >= self.held_until_s:
            for one in self._held:
                self._into_host(*one)
            self._held.clear()

    def _into_host(self, to: Connection, data: bytes, numbers: range) -> None:
        if to.closing or not to.open:
            return
        self.truth.arrived_s.append(self.clocks.monotonic())
        if not self.truth.stop_asked:
            self.truth.came.update(numbers)

        def deliver() -> None:
            if to.open:
                to.deliver(bytearray(data))

        self.clocks.inbox.append(deliver)

    # --- what may happen to it ----------------------------------------------------------------------------------------

    def away(self, seconds: float) -> None:
        """Out of range for so long."""
        self.in_range = False
        self.clocks.at(self.clocks.true_s + seconds, self._near)
        self._supervise()

    def _near(self) -> None:
        self.in_range = True

    def off(self, seconds: float) -> None:
        """Switched off; when it is on again its counter begins anew."""
        self.on = False
        self._supervise(at_once=True)

        self._off_until_s = until_s = max(self._off_until_s, self.clocks.true_s + seconds)

        def again() -> None:
            if self.on or until_s < self._off_until_s:
                return
            self.on = True
            self._counted = 0
            self.truth.restarts.append(len(self.truth.taken_s))

        self.clocks.at(until_s, again)

    def fall_silent(self, seconds: float) -> None:
        """It goes on sampling, and sends nothing for a while; what it did not send is lost."""
        self.quiet = True
        self.clocks.at(self.clocks.true_s + seconds, lambda: setattr(self, "quiet", False))

    def hold_back(self, seconds: float) -> None:
        """Packets are held back on the way and come in one burst."""
        self.held_until_s = self.clocks.true_s + seconds

    def go_deaf(self) -> None:
        """The radio stack dies under an open connection: nothing arrives, nobody is told."""
        if self.connection is not None:
            self.connection.deaf = True

    def sleep(self) -> None:
        """The computer goes to sleep, and its radio with it: the gauge gives the connection up."""
        to = self.connection
        if to is not None and to.open:
            to.carries = False
            self.clocks.inbox.append(lambda: self.tell_gone(to))

    def doings(self) -> dict[str, Callable[[float], None]]:
        """Give what may happen, by its name in a schedule."""
        return {
            "away": self.away,
            "lose": lambda _: self.lose(),
            "off": self.off,
            "quiet": self.fall_silent,
            "back": self.hold_back,
            "drop": lambda amount: setattr(self, "drop", int(amount)),
            "twice": lambda amount: setattr(self, "twice", int(amount)),
            "deaf": lambda _: self.go_deaf(),
            "no answer": lambda _: setattr(self, "no_answer", 1),
            "refuse": lambda amount: setattr(self, "refusals", int(amount)),
        }

    def _supervise(self, *, at_once: bool = False) -> None:
        """A connection over which nothing comes is given up by both ends."""
        to = self.connection
        if to is None:
            return
        if at_once:
            to.carries = False

        def give_up() -> None:
            if (not self.in_range or not to.carries) and to.open:
                to.carries = False
                self.clocks.inbox.append(lambda: self.tell_gone(to))

        self.clocks.at(self.clocks.true_s + SUPERVISION_S, give_up)

    def lose(self) -> None:
        """The connection breaks, and the host is told at once."""
        to = self.connection
        if to is not None and to.open:
            to.carries = False
            self.clocks.inbox.append(lambda: self.tell_gone(to))

    def tell_gone(self, to: Connection) -> None:
        """The host learns that its connection has ended."""
        if to.open and not to.deaf:
            to.open = False
            self.truth.lost_connections += 1
            to.client.gone()


def _scanner(gauge: Gauge) -> type[BaseBleakScanner]:
    class Scanner(BaseBleakScanner):
        def __init__(self, detection_callback: Any, service_uuids: Any, _mode: str, **_options: Any) -> None:
            super().__init__(detection_callback, service_uuids)
            self._looking: asyncio.Task[None] | None = None

        async def start(self) -> None:
            self.seen_devices = {}
            self._looking = asyncio.ensure_future(self._look())

        async def _look(self) -> None:
            while True:
                await asyncio.sleep(gauge.rng.uniform(0.05, 0.6))
                if gauge.heard:
                    data = AdvertisementData("gauge", {}, {}, [], None, -50, ())
                    device = self.create_or_update_device(IDENTITY, IDENTITY, "gauge", gauge, data)
                    self.call_detection_callbacks(device, data)

        async def stop(self) -> None:
            if self._looking is not None:
                self._looking.cancel()

    return Scanner


def _client(gauge: Gauge) -> type[BaseBleakClient]:
    class Client(BaseBleakClient):
        def __init__(self, address_or_ble_device: Any, **options: Any) -> None:
            super().__init__(
                address_or_ble_device,
                disconnected_callback=options.get("disconnected_callback"),
                timeout=options.get("timeout", 10.0),
            )
            self._to: Connection | None = None

        name = "gauge"
        mtu_size = 247

        @property
        def is_connected(self) -> bool:
            return self._to is not None and self._to.open

        async def connect(self, pair: bool, **_options: Any) -> None:
            await asyncio.sleep(gauge.rng.choice((0.1, 0.3, 1.0, 4.0)))
            if gauge.refusals:
                gauge.refusals -= 1
                raise BleakError("the connection was aborted by the local host")
            if not gauge.on or not gauge.in_range:
                await asyncio.sleep(60)  # nobody answers
            gauge.truth.connected += 1
            self._to = gauge.connection = Connection(gauge.truth.connected, self)
            self.services = _tree()

        async def start_notify(self, _characteristic: Any, callback: Any, **_options: Any) -> None:
            if self._to is None or not self._to.open:
                raise BleakError("not connected")
            await asyncio.sleep(0.05)
            if gauge.no_answer:
                gauge.no_answer -= 1
                await asyncio.sleep(3600)
            self._to.deliver = callback

        async def disconnect(self) -> None:
            to = self._to
            if to is None or not to.open:
                return
            to.closing = True
            done = asyncio.get_running_loop().create_future()
            gauge.clocks.inbox.append(lambda: done.done() or done.set_result(None))  # behind all that has come
            await done
            await asyncio.sleep(0.2)
            to.carries = to.open = False
            self.gone()

        def gone(self) -> None:
            if self._disconnected_callback is not None:
                self._disconnected_callback()

        async def pair(self, *_args: Any, **_options: Any) -> None: ...
        async def unpair(self) -> None: ...
        async def stop_notify(self, _characteristic: Any) -> None: ...
        async def read_gatt_char(self, _characteristic: Any, **_options: Any) -> bytearray:
            raise BleakError("nothing to read")

        async def read_gatt_descriptor(self, _descriptor: Any, **_options: Any) -> bytearray:
            raise BleakError("nothing to read")

        async def write_gatt_char(self, *_args: Any, **_options: Any) -> None: ...
        async def write_gatt_descriptor(self, *_args: Any, **_options: Any) -> None: ...

    return Client


def _tree() -> BleakGATTServiceCollection:
    tree = BleakGATTServiceCollection()
    service = BleakGATTService(None, 1, SERVICE)
    tree.add_service(service)
    tree.add_characteristic(BleakGATTCharacteristic(None, 2, STREAM, ["notify"], lambda: 244, service))
    return tree
