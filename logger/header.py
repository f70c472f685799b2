"""What is written down about a test: the same names in a recording's header, in sidecars and in saved files.

Conventions:
- Keys carry their unit (``length_mm``, ``capacity_nm``). A key that is absent is not known; nothing has a silent
  default that a result would depend on.
- ``Lever`` and ``Limit`` are the form a user writes; ``analysis.to_axle.lever`` and ``analysis.verdict.limits`` check
them and turn
  them into SI. A limit's value stays in the unit its source prints.
- An uncertainty key ends in ``_u`` and is a standard uncertainty in the unit of the key before it.
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Literal

import msgspec

SCHEMA = "heldwheel recording 1"


class Record(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True, forbid_unknown_fields=True):
    """Base of all records: frozen, keys by name only, unknown keys are faults."""


class JobFacts(Record, frozen=True, kw_only=True):
    """Who, what and where."""

    number: str = ""
    customer: str = ""
    vehicle: str = ""
    odometer: str = ""  # as read, with its unit
    received: date | None = None  # the day the item came in
    axle: str = ""
    operator: str = ""
    witness: str = ""
    shop: str = ""
    site: str = ""  # where the work was done, if not at the shop
    notes: str = ""
    tags: dict[str, str | float] = msgspec.field(default_factory=dict)


class Axle(Record, frozen=True, kw_only=True):
    """The axle under test."""

    tag: str = ""
    type: str = ""  # clutch plate, cone, ramp ...: what the user found; several that fit stand with " / " between
    seen: dict[str, str] = msgspec.field(default_factory=dict)  # what its wheels did: see analysis.identify.axle_type
    type_reason: str = ""  # why the torque is judged although it says nothing about this type
    ratio: float | None = None
    propshaft_turns: float | None = None
    left_turns: float | None = None
    right_turns: float | None = None
    propshaft_error_turns: float | None = None  # limits of error of the counts
    wheel_error_turns: float | None = None
    teeth: str = ""  # counted teeth of crown wheel and pinion
    friction_material: str = ""
    pack_build: str = ""
    shim_mm: float | None = None
    last_service: str = ""
    as_received: str = ""  # its condition when it came in


DIRECTION_CODES = {"clockwise": "clockwise", "anticlockwise": "counter-clockwise", "both": "both"}
"""How a direction that somebody names stands in a recording."""


class Test(Record, frozen=True, kw_only=True):
    """The kind of test: without it a limit cannot be compared."""

    place: Literal["car", "bench"] | None = None
    held: Literal["other side", "case", "none"] | None = None
    gear: Literal["neutral", "in gear"] | None = None
    side: Literal["left", "right"] | None = None
    direction: Literal["clockwise", "counter-clockwise", "both"] | None = None
    purpose: Literal["pulls", "drag", "zero", "weigh", "practice"] | None = None
    dwell_s: float | None = None
    start_angle_deg: float | None = None
    conditioning_turns: float | None = None  # turned before the first pull that counts
    speed_rpm: float | None = None  # of the wheel, aimed at
    held_how: str = ""  # strap to the floor, wheel on the floor ...
    support: str = ""  # what the car stands on
    deviations: str = ""  # from the method


class Conditions(Record, frozen=True, kw_only=True):
    """What a comparison depends on."""

    oil_temperature_c: float | None = None
    oil_temperature_at: str = ""  # where it was measured
    fluid: str = ""
    fluid_amount: str = ""
    fluid_age: str = ""
    fluid_appearance: str = ""
    modifier: str = ""
    modifier_percent: float | None = None
    distance_km: float | None = None
    wheel_fitted: bool | None = None
    tyre: str = ""  # size, pressure, circumference
    brakes_free: bool | None = None
    pads_fitted: bool | None = None
    parking_brake: Literal["on", "off"] | None = None
    propshaft_fitted: bool | None = None
    condition: Literal["new", "used", "run in"] | None = None


FixtureKind = Literal[
    "one stud", "cross-bar", "hub centre", "couple", "force at radius", "cord", "in-line", "dead weight", "held side"
]


class Lever(Record, frozen=True, kw_only=True):
    """How torque gets from the hand to the axle (trade term: fixture); equations in ``analysis.to_axle.lever``."""

    fixture: FixtureKind
    name: str = ""
    length_mm: float | None = None
    length_mm_u: float | None = None
    stud_circle_mm: float | None = None
    stud_circle_mm_u: float | None = None
    studs: int | None = None
    chord_mm: float | None = None  # instead of the stud circle: centre to centre of two studs
    chord_apart: int | None = None  # which are this many studs apart
    angle_deg: float | None = None  # between lever and the line centre to stud, 0 = pointing straight out
    angle_deg_u: float | None = None
    pull_angle_deg: float | None = None  # obliqueness of the pull, 0 = square to the lever
    pull_angle_deg_u: float | None = None
    offset_mm: float | None = None  # cross-bar: drive square off the wheel's centre
    offset_mm_u: float | None = None
    radius_mm: float | None = None  # force at radius, cord drum, dead weight
    radius_mm_u: float | None = None
    cord_mm: float | None = None  # cord diameter
    grip_mark_mm: float | None = None  # bending-type wrench: the mark it was calibrated at, if held elsewhere
    gauge_mm: float | None = None  # ... and its gauge section, both from the drive axis
    gauge_mm_u: float | None = None
    weight_kg: float | None = None  # the lever's own mass
    centroid_mm: float | None = None  # its centre of mass from the drive axis
    start_angle_deg: float | None = None  # of the lever at hand-off: 0 = 3 o'clock seen from outside, clockwise


# Kind of limit -> its bounds. A ratio is in gear ÷ neutral, of two recordings: it has no unit.
LIMIT_KINDS = {"min": ("lower",), "max": ("upper",), "band": ("lower", "upper"), "ratio min": ("lower",)}
RATIO_KINDS = {"ratio min"}


class Limit(Record, frozen=True, kw_only=True):
    """A limit as the user's manual or rule states it. Its source is mandatory; none is shipped as a specification."""

    quantity: Literal["breakaway", "rotating mean", "rotating maximum"]
    kind: Literal["min", "max", "band", "ratio min"]
    unit: str
    source: str
    lower: float | None = None
    upper: float | None = None
    page: str = ""
    text: str = ""  # the limit's own words
    condition: str = ""  # new, used, temperature
    place: Literal["car", "bench"] | None = None
    held: Literal["other side", "case", "none"] | None = None
    gear: Literal["neutral", "in gear"] | None = None
    name: str = ""

    @property
    def bounds(self) -> tuple[str, ...]:
        """Which bounds a limit of its kind has."""
        return LIMIT_KINDS[self.kind]

    @property
    def is_ratio(self) -> bool:
        """Whether it compares two recordings, and has no unit."""
        return self.kind in RATIO_KINDS


