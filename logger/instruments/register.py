"""The register of transducers: certificate, due date, last dead-weight check, and locks.

One TOML file, by default in the user's configuration folder::

    schema = "heldwheel instruments 1"

    [[instruments]]
    locked = ""
    [instruments.facts]
    serial = "G-1042"
    name = "workshop transducer"
    certificate = "2026/118"
    certificate_due = 2027-02-01
"""

from __future__ import annotations

import os
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

import msgspec

from logger.edges.small_file import locked
from logger.edges.toml_file import read_toml, write_toml
from logger.errors import FileError, InputError
from logger.header import Record, TransducerFacts

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from logger.instruments.weigh import Point

FOLDER_KEY: Final = "HELDWHEEL_HOME"  # keeps everything in one folder of the user's choice
FILE: Final = "instruments.toml"
SOON_DAYS: Final = 30  # a calibration laboratory needs about that long; common practice, no source


class WeightCheck(Record, frozen=True, kw_only=True):
    """The outcome of a dead-weight check."""

    at: datetime
    agreement: Literal["within", "outside", "too close to call", "not judged"]
    worst_percent: float
    u95_percent: float
    loads: int
    by: str = ""


class RegisteredTransducer(Record, frozen=True, kw_only=True):
    """A transducer in the register."""

    facts: TransducerFacts  # its serial number identifies it
    weighings: tuple[WeightCheck, ...] = ()  # oldest first
    locked: str = ""  # why it must not be used until it is checked again; empty: it may be


class Instruments(Record, frozen=True, kw_only=True):
    """The file."""

    schema: Literal["heldwheel instruments 1"] = "heldwheel instruments 1"
    instruments: tuple[RegisteredTransducer, ...] = ()


def register_path() -> Path:
    """Give the usual place of the register; the environment can move it."""
    own = os.environ.get(FOLDER_KEY)
    if own:
        return Path(own) / FILE
    import platformdirs

    return Path(platformdirs.user_config_dir("heldwheel")) / FILE


def read_register(path: Path | None = None) -> Instruments:
    """Read the register; one that does not exist yet is empty.

    Raises:
        FileError, DescriptionError: It cannot be read or has faults.
    """
    path = path or register_path()
    return read_toml(path, Instruments) if path.exists() else Instruments()


def change_register(change: Callable[[Instruments], Instruments], path: Path | None = None) -> Path:
    """Write the register anew from what stands in it, and give its path; other programs wait meanwhile.

    Raises:
        FileError, DescriptionError: It cannot be read or written; what was there is unchanged.
    """
    path = path or register_path()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileError(f"{path.parent}: cannot be made: {error.strerror or error}") from error
    with locked(path.parent):
        write_toml(path, change(read_register(path)))
    return path


def find(instruments: Instruments, serial: str) -> RegisteredTransducer | None:
    """Give the instrument with this serial number (or, if none has it, this name)."""
    wanted = serial.strip().casefold()
    for key in ("serial", "name"):
        for instrument in instruments.instruments:
            if wanted and getattr(instrument.facts, key).casefold() == wanted:
                return instrument
    return None


def put(instruments: Instruments, instrument: RegisteredTransducer) -> Instruments:
    """Give the register with this instrument added, or put in the place of the one with its serial number.

    Raises:
        InputError: It has no serial number.
    """
    serial = instrument.facts.serial.strip().casefold()
    if not serial:
        raise InputError(
            "a transducer needs a serial number; without one it cannot be told apart from others of its model"
        )
    others = tuple(i for i in instruments.instruments if i.facts.serial.strip().casefold() != serial)
    return Instruments(instruments=(*others, instrument))


def remove(instruments: Instruments, serial: str) -> Instruments:
    """Give the register without the instrument of this serial number.

    Raises:
        InputError: There is none.
    """
    left = tuple(i for i in instruments.instruments if i.facts.serial.casefold() != serial.strip().casefold())
    if len(left) == len(instruments.instruments):
        raise InputError(f"no transducer with the serial number '{serial}' is in the register")
    return Instruments(instruments=left)


