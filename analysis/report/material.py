"""What a report is made from: everything that was read from one recording, gathered in one value.

``analysis.report.gather.material_of`` gathers it from the reading that ``analysis.pipeline`` gives.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Result
    from logger.header import Correction, Header
    from logger.recordings.axles import Build

Floats = NDArray[np.float64]


class PageKind(StrEnum):
    """For whom the page is written."""

    CUSTOMER = "customer"
    ENGINEER = "engineer"


Torque = tuple[float, float]
"""Value and expanded uncertainty (95 %) at the axle, N·m."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One torque of a pull, N·m: at the axle where the fixture is known, always at the sensor."""

    time_s: float
    end_s: float
    at_sensor_nm: float
    u95_sensor_nm: float
    at_axle_nm: float | None = None
    u95_axle_nm: float | None = None


@dataclass(frozen=True, slots=True)
class PullLine:
    """One pull of the recording, in the order of time, numbered from 1.

    ``reasons`` say why it is not valid; ``left_out`` holds the reason for leaving out a valid one. ``greatest`` is the
    greatest rotating torque at the axle, where the fixture is known; ``silences`` tell where its readings are missing.
    """

    number: int
    start_s: float
    end_s: float
    direction: int
    breakaway: Figure | None = None
    rotating: Figure | None = None
    distinct: bool = True
    chatter: float | None = None
    reasons: tuple[str, ...] = ()
    left_out: str = ""
    silences: tuple[str, ...] = ()
    greatest: Torque | None = None

    @property
    def used(self) -> bool:
        """Whether it enters the job's value."""
        return not self.reasons and not self.left_out


@dataclass(frozen=True, slots=True)
class JobLine:
    """The job's value of one quantity and direction, from its pulls; no interval where the fixture is not known.

    ``lowest_nm``, ``highest_nm`` and ``cv`` tell how the pulls scatter, where there is more than one.
    """

    quantity: str
    direction: int
    value_nm: float
    u95_nm: float | None
    pulls: int
    at: str = "axle"
    notes: tuple[str, ...] = ()
    lowest_nm: float | None = None
    highest_nm: float | None = None
    cv: float | None = None


@dataclass(frozen=True, slots=True)
class PackLine:
    """One quantity and way of rolling with the drag taken off; ``how``: by which formula, or why it is withheld."""

    quantity: str
    way: str
    raw: Torque | None
    both_free: Torque | None
    mean: Torque | None
    how: str


@dataclass(frozen=True, slots=True)
class DragPart:
    """The both-free recording that was taken along, and what it says."""

    file: str
    sha256: str
    lines: tuple[PackLine, ...]
    notes: tuple[str, ...] = ()
    sidecar_sha256: str = ""
    state: str = "closed"


@dataclass(frozen=True, slots=True)
class DialLine:
    """One reading of a dial: as shown, what is known of the dial, and torque at the axle with its interval, N·m."""

    number: int
    quantity: str
    shown: str
    about: str
    nm: float
    u95_nm: float
    left_out: str = ""


@dataclass(frozen=True, slots=True)
class BuildPart:
    """The build that was in the axle, and the one before it.

    ``sha256`` is of the sheet's bytes, ``entries_sha256`` of these two builds; ``friction``: figure, U, its torque.
    """

    file: str
    sha256: str
    entries_sha256: str
    build: Build
    before: Build | None = None
    friction: tuple[float, float, str] | None = None


@dataclass(frozen=True, slots=True)
class ConfirmPart:
    """A second test of the same thing, and how it stands to the first.

    ``lines``: quantity, direction, first, second, difference with its U (N·m), E_n, whether they agree; ``word``: the
    answer; ``who``: operator and transducer of the first and of the second.
    """

    file: str
    sha256: str
    lines: tuple[tuple[str, str, Torque, Torque, Torque, float, bool], ...]
    word: str
    who: tuple[tuple[str, str], tuple[str, str]]
    notes: tuple[str, ...] = ()
    sidecar_sha256: str = ""
    state: str = "closed"
    simulated: bool = False