class Decision(Record, frozen=True, kw_only=True):
    """How uncertainty decides near the limit, agreed before the test; see ``analysis.verdict.limits``."""

    rule: Literal["three-way", "simple", "guarded acceptance", "guarded rejection"]
    guard: Literal["U (95 %)", "1.645 u"] = "U (95 %)"


class TransducerFacts(Record, frozen=True, kw_only=True):
    """What the numbers of a transducer are worth: from its certificate or data sheet."""

    name: str = ""  # what it is called
    serial: str = ""  # serial number
    description: str = ""  # file name of its description
    identity: str = ""  # port or Bluetooth identity the user picked
    unit: str = ""  # of the torque column
    sign: Literal["signed", "reversed", "none"] | None = None  # reversed: clockwise is negative; none: magnitudes
    capacity_nm: float | None = None  # full scale
    resolution_nm: float | None = None  # smallest step
    capacity_n: float | None = None  # of a load cell or scale: what it becomes in N·m is the lever's doing
    resolution_n: float | None = None  # smallest step
    accuracy_percent_of_reading: float | None = None  # 95 %
    accuracy_percent_of_full_scale: float | None = None  # 95 %
    gain: float | None = None  # reading / true
    gain_u: float | None = None  # standard uncertainty of the gain
    filter_delay_s: float | None = None  # by which readings come late
    filter_delay_s_u: float | None = None  # its standard uncertainty
    rate_hz: float | None = None  # readings a second
    firmware: str = ""  # version
    weight_check: str = ""  # result of the last dead-weight check
    certificate: str = ""  # number of its certificate
    certificate_date: date | None = None  # issued
    certificate_due: date | None = None  # to be renewed