def keep_weighing(points: Sequence[Point], facts: TransducerFacts, path: Path | None = None) -> Path:
    """Keep the outcome of a dead-weight check with its transducer, which joins the register with its first.

    Raises:
        InputError: It has no serial number.
        FileError, DescriptionError: The register cannot be read or written.
    """
    from logger.instruments.weigh import overall

    worst = max(points, key=lambda point: abs(point.deviation_percent))
    weighing = WeightCheck(
        at=datetime.now().astimezone().replace(microsecond=0),
        agreement=overall(points).value,
        worst_percent=round(worst.deviation_percent, 3),
        u95_percent=round(worst.u95_percent, 3),
        loads=len(points),
    )

    def kept(instruments: Instruments) -> Instruments:
        instrument = find(instruments, facts.serial) or RegisteredTransducer(facts=facts)
        return put(instruments, msgspec.structs.replace(instrument, weighings=(*instrument.weighings, weighing)))

    return change_register(kept, path)


def weighing_words(weighing: WeightCheck) -> str:
    """Give the outcome of a dead-weight check in one line, as it stands in a recording's header."""
    loads = f"{weighing.loads} load" + ("s" if weighing.loads != 1 else "")
    worst = f"{weighing.worst_percent:+.2f} % ± {weighing.u95_percent:.2f} %"
    return f"{weighing.at:%Y-%m-%d}: {weighing.agreement}, {loads}, at worst {worst} (95 %)"


def warnings(instrument: RegisteredTransducer, today: date) -> list[str]:
    """Say what stands against using an instrument today; one line for the user each."""
    facts = instrument.facts
    who = facts.name or facts.serial
    told = [f"{who} is locked: {instrument.locked}"] if instrument.locked else []
    told += due_warnings(facts, today)
    if instrument.weighings and instrument.weighings[-1].agreement == "outside":
        at = instrument.weighings[-1].at
        told.append(f"{who}: the last dead-weight check ({at:%Y-%m-%d}) came out outside what is allowed")
    return told


def due_warnings(facts: TransducerFacts, today: date) -> list[str]:
    """Say whether the certificate is missing, expired or nearly so."""
    who = facts.name or facts.serial or "the transducer"
    due = facts.certificate_due
    if facts.certificate_date is not None and facts.certificate_date > today:
        return [f"{who}: the certificate is dated {facts.certificate_date}, which is in the future; check the date"]
    if due is None:
        return [f"{who}: no due date of a certificate is known; results cannot be called traceable"]
    days = (due - today).days
    if days < 0:
        return [f"{who}: the certificate EXPIRED {due} ({-days} days ago); have it calibrated before you judge by it"]
    if days <= SOON_DAYS:
        return [f"{who}: the certificate ends {due}, in {days} days"]
    return []


def known_facts(facts: TransducerFacts, path: Path | None = None) -> tuple[TransducerFacts, list[str]]:
    """Complete a transducer's facts from the register, and say what stands against using it today.

    Args:
        facts: What its description and the device itself say; where they say something, that stands. The dead-weight
            check is the register's last one.
        path: Another register than the usual one.

    Raises:
        FileError, DescriptionError: The register cannot be read or has faults.
    """
    instrument = find(read_register(path), facts.serial or facts.name)
    today = datetime.now().astimezone().date()
    if instrument is None:
        return facts, due_warnings(facts, today)
    kept = instrument.facts
    missing = {
        name: getattr(kept, name)
        for name in facts.__struct_fields__
        if getattr(facts, name) in ("", None) and getattr(kept, name) not in ("", None)
    }
    if instrument.weighings:  # the last one done is newer than what a description says
        missing["weight_check"] = weighing_words(instrument.weighings[-1])
    completed = msgspec.structs.replace(facts, **missing)
    return completed, warnings(msgspec.structs.replace(instrument, facts=completed), today)
