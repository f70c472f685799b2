"""The job card: everything about a test that is known before the first pull, and what is still missing."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING, Literal

import msgspec

from analysis.identify.axle_type import JUDGED, Type, named, type_conflict
from analysis.identify.slips import kind_conflict
from analysis.to_axle.axle_scale import AxleScale
from analysis.to_axle.calibration import calibration_of, unlevered
from analysis.to_axle.fixtures import fixture_from
from analysis.verdict.adequacy import certificate_advice, range_advice, sign_advice
from analysis.verdict.limits import bounds_from
from analysis.verdict.setup import setup_of
from gui.models.changes import Changes
from logger.edges.units import canonical_unit
from logger.errors import DescriptionError, HeldwheelError
from logger.header import Axle, Conditions, Decision, Header, JobFacts, Test, TransducerFacts
from logger.version import VERSION

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from analysis.identify.slips import Conflict
    from analysis.to_axle.calibration import Calibration
    from analysis.to_axle.lever import Fixture
    from analysis.verdict.limits import Bounds
    from analysis.verdict.setup import Setup
    from gui.models.dial_entry import DialDraft
    from logger.decoder.description import Description
    from logger.header import Lever, Limit, Photo, Zero

Purpose = Literal["pulls", "drag", "zero", "practice"]

# Common practice, no source: five breakaways with a fixed rest between them; three where time is short.
PULLS_WANTED = 5
DWELL_S = 15.0
NEED_DEVICE = ("serial", "ble", "modbus")
QUANTITY_WORDS = {
    "breakaway": "Breakaway",
    "rotating mean": "Rotating mean",
    "rotating maximum": "Rotating maximum",
}
HELD_WORDS = {"other side": "Other wheel held", "case": "Case held", "none": "Both wheels free"}
FIXTURE_WORDS = {
    "one stud": "Lever on one stud",
    "cross-bar": "Cross-bar over two studs",
    "hub centre": "Lever at the hub's centre",
    "couple": "T-bar, pushed at both ends",
    "force at radius": "Force at a radius",
    "cord": "Cord wound on a drum",
    "in-line": "Transducer in line with the axle",
    "dead weight": "Weight hung on a lever",
    "held side": "Transducer on the held side",
}


@dataclass(slots=True)
class JobCard:
    """What is tested, how, against which limit, and with what.

    Change it through ``put``; views listen to ``changes``.
    """

    job: JobFacts = field(default_factory=JobFacts)
    axle: Axle = field(default_factory=Axle)
    test: Test = field(default_factory=lambda: Test(place="car", held="other side", gear="neutral", side="right"))
    conditions: Conditions = field(default_factory=Conditions)
    photos: tuple[Photo, ...] = ()
    dial: tuple[DialDraft, ...] = ()  # readings of a dial that were kept, as they were typed
    lever: Lever | None = None
    limit: Limit | None = None
    decision: Decision = field(default_factory=lambda: Decision(rule="three-way"))
    description: Description | None = None
    address: str = ""
    second: Description | None = None  # recorded along: angle, rate, temperature, torque of the held end
    second_address: str = ""
    pulls_wanted: int = PULLS_WANTED
    dwell_s: float = DWELL_S
    with_drag: bool = False
    practice: bool = False
    lever_faulty: bool = False  # a fixture is being typed and cannot be used yet
    generation: int = 0  # of the whole card: forms that show an earlier one load it again
    changes: Changes = field(default_factory=Changes)
    _known: TransducerFacts | None = None  # of the transducer, completed from the register
    _told: str = ""
    _setup: tuple[Setup | None, str] | None = None  # as the card stands

    def put(self, **parts: object) -> None:
        """Change some parts and tell every view."""
        for name, value in parts.items():
            if name not in JobCard.__slots__:  # a typing slip, not a user's input
                raise AttributeError(name)
            setattr(self, name, value)
        self._setup = None
        if "description" in parts:
            self._recall()
        self.changes.tell()

    def parts(self) -> dict[str, object]:
        """Give everything that is filled in, to be put back with ``swap``."""
        return {name: getattr(self, name) for name in PARTS}

    def swap(self, parts: Mapping[str, object]) -> None:
        """Become another card: these parts, everything else empty."""
        self.generation += 1
        self.put(**{**JobCard().parts(), **parts})

    def copy(self) -> JobCard:
        """Give a card of the same content that nobody else changes."""
        made = JobCard()
        made.put(**self.parts())
        return made

    def _recall(self) -> None:
        """Complete what the transducer's description says from the register: its certificate, a lock."""
        from logger.instruments.register import find, known_facts, read_register

        self._known, self._told = None, ""
        if self.description is None:
            return
        own = self.description.transducer
        try:
            self._known, _ = known_facts(own)
            instrument = find(read_register(), own.serial or own.name)
        except HeldwheelError as error:  # a damaged register is no reason not to test
            self._told = str(error)
            return
        if instrument is not None and instrument.locked:
            self._told = f"locked: {instrument.locked}"

    # ------------------------------------------------------------------ set-up
    def fixture(self) -> tuple[Fixture | None, str]:
        """Give the checked fixture, or None and what is wrong with it in words."""
        if self.lever is None:
            return None, "No fixture yet: say how the lever meets the wheel."
        try:
            return fixture_from(self.lever), ""
        except DescriptionError as error:
            return None, "; ".join(fault.what for fault in error.faults)

    def bounds(self) -> Bounds | None:
        """Give the checked limit; None while there is none."""
        try:
            return bounds_from(self.limit) if self.limit is not None else None
        except DescriptionError:
            return None

    def setup(self) -> tuple[Setup | None, str]:
        """Give what brings readings to the axle and judges them, or None and what is wrong with the card in words."""
        if self._setup is None:
            try:
                self._setup = setup_of(self.judged_by("pulls"), self.unit), ""
            except DescriptionError as error:
                self._setup = None, "; ".join(fault.what for fault in error.faults)
            except HeldwheelError as error:
                self._setup = None, str(error)
        return self._setup

    @property
    def lever_factor(self) -> float | None:
        """Torque at the axle per torque shown; None while the fixture is not known or reads no torque."""
        setup, _ = self.setup()
        return setup.at.fixture.factor if setup is not None and setup.at is not None else None

    def calibration(self) -> Calibration:
        """Give what brings readings to N·m; a force that has no usable lever yet stays in N."""
        try:
            return calibration_of(self.facts, self.unit, self.lever)
        except HeldwheelError:
            return unlevered(self.facts, self.unit)

    def scale(self, zero_nm: float = 0.0) -> AxleScale:
        """Give how what is read, in N·m, stands at the axle from a zero; where the lever is not known, as it is."""
        setup, _ = self.setup()
        return setup.scale(zero_nm) if setup is not None else AxleScale(zero_nm)

    def as_read(self, axle_nm: float) -> float:
        """Give what the transducer reads at a torque at the axle."""
        setup, _ = self.setup()
        return setup.as_read(axle_nm) if setup is not None else axle_nm

    def limit_nm(self) -> tuple[float | None, float | None]:
        """Give the limit's lower and upper end in N·m; None where there is none (a ratio has neither)."""
        bounds = self.bounds()
        return bounds.torques if bounds is not None else (None, None)

    def conflict(self) -> Conflict | None:
        """Say where test and limit are not of the same kind."""
        return kind_conflict(self.limit, self.test) if self.limit is not None else None

    # ------------------------------------------------------------------ axle
    def type_conflict(self) -> Conflict | None:
        """Say where a held-wheel torque means nothing for the axle's type."""
        return type_conflict(self.axle, self.conditions, self.limit)

    # ------------------------------------------------------------------ transducer
    @property
    def facts(self) -> TransducerFacts:
        """What the transducer's numbers are worth."""
        if self._known is not None:
            return self._known
        return self.description.transducer if self.description is not None else TransducerFacts()

    @property
    def device(self) -> str:
        """Port or Bluetooth identity that is opened."""
        return self.address or self.facts.identity

    @property
    def second_device(self) -> str:
        """Port or Bluetooth identity of what is recorded along."""
        return self.second_address or (self.second.transducer.identity if self.second is not None else "")

    @property
    def second_facts(self) -> TransducerFacts | None:
        """What is recorded along, as it stands in a header; None: nothing."""
        if self.second is None or self.practice:
            return None
        return msgspec.structs.replace(self.second.transducer, identity=self.second_device)

    @property
    def unit(self) -> str:
        """The unit of the transducer's torque column."""
        return self.description.unit if self.description is not None else canonical_unit("N·m")

    def range_advice(self) -> str:
        """Say whether the transducer's range suits the limit."""
        return "; ".join(range_advice(self.facts.capacity_nm, self.bounds(), None))

    def expired(self) -> str:
        """Say that the transducer's certificate is out of date today; empty if it is not."""
        return "; ".join(certificate_advice(self.facts, datetime.now().astimezone().date()))

    def device_advice(self) -> str:
        """Say what is wrong with the transducer's papers or its sign."""
        return "; ".join(text for text in (self.expired(), self._told, *sign_advice(self.facts)) if text)

    # ------------------------------------------------------------------ whole
    def judged_by(self, purpose: Purpose) -> Header:
        """Give the header to judge by now; a limit that cannot be used is left out."""
        header = self.header(purpose, started=None, zero=None, simulated=False)
        return header if self.bounds() is not None else msgspec.structs.replace(header, limit=None)

    def missing(self) -> tuple[str, ...]:
        """Say what must be there before a test can start; empty when it can."""
        found = []
        if self.description is None:
            found.append("a transducer")
        elif not self.practice and self.description.link in NEED_DEVICE and not self.device:
            found.append("the port or address of the transducer")
        if self.lever_faulty or (self.lever is not None and self.fixture()[0] is None):
            found.append("a fixture without faults")
        elif self.lever is None:
            found.append("a fixture")
        return tuple(found)

    def header(self, purpose: Purpose, *, started: datetime | None, zero: Zero | None, simulated: bool) -> Header:
        """Give the header of a recording that starts now."""
        facts = msgspec.structs.replace(
            self.facts, identity=self.address or self.facts.identity, unit=self.unit, name=self._transducer_name()
        )
        test = msgspec.structs.replace(self.test, purpose=purpose, dwell_s=self.dwell_s)
        if purpose == "drag":
            test = msgspec.structs.replace(test, held="none")
        return Header(
            started=started,
            program=f"heldwheel {VERSION}",
            simulated=simulated,
            job=self.job,
            axle=self.axle,
            test=test,
            conditions=self.conditions,
            lever=self.lever,
            limit=self.limit,
            decision=self.decision if self.limit is not None else None,
            transducer=facts,
            second=self.second_facts,
            zero=zero,
            photos=self.photos,
        )

    def _transducer_name(self) -> str:
        return self.facts.name or (self.description.name if self.description is not None else "")