class Zero(Record, frozen=True, kw_only=True):
    """The true zero: lever hanging or off, as opposed to the level at hand-off."""

    at: datetime | None = None
    value_nm: float | None = None
    value_nm_u: float | None = None
    after_nm: float | None = None  # taken again after the pulls: what it moved by is in the interval
    how: Literal["lever off", "lever hanging", "unloaded", "unknown"] = "unknown"


class RecordingSource(Record, frozen=True, kw_only=True):
    """Another recording that this one rests on, by file name and hash."""

    file: str
    sha256: str


class Photo(Record, frozen=True, kw_only=True):
    """A photograph that lies beside the recording: its name without a folder, the hash of its bytes, what it shows."""

    file: str
    sha256: str
    caption: str = ""


class Header(Record, frozen=True, kw_only=True):
    """Everything known at the start of a recording."""

    schema: str = SCHEMA
    started: datetime | None = None
    program: str = ""
    simulated: bool = False
    time_from: Literal["device counter", "arrival", "file"] | None = None
    job: JobFacts = msgspec.field(default_factory=JobFacts)
    axle: Axle = msgspec.field(default_factory=Axle)
    test: Test = msgspec.field(default_factory=Test)
    conditions: Conditions = msgspec.field(default_factory=Conditions)
    lever: Lever | None = None
    limit: Limit | None = None
    decision: Decision | None = None
    transducer: TransducerFacts = msgspec.field(default_factory=TransducerFacts)
    second: TransducerFacts | None = None  # a source recorded along: angle, rate, temperature, torque of the held end
    zero: Zero | None = None
    source: RecordingSource | None = None  # what a replay was recorded from
    both_free: RecordingSource | None = None  # the drag baseline of this axle, beside this recording
    photos: tuple[Photo, ...] = ()


class Correction(Record, frozen=True, kw_only=True):
    """One decision made after the recording was closed: it changes how it is read, never the recording."""

    at: datetime
    reason: str
    by: str = ""
    pull_start_s: float | None = None  # which pull it concerns, by its original start
    exclude: bool = False  # leave this pull out of the job's value
    as_found: bool = False  # take back every earlier decision about this pull
    start_s: float | None = None  # corrected boundaries
    end_s: float | None = None
    breakaway_s: float | None = None
    rotating_start_s: float | None = None
    rotating_end_s: float | None = None


class Table(Record, frozen=True, kw_only=True):
    """What a table from elsewhere does not say of itself: its columns, units, times. Empty: as its headings say."""

    sheet: str | None = None  # of a workbook
    time: str | None = None  # heading of a column, or "column 2"
    time_unit: str | None = None  # s, ms, us, min, h, d; mm:ss or hh:mm
    rate_hz: float | None = None  # of a table that numbers its samples, or has no times
    torque: str | None = None
    unit: str | None = None  # N·m, kgf; or what one of its counts is: "0.0125 N·m", "250 N·m per mV/V"
    angle: str | None = None
    decimal: Literal["point", "comma"] | None = None


class Sidecar(Record, frozen=True, kw_only=True):
    """``<stem>.sidecar.toml``: what a trace lacks, and later corrections. Values here win over the header's."""

    simulated: bool | None = None
    started: datetime | None = None  # only where the trace does not say it
    job: JobFacts | None = None
    axle: Axle | None = None
    test: Test | None = None
    conditions: Conditions | None = None
    lever: Lever | None = None
    limit: Limit | None = None
    decision: Decision | None = None
    transducer: TransducerFacts | None = None
    zero: Zero | None = None
    both_free: RecordingSource | None = None
    table: Table | None = None  # how a table from elsewhere is read
    photos: tuple[Photo, ...] = ()
    tags: dict[str, str | float] = msgspec.field(default_factory=dict)
    signed: datetime | None = None  # when the test was signed: each decision after it makes a new revision
    corrections: tuple[Correction, ...] = ()