@dataclass(frozen=True, slots=True)
class Material:
    """Everything that a report may show."""

    # file, sha256, state: the recording, the hash of its bytes, and whether it is ``closed``, ``recovered`` or
    # ``foreign``
    file: str
    sha256: str
    state: str
    header: Header  # with the sidecar's values over it
    # time_s, torque_nm: shape (n,); the trace, clockwise positive, at the sensor, zero taken away
    time_s: Floats
    torque_nm: Floats
    factor: float | None  # torque at the axle over torque at the sensor; None where the fixture is not known
    fixture: str  # the fixture and its numbers, in words
    # rate_hz, zero_nm, noise_nm: of the trace
    rate_hz: float
    zero_nm: float
    noise_nm: float
    zero_from: str  # where the true zero comes from
    pulls: tuple[PullLine, ...]  # all of them
    job: tuple[JobLine, ...]  # what is judged
    result: Result | None = None  # against the limit, if one was stated
    budget: Budget | None = None  # of the judged value
    corrections: tuple[Correction, ...] = ()  # decisions made later
    problems: tuple[str, ...] = ()  # what is not in order with the trace
    # what the caller stated, as plain values: with it the recording is read the same way again
    asked: Mapping[str, Any] = field(default_factory=dict)
    drag: DragPart | None = None  # raw torque and pack mean, where a baseline was recorded
    # the half in neutral, where two recordings give a ratio: everything else then is the half in gear, but for ``job``
    # (both halves), ``result`` and ``budget`` (of in gear ÷ neutral)
    neutral: Material | None = None
    dial: tuple[DialLine, ...] = ()  # what was read from a dial, where there is no trace
    build: BuildPart | None = None  # what was in the axle, where its sheet lies beside the recording
    confirmed: ConfirmPart | None = None  # a second test by another operator or transducer
    # above_sha256, sidecar_sha256: the hash of its bytes above the closing line (older reports name it by that), and of
    # its sidecar's bytes
    above_sha256: str = ""
    sidecar_sha256: str = ""

    @property
    def halves(self) -> tuple[Material, ...]:
        """All recordings that the page rests on, but for a baseline."""
        return (self,) if self.neutral is None else (self, self.neutral)

    @property
    def simulated(self) -> bool:
        """Whether any test that it rests on is simulated."""
        second = self.confirmed is not None and self.confirmed.simulated
        return second or any(half.header.simulated for half in self.halves)


MARGIN = 36.0
"""At the left and right of a printed page, points."""


class PaperSize(StrEnum):
    """On which paper a page is printed; by these names CSS knows it, too."""

    A4 = "A4"
    LETTER = "letter"

    @property
    def points(self) -> tuple[float, float]:
        """Give width and height, points: ISO 216, and 8.5 by 11 inches."""
        return (595.28, 841.89) if self is PaperSize.A4 else (612.0, 792.0)

    @property
    def width(self) -> float:
        """Give the width between the margins, points."""
        return self.points[0] - 2 * MARGIN


@dataclass(frozen=True, slots=True)
class Issue:
    """What the shop decides about its page."""

    issued: datetime  # with its time zone
    kind: PageKind = PageKind.CUSTOMER  # customer or engineer
    unit: str = "N·m"  # torque unit of the page
    # shop, address: name (instead of the recording's) and address lines
    shop: str = ""
    address: str = ""
    revision: int = 1  # 1 for the first issue
    remarks: str = ""  # free text on the page
    authorised: str = ""  # who authorises the report, as printed; the line for a signature is there in any case
    paper: PaperSize = PaperSize.A4  # what it is printed on
    lengths: str = "mm"  # the unit of lengths, ``mm`` or ``in``
    language: str = "en"  # what the page is written in, by its code (ISO 639-1)