PARTS = tuple(name for name in JobCard.__slots__ if not name.startswith("_") and name not in {"changes", "generation"})

PACKS = named(kind for kind in Type if kind in JUDGED)  # all types with packs: how they behave does not tell them apart


def type_words(text: str) -> str:
    """Give an axle's type as it stands on the card."""
    if text == PACKS:
        return "With packs, kind not known"
    return f"{text[0].upper()}{text[1:]}" if text else "Type not stated"


def lever_words(lever: Lever, length: Callable[[float], str]) -> str:
    """Give a lever in one line, ``5 studs on 114.3 mm, lever 450 mm at 0°``; ``length`` writes millimetres."""
    parts = []
    if lever.fixture == "one stud":
        studs = f"{lever.studs} studs" if lever.studs else "Studs"
        circle = f" on {length(lever.stud_circle_mm)}" if lever.stud_circle_mm else ""
        parts.append(studs + circle)
    if lever.length_mm:
        parts.append(f"lever {length(lever.length_mm)}" + (f" at {lever.angle_deg:g}°" if lever.angle_deg else ""))
    if lever.radius_mm:
        parts.append(f"radius {length(lever.radius_mm)}")
    return ", ".join(parts) or FIXTURE_WORDS[lever.fixture]


def problem_of(error: Exception) -> str:
    """Give what to show for an error: our own text as it is, anything else named as unexpected."""
    if isinstance(error, HeldwheelError):
        return str(error)
    return f"Something unexpected went wrong ({type(error).__name__}: {error}). What is recorded is safe."
